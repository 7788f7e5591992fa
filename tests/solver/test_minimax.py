"""The least largest residual and least squares under caps: geometry by hand, other solvers, laws, proofs, refusals."""

import subprocess
import sys

import cvxpy
import numpy as np
import pytest
from scipy.optimize import linprog
from stillshaft.solver import capped, minimax

GAP = 1e-6


def complex_normal(rng, *shape):
    return rng.standard_normal(shape) + 1j * rng.standard_normal(shape)


def conditioned(rng, points, planes, condition):
    """Influence (points, planes) with singular values from 1 down to 1/condition."""
    k = min(points, planes)
    left, _ = np.linalg.qr(complex_normal(rng, points, k))
    right, _ = np.linalg.qr(complex_normal(rng, planes, k))
    return left @ np.diag(np.logspace(0, -np.log10(condition), k)) @ right.conj().T


# geometry by hand: with H = 1 at every point the masses −w are centres of circles around the vectors


@pytest.mark.parametrize(
    ("vibration", "radius", "centre", "binding"),
    [
        ([3.0, 1.0j], np.sqrt(10.0) / 2, 1.5 + 0.5j, (0, 1)),  # half the distance of two points
        ([0.0, 4.0, 2.0 + 0.5j], 2.0, 2.0, (0, 1)),  # obtuse: the longest side alone
        ([0.0, 1.0, np.exp(1j * np.pi / 3)], 1 / np.sqrt(3.0), 0.5 + 0.5j / np.sqrt(3.0), (0, 1, 2)),  # equilateral
        ([0.0, 3.0, 4.0j], 2.5, 1.5 + 2.0j, (0, 1, 2)),  # right-angled: Thales, all three on the circle
    ],
)
def test_one_plane_is_the_smallest_circle_around_the_vectors(vibration, radius, centre, binding):
    """Sylvester's smallest enclosing circle (plane geometry)."""
    found = minimax.minimax(np.array(vibration), np.ones((len(vibration), 1)))
    assert found.worst == pytest.approx(radius, abs=1e-7)
    assert found.lower_bound == pytest.approx(radius, abs=1e-7)
    assert complex(found.masses[0]) == pytest.approx(-centre, abs=1e-4)
    assert (found.binding, found.at_cap, found.status, found.reason) == (binding, (), "solved", None)


def test_weights_share_the_distance():
    """Two points, weights a and b: s₁·d₁ = s₂·d₂ on the segment between them, so s₁s₂d/(s₁ + s₂)."""
    found = minimax.minimax(np.array([0.0, 6.0]), np.ones((2, 1)), weights=np.array([1.0, 2.0]))
    assert found.worst == pytest.approx(4.0, abs=1e-7)
    assert complex(found.masses[0]) == pytest.approx(-4.0, abs=1e-6)


@pytest.mark.parametrize("cap", [1e-3, 1.0, 4.0, 9.999])
def test_a_cap_on_one_point_leaves_the_difference(cap):
    found = minimax.minimax(np.array([6.0 + 8.0j]), np.array([[1.0]]), caps=[cap])
    assert found.worst == pytest.approx(10.0 - cap, abs=1e-6)
    assert complex(found.masses[0]) == pytest.approx(-cap * (0.6 + 0.8j), rel=1e-4)
    assert found.at_cap == (0,)
    assert abs(found.masses[0]) <= cap


def test_two_planes_that_do_the_same_share_the_work_of_one():
    """10 is to be lifted by planes that take 3 and 5 and do exactly the same: 2 is left, whatever the condition."""
    found = minimax.minimax(np.array([10.0, 10.0]), np.ones((2, 2)), caps=[3.0, 5.0])
    np.testing.assert_allclose(found.masses, [-3.0, -5.0], rtol=1e-4)
    assert found.worst == pytest.approx(2.0, abs=1e-5)
    assert found.at_cap == (0, 1)


