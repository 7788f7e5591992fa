"""A report's layout as a PDF, A4 or Letter: vector pictures, embedded typeface, headings repeated, pages numbered."""

from __future__ import annotations

import functools
import io
from collections.abc import Iterator, Sequence
from typing import Any
from xml.sax.saxutils import escape

from stillshaft.ui import theme, typeface
from stillshaft.ui.report_layout import (
    Block,
    Disc,
    Facts,
    Layout,
    Picture,
    Pictures,
    Row,
    Section,
    Signature,
    Stroke,
    Table,
    Text,
    Words,
)

PAPERS = ("A4", "Letter")
_MARGIN, _FOOT = 42.0, 50.0
_PAD = 4.0
_TYPE = {"body": 9.0, "quiet": 8.0, "strong": 9.0, "doubt": 9.0, "lead": 11.5}
_CELL, _LARGE_CELL = 8.0, 15.0
_LEADING = 1.32
_THEME = theme.THEMES["light"]
_PAPER = "#ffffff"


def colour_of(name: str, thin: float = 0.0) -> str:
    """Hex colour of the light theme by its name, "point 0" and so on for those of points, thinned towards the paper."""
    if name.startswith("point "):
        text = _THEME.points[int(name[6:]) % len(_THEME.points)]
    else:
        text = _PAPER if name == "paper" else str(getattr(_THEME, name))
    parts = [int(text[i : i + 2], 16) for i in (1, 3, 5)]
    return "#" + "".join(f"{round(p + thin * (255 - p)):02x}" for p in parts)


def pdf(layout: Layout, paper: str = "A4") -> tuple[bytes, int]:
    """The PDF and its number of pages; `paper` is one of PAPERS."""
    from reportlab.lib import pagesizes
    from reportlab.platypus import BaseDocTemplate, Frame, PageTemplate

    size = {"A4": pagesizes.A4, "Letter": pagesizes.LETTER}[paper]
    width, height = size[0] - 2.0 * _MARGIN, size[1] - _MARGIN - _FOOT
    file = io.BytesIO()
    document = BaseDocTemplate(file, pagesize=size, title=typeface.plain(layout.title), creator="Stillshaft")
    frame = Frame(_MARGIN, _FOOT, width, height, leftPadding=0, rightPadding=0, topPadding=0, bottomPadding=0)
    document.addPageTemplates(PageTemplate(frames=[frame]))
    made: list[Any] = []
    document.build(list(_story(layout, width, height)), canvasmaker=_numbered(layout.footer, size, made))
    return file.getvalue(), made[-1]


def _numbered(footer: str, size: tuple[float, float], made: list[Any]) -> type:
    """A canvas that writes the footers when the number of pages is known, and leaves that number in `made`."""
    from reportlab.pdfgen.canvas import Canvas

    class Numbered(Canvas):  # type: ignore[misc]
        def __init__(self, *given: Any, **named: Any) -> None:
            super().__init__(*given, **named)
            self._pages: list[dict[str, Any]] = []

        def showPage(self) -> None:  # noqa: N802 - the library's name
            self._pages.append(dict(self.__dict__))
            self._startPage()

        def save(self) -> None:
            for number, page in enumerate(self._pages, start=1):
                self.__dict__.update(page)
                self._footer(f"{number} of {len(self._pages)}")
                super().showPage()
            made.append(len(self._pages))
            super().save()

        def _footer(self, pages: str) -> None:
            self.setStrokeColor(_hex("line"))
            self.setLineWidth(0.5)
            self.line(_MARGIN, _FOOT - 12.0, size[0] - _MARGIN, _FOOT - 12.0)
            room = size[0] - 2.0 * _MARGIN - typeface.width(pages, 8.0) - 20.0
            y = _FOOT - 24.0
            _put(self, Words(_MARGIN, y, typeface.fitted(footer, room, 8.0), colour="quiet"), y)
            _put(self, Words(size[0] - _MARGIN, y, pages, anchor="end", colour="quiet"), y)

    return Numbered


def _hex(name: str, thin: float = 0.0) -> Any:
    from reportlab.lib.colors import HexColor

    return HexColor(colour_of(name, thin))


def markup(text: str, *, strong: bool = False) -> str:
    """The text in the library's markup, each part in the face that has its characters."""
    main = typeface.STRONG if strong else typeface.REGULAR
    parts = []
    for face, part in typeface.pieces(text, strong=strong):
        safe = escape(part).replace("\n", "<br/>")
        parts.append(safe if face == main else f'<font name="{face}">{safe}</font>')
    return "".join(parts)


