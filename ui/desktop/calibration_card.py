"""The calibration card: a method, what to do, what is known of the signal, and the result before it is written."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from functools import partial

from PySide6 import QtCore, QtWidgets
from stillshaft.acquire.hookup import Hookup
from stillshaft.dsp import units
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.brief_fields import Field, Form, LineField, line_of_buttons
from stillshaft.ui.desktop.calibration_work import METHODS, Asked, Method
from stillshaft.ui.desktop.hookup_form import WordField
from stillshaft.ui.desktop.said import Remark
from stillshaft.ui.desktop.work_row import WorkRow
from stillshaft.ui.theme import Theme
from stillshaft.ui.wiring import Calibrated

_ALL = "all points"
_UNITS = {"volts": ("V", False), "level": ("m/s^2", True), "frequency": ("Hz", False), "seconds": ("s", False)}
_LONGEST_S, _SHORTEST_S = 60.0, 2.0
KEYS = {
    "full_scale": "full scale", "sensitivity": "sensitivity", "delay": "delay", "highpass": "AC-coupling corners",
}  # fmt: skip


def result_words(result: Calibrated) -> str:
    """A result in one line, as it was and as it was found, with its 95 % half width."""
    found = ", ".join(f"{v} ± {c}" for v, c in zip(result.values, result.ci95, strict=True))
    return f"{result.point}: {KEYS[result.key]} {result.before} becomes {found}"


class CalibrationCard(parts.Card):
    """Emits `recording` or `from_file` with what is asked, and `written` with the method and the results to be kept."""

    recording = QtCore.Signal(object)
    from_file = QtCore.Signal(object)
    written = QtCore.Signal(str, tuple)

    def __init__(self) -> None:
        super().__init__("Calibration")
        self._method = METHODS["voltage"]
        self._results: tuple[Calibrated, ...] = ()
        self._found_by = ""
        self.method = parts.Segments("Calibrate by", [m.name for m in METHODS.values()], columns=2)
        self.do = parts.label("", wrap=True)
        self.form = Form()
        self.point = WordField("Point", (_ALL,), as_written=True)
        self.volts = LineField("Voltage of the sine, rms", "such as 1 V")
        self.level = LineField("Acceleration of the shaker, rms", "such as 1 g")
        self.frequency = LineField("Frequency of the shaker", "such as 159.2 Hz")
        self.seconds = LineField("Record for", "such as 8 s")
        self._fields: dict[str, Field] = {
            "point": self.point, "volts": self.volts, "level": self.level, "frequency": self.frequency,
            "seconds": self.seconds,
        }  # fmt: skip
        self.point.finished.connect(self.point.show_recorded)
        for key in _UNITS:
            self._fields[key].finished.connect(partial(self._check, key))
        for field in self._fields.values():
            self.form.add(field)
        for field, text in ((self.point, _ALL), (self.level, "1 g"), (self.frequency, "159.2 Hz")):
            field.show_recorded(text)
        self.record = parts.button("Record no&w", self._record, tip="Record from the chosen source, and work it out")
        self.file = parts.button("Fro&m a recording…", self._file, tip="Work it out from a file")
        self.work = WorkRow("this calibration")
        self.remark = Remark()
        self.results = QtWidgets.QVBoxLayout()
        self.results.setSpacing(look.HAIR)
        self.write = parts.button(
            "Write into the h&ook-up", self._write, "main", "Keep these values in the hook-up, with today's date"
        )
        self.leave = parts.button("Leave it as it was", self.forget)
        self.body.addWidget(self.method)
        self.body.addWidget(self.do)
        self.body.addWidget(self.form)
        self.body.addLayout(line_of_buttons((self.record, self.file)))
        self.body.addWidget(self.work)
        self.body.addWidget(self.remark)
        self.body.addLayout(self.results)
        self.body.addLayout(line_of_buttons((self.write, self.leave)))
        self.body.addStretch(1)
        self.method.chosen.connect(self._choose)
        self.method.set(self._method.name)
        self._choose(self._method.name)

    def _choose(self, name: str) -> None:
        self._method = next(m for m in METHODS.values() if m.name == name)
        self.do.setText(self._method.do)
        self.seconds.show_recorded(f"{self._method.seconds:g} s")
        for key, field in self._fields.items():
            self.form.fit(field, key in self._method.fields)
        self.forget()

    def _check(self, key: str, text: str) -> None:
        """A field is finished: it takes a number with a unit, above 0."""
        field = self._fields[key]
        try:
            self._number(key, text)
        except units.UnitError as error:
            field.refuse(re.sub(r"^[^:]*: ", "", str(error)))
        else:
            field.show_recorded(text)
            field.take()

    def _number(self, key: str, text: str) -> float:
        unit, gravity = _UNITS[key]
        value = units.parse(text, unit, self._fields[key].name, gravity=gravity)
        if not value > 0.0:
            raise units.UnitError(f"value: {text} must be above 0")
        if key == "seconds" and not _SHORTEST_S <= value <= _LONGEST_S:
            raise units.UnitError(f"value: {text}: record for {_SHORTEST_S:g} to {_LONGEST_S:g} s")
        return value

    def asked(self) -> Asked | None:
        """What is asked as the fields stand; None, and why beside the field, where something is missing."""
        for field in self._fields.values():
            field.commit()
        if "volts" in self._method.fields and not self.volts.recorded:
            self.volts.refuse("say how many volts the sine has")
            return None
        point = self.point.recorded
        return Asked(
            self._method.key,
            () if point == _ALL else (point,),
            self.volts.recorded,
            self.level.recorded,
            self._number("frequency", self.frequency.recorded),
            self._number("seconds", self.seconds.recorded),
        )

    def _record(self) -> None:
        self._ask(self.recording.emit)

    def _file(self) -> None:
        self._ask(self.from_file.emit)

    def _ask(self, tell: Callable[[object], None]) -> None:
        asked = self.asked()
        if asked is not None:
            self.forget()
            tell(asked)

    def _write(self) -> None:
        results, self._results = self._results, ()
        self.written.emit(self._found_by, results)

    # what comes of it

    @property
    def chosen(self) -> Method:
        """The method that is chosen."""
        return self._method

    def set_hookup(self, hookup: Hookup | None, busy: bool) -> None:
        """The points there are; nothing can be begun while something else is under way."""
        self.point.offer((_ALL, *(() if hookup is None else (p.name for p in hookup.points))))
        self.point.show_recorded(self.point.text)
        for each in (self.record, self.file):
            each.setEnabled(hookup is not None and not busy)

    def show_results(self, method: str, results: Sequence[Calibrated]) -> None:
        """Show what was found; nothing is written yet."""
        self.forget()
        self._results, self._found_by = tuple(results), method
        for result in results:
            self.results.addWidget(parts.label(result_words(result), "heading", wrap=True))
            if result.remark:
                self.results.addWidget(parts.label(f"{parts.begun(result.remark)}.", "small", wrap=True))
        self.remark.say("± is the 95 % interval of this record alone. Nothing is written yet.")
        for each in (self.write, self.leave):
            each.show()
        self.write.setFocus(QtCore.Qt.FocusReason.OtherFocusReason)

    def say(self, text: str, *, refused: bool = False) -> None:
        """Say what came of it; what was found before goes."""
        self.forget()
        self.remark.say(text, refused=refused)

    def forget(self) -> None:
        """Put the results away."""
        self._results = ()
        while (item := self.results.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        self.remark.say("")
        for each in (self.write, self.leave):
            each.hide()

    def set_width(self, width_px: int, body_px: int) -> None:
        """The card is so wide, for text of this size."""
        self.form.set_width(width_px - 2 * look.ROOM - 2, body_px)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.form.set_theme(theme)
        self.remark.set_theme(theme)
