"""From pulse edges to the shaft angle: marks told apart, revolutions numbered, a cubic spline through.

Marks that come as expected need no more than a count. Where a quick look at the intervals finds a doubt, a dynamic
programme weighs every way to read the edges as marks that are there, marks that are missing and edges that are none.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp.edges import MEDIAN_REACH, TachError, local_median

Real = NDArray[np.float64]
Whole = NDArray[np.int64]

_APART = 1e-6  # frames
_SPREAD_OF_REGULAR = 0.2  # intervals within 20 % of the local period need no repair
_SPLINE_REACH = 8  # pulses beyond a span that its spline sees: further ones count less than 1e-4
_MOST_DOUBTED = 0.3  # share of marks missing or too many, beyond which nothing is numbered
_JUMP = 0.35  # of the log period from one revolution to the next: beyond any run-up once it is under way
_MOST_AT_END = 4  # revolutions given up where the shaft sets off or stops
_STEPS, _LOOK_BACK = 5, 7  # most marks in one step, edges looked back over
_MISSING_COST, _STRAY_COST, _ODD_WIDTH_COST = 3.0, 4.0, 2.0
_LEAST_SCATTER, _MOST_SCATTER = 0.012, 0.05  # of the log ratio of successive intervals


@dataclass(frozen=True)
class Revolutions:
    """Revolutions found in a record.

    `frames[i]` is where revolution `numbers[i]` begins: the leading edge of the reference mark. `knot_frames` and
    `knot_turns` are all marks with their place in revolutions, which the angle goes through. `scatter_frames` is the
    standard deviation of one edge's time, from how the edges lie about smooth running; None from too few edges.
    """

    frames: Real
    numbers: Whole
    missing: int
    extra: int
    knot_frames: Real
    knot_turns: Real
    scatter_frames: float | None

    def between(self, begin: float, end: float) -> Revolutions:
        """What lies from one place (samples) up to another."""
        here = (self.frames >= begin) & (self.frames < end)
        knots = (self.knot_frames >= begin) & (self.knot_frames < end)
        return replace(
            self,
            frames=self.frames[here],
            numbers=self.numbers[here],
            knot_frames=self.knot_frames[knots],
            knot_turns=self.knot_turns[knots],
        )


def number_revolutions(
    frames: Real, widths: Real | None = None, *, marks: int = 1, reference: str = "single"
) -> Revolutions:
    """Number the revolutions of edges at `frames`: missing marks jumped, edges that are none left out.

    `widths` are how long each mark lasts, NaN where unknown; `marks` are positions on one revolution; `reference`
    says how the first is known: "missing" (one position has no mark; the first is the next one), "wide" (it is
    wider), "unequal" (it follows the longest gap). Raises TachError for fewer than three pulses, no common period, a
    speed that jumps, and marks that cannot be told apart.
    """
    widths = np.full(frames.size, np.nan) if widths is None else widths
    if frames.size < max(3, 2 * marks):
        raise TachError(
            f"{frames.size} pulses found: need {max(3, 2 * marks)} or more; check the pulse sensor or record longer"
        )
    if marks == 1:
        kept, numbers = _numbered(frames, widths)
        missing, extra = _missing(int(np.ptp(numbers)), kept.size, 1, reference), frames.size - kept.size
        _refuse_doubtful(missing, extra, frames.size)
        steady = _without_jumps(frames[kept], numbers)
        kept, numbers = _undisturbed(frames, kept[steady], numbers[steady])
        return _revolutions(frames, kept, numbers.astype(np.float64), missing, extra)
    if reference == "unequal":
        kept, numbers = _followed(frames, marks)
    else:
        kept, numbers = _numbered(frames, widths)
        numbers = numbers - _zero_class(widths[kept], numbers, marks, reference)
    missing, extra = _missing(int(np.ptp(numbers)), kept.size, marks, reference), frames.size - kept.size
    _refuse_doubtful(missing, extra, frames.size)
    return _revolutions(frames, kept, _learned_turns(frames[kept], numbers, marks), missing, extra)


def _missing(positions: int, seen: int, marks: int, reference: str) -> int:
    """Marks that should be among so many positions and are not; of a missing one each revolution has none."""
    absent = positions // marks if reference == "missing" else 0
    return max(0, positions + 1 - seen - absent)


def _refuse_doubtful(missing: int, extra: int, edges: int) -> None:
    if missing + extra > _MOST_DOUBTED * edges:
        raise TachError(
            f"{missing} pulses missing and {extra} too many of {edges}: no steady once-per-rev pulse; "
            "check the mark, pulses_per_rev and the threshold"
        )


def _revolutions(frames: Real, kept: Whole, turns: Real, missing: int, extra: int) -> Revolutions:
    at = frames[kept]
    whole = turns == np.rint(turns)
    if np.count_nonzero(whole) < 3:
        raise TachError(f"{np.count_nonzero(whole)} pulses of the reference mark: need 3 or more; record longer")
    # samples before the first reference mark have no revolution, but its knots hold the spline's end
    first = np.rint(turns[whole][0])
    turns = turns - first
    starts, numbers = at[whole], np.rint(turns[whole]).astype(np.int64)
    steady = _without_jumps(starts, numbers)
    if steady != slice(0, starts.size):
        inside = (at >= starts[steady][0]) & (at <= starts[steady][-1])
        at, turns, starts, numbers = at[inside], turns[inside], starts[steady], numbers[steady]
        turns, numbers = turns - numbers[0], numbers - numbers[0]
    return Revolutions(starts, numbers, missing, extra, at, turns, _scatter(at, turns))


def _without_jumps(starts: Real, numbers: Whole) -> slice:
    """Starts of revolutions that the speed does not jump between: a shaft that sets off or stops may do so at the ends.

    Raises TachError for a jump elsewhere.
    """
    jump = np.abs(np.diff(np.log(np.diff(starts) / np.diff(numbers))))
    first, beyond = 0, starts.size
    for where in np.flatnonzero(jump > _JUMP).tolist():
        if where < _MOST_AT_END and beyond - where > 2 * _MOST_AT_END:
            first = where + 1
        elif where + 2 >= starts.size - _MOST_AT_END and where - first > 2 * _MOST_AT_END:
            beyond = min(beyond, where + 2)
        else:
            raise TachError(
                f"the speed jumps from one revolution to the next by {100 * np.expm1(jump[where]):.0f} % at sample "
                f"{starts[where + 1]:.0f}: samples were lost or a pulse is bad; check the pulse and record again"
            )
    return slice(first, beyond)


def _scatter(at: Real, turns: Real) -> float | None:
    """Robust deviation of one edge's time: third differences over marks that follow each other (√20 of one)."""
    if at.size < 8:
        return None
    step = np.diff(turns)
    even = np.abs(step - np.median(step)) < 1e-9 * np.abs(turns[-1])
    third = np.diff(at, n=3)[even[:-2] & even[1:-1] & even[2:]]
    return 1.4826 * float(np.median(np.abs(third))) / np.sqrt(20.0) if third.size > 3 else None


