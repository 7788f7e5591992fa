"""The Brief page in a real window on a real job: fields, refusals, planes, photos, and what the record holds of them."""

import hashlib
import time
from datetime import datetime

import pytest
from PySide6 import QtCore, QtGui, QtTest, QtWidgets
from screen_faults import faint, faults, small_targets
from stillshaft.acquire import simulated
from stillshaft.dsp.tables import TableError
from stillshaft.solver.brief import Brief, Condition, Level, Plane
from stillshaft.solver.job import Job
from stillshaft.ui.brief_text import BriefTextError
from stillshaft.ui.desktop import brief_entries, brief_record
from stillshaft.ui.desktop.brief_page import BriefPage
from stillshaft.ui.desktop.brief_photos import Large
from stillshaft.ui.desktop.brief_record import BriefEntryError
from stillshaft.ui.desktop.frame import Frame
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.settings import CHOICES, View
from stillshaft.ui.desktop.stages import Stage, State

FULL = {
    "machine": {"name": "extraction fan 3", "type": "fan"},
    "rotor": {"kind": "between bearings", "mass": "62 kg", "speed_rpm": 1480.0},
    "drive": {"kind": "belt", "motor_pulley": "200 mm"},
    "planes": [{"name": "drive side", "radius": "310 mm", "positions": 12, "blocked": [7]}, {"name": "far side"}],
    "abort": [{"point": "drive end horizontal", "amplitude": 25.0, "unit": "mm/s rms"}],
    "conditions": [{"name": "load", "tolerance": 5.0, "unit": "%"}, {"name": "setpoint"}],
    "starts": {"allowed": 6},
    "interview": {"wrong": "Shakes since the last cleaning.", "began": "after work on the machine"},
}


class Window:
    """The frame with its Brief page, and the job under it."""

    def __init__(self, room, wait_until):
        self.wait_until = wait_until
        self.job = OpenJob()
        self.frame = Frame(None, None, Stage.BRIEF)
        self.frame.register(Stage.BRIEF, lambda: BriefPage(self.job, room, lambda _folder: None))
        self.frame.show()
        wait_until(lambda: Stage.BRIEF in self.frame.pages)
        self.page = self.frame.pages[Stage.BRIEF]

    def settle(self):
        self.wait_until(lambda: not self.job.busy)

    @property
    def brief(self):
        return self.job.shown.state.brief

    @property
    def entries(self):
        return self.job.shown.entries

    def type(self, field, text, key=QtCore.Qt.Key.Key_Return):
        """As a person types it: the field as it is, then the keys."""
        field.control.setFocus()
        field.control.selectAll()
        if text:
            QtTest.QTest.keyClicks(field.control, text)
        else:
            QtTest.QTest.keyClick(field.control, QtCore.Qt.Key.Key_Delete)
        if key is not None:
            QtTest.QTest.keyClick(field.control, key)
        self.settle()

    def pick(self, field, word):
        field.pick.setCurrentIndex(field.words.index(word))
        field.pick.activated.emit(field.pick.currentIndex())
        self.settle()


@pytest.fixture
def empty(dressed, qtbot, wait_until, tmp_path):
    """The window before a job is open."""
    made = Window(tmp_path / "jobs", wait_until)
    yield made
    made.frame.close()
    made.job.close()
    made.frame.deleteLater()  # at once: the next test would dress it anew
    QtWidgets.QApplication.sendPostedEvents(None, QtCore.QEvent.Type.DeferredDelete)


@pytest.fixture
def window(empty, tmp_path):
    """The window with a new job that has a hook-up."""
    empty.job.create(tmp_path / "fan", "fan 3", "Kim")
    empty.job.act(lambda s: s.wire(simulated.demo_hookup()))
    empty.settle()
    return empty


def test_a_job_is_begun_by_its_name(empty, tmp_path):
    page = empty.page
    assert page.state() is State.EMPTY
    assert "begin one" in page.sentence().text
    assert not page.start.isHidden()
    assert page.forms.isHidden()
    empty.type(page.start.called, "Fan 3, spring", None)
    page.start.begin.click()
    empty.settle()
    assert (tmp_path / "jobs" / "Fan 3, spring" / "job.jsonl").is_file()
    assert empty.job.shown.state.name == "Fan 3, spring"
    assert empty.job.shown.by == page.start.by
    assert page.start.isHidden()
    assert not page.forms.isHidden()
    assert page.field("machine.name").control.hasFocus()


