"""What a list of jobs shows of each one, read quickly, and an index that remembers it.

Lines of a kind that the list shows are decoded straight into rows like its description in `events`, all in one go; of
the others only id and kind are read, because nothing in them changes what is shown. The fold of the record decides, as
everywhere. Whatever is unusual (a checksum that does not fit, a torn end, an event that does not fit) is left to `Job`,
which reads all of it.
"""

from __future__ import annotations

import contextlib
import functools
import hashlib
import operator
import os
import stat
import types
import typing
import zlib
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from importlib import metadata
from pathlib import Path
from typing import Annotated, Any, Literal

import msgspec
from stillshaft.solver import events, inspection
from stillshaft.solver.brief import Brief
from stillshaft.solver.events import KINDS, Event
from stillshaft.solver.folder import NO_FOLLOWING, RecordError, open_own, read_all
from stillshaft.solver.job import Job
from stillshaft.solver.record import LARGEST, MOST_BYTES, MOST_LINE_BYTES, MOST_LINES, NAME
from stillshaft.solver.state import JobRun, JobState, fold

_SHOWN = frozenset(("started", "brief", "run", "plan", "verdict", "closed", "reopened", "use", "withdrawn"))
_CRC_BYTES = len(',"crc":"00000000"}')
_DEPTH = 6  # tables within tables that are read quickly
_MOST_ID = 2**53
_SETTLED_NS = 2_000_000_000  # a file changed later than this before it was read may change again within its time stamp
_MOST_INDEX_BYTES = 512 * 2**20


@dataclass(frozen=True)
class Reading:
    """Once-per-rev amplitude of a point in one run, with its 95 % half width within the run; `at` as in the record."""

    at: str
    run: str
    purpose: str
    speed_rpm: float
    unit: str
    amplitude: float
    amplitude_ci95: float | None = None
    overall: float | None = None
    verdict: str | None = None


@dataclass(frozen=True)
class PointReadings:
    """First and last reading of a point in a job, from runs that count; slow rolls are left out."""

    point: str
    first: Reading
    last: Reading


@dataclass(frozen=True)
class JobShown:
    """What a list shows of a job. `machine` None: its brief gives no name. `texts` are names, places and notes.

    `coefficients_rpm` are the speeds that the newest plan found influence coefficients at; `repeatability` is that of the
    brief, or what is usual for such a drive and process; `problems` are those of a record that had to be read whole.
    `beginning` is the CRC-32 of its first line: a copy of the job has the same.
    """

    folder: str
    name: str
    started_at: str
    machine: str | None
    place: str | None
    serial: str | None
    closed: bool
    runs: int
    counting: int
    points: tuple[PointReadings, ...]
    verdict: str | None
    verdict_at: str | None
    coefficients_rpm: tuple[float, ...]
    repeatability: str
    texts: tuple[str, ...]
    problems: tuple[str, ...]
    beginning: int
    size: int


def look(folder: Path) -> tuple[JobShown, tuple[int, ...] | None]:
    """What is to be shown of a job, and the stamp of its file if it may be remembered. Raises RecordError."""
    file = _opened(folder)
    try:
        before = os.fstat(file)
        data = read_all(file) if before.st_size <= MOST_BYTES else b""
        after = os.fstat(file)
    except OSError as error:
        raise RecordError(f"{folder / NAME}: cannot be read: {(error.strerror or '').lower()}") from None
    finally:
        os.close(file)
    problems: tuple[str, ...] = ()
    state = quick_state(data)
    if state is None:
        with Job.open(folder, read_only=True) as job:
            state, problems = job.state, job.problems
    stamp = stamp_of(before)
    return _shown(folder, state, problems, data), stamp if stamp == stamp_of(after) else None


def _opened(folder: Path) -> int:
    """The record's file, opened without a link in between. Raises RecordError."""
    try:
        file = os.open(os.path.join(folder, NAME), os.O_RDONLY | NO_FOLLOWING)
    except (OSError, ValueError):
        return open_own(folder / NAME, os.O_RDONLY)  # which says what is wrong
    if not stat.S_ISREG(os.fstat(file).st_mode):
        os.close(file)
        return open_own(folder / NAME, os.O_RDONLY)
    return file


