"""A whole job on the simulated rotor, through the real path: source, process, recording, vectors, masses, verdict.

The scenario is the project's own: a dust-extraction fan between bearings whose blades wore unevenly.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from stillshaft.acquire import hookup as wiring
from stillshaft.acquire import process, simulated
from stillshaft.dsp import vectors
from stillshaft.dsp.measure import Measurement
from stillshaft.solver import correction, limits, trial
from stillshaft.solver.correction import Correction, Solution
from stillshaft.solver.limits import Tolerance
from stillshaft.ui import account, account_html, runs_files
from stillshaft.ui.tolerance import tolerance_of

_SECONDS = 15.0
_GOAL_PERCENT = 10.0
_GRADE = "G6.3"


@dataclass(frozen=True)
class Rehearsal:
    """How the job went: runs and solutions in order, residual of each point in percent of the initial run."""

    folder: Path
    runs: tuple[tuple[str, tuple[runs_files.Placed, ...], Measurement], ...]
    solutions: tuple[tuple[str, Solution], ...]
    tolerance: Tolerance
    residual_percent: dict[str, tuple[float, float | None]]
    trims: int
    reasons: tuple[str, ...]

    @property
    def trusted(self) -> bool:
        """True when no run and no solution was doubted."""
        return not self.reasons

    @property
    def verdict(self) -> str:
        """The end of the job in one sentence."""
        worst, half = max(self.residual_percent.values(), key=lambda r: r[0])
        trims = {0: "no trim", 1: "one trim"}.get(self.trims, f"{self.trims} trims")
        left = account.with_interval(worst, half)
        return (
            f"{self.tolerance.grade}: {self.tolerance.verdict}. "
            f"The worst point is left with {left} % of the initial vibration after {trims}."
        )


def trial_mass_g(rotor: simulated.Rotor, radius_m: float) -> float:
    """Trial mass whose centrifugal force is a tenth of a bearing's static load, to half a gram."""
    mass_kg = trial.trial_mass("", rotor.mass_kg, radius_m, simulated.DEMO_SPEED_RPM, planes=2).mass_kg
    return max(0.5, round(2000.0 * mass_kg) / 2.0)


def new_folder() -> Path:
    """A folder name not used yet, where the program was started."""
    number = 1
    while (folder := Path(f"rehearsal-{number}")).exists():
        number += 1
    return folder


def rehearse(
    folder: Path | None,
    *,
    planes: int,
    seed: int,
    real_time: bool,
    on_progress: Callable[[float, str], None],
    seconds: float = _SECONDS,
) -> Rehearsal:
    """Do the job and leave recordings, runs file and account in the folder. Raises SessionError for one in use."""
    rotor = simulated.demo_rotor(planes)
    hookup = wiring.hookup_from(simulated.demo_hookup())
    job = runs_files.Job(folder or new_folder(), hookup, runs_files.job_planes(rotor), runs_files.job_rotor(rotor))
    hands = simulated.Placing(seed)
    steps = planes + 3
    solutions: list[tuple[str, Solution]] = []

    def run(name: str, masses: Sequence[runs_files.Placed]) -> Measurement:
        number = len(job.runs)

        def forward(share: float, text: str) -> None:
            on_progress((number + share) / steps, f"{name}: {text}")

        order = simulated.demo_run(
            planes,
            [hands.really(m.plane, m.mass_g, m.angle_deg) for m in masses],
            seed=1000 * seed + number,
            real_time=real_time,
        )
        path = job.next_recording()
        names = job.hookup.channel_names(job.hookup.channels)
        process.capture(order, path, seconds, job.hookup.table, names, forward)
        return job.take_run(name, path, masses)

    run("initial", [])
    for plane in rotor.planes:
        run(f"trial {plane.name}", [runs_files.Placed(plane.name, trial_mass_g(rotor, plane.radius_m), 0.0)])
    trims = 0
    on: list[runs_files.Placed] = []
    for title, name in (("correction", "check"), ("trim", "trim")):
        solution = job.solve()
        solutions.append((title, solution))
        # a trim is added to what is on: pieces that stay keep their places
        on += _to_place(solution.additional if on else solution.corrections)
        run(name, on)
        trims += title == "trim"
        result = tolerance_of(job.runs_file, _GRADE)
        if (
            max(v for v, _ in runs_files.residual_percent(job.runs[0].measured, job.runs[-1].measured).values())
            < _GOAL_PERCENT
            and result.verdict == "met"
        ):
            break
    reasons = [f"{r.name}: {reason}" for r in job.runs for reason in r.measured.reasons]
    reasons += [reason for _, solution in solutions for reason in solution.reasons]
    outcome = Rehearsal(
        job.folder,
        tuple((r.name, r.masses, r.measured) for r in job.runs),
        tuple(solutions),
        result,
        runs_files.residual_percent(job.runs[0].measured, job.runs[-1].measured),
        trims,
        tuple(reasons),
    )
    runs_files.write_new(
        job.folder / "account.html", account_html.html_account("Rehearsal on the simulated rotor", outcome)
    )
    return outcome


def _to_place(corrections: Sequence[Correction]) -> list[runs_files.Placed]:
    """The correction as a scale and a protractor can do it: to 0.1 g and 1°."""
    return [runs_files.Placed(c.plane, round(c.mass, 1), float(round(c.angle_deg) % 360)) for c in corrections]


def to_json(outcome: Rehearsal) -> dict[str, Any]:
    """Keys of `rehearse --json`."""
    return {
        "folder": str(outcome.folder),
        "runs": [
            {
                "name": name,
                "speed_rpm": measured.speed.mean_rpm,
                "masses": [{"plane": m.plane, "mass": m.mass_g, "unit": "g", "angle_deg": m.angle_deg} for m in masses],
                "points": [
                    {
                        "name": p.name,
                        "unit": measured.unit,
                        "amplitude": vectors.amplitude_phase(p.z)[0],
                        "phase_deg": vectors.amplitude_phase(p.z)[1],
                        "amplitude_ci95": p.amplitude_ci95,
                        "phase_ci95_deg": p.phase_ci95_deg,
                        "verdict": p.steadiness.verdict,
                    }
                    for p in measured.points
                ],
            }
            for name, masses, measured in outcome.runs
        ],
        "corrections": [
            {"step": title, "planes": correction.to_json(solution, "")["corrections"]}
            for title, solution in outcome.solutions
        ],
        "tolerance": {
            key: value
            for key, value in limits.to_json(outcome.tolerance, "").items()
            if key in ("grade", "e_per_um", "u_per_gmm", "planes")
        },
        "residual_percent": [
            {"point": name, "value": value, "ci95": half} for name, (value, half) in outcome.residual_percent.items()
        ],
        "trims": outcome.trims,
        "verdict": outcome.tolerance.verdict,
    }
