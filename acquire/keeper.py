"""The process that keeps recordings and watches the driver: one thread, no driver's library, nothing that can hang it.

It reads the ring at its own pace and owns the disk. A driver process that falls silent is killed at once and another
one is started, which reads the list of devices anew; what was lost meanwhile is a gap in the recording. The program
itself may stall, collect garbage or crash, and no sample is lost for it.
"""

from __future__ import annotations

import contextlib
import multiprocessing
import os
import signal
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass
from multiprocessing.connection import Connection, wait
from multiprocessing.process import BaseProcess
from pathlib import Path
from typing import Any

from stillshaft.acquire import driver
from stillshaft.acquire.recording import Recorder, RecordingError
from stillshaft.acquire.ring import KEEPER, UNKNOWN, Gap, Ring
from stillshaft.acquire.source import SourceRequest

_START_LIMIT_S, _RESTART_LIMIT_S = 30.0, 5.0  # importing, opening a device; opening it again
_RETRY_S = 0.1
COME_BACK_S = 8.0  # a source that is lost is waited for so long
_CLOSE_LIMIT_S = 0.8
_IDLE_S = 0.04  # a message wakes it at once; the ring holds seconds
_MOST_AT_ONCE_S = 0.5
_DIED = "the process that drives the source ended unexpectedly"


@dataclass(frozen=True)
class RecordingSummary:
    """How a recording ended: `complete` is False when it stopped before its time, for `reason`.

    `gaps` are the frames of the recording before which some were lost; `remarks` is what else speaks against it.
    """

    path: Path
    frames: int
    seconds: float
    complete: bool
    gaps: tuple[int, ...]
    reason: str | None
    remarks: tuple[str, ...] = ()


@dataclass(frozen=True)
class RecordingOrder:
    """What to record: where, with which hook-up and channel names, for how many seconds (None: until stopped)."""

    path: Path
    hookup: dict[str, Any] | None
    channel_names: tuple[str, ...]
    seconds: float | None


