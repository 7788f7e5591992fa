"""What is said before hands go in and before each start, for this machine and what is on its rotor.

The texts are a table, `cautions.toml` beside this file: common practice, no source. They add to local rules and to what
licensed or competent persons decide, and never say that a machine is safe.
"""

from __future__ import annotations

import functools
import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from stillshaft.dsp import tables, units
from stillshaft.dsp.units import InputError
from stillshaft.solver.brief import Brief
from stillshaft.solver.events import Piece
from stillshaft.solver.state import JobState
from stillshaft.solver.trial import centrifugal_force

TEXTS = Path(__file__).with_name("cautions.toml")
ABORT = "abort level"  # a kind of level
_NO_FIXING = "unknown"
_Filled = dict[str, str]


class CautionError(InputError):
    """A table of cautions that cannot be used: the message names the file and the entry."""


@dataclass(frozen=True)
class Caution:
    """One caution: `acknowledge` where a person must say that it holds before going on; `source` says whose rule it is."""

    id: str
    text: str
    acknowledge: bool
    source: str


@dataclass(frozen=True)
class Force:
    """What a piece pulls at a speed, N; None where speed or radius is not known."""

    piece: Piece
    newton: float | None

    @property
    def kgf(self) -> float | None:
        """The force as a weight that a person can picture."""
        return None if self.newton is None else self.newton / units.STANDARD_GRAVITY_M_S2


class _Fixing(tables.Strict):
    name: str
    words: list[str]


class _Caution(tables.Strict):
    id: str
    when: Literal["hands", "start", "piece"]
    applies: str
    acknowledge: bool
    text: str


class _File(tables.Strict):
    format: Literal[1]
    source: str
    fixing: list[_Fixing]
    caution: list[_Caution]


@functools.cache
def _load(path: Path) -> _File:
    try:
        file = tables.checked(tables.read(path), _File)
    except tables.TableError as error:
        message = str(error)
        raise CautionError(message if message.startswith(str(path)) else f"{path}: {message}") from None
    ids = [c.id for c in file.caution]
    if doubled := next((i for i in ids if ids.count(i) > 1), None):
        raise CautionError(f'{path}: caution "{doubled}": its id is used twice; each needs its own')
    return file


def before_hands(state: JobState, path: Path = TEXTS) -> tuple[Caution, ...]:
    """What must hold before hands go near what can turn, and the rules of the pieces that are on. Raises CautionError."""
    pieces = [c for on in state.on_rotor for c in for_piece(on.piece, path)]
    return (*_chosen(path, "hands", {"always": {}}), *_once(pieces))


def before_start(state: JobState, path: Path = TEXTS) -> tuple[Caution, ...]:
    """What must hold before the machine is started with what is on its rotor now. Raises CautionError."""
    pieces = [c for on in state.on_rotor for c in for_piece(on.piece, path)]
    return (*_chosen(path, "start", _circumstances(state)), *_once(pieces))


def for_piece(piece: Piece, path: Path = TEXTS) -> tuple[Caution, ...]:
    """The rule for one piece by its fixing. Raises CautionError."""
    return _chosen(path, "piece", {fixing_of(piece, path): {"piece": describe(piece)}})


def fixing_of(piece: Piece, path: Path = TEXTS) -> str:
    """Which fixing a piece has: temporary, clamped, welded, removed metal, bolted, or unknown. Raises CautionError."""
    if piece.mass_g < 0.0:
        return "removed metal"
    text = (piece.fixing or "").lower()
    for fixing in _load(path).fixing:
        if any(re.search(rf"\b{re.escape(word)}s?\b", text) for word in fixing.words):
            return fixing.name
    return _NO_FIXING


def describe(piece: Piece) -> str:
    """The piece in words: mass, plane, angle."""
    what = "removed" if piece.mass_g < 0.0 else "on"
    return f'{abs(piece.mass_g):.4g} g {what} "{piece.plane}" at {piece.angle_deg % 360.0:.0f}°'


def forces(state: JobState) -> tuple[Force, ...]:
    """The centrifugal force of every piece on the rotor at the highest speed the record knows it to run at."""
    speed_rpm = running_speed(state)
    found = []
    for on in state.on_rotor:
        if on.piece.mass_g <= 0.0:
            continue
        radius_mm = on.piece.radius_mm or _radius(state.brief, on.piece.plane)
        newton = None
        if speed_rpm is not None and radius_mm is not None:
            newton = centrifugal_force(on.piece.mass_g / 1000.0, radius_mm / 1000.0, speed_rpm)
        found.append(Force(on.piece, newton))
    return tuple(found)


def running_speed(state: JobState) -> float | None:
    """The higher of the brief's speed and the last run's, r/min; None where neither is known."""
    known = [state.brief.rotor.speed_rpm, state.runs[-1].what.speed_rpm if state.runs else None]
    return max((s for s in known if s is not None), default=None)


