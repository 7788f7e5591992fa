"""Pieces to positions: every combination tried out, integer programmes, laws, what stock and positions allow, refusals."""

import dataclasses
import math

import cvxpy
import numpy as np
import pytest
from placing import job, kept_to, residual, tried_out
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.spatial import cKDTree
from stillshaft.dsp import vectors
from stillshaft.solver import enumeration
from stillshaft.solver.placement import PROVEN, Placed, PlacementError, Places, choose, turned
from stillshaft.solver.runs import StockMass

FEW = [StockMass(7.0, 2), StockMass(13.0, 1), StockMass(30.0, 2)]


def even(positions, **more):
    return Places(tuple(360.0 * k / positions for k in range(positions)), **more)


def largest(curve, pieces):
    return curve.choices[min(pieces, len(curve.choices) - 1)].largest


@pytest.mark.parametrize("seed", range(4))
@pytest.mark.parametrize(
    ("planes", "points", "positions", "most"), [(1, 1, 5, 4), (1, 3, 6, 4), (2, 2, 3, 4), (2, 5, 4, 3), (3, 4, 3, 3)]
)
def test_every_combination_tried_out_finds_no_better(seed, planes, points, positions, most):
    base, influence, _, _ = job(seed, planes, positions, points)
    place = even(
        positions, leverages=(1.0, 0.7) if planes == 1 else (1.0,), per_position=2, position_cap=40.0, cap=55.0
    )
    places, stock = [place] * planes, FEW if planes == 1 else FEW[:2]
    reference = tried_out(base, influence, places, stock, most)
    curve = choose(base, influence, places, stock, most=most)
    assert all(c.optimal for c in curve.choices)
    for pieces, best in enumerate(reference):
        assert best - 1e-9 <= largest(curve, pieces) <= best + PROVEN * curve.scale
    for choice, best in zip(curve.choices, reference, strict=False):
        assert choice.bound <= best + 1e-9
        assert kept_to(choice.pieces, places, stock)


def integer_programme(base, influence, places, stock, most):
    """scipy.optimize.milp on 32 sides of each point's circle, with a side added where the answer touches it."""
    atoms = [(p, k, i) for p, x in enumerate(places) for k in range(len(x.angles_deg)) for i in range(len(stock))]
    effects = np.array(
        [influence[:, p] * stock[i].mass * vectors.vector(1.0, places[p].angles_deg[k]) for p, k, i in atoms]
    ).T
    n = len(atoms)
    limits = [([1.0 if a[2] == i else 0.0 for a in atoms], s.count) for i, s in enumerate(stock)] + [([1.0] * n, most)]
    for p, place in enumerate(places):
        for k in range(len(place.angles_deg)):
            here = np.array([a[:2] == (p, k) for a in atoms], dtype=float)
            limits.append((here, place.per_position))
            limits.append((here * [stock[a[2]].mass for a in atoms], place.position_cap))
    fixed = LinearConstraint(
        np.column_stack([[r for r, _ in limits], np.zeros(len(limits))]), ub=[u for _, u in limits]
    )
    sides = [(m, angle) for m in range(base.size) for angle in 2.0 * np.pi * np.arange(32) / 32]
    for _ in range(10):
        turn = np.exp(-1j * np.array([a for _, a in sides]))
        rows = [m for m, _ in sides]
        left = np.column_stack([(turn[:, None] * effects[rows]).real, -np.ones(len(sides))])
        found = milp(
            np.eye(1, n + 1, n)[0],
            integrality=np.append(np.ones(n), 0),
            bounds=Bounds(0, np.append(np.full(n, 2.0), np.inf)),
            constraints=[fixed, LinearConstraint(left, ub=-(turn * base[rows]).real)],
            options={"mip_rel_gap": 1e-6},
        )
        assert found.status == 0
        rest = base + effects @ np.round(found.x[:n])
        if np.abs(rest).max() <= found.fun + 1e-6 * np.abs(base).max():
            break
        sides += [(m, float(np.angle(rest[m]))) for m in range(base.size)]
    return float(np.abs(rest).max())


@pytest.mark.parametrize(("planes", "points", "most"), [(1, 1, 3), (1, 2, 4), (2, 2, 3)])
def test_an_integer_programme_agrees(planes, points, most):
    base, influence, places, stock = job(11, planes, 8, points, sizes=(5.0, 10.0, 20.0), most=40.0)
    curve = choose(base, influence, places, stock, most=most)
    reference = integer_programme(base, influence, places, stock, most)
    assert largest(curve, most) == pytest.approx(reference, abs=PROVEN * curve.scale)
    assert curve.choices[-1].bound <= reference + 1e-6 * curve.scale


