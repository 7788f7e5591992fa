"""The next run: what it is, when it ends, what must hold before the start, and how far it is."""

from __future__ import annotations

import math
from collections.abc import Sequence

from PySide6 import QtCore, QtWidgets
from stillshaft.dsp.units import InputError
from stillshaft.solver.brief import Condition
from stillshaft.solver.events import TEMPERATURES
from stillshaft.solver.run_checks import limits
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.masses_cards import CautionsCard
from stillshaft.ui.desktop.said import Said
from stillshaft.ui.desktop.worded import LineEdit, ProgressBar
from stillshaft.ui.session import PURPOSES, Wanted
from stillshaft.ui.taking import Stop
from stillshaft.ui.theme import Theme

_LONGEST_S, _BY_HAND_S = 300.0, 1800.0
BY_HAND = "when I end it"
_ENDS: dict[str, tuple[float, float] | float | None] = {
    "at ± 2 % and ± 1°": (2.0, 1.0),
    "at ± 1 % and ± 0.5°": (1.0, 0.5),
    "at ± 5 % and ± 3°": (5.0, 3.0),
    "after 30 s": 30.0,
    "after 60 s": 60.0,
    "after 120 s": 120.0,
    BY_HAND: None,
}
_AS_IT_STANDS = "as the job stands"
_NOT_NOTED = "not noted"


class RunFormError(InputError):
    """A field that says what cannot be: the message names it."""


def stop_for(word: str, speed_rpm: float) -> Stop:
    """When a run of this choice ends, at this speed: not before it has the revolutions and seconds that a run needs."""
    end, least = _ENDS[word], limits()
    if isinstance(end, tuple):
        slow = speed_rpm < least.slow_rpm
        revolutions = max(
            least.slow_revolutions if slow else least.revolutions, math.ceil(least.seconds * speed_rpm / 60.0)
        )
        # whole blocks count, so that some more are asked for than a run needs
        return Stop(max(_LONGEST_S, 90.0 * revolutions / speed_rpm), revolutions + 8, end)
    return Stop(_BY_HAND_S if end is None else end)


def conditions_from(rows: Sequence[tuple[str, str | None, str]]) -> dict[str, float | str]:
    """Conditions as a run holds them: name, unit, text; what is not filled in is left out. Raises RunFormError."""
    found: dict[str, float | str] = {}
    for name, unit, text in rows:
        bare = text.strip()
        if unit and bare.endswith(unit):
            bare = bare[: -len(unit)].strip()
        if not bare:
            continue
        if unit is None:
            found[name] = bare
            continue
        number = number_from(name, bare)
        assert number is not None
        found[name] = number
    return found


def number_from(name: str, text: str) -> float | None:
    """A number, None for an empty text. Raises RunFormError."""
    if not text.strip():
        return None
    try:
        value = float(text)
    except ValueError:
        raise RunFormError(f'{name}: "{text}" is not a number') from None
    if not math.isfinite(value):
        raise RunFormError(f'{name}: "{text}" is not a number')
    return value


def _line(name: str, hint: str = "") -> tuple[QtWidgets.QWidget, QtWidgets.QLineEdit]:
    """A field with its name above."""
    holder, edit = QtWidgets.QWidget(), LineEdit()
    edit.setPlaceholderText(hint)
    column = QtWidgets.QVBoxLayout(holder)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(2)
    column.addWidget(parts.labelled(name, edit))
    column.addWidget(edit)
    return holder, edit


