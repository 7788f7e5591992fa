"""Leads through a job on the simulated rotor: a frame about the control to use next, and one sentence beside it.

What comes next is worked out anew from the job and the window each time, so that it can be left and taken up at any moment.
The person presses the controls themselves; the coach presses none.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import Protocol

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.panel_place import box_of, place
from stillshaft.ui.desktop.worded import Worded
from stillshaft.ui.theme import THEMES, Theme

_LOOK_MS = 200
_WIDTH_EMS = 23
_RING_PX = 4.0
_KEY = "F6"


@dataclass(frozen=True)
class Pointer:
    """What to use next and why: `presses` says that it is to be pressed, else it is to be looked at.

    `choices` are answers that can be given beside it; `over` ends what is led through. Nothing is laid over `line`, what
    is to be read first, and as little as can be over what stands `around` it.
    """

    widget: QtWidgets.QWidget
    sentence: str
    presses: bool = True
    choices: tuple[str, ...] = ()
    over: bool = False
    line: QtWidgets.QWidget | None = None
    around: QtWidgets.QWidget | None = None


class Plan(Protocol):
    """What is led through."""

    name: str

    def pointer(self) -> Pointer:
        """What comes next, by job and window as they are now."""

    def answer(self, choice: str) -> None:
        """The person chose one of the answers."""


class Ring(QtWidgets.QWidget):
    """A thick frame about a control, which lets every press through."""

    def __init__(self, window: QtWidgets.QWidget) -> None:
        super().__init__(window)
        self._theme = THEMES["light"]
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
        self.hide()

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        self.update()

    def go_about(self, box: QtCore.QRect) -> None:
        """Lie about a place of the window."""
        margin = round(_RING_PX) + 2
        wanted = box.adjusted(-margin, -margin, margin, margin)
        if wanted != self.geometry():
            self.setGeometry(wanted)
            outer = QtGui.QRegion(self.rect())
            self.setMask(outer.subtracted(QtGui.QRegion(self.rect().adjusted(margin, margin, -margin, -margin))))

    def paintEvent(self, event: QtGui.QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Draw the frame, in two colours so that it is seen on any ground."""
        painter = QtGui.QPainter(self)
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)
        for width, colour in ((_RING_PX + 2.0, self._theme.ground), (_RING_PX, self._theme.caution)):
            half = 0.5 * _RING_PX + 1.0
            painter.setPen(QtGui.QPen(QtGui.QColor(colour), width))
            painter.drawRoundedRect(QtCore.QRectF(self.rect()).adjusted(half, half, -half, -half), 8.0, 8.0)
        painter.end()


class Callout(Worded, QtWidgets.QFrame):
    """One sentence beside the control; emits `left` when the person has enough, `answered` with a choice."""

    left = QtCore.Signal()
    answered = QtCore.Signal(str)

    def __init__(self, window: QtWidgets.QWidget) -> None:
        super().__init__(window)
        self.hide()
        self.setObjectName("viewPanel")
        self.called = parts.label("", "quiet", wrap=True)
        self.text = parts.label("", "sentence", wrap=True)
        self.leave = parts.button("Leave", self.left.emit, tip="Leave it here; the Job panel goes on with it")
        self.go = parts.button(f"Go there ({_KEY})", lambda: None, tip="Put the keyboard on the control to use next")
        self.answers = [parts.button("", partial(self._answer, number)) for number in range(3)]
        self._choices: tuple[str, ...] = ()
        body = QtWidgets.QVBoxLayout(self)
        body.setContentsMargins(look.ROOM, look.GAP, look.ROOM, look.GAP)
        body.setSpacing(look.TIGHT)
        for each in (self.called, self.text, *self.answers):
            body.addWidget(each)
        row = QtWidgets.QHBoxLayout()
        row.setSpacing(look.TIGHT)
        row.addWidget(self.go)
        row.addStretch(1)
        row.addWidget(self.leave)
        body.addLayout(row)

    def _answer(self, number: int) -> None:
        self.answered.emit(self._choices[number])

    def show_pointer(self, name: str, pointer: Pointer) -> None:
        """Say what comes next."""
        self._choices = pointer.choices
        self.called.setText(name)
        self.text.setText(pointer.sentence)
        for number, each in enumerate(self.answers):
            each.setVisible(number < len(pointer.choices))
            if number < len(pointer.choices):
                each.setText(pointer.choices[number])
                each.setAccessibleName(pointer.choices[number])
        self.go.setVisible(pointer.presses and not pointer.choices)
        self.leave.setText("Finish" if pointer.over else "Leave")
        self.leave.setAccessibleName(self.leave.text())
        self.setAccessibleName(name)
        self.setAccessibleDescription(pointer.sentence)


