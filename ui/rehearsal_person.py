"""The person of a rehearsal: does what the guidance advises, one act after the other, until the job is closed.

Hands place masses with the usual errors; what is written into the record is what was meant, as on the site.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

from stillshaft.acquire import simulated
from stillshaft.dsp import vectors
from stillshaft.dsp.measure import Measurement
from stillshaft.solver.run_checks import limits
from stillshaft.ui import rehearsal_machines, runs_files, taking
from stillshaft.ui.session import RunTaken, Session, Wanted

if TYPE_CHECKING:
    from stillshaft.solver.correction import Solution
    from stillshaft.solver.guidance import Advice
    from stillshaft.ui.rehearsal_machines import Machine

NAME = "rehearsal"
GOAL_PERCENT = 10.0  # of the initial vibration, that a point is to be left with at the most
_MOST_STEPS, _MOST_TRIMS = 40, 1
_SIGNALS_S, _SWEEP_S = 8.0, 40.0
_LONGEST_S = 90.0  # that a person would rather record than look for a neighbour
_SHORT = "a rehearsal with runs shorter than those on the site"
_LEFT_ALONE = "a simulated rotor has nothing to look at or to touch"
# why checks that are measured have no outcome before anything is
_NOT_YET = {
    "pulse": "the signal check comes next and measures it",
    "spectrum": "the spectrum of the first run that counts measures it",
    "steady": "the verdict on 1x of each run measures it",
    "repeatable": "the initial run is repeated, and the two are held against each other",
    "directions": "there is one sensor at each bearing: no second direction to hold against it",
    "overhung": "there is no sensor along the shaft",
    "load": "the machine runs at one load; every run tells whether its speed was steady",
    "heat": "the simulated machine does not warm up",
    "resonance": "a run-up is recorded only where a phase follows the speed",
    "background": "a rehearsal records nothing while the machine stands",
    "electrical": "the brief names no line frequency to look for",
}
_MOST = 50.0  # percent of the mean square
_FIXING = "welded"
_SAME = 0.1  # of the largest mass: a part that differs less is on already

Forward = Callable[[float, str], None]


class Person:
    """Somebody who balances the simulated machine by the guidance; `solutions` and `advised` are what came of it."""

    def __init__(
        self, session: Session, machine: Machine, *, seed: int, real_time: bool, seconds: float, forward: Forward
    ) -> None:
        self.session, self.machine = session, machine
        self.measured: dict[int, Measurement] = {}
        self.solutions: list[tuple[str, Solution]] = []
        self.advised: list[tuple[str, str]] = []
        self.trims = 0
        self.stopped: str | None = None
        self._hands = simulated.Placing(seed)
        self._seed, self._real_time, self._seconds, self._forward = seed, real_time, seconds, forward
        self._recorded = 0
        self._neighbour = machine.conditions.neighbour is not None
        self._loose = bool(machine.conditions.locked)
        self._all_planes = False  # decided, where a part of the correction was not enough
        self._looked = False  # at the spectrum of the machine as it is

    def work(self) -> None:
        """Do the job. Ends by itself: after a number of steps the balancing is stopped as it is."""
        session = self.session
        session.describe(self.machine.brief())
        for _ in range(_MOST_STEPS):
            if session.state.closed:
                return
            advice = session.advice()
            self.advised.append((advice.act, advice.sentence))
            self._do(advice)
        self._take_trials_off()
        self._stop(f"{_MOST_STEPS} steps did not bring the job to its end")
        session.judge()
        session.finish(self.stopped or "", refused_by=NAME)

    def _do(self, advice: Advice) -> None:
        act = advice.act
        if act in ("stop-met", "record-verdict"):
            if not self._trim_for_the_goal():
                self.session.judge()
        elif act in ("inspect", "mend"):
            self._inspect()
        elif act == "check-signals":
            self._check_signals()
        elif act in ("initial-run", "repeat-initial", "repeat-differs", "trial-run", "correction-run", "final-run"):
            self._run({"initial-run": "initial", "trial-run": "trial"}.get(act))
        elif act in ("record-longer", "stop-neighbour", "wait-to-settle", "hold-speed", "check-run", "repeat-trial"):
            self._once_more(advice)
        elif act in ("one-plane-first", "photograph", "points-worse", "unlike-conditions", "plan-fewest"):
            self._pass_over(_LEFT_ALONE)
        elif act == "put-on-trial":
            self._trial()
        elif act in ("larger-trial", "smaller-trial"):
            self._other_trial(act)
        elif act in ("put-on-correction", "trim"):
            self._correct()
        elif act == "put-on-part":
            self._put_on_part()
        elif act in ("accept", "close"):
            self._close()
        elif act in ("stop-other-orders", "stop-not-unbalance") and self._loose:
            self._tighten(advice)
        elif act == "take-off-trial":
            self._take_trials_off()
        else:  # what stands in the way is for the person, not for a mass
            self._end_or_couple(advice)

    # runs

    def _order(self, conditions: Any = None) -> simulated.SimulatedRun:
        """The machine with what is really on it."""
        machine = self.machine
        placed = [
            self._hands.really(on.piece.plane, on.piece.mass_g, on.piece.angle_deg)
            for on in self.session.state.on_rotor
        ]
        now = conditions or machine.conditions
        if not self._neighbour:
            now = dataclasses.replace(now, neighbour=None)
        if not self._loose:
            now = dataclasses.replace(now, locked=())
        unbalance = simulated.with_masses(machine.rotor, machine.unbalance, placed)
        seed = 1000 * self._seed + self._recorded
        self._recorded += 1
        return simulated.SimulatedRun(machine.rotor, machine.sensors, unbalance, now, seed, None, self._real_time)

    def _record(self, what: str, seconds: float, conditions: Any = None) -> Any:
        def report(share: float, text: str) -> None:
            self._forward(share, f"{what}: {text}")

        return self.session.record_source(self._order(conditions), taking.Stop(seconds), report=report)

    def _start(self) -> None:
        needed = [c.text for c in self.session.cautions_before_start() if c.acknowledge]
        self.session.acknowledge(needed, NAME)
        self.session.count_start()

    def _run(self, purpose: str | None = None, seconds: float | None = None) -> RunTaken:
        """Start the machine and take a run; the spectrum of the first one that counts is looked at."""
        self._start()
        long_s = seconds or self._seconds
        path = self._record(purpose or self.session.purpose_now(), long_s)
        taken = self.session.add_run(path, Wanted(purpose))
        self.measured[taken.run.id] = taken.measured
        if self._seconds < limits().seconds and {f.rule for f in taken.judgement.refusals} == {"too-short"}:
            self.session.use(taken.run.id, _SHORT)
        if self.session.run_named(str(taken.run.id)).counts and not self._looked:
            self._looked = True
            self._look_at_spectrum(path)
        return taken

    def _sweep(self) -> None:
        """A run-up through running speed and beyond, to see resonances."""
        speed = simulated.DEMO_SPEED_RPM
        ramp = dataclasses.replace(
            self.machine.conditions, speed_rpm=1.35 * speed, ramp=(0.4 * speed, _SWEEP_S - 2.0), neighbour=None
        )
        self.session.check("sweep", self._record("run-up", _SWEEP_S, ramp))

    def _check_signals(self) -> None:
        from stillshaft.dsp import check

        self._start()
        event, found = self.session.check("signals", self._record("signal check", _SIGNALS_S))
        if all(f["weight"] == check.FINE for f in found.figures["findings"]):
            self.session.inspect("pulse", "fine", "as the signal check saw it", evidence=event.id)

    def _look_at_spectrum(self, path: Path) -> None:
        """What the spectrum shows is fine or not; what is not stays to be seen in the diagnosis."""
        event, found = self.session.check("spectrum", path)
        least = min(point["shares_percent"]["1x"] for point in found.figures["points"])
        if least > _MOST:
            told = f"1x holds {least:.0f} % or more of the mean square at each point"
            self.session.inspect("spectrum", "fine", told, evidence=event.id)
        if found.figures["evidence"].get("steadiness", {}).get("word") == "steady":
            self.session.inspect("steady", "fine", "1x was steady in the first run that counts", evidence=event.id)

    def _once_more(self, advice: Advice) -> None:
        """What the guidance says of a run that does not serve: longer, without the neighbour, or simply again."""
        from stillshaft.solver import run_vectors

        last = self.session.state.runs[-1]
        seconds = self._seconds
        if advice.act in ("record-longer", "stop-neighbour"):
            told = [v.steadiness or {} for v in last.what.vectors]
            wanted = [s.get("record_s") for s in told]
            seconds = max([self._seconds, *(float(w) + 1.0 for w in wanted if isinstance(w, int | float))])
            if seconds > _LONGEST_S and any(s.get("cause") == "scatter" for s in told):
                self.session.use(last.id, "what is left of 1x is as small as its scatter, and its interval says so")
                return
            if self._neighbour and (advice.act == "stop-neighbour" or seconds > _LONGEST_S):
                self.session.decide("the neighbour is stopped for all runs", advice.sentence)
                self._neighbour, seconds = False, self._seconds
            seconds = min(seconds, _LONGEST_S)
        elif not last.counts and not any(m.what.what == "sweep" for m in self.session.state.measured):
            self._sweep()  # a phase that will not stand still near a resonance follows every change of speed
            if run_vectors.near_resonance(self.session.state) is not None:
                self.session.use(last.id, "the sweep shows why: a resonance is near, and the phase follows the speed")
                return
        if not last.counts:
            self._run(last.what.purpose, seconds)
        elif advice.act == "repeat-trial":
            self._run("trial")
        else:
            self._pass_over("nothing was found that had changed")

    def _tighten(self, advice: Advice) -> None:
        """What the guidance says is no unbalance is looked for, found and mended; the runs before it are left out."""
        session = self.session
        session.inspect("looseness", "needs attention", advice.sentence)
        session.inspect("looseness", "fine", "a foot was loose; tightened to its torque")
        for run in session.state.runs:
            session.use(run.id, "the foot was loose then", counts=False)
        self._loose = self._looked = False

    # masses

    def _trial_g(self, plane: str) -> float:
        """A trial mass to half a gram."""
        return max(0.5, round(2000.0 * self.session.suggest_trial(plane).mass_kg) / 2.0)

    def _trial(self) -> None:
        from stillshaft.solver import progress

        tried = progress.tried(self.session.state)
        plane = next(p.name for p in self.session.brief.planes if p.name not in tried)
        self._take_trials_off()
        mass_g = self._trial_g(plane)
        if self.machine.fault == "weak-trial":
            mass_g = max(0.1, round(rehearsal_machines.WEAK * mass_g, 1))
        angle_deg = self.session.suggest_trial(plane).angle_deg
        self._put([runs_files.Placed(plane, mass_g, round(angle_deg or 0.0))], "trial")

    def _other_trial(self, act: str) -> None:
        """The trial that was too weak, as many times larger as is said; or one of half the size."""
        solution = self.session.worked().solution
        assert solution is not None
        weakest = min(solution.trials, key=lambda t: t.strength)
        times = max(1.5, weakest.times or 2.0) if act == "larger-trial" else 0.5
        self._take_trials_off()
        self._put([runs_files.Placed(weakest.plane, round(times * weakest.mass, 1), 0.0)], "trial")

    def _correct(self) -> None:
        """What the solver says, as a scale and a protractor can do it; pieces that stay keep their places."""
        from stillshaft.solver import progress

        state = self.session.state
        corrected = bool(progress.corrected(state))
        if corrected and self.trims >= _MOST_TRIMS:
            self._end_or_couple(None)
            return
        trial = bool(progress.trials_on(state))
        self._take_trials_off()
        _, solution = self.session.solve()
        step = "correction" if not corrected else "couple" if trial else "trim"
        self.solutions.append((step, solution))
        self.trims += corrected
        stays = progress.on_now(self.session.state)
        wanted = solution.corrections if trial or not stays else solution.additional
        placed = [
            (c.plane, vectors.vector(c.mass, c.angle_deg) - (stays.get(c.plane, 0j) if trial else 0j)) for c in wanted
        ]
        self._put(_to_place(placed), "trim" if corrected else "correction")

    def _put_on_part(self) -> None:
        """The part of the correction that is worth it, unless it is on already and did not suffice."""
        from stillshaft.solver import progress

        if self._all_planes:
            self._correct()
            return
        solution = self.session.worked().solution
        assert solution is not None
        assert solution.proposed is not None
        planes = [c.plane for c in solution.corrections]
        part = dict(zip(planes, map(complex, solution.proposed.alternative.masses), strict=True))
        trials = {(on.of, on.number) for on in progress.trials_on(self.session.state)}
        stays = dict.fromkeys(planes, 0j)
        for on in self.session.state.on_rotor:
            if (on.of, on.number) not in trials:
                stays[on.piece.plane] += vectors.vector(on.piece.mass_g, on.piece.angle_deg)
        left = {plane: part[plane] - stays[plane] for plane in planes}
        if max(map(abs, left.values())) < _SAME * max(map(abs, part.values())):
            self.session.decide(
                "all planes", "the part that is preferred is on already and does not reach what was agreed"
            )
            self._all_planes = True
            self._correct()
            return
        self._take_trials_off()
        self.session.solve()
        self.solutions.append(("part of the correction", solution))
        self._put(_to_place(list(left.items())), "correction")

    def _trim_for_the_goal(self) -> bool:
        """The exercise asks for a tenth of the initial vibration at every point, also where the grade is met before."""
        left = self.residual_percent()
        solution = self.session.worked().solution
        if self.stopped or self.trims >= _MOST_TRIMS or solution is None or not left:
            return False
        agreed = bool(self.session.brief.limits)  # then what was agreed is enough
        if agreed or max(value for value, _ in left.values()) < GOAL_PERCENT:
            return False
        self._correct()
        self._run()
        return True

    def _put(self, placed: list[runs_files.Placed], purpose: str) -> None:
        pieces = [
            {"plane": m.plane, "mass_g": m.mass_g, "angle_deg": m.angle_deg, "fixing": _FIXING}
            for m in placed
            if m.mass_g
        ]
        if purpose == "trial":
            pieces = [p | {"fixing": "bolted"} for p in pieces]
        self.session.put_on(pieces, purpose)

    def _take_trials_off(self) -> None:
        from stillshaft.solver import progress

        on = progress.trials_on(self.session.state)
        if on:
            self.session.take_off(on, "weighed back in")

    # the end

    def _inspect(self) -> None:
        for each in self.session.checks():
            if each.key not in self.session.state.checks:
                self.session.inspect(each.key, "not done", _NOT_YET.get(each.key, _LEFT_ALONE))

    def _pass_over(self, why: str) -> None:
        self.session.skip_advice(why)

    def _end_or_couple(self, advice: Advice | None) -> None:
        """Stop as it is; or, where one plane of an overhung disc did what it can, add the other for the couple."""
        said = "one trim is what this exercise allows" if advice is None else advice.sentence
        planes = [p.name for p in self.session.brief.planes]
        more = [p.name for p in self.machine.rotor.planes if p.name not in planes]
        if more and self.trims:
            self.session.decide(f'add the plane "{more[0]}" for the couple', said)
            self.session.describe({"planes": [self.machine.plane(name) for name in (*planes, more[0])]})
            self.trims = -1  # the couple's own correction is none
            return
        self._stop(said)

    def _stop(self, why: str) -> None:
        self.stopped = why
        self.session.stop_balancing(why)

    def _close(self) -> None:
        met = self.session.state.verdicts and self.session.state.verdicts[-1].what.verdict == "met"
        by = {"accepted_by": NAME} if met else {"refused_by": NAME}
        self.session.finish(self.stopped or "", **by)

    def residual_percent(self) -> dict[str, tuple[float, float | None]]:
        """Once-per-rev vibration of the last run that counts in percent of the first, with its half width."""
        counting = [r.id for r in self.session.state.runs if r.counts]
        if not counting:
            return {}
        return runs_files.residual_percent(self.measured[counting[0]], self.measured[counting[-1]])


def _to_place(wanted: list[tuple[str, complex]]) -> list[runs_files.Placed]:
    """Masses as a scale and a protractor can do them: to 0.1 g and 1°."""
    polar = [(plane, *vectors.amplitude_phase(w)) for plane, w in wanted]
    return [runs_files.Placed(plane, round(mass, 1), float(round(angle) % 360)) for plane, mass, angle in polar]
