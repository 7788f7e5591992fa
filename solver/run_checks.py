"""What speaks against a run, rule by rule, from the record as it stood before it.

The rules and their limits are a table, `run_rules.toml` beside this file: common practice, no source. `run_rules` makes the
judgement of them.
"""

from __future__ import annotations

import functools
import math
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

import msgspec
import numpy as np
from stillshaft.dsp import tables, units
from stillshaft.dsp.units import shown
from stillshaft.solver import inspection, run_vectors
from stillshaft.solver.events import Event, Mark, Reference, Run, Start, Vector
from stillshaft.solver.state import JobRun, JobState

RULES = Path(__file__).with_name("run_rules.toml")
_MINUTES = 5.0  # that 1x must stay within 2 % and 2° for
_LEAST_MINUTES = 1.0  # that tell something of them


@dataclass(frozen=True)
class Finding:
    """What speaks against a run: key of its rule, one sentence with its figures, and what to do."""

    rule: str
    sentence: str
    what_to_do: str


class _Rule(tables.Strict):
    key: str
    refuses: Literal["always", "unless allowed", "never"]
    cure: str


class Limits(tables.Strict):
    """The limits of the table, named with their units."""

    mark_width_percent: float
    mark_width_deg: float
    sweep_percent: float
    sweep_deg: float
    speed_multiple_percent: float
    revolutions: int
    seconds: float
    slow_rpm: float
    slow_revolutions: int
    minutes_percent: float
    minutes: float
    dead_share: float
    swapped_share: float
    swapped_least: float


class _File(tables.Strict):
    format: Literal[1]
    source: str
    limits: Limits
    rule: list[_Rule]


@functools.cache
def _load(path: Path = RULES) -> _File:
    return tables.checked(tables.read(path), _File)


def limits() -> Limits:
    """The limits that runs are judged by."""
    return _load().limits


def found(key: str, sentence: str) -> Finding:
    """A finding of a rule, with what the table says to do."""
    return Finding(key, sentence, next(r.cure for r in _load().rule if r.key == key))


def refuses(finding: Finding) -> str:
    """Whether its rule refuses a run: always, unless allowed, or never."""
    return next(r.refuses for r in _load().rule if r.key == finding.rule)


def findings(state: JobState, run: Run) -> tuple[Finding, ...]:
    """All that speaks against a run that is to be recorded next, in the order of the rules."""
    return tuple(f for rule in _RULES for f in rule(state, run))


# which runs are held against each other


def counted(state: JobState) -> tuple[JobRun, ...]:
    """Runs that count and are no slow roll, in their order."""
    return tuple(r for r in state.runs if r.counts and r.what.purpose != "slow roll")


def unknown_turns(state: JobState) -> tuple[Event[Reference], ...]:
    """Changes of reference whose turn is still not known."""
    known = {r.what.of for r in state.references}
    return tuple(r for r in state.references if r.what.of is None and r.what.turn_deg is None and r.id not in known)


def like_run(state: JobState, run: Run) -> JobRun | None:
    """The newest run that counts with the same masses and about the same speed, with no unknown turn since."""
    masses = run_vectors.masses_of(run.masses, state.brief)
    since = max((r.id for r in unknown_turns(state)), default=0)
    for before in reversed(counted(state)):
        near = abs(run.speed_rpm / before.what.speed_rpm - 1.0) <= inspection.SPEED_CAUTION / 100.0
        if before.id > since and near and run_vectors.same_masses(masses, run_vectors.masses_on(before, state.brief)):
            return before
    return None


def _first_since(state: JobState, changed: int) -> Run | None:
    return next((r.what for r in counted(state) if r.id > changed), None)


def mark_to_keep(state: JobState) -> tuple[Mark, str] | None:
    """How the mark was seen since it was last changed, as later runs must see it, and where that was.

    It was in the first run that counts; before there is one, at the newest signal check of the pulse as it is wired.
    """
    changed = max((r.id for r in state.references if r.what.of is None and not r.what.points), default=0)
    first = _first_since(state, changed)
    if first is not None:
        return None if first.mark is None else (first.mark, f'in "{first.name}"')
    wired = {k: v for k, v in (state.hookup or {}).get("pulse", {}).items() if k != "edge"}
    for check in reversed(state.measured):
        seen = check.what.figures.get("mark")
        if check.id > changed and isinstance(seen, dict) and seen.get("pulse") == wired:
            return Mark(edge=str(seen.get("edge")), width_deg=seen.get("width_deg")), "at the signal check"
    return None