def _numbered(frames: Real, widths: Real) -> tuple[Whole, Whole]:
    """Edges kept and their numbers, of marks that follow each other at nearly equal angles."""
    frames = frames + _APART * np.arange(frames.size)  # of damaged pulses two may fall into one place
    intervals = np.diff(frames)
    if np.all(np.abs(intervals / local_median(intervals) - 1.0) < _SPREAD_OF_REGULAR):
        return np.arange(frames.size), np.arange(frames.size)
    return _readmitted(frames, *_best_reading(frames, widths))


def _best_reading(frames: Real, widths: Real) -> tuple[Whole, Whole]:
    """The cheapest way to read the edges as marks: a dynamic programme over pairs of edges that follow each other.

    A pair stands for 1…5 marks; its cost is how far its interval per mark is from that of the pair before, carried
    on by the change of speed, plus a price for each mark missing and each edge left out.
    """
    count = frames.size
    intervals = np.diff(frames)
    local = local_median(intervals)
    ratio = np.diff(np.log(intervals))
    gain = _local_gain(local)
    scatter = np.clip(1.4826 * np.median(np.abs(ratio - np.median(ratio))), _LEAST_SCATTER, _MOST_SCATTER)
    scatter = np.hypot(scatter, 0.4 * gain)  # a quick run-up changes its own rate from mark to mark
    at_local = np.append(local, local[-1])
    relative = np.log(np.maximum(widths, 1e-9) / at_local)
    odd = np.abs(relative - np.median(relative[np.isfinite(relative)])) if np.isfinite(relative).any() else relative
    price = np.where(odd > np.log(2.0), _ODD_WIDTH_COST, 0.0)  # NaN compares false: a cut mark is not odd
    back, steps = min(_LOOK_BACK, count - 1), np.arange(1, _STEPS + 1)
    cost = np.full((count, back, _STEPS), np.inf)  # of pairs (j − 1 − b, j) over m marks
    came = np.full((count, back, _STEPS), -1, dtype=np.int64)
    logs = np.full((count, back, _STEPS), np.nan)
    for j in range(1, count):
        near = min(back, j)
        i = j - 1 - np.arange(near)
        logs[j, :near] = np.log((frames[j] - frames[i])[:, None] / steps)
        skipped = _STRAY_COST * np.arange(near)[:, None] + _MISSING_COST * (steps - 1) + price[j]
        away = np.abs(logs[j, :near] - np.log(local[i])[:, None])
        cost[j, :near] = np.where(away < 0.5, skipped + _STRAY_COST * i[:, None] + price[i][:, None], np.inf)
        for b in range(near):
            before = i[b]
            if before == 0:
                continue
            here = min(before, gain.size - 1)
            change = (logs[j, b][:, None, None] - logs[before][None] - gain[here]) / scatter[here]
            total = cost[before][None] + _priced(change) + skipped[b][:, None, None]
            flat = np.where(np.isnan(total), np.inf, total).reshape(_STEPS, -1)
            best = flat.argmin(axis=1)
            lower = flat[steps - 1, best] < cost[j, b]
            cost[j, b] = np.where(lower, flat[steps - 1, best], cost[j, b])
            came[j, b] = np.where(lower, best, -1)
    ending = cost + _STRAY_COST * (count - 1 - np.arange(count))[:, None, None]
    j, b, m = (int(v) for v in np.unravel_index(int(ending.argmin()), ending.shape))
    kept, taken = [j], []
    while True:
        taken.append(m + 1)
        before = j - 1 - b
        kept.append(before)
        state = int(came[j, b, m])
        if state < 0:
            break
        j, (b, m) = before, divmod(state, _STEPS)
    numbers = np.concatenate([[0], np.cumsum(taken[::-1])])
    return np.asarray(kept[::-1], dtype=np.int64), np.asarray(numbers, dtype=np.int64)


