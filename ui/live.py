"""A source running: its samples are measured on one thread, and the newest result lies in a one-slot mailbox.

Two activities: the measuring thread reads the acquisition process and may wait for it; the screen polls `latest` on
a timer and never waits. Results are replaced as a whole, so a slow screen skips some and never lags.
"""

from __future__ import annotations

import queue
import threading
import time
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from stillshaft.acquire.hookup import Hookup, with_skew
from stillshaft.dsp.measure import Measurement, Measuring
from stillshaft.ui import heap, taking
from stillshaft.ui.taking import Stop

if TYPE_CHECKING:
    from stillshaft.acquire.keeper import RecordingSummary
    from stillshaft.acquire.process import Acquisition
    from stillshaft.acquire.source import SourceRequest

_RESULTS_PER_S = 5.0
LONGEST_S = 180.0  # then the figures begin anew: an afternoon's watching must not fill the memory


@dataclass(frozen=True)
class Snapshot:
    """What there is to show: the newest measurement or why there is none, and how far a recording is.

    `recording_share` and `remaining_s` say how far a recording is, None where none is under way or it cannot be told;
    `recorded` is the summary of the last one that ended, `ended_by` what ended it; `lost` says what is wrong while a
    source that fell silent is waited for, `ended` why the source stopped.
    """

    number: int
    seconds: float
    measured: Measurement | None
    trouble: str | None
    recording_share: float | None
    recorded: RecordingSummary | None
    ended: str | None
    remaining_s: float | None = None
    ended_by: str | None = None
    lost: str | None = None


@dataclass(frozen=True)
class _Order:
    """A recording to begin; `table` is the hook-up that it is to carry."""

    path: Path
    stop: Stop
    table: dict[str, Any]


@dataclass(frozen=True)
class _End:
    """The recording under way is to end; `enough`: it is complete all the same."""

    enough: bool


class Live:
    """Runs a source until closed."""

    def __init__(self, request: SourceRequest, hookup: Hookup) -> None:
        self.latest: Snapshot | None = None
        self._request, self._hookup = request, hookup
        self._orders: queue.SimpleQueue[_Order | _End] = queue.SimpleQueue()
        self._under_way: _Order | None = None
        self._ended_by: str | None = None
        self._stop = threading.Event()
        self._number = 0
        heap.map_large_arrays()
        self._thread = threading.Thread(target=self._run, name="measuring", daemon=True)
        self._thread.start()

    def record(self, path: Path, stop: Stop, table: dict[str, Any] | None = None) -> None:
        """Record from now on until it is enough; the figures begin anew with the recording.

        `table` is the hook-up that it carries, the one that is measured with unless given.
        """
        self._orders.put(_Order(path, stop, table or self._hookup.table))

    def end_recording(self, *, enough: bool) -> None:
        """End the recording; `enough`: it is complete all the same."""
        self._orders.put(_End(enough))

    def close(self) -> None:
        """Stop the source and wait for the thread."""
        self._stop.set()
        self._thread.join(timeout=5.0)

    def _run(self) -> None:
        from stillshaft.acquire.process import Acquisition

        try:
            with Acquisition(self._request) as acquisition:
                self._hookup.refuse_fewer_inputs(acquisition.channels, acquisition.description)
                self._measure(acquisition)
        except Exception as error:  # noqa: BLE001 - without a word from this thread the screen would wait for ever
            self._post(0.0, None, None, ended=_why(error))

    def _fresh(self, acquisition: Acquisition) -> Measuring:
        hookup = with_skew(self._hookup, acquisition.skew_s)
        return Measuring(acquisition.rate_hz, hookup.pulse, hookup.points, hookup.display)

    def _measure(self, acquisition: Acquisition) -> None:
        measuring = self._fresh(acquisition)
        due = 0.0
        while not self._stop.is_set():
            if not self._orders.empty():
                measuring = self._obey(self._orders.get(), acquisition, measuring)
            block = acquisition.read()
            if block is not None and len(block.samples):
                try:
                    measuring.feed(block.samples, block.lost_before)
                except ValueError as error:
                    self._post(0.0, None, str(error))
                    measuring = self._fresh(acquisition)
            elif acquisition.failure is None:
                time.sleep(0.005)
            finished = acquisition.finished_recording() if self._under_way is not None else None
            if block is None and acquisition.failure is not None:
                self._show(measuring, acquisition, finished, ended=acquisition.failure)
                return
            if time.monotonic() >= due or finished is not None:
                due = time.monotonic() + 1.0 / _RESULTS_PER_S
                self._show(measuring, acquisition, finished)
                self._end_where_enough(acquisition)
            if finished is not None:
                self._under_way = None
            if self._under_way is None and measuring.frames > LONGEST_S * acquisition.rate_hz:
                measuring = self._fresh(acquisition)
        self._show(measuring, acquisition, None)  # samples may have come faster than they were shown

    def _obey(self, order: _Order | _End, acquisition: Acquisition, measuring: Measuring) -> Measuring:
        """Begin a recording, with fresh figures, or end the one under way."""
        if isinstance(order, _End):
            if self._under_way is not None and self._ended_by is None:
                self._ended_by = "hand"
                acquisition.end_recording(enough=order.enough)
            return measuring
        self._under_way, self._ended_by = order, None
        names = self._hookup.channel_names(acquisition.channels)
        acquisition.record(order.path, order.table, names, seconds=order.stop.seconds)
        return self._fresh(acquisition)

    def _end_where_enough(self, acquisition: Acquisition) -> None:
        newest = self.latest
        if self._under_way is None or self._ended_by is not None or newest is None:
            return
        enough = taking.reached(self._under_way.stop, newest.measured)
        if enough is not None:
            self._ended_by = enough
            acquisition.end_recording(enough=True)

    def _show(
        self,
        measuring: Measuring,
        acquisition: Acquisition,
        finished: RecordingSummary | None,
        ended: str | None = None,
    ) -> None:
        measured, trouble = None, None
        try:
            measured = measuring.result(last=ended is not None) if measuring.frames else None
        except ValueError as error:
            trouble = str(error)
        self._post(measuring.frames / acquisition.rate_hz, measured, trouble, finished, ended, acquisition.trouble)

    def _post(
        self,
        seconds: float,
        measured: Measurement | None,
        trouble: str | None,
        recorded: RecordingSummary | None = None,
        ended: str | None = None,
        lost: str | None = None,
    ) -> None:
        share = remaining = None
        if self._under_way is not None:
            stop = self._under_way.stop
            remaining = taking.remaining_s(stop, measured, seconds)
            share = min(1.0, seconds / (stop.seconds if remaining is None else max(1e-3, seconds + remaining)))
        # a summary not yet fetched must not be lost to a newer result
        kept = self.latest.recorded if self.latest is not None and recorded is None else recorded
        ended_by = (self._ended_by or "time") if kept is not None else None
        self._number += 1
        self.latest = Snapshot(self._number, seconds, measured, trouble, share, kept, ended, remaining, ended_by, lost)


def _why(error: Exception) -> str:
    """What ended the measuring, in one line; a fault of the program is named as such."""
    if isinstance(error, OSError) or type(error).__module__.startswith("stillshaft."):
        return " ".join(str(error).split())
    what = " ".join(f"{type(error).__name__}: {error}".split())
    return f"measuring ended by a fault of the program ({what}); start the source again"
