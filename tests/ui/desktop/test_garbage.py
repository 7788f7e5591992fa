"""Circles of objects are taken apart on the window's thread, whichever thread made them."""

import gc
import threading

from PySide6 import QtCore
from stillshaft.ui.desktop.garbage import Garbage


class Circle:
    """Says on which thread it went."""

    def __init__(self, gone):
        self.itself, self.gone = self, gone

    def __del__(self):
        self.gone.append(threading.current_thread())


def make_many(gone):
    for _ in range(20_000):
        Circle(gone)


def test_circles_of_another_thread_go_on_this_one(qapp):
    assert gc.isenabled()
    garbage, gone = Garbage(qapp), []
    try:
        worker = threading.Thread(target=make_many, args=(gone,))
        worker.start()
        worker.join()
        assert gone == []
        garbage.look()
        assert len(gone) == 20_000
        assert set(gone) == {threading.current_thread()}
    finally:
        garbage.close()
    assert gc.isenabled()


def test_without_it_they_go_anywhere(qapp):
    """The reason for it: this is what Python does by itself."""
    gone = []
    worker = threading.Thread(target=make_many, args=(gone,))
    worker.start()
    worker.join()
    assert worker in gone
    gc.collect()


def test_the_window_looks_by_itself(program, wait_until):
    assert not gc.isenabled()
    assert gc.get_freeze_count() > 10_000  # the pages are not looked through every time
    gone = []
    Circle(gone)
    wait_until(lambda: gone)
    assert gone == [threading.current_thread()]
    program.frame.close()
    assert gc.isenabled()
    assert gc.get_freeze_count() < 10_000
    assert isinstance(program.frame, QtCore.QObject)
