"""Vectors at an order of the shaft speed: least squares on the shaft angle, pooled over the record, with covariance.

The record is cut into blocks of whole revolutions. Each block keeps its normal equations with the mean taken out; their
sum gives the vectors of the record, each alone gives a short-time vector, and how those scatter gives the covariance.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import vectors
from stillshaft.dsp.units import InputError

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

REVOLUTIONS_PER_BLOCK = 4  # shorter blocks widen the interval: the columns get correlated
_MOST_GROUPS = 128  # of blocks, for the covariance
_LINES = 8  # cosine lines that read the noise right beside the order
_FEW_LINES = 4  # in a short record: more would read the noise too far away
_MOMENTS = 8  # polynomials that a piece of samples is compressed to
_MOST_HALF_TURN = 2.3  # rad in half a piece: there 8 polynomials follow a turning column to 1e-5
_PIECES = (512, 256, 128, 64, 32)  # samples
_LONGEST_MEMORY = 0.95  # of block to block correlation, beyond which no mean is defined


class OrderError(InputError):
    """An order that cannot be measured in this record."""


@dataclass(frozen=True)
class BlockEquations:
    """Normal equations of one block of whole revolutions, mean removed.

    `gram` (2K, 2K) and `right` (2K, channels) belong to the columns cos h₁θ, sin h₁θ, cos h₂θ, …; `time_s` is the
    middle of the block, `speed_rad_s` its mean speed.
    """

    gram: Real
    right: Real
    frames: int
    revolutions: int
    time_s: float
    speed_rad_s: float


def columns_of(order: float, highest: int) -> tuple[float, ...]:
    """Orders fitted together: the wanted one first, then the harmonics 1…highest that it is not."""
    return (order, *(float(h) for h in range(1, highest + 1) if h != order))


def block_equations(
    samples: Real,
    angle_rad: Real,
    orders: Sequence[float],
    revolutions: int,
    time_s: float,
    speed_rad_s: float,
) -> BlockEquations:
    """Normal equations of samples (frames, channels) at shaft angles (frames,)."""
    plan = _plan(tuple(orders))
    sums = _sums(np.asarray(samples, dtype=np.float64), angle_rad, plan)
    return _equations(sums, plan, angle_rad.size, revolutions, time_s, speed_rad_s)


def compressed_equations(
    samples: NDArray[np.floating[Any]],
    angle_at: Callable[[Real], Real],
    orders: Sequence[float],
    revolutions: int,
    time_s: float,
    speed_rad_s: float,
    rate_hz: float,
) -> BlockEquations:
    """`block_equations` to 1e-5 at a tenth of the cost; `angle_at` gives the angle at places counted from sample 0.

    Pieces of M samples are compressed to P discrete-orthonormal polynomial moments; the turning columns are sampled
    at P Chebyshev nodes of each piece, where they are polynomials of degree P − 1 as nearly as matters.
    """
    frames = samples.shape[0]
    plan = _plan(tuple(orders))
    size = _piece_size(2.0 * max(orders) * speed_rad_s / rate_hz)
    pieces = frames // size if size else 0
    sums = _Sums(0.0, 0.0, 0.0)
    if pieces:
        moments, nodes, weights = _compression(size)
        compressed = np.matmul(moments.T, samples[: pieces * size].reshape(pieces, size, -1)).astype(np.float64)
        angle = angle_at((np.arange(pieces)[:, None] * size + nodes).ravel())
        sums = _compressed_sums(compressed, angle, weights, plan, size)
    if pieces * size < frames:
        rest = np.arange(pieces * size, frames, dtype=np.float64)
        sums = sums.plus(_sums(samples[pieces * size :].astype(np.float64), angle_at(rest), plan))
    return _equations(sums, plan, frames, revolutions, time_s, speed_rad_s)


@dataclass(frozen=True)
class _Plan:
    """Orders, their sums and differences, and where each is found among `turns`."""

    turns: tuple[float, ...]
    own: NDArray[np.intp]
    sums: NDArray[np.intp]
    differences: NDArray[np.intp]
    side: Real  # −1 where the second order of a pair is the higher


@lru_cache(maxsize=32)
def _plan(orders: tuple[float, ...]) -> _Plan:
    h = np.array(orders)
    up, down = np.round(h[:, None] + h, 12), np.round(np.abs(h[:, None] - h), 12)
    turns = np.unique(np.concatenate([h, up.ravel(), down.ravel()]))
    own, sums, differences = (np.searchsorted(turns, wanted) for wanted in (h, up, down))
    return _Plan(tuple(turns.tolist()), own, sums, differences, np.sign(h[:, None] - h))


@dataclass(frozen=True)
class _Sums:
    """Over samples: of e^{jfθ} at each of the plan's turns, of the samples, and of samples turned by each order."""

    turning: Any
    samples: Any
    turned: Any

    def plus(self, other: _Sums) -> _Sums:
        return _Sums(self.turning + other.turning, self.samples + other.samples, self.turned + other.turned)


