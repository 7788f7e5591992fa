"""One advice at a time: every rule is reached from a record that a person could have made, and says its number."""

import cmath
import math
import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from stillshaft.solver import cautions, correction, guidance, inspection, limits, next_steps, progress, run_vectors
from stillshaft.solver.brief import brief_from
from stillshaft.solver.diagnosis import Figure, Word, diagnose
from stillshaft.solver.folder import RecordError
from stillshaft.solver.guidance import STAGES, Facts, advise, starts, state_of_stages
from stillshaft.solver.job import Job
from stillshaft.solver.replay import runs_of, solved
from stillshaft.solver.run_rules import new_initial_state_fields
from stillshaft.solver.runs import Rotor
from stillshaft.solver.runs_file import runs_from_table

SPEED = 1480.0
HOOKUP = {
    "format": 1,
    "pulse": {"input": 1, "edge": "rising"},
    "point": [{"name": "A", "input": 2}, {"name": "B", "input": 3}],
}
BRIEF = {
    "rotor": {"kind": "between bearings", "mass": "80 kg", "speed_rpm": SPEED, "highest_speed_rpm": 1800.0},
    "drive": {"kind": "direct"},
    "planes": [{"name": "left", "radius": "300 mm"}],
    "abort": [{"point": "A", "amplitude": 20.0, "unit": "mm/s rms"}],
    "limits": [{"point": p, "amplitude": 2.8, "unit": "mm/s rms"} for p in "AB"],
    "goal": {"basis": "agreed"},
    "repeatability": "1 % 1 deg",
}  # fmt: skip
RUNNING = next_steps.while_running()


def polar(amplitude, degrees):
    return cmath.rect(amplitude, math.radians(degrees))


class Machine:
    """A job and the machine it is about: z = v0 + H·w, written out by itself."""

    def __init__(self, job):
        self.job = job
        self.v0 = {"A": polar(8.0, 60.0), "B": polar(5.4, 198.0)}
        self.h = {"A": {"left": polar(0.40, 20.0)}, "B": {"left": polar(0.30, 165.0)}}
        self.now = datetime.now(UTC)

    @property
    def state(self):
        return self.job.state

    def on(self):
        keys = ("plane", "mass_g", "angle_deg", "fixing")
        return [{key: getattr(o.piece, key) for key in keys} for o in self.state.on_rotor]

    def vibration(self):
        total = dict(self.v0)
        for point in total:
            for piece in self.on():
                total[point] += self.h[point].get(piece["plane"], 0j) * polar(piece["mass_g"], piece["angle_deg"])
        return total

    def run(self, name, purpose="initial", overall=1.05, seen=None, **more):
        vectors = [
            {"point": p, "amplitude": abs(z), "phase_deg": math.degrees(cmath.phase(z)) % 360.0, "verdict": "steady",
             "overall": overall * abs(z)}
            for p, z in (seen or self.vibration()).items()
        ]  # fmt: skip
        return self.job.append(
            "run", **{"purpose": purpose, "name": name, "speed_rpm": SPEED, "unit": "mm/s rms", "masses": self.on(),
            "vectors": vectors, "mark": {"edge": "rising", "width_deg": 7.2}} | more,
        )  # fmt: skip

    def put(self, mass_g, angle_deg, purpose="trial", plane="left", fixing="bolted", **more):
        piece = {"plane": plane, "mass_g": mass_g, "angle_deg": angle_deg, "fixing": fixing}
        return self.job.append("mass", act="put on", pieces=[piece], purpose=purpose, **more)

    def clear(self, note="weighed back in"):
        for of in dict.fromkeys(o.of for o in self.state.on_rotor):
            self.job.append("mass", act="taken off", of=of, note=note)

    def best(self):
        """Least-squares mass of one plane, by hand: w = −Σ conj(h)·v / Σ |h|²."""
        h = {p: row["left"] for p, row in self.h.items()}
        return -sum(h[p].conjugate() * v for p, v in self.v0.items()) / sum(abs(x) ** 2 for x in h.values())

    def correct(self, share=1.0, purpose="correction", name="correction", **more):
        """Put on this share of the right correction, photographed and bolted, and measure it."""
        self.clear()
        w = share * self.best()
        put = self.put(abs(w), math.degrees(cmath.phase(w)) % 360.0, purpose, **more)
        self.job.append("photo", file=photo(self.job), about=put.id)
        return self.run(name, "check")

    def facts(self, diagnosis=None, now=None):
        """What the caller works out: the real solution and tolerance of the record."""
        solution, error, tolerance = None, None, None
        try:
            runs = runs_from_table(runs_of(self.state), "job")
        except ValueError as refused:
            return Facts(None, str(refused), None, diagnosis, now or self.now)
        try:
            solution = correction.solve(runs)
        except ValueError as refused:
            error = str(refused)
        if runs.limits:
            tolerance = limits.tolerance(None, Rotor("between bearings", None, SPEED, None, None), runs)
        return Facts(solution, error, tolerance, diagnosis, now or self.now)

    def advice(self, **more):
        return advise(self.state, self.facts(**more))

    def stages(self, **more):
        return {name: stage.state for name, stage in state_of_stages(self.state, self.facts(**more)).items()}


def photo(job):
    path = job.new_file("photos", "piece.jpg")
    path.write_bytes(b"a picture")
    return job.file_fields(f"photos/{path.name}")


@pytest.fixture
def bare(tmp_path):
    """A machine whose job was just begun."""
    with Job.create(tmp_path / "job", "fan", "ann") as job:
        yield Machine(job)


