"""The typeface of what is printed to PDF: the window's own, embedded, so that names show beyond Latin letters.

A character that it lacks is taken from a TrueType font of this computer, embedded as well; one that none has is written as
its code point, such as U+1F600, because a missing one would be a name that reads differently. Scripts written from the
right are put in the order of their letters, without the joined forms.
"""

from __future__ import annotations

import contextlib
import functools
import re
import sys
import unicodedata
from collections.abc import Iterator
from pathlib import Path

REGULAR, STRONG = "Inter", "Inter-SemiBold"
_FOLDER = Path(__file__).parent / "desktop/fonts"
_FILES = {REGULAR: "Inter-Regular.ttf", STRONG: "Inter-SemiBold.ttf"}
# tried in this order; those that are not there are passed over
_SYSTEM_FONTS = {
    "linux": (
        "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf",
        "/usr/share/fonts/truetype/noto/NotoSans-Regular.ttf",
        "/usr/share/fonts/truetype/wqy/wqy-microhei.ttc",
        "/usr/share/fonts/truetype/wqy/wqy-zenhei.ttc",
        "/usr/share/fonts/truetype/droid/DroidSansFallbackFull.ttf",
        "/usr/share/fonts/truetype/freefont/FreeSans.ttf",
    ),
    "win32": tuple(
        f"C:/Windows/Fonts/{name}"
        for name in ("segoeui.ttf", "seguisym.ttf", "msyh.ttc", "msgothic.ttc", "malgun.ttf", "simsun.ttc", "Nirmala.ttf")
    ),
    "darwin": (
        "/System/Library/Fonts/Supplemental/Arial Unicode.ttf",
        "/Library/Fonts/Arial Unicode.ttf",
        "/System/Library/Fonts/Supplemental/AppleGothic.ttf",
    ),
}  # fmt: skip
_FROM_RIGHT = {"R", "AL"}


@functools.cache
def _glyphs(name: str) -> dict[int, int]:
    """Glyphs of a bundled face by character; registers it."""
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    font = TTFont(name, str(_FOLDER / _FILES[name]))
    pdfmetrics.registerFont(font)
    return dict(font.face.charToGlyph)


@functools.cache
def _system_faces() -> tuple[tuple[str, dict[int, int]], ...]:
    """Faces of this computer that can be embedded; opened when a character is met that the bundled one lacks."""
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFError, TTFont

    found: list[tuple[str, dict[int, int]]] = []
    for path in _SYSTEM_FONTS.get(sys.platform, ()):
        with contextlib.suppress(TTFError, OSError, ValueError, KeyError):
            font = TTFont(f"system-{len(found)}", path, subfontIndex=0)
            pdfmetrics.registerFont(font)
            found.append((font.fontName, dict(font.face.charToGlyph)))
    return tuple(found)


@functools.cache
def _face_of(character: str, strong: bool) -> str | None:
    """The face that has a character; None where there is none."""
    name = STRONG if strong else REGULAR
    if ord(character) in _glyphs(name):
        return name
    return next((system for system, glyphs in _system_faces() if ord(character) in glyphs), None)


def plain(text: str) -> str:
    """The text as it can be set: composed letters, no control or invisible characters, line ends kept."""
    if text.isascii() and text.isprintable():
        return text
    composed = unicodedata.normalize("NFC", text)
    kept = "".join(
        c if c == "\n" or unicodedata.category(c) not in ("Cc", "Cf", "Zl", "Zp", "Zs")
        else "" if unicodedata.category(c) == "Cf" else " "
        for c in composed
    )  # fmt: skip
    return _from_right(kept)


def _from_right(text: str) -> str:
    """Runs of scripts written from the right, turned round; what a run consists of is letters, and spaces between."""
    if not any(unicodedata.bidirectional(c) in _FROM_RIGHT for c in text):
        return text
    letters = "".join(re.escape(c) for c in sorted({c for c in text if unicodedata.bidirectional(c) in _FROM_RIGHT}))
    return re.sub(rf"[{letters}](?:[{letters} ]*[{letters}])?", lambda run: run[0][::-1], text)


def pieces(text: str, *, strong: bool = False) -> Iterator[tuple[str, str]]:
    """The text in parts, each with the registered name of the face that has its characters."""
    main = STRONG if strong else REGULAR
    face, part = main, ""
    _glyphs(main)
    if text.isascii() and text.isprintable():
        yield main, text
        return
    for character in plain(text):
        wanted: str | None = main if character == "\n" else _face_of(character, strong)
        shown = character if wanted is not None else f"U+{ord(character):04X} "
        if (wanted or main) != face and part:
            yield face, part
            part = ""
        face, part = wanted or main, part + shown
    if part:
        yield face, part


def bundled(text: str, *, strong: bool = False) -> str:
    """The text with what a bundled face lacks as code points, to be set in that face, which is registered."""
    glyphs = _glyphs(STRONG if strong else REGULAR)
    return "".join(c if ord(c) in glyphs else f"U+{ord(c):04X} " for c in plain(text))


def width(text: str, size: float, *, strong: bool = False) -> float:
    """Width of a text in points at a size in points."""
    from reportlab.pdfbase.pdfmetrics import stringWidth

    return float(sum(stringWidth(part, face, size) for face, part in pieces(text, strong=strong)))


def fitted(text: str, most: float, size: float, *, strong: bool = False) -> str:
    """The text, or as much of its beginning as fits a width, with an ellipsis."""
    one_line = " ".join(plain(text).split())
    if width(one_line, size, strong=strong) <= most:
        return one_line
    low, high = 0, len(one_line)
    while low < high:  # the longest beginning that fits
        middle = (low + high + 1) // 2
        if width(one_line[:middle] + "…", size, strong=strong) <= most:
            low = middle
        else:
            high = middle - 1
    return one_line[:low].rstrip() + "…"
