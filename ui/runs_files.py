"""Runs files as a person makes them: masses read from text, measurements appended; and what is left of the first run."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from stillshaft.acquire import hookup as wiring
from stillshaft.dsp import tables, units
from stillshaft.dsp.measure import Measurement
from stillshaft.dsp.units import InputError


class RunsFileError(InputError):
    """Masses or a runs file that cannot be used: the message says why and what to do."""


@dataclass(frozen=True)
class Placed:
    """A mass on the rotor: plane, grams, degrees from the mark against rotation."""

    plane: str
    mass_g: float
    angle_deg: float


def masses_from(texts: Sequence[str]) -> list[Placed]:
    """Read masses such as "left = 10 g at 270". Raises RunsFileError for anything else."""
    placed = []
    for text in texts:
        plane, _, said = (part.strip() for part in text.partition("="))
        match = units.whole_match(r"(\S.*?)\s+at\s+([-+]?\d{1,9}(?:\.\d{1,12})?)\s*(?:deg|°)?", said)
        if not match or not plane:
            raise RunsFileError(
                f'mass "{units.shown(text)}": write plane, mass and angle, such as "left = 10 g at 270"'
            )
        mass, angle = match.groups()
        mass_kg = units.parse(mass, "kg", f'mass on "{plane}"')
        placed.append(Placed(plane, 1000.0 * mass_kg, float(angle) % 360.0))
    return placed


def append_measurement(
    runs: Path, name: str, measured: Measurement, hookup: wiring.Hookup, masses: Sequence[Placed], recording: Path
) -> list[str]:
    """Write a measurement into a runs file, which is made if there is none. Nothing is written on an error.

    Returns the planes that the file did not have and that were added without a radius.
    """
    from stillshaft.acquire.recording import device_of
    from stillshaft.solver.runs import Chain
    from stillshaft.solver.runs_append import append_run

    return append_run(
        runs,
        name=name,
        speed_rpm=measured.speed.mean_rpm,
        vectors_by_point={p.name: p.z for p in measured.points},
        covariance=measured.covariance,
        degrees_of_freedom=measured.degrees_of_freedom,
        masses=[(m.plane, m.mass_g, m.angle_deg) for m in masses],
        vibration_unit=measured.unit,
        mass_unit="g",
        points=[
            {"name": p.name, "angle": p.angle_deg, "quantity": p.quantity, "direction": p.direction}
            for p in hookup.points
        ],
        overall={p.name: p.overall for p in measured.points},
        chain=Chain(hookup.fingerprint, device_of(recording), measured.rate_hz),
    )


def residual_percent(first: Measurement, last: Measurement) -> dict[str, tuple[float, float | None]]:
    """Once-per-rev vibration of a run in percent of the first, by point, with its 95 % half width (this run only)."""
    residual = {}
    for before, after in zip(first.points, last.points, strict=True):
        start = abs(before.z)
        half = None if after.amplitude_ci95 is None else 100.0 * after.amplitude_ci95 / start
        residual[before.name] = (100.0 * abs(after.z) / start, half)
    return residual


def write_new(path: Path, text: str) -> None:
    """Write a file as a whole or not at all."""
    tables.write_whole(path, text.encode())
