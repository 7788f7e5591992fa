"""The steadiness verdict on series that move in known ways, its second source against the bound, and candidates."""

import moving
import numpy as np
import pytest
from moving import BLOCKS, PLACE, SPEEDS, TIMES, V
from stillshaft.dsp import candidates, steadiness


def judged(series, speeds=SPEEDS):
    return steadiness.judge(series, TIMES, speeds, 4 * BLOCKS)


def verdicts(make, count=60):
    found = [judged(make(np.random.default_rng(seed))) for seed in range(count)]
    return [f.verdict if f.cause is None else f.cause for f in found]


@pytest.mark.parametrize("memory", [0.0, 0.5])
def test_noise_alone_is_steady(memory):
    """1 % of false alarms is wanted: of 200, more than 7 come by chance once in 1000."""
    found = verdicts(lambda rng: V + 0.1 * moving.coloured(rng, memory), 200)
    assert found.count("steady") >= 193


@pytest.mark.parametrize("beats", [0.25, 0.35, 0.5, 1.0, 4.0])
def test_a_second_source_never_passes_as_steady(beats):
    assert "steady" not in verdicts(lambda rng: moving.beat(rng, 0.6, beats, 0.2))


@pytest.mark.parametrize(("beats", "far"), [(1.0, False), (3.0, False), (7.0, True), (25.0, True)])
def test_a_quick_beat_may_be_a_strong_tone_far_off(beats, far):
    """A vector of four revolutions hears a tone at any speed; 7 turns of 64 vectors and more are a quick beat."""
    found = judged(moving.beat(np.random.default_rng(1), 0.6, beats, 0.1))
    assert found.verdict == "beating"
    assert ("or a strong tone far from the speed that looks like it" in (found.reasons + found.notes)[0]) == far


def test_a_tone_far_from_the_speed_is_among_the_sources_that_are_named():
    """A shaft of 1200 r/min and a tone of 980: from one vector of 0.2 s to the next, 220 r/min and 300 − 220 look the same."""
    per_s, count, samples = 1200.0 / 60.0, 64, 2000
    t = (np.arange(count * samples) + 0.5) * 0.2 / samples
    x = 3.0 * np.cos(2.0 * np.pi * per_s * t - 1.0) + 2.5 * np.cos(2.0 * np.pi * 980.0 / 60.0 * t)
    x += 0.2 * np.random.default_rng(1).standard_normal(t.size)
    # conventions: z is the conjugate of (2/N)·Σ x·e^{−jθ}
    series = (2.0 * x * np.exp(2j * np.pi * per_s * t)).reshape(count, samples).mean(axis=1)
    found = steadiness.judge(series, 0.2 * np.arange(count), np.full(count, 2.0 * np.pi * per_s), 4 * count)
    near, far = found.beat.source_rpm
    assert (near, far) == (pytest.approx(1280.0, abs=0.5), pytest.approx(980.0, abs=0.5))
    assert found.beat.side == "unknown"
    assert "a second source at 1280.0 or 980.0 r/min" in (found.reasons + found.notes)[0]
    (match,) = candidates.compare(found.beat, (candidates.Candidate("compressor", 980.0, 2.0),))
    assert match.fits


@pytest.mark.parametrize("beats", [1.0, 3.5, 6.0, 20.3])
def test_a_beat_is_trusted_once_it_is_averaged_out(beats):
    """The mean over n turns of a phasor is sin(πn)/(πn) of it: never more than 1/(πn) (integral of e^{jx})."""
    series = moving.beat(np.random.default_rng(3), 0.5, beats, 0.02)
    found = judged(series)
    assert found.verdict == "beating"
    left = found.beat.ratio / (np.pi * beats)
    assert found.trusted == (beats >= 4.0 and left <= 0.02)
    assert found.trusted == (TIMES[-1] > found.record_s)
    if found.trusted:
        assert abs(series.mean() - V) <= (left + 0.01) * abs(V)
        assert f"moves the mean by {100 * left:.1f} % at most" in found.notes[0]
    else:
        assert found.notes == ()


@pytest.mark.parametrize(
    ("make", "wanted"),
    [
        (moving.line, "trend"),
        (moving.settling, "settling"),
        (moving.narrow_band, "narrow-band"),
        (moving.modulated, "wander"),
    ],
)
def test_what_moves_the_vector_is_named(make, wanted):
    found = verdicts(make)
    assert found.count(wanted) >= 0.8 * len(found)
    assert "steady" not in found[:20] or wanted == "narrow-band"


def test_a_phase_that_follows_the_speed_is_told_from_drift():
    causes = []
    for seed in range(60):
        series, speeds = moving.with_speed(np.random.default_rng(seed))
        causes.append(judged(series, speeds).cause)
    assert causes.count("speed") >= 57


@pytest.mark.parametrize("make", [moving.line, moving.settling, moving.walk])
def test_drift_and_wander_are_not_called_a_beat(make):
    assert verdicts(make, 100).count("beating") <= 5


def test_a_scatter_as_large_as_the_vector_is_said():
    rng = np.random.default_rng(0)
    found = judged(0.3 + 2.0 * moving.coloured(rng))
    assert (found.verdict, found.cause, found.trusted) == ("unsettled", "scatter", False)
    assert found.record_s > TIMES[-1]


