"""The machines in a folder of jobs: what was measured on each, when, how it stands, and how it went from job to job.

`list_machines` reads a folder, `search` picks from it, `trend` follows one machine. Folders that cannot be read are named
and passed over; links within the folder are named and not followed; names that begin with a dot are left out.
"""

from __future__ import annotations

import contextlib
import gc
import hashlib
import math
import os
import re
import time
import unicodedata
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import asdict, dataclass, replace
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from stillshaft.dsp import units, vectors
from stillshaft.dsp.units import InputError, shown
from stillshaft.solver import stored
from stillshaft.solver.folder import FOLDERS, RecordError
from stillshaft.solver.record import NAME
from stillshaft.ui.library_index import Index, JobShown, PointReadings, Reading

COEFFICIENTS_NAME = "coefficients.toml"
MOST_DEPTH = 8
MOST_FOLDERS = 200_000
_SAME_SPEED = 0.02  # as speed_tolerance of a runs file
_ASSUMED_PERCENT = 2.0  # run-to-run scatter where a brief's cannot be read, as in a runs file
_REPORTED_EVERY = 50

Report = Callable[[float, str], None]


class LibraryError(InputError):
    """A folder of jobs that cannot be listed, or a machine that is not in it: the message says what there is."""


@dataclass(frozen=True)
class Skipped:
    """A folder or file that is not in the list, and why; `doubtful` where a job may be missing from it."""

    path: str
    why: str
    doubtful: bool


@dataclass(frozen=True)
class Coefficients:
    """Influence coefficients known of a machine at one speed: `source` is the job's folder or the file of them."""

    speed_rpm: float
    date: str
    source: str


@dataclass(frozen=True)
class Machine:
    """A machine: its jobs, the oldest first, and what is known of it.

    `named` False: no brief gives a name, and the job's own stands for it. `last` are the newest readings by point.
    `verdict`, `verdict_at` and `closed` are those of the newest job. `remarks` say what to look at.
    """

    name: str
    named: bool
    place: str | None
    serial: str | None
    jobs: tuple[JobShown, ...]
    last: tuple[tuple[str, Reading], ...]
    verdict: str | None
    verdict_at: str | None
    closed: bool | None
    coefficients: tuple[Coefficients, ...]
    remarks: tuple[str, ...]

    @property
    def open_jobs(self) -> int:
        """How many of its jobs are not closed."""
        return sum(not job.closed for job in self.jobs)


@dataclass(frozen=True)
class Library:
    """The machines of a folder by name, what was passed over, and how many jobs the index knew already."""

    folder: str
    machines: tuple[Machine, ...]
    skipped: tuple[Skipped, ...]
    jobs: int
    from_index: int

    @property
    def reasons(self) -> tuple[str, ...]:
        """Why the list may lack something."""
        return tuple(f"{s.path}: {s.why}" for s in self.skipped if s.doubtful)


@dataclass(frozen=True)
class Change:
    """From one reading to another in percent of the first, with its 95 % half width; None, and why, where not told."""

    percent: float | None
    percent_ci95: float | None
    why: str | None


@dataclass(frozen=True)
class TrendRow:
    """A job in a point's trend: its first and last reading in the trend's unit, what it changed, and what happened before.

    `since` is the change from the last reading of the job before it to its first.
    """

    job: str
    folder: str
    first: Reading
    last: Reading
    change: Change
    since: Change | None


@dataclass(frozen=True)
class PointTrend:
    """A point over all jobs of a machine, the oldest first, in the unit of the newest."""

    point: str
    unit: str
    rows: tuple[TrendRow, ...]


def default_index(folder: Path) -> Path:
    """Where the index of a folder is kept."""
    import platformdirs

    name = hashlib.sha256(os.fsencode(os.path.realpath(folder))).hexdigest()[:32]
    return Path(platformdirs.user_cache_dir("stillshaft", appauthor=False)) / "machines" / f"{name}.json"


