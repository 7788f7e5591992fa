"""Sections of a report on the machine: what it is, why it is balanced, the checks before, the hook-up."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from stillshaft.solver import inspection
from stillshaft.solver.brief import Brief, Level, Plane
from stillshaft.solver.events import Check, Event, Measured
from stillshaft.ui.desktop import face as faces
from stillshaft.ui.report_layout import Block, Column, Facts, Pictures, Row, Section, Table, Text
from stillshaft.ui.report_material import Material, face_of, number_in, tables_in, text_in, texts_in
from stillshaft.ui.report_pictures import hookup_picture
from stillshaft.ui.report_words import Units, figure, listed, moment, speed


def sections(material: Material) -> Iterator[Section]:
    """Machine and task, reasons, checks, hook-up."""
    yield Section("Machine and task", tuple(_machine(material)))
    yield Section("Why it is balanced", tuple(_interview(material.state.brief)))
    yield Section("Checks before balancing", tuple(_checks(material)))
    yield Section("Hook-up", tuple(_hookup(material)))


def given(rows: Iterable[tuple[str, object]]) -> tuple[tuple[str, str], ...]:
    """Those rows that say something."""
    return tuple((name, str(said)) for name, said in rows if said not in (None, "", []))


def _machine(material: Material) -> Iterator[Block]:
    brief, own = material.state.brief, material.units
    machine, rotor, drive, supports = brief.machine, brief.rotor, brief.drive, brief.supports
    rows = given(
        [
            *((name, getattr(machine, name)) for name in ("name", "type", "maker", "serial", "place", "owner")),
            *((name, getattr(machine, name)) for name in ("bearings", "power", "note")),
            ("rotor", _joined([rotor.kind, own.given(rotor.mass, "kg"), rotor.note])),
            ("running speed", rotor.speed_rpm and speed(rotor.speed_rpm)),
            ("never faster than", rotor.highest_speed_rpm and speed(rotor.highest_speed_rpm)),
            ("bearing span", own.given(rotor.bearing_span, "mm")),
            ("centre of mass", own.given(rotor.centre_of_mass, "mm")),
            ("drive", _joined([drive.kind, _drive(brief, own), drive.note])),
            ("supports", _joined([*_supports(brief), supports.note])),
            ("starts", _starts(brief)),
            ("neighbours", listed(f"{n.name} {speed(n.speed_rpm)}" for n in brief.neighbours)),
            ("must be alike in all runs", listed(_condition(c.name, c.unit, c.tolerance) for c in brief.conditions)),
            ("remarks", brief.note),
        ]
    )  # fmt: skip
    yield Facts(rows) if rows else Text("Nothing was recorded of the machine.")
    if brief.planes:
        yield Table(
            (Column("correction plane", 0.25), Column("radius", 0.2, True), Column("from bearing A", 0.2, True),
             Column("positions", 0.22), Column("at most", 0.13, True)),
            tuple(_plane_row(p, own) for p in brief.planes),
        )  # fmt: skip
    else:
        yield Text("No correction plane was recorded.")
    goal = brief.goal
    rows = given(
        [
            ("goal", _joined([goal.grade, goal.table, goal.note])),
            ("decided by", goal.basis),
            ("limits", _levels(brief.limits, own)),
            ("stop the machine at", _levels(brief.abort, own)),
        ]
    )
    yield Facts(rows) if rows else Text("No goal and no limit was agreed.")


def _joined(parts: Iterable[str | None]) -> str:
    return ", ".join(p for p in parts if p)


def _drive(brief: Brief, own: Units) -> str:
    drive = brief.drive
    variable = {True: "variable speed", False: "fixed speed", None: None}[drive.variable_speed]
    motor = None if drive.motor_speed_rpm is None else f"motor {speed(drive.motor_speed_rpm)}"
    lengths = [
        f"{name} {own.given(text, 'mm')}"
        for name, text in (
            ("motor pulley", drive.motor_pulley), ("rotor pulley", drive.rotor_pulley), ("belt", drive.belt_length),
        )
        if text is not None
    ]  # fmt: skip
    mains = None if drive.line is None else f"line {drive.line}"
    poles = None if drive.poles is None else f"{drive.poles} poles"
    return _joined([variable, motor, mains, poles, *lengths])


def _supports(brief: Brief) -> Iterator[str]:
    for direction in ("horizontal", "vertical", "axial"):
        if kind := getattr(brief.supports, direction):
            yield f"{direction} {kind}"


def _starts(brief: Brief) -> str:
    starts = brief.starts
    return _joined(
        f"{text} {value:g}{unit}"
        for text, value, unit in (
            ("allowed", starts.allowed, ""), ("cold", starts.cold_allowed, ""), ("hot", starts.hot_allowed, ""),
            ("between them", starts.minutes_between, " min"), ("coast-down", starts.coast_down_minutes, " min"),
            ("lock-out", starts.lock_out_minutes, " min"),
        )
        if value is not None
    )  # fmt: skip


def _condition(name: str, unit: str | None, tolerance: float | None) -> str:
    return name if tolerance is None else f"{name} within {figure(tolerance)} {unit or ''}".rstrip()


def _levels(levels: Iterable[Level], own: Units) -> str:
    said = []
    for level in levels:
        unit, factor = own.vibration(level.unit)
        by = f" ({level.source})" if level.source else ""
        said.append(f"{level.point} {figure(factor * level.amplitude)} {unit}{by}")
    return "\n".join(said)


def _plane_row(plane: Plane, own: Units) -> Row:
    positions = ""
    if isinstance(plane.positions, int):
        positions = f"{plane.positions}, evenly spread"
    elif plane.positions is not None:
        positions = "at " + ", ".join(f"{p:g}°" for p in plane.positions)
    if plane.blocked:
        positions += f"; not {', '.join(map(str, plane.blocked))}"
    return Row((
        plane.name, own.given(plane.radius, "mm"), own.given(plane.z, "mm"), positions or "any angle", own.given(plane.cap, "g"),
    ))  # fmt: skip


def _interview(brief: Brief) -> Iterator[Block]:
    if not brief.interview:
        yield Text(
            "No reasons were recorded: nobody wrote down what is wrong, since when, and why unbalance is suspected."
        )
        return
    yield Facts(
        tuple((question.replace("_", " "), answer or "not answered") for question, answer in brief.interview.items())
    )


def _checks(material: Material) -> Iterator[Block]:
    state = material.state
    titles = titles_of_checks(state.brief)
    if state.checks:
        yield Table(
            (Column("check", 0.26), Column("outcome", 0.16), Column("evidence and remarks", 0.58)),
            tuple(Row((titles.get(i, i), e.what.outcome, _evidence(e, material))) for i, e in state.checks.items()),
        )
    else:
        yield Text("No check before balancing was recorded.", "doubt")


def titles_of_checks(brief: Brief) -> dict[str, str]:
    """Titles of the checks that fit the machine, by their keys."""
    try:
        fitting = inspection.checks(inspection.facts_from(brief))
    except inspection.InspectionError:  # words of the brief that no table knows leave no check out
        fitting = inspection.checks({})
    return {check.key: check.title for check in fitting}


def _evidence(event: Event[Check], material: Material) -> str:
    check = event.what
    said = []
    if check.outcome == "not done":
        said.append(f"not done because: {check.note}")
    elif check.note:
        said.append(check.note)
    measured = next((m for m in material.state.measured if m.id == check.evidence), None)
    if measured is not None:
        said.append(f"measured, entry {measured.id}: {measured_words(measured.what)}")
    elif check.evidence is not None:
        said.append(f"its evidence, entry {check.evidence}, was withdrawn")
    said += [f"photo {photo.path}" for photo in check.photos]
    said.append(f"{event.by or 'nobody named'}, {moment(event.at)}")
    return "\n".join(said)


def measured_words(measured: Measured) -> str:
    """What was measured as evidence, in short."""
    said = [measured.what]
    for resonance in tables_in(measured.figures, "resonances"):
        rpm, amplification = number_in(resonance, "rpm"), number_in(resonance, "amplification")
        if rpm is not None:
            by = "" if amplification is None else f", amplification {figure(amplification)}"
            said.append(f"resonance at {speed(rpm)}{by}")
    for key, value in measured.figures.items():
        if isinstance(value, str | int | float) and not isinstance(value, bool) and len(said) < 12:
            said.append(f"{key.replace('_', ' ')} {value if isinstance(value, str) else figure(float(value))}")
    if measured.note:
        said.append(measured.note)
    if not measured.trusted:
        said.append(f"not trusted: {'; '.join(measured.reasons) or 'no reason recorded'}")
    return listed(said)


def _hookup(material: Material) -> Iterator[Block]:
    table = material.state.hookup
    drawn = face_of(table)
    if table is None or drawn is None:
        why = "was recorded" if table is None else "that can be read was recorded"
        yield Text(f"No hook-up {why}: where sensors and pulse sensor were is not known.", "doubt")
        return
    yield Pictures((hookup_picture(drawn),))
    pulse: dict[str, object] = table.get("pulse", {})
    at = faces.clock_face(faces.stator_place(drawn, drawn.pulse_angle_deg, "reference end"))
    unclear = "" if faces.datum_clock_deg(drawn.datum) is not None else " (drawn at the top)"
    end = drawn.reference_end
    pulse_words = [
        f"input {text_in(pulse, 'input') or '1'}",
        f"at {drawn.pulse_angle_deg:g}°, {at}",
        f"edge {text_in(pulse, 'edge') or 'auto'}",
        f"{text_in(pulse, 'pulses_per_rev') or '1'} a revolution",
    ]
    yield Facts(
        (
            ("seen from", f"the {end} end, looking at it" if end in ("drive", "non-drive") else end),
            ("rotation from there", drawn.rotation),
            ("datum of stator angles", f"{drawn.datum}{unclear}, counted in the direction of rotation"),
            ("pulse sensor", ", ".join(pulse_words)),
            ("rotor angles", "from the mark that trips the pulse sensor, against rotation"),
        )
    )
    yield Table(
        (
            Column("No.", 0.05, True), Column("point", 0.33), Column("input", 0.07, True), Column("quantity", 0.16),
            Column("stator angle", 0.19), Column("sensitivity", 0.2),
        ),
        tuple(_point_row(n, p, drawn) for n, p in enumerate(tables_in(table, "point"), start=1)),
    )  # fmt: skip


def _point_row(number: int, point: dict[str, object], drawn: faces.Face) -> Row:
    if point.get("direction") == "axial":
        place = "axial"
    else:
        angle_deg = number_in(point, "angle") or 0.0
        place = f"{angle_deg:g}°, {faces.clock_face(faces.stator_place(drawn, angle_deg, 'reference end'))}"
    quantity = text_in(point, "quantity") + (", inverted" if point.get("inverted") is True else "")
    more = [text_in(point, "sensitivity")]
    delay, corners = text_in(point, "delay"), text_in(point, "highpass")
    listed_corners = texts_in(point, "highpass")
    more += [f"delay {delay}"] if delay and not delay.startswith("0 ") else []
    more += [f"AC corner {', '.join(listed_corners) or corners}"] if corners not in ("", "[]") else []
    more += ["calibrated"] if point.get("calibrated") else []
    return Row((
        str(number), text_in(point, "name"), text_in(point, "input"), quantity, place, "\n".join(m for m in more if m),
    ))  # fmt: skip
