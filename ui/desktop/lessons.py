"""Prepared lessons on the simulated rotor: each with a machine, a goal, steps, and a check of the learner's own record.

The machines are the project's own. What a lesson asks is answered by the learner; what was learnt is worked out from the record.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from stillshaft.solver.events import Vector
from stillshaft.solver.state import JobRun, JobState, fold
from stillshaft.solver.trial import GOOD, WEAK
from stillshaft.ui import job_facts, rehearsal_machines
from stillshaft.ui.desktop import tour
from stillshaft.ui.desktop.simulator import Mass, Teaching
from stillshaft.ui.session import Session

if TYPE_CHECKING:
    from stillshaft.solver.correction import Solution

WALKING, WEAK_TRIAL, COUPLE = "walking phase", "weak trial", "couple"
LEFT, NOT_LEFT = "A couple is left", "Nothing is left"  # the learner's judgement, as the record has it
_OF_THE_RECORD = "lesson: "


@dataclass(frozen=True)
class Lesson:
    """A lesson: its machine, the brief of its job, what is to be learnt, and the check of the record."""

    key: str
    title: str
    goal: str
    teaching: Teaching
    brief: Callable[[], dict[str, Any]]
    check: Callable[[Session], tuple[Outcome, ...]]


@dataclass(frozen=True)
class Outcome:
    """One thing that was to be done or seen: whether it was, and what the record says of it."""

    reached: bool
    sentence: str


# a walking phase


def second_source(run: JobRun) -> tuple[float, float] | None:
    """Offset in Hz and strength over 1x of the second source that a run saw, at the point where it is strongest."""
    beats = [beat for v in run.what.vectors if (beat := _beat(v)) is not None]
    return max(beats, key=lambda beat: beat[1], default=None)


def _beat(vector: Vector) -> tuple[float, float] | None:
    beat = (vector.steadiness or {}).get("beat")
    if not isinstance(beat, dict) or not beat.get("offset_hz") or not isinstance(beat.get("ratio"), int | float):
        return None
    return abs(float(beat["offset_hz"])), float(beat["ratio"])


def left_in_mean_percent(run: JobRun) -> float | None:
    """The most that the second source moves the mean of a run, in percent of it: 100·r/(π·n) over n beats."""
    beat = second_source(run)
    if beat is None or run.what.duration_s is None:
        return None
    return 100.0 * beat[1] / (math.pi * max(1e-9, beat[0] * run.what.duration_s))


def wanted_s(run: JobRun) -> float | None:
    """How long a record averages out what a run saw, s: the longest that a point asks for."""
    told = [(v.steadiness or {}).get("record_s") for v in run.what.vectors]
    return max((float(s) for s in told if isinstance(s, int | float)), default=None)


def _check_walking(session: Session) -> tuple[Outcome, ...]:
    state = session.state
    seen = next((r for r in state.runs if second_source(r) is not None), None)
    if seen is None:
        first = Outcome(False, "No run yet shows the second source.")
    else:
        beat = second_source(seen)
        assert beat is not None
        said = f"Your run “{seen.what.name}” saw a beat of {1.0 / beat[0]:.1f} s, {100.0 * beat[1]:.0f} % of the vibration."
        first = Outcome(True, said)
    serving = next((r for r in reversed(state.runs) if r.counts), None)
    left = None if serving is None else left_in_mean_percent(serving)
    if serving is None:
        return first, Outcome(False, "No run counts yet: record whole beats.")
    if not serving.what.trusted:
        return first, Outcome(
            False,
            f"Your run “{serving.what.name}” counts, but is too short for its beat: up to {left or 0.0:.0f} % off.",
        )
    off = "no beat was left in it" if left is None else f"the beat moves its mean by {left:.1f} % at the most"
    return first, Outcome(
        True, f"Your run “{serving.what.name}” of {serving.what.duration_s or 0.0:.0f} s serves: {off}."
    )


# a trial mass that is too weak


def solved_up_to(session: Session, entry: int) -> Solution | None:
    """What the record told up to an entry."""
    state = fold(e for e in session.job.events if e.id <= entry)
    return job_facts.worked(state, session.folder).solution


def trial_runs(state: JobState) -> list[JobRun]:
    """Trial runs that count, in their order."""
    return [run for run in state.runs if run.counts and run.what.purpose == "trial"]


def _check_weak(session: Session) -> tuple[Outcome, ...]:
    trials = trial_runs(session.state)
    first = None if not trials else solved_up_to(session, trials[0].id)
    now = None if not trials else session.worked().solution
    outcomes = []
    for solution, weak in ((first, True), (now if len(trials) > 1 else None, False)):
        if solution is None:
            outcomes.append(Outcome(False, "There is no trial run for it yet."))
            continue
        strength, known = min(t.strength for t in solution.trials), all(c.determined for c in solution.corrections)
        plain = "its mass is determined" if known else "its mass is not determined"
        name = "first trial" if weak else "larger trial"
        limit = f"below {WEAK:g} is too weak" if weak else f"{GOOD:g} and more is good"
        reached = not known or strength < WEAK if weak else known and strength >= WEAK
        outcomes.append(Outcome(reached, f"Your {name}: {strength:.1f} standard deviations, and {plain}; {limit}."))
    return tuple(outcomes)


# a couple on an overhung rotor


def couple_is_left(state: JobState) -> bool | None:
    """Whether the last run that counts is above a limit with its interval, though one plane was corrected; None: not known."""
    run = next((r for r in reversed(state.runs) if r.counts and r.what.masses and r.what.purpose != "trial"), None)
    if run is None:
        return None
    limits = {level.point: level.amplitude for level in state.brief.limits}
    above = [v.amplitude - (v.amplitude_ci95 or 0.0) > limits[v.point] for v in run.what.vectors if v.point in limits]
    return any(above)


def judge_couple(session: Session, choice: str) -> None:
    """Write the learner's judgement into the record."""
    session.decide(f"{_OF_THE_RECORD}{choice}", "judged from the run after the correction")


