"""Vectors at an order of the shaft speed: least squares on the shaft angle, pooled over the record, with covariance.

The record is cut into blocks of whole revolutions. Each block keeps its normal equations with the mean taken out; their
sum gives the vectors of the record, each alone gives a short-time vector, and how those scatter gives the covariance.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import vectors

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

REVOLUTIONS_PER_BLOCK = 4  # shorter blocks widen the interval: the columns get correlated
_MOST_GROUPS = 128  # of blocks, for the covariance
_LINES = 8  # cosine lines that read the noise right beside the order
_LONGEST_MEMORY = 0.95  # of block to block correlation, beyond which no mean is defined


class OrderError(ValueError):
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
    turning = np.exp(1j * np.outer(angle_rad, orders))
    columns = np.empty((angle_rad.size, 2 * len(orders)))
    columns[:, 0::2], columns[:, 1::2] = turning.real, turning.imag
    columns -= columns.mean(axis=0)
    return BlockEquations(columns.T @ columns, columns.T @ samples, angle_rad.size, revolutions, time_s, speed_rad_s)


@dataclass(frozen=True)
class OrderVectors:
    """Vectors of a record at one order.

    `mean` (channels,) complex, peak amplitude in the unit of the samples; `covariance` (2C, 2C) of its re and im by
    channel; `blocks` (blocks, channels) short-time vectors at `times_s` and `speeds_rad_s`; `few_revolutions` says
    that the interval rests on few blocks.
    """

    mean: Complex
    covariance: Real
    degrees_of_freedom: int
    blocks: Complex
    times_s: Real
    speeds_rad_s: Real
    revolutions: int
    few_revolutions: bool


def pooled(blocks: Sequence[BlockEquations]) -> OrderVectors:
    """Pool the blocks into the vectors of the record.

    Raises OrderError for fewer than two blocks.
    """
    if len(blocks) < 2:
        raise OrderError(f"{len(blocks)} block of whole revolutions: need 2 or more; record longer")
    size = -(-len(blocks) // _MOST_GROUPS)
    groups = [blocks[i : i + size] for i in range(0, len(blocks), size)]
    if len(groups[-1]) < size:  # a short last group would count too much
        groups[-2:] = [[*groups[-2], *groups[-1]]]
    gram = np.array([sum(b.gram for b in group) for group in groups])
    right = np.array([sum(b.right for b in group) for group in groups])
    whole = np.linalg.solve(gram.sum(axis=0), right.sum(axis=0))
    each = np.linalg.solve(gram, right)
    mean = vectors.from_coefficients(whole[0], whole[1])
    short = vectors.from_coefficients(each[:, 0], each[:, 1])
    revolutions = np.array([sum(b.revolutions for b in group) for group in groups])
    weight = np.array([sum(b.frames for b in group) for group in groups], dtype=np.float64)
    times = np.array([np.mean([b.time_s for b in group]) for group in groups])
    speeds = np.array(
        [np.average([b.speed_rad_s for b in group], weights=[b.frames for b in group]) for group in groups]
    )
    covariance, degrees = mean_covariance(short, weight)
    return OrderVectors(
        mean, covariance, degrees, short, times, speeds, int(revolutions.sum()), len(groups) < 4 * _LINES
    )


def mean_covariance(series: Complex, weight: Real) -> tuple[Real, int]:
    """Covariance of the mean of a series of short-time vectors (blocks, channels), and its degrees of freedom.

    Long-run variance from the lowest cosine transform lines (Müller, J. Econometrics 2007, from memory), prewhitened
    by a first-order autoregression per channel (Andrews & Monahan, Econometrica 1992, from memory).
    """
    count, channels = series.shape
    share = weight / weight.sum()
    centred = (series - share @ series) * np.sqrt(share * count)[:, None]
    lines = min(_LINES if count < 16 * _LINES else count // 16, count - 1)
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
    """Lag-1 correlation per channel, corrected for its small-sample bias, 0 … 0.95."""
    count = centred.shape[0]
    power = np.sum(np.abs(centred) ** 2, axis=0)
    lagged = np.sum((centred[1:] * centred[:-1].conj()).real, axis=0)
    rho = np.divide(lagged, power, out=np.zeros_like(power), where=power > 0.0)
    # only memory that stands out of its own scatter is put in: else white noise would get a wider interval
    rho = np.where(rho > 1.0 / np.sqrt(count), rho + (1.0 + 3.0 * rho) / count, 0.0)
    return np.clip(rho, 0.0, _LONGEST_MEMORY)
