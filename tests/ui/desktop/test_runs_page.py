"""The Runs page: refusals and their cures, runs side by side, what ends a run, abort levels, a lost source, replay, sweeps."""

import itertools
import json
import re
import threading

import numpy as np
import pytest
import soundfile
from PySide6 import QtCore, QtTest
from rotor_signal import HOOKUP, rotor
from screen_faults import faint, faults, small_targets
from stillshaft.acquire import process, simulated
from stillshaft.acquire.hookup import hookup_from
from stillshaft.acquire.source import SourceError
from stillshaft.dsp import steadiness, sweep
from stillshaft.dsp.measure import Measuring
from stillshaft.solver import inspection
from stillshaft.ui import analysis
from stillshaft.ui.desktop import feed as feed_module
from stillshaft.ui.desktop import inspect_source, run_watch, runs_next, runs_settling, simulator
from stillshaft.ui.desktop.feed import SIMULATED, Choice, Status
from stillshaft.ui.desktop.runs_page import LIVE, NEXT, SWEEP, TAKEN, _remaining_words
from stillshaft.ui.desktop.runs_sweep import curves_of, curves_so_far
from stillshaft.ui.desktop.runs_taken import told_once
from stillshaft.ui.desktop.settings import View
from stillshaft.ui.desktop.simulator import Fitted, Mass, Teaching
from stillshaft.ui.desktop.stages import Stage, Weight
from stillshaft.ui.live import Snapshot
from stillshaft.ui.taking import Stop


class Person:
    """Somebody who takes runs on the page."""

    def __init__(self, program, wait_until):
        self.program, self.until = program, wait_until
        self.page, self.job, self.feed = program.frame.pages[Stage.RUNS], program.job, program.feed

    def settle(self):
        self.until(lambda: not self.job.busy, 60.0)

    def describe(self, **patch):
        self.job.act(lambda s: s.describe(patch))
        self.settle()

    def start(self):
        self.page.start_stop.click()
        for tick in self.page.start.ticks:
            tick.click()
        self.page.start.say.click()
        self.until(lambda: self.feed.status is Status.RUNNING, 60.0)
        self.until(lambda: self.feed.snapshot is not None and self.feed.snapshot.measured is not None, 60.0)

    def take(self, name=""):
        before = len(self.job.shown.state.runs)
        self.page.next.called.setText(name)
        self.page.strip.record.click()
        self.until(lambda: len(self.job.shown.state.runs) == before + 1, 120.0)
        self.settle()
        return self.job.shown.state.runs[-1]

    def stop(self):
        self.feed.stop()
        self.until(lambda: self.feed.status is Status.STOPPED, 60.0)


@pytest.fixture
def person(program, wait_until, tmp_path):
    """A job with one plane, its Runs page in front."""
    made = Person(program, wait_until)
    made.job.create(tmp_path / "jobs" / "fan", "fan", "first person")
    made.describe(
        rotor={"kind": "between bearings", "mass": "62 kg", "speed_rpm": 1480.0},
        planes=[{"name": "disc", "radius": "310 mm"}],
    )
    program.frame.open(Stage.RUNS)
    yield made
    made.stop()


@pytest.mark.parametrize("size", [(1400, 900), (1024, 700)])
@pytest.mark.parametrize("language", ["English", "Deutsch"])
def test_the_button_after_many_cautions_is_in_sight(person, size, language):
    """All of them and the button fit the window; once the last one is ticked, the focus goes on to it."""
    page, frame = person.page, person.program.frame
    piece = {"plane": "disc", "mass_g": 12.0, "angle_deg": 90.0, "fixing": "clamped"}
    person.describe(abort=[{"point": "old bearing", "amplitude": 18.0, "unit": "mm/s rms"}])
    person.job.act(lambda s: s.put_on([piece], "trial"))
    person.settle()
    frame.resize(*size)
    frame.set_view(View(language=language))
    page.start_stop.click()
    assert len(page.start.ticks) >= 9
    area = frame._areas[Stage.RUNS].viewport()

    def in_sight(widget):
        return area.rect().contains(QtCore.QRect(widget.mapTo(area, QtCore.QPoint()), widget.size()))

    person.until(lambda: in_sight(page.start.say) and in_sight(page.start.ticks[0]))
    at = [(p.y(), p.x()) for p in (tick.mapTo(area, QtCore.QPoint()) for tick in page.start.ticks)]
    assert at == sorted(at)  # in the order of reading, which Tab takes
    for before, after in itertools.pairwise([page.start.was, *page.start.ticks, page.start.who, page.start.say]):
        before.setFocus()
        QtTest.QTest.keyClick(before, QtCore.Qt.Key.Key_Tab)
        assert frame.focusWidget() is after
    page.start.ticks[0].setFocus()
    for tick in page.start.ticks:
        assert frame.focusWidget() is not page.start.say
        tick.click()
    assert frame.focusWidget() is page.start.say


