"""What hands and eyes found, as evidence of the record, and how each check of the inspection stands. No Qt here."""

from __future__ import annotations

import math
import re
import textwrap
from collections.abc import Sequence

from stillshaft.dsp.units import InputError
from stillshaft.solver.diagnosis import Diagnosis, Figure, Word
from stillshaft.solver.diagnosis_rules import Quantity, load_rules
from stillshaft.solver.events import Event, Measured
from stillshaft.solver.inspection import Check
from stillshaft.solver.state import JobState
from stillshaft.ui import job_checks
from stillshaft.ui.desktop.inspect_list import Row
from stillshaft.ui.desktop.inspect_measure import BY_CHECK, newest
from stillshaft.ui.desktop.stages import State
from stillshaft.ui.job_checks import Checked

DIAGNOSIS = "diagnosis"  # key of its row
OUTCOMES = ("fine", "needs attention", "not done")
ASKED = ("began", "last_work", "process")  # of the interview, kept in the brief
_BY_HAND = ("runout", "pulley_runout")  # figures that are read off a gauge
_MEASURED = ("steadiness",)  # words that only a measurement gives
_LOOKED_AT = "looked at: "
_MOST_NAMED = 2  # causes in a row
_LONGEST_WORD = 90  # letters of a reason, in a row
_ASSUMED = 0.1  # of a figure that was given without what it is known to


class AnswerError(InputError):
    """An answer that cannot be read: the message says what would be right."""


def by_hand(check: Check, state: JobState) -> tuple[Quantity, ...]:
    """What a check tells that nothing measures here: told in words, or read off a gauge."""
    quantities = load_rules().quantities
    drive = state.brief.drive.kind
    return tuple(
        q
        for key in check.feeds
        if (q := quantities.get(key)) is not None
        and ((q.words and key not in _MEASURED) or key in _BY_HAND)
        and not (drive is not None and "drive" in q.needs and drive not in q.needs["drive"])
    )


def question(quantity: Quantity) -> str:
    """What is asked for a quantity: the beginning of how it reads."""
    text = re.split(r"\{", quantity.reads)[0].strip()
    unit = f", {quantity.unit}" if quantity.unit else ""
    return f"{text[:1].upper()}{text[1:]} …{unit}"


def answer_events(state: JobState, key: str) -> tuple[Event[Measured], ...]:
    """Entries that answer for a quantity, the oldest first."""
    return tuple(
        event
        for event in state.measured
        if event.what.what.startswith(_LOOKED_AT) and key in (event.what.figures.get("evidence") or {})
    )


def answer(state: JobState, key: str) -> str:
    """The answer of the record as text; empty where there is none."""
    if key in ASKED:
        return state.brief.interview.get(key, "")
    events = answer_events(state, key)
    if not events:
        return ""
    item = job_checks.unpacked(events[-1].what.figures["evidence"]).get(key)
    if isinstance(item, Figure):
        return f"{item.value:g} ± {0.5 * (item.high - item.low):g}"
    return "" if item is None else item.word


def answered(check: Check, quantity: Quantity, text: str) -> Checked:
    """An answer as the session records it. Raises AnswerError."""
    item = Word(text) if quantity.words else _figure(text, quantity.unit)
    return Checked(f"{_LOOKED_AT}{check.title}", {"evidence": job_checks.packed({quantity.key: item})}, True, ())


def _figure(text: str, unit: str) -> Figure:
    # nothing is given back once it is taken (++, *+, ?+): a long text would else be tried in all ways
    number = r"(\d++(?:\.\d++)?+)"
    found = re.fullmatch(rf"\s*+{number}\s*+(?:±|\+/?-)?+\s*+{number}?+\s*+(?:{re.escape(unit)}|um)?+\s*+", text)
    if not found or not all(math.isfinite(float(each)) for each in found.groups("0")):
        raise AnswerError(f'"{text}": write a figure and how well it is known, such as "40 ± 5"')
    value = float(found[1])
    half = float(found[2]) if found[2] else _ASSUMED * value
    return Figure(value, max(0.0, value - half), value + half)


def evidence_for(check: Check, state: JobState) -> int | None:
    """Number of the newest entry that a check rests on; None where nothing was measured or answered."""
    found = [e for what in BY_CHECK.get(check.key, ()) if (e := newest(state, what)) is not None and _tells(e, check)]
    found += [events[-1] for key in check.feeds if (events := answer_events(state, key))]
    return max((event.id for event in found), default=None)


def _tells(event: Event[Measured], check: Check) -> bool:
    """Whether a measured check says anything of what this check is about."""
    evidence = event.what.figures.get("evidence")
    return not evidence or any(key in evidence for key in check.feeds)


def rows(checks: Sequence[Check], state: JobState, diagnosis: Diagnosis) -> list[Row]:
    """A row for the diagnosis, then one for each check."""
    likely = [c for c in diagnosis.causes if c.verdict == "likely"]
    told = any(c.speaking_for or c.against for c in diagnosis.causes)
    if not told:
        first = Row(DIAGNOSIS, "What may be wrong", State.EMPTY, "nothing measured yet")
    else:
        other = any(c.key != "unbalance" for c in likely)
        word = f"likely: {'; '.join(c.name for c in likely[:_MOST_NAMED])}" if likely else "several causes possible"
        first = Row(DIAGNOSIS, "What may be wrong", State.ATTENTION if other else State.UNDER_WAY, word)
    return [first, *(row(check, state) for check in checks)]


def row(check: Check, state: JobState) -> Row:
    """How a check stands."""
    title = f"{check.title[:1].upper()}{check.title[1:]}"
    event = state.checks.get(check.key)
    if event is None:
        looked = evidence_for(check, state) is not None
        word = "measured, no outcome yet" if looked else "not looked at"
        return Row(check.key, title, State.UNDER_WAY if looked else State.EMPTY, word)
    outcome = event.what.outcome
    state_of = {"fine": State.DONE, "needs attention": State.ATTENTION, "not done": State.EMPTY}[outcome]
    why = f": {textwrap.shorten(event.what.note, _LONGEST_WORD, placeholder=' …')}" if outcome == "not done" else ""
    return Row(check.key, title, state_of, outcome, why)


def check_of(quantity: str) -> str | None:
    """The check that a quantity of the diagnosis comes from; None for facts of the brief."""
    found = load_rules().quantities.get(quantity)
    return None if found is None else found.check
