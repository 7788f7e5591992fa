"""What `machines` and `reprocess` print for people. Texts of records are printed as they stand, never as markup."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

from rich.table import Table
from rich.text import Text
from stillshaft.dsp.units import shown
from stillshaft.ui.account import new_console, number, with_interval
from stillshaft.ui.library import Library, Machine, state_of, trend

if TYPE_CHECKING:
    from stillshaft.ui.comparison import PointChange
    from stillshaft.ui.library import Change
    from stillshaft.ui.library_index import Reading
    from stillshaft.ui.reprocess import Remeasured, Reprocessed


def _table(title: str, columns: Iterable[str], right: Iterable[str] = ()) -> Table:
    table = Table(title=Text(title))
    for heading in columns:
        table.add_column(Text(heading), justify="right" if heading in right else "left")
    return table


def _cells(*texts: str) -> tuple[Text, ...]:
    return tuple(Text("\n".join(shown(line, 120) for line in text.split("\n"))) for text in texts)


def print_machines(library: Library) -> None:
    """One row a machine."""
    console = new_console()
    if not library.machines:
        console.print(Text(f"{shown(library.folder, 300)}: no machine to show"), soft_wrap=True)
        return
    title = f"{len(library.machines)} machines, {library.jobs} jobs"
    table = _table(
        title, ("machine", "jobs", "last vibration", "verdict", "state", "coefficients\nat r/min"), ("jobs",)
    )
    for m in library.machines:
        named = [m.name if m.named else f"{shown(m.name)} (job; no machine named)", *([m.place] if m.place else [])]
        dated = (
            [max(r.at[:10] for _, r in m.last), *(f"{shown(point, 40)} {_reading(r)}" for point, r in m.last)]
            if m.last
            else []
        )
        table.add_row(
            *_cells(
                "\n".join(map(shown, named)),
                str(len(m.jobs)),
                "\n".join(dated) or "-",
                "-" if m.verdict is None or m.verdict_at is None else f"{m.verdict}\n{m.verdict_at[:10]}",
                _state(m),
                ", ".join(f"{rpm}" for rpm in sorted({round(c.speed_rpm) for c in m.coefficients})) or "-",
            )
        )
    console.print(table)
    for m in library.machines:
        for remark in m.remarks:
            console.print(Text(f"{shown(m.name)}: {shown(remark, 400)}"), soft_wrap=True)


def _state(machine: Machine) -> str:
    state = state_of(machine)
    if state is None:
        return "no job"
    return state if machine.open_jobs == (state == "open") else f"{state}, {machine.open_jobs} open"


def _reading(reading: Reading) -> str:
    return f"{number(reading.amplitude, reading.amplitude_ci95)} {reading.unit} ({reading.purpose})"


def print_trend(machine: Machine) -> None:
    """First and last run of each job, one table a point."""
    console = new_console()
    console.print(
        Text(f"{shown(machine.name)}: {len(machine.jobs)} jobs, {shown(machine.place or 'no place given')}, "
             f"serial {shown(machine.serial or '-')}"),
        soft_wrap=True,
    )  # fmt: skip
    columns = ("job", "first run", "last run", "r/min", "change %", "since last\njob %")
    for point in trend(machine):
        title = f"{shown(point.point)}, {point.unit}, ± is the 95 % interval of the run"
        table = _table(title, columns, columns[3:])
        for row in point.rows:
            table.add_row(
                *_cells(
                    row.job,
                    _run(row.first, point.unit),
                    _run(row.last, point.unit),
                    f"{row.last.speed_rpm:.0f}",
                    _change(row.change),
                    "-" if row.since is None else _change(row.since),
                )
            )
        console.print(table)
    if any(point.rows for point in trend(machine)):
        console.print("Changes: ± holds both runs' intervals and the scatter from run to run.", soft_wrap=True)
    for c in machine.coefficients:
        console.print(
            Text(f"coefficients at {c.speed_rpm:.0f} r/min of {shown(c.date)}: {shown(c.source, 300)}"), soft_wrap=True
        )
    for remark in machine.remarks:
        console.print(Text(shown(remark, 400)), soft_wrap=True)


def _run(reading: Reading, unit: str) -> str:
    told = with_interval(reading.amplitude, reading.amplitude_ci95)
    return f"{reading.at[:10]} {shown(reading.run, 30)}\n{told}" + ("" if reading.unit == unit else f" {reading.unit}")


def _change(change: Change) -> str:
    if change.percent is None:
        return change.why or "-"
    half = "?" if change.percent_ci95 is None else f"{change.percent_ci95:.0f}"
    return f"{change.percent:+.0f} ± {half}"


_MOST_ROWS = 40  # of what changed; the rest is in --json


def print_reprocessed(done: Reprocessed) -> None:
    """What could not be measured, then what changed, the worst first."""
    console = new_console()
    failed = [r for r in done.recordings if r.problem is not None]
    measured = [r for r in done.recordings if r.problem is None]
    moved = [(r, p) for r in measured for p in r.points if _tells(p)]
    if moved:
        title = f"what changed, order {done.order:g}, in units of the recorded 95 % interval"
        headings = ("job, run", "point", "was", "is", "intervals", "verdict")
        table = _table(title, headings, ("was", "is", "intervals"))
        for r, p in moved[:_MOST_ROWS]:
            verdict = p.verdict_now or "-"
            changed = p.verdict_then not in (None, p.verdict_now)
            table.add_row(
                *_cells(
                    _whose(r),
                    p.point,
                    _vector(p.amplitude_then, p.phase_then_deg, p.unit),
                    _vector(p.amplitude_now, p.phase_now_deg, p.unit),
                    "?" if p.intervals is None else f"{p.intervals:.2f}",
                    f"{p.verdict_then}, now {verdict}" if changed else verdict,
                )
            )
        console.print(table)
        if len(moved) > _MOST_ROWS:
            console.print(f"and {len(moved) - _MOST_ROWS} more; --json lists all")
    for r in failed:
        console.print(Text(f"{shown(r.recording, 300)}: {shown(r.problem, 400)}"), soft_wrap=True)
    for r in measured:
        for reason in r.reasons:
            console.print(Text(f"do not trust: {shown(r.recording, 300)}: {shown(reason, 300)}"), soft_wrap=True)
    again = sum(not r.from_results for r in measured)
    alone = sum(r.job is None for r in measured)
    console.print(
        Text(
            f"{again} measured, {len(measured) - again} known from {shown(done.results, 300)}, {len(failed)} not measured; "
            f"{sum(r.intervals > 1.0 for r in measured)} moved by more than their interval, "
            f"{sum(r.verdicts_changed for r in measured)} have another verdict"
            + (f"; {alone} belong to no job" if alone else "")
            + (f"; {done.without_recording} runs have no recording" if done.without_recording else "")
        ),
        soft_wrap=True,
    )


def _tells(p: PointChange) -> bool:
    """Whether a point is worth a row: it moved visibly, came or went, or has another verdict."""
    return (
        p.amplitude_then is None
        or p.amplitude_now is None
        or p.verdict_then not in (None, p.verdict_now)
        or (p.intervals is None and p.apart != 0.0)
        or (p.intervals is not None and p.intervals >= 0.005)
    )


def _whose(r: Remeasured) -> str:
    return shown(r.recording, 60) if r.job is None else f"{shown(Path(r.job).name, 40)}\n{shown(r.run, 40)}"


def _vector(amplitude: float | None, phase_deg: float | None, unit: str) -> str:
    if amplitude is None:
        return "-"
    return f"{amplitude:.3f} {unit}" + ("" if phase_deg is None else f"\n{phase_deg:.1f}°")
