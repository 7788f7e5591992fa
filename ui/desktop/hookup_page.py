"""The Hook-up page: source, inputs, pulse, rotor face, checks of the signals, calibration."""

from __future__ import annotations

import datetime
from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6 import QtWidgets
from stillshaft.acquire import hookup as hookups
from stillshaft.dsp import check
from stillshaft.solver import cautions
from stillshaft.ui.desktop import hookup_model, look, parts
from stillshaft.ui.desktop import words as language
from stillshaft.ui.desktop.brief_fields import Field
from stillshaft.ui.desktop.calibration_card import CalibrationCard
from stillshaft.ui.desktop.calibration_work import Asked, Calibrating
from stillshaft.ui.desktop.feed import CHECK_S, SIMULATED, Feed, Status
from stillshaft.ui.desktop.hookup_checks import SIGNALS, TAPS, Borrowed, Checks
from stillshaft.ui.desktop.hookup_form import FormCard
from stillshaft.ui.desktop.hookup_model import Place, Table
from stillshaft.ui.desktop.hookup_source_card import SourceCard
from stillshaft.ui.desktop.hookup_watch import FindingsCard, InputsCard, PulseCard
from stillshaft.ui.desktop.hookup_wiring import Wiring
from stillshaft.ui.desktop.inspect_page import RECORDINGS
from stillshaft.ui.desktop.open_job import OpenJob, Shown
from stillshaft.ui.desktop.page import Page
from stillshaft.ui.desktop.places import face_of
from stillshaft.ui.desktop.rotor_face import RotorFace
from stillshaft.ui.desktop.rotor_panel import RotorPanel
from stillshaft.ui.desktop.said import Said
from stillshaft.ui.desktop.settings import View
from stillshaft.ui.desktop.stages import Sentence, Stage, State, Weight
from stillshaft.ui.desktop.watch import Glance
from stillshaft.ui.theme import Theme
from stillshaft.ui.wiring import Calibrated

_FACE, _PANEL = "Rotor face", "Simulated rotor"
_BESIDE_EMS = 70  # heights of text that two columns need
_SHARES = (5, 4)
_NONE = "Nothing is wired up yet: choose a hook-up file, or begin a new hook-up."


