"""Sections of a report on masses: what was worked out, what is on the rotor, and the sheet for the person who places it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

from stillshaft.solver import handwork, trial
from stillshaft.solver.brief import Plane
from stillshaft.solver.events import Event, Mass, Piece, Plan
from stillshaft.ui.desktop import face as faces
from stillshaft.ui.desktop.face import Face
from stillshaft.ui.report_layout import Block, Column, Picture, Pictures, Row, Section, Table, Text
from stillshaft.ui.report_material import (
    Material,
    face_of,
    mark_turn_deg,
    number_in,
    positions_of,
    tables_in,
    text_in,
    texts_in,
    unknown_turn,
    with_positions,
)
from stillshaft.ui.report_pictures import masses_picture
from stillshaft.ui.report_runs import masses_words
from stillshaft.ui.report_words import angle, figure, listed, moment, speed

_SAME_PLACE_DEG = 0.5
CAUTIONS = (
    "Before hands go in: isolated, locked and tried by the local rules, and the rotor itself blocked: draught, backflow and "
    "an off-centre mass turn it. Welding: earth clamp on the rotor beside the weld, never through bearings or coupling; "
    "sensors, pulse sensor and computer disconnected first. Bolted: the force carried by shape, not by friction. Never weld "
    "or drill blade roots, welds or pressure parts. Before the start: block, tools, cables and tape out and counted, own lock "
    "removed last by its owner, nobody in the plane of rotation. Local rules decide, and what needs a licensed or competent "
    "person is left to one."
)


@dataclass(frozen=True)
class Place:
    """A mass at its place: grams, degrees from the mark as it is now, against rotation; half widths where it is planned."""

    plane: str
    mass_g: float
    angle_deg: float
    radius_mm: float | None
    position: int | None = None
    fixing: str | None = None
    mass_half_g: float | None = None
    angle_half_deg: float | None = None
    planned: bool = False
    determined: bool = True


def sections(material: Material) -> Iterator[Section]:
    """Solutions, what is on the rotor and how it came there, and the placement sheet."""
    yield Section("Solutions", tuple(_plans(material)))
    yield Section("Masses on the rotor", tuple(_masses(material)))
    if sheet := tuple(_sheet(material)):
        yield Section("Placement sheet", sheet, new_page=True)


# what was worked out


def _plans(material: Material) -> Iterator[Block]:
    if not material.state.plans:
        why = f" The runs cannot be solved as they are: {material.unsolved}." if material.unsolved else ""
        yield Text(f"No solution was recorded.{why}")
        return
    for event in material.state.plans:
        yield from _plan(material, event)


def _plan(material: Material, event: Event[Plan]) -> Iterator[Block]:
    plan, result = event.what, event.what.result
    names = [r.what.name for r in material.state.runs if r.id in plan.inputs]
    method = text_in(result, "method") or plan.method
    yield Text(
        f"Entry {event.id}, {moment(event.at)}: {method}, from {listed(names)}; program {plan.program or 'unknown'}.",
        "strong",
    )
    if reasons := texts_in(result, "reasons"):
        yield Text(f"Do not trust this solution: {listed(reasons)}.", "doubt")
    elif result.get("trusted") is False:
        yield Text("The program did not trust this solution.", "doubt")
    rows = []
    for title, key in (
        ("correction, trial masses off", "corrections"),
        ("to add to what was on in the last run", "additional"),
    ):
        for entry in tables_in(result, key):
            rows.append(_solution_row(material, title, entry))
    if rows:
        columns = (
            Column("solution", 0.32), Column("plane", 0.2), Column("mass", 0.22, True), Column("angle", 0.14, True),
            Column("radius", 0.12, True),
        )  # fmt: skip
        yield Table(columns, tuple(rows))
    expected = []
    for entry in tables_in(result, "predicted"):
        unit, factor = material.units.vibration(text_in(entry, "unit"))
        value, most = number_in(entry, "amplitude"), number_in(entry, "amplitude_upper95")
        expected.append(Row((
            text_in(entry, "point"), "?" if value is None else f"{figure(_small(factor * value))} {unit}",
            "cannot be told" if most is None else f"{figure(factor * most)} {unit}",
        )))  # fmt: skip
    if expected:
        yield Table(
            (Column("point", 0.5), Column("expected 1x", 0.25, True), Column("at most, 95 %", 0.25, True)),
            tuple(expected),
        )
    said = texts_in(result, "warnings") + ([plan.note] if plan.note else [])
    condition = number_in(result, "condition_number")
    said += [] if condition is None else [f"condition number {figure(condition)}"]
    if said:
        yield Text(listed(said), "quiet")


def _small(value: float) -> float:
    """What is left of rounding is nothing."""
    return 0.0 if abs(value) < 1e-9 else value


def _solution_row(material: Material, title: str, entry: dict[str, Any]) -> Row:
    place = _planned(material, entry)
    own = material.units
    if place is None:
        return Row((title, text_in(entry, "plane"), "cannot be told", "", ""))
    turn = mark_turn_deg(material.state)
    mass = own.amount(place.mass_g, "g", place.mass_half_g, told=True)
    return Row((
        title if place.determined else f"{title}: not determined", place.plane, mass,
        angle(place.angle_deg + turn, place.angle_half_deg),
        "" if place.radius_mm is None else own.amount(place.radius_mm, "mm"),
    ))  # fmt: skip


def _planned(material: Material, entry: dict[str, Any]) -> Place | None:
    """A correction of a solution, its angle counted from the mark as it is now; None where its figures are missing."""
    from stillshaft.dsp import units

    mass, angle_deg = number_in(entry, "mass"), number_in(entry, "angle_deg")
    try:
        grams = units.parse(f"1 {text_in(entry, 'unit') or 'g'}", "g", "unit")
    except units.UnitError:
        return None
    if mass is None or angle_deg is None:
        return None
    half = number_in(entry, "mass_ci95")
    name = text_in(entry, "plane")
    return Place(
        name, grams * mass, (angle_deg - mark_turn_deg(material.state)) % 360.0,
        number_in(entry, "radius_mm") or _radius_mm(_plane(material, name)),
        mass_half_g=None if half is None else grams * half, angle_half_deg=number_in(entry, "angle_ci95_deg"),
        planned=True, determined=entry.get("determined") is not False,
    )  # fmt: skip


def _plane(material: Material, name: str) -> Plane | None:
    return next((p for p in material.state.brief.planes if p.name == name), None)


def _radius_mm(plane: Plane | None) -> float | None:
    from stillshaft.dsp import units

    try:
        return None if plane is None or plane.radius is None else units.parse(plane.radius, "mm", "radius")
    except units.UnitError:
        return None


# what is on the rotor


def on_rotor(material: Material) -> tuple[Place, ...]:
    """The pieces that are on, their angles counted from the mark as it is now."""
    now = mark_turn_deg(material.state)
    found = []
    for on in material.state.on_rotor:
        piece = on.piece
        turned = mark_turn_deg(material.state, on.of) - now
        radius = piece.radius_mm or _radius_mm(_plane(material, piece.plane))
        found.append(
            Place(piece.plane, piece.mass_g, (piece.angle_deg + turned) % 360.0, radius, piece.position, piece.fixing)
        )
    return tuple(found)


def _masses(material: Material) -> Iterator[Block]:
    places = on_rotor(material)
    if places:
        yield from _drawn(material, places, large=False)
    else:
        yield Text("Nothing is on the rotor beyond its initial state.")
    if material.state.masses:
        yield Text("How it came there:", "strong")
        rows = tuple(_act(material, event) for event in material.state.masses)
        yield Table(
            (Column("entry", 0.08, True), Column("what was done", 0.2), Column("pieces", 0.42), Column("by, remarks", 0.3)), rows,
        )  # fmt: skip


def _act(material: Material, event: Event[Mass]) -> Row:
    mass = event.what
    about = (
        ""
        if mass.of is None
        else f" (entry {mass.of}{', piece ' + ', '.join(map(str, mass.numbers)) if mass.numbers else ''})"
    )
    remarks = [f"{event.by or 'nobody named'}, {moment(event.at)}"]
    remarks += [mass.note] if mass.note else []
    remarks += [f"photo {photo.path}" for photo in mass.photos]
    pieces = masses_words(material, mass.pieces)
    if mass.act == "taken off":
        put = next((e for e in material.state.masses if e.id == mass.of), None)
        every = [] if put is None else put.what.pieces
        gone = [p for n, p in enumerate(every, start=1) if not mass.numbers or n in mass.numbers]
        pieces = masses_words(material, gone)
    return Row(
        (str(event.id), f"{mass.act}{about}{': ' + mass.purpose if mass.purpose else ''}", pieces, "\n".join(remarks))
    )


def _drawn(material: Material, places: Sequence[Place], *, large: bool) -> Iterator[Block]:
    """A picture of each plane, and the pieces as a table with everything that is needed to find their places."""
    numbered = list(enumerate(places, start=1))
    names = list(dict.fromkeys(p.plane for p in places))
    face = face_of(material.state.hookup)
    if face is None:
        yield Text("Pulse sensor and rotation are not known from a hook-up: nothing can be drawn.", "doubt")
    else:
        of_planes = [(name, [(n, p) for n, p in numbered if p.plane == name]) for name in names]
        yield Pictures(tuple(_picture(material, face, name, pieces) for name, pieces in of_planes))
    columns = (
        Column("piece", 0.06, True), Column("mass", 0.15, True), Column("angle", 0.09, True), Column("position", 0.27),
        Column("along the rim", 0.15, True), Column("clock face", 0.11, True), Column("force at speed", 0.17, True),
    )  # fmt: skip
    rows: list[Row] = []
    for name in names:
        plane = _plane(material, name)
        radius = _radius_mm(plane)
        at = "" if radius is None else f", radius {material.units.amount(radius, 'mm')}"
        rows.append(Row((f"{plane_words(name)}{at}",), band=True))
        rows += [_piece_row(material, n, p, plane) for n, p in numbered if p.plane == name]
    yield Table(columns, tuple(rows), large=large)
    if sure := [_sureness(material, n, p) for n, p in numbered if p.planned]:
        yield Text(f"How sure, 95 %: {listed(sure)}.", "quiet")
    rpm = material.speed_rpm
    end = "" if face is None else f" from the {face.reference_end} end"
    crossed = any(plane is not None and plane.blocked for plane in (_plane(material, name) for name in names))
    yield Text(
        "Angles and distances along the rim count from the mark that trips the pulse sensor, against rotation. The clock face "
        f"is as seen{end} with the mark under the pulse sensor. "
        + ("Crossed out: no mass may go there. " if crossed and face is not None else "")
        + ("Forces cannot be told: no speed was recorded." if rpm is None else f"Forces are at {speed(rpm)}."),
        "quiet",
    )  # fmt: skip


def plane_words(name: str) -> str:
    """A plane by its name, which may say itself that it is one."""
    return name if "plane" in name.lower() else f"plane {name}"


def _sureness(material: Material, number: int, place: Place) -> str:
    """Half widths of a planned piece's mass and angle."""
    mass = "any mass" if place.mass_half_g is None else f"± {material.units.amount(place.mass_half_g, 'g')}"
    at = "at any angle" if place.angle_half_deg is None else f"± {max(1, round(place.angle_half_deg))}°"
    return f"piece {number} {mass}, {at}"


