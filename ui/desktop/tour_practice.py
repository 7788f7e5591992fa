"""Jobs for practice: begins and takes up the tour and the lessons, each a real job in a folder of its own.

What is heavy is loaded where it is used: this file is there before the window is.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6 import QtCore
from stillshaft.ui.desktop.tour_coach import Coach, Plan, Pointer

if TYPE_CHECKING:
    from stillshaft.ui.desktop.app import Program
    from stillshaft.ui.desktop.simulator import Teaching
    from stillshaft.ui.session import Session

TOUR = "tour"
GO_ON, ANEW = "Go on where I left it", "Begin anew"
SHOW_ME, NOT_NOW = "Show me", "Not now"


def usual_room() -> Path:
    """Where jobs for practice go: beside no real ones."""
    import platformdirs

    return Path(platformdirs.user_data_dir("stillshaft", appauthor=False)) / "practice"


@dataclass(frozen=True)
class Exercise:
    """What is practised: its machine, and the brief of its job."""

    key: str
    title: str
    teaching: Teaching
    brief: Callable[[], dict[str, Any]]


class Question:
    """A question beside a button of the window."""

    def __init__(self, name: str, pointer: Pointer, answered: Callable[[str], None]) -> None:
        self.name, self._pointer, self._answered = name, pointer, answered

    def pointer(self) -> Pointer:
        """The question."""
        return self._pointer

    def answer(self, choice: str) -> None:
        """Hand it on."""
        self._answered(choice)


def exercise(key: str) -> Exercise:
    """The tour, or the lesson of a key."""
    from stillshaft.ui.desktop import lessons, tour

    if key == TOUR:
        return Exercise(TOUR, tour.NAME, tour.TEACHING, tour.brief)
    found = lessons.lesson(key)
    return Exercise(found.key, found.title, found.teaching, found.brief)


class Practice(QtCore.QObject):
    """Begins exercises in the folder `room`, None: the usual one, and leads through them."""

    def __init__(self, program: Program, coach: Coach, room: Path | None = None) -> None:
        super().__init__(program.frame)
        self._program, self.coach, self._room = program, coach, room
        self._folder: Path | None = None  # of what is led through
        self._ready, self._wanted = False, ""
        program.frame.ready.connect(self._go_on)

    @property
    def room(self) -> Path:
        """The folder of the folders."""
        return self._room or usual_room()

    def _go_on(self) -> None:
        self._ready = True
        if self._wanted:
            self.begin(self._wanted)

    def offer(self, remember: Callable[[], None]) -> None:
        """Ask a newcomer whether the tour is wanted; `remember` that it was asked."""

        def answered(choice: str) -> None:
            remember()
            self.coach.leave()
            if choice == SHOW_ME:
                self.begin(TOUR)

        said = "New here? Balance a simulated fan yourself: it takes less than five minutes. It stays here under Job."
        button = self._program.frame.job_button
        self.coach.begin(
            Question("First steps", Pointer(button, said, presses=False, choices=(SHOW_ME, NOT_NOW)), answered)
        )

    def begin(self, key: str) -> None:
        """Begin an exercise, once all pages are there; where one was left, ask whether to go on with it."""
        if not self._ready:
            self._wanted = key
            return
        self.coach.leave()
        last = self._folders(key)[-1:]
        if not last:
            self._create(exercise(key))
            return

        def answered(choice: str) -> None:
            self.coach.leave()
            if choice == GO_ON:
                self._open(exercise(key), last[0])
            else:
                self._create(exercise(key))

        said = "You have begun this before."
        button = self._program.frame.job_button
        pointer = Pointer(button, said, presses=False, choices=(GO_ON, ANEW))
        self.coach.begin(Question(exercise(key).title, pointer, answered))

    def follow(self) -> None:
        """Another job is open: no more is led through, and the simulated rotor is the usual one again."""
        shown = self._program.job.shown
        if self._folder is None or (shown is not None and shown.folder == self._folder):
            return
        from stillshaft.ui.desktop.simulator import Teaching

        self._folder = None
        self.coach.leave()
        self._program.feed.apply(Teaching())

    def _folders(self, key: str) -> list[Path]:
        """Folders of an exercise, the newest last."""
        found = [p for p in self.room.glob(f"{key} *") if p.name.removeprefix(f"{key} ").isdecimal()]
        return sorted(found, key=lambda p: int(p.name.rsplit(" ", 1)[1]))

    def _create(self, wanted: Exercise) -> None:
        folders = self._folders(wanted.key)
        number = 1 + (int(folders[-1].name.rsplit(" ", 1)[1]) if folders else 0)
        folder = self.room / f"{wanted.key} {number}"

        from stillshaft.ui.desktop import simulator

        def describe(session: Session) -> None:
            session.describe(wanted.brief())
            session.wire(simulator.hookup())

        def created(_none: object) -> None:
            self._prepare(wanted)
            self._program.job.act(describe, lambda _event: self._lead(wanted, folder), self._program.refuse)

        name = f"{wanted.title}, practice"
        self.room.mkdir(parents=True, exist_ok=True)
        self._program.job.create(folder, name, self._program.by, done=created, failed=self._program.refuse)

    def _open(self, wanted: Exercise, folder: Path) -> None:
        def opened(_none: object) -> None:
            self._prepare(wanted)
            self._lead(wanted, folder)

        self._program.job.open(folder, self._program.by, done=opened, failed=self._program.refuse)

    def _prepare(self, wanted: Exercise) -> None:
        """Its machine; what runs now is stopped."""
        from stillshaft.ui.desktop.feed import SIMULATED

        feed = self._program.feed
        feed.choose(SIMULATED)
        feed.stop()
        feed.apply(wanted.teaching)

    def _lead(self, wanted: Exercise, folder: Path) -> None:
        self._folder = folder
        self.coach.begin(self._plan(wanted.key))

    def _plan(self, key: str) -> Plan:
        from stillshaft.ui.desktop import lessons_plans, tour

        return tour.Tour(self._program) if key == TOUR else lessons_plans.plan_of(self._program, key)