# the rules: each gives what speaks against the run


def _steadiness(state: JobState, run: Run) -> Iterator[Finding]:
    if run.trusted:
        return
    for vector in run.vectors:
        if vector.verdict not in (None, "steady"):
            yield found("steadiness", f"{vector.point}: the verdict on 1x is {vector.verdict}{_why(vector)}")
    named = [v.point for v in run.vectors if v.verdict not in (None, "steady")]
    for reason in run.reasons:
        if not any(reason.startswith(f"{point}: ") for point in named):
            yield found("steadiness", reason)
    if not named and not run.reasons:
        yield found("steadiness", "the measurement is not trusted, and does not say why")


def _why(vector: Vector) -> str:
    reasons = (vector.steadiness or {}).get("reasons")
    return f" ({'; '.join(str(r) for r in reasons)})" if isinstance(reasons, list) and reasons else ""


def _mark(state: JobState, run: Run) -> Iterator[Finding]:
    kept = mark_to_keep(state)
    if kept is None or run.mark is None:
        return
    mark, where = kept
    before, now = mark.width_deg, run.mark.width_deg
    if run.mark.edge != mark.edge:
        yield found("mark-edge", f"the pulse was taken at its {run.mark.edge} edge, {where} at its {mark.edge}")
    if before is None or now is None or abs(now - before) <= _width_limit(before):
        return
    if abs(360.0 - now - before) <= _width_limit(before):
        yield found("mark-polarity", f"the pulse is high for {now:.1f}° and was for {before:.1f}° {where}")
    else:
        yield found("mark-width", f"the mark covers {now:.1f}° but covered {before:.1f}° {where}")


def _width_limit(before: float) -> float:
    return max(limits().mark_width_deg, limits().mark_width_percent / 100.0 * before)


def _hookup(state: JobState, run: Run) -> Iterator[Finding]:
    runs = counted(state)
    if not runs:
        return
    first, names = runs[0].what, [v.point for v in run.vectors]
    if missing := [v.point for v in first.vectors if v.point not in names]:
        yield found("points", f'{", ".join(missing)}: not measured, but in "{first.name}"')
    if more := sorted(set(names) - {v.point for v in first.vectors}):
        yield found("more-points", f'{", ".join(more)}: measured, but not in "{first.name}"')
    if _quantity(run.unit) != _quantity(first.unit):
        yield found("unit", f'vectors are in {run.unit}, in "{first.name}" in {first.unit}')


def _quantity(unit: str) -> str:
    return units.vibration_unit(unit, "unit").quantity


def _speed(state: JobState, run: Run) -> Iterator[Finding]:
    first = _speed_alike(state, run)
    if (twice := speed_multiple(state, run)) is not None:
        times, other = twice
        yield found("speed-multiple", f"the speed reads {run.speed_rpm:.0f} r/min, {times:g} times {other}")
        return
    if first is None:
        return
    percent = 100.0 * abs(run.speed_rpm / first.speed_rpm - 1.0)
    said = f'{run.speed_rpm:.0f} r/min is {percent:.1f} % off the {first.speed_rpm:.0f} r/min of "{first.name}"'
    if percent > inspection.SPEED_CAUTION:
        yield found("speed", f"{said}, limit {inspection.SPEED_CAUTION:g} %")
        return
    if percent > inspection.SPEED_ACCEPTED:
        yield found("speed-caution", f"{said}; up to {inspection.SPEED_ACCEPTED:g} % is accepted without caution")
    yield from _by_sweep(state, run, first)


