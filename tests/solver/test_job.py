"""The job's state as the fold of its events: undo and redo, what is on the rotor, references, plans solved again."""

import cmath
import json
import math
import re
import shutil
from pathlib import Path

import numpy as np
import pytest
from stillshaft.dsp import vectors
from stillshaft.dsp.measure import Measurement, PointVector, Speed
from stillshaft.dsp.steadiness import Steadiness
from stillshaft.solver import correction, run_vectors
from stillshaft.solver.events import Options, Run
from stillshaft.solver.folder import RecordError, file_inside, sha256_of
from stillshaft.solver.job import Job
from stillshaft.solver.record import line_bytes
from stillshaft.solver.replay import replay, run_fields, runs_of, solved, verify_files
from stillshaft.solver.runs import RunsError
from stillshaft.solver.runs_file import load_runs, runs_from_table
from stillshaft.solver.state import fold, withdrawals

FIXTURES = Path(__file__).parents[2] / "fixtures"
RAO = FIXTURES / "rao_two_plane.toml"
PLANES = [{"name": "left", "radius": "300 mm"}, {"name": "right", "radius": "300 mm"}]
LEFT, RIGHT = (
    {"plane": "left", "mass_g": 10.0, "angle_deg": 270.0},
    {"plane": "right", "mass_g": 12.0, "angle_deg": 180.0},
)
RAO_RUNS = [
    ("initial", [(8.5, 60.0), (6.5, 205.0)], []),
    ("trial", [(6.0, 125.0), (4.5, 230.0)], [LEFT]),
    ("trial", [(6.0, 35.0), (10.5, 160.0)], [RIGHT]),
]
HASH = "0" * 64


@pytest.fixture
def job(tmp_path):
    """A job that was just begun."""
    with Job.create(tmp_path / "job", "fan", "ann") as opened:
        yield opened


def run(name="initial", purpose="initial", measured=((8.5, 60.0), (6.5, 205.0)), masses=(), **more):
    """Keys of a run of points A, B, …"""
    points = "AB"[: len(measured)]
    return {
        "purpose": purpose, "name": name, "speed_rpm": 1480.0, "unit": "mm/s rms", "masses": list(masses),
        "vectors": [{"point": p, "amplitude": a, "phase_deg": d} for p, (a, d) in zip(points, measured, strict=True)],
        "covariance": {"points": list(points), "matrix": (0.0025 * np.eye(2 * len(points))).tolist()},
    } | more  # fmt: skip


def measured_job(job, turn=lambda number: 0.0, scale=lambda number: (1.0, "mm/s rms"), angle_turn=lambda number: 0.0):
    """The published example as a job; later runs may be seen turned or in another unit."""
    job.append("brief", planes=PLANES)
    for number, (purpose, measured, masses) in enumerate(RAO_RUNS):
        factor, unit = scale(number)
        seen = [(factor * a, (d - turn(number)) % 360.0) for a, d in measured]
        pieces = [m | {"angle_deg": m["angle_deg"] - angle_turn(number)} for m in masses]
        covariance = {"points": ["A", "B"], "matrix": (0.0025 * factor**2 * np.eye(4)).tolist()}
        job.append("run", **run(f"{purpose} {number}", purpose, seen, pieces, unit=unit, covariance=covariance))
    return job


def masses(fields):
    return [vectors.vector(c["mass"], c["angle_deg"]) for c in fields["result"]["corrections"]]


def reopened(job):
    """The same job read from its file."""
    return Job.open(job.folder, read_only=True)


def test_the_state_is_the_fold_of_the_events_before_and_after_reopening(job):
    measured_job(job)
    put = job.append("mass", act="put on", pieces=[LEFT])
    job.append("plan", **solved(job.state)[0])
    job.undo()
    job.append("mass", act="taken off", of=put.id)
    assert job.state == fold(job.events)
    again = reopened(job)
    assert again.events == job.events
    assert again.state == job.state
    assert again.history == job.history
    assert again.problems == ()


def test_listeners_are_called_when_the_event_is_on_the_disk(job):
    seen = []
    job.changed.append(
        lambda: seen.append((len(job.state.decisions), (job.folder / "job.jsonl").read_bytes().count(b"\n")))
    )
    job.append("decision", text="go on")
    with pytest.raises(RecordError):
        job.append("decision", text="  ")
    assert seen == [(1, 2)]


# the brief


def test_a_brief_grows_piece_by_piece(job):
    """A JSON merge patch as in RFC 7396 (from memory): tables merged, null removes, lists replace."""
    job.append("brief", machine={"name": "fan", "place": "roof"}, planes=PLANES, interview={"since": "May"})
    job.append("brief", machine={"place": None, "owner": "mill"}, planes=PLANES[:1], interview={"why": "1x"})
    brief = job.state.brief
    assert (brief.machine.name, brief.machine.place, brief.machine.owner) == ("fan", None, "mill")
    assert [p.name for p in brief.planes] == ["left"]
    assert brief.interview == {"since": "May", "why": "1x"}
    job.undo()
    assert job.state.brief.machine.place == "roof"
    assert len(job.state.brief.planes) == 2


