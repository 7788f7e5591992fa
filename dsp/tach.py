"""From the pulse channel to the shaft angle: edges to a fraction of a sample, revolutions numbered, a spline through.

Edges are crossings of the level half-way between the mean just before and the mean just after the edge, so slow sag
of an AC-coupled pulse does not move them; the crossing itself is found on the sinc-interpolated signal, because a
straight line between two samples of a fast edge is wrong by a large part of a sample.
"""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

Real = NDArray[np.float64]

_HALF_TAPS = 16  # of the sinc interpolation on each side of an edge
_LEVEL_SAMPLES = 32  # at most so many on each side make the local levels
_KAISER_BETA = 8.0
_MINIMUM_SEPARATION = 4.0  # levels this many robust deviations apart are a pulse; noise alone gives about 2.3
_MEDIAN_REACH = 4  # intervals on either side that make the local period
_SPREAD_OF_REGULAR = 0.2  # intervals within 20 % of the local period need no repair
_SPLINE_REACH = 8  # pulses beyond a span that its spline sees: further ones count less than 1e-4


class TachError(ValueError):
    """A pulse channel that gives no shaft angle: the message says why and what to do."""


@dataclass(frozen=True)
class Edges:
    """Leading edges of a stretch of pulse signal.

    `frames` are positions in samples (float, ascending); `edge` is "rising" or "falling", which is how "auto" was
    resolved; `mark_share` is the part of a revolution that the mark covers; `levels` are the low and high level.
    """

    frames: Real
    edge: str
    mark_share: float
    levels: tuple[float, float]


def _levels(x: Real) -> tuple[float, float, float]:
    """Low level, high level and the robust deviation about the one that holds more samples."""
    middle = 0.5 * (float(x.min()) + float(x.max()))
    low = high = middle
    for _ in range(4):
        above = x > middle
        low, high = float(np.median(x[~above])), float(np.median(x[above])) if above.any() else middle
        middle = 0.5 * (low + high)
    above = x > middle
    wider = x[above] if np.count_nonzero(above) > x.size / 2 else x[~above]
    return low, high, 1.4826 * float(np.median(np.abs(wider - np.median(wider))))


def _refined(x: Real, before: NDArray[np.int64], after: NDArray[np.int64], dwell: NDArray[np.int64]) -> Real:
    """Positions of the crossings between samples `before` and `after`, of edges with room on both sides.

    `dwell` is how many samples the level lasts on the shorter side. Newton steps on the Kaiser-windowed sinc
    interpolation; the slope bounds each step to half a sample.
    """
    middle = 0.5 * (before + after)
    rise = after - before
    room = np.minimum(_LEVEL_SAMPLES, np.maximum(2, (0.7 * dwell).astype(np.int64) - rise))
    reach = np.arange(_LEVEL_SAMPLES)
    wanted = reach[None, :] < room[:, None]
    first_after = after + (rise + 1) // 2 + 1
    last_before = before - (rise + 1) // 2 - 1
    after_mean = (x[np.minimum(first_after[:, None] + reach, x.size - 1)] * wanted).sum(axis=1) / room
    before_mean = (x[np.maximum(last_before[:, None] - reach, 0)] * wanted).sum(axis=1) / room
    level = 0.5 * (after_mean + before_mean)
    # start at the straight-line crossing nearest the middle of the transition
    span = np.arange(-2, int(rise.max()) + 2)
    grid = np.clip(before[:, None] + span, 0, x.size - 2)
    left, right = x[grid] - level[:, None], x[grid + 1] - level[:, None]
    crosses = (left * right <= 0.0) & (left != right)
    at = grid + np.where(crosses, left / np.where(crosses, left - right, 1.0), 0.5)
    distance = np.where(crosses, np.abs(at - middle[:, None]), np.inf)
    position = np.take_along_axis(at, distance.argmin(axis=1)[:, None], axis=1)[:, 0]
    start = position.copy()
    taps = np.arange(-_HALF_TAPS + 1, _HALF_TAPS + 1)
    for _ in range(5):
        base = np.floor(position).astype(np.int64)
        index = np.clip(base[:, None] + taps, 0, x.size - 1)
        values = x[index] - level[:, None]
        step = 1e-3
        at_position = (values * _interpolator(position - base, taps)).sum(axis=1)
        ahead = (values * _interpolator(position - base + step, taps)).sum(axis=1)
        slope = (ahead - at_position) / step
        move = np.where(slope != 0.0, -at_position / np.where(slope != 0.0, slope, 1.0), 0.0)
        position = position + np.clip(move, -0.5, 0.5)
    # noise can turn the slope of a slow edge around: then the straight line is the better answer
    return np.where(np.abs(position - start) <= 1.0 + 0.5 * rise, position, start)


