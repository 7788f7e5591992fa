"""The rules behind the advice about masses: what is due, how strong a trial was, when to stop, what to put on."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from stillshaft.dsp import units
from stillshaft.solver import couple, progress, run_vectors
from stillshaft.solver import trial as trials
from stillshaft.solver.cautions import running_speed
from stillshaft.solver.next_steps import Case, Said, limits, passed, untried
from stillshaft.solver.state import JobState

if TYPE_CHECKING:
    from stillshaft.solver.correction import Correction, Solution
    from stillshaft.solver.trial import Trial, TrialEffect

_HARDLY_ANY = 0.05  # of a part's mass: what is left of it then is not put on


def due(case: Case) -> Said | None:
    """Masses on the rotor that were not measured yet."""
    if not progress.run_is_due(case.state):
        return None
    on, trial = progress.on_now(case.state), bool(progress.trials_on(case.state))
    over = _over_abort(case.state, case.facts.solution, on) if trial and case.facts.solution is not None else None
    if over is not None:
        return "smaller-trial", (
            f"{run_vectors.mass_text(on)} may bring {over.point} to {over.worst:.3g}, above its abort level of "
            f"{over.level:.3g}: put on no more than {100.0 * over.share:.0f} % of it, or opposite the heavy spot"
        )
    return ("trial-run" if trial else "correction-run"), f"measure with {run_vectors.mass_text(on)} on"


@dataclass(frozen=True)
class _Over:
    """A point whose worst case is above its abort level, and the share of the masses that keeps it below."""

    point: str
    worst: float
    level: float
    share: float


def _over_abort(state: JobState, solution: Solution, masses: dict[str, complex]) -> _Over | None:
    """The worst case |v0| + |H·w| of each point against its abort level; the point that allows least.

    A point that is above already without masses is passed over: no mass is refused for that.
    """
    found, bare = [], progress.bare(state)
    if not bare:
        return None
    first = bare[0]
    for level in state.brief.abort:
        vector = next((v for v in first.what.vectors if v.point == level.point), None)
        rows = [i for i in solution.influence if i.point == level.point and i.plane in masses]
        if vector is None or not rows:
            continue
        unit, speed_rpm = rows[0].unit.partition(" per ")[0], first.what.speed_rpm
        now = vector.amplitude * abs(run_vectors.factor(first.what.unit, unit, speed_rpm))
        limit = level.amplitude * abs(run_vectors.factor(level.unit, unit, speed_rpm))
        moved = sum(i.amplitude * abs(masses[i.plane]) for i in rows if i.speed_rpm == rows[0].speed_rpm)
        if now < limit < now + moved:
            found.append(_Over(level.point, now + moved, limit, (limit - now) / moved))
    return min(found, key=lambda o: o.share, default=None)


def first_trials(case: Case) -> Said | None:
    """Trials that are missing, as long as there is no solution."""
    if case.facts.solution is not None:
        return None
    state, left = case.state, untried(case.state)
    if not left:
        return "mend-runs", f"the runs give no correction: {case.facts.solution_error or 'it was not worked out'}"
    off = "; take the one that is on off first, or record that it stays" if progress.trials_on(state) else ""
    scarce = case.starts_left is not None and case.starts_left <= case.starts_needed
    few = f"; {case.starts_left} starts are left, {case.starts_needed} are needed" if scarce else ""
    return "put-on-trial", f'{_trial_text(state, left[0])} on "{left[0]}"{off}{few}'


def trial_wanted(case: Case) -> tuple[str, float | None] | None:
    """Plane and mass, g, of the trial that is advised: the first plane not tried, else the one tried too weakly.

    The mass is None where the brief does not say enough for one; None in all where no single trial is to blame.
    """
    solution = case.facts.solution
    if solution is None:
        plane = untried(case.state)[0]
        found = _by_force(case.state, plane)
        return plane, None if found is None else 1000.0 * found.mass_kg
    weakest = _weakest(case.state, solution)
    if weakest is None or weakest.times is None:
        return None
    return weakest.trial.plane, weakest.times * weakest.trial.mass


def _trial_text(state: JobState, name: str) -> str:
    """A trial mass by the weight on a bearing, where the brief says enough."""
    found, speed_rpm = _by_force(state, name), running_speed(state)
    if found is None or speed_rpm is None:
        return "put a small trial mass at any angle"
    force = f"{found.force_n:.0f} N, {found.force_kgf:.0f} kgf at {speed_rpm:.0f} r/min"
    return f"put a trial mass of about {1000.0 * found.mass_kg:.2g} g ({force}) at any angle"


def _by_force(state: JobState, name: str) -> Trial | None:
    """A trial mass by the weight on a bearing; None where the brief does not say enough."""
    plane = next(p for p in state.brief.planes if p.name == name)
    speed_rpm, mass = running_speed(state), state.brief.rotor.mass
    if plane.radius is None or speed_rpm is None or mass is None:
        return None
    radius_m, mass_kg = units.parse(plane.radius, "m", "radius"), units.parse(mass, "kg", "rotor.mass")
    rpm, planes = run_vectors.near_resonance(state), len(state.brief.planes)
    try:
        return trials.trial_mass(name, mass_kg, radius_m, speed_rpm, planes=planes, resonance_rpm=rpm)
    except trials.TrialError:
        return None


def runs_disagree(case: Case) -> Said | None:
    """Runs that do not fit each other, or an initial state that moved."""
    judged = case.facts.solution.consistency if case.facts.solution is not None else None
    if judged is None or not (judged.doubted or any(d.moved for d in judged.drifts)):
        return None
    return "check-run", "; ".join(judged.sentences[:2])


def stop(case: Case) -> Said | None:
    """Reasons to stop after corrections that did not reach the goal."""
    state = case.state
    changed = progress.influence_change(state, limits().clear_of_noise)
    if changed is not None and (
        abs(changed.percent) > limits().influence_percent or abs(changed.turned_deg) > limits().influence_deg
    ):
        return "stop-scatter", (
            f'the coefficients changed by {changed.percent:+.0f} % and {changed.turned_deg:+.0f}° in run "{changed.run}": '
            "the machine does not answer alike; find out why, or stop here"
        )
    cuts = progress.cuts_percent(state)[-2:]
    if len(cuts) == 2 and all(c < limits().cut_percent for c in cuts):
        return "stop-exhausted", (
            f"the last two corrections cut the worst point by {cuts[0]:.0f} % and {cuts[1]:.0f} %: more of the same will not "
            "do; look for another cause, or stop here"
        )
    return None


def trial_strength(case: Case) -> Said | None:
    """A trial that tells too little, before anything was corrected by it."""
    solution = case.facts.solution
    if solution is None or progress.corrected(case.state):
        return None
    weakest = _weakest(case.state, solution)
    if weakest is None:
        return None if solution.trusted else ("larger-trial", solution.reasons[0])
    worst, times, over = weakest.trial, weakest.times, weakest.over
    strength = f'trial on "{worst.plane}": {worst.strength:.1f} standard deviations'
    if times is None:
        return "repeat-trial", (
            f"{strength}, and no mass would do with this repeatability: repeat initial and trial run, and average more"
        )
    if over is not None and times <= 1.0:
        return "repeat-trial", (
            f"{strength}, and a larger one may bring {over.point} above its abort level of {over.level:.3g}: repeat "
            "initial and trial run, and average more"
        )
    limited = "" if over is None else f", no more for the abort level at {over.point}"
    return "larger-trial", (
        f"{strength} are too weak; put on {times:.1f} times the mass, {times * worst.mass:.3g} g{limited}, and repeat it"
    )


@dataclass(frozen=True)
class _Weakest:
    """A trial that was too weak, how many times its mass is wanted (None: no mass would do), what holds that down."""

    trial: TrialEffect
    times: float | None
    over: _Over | None


def _weakest(state: JobState, solution: Solution) -> _Weakest | None:
    """The weakest of the trials that tell too little; None where all do."""
    worst = min((t for t in solution.trials if t.verdict == "too weak"), key=lambda t: t.strength, default=None)
    if worst is None or worst.times is None:
        return None if worst is None else _Weakest(worst, None, None)
    times = max(worst.times, 1.0)
    over = _over_abort(state, solution, {worst.plane: complex(times * worst.mass)})
    return _Weakest(worst, times if over is None else times * over.share, over)


def correct(case: Case) -> Said | None:
    """The next correction, or why to stop before it."""
    state, solution = case.state, case.facts.solution
    assert solution is not None
    wanted, how = _to_put_on(state, solution)
    inside = all(c.mass_ci95 is None or c.mass <= c.mass_ci95 for c in wanted)
    # planes that are each uncertain may still do something together; an overhung rotor begins with one part
    asked = inside or state.brief.rotor.kind == "overhung"
    part = _part(state, solution) if asked and not passed(state, "put-on-part") else {}
    largest = max(abs(m) for m in part.values()) if part else max(c.mass for c in wanted)
    told = run_vectors.mass_text(part) if part else _text(wanted)
    smallest = min((1000.0 * units.parse(s.mass, "kg", "stock") for s in state.brief.stock), default=0.0)
    if largest < smallest and not passed(state, "stop-exhausted"):
        return (
            "stop-exhausted",
            f"the next correction, {told}, is below the smallest piece of {smallest:.3g} g: stop here",
        )
    if part and solution.proposed is not None:
        return "put-on-part", f"{how} {told}: {solution.proposed.alternative.name} is to be preferred to all planes"
    if inside and not passed(state, "stop-scatter"):
        return "stop-scatter", f"the next correction, {told}, lies inside its own scatter: stop here, or repeat the run"
    return ("trim" if progress.corrected(state) else "put-on-correction"), f"{how} {told}"


def part_wanted(case: Case) -> dict[str, complex]:
    """What to put on by plane, g, where a part of the correction is advised."""
    return {} if case.facts.solution is None else _part(case.state, case.facts.solution)


def _part(state: JobState, solution: Solution) -> dict[str, complex]:
    """What to put on by plane where fewer unknowns than planes are to be preferred; nothing where they are not, or it is on."""
    if solution.proposed is None or solution.proposed.alternative.name == couple.ALL:
        return {}
    masses = [complex(m) for m in solution.proposed.alternative.masses]
    stays = {} if progress.trials_on(state) else progress.on_now(state)
    planes = [c.plane for c in solution.corrections]
    least = _HARDLY_ANY * max(abs(m) for m in masses)
    trial = {on.of for on in progress.trials_on(state)}
    kept = run_vectors.masses_of([on.piece for on in state.on_rotor if on.of not in trial], state.brief)
    if any(abs(m) <= least < abs(kept.get(p, 0j)) for p, m in zip(planes, masses, strict=True)):
        return {}  # more than this part was corrected already: that is trimmed, not taken off again
    left = {p: m - stays.get(p, 0j) for p, m in zip(planes, masses, strict=True)}
    return {p: m for p, m in left.items() if abs(m) > least}


def _to_put_on(state: JobState, solution: Solution) -> tuple[tuple[Correction, ...], str]:
    """What to put on as the rotor is now, and how to say it."""
    on, last = progress.on_now(state), progress.usable(state)[-1]
    if progress.trials_on(state):
        others = len(progress.trials_on(state)) < len(state.on_rotor)
        off = "take all that is on off, trial and earlier masses," if others else "take all trial masses off"
        return solution.corrections, f"{off} and put on"
    if on and run_vectors.same_masses(on, run_vectors.masses_on(last, state.brief)):
        return solution.additional, "add to what is on"
    return solution.corrections, "put on, in the place of all that is on," if on else "put on"


def _text(corrections: Sequence[Correction]) -> str:
    told = []
    for c in corrections:
        half = "" if c.mass_ci95 is None else f" ± {c.mass_ci95:.2g}"
        wide = "" if c.angle_ci95_deg is None else f" ± {c.angle_ci95_deg:.0f}"
        told.append(f'{c.mass:.3g}{half} {c.unit} at {c.angle_deg:.0f}{wide}° on "{c.plane}"')
    return " and ".join(told)
