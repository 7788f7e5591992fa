"""What is worked out at the bench for one piece: split and combined masses, rim distances, holes, ground flats, weld metal.

Lengths in m and masses in kg, where it matters; angles are rotor angles against rotation from the mark. Geometry of the
circle, the cylinder and the cone: any handbook.
"""

from __future__ import annotations

import itertools
import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from stillshaft.dsp import vectors
from stillshaft.dsp.units import InputError

# kg/m³, usual handbook values, from memory; alloys differ by a few percent
DENSITIES_KG_M3: Mapping[str, float] = {
    "steel": 7850.0,
    "stainless steel": 7900.0,
    "cast iron": 7200.0,
    "aluminium": 2700.0,
    "brass": 8500.0,
    "bronze": 8800.0,
    "copper": 8930.0,
    "lead": 11340.0,
    "tungsten": 19300.0,
    "titanium": 4500.0,
    "magnesium": 1740.0,
    "zinc": 7140.0,
}
_IN_LINE = 1e-9
_MOST_ROUNDED = 4  # pieces that one share is rounded to


class HandworkError(InputError):
    """A small calculation that has no answer: the message says why."""


@dataclass(frozen=True)
class Hole:
    """A drilled hole, m: `full_m` to where the full diameter ends, `total_m` to the tip of the drill."""

    full_m: float
    total_m: float


def _above_zero(**values: float) -> None:
    for name, value in values.items():
        if not (math.isfinite(value) and value > 0.0):
            raise HandworkError(f"{name.replace('_', ' ')} {value:g}: must be above 0")


def split(wanted: complex, first_deg: float, second_deg: float) -> tuple[float, float]:
    """Masses at two angles that together make a mass vector. Raises HandworkError where the angles are in line."""
    one, other = vectors.vector(1.0, first_deg), vectors.vector(1.0, second_deg)
    across = one.real * other.imag - one.imag * other.real
    if abs(across) < _IN_LINE:
        raise HandworkError(f"{first_deg:g}° and {second_deg:g}° are in line: no two masses there make another angle")
    return (
        (wanted.real * other.imag - wanted.imag * other.real) / across,
        (one.real * wanted.imag - one.imag * wanted.real) / across,
    )


def split_between_neighbours(wanted: complex, angles_deg: Sequence[float]) -> tuple[tuple[int, float], ...]:
    """(position, mass) at the two positions on either side of a mass vector: the handbook's way.

    Raises HandworkError where the neighbours are 180° apart or more.
    """
    _, angle_deg = vectors.amplitude_phase(wanted)
    ahead = [(a - angle_deg) % 360.0 for a in angles_deg]
    after = min(range(len(ahead)), key=lambda i: ahead[i])
    before = max(range(len(ahead)), key=lambda i: ahead[i])
    if ahead[after] == 0.0:
        return ((after, abs(wanted)),)
    if ahead[after] + 360.0 - ahead[before] >= 180.0:
        raise HandworkError(
            f"the nearest positions, {angles_deg[before]:g}° and {angles_deg[after]:g}°, are 180° apart or more: "
            "no two masses there make the angle between"
        )
    m_before, m_after = split(wanted, angles_deg[before], angles_deg[after])
    return (before, m_before), (after, m_after)


def rounded_to_stock(
    mass: float, sizes: Sequence[float], left: dict[int, int], *, most: float = math.inf, cap: float = math.inf
) -> tuple[int, ...]:
    """Indices of up to four sizes whose sum comes nearest to a mass, the fewest where several do.

    `left` counts the pieces there are, and is lowered by those taken; `most` pieces and `cap` mass are what a position
    takes.
    """
    best: tuple[int, ...] = ()
    there = [i for i in range(len(sizes)) if left[i] > 0]
    for pieces in range(1, int(min(most, _MOST_ROUNDED)) + 1):
        for some in itertools.combinations_with_replacement(there, pieces):
            total = sum(sizes[i] for i in some)
            nearer = abs(mass - total) < abs(mass - sum(sizes[i] for i in best)) * (1.0 - 1e-9)
            if nearer and abs(total) <= cap and all(some.count(i) <= left[i] for i in some):
                best = some
    for i in best:
        left[i] -= 1
    return best


def one_for_several(pieces: Sequence[tuple[float, float, float]], radius: float) -> tuple[float, float]:
    """Mass and angle in degrees at one radius that do what several (mass, angle in degrees, radius) do."""
    _above_zero(radius=radius)
    moment = sum((mass * r * vectors.vector(1.0, angle_deg) for mass, angle_deg, r in pieces), start=0j)
    return vectors.amplitude_phase(moment / radius)


