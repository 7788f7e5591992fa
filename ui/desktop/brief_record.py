"""Entries of the brief as texts of fields, and back: what a field shows, and the patch that records what was typed.

Keys are those of `ui.brief_text`; lists are changed entry by entry and recorded whole. No Qt here.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import UTC, datetime
from typing import Any

import msgspec
from stillshaft.dsp import units
from stillshaft.dsp.units import InputError
from stillshaft.solver.brief import Brief, moment
from stillshaft.ui import brief_text

INCH_UNITS = ("in/s peak", "mil p-p")  # vibration units of those who also measure in inches and pounds
YES, NO = "yes", "no"
_DEFAULTS = {"mass": ("kg", "lb"), "length": ("mm", "in"), "piece": ("g", "oz"), "speed": ("rpm", "rpm")}
_SHOWN_IN = {"mass": ("kg", "lb"), "length": ("mm", "inch"), "piece": ("g", "oz")}
_NAME_KEYS = {"planes": "name", "abort": "point", "limits": "point", "conditions": "name", "neighbours": "name"}


units.parse("1 mm", "mm", "length")  # the units library takes its time: now, on the thread that loads pages


class BriefEntryError(InputError):
    """What was typed cannot be recorded: the message says what would be right."""


def inches(view_unit: str) -> bool:
    """Whether lengths and masses are in inches and pounds, by the vibration unit that is chosen."""
    return view_unit in INCH_UNITS


def with_unit(text: str, kind: str, view_unit: str) -> str:
    """A bare number with the unit of the chosen family; anything else as it stands."""
    try:
        float(text)
    except ValueError:
        return text
    if kind == "vibration":
        return f"{text} {view_unit}"
    return f"{text} {_DEFAULTS[kind][inches(view_unit)]}"


def in_family(text: str, kind: str, view_unit: str) -> str:
    """The value in the chosen family, such as "= 12.2 in"; empty where it is written so, or cannot be read."""
    if kind not in _SHOWN_IN or not text:
        return ""
    unit, shown = _SHOWN_IN[kind][inches(view_unit)], _DEFAULTS[kind][inches(view_unit)]
    try:
        value = units.parse(text, unit, kind)
    except units.UnitError:
        return ""
    told = f"{value:.4g} {shown}"
    written = text.partition(" ")[2].strip() or text.lstrip("+-.0123456789eE").strip()
    return "" if written in (shown, *(("kg", "g") if not inches(view_unit) else ())) else f"= {told}"


def value_text(brief: Brief, key: str) -> str:
    """An entry as its field shows it; empty where nothing was said."""
    table, _, rest = key.partition(".")
    whole = msgspec.to_builtins(brief)[table]
    return _shown(whole if not rest else whole.get(rest), key)


def entry_text(brief: Brief, table: str, name: str, field: str) -> str:
    """A field of a list's entry; for a level or a tolerance, `field` "amplitude" or "tolerance" holds its unit too."""
    entry = next((e for e in _entries(brief, table) if e[_NAME_KEYS[table]] == name), None)
    if entry is None or entry.get(field) in (None, []):
        return ""
    text = _shown(entry[field], field)
    return f"{text} {entry['unit'] or ''}".strip() if field in ("amplitude", "tolerance") else text


def _shown(value: Any, key: str) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return YES if value else NO
    if isinstance(value, float):
        text = f"{value:.10g}"
        return f"{text} r/min" if key.endswith("_rpm") else text
    if isinstance(value, list):
        if key == "stock":
            return ", ".join(f"{e['mass']} x {e['count']}" for e in value)
        return ", ".join(_shown(v, "") for v in value)
    if key == "starts.window_end":
        return _local(value)
    return str(value)


def _local(text: str) -> str:
    try:
        return datetime.fromisoformat(text).astimezone().strftime("%Y-%m-%d %H:%M")
    except ValueError:
        return text


def text_patch(key: str, text: str) -> dict[str, Any]:
    """A patch that takes the text as it stands; an empty one takes the entry out."""
    table, _, rest = key.partition(".")
    value = " ".join(text.split("\r")) or None
    return {table: {rest: value}} if rest else {table: value}


def value_patch(key: str, text: str, brief: Brief) -> dict[str, Any]:
    """A patch for an entry that must be read. Raises BriefEntryError, and the errors of `brief_text`."""
    if key == "goal.grade" and text:
        from stillshaft.solver import limits

        limits.grade_mm_s(text)  # refuses what is no grade
    if key == "starts.window_end" and text:
        return {"starts": {"window_end": moment(text).astimezone(UTC).isoformat(timespec="minutes")}}
    if key.endswith("_rpm"):
        text = text.replace("r/min", "rpm")
    patch = brief_text.patch_from(f"{key} = {text}", brief)
    table, _, rest = key.partition(".")
    value = patch[table].get(rest) if rest else None
    if isinstance(value, int | float) and not isinstance(value, bool) and value < 0.0:
        raise BriefEntryError(f'"{text}" is below 0')
    if key.endswith("_rpm") and value == 0.0:
        raise BriefEntryError("a speed must be above 0")
    return patch


