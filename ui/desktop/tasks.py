"""Work that takes a while, done beside the screen on a thread with a name; its result comes back to the screen's thread."""

from __future__ import annotations

import subprocess
import threading
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from PySide6 import QtCore

_PATIENCE_S = 5.0  # when the window closes
_EXPECTED = ValueError, OSError, subprocess.SubprocessError  # what work is refused or fails with


@dataclass(frozen=True)
class _Outcome:
    done: Callable[[Any], None]
    failed: Callable[[str], None]
    result: Any
    error: str | None


def why(error: Exception) -> str:
    """What ended the work, in one line; a fault of the program is named as such, and its trace goes where traces go."""
    said = " ".join(str(error).split())
    if isinstance(error, _EXPECTED):
        return said or type(error).__name__
    threading.excepthook(
        threading.ExceptHookArgs((type(error), error, error.__traceback__, threading.current_thread()))
    )
    what = f"{type(error).__name__}: {said}" if said else type(error).__name__
    return f"ended by a fault of the program ({what}); everything recorded before it is kept"


class Tasks(QtCore.QObject):
    """Runs work and hands results back; after `close` no result comes any more."""

    _finished = QtCore.Signal(object)

    def __init__(self, parent: QtCore.QObject | None = None) -> None:
        super().__init__(parent)
        self._threads: list[threading.Thread] = []
        self._closed = False
        self._finished.connect(self._hand_over, QtCore.Qt.ConnectionType.QueuedConnection)

    def run(
        self, name: str, work: Callable[[], Any], done: Callable[[Any], None], failed: Callable[[str], None]
    ) -> None:
        """Do `work` on a thread; then `done` with its result, or `failed` with one line, on this one."""

        def act() -> None:
            try:
                outcome = _Outcome(done, failed, work(), None)
            except Exception as error:  # noqa: BLE001 - without a word from this thread the screen would wait for ever
                outcome = _Outcome(done, failed, None, why(error))
            if not self._closed:
                self._finished.emit(outcome)

        self._threads = [t for t in self._threads if t.is_alive()]
        thread = threading.Thread(target=act, name=name, daemon=True)
        self._threads.append(thread)
        thread.start()

    @property
    def busy(self) -> bool:
        """True while work is under way."""
        return any(t.is_alive() for t in self._threads)

    def _hand_over(self, outcome: _Outcome) -> None:
        if self._closed:
            return
        if outcome.error is None:
            outcome.done(outcome.result)
        else:
            outcome.failed(outcome.error)

    def close(self) -> None:
        """Let go of what is under way, and wait a little for it to end."""
        self._closed = True
        for thread in self._threads:
            thread.join(_PATIENCE_S)
