"""Pictures: what they say follows their data, themes recolour them, and what is written in them can be read."""

import math
import re

import numpy as np
import pytest
from PySide6 import QtGui, QtWidgets
from screen_faults import faults
from stillshaft.ui.desktop import canvas, face, figures, look, meters, plots, polar, rotor_face
from stillshaft.ui.theme import THEMES

NAMES = ("drive end horizontal", "far end horizontal", "drive end vertical")


def a_cloud(size=4.0, count=120):
    rng = np.random.default_rng(1)
    points = []
    for number, name in enumerate(NAMES):
        z = size / (1 + number) * np.exp(1j * (0.7 + 1.9 * number))
        blocks = z * (1.0 + 0.01 * (rng.standard_normal(count) + 1j * rng.standard_normal(count)))
        border = figures.region_border(z, np.eye(2) * (0.005 * size) ** 2, 40)
        points.append(figures.CloudPoint(name, blocks, z, border, 1.3 * z if number == 0 else None))
    return points


def a_ribbon(swing=5.0):
    t = np.linspace(0.1, 40.0, 250)
    nothing = np.empty(0)
    return [
        figures.RibbonPoint(NAMES[0], t, swing * np.sin(t), t, swing * np.sin(t), "beat of 6.3 s"),
        figures.RibbonPoint(NAMES[1], t, 0.2 * np.cos(3 * t), nothing, nothing, "steady"),
    ]


def a_waveform(size=6.0):
    angle = np.linspace(0.0, 360.0, 257)
    points = tuple(
        figures.WaveformPoint(n, size * np.cos(np.deg2rad(angle - 50 * i)), 0.3 + 0.0 * angle)
        for i, n in enumerate(NAMES)
    )
    return figures.Waveform(angle, points, "mm/s", 32)


def a_spectrum(top=5.0):
    f = np.arange(10.0, 1000.0)
    peak = top * np.exp(-((f - 25.0) ** 2)) + 1e-3
    return figures.Spectrum(f, NAMES, (peak, 0.5 * peak, 0.2 * peak), "mm/s rms", 24.7, 9)


def a_sweep(at=1250.0):
    s = np.linspace(300.0, 1800.0, 300)
    z = (s / at) ** 2 / (1 - (s / at) ** 2 + 0.08j * s / at)
    return [figures.SweepCurve(NAMES[0], s, np.conj(z), ((at, 9.0),)), figures.SweepCurve(NAMES[1], s, 0.6j * z)]


def a_pulse(height=0.5):
    t = np.linspace(0.0, 110.0, 5000)
    x = height * ((t % 40.0) < 1.0) + 0.005 * np.sin(900 * t)
    return figures.PulseSeen(t, x, 0.5 * height, np.array([0.0, 40.0, 80.0]), True, 9.0, 0.02, 1500.0, 1, 0, None)


def a_face(pulse=0.0):
    sensors = tuple(face.Sensor(n, a, i) for i, (n, a) in enumerate(zip(NAMES, (90.0, 90.0, 0.0), strict=True)))
    pieces = (face.Piece("12.5 g", 137.0, 9.0, planned=True), face.Piece("4 g", 300.0))
    return face.Face("clockwise", "drive", "12 o'clock", pulse, sensors, "blade", face.positions(11, 8.0), pieces)


def bars(after=0.9):
    return [
        figures.Bar(NAMES[0], 6.4, 0.2, after, 0.1, 1.8, "met"),
        figures.Bar(NAMES[1], 3.1, 0.2, 1.7, None, 1.8, "cannot be told yet"),
    ]


