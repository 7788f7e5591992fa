"""What may be wrong with a machine: causes ranked by what was measured and answered. It suggests; the person decides.

The rules are a table, `diagnosis_rules.toml` beside this file. Each cause begins with odds; each figure or word multiplies
them by the factor of the row that it falls into, so the logarithms add up: score = ln odds + Σ P(row)·ln factor. P is the
probability that the figure lies in the row, by the normal distribution that its 95 % interval stands for, so that what is
hardly known hardly counts. What was not measured adds nothing: it is not absent. Causes are judged each for itself, as
several may hold at once (a row of independent witnesses, any text on evidence, such as Good 1950, from memory).
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType

from stillshaft.dsp.candidates import Candidate
from stillshaft.dsp.content import Content
from stillshaft.solver.diagnosis_rules import CauseEntry, DiagnosisError, Quantity, RowRule, Rules, load_rules

LINE = "line frequency"  # as a list of candidates names it
MOVING = ("drifting", "following the speed", "beating", "walking", "wandering", "disturbed in a narrow band")
_LIKELY, _UNLIKELY = math.log(3.0), math.log(1.0 / 10.0)  # of the odds
_BEFORE, _JUST_ABOVE = math.log(10.0), 1e-9  # a cause that comes before others needs such odds
_BEHIND, _FAR_BEHIND = math.log(5.0), math.log(100.0)  # of the likeliest cause's odds
_CLOSE = math.log(3.0)  # odds of the first two causes, below which they are not told apart
_RIVALS = 4  # causes that the next check is to part
_LEAST_GAIN = 0.05
_SD_IN_HALF_WIDTH = 1.96
_WORTH_SAYING = 0.05  # of a factor's logarithm


@dataclass(frozen=True)
class Figure:
    """A measured value with its 95 % interval, in the unit of its quantity; `where` is the point, or empty."""

    value: float
    low: float
    high: float
    where: str = ""

    def inside(self, low: float, high: float) -> float:
        """Probability that the value lies from `low` up to `high`."""
        deviation = (self.high - self.low) / (2.0 * _SD_IN_HALF_WIDTH)
        if deviation <= 0.0:
            return float(low <= self.value < high)
        middle = 0.5 * (self.low + self.high)
        return _normal((high - middle) / deviation) - _normal((low - middle) / deviation)


@dataclass(frozen=True)
class Word:
    """An answer, or a verdict in one of the words that the rules know."""

    word: str
    where: str = ""


Evidence = Mapping[str, Figure | Word]


@dataclass(frozen=True)
class Reading:
    """What one quantity says of one cause: `points` are added to the logarithm of its odds, negative against it."""

    quantity: str
    text: str
    why: str
    source: str
    points: float


@dataclass(frozen=True)
class Cause:
    """A cause with the figures for and against it; `verdict` is likely, possible, unlikely, or not told.

    `score` is the natural logarithm of its odds; `kinds` are its own kinds, the likeliest first.
    """

    key: str
    name: str
    score: float
    verdict: str
    speaking_for: tuple[Reading, ...]
    against: tuple[Reading, ...]
    advice: str
    kinds: tuple[Cause, ...]


@dataclass(frozen=True)
class NextCheck:
    """What was not measured and would part the causes: `gain` is by how much the odds between them are expected to move.

    `quantity` is a key of the rules, `check` one of the inspection; `parts` are the causes' names; gain in natural
    logarithms.
    """

    quantity: str
    check: str
    how: str
    gain: float
    parts: tuple[str, ...]


@dataclass(frozen=True)
class Diagnosis:
    """Causes, the likeliest first; the next checks, the best first; and what to say beside them."""

    causes: tuple[Cause, ...]
    next_checks: tuple[NextCheck, ...]
    not_measured: tuple[str, ...]
    warnings: tuple[str, ...]


@dataclass(frozen=True)
class Suggestion:
    """What a spectrum looks like, with the figures for and against it and what to check next, if anything would tell.

    `point` is the one with the largest vibration; a figure from another one names it. Causes that the spectrum does not
    tell from each other stand together in `what`.
    """

    point: str
    what: str
    speaking_for: tuple[str, ...]
    against: tuple[str, ...]
    next_check: str | None


def diagnose(evidence: Evidence, rules: Rules | None = None) -> Diagnosis:
    """Rank the causes by the evidence; a key that is missing was not measured.

    Raises DiagnosisError for evidence that the rules do not know.
    """
    rules = rules or load_rules()
    _check(evidence, rules)
    candidates = [c for c in rules.causes if not _contradicted(c.needs, evidence)]
    readings = {c.key: _readings(c.key, evidence, rules) for c in candidates}
    scores = {c.key: math.log(c.odds) + sum(r.points for r in readings[c.key]) for c in candidates}
    highest = max(scores[c.key] for c in candidates if c.part_of is None)
    judged = {c.key: _judged(c, scores[c.key], readings[c.key], highest) for c in candidates}
    for c in candidates:
        if c.part_of is not None:
            parent = judged[c.part_of]
            kinds = sorted((*parent.kinds, judged[c.key]), key=lambda k: -k.score)
            judged[c.part_of] = replace(parent, kinds=tuple(kinds))
    place = {c.key: _place(c, scores, rules) for c in candidates}
    ranked = sorted((judged[c.key] for c in candidates if c.part_of is None), key=lambda c: -place[c.key])
    checks = _next_checks(ranked, evidence, rules)
    missing = tuple(
        k for k, q in rules.quantities.items() if k not in evidence and not _contradicted(q.needs, evidence)
    )
    return Diagnosis(tuple(ranked), checks, missing, _warnings(ranked, evidence, rules))


def _place(cause: CauseEntry, scores: Mapping[str, float], rules: Rules) -> float:
    """The score that a cause is ranked by: one that comes before others stands above them once it is likely itself."""
    score = scores[cause.key]
    if score < _BEFORE:
        return score
    over = [scores[k] for k in rules.before.get(cause.key, ()) if k in scores and k not in rules.before]
    return max([score, *(s + _JUST_ABOVE for s in over)])


def _check(evidence: Evidence, rules: Rules) -> None:
    for key, item in evidence.items():
        if key not in rules.words:
            raise DiagnosisError(f'"{key}": is no quantity of the rules; known are {", ".join(sorted(rules.words))}')
        words = rules.words[key]
        if isinstance(item, Word):
            if item.word not in words:
                raise DiagnosisError(f'{key}: "{item.word}": must be {" or ".join(words) or "a figure"}')
        elif words:
            raise DiagnosisError(f"{key}: is a figure, but must be {' or '.join(words)}")
        elif not (math.isfinite(item.value) and item.low <= item.value <= item.high):
            raise DiagnosisError(
                f"{key}: {item.value:g} between {item.low:g} and {item.high:g}: must be a finite figure in its interval"
            )


def _contradicted(facts: Mapping[str, Sequence[str]], evidence: Evidence) -> bool:
    """True where something is known to be otherwise; what is not known contradicts nothing."""
    known = ((evidence.get(key), wanted) for key, wanted in facts.items())
    return any(isinstance(item, Word) and item.word not in wanted for item, wanted in known)


def _holds(row: RowRule, evidence: Evidence) -> bool:
    """Whether the row's conditions let it count."""
    given = all(isinstance(i := evidence.get(k), Word) and i.word in wanted for k, wanted in row.given.items())
    barred = any(isinstance(i := evidence.get(k), Word) and i.word in words for k, words in row.unless.items())
    return given and not barred


