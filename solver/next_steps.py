"""The rules behind the advice, up to the first trial and at the end: each says what to do now, or nothing.

A rule sees the record, what the caller worked out, and the starts that are left. Limits stand in `guidance.toml`.
"""

from __future__ import annotations

import functools
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from stillshaft.dsp import tables
from stillshaft.solver import cautions, inspection, progress, run_checks, run_vectors
from stillshaft.solver.brief import Brief
from stillshaft.solver.cautions import running_speed
from stillshaft.solver.diagnosis import Diagnosis
from stillshaft.solver.state import JobState

if TYPE_CHECKING:
    from stillshaft.solver.diagnosis import Cause
    from stillshaft.solver.events import Vector
    from stillshaft.solver.guidance import Facts
    from stillshaft.solver.limits import Tolerance

TABLE = Path(__file__).with_name("guidance.toml")
StageName = Literal["brief", "inspect", "hook-up", "runs", "masses", "close-out"]
Said = tuple[str, str]  # act and sentence
_WORST = ("not met", "cannot be told", "met")


class Act(tables.Strict):
    """What may be advised: its stage, command and reason; whether the machine is started for it; how it may be passed over."""

    key: str
    stage: StageName
    command: str
    passed: Literal["for good", "until the next run", "never"]
    why: str
    start: bool = False


class Limits(tables.Strict):
    """The limits of the table, named with their units."""

    cut_percent: float
    influence_percent: float
    influence_deg: float
    clear_of_noise: float
    share_of_1x: float
    neighbour_share: float
    worse_percent: float
    beat_record_s: float


class _Checks(tables.Strict):
    while_running: list[str]


class _File(tables.Strict):
    format: Literal[1]
    source: str
    limits: Limits
    checks: _Checks
    act: list[Act]


@dataclass(frozen=True)
class Case:
    """What a rule sees; `starts_left` None where there is no limit."""

    state: JobState
    facts: Facts
    starts_left: int | None

    @functools.cached_property
    def starts_needed(self) -> int:
        """The fewest starts that the usual way still takes: initial run, a trial for each plane, a check of the correction."""
        to_try = 0 if self.facts.solution is not None else len(untried(self.state))
        bare, corrected = progress.bare(self.state), progress.corrected(self.state)
        return (0 if bare else 1) + to_try + (0 if corrected else 1)


@functools.cache
def _table() -> _File:
    return tables.checked(tables.read(TABLE), _File)


def limits() -> Limits:
    """The limits that advice goes by."""
    return _table().limits


def act_named(key: str) -> Act:
    """What the table says of an act."""
    return next(a for a in _table().act if a.key == key)


def acts() -> tuple[str, ...]:
    """Keys of all acts."""
    return tuple(a.key for a in _table().act)


def while_running() -> tuple[str, ...]:
    """Keys of the inspection's checks that take a running machine."""
    return tuple(_table().checks.while_running)


def passed(state: JobState, act: str) -> bool:
    """Whether the person decided to pass over it."""
    how = act_named(act).passed
    since = max((r.id for r in state.runs), default=0) if how == "until the next run" else 0
    return how != "never" and progress.skipped(state, act, since)


def untried(state: JobState) -> list[str]:
    """Planes that no usable run had a mass on."""
    known = progress.tried(state)
    return [p.name for p in state.brief.planes if p.name not in known]


def goal_verdict(brief: Brief, tolerance: Tolerance | None) -> str:
    """The verdict that decides: a contract's grade and limits, else the limit table, else what the owner agreed.

    Without a contract vibration decides, and the residual unbalance only where there is no limit for vibration.
    """
    if tolerance is None:
        return "cannot be told"
    vibration = {v.verdict for v in tolerance.vibration}
    if brief.goal.basis == "contract" or not vibration:
        return tolerance.verdict
    return next((v for v in _WORST if v in vibration), "cannot be told")


def goal_is_met(case: Case) -> bool:
    """Whether the last run that serves meets the goal with what stays on the rotor."""
    runs, tolerance = progress.usable(case.state), case.facts.tolerance
    if tolerance is None or not runs or tolerance.run != runs[-1].what.name:
        return False
    stays = runs[-1].what.purpose != "trial" and not progress.run_is_due(case.state)
    return stays and goal_verdict(case.state.brief, tolerance) == "met"


# before the first run


def closed(case: Case) -> Said | None:
    """A closed job has nothing to do."""
    return ("done", "the job is closed; its report can be made, or the job reopened") if case.state.closed else None


