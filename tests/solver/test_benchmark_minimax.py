"""The least largest residual and the choice of unknowns: time, proof, and what is truly left over many jobs."""

import cvxpy
import numpy as np
import pytest
from figures.record import cpu_beside, quantile_error
from stillshaft.solver import capped, couple, minimax
from stillshaft.solver.influence import fit
from test_expected import runs_of

pytestmark = pytest.mark.benchmark

GAP = 1e-6


def complex_normal(rng, *shape):
    return rng.standard_normal(shape) + 1j * rng.standard_normal(shape)


@pytest.mark.parametrize(
    ("planes", "points", "speeds", "wanted_s", "most"),
    [
        (2, 4, 1, 0.015, 600.0),
        (3, 8, 10, 0.015, 250.0),
        (4, 12, 10, 0.015, 250.0),
        (6, 24, 20, 1.0, 1000.0),
        (10, 60, 10, 1.0, 1000.0),
        (10, 60, 30, 1.0, 1000.0),
    ],
)
def test_time_and_proof(planes, points, speeds, wanted_s, most, figure):
    """Wanted: 15 ms to 120 rows, 1 s at 1800 rows, gap 1e-6 of the largest vibration."""
    rng = np.random.default_rng(planes * speeds)
    rows = points * speeds
    v, h = complex_normal(rng, rows), complex_normal(rng, rows, planes)
    caps = list(0.5 * np.abs(np.linalg.lstsq(h, -v, rcond=None)[0]))
    own, held = minimax.minimax(v, h), minimax.minimax(v, h, caps=caps)
    least = capped.least_squares(v, h, caps=caps)

    def modelled():
        masses = cvxpy.Variable(planes, complex=True)
        return cvxpy.Problem(cvxpy.Minimize(cvxpy.max(cvxpy.abs(v + h @ masses)))).solve(solver="CLARABEL")

    def plain():
        for _ in range(10):
            np.linalg.lstsq(h, -v, rcond=None)

    top = np.abs(v).max()
    by_model = modelled()
    plain()  # the first call is not counted
    size = f"{planes} planes, {rows} rows"
    model_s, _ = cpu_beside(modelled, plain, 5)
    for name, act, textbook in (
        ("minimax", lambda: minimax.minimax(v, h), ("modelled in cvxpy", model_s)),
        ("minimax with caps", lambda: minimax.minimax(v, h, caps=caps), None),
        ("least squares with caps", lambda: capped.least_squares(v, h, caps=caps), None),
    ):
        spent, ten = cpu_beside(act, plain, 9)
        figure.cost(f"{name}, {size}", spent, ("numpy.linalg.lstsq of the size", ten / 10), at_most=most, wanted_s=wanted_s,
                    textbook=textbook)  # fmt: skip
    for name, found in (("minimax", own), ("minimax with caps", held)):
        assert found.status == "solved"
        figure(f"proven gap of {name}, {size}", found.gap / top, "of the largest vibration", at_most=GAP)
    figure(f"proven gap of least squares with caps, {size}", least.gap / np.sum(np.abs(v) ** 2), "of the squares")
    figure(f"cvxpy off by, {size}", abs(by_model - own.worst) / top, "of the largest vibration", at_most=1e-5)