def _local_gain(local: Real) -> Real:
    """Change of the log period from one interval to the next, smoothed; the ends, mirrored, know none of their own."""
    if local.size <= 4 * MEDIAN_REACH:
        return np.full(local.size, float(np.mean(np.diff(np.log(local)))) if local.size > 1 else 0.0)
    gain = np.gradient(np.log(local))
    gain[: MEDIAN_REACH + 1], gain[-MEDIAN_REACH - 1 :] = gain[MEDIAN_REACH + 1], gain[-MEDIAN_REACH - 2]
    return np.convolve(np.pad(gain, 4, mode="edge"), np.full(9, 1 / 9), mode="valid")


def _priced(deviations: Real) -> Real:
    """Square near zero, linear beyond two deviations: one torn interval must not outweigh the rest."""
    size = np.abs(deviations)
    return np.where(size < 2.0, 0.5 * size**2, 2.0 * size - 2.0)


def _readmitted(frames: Real, kept: Whole, numbers: Whole) -> tuple[Whole, Whole]:
    """Edges that were left out but lie where a missing mark should be."""
    from scipy.interpolate import CubicSpline

    unused = np.setdiff1d(np.arange(frames.size), kept)
    if not unused.size or kept.size < 3:
        return kept, numbers
    expected = CubicSpline(frames[kept], numbers)(frames[unused])
    place = np.rint(expected).astype(np.int64)
    near = (np.abs(expected - place) < 0.05) & ~np.isin(place, numbers)
    _, once = np.unique(place[near], return_index=True)
    all_kept = np.concatenate([kept, unused[near][once]])
    order = np.argsort(all_kept)
    return all_kept[order], np.concatenate([numbers, place[near][once]])[order]


