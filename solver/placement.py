"""Which pieces at hand go to which allowed positions: the least largest residual for every number of pieces.

Up to four pieces a plane are searched to a proof (`enumeration`), however many planes; where the stock is too small for
that, pieces are added one by one. Planes without positions take a piece at any angle: sets are searched on a grid, then
the angles are turned to their best. Every choice carries the bound and whether it was reached.
"""

from __future__ import annotations

import contextlib
import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import vectors
from stillshaft.dsp.units import InputError
from stillshaft.solver.enumeration import (
    MOST_IN_A_PLANE,
    Atoms,
    Found,
    OutOfWork,
    Report,
    Sets,
    Task,
    Work,
    axes,
    bowls,
    search,
    stock_allows,
)
from stillshaft.solver.runs import StockMass

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]
Whole = NDArray[np.int64]

PROVEN = 0.002  # of the initial vibration: what a choice may be above the bound and still be called optimal
_AIM = 0.0002  # what the search aims at
_COARSE_DEG, _FINE_DEG = 5.0, 0.25  # grids of planes without positions: for sets, and for single pieces
_MOST_JOINED = 1500  # atoms of a plane that make pairs: a million of them
_REACHED = 0.01  # of the initial vibration above what any masses do: more pieces a plane than are listed have no point
_MOST_BEYOND = 12  # pieces a plane where the stock is too small for the listed sets
_WORK = 5_000_000  # candidates looked at for each number of pieces: half a second
_SEEDS, _KEPT = 2, 30  # sets of each number near a plane's optimum; choices of each number made of them


class PlacementError(InputError):
    """Pieces that cannot be placed: the message says what is missing."""


@dataclass(frozen=True)
class Places:
    """Where pieces may sit in one plane: `angles_deg` of the allowed positions, None for any angle.

    `leverages` are radii over the plane's own. `per_position` and `position_cap` are the most pieces and the most mass
    of a position, `cap` the most mass of the plane. `taken` are pieces that sit there already: (position or None, mass).
    """

    angles_deg: tuple[float, ...] | None
    leverages: tuple[float, ...] = (1.0,)
    per_position: int | None = None
    position_cap: float | None = None
    cap: float | None = None
    taken: tuple[tuple[int | None, float], ...] = ()


@dataclass(frozen=True)
class Placed:
    """A piece put on: `plane` and `position` count from 0 (no position: any angle), mass negative where it is taken off."""

    plane: int
    position: int | None
    angle_deg: float
    leverage: float
    mass: float


@dataclass(frozen=True)
class Choice:
    """Pieces, the mass vector (P,) they make at each plane's own radius, and the largest weighted residual.

    No choice of as many pieces or fewer, at most four a plane, is below `bound`; with more on a plane, no masses at all
    are. `optimal` where `largest` is within 0.2 % of the initial vibration of it.
    """

    pieces: tuple[Placed, ...]
    masses: Complex
    largest: float
    bound: float
    optimal: bool


@dataclass(frozen=True)
class Curve:
    """`choices[K]` is the best with at most K pieces; `continuous` bounds what any masses at any angles could reach."""

    choices: tuple[Choice, ...]
    continuous: float
    scale: float

    @property
    def best(self) -> Choice:
        """The choice with the least largest residual."""
        return self.choices[-1]

    def fewest(self, largest: float) -> Choice:
        """The choice of fewest pieces with no larger a residual than this; the best where there is none."""
        return next((c for c in self.choices if c.largest <= largest), self.best)


def choose(
    base: Complex,
    influence: Complex,
    places: Sequence[Places],
    stock: Sequence[StockMass],
    *,
    weights: Real | None = None,
    scale: float | None = None,
    most: int | None = None,
    report: Report | None = None,
) -> Curve:
    """Choices of pieces that make max_m weights_m·|base_m + (influence·w)_m| least, for every number of pieces.

    `base` (M,) is the vibration without them, `influence` (M, P) per mass unit at each plane's own radius; a negative
    mass in the stock takes metal off. `scale` is the initial vibration that shares are of (by default the largest of
    `base`), `most` the largest number of pieces. `report` may raise to cancel. Raises PlacementError.
    """
    v, h, size = _checked(base, influence, places, stock, weights, scale, most)
    counts = np.array([s.count for s in stock], dtype=np.int64)
    atoms = [_atoms(p, stock, counts) for p in places]
    if not any(a.vectors.size for a in atoms):
        raise PlacementError("no piece of the stock fits any allowed position; look at blocked, cap and position_cap")
    listed = min(int(counts.sum()), MOST_IN_A_PLANE * len(places))
    number = listed if most is None else min(most, listed)
    within = _AIM * size
    problem = _Problem(v, h, tuple(atoms), counts, within, size, report)
    lowest = math.sqrt(bowls(v, h)[0].least)
    found = _start(problem, number)
    search(problem.task(), found, problem.within, problem.scale, Work(_WORK, report))
    _beyond(problem, found, lowest, most)
    return _curve(problem, found, places, stock, lowest)


