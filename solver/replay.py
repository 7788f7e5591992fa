"""Solving a job's record, and solving it again: what a plan was worked out from must give the same plan."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from importlib import metadata
from typing import Any

import msgspec
import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import measure, units, vectors
from stillshaft.dsp.measure import Measurement
from stillshaft.dsp.units import shown
from stillshaft.solver import correction, run_rules, run_vectors
from stillshaft.solver.brief import Level, runs_head
from stillshaft.solver.events import Event, Options, Piece, Plan, files_of
from stillshaft.solver.folder import RecordError, sha256_of
from stillshaft.solver.job import Job
from stillshaft.solver.runs import RunsError
from stillshaft.solver.runs_file import runs_from_table
from stillshaft.solver.state import JobRun, JobState, fold

_SAME, _NOTHING = 1e-9, 1e-12  # of a number's size; in displayed units or grams
_MOST_OF_A_COURSE = 60  # phases of a run that are kept through its record
_RUNS_KINDS = ("initial", "trial", "correction", "trim", "check", "slow roll")
_PAIRS = (("amplitude", "phase_deg"), ("mass", "angle_deg"), ("amplitude", "angle_deg"))


def run_fields(measured: Measurement) -> dict[str, Any]:
    """What a measurement says, as the keys of a "run" event; purpose, name, masses and recording come beside them."""
    told: dict[str, Any] = measure.to_json(measured)
    for point, seen in zip(told["points"], measured.points, strict=True):
        point["steadiness"] = {**point["steadiness"], "course": _course(measured.times_s, seen.blocks, seen.z)}
    named = {"name": "point", "unit": None, "revolutions": None}
    covariance = told["covariance"]
    return {
        "speed_rpm": measured.speed.mean_rpm,
        "unit": measured.unit,
        "vectors": [
            {named.get(key, key): value for key, value in point.items() if named.get(key, key) is not None}
            | {"verdict": point["steadiness"]["verdict"]}
            for point in told["points"]
        ],
        "covariance": {
            "points": [p.name for p in measured.points],
            "matrix": covariance["matrix"],
            "degrees_of_freedom": float(measured.degrees_of_freedom),
        },
        "duration_s": measured.duration_s,
        "revolutions": min(p.revolutions for p in measured.points),
        "mark": {"edge": measured.edge, "width_deg": 360.0 * measured.mark_share},
        "trusted": measured.trusted,
        "reasons": list(measured.reasons),
    }


def _course(times_s: NDArray[np.float64], blocks: NDArray[np.complex128], z: complex) -> dict[str, Any] | None:
    """The phase through the record, degrees from the mean, thinned by means of as many vectors; None without a phase."""
    if not z or times_s.size < 2:
        return None
    together = -(-times_s.size // _MOST_OF_A_COURSE)
    whole = times_s.size // together * together
    phase_deg = np.degrees(np.angle(blocks[:whole].reshape(-1, together).mean(axis=1) / z))
    middles = times_s[:whole].reshape(-1, together).mean(axis=1)
    return {
        "begin_s": round(float(middles[0]), 2),
        "end_s": round(float(middles[-1]), 2),
        "phase_deg": [round(float(p), 2) + 0.0 for p in phase_deg],
    }


def chosen(state: JobState, inputs: Sequence[int] | None = None) -> tuple[JobRun, ...]:
    """The runs to solve with: those named by id, else all that count since the last unknown change of reference.

    Raises RecordError for one that is not there or does not count, or where an unknown turn lies between them.
    """
    if inputs is None:
        counting = [r for r in state.runs if r.counts]
        return tuple(r for r in counting if r.epoch == counting[-1].epoch)
    by_id = {r.id: r for r in state.runs}
    for number in inputs:
        if number not in by_id:
            raise RecordError(f"run {number}: is not there, or was withdrawn")
        if not by_id[number].counts:
            why = "; ".join(by_id[number].reasons) or "it was left out"
            raise RecordError(
                f'run "{shown(by_id[number].what.name)}": does not count ({shown(why, 200)}); '
                "record why it is used anyway, or leave it out"
            )
    runs = tuple(by_id[number] for number in inputs)
    for run in runs[1:]:
        if run.epoch != runs[0].epoch:
            raise RecordError(
                f'runs "{shown(runs[0].what.name)}" and "{shown(run.what.name)}": between them mark or sensors changed by an '
                "unknown turn; repeat a run in a mass state already measured, and record the turn it shows"
            )
    return runs


def runs_of(state: JobState, inputs: Sequence[int] | None = None, options: Options | None = None) -> dict[str, Any]:
    """The table of a runs file (conventions.md) with these runs, all in the first one's unit and reference.

    `inputs` are ids of runs (None: see `chosen`). `options` None: nothing is asked, and what is usual for the machine is
    assumed of its repeatability; else that of the options. Raises RecordError for runs that cannot be put together.
    """
    options = assuming(state) if options is None else options
    runs = chosen(state, inputs)
    if not runs:
        raise RecordError("run: there is none that counts; take an initial run and a trial run for each plane")
    unit = units.vibration_unit(runs[0].what.unit, "unit")
    points = options.points or [v.point for v in runs[0].what.vectors]
    limits = [_limit(level, unit, runs[0].what.speed_rpm) for level in state.brief.limits if level.point in points]
    given = {
        key: value
        for key in ("repeatability", "assumed_repeatability", "placement", "speed_tolerance")
        if (value := getattr(options, key)) is not None
    }
    described = _points_of(state.hookup, points)
    return {
        "format": 1,
        "vibration_unit": unit.text,
        "mass_unit": "g",
        **runs_head(state.brief),
        **given,
        **({"point": described} if described else {}),
        **({"limit": limits} if limits else {}),
        "run": [_run_table(run, unit, points) | _initial_state(state, run) for run in runs],
    }


def assuming(state: JobState, options: Options | None = None) -> Options:
    """The options with what is to be assumed of the repeatability now, where neither they nor the brief state one."""
    options = options or Options()
    assumed = run_vectors.assumed_repeatability(state)
    if assumed is None or options.repeatability is not None or options.assumed_repeatability is not None:
        return options
    return msgspec.structs.replace(options, assumed_repeatability=f"{assumed.text}: {assumed.why}")


def _limit(level: Level, unit: units.VibrationUnit, speed_rpm: float) -> dict[str, Any]:
    own = units.vibration_unit(level.unit, f'limit "{shown(level.point)}".unit')
    turned = abs(vectors.quantity_factor(own.quantity, unit.quantity, speed_rpm / 60.0))
    return {"point": level.point, "amplitude": level.amplitude / own.per_si_peak * turned * unit.per_si_peak}


def _points_of(hookup: dict[str, Any] | None, points: Sequence[str]) -> list[dict[str, Any]]:
    listed = (hookup or {}).get("point")
    keys = ("name", "angle", "quantity", "direction")
    return [
        {key: entry[key] for key in keys if key in entry}
        for entry in (listed if isinstance(listed, list) else [])
        if isinstance(entry, dict) and entry.get("name") in points
    ]


def _run_table(run: JobRun, unit: units.VibrationUnit, points: Sequence[str]) -> dict[str, Any]:
    what, own = run.what, units.vibration_unit(run.what.unit, f'run "{shown(run.what.name)}".unit')
    if own.quantity != unit.quantity:
        raise RecordError(
            f'run "{shown(what.name)}": is in {own.text}, but others are in {unit.text}; measure its recording again in one unit'
        )
    factor = 1.0 if own.per_si_peak == unit.per_si_peak else unit.per_si_peak / own.per_si_peak
    by_point = {v.point: v for v in what.vectors}
    table: dict[str, Any] = {"name": what.name, "speed_rpm": what.speed_rpm, "vectors": {}}
    for point in points:
        if point not in by_point:
            raise RecordError(f'run "{shown(what.name)}": has no point "{shown(point)}"; solve without that point')
        vector = by_point[point]
        told = table["vectors"][point] = {"amplitude": factor * vector.amplitude}
        if vector.phase_deg is not None:
            told["phase"] = vector.phase_deg + run.turn_deg[point]
    if what.purpose in _RUNS_KINDS:
        table["kind"] = what.purpose
    if what.setup is not None:
        table["setup"] = what.setup
    if what.covariance is not None:
        table["covariance"] = _covariance_table(run, factor, points)
    for piece in what.masses:
        table.setdefault("masses", {}).setdefault(piece.plane, []).append(_piece_table(piece, run.angle_turn_deg))
    return table


def _initial_state(state: JobState, run: JobRun) -> dict[str, int]:
    """Which initial state a run belongs to, where the rotor was cleaned or mended since the first."""
    before = sum(1 for decision in run_rules.new_initial_states(state) if (decision.what.about or 0) < run.id)
    return {"initial_state": 1 + before} if before else {}


def _covariance_table(run: JobRun, factor: float, points: Sequence[str]) -> dict[str, Any]:
    given = run.what.covariance
    assert given is not None
    missing = [p for p in points if p not in given.points]
    if missing:
        raise RecordError(f'run "{shown(run.what.name)}".covariance: lacks {shown(missing)}')
    matrix = np.array(given.matrix, dtype=np.float64)
    rows = [2 * given.points.index(p) + part for p in points for part in (0, 1)]
    turns = np.array([run.turn_deg[p] for p in points])
    picked = matrix[np.ix_(rows, rows)]
    if factor != 1.0 or np.any(turns):
        picked = vectors.rotated_covariance(picked, factor * np.exp(1j * np.deg2rad(turns)))
        picked = 0.5 * (picked + picked.T)
    table: dict[str, Any] = {"points": list(points), "matrix": picked.tolist()}
    if given.degrees_of_freedom is not None:
        table["degrees_of_freedom"] = given.degrees_of_freedom
    return table


def _piece_table(piece: Piece, turn_deg: float) -> dict[str, Any]:
    table: dict[str, Any] = {"mass": piece.mass_g, "angle": piece.angle_deg + turn_deg}
    if piece.radius_mm is not None:
        table["radius"] = f"{piece.radius_mm!r} mm"
    more = {"position": piece.position, "mass_sd": piece.mass_sd_g, "angle_sd": piece.angle_sd_deg}
    return table | {key: value for key, value in more.items() if value is not None}


def solved(
    state: JobState, inputs: Sequence[int] | None = None, method: str = "auto", options: Options | None = None
) -> tuple[dict[str, Any], correction.Solution]:
    """Solve and return the keys of the "plan" event that records it, and the solution.

    Raises RecordError, and the solver's RunsError and SolveError.
    """
    numbers, options = [run.id for run in chosen(state, inputs)], assuming(state, options)
    found = _solution(state, numbers, method, options)
    return {
        "method": method,
        "inputs": numbers,
        "options": {k: v for k, v in msgspec.to_builtins(options).items() if v is not None},
        "program": metadata.version("stillshaft"),
        "result": _told(found),
    }, found


def wanted(method: str, options: Options | None) -> correction.Wanted:
    """The way to correct that was asked for, as the solver takes it."""
    asked = options or Options()
    return correction.Wanted(method, tuple(asked.planes or ()), tuple(asked.left_out or ()), asked.parts or "all")


def _solution(state: JobState, inputs: Sequence[int], method: str, options: Options) -> correction.Solution:
    runs = runs_from_table(runs_of(state, inputs, options), shown(state.name) or "job")
    return correction.solve(runs, wanted(method, options))


def _told(solution: correction.Solution) -> dict[str, Any]:
    return {key: value for key, value in correction.to_json(solution, "").items() if key != "version"}


@dataclass(frozen=True)
class Replayed:
    """A plan solved again: `differences` say in words what is not as it was, none where all is."""

    plan: Event[Plan]
    differences: tuple[str, ...]


def replay(job: Job) -> tuple[Replayed, ...]:
    """Solve every plan again from the record as it stood then; a number may differ by 1e-9 of its size."""
    gone = {event.id for event in job.state.plans}
    replayed = []
    for number, event in enumerate(job.events):
        if event.id not in gone:
            continue
        plan: Plan = event.what
        try:
            again = _told(_solution(fold(job.events[:number]), plan.inputs, plan.method, plan.options))
        except (RecordError, RunsError, correction.SolveError, units.UnitError) as error:
            replayed.append(Replayed(event, (f"cannot be solved again: {shown(error, 300)}",)))
        else:
            replayed.append(Replayed(event, tuple(shown(text, 300) for text in _differences(plan.result, again, ""))))
    return tuple(replayed)


def _differences(then: Any, now: Any, where: str) -> list[str]:
    """What differs, with its place; amplitudes are compared together with their angles."""
    if isinstance(then, dict) and isinstance(now, dict):
        found = []
        for key in sorted(then.keys() ^ now.keys()):
            found.append(f"{where}{key}: is only in {'the record' if key in then else 'the new solution'}")
        shared = [key for key in then if key in now]
        for size, angle in _PAIRS:
            if size in shared and angle in shared and _are_numbers(then[size], then[angle], now[size], now[angle]):
                apart = vectors.vector(then[size], then[angle]) - vectors.vector(now[size], now[angle])
                if abs(apart) > _NOTHING + _SAME * abs(then[size]):
                    was, is_now = (f"{told[size]:.12g} at {told[angle]:.12g}°" for told in (then, now))
                    found.append(f"{where}{size}: was {was}, is {is_now}")
                shared = [key for key in shared if key not in (size, angle)]
        for key in shared:
            found += _differences(then[key], now[key], f"{where}{key}: ")
        return found
    if isinstance(then, list) and isinstance(now, list):
        if len(then) != len(now):
            return [f"{where}had {len(then)} entries, has {len(now)}"]
        pairs = enumerate(zip(then, now, strict=True), start=1)
        return [text for number, (a, b) in pairs for text in _differences(a, b, f"{where}{number} ")]
    if _are_numbers(then, now):
        return [] if abs(then - now) <= _NOTHING + _SAME * abs(then) else [f"{where}was {then:.12g}, is {now:.12g}"]
    return [] if then == now else [f"{where}was {shown(then)!r}, is {shown(now)!r}"]


def _are_numbers(*values: Any) -> bool:
    return all(isinstance(v, int | float) and not isinstance(v, bool) for v in values)


def verify_files(job: Job) -> tuple[str, ...]:
    """Which recordings, photos and reports are missing or not as they were; read piece by piece."""
    problems = []
    for event in job.events:
        for file in files_of(event.what):
            where = f"entry {event.id} ({event.kind})"
            log = file.path.rpartition(".")[0] + ".events.jsonl"
            for path, digest in ((file.path, file.sha256), (log, file.events_sha256)):
                if digest is None:
                    continue
                try:
                    if sha256_of(job.file(path, where)) != digest:
                        problems.append(
                            f"{where}: {shown(path)} is not as it was when it was recorded (its SHA-256 differs)"
                        )
                except RecordError as error:
                    problems.append(str(error))
    return tuple(problems)