def _undisturbed(frames: Real, kept: Whole, numbers: Whole) -> tuple[Whole, Whole]:
    """Without edges that a disturbance has moved far out of smooth running; the spline bridges them."""
    if kept.size < 16 or np.any(np.diff(numbers) != 1):
        return kept, numbers
    at = frames[kept]
    middle = at[2:-2] - (4.0 * (at[1:-3] + at[3:-1]) - at[:-4] - at[4:]) / 6.0
    period = 0.5 * (at[3:-1] - at[1:-3])
    size = np.abs(middle) / period
    change = np.abs(np.gradient(np.log(local_median(np.diff(at)))))[1:-2]
    limit = np.maximum(15.0 * float(np.median(size)), 2e-3 + 2.0 * change**2)  # smooth running bends in a run-up
    padded = np.pad(size, 2)
    highest = np.lib.stride_tricks.sliding_window_view(padded, 5).max(axis=1)
    moved = 2 + np.flatnonzero((size > limit) & (size >= highest))
    if moved.size > 0.05 * kept.size:
        return kept, numbers  # that is how this machine runs
    return np.delete(kept, moved), np.delete(numbers, moved)


def _zero_class(widths: Real, numbers: Whole, marks: int, reference: str) -> int:
    """Position (0…marks−1) of the reference mark among numbered ones."""
    position = numbers % marks
    seen = np.bincount(position, minlength=marks)
    if reference == "missing":
        order = np.argsort(seen)
        if seen[order[0]] > 0.5 * seen[order[1]]:
            raise TachError(
                f'reference = "missing": each of the {marks} positions holds a mark, none is missing; '
                "check pulses_per_rev, which counts the missing one too"
            )
        return int(order[0] + 1) % marks
    known = np.isfinite(widths)
    by_position = [widths[known & (position == p)] for p in range(marks)]
    mean = np.array([np.median(w) if w.size else 0.0 for w in by_position])
    order = np.argsort(mean)
    if mean[order[-1]] <= 1.2 * mean[order[-2]]:
        raise TachError(
            f'reference = "wide": no mark is wider than the others ({mean[order[-1]]:.1f} and {mean[order[-2]]:.1f} '
            "samples); make the first one at least 1.5 times as wide"
        )
    return int(order[-1])


