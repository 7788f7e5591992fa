"""Recordings measured again: what changed, what cannot be trusted, what is done already, and how it is ended."""

import json
import math
import os
import resource
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import crew_work
import numpy as np
import pytest
from job_folders import run, vector, write_lines
from recorded_jobs import TABLE, record, recorded_job
from stillshaft.dsp import vectors
from stillshaft.solver.job import Job
from stillshaft.solver.record import NAME
from stillshaft.ui import reprocess as again
from stillshaft.ui.cli import app
from stillshaft.ui.comparison import point_changes
from stillshaft.ui.crew import CrewError, LocalCrew, gathered
from stillshaft.ui.library import LibraryError
from stillshaft.ui.reprocess import ReprocessError, reprocess
from typer.testing import CliRunner


@pytest.fixture(scope="module")
def plain_job(tmp_path_factory):
    return recorded_job(tmp_path_factory.mktemp("plain") / "job", 1.0, 1.5)


@pytest.fixture
def job(tmp_path, plain_job):
    shutil.copytree(plain_job, tmp_path / "job")
    return tmp_path / "job"


def runs_of(folder):
    with Job.open(folder, read_only=True) as job:
        return {r.what.name: r for r in job.state.runs}


# what changed


def test_an_unchanged_program_finds_what_was_recorded_and_a_second_call_measures_nothing(tmp_path, job):
    results = tmp_path / "results.jsonl"
    first = reprocess([job], results=results, jobs=2)
    assert [r.run for r in first.recordings] == ["run 1", "run 2"]
    assert first.reasons == ()
    assert [len(r.points) for r in first.recordings] == [2, 2]
    assert max(r.intervals for r in first.recordings) < 1e-6
    assert not any(r.verdicts_changed or r.from_results for r in first.recordings)
    # 0.2 of full scale at 20 mV/(mm/s) and 1 V is 10 mm/s peak; at 70 degrees, as the signal was written
    near = first.recordings[0].points[0]
    assert near.amplitude_now == pytest.approx(10.0 / math.sqrt(2.0), rel=1e-3)
    assert near.phase_now_deg == pytest.approx(70.0, abs=0.05)
    second = reprocess([job], results=results, jobs=2)
    assert all(r.from_results for r in second.recordings)
    assert [r.points for r in second.recordings] == [r.points for r in first.recordings]
    assert len(results.read_text().splitlines()) == 2


def shifted(fields):
    """The point "near" recorded 3 half widths along and 4 across from where it is, and unsteady; "far" not at all."""
    near = next(v for v in fields["vectors"] if v["point"] == "near")
    matrix = np.array(fields["covariance"]["matrix"])
    from scipy.stats import t

    z = vectors.vector(near["amplitude"], near["phase_deg"])
    turn = np.array([z.real, z.imag]) / abs(z)
    across = np.array([-turn[1], turn[0]])
    quantile = t.ppf(0.975, fields["covariance"]["degrees_of_freedom"])
    halves = [quantile * math.sqrt(v @ matrix[:2, :2] @ v) for v in (turn, across)]
    moved = z + (3.0 * halves[0] * turn + 4.0 * halves[1] * across) @ np.array([1.0, 1j])
    near["amplitude"], near["phase_deg"] = vectors.amplitude_phase(complex(moved))
    near["verdict"] = "unsettled"
    return fields | {"vectors": [near, {"point": "go\nne", "amplitude": 1.0, "phase_deg": 0.0}], "trusted": False}


def test_a_vector_that_moved_is_told_in_intervals_with_its_verdict_and_points_that_came_and_went(tmp_path):
    folder = recorded_job(tmp_path / "job", 1.0, altered=shifted)
    (told,) = reprocess([folder], results=tmp_path / "r.jsonl", jobs=1).recordings
    near, gone, far = told.points
    assert near.intervals == pytest.approx(5.0, rel=2e-3)  # the axes turned a little with the vector
    assert (near.verdict_then, near.verdict_now) == ("unsettled", "steady")
    assert (gone.amplitude_now, far.amplitude_then, far.point) == (None, None, "far")
    assert told.verdicts_changed
    assert told.reasons[0].startswith("near: moved by")
    assert told.reasons[1] == "go ne: is not measured any more"  # in one line, whatever the record calls it


