"""The command line. Results go to standard output, progress and warnings to standard error.

Nothing heavy is imported before the verb is known: help and mistakes answer at once.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import Annotated, NoReturn

import typer

# all matrices here are small: several threads on one only wait for each other
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

from stillshaft.dsp.units import shown, unfit
from stillshaft.ui.command import DO_NOT_TRUST, INPUT_UNUSABLE, JsonOption, app, print_json

WRONG_USAGE = 2

_LONGEST_PATH = 400  # letters of a name in a message


def main() -> NoReturn:
    """Run the command line; bad input ends in one line on standard error and exit status 1."""
    for number, text in enumerate(sys.argv[1:], start=1):
        if character := unfit(text):  # it would be shown again, on a terminal or in a report
            print(f"stillshaft: argument {number} has a character that does not show ({character})", file=sys.stderr)  # noqa: T201
            sys.exit(WRONG_USAGE)
    try:
        app()
    except (ValueError, OSError) as error:
        if not _is_ours(error):
            raise
        print(f"stillshaft: {_one_line(error)}", file=sys.stderr)  # noqa: T201
        sys.exit(INPUT_UNUSABLE)
    sys.exit(0)


def _is_ours(error: Exception) -> bool:
    """True for what the person's input can cause; a plain ValueError from inside is a fault of the program."""
    return isinstance(error, OSError) or type(error).__module__.startswith("stillshaft.")


def _one_line(error: Exception) -> str:
    if isinstance(error, OSError) and error.filename:
        return f"{shown(error.filename, _LONGEST_PATH)}: {error.strerror}"
    return " ".join(str(error).split())


@app.callback(invoke_without_command=True)
def _start(context: typer.Context) -> None:
    if context.invoked_subcommand is None:
        _open_window()


@app.command("app")
def open_app() -> None:
    """Open the desktop program."""
    _open_window()


def _open_window() -> None:
    from stillshaft.ui import window

    raise typer.Exit(window.run())


@app.command()
def rehearse(
    folder: Annotated[Path | None, typer.Argument(help="New folder for the job.")] = None,
    planes: Annotated[int, typer.Option(min=1, max=2, help="Correction planes.")] = 2,
    seed: Annotated[int, typer.Option(min=0, help="Draws the scatter and the placement errors.")] = 1,
    fault: Annotated[
        str | None,
        typer.Option(metavar="neighbour|loose|resonance|weak-trial|couple", help="What is wrong with the machine."),
    ] = None,
    fast: Annotated[bool, typer.Option("--fast", help="Not in real time.")] = False,
    as_json: JsonOption = False,
) -> None:
    """A whole balance job on the built-in simulated rotor, end to end, and its report."""
    from stillshaft.ui import account, account_job, rehearsal

    with account.progress("") as report:
        outcome = rehearsal.rehearse(
            folder, planes=planes, seed=seed, real_time=not fast, on_progress=report, fault=fault
        )
    page = rehearsal.write_report(outcome.folder)
    if as_json:
        print_json("rehearse", outcome.trusted, list(outcome.reasons), rehearsal.to_json(outcome))
    else:
        account_job.print_story(outcome)
        account.print_rehearsal(outcome, page)
    if not outcome.trusted:
        raise typer.Exit(DO_NOT_TRUST)


@app.command()
def guide(
    name: Annotated[str | None, typer.Argument(metavar="start|wiring|trust|steps|theory", help="Which page.")] = None,
    as_json: JsonOption = False,
) -> None:
    """The guides that come with the program: a list, or one page."""
    from stillshaft.ui import account, guides

    pages = guides.guides() if name is None else (guides.guide(name),)
    if as_json:
        print_json("guide", True, [], {"pages": [{"name": p.name, "title": p.title, "text": p.text} for p in pages]})
    elif name is None:
        account.print_guides(pages)
    else:
        account.print_guide(pages[0])


from stillshaft.ui import cli_acquire, cli_job, cli_library, cli_measure, cli_pieces, cli_report, cli_solve  # noqa: E402, F401

# the order of the verbs in the help is the order of a job
_ORDER = (
    *(
        "app",
        "guide",
        "rehearse",
        "sources",
        "check",
        "calibrate",
        "capture",
        "convert",
        "vector",
        "steadiness",
        "spectrum",
        "sweep",
    ),
    *("trial", "solve", "pieces", "lag", "tolerance", "report", "machines", "reprocess"),
)
app.registered_commands.sort(key=lambda command: _ORDER.index(command.name or command.callback.__name__))  # type: ignore[union-attr]

if __name__ == "__main__":
    main()