@pytest.mark.parametrize(("beats", "bound"), [(0.75, 1.39), (1.0, 1.10), (3.0, 1.01)])
def test_the_cleaned_vector_is_as_good_as_the_record_allows(beats, bound):
    """Cramér–Rao bound of V beside a source of unknown strength, phase and frequency: from the information matrix."""
    deviation, off, inside = 0.1, [], 0
    for seed in range(200):
        found = judged(moving.beat(np.random.default_rng(seed), 0.5, beats, deviation))
        assert found.verdict == "beating"
        off.append(found.beat.cleaned - V)
        spread = np.array([off[-1].real, off[-1].imag])
        inside += spread @ np.linalg.solve(found.beat.cleaned_covariance, spread) < 6.14  # 2·F(2, 122) at 95 %
    rms = np.sqrt(np.mean(np.abs(off) ** 2) / 2.0)
    assert rms <= 1.2 * bound * deviation / np.sqrt(BLOCKS)
    assert 0.90 <= inside / 200 <= 0.985


def test_a_resonance_that_follows_the_speed_late_is_not_called_a_loose_part():
    found = [judged(*moving.beside_a_resonance(np.random.default_rng(seed))) for seed in range(40)]
    assert sum(s.cause == "speed" for s in found) >= 38
    assert all(s.verdict == "drifting" for s in found)


def test_a_speed_that_wanders_does_not_smear_the_source():
    """The neighbour keeps its own speed: relative to the shaft it swings as the shaft does."""
    rng = np.random.default_rng(1)
    speeds = 157.0 + 0.3 * np.sin(2 * np.pi * PLACE)
    turned = np.concatenate([[0.0], np.cumsum(0.5 * (speeds[1:] + speeds[:-1]) * np.diff(TIMES))])
    source = 157.0 + 2 * np.pi * 0.4
    series = V + 1.0 * np.exp(-1j * (source * TIMES - turned)) + 0.05 * moving.coloured(rng)
    found = judged(series, speeds)
    assert found.verdict == "beating"
    assert found.beat.source_rpm[0] == pytest.approx(60.0 * source / (2 * np.pi), abs=0.3)
    assert abs(found.beat.cleaned - V) < 0.05


def test_turning_the_pulse_sensor_and_turning_time_around_change_what_they_must():
    series = moving.beat(np.random.default_rng(2), 1.0, 2.0, 0.1)
    plain, turned, back = judged(series), judged(series * np.exp(0.6j)), judged(series[::-1])
    assert turned.beat.cleaned == pytest.approx(plain.beat.cleaned * np.exp(0.6j), rel=1e-6)
    assert turned.beat.offset_hz == pytest.approx(plain.beat.offset_hz, rel=1e-6)
    assert back.beat.offset_hz == pytest.approx(-plain.beat.offset_hz, rel=1e-6)


# candidates


LIST = """
format = 1
line = "50 Hz"
[[machine]]
name = "motor"
speed = "1465 rpm"
within = "5 rpm"
[[belt]]
name = "fan belt"
pulley = "200 mm"
speed = "1480 rpm"
length = "1800 mm"
"""


def test_candidates_are_held_against_the_source(tmp_path):
    path = tmp_path / "c.toml"
    path.write_text(LIST)
    known = candidates.load(path)
    # flat-belt or V-belt frequency π·D·n/L (handbook formula)
    assert known[2].rpm == pytest.approx(np.pi * 200.0 * 1480.0 / 1800.0)
    beat = judged(moving.beat(np.random.default_rng(2), 1.0, -2.0, 0.1)).beat
    near = candidates.Candidate("neighbour", beat.source_rpm[0] / 2.0 + 0.01, 0.1)
    found = candidates.compare(beat, (*known, near))
    assert (found[0].name, found[0].multiple, found[0].fits) == ("neighbour", 2, True)
    assert [m.fits for m in found[1:]] == [False] * 3


@pytest.mark.parametrize(
    ("old", "new", "match"),
    [
        ('"1800 mm"', '"500 mm"', "belt 1.length: 500 mm does not reach round its pulley, 628 mm"),
        ('"200 mm"', '"0 mm"', 'belt 1.pulley: "0 mm" must be above 0'),
        ('"1465 rpm"', '"fast"', 'machine 1.speed: "fast" is not a speed; write for example "1480 rpm" or "50 Hz"'),
        ('"5 rpm"', '"-5 rpm"', 'machine 1.within: "-5 rpm" must be 0 or more'),
        ('"50 Hz"', '"-50 Hz"', 'line: "-50 Hz" must be above 0'),
        ("within", "about", "about: unknown key"),
    ],
)
def test_impossible_candidates_are_refused_in_one_line(tmp_path, old, new, match):
    path = tmp_path / "c.toml"
    path.write_text(LIST.replace(old, new))
    with pytest.raises(candidates.CandidatesError, match=match) as caught:
        candidates.load(path)
    assert str(caught.value).startswith(str(path))
    assert "\n" not in str(caught.value)


def test_an_empty_list_is_refused(tmp_path):
    (tmp_path / "c.toml").write_text("format = 1")
    with pytest.raises(candidates.CandidatesError, match="there is none: add line"):
        candidates.load(tmp_path / "c.toml")
