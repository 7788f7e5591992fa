"""The command of an advice with what the record knows in the place of its blanks: entries, planes, masses.

What only the person knows stays in capitals: SOURCE, ANGLE, WHY. DIR is filled in where the command is shown.
"""

from __future__ import annotations

import math
import shlex
from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np
from stillshaft.solver import cautions, next_masses, next_steps, progress
from stillshaft.solver.next_steps import Case
from stillshaft.solver.state import JobState

if TYPE_CHECKING:
    from stillshaft.solver.correction import Correction

_PIECE, _SOLVE = "'PLANE = MASS at ANGLE'", "stillshaft job solve DIR && "
_SAME = 1e-3  # of a mass or an angle: what is printed of them is the same
_TAKE_TRIAL, _TAKE_ALL = "stillshaft job mass DIR take trial && ", "stillshaft job mass DIR take all && "


def command(case: Case, act: str) -> str:
    """The command that does what is advised now."""
    told, state = next_steps.act_named(act).command, case.state
    match act:
        case "name-points":
            what, point = cautions.unwatched(state)[0]
            table = "abort" if what == cautions.ABORT else "limits"
            return told.replace("'LEVEL = nothing'", shlex.quote(f"{table}.{point} = nothing"))
        case "after-alarm":
            return told.replace("ENTRY", str(state.on_rotor[-1].of))
        case "put-on-trial" | "larger-trial":
            wanted = next_masses.trial_wanted(case)
            if wanted is None:
                return told
            plane, mass_g = wanted
            text = f"{plane} = {'MASS' if mass_g is None else f'{mass_g:.2g} g'} at {_place(state, plane)}"
            off = _TAKE_TRIAL if progress.trials_on(state) else ""
            return off + told.replace(_PIECE, shlex.quote(text))
        case "put-on-part":
            pieces = [
                f"{plane} = {abs(mass):.3g} g at {math.degrees(float(np.angle(mass))) % 360.0:.0f}"
                for plane, mass in next_masses.part_wanted(case).items()
            ]
            return _first_off(state) + told.replace(_PIECE, " ".join(shlex.quote(p) for p in pieces))
        case "put-on-correction" | "trim":
            if state.brief.stock:
                how = "--pieces" if act == "put-on-correction" else "--pieces --leave-on"
                return _first_off(state) + told.replace("solve DIR", f"solve DIR {how}").replace(
                    "put plan", "put pieces"
                )
            return _first_off(state) + (told.removeprefix(_SOLVE) if _kept(case) else told)
        case "photograph" | "fix-permanently":
            entries = progress.without_photo(state) if act == "photograph" else progress.not_fixed(state)
            return told.replace("ENTRY", str(entries[0].of))
    return told


def _place(state: JobState, plane: str) -> str:
    """Where a trial mass goes: any angle, or any position where the plane has some."""
    has = next(p for p in state.brief.planes if p.name == plane).positions is not None
    return "position NUMBER" if has else "ANGLE"


def _kept(case: Case) -> bool:
    """Whether the last plan says what would be worked out now: it need not be solved again."""
    solution, plans = case.facts.solution, case.state.plans
    if solution is None or not plans:
        return False
    result = plans[-1].what.result
    return all(
        _alike(result.get(key), corrections)
        for key, corrections in (("corrections", solution.corrections), ("additional", solution.additional))
    )


def _alike(rows: object, corrections: Sequence[Correction]) -> bool:
    told = [r for r in rows if isinstance(r, dict)] if isinstance(rows, list) else []
    return len(told) == len(corrections) and all(
        row.get("plane") == c.plane
        and all(
            isinstance(value := row.get(key), int | float) and math.isclose(value, getattr(c, key), rel_tol=_SAME)
            for key in ("mass", "angle_deg")
        )
        for row, c in zip(told, corrections, strict=True)
    )


def _first_off(state: JobState) -> str:
    """What comes off before a correction: with a trial mass on, all that is on."""
    trial = progress.trials_on(state)
    if not trial:
        return ""
    return _TAKE_TRIAL if len(trial) == len(state.on_rotor) else _TAKE_ALL
