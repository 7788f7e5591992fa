"""The guides that come with the program: pages of Markdown with what a reader can do with each."""

from __future__ import annotations

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


def guides() -> tuple[Guide, ...]:
    """All pages in the order in which a newcomer reads them."""
    return tuple(guide(name) for name in _ORDER)


def guide(name: str) -> Guide:
    """The page of that name. Raises GuideError."""
    if name not in _ORDER:
        raise GuideError(f'guide "{name}": there is none; there are {", ".join(_ORDER)}')
    text = (resources.files("stillshaft.ui") / "guide_pages" / f"{name}.md").read_text("utf-8")
    return Guide(name, text.partition("\n")[0].removeprefix("# "), text)