def test_a_job_without_a_name_is_asked_for_one(empty):
    empty.page.start.begin.click()
    assert "name first" in empty.page.start.remark.text.text()
    assert empty.job.shown is None


def test_a_folder_that_holds_no_job_is_refused_in_words(empty, tmp_path):
    empty.page.start.open_folder(tmp_path)
    empty.settle()
    assert empty.job.shown is None
    assert str(tmp_path) in empty.page.start.remark.text.text()
    assert empty.page.start.open.isEnabled()


def test_two_jobs_of_one_name_have_folders_of_their_own(empty, tmp_path):
    for _ in range(2):
        empty.type(empty.page.start.called, "fan", None)
        empty.page.start.begin.click()
        empty.settle()
    assert {p.name for p in (tmp_path / "jobs").iterdir()} == {"fan", "fan 2"}


def test_a_finished_field_is_one_entry_and_keys_are_none(window):
    field = window.page.field("rotor.mass")
    before = window.entries
    window.type(field, "80", None)
    assert window.entries == before
    QtTest.QTest.keyClick(field.control, QtCore.Qt.Key.Key_Return)
    window.settle()
    assert window.brief.rotor.mass == "80 kg"
    assert window.entries == before + 1
    assert field.text == "80 kg"
    QtTest.QTest.keyClick(field.control, QtCore.Qt.Key.Key_Return)
    window.page.field("rotor.kind").control.setFocus()  # left, too
    window.settle()
    assert window.entries == before + 1


def test_a_field_is_finished_when_it_is_left(window):
    window.type(window.page.field("machine.place"), "hall 3", QtCore.Qt.Key.Key_Tab)
    assert window.brief.machine.place == "hall 3"
    paper = window.page.field("interview.wrong")
    paper.control.setFocus()
    QtTest.QTest.keyClicks(paper.control, "shakes")
    QtTest.QTest.keyClick(paper.control, QtCore.Qt.Key.Key_Return)
    QtTest.QTest.keyClicks(paper.control, "since May")
    assert "wrong" not in window.brief.interview
    QtTest.QTest.keyClick(paper.control, QtCore.Qt.Key.Key_Tab)
    window.settle()
    assert window.brief.interview["wrong"] == "shakes\nsince May"


def test_escape_puts_back_what_is_recorded(window):
    field = window.page.field("rotor.mass")
    window.type(field, "62 kg")
    before = window.entries
    window.type(field, "99 kg", QtCore.Qt.Key.Key_Escape)
    assert field.text == "62 kg"
    assert window.entries == before


def test_an_emptied_field_takes_the_entry_out(window):
    window.type(window.page.field("rotor.mass"), "62 kg")
    window.type(window.page.field("rotor.mass"), "")
    assert window.brief.rotor.mass is None


NONSENSE = [
    ("rotor.mass", "62 kg", "heavy", "not a number with a unit"),
    ("rotor.mass", "62 kg", "3 V", "not a unit of kg"),
    ("rotor.speed_rpm", "1480 r/min", "fast", "is not a speed"),
    ("rotor.speed_rpm", "1480 r/min", "0", "speed must be above 0"),
    ("starts.allowed", "6", "two", "no whole number"),
    ("starts.allowed", "6", "-2", "is below 0"),
    ("starts.window_end", "2026-11-26 17:00", "tomorrow", "no date and time"),
    ("goal.grade", "G6.3", "good", "good"),
    ("stock", "5 g x 10", "a few", "write mass x count"),
]


