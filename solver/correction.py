"""What mass goes where: corrections from the fitted runs, how sure they are, and the vibration to expect.

The masses w = B·c make v + H·w small over the points that count, with a basis B for all planes, some, the static part or
the couple. Least squares leaves the least vibration that the fitted coefficients allow; the least expected residual counts
that they are only known so well (E|v + H·w|², scatter of v, H and placing); minimax makes the largest share of a limit small.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import asdict, dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import vectors
from stillshaft.dsp.units import InputError
from stillshaft.solver import consistency, couple
from stillshaft.solver.capped import least_quadratic, least_squares
from stillshaft.solver.influence import (
    Fit,
    Model,
    Prior,
    as_reals,
    fit_all,
    hermitian_scatter,
    misplaced,
    real_form,
    significance,
    spread,
    state_of,
)
from stillshaft.solver.minimax import limits_bind, minimax
from stillshaft.solver.region import Extent, Region
from stillshaft.solver.runs import Runs
from stillshaft.solver.trial import TrialEffect, trial_effects

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

METHODS = ("auto", "least-squares", "expected", "minimax")
PARTS = ("all", "static", "couple")
_SHRUNK = 0.5  # of the scatter of H that counts against mass: between 0.25 and 0.75 it hardly matters
_NEARLY_DEPENDENT = 10.0  # condition number of the planes' effects, each as its trial made it
_CHI_2_95 = 1.7308  # √(χ²₂(0.95)/2): radius of a 95 % circle over the root of E|error|²


class SolveError(InputError):
    """Runs that give no correction the way that was asked for."""


@dataclass(frozen=True)
class Wanted:
    """How to correct: method, planes that may take mass (all if none is named), points that do not count.

    `parts` says whether all planes are free, or only the static part or the couple of two.
    """

    method: str = "auto"
    planes: tuple[str, ...] = ()
    left_out: tuple[str, ...] = ()
    parts: str = "all"


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
    consistency: consistency.Consistency
    trials: tuple[TrialEffect, ...]
    alternatives: tuple[couple.Alternative, ...]
    proposed: couple.Proposal | None
    warnings: tuple[str, ...]
    reasons: tuple[str, ...]

    @property
    def trusted(self) -> bool:
        """True when every plane is determined."""
        return not self.reasons


@dataclass(frozen=True)
class _Problem:
    """What is corrected: `fits` with the unknowns of the basis, `counted` the same with only the points that count.

    `columns` (P, k) are the basis, `caps` (k,) the most of each unknown, `on` (k,) what sits there already.
    """

    fits: tuple[Fit, ...]
    counted: tuple[Fit, ...]
    columns: Complex
    caps: tuple[float | None, ...]
    on: Complex

    @property
    def vibration(self) -> Complex:
        """What there is now, over the points that count (R,)."""
        return np.concatenate([f.initial for f in self.counted])

    @property
    def influence(self) -> Complex:
        """Effect of each unknown there (R, k)."""
        return np.vstack([f.influence for f in self.counted])


def solve(runs: Runs, wanted: Wanted | str = "auto", priors: Sequence[Prior] = ()) -> Solution:
    """Corrections relative to the initial state, over all points and speeds, and what to add to the last run's masses.

    "auto" takes least squares for one and two planes, the least expected residual for more and for nearly dependent ones.
    `priors` are coefficients known beforehand.

    Raises SolveError for a method, plane or point that there is not, RunsError for a run that is missing.
    """
    wanted = Wanted(wanted) if isinstance(wanted, str) else wanted
    _check(runs, wanted)
    runs, learnt = consistency.with_measured_repeatability(runs)
    model = fit_all(runs, priors=priors)
    judged = consistency.judge(runs, model)
    columns, of_basis = _basis(runs, wanted)
    from_start = _problem(runs, model, wanted, columns, from_last=False)
    method, of_method = _method(wanted.method, from_start, columns, runs)
    amounts, of_caps = _amounts(from_start, method, runs, wanted)
    corrections = _corrections(runs, from_start, amounts)
    additional, shown = _additional(runs, model, judged, wanted, columns, method, corrections, amounts)
    reasons = [
        f'plane "{c.plane}": not determined, because {_why(from_start, columns, runs, c.plane)}'
        for c in corrections
        if not c.determined
    ]
    masses = columns @ amounts
    alternatives, proposed, of_alternatives = _alternatives(runs, model, masses)
    warnings = [*runs.assumed, *([learnt] if learnt else []), *of_method, *of_basis, *of_caps]
    if runs.amplitudes_only:
        warnings.append(
            "worked out from amplitudes alone: phases that are shown count from each point's initial vector"
        )
    warnings += judged.sentences
    if judged.p_value is None and not priors:  # how far stored coefficients were tested is said of them
        warnings.append(consistency.NOT_CHECKABLE)
    warnings += _of_limits(runs, from_start, amounts, method, wanted)
    warnings += of_alternatives
    predicted = predict(runs, model.fits, masses)
    return Solution(
        method,
        corrections,
        additional,
        predicted,
        _influence(runs, model.fits),
        float(np.linalg.cond(np.vstack([f.influence for f in model.fits]))),
        judged,
        trial_effects(runs, model.fits, expected_residual(runs, model.fits, masses)),
        alternatives,
        proposed,
        tuple(warnings + list(shown)),
        tuple(reasons),
    )


def masses_for(runs: Runs, model: Model, wanted: Wanted, *, from_last: bool = False) -> Complex:
    """Masses (P,) alone, of the initial state or to add to what the last run left: what `solve` says all about."""
    columns, _ = _basis(runs, wanted)
    problem = _problem(runs, model, wanted, columns, from_last=from_last)
    method, _ = _method(wanted.method, problem, columns, runs)
    return np.asarray(columns @ _amounts(problem, method, runs, wanted)[0])


def _check(runs: Runs, wanted: Wanted) -> None:
    if wanted.method not in METHODS:
        raise SolveError(f"method {wanted.method}: cannot be used; choose {', '.join(METHODS[:-1])} or {METHODS[-1]}")
    if wanted.parts not in PARTS:
        raise SolveError(f"parts {wanted.parts}: choose {', '.join(PARTS[:-1])} or {PARTS[-1]}")
    names = [p.name for p in runs.planes]
    for name in wanted.planes:
        if name not in names:
            raise SolveError(f'{runs.path}: has no plane "{name}"; it has {", ".join(names)}')
    for name in wanted.left_out:
        if name not in runs.points:
            raise SolveError(f'{runs.path}: has no point "{name}"; it has {", ".join(runs.points)}')
    if set(wanted.left_out) == set(runs.points):
        raise SolveError("every point is left out; keep at least one")
    if wanted.parts != "all" and (len(names) != 2 or wanted.planes):
        raise SolveError(f"{wanted.parts} part: takes two planes, both of them; there are {len(names)}")


def geometry(runs: Runs) -> tuple[Real, list[float | None], float | None]:
    """Radii of the planes (ones where one is missing), their places along the shaft, and that of the centre of mass, mm."""
    radii = [p.radius_mm for p in runs.planes]
    known = np.array([r if r is not None else 1.0 for r in radii]) if None not in radii else np.ones(len(radii))
    return known, [p.z_mm for p in runs.planes], None if runs.rotor is None else runs.rotor.centre_of_mass_mm


def _basis(runs: Runs, wanted: Wanted) -> tuple[Complex, list[str]]:
    """Masses (P, k) that one unit of each unknown puts on the planes, and what to say of it."""
    whole = np.eye(len(runs.planes), dtype=np.complex128)
    if wanted.parts == "all":
        chosen = [i for i, p in enumerate(runs.planes) if not wanted.planes or p.name in wanted.planes]
        left = [p.name for i, p in enumerate(runs.planes) if i not in chosen]
        return whole[:, chosen], [f"plane {name}: takes no mass, as asked" for name in left]
    name = couple.STATIC if wanted.parts == "static" else couple.COUPLE
    bases = couple.bases([p.name for p in runs.planes], *geometry(runs))
    found = next((b for b in bases if b.name == name), None)
    if found is None:
        raise SolveError(f"{wanted.parts} part: the planes have none; their places along the shaft (z) must differ")
    return found.columns, [f"{name}" + (f": {found.note}" if found.note else "")]


def _problem(runs: Runs, model: Model, wanted: Wanted, columns: Complex, *, from_last: bool) -> _Problem:
    fits = tuple(couple.restricted(f, columns, from_last=from_last) for f in model.fits)
    kept = [m for m, name in enumerate(runs.points) if name not in wanted.left_out]
    counted = tuple(_of_points(f, kept) for f in fits)
    caps: list[float | None] = []
    for k in range(columns.shape[1]):
        shares = [
            plane.cap / abs(columns[p, k]) for p, plane in enumerate(runs.planes) if plane.cap and columns[p, k] != 0.0
        ]
        caps.append(min(shares) if shares else None)
    on = np.linalg.lstsq(columns, runs.runs[-1].masses, rcond=None)[0] if from_last else np.zeros(columns.shape[1])
    return _Problem(fits, counted, columns, tuple(caps), np.asarray(on, dtype=np.complex128))


def _of_points(fitted: Fit, kept: list[int]) -> Fit:
    """The fit for some of its points."""
    size = 2 * (fitted.influence.shape[1] + 1)
    at = np.array([m * size + k for m in kept for k in range(size)])
    pairs = np.array([2 * m + part for m in kept for part in (0, 1)])
    return replace(
        fitted, initial=fitted.initial[kept], influence=fitted.influence[kept], own=fitted.own[np.ix_(at, at)],
        shared=fitted.shared[at], state=fitted.state[kept], state_shared=fitted.state_shared[pairs],
    )  # fmt: skip


def _method(method: str, problem: _Problem, columns: Complex, runs: Runs) -> tuple[str, list[str]]:
    """The method taken for "auto", and what to say of the choice."""
    if method != "auto":
        return method, []
    unknowns = columns.shape[1]
    if unknowns > 2:
        return "expected", ["three planes or more: solved for the least residual to be expected"]
    if unknowns < 2:
        return "least-squares", []
    # planes compared as their trials moved the points, so that grams and radii do not matter
    sizes = np.array([max(abs(run.masses[p]) for run in runs.runs) or 1.0 for p in range(len(runs.planes))])
    condition = float(np.linalg.cond(problem.influence * (np.abs(columns).T @ sizes)))
    if condition > _NEARLY_DEPENDENT:
        return "expected", [
            f"the planes do nearly the same (condition {condition:.0f}): solved for the least residual to be expected; "
            "one plane alone, or a point that tells them apart, may serve better"
        ]
    return "least-squares", []


def _amounts(problem: _Problem, method: str, runs: Runs, wanted: Wanted) -> tuple[Complex, list[str]]:
    """Unknowns (k,) of the basis by the method, within the caps, and what to say of the caps."""
    v, h, on = problem.vibration, problem.influence, problem.on
    capped = any(c is not None for c in problem.caps)
    if method == "minimax":
        found = minimax(v - h @ on, h, weights=_weights(runs, wanted, len(problem.fits), v), caps=problem.caps)
        said = [] if found.status == "solved" else [f"minimax: {found.reason}"]
        return found.masses - on, said + _stopped(problem, runs, found.at_cap)
    if method == "least-squares" and not capped:
        return np.asarray(-(np.linalg.pinv(h) @ v)), []
    if method == "least-squares":
        least = least_squares(v - h @ on, h, caps=problem.caps)
        return least.masses - on, _stopped(problem, runs, least.at_cap)
    gram, linear = _expected(problem, runs.placement)
    if not capped:
        return np.asarray(-np.linalg.solve(gram, linear)), []
    least = least_quadratic(gram, linear - gram @ on, problem.caps)
    return least.masses - on, _stopped(problem, runs, least.at_cap)


def _weights(runs: Runs, wanted: Wanted, speeds: int, vibration: Complex) -> Real:
    """Weights of minimax: one over each point's limit; a point without one may be as high as the highest is now."""
    limits = dict(runs.limits)
    highest = max([float(np.abs(vibration).max()), *limits.values(), 1e-300])
    kept = [name for name in runs.points if name not in wanted.left_out]
    return np.tile([1.0 / (limits.get(name) or highest) for name in kept], speeds)


