"""The settling wait: 1x now against before, while a started machine warms up, and how the wait is ended."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6 import QtCore, QtWidgets
from stillshaft.solver.run_checks import limits
from stillshaft.solver.state import JobState
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.said import Said
from stillshaft.ui.desktop.worded import LineEdit
from stillshaft.ui.settling import SETTLED, Watched
from stillshaft.ui.theme import Theme

_FIRST_WORDS = "Watching whether 1x settles: its first vectors come in a few seconds."
_FIRST_S = 20.0  # by when they have come


@dataclass(frozen=True)
class SameMinutes:
    """The minutes since a start at which the first run that counts was taken, and its name."""

    minutes: float
    run: str

    def to_go(self, minutes_now: float) -> float:
        """Minutes until a run counts as taken as long after its start."""
        within = max(limits().minutes, limits().minutes_percent / 100.0 * self.minutes)
        return max(0.0, self.minutes - within - minutes_now)


def same_minutes(state: JobState) -> SameMinutes | None:
    """What another run is to be like, where it is known."""
    first = next((r.what for r in state.runs if r.counts), None)
    if first is None or first.minutes_since_start is None:
        return None
    return SameMinutes(first.minutes_since_start, first.name)


def ended_by(watched: Watched | None, same: SameMinutes | None, minutes: float | None) -> str | None:
    """What ends the wait, in words; None while it goes on."""
    if watched is not None and watched.verdict == SETTLED:
        return f"{parts.begun(watched.sentence)}."
    if same is not None and minutes is not None and not same.to_go(minutes):
        return f'{minutes:.0f} min since the start, as for "{same.run}".'
    return None


def wait_words(watched: Watched | None, same: SameMinutes | None, minutes: float | None) -> str:
    """How the wait stands."""
    if watched is None or (not watched.points and watched.seconds < _FIRST_S):
        said = _FIRST_WORDS
    else:
        said = f"{parts.begun(watched.sentence)}."
    if same is not None and minutes is not None:
        said += f' Or {same.to_go(minutes):.0f} min more, until it ran as long as for "{same.run}".'
    return said


class SettlingStrip(parts.Card):
    """One line on the settling wait while it is on; `ended` ends it with a reason."""

    ended = QtCore.Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.text = parts.label("", wrap=True)
        self.reason = LineEdit()
        self.reason.setPlaceholderText("Why it is not waited for")
        self.reason.setAccessibleName("Why it is not waited for")
        self.reason.returnPressed.connect(self._end)
        self.end = parts.button("End the wa&it", self._end, tip="Record now, with the reason")
        row = QtWidgets.QHBoxLayout()
        row.setSpacing(look.TIGHT)
        row.addWidget(self.text, 3)
        row.addWidget(self.reason, 2)
        row.addWidget(self.end)
        self.body.addLayout(row)
        self.trouble = Said()
        self.body.addWidget(self.trouble)

    def say(self, text: str) -> None:
        """Say how it stands."""
        if text != self.text.text():
            self.text.setText(text)

    def _end(self) -> None:
        reason = " ".join(self.reason.text().split())
        self.trouble.say("" if reason else "Write the reason first.")
        if reason:
            self.reason.clear()
            self.ended.emit(reason)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.trouble.set_theme(theme)
