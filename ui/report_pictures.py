"""The pictures of a report: hook-up and masses on the rotor face, polar plots, before and after, phase ribbon."""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.ui import typeface
from stillshaft.ui.desktop import face as faces
from stillshaft.ui.desktop.face import Face
from stillshaft.ui.drawing import ticks
from stillshaft.ui.report_layout import WIDEST, Anchor, Disc, Picture, Shape, Stroke, Words
from stillshaft.ui.report_words import figure, with_half

Real = NDArray[np.float64]

_SLACK = 0.88  # of the room for a text: a browser may take a wider face
_REFERENCE = "reference end"
_FACE, _FACE_HEIGHT = 250.0, 226.0  # a picture of the rotor face
_CROSS = 3.0  # half the width of the cross over a blocked position
_POLAR_WIDTH, _POLAR_HEIGHT = 250.0, 242.0
_TOGETHER_DEG = 4.0  # sensors closer than this share a mark
_TOGETHER = 4.5  # vectors closer than this on paper share their numbers


@dataclass(frozen=True)
class Dot:
    """A run's vector in a polar plot: `number` of the run, `role` first, last, trial or other; 95 % half width."""

    number: int
    z: complex
    role: str
    half: float | None = None


@dataclass(frozen=True)
class Bar:
    """A point before and after with half widths and its limit, in one unit; None where there is none."""

    name: str
    before: tuple[float, float | None]
    after: tuple[float, float | None] | None
    limit: float | None
    unit: str


@dataclass(frozen=True)
class Ribbon:
    """Phase of a point against time, degrees from its mean, with the curve fitted to it and what was found."""

    name: str
    times_s: Real
    phase_deg: Real
    fit_times_s: Real
    fit_deg: Real
    words: str


def _xy(place: complex, middle: tuple[float, float], radius: float) -> tuple[float, float]:
    """Paper coordinates of a place on the face (imaginary up)."""
    return middle[0] + radius * place.real, middle[1] - radius * place.imag


def _arc(middle: tuple[float, float], radius: float, begin: complex, turn_deg: float) -> list[tuple[float, float]]:
    turns = np.exp(1j * np.deg2rad(np.linspace(0.0, turn_deg, 40)))
    return [_xy(begin * t, middle, radius) for t in turns.tolist()]


def _rotation_arrow(face: Face, middle: tuple[float, float], radius: float) -> Iterator[Shape]:
    """An arrow in the direction of rotation, inside the rim at the bottom, where nothing else is."""
    clockwise = faces.turns_clockwise(face, _REFERENCE)
    turn = -70.0 if clockwise else 70.0
    begin = -1j * cmath.exp(-0.5j * math.radians(turn))
    points = _arc(middle, radius, begin, turn)
    yield Stroke(tuple(points), "accent", 1.6)
    end, back = points[-1], points[-4]
    way = complex(end[0] - back[0], end[1] - back[1])
    way /= abs(way)
    tip = complex(*end) + 5.0 * way
    sides = [complex(*end) + 3.2 * way * s for s in (1j, -1j)]
    yield Stroke(tuple((p.real, p.imag) for p in (tip, *sides)), None, closed=True, fill="accent")
    yield Words(middle[0], middle[1] + 0.62 * radius, "rotation", 7.0, "middle", colour="accent")


