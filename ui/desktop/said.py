"""Lines that say something of what stands above them, with the shape of their weight; no room is taken by nothing."""

from __future__ import annotations

from PySide6 import QtCore, QtWidgets
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.stages import Weight
from stillshaft.ui.desktop.why import explain
from stillshaft.ui.theme import Theme


class _Line(QtWidgets.QWidget):
    """A sign and a text; hidden while there is nothing to say."""

    def __init__(self, weight: Weight, kind: str, sign_px: int) -> None:
        super().__init__()
        row = QtWidgets.QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(look.TIGHT)
        self.sign = parts.Sign(sign_px)
        self.sign.show_weight(weight)
        self.text = parts.label("", kind, wrap=True)
        row.addWidget(self.sign, 0, QtCore.Qt.AlignmentFlag.AlignTop)
        row.addWidget(self.text, 1)
        explain(self, "refused")
        self.hide()

    def _show(self, text: str) -> None:
        self.text.setText(parts.begun(text))
        self.text.setAccessibleName(parts.begun(text))
        self.setVisible(bool(text))

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.sign.set_theme(theme)


class Said(_Line):
    """What is to be said of a card."""

    def __init__(self, weight: Weight = Weight.CAUTION) -> None:
        super().__init__(weight, "", 18)

    def say(self, text: str, weight: Weight | None = None) -> None:
        """Show a line, or nothing; it keeps its weight unless another is given."""
        if weight is not None:
            self.sign.show_weight(weight)
        self._show(text)


class Remark(_Line):
    """What is to be said of a field, small: a refusal has the sign of a caution, a note has none."""

    def __init__(self) -> None:
        super().__init__(Weight.CAUTION, "small", 16)

    def say(self, text: str, *, refused: bool = False) -> None:
        """Say something, as a refusal or as a note; nothing takes it away."""
        self.sign.setVisible(refused)
        self._show(text)