def entry_patch(brief: Brief, table: str, name: str, field: str, text: str) -> dict[str, Any]:
    """The whole list with one field of one entry changed; the entry is added where it is new.

    Raises the errors of `brief_text`.
    """
    key = _NAME_KEYS[table]
    changes: Mapping[str, Any]
    if table == "planes":
        changes = {field: _plane_value(field, text)}
    elif field in ("amplitude", "tolerance"):
        changes = _amount(table, text)
        if table != "conditions" and not changes:
            return removed(brief, table, name)
    else:
        changes = {field: text.strip() or None}
    entries = _entries(brief, table)
    if all(e[key] != name for e in entries):
        if table != "planes" and table != "conditions" and field != "amplitude":
            raise BriefEntryError("give the level first")
        entries.append({key: name})
    return {table: [_plain(e | changes) if e[key] == name else _plain(e) for e in entries]}


def _plane_value(field: str, text: str) -> Any:
    if not text.strip():
        return None
    return brief_text.patch_from(f"planes.x.{field} = {text}", Brief())["planes"][0][field]


def _amount(table: str, text: str) -> dict[str, Any]:
    """Number and unit of a level or a tolerance."""
    if not text.strip():
        return {"tolerance": None, "unit": None} if table == "conditions" else {}
    entry = brief_text.patch_from(f"{table}.x = {text}", Brief())[table][0]
    if table == "conditions" and entry.get("tolerance") is None:
        raise BriefEntryError(f'"{text}" is no tolerance; write for example "5 %", or nothing for “the same words”')
    if table == "conditions" and entry["tolerance"] < 0.0:
        raise BriefEntryError(f'"{text}" is below 0')
    return {k: entry.get(k) for k in ("amplitude", "tolerance", "unit") if k in entry or k == "unit"}


def neighbour_text(brief: Brief, name: str) -> str:
    """The speed of a neighbour and how well it is known, as its field shows it."""
    said = dict(brief_text.lines(Brief(neighbours=[n for n in brief.neighbours if n.name == name])))
    return said.get(f"neighbours.{name}", "").replace("rpm", "r/min")


def neighbour_patch(brief: Brief, name: str, text: str) -> dict[str, Any]:
    """The list with the speed of a neighbour, which is added where it is new; an empty text takes it out.

    Raises BriefEntryError for no name, and the errors of `brief_text`.
    """
    name = " ".join(name.split())
    if not name:
        raise BriefEntryError('write name and speed, such as "pump = 1465 r/min"')
    if not text.strip():
        return removed(brief, "neighbours", name)
    read = brief_text.patch_from(f"neighbours.x = {text.replace('r/min', 'rpm')}", Brief())["neighbours"][0]
    entry = _plain({"within_rpm": None} | read | {"name": name})
    entries = [_plain(e) for e in _entries(brief, "neighbours")]
    if all(e["name"] != name for e in entries):
        return {"neighbours": [*entries, entry]}
    return {"neighbours": [entry if e["name"] == name else e for e in entries]}


def new_neighbour_patch(brief: Brief, text: str) -> dict[str, Any]:
    """The list with one more, from "pump = 1465 r/min". Raises BriefEntryError, and the errors of `brief_text`."""
    name, equals, speed = (part.strip() for part in text.partition("="))
    if not (name and equals and speed):
        raise BriefEntryError('write name and speed, such as "pump = 1465 r/min"')
    if any(n.name == " ".join(name.split()) for n in brief.neighbours):
        raise BriefEntryError(f'"{name}" is there already; give it another name')
    return neighbour_patch(brief, name, speed)


def added(brief: Brief, table: str, name: str) -> dict[str, Any]:
    """The list with an entry more. Raises BriefEntryError for a name that is in use or empty."""
    name = " ".join(name.split())
    if not name:
        raise BriefEntryError("give it a name")
    if any(e[_NAME_KEYS[table]] == name for e in _entries(brief, table)):
        raise BriefEntryError(f'"{name}" is there already; give it another name')
    return {table: [*map(_plain, _entries(brief, table)), {_NAME_KEYS[table]: name}]}


def removed(brief: Brief, table: str, name: str) -> dict[str, Any]:
    """The list without an entry."""
    return {table: [_plain(e) for e in _entries(brief, table) if e[_NAME_KEYS[table]] != name]}


def renamed(brief: Brief, table: str, name: str, new: str) -> dict[str, Any]:
    """The list with an entry under another name. Raises BriefEntryError for a name that is in use or empty."""
    key, new = _NAME_KEYS[table], " ".join(new.split())
    if not new:
        raise BriefEntryError("give it a name")
    if new != name and any(e[key] == new for e in _entries(brief, table)):
        raise BriefEntryError(f'"{new}" is there already; give it another name')
    return {table: [_plain(e | {key: new}) if e[key] == name else _plain(e) for e in _entries(brief, table)]}


def _entries(brief: Brief, table: str) -> list[dict[str, Any]]:
    return [msgspec.to_builtins(e) for e in getattr(brief, table)]


def _plain(entry: Mapping[str, Any]) -> dict[str, Any]:
    return {k: v for k, v in entry.items() if v is not None and v != []}
