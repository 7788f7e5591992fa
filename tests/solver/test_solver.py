"""Influence coefficients and corrections: published examples, exact cases, laws, coverage, refusals."""

import dataclasses
import math
from pathlib import Path

import numpy as np
import pytest
import tomli_w
from stillshaft.dsp import vectors
from stillshaft.solver import correction
from stillshaft.solver.influence import fit
from stillshaft.solver.runs import RunsError
from stillshaft.solver.runs_append import append_run
from stillshaft.solver.runs_file import load_runs

RAO = Path(__file__).parents[2] / "fixtures" / "rao_two_plane.toml"


def polar(z):
    amplitude, phase_deg = vectors.amplitude_phase(complex(z))
    return {"amplitude": amplitude, "phase": phase_deg}


def write(path, rows, planes=("left", "right"), points=("A", "B"), **more):
    """A runs file from (name, vectors, masses) rows."""
    table = {
        "format": 1,
        "repeatability": "0.5 % 0.5 deg",
        "placement": "0 % 0 deg",
        "plane": [{"name": p, "radius": "200 mm"} for p in planes],
        "run": [
            {
                "name": name,
                "speed_rpm": 1500.0,
                "vectors": {p: polar(z) for p, z in zip(points, measured, strict=True)},
                "masses": {
                    p: {"mass": abs(w), "angle": math.degrees(np.angle(w))}
                    for p, w in zip(planes, masses, strict=True)
                    if w
                },
            }
            for name, measured, masses in rows
        ],
    } | more
    path.write_text(tomli_w.dumps(table))
    return load_runs(path)


def complex_masses(solution):
    return np.array([vectors.vector(c.mass, c.angle_deg) for c in solution.corrections])


def test_two_plane_example_of_a_textbook():
    """S. S. Rao, Mechanical Vibrations, two-plane balancing example (from memory): printed, and recomputed here."""
    solution = correction.solve(load_runs(RAO))
    left, right = solution.corrections
    assert (left.mass, right.mass) == (pytest.approx(10.0561, abs=5e-4), pytest.approx(5.8774, abs=5e-4))
    assert (left.angle_deg, right.angle_deg) == (pytest.approx(325.555, abs=5e-4), pytest.approx(68.256, abs=5e-4))
    assert left.mass == pytest.approx(10.0561387, abs=1e-6)
    assert right.angle_deg == pytest.approx(68.255934, abs=1e-6)
    assert solution.condition_number == pytest.approx(2.34, abs=5e-3)
    found = {(i.point, i.plane): (i.amplitude, i.angle_deg) for i in solution.influence}
    assert found["A", "left"] == (pytest.approx(0.80711, abs=1e-5), pytest.approx(287.6435, abs=1e-4))
    assert found["B", "right"] == (pytest.approx(0.62350, abs=1e-5), pytest.approx(302.0988, abs=1e-4))
    assert all(p.amplitude == pytest.approx(0.0, abs=1e-9) for p in solution.predicted)


def test_exact_single_plane_case(tmp_path):
    """Constructed: v0 = 10∠0°, 5 g at 0° gives 10∠60°, so 5 g at 60° is needed."""
    runs = write(
        tmp_path / "r.toml",
        [("initial", [10.0], [0]), ("trial", [vectors.vector(10.0, 60.0)], [5.0])],
        ("disc",),
        ("A",),
    )
    only = correction.solve(runs).corrections[0]
    assert (only.mass, only.angle_deg) == (pytest.approx(5.0), pytest.approx(60.0))


H = np.array([[0.5 + 0.1j, 0.2j], [0.1 - 0.3j, -0.6 + 0.2j]])
V0 = np.array([5.0 + 2.0j, -3.0 + 4.0j])
TRIALS = [("initial", (0, 0)), ("trial left", (6.0, 0)), ("trial right", (0, 5.0j))]


