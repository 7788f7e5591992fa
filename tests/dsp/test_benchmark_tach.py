"""Edges against their bound, numbering of faulty pulses, cost of the least squares: `pytest -m benchmark -s`."""

import statistics
import time

import numpy as np
import pulses
import pytest
from pulses import RATE_HZ
from stillshaft.dsp import edges, order, tach

pytestmark = [pytest.mark.benchmark, pytest.mark.timeout(3600)]


def straight_line(x, level=0.5):
    """The textbook's way: where a straight line between two samples passes one level."""
    up = np.flatnonzero((x[:-1] < level) & (x[1:] >= level))
    return up + (level - x[up]) / (x[up + 1] - x[up])


def spread(found, places):
    nearest = np.clip(np.searchsorted(places, found), 1, places.size - 1)
    nearest -= np.abs(places[nearest - 1] - found) < np.abs(places[nearest] - found)
    off = found - places[nearest]
    return float(off[np.abs(off) < 20.0][2:].std())


def test_edges(capsys):
    rows = ["rise us  dB   bound us   ours / bound   straight line / bound   (wanted 1.10)"]
    for rise_us in (0.0, 25.0, 50.0, 100.0, 200.0):
        table = pulses.edge_table(rise_us * 1e-6 * RATE_HZ)
        for ratio_db in (20.0, 30.0, 40.0, 60.0):
            ours, theirs = [], []
            deviation = 10 ** (-ratio_db / 20.0)
            for seed in range(5):
                rng = np.random.default_rng(seed)
                places = np.arange(60.3, 8 * RATE_HZ - 200, 960.0)
                places = places + 0.37 * np.sin(np.arange(places.size))
                x = pulses.pulses(places, 19.2, int(8 * RATE_HZ), table)
                x = x + deviation * rng.standard_normal(x.size)
                follower = edges.EdgeFollower(RATE_HZ, "rising")
                for i in range(0, x.size, 4800):
                    follower.feed(x[i : i + 4800])
                follower.finish()
                ours.append(spread(tach.number_revolutions(*follower.take()).frames, places))
                theirs.append(spread(straight_line(x), places))
            bound = pulses.edge_bound(table, deviation, 19)
            rows.append(
                f"{rise_us:7.0f} {ratio_db:4.0f} {1e6 * bound / RATE_HZ:9.3f} "
                f"{np.sqrt(np.mean(np.square(ours))) / bound:13.2f} {np.sqrt(np.mean(np.square(theirs))) / bound:20.2f}"
            )
    with capsys.disabled():
        print("\n" + "\n".join(rows))  # noqa: T201


def test_numbering(capsys):
    rows = ["kind     missing/double/stray   records numbered right (wanted 99 %)   true left out   spurious left out"]
    for kind in ("steady", "uneven", "run-up"):
        for faults in ((0.03, 0.02, 0.02), (0.10, 0.05, 0.05), (0.0, 0.0, 0.0)):
            right = lost = true = caught = spurious = 0
            for seed in range(100):
                frames, labels = pulses.turning_marks(kind, np.random.default_rng(seed), *faults)
                try:
                    turned = tach.number_revolutions(frames)
                except edges.TachError:
                    continue
                label = labels[np.searchsorted(frames, turned.frames)]
                right += np.ptp((turned.numbers - label)[label >= 0]) == 0
                used = np.isin(frames, turned.frames)
                lost, true = lost + np.count_nonzero(~used[labels >= 0]), true + np.count_nonzero(labels >= 0)
                caught, spurious = caught + np.count_nonzero(~used[labels < 0]), spurious + np.count_nonzero(labels < 0)
            rows.append(
                f"{kind:8} {faults}   {right} of 100   {100 * lost / true:.3f} %   {100 * caught / max(1, spurious):.2f} %"
            )
    with capsys.disabled():
        print("\n" + "\n".join(rows))  # noqa: T201


def test_cost_of_the_least_squares(capsys):
    """8 channels at 192 kHz and 3000 r/min, 5 harmonics; CPU time, median of 9, a plain sum beside it."""
    rate_hz, per_second = 192_000.0, 2.0 * np.pi * 50.0
    frames = int(0.08 * rate_hz)
    rng = np.random.default_rng(0)
    samples = rng.standard_normal((frames, 8)).astype(np.float32)
    harmonics = (1.0, 2.0, 3.0, 4.0, 5.0)

    def cpu(what):
        times = []
        for _ in range(9):
            begin = time.process_time()
            for _ in range(50):
                what()
            times.append((time.process_time() - begin) / 50.0)
        return statistics.median(times)

    def angle(at):
        return per_second / rate_hz * at

    ours = cpu(lambda: order.compressed_equations(samples, angle, harmonics, 4, 0.0, per_second, rate_hz))
    direct = cpu(lambda: order.block_equations(samples, angle(np.arange(frames)), harmonics, 4, 0.0, per_second))
    plain = cpu(lambda: samples.sum())
    a = order.compressed_equations(samples, angle, harmonics, 4, 0.0, per_second, rate_hz)
    b = order.block_equations(samples, angle(np.arange(frames)), harmonics, 4, 0.0, per_second)
    apart = np.abs(np.linalg.solve(a.gram, a.right) - np.linalg.solve(b.gram, b.right)).max()
    with capsys.disabled():
        print(f"\nshare of a core {100 * ours / 0.08:.2f} % (wanted 1), direct {100 * direct / 0.08:.2f} %, ")  # noqa: T201
        print(f"one np.sum {100 * plain / 0.08:.2f} %; differ by {apart:.1e} (wanted 1e-5)")  # noqa: T201
    assert apart < 1e-5
    assert ours < 0.5 * direct
