"""What to check on a machine before it is balanced, and the few judgements that checks need.

The checks are a table, `inspection_checks.toml` beside this file; which fit a machine goes by what the brief says of it.
Whether two initial runs agree is judged on vectors with their covariance; what repeats after a stop and a restart
decides trust, not the scatter within a run. Limits are site rules of the project: common practice, no source.
"""

from __future__ import annotations

import functools
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

import msgspec
import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import tables, vectors
from stillshaft.dsp.units import InputError
from stillshaft.solver import diagnosis_rules
from stillshaft.solver.diagnosis import Evidence, Word

if TYPE_CHECKING:
    from stillshaft.solver.brief import Brief

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

CHECKS = Path(__file__).with_name("inspection_checks.toml")
SETTLED_PERCENT, SETTLED_DEG, SETTLED_S = 2.0, 2.0, 300.0
SPEED_ACCEPTED, SPEED_CAUTION = 0.5, 2.0  # percent between runs
STEADY, UNSTEADY, RESONANT = 2.0, 5.0, 10.0  # percent, and degrees, from run to run: common practice, no source
_DOUBTED, _REFUSED = 0.05, 0.01  # probability of so large a difference
_LEAST_PERCENT, _LEAST_DEG = 0.5, 0.5  # no repeatability is taken to be better
_FEWEST_MOMENTS = 8
_T = 1.96


class InspectionError(InputError):
    """Checks or measurements that cannot be used: the message names the entry and says what would be right."""


@dataclass(frozen=True)
class Check:
    """A check that fits the machine: how to do it, what counts as fine, which evidence it gives, what to beware of."""

    key: str
    title: str
    how: str
    fine: str
    feeds: tuple[str, ...]
    cautions: tuple[str, ...]
    source: str


@dataclass(frozen=True)
class Assumed:
    """Repeatability that is taken until it is known: one standard deviation from run to run, percent and degrees, and why."""

    percent: float
    degrees: float
    why: str

    @property
    def text(self) -> str:
        """Percent and degrees as in a runs file."""
        return f"{self.percent:g} % {self.degrees:g} deg"


@dataclass(frozen=True)
class Repeat:
    """One point of two runs that should be alike: change in percent and degrees with 95 % half widths.

    `verdict` is repeats, doubtful, or does not repeat; `p_value` is the probability of so large a difference by the
    scatter. `repeatability` is the run-to-run deviation that this difference alone would show, percent and degrees.
    """

    point: str
    percent: float
    percent_ci95: float
    turned_deg: float
    turned_ci95_deg: float | None
    p_value: float
    verdict: str
    repeatability: tuple[float, float]


@dataclass(frozen=True)
class Settling:
    """How far 1x moved in the last five minutes, percent and degrees with 95 % half widths.

    `verdict` is settled, moving, or cannot be told, and `reason` says why.
    """

    verdict: str
    percent: float | None
    percent_ci95: float | None
    turned_deg: float | None
    turned_ci95_deg: float | None
    reason: str


@dataclass(frozen=True)
class Likeness:
    """Whether two runs may be held against each other: `verdict` is accepted, caution, or not comparable."""

    verdict: str
    speed_percent: float
    reasons: tuple[str, ...]


class _Check(tables.Strict):
    key: str
    title: str
    how: str
    fine: str
    feeds: list[str]
    cautions: list[str] = []
    applies: dict[str, list[str]] = {}
    source: str | None = None


class _Fact(tables.Strict):
    key: str
    words: list[str]


class _File(tables.Strict):
    format: Literal[1]
    source: str
    cautions: dict[str, list[str]]
    check: list[_Check]
    fact: list[_Fact] = msgspec.field(default_factory=list)


