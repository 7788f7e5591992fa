"""The cards where it is said what is on the rotor and what was really put on, piece by piece."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from PySide6 import QtCore, QtWidgets
from stillshaft.solver.brief import Plane
from stillshaft.solver.state import JobState
from stillshaft.ui.desktop import look, masses_model, parts
from stillshaft.ui.desktop.masses_field import TakenField
from stillshaft.ui.desktop.masses_hand import HandRows
from stillshaft.ui.desktop.masses_model import FIXINGS, Draft
from stillshaft.ui.desktop.said import Said
from stillshaft.ui.desktop.worded import Button, LineEdit
from stillshaft.ui.theme import Theme

PURPOSES = ("trial", "correction", "trim")
AWAY = ("drilled", "ground off")


class PieceList(QtWidgets.QWidget):
    """Pieces as lines that can be chosen, each with its mark; emits `chosen` with it."""

    chosen = QtCore.Signal(str)

    def __init__(self, name: str, empty: str) -> None:
        super().__init__()
        self._name, self._empty = name, empty
        self._column = QtWidgets.QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(look.HAIR)
        self.nothing = parts.label(empty, "quiet", wrap=True)
        self._column.addWidget(self.nothing)
        self.lines: list[QtWidgets.QPushButton] = []
        self._marks: list[str] = []

    def show_lines(self, lines: Sequence[tuple[str, str]], chosen: str) -> None:
        """Show (mark, words) of each piece."""
        while len(self.lines) < len(lines):
            made = Button("")
            made.setObjectName("segment")
            made.setCheckable(True)
            made.setAutoDefault(False)
            number = len(self.lines)
            made.turned.connect(lambda _on, n=number: self.chosen.emit(self._marks[n]))
            self.lines.append(made)
            self._column.addWidget(made)
        self._marks = [mark for mark, _ in lines]
        for number, each in enumerate(self.lines):
            shown = number < len(lines)
            each.setVisible(shown)
            if shown:
                mark, words = lines[number]
                each.setText(f"{mark} · {words}".replace("&", "&&"))
                each.setAccessibleName(f"{self._name} {mark}: {words}")
                each.setChecked(mark == chosen)
        self.nothing.setVisible(not lines)


class EntryCard(parts.Card):
    """The chosen piece that is thought of, its fields, and the button that records all of them as put on.

    Emits `changed` with (old, new pieces), `recorded` with purpose and note.
    """

    changed = QtCore.Signal(object, list)
    combined = QtCore.Signal(str)
    recorded = QtCore.Signal(str, str)
    to_cautions = QtCore.Signal()

    def __init__(self) -> None:
        super().__init__("The chosen piece")
        self._draft: Draft | None = None
        self._state: JobState | None = None
        self._angles = ""
        self.caution = Said()
        self.body.addWidget(self.caution)
        self.see = parts.button(
            "Go through the cautions", self.to_cautions.emit, tip="What must hold before hands go in"
        )
        line = QtWidgets.QHBoxLayout()
        line.addWidget(self.see)
        line.addStretch(1)
        self.body.addLayout(line)
        self.nothing = parts.label("Add a piece, or try a suggestion on the face; then choose it.", "quiet", wrap=True)
        self.body.addWidget(self.nothing)
        self.plane = parts.Choice()
        self.plane.activated.connect(self._take_plane)
        self.plane_name = parts.labelled("Plane", self.plane)
        self.fixing = parts.Choice()
        self.fixing.addItems(FIXINGS)
        self.fixing.activated.connect(self._take_fixing)
        self.fixing_name = parts.labelled("Fixing", self.fixing)
        self.mass = TakenField("Mass", self._take_mass, "such as 12.5 g")
        self.place = TakenField("Angle or position", self._take_place, "such as 137 or position 5")
        self.radius = TakenField("Radius", self._take_radius, "as the plane's")
        self.filler = TakenField("Filler, nuts, washers", self._take_filler, "such as 0.6 g")
        self.fields = (self.mass, self.place, self.radius, self.filler)
        grid = QtWidgets.QGridLayout()
        grid.setHorizontalSpacing(look.GAP)
        grid.setVerticalSpacing(look.TIGHT)
        for number, field in enumerate(self.fields):
            grid.addWidget(field, number // 2, number % 2)
        for column, (name, choice) in enumerate(((self.plane_name, self.plane), (self.fixing_name, self.fixing))):
            box = QtWidgets.QVBoxLayout()
            box.setSpacing(look.HAIR)
            box.addWidget(name)
            box.addWidget(choice)
            grid.addLayout(box, 2, column)
            grid.setColumnStretch(column, 1)
        self.body.addLayout(grid)
        self.force = parts.label("", "quiet", wrap=True)
        self.body.addWidget(self.force)
        self.hand = HandRows()
        self.hand.replaced.connect(lambda new: self.changed.emit(self._draft, new))
        self.hand.combined.connect(lambda: self.combined.emit("" if self._draft is None else self._draft.plane))
        self.body.addWidget(self.hand)
        self.purpose = parts.Segments("Put on as", PURPOSES)
        self.remarks = LineEdit()
        self.remarks.setPlaceholderText("Note, such as who weighed it")
        self.remarks.setAccessibleName("Note on what was put on")
        self.record = parts.button(
            "&Record as put on", self._record, "main", "Write all pieces thought of into the record"
        )
        row = QtWidgets.QHBoxLayout()
        row.setSpacing(look.TIGHT)
        row.addWidget(self.record)
        row.addStretch(1)
        self.body.addWidget(self.purpose)
        self.body.addWidget(self.remarks)
        self.body.addLayout(row)
        self.trouble = Said()
        self.body.addWidget(self.trouble)

    def show_piece(
        self, draft: Draft | None, state: JobState, together: int, number: int, angles: str, caution: str
    ) -> None:
        """Show a piece that is thought of; `number` counts all of them, `caution` says what to see to first."""
        self._draft, self._state, self._angles = draft, state, angles
        self.caution.say(caution)
        self.see.setVisible(bool(caution))
        self.nothing.setVisible(draft is None)
        planes = [masses_model.short(p.name) for p in state.brief.planes]
        if [self.plane.itemText(i) for i in range(self.plane.count())] != planes:
            self.plane.clear()
            self.plane.addItems(planes)
        for part in (*self.fields, self.plane, self.plane_name, self.fixing, self.fixing_name, self.force):
            part.setVisible(draft is not None)
        moved = draft is not None and draft.moves is not None
        self.purpose.setVisible(number > 0 and not moved)
        self.remarks.setVisible(number > 0)
        self.record.setVisible(number > 0)
        self.record.setText("&Record where it really sits" if moved else "&Record as put on")
        self.record.setAccessibleName(self.record.text().replace("&", ""))
        plane = None if draft is None else masses_model.plane_of(state, draft.plane)
        self.hand.show_piece(draft, plane, 0 if moved else together, angles)
        if draft is None:
            return
        self.mass.show_taken(f"{draft.mass_g:.5g} g")
        self.place.show_taken(
            masses_model.place_words(draft.angle_deg, None, angles)
            if draft.position is None
            else f"position {draft.position}"
        )
        self.radius.show_taken("" if draft.radius_mm is None else f"{draft.radius_mm:g} mm")
        self.filler.show_taken(f"{draft.filler_g:g} g" if draft.filler_g else "")
        self.plane.setCurrentIndex([p.name for p in state.brief.planes].index(draft.plane))
        self.fixing.setCurrentText(draft.fixing)
        radius = draft.radius_mm or masses_model.radius_mm(plane)
        force = masses_model.force_words(masses_model.force_n(state, draft.total_g, radius))
        self.force.setText(f"{parts.begun(force)} at speed.")

    def _change(self, draft: Draft) -> None:
        self.changed.emit(self._draft, [draft])

    def _plane_now(self) -> Plane:
        assert self._draft is not None
        assert self._state is not None
        plane = masses_model.plane_of(self._state, self._draft.plane)
        assert plane is not None
        return plane

    def _take_mass(self, text: str) -> None:
        if self._draft is not None:
            grams = masses_model.mass_from(text)
            if not grams:
                raise masses_model.EntryError("0 g is no mass; remove the piece instead")
            self._change(replace(self._draft, mass_g=grams))

    def _take_place(self, text: str) -> None:
        if self._draft is not None:
            angle_deg, position = masses_model.place_from(text, self._plane_now(), self._angles)
            self._change(replace(self._draft, angle_deg=angle_deg, position=position))

    def _take_radius(self, text: str) -> None:
        if self._draft is not None:
            self._change(replace(self._draft, radius_mm=masses_model.length_from(text, "radius") if text else None))

    def _take_filler(self, text: str) -> None:
        if self._draft is not None:
            self._change(replace(self._draft, filler_g=masses_model.mass_from(text, "filler metal") if text else 0.0))

    def _take_plane(self, number: int) -> None:
        if self._draft is not None and self._state is not None:
            plane = self._state.brief.planes[number]
            at = masses_model.position_at(plane, self._draft.angle_deg)
            self._change(replace(self._draft, plane=plane.name, position=at))

    def _take_fixing(self, number: int) -> None:
        """Metal goes away where mass would come on at the other side: the piece keeps what it does."""
        if self._draft is None:
            return
        draft, away = replace(self._draft, fixing=FIXINGS[number]), FIXINGS[number] in AWAY
        if away == (draft.mass_g > 0.0) and (away or self._draft.fixing in AWAY):
            angle = (draft.angle_deg + 180.0) % 360.0
            at = masses_model.position_at(self._plane_now(), angle)
            draft = replace(draft, mass_g=-draft.total_g, filler_g=0.0, angle_deg=angle, position=at)
        self._change(draft)

    def _record(self) -> None:
        for field in self.fields:
            field.commit()
        self.recorded.emit(self.purpose.value or PURPOSES[0], self.remarks.text().strip())

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        for part in (*self.fields, self.plane, self.fixing, self.caution, self.trouble, self.hand):
            part.set_theme(theme)


class OnCard(parts.Card):
    """What is on the rotor and what is thought of, as lines; `acts` are what is done with the chosen one."""

    chosen = QtCore.Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.on = PieceList("On the rotor", "Nothing beyond its initial state.")
        self.thought = PieceList("Thought of", "Nothing yet.")
        for each in (self.on, self.thought):
            each.chosen.connect(self.chosen)
        self.acts = {
            act: parts.button(text, lambda: None, tip=tip)
            for act, text, tip in (
                ("take off", "&Take off", "Record that the chosen piece was taken off"),
                ("sits elsewhere", "Sits &elsewhere", "Say where the chosen piece really sits"),
                ("trials off", "All trial masses off", "Record that every trial mass was taken off"),
                ("add", "&Add a piece", "Think of another piece on this plane"),
                ("remove", "Remove", "Think of the chosen piece no more"),
                ("bring back", "Bring back", "Think of the piece again that was removed last"),
            )
        }
        self.weighed = LineEdit()
        self.weighed.setPlaceholderText("such as: weighed back in")
        self.weighed_name = parts.labelled("Note on taking off", self.weighed)
        self._lists = lists = QtWidgets.QBoxLayout(QtWidgets.QBoxLayout.Direction.LeftToRight)
        lists.setSpacing(look.GAP)
        for name, pieces, buttons in (
            (
                "On the rotor",
                self.on,
                (
                    (self.weighed_name,),
                    (self.weighed,),
                    (self.acts["take off"], self.acts["sits elsewhere"]),
                    (self.acts["trials off"],),
                ),
            ),
            ("Thought of", self.thought, ((self.acts["add"], self.acts["remove"]), (self.acts["bring back"],))),
        ):
            column = QtWidgets.QVBoxLayout()
            column.setSpacing(look.TIGHT)
            column.addWidget(parts.label(name, "heading"))
            column.addWidget(pieces)
            for row in buttons:
                column.addLayout(_row(*row))
            column.addStretch(1)
            lists.addLayout(column, 1)
        self.body.addLayout(lists)

    def set_beside(self, beside: bool) -> None:
        """The two lists side by side, or not."""
        direction = QtWidgets.QBoxLayout.Direction
        self._lists.setDirection(direction.LeftToRight if beside else direction.TopToBottom)

    @property
    def note_on_off(self) -> str:
        """What is said of pieces that are taken off."""
        return self.weighed.text().strip()

    def show_pieces(
        self,
        on: Sequence[tuple[str, str]],
        thought: Sequence[tuple[str, str]],
        chosen: str,
        *,
        trials: bool,
        gone: bool,
    ) -> None:
        """Show (mark, words) of the pieces; `trials`: trial masses are on, `gone`: one was removed."""
        self.acts["trials off"].setVisible(trials)
        self.acts["bring back"].setVisible(gone)
        for part in (self.weighed, self.weighed_name, self.acts["take off"], self.acts["sits elsewhere"]):
            part.setVisible(bool(on))
        self.on.show_lines(on, chosen)
        self.thought.show_lines(thought, chosen)
        is_on = any(mark == chosen for mark, _ in on)
        self.acts["take off"].setEnabled(is_on)
        self.acts["sits elsewhere"].setEnabled(is_on)
        self.acts["remove"].setEnabled(any(mark == chosen for mark, _ in thought))


def _row(*buttons: QtWidgets.QWidget) -> QtWidgets.QHBoxLayout:
    row = QtWidgets.QHBoxLayout()
    row.setSpacing(look.TIGHT)
    for each in buttons:
        row.addWidget(each)
    if not isinstance(buttons[0], QtWidgets.QLineEdit):
        row.addStretch(1)
    return row