def _rotor(face: Face, middle: tuple[float, float], radius: float) -> Iterator[Shape]:
    """Rim, shaft, blades or holes with numbers and crosses over those that take no mass, mark, and pulse sensor over it."""
    yield Disc(*middle, radius, "text", 1.2, fill="panel")
    yield Disc(*middle, 0.1 * radius, "quiet", 0.8, fill="ground")
    count = len(face.positions_deg)
    every = max(1, math.ceil(count / 24))
    for number, angle_deg in enumerate(face.positions_deg, start=1):
        place = faces.rotor_place(face, angle_deg, _REFERENCE)
        ends = (_xy(place, middle, 0.94 * radius), _xy(place, middle, radius))
        yield Stroke(ends, "quiet", 0.8)
        if number in face.blocked:
            x, y = _xy(place, middle, 0.97 * radius)
            for side in (-_CROSS, _CROSS):
                yield Stroke(((x - _CROSS, y - side), (x + _CROSS, y + side)), "bad", 1.4)
        if (number - 1) % every == 0:
            x, y = _xy(place, middle, 0.81 * radius)
            yield Words(x, y + 2.2, str(number), 6.0, "middle", colour="quiet")
    at_mark = faces.rotor_place(face, 0.0, _REFERENCE)
    across = 0.05j * at_mark
    mark = (1.0 * at_mark, 0.9 * at_mark + across, 0.9 * at_mark - across)
    yield Stroke(tuple(_xy(p, middle, radius) for p in mark), None, closed=True, fill="text")
    sensor = (1.03 * at_mark, 1.12 * at_mark + across, 1.12 * at_mark - across)
    yield Stroke(tuple(_xy(p, middle, radius) for p in sensor), "bad", 1.2, closed=True, fill="panel")


def _anchor(place: complex) -> Anchor:
    return "middle" if abs(place.real) < 0.25 * abs(place) else "start" if place.real > 0.0 else "end"


def hookup_picture(face: Face) -> Picture:
    """The rotor from the reference end with datum, sensors and pulse sensor around it.

    Sensors are drawn with their numbers; the table beside says their names.
    """
    width, height = 400.0, _FACE_HEIGHT
    middle, radius = (0.5 * width, 0.5 * height), 78.0
    shapes: list[Shape] = list(_rotor(face, middle, radius))
    shapes += _rotation_arrow(face, middle, 0.62 * radius)
    datum = faces.stator_place(face, 0.0, _REFERENCE)
    shapes.append(
        Stroke((_xy(1.2 * datum, middle, radius), _xy(1.34 * datum, middle, radius)), "quiet", 0.8, (3.0, 2.0))
    )
    labels: list[tuple[complex, str, str]] = [(datum, "datum 0°", "quiet")]
    pulse = faces.stator_place(face, face.pulse_angle_deg, _REFERENCE)
    labels.append((pulse, f"pulse sensor {_told(face.pulse_angle_deg)}", "bad"))
    for angle_deg, numbers in _grouped(face):
        place = faces.stator_place(face, angle_deg, _REFERENCE)
        shapes.append(Stroke((_xy(1.04 * place, middle, radius), _xy(1.2 * place, middle, radius)), "accent", 3.0))
        told = "·".join(map(str, numbers[:6])) + ("…" if len(numbers) > 6 else "")
        labels.append((place, f"{told} at {_told(angle_deg)}", "accent"))
    shapes += _beside(labels, middle, radius)
    return Picture(width, height, tuple(shapes), faces.words(face, _REFERENCE, "against rotation"))


def _told(angle_deg: float) -> str:
    return f"{round(angle_deg, 1):g}°"


def _beside(labels: Sequence[tuple[complex, str, str]], middle: tuple[float, float], radius: float) -> Iterator[Shape]:
    """A label for each place on the rim, in a column on its side, each led to its place."""
    sides: dict[int, list[tuple[float, complex, str, str]]] = {-1: [], 1: []}
    for place, text, colour in sorted(labels, key=lambda label: abs(label[0].real), reverse=True):
        straight = abs(place.real) < 0.05  # on neither side: where there is more room
        side = min(sides, key=lambda s: len(sides[s])) if straight else 1 if place.real > 0.0 else -1
        sides[side].append((middle[1] - 1.3 * radius * place.imag, place, text, colour))
    for side, column in sides.items():
        column.sort(key=lambda entry: entry[0])
        heights = faces.spread([entry[0] for entry in column], 12.0)
        for number, (_, place, text, colour) in enumerate(column):
            # within the picture, and room for those above and below
            top, bottom = 8.0 + 12.0 * number, 2.0 * middle[1] - 6.0 - 12.0 * (len(column) - 1 - number)
            y = max(top, min(bottom, heights[number]))
            x = middle[0] + side * 1.32 * radius
            yield Stroke((_xy(1.22 * place, middle, radius), (x, y)), "line", 0.6)
            anchor: Anchor = "start" if side > 0 else "end"
            yield Words(x + 3.0 * side, y + 2.8, text, 8.0, anchor, colour == "accent", colour)


