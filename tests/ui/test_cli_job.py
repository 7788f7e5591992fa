"""Whole jobs through the command line on the simulated rotor; bad input, two programs, kill in the middle of a run."""

import json
import os
import re
import shutil
import signal
import subprocess
import sys
import time

import pytest
import tomli_w
from stillshaft.acquire import simulated
from stillshaft.solver import progress
from stillshaft.solver.job import Job
from stillshaft.ui.cli import app
from test_session import recorded
from typer.testing import CliRunner

RUN = [sys.executable, "-m", "stillshaft.ui.cli"]
WIDE = os.environ | {"COLUMNS": "160"}
BRIEF = (
    "machine.name = extraction fan", "rotor.kind = between bearings", "rotor.mass = 62 kg", "rotor.speed_rpm = 1480",
    "rotor.highest_speed_rpm = 1600", "planes.disc.radius = 310 mm", "planes.disc.positions = 12",
    "abort.drive end horizontal = 60 mm/s rms", "abort.far end horizontal = 60 mm/s rms", "goal.grade = G6.3",
)  # fmt: skip
TAKE = ("simulated", "--fast", "--acknowledge", "Kim", "--seconds", "16")


def stillshaft(*arguments, text=None):
    """The verb in a process of its own."""
    return subprocess.run(
        [*RUN, *map(str, arguments)], capture_output=True, text=True, check=False, timeout=120, env=WIDE, input=text
    )


def job(*arguments, by="Kim"):
    """The verb in this process: quicker, and what it raises is seen as it is."""
    done = CliRunner().invoke(app, ["job", "--by", by, *map(str, arguments)], env={"COLUMNS": "160"})
    if done.exception is not None and not isinstance(done.exception, SystemExit):
        raise done.exception
    return done


def told(*arguments):
    done = job(*arguments, "--json")
    whole = json.loads(done.stdout)
    assert list(whole)[:8] == ["format", "verb", "version", "trusted", "reasons", "job", "entries", "problems"]
    assert whole["verb"] == f"job {arguments[0]}"
    return done.exit_code, whole


def assert_refused(folder, match, *arguments):
    """One line and exit 1, nothing printed as a result, and the record as it was: in a process of its own."""
    record = folder / "job.jsonl"
    before = record.read_bytes() if record.exists() else None
    done = stillshaft("job", *arguments)
    assert done.returncode == 1, done.stderr
    assert done.stdout == ""
    assert match in done.stderr
    assert len([line for line in done.stderr.splitlines() if line.startswith("stillshaft: ")]) == 1
    assert "Traceback" not in done.stderr
    assert (record.read_bytes() if record.exists() else None) == before


def assert_refused_here(folder, match, *arguments):
    """The same in this process: one line of the program's own error, and the record as it was."""
    before = (folder / "job.jsonl").read_bytes()
    with pytest.raises(ValueError, match=re.escape(match)) as refused:
        job(*arguments)
    assert type(refused.value).__module__.startswith("stillshaft.")
    assert "\n" not in str(refused.value)
    assert (folder / "job.jsonl").read_bytes() == before


@pytest.fixture(scope="module")
def recordings(tmp_path_factory):
    folder = tmp_path_factory.mktemp("r")
    other = simulated.demo_hookup()
    other["point"][0]["angle"] = 0.0
    return {
        "initial": recorded(folder / "initial.au"),
        "trial": recorded(folder / "trial.au", [("disc", 8.0, 90.0)], seed=3),
        "faster": recorded(folder / "faster.au", seed=4, speed_rpm=1550.0),
        "other": recorded(folder / "other.au", seconds=2.0, hookup=other),
    }


@pytest.fixture
def begun(tmp_path):
    """A job with its brief."""
    folder = tmp_path / "j"
    hookup = tmp_path / "h.toml"
    hookup.write_text(tomli_w.dumps(simulated.demo_hookup()))
    assert job("new", folder, "--name", "fan 3", "--hookup", hookup).exit_code == 0
    assert job("brief", folder, *(part for text in BRIEF for part in ("--set", text))).exit_code == 0
    return folder