def _stopped(problem: _Problem, runs: Runs, at_cap: Sequence[int]) -> list[str]:
    said = []
    for k in at_cap:
        names = [plane.name for p, plane in enumerate(runs.planes) if problem.columns[p, k] != 0.0 and plane.cap]
        caps = ", ".join(f"{plane.cap:g} {runs.mass_unit}" for plane in runs.planes if plane.name in names)
        said.append(f"plane {' and '.join(names)}: stopped at its cap, {caps}; without it, it would take more")
    return said


def _expected(problem: _Problem, placement: tuple[float, float]) -> tuple[Complex, Complex]:
    """Quadratic (k, k) and linear part (k,) of E|v + H·w|², the scatter counted by half.

    With few planes least squares is drawn towards 0 by errors in H already.
    """
    scatter = sum(hermitian_scatter(f).sum(axis=0) for f in problem.counted)
    h = problem.influence
    relative, angle = placement
    placed = (relative**2 + angle**2) * np.sum(np.abs(h) ** 2, axis=0)
    gram = h.conj().T @ h + _SHRUNK * (scatter[1:, 1:] + np.diag(placed))
    return gram, h.conj().T @ problem.vibration + _SHRUNK * scatter[1:, 0]


def _corrections(runs: Runs, problem: _Problem, amounts: Complex) -> tuple[Correction, ...]:
    """Masses by plane with the intervals of the true ones, as far as the runs determine them."""
    extents = _extents(problem)
    corrections = []
    for p, plane in enumerate(runs.planes):
        k = next((k for k in range(amounts.size) if problem.columns[p, k] != 0.0), None)
        if k is None:
            continue
        share, extent, centre = abs(problem.columns[p, k]), extents[k][0], extents[k][1]
        mass, angle_deg = vectors.amplitude_phase(complex(problem.columns[p, k] * amounts[k]))
        mass_ci: float | None = None
        angle_ci: float | None = None
        if extent.bounded and extent.mass is not None:
            mass_ci = max(abs(share * extent.mass[1] - mass), abs(mass - share * extent.mass[0]))
            if extent.angle_deg is not None and amounts[k]:
                off = math.degrees(np.angle(centre / amounts[k]))
                angle_ci = max(abs(off + a) for a in extent.angle_deg)
                angle_ci = angle_ci if angle_ci < 180.0 else None
        corrections.append(
            Correction(
                plane.name, mass, runs.mass_unit, angle_deg, plane.radius_mm, mass_ci, angle_ci, extent.bounded
            )
        )  # fmt: skip
    return tuple(corrections)


