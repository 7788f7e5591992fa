"""Series of short-time vectors that move in known ways, for the steadiness tests and figures."""

import numpy as np
from scipy.signal import fftconvolve, lfilter

BLOCKS = 64
V = 10.0 * np.exp(0.7j)
TIMES = 0.16 * np.arange(BLOCKS)
SPEEDS = np.full(BLOCKS, 157.0)
PLACE = np.arange(BLOCKS) / BLOCKS


def coloured(rng, memory=0.0, count=BLOCKS):
    """Complex first-order autoregressive noise, one unit of deviation per component."""
    white = rng.standard_normal(count + 300) + 1j * rng.standard_normal(count + 300)
    return lfilter([1.0], [1.0, -memory], white)[300:] * np.sqrt(1.0 - memory**2)


def phase(rng):
    return np.exp(1j * rng.uniform(0.0, 2 * np.pi))


def beat(rng, size, beats, deviation, memory=0.0):
    return V + size * phase(rng) * np.exp(2j * np.pi * beats * PLACE) + deviation * coloured(rng, memory)


def line(rng):
    return V + 0.5 * (PLACE - 0.5) * phase(rng) + 0.1 * coloured(rng)


def settling(rng):
    return V + 0.5 * np.exp(-PLACE / 0.2) * phase(rng) + 0.1 * coloured(rng)


def with_speed(rng):
    speeds = 157.0 * (1.0 + 0.002 * np.cumsum(rng.standard_normal(BLOCKS)) / 8.0)
    return V + 0.5 * (speeds - 157.0) / np.ptp(speeds) * phase(rng) + 0.1 * coloured(rng), speeds


def wandering_speed(rng):
    """A governor's slow swing and what is left to chance."""
    swing = 1e-3 * np.sin(2 * np.pi * rng.uniform(0.05, 0.6) * TIMES + rng.uniform(0.0, 2 * np.pi))
    return 157.0 * (1.0 + swing) + 0.02 * coloured(rng, 0.8).real


def beside_a_resonance(rng, damping=0.02):
    """1x of a resonance 3 % above a speed that swings by 0.2 % every 3 s, its transient integrated; noise of 0.5 %."""
    step_s, every = 1e-3, 160
    t = step_s * np.arange(BLOCKS * every)
    speed = 157.0 * (1.0 + 0.002 * np.sin(2 * np.pi * 0.31 * t + rng.uniform(0.0, 2 * np.pi)))
    # x = Re(z·e^jφ), x'' + 2ζω0·x' + ω0²·x = speed²·cos φ, with z'' small: a first-order equation in z
    own = 157.0 * 1.03
    z = np.empty(t.size, dtype=np.complex128)
    z[0] = speed[0] ** 2 / (own**2 - speed[0] ** 2 + 2j * damping * own * speed[0])
    for k in range(t.size - 1):
        w = speed[k]
        stiff, rate = own**2 - w * w + 2j * damping * own * w, 2.0 * (damping * own + 1j * w)
        z[k + 1] = z[k] * np.exp(-stiff / rate * step_s) + w * w / stiff * (1.0 - np.exp(-stiff / rate * step_s))
    blocks = z.reshape(BLOCKS, every).mean(axis=1)
    size = abs(blocks.mean())
    return blocks / size + 0.005 * coloured(rng), speed.reshape(BLOCKS, every).mean(axis=1)


def walk(rng):
    steps = rng.standard_normal(BLOCKS) + 1j * rng.standard_normal(BLOCKS)
    return V + np.cumsum(steps) / 16.0 + 0.1 * coloured(rng)


def narrow_band(rng):
    white = rng.standard_normal(BLOCKS + 300) + 1j * rng.standard_normal(BLOCKS + 300)
    return V + 0.1 * lfilter([1.0], [1.0, -0.9 * np.exp(0.3j * np.pi)], white)[300:]


def modulated(rng):
    return V * (1.0 + 0.05 * np.cos(6 * np.pi * PLACE + rng.uniform(0.0, 6.0))) + 0.1 * coloured(rng)


def flicker(rng, count=BLOCKS, exponent=1.0):
    """Noise with a power of 1/f^exponent, which has no mean: fractional differences (Granger & Joyeux 1980)."""
    k = np.arange(1, 2000)
    kernel = np.concatenate([[1.0], np.cumprod((k - 1.0 + 0.5 * exponent) / k)])
    white = rng.standard_normal(2000 + count) + 1j * rng.standard_normal(2000 + count)
    return V + 0.3 * fftconvolve(white, kernel)[2000 : 2000 + count]