def _interpolator(fraction: Real, taps: NDArray[np.int64]) -> Real:
    offset = fraction[:, None] - taps
    window = np.i0(_KAISER_BETA * np.sqrt(np.maximum(0.0, 1.0 - (offset / (_HALF_TAPS + 0.5)) ** 2)))
    return np.asarray(np.sinc(offset) * window / np.i0(_KAISER_BETA))


def find_edges(x: Real, edge: str = "auto") -> Edges:
    """Leading edges of the pulses in `x`, shape (frames,), any unit.

    With "auto" the mark is the level that lasts the shorter time, and its leading edge is taken. Raises TachError for
    a constant channel, a channel that has no two levels, and one without an edge.
    """
    x = np.asarray(x, dtype=np.float64)
    if x.size < 4 or x.min() == x.max():
        raise TachError("the pulse channel is constant: no pulses; check the pulse sensor, its supply and the input")
    low, high, noise = _levels(x)
    if high - low < _MINIMUM_SEPARATION * noise:
        raise TachError(
            f"the pulse channel has no two levels ({high - low:.3g} between them, noise {noise:.3g}): no pulses; "
            "check which input carries the pulse"
        )
    quarter = 0.15 * (high - low)
    middle = 0.5 * (low + high)
    state = np.zeros(x.size, dtype=np.int8)
    state[x > middle + quarter] = 1
    state[x < middle - quarter] = -1
    decided = np.flatnonzero(state)
    turns = np.flatnonzero(np.diff(state[decided]))
    before, after = decided[turns], decided[turns + 1]
    rising = state[after] > 0
    if rising.size < 2:
        raise TachError(f"{rising.sum()} pulses found: need 3 or more; check the pulse sensor or record longer")
    dwell = np.diff(after)  # from each edge to the next one
    high_dwell, low_dwell = dwell[rising[:-1]], dwell[~rising[:-1]]
    typical = [float(np.median(d)) if d.size else np.inf for d in (high_dwell, low_dwell)]
    chosen = edge if edge != "auto" else ("rising" if typical[0] <= typical[1] else "falling")
    mark, gap = typical if chosen == "rising" else typical[::-1]
    share = mark / (mark + gap) if np.isfinite(mark + gap) else 0.0
    here = np.flatnonzero(rising == (chosen == "rising"))
    reach = np.minimum(np.append(dwell, x.size - after[-1]), np.insert(dwell, 0, before[0] + 1))[here]
    room = (before[here] >= _HALF_TAPS) & (after[here] < x.size - _HALF_TAPS)  # cut edges are not timed
    here, reach = here[room], reach[room]
    if not here.size:
        raise TachError("no whole pulse found: need 3 or more; record longer")
    frames = _refined(x, before[here], after[here], reach)
    return Edges(np.maximum.accumulate(frames), chosen, share, (low, high))


@dataclass(frozen=True)
class Revolutions:
    """Pulses with their revolution numbers: `frames[i]` is where revolution `numbers[i]` begins."""

    frames: Real
    numbers: NDArray[np.int64]
    missing: int
    extra: int


def number_revolutions(frames: Real) -> Revolutions:
    """Number the revolutions of single-mark pulses at `frames` (samples): missing pulses jumped, extra ones left out.

    Raises TachError for fewer than three pulses and where the intervals have no common period.
    """
    if frames.size < 3:
        raise TachError(f"{frames.size} pulses found: need 3 or more; check the pulse sensor or record longer")
    intervals = np.diff(frames)
    period = _local_median(intervals)
    if np.all(np.abs(intervals / period - 1.0) < _SPREAD_OF_REGULAR):
        return Revolutions(frames, np.arange(frames.size), 0, 0)
    kept, numbers = _followed(frames, intervals, period)
    missing = int(numbers[-1]) + 1 - len(numbers)
    extra = frames.size - len(kept)
    if missing + extra > 0.3 * frames.size:
        raise TachError(
            f"{missing} pulses missing and {extra} too many of {frames.size}: no steady once-per-rev pulse; "
            "check the mark, pulses_per_rev and the threshold"
        )
    return Revolutions(frames[kept], np.asarray(numbers, dtype=np.int64), missing, extra)


def _local_median(intervals: Real) -> Real:
    padded = np.pad(intervals, _MEDIAN_REACH, mode="reflect" if intervals.size > _MEDIAN_REACH else "edge")
    windows = np.lib.stride_tricks.sliding_window_view(padded, 2 * _MEDIAN_REACH + 1)
    return np.asarray(np.median(windows, axis=1))


