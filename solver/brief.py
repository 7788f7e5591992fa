"""What the brief of a job describes: machine, rotor, drive, supports, planes, goals, what is allowed, the interview.

A brief comes in pieces: each is laid over what there was as a JSON merge patch (RFC 7396, from memory): tables are merged
key by key, null removes, a list or a value replaces. Planes, points, rotor and stock are written as in a runs file.
"""

from __future__ import annotations

import math
from datetime import datetime
from typing import Any, Literal

import msgspec
from stillshaft.dsp import tables, units
from stillshaft.solver.runs import RunsError
from stillshaft.solver.runs_file import PlaneTable, StockTable, check_described

Support = Literal["rigid", "flexible", "unknown"]
_SLOWEST_LINE, _FASTEST_LINE, _MOST_POLES = 10.0, 500.0, 200  # Hz; beyond them a slip of the pen


class Machine(tables.Strict):
    """Which machine it is; texts as the person wrote them."""

    name: str | None = None
    type: str | None = None
    maker: str | None = None
    serial: str | None = None
    place: str | None = None
    owner: str | None = None
    bearings: str | None = None
    power: str | None = None
    note: str | None = None


class Rotor(tables.Strict):
    """As [rotor] of a runs file, and `highest_speed_rpm`, which it must never exceed."""

    kind: Literal["between bearings", "overhung"] | None = None
    mass: str | None = None
    speed_rpm: float | None = None
    bearing_span: str | None = None
    centre_of_mass: str | None = None
    highest_speed_rpm: float | None = None
    note: str | None = None


class Drive(tables.Strict):
    """What turns the rotor: pulleys and belt as lengths with a unit; `line`, the mains, as a frequency, `poles` of its motor."""

    kind: Literal["direct", "belt", "gear", "other"] | None = None
    motor_speed_rpm: float | None = None
    motor_pulley: str | None = None
    rotor_pulley: str | None = None
    belt_length: str | None = None
    variable_speed: bool | None = None
    line: str | None = None
    poles: int | None = None
    note: str | None = None


class Supports(tables.Strict):
    """Class of the supports by direction."""

    horizontal: Support | None = None
    vertical: Support | None = None
    axial: Support | None = None
    note: str | None = None


class Plane(PlaneTable):
    """As a [[plane]] of a runs file."""


class Stock(StockTable):
    """As a [[stock]] of a runs file."""


class Level(tables.Strict):
    """A vibration level of one point: abort level, limit or goal, and who says so."""

    point: str
    amplitude: float
    unit: str
    source: str | None = None


class Goal(tables.Strict):
    """What the job is to reach: a balance grade, or a text; `basis` says who decided."""

    basis: Literal["contract", "limit table", "agreed"] | None = None
    grade: str | None = None
    table: str | None = None
    note: str | None = None


class Starts(tables.Strict):
    """How often and how soon the machine may be started; minutes. `window_end` is a UTC ISO time."""

    allowed: int | None = None
    cold_allowed: int | None = None
    hot_allowed: int | None = None
    minutes_between: float | None = None
    coast_down_minutes: float | None = None
    lock_out_minutes: float | None = None
    window_end: str | None = None


class Condition(tables.Strict):
    """A condition that must be alike in all runs, within `tolerance`, both in `unit`; None: the same words."""

    name: str
    unit: str | None = None
    tolerance: float | None = None


class Neighbour(tables.Strict):
    """A machine that runs beside this one: its speed, known to ± `within_rpm`; None: as a nameplate tells it."""

    name: str
    speed_rpm: float
    within_rpm: float | None = None


class Brief(tables.Strict):
    """All of it; what was not said is None or empty. `repeatability` and `placement` as in a runs file."""

    machine: Machine = msgspec.field(default_factory=Machine)
    rotor: Rotor = msgspec.field(default_factory=Rotor)
    drive: Drive = msgspec.field(default_factory=Drive)
    supports: Supports = msgspec.field(default_factory=Supports)
    planes: list[Plane] = []
    stock: list[Stock] = []
    abort: list[Level] = []
    limits: list[Level] = []
    goal: Goal = msgspec.field(default_factory=Goal)
    starts: Starts = msgspec.field(default_factory=Starts)
    conditions: list[Condition] = []
    neighbours: list[Neighbour] = []
    interview: dict[str, str] = {}
    repeatability: str | None = None
    placement: str | None = None
    speed_tolerance: str | None = None
    note: str | None = None


def merged(table: dict[str, Any], patch: dict[str, Any]) -> dict[str, Any]:
    """The table with a patch laid over it; neither is changed."""
    result = dict(table)
    for key, value in patch.items():
        if value is None:
            result.pop(key, None)
        elif isinstance(value, dict):
            old = result.get(key)
            result[key] = merged(old if isinstance(old, dict) else {}, value)
        else:
            result[key] = value
    return result


def brief_from(table: dict[str, Any]) -> Brief:
    """The table as a brief. Raises TableError that names the field; lengths and masses stay texts."""
    return tables.checked(table, Brief)


