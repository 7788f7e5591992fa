"""The Inspect page in a real window: checks, answers, measured checks on the simulated rotor, causes and decisions."""

import hashlib
import math
import threading
from dataclasses import replace
from types import SimpleNamespace

import pytest
from PySide6 import QtCore, QtGui, QtTest, QtWidgets
from screen_faults import faint, faults, small_targets
from stillshaft.acquire import recording, simulated
from stillshaft.dsp import units
from stillshaft.solver import cautions, inspection
from stillshaft.ui.desktop import inspect_answers as answers
from stillshaft.ui.desktop import inspect_measure, inspect_result, inspect_source, simulator
from stillshaft.ui.desktop.feed import Feed
from stillshaft.ui.desktop.frame import Frame
from stillshaft.ui.desktop.inspect_answers import AnswerError
from stillshaft.ui.desktop.inspect_measure import KINDS, MeasureError
from stillshaft.ui.desktop.inspect_page import InspectPage
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.settings import CHOICES, View
from stillshaft.ui.desktop.simulator import CASES, Teaching
from stillshaft.ui.desktop.stages import Stage, State, Weight

RATE_HZ = 8000.0
BRIEF = {
    "machine": {"name": "extraction fan 3", "type": "fan"},
    "rotor": {"kind": "between bearings", "mass": "62 kg", "speed_rpm": 1480.0},
    "drive": {"kind": "direct"},
}


def slower(order):
    """The same order at a lower rate, so that tests are quick."""
    if isinstance(order, inspect_source.StandingRun):
        return replace(order, run=replace(order.run, rate_hz=RATE_HZ))
    return replace(order, rate_hz=RATE_HZ)


def record(path, what, teaching, seconds, seed=3):
    source = slower(inspect_source.simulated_for(what, teaching, seed, seconds, real_time=False)).open()
    recorder = recording.Recorder(path, RATE_HZ, ["pulse", "a", "b"], "simulated", simulated.demo_hookup())
    frames = 0
    while frames < seconds * RATE_HZ:
        block = source.read(1.0)
        recorder.write(block.samples)
        frames += len(block.samples)
    source.close()
    recorder.close(complete=True)
    return path


@pytest.fixture(scope="module")
def recordings(tmp_path_factory):
    """Running, coasting down through a resonance, hit at rest, and at rest beside a neighbour."""
    folder = tmp_path_factory.mktemp("recordings")
    neighbour = CASES["neighbour close in speed"]
    return {
        "spectrum": record(folder / "spectrum.au", "spectrum", Teaching(), 20.0),
        "again": record(folder / "again.au", "spectrum", Teaching(), 20.0, seed=4),
        "beating": record(folder / "beating.au", "spectrum", neighbour, 20.0),
        "sweep": record(folder / "sweep.au", "sweep", CASES["at a resonance"], 40.0),
        "bump": record(folder / "bump.au", "bump", Teaching(), 12.0),
        "background": record(folder / "background.au", "background", neighbour, 25.0),
    }


class Window:
    """The frame with its Inspect page, and the job under it."""

    def __init__(self, wait_until):
        self.wait_until = wait_until
        self.job = OpenJob()
        self.frame = Frame(None, None, Stage.INSPECT)
        self.feed = Feed(self.frame, real_time=False)
        self.frame.register(Stage.INSPECT, lambda: InspectPage(self.job, self.feed, real_time=False))
        self.frame.show()
        wait_until(lambda: Stage.INSPECT in self.frame.pages)
        self.page = self.frame.pages[Stage.INSPECT]

    def settle(self):
        self.wait_until(lambda: not self.job.busy)

    def measured(self, seconds=60.0):
        self.wait_until(lambda: self.page.measuring.what is None and not self.job.busy, seconds)

    def turn_to(self, key):
        self.page.list.choose(key)
        return self.page.panes[key]

    def row(self, key):
        return next(r for r in self.page.list.rows if r.key == key)

    def measure(self, what, path):
        self.page.measuring.from_recording(what, path)
        self.measured()

    @property
    def state(self):
        return self.job.shown.state