@pytest.fixture
def ready(bare):
    """Brief, checks at standstill, hook-up and signal check are done."""
    bare.job.append("brief", **BRIEF)
    for check in inspection.checks(inspection.facts_from(bare.state.brief)):
        if check.key not in RUNNING:
            bare.job.append("check", item=check.key, outcome="fine")
    bare.job.append("hookup", table=HOOKUP)
    bare.job.append("measured", what="signal check")
    return bare


@pytest.fixture
def measured(ready):
    """The initial run was taken twice."""
    ready.run("initial")
    ready.run("again", "repeat")
    return ready


@pytest.fixture
def tried(measured):
    """A good trial was measured and taken off."""
    measured.put(10.0, 120.0)
    measured.run("trial left", "trial")
    measured.clear()
    return measured


@pytest.fixture
def balanced(tried):
    """The correction is on, bolted, photographed and measured."""
    tried.correct()
    return tried


def expect(machine, act, *words, **more):
    """The advice is this act, says these words, has its reason and command, and is one sentence."""
    found = machine.advice(**more)
    assert found.act == act, found
    for word in words:
        assert word in found.sentence
    assert found.sentence.endswith(".")
    assert found.stage == next_steps.act_named(act).stage
    assert found.why
    assert found.command.startswith("stillshaft job ")
    assert machine.advice(**more) == found
    return found


# up to the first run


def test_a_new_job_needs_its_brief(bare):
    expect(bare, "fill-brief", "(5): kind of rotor, running speed, correction planes, abort levels, goal")
    bare.job.append("brief", planes=[{"name": "left"}])
    expect(bare, "fill-brief", "(5)", "radius of left")


def test_checks_at_standstill_come_before_the_first_run(bare):
    bare.job.append("brief", **BRIEF)
    found = expect(bare, "inspect", "next: history")
    count = int(re.search(r"(\d+) of", found.sentence)[1])
    bare.job.append("check", item="history", outcome="fine")
    assert int(re.search(r"(\d+) of", bare.advice().sentence)[1]) == count - 1
    bare.job.append("decision", **progress.skip_fields("inspect", "done yesterday by the fitters"))
    expect(bare, "hook-up", "No hook-up yet")


def test_a_skip_without_a_reason_passes_over_nothing(bare):
    bare.job.append("brief", **BRIEF)
    bare.job.append("decision", **progress.skip_fields("inspect", " "))
    expect(bare, "inspect")


def test_what_needs_attention_is_put_right(ready):
    ready.job.append("check", item="looseness", outcome="needs attention", note="foot 3 loose")
    expect(ready, "mend", "1, first looseness (foot 3 loose)")
    ready.job.append("check", item="looseness", outcome="fine")
    expect(ready, "initial-run")


def test_signals_are_checked_once_and_again_where_something_was_found(bare, ready):
    expect(ready, "initial-run", "without masses")
    ready.job.append("measured", what="signal check", trusted=False, reasons=["pulse, input 1: two pulses a rev"])
    expect(ready, "check-signals", "two pulses a rev")
    ready.job.undo()
    ready.job.undo()
    expect(ready, "check-signals", "not checked yet")


def test_an_overhung_rotor_begins_with_one_plane(ready):
    planes = [{"name": n, "radius": "300 mm"} for n in ("near", "far")]
    ready.job.append("brief", rotor={"kind": "overhung"}, planes=planes)
    expect(ready, "one-plane-first", '2 planes: balance it in "near" alone first')
    ready.job.append("brief", planes=planes[:1])
    assert ready.advice().act != "one-plane-first"


# runs that do not count


@pytest.mark.parametrize(
    ("verdict", "steadiness", "act", "said"),
    [
        (
            "beating",
            {"record_s": 25.0, "phase_swing_deg": 41.0},
            "record-longer",
            "beating, phase swings by 41°: record 25 s",
        ),
        ("too-short", {"record_s": 40.0}, "record-longer", "A is too-short: record 40 s"),
        ("too-short", {}, "record-longer", "record 15 s"),
        ("walking", {}, "stop-neighbour", "stronger than 1x at A: find and stop it"),
        ("drifting", {"cause": "trend", "trend_deg_per_min": 2.5}, "wait-to-settle", "A drifts by +2.5°/min"),
        ("drifting", {"cause": "speed"}, "hold-speed", "follows the speed"),
        ("unsettled", {"cause": "scatter", "record_s": 90.0}, "record-longer", "as small as its scatter: record 90 s"),
        ("unsettled", {"cause": "wander"}, "check-run", "look for a loose part"),
    ],
)
def test_a_run_that_is_not_trusted_says_what_to_do(ready, verdict, steadiness, act, said):
    event = ready.run("initial", trusted=False, reasons=["A: so"])
    fields = dict(event.fields)
    fields["vectors"][0] |= {"verdict": verdict, "steadiness": steadiness}
    ready.job.withdraw(event.id, "again")
    again = ready.job.append("run", **fields | {"name": "initial 2"})
    expect(ready, act, said, 'Run "initial 2"')
    assert ready.stages()["runs"] == "needs attention"
    ready.job.append("use", of=again.id, use=False, why="left out by me")
    expect(ready, "initial-run")


def test_a_run_that_a_rule_refused_is_looked_at(ready):
    ready.run("initial", trusted=False, reasons=["the mark covers 12.3° but covered 7.2°"])
    expect(ready, "check-run", "the mark covers 12.3°")
    ready.job.append("decision", **progress.skip_fields("check-run", "will be repeated"))
    expect(ready, "initial-run")


