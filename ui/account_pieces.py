"""What `pieces` prints for people."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any

from rich.table import Table
from stillshaft.ui.account import new_console

if TYPE_CHECKING:
    from stillshaft.solver.pieces import Plan

# heading, key, how it is written: a column that no piece has is left out
_COLUMNS: tuple[tuple[str, str, Callable[[Any], str]], ...] = (
    ("plane", "plane", str),
    ("position", "position", str),
    ("angle ° against rotation", "angle_deg", "{:.1f}".format),
    ("mass", "mass", "{:g}".format),
    ("weld metal", "filler", "{:g}".format),
    ("radius mm", "radius_mm", "{:.0f}".format),
    ("along rim mm", "rim_mm", "{:.0f}".format),
    ("clock face", "clock", str),
    ("force N", "force_n", "{:.0f}".format),
    ("full depth mm", "drill_full_mm", "{:.1f}".format),
    ("to the tip mm", "drill_total_mm", "{:.1f}".format),
    ("grind mm", "grind_mm", "{:.2f}".format),
    ("rod mm", "rod_mm", "{:.0f}".format),
)


def print_plan(plan: Plan, rows: Sequence[dict[str, Any]], results: Sequence[dict[str, Any]]) -> None:
    """Pieces, what they make, what to expect, how near to the best that is, and the cautions."""
    console = new_console()
    unit = results[0]["unit"]
    if rows:
        state = "beside the masses of the last run" if plan.left_on else "all trial masses off"
        table = Table(title=f"pieces, {unit}, {state}")
        columns = [c for c in _COLUMNS if any(row[c[1]] is not None for row in rows)]
        for heading, _, _ in columns:
            table.add_column(heading, justify="left" if heading == "plane" else "right")
        for row in rows:
            table.add_row(*("-" if row[key] is None else written(row[key]) for _, key, written in columns))
        console.print(table)
    else:
        console.print("no piece: nothing of the stock makes it better")
    if any(row["clock"] is not None for row in rows):
        console.print("clock face: with the mark under the pulse sensor, seen as the hook-up says", soft_wrap=True)
    for r in results:
        at = "" if r["radius_mm"] is None else f" at {r['radius_mm']:.0f} mm"
        console.print(f"{r['plane']}: together {r['mass']:.2f} {unit} at {r['angle_deg']:.1f}°{at}")
    _print_prospect(plan)
    for warning in (*plan.warnings, *plan.reasons):
        console.print(warning, soft_wrap=True)
    if rows:
        _print_cautions(rows)


def _print_prospect(plan: Plan) -> None:
    console = new_console()
    if plan.predicted:
        table = Table(title="expected vibration with these pieces")
        for heading in ("point", "r/min", "amplitude", "at most (95 %)", "unit"):
            table.add_column(heading, justify="left" if heading in ("point", "unit") else "right")
        for p in plan.predicted:
            table.add_row(p.point, f"{p.speed_rpm:.0f}", f"{p.amplitude:.3f}", f"{p.amplitude_upper95:.3f}", p.unit)
        console.print(table)
    table = Table(title="what more pieces bring")
    for heading in ("pieces", f"largest residual, {plan.unit}", "none is below", ""):
        table.add_column(heading, justify="left" if not heading else "right")
    for number, choice in enumerate(plan.curve.choices):
        chosen = "chosen" if choice is plan.chosen else ""
        table.add_row(str(number), f"{choice.largest:.3f}", f"{choice.bound:.3f}", chosen)
    console.print(table)
    if plan.handbook is not None:
        console.print(
            f"split between neighbours and rounded to the stock: {plan.handbook[0]} pieces, {plan.handbook[1]:.3f}",
            soft_wrap=True,
        )


def _print_cautions(rows: Sequence[dict[str, Any]]) -> None:
    console = new_console()
    if any(row["drill_full_mm"] is not None or row["grind_mm"] is not None for row in rows):
        console.print(
            "Metal comes off only where the maker or a competent person says, and only so deep that the wall they name is "
            "left; never from blade roots, welds or pressure parts.",
            soft_wrap=True,
        )
    elif any(row["rod_mm"] is not None or row["filler"] is not None for row in rows):
        console.print(
            "Weldable parent metal; earth clamp on the rotor beside the weld, never through bearings or coupling; sensors, "
            "pulse sensor and laptop unplugged first; dust and gas cleared, hot work permitted; slag off, cool before "
            "measuring.",
            soft_wrap=True,
        )
    else:
        console.print(
            "Fixed so that shape carries these forces, not friction; nuts and washers weighed with the piece; no tape, "
            "magnet or glue.",
            soft_wrap=True,
        )
    console.print(
        "Isolated, locked, tried and blocked before hands go in; nobody in the plane of rotation at the start; what was "
        "really put on is weighed and written down. Local rules and the maker's limits decide.",
        soft_wrap=True,
    )
