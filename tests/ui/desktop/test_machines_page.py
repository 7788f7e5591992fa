"""Machines of a folder of jobs in a real window: list, search, trends, two jobs side by side, open, next visit."""

import time

import pytest
from job_folders import run, vector, write_lines
from PySide6 import QtCore, QtTest, QtWidgets
from screen_faults import faint, faults, small_targets, text_of
from stillshaft.ui import library
from stillshaft.ui.desktop import look, machines_text, words
from stillshaft.ui.desktop.machines_page import MachinesPage
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.parts import Scrolled
from stillshaft.ui.desktop.worded import reword_all
from stillshaft.ui.theme import THEMES

NEAR, FAR = "drive end horizontal", "far end horizontal"


def make(folder, machine, day, before, after, *, verdict="met", closed=True, place="hall 3", program="0.1.0"):
    """A closed job with an initial run and a last one at two points."""
    events = [
        {"kind": "started", "name": f"{machine} of {day}", "program": program},
        {"kind": "brief", "machine": {"name": machine, "place": place}},
        {"kind": "run", **run("initial", vector(NEAR, before), vector(FAR, 0.6 * before), purpose="initial")},
        {"kind": "run", **run("check", vector(NEAR, after), vector(FAR, 0.5 * after))},
        {"kind": "verdict", "verdict": verdict, "basis": "G6.3"},
    ]
    return write_lines(folder, events + [{"kind": "closed"}] * closed, day=day)


@pytest.fixture
def jobs(tmp_path):
    room = tmp_path / "jobs"
    make(room / "a" / "first", "fan 3", 2, 8.0, 1.0)
    make(room / "a" / "second", "fan 3", 9, 4.0, 2.0)
    make(room / "a" / "third", "fan 3", 25, 6.0, 3.0, verdict="not met", closed=False)
    make(room / "pump", "pump 7", 5, 3.0, 1.0, verdict="cannot be told", place="cellar")
    (room / "broken").mkdir()
    (room / "broken" / "job.jsonl").write_text("nonsense\n")
    return room


class Window:
    """A window with the page alone, as a frame scrolls it."""

    def __init__(self, folder, wait_until, size=(1200, 840), index=lambda _folder: None):
        self.wait_until = wait_until
        self.job = OpenJob()
        self.page = MachinesPage(self.job, folder, lambda: "Kim", index)
        self.frame = QtWidgets.QMainWindow()
        self.area = Scrolled(self.page, "Machines")
        self.area.room.connect(lambda width: self.page.set_room(width, self.body_px))
        self.frame.setCentralWidget(self.area)
        self.frame.setMinimumSize(1, 1)
        self.dress("light", 14)
        self.frame.resize(*size)
        self.frame.show()
        self.page.enter()
        self.listed()

    def dress(self, theme, body_px):
        self.body_px = body_px
        self.frame.setPalette(look.palette(THEMES[theme]))
        self.frame.setStyleSheet(look.style_sheet(THEMES[theme], body_px))
        self.page.set_theme(THEMES[theme])
        self.page.set_room(self.area.viewport().width(), body_px)

    def listed(self):
        self.wait_until(lambda: not self.page.reading, 60.0)

    @property
    def titles(self):
        return [r.title for r in self.page.list.rows]

    def search(self, text):
        self.page.search.line.setText(text)
        self.wait_until(lambda: not self.page._typing.isActive() and not self.page.reading)

    def close(self):
        self.page.close_down()
        self.job.close()
        self.frame.close()
        self.frame.deleteLater()
        QtWidgets.QApplication.sendPostedEvents(None, QtCore.QEvent.Type.DeferredDelete)


@pytest.fixture
def window(dressed, wait_until, jobs):
    made = Window(jobs, wait_until)
    yield made
    made.close()


