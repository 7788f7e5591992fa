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

Real = NDArray[np.float64]

_BAND_SHARE, _BAND_LINES = 0.03, 3.0  # half width of the band about running speed: of it, and of the lines' distance
_FEWEST_PULSES = 3  # a lamp switched on gives one or two
_FEWEST_AVERAGES = 4
_LEAST_LINES_BELOW = 8.0  # lines between standstill and running speed, so that an offset does not reach the band


class StandingError(ValueError):
    """A record of a standing machine that cannot be used: the message says why and what to do."""


@dataclass(frozen=True)
class BandLevel:
    """Level of one point in `band_hz`, as the order vector that would have as much, in the displayed unit."""

    name: str
    unit: str
    level: float
    ci95: float
    band_hz: tuple[float, float]


def refuse_turning(pulse: Real, rate_hz: float, edge: str) -> None:
    """Raise StandingError for a pulse channel (frames,) that shows a turning shaft."""
    follower = edges.EdgeFollower(rate_hz, edge)
    follower.feed(np.asarray(pulse, dtype=np.float64))
    follower.finish()
    at, _ = follower.take()
    if at.size >= _FEWEST_PULSES:
        rpm = 60.0 * rate_hz / float(np.median(np.diff(at)))
        raise StandingError(
            f"{at.size} pulses, as of {rpm:.0f} r/min: the machine turned; stop it, isolate it, wait until it stands, and "
            "record again"
        )


def background(
    samples: Real,
    rate_hz: float,
    points: Sequence[PointChannel],
    display: str,
    speed_rpm: float,
    pulse: PulseChannel | None = None,
) -> tuple[BandLevel, ...]:
    """Level of each point in a band about `speed_rpm` while the machine itself stands.

    `samples` (frames, inputs) in units of digital full scale. The band is ± 3 %, or three lines where that is more.
    Raises StandingError for a speed that cannot be, too short a record, and a machine that turned.
    """
    if not 0.0 < speed_rpm < math.inf:
        raise StandingError(f"speed {speed_rpm:g} r/min: must be above 0; give the running speed of the machine")
    running_hz = speed_rpm / 60.0
    if running_hz * (1.0 + _BAND_SHARE) > 0.4 * rate_hz:
        raise StandingError(
            f"speed {speed_rpm:g} r/min is more than 0.4 of the sample rate {rate_hz:g} Hz: record faster"
        )
    if pulse is not None:
        refuse_turning(np.asarray(samples)[:, pulse.index], rate_hz, pulse.edge)
    resolution_hz = min(spectrum.RESOLUTION_HZ, running_hz / _LEAST_LINES_BELOW)
    highest_hz = running_hz * (1.0 + _BAND_SHARE) + (_BAND_LINES + 1.0) * resolution_hz
    averaged = spectrum.AveragedSpectrum(rate_hz, len(points), highest_hz, resolution_hz)
    averaged.feed(np.asarray(samples, dtype=np.float64)[:, [p.index for p in points]])
    wanted_s = (0.5 * _FEWEST_AVERAGES + 1.0) / resolution_hz
    if averaged.averages < _FEWEST_AVERAGES:
        raise StandingError(
            f"{np.shape(samples)[0] / rate_hz:.1f} s with the machine stopped: need {wanted_s:.0f} s or more; record longer"
        )
    unit = units.vibration_unit(display)
    line_hz = float(averaged.frequency_hz[1])
    half_hz = max(_BAND_SHARE * running_hz, _BAND_LINES * line_hz)
    band_hz = (running_hz - half_hz, running_hz + half_hz)
    inside = (averaged.frequency_hz >= band_hz[0]) & (averaged.frequency_hz <= band_hz[1])
    found = []
    for i, point in enumerate(points):
        power, deviation = averaged.power(i, point.quantity, unit.quantity, point.highpass_hz)
        square, spread = float(power[inside].sum()), float(deviation[inside].sum())  # lines of a tone move together
        factor = abs(point.si_per_reading) * unit.per_si_rms
        level = math.sqrt(square)
        half = 1.96 * spread / (2.0 * level) if level > 0.0 else 0.0
        found.append(BandLevel(point.name, unit.text, level * factor, half * factor, band_hz))
    return tuple(found)
