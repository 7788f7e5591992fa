"""The verbs of a job: each does one act of the person and records it, or shows where the job stands.

Every `--json` object has the contract's keys (`verb` is "job run" and so on), and of every verb `job` (the folder), `entries`
(ids of what was recorded by this act) and `problems` (what is to be said about the record). Beside them:

- new: `name`, `taken_over` (null, or the earlier job or runs file).
- show: `name`, `started_at`, `closed`, `brief`, `hookup`, `runs` [{id, name, purpose, speed_rpm, unit, counts, trusted, reasons,
  vectors, masses, conditions, recording}], `on_rotor` [{entry, number, purpose, plane, mass_g, angle_deg, position,
  radius_mm, fixing}], `plans` (ids), `verdict` (null, or {verdict, basis, accepted_by, refused_by}), `checks` {item: outcome},
  `history` [{line, id, kind, at, by, text, withdrawn_by, problem}], `starts` (counted).
- brief: `brief`, and of a dialogue `answered` and `ended`.
- hookup: `fingerprint`. inspect: `checks` [{key, title, how, fine, cautions, outcome}].
- check: `what`, `figures`, `recording`. Exit 3 where it blocks or is not trusted.
- run: `run` (as in show), `counts`, `refusals` and `cautions` [{rule, sentence, what_to_do}], `against` (a run's name or null),
  `changes` [{point, percent, percent_ci95, turned_deg, turned_ci95_deg, p_value, verdict}], `turn` (null, or what a
  re-reference run shows), `settling` (null, or {verdict, reason, watched_s, points} of what was watched), `next`.
  Exit 3 where the run does not count.
- mass: `on_rotor`. trial: the keys of `trial`. solve: the keys of `solve` and `plan` (its entry), or those of `pieces`.
- verdict: the keys of `tolerance`. next: `stage`, `act`, `sentence`, `why`, `command`, `stages`.
- undo, redo: `undone` or `done_again`, the entry, null where there is none. use, withdraw, caution, decide, reference, start,
  close, reopen: `entries` says it all; caution lists `cautions` [{id, text, acknowledge}] too.
"""

from __future__ import annotations

import sys
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer
from stillshaft.dsp.units import shown
from stillshaft.ui.command import DO_NOT_TRUST, HookupOption, JsonOption, warn
from stillshaft.ui.job_command import (
    FolderArgument,
    NoteOption,
    Person,
    act_done,
    answer,
    jobs,
    on_rotor_rows,
    opened,
    print_next,
    run_row,
    said,
)

if TYPE_CHECKING:
    from stillshaft.ui.session import Session

# beginning, showing


@jobs.command()
def new(
    context: typer.Context,
    folder: FolderArgument,
    name: Annotated[str | None, typer.Option(help="Name of the job; the folder's unless given.")] = None,
    hookup: HookupOption = None,
    earlier: Annotated[
        Path | None,
        typer.Option("--from", metavar="RUNS|JOB", help="Earlier visit: its brief, hook-up and coefficients."),
    ] = None,
    as_json: JsonOption = False,
) -> None:
    """Begin a job in a new folder."""
    from stillshaft.acquire.hookup import load_hookup
    from stillshaft.ui.session import Session

    person: Person = context.obj
    table = None if hookup is None else load_hookup(hookup).table
    if earlier is None:
        session = Session.create(folder, name or folder.resolve().name, person.by, table)
    else:
        session = Session.next_visit(folder, name, person.by, earlier, table)
    with session:
        if as_json:
            taken = None if earlier is None else str(earlier)
            said(session, "new", {"name": session.state.name, "taken_over": taken}, since=0)
        else:
            typer.echo(f"{folder}: job begun")
            for event in session.state.measured:
                if event.what.note:
                    warn(event.what.note)
            print_next(session)


@jobs.command()
def show(
    context: typer.Context,
    folder: FolderArgument,
    history: Annotated[bool, typer.Option("--history", help="The whole history, not only its end.")] = False,
    verify: Annotated[
        bool, typer.Option("--verify", help="Check every recording and photo, and solve every plan again.")
    ] = False,
    as_json: JsonOption = False,
) -> None:
    """Where the job stands: runs, masses, plans, verdict, history, problems."""
    from stillshaft.ui import account_job

    with opened(context, folder, read_only=True) as session:
        found = _verified(session) if verify else []
        if as_json:
            said(session, "show", _shown(session), trusted=not found, reasons=found)
        else:
            account_job.print_job(session, whole_history=history)
            for text in found:
                warn(text)
            if verify and not found:
                typer.echo("every file is as it was recorded, and every plan comes out again")
            if not session.state.closed:
                print_next(session)
    if found:
        raise typer.Exit(DO_NOT_TRUST)


def _verified(session: Session) -> list[str]:
    from stillshaft.solver.replay import replay, verify_files

    found = list(verify_files(session.job))
    for again in replay(session.job):
        found += [f"plan {again.plan.id}: {text}" for text in again.differences]
    return found


def _shown(session: Session) -> dict[str, Any]:
    import msgspec
    from stillshaft.ui.account_job import in_words
    from stillshaft.ui.job_visit import given

    state = session.state
    verdict = state.verdicts[-1].what if state.verdicts else None
    return {
        "name": state.name,
        "started_at": state.started_at,
        "closed": state.closed,
        "brief": given(msgspec.to_builtins(state.brief)),
        "hookup": state.hookup,
        "runs": [run_row(r) for r in state.runs],
        "on_rotor": on_rotor_rows(session),
        "plans": [p.id for p in state.plans],
        "verdict": None
        if verdict is None
        else {key: getattr(verdict, key) for key in ("verdict", "basis", "accepted_by", "refused_by")},
        "checks": {item: event.what.outcome for item, event in state.checks.items()},
        "starts": len(state.starts),
        "history": [
            {
                "line": entry.line,
                "id": None if entry.event is None else entry.event.id,
                "kind": None if entry.event is None else entry.event.kind,
                "at": None if entry.event is None else entry.event.at,
                "by": None if entry.event is None else entry.event.by,
                "text": entry.text if entry.event is None else in_words(entry.event),
                "withdrawn_by": entry.withdrawn_by,
                "problem": entry.problem,
            }
            for entry in session.history
        ],
    }


