"""The brief as a person types it: "rotor.mass = 80 kg" becomes a patch, and the brief becomes lines again.

Keys are those of the brief's tables. Entries of lists go by their names: "planes.disc.radius = 310 mm", "abort.fan end
horizontal = 18 mm/s rms", "conditions.load = 5 %", "neighbours.pump = 1465 rpm within 5 rpm"; "stock = 5 g x 10, 10 g x 4"
is written as a whole. An empty value or "nothing" takes an entry out.
"""

from __future__ import annotations

import re
import types
import typing
from collections.abc import Sequence
from typing import Any, Literal

import msgspec
from stillshaft.dsp import units
from stillshaft.dsp.units import InputError, shown
from stillshaft.solver.brief import Brief, Condition, Level, Neighbour, Plane, brief_from, merged

_NAMED: dict[str, tuple[type[msgspec.Struct], str]] = {
    "planes": (Plane, "name"),
    "abort": (Level, "point"),
    "limits": (Level, "point"),
    "conditions": (Condition, "name"),
    "neighbours": (Neighbour, "name"),
}
_NOTHING = ("", "nothing")
_YES, _NO = ("yes", "true", "y"), ("no", "false", "n")
_AMPLITUDE = r"\s*([-+]?\d+(?:\.\d+)?)\s*(.*?)\s*"


class BriefTextError(InputError):
    """An entry of the brief that cannot be read: the message names it and says what would be right."""


def patch_from(text: str, brief: Brief) -> dict[str, Any]:
    """A patch from "key = value". Raises BriefTextError that names the key; values are checked when it is recorded."""
    key, equals, value = (part.strip() for part in text.partition("="))
    if not equals or not key:
        raise BriefTextError(f'"{shown(text)}": write key = value, such as "rotor.mass = 80 kg"')
    table, _, rest = key.partition(".")
    if table in _NAMED and rest:
        return {table: _listed(table, rest, value, brief)}
    if table == "stock" and not rest:
        return {"stock": _stock(value)}
    if table == "interview" and rest:
        return {"interview": {rest: None if value in _NOTHING else value}}
    fields = _hints(Brief)
    inner = fields.get(table)
    if inner is None or table in _NAMED or (rest and not _is_table(inner)):
        raise BriefTextError(f'"{shown(key)}": is no entry of the brief; there is {", ".join(sorted(fields))}')
    if not _is_table(inner):
        return {table: _value(inner, value, key)}
    known = _hints(inner)
    if rest not in known:
        raise BriefTextError(f'"{shown(key)}": is no entry of the brief; {table} has {", ".join(sorted(known))}')
    return {table: {rest: _value(known[rest], value, key)}}


def patch_of(texts: Sequence[str], brief: Brief) -> dict[str, Any]:
    """One patch of several "key = value", each read with those before it. Raises BriefTextError, TableError."""
    whole: dict[str, Any] = {}
    for text in texts:
        patch = patch_from(text, brief)
        brief = brief_from(merged(msgspec.to_builtins(brief), patch))
        for key, value in patch.items():
            before = whole.get(key)
            whole[key] = before | value if isinstance(before, dict) and isinstance(value, dict) else value
    return whole


def _hints(kind: Any) -> dict[str, Any]:
    return typing.get_type_hints(kind)


def _is_table(kind: Any) -> bool:
    return isinstance(kind, type) and issubclass(kind, msgspec.Struct)


def choices(key: str) -> tuple[str, ...]:
    """The words that an entry takes; none where it takes any text or a number."""
    table, _, rest = key.partition(".")
    kind = _hints(Brief).get(table)
    hint = _hints(kind).get(rest) if _is_table(kind) else kind
    return tuple(str(w) for part in (hint, *typing.get_args(hint)) for w in _words(part))


def _words(hint: Any) -> tuple[Any, ...]:
    return typing.get_args(hint) if typing.get_origin(hint) is Literal else ()


def _value(hint: Any, text: str, key: str) -> Any:
    """The text as what the entry holds; None takes it out."""
    if text in _NOTHING:
        return None
    kinds = typing.get_args(hint) if typing.get_origin(hint) in (typing.Union, types.UnionType) else (hint,)
    if words := [w for kind in kinds for w in _words(kind)]:
        fit = [w for w in words if w == text.lower()] or [w for w in words if w.startswith(text.lower())]
        if len(fit) != 1:
            raise BriefTextError(f"{key}: must be {' or '.join(words)}, not {shown(text)}")
        return fit[0]
    if bool in kinds:
        if text.lower() not in (*_YES, *_NO):
            raise BriefTextError(f'{key}: "{shown(text)}": answer yes or no')
        return text.lower() in _YES
    if key.endswith("_rpm"):
        return _speed(text, key)
    if int in kinds and list not in [typing.get_origin(k) for k in kinds]:
        return _number(text, key, whole=True)
    if float in kinds:
        return _number(text, key)
    if list[float] in kinds:  # positions: how many, or their angles
        parts = [p for p in re.split(r"[,;\s]+", text.strip("[] ")) if p]
        return _number(parts[0], key, whole=True) if len(parts) == 1 else [_number(p, key) for p in parts]
    if list[int] in kinds:
        return [_number(p, key, whole=True) for p in re.split(r"[,;\s]+", text.strip("[] ")) if p]
    if list[str] in kinds:
        return [p.strip() for p in text.strip("[] ").split(",") if p.strip()]
    return text


