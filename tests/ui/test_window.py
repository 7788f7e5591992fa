"""Whether a window can be opened at all, in words, and the checker of windows that other tests rely on."""

import os
import subprocess
import sys

from PySide6 import QtCore, QtWidgets
from screen_faults import faults
from stillshaft.ui import window


def test_the_checker_finds_what_is_wrong(qtbot):
    window = QtWidgets.QMainWindow()
    qtbot.addWidget(window)
    middle = QtWidgets.QWidget()
    window.setCentralWidget(middle)
    window.resize(400, 300)
    long = QtWidgets.QLabel("much too long for its room", middle)
    long.setGeometry(0, 0, 40, 20)
    faint = QtWidgets.QLabel("faint", middle)
    faint.setGeometry(0, 30, 200, 20)
    faint.setStyleSheet("color: #999; background: #aaa")
    QtWidgets.QLineEdit("nameless", middle).setGeometry(0, 60, 200, 30)
    unreached = QtWidgets.QPushButton("&Press", middle)
    unreached.setGeometry(390, 100, 100, 30)
    unreached.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
    QtWidgets.QPushButton("&Pull", middle).setGeometry(0, 55, 100, 30)
    window.show()
    told = "\n".join(faults(window))
    for words in ("needs", "contrast", "no name", "Tab does not", "leaves the window", "on 2 controls", "overlaps"):
        assert words in told, words


def test_without_a_screen_it_says_so_in_one_line():
    bare = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")}
    done = subprocess.run(
        [sys.executable, "-m", "stillshaft.ui.cli", "app"],
        env=bare,
        capture_output=True,
        text=True,
        check=False,
        timeout=30,
    )
    assert done.returncode == 1
    assert "no screen" in done.stderr or "system libraries" in done.stderr
    assert "Traceback" not in done.stderr


def test_qt_keeps_its_references_to_none():
    """PySide6 6.12.0 on Python 3.11 lost one reference to None with each call and aborted after some thousands."""
    thing = QtCore.QObject()
    before = sys.getrefcount(None)
    for _ in range(1000):
        thing.setObjectName("x")
    assert abs(sys.getrefcount(None) - before) < 500


def test_problem_is_none_where_a_window_opens():
    assert window.problem({"QT_QPA_PLATFORM": "offscreen"}) is None
