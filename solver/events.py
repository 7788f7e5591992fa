"""What the lines of a job's record say: one description for each kind of event, format 1.

Every line has `format`, `id` (grows along the file), `kind`, `at` (UTC, ISO 8601) and `by` (who, free text); the other
keys are those of its kind. Masses are in grams, angles in degrees from the mark against rotation, speeds in r/min;
amplitudes in the unit beside them. An event is never changed: a change of mind is one more event.
"""

from __future__ import annotations

import typing
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any, Generic, Literal, TypeVar, get_args

import msgspec
from stillshaft.dsp import tables
from stillshaft.dsp.units import shown
from stillshaft.solver.folder import RecordError, check_inside
from stillshaft.solver.record import Line

_MOST_ID = 10_000_000
_MOST_LIST = 10_000  # entries of a list: points, pieces, texts
_SHA256_DIGITS = 64
Kind = TypeVar("Kind")


class Started(tables.Strict):
    """The job was begun, with this version of the program."""

    name: str
    program: str


class BriefPatch(tables.Strict):
    """A part of the brief, laid over what there was: the event's own keys."""

    patch: dict[str, Any]


class Hookup(tables.Strict):
    """The whole hook-up from now on, as a hook-up file's table."""

    table: dict[str, Any]


class File(tables.Strict):
    """A file in the job's folder and its SHA-256; for a recording that of its event log beside it too."""

    path: str
    sha256: str
    events_sha256: str | None = None


class Check(tables.Strict):
    """An inspection item with its outcome; `note` says why where it was not done. `evidence`: id of a measured event."""

    item: str
    outcome: Literal["fine", "needs attention", "not done"]
    note: str = ""
    photos: list[File] = []
    evidence: int | None = None


class Photo(tables.Strict):
    """A photo; `about` is the id of the event that it belongs to."""

    file: File
    note: str = ""
    about: int | None = None


class Measured(tables.Strict):
    """Evidence that is no run: `what` (sweep, bump, spectrum, signal check, background, …) and its figures."""

    what: str
    figures: dict[str, Any] = {}
    recording: File | None = None
    note: str = ""
    trusted: bool = True
    reasons: list[str] = []


class Vector(tables.Strict):
    """Once-per-rev vibration of a point in the run's unit, 95 % half widths within the run; `phase_deg` is a lag.

    `steadiness` is the object that `vector --json` prints, with `course`: the phase through the record, evenly spaced.
    """

    point: str
    amplitude: float
    phase_deg: float | None = None
    amplitude_ci95: float | None = None
    phase_ci95_deg: float | None = None
    overall: float | None = None
    verdict: str | None = None
    steadiness: dict[str, Any] | None = None


class Covariance(tables.Strict):
    """Of re and im of each point, in the run's unit squared."""

    points: list[str]
    matrix: list[list[float]]
    degrees_of_freedom: float | None = None


class Piece(tables.Strict):
    """A mass on the rotor, metal removed negative; `radius_mm` None: the plane's own."""

    plane: str
    mass_g: float
    angle_deg: float
    radius_mm: float | None = None
    position: int | None = None
    fixing: str | None = None
    mass_sd_g: float | None = None
    angle_sd_deg: float | None = None
    note: str | None = None


class Mark(tables.Strict):
    """How the mark was seen in a run."""

    edge: str
    width_deg: float | None = None


class Run(tables.Strict):
    """A run that was measured: `masses` is all that sat on the rotor beyond its initial state.

    Not `trusted`, it counts only with `used_anyway`, the reason why it is used nevertheless.
    """

    purpose: Literal["initial", "repeat", "trial", "correction", "trim", "check", "slow roll", "re-reference", "other"]
    name: str
    speed_rpm: float
    unit: str
    vectors: list[Vector]
    masses: list[Piece] = []
    covariance: Covariance | None = None
    setup: int | None = None
    conditions: dict[str, float | str] = {}
    minutes_since_start: float | None = None
    duration_s: float | None = None
    revolutions: int | None = None
    recording: File | None = None
    mark: Mark | None = None
    trusted: bool = True
    reasons: list[str] = []
    used_anyway: str | None = None
    note: str = ""


class Mass(tables.Strict):
    """Pieces put on, taken off, or where they really sit.

    "put on" gives `pieces`. "taken off" names the event `of` that put them on, and which of its pieces by `numbers` from 1
    (none: all). "really placed" gives the `pieces` that take the place of those of the event `of`.
    """

    act: Literal["put on", "taken off", "really placed"]
    pieces: list[Piece] = []
    of: int | None = None
    numbers: list[int] = []
    purpose: str | None = None
    photos: list[File] = []
    note: str = ""


