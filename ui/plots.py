"""The two pictures of a run: the vector cloud in the plane of amplitude and phase, and the phase ribbon in time."""

from __future__ import annotations

import numpy as np
import pyqtgraph as pg
import PySide6.QtWidgets  # noqa: F401 - before pyqtgraph, which would hide what is missing
from PySide6 import QtCore
from stillshaft.dsp import vectors
from stillshaft.dsp.measure import Measurement
from stillshaft.ui.theme import SHAPES, Theme

_CIRCLE = np.linspace(0.0, 2.0 * np.pi, 181)
_ROUND = (1.0, 2.0, 2.5, 5.0, 10.0)


def _round_up(value: float) -> float:
    """The next round number, for the rim of the cloud."""
    if value <= 0.0:
        return 1.0
    power = 10.0 ** np.floor(np.log10(value))
    return float(next(r * power for r in _ROUND if r * power >= value * 0.999))


def _place(z: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Screen place of vectors: 0° up, lag growing clockwise."""
    return z.imag, z.real


class VectorCloud(pg.PlotWidget):  # type: ignore[misc]  # the library has no types
    """Short-time vectors, mean, and the 95 % ellipse of the mean of each point."""

    def __init__(self) -> None:
        super().__init__()
        plain = self.getPlotItem()
        plain.hideAxis("left")
        plain.hideAxis("bottom")
        plain.setMenuEnabled(False)
        plain.hideButtons()
        self.setAspectLocked(True)
        self.setMouseEnabled(False, False)
        self.setAccessibleName("Vector cloud: amplitude and phase of each point, 0° up, lag clockwise")
        self.setMinimumSize(220, 220)
        self._rings = [pg.PlotCurveItem() for _ in range(2)]
        self._spokes = pg.PlotCurveItem()
        self._words = [pg.TextItem(anchor=(0.5, 0.5)) for _ in range(5)]
        for item in (*self._rings, self._spokes, *self._words):
            self.addItem(item)
        self._clouds: list[pg.ScatterPlotItem] = []
        self._means: list[pg.PlotCurveItem] = []
        self._ellipses: list[pg.PlotCurveItem] = []
        self._rim = 0.0
        self._theme: Theme | None = None
        self._unit = ""

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        self.setBackground(theme.panel)
        for item in (*self._rings, self._spokes):
            item.setPen(pg.mkPen(theme.line, width=1))
        for word in self._words:
            word.setColor(theme.quiet)
        for index in range(len(self._clouds)):
            self._colour(index)

    def _colour(self, index: int) -> None:
        assert self._theme is not None
        colour = self._theme.points[index % len(self._theme.points)]
        self._clouds[index].setBrush(pg.mkBrush(colour + "70" if len(colour) == 7 else colour))
        self._means[index].setPen(pg.mkPen(colour, width=2 * self._theme.trace_px))
        self._ellipses[index].setPen(pg.mkPen(colour, width=self._theme.trace_px))

    def _need(self, count: int) -> None:
        while len(self._clouds) < count:
            index = len(self._clouds)
            shape = SHAPES[index % len(SHAPES)]
            self._clouds.append(pg.ScatterPlotItem(size=6, symbol=shape, pen=None))
            self._means.append(pg.PlotCurveItem(antialias=True))
            self._ellipses.append(pg.PlotCurveItem(antialias=True))
            for item in (self._clouds[-1], self._means[-1], self._ellipses[-1]):
                self.addItem(item)
            if self._theme is not None:
                self._colour(index)

    def show_measurement(self, measured: Measurement | None) -> None:
        """Draw the newest vectors; nothing for None."""
        points = () if measured is None else measured.points
        self._need(len(points))
        reach = max((float(np.abs(p.blocks).max()) for p in points), default=self._rim or 1.0)
        if not 0.35 * self._rim < reach <= self._rim or (measured is not None and measured.unit != self._unit):
            self._unit = "" if measured is None else measured.unit
            self._set_rim(_round_up(reach))
        for index, cloud in enumerate(self._clouds):
            if measured is None or index >= len(points):
                cloud.setData([], [])
                self._means[index].setData([], [])
                self._ellipses[index].setData([], [])
                continue
            point = points[index]
            cloud.setData(*_place(point.blocks))
            self._means[index].setData(*_place(np.array([0.0, point.z])))
            covariance = measured.covariance[2 * index : 2 * index + 2, 2 * index : 2 * index + 2]
            self._ellipses[index].setData(*_place(ellipse(point.z, covariance, measured.degrees_of_freedom)))

    def _set_rim(self, rim: float) -> None:
        self._rim = rim
        for ring, share in zip(self._rings, (0.5, 1.0), strict=True):
            ring.setData(rim * share * np.cos(_CIRCLE), rim * share * np.sin(_CIRCLE))
        spokes = np.array([[0.0, rim * np.exp(1j * a)] for a in np.deg2rad(np.arange(0, 360, 30))]).ravel()
        self._spokes.setData(spokes.imag, spokes.real, connect="pairs")
        for word, angle in zip(self._words, (0, 90, 180, 270), strict=False):
            z = 1.12 * rim * np.exp(1j * np.deg2rad(angle))
            word.setText(f"{angle}°")
            word.setPos(z.imag, z.real)
        self._words[4].setText(f"{rim:g} {self._unit}")
        far = 1.2 * rim * np.exp(1j * np.deg2rad(45))
        self._words[4].setPos(far.imag, far.real)
        self.setRange(QtCore.QRectF(-1.3 * rim, -1.2 * rim, 2.6 * rim, 2.4 * rim), padding=0.0)


def ellipse(z: complex, covariance: np.ndarray, degrees_of_freedom: int) -> np.ndarray:
    """Border of the joint 95 % region of a mean, complex points (Hotelling's T², from memory)."""
    from scipy.special import fdtri

    freedom = max(2, degrees_of_freedom)
    scale = np.sqrt(2.0 * freedom / (freedom - 1.0) * float(fdtri(2, freedom - 1, 0.95)))
    values, axes = np.linalg.eigh(covariance)
    border = axes @ (np.sqrt(np.maximum(values, 0.0))[:, None] * np.array([np.cos(_CIRCLE), np.sin(_CIRCLE)]))
    return np.asarray(z + scale * (border[0] + 1j * border[1]))


class PhaseRibbon(pg.PlotWidget):  # type: ignore[misc]  # the library has no types
    """Phase of each point against time, as its departure from the mean."""

    def __init__(self) -> None:
        super().__init__()
        plain = self.getPlotItem()
        plain.setMenuEnabled(False)
        plain.hideButtons()
        plain.setLabel("bottom", "time, s")
        plain.setLabel("left", "phase − mean, °")
        plain.getAxis("left").setWidth(60)
        self.setMouseEnabled(False, False)
        self.setMinimumHeight(150)
        self.setAccessibleName("Phase ribbon: phase of each point against time")
        self._zero = pg.InfiniteLine(angle=0)
        self.addItem(self._zero)
        self._curves: list[pg.PlotCurveItem] = []
        self._theme: Theme | None = None
        self._span_deg = 0.0

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        self.setBackground(theme.panel)
        self._zero.setPen(pg.mkPen(theme.line, width=1))
        for name in ("left", "bottom"):
            axis = self.getPlotItem().getAxis(name)
            axis.setPen(theme.quiet)
            axis.setTextPen(theme.text)
        for index, curve in enumerate(self._curves):
            curve.setPen(self._pen(index))

    def _pen(self, index: int) -> object:
        assert self._theme is not None
        # one pixel wide unless outdoors: wide noisy lines are costly to draw
        return pg.mkPen(self._theme.points[index % len(self._theme.points)], width=1 if self._theme.trace_px < 2 else 2)

    def show_measurement(self, measured: Measurement | None) -> None:
        """Draw the newest phases; nothing for None."""
        points = () if measured is None else measured.points
        while len(self._curves) < len(points):
            curve = pg.PlotCurveItem()
            self._curves.append(curve)
            self.addItem(curve)
            if self._theme is not None:
                curve.setPen(self._pen(len(self._curves) - 1))
        swing = 0.0
        for index, curve in enumerate(self._curves):
            if measured is None or index >= len(points):
                curve.setData([], [])
                continue
            point = points[index]
            phase = np.rad2deg(np.angle(point.blocks / point.z)) if point.z else np.zeros(point.blocks.size)
            swing = max(swing, float(np.abs(phase).max(initial=0.0)))
            curve.setData(measured.times_s, phase)
        if measured is None:
            return
        if not 0.35 * self._span_deg < swing <= self._span_deg:
            self._span_deg = max(1.0, min(180.0, _round_up(1.1 * swing)))
        self.setYRange(-1.1 * self._span_deg, 1.1 * self._span_deg, padding=0.0)
        self.setXRange(0.0, max(5.0, float(measured.duration_s)), padding=0.02)


def phase_text(z: complex) -> str:
    """Phase in degrees with one decimal."""
    return f"{vectors.amplitude_phase(z)[1]:.1f}°"