def test_what_can_be_removed_whole_leaves_nothing_and_binds_nothing():
    rng = np.random.default_rng(0)
    influence, masses = complex_normal(rng, 5, 2), complex_normal(rng, 2)
    found = minimax.minimax(-influence @ masses, influence)
    np.testing.assert_allclose(found.masses, masses, atol=1e-6)
    assert found.worst < 1e-6
    assert found.binding == ()


def test_a_plane_without_effect_and_a_rotor_at_rest_need_no_mass():
    found = minimax.minimax(np.array([1.0, 2.0j]), np.array([[1.0, 0.0], [1.0, 0.0]]))
    assert found.masses[1] == 0.0
    for solve in (minimax.minimax, capped.least_squares):
        still = solve(np.zeros(3), np.ones((3, 2)))
        assert not still.masses.any()
        assert (still.gap, still.status) == (0.0, "solved")
        alone = solve(np.array([1.0, 2.0j]), np.zeros((2, 2)))
        assert not alone.masses.any()
        assert (alone.gap, alone.status) == (0.0, "solved")


# other solvers


@pytest.mark.parametrize("seed", range(12))
def test_it_agrees_with_a_general_convex_solver(seed):
    rng = np.random.default_rng(seed)
    points, planes = int(rng.integers(1, 13)), int(rng.integers(1, 5))
    v, h, s = complex_normal(rng, points), complex_normal(rng, points, planes), rng.uniform(0.2, 3.0, points)
    caps = rng.uniform(0.05, 0.8, planes)
    w = cvxpy.Variable(planes, complex=True)
    rest = cvxpy.multiply(s, v + h @ w)
    limits = [cvxpy.abs(w) <= caps]
    top = np.abs(s * v).max()
    largest = cvxpy.Problem(cvxpy.Minimize(cvxpy.max(cvxpy.abs(rest))), limits)
    largest.solve(solver="CLARABEL")
    found = minimax.minimax(v, h, weights=s, caps=list(caps))
    assert found.worst == pytest.approx(largest.value, abs=GAP * top)
    assert found.gap <= GAP * top
    assert np.all(np.abs(found.masses) <= caps * (1 + 1e-12))
    squares = cvxpy.Problem(cvxpy.Minimize(cvxpy.sum_squares(rest)), limits)
    squares.solve(solver="CLARABEL")
    least = capped.least_squares(v, h, weights=s, caps=list(caps))
    whole = np.sum(np.abs(s * v) ** 2)
    assert least.value == pytest.approx(squares.value, abs=GAP * whole)
    assert least.gap <= GAP * whole
    np.testing.assert_allclose(least.masses, w.value, atol=1e-3)


@pytest.mark.parametrize("seed", range(4))
def test_polygons_by_linear_programming_bracket_it(seed):
    """Circles as 48-gons around and inside them, solved by scipy's linprog: the optimum lies between the two."""
    rng = np.random.default_rng(seed)
    v, h, caps = complex_normal(rng, 7), complex_normal(rng, 7, 2), np.array([0.3, 0.5])
    sides = np.exp(-2j * np.pi * np.arange(48) / 48)

    def polygon(shrink):
        rows, right = [], []
        for side in sides:
            moved = side * h
            rows.append(np.column_stack([-np.ones(7), moved.real, -moved.imag]))
            right.append(-(side * v).real)
            rows.append(np.column_stack([np.zeros(2), np.diag([side.real] * 2), np.diag([-side.imag] * 2)]))
            right.append(caps * shrink)
        return linprog([1, 0, 0, 0, 0], np.vstack(rows), np.concatenate(right), bounds=[(None, None)] * 5).fun

    inside = np.cos(np.pi / 48)
    found = minimax.minimax(v, h, caps=list(caps))
    assert polygon(1.0) <= found.worst + 1e-7
    assert found.lower_bound <= polygon(inside) / inside + 1e-7
    assert polygon(inside) / inside - polygon(1.0) < 0.01  # the bracket says something