@functools.cache
def _style(
    size: float, *, strong: bool = False, colour: str = "text", anchor: str = "start", space: float = 0.0
) -> Any:
    from reportlab.lib.styles import ParagraphStyle

    return ParagraphStyle(
        f"{size} {strong} {colour} {anchor} {space}",
        fontName=typeface.STRONG if strong else typeface.REGULAR,
        fontSize=size,
        leading=_LEADING * size,
        textColor=_hex(colour),
        alignment={"start": 0, "middle": 1, "end": 2}[anchor],
        spaceAfter=space,
        splitLongWords=1,
        allowWidows=0,
        allowOrphans=0,
    )


def _paragraph(text: str, size: float, *, strong: bool = False, **look: Any) -> Any:
    from reportlab.platypus import Paragraph

    return Paragraph(markup(text, strong=strong), _style(size, strong=strong, **look))


def _story(layout: Layout, width: float, height: float) -> Iterator[Any]:
    yield _paragraph(layout.title, 20.0, strong=True, space=3.0)
    yield _paragraph(layout.subtitle, 9.0, colour="quiet", space=10.0)
    for section in layout.sections:
        yield from _section(section, width, height)


def _section(section: Section, width: float, height: float) -> Iterator[Any]:
    from reportlab.platypus import CondPageBreak, PageBreak, Spacer

    if section.new_page:
        yield PageBreak()
    else:
        first = section.blocks[0] if section.blocks else Text("")
        yield Spacer(1.0, 8.0)
        yield CondPageBreak(min(height, 40.0 + _least(first, width)))
    yield _paragraph(section.title, 13.0, strong=True, colour="accent", space=5.0)
    for block in section.blocks:
        yield from _block(block, width, height)


def _least(block: Block, width: float) -> float:
    """Height below which a block is not begun on a page."""
    if isinstance(block, Pictures):
        return max((p.height for p in next(_picture_rows(block, width), ())), default=0.0)
    return 80.0 if isinstance(block, Table | Signature) else 36.0


def _block(block: Block, width: float, height: float) -> Iterator[Any]:
    from reportlab.platypus import CondPageBreak, Spacer

    match block:
        case Text():
            yield from _text(block, width)
        case Facts():
            yield _facts(block, width)
            yield Spacer(1.0, 8.0)
        case Table():
            yield CondPageBreak(80.0)
            yield _table(block, width)
            yield Spacer(1.0, 8.0)
        case Pictures():
            for row in _picture_rows(block, width):
                yield _picture_row(row)
        case Signature():
            yield CondPageBreak(min(height, 34.0 * len(block.lines)))
            yield _signature(block, width)


def _text(block: Text, width: float) -> Iterator[Any]:
    from reportlab.platypus import Spacer
    from reportlab.platypus import Table as Grid

    size = _TYPE[block.style]
    if block.style != "doubt":
        colour = "quiet" if block.style == "quiet" else "text"
        yield _paragraph(block.text, size, strong=block.style in ("strong", "lead"), colour=colour, space=6.0)
        return
    yield Grid(
        [[_paragraph(block.text, size)]],
        colWidths=[width],
        splitInRow=1,
        style=[("LINEBEFORE", (0, 0), (0, -1), 3.0, _hex("bad")), ("LEFTPADDING", (0, 0), (-1, -1), 9.0)],
        hAlign="LEFT",
    )
    yield Spacer(1.0, 6.0)


def _facts(block: Facts, width: float) -> Any:
    from reportlab.platypus import Table as Grid

    rows = [[_paragraph(name, _CELL, colour="quiet"), _paragraph(said, _TYPE["body"])] for name, said in block.rows]
    return Grid(
        rows,
        colWidths=[0.27 * width, 0.73 * width],
        splitInRow=1,
        hAlign="LEFT",
        style=[
            ("VALIGN", (0, 0), (-1, -1), "TOP"),
            ("TOPPADDING", (0, 0), (-1, -1), 2.0),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 2.0),
            ("LEFTPADDING", (0, 0), (0, -1), 0.0),
            ("LINEBELOW", (0, 0), (-1, -1), 0.4, _hex("grid")),
        ],
    )


