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
