"""Widgets that keep the English of what they say and show it in the language of the window.

What a page reads back from them is what it said; Qt, and who looks at the window, get the language. `reword` says all anew.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any

from PySide6 import QtCore, QtWidgets
from stillshaft.ui.desktop.phrases import unbroken
from stillshaft.ui.desktop.words import words

if TYPE_CHECKING:
    _Widget = QtWidgets.QWidget
else:
    _Widget = object

_ENGLISH = QtCore.Qt.ItemDataRole.UserRole + 7  # of an item in a list


class Worded(_Widget):
    """Comes before Qt's class among the bases of a widget that has a name, a tip or a text."""

    def __init__(self, *arguments: Any, **named: Any) -> None:
        self._english: dict[str, str] = {}
        super().__init__(*arguments, **named)

    def _tell_words(self, setter: str, tell: Callable[[str], None], text: str) -> None:
        self._english[setter] = text
        tell(words(text))

    def reword(self) -> None:
        """Say all of it anew, in another language."""
        for setter, text in self._english.items():
            getattr(super(), setter)(words(text))

    def setAccessibleName(self, name: str) -> None:  # noqa: N802 - Qt's name
        """What a screen reader calls it."""
        self._tell_words("setAccessibleName", super().setAccessibleName, name)

    def accessibleName(self) -> str:  # noqa: N802 - Qt's name
        """As it was said."""
        return self._english.get("setAccessibleName", "")

    def setAccessibleDescription(self, description: str) -> None:  # noqa: N802 - Qt's name
        """What a screen reader says of it."""
        self._tell_words("setAccessibleDescription", super().setAccessibleDescription, description)

    def accessibleDescription(self) -> str:  # noqa: N802 - Qt's name
        """As it was said."""
        return self._english.get("setAccessibleDescription", "")

    def setToolTip(self, tip: str) -> None:  # noqa: N802 - Qt's name
        """What it says when it is pointed at."""
        self._tell_words("setToolTip", super().setToolTip, tip)

    def toolTip(self) -> str:  # noqa: N802 - Qt's name
        """As it was said."""
        return self._english.get("setToolTip", "")


class Label(Worded, QtWidgets.QLabel):
    """A text. What keeps a figure and its unit in one line is for the eye: a screen reader gets the text without it."""

    def __init__(self, text: str = "") -> None:
        super().__init__()
        self.setText(text)

    def setText(self, text: str) -> None:  # noqa: N802 - Qt's name
        """Show a text."""
        self._english["setText"] = text
        self._show()

    def setWordWrap(self, on: bool) -> None:  # noqa: N802 - Qt's name
        """Break it into lines, or show it in one."""
        super().setWordWrap(on)
        self._show()

    def reword(self) -> None:
        """In another language."""
        super().reword()
        self._show()

    def _show(self) -> None:
        heard = words(self._english["setText"])
        seen = self._in_lines(heard) if self.wordWrap() else heard
        super().setText(seen)
        if "setAccessibleName" not in self._english:
            QtWidgets.QLabel.setAccessibleName(self, heard if seen != heard else "")

    def _in_lines(self, shown: str) -> str:
        return unbroken(shown)

    def text(self) -> str:
        """As it was said."""
        return self._english["setText"]


class Button(Worded, QtWidgets.QPushButton):
    """A button; one that stays down tells by `turned` that the person turned it over.

    A screen reader turns it without a click, so `clicked` would leave it down and nothing done.
    """

    turned = QtCore.Signal(bool)

    def __init__(self, text: str = "") -> None:
        super().__init__()
        self._quiet = False
        self.toggled.connect(self._tell_turned)
        self.setText(text)

    def setChecked(self, on: bool) -> None:  # noqa: N802 - Qt's name
        """Show it down or up, without telling."""
        self._quiet = True
        super().setChecked(on)
        self._quiet = False

    def _tell_turned(self, on: bool) -> None:
        if not self._quiet:
            self.turned.emit(on)

    def setText(self, text: str) -> None:  # noqa: N802 - Qt's name
        """Show a text."""
        self._tell_words("setText", super().setText, text)

    def text(self) -> str:
        """As it was said."""
        return self._english["setText"]


class LineEdit(Worded, QtWidgets.QLineEdit):
    """A line to type in; what is typed is the person's own."""

    def setPlaceholderText(self, text: str) -> None:  # noqa: N802 - Qt's name
        """What stands in it while it is empty."""
        self._tell_words("setPlaceholderText", super().setPlaceholderText, text)

    def placeholderText(self) -> str:  # noqa: N802 - Qt's name
        """As it was said."""
        return self._english.get("setPlaceholderText", "")


class PlainTextEdit(Worded, QtWidgets.QPlainTextEdit):
    """Some lines to type in; what is typed is the person's own."""

    def setPlaceholderText(self, text: str) -> None:  # noqa: N802 - Qt's name
        """What stands in it while it is empty."""
        self._tell_words("setPlaceholderText", super().setPlaceholderText, text)

    def placeholderText(self) -> str:  # noqa: N802 - Qt's name
        """As it was said."""
        return self._english.get("setPlaceholderText", "")


class SpinBox(Worded, QtWidgets.QSpinBox):
    """A whole number."""

    def setSpecialValueText(self, text: str) -> None:  # noqa: N802 - Qt's name
        """What stands for its least value."""
        self._tell_words("setSpecialValueText", super().setSpecialValueText, text)


class DoubleSpinBox(Worded, QtWidgets.QDoubleSpinBox):
    """A number."""

    def setSpecialValueText(self, text: str) -> None:  # noqa: N802 - Qt's name
        """What stands for its least value."""
        self._tell_words("setSpecialValueText", super().setSpecialValueText, text)

    def setSuffix(self, text: str) -> None:  # noqa: N802 - Qt's name
        """The unit."""
        self._tell_words("setSuffix", super().setSuffix, text)


class ProgressBar(Worded, QtWidgets.QProgressBar):
    """How far something is."""


class ComboBox(Worded, QtWidgets.QComboBox):
    """A list to choose from."""

    def addItem(self, text: str, data: object = None) -> None:  # type: ignore[override]  # noqa: N802 - Qt's name
        """Add a text to choose."""
        super().addItem(words(text), data)
        self.setItemData(self.count() - 1, text, _ENGLISH)

    def addItems(self, texts: Sequence[str]) -> None:  # noqa: N802 - Qt's name
        """Add some."""
        for text in texts:
            self.addItem(text)

    def itemText(self, index: int) -> str:  # noqa: N802 - Qt's name
        """As it was said."""
        return str(self.itemData(index, _ENGLISH) or "")

    def setItemText(self, index: int, text: str) -> None:  # noqa: N802 - Qt's name
        """Have another text in its place."""
        super().setItemText(index, words(text))
        self.setItemData(index, text, _ENGLISH)

    def currentText(self) -> str:  # noqa: N802 - Qt's name
        """What is chosen, as it was said."""
        return self.itemText(self.currentIndex())

    def setCurrentText(self, text: str) -> None:  # noqa: N802 - Qt's name
        """Choose, if it is there."""
        found = next((i for i in range(self.count()) if self.itemText(i) == text), None)
        if found is not None:
            self.setCurrentIndex(found)

    def reword(self) -> None:
        """The items too."""
        super().reword()
        for index in range(self.count()):
            super().setItemText(index, words(self.itemText(index)))


def reword_all(window: QtWidgets.QWidget) -> None:
    """Say everything in a window anew."""
    for widget in (window, *window.findChildren(QtWidgets.QWidget)):
        if isinstance(widget, Worded):
            widget.reword()
