"""Vibration against limits: tables as stored, broadband against once-per-rev, supports, units, tables of one's own, refusals."""

import dataclasses
import math

import numpy as np
import pytest
from stillshaft.solver import limit_tables, limits, vibration_limits
from stillshaft.solver.limit_tables import FOLDER, LimitsError
from stillshaft.solver.runs import Rotor, RunsError
from stillshaft.solver.runs_append import append_run
from stillshaft.solver.runs_file import load_runs
from stillshaft.solver.vibration_limits import Chosen
from test_solver import simulated, write

MACHINES, FANS = limit_tables.named("ISO 20816-3"), limit_tables.named("iso 14694")
SMALL = {"class_name": "15 to 300 kW", "supports": {None: "rigid"}}  # limits 1.4, 2.8, 4.5


def last_run(path, amplitude, overall=None, speed_rpm=1500.0, **more):
    """One point, three runs; the last one has this once-per-rev amplitude and broadband level."""
    rows = [("initial", [10.0], [0]), ("trial", [8.0j], [5.0]), ("check", [amplitude], [2.0])]
    runs = write(path, rows, ("disc",), ("A",), repeatability="2 % 2 deg", **more)
    checks = dataclasses.replace(runs.runs[-1], overall=(overall,), speed_rpm=speed_rpm)
    return dataclasses.replace(runs, runs=(*runs.runs[:-1], checks))


def judged(path, amplitude, overall=None, table=MACHINES, speed_rpm=1500.0, unit="mm/s rms", **choice):
    chosen = Chosen(table, **(SMALL | choice))
    return vibration_limits.verdicts(chosen, last_run(path, amplitude, overall, speed_rpm, vibration_unit=unit))


# tables as stored


@pytest.mark.parametrize(("name", "support", "values"), [
    ("above 300 kW", "rigid", (2.3, 4.5, 7.1)), ("above 300 kW", "flexible", (3.5, 7.1, 11.0)),
    ("15 to 300 kW", "rigid", (1.4, 2.8, 4.5)), ("15 to 300 kW", "flexible", (2.3, 4.5, 7.1)),
])  # fmt: skip
def test_zone_limits_of_industrial_machines(name, support, values):
    """ISO 20816-3 (from memory), mm/s rms, 10 to 1000 Hz."""
    (row,) = [c for c in MACHINES.classes if (c.name, c.support) == (name, support)]
    assert row.values == values
    assert (MACHINES.unit.text, MACHINES.band_hz, MACHINES.zones) == ("mm/s rms", (10.0, 1000.0), tuple("ABCD"))
    assert "from memory" in limit_tables.cited(MACHINES)


@pytest.mark.parametrize(("category", "start_up", "alarm", "shutdown"), [
    ("BV-2", (5.6, 9.0), None, None), ("BV-3", (4.5, 6.3), (7.1, 11.8), (9.0, 12.5)),
    ("BV-4", (2.8, 4.5), (4.5, 7.1), (7.1, 11.2)), ("BV-5", (1.8, 2.8), (4.0, 5.6), (5.6, 7.1)),
])  # fmt: skip
def test_limits_of_fans_in_place(category, start_up, alarm, shutdown):
    """ISO 14694 (from memory), mm/s rms, rigid and flexible."""
    for column, support in enumerate(("rigid", "flexible")):
        (row,) = [c for c in FANS.classes if (c.name, c.support) == (category, support)]
        assert row.values == tuple(pair[column] for pair in (start_up, alarm, shutdown) if pair is not None)
    assert FANS.limits == ("start-up", "alarm", "shutdown")


@pytest.mark.parametrize("table", limit_tables.built_in(), ids=lambda table: table.name)
def test_every_built_in_table_names_source_and_edition(table):
    assert "from memory" in limit_tables.cited(table)
    assert all(limit_tables.contents(table))


@pytest.mark.parametrize(("natural_rpm", "support"), [(1875.0, "flexible"), (1876.0, "rigid"), (700.0, "flexible")])
def test_a_support_is_rigid_above_five_quarters_of_the_speed(natural_rpm, support):
    """ISO 20816 (from memory): lowest natural frequency in the measured direction against 1.25 × 1500 r/min."""
    assert vibration_limits.support_class(natural_rpm, 1500.0) == support


# verdicts


