"""Sections of a report on the record: decisions, cautions, evidence, files with their hashes, who and when."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from stillshaft.solver.events import Event, files_of
from stillshaft.ui.report_layout import Block, Column, Facts, Pictures, Row, Section, Table, Text
from stillshaft.ui.report_machine import measured_words
from stillshaft.ui.report_material import Material, number_in, tables_in, text_in, texts_in
from stillshaft.ui.report_photos import picture
from stillshaft.ui.report_words import figure, listed, moment


def sections(material: Material) -> Iterator[Section]:
    """Diagnosis and other evidence, decisions, changes of reference, cautions and starts, files, the record itself."""
    state = material.state
    if evidence := tuple(_evidence(material)):
        yield Section("Diagnosis and evidence", evidence)
    yield Section("Decisions", tuple(_decisions(material)))
    if state.references:
        yield Section("Changes of mark and sensors", (_references(material),))
    yield Section("Cautions and starts", tuple(_cautions(material)))
    if material.photos:
        yield Section("Photos", tuple(_photos(material)))
    yield Section("Recordings and other files", tuple(_files(material)))
    yield Section("Who and when", tuple(_people(material)))


def _by(event: Event[Any]) -> str:
    return f"{event.by or 'nobody named'}, {moment(event.at)}"


def _evidence(material: Material) -> Iterator[Block]:
    rows = []
    for event in material.state.measured:
        if "diagnosis" in event.what.what.lower():
            yield from _diagnosis(event.what.figures, f"Diagnosis, entry {event.id}, {_by(event)}")
        else:
            recording = f"\n{event.what.recording.path}" if event.what.recording else ""
            rows.append(Row((str(event.id), measured_words(event.what) + recording, _by(event))))
    if rows:
        yield Table((Column("entry", 0.08, True), Column("what was measured", 0.62), Column("by", 0.3)), tuple(rows))


def _diagnosis(figures: dict[str, object], title: str) -> Iterator[Block]:
    """Causes with figures for and against, as far as they were recorded."""
    yield Text(f"{title}. It suggests; the person decides.", "strong")
    rows = []
    for cause in tables_in(figures, "causes"):
        speaking = []
        for key, word in (("speaking_for", "for"), ("against", "against")):
            told = [text_in(r, "text") or text_in(r, "why") for r in tables_in(cause, key)]
            told = told or [t for t in texts_in(cause, key) if not t.startswith("{")]
            speaking += [f"{word}: {listed(told)}"] if told else []
        score = number_in(cause, "score")
        verdict = text_in(cause, "verdict") or ("" if score is None else figure(score))
        rows.append(Row((text_in(cause, "name") or text_in(cause, "key"), verdict, "\n".join(speaking))))
    if rows:
        yield Table((Column("cause", 0.28), Column("verdict", 0.17), Column("figures", 0.55)), tuple(rows))
    for key, word in (("not_measured", "Not measured"), ("warnings", "Warnings")):
        if said := texts_in(figures, key):
            yield Text(f"{word}: {listed(said)}.", "quiet")
    if text := text_in(figures, "summary"):
        yield Text(text)


def _decisions(material: Material) -> Iterator[Block]:
    decisions = material.state.decisions
    if not decisions:
        yield Text("No decision was recorded.")
        return
    yield Table(
        (Column("decision", 0.36), Column("because", 0.34), Column("by", 0.3)),
        tuple(
            Row((
                e.what.text + ("" if e.what.about is None else f" (about entry {e.what.about})"),
                e.what.why or "no reason recorded", _by(e),
            ))
            for e in decisions
        ),
    )  # fmt: skip


def _references(material: Material) -> Table:
    rows = []
    for event in material.state.references:
        change = event.what
        turn = (
            "unknown: runs before and after are kept apart"
            if change.turn_deg is None
            else f"phases {change.turn_deg:+g}°"
        )
        if change.angle_turn_deg:
            turn += f", rotor angles {change.angle_turn_deg:+g}°"
        what = change.what + ("" if change.of is None else f" (of entry {change.of})")
        points = ", ".join(change.points) or "all"
        rows.append(Row((f"{what}\n{change.why}".strip(), points, turn, _by(event))))
    columns = (Column("what changed", 0.32), Column("points", 0.18), Column("turn", 0.22), Column("by", 0.28))
    return Table(columns, tuple(rows))


def _cautions(material: Material) -> Iterator[Block]:
    state = material.state
    if state.cautions:
        texts: dict[tuple[str, ...], list[Event[Any]]] = {}
        for event in state.cautions:
            texts.setdefault(tuple(event.what.texts), []).append(event)
        yield Table(
            (Column("caution shown", 0.5), Column("acknowledged by, when", 0.5)),
            tuple(
                Row(("\n".join(said), "\n".join(f"{e.what.who}, {moment(e.at)}" for e in shown)))
                for said, shown in texts.items()
            ),
        )
    else:
        yield Text("No caution was acknowledged.", "doubt")
    for alarm in state.alarms:
        unit, factor = material.units.vibration(alarm.what.unit)
        seen, level = (figure(factor * value) for value in (alarm.what.amplitude, alarm.what.level))
        note = f"; {alarm.what.note}" if alarm.what.note else ""
        where = f"{alarm.what.point}: {seen}, level {level} {unit}"
        yield Text(f"The level to stop at was crossed at {where}; {_by(alarm)}{note}.", "doubt")
    starts = state.starts
    allowed = state.brief.starts.allowed
    of = "" if allowed is None else f" of {allowed} allowed"
    said = [f"{moment(e.at)}{' ' + e.what.temperature if e.what.temperature else ''}" for e in starts]
    yield Text(f"Starts counted: {len(starts)}{of}{': ' + listed(said) if said else ''}.")


def _files(material: Material) -> Iterator[Block]:
    rows, good = [], True
    names = {r.id: f"run {material.number_of(r)}, {r.what.name}" for r in material.state.runs}
    for event in material.events:
        for file in files_of(event.what):
            doubts = material.doubts.get(event.id, ())
            good = good and not doubts
            about = names.get(event.id) or f"{event.kind}, entry {event.id}"
            rows.append(Row((file.path, about, file.sha256, "; ".join(doubts) or "as recorded")))
    if not rows:
        yield Text("No recording, photo or report is named in the record.")
        return
    if good:
        yield Text("Every file below was read for this report and is as it was recorded (SHA-256).")
    else:
        yield Text(
            "Files below are missing or not as they were recorded: what was worked out from them cannot be checked.",
            "doubt",
        )
    yield Table(
        (Column("file", 0.2), Column("of", 0.18), Column("SHA-256 when recorded", 0.4), Column("now", 0.22)), tuple(rows),
    )  # fmt: skip


def _photos(material: Material) -> Iterator[Block]:
    """The photos themselves; of those that cannot be shown, why."""
    if pictures := tuple(picture(photo) for photo in material.photos if not photo.trouble):
        yield Pictures(pictures)
    for photo in material.photos:
        if photo.trouble:
            yield Text(f"Photo of {photo.of}: {photo.trouble}.", "quiet")


def _people(material: Material) -> Iterator[Block]:
    people: dict[str, list[Event[Any]]] = {}
    for event in material.events:
        people.setdefault(event.by, []).append(event)
    if people:
        yield Table(
            (Column("who", 0.4), Column("entries", 0.12, True), Column("first", 0.24), Column("last", 0.24)),
            tuple(
                Row((who or "nobody named", str(len(his)), moment(his[0].at), moment(his[-1].at)))
                for who, his in people.items()
            ),
        )
    state = material.state
    yield Facts((
        ("job", f"{state.name or 'without a name'}, folder {material.folder}"),
        ("begun", f"{moment(state.started_at)}, program {state.program}" if state.started_at else "its beginning cannot be read"),
        ("this report", f"{moment(material.made_at)}, program {material.program}"),
        ("state", "closed" if state.closed else "not closed"),
        ("record", f"{len(material.history)} line{'s' if len(material.history) != 1 else ''}, format 1"),
    ))  # fmt: skip
    for problem in material.problems:
        yield Text(f"The record: {problem}", "doubt")
    rows = []
    by_id = {e.id: e for e in material.events}
    for entry in material.history:
        if entry.event is None or entry.withdrawn_by is None or entry.event.kind in ("run", "withdrawn"):
            continue
        taken = by_id[entry.withdrawn_by]
        rows.append(Row((str(entry.event.id), entry.event.kind, f"{text_in(taken.fields, 'why')}", _by(taken))))
    if rows:
        yield Text("Other entries that were withdrawn and count no longer:", "strong")
        yield Table(
            (Column("entry", 0.08, True), Column("kind", 0.17), Column("because", 0.45), Column("by", 0.3)), tuple(rows)
        )
