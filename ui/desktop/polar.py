"""Vectors in the plane: the vector cloud of a run, and run-ups and coast-downs. 0° is up; lag grows against rotation."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6 import QtCore, QtGui
from stillshaft.dsp import vectors
from stillshaft.ui.desktop.canvas import Picture, Polyline, Real, draw_marker, round_up, settled
from stillshaft.ui.desktop.figures import CloudPoint, SweepCurve, cloud_words

Complex = NDArray[np.complex128]

_LENS_SHARE = 0.118  # of the picture's side
_LENS_ASPECT, _LENS_LINES = 1.45, 2.5  # of the box that lenses stand in the corners of; least radius in lines of text
_LENS_UP, _LENS_FILL = 0.24, 0.6  # of the lens: its cloud's middle above its own, and what the cloud fills; words below
_UNKNOWN_ALPHA = 36  # of 255: a region that leaves the picture is no line to be read
_MOST_TIMES, _LEAST_TIMES = 5000.0, 2.0


class PolarPicture(Picture):
    """Rings and spokes, and the way from a vector to a place on the screen."""

    def __init__(self, name: str, smallest_ems: tuple[float, float]) -> None:
        super().__init__(name, smallest_ems)
        self.rim = 1.0
        self.unit = ""
        self.clockwise = True
        self._empty = True

    def set_clockwise(self, clockwise: bool) -> None:
        """Which way lag grows: clockwise where the rotor, as seen, turns the other way."""
        if clockwise != self.clockwise:
            self.clockwise = clockwise
            self.renew()

    def middle(self) -> tuple[float, float, float]:
        """Place of the origin and radius of the rim, px."""
        radius = 0.5 * min(self.width(), self.height()) - 1.6 * self.text_px
        return 0.5 * self.width(), 0.5 * self.height(), max(10.0, radius)

    def place(self, z: Complex) -> tuple[Real, Real]:
        """Places of vectors, px."""
        x, y, radius = self.middle()
        scale = radius / self.rim
        side = 1.0 if self.clockwise else -1.0
        return x + side * scale * z.imag, y - scale * z.real

    def _at(self, z: complex) -> QtCore.QPointF:
        x, y = self.place(np.array([z]))
        return QtCore.QPointF(float(x[0]), float(y[0]))

    def draw_backdrop(self, painter: QtGui.QPainter) -> None:
        """Rings at quarters of the rim, spokes every 30°, words at every 90°."""
        x, y, radius = self.middle()
        theme, half_width = self.theme, 0.5 * self.width()
        painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
        for ring in (0.25, 0.5, 0.75, 1.0):
            painter.setPen(QtGui.QPen(QtGui.QColor(theme.quiet if ring == 1.0 else theme.grid), 1.0))
            painter.drawEllipse(QtCore.QPointF(x, y), ring * radius, ring * radius)
        painter.setFont(self.small())
        gap = 4.0
        beside = QtGui.QFontMetricsF(painter.font()).horizontalAdvance("270°") + gap
        for degrees in range(0, 360, 30):
            turn = vectors.vector(self.rim, degrees)
            painter.setPen(QtGui.QPen(QtGui.QColor(theme.grid), 1.0))
            painter.drawLine(self._at(0.08 * turn), self._at(turn))
            if degrees % 90 == 0:
                end = self._at(turn)
                across = 0.5 if degrees % 180 == 0 else (0.0 if end.x() > x else 1.0)
                down = {0: 1.0, 180: 0.0}.get(degrees, 0.5)
                shift = QtCore.QPointF(0.0 if across == 0.5 else (gap if end.x() > x else -gap), 0.0)
                if across != 0.5 and half_width - radius < beside:  # no room beside: inside the rim
                    across, down, shift = 1.0 - across, 1.0, QtCore.QPointF(-shift.x(), -2.0)
                self.draw_text(
                    painter,
                    end.x() + shift.x(),
                    end.y() + shift.y(),
                    f"{degrees}°",
                    theme.quiet,
                    across=across,
                    down=down,
                )
        if self._empty:
            self.draw_text(painter, x, y, self.summary, theme.quiet, across=0.5, down=0.5, backed=True)
            return
        for ring in (0.5, 1.0):
            below = self._at(vectors.vector(ring * self.rim, 180.0 - (7.0 if ring == 1.0 else 0.0)))
            words = f"{ring * self.rim:g}" + (f" {self.unit}" if ring == 1.0 else "")
            self.draw_text(painter, below.x() + 6.0, below.y() - 3.0, words, theme.quiet, backed=True)


class VectorCloud(PolarPicture):
    """Short-window vectors, mean, 95 % region and last run's vector of each point, and each cloud under a lens."""

    def __init__(self) -> None:
        super().__init__("Vector cloud", (17.0, 17.0))
        self._points: tuple[CloudPoint, ...] = ()
        self._curves: list[tuple[Polyline, Polyline]] = []

    def show_cloud(self, points: Sequence[CloudPoint], unit: str) -> None:
        """Draw these points; none: an empty plane."""
        self._points = tuple(points)
        while len(self._curves) < len(self._points):
            self._curves.append((Polyline(), Polyline()))
        reach = max(
            (max(abs(p.mean), float(np.abs(p.blocks).max(initial=0.0)), abs(p.last or 0.0)) for p in points),
            default=0.0,
        )
        rim = settled(reach, self.rim) if points else self.rim
        if (rim, unit, not points) != (self.rim, self.unit, self._empty):
            self.rim, self.unit, self._empty = rim, unit, not points
            self.renew()
        self.summarise(cloud_words(self._points, unit))
        self.update()

    def draw(self, painter: QtGui.QPainter) -> None:
        """Vectors from the middle, clouds, regions, markers; then the lenses."""
        origin = self._at(0.0)
        for number, point in enumerate(self._points):
            colour = self.point_colour(number)
            end = self._at(point.mean)
            if point.last is not None:
                before = self._at(point.last)
                painter.setPen(self.pen(colour, 1.2, (4.0, 3.0)))
                painter.drawLine(origin, before)
                painter.drawLine(before, end)
                draw_marker(painter, number, before, 5.0, colour, self.theme.panel)
            painter.setPen(self.pen(colour, self.line_px + 0.5))
            painter.drawLine(origin, end)
            dots, border = self._curves[number]
            self._dots(painter, dots.set(*self.place(point.blocks)), number, 3.0)
            self._region(painter, border.set(*self.place(point.border)), point, colour)
            draw_marker(painter, number, end, 5.0, colour)
        for number, point in enumerate(self._points[:4]):
            self._draw_lens(painter, number, point)

    def _region(self, painter: QtGui.QPainter, border: QtGui.QPolygonF, point: CloudPoint, colour: str) -> None:
        """The border of a mean's region; a tint within the rim where it is next to unknown."""
        if float(np.abs(point.border).max(initial=0.0)) <= self.rim:
            painter.setPen(self.pen(colour, self.line_px))
            painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
            painter.drawPolygon(border)
            return
        x, y, radius = self.middle()
        inside = QtGui.QPainterPath()
        inside.addEllipse(QtCore.QPointF(x, y), radius, radius)
        tint = QtGui.QColor(colour)
        tint.setAlpha(_UNKNOWN_ALPHA)
        painter.setClipPath(inside)
        painter.setPen(QtCore.Qt.PenStyle.NoPen)
        painter.setBrush(tint)
        painter.drawPolygon(border)
        painter.setClipping(False)

    def _dots(self, painter: QtGui.QPainter, polygon: QtGui.QPolygonF, number: int, size: float) -> None:
        colour = QtGui.QColor(self.point_colour(number))
        colour.setAlpha(130)
        # squares without smoothing: a cloud of a thousand costs next to nothing
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing, False)
        painter.setPen(QtGui.QPen(colour, size, QtCore.Qt.PenStyle.SolidLine, QtCore.Qt.PenCapStyle.SquareCap))
        painter.drawPoints(polygon)
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)

    def _lens(self, number: int) -> tuple[QtCore.QPointF, float]:
        """Middle and radius of a point's lens: the corners, the upper ones first."""
        side = min(self.width(), self.height())
        across = min(self.width(), _LENS_ASPECT * side)  # not far from what it enlarges, however wide the picture
        radius = max(_LENS_SHARE * side, min(_LENS_LINES * self.text_px, _LENS_SHARE * across))
        beside = 0.5 * across - radius - 2.0
        x = 0.5 * self.width() + (-beside if number in (0, 3) else beside)
        y = radius + 2.0 if number < 2 else self.height() - radius - 2.0
        return QtCore.QPointF(x, y), radius

    def _draw_lens(self, painter: QtGui.QPainter, number: int, point: CloudPoint) -> None:
        """The cloud about its mean, larger by a round number of times."""
        middle, radius = self._lens(number)
        reach = max(
            float(np.quantile(np.abs(point.blocks - point.mean), 0.98)) if point.blocks.size else 0.0,
            float(np.abs(point.border - point.mean).max(initial=0.0)),
        )
        _, _, plane = self.middle()
        wanted = _LENS_FILL * radius / max(reach * plane / self.rim, 1e-9)
        if not wanted > _LEAST_TIMES:
            return
        times = _round_down(min(wanted, _MOST_TIMES))
        scale, side = times * plane / self.rim, 1.0 if self.clockwise else -1.0
        colour = self.point_colour(number)
        painter.setPen(self.pen(self.theme.quiet, 1.0))
        painter.setBrush(QtGui.QColor(self.theme.panel))
        painter.drawEllipse(middle, radius, radius)
        at = middle - QtCore.QPointF(0.0, _LENS_UP * radius)
        half = radius * math.sqrt(1.0 - _LENS_UP**2)
        painter.setPen(QtGui.QPen(QtGui.QColor(self.theme.grid), 1.0))
        painter.drawLine(at - QtCore.QPointF(half, 0), at + QtCore.QPointF(half, 0))
        painter.drawLine(middle - QtCore.QPointF(0, radius), middle + QtCore.QPointF(0, radius))
        dots, border = self._curves[number]
        off = point.blocks - point.mean
        off = off[np.abs(off) * scale < (1.0 - _LENS_UP) * radius - 3.0]
        self._dots(painter, dots.set(at.x() + side * scale * off.imag, at.y() - scale * off.real), number, 3.0)
        off = point.border - point.mean
        painter.setPen(self.pen(colour, self.line_px))
        painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
        painter.drawPolygon(border.set(at.x() + side * scale * off.imag, at.y() - scale * off.real))
        painter.setFont(self.small())
        words = f"×{times:g}"
        low = middle.y() + 0.8 * radius
        box = self.draw_text(painter, middle.x() + 6.0, low, words, self.theme.quiet, across=0.5, backed=True)
        draw_marker(painter, number, QtCore.QPointF(box.left() - 9.0, box.center().y()), 4.5, colour)


