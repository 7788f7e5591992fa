"""The Hook-up page: fields that are checked and kept, sources by name, checks recorded in the job, files in and out."""

import tomllib

import pytest
from PySide6 import QtWidgets
from screen_faults import faults, small_targets, text_of, unseen_focus
from stillshaft.acquire.hookup import HookupError, hookup_from, load_hookup
from stillshaft.acquire.source import SourceError
from stillshaft.dsp import check
from stillshaft.ui.desktop import hookup_model as model
from stillshaft.ui.desktop import simulator
from stillshaft.ui.desktop.feed import Status
from stillshaft.ui.desktop.hookup_checks import SIGNALS, STANDSTILL, TAPS
from stillshaft.ui.desktop.hookup_sources import named_choice
from stillshaft.ui.desktop.settings import View
from stillshaft.ui.desktop.stages import State


@pytest.fixture
def page(hookup_page):
    return hookup_page


@pytest.fixture
def with_job(page, wait_until, tmp_path):
    """The page with a job open that has the simulated rotor's hook-up."""
    page.own_job.create(tmp_path / "job", "fan", "first person")
    wait_until(lambda: page.own_job.shown is not None)
    assert "has no hook-up yet" in page.note.text()
    page.card.assign.click()
    wait_until(lambda: not page.own_job.busy)
    assert page.own_job.shown.hookup is not None
    assert "the job's" in page.note.text()
    return page


def field(page, index, key):
    return page.inputs.rows[index].editor.form.by_key[key]


def enter(page, index, key, text):
    made = field(page, index, key)
    made.put(text)
    made.commit()
    return made


# fields


@pytest.mark.parametrize(
    ("key", "typed", "words"),
    [
        ("sensitivity", "50 mV/g", "50 mV/g"),
        ("angle", "45°", "at 45°"),
        ("inverted", "yes", "inverted"),
        ("delay", "12 us", "delay 12 us"),
        ("highpass", "2.0 Hz, 0.8 Hz", "corner 2 Hz · corner 0.8 Hz"),
        ("mount", "flat magnet", "flat magnet"),
        ("direction", "axial", "axial"),
        ("name", "fan end", "fan end"),
    ],
)
def test_a_finished_field_is_taken_and_shown(page, key, typed, words):
    row = page.inputs.rows[1]
    made = enter(page, 1, key, typed)
    assert not made.remark.text.text().startswith("Kept")
    assert words in f"{row.name.text()} {row.words.text()}"
    assert hookup_from(page.feed.table).fingerprint == page.wiring.hookup.fingerprint
    page.undo.click()
    assert page.wiring.table == simulator.hookup()
    page.redo.click()
    assert words in f"{row.name.text()} {row.words.text()}"


def test_what_is_wired_breaks_into_lines_at_its_dots_only(page, wait_until):
    for language, parts in (
        ("English", ("acceleration ·", "100 mV/g ·", "at 90°")),
        ("Deutsch", ("Beschleunigung ·", "100 mV/g ·", "bei 90°")),
        ("English", ("acceleration ·", "100 mV/g ·", "at 90°")),
    ):
        page.frame.set_view(View(language=language))
        wait_until(lambda first=parts[0]: text_of(page.inputs.rows[1].words).startswith(first.split()[0]))
        shown = QtWidgets.QLabel.text(page.inputs.rows[1].words)
        assert tuple(p.replace("\u00a0", " ").replace("\u2060", "") for p in shown.split(" ")) == parts


@pytest.mark.parametrize(
    ("key", "typed", "why", "kept"),
    [
        ("sensitivity", "5 kg", "is not a unit of", "100 mV/g"),
        ("sensitivity", "", "Is missing", "100 mV/g"),
        ("full_scale", "-2 V", "Must be above 0", "2.0 V"),
        ("angle", "up", "not a number of degrees", "90°"),
        ("input", "x", "not a whole number", "2"),
        ("input", "3", "is taken by", "2"),
        ("input", "65", "count from 1 to 64", "2"),
        ("delay", "12", "not a number with a unit", "0 us"),
        ("highpass", "1 Hz, 2 Hz, 3 Hz", "one or two corners", "none"),
        ("name", "far end horizontal", "used twice", "drive end horizontal"),
    ],
)
def test_nonsense_is_said_beside_the_field_and_changes_nothing(page, key, typed, why, kept):
    before = page.wiring.table
    made = enter(page, 1, key, typed)
    assert why in made.remark.text.text()
    assert made.remark.text.text().endswith(f"Kept: {kept}.")
    assert made.text == kept
    assert page.wiring.table == before
    assert not page.undo.isEnabled()


def test_the_pulse_input_is_edited_in_place(page):
    assert enter(page, 0, "pulses_per_rev", "401").remark.text.text().startswith("401 is not possible")
    enter(page, 0, "pulses_per_rev", "3")
    enter(page, 0, "reference", "missing")
    enter(page, 0, "edge", "falling")
    assert page.inputs.rows[0].words.text() == "falling edge · 3 marks, missing · at 0°"
    enter(page, 0, "pulses_per_rev", "1")  # one mark has no missing one
    assert page.wiring.hookup.pulse.reference == "single"


