"""What was measured with what on the rotor: runs, pieces, planes and points as the solver takes them."""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import vectors
from stillshaft.dsp.units import InputError

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]


class RunsError(InputError):
    """A runs file that cannot be used: the message names the file, the field, and what would be right."""


@dataclass(frozen=True)
class Plane:
    """A correction plane; lengths in mm, masses in the file's mass unit, None where the file does not say.

    `positions_deg` are those of blades or holes 1, 2, … (None: anywhere on the rim), `blocked` the numbers that take no
    mass; `radii_mm` are further radii at which a mass may sit. `cap` is the most mass of the plane, `position_cap` and
    `per_position` the most mass and the most pieces of one position.
    """

    name: str
    radius_mm: float | None
    z_mm: float | None
    positions_deg: tuple[float, ...] | None = None
    blocked: frozenset[int] = frozenset()
    cap: float | None = None
    radii_mm: tuple[float, ...] = ()
    per_position: int | None = None
    position_cap: float | None = None


@dataclass(frozen=True)
class Chain:
    """What the vectors were measured with: a fingerprint of the hook-up, the device, and the sample rate."""

    hookup: str = ""
    device: str = ""
    rate_hz: float = 0.0


@dataclass(frozen=True)
class StockMass:
    """Pieces at hand: mass of one in the file's mass unit, and how many there are."""

    mass: float
    count: int


@dataclass(frozen=True)
class Point:
    """A measuring point as the file describes it; the defaults where it does not."""

    name: str
    angle_deg: float = 0.0
    quantity: str = "acceleration"
    direction: str = "radial"


@dataclass(frozen=True)
class Rotor:
    """What the file says of the rotor: kg, r/min, mm.

    `flexible`: it runs above a resonance of its own; `machine`: the kind of machine, such as "fan".
    """

    kind: str
    mass_kg: float | None
    speed_rpm: float | None
    bearing_span_mm: float | None
    centre_of_mass_mm: float | None
    flexible: bool = False
    machine: str | None = None


@dataclass(frozen=True)
class Piece:
    """A mass that sat on a plane in a run: `mass` complex in the mass unit at the plane's own radius, its scatter (2, 2).

    `identity` tells a piece that stayed on from one that was put on anew: the same piece has the same error in every run.
    """

    plane: int
    mass: complex
    covariance: Real
    identity: tuple[float, ...]


@dataclass(frozen=True)
class Run:
    """One run: `vectors` (points,) complex in the displayed unit, `masses` (planes,) complex in the mass unit.

    `covariance` (2M, 2M) is of re and im of each point, repeatability included, and has so many `degrees_of_freedom`.
    `runout` (2M, S) times S standard normal errors is the error of the runout that was taken off; the covariance holds it
    too. The scatter of the masses is that of their `pieces`. `overall` (points,) are broadband levels in the displayed
    unit, None where the file does not say. Runs of one `setup` are one turn of the machine, measured at several speeds:
    what was placed wrongly is the same in all. A rotor that was cleaned or mended since has another `initial_state`.
    """

    name: str
    speed_rpm: float
    vectors: Complex
    masses: Complex
    covariance: Real
    kind: str | None = None
    setup: int | None = None
    degrees_of_freedom: float = math.inf
    pieces: tuple[Piece, ...] = ()
    runout: Real = field(default_factory=lambda: np.zeros((0, 0)))
    overall: tuple[float | None, ...] = ()
    initial_state: int = 1

    @property
    def scatter(self) -> Real:
        """Covariance without the runout's error, which is the same in all runs."""
        if not self.runout.size:
            return self.covariance
        # what is left of a runout that is hardly known may not turn negative by rounding
        rounding = np.diag(self.covariance) * self.covariance.shape[0] * np.finfo(np.float64).eps
        return np.asarray(self.covariance - self.runout @ self.runout.T + np.diag(rounding))


@dataclass(frozen=True)
class Runs:
    """A checked runs file."""

    path: Path
    points: tuple[str, ...]
    planes: tuple[Plane, ...]
    runs: tuple[Run, ...]
    vibration_unit: str
    mass_unit: str
    kg_per_mass_unit: float
    rotor: Rotor | None
    limits: tuple[tuple[str, float], ...]
    speed_tolerance: float
    placement: tuple[float, float]
    assumed: tuple[str, ...]
    amplitudes_only: bool = False
    stock: tuple[StockMass, ...] = ()
    described: tuple[Point, ...] = ()
    repeatability: tuple[float, float] = (0.0, 0.0)
    repeatability_assumed: bool = False
    chain: Chain = Chain()


def with_repeatability(runs: Runs, repeatability: tuple[float, float]) -> Runs:
    """The runs with another run-to-run scatter, relative and in rad, in the place of the one there was."""

    def changed(run: Run) -> Run:
        before = repeatability_covariance(run.vectors, runs.repeatability)
        return replace(run, covariance=run.covariance - before + repeatability_covariance(run.vectors, repeatability))

    return replace(
        runs,
        runs=tuple(changed(run) for run in runs.runs),
        repeatability=repeatability,
        repeatability_assumed=False,
        assumed=tuple(text for text in runs.assumed if not text.startswith("repeatability")),
    )


def repeatability_covariance(z: Complex, repeatability: tuple[float, float]) -> Real:
    """Covariance (2M, 2M) of vectors `z` (M,) from run to run: relative along, an angle in rad across each."""
    covariance = np.zeros((2 * z.size, 2 * z.size))
    for i, value in enumerate(z):
        size = abs(value)
        here = slice(2 * i, 2 * i + 2)
        covariance[here, here] = vectors.along_and_across(
            complex(value), repeatability[0] * size, repeatability[1] * size
        )
    return covariance
