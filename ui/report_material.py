"""What a report is made of: the job's state and what is worked out from it, gathered before anything is laid out."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from importlib import metadata
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
from stillshaft.dsp import units
from stillshaft.solver import run_vectors
from stillshaft.solver.events import Event
from stillshaft.solver.folder import RecordError
from stillshaft.solver.job import Entry, Job
from stillshaft.solver.runs import RunsError
from stillshaft.solver.state import JobRun, JobState
from stillshaft.ui import report_photos
from stillshaft.ui.desktop.face import CLOCKWISE, COUNTER_CLOCKWISE, Face, Sensor
from stillshaft.ui.desktop.face import positions as spread
from stillshaft.ui.report_photos import Shown
from stillshaft.ui.report_pictures import Ribbon
from stillshaft.ui.report_words import Units

if TYPE_CHECKING:
    from stillshaft.acquire.hookup import Hookup
    from stillshaft.solver.brief import Plane
    from stillshaft.solver.runs import Runs

_NO_BALANCING = {"initial", "repeat", "trial", "slow roll", "re-reference"}
Progress = Callable[[float, str], None]


@dataclass(frozen=True)
class Material:
    """Everything that a report says.

    `first` and `last` are the runs before and after balancing. `solved` are the counting runs as the solver reads them, None
    with `unsolved` saying why. `standing` are figures as of `tolerance --json`, and `stands_by` says where they are from, or
    why there are none. `repeatability` is percent and degrees from run to run, `repeatability_assumed` why it is assumed
    where the brief states none. `ribbons` are by name of the runs that count, or say why there is none. `doubts` are what is
    wrong with files, by the id of the event that names them.
    """

    folder: str
    state: JobState
    events: tuple[Event[Any], ...]
    history: tuple[Entry, ...]
    problems: tuple[str, ...]
    units: Units
    program: str
    made_at: str
    first: JobRun | None
    last: JobRun | None
    solved: Runs | None
    unsolved: str
    repeatability: tuple[float, float]
    repeatability_assumed: str | None
    standing: dict[str, Any] | None
    stands_by: str
    ribbons: tuple[tuple[str, tuple[Ribbon, ...] | str], ...]
    doubts: dict[int, tuple[str, ...]]
    photos: tuple[Shown, ...]

    @property
    def speed_rpm(self) -> float | None:
        """The highest speed that forces are told at: of all runs, and the rotor's own."""
        own = self.state.brief.rotor.speed_rpm
        speeds = [r.what.speed_rpm for r in self.state.runs] + ([own] if own is not None else [])
        return max(speeds, default=None)

    def number_of(self, run: JobRun) -> int:
        """A run's number in the report."""
        return self.state.runs.index(run) + 1


def gather(job: Job, family: Units, progress: Progress | None = None) -> Material:
    """Read what the job's folder holds. What cannot be read or worked out is said in the report, and is no error."""
    tell = progress or (lambda share, text: None)
    state = job.state
    counting = [r for r in state.runs if r.counts]
    first = next((r for r in counting if r.what.purpose == "initial"), counting[0] if counting else None)
    last = next((r for r in reversed(counting) if r is not first and r.what.purpose not in _NO_BALANCING), None)
    solved, unsolved = _solver_runs(state)
    standing, stands_by = _standing(state, solved, unsolved)
    assumed = run_vectors.assumed_repeatability(state)
    tell(0.0, "checking the files")
    return Material(
        folder=job.folder.resolve().name,
        state=state,
        events=job.events,
        history=job.history,
        problems=tuple(p.replace(f"{job.folder}/", "") for p in job.problems),
        units=family,
        program=metadata.version("stillshaft"),
        made_at=datetime.now(UTC).isoformat(timespec="seconds"),
        first=first,
        last=last,
        solved=solved,
        unsolved=unsolved,
        repeatability=run_vectors.repeatability(state),
        repeatability_assumed=None if assumed is None else assumed.why,
        standing=standing,
        stands_by=stands_by,
        ribbons=tuple(
            (run.what.name, _ribbons(job, run, tell) if run in (first, last) else _kept_ribbons(run)) for run in counting
        ),
        doubts=_doubts(job),
        photos=report_photos.gathered(job),
    )  # fmt: skip