@pytest.mark.parametrize("planes", [1, 2, 3])
def test_no_masses_at_all_go_below_the_continuous_bound(planes):
    """cvxpy's minimax is the reference."""
    base, influence, places, stock = job(3, planes, 12, 4 * planes)
    w = cvxpy.Variable(planes, complex=True)
    least = cvxpy.Problem(cvxpy.Minimize(cvxpy.max(cvxpy.abs(base + influence @ w)))).solve(solver="CLARABEL")
    curve = choose(base, influence, places, stock, most=2)
    assert least * 0.99 <= curve.continuous <= least * (1.0 + 1e-6)


def test_any_weights_bound_the_largest_residual():
    rng = np.random.default_rng(1)
    for _ in range(200):
        h = rng.standard_normal((5, 2)) + 1j * rng.standard_normal((5, 2))
        v, w = (rng.standard_normal(s) + 1j * rng.standard_normal(s) for s in (5, 2))
        found = enumeration.bowl(v, h, rng.random(5))
        off = w - found.centre
        low = found.least + np.vdot(off, found.curvature @ off).real
        assert low <= np.abs(v + h @ w).max() ** 2 * (1.0 + 1e-9)
        order = list(rng.permutation(2))
        parts, before = 0.0, np.zeros(0)
        for p, (own, mixed) in zip(order, enumeration.axes(found.curvature, order), strict=True):
            parts += own * abs(off[p] + mixed @ before) ** 2
            before = np.append(before, off[p])
        assert found.least + parts == pytest.approx(low)


def test_points_near_queries_are_those_of_a_tree():
    """scipy's cKDTree is the reference."""
    rng = np.random.default_rng(2)
    for size in (1e-3, 1.0, 50.0):
        points, queries = (rng.uniform(-40, 40, n) + 1j * rng.uniform(-40, 40, n) for n in (700, 90))
        radii = size * rng.random(90)
        tree = cKDTree(np.column_stack([points.real, points.imag]))
        reference = tree.query_ball_point(np.column_stack([queries.real, queries.imag]), radii)
        found = [set() for _ in range(90)]
        for query, point in enumeration.near(points, queries, radii, enumeration.Work(10**9)):
            for q, p in zip(query, point, strict=True):
                assert p not in found[q]
                found[q].add(p)
        assert found == [set(r) for r in reference]


# laws


def test_turning_every_vector_and_scaling_leaves_the_pieces():
    base, influence, places, stock = job(5, 2, 18, 4)
    plain = choose(base, influence, places, stock)
    turn = 12.5 * np.exp(1j * np.deg2rad(37.0))
    moved = choose(turn * base, turn * influence, places, stock)
    assert [c.pieces for c in moved.choices] == [c.pieces for c in plain.choices]
    np.testing.assert_allclose([c.largest for c in moved.choices], [12.5 * c.largest for c in plain.choices])


def test_another_place_of_the_mark_turns_the_pieces():
    base, influence, places, stock = job(6, 2, 18, 4)
    plain = choose(base, influence, places, stock).best
    moved_places = [dataclasses.replace(p, angles_deg=tuple((a + 100.0) % 360.0 for a in p.angles_deg)) for p in places]
    moved = choose(base, influence * vectors.vector(1.0, -100.0), moved_places, stock).best
    assert sorted((x.plane, x.position, x.mass) for x in moved.pieces) == sorted(
        (x.plane, x.position, x.mass) for x in plain.pieces
    )


def test_metal_taken_off_opposite_is_metal_put_on():
    base, influence, _, stock = job(7, 2, 12, 4)
    places = [even(12, per_position=2)] * 2
    added = choose(base, influence, places, stock)
    drilled = choose(base, influence, places, [StockMass(-s.mass, s.count) for s in stock])
    np.testing.assert_allclose([c.largest for c in drilled.choices], [c.largest for c in added.choices])
    assert all(x.mass < 0.0 for x in drilled.best.pieces)


def test_weights_are_the_rows_scaled():
    base, influence, places, stock = job(8, 2, 12, 4)
    weights = np.array([1.0, 0.5, 2.0, 1.5])
    weighted = choose(base, influence, places, stock, weights=weights)
    scaled = choose(weights * base, weights[:, None] * influence, places, stock)
    assert dataclasses.replace(weighted.best, masses=()) == dataclasses.replace(scaled.best, masses=())


