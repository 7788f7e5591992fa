"""Taking one run: the source is recorded and measured as it comes, until time, revolutions or the interval suffices."""

from __future__ import annotations

import math
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
from stillshaft.acquire.hookup import Hookup, with_skew
from stillshaft.acquire.keeper import RecordingOrder, RecordingSummary
from stillshaft.acquire.process import Acquisition
from stillshaft.acquire.recording import RecordingError
from stillshaft.acquire.source import SourceLost
from stillshaft.dsp import units
from stillshaft.dsp.measure import Measurement, Measuring, PointVector
from stillshaft.dsp.units import InputError

if TYPE_CHECKING:
    from numpy.typing import NDArray
    from stillshaft.acquire.source import SourceRequest
    from stillshaft.dsp.steadiness import Steadiness
    from stillshaft.ui.settling import Watched

_SHOWN_EVERY_S = 0.5
_JUDGED_EVERY_S = 1.0
_EVEN_PERCENT, _EVEN_S = 0.5, 10.0  # by which the speed may be off, for how long, before a run ends by itself


class TakingError(InputError):
    """A run that cannot be taken as asked: the message says why."""


@dataclass(frozen=True)
class Stop:
    """When a run ends: after `seconds` at the latest, or as soon as all else that is asked for is reached.

    That is not before the speed was even for ten seconds. `interval` are the wanted 95 % half widths, percent of the
    amplitude and degrees; it is not reached before the verdict on each point is told, nothing drifts, and a beat was seen
    whole.
    """

    seconds: float
    revolutions: int | None = None
    interval: tuple[float, float] | None = None


@dataclass(frozen=True)
class Progress:
    """What there is to show of a run under way; `remaining_s` is how long it will take yet, as far as can be told.

    `settling` says how 1x moves, `waiting` that it is waited for to settle and nothing is recorded yet; `missing` is what
    a run that ends by itself waits for.
    """

    seconds: float
    measured: Measurement | None
    trouble: str | None
    remaining_s: float | None
    settling: str | None = None
    waiting: bool = False
    missing: tuple[str, ...] = ()


@dataclass(frozen=True)
class Taken:
    """A run that has ended: its recording and what ended it; how the machine settled before it, where that was watched."""

    summary: RecordingSummary
    ended_by: str
    settled: Watched | None = None


def interval_from(text: str) -> tuple[float, float]:
    """Read half widths such as "2 % 1 deg". Raises TakingError."""
    match = units.whole_match(r"\s*(\d+(?:\.\d+)?)\s*%\s*,?\s*(\d+(?:\.\d+)?)\s*(?:deg|°)\s*", text)
    if not match or not (float(match[1]) > 0.0 and float(match[2]) > 0.0):
        raise TakingError(
            f'interval "{units.shown(text)}": write percent of the amplitude and degrees, such as "2 % 1 deg"'
        )
    return float(match[1]), float(match[2])


def take(
    request: SourceRequest,
    path: Path,
    hookup: Hookup,
    stop: Stop,
    on_progress: Callable[[Progress], None],
    settle_s: float | None = None,
) -> Taken:
    """Record and measure until it is enough. Interrupted, the recording is closed and kept, and the interrupt goes on.

    With `settle_s` the machine is watched first until it has settled, for so long at the most. Raises SourceError where the
    source does not open or is lost before anything came, HookupError where it has too few inputs, RecordingError for a name
    in use.
    """
    if path.exists():
        raise RecordingError(f"{path}: is there already; choose a new name")
    order = RecordingOrder(path, hookup.table, tuple(hookup.channel_names(hookup.channels)), stop.seconds)
    with Acquisition(request, recording=order if settle_s is None else None) as acquisition:
        hookup.refuse_fewer_inputs(acquisition.channels, acquisition.description)
        settled = None
        if settle_s is not None:
            settled = _until_settled(acquisition, with_skew(hookup, acquisition.skew_s), settle_s, on_progress)
            acquisition.record(path, hookup.table, order.channel_names, seconds=stop.seconds)
        run = _Run(acquisition, with_skew(hookup, acquisition.skew_s), stop, on_progress)
        try:
            while (summary := acquisition.finished_recording()) is None:
                if (enough := run.step()) is not None:
                    return Taken(acquisition.stop_recording(enough=True), enough, settled)
        except KeyboardInterrupt:
            acquisition.stop_recording()
            raise
        if summary.frames == 0 and summary.reason:
            raise SourceLost(summary.reason)
        return Taken(summary, "time" if summary.complete else summary.reason or "the source ended", settled)


