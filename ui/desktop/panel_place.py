"""Where a small panel goes beside something: wholly within the window, and over as little of it as can be."""

from __future__ import annotations

from PySide6 import QtCore, QtWidgets
from stillshaft.ui.desktop import look


def box_of(figure: QtWidgets.QWidget, window: QtWidgets.QWidget) -> QtCore.QRect:
    """What is in sight of a widget, in the window, whatever lies over it; all of it where it is scrolled out of sight."""
    whole = QtCore.QRect(figure.mapTo(window, QtCore.QPoint()), figure.size())
    box, holder = whole, figure.parentWidget()
    while holder is not None and holder is not window:
        box = box & QtCore.QRect(holder.mapTo(window, QtCore.QPoint()), holder.size())
        holder = holder.parentWidget()
    return whole if box.isEmpty() else box


def place(
    panel: QtWidgets.QWidget,
    figure: QtWidgets.QWidget,
    window: QtWidgets.QWidget,
    around: QtWidgets.QWidget | None = None,
) -> None:
    """Put a panel of fixed width beside a figure of the same window: right, below, above or left of it.

    Of what stands `around` the figure it covers as little as it can, too.
    """
    layout = panel.layout()
    assert layout is not None
    layout.activate()
    size = QtCore.QSize(panel.width(), max(layout.totalHeightForWidth(panel.width()), panel.minimumHeight()))
    room = window.rect().adjusted(look.TIGHT, look.TIGHT, -look.TIGHT, -look.TIGHT)
    box = box_of(figure, window)
    whole = box if around is None else box_of(around, window)
    moved = [_within(QtCore.QRect(corner, size), room) for each in (box, whole) for corner in _corners(each, size)]
    best = min(moved, key=lambda each: (_shared(each, box), _shared(each, whole)))
    if best != panel.geometry():
        panel.setGeometry(best)


def _corners(box: QtCore.QRect, size: QtCore.QSize) -> tuple[QtCore.QPoint, ...]:
    gap = look.GAP
    return (
        QtCore.QPoint(box.right() + gap, box.top()),
        QtCore.QPoint(box.left(), box.bottom() + gap),
        QtCore.QPoint(box.left(), box.top() - gap - size.height()),
        QtCore.QPoint(box.left() - gap - size.width(), box.top()),
    )


def _within(box: QtCore.QRect, room: QtCore.QRect) -> QtCore.QRect:
    x = max(room.left(), min(box.left(), room.right() - box.width() + 1))
    y = max(room.top(), min(box.top(), room.bottom() - box.height() + 1))
    return QtCore.QRect(QtCore.QPoint(x, y), box.size())


def _shared(one: QtCore.QRect, other: QtCore.QRect) -> int:
    shared = one & other
    return shared.width() * shared.height() if shared.isValid() else 0