def test_a_whole_job_from_new_to_closed_and_the_next_visit(begun, tmp_path):
    code, whole = told("run", begun, *TAKE)
    assert code == 0
    assert whole["run"]["purpose"] == "initial"
    assert whole["counts"] is True
    assert whole["against"] is None
    code, whole = told("run", begun, *TAKE)
    assert whole["run"]["name"] == "repeat"
    assert {c["verdict"] for c in whole["changes"]} <= {"repeats", "doubtful"}
    _, trial = told("trial", begun)
    assert trial["mass"] == pytest.approx(8.165, abs=0.05)  # 0.1·62·9.80665/(0.31·155²) kg
    _, whole = told("mass", begun, "put", "disc = 8 g at position 1, fixing bolted")
    assert [(p["purpose"], p["position"]) for p in whole["on_rotor"]] == [("trial", 1)]
    code, whole = told("run", begun, *TAKE)
    assert whole["run"]["name"] == "trial disc"
    assert {c["verdict"] for c in whole["changes"]} == {"does not repeat"}
    assert job("mass", begun, "take", "trial", "--note", "weighed back").exit_code == 0
    code, solved = told("solve", begun)
    assert code == 0
    only = solved["corrections"][0]
    assert only["mass"] == pytest.approx(24.0, rel=0.25)  # the demonstration's unbalance is 24 g at 140°
    assert only["angle_deg"] == pytest.approx(320.0, abs=12.0)
    assert solved["plan"] == solved["entries"][0]
    assert job("mass", begun, "put", "plan").exit_code == 0
    code, whole = told("run", begun, *TAKE)
    assert (whole["run"]["purpose"], whole["against"]) == ("correction", "repeat")
    before = whole["run"]["vectors"][0]["amplitude"]
    assert before < 2.0
    code, verdict = told("verdict", begun)
    assert verdict["verdict"] == "met"
    _, following = told("next", begun)
    assert following["stage"] == "close-out"
    assert following["stages"]["brief"]["state"] == "done"
    assert job("next", begun, "--skip", "a rehearsal").exit_code == 0
    assert job("close", begun, "--accepted-by", "Lee").exit_code == 0
    code, whole = told("show", begun, "--verify")
    assert code == 0  # files are as they were, and every plan comes out again
    assert whole["closed"] is True
    assert whole["verdict"]["accepted_by"] == "Lee"
    assert len(whole["runs"]) == 4
    assert whole["starts"] == 4
    assert whole["problems"] == []
    later = tmp_path / "later"
    code, whole = told("new", later, "--from", begun)
    assert code == 0
    assert whole["taken_over"] == str(begun)
    assert told("run", later, *TAKE)[0] == 0
    code, solved = told("solve", later, "--stored")
    assert solved["corrections"][0]["mass"] == pytest.approx(24.0, rel=0.25)


def test_a_run_from_recordings_counts_no_start_and_asks_for_no_caution(begun, recordings):
    code, whole = told(
        "run", begun, "--recording", recordings["initial"], "--condition", "load = 80 %", "--minutes", "5"
    )
    assert code == 0
    assert whole["run"]["conditions"] == {"load": 80.0}
    code, whole = told(
        "run", begun, "--recording", recordings["trial"], "--kind", "trial", "--mass", "disc = 8 g at 90"
    )
    assert code == 0
    assert whole["run"]["masses"][0]["angle_deg"] == 90.0
    _, whole = told("show", begun)
    assert whole["starts"] == 0
    shown = job("show", begun).stdout
    assert "trial disc" in shown
    assert "on the rotor" in shown
    assert "next: " in shown


