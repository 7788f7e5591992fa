"""A lower sample rate for what needs no more: a linear-phase low pass and every n-th sample, in one product.

The samples come in pieces; each block of them is multiplied by a matrix that holds the filter once per output that the
block reaches, and the parts are added where blocks overlap. Kaiser's window (Oppenheim & Schafer, Discrete-Time Signal
Processing, from memory).
"""

from __future__ import annotations

import math
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

Real32 = NDArray[np.float32]

_ATTENUATION_DB = 80.0  # of what would fold into the pass band; the pass band is flat to 1e-4
_RATES_PER_PASSBAND = 3.0
_LEAST_BLOCK = 64  # samples


class Decimator:
    """Samples (frames, channels) at `rate_hz` become samples at `reduced_hz`, flat up to `passband_hz`.

    Output n is centred on frame n·`step` of the input. The first output is number `first`: those before it would need
    samples from before the beginning.
    """

    def __init__(self, rate_hz: float, passband_hz: float, channels: int) -> None:
        self.step = max(1, int(rate_hz / (_RATES_PER_PASSBAND * passband_hz)))
        self.reduced_hz = rate_hz / self.step
        self.first = 0
        self._channels = channels
        if self.step == 1:
            return
        half = _half_length(passband_hz / rate_hz, self.step)
        self._before = math.ceil(half / self.step)  # outputs that a block reaches back to
        self.first = self._before
        self._per_block = max(1, _LEAST_BLOCK // self.step)
        self._matrix = _matrix(half, self.step, self._per_block, passband_hz / rate_hz)
        self._waiting = np.empty((0, channels), dtype=np.float32)
        self._open = np.zeros((self._matrix.shape[0] - self._per_block, channels), dtype=np.float32)
        self._to_skip = 2 * self._before

    def feed(self, samples: NDArray[np.floating]) -> Real32:
        """Outputs that the next samples complete, shape (frames, channels)."""
        if self.step == 1:
            return np.asarray(samples, dtype=np.float32)
        waiting = np.concatenate([self._waiting, samples.astype(np.float32, copy=False)])
        block = self._per_block * self.step
        blocks = waiting.shape[0] // block
        self._waiting = waiting[blocks * block :]
        if not blocks:
            return np.empty((0, self._channels), dtype=np.float32)
        parts = np.matmul(self._matrix, waiting[: blocks * block].reshape(blocks, block, self._channels))
        done = blocks * self._per_block
        total = np.zeros((done + self._open.shape[0], self._channels), dtype=np.float32)
        total[: self._open.shape[0]] = self._open
        for row in range(self._matrix.shape[0]):
            total[row : row + done : self._per_block] += parts[:, row]
        self._open = total[done:]
        skipped = min(self._to_skip, done)
        self._to_skip -= skipped
        return total[skipped:done]


def _half_length(passband: float, step: int) -> int:
    """Taps on either side of the middle; `passband` over the sample rate."""
    transition = 2.0 * math.pi * (1.0 / step - 2.0 * passband)
    return math.ceil((_ATTENUATION_DB - 7.95) / (2.0 * 2.285 * transition))


@lru_cache(maxsize=16)
def _matrix(half: int, step: int, per_block: int, passband: float) -> Real32:
    """What sample i of a block (columns) adds to each output that it reaches (rows)."""
    taps = np.arange(-half, half + 1)
    cut = 0.5 / step  # half-way between the pass band and what folds into it
    beta = 0.1102 * (_ATTENUATION_DB - 8.7)
    response = 2.0 * cut * np.sinc(2.0 * cut * taps) * np.kaiser(taps.size, beta)
    response /= response.sum()
    before = math.ceil(half / step)
    rows = np.arange(-before, per_block + before)
    place = rows[:, None] * step - np.arange(per_block * step)
    inside = np.abs(place) <= half
    return np.where(inside, response[np.clip(place + half, 0, 2 * half)], 0.0).astype(np.float32)
