"""What the Masses page works with beside the record: pieces that are thought of, and what to expect of them. No Qt here.

All of it comes out of a job's state, so that it can be worked out on a thread while the session goes on.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import units, vectors
from stillshaft.dsp.units import InputError
from stillshaft.solver import consistency, correction, handwork, influence, stored
from stillshaft.solver.brief import Plane
from stillshaft.solver.cautions import running_speed
from stillshaft.solver.correction import Predicted, Solution, Wanted
from stillshaft.solver.influence import Fit, Prior
from stillshaft.solver.runs import Runs
from stillshaft.solver.state import JobState
from stillshaft.solver.stored import Verdict
from stillshaft.solver.trial import centrifugal_force
from stillshaft.ui import job_facts
from stillshaft.ui.job_masses import positions_deg
from stillshaft.ui.report_material import mark_turn_deg
from stillshaft.ui.report_words import figure

Complex = NDArray[np.complex128]

FIXINGS = ("not said", "bolted", "welded", "clamped", "drilled", "ground off")
OFF, STAYS = "all masses off", "added to what is on"
_SAME_G = 1e-3  # masses that differ by less are the same
_AT_A_POSITION_DEG = 0.25


class EntryError(InputError):
    """Something typed that cannot be used: the message says what is kept and what would be right."""


@dataclass(frozen=True)
class Draft:
    """A piece that is thought of and not recorded yet; `mass_g` below 0: metal taken away, `filler_g`: what holds it, weighed.

    `moves` names entry and number of a piece on the rotor that really sits here.
    """

    plane: str
    mass_g: float
    angle_deg: float
    position: int | None = None
    radius_mm: float | None = None
    fixing: str = FIXINGS[0]
    filler_g: float = 0.0
    moves: tuple[int, int] | None = None

    @property
    def total_g(self) -> float:
        """Mass that counts: the piece and what holds it."""
        return self.mass_g + self.filler_g

    def fields(self) -> dict[str, Any]:
        """The piece as the record holds it."""
        more: dict[str, Any] = {"position": self.position, "radius_mm": self.radius_mm}
        more["fixing"] = None if self.fixing == FIXINGS[0] else self.fixing
        if self.filler_g:
            more["note"] = f"{self.mass_g:g} g and {self.filler_g:g} g of filler metal"
        told = {key: value for key, value in more.items() if value is not None}
        return {"plane": self.plane, "mass_g": self.total_g, "angle_deg": self.angle_deg % 360.0} | told


@dataclass(frozen=True)
class Known:
    """What the runs tell; `why` says why there is no solution, `wanted` is what was asked for.

    Angles of solutions count from the first run's mark; one of now comes to it by `turn_deg`.
    """

    wanted: Wanted
    runs: Runs | None
    fits: tuple[Fit, ...]
    solution: Solution | None
    stored: Verdict | None
    priors: tuple[Prior, ...]
    why: str | None
    turn_deg: float = 0.0

    def at_mark(self, angle_deg: float) -> float:
        """An angle that was worked out, counted from the mark as it is now."""
        return (angle_deg - self.turn_deg) % 360.0


@dataclass(frozen=True)
class Expected:
    """Vibration of a point: in the last run, and to be expected with 95 % below `upper95`; `limit` None: none is known."""

    point: str
    unit: str
    now: float
    amplitude: float
    upper95: float
    limit: float | None

    @property
    def words(self) -> str:
        """What it means against the limit."""
        if self.limit is None:
            return "no limit agreed"
        if self.upper95 <= self.limit:
            return "below the limit with 95 %"
        return "above the limit" if self.amplitude > self.limit else "may be above the limit"

    @property
    def words_now(self) -> str:
        """What the last run means against the limit."""
        if self.limit is None:
            return "no limit agreed"
        return "above the limit" if self.now > self.limit else "below the limit"


def work_out(state: JobState, folder: Path, wanted: Wanted) -> Known:
    """Solve the runs that count, with coefficients of an earlier visit where the runs alone do not suffice."""
    runs: Runs | None = None
    try:
        runs = job_facts.runs_for(state, folder)
        path = folder / job_facts.COEFFICIENTS_NAME
        priors: tuple[Prior, ...] = ()
        verdict = None
        if not stored.enough_alone(runs) and path.exists():
            found, remarks = stored.priors_for(stored.load(path), job_facts.machine_of(state), runs)
            priors, verdict = stored.judged(runs, found, doubtful=bool(remarks))
        solution = correction.solve(runs, wanted, priors)
        measured, _ = consistency.with_measured_repeatability(runs)
        fits = influence.fit_all(measured, priors=priors).fits
    except ValueError as error:
        if not type(error).__module__.startswith("stillshaft."):
            raise
        return Known(wanted, runs, (), None, None, (), str(error).removeprefix(f"{state.name}: "))
    return Known(wanted, measured, fits, solution, verdict, priors, None, mark_turn_deg(state))


def of_brief(warnings: Sequence[str]) -> list[str]:
    """What the solver says of its file, which in a job is the brief."""
    return [text.replace("the file does not", "the brief does not") for text in warnings]


def acknowledged_by(state: JobState) -> str:
    """Who acknowledged the cautions before hands go in since the last start or run; empty: nobody."""
    last = max([r.id for r in state.runs] + [s.id for s in state.starts], default=0)
    return next((e.what.who for e in reversed(state.cautions) if e.id > last and _for_hands(e.what.texts)), "")


def _for_hands(texts: Sequence[str]) -> bool:
    from stillshaft.solver import cautions

    wanted = {c.text for c in cautions.before_hands(JobState()) if c.acknowledge}
    return wanted <= set(texts)


def on_now(state: JobState, runs: Runs) -> Complex:
    """Mass vector (P,) of what the record says is on the rotor, at each plane's own radius, in the mass unit of the runs."""
    found = np.zeros(len(runs.planes), dtype=np.complex128)
    names = [p.name for p in runs.planes]
    for on in state.on_rotor:
        if on.piece.plane in names:
            number, angle_deg = names.index(on.piece.plane), on.piece.angle_deg + mark_turn_deg(state, on.of)
            found[number] += _vector(on.piece.mass_g, angle_deg, on.piece.radius_mm, runs, number)
    return found


