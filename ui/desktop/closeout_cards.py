"""Cards of the Close-out page: what keeps the job open, acceptance, the report and its exports, the next visit."""

from __future__ import annotations

from functools import partial
from pathlib import Path

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui.desktop import look, next_visit, parts
from stillshaft.ui.desktop import words as language
from stillshaft.ui.desktop.closeout_preview import Preview
from stillshaft.ui.desktop.closeout_work import KINDS, CloseOut, Made
from stillshaft.ui.desktop.masses_cards import Rows
from stillshaft.ui.desktop.said import Said
from stillshaft.ui.desktop.stages import Weight
from stillshaft.ui.desktop.worded import LineEdit
from stillshaft.ui.desktop.work_row import WorkRow
from stillshaft.ui.theme import Theme

_REMARKS, _WHY_REOPENED = "basis, remarks, or why it is refused", "why it is opened again"
ACCEPT, REFUSE, NEITHER = "accepts", "refuses", "not asked"
METRIC, INCH = "mm and g", "inches and ounces"
_FAMILIES = {METRIC: "metric", INCH: "imperial"}
_PATTERNS = {"PDF": "PDF (*.pdf)", "HTML": "Page (*.html)", "CSV": "Table (*.csv)", "JSON": "Data (*.json)"}


class CloseCard(parts.Card):
    """Verdict, acceptance and closing. Emits `judged`, `closed` (accepted by, refused by, note), `reopened` with the reason."""

    judged = QtCore.Signal()
    closed = QtCore.Signal(str, str, str)
    reopened = QtCore.Signal(str)

    def __init__(self) -> None:
        super().__init__("Closing the job")
        self.advice = Said(Weight.NOTE)
        self.body.addWidget(self.advice)
        self.blocking = Said(Weight.STOP)
        self.body.addWidget(self.blocking)
        self.missing_name = parts.label("Not done yet", "heading")
        self.missing = Rows()
        self.body.addWidget(self.missing_name)
        self.body.addWidget(self.missing)
        self.verdict = parts.label("", "sentence", wrap=True)
        self.body.addWidget(self.verdict)
        self.judge = parts.button(
            "Record the verdict", self.judged.emit, tip="Write into the record where the job stands against its goal"
        )
        row = QtWidgets.QHBoxLayout()
        row.addWidget(self.judge)
        row.addStretch(1)
        self.body.addLayout(row)
        self.owner = parts.label("The owner", "heading")
        self.body.addWidget(self.owner)
        self.choice = parts.Segments("The owner", (ACCEPT, REFUSE, NEITHER))
        self.choice.set(NEITHER)
        self.body.addWidget(self.choice)
        grid = QtWidgets.QGridLayout()
        grid.setSpacing(look.TIGHT)
        self.who, self.remarks = LineEdit(), LineEdit()
        self.who.setPlaceholderText("for the owner")
        self.who_name = parts.labelled("&Name", self.who)
        for number, (name, edit) in enumerate(
            ((self.who_name, self.who), (parts.labelled("Re&marks", self.remarks), self.remarks))
        ):
            grid.addWidget(name, number, 0)
            grid.addWidget(edit, number, 1)
        self.body.addLayout(grid)
        self.trouble = Said()
        self.body.addWidget(self.trouble)
        self.safety = parts.label(
            "To accept the balance is not to say that the machine is safe to run.", "quiet", wrap=True
        )
        self.body.addWidget(self.safety)
        foot = QtWidgets.QHBoxLayout()
        foot.setSpacing(look.TIGHT)
        self.close_job = parts.button(
            "&Close the job", self._close, "main", "Write acceptance or refusal into the record and close it"
        )
        self.reopen = parts.button("Re&open", self._reopen, tip="Go on with the closed job; the remarks say why")
        foot.addWidget(self.close_job)
        foot.addWidget(self.reopen)
        foot.addStretch(1)
        self.body.addLayout(foot)

    def show_job(self, found: CloseOut, *, may: bool) -> None:
        """Show where it stands; `may`: the job can be written to."""
        state = found.state
        self.advice.say(found.advice)
        self.blocking.say("; ".join(found.blocking))
        self.missing.show_texts([] if state.closed else found.missing)
        self.missing_name.setVisible(bool(found.missing) and not state.closed)
        self.verdict.setText(verdict_words(found))
        for part in (self.judge, self.close_job, self.choice):
            part.setEnabled(may)
        for of_open in (self.judge, self.close_job, self.owner, self.choice, self.who_name, self.who, self.safety):
            of_open.setVisible(not state.closed)
        self.remarks.setPlaceholderText(_WHY_REOPENED if state.closed else _REMARKS)
        self.reopen.setVisible(state.closed)
        self.reopen.setEnabled(may)

    def clear(self) -> None:
        """Forget what was typed."""
        self.choice.set(NEITHER)
        for typed in (self.who, self.remarks):
            typed.clear()
        self.trouble.say("")

    def _close(self) -> None:
        choice, who, note = self.choice.value, self.who.text().strip(), self.remarks.text().strip()
        if choice != NEITHER and not who:
            self.trouble.say(f"Write who {choice} it for the owner.")
            self.who.setFocus()
        elif choice == REFUSE and not note:
            self.trouble.say("Write why it is refused.")
            self.remarks.setFocus()
        else:
            self.trouble.say("")
            self.closed.emit(who if choice == ACCEPT else "", who if choice == REFUSE else "", note)

    def _reopen(self) -> None:
        note = self.remarks.text().strip()
        if not note:
            self.trouble.say("Write in the remarks why the job is reopened.")
            self.remarks.setFocus()
        else:
            self.trouble.say("")
            self.reopened.emit(note)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        for part in (self.advice, self.blocking, self.trouble):
            part.set_theme(theme)


