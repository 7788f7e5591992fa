"""Where things stand on the rotor face; no Qt. Expected places are worked out by hand from the conventions."""

import cmath
import math
import subprocess
import sys
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from stillshaft.acquire import hookup as hookups
from stillshaft.acquire import simulated
from stillshaft.ui.desktop import face as faces
from stillshaft.ui.desktop.face import Face, Piece, Sensor
from stillshaft.ui.desktop.places import face_of

UP, RIGHT, DOWN, LEFT = 1j, 1.0, -1j, -1.0
HERE, THERE = "reference end", "other end"


def a_face(rotation="counter-clockwise", datum="12 o'clock", pulse=0.0, **more):
    return Face(rotation, "drive", datum, pulse, **more)


def close(a, b):
    return abs(a - b) < 1e-12


@pytest.mark.parametrize(
    ("rotation", "seen_from", "stator_deg", "place"),
    [
        ("counter-clockwise", HERE, 0.0, UP),
        ("counter-clockwise", HERE, 90.0, LEFT),  # in the direction of rotation from the top
        ("clockwise", HERE, 90.0, RIGHT),
        ("counter-clockwise", THERE, 90.0, RIGHT),  # the same sensor from behind
        ("clockwise", THERE, 90.0, LEFT),
        ("clockwise", THERE, 180.0, DOWN),
    ],
)
def test_stator_angles_count_with_rotation_from_the_datum(rotation, seen_from, stator_deg, place):
    assert close(faces.stator_place(a_face(rotation), stator_deg, seen_from), place)


@pytest.mark.parametrize(
    ("datum", "seen_from", "place"),
    [("3 o'clock", HERE, RIGHT), ("3 o'clock", THERE, LEFT), ("6 o'clock", THERE, DOWN), ("floor side", HERE, UP)],
)
def test_the_datum_is_where_its_text_says(datum, seen_from, place):
    assert close(faces.stator_place(a_face(datum=datum), 0.0, seen_from), place)


def test_the_mark_is_under_the_pulse_sensor():
    for pulse in (0.0, 37.0, 270.0):
        face = a_face(pulse=pulse)
        assert close(faces.rotor_place(face, 0.0, HERE), faces.stator_place(face, pulse, HERE))


@pytest.mark.parametrize("rotation", ["counter-clockwise", "clockwise"])
@pytest.mark.parametrize("seen_from", [HERE, THERE])
def test_a_point_passes_a_sensor_its_angle_after_the_mark(rotation, seen_from):
    """Turned on by its own angle in the direction of rotation, a point comes to where the mark was."""
    face = a_face(rotation, pulse=25.0)
    direction = -1.0 if faces.turns_clockwise(face, seen_from) else 1.0
    for alpha in (30.0, 200.0):
        turned_on = faces.rotor_place(face, alpha, seen_from) * cmath.exp(1j * direction * math.radians(alpha))
        assert close(turned_on, faces.rotor_place(face, 0.0, seen_from))


def test_the_simulated_rotor_agrees():
    """Its heavy spot passes the sensor when the force there is greatest: p + θ − α = s."""
    face = face_of(hookups.hookup_from(simulated.demo_hookup()))
    sensor = face.sensors[0]
    alpha, theta = 65.0, 65.0 + sensor.angle_deg - face.pulse_angle_deg
    turn = cmath.exp(1j * math.radians(theta))  # counter-clockwise, seen from the reference end
    assert close(faces.rotor_place(face, alpha, HERE) * turn, faces.stator_place(face, sensor.angle_deg, HERE))


@pytest.mark.parametrize(
    ("count", "first", "expected"),
    [(4, 0.0, (0, 90, 180, 270)), (4, 100.0, (10, 100, 190, 280)), (3, 359.99, (0, 120, 240)), (1, 50.0, (50,))],
)
def test_number_1_is_at_or_first_after_the_mark(count, first, expected):
    assert faces.positions(count, first) == pytest.approx(expected, abs=1e-9)


def test_a_rotor_without_blades_is_refused():
    with pytest.raises(ValueError, match="0 blades or holes: need 1 or more"):
        faces.positions(0, 0.0)


def test_angles_are_shown_either_way():
    assert faces.shown_angle(30.0, "against rotation") == 30.0
    assert faces.shown_angle(30.0, "with rotation") == 330.0
    assert faces.shown_angle(0.0, "with rotation") == 0.0