def _vector(mass_g: float, angle_deg: float, radius_mm: float | None, runs: Runs, plane: int) -> complex:
    own = runs.planes[plane].radius_mm
    leverage = 1.0 if radius_mm is None or own is None else radius_mm / own
    return complex(vectors.vector(0.001 * mass_g / runs.kg_per_mass_unit * leverage, angle_deg))


def last_run_still_on(state: JobState, runs: Runs) -> bool:
    """Whether there is something on, and it is what was on in the last run: only then it can be added to."""
    then, now = runs.runs[-1].masses, on_now(state, runs)
    return bool(np.any(then)) and bool(np.allclose(then, now, rtol=1e-6, atol=_SAME_G))


def expected(known: Known, drafts: Sequence[Draft], *, left_on: bool) -> tuple[Expected, ...]:
    """Vibration with these pieces put on, beside what was on in the last run where that stays."""
    if known.runs is None or not known.fits:
        return ()
    runs = known.runs
    total = runs.runs[-1].masses.copy() if left_on else np.zeros(len(runs.planes), dtype=np.complex128)
    names = [p.name for p in runs.planes]
    for draft in drafts:
        if draft.plane in names:
            number = names.index(draft.plane)
            total[number] += _vector(draft.total_g, draft.angle_deg + known.turn_deg, draft.radius_mm, runs, number)
    return _rows(known, correction.predict(runs, known.fits, total))


