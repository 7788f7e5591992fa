"""What a vibration consists of: orders, what runs beside the shaft, the rest; and how two points move together.

The orders come from least squares on the shaft angle, so they stay sharp where the speed wanders; the lines between
them come from the averaged spectrum.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import asdict, dataclass, replace
from itertools import combinations
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import average, spectrum, units, vectors
from stillshaft.dsp.candidates import Candidate
from stillshaft.dsp.channels import PointChannel
from stillshaft.dsp.measure import Measurement, PointVector

Real = NDArray[np.float64]

_ORDERS = range(1, 11)  # looked for in the spectrum
_FRACTIONS = {1 / 3: "1/3x", 1 / 2: "1/2x", 2 / 3: "2/3x", 3 / 2: "3/2x"}
_MULTIPLES = range(1, 13)  # of what runs beside the shaft
_LOWEST_SHOWN, _LOWEST_SHARED = 0.25, 0.5  # of running speed: where the spectrum begins, where the shares do
_MOST_PEAKS = 12
_LEAST_PEAK = 0.01  # of the strongest
_ABOVE_FLOOR = 4.0  # a peak stands over the median of the lines around it
_FLOOR_LINES = 41
_SKIRT_LINES = 2  # of a Hann window on either side of a tone
_PEAK_REACH = 0.6  # lines within which a frequency and a peak count as one
_LINE_TO_SINE = math.sqrt(3.0)  # amplitude of a sine in a Hann line, over the root of the mean square there
_MOST_FREQUENCIES = 4000  # of a spectrum in JSON


@dataclass(frozen=True)
class Peak:
    """A peak of the spectrum; `fits` names what has this frequency within a line, likeliest first."""

    frequency_hz: float
    amplitude: float
    amplitude_ci95: float | None
    order: float
    fits: tuple[str, ...]


@dataclass(frozen=True)
class PointContent:
    """What one point's vibration consists of, in the displayed unit.

    `orders` are the vectors at 1x, 2x, …; `shares` the parts of the mean square in `share_band_hz`, percent, by name;
    `amplitude` (lines,) is what a sine in that line would have.
    """

    name: str
    overall: float | None
    orders: tuple[tuple[float, PointVector], ...]
    peaks: tuple[Peak, ...]
    shares: dict[str, float]
    amplitude: Real


@dataclass(frozen=True)
class Pair:
    """1x of the second point against that of the first: ratio of amplitudes, and by how much it lags."""

    names: tuple[str, str]
    ratio: float
    ratio_ci95: float | None
    lag_deg: float
    lag_ci95_deg: float | None


@dataclass(frozen=True)
class Content:
    """The spectrum of all points with what it consists of.

    `waveform` is the synchronous average of the displayed quantity in `waveform_unit`, if there is one.
    """

    unit: str
    band_hz: tuple[float, float]
    share_band_hz: tuple[float, float]
    resolution_hz: float
    averages: int
    frequency_hz: Real
    speed_rpm: float
    points: tuple[PointContent, ...]
    pairs: tuple[Pair, ...]
    waveform: average.SynchronousAverage | None
    waveform_unit: str
    warnings: tuple[str, ...]


def describe(
    orders: Sequence[Measurement],
    averaged: spectrum.AveragedSpectrum,
    points: Sequence[PointChannel],
    display: str,
    candidates: Sequence[Candidate] = (),
    waveform: average.SynchronousAverage | None = None,
) -> Content:
    """Put together what `Measuring.all_orders`, the spectrum and the average, in SI units, of the same record say.

    The spectrum is shown from a quarter of running speed on, or from where its band begins: below, an integral is noise.
    """
    unit = units.vibration_unit(display)
    first = orders[0]
    running_hz = first.speed.mean_rpm / 60.0
    wander_hz = 0.5 * (first.speed.max_rpm - first.speed.min_rpm) / 60.0
    resolution = float(averaged.frequency_hz[1])
    band_hz = spectrum.overall_band(first.speed.mean_rpm)
    names = _names(running_hz, wander_hz, candidates)
    share_band_hz = (min(band_hz[0], _LOWEST_SHARED * running_hz), averaged.frequency_hz[-1])
    shown = averaged.frequency_hz >= min(band_hz[0], _LOWEST_SHOWN * running_hz)
    frequency_hz = averaged.frequency_hz[shown]
    found = []
    for i, point in enumerate(points):
        scale = abs(point.si_per_reading)
        power, deviation = averaged.power(i, point.quantity, unit.quantity, point.highpass_hz)
        power, deviation = power[shown] * scale**2, deviation[shown] * scale**2
        amplitude = _LINE_TO_SINE * np.sqrt(power) * unit.per_si_peak
        half = _LINE_TO_SINE * unit.per_si_peak * 1.96 * deviation / (2.0 * np.sqrt(np.maximum(power, 1e-300)))
        found.append(
            PointContent(
                point.name,
                first.points[i].overall,
                tuple((m.order, m.points[i]) for m in orders),
                _peaks(amplitude, half, frequency_hz, resolution, running_hz, names),
                _shares(power, frequency_hz, share_band_hz, resolution, names),
                np.asarray(amplitude),
            )
        )
    warnings = _warnings(averaged, resolution, running_hz, wander_hz)
    waveform_unit, per_si = units.instantaneous(unit)
    if waveform is not None:
        waveform = replace(
            waveform,
            waveform=waveform.waveform * per_si,
            deviation=waveform.deviation * per_si,
            mean_deviation=waveform.mean_deviation * per_si,
        )
    return Content(
        first.unit, band_hz, share_band_hz, resolution, averaged.averages, frequency_hz, first.speed.mean_rpm,
        tuple(found), _pairs(first), waveform, waveform_unit, warnings,
    )  # fmt: skip


@dataclass(frozen=True)
class _Name:
    """A frequency that something may have, ± `within_hz`; `group` is whose share it counts to."""

    text: str
    frequency_hz: float
    within_hz: float
    group: str


def _names(running_hz: float, wander_hz: float, candidates: Sequence[Candidate]) -> list[_Name]:
    """Orders first, then what runs beside the shaft, then simple fractions of the speed."""
    names = [
        _Name(f"{h}x", h * running_hz, h * wander_hz, "1x" if h == 1 else "2x" if h == 2 else "higher orders")
        for h in _ORDERS
    ]
    for m in _MULTIPLES:  # a low multiple is likelier than a high one of something else
        for candidate in candidates:
            text = candidate.name if m == 1 else f"{m} × {candidate.name}"
            names.append(_Name(text, m * candidate.rpm / 60.0, m * candidate.within_rpm / 60.0, candidate.name))
    names += [_Name(text, f * running_hz, f * wander_hz, "between the orders") for f, text in _FRACTIONS.items()]
    return names


def _peaks(
    amplitude: Real, half: Real, frequency_hz: Real, resolution: float, running_hz: float, names: Sequence[_Name]
) -> tuple[Peak, ...]:
    """The strongest peaks, highest first; their place between the lines by a parabola through the logarithms."""
    from scipy.ndimage import median_filter

    floor = median_filter(amplitude, _FLOOR_LINES, mode="nearest")
    inner = amplitude[1:-1]
    top = (inner > amplitude[:-2]) & (inner >= amplitude[2:]) & (inner > _ABOVE_FLOOR * floor[1:-1])
    at = np.flatnonzero(top) + 1
    at = at[amplitude[at] >= _LEAST_PEAK * amplitude.max(initial=0.0)]
    at = at[np.argsort(-amplitude[at])][:_MOST_PEAKS]
    found = []
    for i in at.tolist():
        left, middle, right = np.log(np.maximum(amplitude[i - 1 : i + 2], 1e-300))
        bend = left - 2.0 * middle + right
        off = float(np.clip(0.5 * (left - right) / bend, -0.5, 0.5)) if bend < 0.0 else 0.0
        frequency = float(frequency_hz[i] + off * resolution)
        near = [n for n in names if abs(n.frequency_hz - frequency) <= n.within_hz + _PEAK_REACH * resolution]
        missed = float(np.sinc(off)) / (1.0 - off * off)  # of a tone between two lines of a Hann window
        width = float(half[i]) / missed
        found.append(
            Peak(
                frequency,
                float(amplitude[i]) / missed,
                width if math.isfinite(width) else None,
                frequency / running_hz,
                tuple(n.text for n in near),
            )
        )
    return tuple(found)


def _shares(
    power: Real, frequency_hz: Real, band_hz: tuple[float, float], resolution: float, names: Sequence[_Name]
) -> dict[str, float]:
    """Parts of the mean square in the band, percent: what is named first takes the lines that it reaches."""
    inside = (frequency_hz >= band_hz[0]) & (frequency_hz <= band_hz[1])
    whole = float(power[inside].sum())
    if whole <= 0.0:
        return {}
    left = inside.copy()
    shares: dict[str, float] = {}
    for name in names:
        reached = left & (np.abs(frequency_hz - name.frequency_hz) <= name.within_hz + _SKIRT_LINES * resolution)
        shares[name.group] = shares.get(name.group, 0.0) + 100.0 * float(power[reached].sum()) / whole
        left &= ~reached
    running_hz = names[0].frequency_hz
    below = left & (frequency_hz < running_hz)
    shares["below 1x"] = 100.0 * float(power[below].sum()) / whole
    shares["rest"] = 100.0 * float(power[left & ~below].sum()) / whole
    return shares


def _pairs(measured: Measurement) -> tuple[Pair, ...]:
    """Every two points' 1x against each other; their common covariance counts."""
    found = []
    for i, j in combinations(range(len(measured.points)), 2):
        a, b = measured.points[i], measured.points[j]
        if a.z == 0.0 or b.z == 0.0:
            continue
        ratio = b.z / a.z
        # d(b/a) = db/a − (b/a)·da/a
        turn = np.zeros((2, measured.covariance.shape[0]))
        for k, factor in ((i, -ratio / a.z), (j, 1.0 / a.z)):
            turn[:, 2 * k : 2 * k + 2] = [[factor.real, -factor.imag], [factor.imag, factor.real]]
        covariance = turn @ measured.covariance @ turn.T
        along, across = vectors.half_widths(ratio, covariance, measured.degrees_of_freedom)
        wanders = a.amplitude_ci95 is None or b.amplitude_ci95 is None
        size, lag_deg = vectors.amplitude_phase(ratio)
        found.append(Pair((a.name, b.name), size, None if wanders else along, lag_deg, None if wanders else across))
    return tuple(found)


