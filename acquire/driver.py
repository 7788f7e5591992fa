"""The process that drives the device: opens the source, and does nothing but move its blocks into the ring.

Whatever hangs or dies in a driver's library dies with this process; the keeper watches it and starts another one.
"""

from __future__ import annotations

import contextlib
import os
import signal
import sys
import threading
import time
from collections.abc import Sequence
from dataclasses import dataclass
from multiprocessing.connection import Connection
from typing import NoReturn

from stillshaft.acquire.ring import Ring, Shape
from stillshaft.acquire.source import Source, SourceError, SourceRequest

READ_TIMEOUT_S = 0.1
_CLOSE_LIMIT_S = 0.3
_SET_DEATH_SIGNAL = 1  # prctl's number


@dataclass(frozen=True)
class Opened:
    """What an opened source is like; see `source.Source`."""

    channels: int
    rate_hz: float
    description: str
    can_wait: bool
    silence_limit_s: float | None
    skew_s: tuple[float, ...]


def drive(request: SourceRequest, pipe: Connection, inherited: Sequence[Connection]) -> None:
    """Open the source, tell how, wait for the ring, then fill it until told to stop. Ends the process.

    `inherited` are the keeper's own connections, which a forked process must not hold open.
    """
    for connection in inherited:
        connection.close()
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the program decides what an interrupt means
    _die_with_the_keeper()
    sys.setswitchinterval(0.0005)  # a driver's callback must get its turn
    try:
        source = request.open()
        opened = Opened(
            source.channels,
            source.rate_hz,
            source.description,
            source.can_wait,
            source.silence_limit_s,
            source.skew_s,
        )
    except SourceError as error:
        _leave(pipe, ("failed", str(error)))
    except Exception as error:  # noqa: BLE001 - a driver may raise anything; it must end in words
        _leave(pipe, ("failed", f"the source could not be opened: {type(error).__name__}: {error}"))
    try:
        pipe.send(("opened", opened))
        shape = pipe.recv()
    except (EOFError, OSError):
        os._exit(0)
    kind, text = _fill(source, Ring.attach(shape), pipe) if isinstance(shape, Shape) else ("ended", "not wanted")
    closing = threading.Thread(target=source.close, name="closing", daemon=True)
    closing.start()
    closing.join(timeout=_CLOSE_LIMIT_S)
    _leave(pipe, (kind, text))


def _leave(pipe: Connection, message: tuple[str, str]) -> NoReturn:
    with contextlib.suppress(OSError):
        pipe.send(message)
    os._exit(0)  # a driver's own threads must not hold the process


def _die_with_the_keeper() -> None:
    """Ask the system, where it can, to end this process with its parent: a hung driver cannot look whether it lives."""
    if sys.platform != "linux":
        return
    import ctypes

    with contextlib.suppress(OSError, AttributeError):
        ctypes.CDLL(None).prctl(_SET_DEATH_SIGNAL, signal.SIGKILL)


def _fill(source: Source, ring: Ring, pipe: Connection) -> tuple[str, str]:
    """Move blocks until the source ends ("ended"), goes away ("lost"), or the keeper says stop."""
    came_back_s = ring.delivered_ns * 1e-9 if ring.delivered_ns else None
    try:
        while True:
            if pipe.poll(0):
                return "ended", "stopped"
            block = source.read(READ_TIMEOUT_S)
            if block is None:
                return "ended", "the source came to its end"
            if not len(block.samples):
                continue
            while source.can_wait and ring.room() < min(len(block.samples), ring.shape.frames):
                if pipe.poll(0.002):
                    return "ended", "stopped"
            now_s = time.monotonic()
            lost = block.lost_before
            if came_back_s is not None:  # this process took over from one that was lost
                away_s = now_s - len(block.samples) / block.rate_hz - came_back_s
                lost, came_back_s = max(0, round(away_s * block.rate_hz)), None
            ring.put(block.samples, time.monotonic_ns(), lost)
    except SourceError as error:
        return "lost", str(error)
    except EOFError:
        return "ended", "stopped"
    except Exception as error:  # noqa: BLE001 - a driver may raise anything; it must end in words
        return "lost", f"the source failed: {type(error).__name__}: {error}"
