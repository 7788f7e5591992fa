"""The guides that come with the program: pages of Markdown with what a reader can do with each."""

from __future__ import annotations

import re
from dataclasses import dataclass
from importlib import resources

from stillshaft.dsp.units import InputError

_ORDER = ("start", "wiring", "trust", "steps", "theory")


class GuideError(InputError):
    """A guide that there is not: the message says which there are."""


@dataclass(frozen=True)
class Guide:
    """One page: its name, its heading, and its text in Markdown."""

    name: str
    title: str
    text: str

    @property
    def without_pictures(self) -> str:
        """The text for a terminal: no pictures, and links as what is typed to see the page."""
        lines = (line for line in self.text.split("\n") if not line.startswith("!["))
        return re.sub(r"\[([^]]+)\]\((\w+)\.md\)", r"\1 (`stillshaft guide \2`)", "\n".join(lines))


def guides() -> tuple[Guide, ...]:
    """All pages in the order in which a newcomer reads them."""
    return tuple(guide(name) for name in _ORDER)


def guide(name: str) -> Guide:
    """The page of that name. Raises GuideError."""
    if name not in _ORDER:
        raise GuideError(f'guide "{name}": there is none; there are {", ".join(_ORDER)}')
    text = (resources.files("stillshaft.ui") / "guide_pages" / f"{name}.md").read_text("utf-8")
    return Guide(name, text.partition("\n")[0].removeprefix("# "), text)
