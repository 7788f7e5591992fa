"""The simulated machines of a rehearsal: a sound one with one plane or two, and one for each fault. The project's own.

A dust-extraction fan whose blades wore unevenly; what is wrong beside that is in the name of the fault.
"""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass
from typing import Any

import numpy as np
from stillshaft.acquire import simulated
from stillshaft.acquire.conditions import Conditions
from stillshaft.acquire.simulated import Plane, Rotor, Sensor, Support

FAULTS = {
    "neighbour": "a machine beside it runs a little faster, stronger than the once-per-rev vibration",
    "loose": "a foot is loose: multiples of the speed stand beside the once-per-rev vibration",
    "resonance": "its supports are so soft that it runs close to a resonance",
    "weak-trial": "the first trial masses are far too small",
    "couple": "its disc hangs outside the bearings and is out of balance statically and as a couple",
}
_NEIGHBOUR = simulated.DEMO_SPEED_RPM / 60.0 + 0.12, 2.2  # Hz, and peak acceleration
# order and peak acceleration of what a loose foot makes: the rattle of a joint that opens once a turn
_LOOSE = ((0.5, 0.3), (2.0, 2.2), (3.0, 2.6), (4.0, 3.2), (5.0, 3.4))
_SOFT = 0.41  # of the supports' stiffness: a resonance 5 % above running speed
_LIMIT = 0.8  # mm/s rms, agreed for the disc outside its bearings: the far bearing shows the couple
WEAK = 0.15  # of the usual trial mass


@dataclass(frozen=True)
class Machine:
    """A simulated machine: what runs, and what a person is told of it. `planes` are those that a job begins with."""

    rotor: Rotor
    sensors: tuple[Sensor, ...]
    unbalance: tuple[complex, ...]
    conditions: Conditions
    fault: str | None
    planes: tuple[str, ...]

    def hookup(self) -> dict[str, Any]:
        """Content of its hook-up file."""
        return simulated.hookup_for(self.sensors)

    def brief(self) -> dict[str, Any]:
        """What a person would write down before the first run."""
        rotor = self.rotor
        overhung = not 0.0 <= rotor.centre_of_mass_m <= rotor.bearing_span_m
        return {
            "machine": {"name": "simulated fan", "type": "fan", "place": "in this program"},
            "rotor": {
                "kind": "overhung" if overhung else "between bearings",
                "mass": f"{rotor.mass_kg:g} kg",
                "speed_rpm": simulated.DEMO_SPEED_RPM,
                "highest_speed_rpm": 1.3 * simulated.DEMO_SPEED_RPM,
                "bearing_span": f"{1000.0 * rotor.bearing_span_m:g} mm",
                "centre_of_mass": f"{1000.0 * rotor.centre_of_mass_m:g} mm",
            },
            "drive": {"kind": "direct", "variable_speed": False},
            "planes": [self.plane(name) for name in self.planes],
            "goal": {"grade": "G6.3", "basis": "agreed" if overhung else "contract"},
            "limits": [{"point": s.name, "amplitude": _LIMIT, "unit": "mm/s rms"} for s in self.sensors if overhung],
            "abort": [{"point": s.name, "amplitude": 60.0, "unit": "mm/s rms"} for s in self.sensors],
            "interview": {"wrong": "vibrates more from month to month", "process": "wear"},
        }

    def plane(self, name: str) -> dict[str, Any]:
        """A plane as the brief holds it."""
        plane = next(p for p in self.rotor.planes if p.name == name)
        return {"name": plane.name, "radius": f"{1000.0 * plane.radius_m:g} mm", "z": f"{1000.0 * plane.z_m:g} mm"}


def machine(planes: int, fault: str | None) -> Machine:
    """The machine of a rehearsal. An unknown fault is none of `FAULTS`."""
    if fault == "couple":
        return _overhung()
    rotor, conditions = simulated.demo_rotor(planes), Conditions(simulated.DEMO_SPEED_RPM)
    if fault == "neighbour":
        conditions = dataclasses.replace(conditions, neighbour=_NEIGHBOUR)
    elif fault == "loose":
        rattle = [(n, order, level, 70.0 * order + 40.0 * n) for n in (0, 1) for order, level in _LOOSE]
        conditions = dataclasses.replace(conditions, locked=tuple(rattle))
    elif fault == "resonance":
        first, second = (Support(_SOFT * s.horizontal_n_per_m, _SOFT * s.vertical_n_per_m) for s in rotor.supports)
        rotor = dataclasses.replace(rotor, supports=(first, second))
    names = tuple(p.name for p in rotor.planes)
    unbalance = simulated.demo_unbalance(planes)
    return Machine(rotor, simulated.demo_sensors(), unbalance, conditions, fault, names)


def _overhung() -> Machine:
    """A disc outside its bearings: one plane at first, the second for the couple that is left."""
    supports = (Support(2.5e6, 6.0e6), Support(5.0e6, 7.0e6))
    discs = (Plane("front", 0.95, 0.25), Plane("back", 0.56, 0.25))
    rotor = Rotor(48.0, 1.6, 0.5, 0.56, supports, 0.04, discs)
    unbalance = tuple(
        grams * 0.001 * 0.25 * complex(np.exp(1j * np.deg2rad(deg))) for grams, deg in ((38.0, 65.0), (48.0, 215.0))
    )
    conditions = Conditions(simulated.DEMO_SPEED_RPM)
    return Machine(rotor, simulated.demo_sensors(), unbalance, conditions, "couple", ("front",))
