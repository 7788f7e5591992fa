"""What the signal processing costs, in passes over the data and shares of a core: `pytest -m benchmark -s`.

CPU time, median of 7 and more, a plain sum over the same data timed in the same run.
"""

import statistics
import time

import numpy as np
import pytest
import signals
from scipy.signal import resample_poly
from signals import Channel, Pulse
from stillshaft.dsp import average, measure, order, spectrum, tach

pytestmark = [pytest.mark.benchmark, pytest.mark.timeout(3600)]


def cpu(what, count=7):
    times = []
    for _ in range(count):
        begin = time.process_time()
        what()
        times.append(time.process_time() - begin)
    return statistics.median(times)


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


def test_measuring_live(capsys):
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

    whole, levels, plain = cpu(run), cpu(level), cpu(lambda: samples.sum())
    with capsys.disabled():
        print(  # noqa: T201
            f"\nmeasuring 8 channels × 192 kHz: {100 * whole / seconds:.2f} % of a core, the level's part "
            f"{100 * levels / seconds:.2f} %, one np.sum {100 * plain / seconds:.2f} %"
        )


def test_ten_minutes_offline(capsys):
    """8 channels × 51.2 kHz × 10 min by pieces of 65536, 5 harmonics; the textbook brings it to 1/32 of the rate first."""
    rate_hz, seconds = 51_200.0, 600.0
    piece = played(rate_hz, 65_536 * 9 / rate_hz, 8)
    count = round(seconds * rate_hz / len(piece))
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

    pass_s, vectors_s, all_s = cpu(lambda: piece.sum()), cpu(vectors), cpu(everything)
    textbook = cpu(lambda: resample_poly(vibration, 1, 32, axis=0))
    with capsys.disabled():
        print(  # noqa: T201
            f"\n10 min × 8 × 51.2 kHz: vectors {vectors_s / pass_s:.1f} passes (wanted 20), with pulses and level "
            f"{all_s / pass_s:.1f}; resample_poly to 1/32 {textbook / pass_s:.0f}; one pass {1e3 * count * pass_s:.0f} ms, "
            f"all of it {seconds / (count * all_s):.0f} × real time"
        )
    assert vectors_s < textbook


def test_streaming_and_offline_agree(capsys):
    samples = signals.record(12.0, 1480.0, [0.3j, 0.2 + 0.1j], noise=0.01)
    results = []
    for size in (777, 4096, len(samples)):
        m = measure.Measuring(signals.RATE_HZ, Pulse(), [Channel("a", 1), Channel("b", 2)], "mm/s rms")
        for i in range(0, len(samples), size):
            m.feed(samples[i : i + size])
        results.append(np.array([p.z for p in m.result().points]))
    apart = max(np.abs(r / results[-1] - 1.0).max() for r in results)
    with capsys.disabled():
        print(f"\npieces of 777, 4096 and all at once differ by {apart:.1e} (wanted 1e-5)")  # noqa: T201
    assert apart < 1e-5


def test_synchronous_average(capsys):
    rate_hz, seconds = 48_000.0, 20.0
    samples = played(rate_hz, seconds, 8)[:, 1:]
    turned = tach.number_revolutions(np.arange(100.0, len(samples), 960.13))

    def run():
        a = average.SynchronousAverager(turned, 8)
        for i in range(0, len(samples), 65_536):
            a.feed(samples[i : i + 65_536])
        a.result()

    with capsys.disabled():
        print(f"\nsynchronous average, 8 channels, 512 points: {seconds / cpu(run):.0f} × real time (wanted 40)")  # noqa: T201
