"""Evidence out of vectors, spectra, sweeps and bump tests whose truth is known."""

from dataclasses import replace

import numpy as np
import pytest
import signals
from signals import RATE_HZ, Channel, Pulse
from stillshaft.dsp import candidates, content, measure, ringdown, spectrum, standing, sweep, vectors
from stillshaft.solver import diagnosis_rules, evidence
from stillshaft.solver.diagnosis import Word
from stillshaft.solver.evidence import Place

NAMES = ("h1", "v1", "h2", "v2", "a1", "a2")
PLACES = (
    Place("h1", "drive end", 90.0),
    Place("v1", "drive end", 0.0),
    Place("h2", "far end", 270.0),  # on the other side
    Place("v2", "far end", 10.0),
    Place("a1", "drive end"),
    Place("a2", "far end", inverted=True),
)


def of_vectors(*given, deviation=0.01, places=PLACES):
    """Evidence from (amplitude, lag) of each point, independent noise on each."""
    z = np.array([vectors.vector(a, p) for a, p in given])
    return evidence.from_vectors(NAMES, z, np.eye(12) * deviation**2, np.inf, places)


def turning(h1=(4.0, 100.0), v1=(2.0, 10.0), h2=(3.0, 280.0), v2=(1.5, 10.0), a1=(0.5, 0.0), a2=(0.4, 0.0), **kwargs):
    """A rotor that moves round: the far horizontal sensor reads the same motion with its sign turned."""
    return of_vectors(h1, v1, h2, v2, a1, a2, **kwargs)


def test_a_rotor_that_moves_round():
    """Lags of 100° and 10° are a quarter turn apart; 100° and 280° at opposite sensors are the same motion."""
    found = turning()
    assert found["hv_ratio"].value == pytest.approx(2.0)
    assert found["hv_off_quadrature"].value == pytest.approx(0.0, abs=1e-9)
    assert found["cross_phase"].value == pytest.approx(0.0, abs=1e-9)
    assert found["axial_ratio"].value == pytest.approx(0.125)


def test_sensors_on_the_same_side_are_not_turned():
    same_side = (replace(PLACES[0]), PLACES[1], replace(PLACES[2], angle_deg=90.0), PLACES[3])
    assert turning(places=same_side)["cross_phase"].value == pytest.approx(180.0)


def test_axial_sensors_that_point_the_other_way_are_turned():
    assert turning()["axial_phase"].value == pytest.approx(180.0)
    both = (*PLACES[:5], replace(PLACES[5], inverted=False))
    assert turning(places=both)["axial_phase"].value == pytest.approx(0.0, abs=1e-6)


def test_moving_every_pulse_or_turning_both_ways_changes_nothing():
    """Laws: the pulse sensor moved turns all phases alike; a sensor turned round and called so is the same sensor."""
    usual = turning()
    moved = turning((4.0, 137.0), (2.0, 47.0), (3.0, 317.0), (1.5, 47.0), (0.5, 37.0), (0.4, 37.0))
    round_the_other_way = (replace(PLACES[0], angle_deg=270.0), *PLACES[1:])
    turned = turning(h1=(4.0, 280.0), places=round_the_other_way)
    for key, figure in usual.items():
        for other in (moved, turned):
            assert other[key].value == pytest.approx(figure.value, abs=1e-6), key


def test_motion_along_a_line():
    found = turning(h1=(4.0, 12.0))
    assert found["hv_off_quadrature"].value == pytest.approx(88.0)


