"""How a sentence with figures and names in it is found in a catalogue: as it stands, by a template, or part by part. No Qt here.

A template is a sentence with places: "Record {0} s more". What stands in a place is looked up as well, unless it is a name.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from functools import lru_cache

PLACE = re.compile(r"\{(\d+)\}")
_REMEMBERED = 8192  # texts; live figures go round in it
_DEEPEST = 6  # parts of parts
_A_CLAUSE = 4  # words: more than a name
_WORD = re.compile(r"[A-Za-z]{2,}")
# nothing to translate: figures, units, signs, single letters, ends of files
_PLAIN = re.compile(
    r"(?:[^A-Za-z]|(?<![A-Za-z])(?:[A-Za-z]|[num]?m|[kM]?Hz|rpm|rms|p-p|mil|in|kg|mg|kgf|lb|lbf|oz|mV|mA|dB|ms|kB|MB|GB"
    r"|min|kW|Nm|ISO|AC|DC|IEPE|DAQ|TTL|PDF|HTML|CSV|TOML|WAV|Ctrl|Esc|NaN|nan|inf)(?![A-Za-z]))*"
)
_SENTENCES = re.compile(r"(?<=[.!?:;])\s+(?=\S)|\n+")
_PARTS = ("; ", " · ", ": ", " (", ", ")
_ENDS = ".…:;!?,)"
_STARTS = "(±+−- "


def begun(text: str) -> str:
    """A text as the beginning of a sentence."""
    return text[:1].upper() + text[1:]


def has_words(text: str) -> bool:
    """Whether there is anything to translate: more than figures, units and signs."""
    return _PLAIN.fullmatch(text) is None


def places(text: str) -> frozenset[str]:
    """The places of a template."""
    return frozenset(PLACE.findall(text))


def _pattern(template: str) -> re.Pattern[str]:
    """Matches the texts of a template; a place holds no end of a sentence, and the first letter may be a capital."""
    made, at, seen = [], 0, set()
    for place in PLACE.finditer(template):
        made.append(re.escape(template[at : place.start()]))
        name = f"p{place[1]}"
        made.append(f"(?P={name})" if name in seen else f"(?P<{name}>(?:(?![.!?;]\\s|\\n).)*?)")
        seen.add(name)
        at = place.end()
    made.append(re.escape(template[at:]))
    if made[0][:1].islower():
        made[0] = f"[{made[0][0].upper()}{made[0][0]}]{made[0][1:]}"
    return re.compile("".join(made), re.DOTALL)


class Phrases:
    """A catalogue of one language.

    `exact` gives the translation of a text that stands in the catalogue, or None; `templates` are those of its texts that
    have places. What could not be translated is kept in `misses`.
    """

    def __init__(self, exact: Callable[[str], str | None], templates: Iterable[str]) -> None:
        self._exact = exact
        self.misses: set[str] = set()
        self._within = 0  # places that are being filled
        self._own: frozenset[str] = frozenset()
        self._patterns: dict[str, re.Pattern[str]] = {}
        self._ranks: dict[str, int] = {}
        self._by_word: dict[str, list[str]] = {}
        self._index(tuple(templates))
        self.turn = lru_cache(_REMEMBERED)(self._turn)

    def _index(self, templates: tuple[str, ...]) -> None:
        """Each template under the rarest of its words, the one with the most letters first."""
        words_of = {t: tuple(dict.fromkeys(_WORD.findall(PLACE.sub(" ", t)))) for t in templates}
        count: dict[str, int] = {}
        for words in words_of.values():
            for word in words[0 if len(words) == 1 else 1 :]:
                count[word] = count.get(word, 0) + 1
        ranked = sorted(templates, key=lambda t: -len(PLACE.sub("", t)))
        for rank, template in enumerate(ranked):
            words = words_of[template]
            if not words:
                continue
            self._ranks[template] = rank
            # the first word may be begun with a capital
            keys = words[0 if len(words) == 1 else 1 :]
            key = min(keys, key=lambda w: (count[w], -len(w)))
            for each in {key, begun(key)} if len(words) == 1 else {key}:
                self._by_word.setdefault(each, []).append(template)

    def keep(self, names: frozenset[str]) -> None:
        """Leave these as they are where they stand within a text: the names that the person gave."""
        if names != self._own:
            self._own = names
            self.turn.cache_clear()

    def _turn(self, text: str) -> str:
        return self._part(text, 0)

    def _part(self, text: str, depth: int) -> str:
        """A text or a part of one; as it is where the catalogue does not know it."""
        if not has_words(text) or (depth and text in self._own):
            return text
        found = self._known(text)
        if found is None and depth < _DEEPEST:
            found = self._by_template(text, depth) or self._trimmed(text, depth) or self._pieces(text, depth)
        if found is None:
            if text not in self._own and not (self._within and len(_WORD.findall(text)) < _A_CLAUSE):
                self.misses.add(text)
            return text
        return found

    def _known(self, text: str) -> str | None:
        """As it stands in the catalogue, or there with another first letter."""
        found = self._exact(text)
        if found is None and text[:1].isupper():
            found = self._exact(text[0].lower() + text[1:])
            return None if found is None else begun(found)
        if found is None and text[:1].islower():
            return self._exact(begun(text))
        return found

    def _by_template(self, text: str, depth: int) -> str | None:
        candidates = {t for word in set(_WORD.findall(text)) for t in self._by_word.get(word, ())}
        for template in sorted(candidates, key=self._ranks.__getitem__):
            pattern = self._patterns.get(template)
            if pattern is None:
                pattern = self._patterns[template] = _pattern(template)
            match = pattern.fullmatch(text)
            if match is None:
                continue
            turned = self._exact(template)
            assert turned is not None
            held = {place: self._held(text, depth + 1) for place, text in match.groupdict().items()}
            made = "".join(held[f"p{p}"] if number % 2 else p for number, p in enumerate(PLACE.split(turned)))
            return begun(made) if text[:1].isupper() else made
        return None

    def _held(self, text: str, depth: int) -> str:
        """What stands in a place: mostly a name or a figure, so that a few words are no miss where they are not known."""
        self._within += 1
        made = self._part(text, depth)
        self._within -= 1
        return made

    def _trimmed(self, text: str, depth: int) -> str | None:
        """Without the signs at its ends."""
        core = text.strip().rstrip(_ENDS).lstrip(_STARTS)
        if core in ("", text):
            return None
        at = text.index(core)
        return text[:at] + self._part(core, depth + 1) + text[at + len(core) :]

    def _pieces(self, text: str, depth: int) -> str | None:
        """Sentence by sentence, or the parts of one."""
        cuts = [m.span() for m in _SENTENCES.finditer(text)]
        if not cuts:
            part = next((p for p in _PARTS if p in text), None)
            if part is None:
                return None
            cuts = [(m.start(), m.end()) for m in re.finditer(re.escape(part), text)]
        made, at = [], 0
        for start, end in (*cuts, (len(text), len(text))):
            made.append(self._part(text[at:start], depth + 1))
            made.append(text[start:end])
            at = end
        return "".join(made)
