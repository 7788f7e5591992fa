"""What the pictures show, as plain data, and how it comes out of a measurement. No Qt here."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import vectors
from stillshaft.dsp.measure import Measurement
from stillshaft.dsp.steadiness import Steadiness

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

_CIRCLE = np.exp(2j * np.pi * np.arange(73) / 72)
_MOST_BLOCKS = 400  # shown at once: older ones make room
_SMOOTH = 240  # points of a fitted curve


@dataclass(frozen=True)
class CloudPoint:
    """One point in the complex plane: short-window vectors, mean, border of its 95 % region, last run's vector."""

    name: str
    blocks: Complex
    mean: complex
    border: Complex
    last: complex | None = None


@dataclass(frozen=True)
class RibbonPoint:
    """One point's phase against time, degrees from its mean, with the curve fitted to it, if one is."""

    name: str
    times_s: Real
    phase_deg: Real
    fit_times_s: Real
    fit_deg: Real
    words: str


@dataclass(frozen=True)
class WaveformPoint:
    """One point over a revolution: mean and standard deviation of a single revolution at equal angles."""

    name: str
    mean: Real
    deviation: Real


@dataclass(frozen=True)
class Waveform:
    """Waveforms of all points in one unit; `angle_deg` (K,) from the pulse on, `revolutions` were averaged."""

    angle_deg: Real
    points: tuple[WaveformPoint, ...]
    unit: str
    revolutions: int


@dataclass(frozen=True)
class Spectrum:
    """Amplitude (lines,) of each point against frequency; `running_hz` marks the orders, if it is known."""

    frequency_hz: Real
    names: tuple[str, ...]
    amplitudes: tuple[Real, ...]
    unit: str
    running_hz: float | None
    averages: int


@dataclass(frozen=True)
class Level:
    """One input's level in parts of full scale; `held` is the highest peak of late, `clipped` counts samples there."""

    name: str
    peak: float
    rms: float
    held: float
    clipped: int


@dataclass(frozen=True)
class PulseSeen:
    """The pulse as it is seen: a few turns of samples, the edges found in them, and how good they are.

    `values` are parts of full scale at `times_ms`; `edges_ms` lie among them; `trouble` says why there are none.
    """

    times_ms: Real
    values: Real
    threshold: float | None
    edges_ms: Real
    rising: bool | None
    mark_deg: float | None
    jitter_deg: float | None
    rpm: float | None
    missing: int
    extra: int
    trouble: str | None


@dataclass(frozen=True)
class SweepCurve:
    """One point's run-up or coast-down: vectors at speeds, with resonances as speed and half width."""

    name: str
    speeds_rpm: Real
    z: Complex
    resonances: tuple[tuple[float, float | None], ...] = ()


@dataclass(frozen=True)
class Bar:
    """One point before and after, each with its 95 % half width, against its limit; `verdict` is the plain word."""

    name: str
    before: float
    before_ci95: float | None
    after: float
    after_ci95: float | None
    limit: float | None
    verdict: str


def region_border(z: complex, covariance: Real, degrees_of_freedom: int) -> Complex:
    """Border of the joint 95 % region of a mean, complex (73,) (Hotelling's T², from memory).

    The quantile of F with 2 and n degrees of freedom is written out: (n/2)·(0.05^(−2/n) − 1).
    """
    freedom = max(2, degrees_of_freedom)
    rest = freedom - 1.0
    quantile = 0.5 * rest * (0.05 ** (-2.0 / rest) - 1.0)
    scale = np.sqrt(2.0 * freedom / rest * quantile)
    values, axes = np.linalg.eigh(covariance)
    border = axes @ (np.sqrt(np.maximum(values, 0.0))[:, None] * np.array([_CIRCLE.real, _CIRCLE.imag]))
    return np.asarray(z + scale * (border[0] + 1j * border[1]))


def cloud(measured: Measurement, last: dict[str, complex] | None = None) -> tuple[CloudPoint, ...]:
    """The vector cloud of a measurement; `last` holds the last run's vectors by point."""
    points = []
    for i, p in enumerate(measured.points):
        covariance = measured.covariance[2 * i : 2 * i + 2, 2 * i : 2 * i + 2]
        border = region_border(p.z, covariance, measured.degrees_of_freedom)
        points.append(CloudPoint(p.name, p.blocks[-_MOST_BLOCKS:], p.z, border, (last or {}).get(p.name)))
    return tuple(points)


def ribbon(measured: Measurement) -> tuple[RibbonPoint, ...]:
    """The phase ribbon of a measurement."""
    points = []
    for p in measured.points:
        if p.z == 0.0:
            continue
        times = measured.times_s
        fit_times, fit, words = _fitted(times, p.blocks, p.z, p.steadiness)
        phase = np.rad2deg(np.angle(p.blocks / p.z))
        points.append(RibbonPoint(p.name, times, phase, fit_times, fit, words))
    return tuple(points)


def _fitted(times_s: Real, blocks: Complex, z: complex, judged: Steadiness) -> tuple[Real, Real, str]:
    """The curve behind the verdict: the beat's swing, or the trend."""
    nothing = np.empty(0)
    smooth = np.linspace(times_s[0], times_s[-1], _SMOOTH)
    middle = float(times_s.mean())
    if judged.verdict in ("beating", "walking") and judged.beat is not None:
        offset = judged.beat.offset_hz

        def model(at: Real) -> Complex:
            # a faster source makes the conjugate form turn backwards
            return np.column_stack([np.ones(at.size), np.exp(-2j * np.pi * offset * (at - middle))])

        words = f"beat of {1.0 / abs(offset):.1f} s"
    elif judged.verdict == "drifting":

        def model(at: Real) -> Complex:
            return np.vander(at - middle, 3).astype(np.complex128)

        words = "drift" if judged.trend_deg_per_min is None else f"drift of {judged.trend_deg_per_min:+.1f}°/min"
    else:
        return nothing, nothing, judged.verdict
    coefficients = np.linalg.lstsq(model(times_s), blocks, rcond=None)[0]
    return smooth, np.rad2deg(np.angle(model(smooth) @ coefficients / z)), words


def vector_words(name: str, z: complex, unit: str, half: float | None, half_deg: float | None) -> str:
    """A vector as a screen reader says it."""
    amplitude, phase_deg = vectors.amplitude_phase(z)
    around = "not determined" if half is None else f"{half:.2g}"
    across = "not determined" if half_deg is None else f"{half_deg:.1f}"
    return f"{name}: {amplitude:.3g} {unit}, plus or minus {around}, at {phase_deg:.0f} degrees, plus or minus {across}"


def cloud_words(points: Sequence[CloudPoint], unit: str) -> str:
    """The cloud in words."""
    said = []
    for p in points:
        amplitude, phase_deg = vectors.amplitude_phase(p.mean)
        said.append(f"{p.name} {amplitude:.3g} {unit} at {phase_deg:.0f}°, {p.blocks.size} vectors")
    return "; ".join(said) or "no vectors yet"
