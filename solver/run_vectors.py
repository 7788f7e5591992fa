"""What two runs of a job can be held against each other by: vectors in one unit, their scatter, and what sat on the rotor."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import tables, units, vectors
from stillshaft.dsp.units import shown
from stillshaft.solver import inspection
from stillshaft.solver.brief import Brief
from stillshaft.solver.cautions import running_speed
from stillshaft.solver.diagnosis import Evidence, Word
from stillshaft.solver.events import Piece, Run
from stillshaft.solver.folder import RecordError
from stillshaft.solver.state import JobRun, JobState
from stillshaft.solver.trial import NEAR_RESONANCE

Real = NDArray[np.float64]

_LEAST_PERCENT, _LEAST_DEG = 0.5, 0.5  # no repeatability is taken to be better: common practice, no source
_SAME_MASS = 0.01  # of a plane's mass: the usual error of weighing
_T = 1.959963984540054


@dataclass(frozen=True)
class Measured:
    """A point's vector and the covariance (2, 2) of its re and im within the run."""

    z: complex
    covariance: Real


def run_from(fields: dict[str, Any]) -> Run:
    """The keys of a "run" event as its description; purpose and name may be missing. Raises RecordError that names the key."""
    try:
        run = tables.checked({"purpose": "other", "name": "new run"} | fields, Run)
        units.vibration_unit(run.unit, "unit")
    except (tables.TableError, units.UnitError) as error:
        raise RecordError(f"run: {shown(error, 300)}") from None
    return run


def factor(of: str, into: str, speed_rpm: float) -> complex:
    """What turns once-per-rev vectors of one unit into another at a speed, a change of quantity included."""
    own, other = units.vibration_unit(of, "unit"), units.vibration_unit(into, "unit")
    turned = vectors.quantity_factor(own.quantity, other.quantity, speed_rpm / 60.0)
    return turned * other.per_si_peak / own.per_si_peak


def measured(run: Run, unit: str, turn_deg: dict[str, float] | None = None) -> dict[str, Measured]:
    """Vectors by point in a unit, turned where the reference changed; points without a phase are left out."""
    whole = factor(run.unit, unit, run.speed_rpm)
    found = {}
    for vector in run.vectors:
        if vector.phase_deg is None:
            continue
        turned = whole * vectors.vector(1.0, (turn_deg or {}).get(vector.point, 0.0))
        z = vectors.vector(vector.amplitude, vector.phase_deg)
        within = vectors.rotated_covariance(_covariance(run, vector.point), np.array([turned]))
        found[vector.point] = Measured(complex(turned * z), within)
    return found


def of_job(run: JobRun, unit: str) -> dict[str, Measured]:
    """Vectors of a run of the job by point, in a unit and in the first run's reference."""
    return measured(run.what, unit, run.turn_deg)


def _covariance(run: Run, point: str) -> Real:
    """As the run gives it, else from the half widths, else none."""
    given = run.covariance
    if given is not None and point in given.points:
        at = 2 * given.points.index(point)
        return np.array([row[at : at + 2] for row in given.matrix[at : at + 2]], dtype=np.float64)
    vector = next(v for v in run.vectors if v.point == point)
    along = (vector.amplitude_ci95 or 0.0) / _T
    across = vector.amplitude * np.sin(np.deg2rad(min(vector.phase_ci95_deg or 0.0, 90.0))) / _T
    return vectors.along_and_across(vectors.vector(1.0, vector.phase_deg or 0.0), along, float(across))


def near_resonance(state: JobState) -> float | None:
    """The resonance that a sweep or bump test showed within 20 % of running speed, r/min; None where there is none."""
    running = running_speed(state)
    found: list[float] = []
    for what, entries, key, times in (("sweep", "points", "rpm", 1.0), ("bump", "modes", "frequency_hz", 60.0)):
        event = next((m for m in reversed(state.measured) if m.what.what == what), None)
        listed = rows({} if event is None else event.what.figures.get(entries))
        inner = [r for row in listed for r in rows(row.get("resonances"))] if what == "sweep" else listed
        found += [times * float(r[key]) for r in inner if isinstance(r.get(key), int | float) and r[key] > 0.0]
    near = [rpm for rpm in found if running is not None and abs(running / rpm - 1.0) < NEAR_RESONANCE]
    return min(near, key=lambda rpm: abs(rpm - (running or 0.0)), default=None)