@pytest.mark.parametrize(("overall", "zone", "verdict"), [
    (1.0, "A", "met"), (1.4, "A", "met"), (2.5, "B", "met"), (2.75, "B", "cannot be told"),
    (2.85, "C", "cannot be told"), (3.2, "C", "not met"), (9.0, "D", "not met"),
])  # fmt: skip
def test_broadband_levels_fall_into_zones(tmp_path, overall, zone, verdict):
    (row,), notes = judged(tmp_path / "r.toml", 0.5, overall)
    assert (row.zone, row.verdict, row.limit, row.value) == (zone, verdict, 2.8, overall)
    assert row.ci95 == pytest.approx(1.96 * 0.02 * overall, rel=1e-3)
    assert "ISO 20816-3 (2022, from memory), 15 to 300 kW, rigid, B/C, broadband, mm/s rms" in row.source
    assert not notes


def test_another_limit_may_be_asked_for(tmp_path):
    (row,), _ = judged(tmp_path / "r.toml", 0.5, 2.5, accept="A/B")
    assert (row.limit, row.zone, row.verdict) == (1.4, "B", "not met")


@pytest.mark.parametrize(("amplitude", "verdict", "zone"), [
    (0.001, "cannot be told", "A"), (2.0, "cannot be told", "B"), (2.81, "cannot be told", "C"), (4.0, "not met", "C"),
    (6.0, "not met", "D"),
])  # fmt: skip
def test_once_per_rev_alone_never_meets_a_broadband_limit(tmp_path, amplitude, verdict, zone):
    (row,), notes = judged(tmp_path / "r.toml", amplitude)
    assert (row.verdict, row.zone) == (verdict, None)
    assert row.source.endswith("1x alone")
    assert notes == (f'"A": 1x alone is in zone {zone} of ISO 20816-3; the broadband level is not known',)


def test_once_per_rev_outside_the_band_shows_nothing(tmp_path):
    """At 300 r/min 1x is 5 Hz: below the 10 Hz of the fans' band, but within the machines' band from 2 Hz."""
    fans = {"table": FANS, "class_name": "BV-4", "speed_rpm": 300.0}
    assert judged(tmp_path / "a.toml", 20.0, **fans)[0][0].verdict == "cannot be told"
    assert judged(tmp_path / "b.toml", 20.0, speed_rpm=300.0)[0][0].verdict == "not met"
    assert judged(tmp_path / "c.toml", 20.0, 2.0, **fans)[0][0].verdict == "met"


def test_a_level_below_its_own_part_is_doubted(tmp_path):
    (row,), notes = judged(tmp_path / "r.toml", 2.2, 0.31)
    assert row.verdict == "cannot be told"
    assert "the broadband level 0.31 is less than its once-per-rev part 2.2" in notes[0]


@pytest.mark.parametrize(("unit", "per_mm_s_rms"), [
    ("mm/s peak", math.sqrt(2.0)), ("in/s peak", math.sqrt(2.0) / 25.4), ("m/s rms", 1e-3), ("cm/s p-p", 0.2 * math.sqrt(2)),
])  # fmt: skip
def test_the_unit_of_a_velocity_changes_nothing(tmp_path, unit, per_mm_s_rms):
    """1 in = 25.4 mm; peak is √2 rms."""
    (row,), _ = judged(tmp_path / "a.toml", 0.5 * per_mm_s_rms, 2.5 * per_mm_s_rms, unit=unit)
    assert (row.value, row.zone, row.verdict) == (pytest.approx(2.5), "B", "met")
    (row,), _ = judged(tmp_path / "b.toml", 4.0 * per_mm_s_rms, unit=unit)
    assert (row.value, row.verdict) == (pytest.approx(4.0), "not met")


@pytest.mark.parametrize(("unit", "quantity"), [("um p-p", "displacement"), ("g rms", "acceleration")])
def test_another_quantity_cannot_be_compared(tmp_path, unit, quantity):
    rows, notes = judged(tmp_path / "r.toml", 4.0, 5.0, unit=unit)
    assert rows == ()
    assert notes == (f"ISO 20816-3: limits are in mm/s rms; {quantity} in {unit} cannot be compared with them",)


def test_supports_differ_by_point(tmp_path):
    """A on a support that resonates at 1800 r/min (flexible at 1500), B on one stated rigid."""
    runs = simulated(tmp_path / "r.toml")
    loud = dataclasses.replace(runs.runs[-1], vectors=np.array([0.1, 0.1]), overall=(3.5, 3.5))
    runs = dataclasses.replace(runs, runs=(*runs.runs[:-1], loud))
    rows, _ = vibration_limits.verdicts(Chosen(MACHINES, "15 to 300 kW", {"A": 1800.0, None: "rigid"}), runs)
    assert [(r.limit, r.verdict) for r in rows] == [(4.5, "met"), (2.8, "not met")]
    assert "flexible" in rows[0].source


