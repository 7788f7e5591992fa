"""What a person could not read, reach or hear named on a shown window, found from the widgets and their pixels."""

import os
import re
from collections import Counter
from pathlib import Path

import numpy as np
from PySide6 import QtCore, QtGui, QtTest, QtWidgets

CONTROLS = (
    QtWidgets.QAbstractButton,
    QtWidgets.QLineEdit,
    QtWidgets.QComboBox,
    QtWidgets.QAbstractSpinBox,
    QtWidgets.QAbstractItemView,
    QtWidgets.QPlainTextEdit,
    QtWidgets.QTextEdit,
)
_LEAST_TARGET = 40  # px, of what is pressed
_FAR = 100_000  # px, room without end
_PICTURES = os.environ.get("STILLSHAFT_PICTURES")  # a folder: each screen that is checked leaves a picture there
_SHOW_MNEMONIC = QtCore.Qt.TextFlag.TextShowMnemonic.value


def faults(window):
    """One line for each fault; an empty list when the window is sound."""
    found = []
    for widget in _visible(window):
        for check in (_cut, _outside, _unnamed, _picture):
            problem = check(widget, window)
            if problem:
                found.append(f"{_called(widget)}: {problem}")
    return found + _same_mnemonic(window) + _not_reached(window) + faint(window)


def keep_picture(frame, *named):
    """The window as it was checked, and the whole of a page that scrolls, for a look afterwards; only where asked for."""
    if not _PICTURES:
        return
    view, size = frame.view, f"{frame.width()}x{frame.height()}"
    words = (frame.open_stage.value, *named, view.language, view.theme, view.text_size, size)
    path = Path(_PICTURES) / f"{'_'.join(re.sub(r'[^A-Za-z0-9]+', '-', word) for word in words if word)}.png"
    path.parent.mkdir(parents=True, exist_ok=True)
    area = frame.stack.currentWidget()
    frame.grab().save(str(path))
    if area.verticalScrollBar().maximum():
        area.widget().grab().save(str(path.with_stem(f"{path.stem}_whole")))


def small_targets(window):
    """Controls that are too low for gloves; one line for each."""
    pressed = (QtWidgets.QAbstractButton, QtWidgets.QComboBox, QtWidgets.QAbstractSpinBox)
    return [
        f"{_called(w)}: is {w.height()} px high"
        for w in _visible(window)
        if isinstance(w, pressed) and w.height() < _LEAST_TARGET
    ]


def unseen_focus(window):
    """Controls and pictures that look the same with the focus and without it; one line for each."""
    found = []
    for widget in _visible(window):
        if widget.focusPolicy() == QtCore.Qt.FocusPolicy.NoFocus or not widget.isEnabled():
            continue
        if isinstance(widget, QtWidgets.QScrollArea):
            continue
        widget.clearFocus()
        without = widget.grab().toImage()
        widget.setFocus(QtCore.Qt.FocusReason.TabFocusReason)
        if widget.hasFocus() and widget.grab().toImage() == without:
            found.append(f"{_called(widget)}: its focus is not seen")
        widget.clearFocus()
    return found


def _picture(widget, _window):
    """A picture drawn by hand says in words what it shows, and what is written in it can be read."""
    if not hasattr(widget, "texts"):
        return None
    widget.grab()  # drawn once, also where it is scrolled out of sight
    texts = widget.texts
    if not widget.accessibleName() or not widget.accessibleDescription():
        return "does not say what it shows"
    room = QtCore.QRectF(widget.rect()).adjusted(-1.0, -1.0, 1.0, 1.0)
    cut = [text for text, box in texts if not room.contains(box)]
    if cut:
        return f"cuts what is written in it: {cut}"
    # letters leave some of their box free above and below
    boxes = [(text, box.adjusted(1.0, 0.16 * box.height(), -1.0, -0.16 * box.height())) for text, box in texts]
    for number, (text, box) in enumerate(boxes):
        for other, its in boxes[number + 1 :]:
            if box.intersects(its):
                return f"“{text}” is written over “{other}”"
    return None


def _visible(window):
    for widget in window.findChildren(QtWidgets.QWidget):
        if widget.isVisibleTo(window) and widget.window() is window and not _part(widget):
            yield widget


def _part(widget):
    """True for the inside of another control."""
    parent = widget.parentWidget()
    while parent is not None:
        if isinstance(parent, (QtWidgets.QComboBox, QtWidgets.QAbstractSpinBox, QtWidgets.QAbstractItemView)):
            return True
        if isinstance(parent, QtWidgets.QAbstractScrollArea) and widget is parent.viewport():
            return True
        parent = parent.parentWidget()
    return isinstance(widget, QtWidgets.QScrollBar) or widget.objectName().startswith("qt_")


