"""The record of a job: its state is the fold of its events, and every act is one more event.

`fold` is pure: the same events give the same state. An event that does not fit what came before it is left out and named;
the same rule refuses it when it is to be appended.
"""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime
from importlib import metadata
from pathlib import Path
from types import TracebackType
from typing import Any

from stillshaft.dsp import tables
from stillshaft.solver import events
from stillshaft.solver.brief import Brief, brief_from, check_values, merged
from stillshaft.solver.events import KINDS, Event, event_from
from stillshaft.solver.folder import RecordError, file_inside, fit_name, room_in, sha256_of, shown
from stillshaft.solver.record import FORMAT, Line, Record, drafted

_HAPPENED = {"started", "caution", "start", "alarm", "withdrawn"}  # undo passes over them: what happened, happened
_AFTER_CLOSING = {"closed", "reopened", "report", "withdrawn"}


@dataclass(frozen=True)
class JobRun:
    """A run of the job: `counts` where it may be solved with, `reasons` why it is doubted or left out.

    `turn_deg` is added to the phases of its points, `angle_turn_deg` to its masses' angles, so that they fit the first
    run's mark and sensors; runs of different `epoch` have an unknown turn between them and are never fitted together.
    """

    event: Event[events.Run]
    counts: bool
    reasons: tuple[str, ...]
    turn_deg: dict[str, float]
    angle_turn_deg: float
    epoch: int

    @property
    def id(self) -> int:
        """Id of its event."""
        return self.event.id

    @property
    def what(self) -> events.Run:
        """What was measured."""
        return self.event.what


@dataclass(frozen=True)
class OnRotor:
    """A piece that is on the rotor: the event that put it on, and its number in that event from 1."""

    of: int
    number: int
    piece: events.Piece


@dataclass(frozen=True)
class JobState:
    """Where a job stands: what its events that count say, in their order.

    `checks` holds the newest of each item. `unknown` are events of kinds that this program does not know; `problems` say,
    by id, which events do not fit and are left out.
    """

    name: str = ""
    started_at: str = ""
    program: str = ""
    brief: Brief = field(default_factory=Brief)
    hookup: dict[str, Any] | None = None
    checks: dict[str, Event[events.Check]] = field(default_factory=dict)
    measured: tuple[Event[events.Measured], ...] = ()
    runs: tuple[JobRun, ...] = ()
    masses: tuple[Event[events.Mass], ...] = ()
    on_rotor: tuple[OnRotor, ...] = ()
    plans: tuple[Event[events.Plan], ...] = ()
    photos: tuple[Event[events.Photo], ...] = ()
    decisions: tuple[Event[events.Decision], ...] = ()
    cautions: tuple[Event[events.Caution], ...] = ()
    references: tuple[Event[events.Reference], ...] = ()
    starts: tuple[Event[events.Start], ...] = ()
    alarms: tuple[Event[events.Alarm], ...] = ()
    verdicts: tuple[Event[events.Verdict], ...] = ()
    reports: tuple[Event[events.Report], ...] = ()
    closed: bool = False
    unknown: tuple[Event[Any], ...] = ()
    problems: tuple[tuple[int, str], ...] = ()

    def run(self, name: str) -> JobRun | None:
        """The newest run of a name."""
        return next((r for r in reversed(self.runs) if r.what.name == name), None)


@dataclass(frozen=True)
class _Change:
    id: int
    turn_deg: float | None
    angle_turn_deg: float
    points: tuple[str, ...]


class _UnfitError(Exception):
    """An event that does not fit what came before it."""


