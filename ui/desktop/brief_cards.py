"""Cards of the brief: forms of entries, planes, levels, conditions, neighbours. Each shows a brief and asks for patches."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import Any, Protocol

from PySide6 import QtWidgets
from stillshaft.solver.brief import Brief
from stillshaft.ui.desktop import brief_entries as entries
from stillshaft.ui.desktop import brief_record, look, parts
from stillshaft.ui.desktop.brief_entries import Entry
from stillshaft.ui.desktop.brief_fields import Field, Form, LineField, PaperField, PickField
from stillshaft.ui.desktop.said import Said
from stillshaft.ui.desktop.worded import Button
from stillshaft.ui.desktop.words import own
from stillshaft.ui.theme import THEMES, Theme

Patch = Callable[[Brief], dict[str, Any]]
_NAME_EMS = 17.0  # heights of text that a name, or a speed within something, needs
_UNWATCHED = "The hook-up has no such point: this level can never call for a stop. Move it to a point that is there."
_NOT_WIRED = "The hook-up has no such point: nothing here is held against this limit."
CONDITIONS = (
    "load",
    "damper or vane",
    "setpoint",
    "motor current",
    "bearing temperature",
    "process temperature",
    "minutes since start",
)


class Recorder(Protocol):
    """Has a patch recorded for a field; `taken` is called once it is."""

    def __call__(self, field: Field | None, patch: Patch, taken: Callable[[], None] | None = None) -> None:
        """Have it recorded."""


class Sheet(parts.Card):
    """A card of the brief."""

    def __init__(self, heading: str, record: Recorder) -> None:
        super().__init__(heading)
        self.record = record
        self.theme: Theme = THEMES["light"]
        self.unit = "mm/s rms"
        self._width = (600, 14)

    @property
    def forms(self) -> list[Form]:
        """Its forms, as they are now."""
        return []

    @property
    def fields(self) -> list[Field]:
        """All its fields."""
        return [field for form in self.forms for field in form.fields]

    def show_brief(self, brief: Brief) -> None:
        """Show what is recorded."""
        raise NotImplementedError

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.theme = theme
        for form in self.forms:
            form.set_theme(theme)

    def set_unit(self, unit: str) -> None:
        """Bare numbers are taken in this family of units."""
        self.unit = unit

    def set_width(self, width_px: int, body_px: int) -> None:
        """The card is so wide, for text of this size."""
        self._width = (width_px - 2 * look.ROOM - 2, body_px)
        for form in self.forms:
            form.set_width(*self._width)

    def dress(self, form: Form) -> Form:
        """A form that was made just now looks like the others."""
        form.set_theme(self.theme)
        form.set_width(*self._width)
        return form


class FormCard(Sheet):
    """A form of entries."""

    def __init__(self, heading: str, listed: Sequence[Entry], record: Recorder) -> None:
        super().__init__(heading, record)
        self.form = Form()
        self.by_key: dict[str, Field] = {}
        self._entries = {e.key: e for e in listed}
        for entry in listed:
            field = _field(entry)
            field.finished.connect(partial(self._finish, entry, field))
            self.by_key[entry.key] = self.form.add(field)
        self.body.addWidget(self.form)
        self.body.addStretch(1)

    @property
    def forms(self) -> list[Form]:
        """One."""
        return [self.form]

    def _finish(self, entry: Entry, field: Field, text: str) -> None:
        if entry.kind == entries.VALUE:
            whole = brief_record.with_unit(text, entry.measure, self.unit) if entry.measure else text
            self.record(field, lambda brief: brief_record.value_patch(entry.key, whole, brief))
        elif entry.kind == entries.PICK and not entry.key.startswith(("interview.", "goal.table")):
            self.record(field, lambda brief: brief_record.value_patch(entry.key, text, brief))
        else:
            self.record(field, lambda _brief: brief_record.text_patch(entry.key, text))

    def show_brief(self, brief: Brief) -> None:
        """Show what is recorded, and only fields that fit."""
        for key, entry in self._entries.items():
            field, text = self.by_key[key], brief_record.value_text(brief, key)
            self.form.fit(field, bool(text) or entry.fits(brief))
            field.show_recorded(text, brief_record.in_family(text, entry.measure, self.unit))


def _field(entry: Entry) -> Field:
    if entry.kind == entries.PICK:
        return PickField(entry.name, entry.words, wide=entry.wide)
    if entry.kind == entries.PAPER:
        return PaperField(entry.name, entry.example)
    return LineField(entry.name, entry.example, wide=entry.wide)


class _Plane(QtWidgets.QWidget):
    """One plane: where it is and where on it mass may go."""

    _FIELDS = (
        ("radius", "Radius", "such as 310 mm", "length", False),
        ("z", "From first bearing", "such as -250 mm", "length", False),
        ("positions", "Blades or holes", "number, or angles", "", False),
        ("blocked", "Blocked numbers", "such as 3, 7", "", False),
        ("position_cap", "Most at one place", "such as 20 g", "piece", False),
        ("per_position", "Pieces at one place", "such as 1", "", False),
        ("cap", "Most on the plane", "such as 60 g", "piece", False),
        ("radii", "Other radii", "such as 290 mm", "", False),
    )
    _AT_PLACES = ("blocked", "position_cap", "per_position")

    def __init__(self, name: str, card: PlanesCard) -> None:
        super().__init__()
        self.name, self._card = name, card
        column = QtWidgets.QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(look.TIGHT)
        self.form = card.dress(Form())
        self.fields: dict[str, Field] = {}
        self.called = self.form.add(LineField("Plane"))
        self.called.finished.connect(lambda text: card.rename(self.called, name, text))
        for field, title, example, measure, wide in self._FIELDS:
            made = LineField(title, example, wide=wide)
            made.control.setAccessibleName(f"{title}, plane {name}")
            made.finished.connect(partial(self._finish, field, made, measure))
            self.fields[field] = self.form.add(made)
        self.called.control.setAccessibleName(f"Name of plane {name}")
        self.where = parts.label("", "small", wrap=True)
        self.remove = parts.button("Remove", lambda: card.take_out(self.called, name))
        self.remove.setAccessibleName(f"Remove plane {name}")
        foot = QtWidgets.QHBoxLayout()
        foot.setContentsMargins(0, 0, 0, look.GAP)
        foot.addWidget(self.where, 1)
        foot.addWidget(self.remove)
        column.addWidget(self.form)
        column.addLayout(foot)

    def _finish(self, field: str, made: Field, measure: str, text: str) -> None:
        whole = brief_record.with_unit(text, measure, self._card.unit) if measure else text
        self._card.record(made, lambda brief: brief_record.entry_patch(brief, "planes", self.name, field, whole))

    def show_brief(self, brief: Brief) -> None:
        plane = next(p for p in brief.planes if p.name == self.name)
        self.called.show_recorded(self.name)
        for (field, _, _, measure, _), made in zip(self._FIELDS, self.fields.values(), strict=True):
            text = brief_record.entry_text(brief, "planes", self.name, field)
            fits = {"z": len(brief.planes) > 1, **dict.fromkeys(self._AT_PLACES, plane.positions is not None)}
            self.form.fit(made, bool(text) or fits.get(field, True))
            made.show_recorded(text, brief_record.in_family(text, measure, self._card.unit))
        if plane.positions is None:
            self.where.setText("Mass may go anywhere on the rim.")
        else:
            count = plane.positions if isinstance(plane.positions, int) else len(plane.positions)
            self.where.setText(f"{count} places; number 1 at or first after the mark, counted against rotation.")


class PlanesCard(Sheet):
    """The planes that take mass; `used` tells those that masses were put on, which keep their names."""

    def __init__(self, record: Recorder, used: Callable[[], Sequence[str]]) -> None:
        super().__init__("Planes that take mass", record)
        self._used = used
        self.planes: list[_Plane] = []
        self._list = QtWidgets.QVBoxLayout()
        self._list.setSpacing(look.TIGHT)
        self.none = parts.label("No plane yet. An overhung disc is one plane at first.", "quiet", wrap=True)
        self.add_name = LineField("New plane", "disc, drive side, …")
        self.add = parts.button("Add &plane", self._add)
        self.add_name.line.returnPressed.connect(self._add)
        self._new = Form(ems=_NAME_EMS)
        self._new.add(self.add_name)
        self.body.addWidget(self.none)
        self.body.addLayout(self._list)
        self.body.addWidget(self._new)
        row = QtWidgets.QHBoxLayout()
        row.addWidget(self.add)
        row.addStretch(1)
        self.body.addLayout(row)
        self.body.addStretch(1)

    @property
    def forms(self) -> list[Form]:
        """Those of the planes, and the new one's."""
        return [*(p.form for p in self.planes), self._new]

    @property
    def fields(self) -> list[Field]:
        """Those of the planes: a new name is recorded by its button only."""
        return [field for plane in self.planes for field in plane.form.fields]

    def show_brief(self, brief: Brief) -> None:
        """A block for each plane."""
        names = [p.name for p in brief.planes]
        if names != [p.name for p in self.planes]:
            for old in self.planes:
                self._list.removeWidget(old)
                old.hide()
                old.deleteLater()
            self.planes = [_Plane(name, self) for name in names]
            for plane in self.planes:
                self._list.addWidget(plane)
                QtWidgets.QWidget.setTabOrder(plane.form.fields[-1].control, plane.remove)
        self.none.setVisible(not names)
        for plane in self.planes:
            plane.show_brief(brief)

    def _add(self) -> None:
        name = self.add_name.line.text()
        self.record(
            self.add_name, lambda brief: brief_record.added(brief, "planes", name), lambda: self.add_name.line.clear()
        )

    def rename(self, field: Field, name: str, text: str) -> None:
        """Call a plane otherwise."""
        self.record(field, lambda brief: brief_record.renamed(brief, "planes", self._free(name), text))

    def take_out(self, field: Field, name: str) -> None:
        """Take a plane out of the brief; undo brings it back."""
        self.record(field, lambda brief: brief_record.removed(brief, "planes", self._free(name)))

    def _free(self, name: str) -> str:
        if name in self._used():
            raise brief_record.BriefEntryError(f'masses were put on "{name}": it keeps its name and its place')
        return name


