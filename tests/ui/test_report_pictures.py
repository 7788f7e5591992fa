"""Pictures of the report: where things stand on paper, by geometry written out here, and no words on each other."""

import math
import re

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from stillshaft.ui import report_pictures as drawn
from stillshaft.ui import typeface
from stillshaft.ui.desktop.face import Face, Piece, Sensor
from stillshaft.ui.report_layout import WIDEST, Disc, Stroke, Words
from stillshaft.ui.report_pictures import Bar, Dot, Ribbon
from stillshaft.ui.report_words import Units, angle, figure, listed, quantity_of, signed, speed, with_half

ANGLES = st.floats(0.0, 360.0, exclude_max=True)


def face(rotation="counter-clockwise", pulse_deg=0.0, datum="12 o'clock", **more):
    return Face(rotation, "drive", datum, pulse_deg, **more)


def boxes(picture):
    """Boxes of the words of a picture."""
    for shape in picture.shapes:
        if isinstance(shape, Words):
            wide = typeface.width(shape.text, shape.size, strong=shape.strong)
            left = shape.x - {"start": 0.0, "middle": 0.5, "end": 1.0}[shape.anchor] * wide
            yield shape.text, (left, shape.y - 0.75 * shape.size, left + wide, shape.y + 0.1 * shape.size)


def assert_words_stand_apart(picture):
    found = list(boxes(picture))
    for text, (left, top, right, bottom) in found:
        assert left >= -0.5, text
        assert right <= picture.width + 0.5, text
        assert top >= -0.5, text
        assert bottom <= picture.height + 0.5, text
    for i, (one, a) in enumerate(found):
        for other, b in found[i + 1 :]:
            across, down = min(a[2], b[2]) - max(a[0], b[0]), min(a[3], b[3]) - max(a[1], b[1])
            assert across < 0.5 or down < 0.5, (one, other)


def clock_deg(x, y, middle):
    """Degrees clockwise from 12 o'clock of a place on paper, y down."""
    return math.degrees(math.atan2(x - middle[0], middle[1] - y)) % 360.0


def apart_deg(a, b):
    return abs(math.remainder(a - b, 360.0))


def piece_places(picture):
    """Middles of the discs of pieces."""
    return [(s.x, s.y) for s in picture.shapes if isinstance(s, Disc) and s.radius == 4.0]


def rim(picture):
    return next(s for s in picture.shapes if isinstance(s, Disc) and s.fill == "panel")


@given(ANGLES, ANGLES, st.sampled_from(["clockwise", "counter-clockwise"]), st.integers(1, 12))
@settings(max_examples=60, deadline=None)
def test_a_piece_stands_against_rotation_from_the_mark_under_the_pulse_sensor(alpha, pulse, rotation, hour):
    picture = drawn.masses_picture("left", face(rotation, pulse, f"{hour} o'clock", pieces=(Piece("1", alpha),)))
    circle = rim(picture)
    (place,) = piece_places(picture)
    # stator angles count with rotation from the datum; a piece at α passes the pulse sensor α after the mark
    way = 1.0 if rotation == "clockwise" else -1.0
    expected = 30.0 * hour + way * (pulse - alpha)
    assert apart_deg(clock_deg(*place, (circle.x, circle.y)), expected) < 0.1
    assert math.dist(place, (circle.x, circle.y)) == pytest.approx(0.97 * circle.radius, abs=0.1)


@pytest.mark.parametrize(("rotation", "turns"), [("clockwise", -1.0), ("counter-clockwise", 1.0)])
def test_the_arrow_turns_as_the_rotor_does(rotation, turns):
    picture = drawn.masses_picture("left", face(rotation))
    circle = rim(picture)
    arrow = next(s for s in picture.shapes if isinstance(s, Stroke) and s.colour == "accent" and not s.closed)
    (x0, y0), (x1, y1) = ((x - circle.x, circle.y - y) for x, y in (arrow.points[0], arrow.points[-1]))
    assert (x0 * y1 - y0 * x1) * turns > 0.0  # counter-clockwise on paper is positive
    head = next(s for s in picture.shapes if isinstance(s, Stroke) and s.fill == "accent")
    tip, *back = head.points
    middle = np.mean(back, axis=0)
    assert np.dot(np.subtract(tip, middle), np.subtract(arrow.points[-1], arrow.points[-3])) > 0.0


