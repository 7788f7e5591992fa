"""The session of a job: each act writes one entry, refuses what cannot be in one line, and loses nothing."""

import json
from pathlib import Path

import numpy as np
import pytest
from balancing_jobs import balancing_job
from stillshaft.acquire import hookup as wiring
from stillshaft.acquire import recording, simulated
from stillshaft.solver import correction, events, inspection, run_vectors
from stillshaft.solver.folder import RecordError
from stillshaft.solver.replay import replay, runs_of, verify_files
from stillshaft.solver.runs_file import load_runs
from stillshaft.ui import job_checks, job_facts, job_masses, job_visit, session, taking
from stillshaft.ui.session import Session, Wanted
from stillshaft.ui.session_base import SessionError

BRIEF = {
    "machine": {"name": "extraction fan", "type": "fan"},
    "rotor": {"kind": "between bearings", "mass": "62 kg", "speed_rpm": 1480.0, "highest_speed_rpm": 1500.0},
    "planes": [{"name": "disc", "radius": "310 mm", "positions": 12, "blocked": [7]}],
    "goal": {"grade": "G6.3"},
}


def recorded(path, masses=(), *, seconds=16.0, seed=1, hookup=None, **conditions):
    """A recording of the demonstration rotor with one plane."""
    run = simulated.demo_run(1, list(masses), seed=seed, real_time=False, seconds=seconds)
    told = simulated.Conditions(**({"speed_rpm": simulated.DEMO_SPEED_RPM} | conditions))
    source = simulated.SimulatedRun(run.rotor, run.sensors, run.unbalance, told, seed, seconds, False).open()
    recorder = recording.Recorder(path, 48_000.0, ["pulse", "a", "b"], "simulated", hookup or simulated.demo_hookup())
    while (block := source.read(1.0)) is not None:
        recorder.write(block.samples)
    recorder.close(complete=True)
    return path


@pytest.fixture(scope="module")
def recordings(tmp_path_factory):
    """An initial run, its repeat, a trial of 8 g at 90°, one at another speed, one with a wide mark, one with a neighbour."""
    folder = tmp_path_factory.mktemp("r")
    return {
        "initial": recorded(folder / "initial.au"),
        "repeat": recorded(folder / "repeat.au", seed=2),
        "trial": recorded(folder / "trial.au", [("disc", 8.0, 90.0)], seed=3),
        "faster": recorded(folder / "faster.au", seed=4, speed_rpm=1550.0),
        "wide": recorded(folder / "wide.au", seed=5, pulse_duty=0.06),
        "neighbour": recorded(folder / "neighbour.au", seed=6, neighbour=(24.9, 2.2)),
    }


@pytest.fixture
def job(tmp_path):
    with Session.create(tmp_path / "job", "fan 3", "Kim", simulated.demo_hookup()) as opened:
        opened.describe(BRIEF)
        yield opened


def kinds(opened):
    return [event.kind for event in opened.job.events]


def test_the_first_run_resolves_the_edge_and_keeps_it(job, recordings):
    taken = job.add_run(recordings["initial"])
    assert kinds(job) == ["started", "hookup", "brief", "hookup", "run"]
    assert job.hookup.pulse.edge == "rising"
    assert taken.run.counts
    assert (taken.run.what.purpose, taken.run.what.name) == ("initial", "initial")
    assert job.add_run(recordings["repeat"]).run.what.purpose == "repeat"
    assert kinds(job).count("hookup") == 2
    assert verify_files(job.job) == ()


def test_a_job_from_initial_run_to_verdict(job, recordings):
    told = []
    job.changed.append(lambda: told.append(len(job.job.events)))
    job.add_run(recordings["initial"])
    put = job.put_on(job_masses.pieces_from(["disc = 8 g at position 4"], job.brief.planes), "trial")
    taken = job.add_run(recordings["trial"])
    assert taken.run.what.name == "trial disc"
    assert [(p.mass_g, p.angle_deg, p.position) for p in taken.run.what.masses] == [(pytest.approx(8.0), 90.0, 4)]
    assert taken.against == "initial"
    assert {c.verdict for c in taken.changes} == {"does not repeat"}
    plan, solution = job.solve()
    correction = solution.corrections[0]
    assert correction.mass == pytest.approx(24.0, rel=0.2)  # the demonstration's unbalance is 24 g at 140°
    assert correction.angle_deg == pytest.approx(320.0, abs=12.0)
    assert plan.what.result["corrections"][0]["mass"] == correction.mass
    with pytest.raises(SessionError, match="trial masses are still on"):
        job.finish()
    job.take_off(job.on_rotor("trial"))
    assert job.state.on_rotor == ()
    _, found = job.judge()
    assert found.verdict == "not met"
    job.finish(accepted_by="Lee")
    assert job.state.closed
    assert job.state.verdicts[-1].what.accepted_by == "Lee"
    assert (job.folder / "coefficients.toml").exists()
    assert told == list(range(4, len(job.job.events) + 1))
    assert [r.differences for r in replay(job.job)] == [()]
    with pytest.raises(SessionError, match="the job is closed; reopen it first"):
        job.add_run(recordings["repeat"])
    assert put.id in job.purposes()


