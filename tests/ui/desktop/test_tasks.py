"""Work beside the screen: whatever ends it is said in one line, faults of the program too, and nothing waits for ever."""

import subprocess
import threading

import pytest
from PySide6 import QtCore
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.tasks import Tasks


@pytest.fixture
def traces(monkeypatch):
    """The traces of faults, which would go to the terminal."""
    told = []
    monkeypatch.setattr(threading, "excepthook", told.append)
    return told


def faulty():
    """A fault as a program has it: Python's own error, with a name that tells nobody anything."""
    return {}["speed"]


def refused():
    raise ValueError("the recording is\ntoo short: 3 s")


def silent():
    raise OSError


def late():
    raise subprocess.TimeoutExpired("soundcard", 5.0)


@pytest.mark.parametrize(
    ("work", "why", "traced"),
    [
        (refused, "the recording is too short: 3 s", 0),
        (silent, "OSError", 0),
        (late, "Command 'soundcard' timed out after 5.0 seconds", 0),
        (faulty, "ended by a fault of the program (KeyError: 'speed'); everything recorded before it is kept", 1),
    ],
)
def test_what_ends_work_is_said_in_one_line(qapp, wait_until, traces, work, why, traced):
    tasks, said, done = Tasks(), [], []
    tasks.run("work", work, done.append, said.append)
    wait_until(lambda: said)
    assert (said, done) == ([why], [])
    assert len(traces) == traced
    tasks.close()


def test_after_a_fault_the_job_goes_on(qapp, wait_until, traces, tmp_path):
    job, said = OpenJob(), []
    job.create(tmp_path / "fan", "fan", "first person")
    job.act(lambda _session: faulty(), failed=said.append)
    job.act(lambda s: s.describe({"machine": {"name": "fan 3"}}))
    wait_until(lambda: not job.busy)
    assert "fault of the program (KeyError: 'speed')" in said[0]
    assert len(traces) == 1
    assert job.shown.state.brief.machine.name == "fan 3"
    job.close()


def test_advice_that_cannot_be_worked_out_is_said_and_the_job_goes_on(qapp, wait_until, traces, tmp_path):
    job, said = OpenJob(), []
    job.refused.connect(said.append, QtCore.Qt.ConnectionType.DirectConnection)
    job.create(tmp_path / "fan", "fan", "first person")
    job.act(lambda s: setattr(s, "advice", faulty))
    wait_until(lambda: said)
    assert said[0].startswith("what is next cannot be told: ended by a fault of the program (KeyError: 'speed')")
    job.act(lambda s: s.describe({"machine": {"name": "fan 3"}}))
    wait_until(lambda: not job.busy)
    assert job.shown.state.brief.machine.name == "fan 3"
    assert traces
    job.close()


class Held:
    """Notes the thread on which it goes, as a widget's Python part would."""

    def __init__(self, went):
        self._went = went

    def __del__(self):
        self._went.append(threading.current_thread())


def test_what_only_an_act_holds_goes_on_the_thread_of_the_screen(qapp, wait_until, tmp_path):
    """A widget that a list drew anew while the act was done would otherwise go on the thread that did it."""
    job, tasks, went = OpenJob(), Tasks(), []

    def holding(work):
        held = Held(went)
        return {"work": lambda *_: (held, work()), "done": lambda _: held, "failed": lambda _: held}

    job.create(tmp_path / "fan", "fan", "first person")
    for work in [refused, dict] * 10:
        job.act(**holding(work))
        tasks.run("work", **holding(work))
        wait_until(lambda: not job.busy and not tasks.busy)
    job.act(lambda _session: None)  # until then the thread might hold the last one
    wait_until(lambda: len(went) == 40)
    assert set(went) == {threading.main_thread()}
    job.close()
    tasks.close()
