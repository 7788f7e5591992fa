"""Files of a job's folder: opened without following links, written whole, and what went wrong in words."""

from __future__ import annotations

import contextlib
import errno
import hashlib
import os
import re
import stat
import sys
import unicodedata
from collections.abc import Iterator
from pathlib import Path

from stillshaft.dsp.tables import DISK_FULL
from stillshaft.dsp.units import InputError, shown

_READ_ONLY = {errno.EROFS, errno.EACCES, errno.EPERM}
_GONE = {errno.ENOENT, errno.EIO, errno.ENODEV, errno.ENXIO, errno.ESTALE, errno.ENOTDIR}
NO_FOLLOWING = sum(getattr(os, name, 0) for name in ("O_NOFOLLOW", "O_NONBLOCK", "O_CLOEXEC", "O_BINARY"))
FOLDERS = ("recordings", "photos", "reports")
_MOST_PATH_BYTES = 1000
# names that some systems take for devices, whatever their ending
_DEVICES = re.compile(r"(?i)(con|prn|aux|nul|conin\$|conout\$|com[0-9¹²³]|lpt[0-9¹²³])\s*(\..*)?")


class RecordError(InputError):
    """A job that cannot be opened, or an act that cannot be recorded: the message says why and what to do."""


class ReadOnlyError(RecordError):
    """The disk or the rights let nothing be written: it can still be opened to read."""


def check_is_file(path: Path) -> None:
    """Raise RecordError where a path is no ordinary file: a link could lead out of the folder."""
    try:
        mode = os.stat(path, follow_symlinks=False).st_mode
    except (OSError, ValueError) as error:
        if isinstance(error, FileNotFoundError | NotADirectoryError):
            missing = f"{path.name} is not there" if path.parent.is_dir() else "there is no such folder"
            raise RecordError(f"{shown(path.parent, 400)}: holds no job ({missing})") from None
        raise RecordError(f"{shown(path, 400)}: cannot be read: {why(error)}") from None
    if not stat.S_ISREG(mode):
        raise RecordError(f"{path}: is no ordinary file (a link, folder or device); a job keeps its own record")


def open_own(path: Path, how: int) -> int:
    """Open a file of the job folder itself, never through a link."""
    if path.exists() or path.is_symlink() or not how & os.O_CREAT:
        check_is_file(path)
    try:
        file = os.open(path, how | NO_FOLLOWING, 0o644)
    except OSError as error:
        if how != os.O_RDONLY and error.errno in _READ_ONLY | DISK_FULL:
            raise ReadOnlyError(f"{path.parent}: {why(error)}") from None
        raise RecordError(f"{path}: cannot be opened: {(error.strerror or '').lower()}") from None
    if how != os.O_RDONLY and os.fstat(file).st_nlink > 1:
        os.close(file)
        raise ReadOnlyError(f"{path}: is the same file as one elsewhere (a hard link), and writing would alter both")
    return file


def read_all(file: int) -> bytes:
    """All bytes of an opened file."""
    os.lseek(file, 0, os.SEEK_SET)
    pieces = []
    while piece := os.read(file, 2**22):
        pieces.append(piece)
    return b"".join(pieces)


def put(file: int, data: bytes) -> None:
    """Write all of it or raise OSError; a full disk takes a part first."""
    while data:
        data = data[os.write(file, data) :]


def sync(file: int) -> None:
    """Have the disk hold what was written."""
    os.fdatasync(file) if hasattr(os, "fdatasync") else os.fsync(file)


def sync_folder(folder: Path) -> None:
    """Have the disk hold a new file's name."""
    if sys.platform != "win32":
        opened = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(opened)
        finally:
            os.close(opened)


def remove_folders(made: list[Path]) -> None:
    """Remove folders that were made just now, the innermost first."""
    for folder in made:
        with contextlib.suppress(OSError, ValueError):
            folder.rmdir()


def why(error: OSError | ValueError, *, new: bool = False) -> str:
    """What went wrong, in words; `new` where nothing was there before that could be gone."""
    number = error.errno if isinstance(error, OSError) else None
    if new and number in (errno.ENOENT, errno.ENOTDIR):
        return "no folder can be made there; choose another place"
    if number in DISK_FULL:
        return "the disk is full"
    if number in _READ_ONLY:
        return "cannot be written: read-only disk, or no right to"
    if number in _GONE:
        return "is gone: was the disk or stick removed?"
    return (error.strerror or "").lower() if isinstance(error, OSError) else shown(error)