def _radius(brief: Brief, plane: str) -> float | None:
    """Radius of a plane in mm."""
    text = next((p.radius for p in brief.planes if p.name == plane), None)
    try:
        return None if text is None else units.parse(text, "mm", f'plane "{plane}".radius')
    except units.UnitError:  # a start is not to hang on it: the force is then not known
        return None


def _chosen(path: Path, when: str, circumstances: Mapping[str, _Filled]) -> tuple[Caution, ...]:
    file = _load(path)
    found = []
    for caution in file.caution:
        if caution.when == when and caution.applies in circumstances:
            known = circumstances[caution.applies]
            if not tables.only_in_braces(caution.text, known):
                raise CautionError(
                    f'{path}: caution "{caution.id}": its braces name what is not known there; there is '
                    f"{', '.join(known) or 'nothing'}"
                )
            text = caution.text.format(**known)
            found.append(Caution(caution.id, text, caution.acknowledge, file.source))
    return tuple(found)


def _once(cautions: list[Caution]) -> tuple[Caution, ...]:
    return tuple(dict.fromkeys(cautions))


def _circumstances(state: JobState) -> dict[str, _Filled]:
    """What holds of the machine and its rotor now, each with what its text names."""
    found: dict[str, _Filled] = {"always": {}}
    found |= _of_masses(state)
    found |= _of_speed(state)
    brief = state.brief
    agreed = {level.point for level in brief.abort}
    strays = [point for what, point in unwatched(state) if what == ABORT]
    if watched := [level for level in brief.abort if level.point not in strays]:
        found["abort"] = {"levels": "; ".join(f"{x.point} {x.amplitude:g} {x.unit}" for x in watched)}
    if strays:
        found["abort nowhere"] = {"points": ", ".join(strays)}
    missing = [name for name in _points(state) if name not in agreed]
    if missing or not brief.abort:
        found["no abort"] = {"points": ", ".join(missing) or "any point"}
    if state.runs:
        found["run before"] = {"run": state.runs[-1].what.name}
    return found


def _of_masses(state: JobState) -> dict[str, _Filled]:
    found: dict[str, _Filled] = {}
    speed_rpm = running_speed(state)
    pulls = forces(state)
    known = [(f.newton, f.piece) for f in pulls if f.newton is not None]
    if known and speed_rpm is not None:
        largest = max(known, key=lambda k: k[0])
        found["forces"] = {
            "speed": f"{speed_rpm:.0f} r/min",
            "forces": "; ".join(f"{describe(piece)}: {_force(newton)}" for newton, piece in known),
            "largest": f"{_force(largest[0])} ({describe(largest[1])})",
        }
    if untold := [describe(f.piece) for f in pulls if f.newton is None]:
        found["forces unknown"] = {"pieces": "; ".join(untold)}
    if removed := [describe(on.piece) for on in state.on_rotor if on.piece.mass_g < 0.0]:
        found["metal removed"] = {"pieces": "; ".join(removed)}
    if state.masses and state.masses[-1].id > max((s.id for s in state.starts), default=0):
        found["masses changed"] = {}
    return found


def _force(newton: float) -> str:
    """Three figures in N and in kgf."""
    return f"{_figures(newton)} N ({_figures(newton / units.STANDARD_GRAVITY_M_S2)} kgf)"


def _figures(value: float) -> str:
    return f"{value:.{max(0, 2 - math.floor(math.log10(value)))}f}" if value > 0.0 else "0"


def _of_speed(state: JobState) -> dict[str, _Filled]:
    speed_rpm, highest_rpm = running_speed(state), state.brief.rotor.highest_speed_rpm
    if highest_rpm is None:
        return {"no speed limit": {}}
    told = "a speed that the brief does not say" if speed_rpm is None else f"{speed_rpm:.0f} r/min"
    name = "too fast" if speed_rpm is not None and speed_rpm > highest_rpm else "speed limit"
    return {name: {"speed": told, "highest": f"{highest_rpm:.0f} r/min"}}


def _points(state: JobState) -> list[str]:
    """Names of the points that are measured: those of the last run, else of the hook-up."""
    if state.runs:
        return [v.point for v in state.runs[-1].what.vectors]
    return list(wired_points(state))


def wired_points(state: JobState) -> tuple[str, ...]:
    """Names of the points of the hook-up; none where there is no hook-up yet."""
    listed = (state.hookup or {}).get("point")
    entries = listed if isinstance(listed, list) else []
    return tuple(str(p["name"]) for p in entries if isinstance(p, dict) and "name" in p)


def unwatched(state: JobState) -> tuple[tuple[str, str], ...]:
    """Abort levels and limits at points that the hook-up does not have: which it is, and the point."""
    there = wired_points(state)
    listed = ((ABORT, state.brief.abort), ("limit", state.brief.limits))
    return tuple(
        (what, level.point) for what, levels in listed for level in levels if there and level.point not in there
    )