@pytest.mark.parametrize(
    ("patch", "said"),
    [
        ({"machine": {"colour": "red"}}, "brief: machine.colour: unknown key; remove it or mend its spelling"),
        ({"motor": {}}, "brief: motor: unknown key"),
        ({"rotor": {"kind": "disc"}}, "brief: rotor.kind: must be between bearings or overhung, not"),
        ({"rotor": {"mass": "320 mm"}}, 'brief: rotor.mass: "320 mm"'),
        ({"rotor": {"mass": "0 kg"}}, 'brief: rotor.mass: "0 kg" must be above 0'),
        ({"planes": [{"radius": "3 mm"}]}, "brief: planes 1.name: is missing"),
        ({"planes": [{"name": "a", "radius": "3 kg"}]}, 'brief: plane "a".radius: "3 kg"'),
        ({"planes": [{"name": "a"}, {"name": "a"}]}, 'plane 2.name: "a" is empty or used twice'),
        ({"planes": [{"name": "a", "positions": 0}]}, "positions: 0: must be 1 to 720"),
        ({"stock": [{"mass": "2", "count": 1}]}, "stock 1.mass"),
        ({"drive": {"belt_length": "-2 m"}}, 'drive.belt_length: "-2 m" must be above 0'),
        ({"abort": [{"point": "A", "amplitude": 3.0, "unit": "m"}]}, "abort 1.unit"),
        ({"limits": [{"point": "A", "amplitude": 0.0, "unit": "mm/s rms"}]}, "limits 1.amplitude: 0 must be above 0"),
        ({"repeatability": "much"}, 'repeatability: "much": write percent and degrees'),
        ({"planes": 3}, "brief: planes: must be a list, not a whole number"),
    ],
)
def test_a_brief_that_cannot_be_used_is_refused_and_not_recorded(job, patch, said):
    job.append("brief", machine={"name": "fan"}, planes=PLANES)
    before = (job.folder / "job.jsonl").read_bytes()
    state = job.state
    with pytest.raises(RecordError, match=said):
        job.append("brief", **patch)
    assert job.state is state
    assert (job.folder / "job.jsonl").read_bytes() == before
    job.append("brief", machine={"note": "goes on"})
    assert job.state == fold(job.events)


# undo


def names(job):
    return [r.what.name for r in job.state.runs]


def test_undo_and_redo_walk_back_and_forth(job):
    for name in "abc":
        job.append("run", **run(name))
    for left in (["a", "b"], ["a"], []):
        job.undo()
        assert names(job) == left
    assert job.undo() is None
    for there in (["a"], ["a", "b"], ["a", "b", "c"]):
        job.redo()
        assert names(job) == there
    assert job.redo() is None
    job.undo()
    job.undo()
    job.redo()
    job.undo()
    assert names(job) == ["a"]
    job.append("run", **run("d"))
    assert job.redo() is None  # something else was done since
    assert names(job) == ["a", "d"]
    assert job.state == fold(job.events)
    assert reopened(job).state == job.state


def test_undo_takes_the_persons_own_acts_back_and_passes_over_what_happened(job):
    first = job.append("decision", text="mine")
    job.append("start", temperature="cold")
    job.append("caution", texts=["guards closed"], who="ann")
    job.append("decision", text="another person's", by="bob")
    undone = job.undo()
    assert (undone.what.of, undone.what.why, undone.what.undo) == (first.id, "undone", True)
    assert [d.what.text for d in job.state.decisions] == ["another person's"]
    assert (len(job.state.starts), len(job.state.cautions)) == (1, 1)
    assert job.undo() is None
    job.by = "bob"
    job.undo()
    assert job.state.decisions == ()


def test_an_explicit_withdrawal_is_an_act_that_can_be_undone(job):
    there = job.append("run", **run("a"))
    job.withdraw(there.id, "trial mass slipped")
    assert names(job) == []
    job.undo()
    assert names(job) == ["a"]
    job.redo()
    assert names(job) == []
    with pytest.raises(RecordError, match=f"entry {there.id} is withdrawn already"):
        job.withdraw(there.id, "again")


def test_withdrawn_entries_stay_in_the_history(job):
    there = job.append("run", **run("a"))
    gone = job.withdraw(there.id, "slipped")
    told = {entry.event.id: entry.withdrawn_by for entry in job.history}
    assert told == {1: None, there.id: gone.id, gone.id: None}
    assert job.history[1].event.what.name == "a"


def test_a_withdrawal_that_is_withdrawn_does_not_count(job):
    first = job.append("decision", text="a")
    gone = job.withdraw(first.id, "no")
    back = job.withdraw(gone.id, "yes")
    assert withdrawals(job.events) == {gone.id: back.id}
    assert len(job.state.decisions) == 1
    with pytest.raises(RecordError, match="the beginning of the job cannot be withdrawn; begin a new job"):
        job.withdraw(1, "no")
    with pytest.raises(RecordError, match="there is no entry 99 before it"):
        job.withdraw(99, "no")


# masses


def test_pieces_come_and_go(job):
    put = job.append("mass", act="put on", pieces=[LEFT, RIGHT, LEFT])
    other = job.append("mass", act="put on", pieces=[RIGHT])
    job.append("mass", act="taken off", of=put.id, numbers=[2])
    assert [(on.of, on.number) for on in job.state.on_rotor] == [(put.id, 1), (put.id, 3), (other.id, 1)]
    placed = job.append("mass", act="really placed", of=other.id, pieces=[RIGHT | {"mass_g": 12.3, "radius_mm": 290.0}])
    assert [on.piece.mass_g for on in job.state.on_rotor] == [10.0, 10.0, 12.3]
    job.append("mass", act="taken off", of=put.id)
    assert [on.of for on in job.state.on_rotor] == [placed.id]
    with pytest.raises(RecordError, match=f"none of the pieces of entry {put.id} is on the rotor"):
        job.append("mass", act="taken off", of=put.id)
    with pytest.raises(RecordError, match=rf"entry {placed.id} has the pieces \[1\] on the rotor, not \[4\]"):
        job.append("mass", act="taken off", of=placed.id, numbers=[4])


# what fits, and what does not

