"""Verbs from vectors to masses and verdicts."""

from __future__ import annotations

from dataclasses import asdict
from pathlib import Path
from typing import Annotated

import typer
from stillshaft.ui.command import (
    DO_NOT_TRUST,
    JsonOption,
    PlotOption,
    app,
    print_json,
    print_whole,
    version,
    warn,
)


@app.command()
def solve(
    runs: Annotated[Path, typer.Argument(help="Runs file (TOML).")],
    method: Annotated[
        str, typer.Option(metavar="auto|least-squares|expected|minimax", help="What the correction makes least.")
    ] = "auto",
    plane: Annotated[
        list[str] | None, typer.Option(help="Only this plane takes mass; give it again for several.")
    ] = None,
    without_point: Annotated[
        list[str] | None, typer.Option(metavar="POINT", help="This point does not count; give it again for several.")
    ] = None,
    parts: Annotated[
        str, typer.Option(metavar="all|static|couple", help="Of two planes: the static part or the couple alone.")
    ] = "all",
    coefficients: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Stored coefficients to use beside the runs.")
    ] = None,
    machine: Annotated[str | None, typer.Option(help="Machine that the stored coefficients belong to.")] = None,
    keep: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Store the coefficients found, for the next time.")
    ] = None,
    plot: PlotOption = None,
    as_json: JsonOption = False,
) -> None:
    """Work out the corrections from a runs file."""
    from stillshaft.solver import correction
    from stillshaft.ui import account_solve, drawing
    from stillshaft.ui import coefficients as stores

    if machine is None and (keep is not None or coefficients is not None):
        raise typer.BadParameter("stored coefficients belong to a machine: name it with --machine")
    wanted = correction.Wanted(method, tuple(plane or ()), tuple(without_point or ()), parts)
    answer = stores.solved(runs, wanted, coefficients, machine)
    if keep is not None and machine is not None:
        stores.keep(keep, machine, answer)
        warn(f"coefficients of {machine} stored in {keep}")
    if plot is not None:
        title = f"{runs.name}: vectors and corrections"
        drawing.write_polars(plot, title, drawing.solution_polars(answer.runs, answer.solution))
        warn(f"plot written to {plot}")
    if as_json:
        whole = correction.to_json(answer.solution, version())
        print_whole(whole | {"stored": stores.to_json(answer.verdict)})
    else:
        account_solve.print_solution(answer.solution, answer.verdict)
    if not answer.solution.trusted:
        raise typer.Exit(DO_NOT_TRUST)


@app.command()
def trial(
    rotor_mass: Annotated[str, typer.Option(help='Rotor mass, such as "80 kg".')],
    radius: Annotated[str, typer.Option(help='Radius at which the mass will sit, such as "300 mm".')],
    speed: Annotated[float, typer.Option(metavar="RPM", help="Speed of the run, r/min.")],
    plane: Annotated[str, typer.Option(help="Name of the plane.")] = "plane",
    planes: Annotated[int, typer.Option(min=1, help="Correction planes that share the rotor's weight.")] = 1,
    share: Annotated[float, typer.Option(help="Force of the mass, as a part of the weight on its plane.")] = 0.1,
    heavy_spot: Annotated[
        float | None, typer.Option(metavar="DEG", help="Heavy spot, as `lag` tells it; any direction unless given.")
    ] = None,
    resonance: Annotated[
        float | None, typer.Option(metavar="RPM", help="Nearest resonance, as `sweep` tells it.")
    ] = None,
    runs: Annotated[Path | None, typer.Option(metavar="FILE", help="Runs file with the initial run.")] = None,
    hookup: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Hook-up file: angles of sensors and pulse.")
    ] = None,
    point: Annotated[
        str | None, typer.Option(help="Radial point nearest the plane, whose high spot and lag tell the heavy spot.")
    ] = None,
    lag_deg: Annotated[
        float | None, typer.Option("--lag", metavar="DEG", help="Mechanical lag there at this speed.")
    ] = None,
    coefficients: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Stored coefficients: they tell mass, direction and levels.")
    ] = None,
    machine: Annotated[str | None, typer.Option(help="Machine that they belong to.")] = None,
    abort: Annotated[
        float | None, typer.Option(metavar="LEVEL", help="Agreed abort level, in the unit of the runs file.")
    ] = None,
    as_json: JsonOption = False,
) -> None:
    """Trial mass, its centrifugal force, and where to put it."""
    from stillshaft.dsp import units
    from stillshaft.solver.trial import to_json
    from stillshaft.ui import account_solve
    from stillshaft.ui import trial as trials

    if abort is not None and not abort > 0.0:
        raise typer.BadParameter("--abort: must be above 0")
    found = trials.planned(
        plane,
        units.parse(rotor_mass, "kg", "--rotor-mass"),
        units.parse(radius, "m", "--radius"),
        speed,
        planes=planes,
        share=share,
        heavy_spot_deg=heavy_spot,
        resonance_rpm=resonance,
        known=trials.Known(runs, hookup, point, lag_deg, coefficients, machine, abort),
    )
    if as_json:
        print_json("trial", True, [found.reason], to_json(found))
    else:
        account_solve.print_trial(found)


