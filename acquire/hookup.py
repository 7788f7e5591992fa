"""The hook-up file: what is wired to which input, where it sits on the machine, and how readings become SI units."""

from __future__ import annotations

import hashlib
import json
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any, Literal

import msgspec
from stillshaft.acquire.daq import Settings
from stillshaft.dsp import tables, units
from stillshaft.dsp.units import InputError

_MOST_MARKS = 400


class HookupError(InputError):
    """A hook-up that cannot be used: the message names the field and says what would be right."""


class _Pulse(tables.Strict):
    input: int = 1
    edge: Literal["rising", "falling", "auto"] = "auto"
    pulses_per_rev: int = 1
    reference: Literal["single", "missing", "wide", "unequal"] = "single"
    angle: float = 0.0


class _Point(tables.Strict):
    name: str
    input: int
    quantity: Literal["acceleration", "velocity", "displacement"]
    sensitivity: str
    direction: Literal["radial", "axial"] = "radial"
    full_scale: str = "2.0 V"
    angle: float = 0.0
    inverted: bool = False
    delay: str = "0 us"
    highpass: str | list[str] = []
    mount: Literal["stud", "adhesive", "flat magnet", "two-pole magnet", "hand probe"] | None = None
    calibrated: dict[str, Any] | None = None


class _Device(tables.Strict):
    range: str = "10 V"
    coupling: Literal["default", "ac", "dc"] = "default"
    iepe: str = "0 mA"
    terminal: Literal["default", "differential", "single-ended", "pseudo-differential"] = "default"


class _File(tables.Strict):
    format: Literal[1]
    point: list[_Point]
    pulse: _Pulse = msgspec.field(default_factory=_Pulse)
    display: str = "mm/s rms"
    reference_end: str = "drive"
    rotation: Literal["counter-clockwise", "clockwise"] = "counter-clockwise"
    datum: str = "12 o'clock"
    scaled: bool = False
    rate: str | None = None
    time_column: int | None = None
    device: _Device = msgspec.field(default_factory=_Device)


@dataclass(frozen=True)
class PulseInput:
    """The pulse: `index` counts inputs from 0; `angle_deg` is the stator angle of its sensor.

    `pulses_per_rev` counts the positions on one revolution; `reference` says how the mark 0 is known among several.
    """

    index: int
    edge: str
    angle_deg: float
    pulses_per_rev: int = 1
    reference: str = "single"


@dataclass(frozen=True)
class Point:
    """A vibration sensor: `si_per_reading` turns a reading in digital full scale into SI, inverted sensors negative.

    `volts_per_reading` is the full scale, `table` the entry of the file.
    """

    name: str
    index: int
    quantity: str
    direction: str
    si_per_reading: float
    angle_deg: float
    delay_s: float
    highpass_hz: tuple[float, ...]
    volts_per_reading: float
    mount: str | None = None
    table: dict[str, Any] = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True)
class Hookup:
    """A checked hook-up; `table` is the file's content, which goes into every recording; `device` is for DAQs."""

    pulse: PulseInput
    points: tuple[Point, ...]
    display: str
    table: dict[str, Any]
    device: Settings = Settings()

    @property
    def channels(self) -> int:
        """Inputs that must be captured: up to the highest one that is wired."""
        return 1 + max(self.pulse.index, *(p.index for p in self.points))

    @property
    def fingerprint(self) -> str:
        """Sixteen letters that change with anything that changes a vector: sensors, places, pulse, corners, device."""
        # which edge "auto" came to is no change of the wiring
        pulse = {k: v for k, v in self.table.get("pulse", {}).items() if k != "edge"}
        points = [{k: v for k, v in point.items() if k != "calibrated"} for point in self.table.get("point", [])]
        wired = [pulse, points, self.table.get("device", {})]
        return hashlib.sha256(json.dumps(wired, sort_keys=True, default=str).encode()).hexdigest()[:16]

    def refuse_fewer_inputs(self, channels: int, source: str) -> None:
        """Raise HookupError where a source, named so, has fewer inputs than are wired."""
        if channels < self.channels:
            raise HookupError(
                f"{source}: has {channels} input{'s' * (channels != 1)}, but the hook-up uses input {self.channels}"
            )

    def channel_names(self, channels: int) -> list[str]:
        """A name for each of so many inputs."""
        names = [f"input {i + 1}" for i in range(channels)]
        names[self.pulse.index] = "pulse"
        for point in self.points:
            names[point.index] = point.name
        return names


def load_hookup(path: Path) -> Hookup:
    """Read a hook-up file. Raises HookupError with one line that names the file and the field."""
    try:
        table = tables.read(path)
    except tables.TableError as error:
        raise HookupError(str(error)) from None
    try:
        return hookup_from(table)
    except HookupError as error:
        raise HookupError(f"{path}: {error}") from None