@pytest.mark.parametrize(
    ("place", "words"), [(UP, "12 o'clock"), (RIGHT, "3 o'clock"), (LEFT, "9 o'clock"), (cmath.exp(1j), "1 o'clock")]
)
def test_places_on_the_clock(place, words):
    assert faces.clock_face(place) == words


def test_half_hours_are_told():
    assert faces.clock_face(cmath.exp(1j * math.radians(90.0 - 45.0))) == "1:30 o'clock"


def test_the_next_blade_is_found_across_the_mark():
    face = a_face(kind="blade", positions_deg=faces.positions(12, 0.0))
    assert faces.nearest_position(face, 352.0) == 1
    assert faces.nearest_position(face, 92.0) == 4
    assert faces.nearest_position(a_face(), 92.0) is None


def test_words_beside_each_other_are_moved_apart_in_order():
    moved = faces.apart([UP, UP * cmath.exp(0.01j), DOWN], 0.3)
    assert close(moved[0], UP)
    assert abs(cmath.phase(moved[1] / moved[0])) == pytest.approx(0.3, abs=1e-3)
    assert cmath.phase(moved[1] / moved[0]) > 0.0
    assert [abs(m) for m in moved] == pytest.approx([1.0, 1.0, 1.0])


@pytest.mark.parametrize("count", [2, 3, 4, 9])
def test_any_number_at_one_place_are_all_moved_apart(count):
    moved = faces.apart([0.8 * UP] * count, 0.3)
    assert close(moved[0], 0.8 * UP)
    apart = sorted(cmath.phase(m / UP) for m in moved)
    assert [b - a for a, b in pairwise(apart)] == pytest.approx([0.3] * (count - 1))
    assert abs(apart[0] + apart[-1]) < 0.31  # on both sides of the first, as many on one as on the other


def test_where_there_is_no_room_all_share_the_rim():
    places = [cmath.exp(1j * a) for a in (0.0, 0.1, 0.1, 3.0, 6.2)]
    moved = faces.apart(places, 2.0)
    around = sorted(cmath.phase(m) % (2.0 * math.pi) for m in moved)
    assert [b - a for a, b in pairwise([*around, 2.0 * math.pi])] == pytest.approx([2.0 * math.pi / 5] * 5)


@given(st.lists(st.floats(0.0, 2.0 * math.pi), min_size=1, max_size=8), st.floats(0.01, 0.7))
def test_any_places_are_moved_apart_in_their_order_and_no_more_than_they_must(angles, least):
    moved = faces.apart([cmath.exp(1j * a) for a in angles], least)
    assert close(moved[0], cmath.exp(1j * angles[0]))
    around = sorted(cmath.phase(m) % (2.0 * math.pi) for m in moved)
    gaps = [b - a for a, b in pairwise([*around, around[0] + 2.0 * math.pi])]
    assert min(gaps) > min(least, 2.0 * math.pi / len(angles)) - 1e-6
    before = sorted(a % (2.0 * math.pi) for a in angles)
    if min(b - a for a, b in pairwise([*before, before[0] + 2.0 * math.pi])) > least + 1e-9:
        assert [close(m, cmath.exp(1j * a)) for m, a in zip(moved, angles, strict=True)] == [True] * len(angles)


def test_blocked_positions_are_told():
    face = a_face(kind="hole", positions_deg=faces.positions(8, 0.0), blocked=(3, 4))
    assert "8 holes, 3, 4 blocked" in faces.words(face, HERE, "against rotation")


def test_the_face_in_words_follows_the_view():
    face = a_face(
        kind="blade",
        positions_deg=faces.positions(8, 0.0),
        sensors=(Sensor("near", 90.0, 0),),
        pieces=(Piece("12 g", 90.0, 7.0, planned=True),),
    )
    here, there = (faces.words(face, seen, "against rotation") for seen in (HERE, THERE))
    assert "turning counter-clockwise" in here
    assert "turning clockwise" in there
    assert "sensor near at 9 o'clock" in here
    assert "sensor near at 3 o'clock" in there
    assert "12 g to go at 90 degrees plus or minus 7, blade 3, 3 o'clock" in here
    assert "12 g to go at 270 degrees" in faces.words(face, HERE, "with rotation")


@pytest.mark.parametrize("name", ["face", "places", "figures", "settings", "stages", "simulator", "watch"])
def test_what_needs_no_screen_loads_no_qt(name):
    code = f"import sys, stillshaft.ui.desktop.{name}; print('PySide6' in sys.modules, 'sounddevice' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.stdout.split() == ["False", "False"], done.stderr
