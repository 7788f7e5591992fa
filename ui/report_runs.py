"""Sections of a report on the runs: the table with changes, polar plots, phase ribbons, what was left out or withdrawn."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from stillshaft.dsp import vectors
from stillshaft.solver.events import Piece, Vector, Withdrawn
from stillshaft.solver.events import Run as RunEvent
from stillshaft.solver.state import JobRun
from stillshaft.ui.report_layout import Block, Column, Picture, Pictures, Row, Section, Table, Text
from stillshaft.ui.report_material import Material
from stillshaft.ui.report_pictures import Dot, polar_key, polar_picture, ribbon_picture
from stillshaft.ui.report_words import angle, figure, listed, moment, quantity_of, signed, speed, with_half

_NORMAL_95 = 1.959963984540054
_LONGEST_NAME = 48


@dataclass(frozen=True)
class Shown:
    """A point's vector in a run as the report shows it: unit of the family, phase in the first run's reference."""

    amplitude: float
    half: float | None
    phase_deg: float | None
    phase_half_deg: float | None
    unit: str
    quantity: str
    overall: float | None
    verdict: str

    @property
    def z(self) -> complex | None:
        """The vector, None without a phase."""
        return None if self.phase_deg is None else vectors.vector(self.amplitude, self.phase_deg)


def shown(material: Material, run: JobRun, vector: Vector) -> Shown:
    """A vector in the report's units."""
    unit, factor = material.units.vibration(run.what.unit)
    phase = None if vector.phase_deg is None else (vector.phase_deg + run.turn_deg.get(vector.point, 0.0)) % 360.0
    quantity = quantity_of(run.what.unit)
    return Shown(
        factor * vector.amplitude,
        None if vector.amplitude_ci95 is None else factor * vector.amplitude_ci95,
        phase, vector.phase_ci95_deg, unit, quantity,
        None if vector.overall is None else factor * vector.overall, vector.verdict or "",
    )  # fmt: skip


def by_point(material: Material, run: JobRun | None) -> dict[str, Shown]:
    """All points of a run."""
    return {} if run is None else {v.point: shown(material, run, v) for v in run.what.vectors}


def points_of(material: Material) -> list[str]:
    """All points that were measured, in the order in which they first were."""
    return list(dict.fromkeys(v.point for r in material.state.runs for v in r.what.vectors))


def labels(material: Material) -> dict[str, str]:
    """Names of the points, those too long for a row of figures shortened behind their number."""
    return {
        point: point if len(point) <= _LONGEST_NAME else f"{number}: {point[: _LONGEST_NAME - 5]}…"
        for number, point in enumerate(points_of(material), start=1)
    }


def change(material: Material, first: Shown, now: Shown) -> tuple[float, float] | None:
    """Change of the amplitude in percent and its 95 % half width, repeatability included; None where it makes no sense."""
    if first.quantity != now.quantity or not first.amplitude:
        return None
    ratio = now.amplitude / first.amplitude
    spread = 2.0 * (ratio * _NORMAL_95 * material.repeatability[0] / 100.0) ** 2
    spread += ((now.half or 0.0) / first.amplitude) ** 2 + (ratio * (first.half or 0.0) / first.amplitude) ** 2
    return 100.0 * (ratio - 1.0), 100.0 * math.sqrt(spread)


def _turned(material: Material, first: Shown, now: Shown) -> tuple[float, float | None] | None:
    if first.quantity != now.quantity or first.phase_deg is None or now.phase_deg is None:
        return None
    moved = math.remainder(now.phase_deg - first.phase_deg, 360.0)
    if first.phase_half_deg is None and first.half is not None or now.phase_half_deg is None and now.half is not None:
        return moved, None  # one of the vectors is as small as its scatter
    parts = [first.phase_half_deg or 0.0, now.phase_half_deg or 0.0]
    parts += 2 * [_NORMAL_95 * material.repeatability[1]]
    return moved, math.hypot(*parts)