class LevelsCard(Sheet):
    """For each point the level at which the machine is stopped, who agreed, and its limit."""

    _FIELDS = (
        ("abort", "amplitude", "Stop the machine at", "such as 25 mm/s rms"),
        ("limits", "amplitude", "Limit", "such as 4.5 mm/s rms"),
        ("abort", "source", "Agreed with", "name of the owner"),
        ("limits", "source", "Limit set by", "contract, standard, …"),
    )

    def __init__(self, record: Recorder) -> None:
        super().__init__("Abort levels and limits by point", record)
        self._points: tuple[str, ...] = ()
        self._rows: dict[str, tuple[Form, list[Field], Said]] = {}
        self._wired: tuple[str, ...] = ()
        self.note = parts.label(
            "The abort level is agreed with the owner; it is not the alarm limit. Crossing it calls for a stop at once.",
            "small",
            wrap=True,
        )
        self.none = parts.label("Points come with the hook-up: set it there first.", "quiet", wrap=True)
        self._list = QtWidgets.QVBoxLayout()
        self._list.setSpacing(look.TIGHT)
        self.body.addWidget(self.note)
        self.body.addWidget(self.none)
        self.body.addLayout(self._list)
        self.body.addStretch(1)

    @property
    def forms(self) -> list[Form]:
        """One for each point."""
        return [form for form, _, _ in self._rows.values()]

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        super().set_theme(theme)
        for _, _, stray in self._rows.values():
            stray.set_theme(theme)

    def set_points(self, names: Sequence[str]) -> None:
        """The points of the hook-up."""
        self._wired = tuple(names)

    def show_brief(self, brief: Brief) -> None:
        """A row for each point of the hook-up or the brief."""
        said = [level.point for level in (*brief.abort, *brief.limits)]
        points = tuple(dict.fromkeys((*self._wired, *said)))
        if points != self._points:
            self._build(points)
        self.none.setVisible(not points)
        for point, (form, fields, stray) in self._rows.items():
            texts = [brief_record.entry_text(brief, table, point, field) for table, field, _, _ in self._FIELDS]
            for number, (field, text) in enumerate(zip(fields, texts, strict=True)):
                form.fit(field, number < 2 or any(texts[:2]))
                field.show_recorded(text)
            unwatched = bool(self._wired) and point not in self._wired
            stray.say(_UNWATCHED if unwatched and texts[0] else _NOT_WIRED if unwatched else "")

    def _build(self, points: tuple[str, ...]) -> None:
        while (item := self._list.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        self._points, self._rows = points, {}
        for point in points:
            form = self.dress(Form(pairs=True))
            fields: list[Field] = []
            for table, key, title, example in self._FIELDS:
                field = LineField(title, example)
                field.control.setAccessibleName(f"{title}, {point}")
                field.finished.connect(partial(self._finish, table, point, key, field))
                fields.append(form.add(field))
            stray = Said()
            stray.set_theme(self.theme)
            self._rows[point] = (form, fields, stray)
            self._list.addWidget(parts.label(own(point), "heading", wrap=True))
            self._list.addWidget(stray)
            self._list.addWidget(form)

    def _finish(self, table: str, point: str, key: str, field: Field, text: str) -> None:
        whole = brief_record.with_unit(text, "vibration", self.unit) if key == "amplitude" else text
        self.record(field, lambda brief: brief_record.entry_patch(brief, table, point, key, whole))


class ConditionsCard(Sheet):
    """Which conditions must be alike in all runs, and within what."""

    def __init__(self, record: Recorder) -> None:
        super().__init__("Conditions to keep alike in all runs", record)
        self.form = Form()
        self._names: tuple[str, ...] = ()
        self.buttons: dict[str, QtWidgets.QPushButton] = {}
        self._grid = QtWidgets.QGridLayout()
        self._grid.setSpacing(look.HAIR)
        for name in CONDITIONS:
            each = Button(parts.begun(name))
            each.setObjectName("segment")
            each.setCheckable(True)
            each.setAutoDefault(False)
            each.setAccessibleName(f"Condition: {name}")
            each.turned.connect(lambda on, n=name: self._toggle(n, on))
            self.buttons[name] = each
        self.own = LineField("Another condition", "humidity, fuel, …")
        self.own.finished.connect(self._own)
        self._own_form = Form(ems=_NAME_EMS)
        self._own_form.add(self.own)
        self.body.addLayout(self._grid)
        self.note = parts.label(
            "Noted in each run. A run outside its tolerance is not held against the others; without a tolerance the "
            "same words must stand there.",
            "small",
            wrap=True,
        )
        self.body.addWidget(self.note)
        self.body.addWidget(self.form)
        self.body.addWidget(self._own_form)
        self.body.addStretch(1)
        self._columns = 0

    @property
    def forms(self) -> list[Form]:
        """The tolerances, and the new one's."""
        return [self.form, self._own_form]

    @property
    def fields(self) -> list[Field]:
        """Those of the tolerances."""
        return self.form.fields

    def set_width(self, width_px: int, body_px: int) -> None:
        """Buttons side by side as there is room."""
        super().set_width(width_px, body_px)
        widest = max(b.sizeHint().width() for b in self.buttons.values())
        columns = max(1, min(4, (self._width[0] + look.HAIR) // (widest + look.HAIR)))
        if columns != self._columns:
            self._columns = columns
            for number, each in enumerate(self.buttons.values()):
                self._grid.addWidget(each, *divmod(number, columns))

    def show_brief(self, brief: Brief) -> None:
        """Which are chosen, with their tolerances."""
        names = tuple(c.name for c in brief.conditions)
        for name, each in self.buttons.items():
            each.setChecked(name in names)
        if names != self._names:
            self._names = names
            self.form.clear()
            for name in names:
                made = LineField(f"{parts.begun(name)} within", "such as 5 %")
                made.finished.connect(partial(self._finish, name, made))
                self.form.add(made)
        for name, field in zip(names, self.form.fields, strict=True):
            field.show_recorded(brief_record.entry_text(brief, "conditions", name, "tolerance"))

    def _toggle(self, name: str, on: bool) -> None:
        change = brief_record.added if on else brief_record.removed
        self.record(None, lambda brief: change(brief, "conditions", name))

    def _own(self, text: str) -> None:
        self.record(self.own, lambda brief: brief_record.added(brief, "conditions", text), lambda: self.own.put(""))

    def _finish(self, name: str, field: Field, text: str) -> None:
        self.record(field, lambda brief: brief_record.entry_patch(brief, "conditions", name, "tolerance", text))


class NeighboursCard(Sheet):
    """What runs beside this machine, and how fast: looked for in the spectrum by its frequency."""

    def __init__(self, record: Recorder) -> None:
        super().__init__("What runs beside it", record)
        self.form, self._new_form = Form(ems=_NAME_EMS), Form(ems=_NAME_EMS)
        self._names: tuple[str, ...] = ()
        self.new = LineField("Another machine", "such as pump = 1465 r/min within 5")
        self.new.finished.connect(self._add)
        self._new_form.add(self.new)
        self.note = parts.label(
            "Looked for in the spectrum at its speed. Without a tolerance it is known as well as a nameplate tells it. An "
            "empty speed takes it out.",
            "small",
            wrap=True,
        )
        self.body.addWidget(self.note)
        self.body.addWidget(self.form)
        self.body.addWidget(self._new_form)
        self.body.addStretch(1)

    @property
    def forms(self) -> list[Form]:
        """The speeds, and the new one's."""
        return [self.form, self._new_form]

    @property
    def fields(self) -> list[Field]:
        """Those of the speeds."""
        return self.form.fields

    def show_brief(self, brief: Brief) -> None:
        """A field for each."""
        names = tuple(n.name for n in brief.neighbours)
        if names != self._names:
            self._names = names
            self.form.clear()
            for name in names:
                made = LineField(own(name), "such as 1465 r/min within 5")
                made.control.setAccessibleName(f"Speed, {name}")
                made.finished.connect(partial(self._finish, name, made))
                self.form.add(made)
        for name, field in zip(names, self.form.fields, strict=True):
            field.show_recorded(brief_record.neighbour_text(brief, name))

    def _add(self, text: str) -> None:
        if text.strip():
            self.record(self.new, lambda brief: brief_record.new_neighbour_patch(brief, text), lambda: self.new.put(""))

    def _finish(self, name: str, field: Field, text: str) -> None:
        self.record(field, lambda brief: brief_record.neighbour_patch(brief, name, text))
