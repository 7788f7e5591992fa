"""Orders tracked through a changing speed: their slowly changing amplitude and phase, and how well these are known.

The Vold-Kalman filter of the second generation: a·e^{jθ} as near to the samples as a smooth envelope a allows, smooth
meaning small p-th differences (Vold & Leuridan, SAE 931288, 1993; Tůma, Int. J. Acoustics and Vibration 2005, from
memory). Orders and a fixed tone tracked together do not take each other's vibration. Least squares over short windows
with a quadratic envelope is the other way; it needs no bandwidth, only a length.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import decimate, tach
from stillshaft.dsp.units import InputError

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

DIFFERENCES = 3  # p of the smoothness
BANDWIDTH_HZ = 3.0
_TONE_DIFFERENCES, _TONE_BANDWIDTH_HZ = 2, 0.3  # of a tone that hardly changes
_REDUCED_PER_HIGHEST = 3.3  # sample rate over the highest frequency tracked
_COMPANIONS = (2.0, 3.0)  # multiples of the lowest order that are tracked beside it
WINDOW_BANDWIDTHS = 0.94  # length of a window of quadratic least squares times its bandwidth
_NARROWEST = 2e-3  # bandwidth over the sample rate, below which rounding would show
_FIRMNESS = 1e-5  # of the sum of squares that holds an envelope near 0
_BESIDE = 4.0  # the noise is read from the bandwidth to so many times it
_NOISE_BANDWIDTH = 1.06  # of a filter of third differences, over its 3 dB bandwidth


class SweepError(InputError):
    """A record that is no run-up or coast-down: the message says why and what to do."""


@dataclass(frozen=True)
class Motion:
    """The shaft at the samples that are tracked: `frames` of the record, angle, speed and acceleration in rad and s."""

    frames: Real
    times_s: Real
    angle_rad: Real
    speed_rad_s: Real
    acceleration_rad_s2: Real

    @property
    def step_s(self) -> float:
        """Time from sample to sample."""
        return float(self.times_s[1] - self.times_s[0])


@dataclass(frozen=True)
class Track:
    """Envelopes `vectors` (orders, moments, channels), z as in `vectors.py`, at the moments of `motion`.

    `deviation` (orders, moments, channels) is the standard deviation of each of the two quadratures, from the noise
    beside the order; a tone's envelope is not among them. `bandwidth_hz` is where an envelope is 3 dB down;
    `smoothed` does to a known envelope (moments, columns) what the tracker does to one in the samples.
    """

    motion: Motion
    vectors: Complex
    deviation: Real
    bandwidth_hz: float
    smoothed: Callable[[Complex], Complex]

    @property
    def speeds_rpm(self) -> Real:
        """Speed at the moments."""
        return np.asarray(self.motion.speed_rad_s * 30.0 / np.pi)


def with_companions(orders: Sequence[float]) -> tuple[float, ...]:
    """The orders, and after them the low multiples that would else be taken for noise beside the lowest one."""
    beside = (multiple * min(orders) for multiple in _COMPANIONS)
    return (*orders, *(b for b in beside if b not in orders))


def highest_hz(turned: tach.Revolutions, rate_hz: float, orders: Sequence[float], tone_hz: float | None) -> float:
    """Highest frequency that is tracked. Raises SweepError for one beyond 0.4 of the sample rate."""
    from scipy.interpolate import CubicSpline

    spline = CubicSpline(turned.knot_frames, turned.knot_turns)
    fastest = float(spline(np.linspace(turned.knot_frames[0], turned.knot_frames[-1], 1000), 1).max()) * rate_hz
    highest = max(max(orders) * fastest, tone_hz or 0.0)
    if highest > 0.4 * rate_hz:
        raise SweepError(
            f"{highest:.0f} Hz is tracked, more than 0.4 of the sample rate {rate_hz:.0f} Hz; leave out high orders "
            "or record faster"
        )
    return highest


def reducer(rate_hz: float, highest: float, channels: int) -> decimate.Decimator:
    """What brings the samples to a rate that suffices for tracking up to the highest frequency."""
    return decimate.Decimator(rate_hz, highest * _REDUCED_PER_HIGHEST / 3.0, channels)


def motion(turned: tach.Revolutions, rate_hz: float, frames: Real) -> Motion:
    """The shaft at frames that lie between its first and last pulse."""
    from scipy.interpolate import CubicSpline

    spline = CubicSpline(turned.knot_frames, 2.0 * np.pi * turned.knot_turns)
    return Motion(
        frames,
        frames / rate_hz,
        np.asarray(spline(frames)),
        np.asarray(spline(frames, 1)) * rate_hz,
        np.asarray(spline(frames, 2)) * rate_hz**2,
    )


def between_pulses(turned: tach.Revolutions, first: int, count: int, step: int) -> slice:
    """Which of `count` reduced samples, beginning with number `first`, lie between the first and the last pulse."""
    low = math.ceil(turned.knot_frames[0] / step) - first
    high = math.floor(turned.knot_frames[-1] / step) - first + 1
    return slice(max(0, low), max(0, min(count, high)))


def track(
    samples: Real,
    moved: Motion,
    orders: Sequence[float] = (1.0,),
    tone_hz: float | None = None,
    bandwidth_hz: float = BANDWIDTH_HZ,
) -> Track:
    """Track orders, and a fixed tone beside them, in samples (moments, channels) by the Vold-Kalman filter.

    A bandwidth too narrow for the arithmetic at this sample rate is widened; the track says what it is.
    """
    carriers = [order * moved.angle_rad for order in orders]
    if tone_hz is not None:
        carriers.append(2.0 * np.pi * tone_hz * moved.times_s)
    step_s = moved.step_s
    bandwidth = max(bandwidth_hz * step_s, _NARROWEST)
    tones = 0 if tone_hz is None else 1
    angles = np.array(carriers)
    envelopes = vold_kalman(samples, angles, bandwidth, tones, _TONE_BANDWIDTH_HZ * step_s)
    left = (
        samples
        - np.einsum("icm,icm->cm", envelopes.real, np.cos(angles)[:, :, None])
        + np.einsum("icm,icm->cm", envelopes.imag, np.sin(angles)[:, :, None])
    )
    count = len(orders)
    deviation = np.array([_deviation(left, angles[i], bandwidth) for i in range(count)])
    smoothed = _smoother(moved.frames.size, bandwidth)
    return Track(moved, np.asarray(envelopes[:count].conj()), deviation, bandwidth / step_s, smoothed)


def _deviation(left: Real, angle: Real, bandwidth: float) -> Real:
    """Deviation of an envelope's quadratures at each moment, from what is left beside the order."""
    from scipy.ndimage import uniform_filter1d

    beside = vold_kalman(left, angle[None], min(_BESIDE * bandwidth, 0.24))[0]
    # the envelope's own band is empty here: it has been taken away
    share = 1.0 / (min(_BESIDE, 0.24 / bandwidth) - 1.0)
    power = uniform_filter1d(np.abs(beside) ** 2, max(3, round(4.0 / bandwidth)), axis=0, mode="nearest")
    return np.asarray(np.sqrt(_NOISE_BANDWIDTH * share * power / 2.0))