class Options(tables.Strict):
    """What was asked of a solve beside its method; None: as the brief says.

    `points` are those that are measured with, `left_out` those of them that do not count, `planes` those that take mass,
    and `parts` static or couple. `assumed_repeatability`, as in a runs file, is what was assumed when it was solved; None
    where one was stated, and in records from before it was kept: then the default of a runs file.
    """

    points: list[str] | None = None
    left_out: list[str] | None = None
    planes: list[str] | None = None
    parts: str | None = None
    repeatability: str | None = None
    assumed_repeatability: str | None = None
    placement: str | None = None
    speed_tolerance: str | None = None


class Plan(tables.Strict):
    """A solve: `inputs` are the ids of its runs, `result` is what `solve --json` prints, `program` the version."""

    method: str
    inputs: list[int]
    result: dict[str, Any]
    options: Options = msgspec.field(default_factory=Options)
    program: str = ""
    note: str = ""


class Decision(tables.Strict):
    """What the person decided and why; `about` is the id of the event that it is about."""

    text: str
    why: str = ""
    about: int | None = None


class Caution(tables.Strict):
    """Cautions that were shown and acknowledged; `who` did."""

    texts: list[str]
    who: str


class Reference(tables.Strict):
    """Mark or sensors are no longer as they were: what `turn_deg` adds to later phases so that they fit the earlier ones.

    `angle_turn_deg` is added to rotor angles of later masses: not 0 where the mark itself moved. `turn_deg` None is an
    unknown turn: later runs are kept apart. `points` are those that are turned, none: all. `of` is the id of an earlier
    change whose turn is known now.
    """

    what: str
    turn_deg: float | None = None
    angle_turn_deg: float = 0.0
    points: list[str] = []
    of: int | None = None
    why: str = ""


Temperature = Literal["cold", "warm", "hot"]
TEMPERATURES: tuple[Temperature, ...] = get_args(Temperature)


class Start(tables.Strict):
    """The machine was started; starts are counted."""

    temperature: Temperature | None = None
    note: str = ""


class Alarm(tables.Strict):
    """A point crossed its abort level while the machine ran: both in `unit`, the stop was called for."""

    point: str
    amplitude: float
    level: float
    unit: str
    note: str = ""


class Verdict(tables.Strict):
    """Where the job stands against its goal; `figures` are those of `tolerance --json`."""

    verdict: Literal["met", "not met", "cannot be told"]
    basis: str
    figures: dict[str, Any] = {}
    accepted_by: str | None = None
    refused_by: str | None = None
    note: str = ""


class Report(tables.Strict):
    """A report was made."""

    file: File
    note: str = ""


class Closed(tables.Strict):
    """The job is closed; only a report or reopening it may follow."""

    note: str = ""


class Reopened(tables.Strict):
    """The job goes on."""

    why: str


class Use(tables.Strict):
    """Whether a run counts from now on, whatever was thought of it before."""

    of: int
    use: bool
    why: str


class Withdrawn(tables.Strict):
    """The event `of` no longer counts; `undo` marks those that undo and redo made."""

    of: int
    why: str
    undo: bool = False


KINDS: dict[str, type[msgspec.Struct]] = {
    "started": Started,
    "brief": BriefPatch,
    "hookup": Hookup,
    "check": Check,
    "photo": Photo,
    "measured": Measured,
    "run": Run,
    "mass": Mass,
    "plan": Plan,
    "decision": Decision,
    "caution": Caution,
    "reference": Reference,
    "start": Start,
    "alarm": Alarm,
    "verdict": Verdict,
    "report": Report,
    "closed": Closed,
    "reopened": Reopened,
    "use": Use,
    "withdrawn": Withdrawn,
}


# fields that hold lists
_LISTS: dict[type, tuple[str, ...]] = {
    described: tuple(f.name for f in msgspec.structs.fields(described) if typing.get_origin(f.type) is list)
    for described in KINDS.values()
}
# texts that may not be empty
_NEEDED: dict[type, tuple[str, ...]] = {
    Started: ("name",),
    Check: ("item",),
    Measured: ("what",),
    Run: ("name",),
    Decision: ("text",),
    Caution: ("who",),
    Reference: ("what",),
    Reopened: ("why",),
    Use: ("why",),
    Withdrawn: ("why",),
}
# where an event names files, and the folder that they lie in
_FILES: dict[type, tuple[str, str]] = {
    Check: ("photos", "photos"),
    Photo: ("file", "photos"),
    Mass: ("photos", "photos"),
    Measured: ("recording", "recordings"),
    Run: ("recording", "recordings"),
    Report: ("file", "reports"),
}


class _Head(msgspec.Struct):
    """What every line begins with; the keys of its kind follow."""

    format: Literal[1]
    id: int
    kind: str
    at: str
    by: str = ""


