"""The record of a job, opened: every act of the person is one more event, and its state follows."""

from __future__ import annotations

import os
import re
from collections.abc import Callable
from dataclasses import dataclass
from importlib import metadata
from pathlib import Path
from types import TracebackType
from typing import Any

from stillshaft.dsp import tables
from stillshaft.dsp.units import shown
from stillshaft.solver import clock, events
from stillshaft.solver.brief import check_values
from stillshaft.solver.events import KINDS, Event, event_from
from stillshaft.solver.folder import RecordError, file_inside, fit_name, room_in, sha256_of
from stillshaft.solver.record import FORMAT, Line, Record, drafted
from stillshaft.solver.state import JobState, folded, withdrawals

_HAPPENED = {"started", "caution", "start", "alarm", "withdrawn"}  # undo passes over them: what happened, happened


@dataclass(frozen=True)
class Entry:
    """A line of the history: its event (None where it cannot be read), who withdrew it, and what is wrong with it."""

    line: int
    event: Event[Any] | None
    withdrawn_by: int | None
    problem: str | None
    text: str = ""


class Job:
    """An opened job. Used by one thread; `changed` are called after each event, when it is on the disk."""

    def __init__(self, record: Record, by: str) -> None:
        """Use `create` or `open`."""
        self.by = by
        self.changed: list[Callable[[], None]] = []
        self._record = record
        self._events: list[Event[Any]] = []
        self._unread: dict[int, str] = {}  # why by line
        for line in record.lines:
            self._read(line)
        self._growing = folded(self._events)
        self._state = self._growing.state()

    @staticmethod
    def create(folder: Path, name: str, by: str) -> Job:
        """Begin a job in a new folder, or in one that holds none. Raises RecordError, and then leaves nothing behind."""
        head = _line_of(1, "started", by, {"name": name, "program": metadata.version("stillshaft")})
        _event_of(head, 1)  # refuses an empty name before there is a folder
        return Job(Record.create(folder, head), by)

    @staticmethod
    def open(folder: Path, read_only: bool = False, *, by: str = "", take_over: bool = False) -> Job:
        """Open a job. Raises RecordError where there is none, it is newer than the program, or another one has it open.

        `take_over` sets aside a lock that a program on another computer left. On a disk that cannot be written the job
        opens to read only and says so in `problems`.
        """
        return Job(Record(folder, read_only=read_only, take_over=take_over), by)

    @property
    def folder(self) -> Path:
        """The job's folder."""
        return self._record.folder

    @property
    def read_only(self) -> bool:
        """True where nothing can be appended."""
        return self._record.read_only

    @property
    def refused(self) -> str:
        """Why nothing can be recorded on this disk, in words; empty where it can, or was not meant to."""
        return self._record.refused

    @property
    def state(self) -> JobState:
        """Where the job stands."""
        return self._state

    @property
    def events(self) -> tuple[Event[Any], ...]:
        """All events that can be read, withdrawn ones too."""
        return tuple(self._events)

    @property
    def problems(self) -> tuple[str, ...]:
        """What is to be said about the record: its file, lines that are left out, events that do not fit."""
        where = f"{self._record.path}: "
        return (
            *self._record.problems,
            *(where + text for text in self._unread.values()),
            *(f"{where}entry {number}: {text}" for number, text in self._state.problems),
        )

    @property
    def history(self) -> tuple[Entry, ...]:
        """Every line, also those withdrawn, damaged, or of an unknown kind."""
        by_line = {event.line: event for event in self._events}
        gone, unfit = withdrawals(self._events), dict(self._state.problems)
        entries = []
        for line in self._record.lines:
            event = by_line.get(line.number)
            problem = line.problem or self._unread.get(line.number)
            if event is None:
                entries.append(Entry(line.number, None, None, problem, line.text))
            else:
                entries.append(Entry(line.number, event, gone.get(event.id), problem or unfit.get(event.id), line.text))
        return tuple(entries)

    def _read(self, line: Line) -> None:
        if line.event is None:
            return
        try:
            event = event_from(line)
            if self._events and event.id <= self._events[-1].id:
                raise RecordError(f"line {line.number}: its id {event.id} was used before it")
        except RecordError as error:
            self._unread[line.number] = f"{error}; it is kept and left out"
        else:
            self._events.append(event)

    def append(self, kind: str, *, by: str | None = None, **fields: Any) -> Event[Any]:
        """Record an event and return it when it is on the disk. Raises RecordError, and then nothing is recorded."""
        if kind not in KINDS:
            raise RecordError(f"{shown(kind)!r} is no kind of event; there is {', '.join(KINDS)}")
        if taken := {"format", "id", "at", "crc"} & fields.keys():
            raise RecordError(f"{kind}: {', '.join(sorted(taken))}: the record says that itself")
        number = max(
            self._events[-1].id if self._events else 0, self._record.lines[-1].number if self._record.lines else 0
        )
        table = _line_of(number + 1, kind, self.by if by is None else by, fields)
        event = _event_of(table, self._record.next_number)
        try:
            state = self._state_with(event)
            self._record.append(table)
        except BaseException:  # whatever it was, the event is not recorded
            self._growing = folded(self._events)
            raise
        self._events.append(event)
        self._state = state
        for listener in list(self.changed):
            listener()
        return event

    def _state_with(self, event: Event[Any]) -> JobState:
        """The state with one more event. Raises RecordError where it does not fit."""
        if event.kind == "withdrawn":  # what it withdraws may lie far back
            self._growing = folded([*self._events, event])
        else:
            self._growing.take(event)
        state = self._growing.state()
        if unfit := dict(state.problems).get(event.id):
            raise RecordError(unfit)
        if event.kind == "brief":
            try:
                check_values(state.brief)
            except tables.TableError as error:
                raise RecordError(f"brief: {error}") from None
        return state

    def withdraw(self, id: int, why: str) -> Event[Any]:
        """Let an event count no longer; it stays in the history. Raises RecordError."""
        if id in withdrawals(self._events):
            raise RecordError(f"entry {id} is withdrawn already")
        return self.append("withdrawn", of=id, why=why)

    def undo(self) -> Event[Any] | None:
        """Withdraw the person's last act that counts; None where there is none.

        Acknowledged cautions, counted starts and alarms are passed over: they happened. `withdraw` takes them back with a reason.
        """
        gone = withdrawals(self._events)
        for event in reversed(self._events):
            explicit = isinstance(event.what, events.Withdrawn) and not event.what.undo
            if event.by == self.by and event.id not in gone and (event.kind not in _HAPPENED or explicit):
                return self.append("withdrawn", of=event.id, why="undone", undo=True)
        return None

    def redo(self) -> Event[Any] | None:
        """Take back the person's last undo, as long as nothing was done since; None where there is none."""
        gone = withdrawals(self._events)
        undone = {e.id for e in self._events if isinstance(e.what, events.Withdrawn) and e.what.undo}
        for event in reversed(self._events):
            if event.by != self.by:
                continue
            if event.id not in undone:
                return None
            if event.id not in gone and event.what.of not in undone:
                return self.append("withdrawn", of=event.id, why="done again", undo=True)
        return None

    def file(self, path: str, where: str = "path") -> Path:
        """The file that a path of the record names. Raises RecordError where it is missing or not in the folder."""
        return file_inside(self.folder, path, where)

    def file_fields(self, path: str) -> dict[str, str]:
        """A file of the folder as an event holds it: path, hash, and for a recording the hash of its event log."""
        fields = {"path": path, "sha256": sha256_of(self.file(path))}
        log = Path(path).with_suffix(".events.jsonl").as_posix()
        if path.startswith("recordings/") and (self.folder / log).exists():
            fields["events_sha256"] = sha256_of(self.file(log))
        return fields

    def next_recording(self) -> Path:
        """Where the next recording goes: a number that neither the folder nor the record has used."""
        room = room_in(self.folder, "recordings")
        names = [entry.name for entry in room.iterdir()]
        names += [Path(file.path).name for event in self._events for file in events.files_of(event.what)]
        numbers = [int(found[1]) for name in names if (found := re.match(r"([0-9]{4,9})\.", name))]
        return room / f"{max(numbers, default=0) + 1:04d}.au"

    def new_file(self, inner: str, name: str) -> Path:
        """Where a new photo or report of about this name goes: nothing is there yet. Raises RecordError."""
        room, fit = room_in(self.folder, inner), fit_name(name)
        stem, dot, ending = fit.rpartition(".") if "." in fit else (fit, "", "")
        number, path = 1, room / fit
        while os.path.lexists(path):
            number += 1
            path = room / f"{stem} {number}{dot}{ending}"
        return path

    def close(self) -> None:
        """Give the folder back to other programs. The job itself is closed by the event "closed"."""
        self._record.close()

    def __enter__(self) -> Job:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self.close()


def _line_of(number: int, kind: str, by: str, fields: dict[str, Any]) -> dict[str, Any]:
    return {"format": FORMAT, "id": number, "kind": kind, "at": clock.stamp(), "by": by, **fields}


def _event_of(table: dict[str, Any], number: int) -> Event[Any]:
    """The event as it will be read from the file. Raises RecordError."""
    try:
        return event_from(drafted(table, number))
    except RecordError as error:
        raise RecordError(
            str(error).removeprefix(f"line {number} ").replace(f"({table['kind']})", table["kind"], 1)
        ) from None
