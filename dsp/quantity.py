"""Waveforms from one quantity to another over a band: acceleration, velocity and displacement, both ways.

In the frequency domain, where a derivative is jω and an integral 1/(jω); AC-coupling corners and the delay of the channel
are undone on the way. Below the band the result is taken away: an integral of what drifts is only drift. The order
vectors have their own conversion at a single frequency, in `vectors`.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import units
from stillshaft.dsp.channels import PointChannel
from stillshaft.dsp.units import InputError

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

_FLANK = np.sqrt(2.0)  # the band fades out over half an octave on either side
_SETTLING = 10.0  # cycles of the band's lower end after which the ends of a piece no longer matter
_LOWEST = 1e-6  # of a band, over the sample rate
_LEAST_PIECE = 1 << 15  # frames


class QuantityError(InputError):
    """A conversion that is not possible: the message says why."""


class BandConverter:
    """Turns readings (frames, channels) that come in pieces into the quantity asked for, SI units.

    `settled` frames at the beginning and at the end are not given back: they would need samples from beyond.
    Raises QuantityError for a band that does not fit the sample rate.
    """

    def __init__(
        self, rate_hz: float, channels: Sequence[PointChannel], quantity: str, band_hz: tuple[float, float]
    ) -> None:
        low, high = band_hz
        if not rate_hz * _LOWEST <= low < high <= 0.5 * rate_hz:
            raise QuantityError(
                f"band {low:g} to {high:g} Hz: must rise, begin at {rate_hz * _LOWEST:g} Hz or above and end below half "
                f"the sample rate {rate_hz:g} Hz"
            )
        from scipy.fft import next_fast_len

        self.settled = int(np.ceil(_SETTLING / low * rate_hz))
        self._size = int(next_fast_len(max(_LEAST_PIECE, 8 * self.settled), real=True))
        frequency = np.arange(self._size // 2 + 1) * rate_hz / self._size
        self._gain = np.stack([gain(frequency, c, quantity, band_hz) for c in channels], axis=1)
        self._kept = np.empty((0, len(channels)))

    def feed(self, samples: NDArray[np.floating], *, last: bool = False) -> Real:
        """The converted frames that can be told by now; `last` says that no more will come."""
        self._kept = np.concatenate([self._kept, samples])
        done = []
        while self._kept.shape[0] >= self._size or (last and self._kept.shape[0] > 2 * self.settled):
            piece = self._kept[: self._size]
            spectrum = np.fft.rfft(piece, self._size, axis=0)
            whole = np.fft.irfft(spectrum * self._gain, self._size, axis=0)
            done.append(whole[self.settled : piece.shape[0] - self.settled])
            self._kept = self._kept[piece.shape[0] - 2 * self.settled :]
            if last and piece.shape[0] < self._size:
                break
        return np.concatenate(done) if done else np.empty((0, self._gain.shape[1]))


def gain(frequency_hz: Real, channel: PointChannel, quantity: str, band_hz: tuple[float, float]) -> Complex:
    """What each frequency of a reading is multiplied by, in the e^{+jωt} sense."""
    low, high = band_hz
    inside = (frequency_hz > low / _FLANK) & (frequency_hz < high * _FLANK)
    f = frequency_hz[inside]
    # raised cosines on a logarithmic scale
    below = np.clip(np.log(low / f) / np.log(_FLANK), 0.0, 1.0)
    above = np.clip(np.log(f / high) / np.log(_FLANK), 0.0, 1.0)
    shape = 0.25 * (1.0 + np.cos(np.pi * below)) * (1.0 + np.cos(np.pi * above))
    turned = (2j * np.pi * f) ** units.differentiations(channel.quantity, quantity)
    undone = np.exp(2j * np.pi * f * channel.delay_s)
    for corner in channel.highpass_hz:
        undone = undone * (corner + 1j * f) / (1j * f)
    result = np.zeros(frequency_hz.size, dtype=np.complex128)
    result[inside] = channel.si_per_reading * shape * turned * undone
    return result
