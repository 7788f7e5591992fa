"""Opens the window: first the frame, then what is heavy on a thread, then the pages."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6 import QtWidgets
from stillshaft.ui.desktop import look, settings
from stillshaft.ui.desktop.frame import Frame
from stillshaft.ui.desktop.page import Page
from stillshaft.ui.desktop.stages import Stage

if TYPE_CHECKING:
    from stillshaft.ui.desktop.feed import Feed


def prepare() -> None:
    """Load what the pages are made of: called on a thread, while the window is on the screen already."""
    import scipy.interpolate  # noqa: F401 - of the waveform: loaded while it runs, it would make the screen wait
    import stillshaft.ui.desktop.hookup_page
    import stillshaft.ui.desktop.runs_page  # noqa: F401


class Program:
    """The window and the source that its pages share."""

    def __init__(self, settings_file: Path | None, *, real_time: bool = True, seed: int = 1) -> None:
        self._real_time, self._seed = real_time, seed
        self._feed: Feed | None = None
        self.frame = Frame(settings_file, prepare, Stage.HOOK_UP)
        self.frame.register(Stage.HOOK_UP, self._hookup_page)
        self.frame.register(Stage.RUNS, self._runs_page)

    @property
    def feed(self) -> Feed:
        """The source."""
        from stillshaft.ui.desktop.feed import Feed

        if self._feed is None:
            self._feed = Feed(self.frame, real_time=self._real_time, seed=self._seed)
        return self._feed

    def _hookup_page(self) -> Page:
        from stillshaft.ui.desktop.hookup_page import HookupPage

        return HookupPage(self.feed)

    def _runs_page(self) -> Page:
        from stillshaft.ui.desktop.runs_page import RunsPage

        return RunsPage(self.feed)


def run() -> int:
    """Open the window and stay until it is closed; exit status."""
    sys.setswitchinterval(0.0005)  # the measuring thread must get its turn while the screen works
    application = QtWidgets.QApplication.instance() or QtWidgets.QApplication(["stillshaft"])
    assert isinstance(application, QtWidgets.QApplication)
    look.prepare(application)
    program = Program(settings.usual_path())
    program.frame.show()
    return int(application.exec())
