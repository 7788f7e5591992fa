"""A field with its name above and, where something cannot be used, one line below that says why and what is kept."""

from __future__ import annotations

from collections.abc import Callable

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.stages import Weight
from stillshaft.ui.desktop.why import explain
from stillshaft.ui.desktop.worded import LineEdit
from stillshaft.ui.theme import Theme


class Said(QtWidgets.QWidget):
    """A line with the sign of its weight; hidden while there is nothing to say."""

    def __init__(self, weight: Weight = Weight.CAUTION) -> None:
        super().__init__()
        row = QtWidgets.QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(look.TIGHT)
        self.sign = parts.Sign(18)
        self.sign.show_weight(weight)
        self.text = parts.label("", "", wrap=True)
        row.addWidget(self.sign, 0, QtCore.Qt.AlignmentFlag.AlignTop)
        row.addWidget(self.text, 1)
        explain(self, "refused")
        self.hide()

    def say(self, text: str, weight: Weight | None = None) -> None:
        """Show a line, or nothing."""
        self.text.setText(parts.begun(text))
        self.text.setAccessibleName(parts.begun(text))
        if weight is not None:
            self.sign.show_weight(weight)
        self.setVisible(bool(text))

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.sign.set_theme(theme)


class Field(QtWidgets.QWidget):
    """A text field. `take` gets what was typed and raises ValueError for what cannot be used: the field then goes back."""

    def __init__(self, name: str, take: Callable[[str], None], hint: str = "", ems: float = 7.0) -> None:
        super().__init__()
        self._take, self._kept, self._ems = take, "", ems
        self.edit = LineEdit()
        self.edit.setPlaceholderText(hint)
        self.edit.setAccessibleDescription(hint)
        self.name = parts.labelled(name, self.edit)
        self.trouble = Said()
        column = QtWidgets.QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(look.HAIR)
        column.addWidget(self.name)
        column.addWidget(self.edit)
        column.addWidget(self.trouble)
        column.addStretch(1)
        self.edit.editingFinished.connect(self._finished)

    def set(self, text: str) -> None:
        """Show what is so; what a person is typing is left alone."""
        changed, self._kept = text != self._kept, text
        if changed or not self.edit.hasFocus():
            self.edit.setText(text)

    def text(self) -> str:
        """What is in the field."""
        return self.edit.text().strip()

    def _finished(self) -> None:
        typed = self.text()
        if typed == self._kept:
            return
        try:
            self._take(typed)
        except ValueError as error:
            kept = f"; {self._kept} is kept" if self._kept else ""
            self.trouble.say(f"{error}{kept}.")
            self.edit.setText(self._kept)
        else:
            self._kept = self.text()  # what was taken may have been written anew
            self.trouble.say("")

    def finish(self) -> None:
        """Take what is being typed: a key may press a button while the field has the focus."""
        self._finished()

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.trouble.set_theme(theme)

    def sizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """Wide enough for what is typed into it."""
        return super().sizeHint().expandedTo(QtCore.QSize(round(self._ems * self.fontInfo().pixelSize()), 0))

    def minimumSizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """The same."""
        return super().minimumSizeHint().expandedTo(QtCore.QSize(round(self._ems * self.fontInfo().pixelSize()), 0))

    def keyPressEvent(self, event: QtGui.QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Escape takes back what is being typed."""
        if event.key() == QtCore.Qt.Key.Key_Escape and self.text() != self._kept:
            self.edit.setText(self._kept)
            self.trouble.say("")
            return
        super().keyPressEvent(event)