def test_a_run_at_another_speed_does_not_count_until_it_is_used(begun, recordings):
    told("run", begun, "--recording", recordings["initial"])
    code, whole = told("run", begun, "--recording", recordings["faster"])
    assert code == 3
    assert whole["trusted"] is False
    assert whole["refusals"][0]["rule"] == "speed"
    assert "1550 r/min" in whole["reasons"][0]
    done = job("run", begun, "--recording", recordings["trial"], "--mass", "disc = 8 g at 90")
    assert done.exit_code == 0
    assert job("use", begun, whole["run"]["id"], "--why", "the drive cannot go slower").exit_code == 0
    assert all(r["counts"] for r in told("show", begun)[1]["runs"])
    assert job("use", begun, "repeat", "--why", "after all not", "--leave-out").exit_code == 0
    assert [r["counts"] for r in told("show", begun)[1]["runs"]] == [True, False, True]


def test_cautions_must_be_acknowledged_by_somebody(begun):
    record = (begun / "job.jsonl").read_bytes()
    done = stillshaft("job", "run", begun, "simulated", "--fast")
    assert done.returncode == 1
    assert "[x] Everybody is out and clear" in done.stderr
    assert "the cautions were not acknowledged: nothing was started" in done.stderr
    assert (begun / "job.jsonl").read_bytes() == record
    _, whole = told("caution", begun, "--before", "hands", "--acknowledge", "Kim")
    assert any("blocked" in c["text"] for c in whole["cautions"])
    with Job.open(begun, read_only=True) as opened:
        assert opened.state.cautions[0].what.who == "Kim"


def test_crossing_the_abort_level_calls_for_the_stop_and_is_recorded(begun):
    job("brief", begun, "--set", "abort.drive end horizontal = 2 mm/s rms")
    done = job("run", begun, *TAKE)
    assert "STOP THE MACHINE: drive end horizontal" in done.stderr
    with Job.open(begun, read_only=True) as opened:
        assert [a.what.point for a in opened.state.alarms] == ["drive end horizontal"]
        assert opened.state.alarms[0].what.level == pytest.approx(2.0)
    assert told("next", begun)[1]["act"] == "alarm-bare"  # nothing is on that could come off


def test_a_run_can_wait_for_the_machine_to_settle_and_keeps_what_it_saw(begun, recordings):
    _, whole = told("run", begun, *TAKE, "--settle", "0.2")
    seen = whole["settling"]
    assert seen["verdict"] == "cannot be told"
    assert seen["watched_s"] >= 12.0
    with Job.open(begun, read_only=True) as opened:
        kinds = [e.kind for e in opened.events]
        assert kinds[-3:] == ["measured", "hookup", "run"]  # the edge is kept with the first run
        figures = opened.state.measured[-1].what.figures
        assert len(figures["times_s"]) == len(figures["vectors"]["drive end horizontal"]) >= 2
        amplitude, phase_deg = figures["vectors"]["drive end horizontal"][0]
        vector = opened.state.runs[0].what.vectors[0]
        assert amplitude == pytest.approx(vector.amplitude, rel=0.05)
        assert phase_deg == pytest.approx(vector.phase_deg, abs=5.0)
    done = job("run", begun, *TAKE, "--running", "--name", "again")
    assert "1x moved by" in done.stdout
    assert "whether it has settled takes five minutes to tell (--settle MINUTES watches it before a run)" in done.stdout
    done = job("run", begun, "--recording", recordings["initial"], "--settle", "5")
    assert done.exit_code == 2
    assert "only a source can be watched" in done.stderr


def test_how_warm_the_machine_was_is_kept_with_its_start(begun, recordings):
    told("run", begun, *TAKE, "--was", "cold")
    with Job.open(begun, read_only=True) as opened:
        assert [s.what.temperature for s in opened.state.starts] == ["cold"]
    for more, match in (
        ((*TAKE, "--was", "tepid"), "tepid: cold, warm or hot"),
        ((*TAKE, "--running", "--was", "warm"), "--was: is said of a start, and this run has none"),
        (("--recording", recordings["initial"], "--was", "warm"), "--was: is said of a start, and this run has none"),
    ):
        done = job("run", begun, *more)
        assert done.exit_code == 2
        assert match in " ".join(done.stderr.split())