def test_the_button_is_scrolled_to_where_the_window_is_too_low(person, wait):
    page, frame = person.page, person.program.frame
    person.describe(abort=[{"point": f"bearing {n}", "amplitude": 18.0, "unit": "mm/s rms"} for n in range(40)])
    frame.resize(1024, 700)
    frame.set_view(View(text_size="largest"))
    page.start_stop.click()
    area = frame._areas[Stage.RUNS]
    person.until(lambda: area.verticalScrollBar().maximum() > 0)
    wait(100)
    area.verticalScrollBar().setValue(0)
    for tick in page.start.ticks:
        tick.click()
    say = page.start.say
    person.until(lambda: area.viewport().rect().contains(say.mapTo(area.viewport(), say.rect().center())))


def test_nothing_starts_before_the_cautions_are_acknowledged_by_name(person):
    page = person.page
    assert page.turn.value == NEXT
    page.start_stop.click()
    assert person.feed.status is Status.STOPPED
    for tick in page.start.ticks:
        tick.click()
    page.start.was.setCurrentText("cold")
    page.start.who.clear()
    page.start.say.click()
    assert page.start.trouble.text.text() == "Write who says so."
    page.start.who.setText("the fitter")
    page.start.say.click()
    person.until(lambda: person.feed.status is Status.RUNNING)
    state = person.job.shown.state
    assert state.cautions[-1].what.who == "the fitter"
    assert any("emergency stop" in text for text in state.cautions[-1].what.texts)
    assert [s.what.temperature for s in state.starts] == ["cold"]
    assert not any(tick.isChecked() for tick in page.start.ticks)
    assert page.start.temperature is None  # of the next start nobody has said it yet


def test_a_machine_that_runs_already_is_measured_without_a_start(person):
    person.page.start.already.click()
    person.until(lambda: person.feed.status is Status.RUNNING)
    assert not person.job.shown.state.starts
    assert person.page.strip.record.isEnabled()


def test_a_run_ends_by_itself_and_the_machine_runs_on(person):
    person.start()
    run = person.take("first")
    assert run.counts
    assert run.what.duration_s >= 15.0
    assert run.what.revolutions >= 100
    assert run.what.recording.path == "recordings/0001.au"
    assert person.feed.status is Status.RUNNING
    assert "runs until you stop it" in person.page.strip.text.text()
    assert person.page.taken.run.id == run.id
    # what the page shows is what the recording says
    log = (person.job.shown.folder / "recordings" / "0001.events.jsonl").read_text().splitlines()
    assert json.loads(log[-1])["complete"] is True


def test_two_runs_side_by_side_and_the_last_one_in_the_cloud(person):
    person.start()
    first = person.take("first")
    person.stop()
    person.start()
    second = person.take("second")
    taken = person.page.taken
    assert taken.against.currentText() == "first"
    assert taken.changes.said[0] == 'From "first" to "second":'
    assert "scatter" in taken.changes.said[1]
    assert "drive end horizontal" in taken.cloud.summary
    person.page.turn_to(LIVE)
    wanted = pytest.approx({v.point: v.amplitude for v in second.what.vectors})
    person.until(lambda: {name: abs(z) for name, z in person.page.watch._last.items()} == wanted)
    taken.choose(first.id)
    assert taken.against.currentText() == "second"


