"""The verb that chooses pieces: what of the stock goes to which position.

`--json` has the contract's keys and more. `pieces` are {plane, position (from 1, null: any angle), angle_deg, mass, unit,
radius_mm, rim_mm (from the mark against rotation), force_n (at the highest speed of the file), clock (with the mark under
the pulse sensor), filler, drill_full_mm, drill_total_mm, grind_mm, rod_mm}: null where not asked for or not known.
`result` are the {plane, mass, angle_deg, unit, radius_mm} that the pieces of each plane make together. `relative_to` is
"initial" or "last run"; `largest` the largest residual in `residual_unit`, `bound` what no choice of so many pieces goes
below, `continuous` what no masses at all do; `curve` lists {pieces, largest, bound, optimal} for every number of pieces,
`handbook` is the {pieces, largest} of masses split between neighbours and rounded.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer
from stillshaft.dsp.units import InputError
from stillshaft.ui.command import DO_NOT_TRUST, HookupOption, JsonOption, app, print_json, warn

if TYPE_CHECKING:
    from stillshaft.acquire.hookup import Hookup
    from stillshaft.solver.pieces import Plan
    from stillshaft.solver.placement import Placed
    from stillshaft.solver.runs import Runs, StockMass

_MOST_PIECES = 1000


class PiecesError(InputError):
    """An option of `pieces` that cannot be used."""


@dataclass(frozen=True)
class Fixing:
    """How pieces are made or fixed, SI units: None where it was not said. `filler` is in the mass unit."""

    density_kg_m3: float = 7850.0
    drill_m: float | None = None
    drill_point_deg: float = 118.0
    grind_m2: float | None = None
    rod_m: float | None = None
    recovery: float = 1.0
    filler: float = 0.0

    @property
    def takes_off(self) -> bool:
        """True where metal is removed instead of added."""
        return self.drill_m is not None or self.grind_m2 is not None


@app.command()
def pieces(
    runs: Annotated[Path, typer.Argument(help="Runs file (TOML) with positions, and the stock if it has one.")],
    stock: Annotated[
        str | None, typer.Option(help='Pieces at hand instead of the file\'s, such as "5 g x 10, 10 g x 4".')
    ] = None,
    aim: Annotated[str, typer.Option(metavar="proposal|best|fewest", help="What to give pieces for.")] = "proposal",
    at_most: Annotated[int | None, typer.Option(min=0, metavar="N", help="No more pieces than this.")] = None,
    goal: Annotated[
        float | None, typer.Option(metavar="AMPLITUDE", help="For --aim fewest: what every point is to stay below.")
    ] = None,
    leave_on: Annotated[bool, typer.Option("--leave-on", help="The masses of the last run stay on.")] = False,
    combine: Annotated[
        bool, typer.Option("--combine", help="Fewest pieces that do what those of the last run do together.")
    ] = False,
    coefficients: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Stored coefficients to use beside the runs.")
    ] = None,
    machine: Annotated[str | None, typer.Option(help="Machine that the stored coefficients belong to.")] = None,
    hookup: HookupOption = None,
    material: Annotated[
        str, typer.Option(help='Metal that is drilled, ground or welded: a name, or "7850 kg/m^3".')
    ] = "steel",
    drill: Annotated[str | None, typer.Option(help='Masses are holes of this diameter, such as "12 mm".')] = None,
    drill_point: Annotated[float, typer.Option(metavar="DEG", help="Point angle of the drill.")] = 118.0,
    grind: Annotated[
        str | None, typer.Option(help='Masses are ground off evenly over this area, such as "4 cm^2".')
    ] = None,
    rod: Annotated[str | None, typer.Option(help='Core diameter of the welding rod, such as "3.2 mm".')] = None,
    recovery: Annotated[
        float | None,
        typer.Option(metavar="PERCENT", help="Share of the rod's core that lands on the part: weigh a bead."),
    ] = None,
    filler: Annotated[str | None, typer.Option(help='Weld metal that each piece takes, such as "0.6 g".')] = None,
    as_json: JsonOption = False,
) -> None:
    """Which stock masses to put at which allowed positions, proven for every number of pieces."""
    from dataclasses import asdict

    from stillshaft.acquire.hookup import load_hookup
    from stillshaft.solver import pieces as choosing
    from stillshaft.solver.correction import Wanted
    from stillshaft.solver.runs_file import load_runs
    from stillshaft.ui import account, account_pieces
    from stillshaft.ui import coefficients as stores

    if combine and leave_on:
        raise typer.BadParameter("--combine takes the masses of the last run off, --leave-on leaves them: give one")
    if machine is None and coefficients is not None:
        raise typer.BadParameter("stored coefficients belong to a machine: name it with --machine")
    answer = None if combine else stores.solved(runs, Wanted(), coefficients, machine)
    read = load_runs(runs) if answer is None else answer.runs
    wired = None if hookup is None else load_hookup(hookup)
    fixing = _fixing(read, material, drill, drill_point, grind, rod, recovery, filler)
    at_hand = [_as_fixed(s, fixing) for s in (read.stock if stock is None else _stock(stock, read))]
    with account.progress("choosing pieces") as report:
        if answer is None:
            plan = choosing.combined(read, at_hand, most=at_most, report=report)
        else:
            plan = choosing.plan(
                read, at_hand, aim=aim, most=at_most, goal=goal, left_on=leave_on, priors=answer.priors, report=report
            )
    if answer is not None and answer.verdict is not None:
        warn(answer.verdict.sentence)
    rows = piece_rows(plan, read, fixing, wired)
    if as_json:
        content = {
            "pieces": rows,
            "result": result_rows(plan, read),
            "predicted": [asdict(p) for p in plan.predicted],
            "optimal": plan.chosen.optimal,
            "bound": plan.chosen.bound,
            "largest": plan.chosen.largest,
            "residual_unit": plan.unit,
            "continuous": plan.curve.continuous,
            "relative_to": "last run" if plan.left_on else "initial",
            "curve": [
                {"pieces": k, "largest": c.largest, "bound": c.bound, "optimal": c.optimal}
                for k, c in enumerate(plan.curve.choices)
            ],
            "handbook": None if plan.handbook is None else dict(zip(("pieces", "largest"), plan.handbook, strict=True)),
            "warnings": list(plan.warnings),
        }
        print_json("pieces", plan.trusted, list(plan.reasons), content)
    else:
        account_pieces.print_plan(plan, rows, result_rows(plan, read))
    if not plan.trusted:
        raise typer.Exit(DO_NOT_TRUST)


def _stock(text: str, runs: Runs) -> list[StockMass]:
    """Pieces from "5 g x 10, 10 g x 4". Raises PiecesError, UnitError."""
    from stillshaft.dsp import units
    from stillshaft.solver.runs import StockMass
    from stillshaft.ui.brief_text import mass_and_count

    found = []
    for part in text.split(","):
        piece = mass_and_count(part)
        if piece is None:
            raise PiecesError(f'--stock: "{units.shown(part)}": write mass x count, such as "5 g x 10, 10 g x 4"')
        mass = units.parse(piece[0], "kg", "--stock") / runs.kg_per_mass_unit
        if not (math.isfinite(mass) and mass):
            raise PiecesError(f'--stock: "{part.strip()}": the mass must not be 0')
        found.append(StockMass(mass, min(piece[1], _MOST_PIECES)))
    return found


def _fixing(
    runs: Runs,
    material: str,
    drill: str | None,
    drill_point: float,
    grind: str | None,
    rod: str | None,
    recovery: float | None,
    filler: str | None,
) -> Fixing:
    """The options of fixing, read and checked. Raises PiecesError, HandworkError, UnitError."""
    from stillshaft.dsp import units
    from stillshaft.solver import handwork

    if drill is not None and grind is not None:
        raise PiecesError("--drill, --grind: give one of them")
    if (rod is not None or filler is not None) and (drill is not None or grind is not None):
        raise PiecesError("--rod, --filler: add metal, but --drill and --grind take it off; give one of them")
    if rod is not None and recovery is None:
        raise PiecesError(
            "--rod: say with --recovery how many percent of the rod's core land on the part: weigh a bead"
        )
    return Fixing(
        handwork.density(material),
        None if drill is None else _positive(units.parse(drill, "m", "--drill"), "--drill", drill),
        drill_point,
        None if grind is None else _positive(units.parse(grind, "m^2", "--grind"), "--grind", grind),
        None if rod is None else _positive(units.parse(rod, "m", "--rod"), "--rod", rod),
        1.0 if recovery is None else recovery / 100.0,
        0.0
        if filler is None
        else _positive(units.parse(filler, "kg", "--filler"), "--filler", filler) / runs.kg_per_mass_unit,
    )


def _positive(value: float, option: str, text: str) -> float:
    if not value > 0.0:
        raise PiecesError(f'{option}: "{text}" must be above 0')
    return value


def _as_fixed(piece: StockMass, fixing: Fixing) -> StockMass:
    """What a piece of the stock does once it is fixed: with its weld metal; taken off where metal is removed."""
    from stillshaft.solver.runs import StockMass

    mass = -abs(piece.mass) if fixing.takes_off else piece.mass
    return StockMass(mass + fixing.filler, piece.count)


def piece_rows(plan: Plan, runs: Runs, fixing: Fixing, hookup: Hookup | None) -> list[dict[str, Any]]:
    """One object for each piece, as the module's docstring lists its keys."""
    speed_rpm = max([r.speed_rpm for r in runs.runs] + [(runs.rotor and runs.rotor.speed_rpm) or 0.0])
    return [_piece_row(p, plan, runs, fixing, hookup, speed_rpm) for p in plan.chosen.pieces]


