"""The page of a job: source, large figures, vector cloud, phase ribbon, masses, runs, correction."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.acquire import hookup as wiring
from stillshaft.acquire import simulated
from stillshaft.acquire.source import SourceRequest
from stillshaft.dsp import vectors
from stillshaft.dsp.measure import Measurement
from stillshaft.solver.correction import Solution
from stillshaft.ui import account, analysis, runs_files
from stillshaft.ui.live import Live, Snapshot
from stillshaft.ui.plots import PhaseRibbon, VectorCloud
from stillshaft.ui.taking import Stop
from stillshaft.ui.theme import SHAPE_WORDS, THEMES, palette, style_sheet
from stillshaft.ui.tolerance import tolerance_of

_POLL_MS = 50
_SIMULATED, _RECORDING = "Simulated rotor", "A recording…"
_CAUTION = (
    "Before each start: hands out, tools counted, guards closed, masses fixed, nobody in the plane of rotation. "
    "Local rules decide; leave what needs a competent person to one."
)
_MASS_NOTE = "Beyond the initial state; angles run against rotation."
_ROW_PX = 32
_PLANE, _RADIUS, _MASS, _ANGLE = range(4)


def _label(text: str, name: str = "", *, wrap: bool = False) -> QtWidgets.QLabel:
    label = QtWidgets.QLabel(text)
    label.setObjectName(name)
    label.setWordWrap(wrap)
    label.setTextFormat(QtCore.Qt.TextFormat.PlainText)
    return label


def _button(text: str, act: object, name: str = "") -> QtWidgets.QPushButton:
    button = QtWidgets.QPushButton(text)
    button.setObjectName(name)
    button.setAccessibleName(text.replace("&", ""))
    button.clicked.connect(act)
    button.setMinimumHeight(40)
    return button


def _panel() -> tuple[QtWidgets.QFrame, QtWidgets.QVBoxLayout]:
    frame = QtWidgets.QFrame()
    frame.setObjectName("panel")
    layout = QtWidgets.QVBoxLayout(frame)
    layout.setContentsMargins(12, 8, 12, 8)
    layout.setSpacing(6)
    return frame, layout


class PointFigures(QtWidgets.QFrame):
    """Amplitude and phase of one point in large figures, with intervals and the verdict."""

    def __init__(self, number: int, name: str) -> None:
        super().__init__()
        self.setObjectName("panel")
        self._name = name
        layout = QtWidgets.QVBoxLayout(self)
        layout.setContentsMargins(12, 8, 12, 8)
        layout.setSpacing(1)
        self._shape = SHAPE_WORDS[number % len(SHAPE_WORDS)]
        self._number = number
        self.heading = _label(f"{self._shape} {name}", "heading", wrap=True)
        self.amplitude = _label("–", "figure")
        self.amplitude_interval = _label(" ", "quiet")
        self.phase = _label("–", "figure")
        self.phase_interval = _label(" ", "quiet")
        self.verdict = _label("no figures yet", "quiet", wrap=True)
        for label in (
            self.heading,
            self.amplitude,
            self.amplitude_interval,
            self.phase,
            self.phase_interval,
            self.verdict,
        ):
            layout.addWidget(label)

    def colour(self, colours: tuple[str, ...]) -> None:
        """Colour of the point's shape."""
        self.heading.setStyleSheet(f"color: {colours[self._number % len(colours)]}")

    def show_measurement(self, measured: Measurement | None) -> None:
        """Write the newest figures."""
        point = None if measured is None else next((p for p in measured.points if p.name == self._name), None)
        if measured is None or point is None:
            for label in (self.amplitude, self.phase):
                label.setText("–")
            for label in (self.amplitude_interval, self.phase_interval):
                label.setText(" ")
            self.verdict.setText("no figures yet")
            return
        amplitude, phase_deg = vectors.amplitude_phase(point.z)
        self.amplitude.setText(account.number(amplitude, point.amplitude_ci95))
        interval = "?" if point.amplitude_ci95 is None else account.number(point.amplitude_ci95, point.amplitude_ci95)
        self.amplitude_interval.setText(f"± {interval} {measured.unit}")
        half = point.phase_ci95_deg
        self.phase.setText(f"{account.number(phase_deg, half)}°")
        self.phase_interval.setText("phase not determined" if half is None else f"± {account.number(half, half)}°")
        swing = point.steadiness.phase_swing_deg
        self.verdict.setText(point.steadiness.verdict + ("" if swing is None else f", swings {swing:.1f}°"))