def _grouped(face: Face) -> list[tuple[float, list[int]]]:
    """Stator angles with the numbers of the sensors there."""
    groups: list[tuple[float, list[int]]] = []
    for sensor in face.sensors:
        for angle_deg, numbers in groups:
            if abs(math.remainder(sensor.angle_deg - angle_deg, 360.0)) < _TOGETHER_DEG:
                numbers.append(sensor.number)
                break
        else:
            groups.append((sensor.angle_deg % 360.0, [sensor.number]))
    return groups


def masses_picture(title: str, face: Face) -> Picture:
    """The rotor with its pieces: full where they are on, open with a wedge of uncertainty where they are planned."""
    middle, radius = (0.5 * _FACE, 120.0), 78.0
    shapes: list[Shape] = [Words(0.5 * _FACE, 12.0, _cut(title, _FACE, 9.0, strong=True), 9.0, "middle", strong=True)]
    shapes += _rotor(face, middle, radius)
    shapes += _rotation_arrow(face, middle, 0.5 * radius)
    places = [faces.rotor_place(face, p.angle_deg, _REFERENCE) for p in face.pieces]
    at_mark, *around = faces.apart([faces.rotor_place(face, 0.0, _REFERENCE), *places], math.radians(16.0))
    for piece, place, beside in zip(face.pieces, places, around, strict=True):
        share = min(1.0, max(0.2, piece.radius_share))
        if piece.planned and piece.angle_ci95_deg is not None:
            half = min(180.0, piece.angle_ci95_deg)
            turn = cmath.exp(1j * math.radians(half))
            wedge = [middle, *_arc(middle, 0.97 * share * radius, place * turn, -2.0 * half), middle]
            shapes.append(Stroke(tuple(wedge), None, closed=True, fill="accent", thin=0.75))
        x, y = _xy(0.97 * share * place, middle, radius)
        shapes.append(Disc(x, y, 4.0, "accent", 1.4, fill="paper" if piece.planned else "accent"))
        label_x, label_y = _xy(1.2 * beside, middle, radius)
        shapes.append(Stroke(((x, y), _xy(1.12 * beside, middle, radius)), "line", 0.6))
        shapes.append(Words(label_x, label_y + 2.8, _cut(piece.label, 44.0, 8.0), 8.0, _anchor(beside), strong=True))
    mark_x, mark_y = _xy(1.2 * at_mark, middle, radius)
    shapes.append(Words(mark_x, mark_y + 2.8, "mark", 7.0, _anchor(at_mark), colour="quiet"))
    return Picture(_FACE, _FACE_HEIGHT, tuple(shapes), f"{title}: {faces.words(face, _REFERENCE, 'against rotation')}")


def _cut(text: str, room: float, size: float, *, strong: bool = False) -> str:
    return typeface.fitted(text, _SLACK * room, size, strong=strong)


def _marker(role: str, x: float, y: float) -> Shape:
    """First: ring. Last: full disc. Trial: triangle. Other: square."""
    if role in ("first", "last"):
        return Disc(
            x, y, 3.2, "caution" if role == "first" else "accent", 1.4, "paper" if role == "first" else "accent"
        )
    if role == "trial":
        return Stroke(((x, y - 3.4), (x + 3.0, y + 2.4), (x - 3.0, y + 2.4)), "quiet", 1.0, closed=True, fill="paper")
    return Stroke(
        ((x - 2.2, y - 2.2), (x + 2.2, y - 2.2), (x + 2.2, y + 2.2), (x - 2.2, y + 2.2)),
        "quiet", 1.0, closed=True, fill="paper",
    )  # fmt: skip