def _turning(angle: Real, turns: Sequence[float]) -> Complex:
    """e^{jfθ}, shape (turns, angles), of ascending f; whole ones by multiplication, a tenth of an exponential."""
    turning = np.empty((len(turns), angle.size), dtype=np.complex128)
    once = power = np.exp(1j * angle)
    number = 1
    for row, f in enumerate(turns):
        if f != round(f):
            np.exp(1j * f * angle, out=turning[row])
            continue
        while number < f:
            power, number = power * once, number + 1
        turning[row] = power if f else 1.0
    return turning


def _sums(samples: Real, angle: Real, plan: _Plan) -> _Sums:
    turning = _turning(angle, plan.turns)
    return _Sums(turning.sum(axis=1), samples.sum(axis=0), turning[plan.own] @ samples)


def _compressed_sums(moments: Real, angle: Real, weights: Real, plan: _Plan, size: int) -> _Sums:
    pieces, order, channels = moments.shape
    turning = _turning(angle, plan.turns).reshape(-1, pieces, order)
    # the constant's own moment is the square root of the piece's length
    whole = np.sqrt(size) * weights[0]
    turned = (turning[plan.own] @ weights.T).reshape(len(plan.own), -1) @ moments.reshape(-1, channels)
    return _Sums(turning.sum(axis=1) @ whole, np.sqrt(size) * moments[:, 0].sum(axis=0), turned)


def _piece_size(phase_per_sample: float) -> int:
    """Largest piece in which the fastest column turns no more than a polynomial follows; 0 where none is."""
    longest = 2.0 * _MOST_HALF_TURN / max(phase_per_sample, 1e-12)
    return next((size for size in _PIECES if size <= longest), 0)


@lru_cache(maxsize=len(_PIECES))
def _compression(size: int) -> tuple[NDArray[np.float32], Real, Real]:
    """Moments (M, P) of a piece, places (P,) of its nodes in samples, and what turns values there into moments."""
    u = (np.arange(size) - 0.5 * (size - 1)) / (0.5 * size)
    basis = np.polynomial.legendre.legvander(u, _MOMENTS - 1)
    orthonormal, triangle = np.linalg.qr(basis)
    orthonormal = orthonormal * np.sign(np.diag(triangle))
    nodes = np.cos(np.pi * (np.arange(_MOMENTS) + 0.5) / _MOMENTS)
    through_nodes = np.linalg.solve(np.polynomial.legendre.legvander(nodes, _MOMENTS - 1).T, basis.T).T
    return (
        orthonormal.astype(np.float32),
        0.5 * size * nodes + 0.5 * (size - 1),
        np.asarray(orthonormal.T @ through_nodes),
    )


def _equations(
    sums: _Sums, plan: _Plan, frames: int, revolutions: int, time_s: float, speed_rad_s: float
) -> BlockEquations:
    """Normal equations with the mean of every column taken out."""
    size = 2 * len(plan.own)
    up, down = sums.turning[plan.sums], sums.turning[plan.differences]
    gram = np.empty((size, size))
    gram[0::2, 0::2], gram[1::2, 1::2] = 0.5 * (down.real + up.real), 0.5 * (down.real - up.real)
    gram[1::2, 0::2] = 0.5 * (up.imag + plan.side * down.imag)
    gram[0::2, 1::2] = 0.5 * (up.imag - plan.side * down.imag)
    total, right = np.empty(size), np.empty((size, sums.turned.shape[1]))
    total[0::2], total[1::2] = sums.turning[plan.own].real, sums.turning[plan.own].imag
    right[0::2], right[1::2] = sums.turned.real, sums.turned.imag
    gram -= np.outer(total, total) / frames
    right -= np.outer(total, sums.samples) / frames
    return BlockEquations(gram, right, frames, revolutions, time_s, speed_rad_s)


