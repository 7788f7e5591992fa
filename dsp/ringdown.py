"""Bump test: natural frequencies and damping of a standing machine from how it rings down after a blow.

Textbooks read the width of a peak at half its power, which the length of the record and the window widen. Here the
decays themselves are fitted: a matrix pencil over all points of a hit finds the poles (Hua & Sarkar, IEEE Trans. ASSP
1990, from memory), and least squares with the amplitudes projected out refines them (Golub & Pereyra, SIAM J. Numer.
Anal. 1973, from memory).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import decimate, standing
from stillshaft.dsp.channels import PointChannel, PulseChannel
from stillshaft.dsp.units import InputError

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

_BLOCK_S = 0.002  # the record is looked through for hits in steps of this length
_BEFORE_S = 0.12  # a hit stands out of the highest level for so long before it
_RISE, _OVER_NOISE = 3.0, 12.0  # over that level; over the quiet parts of the record
_BOUNCE_S = 0.15  # a second blow so soon is the hammer bouncing
_CONTACT_S = 0.01  # that the hammer may still touch
_LONGEST_S = 6.0
_CYCLES = 3.0  # of the lowest frequency asked for, at the least
_QUIET_S = 0.1
_END_OVER_NOISE = 2.0  # a decay is cut where its level has come down to so many times the noise's
_LEAST_NOISE = 1e-4  # of the largest value: what is quieter is no better known
_FEWEST_SAMPLES = 24
_MOST_SAMPLES = 900  # of a decay: more say little new
_MOST_MODES = 6
_MEDIAN_SINGULAR = 2.86  # a singular value above so many medians is no noise (Gavish & Donoho 2014, from memory)
_DAMPING_LIMITS = (3e-4, 0.3)
_LEAST_SHARE = 0.02  # of the strongest mode's energy at some point
_LEAST_KNOWN = 0.2  # relative deviation of frequency, and half of that of damping, above which a mode is not believed
_SAME = 0.03  # part by which the frequency of one mode may differ from hit to hit
_SEEN_IN = 0.5  # of the hits
_FULL_SCALE = 0.999
_FEW_HITS = 3


class RingDownError(InputError):
    """A bump test that tells nothing: the message says why and what to do."""


@dataclass(frozen=True)
class NaturalMode:
    """A natural frequency (undamped) and damping ratio ζ with 95 % half widths, over `hits` hits.

    `strength` is its largest part of the energy of the decays at any point, `point` where that is.
    """

    frequency_hz: float
    frequency_ci95_hz: float
    damping_ratio: float
    damping_ci95: float
    hits: int
    strength: float
    point: str

    @property
    def rpm(self) -> float:
        """The running speed that would excite it."""
        return 60.0 * self.frequency_hz

    @property
    def amplification(self) -> float:
        """Q = 1/(2ζ)."""
        return 0.5 / self.damping_ratio


@dataclass(frozen=True)
class RingDown:
    """Modes from `lowest_hz` to `highest_hz`, lowest first; `hits_s` are the moments of the hits used.

    `warnings` say which hits were left out and why, and what the intervals do not know.
    """

    modes: tuple[NaturalMode, ...]
    hits_s: tuple[float, ...]
    lowest_hz: float
    highest_hz: float
    warnings: tuple[str, ...]


@dataclass(frozen=True)
class _Fitted:
    """Modes of one hit: natural frequencies in Hz and damping ratios (modes,), variances of their logarithms, energies.

    `energy` (modes, points) is the part of each point's energy.
    """

    frequency_hz: Real
    damping: Real
    variance: Real
    energy: Real


class Struck:
    """A bump test, one blow or several, from samples (frames, inputs) in units of digital full scale, piece by piece.

    Of the samples only what finds the hits and fits the decays is kept. A pulse input shows whether the machine stood.
    """

    def __init__(
        self,
        rate_hz: float,
        points: Sequence[PointChannel],
        pulse: PulseChannel | None = None,
        lowest_hz: float = 3.0,
        highest_hz: float = 200.0,
    ) -> None:
        """Raises RingDownError for frequencies that cannot be told at this sample rate."""
        if not 0.0 < lowest_hz < highest_hz <= 0.25 * rate_hz:
            raise RingDownError(
                f"{lowest_hz:g} to {highest_hz:g} Hz: give two frequencies above 0, up to a quarter of the sample rate, "
                f"{0.25 * rate_hz:g} Hz"
            )
        self._rate_hz, self._lowest_hz, self._highest_hz = rate_hz, lowest_hz, highest_hz
        self._names, self._inputs = [p.name for p in points], [p.index for p in points]
        self._turning = None if pulse is None else standing.Turning(pulse, rate_hz)
        self._reducer = decimate.Decimator(rate_hz, highest_hz, len(points))
        self._reduced: list[NDArray[np.float32]] = []
        self._block = max(1, round(_BLOCK_S * rate_hz))
        self._waiting = np.empty((0, len(points)))
        self._before: Real | None = None  # the last sample in a whole block
        self._blocks: list[_Blocks] = []
        self._frames = 0

    def feed(self, samples: NDArray[np.floating]) -> None:
        """Take the next samples (frames, inputs). Raises RingDownError for samples that are not finite."""
        if self._turning is not None:
            self._turning.feed(samples)
        x = np.asarray(samples, dtype=np.float64)[:, self._inputs]
        if not np.isfinite(x).all():
            raise RingDownError("a sample is not finite: the recording is damaged; record again")
        self._frames += x.shape[0]
        self._reduced.append(self._reducer.feed(x))
        waiting = np.concatenate([self._waiting, x])
        whole = waiting.shape[0] // self._block * self._block
        self._waiting = waiting[whole:]
        if whole:
            before = waiting[:1] if self._before is None else self._before
            self._blocks.append(_blocks(waiting[:whole], before, self._block))
            self._before = waiting[whole - 1 : whole]

    def result(self) -> RingDown:
        """Natural frequencies and damping.

        Raises RingDownError for a record without a clear hit, overloaded, or too short, and for a machine that turned.
        """
        if self._turning is not None:
            try:
                self._turning.refuse()
            except standing.StandingError as error:
                raise RingDownError(str(error)) from None
        seconds = self._frames / self._rate_hz
        least_s = 2.0 * _BEFORE_S + _CYCLES / self._lowest_hz
        if seconds < least_s:
            raise RingDownError(
                f"{seconds:.2f} s: need {least_s:.1f} s or more, with quiet before the hit; record longer"
            )
        parts = zip(*((b.mean, b.power, b.low, b.high, b.step, b.step_power) for b in self._blocks), strict=True)
        blocks = _Blocks(*(np.concatenate(part) for part in parts))
        middle = np.median(blocks.mean, axis=0)
        slow = _slow(np.concatenate(self._reduced) - middle, self._reducer, self._rate_hz)
        return self._of_hits(_hits(blocks, middle, self._block / self._rate_hz, slow), blocks, slow, seconds)

    def _of_hits(self, hits: Sequence[float], blocks: _Blocks, slow: _Slow, whole_s: float) -> RingDown:
        decays, kept, warnings = [], [], []
        block_s = self._block / self._rate_hz
        for number, begin_s in enumerate(hits):
            end_s = hits[number + 1] - 2.0 * _BLOCK_S if number + 1 < len(hits) else whole_s
            last_s = min(end_s, begin_s + _LONGEST_S)
            near = slice(max(0, round((begin_s - _BOUNCE_S) / block_s)), round(last_s / block_s))
            if max(-blocks.low[near].min(), blocks.high[near].max()) >= _FULL_SCALE:
                warnings.append(f"the hit at {begin_s:.1f} s is overloaded and left out: hit softer or lower the gain")
                continue
            wanted_s = _CYCLES / self._lowest_hz + _CONTACT_S + 2.0 * slow.reach_s
            if end_s - begin_s < wanted_s:
                warnings.append(
                    f"the hit at {begin_s:.1f} s has {end_s - begin_s:.2f} s to ring out and is left out: from "
                    f"{self._lowest_hz:g} Hz on {wanted_s:.1f} s are needed; wait longer between the hits, or ask for a "
                    "higher lowest frequency"
                )
                continue
            decays.append(_decay(slow, begin_s, last_s))
            kept.append(begin_s)
        if not decays:
            raise RingDownError(f"no hit can be used: {warnings[0]}")
        fitted = [
            f
            for d in decays
            if d.shape[0] >= _FEWEST_SAMPLES
            and (f := _fitted(d, slow.step_s, self._lowest_hz, self._highest_hz)) is not None
        ]
        modes = _over_hits(fitted, self._names)
        if not modes:
            raise RingDownError(
                f"nothing rings between {self._lowest_hz:g} and {self._highest_hz:g} Hz after {len(decays)} hits: hit harder "
                "with a softer, heavier hammer, or ask for other frequencies"
            )
        if len(fitted) < _FEW_HITS:
            warnings.append(
                f"{len(fitted)} {'hit' if len(fitted) == 1 else 'hits'}: the intervals know nothing of what differs from hit "
                f"to hit; hit {_FEW_HITS} times or more"
            )
        return RingDown(modes, tuple(kept), self._lowest_hz, self._highest_hz, tuple(warnings))


# hits


@dataclass(frozen=True)
class _Blocks:
    """Of each block (blocks, points): mean, mean square, lowest and highest sample; largest and mean square step."""

    mean: Real
    power: Real
    low: Real
    high: Real
    step: Real
    step_power: Real


def _blocks(x: Real, before: Real, size: int) -> _Blocks:
    """Whole blocks of samples (frames, points), the sample before them (1, points)."""
    shaped = x.reshape(-1, size, x.shape[1])
    steps = np.diff(x, axis=0, prepend=before).reshape(shaped.shape)
    return _Blocks(
        shaped.mean(axis=1), np.mean(shaped**2, axis=1), shaped.min(axis=1), shaped.max(axis=1),
        np.abs(steps).max(axis=1), np.mean(steps**2, axis=1),
    )  # fmt: skip


def _hits(blocks: _Blocks, middle: Real, block_s: float, slow: _Slow) -> list[float]:
    """Moments in s where free decays begin; blows too soft for the whole band are looked for in the reduced record."""
    # a blow stands out of what still rings by its steepness
    power = np.maximum(blocks.power - 2.0 * middle * blocks.mean + middle**2, 0.0)
    levels = (
        _levels(np.maximum(blocks.high - middle, middle - blocks.low), power),
        _levels(blocks.step, blocks.step_power),
    )
    begins = [at * block_s for at in _onsets(levels, max(1, round(_BEFORE_S / block_s)))]
    if not begins:
        softly = _levels(np.abs(slow.x), slow.x**2)
        # the low pass shows a blow before it comes
        late = slow.first * slow.step_s + slow.reach_s
        begins = [late + at * slow.step_s for at in _onsets((softly,), max(1, round(_BEFORE_S / slow.step_s)))]
    if not begins:
        raise RingDownError(
            f"no clear hit: the loudest moment is {float(levels[0].max()):.1f} times the quiet level; a hit rises in a moment "
            f"to {_OVER_NOISE:g} times that level and to {_RISE:g} times whatever was before; let it stand still for a second, "
            "then hit once and wait until it has rung out"
        )
    apart: list[float] = []
    for moment in begins:
        if apart and moment - apart[-1] < _BOUNCE_S:
            apart[-1] = moment
        else:
            apart.append(moment)
    return apart


def _onsets(levels: Sequence[Real], before: int) -> list[int]:
    """Places where any of the levels rises in a moment; `before` places are looked back over."""
    found: list[int] = []
    at = before
    while at < levels[0].size:
        if any(v[at] > _OVER_NOISE and v[at] > _RISE * v[at - before : at].max() for v in levels):
            at += int(np.argmax(levels[0][at : at + 5]))
            found.append(at)
        at += 1
    return found


def _levels(highest: Real, power: Real) -> Real:
    """Highest value of each block (blocks, points) over the noise, of the point where it stands out most."""
    noise = np.maximum(np.quantile(np.sqrt(power), 0.1, axis=0), 1e-12)
    return np.asarray((highest / noise).max(axis=1))


@dataclass(frozen=True)
class _Slow:
    """The record at a lower rate; what was at one moment reaches `reach_s` to either side."""

    x: Real
    first: int
    step_s: float
    reach_s: float
    noise: Real  # deviation of each point in the quiet parts


def _slow(reduced: NDArray[np.floating], reducer: decimate.Decimator, rate_hz: float) -> _Slow:
    x = np.asarray(reduced, dtype=np.float64)
    step_s = reducer.step / rate_hz
    block = max(4, round(_QUIET_S / step_s))
    shaped = x[: x.shape[0] // block * block].reshape(-1, block, x.shape[1])
    noise = np.quantile(np.sqrt(np.mean(shaped**2, axis=1)), 0.1, axis=0)
    return _Slow(x, reducer.first, step_s, reducer.first * step_s, np.asarray(noise))


def _decay(slow: _Slow, begin_s: float, end_s: float) -> Real:
    """The free decay (samples, points) after one hit, down to the noise; points in units of their noise."""
    first = math.ceil((begin_s + _CONTACT_S + slow.reach_s) / slow.step_s) - slow.first
    beyond = math.floor((end_s - slow.reach_s) / slow.step_s) - slow.first
    x = slow.x[max(0, first) : max(0, beyond)]
    if x.shape[0] < _FEWEST_SAMPLES:
        return x[:0]
    x = x / np.maximum(slow.noise, _LEAST_NOISE * float(np.abs(x).max()) + 1e-300)
    width = max(4, x.shape[0] // 40)
    pieces = x[: x.shape[0] // width * width].reshape(-1, width, x.shape[1])
    loud = np.flatnonzero((np.sqrt(np.mean(pieces**2, axis=1)) > _END_OVER_NOISE).any(axis=1))
    return x[: (int(loud[-1]) + 2) * width] if loud.size else x[:0]


def _fitted(x: Real, step_s: float, lowest_hz: float, highest_hz: float) -> _Fitted | None:
    """Modes of one decay (samples, points)."""
    poles = _poles(x[:_MOST_SAMPLES], step_s)
    natural, damping = np.abs(poles), -poles.real / np.abs(poles)
    usable = (poles.imag > 0.0) & (damping > _DAMPING_LIMITS[0]) & (damping < _DAMPING_LIMITS[1])
    usable &= natural > 0.5 * 2.0 * np.pi * lowest_hz
    natural, damping = natural[usable], damping[usable]
    if not natural.size:
        return None
    energy = _energies(x, step_s, natural, damping)
    strong = np.argsort(-energy.max(axis=1))[:_MOST_MODES]
    strong = np.array([i for i in strong if energy[i].max() > _LEAST_SHARE * energy.max()])
    natural, damping, variance = _refined(x, step_s, natural[strong], damping[strong])
    energy = _energies(x, step_s, natural, damping)
    frequency = natural / (2.0 * np.pi)
    believed = (np.sqrt(variance[:, 0]) < _LEAST_KNOWN) & (np.sqrt(variance[:, 1]) < 2.0 * _LEAST_KNOWN)
    believed &= (frequency >= lowest_hz) & (frequency <= highest_hz)
    believed &= (damping > _DAMPING_LIMITS[0]) & (damping < _DAMPING_LIMITS[1])
    if not believed.any():
        return None
    return _Fitted(frequency[believed], damping[believed], variance[believed], energy[believed])


def _poles(x: Real, step_s: float) -> Complex:
    """Poles in rad/s that all points share: the matrix pencil of the points' Hankel matrices side by side."""
    count = x.shape[0]
    pencil = count // 3
    rows = np.lib.stride_tricks.sliding_window_view(x, pencil + 1, axis=0)  # (count − pencil, points, pencil + 1)
    stacked = rows.reshape(-1, pencil + 1)
    gram = stacked.T @ stacked
    squares, vectors = np.linalg.eigh(gram)
    singular = np.sqrt(np.maximum(squares[::-1], 0.0))
    order = int(np.count_nonzero(singular > _MEDIAN_SINGULAR * np.median(singular)))
    order = max(2, min(order, 4 * _MOST_MODES, pencil // 2))
    kept = vectors[:, ::-1][:, :order]
    turning = np.linalg.eigvals(np.linalg.lstsq(kept[:-1], kept[1:], rcond=None)[0])
    turning = turning[np.abs(turning) > 1e-6]
    return np.asarray(np.log(turning.astype(np.complex128)) / step_s)


def _columns(count: int, step_s: float, natural: Real, damping: Real) -> Real:
    """Decaying cosine and sine of each mode, and a constant (samples, 2·modes + 1)."""
    t = np.arange(count) * step_s
    turned = np.exp(np.outer(t, -damping * natural + 1j * natural * np.sqrt(1.0 - damping**2)))
    return np.column_stack([turned.real, turned.imag, np.ones(count)])


def _energies(x: Real, step_s: float, natural: Real, damping: Real) -> Real:
    """Part of each point's energy that each mode has (modes, points)."""
    columns, modes = _columns(x.shape[0], step_s, natural, damping), natural.size
    weights = np.linalg.lstsq(columns, x, rcond=None)[0]
    whole = np.maximum(np.sum(x**2, axis=0), 1e-300)
    return np.array(
        [np.sum((columns[:, [k, modes + k]] @ weights[[k, modes + k]]) ** 2, axis=0) / whole for k in range(modes)]
    )


def _refined(x: Real, step_s: float, natural: Real, damping: Real) -> tuple[Real, Real, Real]:
    """Least squares over all points; with the variances (modes, 2) of ln natural and ln damping."""
    from scipy.optimize import least_squares

    modes, count = natural.size, x.shape[0]

    def left(logs: Real) -> Real:
        columns = _columns(count, step_s, np.exp(logs[:modes]), np.minimum(np.exp(logs[modes:]), 0.9))
        basis = np.linalg.qr(columns)[0]
        return np.asarray(weighted - basis @ (basis.T @ weighted)).ravel()

    begin = np.log(np.concatenate([natural, damping]))
    weighted = x
    weighted = x / np.maximum(left(begin).reshape(x.shape).std(axis=0), 1e-9)  # points as far as each is known
    found = least_squares(left, begin, method="lm" if x.size > 2 * modes else "trf", xtol=1e-10)
    residual = left(found.x).reshape(x.shape)
    natural, damping = np.exp(found.x[:modes]), np.exp(found.x[modes:])
    lost = (2 * modes + 1) * x.shape[1] + 2 * modes
    information = np.linalg.pinv(found.jac.T @ found.jac)
    variance = np.diag(information) * (np.sum(residual**2) / max(1, residual.size - lost))
    variance = variance.reshape(2, modes).T * _colour(residual, step_s, natural)[:, None]
    return natural, damping, np.asarray(variance)


def _colour(residual: Real, step_s: float, natural: Real) -> Real:
    """Noise about each mode's frequency over the noise of all frequencies (modes,), at the least a third."""
    power = np.mean(np.abs(np.fft.rfft(residual, axis=0)) ** 2, axis=1)[1:]
    frequency = np.fft.rfftfreq(residual.shape[0], step_s)[1:]
    ratios = []
    for f in (natural / (2.0 * np.pi)).tolist():
        near = np.abs(np.log(frequency / f)) < math.log(1.4)
        if np.count_nonzero(near) < 8:
            near = np.argsort(np.abs(frequency - f))[:8]
        ratios.append(max(1.0 / 3.0, float(power[near].mean() / max(power.mean(), 1e-300))))
    return np.array(ratios)


def _over_hits(fitted: Sequence[_Fitted], names: Sequence[str]) -> tuple[NaturalMode, ...]:
    """Modes that show in at least half of the hits, their logarithms averaged with the weight of each hit."""
    rows = [
        (math.log(f.frequency_hz[k]), math.log(f.damping[k]), f.variance[k], f.energy[k], hit)
        for hit, f in enumerate(fitted)
        for k in range(f.frequency_hz.size)
    ]
    rows.sort(key=lambda r: -float(r[3].max()))
    groups: list[list[tuple[float, float, Real, Real, int]]] = []
    for row in rows:
        near = [
            g
            for g in groups
            if abs(g[0][0] - row[0]) < max(_SAME, math.exp(g[0][1])) and row[4] not in [r[4] for r in g]
        ]
        if near:
            min(near, key=lambda g: abs(g[0][0] - row[0])).append(row)
        else:
            groups.append([row])
    found = []
    for group in groups:
        if len(group) < _SEEN_IN * len(fitted):
            continue
        frequency, frequency_half = _mean([r[0] for r in group], [float(r[2][0]) for r in group])
        damping, damping_half = _mean([r[1] for r in group], [float(r[2][1]) for r in group])
        energy = np.mean([r[3] for r in group], axis=0)
        hz, ratio = math.exp(frequency), math.exp(damping)
        found.append(
            NaturalMode(
                hz, hz * frequency_half, ratio, ratio * damping_half, len(group), float(energy.max()),
                names[int(energy.argmax())],
            )
        )  # fmt: skip
    return tuple(sorted(found, key=lambda m: m.frequency_hz))


def _mean(values: Sequence[float], variances: Sequence[float]) -> tuple[float, float]:
    """Mean over hits and its 95 % half width: from three hits on by their scatter, else by each hit's own noise.

    Hits count by their own noise, but none for more than twice what an equal share would be.
    """
    from scipy.special import stdtrit

    count = len(values)
    weights = 1.0 / np.maximum(variances, 1e-300)
    weights = np.minimum(weights / weights.sum(), 2.0 / count)
    weights = weights / weights.sum()
    mean = float(weights @ np.asarray(values))
    own = math.sqrt(float(np.sum(weights**2 * np.asarray(variances))))
    if count < _FEW_HITS:
        return mean, 1.96 * own
    off = np.asarray(values) - mean
    worth = 1.0 / float(np.sum(weights**2))  # hits of equal weight that would tell as much
    scatter = math.sqrt(float(np.sum((weights * off) ** 2)) * worth / (worth - 1.0))
    return mean, float(stdtrit(worth - 1.0, 0.975)) * scatter