@dataclass(frozen=True)
class _Problem:
    """Weighted rows, the atoms of each plane, the stock."""

    base: Complex
    influence: Complex
    atoms: tuple[Atoms, ...]
    counts: Whole
    within: float
    scale: float
    report: Report | None

    def masses(self, sets: Sequence[Sequence[int]]) -> Complex:
        """Mass vector (P,) of a set of atoms for each plane."""
        sums = [a.vectors[np.asarray(s, dtype=np.int64)].sum() for a, s in zip(self.atoms, sets, strict=True)]
        return np.array(sums, dtype=np.complex128)

    def largest(self, masses: Complex) -> float:
        """Largest residual that mass vectors leave."""
        return float(np.abs(self.base + self.influence @ masses).max())

    def task(self) -> Task:
        """The search over all planes of the problem."""
        return Task(self.base, self.influence, tuple(Sets(a, self.counts) for a in self.atoms), self.counts)

    def beside(self, held: Sequence[Sequence[int]]) -> _Problem:
        """What is left to choose beside the atoms that are held."""
        used = np.zeros_like(self.counts)
        for a, s in zip(self.atoms, held, strict=True):
            np.add.at(used, a.sizes[np.asarray(s, dtype=np.int64)], 1)
        atoms = tuple(a.beside(s) for a, s in zip(self.atoms, held, strict=True))
        return replace(
            self, base=self.base + self.influence @ self.masses(held), atoms=atoms, counts=self.counts - used
        )


def _checked(
    base: Complex,
    influence: Complex,
    places: Sequence[Places],
    stock: Sequence[StockMass],
    weights: Real | None,
    scale: float | None,
    most: int | None,
) -> tuple[Complex, Complex, float]:
    """Weighted base and influence, and the scale."""
    v = np.asarray(base, dtype=np.complex128)
    h = np.asarray(influence, dtype=np.complex128)
    s = np.ones(v.size) if weights is None else np.asarray(weights, dtype=np.float64)
    if v.ndim != 1 or not v.size or h.shape != (v.size, len(places)) or s.shape != v.shape:
        raise PlacementError(f"base {v.shape}, influence {h.shape}, weights {s.shape}, {len(places)} planes do not fit")
    if not (np.isfinite(v).all() and np.isfinite(h).all() and np.isfinite(s).all() and (s > 0.0).all()):
        raise PlacementError("base, influence and weights must be finite, weights above 0")
    if not len(places):
        raise PlacementError("there is no plane to place pieces in; add a [[plane]]")
    if not any(piece.count > 0 for piece in stock):
        raise PlacementError('no stock: say which pieces are at hand, such as [[stock]] mass = "5 g", count = 10')
    for number, piece in enumerate(stock, start=1):
        if not (math.isfinite(piece.mass) and piece.mass and piece.count >= 0):
            raise PlacementError(
                f"stock {number}: {piece.count} pieces of {piece.mass:g}: a mass must not be 0, nor a count below it"
            )
    for number, place in enumerate(places, start=1):
        if place.angles_deg is not None and not place.angles_deg:
            raise PlacementError(f"plane {number}: all positions are blocked; free one")
    if most is not None and most < 0:
        raise PlacementError(f"at most {most} pieces: must be 0 or more")
    size = float(np.abs(s * v).max()) if scale is None else scale
    return s * v, h * s[:, None], size if size > 0.0 else 1.0