@pytest.fixture
def window(dressed, wait_until, tmp_path):
    made = Window(wait_until)
    made.job.create(tmp_path / "fan", "fan 3", "Kim")
    made.job.act(lambda s: s.wire(simulated.demo_hookup()))
    made.job.act(lambda s: s.describe(BRIEF))
    made.settle()
    yield made
    made.frame.close()
    made.feed.close()
    made.job.close()
    made.frame.deleteLater()  # at once: the next test would dress it anew
    QtWidgets.QApplication.sendPostedEvents(None, QtCore.QEvent.Type.DeferredDelete)


def press(segments, word):
    segments.buttons[word].click()


def pick(field, word):
    field.pick.setCurrentIndex(field.words.index(word))
    field.pick.activated.emit(field.pick.currentIndex())


def type_into(field, text):
    field.control.setFocus()
    field.control.selectAll()
    QtTest.QTest.keyClicks(field.control, text)
    QtTest.QTest.keyClick(field.control, QtCore.Qt.Key.Key_Tab)


def texts(widget):
    return [label.text() for label in widget.findChildren(QtWidgets.QLabel)]


# checks and their outcomes


def test_the_checks_are_those_that_fit_this_machine(window):
    keys = [r.key for r in window.page.list.rows]
    assert keys[0] == answers.DIAGNOSIS
    assert keys[1:] == [c.key for c in inspection.checks(inspection.facts_from(window.state.brief))]
    assert "alignment" in keys
    assert "belts" not in keys
    assert "draught" in keys  # it is a fan
    window.page.list.choose("alignment")
    window.job.act(lambda s: s.describe({"drive": {"kind": "belt"}, "machine": {"type": "pump"}}))
    window.settle()
    keys = [r.key for r in window.page.list.rows]
    assert "belts" in keys
    assert not {"alignment", "draught"} & set(keys)
    assert window.page.list.key == answers.DIAGNOSIS


def test_a_check_says_how_and_what_to_beware_of(window):
    pane = window.turn_to("rotor")
    check = pane.check
    said = texts(pane)
    assert check.how in said
    assert f"Fine: {check.fine}." in said
    assert any("isolated" in t.lower() and "rotor itself blocked" in t for t in said)
    assert any("competent persons" in t for t in said)
    assert not any("safe" in t.replace("safely", "") for t in said)


def test_an_outcome_is_one_entry(window):
    pane = window.turn_to("rotor")
    before = window.job.shown.entries
    press(pane.outcome, "Fine")
    window.settle()
    assert window.job.shown.entries == before + 1
    event = window.state.checks["rotor"]
    assert (event.what.outcome, event.by) == ("fine", "Kim")
    assert window.row("rotor").state is State.DONE
    assert "by Kim" in pane.recorded.text()
    type_into(pane.note, "cleaned on Monday")
    window.settle()
    assert window.state.checks["rotor"].what.note == "cleaned on Monday"
    assert window.state.checks["rotor"].what.outcome == "fine"
    assert window.page.state() is State.UNDER_WAY


def test_what_is_not_done_needs_its_reason(window):
    pane = window.turn_to("shaft")
    before = window.job.shown.entries
    press(pane.outcome, "Not done")
    window.settle()
    assert window.job.shown.entries == before
    assert "why it is not done" in pane.remark.text.text()
    assert pane.outcome.value == ""
    assert pane.note.control.hasFocus()
    QtTest.QTest.keyClicks(pane.note.control, "no dial gauge")
    press(pane.outcome, "Not done")
    window.settle()
    assert window.state.checks["shaft"].what.note == "no dial gauge"
    assert window.row("shaft").said == "not done: no dial gauge"
    pane.note.control.setFocus()
    pane.note.control.selectAll()
    QtTest.QTest.keyClick(pane.note.control, QtCore.Qt.Key.Key_Delete)
    pane.note.commit()
    window.settle()
    assert window.state.checks["shaft"].what.note == "no dial gauge"
    assert pane.note.text == "no dial gauge"


def test_what_needs_attention_is_the_sentence(window):
    press(window.turn_to("alignment").outcome, "Needs attention")
    window.settle()
    assert window.page.state() is State.ATTENTION
    sentence = window.page.sentence()
    assert sentence.weight is Weight.CAUTION
    assert "To be seen to on Inspect: alignment of drive and rotor." in sentence.text


