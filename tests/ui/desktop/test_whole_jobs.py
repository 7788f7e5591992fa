"""Whole jobs in the window: by keys, by mouse and by ear alone on the simulated rotor, and on the virtual sound card."""

import os
import shutil
import subprocess
import sys

import printed
import pytest
from balancing_jobs import balancing_job
from PySide6 import QtCore, QtTest, QtWidgets
from rotor_signal import HOOKUP, rotor
from screen_reader import DESCRIPTION, ROLE, Reader
from stillshaft.dsp import vectors
from stillshaft.solver.job import Job
from stillshaft.solver.replay import replay, verify_files
from stillshaft.ui.desktop.closeout_cards import ACCEPT
from stillshaft.ui.desktop.closeout_page import REPORT
from stillshaft.ui.desktop.feed import Status
from stillshaft.ui.desktop.masses_view import CORRECTION, PUT_ON, TRIAL
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.runs_page import NEXT, TAKEN
from stillshaft.ui.desktop.simulator import Teaching
from stillshaft.ui.desktop.stages import Stage, State

KEY, ALT, CONTROL = QtCore.Qt.Key, QtCore.Qt.KeyboardModifier.AltModifier, QtCore.Qt.KeyboardModifier.ControlModifier
NONE = QtCore.Qt.KeyboardModifier.NoModifier
PLANES = ("drive side", "far side")
pytestmark = pytest.mark.timeout(900)  # a whole job on a busy machine


class Keys:
    """A person without a mouse."""

    def __init__(self, program, wait, wait_until):
        self.program, self.wait, self.until = program, wait, wait_until

    def press(self, key, modifier=NONE):
        at = QtWidgets.QApplication.focusWidget() or self.program.frame
        QtTest.QTest.keyClick(at, key, modifier)
        self.wait(5)

    def alt(self, key):
        self.press(key, ALT)
        self.wait(150)  # a click by mnemonic shows the button pressed before it acts

    def go_to(self, widget):
        for _ in range(200):
            if QtWidgets.QApplication.focusWidget() is widget:
                return
            self.press(KEY.Key_Tab)
        raise AssertionError(f"Tab does not lead to {widget.accessibleName()}, enabled: {widget.isEnabled()}")

    def type(self, widget, text):
        self.go_to(widget)
        QtTest.QTest.keyClick(widget, KEY.Key_A, CONTROL)
        QtTest.QTest.keyClicks(widget, text)
        self.press(KEY.Key_Return)
        self.settle()

    def settle(self):
        self.until(lambda: not self.program.job.busy, 60.0)

    def stage(self, stage):
        self.press(getattr(KEY, f"Key_{stage.key}"), CONTROL)
        assert self.program.frame.open_stage is stage


@pytest.fixture
def program(program):
    """With noise so low that no verdict on steadiness is left to chance, however little vibration a correction leaves.

    One sound run in a hundred is doubted at each point, and which seconds of the rotor it holds is a matter of timing.
    Whatever moves 1x by less than 2 % and 2° is never doubted.
    """
    program.feed.apply(Teaching(noise_m_s2=0.004))
    return program


@pytest.fixture
def keys(program, qtbot, wait, wait_until):
    program.frame.activateWindow()
    qtbot.waitUntil(program.frame.isActiveWindow)
    return Keys(program, wait, wait_until)


def take_by_keys(keys):
    """A run with its start: cautions one by one, name, start, record, stop."""
    runs, job = keys.program.frame.pages[Stage.RUNS], keys.program.job
    before = len(job.shown.state.runs)
    keys.stage(Stage.RUNS)
    keys.alt(KEY.Key_T)
    assert runs.turn.value == NEXT
    keys.alt(KEY.Key_H)
    assert "not answered yet" in runs.start.trouble.text.text()
    for tick in runs.start.ticks:
        keys.go_to(tick)
        keys.press(KEY.Key_Space)
    keys.alt(KEY.Key_H)
    keys.until(lambda: keys.program.feed.status is Status.RUNNING, 60.0)
    keys.until(lambda: keys.program.feed.snapshot is not None and keys.program.feed.snapshot.measured is not None, 60.0)
    keys.alt(KEY.Key_R)
    keys.until(lambda: len(job.shown.state.runs) == before + 1, 120.0)
    keys.settle()
    assert runs.turn.value == TAKEN
    assert job.shown.state.runs[-1].counts, job.shown.state.runs[-1].reasons
    assert keys.program.feed.status is Status.RUNNING  # the machine runs until it is stopped
    keys.alt(KEY.Key_T)
    keys.until(lambda: keys.program.feed.status is Status.STOPPED, 60.0)