def _picture(material: Material, bare: Face, name: str, numbered: Sequence[tuple[int, Place]]) -> Picture:
    plane = _plane(material, name)
    face = with_positions(bare, plane)
    radius = _radius_mm(plane)
    pieces = tuple(
        faces.Piece(
            f"{n}",
            p.angle_deg,
            p.angle_half_deg,
            1.0 if radius is None or p.radius_mm is None else p.radius_mm / radius,
            p.planned,
        )
        for n, p in numbered
    )
    return masses_picture(plane_words(name), replace(face, pieces=pieces))


def _piece_row(material: Material, number: int, place: Place, plane: Plane | None) -> Row:
    own = material.units
    face = face_of(material.state.hookup)
    clock = None
    if face is not None:
        clock = handwork.clock_position(place.angle_deg, face.pulse_angle_deg, face.datum, face.rotation)
    rim = force = ""
    if place.radius_mm is not None:
        rim = own.amount(handwork.rim_distance(place.angle_deg, place.radius_mm), "mm")
        if material.speed_rpm is not None:
            newtons = trial.centrifugal_force(abs(place.mass_g) / 1000.0, place.radius_mm / 1000.0, material.speed_rpm)
            force = own.force(newtons)
    mass = own.amount(abs(place.mass_g), "g")
    removed = " taken off" if place.mass_g < 0.0 else ""
    where = [_position(place, plane)]
    plane_radius = _radius_mm(plane)
    if (
        place.radius_mm is not None
        and plane_radius is not None
        and not math.isclose(place.radius_mm, plane_radius, rel_tol=1e-3)
    ):
        where.append(f"radius {own.amount(place.radius_mm, 'mm')}")
    if place.fixing:
        where.append(place.fixing)
    return Row((
        str(number), mass + removed, angle(place.angle_deg), "\n".join(w for w in where if w), rim,
        clock or "?", force,
    ))  # fmt: skip