# before the first trial


def test_the_initial_run_is_repeated_before_the_first_trial(ready):
    ready.run("initial")
    expect(ready, "repeat-initial", "1 run shows no repeatability")
    ready.job.append("decision", **progress.skip_fields("repeat-initial", "the process may not stop"))
    expect(ready, "put-on-trial")


def test_an_initial_run_that_does_not_repeat_is_followed_up(ready):
    ready.run("initial")
    ready.run("again", "repeat", seen={"A": 1.15 * ready.v0["A"], "B": ready.v0["B"]})
    expect(ready, "repeat-differs", '"initial" and "again": A by +15 % and +0°')
    ready.run("third", "repeat", seen={"A": 1.15 * ready.v0["A"], "B": ready.v0["B"]})
    expect(ready, "put-on-trial")


def test_a_trial_mass_is_a_tenth_of_the_weight_in_force(measured):
    """80 kg on one plane: 0.1·80·9.80665 = 78 N, 8 kgf; m = F/(r·Ω²) = 78.45/(0.3·154.99²) = 10.9 g."""
    expect(measured, "put-on-trial", 'about 11 g (78 N, 8 kgf at 1480 r/min) at any angle on "left"')
    measured.job.append("brief", rotor={"mass": None})
    expect(measured, "put-on-trial", "a small trial mass at any angle")


def test_neighbours_are_held_against_the_goal(measured):
    def background(level):
        levels = [{"name": "A", "level": level, "ci95": 0.01, "unit": "mm/s peak"}]
        measured.job.append("measured", what="background", figures={"levels": levels})

    background(0.29 * 2.8 * math.sqrt(2.0))
    expect(measured, "put-on-trial")
    background(0.35 * 2.8 * math.sqrt(2.0))
    expect(measured, "stop-neighbour", "35 % of the goal at A")


def test_near_a_resonance_speed_or_support_is_moved_first(measured):
    figures = {"points": [{"name": "A", "resonances": [{"rpm": 1650.0}, {"rpm": 900.0}]}]}
    measured.job.append("measured", what="sweep", figures=figures)
    expect(measured, "move-speed", "1480 r/min is 10 % from the resonance at 1650 r/min")
    measured.job.append("decision", **progress.skip_fields("move-speed", "speed is fixed by the process"))
    expect(measured, "put-on-trial", "about 5.4 g")  # half of it there


def test_a_bump_test_shows_a_resonance_too(measured):
    measured.job.append("measured", what="bump", figures={"modes": [{"frequency_hz": 25.0}]})
    expect(measured, "move-speed", "at 1500 r/min")


def test_the_diagnosis_may_speak_against_balancing(measured):
    out_of_line = diagnose({"ratio_2x": Figure(1.5, 1.4, 1.6), "alignment": Word("outside its limits")})
    assert (out_of_line.causes[0].key, out_of_line.causes[0].verdict) == ("misalignment", "likely")
    name = out_of_line.causes[0].name[1:]
    expect(measured, "stop-not-unbalance", f"{name} is likelier than unbalance (", diagnosis=out_of_line)
    expect(measured, "stop-not-unbalance", diagnosis=out_of_line.causes)
    found = diagnose({"resonance_margin": Figure(5.0, 4.0, 6.0), "speed_exponent": Figure(12.0, 11.0, 13.0)})
    expect(measured, "move-speed", "is likely", diagnosis=found)
    plain = diagnose({"share_1x": Figure(95.0, 94.0, 96.0), "hv_ratio": Figure(2.0, 1.9, 2.1)})
    expect(measured, "put-on-trial", diagnosis=plain)


def test_where_other_orders_dominate_balancing_changes_little(ready):
    ready.run("initial", overall=2.0)
    expect(ready, "stop-other-orders", "25 % of the vibration's square at A")
    ready.job.append("decision", **progress.skip_fields("stop-other-orders", "1x is to come down anyway"))
    expect(ready, "repeat-initial")


# starts


def test_starts_are_counted_against_what_the_motor_allows(bare):
    now = datetime.now(UTC)
    assert starts(bare.state, now) == guidance.Starts(0, None, None, "0 starts counted")
    bare.job.append("brief", starts={"allowed": 6, "hot_allowed": 2, "minutes_between": 20.0})
    bare.job.append("start", temperature="cold")
    found = starts(bare.state, now)
    assert (found.counted, found.left) == (1, 2)
    last = datetime.fromisoformat(bare.state.starts[-1].at)
    assert found.earliest == last + timedelta(minutes=20)
    assert starts(bare.state, last + timedelta(minutes=20)).earliest is None
    bare.job.append("start")  # nobody noted how warm it was
    assert starts(bare.state, now).left == 1
    bare.job.append("start", temperature="warm")
    assert starts(bare.state, now).left == 0
    bare.job.append("brief", starts={"hot_allowed": None, "cold_allowed": 2})
    assert starts(bare.state, now).left == 0