BAD = [
    ("walk", {}, "'walk' is no kind of event; there is started, brief"),
    ("decision", {"text": "a", "id": 3}, "decision: id: the record says that itself"),
    ("decision", {}, "decision: text: is missing"),
    ("decision", {"text": " "}, "decision: text: is empty"),
    ("decision", {"text": "a", "about": 77}, "decision: there is no entry 77 before it"),
    ("decision", {"text": "a", "colour": 1}, "decision: colour: unknown key"),
    ("started", {"name": "a", "program": "1"}, "started: the job was begun before"),
    ("check", {"item": "bearings", "outcome": "good"}, "check: outcome: must be fine or needs attention or not done"),
    ("check", {"item": "bearings", "outcome": "not done"}, "note: a check that was not done needs a reason; write why"),
    ("check", {"item": "", "outcome": "fine"}, "check: item: is empty"),
    ("check", {"item": "a", "outcome": "fine", "evidence": 1}, "check: entry 1 is a started, not a measured"),
    ("run", run(speed_rpm=0.0), "run: speed_rpm: 0 must be above 0"),
    ("run", run(measured=()), "run: vectors: must be one or more, each point once"),
    ("run", run(vectors=2 * [{"point": "A", "amplitude": 1.0}]), "each point once; there is \\['A', 'A'\\]"),
    ("run", run(measured=[(-1.0, 0.0)]), "vectors: an amplitude is below 0"),
    ("run", run(purpose="walk"), "purpose: must be initial or repeat or trial"),
    ("run", run(masses=[LEFT | {"radius_mm": 0.0}]), "radius_mm: 0 must be above 0"),
    (
        "run",
        run(covariance={"points": ["A"], "matrix": [[1.0]]}),
        "covariance.matrix: must have two rows and columns for each",
    ),
    (
        "run",
        run(covariance={"points": ["A"], "matrix": [[1.0, 0.0], [0.0]]}),
        "must have two rows and columns for each",
    ),
    (
        "run",
        run(vectors=[{"point": str(n), "amplitude": 1.0} for n in range(10_001)]),
        "vectors: has 10001 entries, at",
    ),
    ("run", run(recording={"path": "recordings/a.au", "sha256": "xyz"}), "recording: 'xyz' is no SHA-256 in hex"),
    ("run", run(speed_rpm="fast"), "run: speed_rpm: must be a number, not a text"),
    ("mass", {"act": "put on"}, "pieces: are given to put on or to place"),
    ("mass", {"act": "put on", "pieces": [LEFT], "of": 1}, 'of: "put on" needs none'),
    ("mass", {"act": "taken off"}, 'of: "taken off" names what was put on'),
    ("mass", {"act": "taken off", "of": 1}, "mass: entry 1 is a started, not a mass"),
    ("plan", {"method": "auto", "inputs": [1], "result": {}}, "plan: entry 1 is a started, not a run"),
    ("use", {"of": 1, "use": True, "why": "a"}, "use: entry 1 is a started, not a run"),
    ("reference", {"what": "mark", "of": 1, "turn_deg": 1.0}, "reference: entry 1 is a started, not a reference"),
]


@pytest.mark.parametrize(("kind", "fields", "said"), BAD)
def test_an_event_that_cannot_be_is_refused_in_one_line_and_not_recorded(job, kind, fields, said):
    before = (job.folder / "job.jsonl").read_bytes()
    with pytest.raises(RecordError, match=said) as refused:
        job.append(kind, **fields)
    assert "\n" not in str(refused.value)
    assert (job.folder / "job.jsonl").read_bytes() == before
    assert len(job.events) == 1
    assert job.state == fold(job.events)


@pytest.mark.parametrize(("kind", "fields", "said"), [bad for bad in BAD if bad[0] != "walk" and "id" not in bad[1]])
def test_the_same_event_in_a_file_is_kept_named_and_left_out(job, kind, fields, said):
    job.close()
    line = {"format": 1, "id": 2, "kind": kind, "at": "2026-11-25T08:30:00.000+00:00", "by": "ann", **fields}
    after = line | {"id": 3, "kind": "decision", "text": "after"}
    for key in fields:
        after.pop(key)
    after["text"] = "after"
    with open(job.folder / "job.jsonl", "ab") as file:
        file.write(line_bytes(line) + line_bytes(after))
    again = reopened(job)
    assert [d.what.text for d in again.state.decisions] == ["after"]
    assert len(again.problems) == 1
    assert again.history[1].problem
    assert len(again.history) == 3


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"id": 1}, "line 2: its id 1 was used before it; it is kept and left out"),
        ({"id": 0}, "line 2: id: 0 must be 1 to 10000000"),
        ({"id": "two"}, "line 2: id: must be a whole number, not a text"),
        ({"at": "yesterday"}, "line 2: at: 'yesterday' is no UTC time such as"),
        ({"at": "2026-11-25T08:30:00+01:00"}, "line 2: at: .* is no UTC time"),
        ({"format": "1"}, "line 2: format: "),
    ],
)
def test_a_line_that_does_not_begin_as_one_should_is_left_out(job, changes, said):
    job.close()
    line = {"format": 1, "id": 2, "kind": "decision", "at": "2026-11-25T08:30:00.000+00:00", "text": "a"} | changes
    with open(job.folder / "job.jsonl", "ab") as file:
        file.write(line_bytes(line))
    with Job.open(job.folder, by="ann") as again:
        (problem,) = again.problems
        assert re.search(said, problem)
        assert again.state.decisions == ()
        assert again.append("decision", text="goes on").id == 3


