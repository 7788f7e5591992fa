"""Small calculations at the bench: handbook geometry, figures worked out by hand, round trips, refusals."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from stillshaft.dsp import vectors
from stillshaft.solver import handwork
from stillshaft.solver.handwork import HandworkError

sizes = st.floats(1e-3, 1e3)


def test_split_between_two_positions_by_the_sine_rule():
    """Any handbook of balancing (from memory): m1 = m·sin β / sin(α + β), m2 = m·sin α / sin(α + β)."""
    first, second = handwork.split(vectors.vector(10.0, 20.0), 0.0, 30.0)
    assert first == pytest.approx(10.0 * math.sin(math.radians(10.0)) / math.sin(math.radians(30.0)))
    assert second == pytest.approx(10.0 * math.sin(math.radians(20.0)) / math.sin(math.radians(30.0)))


@given(sizes, st.floats(0.0, 360.0), st.floats(0.0, 360.0), st.floats(1.0, 179.0))
def test_split_masses_make_the_whole(mass, angle_deg, first_deg, apart_deg):
    wanted = vectors.vector(mass, angle_deg)
    one, other = handwork.split(wanted, first_deg, first_deg + apart_deg)
    made = vectors.vector(1.0, first_deg) * one + vectors.vector(1.0, first_deg + apart_deg) * other
    assert abs(made - wanted) <= 1e-9 * mass


@pytest.mark.parametrize(("angle", "positions"), [(20.0, (0, 1)), (350.0, (3, 0)), (90.0, (1,))])
def test_neighbours_stand_on_both_sides(angle, positions):
    shares = handwork.split_between_neighbours(vectors.vector(5.0, angle), (0.0, 90.0, 180.0, 270.0))
    assert tuple(k for k, _ in shares) == positions
    assert all(0.0 < m <= 5.0 for _, m in shares)


@pytest.mark.parametrize(
    ("mass", "taken"),
    [
        (33.0, [2.0, 30.0]),
        (34.0, [5.0, 30.0]),
        (0.5, []),
        (1.5, [2.0]),
        (100.0, [10.0, 30.0]),
        (-4.0, []),
        (10.0, [10.0]),
    ],
)
def test_rounding_takes_the_nearest_sum_of_the_stock(mass, taken):
    stock, left = [2.0, 5.0, 10.0, 30.0], dict.fromkeys(range(4), 1)
    found = handwork.rounded_to_stock(mass, stock, left, most=2)
    assert [stock[i] for i in found] == taken
    assert sum(left.values()) == 4 - len(taken)


def test_rounding_keeps_to_what_a_position_takes():
    left = {0: 3}
    assert handwork.rounded_to_stock(30.0, [10.0], left, cap=25.0) == (0, 0)
    assert left == {0: 1}
    assert handwork.rounded_to_stock(30.0, [10.0], left) == (0,)
    assert handwork.rounded_to_stock(-21.0, [-10.0], {0: 3}) == (0, 0)


def test_several_masses_in_one():
    """3 g at 0° and 4 g at 90° are 5 g at 53.13°; the same at half the radius counts half."""
    assert handwork.one_for_several([(3.0, 0.0, 100.0), (4.0, 90.0, 100.0)], 100.0) == (
        pytest.approx(5.0), pytest.approx(53.13, abs=0.01)
    )  # fmt: skip
    mass, _ = handwork.one_for_several([(3.0, 0.0, 50.0), (-3.0, 180.0, 50.0)], 100.0)
    assert mass == pytest.approx(3.0)
    assert handwork.at_radius(12.0, 200.0, 300.0) == pytest.approx(8.0)


def test_arc_and_chord_of_a_circle():
    assert handwork.rim_distance(360.0, 300.0) == pytest.approx(2.0 * math.pi * 300.0)
    assert handwork.rim_distance(90.0, 200.0) == pytest.approx(314.159, abs=1e-3)
    assert handwork.chord(60.0, 300.0) == pytest.approx(300.0)
    assert handwork.chord(180.0, 300.0) == pytest.approx(600.0)


def test_a_drilled_hole_is_a_cylinder_and_a_cone():
    """12 mm in steel, flat: 10 mm deep is π·0.6²·1.0 cm³ · 7.85 g/cm³ = 8.878 g; a 118° point is 0.3004 diameters long."""
    flat = handwork.drilled(8.878e-3, 12e-3, 7850.0, point_deg=180.0)
    assert flat.full_m == flat.total_m == pytest.approx(10e-3, rel=1e-3)
    pointed = handwork.drilled(8.878e-3, 12e-3, 7850.0, point_deg=118.0)
    assert pointed.total_m - pointed.full_m == pytest.approx(0.3004 * 12e-3, rel=1e-3)
    assert pointed.full_m == pytest.approx(10e-3 - 0.3004 * 12e-3 / 3.0, rel=1e-3)


@given(st.floats(1e-6, 1.0), st.floats(1e-3, 0.05), st.floats(90.0, 179.0), st.integers(1, 6))
def test_the_hole_takes_the_mass_off(mass_kg, diameter_m, point_deg, holes):
    hole = handwork.drilled(mass_kg, diameter_m, 7850.0, point_deg=point_deg, holes=holes)
    if hole.full_m > 0.0:  # a cylinder, and a cone of a third of its own height
        length = hole.full_m + (hole.total_m - hole.full_m) / 3.0
        assert holes * 7850.0 * math.pi / 4.0 * diameter_m**2 * length == pytest.approx(mass_kg)
    else:  # only a part of the point: a cone as wide as it is deep times twice the tangent of half the angle
        radius = hole.total_m * math.tan(math.radians(point_deg) / 2.0)
        assert radius <= diameter_m / 2.0 * (1.0 + 1e-9)
        assert holes * 7850.0 * math.pi / 3.0 * radius**2 * hole.total_m == pytest.approx(mass_kg)


def test_grinding_and_welding_by_volume():
    """1 cm³ of steel is 7.85 g; a metre of 3.2 mm rod weighs 63.1 g, of which 60 % land."""
    assert handwork.ground_depth(7.85e-3, 4e-4, 7850.0) == pytest.approx(2.5e-3)
    assert handwork.rod_length(0.6 * 63.13e-3, 3.2e-3, 7850.0, 0.6) == pytest.approx(1.0, rel=1e-3)


def test_densities_by_name_or_figure():
    assert handwork.density("Steel") == 7850.0
    assert handwork.density("7.2 g/cm^3") == pytest.approx(7200.0)


@pytest.mark.parametrize(
    ("angle", "pulse", "datum", "rotation", "shown"),
    [
        (0.0, 0.0, "12 o'clock", "counter-clockwise", "12:00"),
        (90.0, 0.0, "12 o'clock", "counter-clockwise", "3:00"),  # against rotation from the mark at the top: clockwise
        (90.0, 0.0, "12 o'clock", "clockwise", "9:00"),
        (0.0, 90.0, "12 o'clock", "counter-clockwise", "9:00"),  # the pulse sensor a quarter turn on, in rotation
        (45.0, 90.0, "3 o'clock", "clockwise", "4:30"),
        (359.0, 0.0, "12 o'clock", "counter-clockwise", "12:00"),
        (0.0, 0.0, "1:30 o'clock", "clockwise", "1:30"),
        (0.0, 0.0, "the oil cup", "clockwise", None),
    ],
)
def test_clock_face_with_the_mark_under_the_pulse_sensor(angle, pulse, datum, rotation, shown):
    assert handwork.clock_position(angle, pulse, datum, rotation) == shown


@pytest.mark.parametrize(
    ("call", "match"),
    [
        (lambda: handwork.split(1.0, 10.0, 190.0), "10° and 190° are in line"),
        (lambda: handwork.split_between_neighbours(1j, (0.0, 180.0)), "180° apart or more"),
        (lambda: handwork.split_between_neighbours(1j, (0.0,)), "180° apart or more"),
        (lambda: handwork.at_radius(1.0, 1.0, 0.0), "new radius 0: must be above 0"),
        (lambda: handwork.chord(1.0, -1.0), "radius -1: must be above 0"),
        (lambda: handwork.density("cheese"), 'material "cheese": is not known; there is steel'),
        (lambda: handwork.density("-1 kg/m^3"), "density -1: must be above 0"),
        (lambda: handwork.drilled(1.0, 0.01, 7850.0, point_deg=0.0), "drill point 0°"),
        (lambda: handwork.drilled(math.nan, 0.01, 7850.0), "mass nan: must be above 0"),
        (lambda: handwork.ground_depth(1.0, 0.0, 7850.0), "area 0: must be above 0"),
        (lambda: handwork.rod_length(1.0, 0.003, 7850.0, 1.2), "recovery 120 %: must be above 0 % and at most 100 %"),
    ],
)
def test_what_has_no_answer_says_why(call, match):
    with pytest.raises(HandworkError, match=match):
        call()
