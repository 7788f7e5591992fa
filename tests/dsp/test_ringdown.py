"""Bump tests with decays of known frequency and damping; the background of a standing machine."""

import numpy as np
import pytest
import signals
from scipy.signal import find_peaks
from signals import Channel, Pulse, fed
from stillshaft.dsp import ringdown, standing

RATE_HZ = 8000.0
POINTS = [Channel("drive end", 1, "acceleration", 1.0), Channel("far end", 2, "acceleration", 1.0)]
MODES = ((24.0, 0.02, (1.0, 0.5)), (41.0, 0.04, (0.6, -0.8)))  # Hz, damping ratio, at both points
FIVE = (1.0, 4.0, 7.0, 10.0, 13.0)


def bumps(seed=0, modes=MODES, hits=FIVE, noise=0.003, size=0.25, coloured=False):
    """Samples (frames, 3): free decays x = e^{−ζω₀t}·sin(ω₀√(1 − ζ²)·t), a hammer's short contact, noise."""
    rng = np.random.default_rng(seed)
    t = np.arange(int((hits[-1] + 3.0) * RATE_HZ)) / RATE_HZ
    x = rng.standard_normal((t.size, 2))
    if coloured:
        for i in range(2):
            turned = np.fft.rfft(x[:, i])
            frequency = np.fft.rfftfreq(t.size, 1.0 / RATE_HZ)
            x[:, i] = np.fft.irfft(turned / np.sqrt(np.maximum(frequency, 2.0) / 30.0), t.size)
    x *= noise
    for hit in hits:
        after, strength = np.maximum(t - hit, 0.0), size * rng.uniform(0.6, 1.0)
        for hz, ratio, shape in modes:
            omega = 2 * np.pi * hz
            decay = np.exp(-ratio * omega * after) * np.sin(omega * np.sqrt(1 - ratio**2) * after)
            x += strength * np.outer(decay, shape)
        x += 0.5 * strength * np.exp(-(((t - hit - 0.001) / 0.0005) ** 2))[:, None]
    return np.column_stack([np.zeros(t.size), x])


def ring_down(samples, *pulse, **band):
    return fed(ringdown.Struck(RATE_HZ, POINTS, *pulse, **band), samples)


def background(samples, speed_rpm, *pulse, display="mm/s rms"):
    points = [Channel("near", 1), Channel("far", 2)]
    return fed(standing.Background(RATE_HZ, points, display, speed_rpm, *pulse), samples)


def test_modes_of_five_hits():
    found = ring_down(bumps(), Pulse())
    assert len(found.hits_s) == 5
    np.testing.assert_allclose(found.hits_s, FIVE, atol=0.01)
    assert len(found.modes) == 2
    assert found.warnings == ()
    for mode, (hz, ratio, _) in zip(found.modes, MODES, strict=True):
        assert mode.frequency_hz == pytest.approx(hz, abs=3 * mode.frequency_ci95_hz)
        assert mode.damping_ratio == pytest.approx(ratio, abs=3 * mode.damping_ci95)
        assert mode.frequency_ci95_hz < 1e-3 * hz
        assert mode.damping_ci95 < 0.01 * ratio
        assert mode.hits == 5
        assert mode.rpm == pytest.approx(60 * mode.frequency_hz)
        assert mode.amplification == pytest.approx(0.5 / mode.damping_ratio)


def half_power(samples, hz):
    """The textbook's way: width of the peak of the first decay's spectrum at half its power, over twice the frequency."""
    x = samples[int(1.0 * RATE_HZ) : int(4.0 * RATE_HZ) - 20, 1]
    power = np.abs(np.fft.rfft(x * np.hanning(x.size), 8 * x.size)) ** 2
    frequency = np.fft.rfftfreq(8 * x.size, 1.0 / RATE_HZ)
    near = np.flatnonzero(np.abs(frequency / hz - 1.0) < 0.3)
    peaks = near[find_peaks(power[near])[0]]
    top = peaks[np.argmax(power[peaks])]
    above = power > 0.5 * power[top]
    left = top - np.argmin(above[top::-1])
    right = top + np.argmin(above[top:])
    return (frequency[right] - frequency[left]) / (2 * frequency[top])