def _extents(problem: _Problem) -> list[tuple[Extent, complex]]:
    """Region of each unknown and its centre, the least-squares value; by the delta method for very many points."""
    v, h = problem.vibration, problem.influence
    unknowns = h.shape[1]
    none = Extent(None, None, np.empty(0, np.complex128), False)
    centre = np.asarray(-(np.linalg.pinv(h) @ v))
    if v.size < unknowns:
        return [(none, complex(c)) for c in centre]
    covariance = delta_covariance(problem.counted, centre)
    region = Region(problem.counted)
    if not region.too_large:
        # with as many points as unknowns the two tests are one, and the plain one is the surer in its arithmetic
        plain = v.size == unknowns
        return [
            (
                none
                if plain and not significance(problem.counted, k).determined
                else region.extent(k, centre, covariance),
                complex(centre[k]),
            )
            for k in range(unknowns)
        ]
    listed = []
    for k in range(unknowns):
        z = complex(centre[k])
        half, angle = vectors.half_widths(z, covariance[2 * k : 2 * k + 2, 2 * k : 2 * k + 2], math.inf)
        known = significance(problem.counted, k).determined
        reach = (max(0.0, abs(z) - half), abs(z) + half)
        extent = Extent(reach, None if angle is None else (-angle, angle), np.empty(0, np.complex128), True)
        listed.append((extent if known else none, z))
    return listed


