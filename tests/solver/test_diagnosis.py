"""Causes weighed by the table of rules: its arithmetic, its refusals, and the site's rules in it."""

import math

import numpy as np
import pytest
import tomli_w
from hypothesis import given
from hypothesis import strategies as st
from stillshaft.solver import diagnosis, diagnosis_rules
from stillshaft.solver.diagnosis import Figure, Word

RULES = diagnosis_rules.load_rules()
STRONG, WEAK = math.log(10.0), math.log(3.0)


def sure(value):
    return Figure(value, value, value)


def causes(**evidence):
    found = diagnosis.diagnose({k: Word(v) if isinstance(v, str) else v for k, v in evidence.items()})
    return {c.key: c for c in found.causes}


def points(cause, **evidence):
    """What the evidence adds to a cause's score."""
    return causes(**evidence)[cause].score - causes()[cause].score


# arithmetic


def test_a_sure_figure_adds_the_logarithm_of_its_factor():
    assert points("unbalance", share_1x=sure(90.0)) == pytest.approx(STRONG)
    assert points("resonance", share_1x=sure(90.0)) == pytest.approx(WEAK)
    assert points("flow", share_1x=sure(90.0)) == pytest.approx(-STRONG)
    assert points("unbalance", share_1x=sure(45.0)) == 0.0
    assert points("unbalance", share_1x=sure(10.0)) == pytest.approx(-STRONG)


def test_figures_add_up():
    both = {"share_1x": sure(90.0), "ratio_2x": sure(0.05)}
    assert points("unbalance", **both) == pytest.approx(STRONG + WEAK)


def test_an_uncertain_figure_counts_by_its_probability():
    """The row begins at 60: a figure of 60 ± 10 lies in it half the time; 70 ± 10 is 1.96 deviations above it."""
    assert points("unbalance", share_1x=Figure(60.0, 50.0, 70.0)) == pytest.approx(0.5 * STRONG, rel=1e-6)
    assert points("unbalance", share_1x=Figure(70.0, 60.0, 80.0)) == pytest.approx(0.975 * STRONG, rel=1e-4)


def test_probabilities_are_those_of_draws():
    """Against draws from the normal distribution with that interval."""
    rng = np.random.default_rng(1)
    draws = 20.0 + 3.0 / 1.96 * rng.standard_normal(200_000)
    figure = Figure(20.0, 17.0, 23.0)
    for low, high in ((18.0, 21.0), (-math.inf, 19.0), (22.5, math.inf)):
        assert figure.inside(low, high) == pytest.approx(np.mean((draws >= low) & (draws < high)), abs=0.005)


def test_what_was_not_measured_counts_nothing():
    before = causes(share_1x=sure(90.0))
    assert all(not c.against and not c.speaking_for for c in causes().values())
    assert {c.verdict for c in causes().values()} == {"not told"}
    assert "ratio_2x" in diagnosis.diagnose({"share_1x": sure(90.0)}).not_measured
    assert all("2x" not in r.text for c in before.values() for r in (*c.speaking_for, *c.against))


def test_more_witnesses_never_turn_their_own_word_round():
    """A row for a cause never lowers it, one against never raises it: over every row of the table."""
    for key, rows in RULES.rows.items():
        for row in rows:
            if row.given or row.unless:
                continue
            middle = row.low + 0.01 if math.isinf(row.high) else row.high - 0.01
            item = Word(row.words[0]) if row.words else sure(middle)
            for cause, size in row.points.items():
                if any(c.key == cause and c.part_of is None for c in RULES.causes):
                    assert points(cause, **{key: item}) == pytest.approx(size), (key, cause)


def test_the_reading_says_figure_reason_source_and_place():
    cause = causes(share_1x=Figure(91.6, 90.0, 93.0, "fan end"))["unbalance"]
    (reading,) = cause.speaking_for
    assert reading.text == "fan end: 1x holds 92 % of the mean square"
    assert reading.why
    assert reading.source == "common practice, no source"
    assert reading.points == pytest.approx(STRONG)


def test_every_sentence_reads():
    for key, quantity in RULES.quantities.items():
        for item in [Word(w) for w in quantity.words] or [sure(1.25)]:
            found = diagnosis.diagnose({key: item})
            for cause in found.causes:
                for reading in (*cause.speaking_for, *cause.against):
                    assert "{" not in reading.text
                    assert reading.quantity == key


# the site's rules, practice of the project


