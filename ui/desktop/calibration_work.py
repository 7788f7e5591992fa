"""Calibration by a known signal: recorded from the chosen source or taken from a file, worked out on a thread."""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from PySide6 import QtCore
from stillshaft.acquire import process
from stillshaft.acquire.hookup import Hookup
from stillshaft.ui import wiring
from stillshaft.ui.desktop.feed import SIMULATED, Feed, order_for
from stillshaft.ui.desktop.hookup_checks import Borrowed, Report
from stillshaft.ui.desktop.work_row import WorkRow
from stillshaft.ui.wiring import Calibrated, WiringError


@dataclass(frozen=True)
class Method:
    """A way to calibrate: its key on the command line, its name, what to do, how long it records, which fields it needs."""

    key: str
    name: str
    do: str
    seconds: float
    fields: tuple[str, ...]


METHODS = {
    method.key: method
    for method in (
        Method("voltage", "Known voltage",
               "Put a sine of a known voltage on the input, instead of the sensor. It gives the full scale in volts.",
               5.0, ("point", "volts", "seconds")),
        Method("shaker", "Hand-held shaker",
               "Hold the accelerometer to the shaker until it runs evenly. It gives the sensitivity; points that do not "
               "see the tone are left out.",
               8.0, ("point", "level", "frequency", "seconds")),
        Method("split", "Split signal",
               "Feed one signal to the pulse input and to the inputs of the sensors at once, best with two tones or "
               "more. It gives the delay of each input against the pulse.",
               8.0, ("point", "seconds")),
        Method("step", "Step",
               "Switch a direct voltage onto the input once, a second or two after the recording begins, and leave it on. "
               "It gives the corners of AC coupling.",
               12.0, ("point", "seconds")),
    )
}  # fmt: skip


@dataclass(frozen=True)
class Asked:
    """What is to be calibrated: points by name (none: all), the known voltage and acceleration with units, frequency, s."""

    method: str
    points: tuple[str, ...]
    volts: str
    level: str
    frequency_hz: float
    seconds: float


class Calibrating(QtCore.QObject):
    """Calibrates one thing at a time on `row`; `found` brings what was asked and the results, `failed` why there are none."""

    found = QtCore.Signal(object, tuple)
    failed = QtCore.Signal(str)

    def __init__(self, feed: Feed, row: WorkRow, borrowed: Borrowed) -> None:
        super().__init__(feed)
        self._feed, self._row, self._borrowed = feed, row, borrowed
        self.busy = False

    def from_recording(self, asked: Asked, recording: Path, hookup: Hookup) -> None:
        """From a file."""
        if not self.busy:
            self.busy = True
            self._run(asked, lambda report: _worked_out(asked, recording, hookup, report), self._over)

    def from_source(self, asked: Asked, hookup: Hookup) -> None:
        """Record from the chosen source, which lets go of what it does."""
        if self.busy:
            return
        if self._feed.choice == SIMULATED:
            self.failed.emit(
                "the simulated rotor has no known signal at its inputs: choose the input that is to be calibrated, or "
                "take a recording"
            )
            return
        self.busy = True
        feed = self._feed
        choice, teaching = feed.choice, feed.teaching

        def work(report: Report) -> tuple[Calibrated, ...]:
            request = order_for(choice, hookup.table, teaching, 1)[1]
            assert request is not None  # only a source without a hook-up has none
            with tempfile.TemporaryDirectory() as folder:
                path = Path(folder) / "known.au"
                names = hookup.channel_names(hookup.channels)
                summary = process.capture(request, path, asked.seconds, hookup.table, names, report)
                if not summary.complete:
                    raise WiringError(f"{choice.name}: {summary.reason or 'the recording ended early'}; record again")
                return _worked_out(asked, path, hookup, report, choice.name)

        def over() -> None:
            self._over()
            self._borrowed.give_back()

        self._borrowed.take(lambda: self._run(asked, work, over))

    def _over(self) -> None:
        self.busy = False

    def _run(self, asked: Asked, work: Callable[[Report], tuple[Calibrated, ...]], over: Callable[[], None]) -> None:
        def done(results: tuple[Calibrated, ...]) -> None:
            over()
            self.found.emit(asked, results)

        def failed(why: str) -> None:
            over()
            self.failed.emit(why)

        self._row.run(work, done, failed)


def _worked_out(
    asked: Asked, recording: Path, hookup: Hookup, report: Report, name: str | None = None
) -> tuple[Calibrated, ...]:
    """On the thread. What is said of the recording names it as `name`."""
    report(1.0, "working it out")
    try:
        return wiring.calibrate_wired(
            asked.method, recording, hookup, asked.points, asked.volts or None, asked.level, asked.frequency_hz
        )
    except ValueError as error:
        raise WiringError(str(error).replace(str(recording), name or recording.name)) from None
