"""Whole jobs on the simulated rotor, sound and with each fault: they go as the guidance says and end as they should."""

import json
import os
import signal
import subprocess
import sys
import time

import pytest
import soundfile
from stillshaft.solver.folder import RecordError
from stillshaft.solver.job import Job
from stillshaft.solver.replay import replay, verify_files
from stillshaft.ui import rehearsal, rehearsal_machines

WIDE = os.environ | {"COLUMNS": "140"}
RUN = [sys.executable, "-m", "stillshaft.ui.cli"]

pytestmark = pytest.mark.timeout(300)  # whole jobs, seconds each on a machine with nothing else to do


def stillshaft(*arguments, cwd):
    return subprocess.run(
        [*RUN, *map(str, arguments)], cwd=cwd, capture_output=True, text=True, check=False, timeout=300, env=WIDE
    )


def rehearsed(folder, fault, seconds=8.0, planes=2):
    return rehearsal.rehearse(
        folder, planes=planes, seed=1, real_time=False, on_progress=lambda *_: None, seconds=seconds, fault=fault
    )


def acts(outcome):
    return [act for act, _ in outcome.advised]


def said(outcome, act):
    return next(sentence for found, sentence in outcome.advised if found == act)


def test_a_rehearsal_balances_and_leaves_a_job_like_any_other(tmp_path):
    done = stillshaft("rehearse", "job", "--fast", "--seed", "3", "--json", cwd=tmp_path)
    assert done.returncode == 0, done.stderr
    whole = json.loads(done.stdout)
    assert list(whole) == [
        "format", "verb", "version", "trusted", "reasons", "folder", "fault", "runs", "corrections", "tolerance",
        "residual_percent", "trims", "verdict", "advised", "stopped",
    ]  # fmt: skip
    assert all(point["value"] < 10.0 for point in whole["residual_percent"])
    assert whole["trims"] <= 1
    assert whole["verdict"] == "met"
    job = tmp_path / "job"
    assert (job / "reports" / "report.html").read_text().startswith("<!DOCTYPE html>")
    # the signal check was recorded too
    assert len(list((job / "recordings").glob("*.au"))) == len(whole["runs"]) + 1
    with Job.open(job, read_only=True) as record:
        checks = {key: event.what for key, event in record.state.checks.items()}
        measured = {event.id: event.what.what for event in record.state.measured}
        for key, what in (("pulse", "signal check"), ("spectrum", "spectrum"), ("steady", "spectrum")):
            assert (checks[key].outcome, measured[checks[key].evidence]) == ("fine", what)
        looked_at = "nothing to look at or to touch"
        assert all(looked_at in checks[key].note for key in ("history", "rotor", "feet", "alignment"))
        assert all(looked_at not in checks[key].note for key in ("repeatable", "directions", "resonance", "background"))
        assert record.problems == ()
        assert verify_files(record) == ()
        assert [again.differences for again in replay(record)] == [()] * len(record.state.plans)
        assert record.state.closed
        assert record.state.verdicts[-1].what.accepted_by == "rehearsal"
        assert {c.what.who for c in record.state.cautions} == {"rehearsal"}
        assert len(record.state.starts) == len(record.state.runs) + 1
        assert record.state.brief.planes[0].name == "drive side"
        first = record.state.runs[0].what.recording.path
    # the runs file solves to what the job placed, and the recording gives its vector again
    solved = json.loads(stillshaft("solve", job / "runs.toml", "--json", cwd=tmp_path).stdout)
    assert solved["fit"]["degrees_of_freedom"] >= 4
    point = json.loads(stillshaft("vector", job / first, "--json", cwd=tmp_path).stdout)["points"][0]
    assert point["amplitude"] == pytest.approx(whole["runs"][0]["points"][0]["amplitude"], rel=1e-9)
    again = stillshaft("rehearse", "job", "--fast", cwd=tmp_path)
    assert again.returncode == 1
    assert "holds a job already" in again.stderr
    shown = stillshaft("job", "show", "job", "--verify", cwd=tmp_path)
    assert shown.returncode == 0, shown.stderr
    assert "every plan comes out again" in shown.stdout


@pytest.mark.long
def test_one_plane_rehearsal_prints_an_account_and_a_seed_gives_it_again(tmp_path):
    done = stillshaft("rehearse", "--fast", "--planes", "1", cwd=tmp_path)
    assert done.returncode == 0, done.stderr
    assert "G6.3: met" in done.stdout
    assert (tmp_path / "rehearsal-1" / "runs.toml").exists()
    one, two = (rehearsed(tmp_path / name, None, 2.0, planes=1) for name in ("a", "b"))
    first, second = rehearsal.to_json(one), rehearsal.to_json(two)
    assert first.pop("folder") != second.pop("folder")
    assert first == second


