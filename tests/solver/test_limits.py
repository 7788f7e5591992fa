"""Permissible and residual unbalance: the standard's example, tables as stored, laws, probabilities, refusals."""

import dataclasses
import math

import numpy as np
import pytest
from scipy import stats
from stillshaft.solver import limit_tables, limits
from stillshaft.solver.residual import probability_within, residual
from stillshaft.solver.runs import Rotor
from stillshaft.solver.runs_file import load_runs
from test_solver import TRIALS, V0, H, noisy, simulated, write

NEEDED = -np.linalg.solve(H, V0)
PLAIN = Rotor("between bearings", 10.0, 1500.0, None, None)


def left_over(path, left, **more):
    """Runs whose last one carries these grams beyond the correction that is needed."""
    return simulated(path, [*TRIALS, ("check", tuple(NEEDED - np.array(left)))], **more)


# what is permissible


def test_permissible_unbalance_example_of_the_standard():
    """ISO 1940-1:2003 / ISO 21940-11 annex, turbine rotor (from memory)."""
    rotor = Rotor("between bearings", 3600.0, 3000.0, 2400.0, 1500.0)
    result = limits.tolerance("G 2.5", rotor)
    assert result.e_per_um == pytest.approx(7.96, abs=0.005)
    assert result.u_per_gmm == pytest.approx(28.6e3, abs=100.0)
    assert [p.permissible_gmm for p in result.planes] == [
        pytest.approx(10.7e3, abs=50.0),
        pytest.approx(17.9e3, abs=50.0),
    ]


def test_oil_industry_limit_in_both_unit_families():
    """API family (from memory): 6350·m/n g·mm is 4·W/N oz·in, m the load on that journal."""
    kg_per_lb, gmm_per_oz_in = 0.45359237, 28.349523125 * 25.4
    rotor = Rotor("between bearings", 3600.0, 3000.0, 2400.0, 1500.0)
    result = limits.tolerance("4w/n", rotor)
    loads_lb = np.array([900.0, 1500.0]) / 2400.0 * 3600.0 / kg_per_lb
    in_oz_in = [p.permissible_gmm / gmm_per_oz_in for p in result.planes]
    np.testing.assert_allclose(in_oz_in, 4.0 * loads_lb / 3000.0, rtol=1e-3)
    assert result.u_per_gmm == pytest.approx(6350.0 * 3600.0 / 3000.0)
    assert result.grade == "4W/N"
    assert any("API standards family, from memory" in s for s in result.sources)


def test_a_journal_load_has_no_least_share():
    """The load of a journal is statics: 1/24 at A, 23/24 at B, held within no bounds."""
    rotor = Rotor("between bearings", 100.0, 6350.0, 2400.0, 2300.0)
    planes = limits.tolerance("4W/N", rotor).planes
    assert [p.permissible_gmm for p in planes] == [pytest.approx(100.0 / 24), pytest.approx(2300.0 / 24)]


@pytest.mark.parametrize(("kind", "centre", "shares"), [
    ("between bearings", 1200.0, (0.5, 0.5)), ("between bearings", 2300.0, (0.3, 0.7)),
    ("between bearings", 600.0, (0.7, 0.3)), ("overhung", 2880.0, (0.3, 1.2)), ("overhung", 3600.0, (0.5, 1.3)),
    ("overhung", -1200.0, (1.3, 0.5)),
])  # fmt: skip
def test_shares_stay_within_the_standards_bounds(kind, centre, shares):
    """ISO 21940-11 (from memory): 0.3 to 0.7 of U_per between bearings, 0.3 to 1.3 overhung."""
    result = limits.tolerance("G6.3", Rotor(kind, 100.0, 1500.0, 2400.0, centre))
    assert [p.permissible_gmm / result.u_per_gmm for p in result.planes] == pytest.approx(list(shares))


def test_the_grades_of_the_standard_are_stored():
    """ISO 21940-11 (from memory)."""
    table = limit_tables.grades()
    assert table.grades_mm_s == (0.4, 1.0, 2.5, 6.3, 16.0, 40.0, 100.0, 250.0, 630.0, 1600.0, 4000.0)
    assert "from memory" in limit_tables.cited(table)
    assert [limits.grade_mm_s(f"G{g:g}") for g in table.grades_mm_s] == list(table.grades_mm_s)