def _followed(frames: Real, marks: int) -> tuple[Whole, Whole]:
    """Edges kept and their numbers, of marks at unequal angles: the pattern of a clean stretch, followed both ways."""
    intervals = np.diff(frames)
    apart = np.abs(np.log(intervals[marks:] / intervals[:-marks]))
    clean = np.concatenate([[0], (apart < 0.1).astype(np.int64), [0]])
    begins, ends = np.flatnonzero(np.diff(clean) == 1), np.flatnonzero(np.diff(clean) == -1)
    if not begins.size or (longest := int((ends - begins).max())) < marks:
        raise TachError(
            f"the intervals do not repeat after {marks} pulses: check pulses_per_rev and the mark, or record longer"
        )
    seed = int(begins[np.argmax(ends - begins)])
    stretch = intervals[seed : seed + (longest + marks) // marks * marks].reshape(-1, marks)
    shares = np.median(stretch / stretch.sum(axis=1)[:, None], axis=0)
    order = np.argsort(shares)
    if shares[order[-1]] < 1.05 * shares[order[-2]]:
        raise TachError(
            f'reference = "unequal": the two longest gaps are {360 * shares[order[-1]]:.1f}° and '
            f"{360 * shares[order[-2]]:.1f}°: too alike to tell which mark is 0; make one gap longer"
        )
    first = (int(order[-1]) + 1) % marks  # the mark after the longest gap
    shares = np.roll(shares, -first)
    places = np.concatenate([[0.0], np.cumsum(shares)[:-1]])
    start = seed + first
    period = float(stretch[0].sum())

    def off(index: int, at: float, turn: float, length: float) -> tuple[float, int]:
        """How far an edge is from its nearest mark, in spaces beside that mark, and the mark's number."""
        moved = turn + (frames[index] - at) / length
        number = _nearest_mark(moved, places, marks)
        place = number // marks + places[number % marks]
        return abs(moved - place) / min(shares[number % marks], shares[number % marks - 1]), number

    def walk(step: int) -> tuple[list[int], list[int]]:
        at, turn, length, gain = float(frames[start]), 0.0, period, 0.0
        kept, numbers, number = [], [], 0
        index = start + step
        while 0 <= index < frames.size:
            away, here = off(index, at, turn, length)
            if away < 0.25 and step * (here - number) > 0:
                following = index + step
                while 0 <= following < frames.size and (nearer := off(following, at, turn, length))[1] == here:
                    if nearer[0] < away:
                        away, index = nearer[0], following
                    following += step
                place = here // marks + places[here % marks]
                now = (frames[index] - at) / (place - turn)
                late = float(np.log(now / length))
                gain = float(np.clip(gain + 0.2 * late, -0.15, 0.15))
                length *= float(np.exp(0.6 * late + gain))
                at, turn, number = float(frames[index]), place, here
                kept.append(index)
                numbers.append(here)
            index += step
        return kept, numbers

    back, back_numbers = walk(-1)
    ahead, ahead_numbers = walk(1)
    kept = np.asarray([*reversed(back), start, *ahead], dtype=np.int64)
    return kept, np.asarray([*reversed(back_numbers), 0, *ahead_numbers], dtype=np.int64)


def _nearest_mark(turn: float, places: Real, marks: int) -> int:
    """Number of the mark nearest to a place in revolutions."""
    whole = int(np.floor(turn))
    around = np.concatenate([places, [1.0]])
    nearest = int(np.argmin(np.abs(around - (turn - whole))))
    return whole * marks + nearest


def _learned_turns(at: Real, numbers: Whole, marks: int) -> Real:
    """Place of each mark in revolutions: the reference marks' own spline says where the others sit on average."""
    from scipy.interpolate import CubicSpline

    position = numbers % marks
    whole = position == 0
    if np.count_nonzero(whole) < 4:
        raise TachError(f"{np.count_nonzero(whole)} pulses of the reference mark: need 4 or more; record longer")
    spline = CubicSpline(at[whole], numbers[whole] / marks)
    inside = (at >= at[whole][0]) & (at <= at[whole][-1])
    turns = (numbers // marks).astype(np.float64)
    for p in range(1, marks):
        here = (position == p) & inside
        if here.any():
            offset = float(np.mean(spline(at[here]) - turns[here]))
            turns[position == p] += offset
    return turns


def refuse_alike_marks(turned: Revolutions, pulses_per_rev: int, reference: str, rate_hz: float) -> None:
    """Raise TachError, with the speed, where several marks were counted one by one: there is no phase."""
    if pulses_per_rev == 1 or reference != "single":
        return
    rpm = 60.0 * rate_hz * np.ptp(turned.numbers) / np.ptp(turned.frames) / pulses_per_rev
    raise TachError(
        f"{pulses_per_rev} pulses per revolution and none of them marked as the first: the speed is "
        f'{rpm:.1f} r/min, but there is no phase; say how the first is known: pulse.reference = "missing", '
        '"wide" or "unequal"'
    )


def angle_between(revolutions: Revolutions, first: int, last: int) -> Callable[[Real], Real]:
    """Shaft angle in rad as a function of places in samples, for a span from revolution `first` to `last`.

    Both index `revolutions.frames`. Cubic spline (not-a-knot) through the marks of the span and a few on either side.
    """
    from scipy.interpolate import CubicSpline

    low = int(np.searchsorted(revolutions.knot_frames, revolutions.frames[first])) - _SPLINE_REACH
    high = int(np.searchsorted(revolutions.knot_frames, revolutions.frames[last])) + _SPLINE_REACH + 1
    knots = slice(max(0, low), min(revolutions.knot_frames.size, high))
    origin = revolutions.knot_frames[knots][0]
    spline = CubicSpline(revolutions.knot_frames[knots] - origin, 2.0 * np.pi * revolutions.knot_turns[knots])
    return lambda at_frames: np.asarray(spline(at_frames - origin))


def frames_at(revolutions: Revolutions, turns: Real) -> Real:
    """Places in samples where the shaft has made so many turns, by a cubic spline of time over angle."""
    from scipy.interpolate import CubicSpline

    return np.asarray(CubicSpline(revolutions.knot_turns, revolutions.knot_frames)(turns))


@dataclass
class RevolutionFollower:
    """Revolutions of edges that come in pieces: only the newest are numbered anew, the older ones are kept."""

    marks: int = 1
    reference: str = "single"
    edges: int = 0  # taken so far
    _frames: Real = field(default_factory=lambda: np.empty(0))
    _widths: Real = field(default_factory=lambda: np.empty(0))
    _kept: list[Revolutions] = field(default_factory=list)
    _newest: Revolutions | None = None

    _REACH = 64  # revolutions kept before those that are still needed

    def __post_init__(self) -> None:
        if self.reference == "single":  # marks that are all alike are counted one by one: they give the speed
            self.marks = 1

    def feed(self, frames: Real, widths: Real) -> None:
        """Take the next edges."""
        self._frames = np.concatenate([self._frames, frames])
        self._widths = np.concatenate([self._widths, widths])
        self.edges += frames.size

    def newest(self) -> Revolutions:
        """The newest revolutions, numbers going on from the older ones. Raises TachError as numbering does."""
        turned = number_revolutions(self._frames, self._widths, marks=self.marks, reference=self.reference)
        shift = 0
        if self._newest is not None:
            _, here, before = np.intersect1d(turned.frames, self._newest.frames, return_indices=True)
            if here.size:
                shift = int(self._newest.numbers[before[-1]] - turned.numbers[here[-1]])
        self._newest = replace(turned, numbers=turned.numbers + shift, knot_turns=turned.knot_turns + shift)
        return self._newest

    def drop_before(self, frame: float) -> None:
        """No revolution that begins before this frame will be asked for again."""
        turned = self._newest
        if turned is None:
            return
        cut = int(np.searchsorted(turned.frames, frame)) - self._REACH
        if cut < self._REACH:
            return
        where = turned.frames[cut]
        self._kept.append(turned.between(-np.inf, where))
        self._newest = turned.between(where, np.inf)
        left = self._frames >= where
        self._frames, self._widths = self._frames[left], self._widths[left]

    def whole(self) -> Revolutions:
        """All revolutions as last numbered. Raises TachError before any were."""
        if self._newest is None:
            raise TachError("no revolutions were numbered: record longer")
        parts = [*self._kept, self._newest]
        frames, numbers, at, turns = (
            np.concatenate([getattr(p, name) for p in parts])
            for name in ("frames", "numbers", "knot_frames", "knot_turns")
        )
        missing = _missing(round(float(turns[-1] - turns[0]) * self.marks), at.size, self.marks, self.reference)
        return Revolutions(frames, numbers, missing, self.edges - at.size, at, turns, _scatter(at, turns))