def percent_left(job):
    first, last = job.shown.state.runs[0].what, job.shown.state.runs[-1].what
    return max(100.0 * b.amplitude / a.amplitude for a, b in zip(first.vectors, last.vectors, strict=True))


@pytest.mark.parametrize("planes", [PLANES, ("disc",)], ids=["two planes", "one plane"])
def test_a_job_is_done_with_the_keys_alone(program, keys, planes):
    frame, job = program.frame, program.job
    brief, masses, close_out = (frame.pages[s] for s in (Stage.BRIEF, Stage.MASSES, Stage.CLOSE_OUT))
    keys.press(KEY.Key_N, CONTROL)
    QtTest.QTest.keyClicks(QtWidgets.QApplication.focusWidget(), "fan 3")
    keys.press(KEY.Key_Return)
    keys.until(lambda: job.shown is not None)
    keys.type(brief.field("rotor.mass").control, "74 kg")
    keys.type(brief.field("rotor.speed_rpm").control, "1480")
    keys.type(brief.field("goal.grade").control, "G 6.3")
    for number, name in enumerate(planes):
        keys.type(brief.planes.add_name.line, name)
        keys.type(brief.planes.planes[number].fields["radius"].control, "310 mm")
    assert [(p.name, p.radius) for p in job.shown.state.brief.planes] == [(name, "310 mm") for name in planes]
    take_by_keys(keys)
    assert [r.what.purpose for r in job.shown.state.runs] == ["initial"]
    assert len(job.shown.state.starts) == 1
    assert len(job.shown.state.cautions) == 1
    for name in planes:
        keys.stage(Stage.MASSES)
        keys.go_to(masses.turn.buttons[TRIAL])
        keys.press(KEY.Key_Space)
        if len(planes) > 1:
            keys.go_to(masses.which.buttons[name])
            keys.press(KEY.Key_Space)
        keys.until(lambda n=name: masses.trial.trial is not None and masses.trial.trial.plane == n)
        keys.alt(KEY.Key_F)
        assert masses.turn.value == PUT_ON
        keys.alt(KEY.Key_R)
        keys.until(lambda: len(job.shown.state.on_rotor) == 1)
        take_by_keys(keys)
        assert job.shown.state.runs[-1].what.purpose == "trial"
        keys.stage(Stage.MASSES)
        keys.go_to(masses.on.acts["trials off"])
        keys.press(KEY.Key_Space)
        keys.until(lambda: not job.shown.state.on_rotor)
    keys.until(lambda: masses.known is not None and masses.known.solution is not None, 60.0)
    keys.go_to(masses.turn.buttons[CORRECTION])
    keys.press(KEY.Key_Space)
    keys.alt(KEY.Key_F)
    keys.until(lambda: masses.drafts.pieces)
    keys.go_to(masses.turn.buttons[PUT_ON])
    keys.press(KEY.Key_Space)
    keys.alt(KEY.Key_R)
    keys.until(lambda: len(job.shown.state.on_rotor) == len(planes))
    take_by_keys(keys)
    assert job.shown.state.runs[-1].what.purpose == "correction"
    assert percent_left(job) < 35.0
    assert len(job.shown.state.starts) == len(planes) + 2
    undo_by_keys(keys)
    # verdict, acceptance
    keys.stage(Stage.CLOSE_OUT)
    card = close_out.close_card
    keys.until(lambda: card.judge.isVisible() and card.judge.isEnabled())
    keys.go_to(card.judge)
    keys.press(KEY.Key_Space)
    keys.until(lambda: len(job.shown.state.verdicts) == 1)
    keys.go_to(card.choice.buttons[ACCEPT])
    keys.press(KEY.Key_Space)
    keys.go_to(card.who)
    QtTest.QTest.keyClicks(card.who, "the owner")
    keys.alt(KEY.Key_C)
    keys.until(lambda: job.shown.state.closed)
    assert job.shown.state.verdicts[-1].what.accepted_by == "the owner"
    if planes == PLANES:  # no other with one
        report_by_keys(keys)


def undo_by_keys(keys):
    """An act is taken back from any page, and put back."""
    job = keys.program.job
    taken, entries = len(job.shown.state.runs), job.shown.entries
    keys.stage(Stage.RUNS)
    keys.press(KEY.Key_Z, CONTROL)
    keys.settle()
    assert len(job.shown.state.runs) == taken - 1
    keys.press(KEY.Key_Z, CONTROL | QtCore.Qt.KeyboardModifier.ShiftModifier)
    keys.settle()
    assert len(job.shown.state.runs) == taken
    assert job.shown.entries >= entries


