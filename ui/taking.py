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
from stillshaft.dsp.units import InputError

if TYPE_CHECKING:
    from stillshaft.acquire.source import SourceRequest
    from stillshaft.dsp.steadiness import Steadiness

_SHOWN_EVERY_S = 0.5
_JUDGED_EVERY_S = 1.0


class TakingError(InputError):
    """A run that cannot be taken as asked: the message says why."""


@dataclass(frozen=True)
class Stop:
    """When a run ends: after `seconds` at the latest, or as soon as all else that is asked for is reached.

    `interval` are the wanted 95 % half widths, percent of the amplitude and degrees; it is not reached before the verdict
    on each point is told, nothing drifts, and a beat was seen whole.
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

    Raises SourceError where the source does not open or is lost before anything came, HookupError where it has too few
    inputs, RecordingError for a name in use.
    """
    if path.exists():
        raise RecordingError(f"{path}: is there already; choose a new name")
    order = RecordingOrder(path, hookup.table, tuple(hookup.channel_names(hookup.channels)), stop.seconds)
    with Acquisition(request, recording=order) as acquisition:
        hookup.refuse_fewer_inputs(acquisition.channels, acquisition.description)
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
            enough = reached(self._stop, self.measured)
        if enough is not None or time.monotonic() >= self._due_s:
            self._due_s = time.monotonic() + _SHOWN_EVERY_S
            self._show(Progress(seconds, self.measured, trouble, remaining_s(self._stop, self.measured, seconds)))
        return enough


def reached(stop: Stop, measured: Measurement | None) -> str | None:
    """What ends the run before its time, "revolutions" or "interval"; None while it is not enough."""
    if measured is None:
        return None
    asked = []
    if stop.revolutions is not None:
        asked.append(measured.points[0].revolutions >= stop.revolutions)
    if stop.interval is not None:
        settled = all(_settled(p.steadiness) for p in measured.points)
        asked.append(settled and _excess(measured, stop.interval) <= 1.0)
    if not asked or not all(asked):
        return None
    return "interval" if stop.interval is not None else "revolutions"


def _settled(judged: Steadiness) -> bool:
    whole = judged.beat is None or judged.beat.record_in_beats >= 1.0
    return judged.verdict not in ("too-short", "drifting") and whole


def _excess(measured: Measurement, interval: tuple[float, float]) -> float:
    """The widest interval over the one wanted."""
    percent, degrees = interval
    worst = 0.0
    for p in measured.points:
        if p.amplitude_ci95 is None or p.phase_ci95_deg is None or p.z == 0.0:
            return math.inf
        worst = max(worst, 100.0 * p.amplitude_ci95 / abs(p.z) / percent, p.phase_ci95_deg / degrees)
    return worst


def needed_s(stop: Stop, measured: Measurement, seconds: float) -> float:
    """How long the whole run takes until it is enough, as far as can be told: intervals go down with the root of time."""
    wanted_s = [stop.seconds] if stop.revolutions is None and stop.interval is None else []
    if stop.revolutions is not None:
        wanted_s.append(60.0 * stop.revolutions / measured.speed.mean_rpm)
    if stop.interval is not None:
        wanted_s.append(seconds * _excess(measured, stop.interval) ** 2)
    return max(wanted_s)


def remaining_s(stop: Stop, measured: Measurement | None, seconds: float) -> float | None:
    """How long yet; None where it cannot be told."""
    longest = max(0.0, stop.seconds - seconds)
    if measured is None:
        return None if stop.interval or stop.revolutions else longest
    return min(longest, max(0.0, needed_s(stop, measured, seconds) - seconds))
