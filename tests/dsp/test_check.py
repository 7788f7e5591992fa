"""The signal check: each fault put in is found at its input, and nothing is found where there is none."""

import numpy as np
import pytest
import signals
from signals import RATE_HZ, Channel, Pulse
from stillshaft.dsp import check

GOOD = signals.record(10.0, 1480.0, [0.3, 0.2j], noise=0.003, wander=0.001).astype(np.float64)
POINTS = [Channel("near", 1), Channel("far", 2)]
T = np.arange(len(GOOD)) / RATE_HZ
ANGLE = signals.shaft_angle(len(GOOD), 1480.0, 0.001)


def examined(samples=GOOD, points=POINTS, **more):
    return check.examine(samples, RATE_HZ, Pulse(), points, "mm/s rms", **more)


def changed(column, values):
    x = GOOD.copy()
    x[:, column] = values
    return x


def test_good_signals_have_no_findings():
    found = examined()
    assert [f.weight for f in found] == [check.FINE] * 3
    assert "1480.0 r/min" in found[0].what
    assert {f.where for f in found[1:]} == {"near, input 2", "far, input 3"}


PULSE, NEAR, FAR = "pulse, input 1", "near, input 2", "far, input 3"
NOISE = np.random.default_rng(0).standard_normal(T.size) / 10
LOOSE = np.where(np.isin(np.arange(T.size), [9000, 200_000]), 0.9, 0.2 * GOOD[:, 1])
SURGING = 0.3 * GOOD[:, 1] + 0.5 * np.cos(2 * np.pi * 0.2 * T)
SECOND = 0.5 * signals.pulse_train(ANGLE - 2.0, 1480.0)
TONE_100, TONE_120 = (np.cos(2 * np.pi * f * T) for f in (100.0, 120.0))
HALF = np.cos(ANGLE - 1.5) > 0
# input changed and how, where the finding is to be, its weight, words of what was found and of the cure
FAULTS = {
    "zero pulse": (0, 0.0, PULSE, check.BLOCKS, "exactly zero", "permission"),
    "dead bias": (1, -0.98, NEAR, check.BLOCKS, "stands at -0.98", "bias open or short"),
    "not finite": (2, np.where(T[5] == T, np.nan, GOOD[:, 2]), FAR, check.BLOCKS, "not finite", "record again"),
    "infinite": (1, np.where(T[5] == T, np.inf, GOOD[:, 1]), NEAR, check.BLOCKS, "not finite", "record again"),
    "beyond all size": (1, 1e200 * GOOD[:, 1], NEAR, check.BLOCKS, "e+199 times full scale", "damaged"),
    "clipped": (1, np.clip(6 * GOOD[:, 1], -1, 1), NEAR, check.BLOCKS, "clipped", "lower the gain"),
    "stuck": (1, np.where((T > 3) & (T < 3.2), 0.1, GOOD[:, 1]), NEAR, check.BLOCKS, "still for 200 ms", "wiggle"),
    "hot": (1, 0.95 * GOOD[:, 1] / np.abs(GOOD[:, 1]).max(), NEAR, check.CAUTION, "% of full scale", "lower the gain"),
    "weak": (1, 1e-3 * GOOD[:, 1], NEAR, check.CAUTION, "is weak", "raise the gain"),
    "low pulse": (0, 0.05 * GOOD[:, 0], PULSE, check.CAUTION, "of full scale high", "raise the gain"),
    "hum": (1, GOOD[:, 1] + 0.15 * TONE_100, NEAR, check.CAUTION, "hums at 100 Hz", "earth loop"),
    "crosstalk": (1, GOOD[:, 1] + 0.05 * GOOD[:, 0], NEAR, check.CAUTION, "% of the pulse in it", "crosstalk"),
    "surges": (1, SURGING, NEAR, check.CAUTION, "surges slowly", "wait 30 s"),
    "intermittent": (1, LOOSE, NEAR, check.CAUTION, "jumps", "cable"),
    "twins": (2, 0.5 * GOOD[:, 1], "near, far", check.BLOCKS, "same signal", "tap each sensor"),
    "two spots": (0, GOOD[:, 0] + SECOND, PULSE, check.BLOCKS, "twice a revolution, 115° apart", "blacken"),
    "lamp": (0, GOOD[:, 0] + 0.06 * TONE_120, PULSE, check.CAUTION, "flickers at 120 Hz", "lamps"),
    "sunlight": (0, GOOD[:, 0] + 0.4 * HALF, PULSE, check.CAUTION, "level swings", "shade"),
    "noise for a pulse": (0, NOISE, PULSE, check.BLOCKS, "no two levels", "put this right"),
    "nothing at 1x": (1, NOISE, NEAR, check.CAUTION, "hardly above its noise", "record longer"),
}