@functools.cache
def _load(path: Path) -> _File:
    try:
        file = tables.checked(tables.read(path), _File)
    except tables.TableError as error:
        message = str(error)
        raise InspectionError(message if message.startswith(str(path)) else f"{path}: {message}") from None
    rules = diagnosis_rules.load_rules()
    words = dict(rules.words) | {f.key: tuple(f.words) for f in file.fact}
    keys = [c.key for c in file.check]
    if doubled := next((k for k in keys if keys.count(k) > 1), None):
        raise InspectionError(f'{path}: check "{doubled}": its key is used twice; each needs its own')
    for check in file.check:
        where = f'{path}: check "{check.key}"'
        for key, wanted in check.applies.items():
            if any(word not in words.get(key, ()) for word in wanted):
                raise InspectionError(f"{where}: {key} = {', '.join(wanted)}: no fact or answer has such words")
        if unknown := next((q for q in check.feeds if q not in rules.quantities), None):
            raise InspectionError(f'{where}: feeds "{unknown}", which the diagnosis does not know')
        if unknown := next((c for c in check.cautions if c not in file.cautions), None):
            raise InspectionError(f'{where}: caution "{unknown}" has no text')
    return file


def checks(facts: Evidence, path: Path = CHECKS) -> tuple[Check, ...]:
    """The checks that fit a machine, in the order of the table; what is not known of it leaves nothing out.

    Raises InspectionError for a table or a fact that cannot be used.
    """
    file = _load(path)
    known = {f.key: f.words for f in file.fact}
    for key, fact in facts.items():
        if key in known and (not isinstance(fact, Word) or fact.word not in known[key]):
            shown = fact.word if isinstance(fact, Word) else fact.value
            raise InspectionError(f'{key}: "{shown}": must be {" or ".join(known[key])}')
    return tuple(
        Check(
            c.key, c.title, c.how, c.fine, tuple(c.feeds), tuple(t for key in c.cautions for t in file.cautions[key]),
            c.source or file.source,
        )
        for c in file.check
        if not any(isinstance(f := facts.get(k), Word) and f.word not in words for k, words in c.applies.items())
    )  # fmt: skip


def facts_from(brief: Brief) -> Evidence:
    """What a brief says in words that diagnosis and checks know; the rest of it stays text for people."""
    words = diagnosis_rules.load_rules().words
    found: dict[str, Word] = {}
    kind = (brief.machine.type or "").lower()
    supply = {True: "variable-speed drive", False: "fixed speed"}
    for key, word in (
        ("rotor", brief.rotor.kind),
        ("drive", brief.drive.kind),
        ("supply", None if brief.drive.variable_speed is None else supply[brief.drive.variable_speed]),
        ("motor", None if brief.drive.line is None and brief.drive.poles is None else "electric"),
        ("machine", None if not kind else "fan" if any(w in kind for w in ("fan", "blower")) else "other"),
        *((k, w) for k, w in brief.interview.items() if w in words.get(k, ())),
    ):
        if word is not None:
            found[key] = Word(word)
    return MappingProxyType(found)


def for_diagnosis(facts: Evidence) -> Evidence:
    """Those of the facts that the diagnosis knows."""
    words = diagnosis_rules.load_rules().words
    return MappingProxyType({key: fact for key, fact in facts.items() if key in words})


# judgements


def assumed_repeatability(facts: Evidence, *, near_resonance: bool) -> Assumed:
    """What to take from run to run until repeated runs show better: a site rule of the project."""
    if near_resonance:
        return Assumed(RESONANT, RESONANT, "a resonance near running speed")
    known = [
        why
        for key, word, why in (
            ("drive", "belt", "belt drive"),
            ("process", "heat", "heat from the process"),
            ("load_test", "follows", "vibration that follows the load"),
        )
        if isinstance(fact := facts.get(key), Word) and fact.word == word
    ]
    if known:
        return Assumed(UNSTEADY, UNSTEADY, ", ".join(known))
    return Assumed(STEADY, STEADY, "neither belt nor heat nor a resonance nearby is known")