def test_coast_down_and_lock_out_take_their_time_and_the_window_ends(bare):
    end = datetime.now(UTC) + timedelta(minutes=100)
    said = {
        "minutes_between": 10.0,
        "coast_down_minutes": 15.0,
        "lock_out_minutes": 10.0,
        "window_end": end.isoformat(),
    }
    bare.job.append("brief", starts=said)
    assert starts(bare.state, end - timedelta(minutes=100)).left == 5  # now, and each 25 min until the end
    assert starts(bare.state, end - timedelta(minutes=10)).left == 1
    assert starts(bare.state, end).left == 0
    bare.job.append("start")
    assert starts(bare.state, end - timedelta(minutes=100)).earliest is not None
    with pytest.raises(RecordError, match='"Friday" is no date and time'):
        bare.job.append("brief", starts={"window_end": "Friday"})
    bare.job.append("brief", starts={"window_end": "2026-01-02T10:00"})
    assert starts(bare.state, datetime(2026, 1, 2, 9, 50, tzinfo=UTC)).left == 0  # the next start is far behind it


def test_the_next_start_is_waited_for(ready):
    ready.job.append("brief", starts={"allowed": 9, "minutes_between": 30.0})
    ready.job.append("start", temperature="cold")
    last = datetime.fromisoformat(ready.state.starts[-1].at)
    expect(
        ready, "wait-for-start", "Wait 20 min", "8 left", "then take the initial run", now=last + timedelta(minutes=10)
    )
    expect(ready, "initial-run", now=last + timedelta(minutes=30))
    ready.job.append("decision", **progress.skip_fields("wait-for-start", "the motor's maker allows it today"))
    expect(ready, "initial-run", now=last + timedelta(minutes=10))


def test_no_start_left_says_so(ready):
    ready.job.append("brief", starts={"allowed": 1})
    ready.job.append("start", temperature="cold")
    expect(ready, "no-starts-left", "1 start counted; 0 left")


@pytest.mark.parametrize(("allowed", "act"), [(4, "repeat-initial"), (3, "put-on-trial"), (2, "plan-fewest")])
def test_few_starts_are_kept_for_what_needs_them(ready, allowed, act):
    """Left after the initial run: repeat, trial and check need 3; without the repeat 2; less needs another plan."""
    ready.job.append("brief", starts={"allowed": allowed})
    ready.job.append("start")
    ready.run("initial")
    expect(ready, act)
    if act == "plan-fewest":
        expect(ready, act, "1 starts are left and the usual way needs 2", "coefficients of an earlier visit need 1")
        assert "one plane alone" not in ready.advice().sentence
        ready.job.append("brief", planes=[{"name": n, "radius": "300 mm"} for n in ("left", "right")])
        expect(ready, act, "needs 3", "one plane alone needs 2")
    if act == "put-on-trial":
        expect(ready, act, "2 starts are left, 2 are needed")


# trials


def test_a_trial_that_is_on_is_measured_then_the_next_plane_has_its_turn(measured):
    planes = [{"name": n, "radius": "300 mm"} for n in ("left", "right")]
    measured.job.append("brief", planes=planes)
    for h in measured.h.values():
        h["right"] = -0.5j * h["left"].conjugate()
    measured.put(10.0, 120.0)
    expect(measured, "trial-run", '10 g at 120° on "left" on')
    measured.run("trial left", "trial")
    expect(measured, "put-on-trial", 'on "right"; take the one that is on off first')
    measured.clear()
    measured.put(10.0, 30.0, plane="right")
    measured.run("trial right", "trial")
    expect(measured, "put-on-correction", "ake all trial masses off and put on", 'on "left" and', 'on "right"')


def test_the_correction_is_the_one_worked_out_by_hand(tried):
    w = tried.best()
    found = expect(tried, "put-on-correction", 'on "left"')
    mass, angle = re.search(r"Put on ([\d.]+) ± [\d.]+ g at (\d+)", found.sentence).groups()
    assert float(mass) == pytest.approx(abs(w), rel=0.01)
    assert float(angle) == pytest.approx(math.degrees(cmath.phase(w)) % 360.0, abs=0.6)
    tried.put(abs(w), math.degrees(cmath.phase(w)), "correction")
    expect(tried, "correction-run")


def test_a_weak_trial_asks_for_a_larger_one(measured):
    measured.put(0.5, 120.0)
    measured.run("trial left", "trial")
    found = expect(measured, "larger-trial", 'Trial on "left"', "standard deviations are too weak")
    times, mass = re.search(r"put on ([\d.]+) times the mass, ([\d.]+) g", found.sentence).groups()
    assert float(mass) == pytest.approx(0.5 * float(times), rel=0.05)
    assert measured.stages()["masses"] == "needs attention"
    measured.clear()
    measured.put(float(mass), 120.0)
    measured.run("larger", "trial")
    assert measured.advice().act != "larger-trial"


def test_a_larger_trial_stays_below_the_abort_level(measured):
    measured.put(0.5, 120.0)
    measured.run("trial left", "trial")
    measured.job.append("brief", abort=[{"point": "A", "amplitude": 8.6, "unit": "mm/s rms"}])
    found = expect(measured, "larger-trial", "no more for the abort level at A")
    mass = float(re.search(r"mass, ([\d.]+) g", found.sentence)[1])
    assert 8.0 + 0.4 * mass == pytest.approx(8.6, rel=0.01)  # |v0| + |H·w|
    measured.job.append("brief", abort=[{"point": "A", "amplitude": 8.1, "unit": "mm/s rms"}])
    expect(measured, "repeat-trial", "may bring A above its abort level of 8.1")


def test_a_high_initial_run_alone_refuses_no_trial(measured):
    measured.job.append("brief", abort=[{"point": "A", "amplitude": 7.0, "unit": "mm/s rms"}])
    measured.put(0.5, 120.0)
    measured.run("trial left", "trial")
    found = expect(measured, "larger-trial")
    assert "abort" not in found.sentence


