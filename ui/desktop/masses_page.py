"""The Masses page: what to put where, what to expect of it, and what was really put on."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any

from PySide6 import QtCore
from stillshaft.solver import progress
from stillshaft.solver.correction import Wanted
from stillshaft.solver.state import OnRotor
from stillshaft.ui.desktop import masses_model, masses_pieces, masses_work, next_visit, parts
from stillshaft.ui.desktop.masses_drafts import Drafts
from stillshaft.ui.desktop.masses_model import Draft
from stillshaft.ui.desktop.masses_pieces import AIMS
from stillshaft.ui.desktop.masses_sheet_card import sheets_of
from stillshaft.ui.desktop.masses_view import CAUTIONS, PUT_ON, TRIAL, MassesView
from stillshaft.ui.desktop.masses_work import MassesKnown
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.said import Said
from stillshaft.ui.desktop.stages import Sentence, Stage, State, Weight
from stillshaft.ui.desktop.tasks import Tasks
from stillshaft.ui.desktop.undo_buttons import UndoButtons
from stillshaft.ui.session import Session

UNDER_WAY = "it is being worked out"


class MassesPage(MassesView):
    """Suggestions, what-if and entry of masses, all on one rotor face. Emits `opened` with a stage to go to."""

    opened = QtCore.Signal(Stage)

    def __init__(self, job: OpenJob) -> None:
        super().__init__(job)
        self._asked: tuple[Path, int, Wanted] | None = None
        self._folder: Path | None = None
        self._tasks = Tasks(self)
        self._steps = UndoButtons(job, self.trouble.say)
        self.undo, self.redo = self._steps.both
        self.sheet = parts.button(
            "P&lacement sheet", self._sheet, tip="For the person at the rotor: on paper or on a phone"
        )
        for each in (self.undo, self.redo, self.sheet):
            self.head.addWidget(each)
        self._connect()
        self._renew()

    def _connect(self) -> None:
        self.job.changed.connect(self._renew)
        self.face.chosen.connect(self.choose)
        self.face.moved.connect(self._move)
        self.face.stepped.connect(self._step)
        self.face.grown.connect(self._grow)
        self.on.chosen.connect(self.choose)
        for act, done in {
            "add": self._add, "remove": self._remove, "bring back": self._bring_back, "take off": self._take_off,
            "sits elsewhere": self._elsewhere, "trials off": self._trials_off,
        }.items():  # fmt: skip
            self.on.acts[act].clicked.connect(lambda _checked=False, d=done: d())
        self.trial.wanted.connect(self._try_trial)
        self.correction.asked.connect(self._ask)
        self.correction.taken.connect(self._try_correction)
        self.correction.halved.connect(lambda: self._try_correction(0.5))
        self.correction.kept.connect(self._keep_plan)
        self.pieces.stocked.connect(self._restock)
        self.pieces.asked.connect(self.find_pieces)
        self.pieces.taken.connect(self._try_pieces)
        self.pieces.kept.connect(self._keep_pieces)
        self.entry.changed.connect(self._replace)
        self.entry.combined.connect(self._combine)
        self.entry.recorded.connect(self._record)
        self.entry.to_cautions.connect(lambda: self.turn_to(CAUTIONS))
        self.after.noted.connect(self._weigh_back)
        self.after.photos.chosen.connect(self._add_photos)
        self.after.photos.removed.connect(lambda entry: self._act(lambda s: s.withdraw(entry, "photo removed")))
        self.sheet_card.left.connect(lambda: self.show_sheet(False))
        self.sheet_card.outdated.connect(self._sheet)
        self.cautions.acknowledged.connect(self._acknowledge)
        self.closed.visited.connect(lambda: next_visit.begin(self.job, lambda why: self.closed.trouble.say(f"{why}.")))
        self.closed.to_close_out.connect(lambda: self.opened.emit(Stage.CLOSE_OUT))

    def _renew(self) -> None:
        """The job stands elsewhere: show it, and work out what follows."""
        state, shown = self._state, self.job.shown
        if shown is not None and shown.folder != self._folder:
            self._folder = shown.folder
            self._begin_anew()
        names = [p.name for p in state.brief.planes]
        self._show_parts()
        self._steps.renew()
        self.sheet.setEnabled(bool(names) and self._hookup is not None)
        if self._plane not in names:
            self._plane = names[0] if names else ""
        self._show_planes(names)
        self.drafts.follow(state)
        self.pieces.stock.show_taken(masses_pieces.stock_words(state.brief.stock))
        self._ask()
        self._show()

    def _begin_anew(self) -> None:
        """Another job is open: nothing that was thought of, found or typed for the one before may stay."""
        self._worked = None
        self.trial.show_trial("", None, UNDER_WAY, self._angles)
        self.correction.show_nothing(UNDER_WAY)
        self.drafts = Drafts()
        self.pieces.show_plan(None, "", self._angles)
        for typed in (self.entry.remarks, self.on.weighed, self.after.weighed, self.cautions.who):
            typed.clear()
        for said in (self.trouble, self.entry.trouble, self.after.trouble, self.closed.trouble, self.cautions.trouble):
            said.say("")
        self.sheet_card.hide()
        self.turn_to(TRIAL)

    def _ask(self) -> None:
        """Have the correction worked out, unless that is under way for the same question."""
        shown = self.job.shown
        if shown is None:
            self._worked, self._asked = None, None
            return
        state, folder, wanted = shown.state, shown.folder, self.correction.wanted
        asked = (shown.folder, shown.entries, wanted)
        if self._asked == asked:
            self._show()  # trial masses stay on or not: worked out already
            return
        self._asked = asked

        def done(found: MassesKnown) -> None:
            if self._asked == asked:
                self._worked = found
                self._show()
                self.changed.emit()

        self._tasks.run("masses", lambda: masses_work.gather(state, folder, wanted), done, self.trouble.say)

    # what is thought of

    def choose(self, mark: str) -> None:
        """Choose a piece by its mark."""
        self.drafts.chosen = mark
        draft, on = self.drafts.chosen_draft, self.drafts.chosen_on
        plane = draft.plane if draft is not None else on.piece.plane if on is not None else self._plane
        if plane != self._plane:
            self.show_plane(plane)
        else:
            self._show_drafts()

    def think_of(self, drafts: Sequence[Draft], purpose: str = "") -> None:
        """Put pieces on the face to look at, in the place of those thought of before."""
        self.drafts.think_of(drafts)
        if purpose:
            self.entry.purpose.set(purpose)
        self._turn_to_chosen()

    def _turn_to_chosen(self) -> None:
        """Other pieces are thought of: show the chosen one's plane."""
        draft = self.drafts.chosen_draft
        if draft is not None:
            self._plane = draft.plane
        self._show_planes([p.name for p in self._state.brief.planes])
        self._show()
        self.changed.emit()

    def _move(self, mark: str, angle_deg: float) -> None:
        self._change(mark, self.drafts.moved(mark, angle_deg))

    def _step(self, mark: str, step: int) -> None:
        self._change(mark, self.drafts.stepped(mark, step))

    def _grow(self, mark: str, step: int) -> None:
        self._change(mark, self.drafts.grown(mark, step))

    def _change(self, mark: str, new: Draft | None) -> None:
        if new is not None:
            self._replace(self.drafts.get(mark), [new])

    def _replace(self, old: Draft | None, new: Sequence[Draft]) -> None:
        """Put other pieces in the place of one."""
        if not self.drafts.replace(old, new):
            return
        if old is not None and len(new) == 1 and new[0].plane == old.plane:
            self._show_drafts()  # while a piece is moved: nothing else changes
        else:
            self._turn_to_chosen()

    def _add(self) -> None:
        self.drafts.add_usual(self._plane)
        self._turn_to_chosen()

    def _remove(self) -> None:
        self._replace(self.drafts.chosen_draft, [])

    def _bring_back(self) -> None:
        self.drafts.bring_back()
        self._turn_to_chosen()

    def _combine(self, name: str) -> None:
        self.drafts.combine(name)
        self._turn_to_chosen()

    def _try_trial(self) -> None:
        trial = self.trial.trial
        if trial is not None:
            plane = masses_model.plane_of(self._state, trial.plane)
            angle = masses_model.nearest(plane, trial.angle_deg or 0.0)
            mass = max(0.1, round(1000.0 * trial.mass_kg, 1))
            self.think_of([Draft(trial.plane, mass, angle, masses_model.position_at(plane, angle))], "trial")
            self.turn_to(PUT_ON)

    def _try_correction(self, share: float = 1.0) -> None:
        if self.known is not None:
            left_on = self.correction.left_on
            drafts = [
                replace(d, mass_g=masses_model.weighable(share * d.mass_g))
                for d in masses_model.drafts_of(self.known, left_on=left_on)
            ]
            self.think_of(drafts, "trim" if left_on else "correction")
            self.turn_to(PUT_ON)

    # pieces

    def find_pieces(self) -> None:
        """Search the stock on a thread."""
        known, stock = self.known, self._state.brief.stock
        if known is None or known.solution is None:
            return
        if not stock:
            self.pieces.show_plan(
                None, "the stock is empty: write what is at hand, such as 2 g x 6, 5 g x 4.", self._angles
            )
            return
        aim, most = AIMS[self.pieces.aim.value], self.pieces.most.value() or None
        left_on = self.correction.left_on
        self.pieces.search.setEnabled(False)
        self.pieces.show_plan(None, "", self._angles)

        def work(report: Callable[[float, str], None]) -> Any:
            return masses_pieces.search(known, stock, aim, most, left_on=left_on, report=report)

        def over(plan: Any, why: str) -> None:
            self.pieces.search.setEnabled(True)
            self.pieces.show_plan(plan, why, self._angles)

        self.pieces.work.run(work, lambda plan: over(plan, ""), lambda why: over(None, why or "broken off."))

    def _try_pieces(self) -> None:
        if self.pieces.plan is not None:
            left_on = self.pieces.plan.left_on
            self.think_of(
                masses_pieces.drafts_of(self.pieces.plan, 0.0 if self.known is None else self.known.turn_deg),
                "trim" if left_on else "correction",
            )
            self.turn_to(PUT_ON)

    # acts: each is written into the record

    def _act(
        self, work: Callable[[Any], Any], say: Said | None = None, done: Callable[[Any], None] | None = None
    ) -> None:
        where = say or self.trouble
        where.say("")
        self.job.act(work, done, lambda why: where.say(f"{why}."))

    def _restock(self, stock: list[dict[str, Any]]) -> None:
        self._act(lambda session: session.describe({"stock": stock}), self.pieces.trouble)

    def _keep_plan(self) -> None:
        known = self.known
        if known is not None:
            self._act(lambda session: masses_work.keep_plan(session, known), self.correction.trouble)

    def _keep_pieces(self) -> None:
        plan = self.pieces.plan
        if plan is not None:
            self._act(lambda session: session.keep_pieces(plan), self.pieces.trouble)

    def _record(self, purpose: str, note: str) -> None:
        """What is thought of was put on; or the chosen piece really sits elsewhere."""
        draft = self.drafts.chosen_draft
        if draft is not None and draft.moves is not None:
            of, number = draft.moves
            pieces = [
                draft.fields() if on.number == number else _plain(on) for on in self._state.on_rotor if on.of == of
            ]
            self._act(lambda s: s.really_placed(of, pieces, note), self.entry.trouble, lambda _: self._done([draft]))
            return
        put = self.drafts.to_put_on
        fields = [d.fields() for d in put]
        self._act(lambda s: s.put_on(fields, purpose, note), self.entry.trouble, lambda _: self._done(put))

    def _done(self, recorded: Sequence[Draft]) -> None:
        self.entry.remarks.clear()
        self.drafts.forget(recorded)
        self._turn_to_chosen()

    def _take_off(self) -> None:
        on = self.drafts.chosen_on
        if on is not None:
            self._off([on])

    def _trials_off(self) -> None:
        purposes = progress.purposes(self._state)
        self._off([o for o in self._state.on_rotor if purposes.get(o.of) == "trial"])

    def _off(self, pieces: Sequence[OnRotor]) -> None:
        note = self.on.note_on_off
        self._act(lambda session: session.take_off(pieces, note), None, lambda _: self.on.weighed.clear())

    def _weigh_back(self, note: str) -> None:
        self._act(lambda s: s.weigh_back(note), self.after.trouble, lambda _: self.after.weighed.clear())

    def _add_photos(self, files: list[Path]) -> None:
        """Photos of the chosen piece on the rotor, or of those that were put on last."""
        on = self.drafts.chosen_on or max(self._state.on_rotor, key=lambda o: o.of, default=None)
        if on is not None:
            for file in files:
                self._act(partial(_add_photo, file, on.of), self.after.trouble)

    def _elsewhere(self) -> None:
        """Think of where a piece that is on really sits; recording it moves it there."""
        on = self.drafts.chosen_on
        if on is None:
            return
        piece = on.piece
        fixing = piece.fixing if piece.fixing in masses_model.FIXINGS else masses_model.FIXINGS[0]
        draft = Draft(
            piece.plane, piece.mass_g, piece.angle_deg, piece.position, piece.radius_mm, fixing, moves=(on.of, on.number)
        )  # fmt: skip
        self.drafts.add(draft)
        self._turn_to_chosen()

    def _acknowledge(self, texts: list[str], who: str) -> None:
        self._act(lambda session: session.acknowledge(texts, who), self.cautions.trouble)

    # the sheet

    def _sheet(self) -> None:
        shown, hookup = self.job.shown, self._hookup
        if shown is None or hookup is None:
            return
        state, view, known = shown.state, self._view, self.known
        drafts, left_on = self.drafts.to_put_on, self.correction.left_on
        self.sheet.setEnabled(False)

        def over(pages: Any, why: str = "") -> None:
            self.sheet.setEnabled(True)
            self.trouble.say(why)
            if pages:
                self.sheet_card.show_pages(pages, state.name)
                self.show_sheet(True)

        self._tasks.run(
            "placement sheet", lambda: sheets_of(state, hookup, drafts, known, view, left_on=left_on), over,
            lambda why: over((), f"{why}."),
        )  # fmt: skip

    # the page

    def state(self) -> State:
        """Done once a correction was run with; attention where a plane is not determined or trial masses were left on."""
        state = self._state
        purposes = progress.purposes(state)
        on = {purposes.get(o.of) for o in state.on_rotor}
        solution = None if self.known is None else self.known.solution
        if solution is not None and solution.reasons:
            return State.ATTENTION
        last_run = state.runs[-1].id if state.runs else 0
        if on & {"correction", "trim"} and "trial" not in on and last_run > state.masses[-1].id:
            return State.DONE
        return State.UNDER_WAY if state.masses or self.drafts.pieces or solution is not None else State.EMPTY

    def sentence(self) -> Sentence | None:
        """What matters most about the masses."""
        state, known = self._state, self.known
        if state.closed:
            return None
        if self.drafts.pieces and not masses_model.acknowledged_by(state):
            text = "Before hands go in: nobody has said since the last start that the cautions hold."
            return Sentence(text, Stage.MASSES, Weight.CAUTION, "Masses")
        if known is None or known.solution is None:
            return None
        if known.solution.reasons:
            return Sentence(f"{parts.begun(known.solution.reasons[0])}.", Stage.MASSES, Weight.CAUTION, "Masses")
        if not state.on_rotor:
            told = "; ".join(
                f"{d.plane} {masses_model.draft_words(d, self._angles)}"
                for d in masses_model.drafts_of(known, left_on=False)
            )
            return Sentence(f"Correction: {told}.", Stage.MASSES, action="Masses")
        return None

    def close_down(self) -> None:
        """Stop what runs."""
        self.pieces.work.close_down()
        self.after.photos.close_down()
        self._tasks.close()


def _add_photo(file: Path, of: int, session: Session) -> object:
    return session.add_photo(file, about=of)


def _plain(on: OnRotor) -> dict[str, Any]:
    import msgspec

    return {key: value for key, value in msgspec.to_builtins(on.piece).items() if value is not None}
