"""The account of a job as one self-contained HTML page: runs, masses, before and after, verdict. No Qt, no network."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING

from stillshaft.dsp import vectors
from stillshaft.ui.account import with_interval

if TYPE_CHECKING:
    from stillshaft.ui.rehearsal import Rehearsal

_STYLE = """
body { font: 16px/1.5 "DejaVu Sans", sans-serif; color: #1b2327; background: #fbfaf7; max-width: 60rem; margin: 2rem auto;
  padding: 0 1rem; }
table { border-collapse: collapse; margin: 0.5rem 0 1.5rem; }
th, td { border-bottom: 1px solid #cfc9bf; padding: 0.3rem 0.8rem; text-align: right; }
th:first-child, td:first-child { text-align: left; }
.verdict { font-size: 1.2rem; font-weight: 600; border-left: 6px solid #0d5873; padding: 0.5rem 1rem; }
.caution { border: 2px solid #9c1f2b; padding: 0.5rem 1rem; }
.quiet { color: #56616a; }
@media print { body { margin: 0; } }
"""
_CAUTION = (
    "Masses fly, rotors turn by draught, guards are off. Isolate, lock, try and block the rotor before hands go in; keep "
    "out of the plane of rotation; local rules decide, and what needs a licensed or competent person is left to one. "
    "Nothing here says that a machine is safe."
)


def _table(headings: list[str], rows: list[list[str]]) -> str:
    head = "".join(f"<th>{escape(h)}</th>" for h in headings)
    body = "".join("<tr>" + "".join(f"<td>{escape(c)}</td>" for c in row) + "</tr>" for row in rows)
    return f"<table><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>"


def _bars(before: list[float], after: list[float], names: list[str], unit: str) -> str:
    """Before and after of each point as bars, drawn to one scale."""
    largest = max(*before, *after, 1e-12)
    parts, y = [], 0
    for name, first, last in zip(names, before, after, strict=True):
        parts.append(f'<text x="0" y="{y + 16}" font-weight="600">{escape(name)}</text>')
        for word, value, colour, down in (("before", first, "#a8470f", 24), ("after", last, "#0d5873", 48)):
            width = 420.0 * value / largest
            parts.append(f'<text x="0" y="{y + down + 15}">{word}</text>')
            parts.append(f'<rect x="70" y="{y + down}" width="{width:.1f}" height="18" fill="{colour}"/>')
            parts.append(f'<text x="{78 + width:.1f}" y="{y + down + 15}">{value:.2f} {escape(unit)}</text>')
        y += 84
    return (
        f'<svg viewBox="0 0 640 {y}" width="640" height="{y}" font-size="14" fill="#1b2327" role="img" '
        f'aria-label="vibration before and after">{"".join(parts)}</svg>'
    )


def html_account(title: str, outcome: Rehearsal) -> str:
    """The whole page; every text from outside is escaped."""
    first, last = outcome.runs[0][2], outcome.runs[-1][2]
    names = [p.name for p in first.points]
    run_rows = []
    for name, masses, measured in outcome.runs:
        placed = "; ".join(f"{m.plane} {m.mass_g:g} g at {m.angle_deg:g}°" for m in masses) or "none"
        row = [name, placed, f"{measured.speed.mean_rpm:.1f}"]
        for point in measured.points:
            amplitude, phase_deg = vectors.amplitude_phase(point.z)
            row.append(
                f"{with_interval(amplitude, point.amplitude_ci95)} at {with_interval(phase_deg, point.phase_ci95_deg)}°, "
                f"{point.steadiness.verdict}"
            )
        run_rows.append(row)
    mass_rows = [
        [
            step,
            c.plane,
            with_interval(c.mass, c.mass_ci95) + f" {c.unit}",
            with_interval(c.angle_deg, c.angle_ci95_deg) + "°",
        ]
        for step, solution in outcome.solutions
        for c in (solution.additional if step == "trim" else solution.corrections)
    ]
    expected_rows = [
        [step, p.point, f"{p.amplitude:.3f}", f"{p.amplitude_upper95:.3f}", p.unit]
        for step, solution in outcome.solutions
        for p in solution.predicted
    ]
    tolerance_rows = [
        [
            p.plane,
            f"{p.permissible_gmm:.0f}",
            "-" if p.residual_gmm is None else with_interval(p.residual_gmm, p.residual_ci95),
            p.verdict,
        ]
        for p in outcome.tolerance.planes
    ]
    residual_rows = [[n, f"{with_interval(value, half)} %"] for n, (value, half) in outcome.residual_percent.items()]
    doubts = "".join(f"<p>Do not trust: {escape(reason)}</p>" for reason in outcome.reasons)
    return f"""<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><title>{escape(title)}</title><style>{_STYLE}</style></head><body>
<h1>{escape(title)}</h1>
<p class="verdict">{escape(outcome.verdict)}</p>{doubts}
<h2>Before and after</h2>
{_bars([abs(p.z) for p in first.points], [abs(p.z) for p in last.points], names, first.unit)}
{_table(["point", "left of the initial vibration, this run's 95 %"], residual_rows)}
<h2>Runs</h2>
<p class="quiet">Once-per-rev vibration in {escape(first.unit)}; ± is the 95 % interval within the run.</p>
{_table(["run", "on the rotor", "r/min", *names], run_rows)}
<h2>Masses</h2>
<p class="quiet">The correction is relative to the initial state, trial masses off; a trim is added to what is on.
Angles from the reference mark, against rotation.</p>
{_table(["step", "plane", "mass", "angle"], mass_rows)}
<h2>Expected vibration</h2>
{_table(["step", "point", "amplitude", "at most (95 %)", "unit"], expected_rows)}
<h2>Equivalent residual unbalance from 1x, g·mm</h2>
<p class="quiet">{escape(outcome.tolerance.grade)} by ISO 21940-11, formulas from memory: the edition in force, the maker and
local rules decide. Bow, misalignment and coupling are included.</p>
{_table(["plane", "permissible", "residual", "verdict"], tolerance_rows)}
<p class="caution">{escape(_CAUTION)}</p>
</body></html>
"""
