"""One measurement: samples go in piece by piece, live or from a file, and the vectors of every point come out.

The same code serves both, so what a screen shows for a run is what the command line prints for its recording.
"""

from __future__ import annotations

import contextlib
import math
from collections.abc import Callable, Sequence
from dataclasses import asdict, dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import channels, edges, spectrum, steadiness, tach, units, vectors
from stillshaft.dsp import order as orders
from stillshaft.dsp.units import InputError

Real = NDArray[np.float64]
Samples = NDArray[np.floating[Any]]
Complex = NDArray[np.complex128]

HARMONICS = 5
_LEAST_ORDER, _MOST_ORDER = 1e-3, 1e6
WEIGHTS = ("flat", "hann")
_NEEDED_AFTER = 8  # pulses after a block before it is worked out: its spline sees so many
_SHORTEST_BLOCK_S = 0.04  # at high speed a block is more revolutions
_SOLVE_S = 0.1  # at most ten times a second
_LONGEST_WAIT_S = 20.0  # samples kept while no pulse comes


class MeasureError(InputError):
    """Samples that give no measurement: the message says which channel, why, and what to do."""


@dataclass(frozen=True)
class Speed:
    """Speed over the record, r/min, and how the pulses were; `pulse_scatter_us` is one edge's deviation, if known."""

    mean_rpm: float
    min_rpm: float
    max_rpm: float
    pulses: int
    missing_pulses: int
    extra_pulses: int
    pulse_scatter_us: float | None


@dataclass(frozen=True)
class PointVector:
    """One point's vector in the displayed unit, with 95 % half widths; `overall` is the broadband level.

    A vector that wanders has no mean to be known within bounds: its half widths are None.
    """

    name: str
    z: complex
    amplitude_ci95: float | None
    phase_ci95_deg: float | None
    revolutions: int
    overall: float | None
    steadiness: steadiness.Steadiness
    blocks: Complex


@dataclass(frozen=True)
class Measurement:
    """Vectors of all points at one order, in the displayed unit, with their common covariance.

    `covariance` (2M, 2M) is that of re and im of each point's mean; `times_s` are the middles of the short-time
    vectors `points[i].blocks`, `speeds_rpm` the mean speeds in them; `edge` is how the pulse edge was resolved,
    `mark_share` the part of a revolution that the mark covers.
    """

    speed: Speed
    order: float
    unit: str
    points: tuple[PointVector, ...]
    covariance: Real
    degrees_of_freedom: int
    times_s: Real
    speeds_rpm: Real
    duration_s: float
    rate_hz: float
    edge: str
    mark_share: float
    reasons: tuple[str, ...]

    @property
    def trusted(self) -> bool:
        """True when nothing speaks against using these vectors."""
        return not self.reasons


