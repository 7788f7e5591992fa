"""What the verbs of a job share: their group, options, the opened job, and how an act is printed."""

from __future__ import annotations

import contextlib
import sys
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer
from stillshaft.dsp.units import InputError, shown
from stillshaft.solver.events import TEMPERATURES
from stillshaft.ui.command import app, print_json, this_user, warn

if TYPE_CHECKING:
    from stillshaft.solver.cautions import Caution
    from stillshaft.solver.state import JobRun
    from stillshaft.ui.session import Session

jobs = typer.Typer(help="The record of a whole job, step by step.", rich_markup_mode=None, no_args_is_help=True)
app.add_typer(jobs, name="job")

FolderArgument = Annotated[Path, typer.Argument(metavar="DIR", help="The job's folder.")]
NoteOption = Annotated[str, typer.Option(metavar="TEXT", help="A note kept with it.")]
WhyOption = Annotated[str, typer.Option("--why", metavar="TEXT", help="The reason, kept in the record.")]
SourceArgument = Annotated[
    str | None,
    typer.Argument(help='An input as `stillshaft sources` lists it, "simulated", "simulated:FILE", "recording:FILE".'),
]
SecondsOption = Annotated[float | None, typer.Option(help="How long to record.", min=1.0)]
RateOption = Annotated[float | None, typer.Option(metavar="HZ", help="Sample rate; the input's own unless given.")]
SeedOption = Annotated[
    int | None, typer.Option(min=0, help="Draws the scatter of the simulated rotor; another for each run.")
]
FastOption = Annotated[bool, typer.Option("--fast", help="Simulated rotor or recording: not in real time.")]
AcknowledgeOption = Annotated[
    str | None, typer.Option(metavar="NAME", help="Who saw to the cautions: needed where nobody can be asked.")
]


def _temperature(text: str | None) -> str | None:
    if text not in (None, *TEMPERATURES):
        raise typer.BadParameter(f"{shown(text)}: {', '.join(TEMPERATURES[:-1])} or {TEMPERATURES[-1]}")
    return text


WasOption = Annotated[
    str | None,
    typer.Option(
        "--was", metavar="|".join(TEMPERATURES), callback=_temperature, help="How the machine was at the start."
    ),
]


class JobVerbError(InputError):
    """An act on a job that cannot be done as asked: the message says why and what to do."""


@dataclass(frozen=True)
class Person:
    """Who acts, and whether a lock that another computer left is set aside."""

    by: str
    take_over: bool


@jobs.callback()
def _person(
    context: typer.Context,
    by: Annotated[
        str | None, typer.Option(metavar="NAME", help="Who does it; the user of this computer unless given.")
    ] = None,
    take_over: Annotated[
        bool, typer.Option("--take-over", help="Set the lock aside that a program on another computer left.")
    ] = False,
) -> None:
    context.obj = Person(by if by is not None else this_user(), take_over)


@contextlib.contextmanager
def opened(context: typer.Context, folder: Path, *, read_only: bool = False) -> Iterator[Session]:
    """The job, with what is to be said about its record on standard error."""
    from stillshaft.ui.session import Session

    person: Person = context.obj
    with Session.open(folder, by=person.by, read_only=read_only, take_over=person.take_over) as session:
        yield session


def said(
    session: Session,
    verb: str,
    content: dict[str, Any],
    *,
    since: int | None = None,
    trusted: bool = True,
    reasons: Sequence[str] = (),
) -> None:
    """Print the act as one JSON object; `since` counts the events there were before it."""
    events = session.job.events
    told = {
        "job": str(session.folder),
        "entries": [] if since is None else [e.id for e in events[since:]],
        "problems": list(session.problems),
        **content,
    }
    print_json(f"job {verb}", trusted, list(reasons), told)


def act_done(session: Session, verb: str, since: int, as_json: bool, **content: Any) -> None:
    """What most acts print: the entries they made."""
    from stillshaft.ui import account_job

    if as_json:
        said(session, verb, content, since=since)
        return
    for event in session.job.events[since:]:
        typer.echo(f"entry {event.id}: {event.kind} {shown(account_job.in_words(event), 200)}")


def print_next(session: Session) -> None:
    """What to do next, why, and the command for it."""
    from stillshaft.ui import account_job

    account_job.print_next(session.advice(), session.folder)


def answer(prompt: str) -> str:
    """An answer from the terminal; the question goes where it does not mix with results."""
    typer.echo(prompt, err=True, nl=False)
    line = sys.stdin.readline()
    if not line:
        typer.echo("", err=True)
        raise EOFError
    return line.rstrip("\n")


def acknowledge_start(session: Session, name: str | None) -> None:
    """Show the cautions before a start and record who acknowledged them. Raises where nobody did."""
    acknowledge_shown(session, session.cautions_before_start(), name)


def acknowledge_shown(session: Session, cautions: Sequence[Caution], name: str | None) -> None:
    """Show cautions and record who acknowledged them: a name given, else asked for. Raises JobVerbError for nobody."""
    from stillshaft.ui import account_job

    for line in account_job.cautions_told(cautions):
        warn(line)
    needed = [c for c in cautions if c.acknowledge]
    if not needed:
        return
    if name is None and sys.stdin.isatty():
        with contextlib.suppress(EOFError):
            name = answer("All of this holds. Your name (empty: stop here): ").strip()
    if not name or not name.strip():
        raise JobVerbError("the cautions were not acknowledged: nothing was started; --acknowledge NAME says who did")
    session.acknowledge([c.text for c in needed], name)


def run_row(run: JobRun) -> dict[str, Any]:
    """A run as the JSON objects hold it."""
    import msgspec

    what = msgspec.to_builtins(run.what)
    keys = ("name", "purpose", "speed_rpm", "unit", "trusted", "vectors", "masses", "conditions")
    recording = None if run.what.recording is None else run.what.recording.path
    return {
        "id": run.id,
        "counts": run.counts,
        "reasons": list(run.reasons),
        "recording": recording,
        **{k: what[k] for k in keys},
    }


def on_rotor_rows(session: Session) -> list[dict[str, Any]]:
    """What is on the rotor, piece by piece, as the JSON objects hold it."""
    purposes = session.purposes()
    keys = ("plane", "mass_g", "angle_deg", "position", "radius_mm", "fixing")
    return [
        {"entry": on.of, "number": on.number, "purpose": purposes.get(on.of), **{k: getattr(on.piece, k) for k in keys}}
        for on in session.state.on_rotor
    ]


@contextlib.contextmanager
def stop_called(session: Session) -> Iterator[None]:
    """Call for the stop on standard error as soon as an alarm is recorded, whatever way the run came in."""
    known = len(session.state.alarms)

    def look() -> None:
        nonlocal known
        for event in session.state.alarms[known:]:
            what = event.what
            when, verb = ("", "is") if not what.note else (f" IF IT RUNS ({shown(what.note)})", "was")
            warn(
                f"\aSTOP THE MACHINE{when}: {shown(what.point)} {verb} at {what.amplitude:.3g} {shown(what.unit)}, "
                f"abort level {what.level:.3g}"
            )
        known = len(session.state.alarms)

    session.changed.append(look)
    try:
        yield
    finally:
        session.changed.remove(look)
