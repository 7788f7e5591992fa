"""The job without a window: one act of the person is one method, which writes the record and tells the listeners.

`Session.create` begins a job, `Session.open` goes on with one. What an act raises is a ValueError of the layer that found
the fault, in one line; the job is then as it was, and a recording that was taken is kept and named. Listeners in `changed`
are called when an event is on the disk. Live measuring for a window is `ui.live`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Any

import msgspec
from stillshaft.acquire import hookup as wiring
from stillshaft.dsp.units import shown
from stillshaft.solver.events import Event
from stillshaft.solver.folder import sha256_of
from stillshaft.solver.state import JobRun, OnRotor
from stillshaft.ui import analysis, job_facts, job_masses
from stillshaft.ui.session_base import RecordedJob, SessionError

if TYPE_CHECKING:
    from stillshaft.acquire.source import SourceRequest
    from stillshaft.dsp.measure import Measurement
    from stillshaft.solver.cautions import Caution
    from stillshaft.solver.correction import Solution
    from stillshaft.solver.events import Options
    from stillshaft.solver.inspection import Repeat
    from stillshaft.solver.limits import Tolerance
    from stillshaft.solver.pieces import Plan
    from stillshaft.solver.run_rules import RunJudgement, Turn
    from stillshaft.solver.trial import Trial
    from stillshaft.ui.analysis import Report
    from stillshaft.ui.taking import Progress, Stop

PURPOSES = ("initial", "repeat", "trial", "correction", "trim", "check", "slow roll", "re-reference", "other")
MARK_MOVED = "mark moved"
EARLIER = "seen in a recording that was made elsewhere"


@dataclass(frozen=True)
class Wanted:
    """What a run is to be: purpose and name (None: as the job stands), conditions, and why it counts nevertheless."""

    purpose: str | None = None
    name: str | None = None
    conditions: Mapping[str, float | str] = field(default_factory=dict)
    minutes_since_start: float | None = None
    note: str = ""
    use_anyway: str | None = None


@dataclass(frozen=True)
class RunTaken:
    """A run that was recorded: its entry, what was measured, the judgement, the change against the run before, a turn."""

    run: JobRun
    measured: Measurement
    judgement: RunJudgement
    against: str | None
    changes: tuple[Repeat, ...]
    turn: Turn | None


class Session(RecordedJob):
    """An opened job and all that a person does with it. Used by one thread."""

    # runs

    def record_source(
        self,
        request: SourceRequest,
        stop: Stop,
        on_progress: Callable[[Progress], None] | None = None,
        report: Report | None = None,
        settle_s: float | None = None,
    ) -> Path:
        """Record from a source into the job's folder and return the recording; no entry names it yet.

        `on_progress` sees the vectors on the way, and an alarm is recorded where a point crosses its abort level; without it
        only time ends the run, and `report` hears how far it is. With both `on_progress` and `settle_s` 1x is watched first
        until it has settled, for so long at the most, and what was seen is recorded as evidence.
        Raises SessionError where the source is lost on the way: what was recorded is kept and named.
        """
        from stillshaft.acquire import process
        from stillshaft.ui import job_checks, taking

        wired = self.hookup
        if wired is None:
            raise SessionError("the job has no hook-up yet: set one before a run")
        self.refuse_closed()
        path = self.job.next_recording()
        try:
            if on_progress is not None:
                taken = taking.take(request, path, wired, stop, self._watched(on_progress), settle_s)
                summary = taken.summary
                if taken.settled is not None:
                    self.record_check(job_checks.settled(taken.settled))
            else:
                names = wired.channel_names(wired.channels)
                summary = process.capture(request, path, stop.seconds, wired.table, names, report)
        except ValueError as error:
            if path.exists():
                raise SessionError(f"{error}; what was recorded is kept as {path}") from error
            raise
        if not summary.complete:
            reason = summary.reason or "the recording ended early"
            raise SessionError(f"{path}: {reason}; what was recorded is kept there, and no run was made of it")
        return path

    def _watched(self, on_progress: Callable[[Progress], None]) -> Callable[[Progress], None]:
        """The same, with an alarm recorded the first time that a point crosses its abort level."""
        from stillshaft.solver.replay import run_fields

        def show(progress: Progress) -> None:
            if progress.measured is not None:
                self._raise_alarms(run_fields(progress.measured))
            on_progress(progress)

        return show

    def _raise_alarms(self, fields: dict[str, Any], note: str = "") -> None:
        """Record an alarm for each point that crossed its abort level and has none since the last run."""
        from stillshaft.solver import run_checks, run_vectors

        if not self.brief.abort:
            return
        last = max((r.id for r in self.state.runs), default=0)
        run = run_vectors.run_from(fields)
        for point, (amplitude, level) in run_checks.crossed_levels(self.state, run):
            if not any(a.id > last and a.what.point == point for a in self.state.alarms):
                self.record_alarm(point, amplitude, level, run.unit, note)

    def record_alarm(self, point: str, amplitude: float, level: float, unit: str, note: str = "") -> Event[Any]:
        """Record that a point crossed its abort level while the machine ran, both in `unit`."""
        return self.job.append("alarm", point=point, amplitude=amplitude, level=level, unit=unit, note=note)

    def add_run(self, recording: Path, wanted: Wanted | None = None, report: Report | None = None) -> RunTaken:
        """Make a run of a recording, which is copied into the job with its event log unless it is there.

        What is on the rotor is taken from the record. A run that the rules refuse is recorded and does not count.
        Raises SessionError, and the errors of the measurement: the recording is then kept and named.
        """
        from stillshaft.solver import inspection, run_rules
        from stillshaft.solver.replay import run_fields
        from stillshaft.ui import job_checks, settling

        wanted = wanted or Wanted()
        self.refuse_closed()
        self.refuse_wanted(wanted)
        purpose = wanted.purpose or self.purpose_now()
        name = wanted.name or self._free_name(purpose)
        self._refuse_known(recording)
        path = self.brought_in(recording)
        wired = self.wired_for(path)
        try:
            measured = analysis.measure_recording(path, wired, 1.0, report)
        except ValueError as error:
            if not type(error).__module__.startswith("stillshaft."):
                raise
            raise SessionError(f"{error}; the recording is kept, and no run was made of it") from error
        fields = run_fields(measured) | {
            "purpose": purpose,
            "name": name,
            "masses": [_plain(on.piece) for on in self.state.on_rotor],
            "conditions": dict(wanted.conditions),
            "minutes_since_start": wanted.minutes_since_start,
            "recording": self.job.file_fields(f"recordings/{path.name}"),
            "note": wanted.note,
            **({} if wanted.use_anyway is None else {"used_anyway": wanted.use_anyway}),
        }
        watched = settling.of_measurement(measured)
        if watched.seconds >= inspection.SETTLED_S:  # long enough to tell
            self.record_check(job_checks.settled(watched), path)
        judgement = run_rules.judge_run(self.state, fields)
        fields = run_rules.recorded(fields, judgement)
        if not judgement.refusals:
            fields.pop("used_anyway", None)  # nothing had to be allowed
        # the whole of it may show what no figure on the way did, and one made before was never watched
        self._raise_alarms(fields, "" if path.samefile(recording) else EARLIER)
        before = self._run_before()
        if self.state.hookup is None or (self.hookup is not None and self.hookup.pulse.edge == "auto"):
            self.job.append("hookup", table=wiring.with_edge(wired, measured.edge).table)
        turn = run_rules.turn_from_reference_run(self.state, fields) if purpose == "re-reference" else None
        event = self.job.append("run", **fields)
        if turn is not None:
            self._resolve(turn)
        run = next(r for r in self.state.runs if r.id == event.id)
        against, changes = self._changes(before, run)
        return RunTaken(run, measured, judgement, against, changes, turn)

    def refuse_wanted(self, wanted: Wanted) -> None:
        """Raise SessionError for a purpose that there is not, or a name that is taken: best before the machine starts."""
        if wanted.purpose is not None and wanted.purpose not in PURPOSES:
            raise SessionError(f'run: "{shown(wanted.purpose)}" is no purpose; there is {", ".join(PURPOSES)}')
        if wanted.name and self.state.run(wanted.name) is not None:
            raise SessionError(f'run "{shown(wanted.name)}": is there already; give it another name')

    def _refuse_known(self, recording: Path) -> None:
        """Raise SessionError where a run was made of the recording already."""
        if not recording.is_file():
            raise SessionError(f"{shown(recording, 400)}: there is no such recording")
        digest = sha256_of(recording)
        for run in self.state.runs:
            if run.what.recording is not None and run.what.recording.sha256 == digest:
                raise SessionError(f'{recording}: is the recording of run "{shown(run.what.name)}" already')

    def purpose_now(self) -> str:
        """What a run would be as the job stands: by what is on the rotor, and what was measured before."""
        from stillshaft.solver import progress

        purposes = [self.purposes().get(on.of) for on in self.state.on_rotor]
        if "trial" in purposes:
            return "trial"
        if purposes:
            last = purposes[-1] or ""
            return last if last in ("correction", "trim") and progress.run_is_due(self.state) else "check"
        bare = [r for r in self.state.runs if r.counts and not r.what.masses]
        return "repeat" if bare else "initial"

    def _free_name(self, purpose: str) -> str:
        planes = [on.piece.plane for on in self.state.on_rotor if self.purposes().get(on.of) == "trial"]
        wanted = f"trial {' '.join(dict.fromkeys(planes))}" if purpose == "trial" and planes else purpose
        name, number = wanted, 2
        while self.state.run(name) is not None:
            name, number = f"{wanted} {number}", number + 1
        return name

    def _run_before(self) -> JobRun | None:
        """The run to hold a new one against: without its trial masses, or before any mass; else the last one."""
        from stillshaft.solver import progress, run_vectors

        counting = [r for r in self.state.runs if r.counts]
        trial = {on.of for on in progress.trials_on(self.state)}
        kept = [on.piece for on in self.state.on_rotor if on.of not in trial]
        if not progress.run_is_due(self.state):  # as it was measured before: does it repeat?
            kept = [on.piece for on in self.state.on_rotor]
        elif not trial:
            kept = []
        wanted = run_vectors.masses_of(kept, self.brief)
        alike = [r for r in counting if run_vectors.same_masses(run_vectors.masses_on(r, self.brief), wanted)]
        return next(reversed(alike or counting), None)

    def _changes(self, before: JobRun | None, run: JobRun) -> tuple[str | None, tuple[Repeat, ...]]:
        from stillshaft.solver import run_vectors
        from stillshaft.ui import job_checks

        if before is None:
            return None, ()
        try:
            found = job_checks.compared(before.what, run.what, run_vectors.repeatability(self.state))
        except job_checks.CheckError:
            return None, ()
        return before.what.name, found

    def run_named(self, text: str) -> JobRun:
        """A run by its name or entry number. Raises SessionError with the runs there are."""
        found = self.state.run(text)
        if found is None and text.isdigit():
            found = next((r for r in self.state.runs if r.id == int(text)), None)
        if found is None:
            known = ", ".join(f'"{shown(r.what.name)}" ({r.id})' for r in self.state.runs) or "none"
            raise SessionError(f'run "{shown(text)}": there is none; there is {known}')
        return found

    def use(self, run: int, why: str, *, counts: bool = True) -> Event[Any]:
        """Let a run count from now on, or leave it out, with the reason. Raises RecordError."""
        return self.job.append("use", of=run, use=counts, why=why)

    # masses

    def purposes(self) -> dict[int, str | None]:
        """What the pieces of each entry were put on for; a piece really placed elsewhere keeps its purpose."""
        from stillshaft.solver import progress

        return progress.purposes(self.state)

    def put_on(
        self, pieces: Sequence[Mapping[str, Any]], purpose: str, note: str = "", photos: Sequence[Path] = ()
    ) -> Event[Any]:
        """Record pieces put on the rotor: plane, mass_g, angle_deg, and what else is known. Raises MassError, RecordError."""
        for piece in pieces:
            job_masses.plane_named(str(piece["plane"]), self.brief.planes)
        copied = [self.copied_photo(p) for p in photos]
        try:
            return self.job.append(
                "mass", act="put on", pieces=[dict(p) for p in pieces], purpose=purpose, note=note, photos=copied
            )
        except BaseException:
            self.remove(copied)
            raise

    def take_off(self, pieces: Sequence[OnRotor], note: str = "") -> tuple[Event[Any], ...]:
        """Record pieces taken off, an entry for each that had put some of them on."""
        taken = []
        for of in dict.fromkeys(on.of for on in pieces):
            numbers = [on.number for on in pieces if on.of == of]
            taken.append(self.job.append("mass", act="taken off", of=of, numbers=numbers, note=note))
        return tuple(taken)

    def really_placed(self, of: int, pieces: Sequence[Mapping[str, Any]], note: str = "") -> Event[Any]:
        """Record where the pieces of an entry really sit. Raises RecordError."""
        return self.job.append("mass", act="really placed", of=of, pieces=[dict(p) for p in pieces], note=note)

    def weigh_back(self, note: str, entries: Sequence[int] | None = None) -> tuple[Event[Any], ...]:
        """Record, for each entry that took trial masses off without a note, what weighing them back in told.

        Of those only `entries` where they are given. Raises SessionError where there is none, or nothing is told.
        """
        from stillshaft.solver import progress

        lost = [event.id for event in progress.not_weighed_back(self.state)]
        if not lost or not note.strip():
            what = "say what it told" if lost else "no trial mass that was taken off lacks a note"
            raise SessionError(f"weighing back: {what}")
        if other := [entry for entry in entries or () if entry not in lost]:
            there = ", ".join(map(str, lost))
            raise SessionError(f"weighing back: entry {other[0]} took no trial mass off that lacks a note; {there} did")
        wanted = lost if entries is None else list(dict.fromkeys(entries))
        return tuple(self.decide(f"trial mass weighed back in: {note}", about=of) for of in wanted)

    def on_rotor(self, text: str) -> list[OnRotor]:
        """Pieces on the rotor that a text means. Raises MassError."""
        return job_masses.meant(text, self.state.on_rotor, self.purposes(), self.brief.planes)

    # plans, trials, verdicts

    def solve(self, method: str = "auto", options: Options | None = None) -> tuple[Event[Any], Solution]:
        """Solve with the runs that count and keep the plan. Raises the solver's errors, which name the missing run."""
        from stillshaft.solver import replay

        fields, solution = replay.solved(self.state, method=method, options=options)
        return self.job.append("plan", **fields), solution

    def solve_with_stored(self) -> tuple[Event[Any], Solution]:
        """Solve with coefficients taken over from an earlier visit; kept as evidence. Raises SessionError without them."""
        from stillshaft.solver import correction

        if not (self.folder / job_facts.COEFFICIENTS_NAME).exists():
            raise SessionError("no coefficients were taken over from an earlier visit: take trial runs")
        solution, verdict = job_facts.solved(self.state, self.folder)
        told = {k: v for k, v in correction.to_json(solution, "").items() if k != "version"}
        event = self.job.append(
            "measured", what="correction by stored coefficients", figures=told, trusted=solution.trusted,
            reasons=list(solution.reasons), note="" if verdict is None else verdict.sentence,
        )  # fmt: skip
        return event, solution

    def choose_pieces(self, *, aim: str = "proposal", left_on: bool = False, most: int | None = None) -> Plan:
        """Pieces of the stock for the correction, kept as evidence.

        Raises SessionError without a stock, PlacementError and the solver's errors.
        """
        from stillshaft.solver import pieces

        if not self.brief.stock:
            raise SessionError(
                'pieces: the brief names no stock; say what is at hand, such as "stock = 5 g x 10, 10 g x 4"'
            )
        plan = pieces.plan(job_facts.runs_for(self.state, self.folder), aim=aim, left_on=left_on, most=most)
        self.keep_pieces(plan)
        return plan

    def keep_pieces(self, plan: Plan) -> Event[Any]:
        """Record pieces that were found for the correction, as evidence; angles as the plan has them."""
        from stillshaft.solver import pieces

        rows = [
            {
                "plane": plan.planes[p.plane].name,
                "mass_g": p.mass,
                "angle_deg": p.angle_deg,
                "position": pieces.number_of(plan.planes[p.plane], p),
            }
            for p in plan.chosen.pieces
        ]
        return self.job.append(
            "measured", what="pieces", trusted=plan.trusted, reasons=list(plan.reasons),
            figures={"pieces": rows, "largest": plan.chosen.largest, "unit": plan.unit, "left_on": plan.left_on},
        )  # fmt: skip

    def suggest_trial(self, plane: str) -> Trial:
        """A trial mass for a plane. Raises TrialError, FactsError for what the brief does not say."""
        return job_facts.trial_for(self.state, self.folder, plane)

    def judge(self, note: str = "") -> tuple[Event[Any], Tolerance]:
        """Record where the job stands against its goal. Raises SessionError where there is nothing to hold it against."""
        from stillshaft.solver import limits

        found = job_facts.tolerance_of(self.state, self.folder)
        if found is None:
            raise SessionError(
                "verdict: the brief has neither goal, rotor mass nor limits; set goal.grade and rotor.mass, or limits"
            )
        goal = self.brief.goal
        basis = " and ".join(b for b in (found.grade if found.planes else None, goal.table, goal.basis) if b)
        figures = {k: v for k, v in limits.to_json(found, "").items() if k != "version"}
        told = found.verdict if found.run is not None else "cannot be told"
        return self.job.append("verdict", verdict=told, basis=basis or "limits", figures=figures, note=note), found

    def keep_coefficients(self) -> Path:
        """Store the influence coefficients of this job in its folder for the next visit. Raises the solver's errors."""
        from stillshaft.solver import influence, stored

        runs = job_facts.runs_for(self.state, self.folder)
        path = self.folder / job_facts.COEFFICIENTS_NAME
        date = self.state.runs[-1].event.at[:10]
        stored.save(path, stored.of_model(runs, influence.fit_all(runs), job_facts.machine_of(self.state), date))
        return path

    # cautions, starts, reference, decisions

    def cautions_before_start(self) -> tuple[Caution, ...]:
        """What is shown before the machine is started."""
        from stillshaft.solver import cautions

        return cautions.before_start(self.state)

    def cautions_before_hands(self) -> tuple[Caution, ...]:
        """What is shown before hands go in."""
        from stillshaft.solver import cautions

        return cautions.before_hands(self.state)

    def acknowledge(self, texts: Sequence[str], who: str) -> Event[Any]:
        """Record that somebody acknowledged cautions. Raises RecordError for nobody."""
        return self.job.append("caution", texts=list(texts), who=who)

    def count_start(self, temperature: str | None = None, note: str = "") -> Event[Any]:
        """Count a start of the machine."""
        return self.job.append("start", temperature=temperature, note=note)

    def change_reference(
        self,
        what: str,
        turn_deg: float | None = None,
        *,
        mark_moved: bool = False,
        points: Sequence[str] = (),
        of: int | None = None,
        why: str = "",
    ) -> Event[Any]:
        """Record that mark or sensors changed, by a known turn or an unknown one. Raises SessionError, RecordError.

        A mark that moved on the rotor turns the angles of masses by as much as the phases; a sensor that moved does not.
        """
        if turn_deg is not None and not abs(turn_deg) <= 360.0:
            raise SessionError(
                f"reference: a turn of {turn_deg:g}°: must be within 360° either way, or left out if unknown"
            )
        known = [p.name for p in self.hookup.points] if self.hookup is not None else []
        for point in points:
            if known and point not in known:
                raise SessionError(f'point "{shown(point)}": is none of the hook-up; there is {", ".join(known)}')
        return self.job.append(
            "reference", what=what, turn_deg=turn_deg, angle_turn_deg=(turn_deg or 0.0) if mark_moved else 0.0,
            points=list(points), of=of, why=why,
        )  # fmt: skip

    def clean(self, why: str) -> Event[Any]:
        """Record that the rotor was cleaned or mended since the last run: a new initial state; earlier runs still tell H.

        Raises SessionError where there is no run yet.
        """
        from stillshaft.solver.run_rules import new_initial_state_fields

        if not self.state.runs:
            raise SessionError("cleaned: there is no run yet whose initial state could have changed")
        return self.job.append("decision", **new_initial_state_fields(self.state.runs[-1].id, why))

    def _resolve(self, turn: Turn) -> None:
        """Record the turn that a re-reference run shows of the last unknown change, where it shows one."""
        from stillshaft.solver import run_checks

        changes = run_checks.unknown_turns(self.state)
        turns = list(turn.turn_deg.values())
        turn_deg = turn.common_deg if turn.common_deg is not None else turns[0] if len(turns) == 1 else None
        if not changes or turn_deg is None or not turn.plausible:
            return
        last = changes[-1]
        self.change_reference(
            last.what.what, turn_deg, mark_moved=last.what.what == MARK_MOVED, points=last.what.points, of=last.id,
            why=turn.sentence,
        )  # fmt: skip

    def decide(self, text: str, why: str = "", about: int | None = None) -> Event[Any]:
        """Record a decision and its reason."""
        return self.job.append("decision", text=text, why=why, about=about)

    def skip_advice(self, why: str) -> Event[Any]:
        """Pass over what is advised now, with the reason. Raises SessionError without one, or for what cannot be."""
        from stillshaft.solver import progress

        if not why.strip():
            raise SessionError("skip: needs a reason")
        act = self.advice().act
        event = self.job.append("decision", **progress.skip_fields(act, why))
        if self.advice().act == act:
            self.job.withdraw(event.id, "it cannot be passed over")
            raise SessionError(f'skip: "{act}" cannot be passed over; it is what comes next')
        return event

    def stop_balancing(self, why: str) -> Event[Any]:
        """End the balancing as it is, with the reason; what is left is the end of the job. Raises SessionError."""
        from stillshaft.solver import progress

        if not why.strip():
            raise SessionError("stop: needs a reason")
        return self.job.append("decision", **progress.stop_fields(why))

    def undo(self) -> Event[Any] | None:
        """Withdraw the last act; None where there is none."""
        return self.job.undo()

    def redo(self) -> Event[Any] | None:
        """Take the last undo back; None where there is none."""
        return self.job.redo()

    def withdraw(self, entry: int, why: str) -> Event[Any]:
        """Let an entry count no longer, with the reason. Raises RecordError."""
        return self.job.withdraw(entry, why)

    def finish(self, note: str = "", *, accepted_by: str | None = None, refused_by: str | None = None) -> Event[Any]:
        """Close the job: record who accepted or refused it on the last verdict, keep the coefficients where there are any.

        Raises SessionError where trial masses are still on, or where there is no verdict to accept.
        """
        trial = [on for on in self.state.on_rotor if self.purposes().get(on.of) == "trial"]
        if trial:
            raise SessionError(
                f"close: trial masses are still on ({'; '.join(job_masses.told(on.piece) for on in trial)}); "
                "take them off, or record them as part of the correction"
            )
        if accepted_by is not None or refused_by is not None:
            if not (accepted_by or refused_by or "").strip():
                raise SessionError("close: a verdict is accepted or refused by somebody with a name; write it")
            if not self.state.verdicts:
                raise SessionError("close: there is no verdict to accept or refuse; record one first")
            last = self.state.verdicts[-1].what
            self.job.append(
                "verdict", verdict=last.verdict, basis=last.basis, figures=last.figures, accepted_by=accepted_by,
                refused_by=refused_by, note=note,
            )  # fmt: skip
        if self.worked().solution is not None and self.worked().stored is None:
            self.keep_coefficients()
        return self.job.append("closed", note=note)

    def reopen(self, why: str) -> Event[Any]:
        """Go on with a closed job. Raises RecordError without a reason."""
        return self.job.append("reopened", why=why)


def _plain(piece: msgspec.Struct) -> dict[str, Any]:
    return {key: value for key, value in msgspec.to_builtins(piece).items() if value is not None}
