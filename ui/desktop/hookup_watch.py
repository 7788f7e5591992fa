"""What is wired up, as it comes in: inputs with live levels, the pulse as it is seen, findings of the signal check.

Each part takes plain data; what is typed into an input's fields is handed to the recorder that the card is made with.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.acquire.hookup import Hookup, Point, PulseInput
from stillshaft.dsp import check
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.canvas import Marker
from stillshaft.ui.desktop.figures import Level, PulseSeen
from stillshaft.ui.desktop.hookup_form import Editor, Recorder
from stillshaft.ui.desktop.hookup_model import Place
from stillshaft.ui.desktop.meters import LevelMeter, PulsePicture, level_words, pulse_words
from stillshaft.ui.desktop.stages import State, Weight
from stillshaft.ui.desktop.why import explain
from stillshaft.ui.desktop.worded import Label, Worded
from stillshaft.ui.desktop.work_row import WorkRow
from stillshaft.ui.theme import THEMES, Theme

_HIGHEST_PX = 470  # of the pulse: a higher picture shows nothing more
_LEVEL_WEIGHTS: dict[str, Weight | State] = {
    "good": State.DONE,
    "weak": Weight.CAUTION,
    "silent": Weight.CAUTION,
    "high": Weight.CAUTION,
    "clipped": Weight.STOP,
}
_FINDING_WEIGHTS: dict[str, Weight | State] = {
    check.BLOCKS: Weight.STOP,
    check.CAUTION: Weight.CAUTION,
    check.FINE: State.DONE,
}
_FINDING_WORDS = {check.BLOCKS: "Put right first", check.CAUTION: "Attention", check.FINE: "Fine"}


def point_words(point: Point) -> str:
    """What is wired to an input, in one line."""
    sensitivity = str(point.table.get("sensitivity", ""))
    place = "axial" if point.direction == "axial" else f"at {point.angle_deg:g}°"
    words = [point.quantity, sensitivity, place]
    words += [] if point.mount is None else [point.mount]
    words += ["inverted"] if point.si_per_reading < 0.0 else []
    words += [f"delay {point.table['delay']}"] if point.delay_s else []
    words += [f"corner {c:g} Hz" for c in point.highpass_hz]
    return " · ".join(words)


def pulse_place_words(pulse: PulseInput) -> str:
    """What is set for the pulse, in one line."""
    marks = "one mark" if pulse.pulses_per_rev == 1 else f"{pulse.pulses_per_rev} marks, {pulse.reference}"
    return f"{pulse.edge} edge · {marks} · at {pulse.angle_deg:g}°"


class _Dotted(Label):
    """Small text of parts between dots, broken into lines at the dots only, in any language."""

    def __init__(self) -> None:
        super().__init__()
        parts.dress(self, "small", wrap=True)

    def _in_lines(self, shown: str) -> str:
        return super()._in_lines(shown).replace(" ", "\u00a0").replace("·\u00a0", "· ")


class InputRow:
    """One input: number, shape and name, what it is, its level, the level's word, and the fields that open below."""

    def __init__(self, place: Place, shape: int | None, record: Recorder, remove: Callable[[], None] | None) -> None:
        self.place = place
        self.number = parts.label("", "heading")
        self.number.setAlignment(QtCore.Qt.AlignmentFlag.AlignRight | QtCore.Qt.AlignmentFlag.AlignVCenter)
        self.marker = Marker(shape) if shape is not None else QtWidgets.QWidget()
        self.names = QtWidgets.QWidget()
        column = QtWidgets.QVBoxLayout(self.names)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        self.name, self.words = parts.label("", "heading", wrap=True), _Dotted()
        column.addWidget(self.name)
        column.addWidget(self.words)
        called = "pulse" if place == "pulse" else f"point {int(place) + 1}"
        self.meter = LevelMeter(called)
        self.sign = parts.Sign(18)
        self.sign.show_weight(State.EMPTY)
        self.word = parts.Live("no signal", "", "no signal")
        for each in (self.meter, self.word):
            explain(each, "input-level")
        self.edit = parts.button("Edit", self._toggle, tip="Open the fields of this input")
        self.editor = Editor(place, called, record, remove)

    @property
    def widgets(self) -> tuple[QtWidgets.QWidget, ...]:
        """In the order of the columns."""
        return self.number, self.marker, self.names, self.meter, self.sign, self.word, self.edit

    def _toggle(self) -> None:
        self.open(self.editor.isHidden())
        if not self.editor.isHidden():
            self.editor.form.fields[0].control.setFocus(QtCore.Qt.FocusReason.OtherFocusReason)

    def open(self, on: bool) -> None:
        """Show the fields, or put them away."""
        self.editor.setVisible(on)
        self.edit.setText("Close" if on else "Edit")
        self.edit.setAccessibleName(f"{self.edit.text()} {self.name.text()}")

    def show_hookup(self, hookup: Hookup) -> None:
        """Show what is wired here."""
        if isinstance(self.place, int):
            point = hookup.points[self.place]
            index, name, words = point.index, point.name, point_words(point)
        else:
            index, name, words = hookup.pulse.index, "pulse", pulse_place_words(hookup.pulse)
        for label, text in ((self.number, f"{index + 1}"), (self.name, name), (self.words, words)):
            if label.text() != text:
                label.setText(text)
        self.meter.setAccessibleName(f"Level of {name}")
        self.edit.setAccessibleName(f"{self.edit.text()} {name}")
        self.editor.form.show_hookup(hookup)

    def show_level(self, level: Level | None) -> None:
        """Draw the newest level."""
        self.meter.show_level(level)
        word = "no signal" if level is None else level_words(level)
        self.word.say(word)
        self.sign.show_weight(State.EMPTY if level is None else _LEVEL_WEIGHTS[word])

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.meter.set_theme(theme)
        self.sign.set_theme(theme)
        self.editor.form.set_theme(theme)
        if isinstance(self.marker, Marker):
            self.marker.set_theme(theme)