def test_a_closed_job_offers_no_run_and_no_sweep(person):
    page, strip = person.page, person.page.strip
    assert page.turn.value == NEXT
    person.job.act(lambda session: session.finish("nothing to do"))
    person.settle()
    page.turn_to(NEXT)
    assert strip.text.text() == "The job is closed: reopen it on Close-out; no run is taken."
    assert not any(w.isVisible() for w in (page.next, page.start, strip.record))
    page.turn_to(SWEEP)
    assert not page.sweep.record.isVisible()
    assert page.sweep.text.text() == "No run-up or coast-down is recorded yet."
    person.job.act(lambda session: session.undo())
    person.settle()
    assert page.sweep.record.isVisible()
    page.turn_to(NEXT)
    assert all(w.isVisible() for w in (page.next, page.start, strip.record))


def test_a_run_that_is_too_short_is_refused_and_may_be_used_with_a_reason(person):
    page, taken = person.page, person.page.taken
    page.next.ends.setCurrentText(runs_next.BY_HAND)
    person.start()
    person.feed._real_time = True  # by hand: so fast as it goes would be long
    person.stop()
    person.start()
    page.strip.record.click()
    person.until(lambda: page.taker.recording and person.feed.snapshot.seconds > 4.0, 60.0)
    page.strip.end.click()
    person.until(lambda: person.job.shown.state.runs, 60.0)
    run = person.job.shown.state.runs[-1]
    assert not run.counts
    person.until(lambda: run.id in taken._judged)
    assert any(";" in said for said in taken.reasons.said)
    assert taken.use.isVisible()
    taken.use.click()
    assert taken.trouble.text.text() == "Write the reason first."
    taken.reason.setText("the window closes")
    taken.use.click()
    person.until(lambda: person.job.shown.state.runs[-1].counts)
    taken.reason.setText("a better one follows")
    taken.leave.click()
    person.until(lambda: not person.job.shown.state.runs[-1].counts)
    assert any("a better one follows" in said for said in taken.reasons.said)


def test_what_was_broken_off_is_kept_and_can_become_a_run(person):
    page, taken = person.page, person.page.taken
    person.feed._real_time = True
    person.start()
    page.strip.record.click()
    person.until(lambda: page.taker.recording and person.feed.snapshot.seconds > 4.0, 60.0)
    page.strip.off.click()
    person.until(lambda: not page.taker.doing, 60.0)
    assert "0001.au, marked incomplete" in page.strip.trouble.text.text()
    assert not person.job.shown.state.runs
    person.until(lambda: page._unused)
    page.turn_to(TAKEN)
    taken.list.choose("0001.au")
    assert taken.make.isVisible()
    taken.make.click()
    person.until(lambda: person.job.shown.state.runs, 60.0)
    assert person.job.shown.state.runs[0].what.recording.path == "recordings/0001.au"


def test_crossing_the_abort_level_calls_for_the_stop(person):
    frame = person.program.frame
    person.describe(abort=[{"point": "drive end horizontal", "amplitude": 1.0, "unit": "mm/s rms"}])
    frame.open(Stage.BRIEF)
    person.start()
    person.until(lambda: frame.stop_call.isVisible())
    call = frame.stop_call
    assert call.call.text() == "STOP THE MACHINE"
    assert "Drive end horizontal is at" in call.why.text()
    assert "the abort level is 1 mm/s rms" in call.why.text()
    assert call.geometry().contains(frame.stack.geometry().translated(0, 0)) or call.size() == frame.stack.size()
    person.until(lambda: call.tones > 1)
    person.until(lambda: person.job.shown.state.alarms)
    alarm = person.job.shown.state.alarms[0].what
    assert (alarm.point, alarm.level) == ("drive end horizontal", 1.0)
    call.answer.click()
    assert not call.isVisible()
    person.until(lambda: person.feed.status is Status.STOPPED)
    assert len(person.job.shown.state.alarms) == 1


