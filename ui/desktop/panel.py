"""A panel that lies over the window, above the button that opened it."""

from __future__ import annotations

from collections.abc import Callable

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui.desktop import look
from stillshaft.ui.desktop.worded import Worded


class _Beside(QtWidgets.QWidget):
    """Lies unseen over all of the window but the panel: a click on it puts the panel away, and does nothing else.

    A filter of the application's events would do the same, but holds the loop for a tenth of a second at first.
    """

    def __init__(self, window: QtWidgets.QWidget, clicked: Callable[[], None]) -> None:
        super().__init__(window)
        self._clicked = clicked
        self.hide()

    def mousePressEvent(self, event: QtGui.QMouseEvent) -> None:  # noqa: N802 - Qt's name
        """Put the panel away."""
        self._clicked()
        event.accept()


class Panel(Worded, QtWidgets.QFrame):
    """Lies over the window until Escape, a click beside it, or a Tab out of it. `first` gets the focus."""

    def __init__(self, parent: QtWidgets.QWidget, name: str) -> None:
        super().__init__(parent)
        self.hide()
        self.setObjectName("viewPanel")
        self.setAccessibleName(name)
        self._window, self._button = parent, parent
        self._beside = _Beside(parent, self.put_away)
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
        left = min(corner.x(), self._window.width() - self.width() - look.HAIR)
        self.move(max(look.HAIR, left), max(look.HAIR, corner.y() - self.height()))
        self._button = button
        self._beside.setGeometry(self._window.rect())
        for widget in (self._beside, self):
            widget.raise_()
            widget.show()
        self.first().setFocus(QtCore.Qt.FocusReason.PopupFocusReason)
        application = QtWidgets.QApplication.instance()
        assert isinstance(application, QtWidgets.QApplication)
        application.focusChanged.connect(self._focus_moved)

    def put_away(self) -> None:
        """Hide, and give the focus back."""
        if not self.isVisible():
            return
        application = QtWidgets.QApplication.instance()
        assert isinstance(application, QtWidgets.QApplication)
        application.focusChanged.disconnect(self._focus_moved)
        focus = application.focusWidget()
        inside = focus is not None and self.isAncestorOf(focus)
        self._beside.hide()
        self.hide()
        if inside:
            self._button.setFocus(QtCore.Qt.FocusReason.PopupFocusReason)

    def _focus_moved(self, _old: QtWidgets.QWidget | None, new: QtWidgets.QWidget | None) -> None:
        if new is not None and not self.isAncestorOf(new):
            # a click's press comes after its focus, and is still to be caught
            QtCore.QTimer.singleShot(0, self.put_away)

    def keyPressEvent(self, event: QtGui.QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Escape puts it away."""
        if event.key() == QtCore.Qt.Key.Key_Escape:
            self.put_away()
        else:
            super().keyPressEvent(event)
