"""Photos of a job as a report shows them: turned as the camera was held, scaled down, JPEG; or why one is not shown."""

from __future__ import annotations

import io
import warnings
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from stillshaft.solver.events import Check, Event, Mass, Photo
from stillshaft.solver.folder import RecordError
from stillshaft.ui.report_layout import Bitmap, Picture, Shape, Words

if TYPE_CHECKING:
    from stillshaft.solver.job import Job

_LONGEST_PX, _QUALITY = 900, 80
_MOST_BYTES, _MOST_PIXELS = 60_000_000, 120_000_000
_MOST_SHOWN = 60  # of a report; the table of files has them all
_WIDTH, _HEIGHT, _CAPTION, _GAP = 248.0, 200.0, 28.0, 8.0  # points


@dataclass(frozen=True)
class Shown:
    """A photo: what it is of, and its JPEG with width and height in pixels, or why there is none."""

    of: str
    note: str
    jpeg: bytes
    size: tuple[int, int]
    trouble: str


def gathered(job: Job) -> tuple[Shown, ...]:
    """Every photo that an entry names, in their order; nothing but the job's own folder is read."""
    return tuple(_shown(job, *named) for named in _named(job))


def _named(job: Job) -> Iterator[tuple[str, str, str, int]]:
    """Path, what it is of, note, and number of each photo of entries that count."""
    state, number = job.state, 0
    kept = {e.id for e in state.photos} | {e.id for e in state.checks.values()} | {e.id for e in state.masses}
    for event in job.events:
        if event.id not in kept:
            continue
        for path in _paths(event):
            number += 1
            of, note = _about(job, event)
            yield path, of, note, number


def _paths(event: Event[Any]) -> list[str]:
    match event.what:
        case Photo(file=file):
            return [file.path]
        case Check(photos=photos) | Mass(photos=photos):
            return [photo.path for photo in photos]
    return []


def _about(job: Job, event: Event[Any]) -> tuple[str, str]:
    """What a photo is of, and its note."""
    what = event.what
    if isinstance(what, Check):
        return f"check: {what.item}", what.note
    if isinstance(what, Mass):
        return f"entry {event.id}, mass {what.act}", what.note
    about = next((e for e in job.events if e.id == what.about), None)
    of = "the machine" if about is None else f"entry {about.id}, {about.kind}"
    return of, what.note


def _shown(job: Job, path: str, of: str, note: str, number: int) -> Shown:
    if number > _MOST_SHOWN:
        return Shown(of, note, b"", (0, 0), f"{path}: not shown, there are more than {_MOST_SHOWN}")
    try:
        jpeg, size = scaled(job.file(path))
    except RecordError as error:
        text = str(error).replace(str(job.folder), "the job's folder")
        return Shown(of, note, b"", (0, 0), text if path in text else f"{path}: {text}")
    return Shown(of, note, jpeg, size, "")


def scaled(file: Path) -> tuple[bytes, tuple[int, int]]:
    """A photo as a small JPEG, with its width and height. Raises RecordError that says why it cannot be shown."""
    from PIL import Image, ImageOps, UnidentifiedImageError

    name = f"{file.parent.name}/{file.name}"
    try:
        if file.stat().st_size > _MOST_BYTES:
            raise RecordError(f"{name}: not shown, it is larger than {_MOST_BYTES / 1e6:.0f} MB")
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", Image.DecompressionBombWarning)  # what is too large is refused below
            with open(file, "rb") as raw, Image.open(raw, formats=("JPEG", "PNG")) as image:
                width, height = image.size
                if width * height > _MOST_PIXELS:
                    raise RecordError(
                        f"{name}: not shown, {width} × {height} are more than {_MOST_PIXELS / 1e6:.0f} million pixels"
                    )
                image.draft("RGB", (2 * _LONGEST_PX, 2 * _LONGEST_PX))
                turned = ImageOps.exif_transpose(image)
                turned.thumbnail((_LONGEST_PX, _LONGEST_PX))
                plain = Image.new("RGB", turned.size, "white")
                seen = turned.convert("RGBA")
                plain.paste(seen, mask=seen.getchannel("A"))
        kept = io.BytesIO()
        plain.save(kept, "JPEG", quality=_QUALITY)
    except UnidentifiedImageError:
        raise RecordError(f"{name}: not shown, it is no JPEG or PNG picture") from None
    except Image.DecompressionBombError:
        raise RecordError(f"{name}: not shown, it has too many pixels") from None
    except (OSError, ValueError, SyntaxError, EOFError, MemoryError) as error:
        if isinstance(error, RecordError):
            raise
        raise RecordError(f"{name}: not shown, it is damaged ({' '.join(str(error).split())[:80]})") from None
    return kept.getvalue(), plain.size


def picture(shown: Shown) -> Picture:
    """The photo with what it is of under it."""
    from stillshaft.ui import typeface

    scale = min((_WIDTH - _GAP) / shown.size[0], _HEIGHT / shown.size[1])
    width, height = scale * shown.size[0], scale * shown.size[1]
    title = typeface.fitted(shown.of, _WIDTH - _GAP, 8.0, strong=True)
    shapes: list[Shape] = [Words(0.0, height + 10.0, title, 8.0, strong=True)]
    if shown.note:
        shapes.append(Words(0.0, height + 20.0, typeface.fitted(shown.note, _WIDTH - _GAP, 7.5), 7.5, colour="quiet"))
    alt = f"photo of {shown.of}: {shown.note}" if shown.note else f"photo of {shown.of}"
    return Picture(_WIDTH, height + _CAPTION, tuple(shapes), alt, Bitmap(0.0, 0.0, width, height, shown.jpeg))