@dataclass(frozen=True)
class OrderVectors:
    """Vectors of a record at one order.

    `mean` (channels,) complex, peak amplitude in the unit of the samples; `covariance` (2C, 2C) of its re and im by
    channel; `blocks` (blocks, channels) short-time vectors at `times_s` and `speeds_rad_s`.
    """

    mean: Complex
    covariance: Real
    degrees_of_freedom: int
    blocks: Complex
    times_s: Real
    speeds_rad_s: Real
    revolutions: int


def pooled(blocks: Sequence[BlockEquations], column: int = 0, weights: str = "flat") -> OrderVectors:
    """Pool the blocks into the vectors of the record, at the order that stands in this place among those fitted.

    Weights "hann" fade the blocks out to both ends of the record: a strong tone two and more lines (of one over the
    record's length) away leaves no trace, for half as much variance again. Raises OrderError for fewer than two blocks.
    """
    if len(blocks) < 2:
        raise OrderError(f"{len(blocks)} block of whole revolutions: need 2 or more; record longer")
    size = -(-len(blocks) // _MOST_GROUPS)
    groups = [blocks[i : i + size] for i in range(0, len(blocks), size)]
    if len(groups[-1]) < size:  # a short last group would count too much
        groups[-2:] = [[*groups[-2], *groups[-1]]]
    gram = np.array([sum(b.gram for b in group) for group in groups])
    right = np.array([sum(b.right for b in group) for group in groups])
    fade = np.ones(len(groups))
    if weights == "hann":
        fade = np.sin(np.pi * (np.arange(len(groups)) + 0.5) / len(groups)) ** 2
    whole = np.linalg.solve(np.einsum("g,gij->ij", fade, gram), np.einsum("g,gij->ij", fade, right))
    each = np.linalg.solve(gram, right)
    mean = vectors.from_coefficients(whole[2 * column], whole[2 * column + 1])
    short = vectors.from_coefficients(each[:, 2 * column], each[:, 2 * column + 1])
    revolutions = np.array([sum(b.revolutions for b in group) for group in groups])
    weight = np.array([sum(b.frames for b in group) for group in groups], dtype=np.float64)
    times = np.array([np.mean([b.time_s for b in group]) for group in groups])
    speeds = np.array(
        [np.average([b.speed_rad_s for b in group], weights=[b.frames for b in group]) for group in groups]
    )
    covariance, degrees = mean_covariance(short, weight)
    covariance *= len(groups) * np.sum(fade**2) / np.sum(fade) ** 2
    return OrderVectors(mean, covariance, degrees, short, times, speeds, int(revolutions.sum()))


def mean_covariance(series: Complex, weight: Real) -> tuple[Real, int]:
    """Covariance of the mean of a series of short-time vectors (blocks, channels), and its degrees of freedom.

    Long-run variance from the lowest cosine transform lines (Müller, J. Econometrics 2007, from memory), prewhitened
    by a first-order autoregression per channel (Andrews & Monahan, Econometrica 1992, from memory).
    """
    count, channels = series.shape
    share = weight / weight.sum()
    centred = (series - share @ series) * np.sqrt(share * count)[:, None]
    lines = min(count - 1, _FEW_LINES if count < 4 * _LINES else max(_LINES, count // 16))
    number = np.arange(1, lines + 1)
    cosines = np.cos(np.pi * np.outer(number, np.arange(count) + 0.5) / count)
    spectrum = np.sqrt(2.0 / count) * cosines @ centred
    memory = _memory(centred)
    turn = np.exp(1j * np.pi * number / count)
    spectrum = spectrum * np.abs(1.0 - memory[None, :] * turn[:, None]) / (1.0 - memory[None, :])
    parts = np.empty((lines, 2 * channels))
    parts[:, 0::2], parts[:, 1::2] = spectrum.real, spectrum.imag
    return np.asarray(parts.T @ parts / lines / count), lines


def _memory(centred: Complex) -> Real:
    """Lag-1 correlation per channel, 0 … 0.95, no lower than its small-sample bias and scatter allow.

    Few blocks say little of their own memory: what it may be at the most is put in, and the interval gets wider.
    """
    count = centred.shape[0]
    power = np.sum(np.abs(centred) ** 2, axis=0)
    lagged = np.sum((centred[1:] * centred[:-1].conj()).real, axis=0)
    rho = np.divide(lagged, power, out=np.zeros_like(power), where=power > 0.0)
    allowed = np.clip(16.0 / count, 1.0, 1.6) / np.sqrt(2.0 * count)
    return np.asarray(np.clip(rho + (1.0 + 3.0 * rho) / count + allowed, 0.0, _LONGEST_MEMORY))
