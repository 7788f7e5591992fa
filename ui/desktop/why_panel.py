"""The panel that says why a figure is what it is, beside the figure. Work goes on while it is open."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui.desktop import look, parts, why_texts
from stillshaft.ui.desktop.panel_place import place
from stillshaft.ui.desktop.worded import Worded
from stillshaft.ui.theme import Theme

_WIDTH_EMS = 27


class WhyPanel(Worded, QtWidgets.QFrame):
    """Shows one text, and offers those of what else is shown. Emits `wanted` with the key of another one."""

    wanted = QtCore.Signal(str)

    def __init__(self, parent: QtWidgets.QWidget) -> None:
        super().__init__(parent)
        self.hide()
        self.setObjectName("viewPanel")
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self.key = ""
        self._back: QtWidgets.QWidget | None = None
        self._keys: list[str] = []
        self.called = parts.label("", "heading", wrap=True)
        self.plain = parts.label("", wrap=True)
        self.rule_name = parts.label("Rule", "quiet")
        self.rule = parts.label("", wrap=True)
        self.source = parts.label("", "small", wrap=True)
        self.others = parts.Choice()
        self.others.activated.connect(lambda at: self.wanted.emit(self._keys[at]))
        self.others_name = parts.labelled("Also shown here", self.others)
        self.close_it = parts.button("Close", self.put_away, tip="Put this away (Esc)")
        body = QtWidgets.QVBoxLayout(self)
        body.setContentsMargins(look.ROOM, look.GAP, look.ROOM, look.ROOM)
        body.setSpacing(look.TIGHT)
        for each in (self.called, self.plain, self.rule_name, self.rule, self.source, self.others_name):
            body.addWidget(each)
        row = QtWidgets.QHBoxLayout()
        row.setSpacing(look.TIGHT)
        row.addWidget(self.others, 1)
        row.addWidget(self.close_it)
        body.addLayout(row)

    def set_look(self, theme: Theme, sheet: str, body_px: int) -> None:
        """Colours, and as wide as text of this size needs."""
        self.setStyleSheet(sheet)
        self.others.set_theme(theme)
        self.setFixedWidth(_WIDTH_EMS * body_px)

    def open_beside(self, figure: QtWidgets.QWidget, key: str, others: Sequence[str]) -> None:
        """Show the text of a key beside what it explains; `others` are the keys of what else is shown."""
        texts = why_texts.load()
        why = texts.why(key)
        self.key = key
        self.called.setText(why.title)
        self.plain.setText(why.plain)
        self.rule.setText(why.rule)
        self.source.setText(f"Source: {why.source}.")
        self.setAccessibleName(f"Why: {why.title}")
        self.setAccessibleDescription("\n".join((why.plain, self.rule_name.text(), why.rule, self.source.text())))
        self._keys = list(dict.fromkeys((key, *others)))
        self.others.clear()
        self.others.addItems([texts.texts[each].title for each in self._keys])
        for each in (self.others, self.others_name):
            each.setVisible(len(self._keys) > 1)
        focus = QtWidgets.QApplication.focusWidget()
        if focus is not None and focus is not self and not self.isAncestorOf(focus):
            self._back = focus
        window = self.parentWidget()
        assert window is not None
        place(self, figure, window)
        self.raise_()
        self.show()
        self.setFocus(QtCore.Qt.FocusReason.PopupFocusReason)

    def put_away(self) -> None:
        """Hide, and give the focus back."""
        if not self.isVisible():
            return
        focus = QtWidgets.QApplication.focusWidget()
        inside = focus is not None and (focus is self or self.isAncestorOf(focus))
        self.hide()
        if inside and self._back is not None and self._back.isVisible():
            self._back.setFocus(QtCore.Qt.FocusReason.PopupFocusReason)

    def keyPressEvent(self, event: QtGui.QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Escape puts it away."""
        if event.key() == QtCore.Qt.Key.Key_Escape:
            self.put_away()
        else:
            super().keyPressEvent(event)
