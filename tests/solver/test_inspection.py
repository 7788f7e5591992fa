"""Checks chosen for a machine, and the judgements that they need."""

import numpy as np
import pytest
import tomli_w
from stillshaft.dsp import tables, vectors
from stillshaft.solver import brief, diagnosis_rules, inspection
from stillshaft.solver.diagnosis import Word


def keys(**facts):
    return {c.key for c in inspection.checks({k: Word(w) for k, w in facts.items()})}


def test_what_is_not_known_leaves_no_check_out():
    assert {"belts", "alignment", "electrical", "draught", "setpoint", "hollow"} <= keys()


@pytest.mark.parametrize(
    ("facts", "there", "gone"),
    [
        ({"drive": "belt"}, {"belts", "background"}, {"alignment"}),
        ({"drive": "direct"}, {"alignment"}, {"belts"}),
        ({"motor": "none"}, {"steady"}, {"electrical"}),
        ({"machine": "other"}, {"resonance"}, {"draught"}),
        ({"machine": "fan", "supply": "fixed speed"}, {"draught"}, {"setpoint"}),
        ({"process": "nothing"}, {"rotor"}, {"hollow"}),
    ],
)
def test_checks_follow_the_machine(facts, there, gone):
    chosen = keys(**facts)
    assert there <= chosen
    assert not gone & chosen


def test_every_quantity_of_the_diagnosis_has_its_check():
    rules = diagnosis_rules.load_rules()
    by_key = {c.key: c for c in inspection.checks({})}
    assert rules.checks <= set(by_key)
    for key, quantity in rules.quantities.items():
        assert key in by_key[quantity.check].feeds


def test_hands_near_the_rotor_get_their_cautions():
    for check in inspection.checks({}):
        assert check.how
        assert check.fine
        assert check.source == "common practice, no source"
        if any(word in check.how for word in ("turned by hand", "dial gauge", "torque wrench", "touch")):
            assert any("blocked" in c for c in check.cautions), check.key


def test_the_brief_says_what_the_checks_know():
    given = brief.brief_from(
        {
            "rotor": {"kind": "overhung"},
            "drive": {"kind": "belt", "variable_speed": True},
            "machine": {"type": "Exhaust fan"},
            "interview": {"process": "build-up", "began": "some time in May", "why": "it shakes"},
        }
    )
    facts = inspection.facts_from(given)
    assert {k: f.word for k, f in facts.items()} == {
        "rotor": "overhung", "drive": "belt", "supply": "variable-speed drive", "machine": "fan", "process": "build-up",
    }  # fmt: skip
    assert set(inspection.for_diagnosis(facts)) == {"rotor", "drive", "process"}
    assert inspection.facts_from(brief.brief_from({})) == {}
    assert "belts" in {c.key for c in inspection.checks(facts)}


def test_unknown_facts_are_refused():
    with pytest.raises(
        inspection.InspectionError, match='supply: "steam": must be variable-speed drive or fixed speed'
    ):
        inspection.checks({"supply": Word("steam")})


CHECK = {"key": "x", "title": "x", "how": "x", "fine": "x", "feeds": []}


@pytest.mark.parametrize(
    ("check", "match"),
    [
        ([{**CHECK, "feeds": ["colour"]}], 'check "x": feeds "colour", which the diagnosis does not know'),
        ([{**CHECK, "applies": {"drive": ["sail"]}}], "drive = sail: no fact or answer has such words"),
        ([{**CHECK, "cautions": ["legs"]}], 'caution "legs" has no text'),
        ([CHECK, CHECK], 'check "x": its key is used twice'),
        ([{**CHECK, "colour": "red"}], "colour: unknown key"),
    ],
)
def test_a_table_that_cannot_be_is_refused(tmp_path, check, match):
    path = tmp_path / "checks.toml"
    path.write_text(tomli_w.dumps({"format": 1, "source": "own", "cautions": {}, "check": check}))
    with pytest.raises(inspection.InspectionError, match=match) as caught:
        inspection.checks({}, path)
    assert str(path) in str(caught.value)


