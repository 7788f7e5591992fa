"""One measured check in place: buttons, progress, what was found last, and its picture."""

from __future__ import annotations

import math
from collections.abc import Callable
from datetime import datetime
from typing import Any

import numpy as np
from PySide6 import QtCore, QtWidgets
from stillshaft.dsp import vectors
from stillshaft.solver.events import Event, Measured
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.figures import Spectrum, SweepCurve
from stillshaft.ui.desktop.inspect_measure import Kind, Measuring
from stillshaft.ui.desktop.plots import SpectrumPlot, SweepPlot
from stillshaft.ui.desktop.said import Remark
from stillshaft.ui.desktop.stages import State, Weight
from stillshaft.ui.desktop.why import explain
from stillshaft.ui.desktop.worded import ProgressBar
from stillshaft.ui.report_words import figure, with_half
from stillshaft.ui.theme import THEMES, Theme

_MOST_LINES = 12


def moment(at: str) -> str:
    """When something was recorded, on the clock of this place."""
    return datetime.fromisoformat(at).astimezone().strftime("%Y-%m-%d %H:%M")


def told(event: Event[Measured]) -> list[str]:
    """What a recorded check found, in lines."""
    figures = event.what.figures
    lines = {
        "spectrum": _spectrum_lines,
        "sweep": _sweep_lines,
        "bump": _bump_lines,
        "background": _background_lines,
        "signal check": _signal_lines,
        "repeatability": _repeat_lines,
    }.get(event.what.what, lambda _figures: [])(figures)
    return [*lines, *(str(w) for w in figures.get("warnings") or [])][:_MOST_LINES]


def _number(value: object) -> float:
    return float(value) if isinstance(value, int | float) else math.nan


def _spectrum_lines(figures: dict[str, Any]) -> list[str]:
    lines = []
    for point in figures.get("points", []):
        shares = [f"{name} {share:.0f} %" for name, share in point["shares_percent"].items() if share >= 1.0]
        lines.append(f"{point['name']}: {', '.join(shares)} of the mean square")
    for pair in figures.get("pairs", []):
        first, second = pair["points"]
        ratio, lag = _number(pair["ratio"]), _number(pair["lag_deg"])
        half, turned = pair.get("ratio_ci95"), pair.get("lag_ci95_deg")
        lines.append(f"{second} over {first}: {_told(ratio, half)}, {_told(lag, turned)}° apart")
    return lines


def _told(value: float, half: object, unit: str = "") -> str:
    """A figure to the decimals that its interval makes worth reading, with that where there is one."""
    if isinstance(half, int | float):
        return with_half(value, float(half), unit)
    return f"{figure(value)} {unit}".rstrip()


def _sweep_lines(figures: dict[str, Any]) -> list[str]:
    margin = figures.get("margin_percent")
    far = "no margin can be given" if margin is None else f"the nearest is {margin:.1f} % from running speed"
    lines = [
        f"{parts.begun(figures['direction'])}, {figures['slowest_rpm']:.0f} to {figures['fastest_rpm']:.0f} r/min: {far}"
    ]
    for point in figures.get("points", []):
        lines += [
            f"{point['name']}: resonance at {_told(r['rpm'], r.get('rpm_ci95'), 'r/min')}, "
            f"amplification {_number(r['amplification']):.1f}"
            for r in point["resonances"]
        ]
    return lines


def _bump_lines(figures: dict[str, Any]) -> list[str]:
    return [
        f"{_told(m['frequency_hz'], m['frequency_ci95_hz'], 'Hz')} ({60 * m['frequency_hz']:.0f} r/min), damping ratio "
        f"{m['damping_ratio']:.3f}, seen best at {m['point']}"
        for m in figures.get("modes", [])
    ]


def _background_lines(figures: dict[str, Any]) -> list[str]:
    return [f"{b['name']}: {_told(b['level'], b['ci95'], b['unit'])}" for b in figures.get("levels", [])]


def _signal_lines(figures: dict[str, Any]) -> list[str]:
    return [
        f"{parts.begun(f['weight'])}: {f['where']}: {f['what']}" + (f"; {f['cure']}" if f.get("cure") else "")
        for f in figures.get("findings", [])
    ]


def _repeat_lines(figures: dict[str, Any]) -> list[str]:
    from stillshaft.solver.inspection import Repeat
    from stillshaft.ui import job_checks

    return [job_checks.change_told(Repeat(**p)) for p in figures.get("points", [])]


def spectrum_of(figures: dict[str, Any]) -> Spectrum:
    """The picture of a recorded spectrum."""
    points = figures["points"]
    return Spectrum(
        np.asarray(figures["frequency_hz"], dtype=np.float64),
        tuple(p["name"] for p in points),
        tuple(np.asarray(p["amplitude"], dtype=np.float64) for p in points),
        points[0]["unit"] if points else "",
        figures["speed_rpm"] / 60.0,
        figures["averages"],
    )


def curves_of(figures: dict[str, Any]) -> list[SweepCurve]:
    """The curves of a recorded run-up or coast-down."""
    curves = []
    for point in figures["points"]:
        curve = point["curve"]
        known = [(a, p) for a, p in zip(curve["amplitude"], curve["phase_deg"], strict=True)]
        z = np.array([vectors.vector(a, p or 0.0) for a, p in known])
        found = tuple((r["rpm"], r.get("rpm_ci95")) for r in point["resonances"])
        curves.append(SweepCurve(point["name"], np.asarray(curve["rpm"], dtype=np.float64), z, found))
    return [c for c in curves if c.speeds_rpm.size > 1]


