"""Synchronous average: the waveform over one or more revolutions, averaged at equal shaft angles.

What does not repeat with the revolution goes down with the square root of their number, and only what has a whole
number of cycles in the span stays (McFadden, Mechanical Systems and Signal Processing 1987, from memory).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import tach
from stillshaft.dsp.units import InputError

Real = NDArray[np.float64]

_TAPS = 6  # of Lagrange's interpolation: −74 dB at a tenth of the sample rate, −157 dB at a fiftieth
FEWEST_SPANS = 2
_SPANS_AT_ONCE = 64


class AverageError(InputError):
    """A record that gives no average: the message says why and what to do."""


@dataclass(frozen=True)
class SynchronousAverage:
    """`waveform` (points, channels) over `revolutions` of the shaft, from the leading edge of the pulse on.

    `angle_rad` (points,) is the shaft angle; `deviation` is the standard deviation of a single span about the
    waveform, `mean_deviation` that of the waveform itself, in white noise; `spans` were averaged.
    """

    angle_rad: Real
    waveform: Real
    deviation: Real
    mean_deviation: Real
    revolutions: int
    spans: int


class SynchronousAverager:
    """Averages samples (frames, channels) that come in pieces over spans of whole revolutions, in constant memory.

    `turned` is the shaft of the whole record; `points` equal steps of angle make a span of `revolutions`. Spans that a
    missing pulse interrupts count too: the angle bridges it. The first sample fed is frame `first_frame`.

    Raises AverageError for more points than samples in a span.
    """

    def __init__(
        self,
        turned: tach.Revolutions,
        channels: int,
        points: int = 512,
        revolutions: int = 1,
        first_frame: int = 0,
    ) -> None:
        if points < 4 or revolutions < 1:
            raise AverageError(f"{points} points over {revolutions} revolutions: need 4 or more over 1 or more")
        first, last = int(turned.numbers[0]), int(turned.numbers[-1])
        starts = np.arange(first, last - revolutions + 1, revolutions, dtype=np.float64)
        self._steps = revolutions * np.arange(points) / points
        self._at = tach.frames_at(turned, (starts[:, None] + self._steps).ravel()).reshape(starts.size, points)
        self._at = self._at[self._at[:, 0] >= first_frame + _TAPS // 2]
        per_span = float(np.median(np.diff(self._at[:, 0]))) if self._at.shape[0] > 1 else np.inf
        if points > per_span:
            raise AverageError(f"{points} points, but only {per_span:.0f} samples in a span: ask for fewer points")
        self._revolutions, self._next, self._count = revolutions, 0, 0
        self._kept = np.empty((0, channels), dtype=np.float32)
        self._first = first_frame
        self._reference: Real | None = None  # near the mean: its squares do not drown the scatter
        self._total = np.zeros((points, channels))
        self._square = np.zeros_like(self._total)

    def feed(self, samples: NDArray[np.floating]) -> None:
        """Take the next samples."""
        self._kept = np.concatenate([self._kept, samples])
        beyond = self._first + self._kept.shape[0] - _TAPS // 2
        ready = int(np.searchsorted(self._at[:, -1], beyond))
        for i in range(self._next, ready, _SPANS_AT_ONCE):
            span = _interpolated(self._kept, self._at[i : min(ready, i + _SPANS_AT_ONCE)] - self._first)
            if self._reference is None:
                self._reference = span[0].copy()
            span -= self._reference
            self._total += span.sum(axis=0)
            self._square += np.einsum("ijk,ijk->jk", span, span)
            self._count += span.shape[0]
        if ready > self._next:
            self._next = ready
            needed = self._at[ready, 0] if ready < self._at.shape[0] else self._at[-1, -1]
            cut = max(0, int(needed) - _TAPS // 2 - self._first)
            self._kept, self._first = self._kept[cut:], self._first + cut

    @property
    def spans(self) -> int:
        """Spans averaged so far."""
        return self._count

    def result(self) -> SynchronousAverage:
        """The average of the spans so far. Raises AverageError for fewer than two."""
        count = self._count
        if count < FEWEST_SPANS or self._reference is None:
            raise AverageError(
                f"{count} whole spans of {self._revolutions} revolutions: need {FEWEST_SPANS} or more; record longer"
            )
        deviation = np.sqrt(np.maximum(0.0, self._square - self._total**2 / count) / (count - 1))
        angle = 2.0 * np.pi * self._steps
        waveform = self._reference + self._total / count
        return SynchronousAverage(angle, waveform, deviation, deviation / np.sqrt(count), self._revolutions, count)


def _interpolated(samples: NDArray[np.floating], at: Real) -> Real:
    """Samples (spans, points, channels) at places (spans, points) by Lagrange's polynomial through the nearest six."""
    base = np.floor(at).astype(np.int64) - _TAPS // 2 + 1
    place = at - base
    taps = np.arange(_TAPS)
    # barycentric weights of equally spaced nodes; a place on a node would divide by 0
    off = place[..., None] - taps
    off = np.where(np.abs(off) < 1e-12, 1e-12, off)
    weights = np.array([-1.0, 5.0, -10.0, 10.0, -5.0, 1.0]) / off
    weights /= weights.sum(axis=-1, keepdims=True)
    result = np.zeros((*at.shape, samples.shape[1]))
    for tap in range(_TAPS):
        result += weights[..., tap, None] * samples[base + tap]
    return result
