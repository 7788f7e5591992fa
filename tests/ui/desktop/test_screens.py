"""Every page as it is seen: nothing cut, covered, faint, nameless or out of reach, in all themes, text and window sizes."""

import os
import shutil
import subprocess
import sys

import pytest
from screen_faults import faint, faults, keep_picture, small_targets, unseen_focus
from stillshaft.ui.desktop.feed import Status
from stillshaft.ui.desktop.settings import CHOICES, View
from stillshaft.ui.desktop.stages import Stage

pytestmark = pytest.mark.timeout(900)  # every page in all looks on a busy machine
OTHERS = ("test_pages", "test_frame", "test_hookup_page", "test_runs_page")  # with what is tried on an X server too


@pytest.fixture
def still(running, wait_until):
    """A source that has run, was checked, and was stopped: what moves cannot be compared."""
    running.frame.open(Stage.HOOK_UP)
    running.feed.examine()
    wait_until(lambda: not running.feed.checking)
    running.feed.stop()
    wait_until(lambda: running.feed.status is Status.STOPPED)
    return running


@pytest.mark.parametrize("size", [pytest.param((1400, 900), marks=pytest.mark.long), (1024, 700)])
def test_every_page_can_be_read_reached_and_heard(still, wait, size):
    frame = still.frame
    frame.resize(*size)
    hookup, runs = frame.pages[Stage.HOOK_UP], frame.pages[Stage.RUNS]
    shown = [(stage, "", lambda: None) for stage in Stage]
    shown.append((Stage.HOOK_UP, "simulated rotor", lambda: hookup.turn.buttons["Simulated rotor"].click()))
    shown.append((Stage.RUNS, "spectrum", lambda: runs.watch.turn_waveform.click()))
    for text_size in CHOICES["text_size"]:
        for theme in ("light", "dark", "sunlight"):
            frame.set_view(View(theme=theme, text_size=text_size))
            for stage, what, then in shown:
                frame.open(stage)
                then()
                wait(30)
                keep_picture(frame, "no job", what)
                area = frame.stack.currentWidget().verticalScrollBar()
                # sunlight has the thickest borders: what fits there fits in the other themes
                found = faults(frame) + small_targets(frame) if theme == "sunlight" else []
                for place in sorted({0, area.maximum() // 2, area.maximum()}):
                    area.setValue(place)
                    found += faint(frame)
                assert found == [], (text_size, theme, stage)
                area.setValue(0)
            hookup.turn.buttons["Rotor face"].click()
            runs.watch.turn_spectrum.click()
            frame.show_view()
            wait(30)
            found = faults(frame.panel) if theme == "sunlight" else faint(frame.panel)
            assert found == [], (text_size, theme, "view")
            frame.panel.put_away()
    for stage in (Stage.HOOK_UP, Stage.RUNS):
        frame.open(stage)
        assert unseen_focus(frame) == []


@pytest.mark.long
@pytest.mark.skipif(shutil.which("Xvfb") is None, reason="needs Xvfb: apt-get install xvfb")
@pytest.mark.skipif("STILLSHAFT_ON_X" in os.environ, reason="this is what runs there")
def test_the_same_on_an_x_server(x_server):
    files = [__file__, *(__file__.replace("test_screens", other) for other in OTHERS)]
    chosen = "size1 or keys_alone or figures_are or view_panel_is_used"
    done = subprocess.run(
        [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", *files, "-k", chosen],
        env=x_server, capture_output=True, text=True, check=False, timeout=1200,
    )  # fmt: skip
    assert done.returncode == 0, done.stdout + done.stderr
    assert "8 passed" in done.stdout
