"""Lower rates, averaged spectra, broadband levels, and what a vibration consists of."""

import numpy as np
import pytest
import signals
from scipy.signal import welch
from signals import RATE_HZ, Channel, Pulse
from stillshaft.dsp import candidates, content, decimate, measure, spectrum, vectors


@pytest.mark.parametrize(("rate_hz", "passband_hz"), [(48_000.0, 1000.0), (44_100.0, 333.0), (8000.0, 1000.0)])
def test_a_lower_rate_keeps_the_pass_band_and_loses_what_would_fold_into_it(rate_hz, passband_hz):
    rng = np.random.default_rng(0)
    time_s = np.arange(int(4 * rate_hz)) / rate_hz
    decimator = decimate.Decimator(rate_hz, passband_hz, 2)
    inside_hz, folding_hz = 0.97 * passband_hz, decimator.reduced_hz - 0.97 * passband_hz
    x = np.column_stack([np.cos(2 * np.pi * inside_hz * time_s + 0.3), np.cos(2 * np.pi * folding_hz * time_s)])
    parts, at = [], 0
    while at < len(x):
        size = int(rng.integers(1, 5000))
        parts.append(decimator.feed(x[at : at + size]))
        at += size
    y = np.concatenate(parts)
    there = (decimator.first + np.arange(len(y))) * decimator.step
    assert len(y) > 0.95 * len(x) / decimator.step - 100
    assert np.abs(y[:, 0] - x[there, 0]).max() < 1e-4
    assert np.abs(y[:, 1]).max() < 3e-4  # −70 dB


def test_a_rate_that_is_low_already_stays():
    decimator = decimate.Decimator(2000.0, 1000.0, 1)
    assert (decimator.step, decimator.reduced_hz, decimator.first) == (1, 2000.0, 0)
    assert np.array_equal(decimator.feed(np.ones((7, 1))), np.ones((7, 1)))


def test_the_spectrum_is_the_one_of_welch():
    """scipy.signal.welch: the same windows on the samples as they are."""
    rng = np.random.default_rng(1)
    x = np.cumsum(rng.standard_normal((30_000, 2)), axis=0) * 1e-3 + rng.standard_normal((30_000, 2))
    averaged = spectrum.AveragedSpectrum(1000.0, 2, 400.0, 0.5)
    for piece in np.array_split(x, 17):
        averaged.feed(piece)
    frequency, density = welch(x, 1000.0, "hann", 2000, 1000, detrend="constant", axis=0)
    assert np.array_equal(averaged.frequency_hz, frequency[: averaged.frequency_hz.size])
    for channel in range(2):
        power, deviation = averaged.power(channel, "velocity", "velocity")
        assert power[2:] == pytest.approx(0.5 * density[2 : power.size, channel], rel=1e-5)
        # mean of 29 windows: chi-square with twice as many degrees of freedom, less what overlap costs
        assert np.median(deviation[5:] / power[5:]) == pytest.approx(1 / np.sqrt(29), rel=0.15)


def test_the_level_of_a_tone_in_another_quantity():
    """A tone of 100 Hz and 9.80665 m/s² peak is 11.04 mm/s rms and 24.84 µm rms: division by ω."""
    time_s = np.arange(int(10 * RATE_HZ)) / RATE_HZ
    averaged = spectrum.AveragedSpectrum(RATE_HZ, 1)
    averaged.feed(9.80665 * np.cos(2 * np.pi * 100.0 * time_s)[:, None])
    assert averaged.rms(0, "acceleration", "velocity", (10.0, 1000.0)) == pytest.approx(11.036e-3, rel=1e-3)
    assert averaged.rms(0, "acceleration", "displacement", (10.0, 1000.0)) == pytest.approx(17.565e-6, rel=1e-3)
    assert averaged.rms(0, "acceleration", "velocity", (200.0, 1000.0)) < 1e-6
    corner = averaged.rms(0, "acceleration", "velocity", (10.0, 1000.0), (100.0,))
    assert corner == pytest.approx(11.036e-3 * np.sqrt(2.0), rel=1e-3)


