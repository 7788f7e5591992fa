"""Inputs as they come in: live levels with clipping, and the pulse as it is seen."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

import numpy as np
from PySide6 import QtCore, QtGui
from stillshaft.ui.desktop import look
from stillshaft.ui.desktop.canvas import Graph, Picture, Polyline, columns
from stillshaft.ui.desktop.figures import Level, PulseSeen

_LOWEST_DB = -80.0
_WEAK_RMS, _HIGH_PEAK = 1e-3, 0.9  # of full scale, as the signal check has them


def level_words(level: Level) -> str:
    """What a level says: clipped, high, good, weak or silent."""
    if level.clipped:
        return "clipped"
    if level.held <= 1e-6:
        return "silent"
    return "high" if level.held > _HIGH_PEAK else "weak" if level.rms < _WEAK_RMS else "good"


def _share(part: float) -> float:
    """Place on the scale, 0 to 1, of a part of full scale."""
    decibels = 20.0 * math.log10(max(part, 1e-9))
    return min(1.0, max(0.0, 1.0 - decibels / _LOWEST_DB))


class LevelMeter(Picture):
    """One input: rms as a bar, peak and held peak as lines, on a scale in dB of full scale; clipping in words."""

    def __init__(self, name: str) -> None:
        super().__init__(f"Level of {name}", (7.0, 2.8))
        self._name = name
        self._level: Level | None = None
        self._said_of = ""
        self.setSizePolicy(self.sizePolicy().horizontalPolicy(), self.sizePolicy().verticalPolicy().Fixed)

    def show_level(self, level: Level | None) -> None:
        """Draw this level."""
        self._level = level
        if level is None:
            self.summarise("no signal yet")
        else:
            word = level_words(level)
            peak_db = round(20.0 * math.log10(max(level.held, 1e-9)))
            said = f"{word}, peak {peak_db} dB of full scale"
            if said != self._said_of:
                self._said_of = said
                self.summarise(said)
        self.update()

    def _bar(self) -> QtCore.QRectF:
        return QtCore.QRectF(1.0, 5.0, self.width() - 2.0, max(8.0, self.height() - 1.25 * self.text_px - 9.0))

    def draw_backdrop(self, painter: QtGui.QPainter) -> None:
        """The scale."""
        bar, theme = self._bar(), self.theme
        painter.setPen(QtGui.QPen(QtGui.QColor(theme.line), 1.0))
        painter.setBrush(QtGui.QColor(theme.ground))
        painter.drawRect(bar)
        painter.setFont(look.font(0.78 * self.fontInfo().pixelSize()))
        room = bar.width() / QtGui.QFontMetricsF(painter.font()).horizontalAdvance("−00 dB")
        for decibels in (-80, -60, -40, -20, 0) if room > 6.5 else (-80, -40, 0) if room > 4.0 else (-80, 0):
            x = bar.left() + bar.width() * (1.0 - decibels / _LOWEST_DB)
            painter.setPen(QtGui.QPen(QtGui.QColor(theme.quiet), 1.0))
            painter.drawLine(QtCore.QPointF(x, bar.bottom()), QtCore.QPointF(x, bar.bottom() + 3.0))
            across = {-80: 0.0, 0: 1.0}.get(decibels, 0.5)
            words = f"{decibels}".replace("-", "−") + (" dB" if decibels == 0 else "")
            self.draw_text(painter, x, bar.bottom() + 3.0, words, theme.quiet, across=across, down=0.0)

    def draw(self, painter: QtGui.QPainter) -> None:
        """Bar, peak, held peak; hatched where it clipped."""
        level, bar, theme = self._level, self._bar(), self.theme
        if level is None:
            return
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing, False)
        word = level_words(level)
        colour = {"clipped": theme.bad, "high": theme.caution, "weak": theme.caution}.get(word, theme.accent)
        inside = bar.adjusted(1.0, 1.0, -1.0, -1.0)
        painter.fillRect(
            QtCore.QRectF(inside.left(), inside.top(), inside.width() * _share(level.rms), inside.height()),
            QtGui.QColor(colour),
        )
        for value, width in ((level.peak, 1.0), (level.held, 3.0)):
            x = inside.left() + inside.width() * _share(value)
            painter.fillRect(
                QtCore.QRectF(min(x, inside.right() - width), inside.top(), width, inside.height()),
                QtGui.QColor(theme.text if width > 1.0 else colour),
            )
        if level.clipped:
            end = QtCore.QRectF(inside.right() - 16.0, inside.top(), 16.0, inside.height())
            painter.fillRect(end, QtGui.QColor(theme.panel))
            painter.fillRect(end, QtGui.QBrush(QtGui.QColor(theme.bad), QtCore.Qt.BrushStyle.BDiagPattern))


class PulsePicture(Graph):
    """A few turns of the pulse input with its threshold and the edges that were found."""

    x_title, y_title = "time, ms", "pulse, % of full scale"
    grid_x = False

    def __init__(self) -> None:
        super().__init__("Pulse as it is seen", (17.0, 10.5))
        self.bare = True
        self._seen: PulseSeen | None = None
        self._line = Polyline()
        self.set_ranges(0.0, 100.0, -10.0, 60.0)
        self.show_pulse(None)

    def show_pulse(self, seen: PulseSeen | None) -> None:
        """Draw this; None: nothing."""
        self._seen = seen
        self.set_bare(seen is None or not seen.values.size)
        if seen is None or not seen.values.size:
            self.summarise("no pulse signal yet")
            self.update()
            return
        low, high = 100.0 * float(seen.values.min()), 100.0 * float(seen.values.max())
        _, x_high, y_low, y_high = self._ranges
        room = 0.12 * max(high - low, 1.0)
        if not (y_low < low and high < y_high and y_high - y_low < 2.5 * max(high - low, 1.0)):
            step = 10.0 ** math.floor(math.log10(max(high - low, 1.0)))
            y_low, y_high = step * math.floor((low - room) / step), step * math.ceil((high + room) / step)
        span = float(seen.times_ms[-1])
        x_high = x_high if 0.95 * x_high < span <= x_high else math.ceil(1.01 * span)
        self.set_ranges(0.0, x_high, y_low, y_high)
        self.summarise(pulse_words(seen))
        self.update()

    def draw(self, painter: QtGui.QPainter) -> None:
        """Signal, threshold, edges."""
        seen = self._seen
        if seen is None or not seen.values.size:
            return
        frame, theme = self.frame_now(), self.theme
        painter.setClipRect(frame.area)
        if seen.threshold is not None:
            y = float(frame.y(np.array(100.0 * seen.threshold)))
            painter.setPen(self.pen(theme.caution, 1.5, (6.0, 4.0)))
            painter.drawLine(QtCore.QPointF(frame.area.left(), y), QtCore.QPointF(frame.area.right(), y))
            painter.setFont(self.small())
            apart = [frame.area.left(), *frame.x(seen.edges_ms).tolist(), frame.area.right()]
            widest = max(end - begin for begin, end in pairwise(apart))
            # between two pulses, always the same two
            at = next(0.5 * (begin + end) for begin, end in pairwise(apart) if end - begin > 0.9 * widest)
            self.draw_text(painter, at, y - 3.0, "threshold", theme.caution, across=0.5, backed=True)
        level = columns(100.0 * seen.values, max(16, int(frame.area.width())))
        x = np.linspace(float(frame.x(seen.times_ms[:1])[0]), float(frame.x(seen.times_ms[-1:])[0]), level.size)
        self.draw_noisy(painter, self._line.set(x, frame.y(level)), theme.text)
        painter.setPen(QtCore.Qt.PenStyle.NoPen)
        painter.setBrush(QtGui.QColor(theme.accent))
        for x_at in frame.x(seen.edges_ms).tolist():
            top = frame.area.top()
            mark = [(x_at, top + 9.0), (x_at - 5.0, top), (x_at + 5.0, top)]
            painter.drawPolygon(QtGui.QPolygonF([QtCore.QPointF(*p) for p in mark]))
            painter.fillRect(QtCore.QRectF(x_at - 0.5, top, 1.0, frame.area.height()), QtGui.QColor(theme.accent))
        painter.setClipping(False)


def pulse_words(seen: PulseSeen) -> str:
    """The pulse in one sentence."""
    if seen.trouble is not None:
        return seen.trouble
    parts = []
    if seen.rpm is not None:
        parts.append(f"{seen.rpm:.1f} r/min")
    if seen.rising is not None:
        parts.append(f"{'rising' if seen.rising else 'falling'} edge")
    if seen.threshold is not None:
        parts.append(f"threshold at {100.0 * seen.threshold:.0f} % of full scale")
    if seen.mark_deg is not None:
        parts.append(f"mark {seen.mark_deg:.1f}° wide")
    if seen.jitter_deg is not None:
        parts.append(f"edges to {seen.jitter_deg:.2g}°")
    parts.append(f"{seen.missing} missing, {seen.extra} extra")
    return ", ".join(parts)


def worst(levels: Sequence[Level]) -> str:
    """The gravest word among levels, for one line."""
    order = ("good", "weak", "silent", "high", "clipped")
    return max((level_words(v) for v in levels), key=order.index, default="silent")
