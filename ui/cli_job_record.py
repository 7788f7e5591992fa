"""The verbs of a job that change what counts, acknowledge, decide and close; `ui.cli_job` documents their keys."""

from __future__ import annotations

from dataclasses import asdict
from typing import Annotated

import typer
from stillshaft.ui.command import JsonOption
from stillshaft.ui.job_command import (
    AcknowledgeOption,
    FolderArgument,
    JobVerbError,
    NoteOption,
    WasOption,
    WhyOption,
    act_done,
    jobs,
    opened,
    said,
)


@jobs.command()
def undo(context: typer.Context, folder: FolderArgument, as_json: JsonOption = False) -> None:
    """Take the last act back; it stays in the history."""
    with opened(context, folder) as session:
        since = len(session.job.events)
        event = session.undo()
        if as_json:
            said(session, "undo", {"undone": None if event is None else event.what.of}, since=since)
        else:
            typer.echo("there is nothing of yours to undo" if event is None else f"entry {event.what.of} is undone")


@jobs.command()
def redo(context: typer.Context, folder: FolderArgument, as_json: JsonOption = False) -> None:
    """Take the last undo back."""
    with opened(context, folder) as session:
        since = len(session.job.events)
        event = session.redo()
        if as_json:
            said(session, "redo", {"done_again": None if event is None else event.what.of}, since=since)
        else:
            typer.echo("there is nothing to do again" if event is None else f"entry {event.what.of} is taken back")


@jobs.command()
def withdraw(
    context: typer.Context,
    folder: FolderArgument,
    entry: Annotated[int, typer.Argument(help="The entry, as `job show` numbers it.")],
    why: WhyOption,
    as_json: JsonOption = False,
) -> None:
    """Let an entry count no longer, with the reason; it stays in the history."""
    with opened(context, folder) as session:
        since = len(session.job.events)
        session.withdraw(entry, why)
        act_done(session, "withdraw", since, as_json)


@jobs.command()
def caution(
    context: typer.Context,
    folder: FolderArgument,
    before: Annotated[
        str, typer.Option(metavar="hands|start", help="Before hands go in, or before a start.")
    ] = "start",
    acknowledge: AcknowledgeOption = None,
    as_json: JsonOption = False,
) -> None:
    """The cautions as they hold now, and who acknowledged them."""
    from stillshaft.ui import account_job

    if before not in ("hands", "start"):
        raise typer.BadParameter(f"--before {before}: hands or start")
    with opened(context, folder, read_only=acknowledge is None) as session:
        since = len(session.job.events)
        cautions = session.cautions_before_hands() if before == "hands" else session.cautions_before_start()
        if acknowledge is not None:
            session.acknowledge([c.text for c in cautions if c.acknowledge], acknowledge)
        if as_json:
            rows = [{key: asdict(c)[key] for key in ("id", "text", "acknowledge")} for c in cautions]
            said(session, "caution", {"cautions": rows}, since=since)
        else:
            for line in account_job.cautions_told(cautions):
                typer.echo(line)


@jobs.command()
def reference(
    context: typer.Context,
    folder: FolderArgument,
    what: Annotated[
        str, typer.Argument(help='What changed: "mark moved", "pulse sensor moved", "sensor remounted", …')
    ],
    turn: Annotated[
        float | None,
        typer.Option(metavar="DEG", help="Added to later phases so that they fit the earlier; unknown unless given."),
    ] = None,
    point: Annotated[list[str] | None, typer.Option(help="Only this point; give it again for several.")] = None,
    of: Annotated[int | None, typer.Option(metavar="ENTRY", help="The earlier change whose turn is known now.")] = None,
    why: Annotated[str, typer.Option("--why", metavar="TEXT", help="How it is known.")] = "",
    as_json: JsonOption = False,
) -> None:
    """Mark or sensors are no longer as they were in the runs before."""
    from stillshaft.ui.session import MARK_MOVED

    with opened(context, folder) as session:
        session.refuse_closed()
        since = len(session.job.events)
        session.change_reference(what, turn, mark_moved=what == MARK_MOVED, points=point or (), of=of, why=why)
        act_done(session, "reference", since, as_json)


@jobs.command()
def cleaned(
    context: typer.Context,
    folder: FolderArgument,
    why: Annotated[str, typer.Option("--why", metavar="TEXT", help="What was cleaned or mended.")],
    as_json: JsonOption = False,
) -> None:
    """The rotor was cleaned or mended since the last run: a new initial state, the coefficients stay."""
    with opened(context, folder) as session:
        session.refuse_closed()
        since = len(session.job.events)
        session.clean(why)
        act_done(session, "cleaned", since, as_json)


@jobs.command()
def start(
    context: typer.Context,
    folder: FolderArgument,
    temperature: WasOption = None,
    note: NoteOption = "",
    as_json: JsonOption = False,
) -> None:
    """Count a start of the machine that was no run of this job."""
    with opened(context, folder) as session:
        session.refuse_closed()
        since = len(session.job.events)
        session.count_start(temperature, note)
        act_done(session, "start", since, as_json)


@jobs.command()
def decide(
    context: typer.Context,
    folder: FolderArgument,
    text: Annotated[str, typer.Argument(help="What was decided.")],
    why: Annotated[str, typer.Option("--why", metavar="TEXT", help="The reason.")] = "",
    about: Annotated[int | None, typer.Option(metavar="ENTRY", help="The entry that it is about.")] = None,
    as_json: JsonOption = False,
) -> None:
    """Record a decision and its reason."""
    with opened(context, folder) as session:
        session.refuse_closed()
        since = len(session.job.events)
        session.decide(text, why, about)
        act_done(session, "decide", since, as_json)


@jobs.command()
def close(
    context: typer.Context,
    folder: FolderArgument,
    accepted_by: Annotated[str | None, typer.Option(metavar="NAME", help="Who accepted the result.")] = None,
    refused_by: Annotated[str | None, typer.Option(metavar="NAME", help="Who refused it.")] = None,
    note: NoteOption = "",
    as_json: JsonOption = False,
) -> None:
    """Close the job: acceptance, coefficients stored for the next visit."""
    if accepted_by is not None and refused_by is not None:
        raise JobVerbError("close: accepted or refused: give one of them")
    with opened(context, folder) as session:
        session.refuse_closed()
        since = len(session.job.events)
        session.finish(note, accepted_by=accepted_by, refused_by=refused_by)
        act_done(session, "close", since, as_json)


@jobs.command()
def reopen(context: typer.Context, folder: FolderArgument, why: WhyOption, as_json: JsonOption = False) -> None:
    """Go on with a job that was closed."""
    with opened(context, folder) as session:
        since = len(session.job.events)
        session.reopen(why)
        act_done(session, "reopen", since, as_json)