def heard(source, path, columns, gain):
    """The recording with these columns at the inputs, the first sensor reading `gain` times too much wherever it sits."""
    import soundfile

    samples, rate = soundfile.read(source, dtype="float32")
    recorder = recording.Recorder(path, float(rate), ["pulse", "a", "b"], "simulated", simulated.demo_hookup())
    recorder.write(samples[:, columns] * np.array([1.0, gain, 1.0], dtype=np.float32))
    recorder.close(complete=True)
    return path


@pytest.mark.parametrize(("gain", "verdict"), [(1.0, "alike"), (1.25, "differ")])
def test_two_sensors_in_each_others_place_tell_whether_they_read_alike(job, recordings, tmp_path, gain, verdict):
    job.add_run(heard(recordings["initial"], tmp_path / "initial.au", [0, 1, 2], gain))
    names = [p.name for p in job.hookup.points]
    path = heard(recordings["repeat"], tmp_path / "swap.au", [0, 2, 1], gain)
    event, checked = job.check("swap", path, points=names)
    assert event.what.what == "swap of sensors"
    assert checked.figures["verdict"] == verdict
    assert checked.trusted is (verdict == "alike")
    with pytest.raises(job_checks.CheckError, match="swap: name two of the points"):
        job.check("swap", path, points=names[:1])


def test_a_cleaned_rotor_begins_anew_and_keeps_its_coefficients(job, recordings):
    with pytest.raises(SessionError, match="cleaned: there is no run yet"):
        job.clean("blades scraped")
    job.add_run(recordings["initial"])
    job.put_on(job_masses.pieces_from(["disc = 8 g at position 4"], job.brief.planes), "trial")
    job.add_run(recordings["trial"])
    job.take_off(job.on_rotor("trial"))
    job.clean("blades scraped")
    job.add_run(recordings["repeat"])
    table = runs_of(job.state)
    assert [run.get("initial_state", 1) for run in table["run"]] == [1, 1, 2]
    assert job.worked().solution.corrections[0].determined
    job.solve()
    assert [r.differences for r in replay(job.job)] == [()]


def test_what_is_assumed_of_the_machine_is_one_in_masses_plan_verdict_and_file(job, recordings, tmp_path):
    job.add_run(recordings["initial"])
    job.put_on(job_masses.pieces_from(["disc = 8 g at position 4"], job.brief.planes), "trial")
    job.add_run(recordings["trial"])
    strength = {}
    for drive, percent in (("direct", 2.0), ("belt", 5.0)):
        job.describe({"drive": {"kind": drive}})
        _, solution = job.solve()
        strength[drive] = solution.trials[0].strength
        job_facts.write_runs_file(job.state, job.folder, tmp_path / "runs.toml")
        exported = load_runs(tmp_path / "runs.toml")
        assert exported.repeatability[0] == pytest.approx(0.01 * percent)
        for found in (job.worked().solution, correction.solve(exported)):
            assert (found.corrections, found.warnings) == (solution.corrections, solution.warnings)
        assert job_facts.runs_for(job.state, job.folder).runs[-1].covariance == pytest.approx(
            exported.runs[-1].covariance
        )
    assert strength["belt"] < 0.5 * strength["direct"]
    sweep = {"points": [{"name": "drive end horizontal", "resonances": [{"rpm": 1600.0}]}]}
    job.job.append("measured", what="sweep", figures=sweep)
    assert "is assumed: a resonance near running speed" in job.worked().solution.warnings[0]
    assert job.worked().solution.trials[0].strength < 0.6 * strength["belt"]
    assert [r.differences for r in replay(job.job)] == [(), ()]


def test_a_visit_begun_from_a_runs_file_says_that_its_repeatability_was_assumed(tmp_path):
    text = (Path(__file__).parents[2] / "fixtures/rao_two_plane.toml").read_text()
    assert "repeatability" not in text
    (tmp_path / "r.toml").write_text(
        text.replace("format = 1", 'format = 1\nassumed_repeatability = "5 % 5 deg: belt drive"')
    )
    found = job_visit.taken_over(tmp_path / "r.toml")
    assert "repeatability" not in found.brief
    assert found.remarks == (
        "the runs file assumes a repeatability of 5 % 5 deg: belt drive: say in the brief what calls for it",
    )