class _Fold:
    """The state as it grows, event by event."""

    def __init__(self, withdrawn: frozenset[int]) -> None:
        self._withdrawn = withdrawn
        self._kinds: dict[int, str] = {}  # of all events so far, withdrawn or not
        self._kept: dict[str, list[Event[Any]]] = {kind: [] for kind in KINDS}
        self._table: dict[str, Any] = {}
        self._brief = Brief()
        self._runs: list[Event[events.Run]] = []
        self._use: dict[int, events.Use] = {}
        self._on: dict[int, list[OnRotor]] = {}
        self._unknown: list[Event[Any]] = []
        self._problems: list[tuple[int, str]] = []
        self._closed = False

    def take(self, event: Event[Any]) -> None:
        """Take the next event."""
        known = event.kind in KINDS
        try:
            self._check_refers(event)
            if event.id not in self._withdrawn:
                if known:
                    if self._closed and event.kind not in _AFTER_CLOSING:
                        raise _UnfitError("the job is closed; reopen it first")
                    getattr(self, f"_take_{event.kind}", self._keep)(event)
                else:
                    self._unknown.append(event)
                    self._problems.append(
                        (
                            event.id,
                            f"{shown(event.kind)!r} is a kind this program does not know; it is kept and left out",
                        )
                    )
        except _UnfitError as error:
            self._problems.append((event.id, f"{event.kind}: {error}"))
        self._kinds[event.id] = event.kind

    def _keep(self, event: Event[Any]) -> None:
        self._kept[event.kind].append(event)

    def _check_refers(self, event: Event[Any]) -> None:
        """Raise _UnfitError where an event refers to one that was not there, or not of that kind."""
        match event.what:
            case events.Withdrawn(of=of) | events.Decision(about=int(of)) | events.Photo(about=int(of)):
                self._need(of, None)
            case events.Use(of=of):
                self._need(of, "run")
            case events.Check(evidence=int(of)):
                self._need(of, "measured")
            case events.Reference(of=int(of)):
                self._need(of, "reference")
            case events.Mass(of=int(of)):
                self._need(of, "mass")
            case events.Plan(inputs=inputs):
                for of in inputs:
                    self._need(of, "run")
        if isinstance(event.what, events.Withdrawn) and self._kinds[event.what.of] == "started":
            raise _UnfitError("the beginning of the job cannot be withdrawn; begin a new job")

    def _need(self, of: int, kind: str | None) -> None:
        there = self._kinds.get(of)
        if there is None:
            raise _UnfitError(f"there is no entry {of} before it")
        if kind is not None and there != kind:
            raise _UnfitError(f"entry {of} is a {shown(there, 40)}, not a {kind}")

    def _take_started(self, event: Event[events.Started]) -> None:
        if self._kept["started"]:
            raise _UnfitError("the job was begun before")
        self._keep(event)

    def _take_brief(self, event: Event[events.BriefPatch]) -> None:
        table = merged(self._table, event.what.patch)
        try:
            self._brief = brief_from(table)
        except tables.TableError as error:
            raise _UnfitError(shown(error, 300)) from None
        self._table = table

    def _take_run(self, event: Event[events.Run]) -> None:
        if any(r.what.name == event.what.name for r in self._runs):
            raise _UnfitError(f"there is a run {shown(event.what.name)!r} already; give it another name")
        self._runs.append(event)

    def _take_use(self, event: Event[events.Use]) -> None:
        self._use[event.what.of] = event.what

    def _take_mass(self, event: Event[events.Mass]) -> None:
        mass = event.what
        if mass.of is not None and not self._on.get(mass.of):
            raise _UnfitError(f"none of the pieces of entry {mass.of} is on the rotor")
        if mass.act == "taken off" and mass.of is not None:
            there = {on.number for on in self._on[mass.of]}
            if not set(mass.numbers) <= there:
                raise _UnfitError(f"entry {mass.of} has the pieces {sorted(there)} on the rotor, not {mass.numbers}")
            gone = set(mass.numbers) or there
            self._on[mass.of] = [on for on in self._on[mass.of] if on.number not in gone]
        else:
            if mass.of is not None:
                self._on[mass.of] = []
            self._on[event.id] = [OnRotor(event.id, n, piece) for n, piece in enumerate(mass.pieces, start=1)]
        self._keep(event)

    def _take_reference(self, event: Event[events.Reference]) -> None:
        if event.what.of is not None and event.what.turn_deg is None:
            raise _UnfitError("turn_deg: is what it is to say of the earlier change; give it")
        self._keep(event)

    def _take_closed(self, event: Event[events.Closed]) -> None:
        self._closed = True

    def _take_reopened(self, event: Event[events.Reopened]) -> None:
        self._closed = False

    def _take_withdrawn(self, event: Event[events.Withdrawn]) -> None:
        """Counted before."""

    def _job_run(self, event: Event[events.Run], changes: list[_Change]) -> JobRun:
        run, use = event.what, self._use.get(event.id)
        reasons = list(run.reasons)
        if event.altered:
            reasons.append(f"line {event.line} of the record is not as it was written")
        counts = (run.trusted or bool(run.used_anyway)) and not event.altered
        if use is not None:
            counts = use.use
            reasons += [] if use.use else [f"left out: {use.why}"]
        turn_deg, angle_turn_deg, epoch = {v.point: 0.0 for v in run.vectors}, 0.0, 0
        for change in changes:
            if change.id > event.id:
                break
            if change.turn_deg is None:
                epoch += 1
                continue
            angle_turn_deg += change.angle_turn_deg
            for point in change.points or turn_deg:
                if point in turn_deg:
                    turn_deg[point] += change.turn_deg
        return JobRun(event, counts, tuple(reasons), turn_deg, angle_turn_deg, epoch)

    def _changes(self) -> list[_Change]:
        """Changes of reference in their order, with what became known of them later."""
        recorded: list[Event[events.Reference]] = self._kept["reference"]
        known = {r.what.of: r.what for r in recorded if r.what.of is not None}
        changes = []
        for event in recorded:
            if event.what.of is None:
                what = known.get(event.id, event.what)
                points = tuple(what.points or event.what.points)
                changes.append(_Change(event.id, what.turn_deg, what.angle_turn_deg, points))
        return changes

    def state(self) -> JobState:
        """The state so far."""
        changes = self._changes()
        kept = self._kept
        started = kept["started"][0] if kept["started"] else None
        head = JobState() if started is None else JobState(started.what.name, started.at, started.what.program)
        return replace(
            head,
            brief=self._brief,
            hookup=kept["hookup"][-1].what.table if kept["hookup"] else None,
            checks={e.what.item: e for e in kept["check"]},
            measured=tuple(kept["measured"]),
            runs=tuple(self._job_run(e, changes) for e in self._runs),
            masses=tuple(kept["mass"]),
            on_rotor=tuple(on for pieces in self._on.values() for on in pieces),
            plans=tuple(kept["plan"]),
            photos=tuple(kept["photo"]),
            decisions=tuple(kept["decision"]),
            cautions=tuple(kept["caution"]),
            references=tuple(kept["reference"]),
            starts=tuple(kept["start"]),
            alarms=tuple(kept["alarm"]),
            verdicts=tuple(kept["verdict"]),
            reports=tuple(kept["report"]),
            closed=self._closed,
            unknown=tuple(self._unknown),
            problems=tuple(self._problems),
        )