def test_a_kind_that_this_program_does_not_know_is_kept_and_shown(job):
    job.close()
    line = {
        "format": 1,
        "id": 2,
        "kind": "thermograph",
        "at": "2026-11-25T08:30:00.000+00:00",
        "by": "x",
        "hot": [1, 2],
    }
    with open(job.folder / "job.jsonl", "ab") as file:
        file.write(line_bytes(line))
    with Job.open(job.folder, by="ann") as again:
        (unknown,) = again.state.unknown
        assert (unknown.kind, unknown.fields) == ("thermograph", {"hot": [1, 2]})
        assert (
            "entry 2: 'thermograph' is a kind this program does not know; it is kept and left out" in again.problems[0]
        )
        assert again.history[1].event == unknown
        again.append("decision", text="goes on")
        again.withdraw(2, "not needed")
        assert again.state.unknown == ()
    assert b"thermograph" in (job.folder / "job.jsonl").read_bytes()


def test_a_closed_job_takes_only_reports_until_it_is_reopened(job):
    job.append("closed")
    with pytest.raises(RecordError, match="decision: the job is closed; reopen it first"):
        job.append("decision", text="more")
    job.append("report", file={"path": "reports/a.pdf", "sha256": HASH})
    job.append("reopened", why="the owner called")
    job.append("decision", text="more")
    assert not job.state.closed
    assert len(job.state.reports) == 1


def test_a_name_is_given_to_one_run_only(job):
    first = job.append("run", **run("a"))
    with pytest.raises(RecordError, match="run: there is a run 'a' already; give it another name"):
        job.append("run", **run("a"))
    job.withdraw(first.id, "slipped")
    job.append("run", **run("a"))
    assert job.state.run("a").id > first.id
    assert job.state.run("b") is None


def test_a_job_needs_a_name_before_there_is_a_folder(tmp_path):
    with pytest.raises(RecordError, match="started: name: is empty"):
        Job.create(tmp_path / "job", " ", "ann")
    assert list(tmp_path.iterdir()) == []


def test_checks_are_counted_by_their_newest(job):
    evidence = job.append("measured", what="bump", figures={"hz": 31.0})
    job.append("check", item="resonance", outcome="not done", note="no hammer")
    job.append("check", item="resonance", outcome="fine", evidence=evidence.id)
    assert {k: e.what.outcome for k, e in job.state.checks.items()} == {"resonance": "fine"}
    job.undo()
    assert job.state.checks["resonance"].what.note == "no hammer"


# solving


def test_the_published_example_comes_out_of_the_record(job):
    """S. S. Rao, Mechanical Vibrations, two-plane balancing example (from memory), as fixtures/rao_two_plane.toml."""
    fields = solved(measured_job(job).state, method="least-squares")[0]
    left, right = fields["result"]["corrections"]
    assert (left["mass"], left["angle_deg"]) == (
        pytest.approx(10.0561387, abs=1e-6),
        pytest.approx(325.554804, abs=1e-6),
    )
    assert (right["mass"], right["angle_deg"]) == (
        pytest.approx(5.8773617, abs=1e-6),
        pytest.approx(68.255934, abs=1e-6),
    )
    from_file = correction.solve(load_runs(RAO), "least-squares")
    np.testing.assert_allclose(
        masses(fields), [vectors.vector(c.mass, c.angle_deg) for c in from_file.corrections], rtol=1e-12
    )


def test_every_plan_is_solved_again_as_it_stood_then(job):
    measured_job(job)
    job.append("plan", **solved(job.state)[0])
    job.append("brief", planes=[p | {"radius": "250 mm"} for p in PLANES], placement="3 % 3 deg")
    job.withdraw(job.state.runs[1].id, "slipped")
    job.append("run", **run("again", "trial", RAO_RUNS[1][1], [LEFT | {"radius_mm": 260.0}]))
    job.append("plan", **solved(job.state, method="expected", options=Options(repeatability="4 % 4 deg"))[0])
    told = replay(job)
    assert [(r.plan.what.method, r.differences) for r in told] == [("auto", ()), ("expected", ())]
    assert [r.differences for r in replay(reopened(job))] == [(), ()]
    assert told[0].plan.what.result["corrections"][0]["radius_mm"] == 300.0
    assert told[1].plan.what.options == Options(repeatability="4 % 4 deg")


LOOKED_AT = {"what": "looked at: load", "figures": {"evidence": {"load_test": {"word": "follows", "where": ""}}}}
NEAR = {"what": "sweep", "figures": {"points": [{"name": "A", "resonances": [{"rpm": 1600.0}]}]}}


@pytest.mark.parametrize(
    ("patch", "found", "assumed"),
    [
        ({}, None, "2 % 2 deg: neither belt nor heat nor a resonance nearby is known"),
        ({"drive": {"kind": "direct"}}, None, "2 % 2 deg: neither belt nor heat nor a resonance nearby is known"),
        ({"drive": {"kind": "belt"}}, None, "5 % 5 deg: belt drive"),
        ({"interview": {"process": "heat"}}, None, "5 % 5 deg: heat from the process"),
        ({}, LOOKED_AT, "5 % 5 deg: vibration that follows the load"),
        ({"drive": {"kind": "belt"}}, NEAR, "10 % 10 deg: a resonance near running speed"),
        ({"drive": {"kind": "belt"}, "repeatability": "3 % 3 deg"}, NEAR, None),
    ],
)
def test_what_is_usual_for_the_machine_is_assumed_and_solved_with(job, patch, found, assumed):
    """The site rules of the project reach the scatter of every run, and the plan keeps them."""
    measured_job(job)
    job.append("brief", **patch)
    if found is not None:
        job.append("measured", **found)
    assert runs_of(job.state).get("assumed_repeatability") == assumed
    runs = runs_from_table(runs_of(job.state), "fan")
    percent, degrees = run_vectors.repeatability(job.state)
    assert runs.repeatability == (pytest.approx(0.01 * percent), pytest.approx(math.radians(degrees)))
    assert runs.repeatability_assumed == (assumed is not None)
    across = 0.0025 + (8.5 * math.radians(degrees)) ** 2
    assert np.linalg.eigvalsh(runs.runs[0].covariance[:2, :2]) == pytest.approx(
        sorted([0.0025 + (8.5 * 0.01 * percent) ** 2, across])
    )
    fields, solution = solved(job.state)
    assert fields["options"] == ({} if assumed is None else {"assumed_repeatability": assumed})
    assert correction.to_json(solution, "") == correction.to_json(correction.solve(runs), "")
    why = (assumed or "").partition(": ")[2]
    said = [text for text in solution.warnings if text.startswith("repeatability") and "assumed" in text]
    whole = f"repeatability {percent:g} % and {degrees:g}° is assumed: {why}; repeat the initial run to learn it"
    assert said == ([] if assumed is None else [whole])


