"""What the tests of the window share: the window with its pages, and waiting that lets other threads run."""

import contextlib
import gc
import os
import subprocess
import time

import pytest
from figures.record import KERNEL_MS, kernel_ms
from PySide6 import QtCore
from stillshaft.ui.desktop import app, look, words
from stillshaft.ui.desktop.feed import Status
from stillshaft.ui.desktop.stages import Stage


def _wait(milliseconds):
    """Let the event loop run for so long: Qt's own test helpers hold the interpreter while they wait."""
    loop = QtCore.QEventLoop()
    QtCore.QTimer.singleShot(milliseconds, loop.quit)
    loop.exec()


@pytest.fixture(autouse=True)
def in_english():
    """What a test leaves the window's language at is no matter of the next."""
    yield
    words.speak("English")


@pytest.fixture
def wait():
    return _wait


_BUSY_TIMES = 8.0  # what takes so many seconds on an idle machine may take as many times longer on a busy one


@pytest.fixture
def wait_until():
    def until(condition, seconds=20.0):
        deadline = time.monotonic() + _BUSY_TIMES * seconds
        while not condition():
            assert time.monotonic() < deadline, "it did not happen in time"
            _wait(10)

    return until


@contextlib.contextmanager
def _never_held(limit_ms=100.0):
    busy_ms, last = [], [time.thread_time()]

    def beat():
        now = time.thread_time()
        busy_ms.append(1e3 * (now - last[0]))
        last[0] = now

    timer = QtCore.QTimer()
    timer.setTimerType(QtCore.Qt.TimerType.PreciseTimer)
    timer.timeout.connect(beat)
    timer.start(2)
    yield
    timer.stop()
    assert len(busy_ms) > 20
    slower = max(1.0, kernel_ms() / KERNEL_MS)  # a machine that shares its cores with others counts their time in
    assert max(busy_ms) < limit_ms * slower


@pytest.fixture
def never_held():
    """Asserts that the window's thread is not busy for longer at a time: CPU time, by what the machine does now."""
    return _never_held


@pytest.fixture(scope="session")
def dressed(qapp):
    """The application with the program's style and typeface, as `app` has it: to change them takes a second each time."""
    look.prepare(qapp)
    return qapp


@pytest.fixture
def page_on(dressed, qtbot, wait_until):
    """Opens a job's folder on a page in a window of its own: `page_on(stage, page's class, folder)`."""
    from stillshaft.ui.desktop.frame import Frame
    from stillshaft.ui.desktop.open_job import OpenJob

    made = []

    def at(stage, build, folder):
        frame = Frame(None, None, stage)
        qtbot.addWidget(frame)
        job = OpenJob(frame)
        made.append((frame, job))
        pages, ready = [], []
        frame.register(stage, lambda: pages.append(build(job)) or pages[-1])
        frame.ready.connect(lambda: ready.append(True))
        frame.show()
        wait_until(lambda: ready)
        job.open(folder, "first person")
        wait_until(lambda: job.shown is not None)
        return pages[0]

    yield at
    for frame, job in made:
        frame.close()
        job.close()


@pytest.fixture
def program(dressed, qtbot, wait_until, tmp_path):
    """The window with all its pages, on the simulated rotor as fast as it goes, the Hook-up page in front."""
    made = app.Program(
        tmp_path / "view.toml", real_time=False, room=tmp_path / "jobs", practice=tmp_path / "practice",
        index=lambda _folder: None,
    )  # fmt: skip
    qtbot.addWidget(made.frame)
    built = []
    made.frame.ready.connect(lambda: built.append(True))
    made.frame.show()
    wait_until(lambda: built)
    wait_until(lambda: made.feed.hookup is not None)
    made.frame.open(Stage.HOOK_UP)
    yield made
    made.frame.close()
    gc.collect()  # windows of earlier tests: hundreds of them are gigabytes


@pytest.fixture
def running(program, wait_until):
    """The program with the simulated rotor running for a while."""
    program.feed.start()
    wait_until(lambda: program.feed.snapshot is not None and program.feed.snapshot.seconds > 12.0, 40.0)
    yield program
    program.feed.stop()
    wait_until(lambda: program.feed.status is Status.STOPPED)


@pytest.fixture
def hookup_page(dressed, qtbot, wait_until):
    """The Hook-up page in a window of its own, on the simulated rotor as fast as it goes; `own_job` has no job open yet."""
    from stillshaft.ui.desktop.feed import Feed
    from stillshaft.ui.desktop.frame import Frame
    from stillshaft.ui.desktop.hookup_page import HookupPage
    from stillshaft.ui.desktop.open_job import OpenJob
    from stillshaft.ui.desktop.stages import Stage

    frame = Frame(None, None, Stage.HOOK_UP)
    qtbot.addWidget(frame)
    job = OpenJob(frame)
    pages, ready = [], []

    def build():
        pages.append(HookupPage(Feed(frame, real_time=False), job, real_time=False))
        return pages[0]

    frame.register(Stage.HOOK_UP, build)
    frame.ready.connect(lambda: ready.append(True))
    frame.show()
    wait_until(lambda: ready and pages[0].feed.hookup is not None)
    pages[0].own_job, pages[0].frame = job, frame
    yield pages[0]
    frame.close()
    job.close()


@pytest.fixture
def x_server():
    """An X server of our own; gives the environment for a program that is to use it."""
    reading, writing = os.pipe()
    server = subprocess.Popen(
        ["Xvfb", "-displayfd", str(writing), "-screen", "0", "1600x1000x24", "-nolisten", "tcp"],
        pass_fds=(writing,), stderr=subprocess.DEVNULL,
    )  # fmt: skip
    os.close(writing)
    try:
        display = ":" + os.read(reading, 16).decode().strip()
        own = {k: v for k, v in os.environ.items() if k not in ("QT_QPA_PLATFORM", "WAYLAND_DISPLAY")}
        yield own | {"DISPLAY": display, "STILLSHAFT_ON_X": "1", "QT_QPA_PLATFORM": "xcb"}
    finally:
        os.close(reading)
        server.kill()
        server.wait()
