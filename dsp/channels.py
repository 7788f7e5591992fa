"""What can be wrong with a channel, seen from its samples: silent, clipped, not finite, or swapped with the pulse."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Protocol

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp.units import InputError

Real = NDArray[np.float64]
Samples = NDArray[np.floating[Any]]

_FULL_SCALE = 0.999
_MOST_LOOKED_AT = 20_000  # samples of each channel, for how its values are spread
_FEWEST_LOOKED_AT = 2000
_EVERY = 7  # sample is looked at: no divisor of usual samples per revolution
_FEW_BETWEEN, _FEWEST_ASIDE = 0.03, 0.002  # parts of the samples of a pulse channel


HAND_PROBE = "hand probe"
# highest frequency that a mount hands on, Hz: ISO 5348, from memory, rounded down
USABLE_HZ = {"stud": 5000.0, "adhesive": 3000.0, "flat magnet": 2000.0, "two-pole magnet": 1000.0, HAND_PROBE: 500.0}


class ChannelError(InputError):
    """A channel that cannot be used: the message says which, why, and what to do."""


class PulseChannel(Protocol):
    """What is needed of the pulse input; angles in degrees."""

    @property
    def index(self) -> int: ...  # noqa: D102
    @property
    def edge(self) -> str: ...  # noqa: D102
    @property
    def pulses_per_rev(self) -> int: ...  # noqa: D102
    @property
    def reference(self) -> str: ...  # noqa: D102


class PointChannel(Protocol):
    """What is needed of a point's input: SI units; `si_per_reading` carries the sign of an inverted sensor."""

    @property
    def name(self) -> str: ...  # noqa: D102
    @property
    def index(self) -> int: ...  # noqa: D102
    @property
    def quantity(self) -> str: ...  # noqa: D102
    @property
    def si_per_reading(self) -> float: ...  # noqa: D102
    @property
    def delay_s(self) -> float: ...  # noqa: D102
    @property
    def highpass_hz(self) -> tuple[float, ...]: ...  # noqa: D102
    @property
    def mount(self) -> str | None: ...  # noqa: D102


class Inputs:
    """Takes the wired inputs out of samples (frames, inputs) in units of full scale, and watches them."""

    def __init__(self, rate_hz: float, pulse: PulseChannel, points: Sequence[PointChannel]) -> None:
        self.rate_hz, self.pulse, self.points = rate_hz, pulse, tuple(points)
        self.frames = 0
        self._wanted = [p.index for p in self.points]
        self._clipped = np.zeros(len(self.points), dtype=np.int64)
        self._low = np.full(len(self.points), np.inf)
        self._high = np.full(len(self.points), -np.inf)
        self._looked_at: list[Real] = []
        self._swapped: int | None = None  # number of the point that seems to carry the pulse

    def take(self, samples: NDArray[np.generic]) -> tuple[Samples, Real]:
        """Vibration (frames, points) and pulse (frames,). Raises ChannelError for a value that is not finite."""
        kind = np.float64 if samples.dtype == np.float64 else np.float32
        with np.errstate(invalid="ignore"):  # what is not a number is refused below, where it stands
            vibration: Samples = np.ascontiguousarray(samples[:, self._wanted], dtype=kind)
            pulse = np.asarray(samples[:, self.pulse.index], dtype=np.float64)
        if pulse.size:
            low, high = _extremes(vibration)
            if not np.isfinite((low, high)).all() or not np.isfinite((pulse.min(), pulse.max())).all():
                self._refuse_not_finite(samples)
            self._low, self._high = np.minimum(self._low, low), np.maximum(self._high, high)
            if self.points and max(-low.min(), high.max()) >= _FULL_SCALE:
                self._clipped += np.count_nonzero(np.abs(vibration) >= _FULL_SCALE, axis=0)
        if len(self._looked_at) * len(samples) < _MOST_LOOKED_AT * _EVERY:
            self._looked_at.append(np.column_stack([pulse[::_EVERY], vibration[::_EVERY]]))
            self._swapped = _swapped(np.concatenate(self._looked_at))
        self.frames += pulse.size
        return vibration, pulse

    def _refuse_not_finite(self, samples: NDArray[np.generic]) -> None:
        wanted = [self.pulse.index, *self._wanted]
        frame, channel = (int(i) for i in np.argwhere(~np.isfinite(samples[:, wanted]))[0])
        raise ChannelError(
            f"input {wanted[channel] + 1} has a value that is not finite at "
            f"{(self.frames + frame) / self.rate_hz:.3f} s: the file is damaged; record again"
        )

    def check(self) -> None:
        """Raise ChannelError for an empty record and for a point that is silent, clipped, held by hand, or the pulse."""
        if not self.frames:
            raise ChannelError("no samples: the recording is empty; record again")
        for point in self.points:
            if point.mount == HAND_PROBE:
                raise ChannelError(
                    f'input {point.index + 1} ("{point.name}") is held by hand: its phase does not repeat; mount the sensor '
                    "with a magnet, adhesive or a stud"
                )
        rows = zip(self.points, self._low, self._high, self._clipped, strict=True)
        for number, (point, low, high, clipped) in enumerate(rows):
            where = f'input {point.index + 1} ("{point.name}")'
            if low == high:
                permission = ", and that the system lets this program record" if low == 0.0 else ""
                raise ChannelError(
                    f"{where} is silent: every sample is {low:g}; check the sensor, its supply and the cable{permission}"
                )
            if number == self._swapped:
                raise ChannelError(
                    f"{where} looks like a pulse and the pulse input {self.pulse.index + 1} does not: they seem to be "
                    "swapped; change the cables or the input numbers in the hook-up"
                )
            if clipped:
                raise ChannelError(
                    f"{where} is clipped: {clipped} samples at full scale; "
                    "lower the gain or choose a larger range, record again"
                )


def _swapped(looked_at: Real) -> int | None:
    """Number of a point whose values lie as a pulse's do, where the pulse's, in the first column, do not."""
    if looked_at.shape[0] < _FEWEST_LOOKED_AT or _two_levels(looked_at[:, 0]):
        return None
    return next((n for n, column in enumerate(looked_at.T[1:]) if _two_levels(column)), None)


def _two_levels(x: Real) -> bool:
    """True where the values lie at a level and, for a small part, at another one above or below it."""
    low, high = np.quantile(x, [0.002, 0.998])
    if low == high:
        return False
    place = (x - low) / (high - low)
    between = np.mean((place > 0.3) & (place < 0.7))
    above = np.mean(place >= 0.7)
    return bool(between < _FEW_BETWEEN and min(above, 1.0 - above) >= _FEWEST_ASIDE)


def _extremes(samples: Samples) -> tuple[Real, Real]:
    """Lowest and highest value of each channel; many frames are looked at side by side, which is quicker."""
    frames, channels = samples.shape
    folded = samples[: frames // 64 * 64].reshape(-1, 64 * channels)
    rest = samples[frames // 64 * 64 :]
    with np.errstate(invalid="ignore"):  # what is not a number is refused by who asks
        low, high = (
            f(np.concatenate([f(folded, axis=0).reshape(64, channels), rest]) if folded.size else rest, axis=0)
            for f in (np.min, np.max)
        )
        return low.astype(np.float64), high.astype(np.float64)
