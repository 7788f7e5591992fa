"""The steadiness verdict and the cleaned vector by the thousand, a plain mean beside it: `pytest -m benchmark -s`."""

import multiprocessing
from collections import Counter

import moving
import numpy as np
import pytest
from moving import BLOCKS, PLACE, SPEEDS, TIMES, V
from stillshaft.dsp import steadiness

pytestmark = [pytest.mark.benchmark, pytest.mark.timeout(3600)]


def judged(series, speeds=SPEEDS):
    return steadiness.judge(series, TIMES, speeds, 4 * BLOCKS)


def still(rng, memory):
    return V + 0.25 * moving.coloured(rng, memory)


# what is played, how often, which verdict or cause is right, share wanted in percent (None: no target)
CASES = {
    "white noise": (lambda r: still(r, 0.0), 4000, {"steady"}, 99.0),
    "AR(0.3) noise": (lambda r: still(r, 0.3), 4000, {"steady"}, 99.0),
    "AR(0.5) noise": (lambda r: still(r, 0.5), 4000, {"steady"}, 99.0),
    **{
        f"source of 2 deviations, {n} beat": (lambda r, n=n: moving.beat(r, 0.5, n, 0.25), 1000, {"warned"}, 99.0)
        for n in (0.25, 0.35, 0.5, 0.75, 1.0, 1.5, 4.0)
    },
    **{
        f"source of 5 deviations, AR(0.6), {n} beat": (
            lambda r, n=n: moving.beat(r, 0.5, n, 0.1, 0.6), 1000, {"warned"}, 99.0,
        )
        for n in (0.35, 0.5, 1.0, 4.0)
    },
    **{
        f"the same called a beat, {n} beat": (lambda r, n=n: moving.beat(r, 0.5, n, 0.1), 400, {"beating"}, None)
        for n in (0.5, 0.75, 1.0, 2.0)
    },
    "line": (moving.line, 400, {"trend"}, 98.0),
    "settling": (moving.settling, 400, {"settling"}, 98.0),
    "random walk": (moving.walk, 400, {"wander", "trend", "settling"}, None),
    "1/f": (moving.flicker, 1000, {"wander", "trend", "settling"}, None),
    "narrow band": (moving.narrow_band, 400, {"narrow-band", "steady"}, None),
    "called a beat: line": (moving.line, 1000, {"no beat"}, 99.0),
    "called a beat: random walk": (moving.walk, 2000, {"no beat"}, 99.0),
}  # fmt: skip


def share(name):
    make, count, right, _ = CASES[name]
    found = Counter()
    for seed in range(count):
        s = judged(make(np.random.default_rng(seed)))
        words = {s.verdict, s.cause or "", "steady" if s.verdict == "steady" else "warned"}
        words |= set() if s.verdict in ("beating", "walking") else {"no beat"}
        found["right"] += bool(words & right)
    return 100.0 * found["right"] / count


def bound(beats):
    """Deviation of V over s/√K where the source, its phase and its offset are unknown: inverse of the information."""
    turning = np.exp(2j * np.pi * beats * PLACE)
    k = np.arange(BLOCKS) - 0.5 * (BLOCKS - 1)
    columns = np.column_stack([np.ones(BLOCKS), 1j * np.ones(BLOCKS), turning, 1j * turning, 1j * k * turning])
    covariance = np.linalg.inv((columns.conj().T @ columns).real)
    return np.sqrt(0.5 * BLOCKS * (covariance[0, 0] + covariance[1, 1]))


def test_verdicts(capsys):
    with multiprocessing.get_context("fork").Pool(2) as pool:
        shares = dict(zip(CASES, pool.map(share, CASES, chunksize=1), strict=True))
    rows = [f"{'what is played':44} right %   wanted"]
    for name, value in shares.items():
        wanted = CASES[name][3]
        rows.append(f"{name:44} {value:7.1f}   {'-' if wanted is None else f'{wanted:g}'}")
    with capsys.disabled():
        print("\n" + "\n".join(rows))  # noqa: T201
    assert min(shares[n] for n in ("white noise", "AR(0.3) noise", "AR(0.5) noise")) >= 98.5
    assert min(v for n, v in shares.items() if CASES[n][2] == {"warned"}) >= 98.0


def test_cleaned_vectors(capsys):
    rows = ["beats   error of V over its bound   plain mean over it   95 % interval covers   (wanted 1.2 from 0.5)"]
    deviation = 0.1
    ratios = {}
    for beats in (0.5, 0.75, 1.0, 1.5, 3.0):
        errors, plain, inside = [], [], 0
        for seed in range(600):
            series = moving.beat(np.random.default_rng(seed), 1.0, beats, deviation)
            beat = judged(series).beat
            if beat is None:
                continue
            errors.append(abs(beat.cleaned - V))
            plain.append(abs(series.mean() - V))
            half = beat.cleaned_half_widths()[0]
            inside += abs(abs(beat.cleaned) - abs(V)) <= half
        # both quadratures together: √2 of one
        least = np.sqrt(2.0) * deviation / np.sqrt(BLOCKS) * bound(beats)
        ratios[beats] = np.sqrt(np.mean(np.square(errors))) / least
        rows.append(
            f"{beats:5} {ratios[beats]:20.2f} {np.sqrt(np.mean(np.square(plain))) / least:26.1f} "
            f"{100 * inside / len(errors):20.1f} %   seen {len(errors)} of 600"
        )
    with capsys.disabled():
        print("\n" + "\n".join(rows))  # noqa: T201
    assert max(ratios.values()) <= 1.2