@dataclass(frozen=True)
class Event(Generic[Kind]):
    """One event: `what` is its description (None for an unknown kind), `fields` the line's own keys as they stand.

    `altered` where the line is not as it was written.
    """

    line: int
    id: int
    kind: str
    at: str
    by: str
    what: Kind
    fields: dict[str, Any]
    altered: bool = False


def event_from(line: Line) -> Event[Any]:
    """The event of a line that could be read. Raises RecordError that names the line and the field."""
    table = line.event or {}
    where = f"line {line.number}"
    try:
        head = tables.checked(table, _Head)
    except tables.TableError as error:
        raise RecordError(f"{where}: {shown(error, 300)}") from None
    if not 1 <= head.id <= _MOST_ID:
        raise RecordError(f"{where}: id: {head.id} must be 1 to {_MOST_ID}")
    if not _is_time(head.at):
        raise RecordError(f"{where}: at: {shown(head.at)!r} is no UTC time such as 2026-11-25T08:30:00.000+00:00")
    fields = {key: value for key, value in table.items() if key not in _Head.__struct_fields__}
    where = f"{where} ({shown(head.kind, 40)})"
    try:
        what = _described(head.kind, fields)
        check(what, where)
    except tables.TableError as error:
        raise RecordError(f"{where}: {shown(error, 300)}") from None
    return Event(line.number, head.id, head.kind, head.at, head.by, what, fields, line.altered)


def _described(kind: str, fields: dict[str, Any]) -> Any:
    if kind not in KINDS:
        return None
    return tables.checked({"patch": fields} if kind == "brief" else fields, KINDS[kind])


def _is_time(text: str) -> bool:
    try:
        return datetime.fromisoformat(text).utcoffset() == timedelta(0)
    except ValueError:
        return False


def check(what: Any, where: str, kind: type | None = None) -> None:
    """Raise RecordError for values that fit their description, one of KINDS, but not their sense."""
    kind = kind or type(what)
    for name in _LISTS.get(kind, ()):
        if len(getattr(what, name)) > _MOST_LIST:
            raise RecordError(f"{where}: {name}: has {len(getattr(what, name))} entries, at most {_MOST_LIST}")
    for file in files_of(what):
        _check_file(file, f"{where}: {_FILES[type(what)][0]}", _FILES[type(what)][1])
    if isinstance(what, Run):
        _check_run(what, where)
        _check_pieces(what.masses, where)
    if isinstance(what, Mass):
        _check_pieces(what.pieces, where)
        _check_mass(what, where)
    if isinstance(what, Check) and what.outcome == "not done" and not what.note.strip():
        raise RecordError(f"{where}: note: a check that was not done needs a reason; write why")
    for name in _NEEDED.get(kind, ()):
        if not getattr(what, name).strip():
            raise RecordError(f"{where}: {name}: is empty")


def files_of(what: Any) -> list[File]:
    """The files of the folder that an event names."""
    if type(what) not in _FILES:
        return []
    found = getattr(what, _FILES[type(what)][0])
    return found if isinstance(found, list) else [found] if isinstance(found, File) else []


def _check_file(file: File, where: str, folder: str) -> None:
    check_inside(file.path, f"{where}.path", folder)
    for digest in (file.sha256, file.events_sha256 or file.sha256):
        if len(digest) != _SHA256_DIGITS or not set(digest) <= set("0123456789abcdef"):
            raise RecordError(f"{where}: {shown(digest)!r} is no SHA-256 in hex")


def _check_run(run: Run, where: str) -> None:
    names = [v.point for v in run.vectors]
    if not names or len(set(names)) < len(names):
        raise RecordError(f"{where}: vectors: must be one or more, each point once; there is {shown(names)}")
    if not run.speed_rpm > 0.0:
        raise RecordError(f"{where}: speed_rpm: {run.speed_rpm:g} must be above 0")
    if any(v.amplitude < 0.0 for v in run.vectors):
        raise RecordError(f"{where}: vectors: an amplitude is below 0")
    if run.covariance is not None:
        size = 2 * len(run.covariance.points)
        if [len(row) for row in run.covariance.matrix] != [size] * size:
            raise RecordError(f"{where}: covariance.matrix: must have two rows and columns for each of its points")


def _check_pieces(pieces: list[Piece], where: str) -> None:
    for piece in pieces:
        if piece.radius_mm is not None and piece.radius_mm <= 0.0:
            raise RecordError(f"{where}: radius_mm: {piece.radius_mm:g} must be above 0")


def _check_mass(mass: Mass, where: str) -> None:
    if (mass.act == "taken off") != (not mass.pieces):
        raise RecordError(f'{where}: pieces: are given to put on or to place; "taken off" names them by of and numbers')
    if (mass.act == "put on") != (mass.of is None):
        raise RecordError(
            f'{where}: of: "{mass.act}" {"needs none" if mass.act == "put on" else "names what was put on"}'
        )
