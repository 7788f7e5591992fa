"""From a runs file to pieces: what the stock at hand can do at the allowed positions, and what is proposed of it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import vectors
from stillshaft.solver import consistency, correction, handwork
from stillshaft.solver.correction import Predicted
from stillshaft.solver.enumeration import Report
from stillshaft.solver.influence import Fit, Prior, fit_all, state_of
from stillshaft.solver.placement import Choice, Curve, Placed, PlacementError, Places, choose, vector_of
from stillshaft.solver.runs import Plane, Runs, StockMass

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

AIMS = ("proposal", "best", "fewest")
_NEAR_ENOUGH = 0.01  # of the initial vibration: what the proposal gives away for fewer pieces
_SHARE_OF_SCATTER = 0.5  # or this share of what is uncertain anyway
_SAME = 0.02  # of the largest mass: what fewer pieces may be off by and still do the same
_AT_A_POSITION_DEG = 1.0  # a mass that is on sits at a position that is no further off


@dataclass(frozen=True)
class Plan:
    """Pieces proposed for a runs file.

    `chosen` is one of the `curve`'s choices, `total` (P,) what is on then beyond the initial state. The residuals of
    both are in `unit`: the vibration unit, or shares of each point's limit. `handbook` is the number of pieces and the
    largest residual of the least-squares masses split between neighbouring positions and rounded to the stock, None where
    a plane has no positions on both sides. `enough` is what the residual had to be; `left_on` says what stays on the rotor.
    """

    curve: Curve
    chosen: Choice
    planes: tuple[Plane, ...]
    total: Complex
    predicted: tuple[Predicted, ...]
    handbook: tuple[int, float] | None
    enough: float
    unit: str
    left_on: bool
    warnings: tuple[str, ...]
    reasons: tuple[str, ...]

    @property
    def trusted(self) -> bool:
        """True when the correction that the pieces stand for is determined."""
        return not self.reasons


def plan(
    runs: Runs,
    stock: Sequence[StockMass] | None = None,
    *,
    aim: str = "proposal",
    most: int | None = None,
    goal: float | None = None,
    left_on: bool = False,
    priors: Sequence[Prior] = (),
    report: Report | None = None,
) -> Plan:
    """Pieces of the stock for a runs file's planes, all trial masses off or those of the last run left on.

    "best" is the least largest vibration; "proposal" the fewest pieces that are within 1 % of the initial vibration of
    it, or within half of what is uncertain anyway; "fewest" the fewest that keep every point below `goal`, or below its
    own limit in the file. `priors` are coefficients known beforehand. `report` may raise to cancel. Raises
    PlacementError, RunsError.
    """
    if aim not in AIMS:
        raise PlacementError(f"aim {aim}: cannot be used; choose {', '.join(AIMS)}")
    at_hand = tuple(runs.stock if stock is None else stock)
    solution = correction.solve(runs, priors=priors)
    runs, _ = consistency.with_measured_repeatability(runs)
    fits = fit_all(runs, priors=priors).fits
    on = runs.runs[-1].masses if left_on else np.zeros(len(runs.planes), dtype=np.complex128)
    influence = np.vstack([f.influence for f in fits])
    initial = np.concatenate([f.initial for f in fits])
    base = _left(runs, fits, solution.consistency.doubted) if left_on else initial
    weights, unit = _weights(runs, aim, goal, len(fits))
    places = tuple(places_of(runs, p, left_on=left_on) for p in range(len(runs.planes)))
    scale = float(np.abs(weights * initial).max())
    curve = choose(base, influence, places, at_hand, weights=weights, scale=scale, most=most, report=report)
    if aim == "fewest":
        enough = 1.0 if goal is None else goal
    else:
        scatter = _SHARE_OF_SCATTER * _scatter(runs, fits, on + curve.best.masses, weights)
        enough = curve.best.largest + (max(_NEAR_ENOUGH * scale, scatter) if aim == "proposal" else 0.0)
    chosen = curve.fewest(enough)
    total: Complex = on + chosen.masses
    warnings = [*solution.warnings, *_unsaid(runs, places)]
    if _side_by_side(chosen, places):
        warnings.append("pieces that come out at one angle sit side by side, evenly about it")
    if aim == "fewest" and chosen.largest > enough:
        warnings.append(f"no choice of the stock stays below {enough:g} {unit}; this is the best there is")
    return Plan(
        curve, chosen, runs.planes, total, correction.predict(runs, fits, total),
        handbook(base, influence, weights, places, at_hand), enough, unit, left_on, tuple(warnings), solution.reasons,
    )  # fmt: skip


def combined(
    runs: Runs,
    stock: Sequence[StockMass] | None = None,
    *,
    most: int | None = None,
    report: Report | None = None,
) -> Plan:
    """The fewest pieces that do what the masses of the last run do, to 2 % of the largest of them.

    Raises PlacementError where nothing is on, or where the stock does not reach it.
    """
    on = runs.runs[-1].masses
    size = float(np.abs(on).max(initial=0.0))
    if not size:
        raise PlacementError(f'run "{runs.runs[-1].name}": nothing is on the rotor that could be combined')
    places = tuple(places_of(runs, p, left_on=False) for p in range(len(runs.planes)))
    alone = np.eye(len(on), dtype=np.complex128)
    curve = choose(-on, alone, places, runs.stock if stock is None else stock, most=most, report=report)
    enough = _SAME * size
    chosen = curve.fewest(enough)
    if chosen.largest > enough:
        raise PlacementError(
            f"the stock does not make the same masses to {100.0 * _SAME:g} %: the nearest is off by "
            f"{chosen.largest:.3g} {runs.mass_unit}; allow more, or get other pieces"
        )
    return Plan(
        curve, chosen, runs.planes, chosen.masses, (), None, enough, runs.mass_unit, False,
        tuple(_unsaid(runs, places)), (),
    )  # fmt: skip


def places_of(runs: Runs, plane: int, *, left_on: bool) -> Places:
    """Where pieces may sit in a plane; one at a position where the file does not say how many."""
    known = runs.planes[plane]
    allowed = _allowed(known)
    angles = None if known.positions_deg is None else tuple(known.positions_deg[k] for k in allowed)
    leverages = (1.0, *(r / known.radius_mm for r in known.radii_mm)) if known.radius_mm else (1.0,)
    taken = []
    for piece in runs.runs[-1].pieces if left_on else ():
        if piece.plane == plane:
            mass, angle_deg = vectors.amplitude_phase(piece.mass)
            taken.append((None if angles is None else _position_near(angle_deg, angles), mass))
    per_position = 1 if angles is not None and known.per_position is None else known.per_position
    return Places(angles, tuple(dict.fromkeys(leverages)), per_position, known.position_cap, known.cap, tuple(taken))


def number_of(plane: Plane, piece: Placed) -> int | None:
    """Number of a piece's position as the file counts them, from 1."""
    return None if piece.position is None else _allowed(plane)[piece.position] + 1


