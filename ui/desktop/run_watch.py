"""A run while it goes on: speed and vectors in large figures, cloud, ribbon, waveform and spectrum.

It takes snapshots and glances and gives nothing back: whatever measures may feed it.
"""

from __future__ import annotations

from functools import partial

from PySide6 import QtGui, QtWidgets
from stillshaft.dsp import vectors
from stillshaft.dsp.measure import Measurement, PointVector
from stillshaft.dsp.steadiness import Beat
from stillshaft.ui import account
from stillshaft.ui.desktop import figures, look, parts
from stillshaft.ui.desktop.canvas import Marker
from stillshaft.ui.desktop.plots import PhaseRibbon, SpectrumPlot, WaveformPlot
from stillshaft.ui.desktop.polar import VectorCloud
from stillshaft.ui.desktop.stages import State, Weight
from stillshaft.ui.desktop.watch import Glance
from stillshaft.ui.desktop.why import explain
from stillshaft.ui.live import Snapshot
from stillshaft.ui.theme import Theme

# room in heights of text that cloud and curves, waveform and spectrum need side by side
_BESIDE_EMS, _BOTH_EMS, _BOTH_BELOW_EMS = 52.0, 80.0, 40.0
_LEAST_SHARE, _LEAST_DEG = 0.001, 0.15  # finer is not shown: nothing on a machine repeats better
_VERDICTS: dict[str, tuple[Weight | State, str]] = {
    "steady": (State.DONE, "steady"),
    "drifting": (Weight.CAUTION, "drifting"),
    "beating": (Weight.CAUTION, "second source"),
    "walking": (Weight.STOP, "strong second source"),
    "unsettled": (Weight.CAUTION, "unsettled"),
    "too-short": (State.UNDER_WAY, "too short to tell"),
}


def _interval(half: float | None, worth: float | None) -> str:
    """A half width with the decimals that `worth` makes worth reading, or that it is below the last of them."""
    if half is None or worth is None:
        return "± ?"
    shown = account.number(half, max(half, worth))
    return f"± {shown}" if float(shown) > 0.0 else f"± <{shown[:-1]}1"


def _cleaned(beat: Beat) -> str:
    """What to say of the vector that is left without a second source, with its 95 % intervals."""
    amplitude, phase_deg = vectors.amplitude_phase(beat.cleaned)
    half, half_deg = beat.cleaned_half_widths()
    worth = max(half, _LEAST_SHARE * amplitude)
    said, interval = account.number(amplitude, worth), _interval(half, worth)
    if half_deg is None:
        return f"without it {said} {interval}, phase not determined"
    said_deg = account.number(phase_deg, max(half_deg, _LEAST_DEG))
    return f"without it {said} {interval} at {said_deg}° {_interval(half_deg, 0.1 * _LEAST_DEG)}°"


