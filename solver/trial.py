"""Before and after the first trial: how heavy it may be and where to put it, and how far the high spot trails.

Stator angles are those of the hook-up, rotor angles count against rotation. The high spot is the rotor point under the
sensor at the positive peak of displacement, α_high = φ_disp − (s − p); the heavy spot is ahead of it by the mechanical
lag ψ, α_heavy = α_high − ψ, 0 ≤ ψ ≤ 180° for a single mode (any text on rotor dynamics).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import units, vectors
from stillshaft.solver.influence import Fit

Real = NDArray[np.float64]

FORCE_SHARE = 0.1  # of the weight on a bearing: common practice, no source
MOST_FORCE_SHARE = 0.5  # of it, above which a trial is refused: common practice, no source
NEAR_RESONANCE = 0.2  # of speed on either side, where no direction is given: common practice, no source


class TrialError(ValueError):
    """A trial mass or a lag that cannot be worked out: the message says why."""


@dataclass(frozen=True)
class Trial:
    """A trial mass for one plane; `angle_deg` is None where any direction serves, and `reason` says why."""

    plane: str
    mass_kg: float
    angle_deg: float | None
    force_n: float
    reason: str

    @property
    def force_kgf(self) -> float:
        """The force as a weight that a person can picture."""
        return self.force_n / units.STANDARD_GRAVITY_M_S2


@dataclass(frozen=True)
class Lag:
    """How a point trails a plane's mass: mechanical lag with its 95 % half width, None where the trial says nothing.

    `high_spot_deg` and `heavy_spot_deg` are those of the initial state.
    """

    point: str
    plane: str
    high_spot_deg: float
    heavy_spot_deg: float
    lag_deg: float
    lag_ci95_deg: float | None


def centrifugal_force(mass_kg: float, radius_m: float, speed_rpm: float) -> float:
    """Force m·r·Ω² in N."""
    return mass_kg * radius_m * (speed_rpm * math.pi / 30.0) ** 2


def trial_mass(
    plane: str,
    rotor_mass_kg: float,
    radius_m: float,
    speed_rpm: float,
    *,
    planes: int = 1,
    share: float = FORCE_SHARE,
    heavy_spot_deg: float | None = None,
    resonance_rpm: float | None = None,
) -> Trial:
    """A trial mass whose force is a share of the weight on a bearing, opposite the heavy spot where that is known.

    The weight is that of the rotor over its planes: half for two, all for one. Raises TrialError for what cannot be.
    """
    for name, value, low, high in (
        ("rotor mass", rotor_mass_kg, 0.0, 1e6),
        ("radius", radius_m, 0.0, 100.0),
        ("speed", speed_rpm, 0.0, 1e6),
    ):
        if not low < value < high:
            raise TrialError(f"{name} {value:g}: must be above {low:g} and below {high:g}")
    if not 0.0 < share <= MOST_FORCE_SHARE:
        raise TrialError(f"force share {share:g}: give more than 0 and no more than {MOST_FORCE_SHARE:g} of the weight")
    weight_n = rotor_mass_kg * units.STANDARD_GRAVITY_M_S2 / max(1, planes)
    mass_kg = share * weight_n / (radius_m * (speed_rpm * math.pi / 30.0) ** 2)
    if resonance_rpm is not None and abs(speed_rpm / resonance_rpm - 1.0) < NEAR_RESONANCE:
        # the response is large and its lag uncertain: half the mass, anywhere
        return Trial(
            plane, 0.5 * mass_kg, None, 0.5 * share * weight_n,
            f"within 20 % of the resonance at {resonance_rpm:.0f} r/min: half the mass, any direction; moving the speed or "
            "the support is better",
        )  # fmt: skip
    if heavy_spot_deg is None:
        return Trial(plane, mass_kg, None, share * weight_n, "heavy spot unknown: any direction")
    angle_deg = (heavy_spot_deg + 180.0) % 360.0
    return Trial(plane, mass_kg, angle_deg, share * weight_n, "opposite the heavy spot")


def displacement_phase(phase_deg: float, quantity: str) -> float:
    """Lag of the displacement of a point whose velocity or acceleration lags by `phase_deg`: 90° more, 180° more."""
    return (phase_deg + 90.0 * units.differentiations("displacement", quantity)) % 360.0


def high_spot(phase_deg: float, quantity: str, sensor_deg: float, pulse_deg: float) -> float:
    """Rotor angle of the high spot, degrees against rotation from the mark."""
    return (displacement_phase(phase_deg, quantity) - (sensor_deg - pulse_deg)) % 360.0


def lag_of(
    fitted: Fit,
    point: int,
    plane: int,
    names: tuple[str, str],
    quantity: str,
    sensor_deg: float,
    pulse_deg: float,
) -> Lag:
    """Lag of one point behind one plane from the influence coefficient: where a mass at the mark puts the high spot.

    More than 180° says that more than one mode moves the point, or that an angle of the hook-up is wrong.
    """
    h = complex(fitted.influence[point, plane])
    unknowns = fitted.influence.shape[1] + 1
    at = 2 * (point * unknowns + 1 + plane)
    _, half = vectors.half_widths(h, fitted.covariance[at : at + 2, at : at + 2], math.inf)
    _, turned_deg = vectors.amplitude_phase(h)
    lag_deg = high_spot(turned_deg, quantity, sensor_deg, pulse_deg)
    _, initial_deg = vectors.amplitude_phase(complex(fitted.initial[point]))
    high_deg = high_spot(initial_deg, quantity, sensor_deg, pulse_deg)
    return Lag(names[0], names[1], high_deg, (high_deg - lag_deg) % 360.0, lag_deg, half)
