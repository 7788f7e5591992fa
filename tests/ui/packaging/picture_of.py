"""Starts a program on the screen, waits until it has drawn, takes a picture of the screen: PICTURE PROGRAM [ARGUMENT …]."""

import subprocess
import sys
import time

from PySide6 import QtGui

LIMIT_S = 60.0
MANY_COLOURS = 20  # of every 16th pixel where the pages stand: an empty screen has one, a window without its pages one


def colours(screenshot):
    """Colours right of the rail and above the line at the bottom."""
    image = screenshot.copy(screenshot.width() // 5, 0, screenshot.width() // 2, screenshot.height() // 2)
    return {image.pixel(x, y) for x in range(0, image.width(), 4) for y in range(0, image.height(), 4)}


def main(picture, *program):
    application = QtGui.QGuiApplication([])
    screen = application.primaryScreen()
    shown = subprocess.Popen(program)
    try:
        deadline = time.monotonic() + LIMIT_S
        while time.monotonic() < deadline and shown.poll() is None:
            time.sleep(0.5)
            if len(colours(screen.grabWindow(0).toImage())) > MANY_COLOURS:
                time.sleep(3.0)  # what follows the first drawing
                screen.grabWindow(0).save(picture)
                return 0 if shown.poll() is None else 1
        return 1
    finally:
        shown.kill()
        shown.wait()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
