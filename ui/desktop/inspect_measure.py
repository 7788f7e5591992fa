"""Measured checks made in place: recorded from a source or brought in as a file, worked out beside the screen, recorded.

The recording and the working out are done on a thread; what is found becomes an entry of the record through the session.
"""

from __future__ import annotations

import contextlib
import threading
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

# what the checks are worked out with: loaded while one is made, it would make the screen wait
import scipy.signal  # noqa: F401
import stillshaft.dsp.average
import stillshaft.dsp.content
import stillshaft.dsp.ringdown
import stillshaft.dsp.standing
import stillshaft.dsp.sweep  # noqa: F401
from PySide6 import QtCore
from stillshaft.acquire.hookup import Hookup
from stillshaft.dsp.units import InputError
from stillshaft.solver.events import Event
from stillshaft.solver.state import JobState
from stillshaft.ui import job_checks, taking
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.tasks import Tasks
from stillshaft.ui.job_checks import Checked
from stillshaft.ui.session import Session
from stillshaft.ui.taking import Progress

if TYPE_CHECKING:
    from stillshaft.acquire.source import SourceRequest
    from stillshaft.dsp.measure import Measurement

_POLL_MS = 100
_RECORDING_SHARE = 0.8  # of the time that a check from a source takes
Report = Callable[[float, str], None]


@dataclass(frozen=True)
class Kind:
    """A kind of measured check: what it is for the session, its title, how long it records, and what to do meanwhile."""

    what: str
    title: str
    seconds: float
    do: str


KINDS = {
    kind.what: kind
    for kind in (
        Kind("signals", "Signal check", 10.0, "Let the machine run at its usual speed."),
        Kind("spectrum", "Spectrum, directions, steadiness", 40.0, "Hold speed and load steady."),
        Kind("sweep", "Coast-down or run-up", 60.0, "Press, then switch the machine off and let it coast down."),
        Kind("bump", "Bump test", 12.0, "The machine stands, isolated and locked: three clear blows, each rung out."),
        Kind("background", "Neighbours with this machine stopped", 30.0, "This machine stands, the others run as usual."),
        Kind("repeatability", "Two initial runs against each other", 0.0, "Needs two runs without masses, from the Runs page."),
    )
}  # fmt: skip
BY_CHECK = {
    "pulse": ("signals",),
    "spectrum": ("spectrum",),
    "directions": ("spectrum",),
    "overhung": ("spectrum",),
    "steady": ("spectrum",),
    "electrical": ("spectrum",),
    "repeatable": ("repeatability",),
    "resonance": ("sweep", "bump"),
    "background": ("background",),
}
RECORDED_AS = {"signals": "signal check"}  # what the record calls it, where it is another word


_BROKEN_OFF = "broken off; nothing was recorded"


class MeasureError(InputError):
    """A check that could not be made: the message says why, and what became of the recording."""


class CancelledError(MeasureError):
    """The person broke it off."""


def newest(state: JobState, what: str) -> Event[Any] | None:
    """The newest recorded check of a kind."""
    name = RECORDED_AS.get(what, what)
    return next((e for e in reversed(state.measured) if e.what.what == name), None)


def work_out(what: str, path: Path, hookup: Hookup, state: JobState, report: Report) -> Checked:
    """What a recording says. Raises the errors of the measurement."""
    first = state.runs[0].what if state.runs else None
    running_rpm = state.brief.rotor.speed_rpm or (None if first is None else first.speed_rpm)
    report(0.0, "working it out")
    if what == "signals":
        return job_checks.signals(path, hookup, running_rpm, report)
    if what == "spectrum":
        return job_checks.spectrum(path, hookup, report, state.brief)
    if what == "sweep":
        return job_checks.sweep(path, hookup, running_rpm, report)
    if what == "bump":
        return job_checks.bump(path, hookup, running_rpm, report)
    levels = {} if first is None else {v.point: v.amplitude for v in first.vectors}
    return job_checks.background(path, hookup, running_rpm, levels, report)


class _Attempt:
    """A check that is being made; what the thread tells of it, and whether it is to be broken off."""

    def __init__(self, what: str) -> None:
        self.what = what
        self.told = (0.0, "getting ready")
        self.recording = False
        self.seen: Measurement | None = None  # of the recording so far
        self._stop = threading.Event()

    def report(self, share: float, text: str) -> None:
        """On the thread: how far it is. Raises CancelledError once it is to be broken off."""
        if self._stop.is_set():
            raise CancelledError(_BROKEN_OFF)
        self.told = (share, text)

    def heard(self, wanted_s: float, progress: Progress) -> None:
        """On the thread: how far the recording is."""
        self.seen = progress.measured or self.seen
        trouble = "" if progress.trouble is None else f", {progress.trouble}"
        share = _RECORDING_SHARE * min(1.0, progress.seconds / wanted_s)
        self.report(share, f"recording, {progress.seconds:.0f} s{trouble}")

    def worked(self, share: float, text: str) -> None:
        """On the thread: how far the working out of a new recording is."""
        self.report(_RECORDING_SHARE + (1.0 - _RECORDING_SHARE) * share, text)

    def stop(self) -> None:
        """Break it off."""
        self._stop.set()

    def record(
        self, path: Path, hookup: Hookup, state: JobState, order: Callable[[Hookup], SourceRequest]
    ) -> tuple[Path, Checked]:
        """On the thread: record from a source, and work it out."""
        kind = KINDS[self.what]
        self.recording = True
        try:
            taken = taking.take(
                order(hookup), path, hookup, taking.Stop(kind.seconds), lambda p: self.heard(kind.seconds, p)
            )
        except CancelledError:
            for left in (path, path.with_suffix(".events.jsonl")):
                with contextlib.suppress(OSError):
                    left.unlink(missing_ok=True)
            raise
        finally:
            self.recording = False
        if not taken.summary.complete:
            reason = taken.summary.reason or "the recording ended early"
            raise MeasureError(f"{reason}; what was recorded is kept as {path.name}")
        try:
            return path, work_out(self.what, path, hookup, state, self.worked)
        except CancelledError:
            raise
        except ValueError as error:
            raise MeasureError(f"{error}; the recording is kept as {path.name}") from error


