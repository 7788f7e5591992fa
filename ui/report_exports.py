"""A job's figures for other programs: runs and masses as one CSV table, and everything as one JSON object.

The CSV follows RFC 4180 (from memory): commas, CRLF, quotes doubled, the same fields in every line; UTF-8 without a byte-order
mark. Each line is a vector of a run or a piece that sat on the rotor during one, as `row` says. The JSON object has `format`
1, `state` (what counts), and `history` (every line of the record, as it stands).
"""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from typing import Any

import msgspec
from stillshaft.solver.events import Event
from stillshaft.solver.job import Job
from stillshaft.solver.state import JobRun

COLUMNS = (
    "row", "run_entry", "run", "purpose", "at", "by", "counts", "speed_rpm", "minutes_since_start", "epoch",
    "point", "unit", "amplitude", "amplitude_ci95", "phase_deg", "phase_ci95_deg", "phase_turned_by_deg", "overall", "steadiness",
    "plane", "mass_g", "angle_deg", "radius_mm", "position", "fixing", "recording", "sha256", "reasons", "used_anyway", "note",
)  # fmt: skip
# what a spreadsheet takes for the beginning of a formula, in either width of letters
_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")


def to_csv(job: Job) -> bytes:
    """Vectors and masses of all runs that were not withdrawn, numbers as they were recorded, in the units they name."""
    file = io.StringIO(newline="")
    writer = csv.DictWriter(file, COLUMNS, restval="", lineterminator="\r\n")
    writer.writeheader()
    for run in job.state.runs:
        for row in _rows(run):
            writer.writerow({key: _cell(value) for key, value in row.items()})
    return file.getvalue().encode("utf-8")


def _rows(run: JobRun) -> Iterator[dict[str, object]]:
    what = run.what
    head = {
        "run_entry": run.id, "run": what.name, "purpose": what.purpose, "at": run.event.at, "by": run.event.by,
        "counts": "yes" if run.counts else "no", "speed_rpm": what.speed_rpm, "minutes_since_start": what.minutes_since_start,
        "epoch": run.epoch, "recording": None if what.recording is None else what.recording.path,
        "sha256": None if what.recording is None else what.recording.sha256, "reasons": "; ".join(run.reasons),
        "used_anyway": what.used_anyway, "note": what.note,
    }  # fmt: skip
    for vector in what.vectors:
        yield {
            "row": "vector", **head, "point": vector.point, "unit": what.unit, "amplitude": vector.amplitude,
            "amplitude_ci95": vector.amplitude_ci95, "phase_deg": vector.phase_deg, "phase_ci95_deg": vector.phase_ci95_deg,
            "phase_turned_by_deg": run.turn_deg.get(vector.point, 0.0), "overall": vector.overall, "steadiness": vector.verdict,
        }  # fmt: skip
    for piece in what.masses:
        yield {
            "row": "mass", **head, "plane": piece.plane, "mass_g": piece.mass_g, "angle_deg": piece.angle_deg,
            "radius_mm": piece.radius_mm, "position": piece.position, "fixing": piece.fixing, "note": piece.note or what.note,
        }  # fmt: skip


def _cell(value: object) -> str:
    """A number as it is, a text so that no spreadsheet takes it for a formula."""
    if value is None:
        return ""
    if isinstance(value, int | float):
        return repr(value)
    text = str(value).replace("\0", "\ufffd")
    return f"'{text}" if text.lstrip(" ").startswith(_FORMULA) else text


def to_json(job: Job) -> dict[str, Any]:
    """The state and every line of the record as plain tables."""
    return {
        "folder": job.folder.resolve().name,
        "problems": list(job.problems),
        "state": _plain(job.state),
        "history": [
            {
                "line": entry.line,
                "withdrawn_by": entry.withdrawn_by,
                "problem": entry.problem,
                "event": None if entry.event is None else _plain(entry.event),
                "text": entry.text if entry.event is None else None,
            }
            for entry in job.history
        ],
    }


def _plain(value: Any) -> Any:
    """What the record holds as plain tables; an event as its line stands."""
    if isinstance(value, Event):
        return {"id": value.id, "kind": value.kind, "at": value.at, "by": value.by, **value.fields}
    if is_dataclass(value) and not isinstance(value, type):
        return {field.name: _plain(getattr(value, field.name)) for field in fields(value)}
    if isinstance(value, dict):
        return {str(key): _plain(inner) for key, inner in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(inner) for inner in value]
    return msgspec.to_builtins(value)


def json_bytes(whole: dict[str, Any]) -> bytes:
    """The object as a file: UTF-8, indented."""
    return (json.dumps(whole, ensure_ascii=False, indent=1, allow_nan=False) + "\n").encode("utf-8")