def test_directions_of_a_turning_force_support_unbalance():
    found = causes(hv_ratio=sure(2.0), hv_off_quadrature=sure(5.0), share_1x=sure(90.0))
    assert found["unbalance"].score == max(c.score for c in found.values())
    assert found["unbalance"].verdict == "likely"


def test_horizontal_far_above_vertical_speaks_for_resonance_looseness_and_soft_support():
    for cause in ("resonance", "looseness", "soft foot"):
        assert points(cause, hv_ratio=sure(6.0)) > 0.0
    assert points("unbalance", hv_ratio=sure(6.0)) < 0.0
    assert points("resonance", hv_ratio=sure(2.0)) <= 0.0


def test_vertical_larger_speaks_for_looseness_soft_foot_and_resonance():
    for cause in ("resonance", "looseness", "soft foot"):
        assert points(cause, hv_ratio=sure(0.5)) > 0.0


def test_motion_along_a_line_points_to_resonance_misalignment_eccentricity_first():
    found = causes(hv_off_quadrature=sure(85.0), drive="belt")
    assert points("unbalance", hv_off_quadrature=sure(85.0)) == pytest.approx(-STRONG)
    for cause in ("resonance", "misalignment", "eccentric pulley"):
        assert any(r.quantity == "hv_off_quadrature" for r in found[cause].speaking_for)


def kinds(**evidence):
    return [k.key for k in causes(**evidence)["unbalance"].kinds]


def test_bearings_against_each_other_suggest_a_couple_between_bearings_only():
    apart = sure(175.0)
    assert kinds(cross_phase=apart, rotor="between bearings")[0] == "couple"
    assert kinds(cross_phase=sure(10.0), rotor="between bearings")[0] == "static"
    assert kinds(cross_phase=sure(90.0), rotor="between bearings")[0] == "dynamic"
    overhung = causes(cross_phase=apart, rotor="overhung")["unbalance"].kinds
    assert [k.key for k in overhung] == ["overhung"]
    near = causes(cross_phase=apart, rotor="between bearings", running="near or above a resonance")["unbalance"].kinds
    assert all(not k.speaking_for and not k.against for k in near)
    unknown = causes(cross_phase=apart)["unbalance"].kinds
    assert all(not k.speaking_for for k in unknown)


def test_an_overhung_rotor_that_shakes_axially_has_three_suspects():
    found = causes(axial_ratio=sure(1.1), rotor="overhung")
    for cause in ("bent shaft", "misalignment"):
        assert found[cause].speaking_for
    assert found["unbalance"].kinds[0].speaking_for


@pytest.mark.parametrize("cause", ["loose part", "liquid", "build-up", "rub", "thermal bow", "bad pulse"])
def test_a_wandering_phase_may_have_any_of_these(cause):
    assert points(cause, steadiness="wandering") > 0.0
    assert points("unbalance", steadiness="wandering") < 0.0


def test_the_pulse_is_ruled_out_first():
    found = diagnosis.diagnose({"steadiness": Word("wandering"), "share_1x": sure(90.0)})
    assert [c.check for c in found.next_checks[:2]] == ["pulse", "pulse"]
    assert any("rule the pulse out first" in w for w in found.warnings)
    seen = {"steadiness": Word("wandering"), "pulse_faults": sure(0.0), "pulse_scatter": sure(0.05)}
    assert not any("rule the pulse out" in w for w in diagnosis.diagnose(seen).warnings)


def test_a_likely_bad_pulse_and_a_likely_resonance_come_before_all():
    good = {"share_1x": sure(90.0), "ratio_2x": sure(0.05), "hv_off_quadrature": sure(5.0)}
    bad = diagnosis.diagnose(good | {"pulse_faults": sure(8.0), "pulse_scatter": sure(5.0)})
    assert bad.causes[0].key == "bad pulse"
    assert bad.causes[0].verdict == "likely"
    assert bad.causes[1].key == "unbalance"
    near = diagnosis.diagnose(good | {"resonance_margin": sure(4.0)})
    assert near.causes[0].key == "resonance"
    assert diagnosis.diagnose(good | {"resonance_margin": sure(60.0)}).causes[0].key == "unbalance"