def test_with_a_poor_repeatability_no_mass_would_do(measured):
    measured.job.append("brief", repeatability="20 % 20 deg")
    measured.put(1.0, 120.0)
    measured.run("trial left", "trial")
    expect(measured, "repeat-trial", "no mass would do with this repeatability")


def test_a_trial_that_may_cross_the_abort_level_gets_smaller(tried):
    tried.job.append("brief", abort=[{"point": "A", "amplitude": 10.0, "unit": "mm/s rms"}])
    tried.put(20.0, 120.0)
    expect(tried, "smaller-trial", "may bring A to 16, above its abort level of 10", "25 % of it")
    tried.clear()
    tried.put(4.0, 120.0)
    expect(tried, "trial-run")


def test_undetermined_masses_ask_for_a_larger_trial(measured):
    """Two planes at one point: nothing tells them apart."""
    measured.job.append("brief", planes=[{"name": n, "radius": "300 mm"} for n in ("left", "right")])
    for point in measured.h:
        measured.h[point]["right"] = measured.h[point]["left"]
    for plane in ("left", "right"):
        measured.put(12.0, 120.0, plane=plane)
        measured.run(f"trial {plane}", "trial")
        measured.clear()
    facts = measured.facts()
    assert not facts.solution.trusted
    expect(measured, "larger-trial")


def test_runs_that_give_no_solution_say_why(tried):
    facts = Facts(None, "limit: too many", None, None, tried.now)
    found = advise(tried.state, facts)
    assert (found.act, found.sentence) == ("mend-runs", "The runs give no correction: limit: too many.")


def test_an_initial_state_that_moved_is_found_out_first(tried):
    tried.run("after", "repeat", seen={p: 1.3 * z for p, z in tried.v0.items()})
    expect(
        tried,
        "check-run",
        "initial state moved between",
    )


# corrections


def test_more_is_added_until_the_goal_is_met(tried):
    tried.correct(0.6)
    found = expect(tried, "trim", "Add to what is on")
    mass = float(re.search(r"on ([\d.]+)", found.sentence)[1])
    assert mass == pytest.approx(0.4 * abs(tried.best()), rel=0.1)
    tried.clear()
    expect(tried, "trim", "Put on ")
    tried.put(1.0, 10.0, "other")
    tried.run("odd", "other")
    tried.clear()
    tried.put(2.0, 10.0, "other")
    tried.run("left out", "other", trusted=False, reasons=["A: so"])
    assert tried.advice().act == "check-run"


def test_the_static_part_is_named_where_it_is_to_be_preferred(measured):
    """Two planes that do nearly the same: opposed masses many times too large are not worth it."""
    planes = [{"name": n, "radius": "300 mm", "z": z} for n, z in (("left", "0 mm"), ("right", "400 mm"))]
    measured.job.append("brief", planes=planes, rotor={"bearing_span": "800 mm", "centre_of_mass": "200 mm"})
    for point, off in (("A", polar(1.05, 4.0)), ("B", polar(0.95, -4.0))):
        measured.h[point]["right"] = off * measured.h[point]["left"]
    for plane in ("left", "right"):
        measured.put(12.0, 120.0, plane=plane)
        measured.run(f"trial {plane}", "trial")
        measured.clear()
    facts = measured.facts()
    name = facts.solution.proposed.alternative.name
    assert name != "all planes"
    measured.job.append("decision", **progress.skip_fields("larger-trial", "seen"))
    put = dict(zip(("left", "right"), facts.solution.proposed.alternative.masses, strict=True))
    expect(measured, "put-on-part", run_vectors.mass_text(put), f"{name} is to be preferred to all planes")
    for plane, mass in put.items():
        measured.put(abs(mass), math.degrees(cmath.phase(mass)), "correction", plane)
    measured.run("correction", "check")
    assert measured.advice().act in ("stop-met", "photograph")
    measured.job.append("brief", limits=[{"point": p, "amplitude": 0.01, "unit": "mm/s rms"} for p in "AB"])
    assert measured.advice().act == "stop-scatter"
    measured.job.append("decision", **progress.skip_fields("stop-scatter", "go on"))
    expect(measured, "trim")


def test_an_overhung_rotor_with_two_planes_takes_one_part_first(measured):
    measured.job.append(
        "brief", rotor={"kind": "overhung"}, planes=[{"name": n, "radius": "300 mm"} for n in ("near", "far")]
    )
    measured.job.append("decision", **progress.skip_fields("one-plane-first", "the owner wants both"))
    measured.h = {"A": {"near": 0.4, "far": 0.3j}, "B": {"near": -0.2j, "far": 0.5}}
    for plane in ("near", "far"):
        measured.put(10.0, 120.0, plane=plane)
        measured.run(f"trial {plane}", "trial")
        measured.clear()
    found = expect(measured, "put-on-part", "is to be preferred to all planes")
    assert measured.facts().solution.proposed.alternative.unknowns == 1
    assert len(re.findall(" g at ", found.sentence)) == 1


