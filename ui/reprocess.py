"""Recordings of many jobs measured again with today's program, and what that changed against what the jobs recorded.

A recording is measured in a process of its own, here or on a Dask cluster; only paths and options go to it, and only JSON
comes back. What is done is kept in a results file by the hash of the recording, the program and the options: a second
call, or one after an interruption, measures what is not in it.
"""

from __future__ import annotations

import functools
import hashlib
import json
import math
import os
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import asdict, dataclass, replace
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import msgspec
from stillshaft.acquire import hookup as wiring
from stillshaft.acquire.recording import events_path
from stillshaft.dsp import measure, units
from stillshaft.dsp.units import InputError, shown
from stillshaft.solver.folder import FOLDERS, RecordError, put, sha256_of
from stillshaft.solver.job import Job
from stillshaft.solver.record import NAME
from stillshaft.solver.state import JobRun, fold
from stillshaft.ui import analysis, library
from stillshaft.ui.comparison import PointChange, point_changes
from stillshaft.ui.crew import ClusterCrew, CrewError, LocalCrew, gathered, go_on
from stillshaft.ui.library_index import program_of

_HASHING = 0.1  # share of the progress
_MOST_RESULT_BYTES = 2**30

Report = Callable[[float, str], None]


class ReprocessError(InputError):
    """Recordings that cannot be measured again as asked: the message says why and what to do."""


@dataclass(frozen=True)
class Remeasured:
    """A recording measured again. `problem` says why it could not be; then nothing else is known.

    `job`, `run` and `entry` are the job's folder, the run's name and the id of its event, None for a recording by itself.
    `result` is what `vector --json` prints; `reasons` are why not to trust what was recorded, or what is measured now.
    """

    recording: str
    job: str | None
    run: str | None
    entry: int | None
    problem: str | None = None
    trusted_then: bool | None = None
    trusted_now: bool | None = None
    points: tuple[PointChange, ...] = ()
    reasons: tuple[str, ...] = ()
    from_results: bool = False
    result: dict[str, Any] | None = None

    @property
    def intervals(self) -> float:
        """The largest difference of its points in intervals; 0 where none can be told."""
        return max((p.intervals for p in self.points if p.intervals is not None), default=0.0)

    @property
    def verdicts_changed(self) -> bool:
        """True where a point has another verdict, or the whole another trust, than was recorded."""
        return self.trusted_then not in (None, self.trusted_now) or any(
            p.verdict_then is not None and p.verdict_then != p.verdict_now for p in self.points
        )


@dataclass(frozen=True)
class Reprocessed:
    """All recordings, the worst first; `without_recording` runs have none, `results` is the file of what is done."""

    recordings: tuple[Remeasured, ...]
    without_recording: int
    results: str
    order: float

    @property
    def reasons(self) -> tuple[str, ...]:
        """What could not be measured, and what cannot be trusted."""
        return tuple(
            f"{shown(r.recording, 400)}: {text}"
            for r in self.recordings
            for text in (*([r.problem] if r.problem else []), *r.reasons)
        )


@dataclass(frozen=True)
class _Task:
    """A recording to measure, and what the job recorded of it; `problem` where there is nothing to measure."""

    recording: Path
    folder: Path | None = None
    run: JobRun | None = None
    hookup: str = ""  # digest of the job's hook-up at that time; empty: the recording's own
    problem: str | None = None


def default_results() -> Path:
    """Where results are kept unless a file is named."""
    import platformdirs

    return Path(platformdirs.user_cache_dir("stillshaft", appauthor=False)) / "reprocessed.jsonl"


def reprocess(
    paths: Sequence[Path],
    *,
    order: float = 1.0,
    hookup: Path | None = None,
    jobs: int | None = None,
    results: Path | None = None,
    scheduler: str | None = None,
    report: Report | None = None,
) -> Reprocessed:
    """Measure the recordings of jobs, of folders of jobs, and single ones again.

    A run is measured with the hook-up that its job had then, a single recording with its own or `hookup`. `jobs` is how
    many processes work (None: one per processor); `scheduler` the address of a Dask cluster to work instead, which sees
    the same paths. Whatever `report` raises ends the work; what is done is kept. A recording that cannot be measured, or
    is not the one that was recorded, is named in the result. Raises ReprocessError and LibraryError for unusable input.
    """
    if not (math.isfinite(order) and order > 0.0):
        raise ReprocessError(f"order {order}: must be above 0")
    if jobs is not None and jobs < 1:
        raise ReprocessError(f"jobs {jobs}: must be 1 or more")
    own = "" if hookup is None else _digest(wiring.load_hookup(hookup).table)
    tasks, without = _tasks(paths, own)
    if not any(task.problem is None for task in tasks):
        raise ReprocessError(_nothing(paths, tasks, without))
    kept = _Results(default_results() if results is None else results)
    try:
        crew = LocalCrew(min(jobs or os.cpu_count() or 1, len(tasks))) if scheduler is None else ClusterCrew(scheduler)
    except CrewError as error:
        raise ReprocessError(str(error)) from None
    with crew:
        measured = list(_remeasured(tasks, crew, kept, order, hookup, report))
    ranked = sorted(measured, key=lambda r: (r.problem is None, not r.verdicts_changed, -r.intervals, r.recording))
    ranked.sort(key=lambda r: (r.problem is None, r.intervals <= 1.0 and not r.verdicts_changed))
    return Reprocessed(tuple(ranked), without, str(kept.path), order)


