"""The frame: stages by rail and keys, one sentence on what matters most, and the view that is remembered."""

import pytest
from PySide6 import QtCore, QtTest, QtWidgets
from stillshaft.ui.desktop import settings
from stillshaft.ui.desktop.frame import Frame
from stillshaft.ui.desktop.page import Page
from stillshaft.ui.desktop.settings import View
from stillshaft.ui.desktop.stages import Guide, Sentence, Stage, State, Weight, most_important

CONTROL, ALT = QtCore.Qt.KeyboardModifier.ControlModifier, QtCore.Qt.KeyboardModifier.AltModifier


class Told(Page):
    """A page that says what it is told to."""

    def __init__(self, stage, state=State.UNDER_WAY, said=None):
        super().__init__(stage)
        self.told_state, self.said, self.calls = state, said, []

    def state(self):
        return self.told_state

    def sentence(self):
        return self.said

    def set_theme(self, theme):
        self.calls.append(("theme", theme.name))

    def set_view(self, view):
        self.calls.append(("view", view))

    def enter(self):
        self.calls.append("enter")

    def leave(self):
        self.calls.append("leave")

    def close_down(self):
        self.calls.append("close")


@pytest.fixture
def made(dressed, qtbot, wait_until, tmp_path):
    """A frame with two pages of the test's own, and those pages."""
    frame = Frame(tmp_path / "view.toml")
    qtbot.addWidget(frame)
    pages = {s: Told(s) for s in (Stage.HOOK_UP, Stage.RUNS)}
    for stage, page in pages.items():
        frame.register(stage, lambda p=page: p)
    ready = []
    frame.ready.connect(lambda: ready.append(1))
    frame.show()
    wait_until(lambda: ready)
    frame.activateWindow()
    qtbot.waitUntil(frame.isActiveWindow)
    yield frame, pages
    frame.close()


def test_every_stage_has_a_page_and_a_state_in_words(made):
    frame, pages = made
    assert set(frame.pages) == set(Stage)
    for stage, button in frame.rail.buttons.items():
        expected = State.UNDER_WAY if stage in pages else State.EMPTY
        assert button.state is expected
        assert button.accessibleName() == f"{stage.value}: {expected.value}"
        assert button.accessibleDescription() == stage.purpose


def test_stages_open_by_key_and_by_press(made):
    frame, pages = made
    QtTest.QTest.keyClick(frame, QtCore.Qt.Key.Key_4, CONTROL)
    assert frame.open_stage is Stage.RUNS
    assert frame.stack.currentWidget().widget() is pages[Stage.RUNS]
    assert [s for s, b in frame.rail.buttons.items() if b.isChecked()] == [Stage.RUNS]
    button = frame.rail.buttons[Stage.HOOK_UP]
    button.setFocus()
    QtTest.QTest.keyClick(button, QtCore.Qt.Key.Key_Space)
    assert frame.open_stage is Stage.HOOK_UP
    assert pages[Stage.RUNS].calls[-2:] == ["enter", "leave"]
    QtTest.QTest.keyClick(button, QtCore.Qt.Key.Key_Space)  # again: it stays chosen
    assert button.isChecked()


def test_the_weightiest_sentence_is_shown_and_leads_there(made):
    frame, pages = made
    pages[Stage.HOOK_UP].said = Sentence("Input 2 is clipped.", Stage.HOOK_UP, Weight.STOP, "Hook-up")
    pages[Stage.RUNS].said = Sentence("The figures settle.", Stage.RUNS, action="Runs")
    pages[Stage.HOOK_UP].told_state = State.ATTENTION
    pages[Stage.RUNS].changed.emit()
    line = frame.next_line
    assert line.text.text() == "Input 2 is clipped."
    assert line.accessibleName() == "Stop: Input 2 is clipped."
    assert line.go.isVisible()
    assert frame.rail.buttons[Stage.HOOK_UP].state is State.ATTENTION
    QtTest.QTest.keyClick(frame, QtCore.Qt.Key.Key_G, ALT)
    QtWidgets.QApplication.processEvents()
    QtTest.QTest.qWait(150)  # a click by mnemonic shows the button pressed before it acts
    assert frame.open_stage is Stage.HOOK_UP
    assert not line.go.isVisible()


def test_what_was_refused_comes_before_all_but_a_stop(made):
    frame, pages = made
    pages[Stage.HOOK_UP].said = Sentence("A sensor is loose.", Stage.HOOK_UP, Weight.CAUTION)
    frame.open(Stage.HOOK_UP)
    frame.say("Entry 7 is not there.")
    assert frame.next_line.text.text() == "Entry 7 is not there."
    pages[Stage.RUNS].said = Sentence("Stop the machine.", Stage.RUNS, Weight.STOP)
    pages[Stage.RUNS].changed.emit()
    assert frame.next_line.text.text() == "Stop the machine."
    pages[Stage.RUNS].said = None
    frame.say("")
    assert frame.next_line.text.text() == "A sensor is loose."


def test_what_comes_first_does_so_on_every_page_and_gives_the_guidance_back(made):
    frame, pages = made
    advice = Sentence("Weigh the trial mass.", Stage.MASSES, action="Masses")
    frame.set_guide(Guide(advice, dict.fromkeys(Stage, State.EMPTY)))
    pages[Stage.RUNS].said = lost = Sentence("The input is silent.", Stage.HOOK_UP, Weight.CAUTION, first=True)
    for stage in Stage:
        frame.open(stage)
        assert frame.next_line.shown == lost
    pages[Stage.RUNS].said = Sentence("The input is silent.", Stage.HOOK_UP, Weight.CAUTION)
    frame.open(Stage.MASSES)
    assert frame.next_line.shown == advice
    assert frame.next_line.why.isVisible()


