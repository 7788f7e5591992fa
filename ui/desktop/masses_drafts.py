"""The pieces that are thought of, with their marks, and what hands do to them. No Qt here."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from stillshaft.solver.state import JobState, OnRotor
from stillshaft.ui.desktop import masses_model
from stillshaft.ui.desktop.masses_model import Draft

_USUAL_G = 10.0  # of a piece that is added by hand
_FINE_BELOW_G = 20.0  # masses below are changed by a tenth of a gram


class Drafts:
    """Pieces marked 1, 2, …; those on the rotor are marked A, B, …. `chosen` is a mark of either, `gone` was removed last."""

    def __init__(self) -> None:
        self.state = JobState()
        self.pieces: tuple[Draft, ...] = ()
        self.chosen = ""
        self.gone: Draft | None = None

    def follow(self, state: JobState) -> None:
        """The job stands elsewhere: forget what it has no place for; a closed one has none."""
        self.state = state
        planes, on = {p.name for p in state.brief.planes}, {(o.of, o.number) for o in state.on_rotor}
        kept = () if state.closed else self.pieces
        self.pieces = tuple(d for d in kept if d.plane in planes and (d.moves is None or d.moves in on))

    # marks

    @property
    def on(self) -> list[tuple[str, OnRotor]]:
        """What is on the rotor, with its marks."""
        return [(_letter(n), o) for n, o in enumerate(self.state.on_rotor)]

    @property
    def thought(self) -> list[tuple[str, Draft]]:
        """What is thought of, with its marks."""
        return [(str(n), d) for n, d in enumerate(self.pieces, start=1)]

    @property
    def chosen_draft(self) -> Draft | None:
        """The chosen piece, where it is one that is thought of."""
        return self.get(self.chosen)

    @property
    def chosen_on(self) -> OnRotor | None:
        """The chosen piece, where it is one on the rotor."""
        return dict(self.on).get(self.chosen)

    def get(self, mark: str) -> Draft | None:
        """The piece thought of with a mark."""
        return dict(self.thought).get(mark)

    @property
    def to_put_on(self) -> tuple[Draft, ...]:
        """Pieces that are to be put on, without those that say where one on the rotor really sits."""
        return tuple(d for d in self.pieces if d.moves is None)

    # hands

    def think_of(self, pieces: Sequence[Draft]) -> None:
        """Others in the place of all; the first is chosen."""
        self.pieces = tuple(pieces)
        self.chosen = "1" if pieces else ""

    def add(self, draft: Draft) -> None:
        """One more, chosen. One for the same piece on the rotor makes room."""
        kept = tuple(d for d in self.pieces if d.moves is None or d.moves != draft.moves)
        self.pieces = (*kept, draft)
        self.chosen = str(len(self.pieces))

    def add_usual(self, plane: str) -> None:
        """A piece on a plane, at its first place."""
        entry = masses_model.plane_of(self.state, plane)
        angle = masses_model.nearest(entry, 0.0)
        self.add(Draft(plane, _USUAL_G, angle, masses_model.position_at(entry, angle)))

    def replace(self, old: Draft | None, new: Sequence[Draft]) -> bool:
        """Others in the place of one; False where that one is not there."""
        if old is None or old not in self.pieces:
            return False
        at = self.pieces.index(old)
        self.pieces = (*self.pieces[:at], *new, *self.pieces[at + 1 :])
        if not new:
            self.gone = old
            self.chosen = str(min(at + 1, len(self.pieces))) if self.pieces else ""
        return True

    def bring_back(self) -> None:
        """The piece that was removed last."""
        if self.gone is not None:
            self.add(self.gone)
            self.gone = None

    def forget(self, recorded: Sequence[Draft]) -> None:
        """Pieces that are in the record now."""
        self.pieces = tuple(d for d in self.pieces if d not in recorded)
        self.chosen = ""

    def moved(self, mark: str, angle_deg: float) -> Draft | None:
        """The piece dropped at an angle; None where it stays."""
        draft = self.get(mark)
        if draft is None:
            return None
        return self._at(draft, masses_model.nearest(masses_model.plane_of(self.state, draft.plane), angle_deg))

    def stepped(self, mark: str, step: int) -> Draft | None:
        """The piece at its next place; None where it stays."""
        draft = self.get(mark)
        if draft is None:
            return None
        plane = masses_model.plane_of(self.state, draft.plane)
        return self._at(draft, masses_model.neighbours(plane, draft.angle_deg, step))

    def _at(self, draft: Draft, angle_deg: float) -> Draft | None:
        plane = masses_model.plane_of(self.state, draft.plane)
        new = replace(draft, angle_deg=angle_deg, position=masses_model.position_at(plane, angle_deg))
        return None if new == draft else new

    def grown(self, mark: str, step: int) -> Draft | None:
        """The piece a little heavier or lighter; None where nothing would be left of it."""
        draft = self.get(mark)
        if draft is None:
            return None
        new = round(draft.mass_g + step * (0.1 if abs(draft.mass_g) < _FINE_BELOW_G else 1.0), 4)
        return replace(draft, mass_g=new) if new else None

    def combine(self, name: str) -> None:
        """One piece for all that are thought of on a plane. Raises HandworkError where it has no radius."""
        plane = masses_model.plane_of(self.state, name)
        same = [d for d in self.to_put_on if d.plane == name]
        if plane is not None and len(same) > 1:
            one = masses_model.one_of(same, plane)
            self.pieces = tuple(d for d in self.pieces if d not in same)
            self.add(one)


def _letter(number: int) -> str:
    """A, B, … Z, then A2, B2 and so on."""
    round_, letter = divmod(number, 26)
    return chr(ord("A") + letter) + (str(round_ + 1) if round_ else "")
