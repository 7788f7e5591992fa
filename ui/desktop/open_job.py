"""The job that all pages show. Acts on it are done on one thread of its own, in their order; pages see what came of them.

The session belongs to that thread, so that a slow disk never holds the screen. What pages see is replaced as a whole.
"""

from __future__ import annotations

import queue
import threading
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from PySide6 import QtCore
from stillshaft.acquire.hookup import Hookup, HookupError
from stillshaft.solver.diagnosis import Diagnosis
from stillshaft.solver.guidance import Advice
from stillshaft.solver.guidance import Stage as StageSaid
from stillshaft.solver.inspection import Check
from stillshaft.solver.next_steps import StageName
from stillshaft.solver.state import JobState
from stillshaft.ui.desktop import tasks
from stillshaft.ui.session import Session

_PATIENCE_S = 20.0  # when the window closes: what was typed must reach the disk
Failed = Callable[[str], None]


@dataclass(frozen=True)
class Shown:
    """A job as it stands after an act: nothing in it changes any more.

    `problems` are those of the record when it was opened; `entries` counts its entries.
    """

    folder: Path
    by: str
    read_only: bool
    entries: int
    state: JobState
    hookup: Hookup | None
    checks: tuple[Check, ...]
    diagnosis: Diagnosis
    problems: tuple[str, ...]


@dataclass(frozen=True)
class Guided:
    """What the guidance says of a job with so many entries; `may_pass`: the person may pass over the advice."""

    folder: Path
    entries: int
    advice: Advice
    stages: dict[StageName, StageSaid]
    may_pass: bool