def test_intervals_are_those_of_draws():
    """Half widths against 1.96 deviations of the figures over draws of the vectors."""
    rng = np.random.default_rng(4)
    draws, deviation = [], 0.05
    truth = np.array([vectors.vector(a, p) for a, p in ((4.0, 70.0), (2.0, 10.0), (3.0, 300.0))])
    for _ in range(4000):
        noisy = truth + deviation * (rng.standard_normal(3) + 1j * rng.standard_normal(3))
        h1, v1, h2 = noisy
        draws.append((abs(h1 / v1), np.rad2deg(np.angle(h1 / v1)), np.rad2deg(np.angle(-h2 / h1))))
    found = evidence.from_vectors(NAMES[:3], truth, np.eye(6) * deviation**2, np.inf, PLACES[:3])
    for key, spread in zip(("hv_ratio", "hv_off_quadrature", "cross_phase"), np.std(draws, axis=0), strict=True):
        assert 0.5 * (found[key].high - found[key].low) == pytest.approx(1.96 * spread, rel=0.06), key


def test_bearings_with_unlike_amplitudes_give_no_cross_phase():
    assert "cross_phase" not in turning(h2=(0.5, 280.0), v2=(0.2, 10.0))
    assert "axial_phase" not in turning(a2=(0.05, 0.0))


def test_slanting_sensors_are_neither_horizontal_nor_vertical():
    slanting = (replace(PLACES[0], angle_deg=45.0), replace(PLACES[1], angle_deg=315.0))
    found = turning(places=slanting)
    assert not {"hv_ratio", "hv_off_quadrature"} & set(found)


def test_a_phase_that_is_all_noise_is_not_given():
    found = turning(deviation=3.0)
    assert "hv_off_quadrature" not in found
    assert found["hv_ratio"].low == 0.0


def test_a_place_without_a_point_is_refused():
    with pytest.raises(diagnosis_rules.DiagnosisError, match='place "x": is no point; points are h1'):
        turning(places=(Place("x", "drive end", 0.0),))


# runs and spectra

SPEED_RPM = 1480.0
A, B = vectors.vector(0.3, 47.0), vectors.vector(0.15, 200.0)
CHANNELS = [Channel("near", 1), Channel("far", 2)]
BELT, LINE = candidates.Candidate("belt", 612.0, 3.0), candidates.Candidate("line frequency", 3000.0, 3.0)


def run(z=(A, B), speed_rpm=SPEED_RPM, seconds=16.0, tones=(), **kwargs):
    samples = signals.record(seconds, speed_rpm, z, noise=0.005, wander=0.0005, **kwargs)
    t = np.arange(len(samples)) / RATE_HZ
    for hz, level in tones:
        samples[:, 1] += level * np.cos(2 * np.pi * hz * t)
    measuring = measure.Measuring(RATE_HZ, Pulse(), CHANNELS, "mm/s rms")
    measuring.feed(samples)
    orders = measuring.all_orders()
    averaged = spectrum.AveragedSpectrum(RATE_HZ, 2)
    averaged.feed(samples[:, 1:])
    return orders[0], content.describe(orders, averaged, CHANNELS, "mm/s rms", (LINE,))


@pytest.fixture(scope="module")
def usual():
    """2x is 0.4 and 3x 0.2 of 1x; belt multiple at 20.4 Hz, half an order, 2 × line."""
    return run(tones=((20.4, 0.12), (SPEED_RPM / 120.0, 0.06), (100.0, 0.03)))


def test_a_spectrum_gives_its_shares_and_ratios(usual):
    found = evidence.from_content(usual[1], belts=(BELT,), line=LINE)
    whole = 0.3**2 * (1 + 0.4**2 + 0.2**2) + 0.12**2 + 0.06**2 + 0.03**2
    assert found["share_1x"].value == pytest.approx(100 * 0.3**2 / whole, abs=1.0)
    assert found["share_1x"].where == "near"
    assert found["ratio_2x"].value == pytest.approx(0.4, rel=0.01)
    assert found["multiples"].value in (1.0, 2.0)  # 3x stands at the limit
    assert found["belt_ratio"].value == pytest.approx(0.4, rel=0.02)
    assert found["belt_ratio"].where == "near, 2 × belt at 20.39 Hz"  # a parabola through lines of 0.5 Hz
    assert found["fraction_ratio"].value == pytest.approx(0.2, rel=0.02)
    for key, figure in found.items():
        assert figure.low <= figure.value <= figure.high, key


