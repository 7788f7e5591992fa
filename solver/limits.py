"""Tolerances: permissible residual unbalance by ISO 21940-11 or by journal load, and where the rotor stands.

Grades, shares and constants are data files that name their source and edition (`limit_tables`); the formulas here are
from memory. The edition in force, the machine's maker and local rules decide, and vibration limits rather than the
residual unbalance unless the contract says otherwise.
"""

from __future__ import annotations

import math
from dataclasses import asdict, dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import units, vectors
from stillshaft.solver import consistency, limit_tables, vibration_limits
from stillshaft.solver.limit_tables import GradesTable, JournalTable, LimitsError
from stillshaft.solver.residual import Residual, probability_within, residual
from stillshaft.solver.runs import Rotor, Runs
from stillshaft.solver.vibration_limits import Chosen, VibrationVerdict

Real = NDArray[np.float64]

NOT_APPLICABLE = "not applicable"
_SURE = 0.95
_ONE_SIDED, _TWO_SIDED = 1.645, 1.959963984540054  # standard deviations: 95 % on one side, 95 % within
_FASTER = 1.02  # a run above the service speed by more than this is said


@dataclass(frozen=True)
class PlaneTolerance:
    """Permissible and residual unbalance of one tolerance plane, g·mm; None where it does not apply or cannot be told."""

    plane: str
    permissible_gmm: float | None
    residual_gmm: float | None
    residual_ci95: float | None
    probability_within: float | None
    verdict: str

    @property
    def bounds_gmm(self) -> tuple[float, float] | None:
        """The printed guard band |U| ± 1.645·s: above or below it the residual is with 95 %, nearly."""
        if self.residual_gmm is None or self.residual_ci95 is None:
            return None
        reach = _ONE_SIDED / _TWO_SIDED * self.residual_ci95
        return max(0.0, self.residual_gmm - reach), self.residual_gmm + reach


@dataclass(frozen=True)
class Tolerance:
    """Where the rotor stands; verdicts are met, not met, cannot be told, and not applicable for flexible rotors.

    `e_per_um` and `u_per_gmm` are None where no permissible unbalance applies or was asked for (grade "none"). `run` is
    the name of the run that was judged, `sources` what each limit comes from.
    """

    grade: str
    e_per_um: float | None
    u_per_gmm: float | None
    planes: tuple[PlaneTolerance, ...]
    vibration: tuple[VibrationVerdict, ...]
    reasons: tuple[str, ...]
    sources: tuple[str, ...] = ()
    run: str | None = None

    @property
    def verdict(self) -> str:
        """The worst of all verdicts."""
        verdicts = {p.verdict for p in self.planes} | {v.verdict for v in self.vibration}
        return next((v for v in ("not met", "cannot be told", "met") if v in verdicts), "cannot be told")


@dataclass(frozen=True)
class _Rule:
    """What is permissible: a grade in mm/s, or a journal load's constant."""

    text: str
    grade_mm_s: float
    source: str
    journal: bool


def grade_mm_s(text: str, table: GradesTable | None = None) -> float:
    """Number of a balance quality grade such as "G6.3". Raises LimitsError."""
    known = (table or limit_tables.grades()).grades_mm_s
    match = units.whole_match(r"\s*[Gg]?\s*(\d+(?:\.\d+)?)\s*", text)
    if not match or float(match[1]) not in known:
        raise LimitsError(f'grade "{units.shown(text)}": is none; choose one of {", ".join(f"G{g:g}" for g in known)}')
    return float(match[1])


def check_grade(text: str) -> None:
    """Raise LimitsError for what is neither a balance quality grade nor the name of the rule by journal load."""
    if text.strip().lower() != limit_tables.journal().name.lower():
        grade_mm_s(text)


def permissible(grade: float, mass_kg: float, speed_rpm: float) -> tuple[float, float]:
    """e_per in µm and U_per in g·mm of a rotor: e_per·Ω = G (ISO 21940-11, from memory)."""
    omega = speed_rpm * math.pi / 30.0
    e_per_um = 1000.0 * grade / omega
    return e_per_um, e_per_um * mass_kg


