"""What all verbs of the command line share: the program itself, their common options, and how a result is printed."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Annotated, Any

import typer

INPUT_UNUSABLE, DO_NOT_TRUST = 1, 3

app = typer.Typer(
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    help="Balance a rotor where it stands: measure, prove the phase, find the mass, show the result.",
)

JsonOption = Annotated[bool, typer.Option("--json", help="Print one JSON object instead of tables.")]
OrderOption = Annotated[float, typer.Option(help="Order of the shaft speed.")]
CandidatesOption = Annotated[
    Path | None,
    typer.Option(
        "--candidates", metavar="FILE", help="What may run beside the shaft (TOML): motors, belts, the mains."
    ),
]


def _plot_path(path: Path | None) -> Path | None:
    """A plot's name is checked before any work is done. Raises DrawingError."""
    if path is not None:
        from stillshaft.ui import drawing

        drawing.check_path(path)
    return path


PlotOption = Annotated[
    Path | None, typer.Option("--plot", metavar="FILE", help="Draw it, .svg or .pdf.", callback=_plot_path)
]
RecordingArgument = Annotated[
    Path, typer.Argument(help="Recording: AU, WAV, FLAC, CAF, CSV, HDF5, MAT, universal file, TDMS.")
]
HookupOption = Annotated[Path | None, typer.Option("--hookup", metavar="FILE", help="Hook-up file (TOML).")]


def version() -> str:
    """Version of the program."""
    from importlib import metadata

    return metadata.version("stillshaft")


def print_json(verb: str, trusted: bool, reasons: list[str], content: dict[str, Any]) -> None:
    """Print a result as one JSON object, with the keys that every verb has."""
    whole = {
        "format": 1,
        "verb": verb,
        "version": version(),
        "trusted": trusted,
        "reasons": reasons,
        **content,
    }
    print_whole(whole)


def this_user() -> str:
    """The user of this computer, as the record names people; empty for one without a name."""
    import getpass

    try:
        return getpass.getuser()
    except (OSError, KeyError, ImportError):
        return ""


def warn(text: str) -> None:
    """Say something on standard error."""
    typer.echo(text, err=True)


def print_whole(whole: dict[str, Any]) -> None:
    """Print a JSON object that has all of the contract's keys."""
    typer.echo(json.dumps(whole, indent=2, allow_nan=False))
