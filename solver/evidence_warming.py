"""How far 1x went from cold to warm, as a job's record tells it: the diagnosis' `warm_change`.

It is read off one start of the machine alone: 1x that was watched while it settled, or an early and a late run with the
same masses at the same speed, with the minutes since the start. A large change speaks for itself. That heat changes
little is said only where the machine started cold, was seen within minutes, and had settled at the end; anything else is
not known, which is not absent. Limits are site rules of the project: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from types import MappingProxyType

import msgspec
import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import units, vectors
from stillshaft.solver import evidence, inspection, run_checks, run_vectors
from stillshaft.solver.diagnosis import Evidence, Figure
from stillshaft.solver.events import Event, Measured, Run, Start
from stillshaft.solver.inspection import SETTLED_S, SPEED_ACCEPTED
from stillshaft.solver.run_checks import start_before
from stillshaft.solver.state import JobRun, JobState

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

KEY = "warm_change"
_COLD_MINUTES, _EARLY_MINUTES = 3.0, 10.0  # since the start: still cold after a cold start; still to be called early
_LEAST_MINUTES = SETTLED_S / 60.0  # from early to late
_LITTLE = 5.0  # percent: less speaks against heat, and needs both ends known
_CLOCK_MINUTES, _AGREE_MINUTES = 0.2, 2.0  # by which times of the record may be off, and those that a person wrote
_FIRST_S, _LAST_S = 30.0, 60.0  # of a machine watched, that stand for its ends
_FEWEST = 16  # vectors of a machine watched
_LARGEST = 1e30  # in any unit: squares of what is larger run over
_TOLD = ("steady", "drifting")  # verdicts on points that a second source or scatter does not turn


@dataclass(frozen=True)
class _Seen:
    """1x of points (M,) early and late in one start, covariances (2M, 2M), and when; `whole` from cold to settled."""

    names: list[str]
    before: Complex
    before_covariance: Real
    after: Complex
    after_covariance: Real
    minutes: tuple[float, float]
    whole: bool


def from_record(state: JobState) -> Evidence:
    """`warm_change` with its interval, percent, or nothing where the record does not tell cold from warm.

    What was seen from cold to settled counts before what shows a part of it, the newest before older.
    """
    told: list[tuple[bool, Figure]] = []
    for seen in (*_runs(state), *_watched(state)):
        if not seen.before.any():
            continue
        found = evidence.from_change(
            KEY, seen.names, seen.before, seen.before_covariance, seen.after, seen.after_covariance
        )[KEY]
        if isinstance(found, Figure) and math.isfinite(found.high) and (seen.whole or found.low >= _LITTLE):
            begin, end = seen.minutes
            told.append(
                (seen.whole, replace(found, where=f"{found.where}, {begin:.0f} to {end:.0f} min after the start"))
            )
    best = [figure for whole, figure in told if whole] or [figure for _, figure in told]
    return MappingProxyType({KEY: best[-1]} if best else {})


def _started_cold(start: Event[Start] | None) -> bool | None:
    """Whether a start was cold; None where nobody noted it."""
    return None if start is None or start.what.temperature is None else start.what.temperature == "cold"


def _at_minutes(at: str) -> float:
    return datetime.fromisoformat(at).timestamp() / 60.0


# an early and a late run


def _runs(state: JobState) -> Iterator[_Seen]:
    """Pairs of runs of one start with the same masses, conditions and speed; the late ones in their order."""
    runs = run_checks.counted(state)
    for late_at in range(1, len(runs)):
        late = runs[late_at]
        for early in runs[:late_at]:
            seen = _pair(state, early, late)
            if seen is not None:
                yield seen
                break


def _pair(state: JobState, early: JobRun, late: JobRun) -> _Seen | None:
    minutes = _minutes(state, early, late)
    if minutes is None:
        return None
    cold = _started_cold(start_before(state, early.id))
    alike = inspection.likeness(
        early.what.speed_rpm, late.what.speed_rpm, early.what.conditions, late.what.conditions,
        {c.name: c.tolerance for c in state.brief.conditions},
    )  # fmt: skip
    if cold is False or alike.verdict != "accepted" or early.epoch != late.epoch:
        return None
    kept = _points_told(early.what) & _points_told(late.what)
    if not kept:
        return None
    try:
        masses = [run_vectors.masses_on(run, state.brief) for run in (early, late)]
        first, last = (run_vectors.of_job(run, early.what.unit) for run in (early, late))
    except units.UnitError:  # a record that somebody else wrote
        return None
    names = [name for name in first if name in last and name in kept]
    if not names or not run_vectors.same_masses(*masses):
        return None
    whole = bool(cold) and minutes[0] <= _COLD_MINUTES and _settled_before(state, late)
    return _Seen(names, *_together(first, names), *_together(last, names), minutes, whole)


def _points_told(run: Run) -> set[str]:
    """Points whose vectors and scatter can be reckoned with."""
    given = run.covariance
    if given is not None and any(abs(value) > _LARGEST for row in given.matrix for value in row):
        return set()
    return {v.point for v in run.vectors if v.verdict in _TOLD and v.amplitude < _LARGEST}


def _minutes(state: JobState, early: JobRun, late: JobRun) -> tuple[float, float] | None:
    """Minutes since the start that both runs belong to; None where it may not be the same, or they do not tell."""
    begin, end = early.what.minutes_since_start, late.what.minutes_since_start
    if begin is None or end is None or not (0.0 <= begin <= _EARLY_MINUTES and end - begin >= _LEAST_MINUTES):
        return None
    starts = [start_before(state, run.id) for run in (early, late)]
    if starts[1] is None:  # none was recorded: the times of the entries tell whether the machine ran on
        apart = _at_minutes(late.event.at) - _at_minutes(early.event.at)
        return (begin, end) if abs(apart - (end - begin)) <= _AGREE_MINUTES else None
    return (begin, end) if starts[0] is not None and starts[0].id == starts[1].id else None


def _settled_before(state: JobState, run: JobRun) -> bool:
    """Whether the last that was seen of settling since the start was that 1x moves no more."""
    start = start_before(state, run.id)
    since = 0 if start is None else start.id
    said = [m.what for m in state.measured if m.what.what == "settling" and since < m.id < run.id]
    return bool(said) and said[-1].figures.get("verdict") == "settled"


def _together(found: dict[str, run_vectors.Measured], names: Sequence[str]) -> tuple[Complex, Real]:
    """Vectors and their covariance, point beside point."""
    return np.array([found[n].z for n in names]), run_vectors.beside([found[n].covariance for n in names])


# 1x that was watched


class _Course(msgspec.Struct):
    """What is read of the figures of an entry on settling; vectors are amplitude and lag in degrees."""

    verdict: str
    watched_s: float
    times_s: list[float]
    speeds_rpm: list[float]
    vectors: dict[str, list[tuple[float, float]]]


def _watched(state: JobState) -> Iterator[_Seen]:
    for event in state.measured:
        if event.what.what != "settling":
            continue
        try:
            course = msgspec.convert(event.what.figures, _Course)
        except msgspec.ValidationError:  # of an older record: the speed was not kept
            continue
        begun = _begun(state, event, course.watched_s)
        if begun is None:
            continue
        seen = _ends(course, *begun)
        if seen is not None:
            yield seen


def _begun(state: JobState, event: Event[Measured], watched_s: float) -> tuple[float, bool | None] | None:
    """Minutes from the start to the first sample watched, at the most, and whether that start was cold."""
    file = event.what.recording
    if file is not None:  # a recording may be brought in at any time: only its run tells when it was made
        run = next(
            (r for r in state.runs if r.what.recording is not None and r.what.recording.sha256 == file.sha256), None
        )
        if run is None or run.what.minutes_since_start is None:
            return None
        return run.what.minutes_since_start, _started_cold(start_before(state, run.id))
    start = start_before(state, event.id)
    if start is None:
        return None
    minutes = _at_minutes(event.at) - _at_minutes(start.at) - watched_s / 60.0
    return None if minutes < -_CLOCK_MINUTES else (max(0.0, minutes), _started_cold(start))


def _ends(course: _Course, begun_minutes: float, cold: bool | None) -> _Seen | None:
    """1x when it was first seen at its speed, and at the end; None where the speed did not hold or too little was seen."""
    times, speeds = np.array(course.times_s), np.array(course.speeds_rpm)
    z = {name: _vectors(listed) for name, listed in course.vectors.items()}
    sizes = {times.size, speeds.size, *(values.size for values in z.values())}
    if len(sizes) > 1 or times.size < _FEWEST or cold is False or not bool(np.all(np.diff(times) > 0.0)):
        return None
    held = np.abs(speeds - speeds[-1]) <= SPEED_ACCEPTED / 100.0 * speeds[-1]
    first = int(np.argmax(held))  # before that it runs up
    times = times[first:]
    begin, end = begun_minutes + float(times[0]) / 60.0, begun_minutes + float(times[-1]) / 60.0
    if not held[first:].all() or times.size < _FEWEST or begin > _EARLY_MINUTES or end - begin < 0.9 * _LEAST_MINUTES:
        return None
    names = [n for n, values in z.items() if float(np.abs(values).max()) < _LARGEST]
    pairs = [_end_vectors(times, z[n][first:]) for n in names]
    if not pairs:
        return None
    whole = bool(cold) and begin <= _COLD_MINUTES and course.verdict == "settled"
    return _Seen(
        names, np.array([p[0] for p in pairs]), run_vectors.beside([p[1] for p in pairs]),
        np.array([p[2] for p in pairs]), run_vectors.beside([p[3] for p in pairs]), (begin, end), whole,
    )  # fmt: skip


def _vectors(listed: Sequence[tuple[float, float]]) -> Complex:
    return np.array([vectors.vector(amplitude, lag_deg) for amplitude, lag_deg in listed], dtype=np.complex128)


def _end_vectors(times_s: Real, z: Complex) -> tuple[complex, Real, complex, Real]:
    """Means over the first and the last moments of vectors (K,), with the covariance (2, 2) of re and im of each.

    The scatter is that about a straight line through the last five minutes, with its memory from vector to vector.
    """
    last = times_s >= times_s[-1] - SETTLED_S
    t, values = times_s[last] - times_s[last].mean(), z[last]
    left = values - values.mean() - t * (t @ values) / (t @ t)
    parts = np.column_stack([left.real, left.imag])
    scatter = parts.T @ parts / max(1, left.size - 2)
    power = float(np.sum(parts**2))
    memory = float(np.sum(parts[1:] * parts[:-1])) / power if power > 0.0 else 0.0
    memory = min(0.95, max(0.0, memory + 4.0 / left.size))  # what few values make it look smaller by
    longer = (1.0 + memory) / (1.0 - memory)

    def mean(kept: NDArray[np.bool_]) -> tuple[complex, Real]:
        return complex(z[kept].mean()), scatter * min(1.0, longer / float(np.count_nonzero(kept)))

    return *mean(times_s <= times_s[0] + _FIRST_S), *mean(times_s >= times_s[-1] - _LAST_S)
