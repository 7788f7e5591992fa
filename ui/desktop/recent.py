"""The jobs that were open of late, remembered from day to day in a small file beside that of the view. No Qt here.

A file that cannot be read or written loses nothing but this list.
"""

from __future__ import annotations

from pathlib import Path

MOST = 5


def path_beside(settings_file: Path) -> Path:
    """Where the list is kept."""
    return settings_file.with_name("jobs.toml")


def load(path: Path) -> tuple[Path, ...]:
    """Folders of jobs, the newest first; those that are gone are left out."""
    import tomllib

    from stillshaft.solver.record import NAME

    try:
        listed = tomllib.loads(path.read_text(encoding="utf-8")).get("recent", [])
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError):
        return ()
    folders = [Path(text) for text in listed if isinstance(text, str)] if isinstance(listed, list) else []
    return tuple(f for f in folders if (f / NAME).is_file())[:MOST]


def remember(path: Path, folder: Path) -> tuple[Path, ...]:
    """Put a job at the head of the list and write it; the list as it is now. Raises OSError."""
    import tomli_w
    from stillshaft.dsp import tables

    folders = (folder.resolve(), *(f for f in load(path) if f.resolve() != folder.resolve()))[:MOST]
    path.parent.mkdir(parents=True, exist_ok=True)
    tables.write_whole(path, tomli_w.dumps({"recent": [str(f) for f in folders]}).encode())
    return folders