_FOR_THE_EYE = {0xA0: " ", 0x2060: None}  # they keep a figure and its unit in one line


def text_of(widget):
    """What is read on a label or a button, in the language of the window; the program's own English is `text()`."""
    if isinstance(widget, QtWidgets.QLabel):
        return QtWidgets.QLabel.text(widget).translate(_FOR_THE_EYE)
    return QtWidgets.QAbstractButton.text(widget) if isinstance(widget, QtWidgets.QAbstractButton) else ""


def items_of(box):
    """What is read in a list to choose from."""
    return [QtWidgets.QComboBox.itemText(box, i) for i in range(box.count())]


def _called(widget):
    text = text_of(widget)
    return f"{type(widget).__name__} “{text or widget.accessibleName() or widget.objectName()}”"


def _plain(text):
    return text.replace("&", "")


def _cut(widget, _window):
    metrics = widget.fontMetrics()
    if isinstance(widget, QtWidgets.QLabel) and text_of(widget):
        room = widget.contentsRect()
        wrap = QtCore.Qt.TextFlag.TextWordWrap.value if widget.wordWrap() else 0
        width = room.width() if widget.wordWrap() else _FAR
        text = _plain(text_of(widget)) if widget.buddy() else text_of(widget)
        needed = metrics.boundingRect(QtCore.QRect(0, 0, width, _FAR), wrap, text)
        return _too_small(needed, room)
    if isinstance(widget, QtWidgets.QPushButton):
        option = QtWidgets.QStyleOptionButton()
        widget.initStyleOption(option)
        room = widget.style().subElementRect(QtWidgets.QStyle.SubElement.SE_PushButtonContents, option, widget)
        return _too_small(metrics.size(_SHOW_MNEMONIC, text_of(widget)), room)
    if isinstance(widget, QtWidgets.QScrollArea) and widget.widget() is not None:
        needed, room = widget.widget().minimumSizeHint().width(), widget.viewport().width()
        return f"what it holds needs {needed} px across and has {room}" if needed > room else None
    if isinstance(widget, QtWidgets.QDoubleSpinBox):
        room = widget.lineEdit().contentsRect().width() - widget.lineEdit().textMargins().left() - 2
        texts = [f"{widget.textFromValue(v)}{widget.suffix()}" for v in (widget.minimum(), widget.maximum())]
        cut = [t for t in (*texts, widget.specialValueText()) if metrics.horizontalAdvance(t) > room]
        return f"values cut: {cut}" if cut else None
    if isinstance(widget, QtWidgets.QAbstractButton):
        needed = widget.sizeHint()
        small = needed.width() > widget.width() + 1 or needed.height() > widget.height() + 1
        return f"needs {needed.toTuple()} px and has {widget.size().toTuple()}" if small else None
    if isinstance(widget, QtWidgets.QComboBox):
        option = QtWidgets.QStyleOptionComboBox()
        widget.initStyleOption(option)
        kind, part = QtWidgets.QStyle.ComplexControl.CC_ComboBox, QtWidgets.QStyle.SubControl.SC_ComboBoxEditField
        room = widget.style().subControlRect(kind, option, part, widget).width()
        cut = [text for text in items_of(widget) if metrics.horizontalAdvance(text) > room]
        return f"items cut: {cut}" if cut else None
    if isinstance(widget, QtWidgets.QLineEdit):
        return (
            "text cut" if metrics.horizontalAdvance(widget.displayText()) > widget.contentsRect().width() - 6 else None
        )
    if isinstance(widget, QtWidgets.QTableWidget):
        return _cut_cells(widget)
    return None


def _too_small(needed, room):
    if needed.width() <= room.width() + 1 and needed.height() <= room.height() + 1:
        return None
    return f"its text needs {needed.width()} × {needed.height()} px and has {room.width()} × {room.height()}"


def _cut_cells(table):
    cut = []
    for row in range(table.rowCount()):
        for column in range(table.columnCount()):
            index = table.model().index(row, column)
            if table.sizeHintForIndex(index).width() > table.visualRect(index).width() + 1:
                cut.append(index.data())
    return f"cells cut: {cut}" if cut else None