def test_a_category_without_alarm_has_no_zone_above(tmp_path):
    (row,), notes = judged(tmp_path / "r.toml", 0.5, 7.0, table=FANS, class_name="BV-2")
    assert (row.limit, row.zone, row.verdict) == (5.6, None, "not met")
    assert notes == ("ISO 14694: no value for alarm, shutdown of BV-2",)
    (row,), _ = judged(tmp_path / "r.toml", 0.5, 3.0, table=FANS, class_name="BV-2")
    assert (row.zone, row.verdict) == ("below start-up", "met")


def test_vibration_is_held_against_the_files_own_limits(tmp_path):
    limit = [{"point": "A", "amplitude": 100.0}, {"point": "B", "amplitude": 0.1}]
    result = limits.tolerance(
        "G6.3", Rotor("between bearings", 10.0, 1500.0, None, None), simulated(tmp_path / "r.toml", limit=limit)
    )
    assert [v.verdict for v in result.vibration] == ["met", "not met"]
    assert {v.source for v in result.vibration} == {"runs file, 1x, mm/s rms"}


def test_vibration_alone_needs_no_rotor_mass(tmp_path):
    runs = last_run(tmp_path / "r.toml", 0.5, 2.5)
    result = limits.tolerance(
        None, Rotor("between bearings", None, None, None, None), runs, vibration=Chosen(MACHINES, **SMALL)
    )
    assert (result.grade, result.planes, result.verdict) == ("none", (), "met")
    assert any("ISO 20816-3, industrial machines above 15 kW, 2022, from memory" in s for s in result.sources)


def test_without_runs_the_limits_are_listed():
    rotor = Rotor("between bearings", None, None, None, None)
    result = limits.tolerance(None, rotor, vibration=Chosen(FANS, "BV-4"))
    assert "BV-4, rigid: start-up 2.8, alarm 4.5, shutdown 7.1 mm/s rms" in result.sources
    assert result.verdict == "cannot be told"


def test_amplitudes_alone_are_judged_all_the_same(tmp_path):
    path = tmp_path / "r.toml"
    simulated(path)
    path.write_text("\n".join(line for line in path.read_text().splitlines() if not line.startswith("phase")))
    rows, _ = vibration_limits.verdicts(Chosen(MACHINES, **SMALL), load_runs(path))
    assert {r.verdict for r in rows} == {"not met"}


# broadband levels in the runs file


def test_a_measured_level_is_written_and_read(tmp_path):
    path = tmp_path / "r.toml"
    append_run(
        path, name="initial", speed_rpm=1480.0, vectors_by_point={"A": 1.0 + 1.0j, "B": 2.0j}, covariance=np.eye(4) * 1e-4,
        degrees_of_freedom=8, masses=[], vibration_unit="mm/s rms", mass_unit="g", points=[{"name": "A"}, {"name": "B"}],
        overall={"A": 3.1, "B": None},
    )  # fmt: skip
    assert load_runs(path).runs[0].overall == (3.1, None)


def test_a_level_that_is_no_number_is_refused(tmp_path):
    path = tmp_path / "r.toml"
    simulated(path)
    path.write_text(path.read_text().replace("phase = ", "overall = -3.0\nphase = ", 1))
    with pytest.raises(RunsError, match='vectors."A".overall: -3.0 must be a finite number, 0 or more'):
        load_runs(path)


# tables of one's own


TEXT = (FOLDER / "vibration_machines.toml").read_text()
OWN = """
format = 1
kind = "vibration"
name = "contract"
source = "contract, clause on vibration"
edition = "as signed"
unit = "mm/s rms"
level = "1x"
limits = ["agreed"]
zones = ["within", "beyond"]
accept = "agreed"
[[class]]
name = "this fan"
values = [2.8]
"""


@pytest.mark.parametrize(("amplitude", "zone", "verdict"), [
    (2.0, "within", "met"), (2.79, "within", "cannot be told"), (4.0, "beyond", "not met"),
])  # fmt: skip
def test_ones_own_limits_for_1x_may_be_met(tmp_path, amplitude, zone, verdict):
    (tmp_path / "own.toml").write_text(OWN)
    table = limit_tables.named(str(tmp_path / "own.toml"))
    (row,), notes = judged(tmp_path / "r.toml", amplitude, 9.0, table=table, class_name=None, supports={})
    assert (row.zone, row.verdict, notes) == (zone, verdict, ())
    assert row.source == "contract (as signed), this fan, agreed, 1x, mm/s rms"


