"""A whole job on the simulated rotor, through the real path: session, source, process, recording, guidance, verdict.

The scenario is the project's own: a dust-extraction fan whose blades wore unevenly, sound or with one of the faults of
`ui.rehearsal_machines`. The job in the folder is one like any other: `stillshaft job show` reads it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from stillshaft.dsp import vectors
from stillshaft.dsp.measure import Measurement
from stillshaft.dsp.units import InputError
from stillshaft.solver import correction, limits
from stillshaft.solver.correction import Solution
from stillshaft.solver.limits import Tolerance
from stillshaft.ui import account, job_facts, rehearsal_machines, rehearsal_person, runs_files
from stillshaft.ui.session import Session

if TYPE_CHECKING:
    from stillshaft.ui.rehearsal_person import Person

_SECONDS = 16.0
_STEPS = 5  # beside the trials: signal check, initial run, its repeat, correction, trim


class RehearsalError(InputError):
    """A rehearsal that there is not: the message says which there are."""


@dataclass(frozen=True)
class Rehearsal:
    """How the job went: runs and solutions in order, residual of each point in percent of the initial run.

    `advised` are the acts of the guidance with their sentences as they came, `stopped` why the balancing was ended before
    the goal (None: it was reached). Runs that do not count are among the runs, but not in the residual.
    """

    folder: Path
    fault: str | None
    runs: tuple[tuple[str, tuple[runs_files.Placed, ...], Measurement], ...]
    solutions: tuple[tuple[str, Solution], ...]
    tolerance: Tolerance
    residual_percent: dict[str, tuple[float, float | None]]
    trims: int
    reasons: tuple[str, ...]
    advised: tuple[tuple[str, str], ...] = ()
    stopped: str | None = None

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
        if self.stopped is not None and not self.solutions:
            return f"Not balanced. {self.stopped}"
        return (
            f"{self.tolerance.grade}: {self.tolerance.verdict}. "
            f"The worst point is left with {left} % of the initial vibration after {trims}."
        )


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
    fault: str | None = None,
) -> Rehearsal:
    """Do the job and leave its folder with record, recordings, hook-up and runs file. Raises RecordError for one in use.

    Raises RehearsalError for a fault that there is not.
    """
    if fault is not None and fault not in rehearsal_machines.FAULTS:
        raise RehearsalError(f'fault "{fault}": is none; there is {", ".join(rehearsal_machines.FAULTS)}')
    machine = rehearsal_machines.machine(planes, fault)
    name = "rehearsal" if fault is None else f"rehearsal, {fault}"
    with Session.create(folder or new_folder(), name, rehearsal_person.NAME, machine.hookup()) as session:

        def forward(share: float, text: str) -> None:
            steps = planes + _STEPS
            on_progress(min(1.0, (min(steps - 1, len(person.measured)) + share) / steps), text)

        person = rehearsal_person.Person(
            session, machine, seed=seed, real_time=real_time, seconds=seconds, forward=forward
        )
        person.work()
        outcome = _outcome(session, person)
        job_facts.write_runs_file(session.state, session.folder, session.folder / "runs.toml")
        _write_hookup(session)
    return outcome


def write_report(folder: Path) -> Path:
    """Write the job's report among its own, as a page, and record it. Raises ReportError, RecordError."""
    from stillshaft.solver.job import Job
    from stillshaft.ui import report

    with Job.open(folder, by=rehearsal_person.NAME) as job:
        return report.put_in_job(job, report.to_html(report.material_of(job)).encode(), ".html")


def _write_hookup(session: Session) -> None:
    import tomli_w

    runs_files.write_new(session.folder / "hookup.toml", tomli_w.dumps(session.state.hookup or {}))


def _outcome(session: Session, person: Person) -> Rehearsal:
    state = session.state
    tolerance = job_facts.tolerance_of(state, session.folder)
    assert tolerance is not None  # the brief names a grade
    counting = [r for r in state.runs if r.counts]
    reasons = [f"{r.what.name}: {reason}" for r in counting for reason in person.measured[r.id].reasons]
    reasons += [reason for _, solution in person.solutions[-1:] for reason in solution.reasons]
    if person.stopped is not None and tolerance.verdict != "met":
        reasons.append(person.stopped)
    return Rehearsal(
        session.folder,
        person.machine.fault,
        tuple(
            (
                r.what.name,
                tuple(runs_files.Placed(p.plane, p.mass_g, p.angle_deg) for p in r.what.masses),
                person.measured[r.id],
            )
            for r in state.runs
        ),
        tuple(person.solutions),
        tolerance,
        person.residual_percent(),
        sum(step == "trim" for step, _ in person.solutions),
        tuple(reasons),
        tuple(person.advised),
        person.stopped,
    )


def to_json(outcome: Rehearsal) -> dict[str, Any]:
    """Keys of `rehearse --json`."""
    return {
        "folder": str(outcome.folder),
        "fault": outcome.fault,
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
        "advised": [{"act": act, "sentence": sentence} for act, sentence in outcome.advised],
        "stopped": outcome.stopped,
    }
