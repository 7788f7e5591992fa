"""Calibration on the Hook-up page: known signals from files and from a sound card, shown first, then written with a date."""

import datetime

import numpy as np
import pytest
from known_signals import RATE_HZ, write_known_signals
from stillshaft.acquire.soundcard import SoundInput
from stillshaft.ui.desktop.feed import Status, sound_choice

NEAR, FAR = "drive end horizontal", "far end horizontal"


@pytest.fixture
def page(hookup_page):
    return hookup_page


@pytest.fixture
def known(tmp_path):
    """Recordings of known signals on three inputs."""
    write_known_signals(tmp_path)
    return tmp_path


def choose(page, name):
    page.calibration.method.buttons[name].click()


def calibrate(page, wait_until, path):
    page.calibrate_from(page.calibration.asked(), path)
    assert page.calibrating.busy
    assert not page.calibration.record.isEnabled()
    wait_until(lambda: not page.calibrating.busy)
    return page.calibration._results


@pytest.mark.parametrize(
    ("name", "file", "key", "values"),
    [
        ("Known voltage", "voltage", "full_scale", {NEAR: 2.5, FAR: 1.9}),
        ("Hand-held shaker", "shaker", "sensitivity", {FAR: 98.7}),
        ("Split signal", "split", "delay", {NEAR: 10.0, FAR: 0.0}),
        ("Step", "step", "highpass", {NEAR: 2.0, FAR: 0.8}),
    ],
)
def test_a_recording_is_worked_out_shown_and_only_then_written(page, known, wait_until, name, file, key, values):
    before = page.wiring.table
    choose(page, name)
    page.calibration.volts.show_recorded("1 V")
    results = calibrate(page, wait_until, known / f"{file}.wav")
    assert {r.point: float(r.values[0].split()[0]) for r in results} == {
        p: pytest.approx(v, rel=1e-2, abs=0.01) for p, v in values.items()
    }
    assert all(float(r.ci95[0].split()[0]) >= 0.0 for r in results)
    shown = [page.calibration.results.itemAt(i).widget().text() for i in range(page.calibration.results.count())]
    assert any("becomes" in s and "±" in s for s in shown)
    assert page.wiring.table == before  # nothing is written yet
    page.calibration.write.click()
    assert "Written into the hook-up" in page.calibration.remark.text.text()
    for point in page.wiring.table["point"]:
        if point["name"] in values:
            assert point["calibrated"]["date"] == datetime.datetime.now(datetime.UTC).date().isoformat()
            assert f"{key}_ci95" in point["calibrated"]
    field = page.inputs.rows[2].editor.form.by_key[key]
    assert field.remark.text.text().startswith("Calibrated 20")
    page.undo.click()
    assert page.wiring.table == before


def test_a_result_may_be_left(page, known, wait_until):
    before = page.wiring.table
    choose(page, "Step")
    assert calibrate(page, wait_until, known / "step.wav")
    page.calibration.leave.click()
    assert page.calibration.results.count() == 0
    assert page.wiring.table == before


@pytest.mark.parametrize(
    ("name", "file", "words"),
    [
        ("Hand-held shaker", "voltage.wav", "The strongest tone is 1000.0 Hz, not the shaker's 159.2 Hz"),
        ("Split signal", "shaker.wav", "The reference input has no clear tone"),
        ("Step", "none.wav", "There is no such file"),
    ],
)
def test_a_record_that_tells_nothing_is_said_in_words(page, known, wait_until, name, file, words):
    choose(page, name)
    assert not calibrate(page, wait_until, known / file)
    assert words.lower() in page.calibration.remark.text.text().lower()
    assert file in page.calibration.remark.text.text()
    assert page.calibration.write.isHidden()


@pytest.mark.parametrize(
    ("key", "typed", "why"),
    [("volts", "5 kg", "is not a unit of V"), ("level", "0 g", "must be above 0"), ("seconds", "90 s", "2 to 60 s")],
)
def test_nonsense_is_refused_beside_its_field(page, key, typed, why):
    field = getattr(page.calibration, key)
    kept = field.recorded
    field.put(typed)
    field.commit()
    assert why in field.remark.text.text()
    assert field.recorded == kept


def test_without_the_voltage_nothing_begins(page):
    page.calibration.record.click()
    assert not page.calibrating.busy
    assert "how many volts" in page.calibration.volts.remark.text.text()


def test_the_simulated_rotor_carries_no_known_signal(page):
    choose(page, "Step")
    page.calibration.record.click()
    assert not page.calibrating.busy
    assert "no known signal" in page.calibration.remark.text.text()


def test_a_known_voltage_is_recorded_live_and_may_be_broken_off(page, virtual_card, wait_until):
    page.feed.choose(sound_choice(SoundInput("ALSA", "pulse", 32, 44_100.0, True)))
    page.card.new.click()
    page.inputs.add.click()
    wait_until(lambda: page.feed.hookup is not None and len(page.feed.hookup.points) == 2)
    t = np.arange(30 * RATE_HZ) / RATE_HZ
    sine = np.sqrt(2.0) * np.cos(2 * np.pi * 1000.0 * t)
    player = virtual_card.play(np.column_stack([0 * t, sine / 2.5, sine / 1.9, 0 * t]))
    try:
        choose(page, "Known voltage")
        for field, text in ((page.calibration.volts, "1 V"), (page.calibration.seconds, "3 s")):
            field.show_recorded(text)
        page.calibration.record.click()
        wait_until(lambda: page.calibration.work.bar.value() > 20)
        wait_until(lambda: not page.calibrating.busy)
        found = {r.point: float(r.values[0].split()[0]) for r in page.calibration._results}
        assert found == {"point 1": pytest.approx(2.5, rel=2e-3), "point 2": pytest.approx(1.9, rel=2e-3)}
        page.calibration.record.click()
        wait_until(lambda: page.calibration.work.bar.value() > 20)
        page.calibration.work.cancel.click()
        wait_until(lambda: not page.calibrating.busy)
        assert page.calibration.remark.text.text() == "Broken off."
        assert page.feed.status is Status.STOPPED
    finally:
        player.kill()
        player.wait()