@app.command()
def lag(
    runs: Annotated[Path, typer.Argument(help="Runs file with an initial and a trial run.")],
    hookup: Annotated[Path, typer.Option("--hookup", metavar="FILE", help="Hook-up file: the angles of the sensors.")],
    point: Annotated[str | None, typer.Option(help="Only this point.")] = None,
    as_json: JsonOption = False,
) -> None:
    """Mechanical lag, high spot and heavy spot of each point, from what the trial moved."""
    from stillshaft.ui import account_solve
    from stillshaft.ui import trial as trials

    found = trials.lags_of(runs, hookup, point)
    doubts = [f"{x.point}: {account_solve.doubt_of(x)}" for x in found if account_solve.doubt_of(x)]
    if as_json:
        rows = [asdict(x) for x in found]
        first = {key: rows[0][key] for key in ("point", "high_spot_deg", "heavy_spot_deg", "lag_deg", "lag_ci95_deg")}
        print_json("lag", not doubts, doubts, {**first, "points": rows})
    else:
        account_solve.print_lags(found)
    if doubts:
        raise typer.Exit(DO_NOT_TRUST)


@app.command()
def tolerance(
    runs: Annotated[Path | None, typer.Argument(help="Runs file, to show where the rotor stands.")] = None,
    grade: Annotated[
        str | None, typer.Option(help="Balance quality grade, such as G6.3, or a rule by journal load: 4W/N.")
    ] = None,
    machine: Annotated[str | None, typer.Option(help='Kind of machine, such as "fan": takes its usual grade.')] = None,
    rotor_mass: Annotated[str | None, typer.Option(help='Rotor mass, such as "80 kg".')] = None,
    speed: Annotated[float | None, typer.Option(metavar="RPM", help="Highest service speed, r/min.")] = None,
    bearing_span: Annotated[str | None, typer.Option(help='Distance between bearings, such as "900 mm".')] = None,
    centre_of_mass: Annotated[
        str | None, typer.Option(help='Centre of mass from the first bearing, such as "400 mm".')
    ] = None,
    overhung: Annotated[bool, typer.Option("--overhung", help="The rotor hangs outside its bearings.")] = False,
    flexible: Annotated[
        bool, typer.Option("--flexible", help="It runs above a resonance of its own: grades do not apply.")
    ] = False,
    split: Annotated[
        str, typer.Option(metavar="bearings|static-couple", help="Planes that share what is permissible.")
    ] = "bearings",
    limits: Annotated[
        list[str] | None,
        typer.Option(
            metavar="NAME|FILE", help='Limit table, such as "ISO 20816-3", or a file of your own; see --tables.'
        ),
    ] = None,
    class_name: Annotated[
        str | None, typer.Option("--class", help='Class within the vibration table, such as "BV-3".')
    ] = None,
    support: Annotated[
        list[str] | None,
        typer.Option(help='rigid, flexible, or the lowest natural frequency, "30 Hz"; for one point "POINT = 30 Hz".'),
    ] = None,
    accept: Annotated[
        str | None, typer.Option(help="Limit of the vibration table that the verdict is about, such as A/B.")
    ] = None,
    tables: Annotated[bool, typer.Option("--tables", help="List the limit tables with their files, and stop.")] = False,
    as_json: JsonOption = False,
) -> None:
    """Permissible residual unbalance and vibration limits, and where the rotor stands."""
    from stillshaft.solver import limits as verdicts
    from stillshaft.ui import account_solve
    from stillshaft.ui.tolerance import RotorTexts, tolerance_of

    if tables:
        account_solve.print_limit_tables()
        return
    rotor = RotorTexts(
        rotor_mass, speed, bearing_span, centre_of_mass, "overhung" if overhung else None, machine, flexible or None
    )
    result = tolerance_of(
        runs, grade, rotor, split=split, limits_named=limits or (), class_name=class_name, supports=support or (),
        accept=accept,
    )  # fmt: skip
    if as_json:
        print_whole(verdicts.to_json(result, version()))
    else:
        account_solve.print_tolerance(result)
