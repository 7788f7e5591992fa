"""The verbs of a job from masses to the verdict; `ui.cli_job` documents their keys."""

from __future__ import annotations

import re
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer
from stillshaft.dsp.units import shown
from stillshaft.ui.command import DO_NOT_TRUST, JsonOption, version
from stillshaft.ui.job_command import (
    AcknowledgeOption,
    FolderArgument,
    JobVerbError,
    NoteOption,
    acknowledge_shown,
    act_done,
    jobs,
    on_rotor_rows,
    opened,
    print_next,
    said,
)

if TYPE_CHECKING:
    from stillshaft.ui.session import Session

_ACTS = ("put", "take", "placed", "weighed")
_PURPOSES = ("trial", "correction", "trim", "final", "other")


@jobs.command()
def mass(
    context: typer.Context,
    folder: FolderArgument,
    act: Annotated[str, typer.Argument(metavar="put|take|placed|weighed")],
    what: Annotated[
        list[str],
        typer.Argument(
            help='put: "disc = 10 g at 270", "disc = 10 g at position 5", plan, pieces. take: all, trial, an entry such as '
            "7 or 7.2, a plane, a mass. placed: the entry, then where its pieces really sit. weighed: all, or the entries that "
            "took trial masses off; --note says what they weighed."
        ),
    ],
    purpose: Annotated[
        str | None, typer.Option("--as", metavar="trial|correction|trim|final|other", help="What it is put on for.")
    ] = None,
    note: NoteOption = "",
    photo: Annotated[list[Path] | None, typer.Option(metavar="FILE", help="A photo of it.")] = None,
    acknowledge: AcknowledgeOption = None,
    as_json: JsonOption = False,
) -> None:
    """What was put on the rotor, taken off, where it really sits, or what trial masses weighed when they came back."""
    if act not in _ACTS:
        raise typer.BadParameter(f"{act}: {', '.join(_ACTS)}")
    if purpose not in (None, *_PURPOSES):
        raise typer.BadParameter(f"--as {purpose}: {', '.join(_PURPOSES)}")
    with opened(context, folder) as session:
        session.refuse_closed()
        since = len(session.job.events)
        if act == "put":
            pieces, usual = _pieces(session, what)
            _with_hands(session, acknowledge)
            session.put_on(pieces, purpose or usual, note, photo or [])
        elif act == "take":
            found = {(on.of, on.number): on for text in what for on in session.on_rotor(text)}
            _with_hands(session, acknowledge)
            session.take_off(list(found.values()), note)
        elif act == "weighed":
            session.weigh_back(note, None if what == ["all"] else _numbers(what))
        else:
            _placed(session, what, note, photo or [])
        act_done(session, "mass", since, as_json, on_rotor=on_rotor_rows(session))


def _numbers(what: list[str]) -> list[int]:
    """Entries by their numbers."""
    if other := next((text for text in what if not re.fullmatch(r"\d{1,9}", text)), None):
        raise JobVerbError(f'weighed: "{shown(other)}" is no entry; write all, or the numbers as `job show` has them')
    return [int(text) for text in what]


def _placed(session: Session, what: list[str], note: str, photos: list[Path]) -> None:
    """Where the pieces of an entry really sit, with photos of them; or the photos alone."""
    from stillshaft.ui import job_masses

    of, texts = _entry(session, what)
    if not texts and not photos:
        raise JobVerbError("placed: say where the pieces really sit, or give a --photo of them")
    if missing := next((p for p in photos if not p.is_file()), None):
        raise JobVerbError(f"{missing}: there is no such photo")
    if texts:
        of = session.really_placed(of, job_masses.pieces_from(texts, session.brief.planes), note).id
    for photo in photos:
        session.add_photo(photo, note, of)


def _with_hands(session: Session, acknowledge: str | None) -> None:
    """The cautions before hands go in are shown; they are recorded where somebody says that they were seen to."""
    from stillshaft.ui import account_job
    from stillshaft.ui.command import warn

    cautions = session.cautions_before_hands()
    if acknowledge is not None:
        acknowledge_shown(session, cautions, acknowledge)
        return
    for line in account_job.cautions_told(cautions):
        warn(line)


def _pieces(session: Session, what: list[str]) -> tuple[list[dict[str, Any]], str]:
    """Pieces meant, and what they usually are for."""
    from stillshaft.ui import job_masses

    usual = "correction" if session.state.plans else "trial"
    if what == ["plan"]:
        return _of_plan(session)
    if what == ["pieces"]:
        found = [m for m in session.state.measured if m.what.what == "pieces"]
        if not found:
            raise JobVerbError("pieces: none were chosen yet; choose them with `stillshaft job solve DIR --pieces`")
        figures = found[-1].what.figures
        left_on, rows = bool(figures.get("left_on")), figures.get("pieces", [])
        if session.state.on_rotor and not left_on:
            raise JobVerbError(
                "pieces: were chosen for a rotor with nothing on it; take off what is on, or choose again with "
                "`stillshaft job solve DIR --pieces --leave-on`"
            )
        return [{k: v for k, v in row.items() if v is not None} for row in rows], "trim" if left_on else "correction"
    return job_masses.pieces_from(what, session.brief.planes), usual


