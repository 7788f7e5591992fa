"""Sets of pieces whose vectors fall near a target: listed, joined over one or two planes, and the best of them proven.

The largest residual t of a choice of plane vectors w is bounded below by any weights λ ≥ 0, Σλ = 1 of its rows:
t² ≥ Σλ|r|² = q0 + (w − w0)ᴴG(w − w0). All choices below a level τ therefore lie in an ellipsoid, and only the sets of
pieces inside it are listed: singles and pairs in full, triples and fours by joining those, the second plane by a disc
of its own for every set of the first. A level that was searched is a bound, whether or not something was found.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]
Whole = NDArray[np.int64]
Report = Callable[[float, str], None]

MOST_IN_A_PLANE = 4  # pieces whose sets are listed: two pairs
_AT_ONCE = 1_000_000  # candidates held in memory at a time
_A_SPLIT = 1000  # candidates that a way to share pieces among planes counts for
_FIRST_LEVEL = 1e-4  # of the scale, above the continuous optimum
_ROUNDS = 300  # of Lawson's iteration
_SLACK = 1e-9  # relative: rounding must not lose what lies on the rim of a disc


class OutOfWork(Exception):  # noqa: N818 - not an error: the search ends with the bound it has
    """More candidates than were allowed."""


@dataclass
class Work:
    """Candidates that may still be looked at, and whom to tell on the way; `report` may raise to cancel."""

    left: int
    report: Report | None = None
    share: float = 0.0
    text: str = ""

    def spend(self, candidates: int) -> None:
        """Count candidates. Raises OutOfWork where that many are not allowed any more."""
        if self.report is not None:
            self.report(self.share, self.text)
        if candidates > self.left:
            raise OutOfWork
        self.left -= candidates


@dataclass(frozen=True)
class Atoms:
    """Single pieces that may sit in one plane: `vectors` (n,) complex, `masses` (n,) without sign, `sizes` (n,) of the stock.

    `positions` (n,) index `room_pieces` and `room_mass`: how many pieces and how much mass a position still takes; `room`
    is what the plane does. Only the first `joined` atoms make pairs; the rest are for single pieces.
    """

    vectors: Complex
    masses: Real
    sizes: Whole
    positions: Whole
    room_pieces: Real
    room_mass: Real
    room: float
    joined: int

    def allowed(self, sets: Whole, counts: Whole) -> NDArray[np.bool_]:
        """Which of the sets (n, k) of atoms keep to the room and to the stock."""
        masses, positions = self.masses[sets], self.positions[sets]
        fine: NDArray[np.bool_] = masses.sum(axis=1) <= self.room * (1.0 + _SLACK)
        for column in range(sets.shape[1]):
            at = positions[:, column]
            same = positions == at[:, None]
            fine &= same.sum(axis=1) <= self.room_pieces[at]
            fine &= (same * masses).sum(axis=1) <= self.room_mass[at] * (1.0 + _SLACK)
        return fine & stock_allows(self.sizes[sets], counts)

    def beside(self, held: Sequence[int]) -> Atoms:
        """The same with the room that is left beside pieces that are held."""
        pieces, mass = self.room_pieces.copy(), self.room_mass.copy()
        taken = np.asarray(held, dtype=np.int64)
        np.subtract.at(pieces, self.positions[taken], 1.0)
        np.subtract.at(mass, self.positions[taken], self.masses[taken])
        room = self.room - float(self.masses[taken].sum())
        return Atoms(self.vectors, self.masses, self.sizes, self.positions, pieces, mass, room, self.joined)


def stock_allows(sizes: Whole, counts: Whole) -> NDArray[np.bool_]:
    """Which rows (n, k) of stock sizes need no more pieces than there are."""
    fine = np.ones(sizes.shape[0], dtype=np.bool_)
    for size in np.flatnonzero(counts < sizes.shape[1]):
        fine &= (sizes == size).sum(axis=1) <= counts[size]
    return fine


def near(points: Complex, queries: Complex, radii: Real, work: Work) -> Iterator[tuple[Whole, Whole]]:
    """Pairs (query, point) no further apart than the query's radius, in portions.

    The points are sorted into strips as wide as the largest radius and bisected along each.
    """
    if not points.size or not queries.size:
        return
    low, bottom = float(points.real.min()), float(points.imag.min())
    wide, high = float(np.ptp(points.real)), float(np.ptp(points.imag))
    width = max(float(radii.max()), wide / 1e4, 1e-300)
    span = 2.0 * high + 1e-300
    strips = np.floor((points.real - low) / width)
    keys = strips * span + (points.imag - bottom)
    order = np.argsort(keys)
    keys = keys[order]
    x, y = queries.real - low, queries.imag - bottom
    slack = _SLACK * (float(keys[-1]) + high + width)
    first, last = np.floor((x - radii) / width), np.floor((x + radii) / width)
    for step in range(int((last - first).max()) + 1):
        strip = first + step
        used = np.flatnonzero((strip <= last) & (strip >= 0.0) & (strip <= strips.max()))
        s = strip[used]
        aside = np.maximum(0.0, np.maximum(s * width - x[used], x[used] - (s + 1.0) * width))
        half = np.sqrt(np.maximum(0.0, radii[used] ** 2 - aside**2)) + slack
        starts = np.searchsorted(keys, s * span + np.clip(y[used] - half, -slack, high + slack))
        ends = np.searchsorted(keys, s * span + np.clip(y[used] + half, -slack, high + slack), side="right")
        lengths = np.maximum(0, ends - starts)
        hit = np.flatnonzero(lengths)
        yield from _spelled_out(points, queries, radii, order, used[hit], starts[hit], lengths[hit], work)


def _spelled_out(
    points: Complex, queries: Complex, radii: Real, order: Whole, used: Whole, starts: Whole, lengths: Whole, work: Work
) -> Iterator[tuple[Whole, Whole]]:
    """The ranges of `near` as pairs, as many at once as memory is meant to hold."""
    ends = np.cumsum(lengths)
    begin = 0
    while begin < lengths.size:
        done = int(ends[begin - 1]) if begin else 0
        end = max(begin + 1, int(np.searchsorted(ends, done + _AT_ONCE)))
        part = lengths[begin:end]
        total = int(part.sum())
        work.spend(total)
        query = np.repeat(used[begin:end], part)
        inside = np.arange(total) - np.repeat(np.cumsum(part) - part, part)
        point = order[np.repeat(starts[begin:end], part) + inside]
        close = np.abs(points[point] - queries[query]) <= radii[query] * (1.0 + _SLACK)
        yield query[close], point[close]
        begin = end


class Sets:
    """Sets of up to four pieces of one plane. Pairs are listed once, triples and fours for each disc that is asked for."""

    def __init__(self, atoms: Atoms, counts: Whole) -> None:
        self.atoms, self.counts = atoms, counts
        singles = np.arange(atoms.vectors.size, dtype=np.int64)[:, None]
        self._singles = singles[atoms.allowed(singles, counts)]
        halves = self._singles[self._singles[:, 0] < atoms.joined, 0]
        one, other = np.triu_indices(halves.size)
        pairs = np.column_stack([halves[one], halves[other]])
        self._halves = halves[:, None]
        self._pairs = pairs[atoms.allowed(pairs, counts)]
        self._pair_vectors = self._sums(self._pairs)

    def _sums(self, sets: Whole) -> Complex:
        return np.asarray(self.atoms.vectors[sets].sum(axis=1))

    def within(self, pieces: int, centre: complex, radius: float, work: Work) -> tuple[Whole, Complex]:
        """Sets (n, pieces) whose vectors (n,) lie in the disc."""
        if pieces <= 2:
            sets = (np.zeros((1, 0), dtype=np.int64), self._singles, self._pairs)[pieces]
            sums = self._pair_vectors if pieces == 2 else self._sums(sets)
            inside = np.abs(sums - centre) <= radius * (1.0 + _SLACK)
            return sets[inside], sums[inside]
        heads = self._halves if pieces == 3 else self._pairs
        head_vectors = self._sums(heads)
        found = [np.zeros((0, pieces), dtype=np.int64)]
        for head, tail in near(self._pair_vectors, centre - head_vectors, np.full(len(heads), radius), work):
            ordered = heads[head, -1] <= self._pairs[tail, 0]  # each set once
            sets = np.hstack([heads[head[ordered]], self._pairs[tail[ordered]]])
            found.append(sets[self.atoms.allowed(sets, self.counts)])
        sets = np.vstack(found)
        return sets, self._sums(sets)

    def nearest(self, pieces: int, centre: complex, wanted: int, start: float, work: Work) -> Whole:
        """A few sets of so many pieces near the centre, nearest first; fewer where there are no more."""
        reach = abs(centre) + float(np.abs(self.atoms.vectors).max(initial=0.0)) * max(1, pieces)
        radius = start
        while True:
            sets, sums = self.within(pieces, centre, radius, work)
            if len(sets) >= wanted or radius > reach:
                return sets[np.argsort(np.abs(sums - centre))[:wanted]]
            radius *= 2.0


@dataclass(frozen=True)
class Bowl:
    """Lower bound of t²: `least` + (w − centre)ᴴ·curvature·(w − centre), shapes (), (P,), (P, P)."""

    least: float
    centre: Complex
    curvature: Complex


def bowl(base: Complex, influence: Complex, weights: Real) -> Bowl:
    """The bound that these weights of the rows give; they are scaled to sum to 1."""
    root = np.sqrt(weights / weights.sum())
    design = influence * root[:, None]
    centre = -np.linalg.lstsq(design, root * base, rcond=None)[0]
    rest = root * base + design @ centre
    return Bowl(float(np.vdot(rest, rest).real), centre, design.conj().T @ design)


def bowls(base: Complex, influence: Complex) -> tuple[Bowl, ...]:
    """Bounds near the continuous optimum: the best first, then the same weights mixed with equal ones.

    Lawson's iteration (C. L. Lawson, thesis, 1961; from memory): weights grow with the residual. Any weights bound, so
    it need not have converged.
    """
    rows = base.size
    weights = np.full(rows, 1.0 / rows)
    best, kept = bowl(base, influence, weights), weights
    for _ in range(_ROUNDS):
        now = bowl(base, influence, weights)
        if now.least > best.least:
            best, kept = now, weights
        size = np.abs(base + influence @ now.centre)
        total = float(weights @ size)
        if total <= 1e-14 * float(np.abs(base).max(initial=0.0)) or size.max() ** 2 <= now.least * (1.0 + 1e-9):
            break
        weights = weights * size / total
    mixes = (0.005, 0.02, 0.1, 0.3, 1.0)
    return (best, *(bowl(base, influence, (1.0 - mix) * kept + mix / rows) for mix in mixes))


@dataclass
class Found:
    """Best sets so far: `largest[K]`, with at most K pieces, and `sets[K]`, a set of atoms for each plane.

    `searched[K]`: no choice of exactly K pieces lies below this level but those that were looked at.
    """

    largest: list[float]
    sets: list[tuple[tuple[int, ...], ...]]
    searched: list[float]

    def offer(self, largest: float, sets: tuple[tuple[int, ...], ...]) -> bool:
        """Take a choice where it is better than what is known for as many pieces or more."""
        pieces = sum(len(s) for s in sets)
        better = [k for k in range(pieces, len(self.largest)) if largest < self.largest[k]]
        for k in better:
            self.largest[k], self.sets[k] = largest, sets
        return bool(better)


@dataclass(frozen=True)
class Task:
    """Planes to choose sets for: `base` (M,), `influence` (M, P), the `planes`, pieces of each size."""

    base: Complex
    influence: Complex
    planes: tuple[Sets, ...]
    counts: Whole


def search(task: Task, found: Found, within: float, scale: float, work: Work) -> None:
    """Best sets for every number of pieces that `found` has, proven to `within`.

    Levels grow from the continuous optimum until each number's best is at most `within` above what was searched, or until
    it has looked at as many candidates as `work` allows each number.
    """
    bounds = bowls(task.base, task.influence)
    lowest = math.sqrt(bounds[0].least)
    found.searched[:] = [max(s, lowest) for s in found.searched]
    allowed = [work.left] * len(found.searched)
    step = _FIRST_LEVEL * scale
    while open_numbers := [k for k, s in enumerate(found.searched) if s < found.largest[k] - within and allowed[k] > 0]:
        level = min(lowest + step, max(found.largest[k] - within for k in open_numbers))
        shadow = _Shadow(task.planes, min(bounds, key=lambda b: _log_size(b, level)), level, work)
        for k in open_numbers:
            reached = min(level, found.largest[k] - within)
            work.left, work.share = allowed[k], 1.0 - len(open_numbers) / len(found.largest)
            work.text = f"{k} pieces, up to {100.0 * reached / scale:.2f} % of the initial vibration"
            try:
                for candidates in shadow.candidates(k, reached):
                    _look(task, found, candidates)
                found.searched[k] = max(found.searched[k], reached)
                allowed[k] = work.left
            except OutOfWork:
                allowed[k] = 0
        step *= 2.0


def _log_size(region: Bowl, level: float) -> float:
    """Logarithm of the ellipsoid's volume, up to a constant of its dimension."""
    sign, size = np.linalg.slogdet(region.curvature)
    room = max(level**2 - region.least, 1e-300)
    return region.centre.size * math.log(room) - float(size) if sign.real > 0.0 else math.inf