def repeated(
    names: Sequence[str],
    first: Complex,
    first_covariance: Real,
    second: Complex,
    second_covariance: Real,
    repeatability: tuple[float, float] = (2.0, 2.0),
) -> tuple[Repeat, ...]:
    """Compare 1x vectors z (M,) of two runs that should be alike, covariances (2M, 2M) of re and im of each point.

    A point is judged by the chi-square of its difference with the covariance of both runs and the repeatability (percent,
    degrees; one standard deviation from run to run) of both. Raises InspectionError for shapes that do not fit.
    """
    count = len(names)
    shapes = [np.shape(a) for a in (first, second, first_covariance, second_covariance)]
    if shapes != [(count,), (count,), (2 * count, 2 * count), (2 * count, 2 * count)]:
        raise InspectionError(
            f"{count} points, but vectors and covariances are of shapes {shapes}: measure the same points"
        )
    found = []
    for i, name in enumerate(names):
        before, after = complex(first[i]), complex(second[i])
        if not before:
            raise InspectionError(f"{name}: the first run shows no 1x at all; check the sensor and repeat it")
        part = slice(2 * i, 2 * i + 2)
        within = np.asarray(first_covariance)[part, part] + np.asarray(second_covariance)[part, part]
        size = abs(before)
        along, across = size * repeatability[0] / 100.0, size * math.radians(repeatability[1])
        whole = within + 2.0 * vectors.along_and_across(before, along, across)
        moved = after - before
        off = np.array([moved.real, moved.imag])
        # two degrees of freedom: exp(−χ²/2)
        p_value = math.exp(-0.5 * float(off @ np.linalg.pinv(whole, hermitian=True) @ off))
        verdict = "repeats" if p_value >= _DOUBTED else "doubtful" if p_value >= _REFUSED else "does not repeat"
        deviation, turned_deviation = vectors.deviations(before, within)
        turned = math.degrees(math.remainder(float(np.angle(after)) - float(np.angle(before)), 2.0 * math.pi))
        percent = 100.0 * (abs(after) / size - 1.0)
        wide = _T * turned_deviation >= size
        found.append(
            Repeat(
                name, percent, 100.0 * _T * deviation / size, turned,
                None if wide else math.degrees(math.asin(_T * turned_deviation / size)), p_value, verdict,
                (max(_LEAST_PERCENT, abs(percent) / math.sqrt(2.0)), max(_LEAST_DEG, abs(turned) / math.sqrt(2.0))),
            )
        )  # fmt: skip
    return tuple(found)


def settling(times_s: Real, z: Complex) -> Settling:
    """Whether 1x has settled: short-time vectors z (K,) at `times_s` of one point, speed and load held.

    Straight lines through amplitude and phase over the last five minutes; the scatter about them, with its memory from
    vector to vector, gives the intervals. Settled where both intervals lie below 2 % and 2°. Raises InspectionError.
    """
    times, vector = np.asarray(times_s, dtype=np.float64), np.asarray(z, dtype=np.complex128)
    if times.shape != vector.shape or times.ndim != 1 or times.size < 2 or not np.all(np.diff(times) > 0.0):
        raise InspectionError(f"{times.size} times for {vector.size} vectors: need as many, two or more, times rising")
    whole_s = float(times[-1] - times[0])
    last = times >= times[-1] - SETTLED_S
    if whole_s < 0.95 * SETTLED_S or np.count_nonzero(last) < _FEWEST_MOMENTS:
        return Settling(
            "cannot be told", None, None, None, None,
            f"{whole_s:.0f} s of vectors, {np.count_nonzero(last)} of them in the last five minutes: need {SETTLED_S:.0f} s "
            f"and {_FEWEST_MOMENTS}; let the machine run on and keep measuring",
        )  # fmt: skip
    mean = complex(vector[last].mean())
    if abs(mean) < 2.0 * float(np.abs(vector[last] - mean).std()) / math.sqrt(np.count_nonzero(last)):
        return Settling(
            "cannot be told", None, None, None, None, "1x is as small as its scatter: there is no phase to follow"
        )
    relative = vector[last] / mean
    percent, percent_half = _movement(times[last], 100.0 * relative.real)
    turned, turned_half = _movement(times[last], np.degrees(relative.imag))
    moved = f"{with_sign(percent, percent_half)} % and {with_sign(turned, turned_half)}°"
    said = f"1x moved by {moved} in five minutes"
    within = [(abs(percent), percent_half, SETTLED_PERCENT), (abs(turned), turned_half, SETTLED_DEG)]
    if all(moved + half < limit for moved, half, limit in within):
        return Settling("settled", percent, percent_half, turned, turned_half, said)
    if any(moved - half > limit for moved, half, limit in within):
        return Settling("moving", percent, percent_half, turned, turned_half, f"{said}: let it run on")
    reason = f"{said}, where 2 % and 2° are the limits: too close to tell; keep measuring"
    return Settling("cannot be told", percent, percent_half, turned, turned_half, reason)


