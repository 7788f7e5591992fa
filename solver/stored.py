"""Influence coefficients kept for the next time, and whether they still hold once a mass was moved.

They belong to a machine at a speed, measured by one chain: sensors and their places, pulse mark, device, sample rate and
AC-coupling corners. One run with a known mass tests them in that one direction of the masses only.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Literal

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import tables, units, vectors
from stillshaft.dsp.units import InputError
from stillshaft.solver.influence import Fit, Freed, Model, Prior, fit_all, placements
from stillshaft.solver.runs import Chain, Runs, RunsError

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

_HOLDS = 0.01  # coefficients that the runs agree with no better than this are given up
_MOST = 10_000  # entries of a file


class StoredError(InputError):
    """Stored coefficients that cannot be used: the message names file and entry, and says what would be right."""


class _Plane(tables.Strict):
    name: str
    radius_mm: float | None = None


class _Entry(tables.Strict):
    machine: str
    date: str
    speed_rpm: float
    vibration_unit: str
    mass_unit: str
    points: list[str]
    planes: list[_Plane]
    real: list[list[float]]
    imaginary: list[list[float]]
    covariance: list[list[float]]
    hookup: str = ""
    device: str = ""
    rate_hz: float = 0.0


class _File(tables.Strict):
    format: Literal[1]
    coefficients: list[_Entry] = []


@dataclass(frozen=True)
class Stored:
    """Coefficients (M, P) of a machine at one speed, with the covariance (2MP, 2MP) of their re and im."""

    machine: str
    date: str
    speed_rpm: float
    vibration_unit: str
    mass_unit: str
    points: tuple[str, ...]
    planes: tuple[tuple[str, float | None], ...]
    influence: Complex
    covariance: Real
    chain: Chain


@dataclass(frozen=True)
class Verdict:
    """Whether stored coefficients still hold: "not tested yet", "holds", "turned" or "does not hold".

    `factor` multiplies them where a common one explains the runs; `share` of the correction is what to put on first.
    """

    status: str
    factor: complex
    p_value: float | None
    share: float
    sentence: str


def load(path: Path) -> tuple[Stored, ...]:
    """All coefficients of a file; none where it does not exist yet. Raises StoredError."""
    if not path.exists():
        return ()
    try:
        file = tables.checked(tables.read(path), _File)
    except tables.TableError as error:
        text = str(error)
        raise StoredError(text if text.startswith(str(path)) else f"{path}: {text}") from None
    if len(file.coefficients) > _MOST:
        raise StoredError(f"{path}: coefficients: {len(file.coefficients)} entries are too many, at most {_MOST}")
    return tuple(_stored(entry, f"{path}: coefficients {n}") for n, entry in enumerate(file.coefficients, start=1))


def _stored(entry: _Entry, where: str) -> Stored:
    if not entry.machine.strip():
        raise StoredError(f"{where}.machine: says nothing; name the machine")
    points, planes = len(entry.points), len(entry.planes)
    size = 2 * points * planes
    for name, rows, shape in (
        ("real", entry.real, (points, planes)),
        ("imaginary", entry.imaginary, (points, planes)),
        ("covariance", entry.covariance, (size, size)),
    ):
        if len(rows) != shape[0] or any(len(row) != shape[1] for row in rows):
            raise StoredError(f"{where}.{name}: must be {shape[0]} by {shape[1]}, for its points and planes")
    real, imaginary = np.array(entry.real), np.array(entry.imaginary)
    covariance = np.array(entry.covariance).reshape(size, size)
    if not points or not planes or not all(np.isfinite(part).all() for part in (real, imaginary, covariance)):
        raise StoredError(f"{where}: needs points, planes, and finite numbers")
    influence = real + 1j * imaginary
    largest = float(np.abs(covariance).max())
    if np.abs(covariance - covariance.T).max() > 1e-9 * largest:
        raise StoredError(f"{where}.covariance: must be symmetric")
    if np.linalg.eigvalsh(covariance).min() < -1e-9 * largest:
        raise StoredError(f"{where}.covariance: is none: some variance in it is negative")
    if not (math.isfinite(entry.speed_rpm) and entry.speed_rpm > 0.0):
        raise StoredError(f"{where}.speed_rpm: {entry.speed_rpm}: must be above 0")
    return Stored(
        entry.machine, entry.date, entry.speed_rpm, entry.vibration_unit, entry.mass_unit, tuple(entry.points),
        tuple((p.name, p.radius_mm) for p in entry.planes), influence, covariance,
        Chain(entry.hookup, entry.device, entry.rate_hz),
    )  # fmt: skip


def save(path: Path, fresh: Sequence[Stored]) -> None:
    """Write coefficients into a file beside what it has; those of the same machine, speed and chain are replaced.

    Written as a whole or not at all. Raises StoredError.
    """
    import tomli_w

    kept = [old for old in load(path) if not any(_same(old, new) for new in fresh)]
    entries = [
        {
            "machine": s.machine,
            "date": s.date,
            "speed_rpm": s.speed_rpm,
            "vibration_unit": s.vibration_unit,
            "mass_unit": s.mass_unit,
            "points": list(s.points),
            "planes": [{"name": name} | ({} if r is None else {"radius_mm": r}) for name, r in s.planes],
            "real": s.influence.real.tolist(),
            "imaginary": s.influence.imag.tolist(),
            "covariance": s.covariance.tolist(),
            "hookup": s.chain.hookup,
            "device": s.chain.device,
            "rate_hz": s.chain.rate_hz,
        }
        for s in (*kept, *fresh)
    ]
    try:
        tables.write_whole(path, tomli_w.dumps({"format": 1, "coefficients": entries}).encode())
    except OSError as error:
        raise StoredError(f"{path}: cannot be written: {error.strerror}") from None


def _same(old: Stored, new: Stored) -> bool:
    return (
        (old.machine, old.points, old.planes, old.chain) == (new.machine, new.points, new.planes, new.chain)
        and abs(old.speed_rpm / new.speed_rpm - 1.0) <= 0.01
    )  # fmt: skip


def of_model(runs: Runs, model: Model, machine: str, date: str) -> tuple[Stored, ...]:
    """The coefficients that a fit found, to be stored. Raises StoredError where they were found without phases."""
    if runs.amplitudes_only:
        raise StoredError(f"{runs.path}: has amplitudes only; coefficients without a phase are not worth storing")
    planes = tuple((p.name, p.radius_mm) for p in runs.planes)
    return tuple(
        Stored(
            machine, date, f.speed_rpm, runs.vibration_unit, runs.mass_unit, runs.points, planes, f.influence,
            _of_influence(f), runs.chain,
        )
        for f in model.fits
    )  # fmt: skip


def _of_influence(fitted: Fit) -> Real:
    points, planes = fitted.influence.shape
    at = [2 * (m * (planes + 1) + 1 + p) + part for m in range(points) for p in range(planes) for part in (0, 1)]
    return np.asarray(fitted.covariance[np.ix_(at, at)])


def priors_for(stored: Sequence[Stored], machine: str, runs: Runs) -> tuple[tuple[Prior, ...], tuple[str, ...]]:
    """What is stored for these runs, in their units, and what to say of it: the newest of each speed.

    Raises StoredError where there is nothing for this machine, these points and planes.
    """
    names = tuple(p.name for p in runs.planes)
    own = [s for s in stored if s.machine == machine]
    if not own:
        known = ", ".join(sorted({s.machine for s in stored})) or "none"
        raise StoredError(f'machine "{machine}": nothing is stored for it; stored are {known}')
    fitting = [s for s in own if set(runs.points) <= set(s.points) and set(names) <= {n for n, _ in s.planes}]
    if not fitting:
        raise StoredError(
            f'machine "{machine}": stored are points {", ".join(own[-1].points)} and planes '
            f"{', '.join(n for n, _ in own[-1].planes)}, not those of {runs.path}"
        )
    near = [s for s in fitting if any(abs(s.speed_rpm / r.speed_rpm - 1.0) <= runs.speed_tolerance for r in runs.runs)]
    if not near:
        speeds = ", ".join(f"{s.speed_rpm:.0f}" for s in fitting)
        raise StoredError(
            f'machine "{machine}": stored at {speeds} r/min, none of them within the speeds of {runs.path}'
        )
    priors: dict[int, Prior] = {}
    said: list[str] = []
    for s in near:
        priors[round(s.speed_rpm)] = _in_units_of(s, runs)
        if s.chain != runs.chain and (s.chain.hookup or runs.chain.hookup):
            said.append(
                f"coefficients of {s.date} were measured with another hook-up, device or sample rate: phases may differ"
            )
    return tuple(priors.values()), tuple(dict.fromkeys(said))


def _in_units_of(s: Stored, runs: Runs) -> Prior:
    where = f'machine "{s.machine}", stored {s.date}'
    try:
        old, new = units.vibration_unit(s.vibration_unit, where), units.vibration_unit(runs.vibration_unit, where)
        mass = runs.kg_per_mass_unit / units.parse(f"1 {s.mass_unit}", "kg", where)
    except units.UnitError as error:
        raise StoredError(str(error)) from None
    if old.quantity != new.quantity:
        raise StoredError(
            f"{where}: in {s.vibration_unit}, but the runs are in {runs.vibration_unit}: use one quantity"
        )
    rows = [s.points.index(name) for name in runs.points]
    columns = [[n for n, _ in s.planes].index(plane.name) for plane in runs.planes]
    factors = []
    for plane, c in zip(runs.planes, columns, strict=True):
        before = s.planes[c][1]
        moved = 1.0 if before is None or plane.radius_mm is None else plane.radius_mm / before
        factors.append(new.per_si_peak / old.per_si_peak * mass * moved)
    influence = s.influence[np.ix_(rows, columns)] * np.array(factors)
    at = [2 * (m * len(s.planes) + p) + part for m in rows for p in columns for part in (0, 1)]
    scale = np.tile(np.repeat(factors, 2), len(rows))
    return Prior(s.speed_rpm, influence, s.covariance[np.ix_(at, at)] * np.outer(scale, scale))


def judged(runs: Runs, priors: Sequence[Prior], *, doubtful: bool = False) -> tuple[tuple[Prior, ...], Verdict]:
    """The coefficients to go on with, and whether the runs agree with them; `doubtful` where the chain is another one.

    A common factor that explains the runs is that of a moved mark or sensor, or of another gain: the coefficients are
    then used with it. Raises RunsError for runs that cannot be fitted with them.
    """
    if not any(np.any(run.masses) for run in runs.runs):
        return tuple(priors), Verdict(
            "not tested yet", 1.0 + 0.0j, None, 0.5,
            "the stored coefficients are not tested yet: put on half the correction first, or a small trial mass",
        )  # fmt: skip
    model = fit_all(runs, priors=priors)
    p_value = model.p_value
    if p_value is None or p_value >= _HOLDS:
        return tuple(priors), Verdict(
            "holds", 1.0 + 0.0j, p_value, 0.5 if doubtful else 1.0,
            "the runs agree with the stored coefficients, as far as the masses moved so far can tell"
            + ("; half the correction first, because the hook-up is another one" if doubtful else ""),
        )  # fmt: skip
    common = fit_all(runs, Freed(pieces=tuple(range(len(placements(runs))))), priors)
    if common.p_value is not None and common.p_value >= _HOLDS:
        times, turned_deg = vectors.amplitude_phase(common.factor)
        turned_deg = (turned_deg + 180.0) % 360.0 - 180.0
        turned = tuple(_times(p, common.factor) for p in priors)
        return turned, Verdict(
            "turned", common.factor, common.p_value, 0.5,
            f"the runs agree with {times:.2f} times the stored coefficients turned by {turned_deg:+.0f}°: pulse mark, sensor "
            "place, gain or lag changed; used so, and half the correction first",
        )  # fmt: skip
    return (), Verdict(
        "does not hold", 1.0 + 0.0j, p_value, 0.5,
        "the stored coefficients do not hold for this machine any more; they are left out: take new trial runs",
    )  # fmt: skip


def _times(prior: Prior, factor: complex) -> Prior:
    turn = np.kron(np.eye(prior.influence.size), [[factor.real, -factor.imag], [factor.imag, factor.real]])
    return replace(prior, influence=prior.influence * factor, covariance=turn @ prior.covariance @ turn.T)


def enough_alone(runs: Runs) -> bool:
    """True where the runs tell all coefficients by themselves."""
    try:
        fit_all(runs)
    except RunsError:
        return False
    return True