def _allowed(plane: Plane) -> list[int]:
    return [k for k in range(len(plane.positions_deg or ())) if k + 1 not in plane.blocked]


def _position_near(angle_deg: float, angles_deg: Sequence[float]) -> int | None:
    if not angles_deg:
        return None
    off = [abs((a - angle_deg + 180.0) % 360.0 - 180.0) for a in angles_deg]
    nearest = int(np.argmin(off))
    return nearest if off[nearest] <= _AT_A_POSITION_DEG else None


def _left(runs: Runs, fits: Sequence[Fit], doubted: bool) -> Complex:
    """Vibration with the masses of the last run on: smoothed by all runs, or as measured where these do not fit together."""
    on = runs.runs[-1].masses
    states = []
    for f in fits:
        same = np.array_equal(f.last.masses, on) and not runs.amplitudes_only
        smoothed = f.state if same else f.initial + f.influence @ on
        states.append(f.last.vectors if same and doubted else smoothed)
    return np.concatenate(states)


def _weights(runs: Runs, aim: str, goal: float | None, speeds: int) -> tuple[Real, str]:
    """Weight of each row, and what a weighted residual is counted in."""
    if goal is not None and not (math.isfinite(goal) and goal > 0.0):
        raise PlacementError(f"goal {goal:g}: must be above 0")
    if aim != "fewest" or goal is not None:
        return np.ones(speeds * len(runs.points)), runs.vibration_unit
    limits = dict(runs.limits)
    without = [p for p in runs.points if limits.get(p, 0.0) <= 0.0]
    if without:
        raise PlacementError(
            f'fewest pieces need to know what is enough: give a goal, or a [[limit]] above 0 for "{without[0]}"'
        )
    return np.tile([1.0 / limits[p] for p in runs.points], speeds), "of the limit"


def _scatter(runs: Runs, fits: Sequence[Fit], masses: Complex, weights: Real) -> float:
    """Root mean square over points of what is uncertain of the vibration with these masses."""
    relative, angle_rad = runs.placement
    squares: list[float] = []
    for f in fits:
        state = state_of(f, 1.0, masses)
        own = np.diag(state @ f.covariance @ state.T).reshape(-1, 2).sum(axis=1)
        placed = (relative**2 + angle_rad**2) * (np.abs(f.influence * masses) ** 2).sum(axis=1)
        squares.extend(own + placed)
    return math.sqrt(float(np.mean(np.array(squares) * weights**2)))


def _unsaid(runs: Runs, places: Sequence[Places]) -> list[str]:
    """What the file leaves open and was taken for granted."""
    taken = [
        f'plane "{plane.name}": one piece a position, the file does not say per_position'
        for plane, place in zip(runs.planes, places, strict=True)
        if place.angles_deg is not None and plane.per_position is None
    ]
    anywhere = [
        f'plane "{plane.name}": pieces at any angle, the file does not say positions'
        for plane, place in zip(runs.planes, places, strict=True)
        if place.angles_deg is None
    ]
    return taken + anywhere


def _side_by_side(chosen: Choice, places: Sequence[Places]) -> bool:
    """Whether pieces of a plane without positions come out at the same angle."""
    at = [(x.plane, round(x.angle_deg)) for x in chosen.pieces if places[x.plane].angles_deg is None]
    return len(set(at)) < len(at)


def handbook(
    base: Complex, influence: Complex, weights: Real, places: Sequence[Places], stock: Sequence[StockMass]
) -> tuple[int, float] | None:
    """Pieces and largest weighted residual of the handbook's way, None where a plane has no positions on both sides.

    Least-squares masses, each split between its neighbouring positions, each share rounded to the stock and
    to what a position takes.
    """
    masses = -np.linalg.lstsq(influence * weights[:, None], weights * base, rcond=None)[0]
    if any(p.angles_deg is None for p in places):
        return None
    pieces: list[Placed] = []
    left = {i: s.count for i, s in enumerate(stock)}
    for plane, (place, wanted) in enumerate(zip(places, masses, strict=True)):
        angles = place.angles_deg or ()
        try:
            shares = handwork.split_between_neighbours(complex(wanted), angles)
        except handwork.HandworkError:
            return None
        for position, share in shares:
            most, cap = place.per_position or math.inf, place.position_cap or math.inf
            for i in handwork.rounded_to_stock(share, [s.mass for s in stock], left, most=most, cap=cap):
                pieces.append(Placed(plane, position, angles[position], 1.0, stock[i].mass))
    residual = weights * np.abs(base + influence @ vector_of(pieces, len(places)))
    return len(pieces), float(residual.max())
