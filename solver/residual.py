"""Residual unbalance of the last run, how sure it is, and how probably it lies within a limit.

It is the equivalent unbalance from the once-per-rev vibration, bow, misalignment and coupling included: never a
balancing machine's result.
"""

from __future__ import annotations

import functools
import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.solver.influence import Fit, as_reals, fit, real_form, significance, state_of
from stillshaft.solver.runs import Runs, RunsError

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

_TAIL = 8.5  # standard deviations beyond which nothing is left: 2e-17
_NODES = 256


@dataclass(frozen=True)
class Residual:
    """Residual unbalance of P planes, g·mm complex, and the covariance (2P, 2P) of re and im; `places_mm` from bearing A."""

    names: tuple[str, ...]
    unbalance_gmm: Complex
    covariance: Real
    places_mm: tuple[float | None, ...]

    def moved(self, names: tuple[str, ...], matrix: Real) -> Residual:
        """Linear combinations (rows of the real matrix) of the planes' unbalances, under new names."""
        turn = real_form(matrix.astype(np.complex128))
        return Residual(
            names, matrix @ self.unbalance_gmm, np.asarray(turn @ self.covariance @ turn.T), (None,) * len(names)
        )

    def at(self, i: int) -> tuple[complex, Real]:
        """Unbalance of one plane and its covariance (2, 2)."""
        return complex(self.unbalance_gmm[i]), self.covariance[2 * i : 2 * i + 2, 2 * i : 2 * i + 2]


def residual(runs: Runs) -> tuple[Residual | None, tuple[str, ...]]:
    """Equivalent unbalance of the last run by correction plane; None and the reasons where it cannot be told."""
    if runs.amplitudes_only:
        return None, ("the residual unbalance cannot be told from amplitudes alone: the last run has no phase",)
    if bare := [f'"{p.name}"' for p in runs.planes if p.radius_mm is None]:
        return None, (f"the residual unbalance cannot be told: plane {' and '.join(bare)} has no radius",)
    try:
        fitted = next(f for f in fit(runs) if f.last is runs.runs[-1])
    except RunsError as error:
        return None, (f"the residual unbalance cannot be told: {error}",)
    unclear = tuple(
        f'plane "{plane.name}": the residual unbalance cannot be told, because {found.reason}'
        for plane, found in ((plane, significance((fitted,), i)) for i, plane in enumerate(runs.planes))
        if found.reason is not None
    )
    if unclear:
        return None, unclear
    scale = np.array([(p.radius_mm or 0.0) * runs.kg_per_mass_unit * 1000.0 for p in runs.planes])
    masses, covariance = _equivalent_masses(fitted)
    grown = np.repeat(scale, 2)
    return Residual(
        tuple(p.name for p in runs.planes),
        scale * masses,
        np.asarray(grown[:, None] * covariance * grown),
        tuple(p.z_mm for p in runs.planes),
    ), ()


def _equivalent_masses(fitted: Fit) -> tuple[Complex, Real]:
    """Masses u = H⁺·v that make the last run's vectors, and their covariance (delta method).

    δu = H⁺·(δv − δH·u) + (HᴴH)⁻¹·δHᴴ·(v − H·u): the scatter of the run, the runout's error in it, and the scatter of H,
    in which the placement errors of the trials move all points together. Where the pieces that are on really sit is in
    the vectors already.
    """
    last, influence = fitted.last, fitted.influence
    inverse = np.asarray(np.linalg.pinv(influence), dtype=np.complex128)
    masses: Complex = inverse @ last.vectors
    rest = last.vectors - influence @ masses
    gram = inverse @ inverse.conj().T
    points, planes = influence.shape
    move = -real_form(inverse) @ state_of(fitted, 0.0, masses)
    for m in range(points):
        for p in range(planes):
            column = 2 * (m * (planes + 1) + 1 + p)
            direction = gram[:, p] * rest[m]
            # conj(δH): re goes along, im against
            move[:, column] += as_reals(direction)
            move[:, column + 1] -= as_reals(1j * direction)
    out = real_form(inverse)
    return masses, np.asarray(out @ last.covariance @ out.T + move @ fitted.covariance @ move.T)


def probability_within(limit: float, unbalance: complex, covariance: Real) -> float:
    """Probability that the true vector lies in the disc |u| ≤ limit, the estimate being normal with this covariance (2, 2).

    Round scatter gives the noncentral chi-square distribution with two degrees of freedom; any other is integrated along
    the narrow axis of its ellipse: ∫ φ(x)·[Φ(to the disc's edge above) − Φ(below)] dx.
    """
    from scipy.special import ndtr

    sizes, axes = np.linalg.eigh(covariance)
    narrow, wide = np.sqrt(np.maximum(sizes, 0.0))
    across, along = np.abs(axes.T @ np.array([unbalance.real, unbalance.imag]))
    if wide <= 1e-12 * limit:
        return float(abs(unbalance) <= limit)
    if narrow <= 1e-9 * limit:  # a line through the disc
        if across > limit:
            return 0.0
        half = math.sqrt(limit**2 - across**2)
        return float(ndtr((half - along) / wide) - ndtr((-half - along) / wide))
    low, high = max(-limit, across - _TAIL * narrow), min(limit, across + _TAIL * narrow)
    if low >= high:
        return 0.0
    # x = limit·sin t: the edge of the disc is smooth in t
    nodes, weights = _gauss_legendre()
    begin, end = math.asin(low / limit), math.asin(high / limit)
    t = 0.5 * (end - begin) * nodes + 0.5 * (end + begin)
    x, half_chord = limit * np.sin(t), limit * np.cos(t)
    density = np.exp(-0.5 * ((x - across) / narrow) ** 2) / (math.sqrt(2.0 * math.pi) * narrow)
    inside = ndtr((half_chord - along) / wide) - ndtr((-half_chord - along) / wide)
    return float(min(1.0, 0.5 * (end - begin) * np.sum(weights * density * inside * half_chord)))


@functools.cache
def _gauss_legendre() -> tuple[Real, Real]:
    return np.polynomial.legendre.leggauss(_NODES)
