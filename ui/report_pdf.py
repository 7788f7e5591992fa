"""A report's layout as a PDF, A4 or Letter: vector pictures, embedded typeface, headings repeated, pages numbered."""

from __future__ import annotations

import functools
import io
import itertools
import math
from collections.abc import Iterator, Sequence
from typing import Any
from xml.sax.saxutils import escape

from stillshaft.ui import theme, typeface
from stillshaft.ui.report_layout import (
    Bitmap,
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
_CELL, _LARGE_CELL = 8.0, 13.0
_LEADING = 1.32
_HIGHEST = 300.0  # of a table's row: less than half a page
_SMALL = 60.0  # a row of pictures that is no picture of its own
_CODE_POINT = 8  # characters that one may become
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
    typeface.width("", 1.0)  # registers the face that the canvas begins with
    document = BaseDocTemplate(
        file, initialFontName=typeface.REGULAR, pagesize=size, title=typeface.plain(layout.title), creator="Stillshaft"
    )
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
    size: float,
    *,
    strong: bool = False,
    colour: str = "text",
    anchor: str = "start",
    before: float = 0.0,
    space: float = 0.0,
) -> Any:
    from reportlab.lib.styles import ParagraphStyle

    return ParagraphStyle(
        f"{size} {strong} {colour} {anchor} {space} {before}",
        fontName=typeface.STRONG if strong else typeface.REGULAR,
        fontSize=size,
        leading=_LEADING * size,
        textColor=_hex(colour),
        alignment={"start": 0, "middle": 1, "end": 2}[anchor],
        spaceAfter=space,
        spaceBefore=before,
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
    from reportlab.platypus import CondPageBreak, PageBreak

    if section.new_page:
        yield PageBreak()
    else:
        whole = sum(map(_about_height, section.blocks)) if section.together else _begins(section.blocks, width)
        yield CondPageBreak(min(0.7 * height, 30.0 + whole))
    yield _paragraph(section.title, 13.0, strong=True, colour="accent", before=10.0, space=5.0)
    for block in section.blocks:
        yield from _block(block, width, height)


def _begins(blocks: Sequence[Block], width: float) -> float:
    """Height of a section's beginning: its first texts, and what they lead to."""
    whole = 0.0
    for block in blocks:
        whole += _least(block, width)
        if not isinstance(block, Text):
            break
    return whole


def _about_height(block: Block) -> float:
    """Height of a block of short texts."""
    if isinstance(block, Facts):
        return 18.0 * len(block.rows) + 8.0
    return 30.0 * len(block.lines) + 12.0 if isinstance(block, Signature) else 30.0


def _least(block: Block, width: float) -> float:
    """Height below which a block is not begun on a page."""
    if isinstance(block, Pictures):
        whole = 0.0  # a key and the pictures that it is for belong together
        for row in _picture_rows(block, width):
            whole += max(p.height for p in row) + 6.0
            if whole > _SMALL:
                break
        return whole
    return 90.0 if isinstance(block, Table | Signature) else 30.0


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
            yield Spacer(1.0, 12.0)


def _text(block: Text, width: float) -> Iterator[Any]:
    from reportlab.platypus import Spacer

    size = _TYPE[block.style]
    if block.style != "doubt":
        colour = "quiet" if block.style == "quiet" else "text"
        yield _paragraph(block.text, size, strong=block.style in ("strong", "lead"), colour=colour, space=6.0)
        return
    yield _grid(
        [[_paragraph(part, size)] for part in _parts(block.text, width - 9.0 - _PAD, size)],
        colWidths=[width],
        style=[("LINEBEFORE", (0, 0), (0, -1), 3.0, _hex("bad")), ("LEFTPADDING", (0, 0), (-1, -1), 9.0)],
    )
    yield Spacer(1.0, 6.0)


def _grid(rows: list[list[Any]], *, style: list[tuple[Any, ...]], **more: Any) -> Any:
    """The library's table; what it would set in its own typeface it sets in ours."""
    from reportlab.platypus import Table as Grid

    return Grid(rows, style=[("FONT", (0, 0), (-1, -1), typeface.REGULAR), *style], hAlign="LEFT", **more)


def _facts(block: Facts, width: float) -> Any:
    widths = [0.27 * width, 0.73 * width]
    rows = []
    for name, said in block.rows:
        names = _parts(name, widths[0] - 2.0 * _PAD, _CELL)
        parts = _parts(said, widths[1] - 2.0 * _PAD, _TYPE["body"])
        for one, other in itertools.zip_longest(names, parts, fillvalue=""):
            rows.append([_paragraph(one, _CELL, colour="quiet"), _paragraph(other, _TYPE["body"])])
    return _grid(
        rows,
        colWidths=widths,
        style=[
            ("VALIGN", (0, 0), (-1, -1), "TOP"),
            ("TOPPADDING", (0, 0), (-1, -1), 2.0),
            ("BOTTOMPADDING", (0, 0), (-1, -1), 2.0),
            ("LEFTPADDING", (0, 0), (0, -1), 0.0),
            ("RIGHTPADDING", (0, 0), (-1, -1), _PAD),
            ("LINEBELOW", (0, 0), (-1, -1), 0.4, _hex("grid")),
        ],
    )


def _table(block: Table, width: float) -> Any:
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
    for row in block.rows:
        if row.band:
            for number, part in enumerate(_parts("\n".join(row.cells), width - 2.0 * _PAD, _CELL)):
                at = len(rows)
                style += [("SPAN", (0, at), (-1, at)), ("BACKGROUND", (0, at), (-1, at), _hex("ground"))]
                rows.append([_band(part, first=number == 0), *[""] * (len(widths) - 1)])
            if row is not block.rows[-1]:  # what it is about follows on the same page
                style.append(("NOSPLIT", (0, at), (-1, at + 1)))
        else:
            rows += _cells(row, block, widths, size)
    return _grid(rows, colWidths=widths, repeatRows=1, style=style)


def _band(text: str, *, first: bool) -> Any:
    from reportlab.platypus import Paragraph

    title, *more = text.split("\n")
    strong = f'<font name="{typeface.STRONG}">{markup(title, strong=True)}</font>' if first else markup(title)
    return Paragraph("<br/>".join([strong, *(markup(m) for m in more)]), _style(_CELL))


def _cells(row: Row, block: Table, widths: Sequence[float], size: float) -> Iterator[list[Any]]:
    """The row, or several where a text is too long for one that must fit a page."""
    cells = [_parts(cell, width - 2.0 * _PAD, size) for cell, width in zip(row.cells, widths, strict=True)]
    for parts in itertools.zip_longest(*cells, fillvalue=""):
        yield [
            _cell(part, size, large=block.large, anchor="end" if column.figures else "start")
            for part, column in zip(parts, block.columns, strict=True)
        ]


def _cell(text: str, size: float, *, large: bool, anchor: str) -> Any:
    """A cell; in a large table its first line is large, the rest of it is not."""
    from reportlab.platypus import Paragraph

    if not large or "\n" not in text:
        return _paragraph(text, size, strong=large, anchor=anchor)
    first, rest = text.split("\n", 1)
    small = f'<font name="{typeface.REGULAR}" size="{_TYPE["body"]}">{markup(rest)}</font>'
    return Paragraph(f"{markup(first, strong=True)}<br/>{small}", _style(size, strong=True, anchor=anchor))


def _parts(text: str, width: float, size: float) -> list[str]:
    """The text in parts that are each no higher than _HIGHEST, however wide its letters are."""
    in_line = max(1, int(width / (1.1 * size)))
    lines = int(_HIGHEST / (_LEADING * size))
    if len(text) <= in_line * lines // _CODE_POINT and text.count("\n") < 2:
        return [text]
    shown = "".join(part for _, part in typeface.pieces(text))
    parts, used = [""], 0
    for line in shown.split("\n"):
        for piece in _pieces_of(line, in_line * lines):
            needed = max(1, math.ceil(len(piece) / in_line))
            if used and used + needed > lines:
                parts.append("")
                used = 0
            parts[-1] += ("\n" if used else "") + piece
            used += needed
    return parts


def _pieces_of(line: str, most: int) -> Iterator[str]:
    """A line in pieces of at most so many characters, divided between words where there are some."""
    while len(line) > most:
        space = line.rfind(" ", most // 2, most)
        cut = space + 1 if space > 0 else most
        yield line[:cut]
        line = line[cut:]
    yield line


def _signature(block: Signature, width: float) -> Any:
    rows = [[_paragraph(name, _CELL, colour="quiet"), ""] for name in block.lines]
    return _grid(
        rows,
        colWidths=[0.27 * width, 0.6 * width],
        rowHeights=[30.0] * len(rows),
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
                if picture.bitmap is not None:
                    _put_bitmap(self.canv, picture.bitmap, top - picture.bitmap.y)
                for shape in picture.shapes:
                    _put(self.canv, shape, top if isinstance(shape, Stroke) else top - shape.y)
                self.canv.restoreState()
                x += picture.width

    return Drawn()


def _put_bitmap(canvas: Any, bitmap: Bitmap, y: float) -> None:
    from reportlab.lib.utils import ImageReader

    image = ImageReader(io.BytesIO(bitmap.jpeg))
    canvas.drawImage(image, bitmap.x, y - bitmap.height, bitmap.width, bitmap.height)


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