def test_what_follows_is_worked_out_once_until_the_record_grows(job, recordings):
    job.add_run(recordings["initial"])
    first = job.worked()
    assert job.worked() is first
    assert first.solution is None
    assert "disc" in first.solution_error
    job.decide("wait for the night shift")
    assert job.worked() is not first


def test_a_run_that_is_refused_is_recorded_and_does_not_count_until_used(job, recordings):
    job.add_run(recordings["initial"])
    taken = job.add_run(recordings["faster"])
    assert not taken.run.counts
    assert "1550 r/min" in " ".join(taken.run.reasons)
    job.use(taken.run.id, "the drive cannot go slower")
    assert job.run_named(str(taken.run.id)).counts
    job.use(taken.run.id, "another setpoint after all", counts=False)
    assert not job.run_named("repeat").counts


def test_a_run_may_be_used_anyway_where_the_rule_allows_it(job, recordings):
    job.add_run(recordings["initial"])
    assert job.add_run(recordings["faster"], Wanted(use_anyway="no other speed")).run.counts
    wide = job.add_run(recordings["wide"], Wanted(use_anyway="it is fine"))
    assert not wide.run.counts
    assert "the mark covers 21" in " ".join(wide.run.reasons)


def test_a_second_source_keeps_a_run_from_counting(job, recordings):
    taken = job.add_run(recordings["neighbour"])
    assert not taken.run.counts
    assert any(v.verdict in ("beating", "walking") for v in taken.run.what.vectors)


def test_a_recording_of_another_hookup_is_refused_and_not_copied(job, recordings, tmp_path):
    job.add_run(recordings["initial"])
    before = (job.folder / "job.jsonl").read_bytes()
    other = simulated.demo_hookup()
    other["point"][0]["angle"] = 0.0
    with pytest.raises(SessionError, match="was recorded with another hook-up"):
        job.add_run(recorded(tmp_path / "o.au", seconds=2.0, hookup=other))
    with pytest.raises(SessionError, match='is the recording of run "initial" already'):
        job.add_run(recordings["initial"])
    with pytest.raises(SessionError, match="there is no such recording"):
        job.add_run(tmp_path / "none.au")
    assert (job.folder / "job.jsonl").read_bytes() == before
    assert len(list((job.folder / "recordings").iterdir())) == 2


def test_a_recording_that_cannot_be_measured_is_kept_and_named(job, tmp_path):
    flat = tmp_path / "flat.au"
    recorder = recording.Recorder(flat, 48_000.0, ["pulse", "a", "b"], "still", simulated.demo_hookup())
    recorder.write(np.zeros((96_000, 3), dtype="float32"))
    recorder.close(complete=True)
    before = kinds(job)
    with pytest.raises(SessionError, match=r"0001\.au: .*; the recording is kept, and no run was made of it"):
        job.add_run(flat)
    assert kinds(job) == before
    assert [p.name for p in job.unused_recordings()] == ["0001.au"]
    assert "belongs to no run" in job.problems[-1]


def test_another_hookup_after_runs_needs_a_change_of_reference(job, recordings):
    job.add_run(recordings["initial"])
    other = simulated.demo_hookup()
    other["pulse"]["angle"] = 30.0
    with pytest.raises(SessionError, match="runs were taken with another one"):
        job.wire(other)
    job.change_reference("pulse sensor moved by 30°", 30.0)
    job.wire(other)
    assert job.hookup.pulse.angle_deg == 30.0
    with pytest.raises(SessionError, match="is none of the hook-up"):
        job.change_reference("sensor swapped", points=["roof"])


def test_a_broken_hookup_leaves_no_folder(tmp_path):
    with pytest.raises(wiring.HookupError, match="needs at least one"):
        Session.create(tmp_path / "job", "fan", "Kim", {"format": 1, "point": []})
    assert not (tmp_path / "job").exists()


def test_checks_of_the_machine_are_recorded_with_photo_and_evidence(job, recordings, tmp_path):
    photo = tmp_path / "blade.jpg"
    photo.write_bytes(b"jpg")
    event, found = job.check("spectrum", recordings["initial"])
    assert event.what.what == "spectrum"
    assert found.figures["evidence"]["share_1x"]["value"] > 50.0
    job.inspect("spectrum", "fine", "nearly all 1x", [photo], evidence=event.id)
    assert job.state.checks["spectrum"].what.photos[0].path == "photos/blade.jpg"
    assert job.worked().diagnosis.causes[0].key == "unbalance"
    with pytest.raises(SessionError, match='check "teeth": is none of this machine'):
        job.inspect("teeth", "fine")
    with pytest.raises(RecordError, match="needs a reason"):
        job.inspect("rotor", "not done", photos=[photo])
    assert len(list((job.folder / "photos").iterdir())) == 1
    with pytest.raises(SessionError, match="there is no such photo"):
        job.add_photo(tmp_path / "none.jpg")
    with pytest.raises(SessionError, match='check "luck": is none'):
        job.check("luck", recordings["initial"])