def simulated(path, masses=TRIALS, turn=1.0, scale=1.0, **more):
    return write(path, [(name, scale * turn * (V0 + H @ np.array(w)), w) for name, w in masses], **more)


def test_trial_masses_left_on_give_the_same_answer(tmp_path):
    off = correction.solve(simulated(tmp_path / "off.toml"))
    left_on = [("initial", (0, 0)), ("trial left", (6.0, 0)), ("trial right", (6.0, 5.0j))]
    on = correction.solve(simulated(tmp_path / "on.toml", left_on))
    np.testing.assert_allclose(complex_masses(on), complex_masses(off), rtol=1e-9)
    additional = [vectors.vector(c.mass, c.angle_deg) for c in on.additional]
    np.testing.assert_allclose(additional, complex_masses(on) - np.array([6.0, 5.0j]), rtol=1e-9)


def test_moving_the_pulse_sensor_leaves_the_masses(tmp_path):
    plain = correction.solve(simulated(tmp_path / "a.toml"))
    turned = correction.solve(simulated(tmp_path / "b.toml", turn=np.exp(1j * np.deg2rad(37.0))))
    np.testing.assert_allclose(complex_masses(turned), complex_masses(plain), rtol=1e-9)


def test_the_unit_of_vibration_leaves_the_masses(tmp_path):
    plain = correction.solve(simulated(tmp_path / "a.toml"))
    scaled = correction.solve(simulated(tmp_path / "b.toml", scale=39.37, vibration_unit="in/s peak"))
    np.testing.assert_allclose(complex_masses(scaled), complex_masses(plain), rtol=1e-9)


def test_repeated_runs_make_the_fit_checkable(tmp_path):
    exact = correction.solve(simulated(tmp_path / "a.toml"))
    assert exact.consistency.chi_square is None
    assert any("not checkable yet" in w for w in exact.warnings)
    repeated = correction.solve(simulated(tmp_path / "b.toml", [*TRIALS, ("repeat", (0, 0))]))
    assert repeated.consistency.chi_square == pytest.approx(0.0, abs=1e-6)
    assert repeated.consistency.degrees_of_freedom == 4
    wrong = simulated(tmp_path / "c.toml", [*TRIALS, ("check", (-5.0, 3.0))])
    broken = dataclasses.replace(wrong.runs[-1], masses=wrong.runs[-1].masses * np.exp(1j * np.pi / 2))
    doubted = correction.solve(dataclasses.replace(wrong, runs=(*wrong.runs[:-1], broken)))
    assert doubted.consistency.p_value < 0.01
    assert any("do not fit each other" in w for w in doubted.warnings)


def noisy(path, rng, masses, relative, tilt):
    rows = []
    for name, w in masses:
        z = V0 + H @ np.array(w)
        rows.append((name, z * (1 + relative * rng.standard_normal(2)) * np.exp(1j * tilt * rng.standard_normal(2)), w))
    return write(path, rows, repeatability=f"{100 * relative:g} % {math.degrees(tilt):.6f} deg")


@pytest.mark.long
def test_intervals_cover_and_fits_are_doubted_as_often_as_they_say(tmp_path):
    """300 jobs with 2 %, 2 % (in rad) scatter; binomial bounds of 1 in 1000."""
    rng, truth = np.random.default_rng(5), -np.linalg.solve(H, V0)
    covered, doubted, jobs = 0, 0, 300
    for _ in range(jobs):
        solution = correction.solve(noisy(tmp_path / "r.toml", rng, [*TRIALS, ("repeat", (0, 0))], 0.02, 0.02))
        for c, w in zip(solution.corrections, truth, strict=True):
            covered += abs(c.mass - abs(w)) <= c.mass_ci95
        doubted += solution.consistency.p_value < 0.05
    assert 0.91 <= covered / (2 * jobs) <= 0.99
    assert doubted / jobs <= 0.10


