"""Waveforms between acceleration, velocity and displacement, against their own closed forms and the order vectors."""

from dataclasses import dataclass

import numpy as np
import pytest
from scipy.signal import lfilter
from stillshaft.dsp import quantity, vectors

RATE_HZ = 8192.0
TIME_S = np.arange(int(20 * RATE_HZ)) / RATE_HZ


@dataclass(frozen=True)
class Channel:
    quantity: str
    si_per_reading: float = 1.0
    delay_s: float = 0.0
    highpass_hz: tuple[float, ...] = ()


def tones(derivatives, delay_s=0.0):
    """Sum of tones in the band, differentiated so many times: cos goes on by 90° and ω each time."""
    t = TIME_S - delay_s
    return sum(
        (2 * np.pi * f) ** (derivatives - 1) * np.cos(2 * np.pi * f * t + phase + 0.5 * np.pi * derivatives)
        for f, phase in ((12.3, 0.3), (25.0, 1.0), (407.7, 2.0))
    )


def converted(x, channel, to, band_hz=(10.0, 1000.0), pieces=7001):
    converter = quantity.BandConverter(RATE_HZ, [channel], to, band_hz)
    parts = [converter.feed(x[i : i + pieces, None]) for i in range(0, x.size, pieces)]
    whole = np.concatenate([*parts, converter.feed(np.empty((0, 1)), last=True)])[:, 0]
    assert whole.size == x.size - 2 * converter.settled
    return whole, slice(converter.settled, x.size - converter.settled)


@pytest.mark.parametrize("source", ["displacement", "velocity", "acceleration"])
@pytest.mark.parametrize("target", ["displacement", "velocity", "acceleration"])
def test_every_quantity_becomes_every_other(source, target):
    names = ("displacement", "velocity", "acceleration")
    found, inside = converted(tones(names.index(source)), Channel(source), target)
    wanted = tones(names.index(target))[inside]
    assert np.abs(found - wanted).max() < 2e-3 * np.abs(wanted).max()
    assert np.sqrt(np.mean((found - wanted) ** 2)) < 2e-4 * np.abs(wanted).max()


def test_an_offset_and_what_is_below_the_band_do_not_become_drift():
    slow = 5.0 + 3.0 * np.cos(2 * np.pi * 0.5 * TIME_S)
    found, inside = converted(tones(2) + slow, Channel("acceleration"), "displacement")
    wanted = tones(0)[inside]
    assert np.abs(found - wanted).max() < 5e-3 * np.abs(wanted).max()


def test_coupling_and_delay_are_undone():
    corner_hz, delay_s = 2.0, 300e-6
    pole = np.exp(-2 * np.pi * corner_hz / RATE_HZ)
    x = lfilter([0.5 * (1 + pole), -0.5 * (1 + pole)], [1.0, -pole], tones(1, delay_s))
    channel = Channel("velocity", 1.0, delay_s, (corner_hz,))
    found, inside = converted(x, channel, "velocity")
    wanted = tones(1)[inside]
    assert np.abs(found - wanted).max() < 2e-3 * np.abs(wanted).max()


def test_the_gain_is_the_one_of_the_order_vectors():
    channel = Channel("acceleration", -2.0, 1e-4, (2.0, 0.8))
    f = np.array([25.0, 100.0])
    found = quantity.gain(f, channel, "velocity", (10.0, 1000.0))
    for frequency, value in zip(f, found, strict=True):
        wanted = -2.0 * vectors.response_undone(frequency, (2.0, 0.8), 1e-4)
        wanted *= vectors.quantity_factor("acceleration", "velocity", frequency)
        assert value.conjugate() == pytest.approx(wanted, rel=1e-12)


@pytest.mark.parametrize("band_hz", [(0.0, 100.0), (100.0, 10.0), (10.0, 5000.0), (10.0, 10.0)])
def test_a_band_that_does_not_fit_is_refused(band_hz):
    with pytest.raises(quantity.QuantityError, match="must rise, begin at 0.008192 Hz or above and end below half"):
        quantity.BandConverter(RATE_HZ, [Channel("velocity")], "velocity", band_hz)