def judgement(state: JobState) -> str | None:
    """The learner's judgement, if there is one."""
    said = [d.what.text.removeprefix(_OF_THE_RECORD) for d in state.decisions if d.what.text.startswith(_OF_THE_RECORD)]
    return said[-1] if said else None


def _check_couple(session: Session) -> tuple[Outcome, ...]:
    state = session.state
    put = next((m for m in state.masses if m.what.act == "put on" and m.what.purpose == "correction"), None)
    planes = set() if put is None else {piece.plane for piece in put.what.pieces}
    one = Outcome(
        len(planes) == 1, f"You corrected {'no plane' if not planes else ' and '.join(sorted(planes))} first."
    )
    left, choice = couple_is_left(state), judgement(state)
    if left is None or choice is None:
        return one, Outcome(False, "There is no judgement of the couple yet.")
    runs = [r for r in state.runs if r.counts]
    before = {v.point: v.amplitude for v in runs[0].what.vectors}
    told = "; ".join(
        f"{v.point} first {before.get(v.point, 0.0):.2f}, now {v.amplitude:.2f}" for v in runs[-1].what.vectors
    )
    right = choice == (LEFT if left else NOT_LEFT)
    judged = "your judgement fits" if right else "your judgement does not fit"
    return one, Outcome(
        right, f"Vibration in {runs[-1].what.unit}: {told}. Above the limit: {'yes' if left else 'no'}; {judged}."
    )


# the lessons


def _overhung_brief() -> dict[str, Any]:
    return rehearsal_machines.machine(1, "couple").brief()


_FAN = Teaching(unbalance=(Mass(26.0, 65.0), Mass(0.0, 0.0)))
LESSONS = (
    Lesson(
        WALKING, "A neighbour that makes the phase walk",
        "A machine beside yours runs nearly as fast. Get a run that can be used all the same.",
        replace(_FAN, neighbour_hz=0.08, neighbour_mm_s=1.8), tour.brief, _check_walking,
    ),
    Lesson(
        WEAK_TRIAL, "A trial mass that is too weak",
        "See what a trial mass that is far too light tells, and put it right.",
        _FAN, tour.brief, _check_weak,
    ),
    Lesson(
        COUPLE, "A couple on an overhung fan",
        "The disc hangs outside its bearings. Take the static part away first, then judge what is left.",
        replace(_FAN, overhung=True), _overhung_brief, _check_couple,
    ),
)  # fmt: skip


def lesson(key: str) -> Lesson:
    """The lesson of a key."""
    return next(each for each in LESSONS if each.key == key)
