"""What is wired up, as it comes in: inputs with live levels, the pulse as it is seen, findings of the signal check.

Each part takes plain data and gives nothing back.
"""

from __future__ import annotations

from collections.abc import Sequence

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.acquire.hookup import Hookup, Point
from stillshaft.dsp import check
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.canvas import Marker
from stillshaft.ui.desktop.figures import Level, PulseSeen
from stillshaft.ui.desktop.meters import LevelMeter, PulsePicture, level_words, pulse_words
from stillshaft.ui.desktop.stages import State, Weight
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
    mount = "" if point.mount is None else f" · {point.mount}"
    return _whole(f"{point.quantity} · {sensitivity} · {place}{mount}")


def _whole(text: str) -> str:
    """Broken into lines at the dots only."""
    return text.replace(" ", "\u00a0").replace("·\u00a0", "· ").replace("/", "/\u2060")


class InputRow:
    """One input: number, shape and name, what it is, its level, and the level's word."""

    def __init__(self, number: int, name: str, words: str, shape: int | None) -> None:
        self.number = parts.label(f"{number}", "heading")
        self.number.setAlignment(QtCore.Qt.AlignmentFlag.AlignRight | QtCore.Qt.AlignmentFlag.AlignVCenter)
        self.marker = Marker(shape) if shape is not None else QtWidgets.QWidget()
        self.names = QtWidgets.QWidget()
        column = QtWidgets.QVBoxLayout(self.names)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(parts.label(name, "heading", wrap=True))
        column.addWidget(parts.label(words, "small", wrap=True))
        self.meter = LevelMeter(name)
        self.sign = parts.Sign(18)
        self.sign.show_weight(State.EMPTY)
        self.word = parts.Live("no signal", "", "no signal")

    @property
    def widgets(self) -> tuple[QtWidgets.QWidget, ...]:
        """In the order of the columns."""
        return self.number, self.marker, self.names, self.meter, self.sign, self.word

    def show_level(self, level: Level | None) -> None:
        """Draw the newest level."""
        self.meter.show_level(level)
        word = "no signal" if level is None else level_words(level)
        self.word.say(word)
        self.sign.show_weight(State.EMPTY if level is None else _LEVEL_WEIGHTS[word])


class InputsCard(parts.Card):
    """One row for each input that is wired."""

    def __init__(self) -> None:
        super().__init__("Inputs", "peak and level in dB of full scale")
        self._grid = QtWidgets.QGridLayout()
        self._grid.setHorizontalSpacing(look.TIGHT)
        self._grid.setVerticalSpacing(look.TIGHT)
        self._grid.setColumnStretch(2, 3)
        self._grid.setColumnStretch(3, 4)
        self.body.addLayout(self._grid)
        self.body.addStretch(1)
        self.rows: dict[int, InputRow] = {}
        self._hookup: Hookup | None = None
        self._theme: Theme = THEMES["light"]

    def set_hookup(self, hookup: Hookup | None) -> None:
        """Have a row for the pulse and for each point."""
        if hookup is self._hookup:
            return
        self._hookup = hookup
        for row in self.rows.values():
            for widget in row.widgets:
                self._grid.removeWidget(widget)
                widget.hide()
                widget.deleteLater()
        self.rows = {}
        if hookup is None:
            return
        pulse = hookup.pulse
        marks = "one mark" if pulse.pulses_per_rev == 1 else f"{pulse.pulses_per_rev} marks, {pulse.reference}"
        words = _whole(f"{pulse.edge} edge · {marks} · at {pulse.angle_deg:g}°")
        self.rows[pulse.index] = InputRow(pulse.index + 1, "pulse", words, None)
        for shape, point in enumerate(hookup.points):
            self.rows[point.index] = InputRow(point.index + 1, point.name, point_words(point), shape)
        for line, index in enumerate(sorted(self.rows)):
            for column, widget in enumerate(self.rows[index].widgets):
                self._grid.addWidget(widget, line, column)
        self.set_theme(self._theme)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        for row in self.rows.values():
            row.meter.set_theme(theme)
            row.sign.set_theme(theme)
            if isinstance(row.marker, Marker):
                row.marker.set_theme(theme)

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
        self.words = parts.label("no pulse signal yet", "quiet", wrap=True)
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
        words = "no pulse signal yet" if seen is None else pulse_words(seen)
        if words != self.words.text():
            self.words.setText(words)


class FindingRow(QtWidgets.QWidget):
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
    """What the signal check says, the gravest first."""

    def __init__(self) -> None:
        super().__init__("Signal check")
        self.note = parts.label("Not checked yet.", "quiet", wrap=True)
        self.body.addWidget(self.note)
        self._list = QtWidgets.QVBoxLayout()
        self._list.setSpacing(look.GAP)
        self.body.addLayout(self._list)
        self.body.addStretch(1)
        self.rows: list[FindingRow] = []
        self._theme: Theme = THEMES["light"]

    def show_findings(self, findings: Sequence[check.Finding], note: str) -> None:
        """List them under a note."""
        for row in self.rows:
            self._list.removeWidget(row)
            row.hide()
            row.deleteLater()
        self.note.setText(note)
        self.rows = [FindingRow(f, self._theme) for f in findings]
        for row in self.rows:
            self._list.addWidget(row)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        for row in self.rows:
            row.sign.set_theme(theme)
