"""What may run beside the shaft: the speeds of neighbours, belts and the mains, held against a second source found.

The guide `steps` shows the list, a TOML file.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

import msgspec
from stillshaft.dsp import tables, units
from stillshaft.dsp.measure import Measurement
from stillshaft.dsp.steadiness import Beat
from stillshaft.dsp.units import InputError

_MULTIPLES = range(1, 13)


class CandidatesError(InputError):
    """A candidates list that cannot be used: the message names the file and the field."""


class _Machine(tables.Strict):
    name: str
    speed: str
    within: str = "0 rpm"


class _Belt(tables.Strict):
    name: str
    pulley: str
    speed: str
    length: str
    within: str = "0 rpm"


class _File(tables.Strict):
    format: Literal[1]
    line: str | None = None
    machine: list[_Machine] = msgspec.field(default_factory=list)
    belt: list[_Belt] = msgspec.field(default_factory=list)


@dataclass(frozen=True)
class Candidate:
    """Something that turns or pulses `rpm` times a minute, known to ± `within_rpm`."""

    name: str
    rpm: float
    within_rpm: float


@dataclass(frozen=True)
class Match:
    """The multiple of a candidate nearest to a source: `fits` where the two lie within their intervals together."""

    name: str
    multiple: int
    rpm: float
    off_rpm: float
    fits: bool


def load(path: Path) -> tuple[Candidate, ...]:
    """Read a candidates list. Raises CandidatesError with one line that names the file and the field."""
    try:
        table = tables.read(path)
    except tables.TableError as error:
        raise CandidatesError(str(error)) from None
    try:
        return _candidates(tables.checked(table, _File))
    except (CandidatesError, tables.TableError, units.UnitError) as error:
        raise CandidatesError(f"{path}: {error}") from None


def _candidates(file: _File) -> tuple[Candidate, ...]:
    found = []
    if file.line is not None:
        line_rpm = _positive(units.speed_rpm(file.line, "line"), "line", file.line)
        found += [Candidate("line frequency", line_rpm, 0.001 * line_rpm)]
    for number, machine in enumerate(file.machine, start=1):
        where = f"machine {number}"
        speed = _speed(machine.speed, f"{where}.speed")
        found.append(Candidate(machine.name, speed, _within(machine.within, f"{where}.within")))
    for number, belt in enumerate(file.belt, start=1):
        where = f"belt {number}"
        pulley_mm = _positive(units.parse(belt.pulley, "mm", f"{where}.pulley"), f"{where}.pulley", belt.pulley)
        length_mm = _positive(units.parse(belt.length, "mm", f"{where}.length"), f"{where}.length", belt.length)
        if length_mm < math.pi * pulley_mm:
            raise CandidatesError(
                f"{where}.length: {belt.length} does not reach round its pulley, {math.pi * pulley_mm:.0f} mm; "
                "give the pitch length of the belt and the pitch diameter of the pulley"
            )
        speed = _speed(belt.speed, f"{where}.speed")
        # belt frequency π·D·n/L
        rpm = math.pi * pulley_mm * speed / length_mm
        found.append(Candidate(belt.name, rpm, _within(belt.within, f"{where}.within")))
    if any(not candidate.name.strip() for candidate in found):
        raise CandidatesError("name: is empty; a machine or belt needs one to be named by")
    if not found:
        raise CandidatesError("there is none: add line, [[machine]] or [[belt]]")
    return tuple(found)


def _positive(value: float, where: str, text: str) -> float:
    if not 0.0 < value < 1e9:
        raise CandidatesError(f'{where}: "{text}" must be above 0')
    return value


def _speed(text: str, where: str) -> float:
    return _positive(units.speed_rpm(text, where), where, text)


def _within(text: str, where: str) -> float:
    value = units.speed_rpm(text, where)
    if not 0.0 <= value < 1e9:
        raise CandidatesError(f'{where}: "{text}" must be 0 or more')
    return value


def matches(measured: Measurement, candidates: tuple[Candidate, ...]) -> dict[str, tuple[Match, ...]]:
    """For each point with a second source, how the candidates lie to it."""
    beats = {p.name: p.steadiness.beat for p in measured.points}
    return {name: compare(beat, candidates) for name, beat in beats.items() if beat is not None}


def compare(beat: Beat, candidates: tuple[Candidate, ...]) -> tuple[Match, ...]:
    """Each candidate's nearest multiple to the source, the ones that fit first."""
    found = []
    for candidate in candidates:
        off, multiple = min(
            ((source - m * candidate.rpm, m) for source in beat.source_rpm for m in _MULTIPLES), key=lambda o: abs(o[0])
        )
        together = math.hypot(beat.source_rpm_ci95, multiple * candidate.within_rpm)
        found.append(Match(candidate.name, multiple, multiple * candidate.rpm, off, abs(off) <= max(together, 1e-9)))
    return tuple(sorted(found, key=lambda m: (not m.fits, abs(m.off_rpm))))
