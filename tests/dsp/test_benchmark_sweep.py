"""Tracker and resonances against the equation of motion, textbook ways beside them."""

import numpy as np
import pytest
import run_ups
from figures.baseline import DEVIATIONS
from figures.record import cpu_beside, rms_error
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


def test_the_tracker(figure):
    made = run_ups.run_up()
    peak = np.abs(made.envelope).max()
    wanted = {0.0: (0.2, 0.8, 0.5), 0.05: (0.8, None, None), 0.3: (None, None, None)}  # rms %, worst %, phase °
    for share, (most_rms, most, most_deg) in wanted.items():
        seeds = 1 if share == 0.0 else 8
        off, phase_deg = [], []
        for seed in range(seeds):
            x = made.vibration + share * peak * np.random.default_rng(seed).standard_normal(made.vibration.size)
            found = tracking.track(*run_ups.moments(made, x[:, None], 50.0))
            o, p = errors(found, made)
            off, phase_deg = [*off, o], [*phase_deg, p]
        speeds, vectors = sixteen_revolutions(made, x)
        rate = 2 * np.pi * 50.0 / 20.0
        at = speeds / rate
        there = np.interp(at, made.time_s, made.envelope.real) + 1j * np.interp(at, made.time_s, made.envelope.imag)
        textbook = 100 * np.abs(vectors - there) / peak
        said = f"order tracked in a run-up, noise {100 * share:g} % of the peak"
        whole = np.concatenate(off)
        # the errors of a record follow each other: its rms is one case
        by_record = [rms(o) for o in off]
        scatter = float(np.std(by_record, ddof=1) / np.sqrt(seeds)) if seeds > 1 else 0.0
        figure(f"{said}, rms error", rms(whole), "% of the peak", at_most=most_rms, better="lower",
               slack=DEVIATIONS * scatter, error=scatter if seeds > 1 else None)  # fmt: skip
        figure(f"{said}, worst error", whole.max(), "% of the peak", at_most=most,
               textbook=("16 revolutions at a time", textbook.max()))  # fmt: skip
        figure(f"{said}, rms phase", rms(np.concatenate(phase_deg)), "°", at_most=most_deg)
    samples, moved = run_ups.moments(made, made.vibration[:, None], 50.0)
    tracked, plain = cpu_beside(lambda: tracking.track(samples, moved), lambda: np.fft.rfft(made.vibration), 9)
    figure.cost("tracking 20 s", tracked, ("an FFT of the record", plain), wanted_s=0.020)


def test_a_tone_that_is_crossed(figure):
    made = run_ups.run_up()
    tone = 0.2 * np.abs(made.envelope).max() * np.cos(2 * np.pi * 31.3 * made.time_s + 1.0)
    samples, moved = run_ups.moments(made, (made.vibration + tone)[:, None], 150.0)
    alone, _ = errors(tracking.track(samples, moved), made)
    beside, _ = errors(tracking.track(samples, moved, (1.0, 2.0, 3.0), 31.3), made)
    figure("a fixed tone of 20 % crossed and tracked beside, worst error", beside.max(), "% of the peak", at_most=2.2,
           textbook=("the orders tracked alone", alone.max()))  # fmt: skip
    figure("a fixed tone of 20 % crossed and tracked beside, rms error", rms(beside), "% of the peak",
           textbook=("the orders tracked alone", rms(alone)))  # fmt: skip


def test_resonances(figure):
    seeds = figure.count(60)
    numbers, speed_off, quality_off, half_off = [], [], [], []
    for seconds in (5.0, 10.0, 20.0, 60.0):
        made = run_ups.run_up(seconds=seconds, derivatives=2)
        speed, quality, inside, number = [], [], np.zeros(2), 0.0
        for seed in range(seeds):
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
        for what, off, covered, textbook in (
            ("speed", speed, inside[0], ("peak of the curve", abs(100 * (top / 1500 - 1)))),
            ("amplification", quality, inside[1], ("half-power width of the curve", abs(100 * (q / 20 - 1)))),
        ):  # fmt: skip
            said = f"{what} of a resonance of Q 20, sweep of {seconds:g} s"
            figure(f"{said}, rms error", rms(np.array(off)), "%", cases=seeds, error=rms_error(off), better="lower",
                   textbook=textbook)  # fmt: skip
            figure(f"{said}, 95 % interval covers", 100 * covered / seeds, "%", cases=seeds, share=True, nominal=95.0)
        numbers.append(number)
        speed_off.append(rms(np.array(speed)))
        quality_off.append(rms(np.array(quality)))
        half_off.append(abs(100 * (q / 20 - 1)))
    figure.plot("Errors of a resonance against the sweep number", "sweep number", "error, %",
                [("speed, rms", numbers, speed_off), ("amplification, rms", numbers, quality_off),
                 ("amplification from the half-power width", numbers, half_off)], x_log=True, y_log=True)  # fmt: skip
