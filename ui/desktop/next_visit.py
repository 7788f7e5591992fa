"""The next visit to a machine: a job of its own, begun from an earlier one and called after machine and day."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

from stillshaft.ui import job_facts
from stillshaft.ui.desktop import parts
from stillshaft.ui.desktop.brief_start import free_folder
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.worded import Button


def button(press: Callable[[], None]) -> Button:
    """The button that begins it from the job that is open."""
    return parts.button(
        "&Begin the next visit", press, "main", "Begin a job with brief, hook-up and coefficients of this one"
    )


def begin(job: OpenJob, failed: Callable[[str], None]) -> None:
    """Begin it beside the job that is open."""
    shown = job.shown
    if shown is None:
        return
    machine = job_facts.machine_of(shown.state) or shown.state.name
    begin_from(job, shown.folder, shown.folder.resolve().parent, machine, shown.by, failed=failed)


def begin_from(
    job: OpenJob, earlier: Path, room: Path, machine: str, by: str,
    *, done: Callable[[Any], None] | None = None, failed: Callable[[str], None] | None = None,
) -> None:  # fmt: skip
    """Begin it in a new folder of `room`, with brief, hook-up and coefficients of an earlier job."""
    name = f"{machine} {date.today():%Y-%m-%d}"
    job.next_visit(free_folder(room, name), name, by, earlier, done=done, failed=failed)
