"""The runs file, read and checked: its tables as they are written, and what the solver takes from them."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import tables, units, vectors
from stillshaft.solver.runs import (
    Chain,
    Piece,
    Plane,
    Point,
    Rotor,
    Run,
    Runs,
    RunsError,
    StockMass,
    repeatability_covariance,
)

Real = NDArray[np.float64]

_DEFAULT_REPEATABILITY = "2 % 2 deg"  # common practice, no source: direct drive, until measured
_DEFAULT_PLACEMENT = "1 % 2 deg"
_MOST_SPEED_TOLERANCE = 20.0  # percent: common practice, no source
_MOST_POSITIONS = 720
_MOST_STATES = 100
_LONGEST_REASON = 100  # letters
_NONE = 1e-18  # what is smaller is as good as none
_LARGEST = 1e12  # of any number in the file: squares and products of such still fit a float


class PlaneTable(tables.Strict):
    """A [[plane]] as it is written, here and in a brief."""

    name: str
    radius: str | None = None
    z: str | None = None
    positions: int | list[float] | None = None
    blocked: list[int] = []
    cap: str | None = None
    radii: list[str] = []
    per_position: int | None = None
    position_cap: str | None = None


class _Point(tables.Strict):
    name: str
    angle: float = 0.0
    quantity: Literal["acceleration", "velocity", "displacement"] = "acceleration"
    direction: Literal["radial", "axial"] = "radial"


class _Rotor(tables.Strict):
    kind: Literal["between bearings", "overhung"] = "between bearings"
    mass: str | None = None
    speed_rpm: float | None = None
    bearing_span: str | None = None
    centre_of_mass: str | None = None
    flexible: bool = False
    machine: str | None = None


class StockTable(tables.Strict):
    """Pieces at hand as they are written: mass of one, and how many."""

    mass: str
    count: int


class _Limit(tables.Strict):
    point: str
    amplitude: float


class _Vector(tables.Strict):
    amplitude: float
    phase: float | None = None
    spread: float = 0.0
    overall: float | None = None


class _Piece(tables.Strict):
    mass: float
    angle: float  # a position alone does not say it: positions count from the mark, but need not start at it
    radius: str | None = None
    position: int | None = None
    mass_sd: float | None = None
    angle_sd: float | None = None


class _Covariance(tables.Strict):
    points: list[str]
    matrix: list[list[float]]
    degrees_of_freedom: float | None = None


class _Run(tables.Strict):
    name: str
    speed_rpm: float
    vectors: dict[str, _Vector]
    kind: Literal["initial", "trial", "correction", "trim", "check", "slow roll"] | None = None
    setup: int | None = None
    initial_state: int = 1
    masses: dict[str, _Piece | list[_Piece]] = {}
    covariance: _Covariance | None = None


class _Chain(tables.Strict):
    hookup: str = ""
    device: str = ""
    rate_hz: float = 0.0


class RunsTable(tables.Strict):
    """A whole runs file as it is written, which may have no run yet."""

    format: Literal[1]
    run: list[_Run] = []
    plane: list[PlaneTable] = []
    point: list[_Point] = []
    vibration_unit: str = "mm/s rms"
    mass_unit: str = "g"
    repeatability: str | None = None
    assumed_repeatability: str | None = None
    placement: str | None = None
    speed_tolerance: str = "2 %"
    rotor: _Rotor | None = None
    stock: list[StockTable] = []
    limit: list[_Limit] = []
    chain: _Chain | None = None


@dataclass(frozen=True)
class _SlowRoll:
    """What the shaft's runout shows at slow roll: `counts` (points,) is 1 where it is to be taken off, else 0.

    `order`: the displayed quantity's differentiations of displacement; each makes runout grow with speed.
    """

    run: Run
    counts: Real
    order: int


def load_runs(path: Path) -> Runs:
    """Read a runs file. Raises RunsError with one line that names the file and the field."""
    try:
        return runs_from_table(tables.read(path), path)
    except tables.TableError as error:
        raise RunsError(str(error)) from None


def runs_from_table(table: dict[str, Any], path: Path | str) -> Runs:
    """Check what a runs file holds, or would: `path` stands in messages. Raises RunsError that names the field."""
    try:
        return _runs(tables.checked(table, RunsTable), Path(path))
    except tables.TableError as error:
        raise RunsError(f"{path}: {_named(str(error), table)}") from None
    except (RunsError, units.UnitError) as error:
        raise RunsError(f"{path}: {error}") from None


def check_described(table: dict[str, Any]) -> None:
    """Check planes, points, rotor, stock and scatter of a runs file that need have no runs yet. Raises RunsError."""
    whole = {"format": 1, **table}
    try:
        file = tables.checked(whole, RunsTable)
        kg = units.parse(f"1 {file.mass_unit}", "kg", "mass_unit")
        _unique([p.name for p in file.plane], "plane")
        _unique([p.name for p in file.point], "point")
        for plane in file.plane:
            _plane(plane, kg)
        _rotor(file.rotor)
        _stock(file, kg)
        for field in ("repeatability", "placement"):
            if (text := getattr(file, field)) is not None:
                _percent_and_degrees(text, field)
        _speed_tolerance(file.speed_tolerance)
    except tables.TableError as error:
        raise RunsError(_named(str(error), whole)) from None
    except units.UnitError as error:
        raise RunsError(str(error)) from None


def _named(message: str, table: dict[str, Any]) -> str:
    """The message with the name of the run or plane added to its number, where it has one."""
    found = re.match(r"(run|plane|point) (\d+)(?=[.:])", message)
    if not found:
        return message
    entry = table[found[1]][int(found[2]) - 1]
    name = entry.get("name") if isinstance(entry, dict) else None
    return f'{found[0]} ("{name}"){message[found.end() :]}' if isinstance(name, str) else message


def _percent_and_degrees(text: str, field: str) -> tuple[float, float]:
    """Standard deviations from "2 % 2 deg": relative, and in rad."""
    match = re.fullmatch(r"\s*(\d+(?:\.\d+)?)\s*%\s+(\d+(?:\.\d+)?)\s*deg\s*", text)
    if not match:
        raise RunsError(f'{field}: "{text}": write percent and degrees, such as "2 % 2 deg"')
    if float(match[1]) > 100.0 or float(match[2]) > 90.0:
        raise RunsError(
            f'{field}: "{text}": is above 100 % or 90 deg, at which nothing can be told; "2 % 2 deg" is usual'
        )
    return float(match[1]) / 100.0, math.radians(float(match[2]))


def _file_repeatability(file: RunsTable) -> tuple[tuple[float, float], tuple[str, ...]]:
    """Run-to-run scatter, relative and in rad, and what to say of it where it is assumed."""
    if file.assumed_repeatability is None:
        said = (
            () if file.repeatability else (f"repeatability {_DEFAULT_REPEATABILITY} is assumed: the file does not say",)
        )
        return _percent_and_degrees(file.repeatability or _DEFAULT_REPEATABILITY, "repeatability"), said
    if file.repeatability is not None:
        raise RunsError(
            f'assumed_repeatability: "{file.assumed_repeatability}": repeatability is stated as well; keep one of the two'
        )
    return _assumed_repeatability(file.assumed_repeatability)


def _assumed_repeatability(text: str) -> tuple[tuple[float, float], tuple[str, ...]]:
    """As `_file_repeatability`, from "5 % 5 deg: belt drive", in which the reason may be left out."""
    figures, colon, why = (part.strip() for part in text.partition(":"))
    relative, tilt = found = _percent_and_degrees(figures, "assumed_repeatability")
    if (colon and not why) or len(why) > _LONGEST_REASON or not why.isprintable():
        raise RunsError(
            f'assumed_repeatability: "{text}": write why in one line of up to {_LONGEST_REASON} letters, such as '
            '"5 % 5 deg: belt drive", or leave the colon out'
        )
    percent, degrees = 100.0 * relative, math.degrees(tilt)
    if not why:
        return found, (
            f"repeatability {percent:.3g} % and {degrees:.3g}° is assumed; repeat the initial run to learn it",
        )
    said = f"repeatability {percent:.3g} % and {degrees:.3g}° is assumed: {why}; repeat the initial run to learn it"
    return found, (said,)


def _speed_tolerance(text: str) -> float:
    """Share of the speed within which runs are one group, from "2 %"."""
    match = re.fullmatch(r"\s*(\d{1,9}(?:\.\d{1,9})?)\s*%\s*", text)
    if not match:
        raise RunsError(f'speed_tolerance: "{text}": write percent, such as "2 %"')
    if float(match[1]) > _MOST_SPEED_TOLERANCE:
        raise RunsError(
            f'speed_tolerance: "{text}": is more than {_MOST_SPEED_TOLERANCE:g} %; runs so far apart have coefficients of '
            'their own; "2 %" is usual'
        )
    return float(match[1]) / 100.0


def _finite(value: float, field: str, *, lowest: float = -math.inf) -> float:
    if not math.isfinite(value) or value < lowest:
        limit = "" if lowest == -math.inf else f", {lowest:g} or more"
        raise RunsError(f"{field}: {value} must be a finite number{limit}")
    if abs(value) > _LARGEST:
        raise RunsError(f"{field}: {value:g} is too large, at most {_LARGEST:g}; is it in the right unit?")
    return value if abs(value) > _NONE else 0.0


def _length_mm(text: str | None, field: str, *, positive: bool = False) -> float | None:
    if text is None:
        return None
    value = _finite(units.parse(text, "mm", field), field)
    if positive and value <= 0.0:
        raise RunsError(f'{field}: "{text}" must be above 0')
    return value


def _unique(names: Sequence[str], what: str) -> None:
    for number, name in enumerate(names, start=1):
        if not name.strip() or name in names[: number - 1]:
            raise RunsError(f'{what} {number}.name: "{name}" is empty or used twice; each {what} needs its own name')


def _runs(file: RunsTable, path: Path) -> Runs:
    _unique([p.name for p in file.plane], "plane")
    _unique([r.name for r in file.run], "run")
    _unique([p.name for p in file.point], "point")
    unit = units.vibration_unit(file.vibration_unit, "vibration_unit")
    kg = units.parse(f"1 {file.mass_unit}", "kg", "mass_unit")
    if all(run.kind == "slow roll" for run in file.run):
        raise RunsError("run: there is none; a runs file needs an initial run and a trial run for each plane")
    points = tuple(file.run[0].vectors)
    if not points:
        raise RunsError(f'run "{file.run[0].name}".vectors: is empty; give amplitude and phase of at least one point')
    if file.point and set(points) - {p.name for p in file.point}:
        raise RunsError(
            f"run 1.vectors: {sorted(set(points) - {p.name for p in file.point})} are no [[point]] of this file"
        )
    planes = tuple(_plane(p, kg) for p in file.plane)
    repeatability, assumed = _file_repeatability(file)
    placement = _percent_and_degrees(file.placement or _DEFAULT_PLACEMENT, "placement")
    if file.placement is None:
        assumed = (*assumed, f"placement {_DEFAULT_PLACEMENT} is assumed: the file does not say")
    slow_roll = _slow_roll(file, unit, points, planes, repeatability, placement)
    runs = tuple(
        _run(run, points, planes, repeatability, placement, slow_roll) for run in file.run if run.kind != "slow roll"
    )
    for limit in file.limit:
        if limit.point not in points:
            raise RunsError(f'limit: "{limit.point}" is no point of this file; there is {", ".join(points)}')
        if not _finite(limit.amplitude, f'limit "{limit.point}".amplitude') > 0.0:
            raise RunsError(f'limit "{limit.point}".amplitude: {limit.amplitude:g} must be above 0')
    return Runs(
        path, points, planes, runs, unit.text, file.mass_unit, kg, _rotor(file.rotor),
        tuple((m.point, m.amplitude) for m in file.limit), _speed_tolerance(file.speed_tolerance), placement, assumed,
        _amplitudes_only(file), _stock(file, kg),
        tuple(Point(p.name, _finite(p.angle, f'point "{p.name}".angle'), p.quantity, p.direction) for p in file.point),
        repeatability, file.repeatability is None,
        chain_of(file.chain),
    )  # fmt: skip


def chain_of(chain: _Chain | None) -> Chain:
    """What a runs file says of the measuring chain; an empty one where it says nothing. Raises RunsError."""
    if chain is None:
        return Chain()
    return Chain(chain.hookup, chain.device, _finite(chain.rate_hz, "chain.rate_hz", lowest=0.0))


def _plane(plane: PlaneTable, kg_per_mass_unit: float) -> Plane:
    where = f'plane "{plane.name}"'
    radius_mm = _length_mm(plane.radius, f"{where}.radius", positive=True)
    if plane.radii and radius_mm is None:
        raise RunsError(f"{where}.radii: the plane has no radius of its own to compare with; give it one")
    positions = _positions(plane, where)
    if plane.per_position is not None and plane.per_position < 1:
        raise RunsError(f"{where}.per_position: {plane.per_position}: must be 1 or more")
    return Plane(
        plane.name,
        radius_mm,
        _length_mm(plane.z, f"{where}.z"),
        positions,
        _blocked(plane, positions, where),
        _mass(plane.cap, f"{where}.cap", kg_per_mass_unit),
        tuple(_length_mm(r, f"{where}.radii", positive=True) or 0.0 for r in plane.radii),
        plane.per_position,
        _mass(plane.position_cap, f"{where}.position_cap", kg_per_mass_unit),
    )


def _positions(plane: PlaneTable, where: str) -> tuple[float, ...] | None:
    """Angles of positions 1, 2, … in degrees; a number of them stands evenly from the mark on, against rotation."""
    given = plane.positions
    if given is None:
        return None
    if isinstance(given, int):
        if not 1 <= given <= _MOST_POSITIONS:
            raise RunsError(f"{where}.positions: {given}: must be 1 to {_MOST_POSITIONS}")
        return tuple(360.0 * k / given for k in range(given))
    if not 1 <= len(given) <= _MOST_POSITIONS:
        raise RunsError(f"{where}.positions: {len(given)} angles: must be 1 to {_MOST_POSITIONS}")
    return tuple(_finite(angle, f"{where}.positions") % 360.0 for angle in given)


def _blocked(plane: PlaneTable, positions: tuple[float, ...] | None, where: str) -> frozenset[int]:
    if plane.blocked and positions is None:
        raise RunsError(f"{where}.blocked: names positions, but the plane has none; give positions = 24 or a list")
    for number in plane.blocked:
        if not 1 <= number <= len(positions or ()):
            raise RunsError(f"{where}.blocked: position {number} does not exist; there are 1 to {len(positions or ())}")
    return frozenset(plane.blocked)


def _mass(text: str | None, field: str, kg_per_mass_unit: float) -> float | None:
    """Mass in the file's unit, above 0."""
    if text is None:
        return None
    value = _finite(units.parse(text, "kg", field) / kg_per_mass_unit, field)
    if value <= 0.0:
        raise RunsError(f'{field}: "{text}" must be above 0')
    return value