def test_a_missing_table_is_refused(tmp_path):
    with pytest.raises(inspection.InspectionError, match="there is no such file"):
        inspection.checks({}, tmp_path / "none.toml")


@pytest.mark.parametrize(
    ("facts", "near_resonance", "wanted", "why"),
    [
        ({}, False, 2.0, "neither belt nor heat nor a resonance nearby is known"),
        ({"drive": "direct", "process": "wear", "load_test": "hardly changes"}, False, 2.0, "neither belt nor heat"),
        ({"drive": "belt"}, False, 5.0, "belt drive"),
        ({"process": "heat"}, False, 5.0, "heat from the process"),
        ({"drive": "belt", "load_test": "follows"}, False, 5.0, "belt drive, vibration that follows the load"),
        ({"drive": "belt"}, True, 10.0, "a resonance near running speed"),
    ],
)
def test_repeatability_assumed(facts, near_resonance, wanted, why):
    """2, 5 and 10 %: site rules of the project."""
    words = {k: Word(w) for k, w in facts.items()}
    found = inspection.assumed_repeatability(words, near_resonance=near_resonance)
    assert (found.percent, found.degrees) == (wanted, wanted)
    assert found.why.startswith(why)


NAMES = ("near", "far")
FIRST = np.array([vectors.vector(8.0, 40.0), vectors.vector(5.0, 300.0)])


def test_runs_that_agree_repeat():
    within = np.eye(4) * 0.02**2
    same = FIRST * np.array([1.01 * np.exp(1j * np.deg2rad(1.0)), 1.0])
    near, far = inspection.repeated(NAMES, FIRST, within, same, within)
    assert (near.verdict, far.verdict) == ("repeats", "repeats")
    assert near.percent == pytest.approx(1.0)
    assert near.turned_deg == pytest.approx(1.0)
    # √2 · 1.96 · 0.02 of 8
    assert near.percent_ci95 == pytest.approx(100 * np.sqrt(2.0) * 1.96 * 0.02 / 8.0)
    assert far.p_value == pytest.approx(1.0)
    assert far.repeatability == (0.5, 0.5)


def test_a_turned_vector_does_not_repeat():
    within = np.eye(4) * 0.02**2
    turned = FIRST * np.array([np.exp(1j * np.deg2rad(25.0)), 1.0])
    near, far = inspection.repeated(NAMES, FIRST, within, turned, within)
    assert (near.verdict, far.verdict) == ("does not repeat", "repeats")
    assert near.repeatability[1] == pytest.approx(25.0 / np.sqrt(2.0))


def test_differences_by_chance_are_called_so_as_often_as_they_should():
    """Both runs scatter by 2 % and 2°: 5 % of 2000 pairs below p = 0.05, give or take three deviations of a binomial."""
    rng = np.random.default_rng(2)
    within, names = np.eye(2) * 0.05**2, ("near",)
    first = FIRST[:1]
    low = 0
    for _ in range(2000):
        runs = []
        for _ in range(2):
            scatter = 1.0 + 0.02 * rng.standard_normal() + 1j * np.deg2rad(2.0) * rng.standard_normal()
            runs.append(first * scatter + 0.05 * (rng.standard_normal() + 1j * rng.standard_normal()))
        low += inspection.repeated(names, runs[0], within, runs[1], within)[0].p_value < 0.05
    assert abs(low / 2000 - 0.05) < 3 * np.sqrt(0.05 * 0.95 / 2000)


def test_runs_that_cannot_be_compared_are_refused():
    within = np.eye(4)
    with pytest.raises(inspection.InspectionError, match="2 points, but vectors and covariances"):
        inspection.repeated(NAMES, FIRST, within, FIRST[:1], within)
    with pytest.raises(inspection.InspectionError, match="near: the first run shows no 1x"):
        inspection.repeated(NAMES, 0.0 * FIRST, within, FIRST, within)


TIMES = np.arange(0.0, 900.0, 5.0)


def settled(z, times=TIMES):
    return inspection.settling(times, z)


