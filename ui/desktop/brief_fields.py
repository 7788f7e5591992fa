"""Fields of a short form: each is recorded when it is finished, and says beside it what was refused."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.said import Remark
from stillshaft.ui.desktop.worded import LineEdit, PlainTextEdit
from stillshaft.ui.desktop.words import own
from stillshaft.ui.theme import THEMES, Theme

NOT_SAID = "not said"
_COLUMN_EMS = 12.0  # heights of text that a field needs
_MOST_COLUMNS = 4
_TEXT_LINES = 3
_SHORTEST_NAME = 12  # letters of somebody's own name that are there in any case


class Field(QtWidgets.QWidget):
    """A control with its name above and a remark below; emits `finished` with its text when another one was entered."""

    finished = QtCore.Signal(str)

    def __init__(self, name: str, control: QtWidgets.QWidget, *, wide: bool = False) -> None:
        super().__init__()
        self.name, self.wide, self.control = name, wide, control
        self.recorded = ""
        self.hint = ""
        self._sent: str | None = None  # what is on its way to the record
        self._refused = False
        self._remark: Remark | None = None
        self._theme: Theme = THEMES["light"]
        column = self._column = QtWidgets.QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        self.title = parts.labelled(name, control)
        self.title.setWordWrap(True)
        self.title.setAlignment(QtCore.Qt.AlignmentFlag.AlignBottom)
        self.title.setObjectName("quiet")
        column.addWidget(self.title)
        column.addWidget(control)
        column.addStretch(1)
        self.setSizePolicy(QtWidgets.QSizePolicy.Policy.Expanding, QtWidgets.QSizePolicy.Policy.Preferred)

    @property
    def remark(self) -> Remark:
        """What is said below it; made when there is something to say, because most fields never need it."""
        if self._remark is None:
            self._remark = Remark()
            self._remark.set_theme(self._theme)
            self._column.insertWidget(2, self._remark)
        return self._remark

    @property
    def name_height(self) -> int:
        """Height of its name in the lines that it needs."""
        room = QtCore.QRect(0, 0, self.width(), 10_000)
        shown = QtWidgets.QLabel.text(self.title)
        return self.title.fontMetrics().boundingRect(room, QtCore.Qt.TextFlag.TextWordWrap.value, shown).height()

    def _say(self, text: str, *, refused: bool = False) -> None:
        if text or self._remark is not None:
            self.remark.say(text, refused=refused)

    @property
    def text(self) -> str:
        """What stands in it."""
        raise NotImplementedError

    def put(self, text: str) -> None:
        """Write into the control without telling."""
        raise NotImplementedError

    def show_recorded(self, text: str, note: str = "") -> None:
        """Show what the record holds; what is being typed stays."""
        here = self.text.strip()
        typing = self.control.hasFocus() and here not in (self.recorded, self._sent)
        if text != self.recorded:
            self._refused = False
        self.recorded = text
        if not typing and self.text != text:
            self.put(text)
        if not self._refused:
            self._say(note)

    def commit(self) -> None:
        """Have what was typed recorded, if it is another text."""
        text = self.text.strip()
        if text not in (self.recorded, self._sent):
            self._sent = text
            self.finished.emit(text)
        elif text == self._sent:
            return
        elif self.text != self.recorded:
            self.put(self.recorded)

    def refuse(self, why: str) -> None:
        """Say why what was typed is not recorded, and put back what is."""
        self._refused, self._sent = True, None
        self.put(self.recorded)
        kept = f"Kept: {self.recorded}." if self.recorded else "Nothing is kept."
        self._say(f"{why.rstrip('.')}. {kept}", refused=True)
        self.control.setAccessibleDescription(self.remark.text.text())

    def take(self) -> None:
        """What was typed is recorded: nothing is refused any more."""
        self._sent = None
        if self._refused:
            self._refused = False
            self._say("")
        self.control.setAccessibleDescription(self.hint)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        if self._remark is not None:
            self._remark.set_theme(theme)

    def resizeEvent(self, event: QtGui.QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Its name may need more lines now, or fewer."""
        super().resizeEvent(event)
        form = self.parentWidget()
        if isinstance(form, Form) and event.size().width() != event.oldSize().width() and (row := form.row_of(self)):
            form.set_in_line(row)


