"""One check in full: how to do it, what counts as fine, cautions, what was found, photos, and the outcome."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path

from PySide6 import QtCore, QtWidgets
from stillshaft.solver.diagnosis_rules import Quantity
from stillshaft.solver.inspection import Check
from stillshaft.ui.desktop import inspect_answers as answers
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.brief_fields import Field, Form, LineField, PaperField, PickField
from stillshaft.ui.desktop.brief_photos import Photo, Photos
from stillshaft.ui.desktop.inspect_measure import BY_CHECK, KINDS, Measuring, newest
from stillshaft.ui.desktop.inspect_result import ResultCard, moment
from stillshaft.ui.desktop.open_job import OpenJob, Shown
from stillshaft.ui.desktop.said import Remark
from stillshaft.ui.desktop.stages import Weight
from stillshaft.ui.desktop.worded import Worded
from stillshaft.ui.session import Session
from stillshaft.ui.theme import Theme

NOT_LOOKED_AT = "not looked at"


class _Cautions(parts.Card):
    """What to beware of, each with the shape of a caution."""

    def __init__(self, texts: Sequence[str], theme: Theme) -> None:
        super().__init__("Beware")
        for text in texts:
            row = QtWidgets.QHBoxLayout()
            row.setSpacing(look.TIGHT)
            sign = parts.Sign(18)
            sign.show_weight(Weight.CAUTION)
            sign.set_theme(theme)
            row.addWidget(sign, 0, QtCore.Qt.AlignmentFlag.AlignTop)
            row.addWidget(parts.label(f"{parts.begun(text)}.", wrap=True), 1)
            self.body.addLayout(row)
        self.body.addWidget(
            parts.label("Local rules and licensed or competent persons come before this list.", "small", wrap=True)
        )


class CheckPane(Worded, QtWidgets.QWidget):
    """A check of the machine; it writes through the session of the open job."""

    def __init__(
        self,
        check: Check,
        job: OpenJob,
        measuring: Measuring,
        record: Callable[[str], None],
        open_file: Callable[[str], None],
        theme: Theme,
    ) -> None:
        super().__init__()
        self.check, self._job, self._theme = check, job, theme
        self.setAccessibleName(f"Check: {check.title}")
        self._column = QtWidgets.QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(look.GAP)
        self._column.addWidget(self._about())
        if check.cautions:
            self._column.addWidget(_Cautions(check.cautions, theme))
        self.answers: dict[str, Field] = {}
        self._form = Form()
        self._found = parts.Card("What was found")
        self._found.body.addWidget(self._form)
        self._column.addWidget(self._found)
        self.results = [ResultCard(KINDS[what], measuring, record, open_file) for what in BY_CHECK.get(check.key, ())]
        for result in self.results:
            result.set_theme(theme)
            self._column.addWidget(result)
        self._column.addWidget(self._outcome())
        self._column.addStretch(1)
        self._form.set_theme(theme)

    def _about(self) -> parts.Card:
        card = parts.Card(parts.begun(self.check.title))
        card.body.addWidget(parts.label(self.check.how, wrap=True))
        card.body.addWidget(parts.label(f"Fine: {self.check.fine}.", wrap=True))
        card.body.addWidget(parts.label(f"Source: {self.check.source}.", "small", wrap=True))
        return card

    def _outcome(self) -> parts.Card:
        card = parts.Card("Outcome")
        self.photos = Photos(f"photos, {self.check.title}")
        self.photos.chosen.connect(self._add_photos)
        self.photos.removed.connect(lambda entry: self._act(lambda s: s.withdraw(entry, "photo removed")))
        self.photos.set_theme(self._theme)
        self.note = PaperField("Note, or why it is not done")
        self.note.set_theme(self._theme)
        self.note.finished.connect(self._note_changed)
        self.outcome = parts.Segments("Outcome", [parts.begun(o) for o in answers.OUTCOMES])
        self.outcome.chosen.connect(self._choose)
        self.remark = Remark()
        self.remark.set_theme(self._theme)
        self.recorded = parts.label("", "small", wrap=True)
        for widget in (self.note, self.outcome, self.remark, self.recorded, self.photos):
            card.body.addWidget(widget)
        return card

    # what the person does

    def _act(self, work: Callable[[Session], object]) -> None:
        self.remark.say("")
        self._job.act(work, failed=self._refuse)

    def _refuse(self, why: str) -> None:
        self.remark.say(f"{parts.begun(why)}.", refused=True)
        if self._job.shown is not None:
            self.show_job(self._job.shown)

    def _choose(self, word: str) -> None:
        outcome = word.lower()
        note = self.note.text.strip()
        if outcome == "not done" and not note:
            self.remark.say("Write why it is not done, then choose it again.", refused=True)
            self.outcome.set(self._chosen())
            self.note.control.setFocus()
            return
        self._record(outcome, note)

    def _record(self, outcome: str, note: str) -> None:
        key, shown = self.check.key, self._job.shown
        evidence = None if shown is None else answers.evidence_for(self.check, shown.state)
        self._act(lambda s: s.inspect(key, outcome, note, evidence=evidence))

    def _chosen(self) -> str:
        shown = self._job.shown
        event = None if shown is None else shown.state.checks.get(self.check.key)
        return "" if event is None else parts.begun(event.what.outcome)

    def _note_changed(self, text: str) -> None:
        """A note goes with its outcome: without one it waits for it."""
        chosen = self._chosen().lower()
        if not chosen:
            self.remark.say("The note is recorded with the outcome: choose one.")
        elif chosen == "not done" and not text:
            self.note.refuse("a check that is not done keeps its reason")
        else:
            self._record(chosen, text)

    def _add_photos(self, files: list[Path]) -> None:
        for file in files:
            self._act(partial(_add_photo, file, self.check.title))

    def _answer(self, quantity: Quantity, field: Field, text: str) -> None:
        check, key = self.check, quantity.key

        def work(session: Session) -> object:
            if key in answers.ASKED:
                return session.describe({"interview": {key: text or None}})
            if text:
                return session.record_check(answers.answered(check, quantity, text))
            for event in answers.answer_events(session.state, key):
                session.withdraw(event.id, "answer taken back")
            return None

        self._job.act(work, lambda _result: field.take(), field.refuse)

    # what comes of it

    def show_job(self, shown: Shown) -> None:
        """Show the record as it stands."""
        quantities = answers.by_hand(self.check, shown.state)
        if [q.key for q in quantities] != list(self.answers):
            self._form.clear()
            self.answers = {q.key: self._form.add(self._field(q)) for q in quantities}
        self._found.setVisible(bool(quantities))
        for key, field in self.answers.items():
            field.show_recorded(answers.answer(shown.state, key))
        for result in self.results:
            result.show_event(newest(shown.state, result.kind.what))
        event = shown.state.checks.get(self.check.key)
        self.outcome.set("" if event is None else parts.begun(event.what.outcome))
        if event is not None:
            self.note.show_recorded(event.what.note)
            self.recorded.setText(f"Recorded {moment(event.at)}" + (f" by {event.by}." if event.by else "."))
        else:
            self.recorded.setText("No outcome yet.")
        self.photos.show_photos(photos_of(shown, self.check))

    def _field(self, quantity: Quantity) -> Field:
        if quantity.words:
            made: Field = PickField(answers.question(quantity), quantity.words, NOT_LOOKED_AT, wide=True)
        else:
            made = LineField(answers.question(quantity), "such as 40 ± 5")
        made.finished.connect(partial(self._answer, quantity, made))
        return made

    def renew_progress(self) -> None:
        """How far a measurement is."""
        for result in self.results:
            result.renew()

    def make_ready(self, what: str) -> None:
        """A check may be recorded now: say so beside its button."""
        for result in self.results:
            if result.kind.what == what:
                result.make_ready()

    def refuse_measurement(self, what: str, why: str) -> None:
        """Say why a check was not made."""
        for result in self.results:
            if result.kind.what == what:
                result.refuse(why)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        for sign in self.findChildren(parts.Sign):
            sign.set_theme(theme)
        self._form.set_theme(theme)
        self.photos.set_theme(theme)
        self.note.set_theme(theme)
        for result in self.results:
            result.set_theme(theme)

    def set_width(self, width_px: int, body_px: int) -> None:
        """So much room, for text of this size."""
        inner = width_px - 2 * look.ROOM - 2
        self._form.set_width(inner, body_px)
        self.photos.set_width(inner)

    def finish(self) -> None:
        """Record what is being typed, and stop reading photos."""
        for field in (self.note, *self.answers.values()):
            if field.control.hasFocus():
                field.commit()
        self.photos.close_down()


def _add_photo(file: Path, note: str, session: Session) -> object:
    return session.add_photo(file, note=note)


def photos_of(shown: Shown, check: Check) -> list[Photo]:
    """The photos that a check has: taken for it by their note, or named by its outcome."""
    own = [
        Photo(shown.folder / e.what.file.path, Path(e.what.file.path).name, e.id)
        for e in shown.state.photos
        if e.what.note == check.title
    ]
    event = shown.state.checks.get(check.key)
    named = [] if event is None else [Photo(shown.folder / f.path, Path(f.path).name) for f in event.what.photos]
    return [*own, *named]
