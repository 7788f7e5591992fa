"""Tolerances: permissible residual unbalance by ISO 21940-11, and where the rotor stands.

The residual is the equivalent unbalance from the once-per-rev vibration of the last run, bow, misalignment and
coupling included: never a balancing machine's result. The edition of the standard in force decides; the formulas here
are from memory.
"""

from __future__ import annotations

import math
import re
from dataclasses import asdict, dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import vectors
from stillshaft.solver.influence import Fit, fit, real_form, significance, state_of
from stillshaft.solver.runs import Rotor, Runs, RunsError

Real = NDArray[np.float64]

GRADES = (0.4, 1.0, 2.5, 6.3, 16.0, 40.0, 100.0, 250.0, 630.0, 1600.0, 4000.0)  # mm/s, ISO 21940-11, from memory
_SHARES = {"between bearings": (0.3, 0.7), "overhung": (0.3, 1.3)}  # of U_per in one plane at least and at most
_SURE = 0.95


class LimitsError(ValueError):
    """A tolerance that cannot be worked out: the message names the field that is missing or wrong."""


@dataclass(frozen=True)
class PlaneTolerance:
    """Permissible and residual unbalance of one tolerance plane, g·mm."""

    plane: str
    permissible_gmm: float
    residual_gmm: float | None
    residual_ci95: float | None
    probability_within: float | None
    verdict: str


@dataclass(frozen=True)
class VibrationVerdict:
    """Vibration of one point in the last run against a limit."""

    point: str
    value: float
    ci95: float
    limit: float
    zone: str | None
    verdict: str
    source: str


@dataclass(frozen=True)
class Tolerance:
    """Where the rotor stands; verdicts are met, not met, cannot be told."""

    grade: str
    e_per_um: float
    u_per_gmm: float
    planes: tuple[PlaneTolerance, ...]
    vibration: tuple[VibrationVerdict, ...]
    reasons: tuple[str, ...]

    @property
    def verdict(self) -> str:
        """The worst of all verdicts."""
        verdicts = [p.verdict for p in self.planes] + [v.verdict for v in self.vibration]
        return next((v for v in ("not met", "cannot be told") if v in verdicts), "met")


def grade_mm_s(text: str) -> float:
    """Number of a balance quality grade such as "G6.3". Raises LimitsError."""
    match = re.fullmatch(r"\s*[Gg]?\s*(\d+(?:\.\d+)?)\s*", text)
    if not match or float(match[1]) not in GRADES:
        raise LimitsError(f'grade "{text}": is none; choose one of {", ".join(f"G{g:g}" for g in GRADES)}')
    return float(match[1])


def permissible(grade: float, mass_kg: float, speed_rpm: float) -> tuple[float, float]:
    """e_per in µm and U_per in g·mm of a rotor: e_per·Ω = G (ISO 21940-11, from memory)."""
    omega = speed_rpm * math.pi / 30.0
    e_per_um = 1000.0 * grade / omega
    return e_per_um, e_per_um * mass_kg


def allocated(u_per: float, rotor: Rotor) -> tuple[float, float]:
    """U_per at the bearings A and B by the distances of the centre of mass, within the standard's shares."""
    assert rotor.bearing_span_mm is not None
    assert rotor.centre_of_mass_mm is not None
    low, high = _SHARES[rotor.kind]
    share_b = abs(rotor.centre_of_mass_mm / rotor.bearing_span_mm)
    share_a = abs(1.0 - rotor.centre_of_mass_mm / rotor.bearing_span_mm)
    return u_per * min(high, max(low, share_a)), u_per * min(high, max(low, share_b))


def tolerance(grade: str, rotor: Rotor, runs: Runs | None = None) -> Tolerance:
    """Permissible residual unbalance of a rotor and, with runs, the verdict on the last of them.

    Raises LimitsError for a grade or rotor data that cannot be used.
    """
    number = grade_mm_s(grade)
    if rotor.mass_kg is None or not rotor.mass_kg > 0.0:
        raise LimitsError('rotor mass: is missing; give it as --rotor-mass "80 kg" or in the [rotor] table')
    if rotor.speed_rpm is None or not 0.0 < rotor.speed_rpm < math.inf:
        raise LimitsError("speed: is missing; give the highest service speed as --speed RPM or in the [rotor] table")
    if rotor.kind == "between bearings" and rotor.bearing_span_mm is not None and rotor.centre_of_mass_mm is not None:
        span, centre = rotor.bearing_span_mm, rotor.centre_of_mass_mm
        if not 0.0 <= centre <= span:
            raise LimitsError(
                f"centre of mass: {centre:g} mm is not between the bearings, 0 to {span:g} mm; mend it, or say that the "
                'rotor is overhung with --overhung or kind = "overhung"'
            )
    e_per_um, u_per = permissible(number, rotor.mass_kg, rotor.speed_rpm)
    reasons: list[str] = []
    names, limits = _tolerance_planes(u_per, rotor, runs, reasons)
    residuals = _residuals(runs, rotor, reasons) if runs is not None else None
    if runs is None:
        reasons.append("no runs file given: only what is permissible can be told")
    planes = tuple(
        _judged(name, limit, None if residuals is None else residuals[i])
        for i, (name, limit) in enumerate(zip(names, limits, strict=True))
    )
    vibration = () if runs is None else _vibration(runs)
    return Tolerance(f"G{number:g}", e_per_um, u_per, planes, vibration, tuple(reasons))