def journal_grade_mm_s(table: JournalTable) -> float:
    """The grade that permits as much at any speed: constant·m/n = 1000·G·m/Ω."""
    return table.constant * math.pi / 30.0 / 1000.0


def allocated(u_per: float, rotor: Rotor, bounds: tuple[float, float] | None = None) -> tuple[float, float]:
    """U_per at the bearings A and B by the distances of the centre of mass, each share within the bounds if there are."""
    assert rotor.bearing_span_mm is not None
    assert rotor.centre_of_mass_mm is not None
    low, high = bounds or (0.0, math.inf)
    share_b = abs(rotor.centre_of_mass_mm / rotor.bearing_span_mm)
    share_a = abs(1.0 - rotor.centre_of_mass_mm / rotor.bearing_span_mm)
    return u_per * min(high, max(low, share_a)), u_per * min(high, max(low, share_b))


def tolerance(
    grade: str | None,
    rotor: Rotor,
    runs: Runs | None = None,
    *,
    grades: GradesTable | None = None,
    journal: JournalTable | None = None,
    vibration: Chosen | None = None,
    static_couple: bool = False,
) -> Tolerance:
    """Permissible residual unbalance of a rotor and, with runs, the verdict on the last of them.

    `grade` is a grade or the name of a journal load's rule; None takes the one usual for the kind of machine.
    `static_couple` splits by the older way for overhung rotors instead of by bearings. Where the repeatability is only
    assumed, what repeated initial runs show is taken, as for the masses. Raises LimitsError for a grade,
    rotor data or limits that cannot be used.
    """
    reasons: list[str] = []
    sources: list[str] = []
    asked = grade is not None or journal is not None or rotor.machine is not None or rotor.mass_kg is not None
    rows: tuple[VibrationVerdict, ...] = ()
    if runs is not None:
        runs, learnt = consistency.with_measured_repeatability(runs)
        reasons.extend([learnt] if learnt else [])
        rows = vibration_limits.own_verdicts(runs)
    rule = None
    e_per_um = u_per = None
    planes: tuple[PlaneTolerance, ...] = ()
    if asked or not (rows or vibration):
        table = grades or limit_tables.grades()
        rule = _rule(grade, rotor, table, journal, reasons)
        whole = _whole(rule, rotor, runs, reasons)
        sources.append(f"{rule.text}: {rule.source}")
        left, untold = residual(runs) if runs is not None else (None, ())
        reasons.extend(untold)
        if rotor.flexible:
            reasons.append(
                f"{rule.text}: not applicable, because the rotor runs above a resonance of its own and bends: such limits "
                "are for rigid rotors; vibration limits decide"
            )
            planes = _unlimited(left)
        else:
            e_per_um, u_per = whole
            limits, judged = _in_tolerance_planes(
                u_per, rule, rotor, runs, left, table, static_couple, reasons, sources
            )
            planes = tuple(
                _judged(name, limit, None if judged is None else judged.at(i)) for i, (name, limit) in enumerate(limits)
            )
    if vibration is not None:
        sources.append(limit_tables.cited(vibration.table))
        if runs is not None:
            more, notes = vibration_limits.verdicts(vibration, runs)
            rows, reasons = (*rows, *more), [*reasons, *notes]
        else:
            of_class = vibration_limits.of_class(vibration.table, vibration.class_name)
            sources.extend(limit_tables.row_text(vibration.table, row) for row in of_class)
    if runs is None:
        reasons.append("there are no runs: only what is permissible can be told")
    return Tolerance(
        "none" if rule is None else rule.text, e_per_um, u_per, planes, rows, tuple(reasons), tuple(sources),
        None if runs is None else runs.runs[-1].name,
    )  # fmt: skip


