"""The rotor face: the rotor as seen from an end, what stands around it, and what sits on it."""

from __future__ import annotations

import math

import numpy as np
from PySide6 import QtCore, QtGui
from stillshaft.ui.desktop import face as faces
from stillshaft.ui.desktop import words as language
from stillshaft.ui.desktop.canvas import Picture, draw_marker
from stillshaft.ui.desktop.face import Face, Piece
from stillshaft.ui.desktop.settings import ANGLES, ENDS

# in parts of the rim's radius
_HUB, _ARROW, _WEB, _SENSOR_AT = 0.15, 0.25, 0.78, 1.15
_BLADE, _DEGREES_AT, _NUMBER_AT, _MARK_AT = (0.33, 0.5), 0.65, 0.875, 0.99


class RotorFace(Picture):
    """Rotation arrow, mark, blades or holes with numbers and angles, sensors, pieces with their wedges."""

    def __init__(self) -> None:
        super().__init__("Rotor face", (18.0, 20.0))
        self._face: Face | None = None
        self._seen_from, self._angles = ENDS[0], ANGLES[0]
        self._rows: list[str] = []  # written below it

    def show_face(self, face: Face | None) -> None:
        """Draw this rotor; None: nothing."""
        if face != self._face:
            self._face = face
            self._changed()

    def set_sight(self, seen_from: str, angles: str) -> None:
        """From which end it is seen, and which way angles are counted."""
        self._seen_from, self._angles = seen_from, angles
        self._changed()

    def _changed(self) -> None:
        shown = "no rotor yet" if self._face is None else faces.words(self._face, self._seen_from, self._angles)
        self.summarise(shown)
        self.renew()

    def _middle(self) -> tuple[QtCore.QPointF, float]:
        text, below = self.text_px, 1.2 * self.text_px * max(1, len(self._rows))
        # room for sensors and words around the rim, and for the lines below
        metrics = QtGui.QFontMetricsF(self.small(strong=True))
        pieces = () if self._face is None else self._face.pieces
        beside = max((metrics.horizontalAdvance(self._label(p)) for p in pieces), default=0.0)
        radius = (
            min(0.5 * self.width() - max(2.6 * text, beside), 0.5 * (self.height() - below - 0.2 * text) - 1.6 * text)
            / _SENSOR_AT
        )
        return QtCore.QPointF(0.5 * self.width(), 0.5 * (self.height() - below)), max(20.0, radius)

    def _at(self, place: complex) -> QtCore.QPointF:
        middle, radius = self._middle()
        return middle + QtCore.QPointF(radius * place.real, -radius * place.imag)

    def draw_backdrop(self, painter: QtGui.QPainter) -> None:
        """The whole face: it changes seldom."""
        painter.setFont(self.small())
        face = self._face
        self._rows = [] if face is None else self._said_below(painter, face)
        if face is None:
            middle, _ = self._middle()
            self.draw_text(painter, middle.x(), middle.y(), "no hook-up yet", self.theme.quiet, across=0.5, down=0.5)
            return
        self._draw_body(painter, face)
        self._draw_arrow(painter, face)
        self._draw_positions(painter, face)
        self._draw_pieces(painter, face)
        self._draw_mark(painter, face)
        self._draw_sensors(painter, face)
        painter.setFont(self.small())
        for number, row in enumerate(reversed(self._rows)):
            foot = self.height() - 2.0 - 1.2 * self.text_px * number
            self.draw_text(painter, 0.5 * self.width(), foot, language.own(row), self.theme.quiet, across=0.5)

    def _said_below(self, painter: QtGui.QPainter, face: Face) -> list[str]:
        """From where it is seen, how it turns and how angles count, in as few rows as there is room for."""
        end = face.reference_end if self._seen_from == ENDS[0] else f"opposite {face.reference_end}"
        turns = faces.CLOCKWISE if faces.turns_clockwise(face, self._seen_from) else faces.COUNTER_CLOCKWISE
        whole = language.words(f"seen from: {end} · turns {turns} · angles {self._angles}")
        if QtGui.QFontMetricsF(painter.font()).horizontalAdvance(whole) <= self.width() - 8.0:
            return [whole]
        first, *rest = whole.split(" · ")
        return [first, " · ".join(rest)]

    def _draw_body(self, painter: QtGui.QPainter, face: Face) -> None:
        middle, radius = self._middle()
        painter.setPen(self.pen(self.theme.quiet, 1.5))
        painter.setBrush(QtGui.QColor(self.theme.ground))
        painter.drawEllipse(middle, radius, radius)
        painter.setPen(self.pen(self.theme.line, 1.0))
        painter.setBrush(QtGui.QColor(self.theme.panel))
        painter.drawEllipse(middle, _WEB * radius, _WEB * radius)
        painter.setPen(self.pen(self.theme.quiet, 1.5))
        painter.setBrush(QtGui.QColor(self.theme.ground))
        painter.drawEllipse(middle, _HUB * radius, _HUB * radius)
        painter.setPen(self.pen(self.theme.line, 1.0, (6.0, 3.0, 1.5, 3.0)))
        painter.drawLine(self._at(-1.04), self._at(1.04))
        painter.drawLine(self._at(-1.04j), self._at(1.04j))

    def _draw_arrow(self, painter: QtGui.QPainter, face: Face) -> None:
        """An arc about the hub that turns as the rotor does."""
        middle, radius = self._middle()
        around = _ARROW * radius
        clockwise = faces.turns_clockwise(face, self._seen_from)
        begin, sweep = (205.0, -230.0) if clockwise else (-25.0, 230.0)
        box = QtCore.QRectF(middle.x() - around, middle.y() - around, 2.0 * around, 2.0 * around)
        painter.setPen(self.pen(self.theme.accent, 2.5))
        painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
        painter.drawArc(box, round(16 * begin), round(16 * sweep))
        end = math.radians(begin + sweep)
        tip = middle + QtCore.QPointF(around * math.cos(end), -around * math.sin(end))
        side = -1.0 if clockwise else 1.0
        along = QtCore.QPointF(-side * math.sin(end), -side * math.cos(end))
        out = QtCore.QPointF(math.cos(end), -math.sin(end))
        size = max(8.0, 0.055 * radius)
        head = [tip + along * (1.2 * size), tip + out * (0.7 * size), tip - out * (0.7 * size)]
        painter.setPen(QtCore.Qt.PenStyle.NoPen)
        painter.setBrush(QtGui.QColor(self.theme.accent))
        painter.drawPolygon(QtGui.QPolygonF(head))

    def _draw_positions(self, painter: QtGui.QPainter, face: Face) -> None:
        _, radius = self._middle()
        if not face.positions_deg:
            self._draw_degrees(painter, face)
            return
        metrics = QtGui.QFontMetricsF(painter.font())
        room = 2.0 * math.pi * _NUMBER_AT * radius / len(face.positions_deg)
        every = max(1, math.ceil(1.4 * metrics.horizontalAdvance("00") / max(1.0, room)))
        wide = metrics.horizontalAdvance("000°")
        along = 2.0 * math.pi * _DEGREES_AT * radius / len(face.positions_deg) * every
        degrees_fit = along > 1.15 * wide and (_NUMBER_AT - _DEGREES_AT) * radius > 0.85 * wide
        beneath = (
            _MARK_AT - 1.8 * self._mark_size() - 0.6 * metrics.height() / radius
        )  # a number that the mark would cover
        for number, degrees in enumerate(face.positions_deg, start=1):
            place = faces.rotor_place(face, degrees, self._seen_from)
            painter.setPen(self.pen(self.theme.quiet, 1.5))
            if face.kind == "hole":
                painter.setBrush(QtGui.QColor(self.theme.panel))
                size = max(2.0, min(0.03 * radius, 0.25 * room))
                painter.drawEllipse(self._at(0.96 * place), size, size)
            else:
                painter.drawLine(self._at(_BLADE[0] * place), self._at(_BLADE[1] * place))
            blocked = number in face.blocked
            if blocked:
                self._draw_cross(painter, (0.96 if face.kind == "hole" else 0.5 * sum(_BLADE)) * place)
            if (number - 1) % every and not blocked:
                continue
            near = abs(math.remainder(degrees, 360.0)) < math.degrees(2.0 * self._mark_size())
            at, inner = (
                self._at((min(_NUMBER_AT, beneath) if near else _NUMBER_AT) * place),
                self._at(_DEGREES_AT * place),
            )
            painter.setFont(self.small(strong=not blocked))
            colour = self.theme.quiet if blocked else self.theme.text
            self.draw_text(painter, at.x(), at.y(), f"{number}", colour, across=0.5, down=0.5)
            painter.setFont(self.small())
            shown = f"{faces.shown_angle(degrees, self._angles):.0f}°"
            if degrees_fit:
                self.draw_text(painter, inner.x(), inner.y(), shown, self.theme.quiet, across=0.5, down=0.5)

    def _draw_cross(self, painter: QtGui.QPainter, place: complex) -> None:
        """No mass may go here."""
        at, size = self._at(place), max(5.0, 0.032 * self._middle()[1])
        painter.setPen(self.pen(self.theme.bad, self.line_px + 0.5))
        for side in (-1.0, 1.0):
            arm = QtCore.QPointF(size, side * size)
            painter.drawLine(at - arm, at + arm)

    def _draw_degrees(self, painter: QtGui.QPainter, face: Face) -> None:
        """Every 30° of a rim without blades or holes, every 90° of a small one."""
        _, radius = self._middle()
        wide = QtGui.QFontMetricsF(painter.font()).horizontalAdvance("000°")
        written_at = _WEB - 0.62 * wide / radius
        room = written_at * radius / wide
        for degrees in range(0, 360, 30 if room > 2.3 else 90):
            place = faces.rotor_place(face, degrees, self._seen_from)
            painter.setPen(self.pen(self.theme.quiet, 1.0))
            painter.drawLine(self._at(0.95 * place), self._at(place))
            if room < 1.3:
                continue
            at, words = self._at(written_at * place), f"{faces.shown_angle(degrees, self._angles):.0f}°"
            self.draw_text(painter, at.x(), at.y(), words, self.theme.quiet, across=0.5, down=0.5, backed=True)

    def _draw_pieces(self, painter: QtGui.QPainter, face: Face) -> None:
        _, radius = self._middle()
        for piece in face.pieces:
            place = faces.rotor_place(face, piece.angle_deg, self._seen_from)
            if piece.angle_ci95_deg is not None:
                half = min(180.0, piece.angle_ci95_deg)
                steps = np.linspace(piece.angle_deg - half, piece.angle_deg + half, 25)
                rim = [self._at(faces.rotor_place(face, a, self._seen_from)) for a in steps.tolist()]
                inner = [self._at(_HUB * faces.rotor_place(face, a, self._seen_from)) for a in steps.tolist()[::-1]]
                tint = QtGui.QColor(self.theme.accent)
                tint.setAlpha(50)
                painter.setBrush(tint)
                painter.setPen(self.pen(self.theme.accent, 1.0, (3.0, 3.0)))
                painter.drawPolygon(QtGui.QPolygonF(rim + inner))
            painter.setPen(self.pen(self.theme.accent, 2.0))
            painter.drawLine(self._at(_HUB * place), self._at(0.9 * piece.radius_share * place))
            size = max(7.0, 0.06 * radius)
            at = self._at(piece.radius_share * place)
            filled = self.theme.panel if piece.planned else self.theme.accent
            painter.setBrush(QtGui.QColor(filled))
            painter.drawRoundedRect(QtCore.QRectF(at.x() - size, at.y() - size, 2.0 * size, 2.0 * size), 2.0, 2.0)
            painter.setFont(self.small(strong=True))
            self._beside(painter, place, size + 5.0, self._label(piece), self.theme.text)
            painter.setFont(self.small())

    def _label(self, piece: Piece) -> str:
        return f"{piece.label} · {faces.shown_angle(piece.angle_deg, self._angles):.0f}°"

    def _mark_size(self) -> float:
        """Half of the mark's base, in parts of the rim's radius."""
        _, radius = self._middle()
        return max(7.0, 0.05 * radius) / radius

    def _draw_mark(self, painter: QtGui.QPainter, face: Face) -> None:
        place = faces.rotor_place(face, 0.0, self._seen_from)
        side = 1j * place
        size = self._mark_size()
        base = (_MARK_AT - 1.8 * size) * place
        wedge = [_MARK_AT * place, base + size * side, base - size * side]
        painter.setPen(self.pen(self.theme.panel, 1.5))
        painter.setBrush(QtGui.QColor(self.theme.text))
        painter.drawPolygon(QtGui.QPolygonF([self._at(p) for p in wedge]))

    def _draw_sensors(self, painter: QtGui.QPainter, face: Face) -> None:
        """Vibration sensors with the shape of their point; the pulse sensor as an arrow to the mark."""
        pulse = faces.stator_place(face, face.pulse_angle_deg, self._seen_from)
        painter.setPen(self.pen(self.theme.text, 2.0))
        painter.drawLine(self._at(1.03 * pulse), self._at(1.12 * pulse))
        painter.setBrush(QtGui.QColor(self.theme.panel))
        at = self._at(_SENSOR_AT * pulse)
        painter.drawRect(QtCore.QRectF(at.x() - 5.0, at.y() - 5.0, 10.0, 10.0))
        places = [faces.stator_place(face, s.angle_deg, self._seen_from) for s in face.sensors]
        _, radius = self._middle()
        taken = faces.apart([pulse, *places], 26.0 / (_SENSOR_AT * radius))
        self._beside(painter, _SENSOR_AT * pulse, 9.0, "pulse, mark 0°", self.theme.text)
        for sensor, place, beside in zip(face.sensors, places, taken[1:], strict=True):
            painter.setPen(self.pen(self.theme.quiet, 1.0))
            painter.drawLine(self._at(1.02 * place), self._at((_SENSOR_AT - 0.03) * beside))
            draw_marker(painter, sensor.number, self._at(_SENSOR_AT * beside), 6.5, self.point_colour(sensor.number))

    def _beside(self, painter: QtGui.QPainter, place: complex, away_px: float, words: str, colour: str) -> None:
        """Write beyond a place, away from the middle, wholly inside the picture."""
        at = self._at(place)
        out = place / abs(place)
        metrics = QtGui.QFontMetricsF(painter.font())
        words = language.words(words)
        width, height = metrics.horizontalAdvance(words), metrics.height()
        x = at.x() + away_px * out.real - (0.5 - 0.5 * out.real) * width
        y = at.y() - away_px * out.imag - (0.5 + 0.5 * out.imag) * height
        x = max(2.0, min(x, self.width() - width - 2.0))
        y = max(1.0, min(y, self.height() - height - 1.0))
        self.draw_text(painter, x, y, words, colour, down=0.0)