def _tolerance_planes(
    u_per: float, rotor: Rotor, runs: Runs | None, reasons: list[str]
) -> tuple[list[str], list[float]]:
    """Names and limits: the bearings where the geometry is known, else the correction planes."""
    if runs is not None and len(runs.planes) == 1:
        return [runs.planes[0].name], [u_per]
    if rotor.bearing_span_mm is not None and rotor.centre_of_mass_mm is not None:
        return ["bearing A", "bearing B"], list(allocated(u_per, rotor))
    if runs is None:
        return ["whole rotor"], [u_per]
    reasons.append(
        "bearing span or centre of mass not given: the permissible unbalance is split evenly over the planes"
    )
    return [p.name for p in runs.planes], [u_per / len(runs.planes)] * len(runs.planes)


def _residuals(runs: Runs, rotor: Rotor, reasons: list[str]) -> list[tuple[complex, Real]] | None:
    """Residual unbalance (g·mm) with covariance of re and im, for each tolerance plane; None where it cannot be told."""
    if runs.amplitudes_only:
        reasons.append("the residual unbalance cannot be told from amplitudes alone: the last run has no phase")
        return None
    if any(p.radius_mm is None for p in runs.planes):
        reasons.append("a plane has no radius: the residual unbalance cannot be told")
        return None
    try:
        fitted = next(f for f in fit(runs) if f.last is runs.runs[-1])
    except RunsError as error:
        reasons.append(f"the residual unbalance cannot be told: {error}")
        return None
    unclear = [
        f'plane "{plane.name}": the residual unbalance cannot be told, because {found.reason}'
        for plane, found in ((plane, significance((fitted,), i)) for i, plane in enumerate(runs.planes))
        if found.reason is not None
    ]
    if unclear:
        reasons.extend(unclear)
        return None
    unbalance, covariance = _unbalance(runs, fitted)
    if len(runs.planes) > 1 and rotor.bearing_span_mm and rotor.centre_of_mass_mm is not None:
        places = [p.z_mm for p in runs.planes if p.z_mm is not None]
        if len(places) == len(runs.planes):
            share = np.array(places) / rotor.bearing_span_mm
            moved = np.array([1.0 - share, share])
            unbalance = moved @ unbalance
            turn = real_form(moved.astype(np.complex128))
            covariance = turn @ covariance @ turn.T
        elif len(runs.planes) == 2:
            reasons.append(
                "the planes' places along the shaft (z) are not given: their residuals are taken as at the bearings"
            )
        else:
            reasons.append(
                "the planes' places along the shaft (z) are not given: the residual at the bearings cannot be told"
            )
            return None
    return [(complex(u), covariance[2 * i : 2 * i + 2, 2 * i : 2 * i + 2]) for i, u in enumerate(unbalance)]


def _unbalance(runs: Runs, fitted: Fit) -> tuple[NDArray[np.complex128], Real]:
    """Equivalent unbalance of the last run by plane: U = H⁺·v·r, with the scatter of the run and of H."""
    last = runs.runs[-1]
    scale = np.array([(p.radius_mm or 0.0) * runs.kg_per_mass_unit * 1000.0 for p in runs.planes])
    inverse = np.linalg.pinv(fitted.influence)
    masses = inverse @ last.vectors
    # H is moved by its own scatter: what it then makes of these masses
    state = state_of(fitted, 0.0, masses)
    scatter = last.covariance + state @ fitted.covariance @ state.T
    out = real_form(scale[:, None] * inverse)
    return scale * masses, np.asarray(out @ scatter @ out.T)


def _judged(name: str, limit_gmm: float, residual: tuple[complex, Real] | None) -> PlaneTolerance:
    """Verdict from the probability that the true residual lies within (noncentral chi-square)."""
    if residual is None:
        return PlaneTolerance(name, limit_gmm, None, None, None, "cannot be told")
    from scipy.special import chndtr

    unbalance, covariance = residual
    variance = float(np.trace(covariance)) / 2.0
    half, _ = vectors.half_widths(unbalance, covariance, math.inf)
    if variance <= 0.0:
        within = 1.0 if abs(unbalance) <= limit_gmm else 0.0
    else:
        within = float(chndtr(limit_gmm**2 / variance, 2.0, abs(unbalance) ** 2 / variance))
        if not math.isfinite(within):  # the function gives up far out, where a normal does as well
            within = 0.5 * math.erfc((abs(unbalance) - limit_gmm) / math.sqrt(2.0 * variance))
    verdict = "met" if within >= _SURE else "not met" if within <= 1.0 - _SURE else "cannot be told"
    return PlaneTolerance(name, limit_gmm, abs(unbalance), half, within, verdict)


def _vibration(runs: Runs) -> tuple[VibrationVerdict, ...]:
    """The last run's once-per-rev vibration against the limits of the runs file."""
    last, verdicts = runs.runs[-1], []
    for point, limit in runs.limits:
        i = runs.points.index(point)
        value = abs(complex(last.vectors[i]))
        half, _ = vectors.half_widths(
            complex(last.vectors[i]), last.covariance[2 * i : 2 * i + 2, 2 * i : 2 * i + 2], math.inf
        )
        verdict = "met" if value + half <= limit else "not met" if value - half > limit else "cannot be told"
        verdicts.append(VibrationVerdict(point, value, half, limit, None, verdict, "runs file"))
    return tuple(verdicts)


def to_json(result: Tolerance, version: str) -> dict[str, Any]:
    """The contract's `tolerance` object."""
    return {
        "format": 1,
        "verb": "tolerance",
        "version": version,
        "trusted": True,
        "reasons": list(result.reasons),
        "grade": result.grade,
        "e_per_um": result.e_per_um,
        "u_per_gmm": result.u_per_gmm,
        "planes": [asdict(p) for p in result.planes],
        "vibration": [asdict(v) for v in result.vibration],
    }
