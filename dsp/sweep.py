"""Run-up and coast-down: amplitude and phase of orders against speed.

Orders are tracked by the Vold-Kalman filter of the second generation: a·e^{jθ} as near to the samples as a smooth
envelope a allows, smooth meaning small p-th differences (Vold & Leuridan, SAE 931288, 1993; Tůma, Int. J. Acoustics and
Vibration 2005, from memory). Orders and a fixed tone tracked together do not take each other's vibration.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import tach

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

DIFFERENCES = 3  # p of the smoothness
BANDWIDTH_HZ = 3.0
_TONE_DIFFERENCES, _TONE_BANDWIDTH_HZ = 2, 0.3  # of a tone that hardly changes
_LEAST_RATE_HZ, _SAMPLES_PER_CYCLE = 1000.0, 10.0
_LEAST_CHANGE = 0.1  # of speed, over the record


class SweepError(ValueError):
    """A record that is no run-up or coast-down: the message says why and what to do."""


@dataclass(frozen=True)
class Track:
    """Envelopes `vectors` (orders, moments, channels), z as in `vectors.py`, at `times_s` and `speeds_rpm`.

    A tone's envelope is not among them.
    """

    times_s: Real
    speeds_rpm: Real
    vectors: Complex


def track(
    samples: NDArray[np.floating],
    rate_hz: float,
    turned: tach.Revolutions,
    orders: Sequence[float] = (1.0,),
    tone_hz: float | None = None,
    bandwidth_hz: float = BANDWIDTH_HZ,
) -> Track:
    """Track orders, and a fixed tone beside them, in samples (frames, channels).

    Raises SweepError for a speed that hardly changes and for an order beyond 0.4 of the sample rate.
    """
    from scipy.interpolate import CubicSpline
    from scipy.signal import resample_poly

    spline = CubicSpline(turned.knot_frames, 2.0 * np.pi * turned.knot_turns)
    first, last = math.ceil(turned.knot_frames[0]), math.floor(turned.knot_frames[-1])
    ends = 60.0 * rate_hz / (2.0 * np.pi) * spline(np.linspace(first, last, 400), 1)
    slow, fast = float(ends.min()), float(ends.max())
    if fast - slow < _LEAST_CHANGE * fast:
        raise SweepError(
            f"a sweep without a change of speed: {slow:.0f} to {fast:.0f} r/min; record from standstill to running "
            "speed, or the coast-down"
        )
    highest_hz = max(max(orders) * fast / 60.0, tone_hz or 0.0)
    if highest_hz > 0.4 * rate_hz:
        raise SweepError(
            f"{highest_hz:.0f} Hz is tracked, more than 0.4 of the sample rate {rate_hz:.0f} Hz; leave out high orders "
            "or record faster"
        )
    step = max(1, int(rate_hz / max(_LEAST_RATE_HZ, _SAMPLES_PER_CYCLE * highest_hz)))
    reduced = np.asarray(samples, dtype=np.float64)
    if step > 1:
        reduced = np.asarray(resample_poly(reduced, 1, step, axis=0))
    at = np.arange(math.ceil(first / step), math.floor(last / step) + 1)
    frames = (at * step).astype(np.float64)
    angle, speed = np.asarray(spline(frames)), np.asarray(spline(frames, 1)) * rate_hz
    carriers = [order * angle for order in orders]
    if tone_hz is not None:
        carriers.append(2.0 * np.pi * tone_hz * frames / rate_hz)
    share = step / rate_hz
    tones = 0 if tone_hz is None else 1
    envelopes = vold_kalman(reduced[at], np.array(carriers), bandwidth_hz * share, tones, _TONE_BANDWIDTH_HZ * share)
    return Track(
        frames / rate_hz,
        60.0 * speed / (2.0 * np.pi),
        envelopes[: len(orders)].conj(),
    )


def vold_kalman(samples: Real, angles: Real, bandwidth: float, tones: int = 0, tone_bandwidth: float = 0.0) -> Complex:
    """Envelopes a (carriers, frames, channels) of Re Σ a·e^{jθ} nearest to samples (frames, channels).

    `angles` (carriers, frames) in rad; `bandwidth` over the sample rate, where a single envelope is 3 dB down. The
    last `tones` carriers have a bandwidth of their own. One carrier is solved with its mirror image neglected, which
    the smoothness keeps out; several are solved together.
    """
    from scipy.linalg import solveh_banded

    carriers, frames = angles.shape
    smooth = _smooth_bands(frames, bandwidth, DIFFERENCES)
    if carriers == 1:
        smooth[-1] += 1.0
        right = 2.0 * samples * np.exp(-1j * angles[0])[:, None]
        solved = solveh_banded(smooth, np.hstack([right.real, right.imag]), overwrite_ab=True, check_finite=False)
        return np.asarray((solved[:, : samples.shape[1]] + 1j * solved[:, samples.shape[1] :])[None])
    # unknowns of a frame side by side: re and im of each carrier; x = Σ re·cos − im·sin
    size = 2 * carriers
    rows = np.empty((frames, size))
    rows[:, 0::2], rows[:, 1::2] = np.cos(angles).T, -np.sin(angles).T
    bands = np.zeros((DIFFERENCES * size + 1, frames * size))
    for carrier in range(carriers):
        # second differences for a tone: a bandwidth as narrow as its own would make third ones singular
        tone = carrier >= carriers - tones
        own = _smooth_bands(frames, tone_bandwidth, _TONE_DIFFERENCES) if tone else smooth
        for lag in range(own.shape[0]):
            for part in (2 * carrier, 2 * carrier + 1):
                bands[-1 - lag * size, part::size] = 0.5 * own[-1 - lag]  # half the power is in each part
    products = rows[:, :, None] * rows[:, None, :]
    for lag in range(size):
        for column in range(lag, size):
            bands[-1 - lag, column::size] += products[:, column - lag, column]
    right = (rows[:, :, None] * samples[:, None, :]).reshape(frames * size, -1)
    solved = solveh_banded(bands, right, overwrite_ab=True, overwrite_b=True, check_finite=False)
    parts = solved.reshape(frames, carriers, 2, -1)
    return np.asarray(np.swapaxes(parts[:, :, 0] + 1j * parts[:, :, 1], 0, 1))


def _smooth_bands(frames: int, bandwidth: float, differences: int) -> Real:
    """Upper bands of r²DᵀD, D the p-th differences, in the layout of solveh_banded."""
    weight = (math.sqrt(2.0) - 1.0) / (2.0 * math.sin(math.pi * bandwidth)) ** (2 * differences)
    coefficients = np.array([(-1.0) ** k * math.comb(differences, k) for k in range(differences + 1)])
    bands = np.zeros((differences + 1, frames))
    for lag in range(differences + 1):
        for k in range(differences + 1 - lag):
            # column j of D's rows j−k−lag … ; rows run from 0 to frames − p − 1
            begin, end = k + lag, frames - differences + k + lag
            bands[differences - lag, begin:end] += coefficients[k] * coefficients[k + lag]
    return weight * bands
