"""Checks of what is wired up: signals as they come in, at standstill, and by a tap at each sensor.

Each becomes evidence in the open job, with its recording where one was made for it. Source and disk are worked with on
threads; nothing here waits.
"""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np
from PySide6 import QtCore
from stillshaft.acquire import process
from stillshaft.acquire.hookup import Hookup
from stillshaft.acquire.recording import Recorder, events_path
from stillshaft.acquire.source import SourceRequest
from stillshaft.dsp import check
from stillshaft.ui import job_checks, wiring
from stillshaft.ui.desktop.feed import SIMULATED, Feed, Status, order_for
from stillshaft.ui.desktop.hookup_sources import standing_order, tapped_order
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.work_row import WorkRow
from stillshaft.ui.job_checks import Checked
from stillshaft.ui.session import Session

STANDSTILL_S = 5.0
SIGNALS, STANDSTILL, TAPS = job_checks.SIGNALS, "check at standstill", "tap check"
_RECORDED = "Recorded as evidence in the job."
Report = Callable[[float, str], None]


class Borrowed:
    """Has the source let go before something else opens it, and lets it run again afterwards."""

    def __init__(self, feed: Feed) -> None:
        self._feed = feed
        self._begin: Callable[[], None] | None = None
        self._ran = False
        feed.changed.connect(self._go_on)

    def take(self, begin: Callable[[], None]) -> None:
        """Call `begin` as soon as the source is free."""
        self._ran = self._feed.status in (Status.STARTING, Status.RUNNING)
        self._begin = begin
        if self._feed.status is not Status.STOPPED:
            self._feed.stop()
        self._go_on()

    def give_back(self) -> None:
        """Let the source run again, if it ran before."""
        if self._ran:
            self._ran = False
            self._feed.start()

    def _go_on(self) -> None:
        if self._begin is not None and self._feed.status is Status.STOPPED:
            begin, self._begin = self._begin, None
            begin()


