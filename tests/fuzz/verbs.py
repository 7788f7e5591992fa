"""The command line inside a door: what stands for its arguments, and what it may end with."""

import contextlib
import functools
import io
import json
import os
import re
import sys
from pathlib import Path

import typer
from fuzz.guard import one_line, several_lines
from stillshaft.ui import cli

# made once here, and not with every start: that takes ten times as long as what most verbs do
_made_once = functools.cache(typer.main.get_command)


def texts_of(data: bytes) -> list[str]:
    """The arguments that bytes stand for, as JSON or in quotation marks."""
    try:
        given = json.loads(data.decode("utf-8", "replace"))
    except (ValueError, RecursionError):
        given = re.findall(r'"([^"]*)"', data.decode("utf-8", "replace"))
    return [str(text).replace("\0", "")[:5000] for text in given][:30] if isinstance(given, list) else []


def run_verb(texts: list[str], room: Path) -> None:
    """Run it in this folder: it ends with a known status, and a refusal in one line."""
    was, before, out, said = os.getcwd(), sys.argv, io.StringIO(), io.StringIO()
    os.chdir(room)
    sys.argv = ["stillshaft", *texts]
    typer.main.get_command = _made_once  # type: ignore[assignment]
    try:
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(said):
            cli.main()
    except SystemExit as done:
        assert done.code in (0, 1, 2, 3, None), done.code  # noqa: PT017 - a door may raise or not
        several_lines(out.getvalue())
        several_lines(said.getvalue())
        if done.code == 1:
            one_line(said.getvalue().strip().splitlines()[-1])
    finally:
        typer.main.get_command = _made_once.__wrapped__  # type: ignore[assignment]
        os.chdir(was)
        sys.argv = before