def _until_settled(
    acquisition: Acquisition, hookup: Hookup, longest_s: float, on_progress: Callable[[Progress], None]
) -> Watched:
    """Watch 1x. Raises SourceLost where the source ends before that."""
    from stillshaft.ui import settling

    def read() -> tuple[NDArray[np.floating[Any]], int | None] | None:
        block = acquisition.read()
        if block is not None:
            return block.samples, block.lost_before
        if acquisition.failure is not None:
            raise SourceLost(acquisition.failure)
        time.sleep(0.01)
        return None

    def show(watched: Watched, measured: Measurement | None, trouble: str | None) -> None:
        said = trouble or acquisition.trouble
        on_progress(Progress(watched.seconds, measured, said, None, watched.sentence, waiting=True))

    return settling.until_settled(read, settling.Watch(acquisition.rate_hz, hookup), longest_s, show)


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
            left = remaining_s(self._stop, self.measured, seconds)
            waits = () if self.measured is None else missing(self._stop, self.measured)
            self._show(Progress(seconds, self.measured, trouble, left, self._settling(), missing=waits))
        return enough

    def _settling(self) -> str | None:
        from stillshaft.ui import settling

        return None if self.measured is None else settling.of_measurement(self.measured).sentence


def reached(stop: Stop, measured: Measurement | None) -> str | None:
    """What ends the run before its time, "revolutions" or "interval"; None while it is not enough."""
    if measured is None or (stop.revolutions is None and stop.interval is None) or missing(stop, measured):
        return None
    return "interval" if stop.interval is not None else "revolutions"


def missing(stop: Stop, measured: Measurement) -> tuple[str, ...]:
    """What a run that ends by itself waits for, in words; none: it is enough, or only time ends it."""
    found = []
    if stop.revolutions is not None and (left := stop.revolutions - measured.points[0].revolutions) > 0:
        found.append(f"{left} more revolution{'' if left == 1 else 's'}")
    if stop.revolutions is not None or stop.interval is not None:
        found += _speed_missing(measured)
    if stop.interval is not None:
        found += dict.fromkeys(m for p in measured.points if (m := _verdict_missing(p.name, p.steadiness)))
        found += _interval_missing(measured, stop.interval)
    return tuple(found)


def _speed_missing(measured: Measurement) -> list[str]:
    """The speed within 0.5 % for 10 s: common practice, no source."""
    ends_s = measured.times_s[-1]
    if ends_s - measured.times_s[0] < _EVEN_S:
        return [f"{_EVEN_S:.0f} s of even speed"]
    last = measured.speeds_rpm[measured.times_s >= ends_s - _EVEN_S]
    off = 100.0 * float(np.abs(last / last.mean() - 1.0).max())
    return [] if off <= _EVEN_PERCENT else [f"the speed: {off:.1f} % off in {_EVEN_S:.0f} s, {_EVEN_PERCENT} % wanted"]


def _verdict_missing(name: str, judged: Steadiness) -> str | None:
    if judged.verdict == "drifting":
        return f"{name}, which drifts"
    if judged.beat is not None and judged.beat.record_in_beats < 1.0:
        return f"a whole beat of {1.0 / abs(judged.beat.offset_hz):.0f} s"
    return "a verdict on steadiness" if judged.verdict == "too-short" else None


def _interval_missing(measured: Measurement, interval: tuple[float, float]) -> list[str]:
    """The point whose interval is the widest over the one wanted."""
    over = [_over(p, interval) for p in measured.points]
    worst = measured.points[int(np.argmax(over))]
    if max(over) <= 1.0:
        return []
    if worst.amplitude_ci95 is None or worst.phase_ci95_deg is None or worst.z == 0.0:
        return [f"the interval of {worst.name}, which has no bound yet"]
    percent = 100.0 * worst.amplitude_ci95 / abs(worst.z)
    return [f"{worst.name}: ± {percent:.2g} % and ± {worst.phase_ci95_deg:.2g}° now"]


def _needed_of(point: PointVector, interval: tuple[float, float], seconds: float) -> float:
    averaged_s = None if point.steadiness.beat is None else point.steadiness.record_s
    if averaged_s is not None and averaged_s > seconds:
        return averaged_s
    return seconds * _over(point, interval) ** 2


def _over(point: PointVector, interval: tuple[float, float]) -> float:
    """A point's interval over the one wanted."""
    if point.amplitude_ci95 is None or point.phase_ci95_deg is None or point.z == 0.0:
        return math.inf
    return max(100.0 * point.amplitude_ci95 / abs(point.z) / interval[0], point.phase_ci95_deg / interval[1])


def needed_s(stop: Stop, measured: Measurement, seconds: float) -> float:
    """How long the whole run takes until it is enough, as far as can be told.

    Intervals go down with the root of time, but a beat has to be averaged out first.
    """
    wanted_s = [stop.seconds] if stop.revolutions is None and stop.interval is None else []
    if stop.revolutions is not None:
        wanted_s += [_EVEN_S, 60.0 * stop.revolutions / measured.speed.mean_rpm]
    if stop.interval is not None:
        wanted_s += [_EVEN_S, *(_needed_of(p, stop.interval, seconds) for p in measured.points)]
    return max(wanted_s)


def remaining_s(stop: Stop, measured: Measurement | None, seconds: float) -> float | None:
    """How long yet; None where it cannot be told."""
    longest = max(0.0, stop.seconds - seconds)
    if measured is None:
        return None if stop.interval or stop.revolutions else longest
    return min(longest, max(0.0, needed_s(stop, measured, seconds) - seconds))