def test_sides_and_unit_turn_the_face(page):
    for key, text in (("rotation", "clockwise"), ("reference_end", "non-drive"), ("display", "µm p-p")):
        made = page.sides.form.by_key[key]
        made.put(text)
        made.commit()
    assert "seen from non-drive, turning clockwise" in page.face.summary
    assert page.wiring.hookup.display == "µm p-p"
    assert page.sides.form.by_key["display"].pick.currentText() == "µm p-p"  # a unit keeps its letters


def test_inputs_are_added_and_removed(page):
    page.inputs.add.click()
    assert [r.name.text() for r in page.inputs.rows.values()][-1] == "point 1"
    assert sorted(page.inputs.rows) == [0, 1, 2, 3]
    page.inputs.rows[1].editor.remove.click()
    assert [r.name.text() for r in page.inputs.rows.values()] == ["pulse", "far end horizontal", "point 1"]
    page.undo.click()
    assert [r.name.text() for r in page.inputs.rows.values()][1] == "drive end horizontal"
    for _ in range(3):
        page.inputs.rows[max(page.inputs.rows)].editor.remove.click()
    assert "needs at least one point" in page.card.remark.text.text()


def test_a_row_that_moves_stays_open(page):
    page.inputs.rows[1].edit.click()
    assert page.inputs.rows[1].edit.text() == "Close"
    enter(page, 1, "input", "5")
    assert sorted(page.inputs.rows) == [0, 2, 4]
    assert not page.inputs.rows[4].editor.isHidden()
    assert page.inputs.rows[2].editor.isHidden()
    # the simulated rotor has three inputs: said, and nothing runs
    assert page.feed.status is Status.STOPPED


def test_another_quantity_takes_its_unit_along():
    table = model.changed(simulator.hookup(), 0, "quantity", "velocity")
    assert table["point"][0]["sensitivity"] == "4 mV/(mm/s)"
    assert hookup_from(table).points[0].quantity == "velocity"


def test_what_is_typed_ends_a_calibration():
    table = simulator.hookup()
    table["point"][0]["calibrated"] = {"date": "2026-11-01", "method": "step", "highpass_ci95": ["0.1 Hz"]}
    assert "calibrated" in model.changed(table, 0, "sensitivity", "99 mV/g")["point"][0]
    assert "calibrated" not in model.changed(table, 0, "highpass", "2 Hz")["point"][0]


# the job


def test_a_field_is_an_entry_of_the_job(with_job, wait_until):
    job = with_job.own_job
    enter(with_job, 1, "sensitivity", "98 mV/g")
    wait_until(lambda: not job.busy)
    assert job.shown.state.hookup["point"][0]["sensitivity"] == "98 mV/g"
    assert field(with_job, 1, "sensitivity").recorded == "98 mV/g"
    with_job.undo.click()
    wait_until(lambda: not job.busy)
    assert job.shown.state.hookup["point"][0]["sensitivity"] == "100 mV/g"


def test_a_change_that_the_runs_of_the_job_forbid_is_refused_in_words(dressed, page, wait_until, tmp_path):
    from balancing_jobs import balancing_job

    balancing_job(tmp_path / "balanced", 1, until="initial").close()
    page.own_job.open(tmp_path / "balanced", "first person")
    wait_until(lambda: page.own_job.shown is not None and page.wiring.hookup is not None)
    before = page.wiring.table
    index = page.wiring.hookup.points[0].index
    made = enter(page, index, "sensitivity", "99 mV/g")
    wait_until(lambda: not page.own_job.busy)
    assert "runs were taken with another one; record first what changed" in made.remark.text.text()
    assert page.wiring.table == before


# checks


def test_checks_become_evidence_of_the_job(with_job, wait_until):
    page, job = with_job, with_job.own_job
    page.findings.stopped.click()
    assert page.checks.busy
    assert not page.start_stop.isEnabled()
    wait_until(lambda: not page.checks.busy and not job.busy)
    assert page.findings.note.text().startswith("No pulses come while the machine stands.")
    page.findings.taps.click()
    wait_until(lambda: page.findings.prompt.text() == "Tap at far end horizontal, towards its sensor.")
    assert [r.accessibleName().split(":")[0] for r in page.findings.rows] == ["Fine"]
    wait_until(lambda: not page.checks.busy and not job.busy)
    assert page.findings.prompt.isHidden()
    assert [e.what.what for e in job.shown.state.measured] == [STANDSTILL, TAPS]
    first = job.shown.state.measured[0].what
    assert first.trusted
    assert load_recording(job, first).rate_hz > 1000.0
    wait_until(lambda: "Recorded as evidence" in page.findings.note.text())


def load_recording(job, what):
    from stillshaft.acquire.recording import open_recording

    with open_recording(job.shown.folder / what.recording.path) as reader:
        return reader