def runs_head(brief: Brief) -> dict[str, Any]:
    """Planes, rotor, stock and scatter as the tables of a runs file."""
    rotor = {
        key: value
        for key, value in msgspec.to_builtins(brief.rotor).items()
        if value is not None and key not in ("highest_speed_rpm", "note")
    }
    texts = {key: getattr(brief, key) for key in ("repeatability", "placement", "speed_tolerance")}
    return {
        "plane": [_given(p) for p in brief.planes],
        **({"rotor": rotor} if rotor else {}),
        **({"stock": [_given(s) for s in brief.stock]} if brief.stock else {}),
        **{key: value for key, value in texts.items() if value is not None},
    }


def _given(entry: msgspec.Struct) -> dict[str, Any]:
    return {key: value for key, value in msgspec.to_builtins(entry).items() if value is not None and value != []}


def check_values(brief: Brief) -> None:
    """Read every length, mass and level of a brief. Raises TableError that names what is no such thing."""
    try:
        check_described(runs_head(brief))
        for name in ("motor_pulley", "rotor_pulley", "belt_length"):
            if (text := getattr(brief.drive, name)) is not None and units.parse(text, "mm", f"drive.{name}") <= 0.0:
                raise tables.TableError(f'drive.{name}: "{text}" must be above 0')
        _check_belt(brief.drive)
        _check_mains(brief.drive)
        _check_counts(brief)
        if brief.starts.window_end is not None:
            moment(brief.starts.window_end, ", in UTC")
        for number, neighbour in enumerate(brief.neighbours, start=1):
            for name in ("speed_rpm", "within_rpm"):
                if (value := getattr(neighbour, name)) is not None and not 0.0 < value < 1e6:
                    raise tables.TableError(f"neighbours {number}.{name}: {value:g} must be above 0 and below 1e6")
        for what, levels in (("abort", brief.abort), ("limits", brief.limits)):
            for number, level in enumerate(levels, start=1):
                units.vibration_unit(level.unit, f"{what} {number}.unit")
                if not level.amplitude > 0.0:
                    raise tables.TableError(f"{what} {number}.amplitude: {level.amplitude:g} must be above 0")
    except (RunsError, units.UnitError) as error:
        raise tables.TableError(str(error)) from None


def moment(text: str, clock: str = "") -> datetime:
    """A text as date and time. Raises TableError; `clock` ends what it says: whose time one without an offset is."""
    try:
        return datetime.fromisoformat(text)
    except ValueError:
        raise tables.TableError(
            f'starts.window_end: "{text}" is no date and time; write for example "2026-11-26 17:00"{clock}'
        ) from None


def _check_counts(brief: Brief) -> None:
    """Raise TableError for counts, minutes and tolerances that cannot be."""
    numbers = [(f"starts.{k}", v, 0.0) for k, v in msgspec.to_builtins(brief.starts).items() if not isinstance(v, str)]
    numbers += [(f"stock {n}.count", s.count, 1.0) for n, s in enumerate(brief.stock, start=1)]
    numbers += [(f"conditions.{c.name}, tolerance", c.tolerance, 0.0) for c in brief.conditions]
    numbers += [("drive.motor_speed_rpm", brief.drive.motor_speed_rpm, 1.0)]
    for name, value, least in numbers:
        if value is not None and not least <= value < 1e9:
            raise tables.TableError(f"{name}: {value:g} must be {least:g} or more, and below 1e9")


def _check_mains(drive: Drive) -> None:
    """Raise TableError for a line frequency that no mains has, and for a number of poles that no motor has."""
    if drive.line is not None and not _SLOWEST_LINE <= (hertz := line_hz(drive.line)) <= _FASTEST_LINE:
        raise tables.TableError(
            f'drive.line: "{drive.line}" is {hertz:g} Hz; mains have 50 Hz or 60 Hz, railways 16.7 Hz'
        )
    if drive.poles is not None and (drive.poles % 2 or not 2 <= drive.poles <= _MOST_POLES):
        raise tables.TableError(f"drive.poles: {drive.poles}: a motor has an even number, 2 to {_MOST_POLES}")


def line_hz(text: str) -> float:
    """Line frequency of the brief in Hz. Raises UnitError."""
    return units.speed_rpm(text, "drive.line") / 60.0


def _check_belt(drive: Drive) -> None:
    """Raise TableError for a belt that cannot reach round its pulleys."""
    if drive.belt_length is None:
        return
    round_mm = [
        0.5 * math.pi * units.parse(text, "mm", "drive") for text in (drive.motor_pulley, drive.rotor_pulley) if text
    ]
    if units.parse(drive.belt_length, "mm", "drive.belt_length") <= sum(round_mm):
        raise tables.TableError(
            f"drive.belt_length: {drive.belt_length} does not reach round half of each pulley, {sum(round_mm):.0f} mm; give "
            "the pitch length of the belt and the pitch diameters of the pulleys"
        )
