"""Signals for the dsp tests: written out here, not through dsp, so that a sign error cannot cancel."""

from dataclasses import dataclass

import numpy as np
from scipy.special import erf

RATE_HZ = 48_000.0


@dataclass(frozen=True)
class Pulse:
    index: int = 0
    edge: str = "auto"
    pulses_per_rev: int = 1
    reference: str = "single"


@dataclass(frozen=True)
class Channel:
    name: str
    index: int
    quantity: str = "velocity"
    si_per_reading: float = 1e-3 * np.sqrt(2.0)  # a reading of amplitude 1 is 1 mm/s rms
    delay_s: float = 0.0
    highpass_hz: tuple[float, ...] = ()
    mount: str | None = None


def shaft_angle(frames, speed_rpm, wander=0.0, start_deg=57.0):
    """Shaft angle in rad with a slow speed wander (peak, relative to the speed)."""
    t = np.arange(frames) / RATE_HZ
    slow = 2 * np.pi * 0.31
    return 2 * np.pi * speed_rpm / 60.0 * (t + wander / slow * np.sin(slow * t + 1.0)) + np.deg2rad(start_deg)


def pulse_train(angle, speed_rpm, duty=0.02, rise_samples=1.0):
    """Positive pulses whose leading edge is half-way up at angle 0."""
    turn = angle / (2 * np.pi)
    part = turn - np.floor(turn + 0.5)
    period = RATE_HZ * 60.0 / speed_rpm
    scale = rise_samples * np.sqrt(2.0)
    return 0.5 * (erf(part * period / scale) - erf((part - duty) * period / scale))


def record(seconds, speed_rpm, vectors, *, seed=0, noise=0.0, wander=0.005, pulse_db=30.0, harmonics=True, duty=0.02):
    """Samples (frames, 1 + points) with the given complex 1x vectors, harmonics and white noise."""
    rng = np.random.default_rng(seed)
    frames = int(seconds * RATE_HZ)
    angle = shaft_angle(frames, speed_rpm, wander)
    pulse = pulse_train(angle, speed_rpm, duty) + 10 ** (-pulse_db / 20.0) * rng.standard_normal(frames)
    columns = [0.5 * pulse]
    for z in vectors:
        x = abs(z) * np.cos(angle - np.angle(z)) + noise * rng.standard_normal(frames)
        if harmonics:
            x = x + 0.4 * abs(z) * np.cos(2 * angle - 1.0) + 0.2 * abs(z) * np.cos(3 * angle + 0.5)
        columns.append(x)
    return np.column_stack(columns).astype(np.float32)


def fed(meter, samples):
    """What a meter that takes samples in pieces says of all of them."""
    meter.feed(samples)
    return meter.result()
