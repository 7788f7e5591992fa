"""Leading edges of the pulse channel, to a fraction of a sample.

A sharp edge is the crossing of the level half-way between the mean just before and the mean just after it, so slow sag
of an AC-coupled pulse does not move it; the crossing is found on the sinc-interpolated signal, because a straight line
between two samples of a fast edge is wrong by a large part of a sample. A slow edge is compared with the shape that
all edges of the record share: a crossing would use only the few samples at one level.
"""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp.units import InputError

Real = NDArray[np.float64]
Whole = NDArray[np.int64]

MEDIAN_REACH = 4  # intervals on either side that make the local period
_HALF_TAPS = 16  # of the sinc interpolation on each side of an edge
_LEVEL_SAMPLES = 32  # at most so many on each side make the local levels
_KAISER_BETA = 8.0
_MINIMUM_SEPARATION = 4.0  # levels this many robust deviations apart are a pulse; noise alone gives about 2.3
_SLOW_SAMPLES = 1.6  # height over slope; a step through an ideal anti-alias filter has 1.1
_FEWEST_FOR_SHAPE = 8  # edges that a shape may be learned from
_SHAPE_ROUNDS = 5
_CLEAR = 0.9  # of 1: most intervals alike, and a mark shorter than a third of the turn
_HOPELESS = 0.6  # less than this is what noise alone gives
_SPIKE_SAMPLES = 7  # the median of so many is free of spikes up to three long
_LADDER = (1, *(sign * (2**k + 1) for k in range(4, 18) for sign in (1, -1)))  # odd, or a pass shifts by a sample
_LEAST_OF_ALL = 0.1  # a mark's height over that of all that was seen: less is noise or a scratch


_MOSTLY_REGULAR = 0.5  # share of regular intervals, above which faulty pulses are pulses all the same


class TachError(InputError):
    """A pulse channel that gives no shaft angle: the message says why and what to do."""


@dataclass(frozen=True)
class Edges:
    """Leading edges of a stretch of pulse signal.

    `frames` are positions in samples (float, ascending), `widths` how long each mark lasts in samples (NaN where it is
    cut off); `edge` is "rising" or "falling", which is how "auto" was resolved; `mark_share` is the part of a
    revolution that the marks cover; `levels` are the low and high level. `flattened` is not 0 where light that
    changes through the turn was taken off to find them: what lasts longer than so many samples, above (+) or below
    (−) the marks; 1 is spikes alone.
    """

    frames: Real
    widths: Real
    edge: str
    mark_share: float
    levels: tuple[float, float]
    flattened: int


@dataclass(frozen=True)
class Shape:
    """Sums of a least-squares cubic spline through many edges laid over each other, levels taken to 0 and 1.

    `step` and `reach` are samples between knots and on each side.
    """

    step: float
    reach: float
    gram: Real
    right: Real


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


def find_edges(
    x: Real, edge: str = "auto", shape: Shape | None = None, flattened: int = 0
) -> tuple[Edges, Shape | None]:
    """Leading edges of the pulses in `x`, shape (frames,), any unit, and the shape that slow ones share.

    With "auto" the mark is the level that lasts the shorter time, and its leading edge is taken. `shape` and
    `flattened` are what earlier stretches of the same signal gave. Raises TachError for a constant channel, a channel
    that has no two levels, and one without an edge.
    """
    x = np.asarray(x, dtype=np.float64)
    if x.size < 4 or x.min() == x.max():
        raise TachError("the pulse channel is constant: no pulses; check the pulse sensor, its supply and the input")
    found = _clearest(x, edge, flattened)
    if not found.before.size:
        raise TachError("no whole pulse found: need 3 or more; record longer")
    frames, slope_samples = _crossings(x, found.before, found.after, found.room)
    if frames.size >= _FEWEST_FOR_SHAPE or shape is not None:
        rise = float(np.median(slope_samples))
        if rise > _SLOW_SAMPLES or shape is not None:
            noise = found.noise / (found.levels[1] - found.levels[0])
            frames, shape = _by_shape(x, frames, found.room, rise, noise, shape)
    order = np.argsort(frames, kind="stable")
    return Edges(frames[order], found.widths[order], found.edge, found.share, found.levels, found.flattened), shape


@dataclass(frozen=True)
class _Candidates:
    before: Whole  # last sample at the old level
    after: Whole  # first sample at the new level
    room: Whole  # samples to the nearer neighbouring edge
    widths: Real
    edge: str
    share: float
    levels: tuple[float, float]
    noise: float  # robust deviation about the level that lasts longer
    flattened: int
    regular: float  # share of intervals near the local median


