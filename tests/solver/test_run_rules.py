"""Runs judged against the record: every rule refuses or cautions with its figures, and jobs go on where they can."""

import cmath
import math

import numpy as np
import pytest
from stillshaft.solver import run_checks
from stillshaft.solver.folder import RecordError
from stillshaft.solver.job import Job
from stillshaft.solver.replay import chosen
from stillshaft.solver.run_rules import (
    NEW_INITIAL_STATE,
    can_be_allowed,
    counting_runs,
    judge_run,
    new_initial_state,
    new_initial_state_fields,
    recorded,
    swap_test,
    turn_from_reference_run,
)

PLANES = [{"name": "left", "radius": "300 mm"}, {"name": "right", "radius": "300 mm"}]
LEFT = {"plane": "left", "mass_g": 10.0, "angle_deg": 270.0}
FIRST = {"A": (8.5, 60.0), "B": (6.5, 205.0)}


@pytest.fixture
def job(tmp_path):
    """A job with its brief and one initial run."""
    with Job.create(tmp_path / "job", "fan", "ann") as opened:
        opened.append("brief", planes=PLANES)
        take(opened, "initial")
        yield opened


def run(name="second", points=None, **more):
    """Keys of a good run, as a measurement gives them."""
    points = FIRST if points is None else points
    vectors = [
        {"point": p, "amplitude": a, "phase_deg": d % 360.0, "overall": 1.1 * a, "verdict": "steady"}
        for p, (a, d) in points.items()
    ]
    covariance = {
        "points": list(points),
        "matrix": (1e-4 * np.eye(2 * len(points))).tolist(),
        "degrees_of_freedom": 40.0,
    }
    return {
        "purpose": "repeat", "name": name, "speed_rpm": 1480.0, "unit": "mm/s rms", "vectors": vectors, "masses": [],
        "covariance": covariance, "duration_s": 30.0, "revolutions": 739, "minutes_since_start": 12.0,
        "mark": {"edge": "rising", "width_deg": 7.2}, "trusted": True, "reasons": [],
    } | more  # fmt: skip


def take(job, name, points=None, **more):
    return job.append("run", **run(name, points, **more))


def turned(degrees, grown=1.0):
    return {p: (grown * a, d + degrees) for p, (a, d) in FIRST.items()}


def rules(findings):
    return [f.rule for f in findings]


def judged(job, points=None, **more):
    return judge_run(job.state, run(points=points, **more))


def test_a_good_run_counts_and_nothing_is_said(job):
    found = judged(job)
    assert (found.counts, found.refusals, found.cautions) == (True, (), ())


def test_the_first_run_of_a_job_has_nothing_to_be_unlike(tmp_path):
    with Job.create(tmp_path / "other", "fan", "ann") as fresh:
        found = judge_run(fresh.state, run(speed_rpm=700.0))
    assert (found.counts, found.refusals, found.cautions) == (True, (), ())


def beat(offset_hz):
    return {"steadiness": {"beat": {"offset_hz": offset_hz}, "reasons": []}}


def with_vector(**more):
    fields = run()
    fields["vectors"][0] |= more
    return {"vectors": fields["vectors"]}


MARK = {"edge": "rising", "width_deg": 7.2}


