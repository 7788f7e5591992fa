"""Signs drawn as paths in a box of 24 × 24: one for each stage, and the shapes of states and weights."""

from __future__ import annotations

from PySide6 import QtCore, QtGui
from stillshaft.ui.desktop.stages import Stage, State, Weight
from stillshaft.ui.theme import Theme

BOX = 24.0


def _lines(*polylines: list[tuple[float, float]]) -> QtGui.QPainterPath:
    path = QtGui.QPainterPath()
    for points in polylines:
        path.moveTo(*points[0])
        for point in points[1:]:
            path.lineTo(*point)
    return path


def _brief() -> QtGui.QPainterPath:
    """A name plate: four screws' worth of frame and three lines of writing."""
    path = _lines([(7, 9), (17, 9)], [(7, 12.5), (17, 12.5)], [(7, 16), (13, 16)])
    path.addRoundedRect(QtCore.QRectF(3, 5, 18, 14), 2, 2)
    return path


def _inspect() -> QtGui.QPainterPath:
    """An eye."""
    path = QtGui.QPainterPath(QtCore.QPointF(2.5, 12.0))
    path.quadTo(12.0, 2.5, 21.5, 12.0)
    path.quadTo(12.0, 21.5, 2.5, 12.0)
    path.addEllipse(QtCore.QPointF(12.0, 12.0), 3.0, 3.0)
    return path


def _hook_up() -> QtGui.QPainterPath:
    """A sensor standing on a housing with its cable led away."""
    path = _lines([(3, 20), (21, 20)], [(5.5, 20), (5.5, 16.5), (14.5, 16.5), (14.5, 20)])
    path.addRect(QtCore.QRectF(7, 10, 6, 6.5))
    path.moveTo(10, 10)
    path.cubicTo(10, 3, 20, 3, 20, 12.5)
    return path


def _runs() -> QtGui.QPainterPath:
    """One turn of vibration over the time axis, its peak marked."""
    path = _lines([(2.5, 13), (21.5, 13)], [(7.6, 3), (7.6, 5)])
    path.moveTo(3.5, 13)
    path.cubicTo(6, 4, 9, 4, 12, 13)
    path.cubicTo(15, 22, 18, 22, 20.5, 13)
    return path


def _masses() -> QtGui.QPainterPath:
    """A rotor face with a piece on its rim."""
    path = QtGui.QPainterPath()
    path.addEllipse(QtCore.QPointF(11.5, 12.5), 8, 8)
    path.addEllipse(QtCore.QPointF(11.5, 12.5), 1.8, 1.8)
    path.addRect(QtCore.QRectF(16, 4, 5, 5))
    return path


def _close_out() -> QtGui.QPainterPath:
    """Two bars, before and after, under a limit."""
    path = _lines([(3, 20.5), (21, 20.5)], [(3, 10), (6, 10)], [(8.6, 10), (12, 10)], [(14.4, 10), (21, 10)])
    path.addRect(QtCore.QRectF(5, 4.5, 4.5, 16))
    path.addRect(QtCore.QRectF(14.5, 14.5, 4.5, 6))
    return path


_STAGES = {
    Stage.BRIEF: _brief,
    Stage.INSPECT: _inspect,
    Stage.HOOK_UP: _hook_up,
    Stage.RUNS: _runs,
    Stage.MASSES: _masses,
    Stage.CLOSE_OUT: _close_out,
}


def stage_path(stage: Stage) -> QtGui.QPainterPath:
    """The sign of a stage, to be stroked."""
    return _STAGES[stage]()


