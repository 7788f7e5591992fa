"""How the window looks: type, spacing, and the style of what Qt draws itself, in each theme and text size."""

from __future__ import annotations

from pathlib import Path

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui import theme as themes
from stillshaft.ui.theme import Theme

FAMILY = "Inter"
_FONT_FILES = ("Inter-Regular.otf", "Inter-SemiBold.otf")
HAIR, TIGHT, GAP, ROOM, WIDE = 4, 8, 12, 16, 24  # px, the only distances there are
TARGET_PX = 40  # least height of what is pressed: gloves
RADIUS_PX = 6
# heights of type over that of body text
SMALL, BODY, HEADING, TITLE, FIGURE, LARGE_FIGURE = 0.875, 1.0, 1.0, 1.6, 2.3, 2.6


def prepare(application: QtWidgets.QApplication) -> None:
    """Style and typeface of the whole program: the bundled one, whatever the system has."""
    folder = Path(__file__).parent / "fonts"
    for name in _FONT_FILES:
        QtGui.QFontDatabase.addApplicationFont(str(folder / name))
    QtCore.QLocale.setDefault(QtCore.QLocale.c())  # one way to write numbers, as in every file of the program
    icon = QtGui.QIcon()
    for path in sorted((Path(__file__).parent / "icon").glob("stillshaft-*.png")):
        icon.addFile(str(path))
    application.setWindowIcon(icon)
    QtGui.QGuiApplication.setDesktopFileName("stillshaft")
    application.setStyle("Fusion")
    application.setFont(font(14))


def font(px: float, *, strong: bool = False) -> QtGui.QFont:
    """The typeface at a height, figures all of one width, so that they stand still while they change."""
    made = QtGui.QFont(FAMILY)
    made.setPixelSize(max(1, round(px)))
    made.setWeight(QtGui.QFont.Weight.DemiBold if strong else QtGui.QFont.Weight.Normal)
    made.setHintingPreference(QtGui.QFont.HintingPreference.PreferNoHinting)
    made.setFeature(QtGui.QFont.Tag("tnum"), 1)
    made.setFeature(QtGui.QFont.Tag("calt"), 0)  # it would make a times sign of the x in 1x
    return made


def palette(theme: Theme) -> QtGui.QPalette:
    """Colours of what has no style of its own."""
    made = themes.palette(theme)
    role = QtGui.QPalette.ColorRole
    made.setColor(role.Button, QtGui.QColor(theme.panel))
    made.setColor(role.Mid, QtGui.QColor(theme.line))
    made.setColor(role.Accent, QtGui.QColor(theme.accent))
    return made