def copies_beside(folder: Path, record: str) -> Iterator[str]:
    """Say which files beside the record look like other copies of it, as programs that synchronise folders leave."""
    stem, ending = record.split(".")
    with contextlib.suppress(OSError), os.scandir(folder) as entries:
        for entry in sorted(e.name for e in entries):
            name = unicodedata.normalize("NFC", entry).lower()
            if name.startswith(stem) and ending in name and entry != record:
                yield (
                    f"{folder}: {shown(entry)!r} lies beside the record and looks like another copy of it; compare the "
                    "two before going on, then move it away"
                )


def check_inside(path: str, where: str, folder: str | None = None) -> None:
    """Raise RecordError for a path that could lead out of the job's folder, or is no file name everywhere.

    A path is relative, parts divided by "/", in recordings, photos or reports; `folder` names the one it must be in.
    """
    fit = [folder] if folder else list(FOLDERS)
    parts = path.split("/")
    if len(parts) < 2 or parts[0] not in fit:
        raise RecordError(f"{where}: {shown(path)!r} must be a path in {' or '.join(fit)}, such as {fit[0]}/0001.au")
    if len(path.encode("utf-8", "replace")) > _MOST_PATH_BYTES or any(
        len(p.encode("utf-8", "replace")) > 255 for p in parts
    ):
        raise RecordError(f"{where}: {shown(path)!r} is too long, at most 255 bytes in a name")
    for part in parts:
        unfit = any(c in '\\:*?"<>|' or not (c.isprintable() or unicodedata.category(c) == "Cf") for c in part)
        if unfit or part in ("", ".", "..") or part.endswith((".", " ")) or _DEVICES.fullmatch(part):
            raise RecordError(f"{where}: {shown(path)!r} is no plain path within the job's folder")


def fit_name(name: str) -> str:
    """The name as one that every system takes for a plain file: what does not fit becomes "_"."""
    kept = "".join(c if _fits(c) else "_" for c in name).lstrip(" ").rstrip(". ") or "_"
    if _DEVICES.fullmatch(kept) or kept.startswith("."):
        kept = "_" + kept
    stem, dot, ending = kept.rpartition(".") if "." in kept[1:] else (kept, "", "")
    ending = _shortened(ending, 20).rstrip(". ")
    dot = dot if ending else ""
    return _shortened(stem, 240 - len(ending.encode()) - len(dot)).rstrip(". ") + dot + ending


def _shortened(text: str, most_bytes: int) -> str:
    return text.encode("utf-8", "replace")[:most_bytes].decode("utf-8", "ignore")


def _fits(letter: str) -> bool:
    return letter not in '/\\:*?"<>|' and (letter.isprintable() or unicodedata.category(letter) == "Cf")


def room_in(folder: Path, inner: str) -> Path:
    """The folder within the job's that files of a kind go to, made where it is missing. Raises RecordError.

    A link is refused: what is written would land elsewhere.
    """
    if inner not in FOLDERS:
        raise RecordError(f"{shown(inner)!r} is no folder of a job; there is {', '.join(FOLDERS)}")
    room = folder / inner
    try:
        room.mkdir(exist_ok=True)
        if not stat.S_ISDIR(os.stat(room, follow_symlinks=False).st_mode):
            raise RecordError(f"{room}: leads out of the job's folder through a link; put a folder there")
    except OSError as error:
        raise RecordError(f"{room}: {why(error)}") from None
    return room


def file_inside(folder: Path, path: str, where: str) -> Path:
    """The file that a path of the record names. Raises RecordError where it is missing, or a link, or leads out.

    Names that differ only in how accents are coded are one: copying between systems changes that.
    """
    check_inside(path, where)
    found = folder
    for part in path.split("/"):
        found = _child(found, part)
        try:
            mode = os.stat(found, follow_symlinks=False).st_mode
        except (OSError, ValueError):
            raise RecordError(f"{where}: {shown(path)} is missing in {folder}") from None
        if stat.S_ISLNK(mode):
            raise RecordError(f"{where}: {shown(path)} leads out through a link; put the file itself there")
    if not stat.S_ISREG(mode):
        raise RecordError(f"{where}: {shown(path)} is no ordinary file")
    return found


def _child(folder: Path, name: str) -> Path:
    direct = folder / name
    if not os.path.lexists(direct) and not name.isascii():
        with contextlib.suppress(OSError), os.scandir(folder) as entries:
            for entry in entries:
                if unicodedata.normalize("NFC", entry.name) == unicodedata.normalize("NFC", name):
                    return folder / entry.name
    return direct


def sha256_of(file: Path) -> str:
    """SHA-256 of a file in hex, read piece by piece. Raises RecordError."""
    try:
        with open(file, "rb", buffering=0) as opened_file:
            return hashlib.file_digest(opened_file, "sha256").hexdigest()
    except OSError as error:
        raise RecordError(f"{file}: cannot be read: {(error.strerror or '').lower()}") from None