class Measuring:
    """Takes samples (frames, channels) in units of digital full scale and keeps what the vectors need."""

    def __init__(
        self,
        rate_hz: float,
        pulse: channels.PulseChannel,
        points: Sequence[channels.PointChannel],
        display: str,
        order: float = 1.0,
        weights: str = "flat",
    ) -> None:
        if not _LEAST_ORDER <= order <= _MOST_ORDER:
            raise MeasureError(f"order {order}: must be above 0, from {_LEAST_ORDER:g} to {_MOST_ORDER:g}")
        if weights not in WEIGHTS:
            raise MeasureError(f'weights "{weights}": {" or ".join(WEIGHTS)}')
        self.rate_hz = rate_hz
        self._inputs = channels.Inputs(rate_hz, pulse, points)
        self._pulse, self._points, self._order, self._weights = pulse, tuple(points), order, weights
        self._unit = units.vibration_unit(display)
        self._levels = spectrum.AveragedSpectrum(rate_hz, len(self._points))
        self._blocks: list[orders.BlockEquations] = []
        self._ended: list[tuple[int, tach.Revolutions]] = []  # stretches before a gap: first frame, revolutions
        self.gaps = 0
        self._lost_s = 0.0
        self._begin_stretch(pulse.edge)

    def _begin_stretch(self, edge: str) -> None:
        """A stretch of samples without a gap; within it frames count from its first one."""
        self._begun = self.frames
        self._follower = edges.EdgeFollower(self.rate_hz, edge)
        self._turned = tach.RevolutionFollower(self._pulse.pulses_per_rev, self._pulse.reference)
        self._pieces: list[Samples] = []  # vibration not yet worked out; the first begins at self._first
        self._first = 0
        self._worked_out = -math.inf  # frame of the pulse that the next block begins with
        self._numbered_at = 0  # frame

    @property
    def shaft(self) -> tach.Revolutions:
        """The revolutions of the longest stretch without a gap so far. Raises TachError before any were numbered."""
        begun, turned = max(self._stretches(), key=lambda s: s[1].frames.size)
        return replace(turned, frames=turned.frames + begun, knot_frames=turned.knot_frames + begun)

    def _stretches(self) -> list[tuple[int, tach.Revolutions]]:
        """First frame and revolutions of each stretch that has some."""
        try:
            return [*self._ended, (self._begun, self._turned.whole())]
        except edges.TachError:
            if not self._ended:
                raise
            return self._ended

    @property
    def frames(self) -> int:
        """Frames taken so far."""
        return self._inputs.frames

    def feed(self, samples: NDArray[np.generic], lost_before: int | None = None) -> None:
        """Take the next samples; `lost_before` are missing before them, −1: nobody knows how many, None: none are.

        Nothing is measured across a gap: angle and revolutions begin anew behind it. Raises ChannelError for a value
        that is not finite.
        """
        if lost_before is not None and self.frames:
            self._end_stretch(max(0, lost_before))
        vibration, pulse = self._inputs.take(samples)
        self._pieces.append(vibration)
        self._levels.feed(vibration)
        self._follower.feed(pulse)
        self._work_out(last=False)

    def _end_stretch(self, lost: int) -> None:
        with contextlib.suppress(edges.TachError):  # too few pulses for a revolution: nothing is lost with them
            self._follower.finish()
            self._work_out(last=True)
            self._ended.append((self._begun, self._turned.whole()))
        self._levels.interrupt()
        self.gaps += 1
        self._lost_s += lost / self.rate_hz
        self._begin_stretch(self._follower.edge)

    def _work_out(self, *, last: bool) -> None:
        """Turn the revolutions that are complete into blocks."""
        self._turned.feed(*self._follower.take())
        frames = self.frames - self._begun
        if not self._turned.edges or (not last and frames < self._numbered_at + _SOLVE_S * self.rate_hz):
            self._forget(frames - int(_LONGEST_WAIT_S * self.rate_hz))
            return
        self._numbered_at = frames
        try:
            turned = self._turned.newest()
            tach.refuse_alike_marks(turned, self._pulse.pulses_per_rev, self._pulse.reference, self.rate_hz)
        except edges.TachError:
            if last:
                raise
            return
        usable = turned.frames.size - 1 - (0 if last else _NEEDED_AFTER)
        per_block = self._revolutions_per_block(turned, last)
        begin = int(np.searchsorted(turned.frames, self._worked_out - 0.5))
        spans: list[tuple[int, int]] = []
        while begin + 1 <= usable:
            end = int(np.searchsorted(turned.numbers, turned.numbers[begin] + per_block))
            if end > usable:
                if not last or self._blocks or spans:
                    break  # a last short block would weigh little and scatter much
                end = usable
            spans.append((begin, end))
            begin = end
        if spans:
            angle = tach.angle_between(turned, spans[0][0], spans[-1][1])
            for span in spans:
                self._add_block(turned, *span, angle)
            self._worked_out = float(turned.frames[begin])
        if begin < turned.frames.size:
            self._forget(math.floor(turned.frames[begin]))
            self._turned.drop_before(float(turned.frames[begin]))

    def _revolutions_per_block(self, turned: tach.Revolutions, last: bool) -> int:
        """Four revolutions, more at high speed; fewer in a record too short for two such blocks."""
        period_s = float(np.median(np.diff(turned.frames))) / self.rate_hz
        usual = max(orders.REVOLUTIONS_PER_BLOCK, math.ceil(_SHORTEST_BLOCK_S / period_s))
        if last and not self._blocks:
            whole = int(turned.numbers[-1] - turned.numbers[0])
            return max(1, min(usual, whole // 4))
        return usual

    def _add_block(self, turned: tach.Revolutions, begin: int, end: int, angle: Callable[[Real], Real]) -> None:
        first = math.ceil(turned.frames[begin])
        beyond = math.ceil(turned.frames[end])
        samples = self._samples(first, beyond)
        span = turned.frames[end] - turned.frames[begin]
        mean_speed = 2.0 * np.pi * float(turned.numbers[end] - turned.numbers[begin]) / span * self.rate_hz
        highest = max(1, min(HARMONICS, int(0.45 * self.rate_hz / (mean_speed / (2.0 * np.pi)))))
        if self._order * mean_speed / (2.0 * np.pi) > 0.45 * self.rate_hz:
            raise MeasureError(
                f"order {self._order:g} at {mean_speed * 30 / np.pi:.0f} r/min is "
                f"{self._order * mean_speed / 2 / np.pi:.0f} Hz: more than 0.45 of the sample rate "
                f"{self.rate_hz:.0f} Hz; choose a lower order or record faster"
            )
        self._blocks.append(
            orders.compressed_equations(
                samples,
                lambda at: angle(at + first),
                orders.columns_of(self._order, highest),
                int(turned.numbers[end] - turned.numbers[begin]),
                (self._begun + 0.5 * (first + beyond)) / self.rate_hz + self._lost_s,
                mean_speed,
                self.rate_hz,
            )
        )

    def _samples(self, first: int, beyond: int) -> Samples:
        parts, at = [], self._first
        for piece in self._pieces:
            if at + piece.shape[0] > first and at < beyond:
                parts.append(piece[max(0, first - at) : beyond - at])
            at += piece.shape[0]
        return parts[0] if len(parts) == 1 else np.concatenate(parts)

    def _forget(self, frame: int) -> None:
        """Drop samples before a frame."""
        while self._pieces and self._first + self._pieces[0].shape[0] <= frame:
            self._first += self._pieces.pop(0).shape[0]

    def result(self, *, last: bool = True) -> Measurement:
        """The measurement so far; `last` says that no more samples will come.

        Raises MeasureError, ChannelError and TachError with one line that says why there is none.
        """
        self._inputs.check()
        if last:
            self._follower.finish()
            try:
                self._work_out(last=True)
            except edges.TachError:
                if len(self._blocks) < 2:
                    raise
        if len(self._blocks) < 2:
            raise self._follower.problem or edges.TachError(
                f"{self._turned.edges} pulses in {self.frames / self.rate_hz:.1f} s: need 3 or more; "
                "check the pulse sensor or record longer"
            )
        return self._at(0)

    def all_orders(self) -> tuple[Measurement, ...]:
        """After `result`: a measurement at each of the orders that were fitted together, lowest first."""
        self.result()
        highest = self._blocks[0].gram.shape[0] // 2
        fitted = orders.columns_of(self._order, HARMONICS)[:highest]
        return tuple(self._at(i) for i in np.argsort(fitted))

    def _at(self, column: int) -> Measurement:
        blocks = [b for b in self._blocks if b.gram.shape == self._blocks[0].gram.shape]
        order = orders.columns_of(self._order, HARMONICS)[column]
        return self._measurement(orders.pooled(blocks, column, self._weights), order)

    def _speed(self) -> Speed:
        """Speed over all stretches."""
        stretches = [turned for _, turned in self._stretches()]
        # the pulses' own scatter is no change of speed: at high speed over several revolutions
        period_s = float(np.median(np.concatenate([np.diff(t.frames) for t in stretches]))) / self.rate_hz
        rpm = []
        for t in stretches:
            apart = min(math.ceil(_SHORTEST_BLOCK_S / period_s), t.frames.size - 1)
            rpm.append(
                60.0 * self.rate_hz * (t.numbers[apart:] - t.numbers[:-apart]) / (t.frames[apart:] - t.frames[:-apart])
            )
        turns = sum(int(np.ptp(t.numbers)) for t in stretches)
        scatter = [t.scatter_frames for t in stretches if t.scatter_frames is not None]
        return Speed(
            60.0 * self.rate_hz * turns / sum(float(np.ptp(t.frames)) for t in stretches),
            min(float(r.min()) for r in rpm),
            max(float(r.max()) for r in rpm),
            sum(t.frames.size for t in stretches),
            sum(t.missing for t in stretches),
            sum(t.extra for t in stretches),
            1e6 * float(np.median(scatter)) / self.rate_hz if scatter else None,
        )

    def _measurement(self, pooled: orders.OrderVectors, order: float) -> Measurement:
        speed = self._speed()
        frequency_hz = float(np.mean(pooled.speeds_rad_s)) / (2.0 * np.pi) * order
        factors = np.array([vectors.display_factor(point, self._unit, frequency_hz) for point in self._points])
        covariance = vectors.rotated_covariance(pooled.covariance, factors)
        band_hz = spectrum.overall_band(speed.mean_rpm)
        points = []
        for i, point in enumerate(self._points):
            z = complex(pooled.mean[i] * factors[i])
            part = covariance[2 * i : 2 * i + 2, 2 * i : 2 * i + 2]
            amplitude_ci: float | None
            amplitude_ci, phase_ci = vectors.half_widths(z, part, pooled.degrees_of_freedom)
            level = self._levels.rms(i, point.quantity, self._unit.quantity, band_hz, point.highpass_hz)
            blocks = np.asarray(pooled.blocks[:, i] * factors[i])
            judged = steadiness.judge(blocks, pooled.times_s, pooled.speeds_rad_s, pooled.revolutions, order)
            if judged.cause == "wander":
                amplitude_ci = phase_ci = None
                # as little known as one block's vector: the next run may find it anywhere there
                covariance[2 * i : 2 * i + 2] *= math.sqrt(blocks.size)
                covariance[:, 2 * i : 2 * i + 2] *= math.sqrt(blocks.size)
            points.append(
                PointVector(
                    point.name,
                    z,
                    amplitude_ci,
                    phase_ci,
                    pooled.revolutions,
                    None if level is None else level * abs(point.si_per_reading) * self._unit.per_si_rms,
                    judged,
                    blocks,
                )
            )
        reasons = [f"{p.name}: {reason}" for p in points for reason in p.steadiness.reasons]
        if self.gaps:
            places = "one place" if self.gaps == 1 else f"{self.gaps} places"
            reasons.append(f"samples were lost at {places}: nothing was measured across it; record again")
        return Measurement(
            speed,
            order,
            self._unit.text,
            tuple(points),
            covariance,
            pooled.degrees_of_freedom,
            pooled.times_s,
            pooled.speeds_rad_s * (30.0 / math.pi),
            self.frames / self.rate_hz + self._lost_s,
            self.rate_hz,
            self._follower.edge,
            self._follower.mark_share,
            tuple(reasons),
        )


def steadiness_json(measurement: Measurement) -> dict[str, Any]:
    """The keys of the contract's `steadiness` object that the measurement knows."""
    points = [{"name": p.name, **steadiness.to_json(p.steadiness)} for p in measurement.points]
    return {"speed": asdict(measurement.speed), "points": points}


def to_json(measurement: Measurement) -> dict[str, object]:
    """The keys of the contract's `vector` object that the measurement knows."""
    points = []
    for point in measurement.points:
        amplitude, phase_deg = vectors.amplitude_phase(point.z)
        points.append(
            {
                "name": point.name,
                "unit": measurement.unit,
                "amplitude": amplitude,
                "phase_deg": phase_deg,
                "amplitude_ci95": point.amplitude_ci95,
                "phase_ci95_deg": point.phase_ci95_deg,
                "revolutions": point.revolutions,
                "overall": point.overall,
                "steadiness": steadiness.to_json(point.steadiness),
            }
        )
    names = [f"{p.name} {part}" for p in measurement.points for part in ("re", "im")]
    return {
        "speed": asdict(measurement.speed),
        "order": measurement.order,
        "points": points,
        "covariance": {
            "order": names,
            "matrix": measurement.covariance.tolist(),
            "degrees_of_freedom": measurement.degrees_of_freedom,
        },
    }
