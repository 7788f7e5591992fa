"""Trial masses and lags from the files of a job: runs, hook-up, stored coefficients."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import numpy as np
from stillshaft.acquire import hookup as wiring
from stillshaft.dsp import units, vectors
from stillshaft.solver import influence, runs, runs_file, stored, trial
from stillshaft.solver.trial import Lag, Trial, TrialError


@dataclass(frozen=True)
class Known:
    """What is known before a trial, beside the rotor: files, a point with its lag, and levels; None where it is not."""

    runs: Path | None = None
    hookup: Path | None = None
    point: str | None = None
    lag_deg: float | None = None
    coefficients: Path | None = None
    machine: str | None = None
    abort: float | None = None


def planned(
    plane: str,
    rotor_mass_kg: float,
    radius_m: float,
    speed_rpm: float,
    *,
    planes: int = 1,
    share: float = trial.FORCE_SHARE,
    heavy_spot_deg: float | None = None,
    resonance_rpm: float | None = None,
    known: Known | None = None,
) -> Trial:
    """A trial mass: by stored coefficients where there are some, else by its force, opposite the heavy spot if known.

    Raises TrialError, and the errors of the files.
    """
    known = known or Known()
    if heavy_spot_deg is None and known.point is not None:
        heavy_spot_deg = heavy_spot_of(known)
    by_force = trial.trial_mass(
        plane, rotor_mass_kg, radius_m, speed_rpm, planes=planes, share=share, heavy_spot_deg=heavy_spot_deg,
        resonance_rpm=resonance_rpm,
    )  # fmt: skip
    if known.coefficients is None:
        return by_force
    if known.runs is None or known.machine is None:
        raise TrialError("stored coefficients: name the machine and a runs file with the initial run")
    read = runs_file.load_runs(known.runs)
    names = [p.name for p in read.planes]
    if plane not in names:
        raise TrialError(f'{known.runs}: has no plane "{plane}"; it has {", ".join(names)}')
    priors, _ = stored.priors_for(stored.load(known.coefficients), known.machine, read)
    first = _initial(read)
    prior = next((p for p in priors if abs(p.speed_rpm / first.speed_rpm - 1.0) <= read.speed_tolerance), priors[0])
    weight_n = rotor_mass_kg * units.STANDARD_GRAVITY_M_S2 / max(1, planes)
    return trial.known_trial(
        plane, first.vectors, prior.influence[:, names.index(plane)], read.points, read.kg_per_mass_unit, radius_m,
        speed_rpm, trial.MOST_FORCE_SHARE * weight_n, abort=known.abort,
    )  # fmt: skip


def _initial(read: runs.Runs) -> runs.Run:
    first = next((run for run in read.runs if not np.any(run.masses)), None)
    if first is None:
        raise TrialError(f"{read.path}: has no initial run without masses; take one")
    return first


def heavy_spot_of(known: Known) -> float:
    """Heavy spot, degrees against rotation from the mark, from the initial run at a point and the lag there.

    Raises TrialError for what is missing.
    """
    if known.runs is None or known.hookup is None or known.lag_deg is None:
        raise TrialError(
            "heavy spot: takes a runs file with the initial run, the hook-up, a point, and the lag that `sweep` or `lag` tells"
        )
    if not 0.0 <= known.lag_deg <= 180.0:
        raise TrialError(f"lag {known.lag_deg:g}: 0 to 180 degrees for a single mode")
    read, wired = runs_file.load_runs(known.runs), wiring.load_hookup(known.hookup)
    if read.amplitudes_only:
        raise TrialError(f"{known.runs}: has amplitudes only; the heavy spot needs a phase")
    place = next((p for p in wired.points if p.name == known.point), None)
    if place is None or known.point not in read.points:
        raise TrialError(f'no point "{known.point}" in both {known.runs} and {known.hookup}')
    if place.direction == "axial":
        raise TrialError(f'point "{known.point}": is axial and gives no high spot; choose a radial one')
    quantity = units.vibration_unit(read.vibration_unit, "vibration_unit").quantity
    _, phase_deg = vectors.amplitude_phase(complex(_initial(read).vectors[read.points.index(known.point)]))
    high_deg = trial.high_spot(phase_deg, quantity, place.angle_deg, wired.pulse.angle_deg)
    return (high_deg - known.lag_deg) % 360.0


def lags_of(runs_path: Path, hookup_path: Path, point: str | None) -> tuple[Lag, ...]:
    """Mechanical lag of each point behind the plane that moves it most, from a runs file and the hook-up's angles.

    Raises TrialError for a point that is not there or has no angle.
    """
    read, wired = runs_file.load_runs(runs_path), wiring.load_hookup(hookup_path)
    if read.amplitudes_only:
        raise TrialError(f"{runs_path}: has amplitudes only; a lag needs phases")
    quantity = units.vibration_unit(read.vibration_unit, "vibration_unit").quantity
    places = {p.name: p for p in wired.points}
    if point is not None and point not in read.points:
        raise TrialError(f'{runs_path}: has no point "{point}"; it has {", ".join(read.points)}')
    found = []
    for fitted in influence.fit(read):
        for number, name in enumerate(read.points):
            if point is not None and name != point:
                continue
            if name not in places:
                raise TrialError(f'{hookup_path}: has no point "{name}", which {runs_path} measures')
            if places[name].direction == "axial":
                continue  # an axial sensor gives no high spot
            plane = int(np.abs(fitted.influence[number]).argmax())
            names = (name, read.planes[plane].name)
            found.append(
                trial.lag_of(fitted, number, plane, names, quantity, places[name].angle_deg, wired.pulse.angle_deg)
            )
    if not found:
        raise TrialError(f"{hookup_path}: no radial point: an axial sensor gives no high spot")
    return tuple(found)
