"""What is said of machines and their jobs in lists and comparisons. No Qt here."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from pathlib import Path

from stillshaft.dsp.units import shown
from stillshaft.ui import library
from stillshaft.ui.desktop.inspect_list import Row
from stillshaft.ui.desktop.phrases import Names
from stillshaft.ui.desktop.stages import State
from stillshaft.ui.library import Change, Library, Machine
from stillshaft.ui.library_index import JobShown, Reading
from stillshaft.ui.report_words import figure, signed, with_half

_MOST_PERCENT = 1000.0  # more is told in times
MOST_ROWS = 300  # a longer list is searched, not read
_GIVEN = re.compile(r"(?<= \().*(?=\): is it one machine\?)")  # places or serial numbers, as its jobs have them
_STATES = {"met": State.DONE, "not met": State.ATTENTION, "cannot be told": State.UNDER_WAY}


@dataclass(frozen=True)
class Side:
    """A point in one of two jobs: first and last run, and the change between them."""

    first: str
    last: str
    change: str


@dataclass(frozen=True)
class Compared:
    """A point in two jobs, and the change from the last run of the one to the last run of the other."""

    point: str
    one: Side | None
    other: Side | None
    change: str


def key_of(machine: Machine) -> str:
    """What tells a machine from all others of the list."""
    return machine.name if machine.named or not machine.jobs else machine.jobs[0].folder


def machine_rows(found: Library) -> list[Row]:
    """A row for each machine, as many as one can look through."""
    return [machine_row(m) for m in found.machines[:MOST_ROWS]]


def machine_row(machine: Machine) -> Row:
    """Name; date, jobs, verdict, and in a line of its own the newest vibration."""
    said = [] if machine.named else ["a job that names no machine"]
    last = ""
    if machine.last:
        said.append(max(reading.at for _, reading in machine.last)[:10])
        point, reading = max(machine.last, key=lambda entry: entry[1].amplitude)
        last = f"\n{shown(point, 40)} {reading_text(reading)}"
    said.append(f"{len(machine.jobs)} {'job' if len(machine.jobs) == 1 else 'jobs'}")
    if machine.verdict is not None:
        said.append(machine.verdict)
    return Row(
        key_of(machine), shown(machine.name), _STATES.get(machine.verdict or "", State.EMPTY), ", ".join(said), last
    )


def job_row(job: JobShown) -> Row:
    """Name, date, runs, whether it is closed, verdict."""
    said = [
        job.started_at[:10] or "no date",
        f"{job.counting} of {job.runs} runs count",
        "closed" if job.closed else "open",
    ]
    if job.verdict is not None:
        said.append(job.verdict)
    state = State.DONE if job.closed else State.UNDER_WAY
    return Row(job.folder, shown(job.name) or Path(job.folder).name, state, ", ".join(said))


def about(machine: Machine) -> str:
    """What is known of a machine beside its jobs."""
    name = Names()
    told = [
        f"{what}: {name(breakable(shown(text)))}"
        for what, text in (("Place", machine.place), ("Serial", machine.serial))
        if text
    ]
    speeds = sorted({round(c.speed_rpm) for c in machine.coefficients})
    if speeds:
        told.append(f"Influence coefficients at {', '.join(map(str, speeds))} r/min")
    remarks = (_GIVEN.sub(lambda found: name(found[0]), shown(remark, 400)) for remark in machine.remarks)
    lines = ["; ".join(told), *map(breakable, remarks)]
    return name.told("\n".join(line for line in lines if line))


def breakable(text: str) -> str:
    """A path may be broken into lines: it has no spaces to break at."""
    return text.replace("/", "/\u200b")


def reading_text(reading: Reading) -> str:
    """Amplitude with its interval and unit."""
    half = reading.amplitude_ci95
    told = (
        f"{figure(reading.amplitude)} {reading.unit}"
        if half is None
        else with_half(reading.amplitude, half, reading.unit)
    )
    return told.replace(" ", "\u00a0").replace("/", "/\u2060")  # figure and unit stay in one line


def change_text(change: Change) -> str:
    """A change in percent with its interval, or why there is none."""
    if change.percent is None:
        return change.why or "cannot be told"
    if change.percent > _MOST_PERCENT:
        times = None if change.percent_ci95 is None else 0.01 * change.percent_ci95
        return with_half(1.0 + 0.01 * change.percent, times, "times as much").replace(" ", "\u00a0")
    half = change.percent_ci95
    told = f"{change.percent:+.0f} %".replace("-", "−") if half is None else signed(change.percent, half, " %")
    return told.replace(" ", "\u00a0")


def compared(machine: Machine, one: str, other: str) -> list[Compared]:
    """Two jobs of a machine, by their folders, point by point."""
    jobs = {job.folder: job for job in machine.jobs}
    pair = (jobs[one], jobs[other])
    # the change between last runs is that between jobs whose first run is their last
    ends = tuple(replace(j, points=tuple(replace(p, first=p.last) for p in j.points)) for j in pair)
    between = {t.point: t.rows[-1].since for t in library.trend(replace(machine, jobs=ends)) if len(t.rows) == 2}
    found = []
    for point in library.trend(replace(machine, jobs=pair)):
        sides = {
            row.folder: Side(
                reading_text(row.first),
                reading_text(row.last),
                change_text(row.change),
            )
            for row in point.rows
        }
        since = between.get(point.point)
        change = "not in both" if since is None else change_text(since)
        found.append(Compared(point.point, sides.get(one), sides.get(other), change))
    return found
