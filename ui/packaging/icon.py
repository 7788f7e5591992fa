"""Makes the icon's PNG files from its drawing: `python ui/packaging/icon.py`."""

from __future__ import annotations

import os
from pathlib import Path

FOLDER = Path(__file__).parents[1] / "desktop" / "icon"
DRAWING = FOLDER / "stillshaft.svg"
SIZES_PX = (16, 24, 32, 48, 64, 128, 256)


def make(folder: Path) -> list[Path]:
    """Write one PNG file for each size into a folder; their paths."""
    from PySide6 import QtCore, QtGui, QtSvg

    drawing = QtSvg.QSvgRenderer(str(DRAWING))
    if not drawing.isValid():
        raise ValueError(f"{DRAWING}: not a drawing that Qt can read")
    made = []
    for size_px in SIZES_PX:
        picture = QtGui.QImage(size_px, size_px, QtGui.QImage.Format.Format_ARGB32_Premultiplied)
        picture.fill(QtCore.Qt.GlobalColor.transparent)
        painter = QtGui.QPainter(picture)
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)
        drawing.render(painter, QtCore.QRectF(picture.rect()))
        painter.end()
        path = folder / f"stillshaft-{size_px}.png"
        if not picture.save(str(path)):
            raise OSError(f"{path}: cannot be written")
        made.append(path)
    return made


if __name__ == "__main__":
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    make(FOLDER)