def alarm(case: Case) -> Said | None:
    """An abort level that was crossed, until masses are changed or a decision is recorded."""
    state = case.state
    if not state.alarms:
        return None
    last = state.alarms[-1]
    if max([m.id for m in state.masses] + [d.id for d in state.decisions], default=0) > last.id:
        return None
    what = last.what
    if not state.on_rotor:
        return "alarm-bare", (
            f"{what.point} reached {what.amplitude:.3g} {what.unit}, above its abort level of {what.level:.3g}, with nothing "
            "put on: find out why, and agree with the owner what is done, before the next start"
        )
    return "after-alarm", (
        f"{what.point} reached {what.amplitude:.3g} {what.unit}, above its abort level of {what.level:.3g}: take off what "
        "was put on last or make it smaller, and find out why before the next start"
    )


def brief(case: Case) -> Said | None:
    """What the brief lacks of what decides, and what in it cannot hold."""
    asked = case.state.brief
    highest, running = asked.rotor.highest_speed_rpm, asked.rotor.speed_rpm
    if highest is not None and running is not None and running > highest:
        return "speed-above-limit", (
            f"the running speed of {running:.0f} r/min is above the {highest:.0f} r/min that the rotor must never exceed: "
            "correct what is wrong in the brief"
        )
    missing = missing_in_brief(asked)
    if missing:
        return "fill-brief", f"the brief lacks what decides ({len(missing)}): {', '.join(missing)}"
    strays = cautions.unwatched(case.state)
    if not strays:
        return None
    what, point = strays[0]
    there = ", ".join(cautions.wired_points(case.state))
    return "name-points", f'the {what} at "{point}" watches nothing: the hook-up has no such point; there is {there}'


def missing_in_brief(brief: Brief) -> tuple[str, ...]:
    """What the brief must say before masses are put on."""
    without = [p.name for p in brief.planes if p.radius is None]
    goal = brief.goal.grade or brief.goal.table or brief.limits
    wanted = {
        "kind of rotor": brief.rotor.kind is None,
        "running speed": brief.rotor.speed_rpm is None,
        "correction planes": not brief.planes,
        f"radius of {', '.join(without)}": bool(without),
        "abort levels": not brief.abort,
        "goal (grade, limit table or agreed limits)": not goal,
    }
    return tuple(name for name, lacks in wanted.items() if lacks)


def reference(case: Case) -> Said | None:
    """A change of mark or sensors by an unknown turn, as long as the runs since then give no correction by themselves."""
    state, solution = case.state, case.facts.solution
    counted = run_checks.counted(state)
    changes = [c for c in run_checks.unknown_turns(state) if any(r.id < c.id for r in counted)]
    if not changes or (solution is not None and solution.trusted):
        return None
    states = [run_vectors.masses_on(r, state.brief) for r in counted if r.id < changes[-1].id]
    here = any(run_vectors.same_masses(progress.on_now(state), s) for s in states)
    put_back = f"put back {run_vectors.mass_text(states[-1])} and repeat that run"
    how = "repeat a run as the rotor is now" if here else put_back
    return "re-reference", f"{changes[-1].what.what}: its turn is not known; {how} to show it"


def refused_run(case: Case) -> Said | None:
    """What to do about a last run that does not count, unless the person left it out."""
    last = case.state.runs[-1] if case.state.runs else None
    if last is None or last.counts or any(r.startswith("left out: ") for r in last.reasons):
        return None
    worst = next((v for v in last.what.vectors if v.verdict not in (None, "steady")), None)
    name = f'run "{last.what.name}"'
    if worst is None:
        return "check-run", f"{name} does not count: {last.reasons[0] if last.reasons else 'it is not trusted'}"
    return _of_verdict(name, worst)


def _of_verdict(name: str, vector: Vector) -> Said:
    """What a verdict on 1x asks for."""
    told = vector.steadiness or {}
    wanted, swing, trend = (told.get(key) for key in ("record_s", "phase_swing_deg", "trend_deg_per_min"))
    record_s = float(wanted) if isinstance(wanted, int | float) else limits().beat_record_s
    moves = f", phase swings by {swing:.0f}°" if isinstance(swing, int | float) else ""
    by = f" by {trend:+.1f}°/min" if isinstance(trend, int | float) else ""
    match vector.verdict, told.get("cause"):
        case "walking", _:
            return "stop-neighbour", (
                f"{name}: a second source is stronger than 1x at {vector.point}{moves}: find and stop it"
            )
        case (("too-short" | "beating"), _):
            return "record-longer", f"{name}: {vector.point} is {vector.verdict}{moves}: record {record_s:.0f} s"
        case "drifting", "speed":
            return (
                "hold-speed",
                f"{name}: the phase at {vector.point} follows the speed{moves}: hold it and repeat the run",
            )
        case "drifting", _:
            return "wait-to-settle", f"{name}: {vector.point} drifts{by}: let the machine settle, then record again"
        case _, "scatter":
            return "record-longer", f"{name}: 1x at {vector.point} is as small as its scatter: record {record_s:.0f} s"
    return "check-run", (
        f"{name}: {vector.point} is {vector.verdict}{moves}: look for a loose part, process changes or a bad pulse"
    )