@pytest.mark.parametrize(
    ("more", "rule", "said"),
    [
        (
            {"trusted": False, "reasons": ["A: drifts", "samples were lost"]}
            | with_vector(verdict="drifting", steadiness={"reasons": ["the phase drifts by +2.0°/min"]}),
            "steadiness",
            "A: the verdict on 1x is drifting (the phase drifts by +2.0°/min)",
        ),
        ({"trusted": False, "reasons": ["samples were lost"]}, "steadiness", "samples were lost"),
        ({"trusted": False}, "steadiness", "not trusted, and does not say why"),
        ({"mark": MARK | {"edge": "falling"}}, "mark-edge", 'at its falling edge, in "initial" at its rising'),
        ({"mark": MARK | {"width_deg": 352.0}}, "mark-polarity", "high for 352.0° and was for 7.2°"),
        ({"mark": MARK | {"width_deg": 12.3}}, "mark-width", "covers 12.3° but covered 7.2°"),
        ({"points": {"A": FIRST["A"]}}, "points", 'B: not measured, but in "initial"'),
        ({"unit": "um p-p"}, "unit", "vectors are in um p-p"),
        ({"masses": [LEFT | {"plane": "middle"}]}, "planes", "middle: no plane of the brief; there is left, right"),
        ({"speed_rpm": 1510.0}, "speed", '2.0 % off the 1480 r/min of "initial", limit 2 %'),
        ({"speed_rpm": 2960.0}, "speed-multiple", "reads 2960 r/min, 2 times that of"),
        ({"speed_rpm": 740.0}, "speed-multiple", "reads 740 r/min, 0.5 times that of"),
        ({"duration_s": 10.0}, "too-short", "in 10.0 s: a run takes 100 and 15 s; record 15 s"),
        ({"revolutions": 99}, "too-short", "99 revolutions in 30.0 s"),
        (with_vector(**beat(0.02)), "too-short", "30.0 s is less than one beat of 50 s"),
        ({"masses": [LEFT]}, "masses", 'says 10 g at 270° on "left", the record has no mass'),
        ({"points": FIRST | {"B": (0.0, 0.0)}}, "no-signal", "B: reads 0"),
        ({"points": FIRST | {"B": (0.1, 3.0)}}, "no-signal", "B: fell from 6.5 to 0.1 mm/s rms"),
        ({"points": {"A": FIRST["B"], "B": FIRST["A"]}}, "swapped", 'A and B: each reads what the other read in "initial"'),
    ],
)  # fmt: skip
def test_a_rule_refuses_a_run_with_its_figures(job, more, rule, said):
    found = judged(job, **more)
    assert not found.counts
    match = [f for f in found.refusals if f.rule == rule]
    assert match
    assert said in match[0].sentence
    assert match[0].what_to_do
    anyway = judged(job, **more, used_anyway="no other chance today")
    assert anyway.refusals == found.refusals
    assert anyway.counts == all(can_be_allowed(f) for f in found.refusals)
    assert not judged(job, **more, used_anyway=" ").counts


PULSE = {"input": 1, "angle": 90.0}


def signal_check(job, width_deg, **pulse):
    mark = {"edge": "rising", "width_deg": width_deg, "threshold": 0.25, "pulse": PULSE | pulse}
    job.append("measured", what="signal check", figures={"findings": [], "mark": mark}, trusted=True, reasons=[])


def test_the_first_run_must_see_the_mark_as_the_newest_signal_check_of_this_pulse_did(tmp_path):
    with Job.create(tmp_path / "job", "fan", "ann") as job:
        job.append("brief", planes=PLANES)
        job.append("hookup", table={"format": 1, "pulse": PULSE | {"edge": "rising"}, "point": []})
        signal_check(job, 4.0)
        signal_check(job, 13.0)
        signal_check(job, 20.0, angle=0.0)  # another place of the sensor
        (refused,) = judged(job).refusals
        assert refused.sentence == "the mark covers 7.2° but covered 13.0° at the signal check"
        (other,) = judged(job, mark={"edge": "falling", "width_deg": 13.0}).refusals
        assert other.sentence == "the pulse was taken at its falling edge, at the signal check at its rising"
        assert judged(job, mark={"edge": "rising", "width_deg": 13.5}).counts
        job.append("reference", what="mark renewed", turn_deg=0.0)
        assert judged(job).counts  # what was seen of another mark holds no longer


@pytest.mark.parametrize("rule", ["mark-edge", "mark-polarity", "mark-width", "points", "unit", "planes"])
def test_no_reason_helps_where_vectors_do_not_belong_together(rule):
    assert not can_be_allowed(run_checks.found(rule, "so"))


@pytest.mark.parametrize(
    ("more", "rule", "said"),
    [
        ({"points": FIRST | {"C": (1.0, 0.0)}}, "more-points", "C: measured, but not in"),
        ({"speed_rpm": 1490.0}, "speed-caution", "0.7 % off the 1480 r/min"),
        ({"duration_s": None}, "length-unknown", "is not noted"),
        ({"minutes_since_start": 30.0}, "minutes", '30 min after the start, "initial" was 12 min after it'),
    ],
)
def test_a_caution_does_not_keep_a_run_from_counting(job, more, rule, said):
    found = judged(job, **more)
    assert found.counts
    assert rules(found.cautions) == [rule]
    assert said in found.cautions[0].sentence


