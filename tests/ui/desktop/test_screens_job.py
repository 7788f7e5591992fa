"""Every page with a two-plane job as it is seen, open and closed: nothing cut, covered, faint, nameless, out of reach."""

import pytest
from balancing_jobs import balancing_job
from screen_faults import faint, faults, keep_picture, small_targets
from stillshaft.ui.desktop.settings import View
from stillshaft.ui.desktop.stages import Stage

pytestmark = pytest.mark.timeout(900)  # every page on a busy machine
SMALL, WIDE, LONG = (1024, 700), (1400, 900), pytest.mark.long


def middle(folder):
    """The last trial mass is on, and its run is taken."""
    balancing_job(folder, 2, until="last trial on", limit=2.0).close()


def closed(folder):
    """Judged, accepted and closed; some positions take no mass."""
    with balancing_job(folder, 2, until="check", limit=2.0) as session:
        session.judge()
        session.finish("done", accepted_by="the owner")


def views(frame):
    """(stage, what is chosen there, the act that shows it) of all there is to see."""
    for stage in Stage:
        turn = getattr(frame.pages[stage], "turn", None)
        if turn is None:
            yield stage, "", lambda: None
        for word, button in () if turn is None else turn.buttons.items():
            yield stage, word, button.click


@pytest.mark.parametrize(
    ("job", "size", "view"),
    [
        (middle, SMALL, View(theme="sunlight", text_size="largest", unit="in/s peak")),
        pytest.param(
            middle, SMALL, View(theme="sunlight", text_size="normal", language="Deutsch", unit="mil p-p"), marks=LONG
        ),
        pytest.param(middle, WIDE, View(theme="dark", text_size="normal", unit="in/s peak"), marks=LONG),
        (middle, WIDE, View(theme="light", text_size="normal", language="Deutsch")),
        (closed, SMALL, View(theme="sunlight", text_size="largest", language="Deutsch")),
        pytest.param(closed, WIDE, View(theme="sunlight", text_size="large", unit="µm p-p"), marks=LONG),
    ],
)
def test_every_page_with_a_job_can_be_read_reached_and_heard(program, wait, wait_until, tmp_path, job, size, view):
    frame = program.frame
    job(tmp_path / "jobs" / "job")
    program.open_job(tmp_path / "jobs" / "job")
    wait_until(lambda: program.job.shown is not None and program.job.guided is not None)
    frame.resize(*size)
    frame.set_view(view)

    def found():
        # sunlight has the thickest borders: what fits there fits in the other themes
        return faults(frame) + small_targets(frame) if view.theme == "sunlight" else faint(frame)

    for stage, word, show in views(frame):
        frame.open(stage)
        show()
        wait(50)
        wait_until(lambda: not program.job.busy)
        for _ in range(10):  # what is worked out on a thread comes later, and is laid out then
            if not found():
                break
            wait(200)
        keep_picture(frame, job.__name__, word)
        seen = found()
        area = frame.stack.currentWidget().verticalScrollBar()
        for place in sorted({area.maximum() // 2, area.maximum()}):
            area.setValue(place)
            seen += faint(frame)
        area.setValue(0)
        assert seen == [], (stage, word)