@pytest.mark.parametrize("name", FAULTS)
def test_each_fault_is_named_at_its_input_with_a_cure(name):
    column, values, where, weight, what, cure = FAULTS[name]
    samples = changed(column, values)
    found = [f for f in examined(samples) if f.where == where and f.weight == weight and what in f.what]
    assert found, [f for f in examined(samples) if f.weight != check.FINE]
    assert cure in found[0].cure


MOTORS_RPM = (290.0, 975.0, 1475.0, 1480.0, 1485.0, 1780.0, 2900.0, 2960.0, 3560.0)  # loaded ones, and a slow fan


@pytest.mark.parametrize("speed_rpm", MOTORS_RPM)
def test_orders_of_a_motor_are_not_taken_for_the_mains(speed_rpm):
    samples = signals.record(10.0, speed_rpm, [0.3, 0.2j], noise=0.003, wander=0.001, duty=0.1).astype(np.float64)
    assert not [f for f in examined(samples) if "hums" in f.what or "flickers" in f.what]


@pytest.mark.parametrize("rate_hz", [8000.0, 48_000.0, 192_000.0])
@pytest.mark.parametrize("frames", [10, 40, 120, 1000])
def test_a_record_too_short_for_any_spectrum_is_examined_all_the_same(frames, rate_hz):
    k = np.arange(frames)
    turns = 2 * np.pi * k / 8
    samples = np.column_stack([0.5 * (k % 8 < 2), 0.3 * np.cos(turns), 0.2 * np.sin(turns)])
    found = check.examine(samples, rate_hz, Pulse(), POINTS, "mm/s rms")
    assert found
    assert not [f for f in found if "hums" in f.what or "flickers" in f.what]


@pytest.mark.parametrize("duty", [0.1, 0.35])
@pytest.mark.parametrize("speed_rpm", [3000.0, 7000.0, 12_000.0])
def test_vibration_at_high_speed_is_not_taken_for_crosstalk(speed_rpm, duty):
    samples = signals.record(4.0, speed_rpm, [0.3, 0.2j], noise=0.003, wander=0.001, duty=duty).astype(np.float64)
    assert not [f for f in examined(samples) if "of the pulse in it" in f.what]
    samples[:, 1] += 0.03 * samples[:, 0]
    (found,) = [f for f in examined(samples) if "of the pulse in it" in f.what]
    assert found.where == NEAR
    assert float(found.what.split()[1]) == pytest.approx(3.0, rel=0.06)


@pytest.mark.parametrize("mains_hz", [50.0, 50.05, 60.0])
@pytest.mark.parametrize("speed_rpm", [1465.0, 1475.0, 1485.0, 1760.0, 2940.0])
def test_the_mains_is_told_from_an_order_beside_it(speed_rpm, mains_hz):
    """At 1485 r/min four orders are 99 Hz, and lamps flicker at 100 Hz."""
    samples = signals.record(10.0, speed_rpm, [0.3, 0.2j], noise=0.003, wander=0.001, duty=0.1).astype(np.float64)
    samples[:, 0] += 0.05 * 0.5 * np.cos(4 * np.pi * mains_hz * T)
    samples[:, 1] += 0.12 * np.cos(6 * np.pi * mains_hz * T)
    said = " ".join(f.what for f in examined(samples))
    assert f"flickers at {2 * mains_hz:.0f} Hz, 10 % of its height" in said
    assert f"hums at {3 * mains_hz:.0f} Hz, 40 % of 1x" in said


