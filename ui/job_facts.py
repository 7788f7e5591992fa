"""What follows from a job's record: its runs as the solver takes them, correction, tolerance, diagnosis, trial mass."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from stillshaft.dsp import tables, units
from stillshaft.dsp.units import InputError, shown
from stillshaft.solver.state import JobState

if TYPE_CHECKING:
    from stillshaft.solver.correction import Solution
    from stillshaft.solver.diagnosis import Diagnosis
    from stillshaft.solver.limits import Tolerance
    from stillshaft.solver.runs import Rotor, Runs
    from stillshaft.solver.stored import Verdict
    from stillshaft.solver.trial import Trial
    from stillshaft.solver.vibration_limits import Chosen

COEFFICIENTS_NAME = "coefficients.toml"


class FactsError(InputError):
    """Something that cannot be worked out from the record: the message says what is missing."""


@dataclass(frozen=True)
class Worked:
    """What a record tells: `solution_error` and `tolerance_error` say why there is none.

    `stored` is what became of coefficients taken over from an earlier visit, None where none were used. `basis` is all that
    these are worked out from; the diagnosis looks at more.
    """

    solution: Solution | None
    solution_error: str | None
    stored: Verdict | None
    tolerance: Tolerance | None
    tolerance_error: str | None
    diagnosis: Diagnosis | None
    basis: str


def worked(state: JobState, folder: Path, before: Worked | None = None) -> Worked:
    """All of it. What cannot be worked out is None with the reason; nothing is raised for what a record may hold.

    `before` is what was worked out of the same record when it was shorter: most entries change nothing of it.
    """
    from stillshaft.solver import diagnosis
    from stillshaft.ui import job_checks

    basis, found = _basis(state, folder), None
    if any(event.what.figures.get("evidence") for event in state.measured):
        found = diagnosis.diagnose(job_checks.from_record(state))
    if before is not None and before.basis == basis:
        return replace(before, diagnosis=found)
    solution = stored = tolerance = None
    solution_error = tolerance_error = None
    try:
        solution, stored = solved(state, folder)
    except ValueError as error:
        solution_error = _ours(error)
    try:
        tolerance = tolerance_of(state, folder)
    except ValueError as error:
        tolerance_error = _ours(error)
    return Worked(solution, solution_error, stored, tolerance, tolerance_error, found, basis)


def _basis(state: JobState, folder: Path) -> str:
    """Runs, brief, hook-up and coefficients of an earlier visit, as a text to be compared."""
    from stillshaft.solver.replay import runs_of

    try:
        table: Any = runs_of(state) | {"chain": chain_of(state, folder)}
    except ValueError as error:
        table = _ours(error)
    try:
        kept = (folder / COEFFICIENTS_NAME).read_bytes()
    except OSError:
        kept = b""
    return repr((state.name, table, [(r.id, r.counts) for r in state.runs], state.brief, state.hookup, kept))


def _ours(error: ValueError) -> str:
    """The message of an error that input can cause; one that is a fault of the program goes on."""
    if not type(error).__module__.startswith("stillshaft."):
        raise error
    return shown(error, 400)


def runs_for(state: JobState, folder: Path) -> Runs:
    """The runs that count, with what they were measured with. Raises RecordError and RunsError."""
    from stillshaft.solver.replay import runs_of
    from stillshaft.solver.runs_file import runs_from_table

    table = runs_of(state)
    return runs_from_table(table | {"chain": chain_of(state, folder)}, shown(state.name) or "job")


def chain_of(state: JobState, folder: Path) -> dict[str, Any]:
    """Hook-up, device and rate of the newest recording that says so."""
    from stillshaft.acquire.hookup import HookupError, hookup_from

    chain: dict[str, Any] = {}
    try:
        chain["hookup"] = "" if state.hookup is None else hookup_from(state.hookup).fingerprint
    except HookupError:
        chain["hookup"] = ""
    for run in reversed(state.runs):
        if run.what.recording is None:
            continue
        log = (folder / run.what.recording.path).with_suffix(".events.jsonl")
        try:
            first = json.loads(log.read_bytes().partition(b"\n")[0])
            rate_hz, device = float(first.get("rate_hz", 0.0)), first.get("device", "")
        except (OSError, ValueError, AttributeError, TypeError):
            continue
        return chain | {"device": device if isinstance(device, str) else "", "rate_hz": rate_hz}
    return chain


def machine_of(state: JobState) -> str:
    """Name under which coefficients of the machine are stored."""
    return state.brief.machine.name or state.name


def solved(state: JobState, folder: Path) -> tuple[Solution, Verdict | None]:
    """Corrections from the runs alone where they suffice, else with coefficients taken over from an earlier visit.

    Raises the solver's errors, which name the missing run.
    """
    from stillshaft.solver import correction, stored

    runs = runs_for(state, folder)
    path = folder / COEFFICIENTS_NAME
    if stored.enough_alone(runs) or not path.exists():
        return correction.solve(runs), None
    priors, remarks = stored.priors_for(stored.load(path), machine_of(state), runs)
    used, verdict = stored.judged(runs, priors, doubtful=bool(remarks))
    return correction.solve(runs, priors=used), verdict


def rotor_of(state: JobState) -> Rotor:
    """The rotor as the tolerance takes it. Raises UnitError for a mass or length that is none."""
    from stillshaft.solver.runs import Rotor

    said = state.brief.rotor

    def length(name: str) -> float | None:
        text = getattr(said, name)
        return None if text is None else units.parse(text, "mm", f"rotor.{name}")

    mass_kg = None if said.mass is None else units.parse(said.mass, "kg", "rotor.mass")
    speed_rpm = said.speed_rpm or (state.runs[0].what.speed_rpm if state.runs else None)
    return Rotor(said.kind or "between bearings", mass_kg, speed_rpm, length("bearing_span"), length("centre_of_mass"))


def tolerance_of(state: JobState, folder: Path) -> Tolerance | None:
    """Where the rotor stands against the goal of the brief; None where nothing is known to hold it against.

    Raises LimitsError and the solver's errors.
    """
    from stillshaft.solver import limits

    goal = state.brief.goal
    rotor = rotor_of(state)
    chosen = None if goal.table is None else _chosen(goal.table, _supports(state))
    runs = runs_for(state, folder) if any(r.counts for r in state.runs) else None
    if goal.grade is None and rotor.mass_kg is None and chosen is None and not (runs and runs.limits):
        return None
    return limits.tolerance(goal.grade, rotor, runs, vibration=chosen)


def check_goal(patch: Mapping[str, Any]) -> None:
    """Raise FactsError, LimitsError for a grade, a table or a class of a brief's patch that there is not."""
    from stillshaft.solver import limits, vibration_limits
    from stillshaft.solver.limit_tables import LimitsError

    said = patch.get("goal")
    goal = said if isinstance(said, Mapping) else {}
    try:
        if isinstance(grade := goal.get("grade"), str):
            limits.check_grade(grade)
        if isinstance(table := goal.get("table"), str):
            chosen = _chosen(table, {})
            vibration_limits.of_class(chosen.table, chosen.class_name)
    except LimitsError as error:
        raise FactsError(f"goal, {error}") from None


