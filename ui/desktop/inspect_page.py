"""The Inspect page: the checks that fit the machine, measured ones made in place, and what may be wrong."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6 import QtCore, QtWidgets
from stillshaft.acquire.hookup import Hookup
from stillshaft.acquire.source import SourceRequest
from stillshaft.solver.events import Event, Measured
from stillshaft.ui.desktop import inspect_answers as answers
from stillshaft.ui.desktop import inspect_source, look, parts
from stillshaft.ui.desktop import words as language
from stillshaft.ui.desktop.feed import SIMULATED, Feed, Status
from stillshaft.ui.desktop.inspect_check import CheckPane
from stillshaft.ui.desktop.inspect_diagnosis import DiagnosisPane
from stillshaft.ui.desktop.inspect_list import RowList
from stillshaft.ui.desktop.inspect_measure import KINDS, Measuring
from stillshaft.ui.desktop.inspect_start import STANDS_AFTER, BeforeCheck
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.page import Page
from stillshaft.ui.desktop.said import Remark
from stillshaft.ui.desktop.stages import Sentence, Stage, State, Weight
from stillshaft.ui.desktop.undo_buttons import UndoButtons
from stillshaft.ui.theme import THEMES, Theme

_BESIDE_EMS = 52  # heights of text that list and pane need side by side
_LIST_EMS = 18
_LOW_LIST_EMS = 9
RECORDINGS = "Recordings (*.au *.wav *.flac *.caf *.csv *.txt *.uff *.unv *.h5 *.hdf5 *.tdms);;All files (*)"


class InspectPage(Page):
    """What to look at before balancing. `feed` is the source that measured checks record from.

    `real_time` False lets the simulated rotor run as fast as it goes.
    """

    opened = QtCore.Signal(Stage)  # another stage is asked for

    def __init__(self, job: OpenJob, feed: Feed, *, real_time: bool = True) -> None:
        super().__init__(Stage.INSPECT)
        self.job, self.feed = job, feed
        self._real_time = real_time
        self._theme: Theme = THEMES["light"]
        self._width = (600, 14)
        self._seed = 0
        self._waiting: Callable[[], None] | None = None  # until the source is free
        self.measuring = Measuring(job, self)
        self.list = RowList("Checks")
        self.list.chosen.connect(self._turn_to)
        self.diagnosis = DiagnosisPane(job)
        self.diagnosis.go.connect(self.go_to)
        self.before = BeforeCheck(job)
        self.before.seen.connect(self._seen_to)
        self.before.clear.connect(self.record)
        self.panes: dict[str, CheckPane] = {}
        self._holder = QtWidgets.QWidget()
        self._holder.setObjectName("page")
        self._inner = QtWidgets.QVBoxLayout(self._holder)
        self._inner.setContentsMargins(0, 0, look.TIGHT, 0)
        self._inner.addWidget(self.before)
        self._inner.addWidget(self.diagnosis)
        self.area = parts.Scrolled(self._holder, "Check")
        self.area.setMinimumHeight(10 * 14)
        # it scrolls by itself: what it holds does not make the page scroll too
        policy = QtWidgets.QSizePolicy.Policy
        self.area.setSizePolicy(policy.Expanding, policy.Ignored)
        self.area.room.connect(self._set_pane_width)
        self.remark = Remark()
        self._steps = UndoButtons(job, self.remark.say)
        self.undo, self.redo = self._steps.both
        for each in self._steps.both:
            self.head.addWidget(each)
        self.body.addWidget(self.remark)
        self.none = parts.label("No job is open: begin one, or open one, on the Brief page.", wrap=True)
        self.body.addWidget(self.none)
        self.work = QtWidgets.QWidget()
        self._row = QtWidgets.QBoxLayout(QtWidgets.QBoxLayout.Direction.LeftToRight, self.work)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(look.GAP)
        self._row.addWidget(self.list)
        self._row.addWidget(self.area, 1)
        self.body.addWidget(self.work, 1)
        self._empty = QtWidgets.QWidget()
        self.body.addWidget(self._empty, 1)
        job.changed.connect(self._renew)
        feed.changed.connect(self._go_on)
        self.measuring.changed.connect(self._progress)
        self.measuring.failed.connect(self._not_measured)
        self.measuring.measured.connect(self._measured)
        self._renew()

    # what the person does

    def go_to(self, quantity: str) -> None:
        """Open the check that a quantity of the diagnosis comes from; a fact of the brief opens the Brief."""
        key = answers.check_of(quantity)
        if key is None:
            self.opened.emit(Stage.BRIEF)
            return
        self.list.choose(key)
        self.list.setFocus(QtCore.Qt.FocusReason.OtherFocusReason)

    def _turn_to(self, key: str) -> None:
        shown = self.job.shown
        if shown is None:
            return
        self.before.put_away()
        self.diagnosis.setVisible(key == answers.DIAGNOSIS)
        if key != answers.DIAGNOSIS and key not in self.panes:
            check = next(c for c in shown.checks if c.key == key)
            pane = CheckPane(check, self.job, self.measuring, self.record, self._ask_file, self._theme)
            pane.set_width(*self._width)
            self.panes[key] = pane
            self._inner.addWidget(pane)
        for each, pane in self.panes.items():
            pane.setVisible(each == key)
        if key in self.panes:
            self.panes[key].show_job(shown)
            self.panes[key].renew_progress()
        self.area.verticalScrollBar().setValue(0)

    def record(self, what: str) -> None:
        """Make a measured check from the chosen source, or from the runs where they suffice."""
        if KINDS[what].seconds == 0.0:
            self.measuring.from_runs(what)
            return
        if not self.feed.replays and self.before.lacks(what):
            self.before.ask(what)
            self.area.verticalScrollBar().setValue(0)
            return
        feed, self._seed = self.feed, self._seed + 1
        choice, teaching, seed, fitted = feed.choice, feed.teaching, self._seed, feed.fitted
        seconds, real_time = KINDS[what].seconds, self._real_time

        def order(hookup: Hookup) -> SourceRequest:
            return inspect_source.request_for(
                what, choice, hookup, teaching, seed, seconds, real_time=real_time, fitted=fitted
            )

        def begin() -> None:
            self.measuring.from_source(what, order)

        if choice != SIMULATED and feed.status is not Status.STOPPED:
            self._waiting = begin  # a sound input is opened once
            feed.stop()
        else:
            begin()

    def _seen_to(self, what: str) -> None:
        """The cautions are recorded: the person says when machine and hands are ready."""
        if self.list.key in self.panes:
            self.panes[self.list.key].make_ready(what)

    def _go_on(self) -> None:
        if self._waiting is not None and self.feed.status is Status.STOPPED:
            begin, self._waiting = self._waiting, None
            begin()

    def _ask_file(self, what: str) -> None:
        path, _ = QtWidgets.QFileDialog.getOpenFileName(
            self, language.words(KINDS[what].title), "", language.words(RECORDINGS)
        )
        if path:
            self.measuring.from_recording(what, Path(path))

    # what comes of it

    def _renew(self) -> None:
        shown = self.job.shown
        self._steps.renew()
        self.before.follow()
        self.none.setVisible(shown is None)
        self._empty.setVisible(shown is None)
        self.work.setVisible(shown is not None)
        if shown is not None:
            known = {c.key: c for c in shown.checks}
            for key in [k for k, pane in self.panes.items() if known.get(k) != pane.check]:
                pane = self.panes.pop(key)
                self._inner.removeWidget(pane)
                pane.finish()
                pane.hide()
                pane.deleteLater()
            self.diagnosis.show_job(shown)
            self.list.show_rows(answers.rows(shown.checks, shown.state, shown.diagnosis))
            if self.list.key in self.panes:
                self.panes[self.list.key].show_job(shown)
            elif self.list.key:
                self._turn_to(self.list.key)
            done = sum(c.key in shown.state.checks for c in shown.checks)
            self.subtitle.setText(f"{shown.state.name}: {done} of {len(shown.checks)} checks have an outcome.")
        self.changed.emit()

    def _progress(self) -> None:
        if self.list.key in self.panes:
            self.panes[self.list.key].renew_progress()

    def _not_measured(self, what: str, why: str) -> None:
        for pane in self.panes.values():
            pane.refuse_measurement(what, why)

    def _measured(self, event: Event[Measured], _checked: object) -> None:
        if event.what.what in STANDS_AFTER:
            self.before.stands()
        self._progress()

    # the page

    def state(self) -> State:
        """Attention where a check needs it; done when every check has an outcome."""
        shown = self.job.shown
        if shown is None or not (shown.state.checks or shown.state.measured):
            return State.EMPTY
        outcomes = [e.what.outcome for key, e in shown.state.checks.items() if key in {c.key for c in shown.checks}]
        if "needs attention" in outcomes:
            return State.ATTENTION
        return State.DONE if len(outcomes) == len(shown.checks) else State.UNDER_WAY

    def sentence(self) -> Sentence | None:
        """What needs attention, a cause that comes before balancing, or the check that is next."""
        shown = self.job.shown
        if shown is None:
            return None
        titles = {c.key: c.title for c in shown.checks}
        for key, event in shown.state.checks.items():
            if event.what.outcome == "needs attention" and key in titles:
                return Sentence(f"To be seen to on Inspect: {titles[key]}.", Stage.INSPECT, Weight.CAUTION, "Inspect")
        first = shown.diagnosis.causes[0]
        if first.verdict == "likely" and first.key != "unbalance":
            advice = f"{parts.begun(first.name)} is likely: {first.advice}."
            return Sentence(advice, Stage.INSPECT, Weight.CAUTION, "Inspect")
        left = [title for key, title in titles.items() if key not in shown.state.checks]
        if left and shown.state.checks:
            return Sentence(f"Inspection: {left[0]} has no outcome yet.", Stage.INSPECT, action="Inspect")
        return None

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        self.list.set_theme(theme)
        self.diagnosis.set_theme(theme)
        self.before.set_theme(theme)
        self.remark.set_theme(theme)
        for pane in self.panes.values():
            pane.set_theme(theme)

    def set_room(self, width_px: int, body_px: int) -> None:
        """List and pane side by side, or one above the other."""
        beside = width_px >= _BESIDE_EMS * body_px
        self.list.stand(self._row, wide_px=_LIST_EMS * body_px, low_px=_LOW_LIST_EMS * body_px, beside=beside)
        self._width = (self._width[0], body_px)
        self._set_pane_width(self.area.viewport().width())

    def _set_pane_width(self, width_px: int) -> None:
        self._width = (width_px - look.TIGHT, self._width[1])
        self.diagnosis.set_width(*self._width)
        for pane in self.panes.values():
            pane.set_width(*self._width)

    def leave(self) -> None:
        """Who comes back is asked again whether the machine runs."""
        self.before.stands()

    def close_down(self) -> None:
        """Break off what is measured; record what is being typed."""
        for pane in self.panes.values():
            pane.finish()
        self.measuring.close()
