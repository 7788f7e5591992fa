"""All that the Masses page has worked out on a thread from a job's state. No Qt here."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from stillshaft.solver import cautions
from stillshaft.solver.cautions import Caution
from stillshaft.solver.correction import Wanted
from stillshaft.solver.events import Options
from stillshaft.solver.state import JobState
from stillshaft.solver.trial import Trial
from stillshaft.ui import job_facts
from stillshaft.ui.desktop import masses_model
from stillshaft.ui.desktop.masses_model import Known
from stillshaft.ui.report_material import mark_turn_deg

if TYPE_CHECKING:
    from stillshaft.ui.session import Session


@dataclass(frozen=True)
class MassesKnown:
    """What the runs tell, trial masses by plane with why there is none, and what must hold before hands go in."""

    state: JobState
    known: Known
    trials: dict[str, tuple[Trial | None, str]]
    cautions: tuple[Caution, ...]


def gather(state: JobState, folder: Path, wanted: Wanted) -> MassesKnown:
    """Work it all out."""
    trials: dict[str, tuple[Trial | None, str]] = {}
    for plane in state.brief.planes:
        try:
            found = job_facts.trial_for(state, folder, plane.name)
            if found.angle_deg is not None:  # counted from the mark as it is now
                found = replace(found, angle_deg=(found.angle_deg - mark_turn_deg(state)) % 360.0)
            trials[plane.name] = (found, "")
        except ValueError as error:
            if not type(error).__module__.startswith("stillshaft."):
                raise
            trials[plane.name] = (None, str(error))
    return MassesKnown(state, masses_model.work_out(state, folder, wanted), trials, cautions.before_hands(state))


def keep_plan(session: Session, known: Known) -> None:
    """Write the correction that is shown into the record, with the choice it was asked for.

    Raises EntryError for a choice that stored coefficients cannot be kept with.
    """
    wanted = known.wanted
    if known.priors:
        if wanted != Wanted():
            raise masses_model.EntryError(
                "with stored coefficients only the whole correction is kept: choose each plane, and all planes and points"
            )
        session.solve_with_stored()
        return
    options = Options(
        planes=list(wanted.planes) or None,
        left_out=list(wanted.left_out) or None,
        parts=None if wanted.parts == "all" else wanted.parts,
    )
    session.solve(wanted.method, options)
