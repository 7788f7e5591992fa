"""Small parts that every page is made of: texts, buttons, cards, choices side by side."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial

from PySide6 import QtCore, QtGui, QtWidgets
from shiboken6 import isValid
from stillshaft.ui.desktop import glyphs, look, phrases
from stillshaft.ui.desktop.stages import State, Weight
from stillshaft.ui.desktop.worded import Button, ComboBox, Label, Worded
from stillshaft.ui.desktop.words import spoken, words
from stillshaft.ui.theme import THEMES, Theme

begun = phrases.begun


def label(text: str, kind: str = "", *, wrap: bool = False) -> Label:
    """Text of a kind that the style sheet knows; a name that the person gave is `words.own`."""
    made = Label(text)
    dress(made, kind, wrap=wrap)
    return made


def dress(made: Label, kind: str, *, wrap: bool) -> None:
    """Make a label one of such a kind."""
    made.setObjectName(kind)
    made.setWordWrap(wrap)
    made.setTextFormat(QtCore.Qt.TextFormat.PlainText)
    if wrap:
        policy = made.sizePolicy()
        policy.setHeightForWidth(True)
        made.setSizePolicy(policy)


class InEnglish(Label):
    """Says that something is in English; only whoever reads another language needs to know."""

    def __init__(self, text: str) -> None:
        super().__init__(text)
        dress(self, "quiet", wrap=True)
        self._show_if_needed()

    def reword(self) -> None:
        """In another language."""
        super().reword()
        self._show_if_needed()

    def _show_if_needed(self) -> None:
        self.setHidden(spoken() == "English")


def labelled(text: str, control: QtWidgets.QWidget) -> Label:
    """The name of a control, with its mnemonic."""
    made = Label(text)
    made.setBuddy(control)
    if not control.accessibleName():
        control.setAccessibleName(text.replace("&", ""))
    return made


class Live(Label):
    """Text that changes many times: its room is fixed by the longest text, so nothing around it moves or is laid out anew."""

    def __init__(self, text: str, kind: str, longest: str) -> None:
        super().__init__(text)
        self.setObjectName(kind)
        self.setTextFormat(QtCore.Qt.TextFormat.PlainText)
        self._longest = longest
        self.setSizePolicy(QtWidgets.QSizePolicy.Policy.Preferred, QtWidgets.QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """Room for the longest text."""
        metrics = self.fontMetrics()
        return QtCore.QSize(metrics.horizontalAdvance(words(self._longest)) + 2, metrics.height())

    def minimumSizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """The same."""
        return self.sizeHint()

    def say(self, text: str) -> None:
        """Change the text, if it is another one."""
        if text != self.text():
            self.setText(text)


def button(text: str, act: Callable[[], object], kind: str = "", tip: str = "") -> Button:
    """A button that does something; `tip` says what in a sentence."""
    made = Button(text)
    made.setObjectName(kind)
    made.setAccessibleName(text.replace("&", ""))
    made.setAccessibleDescription(tip)
    made.setToolTip(tip)
    made.setAutoDefault(False)
    made.clicked.connect(lambda _checked=False: act())
    return made


class Card(Worded, QtWidgets.QFrame):
    """A panel with a heading; `body` is the layout of what it holds, `head` the row of its heading."""

    def __init__(self, heading: str = "", note: str = "") -> None:
        super().__init__()
        self.setObjectName("card")
        self.body = QtWidgets.QVBoxLayout(self)
        self.body.setContentsMargins(look.ROOM, look.GAP, look.ROOM, look.GAP)
        self.body.setSpacing(look.TIGHT)
        self.head = QtWidgets.QHBoxLayout()
        self.head.setSpacing(look.TIGHT)
        if heading:
            self.setAccessibleName(heading)
            self.heading = label(heading, "heading")
            self.head.addWidget(self.heading)
            if note:
                self.note = label(note, "small", wrap=True)
                self.head.addWidget(self.note, 1)
            else:
                self.head.addStretch(1)
            self.body.addLayout(self.head)


class Segments(Worded, QtWidgets.QWidget):
    """A choice of a few words side by side; one is always chosen, and Tab reaches each."""

    chosen = QtCore.Signal(str)

    def __init__(self, name: str, choices: Sequence[str], columns: int | None = None) -> None:
        super().__init__()
        self.setAccessibleName(name)
        grid = QtWidgets.QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(look.HAIR)
        self.buttons: dict[str, Button] = {}
        for number, word in enumerate(choices):
            each = Button(word)
            each.setObjectName("segment")
            each.setCheckable(True)
            each.setAutoDefault(False)
            each.setAccessibleName(f"{name}: {word}")
            each.turned.connect(partial(self._press, word))
            self.buttons[word] = each
            grid.addWidget(each, *divmod(number, columns or len(choices)))

    def set(self, word: str) -> None:
        """Choose without telling."""
        for each, pressed in self.buttons.items():
            pressed.setChecked(each == word)

    def _press(self, word: str, _on: bool) -> None:
        self.set(word)
        self.chosen.emit(word)

    @property
    def value(self) -> str:
        """What is chosen."""
        return next((w for w, b in self.buttons.items() if b.isChecked()), "")


class Named(Button):
    """A button of a choice with a name that the person gave: written out where there is room, else its two ends."""

    def __init__(self, name: str, short: str) -> None:
        self._whole, self._short = (text.replace("&", "&&") for text in (name, short))
        super().__init__(self._whole)
        self.setToolTip(name)
        self.setObjectName("segment")
        self.setCheckable(True)
        self.setAutoDefault(False)

    def _needs(self, text: str) -> int:
        """Width with a text, in bold as when it is chosen."""
        bold = QtGui.QFont(self.font())
        bold.setWeight(QtGui.QFont.Weight.DemiBold)
        return QtGui.QFontMetrics(bold).horizontalAdvance(text.replace("&&", "&")) + 2 * look.ROOM

    def sizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """Room for the whole name."""
        return QtCore.QSize(self._needs(self._whole), super().sizeHint().height())

    def minimumSizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """Room for its ends."""
        return QtCore.QSize(self._needs(self._short), super().minimumSizeHint().height())

    def resizeEvent(self, event: QtGui.QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Write what fits."""
        super().resizeEvent(event)
        text = self._whole if self._needs(self._whole) <= self.width() else self._short
        if text != self.text():
            self.setText(text)


