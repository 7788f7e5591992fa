"""Runs files written by measurements, and a job that is one: what it writes, and what it refuses."""

import numpy as np
import pytest
from stillshaft.acquire import hookup as wiring
from stillshaft.acquire import recording, simulated
from stillshaft.solver.runs import load_runs
from stillshaft.ui import account_html, analysis, runs_files


def recorded(path, duty=0.02, gap=False, seconds=6.0):
    """A recording of the demonstration rotor."""
    run = simulated.demo_run(1, [], seed=1, real_time=False, seconds=seconds)
    conditions = simulated.Conditions(simulated.DEMO_SPEED_RPM, pulse_duty=duty)
    source = simulated.SimulatedRun(run.rotor, run.sensors, run.unbalance, conditions, 1, seconds, False).open()
    recorder = recording.Recorder(path, 48_000.0, ["pulse", "a", "b"], "simulated", simulated.demo_hookup())
    while (block := source.read(1.0)) is not None:
        recorder.write(block.samples, lost_before=500 if gap and block.first_frame == 48_000 else None)
    recorder.close(complete=True)
    return path


@pytest.fixture
def job(tmp_path):
    hookup = wiring.hookup_from(simulated.demo_hookup())
    return runs_files.Job(tmp_path / "job", hookup, [runs_files.Plane("disc", 310.0)])


def test_the_first_run_resolves_the_edge_and_writes_it_down(job, tmp_path):
    job.take_run("initial", recorded(tmp_path / "a.au"), [])
    assert wiring.load_hookup(job.folder / "hookup.toml").pulse.edge == "rising"
    assert [r.name for r in load_runs(job.runs_file).runs] == ["initial"]


def test_a_run_with_another_mark_is_refused_and_nothing_is_added(job, tmp_path):
    job.take_run("initial", recorded(tmp_path / "a.au"), [])
    before = job.runs_file.read_bytes()
    with pytest.raises(runs_files.RunsFileError, match=r"the mark covers 21\.\d° but covered 7\.\d° in the first run"):
        job.take_run("trial", recorded(tmp_path / "b.au", duty=0.06), [])
    assert job.runs_file.read_bytes() == before
    assert len(job.runs) == 1


def test_a_recording_with_a_gap_is_not_trusted(tmp_path):
    hookup = wiring.hookup_from(simulated.demo_hookup())
    measured = analysis.measure_recording(recorded(tmp_path / "a.au", gap=True), hookup)
    assert not measured.trusted
    assert "samples were lost at one place" in measured.reasons[-1]


def test_masses_are_read_from_text():
    placed = runs_files.masses_from(["drive side = 10 g at 270", "far side = 0.5 oz at -30"])
    assert placed[0] == runs_files.Placed("drive side", pytest.approx(10.0), 270.0)
    assert placed[1] == runs_files.Placed("far side", pytest.approx(14.1748, abs=1e-4), 330.0)


def test_pieces_on_a_plane_add_up_as_vectors(job, tmp_path):
    pieces = [runs_files.Placed("disc", 3.0, 0.0), runs_files.Placed("disc", 4.0, 90.0)]
    job.take_run("initial", recorded(tmp_path / "a.au"), [])
    job.take_run("trial", recorded(tmp_path / "b.au"), pieces)
    assert load_runs(job.runs_file).runs[1].masses[0] == pytest.approx(3.0 + 4.0j)
    only = job.with_added([])[0]
    assert (only.mass_g, only.angle_deg) == (pytest.approx(5.0), pytest.approx(np.rad2deg(np.arctan2(4, 3))))


def test_account_escapes_every_name(job):
    assert "<script>" not in account_html._table(["<script>"], [["<script>alert(1)</script>"]])
