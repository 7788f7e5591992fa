"""Taking one run: the source is recorded and measured as it comes, until time, revolutions or the interval suffices."""

from __future__ import annotations

import math
import re
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from stillshaft.acquire.hookup import Hookup, with_skew
from stillshaft.acquire.keeper import RecordingOrder, RecordingSummary
from stillshaft.acquire.process import Acquisition
from stillshaft.acquire.recording import RecordingError
from stillshaft.acquire.source import SourceLost
from stillshaft.dsp.measure import Measurement, Measuring

if TYPE_CHECKING:
    from stillshaft.acquire.source import SourceRequest

_SHOWN_EVERY_S = 0.5
_JUDGED_EVERY_S = 1.0


class TakingError(ValueError):
    """A run that cannot be taken as asked: the message says why."""


@dataclass(frozen=True)
class Stop:
    """When a run ends: after `seconds` at the latest, or as soon as all else that is asked for is reached.

    `interval` are the wanted 95 % half widths, percent of the amplitude and degrees.
    """

    seconds: float
    revolutions: int | None = None
    interval: tuple[float, float] | None = None


@dataclass(frozen=True)
class Progress:
    """What there is to show of a run under way; `remaining_s` is how long it will take yet, as far as can be told."""

    seconds: float
    measured: Measurement | None
    trouble: str | None
    remaining_s: float | None


@dataclass(frozen=True)
class Taken:
    """A run that has ended: its recording and what ended it."""

    summary: RecordingSummary
    ended_by: str


def interval_from(text: str) -> tuple[float, float]:
    """Read half widths such as "2 % 1 deg". Raises TakingError."""
    match = re.fullmatch(r"\s*(\d+(?:\.\d+)?)\s*%\s*,?\s*(\d+(?:\.\d+)?)\s*(?:deg|°)\s*", text)
    if not match or not (float(match[1]) > 0.0 and float(match[2]) > 0.0):
        raise TakingError(f'interval "{text}": write percent of the amplitude and degrees, such as "2 % 1 deg"')
    return float(match[1]), float(match[2])


def take(
    request: SourceRequest,
    path: Path,
    hookup: Hookup,
    stop: Stop,
    on_progress: Callable[[Progress], None],
) -> Taken:
    """Record and measure until it is enough. Interrupted, the recording is closed and kept, and the interrupt goes on.

    Raises SourceError where the source does not open or is lost before anything came, RecordingError for a name in use.
    """
    if path.exists():
        raise RecordingError(f"{path}: is there already; choose a new name")
    order = RecordingOrder(path, hookup.table, tuple(hookup.channel_names(hookup.channels)), stop.seconds)
    with Acquisition(request, recording=order) as acquisition:
        if hookup.channels > acquisition.channels:
            raise TakingError(f"the source has {acquisition.channels} inputs, but the hook-up uses {hookup.channels}")
        run = _Run(acquisition, with_skew(hookup, acquisition.skew_s), stop, on_progress)
        try:
            while (summary := acquisition.finished_recording()) is None:
                if (enough := run.step()) is not None:
                    return Taken(acquisition.stop_recording(enough=True), enough)
        except KeyboardInterrupt:
            acquisition.stop_recording()
            raise
        if summary.frames == 0 and summary.reason:
            raise SourceLost(summary.reason)
        return Taken(summary, "time" if summary.complete else summary.reason or "the source ended")


class _Run:
    """The measuring of a run under way."""

    def __init__(
        self, acquisition: Acquisition, hookup: Hookup, stop: Stop, on_progress: Callable[[Progress], None]
    ) -> None:
        self._acquisition, self._stop, self._show = acquisition, stop, on_progress
        self._measuring = Measuring(acquisition.rate_hz, hookup.pulse, hookup.points, hookup.display)
        self._broken: str | None = None
        self._due_s = 0.0
        self._judged_s = 0.0  # of the record
        self.measured: Measurement | None = None

    def step(self) -> str | None:
        """Measure what has come, show it, and say what is reached, if it is enough."""
        block = self._acquisition.read()
        if block is not None and self._broken is None:
            try:
                self._measuring.feed(block.samples, block.lost_before)
            except ValueError as error:
                self._broken = str(error)
        elif block is None:
            time.sleep(0.01)
        seconds = self._measuring.frames / self._acquisition.rate_hz
        enough = None
        trouble = self._acquisition.trouble or self._broken
        if seconds >= self._judged_s + _JUDGED_EVERY_S and self._broken is None:
            self._judged_s = seconds
            try:
                self.measured = self._measuring.result(last=False)
            except ValueError as error:
                trouble = trouble or str(error)
            enough = self._enough()
        if enough is not None or time.monotonic() >= self._due_s:
            self._due_s = time.monotonic() + _SHOWN_EVERY_S
            self._show(Progress(seconds, self.measured, trouble, self._remaining(seconds)))
        return enough

    def _enough(self) -> str | None:
        if self.measured is None:
            return None
        asked = []
        if self._stop.revolutions is not None:
            asked.append(self.measured.points[0].revolutions >= self._stop.revolutions)
        if self._stop.interval is not None:
            settled = all(p.steadiness.verdict != "too-short" for p in self.measured.points)
            asked.append(settled and self._excess() <= 1.0)
        if not asked or not all(asked):
            return None
        return "interval" if self._stop.interval is not None else "revolutions"

    def _excess(self) -> float:
        """The widest interval over the one wanted."""
        assert self._stop.interval is not None
        assert self.measured is not None
        percent, degrees = self._stop.interval
        worst = 0.0
        for p in self.measured.points:
            if p.amplitude_ci95 is None or p.phase_ci95_deg is None or p.z == 0.0:
                return math.inf
            worst = max(worst, 100.0 * p.amplitude_ci95 / abs(p.z) / percent, p.phase_ci95_deg / degrees)
        return worst

    def _remaining(self, seconds: float) -> float | None:
        """How long yet: intervals go down with the root of time."""
        longest = max(0.0, self._stop.seconds - seconds)
        if self.measured is None:
            return None if self._stop.interval or self._stop.revolutions else longest
        wanted_s = []
        if self._stop.revolutions is not None:
            wanted_s.append(60.0 * self._stop.revolutions / self.measured.speed.mean_rpm)
        if self._stop.interval is not None:
            wanted_s.append(seconds * self._excess() ** 2)
        return longest if not wanted_s else min(longest, max(0.0, max(wanted_s) - seconds))
