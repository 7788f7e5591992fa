"""Opens the window: first the frame, then what is heavy on a thread, then the pages."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui.desktop import look, recent, settings, words
from stillshaft.ui.desktop.frame import Frame
from stillshaft.ui.desktop.garbage import Garbage
from stillshaft.ui.desktop.page import Page
from stillshaft.ui.desktop.stages import Guide, Sentence, Stage, State
from stillshaft.ui.desktop.tasks import Tasks
from stillshaft.ui.desktop.tour_practice import Practice

if TYPE_CHECKING:
    from stillshaft.ui.desktop.feed import Feed
    from stillshaft.ui.desktop.open_job import OpenJob, Shown

_ASK_AGAIN_MS = 30_000  # what is advised may hang on the time


def prepare() -> None:
    """Load what the pages are made of: called on a thread, while the window is on the screen already."""
    import scipy.interpolate  # noqa: F401 - of the waveform: loaded while it runs, it would make the screen wait
    import stillshaft.solver.correction
    import stillshaft.solver.guidance
    import stillshaft.ui.desktop.brief_page
    import stillshaft.ui.desktop.closeout_page
    import stillshaft.ui.desktop.hookup_page
    import stillshaft.ui.desktop.inspect_page
    import stillshaft.ui.desktop.masses_page
    import stillshaft.ui.desktop.runs_page  # noqa: F401
    from stillshaft.solver import limit_tables

    limit_tables.built_in()  # with the units in them, which take a while to load


class Program:
    """The window, and the job and the source that its pages share.

    `room` is the folder that new jobs go into, None: the usual one; `index` says where the list of machines is remembered,
    None: where it usually is; `usual` is how things are shown as long as nothing is remembered. `practice` is the folder
    for the tour and the lessons, None: the usual one; `offers`: the tour is offered at the first start of all.
    """

    def __init__(
        self,
        settings_file: Path | None,
        *,
        real_time: bool = True,
        seed: int = 1,
        room: Path | None = None,
        index: Callable[[Path], Path | None] | None = None,
        usual: settings.View = settings.View(),
        practice: Path | None = None,
        offers: bool = False,
    ) -> None:
        self._real_time, self._seed = real_time, seed
        self._room, self._index = room, index
        self._feed: Feed | None = None
        self._job: OpenJob | None = None
        self._folder: Path | None = None
        self._recent = None if settings_file is None else recent.path_beside(settings_file)
        self.frame = Frame(settings_file, prepare, Stage.BRIEF, usual)
        self._tasks = Tasks(self.frame)
        self._garbage = Garbage(self.frame)
        self.practice = Practice(self, self.frame.coach, practice)
        self._offers = offers and settings_file is not None and not settings_file.exists()
        for stage, build in {
            Stage.BRIEF: self._brief_page, Stage.INSPECT: self._inspect_page, Stage.HOOK_UP: self._hookup_page,
            Stage.RUNS: self._runs_page, Stage.MASSES: self._masses_page, Stage.CLOSE_OUT: self._closeout_page,
        }.items():  # fmt: skip
            self.frame.register(stage, build)
        panel, advice = self.frame.job_panel, self.frame.advice_panel
        panel.wanted_new.connect(self.new_job)
        panel.wanted_other.connect(self.ask_job)
        panel.wanted.connect(self.open_job)
        panel.practised.connect(self.practice.begin)
        advice.passed.connect(lambda why: self.job.act(lambda s: s.skip_advice(why), None, self.refuse))
        advice.stopped.connect(lambda why: self.job.act(lambda s: s.stop_balancing(why), None, self.refuse))
        self.frame.undo.activated.connect(lambda: self.job.act(lambda s: s.undo(), None, self.refuse))
        self.frame.redo.activated.connect(lambda: self.job.act(lambda s: s.redo(), None, self.refuse))
        for keys, act in (("Ctrl+N", self.new_job), ("Ctrl+O", self.ask_job)):
            QtGui.QShortcut(QtGui.QKeySequence(keys), self.frame).activated.connect(act)
        self.frame.ready.connect(self._ready)
        self.frame.ready.connect(self._garbage.spare)
        self.frame.closed.connect(self._close)

    # what all pages share

    @property
    def feed(self) -> Feed:
        """The source."""
        from stillshaft.ui.desktop.feed import Feed

        if self._feed is None:
            self._feed = Feed(self.frame, real_time=self._real_time, seed=self._seed)
        return self._feed

    @property
    def job(self) -> OpenJob:
        """The job that is open, or none."""
        from stillshaft.ui.desktop.open_job import OpenJob

        if self._job is None:
            self._job = OpenJob(self.frame)
            self._job.changed.connect(self._show_job)
            self._job.advised.connect(self._advise)
            self._job.refused.connect(self.refuse)
        return self._job

    # pages

    def _brief_page(self) -> Page:
        from stillshaft.ui import library
        from stillshaft.ui.desktop.brief_page import BriefPage

        return BriefPage(self.job, self._room, self._index or library.default_index)

    def _inspect_page(self) -> Page:
        from stillshaft.ui.desktop.inspect_page import InspectPage

        page = InspectPage(self.job, self.feed, real_time=self._real_time)
        page.opened.connect(self.frame.open)
        return page

    def _hookup_page(self) -> Page:
        from stillshaft.ui.desktop.hookup_page import HookupPage

        return HookupPage(self.feed, self.job, real_time=self._real_time)

    def _runs_page(self) -> Page:
        from stillshaft.ui.desktop.runs_page import RunsPage

        page = RunsPage(self.feed, self.job, real_time=self._real_time)
        page.abort.crossed.connect(self.frame.stop_call.say)

        def stands() -> None:
            page.abort.forget()
            self.feed.stop()

        self.frame.stop_call.stands.connect(stands)
        return page

    def _masses_page(self) -> Page:
        from stillshaft.ui.desktop.masses_page import MassesPage

        page = MassesPage(self.job)
        page.opened.connect(self.frame.open)
        return page

    def _closeout_page(self) -> Page:
        from stillshaft.ui.desktop.closeout_page import CloseOutPage

        return CloseOutPage(self.job)

    # jobs

    @property
    def by(self) -> str:
        """Who works here, as the Brief page has it."""
        from stillshaft.ui.desktop.brief_page import BriefPage

        page = self.frame.pages.get(Stage.BRIEF)
        return page.start.by if isinstance(page, BriefPage) else ""

    def new_job(self) -> None:
        """Go to where a job is begun."""
        from stillshaft.ui.desktop.brief_page import BriefPage

        self.frame.open(Stage.BRIEF)
        page = self.frame.pages.get(Stage.BRIEF)
        if isinstance(page, BriefPage):
            if page.start.isHidden():
                page.change_job.click()
            page.start.called.line.setFocus()

    def ask_job(self) -> None:
        """Ask for the folder of a job, and open it."""
        path = QtWidgets.QFileDialog.getExistingDirectory(
            self.frame, words.words("Folder of a job"), str(self._room or "")
        )
        if path:
            self.open_job(Path(path))

    def open_job(self, folder: Path) -> None:
        """Go on with a job."""
        self.frame.say("")
        self.job.open(folder, self.by, failed=self.refuse)

    def refuse(self, why: str) -> None:
        """Say in the next line what could not be done."""
        self.frame.say(f"{why[:1].upper()}{why[1:].rstrip('.')}.")

    def _show_job(self) -> None:
        """Another job is open, or it stands elsewhere."""
        shown = self.job.shown
        name = None if shown is None else shown.state.name or shown.folder.name
        words.keep(() if shown is None else _names(shown))
        self.frame.setWindowTitle("Stillshaft" if name is None else f"{name} - Stillshaft")
        self.frame.job_panel.show_job(name)
        self.frame.say("")
        self.practice.follow()
        if shown is not None and shown.folder != self._folder:
            self._folder = folder = shown.folder
            self.frame.await_guide()
            if shown.problems and self.frame.open_stage is not Stage.BRIEF:  # which says it itself
                self.refuse(shown.problems[0])
            if self._recent is not None:
                file = self._recent
                panel = self.frame.job_panel
                self._tasks.run("recent jobs", lambda: recent.remember(file, folder), panel.show_recent, self.refuse)

    def _advise(self) -> None:
        """What the guidance says, in the next line and on the rail."""
        guided = self.job.guided
        if guided is None:
            return
        stages = {stage.value.lower(): stage for stage in Stage}
        stage = stages[guided.advice.stage]
        sentence = Sentence(guided.advice.sentence, stage, action=stage.value)
        states = {stages[name]: State(said.state) for name, said in guided.stages.items()}
        self.frame.advice_panel.show_advice(guided)
        self.frame.set_guide(Guide(sentence, states))

    def _ready(self) -> None:
        """All pages are there."""
        if self._recent is not None:
            file = self._recent
            self._tasks.run("recent jobs", lambda: recent.load(file), self.frame.job_panel.show_recent, self.refuse)
        if self._offers:
            self.practice.offer(lambda: self.frame.set_view(self.frame.view))
        timer = QtCore.QTimer(self.frame)
        timer.setInterval(_ASK_AGAIN_MS)
        timer.timeout.connect(self.job.ask_again)
        timer.start()

    def _close(self) -> None:
        """The pages are closed: now the source and the job."""
        if self._feed is not None:
            self._feed.close()
        if self._job is not None:
            self._job.close()
        self._tasks.close()
        self._garbage.close()


def _names(shown: Shown) -> set[str]:
    """What the person named in a job: it is never translated. A run that is called after its kind has no name of its own."""
    state = shown.state
    points = () if shown.hookup is None else shown.hookup.points
    named = {
        shown.by,
        state.name,
        state.brief.machine.name,
        *(p.name for p in state.brief.planes),
        *(p.name for p in points),
        *(level.point for level in (*state.brief.abort, *state.brief.limits)),
        *(neighbour.name for neighbour in state.brief.neighbours),
        *(outcome.by for outcome in state.checks.values()),
        *(check.by for check in state.measured),
    }
    runs = (run.what.name for run in state.runs if run.what.name != run.what.purpose)
    return {name for name in (*named, *runs) if name}


def run() -> int:
    """Open the window and stay until it is closed; exit status."""
    sys.setswitchinterval(0.0005)  # the measuring thread must get its turn while the screen works
    application = QtWidgets.QApplication.instance() or QtWidgets.QApplication(["stillshaft"])
    assert isinstance(application, QtWidgets.QApplication)
    look.prepare(application)
    program = Program(settings.usual_path(), usual=settings.View(language=words.of_the_system()), offers=True)
    program.frame.show()
    return int(application.exec())