def stamp_of(about: os.stat_result) -> tuple[int, ...]:
    """What changes with the file: device, inode, size, and when it was changed."""
    return (about.st_dev, about.st_ino, about.st_size, about.st_mtime_ns, about.st_ctime_ns)


# the quick way


def quick_state(data: bytes) -> JobState | None:
    """The state of a record in all that a list shows, or None where the whole record has to be read.

    Of plans it has the newest alone, if none is withdrawn.
    """
    lines = data.split(b"\n")
    if lines.pop() or not 0 < len(lines) <= MOST_LINES:
        return None
    try:
        rows = _rows().decode_lines(data)
        if len(rows) != len(lines) or not all(map(_is_sound, lines)):
            return None
        state = fold(_events(rows))
    except (msgspec.MsgspecError, UnicodeDecodeError, RecursionError, ValueError):
        return None
    return None if state.problems else state


def _is_sound(line: bytes) -> bool:
    """Whether a line is as it was written, and no longer than it may be."""
    crc = zlib.crc32(b"}", zlib.crc32(line[:-_CRC_BYTES]))
    return line.endswith(b',"crc":"%08x"}' % crc) and len(line) <= MOST_LINE_BYTES


def _events(rows: Sequence[Any]) -> list[Event[Any]]:
    """The events that matter, in their order. Raises ValueError or MsgspecError for anything unusual."""
    ids = [row.id for row in rows]
    if any(map(operator.ge, ids, ids[1:])):
        raise ValueError("ids that do not grow")
    gone = {row.of for row in rows if row.kind == "withdrawn"}
    plans = [number for number, row in enumerate(rows) if row.kind == "plan"]
    old = set() if gone & {ids[number] for number in plans} else set(plans[:-1])
    kept: set[int] = set()
    found = []
    for number, row in enumerate(rows):
        # taking back what is not shown changes nothing that is
        if row.kind is None or number in old or (row.kind == "withdrawn" and row.of not in kept):
            continue
        kept.add(row.id)
        found.append(_event(number + 1, row))
    return found


def _event(number: int, row: Any) -> Event[Any]:
    """The event of a sound line. Raises RecordError or MsgspecError for what `event_from` would refuse, and for more."""
    kind, what = row.kind, row
    if kind == "run":
        row.recording = None  # its patterns say more than the check would, and it is not shown
    elif kind == "plan":
        row.result = _tables().decode(row.result)
    elif kind == "brief":
        said = {name: getattr(row, name) for name in _BRIEF_FIELDS}
        what = events.BriefPatch({name: value for name, value in said.items() if value is not msgspec.UNSET})
    if datetime.fromisoformat(row.at).utcoffset() != _NO_OFFSET:
        raise ValueError("a time that is not UTC")
    events.check(what, "line", KINDS[kind])
    return Event(number, row.id, kind, row.at, row.by, what, {})


_BRIEF_FIELDS = Brief.__struct_fields__
_NO_OFFSET = datetime.fromisoformat("2000-01-01T00:00:00+00:00").utcoffset()

# as the record bounds them; a whole number beyond 64 bits is left to the record
_Number = Annotated[float, msgspec.Meta(ge=-LARGEST, le=LARGEST)]
_Whole = Annotated[int, msgspec.Meta(ge=-(2**63), le=2**63 - 1)]


_Hash = Annotated[str, msgspec.Meta(pattern=r"^[0-9a-f]{64}\Z")]


class _PlainFile(events.File):
    """A recording by the name that the program gives it."""

    path: Annotated[str, msgspec.Meta(pattern=r"^recordings/[0-9]{4,9}\.au\Z")]
    sha256: _Hash
    events_sha256: _Hash | None = None


@functools.cache
def _anything() -> Any:
    """Texts, bounded numbers, and tables and lists of them, to a depth."""
    plain: Any = _Number | _Whole | str | bool | None
    whole = plain
    for _ in range(_DEPTH):
        whole = plain | types.GenericAlias(list, (whole,)) | types.GenericAlias(dict, (str, whole))
    return whole


@functools.cache
def _tables() -> msgspec.json.Decoder[dict[str, Any]]:
    return msgspec.json.Decoder(dict[str, _anything()])  # type: ignore[misc]


