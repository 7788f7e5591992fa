"""Opens the window as the program does, in a fresh interpreter, and tells how long it took; run by test_benchmark_start.py.

Prints JSON: CPU time to the first paint, to all pages; the longest times that the event loop was busy (CPU time of its
thread) and away (wall clock), while starting and while used.
"""

import json
import sys
import time
from dataclasses import replace

from PySide6 import QtCore, QtWidgets
from stillshaft.ui.desktop import app, look
from stillshaft.ui.desktop.stages import Stage

BEAT_MS = 2


class Heart(QtCore.QObject):
    """Beats on the window's thread and notes the longest time between two beats."""

    def __init__(self):
        super().__init__()
        self.longest = {}
        self.phase = "start"
        self.last = (time.thread_time(), time.monotonic())
        self.timer = QtCore.QTimer(self)
        self.timer.setTimerType(QtCore.Qt.TimerType.PreciseTimer)
        self.timer.timeout.connect(self.beat)
        self.timer.start(BEAT_MS)

    def beat(self, what=""):
        now = (time.thread_time(), time.monotonic())
        busy, away = (1e3 * (b - a) for a, b in zip(self.last, now, strict=True))
        before = self.longest.get(self.phase, (0.0, 0.0))
        self.longest[self.phase] = (max(before[0], busy), max(before[1], away))
        self.last = now


class Painted(QtCore.QObject):
    def __init__(self, frame):
        super().__init__()
        self.first_ms = None
        frame.centralWidget().installEventFilter(self)

    def eventFilter(self, watched, event):
        if event.type() == QtCore.QEvent.Type.Paint and self.first_ms is None:
            self.first_ms = 1e3 * time.process_time()
        return False


def main():
    sys.setswitchinterval(0.0005)
    application = QtWidgets.QApplication(["stillshaft"])
    look.prepare(application)
    heart = Heart()
    program = app.Program(None)
    frame = program.frame
    painted = Painted(frame)
    told = {}
    steps = []

    def then(milliseconds, act, phase):
        steps.append((milliseconds, act, phase))

    def go():
        if not steps:
            told["longest_ms"] = heart.longest
            frame.close()
            application.quit()
            return
        milliseconds, act, phase = steps.pop(0)
        heart.beat()
        heart.phase = phase
        act()
        QtCore.QTimer.singleShot(milliseconds, go)

    def ready():
        told["ready_ms"] = 1e3 * time.process_time()
        told["first_ms"] = painted.first_ms
        then(700, lambda: None, "start")
        then(6000, program.feed.start, "source started")
        for stage in (Stage.RUNS, Stage.HOOK_UP, Stage.MASSES, Stage.RUNS):
            then(400, lambda s=stage: frame.open(s), "page opened")
        then(2500, lambda: frame.set_view(replace(frame.view, unit="µm p-p")), "unit changed")
        for theme in ("dark", "sunlight", "light"):
            then(400, lambda t=theme: frame.set_view(replace(frame.view, theme=t)), "theme changed")
        for size in ("largest", "normal"):
            then(400, lambda s=size: frame.set_view(replace(frame.view, text_size=s)), "text size changed")
        then(400, lambda: frame.resize(1024, 700), "window resized")
        then(400, frame.show_view, "view opened")
        then(1500, program.feed.examine, "signals checked")
        then(1500, program.feed.stop, "source stopped")
        go()

    frame.ready.connect(ready)
    frame.show()
    application.exec()
    print(json.dumps(told))  # noqa: T201


if __name__ == "__main__":
    main()
