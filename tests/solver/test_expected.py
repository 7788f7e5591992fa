"""The least expected residual: against a numerical minimum, and on jobs whose planes do nearly the same."""

import numpy as np
import pytest
from scipy.optimize import minimize
from stillshaft.solver import correction
from stillshaft.solver.influence import fit, state_of
from test_solver import complex_masses, write

H = np.array([[0.8 + 0.2j, 0.7 + 0.3j], [0.3 - 0.5j, 0.35 - 0.4j], [0.5j, 0.1 + 0.45j]])
V0 = np.array([5.0 + 1.0j, -2.0 + 3.0j, 1.0 - 4.0j])


def runs_of(path, h=H, v0=V0, trial=3.0, noise=0.0, rng=None, placed=0.0, stated="2 % 2 deg"):
    """Initial run and a trial on each plane, with scatter of vectors and placing as stated."""
    planes = [f"plane {p}" for p in range(h.shape[1])]
    points = [f"point {m}" for m in range(h.shape[0])]
    rows = []
    for name, w in [
        ("initial", np.zeros(len(planes))),
        *((f"trial {p}", trial * np.eye(len(planes))[p]) for p in range(len(planes))),
    ]:
        real = w.astype(complex)
        if rng is not None:
            real = real * (1 + placed * (rng.standard_normal(w.size) + 1j * rng.standard_normal(w.size)))
        z = v0 + h @ real
        if rng is not None:
            z = z * (1 + noise * rng.standard_normal(z.size)) * np.exp(1j * noise * rng.standard_normal(z.size))
        rows.append((name, z, w))
    return write(path, rows, planes, points, repeatability=stated, placement="1 % 2 deg")


def test_it_is_the_least_of_what_is_to_be_expected(tmp_path):
    """|v0 + H·w|² with half of the scatter of v0 and H, and half of the placing's, minimised by scipy."""
    runs = runs_of(tmp_path / "r.toml")
    (fitted,) = fit(runs)
    relative, angle = runs.placement

    def expected(x):
        w = x[0::2] + 1j * x[1::2]
        state = state_of(fitted, 1.0, w)
        scatter = np.trace(state @ fitted.covariance @ state.T)
        placed = (relative**2 + angle**2) * np.sum(np.abs(fitted.influence * w) ** 2)
        return np.sum(np.abs(fitted.initial + fitted.influence @ w) ** 2) + 0.5 * (scatter + placed)

    found = complex_masses(correction.solve(runs, "expected"))
    start = np.column_stack([found.real, found.imag]).ravel() * 0.7
    best = minimize(expected, start, method="BFGS", options={"gtol": 1e-9}).x
    np.testing.assert_allclose(found, best[0::2] + 1j * best[1::2], rtol=1e-4)
    assert correction.solve(runs, "expected").method == "expected"


def test_without_scatter_it_is_least_squares(tmp_path):
    rows = [("initial", V0, [0, 0]), ("a", V0 + 3 * H[:, 0], [3, 0]), ("b", V0 + 3 * H[:, 1], [0, 3])]
    runs = write(
        tmp_path / "r.toml", rows, points=("A", "B", "C"), repeatability="0.0001 % 0.0001 deg", placement="0 % 0 deg"
    )
    expected, least = (complex_masses(correction.solve(runs, m)) for m in ("expected", "least-squares"))
    np.testing.assert_allclose(expected, least, rtol=1e-4)


@pytest.mark.long
def test_nearly_dependent_planes_are_left_better_and_with_less_mass(tmp_path):
    """Residual that 95 % of jobs stay below, condition about 30 (project's methods: 57 against 22 %)."""
    rng = np.random.default_rng(0)
    rest = {"least-squares": [], "expected": []}
    mass = {"least-squares": [], "expected": []}
    chosen = []
    for number in range(150):
        base = rng.standard_normal(2) + 1j * rng.standard_normal(2)
        h = np.column_stack([base, base * (1 + 0.1 * (rng.standard_normal(2) + 1j * rng.standard_normal(2)))])
        v0 = rng.standard_normal(2) + 1j * rng.standard_normal(2)
        trial = 0.5 * np.abs(v0).max() / np.abs(h).max()
        runs = runs_of(tmp_path / f"{number}.toml", h, v0, trial, 0.02, rng, 0.025)
        for method in rest:
            w = complex_masses(correction.solve(runs, method))
            rest[method].append(np.linalg.norm(v0 + h @ w) / np.linalg.norm(v0))
            mass[method].append(np.linalg.norm(w))
        chosen.append(correction.solve(runs).method)
    worst = {m: np.quantile(r, 0.95) for m, r in rest.items()}
    assert worst["expected"] < 0.7 * worst["least-squares"]
    worse = {m: np.mean(np.array(r) > 1.0) for m, r in rest.items()}
    assert worse["expected"] <= 0.5 * worse["least-squares"]
    assert np.median(np.array(mass["expected"]) / mass["least-squares"]) < 0.95
    assert chosen.count("expected") > 100


def test_auto_takes_it_for_three_planes_and_says_so(tmp_path):
    rng = np.random.default_rng(1)
    h = rng.standard_normal((4, 3)) + 1j * rng.standard_normal((4, 3))
    solution = correction.solve(runs_of(tmp_path / "r.toml", h, np.append(V0, 2.0 + 0j)))
    assert solution.method == "expected"
    assert any("three planes or more" in w for w in solution.warnings)
    two = correction.solve(runs_of(tmp_path / "s.toml", h[:3, :2]))
    assert two.method == "least-squares"


def test_a_method_that_there_is_not_is_refused(tmp_path):
    with pytest.raises(
        correction.SolveError, match="method luck: cannot be used; choose auto, least-squares, expected or minimax"
    ):
        correction.solve(runs_of(tmp_path / "r.toml"), "luck")