def test_an_alarm_that_only_the_whole_of_a_run_shows_calls_too_and_one_made_before_does_not(person):
    call, act = person.program.frame.stop_call, person.job.act
    point = "drive end horizontal"
    act(lambda s: s.record_alarm(point, 26.0, 25.0, "mm/s rms", "seen in a recording that was made elsewhere"))
    person.until(lambda: len(person.job.shown.state.alarms) == 1)
    assert not call.isVisible()
    act(lambda s: s.record_alarm(point, 27.0, 25.0, "mm/s rms"))
    person.until(call.isVisible)
    assert "is at 27 mm/s rms" in call.why.text()
    call.answer.click()
    act(lambda s: s.decide("go on", "the owner says so"))
    person.until(lambda: person.job.shown.state.decisions)
    assert not call.isVisible()


def test_a_run_is_played_again_and_is_not_recorded(person):
    page = person.page
    person.start()
    run = person.take("first")
    person.stop()
    page.turn_to(TAKEN)
    page.taken.replay.click()
    assert person.feed.replays
    assert page.turn.value == LIVE
    assert not page.strip.record.isEnabled()
    person.until(lambda: not person.feed.replays, 90.0)
    assert person.feed.choice.name == "Simulated rotor"
    assert len(person.job.shown.state.runs) == 1
    shown = float(page.watch.points[0].amplitude.text())
    assert shown == pytest.approx(run.what.vectors[0].amplitude, rel=0.02)


def test_what_was_wrong_before_the_source_was_chosen_anew_is_not_said_of_the_new_one(person, monkeypatch):
    feed, order_for = person.feed, feed_module.order_for
    refused = threading.Event()

    def late(choice, *rest, **more):
        try:
            return order_for(choice, *rest, **more)
        except SourceError:
            refused.wait(10.0)
            raise

    monkeypatch.setattr(feed_module, "order_for", late)
    feed.choose(Choice("a recording that is not there", "", text="recording:nowhere.au", brings_hookup=True))
    feed.choose(SIMULATED)
    person.start()
    refused.set()
    person.until(lambda: not feed.tasks.busy)
    assert (feed.status, feed.trouble, feed.failure) == (Status.RUNNING, None, None)


def test_a_source_with_fewer_inputs_than_the_hook_up_is_refused_in_words(person, tmp_path):
    feed, table = person.feed, simulated.demo_hookup()
    table["point"][1]["input"] = 7
    samples = simulated.demo_run(2, [], seed=1, real_time=False, seconds=1.0).open().read(1.0).samples
    soundfile.write(tmp_path / "three.wav", samples, 48_000)
    feed.choose(Choice("three inputs", "", text=f"recording:{tmp_path / 'three.wav'}", brings_hookup=True))
    feed.use_table(table)
    person.until(lambda: feed.hookup is not None and feed.hookup.channels == 7)
    feed.start()
    person.until(lambda: feed.status is Status.STOPPED and feed.trouble is not None, 60.0)
    said = "has 3 inputs, but the hook-up uses input 7"
    assert said in person.page.sentence().text
    assert person.page.strip.text.text().startswith("The source does not run: ")
    assert said in person.page.strip.text.text()
    assert not person.page.strip.record.isEnabled()
    frame, job = person.program.frame, person.job
    person.until(lambda: job.guided is not None)
    for stage in (Stage.MASSES, Stage.BRIEF):  # on every page, and before the guidance
        frame.open(stage)
        assert frame.next_line.text.text().startswith("The source does not run: ")
        assert said in frame.next_line.text.text()
        assert frame.next_line.go.text() == "&Go to Hook-up"
    feed.choose(SIMULATED)
    assert frame.next_line.text.text() == job.guided.advice.sentence


def test_a_sweep_is_recorded_and_shown(person):
    page = person.page
    person.start()
    page.turn_to(SWEEP)
    page.sweep.record.click()
    person.until(lambda: person.job.shown.state.measured, 120.0)
    assert page.sweep.trouble.isHidden()
    assert "drive end horizontal: " in page.sweep.amplitude.summary
    assert "r/min" in page.sweep.polar.summary
    curves, unit = curves_of(person.job.shown.state.measured[-1].what.figures)
    assert unit == "mm/s rms"
    assert [c.name for c in curves] == ["drive end horizontal", "far end horizontal"]
    assert curves[0].speeds_rpm.max() > 1480.0


