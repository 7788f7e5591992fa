"""Least vibration where a plane takes only so much mass: second-order cone programmes, each with a bound that proves it.

Caps are discs: |w_p| ≤ cap_p at any angle. A plane without one may take a million times the mass that would do the whole
job alone: nothing real comes near it, and it gives every bound a meaning however alike the planes are.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp.units import InputError
from stillshaft.solver.influence import as_complex, as_reals, real_form

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

Caps = Sequence[float | None]

NOMINAL = 1e6  # cap of a plane without one, as a multiple of the mass that would do the whole job alone
GAP = 1e-6  # of the scale of the problem: what a solution must be proven within
AT_CAP = 1e-6  # of the cap: nearer than this is at it
_TOLERANCE = 1e-9  # of the cone solver, well below GAP
_ROUNDING = 1e-9  # of the largest entry: less than this is rounding, not a fault
_FLAT = 1e-15  # curvature beside the largest that is rounding


class ConeError(InputError):
    """A problem that has no least: the message says which array or cap, and what would be right."""


@dataclass(frozen=True)
class Capped:
    """The least of a quadratic under caps: `masses` (P,), its `value`, and a `lower_bound` that no masses fall below.

    `at_cap` are the planes whose cap stops them. `status` is "solved", or "not proven" with a reason.
    """

    masses: Complex
    value: float
    lower_bound: float
    at_cap: tuple[int, ...]
    status: str
    reason: str | None

    @property
    def gap(self) -> float:
        """How far the value can be above the least."""
        return self.value - self.lower_bound


def least_squares(
    vibration: Complex, influence: Complex, *, weights: Real | None = None, caps: Caps | None = None
) -> Capped:
    """Masses (P,) for the least Σ (s_m·|v_m + H_m·w|)², v (M,), H (M, P), weights s (M,).

    Where no cap stops a plane this is numpy.linalg.lstsq to all digits. Raises ConeError for arrays, weights or caps that
    cannot be used.
    """
    rows, columns, _ = weighted(vibration, influence, weights)
    return _least(rows, columns, checked_caps(caps, columns.shape[1]))


def least_quadratic(gram: Complex, linear: Complex, caps: Caps | None = None) -> Capped:
    """Masses (P,) for the least wᴴ·G·w + 2·Re(gᴴ·w) with |w_p| ≤ cap_p; G (P, P) Hermitian, without negative curvature.

    The least expected residual under caps is G = HᴴH + k·R, g = Hᴴv + k·c. Raises ConeError for arrays or caps that cannot
    be used, and for a value that falls without end.
    """
    gram, linear = np.asarray(gram, dtype=np.complex128), np.asarray(linear, dtype=np.complex128)
    planes = linear.size
    if (
        linear.ndim != 1
        or gram.shape != (planes, planes)
        or not (np.isfinite(gram).all() and np.isfinite(linear).all())
    ):
        raise ConeError(f"quadratic {gram.shape} and {linear.shape}: must be finite (P, P) and (P,)")
    if np.abs(gram - gram.conj().T).max(initial=0.0) > _ROUNDING * np.abs(gram).max(initial=0.0):
        raise ConeError("quadratic: is not Hermitian; G must equal its own conjugate transpose")
    # as rows of a least-squares problem, wᴴGw + 2Re(gᴴw) = |b + Fw|² − |b|², each plane on its own scale first
    size = np.sqrt(np.maximum(np.real(np.diag(gram)), 0.0))
    size[size == 0.0] = 1.0
    curved, turn = np.linalg.eigh(gram / np.outer(size, size))
    if planes and curved[0] < -_ROUNDING:
        raise ConeError("quadratic: curves downwards in some direction, so that there is no least")
    slope = turn.conj().T @ (linear / size)
    bent = curved > _FLAT * planes
    if np.any(np.abs(slope[~bent]) > math.sqrt(_FLAT) * np.abs(slope).max(initial=0.0)):
        raise ConeError("quadratic: falls without end where it is flat; g must lie in the range of G")
    root = np.sqrt(curved[bent])
    rows = slope[bent] / root
    columns = root[:, None] * turn[:, bent].conj().T * size
    solved = _least(rows, columns, checked_caps(caps, planes))
    constant = _square(rows)
    return replace(solved, value=solved.value - constant, lower_bound=solved.lower_bound - constant)


def squares_bound(vibration: Complex, influence: Complex, caps: Real, mix: Complex) -> float:
    """A value that |v + H·w|² does not fall below while |w_p| ≤ cap_p, from any complex `mix` (M,) of the rows.

    |y|·|r| ≥ Re(yᴴr) ≥ Re(yᴴv) − Σ cap_p·|(Hᴴy)_p|, whoever found y.
    """
    squared = _square(mix)
    if squared == 0.0:
        return 0.0
    level = float(np.real(np.vdot(mix, vibration)) - caps @ np.abs(influence.conj().T @ mix))
    return max(0.0, level) ** 2 / squared


def _least(rows: Complex, columns: Complex, caps: Real) -> Capped:
    """The least of |rows + columns·w|²: without caps, and where that breaks one as a cone programme."""
    masses = np.zeros(columns.shape[1], dtype=np.complex128)
    scale = float(np.linalg.norm(rows))
    lengths = np.linalg.norm(columns, axis=0)
    moved = lengths > 0.0
    value = lower = scale**2
    if scale > 0.0 and np.any(moved):
        design, limits = columns[:, moved], caps[moved]
        discs = np.minimum(limits, NOMINAL * scale / lengths[moved])
        unit, reach = rows / scale, design * discs / scale
        plain = np.asarray(np.linalg.lstsq(design, -rows, rcond=None)[0], dtype=np.complex128)
        parts, least = plain / discs, -math.inf
        if np.all(np.abs(plain) <= discs):
            least = _bound(unit, reach, parts, np.zeros_like(plain))
        if _square(unit + reach @ parts) - least > GAP:  # a cap stops it, or it is lost in rounding
            parts, least = _in_discs(unit, reach)
            plain = discs * parts
        masses[moved] = plain
        value = _square(rows + columns @ masses)
        lower = min(value, scale**2 * least)
    proven = value - lower <= GAP * scale**2
    why = f"the least may be lower by {value - lower:.3g}: the cone solver found no proof"
    return Capped(
        masses, value, lower, stopped(masses, caps), "solved" if proven else "not proven", None if proven else why
    )


def _square(z: Complex) -> float:
    return float(np.sum(np.abs(z) ** 2))


def _in_discs(vibration: Complex, influence: Complex) -> tuple[Complex, float]:
    """Masses as parts of their discs, and a lower bound; |v| = 1, columns of H as a whole disc of mass moves the rows."""
    left, effect, turn = axes_of(influence)
    # an axis that matters is measured by its effect, one that hardly does by its mass: every number stays near 1
    size, reach = np.maximum(effect, 1.0), np.minimum(effect, 1.0)
    seen = left.conj().T @ vibration
    found = solve_cones(np.diag(np.repeat(reach**2, 2)), as_reals(reach * seen), *discs_of(turn / size))
    if found is None:
        return np.zeros(effect.size, dtype=np.complex128), 0.0
    along, push = as_complex(found[0]), turn.conj().T @ (found[1][1::3] + 1j * found[1][2::3])
    strong = effect >= 1.0
    along[strong] = (push / size - seen)[strong]  # there the rest is what the caps hold up, exactly
    parts = within(turn @ (along / size))
    return parts, _bound(vibration, influence, parts, push)


def _bound(vibration: Complex, influence: Complex, parts: Complex, push: Complex) -> float:
    """Lower bound from the rest of these masses, taken as it is, or put right along strong axes to what the caps hold up.

    The discs are wide there and would magnify what the masses lack in digits.
    """
    rest = vibration + influence @ parts
    exact = put_right(rest, *axes_of(influence), push)
    return max(squares_bound(vibration, influence, np.ones(parts.size), mix) for mix in (rest, exact))


def put_right(mix: Complex, left: Complex, effect: Real, turn: Complex, push: Complex) -> Complex:
    """The mix of rows with what it does to the strong axes made equal to what the caps hold up there, `push` (P,)."""
    strong = effect >= 1.0
    axes = left[:, strong]
    return np.asarray(mix - axes @ (axes.conj().T @ mix - push[strong] / effect[strong]))


def axes_of(influence: Complex) -> tuple[Complex, Real, Complex]:
    """Singular value decomposition with P axes for any number of rows: left (M, P), effects (P,), turn (P, P)."""
    points, planes = influence.shape
    padded = np.vstack([influence, np.zeros((max(0, planes - points), planes))])
    left, effect, turned = np.linalg.svd(padded, full_matrices=False)
    return left[:points], effect, turned.conj().T


def weighted(vibration: Complex, influence: Complex, weights: Real | None) -> tuple[Complex, Complex, Real]:
    """Checked v (M,) and H (M, P) with their rows weighted, and the weights. Raises ConeError."""
    v, h = np.asarray(vibration, dtype=np.complex128), np.asarray(influence, dtype=np.complex128)
    if v.ndim != 1 or h.ndim != 2 or h.shape[0] != v.size or v.size == 0:
        raise ConeError(f"vibration {v.shape} and influence {h.shape}: must be (M,) and (M, P) with a point or more")
    if not (np.isfinite(v).all() and np.isfinite(h).all()):
        raise ConeError("vibration or influence: a value is not finite")
    s = np.ones(v.size) if weights is None else np.asarray(weights, dtype=np.float64)
    if s.shape != v.shape or not np.isfinite(s).all() or np.any(s < 0.0):
        raise ConeError(f"weights {s.shape}: give a finite number, 0 or more, for each of the {v.size} points")
    return s * v, s[:, None] * h, s


def checked_caps(caps: Caps | None, planes: int) -> Real:
    """Caps (P,), infinite where there is none. Raises ConeError."""
    given = [None] * planes if caps is None else list(caps)
    if len(given) != planes or any(c is not None and not (math.isfinite(c) and c > 0.0) for c in given):
        raise ConeError(f"caps {given}: give a mass above 0, or None, for each of the {planes} planes")
    return np.array([math.inf if c is None else c for c in given])


def stopped(masses: Complex, caps: Real) -> tuple[int, ...]:
    """Numbers of the planes at their cap."""
    return tuple(int(p) for p in np.flatnonzero(np.abs(masses) >= (1.0 - AT_CAP) * caps))


def within(parts: Complex) -> Complex:
    """All masses made smaller alike until each part of a cap is 1 at most: what rounding of the cone solver left."""
    return parts / max(1.0, float(np.abs(parts).max(initial=0.0)))


def discs_of(matrix: Complex, offsets: Complex | None = None) -> tuple[Real, Real]:
    """Rows (3C, 2K) and offsets (3C,) of the cones |offset + matrix·z| ≤ 1, z (K,) as reals."""
    moved = real_form(matrix)
    rows = np.zeros((3 * matrix.shape[0], moved.shape[1]))
    rows[1::3], rows[2::3] = -moved[0::2], -moved[1::2]
    stand = np.zeros(rows.shape[0])
    stand[0::3] = 1.0
    if offsets is not None:
        stand[1::3], stand[2::3] = offsets.real, offsets.imag
    return rows, stand


def solve_cones(quadratic: Real, linear: Real, rows: Real, offsets: Real) -> tuple[Real, Real] | None:
    """The least of ½xᵀQx + qᵀx with each three of offsets − rows·x in a second-order cone: x and the cones' duals.

    None where the solver has no answer. An answer that it is not sure of is given too: the caller's bound judges it.
    """
    import clarabel
    from scipy import sparse

    settings = clarabel.DefaultSettings()
    settings.verbose = False
    settings.tol_gap_abs = settings.tol_gap_rel = settings.tol_feas = _TOLERANCE
    cones = [clarabel.SecondOrderConeT(3)] * (offsets.size // 3)
    solver = clarabel.DefaultSolver(
        sparse.csc_matrix(np.triu(quadratic)), linear, sparse.csc_matrix(rows), offsets, cones, settings
    )
    solution = solver.solve()
    x, duals = np.array(solution.x), np.array(solution.z)
    return (x, duals) if np.isfinite(x).all() and np.isfinite(duals).all() else None