def _readings(cause: str, evidence: Evidence, rules: Rules) -> list[Reading]:
    """What each quantity measured says of a cause: the row that weighs most speaks for all that the interval reaches."""
    found = []
    for key, item in evidence.items():
        parts = [
            (row, row.points[cause] * _share(item, row))
            for row in rules.rows.get(key, ())
            if cause in row.points and _holds(row, evidence)
        ]
        points = sum(p for _, p in parts)
        if abs(points) < _WORTH_SAYING:
            continue
        row = max(parts, key=lambda p: p[1] * math.copysign(1.0, points))[0]
        found.append(Reading(key, _text(rules.quantities[key], item), row.why, row.source, points))
    return found


def _share(item: Figure | Word, row: RowRule) -> float:
    if isinstance(item, Word):
        return float(item.word in row.words)
    return item.inside(row.low, row.high)


def _text(quantity: Quantity, item: Figure | Word) -> str:
    text = quantity.reads.format(word=item.word) if isinstance(item, Word) else quantity.reads.format(value=item.value)
    return f"{item.where}: {text}" if item.where else text


def _judged(cause: CauseEntry, score: float, readings: Sequence[Reading], highest: float) -> Cause:
    """Likely needs odds of its own, and not to stand far behind the likeliest one."""
    ordered = sorted(readings, key=lambda r: -abs(r.points))
    if not readings:
        verdict = "not told"
    elif score >= _LIKELY and (score >= highest - _BEHIND or cause.before):
        verdict = "likely"
    else:
        verdict = "unlikely" if score <= _UNLIKELY or score < highest - _FAR_BEHIND else "possible"
    return Cause(
        cause.key,
        cause.name,
        score,
        verdict,
        tuple(r for r in ordered if r.points > 0.0),
        tuple(r for r in ordered if r.points < 0.0),
        cause.advice,
        (),
    )