def test_the_next_line_is_true_before_anything_is_known(made):
    frame, pages = made
    line = frame.next_line
    assert line.text.text() == "Choose a stage on the left."
    height = line.height()
    pages[Stage.HOOK_UP].said = Sentence("Signals come in.", Stage.HOOK_UP, action="Hook-up")
    pages[Stage.HOOK_UP].told_state = State.DONE
    frame.await_guide()
    assert line.text.text() == "What comes next is being worked out."
    assert not line.go.isVisible()
    assert frame.rail.buttons[Stage.HOOK_UP].state is State.UNDER_WAY  # as before, until it is known
    pages[Stage.RUNS].said = Sentence("Stop the machine.", Stage.RUNS, Weight.STOP, "Runs")
    pages[Stage.RUNS].changed.emit()
    assert line.text.text() == "Stop the machine."
    pages[Stage.RUNS].said = None
    states = dict.fromkeys(Stage, State.DONE)
    frame.set_guide(Guide(Sentence("Take the first run.", Stage.RUNS, action="Runs"), states))
    assert line.text.text() == "Take the first run."
    assert line.go.isVisible()
    assert frame.rail.buttons[Stage.HOOK_UP].state is State.DONE
    assert line.height() == height  # with a button or without one
    frame.await_guide()
    frame.say("what is next cannot be told")
    assert line.text.text() == "what is next cannot be told"
    frame.say("")
    assert line.text.text() == "Signals come in."


def test_pages_that_are_not_there_yet_are_said_to_be_loaded(dressed, qtbot):
    frame = Frame(None)
    qtbot.addWidget(frame)
    assert frame.next_line.text.text() == "The pages are being loaded."


def test_among_equals_the_later_stage_speaks():
    said = [Sentence("a", s) for s in (Stage.RUNS, Stage.BRIEF, Stage.INSPECT)]
    assert most_important(said).stage is Stage.RUNS
    assert most_important([*said, Sentence("b", Stage.BRIEF, Weight.CAUTION)]).text == "b"
    assert most_important([]) is None


def test_the_view_is_chosen_told_and_remembered(made, dressed, qtbot, tmp_path):
    frame, pages = made
    frame.open(Stage.RUNS)
    frame.view_button.click()
    assert frame.panel.isVisible()
    for field, word in (("theme", "dark"), ("text_size", "large"), ("seen_from", "other end"), ("unit", "µm p-p")):
        frame.panel.choices[field].buttons[word].click()
    expected = View("µm p-p", "against rotation", "other end", "dark", "large")
    assert frame.view == expected
    assert pages[Stage.RUNS].calls[-1] == ("view", expected)
    assert ("theme", "dark") in pages[Stage.RUNS].calls
    again = Frame(tmp_path / "view.toml")
    qtbot.addWidget(again)
    assert again.view == expected
    assert again.panel.choices["theme"].value == "dark"


def test_the_view_panel_is_used_and_left_by_keys(made):
    frame, _ = made
    QtTest.QTest.keyClick(frame, QtCore.Qt.Key.Key_V, ALT)
    QtTest.QTest.qWait(150)
    assert frame.panel.isVisible()
    assert frame.panel.isAncestorOf(QtWidgets.QApplication.focusWidget())
    QtTest.QTest.keyClick(QtWidgets.QApplication.focusWidget(), QtCore.Qt.Key.Key_Tab)
    QtTest.QTest.keyClick(QtWidgets.QApplication.focusWidget(), QtCore.Qt.Key.Key_Space)
    assert frame.view.unit == settings.UNITS[1]
    QtTest.QTest.keyClick(QtWidgets.QApplication.focusWidget(), QtCore.Qt.Key.Key_Escape)
    assert not frame.panel.isVisible()
    assert QtWidgets.QApplication.focusWidget() is frame.view_button


def test_a_click_beside_the_view_panel_only_puts_it_away(made):
    frame, _ = made
    frame.show_view()
    button = frame.rail.buttons[Stage.CLOSE_OUT]
    place = button.mapTo(frame, button.rect().center())
    left, none = QtCore.Qt.MouseButton.LeftButton, QtCore.Qt.KeyboardModifier.NoModifier
    QtTest.QTest.mouseClick(frame.windowHandle(), left, none, place)
    assert not frame.panel.isVisible()
    assert frame.open_stage is Stage.BRIEF
    QtTest.QTest.mouseClick(frame.windowHandle(), left, none, place)
    assert frame.open_stage is Stage.CLOSE_OUT


def test_a_broken_settings_file_is_said_in_the_next_line(dressed, qtbot, wait_until, tmp_path):
    (tmp_path / "view.toml").write_text("theme = ")
    frame = Frame(tmp_path / "view.toml")
    qtbot.addWidget(frame)
    ready = []
    frame.ready.connect(lambda: ready.append(1))
    frame.show()
    wait_until(lambda: ready)
    assert "is damaged" in frame.next_line.text.text()
    frame.set_view(View(theme="dark"))
    assert "damaged" not in frame.next_line.text.text()
    frame.close()


def test_what_cannot_be_loaded_is_said_and_the_window_stays(dressed, qtbot, wait_until):
    def prepare():
        raise OSError("libsomething.so: not found")

    frame = Frame(None, prepare)
    qtbot.addWidget(frame)
    ready = []
    frame.ready.connect(lambda: ready.append(1))
    frame.show()
    wait_until(lambda: ready)
    assert "libsomething" in frame.next_line.text.text()
    frame.close()


def test_closing_tells_every_page(made):
    frame, pages = made
    frame.close()
    assert all(p.calls[-1] == "close" for p in pages.values())
