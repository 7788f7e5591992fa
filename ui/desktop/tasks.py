"""Work that takes a while, done beside the screen on a thread with a name; its result comes back to the screen's thread."""

from __future__ import annotations

import itertools
import subprocess
import threading
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from PySide6 import QtCore

_PATIENCE_S = 5.0  # when the window closes
_EXPECTED = ValueError, OSError, subprocess.SubprocessError  # what work is refused or fails with


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


@dataclass(frozen=True)
class _Errand:
    """Something to do on another thread, and what follows on the screen's: `done` with its result, `failed` with one line."""

    work: Callable[[], Any]
    done: Callable[[Any], None] | None
    failed: Callable[[str], None] | None


class Errands:
    """Errands and what came of them by number, which is all that other threads hold of them.

    An errand may be the last that holds a widget. Were it let go on another thread while Qt destroys that widget on the
    screen's, the process would end: here it is the screen's thread that lets go.
    """

    def __init__(self) -> None:
        self._errands: dict[int, _Errand] = {}
        self._came: dict[int, tuple[Any, str | None]] = {}
        self._numbers = itertools.count(1)

    def __len__(self) -> int:
        return len(self._errands)

    def put(
        self, work: Callable[[], Any], done: Callable[[Any], None] | None, failed: Callable[[str], None] | None
    ) -> int:
        """Keep one; on the screen's thread."""
        number = next(self._numbers)
        self._errands[number] = _Errand(work, done, failed)
        return number

    def run(self, number: int, after: Callable[[], None] | None = None) -> None:
        """Do its work, and `after` it whatever came of it; on another thread, which holds nothing of it afterwards."""
        result, error = None, None
        try:
            try:
                result = self._errands[number].work()
            finally:
                if after is not None:
                    after()
        except Exception as problem:  # noqa: BLE001 - without a word from this thread the screen would wait for ever
            error = why(problem)
        self._came[number] = result, error

    def take(self, number: int) -> Callable[[], str | None]:
        """Its work is done: what calls `done` or `failed`, and gives an error that nobody looks after; on the screen's thread."""
        errand, (result, error) = self._errands.pop(number), self._came.pop(number)

        def end() -> str | None:
            if error is None:
                if errand.done is not None:
                    errand.done(result)
            elif errand.failed is not None:
                errand.failed(error)
            else:
                return error
            return None

        return end


class Tasks(QtCore.QObject):
    """Runs work and hands results back; after `close` no result comes any more."""

    _finished = QtCore.Signal(int)

    def __init__(self, parent: QtCore.QObject | None = None) -> None:
        super().__init__(parent)
        self._threads: list[threading.Thread] = []
        self._errands = Errands()
        self._closed = False
        self._finished.connect(self._hand_over, QtCore.Qt.ConnectionType.QueuedConnection)

    def run(
        self, name: str, work: Callable[[], Any], done: Callable[[Any], None], failed: Callable[[str], None]
    ) -> None:
        """Do `work` on a thread; then `done` with its result, or `failed` with one line, on this one."""
        self._threads = [t for t in self._threads if t.is_alive()]
        number = self._errands.put(work, done, failed)
        thread = threading.Thread(target=self._work, args=(number,), name=name, daemon=True)
        self._threads.append(thread)
        thread.start()

    def _work(self, number: int) -> None:
        """On the thread."""
        self._errands.run(number)
        if not self._closed:
            self._finished.emit(number)

    @property
    def busy(self) -> bool:
        """True until the result of all work was handed over."""
        return len(self._errands) > 0

    def _hand_over(self, number: int) -> None:
        end = self._errands.take(number)
        if not self._closed:
            end()

    def close(self) -> None:
        """Let go of what is under way, and wait a little for it to end."""
        self._closed = True
        for thread in self._threads:
            thread.join(_PATIENCE_S)
