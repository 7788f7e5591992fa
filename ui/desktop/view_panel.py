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
    """Lies over the window until Escape, a click beside it, or a Tab out of it; emits `changed` with the new choices."""

    changed = QtCore.Signal(View)

    def __init__(self, parent: QtWidgets.QWidget, view: View) -> None:
        super().__init__(parent)
        self.hide()
        self.setObjectName("viewPanel")
        self.setAccessibleName("How things are shown")
        self._view = view
        self._window, self._button = parent, parent
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

    def open_above(self, button: QtWidgets.QWidget) -> None:
        """Show above a button of the same window, wholly within the window."""
        self.adjustSize()
        corner = button.mapTo(self._window, QtCore.QPoint(0, -look.TIGHT))
        self.move(corner.x(), max(look.HAIR, corner.y() - self.height()))
        self._button = button
        self.raise_()
        self.show()
        next(iter(self.choices["unit"].buttons.values())).setFocus(QtCore.Qt.FocusReason.PopupFocusReason)
        application = QtWidgets.QApplication.instance()
        assert isinstance(application, QtWidgets.QApplication)
        application.installEventFilter(self)
        application.focusChanged.connect(self._focus_moved)

    def put_away(self) -> None:
        """Hide, and give the focus back."""
        if not self.isVisible():
            return
        application = QtWidgets.QApplication.instance()
        assert isinstance(application, QtWidgets.QApplication)
        application.removeEventFilter(self)
        application.focusChanged.disconnect(self._focus_moved)
        focus = application.focusWidget()
        inside = focus is not None and self.isAncestorOf(focus)
        self.hide()
        if inside:
            self._button.setFocus(QtCore.Qt.FocusReason.PopupFocusReason)

    def _focus_moved(self, _old: QtWidgets.QWidget | None, new: QtWidgets.QWidget | None) -> None:
        if new is not None and not self.isAncestorOf(new):
            QtCore.QTimer.singleShot(
                0, self.put_away
            )  # a click's press comes after its focus, and is still to be caught

    def eventFilter(self, watched: QtCore.QObject, event: QtCore.QEvent) -> bool:  # noqa: N802 - Qt's name
        """A click beside it puts it away, and does nothing else."""
        if event.type() == QtCore.QEvent.Type.MouseButtonPress and isinstance(watched, QtWidgets.QWidget):
            beside = watched is not self and not self.isAncestorOf(watched)
            if beside and watched.window() is self.window():
                self.put_away()
                return True
        return False

    def keyPressEvent(self, event: QtGui.QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Escape puts it away."""
        if event.key() == QtCore.Qt.Key.Key_Escape:
            self.put_away()
        else:
            super().keyPressEvent(event)
