"""The table of rules by which causes are weighed, `diagnosis_rules.toml` beside this file: read and checked as a whole."""

from __future__ import annotations

import functools
import itertools
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType
from typing import Literal

import msgspec
from stillshaft.dsp import tables
from stillshaft.dsp.units import InputError

RULES = Path(__file__).with_name("diagnosis_rules.toml")


class DiagnosisError(InputError):
    """Evidence or rules that cannot be used: the message names the entry and says what would be right."""


_Facts = dict[str, list[str]]


class _Row(tables.Strict):
    why: str
    at_least: float = -math.inf
    below: float = math.inf
    words: list[str] = []
    strongly_for: list[str] = []
    weakly_for: list[str] = []
    weakly_against: list[str] = []
    strongly_against: list[str] = []
    given: _Facts = {}
    unless: _Facts = {}
    source: str | None = None


class Quantity(tables.Strict):
    """A [[quantity]] of the table; `words` where it is told in words."""

    key: str
    reads: str
    how: str
    check: str
    row: list[_Row]
    unit: str = ""
    words: list[str] = []
    needs: _Facts = {}
    sets_apart: bool = False


class CauseEntry(tables.Strict):
    """A [[cause]] of the table."""

    key: str
    name: str
    odds: float
    advice: str
    part_of: str | None = None
    needs: _Facts = {}
    before: list[str] = []


class _Fact(tables.Strict):
    key: str
    words: list[str]


class _File(tables.Strict):
    format: Literal[1]
    source: str
    strong: float
    weak: float
    cause: list[CauseEntry]
    quantity: list[Quantity]
    fact: list[_Fact] = msgspec.field(default_factory=list)
    group: dict[str, list[str]] = {}


@dataclass(frozen=True)
class RowRule:
    """A row with its effect on each cause in natural logarithms."""

    low: float
    high: float
    words: tuple[str, ...]
    points: Mapping[str, float]
    given: Mapping[str, list[str]]
    unless: Mapping[str, list[str]]
    why: str
    source: str


@dataclass(frozen=True)
class Rules:
    """The table of rules, checked: its rows and words by quantity or fact, and which causes come before which."""

    causes: tuple[CauseEntry, ...]
    quantities: Mapping[str, Quantity]
    rows: Mapping[str, tuple[RowRule, ...]]
    words: Mapping[str, tuple[str, ...]]
    before: Mapping[str, tuple[str, ...]]

    @property
    def checks(self) -> frozenset[str]:
        """Keys of the checks by which quantities are measured."""
        return frozenset(q.check for q in self.quantities.values())


@functools.cache
def load_rules(path: Path = RULES) -> Rules:
    """Read a table of rules. Raises DiagnosisError that names the file and the field."""
    try:
        return _rules(tables.checked(tables.read(path), _File))
    except tables.TableError as error:
        message = str(error)
        raise DiagnosisError(message if message.startswith(str(path)) else f"{path}: {message}") from None
    except DiagnosisError as error:
        raise DiagnosisError(f"{path}: {error}") from None


def _rules(file: _File) -> Rules:
    if not 1.0 < file.weak <= file.strong < math.inf:
        raise DiagnosisError(f"weak {file.weak:g}, strong {file.strong:g}: must be above 1, strong no less than weak")
    causes = {c.key for c in file.cause}
    words = {f.key: tuple(f.words) for f in file.fact} | {q.key: tuple(q.words) for q in file.quantity}
    if len(causes) < len(file.cause) or len(words) < len(file.fact) + len(file.quantity):
        raise DiagnosisError("cause, quantity, fact: a key is used twice; each needs its own")
    whole = {c.key for c in file.cause if c.part_of is None and not c.needs}
    if not whole:
        raise DiagnosisError("cause: there is none that every machine may have; add a [[cause]] without needs")
    for cause in file.cause:
        if not 0.0 < cause.odds < math.inf:
            raise DiagnosisError(f'cause "{cause.key}": odds {cause.odds:g} must be above 0')
        if cause.part_of is not None and cause.part_of not in whole:
            raise DiagnosisError(
                f'cause "{cause.key}": part_of "{cause.part_of}" is no cause that stands for itself and has no needs'
            )
        _known_facts(cause.needs, words, f'cause "{cause.key}"')
    strength = {
        "strongly_for": math.log(file.strong), "weakly_for": math.log(file.weak),
        "weakly_against": -math.log(file.weak), "strongly_against": -math.log(file.strong),
    }  # fmt: skip
    rows: dict[str, tuple[RowRule, ...]] = {}
    for quantity in file.quantity:
        _known_facts(quantity.needs, words, f'quantity "{quantity.key}"')
        _text_reads(quantity)
        found = []
        for number, row in enumerate(quantity.row, start=1):
            where = f'quantity "{quantity.key}", row {number}'
            effects = [
                (cause, size)
                for field, size in strength.items()
                for named in getattr(row, field)
                for cause in file.group.get(named, [named])
            ]
            points = dict(effects)
            if unknown := [c for c in points if c not in causes]:
                raise DiagnosisError(f'{where}: "{unknown[0]}" is no cause')
            if len(points) < len(effects):
                raise DiagnosisError(f"{where}: names a cause twice, by itself or in a group")
            if unknown := [w for w in row.words if w not in quantity.words]:
                raise DiagnosisError(f'{where}: "{unknown[0]}" is none of the words of this quantity')
            if bool(row.words) != bool(quantity.words) or not row.at_least < row.below:
                raise DiagnosisError(f"{where}: give words where the quantity has words, else a range")
            for facts in (row.given, row.unless):
                _known_facts(facts, words, where)
            found.append(
                RowRule(
                    row.at_least, row.below, tuple(row.words), MappingProxyType(points), row.given, row.unless, row.why,
                    row.source or file.source,
                )
            )  # fmt: skip
        for a, b in itertools.combinations(found, 2):
            same_place = a.given == b.given and not set(a.words).isdisjoint(b.words)
            if same_place or (not a.words and a.given == b.given and max(a.low, b.low) < min(a.high, b.high)):
                raise DiagnosisError(f'quantity "{quantity.key}": two rows overlap; a figure must lie in one')
        rows[quantity.key] = tuple(found)
    quantities = {q.key: q for q in file.quantity}
    before = {c.key: _before(c, file) for c in file.cause if c.before}
    return Rules(
        tuple(file.cause), MappingProxyType(quantities), MappingProxyType(rows), MappingProxyType(words),
        MappingProxyType(before),
    )  # fmt: skip


def _before(cause: CauseEntry, file: _File) -> tuple[str, ...]:
    causes = [c.key for c in file.cause]
    named = [k for name in cause.before for k in (causes if name == "all" else file.group.get(name, [name]))]
    if unknown := [k for k in named if k not in causes]:
        raise DiagnosisError(f'cause "{cause.key}": before "{unknown[0]}", which is no cause')
    return tuple(named)


def _text_reads(quantity: Quantity) -> None:
    if not tables.only_in_braces(quantity.reads, ["word"] if quantity.words else ["value"]):
        wanted = "{word}" if quantity.words else "{value:.1f}"
        raise DiagnosisError(f'quantity "{quantity.key}": reads "{quantity.reads}": only {wanted} may stand in braces')


def _known_facts(facts: _Facts, words: Mapping[str, Sequence[str]], where: str) -> None:
    for key, wanted in facts.items():
        if any(word not in words.get(key, ()) for word in wanted):
            raise DiagnosisError(f"{where}: {key} = {', '.join(wanted)}: no fact or quantity has such words")
