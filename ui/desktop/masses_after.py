"""What is due once hands are out: photos of the pieces that stay on, and trial masses weighed back in."""

from __future__ import annotations

from pathlib import Path

from PySide6 import QtCore, QtWidgets
from stillshaft.solver import progress
from stillshaft.solver.state import JobState
from stillshaft.ui.desktop import look, masses_model, parts
from stillshaft.ui.desktop.brief_photos import Photo, Photos
from stillshaft.ui.desktop.masses_field import Said
from stillshaft.ui.desktop.open_job import Shown
from stillshaft.ui.desktop.worded import LineEdit
from stillshaft.ui.theme import Theme


def photos_of(shown: Shown) -> list[Photo]:
    """Photos of what is on the rotor: added since, or with the entry that put it on."""
    on = {o.of for o in shown.state.on_rotor}
    added = [
        Photo(shown.folder / e.what.file.path, Path(e.what.file.path).name, e.id)
        for e in shown.state.photos
        if e.what.about in on
    ]
    put = [
        Photo(shown.folder / f.path, Path(f.path).name) for e in shown.state.masses if e.id in on for f in e.what.photos
    ]
    return [*added, *put]


def lost_words(state: JobState) -> str:
    """Trial masses that were taken off and are not noted as weighed back in."""
    put = {e.id: e.what.pieces for e in state.masses}
    said = []
    for event in progress.not_weighed_back(state):
        numbers = event.what.numbers
        pieces = [p for n, p in enumerate(put.get(event.what.of or 0, []), start=1) if not numbers or n in numbers]
        said += [f"{masses_model.short(p.plane)} {abs(p.mass_g):.4g} g" for p in pieces]
    return ", ".join(said)


class AfterCard(parts.Card):
    """Hidden while nothing is due. Emits `noted` with what weighing back told; `photos` emits for itself."""

    noted = QtCore.Signal(str)

    def __init__(self) -> None:
        super().__init__("Once hands are out")
        self.lost = parts.label("", wrap=True)
        self.weighed = LineEdit()
        self.weighed.setPlaceholderText("such as: all there, 12.0 g")
        self.weighed_name = parts.labelled("Weighed back in", self.weighed)
        self.add = parts.button(
            "Add the note", self._note, tip="Note trial masses that were taken off as weighed back in"
        )
        self._row = QtWidgets.QWidget()
        row = QtWidgets.QHBoxLayout(self._row)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(look.TIGHT)
        row.addWidget(self.weighed_name)
        row.addWidget(self.weighed, 1)
        row.addWidget(self.add)
        self.weighed.returnPressed.connect(self._note)
        self.trouble = Said()
        self.pictured = parts.label("Photos of the pieces that are on", wrap=True)
        self.photos = Photos("photos of the pieces on the rotor")
        self.body.addWidget(self.lost)
        self.body.addWidget(self._row)
        self.body.addWidget(self.trouble)
        self.body.addWidget(self.pictured)
        self.body.addWidget(self.photos)

    def show_job(self, shown: Shown | None) -> bool:
        """Show what is due; False: nothing is."""
        lost = "" if shown is None else lost_words(shown.state)
        on = shown is not None and bool(shown.state.on_rotor)
        self.lost.setText(f"Taken off, and not noted as weighed back in: {lost}.")
        self.lost.setVisible(bool(lost))
        self._row.setVisible(bool(lost))
        self.pictured.setVisible(on)
        self.photos.setVisible(on)
        self.photos.show_photos([] if shown is None else photos_of(shown))
        return bool(lost) or on

    def _note(self) -> None:
        text = " ".join(self.weighed.text().split())
        if text:
            self.trouble.say("")
            self.noted.emit(text)
        else:
            self.trouble.say("Write what weighing told first.")
            self.weighed.setFocus()

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.trouble.set_theme(theme)
        self.photos.set_theme(theme)