def test_nonsense_is_said_beside_the_field_and_what_was_there_stays(window):
    for key, good, nonsense, said in NONSENSE:
        field = window.page.field(key)
        window.type(field, good)
        kept, before = window.brief, window.entries
        assert field.text == good, nonsense
        window.type(field, nonsense)
        assert (window.brief, window.entries) == (kept, before), nonsense
        assert field.text == good, nonsense
        assert not field.remark.isHidden(), nonsense
        assert said in field.remark.text.text()
        assert f"Kept: {good}" in field.remark.text.text()
        assert said in field.control.accessibleDescription()
        window.type(field, "")
        assert "Kept" not in field.remark.text.text()


def test_units_are_those_of_the_chosen_family(window):
    mass, span = window.page.field("rotor.mass"), window.page.field("rotor.bearing_span")
    window.pick(window.page.field("rotor.kind"), "overhung")
    window.frame.set_view(View(unit="in/s peak"))
    window.type(mass, "100")
    assert window.brief.rotor.mass == "100 lb"
    window.type(span, "900 mm")
    assert window.brief.rotor.bearing_span == "900 mm"
    assert span.remark.text.text() == "= 35.43 in"  # 900/25.4
    window.frame.set_view(View(unit="mm/s rms"))
    assert mass.remark.text.text() == "= 45.36 kg"  # 100 × 0.45359237, the pound's definition
    assert span.remark.text.text() == ""
    level = window.page.levels.fields[0]
    window.type(level, "25")
    assert [(a.amplitude, a.unit) for a in window.brief.abort] == [(25.0, "mm/s rms")]


def test_only_what_fits_the_machine_is_asked(window):
    page = window.page

    def there(*keys):
        return [not page.field(key).isHidden() for key in keys]

    belts = ("drive.motor_pulley", "drive.rotor_pulley", "drive.belt_length")
    assert there(*belts, "drive.motor_speed_rpm", "rotor.bearing_span", "starts.minutes_between") == [False] * 6
    window.pick(page.field("drive.kind"), "gear")
    assert there(*belts, "drive.motor_speed_rpm") == [False, False, False, True]
    window.pick(page.field("drive.kind"), "belt")
    assert there(*belts) == [True, True, True]
    window.type(page.field("drive.motor_pulley"), "200")
    window.pick(page.field("drive.kind"), "direct")
    assert there(*belts) == [True, False, False]  # what was said is not hidden
    window.type(page.field("starts.allowed"), "1")
    assert there("starts.minutes_between") == [False]
    window.type(page.field("starts.allowed"), "6")
    assert there("starts.minutes_between") == [True]


def test_planes_with_places_blocked_numbers_and_caps(window):
    page, planes = window.page, window.page.planes
    window.type(planes.add_name, "disc")
    assert [p.name for p in window.brief.planes] == ["disc"]
    assert "anywhere on the rim" in planes.planes[0].where.text()
    fields = planes.planes[0].fields
    assert fields["z"].isHidden()  # one plane
    assert fields["blocked"].isHidden()
    for key, text in (("radius", "310"), ("positions", "12"), ("blocked", "3, 7"), ("cap", "60"), ("radii", "290 mm")):
        window.type(planes.planes[0].fields[key], text)
    plane = window.brief.planes[0]
    assert (plane.radius, plane.positions, plane.blocked, plane.cap, plane.radii) == (
        "310 mm", 12, [3, 7], "60 g", ["290 mm"],
    )  # fmt: skip
    assert "12 places" in planes.planes[0].where.text()
    window.type(planes.planes[0].fields["positions"], "0, 36, 72")
    assert "7" in planes.planes[0].fields["positions"].remark.text.text()  # which is blocked
    assert window.brief.planes[0].positions == 12
    window.type(planes.planes[0].fields["blocked"], "3")
    window.type(planes.planes[0].fields["positions"], "0, 36, 72")
    assert window.brief.planes[0].positions == [0.0, 36.0, 72.0]
    window.type(planes.add_name, "disc")
    assert "is there already" in planes.add_name.remark.text.text()
    window.type(planes.add_name, "hub = far. side")
    assert [p.name for p in window.brief.planes] == ["disc", "hub = far. side"]
    window.type(planes.planes[1].fields["z"], "-250")
    assert window.brief.planes[1].z == "-250 mm"
    window.type(planes.planes[1].called, "hub")
    assert [p.name for p in window.brief.planes] == ["disc", "hub"]
    assert window.brief.planes[1].z == "-250 mm"
    planes.planes[0].remove.click()
    window.settle()
    assert [p.name for p in window.brief.planes] == ["hub"]
    page.undo.click()
    window.settle()
    assert [p.name for p in window.brief.planes] == ["disc", "hub"]
    page.redo.click()
    window.settle()
    assert [p.name for p in window.brief.planes] == ["hub"]


