"""Photos of a job: small pictures side by side, added by a button or by dropping files, shown large when pressed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop import words as language
from stillshaft.ui.desktop.tasks import Tasks
from stillshaft.ui.desktop.worded import Worded
from stillshaft.ui.theme import THEMES, Theme

_TILE_PX = (150, 112)
_LARGE_PX = 1400
ENDINGS = "*.jpg *.jpeg *.png *.webp *.bmp *.gif *.tif *.tiff *.heic *.heif *.JPG *.JPEG *.PNG *.HEIC"


@dataclass(frozen=True)
class Photo:
    """A photo in the job's folder; `entry` is the number of its entry, None where another one holds it."""

    path: Path
    name: str
    entry: int | None = None


def read_small(path: Path, width: int, height: int) -> QtGui.QImage:
    """A picture no larger than that, the right way up; an empty one where it cannot be read. May run on any thread."""
    reader = QtGui.QImageReader(str(path))
    reader.setAutoTransform(True)
    size = reader.size()
    if size.isValid():
        reader.setScaledSize(size.scaled(width, height, QtCore.Qt.AspectRatioMode.KeepAspectRatio))
    image = reader.read()
    if image.width() > width or image.height() > height:  # turned by its own mark
        image = image.scaled(width, height, QtCore.Qt.AspectRatioMode.KeepAspectRatio)
    return image


