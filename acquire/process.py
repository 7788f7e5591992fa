"""The acquisition process: a child that reads the device, records to disk and fills a ring in shared memory.

Three activities. In the child, the reader thread takes blocks from the source and passes each to the ring and to the
recorder's queue; the recorder thread owns the disk. In the parent nothing runs: it looks into the ring when it likes,
may stall, collect garbage or crash, and no sample is lost for it. A hung driver is killed with its process.
"""

from __future__ import annotations

import multiprocessing
import os
import queue
import signal
import sys
import threading
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from multiprocessing.connection import Connection
from multiprocessing.shared_memory import SharedMemory
from pathlib import Path
from types import TracebackType
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.acquire.recording import Recorder, RecordingError
from stillshaft.acquire.source import Block, Source, SourceError, SourceLost, SourceRequest

_START_LIMIT_S = 30.0  # importing, opening a device
_CLOSE_LIMIT_S = 1.5
_READ_TIMEOUT_S = 0.25
_QUEUE_BLOCKS = 400  # of the recorder: 20 s of live blocks of 50 ms
_WRITTEN, _READ = range(2)  # counters at the head of the ring
_COUNTER_BYTES = 64
_NO_READER = -1
_GONE = "the acquisition process ended unexpectedly; start the source again"


@dataclass(frozen=True)
class RecordingSummary:
    """How a recording ended: `complete` is False when it stopped before its time, for `reason`."""

    path: Path
    frames: int
    seconds: float
    complete: bool
    gaps: tuple[int, ...]
    reason: str | None


@dataclass(frozen=True)
class RecordingOrder:
    """What to record from the source's first frame on: where, with which hook-up and names, how long."""

    path: Path
    hookup: dict[str, Any] | None
    channel_names: tuple[str, ...]
    seconds: float


