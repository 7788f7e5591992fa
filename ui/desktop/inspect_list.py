"""A list of rows, each with a title and the shape and the word of how it stands. Arrow keys go through it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui.desktop import glyphs, look
from stillshaft.ui.desktop.stages import State
from stillshaft.ui.theme import THEMES, Theme

_SHAPE_X, _TEXT_X, _RADIUS = 22.0, 44, 7.0


@dataclass(frozen=True)
class Row:
    """A row: its key, its title, how it stands, and the word for that."""

    key: str
    title: str
    state: State
    word: str


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
        """The title, which may need two lines, and the word."""
        name, word = (QtGui.QFontMetrics(f) for f in self._fonts())
        title = self._title(name, self.list.rows[index.row()].title, self.list.viewport().width())
        return QtCore.QSize(100, max(look.TARGET_PX, title.height() + word.height() + look.GAP))

    @staticmethod
    def _title(metrics: QtGui.QFontMetrics, text: str, width: int) -> QtCore.QRect:
        room = QtCore.QRect(0, 0, max(60, width - _TEXT_X - look.TIGHT), 10_000)
        return metrics.boundingRect(room, QtCore.Qt.TextFlag.TextWordWrap.value, text)

    def paint(
        self,
        painter: QtGui.QPainter,
        option: QtWidgets.QStyleOptionViewItem,
        index: QtCore.QModelIndex | QtCore.QPersistentModelIndex,
    ) -> None:
        """Shape, title, word."""
        row, theme = self.list.rows[index.row()], self.list.theme
        box = self.list.row_rect(index.row())
        chosen = self.list.currentRow() == index.row()
        behind = theme.soft if chosen else theme.panel
        painter.save()
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)
        painter.fillRect(box, QtGui.QColor(behind))
        if chosen:  # a solid edge too, so that it does not hang on a shade
            painter.fillRect(QtCore.QRect(box.left(), box.top() + 3, 4, box.height() - 6), QtGui.QColor(theme.accent))
        centre = QtCore.QPointF(box.left() + _SHAPE_X, box.center().y() + 0.5)
        glyphs.draw_state(painter, row.state, centre, _RADIUS, theme, behind)
        name, word = self._fonts()
        words = QtGui.QFontMetrics(word)
        title = self._title(QtGui.QFontMetrics(name), row.title, box.width())
        top = box.top() + 0.5 * (box.height() - title.height() - words.height())
        room = box.width() - _TEXT_X - look.TIGHT
        painter.setPen(QtGui.QColor(theme.text))
        painter.setFont(name)
        at = QtCore.QRectF(box.left() + _TEXT_X, top, room, title.height() + 1)
        painter.drawText(at, QtCore.Qt.TextFlag.TextWordWrap.value, row.title)
        painter.setPen(QtGui.QColor(glyphs.state_colour(row.state, theme)))
        painter.setFont(word)
        said = words.elidedText(row.word, QtCore.Qt.TextElideMode.ElideRight, room)
        painter.drawText(QtCore.QPointF(box.left() + _TEXT_X, top + title.height() + words.ascent()), said)
        if chosen and self.list.hasFocus():
            painter.setPen(QtGui.QPen(QtGui.QColor(theme.accent), 2.0))
            painter.drawRoundedRect(QtCore.QRectF(box).adjusted(1, 1, -1, -1), 4, 4)
        painter.restore()


class RowList(QtWidgets.QListWidget):
    """Rows to choose from; emits `chosen` with the key of the row that is current."""

    chosen = QtCore.Signal(str)

    def __init__(self, name: str) -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.setHorizontalScrollBarPolicy(QtCore.Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QtWidgets.QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setItemDelegate(_RowPainter(self))
        self.rows: tuple[Row, ...] = ()
        self.theme: Theme = THEMES["light"]
        self.currentRowChanged.connect(self._tell)

    def row_rect(self, number: int) -> QtCore.QRect:
        """Where a row is, in the list's own window."""
        return self.visualItemRect(self.item(number))

    def show_rows(self, rows: Sequence[Row]) -> None:
        """Show these; the one that is current stays so."""
        if tuple(rows) == self.rows:
            return
        key, same = self.key, [r.key for r in rows] == [r.key for r in self.rows]
        self.rows = tuple(rows)
        if not same:
            self.blockSignals(True)
            self.clear()
            self.addItems([row.title for row in rows])
            keys = [row.key for row in rows]
            if rows:
                self.setCurrentRow(keys.index(key) if key in keys else 0)
            self.blockSignals(False)
        for number, row in enumerate(rows):
            self.item(number).setData(QtCore.Qt.ItemDataRole.AccessibleTextRole, f"{row.title}: {row.word}")
            self.item(number).setToolTip(f"{row.title}: {row.word}")
        self.viewport().update()
        if self.key != key:
            self._tell(self.currentRow())

    @property
    def key(self) -> str:
        """The key of the current row."""
        number = self.currentRow()
        return self.rows[number].key if 0 <= number < len(self.rows) else ""

    def choose(self, key: str) -> None:
        """Make a row current."""
        keys = [row.key for row in self.rows]
        if key in keys:
            self.setCurrentRow(keys.index(key))

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.theme = theme
        self.viewport().update()

    def _tell(self, number: int) -> None:
        if 0 <= number < len(self.rows):
            self.chosen.emit(self.rows[number].key)

    def changeEvent(self, event: QtCore.QEvent) -> None:  # noqa: N802 - Qt's name
        """Rows are as high as their text."""
        super().changeEvent(event)
        if event.type() in (QtCore.QEvent.Type.FontChange, QtCore.QEvent.Type.StyleChange):
            self.scheduleDelayedItemsLayout()

    def resizeEvent(self, event: QtGui.QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Titles may need other lines."""
        super().resizeEvent(event)
        self.scheduleDelayedItemsLayout()

    def minimumSizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """Some rows, and a title of usual length."""
        px = self.fontInfo().pixelSize()
        return QtCore.QSize(14 * px, 7 * px)

    def sizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """The same: it takes what it is given."""
        return self.minimumSizeHint()
