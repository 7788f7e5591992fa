"""A desktop window that does a job by itself, started as a script: `window_job.py VIEW JOB HOW`.

HOW is "work", which records what it does over and over, or "open", which opens the job and says in words how that went.
Each time that the window shows more as recorded, it prints how many entries there are.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

from PySide6 import QtCore, QtWidgets


def until(condition, seconds=120.0):
    """Let the window live until something is so."""
    deadline = time.monotonic() + seconds
    while not condition():
        if time.monotonic() > deadline:
            sys.exit("it did not happen in time")
        loop = QtCore.QEventLoop()
        QtCore.QTimer.singleShot(10, loop.quit)
        loop.exec()


def say(text):
    print(text, flush=True)  # noqa: T201


def main(view, folder, how):
    from stillshaft.ui.desktop import app, look
    from stillshaft.ui.desktop.feed import Status
    from stillshaft.ui.desktop.stages import Stage

    application = QtWidgets.QApplication(["stillshaft"])
    look.prepare(application)
    program = app.Program(view, real_time=False, room=folder.parent, index=lambda _folder: None)
    built = []
    program.frame.ready.connect(lambda: built.append(True))
    program.frame.show()
    until(lambda: built)
    job, refused = program.job, []
    if (folder / "job.jsonl").exists():
        job.open(folder, "the window", failed=refused.append)
    else:
        job.create(folder, "a job", "the window")
    until(lambda: job.shown is not None or refused)
    if refused:
        say(f"refused: {refused[0]}")
        program.frame.close()
        return
    say("open")
    job.changed.connect(lambda: job.shown is not None and say(f"entries {job.shown.entries}"))
    if how == "open":
        sys.stdin.readline()
        program.frame.close()
        return
    until(lambda: program.feed.hookup is not None)
    job.act(lambda s: s.describe({"planes": [{"name": "disc", "radius": "310 mm"}], "rotor": {"mass": "62 kg"}}))
    until(lambda: not job.busy)
    for number in range(1000):
        program.frame.open(list(Stage)[number % len(Stage)])
        runs = len(job.shown.state.runs)
        page = program.frame.pages[Stage.RUNS]
        program.frame.open(Stage.RUNS)
        page.start_stop.click()
        for tick in page.start.ticks:
            tick.click()
        page.start.say.click()
        until(lambda: program.feed.status is Status.RUNNING)
        page.strip.record.click()
        until(lambda before=runs: len(job.shown.state.runs) > before)
        page.start_stop.click()
        until(lambda: program.feed.status is Status.STOPPED)
        job.act(lambda s: s.put_on([{"plane": "disc", "mass_g": 3.0, "angle_deg": 90.0}], "trial"))
        until(lambda: not job.busy)


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]), sys.argv[3])
