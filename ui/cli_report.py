"""The verb that makes a job's report and its exports.

`--json` has the contract's keys and: `job`, `folder`, `outcome` (a sentence), `not_done` (texts), `files` (list of {path, kind:
pdf, html, csv or json, bytes, sha256, pages: null but for a PDF, recorded: whether the job's record names it}). `trusted` is
false where a line of the record or a file that it names is not as it was recorded.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer
from stillshaft.ui.command import DO_NOT_TRUST, JsonOption, app, print_json, this_user, version, warn

if TYPE_CHECKING:
    from stillshaft.ui.report import Outcome


@app.command("report")
def report_job(
    folder: Annotated[Path, typer.Argument(help="The job's folder.")],
    pdf: Annotated[Path | None, typer.Option("--pdf", metavar="FILE", help="Write it as PDF there.")] = None,
    html: Annotated[
        Path | None, typer.Option("--html", metavar="FILE", help="Write it as one HTML page there.")
    ] = None,
    csv: Annotated[
        Path | None, typer.Option("--csv", metavar="FILE", help="Write runs and masses as a table there.")
    ] = None,
    data: Annotated[
        Path | None, typer.Option("--data", metavar="FILE", help="Write all that is recorded as JSON there.")
    ] = None,
    paper: Annotated[str, typer.Option(metavar="A4|Letter", help="Paper of the PDF.")] = "A4",
    units: Annotated[
        str, typer.Option(metavar="metric|imperial", help="Units of the report; exports keep the record's.")
    ] = "metric",
    by: Annotated[
        str | None,
        typer.Option(
            metavar="NAME", help="Who makes it, for the job's record; the user of this computer unless given."
        ),
    ] = None,
    as_json: JsonOption = False,
) -> None:
    """The job's report: as PDF among its own reports, or as the files named."""
    from stillshaft.solver.job import Job
    from stillshaft.ui import account, report, report_exports

    named = {"pdf": pdf, "html": html, "csv": csv, "json": data}
    wanted = {kind: path for kind, path in named.items() if path is not None}
    report.check_paper(paper)
    with (
        Job.open(folder, read_only=bool(wanted), by=this_user() if by is None else by) as job,
        account.progress("making the report") as progress,
    ):
        for path in wanted.values():
            report.check_target(path, job)
        if len({path.resolve() for path in wanted.values()}) < len(wanted):
            raise report.ReportError("two of the files named are one; give each its own name")
        material = report.material_of(job, units, progress)
        outcome = report.outcome_of(material)
        made: dict[str, bytes] = {}
        pages = None
        if pdf is not None or not wanted:
            made["pdf"], pages = report.to_pdf(material, paper)
        if html is not None:
            made["html"] = report.to_html(material).encode("utf-8")
        if csv is not None:
            made["csv"] = report_exports.to_csv(job)
        if data is not None:
            head = {
                "format": 1,
                "verb": "report",
                "version": version(),
                "trusted": not outcome.doubts,
                "reasons": list(outcome.doubts),
            }
            made["json"] = report_exports.json_bytes({**head, **report_exports.to_json(job)})
        files = []
        for kind, written in made.items():
            if wanted:
                path = wanted[kind]
                report.write(path, written)
            else:
                path = report.put_in_job(job, written, ".pdf")
            files.append(_file(path, kind, written, pages if kind == "pdf" else None, recorded=not wanted))
        name = job.state.name
    if as_json:
        content = {
            "job": name,
            "folder": str(folder),
            "outcome": outcome.summary,
            "not_done": list(outcome.missing),
            "files": files,
        }
        print_json("report", not outcome.doubts, list(outcome.doubts), content)
    else:
        _print(outcome, files)
    if outcome.doubts:
        raise typer.Exit(DO_NOT_TRUST)


def _file(path: Path, kind: str, content: bytes, pages: int | None, *, recorded: bool) -> dict[str, Any]:
    import hashlib

    return {
        "path": str(path), "kind": kind, "bytes": len(content), "sha256": hashlib.sha256(content).hexdigest(), "pages": pages,
        "recorded": recorded,
    }  # fmt: skip


def _print(outcome: Outcome, files: list[dict[str, Any]]) -> None:
    from stillshaft.ui.account import new_console

    console = new_console()
    console.print(outcome.summary, soft_wrap=True, markup=False)
    for text in outcome.missing:
        console.print(f"  not done: {text}", soft_wrap=True, markup=False)
    for text in outcome.doubts:
        warn(f"do not trust: {text}")
    for file in files:
        size = f"{file['pages']} pages" if file["pages"] else f"{file['bytes']} bytes"
        console.print(f"{file['path']}: {size}", soft_wrap=True, markup=False)