def short_windows(samples: Real, moved: Motion, orders: Sequence[float] = (1.0,), window_s: float = 0.4) -> Track:
    """The same by least squares over windows: each order with a quadratic envelope, taken at the window's middle.

    Between the middles, a quarter of a window apart, the envelopes are interpolated.
    """
    half = max(8, round(0.5 * window_s / moved.step_s))
    place = np.arange(-half, half + 1) / half
    window = np.ones(place.size)
    middles = np.arange(half, samples.shape[0] - half, max(1, half // 2))
    if middles.size < 4:
        raise SweepError(f"windows of {window_s:g} s do not fit a sweep of {np.ptp(moved.times_s):.1f} s; shorten them")
    found = np.empty((len(orders), middles.size, samples.shape[1]), dtype=np.complex128)
    deviation = np.empty(found.shape)
    powers = np.stack([window, place, place**2])
    for number, middle in enumerate(middles):
        span = slice(middle - half, middle + half + 1)
        columns = [window]
        for order in orders:
            turning = np.exp(1j * order * moved.angle_rad[span])
            columns += [p * part for part in (turning.real, turning.imag) for p in powers]
        design = np.stack(columns, axis=1)
        inverse = np.linalg.pinv(design.T @ design, rcond=1e-9, hermitian=True)
        solved = inverse @ (design.T @ samples[span])
        left = samples[span] - design @ solved
        scatter = np.sqrt((left**2).sum(axis=0) / (place.size - design.shape[1]))
        for i in range(len(orders)):
            cosine, sine = 1 + 6 * i, 4 + 6 * i
            found[i, number] = solved[cosine] + 1j * solved[sine]
            deviation[i, number] = scatter * math.sqrt(0.5 * (inverse[cosine, cosine] + inverse[sine, sine]))
    at, wanted = moved.times_s[middles], moved.times_s
    inside = (wanted >= at[0]) & (wanted <= at[-1])
    kept = Motion(*(getattr(moved, f)[inside] for f in Motion.__dataclass_fields__))

    from scipy.interpolate import make_interp_spline
    from scipy.signal import savgol_filter

    envelopes = np.asarray(make_interp_spline(at, found, k=3, axis=1)(kept.times_s))
    deviations = np.maximum(0.0, np.asarray(make_interp_spline(at, deviation, k=1, axis=1)(kept.times_s)))

    def smoothed(known: Complex) -> Complex:
        # least squares with a quadratic envelope is a Savitzky-Golay filter of the envelope
        size = min(place.size, (known.shape[0] - 1) // 2 * 2 + 1)
        return np.asarray(savgol_filter(known.real, size, 2, axis=0) + 1j * savgol_filter(known.imag, size, 2, axis=0))

    return Track(kept, envelopes, deviations, WINDOW_BANDWIDTHS / window_s, smoothed)


def vold_kalman(samples: Real, angles: Real, bandwidth: float, tones: int = 0, tone_bandwidth: float = 0.0) -> Complex:
    """Envelopes a (carriers, frames, channels) of Re Σ a·e^{jθ} nearest to samples (frames, channels).

    `angles` (carriers, frames) in rad; `bandwidth` over the sample rate, where a single envelope is 3 dB down. The
    last `tones` carriers have a bandwidth of their own. One carrier is solved with its mirror image neglected, which
    the smoothness keeps out; several are solved together.
    """
    from scipy.linalg import solveh_banded
    from threadpoolctl import threadpool_limits

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
    bands[-1] += _FIRMNESS  # where a carrier hardly turns, its two parts are not told apart
    # several threads on blocks this small are a hundred times slower than one
    with threadpool_limits(1, user_api="blas"):
        try:
            solved = solveh_banded(bands, right, overwrite_ab=True, overwrite_b=True, check_finite=False)
        except np.linalg.LinAlgError:
            raise SweepError(
                "the orders do not part: the shaft hardly turns for long; leave its standstill out, or widen the bandwidth"
            ) from None
    parts = solved.reshape(frames, carriers, 2, -1)
    return np.asarray(np.swapaxes(parts[:, :, 0] + 1j * parts[:, :, 1], 0, 1))


def _smoother(frames: int, bandwidth: float) -> Callable[[Complex], Complex]:
    """What `vold_kalman` makes of a known envelope."""
    from scipy.linalg import cho_solve_banded, cholesky_banded

    bands = _smooth_bands(frames, bandwidth, DIFFERENCES)
    bands[-1] += 1.0
    factor = cholesky_banded(bands, check_finite=False)

    def smoothed(envelopes: Complex) -> Complex:
        parts = np.hstack([envelopes.real, envelopes.imag])
        solved = cho_solve_banded((factor, False), parts, check_finite=False)
        return np.asarray(solved[:, : envelopes.shape[1]] + 1j * solved[:, envelopes.shape[1] :])

    return smoothed


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