def test_both_planes_of_an_overhung_rotor_once_corrected_are_trimmed(measured):
    """A passed advice stays passed, and masses of all planes are trimmed, not taken off for one part of them."""
    measured.job.append(
        "brief", rotor={"kind": "overhung"}, planes=[{"name": n, "radius": "300 mm"} for n in ("near", "far")]
    )
    measured.job.append("decision", **progress.skip_fields("one-plane-first", "the owner wants both"))
    measured.h = {"A": {"near": 0.4, "far": 0.3j}, "B": {"near": -0.2j, "far": 0.5}}
    for plane in ("near", "far"):
        measured.put(10.0, 120.0, plane=plane)
        measured.run(f"trial {plane}", "trial")
        measured.clear()
    expect(measured, "put-on-part")
    measured.job.append("decision", **progress.skip_fields("put-on-part", "the owner wants both"))
    expect(measured, "put-on-correction")
    for c in measured.facts().solution.corrections:
        measured.put(0.8 * c.mass, c.angle_deg, "correction", c.plane)
    measured.run("correction", "check")
    measured.job.append("brief", limits=[{"point": p, "amplitude": 0.01, "unit": "mm/s rms"} for p in "AB"])
    expect(measured, "trim", "Add to what is on")
    measured.put(3.0, 40.0, plane="near")
    measured.run("another trial", "trial")
    assert "Take all that is on off, trial and earlier masses, and put on" in measured.advice().sentence


def test_a_correction_below_the_smallest_piece_is_the_end(tried):
    tried.job.append("brief", stock=[{"mass": "40 g", "count": 3}])
    expect(tried, "stop-exhausted", "is below the smallest piece of 40 g")
    tried.job.append("decision", **progress.skip_fields("stop-exhausted", "a smaller piece is on its way"))
    expect(tried, "put-on-correction")


def test_a_correction_inside_its_own_scatter_is_the_end(tried):
    tried.job.append("brief", limits=[{"point": p, "amplitude": 0.05, "unit": "mm/s rms"} for p in "AB"])
    tried.correct()
    expect(tried, "stop-scatter", "lies inside its own scatter")
    tried.job.append("decision", **progress.skip_fields("stop-scatter", "one more try"))
    expect(tried, "trim")


def test_two_corrections_in_a_row_that_do_little_are_the_end(tried):
    tried.correct(0.1, name="first")
    assert tried.advice().act == "trim"
    tried.correct(0.2, name="second")
    first, second = progress.cuts_percent(tried.state)
    expect(tried, "stop-exhausted", f"by {first:.0f} % and {second:.0f} %")
    # the machine answers in a line: of 1, 0.9 and 0.8 of the unbalance each point keeps about as much
    assert first == pytest.approx(10.0, abs=2.0)
    assert second == pytest.approx(11.0, abs=2.0)


def test_coefficients_that_change_between_runs_are_the_end(tried):
    tried.job.append("plan", **solved(tried.state)[0])
    for row in tried.h.values():
        row["left"] *= polar(1.6, 10.0)
    tried.correct(0.5)
    found = progress.influence_change(tried.state, 4.0)
    assert found.percent == pytest.approx(60.0, abs=0.5)
    assert found.turned_deg == pytest.approx(10.0, abs=0.5)
    assert tried.advice().act == "check-run"  # the runs do not fit each other either
    tried.job.append("decision", **progress.skip_fields("check-run", "nothing found"))
    expect(tried, "stop-scatter", 'changed by +60 % and +10° in run "correction"')


def test_coefficients_are_not_compared_without_a_plan_or_a_clear_move(tried):
    tried.correct(0.5)
    assert progress.influence_change(tried.state, 4.0) is None
    tried.job.append("plan", **solved(tried.state, [r.id for r in tried.state.runs][:-1])[0])
    tried.correct(0.01, name="hardly anything")
    assert progress.influence_change(tried.state, 4.0) is None


# met, and the end


def test_a_goal_that_is_met_is_told_with_its_interval(balanced):
    found = expect(balanced, "stop-met", "The goal is met (", "of 2.8): stop here and record the verdict")
    assert " ± " in found.sentence
    stages = balanced.stages()
    assert stages["runs"] == stages["masses"] == "done"
    assert stages["close-out"] == "under way"


def test_a_goal_met_from_the_beginning_needs_no_balancing(ready):
    ready.v0 = {p: 0.1 * z for p, z in ready.v0.items()}
    ready.run("initial")
    expect(ready, "stop-met")


def test_a_trial_that_meets_the_goal_by_chance_is_no_end(measured):
    w = measured.best()
    measured.put(abs(w), math.degrees(cmath.phase(w)))
    measured.run("trial left", "trial")
    assert measured.facts().tolerance.verdict == "met"
    assert measured.advice().act != "stop-met"


def test_the_end_of_a_job_goes_step_by_step(balanced):
    job = balanced.job
    verdict = {"verdict": "met", "basis": "agreed"}
    put = balanced.state.on_rotor[0]
    loose = {"plane": "left", "mass_g": put.piece.mass_g, "angle_deg": put.piece.angle_deg, "fixing": "clamped"}
    placed = job.append("mass", act="really placed", of=put.of, pieces=[loose])
    expect(balanced, "fix-permanently", "The goal is met", "not fixed for good")
    job.append("mass", act="really placed", of=placed.id, pieces=[loose | {"fixing": "welded"}])
    expect(balanced, "photograph", "no photo yet of")
    job.append("photo", file=photo(job), about=balanced.state.masses[-1].id)
    expect(balanced, "final-run", "fixing changed since the last run")
    balanced.run("final", "check")
    on = balanced.state.on_rotor[0]
    again = [loose | {"fixing": "welded"}]
    job.append("mass", act="really placed", of=on.of, pieces=again, photos=[photo(job)])
    expect(balanced, "stop-met")  # a photo alone asks for no run
    job.append("verdict", **verdict)
    expect(balanced, "accept", 'the verdict "met" accepted or refused')
    job.append("verdict", **verdict, accepted_by="the owner")
    job.append("check", item="rubbing", outcome="not done", note="casing closed")
    expect(balanced, "close", "checks not done: rubbing")
    job.append("closed")
    expect(balanced, "done", "he job is closed")
    assert balanced.stages()["close-out"] == "done"


