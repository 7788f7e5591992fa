"""How the person wants to see things: remembered from day to day in a small file of its own.

A file that cannot be read loses nothing but these choices: the program starts with the usual ones and says so.
"""

from __future__ import annotations

import contextlib
import os
from dataclasses import asdict, dataclass, fields, replace
from pathlib import Path

from stillshaft.ui.theme import THEMES

UNITS = (
    "as hooked up",
    "mm/s rms",
    "mm/s peak",
    "in/s peak",
    "µm p-p",
    "mil p-p",
    "g rms",
    "g peak",
    "m/s² rms",
)
ANGLES = ("against rotation", "with rotation")
ENDS = ("reference end", "other end")
LANGUAGES = {"English": "en", "Deutsch": "de"}  # by their own names
TEXT_SIZES = {"normal": 14, "large": 16, "largest": 19}  # px of body text


@dataclass(frozen=True)
class View:
    """What is chosen; every field is one of the words in `CHOICES`."""

    unit: str = UNITS[0]
    angles: str = ANGLES[0]
    seen_from: str = ENDS[0]
    theme: str = "light"
    text_size: str = "normal"
    language: str = "English"

    @property
    def body_px(self) -> int:
        """Height of body text."""
        return TEXT_SIZES[self.text_size]


CHOICES: dict[str, tuple[str, ...]] = {
    "unit": UNITS,
    "angles": ANGLES,
    "seen_from": ENDS,
    "theme": tuple(THEMES),
    "text_size": tuple(TEXT_SIZES),
    "language": tuple(LANGUAGES),
}


def usual_path() -> Path:
    """Where the choices are kept for this person."""
    import platformdirs

    return Path(platformdirs.user_config_dir("stillshaft", appauthor=False)) / "view.toml"


def load(path: Path, usual: View = View()) -> tuple[View, str | None]:
    """The remembered choices, else the usual ones; and what was wrong with the file in one line, if something was."""
    from stillshaft.dsp import tables

    try:
        table = tables.read(path)
    except tables.TableError:
        if not path.exists():
            return usual, None
        if not path.is_file():
            return usual, f"{path}: cannot be read (no ordinary file); the usual choices are used"
        return usual, f"{path}: is damaged; the usual choices are used, and it is written anew with the next change"
    view, refused = usual, []
    for field in fields(View):
        value = table.get(field.name, getattr(view, field.name))
        if value in CHOICES[field.name]:
            view = replace(view, **{field.name: value})
        else:
            refused.append(field.name)
    if refused:
        return view, f"{path}: {', '.join(refused)}: not a choice there is; the usual one is used"
    return view, None


def save(path: Path, view: View) -> str | None:
    """Write the choices, whole or not at all; what went wrong in one line, if something did."""
    import tomli_w

    part = path.with_name(f".{path.name}.part")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with part.open("w", encoding="utf-8") as file:
            file.write(tomli_w.dumps(asdict(view)))
            file.flush()
            os.fsync(file.fileno())
        os.replace(part, path)
    except OSError as error:
        with contextlib.suppress(OSError):
            part.unlink()
        return f"{path}: cannot be written ({error.strerror}); the choices hold until the program is closed"
    return None
