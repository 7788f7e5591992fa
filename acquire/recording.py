"""Recordings: append-only AU with an event log beside it, readable without repair after a crash at any moment.

NAME.au is written once, front to back: a header of 4096 bytes whose free text holds JSON, then big-endian float32
frames in units of digital full scale. NAME.events.jsonl beside it has one event a line; the first holds the hook-up.
"""

from __future__ import annotations

import bisect
import contextlib
import json
import os
import struct
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime
from io import FileIO
from pathlib import Path
from types import TracebackType
from typing import Annotated, Any

import msgspec
import numpy as np
from numpy.typing import NDArray
from stillshaft.acquire.source import Block
from stillshaft.dsp.units import InputError

_HEADER_BYTES = 4096
_LEAST_BYTES = 24  # of a header that libsndfile reads: that of AU
_FLOAT32 = 6  # encoding number of the AU format
_SIZE_UNKNOWN = 0xFFFFFFFF
_SYNC_EVERY_S = 1.0
# what a recording from anywhere may have; exchange holds other formats to the same
MOST_CHANNELS = 256
MOST_RATE_HZ = 10e6
MOST_LOG_BYTES = 64 * 2**20
MOST_GAPS = 100_000
_MOST_FRAMES = 2**53  # of any frame number: floats count so far


class RecordingError(InputError):
    """A recording that cannot be written or read: the message names the file and says why."""


def events_path(recording: Path) -> Path:
    """The event log that belongs to a recording."""
    return recording.with_suffix(".events.jsonl")


def _line(event: dict[str, Any]) -> bytes:
    return (json.dumps(event, ensure_ascii=False, allow_nan=False, default=_dated) + "\n").encode()


def _dated(value: object) -> str:
    """A date of a calibration, which a TOML file holds as a date, as text."""
    if isinstance(value, date):
        return value.isoformat()
    raise TypeError(f"{type(value).__name__} cannot be written into an event log")


class Recorder:
    """Writes one recording. Used by one thread; `close` may be called once."""

    def __init__(
        self,
        path: Path,
        rate_hz: float,
        channel_names: Sequence[str],
        device: str,
        hookup: dict[str, Any] | None,
        skew_s: Sequence[float] = (),
    ) -> None:
        self.path, self.rate_hz, self.channels = path, rate_hz, len(channel_names)
        self.frames = 0
        self.gaps: list[int] = []
        started = datetime.now(UTC).isoformat(timespec="milliseconds")
        about = {"rate_hz": rate_hz, "channels": list(channel_names), "device": device, "started": started}
        text = json.dumps(about, ensure_ascii=True).encode()
        room = _HEADER_BYTES - 24
        header = struct.pack(
            ">4s5I", b".snd", _HEADER_BYTES, _SIZE_UNKNOWN, _FLOAT32, round(rate_hz), self.channels
        ) + (text if len(text) <= room else b"{}").ljust(room, b"\0")
        if events_path(path).exists():
            raise RecordingError(f"{events_path(path)}: is there already; choose a new name")
        try:
            self._file = open(path, "xb", buffering=0)  # noqa: SIM115 - closed by close()
        except FileExistsError:
            raise RecordingError(f"{path}: is there already; choose a new name") from None
        except OSError as error:
            raise RecordingError(f"{path}: cannot be written: {error.strerror}") from None
        try:
            self._events = open(events_path(path), "xb", buffering=0)  # noqa: SIM115 - closed by close()
        except OSError as error:
            self._file.close()
            path.unlink(missing_ok=True)
            raise RecordingError(f"{path}: cannot be written: {error.strerror}") from None
        try:
            self._put(self._file, header)
            self.event({"format": 1, "kind": "start", "hookup": hookup, **about, "channels": self.channels,
                        "names": list(channel_names), "skew_s": list(skew_s)})  # fmt: skip
        except RecordingError as error:
            self._file.close()
            self._events.close()
            path.unlink(missing_ok=True)
            events_path(path).unlink(missing_ok=True)
            raise RecordingError(f"{str(error).partition(';')[0]}; nothing was recorded") from None
        self._synced = time.monotonic()

    def _put(self, file: FileIO, data: bytes) -> None:
        """Write all of it, or say that the disk took only a part."""
        try:
            written = file.write(data)
        except OSError as error:
            raise RecordingError(f"{self.path}: {error.strerror}; what was recorded is kept") from None
        if written != len(data):
            raise RecordingError(f"{self.path}: the disk is full; what was recorded is kept")

    def write(self, samples: NDArray[np.float32], *, lost_before: int | None = None, why: str = "") -> None:
        """Append frames (frames, channels); `lost_before` are missing before them, −1: nobody knows how many.

        Raises RecordingError when the disk takes no more.
        """
        if lost_before is not None and self.frames:
            self.gaps.append(self.frames)
            lost = None if lost_before < 0 else lost_before
            self.event({"kind": "gap", "frame": self.frames, "lost_frames": lost, "text": why or "samples were lost"})
        self._put(self._file, np.ascontiguousarray(samples, dtype=">f4").tobytes())
        self.frames += len(samples)
        if time.monotonic() - self._synced > _SYNC_EVERY_S:
            try:
                os.fdatasync(self._file.fileno()) if hasattr(os, "fdatasync") else os.fsync(self._file.fileno())
            except OSError as error:
                raise RecordingError(f"{self.path}: {error.strerror}; what was recorded is kept") from None
            self._synced = time.monotonic()

    def event(self, event: dict[str, Any]) -> None:
        """Append one line to the event log, whole or not at all. Raises RecordingError when the disk takes no more."""
        before = self._events.tell()
        try:
            self._put(self._events, _line(event))
        except RecordingError:
            with contextlib.suppress(OSError):  # a part of a line would spoil the next one
                self._events.seek(before)
                self._events.truncate()
            raise

    def close(self, *, complete: bool, reason: str | None = None) -> None:
        """Write the last event and close both files. Raises RecordingError where the event cannot be written."""
        try:
            self.event({"kind": "stop", "frames": self.frames, "complete": complete, "reason": reason})
        finally:
            self._file.close()
            self._events.close()


