"""What a channel makes of a known signal: a voltage, a shaker, one signal split to all inputs.

They give full scale, sensitivity, gain and delay; AC-coupling corners have `coupling`.

Sines are fitted by least squares in four parameters (IEEE Std 1057, from memory), all channels at one frequency.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp.units import InputError

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

SHAKER_RMS_M_S2, SHAKER_HZ = 9.80665, 159.2  # of the usual hand-held calibrator: common practice, no source
_SHAKER_OFF = 0.05  # part by which its frequency may be off
_FULL_SCALE = 0.999
_LEAST_S = 1.0
_LEAST_CYCLES = 10.0
_CLEAR = 20.0  # a tone stands above its standard deviation by so many times
_MOST_TONES, _LEAST_TONE = 6, 0.05  # of a split signal; of the strongest
_Z = 1.96


class CalibrationError(InputError):
    """A record that calibrates nothing: the message says why and what to do."""


@dataclass(frozen=True)
class Value:
    """A calibrated value with its 95 % half width."""

    value: float
    ci95: float


@dataclass(frozen=True)
class Tones:
    """Sines common to all channels: frequencies (tones,), peak vectors (tones, channels) in the e^{+jωt} sense.

    `deviation` (tones, channels) is that of each quadrature.
    """

    frequency_hz: Real
    vectors: Complex
    deviation: Real


def tones_of(samples: Real, rate_hz: float, most: int = 1) -> Tones:
    """The strongest tones in samples (frames, channels), strongest first. Raises CalibrationError."""
    x = np.asarray(samples, dtype=np.float64)
    if x.shape[0] < _LEAST_S * rate_hz:
        raise CalibrationError(f"{x.shape[0] / rate_hz:.2f} s are too short: record {_LEAST_S:.0f} s or more")
    if not np.isfinite(x).all():
        raise CalibrationError("there are values that are not finite: record again")
    if np.abs(x).max() >= _FULL_SCALE:
        raise CalibrationError("the record is clipped at full scale: lower the signal or the gain, record again")
    x = x - x.mean(axis=0)
    window = np.hanning(x.shape[0])[:, None]
    found: list[float] = []
    left = x
    strongest = 0.0
    for _ in range(most):
        power = (np.abs(np.fft.rfft(left * window, axis=0)) ** 2).sum(axis=1)
        power[: int(_LEAST_CYCLES)] = 0.0
        line = int(power.argmax())
        strongest = max(strongest, float(power[line]))
        if power[line] < _LEAST_TONE**2 * strongest or power[line] == 0.0:
            break
        found.append(line * rate_hz / x.shape[0])
        frequencies = _refined(x, rate_hz, np.array(found))
        found = frequencies.tolist()
        left = x - _design(x.shape[0], rate_hz, frequencies) @ _solved(x, rate_hz, frequencies)
    if not found:
        raise CalibrationError("there is no tone in the record: switch the signal on and record again")
    frequencies = np.array(found)
    solved = _solved(x, rate_hz, frequencies)
    scatter = (x - _design(x.shape[0], rate_hz, frequencies) @ solved).std(axis=0)
    vectors = solved[0::2] - 1j * solved[1::2]
    deviation = np.broadcast_to(scatter * math.sqrt(2.0 / x.shape[0]), vectors.shape)
    return Tones(frequencies, np.asarray(vectors), np.asarray(deviation))


def _design(frames: int, rate_hz: float, frequencies: Real) -> Real:
    angle = 2.0 * np.pi * np.outer(np.arange(frames) / rate_hz, frequencies)
    design = np.empty((frames, 2 * frequencies.size))
    design[:, 0::2], design[:, 1::2] = np.cos(angle), np.sin(angle)
    return design


def _solved(x: Real, rate_hz: float, frequencies: Real) -> Real:
    return np.asarray(np.linalg.lstsq(_design(x.shape[0], rate_hz, frequencies), x, rcond=None)[0])


def _refined(x: Real, rate_hz: float, frequencies: Real) -> Real:
    """Frequencies by Gauss-Newton steps on all channels together."""
    time_s = np.arange(x.shape[0]) / rate_hz
    middle = time_s - time_s.mean()
    for _ in range(8):
        design = _design(x.shape[0], rate_hz, frequencies)
        solved = np.linalg.lstsq(design, x, rcond=None)[0]
        left = x - design @ solved
        steps = np.empty(frequencies.size)
        for i in range(frequencies.size):
            cosine, sine = design[:, 2 * i : 2 * i + 1], design[:, 2 * i + 1 : 2 * i + 2]
            slope = 2.0 * np.pi * middle[:, None] * (cosine * solved[2 * i + 1] - sine * solved[2 * i])
            steps[i] = float(np.sum(slope * left) / np.sum(slope**2))
        frequencies = frequencies + steps
        if np.abs(steps).max() < 1e-9 * rate_hz:
            break
    return frequencies


def full_scale_volts(readings: Real, rate_hz: float, rms_volts: float) -> Value:
    """Volts that read as full scale, from one channel's readings (frames,) of a sine of so many volts rms."""
    if not rms_volts > 0.0:
        raise CalibrationError(f"{rms_volts:g} V: the known voltage must be above 0")
    amplitude, deviation = _clear_amplitude(readings, rate_hz)
    value = rms_volts * math.sqrt(2.0) / amplitude
    return Value(value, _Z * value * deviation / amplitude)


