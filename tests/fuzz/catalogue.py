"""All doors by name."""

from fuzz import doors_jobs, doors_measuring, doors_recordings, doors_tables  # noqa: F401 - they make their doors
from fuzz.guard import DOORS, Door


def named(pattern: str = "") -> list[Door]:
    """The doors whose name has the pattern in it."""
    return [door for name, door in DOORS.items() if pattern in name]
