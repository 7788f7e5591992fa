"""Solving with coefficients from an earlier job, and storing what was found for the next one."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from stillshaft.dsp import vectors
from stillshaft.solver import correction, influence, stored
from stillshaft.solver.correction import Solution, Wanted
from stillshaft.solver.runs import Runs
from stillshaft.solver.runs_file import load_runs


@dataclass(frozen=True)
class Answer:
    """A runs file solved, and what became of the stored coefficients (None where none were used)."""

    runs: Runs
    solution: Solution
    priors: tuple[influence.Prior, ...]
    verdict: stored.Verdict | None


def solved(path: Path, wanted: Wanted, store: Path | None = None, machine: str | None = None) -> Answer:
    """Solve a runs file, with what is stored for the machine where a store is named. Raises the solver's errors."""
    runs = load_runs(path)
    if store is None or machine is None:
        return Answer(runs, correction.solve(runs, wanted), (), None)
    priors, remarks = stored.priors_for(stored.load(store), machine, runs)
    used, verdict = stored.judged(runs, priors, doubtful=bool(remarks))
    return Answer(runs, correction.solve(runs, wanted, used), used, verdict)


def keep(store: Path, machine: str, answer: Answer) -> None:
    """Store the coefficients of an answer. Raises StoredError."""
    model = influence.fit_all(answer.runs, priors=answer.priors)
    stored.save(store, stored.of_model(answer.runs, model, machine, datetime.now(UTC).date().isoformat()))


def to_json(verdict: stored.Verdict | None) -> dict[str, Any] | None:
    """Key `stored` of `solve --json`."""
    if verdict is None:
        return None
    times, turned_deg = vectors.amplitude_phase(verdict.factor)
    return {
        "status": verdict.status,
        "factor": times,
        "turned_deg": turned_deg,
        "p_value": verdict.p_value,
        "share": verdict.share,
        "sentence": verdict.sentence,
    }
