"""The record under kills, cuts, crowds and full disks, and how fast it is."""

import json
import os
import random
import shutil
import statistics
import subprocess
import sys
import time
from pathlib import Path

import numpy as np
import pytest
from figures.record import cpu_beside
from stillshaft.solver.job import Job
from stillshaft.solver.record import Record
from stillshaft.solver.state import fold
from test_record import killed_after

pytestmark = [pytest.mark.benchmark, pytest.mark.timeout(1800)]

FIXTURE = Path(__file__).parents[2] / "fixtures/jobs/format_1/job.jsonl"
KILLS = 100
WRITERS, EACH = 4, 50


def test_a_hundred_kills_lose_no_acknowledged_event(tmp_path, figure):
    Job.create(tmp_path / "job", "killed", "first").close()
    chance, lost, torn, kills = random.Random(5), 0, 0, figure.count(KILLS)
    for _ in range(kills):
        last = killed_after(tmp_path / "job", chance.uniform(0.0, 0.1))
        with Job.open(tmp_path / "job", by="after") as job:
            ids = [event.id for event in job.events]
            assert ids == list(range(1, len(ids) + 1))
            lost += max(0, last - len(ids))
            torn += len(job.problems)
    figure("acknowledged events lost in kills", lost, "events", at_most=0.0, cases=kills)
    figure("torn ends of the record left by them", torn, "ends", cases=kills)
    figure("events acknowledged meanwhile", last, "events", cases=kills)


def test_every_cut_of_a_real_record_opens_and_goes_on(tmp_path, figure):
    whole = FIXTURE.read_bytes()
    ends = [i + 1 for i, byte in enumerate(whole) if byte == ord("\n")]
    (tmp_path / "job.jsonl").write_bytes(b"")
    cuts = range(0, len(whole) + 1, 20 if figure.quick else 1)
    wrong = 0
    for cut in cuts:
        (tmp_path / "job.jsonl").write_bytes(whole[:cut])
        kept = sum(end <= cut + 1 for end in ends)
        with Job.open(tmp_path, by="after") as job:
            right = len(job.events) == kept
            added = job.append("report", file={"path": "reports/a", "sha256": "0" * 64})
        with Job.open(tmp_path, read_only=True) as job:
            right &= (len(job.events), job.events[-1].id, job.problems) == (kept + 1, added.id, ())
        wrong += not right
    figure("cuts of a record that do not open or cannot be added to", wrong, "cuts", at_most=0.0, cases=len(cuts))


CROWD = (
    "import sys, time\nfrom pathlib import Path\nfrom stillshaft.solver.job import Job\n"
    "from stillshaft.solver.folder import RecordError\ndone = 0\n"
    "while done < int(sys.argv[2]):\n"
    " try: job = Job.open(Path(sys.argv[1]), by=sys.argv[3])\n"
    " except RecordError as error:\n"
    "  assert 'is open in another program' in str(error), error\n"
    "  time.sleep(0.001); continue\n"
    " with job: job.append('decision', text=str(done)); done += 1\n"
)


def test_a_crowd_of_programs_writes_one_after_the_other(tmp_path, figure):
    Job.create(tmp_path / "job", "crowd", "first").close()
    crowd = [
        subprocess.Popen([sys.executable, "-c", CROWD, tmp_path / "job", str(EACH), f"writer {n}"])
        for n in range(WRITERS)
    ]
    assert [writer.wait() for writer in crowd] == [0] * WRITERS
    with Job.open(tmp_path / "job") as job:
        assert job.problems == ()
        assert [event.id for event in job.events] == list(range(1, len(job.events) + 1))
        wrong = 0
        for n in range(WRITERS):
            texts = [d.what.text for d in job.state.decisions if d.by == f"writer {n}"]
            wrong += sum(text != str(k) for k, text in enumerate(texts)) + abs(EACH - len(texts))
    figure(
        f"events lost or out of order, {WRITERS} programs at once", wrong, "events", at_most=0.0, cases=WRITERS * EACH
    )


