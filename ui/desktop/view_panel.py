"""The panel behind “View”: unit, angle direction, the end looked at, theme, text size and language."""

from __future__ import annotations

from dataclasses import replace

from PySide6 import QtCore, QtWidgets
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.panel import Panel
from stillshaft.ui.desktop.settings import CHOICES, View
from stillshaft.ui.desktop.words import own

_ROWS = {
    "unit": ("Vibration in", 3),
    "angles": ("Angles count", 2),
    "seen_from": ("Rotor seen from", 2),
    "theme": ("Colours", 3),
    "text_size": ("Text", 3),
    "language": ("Language", 2),
}


class ViewPanel(Panel):
    """Emits `changed` with the new choices."""

    changed = QtCore.Signal(View)

    def __init__(self, parent: QtWidgets.QWidget, view: View) -> None:
        super().__init__(parent, "How things are shown")
        self._view = view
        self.choices: dict[str, parts.Segments] = {}
        for field, (name, columns) in _ROWS.items():
            self.body.addSpacing(look.HAIR)
            self.body.addWidget(parts.label(name, "heading"))
            # a language is called by its own name in all of them
            choices = [own(c) for c in CHOICES[field]] if field == "language" else CHOICES[field]
            choice = parts.Segments(name, choices, columns)
            choice.chosen.connect(lambda word, f=field: self._choose(f, word))
            self.choices[field] = choice
            self.body.addWidget(choice)
        self.show_view(view)

    def first(self) -> QtWidgets.QWidget:
        """The unit."""
        return next(iter(self.choices["unit"].buttons.values()))

    def show_view(self, view: View) -> None:
        """Show these choices."""
        self._view = view
        for field, choice in self.choices.items():
            choice.set(getattr(view, field))

    def _choose(self, field: str, word: str) -> None:
        self._view = replace(self._view, **{field: word})
        self.changed.emit(self._view)