def _nothing(paths: Sequence[Path], tasks: Sequence[_Task], without: int) -> str:
    if tasks:
        more = f" ({len(tasks)} in all)" if len(tasks) > 1 else ""
        return f"{tasks[0].recording}: {tasks[0].problem}{more}; there is nothing else to measure"
    named = shown(", ".join(map(str, paths)), 300) or "no path"
    runs = f", {without} runs without a recording" if without else ""
    return f"{named}: no recording in it{runs}; name jobs, a folder of jobs, or recordings"


# what there is to measure


def _tasks(paths: Iterable[Path], own: str) -> tuple[list[_Task], int]:
    """Each recording once, in the order of the paths, and how many runs have none."""
    found: dict[tuple[Path, int | None], _Task] = {}
    without = 0
    for path in paths:
        if path.is_dir():
            skipped: list[library.Skipped] = []
            for folder, _ in library.find_jobs(path, skipped):
                tasks, runs = _tasks_of_job(folder)
                without += runs
                found |= {(t.recording, t.run.id if t.run else None): t for t in tasks}
            found |= {(Path(s.path), None): _Task(Path(s.path), problem=s.why) for s in skipped if s.doubtful}
        else:
            found |= {(t.recording, t.run.id if t.run else None): t for t in _tasks_of_file(path, own)}
    return list(found.values()), without


def _tasks_of_file(path: Path, own: str) -> list[_Task]:
    """A recording with the runs of its job that name it, else by itself."""
    if not path.is_file():
        return [_Task(path, problem="there is no such file")]
    folder = path.parent.parent
    if path.parent.name == FOLDERS[0] and (folder / NAME).is_file():
        of_job = [task for task in _tasks_of_job(folder)[0] if task.recording.name == path.name]
        if of_job:
            return of_job
    return [_Task(path, hookup=own)]


def _tasks_of_job(folder: Path) -> tuple[list[_Task], int]:
    try:
        with Job.open(folder, read_only=True) as job:
            return _tasks_of_runs(job)
    except RecordError as error:
        return [_Task(folder, problem=shown(str(error).removeprefix(f"{folder}: "), 300))], 0


def _tasks_of_runs(job: Job) -> tuple[list[_Task], int]:
    tasks, without = [], 0
    for run in job.state.runs:
        if run.what.recording is None:
            without += 1
            continue
        try:
            recording = job.file(run.what.recording.path, f"entry {run.id}")
            table = _hookup_then(job, run.id)
            tasks.append(_Task(recording, job.folder, run, "" if table is None else _digest(table)))
        except RecordError as error:
            tasks.append(_Task(job.folder / run.what.recording.path, job.folder, run, problem=shown(error, 300)))
    return tasks, without


def _hookup_then(job: Job, entry: int) -> dict[str, Any] | None:
    """The job's hook-up when an event was recorded."""
    return fold(event for event in job.events if event.id < entry).hookup


def _digest(table: dict[str, Any]) -> str:
    return hashlib.sha256(json.dumps(table, sort_keys=True, default=str).encode()).hexdigest()[:32]


# the work


class _Progress:
    """What was reported last, to be reported again while nothing ends."""

    def __init__(self, report: Report | None) -> None:
        self._report, self._last = report, (0.0, "")

    def now(self, share: float, text: str) -> None:
        self._last = (share, text)
        self.still()

    def still(self) -> None:
        if self._report is not None:
            self._report(*self._last)