@dataclass(frozen=True)
class RecordingReader:
    """An opened recording; `hookup`, `gaps`, `lost` and `skew_s` come from its event log.

    `lost` are the frames missing before each gap's frame, −1 where nobody knows how many; `skew_s` is how much later
    than the first each input was sampled, empty where all were sampled at once.
    """

    path: Path
    rate_hz: float
    channels: int
    frames: int
    hookup: dict[str, Any] | None
    gaps: tuple[int, ...]
    lost: tuple[int, ...]
    skew_s: tuple[float, ...]
    _file: Any

    def blocks(self, frames: int = 65_536) -> Iterator[Block]:
        """Blocks of so many frames and fewer, to the end; a gap always has a block of its own begin."""
        at, lost = 0, dict(zip(self.gaps, self.lost, strict=True))
        while True:
            end = min([*self.gaps[(n := bisect.bisect_right(self.gaps, at)) : n + 1], at + frames])
            try:
                if at == 0:
                    self._file.seek(0)
                samples = self._file.read(end - at, dtype="float32", always_2d=True)
            except (RuntimeError, OSError) as error:
                raise RecordingError(f"{self.path}: cannot be read from frame {at} on ({_cause(error)})") from None
            if not len(samples):
                return
            yield Block(at, self.rate_hz, samples, lost.get(at))
            at += len(samples)

    def __enter__(self) -> RecordingReader:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self._file.close()


def open_recording(path: Path) -> RecordingReader:
    """Open WAV, FLAC, AU, CAF or another format of libsndfile. Raises RecordingError in one line."""
    import soundfile

    check_there(path)
    size = path.stat().st_size
    if size == 0:
        raise RecordingError(f"{path}: is empty (0 bytes); record again")
    if size < _LEAST_BYTES:
        raise RecordingError(f"{path}: has only {size} bytes, less than the header of any recording; record again")
    _refuse_mp3(path)
    try:
        file = soundfile.SoundFile(path)
    except (soundfile.SoundFileError, RuntimeError, OSError, TypeError) as error:  # TypeError: samples without a header
        raise RecordingError(
            f"{path}: is no recording that can be read, or its header is cut off ({_cause(error)})"
        ) from None
    if file.frames <= 0:
        file.close()
        raise RecordingError(f"{path}: has no samples in it; record again")
    try:
        check_size(path, file.channels, float(file.samplerate))
        hookup, gaps, lost, skew_s = _events(events_path(path))
    except RecordingError:
        file.close()
        raise
    return RecordingReader(path, float(file.samplerate), file.channels, file.frames, hookup, gaps, lost, skew_s, file)