def test_a_resonance_comes_before_what_it_magnifies_and_not_before_misalignment():
    found = diagnosis.diagnose(
        {"hv_off_quadrature": sure(85.0), "hv_ratio": sure(5.0), "alignment": Word("outside its limits"),
         "ratio_2x": sure(0.8), "axial_ratio": sure(0.7), "rotor": Word("between bearings")}
    )  # fmt: skip
    scores = {c.key: c.score for c in found.causes}
    assert scores["resonance"] >= math.log(10.0)
    assert [c.key for c in found.causes[:2]] == ["misalignment", "resonance"]


def test_what_the_machine_cannot_have_is_left_out_only_where_that_is_known():
    assert "belt" in causes()
    assert "belt" in causes(drive="belt")
    assert "belt" not in causes(drive="direct")
    assert "electrical" not in causes(motor="none")


# what to check next


def test_the_next_check_is_what_parts_the_leading_causes():
    """Directions are known and plain; of share and phase alone, unbalance and bent shaft differ along the shaft."""
    evidence = {
        "share_1x": sure(95.0), "ratio_2x": sure(0.05), "hv_ratio": sure(2.0), "hv_off_quadrature": sure(3.0),
        "rotor": Word("between bearings"), "drive": Word("direct"), "motor": Word("none"),
        "rotor_state": Word("clean and whole"), "inside": Word("looked for and not found"), "hub": Word("is tight"),
        "warm_change": sure(1.0), "axial_ratio": sure(0.6),
    }  # fmt: skip
    found = diagnosis.diagnose(evidence)
    assert {c.key for c in found.causes[:2]} == {"unbalance", "bent shaft"}
    assert {found.next_checks[0].quantity} <= {"runout", "axial_phase"}
    assert set(found.next_checks[0].parts) == {"unbalance", "bent shaft"}
    gains = [c.gain for c in found.next_checks]
    assert gains == sorted(gains, reverse=True)
    assert not set(evidence) & {c.quantity for c in found.next_checks}


def test_a_check_that_parts_nothing_is_not_proposed():
    found = diagnosis.diagnose({"drive": Word("direct"), "share_1x": sure(95.0)})
    assert not {"belts", "belt_ratio", "pulley_runout"} & {c.quantity for c in found.next_checks}


def test_causes_too_close_are_said():
    even = diagnosis.diagnose({"share_1x": sure(40.0), "fraction_ratio": sure(0.3), "multiples": sure(2.0)})
    assert any("cannot be told apart" in w for w in even.warnings) == (
        abs(even.causes[0].score - even.causes[1].score) < math.log(3.0)
    )
    clear = diagnosis.diagnose({"pulse_faults": sure(9.0), "pulse_scatter": sure(6.0), "hub": Word("is tight")})
    assert not any("told apart" in w for w in clear.warnings)
    assert "nothing was measured" in diagnosis.diagnose({}).warnings[0]


# the door


@pytest.mark.parametrize(
    ("evidence", "match"),
    [
        ({"colour": sure(1.0)}, '"colour": is no quantity of the rules; known are'),
        ({"began": Word("yesterday")}, 'began: "yesterday": must be slowly or suddenly'),
        ({"began": sure(1.0)}, "began: is a figure, but must be slowly"),
        ({"share_1x": Word("much")}, 'share_1x: "much": must be a figure'),
        ({"share_1x": Figure(math.nan, 0.0, 1.0)}, "share_1x: nan between 0 and 1: must be a finite figure"),
        ({"share_1x": Figure(5.0, 6.0, 7.0)}, "5 between 6 and 7: must be"),
    ],
)
def test_evidence_that_cannot_be_is_refused(evidence, match):
    with pytest.raises(diagnosis_rules.DiagnosisError, match=match):
        diagnosis.diagnose(evidence)


def test_answers_leave_out_what_is_not_known():
    found = diagnosis.answers({"began": "slowly", "play": None, "hub": ""})
    assert dict(found) == {"began": Word("slowly")}
    with pytest.raises(diagnosis_rules.DiagnosisError, match='hub: "hot": must be'):
        diagnosis.answers({"hub": "hot"})


def test_evidence_is_put_together_read_only():
    whole = diagnosis.merged({"share_1x": sure(1.0)}, {"share_1x": sure(2.0), "multiples": sure(0.0)})
    assert whole["share_1x"] == sure(2.0)
    with pytest.raises(TypeError):
        whole["x"] = sure(1.0)