def test_a_plan_keeps_what_was_assumed_then(job):
    measured_job(job)
    job.append("brief", drive={"kind": "belt"})
    job.append("plan", **solved(job.state)[0])
    old = runs_of(job.state)
    job.append("brief", drive={"kind": "direct"})
    job.append("plan", **solved(job.state)[0])
    assert [p.what.options.assumed_repeatability[:9] for p in job.state.plans] == ["5 % 5 deg", "2 % 2 deg"]
    assert [r.differences for r in replay(reopened(job))] == [(), ()]
    belt, direct = (p.what.result["corrections"][0]["mass_ci95"] for p in job.state.plans)
    assert belt > 2.0 * direct
    assert runs_of(job.state, options=job.state.plans[0].what.options) == old


def test_a_plan_from_before_assumptions_were_kept_is_solved_as_then(job):
    """Then 2 % and 2° were taken for every machine."""
    measured_job(job)
    job.append("brief", repeatability="2 % 2 deg")
    then = solved(job.state)[0]
    job.append("brief", repeatability=None, drive={"kind": "belt"})
    said = "repeatability 2 % 2 deg is assumed: the file does not say"
    result = then["result"] | {"warnings": [said, *then["result"]["warnings"]]}
    job.append("plan", **then | {"result": result})
    assert then["options"] == {}
    assert replay(job)[0].differences == ()


def test_a_plan_that_assumes_what_cannot_be_says_why(job):
    measured_job(job)
    runs = [r.id for r in job.state.runs]
    job.append("plan", method="auto", inputs=runs, result={}, options={"assumed_repeatability": "much"})
    assert 'assumed_repeatability: "much": write percent and degrees' in replay(job)[0].differences[0]


def test_what_differs_is_named(job):
    fields = solved(measured_job(job).state)[0]
    result = json.loads(json.dumps(fields["result"]))
    result["corrections"][0]["mass"] *= 1.0 + 1e-8
    result["corrections"][1]["mass_ci95"] = None
    result["predicted"].pop()
    result["extra"] = 1
    result["trusted"] = "yes"
    del result["method"]
    result["condition_number"] += 1e-12
    job.append("plan", **fields | {"result": result})
    mass, *others = sorted(replay(job)[0].differences)
    assert re.fullmatch(
        r"corrections: 1 mass: was 10\.0561387\d* at 325\.5548\d*°, is 10\.0561386\d* at 325\.5548\d*°", mass
    )
    assert others == [
        f"corrections: 2 mass_ci95: was 'None', is '{fields['result']['corrections'][1]['mass_ci95']}'",
        "extra: is only in the record",
        "method: is only in the new solution",
        "predicted: had 1 entries, has 2",
        "trusted: was 'yes', is 'True'",
    ]


def test_a_plan_that_cannot_be_solved_again_says_why(job):
    measured_job(job)
    runs = [r.id for r in job.state.runs]
    job.append("plan", method="auto", inputs=runs[:2], result={})
    job.append("plan", method="guess", inputs=runs, result={})
    told = replay(job)
    assert "cannot be solved again: fan: at 1480 r/min there is no trial run" in told[0].differences[0]
    assert "cannot be solved again: method guess: cannot be used" in told[1].differences[0]


def test_phases_that_have_no_size_may_turn(job):
    """A vibration that is 0 to rounding has any phase: that is no difference."""
    fields = solved(measured_job(job).state, method="least-squares")[0]
    result = json.loads(json.dumps(fields["result"]))
    assert result["predicted"][0]["amplitude"] < 1e-12
    result["predicted"][0]["phase_deg"] = 123.0
    job.append("plan", **fields | {"result": result})
    assert replay(job)[0].differences == ()


def test_runs_that_do_not_count_are_left_out_until_somebody_says_why(job):
    measured_job(job)
    job.append("run", **run("doubted", "check", masses=[LEFT], trusted=False, reasons=["walking"]))
    job.append("run", **run("taken", "check", masses=[LEFT], trusted=False, used_anyway="nothing better"))
    by_name = {r.what.name: r for r in job.state.runs}
    assert [r.counts for r in by_name.values()] == [True, True, True, False, True]
    assert [r["name"] for r in runs_of(job.state)["run"]][-1] == "taken"
    with pytest.raises(RecordError, match=r'run "doubted": does not count \(walking\); record why it is used anyway'):
        runs_of(job.state, [by_name["doubted"].id])
    with pytest.raises(RecordError, match="run 999: is not there, or was withdrawn"):
        runs_of(job.state, [999])
    job.append("use", of=by_name["doubted"].id, use=True, why="checked by hand")
    job.append("use", of=by_name["taken"].id, use=False, why="loose")
    assert [r["name"] for r in runs_of(job.state)["run"]][-1] == "doubted"
    assert job.state.run("taken").reasons == ("left out: loose",)