def test_an_earlier_recording_above_the_abort_level_calls_too(begun, recordings):
    job("brief", begun, "--set", "abort.drive end horizontal = 2 mm/s rms")
    done = job("run", begun, "--recording", recordings["initial"])
    assert "STOP THE MACHINE IF IT RUNS (seen in a recording that was made elsewhere)" in done.stderr


def test_bad_input_is_one_line_and_leaves_the_job_as_it_was(begun, recordings, tmp_path):
    told("run", begun, "--recording", recordings["initial"])
    for match, *arguments in (
        ("position 13 does not exist; there are 1 to 12", "mass", begun, "put", "disc = 8 g at position 13"),
        ('plane "hub": there is none; the brief has disc', "mass", begun, "put", "hub = 8 g at 0"),
        ("is not on the rotor; on it is nothing", "mass", begun, "take", "trial"),
        ("placed: name the entry first", "mass", begun, "placed", "disc = 8 g at 3"),
        ("plan: there is none yet", "mass", begun, "put", "plan"),
        ("was recorded with another hook-up", "run", begun, "--recording", recordings["other"]),
        ("there is no such recording", "run", begun, "--recording", tmp_path / "none.au"),
        ('"luck" is no purpose', "run", begun, "--recording", recordings["trial"], "--kind", "luck"),
        ('is the recording of run "initial" already', "run", begun, "--recording", recordings["initial"]),
        ("write name = value", "run", begun, "--recording", recordings["trial"], "--condition", "hot"),
        ("rotor.mass", "brief", begun, "--set", "rotor.mass = heavy"),
        ('check "teeth": is none', "inspect", begun, "teeth", "fine"),
        ("a check that was not done needs a reason", "inspect", begun, "rotor", "not-done"),
        ('run "luck": there is none; there is "initial"', "use", begun, "luck", "--why", "x"),
        ("there is no entry 99 before it", "withdraw", begun, 99, "--why", "x"),
        ("disc", "solve", begun),
        ("no coefficients were taken over", "solve", begun, "--stored"),
        ("there is no verdict to accept", "close", begun, "--accepted-by", "Lee"),
        ("is none of the hook-up", "reference", begun, "sensor swapped", "--point", "roof"),
        ("skip: needs a reason", "next", begun, "--skip", " "),
    ):
        assert_refused_here(begun, match, *arguments)
    assert_refused(begun, "position 0 does not exist", "mass", begun, "put", "disc = 8 g at position 0")
    assert len(list((begun / "recordings").glob("*.au"))) == 1


def test_folders_that_hold_no_job(begun, recordings, tmp_path):
    empty = tmp_path / "empty"
    empty.mkdir()
    assert_refused(empty, "holds no job", "show", empty)
    assert_refused(tmp_path / "none", "holds no job", "next", tmp_path / "none")
    assert not (tmp_path / "none").exists()
    assert list(empty.iterdir()) == []
    assert_refused(begun, "holds a job already", "new", begun)
    half = tmp_path / "half"
    told("run", begun, "--recording", recordings["initial"])
    half.mkdir()
    # a copy that was broken off: the record without its end, and no recordings
    (half / "job.jsonl").write_bytes((begun / "job.jsonl").read_bytes()[:-40])
    code, whole = told("show", half)
    assert code == 0
    assert whole["runs"] == []
    assert whole["problems"]
    shutil.copy(begun / "job.jsonl", half / "job.jsonl")
    code, whole = told("show", half)
    assert len(whole["runs"]) == 1
    assert any("recordings/0001.au is missing" in p for p in whole["problems"])
    assert told("show", half, "--verify")[0] == 3


