"""The placement sheet for the person at the rotor: a page a plane, large figures, for paper and for a phone. No Qt here.

Pages are pictures of the report's own shapes, with its drawing of the rotor. Lengths are in points. What is told is told
in English; `pages` writes it in the language of whoever reads the sheet.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

from stillshaft.solver import handwork
from stillshaft.ui import typeface
from stillshaft.ui.desktop import face as faces
from stillshaft.ui.desktop.face import Face
from stillshaft.ui.report_layout import Anchor, Disc, Picture, Shape, Stroke, Words
from stillshaft.ui.report_masses import CAUTIONS
from stillshaft.ui.report_pictures import masses_picture
from stillshaft.ui.report_words import angle, figure

A4, PHONE = (595.0, 842.0), (390.0, 780.0)
_MARGIN = 0.06  # of the width
_FOOT = 10.0  # points of the cautions: they are read at the rotor
_WIDE = 500.0  # a page wider than this puts a piece's remarks beside its figures


@dataclass(frozen=True)
class Line:
    """A piece on the sheet: what it weighs, where it goes, and what else helps to find the place; `piece` is drawn."""

    mass: str
    place: str
    more: tuple[str, ...]
    piece: faces.Piece


@dataclass(frozen=True)
class Sheet:
    """What is put on one plane. `doubts` must be read first; `face` is as seen from the reference end."""

    job: str
    plane: str
    title: str
    made: str
    face: Face
    seen_from: str
    angles: str
    lines: tuple[Line, ...]
    doubts: tuple[str, ...] = ()


def as_seen(face: Face, seen_from: str) -> Face:
    """The same rotor described from the end that it is looked at: left and right change places with the end."""
    if seen_from == "reference end":
        return face
    clock = faces.datum_clock_deg(face.datum)
    turned = faces.CLOCKWISE if face.rotation == faces.COUNTER_CLOCKWISE else faces.COUNTER_CLOCKWISE
    datum = face.datum if clock is None else _clock_text((360.0 - clock) % 360.0)
    return replace(face, rotation=turned, datum=datum, reference_end=f"the end opposite {face.reference_end}")


def _clock_text(clockwise_deg: float) -> str:
    minutes = round(clockwise_deg * 2.0) % 720
    return f"{minutes // 60 or 12}:{minutes % 60:02d} o'clock"


def line_of(
    number: int, mass_g: float, angle_deg: float, face: Face, words: dict[str, str], half_deg: float | None
) -> Line:
    """A line of the sheet. `face` is as seen; `words` may hold place, radius, rim, fixing, force, and `share` of the radius."""
    clock = handwork.clock_position(angle_deg, face.pulse_angle_deg, face.datum, face.rotation)
    told = [
        f"clock face {clock}" if clock else "",
        f"{words['rim']} along the rim from the mark" if words.get("rim") else "",
        f"radius {words['radius']}" if words.get("radius") else "",
        words.get("fixing", ""),
        f"force at speed {words['force']}" if words.get("force") else "",
        f"sure to {angle(0.0, half_deg).partition('± ')[2]}" if half_deg is not None else "",
    ]
    off = " off" if mass_g < 0.0 else ""
    piece = faces.Piece(str(number), angle_deg, half_deg, float(words.get("share", "1")), True)
    return Line(f"{figure(abs(mass_g))} g{off}", words["place"], tuple(t for t in told if t), piece)


def pages(sheet: Sheet, size: tuple[float, float], say: Callable[[str], str] = str) -> tuple[Picture, ...]:
    """The sheet as pictures of this size, as many as it takes; `say` turns a text into the reader's language."""
    made = _Pages(sheet, size, say)
    made.head()
    made.rotor()
    for number, line in enumerate(sheet.lines, start=1):
        made.line(number, line)
    made.foot()
    return made.done()