def test_a_run_whose_line_was_altered_does_not_count_by_itself(job):
    measured_job(job)
    job.close()
    path = job.folder / "job.jsonl"
    path.write_bytes(path.read_bytes().replace(b'"amplitude":8.5', b'"amplitude":3.5', 1))
    with Job.open(job.folder, by="ann") as again:
        altered = again.state.runs[0]
        assert not altered.counts
        assert altered.reasons == ("line 3 of the record is not as it was written",)
        assert "line 3 is not as it was written" in again.problems[0]
        again.append("use", of=altered.id, use=True, why="mended by hand from the sheet")
        assert again.state.runs[0].counts


def test_no_run_gives_no_table(job):
    with pytest.raises(RecordError, match="run: there is none that counts; take an initial run and a trial run"):
        runs_of(job.state)


def test_units_of_single_runs_leave_the_masses(job, tmp_path):
    plain = solved(measured_job(job).state)[0]
    inch = 1.0 / 25.4 * math.sqrt(2.0)
    with Job.create(tmp_path / "mixed", "fan", "ann") as other:
        mixed = measured_job(other, scale=lambda n: (inch, "in/s peak") if n == 2 else (1.0, "mm/s rms"))
        np.testing.assert_allclose(masses(solved(mixed.state)[0]), masses(plain), rtol=1e-9)
        assert solved(mixed.state)[0]["result"]["corrections"][0]["mass_ci95"] == pytest.approx(
            plain["result"]["corrections"][0]["mass_ci95"], rel=1e-9
        )
        other.append("run", **run("other", "check", masses=[LEFT], unit="um p-p"))
        with pytest.raises(
            RecordError, match='run "other": is in um p-p, but others are in mm/s rms; measure its recording'
        ):
            runs_of(other.state)


def test_limits_are_told_in_the_unit_of_the_runs(job):
    """The peak of a sine is √2 of its rms; a displacement of 1 µm p-p at 1480 r/min is ω/2 µm/s peak."""
    measured_job(job)
    job.append("brief", limits=[{"point": "A", "amplitude": 2.0 * math.sqrt(2.0), "unit": "mm/s peak"},
                                {"point": "B", "amplitude": 40.0, "unit": "um p-p"},
                                {"point": "elsewhere", "amplitude": 1.0, "unit": "mm/s rms"}])  # fmt: skip
    limits = {entry["point"]: entry["amplitude"] for entry in runs_of(job.state)["limit"]}
    assert limits == {
        "A": pytest.approx(2.0),
        "B": pytest.approx(0.020 * 2.0 * math.pi * 1480.0 / 60.0 / math.sqrt(2.0)),
    }


def test_fewer_points_can_be_asked_for(job):
    measured_job(job)
    table = runs_of(job.state, options=Options(points=["B"]))
    assert list(table["run"][0]["vectors"]) == ["B"]
    assert len(table["run"][0]["covariance"]["matrix"]) == 2
    with pytest.raises(RecordError, match='run "initial 0": has no point "C"; solve without that point'):
        runs_of(job.state, options=Options(points=["C"]))
    covariance = {"points": ["A"], "matrix": [[1.0, 0.0], [0.0, 1.0]]}
    job.append("run", **run("half", "check", masses=[LEFT], covariance=covariance))
    with pytest.raises(RecordError, match=r"run \"half\".covariance: lacks \['B'\]"):
        runs_of(job.state)


def test_the_hookup_says_what_the_points_are(job):
    measured_job(job)
    job.append("hookup", table={"format": 1, "point": [{"name": p, "input": 2, "quantity": "velocity", "angle": 90.0,
                                                        "sensitivity": "1 V/(m/s)"} for p in "ABC"]})  # fmt: skip
    described = runs_from_table(runs_of(job.state), "fan").described
    assert [(p.name, p.quantity, p.angle_deg) for p in described] == [("A", "velocity", 90.0), ("B", "velocity", 90.0)]
    job.append("hookup", table={"point": "nonsense"})
    assert "point" not in runs_of(job.state)
    job.append("hookup", table={"point": [{"name": "A", "angle": "x"}, {"name": "B"}, 3]})
    with pytest.raises(RunsError, match='fan: point .*"A".*angle: must be a number, not a text'):
        solved(job.state)[0]


# the reference


def test_a_known_turn_leaves_the_masses(job, tmp_path):
    """The pulse sensor moved by 37° between the runs: every later phase turns, the masses must not."""
    plain = solved(measured_job(job).state)[0]
    with Job.create(tmp_path / "turned", "fan", "ann") as other:
        other.append("brief", planes=PLANES)
        turned = measured_job(other, turn=lambda n: 37.0 if n else 0.0)
        assert abs(masses(solved(turned.state)[0])[0] - masses(plain)[0]) > 1.0
        rows = [json.loads(raw) for raw in (other.folder / "job.jsonl").read_bytes().splitlines()]
    with Job.create(tmp_path / "known", "fan", "ann") as known:
        for row in rows[1:]:
            if row.get("name") == "trial 1":
                known.append("reference", what="pulse sensor moved", turn_deg=37.0)
            known.append(
                row["kind"], **{k: v for k, v in row.items() if k not in ("format", "id", "kind", "at", "by", "crc")}
            )
        assert [r.turn_deg for r in known.state.runs] == [{"A": 0.0, "B": 0.0}] + 2 * [{"A": 37.0, "B": 37.0}]
        np.testing.assert_allclose(masses(solved(known.state)[0]), masses(plain), rtol=1e-9)


