"""Vibration of the last run against limits: a table's, by class of machine and support, and the runs file's own.

Tables for broadband levels cannot be met by once-per-rev vibration alone: it is one part of the level, so it may show
that a limit is not met, and no more. The runs file's own limits are for once-per-rev vibration.
"""

from __future__ import annotations

import bisect
import math
from collections.abc import Mapping
from dataclasses import dataclass, field

from stillshaft.dsp import units, vectors
from stillshaft.solver.limit_tables import SUPPORTS, LimitsError, MachineClass, VibrationTable
from stillshaft.solver.runs import Run, Runs

STIFF = 1.25  # rigid above this ratio of lowest natural frequency to speed, in the measured direction: ISO 20816, from memory
_SLOW_RPM = 600.0
_NORMAL_95 = 1.959963984540054
_LEAST_OF_1X = 0.9  # a broadband level below this share of its own once-per-rev part is a slip


@dataclass(frozen=True)
class VibrationVerdict:
    """Vibration of one point in the last run against a limit; value, interval and limit in the unit the source names."""

    point: str
    value: float
    ci95: float
    limit: float
    zone: str | None
    verdict: str
    source: str


@dataclass(frozen=True)
class Chosen:
    """A table and what picks its row: class, and support of all points (None) or of one by its name.

    A support is "rigid", "flexible", or the lowest natural frequency in the measured direction as a speed in r/min.
    `accept` is the limit that the verdict is about, the table's own unless given.
    """

    table: VibrationTable
    class_name: str | None = None
    supports: Mapping[str | None, str | float] = field(default_factory=dict)
    accept: str | None = None


def support_class(natural_rpm: float, speed_rpm: float) -> str:
    """Rigid where the lowest natural frequency is above 1.25 times running speed, else flexible. Raises LimitsError."""
    if not 0.0 < natural_rpm < math.inf:
        raise LimitsError(f"support: a natural frequency of {natural_rpm:g} r/min must be above 0 and finite")
    return "rigid" if natural_rpm > STIFF * speed_rpm else "flexible"


def own_verdicts(runs: Runs) -> tuple[VibrationVerdict, ...]:
    """The last run's once-per-rev vibration against the limits of the runs file."""
    rows = []
    for point, limit in runs.limits:
        value, half = _once_per_rev(runs.runs[-1], runs.points.index(point))
        verdict = _verdict(value, half, limit)
        rows.append(VibrationVerdict(point, value, half, limit, None, verdict, f"runs file, 1x, {runs.vibration_unit}"))
    return tuple(rows)


