"""Colours and type of the window: light, dark, and sunlight for a screen outdoors.

Colours are told apart by people who see red and green alike, and never stand alone: each point has its shape, each
verdict its word.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from PySide6 import QtGui


@dataclass(frozen=True)
class Theme:
    """One set of colours; `points` go round for more points than there are.

    `ground` lies under the panels, `sunken` under the rail, `soft` under what is chosen; `grid` is for lines behind
    curves, `line` for borders.
    """

    name: str
    ground: str
    panel: str
    sunken: str
    soft: str
    line: str
    grid: str
    text: str
    quiet: str
    accent: str
    on_accent: str
    good: str
    caution: str
    bad: str
    points: tuple[str, ...]
    trace_px: float


THEMES = {
    theme.name: theme
    for theme in (
        Theme(
            name="light", ground="#f1eee8", panel="#fcfbf8", sunken="#e5e0d7", soft="#dce8ec", line="#cfc9bf",
            grid="#e6e2da", text="#1b2327", quiet="#515c65", accent="#0d5873", on_accent="#ffffff", good="#1c6338",
            caution="#7a4a00", bad="#9c1f2b", points=("#1a67ad", "#a8531c", "#5b1f64", "#1f3d1c"), trace_px=1.5,
        ),
        Theme(
            name="dark", ground="#12171a", panel="#1b2226", sunken="#0c1012", soft="#20353d", line="#39444b",
            grid="#293238", text="#ece9e2", quiet="#a9b4bb", accent="#74c4de", on_accent="#0b1418", good="#86d6a0",
            caution="#f0c274", bad="#ff9a94", points=("#4aa8ea", "#f7956a", "#e3c4ee", "#c3f06a"), trace_px=1.5,
        ),
        Theme(
            name="sunlight", ground="#ffffff", panel="#ffffff", sunken="#ffffff", soft="#dfe9f5", line="#000000",
            grid="#b9b9b9", text="#000000", quiet="#1e1e1e", accent="#003b7a", on_accent="#ffffff", good="#004d1f",
            caution="#5c3600", bad="#8a0010", points=("#24558a", "#933908", "#6305ae", "#182711"), trace_px=3.0,
        ),
    )
}  # fmt: skip


def palette(theme: Theme) -> QtGui.QPalette:
    """Colours for what Qt draws itself: a style sheet on a combo box would take its arrow away."""
    from PySide6 import QtGui

    made, role = QtGui.QPalette(), QtGui.QPalette.ColorRole
    for roles, colour in (
        ((role.Window,), theme.ground),
        ((role.Base, role.AlternateBase, role.Button, role.ToolTipBase), theme.panel),
        ((role.WindowText, role.Text, role.ButtonText, role.ToolTipText), theme.text),
        ((role.PlaceholderText,), theme.quiet),
        ((role.Highlight,), theme.accent),
        ((role.HighlightedText,), theme.on_accent),
    ):
        for each in roles:
            made.setColor(each, QtGui.QColor(colour))
    for each in (role.WindowText, role.Text, role.ButtonText):
        made.setColor(QtGui.QPalette.ColorGroup.Disabled, each, QtGui.QColor(theme.quiet))
    return made