def result(amplitude, phase_deg, unit="mm/s rms", ci95=0.1, verdict="steady", trusted=True):
    point = {"name": "A", "amplitude": amplitude, "phase_deg": phase_deg, "amplitude_ci95": ci95,
             "phase_ci95_deg": 1.0, "steadiness": {"verdict": verdict}}  # fmt: skip
    return {"trusted": trusted, "reasons": [], "unit": unit, "points": [point]}


def the_run(folder, **fields):
    write_lines(folder, [{"kind": "started", "name": "j", "program": "0"}, {"kind": "run", **fields}])
    return runs_of(folder)[fields["name"]].what


@pytest.mark.parametrize(
    ("then", "now", "apart", "intervals"),
    [
        ({}, (4.1, 40.0), 0.1, 2.0),  # half width 0.05
        ({"phase_ci95_deg": 1.0}, (4.0, 41.0), 8.0 * math.sin(math.radians(0.5)), None),
        ({"phase_deg": None}, (4.1, 200.0), 0.1, 2.0),
        ({"amplitude_ci95": None}, (4.1, 40.0), 0.1, 1.0),  # that of the new measurement
        ({"amplitude_ci95": 0.0}, (4.0, 40.0), 0.0, 0.0),
    ],
)
def test_difference_in_intervals(tmp_path, then, now, apart, intervals):
    what = the_run(tmp_path / "j", **run("a", vector("A", 4.0, **then)))
    (change,) = point_changes(what, result(*now))
    assert change.apart == pytest.approx(apart, abs=1e-12)
    if intervals is not None:
        assert change.intervals == pytest.approx(intervals, abs=1e-6)
    else:  # one degree across, with an interval of one degree; and a little along
        along = 4.0 * (1.0 - math.cos(math.radians(1.0))) / 0.05
        assert change.intervals == pytest.approx(math.hypot(1.0, along), rel=1e-9)


def test_units_of_another_quantity_are_brought_to_the_recorded_one(tmp_path):
    what = the_run(tmp_path / "j", **run("a", vector("A", 4.0)))
    # displacement lags velocity by 90 degrees and is it over omega: written out here
    omega = 2.0 * math.pi * 1480.0 / 60.0
    micrometres = 4.0 * 2.0 * math.sqrt(2.0) / omega * 1000.0
    (change,) = point_changes(what, result(micrometres, 130.0, "µm p-p"))
    assert (change.apart, change.unit) == (pytest.approx(0.0, abs=1e-9), "mm/s rms")


def test_a_unit_that_is_none_is_named(tmp_path, plain_job):
    folder = recorded_job(tmp_path / "job", 1.0, altered=lambda fields: fields | {"unit": "furlong"})
    done = reprocess([folder], results=tmp_path / "r.jsonl", jobs=1)
    assert "cannot be compared" in done.recordings[0].problem


def test_the_worst_come_first(tmp_path, job, plain_job):
    recorded_job(tmp_path / "moved", 1.0, altered=shifted)
    (job / "recordings/0002.au").unlink()
    done = reprocess([tmp_path], results=tmp_path / "r.jsonl", jobs=2)
    assert [(Path(r.job).name, r.run) for r in done.recordings] == [
        ("job", "run 2"),
        ("moved", "run 1"),
        ("job", "run 1"),
    ]


def test_a_run_is_measured_with_the_hook_up_of_its_time(tmp_path, job):
    doubled = TABLE | {"point": [p | {"sensitivity": "10 mV/(mm/s)"} for p in TABLE["point"]]}
    with Job.open(job) as opened:
        opened.append("hookup", table=doubled)
    done = reprocess([job], results=tmp_path / "r.jsonl", jobs=1)
    assert max(r.intervals for r in done.recordings) < 1e-6


def test_another_order_is_measured_but_not_compared(tmp_path, job):
    done = reprocess([job], order=3.0, results=tmp_path / "r.jsonl", jobs=1)
    assert all(r.points == () and r.result["order"] == 3.0 for r in done.recordings)
    assert not any(r.from_results for r in reprocess([job], results=tmp_path / "r.jsonl", jobs=1).recordings)


# recordings that cannot be trusted


