"""Valid input changed so that it hurts: edits of bytes, of tables and of records, each a few whole numbers."""

import contextlib
import functools
import json
import pickle
import random
import re
import tomllib
from collections.abc import Callable, Sequence
from datetime import date
from typing import Any

import tomli_w
from stillshaft.solver.record import line_bytes

Edit = tuple[int, int, int]  # which operation, where, with what; all of them go round

TEXTS = (
    "",
    " ",
    "\x00",
    "\x1b[2J\x1b]0;x\x07",
    "a\nb",
    "\r\n",
    "\u202eexe.toml",
    "\u2066a\u2069",
    "\ud7ff\uffff",
    "\u2028",
    "\x85",
    "\x7f",
    "../../beside",
    "/etc/passwd",
    "..\\..\\x",
    "C:\\x",
    "~/x",
    "$HOME",
    "$(id)",
    "`id`",
    "; rm -rf .",
    "%s%n",
    "{0.__class__}",
    "{value.__class__.__mro__}",
    "{value:>999999999}",
    "<script>alert(1)</script>",
    '"><img src=x onerror=alert(1)>',
    "</title></style>",
    "]]>",
    "<!--",
    "&lt;&#0;",
    "=1+1",
    "+cmd|' /C x'!A0",
    "-1",
    "@SUM(A1)",
    "\t=1",
    "＝1",
    "'",
    '"',
    "[red]x[/red]",
    "[/]",
    "[link=file:///x]y",
    "9" * 5000,
    "1e999 mm",
    "-0 g",
    "nan kg",
    "inf V",
    "1 g" * 2000,
    "1 kg**9**9**9",
    "(" * 3000,
    "1 " + "m*" * 2000 + "m",
    "10 mV/" + "(" * 90,
    "1 % 2 deg",
    "1480 rpm",
    "G6.3",
    "NaN",
    "con.au",
    "a" * 300,
    "é\u0301" * 50,
    "\U0001f600",
    "\u0661\u0662",
    "ﷺ" * 40,
    "x" * 20000,
    "None",
    "__class__",
)
NUMBERS = (
    0,
    -1,
    1,
    2,
    3,
    64,
    65,
    255,
    1023,
    2**16,
    2**31 - 1,
    2**31,
    2**32,
    2**53,
    2**63 - 1,
    -(2**63),
    10**6,
    10**9,
    0.0,
    -0.0,
    0.5,
    1e-300,
    5e-324,
    1e30,
    1e300,
    -1e300,
    1e308,
    float("nan"),
    float("inf"),
    float("-inf"),
    720,
    1e12,
    1e-12,
    360.0,
    1e16,
)
_NUMBER_TOKENS = (
    b"nan",
    b"inf",
    b"-inf",
    b"1e999",
    b"-1",
    b"0",
    b"9" * 400,
    b"9" * 5000,
    b"0x" + b"f" * 5000,
    b"1e",
    b"1_0",
    b"-0",
    b"1e308",
    b"0.1e-400",
    b"4294967296",
    b"18446744073709551616",
    b"true",
    b"null",
    b"NaN",
    b"Infinity",
    b"1979-05-27",
    b"07:32:00",
    b"[]",
    b"{}",
    b'""',
)
_PIECES = (
    b"\0",
    b"\xff",
    b"\xff\xff\xff\xff",
    b"\x7f\xff\xff\xff",
    b"\xff\xff\xff\x7f",
    b"\0\0\0\0",
    b"\0\0\0\x80",
    b"\xff" * 8,
    b"\xc3",
    b"\xed\xa0\x80",
    b"\xef\xbb\xbf",
    b"\xe2\x80\xae",
    b"\x1b[31m",
    b"\n",
    b"\r",
    b"\n\n",
    b'"',
    b"'''",
    b'"""',
    b"[",
    b"]",
    b"[[",
    b"{",
    b"}",
    b"#",
    b"=",
    b",",
    b";",
    b"\\u0000",
    b"\\ud800",
    b"\\",
    b"[" * 3000,
    b"{" * 3000,
    b'{"a":' * 2000,
    b"[[a.b]]\n",
    b"a.b.c = 1\n",
    b"a = " + b"[" * 2000,
    b"x" * 9000,
    b"A" * 254,
    b"\t",
    b"//",
    b"\0" * 4096,
    b"format = 1\n",
    b"[point]\n",
    b"-1\n",
    b"    -1\n    58\n",
)
_MOST_IN_LIST = 2000
_MOST_PLACES = 20_000  # of a table: what has more is longer than any input may be
_COUNTS = (2, 3, 17, 300, 3000)
_TOKEN = re.compile(rb"[-+]?\d[\d.eE_+-]*")
_QUOTED = re.compile(rb'"[^"\n]{0,200}"')