def shaker_sensitivity(
    readings: Real,
    rate_hz: float,
    full_scale_v: float,
    rms_m_s2: float = SHAKER_RMS_M_S2,
    frequency_hz: float = SHAKER_HZ,
) -> Value:
    """Volts per m/s² from readings (frames,) of an accelerometer on a shaker of known acceleration and frequency."""
    tone = tones_of(readings[:, None], rate_hz)
    if abs(tone.frequency_hz[0] / frequency_hz - 1.0) > _SHAKER_OFF:
        raise CalibrationError(
            f"the strongest tone is {tone.frequency_hz[0]:.1f} Hz, not the shaker's {frequency_hz:g} Hz: hold it still and "
            "check that the sensor sits tight on it"
        )
    amplitude, deviation = _clear_amplitude(readings, rate_hz)
    value = amplitude * full_scale_v / (math.sqrt(2.0) * rms_m_s2)
    return Value(value, _Z * value * deviation / amplitude)


def _clear_amplitude(readings: Real, rate_hz: float) -> tuple[float, float]:
    tone = tones_of(readings[:, None], rate_hz)
    amplitude, deviation = abs(complex(tone.vectors[0, 0])), float(tone.deviation[0, 0])
    if amplitude < _CLEAR * deviation:
        raise CalibrationError("the tone hardly stands out of the noise: make it stronger or record longer")
    return amplitude, deviation


@dataclass(frozen=True)
class SplitChannel:
    """A channel against the first one: gain ratio, and how much later an event shows up in it, s."""

    gain: Value
    delay_s: Value
    worst_deg: float  # phase that gain and delay alone leave unexplained


def split_signal(samples: Real, rate_hz: float) -> tuple[SplitChannel, ...]:
    """Gain and delay of each channel against the first, from one signal that goes to all (frames, channels).

    Tones at two and more frequencies tell a delay from a phase; from one the delay is taken to explain it all.
    """
    tones = tones_of(samples, rate_hz, _MOST_TONES)
    base, base_deviation = tones.vectors[:, 0], tones.deviation[:, 0]
    clear = np.abs(base) > _CLEAR * base_deviation
    if not clear.any():
        raise CalibrationError("the reference input has no clear tone: check that the signal reaches it")
    frequency = tones.frequency_hz[clear]
    found = []
    for channel in range(samples.shape[1]):
        vectors, deviation = tones.vectors[clear, channel], tones.deviation[clear, channel]
        if np.any(np.abs(vectors) < _CLEAR * deviation):
            raise CalibrationError(
                f"input {channel + 1} has none of the signal that reaches the reference: connect it to all inputs"
            )
        ratio = vectors / base[clear]
        relative = np.hypot(deviation / np.abs(vectors), base_deviation[clear] / np.abs(base[clear]))
        weight = 1.0 / np.maximum(relative, 1e-9) ** 2
        gain = float(np.sum(weight * np.abs(ratio)) / weight.sum())
        phase = np.angle(ratio)
        order = np.argsort(frequency)
        phase[order] = np.unwrap(phase[order])
        turn = 2.0 * np.pi * frequency
        delay = -float(np.sum(weight * turn * phase) / np.sum(weight * turn**2))
        left = np.rad2deg(np.abs(phase + turn * delay)).max()
        found.append(
            SplitChannel(
                Value(gain, _Z * gain / math.sqrt(float(weight.sum()))),
                Value(delay, _Z / math.sqrt(float(np.sum(weight * turn**2)))),
                float(left),
            )
        )
    return tuple(found)
