"""Before and after the first trial: how heavy it may be and where to put it, and how far the high spot trails.

Stator angles are those of the hook-up, rotor angles count against rotation. The high spot is the rotor point under the
sensor at the positive peak of displacement, α_high = φ_disp − (s − p); the heavy spot is ahead of it by the mechanical
lag ψ, α_heavy = α_high − ψ, 0 ≤ ψ ≤ 180° for a single mode (any text on rotor dynamics).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import units, vectors
from stillshaft.dsp.units import InputError
from stillshaft.solver.influence import Fit, effect_against
from stillshaft.solver.runs import Runs

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

FORCE_SHARE = 0.1  # of the weight on a bearing: common practice, no source
MOST_FORCE_SHARE = 0.5  # of it, above which a trial is refused: common practice, no source
# effect in standard deviations: 18 % and 8 % of the vibration are left (median of simulated jobs)
WEAK, GOOD = 5.0, 15.0
EFFECT = 0.3  # of the initial vibration, that a trial mass should make: common practice, no source
GOAL = 0.2  # of the initial vibration: what a first correction should leave; common practice, no source
NEAR_RESONANCE = 0.2  # of speed on either side, where no direction is given: common practice, no source


class TrialError(InputError):
    """A trial mass or a lag that cannot be worked out: the message says why."""


@dataclass(frozen=True)
class TrialLevel:
    """Vibration of a point with the trial mass on, by stored coefficients: as planned, and at the worst angle."""

    point: str
    expected: float
    worst: float
    abort: float | None


@dataclass(frozen=True)
class Trial:
    """A trial mass for one plane; `angle_deg` is None where any direction serves, and `reason` says why.

    `levels` are what it would make of the vibration, none without stored coefficients.
    """

    plane: str
    mass_kg: float
    angle_deg: float | None
    force_n: float
    reason: str
    levels: tuple[TrialLevel, ...] = ()

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


@dataclass(frozen=True)
class TrialEffect:
    """What a plane's trial did. `strength` is its effect in standard deviations over all points, beside what the others do.

    `effect` is the largest |H·w| over the largest initial vibration. `amplitude_percent` and `phase_deg` are the changes at
    the points that changed most: a rule of thumb wants 30 % or 30° of one. `expected_percent` is the vibration to be
    expected after the correction, in percent of the initial, `goal_percent` what is wanted; `times` is how many times the
    mass the next trial needs for that, None where no trial mass would do.
    """

    plane: str
    mass: float
    strength: float
    verdict: str
    effect: float
    amplitude_percent: float
    phase_deg: float
    rule_of_thumb: bool
    expected_percent: float
    goal_percent: float
    times: float | None
    sentence: str


def trial_effects(runs: Runs, fits: Sequence[Fit], expected_residual: float) -> tuple[TrialEffect, ...]:
    """Effect of each plane's largest mass so far, judged against the scatter.

    `expected_residual` is a share of the initial vibration; so is the goal, that of the limits where there are some, else
    a fifth.
    """
    goal = _goal(runs, fits)
    initial = np.concatenate([f.initial for f in fits])
    largest = float(np.abs(initial).max())
    listed = []
    for p, plane in enumerate(runs.planes):
        mass = max((run.masses[p] for run in runs.runs), key=abs)
        if not mass or not largest > 0.0:
            continue
        others = [q for q in range(len(runs.planes)) if q != p]
        enough_points = initial.size > len(others)
        strength = math.sqrt(effect_against(fits, p, others if enough_points else [])[0])
        moved = np.concatenate([f.influence[:, p] for f in fits]) * mass
        used = np.abs(initial) > 0.1 * largest  # a point that hardly moves says nothing in percent
        ratio = (initial[used] + moved[used]) / initial[used]
        percent = float(np.abs(100.0 * (np.abs(ratio) - 1.0)).max())
        turned_deg = float(np.abs(np.degrees(np.angle(ratio))).max())
        effect = float(np.abs(moved).max()) / largest
        times = _times(runs, fits, effect, goal)
        verdict = "too weak" if strength < WEAK else "usable with a trim" if strength < GOOD else "good"
        said = (
            f'trial on "{plane.name}": {verdict}, {strength:.1f} standard deviations; rule of thumb for the trial\'s effect '
            f"{'kept' if max(percent / 30.0, turned_deg / 30.0) >= 1.0 else 'not kept'} ({percent:.0f} %, {turned_deg:.0f}°); "
            f"{100.0 * expected_residual:.0f} % of the vibration is to be expected after the correction"
        )
        if expected_residual > goal and times is not None and times > 1.1:
            said += f", {100.0 * goal:.0f} % with {times:.1f} times the mass"
        elif expected_residual > goal and times is None:
            said += f"; {100.0 * goal:.0f} % is not to be had with this repeatability: average more, or repeat runs"
        listed.append(
            TrialEffect(
                plane.name, abs(mass), strength, verdict, effect, percent, turned_deg,
                percent >= 30.0 or turned_deg >= 30.0, 100.0 * expected_residual, 100.0 * goal, times, said,
            )
        )  # fmt: skip
    return tuple(listed)


def _goal(runs: Runs, fits: Sequence[Fit]) -> float:
    """What is wanted, as a share of the initial vibration."""
    limits = dict(runs.limits)
    shares = [
        limits[name] / abs(f.initial[m])
        for f in fits
        for m, name in enumerate(runs.points)
        if name in limits and abs(f.initial[m]) > 0.0
    ]
    return min(shares) if shares and min(shares) < 1.0 else GOAL


def _times(runs: Runs, fits: Sequence[Fit], effect: float, goal: float) -> float | None:
    """How many times the trial's effect is needed for a residual g: e = √2·s/√(g² − s² − 2p²).

    s is the relative scatter of a run's vectors, p that of a placed mass, both complex.
    """
    first = fits[0].last
    for run in runs.runs:
        if not np.any(run.masses):
            first = run
            break
    size = float(np.sum(np.abs(first.vectors) ** 2))
    if not size > 0.0 or not effect > 0.0:
        return None
    squared = float(np.trace(first.covariance)) / size
    placed = runs.placement[0] ** 2 + runs.placement[1] ** 2
    left = goal**2 - squared - 2.0 * placed
    return math.sqrt(2.0 * squared / left) / effect if left > 0.0 else None


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
    force_per_kg = radius_m * (speed_rpm * math.pi / 30.0) ** 2
    if share * weight_n > rotor_mass_kg * force_per_kg:
        raise TrialError(
            f"speed {speed_rpm:g} r/min, radius {radius_m:g} m: the trial mass would be heavier than the rotor; give the "
            "speed at which the machine runs, and the radius at which masses are fixed"
        )
    mass_kg = share * weight_n / force_per_kg
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


def known_trial(
    plane: str,
    initial: Complex,
    influence: Complex,
    points: Sequence[str],
    kg_per_mass_unit: float,
    radius_m: float,
    speed_rpm: float,
    most_force_n: float,
    *,
    abort: float | None = None,
) -> Trial:
    """A trial mass by known coefficients of its plane, h (M,): the usual effect, in the direction that lowers most.

    |h·w| is EFFECT of the initial vibration at the strongest point. The force limit and the abort level make it less: the
    worst case |v0| + |h·w| stays below the abort level wherever the initial run does. Raises TrialError where no mass is
    left.
    """
    strongest = int(np.argmax(np.abs(influence)))
    if not abs(influence[strongest]) > 0.0:
        raise TrialError(f'plane "{plane}": the stored coefficients are 0: take any small trial mass')
    mass = EFFECT * float(np.abs(initial).max()) / float(abs(influence[strongest]))
    per_newton = kg_per_mass_unit * centrifugal_force(1.0, radius_m, speed_rpm)
    reason = "opposite the heavy spot, by stored coefficients"
    if mass * per_newton > most_force_n:
        mass, reason = most_force_n / per_newton, f"{reason}; made less for the force limit of {most_force_n:.0f} N"
    room = (
        [(abort - abs(v)) / abs(h) for v, h in zip(initial, influence, strict=True) if abs(h) > 0.0 and abs(v) < abort]
        if abort is not None
        else []
    )
    if room and mass > min(room):
        mass, reason = min(room), f"{reason}; made less for the abort level of {abort:g}"
    if not mass > 0.0:
        raise TrialError(
            f'plane "{plane}": no trial mass stays below the abort level; agree another level or lower speed'
        )
    turn = -complex(np.vdot(influence, initial))
    angle_deg = vectors.amplitude_phase(turn)[1] if turn else None
    moved = influence * vectors.vector(mass, angle_deg or 0.0)
    levels = tuple(
        TrialLevel(name, float(abs(v + d)), float(abs(v) + abs(d)), abort)
        for name, v, d in zip(points, initial, moved, strict=True)
    )
    return Trial(plane, mass * kg_per_mass_unit, angle_deg, mass * per_newton, reason, levels)


def to_json(found: Trial) -> dict[str, Any]:
    """The keys of conventions.md for `trial`, and the expected levels."""
    return {
        "plane": found.plane,
        "mass": 1000.0 * found.mass_kg,
        "unit": "g",
        "angle_deg": found.angle_deg,
        "force_n": found.force_n,
        "force_kgf": found.force_kgf,
        "levels": [asdict(level) for level in found.levels],
    }


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