class SpeedCard(parts.Card):
    """The speed in large figures, and how even it and its pulses are."""

    def __init__(self) -> None:
        super().__init__("Speed", "r/min")
        self.speed = parts.Live("–", "largeFigure", "60000.0")
        self.range = parts.Live("no pulses yet", "small", "60000.0 to 60000.0")
        self.time = parts.Live(" ", "", "9999 revolutions in 99 s")
        self._row = QtWidgets.QBoxLayout(QtWidgets.QBoxLayout.Direction.TopToBottom)
        self._row.setSpacing(look.TIGHT)
        self._row.addWidget(self.speed)
        rest = QtWidgets.QVBoxLayout()
        rest.setSpacing(look.HAIR)
        for widget in (self.range, self.time):
            rest.addWidget(widget)
        self._row.addLayout(rest)
        self.body.addLayout(self._row)
        self.body.addStretch(1)

    def set_wide(self, wide: bool) -> None:
        """What belongs to the speed beside it, or below it."""
        direction = QtWidgets.QBoxLayout.Direction
        self._row.setDirection(direction.LeftToRight if wide else direction.TopToBottom)
        self._row.setSpacing(look.WIDE if wide else look.TIGHT)
        for part, share in enumerate((0, 1) if wide else (0, 0)):
            self._row.setStretch(part, share)

    def show_measurement(self, measured: Measurement | None, trouble: str | None) -> None:
        """Write the newest figures."""
        if measured is None:
            self.speed.say("–")
            self.range.say("no pulses yet" if trouble is None else "no speed")
            self.time.say(" ")
            return
        speed = measured.speed
        self.speed.say(f"{speed.mean_rpm:.1f}" if speed.mean_rpm < 1e4 else f"{speed.mean_rpm:.0f}")
        self.range.say(f"{speed.min_rpm:.1f} to {speed.max_rpm:.1f}")
        revolutions = max((p.revolutions for p in measured.points), default=0)
        bad = speed.missing_pulses or speed.extra_pulses
        pulses = f"{speed.missing_pulses} missing, {speed.extra_pulses} extra"
        self.time.say(pulses if bad else f"{revolutions} revolutions in {measured.duration_s:.0f} s")
        said = f"Speed {speed.mean_rpm:.1f} revolutions per minute"
        if said != self.accessibleName():
            self.setAccessibleName(said)


class PointCard(parts.Card):
    """1x amplitude and phase of a point in large figures with their intervals, and what to think of them."""

    def __init__(self, number: int, name: str) -> None:
        super().__init__()
        self.point = name
        self.marker = Marker(number)
        self.head.addWidget(self.marker)
        self.head.addWidget(parts.label(name, "heading", wrap=True), 1)
        self.body.addLayout(self.head)
        grid = QtWidgets.QGridLayout()
        grid.setHorizontalSpacing(look.ROOM)
        grid.setVerticalSpacing(0)
        self.amplitude = parts.Live("–", "figure", "000.00")
        self.phase = parts.Live("–", "figure", "000.0°")
        self.amplitude_interval = parts.Live(" ", "small", "± 00.000 mm/s peak")
        self.phase_interval = parts.Live(" ", "small", "not determined")
        for column, (figure, interval) in enumerate(
            ((self.amplitude, self.amplitude_interval), (self.phase, self.phase_interval))
        ):
            grid.addWidget(figure, 0, column)
            grid.addWidget(interval, 1, column)
        for each, key in (
            (self.amplitude, "amplitude"), (self.phase, "phase"),
            (self.amplitude_interval, "interval"), (self.phase_interval, "interval"),
        ):  # fmt: skip
            explain(each, key)
        grid.setColumnStretch(0, 3)
        grid.setColumnStretch(1, 2)
        self.body.addLayout(grid)
        foot = QtWidgets.QHBoxLayout()
        foot.setSpacing(look.TIGHT)
        self.sign = parts.Sign(18)
        self.verdict = parts.Live("no figures yet", "", "strong second source")
        foot.addWidget(self.sign)
        foot.addWidget(self.verdict, 1)
        self.rest = parts.Live(" ", "small", "without it 000.000 ± 0.000 at 000.0° ± 0.0°")
        for each in (self.verdict, self.rest):
            explain(each, "steadiness")
        self.body.addLayout(foot)
        self.body.addWidget(self.rest)
        self.body.addStretch(1)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.marker.set_theme(theme)
        self.sign.set_theme(theme)

    def show_point(self, measured: Measurement | None) -> None:
        """Write the newest figures."""
        point = None if measured is None else next((p for p in measured.points if p.name == self.point), None)
        if measured is None or point is None:
            for live in (self.amplitude, self.phase):
                live.say("–")
            for live in (self.amplitude_interval, self.phase_interval):
                live.say(" ")
            self.verdict.say("no figures yet")
            self.rest.say(" ")
            self.sign.show_weight(State.EMPTY)
            return
        self._show(point, measured.unit)

    def _show(self, point: PointVector, unit: str) -> None:
        amplitude, phase_deg = vectors.amplitude_phase(point.z)
        half, half_deg = point.amplitude_ci95, point.phase_ci95_deg
        worth = None if half is None else max(half, _LEAST_SHARE * amplitude)
        self.amplitude.say(account.number(amplitude, worth))
        self.amplitude_interval.say(f"{_interval(half, worth)} {unit}")
        worth_deg = None if half_deg is None else max(half_deg, _LEAST_DEG)
        self.phase.say(f"{phase_deg:.0f}°" if half_deg is None else f"{account.number(phase_deg, worth_deg)}°")
        self.phase_interval.say("not determined" if half_deg is None else f"{_interval(half_deg, 0.1 * _LEAST_DEG)}°")
        weight, words = _VERDICTS[point.steadiness.verdict]
        rest = " "
        swing, beat = point.steadiness.phase_swing_deg, point.steadiness.beat
        if beat is not None and weight is not State.UNDER_WAY:
            rest = _cleaned(beat)
        elif swing is not None and weight is State.DONE:
            words = f"{words}, within {max(swing, 0.1):.1f}°"
        self.verdict.say(words)
        self.rest.say(rest)
        self.verdict.setToolTip(" ".join((*point.steadiness.reasons, *point.steadiness.notes)))
        self.sign.show_weight(weight)
        said = figures.vector_words(point.name, point.z, unit, half, half_deg) + f"; {words}"
        if said != self.accessibleName():
            self.setAccessibleName(said)