def _round_down(value: float) -> float:
    """The next lower of 1, 2 and 5 times a power of ten."""
    power = 10.0 ** math.floor(math.log10(value))
    return max(r * power for r in (1.0, 2.0, 5.0) if r * power <= value * 1.001)


class SweepPolar(PolarPicture):
    """Vectors of a run-up or coast-down as curves, with speeds beside them."""

    def __init__(self) -> None:
        super().__init__("Vectors through the speed", (17.0, 17.0))
        self._curves: tuple[SweepCurve, ...] = ()
        self._lines: list[Polyline] = []

    def show_sweep(self, curves: Sequence[SweepCurve], unit: str) -> None:
        """Draw these curves."""
        self._curves = tuple(curves)
        self._lines = [Polyline() for _ in curves]
        reach = max((float(np.abs(c.z).max(initial=0.0)) for c in curves), default=0.0)
        self.rim, self.unit, self._empty = round_up(1.02 * reach), unit, not curves
        said = [
            f"{c.name} from {c.speeds_rpm.min():.0f} to {c.speeds_rpm.max():.0f} r/min, up to {np.abs(c.z).max():.3g} {unit}"
            for c in curves
            if c.z.size
        ]
        self.summarise("; ".join(said) or "no sweep yet")
        self.renew()

    def draw(self, painter: QtGui.QPainter) -> None:
        """Curves with about six speeds written beside each."""
        painter.setFont(self.small())
        metrics = QtGui.QFontMetricsF(painter.font())
        written: list[QtCore.QRectF] = []
        for number, curve in enumerate(self._curves):
            colour = self.point_colour(number)
            painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
            painter.setPen(self.pen(colour, self.line_px))
            x, y = self.place(curve.z)
            painter.drawPolyline(self._lines[number].set(x, y))
            for i in _along(x, y, 6):
                at = QtCore.QPointF(float(x[i]), float(y[i]))
                draw_marker(painter, number, at, 3.5, colour)
                words = f"{curve.speeds_rpm[i]:.0f}"
                box = QtCore.QRectF(
                    at.x() + 6.0, at.y() - metrics.height(), metrics.horizontalAdvance(words), metrics.height()
                )
                if not any(box.adjusted(-6.0, 0.0, 6.0, 0.0).intersects(w) for w in written):
                    written.append(self.draw_text(painter, box.left(), box.bottom(), words, self.theme.text))


def _along(x: Real, y: Real, count: int) -> list[int]:
    """Places about equally far apart along a curve."""
    if x.size < 2:
        return list(range(x.size))
    way = np.concatenate([[0.0], np.cumsum(np.hypot(np.diff(x), np.diff(y)))])
    return sorted(set(np.searchsorted(way, np.linspace(0.0, way[-1], count)).clip(0, x.size - 1).tolist()))