def test_photos_of_a_check_are_its_own(window, tmp_path):
    image = QtGui.QImage(60, 40, QtGui.QImage.Format.Format_RGB32)
    image.fill(QtGui.QColor("#808080"))
    image.save(str(tmp_path / "crack.png"))
    pane = window.turn_to("rotor")
    pane.photos.chosen.emit([tmp_path / "crack.png"])
    window.settle()
    assert [t.photo.name for t in pane.photos.tiles] == ["crack.png"]
    file = window.state.photos[0].what.file
    assert file.sha256 == hashlib.sha256((tmp_path / "crack.png").read_bytes()).hexdigest()
    assert window.turn_to("fits").photos.tiles == []


# answers by hand


def test_answers_are_evidence_and_can_be_taken_back(window):
    pane = window.turn_to("bearings")
    field = pane.answers["bearings"]
    assert field.title.text() == "The bearings are …"
    pick(field, "noisy, hot or worn")
    window.settle()
    cause = next(c for c in window.job.shown.diagnosis.causes if c.key == "bearing wear")
    assert [r.quantity for r in cause.speaking_for] == ["bearings"]
    assert window.row("bearings").word == "measured, no outcome yet"
    press(pane.outcome, "Needs attention")
    window.settle()
    assert window.state.checks["bearings"].what.evidence == window.state.measured[-1].id
    pick(field, "fine")
    window.settle()
    assert field.text == "fine"
    pick(field, "")
    window.settle()
    assert answers.answer(window.state, "bearings") == ""
    told = [r.quantity for c in window.job.shown.diagnosis.causes for r in (*c.speaking_for, *c.against)]
    assert "bearings" not in told


def test_a_gauge_reading_has_its_uncertainty(window):
    pane = window.turn_to("shaft")
    field = pane.answers["runout"]
    type_into(field, "80 ± 10 µm")
    window.settle()
    assert field.text == "80 ± 10"
    evidence = window.state.measured[-1].what.figures["evidence"]["runout"]
    assert (evidence["value"], evidence["low"], evidence["high"]) == (80.0, 70.0, 90.0)
    before = window.job.shown.entries
    type_into(field, "much")
    window.settle()
    assert window.job.shown.entries == before
    assert "write a figure" in field.remark.text.text()
    assert field.text == "80 ± 10"


def test_history_is_that_of_the_brief(window):
    pick(window.turn_to("history").answers["began"], "suddenly")
    window.settle()
    assert window.state.brief.interview == {"began": "suddenly"}
    assert window.state.measured == ()


@pytest.mark.parametrize(
    "text",
    [
        "",
        "much",
        "-3",
        "3 mm",
        "4 ± x",
        "1.52.5",
        "9" * 400,
        f"40 ± {'9' * 400}",
        f"4{' ' * 20_000}x",
        f"{'4' * 20_000}x",
    ],
    ids=lambda text: text[:8],
)  # the long ones would take hours if they were tried in all ways
def test_readings_that_are_none_are_refused(text):
    runout = answers.load_rules().quantities["runout"]
    with pytest.raises(AnswerError, match="write a figure and how well it is known"):
        answers.answered(SimpleNamespace(title="shaft"), runout, text)


def test_a_reading_without_its_uncertainty_is_taken_as_known_to_a_tenth():
    runout = answers.load_rules().quantities["runout"]
    told = answers.answered(SimpleNamespace(title="shaft"), runout, "40").figures["evidence"]["runout"]
    assert (told["low"], told["high"]) == (pytest.approx(36.0), pytest.approx(44.0))


# measured checks