@pytest.mark.parametrize(
    "more",
    [
        {"mark": MARK | {"width_deg": 12.1}}, {"mark": None}, {"speed_rpm": 1487.3}, {"unit": "in/s peak"},
        {"minutes_since_start": 14.0}, {"minutes_since_start": None},
    ],
)  # fmt: skip
def test_what_is_within_a_limit_passes(job, more):
    found = judged(job, **more)
    assert (found.refusals, found.cautions) == ((), ())


def test_what_is_recorded_says_every_sentence_and_counts_only_with_a_reason(job):
    fields = run(speed_rpm=1520.0, used_anyway="speed cannot be set")
    found = judge_run(job.state, fields)
    job.append("run", **recorded(fields, found))
    (last,) = [r for r in job.state.runs if r.what.name == "second"]
    assert last.counts
    assert last.what.trusted is False
    assert last.what.reasons == ['1520 r/min is 2.7 % off the 1480 r/min of "initial", limit 2 %']
    fields = run("third", mark=MARK | {"edge": "falling"}, used_anyway="I want it")
    job.append("run", **recorded(fields, judge_run(job.state, fields)))
    assert job.state.runs[-1].counts is False
    assert job.state.runs[-1].what.used_anyway is None
    job.append("run", **recorded(run("fourth"), judge_run(job.state, run("fourth"))))
    assert job.state.runs[-1].counts


def test_keys_that_no_run_has_are_refused(job):
    with pytest.raises(RecordError, match="run: speed_rpm: must be a number, not a text"):
        judge_run(job.state, run(speed_rpm="fast"))
    with pytest.raises(RecordError, match='run: unit: "furlong" needs a measure'):
        judge_run(job.state, run(unit="furlong"))
    with pytest.raises(RecordError, match="run: pulse: unknown key"):
        judge_run(job.state, run(pulse=1))


def test_a_second_speed_that_was_allowed_makes_its_own_group(job):
    take(job, "half load", speed_rpm=1200.0)
    assert judged(job, speed_rpm=1203.0).refusals == ()
    assert judged(job, speed_rpm=1485.0).refusals == ()
    assert rules(judged(job, speed_rpm=1300.0).refusals) == ["speed"]


def sweep(q, centre_rpm=1500.0, points=("A",)):
    """Amplitude and lag of one mode against speed, written out by itself: x = r²/√((1−r²)²+(r/q)²)."""
    rpm = np.arange(1000.0, 2000.0, 2.0)
    r = rpm / centre_rpm
    z = r**2 / (1 - r**2 - 1j * r / q)
    curve = {"rpm": rpm.tolist(), "amplitude": np.abs(z).tolist(), "phase_deg": np.rad2deg(np.angle(z)).tolist()}
    return {"points": [{"name": p, "curve": curve} for p in points]}


def test_near_a_resonance_the_sweep_asks_for_a_closer_speed(job):
    assert judged(job, speed_rpm=1486.0).refusals == ()
    job.append("measured", what="sweep", figures=sweep(20.0))
    found = judged(job, speed_rpm=1486.0)
    (refusal,) = found.refusals
    assert refusal.rule == "speed-sweep"
    # lag of one mode by hand: atan2(r/q, 1 − r²) at 1480 and at 1486 r/min
    lags = [math.degrees(math.atan2(r / 20.0, 1 - r**2)) for r in (1480.0 / 1500.0, 1486.0 / 1500.0)]
    assert f"and {lags[1] - lags[0]:.0f}°" in refusal.sentence
    job.append("measured", what="sweep", figures=sweep(2.0))
    assert judged(job, speed_rpm=1486.0).refusals == ()  # the newest sweep holds


@pytest.mark.parametrize(
    "figures",
    [{}, {"points": 3}, {"points": [1, {"curve": 2}, {"curve": {"rpm": [1.0], "amplitude": [], "phase_deg": []}}]}],
)
def test_a_sweep_without_a_curve_says_nothing(job, figures):
    job.append("measured", what="sweep", figures=figures)
    assert judged(job, speed_rpm=1486.0).refusals == ()