# bytes


def _flip(data: bytes, at: int, what: int) -> bytes:
    at %= len(data)
    return data[:at] + bytes([data[at] ^ 1 << what % 8]) + data[at + 1 :]


def _put(data: bytes, at: int, what: int) -> bytes:
    at %= len(data)
    piece = _PIECES[what % len(_PIECES)]
    return data[:at] + piece + data[at:]


def _overwrite(data: bytes, at: int, what: int) -> bytes:
    at %= len(data)
    piece = _PIECES[what % len(_PIECES)]
    return data[:at] + piece + data[at + len(piece) :]


def _cut(data: bytes, at: int, what: int) -> bytes:
    at %= len(data)
    return data[:at] if what % 2 else data[at:]


def _remove(data: bytes, at: int, what: int) -> bytes:
    at %= len(data)
    return data[:at] + data[at + 1 + what % 64 :]


def _repeat(data: bytes, at: int, what: int) -> bytes:
    at %= len(data)
    size = 1 + what % 97
    return data[:at] + data[at : at + size] * _COUNTS[what % len(_COUNTS)] + data[at + size :]


def _move(data: bytes, at: int, what: int) -> bytes:
    at, to = at % len(data), what % len(data)
    piece = data[at : at + 40]
    return data[:to] + piece + data[to:]


def _line_of(data: bytes, at: int, what: int) -> bytes:
    lines = data.splitlines(keepends=True)
    at %= len(lines)
    lines[at : at + 1] = [lines[at]] * (0, 2, 3, 40, 1000)[what % 5]
    return b"".join(lines)


def _number(data: bytes, at: int, what: int) -> bytes:
    found = list(_TOKEN.finditer(data))
    if not found:
        return _put(data, at, what)
    match = found[at % len(found)]
    return data[: match.start()] + _NUMBER_TOKENS[what % len(_NUMBER_TOKENS)] + data[match.end() :]


def _quoted(data: bytes, at: int, what: int) -> bytes:
    found = list(_QUOTED.finditer(data))
    if not found:
        return _put(data, at, what)
    match = found[at % len(found)]
    text = TEXTS[what % len(TEXTS)].encode("utf-8", "surrogatepass")
    if what % 3:  # as a TOML or JSON text may hold it
        text = json.dumps(TEXTS[what % len(TEXTS)])[1:-1].encode()
    return data[: match.start()] + b'"' + text + b'"' + data[match.end() :]


def _noise(data: bytes, at: int, what: int) -> bytes:
    at %= len(data)
    noise = random.Random(what).randbytes(1 + what % 60)
    return data[:at] + noise + data[at + (0, len(noise))[what % 2] :]


def _scaled(data: bytes, at: int, what: int) -> bytes:
    found = list(_TOKEN.finditer(data))
    if not found:
        return _noise(data, at, what)
    match = found[at % len(found)]
    return data[: match.end()] + b"e%d" % (what % 640 - 320) + data[match.end() :]


_BYTES: tuple[Callable[[bytes, int, int], bytes], ...] = (
    _flip,
    _put,
    _overwrite,
    _cut,
    _remove,
    _repeat,
    _move,
    _line_of,
    _number,
    _quoted,
    _noise,
    _scaled,
)


def edited_bytes(data: bytes, edits: Sequence[Edit]) -> bytes:
    """The bytes with all edits done."""
    for operation, at, what in edits:
        data = _BYTES[operation % len(_BYTES)](data or b"\n", at, what)[:200_000]
    return data


# tables


def _places(table: Any, found: list[tuple[Any, Any]]) -> list[tuple[Any, Any]]:
    """All tables and lists with the keys in them, to the most that are looked at."""
    for key in list(table) if isinstance(table, dict) else range(len(table)):
        if len(found) > _MOST_PLACES:
            break
        found.append((table, key))
        if isinstance(table[key], dict | list):
            _places(table[key], found)
    return found


