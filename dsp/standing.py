"""What is measured while the machine stands: that it does stand, and how much its neighbours shake it.

The level that others make at the frequency of running speed is that part of a once-per-rev vector that no mass changes.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import edges, spectrum, units
from stillshaft.dsp.channels import PointChannel, PulseChannel
from stillshaft.dsp.units import InputError

Real = NDArray[np.float64]

_BAND_SHARE, _BAND_LINES = 0.03, 3.0  # half width of the band about running speed: of it, and of the lines' distance
_FEWEST_PULSES = 3  # a lamp switched on gives one or two
_FEWEST_AVERAGES = 4
_LEAST_LINES_BELOW = 8.0  # lines between standstill and running speed, so that an offset does not reach the band


class StandingError(InputError):
    """A record of a standing machine that cannot be used: the message says why and what to do."""


@dataclass(frozen=True)
class BandLevel:
    """Level of one point in `band_hz`, as the order vector that would have as much, in the displayed unit."""

    name: str
    unit: str
    level: float
    ci95: float
    band_hz: tuple[float, float]


class Turning:
    """Looks in a pulse input for a turning shaft; the samples (frames, inputs) come in pieces."""

    def __init__(self, pulse: PulseChannel, rate_hz: float) -> None:
        self._index, self._rate_hz = pulse.index, rate_hz
        self._follower = edges.EdgeFollower(rate_hz, pulse.edge)

    def feed(self, samples: NDArray[np.floating]) -> None:
        """Take the next samples."""
        self._follower.feed(np.asarray(samples, dtype=np.float64)[:, self._index])

    def refuse(self) -> None:
        """Raise StandingError where the shaft turned; nothing may be fed after it."""
        self._follower.finish()
        at, _ = self._follower.take()
        if at.size >= _FEWEST_PULSES:
            rpm = 60.0 * self._rate_hz / float(np.median(np.diff(at)))
            raise StandingError(
                f"{at.size} pulses, as of {rpm:.0f} r/min: the machine turned; stop it, isolate it, wait until it stands, and "
                "record again"
            )


class Background:
    """Level of each point in a band about `speed_rpm` while the machine itself stands, from samples piece by piece.

    Samples (frames, inputs) are in units of digital full scale; a pulse input shows whether the machine stood. The band is
    ± 3 %, or three lines where that is more.
    """

    def __init__(
        self,
        rate_hz: float,
        points: Sequence[PointChannel],
        display: str,
        speed_rpm: float,
        pulse: PulseChannel | None = None,
    ) -> None:
        """Raises StandingError for a speed that cannot be."""
        if not 0.0 < speed_rpm < math.inf:
            raise StandingError(f"speed {speed_rpm:g} r/min: must be above 0; give the running speed of the machine")
        running_hz = speed_rpm / 60.0
        if running_hz * (1.0 + _BAND_SHARE) > 0.4 * rate_hz:
            raise StandingError(
                f"speed {speed_rpm:g} r/min is more than 0.4 of the sample rate {rate_hz:g} Hz: record faster"
            )
        self._rate_hz, self._points, self._running_hz = rate_hz, points, running_hz
        self._unit = units.vibration_unit(display)
        self._turning = None if pulse is None else Turning(pulse, rate_hz)
        self._resolution_hz = min(spectrum.RESOLUTION_HZ, running_hz / _LEAST_LINES_BELOW)
        highest_hz = running_hz * (1.0 + _BAND_SHARE) + (_BAND_LINES + 1.0) * self._resolution_hz
        self._averaged = spectrum.AveragedSpectrum(rate_hz, len(points), highest_hz, self._resolution_hz)
        self._frames = 0

    def feed(self, samples: NDArray[np.floating]) -> None:
        """Take the next samples (frames, inputs)."""
        if self._turning is not None:
            self._turning.feed(samples)
        self._averaged.feed(np.asarray(samples, dtype=np.float64)[:, [p.index for p in self._points]])
        self._frames += len(samples)

    def result(self) -> tuple[BandLevel, ...]:
        """The levels. Raises StandingError for too short a record, and for a machine that turned."""
        if self._turning is not None:
            self._turning.refuse()
        averaged, unit = self._averaged, self._unit
        wanted_s = (0.5 * _FEWEST_AVERAGES + 1.0) / self._resolution_hz
        if averaged.averages < _FEWEST_AVERAGES:
            raise StandingError(
                f"{self._frames / self._rate_hz:.1f} s with the machine stopped: need {wanted_s:.0f} s or more; record longer"
            )
        line_hz = float(averaged.frequency_hz[1])
        half_hz = max(_BAND_SHARE * self._running_hz, _BAND_LINES * line_hz)
        band_hz = (self._running_hz - half_hz, self._running_hz + half_hz)
        inside = (averaged.frequency_hz >= band_hz[0]) & (averaged.frequency_hz <= band_hz[1])
        found = []
        for i, point in enumerate(self._points):
            power, deviation = averaged.power(i, point.quantity, unit.quantity, point.highpass_hz)
            square, spread = float(power[inside].sum()), float(deviation[inside].sum())  # lines of a tone move together
            factor = abs(point.si_per_reading) * unit.per_si_rms
            level = math.sqrt(square)
            half = 1.96 * spread / (2.0 * level) if level > 0.0 else 0.0
            found.append(BandLevel(point.name, unit.text, level * factor, half * factor, band_hz))
        return tuple(found)