def polar_picture(name: str, unit: str, dots: Sequence[Dot], limit: float | None) -> Picture:
    """All runs of a point as numbered marks; 0° is up, lag goes counter-clockwise on paper."""
    middle, radius = (0.5 * _POLAR_WIDTH, 134.0), 90.0
    largest = max([abs(d.z) for d in dots] + [limit or 0.0]) or 1.0
    rings = [t for t in ticks(0.0, largest, 3) if t > 0.0] or [largest]
    outer = max(rings[-1], largest)

    def at(z: complex) -> tuple[float, float]:
        return _xy(1j * z / outer, middle, radius)

    room = _POLAR_WIDTH - 16.0
    shapes: list[Shape] = [
        Words(0.5 * _POLAR_WIDTH, 12.0, _cut(name, room, 9.0, strong=True), 9.0, "middle", strong=True),
        Words(0.5 * _POLAR_WIDTH, 23.0, _cut(f"{unit}, lag from the pulse", room, 7.5), 7.5, "middle", colour="quiet"),
    ]
    taken: list[tuple[float, float, float, float]] = []
    for ring in rings:
        shapes.append(Disc(*middle, radius * ring / outer, "line", 0.6))
        x, y = middle[0] + 2.0, middle[1] + radius * ring / outer - 2.0
        shapes.append(Words(x, y, figure(ring), 6.0, colour="quiet"))
        taken.append((x, y - 6.0, x + 16.0, y))
    for degrees in range(0, 360, 30):
        spoke = cmath.rect(outer, math.radians(degrees))
        shapes.append(Stroke((middle, at(spoke)), "grid", 0.5))
        if degrees % 90 == 0:
            x, y = at(1.1 * spoke)
            shapes.append(Words(x, y + 2.5, f"{degrees}°", 7.0, "middle", colour="quiet"))
            taken.append((x - 8.0, y - 4.5, x + 8.0, y + 4.5))
    if limit is not None:
        shapes.append(Disc(*middle, radius * limit / outer, "good", 1.2, dash=(4.0, 2.0)))
    for dot in dots:
        if dot.half is not None and radius * dot.half / outer > 3.5:
            shapes.append(Disc(*at(dot.z), min(radius, radius * dot.half / outer), "line", 0.6))
    for dot in dots:
        if dot.role in ("first", "last"):
            shapes.append(Stroke((middle, at(dot.z)), "caution" if dot.role == "first" else "accent", 1.4))
            taken += _along(middle, at(dot.z))
    for dot in dots:
        x, y = at(dot.z)
        shapes.append(_marker(dot.role, x, y))
        taken.append((x - 3.4, y - 3.4, x + 3.4, y + 3.4))
    box = (4.0, 28.0, _POLAR_WIDTH - 4.0, _POLAR_HEIGHT - 1.0)
    for place, numbers in _crowds([(at(d.z), d.number) for d in dots]):
        shapes += _number(_ranges(numbers), place, taken, box)
    said = "; ".join(f"run {d.number}: {figure(abs(d.z))}" for d in dots)
    return Picture(_POLAR_WIDTH, _POLAR_HEIGHT, tuple(shapes), f"{name}, {unit}: {said}")


def _along(begin: tuple[float, float], end: tuple[float, float]) -> list[tuple[float, float, float, float]]:
    """Small boxes along a line, where no number is to stand."""
    steps = max(1, round(math.dist(begin, end) / 3.0))
    shares = [k / steps for k in range(steps + 1)]
    places = [(begin[0] + share * (end[0] - begin[0]), begin[1] + share * (end[1] - begin[1])) for share in shares]
    return [(x - 1.0, y - 1.0, x + 1.0, y + 1.0) for x, y in places]