def closing(case: Case) -> Said | None:
    """A goal that is met by the last run, or a stop: what is left to do, then verdict, acceptance and the end."""
    state, met = case.state, goal_is_met(case)
    if not met and not progress.stopped(state):
        return None
    reached = f"the goal is met ({_standing(case.facts.tolerance)})" if met else "balancing was stopped"
    for act, sentence in progress.left_at_the_end(state, limits().worse_percent):
        if not passed(state, act):
            return act, f"{reached}: {sentence}"
    last = state.verdicts[-1] if state.verdicts else None
    if last is None or last.id < max((r.id for r in state.runs), default=0):
        if met:
            return "stop-met", f"{reached}: stop here and record the verdict"
        return "record-verdict", f"{reached}: record the verdict"
    if not (last.what.accepted_by or last.what.refused_by) and not passed(state, "accept"):
        return "accept", f'{reached}: have the verdict "{last.what.verdict}" accepted or refused by name'
    undone = [c.what.item for c in state.checks.values() if c.what.outcome == "not done"]
    more = f"; checks not done: {', '.join(undone)}" if undone else ""
    return "close", f"{reached} and nothing is left to do: close the job{more}"


def _standing(tolerance: Tolerance | None) -> str:
    """The row that is nearest to its limit, vibration before residual unbalance."""
    if tolerance is None:
        return "no figures"
    rows = [
        (v.value / v.limit, f"{v.point} {v.value:.3g} ± {v.ci95:.2g} of {v.limit:.3g}")
        for v in tolerance.vibration
        if v.limit > 0.0
    ]
    planes = [] if rows else [p for p in tolerance.planes if p.residual_gmm is not None and p.permissible_gmm]
    for p in planes:
        assert p.residual_gmm is not None
        assert p.permissible_gmm is not None
        half = "" if p.residual_ci95 is None else f" ± {_plain(p.residual_ci95, 2)}"
        told = f"{p.plane} {_plain(p.residual_gmm)}{half} of {_plain(p.permissible_gmm)} g·mm"
        rows.append((p.residual_gmm / p.permissible_gmm, told))
    return max(rows)[1] if rows else tolerance.verdict


def _plain(value: float, figures: int = 3) -> str:
    """So many figures, and never a power of ten."""
    return f"{value:.{figures}g}" if abs(value) < 10.0**figures else f"{value:.0f}"


def overhung(case: Case) -> Said | None:
    """An overhung rotor with more than one plane, before any trial."""
    state, planes = case.state, case.state.brief.planes
    if (
        state.brief.rotor.kind != "overhung"
        or len(planes) < 2
        or progress.tried(state)
        or case.facts.solution is not None
    ):
        return None
    return "one-plane-first", (
        f'the rotor is overhung and has {len(planes)} planes: balance it in "{planes[0].name}" alone first, and add the '
        "other only if axial or far-bearing 1x stays above the goal"
    )


def inspect(case: Case) -> Said | None:
    """Checks at standstill that fit the machine and are open, before the first run that counts."""
    state, running = case.state, while_running()
    if run_checks.counted(state):
        return None
    fitting = [c for c in inspection.checks(inspection.facts_from(state.brief)) if c.key not in running]
    left = [c for c in fitting if c.key not in state.checks]
    if not left:
        return None
    return "inspect", (
        f"{len(left)} of {len(fitting)} checks at standstill that fit this machine are open; next: {left[0].title}"
    )


def mend(case: Case) -> Said | None:
    """What a check found and nobody put right, before any trial."""
    doubtful = [c.what for c in case.state.checks.values() if c.what.outcome == "needs attention"]
    if not doubtful or progress.tried(case.state):
        return None
    first = doubtful[0].item + (f" ({doubtful[0].note})" if doubtful[0].note else "")
    return "mend", f"checks that need attention: {len(doubtful)}, first {first}: put it right before you balance"


def hook_up(case: Case) -> Said | None:
    """A hook-up, before the first run."""
    if case.state.hookup is not None or case.state.runs:
        return None
    return "hook-up", "no hook-up yet: say what is wired to each input and where it sits"


def signals(case: Case) -> Said | None:
    """A signal check before the first run, or one since the last run that found something."""
    state = case.state
    check = next((m for m in reversed(state.measured) if m.what.what == "signal check"), None)
    if check is None:
        asked = "the signals were not checked yet: check pulse and sensors once"
        return None if state.runs else ("check-signals", asked)
    if check.what.trusted or check.id < max((r.id for r in state.runs), default=0):
        return None
    reasons = "; ".join(check.what.reasons) or "something that blocks"
    return "check-signals", f"the last signal check found: {reasons}; mend it and check again"