def test_a_spectrum_of_a_recording_is_shown_and_counts(window, recordings):
    pane = window.turn_to("spectrum")
    result = pane.results[0]
    assert result.found.isHidden()
    window.measure("spectrum", recordings["spectrum"])
    event = window.state.measured[-1]
    assert event.what.trusted
    copied = window.job.shown.folder / event.what.recording.path
    assert hashlib.sha256(copied.read_bytes()).hexdigest() == event.what.recording.sha256
    assert not result.found.isHidden()
    assert result.picture.shown.running_hz == pytest.approx(1480.0 / 60.0, rel=0.005)
    # most of the vibration is 1x: the demonstration's other orders are a few hundredths of it
    assert "drive end horizontal: 1x 9" in result.lines.text()
    assert window.row("spectrum").state is State.UNDER_WAY
    assert window.row("overhung").state is State.EMPTY  # no sensor looks along the shaft
    assert window.turn_to("directions").results[0].lines.text() == result.lines.text()
    press(pane.outcome, "Fine")
    window.settle()
    assert window.state.checks["spectrum"].what.evidence == event.id
    unbalance = window.job.shown.diagnosis.causes[0]
    assert unbalance.key == "unbalance"
    assert "share_1x" in [r.quantity for r in unbalance.speaking_for]


def test_a_neighbour_close_in_speed_is_not_trusted_and_said(window, recordings):
    result = window.turn_to("steady").results[0]
    window.measure("spectrum", recordings["beating"])
    assert not window.state.measured[-1].what.trusted
    assert "not to be trusted yet" in result.verdict.text()
    assert "a second source at 1489" in result.lines.text()  # 1480 r/min and 0.16 Hz


def test_a_coast_down_shows_the_resonance_where_it_was_put(window, recordings):
    result = window.turn_to("resonance").results[0]
    window.measure("sweep", recordings["sweep"])
    point = window.state.measured[-1].what.figures["points"][0]
    # the panel puts the lowest natural frequency at 104 % of running speed
    assert [r["rpm"] for r in point["resonances"]] == [pytest.approx(1.04 * 1480.0, rel=0.02)]
    assert "resonance at 15" in result.picture.summary
    assert "Coast-down" in result.lines.text()
    first = window.job.shown.diagnosis.causes[0]
    assert (first.key, first.verdict) == ("resonance", "likely")
    assert "resonance near running speed is likely" in window.page.sentence().text.lower()


def test_a_bump_test_finds_the_natural_frequencies(window, recordings):
    result = window.turn_to("resonance").results[1]
    window.measure("bump", recordings["bump"])
    rotor = simulator.rotor(Teaching())
    truth, _ = simulated.modes(rotor, tuple(s.horizontal_n_per_m for s in rotor.supports))
    found = [m["frequency_hz"] for m in window.state.measured[-1].what.figures["modes"]]
    assert found == [pytest.approx(omega / (2.0 * math.pi), rel=0.02) for omega in truth]
    assert "damping ratio" in result.lines.text()


def test_the_neighbours_level_is_what_they_make(window, recordings):
    window.job.act(lambda s: s.add_run(recordings["spectrum"]))
    window.settle()
    result = window.turn_to("background").results[0]
    window.measure("background", recordings["background"])
    level = window.state.measured[-1].what.figures["levels"][0]
    made = CASES["neighbour close in speed"].neighbour_mm_s
    assert level["level"] == pytest.approx(made, rel=0.05)
    assert units.vibration_unit(level["unit"]).quantity == "velocity"
    assert "mm/s rms" in result.lines.text()


def test_background_needs_an_initial_run_first(window, recordings):
    result = window.turn_to("background").results[0]
    window.measure("background", recordings["background"])
    assert window.state.measured == ()
    assert "take an initial run first" in result.refused.text.text()


def test_two_initial_runs_are_held_against_each_other(window, recordings):
    result = window.turn_to("repeatable").results[0]
    result.record.click()
    window.measured()
    assert "needs two runs without masses" in result.refused.text.text()
    for name in ("spectrum", "again"):
        window.job.act(lambda s, n=name: s.add_run(recordings[n]))
    window.settle()
    result.record.click()
    window.measured()
    assert window.state.measured[-1].what.what == "repeatability"
    assert result.refused.isHidden()
    assert "within the scatter" in result.lines.text()