def test_the_curve_of_a_sweep_grows_while_it_is_recorded(person):
    page, drawn = person.page, []
    show = page.sweep.show_live
    page.sweep.show_live = lambda curves, unit: (drawn.append((curves, unit)), show(curves, unit))
    page._real_time = True
    person.start()
    page.turn_to(SWEEP)
    assert not page.sweep.off.isVisible()
    assert not page.sweep.bar.isVisible()
    page.sweep.record.click()
    person.until(lambda: drawn and drawn[-1][0] and drawn[-1][0][0].z.size > 8, 120.0)
    assert [c.name for c in drawn[-1][0]] == ["drive end horizontal", "far end horizontal"]
    assert drawn[-1][1] == "mm/s rms"
    assert "drive end horizontal: no resonance seen" in page.sweep.amplitude.summary
    page.sweep.off.click()
    person.until(lambda: page.sweeps.what is None, 60.0)
    assert page.sweep.amplitude.summary == "no sweep yet"
    assert not person.job.shown.state.measured


def test_a_sound_server_that_dies_is_waited_for(person, virtual_card, tmp_path):
    feed, page, frame = person.feed, person.page, person.program.frame
    (tmp_path / "h.toml").write_text(HOOKUP)
    feed.list_inputs()
    person.until(lambda: not feed.looking)
    feed.choose(next(c for c in feed.choices if c.name == "ALSA/pulse"))
    feed.use_hookup(tmp_path / "h.toml")
    person.until(lambda: feed.hookup is not None and len(feed.hookup.points) == 2)
    page.next.ends.setCurrentText(runs_next.BY_HAND)
    player = virtual_card.play(rotor(60))
    try:
        person.start()
        page.strip.record.click()
        person.until(lambda: page.taker.recording and feed.snapshot.seconds > 2.0, 30.0)
        virtual_card.server.kill()
        virtual_card.server.wait()
        person.until(lambda: feed.status is Status.AWAY, 40.0)
        assert "waited for" in page.subtitle.text()
        frame.open(Stage.MASSES)
        assert frame.next_line.text.text().endswith("it goes on by itself once it is back.")
        assert frame.next_line.shown.weight is Weight.CAUTION
        person.until(lambda: not page.taker.doing, 20.0)
        assert "marked incomplete" in page.strip.trouble.text.text()
        recording = person.job.shown.folder / "recordings" / "0001.au"
        assert recording.stat().st_size > 48_000
        virtual_card.start()
        player.kill()
        player.wait()
        player = virtual_card.play(rotor(30))
        person.until(lambda: feed.status is Status.RUNNING, 40.0)
        assert feed.trouble is None
        assert "goes on by itself" not in frame.next_line.text.text()
    finally:
        player.kill()
        player.wait()


@pytest.mark.long
def test_minutes_since_the_start_are_proposed_and_can_be_written_otherwise(person):
    page = person.page
    person.start()
    person.until(lambda: page.next.minutes.text() != "")
    page._start_s -= 60.0 * 12.0
    person.until(lambda: 12.0 <= float(page.next.minutes.text()) < 30.0)
    first = person.take("first")
    assert 12.0 <= first.what.minutes_since_start < 40.0
    page.next.minutes.setText("45")
    second = person.take("second")
    assert second.what.minutes_since_start == 45.0
    person.stop()
    page.start.already.click()  # nobody saw when it was started
    person.until(lambda: person.feed.status is Status.RUNNING)
    assert person.take("third").what.minutes_since_start is None


def test_it_is_waited_until_1x_settles_and_that_is_evidence(person, monkeypatch):
    monkeypatch.setattr(inspection, "SETTLED_S", 60.0)  # five minutes as fast as they come take long
    page = person.page
    person.start()
    assert page.strip.wait.isVisible()
    page.strip.wait.click()
    assert not page.strip.record.isEnabled()
    person.until(lambda: person.job.shown.state.measured, 300.0)
    seen = person.job.shown.state.measured[-1].what
    assert (seen.what, seen.figures["verdict"]) == ("settling", "settled")
    assert 57.0 <= seen.figures["watched_s"] < 300.0
    assert page.strip.text.text().startswith("Settled after")
    person.until(page.strip.record.isEnabled)


