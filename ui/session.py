"""The job without a window: one act of the person is one function here, which also writes the record."""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from stillshaft.acquire import hookup as wiring
from stillshaft.dsp import units, vectors
from stillshaft.dsp.measure import Measurement, Measuring

if TYPE_CHECKING:
    from stillshaft.solver.limits import Tolerance

Report = Callable[[float, str], None]


class SessionError(ValueError):
    """An act that cannot be done: the message says why and what to do."""


@dataclass(frozen=True)
class Placed:
    """A mass on the rotor: plane, grams, degrees from the mark against rotation."""

    plane: str
    mass_g: float
    angle_deg: float


def masses_from(texts: Sequence[str]) -> list[Placed]:
    """Read masses such as "left = 10 g at 270". Raises SessionError for anything else."""
    placed = []
    for text in texts:
        match = re.fullmatch(r"\s*(.+?)\s*=\s*(.+?)\s+at\s+([-+]?\d+(?:\.\d+)?)\s*(?:deg|°)?\s*", text)
        if not match:
            raise SessionError(f'mass "{text}": write plane, mass and angle, such as "left = 10 g at 270"')
        plane, mass, angle = match.groups()
        mass_kg = units.parse(mass, "kg", f'mass on "{plane}"')
        placed.append(Placed(plane, 1000.0 * mass_kg, float(angle) % 360.0))
    return placed


def hookup_of(recording: Path, hookup: Path | None) -> wiring.Hookup:
    """The hook-up given, else the one that the recording carries."""
    from stillshaft.acquire import recording as recordings

    if hookup is not None:
        return wiring.load_hookup(hookup)
    with recordings.open_recording(recording) as reader:
        if reader.hookup is None:
            raise SessionError(f"{recording}: carries no hook-up; name one with --hookup FILE")
        return wiring.hookup_from(reader.hookup)


def measure_recording(
    path: Path, hookup: wiring.Hookup, order: float = 1.0, report: Report | None = None
) -> Measurement:
    """Vectors of a recording at one order. Raises the errors of its parts with the file named."""
    from stillshaft.acquire import recording as recordings

    with recordings.open_recording(path) as reader:
        if hookup.channels > reader.channels:
            raise SessionError(f"{path}: has {reader.channels} inputs, but the hook-up uses input {hookup.channels}")
        measuring = Measuring(reader.rate_hz, hookup.pulse, hookup.points, hookup.display, order)
        try:
            for block in reader.blocks():
                measuring.feed(block)
                if report is not None:
                    report(measuring.frames / reader.frames, "measuring")
            return measuring.result()
        except ValueError as error:
            if type(error).__module__.startswith("stillshaft."):
                raise SessionError(f"{path}: {error}") from error
            raise


def append_measurement(
    runs: Path, name: str, measured: Measurement, hookup: wiring.Hookup, masses: Sequence[Placed]
) -> None:
    """Write a measurement into a runs file, which is made if there is none. Nothing is written on an error."""
    from stillshaft.solver.runs import append_run

    unit = "g"
    append_run(
        runs,
        name=name,
        speed_rpm=measured.speed.mean_rpm,
        vectors={p.name: p.z for p in measured.points},
        covariance=measured.covariance.tolist(),
        degrees_of_freedom=measured.degrees_of_freedom,
        masses=[(m.plane, m.mass_g, m.angle_deg) for m in masses],
        vibration_unit=measured.unit,
        mass_unit=unit,
        points=[
            {"name": p.name, "angle": p.angle_deg, "quantity": p.quantity, "direction": p.direction}
            for p in hookup.points
        ],
    )


def write_new(path: Path, text: str) -> None:
    """Write a file as a whole or not at all."""
    partial = path.with_name(path.name + ".partial")
    partial.write_text(text, encoding="utf-8")
    os.replace(partial, path)