class _Pages:
    """Shapes from the top down; begins another page where one is full."""

    def __init__(self, sheet: Sheet, size: tuple[float, float], say: Callable[[str], str]) -> None:
        self._sheet, (self._width, self._height), self._say = sheet, size, say
        self._left = _MARGIN * self._width
        self._room = self._width - 2.0 * self._left
        self._big = 30.0 if self._width > _WIDE else 26.0
        self._pages: list[list[Shape]] = []
        self._begin()

    def _begin(self) -> None:
        self._pages.append([Stroke(((0.0, 0.0), (self._width, 0.0), (self._width, self._height), (0.0, self._height)),
                                   None, closed=True, fill="paper")])  # fmt: skip
        self._y = self._left

    def _need(self, height: float) -> None:
        if self._y + height > self._height - self._left:
            self._begin()
            self._words(self._say(f"{self._sheet.plane}, continued"), 14.0, strong=True)

    def _add(self, *shapes: Shape) -> None:
        self._pages[-1].extend(shapes)

    def _words(self, text: str, size: float, *, strong: bool = False, colour: str = "text") -> None:
        """A paragraph in the reader's language, broken where the room ends."""
        for row in wrapped(text, self._room, size, strong=strong):
            self._need(1.3 * size)
            self._y += 1.3 * size
            self._add(Words(self._left, self._y - 0.25 * size, row, size, "start", strong, colour))

    def head(self) -> None:
        """What it is, and from where the rotor is looked at: nothing on the sheet means anything without that."""
        sheet, face = self._sheet, self._sheet.face
        self._words(f"{self._say(sheet.title)} · {sheet.job}", 11.0, colour="quiet")
        self._words(sheet.plane, self._big, strong=True)
        for doubt in sheet.doubts:
            self._words(self._say(f"Stop: {doubt}"), 12.0, strong=True, colour="bad")
        self._y += 4.0
        top, size = self._y, 15.0
        texts = (f"Seen from {_end(face)}", f"it turns {face.rotation} {_ARROWS[face.rotation]}")
        rows = [row for text in texts for row in wrapped(self._say(text), self._room - 16.0, size, strong=True)]
        bottom = top + 1.35 * size * len(rows) + 8.0
        box = (
            (self._left, top),
            (self._left + self._room, top),
            (self._left + self._room, bottom),
            (self._left, bottom),
        )
        self._add(Stroke(box, "accent", 1.0, closed=True, fill="accent"))
        for number, row in enumerate(rows):
            self._add(
                Words(
                    self._left + 8.0, top + 4.0 + 1.35 * size * (number + 0.78), row, size, "start", True, "on_accent"
                )
            )
        self._y = bottom + 6.0

    def rotor(self) -> None:
        """The rotor with its pieces, as large as the page allows."""
        drawn = masses_picture("", replace(self._sheet.face, pieces=tuple(line.piece for line in self._sheet.lines)))
        scale = min(self._room / drawn.width, (0.40 if self._width > _WIDE else 0.42) * self._height / drawn.height)
        left = self._left + 0.5 * (self._room - scale * drawn.width)
        crossed = " Crossed out: no mass may go there." if self._sheet.face.blocked else ""
        top = self._y - 22.0 * scale  # the room of its own title is left out
        told = [replace(s, text=self._say(s.text)) if isinstance(s, Words) else s for s in drawn.shapes]
        self._add(*scaled(told, scale, left, top))
        self._y = top + scale * (drawn.height - 16.0)
        said = (
            "Drawn with the mark under the pulse sensor. Angles, position numbers and distances along the rim count from the "
            f"mark, {self._sheet.angles}.{crossed}"
        )
        self._words(self._say(said), 9.5, colour="quiet")
        self._y += 4.0

    def line(self, number: int, line: Line) -> None:
        """One piece: number, mass and place in large figures, the rest below."""
        beside = self._width > _WIDE
        size = self._big if beside else 22.0
        indent = self._left + 1.5 * self._big
        room = self._left + self._room - indent
        told = [self._say(each) for each in line.more]
        clock, rest = told[:1], told[1:]
        more = list(wrapped(" · ".join(rest), room, 11.0))
        self._need(1.45 * size * (1 if beside else 2) + 15.0 * len(more) + 19.0 * len(clock))
        self._add(Stroke(((self._left, self._y), (self._left + self._room, self._y)), "line", 0.8))
        self._y += 1.3 * size
        middle, y = self._left + 0.55 * self._big, self._y - 0.35 * size
        self._add(
            Disc(middle, y, 0.52 * self._big, "accent", 1.8, "paper"),
            Words(middle, y + 0.2 * self._big, str(number), 0.58 * self._big, "middle", True),
            Words(indent, self._y, self._say(line.mass), size, "start", True),
        )
        if beside:
            place: tuple[float, Anchor] = (self._left + self._room, "end")
        else:
            self._y += 1.2 * size
            place = (indent, "start")
        at = typeface.fitted(self._say(line.place), 0.6 * self._room if beside else room, size, strong=True)
        self._add(Words(place[0], self._y, at, size, place[1], True, "accent"))
        self._y += 4.0
        for row in clock:
            self._y += 18.0
            self._add(Words(indent, self._y, row, 15.0, strong=True))
        for row in more:
            self._y += 14.0
            self._add(Words(indent, self._y, row, 11.0))
        self._y += 7.0

    def foot(self) -> None:
        """Cautions and the date."""
        self._y += 4.0
        cautions = self._say(CAUTIONS)
        self._need(1.3 * _FOOT * (1 + len(list(wrapped(cautions, self._room, _FOOT)))))
        self._words(cautions, _FOOT, colour="bad")
        self._words(self._say(self._sheet.made), _FOOT, colour="quiet")

    def done(self) -> tuple[Picture, ...]:
        """All pages."""
        sheet = self._sheet
        told = (
            f"{sheet.title}, {sheet.plane}, seen from {_end(sheet.face)}",
            *(f"piece {number}: {line.mass} at {line.place}" for number, line in enumerate(sheet.lines, start=1)),
        )
        alt = "; ".join(map(self._say, told))
        return tuple(Picture(self._width, self._height, tuple(shapes), alt) for shapes in self._pages)


