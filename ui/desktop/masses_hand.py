"""What is worked out at the bench, at the piece that it concerns: rim distance, another radius, split, drill, grind, weld."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from PySide6 import QtCore, QtWidgets
from stillshaft.dsp import units, vectors
from stillshaft.solver import handwork
from stillshaft.solver.brief import Plane
from stillshaft.ui.desktop import look, masses_model, parts
from stillshaft.ui.desktop import words as language
from stillshaft.ui.desktop.masses_field import TakenField
from stillshaft.ui.desktop.masses_model import Draft, EntryError
from stillshaft.ui.desktop.worded import Worded
from stillshaft.ui.job_masses import positions_deg
from stillshaft.ui.report_words import figure
from stillshaft.ui.theme import Theme

_METALS = tuple(handwork.DENSITIES_KG_M3)
# nothing is given back once it is taken (++, *+, ?+): a long text would else be tried in all ways
_ANGLE = r"\s*+(-?+\d++(?:\.\d++)?+)\s*+°?+\s*+"
_TWO = re.compile(f"{_ANGLE}(?:and|,|;|&){_ANGLE}")


class HandRows(Worded, QtWidgets.QWidget):
    """Only what fits the piece is shown. Emits `replaced` with the pieces that take its place."""

    replaced = QtCore.Signal(list)
    combined = QtCore.Signal()

    def __init__(self) -> None:
        super().__init__()
        self._draft: Draft | None = None
        self._plane: Plane | None = None
        self._angles = ""
        self._names = {name: name for name in _METALS}  # of the metals, in every language that was shown
        column = QtWidgets.QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(look.TIGHT)
        self.rim = parts.label("", "quiet", wrap=True)
        column.addWidget(self.rim)
        self._grid = QtWidgets.QGridLayout()
        self._grid.setSpacing(look.TIGHT)
        column.addLayout(self._grid)
        self.diameter = TakenField("Drill diameter", self._worked_out, "such as 12 mm")
        self.material = TakenField("Metal", self._worked_out, "such as steel")
        self.area = TakenField("Area ground off", self._worked_out, "such as 20 cm^2")
        self.rod = TakenField("Rod diameter", self._worked_out, "such as 3.2 mm")
        self.recovery = TakenField("Metal that lands", self._worked_out, "such as 90 %")
        self.radius = TakenField("At another radius", self._other_radius, "such as 250 mm")
        self.angles = TakenField("Split to two angles", self._split_to, "such as 300 and 330")
        self._call_metal(_METALS[0])
        self.fields = (
            self.diameter, self.area, self.rod, self.material, self.recovery, self.radius, self.angles,
        )  # fmt: skip
        for number, field in enumerate(self.fields):
            self._grid.addWidget(field, *divmod(number, 2))
        self.result = parts.label("", "sentence", wrap=True)
        column.addWidget(self.result)
        row = QtWidgets.QHBoxLayout()
        row.setSpacing(look.TIGHT)
        self.split = parts.button(
            "Split between positions", self._split, tip="Two pieces at the positions on either side"
        )
        self.combine = parts.button(
            "Make one of them", self.combined.emit, tip="One piece for those thought of on this plane"
        )
        row.addWidget(self.split)
        row.addWidget(self.combine)
        row.addStretch(1)
        column.addLayout(row)

    def reword(self) -> None:
        """A metal of the handbook table is called by its name in the new language."""
        super().reword()
        self._call_metal(self._metal())

    def _call_metal(self, metal: str) -> None:
        """Show a metal by its name in the language of the window."""
        self._names |= {language.words(name).lower(): name for name in _METALS}
        if metal in _METALS:
            self.material.show_taken(language.words(metal))

    def _metal(self) -> str:
        """The metal as the handbook table calls it, or what was typed."""
        typed = self.material.text.strip()
        return self._names.get(typed.lower(), typed)

    def show_piece(self, draft: Draft | None, plane: Plane | None, together: int, angles: str) -> None:
        """Show what fits this piece; `together` counts the pieces thought of on its plane."""
        self._draft, self._plane, self._angles = draft, plane, angles
        self.setVisible(draft is not None)
        if draft is None:
            return
        radius = draft.radius_mm or masses_model.radius_mm(plane)
        at = None if plane is None else positions_deg(plane)
        away = draft.fixing in ("drilled", "ground off") or draft.mass_g < 0.0
        shown = {
            self.diameter: away and draft.fixing != "ground off",
            self.area: draft.fixing == "ground off",
            self.rod: draft.fixing == "welded",
            self.recovery: draft.fixing == "welded",
            self.material: away or draft.fixing == "welded",
            self.radius: radius is not None,
            self.angles: at is None,
        }
        place = 0
        for field in self.fields:
            self._grid.removeWidget(field)
            field.setVisible(shown[field])
            if shown[field]:
                self._grid.addWidget(field, *divmod(place, 2))
                place += 1
        self.rim.setVisible(radius is not None)
        if radius is not None:
            self.rim.setText(self._rim_words(draft, radius))
        self.split.setVisible(at is not None and draft.position is None)
        self.combine.setVisible(together > 1)
        self._say()

    def _rim_words(self, draft: Draft, radius: float) -> str:
        way = "against rotation" if self._angles == "against rotation" else "with rotation"
        shown = draft.angle_deg if self._angles == "against rotation" else -draft.angle_deg % 360.0
        along, across = handwork.rim_distance(shown, radius), handwork.chord(shown, radius)
        return f"From the mark {way}: {along:.0f} mm along the rim, {across:.0f} mm straight across, at radius {radius:g} mm."

    # what is worked out

    def _worked_out(self, _text: str) -> None:
        self._say(raises=True)

    def _say(self, *, raises: bool = False) -> None:
        """Depth or length, as far as the fields tell; a field that cannot be used raises for itself."""
        try:
            words = self._words()
        except ValueError:
            if raises:
                raise
            words = ""
        self.result.setText(words)
        self.result.setVisible(bool(words))

    def _words(self) -> str:
        draft = self._draft
        if draft is None or not draft.total_g:
            return ""
        mass_kg = abs(draft.total_g) / 1000.0
        if not self.rod.isHidden() and self.rod.text:
            metal = handwork.density(self._metal())
            length = handwork.rod_length(mass_kg, self._metres(self.rod), metal, self._share())
            return f"{1000.0 * length:.0f} mm of rod"
        if not self.area.isHidden() and self.area.text:
            area = units.parse(self.area.text, "m^2", "area")
            depth = handwork.ground_depth(mass_kg, area, handwork.density(self._metal()))
            return f"{figure(1000.0 * depth)} mm off, evenly over the area"
        if not self.diameter.isHidden() and self.diameter.text:
            hole = handwork.drilled(mass_kg, self._metres(self.diameter), handwork.density(self._metal()))
            full, whole = (figure(1000.0 * x) for x in (hole.full_m, hole.total_m))
            return f"drill to {whole} mm at the tip, {full} mm full diameter (118° point)"
        return ""

    def _metres(self, field: TakenField) -> float:
        return masses_model.length_from(field.text, "diameter") / 1000.0

    def _share(self) -> float:
        text = self.recovery.text.removesuffix("%").strip() or "90"
        try:
            return float(text) / 100.0
        except ValueError:
            raise EntryError(f'"{text}" is no share: write such as 90 %') from None

    def _other_radius(self, text: str) -> None:
        draft = self._draft
        own = None if draft is None else draft.radius_mm or masses_model.radius_mm(self._plane)
        if draft is None or own is None or not text:
            return
        wanted = masses_model.length_from(text, "radius")
        mass = handwork.at_radius(draft.total_g, own, wanted) - draft.filler_g
        self.replaced.emit([replace(draft, mass_g=round(mass, 2), radius_mm=wanted)])
        self.radius.show_taken("")

    def _split_to(self, text: str) -> None:
        draft, plane = self._draft, self._plane
        if draft is None or plane is None or not text:
            return
        found = _TWO.fullmatch(text)
        if not found:
            raise EntryError(f'"{text}" is not two angles: write such as 300 and 330')
        angles = [masses_model.place_from(found[i], plane, self._angles)[0] for i in (1, 2)]
        masses = handwork.split(vectors.vector(draft.total_g, draft.angle_deg), *angles)
        self._replace(draft, list(zip(masses, angles, strict=True)))
        self.angles.show_taken("")

    def _split(self) -> None:
        draft, plane = self._draft, self._plane
        at = None if plane is None else positions_deg(plane)
        if draft is None or plane is None or at is None:
            return
        free = [a for number, a in enumerate(at, start=1) if number not in plane.blocked]
        try:
            shares = handwork.split_between_neighbours(vectors.vector(draft.total_g, draft.angle_deg), free)
        except handwork.HandworkError as error:
            self.result.setText(parts.begun(str(error)))
            self.result.show()
            return
        self._replace(draft, [(mass, free[i]) for i, mass in shares])

    def _replace(self, draft: Draft, shares: Sequence[tuple[float, float]]) -> None:
        self.replaced.emit(
            [
                replace(
                    draft, mass_g=round(mass, 2), filler_g=0.0, angle_deg=angle, moves=None,
                    position=masses_model.position_at(self._plane, angle),
                )
                for mass, angle in shares
            ]
        )  # fmt: skip

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        for field in self.fields:
            field.set_theme(theme)