@functools.cache
def _rows() -> msgspec.json.Decoder[Any]:
    """Decoder of whole lines, derived from the descriptions of the kinds with every number bounded as the record does.

    A row has its `kind`, None where it is not shown: then it has its `id` alone. Else it is a description as well.
    """
    number: list[Any] = [("format", Literal[1]), ("id", Annotated[int, msgspec.Meta(ge=1, le=_MOST_ID)])]
    head = [*number, ("at", str), ("by", str, ""), ("crc", str)]
    rows = []
    for kind, described in KINDS.items():
        shown = kind in _SHOWN
        row = msgspec.defstruct(
            "Row",
            [*_own_fields(kind), *head] if shown else number,
            bases=(described,) if shown and kind != "brief" else (),
            namespace={"kind": kind if shown else None},
            kw_only=True,
            forbid_unknown_fields=shown,
            tag_field="kind",
            tag=kind,
        )
        rows.append(row)
    return msgspec.json.Decoder(functools.reduce(operator.or_, rows))


def _own_fields(kind: str) -> list[Any]:
    if kind == "brief":  # a key that is not there is not the same as none
        return [(name, _anything() | msgspec.UnsetType, msgspec.UNSET) for name in _BRIEF_FIELDS]
    fields: list[Any] = _bounded_fields(KINDS[kind])
    if kind == "plan":  # of many one is shown
        fields = [(name, msgspec.Raw if name == "result" else hint, default) for name, hint, default in fields]
    return fields


def _bounded_fields(kind: type[msgspec.Struct]) -> list[tuple[str, Any, Any]]:
    return [
        (
            field.name,
            _bounded(field.type),
            msgspec.field(name=field.encode_name)
            if field.required
            else msgspec.field(default=field.default)
            if field.default is not msgspec.NODEFAULT
            else msgspec.field(default_factory=field.default_factory),
        )
        for field in msgspec.structs.fields(kind)
    ]


def _bounded(hint: Any) -> Any:
    """A type as it is described, with every number in it bounded."""
    if hint is float or hint is int or hint is Any:
        return {float: _Number, int: _Whole, Any: _anything()}[hint]
    if hint is events.File:
        return _PlainFile
    if isinstance(hint, type) and issubclass(hint, msgspec.Struct):
        return msgspec.defstruct(hint.__name__, _bounded_fields(hint), bases=(hint,), kw_only=True)
    origin, inner = typing.get_origin(hint), typing.get_args(hint)
    if origin in (typing.Union, types.UnionType):
        return functools.reduce(lambda a, b: a | b, [_bounded(part) for part in inner])
    if origin in (list, dict):
        return origin[tuple(_bounded(part) for part in inner)]
    return hint


# what is shown of a state


def _shown(folder: Path, state: JobState, problems: tuple[str, ...], data: bytes) -> JobShown:
    machine, verdict = state.brief.machine, state.verdicts[-1] if state.verdicts else None
    return JobShown(
        folder=str(folder),
        name=state.name,
        started_at=state.started_at,
        machine=_name(machine.name),
        place=_name(machine.place),
        serial=_name(machine.serial),
        closed=state.closed,
        runs=len(state.runs),
        counting=sum(run.counts for run in state.runs),
        points=_readings(state.runs),
        verdict=None if verdict is None else verdict.what.verdict,
        verdict_at=None if verdict is None else verdict.at,
        coefficients_rpm=_speeds(state),
        repeatability=state.brief.repeatability or _assumed(state.brief),
        texts=_texts(state),
        problems=problems,
        beginning=zlib.crc32(data[: data.find(b"\n")]),
        size=len(data),
    )


def _assumed(brief: Brief) -> str:
    """What is assumed from run to run. A resonance is left out: what was measured is not read, and trends are over years."""
    return inspection.assumed_repeatability(inspection.facts_from(brief), near_resonance=False).text


def _name(text: str | None) -> str | None:
    return None if text is None or not text.strip() else text


def _readings(runs: Sequence[JobRun]) -> tuple[PointReadings, ...]:
    first: dict[str, tuple[JobRun, events.Vector]] = {}
    last: dict[str, tuple[JobRun, events.Vector]] = {}
    for run in runs:
        if run.counts and run.what.purpose != "slow roll":
            for vector in run.what.vectors:
                last[vector.point] = (run, vector)
                first.setdefault(vector.point, last[vector.point])
    return tuple(PointReadings(point, _reading(*first[point]), _reading(*last[point])) for point in first)


