"""A run added to a runs file; every byte that was there stays as it is."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import asdict
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import tables, units, vectors
from stillshaft.solver.runs import Chain, RunsError
from stillshaft.solver.runs_file import RunsTable, chain_of, runs_from_table

Real = NDArray[np.float64]


def append_run(
    path: Path,
    *,
    name: str,
    speed_rpm: float,
    vectors_by_point: Mapping[str, complex],
    covariance: Real,
    degrees_of_freedom: float,
    masses: Sequence[tuple[str, float, float]],
    vibration_unit: str,
    mass_unit: str,
    points: Sequence[Mapping[str, Any]],
    overall: Mapping[str, float | None] | None = None,
    chain: Chain | None = None,
) -> list[str]:
    """Append a run to a runs file, made if there is none; every byte that was there stays as it is.

    `masses` are plane, mass in `mass_unit`, angle in degrees; `overall` is the broadband level of a point in
    `vibration_unit` where it is known; `chain` is what it was measured with. A plane the file does not have is added
    without a radius and named in the list returned. Raises RunsError and writes nothing where the result would not be a
    runs file.
    """
    import tomli_w

    old = path.read_bytes() if path.exists() else b""
    there = _there(path) if old else None
    head: dict[str, Any] = {}
    if there is None:
        head = {"format": 1, "vibration_unit": vibration_unit, "mass_unit": mass_unit, "point": list(points)}
        if chain is not None:
            head["chain"] = asdict(chain)
    elif not _same_unit(there.vibration_unit, vibration_unit, path):
        raise RunsError(
            f"{path}: vibration_unit is {there.vibration_unit}, but this run is in {vibration_unit}; use one for all runs"
        )
    elif chain is not None and chain_of(there.chain).hookup not in ("", chain.hookup):
        raise RunsError(
            f"{path}: was measured with another hook-up than this run: their phases do not belong together; use a new runs "
            "file, or the recording's own hook-up if only a text in it changed"
        )
    known = set() if there is None else {p.name for p in there.plane}
    unit_there = mass_unit if there is None else there.mass_unit
    try:
        factor = units.parse(f"1 {mass_unit}", "kg", "mass_unit") / units.parse(f"1 {unit_there}", "kg", "mass_unit")
    except units.UnitError as error:
        raise RunsError(f"{path}: {error}") from None
    added = [plane for plane in dict.fromkeys(m[0] for m in masses) if plane not in known]
    placed: dict[str, list[dict[str, float]]] = {}
    for plane, mass, angle_deg in masses:
        placed.setdefault(plane, []).append({"mass": mass * factor, "angle": angle_deg})
    amplitudes = {p: vectors.amplitude_phase(z) for p, z in vectors_by_point.items()}
    levels = {p: {"overall": float(level)} for p, level in (overall or {}).items() if level is not None}
    run: dict[str, Any] = {
        "name": name,
        "speed_rpm": float(speed_rpm),
        "vectors": {
            p: {"amplitude": float(a), "phase": float(phase), **levels.get(p, {})}
            for p, (a, phase) in amplitudes.items()
        },
        "covariance": {
            "points": list(vectors_by_point),
            "matrix": np.asarray(covariance).tolist(),
            "degrees_of_freedom": float(degrees_of_freedom),
        },
    }
    if placed:
        run["masses"] = {p: pieces[0] if len(pieces) == 1 else pieces for p, pieces in placed.items()}
    # written as tables: an inline list could not be added to by the next run
    fresh_planes = "".join(f"\n[[plane]]\n{tomli_w.dumps({'name': plane})}" for plane in added)
    fresh_run = tomli_w.dumps({"run": run}).replace("[run]", "[[run]]", 1)  # the first line; its own tables follow
    fresh = (tomli_w.dumps(head) if head else "") + fresh_planes + "\n" + fresh_run
    if old:
        fresh = ("" if old.endswith(b"\n") else "\n") + "\n" + fresh
    whole = old + fresh.encode("utf-8")
    try:
        runs_from_table(tables.parsed(whole.decode("utf-8")), path)
    except tables.TableError as error:
        raise RunsError(f"{path}: cannot be added to: the result {error}") from None
    try:
        tables.write_whole(path, whole)
    except OSError as error:
        raise RunsError(f"{path}: cannot be written: {error.strerror}") from None
    return added


def _same_unit(there: str, given: str, path: Path) -> bool:
    """True for one unit, however it is spelled."""
    try:
        old, new = units.vibration_unit(there, f"{path}: vibration_unit"), units.vibration_unit(given, "vibration_unit")
    except units.UnitError as error:
        raise RunsError(str(error)) from None
    return old.quantity == new.quantity and math.isclose(old.per_si_peak, new.per_si_peak, rel_tol=1e-12)


def _there(path: Path) -> RunsTable:
    """The file as it is, which may have no run yet."""
    try:
        return tables.checked(tables.read(path), RunsTable)
    except tables.TableError as error:
        text = str(error)
        raise RunsError(text if text.startswith(str(path)) else f"{path}: {text}") from None