# before the first trial


def neighbour(case: Case) -> Said | None:
    """What neighbours make of 1x against the goal, before any trial."""
    loudest = progress.loudest_neighbour(case.state)
    if loudest is None or loudest[1] <= limits().neighbour_share or progress.tried(case.state):
        return None
    return "stop-neighbour", (
        f"with this machine stopped, neighbours make {100.0 * loudest[1]:.0f} % of the goal at {loudest[0]}: stop them, or "
        "keep them the same in all runs"
    )


def initial(case: Case) -> Said | None:
    """The initial run, also of a rotor that was cleaned."""
    if progress.bare(case.state):
        return None
    if progress.state_is_new(case.state):
        return "initial-run", (
            "the rotor was cleaned or mended: take a new initial run; the earlier runs still tell the coefficients"
        )
    return "initial-run", "take the initial run, without masses, under the conditions of all later ones"


def not_unbalance(case: Case) -> Said | None:
    """Other orders or other causes than unbalance."""
    runs = [r for r in progress.usable(case.state) if r.what.purpose != "trial"]
    share = progress.share_of_1x(runs[-1]) if runs else None
    if share is not None and share[1] < limits().share_of_1x:
        return "stop-other-orders", (
            f"1x makes only {100.0 * share[1]:.0f} % of the vibration's square at {share[0]}: other orders dominate, which "
            "balancing does not change"
        )
    causes = [c for c in _causes(case.facts) if c.key != "resonance"]
    unbalance = next((c for c in causes if c.key == "unbalance"), None)
    if progress.tried(case.state) or not causes or causes[0] is unbalance or causes[0].verdict != "likely":
        return None
    if unbalance is not None and unbalance.verdict == "likely":
        return None
    return "stop-not-unbalance", f"{causes[0].name} is likelier than unbalance{_reading(causes[0])}: {causes[0].advice}"


def _causes(facts: Facts) -> Sequence[Cause]:
    if facts.diagnosis is None:
        return ()
    return facts.diagnosis.causes if isinstance(facts.diagnosis, Diagnosis) else facts.diagnosis


def _reading(cause: Cause) -> str:
    return f" ({cause.speaking_for[0].text})" if cause.speaking_for else ""


def resonance(case: Case) -> Said | None:
    """A resonance near running speed, before any trial."""
    if progress.tried(case.state):
        return None
    rpm, speed = run_vectors.near_resonance(case.state), running_speed(case.state)
    if rpm is not None and speed is not None:
        return "move-speed", (
            f"running speed {speed:.0f} r/min is {100.0 * abs(speed / rpm - 1.0):.0f} % from the resonance at {rpm:.0f} "
            "r/min: move the speed or the support before you balance, or take half the trial mass in any direction"
        )
    likely = next((c for c in _causes(case.facts) if c.key == "resonance" and c.verdict == "likely"), None)
    if likely is None:
        return None
    return "move-speed", f"{likely.name} is likely{_reading(likely)}: {likely.advice}"


def repeat(case: Case) -> Said | None:
    """Before the first trial: the initial run repeated, and alike."""
    state, bare = case.state, progress.bare(case.state)
    if progress.tried(state) or progress.on_now(state) or case.facts.solution is not None:
        return None
    if len(bare) == 1:
        if case.starts_left is not None and case.starts_left <= case.starts_needed:
            return None
        return "repeat-initial", (
            "stop, restart and repeat the initial run before the first trial: 1 run shows no repeatability"
        )
    worst = progress.worst_repeat(bare[-2], bare[-1], run_vectors.repeatability(state))
    if worst is None or worst.verdict != "does not repeat":
        return None
    return "repeat-differs", (
        f'the initial state moved between "{bare[-2].what.name}" and "{bare[-1].what.name}": {worst.point} by '
        f"{worst.percent:+.0f} % and {worst.turned_deg:+.0f}°; find out why, let it settle, and repeat the initial run"
    )


def few_starts(case: Case) -> Said | None:
    """Fewer starts than the usual way takes, before any trial."""
    left, needed = case.starts_left, case.starts_needed
    if left is None or left >= needed or progress.tried(case.state) or case.facts.solution is not None:
        return None
    planes = len(untried(case.state))
    spared = needed - planes
    ways = [f"coefficients of an earlier visit need {spared}"]
    if planes > 1:
        ways.append(f"one plane alone needs {spared + 1}")
    ways.append("a trial opposite the heavy spot that stays on is a first correction")
    return "plan-fewest", f"{left} starts are left and the usual way needs {needed}: {'; '.join(ways)}"
