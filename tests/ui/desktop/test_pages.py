"""Hook-up and Runs on a real source: the simulated rotor in its own process, looked at, checked, changed, stopped."""

import pytest
from PySide6 import QtCore, QtTest, QtWidgets
from rotor_signal import HOOKUP, rotor
from stillshaft.acquire import soundcard
from stillshaft.acquire.soundcard import SoundInput
from stillshaft.dsp import check
from stillshaft.ui.desktop.feed import SIMULATED, Status, sound_choice
from stillshaft.ui.desktop.hookup_watch import FindingsCard
from stillshaft.ui.desktop.settings import CHOICES, View
from stillshaft.ui.desktop.simulator import CASES, Mass, Teaching
from stillshaft.ui.desktop.stages import Stage, State, Weight


def test_before_anything_runs_the_hook_up_is_drawn(program):
    page = program.frame.pages[Stage.HOOK_UP]
    assert [r.names.findChildren(QtWidgets.QLabel)[0].text() for r in page.inputs.rows.values()] == [
        "pulse", "drive end horizontal", "far end horizontal",
    ]  # fmt: skip
    assert "sensor far end horizontal at 9 o'clock" in page.face.summary
    assert page.state() is State.EMPTY
    assert not page.check_signals.isEnabled()
    assert program.frame.next_line.text.text() == "No job is open: begin one, or open one."


def test_figures_are_those_of_the_measurement(running, wait_until):
    frame, feed = running.frame, running.feed
    frame.open(Stage.RUNS)
    watch = frame.pages[Stage.RUNS].watch
    watch.show_snapshot(feed.snapshot)
    measured = feed.snapshot.measured
    assert float(watch.speed.speed.text()) == pytest.approx(measured.speed.mean_rpm, abs=0.06)
    for card, point in zip(watch.points, measured.points, strict=True):
        assert card.point == point.name
        assert float(card.amplitude.text()) == pytest.approx(abs(point.z), abs=point.amplitude_ci95 + 0.01)
        assert card.amplitude_interval.text().endswith("mm/s rms")
        assert card.verdict.text().startswith("steady")
        assert point.name in card.accessibleName()
    assert "this run only" in frame.pages[Stage.RUNS].subtitle.text()
    assert "drive end horizontal" in watch.cloud.summary
    wait_until(lambda: "revolutions" in watch.waveform.summary)
    assert frame.pages[Stage.RUNS].state() is State.UNDER_WAY


def test_pictures_rest_while_another_page_is_in_front(running, wait):
    frame = running.frame
    frame.open(Stage.MASSES)
    watch = frame.pages[Stage.RUNS].watch
    before = watch.cloud.summary
    wait(700)
    assert watch.cloud.summary == before
    frame.open(Stage.RUNS)
    assert watch.cloud.summary != before


def test_the_signal_check_is_run_in_place(running, wait_until):
    page, feed = running.frame.pages[Stage.HOOK_UP], running.feed
    running.frame.open(Stage.HOOK_UP)
    first = feed.watch
    feed.apply(Teaching(noise_m_s2=0.004))  # so little that no verdict on steadiness is left to chance
    wait_until(
        lambda: feed.watch not in (None, first) and feed.snapshot is not None and feed.snapshot.seconds > 8.0, 40.0
    )
    page.check_signals.click()
    assert feed.checking
    wait_until(lambda: page.findings.rows)
    assert "Nothing was found" in page.findings.note.text()
    assert [r.accessibleName().split(":")[0] for r in page.findings.rows] == ["Fine"] * 3
    assert page.state() is State.DONE


def test_faults_of_the_rotor_are_applied_and_named(running, wait_until):
    frame, feed = running.frame, running.feed
    page = frame.pages[Stage.HOOK_UP]
    page.turn.buttons["Simulated rotor"].click()
    assert page.panel.isVisible()
    page.panel.case.setCurrentText("neighbour close in speed")
    page.panel.case.activated.emit(page.panel.case.currentIndex())
    first = feed.watch
    page.panel.apply.click()
    assert feed.teaching == CASES["neighbour close in speed"]
    wait_until(lambda: feed.watch is not None and feed.watch is not first)
    wait_until(lambda: "second source" in frame.next_line.text.text(), 40.0)
    assert frame.rail.buttons[Stage.RUNS].state is State.ATTENTION
    assert frame.next_line.shown.weight is Weight.CAUTION