def report_by_keys(keys):
    """The report of a closed job; what is left of the window's work is its folder, which can be worked out again."""
    frame, folder = keys.program.frame, keys.program.job.shown.folder
    close_out = frame.pages[Stage.CLOSE_OUT]
    report = close_out.report
    keys.go_to(close_out.turn.buttons[REPORT])
    keys.press(KEY.Key_Space)
    keys.alt(KEY.Key_R)
    keys.until(lambda: report.made is not None, 120.0)
    keys.alt(KEY.Key_J)
    keys.until(lambda: "Written" in report.said.text.text(), 60.0)
    frame.close()
    assert_reported(folder, "fan 3")
    with Job.open(folder, read_only=True) as again:
        assert verify_files(again) == ()
        assert all(not r.differences for r in replay(again))


def assert_reported(folder, name):
    """The job's own report is a PDF that says what was done."""
    (path,) = (folder / "reports").glob("*.pdf")
    assert path.read_bytes().startswith(b"%PDF")
    if shutil.which("pdftotext") is not None:
        text = printed.flowing(path)
        assert name in text
        assert "the owner" in text


def click(widget):
    assert widget.isVisible()
    QtTest.QTest.mouseClick(widget, QtCore.Qt.MouseButton.LeftButton)


def take_by_mouse(program, wait_until):
    runs, job, frame = program.frame.pages[Stage.RUNS], program.job, program.frame
    before = len(job.shown.state.runs)
    click(frame.rail.buttons[Stage.RUNS])
    click(runs.start_stop)
    for tick in runs.start.ticks:
        click(tick)
    click(runs.start.say)
    wait_until(lambda: program.feed.status is Status.RUNNING, 60.0)
    click(runs.strip.record)
    wait_until(lambda: len(job.shown.state.runs) == before + 1, 120.0)
    assert job.shown.state.runs[-1].counts, job.shown.state.runs[-1].reasons
    click(runs.start_stop)
    wait_until(lambda: program.feed.status is Status.STOPPED, 60.0)


@pytest.mark.long
def test_a_two_plane_job_is_done_by_mouse(program, wait_until):
    frame, job = program.frame, program.job
    masses = frame.pages[Stage.MASSES]
    job.create(program._room / "wide fan", "wide fan", "first person")
    planes = [{"name": n, "radius": "310 mm"} for n in PLANES]
    rotor = {"kind": "between bearings", "mass": "74 kg", "speed_rpm": 1480.0}
    job.act(lambda s: s.describe({"rotor": rotor, "planes": planes, "goal": {"grade": "G 6.3"}}))
    wait_until(lambda: job.shown is not None and len(job.shown.state.brief.planes) == 2 and not job.busy)
    take_by_mouse(program, wait_until)
    for plane in PLANES:
        click(frame.rail.buttons[Stage.MASSES])
        click(masses.which.buttons[plane])
        wait_until(lambda p=plane: masses.trial.trial is not None and masses.trial.trial.plane == p)
        click(masses.turn.buttons["Trial"])
        click(masses.trial.take)
        click(masses.entry.record)
        wait_until(lambda: job.shown.state.on_rotor)
        take_by_mouse(program, wait_until)
        click(frame.rail.buttons[Stage.MASSES])
        click(masses.on.acts["trials off"])
        wait_until(lambda: not job.shown.state.on_rotor)
    wait_until(lambda: masses.known is not None and masses.known.solution is not None, 60.0)
    click(masses.turn.buttons[CORRECTION])
    click(masses.correction.take)
    click(masses.turn.buttons[PUT_ON])
    click(masses.entry.record)
    wait_until(lambda: len(job.shown.state.on_rotor) == 2)
    take_by_mouse(program, wait_until)
    assert percent_left(job) < 35.0
    wait_until(lambda: frame.guide is not None and job.guided.entries == job.shown.entries, 60.0)
    assert frame.next_line.text.text() == job.guided.advice.sentence
    assert frame.rail.buttons[Stage.MASSES].state is not State.EMPTY
    # verdict, acceptance with a name, report
    close_out = frame.pages[Stage.CLOSE_OUT]
    card, report = close_out.close_card, close_out.report
    click(frame.rail.buttons[Stage.CLOSE_OUT])
    wait_until(lambda: card.judge.isVisible() and card.judge.isEnabled())
    click(card.judge)
    wait_until(lambda: len(job.shown.state.verdicts) == 1)
    click(card.choice.buttons[ACCEPT])
    click(card.close_job)
    assert card.trouble.text.text() == "Write who accepts it for the owner."
    click(card.who)
    QtTest.QTest.keyClicks(card.who, "the owner")
    click(card.close_job)
    wait_until(lambda: job.shown.state.closed)
    click(close_out.turn.buttons[REPORT])
    click(report.make)
    wait_until(lambda: report.made is not None, 120.0)
    click(report.keep)
    wait_until(lambda: "Written" in report.said.text.text(), 60.0)
    assert_reported(job.shown.folder, "wide fan")