class Measuring(QtCore.QObject):
    """Makes one check at a time.

    `changed` tells that it began, came further or ended; `measured` brings the entry and what was found, `failed` why it
    was not made.
    """

    changed = QtCore.Signal()
    measured = QtCore.Signal(object, object)  # event, Checked
    failed = QtCore.Signal(str, str)  # what, why

    def __init__(self, job: OpenJob, parent: QtCore.QObject | None = None) -> None:
        super().__init__(parent)
        self._job = job
        self._tasks = Tasks(self)
        self._attempt: _Attempt | None = None
        self.share, self.text = 0.0, ""
        self._timer = QtCore.QTimer(self)
        self._timer.setInterval(_POLL_MS)
        self._timer.timeout.connect(self._poll)

    @property
    def what(self) -> str | None:
        """The check that is under way."""
        return None if self._attempt is None else self._attempt.what

    @property
    def seen(self) -> Measurement | None:
        """What the recording that is under way has shown so far."""
        return None if self._attempt is None else self._attempt.seen

    def from_runs(self, what: str = "repeatability") -> None:
        """A check that the runs of the record suffice for."""
        if (attempt := self._begin(what)) is not None:
            self._job.act(lambda session: session.check(what), self._done(attempt), self._fail(attempt))

    def from_recording(self, what: str, recording: Path) -> None:
        """A check on a recording, which is copied into the job."""
        if (attempt := self._begin(what)) is None:
            return

        def bring(session: Session) -> tuple[Path, Hookup, JobState]:
            path = session.brought_in(recording)
            return path, session.wired_for(path), session.state

        def go_on(brought: tuple[Path, Hookup, JobState]) -> None:
            path, hookup, state = brought
            self._run(attempt, lambda: (path, work_out(what, path, hookup, state, attempt.report)))

        self._job.act(bring, go_on, self._fail(attempt))

    def from_source(self, what: str, order: Callable[[Hookup], SourceRequest]) -> None:
        """A check recorded here and now; `order` is called on the thread."""
        if (attempt := self._begin(what)) is None:
            return

        def ready(session: Session) -> tuple[Path, Hookup, JobState]:
            session.refuse_closed()
            if session.hookup is None:
                raise MeasureError("the job has no hook-up yet: set it on the Hook-up page")
            return session.job.next_recording(), session.hookup, session.state

        def go_on(found: tuple[Path, Hookup, JobState]) -> None:
            path, hookup, state = found
            self._run(attempt, lambda: attempt.record(path, hookup, state, order))

        self._job.act(ready, go_on, self._fail(attempt))

    def cancel(self) -> None:
        """Break off what is under way; nothing of it becomes an entry."""
        attempt = self._attempt
        if attempt is None:
            return
        attempt.stop()
        if attempt.recording:  # the source is let go first
            self.text = "breaking off"
            self.changed.emit()
        else:
            self._fail(attempt)(_BROKEN_OFF)

    def close(self) -> None:
        """Break off, and wait for the thread."""
        self._timer.stop()
        if self._attempt is not None:
            self._attempt.stop()
        self._tasks.close()

    def _begin(self, what: str) -> _Attempt | None:
        if self._attempt is not None:
            return None
        self._attempt = _Attempt(what)
        self.share, self.text = self._attempt.told
        self._timer.start()
        self.changed.emit()
        return self._attempt

    def _run(self, attempt: _Attempt, work: Callable[[], tuple[Path, Checked]]) -> None:
        def found(result: tuple[Path, Checked]) -> None:
            path, checked = result
            if attempt is self._attempt:
                self._job.act(
                    lambda s: (s.record_check(checked, path), checked), self._done(attempt), self._fail(attempt)
                )

        if attempt is self._attempt:
            self._tasks.run("measured check", work, found, self._fail(attempt))

    def _poll(self) -> None:
        if self._attempt is not None and self._attempt.told != (self.share, self.text):
            self.share, self.text = self._attempt.told
            self.changed.emit()

    def _end(self) -> None:
        self._attempt = None
        self._timer.stop()
        self.changed.emit()

    def _done(self, attempt: _Attempt) -> Callable[[tuple[Event[Any], Checked]], None]:
        def tell(found: tuple[Event[Any], Checked]) -> None:
            if attempt is self._attempt:
                self._end()
                self.measured.emit(*found)

        return tell

    def _fail(self, attempt: _Attempt) -> Callable[[str], None]:
        def tell(why: str) -> None:
            if attempt is self._attempt:
                self._end()
                self.failed.emit(attempt.what, why)

        return tell
