"""Undo and redo of the record, as buttons in a page's head and with the usual keys."""

from __future__ import annotations

from collections.abc import Callable

from PySide6 import QtWidgets
from stillshaft.ui.desktop import parts
from stillshaft.ui.desktop.open_job import OpenJob


class UndoButtons:
    """Two buttons on the job that is open; `say` shows what came of them, an empty text: nothing to be said."""

    def __init__(self, job: OpenJob, say: Callable[[str], None]) -> None:
        self._job, self._say = job, say
        self.undo = parts.button(
            "&Undo", lambda: self._step("undo"), tip="Take back the last entry of the record (Ctrl+Z)"
        )
        self.redo = parts.button("Redo", lambda: self._step("redo"), tip="Put back what was undone (Ctrl+Shift+Z)")
        self.undo.setShortcut("Ctrl+Z")  # the window leaves these keys to a page that has such buttons
        self.redo.setShortcut("Ctrl+Shift+Z")

    @property
    def both(self) -> tuple[QtWidgets.QPushButton, QtWidgets.QPushButton]:
        """The buttons."""
        return self.undo, self.redo

    def renew(self) -> None:
        """There while a job is open, and of use where it takes entries."""
        shown = self._job.shown
        for each in self.both:
            each.setVisible(shown is not None)
            each.setEnabled(shown is not None and not shown.read_only)

    def _step(self, which: str) -> None:
        def done(event: object) -> None:
            self._say("" if event is not None else f"There is nothing to {which}.")

        self._say("")
        self._job.act(lambda session: getattr(session, which)(), done, lambda why: self._say(f"{parts.begun(why)}."))