def take_by_ear(reader):
    """A run with its start: every caution said yes to, start, record, stop."""
    reader.choose("Runs: …")
    reader.press("Start")
    for _, name, at in reader.heard():
        if name.startswith("Yes: ") and not at.state().checked:
            reader.choose(name)
    reader.press("All of it holds: start")
    reader.press("Record run")
    reader.wait_for_control(ROLE.CheckBox, "What is shown: Runs taken")
    reader.wait_for(": counts")
    reader.press("Stop")
    reader.wait_for_control(ROLE.Button, "Start")


def test_a_two_plane_job_is_done_by_ear_alone(program, wait, wait_until, qtbot):
    """Every control is found by the name and role that a screen reader has, and every result is what it reads out."""
    program.frame.activateWindow()
    qtbot.waitUntil(program.frame.isActiveWindow)
    reader = Reader(program.frame, wait, wait_until)
    reader.choose("Brief: …")
    reader.type("Name of the new job", "heard fan")
    if reader.can(ROLE.Button, "New job"):
        reader.press("New job")
    for name, text in (("Mass", "74 kg"), ("Balanced at", "1480"), ("Balance grade", "G 6.3")):
        reader.type(name, text)
    for plane in PLANES:
        reader.type("New plane", plane)
        reader.type(f"Radius, plane {plane}", "310 mm")
    wait_until(lambda: reader.value("Balance grade") == "G 6.3" and reader.value("Balanced at") == "1480 r/min")
    take_by_ear(reader)
    for plane in PLANES:
        reader.choose("Masses: …")
        reader.choose("What is done: Trial")
        reader.choose(f"Plane: {plane}")
        reader.wait_for(f"on {plane}: ")
        reader.press("Try it on the face")
        reader.press("Record as put on")
        reader.wait_for("1 on the rotor")
        take_by_ear(reader)
        reader.choose("Masses: …")
        reader.choose("What is done: Put on")
        reader.press("All trial masses off")
        reader.wait_for("0 on the rotor")
    reader.choose("What is done: Correction")
    reader.press("Try it on the face")
    reader.choose("What is done: Put on")
    reader.press("Record as put on")
    reader.wait_for("2 on the rotor")
    take_by_ear(reader)
    runs = [name for role, name, _ in reader.heard() if role == ROLE.ListItem]
    assert [name.split(":")[0] for name in runs] == ["initial", *(f"trial {p}" for p in PLANES), "correction"]
    assert all(name.endswith(", counts") for name in runs)
    reader.choose("Close-out: …")
    reader.press("Record the verdict")
    reader.wait_for("Recorded: ")
    verdict = reader.text_with("Recorded: ")
    before_after = reader.find(ROLE.Client, "Before and after").text(DESCRIPTION)
    assert "drive end horizontal from " in before_after
    reader.choose("The owner: accepts")
    reader.type("Name", "the owner")
    reader.press("Close the job")
    reader.wait_for("The job is closed")
    assert reader.text_with("Recorded: ") == f"{verdict.rstrip('.')}, accepted by the owner."
    reader.choose("What is done: Report")
    reader.press("Make the report")
    reader.press("Keep in the job")
    reader.wait_for("Written: ")
    assert_reported(program.job.shown.folder, "heard fan")
    state = program.job.shown.state
    assert (state.closed, len(state.runs), len(state.starts)) == (True, 4, 4)
    assert percent_left(program.job) < 35.0


def test_a_job_on_a_sound_input(program, virtual_card, wait_until, tmp_path):
    frame, job, feed = program.frame, program.job, program.feed
    (tmp_path / "h.toml").write_text(HOOKUP)
    job.create(tmp_path / "jobs" / "on a card", "on a card", "first person")
    wait_until(lambda: job.shown is not None)
    feed.list_inputs()
    wait_until(lambda: not feed.looking)
    feed.choose(next(c for c in feed.choices if c.name == "ALSA/pulse"))
    feed.use_hookup(tmp_path / "h.toml")
    wait_until(lambda: feed.hookup is not None and len(feed.hookup.points) == 2)
    runs = frame.pages[Stage.RUNS]
    runs.next.ends.setCurrentText("at ± 5 % and ± 3°")
    player = virtual_card.play(rotor(60))
    try:
        take_by_mouse(program, wait_until)
    finally:
        player.kill()
        player.wait()
    run = job.shown.state.runs[0]
    assert [v.point for v in run.what.vectors] == ["near", "far"]
    assert run.what.vectors[0].amplitude == pytest.approx(0.2 * 50.0 / 2**0.5, rel=1e-3)
    assert run.what.vectors[1].amplitude == pytest.approx(0.1 * 50.0 / 2**0.5, rel=1e-3)
    apart = vectors.vector(1.0, run.what.vectors[1].phase_deg - run.what.vectors[0].phase_deg)
    assert apart == pytest.approx(-1.0, abs=0.01)
    assert job.shown.hookup.pulse.edge == "rising"
    assert run.what.recording is not None