class Sign(QtWidgets.QWidget):
    """The shape of a sentence's weight, or the tick of what is fine."""

    def __init__(self, px: int = 22) -> None:
        super().__init__()
        self.setFixedSize(px, px)
        self._weight: Weight | State = Weight.NOTE
        self._theme = THEMES["light"]

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        self.update()

    def show_weight(self, weight: Weight | State) -> None:
        """Draw another weight, or a state."""
        if weight is not self._weight:
            self._weight = weight
            self.update()

    def paintEvent(self, event: QtGui.QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Draw."""
        painter = QtGui.QPainter(self)
        box = QtCore.QRectF(self.rect()).adjusted(2, 2, -2, -2)
        if isinstance(self._weight, Weight):
            glyphs.draw_weight(painter, self._weight, box, self._theme)
        else:
            glyphs.draw_state(painter, self._weight, box.center(), 0.45 * box.width(), self._theme, self._theme.panel)
        painter.end()


class Choice(ComboBox):
    """A list to choose from; its arrow is drawn here, because a style sheet takes Qt's own away."""

    def __init__(self) -> None:
        super().__init__()
        self._theme = THEMES["light"]

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        self.update()

    def paintEvent(self, event: QtGui.QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """The box with as much of its text as there is room for, then the arrow."""
        option = QtWidgets.QStyleOptionComboBox()
        self.initStyleOption(option)
        style = QtWidgets.QStyle
        room = self.style().subControlRect(
            style.ComplexControl.CC_ComboBox, option, style.SubControl.SC_ComboBoxEditField, self
        )
        elide = QtCore.Qt.TextElideMode.ElideRight
        option.currentText = option.fontMetrics.elidedText(option.currentText, elide, room.width())
        painter = QtWidgets.QStylePainter(self)
        painter.drawComplexControl(style.ComplexControl.CC_ComboBox, option)
        painter.drawControl(style.ControlElement.CE_ComboBoxLabel, option)
        box = QtCore.QRectF(self.width() - 28.0, 0.5 * self.height() - 8.0, 16.0, 16.0)
        path = QtGui.QPainterPath(QtCore.QPointF(6.0, 9.5))
        path.lineTo(12.0, 15.5)
        path.lineTo(18.0, 9.5)
        glyphs.stroke(painter, path, box, self._theme.text, 1.8)
        painter.end()


class Columns(QtWidgets.QWidget):
    """Two halves side by side, or one above the other where there is little room."""

    def __init__(self, left: QtWidgets.QLayout, right: QtWidgets.QLayout, shares: tuple[int, int]) -> None:
        super().__init__()
        self._row = QtWidgets.QBoxLayout(QtWidgets.QBoxLayout.Direction.LeftToRight, self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(look.GAP)
        self._row.addLayout(left, shares[0])
        self._row.addLayout(right, shares[1])

    def set_beside(self, beside: bool, *, right_first: bool = False) -> None:
        """Side by side, or the left half above the other; `right_first`: below it."""
        direction = QtWidgets.QBoxLayout.Direction
        above = direction.BottomToTop if right_first else direction.TopToBottom
        self._row.setDirection(direction.LeftToRight if beside else above)


class Scrolled(Worded, QtWidgets.QScrollArea):
    """Scrolls up and down where the window is too low; tells in `room` how wide it is, before what it holds is laid out."""

    room = QtCore.Signal(int)

    def __init__(self, inner: QtWidgets.QWidget, name: str) -> None:
        super().__init__()
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(QtCore.Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
        self.setAccessibleName(name)
        self.setWidget(inner)
        self._wanted: QtWidgets.QWidget | None = None
        self._soon = QtCore.QTimer(self)  # once what was changed is laid out
        self._soon.setSingleShot(True)
        self._soon.setInterval(0)
        self._soon.timeout.connect(self._show_wanted)

    def show_soon(self, widget: QtWidgets.QWidget) -> None:
        """Scroll to a widget once it is laid out; one that is higher than the window is shown from its top."""
        self._wanted = widget
        self._soon.start()

    def _show_wanted(self) -> None:
        widget, self._wanted = self._wanted, None
        if widget is None or not isValid(widget) or not widget.isVisible():
            return
        if widget.height() > self.viewport().height() - 2 * look.GAP:
            bar = self.verticalScrollBar()
            bar.setValue(bar.value() + widget.mapTo(self.viewport(), QtCore.QPoint(0, -look.GAP)).y())
        else:
            self.ensureWidgetVisible(widget, 0, look.GAP)

    def resizeEvent(self, event: QtGui.QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Tell first, then lay out."""
        self.room.emit(self.viewport().width())
        super().resizeEvent(event)


def reveal(widget: QtWidgets.QWidget) -> None:
    """Scroll to a widget in whatever scrolls it."""
    area = widget.parentWidget()
    while area is not None and not isinstance(area, Scrolled):
        area = area.parentWidget()
    if area is not None:
        area.show_soon(widget)