def _outside(widget, window):
    scrolls = any(isinstance(p, QtWidgets.QAbstractScrollArea) for p in _parents(widget))
    if widget.width() == 0 or widget.height() == 0:
        return "has no area" if _shows(widget, window) else None
    inside = QtCore.QRect(widget.mapTo(window, QtCore.QPoint(0, 0)), widget.size())
    if not scrolls and not window.rect().contains(inside):
        return f"{inside.getRect()} leaves the window {window.rect().getRect()}"
    for other in widget.parentWidget().findChildren(
        QtWidgets.QWidget, options=QtCore.Qt.FindChildOption.FindDirectChildrenOnly
    ):
        shared = widget.geometry() & other.geometry()
        stacked = isinstance(widget.parentWidget(), (QtWidgets.QMainWindow, QtWidgets.QAbstractScrollArea))
        if other is not widget and other.isVisible() and not stacked and min(shared.width(), shared.height()) > 1:
            return f"overlaps {_called(other)}"
    return None


def _shows(widget, window):
    """False for a holder of others that holds none now."""
    own = isinstance(widget, (*CONTROLS, QtWidgets.QLabel)) or hasattr(widget, "texts")
    return own or any(w.isVisibleTo(window) for w in widget.findChildren(QtWidgets.QWidget))


def _parents(widget):
    while (widget := widget.parentWidget()) is not None:
        yield widget


def _unnamed(widget, _window):
    """A screen reader asks the accessibility interface; the widget's own name may come from its text or buddy."""
    if not isinstance(widget, CONTROLS):
        return None
    interface = QtGui.QAccessible.queryAccessibleInterface(widget)
    return (
        None if interface is not None and interface.text(QtGui.QAccessible.Text.Name) else "has no name to be read out"
    )


def _same_mnemonic(window):
    keys = Counter()
    for widget in _visible(window):
        labelled = isinstance(widget, QtWidgets.QLabel) and widget.buddy() is not None
        if labelled or isinstance(widget, QtWidgets.QAbstractButton):
            keys[QtGui.QKeySequence.mnemonic(text_of(widget)).toString()] += 1
    return [f"{key} is on {count} controls" for key, count in keys.items() if key and count > 1]


def _not_reached(window):
    """Press Tab for real and see which controls never get the focus."""
    window.activateWindow()
    QtTest.QTest.qWaitForWindowActive(window, 2000)
    wanted = {w for w in _visible(window) if isinstance(w, CONTROLS) and w.isEnabled()}
    reached = set()
    for _ in range(3 * len(wanted) + 10):
        at = QtWidgets.QApplication.focusWidget()
        reached.add(at)
        QtTest.QTest.keyClick(at or window, QtCore.Qt.Key.Key_Tab)
    return [f"{_called(w)}: Tab does not reach it" for w in wanted - reached]


def faint(window, scale=3):
    """Text whose contrast with its ground is under 4.5 to 1, or 3 to 1 where it is large (WCAG 2.2, 1.4.3)."""
    image = QtGui.QImage(window.size() * scale, QtGui.QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(scale)
    window.render(image)
    raw = np.frombuffer(image.constBits(), np.uint32).reshape(image.height(), image.bytesPerLine() // 4) & 0xFFFFFF
    found = []
    for widget in _visible(window):
        text = isinstance(widget, (QtWidgets.QLabel, QtWidgets.QPushButton)) and text_of(widget).strip()
        chosen = isinstance(widget, (QtWidgets.QLineEdit, QtWidgets.QComboBox))
        if not widget.isEnabled() or not (text or chosen) or widget.visibleRegion().boundingRect() != widget.rect():
            continue  # scrolled out of sight
        at, margin = widget.mapTo(window, QtCore.QPoint(0, 0)), 0 if isinstance(widget, QtWidgets.QLabel) else 5
        top, left = (at.y() + margin) * scale, (at.x() + margin) * scale
        bottom, right = (at.y() + widget.height() - margin) * scale, (at.x() + widget.width() - margin) * scale
        pixels = raw[max(0, top) : bottom, max(0, left) : right]
        if not pixels.size:
            continue
        colours, counts = np.unique(pixels, return_counts=True)
        ground = int(colours[np.argmax(counts)])
        strokes = colours[counts >= max(6, 0.0005 * pixels.size)]  # not the fringes of smoothed letters
        best = max(_contrast(int(c), ground) for c in strokes)
        size = widget.fontInfo().pixelSize()
        least = 3.0 if size >= 24 or (size >= 19 and widget.font().bold()) else 4.5
        if best < least:
            found.append(f"{_called(widget)}: contrast {best:.2f}, at least {least}")
    return found


def _contrast(a, b):
    lighter, darker = sorted((_luminance(a), _luminance(b)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def _luminance(rgb):
    """Relative luminance as WCAG 2.2 defines it."""
    parts = np.array([rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255]) / 255.0
    linear = np.where(parts <= 0.04045, parts / 12.92, ((parts + 0.055) / 1.055) ** 2.4)
    return float(linear @ [0.2126, 0.7152, 0.0722])
