"""The Brief page: short forms about machine, rotor, drive and what is wrong, each field recorded when it is finished."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6 import QtWidgets
from stillshaft.solver.brief import Brief
from stillshaft.solver.state import JobState
from stillshaft.ui import library
from stillshaft.ui.desktop import brief_entries as entries
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.brief_cards import (
    ConditionsCard,
    FormCard,
    LevelsCard,
    NeighboursCard,
    Patch,
    PlanesCard,
    Sheet,
)
from stillshaft.ui.desktop.brief_fields import Field, PickField
from stillshaft.ui.desktop.brief_photos import Photo, Photos
from stillshaft.ui.desktop.brief_start import StartCard
from stillshaft.ui.desktop.machines_page import MachinesPage
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.page import Page
from stillshaft.ui.desktop.said import Remark
from stillshaft.ui.desktop.settings import UNITS, View
from stillshaft.ui.desktop.stages import Sentence, Stage, State
from stillshaft.ui.desktop.undo_buttons import UndoButtons
from stillshaft.ui.session import Session
from stillshaft.ui.theme import Theme

_WHERE = re.compile(
    r'^(?:brief: )?(?:(?:\w+ )?"[^"]*"\.\w+|[\w.]+\.\w+|\w+ \d+\.\w+|grade|stock): '
)  # its own field says it
_BESIDE_EMS = 58  # heights of text that two columns need


class BriefPage(Page):
    """What the job is about; before a job is open, and on demand, where to begin one or take one up.

    `room` is the folder that new jobs go into, None: the usual one; `index` says where the list of machines is remembered.
    """

    def __init__(
        self, job: OpenJob, room: Path | None = None, index: Callable[[Path], Path | None] = library.default_index
    ) -> None:
        super().__init__(Stage.BRIEF)
        self.job = job
        self._unit = UNITS[0]
        self._folder: Path | None = None
        self._steps = UndoButtons(job, lambda text: self.remark.say(text))
        self.undo, self.redo = self._steps.both
        self.change_job = parts.button("Other &job…", self._toggle_start, tip="Begin or open another job")
        for each in (self.undo, self.redo, self.change_job):
            self.head.addWidget(each)
        self.start = StartCard(job, room)
        self.start.begun.connect(self._begun)
        self.machines = MachinesPage(job, self.start.room, lambda: self.start.by, index)
        self.machines.begun.connect(self._begun)
        self.remark = Remark()
        self.sheets: list[Sheet] = []
        self.planes = PlanesCard(self._record, self._used_planes)
        self.levels = LevelsCard(self._record)
        self.conditions = ConditionsCard(self._record)
        self.neighbours = NeighboursCard(self._record)
        self.photos = Photos("photos of the machine")
        self.photos.chosen.connect(self._add_photos)
        self.photos.removed.connect(lambda entry: self._act(lambda s: s.withdraw(entry, "photo removed")))
        self.goal = FormCard("Goal", entries.GOAL, self._record)
        table = self.goal.by_key["goal.table"]
        assert isinstance(table, PickField)
        for name in entries.LIMIT_TABLES:
            table.offer(name)
        self.body.addWidget(self.start)
        self.body.addWidget(self.machines, 1)
        self.body.addWidget(self.remark)
        self.forms = QtWidgets.QWidget()
        column = QtWidgets.QVBoxLayout(self.forms)
        column.setContentsMargins(0, 0, 0, 0)
        self.columns = self._columns()
        column.addWidget(self.columns)
        self.body.addWidget(self.forms)
        self.body.addStretch(0)
        job.changed.connect(self._renew)
        self._renew()

    def _columns(self) -> parts.Columns:
        left, right = QtWidgets.QVBoxLayout(), QtWidgets.QVBoxLayout()

        def form(heading: str, listed: tuple[entries.Entry, ...]) -> FormCard:
            return FormCard(heading, listed, self._record)

        self._photo_card = parts.Card("Photos")
        self._photo_card.body.addWidget(self.photos)
        on_left: list[Sheet] = [
            form("Machine", entries.MACHINE),
            form("Rotor", entries.ROTOR),
            self.planes,
            form("Drive", entries.DRIVE),
            form("Supports", entries.SUPPORTS),
            form("Pieces at hand", entries.STOCK),
        ]
        on_right: list[Sheet] = [
            form("What is wrong", entries.INTERVIEW),
            self.goal,
            self.levels,
            form("Starts and time", entries.STARTS),
            self.conditions,
            self.neighbours,
        ]
        for sheets, side in ((on_left, left), (on_right, right)):
            side.setSpacing(look.GAP)
            for sheet in sheets:
                side.addWidget(sheet)
            self.sheets += sheets
        left.addWidget(self._photo_card)
        left.addStretch(1)
        right.addStretch(1)
        return parts.Columns(left, right, (1, 1))

    def field(self, key: str) -> Field:
        """The field of an entry, such as "rotor.mass"."""
        return next(s.by_key[key] for s in self.sheets if isinstance(s, FormCard) and key in s.by_key)

    # what the person does

    def _record(self, field: Field | None, patch: Patch, taken: Callable[[], None] | None = None) -> None:
        """One finished field is one entry of the record."""

        def done(_result: object) -> None:
            if field is not None:
                field.take()
            if taken is not None:
                taken()

        def failed(why: str) -> None:
            if not self.isVisible():  # the field was left for another page
                self.job.refused.emit(why)
            if field is not None:
                field.refuse(_WHERE.sub("", why))
            else:
                self.remark.say(f"{parts.begun(why)}.", refused=True)
                self._renew()

        self.remark.say("")
        self.job.act(lambda session: session.describe(patch(session.brief)), done, failed)

    def _act(self, work: Callable[..., object]) -> None:
        self.remark.say("")
        self.job.act(work, failed=lambda why: self.remark.say(f"{parts.begun(why)}.", refused=True))

    def _add_photos(self, files: list[Path]) -> None:
        for file in files:
            self._act(partial(_add_photo, file))

    def _toggle_start(self) -> None:
        self._show_start(self.start.isHidden())

    def _show_start(self, on: bool) -> None:
        """Where jobs begin takes the place of the forms."""
        self.start.setVisible(on)
        self.machines.setVisible(on)
        self.forms.setVisible(not on)
        self.change_job.setText("Back to the &job" if on else "Other &job…")
        self.change_job.setAccessibleName(self.change_job.text().replace("&", ""))
        if on and self.isVisible():
            self.machines.enter()
            self.start.called.line.setFocus()

    def _begun(self) -> None:
        self._show_start(False)
        self.field("machine.name").control.setFocus()

    # what comes of it

    def _used_planes(self) -> list[str]:
        shown = self.job.shown
        return [] if shown is None else [p.plane for event in shown.state.masses for p in event.what.pieces]

    def _renew(self) -> None:
        """Show the job as it stands."""
        shown = self.job.shown
        self._steps.renew()
        self.change_job.setVisible(shown is not None)
        if shown is None:
            self._show_start(True)
            self.subtitle.setText("No job is open: begin one, or open one.")
            self.changed.emit()
            return
        if shown.folder != self._folder:  # another job: what was said of the one before goes
            self._folder = shown.folder
            self._show_start(False)
            self.remark.say(f"{parts.begun(shown.problems[0])}." if shown.problems else "", refused=True)
        state = shown.state
        kind = ", to read only" if shown.read_only else ", closed" if state.closed else ""
        self.subtitle.setText(f"{state.name}{kind}. {self.stage.purpose}.")
        self.levels.set_points(() if shown.hookup is None else tuple(p.name for p in shown.hookup.points))
        self._tell_unit()
        for sheet in self.sheets:
            sheet.show_brief(state.brief)
        of_checks = {check.title for check in shown.checks}  # those show their photos themselves
        self.photos.show_photos([p for p in _photos(shown.folder, state) if p.name not in of_checks])
        self.changed.emit()

    def _tell_unit(self) -> None:
        shown = self.job.shown
        wired = None if shown is None or shown.hookup is None else shown.hookup.display
        unit = (wired or "mm/s rms") if self._unit == UNITS[0] else self._unit
        for sheet in self.sheets:
            sheet.set_unit(unit)

    # the page

    def state(self) -> State:
        """Done when nothing is missing that the next stages need."""
        shown = self.job.shown
        if shown is None or shown.state.brief == Brief():
            return State.EMPTY
        return State.UNDER_WAY if entries.essential(shown.state.brief) else State.DONE

    def sentence(self) -> Sentence | None:
        """What is missing first."""
        shown = self.job.shown
        if shown is None:
            return Sentence("No job is open: begin one, or open one.", Stage.BRIEF, action="Brief")
        missing = entries.essential(shown.state.brief)
        if not missing:
            return None
        more = f", and {len(missing) - 1} more" if len(missing) > 1 else ""
        return Sentence(f"The brief does not say {missing[0]} yet{more}.", Stage.BRIEF, action="Brief")

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        for sheet in self.sheets:
            sheet.set_theme(theme)
        for part in (self.start, self.machines, self.photos, self.remark):
            part.set_theme(theme)

    def set_view(self, view: View) -> None:
        """Bare numbers are taken in this family of units."""
        self._unit = view.unit
        self._renew()

    def set_room(self, width_px: int, body_px: int) -> None:
        """Two columns of cards, or one."""
        room = width_px - 2 * look.WIDE
        beside = width_px >= _BESIDE_EMS * body_px
        self.columns.set_beside(beside)
        card = (room - look.GAP) // 2 if beside else room
        for sheet in self.sheets:
            sheet.set_width(card, body_px)
        self.photos.set_width(card - 2 * look.ROOM)
        self.start.set_width(room, body_px)
        self.machines.set_room(room, body_px)

    def enter(self) -> None:
        """The list of machines is read when it is looked at first."""
        if not self.machines.isHidden():
            self.machines.enter()

    def close_down(self) -> None:
        """Record what is being typed."""
        for sheet in self.sheets:
            for field in sheet.fields:
                if field.control.hasFocus():
                    field.commit()
        self.photos.close_down()
        self.machines.close_down()


def _add_photo(file: Path, session: Session) -> object:
    return session.add_photo(file, note=file.name)


def _photos(folder: Path, state: JobState) -> list[Photo]:
    return [
        Photo(folder / event.what.file.path, event.what.note or Path(event.what.file.path).name, event.id)
        for event in state.photos
        if event.what.about is None
    ]
