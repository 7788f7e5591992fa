"""What mass goes where: corrections from the fitted runs, how sure they are, and the vibration to expect."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import vectors
from stillshaft.solver.influence import (
    Fit,
    as_reals,
    fit_all,
    misplaced,
    real_form,
    significance,
    state_of,
)
from stillshaft.solver.runs import Runs

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

METHODS = ("auto", "least-squares", "expected")
_SHRUNK = 0.5  # of the scatter of H that counts against mass: between 0.25 and 0.75 it hardly matters
_NEARLY_DEPENDENT = 10.0  # condition number of the planes' effects, each as its trial made it
_CHI_2_95 = 1.7308  # √(χ²₂(0.95)/2): radius of a 95 % circle over the root of E|error|²
_REPEATABLE = 0.01  # a fit less likely than this is doubted


class SolveError(ValueError):
    """Runs that give no correction the way that was asked for."""


@dataclass(frozen=True)
class Correction:
    """Mass for one plane with 95 % half widths; None where the trial cannot tell."""

    plane: str
    mass: float
    unit: str
    angle_deg: float
    radius_mm: float | None
    mass_ci95: float | None
    angle_ci95_deg: float | None
    determined: bool


@dataclass(frozen=True)
class Predicted:
    """Vibration of one point after the correction, and the level it stays below with 95 %."""

    point: str
    speed_rpm: float
    unit: str
    amplitude: float
    phase_deg: float
    amplitude_upper95: float


@dataclass(frozen=True)
class Influence:
    """One influence coefficient; `ci95` is the half width of its amplitude's 95 % interval."""

    point: str
    plane: str
    speed_rpm: float
    amplitude: float
    angle_deg: float
    unit: str
    ci95: float


@dataclass(frozen=True)
class Solution:
    """The answer to a runs file."""

    method: str
    corrections: tuple[Correction, ...]
    additional: tuple[Correction, ...]
    predicted: tuple[Predicted, ...]
    influence: tuple[Influence, ...]
    condition_number: float
    chi_square: float | None
    degrees_of_freedom: int
    p_value: float | None
    warnings: tuple[str, ...]
    reasons: tuple[str, ...]

    @property
    def trusted(self) -> bool:
        """True when every plane is determined."""
        return not self.reasons


def solve(runs: Runs, method: str = "auto") -> Solution:
    """Corrections relative to the initial state, over all points and speeds.

    "least-squares" leaves the least vibration that the fitted coefficients allow; "expected" the least that is to be
    expected while they are only known so well, which takes less mass where planes do nearly the same. "auto" is the first
    for one and two planes, the second for more and for nearly dependent ones.

    Raises SolveError for a method that there is not, RunsError for a run that is missing.
    """
    if method not in METHODS:
        raise SolveError(f"method {method}: cannot be used; choose {' or '.join(METHODS)}")
    model = fit_all(runs)
    fits = model.fits
    initial = np.concatenate([f.initial for f in fits])
    influence = np.vstack([f.influence for f in fits])
    taken, why = _method(method, fits, runs)
    inverse, gram, pulled = _inverse(fits, influence, runs, expected=taken == "expected")
    masses: Complex = -(inverse @ initial + gram @ pulled)
    covariance = _correction_covariance(fits, initial, influence, masses, inverse, gram)
    found = [significance(fits, plane) for plane in range(len(runs.planes))]
    determined = [f.determined for f in found]
    corrections = _corrections(runs, masses, covariance, determined)
    warnings = [*runs.assumed, *why]
    if runs.amplitudes_only:
        warnings.append(
            "worked out from amplitudes alone: phases that are shown count from each point's initial vector"
        )
    freedom, p_value = model.degrees_of_freedom, model.p_value
    chi_square = None if p_value is None else model.chi_square
    if p_value is None:
        warnings.append("repeatability and linearity are not checkable yet: there are only as many runs as unknowns")
    elif p_value < _REPEATABLE:
        warnings.append(
            f"the runs do not fit each other (p = {p_value:.2g}): was a mass entered wrong, or did the state change?"
        )
    reasons = tuple(
        f'plane "{plane.name}": not determined, because {f.reason}'
        for plane, f in zip(runs.planes, found, strict=True)
        if f.reason is not None
    )
    return Solution(
        taken,
        corrections,
        _additional(runs, fits, masses, covariance, determined, inverse),
        _predicted(runs, fits, masses),
        _influence(runs, fits),
        float(np.linalg.cond(influence)),
        chi_square,
        freedom,
        p_value,
        tuple(warnings),
        reasons,
    )