def _table(block: Table, width: float) -> Any:
    from reportlab.platypus import Table as Grid

    whole = sum(c.share for c in block.columns)
    widths = [c.share / whole * width for c in block.columns]
    size = _LARGE_CELL if block.large else _CELL
    head = [
        _paragraph(c.title, _CELL, strong=True, colour="quiet", anchor="end" if c.figures else "start")
        for c in block.columns
    ]
    rows: list[list[Any]] = [head]
    style: list[tuple[Any, ...]] = [
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("VALIGN", (0, 0), (-1, 0), "BOTTOM"),
        ("LINEBELOW", (0, 0), (-1, 0), 0.9, _hex("quiet")),
        ("LINEBELOW", (0, 1), (-1, -1), 0.4, _hex("grid")),
        ("TOPPADDING", (0, 0), (-1, -1), 2.5),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 2.5),
        ("LEFTPADDING", (0, 0), (-1, -1), _PAD),
        ("RIGHTPADDING", (0, 0), (-1, -1), _PAD),
    ]
    for at, row in enumerate(block.rows, start=1):
        if row.band:
            rows.append([_paragraph(row.cells[0], size, strong=row.strong), *[""] * (len(widths) - 1)])
            style += [
                ("SPAN", (0, at), (-1, at)),
                ("BACKGROUND", (0, at), (-1, at), _hex("ground")),
            ]
            if at < len(block.rows) and len(row.cells[0]) < _SHORT_BAND:
                style.append(("NOSPLIT", (0, at), (-1, at + 1)))
        else:
            rows.append(_cells(row, block, size))
    return Grid(rows, colWidths=widths, repeatRows=1, splitInRow=1, style=style, hAlign="LEFT")


_SHORT_BAND = 2000  # characters; a longer one may have to be split itself


def _cells(row: Row, block: Table, size: float) -> list[Any]:
    return [
        _paragraph(cell, size, strong=row.strong or block.large, anchor="end" if column.figures else "start")
        for cell, column in zip(row.cells, block.columns, strict=True)
    ]


def _signature(block: Signature, width: float) -> Any:
    from reportlab.platypus import Table as Grid

    rows = [[_paragraph(name, _CELL, colour="quiet"), ""] for name in block.lines]
    return Grid(
        rows,
        colWidths=[0.27 * width, 0.6 * width],
        rowHeights=[30.0] * len(rows),
        hAlign="LEFT",
        style=[
            ("VALIGN", (0, 0), (-1, -1), "BOTTOM"),
            ("LEFTPADDING", (0, 0), (0, -1), 0.0),
            ("LINEBELOW", (1, 0), (1, -1), 0.7, _hex("text")),
        ],
    )


def _picture_rows(block: Pictures, width: float) -> Iterator[list[Picture]]:
    row: list[Picture] = []
    for picture in block.pictures:
        if row and sum(p.width for p in row) + picture.width > width:
            yield row
            row = []
        row.append(picture)
    if row:
        yield row


def _picture_row(row: Sequence[Picture]) -> Any:
    from reportlab.platypus import Flowable

    class Drawn(Flowable):  # type: ignore[misc]
        def wrap(self, *_: float) -> tuple[float, float]:
            return sum(p.width for p in row), max(p.height for p in row) + 6.0

        def draw(self) -> None:
            x, top = 0.0, max(p.height for p in row) + 6.0
            for picture in row:
                self.canv.saveState()
                self.canv.translate(x, 0.0)
                for shape in picture.shapes:
                    _put(self.canv, shape, top - shape.y if isinstance(shape, Words | Disc) else top)
                self.canv.restoreState()
                x += picture.width

    return Drawn()


def _put(canvas: Any, shape: Words | Stroke | Disc, y: float) -> None:
    """Draw a shape; `y` is its height above the canvas's origin, for a stroke that of its y = 0."""
    if isinstance(shape, Words):
        _put_words(canvas, shape, y)
        return
    canvas.setLineWidth(shape.width)
    canvas.setDash(list(shape.dash)) if shape.dash else canvas.setDash()
    if shape.colour is not None:
        canvas.setStrokeColor(_hex(shape.colour))
    if shape.fill is not None:
        canvas.setFillColor(_hex(shape.fill, shape.thin if isinstance(shape, Stroke) else 0.0))
    drawn, filled = int(shape.colour is not None), int(shape.fill is not None)
    if isinstance(shape, Disc):
        canvas.circle(shape.x, y, shape.radius, stroke=drawn, fill=filled)
        return
    path = canvas.beginPath()
    for number, (at_x, at_y) in enumerate(shape.points):
        (path.lineTo if number else path.moveTo)(at_x, y - at_y)
    if shape.closed:
        path.close()
    canvas.setLineJoin(1)
    canvas.drawPath(path, stroke=drawn, fill=filled)


def _put_words(canvas: Any, words: Words, y: float) -> None:
    from reportlab.pdfbase.pdfmetrics import stringWidth

    canvas.setFillColor(_hex(words.colour))
    whole = typeface.width(words.text, words.size, strong=words.strong)
    x = words.x - {"start": 0.0, "middle": 0.5, "end": 1.0}[words.anchor] * whole
    for face, part in typeface.pieces(words.text, strong=words.strong):
        canvas.setFont(face, words.size)
        canvas.drawString(x, y, part)
        x += stringWidth(part, face, words.size)
