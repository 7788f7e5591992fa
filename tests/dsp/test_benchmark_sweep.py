"""Tracker and resonances against the equation of motion, textbook ways beside them: `pytest -m benchmark -s`."""

import statistics
import time

import numpy as np
import pytest
import run_ups
from stillshaft.dsp import tracking
from test_sweep import analysed, noisy
from test_tracking import errors, rms

pytestmark = [pytest.mark.benchmark, pytest.mark.timeout(3600)]


def sixteen_revolutions(made, x):
    """The textbook's way: least squares of cos θ and sin θ over 16 revolutions, a hop of one: speeds, vectors."""
    angle, speeds, found = made.angle, [], []
    for first in range(int(angle[-1] / (2 * np.pi)) - 16):
        span = (angle >= 2 * np.pi * first) & (angle < 2 * np.pi * (first + 16))
        design = np.column_stack([np.ones(span.sum()), np.cos(angle[span]), np.sin(angle[span])])
        c = np.linalg.lstsq(design, x[span], rcond=None)[0]
        found.append(c[1] - 1j * c[2])
        speeds.append(np.ptp(angle[span]) / np.ptp(made.time_s[span]))
    return np.array(speeds), np.array(found)


def half_power(speeds, envelope):
    """The textbook's resonance: where the curve peaks, and the width at 0.707 of the peak."""
    size = np.abs(envelope)
    top = int(size.argmax())
    above = size >= size[top] / np.sqrt(2.0)
    left = top - int(np.argmin(above[top::-1])) + 1 if not above[: top + 1].all() else 0
    right = top + int(np.argmin(above[top:])) - 1 if not above[top:].all() else size.size - 1
    return speeds[top], speeds[top] / (speeds[right] - speeds[left])


def test_the_tracker(capsys):
    made = run_ups.run_up()
    peak = np.abs(made.envelope).max()
    rows = [
        "noise % of peak   rms %   worst %   phase °   16 revolutions, worst %   (wanted 0.2, 0.8, 0.5; 0.8 rms at 5)"
    ]
    for share in (0.0, 0.05, 0.3):
        off, phase_deg, textbook = [], [], []
        for seed in range(8):
            x = made.vibration + share * peak * np.random.default_rng(seed).standard_normal(made.vibration.size)
            found = tracking.track(*run_ups.moments(made, x[:, None], 50.0))
            o, p = errors(found, made)
            off, phase_deg = [*off, o], [*phase_deg, p]
        speeds, vectors = sixteen_revolutions(made, x)
        rate = 2 * np.pi * 50.0 / 20.0
        at = speeds / rate
        there = np.interp(at, made.time_s, made.envelope.real) + 1j * np.interp(at, made.time_s, made.envelope.imag)
        textbook = 100 * np.abs(vectors - there) / peak
        rows.append(
            f"{100 * share:10.0f} {rms(np.concatenate(off)):12.2f} {np.max(np.concatenate(off)):9.2f} "
            f"{rms(np.concatenate(phase_deg)):9.2f} {textbook.max():20.1f}"
        )
    samples, moved = run_ups.moments(made, made.vibration[:, None], 50.0)
    plain, tracked = [], []
    for _ in range(9):
        begin = time.process_time()
        tracking.track(samples, moved)
        tracked.append(time.process_time() - begin)
        begin = time.process_time()
        np.fft.rfft(made.vibration)
        plain.append(time.process_time() - begin)
    rows.append(
        f"tracking 20 s: {1e3 * statistics.median(tracked):.1f} ms (wanted 20), "
        f"one rfft of it {1e3 * statistics.median(plain):.1f} ms"
    )
    with capsys.disabled():
        print("\n" + "\n".join(rows))  # noqa: T201


def test_a_tone_that_is_crossed(capsys):
    made = run_ups.run_up()
    tone = 0.2 * np.abs(made.envelope).max() * np.cos(2 * np.pi * 31.3 * made.time_s + 1.0)
    samples, moved = run_ups.moments(made, (made.vibration + tone)[:, None], 150.0)
    alone, _ = errors(tracking.track(samples, moved), made)
    beside, _ = errors(tracking.track(samples, moved, (1.0, 2.0, 3.0), 31.3), made)
    said = f"tone beside: rms {rms(beside):.2f}, worst {beside.max():.2f} % (wanted 2.2); alone {alone.max():.0f} %"
    with capsys.disabled():
        print(f"\n{said}")  # noqa: T201
    assert beside.max() <= 2.2


def test_resonances(capsys):
    rows = [
        "seconds  number   speed error %   ± covers   Q error %   ± covers   half-power of the curve: speed %, Q %   (Q 20)"
    ]
    for seconds in (5.0, 10.0, 20.0, 60.0):
        made = run_ups.run_up(seconds=seconds, derivatives=2)
        speed, quality, inside, number = [], [], np.zeros(2), 0.0
        for seed in range(60):
            (r,) = analysed(made, noisy(made, 0.05, seed)).points[0].resonances
            speed.append(100 * (r.rpm.value / 1500.0 - 1.0))
            quality.append(100 * (r.amplification.value / 20.0 - 1.0))
            inside += [
                abs(r.rpm.value - 1500.0) <= r.rpm.ci95,
                abs(r.amplification.value - 20.0) <= r.amplification.ci95,
            ]
            number = r.sweep_number
        speeds = 60 * np.gradient(made.angle, made.time_s) / 2 / np.pi
        displacement = made.envelope / np.maximum(speeds, 1.0) ** 2
        top, q = half_power(speeds[speeds > 300.0], displacement[speeds > 300.0])
        rows.append(
            f"{seconds:6.0f} {number:8.2f} {rms(np.array(speed)):12.3f} {100 * inside[0] / 60:10.0f} % "
            f"{rms(np.array(quality)):10.2f} {100 * inside[1] / 60:9.0f} % {100 * (top / 1500 - 1):16.1f} "
            f"{100 * (q / 20 - 1):14.0f}"
        )
    with capsys.disabled():
        print("\n" + "\n".join(rows))  # noqa: T201