def _warnings(
    averaged: spectrum.AveragedSpectrum, resolution: float, running_hz: float, wander_hz: float
) -> tuple[str, ...]:
    said = []
    if averaged.averages < 4:
        said.append(
            f"{averaged.averages} spectra averaged: single lines scatter much; record longer for a steadier spectrum"
        )
    if running_hz < (2 * _SKIRT_LINES + 1) * resolution:
        said.append(
            f"lines of {resolution:g} Hz do not part orders {running_hz:.2f} Hz from each other: the shares are rough; "
            "record longer"
        )
    if wander_hz > resolution:
        said.append(
            f"the speed varies by ± {wander_hz * 60:.1f} r/min: lines of higher orders are smeared; the order table is not"
        )
    return tuple(said)


def to_json(content: Content) -> dict[str, Any]:
    """Keys of the `spectrum` object."""
    every = max(1, -(-content.frequency_hz.size // _MOST_FREQUENCIES))
    points = []
    for i, point in enumerate(content.points):
        orders = []
        for order, p in point.orders:
            amplitude, phase_deg = vectors.amplitude_phase(p.z)
            orders.append(
                {
                    "order": order,
                    "amplitude": amplitude,
                    "phase_deg": phase_deg,
                    "amplitude_ci95": p.amplitude_ci95,
                    "phase_ci95_deg": p.phase_ci95_deg,
                }
            )
        row: dict[str, Any] = {
            "name": point.name,
            "unit": content.unit,
            "overall": point.overall,
            "orders": orders,
            "peaks": [asdict(p) for p in point.peaks],
            "shares_percent": point.shares,
            # of several lines the strongest stands for all, so that no peak is lost
            "amplitude": [float(point.amplitude[k : k + every].max()) for k in range(0, point.amplitude.size, every)],
        }
        if content.waveform is not None:
            row["waveform"] = {
                "value": content.waveform.waveform[:, i].tolist(),
                "deviation": content.waveform.deviation[:, i].tolist(),
            }
        points.append(row)
    waveform = None
    if content.waveform is not None:
        waveform = {
            "angle_deg": np.rad2deg(content.waveform.angle_rad).tolist(),
            "revolutions": content.waveform.revolutions,
            "spans": content.waveform.spans,
            "unit": content.waveform_unit,
        }
    return {
        "speed_rpm": content.speed_rpm,
        "band_hz": list(content.band_hz),
        "share_band_hz": list(content.share_band_hz),
        "resolution_hz": content.resolution_hz,
        "averages": content.averages,
        "frequency_hz": content.frequency_hz[::every].tolist(),
        "points": points,
        "pairs": [
            {
                "points": list(p.names),
                "ratio": p.ratio,
                "ratio_ci95": p.ratio_ci95,
                "lag_deg": p.lag_deg,
                "lag_ci95_deg": p.lag_ci95_deg,
            }
            for p in content.pairs
        ],
        "waveform": waveform,
        "warnings": list(content.warnings),
    }