@pytest.mark.long
def test_intervals_cover_where_placing_is_the_largest_error(tmp_path):
    """400 jobs, 1 % and 2° of placing error unlike along and across, 0.2 % of scatter; binomial bounds of 1 in 1000."""
    rng, truth = np.random.default_rng(6), -np.linalg.solve(H, V0)
    mass_covered, angle_covered, jobs = 0, 0, 400
    for _ in range(jobs):
        rows = []
        for name, w in TRIALS:
            tilt = np.exp(1j * np.deg2rad(2.0) * rng.standard_normal(2))
            placed = np.array(w) * (1 + 0.01 * rng.standard_normal(2)) * tilt
            scatter = rng.standard_normal(2) + 1j * rng.standard_normal(2)
            rows.append((name, (V0 + H @ placed) * (1 + 0.002 * scatter), w))
        runs = write(tmp_path / "r.toml", rows, repeatability="0.2 % 0.114592 deg", placement="1 % 2 deg")
        for c, w in zip(correction.solve(runs).corrections, truth, strict=True):
            mass_covered += abs(c.mass - abs(w)) <= c.mass_ci95
            off = np.angle(vectors.vector(1.0, c.angle_deg) / w, deg=True)
            angle_covered += abs(off) <= c.angle_ci95_deg
    assert 0.92 <= mass_covered / (2 * jobs) <= 0.98
    assert 0.92 <= angle_covered / (2 * jobs) <= 0.98


@pytest.mark.parametrize("variance", [1e12, 1e24])
def test_a_run_that_says_nothing_leaves_the_masses_open(tmp_path, variance):
    runs = simulated(tmp_path / "r.toml")
    for matrix in (np.eye(4), np.ones((4, 4)), np.diag([1.0, 0.0, 0.0, 1.0])):
        initial = dataclasses.replace(runs.runs[0], covariance=variance * matrix)
        solution = correction.solve(dataclasses.replace(runs, runs=(initial, *runs.runs[1:])))
        assert not solution.trusted
        assert not any(c.determined for c in solution.corrections)


def test_planes_that_do_the_same_are_not_told_apart(tmp_path):
    rng = np.random.default_rng(3)
    h = np.array([[1.0, 1.001], [0.5j, 0.5005j]])
    rows = [(n, (V0 + h @ np.array(w)) * (1 + 0.01 * rng.standard_normal(2)), w) for n, w in TRIALS]
    solution = correction.solve(write(tmp_path / "r.toml", rows, repeatability="1 % 0.6 deg"))
    assert len(solution.reasons) == 2
    assert all("cannot be told from the other planes'" in reason for reason in solution.reasons)


def test_fewer_points_than_planes_determine_nothing(tmp_path):
    rows = [(n, [V0[0] + H[0] @ np.array(w)], w) for n, w in TRIALS]
    solution = correction.solve(write(tmp_path / "r.toml", rows, points=("A",)))
    assert all("fewer points than planes" in reason for reason in solution.reasons)
    assert not solution.trusted


@pytest.mark.parametrize(("unit", "grows"), [("um p-p", 1.0), ("mm/s rms", 5.0), ("m/s^2 peak", 25.0)])
def test_runout_is_taken_off_displacement_points_only(tmp_path, unit, grows):
    """Runout keeps its displacement at any speed: five times the speed shows it 5^n-fold in the nth derivative."""
    runout = np.array([0.2 - 0.1j, 0.3j])
    rows = [(n, V0 + H @ np.array(w) + runout * grows * np.array([1, 0]), w) for n, w in TRIALS]
    quantities = [{"name": "A", "quantity": "displacement"}, {"name": "B", "quantity": "velocity"}]
    write(tmp_path / "r.toml", [("roll", runout, (0, 0)), *rows], point=quantities, vibration_unit=unit)
    text = (tmp_path / "r.toml").read_text().replace("speed_rpm = 1500.0", 'kind = "slow roll"\nspeed_rpm = 300.0', 1)
    (tmp_path / "r.toml").write_text(text)
    runs = load_runs(tmp_path / "r.toml")
    np.testing.assert_allclose([run.vectors for run in runs.runs], [V0 + H @ np.array(w) for _, w in TRIALS], rtol=1e-9)
    assert [run.name for run in runs.runs] == [name for name, _ in TRIALS]


