"""Which entries the forms of the brief have, and which of them fit a machine. No Qt here.

Tables of words and limits are read when this is imported: the window loads its pages on a thread.
"""

from __future__ import annotations

import typing
from collections.abc import Callable
from dataclasses import dataclass

from stillshaft.solver import limit_tables
from stillshaft.solver.brief import Brief
from stillshaft.solver.diagnosis_rules import load_rules
from stillshaft.ui import brief_text

TEXT, PAPER, PICK, VALUE = "text", "paper", "pick", "value"  # kinds of fields; a value is read before it is recorded


def _always(_brief: Brief) -> bool:
    return True


@dataclass(frozen=True)
class Entry:
    """An entry of the brief: its key, the name of its field, the field's kind, and when it fits.

    `measure` is what a bare number is taken for: mass, length, piece, speed; `words` are those to choose from.
    """

    key: str
    name: str
    kind: str = TEXT
    example: str = ""
    measure: str = ""
    fits: Callable[[Brief], bool] = _always
    wide: bool = False
    words: tuple[str, ...] = ()


def _drive(*kinds: str) -> Callable[[Brief], bool]:
    return lambda brief: brief.drive.kind in kinds


def _value(
    key: str, name: str, example: str = "", measure: str = "", fits: Callable[[Brief], bool] = _always, *, wide: bool = False
) -> Entry:  # fmt: skip
    return Entry(key, name, VALUE, example and f"such as {example}", measure, fits, wide)


def _pick(key: str, name: str, fits: Callable[[Brief], bool] = _always) -> Entry:
    words = brief_text.choices(key) or ("yes", "no")
    return Entry(key, name, PICK, fits=fits, words=words)


def _answer(key: str, name: str) -> Entry:
    return Entry(f"interview.{key}", name, PICK, words=tuple(load_rules().words[key]), wide=True)


def _several_starts(brief: Brief) -> bool:
    return (brief.starts.allowed or 0) > 1


def _some_starts(brief: Brief) -> bool:
    return brief.starts.allowed is not None


MACHINE = (
    Entry("machine.name", "Name of the machine", example="the name its jobs go by"),
    Entry("machine.type", "Kind of machine", example="fan, pump, motor, …"),
    Entry("machine.place", "Where it stands", example="hall, floor, bay"),
    Entry("machine.owner", "Owner", example="who decides about it"),
    Entry("machine.maker", "Maker", example="on its plate"),
    Entry("machine.serial", "Serial number", example="on its plate"),
    Entry("machine.bearings", "Bearings", example="rolling, sleeve, …"),
    Entry("machine.power", "Power", example="such as 45 kW"),
    Entry("machine.note", "Note on the machine", example="what else is worth knowing", wide=True),
)
ROTOR = (
    _pick("rotor.kind", "Kind of rotor"),
    _value("rotor.mass", "Mass", "80 kg", "mass"),
    _value("rotor.speed_rpm", "Balanced at", "1480 r/min", "speed"),
    _value("rotor.highest_speed_rpm", "Never above", "1600 r/min", "speed"),
    _value("rotor.bearing_span", "Bearing span", "900 mm", "length", lambda b: b.rotor.kind is not None),
    _value(
        "rotor.centre_of_mass", "Centre of mass from first bearing", "400 mm", "length",
        lambda b: b.rotor.kind is not None,
    ),
    Entry("rotor.note", "Note on the rotor", example="material, repairs, old balance masses", wide=True),
)  # fmt: skip
DRIVE = (
    _pick("drive.kind", "Driven by"),
    _value("drive.motor_speed_rpm", "Motor runs at", "1485 r/min", "speed", _drive("belt", "gear")),
    _value("drive.motor_pulley", "Motor's pulley", "200 mm", "length", _drive("belt")),
    _value("drive.rotor_pulley", "Rotor's pulley", "315 mm", "length", _drive("belt")),
    _value("drive.belt_length", "Belt length", "2240 mm", "length", _drive("belt")),
    _pick("drive.variable_speed", "Variable-speed drive"),
    _value("drive.line", "Line frequency", "50 Hz"),
    _value("drive.poles", "Poles of the motor", "4", fits=lambda b: b.drive.line is not None),
    Entry("drive.note", "Note on the drive", example="coupling, number of belts, pulleys in line", wide=True),
)
SUPPORTS = (
    _pick("supports.horizontal", "Horizontally"),
    _pick("supports.vertical", "Vertically"),
    _pick("supports.axial", "Along the shaft"),
    Entry("supports.note", "Note on the supports", example="springs, frame, floor", wide=True),
)
STARTS = (
    _value("starts.allowed", "Starts allowed in all", "6"),
    _value("starts.cold_allowed", "From cold, in a row", "2", "", _some_starts),
    _value("starts.hot_allowed", "From hot, in a row", "1", "", _some_starts),
    _value("starts.minutes_between", "Minutes between two", "30", "", _several_starts),
    _value("starts.coast_down_minutes", "Minutes to coast down", "5"),
    _value("starts.lock_out_minutes", "Minutes to lock out", "10"),
    _value("starts.window_end", "Work must end at", "2026-11-26 17:00"),
)
GOAL = (
    _pick("goal.basis", "Goal set by"),
    _value("goal.grade", "Balance grade", "G6.3"),
    Entry("goal.table", "Limit table and class", PICK, fits=lambda b: b.goal.basis != "contract", wide=True),
    Entry("goal.note", "In words", example="what the owner wants to see", wide=True),
)
STOCK = (_value("stock", "Mass x count", "5 g x 10, 10 g x 4", wide=True),)


INTERVIEW = (
    Entry("interview.wrong", "What is wrong, and since when?", PAPER, "in the owner's words"),
    _answer("began", "How did it begin?"),
    Entry(
        "interview.why_unbalance_is_suspected",
        "Why is unbalance suspected?",
        PAPER,
        "mostly 1x, build-up broke off, …",
    ),
    _answer("last_work", "What was worked on last?"),
    Entry(
        "interview.last_work_by_whom",
        "What was done, when, and by whom?",
        example="in the owner's words",
        wide=True,
    ),
    _answer("process", "What does the process bring the rotor?"),
    Entry(
        "interview.process_in_words",
        "What else does the process do?",
        example="dust, moisture, 180 °C, …",
        wide=True,
    ),
    Entry("interview.how_critical", "How critical is the machine?", example="no spare, the line stops, …", wide=True),
    Entry("interview.time_there_is", "How much time is there?", example="until Friday noon", wide=True),
)


def _limit_tables() -> tuple[str, ...]:
    """Tables of vibration limits with their classes, as the goal names them."""
    found: list[str] = []
    for table in limit_tables.built_in():
        if isinstance(table, limit_tables.VibrationTable):
            classes = dict.fromkeys(c.name for c in table.classes)
            found += [f"{table.name}, {name}" for name in classes] or [table.name]
    return tuple(found)


LIMIT_TABLES = _limit_tables()


def essential(brief: Brief) -> list[str]:
    """What the next stages need and the brief does not say yet, in words."""
    wanted: dict[str, typing.Any] = {
        "the machine's name": brief.machine.name,
        "the kind of rotor": brief.rotor.kind,
        "the rotor's mass": brief.rotor.mass,
        "the speed it is balanced at": brief.rotor.speed_rpm,
        "the drive": brief.drive.kind,
        "a plane that takes mass": brief.planes,
        "the radius of each plane": all(p.radius for p in brief.planes),
        "what is wrong": brief.interview.get("wrong"),
        "a goal or limits": brief.goal.grade or brief.goal.table or brief.goal.note or brief.limits,
    }
    return [name for name, said in wanted.items() if not said]
