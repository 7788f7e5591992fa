"""From a hook-up to what stands around the rotor face. No Qt here."""

from __future__ import annotations

from stillshaft.acquire.hookup import Hookup
from stillshaft.ui.desktop.face import COUNTER_CLOCKWISE, Face, Piece, Sensor


def face_of(
    hookup: Hookup,
    kind: str | None = None,
    positions_deg: tuple[float, ...] = (),
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
        positions_deg,
        pieces,
    )