# sets of one plane, their vectors, and which of them: one for each plane
Candidates = tuple[tuple[Whole, Complex, Whole], ...]


class _Shadow:
    """The ellipsoid of a level, and the sets of each plane in its shadow, listed when first needed."""

    def __init__(self, planes: Sequence[Sets], region: Bowl, level: float, work: Work) -> None:
        self._planes, self._region, self._work = planes, region, work
        self._room_of_shadow = self._room(level)
        self._known: dict[tuple[int, int], tuple[Whole, Complex]] = {}

    def _room(self, level: float) -> float:
        return max(0.0, level**2 - self._region.least) + _SLACK * level**2

    def _sets(self, plane: int, pieces: int) -> tuple[Whole, Complex]:
        if (plane, pieces) not in self._known:
            others = [p for p in range(len(self._planes)) if p != plane]
            apart = axes(self._region.curvature, [plane, *others])[0][0]
            centre, radius = complex(self._region.centre[plane]), math.sqrt(self._room_of_shadow / apart)
            self._known[plane, pieces] = self._planes[plane].within(pieces, centre, radius, self._work)
        return self._known[plane, pieces]

    def candidates(self, pieces: int, level: float) -> Iterator[Candidates]:
        """All choices of exactly so many pieces inside the ellipsoid of this level, no higher than the shadow's own."""
        for split in _splits(pieces, len(self._planes)):
            self._work.spend(_A_SPLIT)
            order = sorted(range(len(split)), key=lambda p: split[p])  # short lists first; nothing is listed in vain
            parts = axes(self._region.curvature, order)
            start = (np.zeros((1, 0), dtype=np.int64), np.zeros((1, 0), dtype=np.complex128))
            yield from self._joined(split, order, parts, *start, np.array([self._room(level)]))

    def _joined(
        self,
        split: tuple[int, ...],
        order: list[int],
        parts: list[tuple[float, Complex]],
        chosen: Whole,
        away: Complex,
        rest: Real,
    ) -> Iterator[Candidates]:
        """Choices (n, planes so far) continued: each has a disc of the next plane, `rest` (n,) being its share of room."""
        done = chosen.shape[1]
        if done == len(order):
            at = dict(zip(order, chosen.T, strict=True))
            yield tuple((*self._sets(p, split[p]), at[p]) for p in range(len(order)))
            return
        plane = order[done]
        _, sums = self._sets(plane, split[plane])
        own, mixed = parts[done]
        centres = -away @ mixed
        for query, point in near(sums - self._region.centre[plane], centres, np.sqrt(rest / own), self._work):
            beyond = sums[point] - self._region.centre[plane]
            left = rest[query] - own * np.abs(beyond - centres[query]) ** 2
            yield from self._joined(
                split, order, parts, np.column_stack([chosen[query], point]), np.column_stack([away[query], beyond]),
                np.maximum(0.0, left),
            )  # fmt: skip


