"""The signal check: what is wrong with pulse and vibration signals, in words, with what to do about it.

The findings and their cures are common practice, no source; limits stand beside their names.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import channels, edges, measure, spectrum, tach, units

Real = NDArray[np.float64]

BLOCKS, CAUTION, FINE = "blocks", "caution", "fine"
_STUCK_S = 0.05  # a channel that stands still for so long is stuck
_LOW_LEVEL, _HIGH_LEVEL = 1e-3, 0.9  # of full scale
_LOW_PULSE = 0.05
_LAMP_HZ, _LINE_HZ = (100.0, 120.0), (50.0, 60.0)
_LAMP_SHARE, _HUM_SHARE = 0.05, 0.2  # of the pulse's height, of 1x
_MAINS_HZ = 0.3  # by which a tone of the mains may be off
_OVER_NOISE = 6.0  # power of a tone over that of the noise beside it: seldom by chance in one window
_FINEST_HZ, _WINDOW_SHARE = 0.1, 1.2  # lines of the spectrum: their distance, and that of one window over the record's
_SCATTER_DEG, _BAD_SCATTER_DEG = 0.5, 3.0
_MISSING_SHARE, _BAD_MISSING_SHARE = 0.005, 0.05
_ALTERNATING = 0.05  # by which every second interval differs
_SURGE_SHARE = 0.5  # of the mean square, below 2 Hz
_CROSSTALK = 0.02  # of the vibration's level
_TWIN = 0.9999  # correlation of two inputs that carry the same signal
_JUMP_TIMES = 30.0  # a change from sample to sample beyond all others
_LOW_SPEED_RPM, _CORNER_SHARE = 600.0, 5.0
_LINE_OVER_FLOOR = 12.0  # of a modulated pulse time
_SLOW_GAIN = 0.2  # slower swings are changes of speed
_CLEAR_1X = 3.0  # over its 95 % half width
_NAMEPLATE = 0.03
_MOST = 1e30  # of full scale: squares of what is larger run over


@dataclass(frozen=True)
class Finding:
    """What was found at an input: `weight` is BLOCKS, CAUTION or FINE; `cure` is what to do."""

    where: str
    weight: str
    what: str
    cure: str


@dataclass(frozen=True)
class Mark:
    """How the pulse's mark is seen: which edge leads, the degrees that it covers, the threshold in parts of full scale."""

    edge: str
    width_deg: float
    threshold: float


def mark_of(x: NDArray[np.floating[Any]], rate_hz: float, pulse: channels.PulseChannel) -> Mark | None:
    """The mark in samples (frames,) of the pulse input; None where no revolution is seen."""
    follower = edges.EdgeFollower(rate_hz, pulse.edge)
    follower.feed(np.asarray(x, dtype=np.float64))
    follower.finish()
    if follower.found < 3:
        return None
    return Mark(follower.edge, 360.0 * follower.mark_share, 0.5 * sum(follower.levels))


def examine(
    samples: NDArray[np.floating[Any]],
    rate_hz: float,
    pulse: channels.PulseChannel,
    points: Sequence[channels.PointChannel],
    display: str,
    nameplate_rpm: float | None = None,
    *,
    stopped: bool = False,
) -> tuple[Finding, ...]:
    """Findings on samples (frames, inputs) in units of full scale, the gravest first; FINE lines say what holds.

    `stopped` says that the machine stands still: there must be no pulses then.
    """
    with np.errstate(invalid="ignore"):  # a damaged file may hold any NaN
        x = np.asarray(samples, dtype=np.float64)
    if stopped:
        return _standing(x[:, pulse.index], rate_hz, pulse)
    found = [*_pulse_level(x[:, pulse.index], rate_hz, pulse.index)]
    for point in points:
        found += _point_level(x[:, point.index], rate_hz, point)
    found += _twins(x, [p for p in points if _dead(x[:, p.index], "") is None])
    if not any(f.weight == BLOCKS for f in found):
        found += _measured(x, rate_hz, pulse, points, display, nameplate_rpm)
    weights = (BLOCKS, CAUTION, FINE)
    return tuple(sorted(found, key=lambda f: weights.index(f.weight)))


