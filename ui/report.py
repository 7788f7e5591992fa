"""The report of a job: gathered from its folder, laid out once, written as PDF or as one HTML page, whole or not at all."""

from __future__ import annotations

import os
from dataclasses import dataclass, replace
from pathlib import Path

from stillshaft.dsp import tables
from stillshaft.dsp.units import InputError
from stillshaft.solver.folder import why
from stillshaft.solver.job import Job
from stillshaft.solver.record import NAME
from stillshaft.ui import report_machine, report_masses, report_outcome, report_record, report_runs
from stillshaft.ui.report_layout import Layout
from stillshaft.ui.report_material import Material, Progress, gather
from stillshaft.ui.report_words import FAMILIES, Units, moment

_FOLDER = "reports"


class ReportError(InputError):
    """A report that cannot be written: the message names the file and says what to do."""


@dataclass(frozen=True)
class Outcome:
    """What a report says in short, and what speaks against trusting the record it was made from."""

    summary: str
    missing: tuple[str, ...]
    doubts: tuple[str, ...]


def units_of(family: str) -> Units:
    """The family of units by its name. Raises ReportError."""
    if family == "metric":
        return Units("metric")
    if family == "imperial":
        return Units("imperial")
    raise ReportError(f'units "{family}": are none; choose {" or ".join(FAMILIES)}')


def material_of(job: Job, family: str = "metric", progress: Progress | None = None) -> Material:
    """Everything that the job's report says; reads every recording once, and two of them twice. Raises ReportError."""
    return gather(job, units_of(family), progress)


def layout_of(material: Material) -> Layout:
    """The report as sections of texts, tables and pictures."""
    state = material.state
    name = state.name or material.folder
    begun = f"begun {moment(state.started_at)}, " if state.started_at else ""
    masses = tuple(report_masses.sections(material))
    standing = report_outcome.standing(material)
    sections = (
        report_outcome.opening(material),
        *report_machine.sections(material),
        *report_runs.sections(material),
        *masses,
        replace(standing, new_page=masses[-1].new_page),  # the placement sheet stands alone
        *report_record.sections(material),
        report_outcome.not_done(material),
        report_outcome.acceptance(material),
    )
    machine = state.brief.machine.name
    return Layout(
        name,
        f"Balancing report{f', {machine}' if machine and machine != name else ''}, {begun}made {moment(material.made_at)}",
        name,
        sections,
    )


def outcome_of(material: Material) -> Outcome:
    """The report in short."""
    changed = tuple(text for texts in material.doubts.values() for text in texts)
    return Outcome(
        report_outcome.summary(material), tuple(report_outcome.missing(material)), (*material.problems, *changed)
    )


def to_pdf(material: Material, paper: str = "A4") -> tuple[bytes, int]:
    """The report as PDF, and its number of pages. Raises ReportError for a paper that is none."""
    from stillshaft.ui import report_pdf

    check_paper(paper)
    return report_pdf.pdf(layout_of(material), paper)


def to_html(material: Material) -> str:
    """The report as one HTML page."""
    from stillshaft.ui import report_html

    return report_html.html(layout_of(material))


def check_paper(paper: str) -> None:
    """Raise ReportError for a paper that is none."""
    from stillshaft.ui import report_pdf

    if paper not in report_pdf.PAPERS:
        raise ReportError(f'paper "{paper}": is none; choose {" or ".join(report_pdf.PAPERS)}')


def check_target(path: Path, job: Job) -> None:
    """Raise ReportError for a place where a report would be lost or would take the place of a part of the job."""
    try:
        there = Path(os.path.realpath(path))
    except ValueError:  # a zero byte in the name
        raise ReportError(f"{str(path)!r}: is no file name; choose another") from None
    if not path.parent.is_dir():
        raise ReportError(f"{path}: there is no folder {path.parent}; make it first, or choose another place")
    if there.is_dir():
        raise ReportError(f"{path}: is a folder; name a file in it")
    # this job's folder by whatever name it goes, or that of another job
    inside = next((p for p in there.parents if (p / NAME).exists() or p.samefile(job.folder)), None)
    if inside is None:
        return
    if there.relative_to(inside).parts[:-1] != (_FOLDER,):
        raise ReportError(
            f"{path}: lies within a job's folder, where only {_FOLDER}/ takes reports; choose another place"
        )
    if there.exists():
        raise ReportError(f"{path}: is there already and may be part of the job's record; choose another name")


def write(path: Path, data: bytes) -> None:
    """Write a file as a whole or not at all. Raises ReportError that says why it cannot be written."""
    try:
        tables.write_whole(path, data)
    except OSError as error:
        raise ReportError(f"{path}: cannot be written: {why(error)}; choose another place") from None


def put_in_job(job: Job, data: bytes, suffix: str, note: str = "") -> Path:
    """Write a report into the job's folder under a free name, and record it. Raises ReportError, RecordError."""
    if job.read_only:
        why_not = job.refused or f"{job.folder}: is opened to read only"
        raise ReportError(f"{why_not}; name a file elsewhere for the report")
    path = job.new_file(_FOLDER, f"report{suffix}")
    write(path, data)
    try:
        job.append("report", file=job.file_fields(f"{_FOLDER}/{path.name}"), note=note)
    except BaseException:
        path.unlink(missing_ok=True)
        raise
    return path