def test_signals_and_repeatability_are_checks_with_their_recording(job, recordings):
    assert job.hookup.pulse.edge == "auto"
    event, _ = job.check("signals", recordings["initial"], stopped=True)
    assert "mark" not in event.what.figures  # pulses at a standstill are no mark
    assert job.hookup.pulse.edge == "auto"
    event, _ = job.check("signals", job.folder / "recordings" / "0001.au")
    assert event.what.trusted
    assert event.what.recording.path == "recordings/0001.au"
    # 2 % of a revolution high, to half of full scale (Conditions)
    mark = event.what.figures["mark"]
    assert (mark["edge"], mark["width_deg"]) == ("rising", pytest.approx(7.2, abs=0.3))
    assert mark["threshold"] == pytest.approx(0.25, abs=0.02)
    assert job.hookup.pulse.edge == "rising"
    with pytest.raises(SessionError, match="needs two runs without masses"):
        job.check("repeatability")
    job.add_run(job.folder / "recordings" / "0001.au")
    job.add_run(recordings["repeat"])
    _, found = job.check("repeatability")
    assert [p["verdict"] for p in found.figures["points"]] == ["repeats", "repeats"]
    moved = job_checks.from_record(job.state)["repeat_change"]  # what the diagnosis knows of it
    assert moved.value < 5.0
    assert moved.where in {p["point"] for p in found.figures["points"]}


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("disc 8 g", "write plane, mass and place"),
        ("hub = 8 g at 90", 'plane "hub": there is none; the brief has disc'),
        ("disc = 8 g at position 13", r"position 13 does not exist; there are 1 to 12"),
        ("disc = 8 g at position 0", r"position 0 does not exist"),
        ("disc = 8 g at position 7", "position 7 is blocked"),
        ("disc = 0 g at 90", "is no mass"),
        ("disc = 8 g at 90, radius -2 mm", "must be above 0"),
        ("disc = 8 g at 90, glue", '"glue" says nothing'),
    ],
)
def test_masses_that_cannot_be_are_refused(job, text, message):
    with pytest.raises(job_masses.MassError, match=message):
        job_masses.pieces_from([text], job.brief.planes)


def test_a_mass_says_position_radius_and_fixing(job):
    piece = job_masses.pieces_from(["disc = 1 oz at position 4, radius 290 mm, fixing bolted"], job.brief.planes)[0]
    assert piece == {
        "plane": "disc", "mass_g": pytest.approx(28.3495, abs=1e-3), "angle_deg": 90.0, "position": 4,
        "radius_mm": pytest.approx(290.0), "fixing": "bolted",
    }  # fmt: skip


def test_pieces_on_the_rotor_are_named_by_entry_plane_purpose_and_mass(job):
    pieces = job_masses.pieces_from(["disc = 8 g at 90", "disc = 3 g at 200"], job.brief.planes)
    put = job.put_on(pieces, "correction")
    assert len(job.on_rotor("all")) == len(job.on_rotor("disc")) == len(job.on_rotor("correction")) == 2
    assert [on.piece.mass_g for on in job.on_rotor(f"{put.id}.2")] == [pytest.approx(3.0)]
    with pytest.raises(job_masses.MassError, match="is not on the rotor; on it is"):
        job.on_rotor("disc = 9 g at 90")
    job.take_off(job.on_rotor("disc = 3 g at 200"))
    job.really_placed(put.id, job_masses.pieces_from(["disc = 8.2 g at 93"], job.brief.planes))
    assert [on.piece.angle_deg for on in job.state.on_rotor] == [93.0]
    assert job.on_rotor("correction")[0].piece.mass_g == pytest.approx(8.2)


def test_undo_and_redo_take_acts_back(job):
    job.describe({"machine": {"place": "roof"}})
    job.undo()
    assert job.brief.machine.place is None
    job.redo()
    assert job.brief.machine.place == "roof"
    job.withdraw(job.job.events[2].id, "another machine")
    assert job.brief.planes == []


