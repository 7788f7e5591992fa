"""STOP THE MACHINE: over the whole page and with a tone, until a person says that the machine stands."""

from __future__ import annotations

from PySide6 import QtCore, QtWidgets
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.worded import Worded

_TONE_MS = 700
_GROUND, _INK = "#7d0012", "#ffffff"  # in every theme: nothing else looks like it


class StopCall(Worded, QtWidgets.QFrame):
    """Covers what it is told to cover; emits `stands` when the person says that the machine stands."""

    stands = QtCore.Signal()

    def __init__(self, window: QtWidgets.QWidget, over: QtWidgets.QWidget) -> None:
        super().__init__(window)
        self._window = window
        self.hide()
        self.setObjectName("stopCall")
        self._over = over
        self.tones = 0
        self.call = parts.label("STOP THE MACHINE", wrap=True)
        self.why = parts.label("", wrap=True)
        self.note = parts.label(
            "The abort level was agreed with the owner. Keep clear: the rotor turns until it has run out.", wrap=True
        )
        self.answer = parts.button("The machine stands", self._stands, tip="Ends the tone and the recording")
        body = QtWidgets.QVBoxLayout(self)
        body.setContentsMargins(look.WIDE, look.WIDE, look.WIDE, look.WIDE)
        body.setSpacing(look.WIDE)
        body.addStretch(1)
        for each in (self.call, self.why, self.note):
            each.setAlignment(QtCore.Qt.AlignmentFlag.AlignCenter)
            body.addWidget(each)
        row = QtWidgets.QHBoxLayout()
        row.addStretch(1)
        row.addWidget(self.answer)
        row.addStretch(1)
        body.addLayout(row)
        body.addStretch(1)
        self._tone = QtCore.QTimer(self)
        self._tone.setInterval(_TONE_MS)
        self._tone.timeout.connect(self._sound)
        over.installEventFilter(self)

    def set_look(self, body_px: int) -> None:
        """As large as text of this size allows."""
        self.setStyleSheet(
            f"QFrame#stopCall {{ background: {_GROUND}; border: none; }}"
            f"QFrame#stopCall QLabel {{ color: {_INK}; background: {_GROUND}; font-size: {round(1.5 * body_px)}px; }}"
            f"QFrame#stopCall QPushButton {{ background: {_INK}; color: {_GROUND}; border: 3px solid {_INK};"
            f" font-size: {round(1.5 * body_px)}px; font-weight: 600; padding: {look.GAP}px {look.WIDE}px; }}"
            f"QFrame#stopCall QPushButton:focus {{ border-color: {_GROUND}; }}"
        )
        self.call.setStyleSheet(
            f"color: {_INK}; background: {_GROUND}; font-size: {round(4.2 * body_px)}px; font-weight: 600;"
        )

    def say(self, why: str) -> None:
        """Call, and give the figures."""
        self.why.setText(parts.begun(why))
        self.setAccessibleName(f"Stop the machine: {why}")
        if not self.isVisible():
            self._cover()
            self.show()
            self.raise_()
            self.answer.setFocus()
            self._sound()
            self._tone.start()

    def _cover(self) -> None:
        self.setGeometry(QtCore.QRect(self._over.mapTo(self._window, QtCore.QPoint(0, 0)), self._over.size()))

    def _sound(self) -> None:
        self.tones += 1
        QtWidgets.QApplication.beep()

    def _stands(self) -> None:
        self.be_still()
        self.stands.emit()

    def be_still(self) -> None:
        """End the call."""
        self._tone.stop()
        self.hide()

    def eventFilter(self, watched: QtCore.QObject, event: QtCore.QEvent) -> bool:  # noqa: N802 - Qt's name
        """It stays over the whole page."""
        if event.type() in (QtCore.QEvent.Type.Resize, QtCore.QEvent.Type.Move) and self.isVisible():
            self._cover()
        return False
