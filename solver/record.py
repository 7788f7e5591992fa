"""The file of a job's record: one event a line, appended and synced, never edited; one writer; readable after anything.

A line is a JSON object in UTF-8 whose last key `crc` is the CRC-32 (as in zlib, hex) of the line as it would be without
that key. A line that cannot be read is kept, named and passed over. This file knows lines; what they say is `events`.
"""

from __future__ import annotations

import contextlib
import json
import os
import re
import zlib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import msgspec
from stillshaft.dsp.units import shown
from stillshaft.solver.folder import (
    FOLDERS,
    NO_FOLLOWING,
    ReadOnlyError,
    RecordError,
    check_is_file,
    copies_beside,
    open_own,
    put,
    read_all,
    remove_folders,
    sync,
    sync_folder,
    why,
)
from stillshaft.solver.lock import LOCK_NAME, Lock

FORMAT = 1
NAME = "job.jsonl"
MOST_LINES = 100_000
MOST_LINE_BYTES = 4 * 2**20
MOST_BYTES = 256 * 2**20
MOST_DEPTH = 24  # tables within tables
LARGEST = 1e30  # of any number: its square still fits a float

_CRC = re.compile(rb',"crc":"([0-9a-f]{8})"\}$')
_TAIL_BYTES = 512


@dataclass(frozen=True)
class Line:
    """One line: its number from 1, what it holds, and whether it is not as it was written.

    `event` is None where it cannot be read; `problem` then says why and `text` is how it begins.
    """

    number: int
    event: dict[str, Any] | None
    problem: str | None = None
    text: str = ""

    @property
    def altered(self) -> bool:
        """True where it reads well, but its checksum does not fit or is missing."""
        return self.event is not None and self.problem is not None


def line_bytes(event: Mapping[str, Any]) -> bytes:
    """The line of an event with its checksum and line end. Raises RecordError for what JSON cannot hold."""
    try:
        body = json.dumps(event, ensure_ascii=False, allow_nan=False, separators=(",", ":"), default=_plain)
        data = body.encode("utf-8")
    except UnicodeEncodeError:
        raise RecordError("a text holds half a letter (a lone surrogate); write it anew") from None
    except (TypeError, ValueError, RecursionError) as error:
        raise RecordError(f"cannot be recorded: {shown(error)}") from None
    line = data[:-1] + b',"crc":"%08x"}\n' % zlib.crc32(data)
    if len(line) > MOST_LINE_BYTES:
        raise RecordError(f"cannot be recorded: {len(line)} bytes, at most {MOST_LINE_BYTES} in one entry")
    return line


def _plain(value: Any) -> Any:
    """Numbers and arrays of numpy as plain ones."""
    if hasattr(value, "tolist"):
        return value.tolist()
    raise TypeError(f"{type(value).__name__} is no text, number, list or table")


def read_line(number: int, raw: bytes) -> Line:
    """Read one line, without its line end. Never raises: what is wrong stands in `problem`."""
    where = f"line {number}"

    def text() -> str:  # worked out for a line with a problem only: most have none
        return shown(raw[:200].decode("utf-8", "replace"))

    if len(raw) > MOST_LINE_BYTES:
        return Line(number, None, f"{where} is longer than {MOST_LINE_BYTES} bytes and is left out", text())
    found = _CRC.search(raw)
    sound = found is not None and int(found[1], 16) == zlib.crc32(raw[: found.start()] + b"}")
    try:
        event = msgspec.json.decode(raw)
        if not isinstance(event, dict):
            raise RecordError("it is no table")
        _check_bounds(event, 0)
    except RecordError as error:
        return Line(number, None, f"{where} cannot be used and is left out: {error}", text())
    except (msgspec.MsgspecError, UnicodeDecodeError, RecursionError):
        return Line(number, None, f"{where} is damaged and is left out: it begins {text()!r}", text())
    event.pop("crc", None)
    if sound:
        return Line(number, event)
    how = "has no checksum: written by hand?" if found is None else "is not as it was written (its checksum differs)"
    return Line(number, event, f"{where} {how}; it is read as it stands, look at it", text())


def drafted(event: Mapping[str, Any], number: int) -> Line:
    """The line as it will be read once the event is written. Raises RecordError for what could not be read again."""
    line = read_line(number, line_bytes(event)[:-1])
    if line.event is None:
        raise RecordError(f"cannot be recorded: {line.problem}")
    return line


