"""A report as a tree of plain parts: sections of texts, tables and pictures. How they look on paper is for the renderers.

Texts are as they came from outside; the renderers escape them. Lengths are in points of 1/72 inch; in pictures x goes
right and y goes down from the upper left corner.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

WIDEST = 500.0  # of a picture, so that it fits A4 and Letter

Style = Literal["body", "quiet", "strong", "doubt", "lead"]
Anchor = Literal["start", "middle", "end"]


@dataclass(frozen=True)
class Words:
    """A text in a picture: x is its start, middle or end, y its base line."""

    x: float
    y: float
    text: str
    size: float = 8.0
    anchor: Anchor = "start"
    strong: bool = False
    colour: str = "text"


@dataclass(frozen=True)
class Stroke:
    """A line through points, closed where it is `closed`; `fill` and `colour` are names of the theme's colours.

    `thin` says how much the fill is thinned towards the paper, 0 to 1.
    """

    points: tuple[tuple[float, float], ...]
    colour: str | None = "text"
    width: float = 1.0
    dash: tuple[float, ...] = ()
    closed: bool = False
    fill: str | None = None
    thin: float = 0.0


@dataclass(frozen=True)
class Disc:
    """A circle."""

    x: float
    y: float
    radius: float
    colour: str | None = "text"
    width: float = 1.0
    fill: str | None = None
    dash: tuple[float, ...] = ()


@dataclass(frozen=True)
class Bitmap:
    """A JPEG, its upper left corner at x, y."""

    x: float
    y: float
    width: float
    height: float
    jpeg: bytes


Shape = Words | Stroke | Disc


@dataclass(frozen=True)
class Picture:
    """Shapes, over a `bitmap` where there is one, and in `alt` what they show, for those who cannot see them."""

    width: float
    height: float
    shapes: tuple[Shape, ...]
    alt: str
    bitmap: Bitmap | None = None


@dataclass(frozen=True)
class Pictures:
    """Pictures side by side, as many as fit."""

    pictures: tuple[Picture, ...]


@dataclass(frozen=True)
class Text:
    """A paragraph; line ends in it are kept. "doubt" marks what must not be overlooked."""

    text: str
    style: Style = "body"


@dataclass(frozen=True)
class Facts:
    """Names with what there is to say of each."""

    rows: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Column:
    """Heading of a column, its share of the width, and whether it holds figures."""

    title: str
    share: float
    figures: bool = False


@dataclass(frozen=True)
class Row:
    """Cells of a row. A `band` goes over all columns and belongs to the rows below: a title, and what more there is to say."""

    cells: tuple[str, ...]
    band: bool = False


@dataclass(frozen=True)
class Table:
    """Rows under headings, which are repeated on each page. `large` is for reading from a distance."""

    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    large: bool = False


@dataclass(frozen=True)
class Signature:
    """Lines to write on, each with its name."""

    lines: tuple[str, ...]


Block = Text | Facts | Table | Pictures | Signature


@dataclass(frozen=True)
class Section:
    """A heading and what stands under it; `new_page` begins it on a page of its own, `together` where it would be split."""

    title: str
    blocks: tuple[Block, ...]
    new_page: bool = False
    together: bool = False


@dataclass(frozen=True)
class Layout:
    """The whole report; `footer` stands on every page."""

    title: str
    subtitle: str
    footer: str
    sections: tuple[Section, ...]
