"""Why figures and warnings are what they are: texts of a table, with the figures of the rules taken from the code. No Qt here."""

from __future__ import annotations

import functools
import importlib
import re
import string
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

import msgspec
from stillshaft.dsp import tables
from stillshaft.dsp.units import InputError

TABLE = Path(__file__).with_name("why.toml")
_DIGITS = re.compile(r"\b[12]x\b|\b95 %|\b(?:0|90|180|360)°")  # names of what is meant, not figures that are chosen
StageName = Literal["Brief", "Inspect", "Hook-up", "Runs", "Masses", "Close-out"]


class WhyError(InputError):
    """A table of texts that cannot be used: the message names the entry and says what would be right."""


class _Figure(tables.Strict):
    of: str
    times: float = 1.0


class _Page(tables.Strict):
    stage: StageName
    sentence: str


class _Text(tables.Strict):
    key: str
    title: str
    plain: str
    rule: str
    source: str
    under: str | None = None
    says: list[str] = []


class _File(tables.Strict):
    format: Literal[1]
    page: list[_Page]
    text: list[_Text]
    figure: dict[str, _Figure] = msgspec.field(default_factory=dict)


@dataclass(frozen=True)
class Why:
    """A text with its figures filled in."""

    key: str
    title: str
    plain: str
    rule: str
    source: str


@dataclass(frozen=True)
class Texts:
    """All texts by key; `figures` says where each figure is found, `pages` what each page is for."""

    pages: Mapping[str, str]
    texts: Mapping[str, _Text]
    figures: Mapping[str, _Figure]

    def topic(self, key: str, shown: str = "") -> str:
        """Key of the text that explains what is `shown`: one under `key` whose words it has, else `key` itself."""
        words = shown.casefold()
        for text in self.texts.values():
            if text.under == key and any(said.casefold() in words for said in text.says):
                return text.key
        return key

    def why(self, key: str) -> Why:
        """The text of a key. Raises WhyError for a key that there is not, or a figure that the code has not."""
        text = self.texts.get(key)
        if text is None:
            raise WhyError(f'"{key}": there is no such text; keys are in {TABLE.name}')
        plain, rule = (part.format_map({n: self.figure(n) for n in _named(part)}) for part in (text.plain, text.rule))
        return Why(key, text.title, plain, rule, text.source)

    def figure(self, name: str) -> str:
        """A figure as the program has it now. Raises WhyError where it has none."""
        found = self.figures[name]
        value = _value(found.of, name)
        if isinstance(value, int | float):
            return f"{found.times * value:.10g}"
        percent, _, angle = str(value).partition(" % ")
        return f"{percent} % and {angle.replace(' deg', '°')}"


def _value(place: str, name: str) -> Any:
    """What stands at "module:name", where parts of the name may be called without arguments."""
    module, _, path = place.partition(":")
    try:
        value: Any = importlib.import_module(f"stillshaft.{module}")
        for part in path.split("."):
            value = getattr(value, part.removesuffix("()"))
            value = value() if part.endswith("()") else value
    except (ImportError, AttributeError):
        raise WhyError(f'figure "{name}": the code has no {place}; name a constant as "module:NAME"') from None
    return value


def _named(text: str) -> list[str]:
    """Names of the figures in a text. Raises ValueError for braces that do not fit."""
    return [name for _, name, _, _ in string.Formatter().parse(text) if name is not None]


@functools.cache
def load(path: Path = TABLE) -> Texts:
    """Read the table. Raises WhyError that names the file and the entry."""
    try:
        file = tables.checked(tables.read(path), _File)
        _check(file)
    except ValueError as error:
        prefix = "" if str(error).startswith(str(path)) else f"{path}: "
        raise WhyError(f"{prefix}{error}") from None
    pages: dict[str, str] = {page.stage: page.sentence for page in file.page}
    return Texts(pages, {text.key: text for text in file.text}, file.figure)


def _check(file: _File) -> None:
    keys, used = [text.key for text in file.text], set()
    for text in file.text:
        where = f'text "{text.key}"'
        if keys.count(text.key) > 1:
            raise WhyError(f"{where}: is there twice; remove one")
        for field in ("title", "plain", "rule", "source"):
            if not getattr(text, field).strip():
                raise WhyError(f"{where}.{field}: is empty; say it, or “common practice, no source”")
        if (text.under is None) != (not text.says):
            raise WhyError(f"{where}: `under` and `says` belong together; give both or none")
        if text.under is not None and text.under not in keys:
            raise WhyError(f'{where}.under: there is no text "{text.under}"')
        for part in (text.plain, text.rule):
            used |= _figures(part, where, file.figure)
    if unused := sorted(set(file.figure) - used):
        raise WhyError(f'figure "{unused[0]}": is in no text; remove it')


def _figures(text: str, where: str, figures: Mapping[str, _Figure]) -> set[str]:
    try:
        names = set(_named(text))
    except ValueError:
        raise WhyError(f"{where}: its braces do not fit; write {{name}}") from None
    if unknown := sorted(names - set(figures)):
        raise WhyError(f'{where}: there is no figure "{unknown[0]}"; name it under [figure]')
    bare = _DIGITS.sub("", re.sub(r"{.*?}", "", text))
    if found := re.search(r"\d[\d.]*", bare):
        raise WhyError(f"{where}: {found[0]} is written out; take it from the code under [figure]")
    return names
