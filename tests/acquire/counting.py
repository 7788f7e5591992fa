"""A source whose samples name their frame and channel, as fast as it is read: loss, swap and change all show."""

from dataclasses import dataclass

import numpy as np
from stillshaft.acquire.source import Block

RATE_HZ, PIECE = 48_000.0, 24_000
CYCLE = 1 << 19  # frames after which the values repeat


def values(first, count, channels):
    """Exact float32: (frame mod 2^19 + 1 + channel · 2^19) / 2^23."""
    frames = np.arange(first, first + count)[:, None] % CYCLE
    return ((frames + 1 + (np.arange(channels)[None, :] * CYCLE)) / 2**23).astype(np.float32)


@dataclass(frozen=True)
class Counting:
    channels: int
    seconds: float

    def open(self):
        return CountingSource(self)


class CountingSource:
    rate_hz, description, can_wait, silence_limit_s, skew_s = RATE_HZ, "counting", True, None, ()

    def __init__(self, order):
        self.channels, self._frames, self._at = order.channels, round(order.seconds * RATE_HZ), 0
        whole = -(-(CYCLE + PIECE) // PIECE) * PIECE
        self._cycle = values(0, whole, order.channels)

    def read(self, timeout_s):
        count = min(PIECE, self._frames - self._at)
        if count <= 0:
            return None
        at = self._at % CYCLE
        self._at += count
        return Block(self._at - count, RATE_HZ, self._cycle[at : at + count])

    def close(self):
        pass