class Checks(QtCore.QObject):
    """Makes one check at a time on `row`.

    `asked` brings what the person is to do, `told` each finding of the tap check at once, `found` the name of a check
    with all its findings, `failed` why there are none, empty where it was broken off. `recorded` tells that it is in the job.
    """

    asked = QtCore.Signal(str)
    told = QtCore.Signal(object)
    found = QtCore.Signal(str, tuple)
    failed = QtCore.Signal(str)
    recorded = QtCore.Signal(str)
    _prompted = QtCore.Signal(str)
    _heard = QtCore.Signal(object)

    def __init__(
        self, feed: Feed, job: Callable[[], OpenJob | None], row: WorkRow, borrowed: Borrowed, *, real_time: bool = True
    ) -> None:
        super().__init__(feed)
        self._feed, self._job, self._row, self._borrowed = feed, job, row, borrowed
        self._real_time = real_time
        self._seed = 0
        self.busy = False
        queued = QtCore.Qt.ConnectionType.QueuedConnection
        self._prompted.connect(self.asked, queued)
        self._heard.connect(self.told, queued)

    def standstill(self, hookup: Hookup) -> None:
        """The machine stands: listen for some seconds whether there are pulses."""

        def work(report: Report, request: SourceRequest, path: Path) -> Checked:
            names = hookup.channel_names(hookup.channels)
            process.capture(request, path, STANDSTILL_S, hookup.table, names, report)
            report(1.0, "looking at it")
            return replace(job_checks.signals(path, hookup, None, stopped=True), what=STANDSTILL)

        def order(seed: int) -> SourceRequest:
            if self._feed.choice == SIMULATED:
                return standing_order(self._feed.teaching, seed, real_time=self._real_time)
            return self._real_order(hookup, seed)

        self._make(work, order)

    def taps(self, hookup: Hookup) -> None:
        """The machine stands: ask for a tap at each sensor in turn."""

        def work(report: Report, request: SourceRequest, _path: Path) -> Checked:
            done: list[check.Finding] = []

            def told(finding: check.Finding) -> None:
                done.append(finding)
                self._heard.emit(finding)

            def waiting() -> None:
                report(len(done) / len(hookup.points), f"{len(done)} of {len(hookup.points)} sensors")

            found = wiring.tap_each(request, hookup, self._prompted.emit, told=told, waiting=waiting)
            return job_checks.findings(TAPS, found)

        def order(seed: int) -> SourceRequest:
            if self._feed.choice == SIMULATED:
                return tapped_order(hookup, self._feed.teaching, seed)
            return self._real_order(hookup, seed)

        self._make(work, order)

    def _real_order(self, hookup: Hookup, seed: int) -> SourceRequest:
        feed = self._feed
        request = order_for(feed.choice, hookup.table, feed.teaching, seed, real_time=self._real_time)[1]
        assert request is not None  # only a source without a hook-up has none
        return request

    def _make(
        self,
        work: Callable[[Report, SourceRequest, Path], Checked],
        order: Callable[[int], SourceRequest],
    ) -> None:
        """Free the source, have a place for the recording, work on a thread, record what was found."""
        if self.busy:
            return
        self.busy = True
        self._seed += 1
        seed, job = self._seed, self._job()

        def begin(place: Path | None) -> None:
            folder = tempfile.TemporaryDirectory()
            path = place or Path(folder.name) / "check.au"

            def act(report: Report) -> tuple[Checked, Path | None]:
                try:
                    made = work(report, order(seed), path)
                except BaseException:
                    for left in (path, events_path(path)):
                        left.unlink(missing_ok=True)
                    raise
                finally:
                    folder.cleanup()
                return made, place if path.exists() else None

            self._row.run(act, self._done, self._failed)

        def free() -> None:
            if job is None:
                begin(None)
            else:
                job.act(_place, begin, self._failed)

        self._borrowed.take(free)

    def _done(self, made: tuple[Checked, Path | None]) -> None:
        checked_now, path = made
        self._over()
        self.found.emit(checked_now.what, _findings(checked_now))

        def act(session: Session) -> str:
            session.record_check(checked_now, path)
            return _RECORDED

        self._record(act)

    def _failed(self, why: str) -> None:
        self._over()
        self.failed.emit(why)

    def _over(self) -> None:
        self.busy = False
        self._borrowed.give_back()

    def _record(self, act: Callable[[Session], str]) -> None:
        """Do it to the job and say what it says."""
        job = self._job()
        if job is not None:
            job.act(
                act,
                lambda said: self.recorded.emit(said),
                lambda why: self.recorded.emit(f"Not recorded in the job: {why}."),
            )

    def record_signals(self, findings: tuple[check.Finding, ...]) -> None:
        """Make the feed's check of what came in evidence in the job, with the samples it was made of."""
        looked_at = self._feed.looked_at
        assert looked_at is not None  # the findings are of them
        samples, rate_hz, wired = looked_at
        description, table = self._feed.choice.name, self._feed.table or wired.table

        def act(session: Session) -> str:
            session.refuse_closed()
            path = session.job.next_recording()
            recorder = Recorder(path, rate_hz, wired.channel_names(samples.shape[1]), description, wired.table)
            recorder.write(np.ascontiguousarray(samples))
            recorder.close(complete=True)
            if session.hookup is None:
                session.wire(table)
            before = session.state.hookup
            session.record_check(job_checks.signals_found(samples, rate_hz, wired, findings), path)
            if session.state.hookup == before or session.hookup is None:
                return _RECORDED
            return f"{_RECORDED} The {session.hookup.pulse.edge} edge of the pulse is kept for all runs."

        self._record(act)


def _place(session: Session) -> Path:
    session.refuse_closed()
    return session.job.next_recording()


def _findings(made: Checked) -> tuple[check.Finding, ...]:
    return tuple(check.Finding(**f) for f in made.figures["findings"])