def hookup_from(table: dict[str, Any]) -> Hookup:
    """Check the content of a hook-up file. Raises HookupError that names the field."""
    try:
        tables.check_bounds(table)
        file = tables.checked(table, _File)
    except tables.TableError as error:
        raise HookupError(str(error)) from None
    try:
        display = units.vibration_unit(file.display, "display").text
        points = tuple(_point(p, f"point {n}", table["point"][n - 1]) for n, p in enumerate(file.point, start=1))
    except units.UnitError as error:
        raise HookupError(str(error)) from None
    if not points:
        raise HookupError("point: there is none; a hook-up needs at least one [[point]]")
    if file.rate is not None and file.time_column is not None:
        raise HookupError("time_column: rate is given too; leave one of them out")
    _pulses_of_a_revolution(file.pulse)
    _whole_input(file.pulse.input, "pulse.input")
    _finite(file.pulse.angle, "pulse.angle")
    used = {file.pulse.input - 1: "the pulse"}
    names: set[str] = set()
    for number, point in enumerate(points, start=1):
        if point.index in used:
            raise HookupError(
                f"point {number}.input: input {point.index + 1} is taken by {used[point.index]}; "
                "each input carries one signal"
            )
        if point.name in names or not point.name.strip():
            raise HookupError(
                f"point {number}.name: {point.name!r} is empty or used twice; each point needs its own name"
            )
        used[point.index] = f'point "{point.name}"'
        names.add(point.name)
    pulse = PulseInput(
        file.pulse.input - 1, file.pulse.edge, file.pulse.angle, file.pulse.pulses_per_rev, file.pulse.reference
    )
    return Hookup(pulse, points, display, table, _device(file.device))


def with_edge(hookup: Hookup, edge: str) -> Hookup:
    """The hook-up with the pulse edge written in, as the first run of a job resolved it."""
    return hookup_from({**hookup.table, "pulse": {**hookup.table.get("pulse", {}), "edge": edge}})


def _device(device: _Device) -> Settings:
    try:
        range_v, iepe_a = units.parse(device.range, "V", "device.range"), units.parse(device.iepe, "A", "device.iepe")
    except units.UnitError as error:
        raise HookupError(str(error)) from None
    if not range_v > 0.0 or not 0.0 <= iepe_a <= 0.02:
        raise HookupError(
            f'device: range "{device.range}" must be above 0 and iepe "{device.iepe}" from 0 to 20 mA, 0 for off'
        )
    return Settings(range_v, device.coupling, iepe_a, device.terminal)


def with_skew(hookup: Hookup, skew_s: tuple[float, ...]) -> Hookup:
    """The hook-up of a device that samples its inputs one after the other: delays against the pulse's own."""
    if not skew_s:
        return hookup
    pulse_s = skew_s[hookup.pulse.index]
    # what is sampled later shows an event at an earlier sample
    points = tuple(replace(p, delay_s=p.delay_s - (skew_s[p.index] - pulse_s)) for p in hookup.points)
    return replace(hookup, points=points)


def _point(point: _Point, where: str, table: dict[str, Any]) -> Point:
    _whole_input(point.input, f"{where}.input")
    _finite(point.angle, f"{where}.angle")
    sensitivity = units.sensitivity(point.sensitivity, point.quantity, f"{where}.sensitivity")
    full_scale_v = units.parse(point.full_scale, "V", f"{where}.full_scale")
    for value, name in ((sensitivity, "sensitivity"), (full_scale_v, "full_scale")):
        if value <= 0.0:
            raise HookupError(
                f"{where}.{name}: must be above 0; a sensor wired the other way round has inverted = true"
            )
    texts = [point.highpass] if isinstance(point.highpass, str) else point.highpass
    corners = tuple(c for t in texts if (c := units.parse(t, "Hz", f"{where}.highpass")) != 0.0)
    if len(corners) > 2 or any(c < 0.0 for c in corners):
        raise HookupError(f"{where}.highpass: {texts}: give none, one or two corners above 0 Hz")
    return Point(
        point.name,
        point.input - 1,
        point.quantity,
        point.direction,
        full_scale_v / sensitivity * (-1.0 if point.inverted else 1.0),
        point.angle,
        units.parse(point.delay, "s", f"{where}.delay"),
        corners,
        full_scale_v,
        point.mount,
        table,
    )


def _pulses_of_a_revolution(pulse: _Pulse) -> None:
    count, reference = pulse.pulses_per_rev, pulse.reference
    if not 1 <= count <= _MOST_MARKS:
        raise HookupError(f"pulse.pulses_per_rev: {count} is not possible; give 1 to {_MOST_MARKS}")
    if count == 1 and reference != "single":
        raise HookupError(f'pulse.reference: one mark has no "{reference}" one; leave reference out')
    if reference == "missing" and count < 3:
        raise HookupError(f"pulse.pulses_per_rev: {count} with one missing; it counts the missing mark too, 3 or more")


def _whole_input(value: int, where: str) -> None:
    if not 1 <= value <= 64:
        raise HookupError(f"{where}: {value} is not an input; inputs count from 1 to 64")


def _finite(value: float, where: str) -> None:
    if not abs(value) < float("inf"):
        raise HookupError(f"{where}: {value} is not a finite number of degrees")
