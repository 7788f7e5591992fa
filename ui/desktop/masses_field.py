"""A field whose text is taken at once: it goes back to what was there where that cannot be used, and says why."""

from __future__ import annotations

from collections.abc import Callable

from PySide6 import QtCore
from stillshaft.ui.desktop.brief_fields import LineField


class TakenField(LineField):
    """`take` gets what was typed and raises ValueError for what cannot be used; it may write the field anew."""

    def __init__(self, name: str, take: Callable[[str], None], hint: str = "", ems: float = 7.0) -> None:
        self._ems = ems
        super().__init__(name, hint)
        self._use = take
        self.finished.connect(self._finish)

    def put(self, text: str) -> None:
        """Write; it is short, and no tip says it again."""
        self.line.setText(text)

    def show_taken(self, text: str) -> None:
        """Show what is so; what a person is typing is left alone while that stays so."""
        changed = text != self.recorded
        self.show_recorded(text)
        if changed and self.text != text:
            self.put(text)

    def _finish(self, typed: str) -> None:
        try:
            self._use(typed)
        except ValueError as error:
            self.refuse(str(error))
        else:
            self.recorded = self.text.strip()  # what was taken may have been written anew
            self.put(self.recorded)
            self.take()

    def sizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """Wide enough for what is typed into it."""
        return super().sizeHint().expandedTo(QtCore.QSize(round(self._ems * self.fontInfo().pixelSize()), 0))

    def minimumSizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """The same."""
        return super().minimumSizeHint().expandedTo(QtCore.QSize(round(self._ems * self.fontInfo().pixelSize()), 0))
