"""The source card: which source, what is honestly known of it, and the file of the hook-up."""

from __future__ import annotations

from pathlib import Path

from PySide6 import QtCore, QtWidgets
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop import words as language
from stillshaft.ui.desktop.brief_fields import Form, LineField, line_of_buttons
from stillshaft.ui.desktop.feed import Choice, Feed
from stillshaft.ui.desktop.hookup_sources import named_choice, recording_choice
from stillshaft.ui.desktop.said import Remark
from stillshaft.ui.desktop.stages import State, Weight
from stillshaft.ui.theme import Theme

HOOKUPS = "Hook-up (*.toml);;All files (*)"
RECORDINGS = "Recordings (*.au);;All files (*)"


class SourceCard(parts.Card):
    """Emits `imported` and `exported` with the file that was chosen, `begun` where a new hook-up is asked for.

    `assigned` asks for the hook-up shown to be set for the open job.
    """

    imported = QtCore.Signal(object)
    exported = QtCore.Signal(object)
    begun = QtCore.Signal()
    assigned = QtCore.Signal()

    def __init__(self, feed: Feed) -> None:
        super().__init__()
        self.feed = feed
        self.source = parts.Choice()
        self.source.setSizeAdjustPolicy(QtWidgets.QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.source.setMinimumContentsLength(12)
        self.source.activated.connect(self._choose)
        self.find_inputs = parts.button(
            "Find &inputs", feed.list_inputs, tip="Look for sound inputs that are plugged in"
        )
        self.other = parts.button(
            "By name…", self._toggle, tip="A recording, a board on a serial line, or a data acquisition device"
        )
        top = QtWidgets.QHBoxLayout()
        top.setSpacing(look.TIGHT)
        top.addWidget(parts.labelled("Sou&rce", self.source))
        top.addWidget(self.source, 1)
        top.addWidget(self.find_inputs)
        top.addWidget(self.other)
        self.file = parts.button("Hook-up &file…", self._import, tip="Read what is wired to which input from a file")
        self.export = parts.button("E&xport…", self._export, tip="Write the hook-up into a file")
        self.new = parts.button("New hook-up", self.begun.emit, tip="Begin with the pulse and one sensor")
        self.assign = parts.button(
            "Set for this &job", self.assigned.emit, "main", "The job has no hook-up yet: take the one that is shown"
        )
        self.body.addLayout(top)
        self.body.addWidget(self._by_name())
        note = QtWidgets.QHBoxLayout()
        note.setSpacing(look.TIGHT)
        self.note_sign = parts.Sign(18)
        self.note = parts.label("", "quiet", wrap=True)
        note.addWidget(self.note_sign)
        note.addWidget(self.note, 1)
        self.body.addLayout(note)
        self.body.addLayout(line_of_buttons((self.file, self.export, self.new, self.assign)))
        self.remark = Remark()
        self.body.addWidget(self.remark)
        feed.listed.connect(self._fill)
        self._fill()

    def _by_name(self) -> QtWidgets.QWidget:
        self.named = QtWidgets.QWidget()
        column = QtWidgets.QVBoxLayout(self.named)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(look.TIGHT)
        self.form = Form()
        self.name = LineField("Source by name", "serial:/dev/ttyACM0, nidaqmx:Dev1/ai0, uldaq:0123ABCD, recording:FILE")
        self.rate = LineField("Sample rate", "its own, or such as 25600 Hz")
        self.form.add(self.name)
        self.form.add(self.rate)
        self.name.line.returnPressed.connect(self._take_name)
        self.take = parts.button("Take this source", self._take_name)
        self.recording = parts.button("Recording…", self._ask_recording, tip="Play a recording as a source")
        column.addWidget(self.form)
        column.addLayout(line_of_buttons((self.take, self.recording)))
        self.named.hide()
        return self.named

    # what the person does

    def _choose(self, number: int) -> None:
        if number < len(self.feed.choices):  # after them stands what plays now
            self.feed.choose(self.feed.choices[number])

    def _toggle(self) -> None:
        self.named.setVisible(self.named.isHidden())
        if not self.named.isHidden():
            self.name.line.setFocus()

    def _take_name(self) -> None:
        try:
            choice = named_choice(self.name.line.text(), self.rate.line.text())
        except ValueError as error:
            typed = self.name.line.text()
            self.name.refuse(str(error))
            self.name.put(typed)  # to be mended
            return
        self.name.take()
        self.name.remark.say("")
        self._take(choice)

    def _ask_recording(self) -> None:
        path, _ = QtWidgets.QFileDialog.getOpenFileName(
            self, language.words("Recording to play"), "", language.words(RECORDINGS)
        )
        if path:
            self._take(recording_choice(Path(path)))

    def _take(self, choice: Choice) -> None:
        self.feed.offer(choice)
        self.feed.choose(choice)
        self._fill()

    def _import(self) -> None:
        path, _ = QtWidgets.QFileDialog.getOpenFileName(
            self, language.words("Hook-up file"), "", language.words(HOOKUPS)
        )
        if path:
            self.imported.emit(Path(path))

    def _export(self) -> None:
        title, kinds = language.words("Write the hook-up into a file"), language.words(HOOKUPS)
        path, _ = QtWidgets.QFileDialog.getSaveFileName(self, title, "hookup.toml", kinds)
        if path:
            self.exported.emit(Path(path))

    # what comes of it

    def _fill(self) -> None:
        names, now = [c.name for c in self.feed.choices], self.feed.choice.name
        if now not in names:  # a run of the job that is played again
            names.append(now)
        self.source.clear()
        self.source.addItems(names)
        self.source.setCurrentIndex(names.index(now))
        self.source.setToolTip(self.feed.choice.name)

    def renew(self, *, wired: bool, of_job: bool, missing_in_job: bool, busy: bool) -> None:
        """Show what the source is, and what can be done."""
        feed = self.feed
        if self.source.currentText() != feed.choice.name:
            self._fill()
        for each in (self.source, self.other, self.take, self.recording):
            each.setEnabled(not busy)
        self.find_inputs.setEnabled(not feed.looking and not busy)
        self.find_inputs.setText("Looking …" if feed.looking else "Find &inputs")
        self.export.setEnabled(wired)
        self.new.setVisible(not wired)
        self.assign.setVisible(missing_in_job and wired)
        file = None if feed.choice.brings_hookup else feed.hookup_file
        whose = ". Hook-up: the job's" if of_job else "" if file is None else f". Hook-up: {file.name}"
        lacks = ". The job has no hook-up yet; what is changed here is set for it" if missing_in_job and wired else ""
        self.note.setText(f"{parts.begun(feed.choice.note)}{whose}{lacks}.")
        self.note_sign.show_weight(Weight.CAUTION if feed.choice.caution else State.DONE)
        self.source.setToolTip(feed.choice.name)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        for part in (self.source, self.note_sign, self.form, self.remark):
            part.set_theme(theme)

    def set_width(self, width_px: int, body_px: int) -> None:
        """The card is so wide, for text of this size."""
        self.form.set_width(width_px - 2 * look.ROOM - 2, body_px)
