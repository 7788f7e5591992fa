"""Changes to the content of a hook-up, one field at a time; each gives a new table that was checked. No Qt here.

A place is "" for the whole hook-up, "pulse", "device", or the number of a point, counted from 0.
"""

from __future__ import annotations

import contextlib
import copy
import datetime
import re
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from stillshaft.acquire import hookup as hookups
from stillshaft.acquire.hookup import Hookup, HookupError
from stillshaft.dsp import tables
from stillshaft.dsp.channels import HAND_PROBE, USABLE_HZ
from stillshaft.ui.wiring import Calibrated

Table = dict[str, Any]
Place = str | int
QUANTITIES = ("acceleration", "velocity", "displacement")
MOUNTS = tuple(USABLE_HZ)
USUAL_SENSITIVITY = {"acceleration": "100 mV/g", "velocity": "4 mV/(mm/s)", "displacement": "7.87 V/mm"}
_USUAL: dict[str, dict[str, str]] = {
    "": {"display": "mm/s rms", "reference_end": "drive", "rotation": "counter-clockwise", "datum": "12 o'clock"},
    "pulse": {"input": "1", "edge": "auto", "pulses_per_rev": "1", "reference": "single", "angle": "0°"},
    "device": {"range": "10 V", "coupling": "default", "iepe": "0 mA", "terminal": "default"},
    "point": {"direction": "radial", "full_scale": "2.0 V", "angle": "0°", "inverted": "no", "delay": "0 us",
              "highpass": "none", "mount": ""},
}  # fmt: skip
_WHOLE, _NUMBERS = ("input", "pulses_per_rev"), ("angle",)
_PLACE = re.compile(r"^(?:point \d+\.|pulse\.|device\.|point )?\w+: ")


def usual(place: Place, key: str) -> str:
    """What holds where the hook-up says nothing; empty where it must say something."""
    return _USUAL["point" if isinstance(place, int) else place].get(key, "")


def _entry(table: Mapping[str, Any], place: Place) -> Mapping[str, Any]:
    if isinstance(place, int):
        entry: Mapping[str, Any] = table["point"][place]
        return entry
    return table if place == "" else table.get(place, {})


def text_of(table: Mapping[str, Any], place: Place, key: str) -> str:
    """A value as a person reads it."""
    value = _entry(table, place).get(key)
    if value is None or value == []:
        return usual(place, key)
    if isinstance(value, bool):
        return "yes" if value else "no"
    if key in _NUMBERS:
        return f"{value:g}°"
    if isinstance(value, list):
        return ", ".join(str(v) for v in value)
    return str(value)


def _value_from(key: str, text: str) -> Any:
    """What a person wrote, as the file holds it. Raises HookupError."""
    if key in _WHOLE:
        if not re.fullmatch(r"\d{1,6}", text):
            raise HookupError(f'{key}: "{text}" is not a whole number')
        return int(text)
    if key in _NUMBERS:
        bare = text.removesuffix("deg").removesuffix("°").strip()
        if not re.fullmatch(r"[-+]?(\d+\.?\d*|\.\d+)", bare):
            raise HookupError(f'{key}: "{text}" is not a number of degrees')
        return float(bare)
    if key == "inverted":
        return text == "yes"
    if key == "highpass":
        return [] if text.lower() == "none" else [t.strip() for t in re.split(r"[,;]", text) if t.strip()]
    return text


def changed(table: Mapping[str, Any], place: Place, key: str, text: str) -> Table:
    """The table with another value; an empty text stands for the usual one. Raises HookupError without the field's name.

    A hand-written value ends what a calibration said of it. Another quantity takes its usual sensitivity along, since
    the one that was there has the wrong unit.
    """
    made = copy.deepcopy(dict(table))
    if isinstance(place, str) and place:
        made.setdefault(place, {})
    entry = _entry(made, place)
    assert isinstance(entry, dict)
    try:
        if text.strip() == usual(place, key) or (not text.strip() and (usual(place, key) or key == "mount")):
            entry.pop(key, None)
        else:
            entry[key] = _value_from(key, text.strip())
        if key == "quantity":
            entry["sensitivity"] = USUAL_SENSITIVITY[text]
        if key == "pulses_per_rev" and entry.get(key, 1) == 1:
            entry.pop("reference", None)
        for each in {key, "sensitivity"} if key == "quantity" else {key}:
            _forget_calibration(entry, each)
        if isinstance(place, str) and place and not entry:
            del made[place]
        hookups.hookup_from(made)
    except HookupError as error:
        raise HookupError(without_place(str(error))) from None
    return made


