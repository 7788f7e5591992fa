"""Masses of a job as a person writes them, read against the planes of its brief; and which pieces on the rotor are meant."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from typing import Any

from stillshaft.dsp import units
from stillshaft.dsp.units import InputError, shown
from stillshaft.solver.brief import Plane
from stillshaft.solver.state import OnRotor

_PIECE = re.compile(
    r"\s*(?P<plane>.+?)\s*=\s*(?P<mass>.+?)\s+at\s+"
    r"(?:position\s+(?P<position>[+-]?\d{1,6})|(?P<angle>[-+]?\d+(?:\.\d+)?)\s*(?:deg|°)?)"
    r"(?P<more>(?:\s*,.*)?)\s*"
)
_HOW = '"disc = 10 g at 270", "disc = 10 g at position 5", or with ", radius 290 mm" and ", fixing bolted" after it'
_SAME_G, _SAME_DEG = 1e-6, 1e-6


class MassError(InputError):
    """A mass that cannot be used: the message says what is wrong and what there is."""


def positions_deg(plane: Plane) -> tuple[float, ...] | None:
    """Angles of the positions of a plane, 1 first; None where a mass may sit anywhere on the rim."""
    if plane.positions is None:
        return None
    if isinstance(plane.positions, int):
        return tuple(360.0 * k / plane.positions for k in range(plane.positions))
    return tuple(angle % 360.0 for angle in plane.positions)


def pieces_from(texts: Sequence[str], planes: Sequence[Plane]) -> list[dict[str, Any]]:
    """Pieces as the record holds them. Raises MassError for a plane or position that there is not, and for no mass."""
    return [_piece(text, planes) for text in texts]


def _piece(text: str, planes: Sequence[Plane]) -> dict[str, Any]:
    found = _PIECE.fullmatch(text)
    if not found:
        raise MassError(f'mass "{shown(text)}": write plane, mass and place: {_HOW}')
    plane = plane_named(found["plane"], planes)
    mass_g = 1000.0 * units.parse(found["mass"], "kg", f'mass on "{plane.name}"')
    if not math.isfinite(mass_g) or mass_g == 0.0:
        raise MassError(f'mass "{shown(text)}": {mass_g:g} g is no mass; metal that was removed is below 0')
    piece: dict[str, Any] = {"plane": plane.name, "mass_g": mass_g}
    if found["position"] is not None:
        number = int(found["position"])
        piece |= {"angle_deg": _angle_of(number, plane), "position": number}
    else:
        piece["angle_deg"] = float(found["angle"]) % 360.0
    return piece | _more(found["more"], text)


def plane_named(name: str, planes: Sequence[Plane]) -> Plane:
    """The plane of a name. Raises MassError that names those there are."""
    plane = next((p for p in planes if p.name == name), None)
    if plane is None:
        known = ", ".join(shown(p.name) for p in planes)
        raise MassError(
            f'plane "{shown(name)}": there is none; '
            + (f"the brief has {known}" if known else "the brief has no plane yet: add one")
        )
    return plane


def _angle_of(number: int, plane: Plane) -> float:
    angles = positions_deg(plane)
    if angles is None:
        raise MassError(f'plane "{shown(plane.name)}": has no positions; give an angle in degrees against rotation')
    if not 1 <= number <= len(angles):
        raise MassError(f'plane "{shown(plane.name)}": position {number} does not exist; there are 1 to {len(angles)}')
    if number in plane.blocked:
        raise MassError(f'plane "{shown(plane.name)}": position {number} is blocked by the brief; choose another')
    return angles[number - 1]


def _more(text: str, whole: str) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for part in (p.strip() for p in text.split(",")[1:]):
        word, _, rest = part.partition(" ")
        if word == "radius" and rest:
            found["radius_mm"] = units.parse(rest, "mm", "radius")
            if not found["radius_mm"] > 0.0:
                raise MassError(f'mass "{shown(whole)}": radius {shown(rest)} must be above 0')
        elif word == "fixing" and rest:
            found["fixing"] = rest.strip()
        else:
            raise MassError(f'mass "{shown(whole)}": "{shown(part)}" says nothing; write {_HOW}')
    return found


def told(piece: Any) -> str:
    """A piece in words."""
    at = f"position {piece.position} ({piece.angle_deg:.1f}°)" if piece.position else f"{piece.angle_deg:.1f}°"
    more = "" if piece.radius_mm is None else f", radius {piece.radius_mm:g} mm"
    fixing = f", {piece.fixing}" if piece.fixing else ""
    return f"{shown(piece.plane)} {piece.mass_g:.2f} g at {at}{more}{shown(fixing)}"


def meant(text: str, on: Sequence[OnRotor], purposes: dict[int, str | None], planes: Sequence[Plane]) -> list[OnRotor]:
    """Pieces on the rotor that a text means: "all", a purpose, an entry "7", its second piece "7.2", a plane, or a mass.

    `purposes` are those of the entries that put pieces on. Raises MassError with what is on.
    """
    word = text.strip()
    if word == "all":
        found = list(on)
    elif numbers := re.fullmatch(r"(\d{1,9})(?:\.(\d{1,6}))?", word):
        found = [o for o in on if o.of == int(numbers[1]) and (numbers[2] is None or o.number == int(numbers[2]))]
    elif word in purposes.values():
        found = [o for o in on if purposes.get(o.of) == word]
    elif "=" in word:
        wanted = _piece(word, planes)
        found = [
            o
            for o in on
            if o.piece.plane == wanted["plane"]
            and abs(o.piece.mass_g - wanted["mass_g"]) <= _SAME_G
            and abs((o.piece.angle_deg - wanted["angle_deg"] + 180.0) % 360.0 - 180.0) <= _SAME_DEG
        ][:1]
    else:
        found = [o for o in on if o.piece.plane == word]
    if not found:
        there = "; ".join(f"{o.of}.{o.number}: {told(o.piece)}" for o in on) or "nothing"
        raise MassError(f'"{shown(text)}": is not on the rotor; on it is {there}')
    return found
