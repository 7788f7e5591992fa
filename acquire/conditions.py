"""How a run of the simulated rotor goes, and what is wrong with its signals."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

Real = NDArray[np.float64]


@dataclass(frozen=True)
class PulseFaults:
    """What is wrong with the pulse: shares of revolutions without it, with it twice, with one beside it; light.

    `sunlight` is how much brighter half the turn is, `lamp` frequency in Hz and size of a flicker, both in parts of the
    pulse's height; `jitter_deg` is the standard deviation of its place.
    """

    missing: float = 0.0
    double: float = 0.0
    stray: float = 0.0
    sunlight: float = 0.0
    lamp: tuple[float, float] | None = None
    jitter_deg: float = 0.0


@dataclass(frozen=True)
class Conditions:
    """How a run goes: speed and its wander (percent rms), noise, harmonics, a neighbour, scatter from run to run.

    `harmonics_m_s2` are peak accelerations of 2x, 3x, …; `neighbour` is frequency in Hz and peak acceleration; `ramp` is
    the speed in r/min that the run begins at, and the seconds in which it goes evenly from there to `speed_rpm`.

    `tones` are further frequencies in Hz with their peak accelerations, such as belts. `bow` grows with a time constant:
    kg·m, degrees and seconds, like an unbalance in the first plane. `looseness` is the part of its peak beyond which
    the motion is cut on one side. `noise` is white, pink or brown. `coupling_hz` is the AC-coupling corner of every
    input. `locked` is what else is bound to the shaft: number of the sensor, from 0, order, peak acceleration, lag in
    degrees. `moving` is a loose piece in the first plane, kg·m and degrees, whose angle walks at random by a radian in
    about so many seconds. `channel_faults` names an input, from 1, and what it is: dead, stuck, hum or clipped.
    """

    speed_rpm: float
    wander_percent: float = 0.05
    noise_m_s2: float = 0.05
    pulse_snr_db: float = 30.0
    pulse_duty: float = 0.02
    pulse_angle_deg: float = 0.0
    harmonics_m_s2: tuple[float, ...] = (0.3, 0.15)
    neighbour: tuple[float, float] | None = None
    ramp: tuple[float, float] | None = None
    tones: tuple[tuple[float, float], ...] = ()
    bow: tuple[float, float, float] | None = None
    looseness: float | None = None
    noise: str = "white"
    pulse_faults: PulseFaults = PulseFaults()
    coupling_hz: float | None = None
    channel_faults: tuple[tuple[int, str], ...] = ()
    locked: tuple[tuple[int, float, float, float], ...] = ()
    moving: tuple[float, float, float] | None = None
    scatter_amplitude: float = 0.01
    scatter_deg: float = 1.0


_TABLE = 1 << 16  # revolutions whose pulse faults are drawn; then they repeat


class Faults:
    """What is wrong with the signals of a run, drawn beforehand or carried from piece to piece."""

    def __init__(self, conditions: Conditions, rate_hz: float, seed: int, rng: np.random.Generator) -> None:
        self._conditions, self._rate_hz, self._rng = conditions, rate_hz, rng
        faults = conditions.pulse_faults
        drawn = np.random.default_rng([seed, 5])
        self._there = drawn.random(_TABLE) >= faults.missing
        self._echo = self._there & (drawn.random(_TABLE) < faults.double)
        stray = drawn.uniform(0.15, 0.45, _TABLE) * np.where(drawn.random(_TABLE) < 0.5, -1.0, 1.0)
        self._stray = np.where(drawn.random(_TABLE) < faults.stray, stray, 0.0)
        self._moved = faults.jitter_deg / 360.0 * drawn.standard_normal(_TABLE)
        self._noise_state: dict[str, Any] = {}
        self._coupling_state: Any = None
        self._peak: Real | None = None
        self._held: dict[int, float] = {}
        self._lit_at = 0

    def of_revolutions(self, number: Real) -> tuple[Real, Real, Real, Real]:
        """Whether the mark of each revolution is seen, by how far it is off, whether it is doubled, where a stray is."""
        at = number.astype(np.int64) % _TABLE
        return (
            self._there[at].astype(np.float64), self._moved[at], self._echo[at].astype(np.float64), self._stray[at],
        )  # fmt: skip

    def lit(self, pulse: Real, turn: Real) -> Real:
        """The pulse in the light that falls on it."""
        faults = self._conditions.pulse_faults
        if faults.sunlight:
            pulse = pulse + faults.sunlight * (np.cos(2.0 * np.pi * turn - 1.7) > 0.0)
        if faults.lamp is not None:
            frequency, size = faults.lamp
            frames = self._lit_at + np.arange(pulse.size)
            pulse = pulse + size * np.cos(2.0 * np.pi * frequency * frames / self._rate_hz)
        self._lit_at += pulse.size
        return pulse

    def noise(self, shape: tuple[int, ...]) -> Real:
        """Noise of the colour wanted; its power at 10 Hz is that of white noise of one unit of deviation."""
        white = self._rng.standard_normal(shape)
        if self._conditions.noise == "white":
            return white
        from scipy.signal import lfilter

        if self._conditions.noise == "brown":
            pole = math.exp(-2.0 * math.pi * 0.1 / self._rate_hz)
            sections = [(np.array([2.0 * math.pi * 10.0 / self._rate_hz]), np.array([1.0, -pole]))]
        else:  # poles and zeros a factor of √10 apart fall by 10 dB a decade
            sections = []
            for k in range(7):
                pole_hz = 0.1 * 10.0 ** (k / 1.0)
                pole = math.exp(-2.0 * math.pi * pole_hz / self._rate_hz)
                zero = math.exp(-2.0 * math.pi * pole_hz * math.sqrt(10.0) / self._rate_hz)
                if pole_hz * math.sqrt(10.0) < 0.5 * self._rate_hz:
                    sections.append((np.array([1.0, -zero]), np.array([1.0, -pole])))
        noise = white
        for number, (numerator, denominator) in enumerate(sections):
            key = f"{number}"
            if key not in self._noise_state:
                self._noise_state[key] = np.zeros((1, shape[1]))
            noise, self._noise_state[key] = lfilter(numerator, denominator, noise, axis=0, zi=self._noise_state[key])
        if self._conditions.noise == "pink":
            gain = 1.0
            for numerator, denominator in sections:
                turn = np.exp(-2j * math.pi * 10.0 / self._rate_hz)
                gain *= abs((numerator[0] + numerator[1] * turn) / (1.0 + denominator[1] * turn))
            noise = noise / gain
        return np.asarray(noise)

    def loosened(self, moved: Real, part: float) -> Real:
        """Motion that a loose foot cuts on one side: multiples of the speed come of it."""
        peak = np.abs(moved).max(axis=0)
        self._peak = peak if self._peak is None else np.maximum(self._peak, peak)
        return np.maximum(moved, -part * self._peak)

    def of_inputs(self, inputs: Real, frames: NDArray[np.int64]) -> Real:
        """What the inputs make of the signals."""
        corner = self._conditions.coupling_hz
        if corner is not None:
            from scipy.signal import lfilter

            # bilinear, so that the corner is where it is said to be
            k = math.tan(math.pi * corner / self._rate_hz)
            numerator, denominator = [1.0 / (1.0 + k), -1.0 / (1.0 + k)], [1.0, (k - 1.0) / (k + 1.0)]
            if self._coupling_state is None:
                self._coupling_state = -inputs[:1] * numerator[0]
            inputs, self._coupling_state = lfilter(numerator, denominator, inputs, axis=0, zi=self._coupling_state)
        for number, fault in self._conditions.channel_faults:
            column = inputs[:, number - 1]
            if fault == "dead":
                column = np.zeros_like(column)
            elif fault == "stuck":
                column = np.full_like(column, self._held.setdefault(number, float(column[0])))
            elif fault == "hum":
                column = column + 0.3 * np.cos(2.0 * np.pi * 100.0 * frames / self._rate_hz)
            else:
                column = np.clip(200.0 * column, -1.0, 1.0)
            inputs[:, number - 1] = column
        return np.asarray(inputs)