def _forget_calibration(entry: Table, key: str) -> None:
    done = entry.get("calibrated")
    if done is None or f"{key}_ci95" not in done:
        return
    del done[f"{key}_ci95"]
    if not any(k.endswith("_ci95") for k in done):
        del entry["calibrated"]


def without_place(why: str) -> str:
    """A message without the field that it begins with: the field itself shows it."""
    return _PLACE.sub("", why)


def _free_input(table: Mapping[str, Any]) -> int:
    taken = {table.get("pulse", {}).get("input", 1), *(p.get("input") for p in table.get("point", []))}
    return next(n for n in range(1, 66) if n not in taken)


def added(table: Mapping[str, Any]) -> Table:
    """The table with one point more, on the first free input. Raises HookupError where none is free."""
    made = copy.deepcopy(dict(table))
    names = {p.get("name") for p in made["point"]}
    number = next(n for n in range(1, 99) if f"point {n}" not in names)
    like = made["point"][-1]
    made["point"].append(
        {
            "name": f"point {number}",
            "input": _free_input(made),
            **{k: like[k] for k in ("quantity", "sensitivity", "full_scale", "mount") if k in like},
        }
    )
    hookups.hookup_from(made)
    return made


def removed(table: Mapping[str, Any], number: int) -> Table:
    """The table without a point. Raises HookupError for the last one."""
    made = copy.deepcopy(dict(table))
    if len(made["point"]) < 2:
        raise HookupError("a hook-up needs at least one point: change this one instead")
    del made["point"][number]
    return made


def fresh() -> Table:
    """A hook-up to begin with: the pulse on input 1, an accelerometer on input 2."""
    point = {
        "name": "point 1",
        "input": 2,
        "quantity": "acceleration",
        "sensitivity": USUAL_SENSITIVITY["acceleration"],
    }
    return {"format": 1, "pulse": {"input": 1}, "point": [point]}


def calibrated(table: Mapping[str, Any], method: str, results: Sequence[Calibrated], day: datetime.date) -> Table:
    """The table with what a calibration found, its date and its intervals. Raises HookupError."""
    made = copy.deepcopy(dict(table))
    for result in results:
        entry = next(p for p in made["point"] if p["name"] == result.point)
        several = result.key == "highpass"
        entry[result.key] = list(result.values) if several else result.values[0]
        done = {**entry.get("calibrated", {}), "date": day.isoformat(), "method": method}
        done[f"{result.key}_ci95"] = list(result.ci95) if several else result.ci95[0]
        entry["calibrated"] = done
    hookups.hookup_from(made)
    return made


def remark(hookup: Hookup, number: int, key: str) -> str:
    """What is to be known of a point's value beside it; empty where there is nothing."""
    point = hookup.points[number]
    done = point.table.get("calibrated") or {}
    if (ci95 := done.get(f"{key}_ci95")) is not None:
        told = ", ".join(map(str, ci95)) if isinstance(ci95, list) else str(ci95)
        return f"Calibrated {done.get('date', '')} by {done.get('method', '')}: ± {told}."
    if key == "mount" and point.mount is not None:
        limit = f"Usable to about {USABLE_HZ[point.mount]:g} Hz (rule of thumb)."
        return f"{limit} Too unsteady for vectors: fix the sensor." if point.mount == HAND_PROBE else limit
    if key == "inverted" and point.si_per_reading < 0.0:
        return "Motion towards the sensor's own positive axis is read as negative."
    return ""


def plain(table: Mapping[str, Any]) -> Table:
    """The table with dates as text, as the record and every recording hold them."""
    made = copy.deepcopy(dict(table))
    for entry in made.get("point", []):
        if isinstance(date := entry.get("calibrated", {}).get("date"), datetime.date):
            entry["calibrated"]["date"] = date.isoformat()
    return made


def write(path: Path, table: Mapping[str, Any]) -> None:
    """Write a hook-up file, whole or not at all. Raises HookupError that names the file."""
    import tomli_w

    made = copy.deepcopy(dict(table))
    for entry in made["point"]:
        if "calibrated" not in entry:
            continue
        date = entry["calibrated"].get("date")
        with contextlib.suppress(TypeError, ValueError):  # what is no date stays as it is
            entry["calibrated"]["date"] = datetime.date.fromisoformat(date)
    try:
        tables.write_whole(path, tomli_w.dumps(made).encode())
    except OSError as error:
        raise HookupError(f"{path}: cannot be written: {error.strerror}") from None