def test_a_neighbour_makes_the_phase_walk_until_it_is_stopped(tmp_path):
    outcome = rehearsed(tmp_path / "job", "neighbour", 16.0)
    assert outcome.runs[0][2].points[0].steadiness.verdict == "walking"
    assert "a second source is stronger than 1x" in said(outcome, "stop-neighbour")
    assert outcome.tolerance.verdict == "met"
    assert outcome.trusted
    assert max(value for value, _ in outcome.residual_percent.values()) < 10.0
    with Job.open(tmp_path / "job", read_only=True) as record:
        assert not record.state.runs[0].counts


def test_looseness_is_told_from_unbalance_and_mended_first(tmp_path):
    outcome = rehearsed(tmp_path / "job", "loose")
    assert "other orders dominate" in said(outcome, "stop-other-orders")
    assert acts(outcome).index("stop-other-orders") < acts(outcome).index("put-on-trial")
    assert outcome.tolerance.verdict == "met"
    with Job.open(tmp_path / "job", read_only=True) as record:
        assert "tightened" in record.state.checks["looseness"].what.note
        assert not record.state.runs[0].counts


def test_near_a_resonance_no_mass_is_put_on(tmp_path):
    outcome = rehearsed(tmp_path / "job", "resonance")
    assert "from the resonance at" in said(outcome, "move-speed")
    assert "put-on-trial" not in acts(outcome)
    assert outcome.solutions == ()
    assert not outcome.trusted
    assert "Not balanced." in outcome.verdict
    with Job.open(tmp_path / "job", read_only=True) as record:
        assert record.state.closed
        assert record.state.verdicts[-1].what.refused_by == "rehearsal"
        assert record.state.masses == ()


def test_a_weak_trial_is_asked_for_again_larger(tmp_path):
    outcome = rehearsed(tmp_path / "job", "weak-trial")
    assert "too weak; put on" in said(outcome, "larger-trial")
    assert outcome.tolerance.verdict == "met"
    masses = [placed[0].mass_g for name, placed, _ in outcome.runs if name.startswith("trial drive side")]
    assert masses[-1] > 3.0 * masses[0]


def test_an_overhung_disc_is_balanced_in_one_plane_first_then_its_couple(tmp_path):
    outcome = rehearsed(tmp_path / "job", "couple")
    planes = [{m.plane for m in placed} for _, placed, _ in outcome.runs if placed]
    assert planes[0] == {"front"}
    assert planes[-1] == {"front", "back"}
    assert outcome.tolerance.verdict == "met"
    with Job.open(tmp_path / "job", read_only=True) as record:
        assert any("for the couple" in d.what.text for d in record.state.decisions)


def test_an_unknown_fault_is_refused_before_a_folder_is_made(tmp_path):
    with pytest.raises(rehearsal.RehearsalError, match='fault "luck": is none; there is neighbour, loose'):
        rehearsed(tmp_path / "job", "luck")
    assert not (tmp_path / "job").exists()
    assert set(rehearsal_machines.FAULTS) == {"neighbour", "loose", "resonance", "weak-trial", "couple"}


def test_a_folder_in_use_is_left_alone(tmp_path):
    Job.create(tmp_path / "job", "fan", "Kim").close()
    with pytest.raises(RecordError, match="holds a job already"):
        rehearsed(tmp_path / "job", None)


@pytest.mark.skipif(sys.platform == "win32", reason="sends SIGINT")
def test_an_interrupted_rehearsal_keeps_the_recording(tmp_path):
    running = subprocess.Popen(
        [*RUN, "rehearse", "job"], cwd=tmp_path, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL),  # a shell's background job inherits it ignored
    )  # fmt: skip
    recording = tmp_path / "job" / "recordings" / "0001.au"
    deadline = time.monotonic() + 30.0
    while not (recording.exists() and recording.stat().st_size > 100_000):
        assert time.monotonic() < deadline
        time.sleep(0.05)
    running.send_signal(signal.SIGINT)
    _, errors = running.communicate(timeout=20)
    assert running.returncode == 130
    assert "Traceback" not in errors
    assert soundfile.info(recording).frames > 0
    assert '"complete": false' in (tmp_path / "job" / "recordings" / "0001.events.jsonl").read_text()
    shown = stillshaft("job", "show", "job", cwd=tmp_path)
    assert shown.returncode == 0, shown.stderr
    assert "belongs to no run" in " ".join(shown.stdout.split())