def _rule(
    grade: str | None, rotor: Rotor, table: GradesTable, journal: JournalTable | None, reasons: list[str]
) -> _Rule:
    """What was asked for, else what is usual for the machine, else what is usual at all."""
    for rule in (journal, limit_tables.journal() if grade is not None else None):
        if rule is not None and (grade is None or grade.strip().lower() == rule.name.lower()):
            return _Rule(rule.name, journal_grade_mm_s(rule), f"{rule.source}, {rule.edition}", True)
    cited = f"{table.source}, {table.edition}"
    if grade is not None:
        number = grade_mm_s(grade, table)
        reasons.extend(_otherwise_usual(number, rotor, table))
        return _Rule(f"G{number:g}", number, cited, False)
    if rotor.machine is not None:
        number, where = limit_tables.machine_grade(table, rotor.machine, rotor.speed_rpm)
        reasons.append(f"G{number:g} is usual for this machine, {rotor.machine} ({where})")
        return _Rule(f"G{number:g}", number, cited, False)
    reasons.append(f"neither grade nor machine given: G{table.usual_mm_s:g}, usual for general machinery, is assumed")
    return _Rule(f"G{table.usual_mm_s:g}", table.usual_mm_s, cited, False)


def _otherwise_usual(number: float, rotor: Rotor, table: GradesTable) -> list[str]:
    """What is usual for the machine where another grade was asked for."""
    if rotor.machine is None:
        return []
    try:
        usual, where = limit_tables.machine_grade(table, rotor.machine, rotor.speed_rpm)
    except LimitsError:
        return []
    return [] if usual == number else [f"usual for this machine, {rotor.machine}, is G{usual:g} ({where})"]


def _whole(rule: _Rule, rotor: Rotor, runs: Runs | None, reasons: list[str]) -> tuple[float, float]:
    """e_per and U_per of the whole rotor at its highest service speed. Raises LimitsError for what is missing or wrong."""
    if rotor.mass_kg is None:
        raise LimitsError('rotor mass: is missing; give it as --rotor-mass "80 kg" or in the [rotor] table')
    if not 0.0 < rotor.mass_kg < math.inf:
        raise LimitsError(f"rotor mass: {rotor.mass_kg:g} kg must be above 0 and finite")
    if rotor.speed_rpm is None:
        raise LimitsError("speed: is missing; give the highest service speed as --speed RPM or in the [rotor] table")
    if not 0.0 < rotor.speed_rpm < math.inf:
        raise LimitsError(f"speed: {rotor.speed_rpm:g} r/min must be above 0 and finite")
    if rotor.bearing_span_mm is not None and not 0.0 < rotor.bearing_span_mm < math.inf:
        raise LimitsError(f"bearing span: {rotor.bearing_span_mm:g} mm must be above 0 and finite")
    if rotor.kind == "between bearings" and rotor.bearing_span_mm is not None and rotor.centre_of_mass_mm is not None:
        span, centre = rotor.bearing_span_mm, rotor.centre_of_mass_mm
        if not 0.0 <= centre <= span:
            raise LimitsError(
                f"centre of mass: {centre:g} mm is not between the bearings, 0 to {span:g} mm; mend it, or say that the "
                'rotor is overhung with --overhung or kind = "overhung"'
            )
    if runs is not None and runs.runs[-1].speed_rpm > _FASTER * rotor.speed_rpm:
        reasons.append(
            f"the last run was at {runs.runs[-1].speed_rpm:.0f} r/min, above the highest service speed of "
            f"{rotor.speed_rpm:.0f} r/min that the limit is for"
        )
    return permissible(rule.grade_mm_s, rotor.mass_kg, rotor.speed_rpm)


Limits = list[tuple[str, float]]