class _Ring:
    """Frames in shared memory: one writer in the child, one reader in the parent, absolute frame counters."""

    def __init__(self, memory: SharedMemory, frames: int, channels: int) -> None:
        self.memory, self.frames, self.channels = memory, frames, channels
        self.counters: NDArray[np.int64] = np.ndarray(2, dtype=np.int64, buffer=memory.buf)
        self._data: NDArray[np.float32] = np.ndarray(
            (frames, channels), dtype=np.float32, buffer=memory.buf, offset=_COUNTER_BYTES
        )

    def room(self) -> int:
        """Frames that fit before the reader would be overrun."""
        read = int(self.counters[_READ])
        return self.frames if read == _NO_READER else self.frames - (int(self.counters[_WRITTEN]) - read)

    def put(self, samples: NDArray[np.float32]) -> None:
        """Append frames; the counter moves last."""
        written = int(self.counters[_WRITTEN])
        at = written % self.frames
        first = min(len(samples), self.frames - at)
        self._data[at : at + first] = samples[:first]
        self._data[: len(samples) - first] = samples[first:]
        self.counters[_WRITTEN] = written + len(samples)

    def take(self) -> tuple[int, NDArray[np.float32], bool]:
        """Frames not read yet: number of the first, copy, and whether older ones were overrun."""
        written = int(self.counters[_WRITTEN])
        read = int(self.counters[_READ])
        if read == _NO_READER:
            read = max(0, written - self.frames // 2)
        # the writer may be within its next block: half a ring of distance keeps what is copied whole
        overrun = written - read > self.frames
        if overrun:
            read = written - self.frames // 2
        index = np.arange(read, written) % self.frames
        samples = self._data[index]
        self.counters[_READ] = written
        return read, samples, overrun

    def drop(self) -> None:
        """Let go of the arrays, so that the memory can be closed."""
        del self.counters, self._data


class Acquisition:
    """The parent's side: starts the child, looks into its ring, orders recordings.

    Use as a context manager. Raises SourceError with the child's one line when the source cannot be opened.
    """

    def __init__(
        self, request: SourceRequest, *, ring_seconds: float = 10.0, recording: RecordingOrder | None = None
    ) -> None:
        context = multiprocessing.get_context("spawn")
        self._pipe, theirs = context.Pipe()
        self._process = context.Process(
            target=_child, args=(request, theirs, ring_seconds, recording), name="acquisition", daemon=True
        )
        self._process.start()
        theirs.close()
        self._ring: _Ring | None = None
        self._finished: list[RecordingSummary] = []
        self._recording = recording is not None
        self.failure: str | None = None
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
        name, frames, self.channels, self.rate_hz, self.description = content
        self._ring = _Ring(SharedMemory(name), frames, self.channels)

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
        """Take what the child reports."""
        try:
            while (message := self._receive(timeout_s)) is not None:
                timeout_s = 0.0
                kind, content = message
                if kind == "recorded":
                    self._finished.append(content)
                    self._recording = False
                elif kind == "failed":
                    self.failure = content
        except (EOFError, OSError):
            self.failure = self.failure or _GONE

    @property
    def frames(self) -> int:
        """Frames that the source has delivered so far."""
        return 0 if self._ring is None else int(self._ring.counters[_WRITTEN])

    def read(self) -> Block | None:
        """Frames that came since the last call, marked where some were overrun; None when there are none."""
        assert self._ring is not None
        first, samples, overrun = self._ring.take()
        if not len(samples):
            self._listen()
            return None
        return Block(first, self.rate_hz, samples, overrun)

    def record(
        self, path: Path, hookup: dict[str, Any] | None, channel_names: Sequence[str], *, frames: int | None = None
    ) -> None:
        """Record from the next frame on, until `stop_recording` or for so many frames."""
        self._recording = True
        self._send("record", (path, hookup, list(channel_names), frames))

    def finished_recording(self) -> RecordingSummary | None:
        """The summary of a recording that has ended since the last call, if one has."""
        self._listen()
        if self.failure is not None and self._recording and not self._process.is_alive():
            self._recording = False
            raise SourceLost(self.failure)
        return self._finished.pop(0) if self._finished else None

    def stop_recording(self) -> RecordingSummary:
        """End the recording now. Raises SourceLost when the child is gone."""
        if not self._finished and self.failure is None:
            self._send("stop", None)
        deadline = time.monotonic() + 5.0
        while not self._finished and self.failure is None and time.monotonic() < deadline:
            self._listen(0.1)
        if not self._finished:
            raise SourceLost(self.failure or "the recording did not close within 5 s")
        return self._finished.pop(0)

    def close(self) -> None:
        """Stop the source. Never waits longer than 1.5 s: a child that does not end is killed."""
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
            memory, ring = self._ring.memory, self._ring
            self._ring = None
            ring.drop()
            memory.close()
            memory.unlink()

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
                    on_progress(min(1.0, acquisition.frames / wanted), "recording")
                time.sleep(0.02)
        except KeyboardInterrupt:
            acquisition.stop_recording()
            raise
        if summary.frames == 0 and summary.reason:
            raise SourceLost(summary.reason)
        return summary


# the child


@dataclass
class _Ordered:
    """A recording under way in the child."""

    recorder: Recorder
    wanted: int | None


class _Worker:
    """The child's state: the source, the ring, the recorder's queue."""

    def __init__(self, source: Source, ring: _Ring, pipe: Connection) -> None:
        self.source, self.ring, self.pipe = source, ring, pipe
        self.can_wait = bool(getattr(source, "can_wait", False))
        self.blocks: queue.Queue[Block | tuple[str, Any]] = queue.Queue(_QUEUE_BLOCKS)
        self.ending = threading.Event()
        self._sending = threading.Lock()
        self._recording = threading.Event()
        self._missed = False

    def tell(self, kind: str, content: Any) -> None:
        """Report to the parent, if it is still there."""
        with self._sending:
            try:
                self.pipe.send((kind, content))
            except OSError:
                self.ending.set()

    def read_source(self) -> None:
        """Reader thread: from the source to ring and queue, until the end."""
        reason = "the source came to its end"
        try:
            while not self.ending.is_set():
                block = self.source.read(_READ_TIMEOUT_S)
                if block is None:
                    break
                if len(block.samples):
                    self._pass_on(block)
        except SourceError as error:
            reason = str(error)
        except Exception as error:  # noqa: BLE001 - a driver may raise anything; it must end in words
            reason = f"the source failed: {type(error).__name__}: {error}"
        self.blocks.put(("end", reason))

    def _pass_on(self, block: Block) -> None:
        if self.can_wait:
            while self.ring.room() < len(block.samples) and not self.ending.is_set():
                time.sleep(0.002)
        self.ring.put(block.samples)
        if not self._recording.is_set():
            return
        if self._missed:
            block = Block(block.first_frame, block.rate_hz, block.samples, gap_before=True)
        try:
            self.blocks.put(block, timeout=None if self.can_wait else 0.0)
            self._missed = False
        except queue.Full:
            self._missed = True  # the disk is too slow: the next block says so

    def write_disk(self) -> None:
        """Recorder thread: owns the files, until the source ends."""
        current: _Ordered | None = None
        while True:
            item = self.blocks.get()
            if isinstance(item, Block):
                if current is not None:
                    current = self._write(current, item)
                continue
            kind, content = item
            if kind == "record":
                current = self._begin(content)
            elif kind == "stop":
                self._finish(current, complete=current is None or current.wanted is None, reason="stopped by hand")
                current = None
            elif kind == "end":
                self._finish(current, complete=current is not None and current.wanted is None, reason=content)
                self.tell("failed", content)
                return

    def _begin(self, order: tuple[Path, dict[str, Any] | None, list[str], int | None]) -> _Ordered | None:
        path, hookup, names, wanted = order
        try:
            recorder = Recorder(path, self.source.rate_hz, names, self.source.description, hookup)
        except RecordingError as error:
            self.tell("recorded", RecordingSummary(path, 0, 0.0, False, (), str(error)))
            self._recording.clear()
            return None
        return _Ordered(recorder, wanted)

    def _write(self, current: _Ordered, block: Block) -> _Ordered | None:
        samples = block.samples
        if current.wanted is not None:
            samples = samples[: current.wanted - current.recorder.frames]
        try:
            current.recorder.write(samples, gap_before=block.gap_before)
        except RecordingError as error:
            self._finish(current, complete=False, reason=str(error))
            return None
        if current.recorder.frames == current.wanted:
            self._finish(current, complete=True, reason=None)
            return None
        return current

    def _finish(self, current: _Ordered | None, *, complete: bool, reason: str | None) -> None:
        self._recording.clear()
        if current is None:
            return
        recorder = current.recorder
        reason = None if complete else reason
        try:
            recorder.close(complete=complete, reason=reason)
        except OSError as error:
            complete, reason = False, f"{recorder.path}: {error.strerror}"
        seconds = recorder.frames / self.source.rate_hz
        self.tell(
            "recorded",
            RecordingSummary(recorder.path, recorder.frames, seconds, complete, tuple(recorder.gaps), reason),
        )

    def order(self, order: tuple[str, Any]) -> None:
        """Queue an order for the recorder behind the blocks that came before it."""
        self.blocks.put(order)
        if order[0] == "record":
            self._recording.set()

    def obey(self) -> None:
        """Main thread: orders of the parent, until it says close or is gone."""
        while not self.ending.is_set():
            try:
                if not self.pipe.poll(0.1):
                    continue
                kind, content = self.pipe.recv()
            except (EOFError, OSError):
                return
            if kind == "close":
                return
            self.order((kind, content))


def _child(request: SourceRequest, pipe: Connection, ring_seconds: float, recording: RecordingOrder | None) -> None:
    """Open the source and serve it until the parent says close, or is gone."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the parent decides what an interrupt means
    sys.setswitchinterval(0.0005)  # the reader must get its turn while the recorder works
    try:
        source = request.open()
    except SourceError as error:
        pipe.send(("failed", str(error)))
        return
    except Exception as error:  # noqa: BLE001 - a driver may raise anything; it must end in words
        pipe.send(("failed", f"the source could not be opened: {type(error).__name__}: {error}"))
        return
    frames = max(1, round(ring_seconds * source.rate_hz))
    memory = SharedMemory(create=True, size=_COUNTER_BYTES + 4 * frames * source.channels)
    ring = _Ring(memory, frames, source.channels)
    ring.counters[:] = (0, _NO_READER)
    pipe.send(("opened", (memory.name, frames, source.channels, source.rate_hz, source.description)))
    worker = _Worker(source, ring, pipe)
    if recording is not None:
        wanted = max(1, round(recording.seconds * source.rate_hz))
        worker.order(("record", (recording.path, recording.hookup, list(recording.channel_names), wanted)))
    threads = [
        threading.Thread(target=worker.read_source, name="reader", daemon=True),
        threading.Thread(target=worker.write_disk, name="recorder", daemon=True),
    ]
    for thread in threads:
        thread.start()
    worker.obey()
    worker.ending.set()
    for thread in threads:
        thread.join(timeout=1.0)
    closing = threading.Thread(target=source.close, name="closing", daemon=True)
    closing.start()
    closing.join(timeout=0.3)
    # a parent that died cannot unlink the ring
    parent = multiprocessing.parent_process()
    if parent is None or not parent.is_alive():
        memory.unlink()
    os._exit(0)  # a driver's own threads must not hold the process