def test_a_check_from_the_source_shows_its_progress(window):
    pane = window.turn_to("pulse")
    result, seen = pane.results[0], []
    window.page.measuring.changed.connect(lambda: seen.append((result.bar.value(), result.step.text())))
    result.record.click()
    window.page.before.start.already.click()
    assert not result.record.isEnabled()
    assert not result.under_way.isHidden()
    window.measured()
    assert any("Recording" in text for _, text in seen)
    shares = [value for value, text in seen if text]
    assert shares == sorted(shares)
    assert result.under_way.isHidden()
    assert result.record.isEnabled()
    event = window.state.measured[-1]
    assert event.what.what == "signal check"
    assert event.what.recording.path == "recordings/0001.au"
    assert "Fine: pulse, input 1" in result.lines.text()


def test_a_running_machine_is_measured_once_the_cautions_are_seen_to_and_recorded(window):
    page = window.page
    result = window.turn_to("pulse").results[0]
    result.record.setFocus()
    result.record.click()
    before = page.before
    assert (before.isHidden(), before.start.isHidden(), before.hands.isHidden()) == (False, False, True)
    assert page.measuring.what is None
    assert window.frame.focusWidget() is before.start.ticks[0]
    before.start.say.click()
    assert "not answered yet" in before.start.trouble.text.text()
    before.later.click()
    assert before.isHidden()
    assert window.frame.focusWidget() is result.record
    assert (window.state.cautions, window.state.starts) == ((), ())
    result.record.click()
    texts = [c.text for c in cautions.before_start(window.state)]
    for tick in before.start.ticks:
        tick.click()
    before.start.say.click()
    window.settle()
    assert [(e.what.texts, e.what.who) for e in window.state.cautions] == [(texts, "Kim")]
    assert len(window.state.starts) == 1
    assert before.isHidden()
    assert page.measuring.what is None  # the machine is started first
    assert "when all is ready" in result.refused.text.text()
    assert window.frame.focusWidget() is result.record
    result.record.click()
    window.measured()
    assert window.state.measured[-1].what.what == "signal check"
    assert not before.lacks("spectrum")  # it runs on


def test_undo_stands_on_the_page_and_says_where_there_is_nothing_left(window):
    page = window.page
    window.turn_to("history").outcome.buttons["Fine"].click()
    window.settle()
    assert "history" in window.state.checks
    page.undo.click()
    window.settle()
    assert "history" not in window.state.checks
    page.redo.click()
    window.settle()
    assert "history" in window.state.checks
    page.redo.click()
    window.settle()
    assert page.remark.text.text() == "There is nothing to redo."


def test_hands_at_the_machine_are_asked_for_before_a_bump_test(window):
    result = window.turn_to("resonance").results[1]
    result.record.click()
    before = window.page.before
    assert (before.start.isHidden(), before.hands.isHidden()) == (True, False)
    for tick in before.hands.ticks:
        tick.click()
    before.hands.say.click()
    window.settle()
    assert window.state.cautions[-1].what.texts == [c.text for c in cautions.before_hands(window.state)]
    assert window.state.starts == ()
    assert not before.lacks("bump")
    assert before.lacks("spectrum")  # it stands


def test_a_start_is_asked_for_again_once_the_machine_stood_hands_were_in_or_the_page_was_left(window, recordings):
    before = window.page.before
    for stood in (
        lambda: window.measure("sweep", recordings["sweep"]),
        lambda: window.job.act(lambda s: s.put_on([{"plane": "disc", "mass_g": 5.0, "angle_deg": 0.0}], "trial")),
        window.page.leave,
    ):
        before.ask("spectrum")
        before.start.runs.emit()
        window.page.measuring.cancel()
        window.measured()
        assert not before.lacks("spectrum")
        window.job.act(lambda s: s.describe({"planes": [{"name": "disc", "radius": "300 mm"}]}))
        stood()
        window.settle()
        assert before.lacks("spectrum")
    before.ask("spectrum")
    assert before.start.already.isHidden()  # masses were changed since the last start
    assert not before.lacks("background")


def test_a_job_that_takes_no_entries_says_so_and_asks_nothing(window, wait_until):
    window.job.act(lambda s: s.finish("no balancing needed"))
    window.settle()
    result = window.turn_to("spectrum").results[0]
    result.record.click()
    window.measured()
    assert window.page.before.isHidden()
    assert "the job is closed" in result.refused.text.text()


