"""What a page of a stage is to the window around it."""

from __future__ import annotations

from PySide6 import QtCore, QtWidgets
from stillshaft.ui.desktop import look, parts, why_texts
from stillshaft.ui.desktop.settings import View
from stillshaft.ui.desktop.stages import Sentence, Stage, State
from stillshaft.ui.desktop.worded import Worded
from stillshaft.ui.theme import Theme


class Page(Worded, QtWidgets.QWidget):
    """A stage's page. It emits `changed` when its state or its sentence may be another one.

    `head` is the row of the title, for the page's own actions, `subtitle` what stands beside it, `purpose` one
    sentence on what the page is for, `body` the whole page's layout.
    """

    changed = QtCore.Signal()
    watches = False  # it watches what runs now, of which the record knows nothing yet

    def __init__(self, stage: Stage) -> None:
        super().__init__()
        self.stage = stage
        self.setObjectName("page")
        self.setAccessibleName(f"{stage.value}: {stage.purpose}")
        self.body = QtWidgets.QVBoxLayout(self)
        self.body.setContentsMargins(look.WIDE, look.ROOM, look.WIDE, look.ROOM)
        self.body.setSpacing(look.GAP)
        self.head = QtWidgets.QHBoxLayout()
        self.head.setSpacing(look.TIGHT)
        self.head.addWidget(parts.label(stage.value, "title"))
        self.subtitle = parts.label(f"{stage.purpose}.", "quiet", wrap=True)
        self.subtitle.setContentsMargins(look.HAIR, 0, 0, 0)
        self.head.addWidget(self.subtitle, 1)
        self.body.addLayout(self.head)
        self.purpose = parts.label(why_texts.load().pages[stage.value], wrap=True)
        self.body.addWidget(self.purpose)

    def state(self) -> State:
        """How far the stage is."""
        return State.EMPTY

    def sentence(self) -> Sentence | None:
        """What this stage has to say about the job now."""
        return None

    def set_theme(self, theme: Theme) -> None:
        """Recolour what is drawn by hand."""

    def set_view(self, view: View) -> None:
        """Show in these units, angles, and from this end."""

    def set_room(self, width_px: int, body_px: int) -> None:
        """There is so much room from left to right for text of this size: put parts beside or below each other."""

    def enter(self) -> None:
        """The page is shown now."""

    def leave(self) -> None:
        """Another page is shown now: nothing needs to be drawn."""

    def close_down(self) -> None:
        """The window closes: stop what runs."""


class NotYet(Page):
    """Stands where the program has no page yet, and says so."""

    def __init__(self, stage: Stage) -> None:
        super().__init__(stage)
        self.body.addWidget(parts.label("This version of the program has no page for it.", wrap=True))
        self.body.addStretch(1)