def test_neighbours_with_their_speeds(window):
    card = window.page.neighbours
    window.type(card.new, "pump = 1465 r/min within 5")
    assert [(n.name, n.speed_rpm, n.within_rpm) for n in window.brief.neighbours] == [("pump", 1465.0, 5.0)]
    assert card.new.text == ""
    assert [(f.control.accessibleName(), f.text) for f in card.fields] == [("Speed, pump", "1465 r/min within 5 r/min")]
    window.type(card.new, "fan 4 = 16.5 Hz")
    window.type(card.fields[0], "1470")
    assert [(n.name, n.speed_rpm, n.within_rpm) for n in window.brief.neighbours] == [
        ("pump", 1470.0, None), ("fan 4", 990.0, None),
    ]  # fmt: skip
    for text, said in (
        ("pump = 900", "is there already"),
        ("compressor", "Write name and speed"),
        ("mill = fast", "not a speed"),
    ):
        window.type(card.new, text)
        assert said in card.new.remark.text.text()
    assert len(window.brief.neighbours) == 2
    window.type(card.fields[1], "")
    assert [n.name for n in window.brief.neighbours] == ["pump"]
    window.page.undo.click()
    window.settle()
    assert [n.name for n in window.brief.neighbours] == ["pump", "fan 4"]


def test_line_and_poles_of_the_motor(window):
    line, poles = (window.page.field(f"drive.{key}") for key in ("line", "poles"))
    assert poles.isHidden()
    window.type(line, "50 Hz")
    window.type(poles, "3")
    assert "even number" in poles.remark.text.text()
    window.type(poles, "4")
    assert (window.brief.drive.line, window.brief.drive.poles) == ("50 Hz", 4)


def test_a_plane_that_carries_masses_keeps_its_name(window):
    window.type(window.page.planes.add_name, "disc")
    window.job.act(lambda s: s.put_on([{"plane": "disc", "mass_g": 8.0, "angle_deg": 90.0}], "trial"))
    window.settle()
    called = window.page.planes.planes[0].called
    window.type(called, "wheel")
    assert "keeps its name" in called.remark.text.text()
    assert called.text == "disc"
    window.page.planes.planes[0].remove.click()
    window.settle()
    assert [p.name for p in window.brief.planes] == ["disc"]


def test_levels_by_point_and_who_agreed(window):
    levels = window.page.levels
    assert [form.fields[0].control.accessibleName() for form in levels.forms] == [
        "Stop the machine at, drive end horizontal", "Stop the machine at, far end horizontal",
    ]  # fmt: skip
    stop, limit, agreed, _ = levels.forms[0].fields
    assert agreed.isHidden()
    window.type(stop, "25 mm/s rms")
    assert not agreed.isHidden()
    window.type(agreed, "works manager")
    window.type(stop, "22 mm/s rms")
    level = window.brief.abort[0]
    assert (level.point, level.amplitude, level.unit, level.source) == (
        "drive end horizontal", 22.0, "mm/s rms", "works manager",
    )  # fmt: skip
    window.type(limit, "4.5 mm/s")
    assert "needs a measure" in limit.remark.text.text()
    window.type(stop, "")
    assert window.brief.abort == []


def test_a_level_where_nothing_is_wired_says_that_it_can_never_call_for_a_stop(window):
    window.job.act(lambda s: s.describe({"abort": [{"point": "old bearing", "amplitude": 18.0, "unit": "mm/s rms"}]}))
    window.settle()
    said = {point: stray.text.text() for point, (_, _, stray) in window.page.levels._rows.items()}
    assert "can never call for a stop" in said["old bearing"]
    assert said["drive end horizontal"] == ""