def _crowds(dots: Sequence[tuple[tuple[float, float], int]]) -> list[tuple[tuple[float, float], list[int]]]:
    """Places with the numbers of the runs whose marks lie on each other there."""
    crowds: list[tuple[tuple[float, float], list[int]]] = []
    for place, number in dots:
        for at, numbers in crowds:
            if math.dist(at, place) < _TOGETHER:
                numbers.append(number)
                break
        else:
            crowds.append((place, [number]))
    return crowds


def _ranges(numbers: Sequence[int]) -> str:
    """Rising numbers with what follows on each other put together: "2, 5–9"."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    texts = [str(r[0]) if len(r) == 1 else f"{r[0]}{', ' if len(r) == 2 else '–'}{r[-1]}" for r in runs]
    most = 4  # of a crowd; the table has them all
    return ", ".join(texts[:most]) + (" …" if len(texts) > most else "")


def _number(
    text: str,
    place: tuple[float, float],
    taken: list[tuple[float, float, float, float]],
    box: tuple[float, float, float, float],
) -> Iterator[Shape]:
    """The numbers of runs beside its mark where nothing else stands, with a line to the mark where it is far off."""
    half_x, half_y = 0.55 * typeface.width(text, 7.0, strong=True) + 0.8, 3.4
    for away in (8.0, 12.0, 17.0, 23.0, 30.0, 38.0, 47.0, 57.0, 68.0):
        for turn in range(16):
            # a wide text stands farther off sideways
            x = place[0] + (away + half_x - 3.0) * math.cos(math.tau * turn / 16)
            y = place[1] - away * math.sin(math.tau * turn / 16)
            own = (x - half_x, y - half_y, x + half_x, y + half_y)
            inside = own[0] >= box[0] and own[1] >= box[1] and own[2] <= box[2] and own[3] <= box[3]
            if inside and not any(_overlap(own, other) for other in taken):
                taken.append(own)
                if away > 12.0:
                    # ends beside the words, not under them
                    far = math.dist(place, (x, y))
                    share = max(0.0, 1.0 - (half_x + 2.0) / far)
                    yield Stroke(
                        (place, (place[0] + share * (x - place[0]), place[1] + share * (y - place[1]))), "line", 0.5
                    )
                yield Words(x, y + 2.4, text, 7.0, "middle", strong=True)
                return


def _overlap(a: tuple[float, float, float, float], b: tuple[float, float, float, float]) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def polar_key() -> Picture:
    """What the marks of the polar plots mean."""
    shapes: list[Shape] = []
    x = 6.0
    for role, text in (
        ("first", "first run"), ("last", "last run"), ("trial", "trial run"), ("other", "other run"),
    ):  # fmt: skip
        shapes += [_marker(role, x, 7.0), Words(x + 8.0, 9.8, text, 8.0, colour="quiet")]
        x += 76.0
    shapes.append(Stroke(((x, 7.0), (x + 20.0, 7.0)), "good", 1.2, (4.0, 2.0)))
    shapes.append(Words(x + 26.0, 9.8, "limit for once-per-rev", 8.0, colour="quiet"))
    return Picture(WIDEST, 18.0, tuple(shapes), "ring: first run; disc: last run; triangle: trial; square: other run")


def bars_pictures(bars: Sequence[Bar]) -> tuple[Picture, ...]:
    """Before and after of each point, one picture a point so that they may go on over a page; one scale for a unit."""
    reach: dict[str, float] = {}
    for bar in bars:
        values = [bar.before[0], bar.after[0] if bar.after else 0.0, bar.limit or 0.0]
        reach[bar.unit] = max(reach.get(bar.unit, 0.0), *values)
    return tuple(_bars(bar, reach[bar.unit] or 1.0) for bar in bars)


def _bars(bar: Bar, reach: float) -> Picture:
    left, room, told = 44.0, 300.0, 360.0
    named = WIDEST if bar.limit is None else WIDEST - 90.0
    shapes: list[Shape] = [Words(0.0, 10.0, _cut(bar.name, named, 9.0, strong=True), 9.0, strong=True)]
    said = []
    rows = [("before", bar.before, "caution")] + ([("after", bar.after, "accent")] if bar.after is not None else [])
    for number, (word, (value, half), colour) in enumerate(rows):
        y = 16.0 + 14.0 * number
        end = left + room * value / reach
        shapes.append(Words(0.0, y + 8.0, word, 8.0, colour="quiet"))
        shapes.append(Stroke(((left, y), (end, y), (end, y + 10.0), (left, y + 10.0)), None, closed=True, fill=colour))
        if half is not None and half > 0.0:
            low, high = (left + room * min(1.04, max(0.0, (value + s * half) / reach)) for s in (-1.0, 1.0))
            shapes.append(Stroke(((low, y + 5.0), (high, y + 5.0)), "text", 1.0))
        text = with_half(value, half, bar.unit)
        shapes.append(Words(told, y + 8.0, _cut(text, WIDEST - told, 8.0), 8.0))
        said.append(f"{word} {text}")
    bottom = 16.0 + 14.0 * len(rows)
    if bar.limit is not None:
        x = left + room * bar.limit / reach
        shapes.append(Stroke(((x, 13.0), (x, bottom)), "good", 1.6, (3.0, 1.5)))
        shapes.append(Words(WIDEST, 10.0, _cut(f"limit {figure(bar.limit)}", 80.0, 8.0), 8.0, "end", colour="good"))
        said.append(f"limit {figure(bar.limit)} {bar.unit}")
    return Picture(WIDEST, bottom + 6.0, tuple(shapes), f"{bar.name}: {', '.join(said)}")


def ribbon_picture(ribbon: Ribbon) -> Picture:
    """The phase of a point through a recording."""
    width, left, top, height = 250.0, 26.0, 26.0, 54.0
    right = width - 10.0
    reach = max(2.0, float(np.abs(ribbon.phase_deg).max()) * 1.1 if ribbon.phase_deg.size else 2.0)
    begin = float(ribbon.times_s[0]) if ribbon.times_s.size else 0.0
    span = max(1e-9, float(ribbon.times_s[-1]) - begin if ribbon.times_s.size else 1.0)

    def at(t: float, degrees: float) -> tuple[float, float]:
        shown = max(-reach, min(reach, degrees))
        return left + (right - left) * (t - begin) / span, top + 0.5 * height * (1.0 - shown / reach)

    shapes: list[Shape] = [
        Words(left, 11.0, _cut(ribbon.name, right - left, 8.5, strong=True), 8.5, strong=True),
        Words(left, 21.0, _cut(ribbon.words, right - left, 7.5), 7.5, colour="quiet"),
        Stroke(((left, top), (right, top), (right, top + height), (left, top + height)), "line", 0.6, closed=True),
        Stroke((at(begin, 0.0), at(begin + span, 0.0)), "line", 0.6),
    ]
    for degrees in (reach, -reach):
        y = at(begin, degrees)[1] + (5.5 if degrees > 0 else -0.5)
        shapes.append(Words(left - 3.0, y, f"{'+' if degrees > 0 else '−'}{reach:.0f}°", 6.5, "end", colour="quiet"))
    shapes.append(Words(right, top + height + 8.0, f"{span:.0f} s", 6.5, "end", colour="quiet"))
    for times, degrees_, colour, line in (
        (ribbon.times_s, ribbon.phase_deg, "accent", 0.8),
        (ribbon.fit_times_s, ribbon.fit_deg, "caution", 1.4),
    ):
        if times.size > 1:
            points = tuple(at(float(t), float(d)) for t, d in zip(times, degrees_, strict=True))
            shapes.append(Stroke(points, colour, line))
    return Picture(width, top + height + 14.0, tuple(shapes), f"phase of {ribbon.name} against time: {ribbon.words}")
