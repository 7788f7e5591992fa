"""What is looked at beside the vectors: the same numbers by another way, from the simulated rotor's own samples."""

import time

import numpy as np
import pytest
from stillshaft.acquire import hookup as hookups
from stillshaft.acquire import simulated
from stillshaft.acquire.conditions import Conditions
from stillshaft.ui.desktop import figures, simulator
from stillshaft.ui.desktop.simulator import CASES, Mass, Teaching
from stillshaft.ui.desktop.watch import Recent, Watch


def watched(order, table, seconds):
    """A watch that has seen so many seconds, made as fast as they come."""
    watch = Watch(order, hookups.hookup_from(table))
    deadline = time.monotonic() + 320.0
    while watch.latest is None or watch.latest.seconds < seconds:
        assert time.monotonic() < deadline, watch.latest
        time.sleep(0.01)
    watch.close()
    return watch


@pytest.fixture(scope="module")
def usual():
    return watched(simulator.order(Teaching(), 1, real_time=False), simulator.hookup(), 12.0)


def test_the_waveform_holds_the_measured_vectors(usual):
    """Its 1x is what `dsp.measure` fits, turned from rms into peak."""
    waveform, measured = usual.glance.waveform, usual.latest.measured
    assert waveform.unit == "mm/s"
    turn = np.exp(-1j * np.deg2rad(waveform.angle_deg[:-1]))
    for shown, point in zip(waveform.points, measured.points, strict=True):
        z = np.conj(2.0 * np.mean(shown.mean[:-1] * turn)) / np.sqrt(2.0)
        assert abs(z - point.z) < 0.02 * abs(point.z)
        assert shown.mean[0] == shown.mean[-1]
        assert 0.0 < shown.deviation.mean() < 0.2


def test_the_spectrum_shows_1x_at_running_speed(usual):
    spectrum, measured = usual.glance.spectrum, usual.latest.measured
    assert spectrum.running_hz == pytest.approx(measured.speed.mean_rpm / 60.0, rel=0.01)
    for amplitude, point in zip(spectrum.amplitudes, measured.points, strict=True):
        top = int(amplitude.argmax())
        assert abs(spectrum.frequency_hz[top] - spectrum.running_hz) <= 1.0
        assert amplitude[top] == pytest.approx(abs(point.z), rel=0.25)  # a tone between two lines shows less
    assert spectrum.frequency_hz[0] >= 0.2 * spectrum.running_hz


def test_the_pulse_is_seen_as_it_was_made(usual):
    """Height a half of full scale, 2 % of a revolution wide (Conditions), two whole turns and a bit."""
    pulse = usual.glance.pulse
    assert pulse.trouble is None
    assert pulse.rising is True
    assert pulse.threshold == pytest.approx(0.25, abs=0.02)
    assert pulse.mark_deg == pytest.approx(7.2, abs=0.4)
    assert pulse.rpm == pytest.approx(1480.0, rel=0.005)
    assert (pulse.missing, pulse.extra) == (0, 0)
    assert pulse.edges_ms.size == 3
    for at in pulse.edges_ms:
        before, after = np.interp([at - 0.5, at + 0.5], pulse.times_ms, pulse.values)
        assert before < pulse.threshold < after


def test_levels_are_those_of_the_samples(usual):
    names = [level.name for level in usual.glance.levels]
    assert names == ["pulse", "drive end horizontal", "far end horizontal"]
    recent = usual.recent.last(12_000)
    for i, level in enumerate(usual.glance.levels):
        assert level.held >= level.peak >= level.rms > 0.0
        assert level.rms == pytest.approx(float(recent[:, i].std() + abs(recent[:, i].mean())), rel=0.6)
        assert level.clipped == 0


def test_a_clipped_input_is_counted():
    order = simulated.SimulatedRun(
        simulated.demo_rotor(2), simulated.demo_sensors(), simulated.demo_unbalance(2),
        Conditions(1480.0, channel_faults=((2, "clipped"),)), 1, None, False,
    )  # fmt: skip
    seen = watched(order, simulator.hookup(), 2.0).glance.levels
    assert seen[1].clipped > 100
    assert seen[2].clipped == 0


def test_no_pulses_are_said():
    order = simulated.SimulatedRun(
        simulated.demo_rotor(2), simulated.demo_sensors(), simulated.demo_unbalance(2),
        Conditions(1480.0, channel_faults=((1, "dead"),)), 1, None, False,
    )  # fmt: skip
    seen = watched(order, simulator.hookup(), 2.0)
    assert "no pulses are seen" in seen.glance.pulse.trouble
    assert seen.glance.waveform is None
    assert seen.latest.measured is None