def test_a_second_program_is_refused_in_words(program, wait_until, tmp_path):
    job = program.job
    job.create(tmp_path / "jobs" / "fan", "fan", "first person")
    wait_until(lambda: job.shown is not None)
    other, said = OpenJob(), []
    other.open(tmp_path / "jobs" / "fan", "second person", failed=said.append)
    wait_until(lambda: said)
    assert "is open in another program" in said[0]
    assert other.shown is None
    other.close()
    program.open_job(tmp_path / "jobs" / "nothing")
    wait_until(lambda: "nothing" in program.frame.next_line.text.text())
    assert job.shown.state.name == "fan"


def test_what_the_record_refuses_is_said_on_every_page(program, wait_until, tmp_path):
    with balancing_job(tmp_path / "job", 2, until="trials") as session:
        session.describe({"abort": [{"point": "old bearing", "amplitude": 18.0, "unit": "mm/s rms"}]})
    program.open_job(tmp_path / "job")
    wait_until(lambda: program.job.guided is not None)
    assert (
        "The abort level at old bearing can never call for a stop"
        in program.frame.pages[Stage.HOOK_UP].unwatched.text.text()
    )
    mass = program.frame.pages[Stage.BRIEF].field("rotor.mass")
    program.frame.open(Stage.INSPECT)
    mass.line.setText("62 parsec")
    mass.commit()  # as it is when another page is opened while one types
    wait_until(lambda: not program.job.busy)
    assert "parsec" in program.frame.next_line.text.text()
    assert "parsec" in mass.remark.text.text()
    for stage in Stage:
        program.frame.open(stage)
        program.job.act(lambda s: s.withdraw(999, "it is not there"))
        wait_until(lambda: not program.job.busy)
        assert "999" in program.frame.next_line.text.text(), stage
        program.frame.say("")


def test_jobs_of_late_are_offered_and_opened(program, keys, wait_until, tmp_path):
    frame, job = program.frame, program.job
    for name in ("first fan", "second fan"):
        job.create(tmp_path / "jobs" / name, name, "first person")
        wait_until(lambda n=name: job.shown is not None and job.shown.state.name == n)
        wait_until(lambda n=name: frame.job_panel.rows[0].text() == n)
    keys.press(KEY.Key_J, CONTROL)
    wait_until(frame.job_panel.isVisible)
    assert frame.job_panel.called.text() == "Open: second fan"
    frame.job_panel.rows[1].click()
    wait_until(lambda: job.shown.state.name == "first fan")
    assert frame.windowTitle() == "first fan - Stillshaft"


def test_advice_is_passed_over_with_a_reason(program, wait_until, tmp_path):
    frame, job = program.frame, program.job
    job.create(tmp_path / "jobs" / "fan", "fan", "first person")
    wait_until(lambda: frame.guide is not None)
    first = job.guided.advice
    frame.next_line.why.click()
    panel = frame.advice_panel
    assert panel.isVisible()
    panel.pass_over.click()
    assert panel.remark.text() == "Write the reason first."
    panel.reason.setText("told by the owner")
    panel.pass_over.click()
    wait_until(lambda: job.guided.advice != first)
    assert job.shown.state.decisions[-1].what.why == "told by the owner"
    assert frame.next_line.text.text() == job.guided.advice.sentence
    assert frame.next_line.go.text() == f"&Go to {frame.guide.sentence.action}"


@pytest.mark.skipif(shutil.which("Xvfb") is None, reason="needs Xvfb: apt-get install xvfb")
@pytest.mark.skipif("STILLSHAFT_ON_X" in os.environ, reason="this is what runs there")
def test_the_same_on_an_x_server(x_server):
    done = subprocess.run(
        [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", __file__, "-k", "keys_alone and not planes"],
        env=x_server, capture_output=True, text=True, check=False, timeout=1200,
    )  # fmt: skip
    assert done.returncode == 0, done.stdout + done.stderr
    assert "1 passed" in done.stdout
