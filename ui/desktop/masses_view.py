"""What the Masses page shows: the rotor face with its pieces, the cards beside it, and the vibration to expect."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6 import QtWidgets
from stillshaft.acquire.hookup import Hookup
from stillshaft.solver import progress
from stillshaft.solver.state import JobState, OnRotor
from stillshaft.ui.desktop import look, masses_model, parts
from stillshaft.ui.desktop.face import Face, Piece
from stillshaft.ui.desktop.masses_after import AfterCard, ClosedCard
from stillshaft.ui.desktop.masses_cards import CautionsCard, CorrectionCard, ExpectedPicture, TrialCard
from stillshaft.ui.desktop.masses_drafts import Drafts
from stillshaft.ui.desktop.masses_entry import EntryCard, OnCard
from stillshaft.ui.desktop.masses_face import Marked, PlacingFace
from stillshaft.ui.desktop.masses_model import Known
from stillshaft.ui.desktop.masses_pieces import PiecesCard
from stillshaft.ui.desktop.masses_sheet_card import SheetCard
from stillshaft.ui.desktop.masses_work import MassesKnown
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.page import Page
from stillshaft.ui.desktop.places import face_of_plane
from stillshaft.ui.desktop.said import Said
from stillshaft.ui.desktop.settings import View
from stillshaft.ui.desktop.stages import Stage
from stillshaft.ui.report_material import mark_turn_deg
from stillshaft.ui.theme import Theme

TRIAL, CORRECTION, PIECES, PUT_ON, CAUTIONS = "Trial", "Correction", "Pieces", "Put on", "Cautions"
_BESIDE_EMS = 58  # heights of text that two columns need
_LISTS_EMS = 76  # and two lists in one of the columns
_FACE_EMS = 37  # no higher, so that what is expected stays in sight below
_LEGEND = (
    "Dark: on the rotor. Dashed: thought of; drag it, or use the arrow keys, + and −. Wedge: the correction, 95 %. "
    "Cross: blocked."
)
_LEGEND_CLOSED = "Dark: on the rotor. Cross: blocked."


class MassesView(Page):
    """The page's parts, and how they show what is known and thought of."""

    def __init__(self, job: OpenJob) -> None:
        super().__init__(Stage.MASSES)
        self.job = job
        self.drafts = Drafts()
        self._plane = ""
        self._view = View()
        self._worked: MassesKnown | None = None
        self.trouble = Said()
        self.body.addWidget(self.trouble)
        self.nothing = parts.label("No job is open, or its brief has no plane yet: begin on the Brief page.", wrap=True)
        self.body.addWidget(self.nothing)
        self.face, self.expected = PlacingFace(), ExpectedPicture()
        self.trial, self.correction, self.pieces = TrialCard(), CorrectionCard(), PiecesCard()
        self.on, self.entry, self.cautions = OnCard(), EntryCard(), CautionsCard()
        self.after, self._due = AfterCard(), False
        self.closed = ClosedCard()
        self.columns = self._lay_out()
        self.body.addWidget(self.turn)
        self.body.addWidget(self.columns, 1)
        self.sheet_card = SheetCard()
        self.sheet_card.hide()
        self.body.addWidget(self.sheet_card, 1)
        self.body.addStretch(0)
        self.turn_to(TRIAL)

    def _lay_out(self) -> parts.Columns:
        self.planes = QtWidgets.QWidget()
        self._planes = QtWidgets.QHBoxLayout(self.planes)
        self._planes.setContentsMargins(0, 0, 0, 0)
        self.which: parts.Segments | None = None
        self._planes_by_word: dict[str, str] = {}
        self._face_card = parts.Card()
        self._face_card.body.addWidget(self.planes)
        self._face_card.body.addWidget(self.face, 1)
        self.legend = parts.label(_LEGEND, "small", wrap=True)
        self._face_card.body.addWidget(self.legend)
        left, right = QtWidgets.QVBoxLayout(), QtWidgets.QVBoxLayout()
        for column in (left, right):
            column.setSpacing(look.GAP)
        left.addWidget(self._face_card, 1)
        self.cards = {
            TRIAL: (self.trial,), CORRECTION: (self.correction,), PIECES: (self.pieces,),
            PUT_ON: (self.on, self.entry, self.after), CAUTIONS: (self.cautions,),
        }  # fmt: skip
        self.turn = parts.Segments("What is done", tuple(self.cards))
        self.turn.chosen.connect(self.turn_to)
        for card in (self.closed, *(c for cards in self.cards.values() for c in cards)):
            right.addWidget(card)
        right.addStretch(1)
        self._expected_card = parts.Card("Expected vibration", "with what is thought of")
        self._expected_card.body.addWidget(self.expected)
        left.addWidget(self._expected_card)
        left.addStretch(0)
        return parts.Columns(left, right, (4, 5))

    def turn_to(self, what: str) -> None:
        """Show one of the cards at the right; of a closed job its own."""
        self.turn.set(what)
        closed = self._state.closed
        self.closed.setVisible(closed)
        for name, cards in self.cards.items():
            for card in cards:
                card.setVisible(not closed and name == what and (card is not self.after or self._due))

    def _show_parts(self) -> None:
        """The parts that a job which stands so has a use for."""
        there, closed = bool(self._state.brief.planes), self._state.closed
        self.nothing.setVisible(not there)
        self.columns.setVisible(there and self.sheet_card.isHidden())
        self.turn.setVisible(there and not closed and self.sheet_card.isHidden())
        self.legend.setText(_LEGEND_CLOSED if closed else _LEGEND)
        self.turn_to(self.turn.value)

    def show_sheet(self, shown: bool) -> None:
        """The placement sheet in the place of the cards, or not."""
        self.sheet_card.setVisible(shown)
        self._show_parts()
        there = self.closed.visit if self._state.closed else self.turn.buttons[self.turn.value]
        (self.sheet_card.back if shown else there).setFocus()

    # what is known

    @property
    def known(self) -> Known | None:
        """What the runs tell, as far as it is worked out."""
        return None if self._worked is None else self._worked.known

    @property
    def _state(self) -> JobState:
        return JobState() if self.job.shown is None else self.job.shown.state

    @property
    def _hookup(self) -> Hookup | None:
        return None if self.job.shown is None else self.job.shown.hookup

    @property
    def _angles(self) -> str:
        return self._view.angles

    def _show_planes(self, names: Sequence[str]) -> None:
        """A choice of planes where there are several."""
        if list(self._planes_by_word.values()) != list(names):
            if self.which is not None:
                self._planes.removeWidget(self.which)
                self.which.hide()
                self.which.deleteLater()
            self._planes_by_word = {}
            for number, name in enumerate(names, start=1):
                word = masses_model.short(name).replace("&", "&&")
                self._planes_by_word[word if word not in self._planes_by_word else f"{word} ({number})"] = name
            self.which = parts.Segments("Plane", tuple(self._planes_by_word), 3)
            self.which.chosen.connect(lambda word: self.show_plane(self._planes_by_word[word]))
            self._planes.addWidget(self.which)
        self._mark_plane()
        self.planes.setVisible(len(names) > 1)

    def _mark_plane(self) -> None:
        word = next((w for w, name in self._planes_by_word.items() if name == self._plane), "")
        if self.which is not None:
            self.which.set(word)

    def show_plane(self, name: str) -> None:
        """Show another plane on the face."""
        self._plane = name
        self._mark_plane()
        self._show()

    # showing

    def _show(self) -> None:
        """All that follows from what is known and thought of."""
        state, known = self._state, self.known
        plane, trial = masses_model.plane_of(state, self._plane), None
        worked = self._worked
        if worked is not None:
            trial, why = worked.trials.get(self._plane, (None, "the brief has no such plane"))
            self.trial.show_trial(self._plane, trial, why, self._angles)
            by = masses_model.acknowledged_by(state)
            said = f"{by} said since the last start that all of it holds." if by else ""
            shown = self.job.shown
            self.cautions.show_cautions(worked.cautions, "" if shown is None else shown.by, said)
        if known is not None:
            runs = known.runs
            names = [p.name for p in state.brief.planes]
            may_stay = runs is not None and masses_model.last_run_still_on(state, runs)
            self.correction.set_machine(
                names, () if runs is None else runs.points, on=tuple((o.of, o.number) for o in state.on_rotor),
                may_stay=may_stay, stays="trial" not in {progress.purposes(state).get(o.of) for o in state.on_rotor},
            )  # fmt: skip
            grams = 1.0 if runs is None else 1000.0 * runs.kg_per_mass_unit
            self.correction.show_solution(known, grams, state, self._angles)
            self.pieces.search.setEnabled(known.solution is not None and not self.pieces.work.busy)
        on, thought = len(state.on_rotor), len(self.drafts.pieces)
        subtitle = "" if plane is None else f"{on} on the rotor, {thought} thought of."
        if state.closed:
            subtitle = f"{on} on the rotor. The job is closed."
        self._due = self.after.show_job(self.job.shown)
        self.after.setVisible(self._due and self.turn.value == PUT_ON and not state.closed)
        self.subtitle.setText(subtitle or f"{self.stage.purpose}.")
        self._show_drafts()

    def _show_drafts(self) -> None:
        """What changes while a piece is moved: face, lists, expected vibration, the chosen piece."""
        on, thought, chosen = self.drafts.on, self.drafts.thought, self.drafts.chosen
        state = self._state
        plane = masses_model.plane_of(state, self._plane)
        own = masses_model.radius_mm(plane)

        def share(radius: float | None) -> float:
            return 1.0 if radius is None or own is None else radius / own

        moved = {d.moves for _, d in thought}
        self.face.show_pieces(
            self._bare_face(),
            [
                Marked(mark, Piece(f"{o.piece.mass_g:.4g} g", self._now_at(o), None, share(o.piece.radius_mm)))
                for mark, o in on
                if o.piece.plane == self._plane and (o.of, o.number) not in moved
            ],
            [
                Marked(mark, Piece(f"{d.total_g:.4g} g", d.angle_deg, None, share(d.radius_mm), planned=True))
                for mark, d in thought
                if d.plane == self._plane
            ],
            self._wedges(),
            chosen,
        )
        several = len(state.brief.planes) > 1
        purposes = progress.purposes(state)
        lines = [(mark, self._on_words(o, purposes, several=several)) for mark, o in on]
        self.closed.show_pieces([f"{mark} · {words}" for mark, words in lines])
        self.on.show_pieces(
            lines,
            [
                (
                    mark,
                    (f"{masses_model.short(d.plane)}: " if several else "") + masses_model.draft_words(d, self._angles),
                )
                for mark, d in thought
            ],
            chosen,
            trials="trial" in {purposes.get(o.of) for _, o in on},
            gone=self.drafts.gone is not None,
        )
        self._show_expected()
        draft = self.drafts.chosen_draft
        together = sum(draft is not None and d.plane == draft.plane for d in self.drafts.to_put_on)
        hands = (
            ""
            if masses_model.acknowledged_by(state)
            else "before hands go in, go through the cautions: nobody has said since the last start that they hold."
        )
        self.entry.show_piece(draft, state, together, len(self.drafts.pieces), self._angles, hands)

    def _now_at(self, on: OnRotor) -> float:
        """A piece's angle from the mark as it is now."""
        turned = mark_turn_deg(self._state, on.of) - mark_turn_deg(self._state)
        return (on.piece.angle_deg + turned) % 360.0

    def _on_words(self, on: OnRotor, purposes: dict[int, str | None], *, several: bool) -> str:
        piece = on.piece
        place = masses_model.place_words(self._now_at(on), piece.position, self._angles)
        more = "".join(f", {text}" for text in (purposes.get(on.of), piece.fixing) if text)
        off = " off" if piece.mass_g < 0.0 else ""
        return f"{masses_model.short(piece.plane) + ': ' if several else ''}{abs(piece.mass_g):.4g} g{off} at {place}{more}"

    def _bare_face(self) -> Face | None:
        plane = masses_model.plane_of(self._state, self._plane)
        if plane is None or self._hookup is None:
            return None
        return face_of_plane(self._hookup, plane)

    def _wedges(self) -> list[Piece]:
        known = self.known
        if known is None or known.solution is None or self._state.closed:
            return []
        found = known.solution.additional if self.correction.left_on else known.solution.corrections
        return [
            Piece("wanted", known.at_mark(c.angle_deg), c.angle_ci95_deg, planned=True)
            for c in found
            if c.plane == self._plane and c.determined and c.mass > 0.0
        ]

    def _show_expected(self) -> None:
        known = self.known
        thought = bool(self.drafts.pieces)
        beside = ", beside what is on" if self.correction.left_on else ", all earlier masses off"
        nothing = "" if self._state.closed else "nothing is thought of yet"
        self._expected_card.heading.setText("Expected vibration" if thought else "Vibration in the last run")
        self._expected_card.note.setText(f"with what is thought of{beside}" if thought else nothing)
        if known is None or known.runs is None:
            self.expected.show_rows((), 1.0, "")
            return
        rows = masses_model.expected(known, self.drafts.pieces, left_on=self.correction.left_on)
        speed = known.fits[0].speed_rpm if known.fits else 1.0
        scale = masses_model.shown_unit(known.runs.vibration_unit, self._view.unit, speed)
        self.expected.show_rows(rows, *scale, thought=thought)

    # the page

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        for part in (
            self.face,
            self.expected,
            self.trial,
            self.correction,
            self.pieces,
            self.entry,
            self.cautions,
            self.after,
            self.closed,
        ):
            part.set_theme(theme)
        self.trouble.set_theme(theme)
        self.sheet_card.set_theme(theme)

    def set_view(self, view: View) -> None:
        """Unit, angles and viewing end."""
        self._view = view
        self.face.set_sight(view.seen_from, view.angles)
        self._show()

    def set_room(self, width_px: int, body_px: int) -> None:
        """The cards beside or below the face."""
        # one above the other, what the choice above turns stands next to it
        ems = width_px / body_px
        self.columns.set_beside(ems >= _BESIDE_EMS, right_first=True)
        self.on.set_beside(ems >= _LISTS_EMS)
        room = width_px - 2 * look.WIDE
        self.after.photos.set_width((5 * room // 9 if width_px >= _BESIDE_EMS * body_px else room) - 2 * look.ROOM)
        self.sheet_card.set_room(room - 2 * look.ROOM)
        self._face_card.setMaximumHeight(_FACE_EMS * body_px)