def test_machines_with_their_last_vibration_and_what_was_passed_over(window):
    page = window.page
    assert window.titles == ["fan 3", "pump 7"]
    fan = page.list.rows[0]
    assert (
        fan.said.replace("\u00a0", " ").replace("\u2060", "")
        == f"2026-03-25, 3 jobs, not met\n{NEAR} 3.00 ± 0.05 mm/s rms"
    )
    assert "2 machines, 4 jobs" in page.status.text()
    assert "broken" in page.remark.text.text()
    assert page.called.text() == "fan 3"
    assert "hall 3" in page.about.text()
    assert [r.title for r in page.job_list.rows] == ["fan 3 of 25", "fan 3 of 9", "fan 3 of 2"]
    assert page.job_list.rows[0].word == "2026-03-25, 2 of 2 runs count, open, not met"


def test_search_keeps_what_has_all_words(window):
    window.search("cellar PUMP")
    assert window.titles == ["pump 7"]
    assert window.page.called.text() == "pump 7"
    window.search("nothing like it")
    assert window.titles == []
    assert window.page.work.isHidden()
    assert "No machine to show" in window.page.status.text()
    window.search("")
    assert window.titles == ["fan 3", "pump 7"]
    assert not window.page.work.isHidden()


@pytest.mark.parametrize(
    ("percent", "half", "shown"),
    [(37.4, 8.0, "+37 ± 8 %"), (-99.6, 0.4, "−99.6 ± 0.4 %"), (38001.0, 46566.0, "381 ± 466 times as much")],
)
def test_a_large_change_is_told_in_times(percent, half, shown):
    change = library.Change(percent, half, None)
    assert machines_text.change_text(change).replace("\u00a0", " ") == shown


def test_trends_are_those_of_the_library(window, jobs):
    page = window.page
    page.turn.buttons["Trend"].click()
    machine = library.find_machine(library.list_machines(jobs), "fan 3")
    assert [p.accessibleName() for p in page.plots] == [f"Trend of {t.point}" for t in library.trend(machine)]
    said = page.plots[0].summary
    assert said == (
        "2026-03-02 fan 3 of 2: 8, then 1 mm/s rms; 2026-03-09 fan 3 of 9: 4, then 2 mm/s rms; "
        "2026-03-25 fan 3 of 25: 6, then 3 mm/s rms"
    )
    frame = page.plots[0].frame_now()
    assert frame.y_low == 0.0
    assert frame.y_high >= 8.05
    assert page.plots[0].x_text(7.0) == "2026-03-09"
    page.plots[0].grab()
    dates = [text for text, _ in page.plots[0].texts if text.startswith("2026")]
    assert len(dates) == len(set(dates)) > 2  # whole days, each once
    page.list.choose("pump 7")
    assert page.plots[0].summary.startswith("2026-03-05")


def test_two_jobs_side_by_side(window, wait):
    page = window.page
    page.turn.buttons["Two side by side"].click()
    assert [f.text for f in page.pair] == ["2026-03-09, fan 3 of 9", "2026-03-25, fan 3 of 25"]
    said = [
        label.text().replace("\u00a0", " ").replace("\u2060", "")
        for label in page.compare.findChildren(QtWidgets.QLabel)
    ]
    # from 2 to 3 mm/s: +50 %; both runs' 0.05 mm/s and 2 % from run to run on each (1.96 deviations), to first order:
    # hypot(hypot(0.05, 0.0392·3), 1.5·hypot(0.05, 0.0392·2)) / 2 = 9.5 %
    assert said[said.index(NEAR) + 1] == "+50 ± 9 % from last run to last run"
    assert "First run 4.00 ± 0.05 mm/s rms\nLast run 2.00 ± 0.05 mm/s rms\nChange −50 ± 3 %" in said
    page.pair[0].pick.setCurrentIndex(page.pair[0].words.index("2026-03-02, fan 3 of 2"))
    page.pair[0].pick.activated.emit(0)
    said = [
        label.text().replace("\u00a0", " ").replace("\u2060", "")
        for label in page._grid_holder.findChildren(QtWidgets.QLabel)
    ]
    assert any(text.startswith("+200 ± ") for text in said)
    page.pair[0].pick.setCurrentIndex(page.pair[0].words.index("2026-03-25, fan 3 of 25"))
    page.pair[0].pick.activated.emit(0)
    wait(30)
    shown = [w.text() for w in page._grid_holder.findChildren(QtWidgets.QLabel) if not w.isHidden()]
    assert shown == ["Choose two jobs."]
    page.list.choose("pump 7")
    wait(30)
    shown = [w.text() for w in page._grid_holder.findChildren(QtWidgets.QLabel) if not w.isHidden()]
    assert shown == ["Only one job: nothing to hold it against."]