def _method(method: str, fits: tuple[Fit, ...], runs: Runs) -> tuple[str, tuple[str, ...]]:
    """The method taken for "auto", and what to say of the choice."""
    if method != "auto":
        return method, ()
    if len(runs.planes) > 2:
        return "expected", ("three planes or more: solved for the least residual to be expected",)
    # planes compared as their trials moved the points, so that grams and radii do not matter
    sizes = np.array([max(abs(run.masses[p]) for run in runs.runs) for p in range(len(runs.planes))])
    condition = float(np.linalg.cond(np.vstack([f.influence for f in fits]) * sizes))
    if len(runs.planes) == 2 and condition > _NEARLY_DEPENDENT:
        return "expected", (
            f"the planes do nearly the same (condition {condition:.0f}): solved for the least residual to be expected; "
            "one plane alone, or a point that tells them apart, may serve better",
        )
    return "least-squares", ()


def _inverse(
    fits: tuple[Fit, ...], influence: Complex, runs: Runs, *, expected: bool
) -> tuple[Complex, Complex, Complex]:
    """Matrices (P, M) and (P, P), and a vector (P,): the correction is −(inverse·v0 + gram·pulled).

    Least squares is the pseudo-inverse. The least expected residual is E|v0 + H·w|² at its least, with the scatter of v0
    and H and of the placing, counted by half: with few planes least squares is drawn towards 0 by errors in H already.
    """
    if not expected:
        inverse = np.asarray(np.linalg.pinv(influence), dtype=np.complex128)
        return inverse, inverse @ inverse.conj().T, np.zeros(influence.shape[1], dtype=np.complex128)
    planes = influence.shape[1]
    scatter = np.zeros((planes + 1, planes + 1), dtype=np.complex128)
    for fitted in fits:
        size = 2 * (planes + 1)
        for m in range(fitted.initial.size):
            real = fitted.covariance[m * size : (m + 1) * size, m * size : (m + 1) * size]
            re, im = real[0::2], real[1::2]
            # conj of E[δx·δxᴴ] of x = (v0, H of the point)
            scatter += re[:, 0::2] + im[:, 1::2] - 1j * (im[:, 0::2] - re[:, 1::2])
    relative, angle = runs.placement
    placed = (relative**2 + angle**2) * np.sum(np.abs(influence) ** 2, axis=0)
    ridge = scatter[1:, 1:] + np.diag(placed)
    gram = np.linalg.inv(influence.conj().T @ influence + _SHRUNK * ridge)
    return np.asarray(gram @ influence.conj().T), np.asarray(gram), np.asarray(_SHRUNK * scatter[1:, 0])


def _correction_covariance(
    fits: tuple[Fit, ...], initial: Complex, influence: Complex, masses: Complex, inverse: Complex, gram: Complex
) -> Real:
    """Covariance (2P, 2P) of the corrections by the delta method, left-over vibration included.

    w = −(HᴴH)⁻¹Hᴴv0 moves by −H⁺(δv0 + δH·w) − (HᴴH)⁻¹δHᴴr, r being what is left over.
    """
    planes = masses.size
    rest = initial + influence @ masses
    covariance = np.zeros((2 * planes, 2 * planes))
    row = 0
    for fitted in fits:
        points = fitted.initial.size
        here = slice(row, row + points)
        move = -real_form(inverse[:, here]) @ state_of(fitted, 1.0, masses)
        for m in range(points):
            for p in range(planes):
                column = 2 * (m * (planes + 1) + 1 + p)
                direction = gram[:, p] * rest[row + m]
                # conj(δH) : re goes along, im against
                move[:, column] -= as_reals(direction)
                move[:, column + 1] += as_reals(1j * direction)
        covariance += move @ fitted.covariance @ move.T
        row += points
    return covariance


