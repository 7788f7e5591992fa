"""Where things on and around a rotor stand on the screen, with the mark under the pulse sensor. No Qt here.

Places are complex: real to the right, imaginary up, radius 1 at the rim. Stator angles count in the direction of
rotation from the datum; rotor angles count against it from the mark (`stillshaft.dsp.vectors`).
"""

from __future__ import annotations

import cmath
import math
import re
from collections.abc import Sequence
from dataclasses import dataclass

from stillshaft.dsp import vectors

COUNTER_CLOCKWISE, CLOCKWISE = "counter-clockwise", "clockwise"
KINDS = ("blade", "hole")
_SHORTEST_DEG = 0.05  # angles that differ by less are the same
_SAME_PLACE = 1e-9  # rad


@dataclass(frozen=True)
class Sensor:
    """A sensor beside the rotor at a stator angle; `number` is its place among the points."""

    name: str
    angle_deg: float
    number: int


@dataclass(frozen=True)
class Piece:
    """A mass at a rotor angle with half widths of its 95 % interval; negative: metal taken away.

    `planned` marks what is to be put on, and has not been put on yet.
    """

    label: str
    angle_deg: float
    angle_ci95_deg: float | None = None
    radius_share: float = 1.0
    planned: bool = False


@dataclass(frozen=True)
class Face:
    """A rotor and what stands around it.

    `rotation` is as seen from the reference end; `datum` is where stator angle 0 is, seen from there;
    `positions_deg` are the rotor angles of blades or holes, number 1 first; `blocked` are the numbers of those that take
    no mass.
    """

    rotation: str
    reference_end: str
    datum: str
    pulse_angle_deg: float
    sensors: tuple[Sensor, ...] = ()
    kind: str | None = None
    positions_deg: tuple[float, ...] = ()
    pieces: tuple[Piece, ...] = ()
    blocked: tuple[int, ...] = ()


def positions(count: int, first_deg: float) -> tuple[float, ...]:
    """Rotor angles of evenly spread blades or holes: number 1 at or first after the mark, against rotation.

    `first_deg` is the angle of any one of them. Raises ValueError for fewer than one.
    """
    if count < 1:
        raise ValueError(f"{count} blades or holes: need 1 or more")
    step = 360.0 / count
    begin = first_deg % step
    if step - begin < _SHORTEST_DEG:  # the mark is on it
        begin = 0.0
    return tuple(begin + i * step for i in range(count))


def datum_clock_deg(datum: str) -> float | None:
    """Where the datum is, in degrees clockwise from 12 o'clock; None where its text does not say."""
    match = re.fullmatch(r"\s*(\d{1,2})(?::(\d{2}))?\s*o['’]?\s*clock\s*", datum)
    if not match or not 1 <= int(match[1]) <= 12:
        return None
    return (30.0 * (int(match[1]) % 12) + 0.5 * int(match[2] or 0)) % 360.0


def turns_clockwise(face: Face, seen_from: str) -> bool:
    """Whether the rotor turns clockwise on the screen; `seen_from` is "reference end" or "other end"."""
    return (face.rotation == CLOCKWISE) == (seen_from == "reference end")


def stator_place(face: Face, stator_deg: float, seen_from: str) -> complex:
    """Place at the rim of a stator angle, as seen from that end."""
    clock = datum_clock_deg(face.datum) or 0.0
    # seen from the other end, left and right change places
    begin = vectors.vector(1.0, -clock if seen_from == "reference end" else clock)
    turn = vectors.vector(1.0, stator_deg)
    return 1j * begin * (turn.conjugate() if turns_clockwise(face, seen_from) else turn)


def rotor_place(face: Face, rotor_deg: float, seen_from: str) -> complex:
    """Place at the rim of a rotor angle, the mark being under the pulse sensor.

    A point at α passes a sensor α degrees after the mark does, so it stands α before the pulse sensor.
    """
    return stator_place(face, face.pulse_angle_deg - rotor_deg, seen_from)


def shown_angle(rotor_deg: float, angles: str) -> float:
    """A rotor angle as it is shown: `angles` is "against rotation" or "with rotation"; 0 ≤ angle < 360."""
    shown = (rotor_deg if angles == "against rotation" else -rotor_deg) % 360.0
    return 0.0 if shown >= 360.0 - 1e-9 else shown