def style_sheet(theme: Theme, body_px: int) -> str:
    """The window's style in Qt's own language."""

    def px(share: float) -> int:
        return round(share * body_px)

    border = 2 if theme.trace_px > 2.0 else 1  # outdoors thin lines are lost
    return f"""
    QWidget {{ color: {theme.text}; font-size: {px(BODY)}px; }}
    QWidget#frame, QWidget#page, QScrollArea, QScrollArea > QWidget > QWidget#page {{ background: {theme.ground}; }}
    QScrollArea {{ border: none; }}
    QFrame#card {{ background: {theme.panel}; border: {border}px solid {theme.line}; border-radius: {RADIUS_PX}px; }}
    QFrame#rail {{ background: {theme.sunken}; border: none; border-right: {border}px solid {theme.line}; }}
    QFrame#nextLine {{ background: {theme.panel}; border: none; border-top: {border}px solid {theme.line}; }}
    QFrame#viewPanel {{ background: {theme.panel}; border: {border}px solid {theme.quiet};
        border-radius: {RADIUS_PX}px; }}
    QLabel {{ background: transparent; border: none; }}
    QLabel#title {{ font-size: {px(TITLE)}px; font-weight: 600; }}
    QLabel#heading {{ font-weight: 600; }}
    QLabel#quiet {{ color: {theme.quiet}; }}
    QLabel#small {{ color: {theme.quiet}; font-size: {px(SMALL)}px; }}
    QLabel#figure {{ font-size: {px(FIGURE)}px; font-weight: 600; }}
    QLabel#largeFigure {{ font-size: {px(LARGE_FIGURE)}px; font-weight: 600; }}
    QLabel#sentence {{ font-size: {px(1.15)}px; font-weight: 600; }}
    QLabel#wordmark {{ font-size: {px(1.2)}px; font-weight: 600; }}
    QPushButton {{ outline: none; background: {theme.panel}; border: 2px solid {theme.line}; border-radius: {RADIUS_PX}px;
        padding: 4px {ROOM}px; min-height: {TARGET_PX - 12}px; }}
    QPushButton:hover {{ background: {theme.soft}; }}
    QPushButton:focus {{ border-color: {theme.accent}; }}
    QPushButton:checked {{ background: {theme.accent}; color: {theme.on_accent}; border-color: {theme.accent};
        font-weight: 600; }}
    QPushButton:checked:focus {{ border-color: {theme.text}; }}
    QPushButton:disabled {{ color: {theme.quiet}; border-style: dashed; }}
    QPushButton:checked:disabled {{ background: {theme.soft}; border-color: {theme.quiet}; }}
    QPushButton#main {{ background: {theme.accent}; color: {theme.on_accent}; border-color: {theme.accent};
        font-weight: 600; }}
    QPushButton#main:hover {{ border-color: {theme.text}; }}
    QPushButton#main:focus {{ border-color: {theme.text}; }}
    QPushButton#main:disabled {{ background: {theme.ground}; color: {theme.quiet}; border-color: {theme.line}; }}
    QPushButton#segment {{ padding: 4px {GAP}px; }}
    QLineEdit, QPlainTextEdit, QAbstractSpinBox {{ background: {theme.panel}; border: 2px solid {theme.line};
        placeholder-text-color: {theme.quiet};
        border-radius: {RADIUS_PX}px; padding: 2px {TIGHT}px; min-height: {TARGET_PX - 8}px;
        selection-background-color: {theme.accent}; selection-color: {theme.on_accent}; }}
    QLineEdit:focus, QPlainTextEdit:focus, QAbstractSpinBox:focus {{ border-color: {theme.accent}; }}
    QAbstractSpinBox QLineEdit {{ border: none; padding: 0px; min-height: 0px; background: transparent; }}
    QAbstractSpinBox::up-button, QAbstractSpinBox::down-button {{ width: 0px; border: none; }}
    QComboBox {{ background: {theme.panel}; border: 2px solid {theme.line}; border-radius: {RADIUS_PX}px;
        padding: 2px 34px 2px {GAP}px; min-height: {TARGET_PX - 8}px; }}
    QComboBox:focus {{ border-color: {theme.accent}; }}
    QComboBox::drop-down {{ border: none; width: 32px; }}
    QComboBox::down-arrow {{ image: none; }}
    QComboBox QAbstractItemView {{ background: {theme.panel}; border: 1px solid {theme.quiet};
        selection-background-color: {theme.soft}; selection-color: {theme.text}; }}
    QScrollBar:vertical {{ background: {theme.ground}; width: 14px; margin: 0px; }}
    QScrollBar::handle:vertical {{ background: {theme.line}; border-radius: 5px; min-height: 40px; margin: 2px; }}
    QScrollBar::handle:vertical:hover {{ background: {theme.quiet}; }}
    QScrollBar::add-line:vertical, QScrollBar::sub-line:vertical {{ height: 0px; }}
    QScrollBar::add-page:vertical, QScrollBar::sub-page:vertical {{ background: transparent; }}
    QListView {{ background: {theme.panel}; border: {border}px solid {theme.line}; border-radius: {RADIUS_PX}px;
        outline: none; padding: 4px; }}
    QListView:focus {{ border-color: {theme.accent}; }}
    QProgressBar {{ background: {theme.sunken}; border: {border}px solid {theme.quiet}; border-radius: {RADIUS_PX}px;
        min-height: 18px; max-height: 18px; }}
    QProgressBar::chunk {{ background: {theme.accent}; border-radius: {RADIUS_PX - 2}px; }}
    QTableWidget {{ background: {theme.panel}; border: none; gridline-color: {theme.grid}; outline: none; }}
    QTableWidget::item {{ padding: 0px {TIGHT}px; }}
    QTableWidget::item:selected {{ background: {theme.soft}; color: {theme.text}; }}
    QTableWidget:focus {{ border: 2px solid {theme.accent}; }}
    QHeaderView, QHeaderView::section {{ background: {theme.panel}; color: {theme.quiet}; border: none;
        border-bottom: {border}px solid {theme.line}; padding: 4px {TIGHT}px; font-size: {px(SMALL)}px; }}
    QToolTip {{ background: {theme.panel}; color: {theme.text}; border: 1px solid {theme.quiet}; }}
    """