def _standing(x: Real, rate_hz: float, pulse: channels.PulseChannel) -> tuple[Finding, ...]:
    """What the pulse input shows while the machine stands."""
    where = f"pulse, input {pulse.index + 1}"
    if (damaged := _damaged(x, where)) is not None:
        return (damaged,)
    follower = edges.EdgeFollower(rate_hz, pulse.edge)
    follower.feed(x)
    follower.finish()
    at, _ = follower.take()
    if at.size < 3:
        return (Finding(where, FINE, "no pulses while the machine stands", ""),)
    rpm = 60.0 * rate_hz / float(np.median(np.diff(at)))
    return (
        Finding(
            where, BLOCKS, f"{at.size} pulses while the machine stands, as of {rpm:.0f} r/min",
            "lamps or a drive nearby: shade the sensor, keep its cable away from mains and drives",
        ),
    )  # fmt: skip


def _standing_still(x: Real, rate_hz: float) -> float:
    """Longest time in s that the samples do not change at all."""
    change = np.flatnonzero(np.diff(x) != 0.0)
    ends = np.concatenate([[-1], change, [x.size - 1]])
    return float(np.diff(ends).max()) / rate_hz


def _damaged(x: Real, where: str) -> Finding | None:
    """Values that no input gives."""
    if not np.isfinite(x).all():
        return Finding(
            where, BLOCKS, "has values that are not finite", "the driver or the file is damaged: record again"
        )
    most = float(np.abs(x).max(initial=0.0))
    if most > _MOST:
        return Finding(where, BLOCKS, f"reaches {most:.1g} times full scale", "the file is damaged: record again")
    return None


def _dead(x: Real, where: str) -> Finding | None:
    if (damaged := _damaged(x, where)) is not None:
        return damaged
    if np.all(x == 0.0):
        return Finding(
            where, BLOCKS, "is exactly zero throughout",
            "check cable and sensor supply, that the input is not muted, and that the system lets this program record "
            "(microphone permission)",
        )  # fmt: skip
    if np.all(x == x[0]):
        return Finding(where, BLOCKS, f"stands at {x[0]:g} throughout", "bias open or short: check supply and cable")
    return None


def _pulse_level(x: Real, rate_hz: float, index: int) -> list[Finding]:
    where = f"pulse, input {index + 1}"
    if (dead := _dead(x, where)) is not None:
        return [dead]
    height = float(np.ptp(np.quantile(x, [0.001, 0.999])))
    if height < _LOW_PULSE:
        return [
            Finding(where, CAUTION, f"is only {100 * height:.1f} % of full scale high", "raise the gain or its supply")
        ]
    return []