def verdict_words(found: CloseOut) -> str:
    """The recorded verdict, and what would be recorded now."""
    state, tolerance = found.state, found.worked.tolerance
    now = (
        "nothing to hold it against"
        if tolerance is None
        else tolerance.verdict
        if tolerance.run
        else "cannot be told yet"
    )
    if not state.verdicts:
        return f"Goal now: {now}; not recorded yet."
    last = state.verdicts[-1].what
    by = (
        f", accepted by {last.accepted_by}"
        if last.accepted_by
        else f", refused by {last.refused_by}"
        if last.refused_by
        else ""
    )
    return f"Recorded: {last.verdict} ({last.basis}){by}."


class ReportCard(parts.Card):
    """Shows the report, writes it and the exports. Emits `asked` to make it, `exported` with kind and place (None: the job)."""

    asked = QtCore.Signal()
    exported = QtCore.Signal(str, object)

    def __init__(self) -> None:
        super().__init__("Report and exports")
        row = QtWidgets.QHBoxLayout()
        row.setSpacing(look.TIGHT)
        self.units = parts.Segments("Units of the report", tuple(_FAMILIES))
        self.units.set(METRIC)
        self.paper = parts.Segments("Paper", ("A4", "Letter"))
        self.paper.set("A4")
        row.addWidget(self.units, 3)
        row.addWidget(self.paper, 2)
        self.body.addLayout(row)
        for choice in (self.units, self.paper):
            choice.chosen.connect(lambda _word: self.show_report(None, ""))
        self.make = parts.button(
            "Make the &report", self.asked.emit, "main", "Read the job and show the report as it will be written"
        )
        make = QtWidgets.QHBoxLayout()
        make.addWidget(self.make)
        make.addStretch(1)
        self.body.addLayout(make)
        self.in_english = parts.InEnglish("The report is in English, as the record is.")
        self.body.addWidget(self.in_english)
        self.work = WorkRow("making the report")
        self.body.addWidget(self.work)
        self.said = Said(Weight.NOTE)
        self.body.addWidget(self.said)
        self.doubts = Said(Weight.STOP)
        self.body.addWidget(self.doubts)
        self.preview = Preview()
        self.body.addWidget(self.preview, 1)
        self.keep = parts.button(
            "Keep in the &job", lambda: self.exported.emit("PDF", None), tip="Write the PDF among the job's own reports"
        )
        self.files = {
            kind: parts.button(f"Save {kind}", partial(self._ask, kind), tip=f"Choose a place and write {kind} there")
            for kind in KINDS
        }
        grid = QtWidgets.QGridLayout()
        grid.setSpacing(look.TIGHT)
        for number, save in enumerate((self.keep, *self.files.values())):
            grid.addWidget(save, *divmod(number, 3))
        self.body.addLayout(grid)
        self.name = "report"
        self.made: Made | None = None
        self.show_report(None, "")

    @property
    def family(self) -> str:
        """Units that the report is made in."""
        return _FAMILIES[self.units.value]

    def show_report(self, made: Made | None, why: str, images: tuple[QtGui.QImage, ...] = ()) -> None:
        """Show a report; None: none is made, for this reason if there is one."""
        self.made = made
        self.preview.setVisible(made is not None)
        for each in (self.keep, self.files["PDF"], self.files["HTML"]):
            each.setEnabled(made is not None)
        self.doubts.say(
            "" if made is None or not made.doubts else f"do not trust this record: {'; '.join(made.doubts[:3])}"
        )
        if made is None:
            self.said.say(why, Weight.CAUTION)
            return
        self.said.say(f"{made.pages} pages. {made.summary}", Weight.NOTE)
        self.preview.show_layout(made.layout, images, self.fontInfo().pixelSize())
        self.preview.setMinimumHeight(26 * self.fontInfo().pixelSize())

    def _ask(self, kind: str) -> None:
        path, _ = QtWidgets.QFileDialog.getSaveFileName(
            self, language.words(f"Save {kind}"), f"{self.name}{KINDS[kind]}", language.words(_PATTERNS[kind])
        )
        if path:
            self.exported.emit(kind, Path(path).with_suffix(KINDS[kind]))

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        for part in (self.said, self.doubts):
            part.set_theme(theme)


