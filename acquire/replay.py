"""A recording played as a source, in real time or as fast as it is taken."""

from __future__ import annotations

import time
from dataclasses import dataclass
from pathlib import Path

from stillshaft.acquire.recording import RecordingError, open_recording
from stillshaft.acquire.source import Block, Source, SourceError

_PIECE_S = 0.05


@dataclass(frozen=True)
class Replay:
    """An order to play a recording."""

    path: Path
    real_time: bool = True

    def open(self) -> Source:
        """Open it; raises SourceError that names the file."""
        try:
            return ReplaySource(self)
        except RecordingError as error:
            raise SourceError(str(error)) from None


class ReplaySource:
    """The recording being played."""

    def __init__(self, order: Replay) -> None:
        self._reader = open_recording(order.path)
        self.rate_hz, self.channels = self._reader.rate_hz, self._reader.channels
        self.description = f"recording {order.path.name}"
        self.can_wait = not order.real_time
        self.silence_limit_s: float | None = None
        self.skew_s = self._reader.skew_s
        self._real_time = order.real_time
        self._blocks = self._reader.blocks(max(1, round(_PIECE_S * self.rate_hz)))
        self._frame = 0
        self._began = time.monotonic()

    def read(self, timeout_s: float) -> Block | None:
        """Next twentieth of a second; None at the end."""
        block = next(self._blocks, None)
        if block is None:
            return None
        self._frame += len(block.samples)
        if self._real_time:
            time.sleep(max(0.0, self._began + self._frame / self.rate_hz - time.monotonic()))
        return block

    def close(self) -> None:
        """Close the file."""
        self._reader.__exit__(None, None, None)
