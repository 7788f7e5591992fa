"""A running source looked at closely: levels, pulse, waveform and spectrum beside the vectors of `ui.live`.

Everything is worked out on the measuring thread and replaced as a whole, so the screen only ever takes the newest. The
vectors come from `dsp.measure` as in every recording; what is made here is for the eye.
"""

from __future__ import annotations

import math
import threading
import time
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.acquire.hookup import Hookup, with_skew
from stillshaft.dsp import edges, spectrum, tach, units, vectors
from stillshaft.dsp.measure import Measuring
from stillshaft.ui import settling
from stillshaft.ui.desktop.figures import Level, PulseSeen, Spectrum, Waveform, WaveformPoint
from stillshaft.ui.live import Live
from stillshaft.ui.settling import Watched

if TYPE_CHECKING:
    from stillshaft.acquire.process import Acquisition
    from stillshaft.acquire.source import SourceRequest

Real = NDArray[np.float64]
Samples = NDArray[np.float32]

KEPT_S = 12.0  # of samples, for the signal check
_LEVEL_S, _PULSE_S, _SHAPE_S = 0.045, 0.2, 0.4  # between two looks
_HELD_S, _CLIPPED_S = 2.0, 3.0
_FULL_SCALE = 0.999
_TURNS_SEEN, _LONGEST_SEEN_S, _UNKNOWN_SEEN_S = 2, 2.0, 0.25  # of the pulse
_ASIDE = 0.4  # of a turn, before the first edge and after the last
_REVOLUTIONS, _LONGEST_AVERAGED_S = 32, 4.0
_ANGLES, _FEWEST_ORDERS = 256, 10
_HIGHEST_HZ, _RESOLUTION_HZ = 1000.0, 1.0
_LINE_TO_SINE = math.sqrt(3.0)  # amplitude of a sine in a Hann line, over the root of the mean square there


@dataclass(frozen=True)
class Glance:
    """What there is to see: `arrived_s` is when its newest sample came, by `time.monotonic`."""

    number: int
    arrived_s: float
    seconds: float
    levels: tuple[Level, ...]
    pulse: PulseSeen | None
    waveform: Waveform | None
    spectrum: Spectrum | None


class Recent:
    """The last seconds of samples, written by one thread and copied by another."""

    def __init__(self, rate_hz: float, channels: int) -> None:
        self.rate_hz, self.channels = rate_hz, channels
        self._data = np.zeros((round(KEPT_S * rate_hz), channels), dtype=np.float32)
        self._written = 0
        self._lock = threading.Lock()

    def put(self, samples: Samples) -> None:
        """Append frames."""
        size = len(self._data)
        samples = samples[-size:]
        with self._lock:
            at = self._written % size
            first = min(len(samples), size - at)
            self._data[at : at + first] = samples[:first]
            self._data[: len(samples) - first] = samples[first:]
            self._written += len(samples)

    def clear(self) -> None:
        """Begin anew: what comes next does not follow."""
        with self._lock:
            self._written = 0

    def last(self, frames: int) -> Samples:
        """The last so many frames, fewer where there are not as many, as a copy."""
        with self._lock:
            size = len(self._data)
            count = min(frames, self._written, size)
            at = self._written % size
            if count <= at:
                return self._data[at - count : at].copy()
            return np.concatenate([self._data[at - count :], self._data[:at]])


class _Looked(Measuring):
    """Measures as ever, and hands the samples on to be looked at."""

    watch: Watch

    def feed(self, samples: NDArray[np.generic], lost_before: int | None = None) -> None:
        arrived_s = time.monotonic()
        super().feed(samples, lost_before)
        self.watch.took(self, np.asarray(samples, dtype=np.float32), lost_before, arrived_s)