def verdicts(chosen: Chosen, runs: Runs) -> tuple[tuple[VibrationVerdict, ...], tuple[str, ...]]:
    """Every point of the last run against the table, and what must be said beside. Raises LimitsError for a bad choice."""
    table, last = chosen.table, runs.runs[-1]
    accept = chosen.accept or table.accept
    if accept not in table.limits:
        raise LimitsError(f'accept "{accept}": is no limit of {table.name}; there is {", ".join(table.limits)}')
    classes = of_class(table, chosen.class_name)
    for name in chosen.supports:
        if name is not None and name not in runs.points:
            raise LimitsError(f'support: "{name}" is no point of the runs file; there is {", ".join(runs.points)}')
    unit = units.vibration_unit(runs.vibration_unit, "vibration_unit")
    if unit.quantity != table.unit.quantity:
        return (), (
            f"{table.name}: limits are in {table.unit.text}; {unit.quantity} in {unit.text} cannot be compared with them",
        )
    factor = table.unit.per_si_peak / unit.per_si_peak
    rows, notes = [], []
    for i, point in enumerate(runs.points):
        row = _row_of(classes, chosen, point, last.speed_rpm)
        at = table.limits.index(accept)
        if at >= len(row.values):
            raise LimitsError(f'accept "{accept}": {table.name} gives none for class "{row.name}"')
        once, once_half = (factor * x for x in _once_per_rev(last, i))
        level = last.overall[i] if last.overall else None
        source = (
            f"{table.name} ({table.edition}), {row.name}{', ' + row.support if row.support else ''}, {accept}, "
            f"{'broadband' if table.broadband else '1x'}, {table.unit.text}"
        )
        limit = row.values[at]
        zone = _zone(table, row, once)
        if not table.broadband:
            rows.append(VibrationVerdict(point, once, once_half, limit, zone, _verdict(once, once_half, limit), source))
            continue
        if level is None:
            beyond = _verdict(once, once_half, limit) == "not met" and _within_band(table, last)
            verdict = "not met" if beyond else "cannot be told"
            rows.append(VibrationVerdict(point, once, once_half, limit, None, verdict, f"{source}; 1x alone"))
            notes.append(
                f'"{point}": 1x alone is in zone {zone or "unknown"} of {table.name}; the broadband level is not known'
            )
            continue
        value = factor * level
        half = _NORMAL_95 * runs.repeatability[0] * value
        zone = _zone(table, row, value)
        verdict = _verdict(value, half, limit)
        if value < _LEAST_OF_1X * once - once_half and _within_band(table, last):
            verdict = "cannot be told"
            notes.append(
                f'"{point}": the broadband level {value:.3g} is less than its once-per-rev part {once:.3g} {table.unit.text}; '
                "one of the two is wrong"
            )
        rows.append(VibrationVerdict(point, value, half, limit, zone, verdict, source))
    if len(row.values) < len(table.limits):
        notes.append(f"{table.name}: no value for {', '.join(table.limits[len(row.values) :])} of {row.name}")
    return tuple(rows), tuple(notes)


def of_class(table: VibrationTable, name: str | None) -> list[MachineClass]:
    """The rows of a class, which may be left out where there is only one. Raises LimitsError."""
    names = list(dict.fromkeys(c.name for c in table.classes))
    if name is None and len(names) > 1:
        raise LimitsError(f"class: {table.name} has several; say which of {', '.join(names)}")
    found = [c for c in table.classes if name is None or c.name.lower() == name.strip().lower()]
    if not found:
        raise LimitsError(f'class "{name}": {table.name} has none such; there is {", ".join(names)}')
    return found


def _row_of(classes: list[MachineClass], chosen: Chosen, point: str, speed_rpm: float) -> MachineClass:
    if classes[0].support is None:
        return classes[0]
    support = chosen.supports.get(point, chosen.supports.get(None))
    if support is None:
        raise LimitsError(
            f'support: that of "{point}" is not said; give rigid, flexible, or the lowest natural frequency in its direction'
        )
    if not isinstance(support, str):
        support = support_class(support, speed_rpm)
    for row in classes:
        if row.support == support:
            return row
    known = " or ".join(SUPPORTS) if support not in SUPPORTS else " or ".join(c.support or "" for c in classes)
    raise LimitsError(f'support "{support}": class {classes[0].name} is for {known}')


def _once_per_rev(run: Run, i: int) -> tuple[float, float]:
    """Amplitude of a point and its 95 % half width, in the displayed unit."""
    z = complex(run.vectors[i])
    half, _ = vectors.half_widths(z, run.covariance[2 * i : 2 * i + 2, 2 * i : 2 * i + 2], math.inf)
    return abs(z), half


def _zone(table: VibrationTable, row: MachineClass, value: float) -> str | None:
    """Zone of a value; None above the last limit that is known where the table has further ones."""
    at = bisect.bisect_left(row.values, value)
    return None if at == len(row.values) < len(table.limits) else table.zones[at]


def _within_band(table: VibrationTable, run: Run) -> bool:
    """True where the once-per-rev vibration is a part of the broadband level."""
    band_hz = table.slow_band_hz if table.slow_band_hz and run.speed_rpm < _SLOW_RPM else table.band_hz
    return band_hz is None or band_hz[0] <= run.speed_rpm / 60.0 <= band_hz[1]


def _verdict(value: float, half: float, limit: float) -> str:
    return "met" if value + half <= limit else "not met" if value - half > limit else "cannot be told"
