"""Run-up and coast-down: amplitude and phase against speed, resonances, and how far running speed keeps from them.

The samples are tracked as `tracking` does it, with a bandwidth that suits the resonances found; those are fitted as
`resonance` does it. What is shown is of the displayed quantity; what is fitted is what the sensor gave.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import resonance, tach, tracking, units, vectors
from stillshaft.dsp.channels import PointChannel
from stillshaft.dsp.tracking import SweepError

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

TRACKERS = ("vold-kalman", "windows")
TOO_FAST = 0.2  # sweep number above which the curve is not the steady one: methods of the project, 0.7 % at the peak
NARROW_MARGIN_PERCENT = 20.0  # common practice, no source
_LEAST_CHANGE = 0.1  # of speed, over the sweep
_BANDWIDTH_SHARE, _NARROWEST_HZ = 0.06, 1.5  # first bandwidth, of the highest frequency; and at the least
_WIDTHS_IN_BANDWIDTH = 2.4  # half-power widths of a resonance, in a sweep of number 1
_SLOWEST_IN_BANDWIDTHS = 2.5  # frequency below which the order is not told from its mirror image
_END_IN_BANDWIDTHS = 0.5
_LIKE = 0.2  # part by which a rise and a fall may differ and still count as alike
_MOST_SHOWN = 500  # moments of a curve
_T = 2.06  # Student's t for the two dozen independent values that a deviation is read from


@dataclass(frozen=True)
class Estimate:
    """A value with its 95 % half width; None where there is no bound."""

    value: float
    ci95: float | None


@dataclass(frozen=True)
class Resonance:
    """A resonance as it is at constant speed: `rpm` is where the high spot trails the heavy spot by 90°.

    `amplitude` and `phase_deg` are those of the order there, in the displayed unit, of this mode alone;
    `running_lag_deg` is the mode's mechanical lag at running speed.
    """

    rpm: Estimate
    amplitude: Estimate
    amplification: Estimate
    phase_deg: Estimate
    sweep_number: float
    running_lag_deg: float


@dataclass(frozen=True)
class PointSweep:
    """One order at one point: curve (moments,) in the displayed unit, z as in `vectors.py`, and its resonances.

    `deviation` (moments,) is that of each quadrature of z.
    """

    name: str
    order: float
    unit: str
    speeds_rpm: Real
    z: Complex
    deviation: Real
    resonances: tuple[Resonance, ...]


@dataclass(frozen=True)
class Sweep:
    """A run-up or coast-down; `margin_percent` is None where no resonance was found, and a warning says so.

    `sweep_number` is the largest of the resonances passed. `reasons` say why the curve is not to be trusted.
    """

    direction: str
    slowest_rpm: float
    fastest_rpm: float
    seconds: float
    running_rpm: float
    sweep_number: float | None
    margin_percent: float | None
    bandwidth_hz: float
    pulses: int
    missing_pulses: int
    extra_pulses: int
    points: tuple[PointSweep, ...]
    warnings: tuple[str, ...]
    reasons: tuple[str, ...]

    @property
    def trusted(self) -> bool:
        """True when nothing speaks against using the curve as it is."""
        return not self.reasons


@dataclass(frozen=True)
class Wanted:
    """What is asked of a sweep: orders and a tone tracked together, tracker, slow roll up to a speed, running speed.

    Raises SweepError for what cannot be.
    """

    orders: tuple[float, ...] = (1.0,)
    tone_hz: float | None = None
    tracker: str = "vold-kalman"
    bandwidth_hz: float | None = None
    slow_roll_rpm: float | None = None
    running_rpm: float | None = None

    def __post_init__(self) -> None:
        if not self.orders or any(not 0.0 < o < 1e4 for o in self.orders) or len(set(self.orders)) < len(self.orders):
            raise SweepError(f"orders {', '.join(f'{o:g}' for o in self.orders)}: give each once, above 0")
        if self.tracker not in TRACKERS:
            raise SweepError(f'tracker "{self.tracker}": {" or ".join(TRACKERS)}')
        for name in ("tone_hz", "bandwidth_hz", "slow_roll_rpm", "running_rpm"):
            value = getattr(self, name)
            if value is not None and not 0.0 < value < 1e7:
                raise SweepError(f"{name.rpartition('_')[0].replace('_', ' ')} {value:g}: must be above 0")
        if self.tone_hz is not None and self.tracker != "vold-kalman":
            raise SweepError("a tone is tracked beside the orders by the Vold-Kalman filter only")


def analyse(
    reduced: Real,
    first: int,
    step: int,
    rate_hz: float,
    turned: tach.Revolutions,
    points: Sequence[PointChannel],
    display: str,
    wanted: Wanted,
) -> Sweep:
    """The sweep in readings (moments, points) that `tracking.reducer` has reduced, from reduced sample `first` on.

    `turned` is the shaft of the whole record. Raises SweepError where there is no sweep to speak of.
    """
    inside = tracking.between_pulses(turned, first, reduced.shape[0], step)
    frames = (first + np.arange(reduced.shape[0], dtype=np.float64))[inside] * step
    if frames.size < 64:
        raise SweepError(f"{frames.size * step / rate_hz:.2f} s between the first and the last pulse: record longer")
    samples, moved = reduced[inside] - reduced[inside].mean(axis=0), tracking.motion(turned, rate_hz, frames)
    course = _course(moved.speed_rad_s)
    direction = "run-up" if moved.speed_rad_s[course.stop - 1] > moved.speed_rad_s[course.start] else "coast-down"
    unit = units.vibration_unit(display)
    fastest_hz = max(wanted.orders) * float(moved.speed_rad_s[course].max()) / (2.0 * np.pi)
    bandwidth = wanted.bandwidth_hz or max(_NARROWEST_HZ, _BANDWIDTH_SHARE * fastest_hz)
    tracked, modes = _tracked(samples, moved, course, points, wanted, bandwidth)
    if wanted.bandwidth_hz is None and (better := _suiting(modes)) is not None:
        tracked, modes = _tracked(samples, moved, course, points, wanted, better)
    usable = _usable(tracked, course)
    speeds = tracked.motion.speed_rad_s
    running_rpm = wanted.running_rpm or float(speeds[usable].max()) * 30.0 / np.pi
    shown = _shown(speeds, usable, tracked.bandwidth_hz * tracked.motion.step_s)
    found, warnings = [], []
    for i, order in enumerate(wanted.orders):
        for j, point in enumerate(points):
            shown_hz = order * speeds[shown] / (2.0 * np.pi)
            factors = np.array([vectors.display_factor(point, unit, f) for f in shown_hz.tolist()])
            z, deviation = tracked.vectors[i, shown, j] * factors, tracked.deviation[i, shown, j] * np.abs(factors)
            if wanted.slow_roll_rpm is not None and point.quantity == "displacement":
                z, deviation = _without_slow_roll(
                    z, deviation, speeds[shown] * 30.0 / np.pi, wanted.slow_roll_rpm, point
                )
            own = modes[j] if order == 1.0 else ()
            resonances = tuple(_resonance(m, point, unit, running_rpm) for m in own)
            rpm = np.asarray(speeds[shown] * 30.0 / np.pi)
            found.append(
                PointSweep(point.name, order, unit.text, rpm, np.asarray(z), np.asarray(deviation), resonances)
            )
            if order == 1.0 and resonance.rises_at_the_end(
                tracked.vectors[i, :, j], speeds, usable, _differentiated(point)
            ):
                warnings.append(
                    f"{point.name}: the response still rises at the highest speed: a resonance may lie above"
                )
    if wanted.slow_roll_rpm is not None and not any(p.quantity == "displacement" for p in points):
        raise SweepError("slow roll is taken off displacement points only, and there is none; leave it out")
    slow, fast = (float(f(speeds[usable])) * 30.0 / np.pi for f in (np.min, np.max))
    seconds = float(np.ptp(tracked.motion.times_s[usable]))
    margin, said = _margin(found, running_rpm, slow, fast)
    number = max((r.sweep_number for p in found for r in p.resonances), default=None)
    reasons = []
    if number is not None and number > TOO_FAST:
        reasons.append(
            f"the speed changes too fast for the sharpest resonance, sweep number {number:.2g} where {TOO_FAST:g} is the "
            f"limit: the curve peaks late and low, only the resonance figures allow for it; take "
            f"{_rounded_up(seconds * number / TOO_FAST)} s or more for this sweep"
        )
    if turned.missing + turned.extra > 0.02 * turned.frames.size:
        warnings.append(f"{turned.missing} pulses were missing and {turned.extra} too many: look at the pulse sensor")
    return Sweep(
        direction, slow, fast, seconds, running_rpm, number, margin, tracked.bandwidth_hz, turned.frames.size,
        turned.missing, turned.extra, tuple(found), (*warnings, *said), tuple(reasons),
    )  # fmt: skip


def _course(speed: Real) -> slice:
    """The part of the record where the speed rises or falls most; of two alike, the slower one.

    Raises SweepError for a speed that hardly changes.
    """
    climbed = speed - np.minimum.accumulate(speed)
    fallen = np.maximum.accumulate(speed) - speed
    top, bottom = int(climbed.argmax()), int(fallen.argmax())
    up = slice(int(speed[: top + 1].argmin()), top + 1)
    down = slice(int(speed[: bottom + 1].argmax()), bottom + 1)
    rise, fall = float(climbed[top]), float(fallen[bottom])
    if max(rise, fall) < _LEAST_CHANGE * float(speed.max()):
        raise SweepError(
            f"a sweep without a change of speed: {speed.min() * 30 / np.pi:.0f} to {speed.max() * 30 / np.pi:.0f} r/min; "
            "record from standstill to running speed, or the coast-down"
        )
    if abs(rise - fall) <= _LIKE * max(rise, fall):
        return up if up.stop - up.start >= down.stop - down.start else down
    return up if rise > fall else down


def _differentiated(point: PointChannel) -> int:
    return units.differentiations("displacement", point.quantity)


def _usable(tracked: tracking.Track, course: slice) -> slice:
    """Moments of the course where the order is told from its mirror image, without the ends of the record."""
    moved, count = tracked.motion, tracked.motion.frames.size
    end = max(1, round(_END_IN_BANDWIDTHS / (tracked.bandwidth_hz * moved.step_s)))
    slowest = 2.0 * np.pi * _SLOWEST_IN_BANDWIDTHS * tracked.bandwidth_hz
    fast = np.flatnonzero(moved.speed_rad_s[course] >= slowest) + course.start
    fast = fast[(fast >= end) & (fast < count - end)]
    if fast.size < 32:
        raise SweepError(
            f"the speed passes {slowest * 30 / np.pi:.0f} r/min, from where it can be tracked with a bandwidth of "
            f"{tracked.bandwidth_hz:.2g} Hz, only just or too quickly: sweep slower, or choose a narrower bandwidth"
        )
    return slice(int(fast[0]), int(fast[-1]) + 1)


def _tracked(
    samples: Real,
    moved: tracking.Motion,
    course: slice,
    points: Sequence[PointChannel],
    wanted: Wanted,
    bandwidth: float,
) -> tuple[tracking.Track, list[tuple[resonance.Mode, ...]]]:
    """The orders, and the modes that the first order shows at each point."""
    orders = tracking.with_companions(wanted.orders)
    if wanted.tracker == "windows":
        tracked = tracking.short_windows(samples, moved, orders, tracking.WINDOW_BANDWIDTHS / bandwidth)
        begin = int(np.searchsorted(moved.times_s, tracked.motion.times_s[0]))
        count = tracked.motion.frames.size
        course = slice(max(0, course.start - begin), min(count, course.stop - begin))
    else:
        tracked = tracking.track(samples, moved, orders, wanted.tone_hz, bandwidth)
    if 1.0 not in wanted.orders:
        return tracked, [()] * len(points)
    usable = _usable(tracked, course)
    first = wanted.orders.index(1.0)
    return tracked, [
        resonance.find_modes(
            tracked.vectors[first, :, j],
            tracked.deviation[first, :, j],
            tracked.motion,
            usable,
            _differentiated(point),
            tracked.smoothed,
            tracked.bandwidth_hz,
        )
        for j, point in enumerate(points)
    ]


def _suiting(modes: Sequence[tuple[resonance.Mode, ...]]) -> float | None:
    """Bandwidth in Hz that follows the resonance that changes the envelope fastest; None without any."""
    wanted = [
        _WIDTHS_IN_BANDWIDTH * m.damping_ratio * m.natural_rad_s / np.pi * float(np.clip(m.sweep_number, 0.3, 1.0))
        for of_point in modes
        for m in of_point
    ]
    return max(wanted) if wanted else None


def _shown(speed: Real, usable: slice, bandwidth: float) -> NDArray[np.intp]:
    """Moments of the curve: no closer than a quarter of the tracker's memory, none where the speed stands still."""
    every = max(1, round(0.25 / bandwidth), (usable.stop - usable.start) // (4 * _MOST_SHOWN))
    at = np.arange(usable.start, usable.stop, every)
    least = float(np.ptp(speed[usable])) / _MOST_SHOWN
    kept = [int(at[0])]
    for i in at[1:].tolist():
        if abs(speed[i] - speed[kept[-1]]) >= least:
            kept.append(i)
    return np.asarray(kept)


def _without_slow_roll(
    z: Complex, deviation: Real, speeds_rpm: Real, slow_roll_rpm: float, point: PointChannel
) -> tuple[Complex, Real]:
    """The curve less its mean below a speed: what bow and run-out show there they show at every speed."""
    slow = speeds_rpm <= slow_roll_rpm
    if np.count_nonzero(slow) < 3:
        raise SweepError(
            f"{point.name}: no slow roll below {slow_roll_rpm:.0f} r/min: the slowest speed tracked is "
            f"{speeds_rpm.min():.0f} r/min; give a higher one or start slower"
        )
    mean = z[slow].mean()
    # neighbouring moments are a quarter of the tracker's memory apart
    of_mean = math.sqrt(4.0 * float(np.mean(deviation[slow] ** 2)) / np.count_nonzero(slow))
    return np.asarray(z - mean), np.hypot(deviation, of_mean)


def _resonance(mode: resonance.Mode, point: PointChannel, unit: units.VibrationUnit, running_rpm: float) -> Resonance:
    from scipy.special import stdtrit

    t = float(stdtrit(mode.degrees_of_freedom, 0.975))
    rpm = mode.natural_rad_s * 30.0 / np.pi
    factor = vectors.display_factor(point, unit, mode.natural_rad_s / (2.0 * np.pi))
    z = mode.response * factor
    covariance = vectors.rotated_covariance(mode.covariance[2:, 2:], np.array([factor]))
    amplitude, phase_deg = vectors.amplitude_phase(z)
    along, across = vectors.half_widths(z, covariance, mode.degrees_of_freedom)
    deviation = np.sqrt(np.diag(mode.covariance))
    return Resonance(
        Estimate(rpm, rpm * t * float(deviation[0])),
        Estimate(amplitude, along),
        Estimate(mode.amplification, mode.amplification * t * float(deviation[1])),
        Estimate(phase_deg, across),
        mode.sweep_number,
        mode.lag_deg(running_rpm * np.pi / 30.0),
    )


def _margin(
    points: Sequence[PointSweep], running_rpm: float, slow: float, fast: float
) -> tuple[float | None, tuple[str, ...]]:
    """How far running speed keeps from the nearest resonance, percent of running speed, and what to say of it."""
    found = [(abs(r.rpm.value - running_rpm), r, p) for p in points for r in p.resonances]
    if not found:
        return None, (f"no resonance was seen between {slow:.0f} and {fast:.0f} r/min: no margin can be given",)
    away, nearest, point = min(found, key=lambda f: f[0])
    margin = 100.0 * away / running_rpm
    if margin >= NARROW_MARGIN_PERCENT:
        return margin, ()
    return margin, (
        f"{point.name}: a resonance at {nearest.rpm.value:.0f} r/min is {margin:.1f} % from running speed "
        f"{running_rpm:.0f} r/min: phase and amplitude follow every change of speed there, and a balance holds for this "
        "speed and temperature only (rule of thumb: keep 20 %)",
    )


def _rounded_up(seconds: float) -> int:
    step = 10 ** max(0, math.floor(math.log10(max(seconds, 1.0))) - 1)
    return int(math.ceil(seconds / step) * step)


def curve_half_widths(point: PointSweep) -> tuple[Real, list[float | None]]:
    """95 % half widths of a curve's amplitude, and of its phase in degrees: None where the origin is in reach."""
    half = _T * point.deviation
    amplitude = np.abs(point.z)
    phase = [
        None if h >= a else math.degrees(math.asin(h / a))
        for h, a in zip(half.tolist(), amplitude.tolist(), strict=True)
    ]
    return half, phase


def to_json(sweep: Sweep) -> dict[str, Any]:
    """The keys of the contract's `sweep` object, and beside them what the sweep was made of."""
    points = []
    for point in sweep.points:
        half, phase_half = curve_half_widths(point)
        resonances = []
        for r in point.resonances:
            row: dict[str, Any] = {}
            for name in ("rpm", "amplitude", "amplification", "phase_deg"):
                estimate = getattr(r, name)
                ending = name.replace("_deg", "_ci95_deg") if name.endswith("_deg") else f"{name}_ci95"
                row |= {name: estimate.value, ending: estimate.ci95}
            resonances.append({**row, "sweep_number": r.sweep_number, "running_lag_deg": r.running_lag_deg})
        points.append(
            {
                "name": point.name,
                "unit": point.unit,
                "order": point.order,
                "resonances": resonances,
                "curve": {
                    "rpm": point.speeds_rpm.tolist(),
                    "amplitude": np.abs(point.z).tolist(),
                    "phase_deg": [vectors.amplitude_phase(complex(z))[1] for z in point.z],
                    "amplitude_ci95": half.tolist(),
                    "phase_ci95_deg": phase_half,
                },
            }
        )
    return {
        "direction": sweep.direction,
        "slowest_rpm": sweep.slowest_rpm,
        "fastest_rpm": sweep.fastest_rpm,
        "seconds": sweep.seconds,
        "running_rpm": sweep.running_rpm,
        "sweep_number": sweep.sweep_number,
        "margin_percent": sweep.margin_percent,
        "bandwidth_hz": sweep.bandwidth_hz,
        "pulses": sweep.pulses,
        "missing_pulses": sweep.missing_pulses,
        "extra_pulses": sweep.extra_pulses,
        "points": points,
        "warnings": list(sweep.warnings),
    }