def test_chosen_conditions_must_be_alike(job):
    job.append("brief", conditions=[{"name": "motor current", "unit": "A", "tolerance": 2.0}, {"name": "damper"}])
    found = judged(job)
    assert found.counts
    assert rules(found.cautions) == ["condition-unknown", "condition-unknown"]
    take(job, "noted", conditions={"motor current": 40.0, "damper": "open"})
    assert judged(job, conditions={"motor current": 42.0, "damper": "open"}).refusals == ()
    found = judged(job, conditions={"motor current": 43.0, "damper": "half"})
    assert [f.sentence for f in found.refusals] == [
        'not comparable with "noted": motor current was 40 and 43, tolerance 2 A',
        'not comparable with "noted": damper was open and half',
    ]
    found = judged(job, conditions={"damper": "open"})
    assert "motor current is not noted, and was 40.0 A" in found.refusals[0].sentence
    assert judged(job, conditions={"damper": "open"}, used_anyway="meter broken").counts


@pytest.mark.parametrize(
    ("speed_rpm", "revolutions", "duration_s", "refused"),
    [(300.0, 60, 12.1, True), (300.0, 60, 15.1, False), (300.0, 59, 15.1, True), (599.0, 99, 15.0, False),
     (601.0, 99, 15.0, True), (60.0, 60, 62.0, False)],
)  # fmt: skip
def test_below_600_rpm_sixty_revolutions_do(tmp_path, speed_rpm, revolutions, duration_s, refused):
    with Job.create(tmp_path / "slow", "fan", "ann") as slow:
        found = judge_run(slow.state, run(speed_rpm=speed_rpm, revolutions=revolutions, duration_s=duration_s))
    assert (rules(found.refusals) == ["too-short"]) == refused


def test_1x_that_moves_between_runs_of_one_start_still_settles(job):
    moved = {"A": (8.5, 66.0), "B": FIRST["B"]}
    found = judged(job, moved, minutes_since_start=13.0)
    assert rules(found.refusals) == ["settling"]
    assert 'A: 1x moved by 0.0 % and 6.0° in the 1 min since "initial"' in found.refusals[0].sentence
    assert judged(job, moved, minutes_since_start=50.0).refusals == ()  # 0.8° in five minutes
    assert judged(job, moved, minutes_since_start=12.3).refusals == ()  # seconds tell nothing of five minutes
    job.append("start", temperature="cold")
    assert judged(job, moved, minutes_since_start=13.0).refusals == ()  # another start


def test_what_the_settling_measurement_said_holds_until_the_next_start(job):
    job.append("measured", what="settling", figures={"verdict": "moving", "reason": "1x moved by +4.0 ± 0.3 %"})
    assert judged(job).refusals[0].sentence == "1x moved by +4.0 ± 0.3 %"
    job.append("measured", what="settling", figures={"verdict": "settled"})
    assert judged(job).refusals == ()


def test_a_start_from_another_temperature_is_said(tmp_path):
    with Job.create(tmp_path / "warm", "fan", "ann") as warm:
        warm.append("start", temperature="cold")
        take(warm, "initial")
        warm.append("start", temperature="hot")
        (caution,) = judge_run(warm.state, run()).cautions
    assert caution.sentence == 'started hot, for "initial" started cold'


def test_abort_levels_are_held_against_1x_and_the_broadband_level_in_the_runs_unit(job):
    """20 mm/s rms is 20·√2 mm/s peak; displacement of 20 mm/s peak at 1480 r/min: 20/(2π·24.667) mm = 129 µm peak."""
    job.append("brief", abort=[{"point": "A", "amplitude": 9.0, "unit": "mm/s rms"}])
    (caution,) = judged(job).cautions  # broadband 9.35
    assert (caution.rule, caution.sentence) == ("abort", "A reached 9.35 mm/s rms, abort level 9 mm/s rms")
    job.append("brief", abort=[{"point": "A", "amplitude": 20.0 / math.sqrt(2.0), "unit": "mm/s rms"}])
    assert judged(job).cautions == ()
    microns = 20e3 / (2 * math.pi * 1480.0 / 60.0)
    for share, crossed in ((0.99, False), (1.01, True)):
        fields = run(points={"A": (share * microns, 0.0), "B": FIRST["B"]}, unit="um peak")
        assert ("abort" in rules(judge_run(job.state, fields).cautions)) == crossed