def with_sign(value: float, half: float | None) -> str:
    """A change and its half width, which has two digits whatever its size; one of nothing is not known."""
    if half is None or not half > 0.0:
        return f"{round(value, 1) + 0.0:+.1f} ± ?"
    decimals = max(0, 1 - math.floor(math.log10(float(f"{half:.1e}"))))
    return f"{round(value, decimals) + 0.0:+.{decimals}f} ± {half:.{decimals}f}"


def _movement(times_s: Real, values: Real) -> tuple[float, float]:
    """Change over five minutes by a straight line, and its 95 % half width."""
    from scipy.special import stdtrit

    turned = times_s - times_s.mean()
    slope = float(turned @ values / (turned @ turned))
    left = values - values.mean() - slope * turned
    power = float(left @ left)
    memory = float(left[1:] @ left[:-1]) / power if power > 0.0 else 0.0
    memory = min(0.95, max(0.0, memory + 4.0 / values.size))  # what few values make it look smaller by
    freedom = max(1.0, (values.size - 2) * (1.0 - memory) / (1.0 + memory))
    deviation = math.sqrt(power / max(1, values.size - 2) / float(turned @ turned) * (1.0 + memory) / (1.0 - memory))
    return SETTLED_S * slope, SETTLED_S * float(stdtrit(freedom, 0.975)) * deviation


def likeness(
    first_rpm: float,
    second_rpm: float,
    first: Mapping[str, float | str] = MappingProxyType({}),
    second: Mapping[str, float | str] = MappingProxyType({}),
    tolerances: Mapping[str, float | None] = MappingProxyType({}),
) -> Likeness:
    """Whether two runs were under like conditions: speed, and each condition of `tolerances` that matters.

    A tolerance of None asks for the same word. Speed to 0.5 % is accepted, to 2 % with caution. A condition that was not
    noted is not alike. Raises InspectionError for speeds that cannot be.
    """
    if not (0.0 < first_rpm < math.inf and 0.0 < second_rpm < math.inf):
        raise InspectionError(f"speeds {first_rpm:g} and {second_rpm:g} r/min: must be above 0")
    percent = 100.0 * abs(second_rpm / first_rpm - 1.0)
    said, verdict = [], "accepted"
    if percent > SPEED_CAUTION:
        verdict = "not comparable"
        said.append(f"speeds differ by {percent:.2f} %, limit {SPEED_CAUTION:g} %: not fitted together unless allowed")
    elif percent > SPEED_ACCEPTED:
        verdict = "caution"
        said.append(f"speeds differ by {percent:.2f} %; up to {SPEED_ACCEPTED:g} % is accepted without caution")
    for name, tolerance in tolerances.items():
        a, b = first.get(name), second.get(name)
        if a is None or b is None:
            alike, text = False, "was not noted in both runs"
        elif tolerance is None or isinstance(a, str) or isinstance(b, str):
            alike, text = a == b, f"was {a} and {b}"
        else:
            alike, text = abs(b - a) <= tolerance, f"was {a:g} and {b:g}, tolerance {tolerance:g}"
        if not alike:
            verdict = "not comparable"
            said.append(f"{name} {text}")
    return Likeness(verdict, percent, tuple(said))
