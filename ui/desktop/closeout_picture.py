"""Something against its limit, as bars with their 95 % interval, verdict and source."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6 import QtCore, QtGui
from stillshaft.ui.desktop.canvas import Picture
from stillshaft.ui.desktop.closeout_work import MET, NOT_MET, Standing
from stillshaft.ui.desktop.words import own, words
from stillshaft.ui.report_words import figure, with_half

_ROW_EMS = 5.0


class StandingPicture(Picture):
    """A bar for each, its limit as a line across it, the verdict as a word; values of one unit share a scale."""

    def __init__(self, name: str) -> None:
        super().__init__(name, (20.0, _ROW_EMS))
        self._rows: tuple[Standing, ...] = ()

    def show_rows(self, rows: Sequence[Standing]) -> None:
        """Draw these."""
        self._rows = tuple(rows)
        self.set_smallest((20.0, _ROW_EMS * max(1, len(rows))))
        said = [f"{r.name}: {_words(r)}, {_limit(r)}: {r.verdict}; {r.source}" for r in rows]
        self.summarise("; ".join(said) or "nothing to hold against a limit")
        self.renew()

    def draw_backdrop(self, painter: QtGui.QPainter) -> None:
        """A row each: name and verdict, bar and limit, figures and source."""
        theme = self.theme
        high = self.height() / max(1, len(self._rows))
        for number, row in enumerate(self._rows):
            top = number * high + 2.0
            painter.setFont(self.small(strong=True))
            colour = {MET: theme.good, NOT_MET: theme.bad}.get(row.verdict, theme.caution)
            box = self.draw_text(painter, self.width() - 6.0, top, row.verdict, colour, across=1.0, down=0.0)
            self.draw_text(painter, 6.0, top, self._fit(painter, row.name, box.left() - 16.0), theme.text, down=0.0)
            self._bar(painter, row, top + 1.4 * self.text_px, max(6.0, high - 3.45 * self.text_px), colour)
            painter.setFont(self.small())
            low = top + high - 4.0 - 1.5 * self.text_px
            box = self.draw_text(painter, 6.0, low, f"{_words(row)}, {_limit(row)}", theme.text, down=0.0)
            source = self._fit(painter, row.source, self.width() - box.right() - 20.0)
            self.draw_text(painter, self.width() - 6.0, low, source, theme.quiet, across=1.0, down=0.0)

    def _bar(self, painter: QtGui.QPainter, row: Standing, top: float, thick: float, colour: str) -> None:
        same = [r for r in self._rows if r.unit == row.unit]
        reach = 1.1 * max(max((r.value or 0.0) + (r.half or 0.0), r.limit or 0.0) for r in same) or 1.0
        scale = (self.width() - 4.0) / reach
        painter.setPen(self.pen(self.theme.line, 1.0))
        painter.setBrush(QtGui.QColor(self.theme.ground))
        painter.drawRect(QtCore.QRectF(2.0, top, self.width() - 4.0, thick))
        middle = top + 0.5 * thick
        if row.value is not None:
            painter.fillRect(QtCore.QRectF(2.0, top, max(2.0, scale * row.value), thick), QtGui.QColor(colour))
            if row.half is not None:
                painter.setPen(self.pen(self.theme.text, 1.5))
                ends = [2.0 + scale * max(0.0, row.value + s * row.half) for s in (-1.0, 1.0)]
                painter.drawLine(QtCore.QPointF(ends[0], middle), QtCore.QPointF(ends[1], middle))
                for x in ends:
                    painter.drawLine(QtCore.QPointF(x, middle - 4.0), QtCore.QPointF(x, middle + 4.0))
        if row.limit is not None:
            x = 2.0 + scale * row.limit
            painter.setPen(self.pen(self.theme.panel, 4.0))
            painter.drawLine(QtCore.QPointF(x, top), QtCore.QPointF(x, top + thick))
            painter.setPen(self.pen(self.theme.text, 2.0))
            painter.drawLine(QtCore.QPointF(x, top - 1.0), QtCore.QPointF(x, top + thick + 3.0))

    def _fit(self, painter: QtGui.QPainter, text: str, room: float) -> str:
        metrics = QtGui.QFontMetricsF(painter.font())
        return own(metrics.elidedText(words(text), QtCore.Qt.TextElideMode.ElideRight, max(0.0, room)))


def _words(row: Standing) -> str:
    return "not known" if row.value is None else with_half(row.value, row.half, row.unit)


def _limit(row: Standing) -> str:
    return "no limit" if row.limit is None else f"limit {figure(row.limit)}"