def test_a_runout_that_is_hardly_known_leaves_its_points_hardly_known(tmp_path):
    """The large error of the slow roll and the small scatter of the runs do not turn into a negative variance."""
    quantities = [{"name": "A", "quantity": "displacement"}, {"name": "B", "quantity": "velocity"}]
    rows = [(n, V0 + H @ np.array(w), w) for n, w in TRIALS]
    write(tmp_path / "r.toml", [("roll", V0, (0, 0)), *rows], point=quantities, vibration_unit="um p-p")
    text = (tmp_path / "r.toml").read_text().replace("speed_rpm = 1500.0", 'kind = "slow roll"\nspeed_rpm = 300.0', 1)
    (tmp_path / "r.toml").write_text(text.replace("phase = ", "spread = 5e10\nphase = ", 1))
    runs = load_runs(tmp_path / "r.toml")
    assert all(np.linalg.eigvalsh(run.scatter).min() >= 0.0 for run in runs.runs)
    assert not correction.solve(runs).trusted


def test_a_trial_within_the_scatter_determines_nothing(tmp_path):
    rng = np.random.default_rng(1)
    weak = [("initial", (0, 0)), ("trial left", (0.05, 0)), ("trial right", (0, 5.0j))]
    solution = correction.solve(noisy(tmp_path / "r.toml", rng, weak, 0.02, 0.02))
    left, right = solution.corrections
    assert (left.determined, left.mass_ci95, left.angle_ci95_deg) == (False, None, None)
    assert not solution.trusted
    assert "left" in solution.reasons[0]
    assert "not determined, because" in solution.reasons[0]


def test_more_points_than_planes_leave_the_least_squares_rest(tmp_path):
    """numpy.linalg.lstsq as the reference."""
    rng = np.random.default_rng(2)
    h, v0 = (rng.standard_normal(s) + 1j * rng.standard_normal(s) for s in ((4, 1), 4))
    points = tuple("ABCD")
    runs = write(tmp_path / "r.toml", [("i", v0, [0]), ("t", v0 + h[:, 0] * 3.0, [3.0])], ("disc",), points)
    solution = correction.solve(runs)
    reference = np.linalg.lstsq(h, -v0, rcond=None)[0]
    np.testing.assert_allclose(complex_masses(solution), reference, rtol=1e-9)
    np.testing.assert_allclose([p.amplitude for p in solution.predicted], np.abs(v0 + h @ reference), rtol=1e-9)


def test_json_holds_the_contracts_keys():
    whole = correction.to_json(correction.solve(load_runs(RAO)), "0")
    assert list(whole) == [
        "format", "verb", "version", "trusted", "reasons", "method", "corrections", "additional", "predicted", "influence",
        "condition_number", "fit", "warnings", "consistency", "trials", "alternatives", "proposed",
    ]  # fmt: skip
    assert list(whole["corrections"][0]) == [
        "plane", "mass", "unit", "angle_deg", "radius_mm", "mass_ci95", "angle_ci95_deg", "determined"
    ]  # fmt: skip
    assert list(whole["predicted"][0]) == ["point", "speed_rpm", "unit", "amplitude", "phase_deg", "amplitude_upper95"]
    assert list(whole["influence"][0]) == ["point", "plane", "speed_rpm", "amplitude", "angle_deg", "unit", "ci95"]


# the file


TEXT = RAO.read_text()
ASSUMED = "assumed_repeatability ="