def _followed(frames: Real, intervals: Real, period: Real) -> tuple[list[int], list[int]]:
    """Indices kept and their revolution numbers, followed both ways from the most regular stretch."""
    deviation = np.abs(intervals / period - 1.0)
    both = np.maximum(deviation[:-1], deviation[1:])
    seed = int(both.argmin())

    def walk(step: int) -> tuple[list[int], list[int]]:
        here, number = seed, 0
        expected = float(period[seed])
        kept, numbers = [], []
        index = seed + step
        while 0 <= index < frames.size:
            turns = abs(frames[index] - frames[here]) / expected
            nearest = round(turns)
            following = index + step
            better_follows = 0 <= following < frames.size and abs(
                abs(frames[following] - frames[here]) / expected - nearest
            ) < abs(turns - nearest)
            if nearest >= 1 and abs(turns - nearest) < 0.25 and not better_follows:
                number += nearest * step
                expected += 0.5 * (abs(frames[index] - frames[here]) / nearest - expected)
                kept.append(index)
                numbers.append(number)
                here = index
            index += step
        return kept, numbers

    back, back_numbers = walk(-1)
    ahead, ahead_numbers = walk(1)
    kept = [*reversed(back), seed, *ahead]
    numbers = [*reversed(back_numbers), 0, *ahead_numbers]
    return kept, [n - numbers[0] for n in numbers]


def angle_between(revolutions: Revolutions, first: int, last: int, at_frames: Real) -> tuple[Real, Real]:
    """Shaft angle in rad and speed in rad per frame at `at_frames`, for a span from pulse `first` to pulse `last`.

    Cubic spline (not-a-knot) through the pulses of the span and a few on either side.
    """
    from scipy.interpolate import CubicSpline

    low, high = max(0, first - _SPLINE_REACH), min(revolutions.frames.size, last + _SPLINE_REACH + 1)
    origin = revolutions.frames[low]
    spline = CubicSpline(revolutions.frames[low:high] - origin, 2.0 * np.pi * revolutions.numbers[low:high])
    moments = at_frames - origin
    return np.asarray(spline(moments)), np.asarray(spline(moments, 1))


@dataclass
class EdgeFollower:
    """Edges of a pulse signal that comes in pieces; the same pieces give the same edges, whatever was before.

    Edges come out of whole windows that hold several pulses; a window grows until it does. `edge` is resolved by the
    first window and then kept.
    """

    rate_hz: float
    edge: str
    frames: list[Real] = field(default_factory=list)
    mark_share: float = 0.0
    levels: tuple[float, float] = (0.0, 0.0)
    _kept: Real = field(default_factory=lambda: np.empty(0))
    _first: int = 0  # frame number of _kept[0]
    _due: int = 0  # samples that make the next window worth a look
    _problem: TachError | None = None

    _PULSES = 8  # a window should hold so many
    _LONGEST_S = 20.0  # a window this long without pulses is given up

    def feed(self, x: Real) -> None:
        """Take the next samples, shape (frames,)."""
        self._kept = np.concatenate([self._kept, x])
        if self._kept.size >= max(self._due, int(0.5 * self.rate_hz)):
            self._look(last=False)

    def finish(self) -> None:
        """Look at what is left."""
        self._look(last=True)

    @property
    def problem(self) -> TachError | None:
        """Why nothing was found so far, if nothing was."""
        return self._problem if not self.frames else None

    def _look(self, *, last: bool) -> None:
        if self._kept.size < 2 * _HALF_TAPS:
            return
        try:
            found = find_edges(self._kept, self.edge)
        except TachError as problem:
            self._problem = problem
            self._wait_longer()
            return
        if found.frames.size < self._PULSES and not last and self._kept.size < self._LONGEST_S * self.rate_hz:
            self._wait_longer()
            return
        self.edge, self.mark_share, self.levels = found.edge, found.mark_share, found.levels
        margin = 0 if last else 3 * _LEVEL_SAMPLES
        done = found.frames[found.frames < self._kept.size - margin]
        if done.size == 0:
            self._wait_longer()
            return
        already = self.frames[-1][-1] if self.frames else -np.inf
        fresh = done[done + self._first > already + 1.0] + self._first
        if fresh.size:
            self.frames.append(fresh)
        # keep the last two pulses: the next window needs the level before its first edge
        cut = max(0, int(done[-2] if done.size > 1 else done[0]) - 4 * _LEVEL_SAMPLES)
        self._kept = self._kept[cut:]
        self._first += cut
        self._due = max(int(0.5 * self.rate_hz), self._kept.size + cut)

    def _wait_longer(self) -> None:
        longest = int(self._LONGEST_S * self.rate_hz)
        if self._kept.size > longest:
            cut = self._kept.size - longest // 2
            self._kept, self._first = self._kept[cut:], self._first + cut
        self._due = 2 * self._kept.size

    def result(self) -> Edges:
        """All edges so far; raises TachError where none was found."""
        if not self.frames:
            raise self._problem or TachError("no pulses found: need 3 or more; record longer")
        return Edges(np.concatenate(self.frames), self.edge, self.mark_share, self.levels)
