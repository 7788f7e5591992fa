"""What is due once hands are out: photos of the pieces that stay on, trial masses weighed back in; and the job once closed."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6 import QtCore, QtWidgets
from stillshaft.solver import progress
from stillshaft.solver.state import JobState
from stillshaft.ui.desktop import look, masses_model, next_visit, parts
from stillshaft.ui.desktop.brief_photos import Photo, Photos
from stillshaft.ui.desktop.masses_cards import Rows
from stillshaft.ui.desktop.open_job import Shown
from stillshaft.ui.desktop.said import Said
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


class ClosedCard(parts.Card):
    """What a closed job left on the rotor, and how to go on. Emits `visited` for the next visit, `to_close_out`."""

    visited = QtCore.Signal()
    to_close_out = QtCore.Signal()

    def __init__(self) -> None:
        super().__init__("What stays on the rotor")
        self.pieces = Rows()
        self.nothing = parts.label("Nothing beyond its initial state.", "quiet", wrap=True)
        self.body.addWidget(self.pieces)
        self.body.addWidget(self.nothing)
        self.body.addSpacing(look.TIGHT)
        self.body.addWidget(parts.label("How to go on", "heading"))
        self.body.addWidget(
            parts.label(
                "The job is closed: no mass is put on or taken off in it. The next visit is a job of its own that takes over "
                "brief, hook-up and coefficients. It begins with a look for missing pieces and an initial run.",
                wrap=True,
            )
        )
        self.visit = next_visit.button(self.visited.emit)
        self.reopen = parts.button(
            "Go to Close-&out", self.to_close_out.emit, tip="Its report, and how it is opened again"
        )
        self.trouble = Said()
        self.body.addWidget(self.trouble)
        row = QtWidgets.QHBoxLayout()
        row.setSpacing(look.TIGHT)
        row.addWidget(self.visit)
        row.addWidget(self.reopen)
        row.addStretch(1)
        self.body.addLayout(row)

    def show_pieces(self, words: Sequence[str]) -> None:
        """Show each piece that is on, in words."""
        self.pieces.show_texts(words)
        self.nothing.setVisible(not words)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.trouble.set_theme(theme)
