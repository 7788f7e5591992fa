"""The panels of the job: which one is open and which were of late; and why something is advised, or is passed over."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6 import QtCore, QtWidgets
from stillshaft.ui.desktop import look, parts, recent
from stillshaft.ui.desktop.panel import Panel
from stillshaft.ui.desktop.phrases import Names
from stillshaft.ui.desktop.worded import LineEdit
from stillshaft.ui.desktop.words import own

if TYPE_CHECKING:
    from stillshaft.ui.desktop.open_job import Guided

_WIDTH_EMS = 30
_PRACTICE = (
    ("tour", "Tour: balance a fan", "From the first run to the verdict in less than five minutes"),
    (
        "walking phase",
        "Lesson: a phase that walks",
        "A neighbour close in speed: see the beat, and get a run that serves",
    ),
    ("weak trial", "Lesson: a trial mass too weak", "An interval without end, and what puts it right"),
    ("couple", "Lesson: couple on an overhung fan", "The static part first, then judge what is left"),
)


class JobPanel(Panel):
    """Begins a job, opens one, or one of those that were open of late."""

    wanted_new = QtCore.Signal()
    wanted_other = QtCore.Signal()
    wanted = QtCore.Signal(Path)
    practised = QtCore.Signal(str)  # the tour, or a lesson by its key

    def __init__(self, parent: QtWidgets.QWidget) -> None:
        super().__init__(parent, "Job")
        self.called = parts.label("No job is open.", "heading", wrap=True)
        self.begin = parts.button("New job", self._new, tip="Begin a job (Ctrl+N)")
        self.other = parts.button("Open a job…", self._other, tip="Go on with a job (Ctrl+O)")
        self.heading = parts.label("Open of late", "quiet")
        self.rows = [parts.button("", partial(self._open, number)) for number in range(recent.MOST)]
        self._folders: tuple[Path, ...] = ()
        self.practice_heading = parts.label("Practice on a simulated machine", "quiet")
        self.practice = [parts.button(text, partial(self._practise, key), tip=tip) for key, text, tip in _PRACTICE]
        self.body.addWidget(self.called)
        for each in (self.begin, self.other, self.heading, *self.rows, self.practice_heading, *self.practice):
            if each in (self.heading, self.practice_heading):
                self.body.addSpacing(look.TIGHT)
            self.body.addWidget(each)
        self.show_recent(())

    def first(self) -> QtWidgets.QWidget:
        """The first that can be pressed."""
        return self.begin

    def set_width(self, body_px: int) -> None:
        """As wide as text of this size needs."""
        self.setFixedWidth(_WIDTH_EMS * body_px)

    def show_job(self, name: str | None) -> None:
        """Say which job is open."""
        given = Names()
        self.called.setText("No job is open." if name is None else given.told(f"Open: {given(name)}"))

    def show_recent(self, folders: tuple[Path, ...]) -> None:
        """Offer these."""
        self._folders = folders
        for number, row in enumerate(self.rows):
            row.setVisible(number < len(folders))
            if number < len(folders):
                row.setText(own(folders[number].name.replace("&", "&&")))
                name = Names()
                row.setAccessibleName(name.told(f"Open {name(folders[number].name)}"))
                row.setToolTip(own(str(folders[number])))
        self.heading.setVisible(bool(folders))

    def _practise(self, key: str) -> None:
        self.put_away()
        self.practised.emit(key)

    def _new(self) -> None:
        self.put_away()
        self.wanted_new.emit()

    def _other(self) -> None:
        self.put_away()
        self.wanted_other.emit()

    def _open(self, number: int) -> None:
        self.put_away()
        self.wanted.emit(self._folders[number])


class AdvicePanel(Panel):
    """Why something is advised; with a reason it is passed over, or the balancing is ended as it is."""

    passed = QtCore.Signal(str)
    stopped = QtCore.Signal(str)

    def __init__(self, parent: QtWidgets.QWidget) -> None:
        super().__init__(parent, "Why this is advised")
        self.said = parts.label("", "heading", wrap=True)
        self.why = parts.label("", wrap=True)
        self.reason = LineEdit()
        self.reason.setPlaceholderText("kept in the record")
        self.pass_over = parts.button("Pass over it", self._pass, tip="Go on without it, with the reason")
        self.end = parts.button("End the balancing", self._end, tip="Leave the machine as it is, with the reason")
        self.remark = parts.label("", "small", wrap=True)
        row = QtWidgets.QHBoxLayout()
        row.setSpacing(look.TIGHT)
        row.addWidget(self.pass_over)
        row.addWidget(self.end)
        row.addStretch(1)
        self.body.addWidget(self.said)
        self.body.addWidget(self.why)
        self.body.addSpacing(look.TIGHT)
        self.body.addWidget(parts.labelled("Your reason to do otherwise", self.reason))
        self.body.addWidget(self.reason)
        self.body.addSpacing(look.HAIR)
        self.body.addLayout(row)
        self.body.addWidget(self.remark)

    def first(self) -> QtWidgets.QWidget:
        """The reason."""
        return self.reason

    def set_width(self, body_px: int) -> None:
        """As wide as text of this size needs."""
        self.setFixedWidth(_WIDTH_EMS * body_px)

    def show_advice(self, guided: Guided) -> None:
        """Say why."""
        self.said.setText(guided.advice.sentence)
        self.why.setText(f"{parts.begun(guided.advice.why)}.")
        self.pass_over.setEnabled(guided.may_pass)
        self._remark("" if guided.may_pass else "This cannot be passed over.")

    def _remark(self, text: str) -> None:
        self.remark.setText(text)
        self.remark.setVisible(bool(text))
        if self.isVisible():  # it stands on its lower edge
            lower = self.geometry().bottom()
            self.adjustSize()
            self.move(self.x(), lower - self.height() + 1)

    def _given(self) -> str:
        text = " ".join(self.reason.text().split())
        if not text:
            self._remark("Write the reason first.")
            self.reason.setFocus()
        return text

    def _pass(self) -> None:
        if text := self._given():
            self.reason.clear()
            self.put_away()
            self.passed.emit(text)

    def _end(self) -> None:
        if text := self._given():
            self.reason.clear()
            self.put_away()
            self.stopped.emit(text)