def test_names_that_people_gave_stay_in_german(dressed, wait_until, tmp_path):
    """Machine, jobs, point and places are called as words of the catalogue are; what is said of them is German."""
    for day, place in ((2, "Brief"), (9, "Inspect")):
        events = [
            {"kind": "started", "name": f"Masses {day}", "program": "0.1.0"},
            {"kind": "brief", "machine": {"name": "Runs", "place": place, "serial": "Stop"}},
            {"kind": "run", **run("initial", vector("mark", 8.0), purpose="initial")},
            {"kind": "run", **run("check", vector("mark", 2.0))},
        ]
        write_lines(tmp_path / "jobs" / str(day), events, day=day)
    words.speak("Deutsch")
    made = Window(tmp_path / "jobs", wait_until)
    made.listed()
    page, role = made.page, QtCore.Qt.ItemDataRole
    assert text_of(page.called) == "Runs"
    assert "\nmark 2.00" in page.list.rows[0].said.replace("\u00a0", " ")
    about = text_of(page.about).split("\n")
    assert about[0] == "Ort: Inspect; Seriennummer: Stop"
    assert "(Brief, Inspect)" in about[1]
    assert "its jobs" not in about[1]
    model = page.job_list.model()
    assert [model.data(model.index(n), role.DisplayRole)[:8] for n in range(2)] == ["Masses 9", "Masses 2"]
    page.turn.buttons["Trend"].click()
    plot = page.plots[0]
    assert QtWidgets.QWidget.accessibleName(plot) == "Trend von mark"
    told = QtWidgets.QWidget.accessibleDescription(plot)
    assert "Masses 2: 8, dann 2 mm/s rms" in told
    plot.grab()
    assert "mark, mm/s rms" in [text for text, _ in plot.texts]
    words.speak("English")
    reword_all(page)
    assert text_of(page.about).startswith("Place: Inspect; Serial: Stop")
    assert QtWidgets.QWidget.accessibleName(plot) == "Trend of mark"
    made.close()


def test_jobs_of_one_name_on_one_day_are_told_apart(dressed, wait_until, tmp_path):
    for name, program in (("x", "0.1.0"), ("y", "0.1.1")):
        make(tmp_path / name, "fan 3", 2, 8.0, 1.0, program=program)
    made = Window(tmp_path, wait_until)
    made.page.turn.buttons["Two side by side"].click()
    assert {f.text for f in made.page.pair} == {"2026-03-02, fan 3 of 2 (x)", "2026-03-02, fan 3 of 2 (y)"}
    made.close()


def test_points_that_one_job_lacks_are_said(tmp_path, jobs):
    write_lines(
        jobs / "a" / "fourth",
        [{"kind": "started", "name": "job", "program": "0.1.0"}, {"kind": "brief", "machine": {"name": "fan 3"}},
         {"kind": "run", **run("only", vector(NEAR, 2.0))}],
        day=27,
    )  # fmt: skip
    machine = library.find_machine(library.list_machines(jobs), "fan 3")
    found = machines_text.compared(machine, str(jobs / "a" / "third"), str(jobs / "a" / "fourth"))
    by_point = {c.point: c for c in found}
    assert by_point[FAR].other is None
    assert by_point[FAR].change == "not in both"
    assert by_point[NEAR].other.change == "one run only"