@jobs.command("next")
def next_step(
    context: typer.Context,
    folder: FolderArgument,
    skip: Annotated[str | None, typer.Option(metavar="WHY", help="Pass over it, with the reason.")] = None,
    stop: Annotated[
        str | None, typer.Option(metavar="WHY", help="End the balancing as it is, with the reason.")
    ] = None,
    as_json: JsonOption = False,
) -> None:
    """The most important thing to do now, why, and the command for it."""
    from stillshaft.ui import account_job

    with opened(context, folder, read_only=skip is None and stop is None) as session:
        since = len(session.job.events)
        if skip is not None:
            session.skip_advice(skip)
        if stop is not None:
            session.stop_balancing(stop)
        advice = session.advice()
        if as_json:
            content = {
                "stage": advice.stage,
                "act": advice.act,
                "sentence": advice.sentence,
                "why": advice.why,
                "command": account_job.command_of(advice, folder),
                "stages": {name: asdict(stage) for name, stage in session.stages().items()},
            }
            said(session, "next", content, since=since)
        else:
            print_next(session)


# brief, hook-up, inspection


@jobs.command()
def brief(
    context: typer.Context,
    folder: FolderArgument,
    set_: Annotated[
        list[str] | None,
        typer.Option("--set", metavar='"KEY = VALUE"', help='Such as "rotor.mass = 80 kg"; give it again for several.'),
    ] = None,
    ask: Annotated[
        bool | None,
        typer.Option("--ask/--show", help="Go through the questions, or only show; asked on a terminal unless said."),
    ] = None,
    as_json: JsonOption = False,
) -> None:
    """What the job is about: shown, set entry by entry, or asked for on the terminal."""
    from stillshaft.ui import account_job, brief_text, dialogue

    wanted = ask if ask is not None else not set_ and not as_json and sys.stdin.isatty() and sys.stdout.isatty()
    with opened(context, folder, read_only=not set_ and not wanted) as session:
        since = len(session.job.events)
        if set_:
            session.describe(brief_text.patch_of(set_, session.brief))
        asked = dialogue.ask(session, answer, warn) if wanted else None
        if as_json:
            content = {"brief": _shown(session)["brief"]}
            content |= {} if asked is None else {"answered": asked.answered, "ended": asked.ended}
            said(session, "brief", content, since=since)
        else:
            account_job.print_brief(session.brief)
        _say_unwatched(session)


@jobs.command()
def hookup(
    context: typer.Context,
    folder: FolderArgument,
    file: Annotated[Path, typer.Argument(help="Hook-up file (TOML).")],
    as_json: JsonOption = False,
) -> None:
    """Set what is wired to which input."""
    from stillshaft.acquire.hookup import load_hookup

    wired = load_hookup(file)
    with opened(context, folder) as session:
        since = len(session.job.events)
        session.wire(wired.table)
        act_done(session, "hookup", since, as_json, fingerprint=wired.fingerprint)
        _say_unwatched(session)


def _say_unwatched(session: Session) -> None:
    """Say which levels of the brief stand at points that the hook-up does not have."""
    from stillshaft.solver import cautions

    there = ", ".join(shown(name) for name in cautions.wired_points(session.state))
    for what, point in cautions.unwatched(session.state):
        warn(
            f'warning: the {what} at "{shown(point)}" watches nothing: the hook-up has no such point; there is {there}'
        )


@jobs.command()
def inspect(
    context: typer.Context,
    folder: FolderArgument,
    item: Annotated[str | None, typer.Argument(help="Check, as the list names it; without it the list.")] = None,
    outcome: Annotated[str | None, typer.Argument(metavar="fine|needs-attention|not-done")] = None,
    note: NoteOption = "",
    photo: Annotated[list[Path] | None, typer.Option(metavar="FILE", help="A photo to keep with it.")] = None,
    evidence: Annotated[int | None, typer.Option(metavar="ENTRY", help="The measured check that shows it.")] = None,
    as_json: JsonOption = False,
) -> None:
    """The checks that fit this machine, or the outcome of one of them."""
    from stillshaft.ui import account_job

    if (item is None) != (outcome is None):
        raise typer.BadParameter("give the check and its outcome, or neither for the list")
    with opened(context, folder, read_only=item is None) as session:
        since = len(session.job.events)
        if item is not None and outcome is not None:
            session.inspect(item, outcome.replace("-", " "), note, photo or [], evidence)
        if as_json or item is not None:
            act_done(session, "inspect", since, as_json, checks=_check_rows(session))
        else:
            account_job.print_checks(session.checks(), session.state)


def _check_rows(session: Session) -> list[dict[str, Any]]:
    done = session.state.checks
    return [
        {"key": c.key, "title": c.title, "how": c.how, "fine": c.fine, "cautions": list(c.cautions),
         "outcome": done[c.key].what.outcome if c.key in done else None}
        for c in session.checks()
    ]  # fmt: skip


# importing them registers their verbs
from stillshaft.ui import cli_job_checks, cli_job_masses, cli_job_record  # noqa: E402, F401