def test_a_trial_mass_is_worked_out_from_the_brief(job):
    trial = job.suggest_trial("disc")
    # a tenth of the rotor's weight at 310 mm and 1480 r/min: 0.1·62·9.80665/(0.31·155²) kg
    assert 1000.0 * trial.mass_kg == pytest.approx(8.165, abs=0.01)
    job.describe({"rotor": {"mass": None}})
    with pytest.raises(ValueError, match=r"the brief does not say rotor\.mass"):
        job.suggest_trial("disc")


def test_the_next_visit_takes_over_what_lasts(job, recordings, tmp_path):
    job.describe({"interview": {"began": "slowly"}})
    job.add_run(recordings["initial"])
    job.put_on(job_masses.pieces_from(["disc = 8 g at 90"], job.brief.planes), "trial")
    job.add_run(recordings["trial"])
    with Session.next_visit(tmp_path / "again", None, "Kim", job.folder) as later:
        assert later.state.name == "fan 3"
        assert later.brief.rotor == job.brief.rotor
        assert later.brief.interview == {}
        assert later.hookup.pulse.edge == "rising"
        assert later.state.runs == ()
        later.add_run(recordings["repeat"])
        # with the coefficients of the earlier visit the initial run is enough
        event, solution = later.solve_with_stored()
        assert solution.corrections[0].mass == pytest.approx(24.0, rel=0.2)
        assert event.what.what == "correction by stored coefficients"
        trial = later.suggest_trial("disc")
        assert trial.angle_deg == pytest.approx(320.0, abs=15.0)


def test_a_source_is_recorded_into_the_job(job):
    path = job.record_source(simulated.demo_run(1, [], seed=3, real_time=False), taking.Stop(16.0))
    assert path.name == "0001.au"
    assert job.add_run(path).run.counts
    events = path.with_suffix(".events.jsonl").read_text().splitlines()
    assert json.loads(events[-1])["complete"] is True


def test_a_job_without_a_hookup_takes_that_of_its_first_recording(tmp_path, recordings):
    with Session.create(tmp_path / "job", "fan", "Kim") as opened:
        with pytest.raises(SessionError, match="has no hook-up yet"):
            opened.record_source(simulated.demo_run(1, [], seed=3, real_time=False), taking.Stop(2.0))
        opened.add_run(recordings["initial"])
        assert opened.hookup.pulse.edge == "rising"
        assert len(opened.hookup.points) == 2


def test_two_programs_on_one_job(job):
    with pytest.raises(RecordError, match="is open in another program"):
        Session.open(job.folder)
    with Session.open(job.folder, read_only=True) as reader:
        assert reader.state.name == "fan 3"
        with pytest.raises(SessionError, match="is open to read only"):
            reader.add_run(job.folder / "x.au")


def test_purposes_are_all_known_to_the_record(job, recordings):
    with pytest.raises(SessionError, match='"luck" is no purpose'):
        job.add_run(recordings["initial"], Wanted("luck"))
    assert set(session.PURPOSES) >= {"initial", "repeat", "trial", "correction", "trim", "check"}


def test_what_cannot_be_decided_or_judged_says_why(job, recordings):
    job.describe({"goal": {"grade": None}, "rotor": {"mass": None}})
    with pytest.raises(SessionError, match="the brief has neither goal, rotor mass nor limits"):
        job.judge()
    with pytest.raises(SessionError, match="stop: needs a reason"):
        job.stop_balancing(" ")
    with pytest.raises(SessionError, match="skip: needs a reason"):
        job.skip_advice("")
    assert job.advice().act == "fill-brief"
    job.skip_advice("the owner does not know")
    assert job.advice().act == "inspect"


@pytest.mark.parametrize(
    ("goal", "message"),
    [
        ({"grade": "G 7"}, 'goal, grade "G 7": is none; choose one of G0.4, G1'),
        ({"grade": "smooth"}, 'goal, grade "smooth": is none'),
        ({"table": "G grades"}, '"G grades" is no table of vibration limits; there is ISO 14694, ISO 20816-3'),
        ({"table": "4W/N"}, '"4W/N" is no table of vibration limits'),
        ({"table": "ISO 14694, BV-9"}, 'class "BV-9": ISO 14694 has none such; there is BV-2'),
        ({"table": "ISO 14694"}, "class: ISO 14694 has several; say which of BV-2"),
    ],
)
def test_a_goal_that_there_is_not_is_refused_when_it_is_said(job, goal, message):
    before = job.brief
    with pytest.raises(ValueError, match=message):
        job.describe({"goal": goal})
    assert job.brief == before
    job.describe({"goal": {"grade": "4W/N", "table": "iso 14694, bv-3"}})  # both are there