def test_a_job_is_opened_from_the_list(window, jobs):
    begun = []
    window.page.begun.connect(lambda: begun.append(True))
    window.page.job_list.choose(str(jobs / "a" / "second"))
    window.page.open.click()
    window.wait_until(lambda: begun)
    assert window.job.shown.folder == jobs / "a" / "second"
    assert window.job.shown.by == "Kim"


def test_the_next_visit_takes_the_brief_over(window, jobs):
    begun = []
    window.page.begun.connect(lambda: begun.append(True))
    window.page.visit.click()
    window.wait_until(lambda: begun)
    shown = window.job.shown
    assert shown.folder.parent == jobs / "a"
    assert shown.folder.name.startswith("fan 3 20")
    assert shown.state.brief.machine.name == "fan 3"
    assert shown.state.runs == ()
    assert shown.state.measured[0].what.what == "taken over"
    window.page.visit.click()
    window.wait_until(lambda: len(begun) == 2)
    assert window.job.shown.folder.name.endswith(" 2")


def test_a_job_that_is_in_use_is_refused_in_words(window, jobs, wait_until):
    other = OpenJob()
    other.open(jobs / "a" / "third", "Lee")
    wait_until(lambda: other.shown is not None)
    window.page.open.click()
    window.wait_until(lambda: not window.job.busy)
    assert not window.page.remark.isHidden()
    assert "third" in window.page.remark.text.text()
    assert window.job.shown is None
    other.close()


def test_a_folder_that_is_not_there_is_an_empty_list(dressed, wait_until, tmp_path):
    made = Window(tmp_path / "none", wait_until)
    assert "No machine to show" in made.page.status.text()
    assert made.page.remark.isHidden()
    made.close()


def test_what_was_read_is_remembered_where_it_is_said(dressed, wait_until, jobs, tmp_path):
    asked = []

    def index(folder):
        asked.append(folder)
        return tmp_path / "index.json"

    Window(jobs, wait_until, index=index).close()
    assert asked == [jobs]


def test_thousands_of_jobs_never_hold_the_screen(dressed, wait_until, tmp_path, never_held):
    """The window's own thread is busy for less than 0.1 s at a time while 1500 jobs are read, listed and searched."""
    for number in range(1500):
        make(tmp_path / f"{number // 100}" / f"{number}", f"pump {number:04d}", 1 + number % 28, 3.0, 1.0)
    made = Window(tmp_path / "none", wait_until)
    with never_held():
        made.page.folder = tmp_path
        made.page.read()
        made.listed()
        assert "search for others" in made.page.status.text()
        assert len(made.titles) == machines_text.MOST_ROWS
        made.search("pump 1499")
        assert made.titles == ["pump 1499"]
    made.close()


def test_closing_breaks_off_reading(dressed, wait_until, tmp_path):
    for number in range(400):
        make(tmp_path / f"{number}", f"pump {number:04d}", 1 + number % 28, 3.0, 1.0)
    made = Window(tmp_path / "none", wait_until)
    made.page.folder = tmp_path
    made.page.read()
    began = time.monotonic()
    made.close()
    assert time.monotonic() - began < 4.0


def test_arrow_keys_go_through_the_machines(window):
    window.page.list.setFocus()
    QtTest.QTest.keyClick(window.page.list, QtCore.Qt.Key.Key_Down)
    assert window.page.called.text() == "pump 7"
    spoken = window.page.list.model().data(window.page.list.currentIndex(), QtCore.Qt.ItemDataRole.AccessibleTextRole)
    assert spoken.startswith("pump 7: 2026-03-05")


@pytest.mark.parametrize("size", [(1210, 840), (840, 640)])
def test_it_can_be_read_reached_and_heard(window, wait, size):
    window.frame.resize(*size)
    for theme, body_px in (("light", 14), ("dark", 16), ("sunlight", 19)):
        window.dress(theme, body_px)
        for what in ("Jobs", "Trend", "Two side by side"):
            window.page.turn.buttons[what].click()
            for _ in range(20):
                wait(20)
                found = faults(window.frame) + small_targets(window.frame) + faint(window.frame)
                if not found:
                    break
            assert found == [], (theme, what)
