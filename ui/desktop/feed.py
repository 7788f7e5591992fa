"""The source that all pages look at: chosen here, started and stopped here, polled here, newest result first.

Nothing on this thread waits for a device: what may take a while is done by `Tasks`, and a source that ends is looked
after by the same timer that polls one that runs.
"""

from __future__ import annotations

import time
from dataclasses import dataclass
from enum import Enum
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray
from PySide6 import QtCore
from stillshaft.acquire import catalogue, simulated, soundcard
from stillshaft.acquire import hookup as hookups
from stillshaft.acquire.hookup import Hookup
from stillshaft.dsp import check
from stillshaft.ui.desktop import settings, simulator
from stillshaft.ui.desktop.simulator import Fitted, Teaching
from stillshaft.ui.desktop.tasks import Tasks
from stillshaft.ui.desktop.watch import Glance, Watch
from stillshaft.ui.live import Snapshot

if TYPE_CHECKING:
    from stillshaft.acquire.source import SourceRequest

_POLL_MS = 50
CHECK_S = 10.0  # of samples that the signal check looks at
_LEAST_CHECK_S = 4.0
_TRY_AGAIN_S = 1.0


class Status(Enum):
    """What the source does; the value is the word for it."""

    STOPPED = "stopped"
    STARTING = "starting"
    RUNNING = "running"
    STOPPING = "stopping"
    AWAY = "waited for"


@dataclass(frozen=True)
class Choice:
    """A source to choose: its name, what to know of it in words, and whether that is a caution.

    It is a sound input that was `found`, or what the catalogue takes as `text` with `rate_hz`, or the simulated rotor;
    `brings_hookup` says that it has a hook-up of its own.
    """

    name: str
    note: str
    caution: bool = False
    found: soundcard.SoundInput | None = None
    text: str = ""
    rate_hz: float | None = None
    brings_hookup: bool = False


SIMULATED = Choice(
    "Simulated rotor", "makes its own samples, with the faults and masses of its panel; for learning and teaching",
    brings_hookup=True,
)  # fmt: skip


def sound_choice(found: soundcard.SoundInput) -> Choice:
    """A sound input with what is honestly known of it."""
    size = f"{found.channels} {'input' if found.channels == 1 else 'inputs'}, {found.default_rate_hz:.0f} Hz"
    if found.converted:
        note = f"{size}; its name says that software stands between, which may convert the samples"
    else:
        note = f"{size}; nothing in its name says that samples are converted on the way"
    few = "; one input only: pulse and vibration need two" if found.channels < 2 else ""
    return Choice(f"{found.host_api}/{found.name}", note + few, found.converted or found.channels < 2, found)


def recording_choice(path: Path, name: str) -> Choice:
    """A recording that is played again."""
    text = f"{catalogue.RECORDING}{path}"
    return Choice(f"Recording of {name}", f"played again from {path.name}", text=text, brings_hookup=True)


def order_for(
    choice: Choice,
    table: dict[str, Any] | None,
    teaching: Teaching,
    seed: int,
    *,
    real_time: bool = True,
    fitted: Fitted | None = None,
) -> tuple[dict[str, Any] | None, SourceRequest | None]:
    """Content of the hook-up and order for a source; None where the source needs a hook-up and none is given.

    Without `table` the source's own hook-up holds. Raises SourceError, HookupError; may take a while.
    """
    wired = None if table is None else hookups.hookup_from(table)
    if choice == SIMULATED:
        run = simulator.order(teaching, seed, real_time=real_time, fitted=fitted)
        if wired is not None:
            wired.refuse_fewer_inputs(1 + len(run.sensors), "the simulated rotor")
        return table or simulator.hookup(), run
    if wired is None and not choice.brings_hookup:
        return None, None
    if choice.found is not None:
        return table, catalogue.sound_input(choice.found, wired, choice.rate_hz).request
    chosen = catalogue.choose(choice.text, wired, choice.rate_hz, catalogue.Simulation(real_time=real_time))
    if table is None and chosen.hookup is None:
        raise hookups.HookupError(f"{choice.name}: carries no hook-up; make one, or choose a hook-up file")
    return table or chosen.hookup, chosen.request


