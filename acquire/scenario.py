"""A simulated rotor described in a file: machine, unbalance, conditions and faults, for teaching and for trying.

The guide `steps` shows one. What is left out is as in the demonstration.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

import msgspec
import numpy as np
from stillshaft.acquire import hookup, simulated
from stillshaft.acquire.conditions import Conditions, PulseFaults
from stillshaft.acquire.source import SourceError
from stillshaft.dsp import tables, units

_LARGEST = 1e12  # of any number, in SI units
_LEAST = 1e-6  # of a damping ratio or an inertia
_SLOWEST_HZ, _FASTEST_HZ = 1e-3, 1e6  # in which a rotor swings on its supports
_MOST = 100  # sensors, planes, tones


class _Rotor(tables.Strict):
    mass: str
    bearing_span: str
    centre_of_mass: str
    transverse_inertia: float  # kg·m²
    damping_ratio: float = 0.04


class _Support(tables.Strict):
    horizontal: str
    vertical: str


class _Plane(tables.Strict):
    name: str
    z: str
    radius: str
    unbalance: str = "0 g at 0"


class _Sensor(tables.Strict):
    name: str
    bearing: Literal[1, 2]
    angle: float = 90.0
    height: str | None = None  # above the shaft, of one that points along it


class _Flexible(tables.Strict):
    frequency: str
    mass: str
    at_bearings: tuple[float, float]
    at_planes: list[float]


class _Bow(tables.Strict):
    unbalance: str  # g·mm at degrees
    time: str


class _Locked(tables.Strict):
    sensor: str
    order: float
    level: str
    lag: float = 0.0


class _Pulse(tables.Strict):
    missing: float = 0.0
    double: float = 0.0
    stray: float = 0.0
    sunlight: float = 0.0
    lamp_hz: float = 0.0
    lamp: float = 0.0
    jitter_deg: float = 0.0
    snr_db: float = 30.0


class _Conditions(tables.Strict):
    speed: str = "1480 rpm"
    ramp_from: str | None = None
    ramp_time: str = "30 s"
    wander_percent: float = 0.05
    noise: str = "0.05 m/s^2"
    noise_colour: Literal["white", "pink", "brown"] = "white"
    harmonics: list[str] = msgspec.field(default_factory=lambda: ["0.3 m/s^2", "0.15 m/s^2"])
    tones: list[tuple[str, str]] = []
    looseness: float | None = None
    coupling: str | None = None
    scatter_percent: float = 1.0
    scatter_deg: float = 1.0


class _Fault(tables.Strict):
    input: int
    kind: Literal["dead", "stuck", "hum", "clipped"]


class _File(tables.Strict):
    format: Literal[1]
    rotor: _Rotor | None = None
    support: list[_Support] = []
    plane: list[_Plane] = []
    sensor: list[_Sensor] = []
    flexible: _Flexible | None = None
    bow: _Bow | None = None
    moving: _Bow | None = None  # a loose piece; the time in which it moves by a radian
    locked: list[_Locked] = []
    conditions: _Conditions = msgspec.field(default_factory=_Conditions)
    pulse: _Pulse = msgspec.field(default_factory=_Pulse)
    fault: list[_Fault] = []


@dataclass(frozen=True)
class Scenario:
    """A rotor with its sensors, unbalance (kg·m, each plane) and conditions."""

    rotor: simulated.Rotor
    sensors: tuple[simulated.Sensor, ...]
    unbalance: tuple[complex, ...]
    conditions: Conditions

    def hookup(self) -> dict[str, Any]:
        """Content of the hook-up file that belongs to it."""
        return simulated.hookup_for(self.sensors)


def load(path: Path) -> Scenario:
    """Read a scenario. Raises SourceError with one line that names the file and the field."""
    try:
        table = tables.read(path)
    except tables.TableError as error:
        raise SourceError(str(error)) from None
    try:
        _check_numbers(table, "")
        found = _scenario(tables.checked(table, _File))
        hookup.hookup_from(found.hookup())  # names and angles of its sensors must do for one
    except (tables.TableError, units.UnitError, SourceError, hookup.HookupError) as error:
        raise SourceError(f"{path}: {error}") from None
    return found


def _scenario(file: _File) -> Scenario:
    demo = simulated.demo_rotor(2)
    supports = demo.supports
    if file.support:
        if len(file.support) != 2:
            raise SourceError(f"support: there are {len(file.support)}; a rotor has two")
        first, second = (_support(s, f"support {n}") for n, s in enumerate(file.support, start=1))
        supports = (first, second)
    planes, unbalance = demo.planes, simulated.demo_unbalance(2)
    if file.plane:
        planes = tuple(_plane(p, f"plane {n}") for n, p in enumerate(file.plane, start=1))
        unbalance = tuple(
            _mass_at(p.unbalance, f"plane {n}.unbalance", "kg") * plane.radius_m
            for n, (p, plane) in enumerate(zip(file.plane, planes, strict=True), start=1)
        )
    elif file.rotor is not None:
        raise SourceError("plane: there is none; a rotor needs at least one [[plane]]")
    rotor = simulated.Rotor(
        demo.mass_kg, demo.transverse_inertia_kg_m2, demo.bearing_span_m, demo.centre_of_mass_m, supports,
        demo.damping_ratio, planes, _flexible(file.flexible, len(planes)),
    )  # fmt: skip
    if file.rotor is not None:
        rotor = _rotor(file.rotor, supports, planes, rotor.flexible)
    sensors = simulated.demo_sensors()
    if file.sensor:
        sensors = tuple(_sensor(s, f"sensor {n}") for n, s in enumerate(file.sensor, start=1))
    return Scenario(rotor, sensors, unbalance, _conditions(file, [s.name for s in sensors]))


def _parsed(text: str, unit: str, where: str, *, gravity: bool = False) -> float:
    value = units.parse(text, unit, where, gravity=gravity)
    if abs(value) > _LARGEST:
        raise SourceError(f'{where}: "{text}" is too large for a machine; is it in the right unit?')
    return value


def _check_numbers(value: Any, where: str) -> None:
    """Raise SourceError for numbers that no machine has, and for more of anything than one has."""
    if isinstance(value, dict | list):
        if len(value) > _MOST:
            raise SourceError(f"{where}: has {len(value)} entries, at most {_MOST}")
        for key, inner in value.items() if isinstance(value, dict) else enumerate(value, start=1):
            _check_numbers(inner, f"{where} {key}".strip() if isinstance(value, list) else f"{where}.{key}".strip("."))
    elif isinstance(value, float | int) and not abs(value) <= _LARGEST:
        raise SourceError(f"{where}: {value:g} must be finite, at most {_LARGEST:g}")


def _positive(text: str, unit: str, where: str, *, gravity: bool = False) -> float:
    value = _parsed(text, unit, where, gravity=gravity)
    if not 0.0 < value < math.inf:
        raise SourceError(f'{where}: "{text}" must be above 0')
    return value


def _support(support: _Support, where: str) -> simulated.Support:
    return simulated.Support(
        _positive(support.horizontal, "N/m", f"{where}.horizontal"),
        _positive(support.vertical, "N/m", f"{where}.vertical"),
    )


def _sensor(sensor: _Sensor, where: str) -> simulated.Sensor:
    height_m = None if sensor.height is None else _positive(sensor.height, "m", f"{where}.height")
    return simulated.Sensor(sensor.name, sensor.bearing - 1, sensor.angle, height_m=height_m)


def _plane(plane: _Plane, where: str) -> simulated.Plane:
    return simulated.Plane(
        plane.name, _parsed(plane.z, "m", f"{where}.z"), _positive(plane.radius, "m", f"{where}.radius")
    )


def _mass_at(text: str, where: str, unit: str) -> complex:
    mass, word, angle = text.rpartition(" at ")
    try:
        degrees = float(angle)
    except ValueError:
        degrees = math.nan
    if not word or not math.isfinite(degrees):
        raise SourceError(f'{where}: "{text}": write for example "19 g at 65"')
    return _parsed(mass, unit, where) * complex(np.exp(1j * math.radians(degrees)))


def _flexible(mode: _Flexible | None, planes: int) -> simulated.FlexibleMode | None:
    if mode is None:
        return None
    if len(mode.at_planes) != planes:
        raise SourceError(f"flexible.at_planes: has {len(mode.at_planes)} values for {planes} planes")
    frequency_hz = units.speed_rpm(mode.frequency, "flexible.frequency") / 60.0
    if not _SLOWEST_HZ < frequency_hz < _FASTEST_HZ:
        raise SourceError(f'flexible.frequency: "{mode.frequency}": {_SLOWEST_HZ:g} to {_FASTEST_HZ:g} Hz')
    return simulated.FlexibleMode(
        frequency_hz,
        _positive(mode.mass, "kg", "flexible.mass"),
        mode.at_bearings,
        tuple(mode.at_planes),
    )


def _rotor(
    rotor: _Rotor,
    supports: tuple[simulated.Support, simulated.Support],
    planes: tuple[simulated.Plane, ...],
    flexible: simulated.FlexibleMode | None,
) -> simulated.Rotor:
    for name, value, high in (
        ("damping_ratio", rotor.damping_ratio, 0.5),
        ("transverse_inertia", rotor.transverse_inertia, 1e9),
    ):
        if not _LEAST < value < high:
            raise SourceError(f"rotor.{name}: {value:g} must be above {_LEAST:g} and below {high:g}")
    described = simulated.Rotor(
        _positive(rotor.mass, "kg", "rotor.mass"),
        rotor.transverse_inertia,
        _positive(rotor.bearing_span, "m", "rotor.bearing_span"),
        _parsed(rotor.centre_of_mass, "m", "rotor.centre_of_mass"),
        supports,
        rotor.damping_ratio,
        planes,
        flexible,
    )
    _check_modes(described)
    return described


def _check_modes(rotor: simulated.Rotor) -> None:
    """Raise SourceError for a rotor that would swing slower or faster than any does."""
    for key in ("horizontal", "vertical"):
        on, off = (getattr(support, f"{key}_n_per_m") for support in rotor.supports)
        with np.errstate(all="ignore"):  # numbers far apart leave no rotor at all
            frequencies, shapes = simulated.modes(rotor, (on, off))
        if not (
            np.isfinite(shapes).all() and all(_SLOWEST_HZ < f / (2.0 * math.pi) < _FASTEST_HZ for f in frequencies)
        ):
            raise SourceError(
                f"support.{key}: the rotor would swing with {_SLOWEST_HZ:g} Hz and less on it, or {_FASTEST_HZ:g} Hz and "
                "more; are stiffness, mass and inertia in the right unit?"
            )


def _locked(locked: _Locked, where: str, names: Sequence[str]) -> tuple[int, float, float, float]:
    if locked.sensor not in names:
        raise SourceError(f'{where}.sensor: "{locked.sensor}" is none; there are {", ".join(names)}')
    if not 0.0 < locked.order <= 100.0:
        raise SourceError(f"{where}.order: {locked.order:g} must be above 0 and no more than 100")
    level = _parsed(locked.level, "m/s^2", f"{where}.level", gravity=True)
    return names.index(locked.sensor), locked.order, level, locked.lag


def _growing(described: _Bow | None, where: str) -> tuple[float, float, float] | None:
    if described is None:
        return None
    size = _mass_at(described.unbalance, f"{where}.unbalance", "kg*m")
    return abs(size), math.degrees(math.atan2(size.imag, size.real)), _positive(described.time, "s", f"{where}.time")


def _conditions(file: _File, sensors: Sequence[str]) -> Conditions:
    c, pulse, inputs = file.conditions, file.pulse, 1 + len(sensors)
    for fault in file.fault:
        if not 1 <= fault.input <= inputs:
            raise SourceError(f"fault.input: {fault.input}; there are inputs 1 to {inputs}")
    for name in ("missing", "double", "stray"):
        if not 0.0 <= getattr(pulse, name) <= 1.0:
            raise SourceError(f"pulse.{name}: {getattr(pulse, name):g} must be a part from 0 to 1")
    if c.looseness is not None and not 0.0 < c.looseness <= 1.0:
        raise SourceError(f"conditions.looseness: {c.looseness:g} must be above 0 and no more than 1")
    speed = _speed(c.speed, "conditions.speed")
    ramp = None
    if c.ramp_from is not None:
        ramp = (_speed(c.ramp_from, "conditions.ramp_from"), _positive(c.ramp_time, "s", "conditions.ramp_time"))
    return Conditions(
        speed,
        c.wander_percent,
        _parsed(c.noise, "m/s^2", "conditions.noise", gravity=True),
        pulse.snr_db,
        harmonics_m_s2=tuple(_parsed(h, "m/s^2", "conditions.harmonics", gravity=True) for h in c.harmonics),
        ramp=ramp,
        tones=tuple(
            (units.speed_rpm(f, "conditions.tones") / 60.0, _parsed(a, "m/s^2", "conditions.tones", gravity=True))
            for f, a in c.tones
        ),
        bow=_growing(file.bow, "bow"),
        moving=_growing(file.moving, "moving"),
        locked=tuple(_locked(x, f"locked {n}", sensors) for n, x in enumerate(file.locked, start=1)),
        looseness=c.looseness,
        noise=c.noise_colour,
        pulse_faults=PulseFaults(
            pulse.missing, pulse.double, pulse.stray, pulse.sunlight,
            (pulse.lamp_hz, pulse.lamp) if pulse.lamp_hz > 0.0 else None, pulse.jitter_deg,
        ),
        coupling_hz=None if c.coupling is None else _positive(c.coupling, "Hz", "conditions.coupling"),
        channel_faults=tuple((f.input, f.kind) for f in file.fault),
        scatter_amplitude=c.scatter_percent / 100.0,
        scatter_deg=c.scatter_deg,
    )  # fmt: skip


def _speed(text: str, where: str) -> float:
    rpm = units.speed_rpm(text, where)
    if not 30.0 <= rpm <= 60_000.0:
        raise SourceError(f'{where}: "{text}": 30 to 60 000 r/min')
    return rpm
