"""TOML files at the edges: read as a whole, checked against a description, faults in plain words; files written whole.

Files come from anywhere: size, depth, lists and texts are bounded here for all of them.

With `units` the only file of dsp that every layer may import.
"""

from __future__ import annotations

import errno
import os
import re
import stat
import string
import tempfile
import tomllib
import typing
from collections.abc import Collection, Mapping
from pathlib import Path
from typing import Any, TypeVar

import msgspec
from stillshaft.dsp.units import InputError, shown, unfit

DISK_FULL = {errno.ENOSPC, errno.EFBIG, getattr(errno, "EDQUOT", errno.ENOSPC)}  # what a write fails with then
MOST_BYTES = 16 * 2**20
MOST_DEPTH = 24  # tables within tables
MOST_ENTRIES = 1_000_000  # of all tables and lists of a file
MOST_LETTERS = 20_000  # of a text
MOST_OF_NAME = 300  # letters of a key or a name, which are one line
_NAMES = {"name", "machine", "point", "plane", "sensor", "edition", "key", "id", "date", "device"}
_WORDS = {
    "int": "a whole number",
    "float": "a number",
    "str": "a text",
    "bool": "true or false",
    "object": "a table",
    "array": "a list",
    "null": "nothing",
}
_UMASK = os.umask(0)  # asked for once, where no thread writes files yet
os.umask(_UMASK)
Described = TypeVar("Described", bound=msgspec.Struct)


class TableError(InputError):
    """A table that cannot be used: the message names the field and says what would be right."""


class Strict(msgspec.Struct, forbid_unknown_fields=True):
    """A described table; a key that it does not have is a fault."""


def read(path: Path) -> dict[str, Any]:
    """Content of a TOML file. Raises TableError that names the file."""
    try:
        return parsed(_bytes_of(path).decode("utf-8"))
    except UnicodeDecodeError:
        raise TableError(f"{path}: is not a text file, but should be TOML") from None
    except TableError as error:
        raise TableError(f"{path}: {error}") from None


def _bytes_of(path: Path) -> bytes:
    """What a file holds. Raises TableError for what is no file, or too large to be such a table."""
    try:
        ordinary = stat.S_ISREG(path.stat().st_mode)
        data = b""
        if ordinary:
            with open(path, "rb") as file:
                data = file.read(MOST_BYTES + 1)
    except FileNotFoundError:
        raise TableError("there is no such file") from None
    except OSError as error:
        raise TableError(f"cannot be read: {error.strerror}") from None
    except ValueError:  # a zero byte in the name
        raise TableError("is no file name") from None
    if not ordinary:
        raise TableError("is no ordinary file (a folder or a device); name a file")
    if len(data) > MOST_BYTES:
        raise TableError(f"is larger than {MOST_BYTES // 2**20} MiB; is it the right file?")
    return data


def parsed(text: str) -> dict[str, Any]:
    """Content of TOML text. Raises TableError."""
    try:
        table = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise TableError(f"is not valid TOML: {error}") from None
    except RecursionError:
        raise TableError(f"has tables within tables, more than {MOST_DEPTH} deep") from None
    except ValueError:  # the language's own limit of digits
        raise TableError("has a whole number of too many digits") from None
    check_bounds(table)
    return table


def check_bounds(table: Mapping[str, Any]) -> None:
    """Raise TableError for a table that is too deep or too long, or has texts that no line can show."""
    waiting: list[tuple[Any, int]] = [(table, 1)]
    entries = 0
    while waiting:
        value, depth = waiting.pop()
        entries += 1
        if isinstance(value, str):
            _check_text(value)
        elif isinstance(value, Mapping):
            for key, inner in value.items():
                _check_line(key, "key")
                if key in _NAMES and isinstance(inner, str):
                    _check_line(inner, key)
            waiting += [(inner, depth + 1) for inner in value.values()]
        elif isinstance(value, int) and not -(2**63) <= value < 2**63:
            raise TableError("has a whole number of more than 64 bits")
        elif isinstance(value, list):
            waiting += [(inner, depth + 1) for inner in value]
        if depth > MOST_DEPTH + 1:
            raise TableError(f"has tables within tables, more than {MOST_DEPTH} deep")
        if entries > MOST_ENTRIES:
            raise TableError(f"has more than {MOST_ENTRIES} entries")