def _rows(known: Known, predicted: Sequence[Predicted]) -> tuple[Expected, ...]:
    runs = known.runs
    assert runs is not None
    limits = dict(runs.limits)
    rows = []
    for number, found in enumerate(predicted):
        fitted, point = known.fits[number // len(runs.points)], number % len(runs.points)
        name = found.point if len(known.fits) == 1 else f"{found.point}, {found.speed_rpm:.0f} r/min"
        now = float(abs(fitted.last.vectors[point]))
        rows.append(Expected(name, found.unit, now, found.amplitude, found.amplitude_upper95, limits.get(found.point)))
    return tuple(rows)


def drafts_of(known: Known, *, left_on: bool) -> tuple[Draft, ...]:
    """One piece a plane that does what was worked out, to a tenth of a gram, or two digits of less, and a degree."""
    if known.solution is None or known.runs is None:
        return ()
    grams = 1000.0 * known.runs.kg_per_mass_unit
    found = known.solution.additional if left_on else known.solution.corrections
    return tuple(
        Draft(c.plane, weighable(grams * c.mass), float(round(known.at_mark(c.angle_deg)) % 360)) for c in found
    )


def weighable(mass_g: float) -> float:
    """A mass to a tenth of a gram, or to two digits where it is less than a gram."""
    digits = 1 if abs(mass_g) >= 1.0 or not mass_g else 1 - math.floor(math.log10(abs(mass_g)))
    return round(mass_g, digits)


# what is typed


def plane_of(state: JobState, name: str) -> Plane | None:
    """A plane of the brief by its name."""
    return next((p for p in state.brief.planes if p.name == name), None)


def radius_mm(plane: Plane | None) -> float | None:
    """Radius of a plane in mm; None where the brief does not say."""
    return None if plane is None or plane.radius is None else units.parse(plane.radius, "mm", "radius")


def mass_from(text: str, what: str = "mass") -> float:
    """Grams of a text such as "12.5 g" or "0.4 oz"; a bare number is grams. Raises EntryError."""
    try:
        return 1000.0 * units.parse(_with_unit(text, "g"), "kg", what)
    except units.UnitError:
        raise EntryError(
            f'"{text}" is no {what}: write such as 12.5 g or 0.4 oz, below 0 for metal taken away'
        ) from None


def length_from(text: str, what: str) -> float:
    """Millimetres of a text such as "290 mm" or "11.4 in"; a bare number is mm. Raises EntryError."""
    try:
        value = units.parse(_with_unit(text, "mm"), "mm", what)
    except units.UnitError:
        value = math.nan
    if not 0.0 < value < 1e5:
        raise EntryError(f'"{text}" is no {what}: write such as 290 mm or 11.4 in, above 0')
    return value


def _with_unit(text: str, unit: str) -> str:
    try:
        return f"{float(text.replace(',', '.')):g} {unit}"
    except ValueError:
        return text


def place_from(text: str, plane: Plane, angles: str) -> tuple[float, int | None]:
    """Rotor angle and position of a text such as "137" or "137°", counted as `angles` says, or "position 5" or "no 5".

    Raises EntryError for a place that there is not, or that is blocked.
    """
    said = text.strip().lower()
    at = positions_deg(plane)
    numbered = re.fullmatch(r"(?:position|pos|no|#)(?=[\s.\d])[\s.]*(.*)", said)
    if numbered:
        return _of_number(numbered[1], plane, at)
    try:
        shown = float(said.removesuffix("deg").rstrip("° ").replace(",", "."))
    except ValueError:
        shown = math.nan
    if not math.isfinite(shown) or abs(shown) > 720.0:
        many = "" if at is None else f', or "position 1" to "position {len(at)}"'
        raise EntryError(f'"{text}" is no place: write an angle such as 137°{many}')
    angle = (shown if angles == "against rotation" else -shown) % 360.0
    return angle, position_at(plane, angle)


def _of_number(said: str, plane: Plane, at: tuple[float, ...] | None) -> tuple[float, int]:
    if at is None:
        raise EntryError(f"{plane.name} has no numbered positions: write an angle such as 137°")
    if not said.isdigit() or not 1 <= int(said) <= len(at):
        raise EntryError(f'position "{said}" does not exist on {plane.name}: there are 1 to {len(at)}')
    if int(said) in plane.blocked:
        raise EntryError(f"position {said} on {plane.name} is blocked by the brief: choose another")
    return at[int(said) - 1], int(said)


def position_at(plane: Plane | None, angle_deg: float) -> int | None:
    """Number of the position that is at an angle; None where there is none."""
    at = None if plane is None else positions_deg(plane)
    for number, there in enumerate(at or (), start=1):
        if abs((there - angle_deg + 180.0) % 360.0 - 180.0) <= _AT_A_POSITION_DEG:
            return number
    return None


def neighbours(plane: Plane | None, angle_deg: float, step: int) -> float:
    """The next angle that a piece may go to: by a degree, or to the next position that is not blocked."""
    at = None if plane is None else positions_deg(plane)
    if not at or plane is None:
        return (round(angle_deg) + step) % 360.0
    free = [a for number, a in enumerate(at, start=1) if number not in plane.blocked]
    away = [((a - angle_deg) * step) % 360.0 for a in free]
    ahead = [(d, a) for d, a in zip(away, free, strict=True) if d > _AT_A_POSITION_DEG]
    return min(ahead, default=(0.0, angle_deg))[1]


def nearest(plane: Plane | None, angle_deg: float) -> float:
    """Where a piece dropped at an angle goes: to a whole degree, or to the nearest position that is not blocked."""
    at = None if plane is None else positions_deg(plane)
    if not at or plane is None:
        return round(angle_deg) % 360.0
    free = [a for number, a in enumerate(at, start=1) if number not in plane.blocked] or list(at)
    return min(free, key=lambda a: abs((a - angle_deg + 180.0) % 360.0 - 180.0))


def one_of(drafts: Sequence[Draft], plane: Plane) -> Draft:
    """One piece at the plane's own radius that does what several do. Raises HandworkError without a radius."""
    own = radius_mm(plane) or 1.0
    mass, angle_deg = handwork.one_for_several([(d.total_g, d.angle_deg, d.radius_mm or own) for d in drafts], own)
    return Draft(plane.name, round(mass, 2), angle_deg, position_at(plane, angle_deg), fixing=drafts[0].fixing)


# words


def shown_unit(own: str, wanted: str, speed_rpm: float) -> tuple[float, str]:
    """What a value is multiplied by to be shown in the chosen unit, and that unit; its own where nothing is chosen."""
    if wanted == "as hooked up":
        return 1.0, own
    one, other = units.vibration_unit(own, "unit"), units.vibration_unit(wanted, "unit")
    turned = abs(vectors.quantity_factor(one.quantity, other.quantity, speed_rpm / 60.0))
    return turned * other.per_si_peak / one.per_si_peak, wanted


def force_n(state: JobState, mass_g: float, radius_in_mm: float | None) -> float | None:
    """What a piece pulls at the highest speed the record knows; None where speed or radius is not known."""
    speed = running_speed(state)
    if speed is None or radius_in_mm is None:
        return None
    return centrifugal_force(abs(mass_g) / 1000.0, radius_in_mm / 1000.0, speed)


def force_words(newton: float | None) -> str:
    """A force, and the weight that it is like."""
    if newton is None:
        return "force cannot be told: the brief says no speed or radius"
    return f"{figure(newton)} N ({figure(newton / units.STANDARD_GRAVITY_M_S2)} kgf)"


def place_words(angle_deg: float, position: int | None, angles: str) -> str:
    """A place as the person counts angles."""
    shown = (angle_deg if angles == "against rotation" else -angle_deg) % 360.0
    at = f"{shown:.1f}".removesuffix(".0")
    at = "0" if at == "360" else at
    return f"{at}°" if position is None else f"position {position} ({at}°)"


def short(name: str, most: int = 18) -> str:
    """A name that has room on a button: beginning and end of a long one."""
    return name if len(name) <= most else f"{name[: most - 7]}…{name[-6:]}"


def draft_words(draft: Draft, angles: str) -> str:
    """A piece that is thought of, in words."""
    off = " off" if draft.mass_g < 0.0 else ""
    more = f" + {draft.filler_g:g} g filler" if draft.filler_g else ""
    at = "" if draft.radius_mm is None else f", radius {draft.radius_mm:g} mm"
    fixing = "" if draft.fixing == FIXINGS[0] else f", {draft.fixing}"
    return f"{abs(draft.mass_g):.4g} g{off}{more} at {place_words(draft.angle_deg, draft.position, angles)}{at}{fixing}"