PICTURES = {
    "cloud": (polar.VectorCloud, lambda p, k: p.show_cloud(a_cloud(4.0 * k), "mm/s rms"), (430, 400)),
    "ribbon": (plots.PhaseRibbon, lambda p, k: p.show_ribbon(a_ribbon(5.0 * k)), (520, 200)),
    "waveform": (plots.WaveformPlot, lambda p, k: p.show_waveform(a_waveform(6.0 * k)), (330, 200)),
    "spectrum": (plots.SpectrumPlot, lambda p, k: p.show_spectrum(a_spectrum(5.0 * k)), (330, 200)),
    "sweep": (plots.SweepPlot, lambda p, k: p.show_sweep(a_sweep(1250.0 + k), "mm/s rms", 1480.0), (520, 260)),
    "sweep phase": (
        lambda: plots.SweepPlot(phase=True),
        lambda p, k: p.show_sweep(a_sweep(1250.0 + k), "mm/s rms", 1480.0),
        (520, 260),
    ),
    "sweep polar": (polar.SweepPolar, lambda p, k: p.show_sweep(a_sweep(1250.0 + k), "mm/s rms"), (430, 400)),
    "level": (
        lambda: meters.LevelMeter("pulse"),
        lambda p, k: p.show_level(figures.Level("pulse", 0.01 * k, 0.005 * k, 0.02 * k, 0)),
        (200, 60),
    ),
    "pulse": (meters.PulsePicture, lambda p, k: p.show_pulse(a_pulse(0.2 + 0.1 * k)), (520, 230)),
    "face": (rotor_face.RotorFace, lambda p, k: p.show_face(a_face(10.0 * k)), (460, 430)),
    "bars": (plots.BeforeAfter, lambda p, k: p.show_bars(bars(0.9 * k), "mm/s rms"), (460, 220)),
}


@pytest.fixture(params=PICTURES)
def picture(request, dressed, qtbot):
    make, show, size = PICTURES[request.param]
    window = QtWidgets.QMainWindow()
    qtbot.addWidget(window)
    made = make()
    window.setCentralWidget(made)
    window.setStyleSheet(look.style_sheet(THEMES["light"], 14))
    window.setMinimumSize(1, 1)
    window.resize(*size)
    window.show()
    made.set_theme(THEMES["light"])
    return window, made, show


def pixels(widget):
    image = widget.grab().toImage().convertToFormat(QtGui.QImage.Format.Format_RGB32)
    return bytes(image.constBits())


def test_it_says_what_it_shows_and_changes_with_the_data(picture):
    _, made, show = picture
    empty = made.summary
    drawn = {pixels(made)}
    assert empty
    said = {empty}
    for k in (1.0, 3.0):
        show(made, k)
        said.add(made.summary)
        drawn.add(pixels(made))
    assert len(said) == 3
    assert len(drawn) == 3
    assert not re.search(r"\b(nan|inf|None)\b", " ".join(said))


def test_every_theme_draws_it_otherwise(picture):
    _, made, show = picture
    show(made, 1.0)
    drawn = set()
    for theme in THEMES.values():
        made.set_theme(theme)
        drawn.add(pixels(made))
    assert len(drawn) == len(THEMES)


@pytest.mark.parametrize(("wide", "rows"), [(600, 1), (240, 2)])
def test_a_face_says_how_it_turns_however_narrow_it_is(dressed, qtbot, wide, rows):
    face = rotor_face.RotorFace()
    qtbot.addWidget(face)
    face.setMinimumSize(1, 1)
    face.resize(wide, 400)
    face.set_theme(THEMES["light"])
    face.show_face(a_face(10.0))
    face.grab()
    below = [text for text, _ in face.texts if "seen from" in text or "turns" in text or "angles" in text]
    assert len(below) == rows
    assert all(said in " ".join(below) for said in ("seen from: ", "turns ", "angles against rotation"))


@pytest.mark.parametrize("body_px", [14, 19])
def test_what_is_written_can_be_read(picture, body_px):
    window, made, show = picture
    window.setStyleSheet(look.style_sheet(THEMES["light"], body_px))
    smallest = made.minimumSizeHint()
    for wide, high in ((0, 0), (300, 0), (0, 200), (500, 400)):
        window.resize(smallest.width() + wide, smallest.height() + high)
        for k in (1.0, 3.0, 40.0):
            show(made, k)
            assert [f for f in faults(window) if "written" in f or "say" in f] == []


def test_it_can_be_reached_by_tab_and_shows_it(picture):
    _, made, show = picture
    show(made, 1.0)
    made.clearFocus()
    without = pixels(made)
    made.setFocus()
    assert made.hasFocus()
    assert pixels(made) != without


def test_frames_do_not_draw_the_backdrop_anew(dressed, qtbot):
    cloud = polar.VectorCloud()
    qtbot.addWidget(cloud)
    cloud.resize(400, 400)
    cloud.show()
    drawn = []
    backdrop = cloud.draw_backdrop
    cloud.draw_backdrop = lambda painter: (drawn.append(1), backdrop(painter))
    for size in (4.0, 4.1, 3.9, 3.5):
        cloud.show_cloud(a_cloud(size), "mm/s rms")
        cloud.grab()
    assert len(drawn) == 1
    cloud.show_cloud(a_cloud(40.0), "mm/s rms")
    cloud.grab()
    assert len(drawn) == 2