def list_machines(
    folder: Path, report: Report | None = None, *, index: Path | None = None, coefficients: Path | None = None
) -> Library:
    """The machines of the jobs in a folder, at any depth up to `MOST_DEPTH`.

    `index` is a file that remembers what was read (None: nothing is remembered); the list is the same without it.
    `coefficients` is the file of stored coefficients (None: `coefficients.toml` in the folder, where there is one).
    Raises LibraryError where the folder cannot be read, StoredError for a file of coefficients that cannot be used.
    """
    skipped: list[Skipped] = []
    jobs, now_ns = [], time.time_ns()
    with _collector_paused():
        remembered = Index(index, folder)
        found = list(_walked(folder, skipped, report))
        for number, (path, about) in enumerate(found, start=1):
            if report is not None and (number % _REPORTED_EVERY == 0 or number == len(found)):
                report(number / len(found), f"{number} of {len(found)} jobs")
            try:
                jobs.append(remembered.shown(path, about, now_ns))
            except (RecordError, OSError) as error:
                skipped.append(Skipped(path, _without(str(error), Path(path)), True))
        remembered.save()
    file = folder / COEFFICIENTS_NAME if coefficients is None else coefficients
    kept = stored.load(file)
    if coefficients is not None and not coefficients.exists():
        raise LibraryError(f"{coefficients}: there is no such file; leave --coefficients out, or name the right one")
    jobs = _without_copies(jobs, skipped)
    return Library(str(folder), _machines(jobs, kept, file), tuple(skipped), len(jobs), remembered.used)


@contextlib.contextmanager
def _collector_paused() -> Iterator[None]:
    """Thousands of records make nothing that refers to itself: looking for it again and again takes a tenth of the time."""
    was = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was:
            gc.enable()


def find_jobs(
    folder: Path, skipped: list[Skipped], report: Report | None = None
) -> Iterator[tuple[Path, os.stat_result]]:
    """Folders that hold a record, and what the file system says of it; what is passed over is added to `skipped`.

    Raises LibraryError where the folder itself cannot be read.
    """
    return ((Path(path), about) for path, about in _walked(folder, skipped, report))


def _walked(folder: Path, skipped: list[Skipped], report: Report | None) -> Iterator[tuple[str, os.stat_result]]:
    """The same as plain texts: making thousands of paths takes longer than finding them."""
    waiting, visited = [(str(folder), 0)], 0
    while waiting:
        at, depth = waiting.pop()
        visited += 1
        if visited > MOST_FOLDERS:
            skipped.append(Skipped(str(folder), f"has more than {MOST_FOLDERS} folders: list a part of it", True))
            return
        if report is not None and visited % _REPORTED_EVERY == 0:
            report(0.0, f"{visited} folders")
        try:
            with os.scandir(at) as entries:
                listed = sorted(entries, key=lambda entry: entry.name)
            record = next((entry for entry in listed if entry.name == NAME), None)
            if record is not None:
                yield at, record.stat(follow_symlinks=False)
            inner = [e for e in listed if not e.name.startswith(".") and (record is None or e.name not in FOLDERS)]
            linked = [e for e in inner if e.is_symlink() and e.is_dir()]
            folders = [e for e in inner if e.is_dir(follow_symlinks=False)]
        except OSError as error:
            if depth == 0:
                raise LibraryError(
                    f"{folder}: cannot be read: {(error.strerror or '').lower()}; name a folder"
                ) from None
            skipped.append(Skipped(at, f"cannot be read: {(error.strerror or '').lower()}", True))
            continue
        skipped += [Skipped(e.path, "is a link and is not followed; list the folder itself", False) for e in linked]
        if folders and depth == MOST_DEPTH:
            skipped.append(Skipped(at, f"has folders more than {MOST_DEPTH} deep, which are not looked at", True))
        else:
            within = "" if at == "." else at
            waiting += [(os.path.join(within, e.name), depth + 1) for e in reversed(folders)]


def _without(text: str, path: Path) -> str:
    return shown(text.removeprefix(f"{path / NAME}: ").removeprefix(f"{path}: "), 300)


def _without_copies(jobs: Sequence[JobShown], skipped: list[Skipped]) -> list[JobShown]:
    """The jobs without copies of one: records that begin with the same line; the longest is kept."""
    longest: dict[int, JobShown] = {}
    for job in jobs:
        other = longest.get(job.beginning)
        if other is None:
            longest[job.beginning] = job
            continue
        kept, copy = (job, other) if job.size > other.size else (other, job)
        longest[job.beginning] = kept
        skipped.append(
            Skipped(copy.folder, f"began as the same job as {kept.folder}, which is longer or the same", False)
        )
    return list(longest.values())


def alike(name: str) -> str:
    """A name as it is compared: accents however coded, capitals and spaces do not count."""
    return " ".join(unicodedata.normalize("NFKC", name).casefold().split())