def test_conditions_are_chosen_and_have_tolerances(window):
    conditions = window.page.conditions
    conditions.buttons["load"].click()
    window.settle()
    assert [c.name for c in window.brief.conditions] == ["load"]
    window.type(conditions.form.fields[0], "5 %")
    assert (window.brief.conditions[0].tolerance, window.brief.conditions[0].unit) == (5.0, "%")
    window.type(conditions.form.fields[0], "some")
    assert "no tolerance" in conditions.form.fields[0].remark.text.text()
    window.type(conditions.own, "humidity")
    assert [c.name for c in window.brief.conditions] == ["load", "humidity"]
    assert conditions.own.text == ""
    conditions.buttons["load"].click()
    window.settle()
    assert [c.name for c in window.brief.conditions] == ["humidity"]


def test_answers_are_those_that_the_diagnosis_knows(window):
    window.pick(window.page.field("interview.process"), "nothing")
    assert window.brief.interview == {"process": "nothing"}
    window.pick(window.page.field("interview.process"), "heat")
    told = [r.quantity for c in window.job.shown.diagnosis.causes for r in c.speaking_for]
    assert "process" in told
    window.pick(window.page.field("interview.process"), "")
    assert window.brief.interview == {}


def drop(widget, *urls):
    data = QtCore.QMimeData()
    data.setUrls([QtCore.QUrl(u) for u in urls])
    event = QtGui.QDropEvent(
        QtCore.QPointF(5, 5), QtCore.Qt.DropAction.CopyAction, data, QtCore.Qt.MouseButton.LeftButton,
        QtCore.Qt.KeyboardModifier.NoModifier,
    )  # fmt: skip
    widget.dropEvent(event)


def test_photos_dropped_are_copied_hashed_and_shown(window, tmp_path):
    image = QtGui.QImage(900, 600, QtGui.QImage.Format.Format_RGB32)
    image.fill(QtGui.QColor("#3070a0"))
    image.save(str(tmp_path / "wheel.png"))
    (tmp_path / "odd.heic").write_bytes(b"no picture that can be shown")
    photos = window.page.photos
    drop(photos, (tmp_path / "wheel.png").as_uri(), (tmp_path / "odd.heic").as_uri(), "https://example.org/x.png")
    window.settle()
    assert [e.what.note for e in window.job.shown.state.photos] == ["wheel.png", "odd.heic"]
    file = window.job.shown.state.photos[0].what.file
    copied = window.job.shown.folder / file.path
    assert copied.read_bytes() == (tmp_path / "wheel.png").read_bytes()
    assert file.sha256 == hashlib.sha256(copied.read_bytes()).hexdigest()
    window.wait_until(lambda: photos.tiles[0]._image is not None)
    assert photos.tiles[0].grab().toImage().pixelColor(75, 56).name() == "#3070a0"
    window.wait_until(lambda: photos.tiles[1].accessibleDescription() != "")
    assert "cannot show" in photos.tiles[1].accessibleDescription()
    photos.tiles[0].click()
    large = window.frame.findChild(Large)
    window.wait_until(lambda: not large.picture.pixmap().isNull())
    QtTest.QTest.keyClick(large.close_button, QtCore.Qt.Key.Key_Escape)
    assert large.isHidden()
    window.wait_until(lambda: not photos.tasks.busy)
    next(b for b in photos.findChildren(QtWidgets.QPushButton) if "Remove photo wheel" in b.accessibleName()).click()
    window.settle()
    assert [e.what.note for e in window.job.shown.state.photos] == ["odd.heic"]
    assert copied.exists()
    window.page.undo.click()
    window.settle()
    assert len(photos.tiles) == 2


def test_a_photo_that_is_gone_is_said(window, tmp_path):
    drop(window.page.photos, (tmp_path / "gone.png").as_uri())
    window.settle()
    assert "there is no such photo" in window.page.remark.text.text()


def test_what_is_being_typed_when_the_window_closes_is_kept(window):
    folder = window.job.shown.folder
    window.page.field("machine.owner").control.setFocus()
    QtTest.QTest.keyClicks(window.page.field("machine.owner").control, "the works")
    window.frame.close()
    window.job.close()
    with Job.open(folder, read_only=True) as job:
        assert job.state.brief.machine.owner == "the works"


