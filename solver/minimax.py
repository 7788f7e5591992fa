"""The least largest vibration: masses for min max s_m·|v_m + H_m·w|, with a bound that proves it.

It serves where a stated limit at one point binds. It is not the safer choice: over many jobs the largest residual that is
truly left is no smaller than with least squares or the least expected residual, since coefficients are only measured.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.solver.capped import (
    GAP,
    NOMINAL,
    Caps,
    ConeError,
    axes_of,
    checked_caps,
    discs_of,
    put_right,
    solve_cones,
    stopped,
    weighted,
    within,
)
from stillshaft.solver.influence import as_complex

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

_BINDING = 1e-5  # of the largest weighted vibration: a row nearer to the worst than this reaches it


@dataclass(frozen=True)
class Minimax:
    """Masses (P,) and the `worst` weighted residual that they leave, with a `lower_bound` that no masses come below.

    `at_cap` are the planes whose cap stops them, `binding` the rows that reach the worst (none where nothing is left).
    `status` is "solved", or "not proven" with a reason.
    """

    masses: Complex
    worst: float
    lower_bound: float
    at_cap: tuple[int, ...]
    binding: tuple[int, ...]
    status: str
    reason: str | None

    @property
    def gap(self) -> float:
        """How far the worst can be above the least."""
        return self.worst - self.lower_bound


@dataclass(frozen=True)
class LimitCheck:
    """What a correction and the minimax one do to stated limits, as far as the coefficients say.

    `broken` are the points whose limit the correction breaks. `can_be_met` tells whether any masses within the caps meet
    all limits (None: nearer than the bound can tell), `blocking` are the points that stand in the way if not. `minimax`
    is weighted by the limits: its worst is the largest share of a limit.
    """

    broken: tuple[int, ...]
    can_be_met: bool | None
    blocking: tuple[int, ...]
    minimax: Minimax
    sentence: str


def minimax(
    vibration: Complex, influence: Complex, *, weights: Real | None = None, caps: Caps | None = None
) -> Minimax:
    """Masses (P,) for the least max s_m·|v_m + H_m·w|, v (M,), H (M, P), weights s (M,), |w_p| ≤ cap_p.

    A second-order cone programme (Lobo, Vandenberghe, Boyd, Lebret, Applications of second-order cone programming, 1998,
    from memory), solved on the axes of the capped effects.

    Raises ConeError for arrays, weights or caps that cannot be used.
    """
    rows, columns, _ = weighted(vibration, influence, weights)
    limits = checked_caps(caps, columns.shape[1])
    masses = np.zeros(columns.shape[1], dtype=np.complex128)
    scale = float(np.abs(rows).max())
    lengths = np.linalg.norm(columns, axis=0)
    moved = lengths > 0.0
    lower = 0.0
    if scale > 0.0 and np.any(moved):
        discs = np.minimum(limits[moved], NOMINAL * scale / lengths[moved])
        parts, lower = _in_cones(rows / scale, columns[:, moved] * discs / scale)
        masses[moved] = discs * parts
    elif scale > 0.0:
        lower = 1.0
    worst = float(np.abs(rows + columns @ masses).max())
    lower = min(worst, scale * lower)
    proven = worst - lower <= GAP * scale
    return Minimax(
        masses,
        worst,
        lower,
        stopped(masses, limits),
        _binding(np.abs(rows + columns @ masses), scale),
        "solved" if proven else "not proven",
        None if proven else f"the least may be lower by {worst - lower:.3g}: the cone solver found no proof",
    )


def lower_bound(vibration: Complex, influence: Complex, caps: Real, mix: Complex) -> float:
    """A level that max|v_m + H_m·w| does not fall below while |w_p| ≤ cap_p, from any complex `mix` (M,) of the rows.

    With Σ|y_m| ≤ 1 max|r_m| ≥ Σ|y_m|·|r_m| ≥ −Re(yᴴr) ≥ −Re(yᴴv) − Σ cap_p·|(Hᴴy)_p|, whoever found y.
    """
    y = mix / max(1.0, float(np.abs(mix).sum()))
    return max(0.0, float(-np.real(np.vdot(y, vibration)) - caps @ np.abs(influence.conj().T @ y)))


def limits_bind(
    vibration: Complex,
    influence: Complex,
    masses: Complex,
    limits: Sequence[float | None],
    *,
    caps: Caps | None = None,
) -> LimitCheck:
    """Which limits (M,) a correction breaks, and whether other masses would meet them all.

    A point without a limit (None) may not come out above the largest vibration there is now. Scatter is not counted: a
    limit that is met here by a hair is met by luck. Raises ConeError for limits that cannot be used.
    """
    v, h, _ = weighted(vibration, influence, None)
    if len(limits) != v.size or any(b is not None and not (math.isfinite(b) and b > 0.0) for b in limits):
        raise ConeError(f"limits {list(limits)}: give an amplitude above 0, or None, for each of the {v.size} points")
    if all(b is None for b in limits):
        raise ConeError("limits: none of the points has one; state the limit that is to be met")
    highest = max(float(np.abs(v).max()), max(b for b in limits if b is not None))
    allowed = np.array([highest if b is None else b for b in limits])
    left = np.abs(v + h @ np.asarray(masses, dtype=np.complex128)) / allowed
    broken = tuple(int(m) for m in np.flatnonzero(left > 1.0))
    best = minimax(v, h, weights=1.0 / allowed, caps=caps)
    possible = True if best.worst <= 1.0 else False if best.lower_bound > 1.0 else None
    blocking = best.binding if possible is False else ()
    return LimitCheck(broken, possible, blocking, best, _sentence(broken, possible, best))


def _sentence(broken: tuple[int, ...], possible: bool | None, best: Minimax) -> str:
    if not broken:
        return "the correction meets every limit, as far as the coefficients say"
    which = "the limit of one point" if len(broken) == 1 else f"the limits of {len(broken)} points"
    if possible:
        return (
            f"the correction breaks {which}; the least largest share meets all of them with {100 * best.worst:.0f} % of "
            "the worst limit used, scatter not counted"
        )
    if possible is None:
        return f"the correction breaks {which}; whether any masses meet all of them is too close to tell"
    stop = " and the caps of the planes" if best.at_cap else ""
    return (
        f"the correction breaks {which}, and no masses meet all of them: {100 * best.lower_bound:.0f} % of a limit is the "
        f"least with these planes{stop}"
    )


def _in_cones(vibration: Complex, influence: Complex) -> tuple[Complex, float]:
    """Masses as parts of their discs, and a lower bound; v at most 1, columns of H as a whole disc of mass moves the rows."""
    left, effect, turn = axes_of(influence)
    # an axis that matters is measured by its effect, one that hardly does by its mass: every number stays near 1
    size = np.maximum(effect, 1.0)
    residual, offsets = discs_of(left * np.minimum(effect, 1.0), vibration)
    capped, stand = discs_of(turn / size)
    offsets[0::3] = 0.0
    level = np.zeros((residual.shape[0] + capped.shape[0], 1))
    level[: residual.shape[0] : 3] = -1.0  # the residuals' cones are as wide as the level that is to be least
    linear = np.zeros(1 + residual.shape[1])
    linear[0] = 1.0
    found = solve_cones(
        np.zeros((linear.size, linear.size)),
        linear,
        np.hstack([level, np.vstack([residual, capped])]),
        np.concatenate([offsets, stand]),
    )
    if found is None:
        return np.zeros(effect.size, dtype=np.complex128), 0.0
    duals = found[1][1::3] + 1j * found[1][2::3]
    mix, push = duals[: vibration.size], turn.conj().T @ duals[vibration.size :]
    exact = put_right(mix, left, effect, turn, -push)
    parts = within(turn @ (as_complex(found[0][1:]) / size))
    return parts, max(lower_bound(vibration, influence, np.ones(effect.size), y) for y in (mix, exact))


def _binding(residuals: Real, scale: float) -> tuple[int, ...]:
    worst = float(residuals.max())
    if worst <= _BINDING * scale:
        return ()
    return tuple(int(m) for m in np.flatnonzero(residuals >= worst - _BINDING * scale))