def delta_covariance(fits: Sequence[Fit], masses: Complex) -> Real:
    """Covariance (2P, 2P) of least-squares masses by the delta method, left-over vibration included.

    w = −(HᴴH)⁻¹Hᴴv0 moves by −H⁺(δv0 + δH·w) − (HᴴH)⁻¹δHᴴr, r being what is left over.
    """
    influence = np.vstack([f.influence for f in fits])
    inverse = np.asarray(np.linalg.pinv(influence), dtype=np.complex128)
    gram = inverse @ inverse.conj().T
    rest = np.concatenate([f.initial for f in fits]) + influence @ masses
    planes, row, parts = masses.size, 0, []
    for fitted in fits:
        points = fitted.initial.size
        move = -real_form(inverse[:, row : row + points]) @ state_of(fitted, 1.0, masses)
        for m in range(points):
            for p in range(planes):
                column = 2 * (m * (planes + 1) + 1 + p)
                direction = gram[:, p] * rest[row + m]
                # conj(δH) : re goes along, im against
                move[:, column] -= as_reals(direction)
                move[:, column + 1] += as_reals(1j * direction)
        parts.append((fitted, move))
        row += points
    return spread(parts)


def _why(problem: _Problem, columns: Complex, runs: Runs, plane: str) -> str:
    """Why a plane is not determined."""
    number = [p.name for p in runs.planes].index(plane)
    k = int(np.flatnonzero(columns[number])[0])
    found = significance(problem.counted, k)
    return found.reason or "its region has no end: the trial moved the points too little; use a larger mass"


