"""Colours: contrast in every theme, and telling points apart with every kind of colour vision; type and signs."""

from itertools import combinations

import numpy as np
import pytest
from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui.desktop import canvas, glyphs, look
from stillshaft.ui.desktop.stages import Stage, State
from stillshaft.ui.theme import THEMES

# Machado, Oliveira & Fernandes 2009, severity 1.0, on linear RGB (from memory)
VISION = {
    "usual": np.eye(3),
    "protanopia": np.array(
        [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]]
    ),
    "deuteranopia": np.array(
        [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]]
    ),
    "tritanopia": np.array(
        [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]]
    ),
}
APART = 20.0  # CIE 1976 difference: ten times what is just seen (common practice, no source)


def linear(colour):
    parts = np.array([int(colour[i : i + 2], 16) for i in (1, 3, 5)]) / 255.0
    return np.where(parts <= 0.04045, parts / 12.92, ((parts + 0.055) / 1.055) ** 2.4)


def contrast(a, b):
    """WCAG 2.2."""
    light, dark = sorted((float(linear(c) @ [0.2126, 0.7152, 0.0722]) for c in (a, b)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def lab(rgb):
    """CIE 1976 L*a*b* of linear sRGB under D65."""
    xyz = np.array([[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]]) @ np.clip(rgb, 0, 1)
    f = np.cbrt(xyz / [0.9505, 1.0, 1.089])
    low = xyz / [0.9505, 1.0, 1.089] <= 0.008856
    f = np.where(low, 7.787 * xyz / [0.9505, 1.0, 1.089] + 16 / 116, f)
    return np.array([116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])])


@pytest.mark.parametrize("theme", THEMES.values(), ids=lambda t: t.name)
def test_everything_written_can_be_read(theme):
    written = {n: getattr(theme, n) for n in ("text", "quiet", "accent", "good", "caution", "bad")}
    grounds = {n: getattr(theme, n) for n in ("ground", "panel", "sunken", "soft")}
    faint = {(w, g): contrast(c, d) for w, c in written.items() for g, d in grounds.items() if contrast(c, d) < 4.5}
    assert faint == {}
    assert contrast(theme.on_accent, theme.accent) >= 4.5
    assert min(contrast(c, theme.panel) for c in theme.points) >= 4.5


@pytest.mark.parametrize("theme", THEMES.values(), ids=lambda t: t.name)
@pytest.mark.parametrize("vision", VISION)
def test_points_are_told_apart(theme, vision):
    seen = [lab(VISION[vision] @ linear(c)) for c in theme.points]
    assert min(float(np.linalg.norm(a - b)) for a, b in combinations(seen, 2)) > APART


@pytest.mark.parametrize("theme", THEMES.values(), ids=lambda t: t.name)
@pytest.mark.parametrize("kind", ["", "segment", "main"])
@pytest.mark.parametrize("enabled", [True, False])
@pytest.mark.parametrize("checked", [True, False])
def test_buttons_are_read_in_every_state(dressed, qtbot, theme, kind, enabled, checked):
    """Also those that cannot be pressed: what is chosen is asked for all the same."""
    button = QtWidgets.QPushButton("HHHHHHHH")
    qtbot.addWidget(button)
    button.setObjectName(kind)
    button.setCheckable(True)
    button.setChecked(checked)
    button.setEnabled(enabled)
    button.setStyleSheet(look.style_sheet(theme, 28))
    image = button.grab().toImage()
    middle = range(image.height() // 2 - 4, image.height() // 2 + 4)
    seen = {image.pixelColor(x, y).name() for x in range(12, image.width() - 12) for y in middle}
    ground = image.pixelColor(8, image.height() // 2).name()
    assert max(contrast(ground, colour) for colour in seen) >= 4.5


def test_the_bundled_typeface_is_used_with_figures_of_one_width(dressed):
    font = look.font(40)
    assert QtGui.QFontInfo(font).family() == look.FAMILY
    metrics = QtGui.QFontMetricsF(font)
    assert {metrics.horizontalAdvance(4 * d) for d in "0123456789"} == {metrics.horizontalAdvance("1111")}
    raw = QtGui.QRawFont.fromFont(font)
    assert all(raw.supportsCharacter(ord(letter)) for letter in "°µ±×−·²≤≥–…“”’ÄäÖöÜüßéñøåŁ")


def drawn(draw):
    image = QtGui.QImage(48, 48, QtGui.QImage.Format.Format_RGB32)
    image.fill(QtGui.QColor("white"))
    painter = QtGui.QPainter(image)
    draw(painter)
    painter.end()
    return bytes(image.constBits())


def test_sixteen_points_differ_in_shape_or_colour():
    theme = THEMES["dark"]
    assert len({(n % 4, canvas.colour_of(theme, n)) for n in range(16)}) == 16
    assert [canvas.colour_of(theme, n) for n in range(4)] == list(theme.points)


def test_every_stage_and_state_has_its_own_shape(dressed):
    """In one colour: nothing hangs on hue."""
    box = QtCore.QRectF(4, 4, 40, 40)
    stages = {drawn(lambda p, s=s: glyphs.stroke(p, glyphs.stage_path(s), box, "black", 2.0)) for s in Stage}
    assert len(stages) == len(Stage)
    grey = THEMES["sunlight"].__class__(**{**vars(THEMES["sunlight"]), "accent": "#000000", "good": "#000000",
                                           "caution": "#000000", "quiet": "#000000"})  # fmt: skip
    centre = QtCore.QPointF(24, 24)
    states = {drawn(lambda p, s=s: glyphs.draw_state(p, s, centre, 14.0, grey, "#ffffff")) for s in State}
    assert len(states) == len(State)
