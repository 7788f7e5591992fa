"""Edges against their bound, numbering of faulty pulses, cost of the least squares."""

import numpy as np
import pulses
import pytest
from figures.record import cpu_beside
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


def test_edges(figure):
    decibels = (20.0, 30.0, 40.0, 60.0)
    count = figure.count(5)  # records of four hundred edges
    curves = {}
    for rise_us in (0.0, 25.0, 50.0, 100.0, 200.0):
        table = pulses.edge_table(rise_us * 1e-6 * RATE_HZ)
        for ratio_db in decibels:
            ours, theirs, edge_count = [], [], 0
            deviation = 10 ** (-ratio_db / 20.0)
            for seed in range(count):
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
                edge_count += places.size
            bound = pulses.edge_bound(table, deviation, 19)
            ratio = np.sqrt(np.mean(np.square(ours))) / bound
            line = np.sqrt(np.mean(np.square(theirs))) / bound
            scatter = 1.0 / np.sqrt(2.0 * edge_count)  # of a deviation from so many independent edges, relative
            figure(
                f"edge deviation over the Cramér–Rao bound, rise {rise_us:g} µs, {ratio_db:g} dB", ratio,
                at_most=1.10 if ratio_db <= 40.0 else None, better="lower", textbook=("a straight line", line),
                cases=edge_count, error=ratio * scatter,
            )  # fmt: skip
            if ratio_db == 60.0:
                figure(f"edge deviation, rise {rise_us:g} µs, 60 dB", 1e6 * ratio * bound / RATE_HZ, "µs", at_most=0.1,
                       textbook=("a straight line", 1e6 * line * bound / RATE_HZ), cases=edge_count,
                       error=1e6 * ratio * bound / RATE_HZ * scatter)  # fmt: skip
            curves.setdefault(f"rise {rise_us:g} µs", []).append(ratio)
            curves.setdefault(f"straight line, rise {rise_us:g} µs", []).append(line)
    told = [n for n in curves if not n.startswith("straight")] + ["straight line, rise 0 µs"]
    figure.plot("Edge deviation over the Cramér–Rao bound against the pulse's signal-to-noise ratio", "dB",
                "deviation / bound", [(n, decibels, curves[n]) for n in told], y_log=True)  # fmt: skip


def test_numbering(figure):
    count = figure.count(100)
    for kind in ("steady", "uneven", "run-up"):
        for faults in ((0.03, 0.02, 0.02), (0.10, 0.05, 0.05), (0.0, 0.0, 0.0)):
            right = lost = true = caught = spurious = 0
            for seed in range(count):
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
            said = f"{kind}, {100 * faults[0]:g} % missing, {100 * faults[1]:g} % double, {100 * faults[2]:g} % stray"
            figure(f"records numbered right, {said}", 100 * right / count, "%", cases=count, share=True, better="higher",
                   at_least=None if faults[0] > 0.05 else 99.0)  # fmt: skip
            # the pulses of a record share its fate: their shares are shown and not compared
            figure(f"true pulses left out, {said}", 100 * lost / true, "%", cases=count)
            if spurious:
                figure(f"spurious pulses left out, {said}", 100 * caught / spurious, "%", cases=count)


def test_cost_of_the_least_squares(figure):
    """8 channels at 192 kHz and 3000 r/min, 5 harmonics; CPU time, median of 9, a plain sum beside it."""
    rate_hz, per_second = 192_000.0, 2.0 * np.pi * 50.0
    frames = int(0.08 * rate_hz)
    rng = np.random.default_rng(0)
    samples = rng.standard_normal((frames, 8)).astype(np.float32)
    harmonics = (1.0, 2.0, 3.0, 4.0, 5.0)

    def angle(at):
        return per_second / rate_hz * at

    def compressed():
        return order.compressed_equations(samples, angle, harmonics, 4, 0.0, per_second, rate_hz)

    def direct():
        return order.block_equations(samples, angle(np.arange(frames)), harmonics, 4, 0.0, per_second)

    def often(act):
        return lambda: [act() for _ in range(50)]

    ours, plain = cpu_beside(often(compressed), often(samples.sum), 9)
    theirs, _ = cpu_beside(often(direct), often(samples.sum), 9)
    figure.cost("least squares of 80 ms, 8 channels × 192 kHz, 5 harmonics", ours / 50, ("one sum of them", plain / 50),
                wanted_s=0.01 * 0.08, textbook=("direct", theirs / 50))  # fmt: skip
    figure("its time over the direct way's", ours / theirs, at_most=0.5)
    a, b = compressed(), direct()
    apart = np.abs(np.linalg.solve(a.gram, a.right) - np.linalg.solve(b.gram, b.right)).max()
    figure("compressed and direct vectors differ by", apart, "of full scale", at_most=1e-5)
