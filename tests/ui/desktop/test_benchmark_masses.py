"""How fast the Masses page follows a finger, and that nothing it does holds the event loop."""

import statistics
import time

import pytest
from balancing_jobs import balancing_job
from figures.record import kernel_ms
from PySide6 import QtCore, QtWidgets
from stillshaft.ui.desktop.frame import Frame
from stillshaft.ui.desktop.masses_model import Draft
from stillshaft.ui.desktop.masses_page import MassesPage
from stillshaft.ui.desktop.masses_view import CAUTIONS, CORRECTION, PIECES, PUT_ON, TRIAL
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.stages import Stage

pytestmark = pytest.mark.benchmark

FOLLOWS_S = 0.050  # from the finger's move to what is painted
LOOP_S = 0.100  # CPU time of the window's thread between two beats
KERNEL, KERNEL_S = "an FFT of 2^18 points", 0.003  # name, and CPU time on the machines that the limits were set on
STEPS = 90


class Heart(QtCore.QObject):
    """Beats on the window's thread and notes the most CPU time that passed between two beats."""

    def __init__(self):
        super().__init__()
        self.longest_ms = 0.0
        self.last = time.thread_time()
        self.timer = QtCore.QTimer(self)
        self.timer.setTimerType(QtCore.Qt.TimerType.PreciseTimer)
        self.timer.timeout.connect(self.beat)
        self.timer.start(2)

    def beat(self):
        now = time.thread_time()
        self.longest_ms = max(self.longest_ms, 1e3 * (now - self.last))
        self.last = now

    def reset(self):
        self.longest_ms, self.last = 0.0, time.thread_time()


@pytest.fixture
def page(dressed, qtbot, wait_until, tmp_path):
    balancing_job(tmp_path / "job", 2, until="last trial on", limit=1.8, positions=24).close()
    frame = Frame(None, None, Stage.MASSES)
    qtbot.addWidget(frame)
    job = OpenJob(frame)
    pages = []
    frame.register(Stage.MASSES, lambda: pages.append(MassesPage(job)) or pages[-1])
    ready = []
    frame.ready.connect(lambda: ready.append(True))
    frame.show()
    wait_until(lambda: ready)
    job.open(tmp_path / "job", "first person")
    wait_until(lambda: pages[0].known is not None)
    yield pages[0]
    frame.close()
    job.close()


@pytest.mark.parametrize(("size", "text"), [((1400, 900), "normal"), ((1024, 700), "largest")])
def test_what_is_expected_follows_a_dragged_piece(page, wait, size, text, figure):
    frame = page.window()
    frame.resize(*size)
    page.set_view(frame.view)
    page.think_of([Draft("drive side", 19.0, 245.0), Draft("far side", 14.0, 30.0)])
    page.turn_to(PUT_ON)
    wait(100)
    spent = []
    for step in range(STEPS):
        begin = time.thread_time()
        page.face.moved.emit("1", 4.0 * step)
        QtWidgets.QApplication.sendPostedEvents()
        page.face.repaint()
        page.expected.repaint()
        page.entry.repaint()
        spent.append(1e3 * (time.thread_time() - begin))
        wait(0)
    said, kernel = f"{size[0]} × {size[1]}, text {text}", (KERNEL, 1e-3 * kernel_ms())
    figure.cost(f"what is expected follows a dragged piece, {said}, median", 1e-3 * statistics.median(spent), kernel)
    figure.cost(f"what is expected follows a dragged piece, {said}, longest", 1e-3 * max(spent), kernel, wanted_s=FOLLOWS_S,
                at_most=FOLLOWS_S / KERNEL_S, steady=False)  # fmt: skip


def test_nothing_holds_the_event_loop(page, wait, wait_until, figure):
    heart = Heart()
    told = {}

    def then(name, act, done=lambda: True, milliseconds=150):
        wait(20)
        heart.reset()
        act()
        wait(milliseconds)
        wait_until(done)
        told[name] = heart.longest_ms

    def known():
        return page._asked[1] == page.job.shown.entries and not page._tasks.busy and not page.job.busy

    for what in (TRIAL, CORRECTION, PIECES, PUT_ON, CAUTIONS):
        then(f"{what} shown", lambda w=what: page.turn_to(w))
    then("correction tried", page._try_correction)
    then("points chosen", lambda: page.correction.points["far end horizontal"].click(), known)
    then("pieces searched", page.find_pieces, lambda: page.pieces.plan is not None)
    then("pieces tried", page._try_pieces)
    then("plan kept", page._keep_plan, known)
    then("put on", lambda: page._record("correction", ""), known)
    then("undone", page.undo.click, known)
    then("sheet made", page._sheet, lambda: page.sheet_card.isVisible())
    heart.timer.stop()
    kernel = (KERNEL, 1e-3 * kernel_ms())
    for name, value in told.items():
        figure.cost(
            f"event loop held, {name}, longest",
            1e-3 * value,
            kernel,
            wanted_s=LOOP_S,
            at_most=LOOP_S / KERNEL_S,
            steady=False,
        )