def _solver_runs(state: JobState) -> tuple[Runs | None, str]:
    from stillshaft.solver.replay import runs_of
    from stillshaft.solver.runs_file import runs_from_table

    try:
        return runs_from_table(runs_of(state), "job"), ""
    except (RecordError, RunsError, units.UnitError) as error:
        return None, str(error).removeprefix("job: ")


def _standing(state: JobState, solved: Runs | None, unsolved: str) -> tuple[dict[str, Any] | None, str]:
    """Residual unbalance and vibration against the limits: as recorded with the verdict, else worked out now."""
    from stillshaft.solver import limits
    from stillshaft.solver.limit_tables import LimitsError
    from stillshaft.solver.runs import Rotor

    for verdict in reversed(state.verdicts):
        if verdict.what.figures:
            return verdict.what.figures, f"recorded with the verdict, entry {verdict.id}"
    if solved is None:
        return None, unsolved
    rotor = solved.rotor or Rotor("between bearings", None, None, None, None)
    try:
        found = limits.tolerance(state.brief.goal.grade, rotor, solved)
    except (LimitsError, RunsError) as error:
        return None, str(error)
    judged = "" if found.run is None else f' on run "{found.run}"'
    return limits.to_json(
        found, ""
    ), f"worked out for this report{judged}; no such figures were recorded with a verdict"


def _ribbons(job: Job, run: JobRun, tell: Progress) -> tuple[Ribbon, ...] | str:
    """Phase ribbons of a run's recording, or why there are none."""
    from stillshaft.ui import analysis
    from stillshaft.ui.desktop import figures

    if run.what.recording is None:
        return "it has no recording"
    try:
        path = job.file(run.what.recording.path)
        wiring = _wiring(job, path)
        measured = analysis.measure_recording(
            path, wiring, report=lambda share, _: tell(share, f"reading {run.what.recording.path}")  # type: ignore[union-attr]
        )  # fmt: skip
    except (ValueError, OSError) as error:
        if not isinstance(error, OSError) and not type(error).__module__.startswith("stillshaft."):
            raise
        return " ".join(str(error).replace(str(job.folder), "").split()).removeprefix("/")
    return tuple(
        Ribbon(r.name, r.times_s, r.phase_deg, r.fit_times_s, r.fit_deg, r.words) for r in figures.ribbon(measured)
    )


def _kept_ribbons(run: JobRun) -> tuple[Ribbon, ...] | str:
    """Phase ribbons of a run as they were kept with its vectors, or why there are none."""
    found = []
    for vector in run.what.vectors:
        course = (vector.steadiness or {}).get("course")
        course = course if isinstance(course, dict) else {}
        phase = [float(v) for v in course.get("phase_deg", ()) if isinstance(v, int | float)]
        begin_s, end_s = number_in(course, "begin_s"), number_in(course, "end_s")
        if len(phase) > 1 and begin_s is not None and end_s is not None and end_s > begin_s:
            times = np.linspace(begin_s, end_s, len(phase))
            found.append(Ribbon(vector.point, times, np.array(phase), np.empty(0), np.empty(0), vector.verdict or ""))
    if found:
        return tuple(found)
    kept = "the course of its phase was not kept with it; its recording has it"
    return kept if run.what.recording is not None else "it has no recording"


def _wiring(job: Job, recording: Path) -> Hookup:
    """The hook-up that a recording was made with: what it carries, else the job's."""
    from stillshaft.acquire.hookup import hookup_from
    from stillshaft.ui import analysis

    try:
        return analysis.hookup_of(recording, None)
    except analysis.AnalysisError:
        if job.state.hookup is None:
            raise
        return hookup_from(job.state.hookup)