def _atoms(places: Places, stock: Sequence[StockMass], counts: Whole) -> Atoms:
    """All single pieces of a plane; where there are too many to pair, some positions serve for single pieces only."""
    grid = places.angles_deg
    if grid is None:
        grid = tuple(np.concatenate([np.arange(0.0, 360.0, _COARSE_DEG), np.arange(0.0, 360.0, _FINE_DEG)]))
    of_a_position = len(places.leverages) * len(stock)
    coarse = round(360.0 / _COARSE_DEG) if places.angles_deg is None else len(grid)
    every = max(1, math.ceil(coarse * of_a_position / _MOST_JOINED))
    paired = list(range(0, coarse, every))
    order = np.array(paired + [p for p in range(len(grid)) if p % every or p >= coarse])
    position, leverage, size = (
        i.ravel() for i in np.meshgrid(order, range(len(places.leverages)), range(len(stock)), indexing="ij")
    )
    turned = np.array([vectors.vector(1.0, angle) for angle in grid])
    masses = np.array([s.mass for s in stock], dtype=np.float64)
    moments = turned[position] * np.array(places.leverages)[leverage] * masses[size]
    pieces = np.full(len(grid), math.inf)
    mass = np.full(len(grid), math.inf if places.position_cap is None else places.position_cap)
    if places.angles_deg is not None and places.per_position is not None:
        pieces[:] = places.per_position
    room = math.inf if places.cap is None else places.cap
    for at, taken in places.taken:
        room -= abs(taken)
        if at is not None:
            pieces[at] -= 1.0
            mass[at] -= abs(taken)
    atoms = Atoms(moments, np.abs(masses[size]), size, position, pieces, mass, room, len(paired) * of_a_position)
    if not atoms.allowed(np.arange(moments.size)[:, None], counts).any():
        return replace(atoms, vectors=moments[:0], joined=0)
    return atoms


def _start(problem: _Problem, number: int) -> Found:
    """Choices to begin with: sets near the continuous optimum of each plane, and the best with one piece more each time."""
    nothing: tuple[tuple[int, ...], ...] = tuple(() for _ in problem.atoms)
    none = problem.largest(problem.masses(nothing))
    found = Found([none] * (number + 1), [nothing] * (number + 1), [0.0] * (number + 1))
    for sets in _near_the_optimum(problem, number):
        _offer(problem, found, sets)
    for pieces in range(1, number + 1):
        _with_one_more(problem, found, found.sets[pieces - 1])
        while _with_one_moved(problem, found, pieces):
            pass
    return found


def _near_the_optimum(problem: _Problem, number: int) -> list[tuple[tuple[int, ...], ...]]:
    """Choices made of sets near each plane's continuous optimum, plane by plane the most promising kept.

    Promising by the residual that is left once the planes to come are at their best.
    """
    region = bowls(problem.base, problem.influence)[0]
    parts = axes(region.curvature, range(len(problem.atoms)))
    kept: list[tuple[float, Complex, tuple[tuple[int, ...], ...]]] = [(0.0, region.centre[:0], ())]
    for plane, (atoms, (own, mixed)) in enumerate(zip(problem.atoms, parts, strict=True)):
        centre = complex(region.centre[plane])
        longer: dict[int, list[tuple[float, Complex, tuple[tuple[int, ...], ...]]]] = {}
        for near in _near(problem, plane, centre, number):
            away = complex(atoms.vectors[list(near)].sum()) - centre
            for cost, before, sets in kept:
                more = cost + own * abs(away + complex(mixed @ before)) ** 2
                pieces = len(near) + sum(len(s) for s in sets)
                if pieces <= number:
                    longer.setdefault(pieces, []).append((more, np.append(before, away), (*sets, near)))
        kept = [x for same in longer.values() for x in sorted(same, key=lambda x: x[0])[:_KEPT]]
    return [sets for _, _, sets in kept]


def _near(problem: _Problem, plane: int, target: complex, number: int) -> list[tuple[int, ...]]:
    atoms = problem.atoms[plane]
    if not atoms.vectors.size:
        return [()]
    listed, work = Sets(atoms, problem.counts), Work(_WORK, problem.report)
    start = 1e-3 * max(abs(target), float(np.abs(atoms.vectors).max()))
    near: list[tuple[int, ...]] = [()]
    with contextlib.suppress(OutOfWork):  # only somewhere to begin: the rest is found without
        for pieces in range(1, min(number, MOST_IN_A_PLANE) + 1):
            sets = listed.nearest(pieces, target, _SEEDS, start, work)
            near += [tuple(int(i) for i in row) for row in sets]
    return near