def _hostile(what: int, old: Any) -> Any:
    choices = (
        NUMBERS
        if isinstance(old, int | float) and what % 4
        else TEXTS
        if isinstance(old, str) and what % 4
        else ([], {}, "", 0, True, [[]], [old], {"a": old}, [old, old], date(2026, 1, 1), *NUMBERS[:8], *TEXTS[:8])
    )
    value = choices[what // 4 % len(choices)]
    if what % 7 == 1 and isinstance(
        old, str
    ):  # the beginning stays: a number with another unit, a name with another end
        return old + str(TEXTS[what // 7 % len(TEXTS)])
    return value


def _nested(value: Any, depth: int) -> Any:
    for _ in range(depth):
        value = [value]
    return value


def _repeated(items: list[Any], what: int) -> list[Any]:
    """The list so many times, as far as it fits into an input."""
    times = min((2, 3, 70, 800)[what % 4], 2 + _MOST_PLACES // max(1, len(_places(items, []))))
    return (items * times)[:_MOST_IN_LIST]


def edit_table(table: dict[str, Any], edit: Edit) -> None:
    """Change one place of a table."""
    operation, at, what = edit
    places = _places(table, [])
    if not places:
        return
    inside, key = places[at % len(places)]
    match operation % 8:
        case 0 | 1 | 2:
            inside[key] = _hostile(what, inside[key])
        case 3:
            del inside[key]
        case 4 if isinstance(inside, dict):
            inside[TEXTS[what % len(TEXTS)]] = inside.pop(key) if what % 2 else inside[key]
        case 5 if isinstance(inside[key], list) and inside[key]:
            inside[key] = _repeated(inside[key], what)
        case 5 if isinstance(inside, list):
            inside[:] = _repeated(inside, what)
        case 6:
            inside[key] = _nested(inside[key], (1, 5, 30, 120, 400)[what % 5])
        case _:
            other, name = places[what % len(places)]
            value = other[name]
            if not isinstance(value, dict | list):
                inside[key] = value


def _as_toml(table: dict[str, Any]) -> bytes:
    if len(_places(table, [])) > _MOST_PLACES:
        raise ValueError
    return tomli_w.dumps(table).encode("utf-8", "surrogatepass")


@functools.lru_cache(256)
def _pickled(data: bytes) -> bytes:
    """The table of valid TOML, to be had anew faster than by reading it again."""
    return pickle.dumps(tomllib.loads(data.decode()))


def edited_toml(data: bytes, edits: Sequence[Edit]) -> bytes:
    """TOML with the edits done: in the table first, in its bytes from the first edit on that asks for it."""
    table = pickle.loads(_pickled(data))
    of_bytes = [e for e in edits if e[0] % 3 == 2]
    for operation, at, what in edits:
        if operation % 3 != 2:
            with contextlib.suppress(RecursionError):  # lists in lists that were put into each other
                edit_table(table, (operation // 3, at, what))
    with contextlib.suppress(TypeError, ValueError, RecursionError):  # what TOML cannot hold is left out
        data = _as_toml(table)
    return edited_bytes(data, [(operation // 3, at, what) for operation, at, what in of_bytes])


def edited_record(data: bytes, edits: Sequence[Edit]) -> bytes:
    """Lines of JSON with the edits done, each with a good checksum, as somebody who means harm would write it."""
    rows = [json.loads(raw) for raw in data.splitlines()]
    of_bytes = []
    for operation, at, what in edits:
        if not rows or operation % 5 == 4:
            of_bytes.append((operation // 5, at, what))
        elif operation % 5 == 3:
            row = rows.pop(at % len(rows))
            for _ in range((0, 2, 3)[what % 3]):
                rows.insert(what % (len(rows) + 1), row)
        else:
            with contextlib.suppress(RecursionError):
                edit_table(rows[at % len(rows)], (operation // 5, at // len(rows), what))
    lines = []
    for row in rows:
        row.pop("crc", None)
        try:
            lines.append(line_bytes(row))
        except (ValueError, RecursionError):  # what a line cannot hold is written without a checksum
            with contextlib.suppress(RecursionError):
                lines.append(json.dumps(row, default=str).encode("utf-8", "surrogatepass") + b"\n")
    return edited_bytes(b"".join(lines), of_bytes) if of_bytes else b"".join(lines)


_EDITED = {"bytes": edited_bytes, "toml": edited_toml, "record": edited_record}


def edited(kind: str, data: bytes, edits: Sequence[Edit], most: int) -> bytes:
    """Valid input of a kind with all edits done, no longer than the most bytes."""
    return _EDITED[kind](data, edits)[:most] if edits else data[:most]


def drawn(rng: random.Random) -> list[Edit]:
    """One to four edits by chance."""
    return [
        (rng.getrandbits(16), rng.getrandbits(20), rng.getrandbits(16)) for _ in range(rng.choice((1, 1, 2, 2, 3, 4)))
    ]