def _speed_alike(state: JobState, run: Run) -> Run | None:
    """The first run of the group of runs nearest in speed."""
    heads: list[Run] = []
    for before in counted(state):
        near = [h for h in heads if abs(before.what.speed_rpm / h.speed_rpm - 1.0) <= inspection.SPEED_CAUTION / 100.0]
        heads += [] if near else [before.what]
    return min(heads, key=lambda h: abs(run.speed_rpm / h.speed_rpm - 1.0), default=None)


def speed_multiple(state: JobState, run: Run) -> tuple[float, str] | None:
    """Twice or half the speed of the runs before or of the brief, with what it is compared to; None where it is neither."""
    runs, asked = counted(state), state.brief.rotor.speed_rpm
    others = [(runs[0].what.speed_rpm, f'that of "{runs[0].what.name}"')] if runs else []
    others += [(asked, "the brief's")] if asked else []
    within = limits().speed_multiple_percent / 100.0
    if any(abs(run.speed_rpm / speed - 1.0) <= within for speed, _ in others):
        return None
    for speed, name in others:
        for times in (2.0, 0.5):
            if abs(run.speed_rpm / (times * speed) - 1.0) <= within:
                return times, name
    return None


def _by_sweep(state: JobState, run: Run, first: Run) -> Iterator[Finding]:
    """What the newest sweep says that the difference of speed does to 1x."""
    sweep = next((m for m in reversed(state.measured) if m.what.what == "sweep"), None)
    for name, speeds, z in _curves({} if sweep is None else sweep.what.figures):
        if not (speeds[0] <= min(run.speed_rpm, first.speed_rpm) <= max(run.speed_rpm, first.speed_rpm) <= speeds[-1]):
            continue
        now, then = (complex(np.interp(s, speeds, z)) for s in (run.speed_rpm, first.speed_rpm))
        if not then:
            continue
        percent, turned = 100.0 * abs(abs(now / then) - 1.0), abs(math.degrees(np.angle(now / then)))
        if percent > limits().sweep_percent or turned > limits().sweep_deg:
            yield found(
                "speed-sweep",
                f"{name}: by the sweep 1x changes by {percent:.0f} % and {turned:.0f}° from {first.speed_rpm:.0f} to "
                f"{run.speed_rpm:.0f} r/min, limit {limits().sweep_percent:g} % and {limits().sweep_deg:g}°",
            )
            return


def _curves(figures: dict[str, Any]) -> Iterator[tuple[str, Any, Any]]:
    """Name, speeds rising and vectors of each point of a sweep as `sweep --json` prints it."""
    points = figures.get("points")
    for point in points if isinstance(points, list) else []:
        try:
            curve = msgspec.convert(point.get("curve"), _Curve)
        except (AttributeError, msgspec.ValidationError):
            continue
        if 1 < len(curve.rpm) == len(curve.amplitude) == len(curve.phase_deg):
            order = np.argsort(curve.rpm)
            z = np.array(curve.amplitude) * np.exp(1j * np.deg2rad(curve.phase_deg))
            yield str(point.get("name", "a point")), np.array(curve.rpm)[order], z[order]


class _Curve(msgspec.Struct):
    rpm: list[float]
    amplitude: list[float]
    phase_deg: list[float]


def _conditions(state: JobState, run: Run) -> Iterator[Finding]:
    """Each condition chosen in the brief against the first run that noted it."""
    for condition in state.brief.conditions:
        name, unit = condition.name, f" {condition.unit}" if condition.unit else ""
        first = next((r.what for r in counted(state) if name in r.what.conditions), None)
        if name not in run.conditions:
            if first is None:
                yield found("condition-unknown", f"{name} was chosen as one that matters, and is not noted")
            else:
                yield found(
                    "condition",
                    f'not comparable: {name} is not noted, and was {first.conditions[name]}{unit} in "{first.name}"',
                )
        elif first is not None:
            alike = inspection.likeness(1.0, 1.0, first.conditions, run.conditions, {name: condition.tolerance})
            for reason in alike.reasons:
                yield found("condition", f'not comparable with "{first.name}": {reason}{unit}')