@given(st.lists(ANGLES, min_size=1, max_size=12), ANGLES, st.sampled_from(["clockwise", "counter-clockwise"]))
@settings(max_examples=150, deadline=None)
def test_any_sensors_have_labels_of_their_own(angles, pulse, rotation):
    sensors = tuple(Sensor(f"s{i}", a, i) for i, a in enumerate(angles, start=1))
    picture = drawn.hookup_picture(face(rotation, pulse, sensors=sensors))
    assert_words_stand_apart(picture)
    told = " ".join(text for text, _ in boxes(picture))
    shown = {int(n) for text in re.findall(r"([\d·]+)…? at", told) for n in text.split("·") if n}
    assert shown == set(range(1, len(angles) + 1)) or "…" in told


@given(ANGLES, st.sampled_from(["clockwise", "counter-clockwise"]))
@settings(max_examples=30, deadline=None)
def test_a_sensor_stands_at_its_stator_angle(at, rotation):
    picture = drawn.hookup_picture(face(rotation, 0.0, "3 o'clock", sensors=(Sensor("s", at, 1),)))
    circle = rim(picture)
    mark = next(s for s in picture.shapes if isinstance(s, Stroke) and s.width == 3.0)
    way = 1.0 if rotation == "clockwise" else -1.0
    assert apart_deg(clock_deg(*mark.points[0], (circle.x, circle.y)), 90.0 + way * at) < 0.1


@given(st.lists(ANGLES, max_size=8), st.booleans())
@settings(max_examples=80, deadline=None)
def test_any_pieces_have_their_numbers_apart(angles, planned):
    pieces = tuple(Piece(str(i), a, 20.0 if planned else None, 1.0, planned) for i, a in enumerate(angles, start=1))
    picture = drawn.masses_picture("x" * 200, face(pieces=pieces, kind="hole", positions_deg=tuple(range(0, 360, 15))))
    assert_words_stand_apart(picture)
    assert len(piece_places(picture)) == len(angles)


def test_positions_that_take_no_mass_are_crossed_out():
    at = tuple(range(0, 360, 30))
    picture = drawn.masses_picture(
        "disc", face("clockwise", 0.0, "12 o'clock", kind="hole", positions_deg=at, blocked=(2, 7))
    )
    circle = rim(picture)
    arms = [s for s in picture.shapes if isinstance(s, Stroke) and s.colour == "bad" and len(s.points) == 2]
    places = {tuple(np.round(np.mean(s.points, axis=0), 3)) for s in arms}
    assert len(arms) == 4
    # clockwise with the mark at 12: against rotation is counter-clockwise, 30° and 180° are 11 and 6 o'clock
    assert sorted(clock_deg(*p, (circle.x, circle.y)) for p in places) == pytest.approx([180.0, 330.0], abs=0.1)
    assert "12 holes, 2, 7 blocked" in picture.alt


@given(st.lists(st.tuples(st.floats(0.0, 50.0), ANGLES), min_size=1, max_size=60), st.sampled_from([None, 5.0]))
@settings(max_examples=60, deadline=None)
def test_polar_any_runs_stand_at_their_vectors_with_numbers_apart(vectors, limit):
    z = [a * np.exp(1j * np.deg2rad(p)) for a, p in vectors]
    dots = [Dot(i, complex(v), "first" if i == 1 else "other", 0.1) for i, v in enumerate(z, start=1)]
    picture = drawn.polar_picture("a point", "mm/s rms", dots, limit)
    assert_words_stand_apart(picture)
    # 0° is up and lag goes counter-clockwise on paper
    circle = next(s for s in picture.shapes if isinstance(s, Disc) and s.colour == "caution")
    amplitude, phase = vectors[0]
    if amplitude > max(2.0, 0.5 * max(a for a, _ in vectors)):  # far enough from the middle to have a direction
        assert apart_deg(clock_deg(circle.x, circle.y, (0.5 * picture.width, 134.0)), -phase) < 1.5