def test_stopping_does_not_wait():
    watch = Watch(simulator.order(Teaching(), 1), hookups.hookup_from(simulator.hookup()))
    begun = time.monotonic()
    watch.stop_soon()
    assert time.monotonic() - begun < 0.05
    watch.close()
    assert watch.ended


def test_recent_keeps_the_last_frames_in_order():
    recent = Recent(100.0, 2)  # 1200 frames
    sent = np.arange(5000, dtype=np.float32)[:, None] * [1.0, -1.0]
    for begin in range(0, 5000, 777):
        recent.put(sent[begin : begin + 777].astype(np.float32))
    assert np.array_equal(recent.last(1000)[:, 0], np.arange(4000, 5000))
    assert np.array_equal(recent.last(9999)[:, 1], -np.arange(3800, 5000))
    recent.clear()
    assert len(recent.last(10)) == 0
    recent.put(sent[:3].astype(np.float32))
    assert len(recent.last(10)) == 3


# the simulated rotor as the panel sets it


@pytest.mark.parametrize("percent", [60.0, 104.0, 200.0])
def test_the_resonance_is_where_it_is_wanted(percent):
    made = simulator.rotor(Teaching(resonance_percent=percent))
    stiffness = tuple(s.horizontal_n_per_m for s in made.supports)
    natural = simulated.modes(made, (stiffness[0], stiffness[1]))[0].min()
    assert natural * 30.0 / np.pi == pytest.approx(percent / 100.0 * 1480.0, rel=1e-9)


def test_masses_add_to_the_unbalance_as_vectors():
    opposite = Teaching(masses=(Mass(19.0, 245.0), Mass(0.0, 0.0)))
    first, second = simulator.order(opposite, 1).unbalance
    assert abs(first) < 1e-12
    assert abs(second) == pytest.approx(0.014 * 0.31)
    assert simulator.order(Teaching(), 1).unbalance == pytest.approx(simulated.demo_unbalance(2))


@pytest.mark.parametrize(
    ("case", "verdicts"),
    [("usual", {"steady"}), ("neighbour close in speed", {"beating"}), ("neighbour stronger than 1x", {"walking"})],
)
def test_cases_show_what_they_teach(case, verdicts):
    seen = watched(simulator.order(CASES[case], 1, real_time=False), simulator.hookup(), 16.0)
    assert {p.steadiness.verdict for p in seen.latest.measured.points} <= verdicts
    said = {p.words.split()[0] for p in figures.ribbon(seen.latest.measured)}
    assert said == ({"steady"} if verdicts == {"steady"} else {"beat"})


def test_missing_pulses_do_not_widen_what_is_seen():
    seen = watched(simulator.order(CASES["loose pulses"], 1, real_time=False), simulator.hookup(), 10.0)
    pulse = seen.glance.pulse
    assert pulse.missing > 5
    assert pulse.times_ms[-1] < 4.0 * 60_000.0 / pulse.rpm
    assert pulse.jitter_deg > 0.5


def test_a_fitted_beat_follows_the_phase():
    seen = watched(simulator.order(CASES["neighbour close in speed"], 1, real_time=False), simulator.hookup(), 14.0)
    for point in figures.ribbon(seen.latest.measured):
        there = np.interp(point.times_s, point.fit_times_s, point.fit_deg)
        off = there - point.phase_deg
        assert np.sqrt(np.mean(np.square(off))) < 0.05 * np.ptp(point.phase_deg)
        assert np.abs(off).max() < 0.2 * np.ptp(point.phase_deg)  # a block averages where the phase falls steeply


def test_the_region_is_as_large_as_its_covariance_says():
    """Many revolutions: the radius of a circle of deviation 1 is √5.99, the 95 % quantile of χ² with 2 (tables)."""
    border = figures.region_border(3.0 + 4.0j, np.eye(2), 10**6)
    assert np.abs(border - (3.0 + 4.0j)) == pytest.approx(np.sqrt(5.991), rel=1e-3)
    # with few, F(2, 9) at 95 % is 4.2565 (tables): T² = 2·10/9·F
    few = figures.region_border(0j, np.eye(2), 10)
    assert np.abs(few) == pytest.approx(np.sqrt(2.0 * 10.0 / 9.0 * 4.2565), rel=1e-4)
