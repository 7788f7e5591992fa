"""Run-ups and coast-downs of the job: amplitude and phase against speed, and the vectors through the speed."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

import numpy as np
from PySide6 import QtWidgets
from stillshaft.dsp import units, vectors
from stillshaft.solver.state import JobState
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.figures import SweepCurve
from stillshaft.ui.desktop.inspect_measure import newest
from stillshaft.ui.desktop.plots import SweepPlot
from stillshaft.ui.desktop.polar import SweepPolar
from stillshaft.ui.desktop.said import Said
from stillshaft.ui.desktop.worded import ProgressBar
from stillshaft.ui.theme import Theme

if TYPE_CHECKING:
    from stillshaft.acquire.hookup import Hookup
    from stillshaft.dsp.measure import Measurement

_BESIDE_EMS = 60.0


def curves_of(figures: dict[str, Any]) -> tuple[tuple[SweepCurve, ...], str]:
    """Curves of a recorded sweep with their unit; none where the record does not hold them."""
    found, unit = [], ""
    points = figures.get("points")
    for point in points if isinstance(points, list) else []:
        try:
            curve = point["curve"]
            speeds = np.array(curve["rpm"], dtype=np.float64)
            amplitude, phase_deg = (np.array(curve[k], dtype=np.float64) for k in ("amplitude", "phase_deg"))
            z = np.array([vectors.vector(a, p) for a, p in zip(amplitude, phase_deg, strict=True)])
            marks = tuple((float(r["rpm"]), r.get("rpm_ci95")) for r in point.get("resonances", ()))
            name, unit = str(point["name"]), str(point["unit"])
        except (KeyError, TypeError, ValueError):
            continue
        if speeds.size > 1:
            found.append(SweepCurve(name, speeds, z, marks))
    return tuple(found), unit


def curves_so_far(measured: Measurement, hookup: Hookup) -> tuple[SweepCurve, ...]:
    """Curves of a sweep that is still recorded: its short-time vectors, each at the speed that it was taken at."""
    unit = units.vibration_unit(hookup.display)
    points = {p.name: p for p in hookup.points}
    mean_hz = float(measured.speeds_rpm.mean()) / 60.0
    found = []
    for point in measured.points:
        wired = points.get(point.name)
        if wired is None or point.blocks.size < 2 or point.blocks.size != measured.speeds_rpm.size:
            continue
        # the vectors of a run are brought to the displayed quantity at its mean speed
        mean = vectors.display_factor(wired, unit, mean_hz)
        turned = np.array([vectors.display_factor(wired, unit, rpm / 60.0) / mean for rpm in measured.speeds_rpm])
        found.append(SweepCurve(point.name, measured.speeds_rpm, point.blocks * turned, ()))
    return tuple(found)


class SweepView(QtWidgets.QWidget):
    """The newest sweep of the record, and what makes another one."""

    def __init__(self) -> None:
        super().__init__()
        column = QtWidgets.QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(look.GAP)
        head = parts.Card()
        self.text = parts.label("", wrap=True)
        self.bar = ProgressBar()
        self.bar.setRange(0, 100)
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName("How far the sweep is")
        self.record = parts.button("&Record a sweep", lambda: None, "main", "Run up or coast down now")
        self.file = parts.button(
            "From a recording…", lambda: None, tip="A run-up or coast-down that was recorded before"
        )
        self.off = parts.button("Break &off", lambda: None)
        row = QtWidgets.QHBoxLayout()
        row.setSpacing(look.TIGHT)
        row.addWidget(self.text, 3)
        row.addWidget(self.bar, 2)
        for each in (self.record, self.file, self.off):
            row.addWidget(each)
        head.body.addLayout(row)
        self.trouble = Said()
        head.body.addWidget(self.trouble)
        column.addWidget(head)
        self.amplitude, self.phase, self.polar = SweepPlot(), SweepPlot(phase=True), SweepPolar()
        left, right = QtWidgets.QVBoxLayout(), QtWidgets.QVBoxLayout()
        left.setSpacing(look.GAP)
        for heading, picture, side in (
            ("Amplitude against speed", self.amplitude, left),
            ("Phase against speed", self.phase, left),
            ("Vectors through the speed", self.polar, right),
        ):
            card = parts.Card(heading)
            card.body.addWidget(picture, 1)
            side.addWidget(card, 1)
        self.columns = parts.Columns(left, right, (6, 5))
        column.addWidget(self.columns, 1)
        self._shown: int | None = None
        self._live = self._busy = False
        self._may = True
        self._running_rpm: float | None = None
        self.show_state(JobState())
        self.show_progress(0.0, "")

    def show_state(self, state: JobState) -> None:
        """Show the newest sweep of the record."""
        self._state = state
        self._running_rpm = state.brief.rotor.speed_rpm
        event = newest(state, "sweep")
        number = None if event is None else event.id
        if self._live or (number == self._shown and number is not None):
            return
        self._shown = number
        figures: dict[str, Any] = {} if event is None else event.what.figures
        curves, unit = curves_of(figures)
        running = figures.get("running_rpm") or state.brief.rotor.speed_rpm
        for picture in (self.amplitude, self.phase):
            picture.show_sweep(curves, unit, running)
        self.polar.show_sweep(curves, unit)
        margin = figures.get("margin_percent")
        if event is None and self._may:
            said = "No run-up or coast-down is recorded yet. Press, then run up, or switch off and let it coast down."
        elif event is None:
            said = "No run-up or coast-down is recorded yet."
        else:
            reasons = "; ".join(event.what.reasons)
            said = f"{parts.begun(str(figures.get('direction', 'sweep')))}, entry {event.id}. "
            said += "No resonance was found." if margin is None else f"Margin to the next resonance {margin:.0f} %."
            said += f" Not to be trusted: {reasons}." if reasons else ""
        self.text.setText(said)

    def show_live(self, curves: Sequence[SweepCurve], unit: str) -> None:
        """Draw what a sweep that is recorded has shown so far, with no more than that."""
        self._live = bool(curves)
        for picture in (self.amplitude, self.phase):
            picture.show_sweep(curves, unit, self._running_rpm)
        self.polar.show_sweep(curves, unit)

    def show_progress(self, share: float, text: str) -> None:
        """How far a sweep that is recorded is; an empty text: none is, and the newest of the record is shown again."""
        if not text and self._live:
            self._live, self._shown = False, None
            self.show_state(self._state)
        self._busy = bool(text)
        self._offer()
        for widget in (self.bar, self.off):
            widget.setVisible(bool(text))
        self.bar.setValue(round(100.0 * share))
        if text:
            self.text.setText(parts.begun(text))

    def set_may(self, may: bool) -> None:
        """Whether another sweep may be recorded in this job."""
        if may != self._may:
            self._may, self._shown = may, None
            self.show_state(self._state)
            self._offer()

    def _offer(self) -> None:
        for each in (self.record, self.file):
            each.setVisible(self._may and not self._busy)

    def set_clockwise(self, clockwise: bool) -> None:
        """Which way lag grows on the screen."""
        self.polar.set_clockwise(clockwise)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        for part in (self.amplitude, self.phase, self.polar, self.trouble):
            part.set_theme(theme)

    def set_room(self, width_px: int, body_px: int) -> None:
        """Pictures beside or below each other."""
        self.columns.set_beside(width_px >= _BESIDE_EMS * body_px)