def _stock(file: RunsTable, kg_per_mass_unit: float) -> tuple[StockMass, ...]:
    pieces = []
    for number, entry in enumerate(file.stock, start=1):
        mass = _mass(entry.mass, f"stock {number}.mass", kg_per_mass_unit)
        if not 0 <= entry.count <= _LARGEST:
            raise RunsError(f"stock {number}.count: {entry.count}: must be 0 or more")
        pieces.append(StockMass(mass or 0.0, entry.count))
    return tuple(pieces)


def _amplitudes_only(file: RunsTable) -> bool:
    """True where no vector has a phase. Raises RunsError where some have one and some have none."""
    lacking = [
        f'run "{run.name}".vectors."{point}"'
        for run in file.run
        for point, vector in run.vectors.items()
        if vector.phase is None
    ]
    every = sum(len(run.vectors) for run in file.run)
    if lacking and len(lacking) < every:
        raise RunsError(f"{lacking[0]}.phase: is missing, but others have one; give it in every run or in none")
    return bool(lacking)


def _rotor(rotor: _Rotor | None) -> Rotor | None:
    if rotor is None:
        return None
    mass_kg = None if rotor.mass is None else units.parse(rotor.mass, "kg", "rotor.mass")
    if mass_kg is not None and mass_kg <= 0.0:
        raise RunsError(f'rotor.mass: "{rotor.mass}" must be above 0')
    if rotor.speed_rpm is not None:
        _finite(rotor.speed_rpm, "rotor.speed_rpm", lowest=1.0)
    return Rotor(
        rotor.kind, mass_kg, rotor.speed_rpm,
        _length_mm(rotor.bearing_span, "rotor.bearing_span", positive=True),
        _length_mm(rotor.centre_of_mass, "rotor.centre_of_mass"),
        rotor.flexible, rotor.machine,
    )  # fmt: skip