class InputsCard(parts.Card):
    """One row for each input that is wired, whose fields open below it; `rows` are by input, counted from 0."""

    def __init__(self, record: Recorder, add: Callable[[], None], remove: Callable[[int], None]) -> None:
        super().__init__("Inputs", "peak and level in dB of full scale")
        self._record, self._remove = record, remove
        self._grid = QtWidgets.QGridLayout()
        self._grid.setHorizontalSpacing(look.TIGHT)
        self._grid.setVerticalSpacing(look.TIGHT)
        self._grid.setColumnStretch(2, 4)
        self._grid.setColumnStretch(3, 3)
        self.none = parts.label("", "quiet", wrap=True)
        self.none.hide()
        self.add = parts.button("Add in&put", add, tip="A row for one more sensor, on the first input that is free")
        self.body.addWidget(self.none)
        self.body.addLayout(self._grid)
        foot = QtWidgets.QHBoxLayout()
        foot.addWidget(self.add)
        foot.addStretch(1)
        self.body.addLayout(foot)
        self.body.addStretch(1)
        self.rows: dict[int, InputRow] = {}
        self._shape: tuple[Place, ...] = ()
        self._theme: Theme = THEMES["light"]
        self._width = (600, 14)

    def set_hookup(self, hookup: Hookup | None, none: str = "") -> None:
        """Have a row for the pulse and for each point; without a hook-up say `none`."""
        self.none.setText(none)
        self.none.setVisible(hookup is None and bool(none))
        self.add.setEnabled(hookup is not None)
        places: dict[int, Place] = {}
        if hookup is not None:
            places = {hookup.pulse.index: "pulse", **{p.index: n for n, p in enumerate(hookup.points)}}
        shape = tuple(places[index] for index in sorted(places))
        if shape != self._shape:
            self._build(shape)
        if hookup is not None:
            made = {row.place: row for row in self.rows.values()}
            self.rows = {index: made[places[index]] for index in sorted(places)}
            for row in self.rows.values():
                row.show_hookup(hookup)

    def _build(self, shape: tuple[Place, ...]) -> None:
        """Rows anew; the one that is open stays open."""
        opened = {row.place for row in self.rows.values() if not row.editor.isHidden()}
        for row in self.rows.values():
            for widget in (*row.widgets, row.editor):
                self._grid.removeWidget(widget)
                widget.hide()
                widget.deleteLater()
        self._shape, self.rows = shape, {}
        for line, place in enumerate(shape):
            remove = partial(self._remove, place) if isinstance(place, int) else None
            row = InputRow(place, place if isinstance(place, int) else None, self._record, remove)
            row.editor.form.set_width(*self._width)
            row.set_theme(self._theme)
            for column, widget in enumerate(row.widgets):
                self._grid.addWidget(widget, 2 * line, column)
            self._grid.addWidget(row.editor, 2 * line + 1, 0, 1, len(row.widgets))
            if place in opened:
                row.open(True)
            self.rows[line] = row
        order = [w for row in self.rows.values() for w in (row.meter, row.edit, *row.editor.controls)]
        for before, after in zip(order, [*order[1:], self.add], strict=False):
            QtWidgets.QWidget.setTabOrder(before, after)

    def set_width(self, width_px: int, body_px: int) -> None:
        """The card is so wide, for text of this size."""
        self._width = (width_px - 2 * look.ROOM - 2, body_px)
        for row in self.rows.values():
            row.editor.form.set_width(*self._width)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        for row in self.rows.values():
            row.set_theme(theme)

    def show_levels(self, levels: Sequence[Level]) -> None:
        """Draw the newest levels, one for each input of the source; none: nothing comes in."""
        for index, row in self.rows.items():
            row.show_level(levels[index] if index < len(levels) else None)


