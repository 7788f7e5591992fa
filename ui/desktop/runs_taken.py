"""The runs that were taken, in their order: each with what speaks for and against it, and any two side by side."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import msgspec
import numpy as np
from PySide6 import QtCore, QtWidgets
from stillshaft.solver import run_rules, run_vectors
from stillshaft.solver.state import JobRun, JobState, fold
from stillshaft.ui import job_checks
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.figures import CloudPoint, region_border
from stillshaft.ui.desktop.inspect_list import Row, RowList
from stillshaft.ui.desktop.masses_cards import Rows
from stillshaft.ui.desktop.open_job import Shown
from stillshaft.ui.desktop.polar import VectorCloud
from stillshaft.ui.desktop.said import Said
from stillshaft.ui.desktop.stages import State
from stillshaft.ui.desktop.worded import LineEdit
from stillshaft.ui.report_words import with_half
from stillshaft.ui.session import Session
from stillshaft.ui.theme import Theme

_BESIDE_EMS, _LIST_EMS, _LOW_LIST_EMS = 52.0, 17, 11
_HYPHEN = re.compile(r"(?<= )-(?=\d)")  # a minus as it is printed
_LARGE = 60  # degrees of freedom where the record does not say


@dataclass(frozen=True)
class Judged:
    """What the rules say of a run of the record: whether the person may use it anyway, and what to do by sentence."""

    may_use: bool
    cures: dict[str, str]


def judged(session: Session, number: int) -> Judged:
    """Judge a run by the record as it stood before it; of one that the record does not hold nothing is said."""
    event = next((e for e in session.job.events if e.id == number), None)
    if event is None:
        return Judged(False, {})  # another job was opened before its turn came
    before = fold(e for e in session.job.events if e.id < number)
    judgement = run_rules.judge_run(before, msgspec.to_builtins(event.what))
    cures = {f.sentence: f.what_to_do for f in (*judgement.refusals, *judgement.cautions) if f.rule != "steadiness"}
    return Judged(all(run_rules.can_be_allowed(f) for f in judgement.refusals), cures)


def told_once(reasons: Sequence[str]) -> list[str]:
    """The reasons without those that another one of the same point says in more words."""

    def within(reason: str) -> bool:
        point, _, what = reason.partition(": ")
        return any(r != reason and r.startswith(f"{point}: ") and what in r for r in reasons)

    return [r for r in reasons if not within(r)]


def vector_lines(run: JobRun) -> list[str]:
    """Vectors of a run with their 95 % half widths."""
    lines = []
    for v in run.what.vectors:
        size = with_half(v.amplitude, v.amplitude_ci95, run.what.unit)
        phase = "" if v.phase_deg is None else f" at {with_half(v.phase_deg, v.phase_ci95_deg, '').rstrip()}°"
        lines.append(f"{v.point}: {size}{phase}{f', {v.verdict}' if v.verdict else ''}")
    return lines


def about(run: JobRun, state: JobState) -> str:
    """Speed, length, masses and conditions of a run."""
    what = run.what
    said = [f"{what.purpose}, {what.speed_rpm:.0f} r/min"]
    if what.duration_s is not None:
        said.append(f"{what.duration_s:.0f} s")
    said.append(run_vectors.mass_text(run_vectors.masses_of(what.masses, state.brief)))
    said += [f"{name} {value}" for name, value in what.conditions.items()]
    if what.minutes_since_start is not None:
        said.append(f"{what.minutes_since_start:g} min since the start")
    return "; ".join(said)


def both(run: JobRun, other: JobRun | None) -> list[CloudPoint]:
    """Vectors of a run, with those of another one dashed."""
    unit = run.what.unit
    before = {} if other is None else run_vectors.of_job(other, unit)
    given = None if run.what.covariance is None else run.what.covariance.degrees_of_freedom
    freedom = _LARGE if given is None else int(given)
    return [
        CloudPoint(
            name, np.empty(0, dtype=complex), m.z, region_border(m.z, m.covariance, freedom),
            before[name].z if name in before else None,
        )
        for name, m in run_vectors.of_job(run, unit).items()
    ]  # fmt: skip


def changes(earlier: JobRun, later: JobRun, state: JobState) -> list[str]:
    """The change of each point from one run to another, and whether it stands out of the scatter."""
    try:
        found = job_checks.compared(earlier.what, later.what, run_vectors.repeatability(state))
    except job_checks.CheckError as error:
        return [str(error)]
    return [_HYPHEN.sub("−", job_checks.change_told(change)) for change in found]


class TakenView(QtWidgets.QWidget):
    """List and detail.

    Emits `replayed` with a recording and its name, `used` and `left_out` with run and reason, `made` with a recording that
    belongs to no run, `asked` when what the rules say of a run is wanted.
    """

    replayed = QtCore.Signal(Path, str)
    used = QtCore.Signal(int, str)
    left_out = QtCore.Signal(int, str)
    made = QtCore.Signal(Path)
    asked = QtCore.Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.list = RowList("Runs")
        self.list.chosen.connect(self._turn_to)
        self._row = QtWidgets.QBoxLayout(QtWidgets.QBoxLayout.Direction.LeftToRight, self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(look.GAP)
        self._row.addWidget(self.list)
        side = QtWidgets.QVBoxLayout()
        side.setSpacing(look.GAP)
        side.addWidget(self._detail())
        side.addWidget(self._beside(), 1)
        self._row.addLayout(side, 1)
        self._shown: Shown | None = None
        self._unused: tuple[Path, ...] = ()
        self._judged: dict[int, Judged] = {}
        self._renew()

    def _detail(self) -> parts.Card:
        self.detail = parts.Card()
        self.called = parts.label("", "heading", wrap=True)
        self.about = parts.label("", "quiet", wrap=True)
        self.vectors, self.reasons = Rows(), Rows()
        self.replay = parts.button("Re&play", self._replay, tip="Play its recording again on the Live view")
        self.reason = LineEdit()
        self.reason.setPlaceholderText("kept in the record")
        self.reason_name = parts.labelled("Reason", self.reason)
        self.use = parts.button("&Use anyway", self._use, tip="Let it count, with the reason")
        self.leave = parts.button("&Leave out", self._leave, tip="It counts no longer, with the reason")
        self.make = parts.button("&Make a run of it", self._make, "main", "Measure and judge this recording")
        self.trouble = Said()
        for each in (self.called, self.about, self.vectors, self.reasons):
            self.detail.body.addWidget(each)
        row = QtWidgets.QHBoxLayout()
        row.setSpacing(look.TIGHT)
        row.addWidget(self.replay)
        row.addWidget(self.make)
        row.addWidget(self.reason_name)
        row.addWidget(self.reason, 1)
        row.addWidget(self.use)
        row.addWidget(self.leave)
        row.addStretch(0)  # buttons keep their width where no reason is asked for
        self.detail.body.addLayout(row)
        self.detail.body.addWidget(self.trouble)
        return self.detail

    def _beside(self) -> parts.Card:
        self.compare = parts.Card("Side by side")
        self.against = parts.Choice()
        self.against.activated.connect(lambda _index: self._compare())
        self.compare.head.insertWidget(1, parts.labelled("with", self.against))
        self.compare.head.insertWidget(2, self.against)
        self.changes = Rows()
        self.cloud = VectorCloud()
        self.cloud.setAccessibleName("Vectors of both runs")
        self.compare.body.addWidget(self.changes)
        self.compare.body.addWidget(
            parts.label(
                "Solid: this run with its 95 % region. Dashed: the other one. ± is of these two runs; what is said of the "
                "scatter also counts how far runs lie apart at all.",
                "small",
                wrap=True,
            )
        )
        self.compare.body.addWidget(self.cloud, 1)
        return self.compare

    # what there is

    @property
    def run(self) -> JobRun | None:
        """The run that is chosen."""
        runs = () if self._shown is None else self._shown.state.runs
        return next((r for r in runs if str(r.id) == self.list.key), None)

    @property
    def recording(self) -> Path | None:
        """The recording without a run that is chosen."""
        return next((p for p in self._unused if p.name == self.list.key), None)

    def show_job(self, shown: Shown | None, unused: Sequence[Path]) -> None:
        """Show the runs of a job, and recordings of it that belong to none."""
        if shown is None or self._shown is None or shown.folder != self._shown.folder:
            self._judged.clear()
        self._shown, self._unused = shown, tuple(unused)
        self._renew()

    def show_judged(self, number: int, found: Judged) -> None:
        """What the rules say of a run."""
        self._judged[number] = found
        if self.run is not None and self.run.id == number:
            self._show_run(self.run)

    def choose(self, number: int) -> None:
        """Turn to a run."""
        self.list.choose(str(number))

    def _renew(self) -> None:
        runs = () if self._shown is None else self._shown.state.runs
        rows = [
            Row(
                str(r.id), r.what.name, State.DONE if r.counts else State.ATTENTION,
                f"{r.what.speed_rpm:.0f} r/min, {'counts' if r.counts else 'does not count'}",
            )
            for r in runs
        ]  # fmt: skip
        rows += [Row(p.name, f"recording {p.name}", State.ATTENTION, "no run was made of it") for p in self._unused]
        self.list.show_rows(rows)
        self._turn_to(self.list.key)

    def _turn_to(self, _key: str) -> None:
        run, recording = self.run, self.recording
        self.detail.setVisible(run is not None or recording is not None)
        self.compare.setVisible(run is not None)
        self.trouble.say("")
        self.make.setVisible(run is None)
        if run is not None:
            self._show_run(run)
            self._offer(run)
            if run.id not in self._judged:
                self.asked.emit(run.id)
        elif recording is not None:
            self.called.setText(f"Recording {recording.name}")
            self.about.setText(
                "It belongs to no run: it was broken off, the source was lost, or it could not be measured."
            )
            self.vectors.show_texts(())
            self.reasons.show_texts(())
            self.replay.setVisible(True)
            self._show_reason(use=False, leave=False)

    def _show_run(self, run: JobRun) -> None:
        assert self._shown is not None
        known = self._judged.get(run.id, Judged(False, {}))
        self.called.setText(f"{run.what.name}: {'counts' if run.counts else 'does not count'}")
        self.about.setText(parts.begun(about(run, self._shown.state)))
        self.vectors.show_texts(vector_lines(run))
        self.reasons.show_texts(
            [f"{r}; {known.cures[r]}." if r in known.cures else f"{r}." for r in told_once(run.reasons)]
        )
        self.replay.setVisible(run.what.recording is not None)
        may = not self._shown.read_only and not self._shown.state.closed
        self._show_reason(use=may and not run.counts and known.may_use, leave=may and run.counts)

    def _show_reason(self, *, use: bool, leave: bool) -> None:
        self.use.setVisible(use)
        self.leave.setVisible(leave)
        for each in (self.reason, self.reason_name):
            each.setVisible(use or leave)

    def _offer(self, run: JobRun) -> None:
        """The other runs, the one before chosen."""
        assert self._shown is not None
        runs = [r for r in self._shown.state.runs if r.id != run.id]
        before = [number for number, r in enumerate(runs) if r.id < run.id]
        self.against.clear()
        for other in runs:
            self.against.addItem(other.what.name, other.id)
        self.against.setCurrentIndex(before[-1] if before else 0)
        self._compare()

    def _compare(self) -> None:
        run, shown = self.run, self._shown
        if run is None or shown is None:
            return
        number = self.against.currentData()
        other = next((r for r in shown.state.runs if r.id == number), None)
        self.against.setVisible(other is not None)
        if other is None:
            self.changes.show_texts(["there is no other run yet"])
        else:
            earlier, later = sorted((run, other), key=lambda r: r.id)
            head = f'from "{earlier.what.name}" to "{later.what.name}"'
            self.changes.show_texts([f"{head}:", *changes(earlier, later, shown.state)])
        self.cloud.show_cloud(both(run, other), run.what.unit)

    # what the person does

    def _replay(self) -> None:
        run, recording = self.run, self.recording
        if run is not None and run.what.recording is not None and self._shown is not None:
            self.replayed.emit(self._shown.folder / run.what.recording.path, run.what.name)
        elif recording is not None:
            self.replayed.emit(recording, recording.stem)

    def _make(self) -> None:
        if self.recording is not None:
            self.made.emit(self.recording)

    def _given(self) -> str:
        text = " ".join(self.reason.text().split())
        if text:
            self.reason.clear()
            self.trouble.say("")
        else:
            self.trouble.say("Write the reason first.")
            self.reason.setFocus()
        return text

    def _use(self) -> None:
        if self.run is not None and (why := self._given()):
            self.used.emit(self.run.id, why)

    def _leave(self) -> None:
        if self.run is not None and (why := self._given()):
            self.left_out.emit(self.run.id, why)

    # the page

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        for part in (self.list, self.cloud, self.against, self.trouble):
            part.set_theme(theme)

    def set_room(self, width_px: int, body_px: int) -> None:
        """List and detail side by side, or one above the other."""
        beside = width_px >= _BESIDE_EMS * body_px
        self.list.stand(self._row, wide_px=_LIST_EMS * body_px, low_px=_LOW_LIST_EMS * body_px, beside=beside)


def mean_vectors(run: JobRun, unit: str) -> dict[str, complex]:
    """Vectors of a run by point in a unit, in the first run's reference."""
    return {name: m.z for name, m in run_vectors.of_job(run, unit).items()}