def changed_samples(job):
    data = bytearray((job / "recordings/0001.au").read_bytes())
    data[200_000] ^= 1
    (job / "recordings/0001.au").write_bytes(data)


def changed_log(job):
    with open(job / "recordings/0001.events.jsonl", "ab") as file:
        file.write(b'{"kind": "note"}\n')


def linked(job):
    (job / "recordings/0001.au").rename(job / "elsewhere.au")
    (job / "recordings/0001.au").symlink_to(job / "elsewhere.au")


@pytest.mark.parametrize(
    ("how", "why"),
    [
        (changed_samples, "is not as it was when it was recorded"),
        (changed_log, "event log is missing or not as it was"),
        (lambda job: (job / "recordings/0001.events.jsonl").unlink(), "event log is missing or not as it was"),
        (lambda job: (job / "recordings/0001.au").unlink(), "is missing"),
        (linked, "leads out through a link"),
    ],
)
def test_a_recording_that_is_not_the_one_recorded_is_named_and_the_others_measured(tmp_path, job, how, why):
    how(job)
    done = reprocess([job], results=tmp_path / "r.jsonl", jobs=1)
    bad, good = done.recordings
    assert (bad.run, good.run) == ("run 1", "run 2")
    assert why in bad.problem
    assert good.problem is None
    assert len(done.reasons) == 1


def test_damaged_recordings_and_jobs_are_named(tmp_path, job):
    (tmp_path / "cut.au").write_bytes((job / "recordings/0001.au").read_bytes()[:100])
    (tmp_path / "bad").mkdir()
    (tmp_path / "bad" / NAME).write_text("no record\n")
    done = reprocess([tmp_path / "cut.au", tmp_path / "bad", job], results=tmp_path / "r.jsonl", jobs=1)
    problems = {Path(r.recording).name: r.problem for r in done.recordings}
    assert "has no samples in it" in problems["cut.au"]
    assert "is no job's record" in problems["bad"]
    assert problems["0001.au"] is None


# single recordings


def test_single_recordings_take_their_own_hook_up_or_the_one_given(tmp_path, job):
    alone = record(tmp_path / "alone.au", 2.0)
    bare = record(tmp_path / "bare.au", 1.0, None)
    hookup = tmp_path / "hookup.toml"
    import tomli_w

    hookup.write_text(tomli_w.dumps(TABLE))
    results = tmp_path / "r.jsonl"
    done = {Path(r.recording).name: r for r in reprocess([alone, bare], results=results, jobs=2).recordings}
    assert done["alone.au"].result["points"][0]["amplitude"] == pytest.approx(20.0 / math.sqrt(2.0), rel=1e-3)
    assert "carries no hook-up" in done["bare.au"].problem
    (given,) = reprocess([bare], hookup=hookup, results=results, jobs=1).recordings
    assert given.problem is None
    (of_job,) = reprocess([job / "recordings/0002.au"], results=results, jobs=1).recordings
    assert (of_job.run, of_job.entry) == ("run 2", runs_of(job)["run 2"].id)


def test_copies_of_a_recording_are_measured_once(tmp_path):
    one = record(tmp_path / "one.au")
    for ending in (".au", ".events.jsonl"):
        shutil.copy(one.with_suffix(ending), (tmp_path / "two.au").with_suffix(ending))
    done = reprocess([one, tmp_path / "two.au", one], results=tmp_path / "r.jsonl", jobs=1)
    assert len(done.recordings) == 2
    assert len((tmp_path / "r.jsonl").read_text().splitlines()) == 1


# input that cannot be used


def test_unusable_input_is_refused_in_one_line(tmp_path, job):
    results = tmp_path / "r.jsonl"
    write_lines(
        tmp_path / "typed",
        [{"kind": "started", "name": "j", "program": "0"}, {"kind": "run", **run("a", vector("A", 1.0))}],
    )
    with pytest.raises(ReprocessError, match="order nan: must be above 0"):
        reprocess([job], order=math.nan, results=results)
    with pytest.raises(ReprocessError, match="jobs 0: must be 1 or more"):
        reprocess([job], jobs=0, results=results)
    with pytest.raises(ReprocessError, match=r"nowhere.au: there is no such file; there is nothing else"):
        reprocess([tmp_path / "nowhere.au"], results=results)
    with pytest.raises(ReprocessError, match="typed: no recording in it, 1 runs without a recording"):
        reprocess([tmp_path / "typed"], results=results)
    with pytest.raises(ReprocessError, match="cannot be used for results: file exists"):
        reprocess([job], results=job / NAME / "r.jsonl")
    with pytest.raises(ReprocessError, match="is no file of results"):
        reprocess([job], results=job / NAME)
    with pytest.raises(ReprocessError, match="is no ordinary file"):
        reprocess([job], results=Path("/dev/zero"))
    assert not results.exists()
    with pytest.raises((ReprocessError, LibraryError), match="no path: no recording"):
        reprocess([], results=results)


