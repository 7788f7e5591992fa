"""How far a job is, read from its record: runs that serve, what is on the rotor, what corrections did, what is left."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from stillshaft.dsp import units, vectors
from stillshaft.solver import cautions, inspection, run_rules, run_vectors
from stillshaft.solver.events import Event, Mass
from stillshaft.solver.state import JobRun, JobState, OnRotor

CORRECTED = ("correction", "trim", "check")  # purposes of runs that show what corrections did
_SKIP, STOP, FINAL = "skip ", "stop", "final"


def skip_fields(act: str, why: str) -> dict[str, str]:
    """The keys of the "decision" event that passes over an advice, with the reason."""
    return {"text": f"{_SKIP}{act}", "why": why}


def stop_fields(why: str) -> dict[str, str]:
    """The keys of the "decision" event that ends the balancing as it is, with the reason."""
    return {"text": STOP, "why": why}


def skipped(state: JobState, act: str, since: int = 0) -> bool:
    """Whether the person decided to pass over an advice, with a reason, after the entry `since`."""
    return any(d.id > since and d.what.text == f"{_SKIP}{act}" and d.what.why.strip() for d in state.decisions)


def stopped(state: JobState) -> bool:
    """Whether the person ended the balancing and has put nothing on since, but for final pieces."""
    put = max((m.id for m in state.masses if m.what.act == "put on" and m.what.purpose != FINAL), default=0)
    return any(d.id > put and d.what.text == STOP and d.what.why.strip() for d in state.decisions)


# runs and masses


def usable(state: JobState) -> tuple[JobRun, ...]:
    """Runs of the initial state as it is now that count, since the last unknown change of reference."""
    runs = run_rules.counting_runs(state).now
    return tuple(r for r in runs if r.epoch == runs[-1].epoch)


def bare(state: JobState) -> tuple[JobRun, ...]:
    """Those of them without masses."""
    return tuple(r for r in usable(state) if not run_vectors.masses_on(r, state.brief))


def corrected(state: JobState) -> tuple[JobRun, ...]:
    """Those of them that show a correction."""
    return tuple(r for r in usable(state) if r.what.purpose in CORRECTED and run_vectors.masses_on(r, state.brief))


def tried(state: JobState) -> frozenset[str]:
    """Planes that a usable run had a mass on."""
    return frozenset(plane for r in usable(state) for plane in run_vectors.masses_on(r, state.brief))


def on_now(state: JobState) -> dict[str, complex]:
    """Mass vectors by plane that are on the rotor."""
    return run_vectors.masses_of([on.piece for on in state.on_rotor], state.brief)


def purposes(state: JobState) -> dict[int, str | None]:
    """What the pieces of each entry were put on for; a piece really placed elsewhere keeps its purpose."""
    found: dict[int, str | None] = {}
    for event in state.masses:
        of = event.what.of
        found[event.id] = event.what.purpose or (found.get(of) if of is not None else None)
    return found


def state_is_new(state: JobState) -> bool:
    """Whether the rotor was cleaned or mended and no run shows its initial state yet."""
    return run_rules.new_initial_state(state) is not None and not bare(state)


def trials_on(state: JobState) -> tuple[OnRotor, ...]:
    """Trial pieces that are on the rotor."""
    said = purposes(state)
    return tuple(on for on in state.on_rotor if said.get(on.of) == "trial")


def run_is_due(state: JobState) -> bool:
    """Whether masses are on the rotor that no run has measured since they were put on."""
    on, runs = on_now(state), usable(state)
    return bool(on) and not (runs and run_vectors.same_masses(on, run_vectors.masses_on(runs[-1], state.brief)))


def worst_repeat(first: JobRun, second: JobRun, repeats: tuple[float, float]) -> inspection.Repeat | None:
    """The point of two runs that should be alike that differs most by its scatter; None where they share no point."""
    was, now = run_vectors.of_job(first, first.what.unit), run_vectors.of_job(second, first.what.unit)
    names = [p for p in was if p in now and was[p].z]
    if not names:
        return None
    found = inspection.repeated(
        names, np.array([was[p].z for p in names]), run_vectors.beside([was[p].covariance for p in names]),
        np.array([now[p].z for p in names]), run_vectors.beside([now[p].covariance for p in names]), repeats,
    )  # fmt: skip
    return min(found, key=lambda r: r.p_value)


# what corrections did


def level(run: JobRun, state: JobState) -> float:
    """The worst point of a run: its 1x as a share of its limit where there are limits, else the largest 1x."""
    limits = _limits(state, run)
    if limits:
        return max(v.amplitude / limits[v.point] for v in run.what.vectors if v.point in limits)
    return max(v.amplitude for v in run.what.vectors)


def _limits(state: JobState, run: JobRun) -> dict[str, float]:
    return {
        x.point: x.amplitude * abs(run_vectors.factor(x.unit, run.what.unit, run.what.speed_rpm))
        for x in state.brief.limits
        if any(v.point == x.point for v in run.what.vectors)
    }


def cuts_percent(state: JobState) -> tuple[float, ...]:
    """By how much each correction in a row cut the worst point, percent; negative where it grew."""
    first = bare(state)[:1]
    levels = [level(r, state) for r in (*first, *_changes_of_mass(state))]
    return tuple(
        100.0 * (1.0 - after / before) for before, after in zip(levels, levels[1:], strict=False) if before > 0.0
    )


def _changes_of_mass(state: JobState) -> tuple[JobRun, ...]:
    """Corrected runs, the last one of each mass state in a row."""
    found: list[JobRun] = []
    for run in corrected(state):
        masses = run_vectors.masses_on(run, state.brief)
        if found and run_vectors.same_masses(masses, run_vectors.masses_on(found[-1], state.brief)):
            found[-1] = run
        else:
            found.append(run)
    return tuple(found)


@dataclass(frozen=True)
class Changed:
    """How H differs from what the last plan before a run took it to be: percent and degrees over all points."""

    run: str
    percent: float
    turned_deg: float


def influence_change(state: JobState, clear_of_noise: float) -> Changed | None:
    """What the last corrected run's masses did to the initial state, against what the plan before it expected.

    One complex factor c over all points, the least-squares one: c = Σ conj(expected)·seen / Σ |expected|². None where no plan
    was made before it, or the move is not so many times the scatter of both runs.
    """
    last = next((r for r in reversed(corrected(state))), None)
    if last is None:
        return None
    masses = run_vectors.masses_on(last, state.brief)
    # against the state without masses: runs with others may have been made with the coefficients as they were
    before = next((r for r in reversed(bare(state)) if r.id < last.id), None)
    plan = next((p for p in reversed(state.plans) if p.id < last.id and last.id not in p.what.inputs), None)
    if before is None or plan is None:
        return None
    unit = next((r.what.unit for r in state.runs if r.id == plan.what.inputs[0]), None) if plan.what.inputs else None
    if unit is None:
        return None
    now, was = run_vectors.of_job(last, unit), run_vectors.of_job(before, unit)
    expected: dict[str, complex] = {}
    for row in run_vectors.rows(plan.what.result.get("influence")):
        numbers = [row.get(key) for key in ("speed_rpm", "amplitude", "angle_deg")]
        if not all(isinstance(n, int | float) for n in numbers):
            continue
        near = abs(row["speed_rpm"] / last.what.speed_rpm - 1.0) <= inspection.SPEED_CAUTION / 100.0
        if near and row.get("point") in now and row.get("point") in was and row.get("plane") in masses:
            h = vectors.vector(row["amplitude"], row["angle_deg"])
            expected[row["point"]] = expected.get(row["point"], 0j) + h * masses[row["plane"]]
    repeats = run_vectors.repeatability(state)
    size = sum(abs(e) ** 2 for e in expected.values())
    scatter = sum(float(np.trace(run_vectors.between_runs(m[p], repeats))) for p in expected for m in (now, was))
    if not size > clear_of_noise**2 * scatter:
        return None
    factor = sum(e.conjugate() * (now[p].z - was[p].z) for p, e in expected.items()) / size
    return Changed(last.what.name, 100.0 * (abs(factor) - 1.0), math.degrees(float(np.angle(factor))))


def share_of_1x(run: JobRun) -> tuple[str, float] | None:
    """The point with the highest broadband level, and the share of 1x in its square; None where no level was measured."""
    known = [(v.overall, v) for v in run.what.vectors if v.overall is not None and v.overall > 0.0]
    if not known:
        return None
    overall, vector = max(known, key=lambda k: k[0])
    return vector.point, min(1.0, (vector.amplitude / overall) ** 2)


# what was measured beside the runs


def loudest_neighbour(state: JobState) -> tuple[str, float] | None:
    """The newest background measurement against the goal: the point where its share is largest, and that share."""
    event = next((m for m in reversed(state.measured) if m.what.what == "background"), None)
    speed_rpm = cautions.running_speed(state)
    if event is None or speed_rpm is None:
        return None
    goals = {x.point: x for x in state.brief.limits}
    shares = []
    for row in run_vectors.rows(event.what.figures.get("levels")):
        goal = goals.get(str(row.get("name")))
        try:
            if goal is not None:
                into = abs(run_vectors.factor(str(row["unit"]), goal.unit, speed_rpm))
                shares.append((float(row["level"]) * into / goal.amplitude, goal.point))
        except (KeyError, TypeError, ValueError):
            continue
    worst = max(shares, default=None)
    return None if worst is None else (worst[1], worst[0])


# the end of a job


def _trials_off(state: JobState) -> list[Event[Mass]]:
    """Entries that took trial masses off."""
    said = purposes(state)
    return [
        m
        for m in state.masses
        if m.what.act == "taken off" and m.what.of is not None and said.get(m.what.of) == "trial"
    ]


def not_weighed_back(state: JobState) -> tuple[Event[Mass], ...]:
    """Entries that took trial masses off and have no note on weighing them back in, neither then nor later."""
    later = {d.what.about for d in state.decisions}
    return tuple(m for m in _trials_off(state) if not m.what.note.strip() and m.id not in later)


def _stays(state: JobState) -> tuple[OnRotor, ...]:
    """Pieces on the rotor that are no trial masses."""
    said = purposes(state)
    return tuple(o for o in state.on_rotor if said.get(o.of) != "trial")


def not_fixed(state: JobState) -> tuple[OnRotor, ...]:
    """Pieces that stay and are not fixed for good, or nobody said how."""
    return tuple(o for o in _stays(state) if cautions.fixing_of(o.piece) in ("temporary", "clamped", "unknown"))


def without_photo(state: JobState) -> tuple[OnRotor, ...]:
    """Pieces that stay and that no photo shows."""
    shown = {p.what.about for p in state.photos} | {m.id for m in state.masses if m.what.photos}
    return tuple(o for o in _stays(state) if o.of not in shown)


def left_at_the_end(state: JobState, worse_percent: float) -> Iterator[tuple[str, str]]:
    """What is still to be done before a job is closed: act and sentence, in its order."""
    if on := trials_on(state):
        yield "take-off-trial", f"trial masses are still on: {'; '.join(cautions.describe(o.piece) for o in on)}"
    if lost := not_weighed_back(state):
        yield (
            "weigh-back",
            f"{len(lost)} of {len(_trials_off(state))} trial masses taken off are not noted as weighed back in",
        )
    if loose := not_fixed(state):
        told = "; ".join(cautions.describe(o.piece) for o in loose)
        yield "fix-permanently", f"not fixed for good, or not said how: {told}"
    if bare_of_photo := without_photo(state):
        yield "photograph", f"no photo yet of {'; '.join(cautions.describe(o.piece) for o in bare_of_photo)}"
    runs = usable(state)
    if not runs or _changed_since(state, runs[-1]):
        yield "final-run", "masses or their fixing changed since the last run that counts"
        return
    first = (bare(state) or runs)[0]
    yield from _worse(first, runs[-1], worse_percent)
    tolerances = {c.name: c.tolerance for c in state.brief.conditions}
    alike = inspection.likeness(
        first.what.speed_rpm, runs[-1].what.speed_rpm, first.what.conditions, runs[-1].what.conditions, tolerances
    )
    if alike.verdict == "not comparable":
        yield "unlike-conditions", f'"{first.what.name}" and "{runs[-1].what.name}": {"; ".join(alike.reasons)}'


def _changed_since(state: JobState, run: JobRun) -> bool:
    """Whether masses or their fixing are other than in a run; a photo of them alone changes nothing."""
    if run.id > max((m.id for m in state.masses), default=0):
        return False
    alike = run_vectors.same_masses(on_now(state), run_vectors.masses_on(run, state.brief))
    return not alike or sorted(o.piece.fixing or "" for o in state.on_rotor) != sorted(
        p.fixing or "" for p in run.what.masses
    )


def _worse(first: JobRun, last: JobRun, worse_percent: float) -> Iterator[tuple[str, str]]:
    factor = abs(run_vectors.factor(last.what.unit, first.what.unit, last.what.speed_rpm))
    alike = (
        units.vibration_unit(last.what.unit, "unit").quantity == units.vibration_unit(first.what.unit, "unit").quantity
    )
    now = {v.point: v for v in last.what.vectors}
    for vector in first.what.vectors:
        after = now.get(vector.point)
        if after is None:
            continue
        pairs = [("1x", vector.amplitude, factor * after.amplitude, factor * (after.amplitude_ci95 or 0.0))]
        if vector.overall is not None and after.overall is not None and alike:
            pairs.append(("the broadband level", vector.overall, factor * after.overall, 0.0))
        for what, before, value, half in pairs:
            if value - half > (1.0 + worse_percent / 100.0) * before:
                yield "points-worse", f"{vector.point}: {what} is {value:.3g} {first.what.unit}, and was {before:.3g}"
                return