def test_repeated_weighting_comes_to_the_same():
    """Lawson's iteration (1961, from memory): least squares with weights multiplied by the residuals."""
    rng = np.random.default_rng(3)
    v, h = complex_normal(rng, 9), complex_normal(rng, 9, 2)
    weights = np.ones(9)
    for _ in range(4000):
        root = np.sqrt(weights)
        w = np.linalg.lstsq(root[:, None] * h, -root * v, rcond=None)[0]
        weights *= np.abs(v + h @ w)
        weights /= weights.sum()
    assert minimax.minimax(v, h).worst == pytest.approx(np.abs(v + h @ w).max(), rel=1e-4)


def test_without_caps_least_squares_is_numpys_to_all_digits():
    rng = np.random.default_rng(4)
    v, h, s = complex_normal(rng, 8), complex_normal(rng, 8, 3), rng.uniform(0.5, 2.0, 8)
    found = capped.least_squares(v, h, weights=s, caps=[None, 100.0, None])
    np.testing.assert_array_equal(found.masses, np.linalg.lstsq(s[:, None] * h, -s * v, rcond=None)[0])
    assert found.at_cap == ()
    assert 0.0 <= found.gap <= 1e-8 * found.value


@pytest.mark.parametrize("seed", range(8))
def test_any_quadratic_is_at_its_least_under_caps(seed):
    """The general convex solver again, on wᴴGw + 2Re(gᴴw) as it stands."""
    rng = np.random.default_rng(seed)
    planes = int(rng.integers(1, 6))
    units = 10.0 ** rng.uniform(-2, 2, planes)  # of mass, unlike from plane to plane
    factor = complex_normal(rng, planes + 1, planes) * units
    gram, linear = factor.conj().T @ factor, factor.conj().T @ complex_normal(rng, planes + 1)
    caps = rng.uniform(0.05, 2.0, planes) * np.abs(linear) / np.real(np.diag(gram))
    found = capped.least_quadratic(gram, linear, list(caps))
    w = cvxpy.Variable(planes, complex=True)
    value = cvxpy.sum_squares((factor / units) @ w) + 2 * cvxpy.real((linear / units).conj() @ w)
    problem = cvxpy.Problem(cvxpy.Minimize(value), [cvxpy.abs(w) <= caps * units])
    problem.solve(solver="CLARABEL")
    assert found.value == pytest.approx(problem.value, rel=1e-6)
    assert found.gap <= GAP * abs(found.value)
    by_hand = np.real(found.masses.conj() @ gram @ found.masses + 2 * linear.conj() @ found.masses)
    assert found.value == pytest.approx(by_hand, rel=1e-9)


def test_a_quadratic_without_caps_is_solved_by_its_matrix():
    rng = np.random.default_rng(9)
    factor = complex_normal(rng, 5, 3)
    gram, linear = factor.conj().T @ factor, complex_normal(rng, 3)
    found = capped.least_quadratic(gram, linear)
    np.testing.assert_allclose(found.masses, -np.linalg.solve(gram, linear), rtol=1e-10)


# laws


@pytest.mark.parametrize("solve", [minimax.minimax, capped.least_squares])
def test_turns_units_and_order_change_nothing_else(solve):
    rng = np.random.default_rng(5)
    v, h, caps = complex_normal(rng, 7), complex_normal(rng, 7, 3), [0.2, None, 0.4]
    plain = solve(v, h, caps=caps)
    turn = np.exp(1j * np.deg2rad(37.0))
    close = {"rtol": 1e-4, "atol": 1e-5}
    np.testing.assert_allclose(solve(turn * v, turn * h, caps=caps).masses, plain.masses, **close)
    np.testing.assert_allclose(solve(turn * v, h, caps=caps).masses, turn * plain.masses, **close)
    np.testing.assert_allclose(solve(1e6 * v, 1e6 * h, caps=caps).masses, plain.masses, **close)
    grams = [None if c is None else 1e3 * c for c in caps]
    np.testing.assert_allclose(solve(v, 1e-3 * h, caps=grams).masses, 1e3 * plain.masses, **close)
    order, planes = rng.permutation(7), [2, 0, 1]
    shuffled = solve(v[order], h[np.ix_(order, planes)], caps=[caps[p] for p in planes])
    np.testing.assert_allclose(shuffled.masses, plain.masses[planes], **close)


