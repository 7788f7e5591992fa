"""Known signals: what they calibrate, against the values they were made with."""

import numpy as np
import pytest
from stillshaft.dsp import calibration

RATE_HZ = 48_000.0
TIME_S = np.arange(int(5 * RATE_HZ)) / RATE_HZ


def noisy(x, seed=0, level=1e-4):
    return x + level * np.random.default_rng(seed).standard_normal(x.shape)


def test_the_four_parameter_fit_finds_a_sine():
    """IEEE Std 1057 (from memory): frequency and vector of a sine between two lines of the transform."""
    x = noisy(0.3 * np.cos(2 * np.pi * 159.234 * TIME_S + 0.7))
    tone = calibration.tones_of(x[:, None], RATE_HZ)
    assert tone.frequency_hz[0] == pytest.approx(159.234, abs=1e-4)
    assert abs(tone.vectors[0, 0] - 0.3 * np.exp(0.7j)) < 1e-5


def test_a_known_voltage_gives_the_full_scale():
    """1 V rms read with an amplitude of 0.35: √2 V / 0.35 read as full scale."""
    found = calibration.full_scale_volts(noisy(0.35 * np.cos(2 * np.pi * 1000.0 * TIME_S)), RATE_HZ, 1.0)
    assert found.value == pytest.approx(np.sqrt(2.0) / 0.35, abs=2 * found.ci95)
    assert found.ci95 / found.value < 1e-4


def test_a_shaker_gives_the_sensitivity():
    """9.80665 m/s² rms at 159.2 Hz through 100 mV/g and 2 V full scale is an amplitude of 0.1·√2/2."""
    x = noisy(0.1 * np.sqrt(2.0) / 2.0 * np.cos(2 * np.pi * 159.0 * TIME_S))
    found = calibration.shaker_sensitivity(x, RATE_HZ, 2.0)
    assert found.value * 9.80665 == pytest.approx(0.1, abs=2 * found.ci95 * 9.80665)


@pytest.mark.parametrize("hertz", [(80.0, 400.0), (150.0,)])
def test_a_split_signal_gives_gain_and_delay(hertz):
    def played(late_s):
        return sum(0.2 * np.cos(2 * np.pi * f * (TIME_S - late_s) + f) for f in hertz)

    x = np.column_stack([noisy(played(0.0)), noisy(1.02 * played(20.8e-6), 1), noisy(0.97 * played(-5e-6), 2)])
    found = calibration.split_signal(x, RATE_HZ)
    for channel, (gain, delay_s) in zip(found, ((1.0, 0.0), (1.02, 20.8e-6), (0.97, -5e-6)), strict=True):
        assert channel.gain.value == pytest.approx(gain, abs=2 * channel.gain.ci95 + 1e-9)
        assert channel.delay_s.value == pytest.approx(delay_s, abs=2 * channel.delay_s.ci95 + 1e-12)
        assert channel.delay_s.ci95 < 0.2e-6
        assert channel.worst_deg < 0.01


def test_intervals_cover():
    inside = np.zeros(2)
    for seed in range(100):
        x = noisy(np.outer(np.cos(2 * np.pi * 200.0 * TIME_S[: int(RATE_HZ)]), [0.3, 0.3]), seed, 1e-3)
        channel = calibration.split_signal(x, RATE_HZ)[1]
        inside += [
            abs(channel.gain.value - 1.0) <= channel.gain.ci95,
            abs(channel.delay_s.value) <= channel.delay_s.ci95,
        ]
    assert (inside >= 88).all()  # of 100: below has a chance of 0.3 %


SINE = 0.3 * np.cos(2 * np.pi * 159.2 * TIME_S)


@pytest.mark.parametrize(
    ("what", "match"),
    [
        (lambda: calibration.full_scale_volts(SINE[:1000], RATE_HZ, 1.0), "0.02 s are too short: record 1 s or more"),
        (lambda: calibration.full_scale_volts(5 * SINE, RATE_HZ, 1.0), "clipped at full scale"),
        (lambda: calibration.full_scale_volts(0 * SINE, RATE_HZ, 1.0), "there is no tone in the record"),
        (lambda: calibration.full_scale_volts(np.nan * SINE, RATE_HZ, 1.0), "not finite"),
        (lambda: calibration.full_scale_volts(SINE, RATE_HZ, 0.0), "the known voltage must be above 0"),
        (
            lambda: calibration.full_scale_volts(noisy(0 * SINE, 1, 0.1), RATE_HZ, 1.0),
            "the tone hardly stands out of the noise",
        ),
        (
            lambda: calibration.shaker_sensitivity(0.3 * np.cos(2 * np.pi * 80.0 * TIME_S), RATE_HZ, 2.0),
            "the strongest tone is 80.0 Hz, not the shaker's 159.2 Hz",
        ),
        (
            lambda: calibration.split_signal(noisy(np.column_stack([SINE, 0 * SINE])), RATE_HZ),
            "input 2 has none of the signal that reaches the reference",
        ),
        (
            lambda: calibration.split_signal(noisy(np.column_stack([0 * SINE, SINE])), RATE_HZ),
            "the reference input has no clear tone",
        ),
    ],
)
def test_what_calibrates_nothing_is_refused(what, match):
    with pytest.raises(calibration.CalibrationError, match=match):
        what()
