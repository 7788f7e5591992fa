"""Which text explains which part of each page; parts that pages make later take the text of what holds them."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6 import QtWidgets
from stillshaft.ui.desktop.brief_page import BriefPage
from stillshaft.ui.desktop.closeout_page import CloseOutPage
from stillshaft.ui.desktop.hookup_page import HookupPage
from stillshaft.ui.desktop.inspect_page import InspectPage
from stillshaft.ui.desktop.masses_view import MassesView
from stillshaft.ui.desktop.page import Page
from stillshaft.ui.desktop.runs_page import RunsPage
from stillshaft.ui.desktop.why import explain

_Places = Iterable[tuple[QtWidgets.QWidget, str]]


def mark(page: Page) -> None:
    """Say of every part of a page which text explains it."""
    for widget, key in _places(page):
        explain(widget, key)


def _places(page: Page) -> _Places:
    if isinstance(page, BriefPage):
        return _brief(page)
    if isinstance(page, InspectPage):
        return _inspect(page)
    if isinstance(page, HookupPage):
        return _hookup(page)
    if isinstance(page, RunsPage):
        return _runs(page)
    if isinstance(page, MassesView):
        return _masses(page)
    return _closeout(page) if isinstance(page, CloseOutPage) else ()


def _brief(page: BriefPage) -> _Places:
    yield page.subtitle, "brief"
    yield page.forms, "brief"
    yield page.start, "brief"
    yield page.remark, "refused"
    yield page.levels, "abort-level"
    yield page.conditions, "condition-tolerance"
    yield page.machines, "machines"


def _inspect(page: InspectPage) -> _Places:
    yield page.subtitle, "inspection"
    yield page.before, "cautions"
    yield page.diagnosis, "causes"
    yield page.area, "check-source"


def _hookup(page: HookupPage) -> _Places:
    yield page.subtitle, "signal-check"
    for card in (page.card, page.inputs, page.sides, page.device, page.panel):
        yield card, "input"
    yield page.pulse, "pulse"
    yield page.findings, "signal-check"
    yield page.face, "rotor-face"
    yield page.calibration, "calibration"


def _runs(page: RunsPage) -> _Places:
    watch, taken, sweep = page.watch, page.taken, page.sweep
    yield page.subtitle, "interval"
    for speed in (watch.speed, watch.speed.speed, watch.speed.range):
        yield speed, "speed"
    yield watch.speed.time, "revolutions"
    yield watch.cloud_card, "cloud"
    yield from ((watch.ribbon, "ribbon"), (watch.waveform, "waveform"), (watch.spectrum, "measured-spectrum"))
    yield page.strip, "run-progress"
    yield page.next.on, "on-rotor"
    yield page.start, "cautions"
    yield page.start.starts, "starts"
    yield taken.about, "run-length"
    yield taken.called, "run-length"
    yield taken.vectors, "run-vectors"
    yield taken.reasons, "run-reason"
    yield taken.compare, "run-change"
    yield taken.detail, "unused-recording"
    for part in (sweep.text, sweep.amplitude, sweep.phase, sweep.polar):
        yield part, "resonance"


def _masses(page: MassesView) -> _Places:
    trial, correction, entry = page.trial, page.correction, page.entry
    yield page.subtitle, "on-rotor"
    yield page.planes, "placing-face"
    yield page.face, "placing-face"
    yield page.legend, "placing-face"
    yield page.expected, "expected"
    yield trial, "trial-mass"
    yield trial.force, "force"
    yield trial.levels, "trial-levels"
    yield trial.trouble, "solve-refused"
    yield correction, "correction"
    yield correction.condition, "condition-number"
    yield correction.warnings, "solve-warning"
    yield correction.trouble, "solve-refused"
    yield page.pieces, "pieces"
    yield page.pieces.warnings, "solve-warning"
    yield page.on, "on-rotor"
    yield entry, "piece"
    yield entry.force, "force"
    yield entry.hand, "hand-work"
    yield entry.caution, "cautions"
    yield page.after, "close-missing"
    yield page.cautions, "cautions"
    yield page.sheet_card, "piece"


def _closeout(page: CloseOutPage) -> _Places:
    yield from zip(page.cards, ("before-after", "residual", "vibration-limit"), strict=True)
    close = page.close_card
    yield page.sources, "limit-source"
    yield close, "verdict"
    yield close.advice, "next-line"
    yield close.blocking, "close-blocking"
    yield close.missing, "close-missing"
    yield page.report, "progress"
    yield page.next, "stored"