@pytest.mark.parametrize("seed", range(6))
def test_more_pieces_positions_and_stock_are_never_worse(seed):
    base, influence, places, stock = job(20 + seed, 1 + seed % 2, 12, 4)
    curve = choose(base, influence, places, stock)
    levels = [c.largest for c in curve.choices]
    assert levels == sorted(levels, reverse=True)
    for choice in curve.choices:
        assert choice.bound <= choice.largest
        assert choice.largest == pytest.approx(residual(base, influence, choice.pieces))
        assert kept_to(choice.pieces, places, stock)
        assert choice.optimal
    more = choose(base, influence, places, [StockMass(s.mass, s.count + 2) for s in stock])
    scarce = choose(base, influence, [dataclasses.replace(p, angles_deg=p.angles_deg[::2]) for p in places], stock)
    allowed = PROVEN * curve.scale
    assert more.best.largest <= curve.best.largest + allowed
    assert scarce.best.largest >= curve.best.largest - allowed


def test_a_stock_that_the_planes_share_is_not_used_twice():
    places, stock = [even(8, per_position=1)] * 2, [StockMass(10.0, 1)]
    curve = choose(np.array([-10.0, -10.0]), np.eye(2, dtype=complex), places, stock)
    assert len(curve.best.pieces) <= 1
    assert curve.best.largest == pytest.approx(10.0)


def test_what_is_on_takes_room():
    place = even(8, per_position=1, cap=25.0, taken=((0, 10.0),))
    curve = choose(np.array([-20.0]), np.ones((1, 1), dtype=complex), [place], [StockMass(10.0, 4)])
    assert all(x.position != 0 for x in curve.best.pieces)
    assert len(curve.best.pieces) == 1  # 15 g are left of the cap


# planes without positions


def test_two_pieces_at_any_angle_reach_what_any_mass_does():
    base, influence, _, stock = job(9, 2, 12, 6, most=25.0)
    curve = choose(base, influence, [Places(None)] * 2, stock)
    assert curve.best.largest <= curve.continuous + PROVEN * curve.scale
    assert len(curve.best.pieces) <= 4
    assert all(x.position is None for x in curve.best.pieces)


def test_one_piece_at_any_angle_is_as_good_as_all_angles_tried():
    base, influence, _, stock = job(10, 1, 12, 3)
    curve = choose(base, influence, [Places(None)], stock, most=1)
    angles = np.exp(1j * np.linspace(0.0, 2.0 * np.pi, 100_000))
    best = min(float(np.abs(base[:, None] + influence * s.mass * angles).max(axis=0).min()) for s in stock)
    assert largest(curve, 1) == pytest.approx(best, abs=1e-4 * curve.scale)
    assert curve.choices[1].bound <= best


def test_the_bound_leaves_room_for_angles_between_those_tried():
    base, influence, _, stock = job(10, 1, 12, 3)
    single = choose(base, influence, [Places(None)], stock, most=1).choices[1]
    half_step = 2.0 * math.sin(math.radians(0.25) / 4.0) * 30.0 * np.abs(influence).max()  # of the largest piece
    assert single.largest - single.bound >= 0.9 * half_step


def test_turning_stops_where_nothing_is_left_to_gain():
    piece = Placed(0, None, 10.0, 1.0, 5.0)
    base, influence = np.array([-5.0 + 0j]), np.ones((1, 1), dtype=complex)
    (found,) = turned(base, influence, (piece,), [Places(None)])
    assert math.cos(math.radians(found.angle_deg)) == pytest.approx(1.0)
    assert turned(base, influence, (found,), [even(4)]) == (found,)


# the edges of what can be done


def test_a_stock_too_small_for_four_pieces_a_plane_goes_on():
    base = np.array([-60.0 + 0j])
    curve = choose(base, np.ones((1, 1), dtype=complex), [even(36, per_position=2)], [StockMass(5.0, 20)])
    assert len(curve.best.pieces) > 4
    assert curve.best.largest < 0.05 * 60.0
    assert kept_to(curve.best.pieces, [even(36, per_position=2)], [StockMass(5.0, 20)])
    crowded = curve.choices[6]
    assert crowded.bound == pytest.approx(curve.continuous)
    assert not crowded.optimal