def _offer(problem: _Problem, found: Found, sets: tuple[tuple[int, ...], ...]) -> None:
    if sum(len(s) for s in sets) >= len(found.largest):
        return
    sizes = np.concatenate([a.sizes[np.asarray(s, np.int64)] for a, s in zip(problem.atoms, sets, strict=True)])
    if stock_allows(sizes[None, :], problem.counts)[0]:
        found.offer(problem.largest(problem.masses(sets)), sets)


def _with_one_more(
    problem: _Problem, found: Found, sets: tuple[tuple[int, ...], ...], most: int = MOST_IN_A_PLANE
) -> bool:
    """Offer the best piece to add to a choice; whether that was better than what is known."""
    rest = problem.beside(sets)
    best: tuple[float, int, int] | None = None
    for plane, atoms in enumerate(rest.atoms):
        if len(sets[plane]) >= most or not atoms.vectors.size:
            continue
        single = np.flatnonzero(atoms.allowed(np.arange(atoms.vectors.size)[:, None], rest.counts))
        if single.size:
            left = rest.base[:, None] + rest.influence[:, plane, None] * atoms.vectors[single]
            largest = np.abs(left).max(axis=0)
            at = int(largest.argmin())
            if best is None or largest[at] < best[0]:
                best = (float(largest[at]), plane, int(single[at]))
    if best is None:
        return False
    added = tuple(tuple(sorted((*s, best[2]))) if p == best[1] else s for p, s in enumerate(sets))
    return sum(len(s) for s in added) < len(found.largest) and found.offer(best[0], added)


def _with_one_moved(problem: _Problem, found: Found, pieces: int, most: int = MOST_IN_A_PLANE) -> bool:
    """Take each piece of a choice away and put the best one in its stead; whether that helped."""
    sets = found.sets[pieces]
    helped = False
    for plane, own in enumerate(sets):
        for i in range(len(own)):
            without = tuple((*own[:i], *own[i + 1 :]) if p == plane else s for p, s in enumerate(sets))
            helped |= _with_one_more(problem, found, without, most)
    return helped


def _beyond(problem: _Problem, found: Found, lowest: float, most: int | None) -> None:
    """More pieces a plane than the listed sets have, where those do not reach: one more each time, and each moved."""
    if found.largest[-1] - lowest <= _REACHED * problem.scale:
        return
    end = min(int(problem.counts.sum()), _MOST_BEYOND * len(problem.atoms))
    end = end if most is None else min(most, end)
    for pieces in range(MOST_IN_A_PLANE + 1, end + 1):
        if found.largest[min(pieces, len(found.largest) - 1)] - lowest <= problem.within:
            return
        if pieces == len(found.largest):
            found.largest.append(found.largest[-1])
            found.sets.append(found.sets[-1])
            found.searched.append(lowest)
        _with_one_more(problem, found, found.sets[pieces - 1], _MOST_BEYOND)
        while _with_one_moved(problem, found, pieces, _MOST_BEYOND):
            pass


def _curve(
    problem: _Problem, found: Found, places: Sequence[Places], stock: Sequence[StockMass], lowest: float
) -> Curve:
    """The choices with their bounds, up to the number of pieces beyond which there is nothing to gain."""
    choices: list[Choice] = []
    bound = math.inf
    turnable = any(p.angles_deg is None for p in places)
    for pieces, sets in enumerate(found.sets):
        bound = max(lowest, min(bound, found.searched[pieces] - _missed(problem, pieces, places)))
        placed = _placed(problem, sets, places, stock)
        if turnable:
            placed = turned(problem.base, problem.influence, placed, places)
        masses = vector_of(placed, len(places))
        largest = problem.largest(masses)
        if choices and choices[-1].largest <= largest:
            placed, masses, largest = choices[-1].pieces, choices[-1].masses, choices[-1].largest
        crowded = any(sum(x.plane == p for x in placed) > MOST_IN_A_PLANE for p in range(len(places)))
        here = lowest if crowded else min(bound, largest)
        choices.append(Choice(placed, masses, largest, here, largest - here <= PROVEN * problem.scale))
    end = next(k for k, c in enumerate(choices) if c.largest <= choices[-1].largest + 0.5 * problem.within)
    return Curve(tuple(choices[: end + 1]), lowest, problem.scale)


