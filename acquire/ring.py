"""Frames in shared memory, between the process that drives the device and those that read: a ring with its gaps.

One process writes; the one that keeps recordings and the program itself each read at their own pace. Counters are
absolute frame numbers and move last. Gaps lie in the same memory, written before the frames that follow them, so that
no reader can see the frames without the gap.
"""

from __future__ import annotations

from dataclasses import dataclass
from multiprocessing.shared_memory import SharedMemory

import numpy as np
from numpy.typing import NDArray

_WRITTEN, _GAPS, _DELIVERED_NS, _KEEPER, _PROGRAM = range(5)
KEEPER, PROGRAM = _KEEPER, _PROGRAM  # the two readers
_COUNTERS = 8
_MOST_GAPS = 512  # remembered at a time
_HEAD_BYTES = 8 * (_COUNTERS + 2 * _MOST_GAPS)
NOT_READING = -1
UNKNOWN = -1


@dataclass(frozen=True)
class Gap:
    """Frames lost just before `frame`, about `lost` of them; UNKNOWN where nothing tells how many."""

    frame: int
    lost: int


@dataclass(frozen=True)
class Shape:
    """How to attach to a ring."""

    name: str
    frames: int
    channels: int


class Ring:
    """One ring; `create` makes it, `attach` opens it in another process."""

    def __init__(self, memory: SharedMemory, shape: Shape) -> None:
        self.shape = shape
        self._memory = memory
        self._counters: NDArray[np.int64] = np.ndarray(_COUNTERS, dtype=np.int64, buffer=memory.buf)
        self._gaps: NDArray[np.int64] = np.ndarray(
            (_MOST_GAPS, 2), dtype=np.int64, buffer=memory.buf, offset=8 * _COUNTERS
        )
        self._data: NDArray[np.float32] = np.ndarray(
            (shape.frames, shape.channels), dtype=np.float32, buffer=memory.buf, offset=_HEAD_BYTES
        )

    @classmethod
    def create(cls, frames: int, channels: int) -> Ring:
        """A new ring with nothing in it."""
        memory = SharedMemory(create=True, size=_HEAD_BYTES + 4 * frames * channels)
        ring = cls(memory, Shape(memory.name, frames, channels))
        ring._counters[:] = 0
        ring._counters[_PROGRAM] = NOT_READING
        return ring

    @classmethod
    def attach(cls, shape: Shape) -> Ring:
        """The ring that another process has made."""
        return cls(SharedMemory(shape.name), shape)

    @property
    def written(self) -> int:
        """Frames written so far."""
        return int(self._counters[_WRITTEN])

    @property
    def delivered_ns(self) -> int:
        """When the source last delivered, by `time.monotonic_ns`; 0 before."""
        return int(self._counters[_DELIVERED_NS])

    def position(self, reader: int) -> int:
        """Frame that a reader comes to next."""
        return int(self._counters[reader])

    def move(self, reader: int, frame: int) -> None:
        """Set the frame that a reader comes to next."""
        self._counters[reader] = frame

    def room(self) -> int:
        """Frames that fit before the slower reader would be overrun."""
        slowest = min(p for p in (self.position(_KEEPER), self.position(_PROGRAM)) if p != NOT_READING)
        return self.shape.frames - (self.written - slowest)

    def put(self, samples: NDArray[np.float32], now_ns: int, lost: int | None = None) -> None:
        """Append frames; `lost` frames are missing before them, None where none are."""
        written = self.written
        if lost is not None:
            count = int(self._counters[_GAPS])
            self._gaps[count % _MOST_GAPS] = (written, lost)
            self._counters[_GAPS] = count + 1
        for begin in range(0, len(samples), self.shape.frames):  # more than the ring holds: the last frames stay
            piece = samples[begin : begin + self.shape.frames]
            at = written % self.shape.frames
            first = min(len(piece), self.shape.frames - at)
            self._data[at : at + first] = piece[:first]
            self._data[: len(piece) - first] = piece[first:]
            written += len(piece)
        self._counters[_DELIVERED_NS] = now_ns
        self._counters[_WRITTEN] = written

    def take(self, reader: int, most: int) -> tuple[int, NDArray[np.float32], Gap | None]:
        """The next frames for a reader, a copy that ends before the next gap: number of the first, frames, gap before.

        A reader that has been overrun goes on half a ring behind the writer, with a gap.
        """
        written, at = self.written, self.position(reader)
        if at == NOT_READING:
            at = max(0, written - self.shape.frames // 2)
        gap: Gap | None = None
        # the writer may be within its next block: half a ring of distance keeps what is copied whole
        if written - at > self.shape.frames:
            behind = written - self.shape.frames // 2
            gap = Gap(behind, behind - at)
            at = behind
        end = min(written, at + most)
        for marked in self.gaps():
            if marked.frame == at and gap is None:
                gap = marked
            elif at < marked.frame < end:
                end = marked.frame
                break
        begin, count = at % self.shape.frames, end - at
        round_again = max(0, begin + count - self.shape.frames)
        samples = np.concatenate([self._data[begin : begin + count], self._data[:round_again]])
        self.move(reader, end)
        return at, samples, gap

    def gaps(self) -> list[Gap]:
        """The latest gaps, oldest first."""
        count = int(self._counters[_GAPS])
        rows = [self._gaps[i % _MOST_GAPS] for i in range(max(0, count - _MOST_GAPS), count)]
        return [Gap(int(frame), int(lost)) for frame, lost in rows]

    def close(self, *, unlink: bool) -> None:
        """Let go of the memory; `unlink` removes it for all."""
        del self._counters, self._gaps, self._data
        self._memory.close()
        if unlink:
            self._memory.unlink()
