"""The brief asked for on the terminal: one question at a time, only those that fit, each answer checked and kept at once.

An empty answer keeps what is known, "?" explains, "nothing" takes an entry out. Where the input ends in the middle, what
was answered is kept; so it is where the person breaks off.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from stillshaft.dsp.units import InputError, shown
from stillshaft.solver.brief import Brief
from stillshaft.ui import brief_text
from stillshaft.ui.session import Session

_MOST_TRIES = 20  # of one question, so that a file of nonsense as input comes to an end


class DialogueError(InputError):
    """An answer that cannot be read: the message says what would be right."""


@dataclass(frozen=True)
class Question:
    """A question: key of the entry that it fills, the question in words, and what "?" says."""

    key: str
    text: str
    why: str


@dataclass(frozen=True)
class Asked:
    """How a dialogue went: entries that were answered, and whether it came to its end."""

    answered: int
    ended: bool


def questions(session: Session) -> Iterator[Question]:
    """The questions that fit the machine, each asked when the answers before it are known."""
    yield Question("machine.name", "Which machine is it?", "The name that its jobs and stored coefficients go by.")
    yield Question(
        "machine.type", "What kind of machine?", "Fan, pump, motor, …: chooses the checks and the usual grade."
    )
    yield Question("machine.place", "Where does it stand?", "So that the next visit finds it.")
    yield Question("rotor.kind", "Is the rotor between bearings or overhung?", "Overhung: the disc sits outside them.")
    yield Question("rotor.mass", "What does the rotor weigh?", 'Such as "80 kg": for trial masses and the tolerance.')
    yield Question(
        "rotor.speed_rpm", "At which speed is it balanced?", "Running speed, r/min; all runs are held to it."
    )
    yield Question(
        "rotor.highest_speed_rpm", "What speed must it never exceed?", "The rotor's limit by its maker, r/min."
    )
    if session.brief.rotor.kind is not None:
        yield Question("rotor.bearing_span", "How far apart are the bearings?", 'Such as "900 mm": for the tolerance.')
        yield Question(
            "rotor.centre_of_mass",
            "How far is the rotor's centre of mass from the first bearing?",
            "Beyond the bearings where the rotor is overhung; shares the tolerance among the planes.",
        )
    yield from _drive(session)
    yield Question(
        "supports.horizontal", "Are the supports rigid or flexible sideways?", "Flexible: springs, or a soft frame."
    )
    yield from _planes(session)
    yield Question("goal.grade", "Which balance grade is asked for?", "Such as G6.3, by contract or for this machine.")
    yield from _levels(session)
    yield Question(
        "starts.allowed", "How many starts are allowed?", "In all, for this job; motors heat up by starting."
    )
    if (session.brief.starts.allowed or 0) > 1:
        yield Question(
            "starts.minutes_between", "How many minutes must lie between two starts?", "By motor or process."
        )
    yield Question(
        "neighbours",
        "What else runs near it, and how fast?",
        'Such as "pump = 1465 rpm, fan 4 = 990 rpm": their frequencies are looked for in the spectrum.',
    )
    yield from _interview(session)


def _drive(session: Session) -> Iterator[Question]:
    yield Question("drive.kind", "What drives it?", "Direct: coupling or the motor's own shaft.")
    if session.brief.drive.kind in ("belt", "gear"):
        yield Question("drive.motor_speed_rpm", "At which speed does the motor run?", "r/min, to know its vibration.")
    if session.brief.drive.kind == "belt":
        yield Question("drive.motor_pulley", "What is the diameter of the motor's pulley?", 'Such as "200 mm".')
        yield Question("drive.rotor_pulley", "What is the diameter of the rotor's pulley?", 'Such as "315 mm".')
        yield Question("drive.belt_length", "How long is the belt?", 'Such as "2240 mm": its own frequency follows.')
    yield Question(
        "drive.variable_speed", "Can its speed be varied (yes or no)?", "Then a fixed setpoint by hand is used."
    )
    yield Question(
        "drive.line", "Which line frequency has its motor?", 'Such as "50 Hz"; empty where the motor is not electric.'
    )
    if session.brief.drive.line is not None:
        yield Question(
            "drive.poles", "How many poles has the motor?", "From its plate, or 120 × Hz / r/min: 2, 4, 6, …"
        )
    if session.brief.drive.variable_speed:
        yield Question(
            "conditions.setpoint",
            "How much may the setpoint differ from run to run?",
            'Such as "0.5 %", noted in each run.',
        )


def _planes(session: Session) -> Iterator[Question]:
    if not session.brief.planes:
        yield Question(
            "planes",
            "Which planes can take mass?",
            "Their names with commas between them, such as: drive side, far side. An overhung disc is one plane at first.",
        )
    for plane in session.brief.planes:
        name = plane.name
        yield Question(
            f"planes.{name}.radius", f'At which radius does a mass sit on "{shown(name)}"?', 'Such as "310 mm".'
        )
        if len(session.brief.planes) > 1:
            yield Question(
                f"planes.{name}.z",
                f'How far is "{shown(name)}" from the first bearing?',
                "Along the shaft; may be below 0.",
            )
        yield Question(
            f"planes.{name}.positions",
            f'How many blades or holes take mass on "{shown(name)}"?',
            "Number 1 at or first after the mark, counted against rotation; empty where any angle serves.",
        )


def _levels(session: Session) -> Iterator[Question]:
    hookup = session.hookup
    for point in () if hookup is None else hookup.points:
        yield Question(
            f"abort.{point.name}",
            f'At which vibration at "{shown(point.name)}" is the machine stopped at once?',
            'Agreed with the owner, such as "25 mm/s rms"; not the alarm limit.',
        )


def _interview(session: Session) -> Iterator[Question]:
    yield Question("interview.wrong", "What is wrong, and since when?", "In the owner's words.")
    yield Question(
        "interview.began", f"How did it begin ({_either('began')})?", "Points to other causes than unbalance."
    )
    yield Question("interview.last_work", f"What was worked on last ({_either('last_work')})?", "The same.")
    yield Question("interview.process", f"What does the process do to the rotor ({_either('process')})?", "The same.")


def _either(key: str) -> str:
    from stillshaft.solver.diagnosis_rules import load_rules

    return ", ".join(load_rules().words[key])


def ask(session: Session, read: Callable[[str], str], tell: Callable[[str], None]) -> Asked:
    """Go through the questions; `read` shows a prompt and gives the answer, raising EOFError where the input ends."""
    answered = 0
    try:
        for question in questions(session):
            answered += _asked(session, question, read, tell)
        answered += _photos(session, read, tell)
    except EOFError:
        tell(f"the input ended in the middle: {_entries(answered)} kept, the rest is as it was")
        return Asked(answered, False)
    return Asked(answered, True)


def _entries(count: int) -> str:
    return "1 answer is" if count == 1 else f"{count} answers are"


def _asked(session: Session, question: Question, read: Callable[[str], str], tell: Callable[[str], None]) -> bool:
    """Ask until the answer can be used; True where something was recorded."""
    said = dict(brief_text.lines(session.brief))
    inner = f"{question.key}."  # of a list that is asked for as a whole
    listed = ", ".join(f"{key.removeprefix(inner)} = {text}" for key, text in said.items() if key.startswith(inner))
    known = said.get(question.key) or listed
    words = brief_text.choices(question.key)
    hint = f" ({', '.join(words)})" if words else ""
    for _ in range(_MOST_TRIES):
        answer = read(f"{question.text}{hint} [{known or '-'}] ").strip()
        if answer == "?":
            tell(question.why)
            continue
        if not answer:
            return False
        try:
            patch = _patch(question.key, _in_its_words(question.key, answer), session.brief)
            session.describe(patch)
        except ValueError as error:
            if not type(error).__module__.startswith("stillshaft."):
                raise
            tell(shown(error, 300))
            continue
        _tell_own_words(session, question.key, tell)
        return True
    raise EOFError


def _words_of(key: str) -> tuple[str, ...]:
    """The words of an answer of the interview that the diagnosis reads; none where it reads none."""
    from stillshaft.solver.diagnosis_rules import load_rules

    table, _, rest = key.partition(".")
    return tuple(load_rules().words.get(rest, ())) if table == "interview" else ()


def _in_its_words(key: str, answer: str) -> str:
    """The word that an answer is the beginning of, where it is that of one only."""
    fit = [word for word in _words_of(key) if word.startswith(answer.lower())]
    return fit[0] if len(fit) == 1 else answer


def _tell_own_words(session: Session, key: str, tell: Callable[[str], None]) -> None:
    """Say that an answer in other words is kept, and that the diagnosis does not read it."""
    words, said = _words_of(key), session.brief.interview.get(key.partition(".")[2])
    if words and said is not None and said not in words:
        tell(f"kept as you say it; the causes are ranked only by: {', '.join(words)}")


def _patch(key: str, answer: str, brief: Brief) -> dict[str, object]:
    if key == "planes":
        return {"planes": [{"name": name.strip()} for name in answer.split(",") if name.strip()]}
    if key == "neighbours":
        parts = [] if answer == "nothing" else answer.split(",")
        if lone := next((part.strip() for part in parts if "=" not in part), None):
            raise DialogueError(f'"{shown(lone)}": write name and speed, such as "pump = 1465 rpm, fan 4 = 990 rpm"')
        alone = [brief_text.patch_from(f"neighbours.{part.strip()}", Brief())["neighbours"] for part in parts]
        return {"neighbours": [entry for entries in alone for entry in entries] or None}
    return brief_text.patch_from(f"{key} = {answer}", brief)


def _photos(session: Session, read: Callable[[str], str], tell: Callable[[str], None]) -> int:
    """Photos as they come, until an empty line."""
    count = 0
    for _ in range(_MOST_TRIES):
        answer = read("Photo of the machine (file name, empty for none): ").strip()
        if not answer:
            break
        try:
            session.add_photo(Path(answer))
            count += 1
        except ValueError as error:
            if not type(error).__module__.startswith("stillshaft."):
                raise
            tell(shown(error, 300))
    return count
