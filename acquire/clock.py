"""Counts samples against the clock: no overflow flag is no proof that nothing was lost, and some layers never raise one.

How late the samples are is followed by two clocks, the driver's own times of conversion, where they make sense, and
the arrival of the blocks. A step in both is a loss; a late block alone is only late.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field

_DRIFT = 300e-6  # by which sample clock and computer clock may run apart
_STEP_BLOCKS = 2.0  # lateness that is more than jitter
_SANE_S = 1.0  # between time of conversion and now, in the driver's own clock


@dataclass
class _Lateness:
    """Lower envelope of a lateness: what no delay explains."""

    least_s: float = math.inf
    at_s: float = 0.0

    def over(self, late_s: float, now_s: float) -> float:
        """How far above the envelope, which is moved along."""
        self.least_s += _DRIFT * max(0.0, now_s - self.at_s) if math.isfinite(self.least_s) else 0.0
        self.at_s = now_s
        self.least_s = min(self.least_s, late_s)
        return late_s - self.least_s


@dataclass
class SampleClock:
    """The clock of one stream; `slack_s` is how much later than usual a block may arrive without being lost."""

    rate_hz: float
    block_s: float
    slack_s: float
    _arrival: _Lateness = field(default_factory=_Lateness)
    _conversion: _Lateness = field(default_factory=_Lateness)
    _last_conversion_s: float = -math.inf

    def lost(
        self, frames_before: int, arrived_s: float, converted_s: float, driver_now_s: float, *, more_waiting: bool
    ) -> int | None:
        """Frames that were lost before the block that begins with frame `frames_before`; None where none were.

        `arrived_s` is monotonic; `converted_s` and `driver_now_s` are the driver's, 0 where it gives none. A block that
        others wait behind is late and nothing else.
        """
        due_s = frames_before / self.rate_hz
        sane = self._last_conversion_s < converted_s <= driver_now_s + _SANE_S
        sane = sane and converted_s > 0.0 and driver_now_s - converted_s < _SANE_S
        by_arrival_s = self._arrival.over(arrived_s - due_s, arrived_s)
        by_conversion_s = self._conversion.over(converted_s - due_s, arrived_s) if sane else 0.0
        if sane:
            self._last_conversion_s = converted_s
        limit_s = _STEP_BLOCKS * self.block_s
        if sane:
            # the computer's clock may have been set: the arrival must say so too
            step_s = by_conversion_s if by_arrival_s > 0.5 * by_conversion_s else 0.0
        else:
            step_s = by_arrival_s - self.slack_s if not more_waiting else 0.0
        if step_s <= limit_s:
            return None
        step_s = by_conversion_s if sane else by_arrival_s
        self._arrival, self._conversion = _Lateness(), _Lateness()
        return round(step_s * self.rate_hz)
