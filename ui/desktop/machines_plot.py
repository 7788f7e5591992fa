"""How a point's once-per-rev vibration went from job to job: first and last run of each, with their intervals."""

from __future__ import annotations

import math
from datetime import datetime, timedelta

import numpy as np
from PySide6 import QtCore, QtGui
from stillshaft.ui.desktop.canvas import Graph, draw_marker, round_up
from stillshaft.ui.desktop.phrases import Names
from stillshaft.ui.desktop.words import own
from stillshaft.ui.library import PointTrend, moment
from stillshaft.ui.library_index import Reading

_DAY_S = 86_400.0
_STEPS, _MOST_DATES = (1.0, 2.0, 7.0, 14.0, 28.0, 91.0, 182.0, 365.0, 730.0), 6  # days between two dates below


class TrendPlot(Graph):
    """A point over the jobs of a machine: an open shape for the first run of a job, a full one for the last."""

    x_title = "date of the run"

    def __init__(self, trend: PointTrend, number: int) -> None:
        name = Names()
        super().__init__(name.told(f"Trend of {name(trend.point)}"), (16.0, 11.0))
        self._trend, self._number = trend, number
        self.y_title = own(f"{trend.point}, {trend.unit}")
        told = self._told()
        first = min((moment(r.at) for r, _ in told), default=datetime.min)
        self._origin = first.replace(hour=0, minute=0, second=0, microsecond=0)  # days begin at the lines of the grid
        days = [self._day(r) for r, _ in told]
        reach = max((r.amplitude + (r.amplitude_ci95 or 0.0) for r, _ in told), default=1.0)
        last = max(days, default=0.0)
        room = max(1.0, 0.06 * last)
        self.x_step = next((s for s in _STEPS if (last + 2.0 * room) / s <= _MOST_DATES), None)
        self.set_ranges(-room, last + room, 0.0, round_up(1.1 * reach))
        self.summarise(self._words())

    def _told(self) -> list[tuple[Reading, bool]]:
        """Readings in the trend's unit, first ones and last ones, in their order."""
        return [
            (reading, last)
            for row in self._trend.rows
            for reading, last in ((row.first, False), (row.last, True))
            if reading.unit == self._trend.unit
        ]

    def _day(self, reading: Reading) -> float:
        return (moment(reading.at) - self._origin).total_seconds() / _DAY_S

    def _words(self) -> str:
        said, name = [], Names()
        for row in self._trend.rows:
            first, last = row.first, row.last
            begin = f"{first.at[:10]} {name(row.job)}: {first.amplitude:.3g}"
            said.append(begin if first == last else f"{begin}, then {last.amplitude:.3g} {last.unit}")
        return name.told("; ".join(said)) or "no readings"

    def x_text(self, value: float) -> str:
        """The date."""
        return (self._origin + timedelta(days=value)).strftime("%Y-%m-%d")

    def draw(self, painter: QtGui.QPainter) -> None:
        """Lines from reading to reading, intervals, shapes."""
        frame, colour = self.frame_now(), self.point_colour(self._number)
        places = [
            (QtCore.QPointF(float(frame.x(np.array(self._day(r)))), float(frame.y(np.array(r.amplitude)))), r, last)
            for r, last in self._told()
        ]
        painter.setPen(self.pen(colour, self.line_px))
        painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
        painter.drawPolyline(QtGui.QPolygonF([at for at, _, _ in places]))
        for at, reading, last in places:
            half = reading.amplitude_ci95
            if half is not None and math.isfinite(half):
                low, high = (float(frame.y(np.array(reading.amplitude + s * half))) for s in (-1.0, 1.0))
                painter.setPen(self.pen(self.theme.text, 1.5))
                painter.drawLine(QtCore.QPointF(at.x(), low), QtCore.QPointF(at.x(), high))
            draw_marker(painter, self._number, at, 5.0, colour, None if last else self.theme.panel)
