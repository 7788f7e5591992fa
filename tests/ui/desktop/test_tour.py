"""The tour, followed by its own pointers only: it ends with a balanced machine, in less time than it promises."""

import pytest
from followed import Follower
from PySide6 import QtCore, QtTest
from screen_faults import faults
from stillshaft.solver.job import Job
from stillshaft.solver.replay import replay, verify_files
from stillshaft.ui.desktop import app, tour
from stillshaft.ui.desktop.feed import Status
from stillshaft.ui.desktop.runs_next import stop_for
from stillshaft.ui.desktop.settings import View
from stillshaft.ui.desktop.stages import Stage
from stillshaft.ui.desktop.tour_practice import GO_ON, NOT_NOW, SHOW_ME, TOUR

WORDS_PER_MINUTE = 238.0  # silent reading of English prose by adults: Brysbaert 2019, mean of 190 studies, from memory
PRESS_S = 1.3  # to point at a control and press it: Card, Moran and Newell 1983, 1.1 s and 0.2 s, from memory
TO_FIGURES_S = (
    6.0  # from the start of the simulated rotor to its first figures and from its stop to standstill: generous
)


@pytest.fixture
def follower(program, wait):
    return Follower(program, wait)


def real_s(follower):
    """How long a person takes: reading, pressing, and the runs as long as they take in real time."""
    runs = follower.program.job.shown.state.runs
    page = follower.program.frame.pages[Stage.RUNS]
    speed = tour.TEACHING.speed_rpm
    stop = stop_for(page.next.ends.currentText(), speed)
    assert stop.revolutions
    recorded_s = 60.0 * stop.revolutions / speed
    for run in runs:  # the interval that is asked for is there before the revolutions are: it ends by those
        share = (run.what.duration_s / recorded_s) ** 0.5
        first = runs[0].what.vectors
        for vector, scale in zip(run.what.vectors, first, strict=True):
            assert share * vector.amplitude_ci95 < 0.01 * stop.interval[0] * scale.amplitude
    machine_s = len(runs) * (recorded_s + TO_FIGURES_S)
    return 60.0 * follower.words / WORDS_PER_MINUTE + PRESS_S * follower.presses + machine_s


def test_the_tour_ends_with_a_balanced_machine_in_less_than_five_minutes(follower):
    program = follower.program
    program.practice.begin(TOUR)
    follower.follow()
    assert follower.pointer.sentence.startswith("Tolerance met.")
    state = program.job.shown.state
    assert state.verdicts[-1].what.verdict == "met"
    assert program.feed.status is Status.STOPPED
    first, last = state.runs[0].what, state.runs[-1].what
    assert max(b.amplitude / a.amplitude for a, b in zip(first.vectors, last.vectors, strict=True)) < 0.2
    assert len(state.starts) == len(state.runs)  # each with its cautions seen to
    assert real_s(follower) < 300.0
    program.practice.coach.callout.leave.click()
    assert program.practice.coach.plan is None
    folder = program.job.shown.folder
    program.frame.close()
    with Job.open(folder, read_only=True) as job:  # a job like any other
        assert verify_files(job) == ()
        assert all(not r.differences for r in replay(job))


def test_the_tour_is_left_and_taken_up_again(follower, wait_until, wait):
    program = follower.program
    coach = program.practice.coach
    program.practice.begin(TOUR)
    follower.follow(until=lambda: bool(program.job.shown and program.job.shown.state.runs))
    wait_until(lambda: not program.job.busy)
    folder = program.job.shown.folder
    coach.callout.leave.click()
    assert not coach.callout.isVisible()
    assert not coach.ring.isVisible()
    program.feed.stop()
    program.job.create(folder.parent / "another", "another", "first person")
    wait_until(lambda: program.job.shown.folder != folder)
    assert program.feed.teaching != tour.TEACHING
    program.frame.job_button.click()
    program.frame.job_panel.practice[0].click()
    assert coach.pointer.choices[0] == GO_ON
    coach.callout.answers[0].click()
    wait_until(lambda: program.job.shown.folder == folder and coach.plan is not None and coach.plan.name == tour.NAME)
    assert program.feed.teaching == tour.TEACHING
    follower.follow(until=lambda: bool(program.job.shown.state.masses))
    assert [run.what.purpose for run in program.job.shown.state.runs if run.counts] == ["initial"]


def test_other_jobs_end_it_and_keys_lead_to_the_control(follower, wait_until, qtbot):
    program = follower.program
    coach = program.practice.coach
    program.practice.begin(TOUR)
    wait_until(lambda: coach.plan is not None and coach.pointer.presses)
    frame = program.frame
    frame.activateWindow()
    qtbot.waitUntil(frame.isActiveWindow)
    QtTest.QTest.keyClick(frame, QtCore.Qt.Key.Key_F6)
    wait_until(lambda: frame.focusWidget() is coach.pointer.widget)
    program.job.create(program._room / "own job", "own job", "first person")
    wait_until(lambda: coach.plan is None)
    assert not coach.callout.isVisible()


def test_it_is_offered_once(dressed, qtbot, wait_until, tmp_path):
    for times, chosen in ((1, NOT_NOW), (2, None)):
        made = app.Program(
            tmp_path / "view.toml", real_time=False, room=tmp_path / "jobs", practice=tmp_path / "practice",
            index=lambda _folder: None, offers=True,
        )  # fmt: skip
        qtbot.addWidget(made.frame)
        ready = []
        made.frame.ready.connect(lambda said=ready: said.append(True))
        made.frame.show()
        wait_until(lambda said=ready: said)
        coach = made.practice.coach
        assert (coach.plan is not None) == (times == 1)
        if chosen is not None:
            assert coach.pointer.choices == (SHOW_ME, NOT_NOW)
            coach.callout.answers[1].click()
            assert coach.plan is None
            assert (tmp_path / "view.toml").exists()
        made.frame.close()


def beside(coach, frame):
    """Whether what is to be read first is not covered, once the coach looked again."""
    coach.look()
    line, box = coach.pointer.line, coach.callout.geometry()
    return frame.rect().contains(box) and not box.intersects(line.rect().translated(line.mapTo(frame, QtCore.QPoint())))


@pytest.mark.parametrize("size", [(1400, 900), (1024, 700)])
def test_what_it_says_can_be_read_and_reached(follower, wait_until, wait, size):
    program = follower.program
    frame, coach = program.frame, program.practice.coach
    frame.resize(*size)
    program.practice.begin(TOUR)
    wait_until(lambda: coach.plan is not None and coach.plan.name == tour.NAME)
    follower.follow(until=lambda: coach.pointer is not None and coach.pointer.line is not None)
    for theme, text_size in (("light", "normal"), ("dark", "large"), ("sunlight", "largest")):
        frame.set_view(View(theme=theme, text_size=text_size))
        wait(30)
        wait_until(lambda: beside(coach, frame))  # the page is laid out anew in its own time
        assert faults(coach.callout) == [], (theme, text_size)
