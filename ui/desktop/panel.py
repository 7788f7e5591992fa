"""A panel that lies over the window, above the button that opened it."""

from __future__ import annotations

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui.desktop import look


class Panel(QtWidgets.QFrame):
    """Lies over the window until Escape, a click beside it, or a Tab out of it. `first` gets the focus."""

    def __init__(self, parent: QtWidgets.QWidget, name: str) -> None:
        super().__init__(parent)
        self.hide()
        self.setObjectName("viewPanel")
        self.setAccessibleName(name)
        self._window, self._button = parent, parent
        self.body = QtWidgets.QVBoxLayout(self)
        self.body.setContentsMargins(look.ROOM, look.GAP, look.ROOM, look.ROOM)
        self.body.setSpacing(look.HAIR)

    def first(self) -> QtWidgets.QWidget:
        """What gets the focus when it is opened."""
        return self

    def open_above(self, button: QtWidgets.QWidget) -> None:
        """Show above a button of the same window, wholly within the window."""
        self.adjustSize()
        corner = button.mapTo(self._window, QtCore.QPoint(0, -look.TIGHT))
        self.move(corner.x(), max(look.HAIR, corner.y() - self.height()))
        self._button = button
        self.raise_()
        self.show()
        self.first().setFocus(QtCore.Qt.FocusReason.PopupFocusReason)
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
            # a click's press comes after its focus, and is still to be caught
            QtCore.QTimer.singleShot(0, self.put_away)

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
