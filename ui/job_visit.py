"""The next visit to a machine: what is taken over from an earlier job or runs file, and what is left behind."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import msgspec
from stillshaft.dsp.units import shown
from stillshaft.solver import influence, stored
from stillshaft.solver.runs import Runs, RunsError
from stillshaft.solver.stored import Stored, StoredError
from stillshaft.ui import job_facts

_LEFT_BEHIND = ("interview", "note")  # of what was wrong then
_VISIT = {"starts": ("window_end",)}
_AS_IN_RUNS_FILE = ("plane", "rotor", "stock", "repeatability", "placement", "speed_tolerance")


@dataclass(frozen=True)
class TakenOver:
    """Name, brief, hook-up and coefficients of the earlier visit; `remarks` say what could not be taken over."""

    name: str
    brief: dict[str, Any]
    hookup: dict[str, Any] | None
    coefficients: tuple[Stored, ...]
    remarks: tuple[str, ...]


def taken_over(earlier: Path) -> TakenOver:
    """What an earlier job's folder, or a runs file, has for the next visit. Raises RecordError, RunsError, StoredError."""
    return _of_runs_file(earlier) if earlier.is_file() else _of_job(earlier)


def _of_job(folder: Path) -> TakenOver:
    from stillshaft.solver.job import Job

    with Job.open(folder, read_only=True) as job:
        state = job.state
    said = given(msgspec.to_builtins(state.brief))
    brief = {key: value for key, value in said.items() if key not in _LEFT_BEHIND}
    for table, keys in _VISIT.items():
        for key in keys:
            brief.get(table, {}).pop(key, None)
    kept = stored.load(folder / job_facts.COEFFICIENTS_NAME)
    remarks: list[str] = []
    try:
        runs = job_facts.runs_for(state, folder)
        found = _fitted(runs, job_facts.machine_of(state), state.runs[-1].event.at[:10])
    except ValueError as error:
        if not type(error).__module__.startswith("stillshaft."):
            raise
        found = ()
        if not kept:
            remarks.append(f"no coefficients were taken over: {shown(error, 300)}")
    return TakenOver(state.name, brief, state.hookup, (*kept, *found), tuple(remarks))


def _of_runs_file(path: Path) -> TakenOver:
    from stillshaft.dsp import tables
    from stillshaft.solver.runs_file import load_runs

    runs, table = load_runs(path), tables.read(path)
    names = {"plane": "planes"}
    brief = {names.get(key, key): table[key] for key in _AS_IN_RUNS_FILE if key in table}
    brief["limits"] = [
        {"point": point, "amplitude": amplitude, "unit": runs.vibration_unit} for point, amplitude in runs.limits
    ]
    flexible, machine = (brief.get("rotor", {}).pop(key, None) for key in ("flexible", "machine"))
    remarks = [] if not flexible else ["the runs file says that the rotor is flexible: grades do not apply"]
    if (assumed := table.get("assumed_repeatability")) is not None:
        remarks.append(f"the runs file assumes a repeatability of {assumed}: say in the brief what calls for it")
    if machine is not None:
        brief["machine"] = {"type": machine}
    try:
        found = _fitted(runs, path.stem, datetime.now(UTC).date().isoformat())
    except (RunsError, StoredError) as error:
        found = ()
        remarks.append(f"no coefficients were taken over: {shown(error, 300)}")
    return TakenOver(path.stem, given(brief), None, found, tuple(remarks))


def _fitted(runs: Runs, machine: str, date: str) -> tuple[Stored, ...]:
    return stored.of_model(runs, influence.fit_all(runs), machine, date)


def given(table: dict[str, Any]) -> dict[str, Any]:
    """The table without what was not said."""
    found = {}
    for key, value in table.items():
        kept = (
            given(value)
            if isinstance(value, dict)
            else [given(v) if isinstance(v, dict) else v for v in value]
            if (isinstance(value, list))
            else value
        )
        if kept is not None and kept not in ({}, []):
            found[key] = kept
    return found
