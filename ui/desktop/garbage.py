"""Reference cycles are collected on the window's thread only.

Python looks for them on whichever thread happens to make objects. Where one holds a widget, Qt's part of it would then be
deleted beside the thread that paints it, which ends the process. While the window is open nothing is looked for by
chance, but by a timer here.
"""

from __future__ import annotations

import gc

from PySide6 import QtCore

_EVERY_MS = 1_000
_OLDER_EVERY, _ALL_EVERY = 10, 60  # looks: most cycles are young


class Garbage(QtCore.QObject):
    """Looks for cycles once a second until closed, older ones less often."""

    def __init__(self, parent: QtCore.QObject) -> None:
        super().__init__(parent)
        self._was = gc.isenabled()
        self._looks = 0
        gc.disable()
        self._timer = QtCore.QTimer(self)
        self._timer.setInterval(_EVERY_MS)
        self._timer.timeout.connect(self.look)
        self._timer.start()

    def spare(self) -> None:
        """What is there now, the pages and all that they need, stays to the end: it is not looked through every time."""
        gc.freeze()

    def look(self) -> None:
        """Take apart what nobody holds any more."""
        self._looks += 1
        gc.collect(2 if self._looks % _ALL_EVERY == 0 else 1 if self._looks % _OLDER_EVERY == 0 else 0)

    def close(self) -> None:
        """As it was before."""
        self._timer.stop()
        gc.unfreeze()
        if self._was:
            gc.enable()