def _length(state: JobState, run: Run) -> Iterator[Finding]:
    if run.duration_s is None or run.revolutions is None:
        yield found("length-unknown", "how long the run was measured is not noted")
        return
    slow = run.speed_rpm < limits().slow_rpm
    wanted = limits().slow_revolutions if slow else limits().revolutions
    # a record that lasts just so long holds one revolution or two less, as it begins and ends between pulses
    needed_s = max(limits().seconds, 60.0 * (wanted + 2) / run.speed_rpm)
    if run.duration_s < limits().seconds or run.revolutions < wanted:
        yield found(
            "too-short",
            f"{run.revolutions} revolutions in {run.duration_s:.1f} s: a run takes {wanted} and {limits().seconds:g} s; "
            f"record {needed_s:.0f} s",
        )
    for vector in run.vectors:
        beat = (vector.steadiness or {}).get("beat")
        offset = beat.get("offset_hz") if isinstance(beat, dict) else None
        if isinstance(offset, int | float) and offset and abs(offset) * run.duration_s < 1.0:
            yield found(
                "too-short", f"{vector.point}: {run.duration_s:.1f} s is less than one beat of {1 / abs(offset):.0f} s"
            )


def _settling(state: JobState, run: Run) -> Iterator[Finding]:
    started = max((s.id for s in state.starts), default=0)
    said = next((m.what for m in reversed(state.measured) if m.what.what == "settling" and m.id > started), None)
    if said is not None and said.figures.get("verdict") == "moving":
        yield found("settling", str(said.figures.get("reason") or "1x is still moving"))
    yield from _moved_since(state, run, started)
    runs = counted(state)
    if not runs:
        return
    first, minutes = runs[0].what, run.minutes_since_start
    if minutes is not None and first.minutes_since_start is not None:
        within = max(limits().minutes, limits().minutes_percent / 100.0 * first.minutes_since_start)
        if abs(minutes - first.minutes_since_start) > within:
            yield found(
                "minutes",
                f'{minutes:.0f} min after the start, "{first.name}" was {first.minutes_since_start:.0f} min after it',
            )
    starts = start_before(state, runs[0].id), start_before(state)
    temperatures = [None if start is None else start.what.temperature for start in starts]
    if None not in temperatures and temperatures[0] != temperatures[1]:
        yield found("start-temperature", f'started {temperatures[1]}, for "{first.name}" started {temperatures[0]}')


def start_before(state: JobState, id: int | None = None) -> Event[Start] | None:
    """The last start before an entry, or of all; None where there is none."""
    return next((s for s in reversed(state.starts) if id is None or s.id < id), None)


def _moved_since(state: JobState, run: Run, started: int) -> Iterator[Finding]:
    """How far 1x moved since a run of the same start with the same masses, for five minutes."""
    before = like_run(state, run)
    if (
        before is None
        or before.id < started
        or run.minutes_since_start is None
        or before.what.minutes_since_start is None
    ):
        return
    minutes = run.minutes_since_start - before.what.minutes_since_start
    if minutes < _LEAST_MINUTES:
        return
    worst, said = 0.0, ""
    now = run_vectors.measured(run, run.unit)
    for point, was in run_vectors.of_job(before, run.unit).items():
        if point not in now or not was.z:
            continue
        ratio, times = now[point].z / was.z, _MINUTES / minutes
        within = 1.96 * math.sqrt(float(np.trace(now[point].covariance + was.covariance)) / 2.0) / abs(was.z)
        percent, turned = 100.0 * abs(abs(ratio) - 1.0), abs(math.degrees(np.angle(ratio)))
        over = max(
            times * (percent - 100.0 * within) / inspection.SETTLED_PERCENT,
            times * (turned - math.degrees(within)) / inspection.SETTLED_DEG,
        )
        if over > max(1.0, worst):
            worst = over
            said = (
                f'{point}: 1x moved by {percent:.1f} % and {turned:.1f}° in the {minutes:.0f} min since "{before.what.name}", '
                f"more than {inspection.SETTLED_PERCENT:g} % or {inspection.SETTLED_DEG:g}° in {_MINUTES:g} min"
            )
    if said:
        yield found("settling", said)


