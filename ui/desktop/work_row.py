"""A row that shows how far work on a thread is, and lets the person break it off."""

from __future__ import annotations

import threading
from collections.abc import Callable
from typing import Any

from PySide6 import QtCore, QtWidgets
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.tasks import Tasks
from stillshaft.ui.desktop.worded import ProgressBar

_SHOWN_EVERY_MS = 100


class BrokenOff(ValueError):  # noqa: N818 - not an error: the person wanted it
    """The person broke the work off."""


class WorkRow(QtWidgets.QWidget):
    """Progress and “Break off”; hidden while nothing runs. `run` does one piece of work at a time."""

    def __init__(self, name: str) -> None:
        super().__init__()
        row = QtWidgets.QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(look.TIGHT)
        self.bar = ProgressBar()
        self.bar.setRange(0, 100)
        self.bar.setTextVisible(False)
        self.bar.setFixedHeight(12)
        self.bar.setAccessibleName(f"{name}: how far it is")
        self.text = parts.label("", "small")
        self.cancel = parts.button("Break &off", self.break_off, tip=f"Stop {name}; nothing is lost")
        row.addWidget(self.bar, 1)
        row.addWidget(self.text, 2)
        row.addWidget(self.cancel)
        self.hide()
        self._name = name
        self._tasks = Tasks(self)
        self._stop = threading.Event()
        self._said: tuple[float, str] = (0.0, "")
        self._timer = QtCore.QTimer(self)
        self._timer.setInterval(_SHOWN_EVERY_MS)
        self._timer.timeout.connect(self._show)

    @property
    def busy(self) -> bool:
        """True while work is under way."""
        return self._tasks.busy

    def run(
        self,
        work: Callable[[Callable[[float, str], None]], Any],
        done: Callable[[Any], None],
        failed: Callable[[str], None],
    ) -> None:
        """Do `work(report)` on a thread; `failed` gets one line, an empty one when the person broke it off."""
        self.break_off()
        stop = self._stop = threading.Event()
        self._said = (0.0, "")

        def report(share: float, text: str) -> None:
            if stop.is_set():
                raise BrokenOff
            self._said = (share, text)  # replaced as a whole: the screen reads it when it likes

        def act() -> Any:
            result = work(report)
            if stop.is_set():
                raise BrokenOff
            return result

        def over(then: Callable[[Any], None], result: Any) -> None:
            if self._stop is not stop:  # other work was asked for meanwhile
                return
            self._timer.stop()
            self.hide()
            then(result)

        self._tasks.run(
            self._name, act, lambda result: over(done, result),
            lambda why: over(failed, "" if stop.is_set() else why),
        )  # fmt: skip
        self._timer.start()
        self._show()
        self.show()

    def break_off(self) -> None:
        """Ask the work to end; it does so at its next report."""
        self._stop.set()

    def _show(self) -> None:
        share, text = self._said
        self.bar.setValue(round(100.0 * min(1.0, max(0.0, share))))
        self.text.setText(text)

    def close_down(self) -> None:
        """Stop, and wait a little for it."""
        self._timer.stop()
        self.break_off()
        self._tasks.close()