def _missed(problem: _Problem, pieces: int, places: Sequence[Places]) -> float:
    """How far below a searched level a choice may lie that the grids leave out; infinite where it cannot be told."""
    missed = 0.0
    for column, (atoms, place) in enumerate(zip(problem.atoms, places, strict=True)):
        if pieces > 1 and atoms.joined < atoms.vectors.size:
            return math.inf
        if pieces == 1 and place.angles_deg is None:
            chord = 2.0 * math.sin(math.radians(_FINE_DEG) / 4.0)
            reach = float(np.abs(atoms.vectors).max(initial=0.0) * np.abs(problem.influence[:, column]).max())
            missed = max(missed, chord * reach)
    return missed


def _placed(
    problem: _Problem, sets: Sequence[Sequence[int]], places: Sequence[Places], stock: Sequence[StockMass]
) -> tuple[Placed, ...]:
    pieces = []
    for plane, (atoms, own, place) in enumerate(zip(problem.atoms, sets, places, strict=True)):
        for i in own:
            mass = stock[int(atoms.sizes[i])].mass
            leverage = min(place.leverages, key=lambda x: abs(x - abs(atoms.vectors[i]) / abs(mass)))
            at = None if place.angles_deg is None else int(atoms.positions[i])
            _, angle_deg = vectors.amplitude_phase(complex(atoms.vectors[i]) / (mass * leverage))
            angle = angle_deg if at is None or place.angles_deg is None else place.angles_deg[at]
            pieces.append(Placed(plane, at, angle, leverage, mass))
    return tuple(sorted(pieces, key=_in_order))


def vector_of(pieces: Sequence[Placed], planes: int) -> Complex:
    """Mass vector (P,) of pieces, each plane at its own radius."""
    masses = np.zeros(planes, dtype=np.complex128)
    for p in pieces:
        masses[p.plane] += p.mass * p.leverage * vectors.vector(1.0, p.angle_deg)
    return masses


def turned(
    base: Complex, influence: Complex, pieces: tuple[Placed, ...], places: Sequence[Places]
) -> tuple[Placed, ...]:
    """Pieces at any angle turned from where they are to where the largest residual is least; those at positions stay.

    Sequential quadratic programming in the angles: least u with |r_m|² ≤ u. Taken only where it helps.
    """
    from scipy.optimize import minimize

    free = [i for i, x in enumerate(pieces) if places[x.plane].angles_deg is None]
    if not free:
        return pieces
    planes = [pieces[i].plane for i in free]
    moments = np.array([pieces[i].mass * pieces[i].leverage for i in free])
    held = tuple(x for i, x in enumerate(pieces) if i not in free)
    fixed = base + influence @ vector_of(held, len(places))
    effect = influence[:, planes] * moments
    start = np.array([vectors.vector(1.0, pieces[i].angle_deg) for i in free])
    unit = float(np.abs(fixed + effect @ start).max())
    if unit == 0.0:
        return pieces

    def room(x: Real) -> Real:
        return np.asarray(x[0] - np.abs(fixed + effect @ (start * np.exp(1j * x[1:]))) ** 2 / unit**2)

    def slope(x: Real) -> Real:
        turn = start * np.exp(1j * x[1:])
        left = fixed + effect @ turn
        along = -2.0 * (left.conj()[:, None] * (1j * effect * turn)).real / unit**2
        return np.column_stack([np.ones(left.size), along])

    level = np.zeros(1 + len(free))
    level[0] = 1.0
    found = minimize(
        lambda x: x[0], level, jac=lambda x: np.eye(1, x.size)[0], method="SLSQP",
        constraints={"type": "ineq", "fun": room, "jac": slope}, options={"ftol": 1e-12, "maxiter": 200},
    ).x  # fmt: skip
    ends = start * np.exp(1j * found[1:])
    if not np.isfinite(ends).all() or np.abs(fixed + effect @ ends).max() >= unit:
        return pieces
    moved = [
        replace(pieces[i], angle_deg=vectors.amplitude_phase(complex(end))[1])
        for i, end in zip(free, ends, strict=True)
    ]
    return tuple(sorted((*held, *moved), key=_in_order))


def _in_order(piece: Placed) -> tuple[int, float, float]:
    return piece.plane, piece.angle_deg, piece.mass