def test_trial_masses_are_off_and_weighed_back_in_before_the_end(balanced):
    balanced.put(0.001, 0.0)
    balanced.job.append("decision", **progress.stop_fields("good enough for the owner"))
    expect(balanced, "take-off-trial", "trial masses are still on: 0.001 g")
    assert balanced.stages()["close-out"] == "needs attention"
    of = balanced.state.on_rotor[-1].of
    balanced.job.append("mass", act="taken off", of=of)
    expect(balanced, "weigh-back", "1 of 2 trial masses")
    balanced.job.append("decision", **progress.skip_fields("weigh-back", "weighed, all there"))
    expect(balanced, "stop-met")


def test_other_points_are_no_worse_and_conditions_alike(tried):
    tried.job.append("brief", conditions=[{"name": "damper"}])
    tried.correct()
    tried.run("final", "check", overall=30.0)
    expect(tried, "points-worse", "the broadband level is")
    tried.job.append("decision", **progress.skip_fields("points-worse", "a bearing, the owner knows"))
    expect(tried, "unlike-conditions", '"initial" and "final": damper was not noted in both runs')


def test_a_job_may_be_stopped_with_the_goal_out_of_reach(tried):
    tried.correct(0.3)
    tried.job.append("decision", **progress.stop_fields("window over"))
    expect(tried, "record-verdict", "alancing was stopped: record the verdict")
    tried.job.append("verdict", verdict="not met", basis="agreed")
    expect(tried, "accept", 'the verdict "not met"')
    tried.put(1.0, 0.0, "trim")  # a change of mind
    expect(tried, "correction-run")


# what happens in between


def test_a_crossed_abort_level_comes_before_all_else(tried):
    tried.put(20.0, 120.0)
    tried.job.append("alarm", point="A", amplitude=21.0, level=20.0, unit="mm/s rms")
    expect(tried, "after-alarm", "A reached 21 mm/s rms, above its abort level of 20")
    assert tried.stages()["runs"] == "needs attention"
    entry = tried.state.on_rotor[-1].of
    assert tried.advice().command == f"stillshaft job mass DIR take {entry}"
    tried.clear()
    assert tried.advice().act != "after-alarm"


def test_an_abort_level_crossed_with_nothing_on_takes_nothing_off(measured):
    measured.job.append("alarm", point="A", amplitude=21.0, level=20.0, unit="mm/s rms")
    found = expect(measured, "alarm-bare", "A reached 21 mm/s rms", "with nothing put on", "agree with the owner")
    assert "job decide" in found.command
    measured.job.append("decision", text="start again", why="a truck stood on the base")
    assert measured.advice().act != "alarm-bare"


def test_a_running_speed_above_the_rotors_limit_comes_first(bare):
    bare.job.append("brief", rotor={"speed_rpm": 1480.0, "highest_speed_rpm": 900.0})
    expect(bare, "speed-above-limit", "running speed of 1480 r/min is above the 900 r/min")
    bare.job.append("decision", **progress.skip_fields("speed-above-limit", "it always ran like this"))
    expect(bare, "speed-above-limit")


@pytest.mark.parametrize(("table", "what"), [("abort", "abort level"), ("limits", "limit")])
def test_a_level_at_a_point_that_is_not_wired_is_said(ready, table, what):
    old = [{"point": x.point, "amplitude": x.amplitude, "unit": x.unit} for x in getattr(ready.state.brief, table)]
    ready.job.append("brief", **{table: [*old, {"point": "C side", "amplitude": 9.0, "unit": "mm/s rms"}]})
    found = expect(ready, "name-points", f'The {what} at "C side" watches nothing', "there is A, B")
    assert found.command.endswith(f"--set '{table}.C side = nothing'")
    ready.job.append("brief", **{table: old})
    assert ready.advice().act != "name-points"


def test_a_level_is_not_doubted_before_the_hook_up(bare):
    bare.job.append("brief", **BRIEF)
    assert cautions.unwatched(bare.state) == ()


# the command with what is known filled in


def test_the_command_for_a_trial_names_plane_and_mass(measured):
    found = expect(measured, "put-on-trial", "trial mass of about")
    mass = re.search(r"about ([\d.]+) g", found.sentence)[1]
    assert found.command == f"stillshaft job mass DIR put 'left = {mass} g at ANGLE' --as trial"
    measured.job.append("brief", planes=[{"name": "left", "radius": "300 mm", "positions": 12}], rotor={"mass": None})
    assert measured.advice().command.endswith("put 'left = MASS at position NUMBER' --as trial")


def test_the_command_for_a_correction_solves_only_what_is_not_solved(measured):
    measured.put(10.0, 120.0)
    measured.run("trial left", "trial")
    found = expect(measured, "put-on-correction")
    solve, put = "stillshaft job solve DIR", "stillshaft job mass DIR put plan --as correction"
    assert found.command == f"stillshaft job mass DIR take trial && {solve} && {put}"
    measured.clear()
    assert measured.advice().command == f"{solve} && {put}"
    measured.job.append("plan", **solved(measured.state)[0])
    assert measured.advice().command == put
    measured.v0["A"] *= 1.02
    measured.run("once more", "repeat")
    assert measured.advice().command == f"{solve} && {put}"


