"""What must hold before a measured check is recorded: the machine is started for it, or hands are at it."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6 import QtCore, QtWidgets
from stillshaft.solver import cautions, clock, guidance
from stillshaft.ui.desktop import look, masses_model, parts
from stillshaft.ui.desktop.inspect_measure import KINDS
from stillshaft.ui.desktop.masses_cards import CautionsCard
from stillshaft.ui.desktop.open_job import OpenJob, Shown
from stillshaft.ui.desktop.runs_next import StartCard
from stillshaft.ui.session import Session
from stillshaft.ui.theme import Theme

RUNNING = ("signals", "spectrum", "sweep")  # checks that the machine runs for
AT_HAND = ("bump",)  # and those that hands are at it for
STANDS_AFTER = ("sweep", "bump", "background")


def show_before_start(card: StartCard, shown: Shown) -> None:
    """What must hold before a start as the job stands, the starts that are left, and whether it may run already."""
    state = shown.state
    card.show_cautions(cautions.before_start(state), shown.by, "")
    counted = guidance.starts(state, guidance.now_for(state), clock.ahead_s())
    card.starts.setText(f"{parts.begun(counted.sentence)}.")
    changed = bool(state.masses) and state.masses[-1].id > max((s.id for s in state.starts), default=0)
    card.already.setVisible(not changed)


def record_start(session: Session, texts: Sequence[str], who: str, temperature: str | None) -> None:
    """Write into the record that somebody saw to the cautions, and that the machine is started, cold, warm or hot."""
    session.refuse_closed()
    session.acknowledge(texts, who)
    session.count_start(temperature)


class BeforeCheck(QtWidgets.QWidget):
    """Asks what must hold before a check is recorded, and has the answer recorded.

    Emits `seen` with the check once that is done: it can be recorded when machine and person are ready. `clear` with one
    that can be recorded at once: the machine runs already.
    """

    seen = QtCore.Signal(str)
    clear = QtCore.Signal(str)

    def __init__(self, job: OpenJob) -> None:
        super().__init__()
        self._job = job
        self._runs = False  # the machine, with the cautions seen to
        self._folder: Path | None = None
        self._on: tuple[object, ...] = ()
        self.what = ""
        self._from: QtWidgets.QWidget | None = None
        self.start, self.hands = StartCard(), CautionsCard()
        self.cards = (self.start, self.hands)
        self.about = parts.label("", "sentence", wrap=True)
        self.later = parts.button("Not now", self.put_away, tip="Nothing is recorded, and nothing is measured")
        column = QtWidgets.QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(look.GAP)
        row = QtWidgets.QHBoxLayout()
        row.addWidget(self.about, 1)
        row.addWidget(self.later, 0, QtCore.Qt.AlignmentFlag.AlignTop)
        column.addLayout(row)
        for card in self.cards:
            column.addWidget(card)
        self.start.acknowledged.connect(lambda texts, who: self._record(self.start, texts, who))
        self.start.runs.connect(self._runs_already)
        self.hands.acknowledged.connect(lambda texts, who: self._record(self.hands, texts, who))
        self.hide()

    def lacks(self, what: str) -> bool:
        """Whether something is to be seen to before this check is recorded; where it cannot be, that is said instead."""
        shown = self._job.shown
        if shown is None or shown.read_only or shown.state.closed or shown.hookup is None:
            return False
        return (what in RUNNING and not self._runs) or (
            what in AT_HAND and not masses_model.acknowledged_by(shown.state)
        )

    def ask(self, what: str) -> None:
        """Show what must hold before this check."""
        self.what, self._from = what, self.window().focusWidget()
        card = self.start if what in RUNNING else self.hands
        self.about.setText(f"{KINDS[what].title}: see to this first, then record.")
        for each in self.cards:
            each.setVisible(each is card)
            each.trouble.say("")
        self.start.begin_anew()
        self._show_cautions()
        self.show()
        (card.ticks[0] if card.ticks else card.who).setFocus()
        parts.reveal(card)

    def put_away(self) -> None:
        """It is answered, or not wanted now: the focus goes back."""
        focus = self.window().focusWidget()
        if focus is not None and self.isAncestorOf(focus) and self._from is not None:
            self._from.setFocus()
        self.what, self._from = "", None
        self.hide()

    def follow(self) -> None:
        """The job stands elsewhere: where hands were in, or another job is open, the machine is started anew."""
        shown = self._job.shown
        on = () if shown is None else shown.state.on_rotor
        folder = None if shown is None else shown.folder
        if folder != self._folder:
            self.put_away()
        if (folder, on) != (self._folder, self._on):
            self._folder, self._on, self._runs = folder, on, False
        if self.what:
            self._show_cautions()

    def stands(self) -> None:
        """The machine stands, or may stand by now."""
        self._runs = False

    def _show_cautions(self) -> None:
        shown = self._job.shown
        if shown is not None:
            show_before_start(self.start, shown)
            self.hands.show_cautions(cautions.before_hands(shown.state), shown.by, "")

    def _record(self, card: CautionsCard, texts: list[str], who: str) -> None:
        what, starts, temperature = self.what, card is self.start, self.start.temperature

        def work(session: Session) -> None:
            if starts:
                record_start(session, texts, who, temperature)
            else:
                session.acknowledge(texts, who)

        def done(_none: object) -> None:
            self._runs = starts
            self.put_away()
            self.seen.emit(what)

        self._job.act(work, done, lambda why: card.trouble.say(f"{why}."))

    def _runs_already(self) -> None:
        what, self._runs = self.what, True
        self.put_away()
        self.clear.emit(what)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        for card in self.cards:
            card.set_theme(theme)