def withdrawals(recorded: Sequence[Event[Any]]) -> dict[int, int]:
    """Ids of the events that are withdrawn, each with the id of the event that withdraws it.

    A withdrawal that is withdrawn itself does not count.
    """
    kinds = {event.id: event.kind for event in recorded}
    found: dict[int, int] = {}
    for event in reversed(recorded):
        if not isinstance(event.what, events.Withdrawn) or event.id in found:
            continue
        if event.what.of < event.id and kinds.get(event.what.of, "started") != "started":
            found[event.what.of] = event.id
    return found


def fold(recorded: Iterable[Event[Any]]) -> JobState:
    """The state after these events, in their order. Never raises: what does not fit stands in `problems`."""
    return _folded(list(recorded)).state()


def _folded(recorded: Sequence[Event[Any]]) -> _Fold:
    growing = _Fold(frozenset(withdrawals(recorded)))
    for event in recorded:
        growing.take(event)
    return growing


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
        self._growing = _folded(self._events)
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
            self._growing = _folded(self._events)
            raise
        self._events.append(event)
        self._state = state
        for listener in list(self.changed):
            listener()
        return event

    def _state_with(self, event: Event[Any]) -> JobState:
        """The state with one more event. Raises RecordError where it does not fit."""
        if event.kind == "withdrawn":  # what it withdraws may lie far back
            self._growing = _folded([*self._events, event])
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
    at = datetime.now(UTC).isoformat(timespec="milliseconds")
    return {"format": FORMAT, "id": number, "kind": kind, "at": at, "by": by, **fields}


def _event_of(table: dict[str, Any], number: int) -> Event[Any]:
    """The event as it will be read from the file. Raises RecordError."""
    try:
        return event_from(drafted(table, number))
    except RecordError as error:
        raise RecordError(
            str(error).removeprefix(f"line {number} ").replace(f"({table['kind']})", table["kind"], 1)
        ) from None