_ARROWS = {faces.CLOCKWISE: "↻", faces.COUNTER_CLOCKWISE: "↺"}


def _end(face: Face) -> str:
    """The end in words: a drive end is known by two words in the trade."""
    named = face.reference_end
    if named.startswith("the end opposite"):
        named = named.removeprefix("the end opposite ")
        return f"the end opposite {_named(named)}"
    return _named(named)


def _named(end: str) -> str:
    return f"the {end}" if "end" in end.split() else f"the {end} end"


def wrapped(text: str, room: float, size: float, *, strong: bool = False) -> Iterator[str]:
    """Rows of a text no wider than the room; a single word that is wider is cut."""
    row: list[str] = []
    for word in text.split():
        if row and typeface.width(" ".join([*row, word]), size, strong=strong) > room:
            yield " ".join(row)
            row = []
        row.append(typeface.fitted(word, room, size, strong=strong))
    if row:
        yield " ".join(row)


def scaled(shapes: Sequence[Shape], scale: float, left: float, top: float) -> Iterator[Shape]:
    """Shapes of another picture, larger and elsewhere."""
    for shape in shapes:
        if isinstance(shape, Stroke):
            points = tuple((left + scale * x, top + scale * y) for x, y in shape.points)
            yield replace(shape, points=points, width=scale * shape.width, dash=tuple(scale * d for d in shape.dash))
        elif isinstance(shape, Disc):
            yield replace(
                shape, x=left + scale * shape.x, y=top + scale * shape.y, radius=scale * shape.radius, width=scale * shape.width,
                dash=tuple(scale * d for d in shape.dash),
            )  # fmt: skip
        elif shape.text:
            yield replace(shape, x=left + scale * shape.x, y=top + scale * shape.y, size=scale * shape.size)