@given(st.floats(2.0, 50.0), ANGLES, ANGLES)
@settings(max_examples=40, deadline=None)
def test_numbers_stand_beside_the_lines_of_first_and_last(amplitude, phase, other):
    z = [a * np.exp(1j * np.deg2rad(p)) for a, p in ((amplitude, phase), (0.6 * amplitude, other))]
    picture = drawn.polar_picture(
        "p", "mm/s rms", [Dot(1, complex(z[0]), "first"), Dot(2, complex(z[1]), "last")], None
    )
    lines = [s.points for s in picture.shapes if isinstance(s, Stroke) and s.width == 1.4 and not s.closed]
    assert len(lines) == 2
    numbers = [box for text, box in boxes(picture) if text in ("1", "2", "1, 2")]
    for (x0, y0), (x1, y1) in lines:
        for share in np.linspace(0.0, 1.0, 60):
            x, y = x0 + share * (x1 - x0), y0 + share * (y1 - y0)
            assert not any(left < x < right and top < y < bottom for left, top, right, bottom in numbers)


def test_runs_that_lie_on_each_other_share_their_numbers():
    dots = [Dot(1, 5.0 + 0.0j, "first"), *(Dot(n, 2.0j, "other") for n in (2, 3, 4, 7, 9))]
    told = {text for text, _ in boxes(drawn.polar_picture("p", "mm/s rms", dots, None))}
    assert "2–4, 7, 9" in told
    assert "1" in told


def test_bars_are_as_long_as_what_they_show_and_share_a_scale():
    one = Bar("a", (8.0, 0.5), (2.0, 0.1), 2.8, "mm/s rms")
    other = Bar("b" * 200, (4.0, None), None, None, "mm/s rms")
    third = Bar("c", (100.0, 1.0), (0.0, 0.0), 50.0, "µm p-p")
    pictures = drawn.bars_pictures([one, other, third])
    lengths = [
        [s.points[1][0] - s.points[0][0] for s in p.shapes if isinstance(s, Stroke) and s.closed] for p in pictures
    ]
    assert lengths[0][1] == pytest.approx(lengths[0][0] / 4.0)
    assert lengths[1][0] == pytest.approx(lengths[0][0] / 2.0)
    assert lengths[2][0] == pytest.approx(lengths[0][0])
    for picture in pictures:
        assert picture.width <= WIDEST
        assert_words_stand_apart(picture)
    limits = [s.points[0][0] for s in pictures[0].shapes if isinstance(s, Stroke) and s.colour == "good"]
    assert limits[0] - 44.0 == pytest.approx(2.8 / 8.0 * lengths[0][0])


def test_a_ribbon_holds_its_curve():
    times = np.linspace(0.0, 20.0, 50)
    picture = drawn.ribbon_picture(
        Ribbon("x" * 300, times, 40.0 * np.sin(times), times, 39.0 * np.sin(times), "beat of 6.3 s")
    )
    assert_words_stand_apart(picture)
    frame = next(s for s in picture.shapes if isinstance(s, Stroke) and s.closed)
    low, high = min(y for _, y in frame.points), max(y for _, y in frame.points)
    for shape in picture.shapes:
        if isinstance(shape, Stroke):
            assert all(low - 0.1 <= y <= high + 0.1 for _, y in shape.points)
    empty = drawn.ribbon_picture(Ribbon("p", np.empty(0), np.empty(0), np.empty(0), np.empty(0), "too-short"))
    assert_words_stand_apart(empty)


# numbers and units