class RunWatch(QtWidgets.QWidget):
    """All of it. `show_snapshot` and `show_glance` take what comes, `show_last` the last run's vectors by point."""

    def __init__(self) -> None:
        super().__init__()
        self._theme: Theme | None = None
        self._last: dict[str, complex] = {}
        self._measured: Measurement | None = None
        self.speed = SpeedCard()
        self.points: list[PointCard] = []
        self.cloud, self.ribbon = VectorCloud(), PhaseRibbon()
        self.waveform, self.spectrum = WaveformPlot(), SpectrumPlot()
        self.pictures = (self.cloud, self.ribbon, self.waveform, self.spectrum)
        whole = QtWidgets.QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(look.GAP)
        self._strip = QtWidgets.QGridLayout()
        self._strip.setSpacing(look.GAP)
        self._strip.addWidget(self.speed, 0, 0)
        whole.addLayout(self._strip)
        self.cloud_card = self._card("Vector cloud", "0° up, lag against rotation", self.cloud)
        left, right, shapes = QtWidgets.QVBoxLayout(), QtWidgets.QVBoxLayout(), QtWidgets.QHBoxLayout()
        left.addWidget(self.cloud_card)
        for layout in (right, shapes):
            layout.setSpacing(look.GAP)
        right.addWidget(self._card("Phase ribbon", "", self.ribbon), 1)
        right.addLayout(shapes, 1)
        self.waveform_card = self._card("Waveform", "", self.waveform)
        self.spectrum_card = self._card("Spectrum", "", self.spectrum)
        shapes.addWidget(self.waveform_card, 1)
        shapes.addWidget(self.spectrum_card, 1)
        self.turn_waveform = parts.button("Spectr&um", partial(self._turn, "spectrum"), "segment", "Show the spectrum")
        self.turn_spectrum = parts.button(
            "Waveform (&U)", partial(self._turn, "waveform"), "segment", "Show the waveform"
        )
        self.waveform_card.head.addWidget(self.turn_waveform)
        self.spectrum_card.head.addWidget(self.turn_spectrum)
        self._front, self._room_px, self._room_ems = "waveform", 1120, 80.0
        self.columns = parts.Columns(left, right, (5, 6))
        whole.addWidget(self.columns, 1)
        self._arrange()
        self.show_snapshot(None)
        self.show_glance(None)

    def _card(self, heading: str, note: str, picture: QtWidgets.QWidget) -> parts.Card:
        card = parts.Card(heading, note)
        card.body.addWidget(picture, 1)
        return card

    def set_points(self, names: tuple[str, ...]) -> None:
        """Have a card for each point of the hook-up."""
        if names == tuple(c.point for c in self.points):
            return
        for card in self.points:
            self._strip.removeWidget(card)
            card.hide()
            card.deleteLater()
        self.points = [PointCard(number, name) for number, name in enumerate(names)]
        for card in self.points:
            if self._theme is not None:
                card.set_theme(self._theme)
            card.show_point(self._measured)
        self._arrange()

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        for picture in self.pictures:
            picture.set_theme(theme)
        for card in self.points:
            card.set_theme(theme)

    def set_clockwise(self, clockwise: bool) -> None:
        """Which way lag grows on the screen."""
        self.cloud.set_clockwise(clockwise)

    def show_last(self, last: dict[str, complex]) -> None:
        """The vectors of the last run, by point, to be compared with."""
        self._last = last

    def show_snapshot(self, snapshot: Snapshot | None) -> None:
        """Write and draw the newest measurement; None: nothing measured yet."""
        measured = None if snapshot is None else snapshot.measured
        self.speed.show_measurement(measured, None if snapshot is None else snapshot.trouble)
        for card in self.points:
            card.show_point(measured)
        self._measured = measured
        self.cloud.show_cloud(
            () if measured is None else figures.cloud(measured, self._last), measured.unit if measured else ""
        )
        self.ribbon.show_ribbon(() if measured is None else figures.ribbon(measured))

    def show_glance(self, glance: Glance | None) -> None:
        """Draw the newest waveform and spectrum."""
        if glance is None or glance.waveform is not self.waveform.shown:
            self.waveform.show_waveform(None if glance is None else glance.waveform)
        if glance is None or glance.spectrum is not self.spectrum.shown:
            self.spectrum.show_spectrum(None if glance is None else glance.spectrum)

    # room

    def _turn(self, front: str) -> None:
        self._front = front
        self._arrange()
        (self.turn_waveform if front == "waveform" else self.turn_spectrum).setFocus()

    def set_room(self, width_px: int, body_px: int) -> None:
        """There is so much room from left to right for text of this size."""
        self._room_px, self._room_ems = width_px, width_px / body_px
        self._arrange()

    def showEvent(self, event: QtGui.QShowEvent) -> None:  # noqa: N802 - Qt's name
        """Only now the cards know how large their text is."""
        super().showEvent(event)
        self._arrange()

    def _arrange(self) -> None:
        """Cards in as many columns as fit; waveform and spectrum side by side, or one of them where there is little room."""
        room = self._room_ems
        count = len(self.points)
        self.speed.set_wide(False)
        needed = max((c.minimumSizeHint().width() for c in self.points), default=1) + look.GAP
        one_row = self.speed.minimumSizeHint().width() + count * needed <= self._room_px
        across = 1 + count if one_row else max(1, (self._room_px + look.GAP) // needed)
        whole_row = across < 3 and not one_row  # of the speed: points stay in pairs
        self.speed.set_wide(whole_row)
        self._strip.addWidget(self.speed, 0, 0, 1, across if whole_row else 1)
        for number, card in enumerate(self.points, start=across if whole_row else 1):
            self._strip.addWidget(card, *divmod(number, across))
        for column in range(max(across, self._strip.columnCount())):
            share = (2 if column == 0 and one_row else 3) if column < across else 0
            self._strip.setColumnStretch(column, share)
        beside = room >= _BESIDE_EMS
        self.columns.set_beside(beside)
        self.cloud.set_smallest((17.0, 17.0 if beside else 28.0))
        both = room >= _BOTH_EMS or (not beside and room >= _BOTH_BELOW_EMS)
        self.turn_waveform.setVisible(not both)
        self.turn_spectrum.setVisible(not both)
        self.waveform_card.setVisible(both or self._front == "waveform")
        self.spectrum_card.setVisible(both or self._front == "spectrum")