def _additional(
    runs: Runs,
    model: Model,
    judged: consistency.Consistency,
    wanted: Wanted,
    columns: Complex,
    method: str,
    corrections: tuple[Correction, ...],
    amounts: Complex,
) -> tuple[tuple[Correction, ...], list[str]]:
    """What to add while the masses of the last run stay on.

    From the state that the last run left, smoothed by all runs: it holds where the pieces really sit. Runs that do not fit
    each other smooth nothing: then from that run's own vectors.
    """
    on = runs.runs[-1].masses
    if not np.any(on):
        return corrections, []
    if runs.amplitudes_only:
        left = columns @ amounts - on
        return tuple(
            replace(c, mass=vectors.amplitude_phase(complex(w))[0], angle_deg=vectors.amplitude_phase(complex(w))[1])
            for c, w in zip(corrections, [w for p, w in enumerate(left) if np.any(columns[p])], strict=True)
        ), []
    if judged.doubted:
        model = replace(model, fits=tuple(_as_measured(f, on) for f in model.fits))
    problem = _problem(runs, model, wanted, columns, from_last=True)
    added, said = _amounts(problem, method, runs, wanted)
    return _corrections(runs, problem, added), [f"to add: {s}" for s in said]


def _as_measured(fitted: Fit, on: Complex) -> Fit:
    """The fit with its last run's own vectors as the state, where that run had on what is on now."""
    if not np.array_equal(fitted.last.masses, on):
        return fitted
    # the state's error is that run's own; H keeps its own, and the two are taken as independent
    points, planes = fitted.influence.shape
    size = 2 * (planes + 1)
    own, shared = fitted.own.copy(), fitted.shared.copy()
    first = (np.arange(points)[:, None] * size + np.arange(2)).ravel()
    own[first], own[:, first], shared[first] = 0.0, 0.0, 0.0
    own[np.ix_(first, first)] = fitted.last.covariance
    return replace(
        fitted, own=own, shared=shared, state=fitted.last.vectors,
        state_shared=np.zeros_like(fitted.state_shared), on=np.zeros_like(fitted.on),
    )  # fmt: skip


def _alternatives(
    runs: Runs, model: Model, masses: Complex
) -> tuple[tuple[couple.Alternative, ...], couple.Proposal | None, list[str]]:
    """Fewer unknowns than planes, ranked by the vibration to be expected, and which to prefer."""
    if len(runs.planes) < 2:
        return (), None, []
    radii, places, centre = geometry(runs)
    choices = couple.bases([p.name for p in runs.planes], radii, places, centre)
    caps = [p.cap for p in runs.planes]
    ranking = couple.ranked(model.fits, choices, runs.placement, radii, caps=caps, unit=f"{runs.mass_unit} mm")
    kind = "between bearings" if runs.rotor is None else runs.rotor.kind
    goals = [limit for _, limit in runs.limits]
    far = [
        s * len(runs.points) + m
        for s in range(len(model.fits))
        for m, name in enumerate(runs.points)
        if any(d.name == name and d.direction == "axial" for d in runs.described)
    ]
    parts = couple.parts_of(masses, None, radii, places, centre) if len(runs.planes) == 2 else None
    trials = np.array(
        [max((abs(run.masses[p]) for run in runs.runs), default=0.0) or 1.0 for p in range(len(runs.planes))]
    )
    unknown = [d.sentence for d in couple.directions(model.fits, trials, radii, places, centre) if not d.determined]
    proposed = couple.proposal(ranking, kind=kind, goal=min(goals) if goals else None, far=far, parts=parts)
    if proposed is None or proposed.alternative.name == couple.ALL:
        return ranking, proposed, unknown
    return (
        ranking,
        proposed,
        [*unknown, f"{proposed.alternative.name} is to be preferred: {'; '.join(proposed.reasons)}"],
    )