class ResultCard(parts.Card):
    """A kind of measured check; `from_source` and `from_file` are what its buttons do."""

    def __init__(
        self, kind: Kind, measuring: Measuring, from_source: Callable[[str], None], from_file: Callable[[str], None]
    ) -> None:
        super().__init__(kind.title)
        self.kind = kind
        self._measuring = measuring
        self._shown: int | None = None
        self._theme: Theme = THEMES["light"]
        self.do = parts.label(kind.do, wrap=True)
        self.body.addWidget(self.do)
        row = QtWidgets.QHBoxLayout()
        row.setSpacing(look.TIGHT)
        runs = kind.seconds == 0.0
        words = "Compare" if runs else f"Record {kind.seconds:.0f} s"
        self.record = parts.button(words, lambda: from_source(kind.what), "main", "From the source chosen on Hook-up")
        self.record.setAccessibleName(f"{words}: {kind.title}")
        self.file = parts.button("From a recording…", lambda: from_file(kind.what))
        self.file.setAccessibleName(f"From a recording: {kind.title}")
        self.file.setVisible(not runs)
        row.addWidget(self.record)
        if not runs:
            row.addWidget(self.file)
        row.addStretch(1)
        self.body.addLayout(row)
        self.under_way = QtWidgets.QWidget()
        going = QtWidgets.QHBoxLayout(self.under_way)
        going.setContentsMargins(0, 0, 0, 0)
        self.bar = ProgressBar()
        self.bar.setRange(0, 1000)
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(f"Progress: {kind.title}")
        self.cancel = parts.button("Break off", measuring.cancel)
        self.cancel.setAccessibleName(f"Break off: {kind.title}")
        going.addWidget(self.bar, 1)
        going.addWidget(self.cancel)
        self.step = parts.label("", "small", wrap=True)
        self.body.addWidget(self.under_way)
        self.body.addWidget(self.step)
        self.refused = Remark()
        self.body.addWidget(self.refused)
        self.found = QtWidgets.QWidget()
        column = QtWidgets.QVBoxLayout(self.found)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(look.HAIR)
        head = QtWidgets.QHBoxLayout()
        self.sign = parts.Sign(20)
        self.verdict = parts.label("", "heading", wrap=True)
        head.addWidget(self.sign, 0, QtCore.Qt.AlignmentFlag.AlignTop)
        head.addWidget(self.verdict, 1)
        column.addLayout(head)
        self.picture: SpectrumPlot | SweepPlot | None = None
        if kind.what == "spectrum":
            self.picture = SpectrumPlot()
        elif kind.what == "sweep":
            self.picture = SweepPlot()
        if self.picture is not None:
            self.picture.set_smallest((14.0, 13.0))
            column.addWidget(self.picture, 1)
        self.lines = parts.label("", wrap=True)
        column.addWidget(self.lines)
        explain(self.found, "measured-check")
        if self.picture is not None:
            explain(self.picture, "measured-spectrum" if kind.what == "spectrum" else "resonance")
        self.body.addWidget(self.found)
        self.renew()

    def renew(self) -> None:
        """Whether something is under way, and how far."""
        mine, busy = self._measuring.what == self.kind.what, self._measuring.what is not None
        self.record.setEnabled(not busy)
        self.file.setEnabled(not busy)
        self.under_way.setVisible(mine)
        self.step.setVisible(mine)
        if mine:
            self.refused.say("")
            self.bar.setValue(round(1000 * self._measuring.share))
            self.step.setText(f"{parts.begun(self._measuring.text)}: {100 * self._measuring.share:.0f} %")

    def make_ready(self) -> None:
        """What must hold was seen to: recording begins when the person says so."""
        self.refused.say(f"{self.record.text()} when all is ready. {self.kind.do}")
        self.record.setFocus()

    def refuse(self, why: str) -> None:
        """Say why the check was not made."""
        self.refused.say(f"{parts.begun(why)}.", refused=True)

    def show_event(self, event: Event[Measured] | None) -> None:
        """Show what was found last."""
        self.found.setVisible(event is not None)
        if event is None or event.id == self._shown:
            self._shown = None if event is None else event.id
            return
        self._shown = event.id
        what = event.what
        self.sign.show_weight(State.DONE if what.trusted else Weight.CAUTION)
        verdict = f"Measured {moment(event.at)}" + ("" if event.by == "" else f" by {event.by}")
        self.verdict.setText(verdict if what.trusted else f"{verdict}; not to be trusted yet")
        doubts = [] if what.trusted else [f"{parts.begun(reason)}." for reason in what.reasons]
        try:
            lines = [*doubts, *told(event)]
            if isinstance(self.picture, SpectrumPlot):
                self.picture.show_spectrum(spectrum_of(what.figures))
            elif isinstance(self.picture, SweepPlot):
                points = what.figures["points"]
                unit = points[0]["unit"] if points else ""
                self.picture.show_sweep(curves_of(what.figures), unit, what.figures.get("running_rpm"))
        except (KeyError, TypeError, ValueError, IndexError):  # a record may hold anything
            lines = ["The figures of this entry are not as this program writes them."]
        self.lines.setText("\n".join(lines))
        self.lines.setVisible(bool(lines))

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.sign.set_theme(theme)
        self.refused.set_theme(theme)
        if self.picture is not None:
            self.picture.set_theme(theme)
