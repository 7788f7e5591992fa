"""From a hook-up to what stands around the rotor face. No Qt here."""

from __future__ import annotations

from dataclasses import replace

from stillshaft.acquire.hookup import Hookup
from stillshaft.solver.brief import Plane
from stillshaft.ui.desktop.face import COUNTER_CLOCKWISE, Face, Piece, Sensor
from stillshaft.ui.job_masses import positions_deg


def face_of(
    hookup: Hookup,
    kind: str | None = None,
    at_deg: tuple[float, ...] = (),
    pieces: tuple[Piece, ...] = (),
) -> Face:
    """The rotor face of a hook-up: its radial sensors, and what is known of the rotor."""
    table = hookup.table
    sensors = tuple(
        Sensor(p.name, p.angle_deg, number) for number, p in enumerate(hookup.points) if p.direction == "radial"
    )
    return Face(
        str(table.get("rotation", COUNTER_CLOCKWISE)),
        str(table.get("reference_end", "drive")),
        str(table.get("datum", "12 o'clock")),
        hookup.pulse.angle_deg,
        sensors,
        kind,
        at_deg,
        pieces,
    )


def face_of_plane(hookup: Hookup, plane: Plane | None) -> Face:
    """The rotor face of a hook-up with the positions of a plane; None for a plane that the brief does not know."""
    at = None if plane is None else positions_deg(plane)
    if plane is None or at is None:
        return face_of(hookup)
    return replace(face_of(hookup, "hole", at), blocked=tuple(plane.blocked))