class NextCard(parts.Card):
    """What the next visit can build on. Emits `kept` to store coefficients, `asked` for trends, `visited` to begin it."""

    kept = QtCore.Signal()
    visited = QtCore.Signal()
    asked = QtCore.Signal()

    def __init__(self) -> None:
        super().__init__("The next visit")
        self.hints = Rows()
        self.body.addWidget(self.hints)
        self.keep = parts.button(
            "&Store coefficients", self.kept.emit, tip="Keep the influence coefficients of this job for the next visit"
        )
        self.trend = parts.button(
            "&Trend of this machine", self.asked.emit, tip="Read the jobs of this machine that lie beside this one"
        )
        self.visit = next_visit.button(self.visited.emit)
        for buttons in ((self.visit,), (self.keep, self.trend)):  # all three are too wide for a small window
            row = QtWidgets.QHBoxLayout()
            row.setSpacing(look.TIGHT)
            for each in buttons:
                row.addWidget(each)
            row.addStretch(1)
            self.body.addLayout(row)
        self.said = Said(Weight.NOTE)
        self.body.addWidget(self.said)
        self.work = WorkRow("reading jobs")
        self.body.addWidget(self.work)
        self.rows = Rows()
        self.body.addWidget(self.rows)

    def show_job(self, found: CloseOut, *, may: bool) -> None:
        """Show what there is."""
        self.hints.show_texts(found.next_visit)
        self.visit.setVisible(found.state.closed)
        self.keep.setEnabled(may and found.worked.solution is not None and found.worked.stored is None)

    def clear(self) -> None:
        """Forget what was said and read."""
        self.said.say("")
        self.rows.show_texts(())

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.said.set_theme(theme)
