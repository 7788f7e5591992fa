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
    """One set of colours; `points` go round for more points than there are."""

    name: str
    ground: str
    panel: str
    line: str
    text: str
    quiet: str
    accent: str
    on_accent: str
    good: str
    bad: str
    points: tuple[str, ...]
    trace_px: float


THEMES = {
    theme.name: theme
    for theme in (
        Theme(
            "light", "#efece6", "#fbfaf7", "#cfc9bf", "#1b2327", "#56616a", "#0d5873", "#ffffff", "#1c6338", "#9c1f2b",
            ("#0d5873", "#a8470f", "#5d3c93", "#3f6212"), 1.5,
        ),
        Theme(
            "dark", "#12171a", "#1b2226", "#39444b", "#ece9e2", "#a9b4bb", "#74c4de", "#0b1418", "#86d6a0", "#ff9a94",
            ("#74c4de", "#f3a974", "#bda8f2", "#b8d47a"), 1.5,
        ),
        Theme(
            "sunlight", "#ffffff", "#ffffff", "#000000", "#000000", "#1e1e1e", "#003b7a", "#ffffff", "#004d1f", "#8a0010",
            ("#003b7a", "#8f2f00", "#4a1d8a", "#2f4a00"), 3.0,
        ),
    )
}  # fmt: skip
SHAPES = ("o", "s", "d", "t")  # of the points, in the order of `Theme.points`
SHAPE_WORDS = ("●", "■", "◆", "▼")


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


def style_sheet(theme: Theme) -> str:
    """The window's style in Qt's own language."""
    return f"""
    QWidget {{ font-size: 14px; }}
    QFrame#panel, QFrame#panel QLabel {{ background: {theme.panel}; }}
    QFrame#panel {{ border: 1px solid {theme.line}; border-radius: 6px; }}
    QLabel#quiet {{ color: {theme.quiet}; }}
    QLabel#heading {{ font-size: 15px; font-weight: 600; }}
    QLabel#figure {{ font-size: 30px; font-weight: 600; }}
    QLabel#speed {{ font-size: 32px; font-weight: 600; }}
    QLabel#next {{ font-size: 17px; font-weight: 600; padding: 6px; }}
    QPushButton {{ background: {theme.panel}; border: 1px solid {theme.quiet}; border-radius: 6px;
        padding: 6px 14px; min-height: 28px; }}
    QPushButton:focus, QLineEdit:focus, QTableWidget:focus {{ border: 2px solid {theme.accent}; }}
    QPushButton:disabled {{ color: {theme.quiet}; border-color: {theme.line}; }}
    QPushButton#main {{ background: {theme.accent}; color: {theme.on_accent}; font-weight: 600;
        border-color: {theme.accent}; }}
    QPushButton#main:disabled {{ background: {theme.ground}; color: {theme.quiet}; border-color: {theme.line}; }}
    QPushButton#main:focus {{ border: 2px solid {theme.text}; }}
    QLineEdit {{ background: {theme.panel}; border: 1px solid {theme.quiet}; border-radius: 4px; padding: 2px 6px;
        min-height: 34px; }}
    QComboBox {{ min-height: 38px; }}
    QTableWidget {{ background: {theme.panel}; border: 1px solid {theme.line}; gridline-color: {theme.line}; }}
    QTableWidget::item:selected {{ background: {theme.accent}; color: {theme.on_accent}; }}
    QHeaderView::section {{ background: {theme.ground}; border: none; padding: 4px; font-weight: 600; }}
    QScrollArea {{ border: none; }}
    """