def test_a_goal_of_an_older_record_that_there_is_not_is_said_where_it_is_needed(job):
    job.job.append("brief", goal={"table": "G grades"})
    with pytest.raises(ValueError, match="G grades"):
        job.judge()


def test_an_initial_run_cannot_be_passed_over(job):
    for check in job.checks():
        job.inspect(check.key, "not done", "nothing to look at")
    for _ in range(3):
        if job.advice().act != "initial-run":
            job.skip_advice("not now")
    before = len(job.state.decisions)
    with pytest.raises(SessionError, match='"initial-run" cannot be passed over'):
        job.skip_advice("no time")
    assert len(job.state.decisions) == before


def test_settling_needs_five_minutes(job, recordings):
    _, found = job.check("settling", recordings["initial"])
    assert found.figures["verdict"] == "cannot be told"
    assert "let the machine run on and keep measuring" in found.figures["reason"]


def test_a_bump_test_finds_what_rings_and_holds_it_against_running_speed(job, tmp_path):
    job.describe({"rotor": {"speed_rpm": 1480.0}})
    time_s = np.arange(round(11.0 * 48_000)) / 48_000.0
    x = 1e-4 * np.random.default_rng(5).standard_normal((time_s.size, 3))
    for hit in (1.0, 4.5, 8.0):
        t = np.maximum(time_s - hit, 0.0)
        x[:, 1:] += (0.3 * np.exp(-0.03 * 2 * np.pi * 28.0 * t) * np.sin(2 * np.pi * 28.0 * t))[:, None]
        x[:, 1:] += 0.1 * np.exp(-(((time_s - hit - 0.001) / 0.0005) ** 2))[:, None]
    path = tmp_path / "bump.au"
    recorder = recording.Recorder(path, 48_000.0, ["pulse", "a", "b"], "test", simulated.demo_hookup())
    recorder.write(x.astype("float32"))
    recorder.close(complete=True)
    event, found = job.check("bump", path)
    assert event.what.figures["modes"][0]["frequency_hz"] == pytest.approx(28.0, rel=0.01)
    # 28 Hz are 1680 r/min, 13.5 % above running speed
    assert event.what.figures["evidence"]["resonance_margin"]["value"] == pytest.approx(13.5, abs=1.5)
    assert run_vectors.near_resonance(job.state) == pytest.approx(1680.0, rel=0.01)
    assert run_vectors.repeatability(job.state) == (10.0, 10.0)  # the site rule within 20 % of a resonance
    assert "within 20 % of the resonance" in job.suggest_trial("disc").reason
    assert "Hz" in found.lines[0]


@pytest.mark.parametrize("what", ["bump", "background", "signals", "spectrum"])
def test_a_check_that_is_broken_off_leaves_nothing(job, recordings, what):
    """Recordings are read piece by piece, with a report after each that a person may break off at."""
    job.add_run(recordings["initial"])
    before, there = kinds(job), sorted((job.folder / "recordings").iterdir())
    shares = []

    def report(share, text):
        shares.append(share)
        assert text
        if len(shares) == 3:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        job.check(what, recordings["repeat"], report=report)
    assert shares == sorted(shares)
    assert 0.0 < shares[0] < shares[-1] < 1.0
    assert kinds(job) == before
    assert sorted((job.folder / "recordings").iterdir()) == there
    with pytest.raises(KeyboardInterrupt):  # one that was in the job stays
        job.check(what, job.folder / "recordings" / "0001.au", report=report_of_one)
    assert sorted((job.folder / "recordings").iterdir()) == there


def report_of_one(share, text):
    raise KeyboardInterrupt


def test_a_sweep_is_kept_with_its_curves(job, tmp_path):
    job.describe({"rotor": {"speed_rpm": 1480.0}})
    ramp = recorded(tmp_path / "ramp.au", seconds=22.0, speed_rpm=2000.0, ramp=(600.0, 20.0))
    event, _ = job.check("sweep", ramp)
    assert event.what.figures["direction"] == "run-up"
    assert event.what.figures["points"][0]["curve"]["rpm"]


