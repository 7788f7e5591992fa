"""The steadiness verdict and the cleaned vector by the thousand, a plain mean beside it."""

import multiprocessing
from collections import Counter

import moving
import numpy as np
import pytest
from figures.record import rms_error
from moving import BLOCKS, PLACE, SPEEDS, TIMES, V
from stillshaft.dsp import steadiness

pytestmark = [pytest.mark.benchmark, pytest.mark.timeout(3600)]


def judged(series, speeds=SPEEDS):
    return steadiness.judge(series, TIMES, speeds, 4 * BLOCKS)


def still(rng, memory):
    return V + 0.25 * moving.coloured(rng, memory)


BEATS = (0.25, 0.35, 0.5, 0.75, 1.0, 1.5, 4.0)
LONG_BEATS = (0.35, 0.5, 1.0, 4.0)
# what is played, how often, which verdict or cause is right, share wanted in percent (None: no target)
CASES = {
    "white noise": (lambda r: still(r, 0.0), 4000, {"steady"}, 99.0),
    "AR(0.3) noise": (lambda r: still(r, 0.3), 4000, {"steady"}, 99.0),
    "AR(0.5) noise": (lambda r: still(r, 0.5), 4000, {"steady"}, 99.0),
    "white noise, wandering speed": (lambda r: (still(r, 0.0), moving.wandering_speed(r)), 4000, {"steady"}, 99.0),
    "AR(0.3) noise, wandering speed": (lambda r: (still(r, 0.3), moving.wandering_speed(r)), 4000, {"steady"}, 99.0),
    "AR(0.5) noise, wandering speed": (lambda r: (still(r, 0.5), moving.wandering_speed(r)), 4000, {"steady"}, None),
    "resonance, speed": (moving.beside_a_resonance, 200, {"speed"}, 98.0),
    **{
        f"source of 2 deviations, {n} beat": (lambda r, n=n: moving.beat(r, 0.5, n, 0.25), 1000, {"warned"}, 99.0)
        for n in BEATS
    },
    **{
        f"source of 5 deviations, AR(0.6), {n} beat": (
            lambda r, n=n: moving.beat(r, 0.5, n, 0.1, 0.6), 1000, {"warned"}, 99.0,
        )
        for n in LONG_BEATS
    },
    **{
        f"source of 5 deviations, {n} beat, by name": (lambda r, n=n: moving.beat(r, 0.5, n, 0.1), 400, {"beating"}, None)
        for n in (0.5, 0.75, 1.0, 2.0)
    },
    "line": (moving.line, 400, {"trend"}, 98.0),
    "settling": (moving.settling, 400, {"settling"}, 98.0),
    "random walk": (moving.walk, 400, {"wander", "trend", "settling"}, None),
    "1/f": (moving.flicker, 1000, {"wander", "trend", "settling"}, None),
    "narrow band": (moving.narrow_band, 400, {"narrow-band", "steady"}, None),
    "line, not as a beat": (moving.line, 1000, {"no beat"}, 99.0),
    "random walk, not as a beat": (moving.walk, 2000, {"no beat"}, 99.0),
}  # fmt: skip


def share(job):
    name, count = job
    make, _, right, _ = CASES[name]
    found = Counter()
    for seed in range(count):
        made = make(np.random.default_rng(seed))
        s = judged(*made) if isinstance(made, tuple) else judged(made)
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


def test_verdicts(figure):
    jobs = [(name, figure.count(case[1])) for name, case in CASES.items()]
    with multiprocessing.get_context("fork").Pool(2) as pool:
        shares = dict(zip(CASES, pool.map(share, jobs, chunksize=1), strict=True))
    for (name, count), value in zip(jobs, shares.values(), strict=True):
        right, wanted = CASES[name][2:]
        alarm = right == {"steady"}  # said the way the trade counts it: alarms where nothing is wrong
        slack = 1.0 if right == {"warned"} else 0.5
        figure(
            f"false alarms, {name}" if alarm else f"seen, {name}" if right == {"warned"} else f"right, {name}",
            100.0 - value if alarm else value,
            "%",
            at_most=100.0 - wanted if alarm and wanted else None,
            at_least=None if alarm else wanted,
            slack=0.0 if wanted is None else slack,
            cases=count,
            share=True,
            better="lower" if alarm else "higher",
        )
    found = {
        "source of 2 deviations": [(n, shares[f"source of 2 deviations, {n} beat"]) for n in BEATS],
        "source of 5 deviations, AR(0.6)": [
            (n, shares[f"source of 5 deviations, AR(0.6), {n} beat"]) for n in LONG_BEATS
        ],
    }
    alarms = 100.0 - shares["white noise"]
    figure.plot(
        "A second source seen, and false alarms, against the beats in the record", "beats in the record", "%",
        [(name, *zip(*rows, strict=True)) for name, rows in found.items()]
        + [("false alarms without a source, white noise", (BEATS[0], BEATS[-1]), (alarms, alarms))],
        x_log=True, y_from=0.0, band=(99.0, 100.0),
    )  # fmt: skip


def test_cleaned_vectors(figure):
    deviation, count = 0.1, figure.count(600)
    ratios, textbook = {}, {}
    for beats in (0.5, 0.75, 1.0, 1.5, 3.0):
        errors, plain, inside = [], [], 0
        for seed in range(count):
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
        textbook[beats] = np.sqrt(np.mean(np.square(plain))) / least
        figure(
            f"cleaned vector, rms error over its bound, {beats:g} beats", ratios[beats], at_most=1.2,
            textbook=("plain mean", textbook[beats]), cases=len(errors), error=rms_error(errors) / least,
        )  # fmt: skip
        figure(
            f"95 % interval of the cleaned amplitude covers, {beats:g} beats", 100 * inside / len(errors), "%",
            cases=len(errors), share=True, nominal=95.0,
        )  # fmt: skip
        figure(
            f"second source taken out, {beats:g} beats", 100 * len(errors) / count, "%", cases=count, share=True,
            better="higher",
        )  # fmt: skip
    figure.plot(
        "Error of the cleaned vector over its bound, the plain mean beside it", "beats in the record", "rms error / bound",
        [(name, list(rows), list(rows.values())) for name, rows in (("cleaned", ratios), ("plain mean", textbook))],
        x_log=True, y_log=True,
    )  # fmt: skip