def _remeasured(
    tasks: Sequence[_Task],
    crew: LocalCrew | ClusterCrew,
    kept: _Results,
    order: float,
    hookup: Path | None,
    report: Report | None,
) -> Iterator[Remeasured]:
    progress = _Progress(report)
    for task in tasks:
        if task.problem is not None:
            yield _failed(task, task.problem)
    whole = [task for task in tasks if task.problem is None]
    keys: dict[int, str] = {}
    progress.now(0.0, f"looking at {len(whole)} recordings")
    with crew.readers() as readers:
        looked = gathered(readers, hashes, [(str(t.recording),) for t in whole], progress.still)
        for number, (i, answer) in enumerate(looked, start=1):
            problem = answer.get("problem") or _not_as_recorded(whole[i], answer)
            if problem is not None:
                yield _failed(whole[i], problem)
            else:
                keys[i] = _key(answer, whole[i].hookup, order)
            progress.now(_HASHING * number / len(whole), f"{number} of {len(whole)} recordings looked at")
    sharing: dict[str, list[int]] = {}  # copies of a recording are measured once
    for i in sorted(keys):
        sharing.setdefault(keys[i], []).append(i)
    for key in sharing.keys() & kept.done.keys():
        for i in sharing.pop(key):
            yield _compared(whole[i], kept.done[key], order, True)
    measuring, waiting = list(sharing), [whole[alike[0]] for alike in sharing.values()]
    arguments = [_arguments(task, order, hookup) for task in waiting]
    done, total = 0, sum(map(_size, waiting))
    progress.now(_HASHING, f"{len(waiting)} recordings to measure")
    for number, (at, answer) in enumerate(gathered(crew, measured, arguments, progress.still), start=1):
        key = measuring[at]
        problem = None if "result" in answer else str(answer.get("problem"))
        if problem is None and answer.get("program") != _program():
            problem = "was measured by another version of the program; let all workers have this one"
        if problem is None:
            kept.add(key, str(waiting[at].recording), answer["result"])
        for i in sharing[key]:
            yield _compared(whole[i], answer["result"], order, False) if problem is None else _failed(whole[i], problem)
        done += _size(waiting[at])
        share = _HASHING + (1.0 - _HASHING) * done / total
        progress.now(share, f"{number} of {len(waiting)} recordings measured")


def _size(task: _Task) -> int:
    try:
        return task.recording.stat().st_size + 1
    except OSError:
        return 1


def _arguments(task: _Task, order: float, hookup: Path | None) -> tuple[str | int | float | None, ...]:
    """What goes to the process that measures: paths, a number, an option."""
    if task.run is None or not task.hookup:
        return (str(task.recording), None, None, None if task.run or hookup is None else str(hookup), order)
    return (str(task.recording), str(task.folder), task.run.id, None, order)


def _failed(task: _Task, problem: str) -> Remeasured:
    name = None if task.run is None else task.run.what.name
    problem = problem.removeprefix(f"{task.recording}: ")
    folder = None if task.folder is None else str(task.folder)
    return Remeasured(str(task.recording), folder, name, None if task.run is None else task.run.id, problem)


def _not_as_recorded(task: _Task, answer: dict[str, Any]) -> str | None:
    if task.run is None or (file := task.run.what.recording) is None:
        return None
    if answer["sha256"] != file.sha256:
        return "is not as it was when it was recorded (its SHA-256 differs)"
    if file.events_sha256 is not None and answer["events_sha256"] != file.events_sha256:
        return "its event log is missing or not as it was when it was recorded (its SHA-256 differs)"
    return None


def _key(answer: dict[str, Any], hookup: str, order: float) -> str:
    return " ".join((answer["sha256"], answer["events_sha256"] or "-", hookup or "-", f"order={order!r}", _program()))


@functools.cache
def _program() -> str:
    """What measures: the version, and the source of all that takes part."""
    return program_of("dsp", "acquire", "ui/analysis.py")


def hashes(recording: str) -> dict[str, Any]:
    """SHA-256 of a recording and of its event log (None where there is none), or `problem`. Runs in a working process."""
    path = Path(recording)
    try:
        log = events_path(path)
        return {"sha256": sha256_of(path), "events_sha256": sha256_of(log) if log.exists() else None}
    except (RecordError, OSError) as error:
        return {"problem": shown(error, 300)}


def measured(recording: str, folder: str | None, run: int | None, hookup: str | None, order: float) -> dict[str, Any]:
    """`result`, as `vector --json` prints it, or `problem`; and the `program` that measured. Runs in a working process.

    The hook-up is that which the job in `folder` had before its event `run`, else that of the file `hookup`, else the
    recording's own.
    """
    path = Path(recording)
    try:
        if folder is not None and run is not None:
            with Job.open(Path(folder), read_only=True) as job:
                wired = wiring.hookup_from(_hookup_then(job, run) or {})
        else:
            wired = analysis.hookup_of(path, None if hookup is None else Path(hookup))
        found = analysis.measure_recording(path, wired, order, go_on)
    except (ValueError, OSError) as error:
        if not (isinstance(error, OSError) or type(error).__module__.startswith("stillshaft.")):
            raise
        return {"problem": shown(error, 300), "program": _program()}
    told = measure.to_json(found)
    told |= {"trusted": found.trusted, "reasons": list(found.reasons), "unit": found.unit}
    return {"result": told, "program": _program()}


# what changed