def at_radius(mass: float, radius: float, new_radius: float) -> float:
    """Mass that does at a new radius what it does at the old one: m·r stays."""
    _above_zero(radius=radius, new_radius=new_radius)
    return mass * radius / new_radius


def rim_distance(angle_deg: float, radius: float) -> float:
    """Distance along the rim from the mark, in the unit of the radius."""
    _above_zero(radius=radius)
    return math.radians(angle_deg) * radius


def chord(angle_deg: float, radius: float) -> float:
    """Straight distance between two points of the rim so many degrees apart."""
    _above_zero(radius=radius)
    return 2.0 * radius * abs(math.sin(math.radians(angle_deg) / 2.0))


def density(material: str) -> float:
    """Density in kg/m³ by the material's name, or from text such as "7.85 g/cm^3". Raises HandworkError, UnitError."""
    from stillshaft.dsp import units

    known = DENSITIES_KG_M3.get(material.strip().lower())
    if known is not None:
        return known
    if not re.match(r"\s*[-+.\d]", material):
        raise HandworkError(
            f'material "{material}": is not known; there is {", ".join(DENSITIES_KG_M3)}, or write "7850 kg/m^3"'
        )
    value = units.parse(material, "kg/m^3", "material")
    _above_zero(density=value)
    return value


def drilled(
    mass_kg: float, diameter_m: float, density_kg_m3: float, *, point_deg: float = 118.0, holes: int = 1
) -> Hole:
    """Hole, or each of several alike, that takes a mass off: a cylinder that ends in the cone of the drill's point.

    Where the mass is less than the cone's, only a part of the point goes in and `full_m` is 0.
    """
    _above_zero(mass=mass_kg, diameter=diameter_m, density=density_kg_m3, holes=holes)
    if not 0.0 < point_deg <= 180.0:
        raise HandworkError(f"drill point {point_deg:g}°: must be above 0° and at most 180°; 118° and 140° are usual")
    volume = mass_kg / density_kg_m3 / holes
    radius = diameter_m / 2.0
    half = math.radians(point_deg) / 2.0
    tip = radius / math.tan(half) if point_deg < 180.0 else 0.0
    full = (volume - math.pi * radius**2 * tip / 3.0) / (math.pi * radius**2)
    if full < 0.0:
        return Hole(0.0, float((3.0 * volume / (math.pi * math.tan(half) ** 2)) ** (1.0 / 3.0)))
    return Hole(full, full + tip)


def ground_depth(mass_kg: float, area_m2: float, density_kg_m3: float) -> float:
    """Depth in m to grind off evenly over an area."""
    _above_zero(mass=mass_kg, area=area_m2, density=density_kg_m3)
    return mass_kg / (density_kg_m3 * area_m2)


def rod_length(mass_kg: float, diameter_m: float, density_kg_m3: float, recovery: float) -> float:
    """Length in m of welding rod whose metal makes a mass; `recovery` is the share of it that lands on the part.

    The share is the person's own figure: common practice weighs a trial bead.
    """
    _above_zero(mass=mass_kg, diameter=diameter_m, density=density_kg_m3)
    if not 0.0 < recovery <= 1.0:
        raise HandworkError(f"recovery {100.0 * recovery:g} %: must be above 0 % and at most 100 %; weigh a trial bead")
    return mass_kg / (recovery * density_kg_m3 * math.pi * diameter_m**2 / 4.0)


def clock_position(angle_deg: float, pulse_deg: float, datum: str, rotation: str) -> str | None:
    """Where on the clock face a rotor angle is while the mark is under the pulse sensor, such as "4:30".

    `pulse_deg` is the pulse sensor's stator angle, in the direction of rotation from the datum; `rotation` is seen from
    the viewed end. None where the datum is no place on a clock face.
    """
    hours = re.fullmatch(r"\s*(\d{1,2})(?::(\d{2}))?\s*o['’]?\s*clock\s*", datum, re.IGNORECASE)
    if not hours or rotation not in ("clockwise", "counter-clockwise"):
        return None
    # a point at α passes the pulse sensor α after the mark does: it stands so far before it, against rotation
    stator_deg = pulse_deg - angle_deg
    clock_deg = 30.0 * int(hours[1]) + 0.5 * int(hours[2] or 0)
    clock_deg += stator_deg if rotation == "clockwise" else -stator_deg
    minutes = round(clock_deg % 360.0 * 2.0 / 5.0) * 5 % 720  # two minutes a degree, to five: 2.5°
    return f"{minutes // 60 or 12}:{minutes % 60:02d}"