def test_belt_and_neighbours_of_the_brief_are_named_with_their_frequencies(job, tmp_path):
    """The belt turns at 653.8 r/min, 10.90 Hz (π·315 mm·1480 r/min / 2240 mm); a pump at 975 r/min, 16.25 Hz."""
    brief = {
        "drive": {"kind": "belt", "motor_pulley": "200 mm", "rotor_pulley": "315 mm", "belt_length": "2240 mm"},
        "neighbours": [{"name": "pump 2", "speed_rpm": 975.0}],
    }
    job.describe(brief)
    shaken = recorded(tmp_path / "belt.au", seconds=30.0, tones=((10.9, 0.6), (16.25, 0.9)))
    event, found = job.check("spectrum", shaken)
    assert [c["name"] for c in event.what.figures["candidates"]] == ["belt", "motor", "pump 2"]
    assert any(line.startswith("belt: by the brief at 10.90 ± 0.22 Hz; belt at 10.8") for line in found.lines)
    (belt,) = (c for c in job.worked().diagnosis.causes if c.key == "belt")
    assert any("belt at 10.8" in r.text and "of 1x" in r.text for r in belt.speaking_for)
    (neighbour,) = (c for c in job.worked().diagnosis.causes if c.key == "neighbour")
    assert any(r.text.startswith("pump 2 at 16.25 Hz: ") for r in neighbour.speaking_for)
    assert [c.key for c in job.worked().diagnosis.causes[:2]] == ["belt", "neighbour"]
    assert "fraction_ratio" not in event.what.figures["evidence"]  # the pump's 16.25 Hz lie beside 2/3x, 16.44 Hz


def test_a_crossed_abort_level_is_recorded_whatever_way_the_run_came_in(job, recordings):
    job.describe({"abort": [{"point": "drive end horizontal", "amplitude": 2.0, "unit": "mm/s rms"}]})
    job.add_run(recordings["initial"])
    (alarm,) = job.state.alarms
    assert (alarm.what.point, alarm.what.note) == ("drive end horizontal", session.EARLIER)
    own = job.job.next_recording()
    own.write_bytes(recordings["repeat"].read_bytes())
    own.with_suffix(".events.jsonl").write_bytes(recordings["repeat"].with_suffix(".events.jsonl").read_bytes())
    job.add_run(own)
    assert [a.what.note for a in job.state.alarms] == [session.EARLIER, ""]


@pytest.mark.parametrize(
    ("half", "half_deg", "told"),
    [
        (0.0123, 0.0071, "p: +1.234 ± 0.012 %, -0.0500 ± 0.0071°: within the scatter"),
        (1.26, 0.997, "p: +1.2 ± 1.3 %, -0.1 ± 1.0°: within the scatter"),
        (23.4, None, "p: +1 ± 23 %, -0.1 ± ?°: within the scatter"),
        (0.0, 0.0, "p: +1.2 ± ? %, -0.1 ± ?°: within the scatter"),
    ],
)
def test_a_change_is_told_with_two_digits_of_its_uncertainty(half, half_deg, told):
    change = inspection.Repeat("p", 1.2345, half, -0.05, half_deg, 0.5, "repeats", (2.0, 2.0))
    assert job_checks.change_told(change) == told


def test_checks_say_what_they_need(job, recordings, tmp_path):
    with pytest.raises(SessionError, match="spectrum: needs a recording or a source"):
        job.check("spectrum")
    with pytest.raises(job_checks.CheckError, match="is held against 1x; take an initial run first"):
        job.check("background", recordings["initial"])
    job.describe({"rotor": {"speed_rpm": None}})
    with pytest.raises(job_checks.CheckError, match=r'does not say the running speed; set "rotor\.speed_rpm"'):
        job.check("bump", recordings["initial"])
    one, other = (
        events.Run(
            purpose="initial", name=name, speed_rpm=1480.0, unit="mm/s rms", vectors=[events.Vector(name, 1.0, 0.0)]
        )
        for name in ("a", "b")
    )
    with pytest.raises(job_checks.CheckError, match="have no point with a phase in one unit in common"):
        job_checks.compared(one, other)


def test_a_recording_that_does_not_fit_the_check_is_refused(job, tmp_path):
    gap, few = tmp_path / "gap.au", tmp_path / "few.au"
    for path, channels in ((gap, 3), (few, 2)):
        hookup = simulated.demo_hookup() if channels == 3 else None
        recorder = recording.Recorder(path, 48_000.0, [str(c) for c in range(channels)], "test", hookup)
        recorder.write(np.zeros((48_000, channels), dtype="float32"))
        recorder.write(np.zeros((48_000, channels), dtype="float32"), lost_before=100 if channels == 3 else None)
        recorder.close(complete=True)
    with pytest.raises(SessionError, match=r"gap\.au: samples were lost in it; record again"):
        job.check("signals", gap)
    with pytest.raises(SessionError, match=r"few\.au: has 2 inputs, but the hook-up uses input 3"):
        job.check("signals", few)


def test_a_recording_without_a_hookup_needs_one_in_the_job(tmp_path):
    bare = tmp_path / "bare.au"
    recorder = recording.Recorder(bare, 48_000.0, ["pulse", "a", "b"], "test", None)
    recorder.write(np.zeros((4_800, 3), dtype="float32"))
    recorder.close(complete=True)
    with (
        Session.create(tmp_path / "job", "fan", "Kim") as opened,
        pytest.raises(SessionError, match="carries no hook-up, and the job has none yet"),
    ):
        opened.add_run(bare)


