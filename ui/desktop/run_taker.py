"""Taking a run: recorded through the source that runs, then measured, judged and recorded by the job; and the abort levels.

The recording is kept by the acquisition process, whatever becomes of the window. What is measured of it is worked out on
the job's thread.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6 import QtCore
from stillshaft.dsp import units
from stillshaft.solver import run_checks, run_vectors
from stillshaft.solver.replay import run_fields
from stillshaft.solver.state import JobState
from stillshaft.ui.desktop.feed import Feed, Status
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.simulator import Fitted
from stillshaft.ui.live import Snapshot
from stillshaft.ui.session import RunTaken, Session, Wanted
from stillshaft.ui.session_base import SessionError
from stillshaft.ui.taking import Stop

if TYPE_CHECKING:
    from stillshaft.dsp.measure import Measurement
    from stillshaft.solver.events import Run
    from stillshaft.ui.desktop.watch import Watch

_POLL_MS = 100
_RECENT_S = 1.0  # of short-time vectors, that an abort level is held against


class RunTaker(QtCore.QObject):
    """Takes one run at a time.

    `changed` tells that it came further, `taken` brings what came of it, `failed` why there is no run.
    """

    changed = QtCore.Signal()
    taken = QtCore.Signal(object)  # RunTaken
    failed = QtCore.Signal(str)

    def __init__(self, feed: Feed, job: OpenJob, parent: QtCore.QObject | None = None) -> None:
        super().__init__(parent)
        self._feed, self._job = feed, job
        self.doing = ""  # what is done now, in words; empty: nothing
        self.recording = False
        self.share = 0.0
        self.stop: Stop | None = None
        self._wanted: Wanted | None = None
        self._path: Path | None = None
        self._watch: Watch | None = None
        self._told: tuple[float, str] = (0.0, "")
        self._timer = QtCore.QTimer(self)
        self._timer.setInterval(_POLL_MS)
        self._timer.timeout.connect(self._poll)
        feed.measured.connect(self._look)
        feed.changed.connect(self._source_changed)

    @property
    def path(self) -> Path | None:
        """The recording under way."""
        return self._path if self.doing else None

    def record(self, wanted: Wanted, stop: Stop) -> None:
        """Record a run from now on; the first one gives the job its hook-up where it has none."""
        if self.doing:
            return
        table = self._feed.table
        if self._feed.status is not Status.RUNNING or table is None:
            self.failed.emit("no source runs: start it first")
            return

        def ready(session: Session) -> tuple[Path, dict[str, Any]]:
            session.refuse_closed()
            if wanted.name is not None and session.state.run(wanted.name) is not None:
                raise SessionError(f'run "{wanted.name}": is there already; give it another name')
            if session.hookup is None:
                session.wire(table)
            assert session.hookup is not None
            return session.job.next_recording(), session.hookup.table

        self._wanted, self.stop = wanted, stop
        self._say("getting ready")
        self._job.act(ready, self._go, self._fail)

    def measure(self, path: Path, wanted: Wanted) -> None:
        """Make a run of a recording."""
        if not self.doing:
            self._wanted, self._path = wanted, path
            self._measure()

    def end(self) -> None:
        """It is enough."""
        if self.recording and self._watch is not None:
            self._watch.end_recording(enough=True)
            self._say("closing the recording")

    def break_off(self) -> None:
        """No run is made of it; the recording is kept and marked incomplete."""
        if self.recording and self._watch is not None:
            self._watch.end_recording(enough=False)
            self._say("breaking off")

    # what comes of it

    def _say(self, doing: str, share: float = 0.0) -> None:
        self.doing, self.share = doing, share
        self.changed.emit()

    def _go(self, ready: tuple[Path, dict[str, Any]]) -> None:
        self._path, table = ready
        self._watch = self._feed.watch
        if self._watch is None or self.stop is None:
            self._fail("the source was stopped before the run began")
            return
        self.recording = True
        self._watch.record(self._path, self.stop, table)
        self._say("recording")

    def _look(self, snapshot: Snapshot) -> None:
        if not self.recording:
            return
        summary = snapshot.recorded
        if summary is not None and summary.path == self._path:
            if summary.complete:
                self.recording = False
                self._measure()
            else:
                reason = summary.reason or "the recording ended early"
                self._fail(f"{reason}; {summary.seconds:.0f} s are kept as {summary.path.name}, marked incomplete")
        elif self.doing == "recording" or self.doing.startswith("recording,"):
            self._say(f"recording, {snapshot.seconds:.0f} s", snapshot.recording_share or 0.0)

    def _source_changed(self) -> None:
        if self.recording and self._feed.watch is not self._watch:
            why = self._feed.trouble or "the source was stopped"
            name = "" if self._path is None else self._path.name
            self._fail(f"{why}; what was recorded is kept as {name}, marked incomplete")

    def _measure(self) -> None:
        path, wanted = self._path, self._wanted
        assert path is not None
        self._told = (0.0, "measuring")
        self._say("measuring")
        self._timer.start()

        def report(share: float, text: str) -> None:
            self._told = (share, text)

        self._job.act(lambda session: session.add_run(path, wanted, report), self._done, self._fail)

    def _poll(self) -> None:
        share, text = self._told
        self._say(text, share)

    def _rest(self) -> None:
        self._timer.stop()
        self.recording, self._watch = False, None
        self._say("")

    def _done(self, taken: RunTaken) -> None:
        self._rest()
        self.taken.emit(taken)

    def _fail(self, why: str) -> None:
        self._rest()
        self.failed.emit(why)


def fitted_of(state: JobState) -> Fitted:
    """What the record has on the rotor, for the simulated one; a piece at another radius counts by its moment."""
    planes = {p.name: p for p in state.brief.planes}
    pieces = []
    for on in state.on_rotor:
        plane, share = planes.get(on.piece.plane), 1.0
        if on.piece.radius_mm is not None and plane is not None and plane.radius is not None:
            share = on.piece.radius_mm / units.parse(plane.radius, "mm", f'plane "{plane.name}".radius')
        pieces.append((on.piece.plane, on.piece.mass_g * share, on.piece.angle_deg))
    return Fitted(tuple(planes), tuple(pieces))


def newest_run(measured: Measurement) -> Run:
    """What the last second shows, as a run."""
    recent = measured.times_s >= measured.times_s[-1] - _RECENT_S
    points = tuple(replace(p, z=complex(p.blocks[recent].mean())) for p in measured.points)
    return run_vectors.run_from(run_fields(replace(measured, points=points)))


class AbortWatch(QtCore.QObject):
    """Holds what runs against the abort levels of the job; `crossed` brings the figures, once for each point.

    The whole of a run may show a crossing that no figure on the way did: its alarm is then recorded with it, and called too.
    """

    crossed = QtCore.Signal(str)

    def __init__(self, feed: Feed, job: OpenJob, parent: QtCore.QObject | None = None) -> None:
        super().__init__(parent)
        self._feed, self._job = feed, job
        self._called: set[str] = set()
        self._folder: Path | None = None
        self._last = 0  # alarm of the record that was seen
        feed.measured.connect(self._look)
        job.changed.connect(self._follow)

    def forget(self) -> None:
        """The machine stands: the next crossing calls again."""
        self._called.clear()

    def _look(self, snapshot: Snapshot) -> None:
        shown, measured = self._job.shown, snapshot.measured
        if shown is None or measured is None or not shown.state.brief.abort or self._feed.replays:
            return
        run = newest_run(measured)
        for point, (value, level) in run_checks.crossed_levels(shown.state, run):
            if point in self._called:
                continue
            self._called.add(point)
            self._job.act(_alarm(point, value, level, run.unit), None, lambda _why: None)
            self._call(point, value, level, run.unit)

    def _follow(self) -> None:
        shown = self._job.shown
        alarms = () if shown is None else shown.state.alarms
        folder, seen = None if shown is None else shown.folder, self._last
        self._last = max((a.id for a in alarms), default=0)
        if folder != self._folder:  # those of a job that is opened were called when they happened
            self._folder = folder
            return
        for what in (a.what for a in alarms if a.id > seen):
            if not what.note and what.point not in self._called:  # a note: it was made before
                self._called.add(what.point)
                self._call(what.point, what.amplitude, what.level, what.unit)

    def _call(self, point: str, value: float, level: float, unit: str) -> None:
        self.crossed.emit(f"{point} is at {value:.3g} {unit}; the abort level is {level:.3g} {unit}.")


def _alarm(point: str, value: float, level: float, unit: str) -> Callable[[Session], object]:
    return lambda session: session.record_alarm(point, value, level, unit)
