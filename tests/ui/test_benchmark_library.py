"""Listing 5000 jobs, cold and from the index, beside reading each record as a whole."""

import shutil
import time
from pathlib import Path

import msgspec
import numpy as np
import pytest
from figures.record import cpu_beside
from job_folders import run, write_lines
from stillshaft.solver.job import Job
from stillshaft.solver.record import NAME
from stillshaft.ui import library_index
from stillshaft.ui.library import list_machines

pytestmark = [pytest.mark.benchmark, pytest.mark.timeout(900)]
JOBS, MACHINES, TIMES = 5000, 400, 7
POINTS = ("drive end horizontal", "drive end vertical", "fan end horizontal", "fan end vertical")
STEADINESS = {
    "verdict": "steady", "cause": None, "phase_swing_deg": 0.8123, "amplitude_swing_percent": 1.2345, "beat": None,
    "trend_deg_per_min": 0.0123, "record_s": 60.0, "trusted": True, "reasons": [],
}  # fmt: skip


def events_of(rng, number):
    """A job of six runs at four points: what is recorded from the beginning to the report, with an undo on the way."""
    at = [
        f"2026-{1 + number % 12:02d}-{1 + number % 28:02d}T{8 + k // 60:02d}:{k % 60:02d}:00.000+00:00"
        for k in range(60)
    ]
    events = [
        {"kind": "started", "name": f"job {number}", "program": "0.1.0"},
        {"kind": "brief", "machine": {"name": f"fan {number % MACHINES}", "place": f"hall {number % 30}", "serial": "17"},
         "rotor": {"mass": "320 kg", "speed_rpm": 1480.0}, "note": "shakes since the blades were cleaned",
         "planes": [{"name": n, "radius": "300 mm"} for n in ("left", "right")], "goal": {"grade": "G6.3"}},
        {"kind": "hookup", "table": {"format": 1, "point": [{"name": p, "sensitivity": "100 mV/g"} for p in POINTS]}},
        *({"kind": "check", "item": f"item {k}", "outcome": "fine"} for k in range(8)),
    ]  # fmt: skip
    runs = []
    for k, purpose in enumerate(("initial", "repeat", "trial", "trial", "correction", "check")):
        vectors = [
            {"point": p, "amplitude": float(rng.uniform(0.5, 9)), "phase_deg": float(rng.uniform(0, 360)), "overall": 5.1,
             "amplitude_ci95": 0.02, "phase_ci95_deg": 0.2, "verdict": "steady", "steadiness": STEADINESS} for p in POINTS
        ]  # fmt: skip
        covariance = {"points": list(POINTS), "matrix": rng.normal(size=(8, 8)).tolist(), "degrees_of_freedom": 60.0}
        events += [
            {"kind": "caution", "texts": ["guards closed"], "who": "x"},
            {"kind": "start"},
            {"kind": "mass", "act": "put on", "pieces": [{"plane": "left", "mass_g": 10.0, "angle_deg": 30.0 * k}]},
        ]
        runs.append(len(events) + 1)
        recording = {
            "path": f"recordings/{k + 1:04d}.au",
            "sha256": rng.bytes(32).hex(),
            "events_sha256": rng.bytes(32).hex(),
        }
        told = run(
            f"{purpose} {k}", *vectors, purpose=purpose, covariance=covariance, recording=recording, duration_s=60.0
        )
        events.append({"kind": "run", **told})
    influence = [{"point": p, "plane": q, "speed_rpm": 1480.0, "amplitude": 0.3, "angle_deg": 12.0, "unit": "mm/s rms/g"}
                 for p in POINTS for q in ("left", "right")]  # fmt: skip
    plan = {
        "kind": "plan",
        "method": "auto",
        "inputs": runs[:4],
        "result": {"influence": influence, "corrections": influence},
    }
    events += [plan, plan, {"kind": "withdrawn", "of": len(events) + 2, "why": "undone", "undo": True}]
    events += [{"kind": "decision", "text": "place it"}, {"kind": "verdict", "verdict": "met", "basis": "contract"}]
    events += [{"kind": "closed"}] if number % 3 else []
    return [event | {"at": at[k]} for k, event in enumerate(events)]


@pytest.fixture(scope="module")
def jobs(tmp_path_factory):
    root, rng = tmp_path_factory.mktemp("library"), np.random.default_rng(1)
    for number in range(JOBS):
        write_lines(root / f"{number % 20}/{number}", events_of(rng, number))
    time.sleep(2.1)  # so that they count as settled
    yield root
    shutil.rmtree(root)


def cpu_s(work):
    begun = time.process_time()
    result = work()
    return time.process_time() - begun, result


def test_5000_jobs_are_listed(jobs, tmp_path, figure):
    """The kernel decodes a job's record 5000 times with msgspec into plain tables: what it takes to read as much."""
    index, lines, found = tmp_path / "index.json", (jobs / "0/0" / NAME).read_bytes().splitlines(), []

    def decode():
        for _ in range(JOBS):
            for line in lines:
                msgspec.json.decode(line)

    def listed():
        found.append(list_machines(jobs, index=index))
        assert (found[-1].jobs, len(found[-1].machines)) == (JOBS, MACHINES)

    def cold():
        index.unlink(missing_ok=True)
        listed()
        assert found[-1].from_index == 0

    def warm():
        listed()
        assert found[-1].from_index == JOBS

    cold_s, kernel_s = cpu_beside(cold, decode, TIMES)
    warm_s, warm_kernel_s = cpu_beside(warm, decode, TIMES)
    sample = [Path(j.folder) for m in found[-1].machines[:40] for j in m.jobs]

    def as_wholes():
        for folder in sample:
            with Job.open(folder, read_only=True) as job:
                assert job.state.runs

    whole_s = cpu_s(as_wholes)[0] / len(sample) * JOBS
    kernel = "decoding the records"
    # in units of the kernel, because a busy machine slows both
    figure.cost(f"{JOBS} jobs listed, cold", cold_s, (kernel, kernel_s), wanted_s=2.0, at_most=7.0,
                textbook=("each record read as a whole", whole_s))  # fmt: skip
    figure.cost(f"{JOBS} jobs listed, warm", warm_s, (kernel, warm_kernel_s), wanted_s=2.0, at_most=1.5)
    figure("time of reading each as a whole over that of a cold list", whole_s / cold_s, "times", at_least=2.0)
    figure("a job's record", (jobs / "0/0" / NAME).stat().st_size / 1000, "kB")
    figure("the index", index.stat().st_size / 1e6, "MB")
    assert all(library_index.quick_state((f / NAME).read_bytes()) is not None for f in sample)