def test_a_recording_that_is_broken_off_leaves_nothing(window):
    window.page._real_time = True
    result = window.turn_to("spectrum").results[0]
    result.record.click()
    window.page.before.start.already.click()
    window.wait_until(lambda: window.page.measuring.share > 0.0)
    result.cancel.click()
    window.measured()
    assert "broken off" in result.refused.text.text().lower()
    assert window.state.measured == ()
    assert list((window.job.shown.folder / "recordings").iterdir()) == []
    assert result.record.isEnabled()


def test_working_out_that_is_broken_off_becomes_no_entry(window, recordings):
    window.page.measuring.from_recording("bump", recordings["bump"])
    window.wait_until(lambda: window.page.measuring.text == "working it out")
    window.page.measuring.cancel()
    assert window.page.measuring.what is None
    window.wait_until(lambda: not window.page.measuring._tasks.busy)
    window.settle()
    assert window.state.measured == ()
    assert (window.job.shown.folder / "recordings" / "0001.au").exists()


def test_a_fault_of_the_program_ends_a_check_in_words(window, recordings, monkeypatch):
    """It must not stay under way for ever."""

    def faulty(*_given):
        return {}["speed"]

    monkeypatch.setattr(threading, "excepthook", lambda _told: None)  # the trace
    monkeypatch.setattr(inspect_measure.job_checks, "spectrum", faulty)
    result = window.turn_to("spectrum").results[0]
    window.page.measuring.from_recording("spectrum", recordings["spectrum"])
    window.measured()
    assert "fault of the program (KeyError" in result.refused.text.text()
    assert window.page.measuring.what is None
    assert window.state.measured == ()


def test_one_check_at_a_time(window, recordings):
    window.page.measuring.from_recording("spectrum", recordings["spectrum"])
    window.page.measuring.from_recording("spectrum", recordings["again"])
    window.measured()
    assert len(window.state.measured) == 1


def test_what_does_not_belong_to_the_job_is_refused_in_words(window, recordings, tmp_path):
    other = simulated.demo_hookup()
    other["point"][0]["angle"] = 0.0
    window.job.act(lambda s: s.wire(other))
    window.settle()
    result = window.turn_to("spectrum").results[0]
    window.measure("spectrum", recordings["spectrum"])
    assert "was recorded with another hook-up" in result.refused.text.text()
    (tmp_path / "text.au").write_text("no sound")
    window.measure("spectrum", tmp_path / "text.au")
    assert not result.refused.isHidden()
    assert window.state.measured == ()


def test_without_a_hook_up_nothing_is_recorded(window, tmp_path):
    window.job.create(tmp_path / "bare", "bare", "Kim")
    window.settle()
    result = window.turn_to("spectrum").results[0]
    result.record.click()
    window.measured()
    assert "set it on the Hook-up page" in result.refused.text.text()


def test_a_lost_source_keeps_what_it_gave(window, tmp_path):
    """A source that ends before the check has what it needs."""
    order = replace(simulator.order(Teaching(), 1, real_time=False), seconds=2.0)
    window.turn_to("spectrum")
    window.page.measuring.from_source("spectrum", lambda _hookup: order)
    window.measured()
    result = window.page.panes["spectrum"].results[0]
    assert "is kept" in result.refused.text.text()
    assert (window.job.shown.folder / "recordings" / "0001.au").exists()


def test_a_measurement_never_holds_the_screen(window, recordings, never_held):
    """The window's own thread is busy for less than 0.1 s at a time while a spectrum is worked out and shown."""
    window.turn_to("spectrum")
    with never_held():
        window.measure("spectrum", recordings["spectrum"])


def test_figures_of_another_kind_are_said_to_be_so(window):
    window.job.act(lambda s: s.job.append("measured", what="spectrum", figures={"points": [{"name": 3}]}))
    window.settle()
    result = window.turn_to("spectrum").results[0]
    assert "not as this program writes them" in result.lines.text()


def test_every_kind_of_check_can_be_told(window):
    """A newcomer among the kinds is worked out, found again in the record, and told."""
    listed = {what for kinds in inspect_measure.BY_CHECK.values() for what in kinds}
    assert listed == set(KINDS)
    event = SimpleNamespace(what=SimpleNamespace(what="something else", figures={"warnings": ["look again"]}))
    assert inspect_result.told(event) == ["look again"]
    attempt = inspect_measure._Attempt("spectrum")
    attempt.stop()
    with pytest.raises(MeasureError, match="broken off; nothing was recorded"):
        attempt.report(0.5, "half")


