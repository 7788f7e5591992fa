"""The stage rail: the stages as discs on one shaft, each with the shape and the word of how far it is."""

from __future__ import annotations

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui.desktop import glyphs, look
from stillshaft.ui.desktop.stages import Stage, State
from stillshaft.ui.desktop.worded import Worded
from stillshaft.ui.desktop.words import words
from stillshaft.ui.theme import THEMES, Theme

_SHAFT_X, _DISC, _TEXT_X = 28.0, 8.0, 52
_GLYPH = 22


class RailButton(Worded, QtWidgets.QAbstractButton):
    """One stage on the rail."""

    def __init__(self, stage: Stage) -> None:
        super().__init__()
        self.stage, self._state, self._theme, self._body_px = stage, State.EMPTY, THEMES["light"], 14
        self.setCheckable(True)
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QtWidgets.QSizePolicy.Policy.Expanding, QtWidgets.QSizePolicy.Policy.Fixed)
        self.setAccessibleDescription(stage.purpose)
        self.setToolTip(f"{stage.purpose} (Ctrl+{stage.key})")
        self.show_state(State.EMPTY)

    def show_state(self, state: State) -> None:
        """Draw how far it is, and say so to a screen reader."""
        self._state = state
        self.setAccessibleName(f"{self.stage.value}: {state.value}")
        self.update()

    def reword(self) -> None:
        """Its words are drawn, and may need other room."""
        super().reword()
        self.updateGeometry()
        self.update()

    @property
    def state(self) -> State:
        """How far it is."""
        return self._state

    def set_look(self, theme: Theme, body_px: int) -> None:
        """Recolour and resize."""
        self._theme, self._body_px = theme, body_px
        self.updateGeometry()
        self.update()

    def _fonts(self) -> tuple[QtGui.QFont, QtGui.QFont]:
        return look.font(1.08 * self._body_px, strong=True), look.font(look.SMALL * self._body_px)

    def sizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """Room for the longest state word and the sign."""
        name, word = (QtGui.QFontMetrics(f) for f in self._fonts())
        widest = max(
            name.horizontalAdvance(words(self.stage.value)) + look.TIGHT + _GLYPH,
            *(word.horizontalAdvance(words(s.value)) for s in State),
        )
        height = max(look.TARGET_PX, name.height() + word.height() + look.ROOM)
        return QtCore.QSize(_TEXT_X + widest + look.GAP, height)

    def minimumSizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """The same."""
        return self.sizeHint()

    def paintEvent(self, event: QtGui.QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Draw shaft, disc, name, word and sign."""
        theme, painter = self._theme, QtGui.QPainter(self)
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)
        width, height = float(self.width()), float(self.height())
        behind = theme.sunken
        if self.isChecked() or self.underMouse():
            behind = theme.ground if self.isChecked() else theme.soft
            painter.setPen(QtCore.Qt.PenStyle.NoPen)
            painter.setBrush(QtGui.QColor(behind))
            painter.drawRoundedRect(QtCore.QRectF(6.0, 2.0, width - 12.0, height - 4.0), look.RADIUS_PX, look.RADIUS_PX)
        if self.isChecked():  # a solid edge too, so that it does not hang on a shade
            painter.setPen(QtCore.Qt.PenStyle.NoPen)
            painter.setBrush(QtGui.QColor(theme.accent))
            painter.drawRoundedRect(QtCore.QRectF(6.0, 8.0, 4.0, height - 16.0), 2.0, 2.0)
        painter.setPen(QtGui.QPen(QtGui.QColor(theme.quiet), 2.0))
        painter.drawLine(QtCore.QPointF(_SHAFT_X, 0.0), QtCore.QPointF(_SHAFT_X, height))
        centre = QtCore.QPointF(_SHAFT_X, 0.5 * height)
        glyphs.draw_state(painter, self._state, centre, _DISC, theme, behind)
        name, word = self._fonts()
        names, small = QtGui.QFontMetrics(name), QtGui.QFontMetrics(word)
        top = 0.5 * (height - names.height() - small.height())
        painter.setPen(QtGui.QColor(theme.text))
        painter.setFont(name)
        painter.drawText(QtCore.QPointF(_TEXT_X, top + names.ascent()), words(self.stage.value))
        painter.setPen(QtGui.QColor(glyphs.state_colour(self._state, theme)))
        painter.setFont(word)
        painter.drawText(QtCore.QPointF(_TEXT_X, top + names.height() + small.ascent()), words(self._state.value))
        box = QtCore.QRectF(width - look.GAP - _GLYPH, top + 0.5 * (names.height() - _GLYPH), _GLYPH, _GLYPH)
        glyphs.stroke(painter, glyphs.stage_path(self.stage), box, theme.quiet, 1.5)
        if self.hasFocus():
            painter.setPen(QtGui.QPen(QtGui.QColor(theme.accent), 2.0))
            painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(QtCore.QRectF(5.0, 1.0, width - 10.0, height - 2.0), look.RADIUS_PX, look.RADIUS_PX)
        painter.end()


class _ShaftEnd(QtWidgets.QWidget):
    """The shaft's way to an end, above the first disc or below the last."""

    def __init__(self, *, top: bool) -> None:
        super().__init__()
        self._top, self._theme = top, THEMES["light"]
        self.setFixedHeight(look.ROOM)

    def set_theme(self, theme: Theme) -> None:
        self._theme = theme
        self.update()

    def paintEvent(self, event: QtGui.QPaintEvent) -> None:  # noqa: N802 - Qt's name
        painter = QtGui.QPainter(self)
        painter.setPen(QtGui.QPen(QtGui.QColor(self._theme.quiet), 2.0))
        height = self.height()
        near, far = (height, 4) if self._top else (0, height - 4)
        painter.drawLine(QtCore.QPointF(_SHAFT_X, near), QtCore.QPointF(_SHAFT_X, far))
        painter.drawLine(QtCore.QPointF(_SHAFT_X - 6, far), QtCore.QPointF(_SHAFT_X + 6, far))
        painter.end()


class StageRail(Worded, QtWidgets.QFrame):
    """All stages; emits `opened` with the stage that was pressed."""

    opened = QtCore.Signal(Stage)

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("rail")
        self.setAccessibleName("Stages of the job")
        self.body = QtWidgets.QVBoxLayout(self)
        self.body.setContentsMargins(0, look.GAP, 0, look.GAP)
        self.body.setSpacing(0)
        self._wordmark = QtWidgets.QLabel("Stillshaft")
        self._wordmark.setObjectName("wordmark")
        self._wordmark.setContentsMargins(int(_SHAFT_X) - 8, 0, 0, look.TIGHT)
        self.body.addWidget(self._wordmark)
        self._ends = (_ShaftEnd(top=True), _ShaftEnd(top=False))
        self.body.addWidget(self._ends[0])
        self._choosing = False
        self.buttons: dict[Stage, RailButton] = {}
        for stage in Stage:
            each = RailButton(stage)
            each.toggled.connect(lambda _checked, s=stage: self._turn(s))
            self.buttons[stage] = each
            self.body.addWidget(each)
        self.body.addWidget(self._ends[1])
        self.body.addStretch(1)

    def set_look(self, theme: Theme, body_px: int) -> None:
        """Recolour and resize."""
        for each in self.buttons.values():
            each.set_look(theme, body_px)
        for end in self._ends:
            end.set_theme(theme)

    def choose(self, stage: Stage) -> None:
        """Mark the stage that is open. Not an exclusive group: Tab would reach only one of it."""
        self._choosing = True
        for each in self.buttons.values():
            each.setChecked(each.stage is stage)
        self._choosing = False

    def _turn(self, stage: Stage) -> None:
        """By the person: a screen reader turns a button over without a click."""
        if not self._choosing:
            self.opened.emit(stage)
