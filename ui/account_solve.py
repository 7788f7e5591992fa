"""What the solver's verbs print for people."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from rich.table import Table
from stillshaft.ui.account import new_console, with_interval

if TYPE_CHECKING:
    from stillshaft.solver.correction import Correction, Solution
    from stillshaft.solver.limits import Tolerance
    from stillshaft.solver.trial import Lag, Trial


def _correction_rows(table: Table, corrections: Sequence[Correction]) -> None:
    for c in corrections:
        table.add_row(
            c.plane,
            with_interval(c.mass, c.mass_ci95),
            with_interval(c.angle_deg, c.angle_ci95_deg),
            "-" if c.radius_mm is None else f"{c.radius_mm:.0f}",
            "yes" if c.determined else "no",
        )


def print_solution(solution: Solution) -> None:
    """Corrections, what to add now, expected vibration."""
    console = new_console()
    unit = solution.corrections[0].unit
    for title, corrections in (
        (f"corrections, {unit}, all trial masses off", solution.corrections),
        (f"or to add with the masses of the last run left on, {unit}", solution.additional),
    ):
        table = Table(title=title)
        for heading in ("plane", "mass", "angle ° against rotation", "radius mm", "determined"):
            table.add_column(heading, justify="left" if heading == "plane" else "right")
        _correction_rows(table, corrections)
        console.print(table)
    table = Table(title="expected vibration after the correction")
    for heading in ("point", "r/min", "amplitude", "at most (95 %)", "unit"):
        table.add_column(heading, justify="left" if heading in ("point", "unit") else "right")
    for p in solution.predicted:
        table.add_row(p.point, f"{p.speed_rpm:.0f}", f"{p.amplitude:.3f}", f"{p.amplitude_upper95:.3f}", p.unit)
    console.print(table)
    for warning in (*solution.warnings, *solution.reasons):
        console.print(warning, soft_wrap=True)


def print_tolerance(tolerance: Tolerance) -> None:
    """Permissible and residual unbalance by plane, vibration against its limits."""
    console = new_console()
    console.print(
        f"{tolerance.grade} by ISO 21940-11 (from memory; the edition in force decides): "
        f"{tolerance.e_per_um:.2f} µm, {tolerance.u_per_gmm:.0f} g·mm in all"
    )
    table = Table(title="equivalent residual unbalance from 1x, g·mm")
    for heading in ("plane", "permissible", "residual", "verdict"):
        table.add_column(heading, justify="right" if heading in ("permissible", "residual") else "left")
    for p in tolerance.planes:
        residual = "-" if p.residual_gmm is None else with_interval(p.residual_gmm, p.residual_ci95)
        table.add_row(p.plane, f"{p.permissible_gmm:.0f}", residual, p.verdict)
    console.print(table)
    for v in tolerance.vibration:
        console.print(f"{v.point}: {with_interval(v.value, v.ci95)}, limit {v.limit:g} ({v.source}): {v.verdict}")
    for reason in tolerance.reasons:
        console.print(reason, soft_wrap=True)


def print_trial(trial: Trial) -> None:
    """Mass, force and place, with the cautions that belong to it."""
    console = new_console()
    place = "any direction" if trial.angle_deg is None else f"at {trial.angle_deg:.0f}° against rotation from the mark"
    console.print(f"{trial.plane}: {1000.0 * trial.mass_kg:.2f} g {place} ({trial.reason})", soft_wrap=True)
    console.print(
        f"its centrifugal force: {trial.force_n:.0f} N, the weight of {trial.force_kgf:.1f} kg", soft_wrap=True
    )
    console.print(
        "Fixed so that shape carries this force, not friction; no tape, magnet or glue. Isolated, locked, tried and blocked "
        "before hands go in; nobody in the plane of rotation. Local rules and the maker's limits decide.",
        soft_wrap=True,
    )


def doubt_of(lag: Lag) -> str | None:
    """Why a lag is not to be used, if it is not."""
    if lag.lag_ci95_deg is None:
        return "the trial says nothing of the lag: use a larger mass"
    if lag.lag_ci95_deg < lag.lag_deg - 180.0 and lag.lag_deg + lag.lag_ci95_deg < 360.0:
        return f"a lag of {lag.lag_deg:.0f}° is no single mode's: check the sensor angles and the direction of rotation"
    return None


def print_lags(lags: Sequence[Lag]) -> None:
    """One line per point."""
    console = new_console()
    table = Table(title="degrees against rotation from the mark; initial state")
    for heading in ("point", "plane", "lag °", "high spot °", "heavy spot °"):
        table.add_column(heading, justify="left" if heading in ("point", "plane") else "right")
    for x in lags:
        table.add_row(
            x.point,
            x.plane,
            with_interval(x.lag_deg, x.lag_ci95_deg),
            f"{x.high_spot_deg:.0f}",
            f"{x.heavy_spot_deg:.0f}",
        )
    console.print(table)
    for x in lags:
        if (doubt := doubt_of(x)) is not None:
            console.print(f"do not trust: {x.point}: {doubt}", soft_wrap=True)