def test_pieces_of_the_stock_are_chosen_and_kept(job, recordings):
    job.describe({"stock": [{"mass": "5 g", "count": 6}, {"mass": "2 g", "count": 6}]})
    job.add_run(recordings["initial"])
    job.put_on(job_masses.pieces_from(["disc = 8 g at 90"], job.brief.planes), "trial")
    job.add_run(recordings["trial"])
    plan = job.choose_pieces()
    kept = job.state.measured[-1].what
    assert kept.what == "pieces"
    assert len(kept.figures["pieces"]) == len(plan.chosen.pieces) > 0
    assert 7 not in [p["position"] for p in kept.figures["pieces"]]  # blocked by the brief
    with pytest.raises(SessionError, match="no coefficients were taken over"):
        job.solve_with_stored()


def test_a_runs_file_begins_a_job_too(tmp_path):
    runs = Path(__file__).parents[2] / "fixtures" / "rao_two_plane.toml"
    with Session.next_visit(tmp_path / "job", "from a file", "Kim", runs) as opened:
        assert [p.name for p in opened.brief.planes] == ["left", "right"]
        assert opened.state.measured[0].what.figures["coefficients"] == 1
    with pytest.raises(ValueError, match="holds no job"):
        Session.next_visit(tmp_path / "other", None, "Kim", tmp_path / "none")
    assert not (tmp_path / "other").exists()


def test_weighing_back_is_noted_once(tmp_path):
    with balancing_job(tmp_path / "job", 1) as session:
        (event,) = session.weigh_back("12.0 g, all there")
        assert session.state.decisions[-1].what.about == session.state.masses[-1].id == event.what.about
        with pytest.raises(SessionError, match="no trial mass that was taken off lacks a note"):
            session.weigh_back("again")
        session.undo()
        with pytest.raises(SessionError, match="say what it told"):
            session.weigh_back(" ")


def test_a_plan_is_solved_once_and_is_what_the_solver_says(tmp_path, monkeypatch):
    with balancing_job(tmp_path / "job", 1) as session:
        solve, calls = correction.solve, []
        monkeypatch.setattr(correction, "solve", lambda *a, **k: calls.append(1) or solve(*a, **k))
        event, solution = session.solve()
        assert len(calls) == 1
        assert event.what.result["corrections"][0]["mass"] == solution.corrections[0].mass


def test_what_a_run_cannot_be_is_refused_before_the_machine_starts(job):
    with pytest.raises(SessionError, match='run: "party" is no purpose; there is initial'):
        job.refuse_wanted(Wanted("party"))
    job.refuse_wanted(Wanted("initial", "first"))


@pytest.mark.parametrize("turn", [float("nan"), float("inf"), 361.0])
def test_a_turn_that_cannot_be_is_refused(job, turn):
    with pytest.raises(SessionError, match="must be within 360° either way"):
        job.change_reference("mark moved", turn)


def test_nobody_accepts_nothing(job):
    with pytest.raises(SessionError, match="accepted or refused by somebody with a name"):
        job.finish(accepted_by=" ")
    assert not job.state.closed


@pytest.mark.parametrize(
    ("patch", "message"),
    [
        ({"repeatability": "400 % 2 deg"}, "is above 100 % or 90 deg"),
        ({"speed_tolerance": "400 %"}, "is more than 20 %"),
        ({"speed_tolerance": "much"}, 'write percent, such as "2 %"'),
        ({"starts": {"window_end": "tomorrow"}}, '"tomorrow" is no date and time'),
        ({"drive": {"poles": 3}}, "a motor has an even number, 2 to 200"),
        ({"drive": {"line": "5000 Hz"}}, "mains have 50 Hz or 60 Hz"),
        ({"drive": {"line": "50"}}, "is not a speed"),
    ],
)
def test_values_of_the_brief_that_cannot_be_are_refused(job, patch, message):
    before = job.brief
    with pytest.raises(RecordError, match=message):
        job.describe(patch)
    assert job.brief == before


def test_pieces_need_a_stock(job):
    with pytest.raises(SessionError, match="the brief names no stock"):
        job.choose_pieces()


def test_a_check_that_cannot_be_made_leaves_no_copy_behind(job, recordings):
    before = job.unused_recordings()
    with pytest.raises(SessionError, match="sweep without a change of speed") as caught:
        job.check("sweep", recordings["initial"])
    assert str(recordings["initial"]) in str(caught.value)
    assert job.unused_recordings() == before
