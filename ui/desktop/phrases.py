"""How a sentence with figures and names in it is found in a catalogue: as it stands, by a template, or part by part. No Qt here.

A template is a sentence with places: "Record {0} s more". What stands in a place is looked up as well, unless it is a name.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache

PLACE = re.compile(r"\{(\d+)\}")
_REMEMBERED = 8192  # texts; live figures go round in it
_DEEPEST = 5  # parts of parts
# letters of what is tried in all ways, which takes more than twice as long for twice as many, and of what is looked at
_LONGEST, _MOST_LETTERS = 1000, 20_000
_A_CLAUSE = 4  # words: more than a name
_TELLING = 10  # letters of a template that fits by no accident
_MOST_TRIED = 3  # templates that fit one text
_WORD = re.compile(r"[A-Za-z]{2,}")
# nothing to translate: figures, units, signs, single letters, ends of files; each in one way only, or it would be tried in all
_PLAIN = re.compile(
    r"(?:[^A-Za-z]|(?<![A-Za-z])(?:[A-Za-z]|[num]m|[kM]?Hz|rpm|rms|p-p|mil|in|kg|mg|kgf|lb|lbf|oz|mV|mA|dB|ms|kB|MB|GB"
    r"|min|kW|Nm|us|ISO|AC|DC|IEPE|DAQ|TTL|PDF|HTML|CSV|TOML|WAV|Ctrl|Esc|NaN|nan|inf)(?![A-Za-z]))*"
)
# names that tell themselves: a path up to what is said of it, a source such as serial:/dev/ttyACM0
_NAME = re.compile("(?:[A-Za-z]:)?[\u200b]?[/\\\\]\\S(?:(?![:;,] | \\().)*|[a-z]+:\\S+")
# where a text may be cut: lines, sentences, clauses, parts
_CUTS = tuple(map(re.compile, (r"\n+", r"(?<=[.!?])\s+(?=\S)", r"; ", r" · ", r": ", r" \(", r", ")))
_ALL_CUTS = re.compile(r"(\n+|(?<=[.!?]) | · |[;:,] )")
_COLON = re.compile(": ")
_APART = {"\u00a0": " ", "\u202f": " ", "\u2060": ""}
_JOINED = re.compile(f"[{''.join(_APART)}]")
_BASE = (
    r"(?:r|U|rpm|cpm|[kM]?Hz|[num\u00b5\u03bckc]?m|in|mil|m?g|kgf?|lbf?|oz|k?N|Nm|kW|W|m?V|pC|mA|dB|[nu\u00b5\u03bcm]?s|min|h"
    r"|[kMG]B|°C?|%)(?![A-Za-z])[²³]?"
)
_NUMBER = r"[−+-]?\d[\d.,]*+"
# a unit with the figure before it, or of several parts; nothing is given back once it is taken
_MEASURE = re.compile(
    rf"(?<![\w/.,])(?:{_NUMBER} )?+{_BASE}(?:[·/]{_BASE})*+(?: (?:rms|peak|p-p)(?!\w))?+(?![\w/])|± (?={_NUMBER})"
)
_TOGETHER = str.maketrans({" ": "\u00a0", "/": "/\u2060", "-": "-\u2060"})
_FIRST_MARK, _MARK = 0xE000, re.compile("[\ue000-\uf8ff]")  # for private use, and no letters
_SENTENCE_END = re.compile(r"[.!?]\s|\n")
_ENDS = ".…:;!?,)"
_STARTS = "(±+−- "


class Named(str):
    """English with names in it that people gave; `marked` has a mark in the place of each of the `names`."""

    __slots__ = ("marked", "names")

    def __new__(cls, marked: str, names: tuple[str, ...]) -> Named:
        """Put the names in."""
        made = super().__new__(cls, _put_in(marked, names))
        made.marked, made.names = marked, names
        return made

    marked: str
    names: tuple[str, ...]


class Names:
    """Names that stand in a text as they are, in every language: `told(f"Trend of {name(point)}")`, with `name` one of these."""

    def __init__(self) -> None:
        self._given: list[str] = []

    def __call__(self, name: str) -> str:
        """The mark for a name."""
        self._given.append(name)
        return chr(_FIRST_MARK + len(self._given) - 1)

    def told(self, text: str) -> Named:
        """The text with its names."""
        return Named(text, tuple(self._given))


def _put_in(marked: str, names: tuple[str, ...]) -> str:
    return _MARK.sub(lambda mark: names[n] if (n := ord(mark[0]) - _FIRST_MARK) < len(names) else mark[0], marked)


def begun(text: str) -> str:
    """A text as the beginning of a sentence."""
    if isinstance(text, Named):
        first = ord(text.marked[0]) - _FIRST_MARK if text.marked else -1  # the name that it begins with, if it does
        return Named(begun(text.marked), tuple(begun(n) if i == first else n for i, n in enumerate(text.names)))
    return text[:1].upper() + text[1:]


def has_words(text: str) -> bool:
    """Whether there is anything to translate: more than figures, units and signs, and no path or source."""
    return _PLAIN.fullmatch(text) is None and _NAME.fullmatch(text) is None


def unbroken(text: str) -> str:
    """A text that is broken into lines, with every figure and its unit, and every unit, kept in one of them: for the eye only."""
    return _MEASURE.sub(lambda found: found[0].translate(_TOGETHER), text)


def places(text: str) -> frozenset[str]:
    """The places of a template."""
    return frozenset(PLACE.findall(text))


def _held(parts: list[str], text: str) -> dict[str, str] | None:
    """What stands in the places of a template in a text, None: it is no text of it.

    `parts` are the template's words and, in turn with them, its places. A place takes as little as it can, and holds no end
    of a sentence unless it comes last; one in quotes holds no quote. The first letter may be a capital.
    """
    first, last = parts[0], parts[-1]
    if first and not (text.startswith(first) or text.startswith(begun(first))):
        return None
    if not text.endswith(last) or len(text) < len(first) + len(last):
        return None
    held: dict[str, str] = {}
    end, at = len(text) - len(last), len(first)
    for number in range(1, len(parts), 2):
        after = parts[number + 1]
        to = end if number + 2 == len(parts) else text.find(after, at, end)
        if to < at:
            return None
        here = text[at:to]
        if held.setdefault(parts[number], here) != here or (to < len(text) and _SENTENCE_END.search(here)):
            return None
        if '"' in here and parts[number - 1].endswith('"'):
            return None
        at = to + len(after)
    return held


def _full_stop(text: str, parts: list[str], turned: str | None) -> str:
    """The full stop of a text that is no part of the last place, which stands elsewhere in the other language."""
    moved = not parts[-1] and turned is not None and not turned.endswith(f"{{{parts[-2]}}}")
    return "." if moved and text.endswith(".") else ""


@dataclass(frozen=True)
class _Turned:
    """A text as far as it could be turned.

    `left`: how many letters could not be, `missed`: which parts should have been; `sure`: no other way need be tried.
    """

    text: str
    left: int = 0
    missed: tuple[str, ...] = ()
    sure: bool = False


class Phrases:
    """A catalogue of one language.

    `exact` gives the translation of a text that stands in the catalogue, or None; `templates` are those of its texts that
    have places. What could not be translated is kept in `misses`.
    """

    def __init__(self, exact: Callable[[str], str | None], templates: Iterable[str]) -> None:
        self._exact = exact
        self.misses: set[str] = set()
        self._own: frozenset[str] = frozenset()
        self._parts: dict[str, list[str]] = {}
        self._ranks: dict[str, int] = {}
        self._by_word: dict[str, list[str]] = {}
        self._index(tuple(templates))
        self._part = lru_cache(_REMEMBERED)(self._part_of)

    def _index(self, templates: tuple[str, ...]) -> None:
        """Each template under the rarest of its words, the one with the most letters first."""
        # a first word may be begun with a capital, so that another one is better to go by
        words_of = {t: _WORD.findall(PLACE.sub(" ", t)) for t in templates}
        keys_of = {t: words if len(words) == 1 else words[1:] for t, words in words_of.items()}
        count = Counter(word for keys in keys_of.values() for word in set(keys))
        for rank, template in enumerate(sorted(templates, key=lambda t: -len(PLACE.sub("", t)))):
            keys = keys_of[template]
            if keys:
                self._ranks[template], self._parts[template] = rank, PLACE.split(template)
                key = min(keys, key=lambda word: (count[word], -len(word)))
                for each in {key, begun(key)} if len(keys) == 1 else {key}:
                    self._by_word.setdefault(each, []).append(template)

    def keep(self, names: frozenset[str]) -> None:
        """Leave these as they are where they stand within a text: the names that the person gave."""
        names |= {begun(name) for name in names}
        if names != self._own:
            self._own = names
            self._part.cache_clear()

    def turn(self, text: str) -> str:
        """A text in the language; what the catalogue does not know stays as it is. A long one is cut first."""
        if isinstance(text, Named):
            return _put_in(self.turn(text.marked), text.names)
        if len(text) > _LONGEST:
            parts = _ALL_CUTS.split(text[:_MOST_LETTERS])
            return "".join(self.turn(p) if len(p) <= _LONGEST else p for p in parts) + text[_MOST_LETTERS:]
        turned = self._part(text, 0, False)
        self.misses.update(turned.missed)
        return turned.text

    def _part_of(self, text: str, depth: int, within: bool) -> _Turned:
        """A text or a part of one; `within`: it stands in a place of a template, where names do."""
        if not has_words(text) or (depth and text in self._own):
            return _Turned(text)
        found = self._known(text)
        if found is not None:
            return _Turned(found)
        best: _Turned | None = None
        if depth < _DEEPEST:
            for turned in self._ways(text, depth + 1, within):
                if best is None or turned.left < best.left:
                    best = turned
                if not best.left or best.sure:
                    break
        if best is None:
            named = text in self._own or (within and len(_WORD.findall(text)) < _A_CLAUSE)
            best = _Turned(text, sum(map(str.isalpha, text)), () if named else (text,))
        return best

    def _ways(self, text: str, depth: int, within: bool) -> Iterator[_Turned]:
        """What can be made of a text that does not stand in the catalogue as a whole."""
        if _JOINED.search(text):  # for the eye only: it keeps a figure and its unit in one line
            yield self._part(_JOINED.sub(lambda sign: _APART[sign[0]], text), depth, within)
        yield from self._by_template(text, depth)
        bare = text.strip()
        # all signs about a text, or the last one alone: a bracket before it may belong to what is said
        for core in dict.fromkeys((bare.rstrip(_ENDS).lstrip(_STARTS), bare[:-1] if bare[-1] in _ENDS else bare)):
            if core in ("", text):
                continue
            at = text.index(core)
            turned = self._part(core, depth, within)
            yield _Turned(text[:at] + turned.text + text[at + len(core) :], turned.left, turned.missed)
        yield from self._end(text, depth)
        cuts = next((found for cut in _CUTS if (found := [m.span() for m in cut.finditer(text)])), None)
        if cuts is not None:
            yield from self._beginning(text, cuts, depth, within)
            yield self._pieces(text, cuts, depth, within)

    def _known(self, text: str) -> str | None:
        """As it stands in the catalogue, or there with another first letter."""
        found = self._exact(text)
        if found is None and text[:1].isupper():
            found = self._exact(text[0].lower() + text[1:])
            return None if found is None else begun(found)
        if found is None and text[:1].islower():
            return self._exact(begun(text))
        return found

    def _by_template(self, text: str, depth: int) -> Iterator[_Turned]:
        candidates = {t for word in set(_WORD.findall(text)) for t in self._by_word.get(word, ())}
        tried = 0
        for template in sorted(candidates, key=self._ranks.__getitem__):
            turned = self._exact(template)
            end = _full_stop(text, self._parts[template], turned)
            places_of = _held(self._parts[template], text.removesuffix(end))
            if places_of is None or turned is None:
                continue
            held = {place: self._part(each, depth, True) for place, each in places_of.items()}
            made = "".join(held[p].text if number % 2 else p for number, p in enumerate(PLACE.split(turned)))
            left, missed = sum(h.left for h in held.values()), tuple(m for h in held.values() for m in h.missed)
            sure = not missed and sum(map(str.isalpha, template)) >= _TELLING
            yield _Turned((begun(made) if text[:1].isupper() else made) + end, left, missed, sure)
            tried += 1
            if tried == _MOST_TRIED:
                return

    def _beginning(self, text: str, cuts: list[tuple[int, int]], depth: int, within: bool) -> Iterator[_Turned]:
        """A beginning that stands in the catalogue, as long as can be, and what follows it."""
        for start, end in reversed(cuts):
            head = text[:start] if text[:start] in self._own else self._known(text[:start])
            if head is None:
                continue
            tail = next(self._by_template(text[start:], depth), None)
            if tail is None or tail.left:
                after = self._part(text[end:], depth, within)
                tail = _Turned(text[start:end] + after.text, after.left, after.missed)
            yield _Turned(head + tail.text, tail.left, tail.missed)
            return

    def _end(self, text: str, depth: int) -> Iterator[_Turned]:
        """What is said of something that stands before a colon, such as a file, where the catalogue has that as a whole."""
        for colon in _COLON.finditer(text):
            said = text[colon.end() :]
            known = self._known(said)
            ways = self._by_template(said, depth) if known is None else iter((_Turned(known),))
            tail = next((way for way in ways if way.sure or not way.left), None)
            if tail is not None:
                head = self._part(text[: colon.start()], depth, True)
                yield _Turned(f"{head.text}: {tail.text}", head.left, head.missed)
                return

    def _pieces(self, text: str, cuts: list[tuple[int, int]], depth: int, within: bool) -> _Turned:
        """Sentence by sentence, or the parts of one."""
        made: list[str] = []
        missed: list[str] = []
        left = at = 0
        for start, end in (*cuts, (len(text), len(text))):
            turned = self._part(text[at:start], depth, within)
            made += [turned.text, text[start:end]]
            left, at = left + turned.left, end
            missed += turned.missed
        return _Turned("".join(made), left, tuple(missed))