def _machines(jobs: Iterable[JobShown], kept: Sequence[stored.Stored], file: Path) -> tuple[Machine, ...]:
    grouped: dict[tuple[bool, str], list[JobShown]] = {}
    for job in jobs:
        # jobs without a machine are not known to be of one machine, whatever they are called
        key = (False, job.folder) if job.machine is None else (True, alike(job.machine))
        grouped.setdefault(key, []).append(job)
    told: dict[str, list[stored.Stored]] = {}
    for entry in kept:
        told.setdefault(alike(entry.machine), []).append(entry)
        grouped.setdefault((True, alike(entry.machine)), [])
    machines = [_machine(group, told.get(name, []) if named else [], file) for (named, name), group in grouped.items()]
    return tuple(
        sorted(machines, key=lambda m: (_counting(alike(m.name)), not m.named, m.jobs[0].folder if m.jobs else ""))
    )


def _counting(name: str) -> list[tuple[int, str]]:
    """A name to be put in order by: fan 2 comes before fan 10."""
    return [(len(part) * (number % 2), part) for number, part in enumerate(re.split(r"(\d+)", name))]


def _machine(group: list[JobShown], kept: Sequence[stored.Stored], file: Path) -> Machine:
    jobs = tuple(sorted(group, key=lambda job: (moment(job.started_at), job.folder)))
    newest = jobs[-1] if jobs else None
    last: dict[str, Reading] = {}
    for job in jobs:
        for p in job.points:
            before = last.get(p.point)
            if before is None or p.last.at == before.at or moment(p.last.at) >= moment(before.at):
                last[p.point] = p.last
    known = [Coefficients(rpm, j.started_at[:10], j.folder) for j in jobs for rpm in j.coefficients_rpm]
    known += [Coefficients(s.speed_rpm, s.date, str(file)) for s in kept]
    name = kept[0].machine if newest is None else newest.machine or newest.name or Path(newest.folder).name
    return Machine(
        name=name,
        named=newest is None or newest.machine is not None,
        place=_newest(jobs, "place"),
        serial=_newest(jobs, "serial"),
        jobs=jobs,
        last=tuple(last.items()),
        verdict=None if newest is None else newest.verdict,
        verdict_at=None if newest is None else newest.verdict_at,
        closed=None if newest is None else newest.closed,
        coefficients=tuple(known),
        remarks=tuple(_remarks(jobs)),
    )


def _newest(jobs: Sequence[JobShown], field: str) -> str | None:
    return next((value for job in reversed(jobs) if (value := getattr(job, field)) is not None), None)


def _remarks(jobs: Sequence[JobShown]) -> Iterator[str]:
    for field in ("serial", "place"):
        said = {alike(value): value for job in jobs if (value := getattr(job, field)) is not None}
        if len(said) > 1:
            yield f"its jobs give more than one {field} ({', '.join(map(shown, said.values()))}): is it one machine?"
    for job in jobs:
        if job.problems:
            more = f", and {len(job.problems) - 1} more" if len(job.problems) > 1 else ""
            yield f"{job.folder}: {_without(job.problems[0], Path(job.folder))}{more}"


def moment(at: str) -> datetime:
    """A time of a record; one that says nothing is before all others."""
    return datetime.fromisoformat(at) if at else datetime.min.replace(tzinfo=UTC)


def search(library: Library, text: str) -> Library:
    """The machines that have all words of a text in their names, places or notes, or in those of their jobs and runs."""
    words = alike(text).split()

    def told(machine: Machine) -> str:
        return alike("\n".join([machine.name, *(t for job in machine.jobs for t in (job.folder, *job.texts))]))

    return replace(library, machines=tuple(m for m in library.machines if all(w in told(m) for w in words)))


def find_machine(library: Library, name: str) -> Machine:
    """The machine of a name. Raises LibraryError that names those there are."""
    found = [m for m in library.machines if alike(m.name) == alike(name)]
    if len(found) == 1:
        return found[0]
    if found:
        folders = ", ".join(m.jobs[0].folder for m in found if m.jobs)
        raise LibraryError(
            f'machine "{shown(name)}": {len(found)} go by it, because briefs give no machine ({shown(folders, 300)}); '
            "name one job's folder instead of all, or write the machine into the briefs"
        )
    near = [m.name for m in library.machines if alike(name) in alike(m.name)] or [m.name for m in library.machines]
    listed = ", ".join(map(shown, near[:10])) + (", …" if len(near) > 10 else "") if near else "no machine"
    raise LibraryError(f'machine "{shown(name)}": is not in {library.folder}; there is {listed}')


def trend(machine: Machine) -> tuple[PointTrend, ...]:
    """Each point of a machine over all its jobs. Readings that cannot be brought to one unit stay in their own."""
    points: dict[str, list[tuple[JobShown, PointReadings]]] = {}
    for job in machine.jobs:
        for readings in job.points:
            points.setdefault(readings.point, []).append((job, readings))
    return tuple(_point_trend(point, told) for point, told in points.items())


