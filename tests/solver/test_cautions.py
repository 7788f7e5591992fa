"""Cautions before hands go in and before each start: what fits the record is said, with its figures."""

import re
from dataclasses import replace
from pathlib import Path

import pytest
from stillshaft.solver import cautions
from stillshaft.solver.brief import Brief, Plane, Rotor
from stillshaft.solver.cautions import CautionError, before_hands, before_start, fixing_of, for_piece, forces
from stillshaft.solver.events import Piece
from stillshaft.solver.job import Job

PLANES = [{"name": "left", "radius": "300 mm"}, {"name": "right"}]


@pytest.fixture
def job(tmp_path):
    """A job that was just begun."""
    with Job.create(tmp_path / "job", "fan", "ann") as opened:
        yield opened


def run(job, name="initial"):
    job.append(
        "run", purpose="initial", name=name, speed_rpm=1480.0, unit="mm/s rms",
        vectors=[{"point": "A", "amplitude": 8.0, "phase_deg": 40.0}],
    )  # fmt: skip


def ids(found):
    return [c.id for c in found]


def text(found, id):
    return next(c.text for c in found if c.id == id)


def test_hands_go_in_only_after_isolating_blocking_and_permits(job):
    """The sequence isolate, lock, try is that of ISO 14118 and local lock-out rules, from memory."""
    found = before_hands(job.state)
    assert ids(found) == [
        "local-rules", "isolated", "blocked", "dampers", "neighbours", "permits", "counted-in",
    ]  # fmt: skip
    assert all(c.source == "common practice, no source" for c in found)
    assert {c.id for c in found if not c.acknowledge} == {"local-rules", "counted-in"}
    assert "draught, backflow and off-centre mass" in text(found, "blocked")
    assert "competent person" in text(found, "local-rules")


def test_a_start_without_anything_known_says_what_is_not_known(job):
    found = before_start(job.state)
    assert ids(found) == [
        "local-rules-start", "counted-out", "own-lock", "emergency-stop", "plane-of-rotation", "speed-limit-unknown",
        "abort-unknown",
    ]  # fmt: skip
    assert text(found, "abort-unknown").startswith("No abort level is agreed for any point")


def test_every_mass_pulls_with_its_force_at_speed(job):
    """10 g at 300 mm and 3000 r/min: m·r·Ω² = 0.01·0.3·(100π)² = 296.09 N, 30.19 kgf of 9.80665 N."""
    job.append("brief", rotor={"speed_rpm": 3000.0, "highest_speed_rpm": 3600.0}, planes=PLANES)
    pieces = [
        {"plane": "left", "mass_g": 10.0, "angle_deg": 270.0, "fixing": "bolted"},
        {"plane": "left", "mass_g": 5.0, "angle_deg": 90.0, "radius_mm": 200.0, "fixing": "bolted"},
        {"plane": "right", "mass_g": 7.0, "angle_deg": -30.0},
        {"plane": "right", "mass_g": -3.0, "angle_deg": 10.0},
    ]
    job.append("mass", act="put on", pieces=pieces)
    pulls = forces(job.state)
    assert [f.newton for f in pulls] == [pytest.approx(296.088, abs=0.01), pytest.approx(98.696, abs=0.01), None]
    assert pulls[0].kgf == pytest.approx(30.193, abs=0.001)
    assert pulls[2].kgf is None
    found = before_start(job.state)
    said = text(found, "forces")
    assert '10 g on "left" at 270°: 296 N (30.2 kgf)' in said
    assert '5 g on "left" at 90°: 98.7 N (10.1 kgf)' in said
    assert said.endswith('Largest: 296 N (30.2 kgf) (10 g on "left" at 270°).')
    assert '7 g on "right" at 330°' in text(found, "forces-unknown")
    assert '3 g removed "right" at 10°' in text(found, "removed-metal-start")
    assert [c.id for c in found if c.id in ("bolted", "removed", "fixing-unknown")] == [
        "bolted", "bolted", "fixing-unknown", "removed",
    ]  # fmt: skip


def test_a_radius_that_is_no_length_leaves_the_force_unknown(job):
    """A record that was written by hand may hold it; the cautions come all the same."""
    job.append("mass", act="put on", pieces=[{"plane": "left", "mass_g": 10.0, "angle_deg": 0.0}])
    brief = Brief(rotor=Rotor(speed_rpm=1480.0), planes=[Plane("left", radius="a foot or so")])
    found = before_start(replace(job.state, brief=brief))
    assert "forces-unknown" in ids(found)
    assert "forces" not in ids(found)


def test_the_first_start_after_any_mass_is_slow(job):
    piece = {"plane": "left", "mass_g": 1.0, "angle_deg": 0.0}
    assert "first-start" not in ids(before_start(job.state))
    put = job.append("mass", act="put on", pieces=[piece])
    assert "low speed or a bump first, listen" in text(before_start(job.state), "first-start")
    job.append("start")
    assert "first-start" not in ids(before_start(job.state))
    job.append("mass", act="taken off", of=put.id)
    assert "first-start" in ids(before_start(job.state))