@pytest.mark.long
@pytest.mark.parametrize(
    ("modes", "hits", "noise", "coloured"),
    [
        (MODES, FIVE, 0.003, False),
        (MODES, (1.0,), 0.003, False),
        (MODES, FIVE, 0.01, True),
        ((*[(24.0, 0.03, MODES[0][2])], (27.0, 0.03, MODES[1][2])), FIVE, 0.01, False),  # bands that overlap
    ],
    ids=["five hits", "one hit", "pink noise", "two modes in one peak"],
)
def test_intervals_cover_the_truth(modes, hits, noise, coloured):
    """Over 24 records and both modes 95 % is expected; fewer than 84 % comes once in 10 000 (binomial)."""
    inside, errors, textbook = [], [], []
    for seed in range(24):
        samples = bumps(seed, modes, hits, noise, coloured=coloured)
        found = ring_down(samples)
        assert len(found.modes) == 2
        for mode, (hz, ratio, _) in zip(found.modes, modes, strict=True):
            inside.append(abs(mode.frequency_hz - hz) <= mode.frequency_ci95_hz)
            inside.append(abs(mode.damping_ratio - ratio) <= mode.damping_ci95)
            errors.append(mode.damping_ratio / ratio - 1.0)
        textbook.append(half_power(samples, modes[0][0]) / modes[0][1] - 1.0)
    assert np.mean(inside) >= 0.84
    assert np.sqrt(np.mean(np.square(errors))) < 0.2 * np.sqrt(np.mean(np.square(textbook)))


def test_pieces_of_any_size_tell_the_same_as_the_whole():
    samples = bumps() + 0.3  # an offset does no harm
    whole = ring_down(samples)
    struck = ringdown.Struck(RATE_HZ, POINTS)
    for piece in np.split(samples, [1, 17, 5000, 5001, 90_000]):
        struck.feed(piece)
    again = struck.result()
    assert again.hits_s == whole.hits_s
    for one, other in zip(again.modes, whole.modes, strict=True):
        assert one.frequency_hz == pytest.approx(other.frequency_hz, rel=1e-6)
        assert one.damping_ratio == pytest.approx(other.damping_ratio, rel=1e-4)


def test_points_that_hear_nothing_do_no_harm():
    samples = bumps()
    noise = 0.003 * np.random.default_rng(3).standard_normal((len(samples), 2))
    points = [*POINTS, Channel("along", 3, "acceleration", 1.0), Channel("base", 4, "acceleration", 1.0)]
    found = fed(ringdown.Struck(RATE_HZ, points), np.column_stack([samples, noise]))
    alone = ring_down(samples)
    assert [m.frequency_hz for m in found.modes] == pytest.approx([m.frequency_hz for m in alone.modes], rel=1e-4)
    assert {m.point for m in found.modes} <= {"drive end", "far end"}


def test_soft_blows_are_found_below_the_noise_of_the_whole_band():
    """Noise of a tenth of the blow: the decays stand out of it only below 200 Hz."""
    found = ring_down(bumps(noise=0.012, size=0.15))
    assert len(found.hits_s) >= 3
    assert any(abs(m.frequency_hz - 24.0) <= 2 * m.frequency_ci95_hz < 0.5 for m in found.modes)


def test_an_overloaded_hit_is_left_out_and_said():
    samples = bumps(size=0.2)
    hard = slice(int(4.0 * RATE_HZ), int(4.05 * RATE_HZ))
    samples[hard] = np.clip(20.0 * samples[hard], -1.0, 1.0)
    found = ring_down(samples)
    assert len(found.hits_s) == 4
    assert "the hit at 4.0 s is overloaded and left out" in found.warnings[0]


def test_hits_too_close_for_the_lowest_frequency_are_said():
    found = ring_down(bumps(hits=(1.0, 4.0, 4.4), noise=0.0003))
    assert any("the hit at 4.0 s has 0.4" in w and "are needed" in w for w in found.warnings)


def test_one_hit_says_what_it_does_not_know():
    found = ring_down(bumps(hits=(1.0,)))
    assert any("hit 3 times or more" in w for w in found.warnings)