def test_the_panel_says_what_it_sets(program):
    panel = program.frame.pages[Stage.HOOK_UP].panel
    assert panel.teaching() == Teaching()
    for case in CASES.values():
        panel.set(case)
        assert panel.teaching() == case
        assert CASES[panel.case.currentText()] == case
    panel.masses[1][0].setValue(12.5)
    panel.masses[1][1].setValue(90.0)
    assert panel.case.currentText() == "set below"
    assert panel.teaching().masses == (Mass(0.0, 0.0), Mass(12.5, 90.0))


def test_another_unit_begins_the_figures_anew(running, wait_until):
    feed = running.feed
    first = feed.watch
    velocity = abs(feed.snapshot.measured.points[0].z)
    running.frame.set_view(View(unit="µm p-p"))
    wait_until(lambda: feed.watch is not None and feed.watch is not first)
    wait_until(lambda: feed.snapshot is not None and feed.snapshot.measured is not None, 40.0)
    measured = feed.snapshot.measured
    assert measured.unit == "µm p-p"
    # d = v/ω; rms to p-p by 2√2; the scatter from run to run stays
    omega = measured.speed.mean_rpm * 3.14159265 / 30.0
    assert abs(measured.points[0].z) == pytest.approx(velocity / omega * 2.0 * 2.0**0.5 * 1000.0, rel=0.1)


@pytest.mark.parametrize("unit", CHOICES["unit"][1:])
def test_every_unit_on_offer_is_a_unit(unit):
    from stillshaft.dsp import units

    assert units.vibration_unit(unit).text == unit


def test_the_other_end_turns_face_and_cloud(running):
    frame = running.frame
    hookup, runs = frame.pages[Stage.HOOK_UP], frame.pages[Stage.RUNS]
    assert runs.watch.cloud.clockwise
    frame.set_view(View(seen_from="other end", angles="with rotation"))
    assert "sensor drive end horizontal at 3 o'clock" in hookup.face.summary
    assert "angles with rotation" in hookup.face.summary
    assert not runs.watch.cloud.clockwise


def test_the_keys_alone_run_the_source(program, qtbot, wait_until):
    frame = program.frame
    frame.activateWindow()
    qtbot.waitUntil(frame.isActiveWindow)
    QtTest.QTest.keyClick(frame, QtCore.Qt.Key.Key_T, QtCore.Qt.KeyboardModifier.AltModifier)
    wait_until(lambda: program.feed.status is Status.RUNNING)
    QtTest.QTest.keyClick(frame, QtCore.Qt.Key.Key_4, QtCore.Qt.KeyboardModifier.ControlModifier)
    assert frame.open_stage is Stage.RUNS
    QtTest.QTest.keyClick(frame, QtCore.Qt.Key.Key_T, QtCore.Qt.KeyboardModifier.AltModifier)
    wait_until(lambda: program.feed.status is Status.STOPPED)


def test_a_sound_input_is_found_marked_and_run(program, virtual_card, wait_until, tmp_path):
    feed, page = program.feed, program.frame.pages[Stage.HOOK_UP]
    (tmp_path / "h.toml").write_text(HOOKUP)
    page.find_inputs.click()
    assert not page.find_inputs.isEnabled()
    wait_until(lambda: not feed.looking)
    names = [page.source.itemText(i) for i in range(page.source.count())]
    assert names[0] == SIMULATED.name
    page.source.setCurrentIndex(names.index("ALSA/pulse"))
    page.source.activated.emit(names.index("ALSA/pulse"))
    assert "may convert" in page.note.text()
    assert not page.panel.isVisible()
    page.start_stop.click()
    wait_until(lambda: feed.trouble is not None)
    assert "choose a hook-up file first" in program.frame.next_line.text.text()
    feed.use_hookup(tmp_path / "h.toml")
    wait_until(lambda: feed.hookup is not None and len(feed.hookup.points) == 2)
    player = virtual_card.play(rotor(15))
    page.start_stop.click()
    wait_until(lambda: feed.snapshot is not None and feed.snapshot.measured is not None, 30.0)
    player.kill()
    player.wait()
    assert abs(feed.snapshot.measured.points[0].z) == pytest.approx(0.2 * 50.0 / 2**0.5, rel=5e-3)
    page.start_stop.click()
    wait_until(lambda: feed.status is Status.STOPPED)