def _speed(text: str, key: str) -> float:
    """A speed, in r/min where no unit stands."""
    return units.speed_rpm(text if re.search(r"[a-zA-Z]", text) else f"{text} rpm", key)


def _number(text: str, key: str, *, whole: bool = False) -> int | float:
    if not re.fullmatch(r"[-+]?\d{1,12}" if whole else r"[-+]?\d{1,12}(?:\.\d{1,12})?", text):
        raise BriefTextError(f'{key}: "{shown(text)}" is no {"whole number" if whole else "number"}')
    return int(text) if whole else float(text)


def _listed(table: str, rest: str, value: str, brief: Brief) -> list[dict[str, Any]]:
    """The whole list with one entry changed, added or taken out."""
    kind, name_key = _NAMED[table]
    entries: list[dict[str, Any]] = [
        {k: v for k, v in msgspec.to_builtins(e).items() if v is not None and v != []} for e in getattr(brief, table)
    ]
    name, patch = (rest, {}) if table != "planes" else (rest.rpartition(".")[0] or rest, {})
    field = rest[len(name) + 1 :] if table == "planes" else ""
    if table == "planes" and field:
        known = _hints(kind)
        if field not in known or field == name_key:
            raise BriefTextError(f'"planes.{shown(rest)}": a plane has {", ".join(sorted(set(known) - {name_key}))}')
        patch = {field: _value(known[field], value, f"planes.{rest}")}
    elif value not in _NOTHING:
        patch = _level(table, name, value)
    others = [e for e in entries if e[name_key] != name]
    if not field and value in _NOTHING:
        return others
    old = next((e for e in entries if e[name_key] == name), {name_key: name})
    changed = {k: v for k, v in (old | patch).items() if v is not None}
    return (
        [changed if e[name_key] == name else e for e in entries] if len(others) < len(entries) else [*entries, changed]
    )


def _level(table: str, name: str, value: str) -> dict[str, Any]:
    """An amplitude with its unit, a condition's tolerance, or a neighbour's speed; a plane that is only named."""
    if table == "planes":
        return {"radius": value}
    if table == "neighbours":
        speed, _, within = (part.strip() for part in value.partition("within"))
        return {"speed_rpm": _speed(speed, f"neighbours.{shown(name)}")} | (
            {"within_rpm": _speed(within, f"neighbours.{shown(name)}, within")} if within else {}
        )
    found = units.whole_match(_AMPLITUDE, value)
    if table == "conditions":
        return {"tolerance": float(found[1]), "unit": found[2] or None} if found else {"tolerance": None}
    if not found or not found[2]:
        raise BriefTextError(
            f'{table}.{shown(name)}: "{shown(value)}": write amplitude and unit, such as "18 mm/s rms"'
        )
    return {"amplitude": float(found[1]), "unit": found[2]}


def _stock(text: str) -> list[dict[str, Any]] | None:
    if text in _NOTHING:
        return None
    pieces = []
    for part in text.split(","):
        found = mass_and_count(part)
        if found is None:
            raise BriefTextError(f'stock: "{shown(part)}": write mass x count, such as "5 g x 10, 10 g x 4"')
        pieces.append({"mass": found[0], "count": found[1]})
    return pieces


def mass_and_count(text: str) -> tuple[str, int] | None:
    """Pieces such as "5 g x 10": the mass of one as it is written, and how many; None where it is no such text."""
    found = units.whole_match(r"\s*(.+?)\s*[x×*]\s*(\d{1,9})\s*", text)
    return None if found is None else (found[1], int(found[2]))


def lines(brief: Brief) -> list[tuple[str, str]]:
    """What was said, as keys and values that `patch_from` reads again."""
    told: list[tuple[str, str]] = []
    for table, value in msgspec.to_builtins(brief).items():
        if isinstance(value, dict):
            told += [(f"{table}.{key}", _shown(entry)) for key, entry in value.items() if entry is not None]
        elif table == "planes":
            for plane in value:
                told += [
                    (f"planes.{plane['name']}.{key}", _shown(entry))
                    for key, entry in plane.items()
                    if key != "name" and entry is not None and entry != []
                ]
        elif table in ("abort", "limits"):
            told += [(f"{table}.{e['point']}", f"{e['amplitude']:g} {e['unit']}") for e in value]
        elif table == "conditions":
            told += [(f"conditions.{e['name']}", _condition(e)) for e in value]
        elif table == "neighbours":
            told += [(f"neighbours.{e['name']}", _neighbour(e)) for e in value]
        elif table == "stock" and value:
            told.append(("stock", ", ".join(f"{e['mass']} x {e['count']}" for e in value)))
        elif value is not None and value != []:
            told.append((table, _shown(value)))
    return told


def _condition(entry: dict[str, Any]) -> str:
    return "the same" if entry["tolerance"] is None else f"{entry['tolerance']:g} {entry['unit'] or ''}".strip()


def _neighbour(entry: dict[str, Any]) -> str:
    within = "" if entry["within_rpm"] is None else f" within {entry['within_rpm']:g} rpm"
    return f"{entry['speed_rpm']:g} rpm{within}"


def _shown(value: Any) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:g}"
    if isinstance(value, list):
        return ", ".join(_shown(v) for v in value)
    return shown(value, 300)
