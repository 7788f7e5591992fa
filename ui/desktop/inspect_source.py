"""What a measured check records from: the chosen source, or the simulated rotor run as the check needs it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np
from stillshaft.acquire import simulated
from stillshaft.acquire.simulated import SimulatedRun
from stillshaft.acquire.source import Block, Source
from stillshaft.ui.desktop import simulator
from stillshaft.ui.desktop.feed import SIMULATED, Choice, order_for
from stillshaft.ui.desktop.simulator import Fitted, Teaching

if TYPE_CHECKING:
    from stillshaft.acquire.hookup import Hookup
    from stillshaft.acquire.source import SourceRequest

_FROM_ABOVE, _SLOWEST = 1.15, 0.15  # of running speed, that a coast-down begins and ends at
_BLOWS_S = (1.0, 4.5, 8.0)
_BLOW = 0.05  # of full scale: the hammer itself
_RING = 2.0  # of full scale, for a mode whose shape is 1 where it is hit and where it is seen
_HOLD_S = 0.0005


@dataclass(frozen=True)
class StandingRun:
    """An order for the simulated machine while it stands: its neighbours and noise, with or without blows of a hammer."""

    run: SimulatedRun
    blows: bool

    def open(self) -> Source:
        """Begin."""
        return _Standing(self)


class _Standing:
    """The machine at rest: the pulse stays silent, the inputs show what others make and how the machine rings."""

    skew_s: tuple[float, ...] = ()

    def __init__(self, order: StandingRun) -> None:
        self._source = order.run.open()
        self.rate_hz, self.channels = self._source.rate_hz, self._source.channels
        self.can_wait, self.silence_limit_s = self._source.can_wait, self._source.silence_limit_s
        self.description = "simulated rotor at rest"
        self._order = order
        self._rng = np.random.default_rng([order.run.seed, 12])
        self._sizes = 1.0 + 0.1 * self._rng.standard_normal(len(_BLOWS_S))

    def read(self, timeout_s: float) -> Block | None:
        """The next block, as the machine at rest gives it."""
        block = self._source.read(timeout_s)
        if block is None or not len(block.samples):
            return block
        samples = block.samples.copy()
        samples[:, 0] = 1e-3 * self._rng.standard_normal(len(samples))
        if self._order.blows:
            times = (block.first_frame + np.arange(len(samples))) / block.rate_hz
            samples[:, 1:] += self._rung(times)
        return replace(block, samples=samples.astype(np.float32))

    def _rung(self, times_s: np.ndarray) -> np.ndarray:
        """How the machine rings after each blow, at the first bearing in both directions: (times, sensors)."""
        run = self._order.run
        rung = np.zeros((times_s.size, len(run.sensors)))
        for begin, size in zip(_BLOWS_S, self._sizes, strict=True):
            after = np.maximum(times_s - begin, 0.0)
            rung += size * _BLOW * np.exp(-(((times_s - begin - 2 * _HOLD_S) / _HOLD_S) ** 2))[:, None]
            for key, angle_deg in (("vertical", 0.0), ("horizontal", 90.0)):
                stiffness = (
                    getattr(run.rotor.supports[0], f"{key}_n_per_m"), getattr(run.rotor.supports[1], f"{key}_n_per_m"),
                )  # fmt: skip
                ratio = run.rotor.damping_ratio
                for omega, shape in zip(*_of_modes(run, stiffness), strict=True):
                    decay = np.exp(-ratio * omega * after) * np.sin(omega * np.sqrt(1.0 - ratio**2) * after)
                    for number, sensor in enumerate(run.sensors):
                        seen = np.cos(np.deg2rad(sensor.angle_deg - angle_deg)) * shape[sensor.bearing] * shape[0]
                        rung[:, number] += size * _RING * seen * decay
        return rung

    def close(self) -> None:
        """End."""
        self._source.close()


def _of_modes(run: SimulatedRun, stiffness: tuple[float, float]) -> tuple[np.ndarray, np.ndarray]:
    natural, shapes = simulated.modes(run.rotor, stiffness)
    return natural, shapes.T


def simulated_for(
    what: str, teaching: Teaching, seed: int, seconds: float, *, real_time: bool = True, fitted: Fitted | None = None
) -> SourceRequest:  # fmt: skip
    """The simulated rotor as a check needs it: running, coasting down, at rest, or hit at rest."""
    run = simulator.order(teaching, seed, real_time=real_time, fitted=fitted)
    if what == "sweep":
        slowest, begin = _SLOWEST * teaching.speed_rpm, _FROM_ABOVE * teaching.speed_rpm
        return replace(run, conditions=replace(run.conditions, speed_rpm=slowest, ramp=(begin, 0.9 * seconds)))
    if what in ("bump", "background"):
        quiet = replace(run.conditions, harmonics_m_s2=(), pulse_faults=type(run.conditions.pulse_faults)())
        neighbours = None if what == "bump" else quiet.neighbour
        return StandingRun(
            replace(run, unbalance=(0j,) * len(run.unbalance), conditions=replace(quiet, neighbour=neighbours)),
            what == "bump",
        )
    return run


def request_for(
    what: str, choice: Choice, hookup: Hookup, teaching: Teaching, seed: int, seconds: float, *, real_time: bool = True,
    fitted: Fitted | None = None,
) -> SourceRequest:  # fmt: skip
    """The order for a check from the source that is chosen. Raises SourceError; may take a while."""
    if choice == SIMULATED:
        return simulated_for(what, teaching, seed, seconds, real_time=real_time, fitted=fitted)
    request = order_for(choice, hookup.table, teaching, seed, real_time=real_time)[1]
    assert request is not None  # only a source without a hook-up has none
    return request