def _chosen(text: str, supports: dict[str | None, str | float]) -> Chosen:
    """The vibration table of the goal, such as "ISO 14694, BV-3", with the supports of the brief."""
    from stillshaft.solver import limit_tables
    from stillshaft.solver.vibration_limits import Chosen

    name, _, class_name = text.partition(",")
    built_in = [t.name for t in limit_tables.built_in() if isinstance(t, limit_tables.VibrationTable)]
    there = f"there is {', '.join(built_in)}, with a class behind a comma, or a file of your own"
    known = name.strip().lower() in [n.lower() for n in built_in] or Path(name.strip()).is_file()
    table = limit_tables.named(name) if known else None
    if not isinstance(table, limit_tables.VibrationTable):
        raise FactsError(f'goal.table: "{shown(name.strip())}" is no table of vibration limits; {there}')
    return Chosen(table, class_name.strip() or None, supports)


def _supports(state: JobState) -> dict[str | None, str | float]:
    """Rigid or flexible by point, from the support class of its direction."""
    from stillshaft.acquire.hookup import HookupError, hookup_from

    try:
        points = () if state.hookup is None else hookup_from(state.hookup).points
    except HookupError:
        points = ()
    found: dict[str | None, str | float] = {}
    for point in points:
        across = abs(point.angle_deg % 180.0 - 90.0) < 45.0
        direction = "axial" if point.direction == "axial" else "horizontal" if across else "vertical"
        said = getattr(state.brief.supports, direction)
        if said in ("rigid", "flexible"):
            found[point.name] = said
    return found