def test_a_settling_wait_is_ended_with_a_reason(person):
    page = person.page
    person.feed._real_time = True
    person.start()
    person.stop()
    person.start()
    page.strip.wait.click()
    person.until(lambda: person.feed.watch.settled is not None and person.feed.watch.settled.times_s.size > 2, 120.0)
    assert "1x moved by" in page.settling.text.text()
    page.settling.end.click()
    assert page.settling.trouble.text.text() == "Write the reason first."
    assert not page.strip.record.isEnabled()
    page.settling.reason.setText("the window closes")
    page.settling.end.click()
    person.until(lambda: person.job.shown.state.measured)
    assert person.job.shown.state.measured[-1].what.note == "the window closes"
    assert person.feed.watch.settled is None or not page._waiting
    assert page.strip.record.isEnabled()


@pytest.mark.parametrize("size", [(1400, 900), (1024, 700)])
def test_every_view_can_be_read_reached_and_heard(person, wait, size):
    frame, page = person.program.frame, person.page
    person.describe(conditions=[{"name": "load", "unit": "%", "tolerance": 5.0}])
    person.start()
    person.take("first")
    person.take("second")
    person.stop()
    frame.resize(*size)
    for theme in ("light", "dark", "sunlight"):
        frame.set_view(View(theme=theme))
        for view in (NEXT, LIVE, TAKEN, SWEEP):
            page.turn_to(view)
            wait(200)
            found = faults(frame) + small_targets(frame) if theme == "sunlight" else faint(frame)
            assert found == [], (theme, view)
    frame.stop_call.say("drive end horizontal is at 26.1 mm/s rms; the abort level is 25 mm/s rms.")
    assert frame.stop_call.answer.hasFocus() or not frame.isActiveWindow()
    frame.stop_call.answer.click()
    for panel, opened in ((frame.job_panel, frame.show_job), (frame.advice_panel, frame.show_why)):
        opened()
        wait(100)
        assert panel.isVisible()
        assert faults(panel) + small_targets(panel) == []
        panel.put_away()


# without a window


@pytest.mark.parametrize(
    ("cleaned", "said"),
    [
        # 1.96 deviations of 0.01, and as an angle at a length of 5 (normal distribution)
        (3 + 4j, "without it 5.00 ± 0.02 at 53.1° ± 0.2°"),
        (0.001 + 0j, "without it 0.00 ± 0.02, phase not determined"),
    ],
)
def test_what_is_left_without_a_source_has_its_uncertainty(cleaned, said):
    beat = steadiness.Beat(0.2, 0.01, 0.3, "above", (1490.0,), 0.6, cleaned, 1e-4 * np.eye(2), 100_000, 4.0)
    assert run_watch._cleaned(beat) == said


def test_a_reason_is_told_once():
    beats, verdict = (
        "A: a second source at 1490 r/min",
        "A: the verdict on 1x is beating (a second source at 1490 r/min)",
    )
    other = "B: a second source at 1490 r/min"
    assert told_once((beats, verdict, other, "samples were lost")) == [verdict, other, "samples were lost"]
    assert told_once((beats, beats)) == [beats, beats]


def test_a_wait_is_over_after_the_same_minutes_as_for_the_first_run():
    same = runs_settling.SameMinutes(30.0, "initial")  # 20 % of them are as good
    assert same.to_go(10.0) == pytest.approx(14.0)
    assert runs_settling.ended_by(None, same, 23.9) is None
    assert runs_settling.ended_by(None, same, 24.1) == '24 min since the start, as for "initial".'
    assert runs_settling.ended_by(None, None, 500.0) is None
    assert runs_settling.wait_words(None, same, 10.0).endswith('14 min more, until it ran as long as for "initial".')
    assert runs_settling.SameMinutes(5.0, "initial").to_go(3.0) == 0.0  # two minutes are


def test_when_a_run_ends():
    stop = runs_next.stop_for("at ± 2 % and ± 1°", 1480.0)
    assert stop.interval == (2.0, 1.0)
    assert stop.revolutions >= max(100, 15.0 * 1480.0 / 60.0)
    assert runs_next.stop_for("at ± 2 % and ± 1°", 300.0).revolutions >= 75
    assert runs_next.stop_for("after 60 s", 1480.0) == Stop(60.0)
    assert runs_next.stop_for(runs_next.BY_HAND, 1480.0).seconds >= 600.0