def _epoch(state: JobState, run: Run) -> Iterator[Finding]:
    for change in unknown_turns(state):
        if any(r.id < change.id for r in counted(state)):
            yield found(
                "epoch", f'"{shown(change.what.what)}": its turn is not known, so that runs since then are kept apart'
            )


def _abort(state: JobState, run: Run) -> Iterator[Finding]:
    for point, level in crossed_levels(state, run):
        yield found("abort", f"{point} reached {level[0]:.3g} {run.unit}, abort level {level[1]:.3g} {run.unit}")


def crossed_levels(state: JobState, run: Run) -> list[tuple[str, tuple[float, float]]]:
    """Points at or above their abort level: what was measured and the level, in the run's unit."""
    crossed = []
    for level in state.brief.abort:
        vector = next((v for v in run.vectors if v.point == level.point), None)
        if vector is None:
            continue
        limit = level.amplitude * abs(run_vectors.factor(level.unit, run.unit, run.speed_rpm))
        # a broadband level has no single frequency to turn its quantity by
        same = _quantity(level.unit) == _quantity(run.unit)
        value = max(vector.amplitude, (vector.overall or 0.0) if same else 0.0)
        if value >= limit:
            crossed.append((level.point, (value, limit)))
    return crossed


def _masses(state: JobState, run: Run) -> Iterator[Finding]:
    said = run_vectors.masses_of(run.masses, state.brief)
    planes = [p.name for p in state.brief.planes]
    if planes and (unknown := [p for p in said if p not in planes]):
        yield found("planes", f"{', '.join(unknown)}: no plane of the brief; there is {', '.join(planes)}")
    on = run_vectors.masses_of([o.piece for o in state.on_rotor], state.brief)
    if not run_vectors.same_masses(said, on):
        yield found(
            "masses",
            f"the run says {run_vectors.mass_text(said)}, the record has {run_vectors.mass_text(on)} on the rotor",
        )


def _sensors(state: JobState, run: Run) -> Iterator[Finding]:
    before = like_run(state, run)
    was = {} if before is None else run_vectors.of_job(before, run.unit)
    for vector in run.vectors:
        if vector.amplitude == 0.0 or vector.overall == 0.0:
            yield found("no-signal", f"{vector.point}: reads 0")
        elif vector.point in was and vector.amplitude < limits().dead_share * abs(was[vector.point].z):
            yield found(
                "no-signal",
                f"{vector.point}: fell from {abs(was[vector.point].z):.3g} to {vector.amplitude:.2g} {run.unit} with the "
                "same masses on",
            )
    last_run = max((r.id for r in state.runs), default=0)
    check = next((m for m in reversed(state.measured) if m.what.what == "signal check" and m.id > last_run), None)
    if check is not None and not check.what.trusted:
        yield found(
            "signal-check", f"the last signal check found: {'; '.join(check.what.reasons) or 'something that blocks'}"
        )
    if before is not None:
        yield from _swapped(run, before, was)


def _swapped(run: Run, before: JobRun, was: dict[str, run_vectors.Measured]) -> Iterator[Finding]:
    """The two points whose vectors fit the run before far better when they are exchanged."""
    now = run_vectors.measured(run, run.unit)
    names = [p for p in now if p in was]
    best, least = None, limits().swapped_share
    for i, a in enumerate(names):
        for b in names[i + 1 :]:
            size = abs(was[a].z) ** 2 + abs(was[b].z) ** 2
            plain = abs(now[a].z - was[a].z) ** 2 + abs(now[b].z - was[b].z) ** 2
            crosswise = abs(now[a].z - was[b].z) ** 2 + abs(now[b].z - was[a].z) ** 2
            if plain > limits().swapped_least ** 2 * size and crosswise < least**2 * plain:
                best, least = (a, b), math.sqrt(crosswise / plain)
    if best is not None:
        yield found(
            "swapped",
            f'{best[0]} and {best[1]}: each reads what the other read in "{before.what.name}" with the same masses on',
        )


_RULES = (
    _steadiness, _mark, _hookup, _speed, _conditions, _length, _settling, _epoch, _abort, _masses, _sensors,
)  # fmt: skip