def _of_limits(runs: Runs, problem: _Problem, amounts: Complex, method: str, wanted: Wanted) -> list[str]:
    """An offer of minimax where a stated limit would be broken."""
    if not runs.limits or method == "minimax":
        return []
    limits = dict(runs.limits)
    kept = [limits.get(name) for name in runs.points if name not in wanted.left_out] * len(problem.fits)
    if all(limit is None for limit in kept):
        return []
    found = limits_bind(problem.vibration, problem.influence, amounts, kept, caps=problem.caps)
    return [f"{found.sentence} (method minimax)"] if found.broken else []


def predict(runs: Runs, fits: Sequence[Fit], masses: Complex) -> tuple[Predicted, ...]:
    """Vibration of each point with these masses (P,) in the place of all that is on, placed as well as stated."""
    predicted = []
    for fitted in fits:
        left, covariance = _left(runs, fitted, masses)
        for m, point in enumerate(runs.points):
            amplitude, phase_deg = vectors.amplitude_phase(complex(left[m]))
            scatter = float(np.trace(covariance[2 * m : 2 * m + 2, 2 * m : 2 * m + 2]))
            upper = amplitude + _CHI_2_95 * math.sqrt(scatter)
            predicted.append(Predicted(point, fitted.speed_rpm, runs.vibration_unit, amplitude, phase_deg, upper))
    return tuple(predicted)


def _left(runs: Runs, fitted: Fit, masses: Complex) -> tuple[Complex, Real]:
    """What is left with these masses, and its covariance (2M, 2M)."""
    relative, angle = runs.placement
    placed = np.array([vectors.along_and_across(complex(w), relative * abs(w), angle * abs(w)) for w in masses])
    state = state_of(fitted, 1.0, masses)
    covariance = state @ fitted.covariance @ state.T + misplaced(fitted.influence, placed)
    # rounding of what is huge may turn a variance negative
    np.fill_diagonal(covariance, np.maximum(covariance.diagonal(), 0.0))
    return fitted.initial + fitted.influence @ masses, covariance


def expected_residual(runs: Runs, fits: Sequence[Fit], masses: Complex) -> float:
    """Root of E|v + H·w|² over all points and speeds, as a share of the initial vibration."""
    before = after = 0.0
    for fitted in fits:
        left, covariance = _left(runs, fitted, masses)
        after += float(np.sum(np.abs(left) ** 2) + np.trace(covariance))
        before += float(np.sum(np.abs(fitted.initial) ** 2))
    return math.sqrt(after / before) if before > 0.0 else math.inf


def _influence(runs: Runs, fits: Sequence[Fit]) -> tuple[Influence, ...]:
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
    """The contract's `solve` object.

    Beside its keys: `consistency` (drifts of the initial state, and what would explain runs that do not fit), `trials`
    (the effect of each trial and how strong the next should be), `alternatives` (fewer planes, static part, couple), and
    `proposed`, the name of the one to prefer.
    """
    judged = solution.consistency
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
        if judged.p_value is None
        else {
            "chi_square": judged.chi_square,
            "degrees_of_freedom": judged.degrees_of_freedom,
            "p_value": judged.p_value,
        },
        "warnings": list(solution.warnings),
        "consistency": {
            "drifts": [asdict(d) | {"moved": d.moved} for d in judged.drifts],
            "suspicions": [_suspicion(s) for s in judged.suspicions],
        },
        "trials": [asdict(t) for t in solution.trials],
        "alternatives": [_alternative(a) for a in solution.alternatives],
        "proposed": None if solution.proposed is None else solution.proposed.alternative.name,
    }


def _suspicion(suspicion: consistency.Suspicion) -> dict[str, Any]:
    factor, turned_deg = None, None
    if suspicion.factor is not None:
        factor, turned_deg = vectors.amplitude_phase(suspicion.factor)
    return {
        "kind": suspicion.kind,
        "run": suspicion.run,
        "factor": factor,
        "turned_deg": turned_deg,
        "p_value": suspicion.p_value,
        "sentence": suspicion.sentence,
    }


def _alternative(alternative: couple.Alternative) -> dict[str, Any]:
    masses = [vectors.amplitude_phase(complex(w)) for w in alternative.masses]
    return {
        "name": alternative.name,
        "masses": [{"mass": mass, "angle_deg": angle_deg} for mass, angle_deg in masses],
        "unbalance": alternative.unbalance,
        "expected_rms": alternative.rms if math.isfinite(alternative.rms) else None,
        "determined": alternative.determined,
        "sentence": alternative.sentence,
    }