def test_lag_grows_against_rotation_on_the_screen(dressed, qtbot):
    """Seen from the end from which the rotor turns counter-clockwise, lag grows clockwise: 90° is at the right."""
    cloud = polar.VectorCloud()
    qtbot.addWidget(cloud)
    cloud.resize(400, 400)
    cloud.set_clockwise(True)
    x, y = cloud.place(np.array([1.0 + 0j, 1j]))
    assert x[0] == pytest.approx(200.0)
    assert y[0] < 200.0
    assert x[1] > 200.0
    cloud.set_clockwise(False)
    assert cloud.place(np.array([1j]))[0][0] < 200.0


def test_a_region_that_is_hardly_known_stays_within_the_rim(dressed, qtbot):
    cloud = polar.VectorCloud()
    qtbot.addWidget(cloud)
    cloud.resize(400, 400)
    z = np.array([1.0 + 0j] * 5)
    wide = figures.region_border(1.0 + 0j, np.eye(2) * 9.0, 20)
    cloud.show_cloud([figures.CloudPoint("a", z, 1.0 + 0j, wide)], "mm/s rms")
    image = cloud.grab().toImage()
    corner = image.pixelColor(60, 60).name()
    assert corner == THEMES["light"].panel


@pytest.mark.parametrize("size", [7, 700, 4801])
def test_no_peak_is_lost_in_columns(size):
    y = np.random.default_rng(size).standard_normal(size)
    y[size // 2] = 50.0
    y[size // 3] = -50.0
    reduced = canvas.columns(y, 200)
    assert reduced.max() == 50.0
    assert reduced.min() == -50.0
    assert reduced.size <= max(400, size)


def test_ranges_stand_still_while_data_fit():
    assert canvas.settled(0.9, 1.0) == 1.0
    assert canvas.settled(0.5, 1.0) == 1.0
    assert canvas.settled(1.01, 1.0) == 2.0
    assert canvas.settled(0.1, 1.0) == pytest.approx(0.2)
    assert canvas.round_up(0.0) == 1.0
    for value in (0.012, 1.0, 7.3, 950.0):
        assert value <= canvas.round_up(value) <= 2.0 * value * (1.0 + 1e-12) or math.isclose(value, 1.0)


def test_polylines_share_their_memory():
    line = canvas.Polyline()
    first = line.set(np.array([1.0, 2.0, 3.0]), np.array([4.0, 5.0, 6.0]))
    assert [(p.x(), p.y()) for p in first] == [(1.0, 4.0), (2.0, 5.0), (3.0, 6.0)]
    assert line.set(np.empty(0), np.empty(0)).size() == 0
    assert [p.y() for p in line.set(np.zeros(2), np.array([7.0, 8.0]))] == [7.0, 8.0]


@pytest.mark.parametrize(
    ("level", "word"),
    [
        (figures.Level("a", 0.5, 0.1, 0.5, 0), "good"),
        (figures.Level("a", 0.5, 0.1, 0.95, 0), "high"),
        (figures.Level("a", 1e-3, 5e-4, 1e-3, 0), "weak"),
        (figures.Level("a", 0.0, 0.0, 0.0, 0), "silent"),
        (figures.Level("a", 1.0, 0.5, 1.0, 7), "clipped"),
    ],
)
def test_levels_have_a_word(level, word, dressed, qtbot):
    assert meters.level_words(level) == word
    meter = meters.LevelMeter("a")
    qtbot.addWidget(meter)
    meter.resize(200, 40)
    meter.show_level(level)
    meter.grab()
    assert meter.summary.startswith(word)


@pytest.mark.parametrize("reach", [1.0, 2.0, 30.0, 45.0, 70.0, 180.0])
def test_an_axis_has_more_than_one_mark_however_little_room_there_is(reach, dressed, qtbot):
    """One mark alone gives no scale."""
    graph = plots.PhaseRibbon()
    qtbot.addWidget(graph)
    assert len(graph._ticks(-reach, reach, None, 2)) > 1
