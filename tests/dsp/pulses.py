"""Pulse signals with edges at known places, written out here so that the edge finder cannot check itself."""

import numpy as np
from scipy.signal import fftconvolve, lfilter

RATE_HZ = 48_000.0
_FINE = 64  # table points in a sample
_HALF = 48  # samples on each side of an edge


def edge_table(rise_samples, cutoff=0.4535):
    """A linear rise through an ideal anti-alias filter, on a fine grid: places in samples and values."""
    fine = np.arange(-(_HALF + 30) * _FINE, (_HALF + 30) * _FINE + 1) / _FINE
    ramp = np.clip(fine / rise_samples + 0.5, 0.0, 1.0) if rise_samples > 0 else (fine > 0.0) + 0.5 * (fine == 0.0)
    kernel_at = np.arange(-24 * _FINE, 24 * _FINE + 1) / _FINE
    kernel = np.sinc(2.0 * cutoff * kernel_at) * np.kaiser(kernel_at.size, 9.0)
    filtered = fftconvolve(ramp, kernel / kernel.sum(), mode="same")
    inside = np.abs(fine) <= _HALF
    return fine[inside], filtered[inside]


def pulses(places, width, frames, table):
    """Pulses from 0 to 1 whose leading edges are half-way up at `places` (samples)."""
    x = np.zeros(frames)
    for place in places:
        at = np.arange(max(0, int(place) - 45), min(frames, int(place + width) + 46))
        x[at] += np.interp(at - place, *table) - np.interp(at - place - width, *table)
    return x


def coupled(x, corner_hz, rate_hz=RATE_HZ):
    """Through an AC coupling."""
    pole = np.exp(-2.0 * np.pi * corner_hz / rate_hz)
    return lfilter([1.0, -1.0], [1.0, -pole], x)


def edge_bound(table, deviation, samples_beside):
    """Cramér–Rao bound of an edge's place, foot and height unknown (Kay, Estimation Theory 1993)."""
    slope = np.gradient(table[1], table[0])
    variances = []
    for part in np.linspace(0.0, 1.0, 8, endpoint=False):
        at = np.arange(-samples_beside, samples_beside + 1) + part
        value, rate = np.interp(at, *table), np.interp(at, table[0], slope)
        known = np.column_stack([np.ones_like(value), value])
        own = rate - known @ np.linalg.lstsq(known, rate, rcond=None)[0]
        variances.append(deviation**2 / np.sum(own**2))
    return float(np.sqrt(np.mean(variances)))


def turning_marks(kind, rng, missing=0.0, double=0.0, stray=0.0, rate_hz=RATE_HZ):
    """Times in samples of marks in steady, cyclically uneven or accelerating running, and each one's number or −1."""
    t = np.arange(0.0, 10.0 if kind == "run-up" else 20.0, 1e-4)
    rpm = 300.0 + 270.0 * t if kind == "run-up" else np.full(t.size, 1500.0)
    turns = np.cumsum(rpm / 60.0) * 1e-4
    number = np.arange(1, int(turns[-1]))
    true = np.interp(number, turns, t)
    period = np.gradient(true)
    if kind == "uneven":
        true = true + 0.01 * np.sqrt(2.0) * period * np.sin(0.37 * number + rng.uniform(0.0, 6.0))
    kept = rng.random(number.size) > missing
    again = true[kept][rng.random(np.count_nonzero(kept)) < double]
    again = again + rng.uniform(0.01, 0.05, again.size) * np.interp(again, true, period)
    strays = rng.uniform(true[0], true[-1], rng.binomial(number.size, stray))
    times = np.concatenate([true[kept], again, strays])
    labels = np.concatenate([number[kept], np.full(again.size + strays.size, -1)])
    order = np.argsort(times)
    return times[order] * rate_hz, labels[order]
