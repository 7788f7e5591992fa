"""The hook-up that is edited: the job's where one is open and has one, else that of the chosen source.

A change is a function from the content of a hook-up to another one, so that changes one after the other add up.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6 import QtCore
from stillshaft.acquire import hookup as hookups
from stillshaft.acquire.hookup import Hookup, HookupError
from stillshaft.ui.desktop.feed import Feed
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.session import Session

Table = dict[str, Any]
Change = Callable[[Table], Table]


class Wiring(QtCore.QObject):
    """Holds the hook-up; `changed` tells that it is another one, or that a job came or went."""

    changed = QtCore.Signal()

    def __init__(self, feed: Feed, job: OpenJob | None, parent: QtCore.QObject | None = None) -> None:
        super().__init__(parent)
        self._feed, self._job = feed, job
        self.table: Table | None = None
        self.hookup: Hookup | None = None
        self._told: tuple[str, Table] | None = None  # to the feed: for which source, what
        self._had_job = False
        self._before: list[Table] = []
        self._after: list[Table] = []
        feed.changed.connect(self.follow)
        if job is not None:
            job.changed.connect(self.follow)
        self.follow()

    @property
    def job(self) -> OpenJob | None:
        """The open job, if there is one."""
        return self._job if self._job is not None and self._job.shown is not None else None

    @property
    def missing_in_job(self) -> bool:
        """A job is open that has no hook-up yet."""
        shown = None if self.job is None else self.job.shown
        return shown is not None and shown.hookup is None

    @property
    def steps(self) -> tuple[bool, bool]:
        """Whether there may be something to undo, and to redo."""
        return self.job is not None or bool(self._before), self.job is not None or bool(self._after)

    # what the person does

    def change(
        self,
        change: Change,
        taken: Callable[[], None] = lambda: None,
        refused: Callable[[str], None] = lambda _why: None,
    ) -> None:
        """Have a change made; then `taken`, or `refused` with one line. Without a hook-up yet it gets an empty table."""
        draft = self.table or {}
        if self.job is None:
            self._change_draft(change, draft, taken, refused)
            return

        def work(session: Session) -> object:
            return session.wire(change(session.state.hookup or draft))

        self.job.act(work, lambda _event: taken(), refused)

    def _change_draft(
        self, change: Change, draft: Table, taken: Callable[[], None], refused: Callable[[str], None]
    ) -> None:
        try:
            made = change(draft)
            hookups.hookup_from(made)
        except HookupError as error:
            refused(str(error))
            return
        if draft:
            self._before.append(draft)
        self._after = []
        self._feed.use_table(made)
        self.follow()
        taken()

    def step(self, which: str, done: Callable[[str], None]) -> None:
        """Have `which`, "undo" or "redo", done to the last entry of the job, or the last change where no job is open.

        `done` gets what is to be said.
        """
        if self.job is not None:
            self.job.act(
                lambda session: getattr(session, which)(),
                lambda event: done("" if event is not None else f"There is nothing to {which}."),
                lambda why: done(f"{why}."),
            )
            return
        taken, kept = (self._before, self._after) if which == "undo" else (self._after, self._before)
        if taken and self.table is not None:
            kept.append(self.table)
            self._feed.use_table(taken.pop())
            self.follow()
            done("")

    # what comes of it

    def follow(self) -> None:
        """See what the hook-up is now, and have the source use the job's."""
        shown = None if self.job is None else self.job.shown
        of_job = None if shown is None or shown.hookup is None else shown.hookup
        if of_job is not None and self._told != (self._feed.choice.name, of_job.table):
            self._told = self._feed.choice.name, of_job.table
            self._before, self._after = [], []
            self._feed.use_table(of_job.table)  # tells of it, and comes here again
        table = self._feed.table if of_job is None else of_job.table
        if table is self.table and self._had_job == (shown is not None):
            return
        if table is not self.table:
            self.table = table
            self.hookup = of_job if of_job is not None else None if table is None else hookups.hookup_from(table)
        self._had_job = shown is not None
        self.changed.emit()
