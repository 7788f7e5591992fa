"""The next visit to the machine of the job that is open: begun from it, where it is closed."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date

from stillshaft.ui import job_facts
from stillshaft.ui.desktop.brief_start import free_folder
from stillshaft.ui.desktop.open_job import OpenJob


def begin(job: OpenJob, failed: Callable[[str], None]) -> None:
    """Begin a job beside the open one with its brief, hook-up and coefficients; called after machine and day."""
    shown = job.shown
    if shown is None:
        return
    name = f"{job_facts.machine_of(shown.state) or shown.state.name} {date.today():%Y-%m-%d}"
    job.next_visit(free_folder(shown.folder.resolve().parent, name), name, shown.by, shown.folder, failed=failed)