@pytest.mark.parametrize(("old", "new", "match"), [
    ("values = [1.4, 2.8, 4.5]", "values = [2.8, 1.4, 4.5]", "rigid.values: 1.4 stands after 2.8; write them in rising"),
    ("values = [1.4, 2.8, 4.5]", "values = [1.4, nan, 4.5]", "rigid.values: nan must be above 0"),
    ("values = [1.4, 2.8, 4.5]", "values = []", "rigid.values: 0 values; there are 3 limits"),
    ("values = [1.4, 2.8, 4.5]", "values = [1, 2, 3, 4]", "rigid.values: 4 values; there are 3 limits"),
    ('support = "flexible"', 'support = "rigid"', 'class "15 to 300 kW" rigid: stands there twice'),
    ('support = "flexible"', "", 'class "15 to 300 kW": stands there twice'),
    ('support = "flexible"', 'support = "soft"', "support: must be rigid or flexible, not 'soft'"),
    ("name = ", "colour = 3\nname = ", "colour: unknown key"),
    ('source = "ISO 20816-3, industrial machines above 15 kW"', "", "source: is missing"),
    ('source = "ISO 20816-3, industrial machines above 15 kW"', 'source = ""', "source: is empty"),
    ('unit = "mm/s rms"', 'unit = "mm/s"', "unit: .* needs a measure"),
    ("band_hz = [10.0, 1000.0]", "band_hz = [1000.0, 10.0]", "band_hz: 10 stands after 1000"),
    ('limits = ["A/B", "B/C", "C/D"]', "limits = []", "limits: name at least one"),
    ('limits = ["A/B", "B/C", "C/D"]', 'limits = ["A/B", "A/B"]', "limits: name at least one, each once"),
    ('zones = ["A", "B", "C", "D"]', 'zones = ["A", "B"]', "zones: 2 names; 3 limits part 4 zones"),
    ('accept = "B/C"', 'accept = "E"', 'accept: "E" is none of the limits; there is A/B, B/C, C/D'),
    ('level = "broadband"', 'level = "loud"', "level: must be broadband or 1x"),
    ("[[class]]", "[[classes]]", "classes: unknown key"),
    ("values = [1.4, 2.8, 4.5]", 'values = "low"', "class 1.values: must be a list, not a text"),
    ("format = 1", "format = = 1", "is not valid TOML"),
])  # fmt: skip
def test_bad_tables_are_refused_in_one_line(tmp_path, old, new, match):
    assert old in TEXT
    path = tmp_path / "own.toml"
    path.write_text(TEXT.replace(old, new, 1))
    with pytest.raises(LimitsError, match=match) as caught:
        limit_tables.load(path)
    assert str(caught.value).startswith(str(path))
    assert "\n" not in str(caught.value)


def test_a_table_without_classes_is_refused(tmp_path):
    path = tmp_path / "own.toml"
    path.write_text(OWN[: OWN.index("[[class]]")])
    with pytest.raises(LimitsError, match=r"class: there is none; add a \[\[class\]\]"):
        limit_tables.load(path)


@pytest.mark.parametrize(("choice", "match"), [
    ({"class_name": None}, "class: ISO 20816-3 has several; say which of 15 to 300 kW, above 300 kW"),
    ({"class_name": "toys"}, 'class "toys": ISO 20816-3 has none such; there is 15 to 300 kW'),
    ({"supports": {}}, 'support: that of "A" is not said; give rigid, flexible, or the lowest natural frequency'),
    ({"supports": {"Z": "rigid"}}, 'support: "Z" is no point of the runs file; there is A'),
    ({"supports": {None: "soft"}}, 'support "soft": class 15 to 300 kW is for rigid or flexible'),
    ({"supports": {None: -5.0}}, "support: a natural frequency of -5 r/min must be above 0"),
    ({"accept": "E/F"}, 'accept "E/F": is no limit of ISO 20816-3; there is A/B, B/C, C/D'),
    ({"table": FANS, "class_name": "BV-2", "accept": "alarm"}, 'accept "alarm": ISO 14694 gives none for class "BV-2"'),
])  # fmt: skip
def test_a_choice_that_cannot_be_made_is_refused(tmp_path, choice, match):
    with pytest.raises(LimitsError, match=match):
        judged(tmp_path / "r.toml", 1.0, 2.0, **choice)


def test_a_class_for_one_support_only_says_so(tmp_path):
    path = tmp_path / "own.toml"
    path.write_text(OWN + 'support = "rigid"\n')
    table = limit_tables.load(path)
    with pytest.raises(LimitsError, match='support "flexible": class this fan is for rigid'):
        judged(tmp_path / "r.toml", 1.0, table=table, class_name=None, supports={None: "flexible"})
