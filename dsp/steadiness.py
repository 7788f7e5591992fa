"""Whether the phase can be trusted: the short-time vectors of a record stay put, drift, or swing with a second source.

The second source is sought as V + B·e^{jδk} in first-order autoregressive noise, against V alone, by the likelihood
ratio (Kay, Detection Theory, 1998, from memory); drift as a straight line in time or in speed, the same way.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import vectors

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

_FEWEST_BLOCKS = 16
_BEAT_LEAD, _LINE_LEAD = 14.0, 9.0  # log-likelihood leads that count, from simulated false alarms below 1 %
_LINE_OVER_NOISE = 20.0
_SMALL_PERCENT, _SMALL_DEG = 2.0, 2.0  # smaller swings do no harm
_MEMORIES = np.linspace(0.0, 0.95, 20)
_WANTED_REVOLUTIONS, _WANTED_S = 100, 15.0  # common practice, no source


@dataclass(frozen=True)
class Beat:
    """A second source beside the order: its offset (positive: faster than the shaft) and what is left without it."""

    offset_hz: float
    offset_ci95_hz: float
    ratio: float
    side: str
    source_rpm: tuple[float, ...]
    source_rpm_ci95: float
    cleaned: complex
    record_in_beats: float


@dataclass(frozen=True)
class Steadiness:
    """Verdict on one point: steady, drifting, beating, walking, unsettled or too-short, and why.

    `record_s` is how long a record would tell or average it out; swings are peak to peak of the smoothed vector.
    """

    verdict: str
    cause: str | None
    phase_swing_deg: float | None
    amplitude_swing_percent: float | None
    beat: Beat | None
    trend_deg_per_min: float | None
    record_s: float | None
    trusted: bool
    reasons: tuple[str, ...]


def judge(blocks: Complex, times_s: Real, speeds_rad_s: Real, revolutions: int, order: float = 1.0) -> Steadiness:
    """Judge the short-time vectors of one point: `blocks` (K,) complex, at `times_s`, at `speeds_rad_s`."""
    count = blocks.size
    mean = complex(blocks.mean())
    span_s = float(times_s[-1] - times_s[0]) * count / max(1, count - 1)
    if count < _FEWEST_BLOCKS or mean == 0:
        per_revolution = span_s / max(1, revolutions)
        wanted = max(_WANTED_S, _WANTED_REVOLUTIONS * per_revolution)
        reason = f"{revolutions} revolutions tell nothing about steadiness yet: record {wanted:.0f} s"
        return Steadiness("too-short", None, None, None, None, None, wanted, False, (reason,))
    phase_swing, amplitude_swing = _swings(blocks, mean)
    clock = (times_s - times_s.mean()) / max(span_s, 1e-9)
    still = _best(blocks, np.ones((count, 1)))
    turn_per_min = _turn(blocks, clock, mean) / max(span_s, 1e-9) * 60.0
    beat = _beat(blocks, still.score, span_s, float(speeds_rad_s.mean()), order)
    harmful = phase_swing > _SMALL_DEG or amplitude_swing > _SMALL_PERCENT
    if beat is not None and beat.ratio > 0.01 * _SMALL_PERCENT and beat.record_in_beats >= 0.5:
        return _beating(beat, phase_swing, amplitude_swing)
    cause = _drift(blocks, clock, speeds_rad_s, still.score)
    if cause is not None:
        reason = (
            "the phase follows the speed: hold the speed, or measure away from a resonance"
            if cause == "speed"
            else f"the phase drifts by {turn_per_min:+.1f}°/min: let the machine settle, then record again"
        )
        return Steadiness(
            "drifting", cause, phase_swing, amplitude_swing, None, turn_per_min, 2 * span_s, False, (reason,)
        )
    if still.memory > 0.7 and harmful:
        reason = f"the vector wanders slowly: {phase_swing:.1f}° and {amplitude_swing:.1f} % peak to peak"
        return Steadiness("unsettled", "wander", phase_swing, amplitude_swing, None, None, 2 * span_s, False, (reason,))
    return Steadiness("steady", None, phase_swing, amplitude_swing, None, turn_per_min, None, True, ())


def _beating(beat: Beat, phase_swing: float, amplitude_swing: float) -> Steadiness:
    period_s = 1.0 / abs(beat.offset_hz)
    walking = beat.ratio >= 1.0
    record_s = math.ceil(4.0 * period_s)
    where = " or ".join(f"{rpm:.1f}" for rpm in beat.source_rpm)
    reason = (
        f"a second source at {where} r/min, {beat.ratio:.2f} times as strong, "
        + (
            f"turns the phase through 360° every {period_s:.1f} s"
            if walking
            else f"swings the phase by {2 * math.degrees(math.asin(beat.ratio)):.1f}° every {period_s:.1f} s"
        )
        + f": find and stop it, or record {record_s} s"
    )
    return Steadiness(
        "walking" if walking else "beating",
        None,
        phase_swing,
        amplitude_swing,
        beat,
        None,
        float(record_s),
        False,
        (reason,),
    )


def _drift(blocks: Complex, clock: Real, speeds_rad_s: Real, still: float) -> str | None:
    """Tell whether "trend" or "speed" explains a change that matters better; None without one."""
    candidates = {"trend": clock}
    if np.ptp(speeds_rad_s) > 1e-5 * float(speeds_rad_s.mean()):
        candidates["speed"] = (speeds_rad_s - speeds_rad_s.mean()) / np.ptp(speeds_rad_s)
    best, best_score = None, still + _LINE_LEAD
    for cause, course in candidates.items():
        fit = _best(blocks, np.column_stack([np.ones(blocks.size), course]))
        # what it changes at the least: a small vector in noise must not look as if it followed something
        change = abs(complex(fit.coefficients[1])) - 2.0 * fit.deviation
        if fit.score > best_score and change > 0.01 * _SMALL_PERCENT * abs(complex(blocks.mean())):
            best, best_score = cause, fit.score
    return best


def _swings(blocks: Complex, mean: complex) -> tuple[float, float]:
    """Peak-to-peak swing of phase (deg) and amplitude (percent) of the series smoothed over a sixteenth of it."""
    width = max(2, blocks.size // 16)
    smooth = np.convolve(blocks, np.full(width, 1.0 / width), mode="valid") / mean
    phase = np.rad2deg(np.unwrap(np.angle(smooth)))
    return float(np.ptp(phase)), 100.0 * float(np.ptp(np.abs(smooth)))


def _turn(blocks: Complex, clock: Real, mean: complex) -> float:
    """Phase change in degrees over the record by a straight line."""
    slope = np.sum(clock * blocks) / np.sum(clock**2)
    return math.degrees((slope / mean).imag)


@dataclass(frozen=True)
class _Fit:
    score: float
    memory: float
    coefficients: Complex
    deviation: float  # of the last coefficient, re and im together


def _best(series: Complex, columns: Real | Complex) -> _Fit:
    """Least squares in AR(1) noise, the memory that gives the highest likelihood."""
    count = series.size
    best = _Fit(-math.inf, 0.0, np.zeros(columns.shape[1], dtype=np.complex128), math.inf)
    for memory in _MEMORIES:
        start = math.sqrt(1.0 - memory**2)
        y = np.concatenate([[series[0] * start], series[1:] - memory * series[:-1]])
        a = np.vstack([columns[:1] * start, columns[1:] - memory * columns[:-1]])
        solution = np.linalg.lstsq(a, y, rcond=None)[0]
        residual = max(float(np.sum(np.abs(y - a @ solution) ** 2)), 1e-300)
        score = -count * math.log(residual) + math.log(1.0 - memory**2)
        if score > best.score:
            power = float(np.sum(np.abs(a[:, -1] - a[:, -1].mean()) ** 2)) or math.inf
            best = _Fit(score, float(memory), solution, math.sqrt(residual / count / power))
    return best


def _beat(series: Complex, still: float, span_s: float, speed_rad_s: float, order: float) -> Beat | None:
    """The strongest second source that stands out, or None."""
    count = series.size
    k = np.arange(count) - 0.5 * (count - 1)
    ones = np.ones(count)

    def residual(delta: float) -> tuple[float, Complex]:
        columns = np.column_stack([ones, np.exp(1j * delta * k)])
        solution = np.linalg.lstsq(columns, series, rcond=None)[0]
        return float(np.sum(np.abs(series - columns @ solution) ** 2)), np.asarray(solution, dtype=np.complex128)

    # a coarse look on a grid four times as fine as the transform, then the joint fit about the best few
    grid = 2.0 * np.pi * np.arange(-2 * count, 2 * count) / (4 * count)
    grid = grid[np.abs(grid) >= 0.25 * 2.0 * np.pi / count]
    spectrum = np.abs(np.exp(-1j * np.outer(grid, k)) @ (series - series.mean()))
    best_delta, best_cost = 0.0, math.inf
    for delta in grid[np.argsort(spectrum)[-12:]]:
        cost = residual(float(delta))[0]
        if cost < best_cost:
            best_delta, best_cost = float(delta), cost
    width = 2.0 * np.pi / (4 * count)
    for _ in range(24):  # golden-section-like narrowing on the profile
        trials = [best_delta - width, best_delta, best_delta + width]
        best_delta = trials[int(np.argmin([residual(d)[0] for d in trials]))]
        width *= 0.6
    cost, (mean, strength) = residual(best_delta)
    fit = _best(series, np.column_stack([ones, np.exp(1j * best_delta * k)]))
    if fit.score - still < _BEAT_LEAD:
        return None
    left = series - mean - strength * np.exp(1j * best_delta * k)
    bins = best_delta + 2.0 * np.pi / count * np.array([*range(-5, 0), *range(1, 6)])
    around = np.abs(np.exp(-1j * np.outer(bins, k)) @ left) ** 2 / count
    if count * abs(strength) ** 2 < _LINE_OVER_NOISE * float(around.mean()):
        return None
    step_s = span_s / count
    noise = cost / max(1, 2 * count - 5)
    offset_hz = best_delta / (2.0 * np.pi * step_s)
    # Rife & Boorstyn, IEEE Trans. Inf. Theory 1974: var(δ) = 12 s² / (|B|² K³), s² per component
    offset_ci = 1.96 * math.sqrt(12.0 * noise / (abs(strength) ** 2 * count**3)) / (2.0 * np.pi * step_s)
    mirror = residual(-best_delta)[0]
    both = mirror < cost * (1.0 + 9.0 / count)
    running = speed_rad_s / (2.0 * np.pi) * order
    sides = (offset_hz, -offset_hz) if both else (offset_hz,)
    # z is the conjugate form: a faster source makes it turn backwards
    sources = tuple(60.0 * (running - s) for s in sides)
    return Beat(
        -offset_hz,
        offset_ci,
        abs(strength) / abs(mean) if mean else math.inf,
        "unknown" if both else ("above" if offset_hz < 0 else "below"),
        sources,
        60.0 * offset_ci,
        complex(mean),
        abs(offset_hz) * span_s,
    )


def to_json(steadiness: Steadiness) -> dict[str, object]:
    """The keys of the contract's steadiness object."""
    beat = steadiness.beat
    described = None
    if beat is not None:
        amplitude, phase_deg = vectors.amplitude_phase(beat.cleaned)
        described = {
            "offset_hz": beat.offset_hz,
            "offset_ci95_hz": beat.offset_ci95_hz,
            "ratio": beat.ratio if math.isfinite(beat.ratio) else None,
            "side": beat.side,
            "source_rpm": list(beat.source_rpm),
            "source_rpm_ci95": beat.source_rpm_ci95,
            "cleaned_amplitude": amplitude,
            "cleaned_phase_deg": phase_deg,
            "record_in_beats": beat.record_in_beats,
        }
    return {
        "verdict": steadiness.verdict,
        "cause": steadiness.cause,
        "phase_swing_deg": steadiness.phase_swing_deg,
        "amplitude_swing_percent": steadiness.amplitude_swing_percent,
        "beat": described,
        "trend_deg_per_min": steadiness.trend_deg_per_min,
        "record_s": steadiness.record_s,
        "trusted": steadiness.trusted,
        "reasons": list(steadiness.reasons),
    }