def test_acts_that_need_more_say_what(begun, recordings, tmp_path):
    two = tmp_path / "two"
    job("new", two)
    told("run", begun, "--recording", recordings["initial"])
    told("mass", begun, "put", "disc = 8 g at 90")
    told("run", begun, "--recording", recordings["trial"])
    told("solve", begun)
    job("brief", begun, "--set", "conditions.load = 5 %")
    for folder, match, *arguments in (
        (two, "trial: name the plane; the brief has none yet", "trial", two),
        (begun, "trial masses are still on; take them off first", "mass", begun, "put", "plan"),
        (begun, "pieces: none were chosen yet", "mass", begun, "put", "pieces"),
        (
            begun,
            "the brief has load in %",
            "run",
            begun,
            "--recording",
            recordings["faster"],
            "--condition",
            "load = 3 bar",
        ),
        (begun, "accepted or refused: give one of them", "close", begun, "--accepted-by", "A", "--refused-by", "B"),
        (begun, "trial masses are still on", "close", begun),
    ):
        assert_refused_here(folder, match, *arguments)
    entry = told("show", begun)[1]["on_rotor"][0]["entry"]
    assert_refused_here(begun, "say where the pieces really sit, or give a --photo", "mass", begun, "placed", entry)
    none = tmp_path / "none.jpg"
    assert_refused_here(begun, "there is no such photo", "mass", begun, "placed", entry, "--photo", none)
    photo = tmp_path / "p.jpg"
    photo.write_bytes(b"jpg")
    assert job("mass", begun, "placed", entry, "disc = 8.1 g at 91", "--photo", photo).exit_code == 0
    placed = told("show", begun)[1]["on_rotor"][0]
    assert (placed["mass_g"], placed["angle_deg"], placed["purpose"]) == (pytest.approx(8.1), 91.0, "trial")


def test_trial_masses_are_weighed_back_in_later(begun, recordings):
    told("run", begun, "--recording", recordings["initial"])
    told("mass", begun, "put", "disc = 8 g at 90")
    weighed = ("mass", begun, "weighed")
    assert_refused_here(begun, "no trial mass that was taken off lacks a note", *weighed, "all", "--note", "x")
    told("mass", begun, "take", "trial")
    with Job.open(begun, read_only=True) as opened:
        assert [act for act, _ in progress.left_at_the_end(opened.state, 10.0)][0] == "weigh-back"
        taken = opened.state.masses[-1].id
    assert_refused_here(begun, "weighing back: say what it told", *weighed, "all")
    assert_refused_here(
        begun, f"entry 1 took no trial mass off that lacks a note; {taken} did", *weighed, "1", "--note", "8 g"
    )
    assert_refused_here(begun, '"trial" is no entry', *weighed, "trial", "--note", "8 g")
    assert job(*weighed, taken, "--note", "7.9 g, all back").exit_code == 0
    with Job.open(begun, read_only=True) as opened:
        assert "weigh-back" not in [act for act, _ in progress.left_at_the_end(opened.state, 10.0)]


def test_a_failed_run_takes_its_mass_back(begun, recordings):
    code, whole = told("show", begun)
    done = stillshaft("job", "run", begun, "--recording", recordings["other"], "--mass", "disc = 8 g at 90")
    assert done.returncode == 1
    assert told("show", begun)[1]["on_rotor"] == []
    told("run", begun, "--recording", recordings["trial"], "--mass", "disc = 8 g at 90")
    assert_refused(
        begun,
        "is on the rotor already",
        "run",
        begun,
        "--recording",
        recordings["initial"],
        "--mass",
        "disc = 8 g at 90",
    )


def test_undo_and_redo(begun):
    told("mass", begun, "put", "disc = 8 g at 0")
    _, whole = told("undo", begun)
    assert whole["undone"] is not None
    assert told("show", begun)[1]["on_rotor"] == []
    assert told("redo", begun)[1]["done_again"] is not None
    assert len(told("show", begun)[1]["on_rotor"]) == 1
    assert job("undo", begun, by="Lee").stdout == "there is nothing of yours to undo\n"