@pytest.mark.parametrize(("machine", "speed_rpm", "grade"), [
    ("fan", 1500.0, "G6.3"), ("Pumps", 1500.0, "G6.3"), ("flywheel", 1500.0, "G6.3"), ("general machinery", 1.0, "G6.3"),
    ("crushing machine", 900.0, "G16"), ("agricultural  machine", 900.0, "G16"), ("turbine", 3000.0, "G2.5"),
    ("compressor", 3000.0, "G2.5"), ("machine-tool drive", 3000.0, "G2.5"), ("motor", 950.0, "G6.3"),
    ("electric motor", 951.0, "G2.5"), ("grinding-machine drive", 3000.0, "G1"), ("precision spindle", 9e4, "G0.4"),
    ("gyroscope", 9e4, "G0.4"), ("fan BV-1", 900.0, "G16"), ("fan BV-2", 900.0, "G16"), ("fan bv-3", 900.0, "G6.3"),
    ("fan BV-4", 900.0, "G2.5"), ("fan BV-5", 900.0, "G1"),
])  # fmt: skip
def test_the_kind_of_machine_proposes_the_grade(machine, speed_rpm, grade):
    """ISO 21940-11 and ISO 14694 (both from memory)."""
    result = limits.tolerance(None, Rotor("between bearings", 10.0, speed_rpm, None, None, machine=machine))
    assert result.grade == grade
    assert any("usual for this machine" in r and "from memory" in r for r in result.reasons)


def test_a_grade_beside_a_machine_wins_and_the_usual_one_is_said():
    result = limits.tolerance("G16", Rotor("between bearings", 10.0, 1500.0, None, None, machine="fan"))
    assert result.grade == "G16"
    assert any("usual for this machine, fan, is G6.3" in r for r in result.reasons)
    unheard = limits.tolerance("G16", Rotor("between bearings", 10.0, 1500.0, None, None, machine="shaker"))
    assert not any("usual" in r for r in unheard.reasons)


def test_without_grade_and_machine_the_usual_grade_is_assumed_and_said():
    result = limits.tolerance(None, PLAIN)
    assert result.grade == "G6.3"
    assert any("neither grade nor machine given" in r for r in result.reasons)


def test_a_flexible_rotor_has_no_permissible_unbalance(tmp_path):
    runs = left_over(tmp_path / "r.toml", [0.4, 0.7j])
    result = limits.tolerance("G6.3", dataclasses.replace(PLAIN, flexible=True), runs)
    assert (result.e_per_um, result.u_per_gmm) == (None, None)
    assert {(p.permissible_gmm, p.verdict) for p in result.planes} == {(None, "not applicable")}
    assert [p.residual_gmm for p in result.planes] == [pytest.approx(80.0), pytest.approx(140.0)]
    assert any("G6.3: not applicable, because the rotor runs above a resonance" in r for r in result.reasons)
    assert result.verdict == "cannot be told"


def test_a_run_above_the_service_speed_is_said(tmp_path):
    slow = dataclasses.replace(PLAIN, speed_rpm=1000.0)
    result = limits.tolerance("G6.3", slow, left_over(tmp_path / "r.toml", [0.4, 0.4]))
    assert any("last run was at 1500 r/min, above the highest service speed of 1000 r/min" in r for r in result.reasons)


