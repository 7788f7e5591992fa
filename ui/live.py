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
from typing import TYPE_CHECKING

from stillshaft.acquire.hookup import Hookup, with_skew
from stillshaft.dsp.measure import Measurement, Measuring

if TYPE_CHECKING:
    from stillshaft.acquire.keeper import RecordingSummary
    from stillshaft.acquire.process import Acquisition
    from stillshaft.acquire.source import SourceRequest

_RESULTS_PER_S = 5.0
_LONGEST_S = 180.0  # then the figures begin anew: an afternoon's watching must not fill the memory


@dataclass(frozen=True)
class Snapshot:
    """What there is to show: the newest measurement or why there is none, and how far a recording is.

    `recorded` is the summary of a recording that has just ended; `ended` says why the source stopped.
    """

    number: int
    seconds: float
    measured: Measurement | None
    trouble: str | None
    recording_share: float | None
    recorded: RecordingSummary | None
    ended: str | None


class Live:
    """Runs a source until closed."""

    def __init__(self, request: SourceRequest, hookup: Hookup) -> None:
        self.latest: Snapshot | None = None
        self._request, self._hookup = request, hookup
        self._orders: queue.SimpleQueue[tuple[Path, float]] = queue.SimpleQueue()
        self._stop = threading.Event()
        self._number = 0
        self._thread = threading.Thread(target=self._run, name="measuring", daemon=True)
        self._thread.start()

    def record(self, path: Path, seconds: float) -> None:
        """Record so many seconds from now on; the figures begin anew with the recording."""
        self._orders.put((path, seconds))

    def close(self) -> None:
        """Stop the source and wait for the thread."""
        self._stop.set()
        self._thread.join(timeout=5.0)

    def _run(self) -> None:
        from stillshaft.acquire.process import Acquisition
        from stillshaft.acquire.source import SourceError

        try:
            with Acquisition(self._request) as acquisition:
                self._measure(acquisition)
        except (SourceError, OSError) as error:
            self._post(0.0, None, None, ended=str(error))

    def _fresh(self, acquisition: Acquisition) -> Measuring:
        hookup = with_skew(self._hookup, acquisition.skew_s)
        return Measuring(acquisition.rate_hz, hookup.pulse, hookup.points, hookup.display)

    def _measure(self, acquisition: Acquisition) -> None:
        measuring = self._fresh(acquisition)
        due = 0.0
        wanted: int | None = None
        while not self._stop.is_set():
            if not self._orders.empty():
                path, seconds = self._orders.get()
                wanted = round(seconds * acquisition.rate_hz)
                names = self._hookup.channel_names(acquisition.channels)
                acquisition.record(path, self._hookup.table, names, seconds=seconds)
                measuring = self._fresh(acquisition)
            block = acquisition.read()
            if block is not None and len(block.samples):
                try:
                    measuring.feed(block.samples, block.lost_before)
                except ValueError as error:
                    self._post(0.0, None, str(error))
                    measuring = self._fresh(acquisition)
            elif acquisition.failure is None:
                time.sleep(0.005)
            finished = acquisition.finished_recording() if wanted is not None else None
            if block is None and acquisition.failure is not None:
                self._show(measuring, acquisition.rate_hz, None, finished, ended=acquisition.failure)
                return
            if time.monotonic() >= due or finished is not None:
                due = time.monotonic() + 1.0 / _RESULTS_PER_S
                share = None if wanted is None else min(1.0, measuring.frames / wanted)
                self._show(measuring, acquisition.rate_hz, share, finished)
                wanted = None if finished is not None else wanted
            if wanted is None and measuring.frames > _LONGEST_S * acquisition.rate_hz:
                measuring = self._fresh(acquisition)

    def _show(
        self,
        measuring: Measuring,
        rate_hz: float,
        share: float | None,
        finished: RecordingSummary | None,
        ended: str | None = None,
    ) -> None:
        measured, trouble = None, None
        try:
            measured = measuring.result(last=ended is not None) if measuring.frames else None
        except ValueError as error:
            trouble = str(error)
        self._post(measuring.frames / rate_hz, measured, trouble, share, finished, ended)

    def _post(
        self,
        seconds: float,
        measured: Measurement | None,
        trouble: str | None,
        share: float | None = None,
        recorded: RecordingSummary | None = None,
        ended: str | None = None,
    ) -> None:
        # a summary not yet fetched must not be lost to a newer result
        kept = self.latest.recorded if self.latest is not None and recorded is None else recorded
        self._number += 1
        self.latest = Snapshot(self._number, seconds, measured, trouble, share, kept, ended)