class LineField(Field):
    """One line of text; recorded when Return is pressed or the field is left. Escape puts back what was there."""

    def __init__(self, name: str, example: str = "", *, wide: bool = False) -> None:
        self.line = LineEdit()
        self.line.setPlaceholderText(example)
        super().__init__(name, self.line, wide=wide)
        self.hint = example
        self.line.setAccessibleDescription(example)
        self.line.editingFinished.connect(self.commit)
        self.line.installEventFilter(self)

    @property
    def text(self) -> str:
        """What stands in it."""
        return self.line.text()

    def put(self, text: str) -> None:
        """Write."""
        self.line.setText(text)
        self.line.setCursorPosition(0)
        self.line.setToolTip(text)

    def eventFilter(self, watched: QtCore.QObject, event: QtCore.QEvent) -> bool:  # noqa: N802 - Qt's name
        """Escape."""
        if not isinstance(event, QtGui.QKeyEvent) or event.type() != QtCore.QEvent.Type.KeyPress:
            return False
        if event.key() == QtCore.Qt.Key.Key_Escape and self.text != self.recorded:
            self.put(self.recorded)
            return True
        return False


class _Paper(PlainTextEdit):
    """A few lines of text; Tab leaves it."""

    left = QtCore.Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setTabChangesFocus(True)
        self.setSizePolicy(QtWidgets.QSizePolicy.Policy.Expanding, QtWidgets.QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """Room for a few lines."""
        return QtCore.QSize(200, _TEXT_LINES * self.fontMetrics().lineSpacing() + 20)

    def minimumSizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """The same height."""
        return QtCore.QSize(80, self.sizeHint().height())

    def focusOutEvent(self, event: QtGui.QFocusEvent) -> None:  # noqa: N802 - Qt's name
        """It is finished, unless only a menu opened or the window lost the focus for a while."""
        super().focusOutEvent(event)
        if event.reason() != QtCore.Qt.FocusReason.PopupFocusReason:
            self.left.emit()

    def wheelEvent(self, event: QtGui.QWheelEvent) -> None:  # noqa: N802 - Qt's name
        """The page scrolls, where there is nothing to scroll here."""
        if self.hasFocus() and self.verticalScrollBar().maximum() > 0:
            super().wheelEvent(event)
        else:
            event.ignore()


class PaperField(Field):
    """Some lines of text; recorded when it is left."""

    def __init__(self, name: str, example: str = "") -> None:
        self.paper = _Paper()
        self.paper.setPlaceholderText(example)
        super().__init__(name, self.paper, wide=True)
        self.paper.left.connect(self.commit)

    @property
    def text(self) -> str:
        """What stands in it."""
        return self.paper.toPlainText()

    def put(self, text: str) -> None:
        """Write."""
        self.paper.setPlainText(text)


class Pick(parts.Choice):
    """A list to choose from that the mouse wheel passes over: a page is scrolled without changing the record."""

    def __init__(self) -> None:
        super().__init__()
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self.setSizeAdjustPolicy(QtWidgets.QComboBox.SizeAdjustPolicy.AdjustToContents)

    def wheelEvent(self, event: QtGui.QWheelEvent) -> None:  # noqa: N802 - Qt's name
        """Left to the page."""
        event.ignore()


class PickField(Field):
    """One of some words, or none of them; recorded when it is chosen. With `as_written` they are somebody's own names."""

    def __init__(
        self, name: str, words: Sequence[str], none: str = NOT_SAID, *, wide: bool = False, as_written: bool = False
    ) -> None:
        self.pick = Pick()
        self.words = ("", *words)
        self._shown = own if as_written else parts.begun
        if as_written:  # names may be long: they are written as far as there is room
            self.pick.setSizeAdjustPolicy(QtWidgets.QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
            self.pick.setMinimumContentsLength(_SHORTEST_NAME)
        self.pick.addItems([none, *map(self._shown, words)])
        super().__init__(name, self.pick, wide=wide)
        self.pick.activated.connect(lambda _number: self.commit())

    @property
    def text(self) -> str:
        """The word that is chosen."""
        return self.words[max(0, self.pick.currentIndex())]

    def offer(self, word: str) -> None:
        """Add a word to choose from."""
        self.words = (*self.words, word)
        self.pick.addItem(self._shown(word))

    def put(self, text: str) -> None:
        """Choose; a word that is not in the list joins it."""
        if text not in self.words:
            self.offer(text)
        self.pick.setCurrentIndex(self.words.index(text))
        if self._shown is own:
            self.pick.setToolTip(own(text))

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        super().set_theme(theme)
        self.pick.set_theme(theme)


class Form(QtWidgets.QWidget):
    """Fields side by side in as many columns as there is room for; those that do not fit the machine are left out.

    `pairs`: two belong together, and stand in an even number of columns; `ems` is what a field needs, in heights of text.
    """

    def __init__(self, *, pairs: bool = False, ems: float = _COLUMN_EMS) -> None:
        super().__init__()
        self._pairs, self._ems = pairs, ems
        self._rows: list[list[Field]] = []
        self._grid = QtWidgets.QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(look.GAP)
        self._grid.setVerticalSpacing(look.TIGHT)
        self.fields: list[Field] = []
        self._left_out: set[Field] = set()
        self._columns = 1
        self._theme: Theme = THEMES["light"]

    def add(self, field: Field) -> Field:
        """Add a field at the end."""
        self.fields.append(field)
        field.set_theme(self._theme)
        self._place()
        return field

    def clear(self) -> None:
        """Take all fields out."""
        for field in self.fields:
            self._grid.removeWidget(field)
            field.hide()
            field.deleteLater()
        self.fields, self._left_out = [], set()

    def fit(self, field: Field, fits: bool) -> None:
        """Show a field only where it fits."""
        if fits == (field in self._left_out):
            (self._left_out.discard if fits else self._left_out.add)(field)
            self._place()

    def set_width(self, width_px: int, body_px: int) -> None:
        """So much room from left to right, for text of this size."""
        columns = min(_MOST_COLUMNS, max(1, int((width_px + look.GAP) / (self._ems * body_px + look.GAP))))
        if self._pairs and columns > 1:
            columns -= columns % 2
        if columns != self._columns:
            self._columns = columns
            self._place()

    def _place(self) -> None:
        row = column = 0
        columns = self._columns
        self._rows = []
        for field in self.fields:
            self._grid.removeWidget(field)
            if field in self._left_out:
                field.hide()
                continue
            span = columns if field.wide else 1
            if column + span > columns:
                row, column = row + 1, 0
            self._grid.addWidget(field, row, column, 1, span)
            while len(self._rows) <= row:
                self._rows.append([])
            self._rows[row].append(field)
            field.show()
            column += span
        for number in range(_MOST_COLUMNS):
            self._grid.setColumnStretch(number, 1 if number < columns else 0)
        self._order()

    def set_in_line(self, row: Sequence[Field]) -> None:
        """Names of a row end on one line, so that its controls stand on one, where one of them needs two lines."""
        high = max(field.name_height for field in row)
        for field in row:
            field.title.setMinimumHeight(high)

    def event(self, event: QtCore.QEvent) -> bool:
        """Names may have become longer or shorter."""
        if event.type() == QtCore.QEvent.Type.LayoutRequest:
            for row in self._rows:
                self.set_in_line(row)
        return super().event(event)

    def row_of(self, field: Field) -> Sequence[Field]:
        """The fields beside one, and that one."""
        return next((row for row in self._rows if field in row), ())

    def _order(self) -> None:
        """Tab goes in the order of the fields."""
        controls = [f.control for f in self.fields if f not in self._left_out]
        for before, after in zip(controls, controls[1:], strict=False):
            QtWidgets.QWidget.setTabOrder(before, after)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        for field in self.fields:
            field.set_theme(theme)


def line_of_buttons(buttons: Sequence[QtWidgets.QPushButton]) -> QtWidgets.QHBoxLayout:
    """Buttons side by side, from the left."""
    row = QtWidgets.QHBoxLayout()
    row.setSpacing(look.TIGHT)
    for each in buttons:
        row.addWidget(each)
    row.addStretch(1)
    return row