def test_the_check_of_live_signals_keeps_the_samples_it_looked_at(with_job, wait_until):
    page, job = with_job, with_job.own_job
    page.feed.start()
    wait_until(lambda: page.feed.snapshot is not None and page.feed.snapshot.seconds > 11.0, 40.0)
    page.check_signals.click()
    wait_until(lambda: page.findings.rows and not job.busy)
    what = job.shown.state.measured[-1].what
    assert what.what == SIGNALS
    assert load_recording(job, what).frames == page.feed.looked_at[0].shape[0]
    assert page.state() is State.DONE
    # which edge leads is settled here, before any run
    assert what.figures["mark"]["width_deg"] == pytest.approx(7.2, abs=0.3)
    assert job.shown.hookup.pulse.edge == "rising"
    assert not job.shown.state.runs
    assert "The rising edge of the pulse is kept for all runs." in page.findings.note.text()
    assert page.feed.status is Status.RUNNING  # and what runs runs on
    page.feed.stop()
    wait_until(lambda: page.feed.status is Status.STOPPED)


def test_swapped_cables_are_found_by_taps_and_a_check_is_broken_off(page, wait_until):
    table = simulator.hookup()
    table["point"][0]["input"], table["point"][1]["input"] = 3, 2
    page.wiring.change(lambda _table: table)
    page.findings.taps.click()
    wait_until(lambda: page.findings.rows)
    assert "the tap shows at input 2" in page.findings.rows[0].accessibleName()
    page.findings.work.cancel.click()
    wait_until(lambda: not page.checks.busy)
    assert page.findings.note.text() == "Broken off; nothing was recorded."


# sources and files


@pytest.mark.parametrize(
    ("text", "rate", "words"),
    [
        ("serial:/dev/ttyACM0", "", "never tried on a real device"),
        ("nidaqmx:Dev1/ai0", "25600 Hz", "never tried on a real device"),
        ("uldaq:0123ABCD", "48 kHz", "48000 Hz"),
        ("recording:/tmp/x.au", "", "played in its own time"),
    ],
)
def test_named_sources_say_what_is_known_of_them(text, rate, words):
    assert words in named_choice(text, rate).note


@pytest.mark.parametrize(
    ("text", "rate", "match"),
    [
        ("", "", "name a source, such as serial:"),
        ("nidaqmx:Dev1/ai0", "", "needs a sample rate, such as 25600 Hz"),
        ("nidaqmx:Dev1/ai0", "5 Hz", "is not between 100 Hz and 1 MHz"),
        ("nidaqmx:", "25600 Hz", "write for example"),
    ],
)
def test_a_source_that_cannot_be_is_refused(text, rate, match):
    with pytest.raises(SourceError, match=match):
        named_choice(text, rate)


def test_a_source_that_is_not_there_is_said_in_words(page, wait_until):
    page.card.other.click()
    page.card.name.put("serial:/dev/no-such-board")
    page.card.take.click()
    assert page.source.currentText() == "serial:/dev/no-such-board"
    page.card.new.click()
    wait_until(lambda: page.feed.hookup is not None and page.feed._request is not None)
    page.start_stop.click()
    wait_until(lambda: page.feed.trouble is not None)
    assert "no-such-board" in page.sentence().text


def test_a_hook_up_goes_out_and_comes_back(page, wait_until, tmp_path):
    enter(page, 1, "sensitivity", "97 mV/g")
    path = tmp_path / "h.toml"
    page.export_file(path)
    wait_until(lambda: not page.feed.tasks.busy and path.exists())
    assert load_hookup(path).table == page.wiring.table
    enter(page, 1, "sensitivity", "50 mV/g")
    page.import_file(path)
    wait_until(lambda: page.wiring.table["point"][0]["sensitivity"] == "97 mV/g")
    path.write_text("format = 7\n")
    page.import_file(path)
    wait_until(lambda: "h.toml" in page.card.remark.text.text())
    assert page.wiring.table["point"][0]["sensitivity"] == "97 mV/g"


def test_dates_of_calibrations_are_dates_in_the_file(tmp_path):
    table = simulator.hookup()
    table["point"][0]["calibrated"] = {"date": "2026-11-01", "method": "step"}
    model.write(tmp_path / "h.toml", table)
    assert tomllib.loads((tmp_path / "h.toml").read_text())["point"][0]["calibrated"]["date"].year == 2026
    assert model.plain(load_hookup(tmp_path / "h.toml").table) == table
    with pytest.raises(HookupError, match=r"h\.toml: cannot be written"):
        model.write(tmp_path / "none" / "h.toml", table)


# as it is seen


@pytest.mark.parametrize("size", [(1400, 900), (1024, 700)])
def test_open_rows_can_be_read_and_reached(page, wait, size):
    page.frame.resize(*size)
    page.card.other.click()
    for row in page.inputs.rows.values():
        row.open(True)
    enter(page, 1, "sensitivity", "5 kg")
    page.findings.show_findings([check.Finding("pulse, input 1", check.BLOCKS, "is zero", "check the cable")], "")
    for text_size in ("normal", "large", "largest"):
        page.frame.set_view(View(theme="sunlight", text_size=text_size))
        wait(50)
        assert faults(page.frame) + small_targets(page.frame) == [], text_size
    assert unseen_focus(page.frame) == []
