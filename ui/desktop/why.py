"""Which text of the table explains what a page shows: pages name it where they make a figure, and it is found again here."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypeVar

from PySide6 import QtCore, QtWidgets
from stillshaft.ui.desktop import why_texts
from stillshaft.ui.desktop.page import Page

_PROPERTY = "why"
Explained = TypeVar("Explained", bound=QtWidgets.QWidget)


def explain(widget: Explained, key: str) -> Explained:
    """Say which text explains a figure, a warning or a picture, and all that it holds."""
    widget.setProperty(_PROPERTY, key)
    if isinstance(widget, QtWidgets.QLabel) or hasattr(widget, "texts"):
        widget.setCursor(QtCore.Qt.CursorShape.WhatsThisCursor)
    return widget


def said_by(widget: QtWidgets.QWidget) -> str:
    """What a widget shows, in the program's own words."""
    if isinstance(widget, QtWidgets.QLabel):
        return widget.text()
    if widget.property(_PROPERTY) is None:
        return ""
    return " ".join(each.text() for each in widget.findChildren(QtWidgets.QLabel) if each.isVisible())


def key_of(widget: QtWidgets.QWidget) -> str | None:
    """Key of the text that explains a widget: its own, or that of the nearest that holds it; None where there is none."""
    at: QtWidgets.QWidget | None = widget
    while at is not None and not isinstance(at, Page):
        key = at.property(_PROPERTY)
        if key:
            return why_texts.load().topic(str(key), said_by(widget))
        at = at.parentWidget()
    return None


def shows_something(widget: QtWidgets.QWidget) -> bool:
    """Whether there is a figure, a text or a picture to explain."""
    if not widget.isVisible():
        return False
    return bool(said_by(widget).strip(" –")) or hasattr(widget, "texts")


def explained_in(area: QtWidgets.QWidget) -> Iterator[tuple[str, QtWidgets.QWidget]]:
    """Keys with what they explain, of all that is shown in an area, in the order from above; each key once."""
    found: dict[str, QtWidgets.QWidget] = {}
    widgets = [w for w in area.findChildren(QtWidgets.QWidget) if w.property(_PROPERTY) and shows_something(w)]
    for widget in sorted(
        widgets, key=lambda w: (w.mapTo(area, QtCore.QPoint()).y(), w.mapTo(area, QtCore.QPoint()).x())
    ):
        labels: list[QtWidgets.QWidget] = [
            w for w in widget.findChildren(QtWidgets.QLabel) if w.isVisible() and w.text()
        ]
        for each in labels or [widget]:
            key = key_of(each)
            if key is not None:
                found.setdefault(key, each)
    yield from found.items()


def nearest(widget: QtWidgets.QWidget, page: QtWidgets.QWidget) -> tuple[str, QtWidgets.QWidget] | None:
    """What is explained and nearest to a widget with the focus: itself, what holds it, or what stands beside it."""
    at: QtWidgets.QWidget | None = widget
    while at is not None:
        key = key_of(at) if at.property(_PROPERTY) else None
        if key is not None:
            return key, at
        beside = next(explained_in(at), None) if page.isAncestorOf(at) or at is page else None
        if beside is not None:
            return beside
        if at is page:
            return None
        at = at.parentWidget()
    return next(explained_in(page), None)