def test_a_line_beside_an_order_is_not_told(usual):
    """4x is 98.67 Hz, 2 × line 100 Hz: 2.7 lines of 0.5 Hz apart."""
    assert "line_ratio" not in evidence.from_content(usual[1], line=LINE)
    mains_60 = candidates.Candidate("line frequency", 3600.0, 3.0)
    assert evidence.from_content(usual[1], line=mains_60)["line_ratio"].value < 0.01


def test_what_is_not_there_is_small_and_what_was_not_asked_is_missing(usual):
    found = evidence.from_content(run()[1], belts=(BELT,))
    assert found["belt_ratio"].value < 0.02
    assert found["belt_ratio"].low == 0.0
    assert "belt_ratio" not in evidence.from_content(usual[1])
    assert "other_shaft_ratio" not in found


def test_a_fraction_hidden_in_noise_is_not_called_absent():
    _, described = run()
    floor = np.full(described.frequency_hz.size, 0.2)
    noisy = replace(described, points=tuple(replace(p, amplitude=floor, peaks=()) for p in described.points))
    assert "fraction_ratio" not in evidence.from_content(noisy)


def test_pole_pass_sidebands():
    """Four poles on 50 Hz at 1470 r/min slip 0.5 Hz: sidebands 2 Hz beside 1x."""
    _, described = run(speed_rpm=1470.0, tones=((26.5, 0.06),))
    found = evidence.from_content(described, line=LINE, poles=4)
    assert found["pole_pass_ratio"].value == pytest.approx(0.2, rel=0.05)
    with pytest.raises(diagnosis_rules.DiagnosisError, match="3 poles: a motor has an even number"):
        evidence.from_content(described, line=LINE, poles=3)
    above = candidates.Candidate("line frequency", 2700.0, 3.0)
    assert "pole_pass_ratio" not in evidence.from_content(described, line=above, poles=4)


def test_a_spectrum_without_1x_is_refused(usual):
    silent = [replace(p, orders=tuple((o, replace(v, z=0.0)) for o, v in p.orders)) for p in usual[1].points]
    with pytest.raises(diagnosis_rules.DiagnosisError, match="no point shows any 1x"):
        evidence.from_content(replace(usual[1], points=tuple(silent)))


def test_a_run_gives_pulse_and_steadiness():
    found = evidence.from_measurement(run()[0])
    assert found["pulse_faults"].value == 0.0
    assert found["pulse_scatter"].value < 0.1
    assert found["steadiness"] == Word("steady", found["steadiness"].where)


def test_a_second_source_counts_where_the_spectrum_shows_it():
    """A strong tone at 1.4 times the speed turns up 2 Hz below 1x in blocks of four revolutions."""
    beside, described = run(tones=((SPEED_RPM / 60.0 - 0.4, 0.15),), seconds=20.0)
    word = evidence.from_measurement(beside, content=described)["steadiness"]
    assert (word.word, word.where) == ("beating", "near, second source at 24.27 Hz")
    pump = candidates.Candidate("pump", 1456.0, 5.0)
    word = evidence.from_measurement(beside, content=described, known=(BELT, pump))["steadiness"]
    assert word.where == "near, second source at 24.27 Hz (pump)"
    far, described = run(tones=((35.0, 0.3),), seconds=20.0)
    word = evidence.from_measurement(far)["steadiness"]
    assert word.word == "beating"
    assert word.where.startswith("near, second source at ")
    assert evidence.from_measurement(far, content=described)["steadiness"] == Word("steady", "far")


def change(key, before, after):
    names = [p.name for p in before.points]
    first, second = (np.array([p.z for p in m.points]) for m in (before, after))
    return evidence.from_change(key, names, first, before.covariance, second, after.covariance)