# proofs


@pytest.mark.parametrize("cap", [None, 0.01, 1.0, 1e3, 1e6])
@pytest.mark.parametrize(("points", "planes"), [(1, 1), (1, 3), (2, 2), (4, 2), (24, 4), (80, 6)])
def test_the_gap_is_proven_however_alike_the_planes_are(points, planes, cap):
    """Condition 1 to 1e16, with vectors that can and that cannot be removed whole."""
    rng = np.random.default_rng(points * planes)
    for condition in (1.0, 1e4, 1e8, 1e12, 1e16):
        h = conditioned(rng, points, planes, condition)
        for v in (complex_normal(rng, points), -h @ complex_normal(rng, planes)):
            top = np.abs(v).max()
            caps = None if cap is None else list(cap * top / np.linalg.norm(h, axis=0) * rng.uniform(0.3, 2.0, planes))
            found = minimax.minimax(v, h, caps=caps)
            assert found.status == "solved"
            assert found.gap <= GAP * top
            assert found.worst == np.abs(v + h @ found.masses).max()
            least = capped.least_squares(v, h, caps=caps)
            assert least.status == "solved"
            assert least.gap <= GAP * np.sum(np.abs(v) ** 2)


def test_no_masses_come_below_a_bound_from_any_mix():
    rng = np.random.default_rng(6)
    tight = []
    for _ in range(300):
        v, h, caps = complex_normal(rng, 4), complex_normal(rng, 4, 2), rng.uniform(0.1, 1.0, 2)
        mix, off = complex_normal(rng, 4) * 10.0 ** rng.uniform(-2, 2), 0.1 * complex_normal(rng, 2)
        masses = capped.within(minimax.minimax(v, h, caps=list(caps)).masses / caps + off) * caps
        left = np.abs(v + h @ masses)
        assert minimax.lower_bound(v, h, caps, mix) <= left.max()
        assert minimax.lower_bound(v, h, caps, v + h @ masses) <= left.max()
        assert capped.squares_bound(v, h, caps, mix) <= np.sum(left**2)
        assert capped.squares_bound(v, h, caps, v + h @ masses) <= np.sum(left**2)
        tight.append(capped.squares_bound(v, h, caps, v + h @ masses) / np.sum(left**2))
    assert np.median(tight) > 0.3  # the bound says something


def test_without_a_proof_it_says_so(monkeypatch):
    """The cone solver gives up: no masses, and the same fields."""
    v, h = np.array([1.0, 2.0j]), np.array([[1.0], [0.5]])
    monkeypatch.setattr(minimax, "solve_cones", lambda *_: None)
    monkeypatch.setattr(capped, "solve_cones", lambda *_: None)
    lost = minimax.minimax(v, h)
    assert (lost.status, lost.worst, lost.lower_bound) == ("not proven", 2.0, 0.0)
    assert "found no proof" in lost.reason
    lost_squares = capped.least_squares(v, h, caps=[0.1])
    assert (lost_squares.status, lost_squares.value, lost_squares.lower_bound) == ("not proven", 5.0, 0.0)
    assert "found no proof" in lost_squares.reason


# limits


def test_a_limit_at_one_point_is_met_by_moving_vibration_to_others():
    v, h = np.array([4.0, 0.0]), np.ones((2, 1))
    least = np.linalg.lstsq(h, -v, rcond=None)[0]  # leaves 2 and 2
    check = minimax.limits_bind(v, h, least, [1.5, 3.0])
    assert (check.broken, check.can_be_met, check.blocking) == ((0,), True, ())
    assert check.minimax.worst == pytest.approx(4.0 / 4.5, abs=1e-6)
    assert "breaks the limit of one point" in check.sentence
    assert "89 % of the worst limit" in check.sentence