TABLE = {
    "format": 1,
    "source": "own",
    "strong": 10.0,
    "weak": 3.0,
    "cause": [{"key": "a", "name": "a", "odds": 1.0, "advice": "x"}],
    "quantity": [
        {"key": "q", "reads": "{value}", "how": "x", "check": "x",
         "row": [{"at_least": 1.0, "strongly_for": ["a"], "why": "x"}]}
    ],
}  # fmt: skip


def table(**changed):
    return {**TABLE, **changed}


def row(**changed):
    return table(quantity=[{**TABLE["quantity"][0], "row": [{"why": "x", **changed}]}])


@pytest.mark.parametrize(
    ("content", "match"),
    [
        (table(weak=0.5), "weak 0.5, strong 10: must be above 1"),
        (table(cause=TABLE["cause"] * 2), "a key is used twice"),
        (table(cause=[{**TABLE["cause"][0], "odds": 0.0}]), 'cause "a": odds 0 must be above 0'),
        (
            table(cause=[{**TABLE["cause"][0], "part_of": "b"}, {**TABLE["cause"][0], "key": "c"}]),
            'part_of "b" is no cause that stands for itself',
        ),
        (
            table(cause=[{**TABLE["cause"][0], "needs": {"drive": ["x"]}}, {**TABLE["cause"][0], "key": "b"}]),
            "drive = x: no fact or quantity",
        ),
        (row(at_least=1.0, strongly_for=["b"]), 'quantity "q", row 1: "b" is no cause'),
        (row(words=["x"], strongly_for=["a"]), '"x" is none of the words'),
        (row(at_least=2.0, below=1.0), "give words where the quantity has words, else a range"),
        (
            table(
                quantity=[{**TABLE["quantity"][0], "row": [{"why": "x", "below": 2.0}, {"why": "x", "at_least": 1.0}]}]
            ),
            "two rows overlap",
        ),
        (table(colour="red"), "colour: unknown key"),
        (table(cause=[{**TABLE["cause"][0], "needs": {"q": []}}]), "there is none that every machine may have"),
        (table(cause=[{**TABLE["cause"][0], "before": ["b"]}]), 'before "b", which is no cause'),
        (row(at_least=1.0, strongly_for=["a"], weakly_against=["a"]), "names a cause twice"),
        *(
            (table(quantity=[{**TABLE["quantity"][0], "reads": reads}]), "only {value:.1f} may stand in braces")
            for reads in ("{colour}", "{value:>999999999}", "{value.real}", "{value", "{}")
        ),
    ],
)
def test_a_table_of_rules_that_cannot_be_is_refused(tmp_path, content, match):
    path = tmp_path / "rules.toml"
    path.write_text(tomli_w.dumps(content))
    with pytest.raises(diagnosis_rules.DiagnosisError, match=match) as caught:
        diagnosis_rules.load_rules(path)
    assert str(path) in str(caught.value)


def test_an_own_table_counts(tmp_path):
    path = tmp_path / "rules.toml"
    path.write_text(tomli_w.dumps(TABLE))
    found = diagnosis.diagnose({"q": sure(2.0)}, diagnosis_rules.load_rules(path))
    assert found.causes[0].score == pytest.approx(STRONG)
    assert found.causes[0].speaking_for[0].source == "own"
    with pytest.raises(diagnosis_rules.DiagnosisError, match="there is no such file"):
        diagnosis_rules.load_rules(tmp_path / "none.toml")


@st.composite
def any_evidence(draw):
    found = {}
    for key, words in RULES.words.items():
        if not draw(st.booleans()):
            continue
        if words:
            found[key] = Word(draw(st.sampled_from(words)))
        else:
            value, half = draw(st.floats(0.0, 200.0)), draw(st.floats(0.0, 50.0))
            found[key] = Figure(value, value - half, value + half)
    return found


@given(any_evidence())
def test_any_evidence_gives_an_order_that_its_readings_explain(evidence):
    found = diagnosis.diagnose(evidence)
    odds = {c.key: c.odds for c in RULES.causes}
    for cause in found.causes:
        readings = (*cause.speaking_for, *cause.against)
        assert cause.score == pytest.approx(math.log(odds[cause.key]) + sum(r.points for r in readings))
        assert (cause.verdict == "not told") == (not readings)
        assert all(abs(r.points) <= STRONG + 1e-9 for r in readings)
    scores = [c.score for c in found.causes if c.key not in RULES.before]
    assert scores == sorted(scores, reverse=True)
    assert not set(evidence) & {c.quantity for c in found.next_checks}
