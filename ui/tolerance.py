"""Where the rotor stands: texts of the person and the runs file's rotor table become a tolerance."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from stillshaft.dsp import units
from stillshaft.dsp.units import InputError

if TYPE_CHECKING:
    from stillshaft.solver.limit_tables import VibrationTable
    from stillshaft.solver.limits import Tolerance
    from stillshaft.solver.vibration_limits import Chosen

SPLITS = ("bearings", "static-couple")


class ToleranceError(InputError):
    """A tolerance that cannot be worked out from what was given: the message names the option."""


@dataclass(frozen=True)
class RotorTexts:
    """What a person says of the rotor, as text with units; None leaves what the runs file says."""

    mass: str | None = None
    speed_rpm: float | None = None
    bearing_span: str | None = None
    centre_of_mass: str | None = None
    kind: str | None = None
    machine: str | None = None
    flexible: bool | None = None


def tolerance_of(
    runs_path: Path | None,
    grade: str | None = None,
    rotor: RotorTexts | None = None,
    *,
    split: str = SPLITS[0],
    limits_named: Sequence[str] = (),
    class_name: str | None = None,
    supports: Sequence[str] = (),
    accept: str | None = None,
) -> Tolerance:
    """Tolerance from a runs file's rotor table, each value replaced by one given here.

    `limits_named` are built-in tables or files, one of each kind; from the one for vibration `class_name`, `supports`
    ("rigid", "30 Hz", "POINT = flexible") and `accept` pick the limits. Raises the solver's errors and ToleranceError.
    """
    from stillshaft.solver import limit_tables, limits, runs, runs_file

    if split not in SPLITS:
        raise ToleranceError(f"--split {split}: is none; choose {' or '.join(SPLITS)}")
    read = None if runs_path is None else runs_file.load_runs(runs_path)
    said = rotor or RotorTexts()
    known = (read.rotor if read is not None else None) or runs.Rotor("between bearings", None, None, None, None)
    given: dict[str, Any] = {
        "kind": said.kind,
        "mass_kg": None if said.mass is None else units.parse(said.mass, "kg", "--rotor-mass"),
        "speed_rpm": said.speed_rpm,
        "bearing_span_mm": _length_mm(said.bearing_span, "--bearing-span"),
        "centre_of_mass_mm": _length_mm(said.centre_of_mass, "--centre-of-mass"),
        "machine": said.machine,
        "flexible": said.flexible,
    }
    whole = dataclasses.replace(known, **{key: value for key, value in given.items() if value is not None})
    grades = journal = chosen = None
    for text in limits_named:
        table = limit_tables.named(text)
        if isinstance(table, limit_tables.GradesTable) and grades is None:
            grades = table
        elif isinstance(table, limit_tables.JournalTable) and journal is None:
            journal = table
        elif isinstance(table, limit_tables.VibrationTable) and chosen is None:
            chosen = _chosen(table, class_name, supports, accept)
        else:
            raise ToleranceError(f'--limits "{text}": is a second table of its kind; name one')
    if chosen is None and (class_name is not None or supports or accept is not None):
        raise ToleranceError("--class, --support and --accept pick from a vibration table; name one with --limits")
    return limits.tolerance(
        grade, whole, read, grades=grades, journal=journal, vibration=chosen, static_couple=split == SPLITS[1]
    )


def _length_mm(text: str | None, option: str) -> float | None:
    return None if text is None else units.parse(text, "mm", option)


def _chosen(table: VibrationTable, class_name: str | None, supports: Sequence[str], accept: str | None) -> Chosen:
    from stillshaft.solver.limit_tables import SUPPORTS
    from stillshaft.solver.vibration_limits import Chosen

    read: dict[str | None, str | float] = {}
    for text in supports:
        point, equals, value = text.rpartition("=")
        name = point.strip() if equals else None
        if name in read:
            raise ToleranceError(f'--support "{text}": is said twice')
        value = value.strip()
        read[name] = value if value in SUPPORTS else _natural_rpm(value, text)
    return Chosen(table, class_name, read, accept)


def _natural_rpm(value: str, text: str) -> float:
    try:
        return units.speed_rpm(value, "--support")
    except units.UnitError:
        raise ToleranceError(
            f'--support "{text}": write rigid, flexible, or the lowest natural frequency such as "30 Hz", for one point '
            'as "POINT = 30 Hz"'
        ) from None