def test_a_closed_job_says_why_nothing_is_recorded(window):
    window.job.act(lambda s: s.finish())
    window.settle()
    field = window.page.field("machine.name")
    window.type(field, "fan")
    assert "the job is closed" in field.remark.text.text()
    assert field.text == ""
    assert "closed" in window.page.subtitle.text()


def test_scrolling_over_a_choice_changes_nothing(window):
    pick = window.page.field("drive.kind").pick
    wheel = QtGui.QWheelEvent(
        QtCore.QPointF(5, 5), pick.mapToGlobal(QtCore.QPointF(5, 5)), QtCore.QPoint(0, -120), QtCore.QPoint(0, -120),
        QtCore.Qt.MouseButton.NoButton, QtCore.Qt.KeyboardModifier.NoModifier, QtCore.Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    before = window.entries
    QtWidgets.QApplication.sendEvent(pick, wheel)
    window.settle()
    assert pick.currentIndex() == 0
    assert window.entries == before


def test_what_another_page_records_is_shown_and_what_is_typed_stays(window):
    mass, place = window.page.field("rotor.mass"), window.page.field("machine.place")
    place.control.setFocus()
    QtTest.QTest.keyClicks(place.control, "hall")
    window.job.act(lambda s: s.describe({"rotor": {"mass": "70 kg"}, "machine": {"place": "yard"}}))
    window.settle()
    assert mass.text == "70 kg"
    assert place.text == "hall"


def test_the_sentence_names_what_is_missing(window):
    page = window.page
    assert page.state() is State.EMPTY
    assert "the machine's name" in page.sentence().text
    whole = FULL | {
        "planes": [{"name": "disc", "radius": "310 mm"}], "goal": {"grade": "G6.3"},
    }  # fmt: skip
    window.job.act(lambda s: s.describe(whole))
    window.settle()
    assert page.state() is State.DONE
    assert page.sentence() is None
    window.job.act(lambda s: s.describe({"goal": {"grade": None}}))
    window.settle()
    assert page.state() is State.UNDER_WAY
    assert page.sentence().text == "The brief does not say a goal or limits yet."


def test_a_slow_disk_never_holds_the_screen(window, wait):
    """While an act takes its time on the job's thread, the event loop goes round, and later acts keep their order."""
    beats, order = [], []
    timer = QtCore.QTimer()
    timer.timeout.connect(lambda: beats.append(time.monotonic()))
    timer.start(5)
    window.job.act(lambda s: time.sleep(0.6), lambda _result: order.append("slow"))
    window.page.field("rotor.mass").control.setFocus()
    QtTest.QTest.keyClicks(window.page.field("rotor.mass").control, "62 kg")
    window.page.field("rotor.mass").commit()
    window.job.act(lambda s: s.brief.rotor.mass, order.append)
    window.settle()
    timer.stop()
    assert order == ["slow", "62 kg"]
    assert max(b - a for a, b in zip(beats, beats[1:], strict=False)) < 0.3
    assert len(beats) > 30


def test_acts_without_a_job_are_refused_in_words(empty):
    told = []
    empty.job.refused.connect(told.append)
    empty.job.act(lambda s: s.describe({}))
    empty.settle()
    assert "no job is open" in told[0]


@pytest.mark.parametrize("size", [(1400, 900), (1024, 700)])
def test_it_can_be_read_reached_and_heard(window, wait, size):
    window.job.act(lambda s: s.describe(FULL))
    window.settle()
    window.frame.resize(*size)
    for text_size in CHOICES["text_size"]:
        for theme in ("light", "dark", "sunlight"):
            window.frame.set_view(View(theme=theme, text_size=text_size))
            wait(40)
            found = faults(window.frame) + small_targets(window.frame) if theme == "sunlight" else faint(window.frame)
            assert found == [], (text_size, theme)


# entries as texts


def test_values_are_shown_as_they_were_meant():
    brief = Brief(
        planes=[Plane("a", positions=[0.0, 36.5])],
        abort=[Level("p", 25.0, "mm/s rms", "owner")],
        conditions=[Condition("load", "%", 5.0), Condition("vane")],
        repeatability="2 % 2 deg",
    )
    brief.rotor.speed_rpm = 12345.75
    brief.drive.variable_speed = False
    brief.starts.window_end = "2026-11-26T16:00:00+00:00"
    assert brief_record.value_text(brief, "rotor.speed_rpm") == "12345.75 r/min"
    assert brief_record.value_text(brief, "drive.variable_speed") == "no"
    assert brief_record.value_text(brief, "machine.name") == ""
    assert brief_record.entry_text(brief, "planes", "a", "positions") == "0, 36.5"
    assert brief_record.entry_text(brief, "abort", "p", "amplitude") == "25 mm/s rms"
    assert brief_record.entry_text(brief, "conditions", "vane", "tolerance") == ""
    assert brief_record.entry_text(brief, "limits", "p", "amplitude") == ""
    shown = brief_record.value_text(brief, "starts.window_end")
    assert brief_record.value_patch("starts.window_end", shown, brief) == {
        "starts": {"window_end": "2026-11-26T16:00+00:00"}
    }
    assert (
        datetime.fromisoformat(shown).astimezone().isoformat() == datetime.fromisoformat(shown).astimezone().isoformat()
    )
    assert brief_record.value_patch("rotor.speed_rpm", "1480 r/min", brief) == {"rotor": {"speed_rpm": 1480.0}}


def test_entries_that_cannot_be_are_refused():
    brief = Brief(planes=[Plane("a")], abort=[Level("p", 25.0, "mm/s rms")])
    with pytest.raises(BriefEntryError, match='"b" is there already|"a" is there already'):
        brief_record.added(brief, "planes", " a ")
    with pytest.raises(BriefEntryError, match="give it a name"):
        brief_record.added(brief, "planes", "  ")
    with pytest.raises(BriefEntryError, match="give it a name"):
        brief_record.renamed(brief, "planes", "a", "")
    two = Brief(planes=[Plane("a"), Plane("b")])
    with pytest.raises(BriefEntryError, match='"b" is there already'):
        brief_record.renamed(two, "planes", "a", "b")
    with pytest.raises(BriefEntryError, match="give the level first"):
        brief_record.entry_patch(brief, "limits", "p", "source", "contract")
    with pytest.raises(BriefEntryError, match="is no tolerance"):
        brief_record.entry_patch(Brief(conditions=[Condition("load")]), "conditions", "load", "tolerance", "some")
    with pytest.raises(BriefEntryError, match="is below 0"):
        brief_record.entry_patch(Brief(conditions=[Condition("load")]), "conditions", "load", "tolerance", "-5 %")
    with pytest.raises(TableError, match=r'no date and time; write for example "2026-11-26 17:00"$'):
        brief_record.value_patch("starts.window_end", "noon", brief)
    with pytest.raises(BriefEntryError, match="a speed must be above 0"):
        brief_record.value_patch("rotor.speed_rpm", "0", brief)
    with pytest.raises(BriefTextError, match="write amplitude and unit"):
        brief_record.entry_patch(brief, "abort", "p", "amplitude", "25")


def test_every_entry_of_a_form_is_one_of_the_brief():
    """Each key is read and written: what a newcomer adds to a form joins by itself."""
    listed = [
        *brief_entries.MACHINE, *brief_entries.ROTOR, *brief_entries.DRIVE, *brief_entries.SUPPORTS, *brief_entries.STARTS,
        *brief_entries.GOAL, *brief_entries.STOCK, *brief_entries.INTERVIEW,
    ]  # fmt: skip
    assert len({entry.name for entry in listed}) == len(listed)  # each by a name of its own, for who only hears them
    for entry in listed:
        assert brief_record.value_text(Brief(), entry.key) == ""
        if entry.kind == brief_entries.VALUE:
            example = entry.example.removeprefix("such as ")
            assert example, entry.key
            assert brief_record.value_patch(entry.key, example, Brief())
