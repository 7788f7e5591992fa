"""Reads PDF files back with poppler's programs, which are no part of ours: words, their places, typefaces, pages as pictures."""

import re
import shutil
import subprocess
from dataclasses import dataclass
from xml.etree import ElementTree

import pytest

needs_poppler = pytest.mark.skipif(
    shutil.which("pdftotext") is None, reason="PDF is read back with poppler: apt-get install poppler-utils"
)


@dataclass(frozen=True)
class Word:
    """A word on a page, in points from the upper left corner."""

    page: int
    text: str
    left: float
    top: float
    right: float
    bottom: float


def run(*command):
    done = subprocess.run([*map(str, command)], capture_output=True, check=True)
    assert b"Error" not in done.stderr, done.stderr
    return done.stdout


def pages(path):
    """Text of each page, lines as they stand."""
    return run("pdftotext", "-layout", path, "-").decode().split("\f")[:-1]


def flowing(path):
    """All text in one line, in the order in which it was written."""
    return " ".join(run("pdftotext", "-raw", path, "-").decode().split())


def words(path):
    """Words with their places, and the size of a page."""
    tree = ElementTree.fromstring(run("pdftotext", "-bbox", path, "-"))
    name = "{http://www.w3.org/1999/xhtml}"
    found, size = [], (0.0, 0.0)
    for number, page in enumerate(tree.iter(f"{name}page")):
        size = (float(page.get("width")), float(page.get("height")))
        for word in page.iter(f"{name}word"):
            places = [float(word.get(key)) for key in ("xMin", "yMin", "xMax", "yMax")]
            found.append(Word(number, word.text or "", *places))
    return found, size


def overlapping(found, most=1.5):
    """Pairs of words that lie on each other by more than so many points both ways."""
    pairs = []
    by_page = {}
    for word in found:
        by_page.setdefault(word.page, []).append(word)
    for on_page in by_page.values():
        on_page.sort(key=lambda w: w.top)
        for i, one in enumerate(on_page):
            for other in on_page[i + 1 :]:
                # ascenders and descenders of neighbouring lines reach into each other
                down = min(one.bottom, other.bottom) - other.top
                if down <= 0.0:
                    break
                across = min(one.right, other.right) - max(one.left, other.left)
                if across > most and down > 0.45 * min(one.bottom - one.top, other.bottom - other.top):
                    pairs.append((one, other))
    return pairs


def not_embedded(path):
    """Names of typefaces that the file uses and does not carry."""
    lines = run("pdffonts", path).decode().splitlines()[2:]
    return [line.split()[0] for line in lines if not re.search(r"\byes\s+(yes|no)\s+(yes|no)\s+\d+\s+\d+\s*$", line)]


def ink_in_margins(path, folder, margin=24.0):
    """Pages with anything but paper within the outermost points, looked at as pictures of 36 dots an inch."""
    run("pdftoppm", "-r", "36", "-gray", path, folder / "page")
    found = []
    for picture in sorted(folder.glob("page*.pgm")):
        header, width, height, _, pixels = re.match(
            rb"(P5)\s+(\d+)\s+(\d+)\s+(\d+)\s(.*)", picture.read_bytes(), re.S
        ).groups()
        assert header == b"P5"
        width, height, edge = int(width), int(height), int(margin / 2.0)
        rows = [pixels[i * width : (i + 1) * width] for i in range(height)]
        border = [*rows[:edge], *rows[-edge:], *(r[:edge] for r in rows), *(r[-edge:] for r in rows)]
        if any(min(row) < 200 for row in border):
            found.append(picture.name)
    return found
