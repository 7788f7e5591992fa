"""The Close-out page: before and after, residual unbalance and vibration against the limits, report, acceptance, closing."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6 import QtGui, QtWidgets
from stillshaft.ui.desktop import closeout_preview, closeout_work, look, next_visit, parts
from stillshaft.ui.desktop.closeout_cards import CloseCard, NextCard, ReportCard
from stillshaft.ui.desktop.closeout_picture import StandingPicture
from stillshaft.ui.desktop.closeout_work import CloseOut, Made
from stillshaft.ui.desktop.masses_cards import Rows
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.page import Page
from stillshaft.ui.desktop.plots import BeforeAfter
from stillshaft.ui.desktop.said import Said
from stillshaft.ui.desktop.settings import View
from stillshaft.ui.desktop.stages import Sentence, Stage, State, Weight
from stillshaft.ui.desktop.undo_buttons import UndoButtons
from stillshaft.ui.report_outcome import EQUIVALENT
from stillshaft.ui.theme import Theme

CLOSE, REPORT, NEXT = "Closing", "Report", "Next visit"
_BESIDE_EMS = 66  # heights of text that two columns need
_STATES = {s.value: s for s in State}


class CloseOutPage(Page):
    """Where the job stands at its end, and what is left to do."""

    def __init__(self, job: OpenJob) -> None:
        super().__init__(Stage.CLOSE_OUT)
        self.job = job
        self.found: CloseOut | None = None
        self._unit = View().unit
        self._asked: tuple[Path, int, str] | None = None
        self._folder: Path | None = None
        self.trouble = Said()
        self._steps = UndoButtons(job, self.trouble.say)
        self.undo, self.redo = self._steps.both
        for each in self._steps.both:
            self.head.addWidget(each)
        self.body.addWidget(self.trouble)
        self.nothing = parts.label("No job is open: begin one or open one on the Brief page.", wrap=True)
        self.body.addWidget(self.nothing)
        self.bars, self.planes, self.points = (
            BeforeAfter(),
            StandingPicture("Residual unbalance"),
            StandingPicture("Vibration"),
        )
        self.why_bars, self.why_planes, self.why_points = (parts.label("", "quiet", wrap=True) for _ in range(3))
        self.sources = Rows("small")
        self.close_card, self.report, self.next = CloseCard(), ReportCard(), NextCard()
        self.columns = self._lay_out()
        self.body.addWidget(self.columns, 1)
        self.body.addStretch(0)
        self.turn_to(CLOSE)
        self._connect()
        self._renew()

    def _lay_out(self) -> parts.Columns:
        left, right = QtWidgets.QVBoxLayout(), QtWidgets.QVBoxLayout()
        for column in (left, right):
            column.setSpacing(look.GAP)
        self.cards = []
        for heading, picture, why in (
            ("Before and after", self.bars, self.why_bars),
            ("Residual unbalance against the permissible one", self.planes, self.why_planes),
            ("Vibration against limits", self.points, self.why_points),
        ):
            card = parts.Card(heading)
            card.body.addWidget(picture)
            card.body.addWidget(why)
            left.addWidget(card)
            self.cards.append(card)
        self.cards[1].body.addWidget(parts.label(EQUIVALENT, "small", wrap=True))
        self.cards[2].body.addWidget(self.sources)
        left.addStretch(1)
        self.sides = {CLOSE: self.close_card, REPORT: self.report, NEXT: self.next}
        self.turn = parts.Segments("What is done", tuple(self.sides))
        self.turn.chosen.connect(self.turn_to)
        right.addWidget(self.turn)
        for side in self.sides.values():
            right.addWidget(side, 1 if side is self.report else 0)
        right.addStretch(0)
        return parts.Columns(left, right, (1, 1))

    def _connect(self) -> None:
        self.job.changed.connect(self._renew)
        self.close_card.judged.connect(lambda: self._act(lambda s: s.judge(), self.close_card.trouble))
        self.close_card.closed.connect(self._close)
        self.close_card.reopened.connect(lambda why: self._act(lambda s: s.reopen(why), self.close_card.trouble))
        self.report.asked.connect(self.make_report)
        self.report.exported.connect(self.export)
        self.next.kept.connect(self._keep)
        self.next.asked.connect(self.show_trend)
        self.next.visited.connect(
            lambda: next_visit.begin(self.job, lambda why: self.next.said.say(f"{why}.", Weight.CAUTION))
        )

    def turn_to(self, what: str) -> None:
        """Show one of the cards at the right."""
        self.turn.set(what)
        for name, card in self.sides.items():
            card.setVisible(name == what)

    # what is known

    def _renew(self) -> None:
        """The job stands elsewhere: work out what follows."""
        shown = self.job.shown
        self._steps.renew()
        self.nothing.setVisible(shown is None)
        if shown is None or shown.folder != self._folder:
            self._begin_anew(None if shown is None else shown.folder)
        if shown is None:
            return
        asked = (shown.folder, shown.entries, self._unit)
        if asked == self._asked:
            return
        self._asked = asked
        unit = self._unit

        def done(found: CloseOut) -> None:
            if self._asked == asked:
                self.found = found
                self._show()
                self.changed.emit()

        self.job.act(lambda session: closeout_work.gather(session, unit), done, self.trouble.say)

    def _begin_anew(self, folder: Path | None) -> None:
        """Another job is open, or none: nothing found, made or typed for the one before may stay."""
        self._folder, self.found, self._asked = folder, None, None
        self.columns.hide()
        self.trouble.say("")
        self.close_card.clear()
        self.report.show_report(None, "")
        self.next.clear()

    @property
    def _may(self) -> bool:
        return self.job.shown is not None and not self.job.shown.read_only

    def _show(self) -> None:
        found = self.found
        if found is None:
            return
        self.columns.show()
        self.bars.show_bars(found.bars, found.unit)
        self.bars.setVisible(bool(found.bars))
        self.why_bars.setText(f"Once per rev, {found.names}." if found.bars else f"{parts.begun(found.why_no_bars)}.")
        self.planes.show_rows(found.planes)
        self.points.show_rows(found.vibration)
        worked = found.worked
        tolerance = worked.tolerance
        why = worked.tolerance_error or "the brief has neither goal, rotor mass nor limits"
        for picture, rows, label in (
            (self.planes, found.planes, self.why_planes),
            (self.points, found.vibration, self.why_points),
        ):
            picture.setVisible(bool(rows))
            label.setVisible(not rows)
            label.setText("No limit applies." if tolerance is not None else f"It cannot be told yet: {why}.")
        if tolerance is not None:
            judged = [] if tolerance.run is None else [f'judged by run "{tolerance.run}"']
            self.sources.show_texts([*judged, *tolerance.reasons, *tolerance.sources])
        else:
            self.sources.show_texts(())
        self.close_card.show_job(found, may=self._may)
        self.next.show_job(found, may=self._may)
        self.report.name = found.state.name or "report"
        closed = "closed" if found.state.closed else "open"
        self.subtitle.setText(f"{self.stage.purpose}. The job is {closed}.")

    # acts

    def _act(self, work: Callable[[Any], Any], say: Said, done: Callable[[Any], None] | None = None) -> None:
        say.say("")
        self.job.act(work, done, lambda why: say.say(f"{why}.", Weight.CAUTION))

    def _close(self, accepted: str, refused: str, note: str) -> None:
        def act(session: Any) -> None:
            if (accepted or refused) and not session.state.verdicts:
                session.judge(note)
            session.finish(note, accepted_by=accepted or None, refused_by=refused or None)

        self._act(act, self.close_card.trouble)

    def _keep(self) -> None:
        def stored(path: Path) -> None:
            self.next.said.say(f"Stored as {path.name} in the job's folder.", Weight.NOTE)
            self._asked = None  # the record did not grow, the folder did
            self._renew()

        self._act(lambda session: session.keep_coefficients(), self.next.said, stored)

    def show_trend(self) -> None:
        """Read the machine's jobs beside this one, on a thread."""
        shown = self.job.shown
        if shown is None:
            return
        self.next.trend.setEnabled(False)

        def over(texts: Any) -> None:
            self.next.trend.setEnabled(True)
            if self._folder != shown.folder:
                return  # another job was opened meanwhile
            self.next.rows.show_texts(texts)

        self.next.work.run(
            lambda report: closeout_work.trend_of(shown.state, shown.folder, report), over,
            lambda why: over((why or "broken off",)),
        )  # fmt: skip

    def make_report(self) -> None:
        """Make the report on a thread and show it."""
        shown, card = self.job.shown, self.report
        if shown is None:
            return
        card.make.setEnabled(False)
        card.show_report(None, "")
        family, paper = card.family, card.paper.value

        def work(report: Callable[[float, str], None]) -> tuple[Made, str, tuple[QtGui.QImage, ...]]:
            made = closeout_work.made_report(shown.folder, family, paper, report)
            return made, "", closeout_preview.images_of(made.layout)

        def over(made: Made | None, why: str, images: tuple[QtGui.QImage, ...] = ()) -> None:
            card.make.setEnabled(True)
            if self._folder != shown.folder:
                return  # another job was opened meanwhile
            card.show_report(made, why, images)

        card.work.run(
            work, lambda found: over(*found),
            lambda why: over(None, f"{why}." if why else "Broken off."),
        )  # fmt: skip

    def export(self, kind: str, path: Path | None) -> None:
        """Write a kind of `KINDS` to a place, or among the job's own reports; says where it is."""
        shown, card = self.job.shown, self.report
        if shown is None or (card.made is None and kind in ("PDF", "HTML")):
            return
        made = card.made

        def act(session: Any) -> Path:
            data = closeout_work.exported(shown.folder, kind, made)
            if path is None:
                return closeout_work.put_in_job(session, data, kind)
            return closeout_work.write_export(session, path, data)

        self._act(act, card.said, lambda written: card.said.say(f"Written: {written}", Weight.NOTE))

    # the page

    def state(self) -> State:
        """As the guidance has it."""
        return State.EMPTY if self.found is None else _STATES[self.found.stage]

    def sentence(self) -> Sentence | None:
        """What is left at the end; nothing while the job is still under way."""
        found = self.found
        if found is None or found.stage == State.EMPTY.value:
            return None
        if found.state.closed:
            return Sentence("The job is closed.", Stage.CLOSE_OUT)
        weight = Weight.CAUTION if found.stage == State.ATTENTION.value else Weight.NOTE
        return Sentence(f"{parts.begun(found.reason).rstrip('.')}.", Stage.CLOSE_OUT, weight, "Close-out")

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        for part in (self.bars, self.planes, self.points, self.close_card, self.report, self.next, self.trouble):
            part.set_theme(theme)

    def set_view(self, view: View) -> None:
        """Vibration unit."""
        self._unit = view.unit
        self._renew()

    def set_room(self, width_px: int, body_px: int) -> None:
        """The cards beside or below the pictures."""
        self.columns.set_beside(width_px >= _BESIDE_EMS * body_px)

    def close_down(self) -> None:
        """Stop what runs."""
        for card in (self.report, self.next):
            card.work.close_down()