class OpenJob(QtCore.QObject):
    """Opens, begins and closes jobs, and does what the person does to the one that is open.

    `changed` tells that `shown` is another one, `advised` that `guided` is, `refused` what an act that nobody looks after
    was refused for.
    """

    changed = QtCore.Signal()
    advised = QtCore.Signal()
    refused = QtCore.Signal(str)
    _finished = QtCore.Signal(int, object)
    _worked_out = QtCore.Signal(object)
    _no_advice = QtCore.Signal(str)

    def __init__(self, parent: QtCore.QObject | None = None) -> None:
        super().__init__(parent)
        self.shown: Shown | None = None
        self.guided: Guided | None = None
        self._made_guided: Guided | None = None  # of the thread
        self._session: Session | None = None  # of the thread
        self._problems: tuple[str, ...] = ()
        self._made: Shown | None = None
        self._waiting: queue.SimpleQueue[int | None] = queue.SimpleQueue()
        self._errands = tasks.Errands()
        self._closed = False
        self._thread: threading.Thread | None = None
        self._finished.connect(self._hand_over, QtCore.Qt.ConnectionType.QueuedConnection)
        self._worked_out.connect(self._take_guided, QtCore.Qt.ConnectionType.QueuedConnection)
        self._no_advice.connect(self.refused, QtCore.Qt.ConnectionType.QueuedConnection)

    # what the person does

    def open(
        self, folder: Path, by: str, *, done: Callable[[Any], None] | None = None, failed: Failed | None = None
    ) -> None:
        """Go on with a job; the one before is closed once this one is open."""
        self._put(lambda: self._take(folder, lambda: Session.open(folder, by=by)), done, failed)

    def create(
        self,
        folder: Path,
        name: str,
        by: str,
        *,
        done: Callable[[Any], None] | None = None,
        failed: Failed | None = None,
    ) -> None:
        """Begin a job in a new folder."""
        self._put(lambda: self._take(folder, lambda: Session.create(folder, name, by)), done, failed)

    def next_visit(
        self, folder: Path, name: str, by: str, earlier: Path,
        *, done: Callable[[Any], None] | None = None, failed: Failed | None = None,
    ) -> None:  # fmt: skip
        """Begin a job with brief, hook-up and coefficients of an earlier one."""
        self._put(lambda: self._take(folder, lambda: Session.next_visit(folder, name, by, earlier)), done, failed)

    def act(
        self, work: Callable[[Session], Any], done: Callable[[Any], None] | None = None, failed: Failed | None = None
    ) -> None:
        """Do something with the session; then `done` with its result, or `failed` with one line, on this thread."""

        def on_session() -> Any:
            if self._session is None:
                raise ValueError("no job is open: begin one or open one on the Brief page")
            return work(self._session)

        self._put(on_session, done, failed)

    def ask_again(self) -> None:
        """Have the guidance worked out again: time passed."""

        def forget() -> None:
            self._made_guided = None

        if self.shown is not None:
            self._put(forget, None, None)

    @property
    def busy(self) -> bool:
        """True while something is being done."""
        return len(self._errands) > 0

    def close(self) -> None:
        """Finish what was asked for, then close the job."""
        if self._closed:
            return
        self._closed = True
        if self._thread is not None:
            self._waiting.put(None)
            self._thread.join(_PATIENCE_S)

    # how it is done

    def _put(self, work: Callable[[], Any], done: Callable[[Any], None] | None, failed: Failed | None) -> None:
        if self._closed:
            return
        if self._thread is None:
            self._thread = threading.Thread(target=self._work, name="job", daemon=True)
            self._thread.start()
        self._waiting.put(self._errands.put(work, done, failed))

    def _work(self) -> None:
        """On the thread: one act after the other, until there is no more."""
        while (number := self._next()) is not None:
            self._errands.run(number, self._look)
            if not self._closed:
                self._finished.emit(number, self._made)
        if self._session is not None:
            self._session.close()
            self._session = None

    def _next(self) -> int | None:
        """On the thread: the next act; while there is none, what the guidance says is worked out."""
        try:
            return self._waiting.get_nowait()
        except queue.Empty:
            try:
                self._advise()
            except Exception as problem:  # noqa: BLE001 - the job goes on without advice
                self._no_advice.emit(f"what is next cannot be told: {tasks.why(problem)}")
            return self._waiting.get()

    def _advise(self) -> None:
        """On the thread: ask the guidance, if the job moved."""
        from stillshaft.solver import next_steps

        session, before = self._session, self._made_guided
        if session is None or self._closed:
            return
        at = session.folder, len(session.job.events)
        if before is not None and (before.folder, before.entries) == at:
            return
        advice, stages = session.advice(), session.stages()
        may_pass = next_steps.act_named(advice.act).passed != "never"
        self._made_guided = Guided(*at, advice, stages, may_pass)
        if not self._closed:
            self._worked_out.emit(self._made_guided)

    def _take(self, folder: Path, opened: Callable[[], Session]) -> None:
        """On the thread: put another session in place of the one there is."""
        if self._session is not None and self._session.folder.resolve() == folder.resolve():
            return
        session = opened()
        if self._session is not None:
            self._session.close()
        self._session, self._problems, self._made = session, session.problems, None

    def _look(self) -> None:
        """On the thread: see where the job stands, if it moved."""
        from stillshaft.solver import diagnosis
        from stillshaft.ui import job_checks

        session = self._session
        if session is None or (self._made is not None and self._made.entries == len(session.job.events)):
            return
        problems = self._problems
        try:
            hookup = session.hookup
        except HookupError as error:
            hookup, problems = None, (*problems, str(error))
        self._made = Shown(
            session.folder, session.job.by, session.job.read_only, len(session.job.events), session.state, hookup,
            session.checks(), diagnosis.diagnose(job_checks.from_record(session.state)), problems,
        )  # fmt: skip

    def _take_guided(self, guided: Guided) -> None:
        """On the screen's thread: tell, unless another job is open by now."""
        if not self._closed and self.shown is not None and guided.folder == self.shown.folder:
            self.guided = guided
            self.advised.emit()

    def _hand_over(self, number: int, shown: Shown | None) -> None:
        """On the screen's thread: tell."""
        end = self._errands.take(number)
        if self._closed:
            return
        if shown is not self.shown:
            self.shown = shown
            self.changed.emit()
        unheard = end()
        if unheard is not None:
            self.refused.emit(unheard)
