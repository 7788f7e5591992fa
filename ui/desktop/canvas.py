"""What every picture is drawn on: a backdrop kept as a pixmap, curves without copies, and words for those who cannot see it.

Axes, grid and words are drawn once for each size, range and theme; a frame then costs one pixmap and its curves.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from PySide6 import QtCore, QtGui, QtWidgets
from shiboken6 import VoidPtr
from stillshaft.ui.desktop import look
from stillshaft.ui.desktop.worded import Worded
from stillshaft.ui.desktop.words import words
from stillshaft.ui.drawing import ticks
from stillshaft.ui.theme import THEMES, Theme

Real = NDArray[np.float64]

_ROUND = (1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0)
_SHAPES = 4  # of points
_KEEP_ABOVE = 0.4  # of its range: data smaller than this get a smaller one
_AXIS_TITLE_ROOM = 1.35  # heights of small type


def round_up(value: float) -> float:
    """The next round number."""
    if value <= 0.0:
        return 1.0
    power = 10.0 ** math.floor(math.log10(value))
    return next(r * power for r in _ROUND if r * power >= value * 0.999)


def settled(reach: float, now: float) -> float:
    """A range for data that reach so far: the one there is while it fits well, so that pictures stand still."""
    return now if _KEEP_ABOVE * now < reach <= now else round_up(1.1 * reach)


class Polyline:
    """Points of a curve in one piece of memory that Qt and numpy share."""

    def __init__(self) -> None:
        self.polygon = QtGui.QPolygonF()
        self._points = np.empty((0, 2))

    def set(self, x: Real, y: Real) -> QtGui.QPolygonF:
        """Put points in; both of shape (n,)."""
        if self.polygon.size() != x.size:
            self.polygon.resize(x.size)
            self._points = np.empty((0, 2))  # an empty polygon has no memory to look at
            if x.size:
                memory: Any = VoidPtr
                self._points = np.frombuffer(memory(self.polygon.data(), 16 * x.size, True)).reshape(-1, 2)
        self._points[:, 0], self._points[:, 1] = x, y
        return self.polygon


def columns(y: Real, count: int) -> Real:
    """At most `count` columns of a noisy curve, lowest and highest value of each in turn: no peak is lost."""
    if y.size <= 2 * count:
        return y
    begin = (np.arange(count) * y.size) // count
    reduced = np.empty(2 * count)
    reduced[0::2], reduced[1::2] = np.minimum.reduceat(y, begin), np.maximum.reduceat(y, begin)
    return reduced


@dataclass(frozen=True)
class Frame2D:
    """A rectangle on the screen and the ranges of its axes; turns data into px."""

    area: QtCore.QRectF
    x_low: float
    x_high: float
    y_low: float
    y_high: float

    def x(self, value: Real) -> Real:
        """Place from the left edge of the picture."""
        return self.area.left() + (value - self.x_low) * (self.area.width() / (self.x_high - self.x_low))

    def y(self, value: Real) -> Real:
        """Place from the upper edge of the picture."""
        return self.area.bottom() - (value - self.y_low) * (self.area.height() / (self.y_high - self.y_low))


class Picture(Worded, QtWidgets.QWidget):
    """A picture with a name, a theme, and a summary in words that follows its data.

    `smallest_ems` is the least room it needs, in heights of body text.
    """

    def __init__(self, name: str, smallest_ems: tuple[float, float]) -> None:
        super().__init__()
        self.setAccessibleName(name)
        self._smallest_ems = smallest_ems
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.TabFocus)
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setSizePolicy(QtWidgets.QSizePolicy.Policy.Expanding, QtWidgets.QSizePolicy.Policy.Expanding)
        self.theme: Theme = THEMES["light"]
        self._backdrop: QtGui.QPixmap | None = None
        self._fonts: tuple[QtGui.QFont, ...] = ()
        self._text_px = 0.0
        self._written: list[tuple[str, QtCore.QRectF]] = []
        self._behind: tuple[tuple[str, QtCore.QRectF], ...] = ()
        self.summarise("nothing to show yet")

    # words

    @property
    def summary(self) -> str:
        """What the picture shows, in words."""
        return self.accessibleDescription()

    def summarise(self, text: str) -> None:
        """Say what the picture shows."""
        if text != self.accessibleDescription():
            self.setAccessibleDescription(text)

    @property
    def texts(self) -> tuple[tuple[str, QtCore.QRectF], ...]:
        """What is written in the picture, and where: so that it can be seen whether all of it can be read."""
        return (*self._behind, *self._written)

    def reword(self) -> None:
        """What is written in it too."""
        super().reword()
        self.renew()

    # look

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.theme = theme
        self.renew()

    def renew(self) -> None:
        """Draw the backdrop anew with the next frame."""
        self._backdrop, self._fonts, self._text_px = None, (), 0.0
        self.update()

    def small(self, *, strong: bool = False) -> QtGui.QFont:
        """Type for axes."""
        if not self._fonts:
            px = look.SMALL * self.fontInfo().pixelSize()
            self._fonts = (look.font(px), look.font(px, strong=True))
        return self._fonts[strong]

    @property
    def text_px(self) -> float:
        """Height of a line of type for axes."""
        if not self._text_px:
            self._text_px = QtGui.QFontMetricsF(self.small()).height()
        return self._text_px

    def pen(self, colour: str, width: float = 1.0, dash: Sequence[float] = ()) -> QtGui.QPen:
        """A pen with round ends."""
        made = QtGui.QPen(QtGui.QColor(colour), width)
        made.setJoinStyle(QtCore.Qt.PenJoinStyle.RoundJoin)
        made.setCapStyle(QtCore.Qt.PenCapStyle.FlatCap if dash else QtCore.Qt.PenCapStyle.RoundCap)
        if dash:
            made.setDashPattern(list(dash))
        return made

    @property
    def line_px(self) -> float:
        """Thickness of curves: thick outdoors."""
        return self.theme.trace_px

    def point_colour(self, number: int) -> str:
        """Colour of a point, by its place in the hook-up."""
        return colour_of(self.theme, number)

    # drawing

    def draw_noisy(self, painter: QtGui.QPainter, polygon: QtGui.QPolygonF, colour: str) -> None:
        """Draw a curve full of noise: one pixel wide, unsmoothed, laid twice where lines are thick. All else is dear."""
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing, False)
        painter.setPen(QtGui.QPen(QtGui.QColor(colour), 1.0))
        painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
        for shift in range(round(self.line_px) - 1 or 1):
            painter.translate(0.0, 1.0 * (shift > 0))
            painter.drawPolyline(polygon)
        painter.resetTransform()
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)

    def draw_backdrop(self, painter: QtGui.QPainter) -> None:
        """Draw what stays from frame to frame."""

    def draw(self, painter: QtGui.QPainter) -> None:
        """Draw what changes."""

    def paintEvent(self, event: QtGui.QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Backdrop, then what changes, then the focus."""
        ratio = self.devicePixelRatioF()
        if self._backdrop is None:
            self._backdrop = QtGui.QPixmap(self.size() * ratio)
            self._backdrop.setDevicePixelRatio(ratio)
            self._backdrop.fill(QtGui.QColor(self.theme.panel))
            behind = QtGui.QPainter(self._backdrop)
            behind.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)
            self._written.clear()
            self.draw_backdrop(behind)
            behind.end()
            self._behind = tuple(self._written)
        self._written.clear()
        painter = QtGui.QPainter(self)
        painter.drawPixmap(0, 0, self._backdrop)
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)
        self.draw(painter)
        if self.hasFocus():
            painter.setClipping(False)
            painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
            painter.setPen(QtGui.QPen(QtGui.QColor(self.theme.accent), 2.0))
            painter.drawRoundedRect(QtCore.QRectF(self.rect()).adjusted(1, 1, -1, -1), 4, 4)
        painter.end()

    def set_smallest(self, ems: tuple[float, float]) -> None:
        """Ask for at least so much room, in heights of body text."""
        self._smallest_ems = ems
        self.updateGeometry()

    def minimumSizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """The least room it needs with text of this size."""
        px = self.fontInfo().pixelSize()
        return QtCore.QSize(*(round(ems * px) for ems in self._smallest_ems))

    def sizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """The same: it takes what it is given."""
        return self.minimumSizeHint()

    def resizeEvent(self, event: QtGui.QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """The backdrop no longer fits."""
        self.renew()

    def changeEvent(self, event: QtCore.QEvent) -> None:  # noqa: N802 - Qt's name
        """Nor with another text size."""
        if event.type() in (QtCore.QEvent.Type.FontChange, QtCore.QEvent.Type.StyleChange):
            self.renew()
            self.updateGeometry()
        super().changeEvent(event)

    def draw_text(
        self,
        painter: QtGui.QPainter,
        x: float,
        y: float,
        text: str,
        colour: str,
        *,
        across: float = 0.0,
        down: float = 1.0,
        backed: bool = False,
    ) -> QtCore.QRectF:
        """Write; `across` and `down` say which part of the text's box stands at (x, y): 0 left or top, 1 right or bottom.

        `backed` covers what lies under it.
        """
        text = words(text)
        metrics = QtGui.QFontMetricsF(painter.font())
        width, height = metrics.horizontalAdvance(text), metrics.height()
        if not text:
            return QtCore.QRectF(x, y, 0.0, 0.0)
        box = QtCore.QRectF(x - across * width, y - down * height, width, height)
        self._written.append((text, box))
        if backed:
            painter.fillRect(box.adjusted(-2.0, 1.0, 2.0, -1.0), QtGui.QColor(self.theme.panel))
        painter.setPen(QtGui.QColor(colour))
        painter.drawText(QtCore.QPointF(box.left(), box.top() + metrics.ascent()), text)
        return box


class Graph(Picture):
    """A picture with two straight axes. `frame` is where the data go; its ranges change only when they must."""

    x_title, y_title = "", ""
    grid_x = True

    def __init__(self, name: str, smallest_ems: tuple[float, float]) -> None:
        super().__init__(name, smallest_ems)
        self._ranges = (0.0, 1.0, 0.0, 1.0)
        self.x_step: float | None = None
        self.y_step: float | None = None
        self.bare = False

    def set_bare(self, bare: bool) -> None:
        """There is nothing to draw: no scale either, and what the picture says is written in it."""
        if bare != self.bare:
            self.bare = bare
            self.renew()

    def set_ranges(self, x_low: float, x_high: float, y_low: float, y_high: float) -> None:
        """Set what the axes reach; a change draws them anew."""
        ranges = (x_low, x_high, y_low, y_high)
        if ranges != self._ranges:
            self._ranges = ranges
            self.renew()

    def y_text(self, value: float) -> str:
        """How a value is written at the left axis."""
        return f"{value:g}".replace("-", "−")

    def x_text(self, value: float) -> str:
        """How a value is written at the lower axis."""
        return f"{value:g}".replace("-", "−")

    def frame_now(self) -> Frame2D:
        """Where the data go at this size."""
        left = 3.4 * self.text_px + 8.0
        top, bottom = _AXIS_TITLE_ROOM * self.text_px, 2.0 * self.text_px + 6.0
        area = QtCore.QRectF(left, top, max(10.0, self.width() - left - 10.0), max(10.0, self.height() - top - bottom))
        return Frame2D(area, *self._ranges)

    def _ticks(self, low: float, high: float, step: float | None, wanted: int) -> list[float]:
        if step is None:
            # one mark alone gives no scale
            return next((t for n in range(wanted, wanted + 4) if len(t := ticks(low, high, n)) > 1), [])
        return [step * i for i in range(math.ceil(low / step - 1e-9), math.floor(high / step + 1e-9) + 1)]

    def draw_backdrop(self, painter: QtGui.QPainter) -> None:
        """Grid, ticks and titles of the axes."""
        frame, theme = self.frame_now(), self.theme
        area = frame.area
        painter.setFont(self.small())
        if self.bare:
            x, y = 0.5 * self.width(), 0.5 * self.height()
            self.draw_text(painter, x, y, self.summary, theme.quiet, across=0.5, down=0.5)
            return
        height = QtGui.QFontMetricsF(painter.font()).height()
        wanted_y = max(2, int(area.height() / (2.6 * height)))
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing, False)
        for value in self._ticks(frame.y_low, frame.y_high, self.y_step, wanted_y):
            y = float(frame.y(np.array(value)))
            painter.setPen(QtGui.QPen(QtGui.QColor(theme.grid), 1))
            painter.drawLine(QtCore.QPointF(area.left(), y), QtCore.QPointF(area.right(), y))
            text = self.y_text(0.0 if abs(value) < 1e-12 else value)
            self.draw_text(painter, area.left() - 6.0, y, text, theme.quiet, across=1.0, down=0.5)
        ends = -math.inf
        for value in self._ticks(frame.x_low, frame.x_high, self.x_step, max(2, int(area.width() / (6.5 * height)))):
            x = float(frame.x(np.array(value)))
            if self.grid_x:
                painter.setPen(QtGui.QPen(QtGui.QColor(theme.grid), 1))
                painter.drawLine(QtCore.QPointF(x, area.top()), QtCore.QPointF(x, area.bottom()))
            text = self.x_text(0.0 if abs(value) < 1e-12 else value)
            wide = QtGui.QFontMetricsF(painter.font()).horizontalAdvance(text)
            across = 0.5 if x + 0.5 * wide < self.width() - 2.0 else 1.0
            if x - across * wide > ends + 4.0:
                ends = self.draw_text(
                    painter, x, area.bottom() + 4.0, text, theme.quiet, across=across, down=0.0
                ).right()
        painter.setPen(QtGui.QPen(QtGui.QColor(theme.quiet), 1))
        painter.drawLine(area.bottomLeft(), area.bottomRight())
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)
        self.draw_text(painter, area.left(), area.top() - 4.0, self.y_title, theme.quiet)
        self.draw_text(painter, area.right(), self.height() - 1.0, self.x_title, theme.quiet, across=1.0)

    def key(self, painter: QtGui.QPainter, names: Sequence[str]) -> None:
        """Shapes and names at the upper right, where there is room for all; a page says them elsewhere too."""
        area = self.frame_now().area
        painter.setFont(self.small())
        metrics = QtGui.QFontMetricsF(painter.font())
        names = [words(name) for name in names]
        room = area.width() - metrics.horizontalAdvance(words(self.y_title)) - 12.0
        if len(names) < 2 or sum(metrics.horizontalAdvance(n) + 30.0 for n in names) > room:
            return
        right = area.right()
        for number in reversed(range(len(names))):
            width = metrics.horizontalAdvance(names[number]) + 20.0
            y = area.top() - 4.0 - 0.5 * metrics.height()
            draw_marker(painter, number, QtCore.QPointF(right - width + 6.0, y), 4.0, self.point_colour(number))
            self.draw_text(painter, right, area.top() - 4.0, names[number], self.theme.text, across=1.0)
            right -= width + 10.0