class Window(QtWidgets.QMainWindow):
    """One job on one page."""

    def __init__(self, folder: Path | None = None, *, real_time: bool = True, seed: int = 1) -> None:
        super().__init__()
        self.setWindowTitle("Stillshaft")
        self.resize(1400, 900)
        self.setMinimumSize(1000, 680)
        self.job: runs_files.Job | None = None
        self.live: Live | None = None
        self._folder, self._real_time, self._seed = folder, real_time, seed
        self._hands = simulated.Placing(seed)
        self._starts = 0
        self._advice = ""  # what the runs so far ask for
        self._shown = 0
        self._recording: tuple[Path, str, list[runs_files.Placed]] | None = None
        self._handled: Path | None = None
        self._recording_file: Path | None = None
        self._hookup_file: Path | None = None
        self.solution: Solution | None = None
        self.hookup = wiring.hookup_from(simulated.demo_hookup())
        self._build()
        self.set_theme("light")
        self._set_hookup(self.hookup)
        self._fill_planes(2)
        self._poll = QtCore.QTimer(self)
        self._poll.setTimerType(QtCore.Qt.TimerType.PreciseTimer)
        self._poll.timeout.connect(self._look)
        self._poll.start(_POLL_MS)
        self._say("Press Start: the simulated rotor runs up with the masses entered at the right.")

    # building

    def _build(self) -> None:
        middle = QtWidgets.QWidget()
        whole = QtWidgets.QVBoxLayout(middle)
        whole.setContentsMargins(12, 10, 12, 8)
        whole.setSpacing(8)
        whole.addLayout(self._top_row())
        columns = QtWidgets.QHBoxLayout()
        columns.setSpacing(10)
        columns.addWidget(self._figures_column())
        columns.addWidget(self._pictures_column(), 1)
        columns.addWidget(self._job_column())
        whole.addLayout(columns, 1)
        self.next_line = _label("", "next", wrap=True)
        self.next_line.setAccessibleName("What to do next")
        self.next_line.setMinimumHeight(56)
        whole.addWidget(self.next_line)
        whole.addWidget(_label(_CAUTION, "quiet", wrap=True))
        self.setCentralWidget(middle)

    def _top_row(self) -> QtWidgets.QHBoxLayout:
        row = QtWidgets.QHBoxLayout()
        self.source = QtWidgets.QComboBox()
        self.source.setAccessibleName("Source")
        self.source.addItems([_SIMULATED, _RECORDING])
        self.source.setMinimumWidth(220)
        self.source.activated.connect(self._source_chosen)
        label = _label("&Source")
        label.setTextFormat(QtCore.Qt.TextFormat.AutoText)
        label.setBuddy(self.source)
        self.find_inputs = _button("Find &inputs", self._list_inputs)
        self.choose_hookup = _button("&Hook-up file…", self._choose_hookup)
        self.start_stop = _button("S&tart", self._start_or_stop, "main")
        self.theme_box = QtWidgets.QComboBox()
        self.theme_box.setAccessibleName("Theme")
        self.theme_box.addItems(list(THEMES))
        self.theme_box.currentTextChanged.connect(self.set_theme)
        for widget in (label, self.source, self.find_inputs, self.choose_hookup, self.start_stop):
            row.addWidget(widget)
        row.addStretch(1)
        row.addWidget(self.theme_box)
        return row

    def _figures_column(self) -> QtWidgets.QWidget:
        self._figures_box = QtWidgets.QWidget()
        self._figures_box.setFixedWidth(250)
        layout = QtWidgets.QVBoxLayout(self._figures_box)
        layout.setContentsMargins(0, 0, 0, 0)
        frame, inside = _panel()
        self.speed = _label("–", "speed")
        self.speed_range = _label("no pulses yet", "quiet", wrap=True)
        inside.addWidget(_label("Speed", "heading"))
        inside.addWidget(self.speed)
        inside.addWidget(self.speed_range)
        layout.addWidget(frame)
        layout.addWidget(_label("± is the 95 % interval of this run only", "quiet", wrap=True))
        self._figures_layout = QtWidgets.QVBoxLayout()
        layout.addLayout(self._figures_layout)
        layout.addStretch(1)
        self.figures: list[PointFigures] = []
        return self._figures_box

    def _pictures_column(self) -> QtWidgets.QWidget:
        box = QtWidgets.QWidget()
        layout = QtWidgets.QVBoxLayout(box)
        layout.setContentsMargins(0, 0, 0, 0)
        self.cloud, self.ribbon = VectorCloud(), PhaseRibbon()
        for title, picture, share in (
            ("Vector cloud: 0° up, lag clockwise", self.cloud, 3),
            ("Phase ribbon", self.ribbon, 2),
        ):
            frame, inside = _panel()
            inside.addWidget(_label(title, "heading"))
            inside.addWidget(picture, 1)
            layout.addWidget(frame, share)
        return box

    def _job_column(self) -> QtWidgets.QWidget:
        inner = QtWidgets.QWidget()
        layout = QtWidgets.QVBoxLayout(inner)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(8)
        layout.addWidget(self._masses_panel())
        layout.addWidget(self._correction_panel())
        layout.addWidget(self._runs_panel(), 1)
        area = QtWidgets.QScrollArea()
        area.setWidgetResizable(True)
        area.setHorizontalScrollBarPolicy(QtCore.Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setWidget(inner)
        area.setFixedWidth(418)
        area.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
        self._job_area = area
        return area

    def _masses_panel(self) -> QtWidgets.QWidget:
        frame, inside = _panel()
        row = QtWidgets.QHBoxLayout()
        row.addWidget(_label("On the rotor in the next run", "heading"))
        row.addStretch(1)
        self.plane_count = QtWidgets.QComboBox()
        self.plane_count.setAccessibleName("Number of planes")
        self.plane_count.addItems(["1 plane", "2 planes"])
        self.plane_count.setCurrentIndex(1)
        self.plane_count.currentIndexChanged.connect(lambda index: self._fill_planes(index + 1))
        row.addWidget(self.plane_count)
        inside.addLayout(row)
        self.masses = QtWidgets.QTableWidget(0, 4)
        self.masses.setHorizontalHeaderLabels(["plane", "radius mm", "mass g", "angle °"])
        self.masses.verticalHeader().hide()
        self.masses.setAccessibleName("Masses on the rotor: plane, radius, mass, angle from the mark against rotation")
        self.masses.horizontalHeader().setSectionResizeMode(QtWidgets.QHeaderView.ResizeMode.Stretch)
        self.masses.setTabKeyNavigation(False)
        self.masses.itemChanged.connect(self._mass_typed)
        inside.addWidget(self.masses)
        self.mass_note = _label(_MASS_NOTE, "quiet", wrap=True)
        inside.addWidget(self.mass_note)
        row = QtWidgets.QHBoxLayout()
        self.run_name = QtWidgets.QLineEdit("initial")
        self.run_name.setAccessibleName("Name of the run")
        self.run_seconds = QtWidgets.QComboBox()
        self.run_seconds.setAccessibleName("Seconds to record")
        for seconds in (5, 10, 15, 30, 60, 120):
            self.run_seconds.addItem(f"{seconds} s", seconds)
        self.run_seconds.setCurrentIndex(2)
        self.run_seconds.setFixedWidth(92)
        self.take = _button("Take &run", self._take_run, "main")
        for widget in (self.run_name, self.run_seconds, self.take):
            row.addWidget(widget)
        inside.addLayout(row)
        return frame

    def _runs_panel(self) -> QtWidgets.QWidget:
        frame, inside = _panel()
        self.runs = QtWidgets.QTableWidget(0, 0)
        self.runs.setAccessibleName("Runs taken: speed, amplitude and phase of each point")
        self.runs.verticalHeader().hide()
        self.runs.setEditTriggers(QtWidgets.QAbstractItemView.EditTrigger.NoEditTriggers)
        self.runs.setTabKeyNavigation(False)
        self.runs.setMinimumHeight(92)
        self.runs.setSizePolicy(QtWidgets.QSizePolicy.Policy.Expanding, QtWidgets.QSizePolicy.Policy.Ignored)
        inside.addWidget(self.runs, 1)
        return frame

    def _correction_panel(self) -> QtWidgets.QWidget:
        frame, inside = _panel()
        self.put_on = _button("&Enter above", self._put_on)
        self.put_on.setAccessibleName("Enter the correction as the masses of the next run")
        self.put_on.setEnabled(False)
        row = QtWidgets.QHBoxLayout()
        row.addWidget(_label("Correction", "heading"))
        row.addStretch(1)
        row.addWidget(self.put_on)
        inside.addLayout(row)
        self.correction = _label("Needs the initial run and a trial run for each plane.", wrap=True)
        self.correction.setTextInteractionFlags(QtCore.Qt.TextInteractionFlag.TextSelectableByMouse)
        inside.addWidget(self.correction)
        return frame

    # what is chosen

    def set_theme(self, name: str) -> None:
        """Recolour everything."""
        theme = THEMES[name]
        QtWidgets.QApplication.setPalette(palette(theme))
        self.setStyleSheet(style_sheet(theme))
        self.cloud.set_theme(theme)
        self.ribbon.set_theme(theme)
        self._colours = theme.points
        for figures in self.figures:
            figures.colour(theme.points)
        if self.theme_box.currentText() != name:
            self.theme_box.setCurrentText(name)

    def _say(self, text: str) -> None:
        self.next_line.setText(text)

    def _set_hookup(self, hookup: wiring.Hookup) -> None:
        self.hookup = hookup
        for figures in self.figures:
            figures.deleteLater()
        self.figures = [PointFigures(i, p.name) for i, p in enumerate(hookup.points)]
        for figures in self.figures:
            self._figures_layout.addWidget(figures)
            figures.colour(self._colours)
        self.runs.setColumnCount(2 + len(hookup.points))
        self.runs.setHorizontalHeaderLabels(["run", "r/min", *(p.name for p in hookup.points)])
        header = self.runs.horizontalHeader()
        header.setFixedHeight(46)
        header.setDefaultAlignment(QtCore.Qt.AlignmentFlag(0x84 | int(QtCore.Qt.TextFlag.TextWordWrap)))
        for column in range(1, self.runs.columnCount()):
            self.runs.setColumnWidth(column, 56 if column == 1 else 98)
        header.setSectionResizeMode(0, QtWidgets.QHeaderView.ResizeMode.Stretch)

    def _fill_planes(self, count: int) -> None:
        if self.job is not None:
            return
        simulation = self.source.currentText() == _SIMULATED
        planes = runs_files.job_planes(simulated.demo_rotor(count)) if simulation else None
        self.masses.blockSignals(True)
        self.masses.setRowCount(count)
        for row in range(count):
            name, radius = (planes[row].name, planes[row].radius_mm) if planes else (f"plane {row + 1}", 100.0)
            for column, text in enumerate((name, f"{radius:g}", "0", "0")):
                self.masses.setItem(row, column, QtWidgets.QTableWidgetItem(text))
            self.masses.setRowHeight(row, _ROW_PX)
        self.masses.setFixedHeight(_ROW_PX * count + 34)
        self.masses.blockSignals(False)

    def _mass_typed(self, item: QtWidgets.QTableWidgetItem) -> None:
        """Nonsense is said beside the field, and what was there comes back."""
        if item.column() == _PLANE:
            return
        try:
            value = float(item.text().replace(",", "."))
            if not abs(value) < 1e6 or (item.column() == _RADIUS and value <= 0.0):
                raise ValueError
        except ValueError:
            heading = ("", "radius in mm", "mass in g", "angle in °")[item.column()]
            self.mass_note.setText(f"“{item.text()}” is no {heading}: a number is wanted; the field was set back.")
            self.masses.blockSignals(True)
            item.setText(item.data(QtCore.Qt.ItemDataRole.UserRole) or ("100" if item.column() == _RADIUS else "0"))
            self.masses.blockSignals(False)
            return
        self.masses.blockSignals(True)
        item.setData(QtCore.Qt.ItemDataRole.UserRole, f"{value:g}")
        self.masses.blockSignals(False)
        self.mass_note.setText(_MASS_NOTE)

    def _item(self, row: int, column: int) -> QtWidgets.QTableWidgetItem:
        item = self.masses.item(row, column)
        assert item is not None
        return item

    def _cell(self, row: int, column: int) -> str:
        return self._item(row, column).text()

    def _number(self, row: int, column: int) -> float:
        return float(self._cell(row, column).replace(",", "."))

    def planes(self) -> list[runs_files.Plane]:
        """The planes as entered."""
        rows = range(self.masses.rowCount())
        return [runs_files.Plane(self._cell(r, _PLANE), self._number(r, _RADIUS)) for r in rows]

    def placed(self) -> list[runs_files.Placed]:
        """The masses as entered."""
        rows = range(self.masses.rowCount())
        return [
            runs_files.Placed(self._cell(r, _PLANE), self._number(r, _MASS), self._number(r, _ANGLE) % 360.0)
            for r in rows
            if self._number(r, _MASS) != 0.0
        ]

    def enter_masses(self, placed: list[runs_files.Placed]) -> None:
        """Write masses into the fields; planes not named get none."""
        of_plane = {p.plane: p for p in placed}
        for row in range(self.masses.rowCount()):
            mass = of_plane.get(self._cell(row, _PLANE))
            self._item(row, _MASS).setText("0" if mass is None else f"{mass.mass_g:.1f}")
            self._item(row, _ANGLE).setText("0" if mass is None else f"{mass.angle_deg:.0f}")

    def _list_inputs(self) -> None:
        from stillshaft.acquire import soundcard
        from stillshaft.acquire.source import SourceError

        QtWidgets.QApplication.setOverrideCursor(QtCore.Qt.CursorShape.WaitCursor)
        try:
            self._inputs = {f"{i.host_api}/{i.name}": i for i in soundcard.list_inputs()}
        except SourceError as error:
            self._say(str(error))
            return
        finally:
            QtWidgets.QApplication.restoreOverrideCursor()
        self.source.clear()
        self.source.addItems([_SIMULATED, *self._inputs, _RECORDING])
        count = len(self._inputs)
        self._say(
            f"{count} sound inputs found." if count else "No sound inputs found: plug in the card, then look again."
        )

    def _source_chosen(self) -> None:
        if self.source.currentText() == _RECORDING:
            name, _ = QtWidgets.QFileDialog.getOpenFileName(
                self, "Recording", "", "Recordings (*.au *.wav *.flac *.caf)"
            )
            self.use_recording(Path(name) if name else None)
        elif self.source.currentText() == _SIMULATED:
            self._set_hookup(wiring.hookup_from(simulated.demo_hookup()))
        self._fill_planes(self.plane_count.currentIndex() + 1)

    def use_recording(self, path: Path | None) -> None:
        """Play this recording when Start is pressed."""
        self._recording_file = path
        if path is None:
            self.source.setCurrentText(_SIMULATED)
            return
        self.source.setCurrentText(_RECORDING)
        try:
            self._set_hookup(analysis.hookup_of(path, self._hookup_file))
        except ValueError as error:
            self._say(str(error))

    def _choose_hookup(self) -> None:
        name, _ = QtWidgets.QFileDialog.getOpenFileName(self, "Hook-up file", "", "Hook-up (*.toml)")
        if name:
            self.use_hookup(Path(name))

    def use_hookup(self, path: Path) -> None:
        """Take the wiring from this file."""
        try:
            self._set_hookup(wiring.load_hookup(path))
        except wiring.HookupError as error:
            self._say(str(error))
            return
        self._hookup_file = path
        self._say(f"Hook-up {path.name}: {len(self.hookup.points)} points.")

    # running

    def _request(self) -> SourceRequest | None:
        chosen = self.source.currentText()
        if chosen == _SIMULATED:
            return simulated.demo_run(
                self.masses.rowCount(),
                [self._hands.really(m.plane, m.mass_g, m.angle_deg) for m in self.placed()],
                seed=self._seed + 1000 * self._starts,
                real_time=self._real_time,
            )
        if chosen == _RECORDING:
            from stillshaft.acquire.replay import Replay

            if self._recording_file is None:
                self._say("Choose a recording first.")
                return None
            return Replay(self._recording_file, real_time=self._real_time)
        if self._hookup_file is None:
            self._say("A sound input needs a hook-up file that says what is wired to it: choose one first.")
            return None
        from stillshaft.acquire import catalogue
        from stillshaft.acquire.source import SourceError

        try:
            return catalogue.sound_input(self._inputs[chosen], self.hookup).request
        except SourceError as error:
            self._say(str(error))
            return None

    def _start_or_stop(self) -> None:
        if self.live is not None:
            self._stop()
            self._say(self._advice or "Stopped. Change the masses, then start again.")
            return
        request = self._request()
        if request is None:
            return
        self._starts += 1
        self._shown = 0
        self.live = Live(request, self.hookup)
        self.start_stop.setText("S&top")
        for widget in (self.masses, self.source, self.choose_hookup, self.find_inputs, self.plane_count):
            widget.setEnabled(False)
        self._say("Running up. Wait until the figures settle, then take the run.")

    def _stop(self) -> None:
        if self.live is not None:
            self.live.close()
            self.live = None
        self._recording = None
        self.start_stop.setText("S&tart")
        for widget in (self.masses, self.source, self.choose_hookup, self.find_inputs):
            widget.setEnabled(True)
        self.plane_count.setEnabled(self.job is None)
        self.take.setEnabled(True)

    def _take_run(self) -> None:
        if self.live is None:
            self._say("Start the source first: a run is taken from a running machine.")
            return
        if self._recording is not None:
            return
        try:
            job = self._ensured_job()
        except (runs_files.RunsFileError, OSError) as error:
            self._say(str(error))
            return
        name = job.free_name(self.run_name.text().strip() or "run")
        self._recording = (job.next_recording(), name, self.placed())
        self.live.record(self._recording[0], Stop(float(self.run_seconds.currentData())))
        self.take.setEnabled(False)
        self._say(f"Recording “{name}” for {self.run_seconds.currentText()}. Keep the speed steady.")

    def _ensured_job(self) -> runs_files.Job:
        if self.job is None:
            folder = self._folder
            if folder is None:
                import platformdirs

                stamp = datetime.now().strftime("%Y-%m-%d %H.%M.%S")
                folder = platformdirs.user_documents_path() / "Stillshaft" / stamp
            simulation = self.source.currentText() == _SIMULATED
            rotor = runs_files.job_rotor(simulated.demo_rotor(self.masses.rowCount())) if simulation else None
            self.job = runs_files.Job(folder, self.hookup, self.planes(), rotor)
            self.plane_count.setEnabled(False)
        return self.job

    def _look(self) -> None:
        """Show the newest result, if there is a new one."""
        snapshot = None if self.live is None else self.live.latest
        if snapshot is None or snapshot.number == self._shown:
            return
        self._shown = snapshot.number
        if snapshot.measured is not None:
            self._show(snapshot.measured)
        elif snapshot.trouble is not None and self._recording is None:
            self._say(snapshot.trouble)
        if snapshot.recorded is not None and snapshot.recorded.path != self._handled:
            self._handled = snapshot.recorded.path
            self._recorded(snapshot)
        if snapshot.ended is not None:
            self._stop()
            if snapshot.recorded is None or snapshot.recorded.complete:
                self._say(snapshot.ended)

    def _show(self, measured: Measurement) -> None:
        speed = measured.speed
        self.speed.setText(f"{speed.mean_rpm:.0f} r/min")
        self.speed_range.setText(
            f"{speed.min_rpm:.1f} to {speed.max_rpm:.1f}; {speed.missing_pulses} pulses missing, {speed.extra_pulses} too many"
        )
        for figures in self.figures:
            figures.show_measurement(measured)
        self.cloud.show_measurement(measured)
        self.ribbon.show_measurement(measured)

    def _recorded(self, snapshot: Snapshot) -> None:
        assert self.job is not None
        assert self._recording is not None
        path, name, placed = self._recording
        self._recording = None
        self.take.setEnabled(True)
        if snapshot.recorded is None or not snapshot.recorded.complete:
            why = "" if snapshot.recorded is None else snapshot.recorded.reason
            self._say(f"“{name}” is not taken: its recording is incomplete ({why}). What came is kept in {path.name}.")
            return
        try:
            measured = self.job.take_run(name, path, placed)
        except ValueError as error:
            self._say(str(error))
            return
        self._show(measured)
        self._fill_runs()
        self._solve()
        if measured.reasons:
            self._say(f"Do not trust “{name}”: {measured.reasons[0]}")

    # results

    def _fill_runs(self) -> None:
        assert self.job is not None
        self.runs.setRowCount(len(self.job.runs))
        for row, run in enumerate(self.job.runs):
            texts = [run.name, f"{run.measured.speed.mean_rpm:.0f}"]
            for point in run.measured.points:
                amplitude, phase_deg = vectors.amplitude_phase(point.z)
                texts.append(f"{amplitude:.2f} ∠ {phase_deg:.0f}°")
            for column, text in enumerate(texts):
                item = QtWidgets.QTableWidgetItem(text)
                item.setToolTip(text)
                self.runs.setItem(row, column, item)
            self.runs.setRowHeight(row, 26)
        self.runs.scrollToBottom()

    def _solve(self) -> None:
        assert self.job is not None
        try:
            self.solution = self.job.solve()
        except ValueError as error:
            self.solution = None
            missing = str(error).split(": ", 1)[-1]
            self.correction.setText(missing)
            self.put_on.setEnabled(False)
            self._advice = f"Run “{self.job.runs[-1].name}” is in. Next: {missing}"
            self._say(self._advice)
            return
        checked = len(self.job.runs) >= len(self.job.planes) + 2
        lines = ["Add to what is on now:" if checked else "With the trial masses off:"]
        for c in self.solution.additional if checked else self.solution.corrections:
            if not c.determined:
                lines.append(f"{c.plane}: not determined")
                continue
            mass, angle = (
                account.with_interval(c.mass, c.mass_ci95),
                account.with_interval(c.angle_deg, c.angle_ci95_deg),
            )
            lines.append(f"{c.plane}: {mass} {c.unit} at {angle}°")
        lines += [f"expect at {p.point} at most {p.amplitude_upper95:.2f} {p.unit}" for p in self.solution.predicted]
        self.correction.setText("\n".join(lines))
        usable = all(c.determined for c in self.solution.corrections)
        self.put_on.setEnabled(usable)
        self._advice = self._where_it_stands() if usable else "The trial said too little: repeat it with a larger mass."
        self._say(self._advice)

    def _where_it_stands(self) -> str:
        """What the last run shows, and what to do next."""
        assert self.job is not None
        if len(self.job.runs) < len(self.job.planes) + 2:
            return "Stop, take the trial masses off, put the correction on, start again and take a check run."
        runs = self.job.runs
        left_percent = runs_files.residual_percent(runs[0].measured, runs[-1].measured)
        worst, half = max(left_percent.values(), key=lambda r: r[0])
        left = account.with_interval(worst, half)
        stands = f"“{self.job.runs[-1].name}” is at {left} % of the initial vibration at its worst point"
        if self.job.rotor is not None:
            judged = tolerance_of(self.job.runs_file, "G6.3")
            stands += f"; G6.3: {judged.verdict}"
        return f"{stands}. Trim with the correction at the right, or stop here and make the masses permanent."

    def _put_on(self) -> None:
        if self.solution is None:
            return
        if self.live is not None:
            self._stop()
        assert self.job is not None
        checked = len(self.job.runs) >= len(self.job.planes) + 2
        self.enter_masses(
            self.job.with_added(self.solution.additional)
            if checked
            else [runs_files.Placed(c.plane, c.mass, c.angle_deg) for c in self.solution.corrections]
        )
        self.run_name.setText("trim" if checked else "check")
        self._say("The correction is entered. Start the machine and take the check run.")

    def closeEvent(self, event: QtGui.QCloseEvent) -> None:  # noqa: N802 - Qt's name
        """Stop the source; the job is saved already."""
        self._poll.stop()
        self._stop()
        event.accept()