def _of_plan(session: Session) -> tuple[list[dict[str, Any]], str]:
    """The masses of the last plan: all of them with nothing on the rotor, else what is to be added to what it saw on it."""
    from stillshaft.solver import run_vectors

    if not session.state.plans:
        raise JobVerbError("plan: there is none yet; solve first with `stillshaft job solve DIR`")
    trial = [on for on in session.state.on_rotor if session.purposes().get(on.of) == "trial"]
    if trial:
        raise JobVerbError("plan: trial masses are still on; take them off first, or give the masses one by one")
    plan, on, brief = session.state.plans[-1].what, session.state.on_rotor, session.brief
    counting = [r for r in session.state.runs if r.counts]
    if not counting or counting[-1].id != plan.inputs[-1]:
        raise JobVerbError("plan: the runs that count are others since; solve again with `stillshaft job solve DIR`")
    now, then = run_vectors.masses_of([o.piece for o in on], brief), run_vectors.masses_on(counting[-1], brief)
    if on and not run_vectors.same_masses(now, then):
        raise JobVerbError(
            "plan: what is on the rotor is not what the last run was taken with, so what to add is not known; take a run "
            "and solve again, or take it all off"
        )
    rows = plan.result["additional" if on else "corrections"]
    pieces = [{"plane": c["plane"], "mass_g": c["mass"], "angle_deg": c["angle_deg"]} for c in rows]
    return pieces, "trim" if on else "correction"


def _entry(session: Session, what: list[str]) -> tuple[int, list[str]]:
    """The entry whose pieces really sit elsewhere, and the texts; the only one on the rotor need not be named."""
    entries = list(dict.fromkeys(on.of for on in session.state.on_rotor))
    if what and what[0].isdigit():
        return int(what[0]), what[1:]
    if len(entries) == 1:
        return entries[0], what
    raise JobVerbError(
        f"placed: name the entry first; on the rotor are entries {', '.join(map(str, entries)) or 'none'}"
    )


@jobs.command()
def trial(
    context: typer.Context,
    folder: FolderArgument,
    plane: Annotated[str | None, typer.Argument(help="The plane; the only one unless given.")] = None,
    as_json: JsonOption = False,
) -> None:
    """A trial mass for a plane: how heavy, where, and the force it makes."""
    from stillshaft.solver.trial import to_json
    from stillshaft.ui import account_solve

    with opened(context, folder, read_only=True) as session:
        names = [p.name for p in session.brief.planes]
        if plane is None and len(names) != 1:
            raise JobVerbError(f"trial: name the plane; the brief has {', '.join(names) or 'none yet'}")
        found = session.suggest_trial(plane or names[0])
        if as_json:
            said(session, "trial", to_json(found), reasons=[found.reason])
        else:
            account_solve.print_trial(found)


@jobs.command()
def solve(
    context: typer.Context,
    folder: FolderArgument,
    method: Annotated[
        str, typer.Option(metavar="auto|least-squares|expected|minimax", help="What the correction makes least.")
    ] = "auto",
    stored: Annotated[
        bool, typer.Option("--stored", help="With the coefficients of an earlier visit, where runs do not suffice.")
    ] = False,
    pieces: Annotated[bool, typer.Option("--pieces", help="Choose pieces of the stock at allowed positions.")] = False,
    aim: Annotated[
        str, typer.Option(metavar="proposal|best|fewest", help="--pieces: what to give pieces for.")
    ] = "proposal",
    leave_on: Annotated[bool, typer.Option("--leave-on", help="--pieces: what is on stays on.")] = False,
    at_most: Annotated[int | None, typer.Option(min=0, metavar="N", help="--pieces: no more than this.")] = None,
    as_json: JsonOption = False,
) -> None:
    """Work the correction out from the runs that count, and keep the plan."""
    from stillshaft.solver import correction
    from stillshaft.ui import account, account_job, account_solve

    if stored and pieces:
        raise typer.BadParameter("--stored and --pieces: give one of them")
    with opened(context, folder) as session:
        session.refuse_closed()
        since = len(session.job.events)
        if pieces:
            with account.progress("choosing pieces"):
                plan = session.choose_pieces(aim=aim, left_on=leave_on, most=at_most)
            trusted, reasons = plan.trusted, plan.reasons
            if as_json:
                figures = session.state.measured[-1].what.figures
                said(session, "solve", figures, since=since, trusted=trusted, reasons=reasons)
            else:
                account_job.print_pieces(plan)
        else:
            event, solution = session.solve_with_stored() if stored else session.solve(method)
            trusted, reasons = solution.trusted, solution.reasons
            if as_json:
                told = correction.to_json(solution, version())
                content = {
                    k: v for k, v in told.items() if k not in ("format", "verb", "version", "trusted", "reasons")
                }
                content["plan"] = event.id
                said(session, "solve", content, since=since, trusted=trusted, reasons=reasons)
            else:
                account_solve.print_solution(solution)
                typer.echo(f"kept as entry {event.id}")
                print_next(session)
    if not trusted:
        raise typer.Exit(DO_NOT_TRUST)


@jobs.command()
def verdict(context: typer.Context, folder: FolderArgument, note: NoteOption = "", as_json: JsonOption = False) -> None:
    """Where the rotor stands against the goal of the brief, recorded."""
    from stillshaft.solver import limits
    from stillshaft.ui import account_solve

    with opened(context, folder) as session:
        session.refuse_closed()
        since = len(session.job.events)
        event, found = session.judge(note)
        if as_json:
            told = limits.to_json(found, version())
            content = {k: v for k, v in told.items() if k not in ("format", "verb", "version", "trusted", "reasons")}
            content["verdict"] = event.what.verdict
            said(session, "verdict", content, since=since, reasons=found.reasons)
        else:
            account_solve.print_tolerance(found)
            typer.echo(f"recorded as entry {event.id}: {event.what.verdict}")