class Watch(Live):
    """Runs a source until closed; `glance` holds what there is to see, None before the first samples."""

    def __init__(self, request: SourceRequest, hookup: Hookup) -> None:
        self.glance: Glance | None = None
        self.recent: Recent | None = None
        self.description = ""
        self.settled: Watched | None = None  # how 1x settles, where that is watched
        self._settling: settling.Watch | None = None
        self._watch_settling = False
        self._looks = 0
        super().__init__(request, hookup)

    @property
    def ended(self) -> bool:
        """True when nothing runs any more."""
        return not self._thread.is_alive()

    def stop_soon(self) -> None:
        """Stop without waiting: `ended` tells when it is done."""
        self._stop.set()

    def watch_settling(self, *, on: bool = True) -> None:
        """Watch from now on how 1x settles, whatever is recorded meanwhile, or no longer."""
        self._watch_settling = on

    def _measure(self, acquisition: Acquisition) -> None:
        super()._measure(acquisition)
        # samples may have come faster than they were looked at: what stays on the screen is the end
        if self.recent is not None and self._looked.frames:
            self._due.clear()
            self._look(self._looked, time.monotonic())

    def _fresh(self, acquisition: Acquisition) -> Measuring:
        hookup = with_skew(self._hookup, acquisition.skew_s)
        self._looked = looked = _Looked(acquisition.rate_hz, hookup.pulse, hookup.points, hookup.display)
        looked.watch = self
        self.description = acquisition.description
        if self.recent is None:
            self.recent = Recent(acquisition.rate_hz, acquisition.channels)
        self.recent.clear()
        self._names = hookup.channel_names(acquisition.channels)
        self._averaged = spectrum.AveragedSpectrum(
            acquisition.rate_hz,
            len(hookup.points),
            min(_HIGHEST_HZ, 0.4 * acquisition.rate_hz),
            _RESOLUTION_HZ,
        )
        self._wired = hookup
        self._unit = units.vibration_unit(hookup.display)
        self._held = np.zeros(acquisition.channels)
        self._held_at = np.zeros(acquisition.channels)
        self._clipped: list[tuple[float, NDArray[np.int64]]] = []
        self._due: dict[str, float] = {}
        self._pulse: PulseSeen | None = None
        self._waveform: Waveform | None = None
        self._spectrum: Spectrum | None = None
        return looked

    def took(self, measuring: Measuring, samples: Samples, lost_before: int | None, now: float) -> None:
        """Look at the next samples, which came at `now` by `time.monotonic`."""
        assert self.recent is not None
        if lost_before is not None:
            self.recent.clear()
            self._averaged.interrupt()
        self.recent.put(samples)
        self._averaged.feed(samples[:, [p.index for p in self._wired.points]])
        self._note_peaks(samples, now)
        self._follow_settling(measuring.rate_hz, samples, lost_before)
        self._look(measuring, now)

    def _follow_settling(self, rate_hz: float, samples: Samples, lost_before: int | None) -> None:
        if not self._watch_settling:
            self._settling = self.settled = None
            return
        if self._settling is None:
            self._settling = settling.Watch(rate_hz, self._wired)
        if self._settling.feed(samples, lost_before):
            self.settled = self._settling.watched()

    def _look(self, measuring: Measuring, now: float) -> None:
        if self._is_due("pulse", now, _PULSE_S):
            self._pulse = self._look_at_pulse(measuring)
        if self._is_due("shape", now, _SHAPE_S):
            self._waveform = self._look_at_waveform(measuring)
            self._spectrum = self._look_at_spectrum(measuring)
        if self._is_due("levels", now, _LEVEL_S):
            self._looks += 1
            seconds = measuring.frames / measuring.rate_hz
            self.glance = Glance(
                self._looks, now, seconds, self._levels(now), self._pulse, self._waveform, self._spectrum
            )

    def _is_due(self, what: str, now: float, every_s: float) -> bool:
        if now < self._due.get(what, 0.0):
            return False
        self._due[what] = now + every_s
        return True

    # levels

    def _note_peaks(self, samples: Samples, now: float) -> None:
        size = np.abs(samples)
        self._peak = size.max(axis=0, initial=0.0)
        self._rms = np.sqrt(np.mean(np.square(samples, dtype=np.float64), axis=0)) if len(samples) else self._peak
        renewed = (self._peak >= self._held) | (now - self._held_at > _HELD_S)
        self._held = np.where(renewed, self._peak, self._held)
        self._held_at = np.where(renewed, now, self._held_at)
        clipped = np.count_nonzero(size >= _FULL_SCALE, axis=0)
        if clipped.any():
            self._clipped.append((now, clipped))
        self._clipped = [c for c in self._clipped if now - c[0] < _CLIPPED_S]

    def _levels(self, now: float) -> tuple[Level, ...]:
        clipped = sum((c for _, c in self._clipped), np.zeros(len(self._names), dtype=np.int64))
        return tuple(
            Level(name, float(self._peak[i]), float(self._rms[i]), float(self._held[i]), int(clipped[i]))
            for i, name in enumerate(self._names)
        )

    # pulse

    def _look_at_pulse(self, measuring: Measuring) -> PulseSeen | None:
        """The latest turns whose edges are known, with what the revolutions say of them."""
        assert self.recent is not None
        rate, index = measuring.rate_hz, self._wired.pulse.index
        speed = self._revolution_s(measuring)
        if speed is None:
            x = self.recent.last(round(_UNKNOWN_SEEN_S * rate))[:, index].astype(np.float64)
            trouble = "no pulses are seen yet: check sensor, mark and threshold"
            return None if x.size < 4 else _unknown_pulse(x, rate, trouble)
        period_s, turned = speed
        turns = min(_TURNS_SEEN, max(1, int(_LONGEST_SEEN_S / period_s)))
        aside = _ASIDE * period_s * rate
        begin = int(max(0.0, turned.frames[-1] - turns * period_s * rate - aside))
        end = min(measuring.frames, int(turned.frames[-1] + aside))
        samples = self.recent.last(measuring.frames - begin)
        x = samples[: max(0, len(samples) - (measuring.frames - end)), index].astype(np.float64)
        begin = end - x.size  # what is kept may begin later
        if x.size < 4:
            return None
        low, high, share = _levels(x)
        wanted = self._wired.pulse.edge
        rising = share < 0.5 if wanted == "auto" else wanted == "rising"
        knots = turned.knot_frames[(turned.knot_frames >= begin) & (turned.knot_frames < end)]
        scatter = turned.scatter_frames
        return PulseSeen(
            times_ms=np.arange(x.size, dtype=np.float64) * (1000.0 / rate),
            values=x,
            threshold=0.5 * (low + high),
            edges_ms=(knots - begin) * (1000.0 / rate),
            rising=rising,
            mark_deg=_mark_width(x > 0.5 * (low + high), rising=rising) * 360.0 / (period_s * rate) or None,
            jitter_deg=None if scatter is None else 360.0 * scatter / rate / period_s,
            rpm=60.0 / period_s,
            missing=turned.missing,
            extra=turned.extra,
            trouble=None,
        )

    def _revolution_s(self, measuring: Measuring) -> tuple[float, tach.Revolutions] | None:
        """Length of a revolution now, and the revolutions so far."""
        try:
            turned = measuring.shaft
        except edges.TachError:
            return None
        if turned.frames.size < 3:
            return None
        last = slice(-min(turned.frames.size, 17), None)
        frames, numbers = turned.frames[last], turned.numbers[last]
        return float((frames[-1] - frames[0]) / (numbers[-1] - numbers[0])) / measuring.rate_hz, turned

    # waveform and spectrum

    def _look_at_waveform(self, measuring: Measuring) -> Waveform | None:
        """The latest revolutions, each turned into the displayed quantity by its own orders, and their scatter."""
        assert self.recent is not None
        speed = self._revolution_s(measuring)
        if speed is None:
            return self._waveform
        period_s, turned = speed
        rate = measuring.rate_hz
        # pulses are numbered seconds after they came: what is averaged ends with the last that is
        wanted_s = min(_LONGEST_AVERAGED_S, (_REVOLUTIONS + 2) * period_s)
        samples = self.recent.last(measuring.frames - max(0, math.floor(turned.frames[-1] - wanted_s * rate)))
        begun = measuring.frames - len(samples)
        here = turned.between(begun, measuring.frames)
        count = min(_REVOLUTIONS, here.numbers.size - 1)
        if count < 2 or here.knot_frames.size < 4 or int(np.ptp(here.numbers)) != here.numbers.size - 1:
            return self._waveform  # too slow, or a revolution is missing: the one before stays
        points = min(_ANGLES, 2 ** int(math.log2(max(8.0, period_s * rate))))
        first = int(here.numbers[-1]) - count
        turns = first + np.arange(count * points) / points
        at = tach.frames_at(here, turns) - begun
        frames = np.arange(len(samples))
        kept = min(points // 2 - 1, max(_FEWEST_ORDERS, int(_HIGHEST_HZ * period_s)))
        frequency = np.arange(1, kept + 1) / period_s
        text, per_si = units.instantaneous(self._unit)
        shown = []
        for point in self._wired.points:
            values = np.interp(at, frames, samples[:, point.index]).reshape(count, points)
            orders = np.fft.rfft(values, axis=1)
            orders[:, 0] = 0.0
            orders[:, kept + 1 :] = 0.0
            # vectors are conjugate to coefficients of e^{+jωt}
            factors = [vectors.display_factor(point, self._unit, f).conjugate() for f in frequency.tolist()]
            orders[:, 1 : kept + 1] *= np.array(factors) * (per_si / self._unit.per_si_peak)
            whole = np.fft.irfft(orders, points, axis=1)
            mean, deviation = whole.mean(axis=0), whole.std(axis=0, ddof=1)
            shown.append(WaveformPoint(point.name, np.append(mean, mean[0]), np.append(deviation, deviation[0])))
        return Waveform(np.linspace(0.0, 360.0, points + 1), tuple(shown), text, count)

    def _look_at_spectrum(self, measuring: Measuring) -> Spectrum | None:
        if not self._averaged.averages:
            return None
        speed = self._revolution_s(measuring)
        running_hz = None if speed is None else 1.0 / speed[0]
        # below, an integral is noise: as `dsp.content` has it
        lowest_hz = 2.0 if running_hz is None else min(spectrum.overall_band(60.0 * running_hz)[0], 0.25 * running_hz)
        shown = self._averaged.frequency_hz >= lowest_hz
        amplitudes: list[Real] = []
        for i, point in enumerate(self._wired.points):
            power, _ = self._averaged.power(i, point.quantity, self._unit.quantity, point.highpass_hz)
            scale: Any = abs(point.si_per_reading) * _LINE_TO_SINE * self._unit.per_si_peak
            amplitudes.append(np.asarray(scale * np.sqrt(power[shown])))
        return Spectrum(
            self._averaged.frequency_hz[shown],
            tuple(p.name for p in self._wired.points),
            tuple(amplitudes),
            self._unit.text,
            running_hz,
            self._averaged.averages,
        )


def _levels(x: Real) -> tuple[float, float, float]:
    """Low and high level of a pulse signal, and the part of the samples that is high."""
    middle = 0.5 * (float(x.min()) + float(x.max()))
    low = high = middle
    for _ in range(2):
        above = x > middle
        if above.any() and not above.all():
            low, high = float(np.median(x[~above])), float(np.median(x[above]))
            middle = 0.5 * (low + high)
    return low, high, float(np.mean(x > middle))


def _mark_width(high: NDArray[np.bool_], *, rising: bool) -> float:
    """Samples that a mark lasts, the median over those that are seen whole; 0 where none is."""
    on = high if rising else ~high
    lengths = np.diff(np.flatnonzero(np.diff(on)))[int(on[0]) :: 2]
    return float(np.median(lengths)) if lengths.size else 0.0


def _unknown_pulse(x: Real, rate_hz: float, trouble: str) -> PulseSeen:
    """A pulse signal without pulses."""
    times = np.arange(x.size, dtype=np.float64) * (1000.0 / rate_hz)
    return PulseSeen(times, x, None, np.empty(0), None, None, None, None, 0, 0, trouble)
