"""Broadband level of a channel in a band, as ISO 20816 asks for it, from averaged Hann-windowed spectra."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import units

Real = NDArray[np.float64]

_RESOLUTION_HZ = 0.5


@dataclass
class BandLevel:
    """Mean power spectrum of samples that come in pieces, shape (frames, channels), half overlapping windows."""

    rate_hz: float
    channels: int
    _kept: Real = field(init=False)
    _power: Real = field(init=False)
    _count: int = 0

    def __post_init__(self) -> None:
        self._size = 2 * round(self.rate_hz / _RESOLUTION_HZ / 2)
        self._window = np.hanning(self._size + 1)[:-1]
        self._kept = np.empty((0, self.channels))
        self._power = np.zeros((self._size // 2 + 1, self.channels))

    def feed(self, samples: Real) -> None:
        """Take the next samples."""
        self._kept = np.concatenate([self._kept, samples])
        while self._kept.shape[0] >= self._size:
            self._take(self._kept[: self._size])
            self._kept = self._kept[self._size // 2 :]

    def _take(self, piece: Real) -> None:
        transformed = np.fft.rfft((piece - piece.mean(axis=0)) * self._window[:, None], axis=0)
        self._power += np.abs(transformed) ** 2 * (2.0 / (self._size * float(np.sum(self._window**2))))
        self._count += 1

    def rms(
        self,
        channel: int,
        from_quantity: str,
        to_quantity: str,
        band_hz: tuple[float, float],
        highpass_hz: tuple[float, ...] = (),
    ) -> float | None:
        """True rms in the band, of the quantity asked for, AC-coupling corners undone; None from too short a record."""
        if not self._count:
            return None
        frequency = np.arange(self._power.shape[0]) * self.rate_hz / self._size
        inside = (frequency >= band_hz[0]) & (frequency <= band_hz[1])
        f = frequency[inside]
        weight = (2.0 * np.pi * f) ** (2 * units.differentiations(from_quantity, to_quantity))
        for corner in highpass_hz:
            weight = weight * (1.0 + (corner / f) ** 2)
        return float(np.sqrt(np.sum(self._power[inside, channel] / self._count * weight)))


def overall_band(speed_rpm: float) -> tuple[float, float]:
    """Band of the overall level: 10–1000 Hz, from 2 Hz below 600 r/min (ISO 20816-1, from memory)."""
    return (2.0 if speed_rpm < 600.0 else 10.0, 1000.0)
