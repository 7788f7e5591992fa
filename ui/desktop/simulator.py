"""What the panel of the simulated rotor sets: unbalance, masses, resonance, a neighbour, bad pulses, noise. No Qt here."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from stillshaft.acquire import simulated
from stillshaft.acquire.conditions import Conditions, PulseFaults
from stillshaft.acquire.simulated import DEMO_SPEED_RPM, SimulatedRun, Support
from stillshaft.acquire.source import SourceError
from stillshaft.ui import rehearsal_machines

PLANES = tuple(p.name for p in simulated.demo_rotor(2).planes)
_RADIUS_M = simulated.demo_rotor(2).planes[0].radius_m


@dataclass(frozen=True)
class Mass:
    """Grams at degrees from the mark against rotation."""

    grams: float
    angle_deg: float


@dataclass(frozen=True)
class Teaching:
    """How the simulated fan is to run.

    `unbalance` and `masses` have one entry for each plane, the masses beyond the unbalance; `resonance_percent` is where
    the lowest natural frequency lies in percent of running speed, None: where it is by itself. The neighbour runs
    `neighbour_hz` beside the shaft, positive above it, with a velocity of so many mm/s rms. An `overhung` one is another
    fan, whose disc hangs outside its bearings with an unbalance of its own.
    """

    speed_rpm: float = DEMO_SPEED_RPM
    unbalance: tuple[Mass, ...] = (Mass(19.0, 65.0), Mass(14.0, 210.0))
    masses: tuple[Mass, ...] = (Mass(0.0, 0.0), Mass(0.0, 0.0))
    resonance_percent: float | None = None
    neighbour_hz: float = 0.2
    neighbour_mm_s: float = 0.0
    missing_percent: float = 0.0
    jitter_deg: float = 0.0
    noise_m_s2: float = 0.05
    overhung: bool = False


CASES = {
    "usual": Teaching(),
    "at a resonance": Teaching(resonance_percent=104.0),
    "neighbour close in speed": Teaching(neighbour_hz=0.16, neighbour_mm_s=1.6),
    "neighbour stronger than 1x": Teaching(
        unbalance=(Mass(3.0, 65.0), Mass(2.0, 210.0)), neighbour_hz=-0.25, neighbour_mm_s=2.5
    ),
    "loose pulses": Teaching(missing_percent=6.0, jitter_deg=1.5),
    "much noise": Teaching(noise_m_s2=6.0),
}


@dataclass(frozen=True)
class Fitted:
    """What the record of a job has on the rotor: planes of the brief in their order, pieces as plane, g, degrees."""

    planes: tuple[str, ...] = ()
    pieces: tuple[tuple[str, float, float], ...] = ()


def rotor(teaching: Teaching, planes: int = 2) -> simulated.Rotor:
    """The fan, wide or narrow, on supports that put its lowest horizontal natural frequency where it is wanted."""
    made = simulated.demo_rotor(planes)
    if teaching.resonance_percent is None:
        return made
    first, second = made.supports
    natural, _ = simulated.modes(made, (first.horizontal_n_per_m, second.horizontal_n_per_m))
    wanted = teaching.resonance_percent / 100.0 * teaching.speed_rpm * math.pi / 30.0
    softer = (wanted / float(natural.min())) ** 2
    supports = tuple(Support(softer * s.horizontal_n_per_m, softer * s.vertical_n_per_m) for s in made.supports)
    return replace(made, supports=(supports[0], supports[1]))


def order(teaching: Teaching, seed: int, *, real_time: bool = True, fitted: Fitted | None = None) -> SimulatedRun:
    """The run that is meant, with what a job has on the rotor.

    A job with one plane gets the narrow fan, whose disc carries what is set for both planes. Planes are known by name, else
    by their order. Raises SourceError for a job with more planes than two.
    """
    fitted = fitted or Fitted()
    if len(fitted.planes) > 2:
        raise SourceError(f"the simulated rotor has two planes, but the brief has {len(fitted.planes)}")
    neighbour = None
    if teaching.neighbour_mm_s > 0.0:
        frequency = teaching.speed_rpm / 60.0 + teaching.neighbour_hz
        neighbour = (frequency, 0.001 * teaching.neighbour_mm_s * math.sqrt(2.0) * 2.0 * math.pi * frequency)
    if teaching.overhung:
        return _overhung(teaching, seed, fitted, neighbour, real_time=real_time)
    unbalance = tuple(
        _RADIUS_M * sum(0.001 * m.grams * complex(np.exp(1j * math.radians(m.angle_deg))) for m in pair)
        for pair in zip(teaching.unbalance, teaching.masses, strict=True)
    )
    if len(fitted.planes) == 1:
        unbalance = (sum(unbalance),)
    made = rotor(teaching, len(unbalance))
    conditions = _conditions(teaching, neighbour)
    own = [p.name for p in made.planes]
    placed = [(_own_plane(plane, fitted.planes, own), mass_g, angle) for plane, mass_g, angle in fitted.pieces]
    whole = simulated.with_masses(made, unbalance, placed)
    return SimulatedRun(made, simulated.demo_sensors(), whole, conditions, seed, None, real_time)


def _conditions(teaching: Teaching, neighbour: tuple[float, float] | None) -> Conditions:
    faults = PulseFaults(missing=teaching.missing_percent / 100.0, jitter_deg=teaching.jitter_deg)
    return Conditions(teaching.speed_rpm, noise_m_s2=teaching.noise_m_s2, neighbour=neighbour, pulse_faults=faults)


def _overhung(
    teaching: Teaching, seed: int, fitted: Fitted, neighbour: tuple[float, float] | None, *, real_time: bool
) -> SimulatedRun:
    """The fan of the rehearsal whose disc hangs outside its bearings; a job has one of its planes, or both."""
    machine = rehearsal_machines.machine(1, "couple")
    own = [p.name for p in machine.rotor.planes]
    placed = [(_own_plane(plane, fitted.planes, own), mass_g, angle) for plane, mass_g, angle in fitted.pieces]
    whole = simulated.with_masses(machine.rotor, machine.unbalance, placed)
    conditions = _conditions(teaching, neighbour)
    return SimulatedRun(machine.rotor, machine.sensors, whole, conditions, seed, None, real_time)


def _own_plane(name: str, of_job: tuple[str, ...], own: list[str]) -> str:
    """The rotor's own name for a plane of the job."""
    if name in own or name not in of_job:
        return name
    return own[of_job.index(name)]


def hookup() -> dict[str, Any]:
    """Content of the hook-up that belongs to it."""
    return dict(simulated.demo_hookup())
