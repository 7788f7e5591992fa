"""Run-ups and coast-downs whose true motion comes from the rotor's equation of motion, solved here."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from scipy.integrate import solve_ivp
from stillshaft.dsp import tach, tracking

RATE_HZ = 1024.0


@dataclass(frozen=True)
class RunUp:
    """Times, envelope of the vibration (e^{+jθ}), angle and shaft; `steady` gives the envelope at a constant speed."""

    time_s: np.ndarray
    envelope: np.ndarray
    angle: np.ndarray
    turned: tach.Revolutions
    natural: float
    damping: float
    derivatives: int

    @property
    def vibration(self):
        return (self.envelope * np.exp(1j * self.angle)).real

    def steady(self, speed):
        response = speed**2 / (self.natural**2 - speed**2 + 2j * self.damping * self.natural * speed)
        return response * (1j * speed) ** self.derivatives


@lru_cache
def run_up(seconds=20.0, hertz=25.0, quality=20.0, top_hz=50.0, derivatives=0, down=False):
    """A mode passed at an even rate between standstill and `top_hz`: z̈ + 2ζω₁ż + ω₁²z = (Ω² − jα)e^{jθ}."""
    time_s = np.arange(int(seconds * RATE_HZ)) / RATE_HZ
    rate, natural, damping, top = 2 * np.pi * top_hz / seconds, 2 * np.pi * hertz, 0.5 / quality, 2 * np.pi * top_hz
    turning = -rate if down else rate

    def speed(t):
        return top - rate * t if down else rate * t

    def angle(t):
        return top * t - 0.5 * rate * t * t if down else 0.5 * rate * t * t

    def force(t):
        return (speed(t) ** 2 - 1j * turning) * np.exp(1j * angle(t))

    def moved(t, y):
        return [y[1], force(t) - 2 * damping * natural * y[1] - natural**2 * y[0]]

    begin = [0j, 0j]
    if down:
        response = top**2 / (natural**2 - top**2 + 2j * damping * natural * top)
        begin = [response, 1j * top * response]
    whole = solve_ivp(
        moved, (0.0, seconds), begin, t_eval=time_s, method="DOP853", rtol=1e-9, atol=1e-11, max_step=2e-2
    )
    position, velocity = whole.y
    acceleration = force(time_s) - 2 * damping * natural * velocity - natural**2 * position
    motion = (position, velocity, acceleration)[derivatives]
    at = angle(time_s)
    number = np.arange(1, int(at.max() / (2 * np.pi)))
    root = np.sqrt(np.maximum(top**2 - 4 * np.pi * rate * number, 0.0)) if down else 0.0
    pulses = (top - root) / rate if down else np.sqrt(4 * np.pi * number / rate)
    turned = tach.number_revolutions(pulses[pulses < seconds] * RATE_HZ)
    return RunUp(time_s, motion * np.exp(-1j * at), at, turned, natural, damping, derivatives)


def moments(made, samples, highest_hz):
    """Samples (frames, channels) brought to the tracker's rate, and the shaft there."""
    reducer = tracking.reducer(RATE_HZ, highest_hz, samples.shape[1])
    reduced = reducer.feed(samples).astype(np.float64)
    inside = tracking.between_pulses(made.turned, reducer.first, reduced.shape[0], reducer.step)
    frames = (reducer.first + np.arange(reduced.shape[0], dtype=np.float64))[inside] * reducer.step
    return reduced[inside], tracking.motion(made.turned, RATE_HZ, frames)
