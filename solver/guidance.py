"""The one thing to do next in a job, in one sentence with its number, and how far each stage is.

Rules are asked in their order of urgency (`next_steps`, `next_masses`) and the first that has something to say is the
advice: the same record, facts and time give the same sentence. Acts, their reasons and limits are a table, `guidance.toml`
beside this file: common practice, no source. Decisions of the record pass over an advice (`progress.skip_fields`) or end
the balancing (`progress.stop_fields`).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Literal

from stillshaft.dsp import units
from stillshaft.dsp.tables import TableError
from stillshaft.solver import (
    clock,
    inspection,
    next_commands,
    next_masses,
    next_steps,
    progress,
    run_checks,
    run_vectors,
)
from stillshaft.solver.brief import Brief, moment
from stillshaft.solver.cautions import fixing_of
from stillshaft.solver.correction import Solution
from stillshaft.solver.diagnosis import Cause, Diagnosis
from stillshaft.solver.limits import Tolerance
from stillshaft.solver.next_steps import Case, Said, StageName
from stillshaft.solver.state import JobState

_SHORTEST_MINUTES, _LONGEST_MINUTES = 0.01, 1e6  # between starts: beyond them a slip of the pen
STAGES: tuple[StageName, ...] = ("brief", "inspect", "hook-up", "runs", "masses", "close-out")


@dataclass(frozen=True)
class Facts:
    """What the caller worked out from the record: None where there is none, `solution_error` says why.

    `diagnosis` are the causes, the likeliest first. `now` is an aware time; `ahead_s` is by how much the computer's clock
    was set forward since the program began, which `now` leaves out (`clock`).
    """

    solution: Solution | None
    solution_error: str | None
    tolerance: Tolerance | None
    diagnosis: Diagnosis | Sequence[Cause] | None
    now: datetime
    ahead_s: float = 0.0


@dataclass(frozen=True)
class Advice:
    """What to do next: its stage, an identifier, one sentence, the rule behind it, and the command that does it."""

    stage: StageName
    act: str
    sentence: str
    why: str
    command: str


@dataclass(frozen=True)
class Stage:
    """How far a stage is, and why."""

    state: Literal["empty", "under way", "done", "needs attention"]
    reason: str


@dataclass(frozen=True)
class Starts:
    """Starts counted against what is allowed: `left` None without a limit, `earliest` None where it may start now."""

    counted: int
    left: int | None
    earliest: datetime | None
    sentence: str


def advise(state: JobState, facts: Facts) -> Advice:
    """The most important thing about the job now."""
    found = starts(state, facts.now, facts.ahead_s)
    try:
        act, sentence = next(_said(Case(state, facts, found.left)))
    except units.UnitError as error:
        act, sentence = "mend-record", f"the record has what is no unit or number: {error}"
    if next_steps.act_named(act).start:
        act, sentence = _when_it_may_start(state, found, facts.now, (act, sentence))
    told = next_steps.act_named(act)
    command = next_commands.command(Case(state, facts, found.left), act)
    return Advice(told.stage, act, f"{sentence[0].upper()}{sentence[1:]}.", told.why, command)


def _said(case: Case) -> Iterator[Said]:
    """What the rules say, the most urgent first, without what the person decided to pass over."""
    for rule in _RULES:
        said = rule(case)
        if said is not None and not next_steps.passed(case.state, said[0]):
            yield said


_RULES = (
    next_steps.closed, next_steps.alarm, next_steps.brief, next_steps.reference, next_steps.refused_run,
    next_steps.closing, next_steps.overhung, next_steps.inspect, next_steps.mend, next_steps.hook_up, next_steps.signals,
    next_steps.neighbour, next_steps.initial, next_steps.not_unbalance, next_steps.resonance, next_steps.repeat,
    next_steps.few_starts, next_masses.due, next_masses.first_trials, next_masses.runs_disagree, next_masses.stop,
    next_masses.trial_strength, next_masses.correct,
)  # fmt: skip


def _when_it_may_start(state: JobState, found: Starts, now: datetime, said: Said) -> Said:
    """The act, or what has to be waited for first."""
    if found.left == 0:
        return "no-starts-left", f"no start is left ({found.sentence}): agree on more with the owner, or close the job"
    if found.earliest is not None and not next_steps.passed(state, "wait-for-start"):
        minutes = (found.earliest - now).total_seconds() / 60.0
        return "wait-for-start", f"wait {minutes:.0f} min for the next start ({found.sentence}); then {said[1]}"
    return said


# starts


def now_for(state: JobState) -> datetime:
    """The time for what has to be waited for after the last start, in UTC."""
    return clock.now(state.starts[-1].at if state.starts else None)


def starts(state: JobState, now: datetime, ahead_s: float = 0.0) -> Starts:
    """Starts counted, how many are left, and the earliest next one; `now` and `ahead_s` as in the facts.

    A start whose temperature was not noted counts as a cold and as a hot one: unknown is not absent.
    """
    said, temperatures = state.brief.starts, [s.what.temperature for s in state.starts]
    count = len(temperatures)
    cold, hot = (sum(t is None or t in kinds for t in temperatures) for kinds in (("cold",), ("warm", "hot")))
    pairs = ((said.allowed, count), (said.cold_allowed, cold), (said.hot_allowed, hot))
    left = [max(0, allowed - used) for allowed, used in pairs if allowed is not None]
    minutes = max(said.minutes_between or 0.0, (said.coast_down_minutes or 0.0) + (said.lock_out_minutes or 0.0))
    minutes = min(minutes, _LONGEST_MINUTES) if minutes > _SHORTEST_MINUTES else 0.0
    earliest = last = None
    if minutes and state.starts:
        last = datetime.fromisoformat(state.starts[-1].at)
        earliest = last + timedelta(minutes=minutes)
    earliest = earliest if earliest is not None and earliest > now else None
    words = [f"{count} start{'' if count == 1 else 's'} counted"]
    end = _time(said.window_end)
    if end is not None:
        room = (end - (earliest or now)).total_seconds() / 60.0
        left += [0] if room <= 0.0 else [1 + int(room / minutes)] if minutes else []
        words.append(f"the window ends at {end:%Y-%m-%d %H:%M} UTC")
    fewest = min(left, default=None)
    if fewest is not None:
        words.insert(1, f"{fewest} left")
    if earliest is not None:
        words.append(f"the next not before {earliest:%H:%M} UTC")
    if minutes and ahead_s > clock.SET_S:
        words.append(f"this computer's clock was set forward by {ahead_s / 60.0:.0f} min; waits are told without it")
    if minutes and ahead_s < -clock.SET_S:
        words.append(f"this computer's clock was set back by {-ahead_s / 60.0:.0f} min; waits are told without it")
    if last is not None and (early := (last - now).total_seconds()) > clock.SET_S:
        words.append(f"the last start is dated {early / 60.0:.0f} min ahead of this computer's clock; look at both")
    return Starts(count, fewest, earliest, "; ".join(words))


def _time(text: str | None) -> datetime | None:
    """An ISO time, in UTC where it does not say; None where it is none."""
    try:
        read = moment(text or "")
    except TableError:
        return None
    return read.replace(tzinfo=UTC) if read.tzinfo is None else read.astimezone(UTC)


# stages


def state_of_stages(state: JobState, facts: Facts) -> dict[StageName, Stage]:
    """How far each stage is, with the reason."""
    case = Case(state, facts, starts(state, facts.now).left)
    early = [_brief(state.brief), _inspect(state), _hook_up(state)]
    try:
        late = [_runs(case), _masses(case), _close_out(case)]
    except units.UnitError as error:
        late = [Stage("needs attention", f"the record has what is no unit or number: {error}")] * 3
    return dict(zip(STAGES, early + late, strict=True))


def _brief(brief: Brief) -> Stage:
    if brief == Brief():
        return Stage("empty", "nothing is said yet")
    highest, asked = brief.rotor.highest_speed_rpm, brief.rotor.speed_rpm
    if highest is not None and asked is not None and asked > highest:
        above = f"running speed {asked:.0f} r/min is above the rotor's highest, {highest:.0f} r/min"
        return Stage("needs attention", above)
    missing = next_steps.missing_in_brief(brief)
    return Stage("under way", f"lacks {', '.join(missing)}") if missing else Stage("done", "what decides is said")


def _inspect(state: JobState) -> Stage:
    if not state.checks:
        return Stage("empty", "no check is recorded")
    doubtful = [c.what.item for c in state.checks.values() if c.what.outcome == "needs attention"]
    if doubtful:
        return Stage("needs attention", f"needs attention: {', '.join(doubtful)}")
    fitting = inspection.checks(inspection.facts_from(state.brief))
    left = [c for c in fitting if c.key not in state.checks]
    if left:
        return Stage("under way", f"{len(left)} of {len(fitting)} checks that fit this machine are open")
    return Stage("done", f"all {len(fitting)} checks that fit this machine are recorded")


def _hook_up(state: JobState) -> Stage:
    if state.hookup is None:
        return Stage("empty", "nothing is wired up yet")
    check = next((m for m in reversed(state.measured) if m.what.what == "signal check"), None)
    if check is None:
        return Stage("under way", "the signals were not checked")
    if not check.what.trusted:
        return Stage("needs attention", "; ".join(check.what.reasons) or "the signal check found something that blocks")
    return Stage("done", "the signals were checked")


def _runs(case: Case) -> Stage:
    state = case.state
    if not state.runs:
        return Stage("empty", "no run is recorded")
    for rule in (next_steps.alarm, next_steps.reference, next_steps.refused_run, next_masses.runs_disagree):
        said = None if state.closed else rule(case)
        if said is not None and not next_steps.passed(state, said[0]):
            return Stage("needs attention", said[1])
    told = f"{len(run_checks.counted(state))} of {len(state.runs)} runs count"
    return Stage("done" if _ended(case) else "under way", told)


def _masses(case: Case) -> Stage:
    state = case.state
    if not state.masses:
        return Stage("empty", "no mass was put on")
    taped = [on for on in state.on_rotor if fixing_of(on.piece) == "temporary"]
    if taped:
        return Stage("needs attention", f"{len(taped)} pieces are held by tape, magnet or adhesive")
    said = None if _ended(case) or progress.run_is_due(state) else next_masses.trial_strength(case)
    if said is not None and not next_steps.passed(state, said[0]):
        return Stage("needs attention", said[1])
    told = f"on the rotor: {run_vectors.mass_text(progress.on_now(state))}"
    return Stage("done" if _ended(case) and not progress.trials_on(state) else "under way", told)


def _ended(case: Case) -> bool:
    return case.state.closed or next_steps.goal_is_met(case) or progress.stopped(case.state)


def _close_out(case: Case) -> Stage:
    if case.state.closed:
        return Stage("done", "the job is closed")
    said = next_steps.closing(case)
    if said is None:
        return Stage("empty", "the goal is not reached, and balancing was not stopped")
    urgent = said[0] in ("points-worse", "unlike-conditions", "take-off-trial")
    return Stage("needs attention" if urgent else "under way", said[1])