def test_the_gap_over_many_problems(figure):
    """2000 problems: 1–6 planes, 1–40 rows, condition 1–1e16, caps none to tight, consistent and not."""
    rng, worst, worst_squares, count = np.random.default_rng(1), 0.0, 0.0, figure.count(2000)
    for _ in range(count):
        planes, points = int(rng.integers(1, 7)), int(rng.integers(1, 41))
        k = min(planes, points)
        left, _ = np.linalg.qr(complex_normal(rng, points, k))
        right, _ = np.linalg.qr(complex_normal(rng, planes, k))
        h = left @ np.diag(np.logspace(0, -rng.uniform(0, 16), k)) @ right.conj().T
        v = -h @ complex_normal(rng, planes) if rng.random() < 0.3 else complex_normal(rng, points)
        top, weights = np.abs(v).max(), 10.0 ** rng.uniform(-1, 1, points)
        natural = top / np.linalg.norm(h, axis=0)
        caps = [None if rng.random() < 0.3 else float(c) for c in natural * 10.0 ** rng.uniform(-2, 6, planes)]
        found = minimax.minimax(v, h, weights=weights, caps=caps)
        worst = max(worst, found.gap / np.abs(weights * v).max())
        squares = capped.least_squares(v, h, weights=weights, caps=caps)
        worst_squares = max(worst_squares, squares.gap / np.sum(np.abs(weights * v) ** 2))
    figure("largest proven gap of minimax over problems of every kind", worst, "of the largest vibration", at_most=GAP,
           cases=count)  # fmt: skip
    figure("largest proven gap of least squares with caps over them", worst_squares, "of the squares", at_most=GAP,
           cases=count)  # fmt: skip


def job(rng, planes):
    """A shaft of sine modes with unbalance along it: initial vectors, influence, more points than planes."""
    points = planes + int(rng.integers(1, planes + 3))
    at = np.arange(1, 6)
    shape = np.sin(np.pi * np.outer(rng.uniform(0.05, 0.95, points), at))
    lift = np.sin(np.pi * np.outer(np.linspace(0.15, 0.85, planes) + rng.uniform(-0.05, 0.05, planes), at))
    load = np.sin(np.pi * np.outer(rng.uniform(0.05, 0.95, 8), at))
    ratio = rng.uniform(0.4, 2.5) / at**2 * rng.uniform(0.8, 1.2, 5)
    receptance = ratio**2 / (1.0 - ratio**2 + 2j * rng.uniform(0.03, 0.1, 5) * ratio)
    return (shape * receptance) @ (load.T @ complex_normal(rng, 8)), (shape * receptance) @ lift.T


@pytest.mark.parametrize("planes", [1, 2, 3, 4])
def test_what_is_truly_left(planes, tmp_path, figure):
    """400 jobs of each, 1–3 % and deg scatter, trial effects 0.15–1: largest true residual, % of the largest at first."""
    rng = np.random.default_rng(10 + planes)
    left = {"least squares": [], "expected": [], "minimax": []}
    in_model = []
    foretold = []
    count = figure.count(400)
    for _ in range(count):
        v0, h = job(rng, planes)
        top, scatter = np.abs(v0).max(), rng.uniform(0.01, 0.03)
        sizes = rng.uniform(0.15, 1.0, planes) * top / np.abs(h).max(axis=0)
        stated = f"{100 * scatter:.6f} % {np.rad2deg(scatter):.6f} deg"
        runs = runs_of(tmp_path / "r.toml", h * sizes, v0, 1.0, scatter, rng, 0.025, stated)
        (fitted,) = fit(runs)
        least = np.linalg.lstsq(fitted.influence, -fitted.initial, rcond=None)[0]
        choice = couple.Basis(couple.ALL, np.eye(planes, dtype=complex))
        (expected,) = couple.ranked((fitted,), [choice], runs.placement, np.ones(planes))
        best = minimax.minimax(fitted.initial, fitted.influence)
        # the correction is placed as well as the trials were
        placed = 1.0 + 0.025 * complex_normal(rng, planes)
        for name, masses in (("least squares", least), ("expected", expected.masses), ("minimax", best.masses)):
            left[name].append(np.abs(v0 + h * sizes @ (placed * masses)).max() / top)
        in_model.append(np.abs(fitted.initial + fitted.influence @ least).max() / best.worst)
        true = np.mean(np.abs(v0 + h * sizes @ (placed * expected.masses)) ** 2)
        foretold.append((true / top**2, expected.rms**2 / top**2))
        assert best.gap <= GAP * top
    textbook = left["least squares"]
    for name in ("expected", "minimax"):
        for part, word in ((0.5, "median"), (0.9, "90 %")):
            figure(f"largest true residual, {planes} planes, {name}, {word}", 100 * np.quantile(left[name], part),
                   "% of the largest", textbook=("least squares", 100 * np.quantile(textbook, part)), cases=count,
                   error=100 * quantile_error(left[name], part), better="lower")  # fmt: skip
    for part, word in ((0.5, "median"), (0.9, "90 %")):
        figure(f"least squares over minimax in the model, {planes} planes, {word}", np.quantile(in_model, part), "times",
               cases=count)  # fmt: skip
    figure(f"least squares over minimax in the model, {planes} planes, least", min(in_model), "times", at_least=1.0,
           slack=1e-6)  # fmt: skip
    mean_true, mean_foretold = np.mean(foretold, axis=0)
    figure(f"true over foretold mean square, {planes} planes", mean_true / mean_foretold, cases=count)
    # what is offered is never called safer: it must not be much better than the default either
    figure(f"the default's residual over the minimax's, {planes} planes, 90 %",
           np.quantile(left["expected"], 0.9) / np.quantile(left["minimax"], 0.9), at_most=1.1, cases=count)  # fmt: skip


