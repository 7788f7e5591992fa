"""Waiting that lets other threads run: Qt's own test helpers hold the interpreter while they wait."""

import time

from PySide6 import QtCore


def wait(milliseconds):
    """Let the event loop run for so long."""
    loop = QtCore.QEventLoop()
    QtCore.QTimer.singleShot(milliseconds, loop.quit)
    loop.exec()


def wait_until(condition, seconds=20.0):
    """Let the event loop run until the condition holds; an assertion when it never does."""
    deadline = time.monotonic() + seconds
    while not condition():
        assert time.monotonic() < deadline, "it did not happen in time"
        wait(10)