def test_a_scheduler_that_does_not_answer_is_named(tmp_path, job, monkeypatch):
    monkeypatch.setitem(sys.modules, "distributed", None)
    with pytest.raises(ReprocessError, match=r"--scheduler needs distributed: pip install 'stillshaft\[cluster\]'"):
        reprocess([job], results=tmp_path / "r.jsonl", scheduler="tcp://127.0.0.1:1")


# the results file


def test_a_torn_or_spoilt_results_file_costs_only_time(tmp_path, job):
    results = tmp_path / "r.jsonl"
    reprocess([job], results=results, jobs=2)
    first, second = results.read_bytes().splitlines(keepends=True)
    results.write_bytes(first + second[: len(second) // 2])
    done = reprocess([job], results=results, jobs=1)
    assert sorted(r.from_results for r in done.recordings) == [False, True]
    results.write_bytes(first.replace(b'"amplitude"', b'"amplitudo"') + second)
    done = reprocess([job], results=results, jobs=1)
    assert sorted(r.from_results for r in done.recordings) == [False, True]


def test_another_program_measures_again(tmp_path, job, monkeypatch):
    results = tmp_path / "r.jsonl"
    reprocess([job / "recordings/0001.au"], results=results, jobs=1)
    results.write_text(results.read_text().replace(again._program(), "0.0.1 0123456789abcdef"))
    (told,) = reprocess([job / "recordings/0001.au"], results=results, jobs=1).recordings
    assert not told.from_results


def test_a_full_disk_is_said_and_what_is_torn_costs_only_time(tmp_path, job):
    results = tmp_path / "r.jsonl"
    reprocess([job / "recordings/0001.au"], results=results, jobs=1)
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (results.stat().st_size + 100, before[1]))
    try:
        with pytest.raises(
            ReprocessError, match=r"cannot be written: file too large; what was measured before is kept"
        ):
            reprocess([job], results=results, jobs=1)
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)
    again_done = reprocess([job], results=results, jobs=1)
    assert sorted(r.from_results for r in again_done.recordings) == [False, True]
    assert all(r.from_results for r in reprocess([job], results=results, jobs=1).recordings)


# ending it


class _EnoughError(Exception):
    pass


def test_what_report_raises_ends_the_work_and_keeps_what_is_done(tmp_path):
    folder = recorded_job(tmp_path / "job", 1.0, 1.1, 1.2)
    results, told = tmp_path / "r.jsonl", []

    def report(share, text):
        told.append((share, text))
        if text == "1 of 3 recordings measured":
            raise _EnoughError

    with pytest.raises(_EnoughError):
        reprocess([folder], results=results, jobs=1, report=report)
    assert len(results.read_text().splitlines()) == 1
    shares = [share for share, _ in told]
    assert all(later >= earlier - 1e-12 for earlier, later in zip(shares, shares[1:], strict=False))
    done = reprocess([folder], results=results, jobs=1)
    assert sum(r.from_results for r in done.recordings) == 1
    assert done.reasons == ()


def group_lives(number):
    try:
        os.killpg(number, 0)
    except ProcessLookupError:
        return False
    return True


