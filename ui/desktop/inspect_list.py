"""A list of rows, each with a title and the shape and the word of how it stands. Arrow keys go through it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui.desktop import glyphs, look, words
from stillshaft.ui.desktop.stages import State
from stillshaft.ui.desktop.worded import Worded
from stillshaft.ui.theme import THEMES, Theme

_SHAPE_X, _TEXT_X, _RADIUS = 22.0, 44, 7.0
_NO_LIMIT = 16_777_215  # px, Qt's own


@dataclass(frozen=True)
class Row:
    """A row: its key, its title, how it stands, and the word for that; `tail` follows it as it is written."""

    key: str
    title: str
    state: State
    word: str
    tail: str = ""

    @property
    def said(self) -> str:
        """The word with what follows it, in the language of the window."""
        return words.own(words.words(self.word) + self.tail) if self.tail else self.word


class _RowPainter(QtWidgets.QStyledItemDelegate):
    """Draws a row; `rows` are those of the list."""

    def __init__(self, parent: RowList) -> None:
        super().__init__(parent)
        self.list = parent

    def _fonts(self) -> tuple[QtGui.QFont, QtGui.QFont]:
        px = self.list.fontInfo().pixelSize()
        return look.font(px, strong=True), look.font(look.SMALL * px)

    def sizeHint(  # noqa: N802 - Qt's name
        self,
        option: QtWidgets.QStyleOptionViewItem,
        index: QtCore.QModelIndex | QtCore.QPersistentModelIndex,
    ) -> QtCore.QSize:
        """Title and word, in as many lines as they need."""
        row, width = self.list.rows[index.row()], self.list.least_room
        name, word = (QtGui.QFontMetrics(f) for f in self._fonts())
        high = _box(name, row.title, width).height() + _box(word, row.said, width).height()
        return QtCore.QSize(100, max(look.TARGET_PX, high + look.GAP))

    def paint(
        self,
        painter: QtGui.QPainter,
        option: QtWidgets.QStyleOptionViewItem,
        index: QtCore.QModelIndex | QtCore.QPersistentModelIndex,
    ) -> None:
        """Shape, title, word."""
        row, theme, box = self.list.rows[index.row()], self.list.theme, option.rect
        chosen = self.list.currentIndex().row() == index.row()
        behind = theme.soft if chosen else theme.panel
        painter.save()
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)
        painter.fillRect(box, QtGui.QColor(behind))
        if chosen:  # a solid edge too, so that it does not hang on a shade
            painter.fillRect(QtCore.QRect(box.left(), box.top() + 3, 4, box.height() - 6), QtGui.QColor(theme.accent))
        centre = QtCore.QPointF(box.left() + _SHAPE_X, box.center().y() + 0.5)
        glyphs.draw_state(painter, row.state, centre, _RADIUS, theme, behind)
        name, word = self._fonts()
        title = _box(QtGui.QFontMetrics(name), row.title, self.list.least_room)
        said = _box(QtGui.QFontMetrics(word), row.said, self.list.least_room)
        top = box.top() + 0.5 * (box.height() - title.height() - said.height())
        left, room = box.left() + _TEXT_X, self.list.least_room - _TEXT_X - look.TIGHT
        painter.setPen(QtGui.QColor(theme.text))
        painter.setFont(name)
        wrap = QtCore.Qt.TextFlag.TextWordWrap.value
        painter.drawText(QtCore.QRectF(left, top, room, title.height() + 1), wrap, words.in_lines(row.title))
        painter.setPen(QtGui.QColor(glyphs.state_colour(row.state, theme)))
        painter.setFont(word)
        painter.drawText(
            QtCore.QRectF(left, top + title.height(), room, said.height() + 1), wrap, words.in_lines(row.said)
        )
        if chosen and self.list.hasFocus():
            painter.setPen(QtGui.QPen(QtGui.QColor(theme.accent), 2.0))
            painter.drawRoundedRect(QtCore.QRectF(box).adjusted(1, 1, -1, -1), 4, 4)
        painter.restore()


def _box(metrics: QtGui.QFontMetrics, text: str, width: int) -> QtCore.QRect:
    """Room for a text in a row of this width."""
    room = QtCore.QRect(0, 0, max(60, width - _TEXT_X - look.TIGHT), 10_000)
    return metrics.boundingRect(room, QtCore.Qt.TextFlag.TextWordWrap.value, words.in_lines(text))


class _Rows(QtCore.QAbstractListModel):
    """The rows as Qt asks for them; what a screen reader says of each."""

    def __init__(self, parent: QtCore.QObject) -> None:
        super().__init__(parent)
        self.rows: tuple[Row, ...] = ()

    def rowCount(  # noqa: N802 - Qt's name
        self, parent: QtCore.QModelIndex | QtCore.QPersistentModelIndex | None = None
    ) -> int:
        """How many there are."""
        return len(self.rows) if parent is None or not parent.isValid() else 0

    def data(
        self,
        index: QtCore.QModelIndex | QtCore.QPersistentModelIndex,
        role: int = QtCore.Qt.ItemDataRole.DisplayRole,
    ) -> str | None:
        """Title and word."""
        roles = QtCore.Qt.ItemDataRole
        if role not in (roles.DisplayRole, roles.AccessibleTextRole, roles.ToolTipRole) or not index.isValid():
            return None
        row = self.rows[index.row()]
        return words.own(f"{words.words(row.title)}: {words.words(row.said)}")

    def take(self, rows: tuple[Row, ...]) -> None:
        """Other rows, or the same with other words."""
        if [r.key for r in rows] == [r.key for r in self.rows]:
            self.rows = rows
            if rows:
                self.dataChanged.emit(self.index(0), self.index(len(rows) - 1))
        else:
            self.beginResetModel()
            self.rows = rows
            self.endResetModel()


class RowList(Worded, QtWidgets.QListView):
    """Rows to choose from; emits `chosen` with the key of the row that is current."""

    chosen = QtCore.Signal(str)

    def __init__(self, name: str) -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.setHorizontalScrollBarPolicy(QtCore.Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QtWidgets.QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setResizeMode(QtWidgets.QListView.ResizeMode.Adjust)
        self.theme: Theme = THEMES["light"]
        self._model = _Rows(self)
        self._showing = False
        self.setModel(self._model)
        self.setItemDelegate(_RowPainter(self))

    @property
    def rows(self) -> tuple[Row, ...]:
        """What is listed."""
        return self._model.rows

    @property
    def least_room(self) -> int:
        """Width of a row beside a scroll bar: what is higher for it is so before there is one, too."""
        return self.width() - 2 * self.frameWidth() - self.verticalScrollBar().sizeHint().width()

    def show_rows(self, rows: Sequence[Row]) -> None:
        """Show these; the one that is current stays so."""
        if tuple(rows) == self.rows:
            return
        key = self.key
        self._showing = True
        self._model.take(tuple(rows))
        self.scheduleDelayedItemsLayout()  # words of another length need another height
        if not self.currentIndex().isValid() and rows:
            keys = [row.key for row in rows]
            self.setCurrentIndex(self._model.index(keys.index(key) if key in keys else 0))
        self._showing = False
        if self.key != key:
            self.chosen.emit(self.key)

    @property
    def key(self) -> str:
        """The key of the current row."""
        index = self.currentIndex()
        return self.rows[index.row()].key if index.isValid() else ""

    def choose(self, key: str) -> None:
        """Make a row current."""
        keys = [row.key for row in self.rows]
        if key in keys:
            self.setCurrentIndex(self._model.index(keys.index(key)))

    def currentChanged(  # noqa: N802 - Qt's name
        self,
        current: QtCore.QModelIndex | QtCore.QPersistentModelIndex,
        previous: QtCore.QModelIndex | QtCore.QPersistentModelIndex,
    ) -> None:
        """Tell which one it is now."""
        super().currentChanged(current, previous)
        if current.isValid() and not self._showing:
            self.chosen.emit(self.rows[current.row()].key)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.theme = theme
        self.viewport().update()

    def changeEvent(self, event: QtCore.QEvent) -> None:  # noqa: N802 - Qt's name
        """Rows are as high as their text."""
        super().changeEvent(event)
        if event.type() in (QtCore.QEvent.Type.FontChange, QtCore.QEvent.Type.StyleChange):
            self.scheduleDelayedItemsLayout()

    def stand(self, row: QtWidgets.QBoxLayout, *, wide_px: int, low_px: int, beside: bool) -> None:
        """Stand at the left of what else is in a row, so wide, or above it and no higher than that."""
        direction = QtWidgets.QBoxLayout.Direction
        row.setDirection(direction.LeftToRight if beside else direction.TopToBottom)
        if beside:
            self.setFixedWidth(wide_px)
            self.setMaximumHeight(_NO_LIMIT)
        else:
            self.setMinimumWidth(0)
            self.setMaximumWidth(_NO_LIMIT)
            self.setMaximumHeight(low_px)

    def minimumSizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """Some rows, and a title of usual length."""
        px = self.fontInfo().pixelSize()
        return QtCore.QSize(14 * px, 7 * px)

    def sizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """The same: it takes what it is given."""
        return self.minimumSizeHint()