def test_what_was_asked_for_in_vain_is_said_on_hook_up_and_is_no_trouble_of_the_source(
    program, wait_until, monkeypatch
):
    monkeypatch.setattr(soundcard, "list_inputs", list)  # of a machine that has none
    feed, page, runs = program.feed, program.frame.pages[Stage.HOOK_UP], program.frame.pages[Stage.RUNS]
    page.find_inputs.click()
    wait_until(lambda: not feed.looking)
    assert page.sentence().text == "No sound input is there: plug one in and look again."
    assert page.state() is State.EMPTY
    assert "sound input" not in runs.strip.text.text()
    feed.start()
    wait_until(lambda: feed.status is Status.RUNNING)
    assert feed.remark is None
    feed.stop()
    wait_until(lambda: feed.status is Status.STOPPED)


def test_a_hook_up_file_that_is_wrong_is_said_in_words(program, wait_until, tmp_path):
    feed = program.feed
    feed.choose(sound_choice(SoundInput("ALSA", "card", 4, 48_000.0, False)))
    (tmp_path / "bad.toml").write_text("format = 7\n")
    feed.use_hookup(tmp_path / "bad.toml")
    wait_until(lambda: feed.trouble is not None)
    assert "bad.toml" in program.frame.next_line.text.text()
    assert program.frame.rail.buttons[Stage.HOOK_UP].state is State.ATTENTION


def test_a_source_that_does_not_open_is_said_in_words(program, wait_until, tmp_path):
    feed = program.feed
    (tmp_path / "h.toml").write_text(HOOKUP)
    feed.use_hookup(tmp_path / "h.toml")
    feed.choose(sound_choice(SoundInput("ALSA", "no such card", 8, 48_000.0, False)))
    feed.start()
    wait_until(lambda: feed.trouble is not None)
    wait_until(lambda: feed.status is Status.STOPPED)
    assert program.frame.next_line.shown.weight is Weight.CAUTION
    assert program.frame.next_line.text.text().endswith(".")


@pytest.mark.parametrize(
    ("found", "words", "caution"),
    [
        (SoundInput("ALSA", "hw:1", 4, 48_000.0, False), "nothing in its name", False),
        (SoundInput("ALSA", "pulse", 32, 44_100.0, True), "may convert", True),
        (SoundInput("ALSA", "hw:2", 1, 48_000.0, False), "one input only", True),
    ],
)
def test_inputs_carry_honest_marks(found, words, caution):
    choice = sound_choice(found)
    assert words in choice.note
    assert choice.caution is caution


def test_findings_are_listed_with_shape_word_and_cure(dressed, qtbot):
    card = FindingsCard()
    qtbot.addWidget(card)
    findings = [
        check.Finding("pulse, input 1", check.BLOCKS, "is exactly zero throughout", "check cable"),
        check.Finding("near, input 2", check.CAUTION, "is weak", "raise the gain"),
        check.Finding("far, input 3", check.FINE, "1x 3 mm/s", ""),
    ]
    card.show_findings(findings, "1 to put right first, 1 to look at.")
    said = [row.accessibleName() for row in card.rows]
    assert said[0].startswith("Put right first: pulse, input 1: is exactly zero throughout. check cable")
    assert said[1].startswith("Attention: near")
    assert said[2].startswith("Fine: far")