def test_ctrl_c_keeps_what_is_done_and_leaves_no_process(tmp_path):
    for number in range(10):
        record(tmp_path / f"{number}.au", 1.0 + 0.1 * number, seconds=20)
    results = tmp_path / "r.jsonl"
    words = [sys.executable, "-m", "stillshaft.ui.cli", "reprocess", "--jobs", "2", "--results", str(results)]
    words += [str(path) for path in sorted(tmp_path.glob("*.au"))]
    # a group of its own, all of which the terminal's Ctrl-C reaches
    started = subprocess.Popen(
        words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, start_new_session=True,
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL),  # a shell's background job inherits it ignored
    )  # fmt: skip
    deadline = time.monotonic() + 60.0
    while time.monotonic() < deadline and started.poll() is None and not (results.exists() and results.read_bytes()):
        time.sleep(0.005)
    os.killpg(started.pid, signal.SIGINT)
    _, said = started.communicate(timeout=30)
    assert started.returncode == 130
    assert "Traceback" not in said
    assert "call again to go on" in said
    deadline = time.monotonic() + 10.0
    while left := group_lives(started.pid):
        assert time.monotonic() < deadline, f"left running: {left}"
        time.sleep(0.05)
    kept = results.read_text().splitlines()
    assert 1 <= len(kept) < 10
    assert all("key" in json.loads(line) for line in kept)


# the processes


def by_number(crew, work, count, beat=lambda: None):
    with crew:
        return dict(gathered(crew, work, [(n,) for n in range(count)], beat))


def test_work_is_shared_by_processes_and_every_answer_comes_back():
    answers = by_number(LocalCrew(2), crew_work.doubled, 60)
    assert {n: a["doubled"] for n, a in answers.items()} == {n: 2 * n for n in range(60)}
    assert os.getpid() not in {a["process"] for a in answers.values()}


@pytest.mark.parametrize("processes", [1, 2])
def test_a_process_that_dies_takes_down_only_what_killed_it(processes):
    answers = by_number(LocalCrew(processes), crew_work.deadly, 8)
    assert answers.pop(3)["problem"].startswith("the process that measured it died")
    assert {n: a["doubled"] for n, a in answers.items()} == {n: 2 * n for n in (0, 1, 2, 4, 5, 6, 7)}


def test_a_fault_of_the_program_is_named_beside_its_recording():
    assert "RuntimeError: no 0" in by_number(LocalCrew(1), crew_work.failing, 1)[0]["problem"]


def test_each_process_works_on_one_thread(monkeypatch):
    monkeypatch.setenv("OPENBLAS_NUM_THREADS", "2")
    assert set(by_number(LocalCrew(1), crew_work.threads, 1)[0]["threads"]) == {1}


def test_work_that_does_not_end_ends_when_the_crew_is_left():
    beats = []

    def beat():
        beats.append(time.monotonic())
        if beats[-1] - beats[0] > 2.0:
            raise _EnoughError

    with pytest.raises(_EnoughError):
        by_number(LocalCrew(1), crew_work.endless, 1, beat)
    assert time.monotonic() - beats[-1] < 5.0


def test_crew_error_is_ours():
    assert issubclass(CrewError, ValueError)


# the command line


def test_reprocess_for_people_and_as_json(tmp_path, job, plain_job):
    recorded_job(tmp_path / "moved", 1.0, altered=shifted)
    results = str(tmp_path / "r.jsonl")
    done = CliRunner().invoke(app, ["reprocess", str(job), "--results", results, "--jobs", "1"])
    assert (done.exit_code, "2 measured, 0 known" in done.stdout) == (0, True)
    done = CliRunner().invoke(app, ["reprocess", str(tmp_path), "--results", results, "--jobs", "1", "--json"])
    told = json.loads(done.stdout)
    assert done.exit_code == 3
    assert (told["verb"], told["trusted"], told["measured"], told["from_results"]) == ("reprocess", False, 1, 2)
    assert [Path(r["job"]).name for r in told["recordings"]] == ["moved", "job", "job"]
    done = CliRunner().invoke(app, ["reprocess", str(tmp_path), "--results", results, "--jobs", "1"])
    assert "do not trust" in done.stdout
    assert "5.00" in done.stdout


def test_unusable_input_ends_in_status_1(tmp_path):
    words = [
        sys.executable,
        "-m",
        "stillshaft.ui.cli",
        "reprocess",
        str(tmp_path),
        "--results",
        str(tmp_path / "r.jsonl"),
    ]
    done = subprocess.run(words, capture_output=True, text=True, check=False)
    assert done.returncode == 1
    assert done.stderr.count("\n") == 1
    assert "no recording in it" in done.stderr
