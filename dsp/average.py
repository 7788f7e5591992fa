"""Synchronous average: the waveform over one or more revolutions, averaged at equal shaft angles.

What does not repeat with the revolution goes down with the square root of their number, and only what has a whole
number of cycles in the span stays (McFadden, Mechanical Systems and Signal Processing 1987, from memory).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import tach

Real = NDArray[np.float64]

_TAPS = 6  # of Lagrange's interpolation: −74 dB at a tenth of the sample rate, −157 dB at a fiftieth
_FEWEST_SPANS = 2
_SPANS_AT_ONCE = 64


class AverageError(ValueError):
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


def synchronous_average(
    samples: NDArray[np.floating], turned: tach.Revolutions, points: int = 512, revolutions: int = 1
) -> SynchronousAverage:
    """Average samples (frames, channels) over spans of whole revolutions at `points` equal steps of angle.

    Spans that a missing pulse interrupts count too: the angle bridges it. Raises AverageError for fewer than two
    whole spans and for more points than samples in a span.
    """
    if points < 4 or revolutions < 1:
        raise AverageError(f"{points} points over {revolutions} revolutions: need 4 or more over 1 or more")
    first, last = int(turned.numbers[0]), int(turned.numbers[-1])
    starts = np.arange(first, last - revolutions + 1, revolutions, dtype=np.float64)
    steps = revolutions * np.arange(points) / points
    at = tach.frames_at(turned, (starts[:, None] + steps).ravel()).reshape(starts.size, points)
    half = _TAPS // 2
    at = at[(at[:, 0] >= half) & (at[:, -1] < samples.shape[0] - half)]
    if at.shape[0] < _FEWEST_SPANS:
        raise AverageError(
            f"{at.shape[0]} whole spans of {revolutions} revolutions: need {_FEWEST_SPANS} or more; record longer"
        )
    per_span = float(np.median(np.diff(at[:, 0])))
    if points > per_span:
        raise AverageError(f"{points} points, but only {per_span:.0f} samples in a span: ask for fewer points")
    total = np.zeros((points, samples.shape[1]))
    square = np.zeros_like(total)
    reference = _interpolated(samples, at[:1])[0]  # near the mean: its squares do not drown the scatter
    for i in range(0, at.shape[0], _SPANS_AT_ONCE):
        off = _interpolated(samples, at[i : i + _SPANS_AT_ONCE]) - reference
        total += off.sum(axis=0)
        square += (off**2).sum(axis=0)
    count = at.shape[0]
    deviation = np.sqrt(np.maximum(0.0, square - total**2 / count) / (count - 1))
    angle = 2.0 * np.pi * steps
    return SynchronousAverage(
        angle, reference + total / count, deviation, deviation / np.sqrt(count), revolutions, count
    )


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