class Coach(QtCore.QObject):
    """Shows what comes next of a plan. `reveal` brings a control into sight; `ended` tells that it was left or is over."""

    ended = QtCore.Signal()

    def __init__(self, window: QtWidgets.QMainWindow, reveal: Callable[[QtWidgets.QWidget], None]) -> None:
        super().__init__(window)
        self._window, self._reveal = window, reveal
        self.plan: Plan | None = None
        self.pointer: Pointer | None = None
        self.ring, self.callout = Ring(window), Callout(window)
        self.callout.left.connect(self.leave)
        self.callout.answered.connect(self._answer)
        self.callout.go.clicked.connect(lambda _checked=False: self.go_there())
        self._key = QtGui.QShortcut(QtGui.QKeySequence(_KEY), window)
        self._key.activated.connect(self.go_there)
        self._key.setEnabled(False)
        self._timer = QtCore.QTimer(self)
        self._timer.setInterval(_LOOK_MS)
        self._timer.timeout.connect(self.look)

    def set_look(self, theme: Theme, sheet: str, body_px: int) -> None:
        """Colours and text size."""
        self.callout.setStyleSheet(sheet)
        self.callout.setFixedWidth(_WIDTH_EMS * body_px)
        self.ring.set_theme(theme)
        self._put()

    def begin(self, plan: Plan) -> None:
        """Lead through a plan from where it stands."""
        self.plan, self.pointer = plan, None
        self._timer.start()
        self._key.setEnabled(True)
        self.look()

    def leave(self) -> None:
        """Lead no more; the job stays as it is."""
        if self.plan is None:
            return
        self.plan, self.pointer = None, None
        self._timer.stop()
        self._key.setEnabled(False)
        self.ring.hide()
        self.callout.hide()
        self.ended.emit()

    def look(self) -> None:
        """See what comes next."""
        if self.plan is None:
            return
        pointer = self.plan.pointer()
        if pointer != self.pointer:
            moved = self.pointer is None or pointer.widget is not self.pointer.widget
            self.pointer = pointer
            if moved:
                self._reveal(pointer.widget)
            self.callout.show_pointer(self.plan.name, pointer)
            self._tell(pointer.sentence)
        self._put()

    def go_there(self) -> None:
        """Put the keyboard on the control to use next."""
        if self.pointer is not None and self.pointer.presses:
            self._reveal(self.pointer.widget)
            self.pointer.widget.setFocus(QtCore.Qt.FocusReason.OtherFocusReason)

    def _answer(self, choice: str) -> None:
        if self.plan is not None:
            self.plan.answer(choice)
            self.look()

    def _put(self) -> None:
        """Ring and sentence at the control, where it is in sight now."""
        if self.pointer is None:
            return
        widget = self.pointer.widget
        self.ring.setVisible(widget.isVisible())
        self.ring.go_about(box_of(widget, self._window))
        place(self.callout, self.pointer.line or widget, self._window, self.pointer.around)
        for each in (self.ring, self.callout):
            each.raise_()
        self.callout.show()

    def _tell(self, sentence: str) -> None:
        """A screen reader says it at once."""
        event = QtGui.QAccessibleAnnouncementEvent(self.callout, sentence)
        QtGui.QAccessible.updateAccessibility(event)