def test_inspection_and_measured_checks(begun, recordings, tmp_path):
    photo = tmp_path / "p.jpg"
    photo.write_bytes(b"jpg")
    code, whole = told("check", begun, "spectrum", "--recording", recordings["initial"])
    assert code == 0
    assert whole["figures"]["evidence"]["share_1x"]["value"] > 50.0
    done = job("inspect", begun, "spectrum", "fine", "--evidence", whole["entries"][0], "--photo", photo)
    assert done.exit_code == 0
    _, listed = told("inspect", begun)
    assert next(c["outcome"] for c in listed["checks"] if c["key"] == "spectrum") == "fine"
    assert "rotor" in job("inspect", begun).stdout
    done = job("check", begun, "signals", "--recording", recordings["initial"])
    assert done.exit_code == 0
    assert "recorded as entry" in done.stdout
    assert "the rising edge of the pulse is kept for all runs" in done.stdout
    with Job.open(begun, read_only=True) as opened_again:
        assert opened_again.state.hookup["pulse"]["edge"] == "rising"
        assert not opened_again.state.runs
    told("run", begun, "--recording", begun / "recordings" / "0001.au")
    assert told("check", begun, "spectrum", "--run", "initial")[0] == 0


def test_a_change_of_reference_with_known_and_unknown_turn(begun, recordings, tmp_path):
    told("run", begun, "--recording", recordings["initial"])
    told("run", begun, "--recording", recordings["trial"], "--mass", "disc = 8 g at 90")
    assert job("reference", begun, "mark moved", "--why", "paint came off").exit_code == 0
    again = recorded(tmp_path / "again.au", [("disc", 8.0, 90.0)], seed=7)
    code, whole = told("run", begun, "--recording", again, "--kind", "re-reference")
    assert code == 0
    assert whole["turn"]["common_deg"] == pytest.approx(0.0, abs=4.0)
    with Job.open(begun, read_only=True) as opened:
        known = opened.state.references[-1].what
        assert known.turn_deg == pytest.approx(whole["turn"]["common_deg"])
        assert known.angle_turn_deg == known.turn_deg
        assert {r.epoch for r in opened.state.runs} == {0}
    assert told("solve", begun)[0] in (0, 3)


def test_the_dialogue_on_standard_input_ends_where_the_input_ends(begun):
    done = stillshaft("job", "brief", begun, "--ask", text="\nfan\n?\nroof\n")
    assert done.returncode == 0
    assert "the input ended in the middle: 2 answers are kept" in done.stderr
    assert "machine.place = roof" in done.stdout
    code, whole = told("show", begun)
    assert whole["brief"]["machine"] == {"name": "extraction fan", "type": "fan", "place": "roof"}


@pytest.mark.skipif(sys.platform == "win32", reason="sends SIGINT")
def test_breaking_off_the_dialogue_keeps_the_answers(begun):
    running = subprocess.Popen(
        [*RUN, "job", "brief", str(begun), "--ask"], stdin=subprocess.PIPE, stdout=subprocess.PIPE,
        stderr=subprocess.PIPE, text=True, bufsize=1,
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL),
    )  # fmt: skip
    running.stdin.write("fan 4\n")
    running.stdin.flush()
    deadline = time.monotonic() + 20.0
    while b"fan 4" not in (begun / "job.jsonl").read_bytes():
        assert time.monotonic() < deadline
        time.sleep(0.05)
    time.sleep(0.3)
    running.send_signal(signal.SIGINT)
    _, errors = running.communicate(timeout=20)
    assert running.returncode == 130
    assert "Traceback" not in errors
    assert told("show", begun)[1]["brief"]["machine"]["name"] == "fan 4"