@pytest.mark.parametrize(
    ("old", "new", "match"),
    [
        ("format = 1", "format = 1\ncolour = 2", "colour: unknown key"),
        ("format = 1", "", "format: is missing"),
        ("amplitude = 8.5", 'amplitude = "lots"', r"amplitude: must be a number, not a text"),
        ("amplitude = 8.5", "amplitude = nan", 'run "initial".vectors."A".amplitude: nan must be a finite number'),
        ("amplitude = 8.5", "amplitude = -8.5", "amplitude: -8.5 must be a finite number, 0 or more"),
        ("phase = 60.0", "phase = inf", "phase: inf must be a finite number"),
        (", phase = 60.0", "", "phase: is missing, but others have one"),
        ("angle = 270.0", 'angle = "up"', "angle: must be a number, not a text"),
        ("mass = 10.0", "mass = nan", 'run "trial left".masses."left".mass: nan'),
        ('"left" = { mass', '"middle" = { mass', '"middle" is no plane of this file; there is left, right'),
        ('"B" = { amplitude = 4.5', '"C" = { amplitude = 4.5', '"B" is not in every run'),
        ('name = "trial left"', 'name = "initial"', 'run 2.name: "initial" is empty or used twice'),
        ('name = "right"', 'name = "left"', 'plane 2.name: "left" is empty or used twice'),
        ('radius = "300 mm"', 'radius = "300 zorg"', '"300 zorg"'),
        ('radius = "300 mm"', 'radius = "-3 mm"', "must be above 0"),
        ('"mm/s rms"', '"mm/s"', "vibration_unit: .* needs a measure"),
        ('mass_unit = "g"', 'mass_unit = "hours"', "mass_unit"),
        ("speed_rpm = 1480.0", "speed_rpm = 0.0", "speed_rpm: 0.0 must be a finite number, 1 or more"),
        ("format = 1", 'format = 1\nrepeatability = "some"', 'repeatability: "some": write percent and degrees'),
        ("format = 1", f'format = 1\n{ASSUMED} "5 %"', 'assumed_repeatability: "5 %": write percent and degrees'),
        ("format = 1", f'format = 1\n{ASSUMED} "belt drive"', "assumed_repeatability: .* write percent and degrees"),
        (
            "format = 1",
            f'format = 1\n{ASSUMED} "5 % 95 deg: belt"',
            'assumed_repeatability: "5 % 95 deg": is above 100 %',
        ),
        (
            "format = 1",
            f'format = 1\n{ASSUMED} "5 % 5 deg:"',
            '"5 % 5 deg:": write why in one line of up to 100 letters',
        ),
        ("format = 1", f'format = 1\n{ASSUMED} "5 % 5 deg: a\\nb"', '"5 % 5 deg: a.*b": write why in one line'),
        (
            "format = 1",
            f'format = 1\n{ASSUMED} "5 % 5 deg: {101 * "x"}"',
            "write why in one line .* leave the colon out",
        ),
        ("format = 1", f"format = 1\n{ASSUMED} 5.0", "assumed_repeatability: must be a text or nothing, not a number"),
        (
            "format = 1",
            f'format = 1\n{ASSUMED} "5 % 5 deg"\nrepeatability = "2 % 2 deg"',
            'assumed_repeatability: "5 % 5 deg": repeatability is stated as well; keep one of the two',
        ),
        ("[[plane]]", "[[plane", "is not valid TOML"),
        ("mass = 10.0", "mass = 1e13", "1e\\+13 is too large, at most 1e\\+12; is it in the right unit"),
        ("mass = 10.0, angle = 270.0", "mass = 10.0, position = 3", "angle: is missing"),
        ("[[run]]", '[[limit]]\npoint = "A"\namplitude = 0\n[[run]]', 'limit "A".amplitude: 0 must be above 0'),
        ('name = "initial"', 'name = "initial"\nkind = "slow roll"', "a slow roll is taken off displacement points"),
    ],
)
def test_bad_runs_files_are_refused_in_one_line(tmp_path, old, new, match):
    assert old in TEXT
    path = tmp_path / "r.toml"
    path.write_text(TEXT.replace(old, new, 1))
    with pytest.raises(RunsError, match=match) as caught:
        load_runs(path)
    assert str(caught.value).startswith(str(path))
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize(
    ("names", "match"),
    [
        (["initial", "trial left"], 'no trial run with a mass on plane "right"'),
        (["trial left", "trial right"], "no initial run without masses|do not tell"),
        (["initial"], 'no trial run with a mass on plane "left"'),
    ],
)
def test_a_missing_run_is_named(tmp_path, names, match):
    with pytest.raises(RunsError, match=match):
        fit(simulated(tmp_path / "r.toml", [row for row in TRIALS if row[0] in names]))


