"""The report's layout on the screen: texts, tables and pictures, read and scrolled as one page."""

from __future__ import annotations

from html import escape

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui.desktop import masses_paint
from stillshaft.ui.desktop.worded import Worded
from stillshaft.ui.report_layout import (
    Block,
    Facts,
    Layout,
    Picture,
    Pictures,
    Section,
    Signature,
    Table,
    Text,
)
from stillshaft.ui.report_pdf import colour_of

_MARGIN = 16
_SCALE = 1.2  # pixels for a point of a picture
_FINE = 2.0  # as it is drawn, for fine screens too
_STYLE = f"""
h1 {{ font-size: 22px; font-weight: 600; }} h2 {{ font-size: 18px; font-weight: 600; color: {colour_of("accent")}; }}
p {{ white-space: pre-wrap; margin-top: 4px; margin-bottom: 4px; }}
.quiet, th, .name {{ color: {colour_of("quiet")}; }} .strong, .lead {{ font-weight: 600; }} .lead {{ font-size: 17px; }}
.doubt {{ color: {colour_of("bad")}; }} th {{ text-align: left; font-weight: 400; }}
"""


def images_of(layout: Layout) -> tuple[QtGui.QImage, ...]:
    """The pictures of a layout in their order; may be drawn on any thread, and takes its time."""
    return tuple(masses_paint.image_of(picture, _FINE) for picture in _pictures(layout))


def _pictures(layout: Layout) -> list[Picture]:
    blocks = [block for section in layout.sections for block in section.blocks]
    return [picture for block in blocks if isinstance(block, Pictures) for picture in block.pictures]


class Preview(Worded, QtWidgets.QTextBrowser):
    """Shows a report; always on paper's colours, as it will be printed."""

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("Report as it will be written")
        self.setOpenLinks(False)
        self.setStyleSheet(f"QTextBrowser {{ background: {colour_of('paper')}; color: {colour_of('text')}; }}")
        self.setHorizontalScrollBarPolicy(QtCore.Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._shown: tuple[Layout, tuple[QtGui.QImage, ...]] | None = None
        self._number = 0  # of the picture that comes next
        self._most, self._body_px = 0, 14

    def show_layout(self, layout: Layout, images: tuple[QtGui.QImage, ...], body_px: int) -> None:
        """Show a report with its images."""
        self._shown, self._number, self._body_px = (layout, images), 0, body_px
        self._most = max(200, self.viewport().width() - 2 * _MARGIN)
        document = QtGui.QTextDocument(self)
        document.setDefaultStyleSheet(_STYLE)
        document.setDocumentMargin(_MARGIN)
        fine = self.devicePixelRatioF()
        for number, (image, picture) in enumerate(zip(images, _pictures(layout), strict=True)):
            wide = round(fine * self._shown_scale(picture) * picture.width)
            # scaled here, because a document leaves rows of pixels out
            shown = image.scaledToWidth(wide, QtCore.Qt.TransformationMode.SmoothTransformation)
            shown.setDevicePixelRatio(fine)
            document.addResource(
                QtGui.QTextDocument.ResourceType.ImageResource, QtCore.QUrl(f"picture:{number}"), shown
            )
        made = "".join(self._section(s) for s in layout.sections)
        head = f"<h1>{_safe(layout.title)}</h1><p class='quiet'>{_safe(layout.subtitle)}</p>"
        font = self.font()
        font.setPixelSize(body_px)
        document.setDefaultFont(font)
        document.setHtml(f"{head}{made}<p class='quiet'>{_safe(layout.footer)}</p>")
        self.setDocument(document)

    def resizeEvent(self, event: QtGui.QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Pictures as wide as there is room."""
        super().resizeEvent(event)
        if self._shown is not None and self.viewport().width() - 2 * _MARGIN != self._most:
            at = self.verticalScrollBar().value()
            self.show_layout(*self._shown, self._body_px)
            self.verticalScrollBar().setValue(at)

    def _shown_scale(self, picture: Picture) -> float:
        """Pixels for a point of a picture, so that it fits."""
        return min(_SCALE, self._most / picture.width)

    def _section(self, section: Section) -> str:
        return f"<h2>{_safe(section.title)}</h2>{''.join(self._block(b) for b in section.blocks)}"

    def _block(self, block: Block) -> str:
        match block:
            case Text():
                return f"<p class='{block.style}'>{_safe(block.text)}</p>"
            case Facts():
                rows = "".join(f"<tr><td class='name'>{_safe(n)}</td><td>{_safe(t)}</td></tr>" for n, t in block.rows)
                return f"<table cellpadding='4' width='100%'>{rows}</table>"
            case Table():
                return _table(block)
            case Pictures():
                return f"<p>{''.join(self._image(p) for p in block.pictures)}</p>"
            case Signature():
                return "".join(f"<p class='quiet'>{_safe(line)}: ______________________</p>" for line in block.lines)

    def _image(self, picture: Picture) -> str:
        number, self._number = self._number, self._number + 1
        scale = self._shown_scale(picture)
        return (
            f"<img src='picture:{number}' width='{scale * picture.width:.0f}' height='{scale * picture.height:.0f}' "
            f"alt='{_safe(picture.alt)}'> "
        )


def _table(block: Table) -> str:
    head = "".join(f"<th>{_safe(c.title)}</th>" for c in block.columns)
    rows = []
    for row in block.rows:
        if row.band:
            title, *more = row.cells
            said = f"<b>{_safe(title)}</b> {_safe(' '.join(more))}"
            rows.append(f"<tr><td colspan='{len(block.columns)}' bgcolor='{colour_of('ground')}'>{said}</td></tr>")
            continue
        cells = zip(block.columns, row.cells, strict=True)
        rows.append(
            "<tr>"
            + "".join(f"<td align='{'right' if c.figures else 'left'}'>{_safe(t)}</td>" for c, t in cells)
            + "</tr>"
        )
    return f"<table cellpadding='4' width='100%'><tr>{head}</tr>{''.join(rows)}</table>"


def _safe(text: str) -> str:
    return escape(text).replace("\n", "<br>")
