"""What a run's vectors are against those that its recording gives now."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np
from stillshaft.dsp import units, vectors
from stillshaft.solver import events

_ZERO = 1e-9  # of the vector: an interval below it is none


@dataclass(frozen=True)
class PointChange:
    """A point's vector as it was recorded and as it is measured now, in the recorded unit; None: not there.

    `apart` is the size of their difference, `intervals` the same in half widths of the recorded 95 % interval, along and
    across the vector (None: neither has an interval).
    """

    point: str
    unit: str
    amplitude_then: float | None
    phase_then_deg: float | None
    amplitude_now: float | None
    phase_now_deg: float | None
    apart: float | None
    intervals: float | None
    verdict_then: str | None
    verdict_now: str | None


def point_changes(run: events.Run, result: dict[str, Any]) -> Iterator[PointChange]:
    """Raises UnitError for a unit of the record that is none."""
    now_by_name = {told["name"]: told for told in result["points"]}
    then, now = units.vibration_unit(run.unit, "unit"), units.vibration_unit(result["unit"], "unit")
    turned = vectors.quantity_factor(now.quantity, then.quantity, run.speed_rpm / 60.0)
    factor = then.per_si_peak / now.per_si_peak * turned
    for vector in run.vectors:
        told = now_by_name.pop(vector.point, None)
        yield _point_change(run, vector, told, factor)
    for name, told in now_by_name.items():
        amplitude, phase_deg = vectors.amplitude_phase(factor * vectors.vector(told["amplitude"], told["phase_deg"]))
        verdict = told["steadiness"]["verdict"]
        yield PointChange(name, run.unit, None, None, amplitude, phase_deg, None, None, None, verdict)


def _point_change(run: events.Run, vector: events.Vector, told: dict[str, Any] | None, factor: complex) -> PointChange:
    if told is None:
        return PointChange(
            vector.point, run.unit, vector.amplitude, vector.phase_deg, None, None, None, None, vector.verdict, None
        )
    now = factor * vectors.vector(told["amplitude"], told["phase_deg"])
    amplitude, phase_deg = vectors.amplitude_phase(now)
    if vector.phase_deg is None:
        apart, across = amplitude - vector.amplitude, 0.0
    else:  # along and across the recorded vector
        turned = now * vectors.vector(1.0, -vector.phase_deg) - vector.amplitude
        apart, across = turned.real, turned.imag
    halves = _half_widths(run, vector) or _told_half_widths(
        amplitude, _times(told["amplitude_ci95"], abs(factor)), told["phase_ci95_deg"]
    )
    intervals = None
    if halves is not None:
        least = _ZERO * max(amplitude, vector.amplitude)
        intervals = math.hypot(apart / max(halves[0], least), across / max(halves[1], least)) if least > 0.0 else 0.0
    return PointChange(
        vector.point, run.unit, vector.amplitude, vector.phase_deg, amplitude, phase_deg, math.hypot(apart, across),
        intervals, vector.verdict, told["steadiness"]["verdict"],
    )  # fmt: skip


def _times(value: float | None, factor: float) -> float | None:
    return None if value is None else factor * value


def _half_widths(run: events.Run, vector: events.Vector) -> tuple[float, float] | None:
    """95 % half widths along and across a recorded vector: from its covariance, else from its intervals."""
    given = run.covariance
    if given is not None and vector.point in given.points and vector.phase_deg is not None:
        matrix = [row for row in given.matrix if len(row) == len(given.matrix)]
        at = 2 * given.points.index(vector.point)
        if len(matrix) == len(given.matrix) == 2 * len(given.points):
            from scipy.special import stdtrit

            block = np.array(matrix)[at : at + 2, at : at + 2]
            along, across = vectors.deviations(vectors.vector(vector.amplitude, vector.phase_deg), block)
            dof = given.degrees_of_freedom
            t = float(stdtrit(dof, 0.975)) if dof is not None and dof > 0.0 else 1.959963984540054
            return t * along, t * across
    return _told_half_widths(vector.amplitude, vector.amplitude_ci95, vector.phase_ci95_deg)


def _told_half_widths(
    amplitude: float, amplitude_ci95: float | None, phase_ci95_deg: float | None
) -> tuple[float, float] | None:
    if amplitude_ci95 is None:
        return None
    across = amplitude_ci95 if phase_ci95_deg is None else amplitude * math.sin(math.radians(min(phase_ci95_deg, 90.0)))
    return amplitude_ci95, across