def test_a_mark_renewed_elsewhere_turns_phases_and_masses(job):
    """With the mark δ further along, phases and rotor angles both count δ less; turned back the answer is the same."""
    want = [cmath.rect(10.0561387, math.radians(325.554804)), cmath.rect(5.8773617, math.radians(68.255934))]
    job.append("brief", planes=PLANES)
    (purpose, first, _), *later = RAO_RUNS
    job.append("run", **run("initial", purpose, first))
    job.append("reference", what="mark renewed", turn_deg=25.0, angle_turn_deg=25.0)
    for number, (purpose, measured, pieces) in enumerate(later):
        seen = [(a, d - 25.0) for a, d in measured]
        turned = [p | {"angle_deg": p["angle_deg"] - 25.0} for p in pieces]
        job.append("run", **run(f"{purpose} {number}", purpose, seen, turned))
    np.testing.assert_allclose(masses(solved(job.state, method="least-squares")[0]), want, atol=1e-5)


def test_runs_across_an_unknown_turn_are_never_fitted_together(job):
    measured_job(job)
    change = job.append("reference", what="vibration sensor remounted", points=["B"])
    job.append("run", **run("repeat", "re-reference", [(8.5, 60.0), (6.5, 190.0)]))
    assert [r.epoch for r in job.state.runs] == [0, 0, 0, 1]
    assert [r["name"] for r in runs_of(job.state)["run"]] == ["repeat"]
    ids = [r.id for r in job.state.runs]
    with pytest.raises(
        RecordError, match='runs "initial 0" and "repeat": between them mark or sensors changed by an unknown'
    ):
        runs_of(job.state, ids)
    with pytest.raises(RecordError, match="turn_deg: is what it is to say of the earlier change; give it"):
        job.append("reference", what="found", of=change.id)
    job.append("reference", what="re-reference run", of=change.id, turn_deg=15.0)
    assert [r.epoch for r in job.state.runs] == [0, 0, 0, 0]
    table = runs_of(job.state, ids)
    assert table["run"][3]["vectors"]["A"]["phase"] == 60.0
    assert table["run"][3]["vectors"]["B"]["phase"] == pytest.approx(205.0)
    solved(job.state)[0]


# files


def test_recordings_are_verified_by_their_hash(job):
    (job.folder / "recordings/0001.au").write_bytes(b"samples")
    (job.folder / "recordings/0001.events.jsonl").write_bytes(b"{}\n")
    (job.folder / "photos/gebläse.jpg").write_bytes(b"photo")
    recording = job.file_fields("recordings/0001.au")
    job.append("run", **run(recording=recording))
    job.append("check", item="fan", outcome="fine", photos=[job.file_fields("photos/gebläse.jpg")])
    assert verify_files(job) == ()
    (job.folder / "recordings/0001.events.jsonl").write_bytes(b"[]\n")
    (job.folder / "photos/gebläse.jpg").unlink()
    changed, missing = verify_files(job)
    assert changed == (
        "entry 2 (run): recordings/0001.events.jsonl is not as it was when it was recorded (its SHA-256 differs)"
    )
    assert missing.startswith("entry 3 (check): photos/gebläse.jpg is missing in ")


def test_the_hash_is_sha_256(job):
    """FIPS 180-4, example of one block: "abc" (from memory)."""
    (job.folder / "photos/abc").write_bytes(b"abc")
    digest = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    assert job.file_fields("photos/abc") == {"path": "photos/abc", "sha256": digest}


def test_what_cannot_be_read_has_no_hash(tmp_path):
    with pytest.raises(RecordError, match="cannot be read: is a directory"):
        sha256_of(tmp_path)


def test_new_files_get_a_name_that_fits_and_is_free(job, tmp_path):
    assert job.new_file("photos", "mark.jpg") == job.folder / "photos/mark.jpg"
    (job.folder / "photos/mark.jpg").write_bytes(b"")
    (job.folder / "photos/mark 2.jpg").symlink_to(tmp_path / "elsewhere")
    assert job.new_file("photos", "mark.jpg").name == "mark 3.jpg"
    assert job.new_file("reports", "../../C:\\a*b?.pdf").name == "_.._.._C__a_b_.pdf"
    assert job.new_file("reports", "nul").name == "_nul"
    assert len(job.new_file("reports", "ü" * 300 + ".pdf").name.encode()) < 255
    with pytest.raises(RecordError, match="is no folder of a job; there is recordings, photos, reports"):
        job.new_file("reports/../..", "a.pdf")


def test_nothing_is_written_through_a_folder_that_is_a_link(job, tmp_path):
    (tmp_path / "outside").mkdir()
    for inner in ("recordings", "reports"):
        (job.folder / inner).rmdir()
        (job.folder / inner).symlink_to(tmp_path / "outside")
    with pytest.raises(
        RecordError, match="recordings: leads out of the job's folder through a link; put a folder there"
    ):
        job.next_recording()
    with pytest.raises(RecordError, match="reports: leads out of the job's folder through a link"):
        job.new_file("reports", "a.pdf")
    (job.folder / "reports").unlink()
    (job.folder / "reports").write_text("a file")
    with pytest.raises(RecordError, match="reports: file exists"):
        job.new_file("reports", "a.pdf")
    (job.folder / "photos").rmdir()
    assert job.new_file("photos", "a.jpg").parent.is_dir()


def test_alarms_and_photos_are_kept(job):
    there = job.append("alarm", point="A", amplitude=21.0, level=20.0, unit="mm/s rms")
    job.append("photo", file={"path": "photos/a.jpg", "sha256": HASH}, about=there.id)
    assert job.state.alarms == (there,)
    assert job.state.photos[0].what.about == there.id
    job.undo()
    assert job.state.photos == ()
    assert job.undo() is None  # an alarm happened


