"""Runs files as a person makes them: masses read from text, measurements appended, a job that is a folder with a runs file."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from stillshaft.acquire import hookup as wiring
from stillshaft.acquire import simulated
from stillshaft.dsp import tables, units, vectors
from stillshaft.dsp.measure import Measurement
from stillshaft.ui import analysis
from stillshaft.ui.analysis import Report

if TYPE_CHECKING:
    from stillshaft.solver.correction import Correction, Solution

_MARK_DEG, _MARK_SHARE = 5.0, 0.2  # change of the mark's width that is refused: common practice, no source


class RunsFileError(ValueError):
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
        match = re.fullmatch(r"\s*(.+?)\s*=\s*(.+?)\s+at\s+([-+]?\d+(?:\.\d+)?)\s*(?:deg|°)?\s*", text)
        if not match:
            raise RunsFileError(f'mass "{text}": write plane, mass and angle, such as "left = 10 g at 270"')
        plane, mass, angle = match.groups()
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
    from stillshaft.solver.runs import Chain, append_run

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


@dataclass(frozen=True)
class Plane:
    """A correction plane: radius, and where it sits along the shaft from the first bearing, mm."""

    name: str
    radius_mm: float
    z_mm: float | None = None


@dataclass(frozen=True)
class Rotor:
    """What the tolerance needs to know: kg, highest service speed, distances from the first bearing in mm."""

    mass_kg: float
    speed_rpm: float
    kind: str = "between bearings"
    bearing_span_mm: float | None = None
    centre_of_mass_mm: float | None = None


@dataclass(frozen=True)
class Run:
    """A run of the job: what was on the rotor, and what was measured."""

    name: str
    masses: tuple[Placed, ...]
    measured: Measurement
    recording: Path


class Job:
    """One machine being balanced: a folder with recordings, the hook-up and the runs file.

    Every act writes the folder first and tells the listeners in `changed` after it.
    """

    def __init__(
        self, folder: Path, hookup: wiring.Hookup, planes: Sequence[Plane], rotor: Rotor | None = None
    ) -> None:
        """Start a job in a new or empty folder. Raises RunsFileError where the folder holds a job already."""
        self.folder, self.hookup, self.planes, self.rotor = folder, hookup, tuple(planes), rotor
        self.runs: list[Run] = []
        self.changed: list[Callable[[], None]] = []
        if self.runs_file.exists():
            raise RunsFileError(f"{folder}: holds a job already; choose a new folder")
        (folder / "recordings").mkdir(parents=True, exist_ok=True)
        self._write_hookup()
        write_new(self.runs_file, self._runs_header())

    @property
    def runs_file(self) -> Path:
        """The runs file of this job."""
        return self.folder / "runs.toml"

    def _write_hookup(self) -> None:
        import tomli_w

        write_new(self.folder / "hookup.toml", tomli_w.dumps(self.hookup.table))

    def _runs_header(self) -> str:
        import tomli_w

        table: dict[str, object] = {
            "format": 1,
            "vibration_unit": self.hookup.display,
            "mass_unit": "g",
            "plane": [
                {"name": p.name, "radius": f"{p.radius_mm:g} mm"} | ({} if p.z_mm is None else {"z": f"{p.z_mm:g} mm"})
                for p in self.planes
            ],
            "point": [
                {"name": p.name, "angle": p.angle_deg, "quantity": p.quantity, "direction": p.direction}
                for p in self.hookup.points
            ],
        }
        if self.rotor is not None:
            lengths = {"bearing_span": self.rotor.bearing_span_mm, "centre_of_mass": self.rotor.centre_of_mass_mm}
            table["rotor"] = {
                "kind": self.rotor.kind,
                "mass": f"{self.rotor.mass_kg:g} kg",
                "speed_rpm": self.rotor.speed_rpm,
                **{key: f"{value:g} mm" for key, value in lengths.items() if value is not None},
            }
        return tomli_w.dumps(table)

    def next_recording(self) -> Path:
        """Where the next recording goes."""
        taken = len(list((self.folder / "recordings").glob("*.au")))
        return self.folder / "recordings" / f"{taken + 1:04d}.au"

    def take_run(
        self, name: str, recording: Path, masses: Sequence[Placed], report: Report | None = None
    ) -> Measurement:
        """Measure a recording and add it to the runs. Raises the errors of its parts; then nothing is added."""
        measured = analysis.measure_recording(recording, self.hookup, 1.0, report)
        if self.runs:
            self._check_mark(measured, recording)
        if self.hookup.pulse.edge == "auto":
            self.hookup = wiring.with_edge(self.hookup, measured.edge)
            self._write_hookup()
        append_measurement(self.runs_file, name, measured, self.hookup, masses, recording)
        self.runs.append(Run(name, tuple(masses), measured, recording))
        for listener in self.changed:
            listener()
        return measured

    def _check_mark(self, measured: Measurement, recording: Path) -> None:
        """Refuse a run whose mark is not the first run's: its phases would not belong together."""
        first, now = 360.0 * self.runs[0].measured.mark_share, 360.0 * measured.mark_share
        if abs(now - first) > max(_MARK_DEG, _MARK_SHARE * first):
            raise RunsFileError(
                f"{recording}: the mark covers {now:.1f}° but covered {first:.1f}° in the first run; "
                "mark, pulse sensor or threshold changed: start a new job or put it back"
            )

    def free_name(self, wanted: str) -> str:
        """A run name not used yet."""
        names = {run.name for run in self.runs}
        number = 2
        name = wanted
        while name in names:
            name, number = f"{wanted} {number}", number + 1
        return name

    def with_added(self, additional: Sequence[Correction]) -> list[Placed]:
        """What is on in the last run and what is to be added, each plane's as one mass."""
        sums = {p.name: 0j for p in self.planes}
        for m in self.runs[-1].masses:
            sums[m.plane] += vectors.vector(m.mass_g, m.angle_deg)
        for c in additional:
            sums[c.plane] += vectors.vector(c.mass, c.angle_deg)
        return [Placed(plane, *vectors.amplitude_phase(w)) for plane, w in sums.items()]

    def solve(self) -> Solution:
        """Corrections from all runs so far. Raises the solver's errors, which name the missing run."""
        from stillshaft.solver import correction
        from stillshaft.solver.runs import load_runs

        return correction.solve(load_runs(self.runs_file))


def job_rotor(rotor: simulated.Rotor) -> Rotor:
    """Facts of the simulated rotor as a job wants them."""
    return Rotor(
        rotor.mass_kg,
        simulated.DEMO_SPEED_RPM,
        bearing_span_mm=1000.0 * rotor.bearing_span_m,
        centre_of_mass_mm=1000.0 * rotor.centre_of_mass_m,
    )


def job_planes(rotor: simulated.Rotor) -> list[Plane]:
    """Planes of the simulated rotor as a job wants them."""
    return [Plane(p.name, 1000.0 * p.radius_m, 1000.0 * p.z_m) for p in rotor.planes]


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