def test_commands_for_pieces_name_their_entry(tried):
    tried.correct(fixing=None)
    found = expect(tried, "fix-permanently")
    assert f"placed {tried.state.on_rotor[0].of} " in found.command


def test_an_unknown_turn_asks_for_a_run_that_shows_it(measured):
    measured.job.append("reference", what="pulse sensor moved")
    expect(measured, "re-reference", "Pulse sensor moved: its turn is not known; repeat a run as the rotor is now")
    assert measured.stages()["runs"] == "needs attention"
    measured.put(10.0, 120.0)
    expect(measured, "re-reference", "put back no mass and repeat that run")
    measured.clear()
    measured.job.append("reference", what="measured", of=measured.state.references[0].id, turn_deg=12.0)
    expect(measured, "put-on-trial")


def test_a_cleaned_rotor_has_a_new_initial_state(tried):
    tried.job.append("decision", **new_initial_state_fields(tried.state.runs[-1].id, "blades scraped"))
    expect(tried, "initial-run", "cleaned or mended: take a new initial run")


def test_a_contract_decides_by_all_and_an_agreement_by_vibration(tried):
    runs = runs_from_table(runs_of(tried.state), "job")
    rotor = Rotor("between bearings", 80.0, SPEED, None, None)
    loose = limits.tolerance("G4000", rotor, runs)  # residual unbalance is met, vibration is not
    assert {p.verdict for p in loose.planes} == {"met"}
    tight = runs_from_table(
        runs_of(tried.state) | {"limit": [{"point": p, "amplitude": 99.0} for p in "AB"]}, "job"
    )  # the other way round
    strict = limits.tolerance("G0.4", rotor, tight)
    assert {v.verdict for v in strict.vibration} == {"met"}
    told = {}
    for basis in ("contract", "limit table", "agreed"):
        tried.job.append("brief", goal={"basis": basis})
        told[basis] = [next_steps.goal_verdict(tried.state.brief, t) for t in (loose, strict, None)]
    assert told["contract"] == ["not met", "not met", "cannot be told"]
    assert told["limit table"] == told["agreed"] == ["not met", "met", "cannot be told"]


def test_a_record_with_what_is_no_unit_is_said_not_guessed_at(measured):
    measured.run("typed in", "repeat", unit="furlong")
    expect(measured, "mend-record", '"furlong" needs a measure')
    measured.job.append("decision", **progress.stop_fields("window over"))
    stages = state_of_stages(measured.state, measured.facts())
    assert stages["close-out"].state == "needs attention"
    assert "furlong" in stages["close-out"].reason


def test_a_cleaned_rotor_with_weak_trials_has_its_stages(measured):
    measured.put(0.5, 120.0)
    last = measured.run("trial left", "trial")
    measured.clear()
    measured.job.append("decision", **new_initial_state_fields(last.id, "blades scraped"))
    assert measured.stages()["masses"] == "needs attention"


@pytest.mark.parametrize("minutes", [1e30, 1e-30, -5.0])
def test_minutes_between_starts_that_cannot_be_break_nothing(bare, minutes):
    end = (datetime.now(UTC) + timedelta(hours=1)).isoformat()
    bare.job.append("start")
    said = brief_from({"starts": {"minutes_between": minutes, "window_end": end}})  # as an older record may have it
    found = starts(replace(bare.state, brief=said), datetime.now(UTC))
    assert (found.earliest is not None) == (minutes > 1.0)


# stages


def test_stages_fill_one_after_the_other(bare):
    assert tuple(bare.stages()) == STAGES
    assert set(bare.stages().values()) == {"empty"}
    bare.job.append("brief", machine={"name": "fan"})
    assert bare.stages()["brief"] == "under way"
    bare.job.append("brief", **BRIEF)
    assert bare.stages()["brief"] == "done"
    bare.job.append("brief", rotor={"speed_rpm": 2000.0})
    assert state_of_stages(bare.state, bare.facts())["brief"] == guidance.Stage(
        "needs attention", "running speed 2000 r/min is above the rotor's highest, 1800 r/min"
    )
    bare.job.append("check", item="history", outcome="fine")
    assert bare.stages()["inspect"] == "under way"
    bare.job.append("check", item="looseness", outcome="needs attention")
    assert bare.stages()["inspect"] == "needs attention"
    for check in inspection.checks(inspection.facts_from(bare.state.brief)):
        bare.job.append("check", item=check.key, outcome="fine")
    assert bare.stages()["inspect"] == "done"
    bare.job.append("hookup", table=HOOKUP)
    assert bare.stages()["hook-up"] == "under way"
    bare.job.append("measured", what="signal check", trusted=False)
    assert bare.stages()["hook-up"] == "needs attention"
    bare.job.append("measured", what="signal check")
    assert bare.stages()["hook-up"] == "done"
    bare.run("initial")
    assert bare.stages()["runs"] == "under way"
    bare.put(1.0, 0.0, fixing="magnet")
    assert bare.stages()["masses"] == "needs attention"
    bare.clear()
    assert bare.stages()["masses"] == "under way"
    assert bare.stages()["close-out"] == "empty"


def test_the_checks_that_take_a_running_machine_are_checks_of_the_inspection():
    assert set(RUNNING) <= {check.key for check in inspection.checks({})}


def test_every_act_of_the_table_has_a_record_that_reaches_it():
    """Each is named by an `expect` of this file, whichever of them are run, and where."""
    here = Path(__file__).read_text("utf-8")
    assert [act for act in next_steps.acts() if f'"{act}"' not in here] == []
