"""Where a job begins: a new one in a folder of its own, or one that is there already."""

from __future__ import annotations

import getpass
import re
from datetime import date
from pathlib import Path

from PySide6 import QtCore, QtWidgets
from stillshaft.solver.folder import fit_name
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop import words as language
from stillshaft.ui.desktop.brief_fields import Form, LineField, line_of_buttons
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.said import Remark
from stillshaft.ui.theme import Theme

_NAME_EMS = 17.0  # heights of text that a name needs


def usual_folder() -> Path:
    """Where jobs go unless another folder is chosen."""
    import platformdirs

    return Path(platformdirs.user_documents_dir()) / "Stillshaft jobs"


def usual_person() -> str:
    """Who works here, as the computer knows."""
    try:
        return getpass.getuser()
    except (OSError, KeyError):
        return ""


def free_folder(room: Path, name: str) -> Path:
    """A folder for a job of this name that is not there yet."""
    stem = re.sub(r"\s+", " ", fit_name(name)).strip() or "job"
    path, number = room / stem, 1
    while path.exists():
        number += 1
        path = room / f"{stem} {number}"
    return path


class StartCard(parts.Card):
    """Begins a job or opens one; emits `begun` when it is open."""

    begun = QtCore.Signal()

    def __init__(self, job: OpenJob, room: Path | None = None) -> None:
        super().__init__("Job")
        self._job = job
        self._room = room
        self.form = Form(ems=_NAME_EMS)
        self.called = LineField("Name of the new job", f"extraction fan 3, {date.today():%B %Y}")
        self.person = LineField("Who works", "as the record shall say")
        self.person.show_recorded(usual_person())
        self.form.add(self.called)
        self.form.add(self.person)
        self.where = parts.label("", "small", wrap=True)
        self.remark = Remark()
        self.begin = parts.button("&New job", self._begin, "main", "Begin a job with this name")
        self.begin.setAccessibleName("New job")
        self.other = parts.button(
            "New job in…", self._ask_room, tip="Choose the folder that the job's folder goes into"
        )
        self.open = parts.button("&Open job…", self._ask_job, tip="Go on with a job")
        self.called.line.returnPressed.connect(self._begin)
        self._row = QtWidgets.QBoxLayout(QtWidgets.QBoxLayout.Direction.TopToBottom)
        self._row.setSpacing(look.GAP)
        self._row.addWidget(self.form, 1)
        buttons = QtWidgets.QWidget()
        foot = QtWidgets.QVBoxLayout(buttons)
        foot.setContentsMargins(0, 0, 0, 0)
        foot.addStretch(1)
        foot.addLayout(line_of_buttons((self.begin, self.other, self.open)))
        self._buttons = buttons
        self._row.addWidget(buttons)
        self.body.addLayout(self._row)
        self.body.addWidget(self.where)
        self.body.addWidget(self.remark)
        self._tell_room()

    @property
    def room(self) -> Path:
        """The folder that new jobs go into."""
        return self._room or usual_folder()

    @property
    def by(self) -> str:
        """Who works, as the record says."""
        return " ".join(self.person.text.split())

    def _tell_room(self) -> None:
        breakable = str(self.room).replace("/", "/\u200b")  # a path has no spaces to break at
        self.where.setText(f"New jobs go into {breakable}. Everything is saved into the job's folder as you go.")

    def _begin(self) -> None:
        name = " ".join(self.called.text.split())
        if not name:
            self.remark.say("Give the new job a name first.", refused=True)
            self.called.line.setFocus()
            return
        self._busy()
        self._job.create(free_folder(self.room, name), name, self.by, done=self._done, failed=self._fail)

    def _ask_room(self) -> None:
        path = QtWidgets.QFileDialog.getExistingDirectory(self, language.words("Folder for new jobs"), str(self.room))
        if path:
            self._room = Path(path)
            self._tell_room()

    def _ask_job(self) -> None:
        path = QtWidgets.QFileDialog.getExistingDirectory(self, language.words("Folder of a job"), str(self.room))
        if path:
            self.open_folder(Path(path))

    def open_folder(self, folder: Path) -> None:
        """Go on with the job of a folder."""
        self._busy()
        self._job.open(folder, self.by, done=self._done, failed=self._fail)

    def _busy(self) -> None:
        self.remark.say("")
        for each in (self.begin, self.open):
            each.setEnabled(False)

    def _ready(self) -> None:
        for each in (self.begin, self.open):
            each.setEnabled(True)

    def _done(self, _result: object) -> None:
        self._ready()
        self.called.put("")
        self.begun.emit()

    def _fail(self, why: str) -> None:
        self._ready()
        self.remark.say(f"{parts.begun(why)}.", refused=True)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.form.set_theme(theme)
        self.remark.set_theme(theme)

    def set_width(self, width_px: int, body_px: int) -> None:
        """So much room, for text of this size."""
        room = width_px - 2 * look.ROOM
        left = room - look.GAP - self._buttons.sizeHint().width()
        direction = QtWidgets.QBoxLayout.Direction
        beside = left >= 2 * _NAME_EMS * body_px + look.GAP
        self._row.setDirection(direction.LeftToRight if beside else direction.TopToBottom)
        self.form.set_width(left if beside else room, body_px)