def _piece_row(
    piece: Placed, plan: Plan, runs: Runs, fixing: Fixing, hookup: Hookup | None, speed_rpm: float
) -> dict[str, Any]:
    from stillshaft.solver import handwork
    from stillshaft.solver.pieces import number_of
    from stillshaft.solver.trial import centrifugal_force

    plane = plan.planes[piece.plane]
    radius_mm = None if plane.radius_mm is None else plane.radius_mm * piece.leverage
    kg = abs(piece.mass) * runs.kg_per_mass_unit
    hole = None
    if fixing.drill_m is not None:
        hole = handwork.drilled(kg, fixing.drill_m, fixing.density_kg_m3, point_deg=fixing.drill_point_deg)
    welded = fixing.filler * runs.kg_per_mass_unit or kg
    return {
        "plane": plane.name,
        "position": number_of(plane, piece),
        "angle_deg": piece.angle_deg,
        "mass": piece.mass - fixing.filler,
        "unit": runs.mass_unit,
        "radius_mm": radius_mm,
        "rim_mm": None if radius_mm is None else handwork.rim_distance(piece.angle_deg, radius_mm),
        "force_n": None if radius_mm is None else centrifugal_force(kg, radius_mm / 1000.0, speed_rpm),
        "clock": None if hookup is None else _clock(piece.angle_deg, hookup),
        "filler": fixing.filler or None,
        "drill_full_mm": None if hole is None else 1000.0 * hole.full_m,
        "drill_total_mm": None if hole is None else 1000.0 * hole.total_m,
        "grind_mm": None
        if fixing.grind_m2 is None
        else 1000.0 * handwork.ground_depth(kg, fixing.grind_m2, fixing.density_kg_m3),
        "rod_mm": None
        if fixing.rod_m is None
        else 1000.0 * handwork.rod_length(welded, fixing.rod_m, fixing.density_kg_m3, fixing.recovery),
    }


def _clock(angle_deg: float, hookup: Hookup) -> str | None:
    from stillshaft.solver import handwork

    datum = str(hookup.table.get("datum", "12 o'clock"))
    rotation = str(hookup.table.get("rotation", "counter-clockwise"))
    return handwork.clock_position(angle_deg, hookup.pulse.angle_deg, datum, rotation)


def result_rows(plan: Plan, runs: Runs) -> list[dict[str, Any]]:
    """What the pieces of each plane make together."""
    from stillshaft.dsp import vectors

    polar: Sequence[tuple[float, float]] = [vectors.amplitude_phase(complex(w)) for w in plan.chosen.masses]
    return [
        {"plane": p.name, "mass": mass, "angle_deg": angle_deg, "unit": runs.mass_unit, "radius_mm": p.radius_mm}
        for p, (mass, angle_deg) in zip(plan.planes, polar, strict=True)
    ]