def _position(place: Place, plane: Plane | None) -> str:
    """Number of the allowed position, or between which ones."""
    if place.position is not None:
        return f"No. {place.position}"
    at = () if plane is None else positions_of(plane)
    if not at:
        return "any"
    ahead = [(p - place.angle_deg) % 360.0 for p in at]
    after, before = ahead.index(min(ahead)), ahead.index(max(ahead))
    if min(ahead) < _SAME_PLACE_DEG:
        return f"No. {after + 1}"
    if 360.0 - max(ahead) < _SAME_PLACE_DEG or len(at) == 1:
        return f"No. {before + 1}"
    return f"between {before + 1} and {after + 1}"


# the sheet


def _sheet(material: Material) -> Iterator[Block]:
    state = material.state
    on = on_rotor(material)
    newest_put = max((e.id for e in state.masses if e.what.act != "taken off"), default=0)
    plan = state.plans[-1] if state.plans else None
    if plan is not None and plan.id > newest_put:
        stays = bool(on) and _as_in_last_run(material, plan)
        entries = tables_in(plan.what.result, "additional" if stays else "corrections")
        planned = [p for entry in entries if (p := _planned(material, entry)) is not None]
        if planned:
            what = "to what is on the rotor, which stays" if stays else "with every other piece taken off"
            yield Text(f"To be put on, by the solution of entry {plan.id}: {what}.", "lead")
            if on and not stays:
                yield Text(
                    "What is on the rotor now is not what was on in the last run of the solution: take it off first.",
                    "doubt",
                )
            if any(not p.determined for p in planned) or plan.what.result.get("trusted") is False:
                yield Text(
                    "The program does not trust this solution: see what it says under Solutions before placing it.",
                    "doubt",
                )
            yield from _for_hands(material, planned)
            return
    if on:
        yield Text("On the rotor, as recorded.", "lead")
        yield from _for_hands(material, on)


def _as_in_last_run(material: Material, plan: Event[Plan]) -> bool:
    """True where what is on the rotor is what was on in the last run that the solution is from."""
    used = [r for r in material.state.runs if r.id in plan.what.inputs]
    if not used:
        return False
    then = [_key(p, used[-1].angle_turn_deg) for p in used[-1].what.masses]
    now = [_key(on.piece, mark_turn_deg(material.state, on.of)) for on in material.state.on_rotor]
    return sorted(then) == sorted(now)


def _key(piece: Piece, turn_deg: float) -> tuple[str, float, float, float]:
    angle_deg = round((piece.angle_deg + turn_deg) % 360.0, 2) % 360.0
    return piece.plane, round(piece.mass_g, 6), angle_deg, piece.radius_mm or 0.0


def _for_hands(material: Material, places: Sequence[Place]) -> Iterator[Block]:
    if unknown_turn(material.state):
        yield Text(
            "Mark or sensors were changed by an unknown turn during the job: make sure of the mark before using these angles.",
            "doubt",
        )  # fmt: skip
    yield from _drawn(material, places, large=True)
    yield Text(CAUTIONS, "doubt")