def test_the_change_between_two_runs(usual):
    moved, _ = run(z=(A * np.exp(1j * np.deg2rad(30.0)), B), seed=5)
    found = change("repeat_change", usual[0], moved)["repeat_change"]
    assert found.value == pytest.approx(200 * np.sin(np.deg2rad(15.0)), rel=0.02)  # the chord of 30°
    assert found.low < found.value < found.high
    assert found.where == "near"
    with pytest.raises(diagnosis_rules.DiagnosisError, match="must be warm_change or repeat_change"):
        change("change", usual[0], moved)
    nothing = replace(usual[0], points=tuple(replace(p, z=0j) for p in usual[0].points))
    with pytest.raises(diagnosis_rules.DiagnosisError, match="near, far: the first run shows no 1x at all"):
        change("warm_change", nothing, moved)


# resonances, background


def swept(*rpm, fastest=1480.0, exponent=None):
    speeds = np.linspace(200.0, fastest, 200)
    size = 1e-3 * (speeds / fastest) ** (exponent or 3.0)
    resonances = tuple(
        sweep.Resonance(
            sweep.Estimate(r, 5.0),
            sweep.Estimate(1.0, 0.1),
            sweep.Estimate(10.0, 1.0),
            sweep.Estimate(0.0, 1.0),
            0.1,
            90.0,
        )
        for r in rpm
    )
    point = sweep.PointSweep("near", 1.0, "mm/s rms", speeds, size + 0j, 0.001 * size, resonances)
    return sweep.Sweep(
        "run-up", 200.0, fastest, 30.0, 1480.0, 0.1, None, 2.0, 500, 0, 0, (point,), (), ()
    )  # fmt: skip


def test_the_margin_of_a_sweep():
    found = evidence.from_sweep(swept(1600.0, fastest=2000.0))
    assert found["resonance_margin"].value == pytest.approx(100 * 120 / 1480)
    assert found["resonance_margin"].high - found["resonance_margin"].value == pytest.approx(100 * 5 / 1480)
    assert found["running"].word == "near or above a resonance"  # below 1.25 times the speed
    assert evidence.from_sweep(swept(1900.0, fastest=2400.0))["running"].word == "below its resonances"


def test_a_sweep_that_ended_at_running_speed_does_not_say_there_is_none_above():
    found = evidence.from_sweep(swept())
    assert "resonance_margin" not in found
    assert "running" not in found
    assert found["speed_exponent"].value == pytest.approx(2.0, abs=0.02)  # velocity ∝ n³
    wide = evidence.from_sweep(swept(fastest=2400.0))
    assert wide["resonance_margin"].value == pytest.approx(100 * 920 / 1480)
    assert "speed_exponent" not in evidence.from_sweep(swept(900.0))


def rung(*hz, strength=0.5):
    modes = tuple(ringdown.NaturalMode(f, 0.05, 0.03, 0.001, 3, strength, "near") for f in hz)
    return ringdown.RingDown(modes, (1.0,), 3.0, 200.0, ())


def test_the_margin_of_a_bump_test():
    found = evidence.from_ring_down(rung(26.0, 60.0), SPEED_RPM)
    assert found["resonance_margin"].value == pytest.approx(100 * (1560 - 1480) / 1480)
    assert found["running"].word == "near or above a resonance"
    assert evidence.from_ring_down(rung(40.0), SPEED_RPM)["running"].word == "below its resonances"
    assert evidence.from_ring_down(rung(26.0, strength=0.01), SPEED_RPM) == {}
    with pytest.raises(diagnosis_rules.DiagnosisError, match="running speed 0 r/min: must be above 0"):
        evidence.from_ring_down(rung(26.0), 0.0)


def test_the_background_is_held_against_1x():
    levels = [standing.BandLevel(n, "mm/s rms", level, 0.1, (24.0, 25.0)) for n, level in (("near", 1.0), ("far", 0.2))]
    found = evidence.from_background(levels, {"near": 4.0, "far": 0.5})["background"]
    assert (found.value, found.where) == (pytest.approx(40.0), "far")
    assert found.high == pytest.approx(60.0)
    with pytest.raises(diagnosis_rules.DiagnosisError, match="no point has a 1x or a goal"):
        evidence.from_background(levels, {})