def test_more_positions_than_can_be_paired_still_serve_single_pieces():
    """Three sizes at 720 positions: only some of them make pairs, and the bound says that not all were tried."""
    stock = [StockMass(m, 3) for m in (2.0, 10.0, 30.0)]
    base = np.array([-20.0 * vectors.vector(1.0, 33.5), 3.0])
    curve = choose(base, np.array([[1.0], [0.3j]]), [even(720, per_position=1)], stock, most=2)
    angles = np.deg2rad(np.arange(720) / 2.0)
    one = min(float(np.abs(base[:, None] + np.array([[1.0], [0.3j]]) * s.mass * np.exp(1j * angles)).max(axis=0).min())
              for s in stock)  # fmt: skip
    assert curve.choices[1].largest == pytest.approx(one, abs=PROVEN * curve.scale)
    assert curve.choices[1].optimal
    assert curve.choices[2].bound == pytest.approx(curve.continuous)


def test_a_rotor_at_rest_needs_no_piece():
    curve = choose(np.zeros(2), np.ones((2, 1), dtype=complex), [even(4)], STOCK)
    assert curve.best.pieces == ()
    assert curve.best.largest == curve.best.bound == 0.0


def test_more_than_four_a_plane_are_held_against_all_masses_only():
    """Twelve pieces of 5 g are wanted on the first plane: five there beat four, which is all that was proven."""
    base, influence = np.array([-60.0, -1.0]), np.eye(2, dtype=complex)
    curve = choose(base, influence, [even(36, per_position=2)] * 2, [StockMass(5.0, 9)])
    crowded = [c for c in curve.choices if sum(x.plane == 0 for x in c.pieces) > 4]
    assert len(crowded[0].pieces) == 5
    assert all(c.bound == pytest.approx(curve.continuous) for c in crowded)


@pytest.mark.parametrize("kind", ["same", "nothing", "fewer points"])
def test_planes_that_cannot_be_told_apart_still_get_an_answer(kind):
    base, influence, places, stock = job(12, 2, 8, 4)
    if kind == "same":
        influence = np.column_stack([influence[:, 0]] * 2)
    elif kind == "nothing":
        influence = np.column_stack([influence[:, 0], np.zeros(4)])
    else:
        base, influence = base[:1], influence[:1]
    curve = choose(base, influence, places, stock, most=3)
    for choice in curve.choices:
        assert choice.bound <= choice.largest == pytest.approx(residual(base, influence, choice.pieces))


def test_work_that_runs_out_leaves_a_bound(monkeypatch):
    monkeypatch.setattr("stillshaft.solver.placement._WORK", 3000)
    base, influence, places, stock = job(13, 3, 24, 6)
    short = choose(base, influence, places, stock)
    monkeypatch.undo()
    whole = choose(base, influence, places, stock)
    assert not all(c.optimal for c in short.choices)
    for k, choice in enumerate(short.choices):
        assert choice.bound <= largest(whole, k) + 1e-9


def test_a_search_can_be_called_off():
    class CalledOff(Exception):  # noqa: N818
        pass

    calls = []

    def report(share, text):
        assert 0.0 <= share <= 1.0
        calls.append(text)
        if len(calls) > 20:
            raise CalledOff

    with pytest.raises(CalledOff):
        choose(*job(14, 3, 24, 6), report=report)


ONE, STOCK = np.ones((1, 1), dtype=complex), [StockMass(5.0, 2)]


@pytest.mark.parametrize(
    ("arguments", "more", "match"),
    [
        ((np.ones(2), ONE, [even(4)], STOCK), {}, "do not fit"),
        ((np.ones(1), ONE, [even(4)], STOCK), {"weights": np.zeros(1)}, "weights above 0"),
        ((np.array([np.nan]), ONE, [even(4)], STOCK), {}, "must be finite"),
        ((np.ones(1), np.ones((1, 0)), [], STOCK), {}, "there is no plane"),
        ((np.ones(1), ONE, [even(4)], []), {}, "no stock"),
        ((np.ones(1), ONE, [even(4)], [StockMass(5.0, 0)]), {}, "no stock"),
        ((np.ones(1), ONE, [even(4)], [*STOCK, StockMass(0.0, 2)]), {}, "stock 2: 2 pieces of 0"),
        ((np.ones(1), ONE, [Places(())], STOCK), {}, "plane 1: all positions are blocked"),
        ((np.ones(1), ONE, [even(4, cap=3.0)], STOCK), {}, "no piece of the stock fits"),
        ((np.ones(1), ONE, [even(4)], STOCK), {"most": -1}, "at most -1 pieces"),
    ],
)
def test_what_cannot_be_placed_is_refused_in_words(arguments, more, match):
    with pytest.raises(PlacementError, match=match):
        choose(*arguments, **more)