def sections(material: Material) -> Iterator[Section]:
    """The runs as a table, as polar plots, their phase against time, and those withdrawn."""
    yield Section("Runs", tuple(_runs(material)))
    if polars := tuple(_polars(material)):
        yield Section("Vectors of each point, all runs", (Pictures((polar_key(), *polars)),))
    if material.ribbons:
        yield Section("Phase against time", tuple(_ribbons(material)))
    if withdrawn := tuple(_withdrawn(material)):
        yield Section("Runs that were withdrawn", withdrawn)


def _runs(material: Material) -> Iterator[Block]:
    if not material.state.runs:
        yield Text("No run was recorded.", "doubt")
        return
    yield Text(" ".join(_reading(material)), "quiet")
    rows: list[Row] = []
    begins, names = by_point(material, material.first), labels(material)
    for run in material.state.runs:
        rows.append(Row(_about(material, run), band=True))
        for point, now in by_point(material, run).items():
            rows.append(_vector_row(material, run, names[point], now, begins.get(point)))
    yield Table(
        (
            Column("point", 0.22), Column("1x amplitude", 0.235, True), Column("phase lag", 0.11, True),
            Column("change", 0.13, True), Column("turned", 0.12, True), Column("overall", 0.085, True),
            Column("verdict", 0.1),
        ),
        tuple(rows),
    )  # fmt: skip


def _reading(material: Material) -> Iterator[str]:
    """How the table of runs is to be read."""
    yield "Once-per-rev vibration; ± is the 95 % interval within the run."
    if material.first is not None:
        percent, degrees = material.repeatability
        why = material.repeatability_assumed
        assumed = "as recorded" if why is None else f"assumed: {why}"
        yield f'Changes are against run {material.number_of(material.first)}, "{material.first.what.name}"; their intervals hold'
        yield "also what does not repeat after a stop and a restart:"
        yield f"{percent:.3g} % and {degrees:.3g}° from run to run, {assumed}."
    if any(v.overall is not None for r in material.state.runs for v in r.what.vectors):
        yield "Overall is the broadband rms level in the unit of the amplitude, an equivalent where that is a peak unit."


def _vector_row(material: Material, run: JobRun, point: str, now: Shown, first: Shown | None) -> Row:
    changed = turned = None
    if first is not None and material.first is not None and run is not material.first:
        changed = change(material, first, now)
        if run.epoch == material.first.epoch:
            turned = _turned(material, first, now)
    return Row((
        point, with_half(now.amplitude, now.half, now.unit) if now.half is not None else f"{figure(now.amplitude)} {now.unit}",
        "none" if now.phase_deg is None else angle(now.phase_deg, now.phase_half_deg),
        "" if changed is None else signed(*changed, " %"),
        "" if turned is None else signed(round(turned[0]), None if turned[1] is None else max(1.0, turned[1]), "°"),
        "" if now.overall is None else figure(now.overall), now.verdict,
    ))  # fmt: skip


def masses_words(material: Material, pieces: list[Piece]) -> str:
    """Pieces in a line."""
    own = material.units
    return listed(f"{p.plane} {own.amount(p.mass_g, 'g')} at {angle(p.angle_deg)}" for p in pieces)


