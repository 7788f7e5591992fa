"""What the solver's verbs print for people."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from rich.table import Table
from stillshaft.ui.account import new_console, with_interval

if TYPE_CHECKING:
    from stillshaft.solver.correction import Correction, Solution
    from stillshaft.solver.limits import Tolerance
    from stillshaft.solver.stored import Verdict
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


def print_solution(solution: Solution, stored: Verdict | None = None) -> None:
    """Corrections, what to add now, expected vibration, what the trials were worth, and what else may be said."""
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
    table = Table(title=f"expected vibration after the correction ({solution.method})")
    for heading in ("point", "r/min", "amplitude", "at most (95 %)", "unit"):
        table.add_column(heading, justify="left" if heading in ("point", "unit") else "right")
    for p in solution.predicted:
        table.add_row(p.point, f"{p.speed_rpm:.0f}", f"{p.amplitude:.3f}", f"{p.amplitude_upper95:.3f}", p.unit)
    console.print(table)
    for effect in solution.trials:
        console.print(effect.sentence, soft_wrap=True)
    for warning in (*([stored.sentence] if stored is not None else []), *solution.warnings, *solution.reasons):
        console.print(warning, soft_wrap=True)


def print_tolerance(tolerance: Tolerance) -> None:
    """Permissible and residual unbalance by plane, vibration against its limits, and what each limit comes from."""
    console = new_console()
    if tolerance.u_per_gmm is not None:
        console.print(
            f"{tolerance.grade}: {tolerance.e_per_um:.2f} µm, {tolerance.u_per_gmm:.0f} g·mm in all", soft_wrap=True
        )
    if tolerance.planes:
        of_run = "" if tolerance.run is None else f' in "{tolerance.run}"'
        table = Table(title=f"equivalent residual unbalance from 1x{of_run}, g·mm")
        for heading in ("plane", "permissible", "residual", "|U| ± 1.645 s", "within, probability", "verdict"):
            table.add_column(heading, justify="left" if heading in ("plane", "verdict") else "right")
        for p in tolerance.planes:
            table.add_row(
                p.plane,
                "-" if p.permissible_gmm is None else f"{p.permissible_gmm:.0f}",
                "-" if p.residual_gmm is None else with_interval(p.residual_gmm, p.residual_ci95),
                "-"
                if p.bounds_gmm is None
                else " to ".join(f"{b:.0f}" if b >= 100.0 else f"{b:.3g}" for b in p.bounds_gmm),
                "-" if p.probability_within is None else f"{100.0 * p.probability_within:.1f} %",
                p.verdict,
            )
        console.print(table)
        means = "" if tolerance.u_per_gmm is None else "; met: within with 95 % probability, at every plane"
        console.print(f"bow, misalignment and coupling included{means}", soft_wrap=True)
    for v in tolerance.vibration:
        zone = "" if v.zone is None else f", zone {v.zone}"
        console.print(
            f"{v.point}: {with_interval(v.value, v.ci95)}, limit {v.limit:g} ({v.source}){zone}: {v.verdict}",
            soft_wrap=True,
        )
    for text in (*tolerance.reasons, *tolerance.sources):
        console.print(text, soft_wrap=True)
    console.print("the edition in force, the machine's maker and local rules decide", soft_wrap=True)


def print_limit_tables() -> None:
    """The built-in limit tables: what they hold, what they come from, and the file to copy."""
    from stillshaft.solver import limit_tables

    console = new_console()
    for table in limit_tables.built_in():
        console.print(limit_tables.cited(table), soft_wrap=True)
        for line in limit_tables.contents(table):
            console.print(f"  {line}", soft_wrap=True)
        console.print(f"  file: {table.path}", soft_wrap=True)
    console.print(
        "to change one, copy its file, edit it, and name the copy with --limits FILE; "
        "the edition in force, the machine's maker and local rules decide",
        soft_wrap=True,
    )


def print_trial(trial: Trial) -> None:
    """Mass, force and place, with the cautions that belong to it."""
    console = new_console()
    place = "any direction" if trial.angle_deg is None else f"at {trial.angle_deg:.0f}° against rotation from the mark"
    console.print(f"{trial.plane}: {1000.0 * trial.mass_kg:.2f} g {place} ({trial.reason})", soft_wrap=True)
    console.print(
        f"its centrifugal force: {trial.force_n:.0f} N, the weight of {trial.force_kgf:.1f} kg", soft_wrap=True
    )
    for level in trial.levels:
        limit = "" if level.abort is None else f", abort level {level.abort:g}"
        console.print(
            f"{level.point}: {level.expected:.2f} to be expected with it, {level.worst:.2f} at the worst angle{limit}",
            soft_wrap=True,
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