class HookupPage(Page):
    """What is wired up, edited in place, and how it comes in. `job` is where the hook-up and the checks are recorded."""

    def __init__(self, feed: Feed, job: OpenJob | None = None, *, real_time: bool = True) -> None:
        super().__init__(Stage.HOOK_UP)
        self.feed = feed
        self._shown = True
        self._found_by: dict[str, tuple[check.Finding, ...]] = {}  # by check
        self._taught = feed.teaching
        self.wiring = Wiring(feed, job, self)
        self.undo = parts.button("&Undo", lambda: self._step("undo"), tip="Take back the last change (Ctrl+Z)")
        self.redo = parts.button("Redo", lambda: self._step("redo"), tip="Put back what was undone (Ctrl+Shift+Z)")
        self.undo.setShortcut("Ctrl+Z")
        self.redo.setShortcut("Ctrl+Shift+Z")
        self.check_signals = parts.button(
            "Chec&k signals", self._check, tip=f"Look at the last {CHECK_S:.0f} s and say what is wrong"
        )
        self.start_stop = parts.button("S&tart", self._start_or_stop, "main", "Let the source run, or stop it")
        for each in (self.undo, self.redo, self.check_signals, self.start_stop):
            self.head.addWidget(each)
        self._lay_out()
        borrowed = Borrowed(feed)
        self.checks = Checks(feed, lambda: self.wiring.job, self.findings.work, borrowed, real_time=real_time)
        self.calibrating = Calibrating(feed, self.calibration.work, borrowed)
        self._connect()
        self._renew()

    def _lay_out(self) -> None:
        self.card = SourceCard(self.feed)
        self.source, self.note, self.find_inputs = self.card.source, self.card.note, self.card.find_inputs
        self.inputs = InputsCard(self._record, self._add, self._remove)
        self.pulse = PulseCard()
        self.findings = FindingsCard()
        self.face, self.panel = RotorFace(), RotorPanel()
        self.sides = FormCard("Sides, angles, unit", "", self._record, "Angles of sensors count from the datum in the "
                              "direction of rotation; positive is motion towards that direction.")  # fmt: skip
        self.device = FormCard("Data acquisition device", "device", self._record,
                               "For devices only. Full scale of each input is the range.")  # fmt: skip
        self.calibration = CalibrationCard()
        self.body.addWidget(self.card)
        self.unwatched = Said()
        self.body.addWidget(self.unwatched)
        left, right = QtWidgets.QVBoxLayout(), QtWidgets.QVBoxLayout()
        for column in (left, right):
            column.setSpacing(look.GAP)
        left.addWidget(self.inputs)
        left.addWidget(self.pulse, 20)
        left.addWidget(self.sides)
        left.addWidget(self.device)
        left.addStretch(1)
        right.addWidget(self._right_card(), 3)
        right.addWidget(self.findings)
        right.addWidget(self.calibration)
        self.columns = parts.Columns(left, right, _SHARES)
        self.body.addWidget(self.columns, 1)

    def _connect(self) -> None:
        feed = self.feed
        self.panel.applied.connect(feed.apply)
        self.card.imported.connect(self.import_file)
        self.card.exported.connect(self.export_file)
        self.card.begun.connect(lambda: self._change(lambda _table: hookup_model.fresh()))
        self.card.assigned.connect(lambda: self._change(lambda table: table))
        self.findings.standstill.connect(self._standstill)
        self.findings.tapping.connect(self._taps)
        self.checks.asked.connect(lambda text: self.findings.ask(f"{parts.begun(text)}."))
        self.checks.told.connect(self._tell)
        self.checks.found.connect(self._found)
        self.checks.failed.connect(self._not_checked)
        self.checks.recorded.connect(lambda text: self.findings.note.setText(f"{self.findings.note.text()} {text}"))
        self.calibration.recording.connect(self._calibrate_now)
        self.calibration.from_file.connect(self._ask_recording)
        self.calibration.written.connect(self._write_calibration)
        self.calibrating.found.connect(self._calibrated)
        self.calibrating.failed.connect(self._not_calibrated)
        self.wiring.changed.connect(self._renew)
        feed.changed.connect(self._renew)
        feed.glanced.connect(self._look)
        feed.checked.connect(self._take_findings)

    def _right_card(self) -> parts.Card:
        """The rotor face, or the simulated rotor's panel."""
        card = parts.Card()
        self.turn = parts.Segments("At the right", (_FACE, _PANEL))
        self.turn.chosen.connect(self._turn_to)
        self.turn.set(_FACE)
        card.body.addWidget(self.turn)
        card.body.addWidget(self.face, 1)
        card.body.addWidget(self.panel, 1)
        self.panel.hide()
        return card

    def _turn_to(self, what: str) -> None:
        self.turn.set(what)
        self.panel.setVisible(what == _PANEL)
        self.face.setVisible(what == _FACE)

    # what the person does

    def _start_or_stop(self) -> None:
        if self.feed.status in (Status.STOPPED, Status.STOPPING):
            self.feed.start()
        else:
            self.feed.stop()

    def _record(self, field: Field, place: Place, key: str, text: str) -> None:
        """One finished field is one change."""

        def taken() -> None:
            field.take()
            if key == "quantity":
                field.remark.say("Its usual sensitivity was set: enter the sensor's own.")

        self.card.remark.say("")
        self.wiring.change(
            lambda table: hookup_model.changed(table, place, key, text),
            taken,
            lambda why: field.refuse(hookup_model.without_place(why)),
        )

    def _change(self, change: Callable[[Table], Table]) -> None:
        """A change that no field makes."""
        self.card.remark.say("")
        self.wiring.change(change, refused=lambda why: self._refuse(why))

    def _refuse(self, why: str) -> None:
        self.card.remark.say(f"{parts.begun(why)}.", refused=True)

    def _add(self) -> None:
        self._change(hookup_model.added)

    def _remove(self, number: int) -> None:
        self._change(lambda table: hookup_model.removed(table, number))

    def _step(self, which: str) -> None:
        self.wiring.step(which, self.card.remark.say)

    def import_file(self, path: Path) -> None:
        """Take the hook-up of a file; one that cannot be read is said in words."""

        def work() -> Table:
            return hookup_model.plain(hookups.load_hookup(path).table)

        def read(table: Table) -> None:
            self._change(lambda _table: table)

        self.feed.tasks.run("reading a hook-up", work, read, self._refuse)

    def export_file(self, path: Path) -> None:
        """Write the hook-up into a file, whole or not at all."""
        table = self.wiring.table
        if table is None:
            return
        self.feed.tasks.run(
            "writing a hook-up",
            lambda: hookup_model.write(path, table),
            lambda _done: self.card.remark.say(f"Written to {path}."),
            self._refuse,
        )

    def _check(self) -> None:
        job = self.wiring.job
        shown = None if job is None else job.shown
        self.feed.examine(None if shown is None else shown.state.brief.rotor.speed_rpm)

    def _standstill(self) -> None:
        self._begin("Listening at standstill …", self.checks.standstill)

    def _taps(self) -> None:
        self._begin("The machine stands, isolated and locked. Wait for the first sensor to be named.", self.checks.taps)

    def _begin(self, note: str, make: Callable[[hookups.Hookup], None]) -> None:
        if self.wiring.hookup is not None and not self._busy:
            self.findings.show_findings((), note)
            make(self.wiring.hookup)
            self._renew()
            parts.reveal(self.findings)

    def _calibrate_now(self, asked: Asked) -> None:
        if self.wiring.hookup is not None and not self._busy:
            self.calibrating.from_source(asked, self.wiring.hookup)
            self._renew()

    def _ask_recording(self, asked: Asked) -> None:
        title, kinds = language.words("Recording of the known signal"), language.words(RECORDINGS)
        path, _ = QtWidgets.QFileDialog.getOpenFileName(self, title, "", kinds)
        if path:
            self.calibrate_from(asked, Path(path))

    def calibrate_from(self, asked: Asked, recording: Path) -> None:
        """Calibrate from a recording."""
        if self.wiring.hookup is not None and not self._busy:
            self.calibrating.from_recording(asked, recording, self.wiring.hookup)
            self._renew()

    def _write_calibration(self, method: str, results: tuple[Calibrated, ...]) -> None:
        day = datetime.datetime.now(datetime.UTC).date()
        self.wiring.change(
            lambda table: hookup_model.calibrated(table, method, results, day),
            lambda: self.calibration.say(f"Written into the hook-up, {day.isoformat()}."),
            lambda why: self.calibration.say(f"Not written: {why}.", refused=True),
        )

    # what comes in

    @property
    def _busy(self) -> bool:
        return self.checks.busy or self.calibrating.busy

    def _renew(self) -> None:
        feed, hookup = self.feed, self.wiring.hookup
        words = feed.status.value
        if feed.status is Status.RUNNING and feed.watch is not None and feed.watch.recent is not None:
            words = f"running, {feed.watch.recent.channels} inputs at {1e-3 * feed.watch.recent.rate_hz:g} kHz"
        self.subtitle.setText(f"{feed.choice.name}, {words}.")
        running, busy = feed.status in (Status.STARTING, Status.RUNNING), self._busy
        self.start_stop.setText("S&top" if running else "S&tart")
        self.start_stop.setAccessibleName("Stop" if running else "Start")
        self.start_stop.setEnabled(not busy)
        self.check_signals.setEnabled(feed.status is Status.RUNNING and not feed.checking)
        for each, can in zip((self.undo, self.redo), self.wiring.steps, strict=True):
            each.setEnabled(can)
        job = self.wiring.job
        of_job = job is not None and not self.wiring.missing_in_job
        self.unwatched.say("" if not of_job or job is None or job.shown is None else _unwatched(job.shown))
        self.card.renew(wired=hookup is not None, of_job=of_job, missing_in_job=self.wiring.missing_in_job, busy=busy)
        simulated = feed.choice == SIMULATED
        self.turn.setVisible(simulated)  # nothing to choose otherwise
        if feed.teaching is not self._taught:
            self._taught = feed.teaching
            self.panel.set(feed.teaching)
        if not simulated:
            self._turn_to(_FACE)
        self.inputs.set_hookup(hookup, _NONE)
        self.face.show_face(None if hookup is None else face_of(hookup))
        for form in (self.sides, self.device):
            form.setVisible(hookup is not None)
            if hookup is not None:
                form.form.show_hookup(hookup)
        self.device.setVisible(hookup is not None and (_is_device(feed) or "device" in hookup.table))
        for each in (self.findings.stopped, self.findings.taps):
            each.setEnabled(hookup is not None and not busy)
        self.calibration.set_hookup(hookup, busy)
        if not running:
            self.inputs.show_levels(())
            self.pulse.show_pulse(None)
        if feed.status is Status.STARTING and self._found_by.pop(SIGNALS, None) is not None:
            self.findings.show_findings((), "Not checked since the source was started.")
        elif feed.checking:
            self.findings.show_findings((), "Looking at the last seconds …")
        self.changed.emit()

    def _look(self, glance: Glance) -> None:
        if self._shown:
            self.inputs.show_levels(glance.levels)
            self.pulse.show_pulse(glance.pulse)

    def _take_findings(self, findings: tuple[check.Finding, ...]) -> None:
        self._found(SIGNALS, findings)
        self.checks.record_signals(findings)

    def _tell(self, finding: check.Finding) -> None:
        if self.checks.busy:
            self.findings.add(finding)

    def _found(self, what: str, findings: tuple[check.Finding, ...]) -> None:
        self._found_by[what] = findings
        grave = sum(f.weight == check.BLOCKS for f in findings)
        cautions = sum(f.weight == check.CAUTION for f in findings)
        if grave and cautions:
            note = f"{grave} to put right first, {cautions} to look at."
        elif grave or cautions:
            note = f"{grave} to put right first." if grave else f"{cautions} to look at."
        elif what == SIGNALS:
            note = "Nothing was found that speaks against measuring."
        else:
            note = "Each tap shows where it should." if what == TAPS else "No pulses come while the machine stands."
        self.findings.ask("")
        self.findings.show_findings(findings, note)
        self._renew()
        parts.reveal(self.findings)

    def _not_checked(self, why: str) -> None:
        self.findings.ask("")
        self.findings.show_findings((), f"{parts.begun(why)}." if why else "Broken off; nothing was recorded.")
        self._renew()

    def _calibrated(self, asked: Asked, results: tuple[Calibrated, ...]) -> None:
        self.calibration.show_results(asked.method, results)
        self._renew()

    def _not_calibrated(self, why: str) -> None:
        self.calibration.say(f"Not calibrated: {why}." if why else "Broken off.", refused=bool(why))
        self._renew()

    @property
    def _findings(self) -> list[check.Finding]:
        """Those of all checks, the gravest first."""
        weights = (check.BLOCKS, check.CAUTION, check.FINE)
        return sorted((f for found in self._found_by.values() for f in found), key=lambda f: weights.index(f.weight))

    # the page

    def state(self) -> State:
        """Done once a check found nothing; attention where it did or the source is in trouble."""
        if self.feed.trouble is not None or any(f.weight != check.FINE for f in self._findings):
            return State.ATTENTION
        if SIGNALS in self._found_by:
            return State.DONE
        return State.EMPTY if self.feed.status is Status.STOPPED else State.UNDER_WAY

    def sentence(self) -> Sentence | None:
        """The gravest thing about the source and its signals."""
        said = self.feed.trouble or self.feed.remark
        if said is not None:
            return Sentence(f"{parts.begun(said)}.", Stage.HOOK_UP, Weight.CAUTION, "Hook-up")
        worst = next((f for f in self._findings if f.weight != check.FINE), None)
        if worst is not None:
            weight = Weight.STOP if worst.weight == check.BLOCKS else Weight.CAUTION
            return Sentence(
                f"{parts.begun(worst.where)}: {worst.what}; {worst.cure}.", Stage.HOOK_UP, weight, "Hook-up"
            )
        if self.feed.status is Status.RUNNING and SIGNALS not in self._found_by:
            return Sentence("Signals come in: check them before the first run.", Stage.HOOK_UP, action="Hook-up")
        return None

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        for part in (
            self.card, self.unwatched, self.inputs, self.pulse, self.findings, self.face, self.panel, self.sides, self.device,
            self.calibration,
        ):  # fmt: skip
            part.set_theme(theme)

    def set_view(self, view: View) -> None:
        """Viewing end and angle direction."""
        self.face.set_sight(view.seen_from, view.angles)

    def set_room(self, width_px: int, body_px: int) -> None:
        """The rotor face beside or below the inputs."""
        room = width_px - 2 * look.WIDE
        beside = width_px >= _BESIDE_EMS * body_px
        self.columns.set_beside(beside)
        left = (room - look.GAP) * _SHARES[0] // sum(_SHARES) if beside else room
        right = room - look.GAP - left if beside else room
        for part in (self.inputs, self.sides, self.device):
            part.set_width(left, body_px)
        self.card.set_width(room, body_px)
        self.calibration.set_width(right, body_px)
        self.panel.set_room(body_px)

    def enter(self) -> None:
        """Draw again."""
        self._shown = True

    def leave(self) -> None:
        """Nothing is drawn while another page is in front."""
        self._shown = False

    def close_down(self) -> None:
        """Take what is being typed, stop what is made, stop the source."""
        forms: list[Any] = [self.sides.form, self.device.form, *(r.editor.form for r in self.inputs.rows.values())]
        for field in (f for form in forms for f in form.fields):
            if field.control.hasFocus():
                field.commit()
        self.findings.work.close_down()
        self.calibration.work.close_down()
        self.feed.close()


def _unwatched(shown: Shown) -> str:
    """Of abort levels at points that are not wired."""
    points = [point for what, point in cautions.unwatched(shown.state) if what == cautions.ABORT]
    if not points:
        return ""
    return f"The abort level at {', '.join(points)} can never call for a stop: no input here has that name."


def _is_device(feed: Feed) -> bool:
    return feed.choice.text.startswith(("nidaqmx:", "uldaq:"))