def test_the_run_says_the_masses_that_the_record_has_on_the_rotor(job):
    put = job.append("mass", act="put on", pieces=[LEFT | {"radius_mm": 150.0, "mass_g": 20.0}])
    assert judged(job, masses=[LEFT]).refusals == ()  # the same unbalance
    assert rules(judged(job).refusals) == ["masses"]
    job.append("mass", act="taken off", of=put.id)
    assert judged(job).refusals == ()


def test_a_signal_check_since_the_last_run_that_found_something_is_said(job):
    job.append("measured", what="signal check", trusted=False, reasons=["input 2: reaches full scale"])
    (caution,) = judged(job).cautions
    assert caution.sentence == "the last signal check found: input 2: reaches full scale"
    take(job, "second")
    assert judge_run(job.state, run("third")).cautions == ()


# mark and sensors


def test_a_pulse_sensor_that_moved_turns_all_points_alike(job):
    judged = judge_run(job.state, run(points=turned(-37.0)))
    assert judged.counts
    (found,) = judged.cautions
    assert found.rule == "turned"
    assert found.sentence.startswith("all points: turned by +37.0 ±")
    assert judge_run(job.state, run(points=turned(3.0))).cautions == ()  # 2° of repeatability


@pytest.mark.parametrize(("phase_deg", "said"), [(235.0, "-30.0"), (20.0, "-175.0")])
def test_one_sensor_remounted_is_named(job, phase_deg, said):
    (found,) = judge_run(job.state, run(points=FIRST | {"B": (6.5, phase_deg)})).cautions
    assert found.rule == "turned-point"
    assert found.sentence.startswith(f"B: turned by {said} ±")


def test_a_turn_is_looked_for_beyond_the_one_that_is_known(job):
    job.append("reference", what="mark moved", turn_deg=50.0)
    fields = run("later", turned(-50.0))
    job.append("run", **recorded(fields, judge_run(job.state, fields)))
    assert judge_run(job.state, run("again", turned(-50.0))).cautions == ()
    (found,) = judge_run(job.state, run("moved", turned(-90.0))).cautions
    assert found.sentence.startswith("all points: turned by +40.0 ±")


def test_nothing_is_said_of_the_mark_where_no_run_had_these_masses(job):
    assert "turned" not in rules(judge_run(job.state, run(points=turned(90.0), masses=[LEFT])).cautions)


@pytest.mark.parametrize("degrees", [0.0, 37.0, -120.0, 179.0])
def test_a_re_reference_run_gives_the_turn_and_the_job_goes_on(job, degrees):
    change = job.append("reference", what="pulse sensor moved")
    fields = run("again", turned(-degrees), purpose="re-reference")
    assert rules(judge_run(job.state, fields).cautions) == ["epoch"]
    turn = turn_from_reference_run(job.state, fields)
    assert turn.plausible
    assert turn.run == "initial"
    assert all(abs(cmath.phase(cmath.exp(1j * math.radians(t - degrees)))) < 1e-9 for t in turn.turn_deg.values())
    # two points of 2° and 2° each: √2·2°/√2 = 2°, of 95 % 3.9°, a little more for the scatter within
    assert turn.ci95["A"] == pytest.approx(1.96 * 2.0, rel=0.02)
    job.append("run", **recorded(fields, judge_run(job.state, fields)))
    assert [r.what.name for r in chosen(job.state)] == ["again"]
    job.append("reference", what="turn known", of=change.id, turn_deg=turn.turn_deg["A"])
    assert [r.what.name for r in chosen(job.state)] == ["initial", "again"]
    assert job.state.runs[-1].turn_deg["A"] == pytest.approx(degrees)
    assert judge_run(job.state, run("third", turned(-degrees))).cautions == ()


def test_a_rotor_that_changed_shows_no_plausible_turn(job):
    job.append("reference", what="mark renewed")
    turn = turn_from_reference_run(job.state, run(points=turned(-37.0, 1.3)))
    assert not turn.plausible
    assert "changed its amplitude beyond the scatter" in turn.sentence
    turn = turn_from_reference_run(job.state, run(points={"A": (8.5, 23.0), "B": (6.5, 205.0)}))
    assert not turn.plausible
    assert "the points do not agree (A +37.0°, B +0.0°)" in turn.sentence
    assert turn.turn_deg == {"A": pytest.approx(37.0), "B": pytest.approx(0.0)}


