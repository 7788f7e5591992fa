"""Watching a machine settle: its 1x from a source that runs, a vector every few seconds, until it moves no more.

What counts as settled is `solver.inspection.settling`: 2 % and 2° in five minutes, a site rule of the project.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np
from stillshaft.acquire.hookup import Hookup
from stillshaft.dsp.measure import Measurement, Measuring
from stillshaft.solver import inspection
from stillshaft.solver.inspection import Settling

if TYPE_CHECKING:
    from numpy.typing import NDArray

MOVING, UNTOLD, SETTLED = "moving", "cannot be told", "settled"
_STEP_S, _STEP_REVOLUTIONS = 5.0, 20  # that a vector is taken over, whichever is longer
_ORDER = (MOVING, UNTOLD, SETTLED)


@dataclass(frozen=True)
class Watched:
    """How 1x moved: vectors (K,) of each point at `times_s`, and what is to be said of the last five minutes of them.

    `speeds_rpm` (K,) are the mean speeds in them.
    """

    seconds: float
    times_s: NDArray[np.float64]
    speeds_rpm: NDArray[np.float64]
    z: dict[str, NDArray[np.complex128]]
    points: dict[str, Settling]

    @property
    def worst(self) -> tuple[str, Settling]:
        """The point that keeps the machine from being called settled, or the first one."""
        return min(self.points.items(), key=lambda row: _ORDER.index(row[1].verdict))

    @property
    def verdict(self) -> str:
        """Settled, moving, or cannot be told: the worst of all points."""
        return self.worst[1].verdict if self.points else UNTOLD

    @property
    def sentence(self) -> str:
        """How it stands, in words."""
        if not self.points:
            return f"nothing could be measured in {_lasting(self.seconds)}"
        name, worst = self.worst
        if worst.percent is None and self.seconds < inspection.SETTLED_S:
            return f"{self._so_far()}; whether it has settled takes five minutes to tell"
        if worst.verdict == SETTLED:
            return f"settled after {_lasting(self.seconds)}: {name}: {worst.reason}"
        return f"not settled after {_lasting(self.seconds)}: {name}: {worst.reason}"

    def _so_far(self) -> str:
        """How far 1x is from where it began, at the point that moved most."""
        name = max(self.z, key=lambda n: abs(self.z[n][-1] / self.z[n][0] - 1.0) if self.z[n][0] else 0.0)
        first, last = self.z[name][0], self.z[name][-1]
        if not first:
            return f"{name}: there is no 1x to follow"
        ratio = last / first
        percent, turned = 100.0 * (abs(ratio) - 1.0), float(np.degrees(np.angle(ratio)))
        by, turn = (round(value, 1) + 0.0 for value in (percent, turned))  # no −0.0
        return f"{name}: 1x moved by {by:+.1f} % and {turn:+.1f}° in {_lasting(self.seconds)}"


def _lasting(seconds: float) -> str:
    return f"{seconds:.0f} s" if seconds < 100.0 else f"{seconds / 60.0:.1f} min"


def of_measurement(measured: Measurement) -> Watched:
    """The same of a run that was measured as a whole."""
    seconds = float(measured.times_s[-1] - measured.times_s[0]) if measured.times_s.size else 0.0
    return told(seconds, measured.times_s, measured.speeds_rpm, {p.name: p.blocks for p in measured.points})


def told(
    seconds: float,
    times_s: NDArray[np.float64],
    speeds_rpm: NDArray[np.float64],
    z: dict[str, NDArray[np.complex128]],
) -> Watched:
    """What is to be said of vectors (K,) of each point at `times_s`, and the speeds (K,) that they were seen at."""
    known = {name: values for name, values in z.items() if values.size >= 2}
    points = {name: inspection.settling(times_s, values) for name, values in known.items()}
    return Watched(seconds, times_s, speeds_rpm, known, points)


class Watch:
    """Takes samples as they come; each few seconds of them make one vector of each point."""

    def __init__(self, rate_hz: float, hookup: Hookup) -> None:
        self._rate_hz, self._hookup, self._pulse = rate_hz, hookup, hookup.pulse
        self._frames = self._step_began = 0
        self._measuring = self._anew()
        self._step = round(_STEP_S * rate_hz)
        self._times_s: list[float] = []
        self._speeds_rpm: list[float] = []
        self._z: list[list[complex]] = []
        self.measured: Measurement | None = None  # of the last whole step
        self.trouble: str | None = None

    def _anew(self) -> Measuring:
        return Measuring(self._rate_hz, self._pulse, self._hookup.points, self._hookup.display)

    def feed(self, samples: NDArray[np.floating], lost_before: int | None = None) -> bool:
        """Take the next samples; True where they end a step. What cannot be measured is `trouble`, and no vector."""
        if lost_before is not None:  # no vector reaches across a hole
            self._frames += lost_before
            self._measuring, self._step_began = self._anew(), self._frames
        ended = False
        while len(samples):
            left = self._step - (self._frames - self._step_began)
            ended = self._take(samples[:left]) or ended
            samples = samples[left:]
        return ended

    def _take(self, samples: NDArray[np.floating]) -> bool:
        """Take samples of one step; True where they end it."""
        self._frames += len(samples)
        whole = self._frames - self._step_began >= self._step
        try:
            self._measuring.feed(samples)
            if not whole:
                return False
            measured = self._measuring.result()
        except ValueError as error:
            if not type(error).__module__.startswith("stillshaft."):
                raise
            if not whole:
                return False
            self.trouble = str(error)
        else:
            self.measured, self.trouble = measured, None
            self._times_s.append(0.5 * (self._step_began + self._frames) / self._rate_hz)
            self._speeds_rpm.append(measured.speed.mean_rpm)
            self._z.append([p.z for p in measured.points])
            # one edge for all steps, and steps as long as a slow shaft needs
            self._pulse = replace(self._pulse, edge=measured.edge)
            self._step = round(self._rate_hz * max(_STEP_S, 60.0 * _STEP_REVOLUTIONS / measured.speed.mean_rpm))
        self._measuring, self._step_began = self._anew(), self._frames
        return True

    def watched(self) -> Watched:
        """How it stands."""
        z = np.array(self._z, dtype=np.complex128).reshape(len(self._z), len(self._hookup.points))
        by_point = {p.name: z[:, i] for i, p in enumerate(self._hookup.points)}
        return told(self._frames / self._rate_hz, np.array(self._times_s), np.array(self._speeds_rpm), by_point)


def until_settled(
    read: Callable[[], tuple[NDArray[np.floating], int | None] | None],
    watch: Watch,
    longest_s: float,
    show: Callable[[Watched, Measurement | None, str | None], None],
) -> Watched:
    """Watch what is read until it has settled, for so long at the most; `show` sees each step. None of `read`: nothing yet."""
    while True:
        block = read()
        if block is None or not watch.feed(*block):
            continue
        watched = watch.watched()
        show(watched, watch.measured, watch.trouble)
        if watched.verdict == SETTLED or watched.seconds >= longest_s:
            return watched