def _run(
    run: _Run,
    points: tuple[str, ...],
    planes: tuple[Plane, ...],
    repeatability: tuple[float, float],
    placement: tuple[float, float],
    slow_roll: _SlowRoll | None,
) -> Run:
    where = f'run "{run.name}"'
    if not 1 <= run.initial_state <= _MOST_STATES:
        raise RunsError(f"{where}.initial_state: {run.initial_state}: must be 1 to {_MOST_STATES}, counted up in order")
    _finite(run.speed_rpm, f"{where}.speed_rpm", lowest=1.0)
    for name in (*points, *run.vectors):
        if name not in run.vectors or name not in points:
            raise RunsError(
                f'{where}.vectors: "{name}" is not in every run; all runs need the same points: {", ".join(points)}'
            )
    z = np.empty(len(points), dtype=np.complex128)
    for row, name in enumerate(points):
        vector, field = run.vectors[name], f'{where}.vectors."{name}"'
        amplitude = _finite(vector.amplitude, f"{field}.amplitude", lowest=0.0)
        z[row] = vectors.vector(amplitude, _finite(vector.phase or 0.0, f"{field}.phase"))
        _finite(vector.spread, f"{field}.spread", lowest=0.0)
        _finite(vector.overall or 0.0, f"{field}.overall", lowest=0.0)
    masses = np.zeros(len(planes), dtype=np.complex128)
    names, pieces = [p.name for p in planes], []
    for name, given in run.masses.items():
        if name not in names:
            listed = ", ".join(names) or "none: add a [[plane]]"
            raise RunsError(f'{where}.masses: "{name}" is no plane of this file; there is {listed}')
        column = names.index(name)
        for piece in given if isinstance(given, list) else [given]:
            w, w_covariance = _piece(piece, planes[column], f'{where}.masses."{name}"', placement)
            masses[column] += w
            pieces.append(Piece(column, w, w_covariance, (column, w.real, w.imag)))
    within = _measured_covariance(run, points, where)
    runout = np.zeros((2 * len(points), 0))
    if slow_roll is not None:
        grown = slow_roll.counts * (run.speed_rpm / slow_roll.run.speed_rpm) ** slow_roll.order
        z = z - grown * slow_roll.run.vectors
        runout = np.repeat(grown, 2)[:, None] * np.linalg.cholesky(
            slow_roll.run.covariance + np.diag(1e-12 * np.diag(slow_roll.run.covariance) + 1e-300)
        )
    covariance = within + runout @ runout.T + repeatability_covariance(z, repeatability)
    return Run(
        run.name, run.speed_rpm, z, masses, covariance, run.kind, run.setup,
        _degrees_of_freedom(run, within, covariance), tuple(pieces), runout,
        tuple(run.vectors[p].overall for p in points), run.initial_state,
    )  # fmt: skip