def _splits(pieces: int, planes: int) -> Iterator[tuple[int, ...]]:
    """All ways to share pieces among planes, no more than are listed for one."""
    if planes == 1:
        if pieces <= MOST_IN_A_PLANE:
            yield (pieces,)
        return
    for first in range(min(pieces, MOST_IN_A_PLANE) + 1):
        yield from ((first, *others) for others in _splits(pieces - first, planes - 1))


def axes(curvature: Complex, order: Sequence[int]) -> list[tuple[float, Complex]]:
    """xᴴ·curvature·x as Σ own_i·|x_i + mixed_i·(x of the planes before)|², in this order of the planes."""
    rest = curvature[np.ix_(order, order)]
    parts = []
    for i in reversed(range(len(order))):
        own = max(float(rest[i, i].real), 1e-300)
        parts.append((own, rest[i, :i] / own))
        rest = rest[:i, :i] - np.outer(rest[:i, i], rest[i, :i]) / own
    return parts[::-1]


def _look(task: Task, found: Found, candidates: Candidates) -> None:
    """Work out the largest residual of candidates, and offer the best that the stock allows."""
    pieces = sum(sets.shape[1] for sets, _, _ in candidates)
    left = np.arange(candidates[0][2].size)
    largest = np.zeros(left.size)
    for v, coefficients in zip(task.base, task.influence, strict=True):
        residual = np.full(left.size, v)
        for h, (_, sums, which) in zip(coefficients, candidates, strict=True):
            residual += h * sums[which[left]]
        largest = np.maximum(largest, np.abs(residual))
        below = largest < found.largest[pieces]
        left, largest = left[below], largest[below]
    chosen = [sets[which[left]] for sets, _, which in candidates]
    sizes = np.hstack([p.atoms.sizes[c] for p, c in zip(task.planes, chosen, strict=True)])
    there = np.flatnonzero(stock_allows(sizes, task.counts))
    if there.size:
        best = there[int(largest[there].argmin())]
        found.offer(float(largest[best]), tuple(tuple(int(i) for i in c[best]) for c in chosen))