FILLS = (
    "import sys, os\nfrom pathlib import Path\nfrom stillshaft.solver.job import Job\n"
    "from stillshaft.solver.folder import RecordError\n"
    "folder = Path(sys.argv[1])\njob = Job.create(folder / 'job', 'fills', 'ann')\nn = 0\n"
    "try:\n"
    " while True: job.append('decision', text='x' * 700); n += 1\n"
    "except RecordError as error: print(error)\n"
    "assert len(job.state.decisions) == n, n\n"
    "assert (folder / 'job/job.jsonl').read_bytes().endswith(b'}\\n')\n"
    "(folder / 'filler').write_bytes(b'')\n"
    "job.close(); job = Job.open(folder / 'job', by='ann')\n"
    "assert len(job.state.decisions) == n; print(job.read_only, job.problems)\n"
)


def test_a_real_disk_that_is_full(tmp_path):
    """A small file system in memory, where the test may mount one: here the system really says that the disk is full."""
    (tmp_path / "disk").mkdir()
    mount = f"mount -t tmpfs -o size=128k tmpfs '{tmp_path}/disk' && exec \"$@\""
    command = ["unshare", "-Urm", "sh", "-c", mount, "sh", sys.executable, "-c", FILLS, tmp_path / "disk"]
    if shutil.which("unshare") is None or subprocess.run([*command[:5], "sh", "true"], check=False).returncode:
        pytest.skip("needs unshare and the right to mount")
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    said = done.stdout.splitlines()
    assert "the disk is full; nothing was added, what is recorded is kept" in said[0]


def big_run(number):
    """A run of 8 points with all that it has."""
    points = [f"bearing {n} horizontal" for n in range(8)]
    return {
        "purpose": "other", "name": f"run {number}", "speed_rpm": 1480.0, "unit": "mm/s rms",
        "vectors": [
            {"point": p, "amplitude": 1.5, "phase_deg": 200.0, "amplitude_ci95": 0.1, "phase_ci95_deg": 1.0, "overall": 3.0,
             "verdict": "steady", "steadiness": {"verdict": "steady", "phase_swing_deg": 1.0, "reasons": []}}
            for p in points
        ],
        "masses": [{"plane": "left", "mass_g": 10.0, "angle_deg": 90.0}],
        "covariance": {"points": points, "matrix": np.random.default_rng(number).normal(size=(16, 16)).tolist()},
        "recording": {"path": f"recordings/{number % 10_000:04d}.au", "sha256": "0" * 64},
    }  # fmt: skip


def test_two_thousand_events_are_quick(tmp_path, figure, monkeypatch):
    """CPU times, which leave the disk out; the kernel decodes the same lines as JSON and no more."""
    whole, synced = [], []
    sync, clock = os.fdatasync, time.process_time

    def timed(file):
        begun = time.perf_counter()
        sync(file)
        synced.append(time.perf_counter() - begun)

    monkeypatch.setattr(os, "fdatasync", timed)
    with Job.create(tmp_path / "job", "long", "ann") as job:
        for number in range(400):
            for kind, fields in (
                ("brief", {"machine": {"note": str(number)}}),
                ("start", {}),
                ("caution", {"texts": ["guards closed"] * 5, "who": "ann"}),
                ("check", {"item": f"item {number % 20}", "outcome": "fine"}),
                ("run", big_run(number)),
            ):
                begun = clock()
                job.append(kind, **fields)
                whole.append(clock() - begun)
        lines = (tmp_path / "job/job.jsonl").read_bytes().splitlines()
        folding_s, decoding_s = cpu_beside(lambda: fold(job.events), lambda: [json.loads(line) for line in lines])
        assert fold(job.events) == job.state
        begun = clock()
        job.undo()
        undo_s = clock() - begun
    kernel = ("decoding its lines as JSON", decoding_s)
    opening_s, _ = cpu_beside(lambda: Job.open(tmp_path / "job", read_only=True).close(), lambda: None, 5)
    lines_s, _ = cpu_beside(lambda: Record(tmp_path / "job", read_only=True).close(), lambda: None, 5)
    figure.cost("fold of 2001 events", folding_s, kernel, wanted_s=0.2, at_most=4.0)
    figure.cost("opening their record", opening_s, kernel)
    figure.cost("their lines and checksums alone", lines_s, kernel)
    figure.cost("undo among them", undo_s, kernel, steady=False)
    one = ("decoding one line", decoding_s / len(lines))
    figure.cost("append after them, median", statistics.median(whole[-200:]), one, wanted_s=0.005, at_most=200.0)
    figure("a sync of the disk, median", 1e3 * statistics.median(synced), "ms")
