"""What a source of samples is: blocks that carry rate, first frame and gap mark, and the protocol to read them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp.units import InputError


class SourceError(InputError):
    """A source that cannot be opened or read: the message says which, why, and what to do next."""


class SourceLost(SourceError):
    """A source that delivered and then went away; what came before is kept."""


@dataclass(frozen=True)
class Block:
    """Consecutive frames of one source.

    `samples` is float32 of shape (frames, channels), in units of digital full scale; `first_frame` counts from the
    start of the source; about `lost_before` frames were lost just before this block, −1: nobody knows how many, None:
    none were.
    """

    first_frame: int
    rate_hz: float
    samples: NDArray[np.float32]
    lost_before: int | None = None


class Source(Protocol):
    """An opened source. It is opened by its constructor, read from one thread, and closed once.

    `can_wait` says that it makes its samples when they are asked for; `silence_limit_s` is after how long without a
    block it counts as lost, None for what cannot fall silent; `skew_s` is how much later than the first each input is
    sampled, empty where all are sampled at once.
    """

    rate_hz: float
    channels: int
    description: str
    can_wait: bool
    silence_limit_s: float | None
    skew_s: tuple[float, ...]

    def read(self, timeout_s: float) -> Block | None:
        """Next block; an empty block when nothing came within the timeout; None at the end of a finite source.

        Raises SourceLost when the device went away.
        """

    def close(self) -> None:
        """Release the device. Never called twice."""


class SourceRequest(Protocol):
    """A picklable order for a source, sent to the acquisition process, which opens it there.

    It may have a method `volume` that tells the mixer's volume as text, None where it cannot be read.
    """

    def open(self) -> Source:
        """Open the source; raises SourceError with one clear line."""