def _doubts(job: Job) -> dict[int, tuple[str, ...]]:
    """What is wrong with files, by the event that names them."""
    from stillshaft.solver.replay import verify_files

    found: dict[int, tuple[str, ...]] = {}
    problems = verify_files(job)
    for event in job.events:
        begins = f"entry {event.id} ({event.kind}): "
        mine = tuple(p.removeprefix(begins) for p in problems if p.startswith(begins))
        if mine:
            found[event.id] = tuple(p.replace(str(job.folder), "the job's folder") for p in mine)
    return found


# tables of the record that hold what another program may have written: nothing in them is taken for granted


def number_in(table: dict[str, Any], key: str) -> float | None:
    """A number of a table, None where there is none."""
    value = table.get(key)
    return float(value) if isinstance(value, int | float) and not isinstance(value, bool) else None


def text_in(table: dict[str, Any], key: str) -> str:
    """A text of a table, empty where there is none; a number as a text."""
    value = table.get(key)
    return value if isinstance(value, str) else "" if value is None else str(value)


def tables_in(table: dict[str, Any], key: str) -> list[dict[str, Any]]:
    """The tables of a list in a table."""
    value = table.get(key)
    return [entry for entry in value if isinstance(entry, dict)] if isinstance(value, list) else []


def texts_in(table: dict[str, Any], key: str) -> list[str]:
    """The texts of a list in a table."""
    value = table.get(key)
    return [str(entry) for entry in value] if isinstance(value, list) else []


def face_of(hookup: dict[str, Any] | None) -> Face | None:
    """The rotor face of a hook-up; None where none says which way the rotor turns.

    What was left out is as in a hook-up file; what cannot be read is not drawn as if it were known.
    """
    rotation = None if hookup is None else hookup.get("rotation", COUNTER_CLOCKWISE)
    pulse = {} if hookup is None else hookup.get("pulse", {})
    if hookup is None or rotation not in (COUNTER_CLOCKWISE, CLOCKWISE) or not isinstance(pulse, dict):
        return None
    pulse_angle_deg = number_in({"angle": 0.0, **pulse}, "angle")
    if pulse_angle_deg is None:
        return None
    sensors = [
        Sensor(text_in(point, "name"), number_in(point, "angle") or 0.0, number)
        for number, point in enumerate(tables_in(hookup, "point"), start=1)
        if text_in(point, "direction") != "axial"
    ]
    return Face(
        str(rotation),
        text_in(hookup, "reference_end") or "drive",
        text_in(hookup, "datum") or "12 o'clock",
        pulse_angle_deg,
        tuple(sensors),
    )


def with_positions(face: Face, plane: Plane | None) -> Face:
    """The face with the positions of a plane."""
    at = () if plane is None else positions_of(plane)
    blocked = tuple(plane.blocked) if plane is not None and at else ()
    return replace(face, kind="hole" if at else None, positions_deg=at, blocked=blocked)


def positions_of(plane: Plane) -> tuple[float, ...]:
    """Rotor angles of a plane's allowed positions, number 1 first."""
    if plane.positions is None:
        return ()
    if isinstance(plane.positions, int):
        return spread(plane.positions, 0.0) if plane.positions > 0 else ()
    return tuple(plane.positions)


def mark_turn_deg(state: JobState, before: int | None = None) -> float:
    """How far the mark was moved up to an entry, or until now: added to a mass's angle it fits the first run's mark."""
    changes: Sequence[Event[Any]] = state.references
    known = {c.what.of: c.what for c in changes if c.what.of is not None}
    own = [c for c in changes if c.what.of is None and (before is None or c.id < before)]
    whats = [known.get(c.id, c.what) for c in own]
    return float(sum(w.angle_turn_deg for w in whats if w.turn_deg is not None))


def unknown_turn(state: JobState) -> bool:
    """True where mark or sensors were changed and nobody knows by how much."""
    known = {c.what.of for c in state.references if c.what.turn_deg is not None}
    return any(c.what.of is None and c.what.turn_deg is None and c.id not in known for c in state.references)