def test_unknown_methods_are_refused():
    choices = "auto, least-squares, expected or minimax"
    with pytest.raises(correction.SolveError, match=f"method magic: cannot be used; choose {choices}"):
        correction.solve(load_runs(RAO), "magic")


def appended(path, name="check", **more):
    arguments = {
        "name": name, "speed_rpm": 1480.0, "vectors_by_point": {"A": 1.0 + 1.0j, "B": 0.5j}, "covariance": np.eye(4) * 1e-4,
        "degrees_of_freedom": 8, "masses": [("left", 3.0, 90.0)], "vibration_unit": "mm/s rms", "mass_unit": "g",
        "points": [{"name": "A"}, {"name": "B"}],
    }  # fmt: skip
    return append_run(path, **(arguments | more))


def test_appending_leaves_every_byte_before_it(tmp_path):
    path = tmp_path / "r.toml"
    path.write_text(TEXT)
    assert appended(path) == []
    assert path.read_text().startswith(TEXT)
    last = load_runs(path).runs[-1]
    np.testing.assert_allclose(last.vectors, [1.0 + 1.0j, 0.5j], rtol=1e-12)
    assert last.masses[0] == pytest.approx(3.0j)
    assert last.covariance[0, 0] > 1e-4


@pytest.mark.parametrize(("freedom", "scatter"), [(1e-316, 1e-4), (8, 1e-300)])
def test_scatter_from_next_to_nothing_is_scatter_all_the_same(tmp_path, freedom, scatter):
    (tmp_path / "r.toml").write_text(TEXT)
    appended(tmp_path / "r.toml", degrees_of_freedom=freedom, covariance=scatter * np.eye(4))
    runs = load_runs(tmp_path / "r.toml")
    assert runs.runs[-1].degrees_of_freedom >= 1.0
    assert correction.solve(runs).corrections


def test_appending_keeps_line_ends_and_takes_a_unit_spelled_otherwise(tmp_path):
    path = tmp_path / "r.toml"
    path.write_bytes(TEXT.replace("\n", "\r\n").encode())
    assert appended(path, vibration_unit="millimeter/second rms") == []
    assert path.read_bytes().startswith(TEXT.replace("\n", "\r\n").encode())
    assert load_runs(path).runs[-1].name == "check"


def test_appending_makes_a_file_and_names_new_planes(tmp_path):
    path = tmp_path / "new.toml"
    assert appended(path, "initial", masses=[]) == []
    assert appended(path, "trial") == ["left"]
    assert [p.name for p in load_runs(path).planes] == ["left"]


@pytest.mark.parametrize(
    ("more", "match"),
    [
        ({"name": "initial"}, "used twice"),
        ({"vibration_unit": "in/s peak"}, "vibration_unit is mm/s rms, but this run is in in/s peak"),
        ({"vectors_by_point": {"A": 1.0j}, "covariance": np.eye(2)}, '"B" is not in every run'),
        ({"vectors_by_point": {"A": complex(math.nan, 0.0), "B": 1.0j}}, "must be a finite number"),
    ],
)
def test_a_run_that_does_not_fit_leaves_the_file_as_it_was(tmp_path, more, match):
    path = tmp_path / "r.toml"
    path.write_text(TEXT)
    with pytest.raises(RunsError, match=match):
        appended(path, **more)
    assert path.read_text() == TEXT
    assert list(tmp_path.iterdir()) == [path]