@pytest.mark.parametrize(("strength", "verdict"), [(0.15, "beating"), (0.6, "walking")])
def test_a_point_that_beats_is_not_called_noisy(strength, verdict):
    """1480 r/min are 24.67 Hz; the source is 0.43 Hz faster."""
    found = examined(changed(1, 0.5 * (GOOD[:, 1] + strength * np.cos(2 * np.pi * 25.1 * T))))
    (said,) = (f for f in found if f.where == NEAR)
    assert said.weight == check.CAUTION
    assert f"is {verdict}: a second source at 1506" in said.what
    assert said.cure.startswith("find and stop it")
    assert "noise" not in said.what


def test_inputs_that_are_swapped_are_seen():
    (found,) = (f for f in examined(GOOD[:, [1, 0, 2]]) if "swapped" in f.what)
    assert found.weight == check.BLOCKS


def test_missing_pulses_are_counted():
    x = GOOD.copy()
    for start in (1.0, 4.0, 7.7):
        x[int(start * RATE_HZ) : int((start + 0.04) * RATE_HZ), 0] = 0.0
    assert any("pulses missing" in f.what and f.weight == check.CAUTION for f in examined(x))


def test_pulses_while_the_machine_stands_are_said():
    noise = 0.01 * np.random.default_rng(0).standard_normal(T.size)
    (found,) = check.examine(changed(0, noise), RATE_HZ, Pulse(), POINTS, "mm/s rms", stopped=True)
    assert found.weight == check.FINE
    lamp = changed(0, noise + 0.3 * (np.cos(2 * np.pi * 100.0 * T) > 0.9))
    (found,) = check.examine(lamp, RATE_HZ, Pulse(), POINTS, "mm/s rms", stopped=True)
    assert found.weight == check.BLOCKS
    assert "as of 6000 r/min" in found.what


def test_a_bracket_that_shakes_is_told_from_noise():
    """Pulses that come ± 1.5° early and late at 9.3 Hz."""
    shaken = ANGLE + np.deg2rad(1.5) * np.cos(2 * np.pi * 9.3 * T)
    x = changed(0, 0.5 * signals.pulse_train(shaken, 1480.0) + 0.01 * np.random.default_rng(0).standard_normal(T.size))
    (found,) = (f for f in examined(x) if "at a rate of its own" in f.what)
    assert "± 1." in found.what
    assert not any("rate of its own" in f.what for f in examined())


def test_a_hand_probe_gives_no_vectors_and_a_magnet_no_high_speed():
    probe = [Channel("near", 1, mount="hand probe"), Channel("far", 2)]
    assert any("is held by hand" in f.what and f.weight == check.BLOCKS for f in examined(points=probe))
    fast = signals.record(4.0, 30_000.0, [0.3], noise=0.003).astype(np.float64)
    found = check.examine(fast, RATE_HZ, Pulse(), [Channel("a", 1, mount="two-pole magnet")], "mm/s rms")
    assert any("two-pole magnet hands on up to about 1000 Hz" in f.what for f in found)


def test_a_damaged_pulse_is_not_taken_for_a_machine_that_stands():
    for value in (np.inf, np.nan, 1e200):
        (found,) = examined(changed(0, np.where(T[5] == T, value, 0.0)), stopped=True)
        assert (found.weight, found.where) == (check.BLOCKS, PULSE)


def test_a_nan_of_any_kind_is_found():
    """A signalling one, by IEEE 754: the first bit of its fraction is 0."""
    x = GOOD.astype("f4")
    x.view("u4")[5, 2] = 0x7F800001
    assert "not finite" in next(f.what for f in examined(x) if f.where == FAR)


def test_the_nameplate_tells_a_pulse_that_counts_twice():
    assert any("shows twice the nameplate speed" in f.what for f in examined(nameplate_rpm=742.0))
    assert not any("nameplate" in f.what for f in examined(nameplate_rpm=1475.0))


def test_a_low_speed_needs_a_dc_coupled_input():
    slow = signals.record(30.0, 120.0, [0.3], noise=0.003).astype(np.float64)
    found = check.examine(slow, RATE_HZ, Pulse(), [Channel("slow", 1, highpass_hz=(2.0,))], "mm/s rms")
    assert any("corner of 2 Hz" in f.what and "DC-coupled" in f.cure and f.weight == check.BLOCKS for f in found)