def test_the_older_split_of_an_overhung_rotor(tmp_path):
    """Static U_per/4·d/c and couple 3·U_per/8·d/b (from memory); together the near bearing carries 0.9 of U_per/2."""
    planes = [{"name": n, "radius": "200 mm", "z": z} for n, z in (("left", "900 mm"), ("right", "1100 mm"))]
    runs = left_over(tmp_path / "r.toml", [0.4, 0.4j], plane=planes)
    rotor = Rotor("overhung", 10.0, 1500.0, 700.0, 1000.0)
    result = limits.tolerance("G6.3", rotor, runs, static_couple=True)
    static, couple = result.planes
    assert static.permissible_gmm == pytest.approx(result.u_per_gmm / 4 * 700 / 1000)
    assert couple.permissible_gmm == pytest.approx(result.u_per_gmm * 3 / 8 * 700 / 200)
    at_near_bearing = [static.permissible_gmm * 1000 / 700, couple.permissible_gmm * 200 / 700]
    assert np.hypot(*at_near_bearing) == pytest.approx(result.u_per_gmm / 2 * math.sqrt(0.25 + 9 / 16))
    assert static.residual_gmm == pytest.approx(200 * abs(0.4 + 0.4j))
    assert couple.residual_gmm == pytest.approx(100 * abs(0.4j - 0.4))
    assert any("memories differ" in s for s in result.sources)


# where the rotor stands


def test_residual_of_an_unbalance_that_is_known(tmp_path):
    """The last run carries a known remainder: the residual is that mass times its radius."""
    runs = left_over(tmp_path / "r.toml", [0.4, 0.7j])
    planes = limits.tolerance("G6.3", dataclasses.replace(PLAIN, mass_kg=1.0), runs).planes
    assert [p.residual_gmm for p in planes] == [pytest.approx(0.4 * 200.0), pytest.approx(0.7 * 200.0)]
    assert [p.verdict for p in planes] == ["not met", "not met"]  # 20 g·mm each are allowed
    generous = limits.tolerance("G40", PLAIN, runs)
    assert [p.verdict for p in generous.planes] == ["met", "met"]
    assert all(p.probability_within > 0.95 for p in generous.planes)
    assert generous.run == "check"


def test_one_plane_beyond_its_limit_is_enough(tmp_path):
    runs = left_over(tmp_path / "r.toml", [0.01, 0.7j])
    result = limits.tolerance("G6.3", dataclasses.replace(PLAIN, mass_kg=3.0), runs)
    assert [p.verdict for p in result.planes] == ["met", "not met"]
    assert result.verdict == "not met"


def test_a_residual_at_its_limit_cannot_be_told(tmp_path):
    runs = left_over(tmp_path / "r.toml", [0.4, 0.4], repeatability="3 % 3 deg")
    grade_mass = 0.4 * 200.0 * 2 / (1000.0 * 6.3 / (1500.0 * math.pi / 30.0))
    planes = limits.tolerance("G6.3", dataclasses.replace(PLAIN, mass_kg=grade_mass), runs).planes
    assert {p.verdict for p in planes} == {"cannot be told"}
    low, high = planes[0].bounds_gmm
    assert (low + high) / 2 == pytest.approx(planes[0].residual_gmm)
    assert (high - low) / 2 == pytest.approx(planes[0].residual_ci95 * 1.645 / 1.960, rel=1e-4)


def test_the_residual_moves_into_the_bearing_planes(tmp_path):
    """Statics: 80 g·mm at z = 200 mm and 140 g·mm a quarter turn on at 900 mm, bearings 1000 mm apart."""
    planes = [{"name": n, "radius": "200 mm", "z": z} for n, z in (("left", "200 mm"), ("right", "900 mm"))]
    runs = left_over(tmp_path / "r.toml", [0.4, 0.7j], plane=planes)
    rotor = Rotor("between bearings", 10.0, 1500.0, 1000.0, 500.0)
    result = limits.tolerance("G6.3", rotor, runs).planes
    assert [p.plane for p in result] == ["bearing A", "bearing B"]
    expected = [abs(80 * 0.8 + 140j * 0.1), abs(80 * 0.2 + 140j * 0.9)]
    assert [p.residual_gmm for p in result] == pytest.approx(expected)