def test_conditions_are_read_in_the_units_of_the_brief():
    rows = [("load", "%", "80 %"), ("damper", None, "half open"), ("current", "A", "")]
    assert runs_next.conditions_from(rows) == {"load": 80.0, "damper": "half open"}
    with pytest.raises(runs_next.RunFormError, match='load: "much" is not a number'):
        runs_next.conditions_from([("load", "%", "much")])
    with pytest.raises(runs_next.RunFormError, match='minutes since the start: "nan" is not a number'):
        runs_next.number_from("minutes since the start", "nan")


def test_an_interval_that_is_out_of_reach_is_said():
    run = simulated.demo_run(1, [], seed=1, real_time=False, seconds=8.0)
    source = run.open()
    hookup = hookup_from(simulated.demo_hookup())
    measuring = Measuring(source.rate_hz, hookup.pulse, hookup.points, hookup.display)
    while (block := source.read(1.0)) is not None:
        measuring.feed(block.samples)
    measured = measuring.result()
    snapshot = Snapshot(1, 8.0, measured, None, 0.1, None, None, remaining_s=22.0)
    assert _remaining_words(snapshot, Stop(30.0, interval=(1e-4, 1e-4))).startswith(
        "; what is wanted is not reached within 30 s"
    )
    assert _remaining_words(snapshot, Stop(30.0)) == ", 22 s to go"
    waiting = _remaining_words(snapshot, Stop(300.0, revolutions=400, interval=(50.0, 50.0)))
    assert re.fullmatch(r", 22 s to go; it waits for \d+ more revolutions and 10 s of even speed", waiting)


def test_the_curve_so_far_is_that_of_the_whole_sweep(tmp_path):
    """Its short-time vectors against the orders that are tracked in the recording as a whole, away from resonances."""
    run = inspect_source.simulated_for("sweep", Teaching(), 1, 45.0, real_time=False)
    path, wired = tmp_path / "a.au", hookup_from(simulated.demo_hookup())
    process.capture(run, path, 40.0, wired.table, wired.channel_names(3))
    whole = {p.name: p for p in analysis.sweep_recording(path, wired, sweep.Wanted()).points}
    curves = curves_so_far(analysis.measure_recording(path, wired), wired)
    assert [c.name for c in curves] == list(whole)
    for curve in curves:
        rpm, z = whole[curve.name].speeds_rpm, whole[curve.name].z
        order = np.argsort(rpm)
        at = np.interp(curve.speeds_rpm, rpm[order], np.abs(z[order]))
        inside = (curve.speeds_rpm > rpm.min()) & (curve.speeds_rpm < rpm.max())
        assert np.median(np.abs(np.abs(curve.z[inside]) / at[inside] - 1.0)) < 0.03
        assert np.ptp(curve.speeds_rpm) > 500.0


def test_the_simulated_rotor_has_what_the_job_has_on_it():
    bare = simulator.order(Teaching(), 1, fitted=Fitted(("a", "b")))
    heavy = simulator.order(Teaching(), 1, fitted=Fitted(("a", "b"), (("b", 10.0, 90.0),)))
    assert heavy.unbalance[0] == bare.unbalance[0]
    assert heavy.unbalance[1] - bare.unbalance[1] == pytest.approx(0.01 * 0.31 * 1j)
    one = simulator.order(Teaching(unbalance=(Mass(10.0, 0.0), Mass(5.0, 0.0))), 1, fitted=Fitted(("disc",)))
    assert one.unbalance == pytest.approx((0.015 * 0.31,))
    with pytest.raises(ValueError, match="has two planes, but the brief has 3"):
        simulator.order(Teaching(), 1, fitted=Fitted(("a", "b", "c")))


def test_damaged_sweeps_of_a_record_are_passed_over():
    assert curves_of({"points": [{"name": "a"}, 7, {"curve": {"rpm": [1.0]}}]}) == ((), "")
