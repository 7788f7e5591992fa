"""How fast pieces are placed, how near the proof comes, and the handbook's split beside it: `pytest -m benchmark -s`.

Six sizes of 2 to 30 g with two to six pieces each, 15 % of the positions blocked, at most two pieces and 40 g a position,
four pieces a plane; points as many as planes, twice and four times as many in turn. Residuals are in % of the initial.
"""

import collections
import statistics
import time

import numpy as np
import pytest
from placing import job
from stillshaft.solver.pieces import handbook
from stillshaft.solver.placement import PROVEN, choose

pytestmark = [pytest.mark.benchmark, pytest.mark.timeout(3600)]


def least_squares_s(base, influence):
    """CPU time of one numpy.linalg.lstsq of the job's size: what a kernel of this machine takes now."""
    started = time.process_time()
    for _ in range(2000):
        np.linalg.lstsq(influence, base, rcond=None)
    return (time.process_time() - started) / 2000


def at_most_four_a_plane(choice):
    """Whether the proof is meant for this choice."""
    return all(count <= 4 for count in collections.Counter(x.plane for x in choice.pieces).values())


def table_row(planes, positions, jobs):
    """Times, reference kernels, gaps, excesses over the continuous optimum, and pieces of one size of job."""
    row = {name: [] for name in ("s", "kernel", "gap", "excess", "split", "split pieces", "match", "proposal")}
    for seed in range(jobs):
        base, influence, places, stock = job(seed, planes, positions, planes * (1, 2, 4)[seed % 3])
        started = time.process_time()
        curve = choose(base, influence, places, stock)
        row["s"].append(time.process_time() - started)
        row["kernel"].append(least_squares_s(base, influence))
        percent = 100.0 / curve.scale
        row["gap"].append(max(percent * (c.largest - c.bound) for c in curve.choices if at_most_four_a_plane(c)))
        row["excess"].append(percent * (curve.best.largest - curve.continuous))
        pieces, largest = handbook(base, influence, np.ones(base.size), places, stock)
        row["split"].append(percent * (largest - curve.continuous))
        row["split pieces"].append(pieces)
        row["match"].append(len(curve.fewest(largest).pieces))
        row["proposal"].append(len(curve.fewest(curve.best.largest + 0.01 * curve.scale).pieces))
    return row


SIZES = [
    (1, 8, 40, 0.5), (1, 24, 40, 0.5), (1, 36, 40, 0.5), (2, 8, 40, 8.0), (2, 12, 40, 8.0), (2, 24, 40, 8.0),
    (2, 36, 40, 8.0), (3, 12, 12, None), (3, 24, 12, None), (4, 12, 9, None),
]  # fmt: skip


def test_the_table(capsys):
    lines = [
        "planes x positions   CPU s med/max (wanted)   / lstsq    gap med/max (0.2)   excess med/p90   "
        "split: med/p90, pieces   as good as the split   within 1 % of the best"
    ]
    for planes, positions, jobs, wanted in SIZES:
        row = table_row(planes, positions, jobs)
        ninety = {k: float(np.percentile(v, 90)) for k, v in row.items()}
        middle = {k: statistics.median(v) for k, v in row.items()}
        mean = {k: statistics.fmean(v) for k, v in row.items()}
        lines.append(
            f"{planes} x {positions:<3} {middle['s']:13.2f} / {max(row['s']):.2f} ({wanted or '-'})"
            f"{middle['s'] / middle['kernel']:14.0f} {middle['gap']:12.3f} / {max(row['gap']):.3f}"
            f"{middle['excess']:12.2f} / {ninety['excess']:.2f} {middle['split']:10.1f} / {ninety['split']:.1f}, "
            f"{mean['split pieces']:.1f} {mean['match']:20.1f} {mean['proposal']:20.1f}"
        )
        if wanted is not None:
            assert max(row["s"]) <= wanted
            assert max(row["gap"]) <= 100.0 * PROVEN * (1.0 + 1e-9)
        assert all(m <= p for m, p in zip(row["match"], row["split pieces"], strict=True))
    with capsys.disabled():
        print("\n" + "\n".join(lines))  # noqa: T201
