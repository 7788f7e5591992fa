"""What the Close-out page has worked out on a thread: before and after, verdicts, what is missing, report, trends. No Qt."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from stillshaft.solver import next_steps, progress
from stillshaft.solver.state import JobRun, JobState
from stillshaft.ui import job_facts, job_masses
from stillshaft.ui.desktop.figures import Bar
from stillshaft.ui.desktop.masses_model import shown_unit
from stillshaft.ui.desktop.phrases import Names
from stillshaft.ui.job_facts import Worked

if TYPE_CHECKING:
    from stillshaft.ui.report_layout import Layout
    from stillshaft.ui.session import Session

Report = Callable[[float, str], None]

MET, NOT_MET, UNTOLD = "met", "not met", "cannot be told yet"
_NO_BALANCING = {"initial", "repeat", "trial", "slow roll", "re-reference"}
_BLOCKS = "take-off-trial"  # said as what keeps the job from closing
KINDS = {"PDF": ".pdf", "HTML": ".html", "CSV": ".csv", "JSON": ".json"}


@dataclass(frozen=True)
class Standing:
    """Residual unbalance of a plane, or vibration of a point, against its limit, each in `unit`; `source` says whose limit."""

    name: str
    value: float | None
    half: float | None
    limit: float | None
    unit: str
    verdict: str
    source: str


@dataclass(frozen=True)
class CloseOut:
    """Where a job stands at its end. `blocking` keeps it from closing, `missing` is what was not done.

    `bars` are before and after in `unit`, `why_no_bars` says why there are none. `stage` and `reason` say how
    far the guidance thinks that the stage is.
    """

    state: JobState
    worked: Worked
    bars: tuple[Bar, ...]
    unit: str
    names: str
    why_no_bars: str
    planes: tuple[Standing, ...]
    vibration: tuple[Standing, ...]
    blocking: tuple[str, ...]
    advice: str
    stage: str
    reason: str
    missing: tuple[str, ...]
    next_visit: tuple[str, ...]


def gather(session: Session, unit: str) -> CloseOut:
    """Work it all out; vibration of the bars in `unit`, or in the recorded one."""
    state, worked = session.state, session.worked()
    first, last = ends(state)
    bars, shown, why = _bars(state, worked, first, last, unit)
    names = "" if first is None or last is None else f'run "{first.what.name}" and run "{last.what.name}"'
    stage = session.stages()["close-out"]
    return CloseOut(
        state, worked, bars, shown, names, why, _planes(worked), _vibration(worked), _blocking(state),
        session.advice().sentence, stage.state, stage.reason, _missing(state),
        _next_visit(worked, session.folder),
    )  # fmt: skip


def ends(state: JobState) -> tuple[JobRun | None, JobRun | None]:
    """The runs before and after balancing, as the report takes them."""
    counting = [r for r in state.runs if r.counts]
    first = next((r for r in counting if r.what.purpose == "initial"), counting[0] if counting else None)
    last = next((r for r in reversed(counting) if r is not first and r.what.purpose not in _NO_BALANCING), None)
    return first, last


def _bars(
    state: JobState, worked: Worked, first: JobRun | None, last: JobRun | None, unit: str
) -> tuple[tuple[Bar, ...], str, str]:
    if first is None:
        return (), "", "no run counts yet"
    if last is None:
        return (), "", "there is no run after balancing yet"
    before_factor, shown = shown_unit(first.what.unit, unit, first.what.speed_rpm)
    after_factor, _ = shown_unit(last.what.unit, shown, last.what.speed_rpm)
    after = {v.point: v for v in last.what.vectors}
    verdicts: dict[str, str] = {}
    for row in _vibration(worked):
        if verdicts.get(row.name) != NOT_MET:
            verdicts[row.name] = row.verdict
    bars = []
    for v in first.what.vectors:
        w = after.get(v.point)
        if w is None:
            continue
        limit = next((level for level in state.brief.limits if level.point == v.point), None)
        most = None
        if limit is not None:
            most = shown_unit(limit.unit, shown, last.what.speed_rpm)[0] * limit.amplitude
        one, other = v.amplitude_ci95, w.amplitude_ci95
        bars.append(
            Bar(
                v.point, before_factor * v.amplitude, None if one is None else before_factor * one,
                after_factor * w.amplitude, None if other is None else after_factor * other,
                most, verdicts.get(v.point, "no limit agreed"),
            )
        )  # fmt: skip
    return tuple(bars), shown, "" if bars else "first and last run have no point in common"


def _verdict(text: str) -> str:
    return UNTOLD if text == "cannot be told" else text


def _planes(worked: Worked) -> tuple[Standing, ...]:
    found = worked.tolerance
    if found is None:
        return ()
    return tuple(
        Standing(
            p.plane, p.residual_gmm, p.residual_ci95, p.permissible_gmm, "g·mm", _verdict(p.verdict),
            _grade_words(found.grade, p.probability_within),
        )
        for p in found.planes
    )  # fmt: skip


def _grade_words(grade: str, within: float | None) -> str:
    return grade if within is None else f"{grade}, probability within: {_percent(within)}"


def _percent(probability: float) -> str:
    if 0.01 <= probability <= 0.99:
        return f"{100.0 * probability:.0f} %"
    return "more than 99 %" if probability > 0.5 else "less than 1 %"


def _vibration(worked: Worked) -> tuple[Standing, ...]:
    found = worked.tolerance
    if found is None:
        return ()
    return tuple(
        Standing(v.point, v.value, v.ci95, v.limit, _unit_in(v.source), _verdict(v.verdict), _source(v.source, v.zone))
        for v in found.vibration
    )


def _unit_in(source: str) -> str:
    return source.partition(";")[0].rpartition(", ")[2] if ", " in source else ""


def _source(source: str, zone: str | None) -> str:
    said = source.replace("runs file, 1x", "agreed in the brief, once per rev")
    return said if zone is None else f"zone {zone}, {said}"


def _blocking(state: JobState) -> tuple[str, ...]:
    """What `Session.finish` refuses to close a job over."""
    put_on_for = progress.purposes(state)
    trial = [job_masses.told(o.piece) for o in state.on_rotor if put_on_for.get(o.of) == "trial"]
    return (f"trial masses are still on: {'; '.join(trial)}",) if trial else ()


def _missing(state: JobState) -> tuple[str, ...]:
    """What was not done: by the guidance, and verdict and acceptance."""
    first, last = ends(state)
    said = []
    if first is None:
        said.append("an initial run that counts")
    if last is None:
        said.append("a run after balancing")
    if not state.brief.limits and state.brief.goal.grade is None and state.brief.goal.table is None:
        said.append("a goal in the brief: a grade, a table or limits")
    if last is not None:
        said += [
            text for act, text in progress.left_at_the_end(state, next_steps.limits().worse_percent) if act != _BLOCKS
        ]
    if not state.verdicts:
        said.append("a recorded verdict")
    elif not (state.verdicts[-1].what.accepted_by or state.verdicts[-1].what.refused_by):
        said.append("acceptance or refusal")
    return tuple(said)


def _next_visit(worked: Worked, folder: Path) -> tuple[str, ...]:
    """What a next visit can build on."""
    if (folder / job_facts.COEFFICIENTS_NAME).exists():
        first = (
            "influence coefficients are stored with this job: next time one initial run gives a correction, as long as mark "
            "edge, sensor places, supports and speed are the same"
        )
    elif worked.solution is not None:
        first = "influence coefficients can be stored, so that next time one initial run gives a correction"
    else:
        first = "no influence coefficients yet: they need an initial run and a trial run for each plane"
    return (
        first,
        "begin it here once this job is closed, or on the Brief page: brief, hook-up and coefficients are taken over",
        "first look for missing pieces, then take an initial run, then hold it against the last run of this job",
    )


# acts and long work


def trend_of(state: JobState, folder: Path, report: Report) -> tuple[str, ...]:
    """The machine's points over its jobs that lie beside this one, in words."""
    from stillshaft.ui import library
    from stillshaft.ui.report_words import figure, signed

    name = job_facts.machine_of(state)
    found = library.list_machines(folder.resolve().parent, report)
    machine = next((m for m in found.machines if m.name == name), None)
    if machine is None:
        return (f'no job of "{name}" lies beside this one',)
    said = []
    for point in library.trend(machine):
        given = Names()
        steps = "; ".join(
            f"{given(row.job)} {figure(row.first.amplitude)} → {figure(row.last.amplitude)}" for row in point.rows
        )
        since = point.rows[-1].since
        more = ""
        if since is not None and since.percent is not None:
            more = f"; since the visit before {signed(since.percent, since.percent_ci95, ' %')}"
        said.append(given.told(f"{given(point.point)}, {point.unit}, first → last run of each job: {steps}{more}"))
    return tuple(said) or ("no reading in any job yet",)


