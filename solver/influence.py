"""Influence coefficients from all runs: v = v0 + H·w by weighted least squares, with the covariance of every unknown.

Weighted by each run's full covariance over points, repeatability included, and by the placement error of each mass,
which moves all points together. With as many runs as unknowns this is the handbook answer to all digits.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.solver.runs import Run, Runs, RunsError

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

_PASSES = 4  # the weights depend on H through the placement errors
_FLOOR = 1e-9  # of the largest vector: keeps the weights finite where no scatter is stated


@dataclass(frozen=True)
class Fit:
    """One speed group: `initial` (M,), `influence` (M, P), `covariance` of all unknowns as reals.

    The unknowns stand point by point, v0 then H of each plane, re then im. `chi_square` and its degrees of freedom and
    probability are None while there are only as many runs as unknowns: not checkable yet. `last`
    is the group's last run.
    """

    speed_rpm: float
    initial: Complex
    influence: Complex
    covariance: Real
    chi_square: float | None
    degrees_of_freedom: int
    p_value: float | None
    last: Run


def real_form(matrix: Complex) -> Real:
    """Complex (a, b) as real (2a, 2b) that acts on re and im one after the other."""
    real = np.empty((2 * matrix.shape[0], 2 * matrix.shape[1]))
    real[0::2, 0::2], real[0::2, 1::2] = matrix.real, -matrix.imag
    real[1::2, 0::2], real[1::2, 1::2] = matrix.imag, matrix.real
    return real


def as_reals(z: Complex) -> Real:
    """Complex (n,) as re, im, re, im, … (2n,)."""
    return np.column_stack([z.real, z.imag]).ravel()


def fit(runs: Runs) -> tuple[Fit, ...]:
    """Fit every speed group. Raises RunsError that names the run that is missing."""
    if not runs.planes:
        raise RunsError(f"{runs.path}: plane: there is none; add a [[plane]] for each correction plane")
    return tuple(_fit_group(group, runs) for group in _groups(runs))


def _groups(runs: Runs) -> list[list[Run]]:
    groups: list[list[Run]] = []
    for run in runs.runs:
        for group in groups:
            if abs(run.speed_rpm / group[0].speed_rpm - 1.0) <= runs.speed_tolerance:
                group.append(run)
                break
        else:
            groups.append([run])
    return groups


def _fit_group(group: list[Run], runs: Runs) -> Fit:
    speed_rpm = float(np.mean([run.speed_rpm for run in group]))
    masses = np.array([np.concatenate([[1.0], run.masses]) for run in group])
    _check_rank(masses, group, runs, speed_rpm)
    points, unknowns = len(runs.points), masses.shape[1]
    measured = np.array([run.vectors for run in group])
    floor = (_FLOOR * float(np.abs(measured).max() or 1.0)) ** 2 * np.eye(2 * points)
    designs = [np.kron(np.eye(points), real_form(row[None, :])) for row in masses]
    solution = np.linalg.lstsq(masses, measured, rcond=None)[0].T
    for _ in range(_PASSES):
        weights = [
            np.linalg.inv(
                np.linalg.cholesky(run.covariance + _placement(solution[:, 1:], run.placement_variance) + floor)
            )
            for run in group
        ]
        rows = np.vstack([w @ d for w, d in zip(weights, designs, strict=True)])
        right = np.concatenate([w @ as_reals(v) for w, v in zip(weights, measured, strict=True)])
        # columns of unlike size (v0 against H per gram) are scaled, or small numbers drown
        scale = np.linalg.norm(rows, axis=0)
        found = np.linalg.lstsq(rows / scale, right, rcond=None)[0] / scale
        solution = (found[0::2] + 1j * found[1::2]).reshape(points, unknowns)
    covariance = np.linalg.pinv((rows / scale).T @ (rows / scale)) / np.outer(scale, scale)
    freedom = 2 * points * (len(group) - unknowns)
    chi_square, p_value = None, None
    if freedom > 0:
        from scipy.special import chdtrc

        chi_square = float(np.sum((right - rows @ found) ** 2))
        p_value = float(chdtrc(freedom, chi_square))
    return Fit(speed_rpm, solution[:, 0], solution[:, 1:], covariance, chi_square, freedom, p_value, group[-1])


def _placement(influence: Complex, variance: Real) -> Real:
    """Covariance over points of what misplaced masses do: one error per plane moves all points."""
    columns = real_form(influence) * np.sqrt(np.repeat(variance, 2) / 2.0)
    return np.asarray(columns @ columns.T)


def _check_rank(masses: Complex, group: list[Run], runs: Runs, speed_rpm: float) -> None:
    where = f"{runs.path}: at {speed_rpm:.0f} r/min"
    if np.linalg.matrix_rank(masses) == masses.shape[1]:
        return
    for number, plane in enumerate(runs.planes, start=1):
        if not np.any(masses[:, number]):
            raise RunsError(f'{where} there is no trial run with a mass on plane "{plane.name}"; take one')
    if not any(not np.any(run.masses) for run in group):
        raise RunsError(f"{where} there is no initial run without masses; take one")
    raise RunsError(f"{where} the runs do not tell the planes apart; take a trial run for each plane alone")