def test_what_tells_nothing_is_refused():
    rng = np.random.default_rng(1)
    quiet = np.column_stack([np.zeros(40_000), 0.01 * rng.standard_normal((40_000, 2))])
    with pytest.raises(ringdown.RingDownError, match="no clear hit: the loudest moment is"):
        ring_down(quiet)
    with pytest.raises(ringdown.RingDownError, match=r"1.00 s: need 1.2 s or more"):
        ring_down(bumps()[: int(RATE_HZ)])
    with pytest.raises(ringdown.RingDownError, match="no hit can be used: the hit at 1.0 s is overloaded"):
        ring_down(np.clip(20.0 * bumps(hits=(1.0,)), -1.0, 1.0))
    with pytest.raises(ringdown.RingDownError, match="nothing rings between 60 and 200 Hz"):
        ring_down(bumps(), lowest_hz=60.0)
    with pytest.raises(ringdown.RingDownError, match="3 to 9000 Hz: give two frequencies"):
        ring_down(bumps(), highest_hz=9000.0)
    broken = bumps()
    broken[5, 1] = np.nan
    with pytest.raises(ringdown.RingDownError, match="a sample is not finite"):
        ring_down(broken)


def test_a_turning_machine_is_refused():
    samples = bumps()
    angle = 2 * np.pi * 10.0 * np.arange(len(samples)) / RATE_HZ
    samples[:, 0] = 0.5 * signals.pulse_train(angle, 600.0 * signals.RATE_HZ / RATE_HZ)
    with pytest.raises(ringdown.RingDownError, match="pulses, as of 600 r/min: the machine turned"):
        ring_down(samples, Pulse())


def standing_still(level, hz, seconds=20.0, seed=0):
    """A neighbour's velocity tone of `level` mm/s rms at the first point, and noise."""
    t = np.arange(int(seconds * RATE_HZ)) / RATE_HZ
    x = 0.02 * np.random.default_rng(seed).standard_normal((t.size, 2))
    x[:, 0] += level * np.cos(2 * np.pi * hz * t)
    return np.column_stack([np.zeros(t.size), x])


def test_the_background_is_that_of_the_tone():
    """A reading of 1 is 1 mm/s rms: the tone's own level comes back, a tone outside the band does not."""
    near, far = background(standing_still(0.8, 24.4), 1480.0, Pulse())
    assert near.level == pytest.approx(0.8, rel=0.01)
    assert near.ci95 < 0.05
    assert far.level < 0.01
    assert near.band_hz[0] < 24.4 < near.band_hz[1]
    peak = background(standing_still(0.8, 24.4), 1480.0, display="mm/s peak")[0]
    assert peak.level == pytest.approx(0.8 * np.sqrt(2.0), rel=0.01)
    outside = background(standing_still(0.8, 30.0), 1480.0)[0]
    assert outside.level < 0.01


def test_a_background_in_pieces_is_that_of_the_whole():
    points, samples = [Channel("near", 1), Channel("far", 2)], standing_still(0.8, 24.4)
    heard = standing.Background(RATE_HZ, points, "mm/s rms", 1480.0, Pulse())
    for piece in np.split(samples, [3, 40_000, 40_001]):
        heard.feed(piece)
    whole = background(samples, 1480.0, Pulse())
    assert [b.level for b in heard.result()] == pytest.approx([b.level for b in whole], rel=1e-6)


def test_a_background_that_cannot_be_told_is_refused():
    with pytest.raises(standing.StandingError, match=r"4.0 s with the machine stopped: need 6 s"):
        background(standing_still(1.0, 24.4, 4.0), 1480.0)
    with pytest.raises(standing.StandingError, match="speed 0 r/min: must be above 0"):
        background(standing_still(1.0, 24.4), 0.0)
    with pytest.raises(standing.StandingError, match=r"more than 0.4 of the sample rate"):
        background(standing_still(1.0, 24.4), 200_000.0)
    samples = standing_still(1.0, 24.4)
    angle = 2 * np.pi * 24.0 * np.arange(len(samples)) / RATE_HZ
    samples[:, 0] = 0.5 * signals.pulse_train(angle, 1440.0 * signals.RATE_HZ / RATE_HZ)
    with pytest.raises(standing.StandingError, match="as of 1440 r/min: the machine turned"):
        background(samples, 1440.0, Pulse())