def stroke(painter: QtGui.QPainter, path: QtGui.QPainterPath, at: QtCore.QRectF, colour: str, width: float) -> None:
    """Draw a path of the box into a square, its lines `width` px thick."""
    scale = at.width() / BOX
    painter.save()
    painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)
    painter.translate(at.topLeft())
    painter.scale(scale, scale)
    pen = QtGui.QPen(QtGui.QColor(colour), width / scale)
    pen.setCapStyle(QtCore.Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(QtCore.Qt.PenJoinStyle.RoundJoin)
    painter.setPen(pen)
    painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
    painter.drawPath(path)
    painter.restore()


def state_colour(state: State, theme: Theme) -> str:
    """Colour that goes with the shape and the word of a state."""
    return {
        State.EMPTY: theme.quiet,
        State.UNDER_WAY: theme.accent,
        State.DONE: theme.good,
        State.ATTENTION: theme.caution,
    }[state]


def draw_state(
    painter: QtGui.QPainter, state: State, centre: QtCore.QPointF, radius: float, theme: Theme, behind: str
) -> None:
    """The shape of a state: an open ring, a half disc, a disc with a tick, a diamond with an exclamation mark."""
    colour = QtGui.QColor(state_colour(state, theme))
    painter.save()
    painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)
    painter.setPen(QtGui.QPen(colour, 2.0))
    painter.setBrush(QtGui.QColor(behind))
    if state is State.ATTENTION:
        r = 1.25 * radius
        turned = [centre + QtCore.QPointF(*p) for p in ((0.0, -r), (r, 0.0), (0.0, r), (-r, 0.0))]
        painter.setBrush(colour)
        painter.drawPolygon(QtGui.QPolygonF(turned))
        painter.setPen(_thick(behind, 0.26 * radius))
        painter.drawLine(centre + QtCore.QPointF(0.0, -0.55 * radius), centre + QtCore.QPointF(0.0, 0.12 * radius))
        painter.drawPoint(centre + QtCore.QPointF(0.0, 0.56 * radius))
        painter.restore()
        return
    painter.drawEllipse(centre, radius, radius)
    if state is State.UNDER_WAY:
        painter.setBrush(colour)
        box = QtCore.QRectF(centre.x() - radius, centre.y() - radius, 2.0 * radius, 2.0 * radius)
        painter.drawPie(box, -90 * 16, 180 * 16)
    elif state is State.DONE:
        painter.setBrush(colour)
        painter.drawEllipse(centre, radius, radius)
        painter.setPen(_thick(behind, 0.26 * radius))
        painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
        tick = ((-0.45, 0.05), (-0.1, 0.42), (0.5, -0.36))
        painter.drawPolyline(QtGui.QPolygonF([centre + QtCore.QPointF(radius * x, radius * y) for x, y in tick]))
    painter.restore()


def _thick(colour: str, width: float) -> QtGui.QPen:
    pen = QtGui.QPen(QtGui.QColor(colour), width)
    pen.setCapStyle(QtCore.Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(QtCore.Qt.PenJoinStyle.RoundJoin)
    return pen


def weight_colour(weight: Weight, theme: Theme) -> str:
    """Colour that goes with the shape of a sentence's weight."""
    return {Weight.NOTE: theme.accent, Weight.CAUTION: theme.caution, Weight.STOP: theme.bad}[weight]


def draw_weight(painter: QtGui.QPainter, weight: Weight, at: QtCore.QRectF, theme: Theme) -> None:
    """A pointer for a note, a diamond for a caution, an octagon for stop."""
    painter.save()
    painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)
    painter.setPen(QtCore.Qt.PenStyle.NoPen)
    painter.setBrush(QtGui.QColor(weight_colour(weight, theme)))
    x, y, s = at.x(), at.y(), at.width()
    shapes = {
        Weight.NOTE: ((0.2, 0.1), (0.9, 0.5), (0.2, 0.9), (0.38, 0.5)),
        Weight.CAUTION: ((0.5, 0.0), (1.0, 0.5), (0.5, 1.0), (0.0, 0.5)),
        Weight.STOP: ((0.3, 0), (0.7, 0), (1, 0.3), (1, 0.7), (0.7, 1), (0.3, 1), (0, 0.7), (0, 0.3)),
    }
    painter.drawPolygon(QtGui.QPolygonF([QtCore.QPointF(x + s * u, y + s * v) for u, v in shapes[weight]]))
    if weight is not Weight.NOTE:
        painter.setPen(_thick(theme.panel, 0.12 * s))
        painter.drawLine(QtCore.QPointF(x + 0.5 * s, y + 0.25 * s), QtCore.QPointF(x + 0.5 * s, y + 0.54 * s))
        painter.drawPoint(QtCore.QPointF(x + 0.5 * s, y + 0.74 * s))
    painter.restore()
