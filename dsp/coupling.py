"""AC-coupling corners of a channel, fitted to what it makes of a step.

A step through one corner decays as e^{−2πft}; through two corners f₁, f₂ in a row as
(f₁·e^{−2πf₁t} − f₂·e^{−2πf₂t}) / (f₁ − f₂) (inverse Laplace transform of s / ((s + a)(s + b))). An F test says whether
the record shows a second corner.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp.units import InputError

Real = NDArray[np.float64]

_BEGIN_S = 1e-3  # after the step: the converter's own filter has settled
_REDUCED_HZ = 1000.0
_CLEAR_STEP = 12.0  # step over the scatter of what is before it
_LIKELY_SECOND = 1e-4  # probability below which a second corner is believed
_LOWEST_HZ, _HIGHEST_HZ = 0.01, 50.0
_FULL_SCALE = 0.999


class CouplingError(InputError):
    """A record that shows no corner: the message says why and what to do."""


@dataclass(frozen=True)
class Corners:
    """One or two AC-coupling corners, highest first, with 95 % half widths; `step_s` is where the step was found.

    `p_value` is the probability that scatter alone makes a second corner look as good as it does.
    """

    corners_hz: tuple[float, ...]
    ci95_hz: tuple[float, ...]
    step_s: float
    p_value: float


def fit_corners(samples: Real, rate_hz: float) -> Corners:
    """Corners of a channel from its samples (frames,) over one step of its input, in units of full scale.

    Raises CouplingError for a record without a step, one too short after it, and a clipped one.
    """
    x = np.asarray(samples, dtype=np.float64)
    if not np.isfinite(x).all():
        raise CouplingError("the record has values that are not finite: record the step again")
    if x.size and np.abs(x).max() >= _FULL_SCALE:
        raise CouplingError("the record is clipped at full scale: make the step smaller or the range larger")
    step = _step(x, rate_hz)
    size = max(1, round(rate_hz / _REDUCED_HZ))
    after = x[step + round(_BEGIN_S * rate_hz) :]
    count = after.size // size
    if count < 200:
        raise CouplingError(
            f"{after.size / rate_hz:.2f} s after the step: need 0.2 s or more, and three times as long as it decays"
        )
    y = after[: count * size].reshape(count, size).mean(axis=1)
    time_s = np.asarray(_BEGIN_S + (np.arange(count) + 0.5) * size / rate_hz, dtype=np.float64)
    height = abs(float(y[:5].mean() - x[max(0, step - size) : step - size // 2 + 1].mean()))
    if abs(float(y[:5].mean() - y[-5:].mean())) < 0.3 * height:
        raise CouplingError(
            f"the step has hardly begun to decay in {time_s[-1]:.1f} s: the input is not AC-coupled, or record longer"
        )
    one = _fitted(y, time_s, size / rate_hz, 1)
    two = _fitted(y, time_s, size / rate_hz, 2)
    p_value = _second_is_scatter(one, two, count)
    best = two if p_value < _LIKELY_SECOND and min(two.corners_hz) > 2.0 * _LOWEST_HZ else one
    return Corners(best.corners_hz, best.ci95_hz, step / rate_hz, p_value)


def _step(x: Real, rate_hz: float) -> int:
    """Frame of the step: where means over 2 ms before and after differ most."""
    width = max(2, round(2e-3 * rate_hz))
    if x.size < 10 * width:
        raise CouplingError(f"{x.size / rate_hz:.3f} s: too short for a step and its decay; record 2 s or more")
    total = np.concatenate([[0.0], np.cumsum(x)])
    mean = (total[width:] - total[:-width]) / width
    change = np.abs(mean[width:] - mean[:-width])
    at = int(change.argmax()) + width
    before = np.diff(x[max(0, at - 20 * width) : at - width])
    scatter = float(np.std(before)) / np.sqrt(2.0 * width) if before.size > 10 else 0.0
    if change.max() <= max(_CLEAR_STEP * scatter, 1e-9):
        raise CouplingError("there is no step: switch a battery through a resistor onto the input while recording")
    return at


@dataclass(frozen=True)
class _Fit:
    corners_hz: tuple[float, ...]
    ci95_hz: tuple[float, ...]
    residual: float


def _decay(rate_per_s: float, time_s: Real, block_s: float) -> Real:
    """e^{−at} averaged over blocks."""
    half = 0.5 * rate_per_s * block_s
    return np.asarray(np.exp(-rate_per_s * time_s) * (np.sinh(half) / half))


def _shape(logs: Real, time_s: Real, block_s: float) -> Real:
    a = 2.0 * np.pi * np.exp(logs[0])
    if logs.size == 1:
        return _decay(a, time_s, block_s)
    b = 2.0 * np.pi * np.exp(logs[1])
    if abs(a - b) < 1e-4 * a:
        b = a * (1.0 - 1e-4)  # the limit of equal corners, to 1e-4
    return np.asarray((a * _decay(a, time_s, block_s) - b * _decay(b, time_s, block_s)) / (a - b))


def _fitted(y: Real, time_s: Real, block_s: float, corners: int) -> _Fit:
    """Least squares on the logarithms of the corners, height and rest solved for at each (Golub & Pereyra 1973)."""
    from scipy.optimize import least_squares
    from scipy.special import stdtrit

    def columns(logs: Real) -> Real:
        return np.column_stack([_shape(logs, time_s, block_s), np.ones(y.size)])

    def left(logs: Real) -> Real:
        design = columns(logs)
        return np.asarray(y - design @ np.linalg.lstsq(design, y, rcond=None)[0])

    starts = (0.3, 1.0, 3.0, 10.0) if corners == 1 else ((10.0, 1.0), (3.0, 0.3), (1.0, 0.1), (3.0, 2.0))
    bounds = (np.log(_LOWEST_HZ), np.log(_HIGHEST_HZ))
    # residuals of a quiet record are tiny: the solver's tolerances are absolute
    scale = float(np.std(y)) or 1.0
    tries = [
        least_squares(lambda logs: left(logs) / scale, np.log(np.atleast_1d(s)), bounds=bounds, xtol=1e-14, ftol=1e-14)
        for s in starts
    ]
    best = min(tries, key=lambda t: t.cost)
    logs = best.x[np.argsort(-best.x)]
    design = columns(logs)
    height = np.linalg.lstsq(design, y, rcond=None)[0][0]
    slopes = np.column_stack(
        [
            height * (_shape(logs + d, time_s, block_s) - _shape(logs - d, time_s, block_s)) / 2e-6
            for d in 1e-6 * np.eye(corners)
        ]
    )
    whole = np.column_stack([slopes, design])
    freedom = y.size - corners - 2
    residual = float(np.sum(left(logs) ** 2))
    covariance = residual / freedom * np.linalg.pinv(whole.T @ whole)
    half = float(stdtrit(freedom, 0.975)) * np.sqrt(np.maximum(np.diag(covariance)[:corners], 0.0)) * np.exp(logs)
    return _Fit(tuple(float(f) for f in np.exp(logs)), tuple(float(h) for h in half), residual)


def _second_is_scatter(one: _Fit, two: _Fit, count: int) -> float:
    """F test of one parameter more."""
    from scipy.special import fdtrc

    freedom = count - 4
    if one.residual <= two.residual:
        return 1.0
    return float(fdtrc(1, freedom, (one.residual - two.residual) / max(two.residual / freedom, 1e-300)))