def noisy(z, size, seed=0):
    rng = np.random.default_rng(seed)
    return z + size * (rng.standard_normal(z.size) + 1j * rng.standard_normal(z.size))


def test_a_vector_that_stays_has_settled():
    found = settled(noisy(np.full(TIMES.size, FIRST[0]), 0.05))
    assert found.verdict == "settled"
    assert abs(found.percent) <= 3 * found.percent_ci95
    assert found.percent_ci95 < 1.0


def test_a_bow_that_grows_has_not():
    """1 − e^{−t/τ} with τ = 10 min: between minutes 10 and 15 it grows by e^{−1} − e^{−1.5} of its final size."""
    z = FIRST[0] * (1.0 + 0.8j * (1.0 - np.exp(-TIMES / 600.0)))
    found = settled(noisy(z, 0.05))
    assert found.verdict == "moving"
    turned = np.rad2deg(np.angle(z[-1] / z[TIMES <= 595.0][-1]))
    assert found.turned_deg == pytest.approx(turned, abs=3 * found.turned_ci95_deg)
    assert "let it run on" in found.reason


def test_movements_lie_in_their_intervals():
    """A line of 1 % and 3° in five minutes, 300 draws: 95 % inside, give or take three deviations of a binomial."""
    clock = TIMES / 300.0
    inside = []
    for seed in range(300):
        found = settled(noisy(FIRST[0] * (1.0 + 0.01 * clock) * np.exp(1j * np.deg2rad(0.5 * clock)), 0.1, seed))
        inside += [abs(found.turned_deg - 0.5) <= found.turned_ci95_deg]
    assert np.mean(inside) >= 0.95 - 3 * np.sqrt(0.95 * 0.05 / 300)


def test_what_cannot_be_told_is_said():
    assert "need 300 s" in settled(np.full(20, FIRST[0]), TIMES[:20]).reason
    assert settled(noisy(np.full(TIMES.size, 0.001 + 0j), 1.0)).verdict == "cannot be told"
    noise = settled(noisy(np.full(TIMES.size, FIRST[0]), 1.5))
    assert noise.verdict == "cannot be told"
    assert "too close to tell" in noise.reason
    with pytest.raises(inspection.InspectionError, match="3 times for 2 vectors"):
        settled(FIRST, np.array([0.0, 1.0, 2.0]))
    with pytest.raises(inspection.InspectionError, match="times rising"):
        settled(FIRST, np.array([1.0, 0.0]))


@pytest.mark.parametrize(("second", "verdict"), [(1484.0, "accepted"), (1495.0, "caution"), (1520.0, "not comparable")])
def test_speeds_are_compared(second, verdict):
    """0.5 % and 2 % of 1480 r/min are 7.4 and 29.6: site rules of the project."""
    found = inspection.likeness(1480.0, second)
    assert found.verdict == verdict
    assert bool(found.reasons) == (verdict != "accepted")


def test_conditions_that_matter_must_be_alike():
    first, second = {"damper": "open", "bearing temperature": 60.0}, {"damper": "shut", "bearing temperature": 63.0}
    assert inspection.likeness(1480.0, 1480.0, first, second).verdict == "accepted"
    warm = inspection.likeness(1480.0, 1480.0, first, second, {"bearing temperature": 5.0})
    assert warm.verdict == "accepted"
    shut = inspection.likeness(1480.0, 1480.0, first, second, {"damper": None, "bearing temperature": 2.0})
    assert shut.reasons == ("damper was open and shut", "bearing temperature was 60 and 63, tolerance 2")
    unknown = inspection.likeness(1480.0, 1480.0, first, {}, {"damper": None})
    assert unknown.reasons == ("damper was not noted in both runs",)
    assert unknown.verdict == "not comparable"


def test_speeds_that_cannot_be_are_refused():
    with pytest.raises(inspection.InspectionError, match="must be above 0"):
        inspection.likeness(0.0, 1480.0)


def test_the_table_is_toml_that_people_can_edit():
    assert tables.read(inspection.CHECKS)["format"] == 1
