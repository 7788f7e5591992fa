"""Every figure and warning on every page, in many states of a job, has a text that explains it; keys and presses open it."""

import pytest
from balancing_jobs import balancing_job
from PySide6 import QtCore, QtTest, QtWidgets
from screen_faults import faults, small_targets, unseen_focus
from stillshaft.ui.desktop import why, why_texts
from stillshaft.ui.desktop.said import Said
from stillshaft.ui.desktop.settings import View
from stillshaft.ui.desktop.stages import Stage

KEY = QtCore.Qt.Key
STATES = (
    (2, {"until": "brief"}),
    (2, {"until": "initial"}),
    (2, {"until": "last trial on"}),
    (2, {"until": "check", "limit": 2.8}),
    (1, {"until": "check", "positions": 12}),
)


def unexplained(page):
    """Labels with a figure, warnings and pictures of a page that no text explains."""
    for widget in page.findChildren(QtWidgets.QWidget):
        if not widget.isVisible():
            continue
        text = widget.text() if isinstance(widget, QtWidgets.QLabel) and widget.buddy() is None else ""
        figure = any(letter.isdigit() for letter in text)
        if (figure or hasattr(widget, "texts") or isinstance(widget, Said)) and why.key_of(widget) is None:
            yield f"{page.stage.value}: {type(widget).__name__} {text}"


def walk(frame, wait, stages=tuple(Stage)):
    """What no text explains, on all pages with all their views; and the keys of the texts that were met."""
    left, keys = [], set()

    def look(page):
        wait(20)
        left.extend(unexplained(page))
        keys.update(key for key, _ in why.explained_in(page))

    for stage in stages:
        frame.open(stage)
        page = frame.pages[stage]
        look(page)
        for button in [b for b in page.findChildren(QtWidgets.QPushButton) if b.objectName() == "segment"]:
            if button.isVisible() and button.isEnabled() and "Yes" not in button.text():
                button.click()
                look(page)
    return left, keys


@pytest.mark.parametrize(("planes", "job"), STATES, ids=lambda value: str(value))
def test_nothing_on_any_page_is_left_unexplained(program, wait, wait_until, tmp_path, planes, job):
    balancing_job(tmp_path / "job", planes, **job).close()
    program.open_job(tmp_path / "job")
    wait_until(lambda: program.job.shown is not None and program.frame.pages[Stage.CLOSE_OUT].found is not None, 60.0)
    if job["until"] != "brief":
        wait_until(lambda: program.frame.pages[Stage.MASSES].known is not None, 60.0)
    left, keys = walk(program.frame, wait)
    assert left == []
    texts = why_texts.load()
    for key in keys:
        assert texts.why(key).source
    assert "brief" in keys
    if job["until"] == "check":
        assert {"correction", "residual", "vibration-limit", "run-vectors", "run-change", "expected"} <= keys


def test_nothing_is_left_unexplained_while_the_machine_runs(running, wait, wait_until):
    running.frame.open(Stage.HOOK_UP)
    running.feed.examine()
    wait_until(lambda: not running.feed.checking)
    left, keys = walk(running.frame, wait, (Stage.HOOK_UP, Stage.RUNS))
    assert left == []
    assert {"speed", "revolutions", "amplitude", "phase", "interval", "steadiness", "cloud", "ribbon"} <= keys
    assert {"input-level", "pulse", "check-pulse", "check-1x"} <= keys


def test_a_key_opens_it_and_escape_gives_the_focus_back(program, wait, qtbot):
    frame = program.frame
    frame.activateWindow()
    qtbot.waitUntil(frame.isActiveWindow)
    frame.open(Stage.HOOK_UP)
    button = frame.pages[Stage.HOOK_UP].start_stop
    button.setFocus()
    QtTest.QTest.keyClick(button, KEY.Key_F1)
    panel = frame.why_panel
    assert panel.isVisible()
    assert panel.accessibleName().startswith("Why: ")
    assert panel.accessibleDescription().endswith(panel.source.text())
    assert frame.focusWidget() is panel
    QtTest.QTest.keyClick(panel, KEY.Key_Escape)
    assert not panel.isVisible()
    assert frame.focusWidget() is button
    QtTest.QTest.keyClick(button, KEY.Key_F1, QtCore.Qt.KeyboardModifier.ShiftModifier)
    assert panel.isVisible()
    QtTest.QTest.keyClick(panel, KEY.Key_F1)  # the same key puts it away
    assert not panel.isVisible()


def test_it_stands_beside_and_work_goes_on(running, wait):
    frame = running.frame
    frame.open(Stage.RUNS)
    page, panel = frame.pages[Stage.RUNS], frame.why_panel
    wait(50)
    figure = page.watch.points[0].amplitude
    QtTest.QTest.mouseClick(figure, QtCore.Qt.MouseButton.LeftButton)
    assert panel.isVisible()
    assert panel.key == "amplitude"
    box = figure.rect().translated(figure.mapTo(frame, QtCore.QPoint()))
    assert not panel.geometry().intersects(box)
    assert frame.rect().contains(panel.geometry())
    QtTest.QTest.mouseClick(page.turn.buttons["Next run"], QtCore.Qt.MouseButton.LeftButton)
    assert page.turn.value == "Next run"
    assert panel.isVisible()
    frame.open(Stage.MASSES)
    assert not panel.isVisible()


def test_every_other_text_of_the_page_is_reached_from_the_panel(running, wait):
    frame = running.frame
    frame.open(Stage.RUNS)
    wait(50)
    frame.explain_button.click()
    panel = frame.why_panel
    titles = {key: why_texts.load().texts[key].title for key, _ in why.explained_in(frame.pages[Stage.RUNS])}
    assert len(titles) > 8
    for key, title in titles.items():
        panel.others.setCurrentText(title)
        panel.others.activated.emit(panel.others.currentIndex())
        assert panel.key == key
        assert panel.called.text() == title


@pytest.mark.parametrize("size", [(1400, 900), (1024, 700)])
def test_it_can_be_read_and_reached_in_every_dress(program, wait, size):
    frame = program.frame
    frame.resize(*size)
    frame.open(Stage.HOOK_UP)
    longest = max(why_texts.load().texts.values(), key=lambda text: len(text.plain) + len(text.rule)).key
    for theme, text_size in (("light", "normal"), ("dark", "large"), ("sunlight", "largest")):
        frame.set_view(View(theme=theme, text_size=text_size))
        wait(30)
        frame.why_panel.open_beside(frame.next_line.text, longest, ["next-line", "speed"])
        wait(30)
        assert faults(frame.why_panel) + small_targets(frame.why_panel) == [], (theme, text_size)
        assert frame.rect().contains(frame.why_panel.geometry())
        assert unseen_focus(frame.why_panel) == []
        frame.why_panel.put_away()