def colour_of(theme: Theme, number: int) -> str:
    """Colour of a point; shapes and colours go round against each other, so that sixteen points differ."""
    return theme.points[(number + number // _SHAPES) % len(theme.points)]


def draw_marker(
    painter: QtGui.QPainter, number: int, at: QtCore.QPointF, radius: float, colour: str, inside: str | None = None
) -> None:
    """The shape of a point: disc, square, diamond, triangle in turn; `inside` fills it with another colour."""
    painter.setPen(QtGui.QPen(QtGui.QColor(colour), 1.5))
    painter.setBrush(QtGui.QColor(inside or colour))
    r = radius
    if number % _SHAPES == 0:
        painter.drawEllipse(at, r, r)
        return
    shapes = {
        1: ((-0.88, -0.88), (0.88, -0.88), (0.88, 0.88), (-0.88, 0.88)),
        2: ((0.0, -1.25), (1.25, 0.0), (0.0, 1.25), (-1.25, 0.0)),
        3: ((-1.15, -0.85), (1.15, -0.85), (0.0, 1.2)),
    }
    painter.drawPolygon(QtGui.QPolygonF([at + QtCore.QPointF(r * x, r * y) for x, y in shapes[number % _SHAPES]]))


class Marker(QtWidgets.QWidget):
    """The shape of a point beside its name."""

    def __init__(self, number: int, px: int = 14) -> None:
        super().__init__()
        self.setFixedSize(px, px)
        self._number, self._theme = number, THEMES["light"]

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        self.update()

    def paintEvent(self, event: QtGui.QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Draw."""
        painter = QtGui.QPainter(self)
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)
        colour = colour_of(self._theme, self._number)
        middle = QtCore.QPointF(0.5 * self.width(), 0.5 * self.height())
        draw_marker(painter, self._number, middle, 0.36 * self.width(), colour)
        painter.end()
