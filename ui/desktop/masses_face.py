"""The rotor face on which pieces are moved: by dragging them around, or with the keys."""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from PySide6 import QtCore, QtGui
from stillshaft.ui.desktop import face as faces
from stillshaft.ui.desktop.face import Face, Piece
from stillshaft.ui.desktop.rotor_face import RotorFace

_TOUCH_PX = 26.0  # from the middle of a piece: a finger in a glove
_SIZE = (11.0, 0.068)  # half of a piece's side: least px, share of the rim's radius
_HUB = 0.15


@dataclass(frozen=True)
class Marked:
    """A piece on the face with the mark of its line in the lists: a number of what is thought of, a letter of what is on."""

    mark: str
    piece: Piece


class PlacingFace(RotorFace):
    """Shows what is on, what is thought of, and where the correction lies; what is thought of can be moved.

    Emits `chosen` with the mark of a piece, `moved` with mark and rotor angle, `stepped` with mark and -1 or 1 for a move to
    the next place, `grown` with mark and -1 or 1 for the mass. Steps go with or against the clock on the screen.
    """

    chosen = QtCore.Signal(str)
    moved = QtCore.Signal(str, float)
    stepped = QtCore.Signal(str, int)
    grown = QtCore.Signal(str, int)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("Rotor face with pieces")
        self.set_smallest((20.0, 22.0))
        self._thought: tuple[Marked, ...] = ()
        self._on: tuple[Marked, ...] = ()
        self._wanted: tuple[Piece, ...] = ()
        self._chosen = ""
        self._held = False
        self._bare: Face | None = None

    def show_pieces(
        self, face: Face | None, on: Sequence[Marked], thought: Sequence[Marked], wanted: Sequence[Piece], chosen: str
    ) -> None:
        """Draw a rotor with these pieces; `wanted` are corrections with their wedges."""
        before = (self._bare, self._on, self._wanted)
        self._bare, self._on, self._wanted = face, tuple(on), tuple(wanted)
        self._thought, self._chosen = tuple(thought), chosen
        if before != (self._bare, self._on, self._wanted):
            self.show_face(None if face is None else replace(face, pieces=self._wanted))
            self.renew()
        self._say()
        self.update()

    def _changed(self) -> None:
        super()._changed()
        self._say()

    def _say(self) -> None:
        """The face in words, each piece with its mark."""
        if self._bare is None:
            return
        said = [faces.words(replace(self._bare, pieces=()), self._seen_from, self._angles)]
        wanted = faces.words(replace(self._bare, pieces=self._wanted), self._seen_from, self._angles)
        if self._wanted:
            said.append(f"wanted: {wanted.split('; ')[-1]}")
        for marked in (*self._on, *self._thought):
            told = faces.words(replace(self._bare, pieces=(marked.piece,)), self._seen_from, self._angles).split("; ")
            chosen = ", chosen" if marked.mark == self._chosen else ""
            said.append(f"piece {marked.mark}{chosen}: {told[-1]}")
        self.summarise("; ".join(said))

    # drawing

    def _label(self, piece: Piece) -> str:
        return ""

    def _half(self) -> float:
        return max(_SIZE[0], _SIZE[1] * self._middle()[1])

    def _levels(self) -> dict[str, int]:
        """How far each piece stands towards the shaft, so that those that are near each other on the screen stay apart."""
        near_deg = math.degrees(2.2 * self._half() / self._middle()[1])
        taken: list[tuple[float, int]] = []
        levels = {}
        for marked in (*self._on, *self._thought):
            angle = marked.piece.angle_deg
            beside = {level for at, level in taken if abs((at - angle + 180.0) % 360.0 - 180.0) < near_deg}
            level = next(n for n in range(len(beside) + 1) if n not in beside)
            taken.append((angle, level))
            levels[marked.mark] = level
        return levels

    def _place(self, marked: Marked) -> complex:
        """Where a piece is drawn: those at one place stand one behind the other, towards the shaft."""
        assert self._bare is not None
        step = 2.2 * self._half() / self._middle()[1]
        share = max(0.2, min(1.0, marked.piece.radius_share) - step * self._levels()[marked.mark])
        return share * faces.rotor_place(self._bare, marked.piece.angle_deg, self._seen_from)

    def _draw_pieces(self, painter: QtGui.QPainter, face: Face) -> None:
        """Wedges of what is wanted, and what is on: they change seldom."""
        for piece in self._wanted:
            self._draw_wedge(painter, face, piece)
        for marked in self._on:
            self._draw_piece(painter, marked)

    def _draw_wedge(self, painter: QtGui.QPainter, face: Face, piece: Piece) -> None:
        half = 3.0 if piece.angle_ci95_deg is None else min(180.0, max(1.0, piece.angle_ci95_deg))
        steps = np.linspace(piece.angle_deg - half, piece.angle_deg + half, 25).tolist()
        rim = [self._at(faces.rotor_place(face, a, self._seen_from)) for a in steps]
        inner = [self._at(_HUB * faces.rotor_place(face, a, self._seen_from)) for a in steps[::-1]]
        tint = QtGui.QColor(self.theme.accent)
        tint.setAlpha(56)
        painter.setBrush(tint)
        painter.setPen(self.pen(self.theme.accent, 1.0, (3.0, 3.0)))
        painter.drawPolygon(QtGui.QPolygonF(rim + inner))
        place = faces.rotor_place(face, piece.angle_deg, self._seen_from)
        painter.setPen(self.pen(self.theme.accent, 2.0))
        painter.drawLine(self._at(_HUB * place), self._at(place))

    def _draw_piece(self, painter: QtGui.QPainter, marked: Marked) -> None:
        theme, half = self.theme, self._half()
        at = self._at(self._place(marked))
        box = QtCore.QRectF(at.x() - half, at.y() - half, 2.0 * half, 2.0 * half)
        planned = marked.piece.planned
        chosen = marked.mark == self._chosen
        if chosen:
            painter.setPen(self.pen(theme.text, 2.0))
            painter.setBrush(QtGui.QColor(theme.soft))
            painter.drawRoundedRect(box.adjusted(-4.0, -4.0, 4.0, 4.0), 5.0, 5.0)
        painter.setPen(self.pen(theme.accent if planned else theme.text, 2.0, (4.0, 2.0) if planned else ()))
        painter.setBrush(QtGui.QColor(theme.panel if planned else theme.text))
        painter.drawRoundedRect(box, 3.0, 3.0)
        painter.setFont(self.small(strong=True))
        colour = theme.text if planned else theme.panel
        self.draw_text(painter, at.x(), at.y(), marked.mark, colour, across=0.5, down=0.5)

    def _draw_positions(self, painter: QtGui.QPainter, face: Face) -> None:
        """Numbers and angles where no piece stands on them."""
        written = len(self._written)
        super()._draw_positions(painter, face)
        # what a piece covers cannot be read, and is not told to be there
        boxes = [self._box(m) for m in (*self._on, *self._thought)]
        kept = [w for w in self._written[written:] if not any(b.intersects(w[1]) for b in boxes)]
        self._written[written:] = kept

    def _box(self, marked: Marked) -> QtCore.QRectF:
        at, half = self._at(self._place(marked)), self._half()
        return QtCore.QRectF(at.x() - half, at.y() - half, 2.0 * half, 2.0 * half)

    def draw(self, painter: QtGui.QPainter) -> None:
        """What is thought of moves with the finger."""
        if self._bare is not None:
            for marked in self._thought:
                self._draw_piece(painter, marked)

    # hands

    def _angle_at(self, at: QtCore.QPointF) -> float | None:
        """Rotor angle of a place on the screen; None too near the shaft."""
        if self._bare is None:
            return None
        middle, radius = self._middle()
        place = complex(at.x() - middle.x(), middle.y() - at.y()) / radius
        if abs(place) < _HUB:
            return None
        mark = faces.rotor_place(self._bare, 0.0, self._seen_from)
        return math.degrees(cmath.phase(place / mark)) * self._sense() % 360.0

    def _sense(self) -> float:
        """1 where rotor angles grow counter-clockwise on the screen, else -1."""
        assert self._bare is not None
        mark, quarter = (faces.rotor_place(self._bare, a, self._seen_from) for a in (0.0, 90.0))
        return 1.0 if (quarter / mark).imag > 0.0 else -1.0

    def _under(self, at: QtCore.QPointF) -> Marked | None:
        """The piece under a finger, the nearest one."""
        if self._bare is None:
            return None
        reach = [
            (math.hypot(p.x() - at.x(), p.y() - at.y()), m)
            for m in (*self._thought, *self._on)
            for p in (self._at(self._place(m)),)
        ]
        reach = [(away, m) for away, m in reach if away <= _TOUCH_PX]
        return min(reach, key=lambda r: r[0])[1] if reach else None

    def mousePressEvent(self, event: QtGui.QMouseEvent) -> None:  # noqa: N802 - Qt's name
        """Take a piece."""
        under = self._under(event.position())
        if under is not None:
            self.chosen.emit(under.mark)
            self._held = under.piece.planned
        self.setFocus(QtCore.Qt.FocusReason.MouseFocusReason)

    def mouseMoveEvent(self, event: QtGui.QMouseEvent) -> None:  # noqa: N802 - Qt's name
        """Move it around."""
        angle = self._angle_at(event.position()) if self._held else None
        if angle is not None:
            self.moved.emit(self._chosen, angle)

    def mouseReleaseEvent(self, event: QtGui.QMouseEvent) -> None:  # noqa: N802 - Qt's name
        """Let it go."""
        self._held = False

    def keyPressEvent(self, event: QtGui.QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Arrows move the piece, plus and minus change its mass, Page up and down choose another."""
        key = event.key()
        marks = [m.mark for m in (*self._on, *self._thought)]
        if key in (QtCore.Qt.Key.Key_PageUp, QtCore.Qt.Key.Key_PageDown) and marks:
            step = 1 if key == QtCore.Qt.Key.Key_PageDown else -1
            at = marks.index(self._chosen) + step if self._chosen in marks else 0
            self.chosen.emit(marks[at % len(marks)])
            return
        if not any(m.mark == self._chosen for m in self._thought):
            super().keyPressEvent(event)
            return
        clock = {QtCore.Qt.Key.Key_Right: -1, QtCore.Qt.Key.Key_Left: 1}
        turn = clock.get(QtCore.Qt.Key(key))
        if turn is not None:
            self.stepped.emit(self._chosen, round(turn * self._sense()))
        elif key in (QtCore.Qt.Key.Key_Plus, QtCore.Qt.Key.Key_Up):
            self.grown.emit(self._chosen, 1)
        elif key in (QtCore.Qt.Key.Key_Minus, QtCore.Qt.Key.Key_Down):
            self.grown.emit(self._chosen, -1)
        else:
            super().keyPressEvent(event)