def _compared(task: _Task, result: dict[str, Any], order: float, from_results: bool) -> Remeasured:
    base = replace(_failed(task, ""), problem=None, result=result, from_results=from_results)
    base = replace(base, trusted_now=bool(result["trusted"]))
    if task.run is None:
        return replace(base, reasons=tuple(result["reasons"]))
    if order != 1.0:  # a job records the once-per-rev vector alone
        return replace(base, reasons=() if result["trusted"] else tuple(result["reasons"]))
    run = task.run.what
    try:
        points = tuple(point_changes(run, result))
    except units.UnitError as error:
        return replace(
            _failed(task, f"its record cannot be compared: {shown(error, 200)}"), trusted_now=base.trusted_now
        )
    reasons = [f"{shown(p.point)}: {_moved(p)}" for p in points if p.intervals is not None and p.intervals > 1.0]
    reasons += [f"{shown(p.point)}: is not measured any more" for p in points if p.amplitude_now is None]
    if run.trusted and not result["trusted"]:
        reasons += [f"was trusted, now is not: {text}" for text in result["reasons"]]
    return replace(base, trusted_then=run.trusted, points=points, reasons=tuple(reasons))


def _moved(p: PointChange) -> str:
    return f"moved by {p.apart:.3g} {shown(p.unit)}, {p.intervals:.1f} times its interval"


# the results file


class _Line(msgspec.Struct):
    key: str
    result: dict[str, Any]


class _Results:
    """What was measured before, by key. One line of JSON each, appended; a line that cannot be read is measured again."""

    def __init__(self, path: Path) -> None:
        """Raises ReprocessError where the file cannot be read or written."""
        self.path = path
        self.done: dict[str, dict[str, Any]] = {}
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            if path.exists() and not path.is_file():
                raise ReprocessError(f"{path}: is no ordinary file; name another with --results")
            if path.exists() and path.stat().st_size > _MOST_RESULT_BYTES:
                raise ReprocessError(f"{path}: is larger than 1 GiB: move it away, or name another with --results")
            data = path.read_bytes() if path.exists() else b""
            with open(path, "ab"):
                pass
        except OSError as error:
            raise ReprocessError(
                f"{path}: cannot be used for results: {(error.strerror or '').lower()}; name another with --results"
            ) from None
        decoder = msgspec.json.Decoder(_Line)
        read = 0
        for raw in data.split(b"\n"):
            try:
                line = decoder.decode(raw)
                _check_result(line.result)
            except (msgspec.MsgspecError, UnicodeDecodeError, RecursionError, ReprocessError):
                continue
            self.done[line.key] = line.result
            read += 1
        if data.strip() and not read and not data.startswith(b'{"key":"'):
            raise ReprocessError(f"{path}: is no file of results; name another with --results")
        self._torn = bool(data) and not data.endswith(b"\n")

    def add(self, key: str, recording: str, result: dict[str, Any]) -> None:
        """Append a result. Raises ReprocessError; what the file had is kept."""
        at = datetime.now(UTC).isoformat(timespec="seconds")
        told = {"key": key, "at": at, "recording": shown(recording, 1000), "result": result}
        line = json.dumps(told, allow_nan=False).encode() + b"\n"
        try:
            with open(self.path, "ab", buffering=0) as file:
                put(file.fileno(), b"\n" + line if self._torn else line)
        except OSError as error:
            self._torn = True
            raise ReprocessError(
                f"{self.path}: cannot be written: {(error.strerror or '').lower()}; what was measured before is kept"
            ) from None
        self._torn = False
        self.done[key] = result


class _Steadiness(msgspec.Struct):
    verdict: str


class _Point(msgspec.Struct):
    name: str
    amplitude: float
    phase_deg: float
    amplitude_ci95: float | None
    phase_ci95_deg: float | None
    steadiness: _Steadiness


class _Result(msgspec.Struct):
    trusted: bool
    reasons: list[str]
    unit: str
    points: list[_Point]


def _check_result(result: dict[str, Any]) -> None:
    """Raise ReprocessError for a result that lacks what is read from it."""
    try:
        msgspec.convert(result, _Result)
    except msgspec.ValidationError as error:
        raise ReprocessError(f"result: {error}") from None


def to_json(done: Reprocessed) -> dict[str, Any]:
    """The keys of `reprocess --json`."""
    recordings = []
    for r in done.recordings:
        told = asdict(r)
        intervals = r.intervals if any(p.intervals is not None for p in r.points) else None
        recordings.append(told | {"intervals": intervals, "verdicts_changed": r.verdicts_changed})
    return {
        "order": done.order,
        "measured": sum(r.result is not None and not r.from_results for r in done.recordings),
        "from_results": sum(r.from_results for r in done.recordings),
        "failed": sum(r.problem is not None for r in done.recordings),
        "without_recording": done.without_recording,
        "results": done.results,
        "recordings": recordings,
    }
