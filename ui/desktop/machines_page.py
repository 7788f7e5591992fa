"""The machines of a folder of jobs: looked through, searched, compared; a job is opened or a next visit begun from here."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from pathlib import Path

from PySide6 import QtCore, QtWidgets
from stillshaft.dsp.units import InputError
from stillshaft.ui import library
from stillshaft.ui.desktop import look, next_visit, parts
from stillshaft.ui.desktop import machines_text as texts
from stillshaft.ui.desktop import words as language
from stillshaft.ui.desktop.brief_fields import Form, LineField, PickField, line_of_buttons
from stillshaft.ui.desktop.inspect_list import Row, RowList
from stillshaft.ui.desktop.machines_plot import TrendPlot
from stillshaft.ui.desktop.machines_text import breakable
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.said import Remark
from stillshaft.ui.desktop.settings import View
from stillshaft.ui.desktop.tasks import Tasks
from stillshaft.ui.desktop.worded import Worded
from stillshaft.ui.library import Library, Machine
from stillshaft.ui.library_index import JobShown
from stillshaft.ui.theme import THEMES, Theme

_POLL_MS, _TYPING_MS = 100, 150
_BESIDE_EMS = 52
_LIST_EMS = 18
_LOW_LIST_EMS = 14
_PAIR_EMS = 33
_MOST_PASSED_OVER = 5
_JOBS, _TREND, _COMPARE = "Jobs", "Trend", "Two side by side"


class StoppedError(InputError):
    """The list is no longer wanted."""


class MachinesPage(Worded, QtWidgets.QWidget):
    """Machines and their past jobs; `begun` tells that a job was opened or begun from here.

    `index` says where what was read of a folder is remembered.
    """

    begun = QtCore.Signal()

    def __init__(
        self,
        job: OpenJob,
        folder: Path,
        by: Callable[[], str],
        index: Callable[[Path], Path | None] = library.default_index,
    ) -> None:
        super().__init__()
        self.setObjectName("page")
        self.setAccessibleName("Machines: past jobs, trends and comparisons")
        self.folder = folder
        self._job, self._by, self._index = job, by, index
        self._theme: Theme = THEMES["light"]
        self._width = (600, 14)
        self._tasks = Tasks(self)
        self._library: Library | None = None
        self._machines: dict[str, Machine] = {}
        self._number = 0  # of the newest list or search
        self._told: tuple[float, str] | None = None
        self._reading = False
        self._closing = False
        self._poll = QtCore.QTimer(self)
        self._poll.setInterval(_POLL_MS)
        self._poll.timeout.connect(self._progress)
        self._typing = QtCore.QTimer(self)
        self._typing.setInterval(_TYPING_MS)
        self._typing.setSingleShot(True)
        self._typing.timeout.connect(self._search)
        column = QtWidgets.QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(look.GAP)
        column.addWidget(self._head())
        self.work = QtWidgets.QWidget()
        self._row = QtWidgets.QBoxLayout(QtWidgets.QBoxLayout.Direction.LeftToRight, self.work)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(look.GAP)
        self.list = RowList("Machines")
        self.list.chosen.connect(self._turn_to)
        self.detail = self._detail()
        self._row.addWidget(self.list)
        self._row.addWidget(self.detail, 1)
        column.addWidget(self.work, 1)
        column.addStretch(0)  # for an empty list
        self._show(None)

    def _head(self) -> parts.Card:
        card = parts.Card("Machines")
        self.search = LineField("Search names, places, notes", "fan, hall 3, …")
        self.search.line.textChanged.connect(lambda _text: self._typing.start())
        self.choose = parts.button("Folder of jobs…", self._ask_folder, tip="Choose the folder whose jobs are listed")
        self.again = parts.button("Read again", self.read)
        self.status = parts.label("", "small", wrap=True)
        self.status.setAlignment(QtCore.Qt.AlignmentFlag.AlignRight)
        card.head.addWidget(self.status, 1)
        self.remark = Remark()
        row = QtWidgets.QHBoxLayout()
        row.setSpacing(look.TIGHT)
        row.addWidget(self.search, 1)
        for each in (self.choose, self.again):
            row.addWidget(each, 0, QtCore.Qt.AlignmentFlag.AlignBottom)
        card.body.addLayout(row)
        card.body.addWidget(self.remark)
        card.setSizePolicy(QtWidgets.QSizePolicy.Policy.Preferred, QtWidgets.QSizePolicy.Policy.Maximum)
        return card

    def _detail(self) -> parts.Card:
        card = parts.Card()
        self.called = parts.label("", "heading", wrap=True)
        self.about = parts.label("", "small", wrap=True)
        self.turn = parts.Segments("Show", (_JOBS, _TREND, _COMPARE))
        self.turn.set(_JOBS)
        self.turn.chosen.connect(self._turn)
        card.body.addWidget(self.called)
        card.body.addWidget(self.about)
        card.body.addWidget(self.turn)
        self.jobs = QtWidgets.QWidget()
        column = QtWidgets.QVBoxLayout(self.jobs)
        column.setContentsMargins(0, 0, 0, 0)
        self.job_list = RowList("Jobs of the machine")
        self.open = parts.button("Open this job", self._open, "main")
        self.visit = parts.button(
            "Next visit", self._next_visit, tip="Begin a job with this one's brief, hook-up and coefficients"
        )
        self.where = parts.label("", "small", wrap=True)
        column.addWidget(self.job_list, 1)
        column.addWidget(self.where)
        column.addLayout(line_of_buttons((self.open, self.visit)))
        self.job_list.chosen.connect(self._tell_where)
        self.trend = QtWidgets.QWidget()
        self._plots = QtWidgets.QVBoxLayout(self.trend)
        self._plots.setContentsMargins(0, 0, 0, 0)
        self.plots: list[TrendPlot] = []
        self.pair: tuple[PickField, ...] = ()
        self.compare = QtWidgets.QWidget()
        inner = QtWidgets.QVBoxLayout(self.compare)
        inner.setContentsMargins(0, 0, 0, 0)
        self._pair = Form()
        self._grid_holder = QtWidgets.QWidget()
        self._grid = QtWidgets.QGridLayout(self._grid_holder)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(look.GAP)
        self._grid.setVerticalSpacing(look.TIGHT)
        inner.addWidget(self._pair)
        inner.addWidget(self._grid_holder)
        inner.addStretch(1)
        for widget in (self.jobs, self.trend, self.compare):
            card.body.addWidget(widget, 1)
        return card

    # the list

    def read(self) -> None:
        """Read the folder on a thread; the list is shown when it is known."""
        self._number += 1
        number, folder, index = self._number, self.folder, self._index
        self._told = (0.0, "looking for jobs")
        self._reading = True

        def report(share: float, text: str) -> None:
            if self._closing or number != self._number:
                raise StoppedError("another list is wanted")
            self._told = (share, text)

        def work() -> Library:
            if not folder.is_dir():
                return Library(str(folder), (), (), 0, 0)
            return library.list_machines(folder, report, index=index(folder))

        def done(found: Library) -> None:
            if number == self._number:
                self._poll.stop()
                self._library = found
                self._search()

        def failed(why: str) -> None:
            if number == self._number:
                self._poll.stop()
                self._library = None
                self._show(None)
                self.remark.say(f"{parts.begun(why)}.", refused=True)

        self.remark.say("")
        self.again.setEnabled(False)
        self._poll.start()
        self._progress()
        self._tasks.run("reading jobs", work, done, failed)

    @property
    def reading(self) -> bool:
        """True until what is wanted is listed."""
        return self._reading

    def _progress(self) -> None:
        if self._told is not None:
            share, text = self._told
            percent = f", {100.0 * share:.0f} %" if share > 0.0 else ""
            self.status.setText(f"Reading {breakable(str(self.folder))}: {text}{percent}")

    def _search(self) -> None:
        """Pick what has the words typed, beside the screen: a long list takes a while."""
        whole, text = self._library, self.search.text
        if whole is None:
            return
        self._number += 1
        number = self._number
        self._reading = True

        def done(found: Library) -> None:
            if number == self._number:
                self._show(found)

        self._tasks.run("searching jobs", lambda: library.search(whole, text), done, lambda _why: None)

    def _show(self, found: Library | None) -> None:
        self._reading = False
        self.again.setEnabled(True)
        self.work.setVisible(found is not None and bool(found.machines))
        if found is None:
            self.status.setText(f"Jobs in {breakable(str(self.folder))}")
            return
        self._machines = {texts.key_of(m): m for m in found.machines[: texts.MOST_ROWS]}
        self.list.show_rows(_by_own_names(texts.machine_rows(found)))
        self.status.setText(self._status(found))
        doubts = found.reasons[:_MOST_PASSED_OVER]
        more = f" And {len(found.reasons) - len(doubts)} more." if len(found.reasons) > len(doubts) else ""
        self.remark.say(f"Not read: {'; '.join(map(breakable, doubts))}.{more}" if doubts else "", refused=True)

    def _status(self, found: Library) -> str:
        where = breakable(str(self.folder))
        if not found.machines:
            return f"No machine to show in {where}."
        count = len(found.machines)
        named = f"{count} {'machine' if count == 1 else 'machines'}, {found.jobs} jobs in {where}"
        return (
            f"{named}; the first {texts.MOST_ROWS} are listed: search for others."
            if count > texts.MOST_ROWS
            else f"{named}."
        )

    def _ask_folder(self) -> None:
        path = QtWidgets.QFileDialog.getExistingDirectory(self, language.words("Folder of jobs"), str(self.folder))
        if path:
            self.folder = Path(path)
            self.read()

    # one machine

    @property
    def machine(self) -> Machine | None:
        """The machine that is chosen."""
        return self._machines.get(self.list.key)

    def _turn_to(self, key: str) -> None:
        machine = self._machines.get(key)
        if machine is None:
            return
        self.called.setText(language.own(texts.machine_row(machine).title))
        about = texts.about(machine)
        self.about.setText(about)
        self.about.setVisible(bool(about))
        self.job_list.show_rows(_by_own_names(texts.job_row(job) for job in reversed(machine.jobs)))
        self._tell_where(self.job_list.key)
        for each in (self.open, self.visit):
            each.setEnabled(bool(machine.jobs))
        self._turn(self.turn.value)

    def _turn(self, what: str) -> None:
        """Jobs, trend, or two jobs side by side."""
        self.turn.set(what)
        self.jobs.setVisible(what == _JOBS)
        self.trend.setVisible(what == _TREND)
        self.compare.setVisible(what == _COMPARE)
        machine = self.machine
        if machine is None:
            return
        if what == _TREND:
            self._draw(machine)
        elif what == _COMPARE:
            self._offer(machine)

    def _tell_where(self, folder: str) -> None:
        self.where.setText(breakable(folder))

    def _draw(self, machine: Machine) -> None:
        _emptied(self._plots)
        self.plots = [TrendPlot(t, number) for number, t in enumerate(library.trend(machine))]
        for plot in self.plots:
            plot.set_theme(self._theme)
            self._plots.addWidget(plot, 1)
        note = "Open shapes: first run of a job; full ones: its last run. Bars: 95 % interval of the run."
        self._plots.addWidget(
            parts.label(note if self.plots else "No run that counts in its jobs.", "small", wrap=True)
        )

    def _offer(self, machine: Machine) -> None:
        """Choose two of the jobs; the newest two unless others are chosen."""
        self._pair.clear()
        self.pair = ()
        newest = [job.folder for job in reversed(machine.jobs)]
        names = _names(machine.jobs)
        if len(newest) < 2:
            self._compare(machine)
            return
        fields = []
        for title, chosen in (("Earlier job", newest[1]), ("Later job", newest[0])):
            field = PickField(title, [], "choose a job", as_written=True)
            for folder in newest:
                field.offer(names[folder])
            field.put(names[chosen])
            field.recorded = field.text
            field.pick.activated.connect(lambda _n, m=machine: self._compare(m))
            field.set_theme(self._theme)
            self._pair.add(field)
            fields.append(field)
        self.pair = tuple(fields)
        self._compare(machine)

    def _compare(self, machine: Machine) -> None:
        _emptied(self._grid)
        if not self.pair:
            self._grid.addWidget(parts.label("Only one job: nothing to hold it against.", wrap=True), 0, 0)
            return
        folders = {name: folder for folder, name in _names(machine.jobs).items()}
        one, other = (folders.get(field.text) for field in self.pair)
        if one is None or other is None or one == other:
            self._grid.addWidget(parts.label("Choose two jobs.", wrap=True), 0, 0)
            return
        for number, point in enumerate(texts.compared(machine, one, other)):
            said = f"{point.change} from last run to last run"
            self._grid.addWidget(parts.label(language.own(point.point), "heading", wrap=True), 3 * number, 0, 1, 2)
            self._grid.addWidget(parts.label(said, wrap=True), 3 * number + 1, 0, 1, 2)
            for column, side in enumerate((point.one, point.other)):
                self._grid.addWidget(parts.label(_side(side), "quiet", wrap=True), 3 * number + 2, column)
                self._grid.setColumnStretch(column, 1)

    # what the person does with a job

    @property
    def chosen_job(self) -> JobShown | None:
        """The job that is chosen in the list of jobs."""
        machine = self.machine
        jobs = () if machine is None else machine.jobs
        return next((job for job in jobs if job.folder == self.job_list.key), None)

    def _open(self) -> None:
        chosen = self.chosen_job
        if chosen is not None:
            self.remark.say("")
            self._job.open(Path(chosen.folder), self._by(), done=self._done, failed=self._refuse)

    def _next_visit(self) -> None:
        chosen, machine = self.chosen_job, self.machine
        if chosen is None or machine is None:
            return
        self.remark.say("")
        earlier = Path(chosen.folder)
        next_visit.begin_from(
            self._job, earlier, earlier.parent, machine.name, self._by(), done=self._done, failed=self._refuse
        )

    def _done(self, _result: object) -> None:
        self.begun.emit()

    def _refuse(self, why: str) -> None:
        self.remark.say(f"{breakable(parts.begun(why))}.", refused=True)

    # the page

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        for rows in (self.list, self.job_list):
            rows.set_theme(theme)
        self.remark.set_theme(theme)
        self._pair.set_theme(theme)
        for plot in self.plots:
            plot.set_theme(theme)

    def set_view(self, view: View) -> None:
        """Past readings keep the units that they were recorded in."""

    def set_room(self, width_px: int, body_px: int) -> None:
        """List and machine side by side, or one above the other."""
        beside = width_px >= _BESIDE_EMS * body_px
        self.list.stand(self._row, wide_px=_LIST_EMS * body_px, low_px=_LOW_LIST_EMS * body_px, beside=beside)
        inner = width_px - (_LIST_EMS * body_px + look.GAP if beside else 0) - 2 * look.ROOM
        self._pair.set_width(min(inner, _PAIR_EMS * body_px), body_px)  # side by side as what is compared below
        self.work.setMinimumHeight((28 if beside else 44) * body_px)

    def enter(self) -> None:
        """Read the folder the first time that the list is looked at."""
        if self._library is None and not self.reading:
            self.read()

    def close_down(self) -> None:
        """Stop reading."""
        self._closing = True
        self._poll.stop()
        self._typing.stop()
        self._tasks.close()


def _by_own_names(rows: Iterable[Row]) -> list[Row]:
    """Rows whose titles are names that people gave."""
    return [replace(row, title=language.own(row.title)) for row in rows]


def _names(jobs: tuple[JobShown, ...]) -> dict[str, str]:
    """What each job is called in a choice: its date and name, and its folder where that is not enough."""
    # what tells them apart stands first: the name of a machine's jobs is often the same
    named = {job.folder: f"{job.started_at[:10]}, {texts.job_row(job).title}" for job in jobs}
    twice = {name for name in named.values() if list(named.values()).count(name) > 1}
    return {f: f"{name} ({Path(f).name})" if name in twice else name for f, name in named.items()}


def _side(side: texts.Side | None) -> str:
    if side is None:
        return "not measured"
    if side.first == side.last:
        return f"{side.last}\n{side.change}"
    return f"First run {side.first}\nLast run {side.last}\nChange {side.change}"


def _emptied(layout: QtWidgets.QLayout) -> None:
    """Take all widgets out of a layout and let them go."""
    while (item := layout.takeAt(0)) is not None:
        if (widget := item.widget()) is not None:
            widget.hide()
            widget.deleteLater()
