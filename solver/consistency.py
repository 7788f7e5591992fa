"""Do the runs fit each other, and if not, which entry or which change would explain it.

Checkable from the first run beyond one for each plane and the initial one on. What is named is a suspicion: another cause
may leave the same marks.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import vectors
from stillshaft.solver.influence import Freed, Model, Placement, fit_all, placements, probability_of_more
from stillshaft.solver.runs import Piece, Run, Runs, with_repeatability

Real = NDArray[np.float64]

DOUBTED = 0.01  # runs that agree less well than this are doubted
_EXPLAINED = 0.02  # what is freed explains the runs where they then agree at least so well
_APART = 9.2  # of chi-square between the best explanation and the next: then it is named alone (chi-square of 2 at 1 %)
_LISTED = 3
NOT_CHECKABLE = (
    "repeatability and linearity are not checkable yet: there are only as many runs as unknowns; a repeated "
    "initial run would show both drift and wrong entries"
)
_BELIEVED = 4.0  # degrees of freedom that an assumed repeatability is worth beside a measured one: common practice
_LEAST_PERCENT, _LEAST_DEG = 0.5, 0.5  # no repeatability is taken to be better: common practice, no source


@dataclass(frozen=True)
class Suspicion:
    """One explanation of runs that do not fit: `kind` is mass, change or direction, `run` the one that it is about.

    `factor` is what the masses put on in that run would have to be multiplied by; None for another kind.
    """

    kind: str
    run: str | None
    factor: complex | None
    chi_square: float
    p_value: float
    sentence: str


@dataclass(frozen=True)
class Drift:
    """How the initial state moved between two runs without masses; percent and degrees of the point that moved most."""

    first: str
    second: str
    point: str
    percent: float
    turned_deg: float
    p_value: float

    @property
    def moved(self) -> bool:
        """True where it is more than the scatter explains (1 % level)."""
        return self.p_value < DOUBTED


@dataclass(frozen=True)
class Consistency:
    """How well the runs agree: `p_value` None while that is not checkable; explanations, the likeliest first."""

    chi_square: float | None
    degrees_of_freedom: int
    p_value: float | None
    suspicions: tuple[Suspicion, ...]
    drifts: tuple[Drift, ...]

    @property
    def doubted(self) -> bool:
        """True where the runs do not fit each other."""
        return self.p_value is not None and self.p_value < DOUBTED

    @property
    def sentences(self) -> tuple[str, ...]:
        """What to say of runs that do not agree."""
        said = [
            f'the initial state moved between "{d.first}" and "{d.second}": {d.point} by {d.percent:.0f} % and '
            f"{d.turned_deg:.0f}°, more than the scatter explains; find out why before going on"
            for d in self.drifts
            if d.moved
        ]
        if self.doubted:
            said.append(f"the runs do not fit each other (p = {self.p_value:.2g})")
            named = self.suspicions
            if len(named) > 1 and named[1].chi_square - named[0].chi_square > _APART:
                named = named[:1]
            said += [("it would fit if " if i == 0 else "or if ") + s.sentence for i, s in enumerate(named[:_LISTED])]
            if not named:
                said.append("no single wrong entry or change explains it: repeat the initial run to see the scatter")
        return tuple(said)


def judge(runs: Runs, model: Model) -> Consistency:
    """How well the runs agree, and what would explain it if they do not."""
    p_value = model.p_value
    doubted = p_value is not None and p_value < DOUBTED
    return Consistency(
        None if p_value is None else model.chi_square,
        model.degrees_of_freedom,
        p_value,
        _suspicions(runs) if doubted and not runs.amplitudes_only else (),
        () if runs.amplitudes_only else drifts(runs),
    )


def _suspicions(runs: Runs) -> tuple[Suspicion, ...]:
    found: list[Suspicion] = []
    for number, members in _put_on(placements(runs)).items():
        model = fit_all(runs, Freed(pieces=members))
        if not model.p_value or model.p_value < _EXPLAINED:
            continue
        times, turned_deg = vectors.amplitude_phase(model.factor)
        turned_deg = (turned_deg + 180.0) % 360.0 - 180.0
        name = runs.runs[number].name
        found.append(
            Suspicion(
                "mass", name, model.factor, model.chi_square, model.p_value,
                f'the mass put on in run "{name}" was {times:.2f} times what was entered, {turned_deg:+.0f}° from there',
            )
        )  # fmt: skip
    for number in range(1, len(runs.runs)):
        model = fit_all(runs, Freed(changed_from=number))
        if model.p_value and model.p_value >= _EXPLAINED:
            name = runs.runs[number].name
            said = f'the initial state changed before run "{name}"'
            found.append(Suspicion("change", name, None, model.chi_square, model.p_value, said))
    mirrored = fit_all(_mirrored(runs))
    if mirrored.p_value and mirrored.p_value >= _EXPLAINED:
        said = "all angles were counted the other way round, with rotation"
        found.append(Suspicion("direction", None, None, mirrored.chi_square, mirrored.p_value, said))
    return tuple(sorted(found, key=lambda s: s.chi_square))


def _put_on(pieces: tuple[Placement, ...]) -> dict[int, tuple[int, ...]]:
    """Numbers of the pieces that were put on in each run."""
    first: dict[int, tuple[int, ...]] = {}
    for number, piece in enumerate(pieces):
        first[piece.runs[0]] = (*first.get(piece.runs[0], ()), number)
    return first


def _mirrored(runs: Runs) -> Runs:
    """The runs with the angles of all masses counted the other way round."""

    def turned(run: Run) -> Run:
        flip = np.diag([1.0, -1.0])
        pieces = tuple(Piece(p.plane, p.mass.conjugate(), flip @ p.covariance @ flip, p.identity) for p in run.pieces)
        return replace(run, masses=run.masses.conj(), pieces=pieces)

    return replace(runs, runs=tuple(turned(run) for run in runs.runs))


def drifts(runs: Runs) -> tuple[Drift, ...]:
    """Every later run without masses against the first one at its speed."""
    found: list[Drift] = []
    first: list[Run] = []
    for run in runs.runs:
        if np.any(run.masses):
            continue
        near = [before for before in first if _alike(before, run, runs.speed_tolerance)]
        if not near:
            first.append(run)
            continue
        before = near[0]
        moved = run.vectors - before.vectors
        scatter = before.scatter + run.scatter
        reals = np.column_stack([moved.real, moved.imag]).ravel()
        squared = float(reals @ np.linalg.lstsq(scatter + 1e-300 * np.eye(reals.size), reals, rcond=None)[0])
        freedom = _together(before, run)
        p_value = probability_of_more(squared, reals.size, freedom, reals.size)
        m = int(np.argmax(np.abs(moved)))
        ratio = complex(run.vectors[m] / before.vectors[m]) if before.vectors[m] else math.nan + 0j
        turned_deg = math.degrees(math.atan2(ratio.imag, ratio.real))
        found.append(Drift(before.name, run.name, runs.points[m], 100.0 * (abs(ratio) - 1.0), turned_deg, p_value))
    return tuple(found)


def _alike(first: Run, second: Run, tolerance: float) -> bool:
    """True for one speed and one initial state."""
    near = abs(second.speed_rpm / first.speed_rpm - 1.0) <= tolerance
    return near and first.initial_state == second.initial_state


def _together(first: Run, second: Run) -> float:
    """Degrees of freedom of the sum of two scatters (Satterthwaite 1946)."""
    sizes = [float(np.trace(run.covariance)) for run in (first, second)]
    weighed = sum(s**2 / run.degrees_of_freedom for s, run in zip(sizes, (first, second), strict=True))
    return sum(sizes) ** 2 / weighed if weighed > 0.0 else math.inf


def with_measured_repeatability(runs: Runs) -> tuple[Runs, str | None]:
    """The runs with the scatter that repeated initial runs show, where the file states none, and what to say of it.

    What was assumed still counts like a few repeats. Where the initial state moved, nothing is learnt of the scatter.
    """
    repeats = [run for run in runs.runs if not np.any(run.masses)]
    if not runs.repeatability_assumed or len(repeats) < 2 or any(d.moved for d in drifts(runs)):
        return runs, None
    along, across, count = 0.0, 0.0, 0
    for number, run in enumerate(repeats):
        group = [r for r in repeats[:number] if _alike(r, run, runs.speed_tolerance)]
        if not group:
            continue
        mean = np.mean([r.vectors for r in group], axis=0)
        used = mean != 0.0
        # independent of all before: a new run against the mean of k earlier ones scatters by √(1 + 1/k)
        off = (run.vectors[used] / mean[used] - 1.0) / math.sqrt(1.0 + 1.0 / len(group))
        along += float(np.sum(off.real**2))
        across += float(np.sum(off.imag**2))
        count += int(used.sum())
    if not count:
        return runs, None
    relative, tilt = runs.repeatability
    relative = math.sqrt((_BELIEVED * relative**2 + along) / (_BELIEVED + count))
    tilt = math.sqrt((_BELIEVED * tilt**2 + across) / (_BELIEVED + count))
    relative, tilt = max(relative, _LEAST_PERCENT / 100.0), max(tilt, math.radians(_LEAST_DEG))
    said = (
        f"repeatability {100.0 * relative:.1f} % and {math.degrees(tilt):.1f}° is taken from {len(repeats)} runs without "
        "masses and what is usual"
    )
    return with_repeatability(runs, (relative, tilt)), said