def _degrees_of_freedom(run: _Run, within: Real, whole: Real) -> float:
    """Of the whole covariance, of which only what was found within the run is uncertain itself (Satterthwaite 1946)."""
    given = None if run.covariance is None else run.covariance.degrees_of_freedom
    if given is None or not given > 0.0 or not np.trace(within) > _NONE * np.trace(whole):
        return math.inf
    return max(1.0, given) * float(np.trace(whole) / np.trace(within)) ** 2  # no scatter was found with less than one


def _slow_roll(
    file: RunsTable,
    unit: units.VibrationUnit,
    points: tuple[str, ...],
    planes: tuple[Plane, ...],
    repeatability: tuple[float, float],
    placement: tuple[float, float],
) -> _SlowRoll | None:
    slow = [run for run in file.run if run.kind == "slow roll"]
    if not slow:
        return None
    if len(slow) > 1:
        raise RunsError(f'run "{slow[1].name}".kind: is a second slow roll; keep one')
    if not file.point:
        raise RunsError(
            f'run "{slow[0].name}".kind: a slow roll is taken off displacement points, but no [[point]] says which '
            'they are; add one for each point with its quantity, such as quantity = "displacement"'
        )
    quantities = {p.name: p.quantity for p in file.point}
    counts = np.array([float(quantities[p] == "displacement") for p in points])
    run = _run(slow[0], points, planes, repeatability, placement, None)
    return _SlowRoll(run, counts, units.differentiations("displacement", unit.quantity))