def _point_level(x: Real, rate_hz: float, point: channels.PointChannel) -> list[Finding]:
    where = f"{point.name}, input {point.index + 1}"
    if (dead := _dead(x, where)) is not None:
        return [dead]
    found = []
    still_s = _standing_still(x, rate_hz)
    peak = float(np.abs(x).max())
    clipped = int(np.count_nonzero(np.abs(x) >= 0.999))
    if clipped:
        found.append(
            Finding(
                where, BLOCKS, f"is clipped: {clipped} samples at full scale", "lower the gain or take a larger range"
            )
        )
    elif still_s > _STUCK_S:
        found.append(
            Finding(where, BLOCKS, f"stood still for {1000 * still_s:.0f} ms", "check cable and supply: wiggle test")
        )
    elif peak > _HIGH_LEVEL:
        found.append(Finding(where, CAUTION, f"reaches {100 * peak:.0f} % of full scale", "lower the gain"))
    elif float(x.std()) < _LOW_LEVEL:
        found.append(
            Finding(where, CAUTION, f"is weak: {100 * float(x.std()):.3f} % of full scale rms", "raise the gain")
        )
    step = np.abs(np.diff(x))
    usual = float(np.quantile(step, 0.999))
    jumps = int(np.count_nonzero(step > _JUMP_TIMES * max(usual, 1e-9)))
    if jumps and not clipped:
        found.append(Finding(where, CAUTION, f"jumps {jumps} times", "intermittent cable: wiggle test"))
    size = round(0.5 * rate_hz)
    if x.size >= 8 * size:
        means = x[: x.size // size * size].reshape(-1, size).mean(axis=1)
        if float(means.var()) > _SURGE_SHARE * float(x.var()):
            found.append(
                Finding(
                    where, CAUTION, "surges slowly", "a loose magnet, or the sensor settles: wait 30 s, mount it again"
                )
            )
    return found


def _twins(x: Real, points: Sequence[channels.PointChannel]) -> list[Finding]:
    """Inputs that carry the same signal: a cable in two places, or channels copied on the way."""
    found = []
    for i, a in enumerate(points):
        for b in points[i + 1 :]:
            one, other = x[:, a.index] - x[:, a.index].mean(), x[:, b.index] - x[:, b.index].mean()
            size = float(np.linalg.norm(one) * np.linalg.norm(other))
            if size > 0.0 and abs(float(one @ other)) > _TWIN * size:
                found.append(
                    Finding(
                        f"{a.name}, {b.name}", BLOCKS, "carry the same signal",
                        "one cable in both, or channels copied by the system: tap each sensor and watch its input",
                    )
                )  # fmt: skip
    return found


def _measured(
    x: Real,
    rate_hz: float,
    pulse: channels.PulseChannel,
    points: Sequence[channels.PointChannel],
    display: str,
    nameplate_rpm: float | None,
) -> list[Finding]:
    where = f"pulse, input {pulse.index + 1}"
    found = _bright_spots(x[:, pulse.index], rate_hz, pulse, where)
    measuring = measure.Measuring(rate_hz, pulse, points, display)
    try:
        measuring.feed(x)
        result = measuring.result()
    except ValueError as error:
        return [*found, Finding(where, BLOCKS, str(error), "put this right first: nothing can be measured")]
    speed = result.speed
    found += _pulse_quality(x[:, pulse.index], rate_hz, result, where)
    if nameplate_rpm is not None:
        for times, word in ((2.0, "twice"), (0.5, "half")):
            if abs(speed.mean_rpm / (times * nameplate_rpm) - 1.0) < _NAMEPLATE:
                found.append(
                    Finding(
                        where, BLOCKS, f"shows {word} the nameplate speed, {speed.mean_rpm:.0f} r/min",
                        "count the marks on the shaft: blacken a second one, or set pulses_per_rev",
                    )
                )  # fmt: skip
    running_hz = speed.mean_rpm / 60.0
    mains = _Mains(x, rate_hz, speed)
    found += _lamp(mains, pulse.index, result, where)
    found += _bracket(measuring.shaft, where)
    unit = units.vibration_unit(display)
    for point, measured in zip(points, result.points, strict=True):
        at = f"{point.name}, input {point.index + 1}"
        corner = max(point.highpass_hz, default=0.0)
        if speed.mean_rpm < _LOW_SPEED_RPM and unit.quantity == "velocity" and corner > running_hz / _CORNER_SHARE:
            found.append(
                Finding(
                    at, BLOCKS, f"has a corner of {corner:g} Hz, above a fifth of running speed, {running_hz:.2f} Hz",
                    "needs a DC-coupled input; show displacement or acceleration meanwhile",
                )
            )  # fmt: skip
        found += _hum(mains, point, at)
        usable_hz = channels.USABLE_HZ.get(point.mount or "", math.inf)
        if running_hz > usable_hz / 3.0:
            found.append(
                Finding(
                    at, CAUTION, f"a {point.mount} hands on up to about {usable_hz:.0f} Hz, running speed is {running_hz:.0f} Hz",
                    "adhesive or a stud",
                )
            )  # fmt: skip
        found += _crosstalk(x, pulse.index, point, at)
        # a beat makes the interval wide, but not by noise
        if measured.steadiness.reasons and measured.steadiness.verdict in ("beating", "walking"):
            said, _, cure = measured.steadiness.reasons[0].rpartition(": ")
            what = f"1x {abs(measured.z):.3g} {result.unit} is {measured.steadiness.verdict}: {said}"
            found.append(Finding(at, CAUTION, what, cure))
        elif measured.amplitude_ci95 is not None and abs(measured.z) < _CLEAR_1X * measured.amplitude_ci95:
            found.append(
                Finding(
                    at, CAUTION,
                    f"1x is {abs(measured.z):.3g} ± {measured.amplitude_ci95:.2g} {result.unit}: hardly above its noise",
                    "record longer, raise the gain, or mount the sensor nearer to the bearing",
                )
            )  # fmt: skip
        elif not any(f.where == at for f in found):
            found.append(
                Finding(
                    at, FINE,
                    f"1x {abs(measured.z):.3g} {result.unit}, peak {100 * np.abs(x[:, point.index]).max():.0f} % of full scale, "
                    f"{measured.steadiness.verdict}", "",
                )
            )  # fmt: skip
    return found


def _bright_spots(x: Real, rate_hz: float, pulse: channels.PulseChannel, where: str) -> list[Finding]:
    """Two pulses a revolution at a constant angle show as intervals that alternate."""
    if pulse.pulses_per_rev > 1:
        return []
    follower = edges.EdgeFollower(rate_hz, pulse.edge)
    follower.feed(x)
    follower.finish()
    at, _ = follower.take()
    intervals = np.diff(at)
    if intervals.size < 12:
        return []
    even, odd = intervals[0::2], intervals[1::2]
    pairs = min(even.size, odd.size)
    ratio = even[:pairs] / (even[:pairs] + odd[:pairs])
    middle = float(np.median(ratio))
    if abs(middle - 0.5) < _ALTERNATING / 2 or 1.4826 * float(np.median(np.abs(ratio - middle))) > 0.1 * abs(
        middle - 0.5
    ):
        return []
    return [
        Finding(
            where, BLOCKS, f"comes twice a revolution, {360 * min(middle, 1 - middle):.0f}° apart",
            "a second bright spot, a key or a scratch: blacken it, or set pulses_per_rev",
        )
    ]  # fmt: skip


def _pulse_quality(x: Real, rate_hz: float, result: measure.Measurement, where: str) -> list[Finding]:
    speed, found = result.speed, []
    bad = (speed.missing_pulses + speed.extra_pulses) / max(1, speed.pulses)
    if bad > _MISSING_SHARE:
        weight = BLOCKS if bad > _BAD_MISSING_SHARE else CAUTION
        found.append(
            Finding(
                where, weight, f"{speed.missing_pulses} pulses missing and {speed.extra_pulses} too many of {speed.pulses}",
                "clean the mark, set distance and angle of the sensor, shade it",
            )
        )  # fmt: skip
    scatter_deg = None if speed.pulse_scatter_us is None else 6e-6 * speed.pulse_scatter_us * speed.mean_rpm
    if scatter_deg is not None and scatter_deg > _SCATTER_DEG:
        weight = BLOCKS if scatter_deg > _BAD_SCATTER_DEG else CAUTION
        found.append(
            Finding(
                where, weight, f"its edges scatter by {scatter_deg:.2g}°",
                "a sharper mark, a stiffer bracket: pulse time modulated at the bracket's own frequency is one cause",
            )
        )  # fmt: skip
    found_edges, _ = edges.find_edges(x[: round(min(20.0, x.size / rate_hz) * rate_hz)], result.edge)
    if found_edges.flattened:
        found.append(
            Finding(
                where, CAUTION, "its level swings through the turn or with the light",
                "shade it from sun and lamps, tilt the sensor 10 to 15° off square",
            )
        )  # fmt: skip
    if not found:
        scatter = "" if scatter_deg is None else f", edges to {scatter_deg:.2g}°"
        found.append(
            Finding(
                where, FINE,
                f"{speed.mean_rpm:.1f} r/min, {result.edge} edge, mark {360 * result.mark_share:.1f}° wide{scatter}", "",
            )
        )  # fmt: skip
    return found


class _Mains:
    """Tones of the mains in samples (frames, channels), told from orders of the shaft by lines as fine as the record allows."""

    def __init__(self, x: Real, rate_hz: float, speed: measure.Speed) -> None:
        highest_hz = min(1000.0, 0.4 * rate_hz)
        self._resolution_hz = min(0.25 * highest_hz, max(_FINEST_HZ, _WINDOW_SHARE * rate_hz / x.shape[0]))
        self._lines = spectrum.AveragedSpectrum(rate_hz, x.shape[1], highest_hz, self._resolution_hz)
        self._lines.feed(x)
        self._running_hz = speed.mean_rpm / 60.0
        self._wander_hz = 0.5 * (speed.max_rpm - speed.min_rpm) / 60.0
        self._half_hz = _MAINS_HZ + self._resolution_hz

    def tone(self, channel: int, frequency_hz: float) -> float:
        """Peak amplitude of a tone of the mains, in readings; 0 where an order hides it or noise is as much."""
        order = max(1, round(frequency_hz / self._running_hz))
        leaks_hz = self._half_hz + 2.0 * self._resolution_hz + order * self._wander_hz  # two lines of Hann's window
        if abs(frequency_hz - order * self._running_hz) < leaks_hz:
            return 0.0
        off = np.abs(self._lines.frequency_hz - frequency_hz)
        power = self._power(channel)
        inside, beside = power[off <= self._half_hz], power[(off > 2.0 * self._half_hz) & (off <= 10.0 * self._half_hz)]
        noise = inside.size * float(np.median(beside)) if beside.size else 0.0
        return math.sqrt(2.0 * float(inside.sum())) if inside.sum() > _OVER_NOISE * noise else 0.0

    def once(self, channel: int) -> float:
        """Peak amplitude at running speed, in readings."""
        off = np.abs(self._lines.frequency_hz - self._running_hz)
        return max(1e-12, math.sqrt(2.0 * float(self._power(channel)[off <= self._half_hz + self._wander_hz].sum())))

    def _power(self, channel: int) -> Real:
        return self._lines.power(channel, "velocity", "velocity")[0]


def _lamp(mains: _Mains, channel: int, result: measure.Measurement, where: str) -> list[Finding]:
    height = mains.once(channel) / (2.0 * max(result.mark_share, 1e-3))
    for hertz in _LAMP_HZ:
        share = 2.0 * mains.tone(channel, hertz) / height
        if share > _LAMP_SHARE:
            return [
                Finding(where, CAUTION, f"flickers at {hertz:.0f} Hz, {100 * share:.0f} % of its height",
                        "lamps on the mains: shade the sensor or switch them off")
            ]  # fmt: skip
    return []


def _bracket(turned: tach.Revolutions, where: str) -> list[Finding]:
    """A pulse sensor that shakes shifts its pulses by turns: a line in the times between them."""
    if turned.frames.size < 64:
        return []
    period = float(np.median(np.diff(turned.frames)))
    late = np.diff(turned.frames, n=2) / period  # what a steady change of speed leaves out
    spectrum_of = np.abs(np.fft.rfft((late - late.mean()) * np.hanning(late.size)))
    top = int(spectrum_of.argmax())
    floor = float(np.median(spectrum_of))
    # the second difference of a sine of the shaft's angle, taken once a revolution
    gain = 4.0 * math.sin(math.pi * max(top, 1) / late.size) ** 2
    swing_deg = 360.0 * 4.0 * float(spectrum_of[top]) / late.size / gain
    if spectrum_of[top] < _LINE_OVER_FLOOR * floor or swing_deg < _SCATTER_DEG or gain < _SLOW_GAIN:
        return []
    return [
        Finding(where, CAUTION, f"its pulses swing by ± {swing_deg:.2g}° at a rate of its own",
                "the sensor's bracket vibrates: stiffen it, or fix it to the ground")
    ]  # fmt: skip


def _hum(mains: _Mains, point: channels.PointChannel, where: str) -> list[Finding]:
    once = mains.once(point.index)
    for line_hz in _LINE_HZ:
        levels = {line_hz * k: mains.tone(point.index, line_hz * k) for k in (1, 2, 3)}
        at = max(levels, key=lambda hertz: levels[hertz])
        if levels[at] > _HUM_SHARE * once:
            return [
                Finding(where, CAUTION, f"hums at {at:.0f} Hz, {100 * levels[at] / once:.0f} % of 1x",
                        "earth loop or an open shield: one earth only, cable away from mains and drives")
            ]  # fmt: skip
    return []


def _crosstalk(x: Real, pulse: int, point: channels.PointChannel, where: str) -> list[Finding]:
    """The pulse's edges in a vibration signal. Vibration keeps step with them, but does not change within one."""
    from scipy.ndimage import uniform_filter1d

    step, moved = np.diff(x[:, pulse]), np.diff(x[:, point.index])
    strong = np.abs(step) > 0.25 * np.abs(step).max()
    edges = np.count_nonzero(np.diff(strong.astype(np.int8)) > 0)
    if np.count_nonzero(strong) < 8 or not edges:
        return []
    width = 4 * math.ceil(np.count_nonzero(strong) / edges) + 5  # samples: an edge, and as much again on either side
    step, moved = (change - uniform_filter1d(change, width) for change in (step, moved))
    part = float(step[strong] @ moved[strong]) / float(step[strong] @ step[strong])
    scatter = float(moved[strong].std()) / math.sqrt(float(step[strong] @ step[strong]))
    height = float(np.ptp(np.quantile(x[:, pulse], [0.001, 0.999])))
    if abs(part) > 5.0 * scatter and abs(part) * height > _CROSSTALK * math.sqrt(2.0) * float(x[:, point.index].std()):
        return [
            Finding(where, CAUTION, f"has {100 * abs(part):.2f} % of the pulse in it",
                    "crosstalk: lower the pulse's voltage, leave an input free between them, shielded cables")
        ]  # fmt: skip
    return []
