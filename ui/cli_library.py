"""Verbs over many jobs: the machines known, and recordings measured again."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer
from stillshaft.ui.command import DO_NOT_TRUST, HookupOption, JsonOption, OrderOption, app, print_json, warn

INTERRUPTED = 130


@app.command()
def machines(
    folder: Annotated[Path, typer.Argument(help="Folder of jobs, however deep they lie in it.")] = Path(),
    machine: Annotated[
        str | None, typer.Option(metavar="NAME", help="Trends of this machine over all its jobs.")
    ] = None,
    search: Annotated[
        str | None, typer.Option(metavar="TEXT", help="Only machines with these words in names, places or notes.")
    ] = None,
    coefficients: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Stored coefficients; coefficients.toml in the folder unless given."),
    ] = None,
    as_json: JsonOption = False,
) -> None:
    """The machines in a folder of jobs: last vibration, verdict, state, stored coefficients, and trends."""
    from stillshaft.ui import account, account_library, library

    if machine is not None and search is not None:
        raise typer.BadParameter("--machine names one, --search looks for several: give one of them")
    with account.progress("reading jobs") as report:
        found = library.list_machines(folder, report, index=library.default_index(folder), coefficients=coefficients)
    for skipped in found.skipped:
        warn(f"{skipped.path}: {skipped.why}")
    if search is not None:
        found = library.search(found, search)
    if machine is not None:
        one = library.find_machine(found, machine)
        if as_json:
            print_json("machines", not found.reasons, list(found.reasons), library.trend_json(one))
        else:
            account_library.print_trend(one)
    elif as_json:
        print_json("machines", not found.reasons, list(found.reasons), library.to_json(found))
    else:
        account_library.print_machines(found)
    if found.reasons:
        raise typer.Exit(DO_NOT_TRUST)


@app.command()
def reprocess(
    paths: Annotated[list[Path], typer.Argument(metavar="PATH…", help="Jobs, folders of jobs, recordings.")],
    order: OrderOption = 1.0,
    hookup: HookupOption = None,
    jobs: Annotated[
        int | None, typer.Option(metavar="N", help="Processes at once; one for each processor unless given.")
    ] = None,
    results: Annotated[
        Path | None, typer.Option(metavar="FILE", help="Where what is done is kept (JSON lines); a cache unless given.")
    ] = None,
    scheduler: Annotated[
        str | None, typer.Option(metavar="ADDRESS", help='Dask cluster to work instead, such as "tcp://host:8786".')
    ] = None,
    as_json: JsonOption = False,
) -> None:
    """Measure the recordings of many jobs again, and say what changed against what the jobs recorded."""
    from stillshaft.ui import account, account_library
    from stillshaft.ui import reprocess as again

    try:
        with account.progress("reprocess") as report:
            done = again.reprocess(
                paths, order=order, hookup=hookup, jobs=jobs, results=results, scheduler=scheduler, report=report
            )
    except KeyboardInterrupt:
        kept = again.default_results() if results is None else results
        warn(f"interrupted; what is measured is kept in {kept}: call again to go on")
        raise typer.Exit(INTERRUPTED) from None
    if as_json:
        print_json("reprocess", not done.reasons, list(done.reasons), again.to_json(done))
    else:
        account_library.print_reprocessed(done)
    if done.reasons:
        raise typer.Exit(DO_NOT_TRUST)
