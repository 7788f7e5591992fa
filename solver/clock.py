"""The time for waits between starts, which nobody shortens by setting the computer's clock while the program runs.

Entries of the record are dated by the computer's clock. How long ago an entry was made that this program itself wrote is
told by the time that it has been running since; of others, the computer's clock is believed once, as it stood when the program
began, and not a later one that is ahead of it.
"""

from __future__ import annotations

import time
from datetime import UTC, datetime, timedelta

SET_S = 60.0  # by which the clock must be off before it is said that it was set: adjusting takes seconds


def _running_s() -> float:
    """Seconds that nobody sets; where it can be had, those that the computer slept are in it."""
    return time.clock_gettime(time.CLOCK_BOOTTIME) if hasattr(time, "CLOCK_BOOTTIME") else time.monotonic()


def _clock() -> datetime:
    return datetime.now(UTC)


_began, _began_s = _clock(), _running_s()
_dated: dict[str, float] = {}  # running seconds of the entries written here


def stamp() -> str:
    """The time for an entry that is written now, by the computer's clock, as ISO text in UTC."""
    at = _clock().isoformat(timespec="milliseconds")
    _dated[at] = _running_s()
    return at


def ahead_s() -> float:
    """By how many seconds the computer's clock was set forward since the program began; negative: back."""
    return (_clock() - _began).total_seconds() - (_running_s() - _began_s)


def now(last: str | None = None) -> datetime:
    """The time for what has to be waited for after the entry that is dated `last`, in UTC."""
    if last in _dated:
        return datetime.fromisoformat(last) + timedelta(seconds=_running_s() - _dated[last])
    return min(_clock(), _began + timedelta(seconds=_running_s() - _began_s))