def test_too_short_a_record_has_no_level():
    averaged = spectrum.AveragedSpectrum(RATE_HZ, 1)
    averaged.feed(np.ones((1000, 1)))
    assert averaged.rms(0, "velocity", "velocity", (10.0, 1000.0)) is None


SPEED_RPM = 1480.0
A, B = vectors.vector(0.3, 47.0), vectors.vector(0.15, 200.0)


@pytest.fixture(scope="module")
def described():
    """1x, 2x (0.4 of 1x) and 3x (0.2) of `signals.record`, a neighbour at 1000 r/min, the mains at 100 Hz."""
    samples = signals.record(16.0, SPEED_RPM, [A, B], noise=0.005, wander=0.0005)
    t = np.arange(len(samples)) / RATE_HZ
    samples[:, 1] += 0.1 * np.cos(2 * np.pi * 1000.0 / 60.0 * t) + 0.02 * np.cos(2 * np.pi * 100.0 * t)
    channels = [Channel("near", 1), Channel("far", 2)]
    measuring = measure.Measuring(RATE_HZ, Pulse(), channels, "mm/s rms")
    measuring.feed(samples)
    averaged = spectrum.AveragedSpectrum(RATE_HZ, 2)
    averaged.feed(samples[:, 1:])
    known = (candidates.Candidate("pump", 1000.0, 3.0), candidates.Candidate("line frequency", 3000.0, 3.0))
    return content.describe(measuring.all_orders(), averaged, channels, "mm/s rms", known)


def test_peaks_are_named(described):
    near = described.points[0]
    by_name = {p.fits[0]: p for p in near.peaks if p.fits}
    assert list(by_name)[:2] == ["1x", "2x"]
    assert by_name["pump"].frequency_hz == pytest.approx(1000.0 / 60.0, abs=0.05)
    assert by_name["pump"].amplitude == pytest.approx(0.1, rel=0.01)
    assert by_name["pump"].order == pytest.approx(1000.0 / SPEED_RPM, abs=0.003)
    assert "2 × line frequency" in by_name
    assert all("pump" not in p.fits for p in described.points[1].peaks)


def test_shares_are_parts_of_the_mean_square(described):
    near, far = (p.shares for p in described.points)
    whole = 0.3**2 * (1 + 0.4**2 + 0.2**2) + 0.1**2 + 0.02**2
    assert near["1x"] == pytest.approx(100 * 0.3**2 / whole, abs=1.0)
    assert near["2x"] == pytest.approx(100 * 0.12**2 / whole, abs=1.0)
    assert near["pump"] == pytest.approx(100 * 0.1**2 / whole, abs=1.0)
    assert sum(near.values()) == pytest.approx(100.0, abs=1e-6)
    assert far["pump"] < 0.2


def test_two_points_are_held_against_each_other(described):
    (pair,) = described.pairs
    assert pair.names == ("near", "far")
    assert pair.ratio == pytest.approx(0.5, abs=3 * pair.ratio_ci95)
    assert pair.lag_deg == pytest.approx(153.0, abs=3 * pair.lag_ci95_deg)
    assert pair.ratio_ci95 < 0.01
    assert pair.lag_ci95_deg < 1.0


def test_lines_too_wide_for_the_orders_are_said():
    samples = signals.record(20.0, 120.0, [A], wander=0.0)
    measuring = measure.Measuring(RATE_HZ, Pulse(), [Channel("slow", 1)], "mm/s rms")
    measuring.feed(samples)
    averaged = spectrum.AveragedSpectrum(RATE_HZ, 1)
    averaged.feed(samples[:, 1:])
    found = content.describe(measuring.all_orders(), averaged, [Channel("slow", 1)], "mm/s rms")
    assert any("do not part orders 2.00 Hz from each other" in w for w in found.warnings)