# causes and decisions


def test_figures_lead_to_where_they_were_measured(window, recordings):
    window.measure("sweep", recordings["sweep"])
    window.page.list.choose(answers.DIAGNOSIS)
    pane = window.page.diagnosis
    assert not pane.isHidden()
    card = pane.causes[0]
    assert card.cause.key == "resonance"
    margin = next(link for link in card.links if "nearest resonance is 4 %" in link.text())
    assert margin.text().startswith("Strongly for")
    assert not margin.isHidden()
    margin.setFocus()
    QtTest.QTest.keyClick(margin, QtCore.Qt.Key.Key_Return)
    assert window.page.list.key == "resonance"
    assert not window.page.panes["resonance"].isHidden()
    assert pane.isHidden()
    window.page.list.choose(answers.DIAGNOSIS)
    window.page.diagnosis.next.links[0].click()
    assert window.page.list.key in window.page.panes
    opened = []
    window.page.opened.connect(opened.append)
    window.page.go_to("rotor")  # a fact of the brief
    assert opened == [Stage.BRIEF]


def test_figures_of_possible_causes_fold_away(window, recordings):
    window.measure("spectrum", recordings["spectrum"])
    cards = window.page.diagnosis.causes
    possible = next(c for c in cards[1:] if c.cause.verdict == "possible" and c.links)
    assert all(link.isHidden() for link in possible.links)
    possible.fold.click()
    assert not any(link.isHidden() for link in possible.links)
    assert possible.fold.text().startswith("Hide figures")


def test_the_person_decides_with_a_reason(window):
    card = window.page.diagnosis.decision
    card.button.click()
    assert "what is decided" in card.remark.text.text()
    press(card.choice, "Balance")
    card.button.click()
    assert "why" in card.remark.text.text()
    assert window.state.decisions == ()
    card.why.put("1x holds nearly all, steady, no resonance near")
    card.button.click()
    window.settle()
    assert [(e.what.text, e.what.why) for e in window.state.decisions] == [
        ("Balance", "1x holds nearly all, steady, no resonance near")
    ]
    assert "Kim: Balance, because 1x" in card.earlier.text()
    assert card.what.text == ""


def test_nothing_measured_is_no_suggestion(window):
    assert window.row(answers.DIAGNOSIS).state is State.EMPTY
    assert window.page.diagnosis.causes == []
    assert "how common the causes are" in window.page.diagnosis.note.text()
    assert window.page.state() is State.EMPTY
    assert window.page.sentence() is None


@pytest.mark.parametrize("size", [(1400, 900), (1024, 700)])
def test_it_can_be_read_reached_and_heard(window, wait, recordings, size):
    window.job.act(lambda s: s.inspect("alignment", "needs attention", "0.3 mm"))
    window.job.act(lambda s: s.inspect("shaft", "not done", "no dial gauge at hand, and none in the works"))
    window.measure("sweep", recordings["sweep"])
    window.frame.resize(*size)
    for text_size in CHOICES["text_size"]:
        # sunlight has the thickest borders: what fits there fits in the other themes
        for theme in ("light", "dark", "sunlight") if text_size == "largest" else ("sunlight",):
            window.frame.set_view(View(theme=theme, text_size=text_size))
            for key in (answers.DIAGNOSIS, "rotor", "resonance") if text_size == "largest" else ("resonance",):
                window.page.list.choose(key)
                for _ in range(20):  # what was built anew is laid out in some rounds
                    wait(20)
                    found = faults(window.frame) if theme == "sunlight" else faint(window.frame)
                    found += small_targets(window.frame)
                    if not found:
                        break
                assert found == [], (text_size, theme, key)


def test_without_a_job_it_says_where_to_begin(dressed, wait_until):
    made = Window(wait_until)
    assert not made.page.none.isHidden()
    assert made.page.work.isHidden()
    assert faults(made.frame) == []
    made.frame.close()
    made.feed.close()
    made.job.close()