class Keeper:
    """The state of the process: the driver it has started, the ring, the recording under way."""

    def __init__(self, request: SourceRequest, pipe: Connection, ring_seconds: float) -> None:
        self._request, self._pipe, self._ring_seconds = request, pipe, ring_seconds
        # a clean process of one thread may be forked, which takes a hundredth of a second
        self._context = multiprocessing.get_context("fork" if sys.platform == "linux" else "spawn")
        self._process: BaseProcess | None = None
        self._driver: Connection | None = None
        self._ring: Ring | None = None
        self._opened: driver.Opened | None = None
        self._recorder: Recorder | None = None
        self._wanted: int | None = None
        self._closing = False
        self._lost_at: float | None = None  # when the source was lost, by time.monotonic
        self._why_lost = ""
        self._why_gap: str | None = None
        self._volume: str | None = None  # of the mixer, when the recording began
        self._connected_ns = 0  # when the driver in charge got its ring

    def tell(self, kind: str, content: Any) -> None:
        """Report to the program; if it is gone, end."""
        try:
            self._pipe.send((kind, content))
        except OSError:
            self._closing = True

    # the driver

    def _start_driver(self) -> None:
        ours, theirs = self._context.Pipe()
        inherited = [self._pipe, ours] if self._context.get_start_method() == "fork" else []
        self._process = self._context.Process(  # type: ignore[attr-defined]
            target=driver.drive, args=(self._request, theirs, inherited), name="driver", daemon=True
        )
        self._process.start()
        theirs.close()
        self._driver = ours

    def _end_driver(self, *, kindly: bool) -> None:
        """Stop it, in words if it listens; a silent one is killed at once."""
        if self._process is None:
            return
        if kindly and self._driver is not None:
            with contextlib.suppress(OSError):
                self._driver.send("stop")
            self._process.join(_CLOSE_LIMIT_S)
        if self._process.is_alive():
            self._process.kill()
        self._process.join()
        self._process.close()
        if self._driver is not None:
            self._driver.close()
        self._process = self._driver = None

    def _await_opened(self, limit_s: float) -> str | None:
        """Wait until the driver has opened its source; what went wrong, else None."""
        assert self._driver is not None
        deadline = time.monotonic() + limit_s
        while not self._closing:
            left = deadline - time.monotonic()
            if left <= 0.0:
                return f"the source did not open within {limit_s:.0f} s; unplug it and try again"
            if self._driver in wait([self._driver, self._pipe], min(left, 0.1)):
                try:
                    kind, content = self._driver.recv()
                except (EOFError, OSError):
                    return _DIED
                if kind != "opened":
                    return str(content)
                return self._connect(content)
            self._obey()
            self._copy()
        return "closed"

    def _connect(self, opened: driver.Opened) -> str | None:
        """Give the driver its ring, a new one the first time."""
        assert self._driver is not None
        if self._ring is None:
            frames = max(1, round(self._ring_seconds * opened.rate_hz))
            self._ring, self._opened = Ring.create(frames, opened.channels), opened
        elif self._opened is not None and (opened.channels, opened.rate_hz) != (
            self._opened.channels,
            self._opened.rate_hz,
        ):
            channels, rate_hz = opened.channels, opened.rate_hz
            return f"the source came back with {channels} input{'s' * (channels != 1)} at {rate_hz:g} Hz: start again"
        self._connected_ns = time.monotonic_ns()
        self._driver.send(self._ring.shape)
        return None

    def open(self) -> bool:
        """Start the first driver; False where it failed, and the program was told why."""
        self._start_driver()
        problem = self._await_opened(_START_LIMIT_S)
        if problem is not None or self._ring is None:
            self._end_driver(kindly=False)
            self.tell("failed", problem or "closed")
            return False
        self.tell("opened", (self._ring.shape, self._opened))
        return True

    def serve(self) -> None:
        """Copy, watch and obey until the source has ended or the program says close, or is gone."""
        while not self._closing:
            busy = self._copy()
            self._obey()
            ended = self._watch()
            if ended is not None:
                while self._copy():
                    pass
                self._finish(complete=self._wanted is None and not self._lost_at, reason=ended)
                self.tell("failed", ended)
                self._linger()
                return
            if not busy:
                wait([self._pipe, *([self._driver] if self._driver else [])], _IDLE_S)

    def _linger(self) -> None:
        """The source is gone, the ring is not yet read: wait for the program to close."""
        while not self._closing:
            wait([self._pipe], 0.5)
            self._obey()

    def _watch(self) -> str | None:
        """Look after the driver; why the source is at its end, None while it is not."""
        assert self._opened is not None
        assert self._ring is not None
        if self._driver is None:
            return self._try_again()
        limit_s, delivered_ns = self._opened.silence_limit_s, self._ring.delivered_ns
        delivering = delivered_ns > self._connected_ns
        if delivering and self._lost_at is not None:
            self._lost_at = None
            self.tell("trouble", None)
        problem: str | None = None
        try:
            if self._driver.poll(0):
                kind, text = self._driver.recv()
                if kind == "ended":
                    return str(text)
                problem = str(text)
        except (EOFError, OSError):
            problem = _DIED
        if problem is None and limit_s is not None:
            silent_s = 1e-9 * (time.monotonic_ns() - max(delivered_ns, self._connected_ns))
            if silent_s > (limit_s if delivering else _RESTART_LIMIT_S):
                problem = (
                    f'source "{self._opened.description}": silent for {silent_s:.1f} s; check the cable and the device'
                )
        if problem is None:
            return None
        if self._lost_at is None:
            self._lost_at, self._why_lost = time.monotonic(), problem
            if limit_s is None:  # a recording or a simulated rotor does not come back
                return problem
            self.tell("trouble", problem)
        return self._try_again()

    def _try_again(self) -> str | None:
        """Start another driver; why it is given up, None otherwise."""
        assert self._lost_at is not None
        self._end_driver(kindly=False)
        if time.monotonic() - self._lost_at > COME_BACK_S:
            return f"{self._why_lost}; it did not come back within {COME_BACK_S:.0f} s"
        self._start_driver()
        if self._await_opened(_RESTART_LIMIT_S) is None:
            self._why_gap = self._why_lost
            return None
        self._end_driver(kindly=False)
        wait([self._pipe], _RETRY_S)
        return None

    # the recording

    def _obey(self) -> None:
        """Orders of the program."""
        try:
            while self._pipe.poll(0):
                kind, content = self._pipe.recv()
                if kind == "close":
                    self._closing = True
                elif kind == "record":
                    self.record(content)
                elif kind == "stop":
                    self._copy()
                    self._finish(complete=content or self._wanted is None, reason="stopped by hand")
        except (EOFError, OSError):
            self._closing = True

    def record(self, order: RecordingOrder) -> None:
        """Begin a recording with the next frame that the ring is read."""
        assert self._opened is not None
        rate_hz = self._opened.rate_hz
        # a source may bring more inputs than the hook-up names
        count, named = self._opened.channels, order.channel_names
        names = [*named, *(f"input {i + 1}" for i in range(len(named), count))][:count]
        try:
            self._recorder = Recorder(
                order.path, rate_hz, names, self._opened.description, order.hookup, self._opened.skew_s
            )
        except RecordingError as error:
            self.tell("recorded", RecordingSummary(order.path, 0, 0.0, False, (), str(error)))
            return
        self._wanted = None if order.seconds is None else max(1, round(order.seconds * rate_hz))
        self._volume = self._noted_volume()

    def _noted_volume(self) -> str | None:
        """The mixer's volume now, which is written into the event log: a change of it is a change of every level."""
        ask: Callable[[], str | None] | None = getattr(self._request, "volume", None)
        text = None if ask is None else ask()
        if text is not None and self._recorder is not None:
            with contextlib.suppress(RecordingError):
                self._recorder.event({"kind": "volume", "frame": self._recorder.frames, "text": text})
        return text

    def _copy(self) -> bool:
        """Take what is new in the ring, to disk if there is a recording; True where there was something."""
        ring, opened = self._ring, self._opened
        if ring is None or opened is None:
            return False
        if self._recorder is None:
            moved = ring.written > ring.position(KEEPER)
            ring.move(KEEPER, ring.written)
            return moved
        _, samples, gap = ring.take(KEEPER, max(1, round(_MOST_AT_ONCE_S * opened.rate_hz)))
        if not len(samples):
            return False
        if self._wanted is not None:
            samples = samples[: self._wanted - self._recorder.frames]
        try:
            self._recorder.write(samples, lost_before=None if gap is None else gap.lost, why=self._words(gap))
        except RecordingError as error:
            self._finish(complete=False, reason=str(error))
            return True
        if self._recorder.frames == self._wanted:
            self._finish(complete=True, reason=None)
        return True

    def _words(self, gap: Gap | None) -> str:
        if gap is None:
            return ""
        why, self._why_gap = self._why_gap or "samples were lost", None
        assert self._opened is not None
        return why if gap.lost == UNKNOWN else f"{why}; about {gap.lost / self._opened.rate_hz:.3f} s are missing"

    def _finish(self, *, complete: bool, reason: str | None) -> None:
        if self._recorder is None:
            return
        volume = self._noted_volume()
        remarks: tuple[str, ...] = ()
        if volume != self._volume and volume is not None and self._volume is not None:
            remarks = (f"the source volume was changed during the run, from {self._volume} to {volume}: record again",)
        recorder, self._recorder = self._recorder, None
        reason = None if complete else reason
        try:
            recorder.close(complete=complete, reason=reason)
        except (RecordingError, OSError) as error:
            complete, reason = False, reason or str(error)
        seconds, gaps = recorder.frames / recorder.rate_hz, tuple(recorder.gaps)
        self.tell(
            "recorded", RecordingSummary(recorder.path, recorder.frames, seconds, complete, gaps, reason, remarks)
        )

    def close(self) -> None:
        """End the driver and the recording; remove the ring if the program can no longer do so."""
        self._copy()
        self._finish(complete=self._wanted is None, reason="the program ended")
        self._end_driver(kindly=True)
        if self._ring is not None:
            parent = multiprocessing.parent_process()
            self._ring.close(unlink=parent is None or not parent.is_alive())


def keep(request: SourceRequest, pipe: Connection, ring_seconds: float, recording: RecordingOrder | None) -> None:
    """The whole life of the process."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the program decides what an interrupt means
    keeper = Keeper(request, pipe, ring_seconds)
    if keeper.open():
        if recording is not None:
            keeper.record(recording)
        keeper.serve()
    keeper.close()
    os._exit(0)
