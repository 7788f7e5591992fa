"""The panel behind “View”: unit, angle direction, the end looked at, theme and text size."""

from __future__ import annotations

from dataclasses import replace

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.settings import CHOICES, View

_ROWS = {
    "unit": ("Vibration in", 3),
    "angles": ("Angles count", 2),
    "seen_from": ("Rotor seen from", 2),
    "theme": ("Colours", 3),
    "text_size": ("Text", 3),
}


class ViewPanel(QtWidgets.QFrame):
    """Opens over the window and closes by Escape or a click beside it; emits `changed` with the new choices."""

    changed = QtCore.Signal(View)

    def __init__(self, parent: QtWidgets.QWidget, view: View) -> None:
        super().__init__(parent, QtCore.Qt.WindowType.Popup)
        self.setObjectName("viewPanel")
        self.setAccessibleName("How things are shown")
        self._view = view
        body = QtWidgets.QVBoxLayout(self)
        body.setContentsMargins(look.ROOM, look.GAP, look.ROOM, look.ROOM)
        body.setSpacing(look.HAIR)
        self.choices: dict[str, parts.Segments] = {}
        for field, (name, columns) in _ROWS.items():
            body.addSpacing(look.HAIR)
            body.addWidget(parts.label(name, "heading"))
            choice = parts.Segments(name, CHOICES[field], columns)
            choice.chosen.connect(lambda word, f=field: self._choose(f, word))
            self.choices[field] = choice
            body.addWidget(choice)
        self.show_view(view)

    def show_view(self, view: View) -> None:
        """Show these choices."""
        self._view = view
        for field, choice in self.choices.items():
            choice.set(getattr(view, field))

    def _choose(self, field: str, word: str) -> None:
        self._view = replace(self._view, **{field: word})
        self.changed.emit(self._view)

    def open_at(self, corner: QtCore.QPoint) -> None:
        """Show with its lower left corner there, wholly on the screen."""
        self.adjustSize()
        screen = self.screen().availableGeometry()
        top = max(screen.top(), min(corner.y() - self.height(), screen.bottom() - self.height()))
        self.move(max(screen.left(), min(corner.x(), screen.right() - self.width())), top)
        self.show()
        next(iter(self.choices.values())).setFocus()

    def keyPressEvent(self, event: QtGui.QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Escape closes it."""
        if event.key() == QtCore.Qt.Key.Key_Escape:
            self.close()
        else:
            super().keyPressEvent(event)