def clock_face(place: complex) -> str:
    """Where a place is on the face of a clock, to the half hour: "2:30 o'clock"."""
    clockwise_deg = math.degrees(math.atan2(place.real, place.imag)) % 360.0
    halves = round(clockwise_deg / 15.0) % 24
    hour, half = divmod(halves, 2)
    return f"{hour or 12}{':30' if half else ''} o'clock"


def nearest_position(face: Face, rotor_deg: float) -> int | None:
    """Number, from 1, of the blade or hole next to a rotor angle; None where there are none."""
    if not face.positions_deg:
        return None
    away = [abs((p - rotor_deg + 180.0) % 360.0 - 180.0) for p in face.positions_deg]
    return 1 + away.index(min(away))


def spread(wanted: Sequence[float], least: float) -> list[float]:
    """Rising values moved as little as may be, in squares, until they are so far apart: pools of neighbours that touch."""
    pools: list[tuple[float, int]] = []  # mean of what is wanted less the steps before it, and how many
    for number, value in enumerate(wanted):
        mean, count = value - number * least, 1
        while pools and pools[-1][0] > mean:
            before, many = pools.pop()
            mean, count = (before * many + mean * count) / (many + count), many + count
        pools.append((mean, count))
    means = [mean for mean, count in pools for _ in range(count)]
    return [mean + number * least for number, mean in enumerate(means)]


def apart(places: Sequence[complex], least: float) -> list[complex]:
    """Places around the rim, moved along it as little as may be until neighbours are `least` apart, in radians.

    The first stays, and so does the order. Where there is no room for that, all are as far apart as they can be.
    """
    if len(places) < 2:
        return list(places)
    full, step = 2.0 * math.pi, min(least, 2.0 * math.pi / len(places))
    begin = cmath.phase(places[0])
    away = [(cmath.phase(p) - begin) % full for p in places[1:]]
    there = [i for i, a in enumerate(away) if min(a, full - a) < _SAME_PLACE]
    for number, i in enumerate(there):  # at the first one's own place: on either side of it
        away[i] = 0.0 if number % 2 == 0 else full
    order = sorted(range(len(away)), key=away.__getitem__)
    found = list(places)
    for number, at in enumerate(spread([away[i] for i in order], step)):
        low, high = (number + 1) * step, full - (len(order) - number) * step
        found[order[number] + 1] = abs(places[order[number] + 1]) * cmath.exp(1j * (begin + min(high, max(low, at))))
    return found


def words(face: Face, seen_from: str, angles: str) -> str:
    """The face in words, for those who cannot see it."""
    end = face.reference_end if seen_from == "reference end" else f"the end opposite {face.reference_end}"
    turns = CLOCKWISE if turns_clockwise(face, seen_from) else COUNTER_CLOCKWISE
    said = [f"seen from {end}, turning {turns}, angles {angles}"]
    at = clock_face(stator_place(face, face.pulse_angle_deg, seen_from))
    said.append(f"pulse sensor and mark at {at}")
    said += [f"sensor {s.name} at {clock_face(stator_place(face, s.angle_deg, seen_from))}" for s in face.sensors]
    if face.positions_deg:
        numbers = ", ".join(map(str, face.blocked))
        said.append(
            f"{len(face.positions_deg)} {face.kind or 'position'}s" + (f", {numbers} blocked" if numbers else "")
        )
    for piece in face.pieces:
        half = "" if piece.angle_ci95_deg is None else f" plus or minus {piece.angle_ci95_deg:.0f}"
        number = nearest_position(face, piece.angle_deg)
        beside = "" if number is None else f", {face.kind or 'position'} {number}"
        where = clock_face(rotor_place(face, piece.angle_deg, seen_from))
        done = "to go" if piece.planned else "on"
        said.append(
            f"{piece.label} {done} at {shown_angle(piece.angle_deg, angles):.0f} degrees{half}{beside}, {where}"
        )
    if datum_clock_deg(face.datum) is None:
        said.append(f"the datum, {face.datum}, is drawn at the top")
    return "; ".join(said)