@pytest.mark.parametrize(("names", "said"), [
    (("left", "right"), "their residuals are taken as at the bearings"),
    (("left", "middle", "right"), "the residual at the bearings cannot be told"),
])  # fmt: skip
def test_planes_without_a_place_along_the_shaft(tmp_path, names, said):
    rng = np.random.default_rng(4)
    h, v0 = (rng.standard_normal(s) + 1j * rng.standard_normal(s) for s in ((4, len(names)), 4))
    masses = [np.zeros(len(names)), *(5.0 * np.eye(len(names)))]
    rows = [(str(i), v0 + h @ w, w) for i, w in enumerate(masses)]
    runs = write(tmp_path / "r.toml", rows, names, tuple("ABCD"))
    result = limits.tolerance("G6.3", Rotor("between bearings", 10.0, 1500.0, 1000.0, 500.0), runs)
    assert any(said in r for r in result.reasons)
    assert all((p.residual_gmm is None) == (len(names) == 3) for p in result.planes)


def test_units_and_the_mark_leave_the_residual(tmp_path):
    """Other units of vibration and mass, and a pulse sensor moved by 37°, change neither size nor probability."""
    plain = limits.tolerance("G6.3", PLAIN, left_over(tmp_path / "a.toml", [0.2, 0.3j])).planes
    turned = left_over(tmp_path / "b.toml", [0.2, 0.3j], turn=np.exp(1j * np.deg2rad(37.0)), scale=39.37)
    heavy = [
        dataclasses.replace(
            run,
            masses=run.masses / 28.349523125,
            pieces=tuple(
                dataclasses.replace(p, mass=p.mass / 28.349523125, covariance=p.covariance / 28.349523125**2)
                for p in run.pieces
            ),
        )
        for run in turned.runs
    ]
    ounces = dataclasses.replace(turned, runs=tuple(heavy), mass_unit="oz", kg_per_mass_unit=0.028349523125)
    for runs in (turned, ounces):
        for p, q in zip(limits.tolerance("G6.3", PLAIN, runs).planes, plain, strict=True):
            assert p.residual_gmm == pytest.approx(q.residual_gmm, rel=1e-6)
            assert p.residual_ci95 == pytest.approx(q.residual_ci95, rel=1e-4)
            assert p.probability_within == pytest.approx(q.probability_within, abs=1e-6)


def test_the_runouts_own_scatter_widens_the_residual(tmp_path):
    """A slow roll cancels in H but not in the residual: its scatter, the same in all runs, stays in it."""
    quantities = [{"name": p, "quantity": "displacement"} for p in "AB"]
    rows = [(n, V0 + H @ np.array(w), w) for n, w in [*TRIALS, ("check", tuple(NEEDED - np.array([0.4, 0.4])))]]
    half = {}
    for spread in (0.0, 0.05):
        path = tmp_path / f"{spread}.toml"
        write(path, [("roll", [0.0, 0.0], (0, 0)), *rows], point=quantities, vibration_unit="um p-p")
        text = path.read_text().replace("speed_rpm = 1500.0", 'kind = "slow roll"\nspeed_rpm = 300.0', 1)
        path.write_text(text.replace("amplitude = 0.0\n", f"amplitude = 0.0\nspread = {spread}\n"))
        found, reasons = residual(load_runs(path))
        assert not reasons
        half[spread] = found.covariance
    grown = np.linalg.inv(H) * 200.0
    added = 0.05**2 * np.sum(np.abs(grown[0]) ** 2)
    assert half[0.05][0, 0] - half[0.0][0, 0] == pytest.approx(added, rel=0.05)


def test_a_misplaced_trial_widens_the_residual_by_as_much(tmp_path):
    """One plane, exact vectors: H is as wrong as the trial's weight, so the residual is too (2 % of it, 1.96 of them)."""
    rows = [("initial", [10.0], [0]), ("trial", [10.0 + 5.0j], [5.0])]
    runs = write(
        tmp_path / "r.toml", rows, ("disc",), ("A",), repeatability="0.0001 % 0.0001 deg", placement="2 % 1.145916 deg"
    )
    (plane,) = limits.tolerance("G6.3", PLAIN, runs).planes
    size = abs(10.0 + 5.0j) * 200.0  # H is 1j
    assert plane.residual_gmm == pytest.approx(size, rel=1e-6)
    assert plane.residual_ci95 == pytest.approx(1.96 * 0.02 * size, rel=1e-2)