@pytest.mark.parametrize(("points", "condition"), [(2, 10.0), (2, 30.0), (4, 10.0), (4, 30.0)])
def test_nearly_dependent_planes(points, condition, tmp_path, figure):
    """400 jobs, two planes, trial effect 0.5, 2 % and deg scatter: true rms left, and jobs left worse than at first."""
    rng = np.random.default_rng(int(condition) + points)
    left = {"least squares": [], "expected": [], "first in rank": [], "proposal": [], "best single plane": []}
    radii, count = np.ones(2), figure.count(400)
    for _ in range(count):
        outer, _ = np.linalg.qr(complex_normal(rng, points, 2))
        inner, _ = np.linalg.qr(complex_normal(rng, 2, 2))
        h = outer @ np.diag([1.0, 1.0 / condition]) @ inner
        v0 = complex_normal(rng, points)
        sizes = 0.5 * np.abs(v0).max() / np.abs(h).max(axis=0)
        runs = runs_of(tmp_path / "r.toml", h * sizes, v0, 1.0, 0.02, rng, 0.025)
        (fitted,) = fit(runs)
        ranking = couple.ranked((fitted,), couple.bases(("a", "b"), radii), runs.placement, radii)
        named = {a.name: a.masses for a in ranking}
        chosen = couple.proposal(ranking)
        taken = {
            "least squares": np.linalg.lstsq(fitted.influence, -fitted.initial, rcond=None)[0],
            "expected": named[couple.ALL],
            "first in rank": ranking[0].masses,
            "proposal": ranking[0].masses if chosen is None else chosen.alternative.masses,
            "best single plane": next(a.masses for a in ranking if a.name.endswith('" alone')),
        }
        placed = 1.0 + 0.025 * complex_normal(rng, 2)
        for name, masses in taken.items():
            left[name].append(np.linalg.norm(v0 + h * sizes @ (placed * masses)) / np.linalg.norm(v0))
    p95 = {n: np.quantile(r, 0.95) for n, r in left.items()}
    said = f"2 planes × {points} points, condition {condition:.0f}"
    for name, rows in left.items():
        if name == "least squares":
            continue
        figure(f"rms left, {said}, {name}, 95 %", 100 * p95[name], "% of the first", cases=count, better="lower",
               error=100 * quantile_error(rows, 0.95), textbook=("least squares", 100 * p95["least squares"]))  # fmt: skip
        figure(f"left worse than at first, {said}, {name}", 100 * np.mean(np.array(rows) > 1.0), "%", cases=count,
               share=True, better="lower",
               textbook=("least squares", 100 * np.mean(np.array(left["least squares"]) > 1.0)))  # fmt: skip
    figure(
        f"first in rank over expected, {said}, 95 %", p95["first in rank"] / p95["expected"], at_most=1.05, cases=count
    )
    figure(
        f"expected over least squares, {said}, 95 %", p95["expected"] / p95["least squares"], at_most=1.02, cases=count
    )
