"""Limit tables: balance grades, journal loads and vibration limits as data files that name their source and edition.

The built-in ones lie in the folder `tables` beside this file. Anybody may copy one, edit it, and name the copy: the
edition of the standard in force, the machine's maker and local rules decide.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

import msgspec
from stillshaft.dsp import tables, units
from stillshaft.dsp.units import InputError

FOLDER = Path(__file__).parent / "tables"
SUPPORTS = ("rigid", "flexible")


class LimitsError(InputError):
    """A tolerance that cannot be worked out: the message names the field that is missing or wrong."""


class _MachineEntry(tables.Strict):
    names: list[str]
    grade: float
    above_rpm: float = 0.0
    up_to_rpm: float = math.inf
    source: str | None = None


class _SharesEntry(tables.Strict):
    kind: Literal["between bearings", "overhung"]
    least: float
    most: float


class _StaticCoupleEntry(tables.Strict):
    source: str
    edition: str
    static: float
    couple: float


class _GradesFile(tables.Strict):
    format: Literal[1]
    kind: Literal["balance grades"]
    name: str
    source: str
    edition: str
    grades: list[float]
    usual: float
    shares: list[_SharesEntry]
    machine: list[_MachineEntry] = []
    static_couple: _StaticCoupleEntry | None = None


class _JournalFile(tables.Strict):
    format: Literal[1]
    kind: Literal["journal load"]
    name: str
    source: str
    edition: str
    constant: float


class _ClassEntry(tables.Strict):
    name: str
    values: list[float]
    support: Literal["rigid", "flexible"] | None = None


class _VibrationFile(tables.Strict):
    format: Literal[1]
    kind: Literal["vibration"]
    name: str
    source: str
    edition: str
    unit: str
    level: Literal["broadband", "1x"]
    limits: list[str]
    zones: list[str]
    accept: str
    band_hz: tuple[float, float] | None = None
    slow_band_hz: tuple[float, float] | None = None
    classes: list[_ClassEntry] = msgspec.field(default_factory=list, name="class")


@dataclass(frozen=True)
class Machine:
    """Usual grade, mm/s, of kinds of machine in a range of service speeds: above one, up to and with the other."""

    names: tuple[str, ...]
    grade_mm_s: float
    above_rpm: float
    up_to_rpm: float
    source: str | None


@dataclass(frozen=True)
class StaticCouple:
    """Older split for overhung rotors: factors of U_per · span / distance for the static part and for the couple."""

    static: float
    couple: float
    source: str


@dataclass(frozen=True)
class GradesTable:
    """Balance quality grades; `shares` are the least and most of U_per in one bearing plane, by kind of rotor."""

    path: Path
    name: str
    source: str
    edition: str
    grades_mm_s: tuple[float, ...]
    usual_mm_s: float
    machines: tuple[Machine, ...]
    shares: dict[str, tuple[float, float]]
    static_couple: StaticCouple | None


@dataclass(frozen=True)
class JournalTable:
    """Limit per plane by the load on that journal: `constant` g·mm per kg of load, divided by the speed in r/min."""

    path: Path
    name: str
    source: str
    edition: str
    constant: float


@dataclass(frozen=True)
class MachineClass:
    """Limits of one class on one kind of support (None: on any), in rising order; the last ones may be absent."""

    name: str
    support: str | None
    values: tuple[float, ...]


@dataclass(frozen=True)
class VibrationTable:
    """Vibration limits in one unit; `zones` has one name more than `limits`, `accept` is the limit of the verdict.

    `slow_band_hz` replaces `band_hz` below 600 r/min.
    """

    path: Path
    name: str
    source: str
    edition: str
    unit: units.VibrationUnit
    broadband: bool
    band_hz: tuple[float, float] | None
    slow_band_hz: tuple[float, float] | None
    limits: tuple[str, ...]
    zones: tuple[str, ...]
    accept: str
    classes: tuple[MachineClass, ...]


Table = GradesTable | JournalTable | VibrationTable


def cited(table: Table) -> str:
    """Name, source and edition in one line."""
    name = "" if table.source.startswith(table.name) else f"{table.name}: "
    return f"{name}{table.source}, {table.edition}"


def contents(table: Table) -> tuple[str, ...]:
    """What the table holds, in short lines."""
    if isinstance(table, JournalTable):
        return (f"{table.constant:g} g·mm per kg of journal load and plane, divided by the speed in r/min",)
    if isinstance(table, GradesTable):
        return tuple(f"{', '.join(m.names)}{_range(m)}: G{m.grade_mm_s:g}" for m in table.machines)
    return tuple(row_text(table, row) for row in table.classes)


def row_text(table: VibrationTable, row: MachineClass) -> str:
    """The limits of one class on one support."""
    limits = ", ".join(f"{name} {value:g}" for name, value in zip(table.limits, row.values, strict=False))
    return f"{row.name}{', ' + row.support if row.support else ''}: {limits} {table.unit.text}"


def _range(machine: Machine) -> str:
    above = f" above {machine.above_rpm:g}" if machine.above_rpm > 0.0 else ""
    up_to = f" up to {machine.up_to_rpm:g}" if machine.up_to_rpm < math.inf else ""
    return f"{above}{up_to} r/min" if above or up_to else ""


def built_in() -> tuple[Table, ...]:
    """All tables that come with the program."""
    return tuple(load(path) for path in sorted(FOLDER.glob("*.toml")))


def named(text: str) -> Table:
    """A built-in table by its name, such as "ISO 20816-3", else the table in that file. Raises LimitsError."""
    for path in sorted(FOLDER.glob("*.toml")):
        table = load(path)
        if table.name.lower() == text.strip().lower():
            return table
    if not Path(text).exists():
        listed = ", ".join(f'"{t.name}"' for t in built_in())
        raise LimitsError(f'limits "{text}": is neither a file nor a built-in table; there is {listed}')
    return load(Path(text))


def grades() -> GradesTable:
    """The built-in table of balance quality grades."""
    table = load(FOLDER / "balance_grades.toml")
    assert isinstance(table, GradesTable)
    return table


def journal() -> JournalTable:
    """The built-in rule by journal load."""
    table = load(FOLDER / "journal_load.toml")
    assert isinstance(table, JournalTable)
    return table


def load(path: Path) -> Table:
    """Read a table. Raises LimitsError with one line that names the file and the field."""
    try:
        content = tables.read(path)
    except tables.TableError as error:
        raise LimitsError(str(error)) from None
    try:
        return _table(content, path)
    except (tables.TableError, units.UnitError, LimitsError) as error:
        raise LimitsError(f"{path}: {error}") from None


def _table(content: dict[str, Any], path: Path) -> Table:
    kind = content.get("kind")
    if kind == "balance grades":
        return _grades(tables.checked(content, _GradesFile), path)
    if kind == "journal load":
        return _journal(tables.checked(content, _JournalFile), path)
    if kind == "vibration":
        return _vibration(tables.checked(content, _VibrationFile), path)
    raise LimitsError('kind: must be "vibration", "balance grades" or "journal load"')


def _said(file: _GradesFile | _JournalFile | _VibrationFile) -> tuple[str, str, str]:
    """Name, source and edition, none of them empty."""
    for field, text in (("name", file.name), ("source", file.source), ("edition", file.edition)):
        if not text.strip():
            raise LimitsError(f"{field}: is empty; say where the limits come from")
    return file.name, file.source, file.edition


def _rising(values: Sequence[float], field: str) -> tuple[float, ...]:
    """The values, which must be finite, above 0 and each larger than the one before."""
    for value in values:
        if not 0.0 < value < math.inf:
            raise LimitsError(f"{field}: {value:g} must be above 0 and finite")
    for before, after in itertools.pairwise(values):
        if after <= before:
            raise LimitsError(f"{field}: {after:g} stands after {before:g}; write them in rising order")
    return tuple(values)


def _grades(file: _GradesFile, path: Path) -> GradesTable:
    known = _rising(file.grades, "grades")
    machines = []
    for number, entry in enumerate(file.machine, start=1):
        if entry.grade not in known:
            raise LimitsError(f"machine {number}.grade: {entry.grade:g} is none of the grades")
        machines.append(Machine(tuple(entry.names), entry.grade, entry.above_rpm, entry.up_to_rpm, entry.source))
    if file.usual not in known:
        raise LimitsError(f"usual: {file.usual:g} is none of the grades")
    shares: dict[str, tuple[float, float]] = {entry.kind: (entry.least, entry.most) for entry in file.shares}
    for kind in ("between bearings", "overhung"):
        if kind not in shares:
            raise LimitsError(f'shares: "{kind}" is missing')
        least, most = shares[kind]
        if not 0.0 <= least <= most < math.inf:
            raise LimitsError(f'shares "{kind}": least {least:g} and most {most:g} are not in order')
    split = file.static_couple
    if split is not None:
        _rising([split.static], "static_couple.static")
        _rising([split.couple], "static_couple.couple")
    return GradesTable(
        path, *_said(file), known, file.usual, tuple(machines), shares,
        None if split is None else StaticCouple(split.static, split.couple, f"{split.source}, {split.edition}"),
    )  # fmt: skip


def _journal(file: _JournalFile, path: Path) -> JournalTable:
    return JournalTable(path, *_said(file), _rising([file.constant], "constant")[0])


def _vibration(file: _VibrationFile, path: Path) -> VibrationTable:
    if not file.limits or len(set(file.limits)) < len(file.limits):
        raise LimitsError("limits: name at least one, each once")
    if len(file.zones) != len(file.limits) + 1:
        raise LimitsError(
            f"zones: {len(file.zones)} names; {len(file.limits)} limits part {len(file.limits) + 1} zones"
        )
    if file.accept not in file.limits:
        raise LimitsError(f'accept: "{file.accept}" is none of the limits; there is {", ".join(file.limits)}')
    if not file.classes:
        raise LimitsError("class: there is none; add a [[class]] with its values")
    for field, band_hz in (("band_hz", file.band_hz), ("slow_band_hz", file.slow_band_hz)):
        if band_hz is not None:
            _rising(band_hz, field)
    classes: list[MachineClass] = []
    for entry in file.classes:
        where = f'class "{entry.name}"' + (f" {entry.support}" if entry.support else "")
        if not 1 <= len(entry.values) <= len(file.limits):
            raise LimitsError(f"{where}.values: {len(entry.values)} values; there are {len(file.limits)} limits")
        for other in classes:
            if other.name == entry.name and (entry.support in (None, other.support) or other.support is None):
                raise LimitsError(f"{where}: stands there twice")
        classes.append(MachineClass(entry.name, entry.support, _rising(entry.values, f"{where}.values")))
    return VibrationTable(
        path, *_said(file), units.vibration_unit(file.unit, "unit"), file.level == "broadband", file.band_hz,
        file.slow_band_hz,
        tuple(file.limits), tuple(file.zones), file.accept, tuple(classes),
    )  # fmt: skip


def _plain(text: str) -> str:
    return " ".join(text.lower().split())


def machine_grade(table: GradesTable, machine: str, speed_rpm: float | None) -> tuple[float, str]:
    """Usual grade, mm/s, of a kind of machine at a service speed, and where it comes from. Raises LimitsError."""
    wanted = {_plain(machine), _plain(machine).removesuffix("s")}
    found = [m for m in table.machines if wanted & {_plain(name) for name in m.names}]
    if not found:
        listed = ", ".join(dict.fromkeys(name for m in table.machines for name in m.names))
        raise LimitsError(
            f'machine "{machine}": has no usual grade in {table.name}; there is {listed}, or give a grade'
        )
    for m in found:
        if speed_rpm is None and len(found) > 1:
            raise LimitsError(
                f'machine "{machine}": its grade depends on the highest service speed; give it as --speed'
            )
        if speed_rpm is None or m.above_rpm < speed_rpm <= m.up_to_rpm:
            return m.grade_mm_s, m.source or f"{table.name}, {table.edition}"
    raise LimitsError(f'machine "{machine}": {table.name} has no grade for it at {speed_rpm:g} r/min; give a grade')