def test_more_points_than_planes_count_what_is_left_over(tmp_path):
    """600 jobs, one plane, 4 points, most of the last run no unbalance: coverage of the 95 % region, binomial bounds."""
    rng = np.random.default_rng(8)
    h = np.array([1.0, 0.4j, -0.3, 0.2 + 0.2j])
    v0 = -5.0 * h + np.array([0.4, 3.0, 2.0j, -3.0])
    rows = [("initial", v0, [0]), ("trial", v0 + 2.0 * h, [2.0]), ("check", v0 + 4.8 * h, [4.8])]
    path = tmp_path / "r.toml"
    template = write(path, rows, ("disc",), tuple("ABCD"), repeatability="3 % 1.718873 deg")
    inside, jobs = 0, 600
    for _ in range(jobs):
        noisy_runs = []
        for run, (_, z, _) in zip(template.runs, rows, strict=True):
            scatter = 0.03 * (rng.standard_normal(4) + 1j * rng.standard_normal(4))
            noisy_runs.append(dataclasses.replace(run, vectors=np.asarray(z) * (1 + scatter)))
        found, _ = residual(dataclasses.replace(template, runs=tuple(noisy_runs)))
        true = np.linalg.lstsq(h[:, None], rows[-1][1], rcond=None)[0][0] * 200.0
        off = found.unbalance_gmm[0] - true
        inside += np.array([off.real, off.imag]) @ np.linalg.solve(found.covariance, [off.real, off.imag]) <= 5.991
    assert 0.92 <= inside / jobs <= 0.98


def test_a_residual_is_not_told_of_a_plane_without_a_trial_effect(tmp_path):
    rng = np.random.default_rng(1)
    weak = [("initial", (0, 0)), ("trial left", (0.05, 0)), ("trial right", (0, 5.0j))]
    result = limits.tolerance("G6.3", PLAIN, noisy(tmp_path / "r.toml", rng, weak, 0.02, 0.02))
    assert all(p.residual_gmm is None for p in result.planes)
    assert {p.verdict for p in result.planes} == {"cannot be told"}
    assert any('plane "left": the residual unbalance cannot be told' in r for r in result.reasons)


def test_a_residual_that_cannot_be_told_says_why(tmp_path):
    bare = simulated(tmp_path / "a.toml", plane=[{"name": "left", "radius": "200 mm"}, {"name": "right"}])
    assert any('plane "right" has no radius' in r for r in limits.tolerance("G6.3", PLAIN, bare).reasons)
    short = simulated(tmp_path / "b.toml", TRIALS[:2])
    assert any('no trial run with a mass on plane "right"' in r for r in limits.tolerance("G6.3", PLAIN, short).reasons)


# the probability


@pytest.mark.parametrize("deviation", [1e-4, 0.01, 0.1, 0.5, 3.0])
@pytest.mark.parametrize("size", [0.0, 0.3, 0.97, 1.0, 1.02, 2.0])
def test_round_scatter_is_the_noncentral_chi_square(deviation, size):
    """scipy.stats.ncx2 with two degrees of freedom; far out, where it gives up, the normal distribution."""
    found = probability_within(2.0, 2.0 * size * np.exp(0.7j), (2.0 * deviation) ** 2 * np.eye(2))
    expected = stats.ncx2.cdf(deviation**-2, 2, (size / deviation) ** 2) if size else stats.chi2.cdf(deviation**-2, 2)
    if not math.isfinite(expected):
        expected = stats.norm.cdf((1.0 - size) / deviation)
    assert found == pytest.approx(expected, abs=1e-4 if deviation < 1e-3 else 1e-9)


