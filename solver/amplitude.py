"""Influence coefficients from amplitudes alone, where the phase cannot be had: |v0 + H·w| of each run.

Each point's own phase is free, so v0 is taken as real there; H then has the angle that counts. One plane takes the
initial run and three trial positions, because two leave a second, false solution; P planes take 1 + 3P runs. The
squares are linear in what they are made of (the four-run method of the handbooks, from memory), which gives the start of
a least-squares fit.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from stillshaft.solver.runs import Run, RunsError

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

_STARTS = 8  # further starts, turned about the first


def fit_amplitudes(
    group: list[Run], masses: Complex, placement: tuple[float, float], floor: float, where: str
) -> tuple[Complex, Real, float, int]:
    """Unknowns (M, 1 + P), v0 and H of each point, their covariance as reals, chi-square and degrees of freedom.

    `masses` (N, 1 + P) has ones in its first column; `placement` is the relative scatter of a mass and that of its angle
    in rad. Raises RunsError for too few runs.
    """
    runs, planes = masses.shape[0], masses.shape[1] - 1
    needed = 1 + 3 * planes
    if runs < needed:
        raise RunsError(
            f"{where} amplitudes alone need the initial run and three trial positions for each plane, {needed} runs; there "
            f"are {runs}: two positions leave a second, false solution"
        )
    measured = np.array([np.abs(run.vectors) for run in group])
    points = measured.shape[1]
    solution = np.empty((points, planes + 1), dtype=np.complex128)
    size = 2 * (planes + 1)
    covariance = np.zeros((points * size, points * size))
    chi_square = 0.0
    for m in range(points):
        scatter = np.array([run.covariance[2 * m, 2 * m] for run in group]) + floor
        found, spread, rest = _fit_point(measured[:, m], masses[:, 1:], scatter, placement)
        solution[m] = found
        at = [m * size, *range(m * size + 2, (m + 1) * size)]  # v0 has no imaginary part
        covariance[np.ix_(at, at)] = spread
        chi_square += rest
    return solution, covariance, chi_square, points * (runs - 1 - 2 * planes)


def _fit_point(
    amplitudes: Real, masses: Complex, variance: Real, placement: tuple[float, float]
) -> tuple[Complex, Real, float]:
    """v0 and H of one point, covariance of v0, then re and im of each H, and chi-square."""
    from scipy.optimize import least_squares

    spread = float(np.hypot(*placement)) / np.sqrt(2.0)

    def unpacked(x: Real) -> tuple[float, Complex]:
        return float(x[0]), x[1::2] + 1j * x[2::2]

    def weighted(x: Real) -> Real:
        initial, h = unpacked(x)
        placed = spread**2 * np.sum(np.abs(masses * h) ** 2, axis=1)
        return np.asarray((np.abs(initial + masses @ h) - amplitudes) / np.sqrt(variance + placed))

    start = _start(amplitudes, masses)
    tries = []
    for turn in np.linspace(0.0, 2.0 * np.pi, _STARTS, endpoint=False):
        begin = start.copy()
        h = (begin[1::2] + 1j * begin[2::2]) * np.exp(1j * turn)
        begin[1::2], begin[2::2] = h.real, h.imag
        tries.append(least_squares(weighted, begin, x_scale=np.maximum(np.abs(begin), 1e-9), xtol=1e-14, ftol=1e-14))
    best = min(tries, key=lambda t: t.cost)
    initial, h = unpacked(best.x)
    if initial < 0.0:  # the point's phase is free: turned by half a turn it is the same
        initial, h = -initial, -h
    found = np.concatenate([[complex(initial)], h])
    return found, np.asarray(np.linalg.pinv(best.jac.T @ best.jac)), float(2.0 * best.cost)


def _start(amplitudes: Real, masses: Complex) -> Real:
    """From A² = a² + Σ (2a·Re(h·w) + |h·w|²), linear in a², a·h and |h|², with planes loaded one at a time."""
    planes = masses.shape[1]
    design = np.column_stack([np.ones(amplitudes.size), masses.real, -masses.imag, np.abs(masses) ** 2])
    scale = np.maximum(np.abs(design).max(axis=0), 1e-300)
    solved = np.linalg.lstsq(design / scale, amplitudes**2, rcond=None)[0] / scale
    initial = float(np.sqrt(max(solved[0], float(amplitudes[0]) ** 2 * 0.25)))
    h = (solved[1 : 1 + planes] + 1j * solved[1 + planes : 1 + 2 * planes]) / (2.0 * max(initial, 1e-300))
    start = np.empty(1 + 2 * planes)
    start[0], start[1::2], start[2::2] = initial, h.real, h.imag
    return start
