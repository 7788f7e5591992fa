"""The card of pieces: the stock at hand, the search on a thread, and what it found."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any

from PySide6 import QtCore, QtWidgets
from stillshaft.solver.brief import Brief, Stock
from stillshaft.solver.runs import StockMass
from stillshaft.ui import brief_text
from stillshaft.ui.desktop import look, masses_model, parts
from stillshaft.ui.desktop.masses_cards import Rows
from stillshaft.ui.desktop.masses_field import TakenField
from stillshaft.ui.desktop.masses_model import Draft, EntryError, Known
from stillshaft.ui.desktop.said import Said
from stillshaft.ui.desktop.worded import SpinBox
from stillshaft.ui.desktop.work_row import WorkRow
from stillshaft.ui.report_words import figure
from stillshaft.ui.theme import Theme

if TYPE_CHECKING:
    from stillshaft.solver.pieces import Plan

AIMS = {"few and good": "proposal", "least vibration": "best", "within limits": "fewest"}


def stock_words(stock: Sequence[Stock]) -> str:
    """A stock in one line, as the brief has it."""
    return ", ".join(f"{s.mass} x {s.count}" for s in stock)


def stock_from(text: str) -> list[dict[str, Any]]:
    """The stock of a text such as "2 g x 6, 5 g x 4", as the brief holds it. Raises BriefTextError, EntryError."""
    found = brief_text.patch_from(f"stock = {text.replace(';', ',')}", Brief())["stock"] or []
    for piece in found:
        if not re.search(r"[A-Za-z]", piece["mass"]):
            piece["mass"] += " g"
        if not masses_model.mass_from(piece["mass"]):
            raise EntryError(f'"{piece["mass"]}" is no piece: write what it weighs')
    return found


def drafts_of(plan: Plan, turn_deg: float = 0.0) -> tuple[Draft, ...]:
    """The pieces of a plan, to be looked at on the face; `turn_deg` as of `Known`."""
    from stillshaft.solver import pieces

    found = []
    for placed in plan.chosen.pieces:
        plane = plan.planes[placed.plane]
        radius = None if placed.leverage == 1.0 or plane.radius_mm is None else placed.leverage * plane.radius_mm
        found.append(
            Draft(
                plane.name, placed.mass, (placed.angle_deg - turn_deg) % 360.0, pieces.number_of(plane, placed), radius
            )
        )
    return tuple(found)


def search(
    known: Known,
    stock: Sequence[Stock],
    aim: str,
    most: int | None,
    *,
    left_on: bool,
    report: Callable[[float, str], None],
) -> Plan:
    """Pieces of a stock for what the runs tell. Raises PlacementError, and what `report` raises to break off."""
    from stillshaft.solver import pieces

    assert known.runs is not None
    grams = 1000.0 * known.runs.kg_per_mass_unit
    at_hand = [StockMass(masses_model.mass_from(s.mass) / grams, s.count) for s in stock]
    return pieces.plan(
        known.runs, at_hand, aim=aim, most=most, left_on=left_on, priors=known.priors, report=report
    )  # fmt: skip


class PiecesCard(parts.Card):
    """Emits `stocked` with another stock, `asked` to search, `taken` to look at what was found, `kept` to record it."""

    stocked = QtCore.Signal(list)
    asked = QtCore.Signal()
    taken = QtCore.Signal()
    kept = QtCore.Signal()

    def __init__(self) -> None:
        super().__init__("Pieces from the stock")
        self.stock = TakenField("&Stock at hand", self._restock, "such as 2 g x 6, 5 g x 4", 12.0)
        self.body.addWidget(self.stock)
        self.aim = parts.Segments("What the pieces are to do", tuple(AIMS))
        self.aim.set("few and good")
        self.body.addWidget(self.aim)
        row = QtWidgets.QHBoxLayout()
        row.setSpacing(look.TIGHT)
        self.most = SpinBox()
        self.most.setRange(0, 24)
        self.most.setSpecialValueText("as it takes")
        self.most.lineEdit().setTextMargins(look.TIGHT, 0, 0, 0)
        row.addWidget(parts.labelled("Pieces at &most", self.most))
        row.addWidget(self.most)
        for sign, name, step in (("−", "One piece fewer", -1), ("+", "One piece more", 1)):
            each = parts.button(sign, lambda by=step: self.most.stepBy(by), tip=name)  # type: ignore[misc]
            each.setAccessibleName(name)
            row.addWidget(each)
        row.addStretch(1)
        self.body.addLayout(row)
        row = QtWidgets.QHBoxLayout()
        self.search = parts.button("Find &pieces", self.asked.emit, "main", "Search the stock for the least vibration")
        row.addWidget(self.search)
        row.addStretch(1)
        self.body.addLayout(row)
        self.work = WorkRow("finding pieces")
        self.body.addWidget(self.work)
        self.trouble = Said()
        self.body.addWidget(self.trouble)
        self.result = parts.label("", "sentence", wrap=True)
        self.rows, self.warnings = Rows(), Rows("quiet")
        for part in (self.result, self.rows, self.warnings):
            self.body.addWidget(part)
        foot = QtWidgets.QHBoxLayout()
        foot.setSpacing(look.TIGHT)
        self.take = parts.button(
            "Try them on the &face", self.taken.emit, "main", "Put the pieces on the face to look at"
        )
        self.keep = parts.button("&Keep choice", self.kept.emit, tip="Write these pieces into the record of the job")
        foot.addWidget(self.take)
        foot.addWidget(self.keep)
        foot.addStretch(1)
        self.body.addLayout(foot)
        self.plan: Plan | None = None
        self.show_plan(None, "", "")

    def _restock(self, text: str) -> None:
        self.stocked.emit(stock_from(text))

    def show_plan(self, plan: Plan | None, why: str, angles: str) -> None:
        """Show what was found, or why nothing was; an empty reason: nothing was looked for."""
        self.plan = plan
        self.trouble.say(why)
        for part in (self.result, self.take, self.keep):
            part.setVisible(plan is not None)
        if plan is None:
            self.rows.show_texts(())
            self.warnings.show_texts(())
            return
        chosen = plan.chosen
        count = len(chosen.pieces)
        unit = "of the limit" if plan.unit == "of the limit" else plan.unit
        self.result.setText(f"{count} piece{'s' * (count != 1)}: largest point {figure(chosen.largest)} {unit}")
        texts = [f"{d.plane}: {masses_model.draft_words(d, angles)}" for d in drafts_of(plan)]
        self.rows.show_texts(texts)
        more = [f"{len(c.pieces)}: {figure(c.largest)}" for c in plan.curve.choices]
        proof = (
            "proven to be the best of so many" if chosen.optimal else f"none of so many is below {figure(chosen.bound)}"
        )
        told = [f"by number of pieces: {', '.join(dict.fromkeys(more))} {unit}; {proof}"]
        if plan.handbook is not None:
            told.append(
                f"the handbook's split takes {plan.handbook[0]} pieces and leaves {figure(plan.handbook[1])} {unit}"
            )
        said = masses_model.of_brief(plan.warnings)
        self.warnings.show_texts([*plan.reasons, *told, *said])

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.stock.set_theme(theme)
        self.trouble.set_theme(theme)