def test_any_ellipse_agrees_with_draws():
    """Monte Carlo, 200 000 draws each: within 4.5 standard errors in 120 cases, axes up to 1 to 1000."""
    rng = np.random.default_rng(3)
    for _ in range(120):
        wide, narrow = 10 ** rng.uniform(-2.5, 0.5), 10 ** rng.uniform(-2.5, 0.5)
        turn = rng.uniform(0.0, math.pi)
        axes = np.array([[math.cos(turn), -math.sin(turn)], [math.sin(turn), math.cos(turn)]]) * [wide, narrow]
        u = rng.uniform(0.0, 1.4) * np.exp(2j * math.pi * rng.random())
        drawn = rng.standard_normal((200_000, 2)) @ axes.T + [u.real, u.imag]
        share = np.mean(np.sum(drawn**2, axis=1) <= 1.0)
        found = probability_within(1.0, u, axes @ axes.T)
        assert abs(found - share) <= 4.5 * math.sqrt(max(found * (1.0 - found), 2e-5) / 200_000)


def test_a_line_and_a_point_are_limits_of_the_ellipse():
    line = np.diag([0.09, 0.0])
    chord = math.sqrt(1.0 - 0.6**2)
    expected = stats.norm.cdf((chord - 0.5) / 0.3) - stats.norm.cdf((-chord - 0.5) / 0.3)
    assert probability_within(1.0, 0.5 + 0.6j, line) == pytest.approx(expected, abs=1e-12)
    assert probability_within(1.0, 0.5 + 0.6j, np.diag([0.09, 1e-10])) == pytest.approx(expected, abs=1e-4)
    assert probability_within(1.0, 1.2j, line) == 0.0
    assert probability_within(1.0, 3.0j, np.diag([0.09, 0.01])) == 0.0
    assert [probability_within(1.0, u, np.zeros((2, 2))) for u in (0.99, 1.01j)] == [1.0, 0.0]


def test_elongated_scatter_is_not_taken_for_round():
    """Scatter along the limit's edge hardly matters: half of the trace would leave the verdict open."""
    long = np.diag([1e-6, 0.04])
    assert probability_within(1.0, 0.9, long) > 0.95
    assert probability_within(1.0, 0.9, 0.5 * np.trace(long) * np.eye(2)) < 0.8


# refusals


@pytest.mark.parametrize(("grade", "rotor", "match"), [
    ("G5", Rotor("overhung", 1.0, 1.0, None, None), 'grade "G5": is none; choose one of G0.4'),
    ("heavy", Rotor("overhung", 1.0, 1.0, None, None), 'grade "heavy"'),
    ("G1", Rotor("overhung", None, 1.0, None, None), "rotor mass: is missing"),
    ("G1", Rotor("overhung", -3.0, 1.0, None, None), "rotor mass: -3 kg must be above 0"),
    ("G1", Rotor("overhung", 1.0, None, None, None), "speed: is missing"),
    ("G1", Rotor("overhung", 1.0, math.nan, None, None), "speed: nan r/min must be above 0"),
    ("G1", Rotor("overhung", 1.0, 10.0, 0.0, None), "bearing span: 0 mm must be above 0"),
    ("G1", Rotor("between bearings", 1.0, 10.0, 2400.0, 2500.0), "2500 mm is not between the bearings, 0 to 2400 mm"),
    (None, Rotor("overhung", 1.0, 10.0, None, None, machine="toy"), 'machine "toy": has no usual grade .* there is fan'),
    (None, Rotor("overhung", 1.0, None, None, None, machine="motor"), 'machine "motor": its grade depends on'),
])  # fmt: skip
def test_tolerance_says_what_is_missing(grade, rotor, match):
    with pytest.raises(limits.LimitsError, match=match):
        limits.tolerance(grade, rotor)


@pytest.mark.parametrize(("kind", "span", "places", "match"), [
    ("between bearings", 700.0, ("900 mm", "1100 mm"), "split: static and couple are for overhung rotors"),
    ("overhung", None, ("900 mm", "1100 mm"), "split: static and couple need the bearing span"),
    ("overhung", 700.0, ("900 mm", None), "split: static and couple need the bearing span"),
    ("overhung", 700.0, ("900 mm", "900 mm"), "split: static and couple need two planes apart"),
])  # fmt: skip
def test_a_split_that_cannot_be_made_is_refused(tmp_path, kind, span, places, match):
    planes = [
        {"name": n, "radius": "200 mm"} | ({} if z is None else {"z": z})
        for n, z in zip(("left", "right"), places, strict=True)
    ]
    runs = simulated(tmp_path / "r.toml", plane=planes)
    with pytest.raises(limits.LimitsError, match=match):
        limits.tolerance("G1", Rotor(kind, 1.0, 1500.0, span, None), runs, static_couple=True)
    table = dataclasses.replace(limit_tables.grades(), static_couple=None)
    with pytest.raises(limits.LimitsError, match="has no \\[static_couple\\] table"):
        limits.tolerance("G1", Rotor(kind, 1.0, 1500.0, span, None), runs, grades=table, static_couple=True)