def _refuse_mp3(path: Path) -> None:
    """Raise RecordingError for what begins like MP3: it changes amplitude and phase, and its library talks to the terminal."""
    try:
        with open(path, "rb") as file:
            begin = file.read(3)
    except OSError as error:
        raise RecordingError(f"{path}: cannot be read: {error.strerror}") from None
    if begin == b"ID3" or (
        begin[:1] == b"\xff" and begin[1:2] >= b"\xe0"
    ):  # a tag, or the eleven bits that a frame begins with
        raise RecordingError(f"{path}: is MP3, which keeps neither amplitude nor phase; record as WAV, FLAC or AU")


def check_there(path: Path) -> None:
    """Raise RecordingError for what is no file: a pipe or a device would be waited for."""
    try:
        there, ordinary, folder = path.exists(), path.is_file(), path.is_dir()
    except OSError as error:
        raise RecordingError(f"{path}: cannot be read: {error.strerror}") from None
    if folder:
        raise RecordingError(f"{path}: is a folder; name the recording in it")
    if not there:
        raise RecordingError(f"{path}: there is no such file")
    if not ordinary:
        raise RecordingError(f"{path}: is no ordinary file (a pipe or a device); name a recording")


def check_size(path: Path, channels: int, rate_hz: float) -> None:
    """Raise RecordingError for inputs or a sample rate that no recording has."""
    if not 1 <= channels <= MOST_CHANNELS:
        raise RecordingError(f"{path}: has {channels} inputs; 1 to {MOST_CHANNELS} can be read")
    if not 0.0 < rate_hz <= MOST_RATE_HZ:
        raise RecordingError(f"{path}: a sample rate of {rate_hz:g} Hz is none; at most {MOST_RATE_HZ / 1e6:g} MHz")


def device_of(path: Path) -> str:
    """The device that a recording was made with, as its event log says; empty where it does not."""
    try:
        with open(events_path(path), "rb") as file:
            return msgspec.json.decode(file.readline(MOST_LOG_BYTES), type=_Event).device
    except (OSError, ValueError, RecursionError):  # msgspec's errors are ValueErrors
        return ""


def _cause(error: Exception) -> str:
    return " ".join(str(error).split()).rsplit(": ", 1)[-1].rstrip(".")


def _events(path: Path) -> tuple[dict[str, Any] | None, tuple[int, ...], tuple[int, ...], tuple[float, ...]]:
    """Hook-up, gap frames, lost frames and skew of an event log; a torn last line is left out."""
    if not path.exists():
        return None, (), (), ()
    check_there(path)
    if path.stat().st_size > MOST_LOG_BYTES:
        raise RecordingError(
            f"{path}: is larger than {MOST_LOG_BYTES // 2**20} MiB; remove the file to use the recording without it"
        )
    skew_s: tuple[float, ...] = ()
    hookup: dict[str, Any] | None = None
    gaps: dict[int, int] = {}
    decoder = msgspec.json.Decoder(_Event)
    for number, line in enumerate(path.read_bytes().split(b"\n")[:-1], start=1):
        try:
            event = decoder.decode(line)
            if event.kind == "start":
                hookup, skew_s = event.hookup, tuple(event.skew_s)
            elif event.kind == "gap" and event.frame is not None:
                gaps[event.frame] = -1 if event.lost_frames is None else event.lost_frames
        except (ValueError, RecursionError):  # msgspec's errors are ValueErrors
            raise RecordingError(
                f"{path}: line {number} is damaged; remove the file to use the recording without it"
            ) from None
    if len(gaps) > MOST_GAPS:
        raise RecordingError(f"{path}: has more than {MOST_GAPS} gaps; remove the file to use the recording without it")
    return hookup, tuple(sorted(gaps)), tuple(gaps[g] for g in sorted(gaps)), skew_s


_Skew = Annotated[float, msgspec.Meta(ge=-1.0, le=1.0)]  # s
_Frame = Annotated[int, msgspec.Meta(ge=0, le=_MOST_FRAMES)]


class _Event(msgspec.Struct):
    """What is read of a line of an event log; the keys of its other kinds are left alone."""

    kind: str
    hookup: dict[str, Any] | None = None
    device: str = ""
    skew_s: list[_Skew] = []
    frame: _Frame | None = None
    lost_frames: Annotated[int, msgspec.Meta(ge=-1, le=_MOST_FRAMES)] | None = None
