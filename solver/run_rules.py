"""Whether a run may be solved with the others of its job, and how to go on where mark, sensors or rotor changed.

`judge_run` judges the keys of a "run" event against the record as it stood before it, and `recorded` turns the judgement
into what is written. A re-reference run, a swap test and a rotor that was cleaned are read here too, so that a job need not
begin anew.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np
from stillshaft.dsp import vectors
from stillshaft.dsp.units import shown
from stillshaft.solver import inspection, run_checks, run_vectors
from stillshaft.solver.consistency import DOUBTED
from stillshaft.solver.events import Decision, Event, Run
from stillshaft.solver.folder import RecordError
from stillshaft.solver.influence import probability_of_more
from stillshaft.solver.run_checks import Finding, counted, found, like_run, refuses, unknown_turns
from stillshaft.solver.run_vectors import Measured
from stillshaft.solver.state import JobRun, JobState

NEW_INITIAL_STATE = "new initial state"  # text of the decision that says that the rotor was cleaned or mended
_T = 1.959963984540054
_CLEARLY = 2.0  # half widths: a turn less clear than this would be said of every hundredth sound run


@dataclass(frozen=True)
class RunJudgement:
    """Whether a run counts. With `refusals` it counts only where all of them may be allowed and the person said why."""

    counts: bool
    refusals: tuple[Finding, ...]
    cautions: tuple[Finding, ...]


@dataclass(frozen=True)
class Turn:
    """What is to be added to the phases of a new run so that they fit the earlier one, by point, with 95 % half widths.

    `common_deg` is the one turn of all that are turned; None where several points were named, each with its own. `plausible`
    where the amplitudes are those of the earlier run and the points agree; `run` is that run's name.
    """

    turn_deg: dict[str, float]
    ci95: dict[str, float | None]
    common_deg: float | None
    common_ci95_deg: float | None
    run: str
    sentence: str
    plausible: bool


@dataclass(frozen=True)
class SwapTest:
    """Two sensors measured in each other's place: the first one's reading over the second's, in percent and degrees.

    `verdict` is alike, differ, or cannot be told.
    """

    first: str
    second: str
    percent: float
    percent_ci95: float
    turned_deg: float
    turned_ci95_deg: float
    verdict: str
    sentence: str


@dataclass(frozen=True)
class Counting:
    """Which runs count for what: those of the initial state as it is now, and earlier ones that still tell H."""

    now: tuple[JobRun, ...]
    influence_only: tuple[JobRun, ...]


def judge_run(state: JobState, fields: dict[str, Any]) -> RunJudgement:
    """Judge the keys of a run event that is to be recorded next; `used_anyway` among them allows what may be allowed.

    Raises RecordError for keys that no run event has.
    """
    run = run_vectors.run_from(fields)
    findings = run_checks.findings(state, run)
    refusals = tuple(f for f in findings if refuses(f) != "never")
    if not refusals:
        findings += tuple(_moved(state, run))
    allowed = bool((run.used_anyway or "").strip()) and all(can_be_allowed(f) for f in refusals)
    return RunJudgement(not refusals or allowed, refusals, tuple(f for f in findings if refuses(f) == "never"))


def can_be_allowed(finding: Finding) -> bool:
    """Whether the person may use a run anyway in spite of this, with a reason."""
    return refuses(finding) != "always"


def recorded(fields: dict[str, Any], judgement: RunJudgement) -> dict[str, Any]:
    """The keys as they are to be recorded: not trusted where something refuses the run, every sentence among the reasons."""
    said = [f.sentence for f in (*judgement.refusals, *judgement.cautions)]
    kept = {key: value for key, value in fields.items() if key != "used_anyway" or judgement.counts}
    reasons = list(dict.fromkeys([*fields.get("reasons", []), *said]))
    return kept | {"trusted": not judgement.refusals, "reasons": reasons}


# mark and sensors


def _moved(state: JobState, run: Run) -> Iterator[Finding]:
    """A mark that moved or one sensor that was remounted, as two points or more show it against a run with the same masses."""
    before = like_run(state, run)
    if before is None or any(change.id > before.id for change in state.references):
        return
    try:
        turn = _turn(state, run, before, (), before.turn_deg)
    except RecordError:  # no point in common
        return
    if len(turn.turn_deg) < 2:  # it may as well be the rotor
        return
    if turn.plausible and turn.common_deg is not None and turn.common_ci95_deg is not None:
        if abs(turn.common_deg) > _CLEARLY * turn.common_ci95_deg:
            yield found("turned", turn.sentence)
        return
    beyond = [p for p, t in turn.turn_deg.items() if abs(t) > _CLEARLY * (turn.ci95[p] or 180.0)]
    if len(beyond) == 1:
        alone = _turn(state, run, before, (beyond[0],), before.turn_deg)
        if alone.plausible:
            yield found("turned-point", alone.sentence)


def turn_from_reference_run(state: JobState, fields: dict[str, Any]) -> Turn:
    """The turn that a run in a mass state already measured shows, against the newest such run before the change.

    Where the change names points, those alone are turned and the others must not be. Raises RecordError where no earlier
    run had the same masses at about the same speed.
    """
    run = run_vectors.run_from(fields)
    changes = unknown_turns(state)
    masses = run_vectors.masses_of(run.masses, state.brief)
    last = changes[-1] if changes else None
    earlier = [
        r
        for r in counted(state)
        if (last is None or r.id < last.id)
        and abs(run.speed_rpm / r.what.speed_rpm - 1.0) <= inspection.SPEED_CAUTION / 100.0
    ]
    alike = [r for r in earlier if run_vectors.same_masses(masses, run_vectors.masses_on(r, state.brief))]
    if not alike:
        states = "; ".join(dict.fromkeys(run_vectors.mass_text(run_vectors.masses_on(r, state.brief)) for r in earlier))
        raise RecordError(
            f"re-reference run with {run_vectors.mass_text(masses)}: no earlier run at this speed had the same masses; "
            f"measured were: {states or 'none'}"
        )
    return _turn(state, run, alike[-1], tuple(last.what.points) if last is not None else ())


def _turn(
    state: JobState, run: Run, before: JobRun, only: tuple[str, ...], known_deg: dict[str, float] | None = None
) -> Turn:
    """The turn from one run to another, of all points together or of some alone, beyond what is known by point."""
    repeats = run_vectors.repeatability(state)
    now, was = run_vectors.measured(run, run.unit, known_deg), run_vectors.of_job(before, run.unit)
    names = [p for p in was if p in now and was[p].z and now[p].z]
    if not names or (only and not set(only) & set(names)):
        raise RecordError(
            f're-reference run: has no point in common with "{shown(before.what.name)}" that tells; measure the same points'
        )
    turned, deviation, grown = {}, {}, {}
    for p in names:
        ratio = was[p].z / now[p].z
        along, across = _deviations(now[p], was[p], repeats)
        turned[p] = math.degrees(math.atan2(ratio.imag, ratio.real))
        deviation[p] = math.degrees(across)
        grown[p] = (abs(ratio) - 1.0) / along
    half: dict[str, float | None] = {p: _T * d if _T * d < 90.0 else None for p, d in deviation.items()}
    amplitudes = probability_of_more(sum(g**2 for g in grown.values()), len(names)) >= DOUBTED
    still = [p for p in names if only and p not in only]
    together = [p for p in names if p not in still]
    common, sd = _mean(turned, deviation, together)
    apart = sum(((turned[p] - common + 180.0) % 360.0 - 180.0) ** 2 / deviation[p] ** 2 for p in together if not only)
    unmoved = sum(turned[p] ** 2 / deviation[p] ** 2 for p in still)
    freedom = (0 if only else len(together) - 1) + len(still)
    agree = freedom == 0 or probability_of_more(apart + unmoved, freedom) >= DOUBTED
    whole, one = not only, not only or len(together) == 1
    of = "all points" if whole and len(names) > 1 else " and ".join(together)
    told = (
        f"{common:+.1f} ± {_T * sd:.1f}°"
        if whole or len(together) == 1
        else ", ".join(f"{turned[p]:+.1f}°" for p in together)
    )
    said = f'{of}: turned by {told} against "{before.what.name}" with the same masses on'
    if not amplitudes:
        worst = max(names, key=lambda p: abs(grown[p]))
        said += f"; but {worst} changed its amplitude beyond the scatter, so that the rotor is not as it was then"
    elif not agree:
        listed = ", ".join(f"{p} {round(turned[p], 1) + 0.0:+.1f}°" for p in names)
        said += f"; but the points do not agree ({listed}): a sensor moved too, or the rotor is not as it was then"
    elif len(names) == 1:
        said += "; one point alone has nothing to check it by"
    counting = {p: (common if whole else turned[p]) if p in together else 0.0 for p in names}
    plausible = amplitudes and agree
    return Turn(
        counting if plausible else turned, {p: _T * sd for p in names} if plausible and whole else half,
        common if one else None, _T * sd if one else None, before.what.name, said, plausible,
    )  # fmt: skip


def _deviations(now: Measured, was: Measured, repeats: tuple[float, float]) -> tuple[float, float]:
    """Of the ratio of two vectors: relative, and in rad, the repeatability of both runs included."""
    one, other = (vectors.deviations(m.z, run_vectors.between_runs(m, repeats)) for m in (now, was))
    along, across = (math.hypot(one[i] / abs(now.z), other[i] / abs(was.z)) for i in (0, 1))
    return along, across


def _mean(turned: dict[str, float], deviation: dict[str, float], names: list[str]) -> tuple[float, float]:
    """Weighted mean of angles about the best known one, and its deviation, degrees."""
    about = turned[min(names, key=lambda p: deviation[p])]
    weights = np.array([1.0 / deviation[p] ** 2 for p in names])
    off = np.array([(turned[p] - about + 180.0) % 360.0 - 180.0 for p in names])
    mean = about + float(weights @ off / weights.sum())
    return (mean + 180.0) % 360.0 - 180.0, float(weights.sum() ** -0.5)


def swap_test(state: JobState, fields: dict[str, Any], first: str, second: str) -> SwapTest:
    """What two sensors read in each other's place, masses and speed as in an earlier run and the hook-up not changed.

    Each place was then heard by both: what one sensor reads over the other is the mean of the ratios at the two places, and
    whether the two ratios agree says whether the machine stayed as it was. Raises RecordError where there is no such run.
    """
    run = run_vectors.run_from(fields)
    before = like_run(state, run)
    now = run_vectors.measured(run, run.unit)
    was = {} if before is None else run_vectors.of_job(before, run.unit)
    if missing := [p for p in (first, second) if p not in now or p not in was or not now[p].z or not was[p].z]:
        raise RecordError(
            f"swap test: {' and '.join(missing)} was not measured with the same masses before; exchange the two sensors "
            "right after a run, with nothing else changed"
        )
    repeats = run_vectors.repeatability(state)
    # at the first one's old place, then at the second one's
    ratios = [was[first].z / now[second].z, now[first].z / was[second].z]
    spread = [_deviations(was[first], now[second], repeats), _deviations(now[first], was[second], repeats)]
    mean = complex(np.sqrt(ratios[0] / ratios[1]) * ratios[1])  # of size and of angle
    if abs(mean - ratios[0]) > abs(mean + ratios[0]):
        mean = -mean
    along, across = (_T * 0.5 * math.hypot(spread[0][i], spread[1][i]) for i in (0, 1))
    percent, turned_deg = 100.0 * (abs(mean) - 1.0), math.degrees(float(np.angle(mean)))
    off = ratios[0] / ratios[1]
    squared = (math.log(abs(off)) / math.hypot(spread[0][0], spread[1][0])) ** 2
    squared += (float(np.angle(off)) / math.hypot(spread[0][1], spread[1][1])) ** 2
    told = (
        f"{first} reads {percent:+.1f} ± {100.0 * along:.1f} % and {turned_deg:+.1f} ± {math.degrees(across):.1f}° "
        f"against {second}"
    )
    plain = [now[p].z / was[p].z - 1.0 for p in (first, second)]
    unmoved = all(
        abs(off) <= _T * math.hypot(*_deviations(now[p], was[p], repeats))
        for off, p in zip(plain, (first, second), strict=True)
    )
    if unmoved and (abs(percent) > 100.0 * along or abs(turned_deg) > math.degrees(across)):
        verdict = "cannot be told"
        said = f"{first} and {second} read what they read before: the sensors were not exchanged"
    elif probability_of_more(squared, 2) < DOUBTED:
        verdict = "cannot be told"
        said = f"{told}, but not alike at the two places: the machine changed"
    elif abs(percent) <= 100.0 * along and abs(turned_deg) <= math.degrees(across):
        verdict, said = "alike", f"{told}: within the scatter; what the points showed is the machine's"
    else:
        verdict = "differ"
        said = f"{told}: one of the two sensors, cables or inputs is wrong, or a sensitivity, delay or direction in the hook-up"
    return SwapTest(first, second, percent, 100.0 * along, turned_deg, math.degrees(across), verdict, said)


# a rotor that was cleaned


def new_initial_state_fields(since: int, why: str) -> dict[str, Any]:
    """The keys of the "decision" event that says that the rotor was cleaned or mended after the run with the id `since`."""
    return {"text": NEW_INITIAL_STATE, "why": why, "about": since}


def new_initial_states(state: JobState) -> tuple[Event[Decision], ...]:
    """The decisions that the rotor has a new initial state, none where it has the first one."""
    return tuple(d for d in state.decisions if d.what.text == NEW_INITIAL_STATE and d.what.about is not None)


def new_initial_state(state: JobState) -> Event[Decision] | None:
    """The last decision that the rotor has a new initial state, None where it has the first one."""
    return next(reversed(new_initial_states(state)), None)


def counting_runs(state: JobState) -> Counting:
    """Which runs count for what since the rotor was cleaned: earlier ones still tell H, no longer v0."""
    said = new_initial_state(state)
    since = 0 if said is None or said.what.about is None else said.what.about
    runs = counted(state)
    return Counting(tuple(r for r in runs if r.id > since), tuple(r for r in runs if r.id <= since))