def test_a_change_of_one_sensor_turns_that_point_alone(job):
    job.append("reference", what="sensor remounted", points=["B"])
    turn = turn_from_reference_run(job.state, run(points=FIRST | {"B": (6.5, 235.0)}))
    assert turn.plausible
    assert turn.turn_deg == {"A": 0.0, "B": pytest.approx(-30.0)}
    turn = turn_from_reference_run(job.state, run(points=turned(30.0)))
    assert not turn.plausible  # the other point may not turn


def test_one_point_alone_has_nothing_to_check_it(tmp_path):
    with Job.create(tmp_path / "one", "fan", "ann") as one:
        take(one, "initial", {"A": (8.5, 60.0)})
        one.append("reference", what="mark renewed")
        turn = turn_from_reference_run(one.state, run(points={"A": (8.5, 50.0)}))
    assert turn.plausible
    assert turn.sentence.endswith("one point alone has nothing to check it by")


def test_a_re_reference_run_needs_a_mass_state_already_measured(job):
    job.append("reference", what="mark renewed")
    with pytest.raises(RecordError, match='with 10 g at 270° on "left": no earlier run .* measured were: no mass'):
        turn_from_reference_run(job.state, run(masses=[LEFT]))
    with pytest.raises(RecordError, match="has no point in common"):
        turn_from_reference_run(job.state, run(points={"C": (1.0, 2.0)}))


def test_a_mark_may_differ_once_the_change_is_recorded(job):
    job.append("reference", what="mark renewed")
    assert rules(judged(job, mark=MARK | {"width_deg": 30.0}).cautions) == ["epoch"]
    job.undo()
    job.append("reference", what="sensor remounted", points=["B"], turn_deg=0.0)
    assert rules(judged(job, mark=MARK | {"width_deg": 30.0}).refusals) == ["mark-width"]


# swap test


def exchanged(gain=1.0 + 0j):
    """What is read after the two sensors were exchanged, the first one reading `gain` times what the second one does."""
    a, b = (cmath.rect(v, math.radians(d)) for v, d in FIRST.values())
    first, second = b * gain, a / gain  # before: A = gain·a, B = b
    return {"A": (abs(first), math.degrees(cmath.phase(first))), "B": (abs(second), math.degrees(cmath.phase(second)))}


@pytest.mark.parametrize(
    ("gain", "verdict", "percent", "turned_deg"),
    [(1.0, "alike", 0.0, 0.0), (1.2, "differ", 20.0, 0.0), (cmath.rect(1.0, math.radians(30.0)), "differ", 0.0, 30.0),
     (-1.0, "differ", 0.0, 180.0)],
)  # fmt: skip
def test_a_swap_test_compares_the_two_sensors(job, gain, verdict, percent, turned_deg):
    found = swap_test(job.state, run(points=exchanged(gain)), "A", "B")
    assert found.verdict == verdict
    assert found.percent == pytest.approx(percent, abs=1e-6)
    assert abs(found.turned_deg) == pytest.approx(turned_deg, abs=1e-6)
    assert found.percent_ci95 == pytest.approx(1.96 * 2.0, rel=0.02)


def test_a_swap_test_of_a_machine_that_changed_tells_nothing(job):
    found = swap_test(job.state, run(points={"A": (6.5, 205.0), "B": (8.5, 120.0)}), "A", "B")
    assert found.verdict == "cannot be told"
    assert found.sentence.endswith("not alike at the two places: the machine changed")
    found = swap_test(job.state, run(), "A", "B")
    assert found.verdict == "cannot be told"
    assert found.sentence == "A and B read what they read before: the sensors were not exchanged"
    with pytest.raises(RecordError, match="swap test: C was not measured with the same masses before"):
        swap_test(job.state, run(), "A", "C")


# a rotor that was cleaned


def test_cleaned_since_a_run_makes_a_new_initial_state(job):
    first = job.state.runs[0]
    assert new_initial_state(job.state) is None
    assert counting_runs(job.state).now == (first,)
    later = take(job, "after cleaning", turned(10.0, 0.5))
    said = job.append("decision", **new_initial_state_fields(first.id, "blades scraped"))
    assert said.what.text == NEW_INITIAL_STATE
    assert new_initial_state(job.state).id == said.id
    found = counting_runs(job.state)
    assert [r.id for r in found.now] == [later.id]
    assert found.influence_only == (first,)
    job.undo()
    assert counting_runs(job.state).influence_only == ()