def trial_for(state: JobState, folder: Path, plane: str) -> Trial:
    """A trial mass for a plane: by coefficients of an earlier visit or of the runs so far, else by its force.

    Raises TrialError, FactsError for what the brief does not say, and the solver's errors.
    """
    from stillshaft.solver import run_vectors, stored, trial
    from stillshaft.ui.job_masses import plane_named

    entry, rotor = plane_named(plane, state.brief.planes), rotor_of(state)
    wanted = {"rotor.mass": rotor.mass_kg, "rotor.speed_rpm": rotor.speed_rpm, f"planes {plane}.radius": entry.radius}
    if missing := [name for name, value in wanted.items() if value is None]:
        raise FactsError(f"trial mass: the brief does not say {', '.join(missing)}; set it first")
    assert rotor.mass_kg is not None
    assert rotor.speed_rpm is not None
    radius_m = units.parse(str(entry.radius), "m", f'plane "{plane}".radius')
    planes = len(state.brief.planes)
    by_force = trial.trial_mass(
        plane, rotor.mass_kg, radius_m, rotor.speed_rpm, planes=planes, resonance_rpm=run_vectors.near_resonance(state)
    )
    initial = next((r for r in state.runs if r.counts and not r.what.masses), None)
    path = folder / COEFFICIENTS_NAME
    if initial is None or not path.exists():
        return by_force
    runs = runs_for(state, folder)
    try:
        priors, _ = stored.priors_for(stored.load(path), machine_of(state), runs)
    except stored.StoredError:
        return by_force
    weight_n = rotor.mass_kg * units.STANDARD_GRAVITY_M_S2 / max(1, planes)
    return trial.known_trial(
        plane, runs.runs[0].vectors, priors[0].influence[:, [p.name for p in runs.planes].index(plane)], runs.points,
        runs.kg_per_mass_unit, radius_m, rotor.speed_rpm, trial.MOST_FORCE_SHARE * weight_n, abort=_abort(state, runs),
    )  # fmt: skip


def _abort(state: JobState, runs: Runs) -> float | None:
    """The lowest agreed abort level in the unit of the runs; levels of another quantity are passed over."""
    own = units.vibration_unit(runs.vibration_unit, "vibration_unit")
    known = []
    for level in state.brief.abort:
        unit = units.vibration_unit(level.unit, f'abort "{shown(level.point)}".unit')
        if unit.quantity == own.quantity:
            known.append(level.amplitude / unit.per_si_peak * own.per_si_peak)
    return min(known, default=None)


def write_runs_file(state: JobState, folder: Path, path: Path) -> None:
    """Write the runs that count as a runs file, whole or not at all. Raises RecordError and RunsError."""
    import tomli_w
    from stillshaft.solver.replay import runs_of

    table = runs_of(state) | {"chain": chain_of(state, folder)}
    tables.write_whole(path, tomli_w.dumps(table).encode())
