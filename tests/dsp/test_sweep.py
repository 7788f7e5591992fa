"""The order tracker on a run-up whose true envelope comes from the rotor's equation of motion."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from stillshaft.dsp import sweep, tach

RATE_HZ, SECONDS = 1024.0, 20.0
SPEED_UP = 2 * np.pi * 50.0 / SECONDS  # rad/s², to 3000 r/min
RESONANCE, DAMPING = 2 * np.pi * 25.0, 1 / 40.0  # rad/s, and Q = 20


@pytest.fixture(scope="module")
def run_up():
    """Times, true envelope (e^{+jθ}), angle and pulses: z̈ + 2ζω₁ż + ω₁²z = (Ω² − jα)e^{jθ}, from rest."""
    time_s = np.arange(int(SECONDS * RATE_HZ)) / RATE_HZ

    def moved(t, y):
        force = ((SPEED_UP * t) ** 2 - 1j * SPEED_UP) * np.exp(0.5j * SPEED_UP * t * t)
        return [y[1], force - 2 * DAMPING * RESONANCE * y[1] - RESONANCE**2 * y[0]]

    whole = solve_ivp(moved, (0.0, SECONDS), [0j, 0j], t_eval=time_s, rtol=1e-8, atol=1e-11, max_step=5e-3)
    angle = 0.5 * SPEED_UP * time_s**2
    number = np.arange(1, int(angle[-1] / (2 * np.pi)))
    pulses = np.sqrt(4 * np.pi * number / SPEED_UP) * RATE_HZ
    return time_s, whole.y[0] * np.exp(-1j * angle), angle, tach.number_revolutions(pulses)


def errors(found, time_s, envelope):
    """Complex error of order 1 in percent of the peak, and phase error in degrees, between 1 and 19.5 s."""
    there = np.interp(found.times_s, time_s, envelope.real) + 1j * np.interp(found.times_s, time_s, envelope.imag)
    inside = (found.times_s > 1.0) & (found.times_s < 19.5)
    tracked = found.vectors[0, :, 0].conj()  # z is the conjugate form
    off = 100.0 * np.abs(tracked - there)[inside] / np.abs(envelope).max()
    near = np.abs(found.speeds_rpm - 1500.0) < 150.0
    return off, np.angle(tracked / there, deg=True)[near]


def test_the_tracker_follows_the_transient(run_up):
    time_s, envelope, angle, turned = run_up
    x = (envelope * np.exp(1j * angle)).real
    off, phase_deg = errors(sweep.track(x[:, None], RATE_HZ, turned), time_s, envelope)
    assert np.sqrt(np.mean(off**2)) <= 0.2
    assert off.max() <= 0.8
    assert np.sqrt(np.mean(phase_deg**2)) <= 0.5


def test_a_fixed_tone_that_is_crossed_can_be_tracked_beside(run_up):
    time_s, envelope, angle, turned = run_up
    tone = 0.2 * np.abs(envelope).max() * np.cos(2 * np.pi * 31.3 * time_s + 1.0)
    x = ((envelope * np.exp(1j * angle)).real + tone)[:, None]
    alone, _ = errors(sweep.track(x, RATE_HZ, turned), time_s, envelope)
    beside, _ = errors(sweep.track(x, RATE_HZ, turned, (1.0, 2.0, 3.0), 31.3), time_s, envelope)
    assert alone.max() > 15.0
    assert beside.max() <= 2.2


def test_channels_and_orders_do_not_mix(run_up):
    _, _, angle, turned = run_up
    x = np.column_stack([np.cos(angle - 0.3) + 0.5 * np.cos(2 * angle - 1.0), 2.0 * np.cos(2 * angle - 1.0)])
    found = sweep.track(x, RATE_HZ, turned, (1.0, 2.0))
    inside = (found.times_s > 4.0) & (found.times_s < 19.0)
    wanted = np.array([[np.exp(0.3j), 0.0], [0.5 * np.exp(1j), 2.0 * np.exp(1j)]])
    assert np.abs(found.vectors[:, inside] - wanted[:, None]).max() < 0.01


def test_what_is_no_sweep_is_refused(run_up):
    time_s, _, angle, turned = run_up
    steady = tach.number_revolutions(np.arange(10.0, 20_000.0, 41.0))
    with pytest.raises(sweep.SweepError, match="a sweep without a change of speed: 1499 to 1499 r/min"):
        sweep.track(np.cos(angle)[:, None], RATE_HZ, steady)
    with pytest.raises(sweep.SweepError, match="more than 0.4 of the sample rate 1024 Hz"):
        sweep.track(np.cos(angle)[:, None], RATE_HZ, turned, (1.0, 12.0))
