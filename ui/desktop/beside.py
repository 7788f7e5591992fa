"""Where a small panel goes beside something: wholly within the window, and over as little of it as can be."""

from __future__ import annotations

from PySide6 import QtCore, QtWidgets
from stillshaft.ui.desktop import look


def box_of(figure: QtWidgets.QWidget, window: QtWidgets.QWidget) -> QtCore.QRect:
    """What is seen of a widget, in the window."""
    seen = figure.visibleRegion().boundingRect()
    box = figure.rect() if seen.isEmpty() else seen
    return QtCore.QRect(figure.mapTo(window, box.topLeft()), box.size())


def place(panel: QtWidgets.QWidget, figure: QtWidgets.QWidget, window: QtWidgets.QWidget) -> None:
    """Put a panel of fixed width beside a figure of the same window: right, below, above or left of it."""
    layout = panel.layout()
    assert layout is not None
    layout.activate()
    size = QtCore.QSize(panel.width(), max(layout.totalHeightForWidth(panel.width()), panel.minimumHeight()))
    room = window.rect().adjusted(look.TIGHT, look.TIGHT, -look.TIGHT, -look.TIGHT)
    box, gap = box_of(figure, window), look.GAP
    corners = (
        (box.right() + gap, box.top()),
        (box.left(), box.bottom() + gap),
        (box.left(), box.top() - gap - size.height()),
        (box.left() - gap - size.width(), box.top()),
    )
    moved = [_within(QtCore.QRect(QtCore.QPoint(*corner), size), room) for corner in corners]
    panel.setGeometry(min(moved, key=lambda each: _shared(each, box)))


def _within(box: QtCore.QRect, room: QtCore.QRect) -> QtCore.QRect:
    x = max(room.left(), min(box.left(), room.right() - box.width() + 1))
    y = max(room.top(), min(box.top(), room.bottom() - box.height() + 1))
    return QtCore.QRect(QtCore.QPoint(x, y), box.size())


def _shared(one: QtCore.QRect, other: QtCore.QRect) -> int:
    shared = one & other
    return shared.width() * shared.height() if shared.isValid() else 0
