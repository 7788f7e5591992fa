"""What the sound server says of its sources: rate, inputs, volume, and whether it converts on the way.

Read from `pactl`, where there is one; everything here is None where nothing can be told.
"""

from __future__ import annotations

import os
import re
import subprocess
from dataclasses import dataclass

NAMES = ("pulse", "default", "pipewire")  # inputs that go through a server
_LIMIT_S = 2.0


@dataclass(frozen=True)
class ServerSource:
    """The source that an input of the server's name records from."""

    channels: int
    rate_hz: float


def _asked(*arguments: str) -> str | None:
    try:
        done = subprocess.run(
            ["pactl", *arguments],
            capture_output=True,
            text=True,
            check=False,
            timeout=_LIMIT_S,
            env=os.environ | {"LC_ALL": "C"},
        )
    except (OSError, subprocess.TimeoutExpired):
        return None
    return done.stdout if done.returncode == 0 else None


def default_source() -> ServerSource | None:
    """Inputs and rate of the source that the server records from unless told otherwise."""
    name, listed = _asked("get-default-source"), _asked("list", "sources")
    if name is None or listed is None:
        return None
    for part in listed.split("\nSource #"):
        if f"\tName: {name.strip()}\n" in part:
            match = re.search(r"Sample Specification: \S+ (\d+)ch (\d+)Hz", part)
            return ServerSource(int(match[1]), float(match[2])) if match else None
    return None


def converting(process_id: int) -> str | None:
    """How the server changes rate or channels for a process that records: "copy" is channels alone; None: it does not."""
    listed = _asked("list", "source-outputs")
    for part in (listed or "").split("Source Output #"):
        if f'application.process.id = "{process_id}"' in part:
            match = re.search(r"Resample method: (\S+)", part)
            return match[1] if match and match[1] != "n/a" else None
    return None


def volume() -> str | None:
    """Volume of the default source, each input in percent, and whether it is muted."""
    said, muted = _asked("get-source-volume", "@DEFAULT_SOURCE@"), _asked("get-source-mute", "@DEFAULT_SOURCE@")
    if said is None:
        return None
    levels = re.findall(r"([\w-]+): \d+ /\s*(\d+)%", said)
    return ", ".join(f"{name} {percent} %" for name, percent in levels) + (", muted" if "yes" in (muted or "") else "")