def _piece(piece: _Piece, plane: Plane, where: str, placement: tuple[float, float]) -> tuple[complex, Real]:
    """Mass of a piece at the plane's own radius, and the covariance (2, 2) of its re and im."""
    mass = _finite(piece.mass, f"{where}.mass")
    angle = _finite(piece.angle, f"{where}.angle")
    radius_mm = _length_mm(piece.radius, f"{where}.radius", positive=True)
    if radius_mm is not None:
        if plane.radius_mm is None:
            raise RunsError(f'{where}.radius: plane "{plane.name}" has none to compare with; give it one')
        mass = _finite(mass * (radius_mm / plane.radius_mm), f"{where}.radius")
    w = vectors.vector(1.0, angle) * mass
    mass_sd = (
        placement[0] * abs(mass) if piece.mass_sd is None else _finite(piece.mass_sd, f"{where}.mass_sd", lowest=0.0)
    )
    angle_sd = (
        placement[1]
        if piece.angle_sd is None
        else math.radians(_finite(piece.angle_sd, f"{where}.angle_sd", lowest=0.0))
    )
    return w, vectors.along_and_across(w, mass_sd, abs(mass) * angle_sd)


def _measured_covariance(run: _Run, points: tuple[str, ...], where: str) -> Real:
    """Scatter within the run: the covariance given, else the spreads."""
    size = 2 * len(points)
    if run.covariance is None:
        return np.diag(np.repeat([run.vectors[p].spread ** 2 for p in points], 2))
    given = run.covariance
    if sorted(given.points) != sorted(points):
        raise RunsError(f"{where}.covariance.points: must name {', '.join(points)}")
    if len(given.matrix) != size or any(len(row) != size for row in given.matrix):
        raise RunsError(f"{where}.covariance.matrix: must be {size} by {size}, re and im of each point")
    matrix = np.array(given.matrix)
    largest = float(np.abs(matrix).max())
    if not largest <= _LARGEST**2:
        raise RunsError(f"{where}.covariance.matrix: must be finite, no number above {_LARGEST**2:g}")
    if np.abs(matrix - matrix.T).max() > 1e-9 * largest:
        raise RunsError(f"{where}.covariance.matrix: must be finite and symmetric")
    if np.linalg.eigvalsh(matrix).min() < -1e-9 * largest:
        raise RunsError(f"{where}.covariance.matrix: is no covariance: some variance in it is negative")
    order = [2 * given.points.index(p) + part for p in points for part in (0, 1)]
    return np.asarray(matrix[np.ix_(order, order)])