def _about(material: Material, run: JobRun) -> tuple[str, ...]:
    """Title of a run and what there is to say of it above its vectors."""
    what = run.what
    head = [
        f"Run {material.number_of(run)}",
        what.name,
        *([] if what.purpose == what.name else [what.purpose]),
        speed(what.speed_rpm),
        moment(run.event.at),
    ]
    lines = [" · ".join([*head, run.event.by] if run.event.by else head)]
    lines.append(f"on the rotor: {masses_words(material, what.masses) or 'nothing beyond its initial state'}")
    units_of = {c.name: f" {c.unit}" for c in material.state.brief.conditions if c.unit}
    conditions = [
        f"{name} {value}" if isinstance(value, str) else f"{name} {figure(value)}{units_of.get(name, '')}"
        for name, value in what.conditions.items()
    ]
    conditions += (
        [] if what.minutes_since_start is None else [f"{figure(what.minutes_since_start)} min after the start"]
    )
    conditions += [] if what.revolutions is None else [f"{what.revolutions} revolutions"]
    lines += [f"conditions: {listed(conditions)}"] if conditions else []
    if not run.counts:
        lines.append(f"does not count: {listed(run.reasons) or 'no reason recorded'}")
    elif what.used_anyway:
        lines.append(
            f"used anyway, because: {what.used_anyway}; doubted: {listed(run.reasons) or 'no reason recorded'}"
        )
    elif run.reasons:
        lines.append(f"doubted: {listed(run.reasons)}")
    if run.epoch and (material.first is None or run.epoch != material.first.epoch):
        lines.append(
            "mark or sensors changed by an unknown turn before this run: phases cannot be held against the first run's"
        )
    elif any(run.turn_deg.values()):
        turned = listed(f"{point} {turn:+g}°" for point, turn in run.turn_deg.items() if turn)
        lines.append(f"phases turned to the first run's mark and sensors: {turned}")
    lines += [what.note] if what.note else []
    return tuple(lines)


def _polars(material: Material) -> Iterator[Picture]:
    every = [(r, by_point(material, r)) for r in material.state.runs]
    for point in points_of(material):
        shown_by_run = [(r, s) for r, there in every if (s := there.get(point)) is not None]
        unit = shown_by_run[0][1].unit
        dots = []
        for run, vector in shown_by_run:
            if vector.z is None or vector.unit != unit or run.epoch != shown_by_run[0][0].epoch:
                continue
            role = "first" if run is material.first else "last" if run is material.last else None
            role = role or ("trial" if run.what.purpose == "trial" else "other")
            dots.append(Dot(material.number_of(run), vector.z, role, vector.half))
        if dots:
            yield polar_picture(point, unit, dots, limit_of(material, point, unit))


def limit_of(material: Material, point: str, unit: str) -> float | None:
    """The agreed once-per-rev limit of a point, where it is in the unit shown."""
    for level in material.state.brief.limits:
        own, factor = material.units.vibration(level.unit)
        if level.point == point and own == unit:
            return factor * level.amplitude
    return None


def _ribbons(material: Material) -> Iterator[Block]:
    without: dict[str, list[str]] = {}
    for name, found in material.ribbons:
        if isinstance(found, str):
            without.setdefault(found, []).append(f'"{name}"')
            continue
        yield Text(f'Run "{name}": degrees from the mean.', "strong")
        yield Pictures(tuple(ribbon_picture(r) for r in found))
    for why, names in without.items():
        yield Text(f"Run{'s' if len(names) > 1 else ''} {', '.join(names)}: no phase ribbon, because {why}.")


def _withdrawn(material: Material) -> Iterator[Block]:
    by_id = {event.id: event for event in material.events}
    rows = []
    for entry in material.history:
        event = entry.event
        if event is None or entry.withdrawn_by is None or not isinstance(event.what, RunEvent):
            continue
        taken = by_id[entry.withdrawn_by]
        why = taken.what.why if isinstance(taken.what, Withdrawn) else ""
        unit, factor = material.units.vibration(event.what.unit)
        seen = listed(
            f"{v.point} {figure(factor * v.amplitude)} {unit}{'' if v.phase_deg is None else ' at ' + angle(v.phase_deg)}"
            for v in event.what.vectors
        )
        run = f"{event.what.name}\n{moment(event.at)}, entry {event.id}"
        rows.append(Row((run, seen, f"{why}\n{taken.by or 'nobody named'}, {moment(taken.at)}")))
    if rows:
        yield Table((Column("run", 0.3), Column("what it showed", 0.4), Column("withdrawn because", 0.3)), tuple(rows))
