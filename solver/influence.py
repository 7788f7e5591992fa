"""Influence coefficients from all runs: v = v0 + H·w by weighted least squares, with the covariance of every unknown.

Weighted by each run's full covariance over points, repeatability included, and by the placement error of each mass,
which moves all points together. With as many runs as unknowns this is the handbook answer to all digits.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.solver.amplitude import fit_amplitudes
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


@dataclass(frozen=True)
class Significance:
    """Whether a plane's trial says anything: `reason` is None where it does."""

    determined: bool
    reason: str | None


def real_form(matrix: Complex) -> Real:
    """Complex (a, b) as real (2a, 2b) that acts on re and im one after the other."""
    real = np.empty((2 * matrix.shape[0], 2 * matrix.shape[1]))
    real[0::2, 0::2], real[0::2, 1::2] = matrix.real, -matrix.imag
    real[1::2, 0::2], real[1::2, 1::2] = matrix.imag, matrix.real
    return real


def as_reals(z: Complex) -> Real:
    """Complex (n,) as re, im, re, im, … (2n,)."""
    return np.column_stack([z.real, z.imag]).ravel()


def state_of(fitted: Fit, initial: float, masses: Complex) -> Real:
    """Matrix (2M, unknowns) that turns errors of the unknowns into errors of initial·v0 + H·masses."""
    row = np.concatenate([[complex(initial)], masses])[None, :]
    return np.asarray(np.kron(np.eye(fitted.initial.size), real_form(row)), dtype=np.float64)


def probability_of_more(chi_square: float, degrees_of_freedom: int) -> float:
    """Probability of a chi-square at least as large where all is as stated."""
    from scipy.special import chdtrc

    return float(chdtrc(degrees_of_freedom, chi_square))


def significance(fits: tuple[Fit, ...], plane: int) -> Significance:
    """Whether a plane's effect stands out of its scatter (5 % level), alone and apart from the other planes'.

    Where it does not, the 95 % region of its mass has no end.
    """
    others = [p for p in range(fits[0].influence.shape[1]) if p != plane]
    if not _stands_out(fits, plane, []):
        return Significance(False, "its trial moved no point beyond the scatter; use a larger mass")
    if sum(f.initial.size for f in fits) <= len(others):
        return Significance(
            False, "there are fewer points than planes; measure at another point or speed, or correct fewer planes"
        )
    if not _stands_out(fits, plane, others):
        return Significance(
            False,
            "its effect cannot be told from the other planes' beyond the scatter; "
            "use larger trial masses, another point, or fewer planes",
        )
    return Significance(True, None)


def _stands_out(fits: tuple[Fit, ...], plane: int, others: list[int]) -> bool:
    """True when no mix of the other planes' effects makes this one's within the scatter of all of them.

    Smallest whitened length of h_p − H_others·c over c, all points and speeds together, against chi-square.
    """
    from scipy.special import chdtri

    mix = np.zeros(fits[0].influence.shape[1], dtype=np.complex128)
    mix[plane] = 1.0
    squared = 0.0
    for _ in range(_PASSES):  # the scatter depends on the mix
        rows = []
        for f in fits:
            state = state_of(f, 0.0, mix)
            scatter = state @ f.covariance @ state.T
            rows.append(_whitener(scatter, _floor(f.influence)) @ real_form(f.influence))
        whitened = np.vstack(rows)
        column = whitened[:, 2 * plane]  # re and im of one complex column: its first real column says it all
        apart = column
        if others:
            design = whitened[:, [2 * p + part for p in others for part in (0, 1)]]
            found = np.linalg.lstsq(design, column, rcond=None)[0]
            mix[others] = -(found[0::2] + 1j * found[1::2])
            apart = column - design @ found
        squared = float(apart @ apart)
    freedom = 2 * (sum(f.initial.size for f in fits) - len(others))
    return squared > float(chdtri(freedom, 0.05))


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
    floor = _floor(measured)
    if runs.amplitudes_only:
        where = f"{runs.path}: at {speed_rpm:.0f} r/min"
        found_by_size = fit_amplitudes(group, masses, runs.placement, floor, where)
        return _fit_of(speed_rpm, *found_by_size, group[-1])
    designs = [np.kron(np.eye(points), real_form(row[None, :])) for row in masses]
    solution = np.linalg.lstsq(masses, measured, rcond=None)[0].T
    for _ in range(_PASSES):
        weights = [
            _whitener(run.covariance + misplaced(solution[:, 1:], run.placement_covariance), floor) for run in group
        ]
        rows = np.vstack([w @ d for w, d in zip(weights, designs, strict=True)])
        right = np.concatenate([w @ as_reals(v) for w, v in zip(weights, measured, strict=True)])
        # columns of unlike size (v0 against H per gram) are scaled, or small numbers drown
        scale = np.linalg.norm(rows, axis=0)
        left, sizes, turned = np.linalg.svd(rows / scale, full_matrices=False)
        sizes = np.maximum(sizes, 1e-15 * sizes[0])  # what weighs nothing beside the rest becomes wide, not certain
        inverse = turned.T / sizes / scale[:, None]
        found = inverse @ (left.T @ right)
        solution = (found[0::2] + 1j * found[1::2]).reshape(points, unknowns)
    covariance = inverse @ inverse.T
    freedom = 2 * points * (len(group) - unknowns)
    return _fit_of(speed_rpm, solution, covariance, float(np.sum((right - rows @ found) ** 2)), freedom, group[-1])


def _fit_of(speed_rpm: float, solution: Complex, covariance: Real, chi_square: float, freedom: int, last: Run) -> Fit:
    checkable = freedom > 0
    return Fit(
        speed_rpm,
        solution[:, 0],
        solution[:, 1:],
        covariance,
        chi_square if checkable else None,
        freedom,
        probability_of_more(chi_square, freedom) if checkable else None,
        last,
    )


def _whitener(covariance: Real, floor: float) -> Real:
    """Matrix that makes this scatter white; `floor` is added to each variance."""
    variances = np.diag(covariance) + floor
    # rounding of fully correlated or very unlike scatters must not make it indefinite
    lifted = covariance + np.diag(floor + 1e-12 * variances)
    return np.asarray(np.linalg.inv(np.linalg.cholesky(lifted)))


def _floor(values: Complex) -> float:
    """Variance that no scatter is taken to be below; above 0 even where all values are tiny or 0."""
    return (_FLOOR * max(1e-100, float(np.abs(values).max()))) ** 2


def misplaced(influence: Complex, placed: Real) -> Real:
    """Covariance over points of what misplaced masses do: one error per plane moves all points."""
    moved = real_form(influence)
    pairs = moved.reshape(moved.shape[0], -1, 2)  # the two columns of each plane
    return np.asarray(np.einsum("apx,pxy,bpy->ab", pairs, placed, pairs))


def _check_rank(masses: Complex, group: list[Run], runs: Runs, speed_rpm: float) -> None:
    where = f"{runs.path}: at {speed_rpm:.0f} r/min"
    for number, plane in enumerate(runs.planes, start=1):
        if not np.any(masses[:, number]):
            raise RunsError(f'{where} there is no trial run with a mass on plane "{plane.name}"; take one')
    if not any(not np.any(run.masses) for run in group):
        raise RunsError(f"{where} there is no initial run without masses; take one")
    if np.linalg.matrix_rank(masses) < masses.shape[1]:
        raise RunsError(f"{where} the runs do not tell the planes apart; take a trial run for each plane alone")