def test_names_coded_in_another_way_are_found(job):
    (job.folder / "photos/ü.jpg").write_bytes(b"a")
    assert job.file("photos/ü.jpg").name == "ü.jpg"
    with pytest.raises(RecordError, match="path: photos/o.jpg is missing"):
        job.file("photos/o.jpg")


@pytest.mark.parametrize(
    "path",
    [
        "/etc/passwd", "../outside", "recordings/../../outside", "recordings/./a", "recordings//a", "recordings", "a.au",
        "recordings/", "photos/a.au",
        "C:\\a", "recordings/a\\..\\b", "recordings/con", "recordings/NUL.au", "recordings/COM1.au",
        "recordings/a.", "recordings/a ", "recordings/a:b", "recordings/a\nb", "recordings/a\0", "~/a", "",
        "recordings/" + "a" * 256,
        "recordings/" + "a/" * 600 + "a", "file:///etc/passwd", "recordings/*", "//host/share/a",
    ],
)  # fmt: skip
def test_no_path_leads_out_of_the_folder(job, path):
    with pytest.raises(RecordError, match="must be a path in recordings|is no plain path|is too long"):
        job.append("run", **run(recording={"path": path, "sha256": HASH}))
    if not path.startswith("photos/"):
        with pytest.raises(RecordError, match="must be a path in|is no plain path|is too long"):
            job.file(path)
    assert len(job.events) == 1


def test_a_link_in_the_folder_is_not_followed(job, tmp_path):
    outside = tmp_path / "outside"
    outside.mkdir()
    (outside / "a.au").write_bytes(b"secret")
    (job.folder / "recordings/a.au").symlink_to(outside / "a.au")
    (job.folder / "photos").rmdir()
    (job.folder / "photos").symlink_to(outside)
    (job.folder / "reports/folder").mkdir()
    for path in ("recordings/a.au", "photos/a.au"):
        with pytest.raises(RecordError, match="leads out through a link; put the file itself there"):
            file_inside(job.folder, path, "recording")
    with pytest.raises(RecordError, match="recording: reports/folder is no ordinary file"):
        file_inside(job.folder, "reports/folder", "recording")


def test_a_recordings_number_is_never_used_twice(job):
    assert job.next_recording() == job.folder / "recordings/0001.au"
    (job.folder / "recordings/0007.events.jsonl").write_text("")
    assert job.next_recording().name == "0008.au"
    job.append("run", **run(recording={"path": "recordings/0012.au", "sha256": HASH}))
    job.undo()
    assert job.next_recording().name == "0013.au"


# old jobs


def test_a_job_of_format_1_is_read_for_ever(tmp_path):
    """fixtures/jobs/make_format_1.py made it; its masses are those of the published example."""
    folder = FIXTURES / "jobs/format_1"
    before = (folder / "job.jsonl").read_bytes()
    with Job.open(folder, read_only=True) as job:
        state = job.state
        assert job.problems == ()
        assert verify_files(job) == ()
        differences = [
            d for r in replay(job) for d in r.differences if d.startswith("corrections") and "_ci95" not in d
        ]
        assert differences == []
        assert {e.event.kind for e in job.history} >= {"started", "brief", "hookup", "check", "measured", "run", "mass"}
    assert state.name == "Dust fan 2 · Gebläse ②"
    assert (state.brief.rotor.mass, state.brief.drive.belt_length, state.brief.starts.allowed) == ("320 kg", "2.4 m", 8)
    assert [(r.what.name, r.counts) for r in state.runs] == [
        ("initial", True),
        ("trial left", True),
        ("trial right", True),
    ]
    assert (len(state.starts), len(state.cautions), state.on_rotor, state.closed) == (3, 3, (), True)
    assert state.plans[0].what.result["corrections"][0]["mass"] == pytest.approx(10.0561387, abs=1e-6)
    assert state.checks["foundation"].what.outcome == "not done"
    assert (folder / "job.jsonl").read_bytes() == before
    shutil.copytree(folder, tmp_path / "copy")
    with Job.open(tmp_path / "copy", by="ann") as job:
        job.append("reopened", why="next visit")
        assert job.state.closed is False


# a measurement becomes a run


def test_a_measurement_becomes_a_run(job):
    z = 3.0 * cmath.exp(1j * math.radians(40.0))
    steady = Steadiness("steady", None, 2.0, 1.0, None, 0.0, 30.0, True, ())
    measured = Measurement(
        Speed(1480.0, 1479.0, 1481.0, 100, 0, 0, 1.0), 1.0, "mm/s rms",
        (PointVector("A", z, 0.1, 2.0, 99, 4.0, steady, np.array([z])),),
        np.eye(2), 20, np.array([1.0]), np.array([1480.0]), 30.0, 48_000.0, "rising", 0.02, (),
    )  # fmt: skip
    job.append("run", purpose="initial", name="initial", **run_fields(measured))
    what: Run = job.state.runs[0].what
    assert (what.speed_rpm, what.unit, what.duration_s, what.revolutions) == (1480.0, "mm/s rms", 30.0, 99)
    vector = what.vectors[0]
    assert (vector.point, vector.amplitude, vector.overall) == ("A", pytest.approx(3.0), 4.0)
    assert (vector.phase_deg, vector.verdict) == (pytest.approx(40.0), "steady")
    assert (what.mark.edge, what.mark.width_deg) == ("rising", pytest.approx(7.2))
    assert what.covariance.degrees_of_freedom == 20.0