GRADES = (limit_tables.FOLDER / "balance_grades.toml").read_text()


@pytest.mark.parametrize(("old", "new", "match"), [
    ("grades = [0.4, 1.0", "grades = [1.0, 0.4", "grades: 0.4 stands after 1; write them in rising order"),
    ("grades = [0.4", "grades = [-0.4", "grades: -0.4 must be above 0"),
    ("usual = 6.3 ", "usual = 6.0 ", "usual: 6 is none of the grades"),
    ("grade = 16.0", "grade = 15.0", "machine 2.grade: 15 is none of the grades"),
    ('kind = "overhung"', 'kind = "between bearings"', 'shares: "overhung" is missing'),
    ("least = 0.3", "least = 0.8", 'shares "between bearings": least 0.8 and most 0.7 are not in order'),
    ("static = 0.25", "static = 0.0", "static_couple.static: 0 must be above 0"),
    ("couple = 0.375", "couple = nan", "static_couple.couple: nan must be above 0"),
    ("usual = 6.3 ", "colour = 1 ", "colour: unknown key|usual: is missing"),
    ("format = 1", "format = 2", "format: "),
    ('kind = "balance grades"', 'kind = "taste"', 'kind: must be "vibration", "balance grades" or "journal load"'),
    ('edition = "2016, from memory"', 'edition = " "', "edition: is empty; say where the limits come from"),
])  # fmt: skip
def test_bad_tables_are_refused_in_one_line(tmp_path, old, new, match):
    assert old in GRADES
    path = tmp_path / "mine.toml"
    path.write_text(GRADES.replace(old, new, 1))
    with pytest.raises(limits.LimitsError, match=match) as caught:
        limit_tables.load(path)
    assert str(caught.value).startswith(str(path))
    assert "\n" not in str(caught.value)


def test_an_edited_copy_is_used_and_cited(tmp_path):
    path = tmp_path / "mine.toml"
    path.write_text(
        GRADES.replace('name = "ISO 21940-11"', 'name = "house rules"').replace("[0.4, 1.0,", "[0.4, 1.0, 1.5,")
    )
    table = limit_tables.named(str(path))
    result = limits.tolerance("G1.5", PLAIN, grades=table)
    assert result.e_per_um == pytest.approx(1500.0 / (1500.0 * math.pi / 30.0))
    narrow = dataclasses.replace(table, machines=table.machines[3:4])
    with pytest.raises(limits.LimitsError, match="machine .motor.: house rules has no grade for it at 1000 r/min"):
        limits.tolerance(None, Rotor("overhung", 1.0, 1000.0, None, None, machine="motor"), grades=narrow)


def test_a_journal_rule_of_ones_own(tmp_path):
    path = tmp_path / "mine.toml"
    text = (limit_tables.FOLDER / "journal_load.toml").read_text()
    path.write_text(text.replace("6350.0", "3175.0").replace("4W/N", "2W/N"))
    table = limit_tables.named(str(path))
    assert limits.tolerance(None, PLAIN, journal=table).u_per_gmm == pytest.approx(3175.0 * 10.0 / 1500.0)
    path.write_text(text.replace("6350.0", "-1.0"))
    with pytest.raises(limits.LimitsError, match="constant: -1 must be above 0"):
        limit_tables.load(path)


def test_a_table_that_is_not_there_is_named():
    with pytest.raises(limits.LimitsError, match='limits "ISO 1": is neither a file nor a built-in table; there is'):
        limit_tables.named("ISO 1")
