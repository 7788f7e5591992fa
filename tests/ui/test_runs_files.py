"""Masses read from text, and recordings with gaps."""

import numpy as np
import pytest
from stillshaft.acquire import hookup as wiring
from stillshaft.acquire import recording, simulated
from stillshaft.solver import runs, runs_append
from stillshaft.ui import analysis, runs_files


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


def test_a_recording_with_a_gap_is_not_trusted(tmp_path):
    hookup = wiring.hookup_from(simulated.demo_hookup())
    measured = analysis.measure_recording(recorded(tmp_path / "a.au", gap=True), hookup)
    assert not measured.trusted
    assert "samples were lost at one place" in measured.reasons[-1]


@pytest.mark.parametrize(
    "text",
    [
        "left = 10 g" + 20_000 * " " + "x",
        20_000 * " " + "= 10 g at 2",
        "left = " + 5_000 * "1 at ",
        "left = 1 g at " + "9" * 400,
        " = 1 g at 2",
    ],
)
def test_a_long_text_is_no_mass_and_is_said_at_once(text):
    """Patterns that may split spaces in several ways would need minutes."""
    with pytest.raises(runs_files.RunsFileError, match="write plane, mass and angle"):
        runs_files.masses_from([text])


def test_masses_are_read_from_text():
    placed = runs_files.masses_from(["drive side = 10 g at 270", "far side = 0.5 oz at -30"])
    assert placed[0] == runs_files.Placed("drive side", pytest.approx(10.0), 270.0)
    assert placed[1] == runs_files.Placed("far side", pytest.approx(14.1748, abs=1e-4), 330.0)


def test_a_runs_file_whose_mass_unit_is_none_is_not_added_to(tmp_path):
    path = tmp_path / "runs.toml"
    path.write_text('format = 1\nmass_unit = "%s%n"\n')
    with pytest.raises(runs.RunsError, match=r"runs.toml: mass_unit: .* is not a unit of kg"):
        runs_append.append_run(
            path, name="a", speed_rpm=1480.0, vectors_by_point={"A": 1j}, covariance=np.eye(2), degrees_of_freedom=9.0,
            masses=[], vibration_unit="mm/s rms", mass_unit="g", points=[],
        )  # fmt: skip
    assert path.read_text() == 'format = 1\nmass_unit = "%s%n"\n'
