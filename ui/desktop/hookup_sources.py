"""Sources named as the catalogue takes them, with what is honestly known of each; and the simulated machine at rest.

No Qt here but through the choices of the feed.
"""

from __future__ import annotations

import re
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from stillshaft.acquire import catalogue, daq, serialline
from stillshaft.acquire.hookup import Hookup
from stillshaft.acquire.simulated import SimulatedRun
from stillshaft.acquire.source import Block, Source, SourceError
from stillshaft.dsp import units
from stillshaft.ui.desktop import inspect_source
from stillshaft.ui.desktop.feed import Choice
from stillshaft.ui.desktop.simulator import Teaching

_UNTRIED = "never tried on a real device"
_TAP_EVERY_S, _TAP_WIDTH_S, _TAP = 2.5, 0.02, 0.2
_QUIET = 1e-3  # of full scale: what the inputs show at rest


def recording_choice(path: Path) -> Choice:
    """A recording that is played again."""
    return Choice(
        f"Recording {path.name}", "played in its own time; it brings its hook-up along unless another one is set",
        text=f"{catalogue.RECORDING}{path}", brings_hookup=True,
    )  # fmt: skip


def named_choice(text: str, rate: str) -> Choice:
    """A source by its name: serial:PORT, nidaqmx:DEVICE/ai0, uldaq:DEVICE, recording:FILE, simulated:FILE, or a sound input.

    `rate` is the sample rate with its unit, empty: the source's own. Raises SourceError, UnitError in one line.
    """
    text = text.strip()
    if not text:
        raise SourceError("name a source, such as serial:/dev/ttyACM0 or nidaqmx:Dev1/ai0")
    rate_hz = None
    if rate.strip():
        rate_hz = units.parse(f"{rate} Hz" if re.fullmatch(r"\s*[\d.]+\s*", rate) else rate, "Hz", "sample rate")
        if not 100.0 <= rate_hz <= 1e6:
            raise SourceError(f'sample rate: "{rate.strip()}" is not between 100 Hz and 1 MHz')
    if text.startswith(catalogue.RECORDING):
        return recording_choice(Path(text.removeprefix(catalogue.RECORDING)))
    if text.startswith(f"{catalogue.SIMULATED}:"):
        return Choice(text, "the machine that this file describes, simulated", text=text, brings_hookup=True)
    if text.startswith(serialline.PREFIX):
        serialline.board_from(text)
        return Choice(text, f"board on a serial line, samples as the board made them; {_UNTRIED}", True, text=text)
    if text.startswith((daq.NATIONAL, daq.MEASUREMENT_COMPUTING)):
        if rate_hz is None:
            raise SourceError(f"{text}: needs a sample rate, such as 25600 Hz")
        daq.order_from(text, 1, rate_hz, daq.Settings())
        note = f"samples as the device made them, {rate_hz:g} Hz; the program's part for it was {_UNTRIED}"
        return Choice(text, note, True, text=text, rate_hz=rate_hz)
    own = "its own rate" if rate_hz is None else f"{rate_hz:g} Hz"
    return Choice(text, f"sound input by its name, {own}; whether samples are converted is told when it is listed", True,
                  text=text, rate_hz=rate_hz)  # fmt: skip


# the simulated machine at rest


def standing_order(teaching: Teaching, seed: int, *, real_time: bool = True) -> inspect_source.StandingRun:
    """The simulated machine at rest, nobody near."""
    made = inspect_source.simulated_for("background", teaching, seed, 0.0, real_time=real_time)
    assert isinstance(made, inspect_source.StandingRun)
    return made


def tapped_order(hookup: Hookup, teaching: Teaching, seed: int) -> TappedRun:
    """The simulated machine at rest while somebody taps at each sensor in the order of the hook-up, always in real time.

    Sensors are found by their names, those with other names by their place in the list.
    """
    run = standing_order(teaching, seed).run
    names = [sensor.name for sensor in run.sensors]
    order = [names.index(p.name) if p.name in names else n % len(names) for n, p in enumerate(hookup.points)]
    return TappedRun(run, tuple(order))


@dataclass(frozen=True)
class TappedRun:
    """An order for the simulated machine at rest, tapped at these sensors one after the other."""

    run: SimulatedRun
    order: Sequence[int]

    def open(self) -> Source:
        """Begin."""
        return _Tapped(self)


class _Tapped:
    """Quiet inputs; a tap pushes its sensor the positive way, then back."""

    can_wait = False
    silence_limit_s: float | None = None
    skew_s: tuple[float, ...] = ()
    description = "simulated rotor at rest, tapped"

    def __init__(self, order: TappedRun) -> None:
        source = order.run.open()
        self.rate_hz, self.channels = source.rate_hz, source.channels
        source.close()
        self._order = order
        self._rng = np.random.default_rng([order.run.seed, 13])
        self._frames = 0
        self._began = time.monotonic()

    def read(self, timeout_s: float) -> Block | None:
        """The next twentieth of a second."""
        count = round(0.05 * self.rate_hz)
        samples = _QUIET * self._rng.standard_normal((count, self.channels))
        times = (self._frames + np.arange(count)) / self.rate_hz
        for number, sensor in enumerate(self._order.order, start=1):
            within = (times - number * _TAP_EVERY_S) / _TAP_WIDTH_S
            blow = np.where((within > 0.0) & (within < 2.0), np.sin(np.pi * np.clip(within, 0.0, 2.0)), 0.0)
            samples[:, 1 + sensor] += _TAP * blow
        block = Block(self._frames, self.rate_hz, samples.astype(np.float32))
        self._frames += count
        time.sleep(max(0.0, self._began + self._frames / self.rate_hz - time.monotonic()))
        return block

    def close(self) -> None:
        """End."""