@dataclass(frozen=True)
class Made:
    """A report: its layout, its summary, what is not done, what speaks against trusting it, and the PDF with its pages."""

    layout: Layout
    summary: str
    missing: tuple[str, ...]
    doubts: tuple[str, ...]
    pdf: bytes
    pages: int


def made_report(folder: Path, family: str, paper: str, report: Report) -> Made:
    """Make the report from the folder, opened to read only. Raises ReportError, RecordError, and what `report` raises."""
    from stillshaft.solver.job import Job
    from stillshaft.ui import report as reports

    with Job.open(folder, read_only=True) as job:
        material = reports.material_of(job, family, lambda share, text: report(0.7 * share, text))
    outcome = reports.outcome_of(material)
    report(0.75, "laying out")
    layout = reports.layout_of(material)
    pdf, pages = reports.to_pdf(material, paper)
    report(1.0, "done")
    return Made(layout, outcome.summary, outcome.missing, outcome.doubts, pdf, pages)


def exported(folder: Path, kind: str, made: Made | None) -> bytes:
    """What is written of a kind in `KINDS`; a report that was made is used again."""
    from stillshaft.solver.job import Job
    from stillshaft.ui import report_exports, report_html

    if kind == "PDF":
        assert made is not None
        return made.pdf
    if kind == "HTML":
        assert made is not None
        return report_html.html(made.layout).encode("utf-8")
    with Job.open(folder, read_only=True) as job:
        if kind == "CSV":
            return report_exports.to_csv(job)
        head: dict[str, Any] = {"format": 1, "trusted": not job.problems, "reasons": list(job.problems)}
        return report_exports.json_bytes({**head, **report_exports.to_json(job)})


def write_export(session: Session, path: Path, data: bytes) -> Path:
    """Write a file elsewhere. Raises ReportError for a place where a part of the job would be lost."""
    from stillshaft.ui import report as reports

    reports.check_target(path, session.job)
    reports.write(path, data)
    return path


def put_in_job(session: Session, data: bytes, kind: str) -> Path:
    """Write a report among the job's own and record it."""
    from stillshaft.ui import report as reports

    return reports.put_in_job(session.job, data, KINDS[kind])