class Tile(Worded, QtWidgets.QAbstractButton):
    """One photo, small; pressed, it is shown large."""

    def __init__(self, photo: Photo) -> None:
        super().__init__()
        self.photo = photo
        self._image: QtGui.QPixmap | None = None
        self._theme: Theme = THEMES["light"]
        self.setFixedSize(*_TILE_PX)
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(f"Photo {photo.name}")
        self.setToolTip(photo.name)

    def show_image(self, image: QtGui.QImage) -> None:
        """Draw this; an empty one: only its name."""
        self._image = None if image.isNull() else QtGui.QPixmap.fromImage(image)
        self.setAccessibleDescription("" if self._image else "this computer cannot show its format")
        self.update()

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        self.update()

    def sizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """Always the same."""
        return QtCore.QSize(*_TILE_PX)

    def paintEvent(self, event: QtGui.QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Picture or name, then the focus."""
        painter = QtGui.QPainter(self)
        box = self.rect()
        painter.fillRect(box, QtGui.QColor(self._theme.soft))
        if self._image is not None:
            at = self._image.rect()
            at.moveCenter(box.center())
            painter.drawPixmap(at.topLeft(), self._image)
        else:
            painter.setPen(QtGui.QColor(self._theme.text))
            inner = box.adjusted(8, 8, -8, -8)
            painter.drawText(
                inner, QtCore.Qt.TextFlag.TextWordWrap | QtCore.Qt.AlignmentFlag.AlignCenter, self.photo.name
            )
        focus = self.hasFocus()
        painter.setPen(QtGui.QPen(QtGui.QColor(self._theme.accent if focus else self._theme.line), 4 if focus else 1))
        painter.drawRect(box.adjusted(0, 0, -1, -1))
        painter.end()


class Large(Worded, QtWidgets.QFrame):
    """A photo over the whole window; Escape or its button puts it away."""

    def __init__(self, window: QtWidgets.QWidget, photo: Photo, tasks: Tasks) -> None:
        super().__init__(window)
        self.setObjectName("card")
        self.setAccessibleName(f"Photo {photo.name}, large")
        self._before = QtWidgets.QApplication.focusWidget()
        column = QtWidgets.QVBoxLayout(self)
        self.picture = parts.label("Reading …", wrap=True)
        self.picture.setAlignment(QtCore.Qt.AlignmentFlag.AlignCenter)
        self.picture.setAccessibleName(f"Photo {photo.name}")
        self.close_button = parts.button("Close", self.put_away, "main")
        column.addWidget(self.picture, 1)
        column.addWidget(self.close_button, 0, QtCore.Qt.AlignmentFlag.AlignHCenter)
        self.setGeometry(window.rect())
        self._here = True
        wide, high = min(_LARGE_PX, self.width() - 40), min(_LARGE_PX, self.height() - 90)
        tasks.run("reading a photo", lambda: read_small(photo.path, wide, high), self._show, self._fail)
        self.show()
        self.raise_()
        self.close_button.setFocus()

    def put_away(self) -> None:
        """Go, and give the focus back."""
        self._here = False
        self.hide()
        if self._before is not None:
            self._before.setFocus()
        self.deleteLater()

    def keyPressEvent(self, event: QtGui.QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Escape puts it away."""
        if event.key() == QtCore.Qt.Key.Key_Escape:
            self.put_away()
        else:
            super().keyPressEvent(event)

    def _show(self, image: QtGui.QImage) -> None:
        if not self._here:
            return
        if image.isNull():
            self._fail("this computer cannot show its format; the file is in the job's folder")
        else:
            self.picture.setPixmap(QtGui.QPixmap.fromImage(image))

    def _fail(self, why: str) -> None:
        if self._here:
            self.picture.setText(why)


class Photos(Worded, QtWidgets.QWidget):
    """Photos in rows, and a button; emits `chosen` with files that were dropped or picked, `removed` with an entry."""

    chosen = QtCore.Signal(list)
    removed = QtCore.Signal(int)

    def __init__(self, name: str) -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.setAcceptDrops(True)
        self.tasks = Tasks(self)
        self.tiles: list[Tile] = []
        self._removers: list[QtWidgets.QPushButton] = []
        self._photos: tuple[Photo, ...] = ()
        self._columns = 3
        self._theme: Theme = THEMES["light"]
        column = QtWidgets.QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(look.TIGHT)
        self._grid = QtWidgets.QGridLayout()
        self._grid.setSpacing(look.TIGHT)
        self._grid.setAlignment(QtCore.Qt.AlignmentFlag.AlignLeft)
        self.add = parts.button("Add photos…", self._ask, tip="Choose files, or drop them here")
        self.add.setAccessibleName(f"Add photos, {name}")
        row = QtWidgets.QHBoxLayout()
        row.addWidget(self.add)
        self.hint = parts.label("or drop files here", "small", wrap=True)
        row.addWidget(self.hint, 1)
        column.addLayout(self._grid)
        column.addLayout(row)

    def show_photos(self, photos: Sequence[Photo]) -> None:
        """Show these."""
        if tuple(photos) == self._photos:
            return
        self._photos = tuple(photos)
        for widget in (*self.tiles, *self._removers):
            self._grid.removeWidget(widget)
            widget.hide()
            widget.deleteLater()
        self.tiles, self._removers = [], []
        for photo in self._photos:
            tile = Tile(photo)
            tile.set_theme(self._theme)
            tile.clicked.connect(lambda _checked=False, p=photo: Large(self.window(), p, self.tasks))
            self.tiles.append(tile)
            remover = parts.button("Remove", partial(self._remove, photo))
            remover.setAccessibleName(f"Remove photo {photo.name}")
            remover.setVisible(photo.entry is not None)
            self._removers.append(remover)
            self._read(tile)
        self._place()

    def _read(self, tile: Tile) -> None:
        def done(image: QtGui.QImage) -> None:
            if tile in self.tiles:
                tile.show_image(image)

        path = tile.photo.path
        self.tasks.run("reading a photo", lambda: read_small(path, *_TILE_PX), done, lambda _why: None)

    def set_width(self, width_px: int) -> None:
        """So much room from left to right."""
        columns = max(1, (width_px + look.TIGHT) // (_TILE_PX[0] + look.TIGHT))
        if columns != self._columns:
            self._columns = columns
            self._place()

    def _place(self) -> None:
        for number, (tile, remover) in enumerate(zip(self.tiles, self._removers, strict=True)):
            row, column = divmod(number, self._columns)
            self._grid.addWidget(tile, 2 * row, column)
            self._grid.addWidget(remover, 2 * row + 1, column)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        for tile in self.tiles:
            tile.set_theme(theme)

    def _ask(self) -> None:
        kinds = language.words(f"Photos ({ENDINGS});;All files (*)")
        names, _ = QtWidgets.QFileDialog.getOpenFileNames(self, language.words("Photos"), "", kinds)
        if names:
            self.chosen.emit([Path(name) for name in names])

    def _remove(self, photo: Photo) -> None:
        if photo.entry is not None:
            self.removed.emit(photo.entry)

    def dragEnterEvent(self, event: QtGui.QDragEnterEvent) -> None:  # noqa: N802 - Qt's name
        """Files may be dropped."""
        if dropped(event.mimeData()):
            event.acceptProposedAction()

    def dropEvent(self, event: QtGui.QDropEvent) -> None:  # noqa: N802 - Qt's name
        """Take the files."""
        files = dropped(event.mimeData())
        if files:
            event.acceptProposedAction()
            self.chosen.emit(files)

    def close_down(self) -> None:
        """Stop reading."""
        self.tasks.close()


def dropped(data: QtCore.QMimeData) -> list[Path]:
    """Files of this computer among what is dropped."""
    return [Path(url.toLocalFile()) for url in data.urls() if url.isLocalFile()]
