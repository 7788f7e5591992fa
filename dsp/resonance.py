"""Resonances in a run-up or coast-down, fitted with the transient that the change of speed makes.

A machine that sweeps through a resonance never shows its steady curve: the peak comes late, low, and rings on (Lewis,
Trans. ASME 1932, from memory). So the mode is not fitted to a steady curve: its motion under unbalance is integrated
along the measured shaft angle, z̈ + 2ζω₁ż + ω₁²z = (Ω² − jα)e^{jθ}, and that is fitted to the tracked envelope, with the
far modes as a stiffness and a mass beside it. Speed and damping come out as they are at constant speed.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp.tracking import Motion

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

_LEAST_PROMINENCE = math.log(1.25)  # of a peak in the response to a unit force
_CLEAR = 4.0  # a peak stands out of its scatter by so many deviations
_LEAST_WINDOW, _WIDTHS_IN_WINDOW = 0.12, 3.0  # of speed on either side of a resonance, at least; half-power widths
_DAMPING_LIMITS = (5e-4, 0.35)
_FEWEST_SAMPLES = 12
_LEAST_EXPLAINED = 0.9  # of the power in the window, else the model does not hold
_WORTH_FITTING = 400  # samples of a fit at the most: more say nothing new
_MOST_MODES = 6
_LEAST_SHARE = 0.05  # of the vibration there that a further mode must explain
_LEAST_KNOWN = 0.3  # relative deviation of response and damping, above which a mode is not believed


@dataclass(frozen=True)
class Mode:
    """A mode that unbalance excites: `natural_rad_s` is the speed where its lag is 90°, `damping_ratio` its ζ.

    `response` is the steady vector z there, of the quantity and unit of the envelope; `covariance` (4, 4) is that of
    ln natural, ln damping, and re and im of the response; `degrees_of_freedom` belong to it. `acceleration_rad_s2` is
    that of the shaft when it passed.
    """

    natural_rad_s: float
    damping_ratio: float
    response: complex
    covariance: Real
    degrees_of_freedom: int
    acceleration_rad_s2: float

    @property
    def amplification(self) -> float:
        """Q = 1/(2ζ)."""
        return 0.5 / self.damping_ratio

    @property
    def sweep_number(self) -> float:
        """η = α/(ζω₁)²: above 0.2 the curve is not the steady one."""
        return abs(self.acceleration_rad_s2) / (self.damping_ratio * self.natural_rad_s) ** 2

    def lag_deg(self, speed_rad_s: float) -> float:
        """How far the high spot trails the heavy spot at a steady speed, 0 to 180°: ψ = atan2(2ζr, 1 − r²)."""
        r = speed_rad_s / self.natural_rad_s
        return math.degrees(math.atan2(2.0 * self.damping_ratio * r, 1.0 - r * r))


@dataclass(frozen=True)
class _Sweep:
    """What all fits of one envelope share; `smoothed` is what the tracker does to an envelope (moments, columns)."""

    moved: Motion
    usable: slice
    differentiated: int
    smoothed: Callable[[Complex], Complex]
    bandwidth: float  # over the sample rate

    @property
    def speed(self) -> Real:
        return self.moved.speed_rad_s


def find_modes(
    envelope: Complex,
    deviation: Real,
    moved: Motion,
    usable: slice,
    differentiated: int,
    smoothed: Callable[[Complex], Complex],
    bandwidth_hz: float,
) -> tuple[Mode, ...]:
    """Modes that the envelope z (moments,) of order 1 shows, lowest first.

    `deviation` (moments,) is that of each quadrature; `usable` are the moments to look at, all others only drive the
    mode; the quantity is displacement differentiated so many times. One mode after the other is fitted and taken away,
    the strongest first, so that how it rings on is not taken for another one; then each is fitted beside the others.
    """
    sweep = _Sweep(moved, usable, differentiated, smoothed, bandwidth_hz * moved.step_s)
    found: list[tuple[Mode, Complex]] = []
    tried: list[float] = []
    rest = envelope
    while len(found) < _MOST_MODES:
        peaks = _peaks(rest, envelope, deviation, sweep)
        peak = next((p for p in peaks if not any(abs(p[0] / t - 1.0) < 0.05 for t in tried)), None)
        if peak is None:
            break
        tried.append(peak[0])
        if (fitted := _fitted(rest, sweep, *peak)) is not None:
            found.append(fitted)
            rest = rest - fitted[1]
    if len(found) > 1:
        for number, (mode, alone) in enumerate(found):
            again = _fitted(rest + alone, sweep, mode.natural_rad_s, mode.damping_ratio)
            if again is not None:
                rest = rest + alone - again[1]
                found[number] = again
    return tuple(sorted((mode for mode, _ in found), key=lambda m: m.natural_rad_s))


def rises_at_the_end(envelope: Complex, speed: Real, usable: slice, differentiated: int) -> bool:
    """True where the response to a unit force still rises at the highest speed: a resonance may lie beyond."""
    force = np.abs(envelope[usable]) / speed[usable] ** (2 + differentiated)
    order = np.argsort(speed[usable])
    count = max(3, order.size // 20)
    top, before = force[order[-count:]].mean(), force[order[-4 * count : -3 * count]].mean()
    return bool(top > 1.15 * before)


def _peaks(rest: Complex, envelope: Complex, deviation: Real, sweep: _Sweep) -> list[tuple[float, float]]:
    """Speed and damping ratio, roughly, of each peak of the response to a unit force, the most prominent first."""
    from scipy.ndimage import uniform_filter1d
    from scipy.signal import find_peaks, peak_widths

    speed = sweep.speed[sweep.usable]
    amplitude = np.abs(rest[sweep.usable])
    smooth = max(1, round(0.25 / sweep.bandwidth))
    force = uniform_filter1d(amplitude, smooth, mode="nearest") / speed ** (2 + sweep.differentiated)
    height = np.log(np.maximum(force, 1e-300))
    at, properties = find_peaks(height, prominence=_LEAST_PROMINENCE, distance=max(1, round(1.0 / sweep.bandwidth)))
    above = amplitude[at] * (1.0 - np.exp(-properties["prominences"]))
    believed = above > _CLEAR * deviation[sweep.usable][at]
    believed &= above > _LEAST_SHARE * np.abs(envelope[sweep.usable])[at]
    at, prominence = at[believed], properties["prominences"][believed]
    if not at.size:
        return []
    widths = peak_widths(np.exp(2.0 * (height - height.max())), at, rel_height=0.5)
    rough = []
    for number in np.argsort(-prominence):
        left, right = (round(float(side[number])) for side in widths[2:])
        here = float(speed[at[number]])
        rough.append((here, float(np.clip(0.5 * abs(speed[right] - speed[left]) / here, 2e-3, 0.2))))
    return rough


def _steady(natural: float, damping: float, speed: float, differentiated: int) -> complex:
    """Envelope in the e^{+jθ} sense of the mode at a constant speed, unit unbalance."""
    receptance = speed**2 / complex(natural**2 - speed**2, 2.0 * damping * natural * speed)
    return complex(receptance * (1j * speed) ** differentiated)


def _mode_motion(sweep: _Sweep, natural: float, damping: float) -> Complex:
    """Envelope (moments,), e^{+jθ} sense, of the mode under unit unbalance along the whole sweep."""
    from scipy.signal import lfilter

    moved, step = sweep.moved, sweep.moved.step_s
    angle, speed = moved.angle_rad, moved.speed_rad_s
    force = speed**2 - 1j * moved.acceleration_rad_s2
    quadrature = natural * math.sqrt(1.0 - damping**2)
    poles = (complex(-damping * natural, quadrature), complex(-damping * natural, -quadrature))
    turned = np.diff(angle)
    middle, pushed = turned / step, 0.5 * (force[1:] + force[:-1])
    states = []
    for pole in poles:
        # exact for a force that turns evenly from sample to sample
        gained = pushed * (np.exp(1j * turned) - np.exp(pole * step)) / (1j * middle - pole) * np.exp(1j * angle[:-1])
        begun = force[0] / (1j * speed[0] - pole) * np.exp(1j * angle[0])  # in its stride at the first moment
        state, _ = lfilter([1.0], [1.0, -np.exp(pole * step)], gained, zi=[np.exp(pole * step) * begun])
        states.append(np.concatenate([[begun], state]) * np.exp(-1j * angle))
    plus, minus = states
    apart = poles[0] - poles[1]
    moved_by = (plus - minus) / apart
    if sweep.differentiated == 0:
        return np.asarray(moved_by)
    velocity = (poles[0] * plus - poles[1] * minus) / apart
    if sweep.differentiated == 1:
        return np.asarray(velocity)
    return np.asarray(force - 2.0 * damping * natural * velocity - natural**2 * moved_by)


def _fitted(envelope: Complex, sweep: _Sweep, natural: float, damping: float) -> tuple[Mode, Complex] | None:
    """The mode beside far stiffness and far mass, and its share z (moments,) of the envelope; None if none fits.

    Least squares on speed and damping, the linear part solved for at each step (Golub & Pereyra 1973), in the window of
    speeds that the first fit finds right.
    """
    fit: tuple[Mode, Complex] | None = None
    for _ in range(2):
        reach = max(_LEAST_WINDOW, 2.0 * _WIDTHS_IN_WINDOW * damping)
        near = np.abs(sweep.speed / natural - 1.0) <= reach
        inside = np.flatnonzero(near)
        inside = inside[(inside >= sweep.usable.start) & (inside < sweep.usable.stop)]
        independent = min(round(0.45 / sweep.bandwidth), inside.size // (2 * _FEWEST_SAMPLES))
        spacing = max(1, independent, inside.size // _WORTH_FITTING)
        fit = _fitted_in(envelope, sweep, inside[::spacing], natural, damping)
        if fit is None:
            return None
        natural, damping = fit[0].natural_rad_s, fit[0].damping_ratio
    return fit


def _fitted_in(
    envelope: Complex, sweep: _Sweep, inside: NDArray[np.intp], natural: float, damping: float
) -> tuple[Mode, Complex] | None:
    from scipy.optimize import least_squares

    if inside.size < _FEWEST_SAMPLES:
        return None
    data = envelope[inside].conj()
    scale = float(np.sqrt(np.mean(np.abs(data) ** 2))) or 1.0
    data = data / scale
    turning = (1j * sweep.speed) ** sweep.differentiated
    far = np.stack([turning * sweep.speed**2, turning], axis=1)[inside]
    far = far / np.abs(far).max(axis=0)

    def columns(logs: Real) -> Complex:
        mode = _mode_motion(sweep, float(np.exp(logs[0])), float(np.exp(logs[1])))
        return np.column_stack([sweep.smoothed(mode[:, None])[inside, 0], far])

    def left(logs: Real) -> Real:
        design = columns(logs)
        design[:, 0] /= np.abs(design[:, 0]).max()
        rest = data - design @ np.linalg.lstsq(design, data, rcond=None)[0]
        return np.concatenate([rest.real, rest.imag])

    low = np.array([math.log(0.88 * natural), math.log(_DAMPING_LIMITS[0])])
    high = np.array([math.log(1.12 * natural), math.log(_DAMPING_LIMITS[1])])
    start = np.array([math.log(natural), math.log(np.clip(damping, 2 * _DAMPING_LIMITS[0], 0.5 * _DAMPING_LIMITS[1]))])
    best = least_squares(left, start, bounds=(low, high), diff_step=1e-5, xtol=1e-9, ftol=1e-9)
    rest = np.asarray(best.fun[: data.size] + 1j * best.fun[data.size :], dtype=np.complex128)
    if np.mean(np.abs(rest) ** 2) > 1.0 - _LEAST_EXPLAINED or np.any(best.active_mask):
        return None
    design = columns(best.x)
    strength = np.asarray(np.linalg.lstsq(design, data, rcond=None)[0], dtype=np.complex128)
    steps = []
    for aside in 1e-5 * np.eye(2):
        steps.append((columns(best.x + aside)[:, 0] - columns(best.x - aside)[:, 0]) / 2e-5 * strength[0])
    near = int(inside[np.argmin(np.abs(sweep.speed[inside] - math.exp(best.x[0])))])
    acceleration = float(sweep.moved.acceleration_rad_s2[max(0, near - 10) : near + 11].mean())
    mode = _described(best.x, design, steps, strength, rest, scale, sweep.differentiated, acceleration)
    known = np.sqrt(np.array([mode.covariance[1, 1], np.trace(mode.covariance[2:, 2:]) / abs(mode.response) ** 2]))
    if known.max() > _LEAST_KNOWN:
        return None
    whole = sweep.smoothed(_mode_motion(sweep, mode.natural_rad_s, mode.damping_ratio)[:, None])[:, 0]
    return mode, np.asarray((scale * strength[0] * whole).conj())


def _described(
    logs: Real,
    design: Complex,
    steps: list[Complex],
    strength: Complex,
    rest: Complex,
    scale: float,
    differentiated: int,
    acceleration_rad_s2: float,
) -> Mode:
    """Parameters with the covariance that the residuals leave them; their memory counts as fewer samples."""
    natural, damping = float(np.exp(logs[0])), float(np.exp(logs[1]))
    # real design: ln natural, ln damping, then re and im of each strength
    whole = np.stack([*steps, *(c * part for c in design.T for part in (1.0, 1j))], axis=1)
    jacobian = np.concatenate([whole.real, whole.imag])
    freedom = max(1, 2 * rest.size - jacobian.shape[1])
    power = np.abs(rest) ** 2
    memory = float(np.sum((rest[1:] * rest[:-1].conj()).real) / max(power.sum(), 1e-300))
    longer = (1.0 + min(max(memory, 0.0), 0.9)) / (1.0 - min(max(memory, 0.0), 0.9))
    sizes = np.sqrt((jacobian**2).sum(axis=0))
    covariance = np.linalg.pinv((jacobian / sizes).T @ (jacobian / sizes)) / np.outer(sizes, sizes)
    covariance *= power.sum() / freedom * longer
    unit = _steady(natural, damping, natural, differentiated)
    response = complex(strength[0] * unit)
    # response = strength · steady(natural, damping), which goes with natural^differentiated and 1/damping
    change = np.zeros((4, covariance.shape[0]))
    change[0, 0] = change[1, 1] = 1.0
    change[2:, 0] = differentiated * response.real, differentiated * response.imag
    change[2:, 1] = -response.real, -response.imag
    change[2:, 2], change[2:, 3] = (unit.real, unit.imag), (-unit.imag, unit.real)
    mirrored = change * np.array([1.0, 1.0, scale, -scale])[:, None]  # z is the conjugate form
    return Mode(
        natural,
        damping,
        scale * response.conjugate(),
        np.asarray(mirrored @ covariance @ mirrored.T),
        max(1, round(freedom / longer)),
        acceleration_rad_s2,
    )