def test_numbers_are_written_for_people():
    assert [figure(x) for x in (0.0, 0.00123, 1.0, 12.345, 1234.5, -2.5, 1e9)] == [
        "0", "0.00123", "1.00", "12.3", "1234", "−2.50", "1e+09"
    ]  # fmt: skip
    assert with_half(8.5, 0.05, "mm/s rms") == "8.50 ± 0.05 mm/s rms"
    assert with_half(8.5, None) == "8.50 ± ?"
    assert signed(-82.13, 1.2, " %") == "−82.1 ± 1.2 %"
    assert signed(5.0, 0.5, "°").startswith("+5.0")
    assert [angle(x) for x in (359.7, -1.0, 90.0)] == ["0°", "359°", "90°"]
    assert angle(90.0, 0.2) == "90° ± 1°"
    assert [speed(x) for x in (2950.4, 60.0)] == ["2950 r/min", "60.00 r/min"]
    assert listed(map(str, range(50)), 3) == "0; 1; 2; and 47 more"


def test_units_convert_as_the_standard_says():
    imperial = Units("imperial")
    # 1 oz = 28.349 523 125 g, 1 lb = 0.453 592 37 kg, 1 in = 25.4 mm, 1 lbf = 4.448 221 615 260 5 N: NIST SP 811, from memory
    assert imperial.amount(28.349523125, "g") == "1.00 oz"
    assert imperial.amount(45.359237, "kg") == "100 lb"
    assert imperial.amount(25.4, "mm") == "1.00 in"
    assert imperial.amount(720.0778875, "g*mm") == "1.00 oz·in"
    assert imperial.force(44.482216).startswith("10.0 lbf")
    assert Units().force(98.0665) == "98.1 N\n(10.0 kgf)"
    assert imperial.given("300 mm", "mm") == "11.81 in (300 mm)"
    assert Units().given("12 in", "mm") == "304.8 mm (12 in)"
    assert Units().given("nonsense", "mm") == "nonsense"


def test_vibration_units_stay_in_their_family():
    for text in ("mm/s rms", "mm/s peak", "m/s^2 rms", "g rms"):
        assert Units().vibration(text)[1] == 1.0
    for text in ("in/s peak", "mil p-p", "g peak"):
        assert Units("imperial").vibration(text)[1] == 1.0
    unit, factor = Units().vibration("in/s peak")
    assert (unit, factor) == ("mm/s rms", pytest.approx(25.4 / math.sqrt(2.0)))
    unit, factor = Units("imperial").vibration("um p-p")
    assert (unit, factor) == ("mil p-p", pytest.approx(1.0 / 25.4))
    assert Units("imperial").vibration("bananas") == ("bananas", 1.0)
    assert (quantity_of("bananas"), quantity_of("mil p-p")) == ("bananas", "displacement")


# the typeface


def test_long_texts_are_cut_to_fit():
    for text in ("W" * 300, "fan end bearing " * 20, "насос " * 40, "短い" * 100):
        cut = typeface.fitted(text, 100.0, 8.0)
        assert cut.endswith("…")
        assert typeface.width(cut, 8.0) <= 100.0
    assert typeface.fitted("short", 100.0, 8.0) == "short"


def test_figures_are_all_of_one_width():
    for strong in (False, True):
        widths = [typeface.width(d, 10.0, strong=strong) for d in "0123456789"]
        assert max(widths) - min(widths) < 0.02


def test_characters_without_a_glyph_are_written_as_code_points():
    assert "".join(part for _, part in typeface.pieces("a\U00013000b")) == "aU+13000 b"
    assert typeface.bundled("опора \U00013000") == "опора U+13000 "


def test_letters_from_the_right_stand_in_the_order_of_their_letters():
    # alef, bet, gimel: read from the right, so gimel stands leftmost on paper
    assert typeface.plain("pump \u05d0\u05d1\u05d2 2") == "pump \u05d2\u05d1\u05d0 2"


def test_invisible_and_control_characters_are_left_out():
    assert typeface.plain("a\u202eb\u200dc\x07d\u00a0e\u2028f") == "abc d e f"
    assert typeface.plain("e\u0301") == "é"
