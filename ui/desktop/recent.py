"""The jobs that were open of late, remembered from day to day in a small file beside that of the view. No Qt here.

A file that cannot be read or written loses nothing but this list.
"""

from __future__ import annotations

from pathlib import Path

MOST = 5
_MOST_LISTED = 100  # entries of the file that are looked at


def path_beside(settings_file: Path) -> Path:
    """Where the list is kept."""
    return settings_file.with_name("jobs.toml")


def load(path: Path) -> tuple[Path, ...]:
    """Folders of jobs, the newest first; those that are gone are left out."""
    from stillshaft.dsp import tables

    try:
        listed = tables.read(path).get("recent", [])
    except tables.TableError:
        return ()
    folders = [Path(text) for text in listed if isinstance(text, str)] if isinstance(listed, list) else []
    return tuple(f for f in folders[:_MOST_LISTED] if _holds_a_job(f))[:MOST]


def _holds_a_job(folder: Path) -> bool:
    from stillshaft.solver.record import NAME

    try:
        return (folder / NAME).is_file()
    except OSError:  # a name that is too long, or a disk that is gone
        return False


def remember(path: Path, folder: Path) -> tuple[Path, ...]:
    """Put a job at the head of the list and write it; the list as it is now. Raises OSError."""
    import tomli_w
    from stillshaft.dsp import tables

    folders = (folder.resolve(), *(f for f in load(path) if f.resolve() != folder.resolve()))[:MOST]
    path.parent.mkdir(parents=True, exist_ok=True)
    tables.write_whole(path, tomli_w.dumps({"recent": [str(f) for f in folders]}).encode())
    return folders