class PulseCard(parts.Card):
    """The pulse input with its edges, and what they are like in words."""

    def __init__(self) -> None:
        super().__init__("Pulse as it is seen")
        self.setMaximumHeight(_HIGHEST_PX)
        self.picture = PulsePicture()
        self.words = parts.label("", "quiet", wrap=True)
        self.body.addWidget(self.picture, 1)
        self.body.addWidget(self.words)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.picture.set_theme(theme)

    def resizeEvent(self, event: QtGui.QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Room for two lines of words, whether there are two or one: what is below must stand still."""
        self.words.setMinimumHeight(2 * self.words.fontMetrics().lineSpacing())
        super().resizeEvent(event)

    def show_pulse(self, seen: PulseSeen | None) -> None:
        """Draw the newest."""
        self.picture.show_pulse(seen)
        words = "" if seen is None else pulse_words(seen)  # the picture says that there is none
        if words != self.words.text():
            self.words.setText(words)


class FindingRow(Worded, QtWidgets.QWidget):
    """One finding: shape, word and place, what was found, what to do."""

    def __init__(self, finding: check.Finding, theme: Theme) -> None:
        super().__init__()
        row = QtWidgets.QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(look.TIGHT)
        self.sign = parts.Sign(20)
        self.sign.show_weight(_FINDING_WEIGHTS[finding.weight])
        self.sign.set_theme(theme)
        row.addWidget(self.sign, 0, QtCore.Qt.AlignmentFlag.AlignTop)
        column = QtWidgets.QVBoxLayout()
        column.setSpacing(0)
        column.addWidget(parts.label(f"{_FINDING_WORDS[finding.weight]}: {finding.where}", "heading", wrap=True))
        column.addWidget(parts.label(finding.what, wrap=True))
        if finding.cure:
            column.addWidget(parts.label(f"What to do: {finding.cure}", "small", wrap=True))
        row.addLayout(column, 1)
        self.setAccessibleName(
            f"{_FINDING_WORDS[finding.weight]}: {finding.where}: {finding.what}. {finding.cure}".strip()
        )


class FindingsCard(parts.Card):
    """What the checks of the signals say, the gravest first, and what is asked for while one is made.

    `standstill` and `tapping` ask for the checks that need the machine to stand.
    """

    standstill = QtCore.Signal()
    tapping = QtCore.Signal()

    def __init__(self) -> None:
        super().__init__("Signal check")
        self.note = parts.label("Not checked yet.", "quiet", wrap=True)
        self.prompt = parts.label("", "sentence", wrap=True)
        self.prompt.hide()
        self.work = WorkRow("this check")
        self.body.addWidget(self.note)
        self.body.addWidget(self.prompt)
        self.body.addWidget(self.work)
        self._list = QtWidgets.QVBoxLayout()
        self._list.setSpacing(look.GAP)
        self.body.addLayout(self._list)
        self.stopped = parts.button(
            "C&heck at standstill",
            self.standstill.emit,
            tip="The machine stands: there must be no pulses; listens for some seconds",
        )
        self.taps = parts.button(
            "Tap &each sensor",
            self.tapping.emit,
            tip="The machine stands, isolated and locked: asks for a tap at each sensor in turn",
        )
        row = QtWidgets.QHBoxLayout()
        row.setContentsMargins(0, look.HAIR, 0, 0)
        row.setSpacing(look.TIGHT)
        row.addWidget(self.stopped)
        row.addWidget(self.taps)
        row.addStretch(1)
        self.body.addLayout(row)
        self.body.addStretch(1)
        self.rows: list[FindingRow] = []
        self._theme: Theme = THEMES["light"]

    def ask(self, text: str) -> None:
        """Ask the person for something, in large letters; nothing takes it away."""
        self.prompt.setText(text)
        self.prompt.setVisible(bool(text))

    def show_findings(self, findings: Sequence[check.Finding], note: str) -> None:
        """List them under a note."""
        for row in self.rows:
            self._list.removeWidget(row)
            row.hide()
            row.deleteLater()
        self.note.setText(note)
        self.rows = []
        for finding in findings:
            self.add(finding)

    def add(self, finding: check.Finding) -> None:
        """One more at the end."""
        row = FindingRow(finding, self._theme)
        self.rows.append(row)
        self._list.addWidget(row)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        for row in self.rows:
            row.sign.set_theme(theme)