@pytest.mark.parametrize(
    ("rotor", "id", "said"),
    [
        ({"speed_rpm": 1500.0, "highest_speed_rpm": 1800.0}, "speed-limit", "1800 r/min; it is to run at 1500 r/min"),
        ({"highest_speed_rpm": 1800.0}, "speed-limit", "a speed that the brief does not say"),
        ({"speed_rpm": 1900.0, "highest_speed_rpm": 1800.0}, "too-fast", "1900 r/min, is above the rotor's highest"),
        ({"speed_rpm": 1900.0}, "speed-limit-unknown", "does not say the rotor's highest speed"),
    ],
)
def test_the_rotors_highest_speed_is_said_or_asked_for(job, rotor, id, said):
    job.append("brief", rotor=rotor)
    found = before_start(job.state)
    assert said in text(found, id)
    assert len({"speed-limit", "too-fast", "speed-limit-unknown"} & set(ids(found))) == 1


def test_abort_levels_and_the_points_that_have_none(job):
    job.append("hookup", table={"point": [{"name": "A"}, {"name": "B"}]})
    job.append("brief", abort=[{"point": "A", "amplitude": 20.0, "unit": "mm/s rms"}])
    found = before_start(job.state)
    assert text(found, "abort").endswith("A 20 mm/s rms.")
    assert "agreed for B:" in text(found, "abort-unknown")
    job.append("brief", abort=[{"point": p, "amplitude": 20.0, "unit": "mm/s rms"} for p in "AB"])
    assert "abort-unknown" not in ids(before_start(job.state))


def test_an_abort_level_where_nothing_is_wired_is_to_be_acknowledged(job):
    levels = [{"point": p, "amplitude": 20.0, "unit": "mm/s rms"} for p in ("A", "old A")]
    job.append("brief", abort=levels)
    assert "abort-nowhere" not in ids(before_start(job.state))  # before the hook-up nothing is known of it
    job.append("hookup", table={"point": [{"name": "A"}]})
    found = before_start(job.state)
    assert text(found, "abort").endswith("level: A 20 mm/s rms.")
    assert "at old A can never call for a stop" in text(found, "abort-nowhere")
    assert next(c for c in found if c.id == "abort-nowhere").acknowledge
    job.append("brief", abort=levels[1:])
    assert {"abort-nowhere", "abort-unknown"} <= set(ids(before_start(job.state)))
    assert "abort" not in ids(before_start(job.state))


def test_from_the_second_run_on_mark_and_sensors_are_asked_for(job):
    assert "as-before" not in ids(before_start(job.state))
    run(job, "first try")
    assert 'as in the run "first try"' in text(before_start(job.state), "as-before")


@pytest.mark.parametrize(
    ("fixing", "kind"),
    [
        ("welded", "welded"), ("weld bead", "welded"), ("2 welds", "welded"), ("M8 bolt and nut", "bolted"),
        ("set screw", "clamped"), ("Clamped", "clamped"), ("magnets", "temporary"), ("duct tape", "temporary"),
        ("glued and bolted", "temporary"), ("drilled", "removed metal"), ("somehow", "unknown"), (None, "unknown"),
        ("groundless", "unknown"),
    ],
)  # fmt: skip
def test_a_fixing_is_told_from_its_words(fixing, kind):
    assert fixing_of(Piece("left", 10.0, 0.0, fixing=fixing)) == kind


def test_metal_removed_is_told_from_its_sign():
    assert fixing_of(Piece("left", -10.0, 0.0, fixing="bolted")) == "removed metal"


@pytest.mark.parametrize(
    ("fixing", "said"),
    [
        ("tape", "do not hold a mass on a turning rotor, for a trial no more than for good"),
        ("adhesive", "fix it by bolt, clamp or weld"),
        ("clamp", "for trials only"),
        ("bolt", "nut and washers weighed with it; the force is carried by shape, not by friction"),
        ("weld", "never through bearings or coupling; sensors, pulse sensor"),
        ("drilled", "never from blade roots, welds or pressure parts"),
        (None, "does not say how it is fixed"),
    ],
)
def test_each_fixing_has_its_rule(job, fixing, said):
    piece = Piece("left", 10.0, 45.0, fixing=fixing)
    (found,) = for_piece(piece)
    assert said in found.text
    assert found.text.startswith('10 g on "left" at 45°: ')
    assert found.acknowledge
    job.append(
        "mass", act="put on", pieces=[{"plane": "left", "mass_g": 10.0, "angle_deg": 45.0, "fixing": fixing}] * 2
    )
    assert [c for c in before_hands(job.state) if c == found] == [found]  # said once
    assert found in before_start(job.state)


def test_no_text_says_that_anything_is_safe():
    assert not re.search(r"\bsafe", cautions.TEXTS.read_text(encoding="utf-8"), re.IGNORECASE)


def changed(tmp_path, old, new):
    path = tmp_path / "cautions.toml"
    whole = cautions.TEXTS.read_text(encoding="utf-8")
    assert old in whole
    path.write_text(whole.replace(old, new, 1), encoding="utf-8")
    return path


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('when = "hands"', 'when = "never"', r"cautions.toml: caution 1.when: must be hands or start or piece"),
        ('id = "blocked"', 'id = "isolated"', r'cautions.toml: caution "isolated": its id is used twice'),
        ("Permits for", "{:>999999999} for", r'caution "permits": its braces name what is not known there'),
        ("Permits for", "{Permits} for", r'caution "permits": its braces name what is not known there; there is nothing'),
    ],
)  # fmt: skip
def test_a_table_that_cannot_be_used_is_refused(job, tmp_path, old, new, said):
    with pytest.raises(CautionError, match=said):
        before_hands(job.state, changed(tmp_path, old, new))


def test_a_table_that_is_not_there_is_refused(job):
    with pytest.raises(CautionError, match="nowhere.toml: there is no such file"):
        before_start(job.state, Path("nowhere.toml"))