def _clearest(x: Real, edge: str, flattened: int) -> _Candidates:
    """Edges of the signal as it is where they come regularly; else without spikes and changes of light.

    What is longer than a mark is taken off by a grey-scale opening or closing (Serra, Image Analysis and Mathematical
    Morphology 1982, from memory), for which steps and slopes of the light do not matter.
    """
    seen: list[_Candidates] = []
    problems: dict[int, TachError] = {}
    calm: Real | None = None

    def clear(size: int) -> _Candidates | None:
        """The edges at this size, if they need no other look."""
        nonlocal calm
        if size and calm is None:
            calm = _without_spikes(x)
        try:
            found = _candidates(x if not size or calm is None else _flat(calm, size), edge, size)
        except TachError as problem:
            problems[size] = problem
            return None
        height = found.levels[1] - found.levels[0]
        if any(height < _LEAST_OF_ALL * (other.levels[1] - other.levels[0]) for other in seen):
            return None
        # a few edges of something else are regular by chance: most of those that were regular before must be there
        if any(o.regular > _MOSTLY_REGULAR and found.before.size < 0.5 * o.before.size for o in seen):
            return None
        seen.append(found)
        return found if _clearness(found) >= _CLEAR else None

    sizes = (flattened, 0, *_LADDER) if flattened else (0, *_LADDER)
    for size in (s for s in sizes if abs(s) <= max(1, x.size // 6)):
        if (found := clear(size)) is not None:
            # a size hardly longer than the mark cuts off some of its noise-torn marks: one more is looked at
            wider = clear(2 * size - int(np.sign(size))) if abs(size) > 1 and size != flattened else None
            return wider or found
    best = max(seen, key=_clearness, default=None)
    if best is None or (0 in problems and _clearness(best) < _HOPELESS):
        raise problems[0]
    return best


def _clearness(found: _Candidates) -> float:
    """How much these edges look like one mark's: regular, four or more, and a mark much shorter than the turn."""
    return found.regular * min(1.0, found.before.size / 4.0) - max(0.0, found.share - 0.3)


def _without_spikes(x: Real) -> Real:
    from scipy.ndimage import median_filter

    return np.asarray(median_filter(x, size=_SPIKE_SAMPLES, mode="nearest"))


def _flat(x: Real, size: int) -> Real:
    if size == 1:
        return x
    from scipy.ndimage import maximum_filter1d, minimum_filter1d

    first, second = (minimum_filter1d, maximum_filter1d) if size > 0 else (maximum_filter1d, minimum_filter1d)
    return np.asarray(x - second(first(x, abs(size), mode="nearest"), abs(size), mode="nearest"))


def _candidates(x: Real, edge: str, flattened: int) -> _Candidates:
    """Edges where the signal passes from one level to the other, with hysteresis."""
    low, high, noise = _levels(x)
    if high - low < _MINIMUM_SEPARATION * noise or high <= low:
        raise TachError(
            f"the pulse channel has no two levels ({high - low:.3g} between them, noise {noise:.3g}): no pulses; "
            "check which input carries the pulse"
        )
    quarter, middle = 0.15 * (high - low), 0.5 * (low + high)
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
    widths = np.append(dwell.astype(np.float64), np.nan)[here]
    room = np.minimum(np.append(dwell, x.size - after[-1]), np.insert(dwell, 0, before[0] + 1))[here]
    whole = (before[here] >= _HALF_TAPS) & (after[here] < x.size - _HALF_TAPS)  # cut edges are not timed
    here, room, widths = here[whole], room[whole], widths[whole]
    intervals = np.diff(after[here])
    near = np.abs(intervals / local_median(intervals) - 1.0) < 0.3 if intervals.size else np.ones(1)
    return _Candidates(
        before[here], after[here], room, widths, chosen, share, (low, high), noise, flattened, float(np.mean(near))
    )


def local_median(intervals: Real) -> Real:
    """Median of each interval and its four neighbours on either side; the ends are mirrored."""
    padded = np.pad(intervals, MEDIAN_REACH, mode="reflect" if intervals.size > MEDIAN_REACH else "edge")
    windows = np.lib.stride_tricks.sliding_window_view(padded, 2 * MEDIAN_REACH + 1)
    return np.asarray(np.median(windows, axis=1))


def _crossings(x: Real, before: Whole, after: Whole, room: Whole) -> tuple[Real, Real]:
    """Positions of the crossings between samples `before` and `after`, and height over slope in samples there.

    Newton steps on the Kaiser-windowed sinc interpolation, each held to half a sample.
    """
    rise = after - before
    near = np.minimum(_LEVEL_SAMPLES, np.maximum(2, (0.7 * room).astype(np.int64) - rise))
    reach = np.arange(_LEVEL_SAMPLES)
    wanted = reach[None, :] < near[:, None]
    first_after = after + (rise + 1) // 2 + 1
    last_before = before - (rise + 1) // 2 - 1
    after_mean = (x[np.minimum(first_after[:, None] + reach, x.size - 1)] * wanted).sum(axis=1) / near
    before_mean = (x[np.maximum(last_before[:, None] - reach, 0)] * wanted).sum(axis=1) / near
    level = 0.5 * (after_mean + before_mean)
    # start at the straight-line crossing nearest the middle of the transition
    span = np.arange(-2, int(rise.max()) + 2)
    grid = np.clip(before[:, None] + span, 0, x.size - 2)
    left, right = x[grid] - level[:, None], x[grid + 1] - level[:, None]
    crosses = (left * right <= 0.0) & (left != right)
    at = grid + np.where(crosses, left / np.where(crosses, left - right, 1.0), 0.5)
    distance = np.where(crosses, np.abs(at - 0.5 * (before + after)[:, None]), np.inf)
    position = np.take_along_axis(at, distance.argmin(axis=1)[:, None], axis=1)[:, 0]
    start = position.copy()
    slope = np.zeros_like(position)
    taps = np.arange(-_HALF_TAPS + 1, _HALF_TAPS + 1)
    for _ in range(5):
        base = np.floor(position).astype(np.int64)
        values = x[np.clip(base[:, None] + taps, 0, x.size - 1)] - level[:, None]
        step = 1e-3
        at_position = (values * _interpolator(position - base, taps)).sum(axis=1)
        ahead = (values * _interpolator(position - base + step, taps)).sum(axis=1)
        slope = (ahead - at_position) / step
        move = np.where(slope != 0.0, -at_position / np.where(slope != 0.0, slope, 1.0), 0.0)
        position = position + np.clip(move, -0.5, 0.5)
    # noise can turn the slope of a slow edge around: then the straight line is the better answer
    frames = np.where(np.abs(position - start) <= 1.0 + 0.5 * rise, position, start)
    height = np.abs(after_mean - before_mean)
    return frames, np.maximum(height / np.maximum(np.abs(slope), 1e-300), rise.astype(np.float64))


def _interpolator(fraction: Real, taps: Whole) -> Real:
    offset = fraction[:, None] - taps
    window = np.i0(_KAISER_BETA * np.sqrt(np.maximum(0.0, 1.0 - (offset / (_HALF_TAPS + 0.5)) ** 2)))
    return np.asarray(np.sinc(offset) * window / np.i0(_KAISER_BETA))


def _by_shape(x: Real, frames: Real, room: Whole, rise: float, noise: float, shape: Shape | None) -> tuple[Real, Shape]:
    """Positions where each edge lies on the shape that all share: Gauss-Newton on foot, height and position.

    The shape's own middle level is its origin. Its width goes with the local period, as an edge's does that a mark
    makes by moving past.
    """
    from scipy.interpolate import BSpline

    if shape is None:
        reach = min(1.5 * rise + 14.0, 48.0)
        step = max(0.5, rise / 12.0)
        size = 2 * int(np.ceil(reach / step)) + 3
        shape = Shape(step, reach, np.zeros((size, size)), np.zeros(size))
    half = int(np.ceil(reach := shape.reach))
    knots = shape.step * (np.arange(shape.right.size + 4) - 0.5 * (shape.right.size + 3))
    offsets = np.arange(-half, half + 1)
    index = np.rint(frames).astype(np.int64)[:, None] + offsets
    inside = (np.abs(offsets) <= 0.8 * room[:, None]) & (index >= 0) & (index < x.size)
    samples = x[np.clip(index, 0, x.size - 1)]
    width = _relative_period(frames)
    position = frames.copy()
    foot = np.where(inside & (offsets < -0.3 * reach), samples, np.nan)
    foot = np.nanmean(np.where(np.isnan(foot).all(axis=1, keepdims=True), samples, foot), axis=1)
    top = np.where(inside & (offsets > 0.3 * reach), samples, np.nan)
    height = np.nanmean(np.where(np.isnan(top).all(axis=1, keepdims=True), samples, top), axis=1) - foot
    height = np.where(np.abs(height) > 1e-12, height, 1.0)  # no edge: it will not lie on the shape
    sums = shape
    # a change of bend between knots as an edge of this rise has it; what noise adds beyond is not believed
    bend = noise**2 * (rise / shape.step) ** 2 * 20.0
    for _ in range(_SHAPE_ROUNDS):
        u = (index - position[:, None]) / width[:, None]
        used = inside & (np.abs(u) < reach)
        design = BSpline.design_matrix(u[used], knots, 3, extrapolate=True).tocsc()
        scaled = ((samples - foot[:, None]) / height[:, None])[used]
        sums = Shape(shape.step, reach, shape.gram + (design.T @ design).toarray(), shape.right + design.T @ scaled)
        spline = BSpline(knots, _solved(sums, bend), 3)
        slope = spline.derivative()
        position += width * _middle(spline, reach)
        for _ in range(2):
            u = np.clip((index - position[:, None]) / width[:, None], -reach, reach)
            used = inside & (np.abs(u) < reach)
            value, rate = spline(u), -height[:, None] * slope(u) / width[:, None]
            columns = np.stack([np.ones_like(u), value, rate], axis=-1) * used[..., None]
            left = (samples - foot[:, None] - height[:, None] * value) * used
            gram = np.einsum("eni,enj->eij", columns, columns)
            # each unknown in its own measure: in a damaged file they may be apart by more than a float holds
            measure = np.sqrt(np.maximum(np.einsum("eii->ei", gram), 1e-24))
            gram = gram / measure[:, :, None] / measure[:, None, :] + 1e-12 * np.eye(3)
            right = np.einsum("eni,en->ei", columns, left) / measure
            change = np.linalg.solve(gram, right[..., None])[..., 0] / measure
            foot, height = foot + change[:, 0], height + change[:, 1]
            position += np.clip(change[:, 2], -1.0, 1.0)
    good = np.abs(position - frames) < 1.0 + rise
    return np.where(good, position, frames), sums


def _solved(sums: Shape, bend: float) -> Real:
    """Coefficients of the shape; where few samples fell, neighbours are followed smoothly."""
    second = np.diff(np.eye(sums.right.size), n=2, axis=0)
    weight = max(bend, 1e-6 * np.trace(sums.gram) / sums.right.size)
    return np.asarray(np.linalg.solve(sums.gram + weight * second.T @ second, sums.right))


def _middle(spline: object, reach: float) -> float:
    """Where the shape passes half of its height, nearest to its origin."""
    grid = np.linspace(-0.7 * reach, 0.7 * reach, 561)
    values = np.asarray(spline(grid)) - 0.5  # type: ignore[operator]
    crossing = np.flatnonzero((values[:-1] < 0.0) & (values[1:] >= 0.0))
    if not crossing.size:
        return 0.0
    i = int(crossing[np.argmin(np.abs(grid[crossing]))])
    return float(grid[i] + (grid[i + 1] - grid[i]) * values[i] / (values[i] - values[i + 1]))


def _relative_period(frames: Real) -> Real:
    """Local period over the median one: 1 in steady running, whatever the scatter."""
    if frames.size < 9:
        return np.ones(frames.size)
    local = local_median(np.diff(frames))
    relative = np.append(local, local[-1]) / np.median(local)
    return relative if np.ptp(relative) > 0.05 else np.ones(frames.size)


@dataclass
class EdgeFollower:
    """Edges of a pulse signal that comes in pieces; the same pieces give the same edges, whatever was before.

    Edges come out of whole windows that hold several pulses; a window grows until it does. `edge` is resolved by the
    first window and then kept.
    """

    rate_hz: float
    edge: str
    found: int = 0
    mark_share: float = 0.0
    levels: tuple[float, float] = (0.0, 0.0)
    flattened: int = 0
    _fresh: list[tuple[Real, Real]] = field(default_factory=list)  # frames and widths not yet taken
    _last: float = -np.inf
    _kept: Real = field(default_factory=lambda: np.empty(0))
    _first: int = 0  # frame number of _kept[0]
    _due: int = 0  # samples that make the next window worth a look
    _problem: TachError | None = None
    _shape: Shape | None = None

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
        return self._problem if not self.found else None

    def _look(self, *, last: bool) -> None:
        if self._kept.size < 2 * _HALF_TAPS:
            return
        try:
            found, shape = find_edges(self._kept, self.edge, self._shape, self.flattened)
        except TachError as problem:
            self._problem = problem
            self._wait_longer()
            return
        if found.frames.size < self._PULSES and not last and self._kept.size < self._LONGEST_S * self.rate_hz:
            self._wait_longer()
            return
        self._shape, self.flattened = shape, found.flattened
        self.edge, self.mark_share, self.levels = found.edge, found.mark_share, found.levels
        margin = 0 if last else 3 * _LEVEL_SAMPLES
        done = found.frames[found.frames < self._kept.size - margin]
        if done.size == 0:
            self._wait_longer()
            return
        fresh = done + self._first > self._last + 1.0
        if fresh.any():
            self._fresh.append((done[fresh] + self._first, found.widths[: done.size][fresh]))
            self._last = float(self._fresh[-1][0][-1])
            self.found += int(np.count_nonzero(fresh))
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

    def take(self) -> tuple[Real, Real]:
        """Positions and widths of the edges found since the last call."""
        frames, widths = zip(*self._fresh, strict=True) if self._fresh else ((np.empty(0),), (np.empty(0),))
        self._fresh = []
        return np.concatenate(frames), np.concatenate(widths)
