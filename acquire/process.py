"""The program's side of acquisition: it starts the keeper process, looks into the ring, and orders recordings.

Nothing runs here. The keeper owns the disk and watches a third process that drives the device, so that a program that
stalls, collects garbage or crashes loses no sample, and a hung driver hangs nothing.
"""

from __future__ import annotations

import multiprocessing
import time
from collections.abc import Callable, Sequence
from multiprocessing.connection import Connection
from pathlib import Path
from types import TracebackType
from typing import Any

from stillshaft.acquire import keeper
from stillshaft.acquire.keeper import RecordingOrder, RecordingSummary
from stillshaft.acquire.recording import RecordingError
from stillshaft.acquire.ring import PROGRAM, Ring
from stillshaft.acquire.source import Block, SourceError, SourceLost, SourceRequest

_START_LIMIT_S = 35.0  # the keeper's own, and the time it takes to start
_CLOSE_LIMIT_S = 1.5
_STOP_LIMIT_S = 5.0
_GONE = "the acquisition process ended unexpectedly; start the source again"


class Acquisition:
    """A source running in processes of its own.

    Use as a context manager. `trouble` says what is wrong while a lost source is waited for, `failure` why it has
    ended. Raises SourceError with one line when the source cannot be opened.
    """

    def __init__(
        self, request: SourceRequest, *, ring_seconds: float = 10.0, recording: RecordingOrder | None = None
    ) -> None:
        context = multiprocessing.get_context("spawn")
        self._pipe: Connection
        self._pipe, theirs = context.Pipe()
        # not a daemon: it has a child of its own, and closes its recording when this program is gone
        self._process = context.Process(
            target=keeper.keep, args=(request, theirs, ring_seconds, recording), name="acquisition"
        )
        self._process.start()
        theirs.close()
        self._ring: Ring | None = None
        self._finished: list[RecordingSummary] = []
        self._recording = None if recording is None else recording.path  # under way
        self.failure: str | None = None
        self.trouble: str | None = None
        self._closed = False
        try:
            self._open()
        except BaseException:
            self.close()
            raise

    def _open(self) -> None:
        deadline = time.monotonic() + _START_LIMIT_S
        while True:
            try:
                message = self._receive(max(0.0, deadline - time.monotonic()))
            except EOFError:
                raise SourceError("the acquisition process ended before it had opened the source") from None
            if message is None:
                raise SourceError(f"the source did not open within {_START_LIMIT_S:.0f} s; unplug it and try again")
            kind, content = message
            if kind == "failed":
                raise SourceError(content)
            if kind == "opened":
                break
        shape, opened = content
        self.channels, self.rate_hz, self.description = opened.channels, opened.rate_hz, opened.description
        self.skew_s: tuple[float, ...] = opened.skew_s
        self._ring = Ring.attach(shape)

    def _receive(self, timeout_s: float) -> tuple[str, Any] | None:
        if self._pipe.poll(timeout_s):
            message: tuple[str, Any] = self._pipe.recv()
            return message
        return None

    def _send(self, kind: str, content: Any) -> None:
        try:
            self._pipe.send((kind, content))
        except OSError:
            self.failure = self.failure or _GONE

    def _listen(self, timeout_s: float = 0.0) -> None:
        """Take what the keeper reports."""
        try:
            while (message := self._receive(timeout_s)) is not None:
                timeout_s = 0.0
                kind, content = message
                if kind == "recorded":
                    self._finished.append(content)
                    self._recording = None
                elif kind == "failed":
                    self.failure = content
                elif kind == "trouble":
                    self.trouble = content
        except (EOFError, OSError):
            self.failure = self.failure or _GONE

    @property
    def frames(self) -> int:
        """Frames that the source has delivered so far."""
        return 0 if self._ring is None else self._ring.written

    def read(self) -> Block | None:
        """Frames that came since the last call, up to the next gap; None when there are none."""
        assert self._ring is not None
        first, samples, gap = self._ring.take(PROGRAM, self._ring.shape.frames)
        if not len(samples):
            self._listen()
            return None
        return Block(first, self.rate_hz, samples, None if gap is None else gap.lost)

    def record(
        self, path: Path, hookup: dict[str, Any] | None, channel_names: Sequence[str], *, seconds: float | None = None
    ) -> None:
        """Record from the next frame on, until `stop_recording` or for so many seconds."""
        self._recording = path
        self._send("record", RecordingOrder(path, hookup, tuple(channel_names), seconds))

    def finished_recording(self) -> RecordingSummary | None:
        """The summary of a recording that has ended since the last call, if one has."""
        self._listen()
        if self.failure is not None and self._recording is not None and not self._process.is_alive():
            path, self._recording = self._recording, None
            raise SourceLost(f"{path}: {self.failure}; what was recorded is kept")
        return self._finished.pop(0) if self._finished else None

    def end_recording(self, *, enough: bool = False) -> None:
        """Have the recording end without waiting for it: `finished_recording` brings its summary."""
        self._send("stop", enough)

    def stop_recording(self, *, enough: bool = False) -> RecordingSummary:
        """End the recording now; `enough` says that it is complete all the same.

        Raises SourceLost when the keeper is gone.
        """
        if not self._finished and self.failure is None:
            self._send("stop", enough)
        deadline = time.monotonic() + _STOP_LIMIT_S
        while not self._finished and self.failure is None and time.monotonic() < deadline:
            self._listen(0.1)
        if not self._finished:
            why = self.failure or f"the recording did not close within {_STOP_LIMIT_S:.0f} s"
            raise SourceLost(why if self._recording is None else f"{self._recording}: {why}; what was recorded is kept")
        return self._finished.pop(0)

    def close(self) -> None:
        """Stop the source. Never waits longer than 1.5 s: a process that does not end is killed."""
        if self._closed:
            return
        self._closed = True
        self._send("close", None)
        self._process.join(_CLOSE_LIMIT_S)
        if self._process.is_alive():
            self._process.kill()
            self._process.join()
        self._pipe.close()
        self._process.close()
        if self._ring is not None:
            ring, self._ring = self._ring, None
            ring.close(unlink=True)

    def __enter__(self) -> Acquisition:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self.close()


def capture(
    request: SourceRequest,
    path: Path,
    seconds: float,
    hookup: dict[str, Any] | None,
    channel_names: Sequence[str],
    on_progress: Callable[[float, str], None] | None = None,
) -> RecordingSummary:
    """Record exactly round(seconds · rate) frames and return how it went.

    Interrupted, it closes and keeps the recording, then raises KeyboardInterrupt again.
    """
    if path.exists():
        raise RecordingError(f"{path}: is there already; choose a new name")
    order = RecordingOrder(path, hookup, tuple(channel_names), seconds)
    with Acquisition(request, recording=order) as acquisition:
        wanted = max(1, round(seconds * acquisition.rate_hz))
        try:
            while (summary := acquisition.finished_recording()) is None:
                if on_progress is not None:
                    on_progress(min(1.0, acquisition.frames / wanted), acquisition.trouble or "recording")
                time.sleep(0.02)
        except KeyboardInterrupt:
            acquisition.stop_recording()
            raise
        if summary.frames == 0 and summary.reason:
            raise SourceLost(summary.reason)
        return summary