def _in_tolerance_planes(
    u_per: float,
    rule: _Rule,
    rotor: Rotor,
    runs: Runs | None,
    left: Residual | None,
    table: GradesTable,
    static_couple: bool,
    reasons: list[str],
    sources: list[str],
) -> tuple[Limits, Residual | None]:
    """Names and limits of the tolerance planes, and the residual there.

    The tolerance planes are the bearings where the geometry is known, else the correction planes.
    """
    if static_couple:
        return _static_and_couple(u_per, rotor, runs, left, table, sources)
    if runs is not None and len(runs.planes) == 1:
        return [(runs.planes[0].name, u_per)], left
    span, centre = rotor.bearing_span_mm, rotor.centre_of_mass_mm
    if span is None or centre is None:
        if runs is None:
            return [("whole rotor", u_per)], None
        reasons.append(
            "bearing span or centre of mass not given: the permissible unbalance is split evenly over the planes"
        )
        return [(p.name, u_per / len(runs.planes)) for p in runs.planes], left
    at = allocated(u_per, rotor, None if rule.journal else table.shares[rotor.kind])
    limits = list(zip(("bearing A", "bearing B"), at, strict=True))
    return limits, None if left is None else _at_bearings(left, span, reasons)


def _at_bearings(left: Residual, span_mm: float, reasons: list[str]) -> Residual | None:
    """The residual moved into the bearing planes: U_A = Σ U·(L − z)/L, U_B = Σ U·z/L, z from bearing A (statics)."""
    places = [z for z in left.places_mm if z is not None]
    if len(places) == len(left.names):
        share = np.array(places) / span_mm
        return left.moved(("bearing A", "bearing B"), np.array([1.0 - share, share]))
    if len(left.names) == 2:
        reasons.append(
            "the planes' places along the shaft (z) are not given: their residuals are taken as at the bearings"
        )
        return left
    reasons.append("the planes' places along the shaft (z) are not given: the residual at the bearings cannot be told")
    return None


def _static_and_couple(
    u_per: float, rotor: Rotor, runs: Runs | None, left: Residual | None, table: GradesTable, sources: list[str]
) -> tuple[Limits, Residual | None]:
    """The older split: a static part midway between two correction planes, and a couple in them (from memory)."""
    if table.static_couple is None:
        raise LimitsError(f"split: {table.name} has no [static_couple] table")
    if rotor.kind != "overhung":
        raise LimitsError("split: static and couple are for overhung rotors; split by the bearings, or say --overhung")
    places = [] if runs is None else [p.z_mm for p in runs.planes if p.z_mm is not None]
    if rotor.bearing_span_mm is None or runs is None or len(runs.planes) != 2 or len(places) != 2:
        raise LimitsError(
            "split: static and couple need the bearing span and a runs file with two planes, each with its z"
        )
    span, arm = rotor.bearing_span_mm, abs(places[1] - places[0])
    middle = 0.5 * (places[0] + places[1])
    if arm == 0.0:
        raise LimitsError("split: static and couple need two planes apart; their z is the same")
    sources.append(f"static and couple: {table.static_couple.source}")
    limits = [
        ("static", u_per * table.static_couple.static * span / max(abs(middle), abs(middle - span))),
        ("couple", u_per * table.static_couple.couple * span / arm),
    ]
    split = np.array([[1.0, 1.0], [-0.5, 0.5]])
    return limits, None if left is None else left.moved(("static", "couple"), split)


def _unlimited(left: Residual | None) -> tuple[PlaneTolerance, ...]:
    """The residual by correction plane where no limit applies."""
    if left is None:
        return ()
    rows = []
    for i, name in enumerate(left.names):
        unbalance, covariance = left.at(i)
        half, _ = vectors.half_widths(unbalance, covariance, math.inf)
        rows.append(PlaneTolerance(name, None, abs(unbalance), half, None, NOT_APPLICABLE))
    return tuple(rows)


def _judged(name: str, limit_gmm: float, left: tuple[complex, Real] | None) -> PlaneTolerance:
    """Verdict from the probability that the true residual lies within the limit."""
    if left is None:
        return PlaneTolerance(name, limit_gmm, None, None, None, "cannot be told")
    unbalance, covariance = left
    half, _ = vectors.half_widths(unbalance, covariance, math.inf)
    within = probability_within(limit_gmm, unbalance, covariance)
    verdict = "met" if within >= _SURE else "not met" if within <= 1.0 - _SURE else "cannot be told"
    return PlaneTolerance(name, limit_gmm, abs(unbalance), half, within, verdict)


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
        "verdict": result.verdict,
        "sources": list(result.sources),
    }