@pytest.mark.skipif(sys.platform == "win32", reason="sends SIGKILL")
def test_kill_in_the_middle_of_a_run_keeps_the_record(begun, recordings):
    told("run", begun, "--recording", recordings["initial"])
    running = subprocess.Popen(
        [*RUN, "job", "run", str(begun), "simulated", "--acknowledge", "Kim", "--seconds", "60"],
        stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
    )  # fmt: skip
    going = begun / "recordings" / "0002.au"
    deadline = time.monotonic() + 30.0
    while not (going.exists() and going.stat().st_size > 400_000):
        assert time.monotonic() < deadline
        time.sleep(0.05)
    second = stillshaft("job", "undo", begun)
    assert second.returncode == 1
    assert "is open in another program" in second.stderr
    assert told("show", begun)[0] == 0  # reading is always possible
    running.kill()
    running.wait(timeout=20)
    time.sleep(1.0)  # the keeper ends by itself when the program is gone
    code, whole = told("show", begun)
    assert code == 0
    assert [r["name"] for r in whole["runs"]] == ["initial"]
    assert any("0002.au: belongs to no run" in p for p in whole["problems"])
    # the lock of a program that is gone keeps nobody out, and what was recorded can be taken
    code, whole = told("run", begun, "--recording", going)
    assert whole["run"]["name"] == "repeat"
    assert whole["problems"] == []


def test_names_from_outside_do_not_reach_the_terminal_as_they_are(tmp_path):
    folder = tmp_path / "j"
    evil = "fan\x1b]0;owned\x07\x1b[2J [bold]x"
    assert job("new", folder, "--name", evil).exit_code == 0
    assert job("decide", folder, "look\x1b[31m", "--why", "red").exit_code == 0
    for verb in ("show", "next"):
        done = stillshaft("job", verb, folder)
        assert "\x1b" not in done.stdout + done.stderr
    assert "[bold]x" in stillshaft("job", "show", folder).stdout


def test_several_entries_of_the_brief_are_taken_together_or_not_at_all(begun):
    code, before = told("brief", begun)
    with pytest.raises(ValueError, match="rotor.kind: must be between bearings or overhung"):
        job("brief", begun, "--set", "rotor.mass = 41 kg", "--set", "rotor.kind = round")
    assert told("brief", begun)[1]["brief"] == before["brief"]
    _, whole = told("brief", begun, "--set", "planes.hub.radius = 90 mm", "--set", "planes.hub.z = 10 mm")
    assert len(whole["entries"]) == 1
    assert [p["name"] for p in whole["brief"]["planes"]] == [*(p["name"] for p in before["brief"]["planes"]), "hub"]
    assert whole["brief"]["planes"][-1] == {"name": "hub", "radius": "90 mm", "z": "10 mm"}


def test_a_level_at_a_point_that_is_not_wired_is_said_when_it_is_set(begun):
    done = job("brief", begun, "--set", "abort.elsewhere = 9 mm/s rms")
    assert done.exit_code == 0
    assert 'warning: the abort level at "elsewhere" watches nothing' in done.stderr
    assert told("next", begun)[1]["act"] == "name-points"


def test_a_plan_that_the_rotor_does_not_fit_any_more_is_not_put_on(begun):
    assert told("run", begun, *TAKE)[0] == 0
    job("mass", begun, "put", "disc = 8 g at position 1, fixing bolted")
    assert told("run", begun, *TAKE)[0] == 0
    job("mass", begun, "take", "trial")
    assert told("solve", begun)[0] == 0
    assert job("mass", begun, "put", "plan").exit_code == 0
    with pytest.raises(ValueError, match="what is on the rotor is not what the last run was taken with"):
        job("mass", begun, "put", "plan")
    assert told("run", begun, *TAKE)[0] == 0
    with pytest.raises(ValueError, match="the runs that count are others since; solve again"):
        job("mass", begun, "put", "plan")


def test_a_run_that_does_not_count_says_so_beside_the_result(begun):
    done = job("run", begun, *TAKE[:-1], "2")
    assert done.exit_code == 3
    assert 'run "initial" does not count' in done.stderr