def test_limits_that_no_masses_meet_are_proven_so():
    v, h = np.array([4.0, 0.0]), np.ones((2, 1))
    check = minimax.limits_bind(v, h, np.array([-2.0]), [1.5, 1.5])
    assert (check.broken, check.can_be_met, check.blocking) == ((0, 1), False, (0, 1))
    assert "no masses meet all of them: 133 % of a limit is the least with these planes" in check.sentence
    small = minimax.limits_bind(v, h, np.array([-1.0]), [2.5, 2.5], caps=[1.0])
    assert small.can_be_met is False
    assert "and the caps of the planes" in small.sentence


def test_limits_that_hold_are_left_alone():
    check = minimax.limits_bind(np.array([4.0, 0.0]), np.ones((2, 1)), np.array([-2.0]), [2.5, None])
    assert (check.broken, check.can_be_met) == ((), True)
    assert "meets every limit" in check.sentence


def test_a_limit_on_the_edge_is_too_close_to_tell():
    check = minimax.limits_bind(np.array([4.0, 0.0]), np.ones((2, 1)), np.array([-3.0]), [2.0 - 1e-12, 2.0 - 1e-12])
    assert check.can_be_met is None
    assert "too close to tell" in check.sentence


def test_a_point_without_a_limit_is_not_made_the_worst_of_all():
    """One plane clears the limited point whole, at the price of 40 at the other: that is not offered."""
    v, h = np.array([4.0, 1.0]), np.array([[1.0], [10.0]])
    check = minimax.limits_bind(v, h, np.array([0.0]), [0.5, None])
    assert check.can_be_met is False
    assert abs(v[1] + h[1, 0] * check.minimax.masses[0]) < 4.0 * check.minimax.worst * (1 + 1e-6)


# refusals


@pytest.mark.parametrize(
    ("arguments", "more", "match"),
    [
        (([1.0, 2.0], [[1.0]]), {}, r"vibration \(2,\) and influence \(1, 1\): must be \(M,\) and \(M, P\)"),
        (([], np.zeros((0, 1))), {}, "with a point or more"),
        (([np.nan], [[1.0]]), {}, "a value is not finite"),
        (([1.0], [[1.0]]), {"weights": [-1.0]}, "finite number, 0 or more, for each of the 1 points"),
        (([1.0], [[1.0]]), {"caps": [0.0]}, "a mass above 0, or None, for each of the 1 planes"),
        (([1.0], [[1.0]]), {"caps": [1.0, 1.0]}, "for each of the 1 planes"),
    ],
)
def test_what_cannot_be_solved_is_refused(arguments, more, match):
    for solve in (minimax.minimax, capped.least_squares):
        with pytest.raises(capped.ConeError, match=match):
            solve(*arguments, **more)


@pytest.mark.parametrize(
    ("gram", "linear", "match"),
    [
        ([[1.0, 0.0]], [1.0], r"must be finite \(P, P\) and \(P,\)"),
        ([[1.0, 1.0], [0.0, 1.0]], [1.0, 1.0], "is not Hermitian"),
        ([[1.0, 0.0], [0.0, -1.0]], [1.0, 1.0], "curves downwards"),
        ([[1.0, 2.0], [2.0, 1.0]], [1.0, 1.0], "curves downwards"),
        ([[1.0, 1.0], [1.0, 1.0]], [1.0, -1.0], "falls without end where it is flat"),
    ],
)
def test_a_quadratic_without_a_least_is_refused(gram, linear, match):
    with pytest.raises(capped.ConeError, match=match):
        capped.least_quadratic(np.array(gram), np.array(linear))


@pytest.mark.parametrize(
    ("limits", "match"), [([1.0], "each of the 2 points"), ([None, None], "none of the points has")]
)
def test_limits_that_say_nothing_are_refused(limits, match):
    with pytest.raises(capped.ConeError, match=match):
        minimax.limits_bind(np.ones(2), np.ones((2, 1)), np.zeros(1), limits)


def test_the_cone_solver_is_loaded_only_when_it_is_needed():
    code = "import sys, stillshaft.solver.minimax; print('clarabel' in sys.modules, 'scipy.sparse' in sys.modules)"
    said = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert said.stdout.split() == ["False", "False"]
