"""The panel of the simulated rotor: what is wrong with it and what sits on it, for learning and teaching."""

from __future__ import annotations

from dataclasses import replace

from PySide6 import QtCore, QtWidgets
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.simulator import CASES, PLANES, Mass, Teaching
from stillshaft.ui.desktop.worded import DoubleSpinBox, Worded
from stillshaft.ui.theme import Theme

_OWN = "set below"
_FIELD_EMS = 6.3  # heights of text that a field needs
_LEAST_RESONANCE = 40.0  # the field's lowest value stands for: left as it is


def _field(name: str, low: float, high: float, decimals: int, suffix: str) -> QtWidgets.QDoubleSpinBox:
    made = DoubleSpinBox()
    made.setRange(low, high)
    made.setDecimals(decimals)
    made.setSuffix(suffix)
    made.setAccessibleName(name)
    made.setKeyboardTracking(False)
    made.lineEdit().setTextMargins(look.TIGHT, 0, 0, 0)  # the style sheet's own padding is lost inside
    made.setSizePolicy(QtWidgets.QSizePolicy.Policy.Ignored, QtWidgets.QSizePolicy.Policy.Fixed)
    return made


class RotorPanel(Worded, QtWidgets.QWidget):
    """Fields for everything in `Teaching`; emits `applied` with what was set."""

    applied = QtCore.Signal(Teaching)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName("Simulated rotor")
        body = QtWidgets.QVBoxLayout(self)
        body.setContentsMargins(0, 0, 0, 0)
        body.setSpacing(look.TIGHT)
        self.case = parts.Choice()
        self.case.addItems([*CASES, _OWN])
        self.case.activated.connect(self._take_case)
        grid = QtWidgets.QGridLayout()
        grid.setHorizontalSpacing(look.HAIR)
        grid.setVerticalSpacing(look.HAIR)
        grid.setColumnStretch(1, 1)
        grid.setColumnStretch(2, 1)
        grid.addWidget(parts.labelled("&Case", self.case), 0, 0, 1, 3)
        grid.addWidget(self.case, 1, 0, 1, 3)
        self.speed = _field("Speed", 200.0, 6000.0, 0, " r/min")
        self.resonance = _field("Resonance in percent of running speed", _LEAST_RESONANCE, 250.0, 0, " % of speed")
        self.resonance.setSpecialValueText("left as it is")
        self.neighbour_hz = _field("Neighbour beside running speed", -5.0, 5.0, 2, " Hz")
        self.neighbour_mm_s = _field("Vibration from the neighbour", 0.0, 50.0, 1, " mm/s")
        self.missing = _field("Pulses that are missing", 0.0, 40.0, 0, " %")
        self.jitter = _field("Jitter of the pulses", 0.0, 20.0, 1, "°")
        self.noise = _field("Noise", 0.0, 50.0, 2, " m/s²")
        rows: list[tuple[str, QtWidgets.QDoubleSpinBox, QtWidgets.QDoubleSpinBox | None]] = [
            ("Spee&d", self.speed, None),
            ("Resona&nce", self.resonance, None),
            ("Neigh&bour", self.neighbour_hz, self.neighbour_mm_s),
            ("Pulses &lost", self.missing, self.jitter),
            ("Noi&se", self.noise, None),
        ]
        self.unbalance: list[tuple[QtWidgets.QDoubleSpinBox, QtWidgets.QDoubleSpinBox]] = []
        self.masses: list[tuple[QtWidgets.QDoubleSpinBox, QtWidgets.QDoubleSpinBox]] = []
        for what, fields in (("Unbalance", self.unbalance), ("Mass", self.masses)):
            for plane in PLANES:
                pair = (
                    _field(f"{what}, {plane}, mass", -500.0, 500.0, 1, " g"),
                    _field(f"{what}, {plane}, angle", 0.0, 360.0, 0, "°"),
                )
                fields.append(pair)
                rows.append((f"{what}, {plane}", *pair))
        for line, (text, first, second) in enumerate(rows, start=2):
            grid.addWidget(parts.labelled(text, first), line, 0)
            grid.addWidget(first, line, 1, 1, 2 if second is None else 1)
            if second is not None:
                grid.addWidget(second, line, 2)
        body.addLayout(grid)
        note = "Angles run against rotation from the mark. The rotor starts anew with what is applied."
        body.addWidget(parts.label(note, "small", wrap=True))
        self.apply = parts.button("&Apply", self._apply, "main", "Run the simulated rotor so")
        body.addWidget(self.apply, 0, QtCore.Qt.AlignmentFlag.AlignLeft)
        body.addStretch(1)
        for field in self.findChildren(QtWidgets.QDoubleSpinBox):
            field.valueChanged.connect(self._own)
        self.set(Teaching())

    def set_room(self, body_px: int) -> None:
        """Fields as wide as text of this size needs."""
        for field in self.findChildren(QtWidgets.QDoubleSpinBox):
            field.setMinimumWidth(round(_FIELD_EMS * body_px))

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.case.set_theme(theme)

    def set(self, teaching: Teaching) -> None:
        """Show these settings without applying them."""
        lowest = self.resonance.minimum()
        for field, value in (
            (self.speed, teaching.speed_rpm),
            (self.resonance, lowest if teaching.resonance_percent is None else teaching.resonance_percent),
            (self.neighbour_hz, teaching.neighbour_hz),
            (self.neighbour_mm_s, teaching.neighbour_mm_s),
            (self.missing, teaching.missing_percent),
            (self.jitter, teaching.jitter_deg),
            (self.noise, teaching.noise_m_s2),
        ):
            field.setValue(value)
        for fields, masses in ((self.unbalance, teaching.unbalance), (self.masses, teaching.masses)):
            for (grams, angle), mass in zip(fields, masses, strict=True):
                grams.setValue(mass.grams)
                angle.setValue(mass.angle_deg)
        name = next((n for n, c in CASES.items() if c == teaching), _OWN)
        self.case.setCurrentText(name)

    def teaching(self) -> Teaching:
        """What the fields say."""

        def pieces(fields: list[tuple[QtWidgets.QDoubleSpinBox, QtWidgets.QDoubleSpinBox]]) -> tuple[Mass, ...]:
            return tuple(Mass(grams.value(), angle.value()) for grams, angle in fields)

        resonance = self.resonance.value()
        return replace(
            Teaching(),
            speed_rpm=self.speed.value(),
            resonance_percent=None if resonance <= self.resonance.minimum() else resonance,
            neighbour_hz=self.neighbour_hz.value(),
            neighbour_mm_s=self.neighbour_mm_s.value(),
            missing_percent=self.missing.value(),
            jitter_deg=self.jitter.value(),
            noise_m_s2=self.noise.value(),
            unbalance=pieces(self.unbalance),
            masses=pieces(self.masses),
        )

    def _take_case(self) -> None:
        case = CASES.get(self.case.currentText())
        if case is not None:
            self.set(case)

    def _own(self) -> None:
        """A field was changed by hand: the settings may be no case any more."""
        now = self.teaching()
        self.case.setCurrentText(next((n for n, c in CASES.items() if c == now), _OWN))

    def _apply(self) -> None:
        self.applied.emit(self.teaching())
