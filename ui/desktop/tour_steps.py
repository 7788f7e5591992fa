"""What comes next in a job that is led through, by record and window: steps that the tour and the lessons share."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, cast

from PySide6 import QtWidgets
from stillshaft.solver import progress
from stillshaft.solver.state import JobRun, JobState
from stillshaft.ui.desktop.closeout_page import CLOSE, CloseOutPage
from stillshaft.ui.desktop.feed import Status
from stillshaft.ui.desktop.masses_page import MassesPage
from stillshaft.ui.desktop.masses_view import CORRECTION, PUT_ON, TRIAL
from stillshaft.ui.desktop.runs_page import LIVE, NEXT, RunsPage
from stillshaft.ui.desktop.stages import Stage
from stillshaft.ui.desktop.tour_coach import Pointer

if TYPE_CHECKING:
    from stillshaft.ui.desktop.app import Program


@dataclass(frozen=True)
class RunWords:
    """What is said on the way of a run: before its start, while it is recorded, and when it is over."""

    before: str
    watch: str
    after: str = "The run is recorded. The machine runs on until you stop it: press Stop."


@dataclass(frozen=True)
class JobWords:
    """What is said on the way of a job with one plane: its three runs, and its masses."""

    first: RunWords
    trial: RunWords
    check: RunWords
    put_trial: str
    record_trial: str
    trial_off: str
    put_correction: str
    record_correction: str


class Steps:
    """Pointers to what is to be pressed next on each page."""

    def __init__(self, program: Program) -> None:
        self.program = program

    @property
    def state(self) -> JobState:
        """The record as it stands."""
        shown = self.program.job.shown
        return JobState() if shown is None else shown.state

    @property
    def counting(self) -> list[JobRun]:
        """Runs that count."""
        return [run for run in self.state.runs if run.counts]

    @property
    def runs(self) -> RunsPage:
        """The Runs page."""
        return cast(RunsPage, self.program.frame.pages[Stage.RUNS])

    @property
    def masses(self) -> MassesPage:
        """The Masses page."""
        return cast(MassesPage, self.program.frame.pages[Stage.MASSES])

    @property
    def closeout(self) -> CloseOutPage:
        """The Close-out page."""
        return cast(CloseOutPage, self.program.frame.pages[Stage.CLOSE_OUT])

    @property
    def trial_on(self) -> bool:
        """Whether a trial mass is on the rotor."""
        purposes = progress.purposes(self.state)
        return any(purposes.get(on.of) == "trial" for on in self.state.on_rotor)

    @property
    def correction_on(self) -> bool:
        """Whether a correction is on the rotor."""
        purposes = progress.purposes(self.state)
        return any(purposes.get(on.of) in ("correction", "trim") for on in self.state.on_rotor)

    @property
    def runs_now(self) -> bool:
        """Whether the machine runs."""
        return self.program.feed.status not in (Status.STOPPED, Status.STOPPING)

    def go(self, stage: Stage, sentence: str) -> Pointer | None:
        """To a page; None where it is open already."""
        frame = self.program.frame
        return None if frame.open_stage is stage else Pointer(frame.rail.buttons[stage], sentence)

    def wait(self, widget: QtWidgets.QWidget, sentence: str) -> Pointer:
        """Nothing to press: look at this."""
        return Pointer(widget, sentence, presses=False)

    def run(self, words: RunWords) -> Pointer:
        """A run with its start."""
        page, feed = self.runs, self.program.feed
        if (there := self.go(Stage.RUNS, words.before)) is not None:
            return there
        if page.taker.doing:
            if page.turn.value != LIVE:
                return Pointer(page.turn.buttons[LIVE], "Go to Live: the run is being recorded.")
            return self.wait(page.watch.cloud_card, words.watch)
        if self.program.job.busy:
            return self.wait(page.strip, "It is written into the record.")
        if page.turn.value == NEXT and not page.started:
            open_ones = [tick for tick in page.start.ticks if not tick.isChecked()]
            if open_ones:
                said = "Before each start a person says that this holds. Read the line, then press Yes."
                return Pointer(open_ones[0], said, line=open_ones[0].parentWidget(), around=page.start)
            if not page.start.who.text().strip():
                return Pointer(page.start.who, "Write who says so.")
            return Pointer(page.start.say, "All of it holds: press here, and the machine starts.")
        if not self.runs_now:
            return Pointer(page.start_stop, words.before)
        if page.turn.value != LIVE:
            return Pointer(page.turn.buttons[LIVE], "That run does not count yet. Go to Live for another one.")
        snapshot = feed.snapshot
        if snapshot is None or snapshot.measured is None or not page.strip.record.isEnabled():
            return self.wait(page.watch.speed, "The machine starts. Wait until the first figures are there.")
        return Pointer(page.strip.record, "Speed and vibration are there. Press Record run: it ends by itself.")

    def stop(self, sentence: str) -> Pointer | None:
        """Stop the machine; None where it stands."""
        if self.program.feed.status is Status.STOPPING:
            return self.wait(self.runs.start_stop, "The machine comes to a stop.")
        if not self.runs_now:
            return None
        return self.go(Stage.RUNS, sentence) or Pointer(self.runs.start_stop, sentence)

    def put_on_trial(self, before: str, record: str) -> Pointer:
        """A trial mass."""
        return self._put_on(TRIAL, self.masses.trial.take, before, record)

    def put_on_correction(self, before: str, record: str) -> Pointer:
        """A correction."""
        return self._put_on(CORRECTION, self.masses.correction.take, before, record)

    def _put_on(self, view: str, take: QtWidgets.QPushButton, before: str, record: str) -> Pointer:
        page = self.masses
        if (there := self.go(Stage.MASSES, before)) is not None:
            return there
        if self.program.job.busy:
            return self.wait(page.face, "It is being worked out.")
        if page.drafts.to_put_on:
            if page.turn.value != PUT_ON:
                return Pointer(page.turn.buttons[PUT_ON], "The mass is on the face. Go on to what is put on.")
            return Pointer(page.entry.record, record)
        if page.turn.value != view:
            return Pointer(page.turn.buttons[view], before)
        if not take.isVisible():
            return self.wait(page.face, "It is being worked out.")
        return Pointer(take, before)

    def take_trial_off(self, sentence: str) -> Pointer:
        """The trial mass comes off again."""
        page = self.masses
        if (there := self.go(Stage.MASSES, sentence)) is not None:
            return there
        if self.program.job.busy:
            return self.wait(page.face, "It is being worked out.")
        if page.turn.value != PUT_ON:
            return Pointer(page.turn.buttons[PUT_ON], sentence)
        return Pointer(page.on.acts["trials off"], sentence)

    @property
    def measured(self) -> bool:
        """Whether a run that counts shows what is on the rotor now."""
        last = self.counting[-1].id if self.counting else 0
        return not self.state.masses or last > self.state.masses[-1].id

    def purposes(self) -> list[str]:
        """Kinds of the runs that count, in their order."""
        return [run.what.purpose for run in self.counting]

    def one_plane(self, words: JobWords, *, met: bool) -> Pointer | None:
        """A job with one plane up to a run with its correction; `met`: what is left is little enough. None: it is done."""
        purposes = self.purposes()
        if "initial" not in purposes:
            return self.run(words.first)
        if not self.measured:
            if self.trial_on:
                return self.run(words.trial)
            if self.correction_on:
                return self.run(words.check)
        if (resting := self.rest(words.first.after)) is not None:
            return resting
        if "trial" not in purposes:
            return self.put_on_trial(words.put_trial, words.record_trial)
        if self.trial_on:
            return self.take_trial_off(words.trial_off)
        if not self.correction_on or not met:
            return self.put_on_correction(words.put_correction, words.record_correction)
        return None

    def rest(self, sentence: str) -> Pointer | None:
        """Until what was recorded is measured and the machine stands; None where that is so."""
        if self.runs.taker.doing or self.program.job.busy:
            return self.wait(self.runs.strip, "It is being worked out.")
        return self.stop(sentence)

    def record_verdict(self, before: str, judge: str) -> Pointer:
        """The verdict, on Close-out."""
        page = self.closeout
        if (there := self.go(Stage.CLOSE_OUT, before)) is not None:
            return there
        if self.program.job.busy:
            return self.wait(page.close_card, "It is written into the record.")
        if page.turn.value != CLOSE:
            return Pointer(page.turn.buttons[CLOSE], judge)
        return Pointer(page.close_card.judge, judge)
