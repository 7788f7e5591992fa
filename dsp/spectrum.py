"""Averaged spectra of samples that come in pieces, and the broadband level in a band that ISO 20816 asks for."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import decimate, units

Real = NDArray[np.float64]

RESOLUTION_HZ = 0.5
LEVEL_HIGHEST_HZ = 1000.0  # of the broadband level
_INDEPENDENT = 0.95  # windows that overlap by half, in parts of as many that do not (Welch 1967, from memory)


class AveragedSpectrum:
    """Mean power of Hann windows that overlap by half, of samples (frames, channels), up to `highest_hz`.

    Lines are `resolution_hz` apart. Samples are brought to a lower rate first where that suffices.
    """

    def __init__(
        self,
        rate_hz: float,
        channels: int,
        highest_hz: float = LEVEL_HIGHEST_HZ,
        resolution_hz: float = RESOLUTION_HZ,
    ) -> None:
        self._made_of = (rate_hz, highest_hz, channels)
        self._reduced = decimate.Decimator(*self._made_of)
        self._size = 2 * round(self._reduced.reduced_hz / resolution_hz / 2)
        self._window = np.hanning(self._size + 1)[:-1]
        self._kept = np.empty((0, channels))
        lines = min(self._size // 2, math.floor(highest_hz / self._reduced.reduced_hz * self._size)) + 1
        self.frequency_hz = np.arange(lines) * self._reduced.reduced_hz / self._size
        self._power = np.zeros((lines, channels))
        self._square = np.zeros((lines, channels))
        self.averages = 0

    def feed(self, samples: NDArray[np.floating]) -> None:
        """Take the next samples."""
        self._kept = np.concatenate([self._kept, self._reduced.feed(samples)])
        while self._kept.shape[0] >= self._size:
            self._take(self._kept[: self._size])
            self._kept = self._kept[self._size // 2 :]

    def interrupt(self) -> None:
        """The next samples do not follow the last ones: no window reaches across."""
        self._reduced = decimate.Decimator(*self._made_of)
        self._kept = self._kept[:0]

    def _take(self, piece: Real) -> None:
        transformed = np.fft.rfft((piece - piece.mean(axis=0)) * self._window[:, None], axis=0)
        power = np.abs(transformed[: self.frequency_hz.size]) ** 2 * (
            2.0 / (self._size * float(np.sum(self._window**2)))
        )
        self._power += power
        self._square += power**2
        self.averages += 1

    def power(
        self, channel: int, from_quantity: str, to_quantity: str, highpass_hz: tuple[float, ...] = ()
    ) -> tuple[Real, Real]:
        """Mean square in each line, of the quantity asked for, AC-coupling corners undone, and its standard deviation.

        The deviation is that of the mean over the windows; not finite from fewer than two. Line 0 is left at 0.
        """
        f = self.frequency_hz[1:]
        weight = np.zeros(self.frequency_hz.size)
        weight[1:] = (2.0 * np.pi * f) ** (2 * units.differentiations(from_quantity, to_quantity))
        for corner in highpass_hz:
            weight[1:] *= 1.0 + (corner / f) ** 2
        count = self.averages
        mean = self._power[:, channel] / max(1, count)
        if count < 2:
            return mean * weight, np.full(mean.size, np.inf)
        scatter = np.maximum(0.0, self._square[:, channel] / count - mean**2) * count / (count - 1)
        return mean * weight, np.sqrt(scatter / (_INDEPENDENT * count)) * weight

    def rms(
        self,
        channel: int,
        from_quantity: str,
        to_quantity: str,
        band_hz: tuple[float, float],
        highpass_hz: tuple[float, ...] = (),
    ) -> float | None:
        """True rms in the band, as `power` gives it; None from too short a record."""
        if not self.averages:
            return None
        inside = (self.frequency_hz >= band_hz[0]) & (self.frequency_hz <= band_hz[1])
        return float(np.sqrt(np.sum(self.power(channel, from_quantity, to_quantity, highpass_hz)[0][inside])))


def overall_band(speed_rpm: float) -> tuple[float, float]:
    """Band of the overall level: 10–1000 Hz, from 2 Hz below 600 r/min (ISO 20816-1, from memory)."""
    return (2.0 if speed_rpm < 600.0 else 10.0, LEVEL_HIGHEST_HZ)