def _next_checks(ranked: Sequence[Cause], evidence: Evidence, rules: Rules) -> tuple[NextCheck, ...]:
    """What was not measured, by how far its outcome is expected to move the odds between the leading causes.

    An outcome is a row, or none of them; how often it comes if a cause holds goes with the row's factor for that cause.
    The gain of a quantity is the sum over pairs of the leading causes, weighted with how likely the two are, of the expected
    change of the logarithm of their odds against each other.
    """
    leading = ranked[:_RIVALS]
    weights = [1.0 / (1.0 + math.exp(-c.score)) for c in leading]
    phase_moves = _moves(evidence)
    found = []
    for key, quantity in rules.quantities.items():
        if key in evidence or _contradicted(quantity.needs, evidence):
            continue
        outcomes = [r.points for r in rules.rows[key] if _holds(r, evidence)] + [{}]
        pairs: list[tuple[float, str, str]] = []
        for (a, weight_a), (b, weight_b) in itertools.combinations(zip(leading, weights, strict=True), 2):
            changes = [o.get(a.key, 0.0) - o.get(b.key, 0.0) for o in outcomes]
            gain = 0.0
            for cause in (a, b):
                chance = [math.exp(o.get(cause.key, 0.0)) for o in outcomes]
                gain += 0.5 * sum(c * abs(d) for c, d in zip(chance, changes, strict=True)) / sum(chance)
            pairs.append((gain * weight_a * weight_b, a.name, b.name))
        whole = sum(p[0] for p in pairs)
        if whole < _LEAST_GAIN and not (quantity.sets_apart and phase_moves):
            continue
        parted = max(pairs)
        first = quantity.sets_apart and phase_moves
        found.append((not first, -whole, NextCheck(key, quantity.check, quantity.how, whole, parted[1:])))
    return tuple(check for *_, check in sorted(found, key=lambda f: f[:2]))


def _moves(evidence: Evidence) -> bool:
    steadiness = evidence.get("steadiness")
    return isinstance(steadiness, Word) and steadiness.word in MOVING


def _warnings(ranked: Sequence[Cause], evidence: Evidence, rules: Rules) -> tuple[str, ...]:
    said = []
    pulse = [key for key, q in rules.quantities.items() if q.sets_apart]
    if _moves(evidence) and any(key not in evidence for key in pulse):
        said.append("the phase moves and the pulse has not been looked at as a whole: rule the pulse out first")
    if not any(c.speaking_for or c.against for c in ranked):
        said.append("nothing was measured or answered yet: the order is only how common the causes are")
    elif len(ranked) > 1 and abs(ranked[0].score - ranked[1].score) < _CLOSE:
        said.append(
            f"{ranked[0].name} and {ranked[1].name} cannot be told apart by what was measured: see the next checks"
        )
    return tuple(said)


def merged(*parts: Evidence) -> Evidence:
    """All evidence together, read-only; of what was measured twice, the later one holds."""
    whole: dict[str, Figure | Word] = {}
    for part in parts:
        whole |= part
    return MappingProxyType(whole)


def answers(given: Mapping[str, str | None]) -> Evidence:
    """Evidence from answers and facts by key; None and empty ones are left out. Raises DiagnosisError."""
    evidence = {key: Word(word) for key, word in given.items() if word}
    _check(evidence, load_rules())
    return MappingProxyType(evidence)


def suggestions(content: Content, known: Sequence[Candidate] = ()) -> tuple[Suggestion, ...]:
    """What a spectrum alone suggests: causes that a figure speaks for, the likeliest first, and unbalance in any case.

    `known` are the neighbours, belts and the line that the content was described with.
    """
    from stillshaft.solver import evidence

    line = next((c for c in known if c.name == LINE), None)
    found = diagnose(evidence.from_content(content, line=line))
    point = evidence.worst_point(content).name
    alike: dict[tuple[tuple[str, ...], ...], list[Cause]] = {}
    for cause in found.causes:
        if cause.key == "unbalance" or (cause.speaking_for and cause.verdict != "unlikely"):
            texts = tuple(
                tuple(r.text.removeprefix(f"{point}: ") for r in readings)
                for readings in (cause.speaking_for, cause.against)
            )
            alike.setdefault(texts, []).append(cause)
    suggested = []
    for (speaking_for, against), causes in alike.items():
        first, *others = (c.name for c in causes)
        what = f"{first}; not told from it: {'; '.join(others)}" if others else first
        following = next((c.how for c in found.next_checks if {first, *others} & set(c.parts)), None)
        suggested.append(Suggestion(point, what, speaking_for, against, following))
    return tuple(suggested)


def _normal(x: float) -> float:
    return 0.5 * math.erfc(-x / math.sqrt(2.0))