def _point_trend(point: str, told: Sequence[tuple[JobShown, PointReadings]]) -> PointTrend:
    unit = told[-1][1].last.unit
    rows: list[TrendRow] = []
    before: tuple[Reading, float] | None = None
    for job, readings in told:
        first, last = _in_unit(readings.first, unit), _in_unit(readings.last, unit)
        scatter = _scatter_percent(job.repeatability)
        since = None if before is None else change(before[0], first, max(before[1], scatter))
        rows.append(TrendRow(job.name, job.folder, first, last, change(first, last, scatter), since))
        before = (last, scatter)
    return PointTrend(point, unit, tuple(rows))


def _in_unit(reading: Reading, unit: str) -> Reading:
    """A reading in another unit: of another quantity too, because it is at one known frequency.

    The broadband level is at many, and is left out where the quantity changes.
    """
    if reading.unit == unit:
        return reading
    try:
        own, wanted = units.vibration_unit(reading.unit), units.vibration_unit(unit)
    except units.UnitError:
        return reading
    turned = abs(vectors.quantity_factor(own.quantity, wanted.quantity, reading.speed_rpm / 60.0))
    factor = wanted.per_si_peak / own.per_si_peak * turned
    alike_quantity = own.quantity == wanted.quantity
    return replace(
        reading,
        unit=wanted.text,
        amplitude=factor * reading.amplitude,
        amplitude_ci95=None if reading.amplitude_ci95 is None else factor * reading.amplitude_ci95,
        overall=factor * reading.overall if alike_quantity and reading.overall is not None else None,
    )


def _scatter_percent(repeatability: str) -> float:
    """Percent of a job's repeatability, such as "2 % 2 deg"."""
    try:
        percent = float(repeatability.partition("%")[0])
    except ValueError:
        return _ASSUMED_PERCENT
    return percent if math.isfinite(percent) and percent >= 0.0 else _ASSUMED_PERCENT


def change(first: Reading, last: Reading, scatter_percent: float) -> Change:
    """Change of amplitude between two readings, with both intervals and the scatter from run to run.

    To first order, the readings taken as independent. None at speeds more than 2 % apart, in units that differ, or from
    nothing; no interval where a reading has none.
    """
    if first == last:
        return Change(None, None, "one run only")
    if first.unit != last.unit:
        return Change(None, None, f"in {shown(first.unit)} and {shown(last.unit)}")
    if abs(last.speed_rpm / first.speed_rpm - 1.0) > _SAME_SPEED:
        return Change(None, None, f"at {first.speed_rpm:.0f} and {last.speed_rpm:.0f} r/min")
    if not first.amplitude > 0.0:
        return Change(None, None, "the first is 0")
    ratio = last.amplitude / first.amplitude
    if first.amplitude_ci95 is None or last.amplitude_ci95 is None:
        return Change(100.0 * (ratio - 1.0), None, None)
    scatter = 1.959963984540054 * scatter_percent / 100.0
    halves = [math.hypot(r.amplitude_ci95 or 0.0, scatter * r.amplitude) for r in (first, last)]
    half = math.hypot(halves[1], ratio * halves[0]) / first.amplitude
    return Change(100.0 * (ratio - 1.0), 100.0 * half, None)


def to_json(library: Library) -> dict[str, Any]:
    """The keys of `machines --json`."""
    return {
        "folder": library.folder,
        "jobs": library.jobs,
        "machines": [_machine_json(machine) for machine in library.machines],
        "skipped": [asdict(s) for s in library.skipped],
    }


def _machine_json(machine: Machine) -> dict[str, Any]:
    jobs = []
    for job in machine.jobs:
        told = asdict(job)
        for key in ("texts", "beginning", "size"):
            del told[key]
        jobs.append(told)
    return {
        "name": machine.name,
        "named": machine.named,
        "place": machine.place,
        "serial": machine.serial,
        "last": [{"point": point, **asdict(reading)} for point, reading in machine.last],
        "verdict": machine.verdict,
        "verdict_at": machine.verdict_at,
        "state": state_of(machine),
        "open_jobs": machine.open_jobs,
        "coefficients": [asdict(c) for c in machine.coefficients],
        "jobs": jobs,
        "remarks": list(machine.remarks),
    }


def state_of(machine: Machine) -> str | None:
    """State of the newest job: open or closed; None where there is no job."""
    return None if machine.closed is None else "closed" if machine.closed else "open"


def trend_json(machine: Machine) -> dict[str, Any]:
    """The keys of `machines --machine NAME --json`."""
    return {"machine": _machine_json(machine), "trend": [asdict(t) for t in trend(machine)]}
