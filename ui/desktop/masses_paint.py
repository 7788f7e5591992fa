"""Pictures of the report's shapes on whatever Qt draws on: a screen, an image, a PDF, a printer."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6 import QtCore, QtGui
from stillshaft.dsp import tables
from stillshaft.ui.desktop import look
from stillshaft.ui.report_layout import Disc, Picture, Words
from stillshaft.ui.report_pdf import colour_of

_FINE = 16.0  # type is set in parts of a point: Qt has whole pixels only
_PHONE_SCALE = 3.0  # pixels of a phone's screen for a point


def paint(painter: QtGui.QPainter, picture: Picture, scale: float) -> None:
    """Draw a picture from the painter's upper left corner, `scale` units of it for a point."""
    painter.save()
    painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)
    painter.setRenderHint(QtGui.QPainter.RenderHint.TextAntialiasing)
    painter.scale(scale, scale)
    for shape in picture.shapes:
        if isinstance(shape, Words):
            _write(painter, shape)
            continue
        if shape.colour is None:
            painter.setPen(QtCore.Qt.PenStyle.NoPen)
        else:
            pen = QtGui.QPen(QtGui.QColor(colour_of(shape.colour)), shape.width)
            pen.setJoinStyle(QtCore.Qt.PenJoinStyle.RoundJoin)
            if shape.dash:
                pen.setCapStyle(QtCore.Qt.PenCapStyle.FlatCap)
                pen.setDashPattern([d / shape.width for d in shape.dash])
            painter.setPen(pen)
        thin = 0.0 if isinstance(shape, Disc) else shape.thin
        painter.setBrush(
            QtGui.QColor(colour_of(shape.fill, thin)) if shape.fill else QtGui.QBrush(QtCore.Qt.BrushStyle.NoBrush)
        )
        if isinstance(shape, Disc):
            painter.drawEllipse(QtCore.QPointF(shape.x, shape.y), shape.radius, shape.radius)
            continue
        points = QtGui.QPolygonF([QtCore.QPointF(x, y) for x, y in shape.points])
        if shape.closed:
            painter.drawPolygon(points)
        else:
            painter.drawPolyline(points)
    painter.restore()


def _write(painter: QtGui.QPainter, words: Words) -> None:
    font = look.font(_FINE * words.size, strong=words.strong)
    font.clearFeatures()  # figures of another shape than usual cannot be searched in a PDF
    wide = QtGui.QFontMetricsF(font).horizontalAdvance(words.text) / _FINE
    left = words.x - {"start": 0.0, "middle": 0.5 * wide, "end": wide}[words.anchor]
    painter.save()
    painter.translate(left, words.y)
    painter.scale(1.0 / _FINE, 1.0 / _FINE)
    painter.setFont(font)
    painter.setPen(QtGui.QColor(colour_of(words.colour)))
    painter.drawText(QtCore.QPointF(0.0, 0.0), words.text)
    painter.restore()


def image_of(picture: Picture, scale: float) -> QtGui.QImage:
    """The picture as an image, `scale` pixels for a point."""
    image = QtGui.QImage(round(scale * picture.width), round(scale * picture.height), QtGui.QImage.Format.Format_RGB32)
    image.fill(QtGui.QColor(colour_of("paper")))
    painter = QtGui.QPainter(image)
    paint(painter, picture, scale)
    painter.end()
    return image


def save_images(pictures: Sequence[Picture], path: Path, scale: float = _PHONE_SCALE) -> tuple[Path, ...]:
    """Write PNG files, numbered where there are several, each whole or not at all. Raises OSError."""
    written = []
    for number, picture in enumerate(pictures, start=1):
        name = path if len(pictures) == 1 else path.with_name(f"{path.stem} {number}{path.suffix}")
        tables.write_whole(name, _bytes(picture, scale))
        written.append(name)
    return tuple(written)


def _bytes(picture: Picture, scale: float) -> bytes:
    buffer = QtCore.QBuffer()
    buffer.open(QtCore.QIODevice.OpenModeFlag.WriteOnly)
    image_of(picture, scale).save(buffer, "PNG")  # type: ignore[call-overload]
    return bytes(buffer.data().data())


def save_pdf(pictures: Sequence[Picture], path: Path) -> None:
    """Write one PDF, a page for each picture, whole or not at all. Raises OSError."""
    buffer = QtCore.QBuffer()
    buffer.open(QtCore.QIODevice.OpenModeFlag.WriteOnly)
    writer = QtGui.QPdfWriter(buffer)
    writer.setCreator("Stillshaft")
    writer.setTitle(path.stem)
    _pages(writer, pictures)
    tables.write_whole(path, bytes(buffer.data().data()))


def print_on(printer: QtGui.QPagedPaintDevice, pictures: Sequence[Picture]) -> None:
    """Print a page for each picture."""
    _pages(printer, pictures)


def _pages(device: QtGui.QPagedPaintDevice, pictures: Sequence[Picture]) -> None:
    painter = QtGui.QPainter()
    for number, picture in enumerate(pictures):
        size = QtGui.QPageSize(QtCore.QSizeF(picture.width, picture.height), QtGui.QPageSize.Unit.Point)
        device.setPageSize(size)
        device.setPageMargins(QtCore.QMarginsF(0.0, 0.0, 0.0, 0.0))
        if number == 0:
            painter.begin(device)
        else:
            device.newPage()
        paint(painter, picture, device.logicalDpiX() / 72.0)
    painter.end()
