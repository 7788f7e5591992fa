"""Where a job stands: the fold of its events.

`fold` is pure: the same events give the same state. An event that does not fit what came before it is left out and named;
the same rule refuses it when it is to be appended.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from stillshaft.dsp import tables
from stillshaft.dsp.units import shown
from stillshaft.solver import events
from stillshaft.solver.brief import Brief, brief_from, merged
from stillshaft.solver.events import KINDS, Event

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


class Fold:
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
    return folded(list(recorded)).state()


def folded(recorded: Sequence[Event[Any]]) -> Fold:
    """The fold of these events, which can take more."""
    growing = Fold(frozenset(withdrawals(recorded)))
    for event in recorded:
        growing.take(event)
    return growing