def _check_line(text: str, what: str) -> None:
    if len(text) > MOST_OF_NAME:
        raise TableError(f'the {what} "{shown(text)}" is too long, at most {MOST_OF_NAME} letters')
    if "\n" in text or "\t" in text or "\r" in text:
        raise TableError(f'the {what} "{shown(text)}" has a line end or a tab in it; write it in one line')
    _check_text(text)


def _check_text(text: str) -> None:
    if len(text) > MOST_LETTERS:
        raise TableError(f'the text "{shown(text)}" is too long, at most {MOST_LETTERS} letters')
    if character := unfit(text):
        raise TableError(f'the text "{shown(text)}" has a character that does not show ({character}); write it without')


def write_whole(path: Path, content: bytes) -> None:
    """Write a file as a whole or not at all: beside it first, then in its place. Raises OSError, and leaves nothing."""
    handle, name = tempfile.mkstemp(prefix=f".{path.name[:80]}.", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        # what mkstemp makes is for its owner alone; the file keeps its mode, or gets the usual one
        os.chmod(name, path.stat().st_mode & 0o777 if path.exists() else 0o666 & ~_UMASK)
        os.replace(name, path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def only_in_braces(text: str, names: Collection[str]) -> bool:
    """Whether nothing but these names stands in a text's braces, to be filled in; a number may be rounded: {value:.1f}.

    Without this `format` would make gigabytes of {value:>999999999}, and look into what it is given.
    """
    try:
        fields = list(string.Formatter().parse(text))
    except ValueError:  # braces that are not closed
        return False
    return all(
        name is None or (name in names and not how and re.fullmatch(r"(\.\d[fg])?", rounded or ""))
        for _, name, rounded, how in fields
    )


def checked(table: dict[str, Any], kind: type[Described]) -> Described:
    """The table as its description. Raises TableError that names the field, list entries counted from 1."""
    try:
        return msgspec.convert(table, kind)
    except msgspec.ValidationError as error:
        raise TableError(_plain(str(error), kind)) from None
    except UnicodeEncodeError:
        raise TableError("a text in it has halves of letters: it is damaged") from None


def _plain(message: str, kind: type[msgspec.Struct]) -> str:
    text, _, at = message.partition(" - at `")
    path = at.strip("`").removeprefix("key in ").lstrip("$.").replace("[...]", "")
    field = re.sub(r"\[(\d+)\]", lambda m: f" {int(m[1]) + 1}", path)
    before = f"{field}." if field else ""
    if found := re.match(r"Object contains unknown field `(.*)`", text):
        return f"{before}{found[1]}: unknown key; remove it or mend its spelling"
    if found := re.match(r"Object missing required field `(.*)`", text):
        return f"{before}{found[1]}: is missing"
    if found := re.match(r"Expected `(.*)`, got `(.*)`", text):
        wanted = " or ".join(_WORDS.get(name, name) for name in found[1].split(" | "))
        return f"{field}: must be {wanted}, not {_WORDS.get(found[2], found[2])}"
    if found := re.match(r"Invalid enum value (.*)", text):
        return f"{field}: must be {_choices(field.split('.')[-1], kind)}, not {found[1]}"
    return f"{field}: {text[0].lower()}{text[1:]}" if field else text


def _choices(field: str, kind: type[msgspec.Struct]) -> str:
    """The allowed values of a field, in words, looked up in the description and the tables within it."""
    hints = typing.get_type_hints(kind)
    values = [v for v in _literals(hints.get(field)) if v is not None]
    if values:
        return " or ".join(str(v) for v in values)
    for hint in hints.values():
        for inner in (hint, *typing.get_args(hint)):
            if isinstance(inner, type) and issubclass(inner, msgspec.Struct):
                found = _choices(field, inner)
                if found != _ANOTHER:
                    return found
    return _ANOTHER


_ANOTHER = "another value"


def _literals(hint: Any) -> list[Any]:
    if typing.get_origin(hint) is typing.Literal:
        return list(typing.get_args(hint))
    return [value for inner in typing.get_args(hint) for value in _literals(inner)]