def rows(listed: object) -> list[dict[str, Any]]:
    """The tables of a list in a record's figures; what is none is passed over."""
    return [entry for entry in (listed if isinstance(listed, list) else []) if isinstance(entry, dict)]


def assumed_repeatability(state: JobState) -> inspection.Assumed | None:
    """The repeatability that is usual for such a machine; None where the brief states one."""
    return None if state.brief.repeatability is not None else _usual(state)


def _usual(state: JobState) -> inspection.Assumed:
    return inspection.assumed_repeatability(_facts(state), near_resonance=near_resonance(state) is not None)


def _facts(state: JobState) -> Evidence:
    """What the brief says in words, and what the newest change of the load showed."""
    facts = dict(inspection.facts_from(state.brief))
    for event in state.measured:
        told = event.what.figures.get("evidence")
        answer = told.get("load_test") if isinstance(told, dict) else None
        if isinstance(answer, dict) and isinstance(answer.get("word"), str):
            facts["load_test"] = Word(answer["word"])
    return facts


def repeatability(state: JobState) -> tuple[float, float]:
    """Percent and degrees from run to run, one standard deviation each: the brief's, else what is usual for the machine."""
    stated = [float(x) for x in re.findall(r"\d+(?:\.\d+)?", state.brief.repeatability or "")]
    if len(stated) != 2:  # none, or none that can be read
        usual = _usual(state)
        return usual.percent, usual.degrees
    return max(stated[0], _LEAST_PERCENT), max(stated[1], _LEAST_DEG)


def between_runs(found: Measured, repeats: tuple[float, float]) -> Real:
    """Covariance (2, 2) of a vector from run to run: its own, and the repeatability in percent and degrees."""
    size = abs(found.z)
    spread = vectors.along_and_across(found.z, size * repeats[0] / 100.0, size * float(np.deg2rad(repeats[1])))
    return np.asarray(found.covariance + spread)


def beside(parts: Sequence[Real]) -> Real:
    """Covariance (2M, 2M) of points that know nothing of each other, from those (2, 2) of each."""
    whole = np.zeros((2 * len(parts), 2 * len(parts)))
    for i, part in enumerate(parts):
        whole[2 * i : 2 * i + 2, 2 * i : 2 * i + 2] = part
    return whole


def masses_of(pieces: Sequence[Piece], brief: Brief, turn_deg: float = 0.0) -> dict[str, complex]:
    """Mass vectors by plane, g at the plane's own radius."""
    total: dict[str, complex] = {}
    for piece in pieces:
        share = 1.0
        if piece.radius_mm is not None:
            text = next((p.radius for p in brief.planes if p.name == piece.plane), None)
            own_mm = 0.0 if text is None else units.parse(text, "mm", f'plane "{piece.plane}".radius')
            share = piece.radius_mm / own_mm if own_mm > 0.0 else 1.0
        vector = share * piece.mass_g * vectors.vector(1.0, piece.angle_deg + turn_deg)
        total[piece.plane] = total.get(piece.plane, 0j) + vector
    return {plane: mass for plane, mass in total.items() if abs(mass) > 0.0}


def masses_on(run: JobRun, brief: Brief) -> dict[str, complex]:
    """Mass vectors of a run by plane, in the first run's reference."""
    return masses_of(run.what.masses, brief, run.angle_turn_deg)


def same_masses(one: dict[str, complex], other: dict[str, complex]) -> bool:
    """Whether two mass states are one within the error of weighing."""
    return all(
        abs(one.get(plane, 0j) - other.get(plane, 0j))
        <= _SAME_MASS * max(abs(one.get(plane, 0j)), abs(other.get(plane, 0j)))
        for plane in one.keys() | other.keys()
    )


def mass_text(masses: dict[str, complex]) -> str:
    """A mass state in words."""
    told = [(plane, *vectors.amplitude_phase(mass)) for plane, mass in masses.items()]
    return ", ".join(f'{mass:.4g} g at {angle:.0f}° on "{plane}"' for plane, mass, angle in told) or "no mass"
