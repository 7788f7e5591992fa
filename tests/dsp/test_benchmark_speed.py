"""What the signal processing costs, in passes of a plain sum over the same data, timed in turns in the same run."""

import numpy as np
import pytest
import signals
from figures.record import cpu_beside
from scipy.signal import resample_poly
from signals import Channel, Pulse
from stillshaft.dsp import average, measure, order, spectrum, tach

pytestmark = [pytest.mark.benchmark, pytest.mark.timeout(3600)]


def played(rate_hz, seconds, channels, speed_rpm=3000.0):
    """Pulse and so many vibrations, float32, written out here."""
    angle = 2 * np.pi * speed_rpm / 60.0 * np.arange(int(seconds * rate_hz)) / rate_hz + 1.0
    turn = angle / (2 * np.pi)
    part = (turn - np.floor(turn)) * 60.0 * rate_hz / speed_rpm
    columns = [0.5 / (1.0 + np.exp(np.clip(part - 0.02 * 60.0 * rate_hz / speed_rpm, -60.0, 60.0)))]
    rng = np.random.default_rng(0)
    columns += [0.3 * np.cos(angle - c) + 0.01 * rng.standard_normal(angle.size) for c in range(channels)]
    return np.column_stack(columns).astype(np.float32)


def measuring(rate_hz, channels):
    return measure.Measuring(rate_hz, Pulse(), [Channel(f"p{c}", c + 1) for c in range(channels)], "mm/s rms")


def test_measuring_live(figure):
    """All of it, 8 channels at 192 kHz in pieces of 4096: pulses, vectors of 5 harmonics, broadband level."""
    rate_hz, seconds = 192_000.0, 8.0
    samples = played(rate_hz, seconds, 8)

    def run():
        m = measuring(rate_hz, 8)
        for i in range(0, len(samples), 4096):
            m.feed(samples[i : i + 4096])

    def level():
        s = spectrum.AveragedSpectrum(rate_hz, 8)
        for i in range(0, len(samples), 4096):
            s.feed(samples[i : i + 4096, 1:])

    for name, act in (("all of it", run), ("the level's part", level)):
        taken, plain = cpu_beside(act, samples.sum)
        figure.cost(f"measuring 8 channels × 192 kHz for 8 s, {name}", taken, ("one sum over the samples", plain))


def test_ten_minutes_offline(figure):
    """8 channels × 51.2 kHz by pieces of 65536, 5 harmonics; the textbook brings it to 1/32 of the rate first."""
    rate_hz = 51_200.0
    piece = played(rate_hz, 65_536 * 9 / rate_hz, 8)
    vibration = np.ascontiguousarray(piece[:, 1:])
    revolution = 60.0 * rate_hz / 3000.0
    pulses = np.arange(0.4, len(piece), revolution)
    turned = tach.number_revolutions(pulses)

    def vectors():
        for start in range(0, turned.frames.size - 65, 64):  # as many revolutions as a piece holds share a spline
            angle = tach.angle_between(turned, start, start + 64)
            for begin in range(start, start + 64, 8):
                first, beyond = int(np.ceil(turned.frames[begin])), int(np.ceil(turned.frames[begin + 8]))
                order.compressed_equations(
                    vibration[first:beyond], lambda at, f=first, a=angle: a(at + f), (1.0, 2.0, 3.0, 4.0, 5.0), 8, 0.0,
                    2 * np.pi * 50.0, rate_hz,
                )  # fmt: skip

    def everything():
        m = measuring(rate_hz, 8)
        for i in range(0, len(piece), 65_536):
            m.feed(piece[i : i + 65_536])
        m.result()

    kernel = "one sum over the samples"
    vectors_s, pass_s = cpu_beside(vectors, piece.sum)
    textbook_s, _ = cpu_beside(lambda: resample_poly(vibration, 1, 32, axis=0), piece.sum, 3)
    figure.cost(
        "vectors of 8 channels × 51.2 kHz offline, 5 harmonics", vectors_s, (kernel, pass_s), at_most=20.0,
        textbook=("brought to 1/32 of the rate by resample_poly", textbook_s),
    )  # fmt: skip
    figure("their time over the textbook's", vectors_s / textbook_s, at_most=1.0)
    all_s, pass_s = cpu_beside(everything, piece.sum)
    figure.cost("the same with pulses and level", all_s, (kernel, pass_s))


def test_streaming_and_offline_agree(figure):
    samples = signals.record(12.0, 1480.0, [0.3j, 0.2 + 0.1j], noise=0.01)
    results = []
    for size in (777, 4096, len(samples)):
        m = measure.Measuring(signals.RATE_HZ, Pulse(), [Channel("a", 1), Channel("b", 2)], "mm/s rms")
        for i in range(0, len(samples), size):
            m.feed(samples[i : i + size])
        results.append(np.array([p.z for p in m.result().points]))
    apart = max(np.abs(r / results[-1] - 1.0).max() for r in results)
    figure("vectors from pieces of 777, 4096 and all at once, largest difference", apart, "of each", at_most=1e-5)


def test_synchronous_average(figure):
    rate_hz, seconds = 48_000.0, 20.0
    samples = played(rate_hz, seconds, 8)[:, 1:]
    turned = tach.number_revolutions(np.arange(100.0, len(samples), 960.13))

    def run():
        a = average.SynchronousAverager(turned, 8)
        for i in range(0, len(samples), 65_536):
            a.feed(samples[i : i + 65_536])
        a.result()

    taken, plain = cpu_beside(run, samples.sum)
    figure.cost(
        "synchronous average of 20 s, 8 channels, 512 points", taken, ("one sum over the samples", plain),
        wanted_s=seconds / 40.0,
    )  # fmt: skip
