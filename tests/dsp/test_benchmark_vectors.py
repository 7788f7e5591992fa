"""Accuracy and coverage of the vectors over many seeds, textbook ways beside them.

Records of 12 s at 48 kHz: 2 % pulses with 30 dB pulse noise, 1x plus harmonics, 0.5 % speed wander, white noise.
"""

import multiprocessing

import moving
import numpy as np
import pytest
import signals
from figures.record import rms_error
from scipy.signal import lfilter
from scipy.stats import f as fisher
from stillshaft.dsp import measure, order, tach, vectors

SEEDS = 2000
TRUTH = (vectors.vector(0.3, 47.0), vectors.vector(0.15, 200.0))
NOISE = 0.03


def trial(seed):
    """Errors and half widths of amplitude (percent) and phase (degrees) of each point."""
    speed_rpm = float(np.random.default_rng(seed).uniform(900.0, 3600.0))
    samples = signals.record(12.0, speed_rpm, TRUTH, seed=seed, noise=NOISE)
    points = [signals.Channel(f"point {i}", i) for i in (1, 2)]
    measuring = measure.Measuring(signals.RATE_HZ, signals.Pulse(), points, "mm/s rms")
    measuring.feed(samples)
    rows = []
    for point, truth in zip(measuring.result().points, TRUTH, strict=True):
        amplitude, phase_deg = vectors.amplitude_phase(point.z)
        true_amplitude, true_phase = vectors.amplitude_phase(truth)
        rows.append(
            (
                100.0 * (amplitude / true_amplitude - 1.0),
                (phase_deg - true_phase + 180.0) % 360.0 - 180.0,
                100.0 * point.amplitude_ci95 / true_amplitude,
                point.phase_ci95_deg,
            )
        )
    return rows


