"""Sections of a report on the outcome: before and after, verdicts with their limits, what was not done, acceptance."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from stillshaft.dsp.units import shown
from stillshaft.solver import inspection
from stillshaft.solver.events import Event, Verdict
from stillshaft.ui.report_layout import Block, Column, Facts, Pictures, Row, Section, Signature, Table, Text
from stillshaft.ui.report_machine import given, titles_of_checks
from stillshaft.ui.report_material import Material, number_in, tables_in, text_in, texts_in
from stillshaft.ui.report_pictures import Bar, bars_pictures
from stillshaft.ui.report_runs import by_point, change, limit_of, masses_words
from stillshaft.ui.report_words import figure, listed, moment, signed, with_half

EQUIVALENT = (
    "Equivalent residual unbalance from 1x, bow, misalignment and coupling included: never the result of a balancing machine. "
    "The edition of a standard that is in force, the machine's maker and local rules decide."
)
NOT_ABOUT_SAFETY = (
    "This report is about vibration and balance. It does not say that a machine is safe: guards, fixings, strength and "
    "permission to run are for the owner, local rules and licensed or competent persons."
)

_UNSAID = "nothing says what was done about it"
_LONGEST_NOTE = 1000  # letters of one: a line of the page, not a page


def summary(material: Material) -> str:
    """The outcome in a sentence or two, as it stands in the record."""
    state = material.state
    said = []
    if state.verdicts:
        newest = state.verdicts[-1].what
        said.append(f"Goal: {newest.verdict} ({newest.basis or 'basis not recorded'}).")
    else:
        said.append("No verdict was recorded.")
    first, last = by_point(material, material.first), by_point(material, material.last)
    changes = {p: c for p in last if p in first and (c := change(material, first[p], last[p])) is not None}
    if changes:
        worst = max(changes, key=lambda p: changes[p][0])
        said.append(
            f"Once-per-rev vibration changed by {signed(*changes[worst], ' %')} at the point that gained least, {worst}."
        )
    elif material.first is not None:
        said.append("There is no run after balancing to hold against the first.")
    return " ".join(said)


def opening(material: Material) -> Section:
    """The first section: verdict and before and after."""
    blocks: list[Block] = [Text(summary(material), "lead")]
    for event in material.state.verdicts[-1:]:
        blocks.append(Text(_said(event)))
    blocks += _before_and_after(material)
    blocks.append(Text(NOT_ABOUT_SAFETY, "doubt"))
    return Section("Outcome", tuple(blocks))


def _said(event: Event[Verdict]) -> str:
    what = event.what
    said = [f"Recorded by {event.by or 'nobody named'}, {moment(event.at)}"]
    said += [f"accepted by {what.accepted_by}"] if what.accepted_by else []
    said += [f"refused by {what.refused_by}"] if what.refused_by else []
    said += [what.note] if what.note else []
    return "; ".join(said) + "."


def _before_and_after(material: Material) -> Iterator[Block]:
    first, last = by_point(material, material.first), by_point(material, material.last)
    if not first or material.first is None:
        yield Text("No run counts: there is nothing to hold a later one against.")
        return
    bars = []
    for point, before in first.items():
        after = last.get(point)
        after = after if after is not None and after.quantity == before.quantity else None
        bars.append(
            Bar(
                point, (before.amplitude, before.half), None if after is None else (after.amplitude, after.half),
                limit_of(material, point, before.unit), before.unit,
            )
        )  # fmt: skip
    names = f'"{material.first.what.name}"'
    names += "" if material.last is None else f' and "{material.last.what.name}"'
    yield Text(f"Once-per-rev vibration of each point in {names}, with its 95 % interval within the run:", "quiet")
    yield Pictures(bars_pictures(bars))
    if material.last is not None:
        brief, one, two = material.state.brief, material.first.what, material.last.what
        tolerances = {c.name: c.tolerance for c in brief.conditions}
        alike = inspection.likeness(one.speed_rpm, two.speed_rpm, one.conditions, two.conditions, tolerances)
        if alike.reasons:
            yield Text(f"First and last run, {alike.verdict}: {listed(alike.reasons)}.", "doubt")
    worse = [
        p
        for p in last
        if p in first and last[p].quantity == first[p].quantity and last[p].amplitude > first[p].amplitude
    ]
    if worse:
        yield Text(f"Larger than before: {', '.join(worse)}.", "doubt")
    if fresh := [p for p in last if p not in first]:
        yield Text(f"Not measured in the first run: {', '.join(fresh)}.")


def standing(material: Material) -> Section:
    """Residual unbalance and vibration against the limits."""
    return Section("Residual unbalance and limits", tuple(_standing(material)))


def _standing(material: Material) -> Iterator[Block]:
    yield Text(EQUIVALENT)
    figures = material.standing
    if figures is None:
        yield Text(f"It cannot be told: {material.stands_by}.")
        return
    yield Text(f"Figures: {material.stands_by}.", "quiet")
    own = material.units
    unbalance = own.unit("g*mm")
    e_per, u_per = number_in(figures, "e_per_um"), number_in(figures, "u_per_gmm")
    facts = given(
        [
            ("balance grade", "" if text_in(figures, "grade") == "none" else text_in(figures, "grade")),
            ("permissible, whole rotor", None if u_per is None else own.amount(u_per, "g*mm")),
            ("permissible eccentricity", None if e_per is None else f"{figure(e_per)} µm"),
        ]
    )
    if facts:
        yield Facts(facts)
    planes = tables_in(figures, "planes")
    if planes:
        yield Table(
            (
                Column("tolerance plane", 0.3), Column(f"permissible, {unbalance}", 0.2, True),
                Column(f"residual, {unbalance}", 0.22, True), Column("within, probability", 0.13, True), Column("verdict", 0.15),
            ),
            tuple(_plane_row(material, p) for p in planes),
        )  # fmt: skip
    vibration = tables_in(figures, "vibration")
    if vibration:
        yield Text("Vibration of the last run, in the unit that the limit names:", "quiet")
        yield Table(
            (
                Column("point", 0.24), Column("last run", 0.16, True), Column("limit", 0.1, True), Column("zone", 0.07),
                Column("verdict", 0.13), Column("limit by", 0.3),
            ),
            tuple(_vibration_row(v) for v in vibration),
        )  # fmt: skip
    for reason in texts_in(figures, "reasons"):
        yield Text(_of_the_job(reason))
    if sources := texts_in(figures, "sources"):
        yield Text(f"Sources of the limits: {listed(sources)}.", "quiet")


def _of_the_job(text: str) -> str:
    """What the solver says of its runs file, said of a job."""
    return (
        text.replace("the runs file's own", "the brief's own")
        .replace("runs file, 1x", "agreed in the brief, 1x")
        .replace(": job: ", ": ")
    )


def _plane_row(material: Material, plane: dict[str, Any]) -> Row:
    own = material.units
    permissible, residual = number_in(plane, "permissible_gmm"), number_in(plane, "residual_gmm")
    within = number_in(plane, "probability_within")
    half = number_in(plane, "residual_ci95")
    bare = f" {own.unit('g*mm')}"
    return Row((
        text_in(plane, "plane"), "none" if permissible is None else own.amount(permissible, "g*mm").removesuffix(bare),
        "cannot be told" if residual is None else own.amount(residual, "g*mm", half, told=True).removesuffix(bare),
        "" if within is None else _percent(within),
        text_in(plane, "verdict"),
    ))  # fmt: skip


def _percent(probability: float) -> str:
    if 0.01 <= probability <= 0.99:
        return f"{100.0 * probability:.0f} %"
    return "above 99 %" if probability > 0.5 else "below 1 %"


def _vibration_row(row: dict[str, Any]) -> Row:
    """In the unit that the limit is in: limits are not converted."""
    value, limit = number_in(row, "value"), number_in(row, "limit")
    return Row((
        text_in(row, "point"), "?" if value is None else with_half(value, number_in(row, "ci95")),
        "?" if limit is None else figure(limit), text_in(row, "zone"), text_in(row, "verdict"),
        _of_the_job(text_in(row, "source")),
    ))  # fmt: skip


def not_done(material: Material) -> Section:
    """What was not done, so that nobody takes it for done."""
    items = tuple(Row((text,)) for text in missing(material))
    blocks: tuple[Block, ...] = (
        (Table((Column("not done, or not recorded", 1.0),), items),)
        if items
        else (Text("Nothing that this program asks for."),)
    )
    return Section("What was not done", blocks)


def missing(material: Material) -> Iterator[str]:
    """What the job does not hold, one line each."""
    state = material.state
    titles = titles_of_checks(state.brief)
    for item, event in state.checks.items():
        title = titles.get(item, shown(item))
        if event.what.outcome == "not done":
            yield f"Check {title}: not done because {shown(event.what.note, _LONGEST_NOTE)}"
        elif event.what.outcome == "needs attention":
            yield f"Check {title}: needs attention; {shown(event.what.note or _UNSAID, _LONGEST_NOTE)}"
    if unasked := [title for key, title in titles.items() if key not in state.checks]:
        yield f"Checks without an outcome: {', '.join(unasked)}"
    counting = [r for r in state.runs if r.counts]
    if state.hookup is None:
        yield "Hook-up: not recorded"
    if material.first is None:
        yield "Initial run: none counts"
    elif not any(r.what.purpose == "repeat" for r in counting):
        yield "Initial run: not repeated after a stop and a restart; what repeats is assumed"
    if material.last is None:
        yield "Run after balancing: none counts"
    if not state.plans:
        yield "Solution: none recorded"
    if not state.brief.limits and state.brief.goal.grade is None and state.brief.goal.table is None:
        yield "Goal: neither a limit nor a grade was agreed"
    put = {e.id: e.what for e in state.masses}
    if left := [on.piece for on in state.on_rotor if on.of in put and put[on.of].purpose == "trial"]:
        yield f"Trial masses: still on the rotor: {masses_words(material, left)}"
    pictured = {photo.what.about for photo in state.photos}
    if bare := sorted(
        {on.of for on in state.on_rotor if on.of in put and not put[on.of].photos and on.of not in pictured}
    ):
        yield f"Photo of the pieces: none with entry {', '.join(map(str, bare))}"
    if unheld := [r.what.name for r in state.runs if r.what.recording is None]:
        yield f"Recording: none of the runs {', '.join(unheld)}"
    if state.runs and not state.cautions:
        yield "Cautions: none was acknowledged"
    if not state.verdicts:
        yield "Verdict: none recorded"
    elif not (state.verdicts[-1].what.accepted_by or state.verdicts[-1].what.refused_by):
        yield "Acceptance: neither accepted nor refused"
    if not state.closed:
        yield "Close-out: the job is not closed"


def acceptance(material: Material) -> Section:
    """Basis, name and place for a signature, or the refusal."""
    state = material.state
    newest = state.verdicts[-1] if state.verdicts else None
    goal = state.brief.goal
    basis = [
        newest.what.basis if newest is not None else "",
        goal.basis or "",
        goal.grade or "",
        goal.table or "",
        goal.note or "",
    ]
    blocks: list[Block] = [
        Facts(
            given(
                [
                    ("owner", state.brief.machine.owner or "not recorded"),
                    ("accepted on the basis of", ", ".join(dict.fromkeys(b for b in basis if b)) or "not recorded"),
                    ("verdict", newest.what.verdict if newest is not None else "none recorded"),
                    ("accepted by", newest and newest.what.accepted_by),
                    ("refused by", newest and newest.what.refused_by),
                    ("remarks", newest and newest.what.note),
                ]
            )
        )
    ]
    if newest is not None and newest.what.refused_by:
        blocks.append(
            Text(f"Refused by {newest.what.refused_by}. {newest.what.note or 'No reason was recorded.'}", "strong")
        )
        blocks.append(Signature(("refused by, name", "place and date", "signature")))
    else:
        name = newest.what.accepted_by if newest is not None else None
        blocks.append(
            Signature((f"for the owner: {name}" if name else "for the owner, name", "place and date", "signature"))
        )
    blocks.append(Signature(("balanced by, name", "signature")))
    blocks.append(Text("To accept the balance is not to say that the machine is safe to run.", "quiet"))
    return Section("Acceptance", tuple(blocks), together=True)
