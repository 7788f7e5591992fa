"""The synchronous average: exact where theory says so, as good as the noise allows, refused in words."""

import numpy as np
import pytest
from signals import fed
from stillshaft.dsp import average, tach

RATE_HZ = 48_000.0


def shaft(seconds=4.0, speed_rpm=1500.0, change=0.01):
    """Shaft angle of a slowly changing speed and its revolutions, from exact pulses."""
    t = np.arange(int(seconds * RATE_HZ)) / RATE_HZ
    fine = np.linspace(0.0, seconds, 400_001)
    turns = speed_rpm / 60.0 * (fine + change / (2 * np.pi * 0.3) * np.sin(2 * np.pi * 0.3 * fine)) + 0.2
    whole = np.arange(1, int(turns[-1]) + 1)
    pulses = np.interp(whole, turns, fine) * RATE_HZ
    for _ in range(3):  # the straight line is only the start
        exact = speed_rpm / 60.0 * (
            pulses / RATE_HZ + change / (2 * np.pi * 0.3) * np.sin(2 * np.pi * 0.3 * pulses / RATE_HZ)
        ) + 0.2  # fmt: skip
        pulses += (whole - exact) * RATE_HZ / (speed_rpm / 60.0)
    angle = 2 * np.pi * (speed_rpm / 60.0 * (t + change / (2 * np.pi * 0.3) * np.sin(2 * np.pi * 0.3 * t)) + 0.2)
    return angle, tach.number_revolutions(pulses)


def synchronous_average(samples, turned, **spans):
    return fed(average.SynchronousAverager(turned, samples.shape[1], **spans), samples)


def decibel(error, size):
    return 20.0 * np.log10(np.sqrt(np.mean(error**2)) / (size / np.sqrt(2.0)))


@pytest.mark.parametrize(("share", "wanted_db"), [(0.1, -70.0), (0.02, -150.0)])
def test_interpolation_is_as_exact_as_lagranges_remainder_says(share, wanted_db):
    """At 0.1 and 0.02 of the sample rate: the sixth-order remainder gives −74 and −157 dB."""
    phase = 2 * np.pi * share * np.arange(4000)
    at = np.sort(np.random.default_rng(0).uniform(10.0, 3990.0, 3000))
    found = average._interpolated(np.cos(phase)[:, None], at[None, :])[0, :, 0]
    assert decibel(found - np.cos(2 * np.pi * share * at), 1.0) <= wanted_db
    straight = np.interp(at, np.arange(4000), np.cos(phase))
    assert decibel(straight - np.cos(2 * np.pi * share * at), 1.0) > wanted_db + 30.0


def test_a_waveform_that_repeats_comes_out_as_it_is():
    angle, turned = shaft()
    wave = np.column_stack([np.cos(angle - 0.5) + 0.3 * np.cos(3 * angle + 1.0), np.sin(2 * angle)])
    found = synchronous_average(wave, turned, points=360)
    there = found.angle_rad
    expected = np.column_stack([np.cos(there - 0.5) + 0.3 * np.cos(3 * there + 1.0), np.sin(2 * there)])
    np.testing.assert_allclose(found.waveform, expected, atol=1e-6)
    assert found.deviation.max() < 1e-5


def test_noise_goes_down_with_the_square_root_of_the_revolutions():
    angle, turned = shaft(16.0)
    rng = np.random.default_rng(1)
    noise = 2.0 * rng.standard_normal(angle.size)
    found = synchronous_average((np.cos(angle) + noise)[:, None], turned, points=256)
    error = found.waveform[:, 0] - np.cos(found.angle_rad)
    assert found.spans > 390
    assert error.std() == pytest.approx(2.0 / np.sqrt(found.spans), rel=0.15)
    assert error.std() <= 1.1 * 2.0 / np.sqrt(found.spans)
    assert np.mean(found.mean_deviation) == pytest.approx(error.std(), rel=0.15)


def test_half_orders_need_two_revolutions():
    angle, turned = shaft()
    half = np.cos(0.5 * angle)[:, None]
    assert np.abs(synchronous_average(half, turned).waveform).max() < 0.05
    two = synchronous_average(half, turned, revolutions=2)
    assert np.abs(two.waveform).max() == pytest.approx(1.0, abs=1e-3)


def test_a_missing_pulse_is_bridged():
    angle, turned = shaft()
    holed = tach.number_revolutions(np.delete(turned.frames, [20, 21, 50]))
    wave = np.cos(angle - 0.5)[:, None]
    whole, bridged = (synchronous_average(wave, t, points=128) for t in (turned, holed))
    assert bridged.spans == whole.spans
    np.testing.assert_allclose(bridged.waveform, whole.waveform, atol=1e-5)


@pytest.mark.parametrize(
    ("arguments", "match"),
    [
        ({"revolutions": 200}, "0 whole spans of 200 revolutions: need 2 or more"),
        ({"points": 5000}, "5000 points, but only 19.. samples in a span"),
        ({"points": 2}, "2 points over 1 revolutions: need 4 or more"),
    ],
)
def test_what_gives_no_average_is_said_in_one_line(arguments, match):
    angle, turned = shaft()
    with pytest.raises(average.AverageError, match=match):
        synchronous_average(np.cos(angle)[:, None], turned, **arguments)