class NextCard(parts.Card):
    """The form of the next run."""

    def __init__(self) -> None:
        super().__init__("Next run")
        self.on = parts.label("", wrap=True)
        self.body.addWidget(self.on)
        self.kind, self.ends = parts.Choice(), parts.Choice()
        self.kind.addItems([_AS_IT_STANDS, *PURPOSES])
        self.ends.addItems(list(_ENDS))
        self._usual = ""
        self._proposed = ""
        self.called_field, self.called = _line("Name", "by its kind")
        self.minutes_field, self.minutes = _line("Minutes since the start", "where settling counts")
        self._grid = QtWidgets.QGridLayout()
        self._grid.setHorizontalSpacing(look.GAP)
        self._grid.setVerticalSpacing(look.TIGHT)
        self._fields = (
            self._chosen("Kind", self.kind), self.called_field, self._chosen("It ends", self.ends), self.minutes_field,
        )  # fmt: skip
        self._columns = 2
        self._conditions: tuple[Condition, ...] = ()
        self.conditions: list[tuple[QtWidgets.QWidget, QtWidgets.QLineEdit]] = []
        self._arrange()
        self.body.addLayout(self._grid)
        self.trouble = Said()
        self.body.addWidget(self.trouble)
        self.body.addStretch(1)

    def _arrange(self) -> None:
        for place, widget in enumerate((*self._fields, *(holder for holder, _ in self.conditions))):
            self._grid.addWidget(widget, *divmod(place, self._columns))

    def set_narrow(self, narrow: bool) -> None:
        """The fields one below the other, or in pairs."""
        columns = 1 if narrow else 2
        if columns != self._columns:
            self._columns = columns
            self._arrange()

    @staticmethod
    def _chosen(name: str, choice: parts.Choice) -> QtWidgets.QWidget:
        holder = QtWidgets.QWidget()
        column = QtWidgets.QVBoxLayout(holder)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        column.addWidget(parts.labelled(name, choice))
        column.addWidget(choice)
        return holder

    def show_job(self, on: str, usual: str, conditions: Sequence[Condition]) -> None:
        """Show what is on the rotor, what the run would be, and what is to be noted of it."""
        self.on.setText(f"On the rotor: {on}.")
        if usual != self._usual:
            self._usual = usual
            self.kind.setItemText(0, f"{_AS_IT_STANDS}: {usual}")
        if tuple(conditions) != self._conditions:
            self._conditions = tuple(conditions)
            for holder, _ in self.conditions:
                self._grid.removeWidget(holder)
                holder.hide()
                holder.deleteLater()
            self.conditions = [_line(c.name + (f", {c.unit}" if c.unit else ""), "as it is now") for c in conditions]
            self._arrange()

    @property
    def purpose(self) -> str | None:
        """The kind that was chosen; None: as the job stands."""
        return None if self.kind.currentIndex() == 0 else self.kind.currentText()

    def wanted(self) -> Wanted:
        """The run that is meant. Raises RunFormError."""
        rows = [(c.name, c.unit, edit.text()) for c, (_, edit) in zip(self._conditions, self.conditions, strict=True)]
        name = " ".join(self.called.text().split()) or None
        minutes = number_from("minutes since the start", self.minutes.text())
        return Wanted(self.purpose, name, conditions_from(rows), minutes)

    def propose_minutes(self, minutes: float | None) -> None:
        """Write how long ago the start was, unless the person wrote something else; None: it is not known."""
        if self.minutes.text() == self._proposed and not self.minutes.hasFocus():
            self._proposed = "" if minutes is None else f"{minutes:.1f}"
            self.minutes.setText(self._proposed)

    def clear(self) -> None:
        """For the run after: name and minutes are its own."""
        self.kind.setCurrentIndex(0)
        self.called.clear()
        self.minutes.clear()
        self._proposed = ""

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        for part in (self.kind, self.ends, self.trouble):
            part.set_theme(theme)


class StartCard(CautionsCard):
    """What must hold before the machine is started; `runs` that it runs already, and is not started now."""

    runs = QtCore.Signal()

    def __init__(self) -> None:
        super().__init__()
        self.heading.setText("Before the start")
        self.setAccessibleName("Before the start")
        self.starts = parts.label("", "quiet", wrap=True)
        self.was = parts.Choice()
        self.was.addItems([_NOT_NOTED, *TEMPERATURES])
        head = QtWidgets.QHBoxLayout()
        head.setSpacing(look.TIGHT)
        head.addWidget(self.starts, 1)
        head.addWidget(parts.labelled("Temperature of the machine", self.was))
        head.addWidget(self.was)
        self.body.insertLayout(1, head)
        self.say.setText("All of it &holds: start")
        self.say.setAccessibleName("All of it holds: start")
        self.already = parts.button("It runs &already", self.runs.emit, tip="Measure a machine that is not started now")
        row = QtWidgets.QHBoxLayout()
        row.addStretch(1)
        row.addWidget(self.already)
        self.body.addLayout(row)
        self.above, self.below = [self.was], [*self.below, self.already]

    @property
    def temperature(self) -> str | None:
        """How the machine is when it is started; None where nobody says so."""
        return self.was.currentText() if self.was.currentIndex() else None

    def begin_anew(self) -> None:
        """Every start is looked at by itself."""
        for tick in self.ticks:
            tick.setChecked(False)
        self.was.setCurrentIndex(0)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.was.set_theme(theme)
        self.done.set_theme(theme)
        self.trouble.set_theme(theme)


class RunStrip(parts.Card):
    """One line on the run that is next or under way, how far it is, and what can be done."""

    def __init__(self) -> None:
        super().__init__()
        self.text = parts.label("", wrap=True)
        self.bar = ProgressBar()
        self.bar.setRange(0, 100)
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName("How far the run is")
        self.wait = parts.button(
            "Wait until sett&led", lambda: None, tip="Record when 1x moves less than 2 % and 2° in five minutes"
        )
        self.record = parts.button("&Record run", lambda: None, "main", "Record a run from now on")
        self.end = parts.button("&End run", lambda: None, "main", "It is enough: measure what was recorded")
        self.off = parts.button("Break &off", lambda: None, tip="No run is made of it; the recording is kept")
        row = QtWidgets.QHBoxLayout()
        row.setSpacing(look.TIGHT)
        row.addWidget(self.text, 3)
        row.addWidget(self.bar, 2)
        for each in (self.wait, self.record, self.end, self.off):
            row.addWidget(each)
        self.wait.hide()
        self.body.addLayout(row)
        self.trouble = Said()
        self.body.addWidget(self.trouble)

    def show_progress(self, doing: str, share: float, *, recording: bool, ready: bool, text: str) -> None:
        """Say how far it is; `ready`: a run can be recorded now."""
        if text != self.text.text():
            self.text.setText(text)
        self.bar.setVisible(bool(doing))
        self.bar.setValue(round(100.0 * share))
        self.record.setVisible(not doing)
        self.record.setEnabled(ready)
        self.end.setVisible(recording)
        self.off.setVisible(recording)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.trouble.set_theme(theme)
