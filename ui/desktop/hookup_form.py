"""Fields of a hook-up: each is checked when it is finished, and says beside itself what was refused."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import Any, Protocol

from PySide6 import QtWidgets
from stillshaft.acquire.daq import COUPLINGS, TERMINALS
from stillshaft.acquire.hookup import Hookup
from stillshaft.ui.desktop import hookup_model, look, parts, settings
from stillshaft.ui.desktop.brief_fields import Field, Form, LineField, Pick, PickField
from stillshaft.ui.desktop.hookup_model import Place
from stillshaft.ui.theme import Theme

Table = dict[str, Any]


class Recorder(Protocol):
    """Has a value recorded; the field is told what came of it."""

    def __call__(self, field: Field, place: Place, key: str, text: str) -> None:
        """Have it recorded."""


class WordField(Field):
    """One of some words; recorded when it is chosen. With `as_written` they are names or units: m/s is not M/s."""

    def __init__(self, name: str, words: Sequence[str], *, as_written: bool = False) -> None:
        self.pick = Pick()
        self.words = tuple(words)
        self._shown = str if as_written else parts.begun
        self.pick.addItems([*map(self._shown, words)])
        super().__init__(name, self.pick)
        self.pick.activated.connect(lambda _number: self.commit())

    @property
    def text(self) -> str:
        """The word that is chosen."""
        return self.words[max(0, self.pick.currentIndex())]

    def offer(self, words: Sequence[str]) -> None:
        """Have other words to choose from; the chosen one stays if it is among them."""
        if tuple(words) == self.words:
            return
        here = self.text if self.words else ""
        self.words = tuple(words)
        self.pick.clear()
        self.pick.addItems([*map(self._shown, words)])
        self.put(here if here in words else words[0])

    def put(self, text: str) -> None:
        """Choose; a word that is not in the list joins it."""
        if text not in self.words:
            self.words = (*self.words, text)
            self.pick.addItem(self._shown(text))
        self.pick.setCurrentIndex(self.words.index(text))

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        super().set_theme(theme)
        self.pick.set_theme(theme)


def _fields(place: Place) -> list[tuple[str, Field]]:
    """Keys of a place with their fields."""
    if place == "pulse":
        return [
            ("input", LineField("Input", "1 to 64")),
            ("edge", WordField("Edge", ("auto", "rising", "falling"))),
            ("pulses_per_rev", LineField("Pulses per revolution", "such as 1")),
            ("reference", WordField("Reference mark", ("single", "missing", "wide", "unequal"))),
            ("angle", LineField("Angle of the pulse sensor", "degrees from the datum")),
        ]
    if place == "device":
        return [
            ("range", LineField("Range", "such as 10 V")),
            ("coupling", WordField("Coupling", COUPLINGS)),
            ("iepe", LineField("IEPE current", "such as 4 mA, 0 mA for off")),
            ("terminal", WordField("Terminals", TERMINALS)),
        ]
    if place == "":
        return [
            ("reference_end", LineField("Looked at from", "drive, non-drive, …")),
            ("rotation", WordField("Rotation, seen from there", ("counter-clockwise", "clockwise"))),
            ("datum", LineField("Datum: where angle 0 is", "such as 12 o'clock")),
            ("display", WordField("Vibration in", settings.UNITS[1:], as_written=True)),
        ]
    return [
        ("name", LineField("Name", "such as fan end horizontal")),
        ("input", LineField("Input", "1 to 64")),
        ("quantity", WordField("Quantity", hookup_model.QUANTITIES)),
        ("direction", WordField("Direction", ("radial", "axial"))),
        ("sensitivity", LineField("Sensitivity", "such as 100 mV/g")),
        ("full_scale", LineField("Full scale", "such as 2.0 V")),
        ("angle", LineField("Angle", "degrees from the datum")),
        ("inverted", WordField("Inverted", ("no", "yes"))),
        ("delay", LineField("Delay", "such as 12 us")),
        ("highpass", LineField("AC-coupling corners", "such as 2.0 Hz, 0.8 Hz")),
        ("mount", PickField("Mount", hookup_model.MOUNTS)),
    ]


class PlaceForm(Form):
    """The fields of one place of the hook-up."""

    def __init__(self, place: Place, whose: str, record: Recorder) -> None:
        super().__init__(pairs=not isinstance(place, int) and place != "pulse")
        self.place = place
        self.by_key: dict[str, Field] = {}
        for key, field in _fields(place):
            if whose:
                field.control.setAccessibleName(f"{field.name}, {whose}")
            field.finished.connect(partial(record, field, place, key))
            self.by_key[key] = self.add(field)

    def show_hookup(self, hookup: Hookup) -> None:
        """Show what is recorded, and only fields that fit."""
        table, place = hookup.table, self.place
        for key, field in self.by_key.items():
            note = hookup_model.remark(hookup, place, key) if isinstance(place, int) else ""
            field.show_recorded(hookup_model.text_of(table, place, key), note)
        if isinstance(place, int):
            self.fit(self.by_key["angle"], hookup.points[place].direction == "radial")
        if place == "pulse":
            self.fit(self.by_key["reference"], hookup.pulse.pulses_per_rev > 1)


class FormCard(parts.Card):
    """A card with the form of one place."""

    def __init__(self, heading: str, place: Place, record: Recorder, note: str = "") -> None:
        super().__init__(heading)
        self.form = PlaceForm(place, "", record)
        self.note_text = parts.label(note, "small", wrap=True)
        self.note_text.setVisible(bool(note))
        self.body.addWidget(self.form)
        self.body.addWidget(self.note_text)

    def set_width(self, width_px: int, body_px: int) -> None:
        """The card is so wide, for text of this size."""
        self.form.set_width(width_px - 2 * look.ROOM - 2, body_px)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.form.set_theme(theme)


class Editor(QtWidgets.QWidget):
    """What belongs to one input, opened under its row: the fields, and for a point the button that takes it away."""

    def __init__(self, place: Place, name: str, record: Recorder, remove: Callable[[], None] | None) -> None:
        super().__init__()
        column = QtWidgets.QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, look.GAP)
        column.setSpacing(look.TIGHT)
        self.form = PlaceForm(place, name, record)
        column.addWidget(self.form)
        self.remove: QtWidgets.QPushButton | None = None
        if remove is not None:
            self.remove = parts.button(
                "Remove this input", remove, tip="Take it out of the hook-up; undo brings it back"
            )
            self.remove.setAccessibleName(f"Remove {name}")
            row = QtWidgets.QHBoxLayout()
            row.addWidget(self.remove)
            row.addStretch(1)
            column.addLayout(row)
        self.hide()

    @property
    def controls(self) -> list[QtWidgets.QWidget]:
        """In the order of Tab."""
        return [*(f.control for f in self.form.fields), *([] if self.remove is None else [self.remove])]