def _wired_alike(one: dict[str, Any], other: dict[str, Any]) -> bool:
    """Whether two hook-ups differ in the edge of the pulse only."""
    plain = [{**t, "pulse": {k: v for k, v in t.get("pulse", {}).items() if k != "edge"}} for t in (one, other)]
    return plain[0] == plain[1]


class Feed(QtCore.QObject):
    """The chosen source. `changed` tells of source, hook-up, status or trouble; `glanced` and `measured` of results."""

    changed = QtCore.Signal()
    listed = QtCore.Signal()
    glanced = QtCore.Signal(Glance)
    measured = QtCore.Signal(Snapshot)
    checked = QtCore.Signal(tuple)

    def __init__(self, parent: QtCore.QObject | None = None, *, real_time: bool = True, seed: int = 1) -> None:
        super().__init__(parent)
        self._real_time, self._seed, self._starts = real_time, seed, 0
        self.tasks = Tasks(self)
        self.choices: tuple[Choice, ...] = (SIMULATED,)
        self._sounds: tuple[Choice, ...] = ()
        self._named: tuple[Choice, ...] = ()
        self.choice = SIMULATED
        self.teaching = Teaching()
        self.fitted = Fitted()
        self._hands = simulated.Placing(seed)
        self._came = False  # something, since it was started
        self._due_s = 0.0  # of the next try, where the source went away
        self.hookup: Hookup | None = None
        self.table: dict[str, Any] | None = None  # content of the hook-up, whatever unit is shown
        self._given: dict[str, dict[str, Any]] = {}  # by source, where it brings one along
        self.hookup_file: Path | None = None
        self.unit = settings.UNITS[0]
        self.trouble: str | None = None  # the newest of the source
        self.remark: str | None = None  # why inputs could not be found, or signals not be checked
        self.failure: str | None = None  # why the source that was started does not run, as long as that is so
        self.status = Status.STOPPED
        self.watch: Watch | None = None
        self.snapshot: Snapshot | None = None
        self.glance: Glance | None = None
        self.looking = False  # for sound inputs
        self.checking = False
        self.looked_at: tuple[NDArray[np.float32], float, Hookup] | None = None  # samples of the last check, with rate
        self._ending: list[Watch] = []
        self._wanted = False
        self._request: SourceRequest | None = None
        self._preparing = 0
        self._seen = 0
        self._timer = QtCore.QTimer(self)
        self._timer.setTimerType(QtCore.Qt.TimerType.PreciseTimer)
        self._timer.setInterval(_POLL_MS)
        self._timer.timeout.connect(self._poll)
        self._prepare()

    # what the person does

    def start(self) -> None:
        """Let the source run."""
        self._wanted, self.trouble, self.failure, self._came = True, None, None, False
        self.remark, self._due_s = None, 0.0
        self._set(Status.STARTING)
        self._prepare()

    def stop(self) -> None:
        """Stop it; figures stay as they are."""
        self._wanted, self.failure = False, None
        self._let_go()
        self._set(Status.STOPPING if self._ending else Status.STOPPED)

    def choose(self, choice: Choice) -> None:
        """Take another source; what runs is stopped."""
        if choice == self.choice:
            return
        self.choice, self.trouble, self.remark = choice, None, None
        self.table = self._given.get(self._wired_as, simulator.hookup() if choice == SIMULATED else None)
        self.stop()
        self._prepare()

    def use_hookup(self, path: Path) -> None:
        """Read a hook-up file, for sources that bring none along."""
        self.hookup_file, self.trouble, self.failure = path, None, None
        self._given.pop("", None)
        self._renew()

    def use_table(self, table: dict[str, Any]) -> None:
        """Take a hook-up by its content, which was checked; what runs starts anew."""
        before = self._given.get(self._wired_as) or self.table
        if table != self._given.get(self._wired_as):
            self._given[self._wired_as] = table
            if before is not None and _wired_alike(before, table):
                self.table = table  # the pulse's edge is resolved by now: what runs runs on
                return
            self.trouble, self.failure, self.table = None, None, table
            self._renew()

    def fit(self, fitted: Fitted) -> None:
        """What the job has on the rotor: the simulated one stands still while that is changed, and hands are not exact."""
        fitted = Fitted(fitted.planes, tuple(self._hands.really(*piece) for piece in fitted.pieces))
        if fitted != self.fitted:
            self.fitted = fitted
            if self.choice == SIMULATED:
                if self.status is not Status.STOPPED:
                    self.stop()
                self._prepare()

    def offer(self, choice: Choice) -> None:
        """Add a source that was named to those there are to choose."""
        self._named = (*(c for c in self._named if c.name != choice.name), choice)
        self._list()

    def _list(self) -> None:
        self.choices = (SIMULATED, *self._sounds, *self._named)
        self.listed.emit()

    @property
    def replays(self) -> bool:
        """Whether the source is a recording that is played again."""
        return self.choice.text.startswith(catalogue.RECORDING)

    @property
    def _wired_as(self) -> str:
        """All sources that bring no hook-up along share one."""
        return self.choice.name if self.choice.brings_hookup else ""

    def apply(self, teaching: Teaching) -> None:
        """Run the simulated rotor so; it starts anew if it runs."""
        self.teaching = teaching
        self._renew()

    def set_unit(self, unit: str) -> None:
        """Show vibration in this unit; figures begin anew."""
        if unit != self.unit:
            self.unit = unit
            self._renew()

    def list_inputs(self) -> None:
        """Look for sound inputs; `listed` tells when they are known."""
        if self.looking:
            return
        self.looking, self.remark = True, None
        self.changed.emit()
        self.tasks.run("looking for inputs", soundcard.list_inputs, self._listed, self._not_listed)

    def examine(self, nameplate_rpm: float | None = None) -> None:
        """Check the signals of the last seconds; `checked` brings the findings."""
        watch = self.watch
        recent = None if watch is None else watch.recent
        if recent is None or self.hookup is None or self.checking:
            return
        hookup = self.hookup

        def work() -> tuple[check.Finding, ...]:
            samples = recent.last(round(CHECK_S * recent.rate_hz))
            if len(samples) < _LEAST_CHECK_S * recent.rate_hz:
                seconds = len(samples) / recent.rate_hz
                raise ValueError(f"{seconds:.1f} s of samples: the check needs {_LEAST_CHECK_S:.0f} s; wait a little")
            self.looked_at = samples, recent.rate_hz, hookup
            return check.examine(
                samples.astype(np.float64), recent.rate_hz, hookup.pulse, hookup.points, hookup.display, nameplate_rpm
            )

        self.checking, self.remark = True, None
        self.changed.emit()
        self.tasks.run("signal check", work, self._examined, self._not_examined)

    def close(self) -> None:
        """Stop everything and wait for it."""
        self._wanted = False
        self._timer.stop()
        self._let_go()
        for watch in self._ending:
            watch.close()
        self._ending.clear()
        self.tasks.close()

    # what comes of it

    def _renew(self) -> None:
        """Prepare anew, and start again if it ran."""
        if self._wanted:
            self._let_go()
            self._set(Status.STARTING)
        self._prepare()

    def _prepare(self) -> None:
        """Have the order for the source and the hook-up made on a thread."""
        self._preparing += 1
        number, choice, teaching, fitted = self._preparing, self.choice, self.teaching, self.fitted
        table, path = self._given.get(self._wired_as), None if choice.brings_hookup else self.hookup_file
        unit, seed = self.unit, self._seed + self._starts

        def work() -> tuple[int, dict[str, Any] | None, Hookup | None, SourceRequest | None]:
            given = table if table is not None or path is None else hookups.load_hookup(path).table
            used, request = order_for(choice, given, teaching, seed, real_time=self._real_time, fitted=fitted)
            if used is None or request is None:
                return number, None, None, None
            shown = used if unit == settings.UNITS[0] else {**used, "display": unit}
            return number, used, hookups.hookup_from(shown), request

        self._request = None
        self.tasks.run("preparing", work, self._prepared, lambda why: self._not_prepared(number, why))

    def _prepared(self, made: tuple[int, dict[str, Any] | None, Hookup | None, SourceRequest | None]) -> None:
        number, table, hookup, request = made
        if number != self._preparing:
            return  # something was changed since
        self.table, self.hookup, self._request = table, hookup, request
        if request is None and self._wanted:
            self._fail(f"{self.choice.name}: says nothing of sensors; choose a hook-up file first")
            return
        if self._wanted:
            self._timer.start()
            self._poll()
        self.changed.emit()

    def _not_prepared(self, number: int, why: str) -> None:
        if number == self._preparing:
            self._fail(why)

    def _fail(self, why: str) -> None:
        if self._wanted and not (self.replays and self._came):  # a recording has its end
            self.failure = why
        self.trouble, self._wanted = why, False
        self._let_go()
        self._set(Status.STOPPING if self._ending else Status.STOPPED)

    def _set(self, status: Status) -> None:
        self.status = status
        if status is not Status.STOPPED:
            self._timer.start()
        self.changed.emit()

    def _let_go(self) -> None:
        if self.watch is not None:
            self.watch.stop_soon()
            self._ending.append(self.watch)
            self.watch = None

    def _poll(self) -> None:
        self._ending = [w for w in self._ending if not w.ended]
        due = time.monotonic() >= self._due_s
        if self._wanted and self.watch is None and not self._ending and self._request is not None and due:
            assert self.hookup is not None
            self._starts += 1
            self._seen = 0
            self.snapshot = self.glance = None
            self.watch = Watch(self._request, self.hookup)
        if self.watch is not None:
            self._take(self.watch)
        elif not self._wanted and not self._ending:
            self._timer.stop()
            if self.status is not Status.STOPPED:
                self._set(Status.STOPPED)

    def _take(self, watch: Watch) -> None:
        """Hand on what is new."""
        glance, snapshot = watch.glance, watch.latest
        if glance is not None and glance.number != self._seen:
            self._seen = glance.number
            self.glance = glance
            self._came = True
            if self.status in (Status.STARTING, Status.AWAY):
                self.trouble = self.failure = None
                self._set(Status.RUNNING)
            self.glanced.emit(glance)
        if snapshot is not None and snapshot is not self.snapshot:
            self.snapshot = snapshot
            self.measured.emit(snapshot)
            if snapshot.ended is not None and self._came and self.choice.found is not None:
                self._wait_for_it(snapshot.ended)
            elif snapshot.ended is not None:
                self._fail(snapshot.ended)

    def _wait_for_it(self, why: str) -> None:
        """The input went away: try again until it is back, or the person stops it."""
        self.trouble = self.failure = why
        self._due_s = time.monotonic() + _TRY_AGAIN_S
        self._let_go()
        self._set(Status.AWAY)

    def _listed(self, found: list[soundcard.SoundInput]) -> None:
        self.looking = False
        self._sounds = tuple(sound_choice(f) for f in found)
        self.remark = None if found else "no sound input is there: plug one in and look again"
        self._list()
        self.changed.emit()

    def _not_listed(self, why: str) -> None:
        self.looking = False
        self.remark = why
        self.changed.emit()

    def _examined(self, findings: tuple[check.Finding, ...]) -> None:
        self.checking = False
        self.checked.emit(findings)
        self.changed.emit()

    def _not_examined(self, why: str) -> None:
        self.checking = False
        self.remark = why
        self.changed.emit()