def _corrections(runs: Runs, masses: Complex, covariance: Real, determined: list[bool]) -> tuple[Correction, ...]:
    corrections = []
    for i, plane in enumerate(runs.planes):
        mass, angle_deg = vectors.amplitude_phase(complex(masses[i]))
        mass_ci, angle_ci = vectors.half_widths(
            complex(masses[i]), covariance[2 * i : 2 * i + 2, 2 * i : 2 * i + 2], math.inf
        )
        known = determined[i]
        corrections.append(
            Correction(
                plane.name, mass, runs.mass_unit, angle_deg, plane.radius_mm,
                mass_ci if known else None, angle_ci if known else None, known,
            )
        )  # fmt: skip
    return tuple(corrections)


def _additional(
    runs: Runs, fits: tuple[Fit, ...], masses: Complex, covariance: Real, determined: list[bool], inverse: Complex
) -> tuple[Correction, ...]:
    """What to add while the masses of the last run stay on: from that run's own vectors, w = −H⁺v.

    They hold the pieces' real places, errors included, which the fitted model only knows as they were meant.
    """
    on = runs.runs[-1].masses
    if runs.amplitudes_only or not all(np.array_equal(f.last.masses, on) for f in fits):
        return _corrections(runs, masses - on, covariance, determined)
    added: Complex = -inverse @ np.concatenate([f.last.vectors for f in fits])
    scatter, row = np.zeros((2 * added.size, 2 * added.size)), 0
    for fitted in fits:
        points = fitted.initial.size
        state = state_of(fitted, 0.0, added)
        out = real_form(inverse[:, row : row + points])
        scatter += out @ (fitted.last.covariance + state @ fitted.covariance @ state.T) @ out.T
        row += points
    return _corrections(runs, added, scatter, determined)


def _predicted(runs: Runs, fits: tuple[Fit, ...], masses: Complex) -> tuple[Predicted, ...]:
    predicted = []
    relative, angle = runs.placement
    placed = np.array([vectors.along_and_across(complex(w), relative * abs(w), angle * abs(w)) for w in masses])
    for fitted in fits:
        state = state_of(fitted, 1.0, masses)
        covariance = state @ fitted.covariance @ state.T + misplaced(fitted.influence, placed)
        left = fitted.initial + fitted.influence @ masses
        for m, point in enumerate(runs.points):
            amplitude, phase_deg = vectors.amplitude_phase(complex(left[m]))
            spread = float(np.trace(covariance[2 * m : 2 * m + 2, 2 * m : 2 * m + 2]))
            upper = amplitude + _CHI_2_95 * math.sqrt(spread)
            predicted.append(Predicted(point, fitted.speed_rpm, runs.vibration_unit, amplitude, phase_deg, upper))
    return tuple(predicted)


def _influence(runs: Runs, fits: tuple[Fit, ...]) -> tuple[Influence, ...]:
    listed = []
    planes = len(runs.planes)
    for fitted in fits:
        for m, point in enumerate(runs.points):
            for p, plane in enumerate(runs.planes):
                h = complex(fitted.influence[m, p])
                at = 2 * (m * (planes + 1) + 1 + p)
                half, _ = vectors.half_widths(h, fitted.covariance[at : at + 2, at : at + 2], math.inf)
                amplitude, angle_deg = vectors.amplitude_phase(h)
                unit = f"{runs.vibration_unit} per {runs.mass_unit}"
                listed.append(Influence(point, plane.name, fitted.speed_rpm, amplitude, angle_deg, unit, half))
    return tuple(listed)


def to_json(solution: Solution, version: str) -> dict[str, Any]:
    """The contract's `solve` object."""
    from dataclasses import asdict

    return {
        "format": 1,
        "verb": "solve",
        "version": version,
        "trusted": solution.trusted,
        "reasons": list(solution.reasons),
        "method": solution.method,
        "corrections": [asdict(c) for c in solution.corrections],
        "additional": [asdict(c) for c in solution.additional],
        "predicted": [asdict(p) for p in solution.predicted],
        "influence": [asdict(i) for i in solution.influence],
        "condition_number": solution.condition_number if math.isfinite(solution.condition_number) else None,
        "fit": None
        if solution.chi_square is None
        else {
            "chi_square": solution.chi_square,
            "degrees_of_freedom": solution.degrees_of_freedom,
            "p_value": solution.p_value,
        },
        "warnings": list(solution.warnings),
    }
