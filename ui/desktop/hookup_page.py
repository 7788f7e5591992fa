"""The Hook-up page: for now its live part: source, inputs, pulse, rotor face, signal check."""

from __future__ import annotations

from pathlib import Path

from PySide6 import QtWidgets
from stillshaft.dsp import check
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.feed import CHECK_S, SIMULATED, Feed, Status
from stillshaft.ui.desktop.hookup_watch import FindingsCard, InputsCard, PulseCard
from stillshaft.ui.desktop.page import Page
from stillshaft.ui.desktop.places import face_of
from stillshaft.ui.desktop.rotor_face import RotorFace
from stillshaft.ui.desktop.rotor_panel import RotorPanel
from stillshaft.ui.desktop.settings import View
from stillshaft.ui.desktop.stages import Sentence, Stage, State, Weight
from stillshaft.ui.desktop.watch import Glance
from stillshaft.ui.theme import Theme

_FACE, _PANEL = "Rotor face", "Simulated rotor"
_BESIDE_EMS = 58  # heights of text that two columns need


class HookupPage(Page):
    """Chooses a source and shows what comes in."""

    def __init__(self, feed: Feed) -> None:
        super().__init__(Stage.HOOK_UP)
        self.feed = feed
        self._shown = True
        self._findings: tuple[check.Finding, ...] = ()
        self._taught = feed.teaching
        self.check_signals = parts.button(
            "Chec&k signals", feed.examine, tip=f"Look at the last {CHECK_S:.0f} s and say what is wrong"
        )
        self.start_stop = parts.button("S&tart", self._start_or_stop, "main", "Let the source run, or stop it")
        self.head.addWidget(self.check_signals)
        self.head.addWidget(self.start_stop)
        self.inputs, self.pulse, self.findings = InputsCard(), PulseCard(), FindingsCard()
        self.face, self.panel = RotorFace(), RotorPanel()
        self.body.addWidget(self._source_card())
        left, right = QtWidgets.QVBoxLayout(), QtWidgets.QVBoxLayout()
        for column in (left, right):
            column.setSpacing(look.GAP)
        left.addWidget(self.inputs)
        left.addWidget(self.pulse, 1)
        left.addStretch(0)
        right.addWidget(self._right_card(), 3)
        right.addWidget(self.findings)
        self.columns = parts.Columns(left, right, (5, 4))
        self.body.addWidget(self.columns, 1)
        self.panel.applied.connect(feed.apply)
        feed.changed.connect(self._renew)
        feed.listed.connect(self._fill)
        feed.glanced.connect(self._look)
        feed.checked.connect(self._take_findings)
        self._fill()
        self._renew()

    def _source_card(self) -> parts.Card:
        card = parts.Card()
        row = QtWidgets.QHBoxLayout()
        row.setSpacing(look.TIGHT)
        self.source = parts.Choice()
        self.source.setSizeAdjustPolicy(QtWidgets.QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.source.activated.connect(self._choose)
        self.find_inputs = parts.button(
            "Find &inputs", self.feed.list_inputs, tip="Look for sound inputs that are plugged in"
        )
        self.file = parts.button("Hook-up &file…", self._ask_file, tip="Read what is wired to which input from a file")
        row.addWidget(parts.labelled("Sou&rce", self.source))
        row.addWidget(self.source)
        row.addWidget(self.find_inputs)
        row.addWidget(self.file)
        row.addStretch(1)
        note = QtWidgets.QHBoxLayout()
        note.setSpacing(look.TIGHT)
        self.note_sign = parts.Sign(18)
        self.note = parts.label("", "quiet", wrap=True)
        note.addWidget(self.note_sign)
        note.addWidget(self.note, 1)
        card.body.addLayout(row)
        card.body.addLayout(note)
        return card

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

    def _choose(self, number: int) -> None:
        self.feed.choose(self.feed.choices[number])

    def _ask_file(self) -> None:
        path, _ = QtWidgets.QFileDialog.getOpenFileName(self, "Hook-up file", "", "Hook-up (*.toml)")
        if path:
            self.feed.use_hookup(Path(path))

    # what comes in

    def _fill(self) -> None:
        self.source.clear()
        self.source.addItems([c.name for c in self.feed.choices])
        names = [c.name for c in self.feed.choices]
        if self.feed.choice.name in names:
            self.source.setCurrentIndex(names.index(self.feed.choice.name))

    def _renew(self) -> None:
        feed = self.feed
        words = feed.status.value
        if feed.status is Status.RUNNING and feed.watch is not None and feed.watch.recent is not None:
            words = f"running, {feed.watch.recent.channels} inputs at {feed.watch.recent.rate_hz:.0f} Hz"
        self.subtitle.setText(f"{feed.choice.name}, {words}.")
        running = feed.status in (Status.STARTING, Status.RUNNING)
        self.start_stop.setText("S&top" if running else "S&tart")
        self.start_stop.setAccessibleName("Stop" if running else "Start")
        self.check_signals.setEnabled(feed.status is Status.RUNNING and not feed.checking)
        self.find_inputs.setEnabled(not feed.looking)
        self.find_inputs.setText("Looking …" if feed.looking else "Find &inputs")
        self.file.setEnabled(feed.choice != SIMULATED)
        simulated = feed.choice == SIMULATED
        self.turn.buttons[_PANEL].setVisible(simulated)
        if feed.teaching is not self._taught:
            self._taught = feed.teaching
            self.panel.set(feed.teaching)
        if not simulated:
            self._turn_to(_FACE)
        file = "" if simulated or feed.hookup_file is None else f". Hook-up: {feed.hookup_file.name}"
        self.note.setText(f"{parts.begun(feed.choice.note)}{file}")
        self.note_sign.show_weight(Weight.CAUTION if feed.choice.caution else State.DONE)
        self.inputs.set_hookup(feed.hookup)
        self.face.show_face(None if feed.hookup is None else face_of(feed.hookup))
        if not running:
            self.inputs.show_levels(())
            self.pulse.show_pulse(None)
        if feed.status is Status.STARTING:
            self._findings = ()
            self.findings.show_findings((), "Not checked since the source was started.")
        elif feed.checking:
            self.findings.show_findings((), "Looking at the last seconds …")
        self.changed.emit()

    def _look(self, glance: Glance) -> None:
        if self._shown:
            self.inputs.show_levels(glance.levels)
            self.pulse.show_pulse(glance.pulse)

    def _take_findings(self, findings: tuple[check.Finding, ...]) -> None:
        self._findings = findings
        grave = sum(f.weight == check.BLOCKS for f in findings)
        cautions = sum(f.weight == check.CAUTION for f in findings)
        if grave or cautions:
            note = f"{grave} to put right first, {cautions} to look at."
        else:
            note = "Nothing was found that speaks against measuring."
        self.findings.show_findings(findings, note)
        self.changed.emit()

    # the page

    def state(self) -> State:
        """Done once a check found nothing; attention where it did or the source is in trouble."""
        if self.feed.trouble is not None or any(f.weight != check.FINE for f in self._findings):
            return State.ATTENTION
        if self._findings:
            return State.DONE
        return State.EMPTY if self.feed.status is Status.STOPPED else State.UNDER_WAY

    def sentence(self) -> Sentence | None:
        """The gravest thing about the source and its signals."""
        if self.feed.trouble is not None:
            return Sentence(f"{parts.begun(self.feed.trouble)}.", Stage.HOOK_UP, Weight.CAUTION, "Hook-up")
        worst = next((f for f in self._findings if f.weight != check.FINE), None)
        if worst is not None:
            weight = Weight.STOP if worst.weight == check.BLOCKS else Weight.CAUTION
            return Sentence(
                f"{parts.begun(worst.where)}: {worst.what}; {worst.cure}.", Stage.HOOK_UP, weight, "Hook-up"
            )
        if self.feed.status is Status.RUNNING and not self._findings:
            return Sentence("Signals come in: check them before the first run.", Stage.HOOK_UP, action="Hook-up")
        return None

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        for part in (self.inputs, self.pulse, self.findings, self.face, self.note_sign, self.source, self.panel):
            part.set_theme(theme)

    def set_view(self, view: View) -> None:
        """Viewing end and angle direction."""
        self.face.set_sight(view.seen_from, view.angles)

    def set_room(self, width_px: int, body_px: int) -> None:
        """The rotor face beside or below the inputs."""
        self.columns.set_beside(width_px >= _BESIDE_EMS * body_px)
        self.panel.set_room(body_px)

    def enter(self) -> None:
        """Draw again."""
        self._shown = True

    def leave(self) -> None:
        """Nothing is drawn while another page is in front."""
        self._shown = False

    def close_down(self) -> None:
        """Stop the source."""
        self.feed.close()