def _check_bounds(value: Any, depth: int) -> None:
    if depth > MOST_DEPTH:
        raise RecordError(f"tables within tables, more than {MOST_DEPTH} deep")
    if isinstance(value, dict | list):
        for inner in value.values() if isinstance(value, dict) else value:
            if isinstance(inner, dict | list):
                _check_bounds(inner, depth + 1)
            elif isinstance(inner, int | float) and not -LARGEST <= inner <= LARGEST:
                raise RecordError(f"the number {shown(inner, 24)} is too large, at most {LARGEST:g}")


def _version_of(line: Line) -> int | None:
    found = None if line.event is None else line.event.get("format")
    return found if isinstance(found, int) and not isinstance(found, bool) else None


class Record:
    """The opened record of a job folder: its lines, and what is to be said about them.

    Used by one thread. `lines` are those read and those appended since.
    """

    def __init__(self, folder: Path, *, read_only: bool = False, take_over: bool = False) -> None:
        """Open the record of a folder. Raises RecordError where there is none, or another program writes it.

        On a disk that cannot be written it opens to read and says so. `take_over` sets a lock aside that a program on
        another computer left.
        """
        self.folder, self.path, self.read_only = folder, folder / NAME, read_only
        self.lines: list[Line] = []
        self.refused = ""  # why the disk lets nothing be written, where it was meant to be
        self._problems: list[str] = []
        self._file = -1
        self._lock: Lock | None = None
        try:
            if not read_only:
                self._open_to_write(take_over)
            if self.read_only:
                self._file = open_own(self.path, os.O_RDONLY)
            self._read()
        except RecordError:
            self.close()
            raise
        self._problems += copies_beside(folder, NAME)

    def _open_to_write(self, take_over: bool) -> None:
        try:
            check_is_file(self.path)  # before a lock is left in a folder that holds no job
            self._lock = Lock(self.folder / LOCK_NAME, take_over=take_over)
            self._file = open_own(self.path, os.O_RDWR | os.O_APPEND)
        except ReadOnlyError as error:
            self._release()
            self.read_only, self.refused = True, str(error)
            self._problems.append(f"{error}: opened to read only")

    @staticmethod
    def create(folder: Path, first: Mapping[str, Any]) -> Record:
        """Begin a record with its first event, in a new or existing folder without one. Nothing is left on an error."""
        line, path = line_bytes(first), folder / NAME
        made: list[Path] = []
        try:
            made += [p for p in (*(folder / f for f in FOLDERS), folder, *folder.parents) if not p.exists()]
            folder.mkdir(parents=True, exist_ok=True)
            for inner in FOLDERS:
                (folder / inner).mkdir(exist_ok=True)
            file = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | NO_FOLLOWING, 0o644)
        except FileExistsError:
            remove_folders(made)
            raise RecordError(f"{folder}: holds a job already, or is no folder; choose a new folder") from None
        except (OSError, ValueError) as error:
            remove_folders(made)
            raise RecordError(f"{shown(folder, 400)}: cannot be written: {why(error, new=True)}") from None
        try:
            try:
                put(file, line)
                sync(file)
            finally:
                os.close(file)
            sync_folder(folder)
        except OSError as error:
            path.unlink(missing_ok=True)
            remove_folders(made)
            raise RecordError(f"{folder}: cannot be written: {why(error)}") from None
        return Record(folder)

    @property
    def problems(self) -> tuple[str, ...]:
        """What is to be said about the file: damaged and altered lines, a torn end, copies beside it."""
        return (*self._problems, *(f"{self.path}: {line.problem}" for line in self.lines if line.problem))

    def _read(self) -> None:
        about = os.fstat(self._file)
        if about.st_size > MOST_BYTES:
            raise RecordError(f"{self.path}: has {about.st_size} bytes, at most {MOST_BYTES}; is it a job's record?")
        data = read_all(self._file)
        whole = data.count(b"\n")
        if whole > MOST_LINES:
            raise RecordError(f"{self.path}: has {whole} lines, at most {MOST_LINES}; is it a job's record?")
        *raw_lines, end = data.split(b"\n")
        for number, raw in enumerate(raw_lines, start=1):
            trimmed = raw.removeprefix(b"\xef\xbb\xbf").strip() if number == 1 else raw.strip()
            if trimmed:  # an editor may have changed line ends or added an empty line
                self.lines.append(read_line(number, trimmed))
        self._lead, self._keep = b"", len(data)
        if end:
            last = read_line(whole + 1, end.strip())
            if last.event is not None:  # whole but for its line end: part of an object is never one itself
                self.lines.append(last)
                self._lead = b"\n"
            else:
                self._keep = len(data) - len(end)
                self._problems.append(
                    f"{self.path}: line {whole + 1} is cut off after {len(end)} bytes and is left out; "
                    "what came after it was never recorded"
                )
        self.next_number = whole + (2 if self._lead else 1)
        self._check_version()
        self._remember(data)

    def _check_version(self) -> None:
        versions = [(line.number, _version_of(line), line.problem is None) for line in self.lines]
        known = any(version == FORMAT for _, version, _ in versions)
        for number, version, sound in versions:
            if version is not None and version > FORMAT and (sound or not known):
                raise RecordError(
                    f"{self.path}: line {number} is of format {version}, but this program reads up to {FORMAT}; "
                    "open it with a newer version"
                )
        if self.next_number > 1 and not known:
            lines = self.next_number - 1
            which = "its only line cannot" if lines == 1 else f"none of its {lines} lines can"
            raise RecordError(f"{self.path}: is no job's record: {which} be read")

    def _remember(self, data: bytes) -> None:
        about = os.fstat(self._file)
        self._end, self._crc, self._tail = len(data), zlib.crc32(data), data[-_TAIL_BYTES:]
        self._changed_ns = about.st_mtime_ns

    def append(self, event: Mapping[str, Any]) -> Line:
        """Append an event and sync it; only then is it in `lines`.

        Raises RecordError, and then the file is as it was: cannot be written, disk full, stick removed, or another
        program changed the file meanwhile.
        """
        if self._file < 0:
            raise RecordError(f"{self.folder}: is closed; open it to write")
        if self.read_only:
            raise RecordError(f"{self.refused or f'{self.folder}: is opened to read only'}; open it to write")
        if self.next_number > MOST_LINES:
            raise RecordError(f"{self.path}: has {MOST_LINES} lines, which is the most; close it and begin a new job")
        line = drafted(event, self.next_number)
        self._check_unchanged()
        written = self._lead + line_bytes(event)
        try:
            if self._end != self._keep:
                os.ftruncate(self._file, self._keep)
                self._remember(read_all(self._file))
            put(self._file, written)
            sync(self._file)
        except OSError as error:
            # what is left of the line where even this fails is a torn end, which the next append drops
            with contextlib.suppress(OSError):
                os.ftruncate(self._file, self._keep)
                sync(self._file)
            with contextlib.suppress(OSError):
                self._remember(read_all(self._file))
            raise RecordError(
                f"{self.path}: {why(error)}; nothing was added, what is recorded is kept: "
                "see to the disk and do it again"
            ) from None
        self._crc = zlib.crc32(written, self._crc)
        self._end = self._keep = self._keep + len(written)
        self._tail = (self._tail + written)[-_TAIL_BYTES:]
        self._changed_ns = os.fstat(self._file).st_mtime_ns
        self._lead = b""
        self.next_number += 1
        self.lines.append(line)
        return line

    def _check_unchanged(self) -> None:
        """Raise RecordError where the file is not the one that was read and written here."""
        anew = "nothing was added; close the job and open it again"
        try:
            there, ours = os.stat(self.path, follow_symlinks=False), os.fstat(self._file)
            if not os.path.samestat(there, ours):
                raise RecordError(f"{self.path}: was replaced by another program; {anew}")
            if there.st_size != self._end:
                raise RecordError(
                    f"{self.path}: was changed by another program (it has {there.st_size} bytes, "
                    f"but had {self._end}); {anew}"
                )
            if there.st_mtime_ns != self._changed_ns:
                if zlib.crc32(read_all(self._file)) != self._crc:
                    raise RecordError(f"{self.path}: was changed by another program; {anew}")
                self._changed_ns = there.st_mtime_ns
            os.lseek(self._file, -len(self._tail), os.SEEK_END)
            if os.read(self._file, len(self._tail)) != self._tail:
                raise RecordError(f"{self.path}: was changed by another program; {anew}")
        except OSError as error:
            raise RecordError(f"{self.path}: {why(error)}; {anew}") from None

    def _release(self) -> None:
        if self._lock is not None:
            self._lock.release()
            self._lock = None

    def close(self) -> None:
        """Close the file and give the lock back. May be called again."""
        if self._file >= 0:
            os.close(self._file)
            self._file = -1
        self._release()