def _reading(run: JobRun, v: events.Vector) -> Reading:
    what = run.what
    return Reading(
        run.event.at, what.name, what.purpose, what.speed_rpm, what.unit, v.amplitude, v.amplitude_ci95, v.overall, v.verdict
    )  # fmt: skip


def _speeds(state: JobState) -> tuple[float, ...]:
    """Speeds of the newest plan's influence coefficients."""
    told = state.plans[-1].what.result.get("influence") if state.plans else None
    speeds = [entry.get("speed_rpm") for entry in told if isinstance(entry, dict)] if isinstance(told, list) else []
    return tuple(sorted({float(s) for s in speeds if isinstance(s, int | float) and not isinstance(s, bool)}))


def _texts(state: JobState) -> tuple[str, ...]:
    brief = state.brief
    noted = (brief.rotor.note, brief.drive.note, brief.supports.note, brief.goal.note, brief.note)
    machine = [getattr(brief.machine, name) for name in brief.machine.__struct_fields__]
    runs = [text for run in state.runs for text in (run.what.name, run.what.note)]
    return tuple(dict.fromkeys(text for text in (state.name, *machine, *noted, *runs) if text))


# the index


def program_of(*parts: str) -> str:
    """The program's version and what its source files of these parts (`solver`, `dsp/measure.py`, …) hold, in letters."""
    digest = hashlib.sha256()
    for part in parts:
        at = _ROOT / part
        for path in sorted(at.glob("*.py")) + sorted(at.glob("*.toml")) if at.is_dir() else [at]:
            with contextlib.suppress(OSError):
                digest.update(path.name.encode() + b"\0" + path.read_bytes())
    return f"{metadata.version('stillshaft')} {digest.hexdigest()[:16]}"


_ROOT = Path(__file__).parents[1]


class _Remembered(msgspec.Struct):
    stamp: tuple[int, ...]
    shown: JobShown


class _Stored(msgspec.Struct):
    program: str
    jobs: dict[str, _Remembered]


class Index:
    """What was shown of the jobs of a folder by their path in it, kept in a file; a file that cannot be used is made anew.

    Used by one thread. Losing it only costs time, so that nothing here raises.
    """

    def __init__(self, path: Path | None, root: Path) -> None:
        self._path = path
        self._program = "" if path is None else program_of("solver", "ui/library_index.py")
        self._before = len(os.path.join("" if str(root) == "." else root, ""))  # what a folder's path begins with
        self._known = {} if path is None else self._read(path)
        self._new: dict[str, _Remembered] = {}
        self.used = 0

    def _read(self, path: Path) -> dict[str, _Remembered]:
        with contextlib.suppress(OSError, ValueError, RecursionError):  # msgspec's errors are ValueErrors
            if path.stat().st_size <= _MOST_INDEX_BYTES:
                digest, _, data = path.read_bytes().partition(b"\n")
                if digest == b"%08x" % zlib.crc32(data):
                    stored = msgspec.json.decode(data, type=_Stored)
                    if stored.program == self._program:
                        return stored.jobs
        return {}

    def shown(self, folder: str, about: os.stat_result, now_ns: int) -> JobShown:
        """What is to be shown of a job in the root whose file is `about`. Raises RecordError."""
        key = folder[self._before :]  # the root may be named in another way the next time
        known = self._known.get(key)
        if known is not None and known.stamp == stamp_of(about):
            self.used += 1
            if known.shown.folder != folder:
                known = _Remembered(known.stamp, replace(known.shown, folder=folder))
        else:
            shown, stamp = look(Path(folder))
            if stamp is None or max(stamp[3:]) > now_ns - _SETTLED_NS or not key.isprintable():
                return shown
            known = _Remembered(stamp, shown)
        self._new[key] = known
        return known.shown

    def save(self) -> None:
        """Write what was seen, as a whole or not at all, if it is not what the file has."""
        if self._path is None or (self.used == len(self._new) == len(self._known)):
            return
        partial = self._path.with_name(f"{self._path.name}.{os.getpid()}.partial")
        with contextlib.suppress(OSError, ValueError):
            data = msgspec.json.encode(_Stored(self._program, self._new))
            self._path.parent.mkdir(parents=True, exist_ok=True)
            try:
                partial.write_bytes(b"%08x\n" % zlib.crc32(data) + data)
                os.replace(partial, self._path)
            finally:
                partial.unlink(missing_ok=True)