@pytest.mark.benchmark
@pytest.mark.timeout(3600)
def test_intervals_cover_and_errors_stay_small(figure):
    count = figure.count(SEEDS)
    with multiprocessing.get_context("fork").Pool(2) as pool:
        rows = np.array(pool.map(trial, range(count), chunksize=min(25, count // 2)))
    error, half = np.abs(rows[..., :2]), rows[..., 2:]
    coverage = 100.0 * (error <= half).mean(axis=0)
    # Rife & Boorstyn 1974: each quadrature has a variance of at least 2 s²/N
    bound = 100.0 * NOISE * np.sqrt(2.0 / (12 * signals.RATE_HZ)) / np.abs(np.array(TRUTH))
    for p in range(len(TRUTH)):
        for q, (what, unit) in enumerate((("amplitude", "%"), ("phase", "°"))):
            figure(f"95 % interval of the {what} covers, point {p + 1}", coverage[p, q], "%", at_least=93.0, at_most=97.0,
                   nominal=95.0, cases=count, share=True)  # fmt: skip
            figure(f"worst error of the {what}, point {p + 1}", error[:, p, q].max(), unit, at_most=0.2, cases=count)
        figure(f"rms amplitude error over the bound of Rife & Boorstyn, point {p + 1}", rows[:, p, 0].std() / bound[p],
               cases=count, error=rms_error(rows[:, p, 0]) / bound[p], better="lower")  # fmt: skip
    parts = np.linspace(0.0, 100.0, 101)
    figure.plot("Amplitude error of 12 s, 30 dB pulse noise, 0.5 % wander", "share of the records, %", "error, %",
                [(f"point {p + 1}", parts, np.percentile(error[:, p, 0], parts)) for p in range(len(TRUTH))],
                y_from=0.0)  # fmt: skip


def resonant(rng, count):
    white = rng.standard_normal(count + 300) + 1j * rng.standard_normal(count + 300)
    return lfilter([1.0], [1.0, -0.9 * np.exp(0.1j * np.pi)], white)[300:]


NOISES = {
    "white": lambda rng, count: moving.coloured(rng, 0.0, count),
    "axes 1.3 : 0.3": lambda rng, count: 1.3 * rng.standard_normal(count) + 0.3j * rng.standard_normal(count),
    "AR(0.3)": lambda rng, count: moving.coloured(rng, 0.3, count),
    "AR(0.6)": lambda rng, count: moving.coloured(rng, 0.6, count),
    "AR(0.8)": lambda rng, count: moving.coloured(rng, 0.8, count),
    "resonance beside 1x": resonant,
}
BLOCKS = (8, 16, 32, 64, 128)


def region_covers(job):
    """For each number of blocks: coverage of the 95 % region, and of the textbook's scatter / √K, in percent."""
    name, seeds = job
    shares = []
    for count in BLOCKS:
        rng = np.random.default_rng(0)
        ours = textbook = 0
        limit = {}
        for _ in range(seeds):
            series = NOISES[name](rng, count)
            covariance, degrees = order.mean_covariance(series[:, None], np.ones(count))
            off = np.array([series.mean().real, series.mean().imag])
            limit.setdefault(degrees, 2 * degrees / (degrees - 1) * fisher.ppf(0.95, 2, degrees - 1))
            ours += off @ np.linalg.solve(covariance, off) <= limit[degrees]
            scatter = np.var(series.real, ddof=1) + np.var(series.imag, ddof=1)
            textbook += off @ off <= 0.5 * scatter / count * 2 * fisher.ppf(0.95, 2, 2 * count - 2)
        shares.append((100.0 * ours / seeds, 100.0 * textbook / seeds))
    return shares


@pytest.mark.benchmark
@pytest.mark.timeout(3600)
def test_regions_cover_in_noise_of_every_colour(figure):
    seeds = figure.count(SEEDS)
    with multiprocessing.get_context("fork").Pool(2) as pool:
        rows = pool.map(region_covers, [(name, seeds) for name in NOISES], chunksize=1)
    table = dict(zip(NOISES, rows, strict=True))
    for name, shares in table.items():
        for blocks, (ours, textbook) in zip(BLOCKS, shares, strict=True):
            two_sided = (
                blocks >= 64 and name != "resonance beside 1x"
            )  # short records and resonances get wide intervals
            figure(f"95 % region covers, {name}, {blocks} blocks", ours, "%", at_least=93.0, slack=0.5,
                   at_most=97.5 if two_sided else None, nominal=95.0 if two_sided else None,
                   textbook=("scatter over √blocks", textbook), cases=seeds, share=True)  # fmt: skip
    figure.plot(
        "Coverage of the 95 % region of a vector against the blocks in its record", "blocks", "covered, %",
        [(name, BLOCKS, [ours for ours, _ in shares]) for name, shares in table.items() if name != "axes 1.3 : 0.3"]
        + [("scatter over √blocks, AR(0.6)", BLOCKS, [textbook for _, textbook in table["AR(0.6)"]])],
        x_log=True, band=(93.0, 97.5),
    )  # fmt: skip


COLOURS = ("white", "pink", "brown", "resonance Q 20 on 1x", "resonance Q 50, 1 Hz above 1x")
_RATE_HZ, _HZ = 2048.0, 25.3


def coloured_samples(name, rng, frames):
    """Time-domain noise (frames,) of one unit of deviation."""
    white = rng.standard_normal(frames + 4096)
    if name == "white":
        return white[4096:]
    if name in ("pink", "brown"):
        spectrum = np.fft.rfft(white)
        spectrum[1:] /= np.arange(1, spectrum.size) ** (0.5 if name == "pink" else 1.0)
        spectrum[0] = 0.0
        x = np.fft.irfft(spectrum, white.size)[4096:]
        return x / x.std()
    hertz, quality = (_HZ, 20.0) if "Q 20" in name else (_HZ + 1.0, 50.0)
    pole = np.exp(2 * np.pi * hertz / _RATE_HZ * (1j - 0.5 / quality))
    x = lfilter([1.0], np.real(np.poly([pole, pole.conjugate()])), white)[4096:]
    return x / x.std()


def time_domain(job):
    """Coverage of region, amplitude and phase over records of 30 s, percent."""
    name, seeds = job
    inside = np.zeros(3)
    frames = int(30 * _RATE_HZ)
    pulses = np.arange(0.37, frames, _RATE_HZ / _HZ)
    turned = tach.number_revolutions(pulses)
    truth = np.exp(-1j * np.deg2rad(47.0))
    angle = 2 * np.pi * (np.arange(frames) - pulses[0]) * _HZ / _RATE_HZ
    for seed in range(seeds):
        rng = np.random.default_rng([seed, len(name)])
        x = (truth * np.exp(1j * angle)).real + 0.3 * coloured_samples(name, rng, frames)
        blocks = []
        for begin in range(0, turned.frames.size - 5, 4):
            first, beyond = int(np.ceil(turned.frames[begin])), int(np.ceil(turned.frames[begin + 4]))
            blocks.append(
                order.block_equations(x[first:beyond, None], angle[first:beyond], (1.0, 2.0, 3.0), 4, 0.0, 159.0)
            )
        pooled = order.pooled(blocks)
        off = complex(pooled.mean[0]) - truth.conjugate()
        region = np.array([off.real, off.imag])
        degrees = pooled.degrees_of_freedom
        limit = 2 * degrees / (degrees - 1) * fisher.ppf(0.95, 2, degrees - 1)
        along, across = vectors.half_widths(complex(pooled.mean[0]), pooled.covariance, degrees)
        amplitude, phase_deg = vectors.amplitude_phase(complex(pooled.mean[0]))
        inside += [
            region @ np.linalg.solve(pooled.covariance, region) <= limit,
            abs(amplitude - 1.0) <= along,
            across is None or abs(phase_deg - 47.0) <= across,
        ]
    return 100.0 * inside / seeds


@pytest.mark.benchmark
@pytest.mark.timeout(3600)
def test_time_domain_noise_is_covered(figure):
    seeds = figure.count(500)
    with multiprocessing.get_context("fork").Pool(2) as pool:
        table = dict(zip(COLOURS, pool.map(time_domain, [(c, seeds) for c in COLOURS], chunksize=1), strict=True))
    for name, shares in table.items():
        for what, value in zip(("region", "amplitude interval", "phase interval"), shares, strict=True):
            figure(f"95 % {what} covers, records of 30 s, {name}", value, "%", at_least=93.0 if what == "region" else None,
                   slack=1.0 if what == "region" else 0.0, better="higher", cases=seeds, share=True)  # fmt: skip


@pytest.mark.benchmark
def test_bias_without_noise_while_the_speed_drifts(figure):
    """27.3 Hz, 20.37 revolutions, harmonics 0.5 0.3 0.2 0.1, offset 0.3: against a bin of the trimmed record's FFT."""
    rate_hz, speed_hz, turns = 2048.0, 27.3, 20.37
    for drift in (0.0, 0.001, 0.01, 0.1):
        ours, textbook = [], []
        for start in np.linspace(0.0, 1.0, 12, endpoint=False):
            frames = int(turns / speed_hz * rate_hz)
            t = np.arange(-200, frames + 200) / rate_hz
            span = turns / speed_hz

            def turn(t, start=start, drift=drift, span=span):
                return start + speed_hz * (t + 0.5 * drift * t * (t / span - 1.0))

            fine = np.linspace(t[0], t[-1], 400_001)
            numbers = np.arange(np.ceil(turn(t[0])), np.floor(turn(t[-1])) + 1)
            at = np.interp(numbers, turn(fine), fine)
            for _ in range(3):  # Newton, to the last digit
                at = at - (turn(at) - numbers) / (speed_hz * (1.0 + drift * (at / span - 0.5)))
            turned = tach.number_revolutions((at - t[0]) * rate_hz)
            theta = 2 * np.pi * turn(t)
            x = 0.3 + np.cos(theta - np.deg2rad(47.0))
            for h, size in enumerate((0.5, 0.3, 0.2, 0.1), start=2):
                x = x + size * np.cos(h * theta - 0.7 * h)
            begin, end = 6, turned.frames.size - 7
            first, beyond = int(np.ceil(turned.frames[begin])), int(np.ceil(turned.frames[end]))
            angle = tach.angle_between(turned, begin, end)(np.arange(first, beyond, dtype=float))
            block = order.block_equations(
                x[first:beyond, None], angle, (1.0, 2.0, 3.0, 4.0, 5.0), end - begin, 0.0, 1.0
            )
            c = np.linalg.solve(block.gram, block.right)[:, 0]
            ours.append(vectors.amplitude_phase(c[0] + 1j * c[1]))
            piece = x[first:beyond]
            line = 2.0 / piece.size * np.conj(np.fft.rfft(piece)[end - begin])
            late = 2 * np.pi * (first - turned.frames[begin]) * (end - begin) / piece.size
            textbook.append(vectors.amplitude_phase(line * np.exp(1j * late)))
        errors = [
            (100 * np.abs(np.array(found)[:, 0] - 1.0).max(), np.abs(np.array(found)[:, 1] - 47.0).max())
            for found in (ours, textbook)
        ]
        for what, unit, ours_off, theirs_off in zip(("amplitude", "phase"), ("%", "°"), *errors, strict=True):
            figure(f"{what} bias without noise, speed drift {100 * drift:g} %, worst", ours_off, unit, at_most=1e-3,
                   textbook=("FFT bin of whole revolutions", theirs_off))  # fmt: skip
