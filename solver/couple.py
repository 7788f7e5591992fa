"""Fewer unknowns than planes: static and couple parts, one plane alone, and what each would leave.

The unbalances U_p = r_p·w_p of the planes have a resultant, the static part, and a couple. The static part is spread over
the planes so that it makes no couple about the centre of mass; the couple is an opposed pair, which leaves the static part
unchanged. Both are columns of a matrix B of masses (P, k): with w = B·c the influence of c is H·B, and everything that is
known of H is known of H·B. Statics of rigid bodies; the rules of preference are common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp.units import InputError
from stillshaft.solver.capped import AT_CAP, Caps, checked_caps, least_quadratic, stopped
from stillshaft.solver.influence import Fit, as_reals, hermitian_scatter, real_form, significance, state_of

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

STATIC, COUPLE, ALL, IN_TURN = "static part alone", "couple alone", "all planes", "static part, then couple"
_SHRUNK = 0.5  # of the scatter that counts against mass, as for the least expected residual
_NEARLY_AS_GOOD = 1.1  # of the least rms: fewer unknowns win below it; common practice, no source
_OPPOSED = 2.0  # couple over static part, and mass over that of the static part alone; common practice, no source
_ALIKE = 0.8  # share of a direction's unbalance from which on it is called static, or couple


class CoupleError(InputError):
    """Planes that have no static and couple parts: the message says what is missing."""


@dataclass(frozen=True)
class Parts:
    """Static part (the resultant) and couple of two planes, mass·mm; `couple` sits on the first, its opposite on the second.

    `covariance` (4, 4) is of re and im of static, then couple; None where that of the masses is not known.
    """

    static: complex
    couple: complex
    covariance: Real | None


@dataclass(frozen=True)
class Basis:
    """Masses (P, k) that one unit of each unknown puts on the planes, and what to say of how they were chosen."""

    name: str
    columns: Complex
    note: str | None = None


@dataclass(frozen=True)
class Alternative:
    """One way to correct: its masses (P,), their unbalance Σ|w|·r, and the vibration to be expected.

    `expected` (rows,) is the root of E|v + H·w|² of each point and speed, scatter of v, H and placing counted; `rms` is
    that over all rows. `determined` is False where the runs cannot tell its masses, `at_cap` the planes that are stopped.
    """

    name: str
    unknowns: int
    masses: Complex
    unbalance: float
    expected: Real
    rms: float
    determined: bool
    at_cap: tuple[int, ...]
    sentence: str


@dataclass(frozen=True)
class Direction:
    """A mix of the planes' trials (P,), of length 1, and how far its effect stands out of the scatter.

    `strength` is the effect in standard deviations, `needed` what is significant (5 % level). `like` is static, couple or
    mixed; None for other than two planes.
    """

    mix: Complex
    strength: float
    needed: float
    determined: bool
    like: str | None
    sentence: str


@dataclass(frozen=True)
class Proposal:
    """The alternative to prefer and why, one sentence a reason."""

    alternative: Alternative
    reasons: tuple[str, ...]


def shares(planes: int, z_mm: Sequence[float | None] | None = None, centre_mm: float | None = None) -> Real:
    """Unbalance (P, 2) of each plane for one unit of static part and of couple, planes at z, static part at `centre_mm`.

    Least in squares for more than two planes; a unit of couple has the moment of a unit pair on the first and last plane.
    Where a place is not known, the static part is split evenly. Raises CoupleError for planes that carry no couple.
    """
    if planes < 2:
        raise CoupleError(f"static and couple: {planes} planes; two or more are needed")
    places = [None] * planes if z_mm is None else list(z_mm)
    if len(places) != planes or any(z is not None and not math.isfinite(z) for z in places):
        raise CoupleError(f"static and couple: places {places}: give a finite z, or none, for each of {planes} planes")
    known = [z for z in places if z is not None]
    if len(known) < planes:
        if planes > 2:
            raise CoupleError("static and couple: more than two planes need their places along the shaft (z)")
        return np.array([[0.5, 1.0], [0.5, -1.0]])
    z = np.array(known)
    arm = z[0] - z[-1]
    if abs(arm) <= 1e-9 * max(1.0, float(np.abs(z).max())):
        raise CoupleError("static and couple: the first and the last plane are at one place and carry no couple")
    centre = float(z.mean()) if centre_mm is None else centre_mm
    if not math.isfinite(centre):
        raise CoupleError(f"static and couple: centre of mass {centre:g} mm must be finite")
    return np.asarray(np.linalg.pinv(np.vstack([np.ones(planes), (z - centre) / arm])))


def parts_of(
    masses: Complex,
    covariance: Real | None,
    radii_mm: Real,
    z_mm: Sequence[float | None] | None = None,
    centre_mm: float | None = None,
) -> Parts:
    """Static and couple part of the masses (2,) of two planes, with their covariance (4, 4) of re and im carried through."""
    turn = np.linalg.inv(shares(2, z_mm, centre_mm)).astype(np.complex128) * radii_mm
    static, couple = turn @ masses
    moved = real_form(turn)
    return Parts(complex(static), complex(couple), None if covariance is None else moved @ covariance @ moved.T)


def masses_of(
    parts: Parts, radii_mm: Real, z_mm: Sequence[float | None] | None = None, centre_mm: float | None = None
) -> tuple[Complex, Real | None]:
    """Masses (2,) of two planes with this static and couple part, and their covariance (4, 4): undoes `parts_of`."""
    columns = shares(2, z_mm, centre_mm).astype(np.complex128) / radii_mm[:, None]
    return lifted(columns, np.array([parts.static, parts.couple]), parts.covariance)


def lifted(columns: Complex, amounts: Complex, covariance: Real | None = None) -> tuple[Complex, Real | None]:
    """Masses (P,) of the unknowns (k,) of a basis, and their covariance (2P, 2P) from (2k, 2k)."""
    moved = real_form(columns)
    return columns @ amounts, None if covariance is None else moved @ covariance @ moved.T


def restricted(fitted: Fit, columns: Complex, *, from_last: bool = False) -> Fit:
    """The fit with the unknowns of a basis (P, k) for planes: influence H·B, and all scatter carried through.

    It starts from the initial state, or with `from_last` from what the last run left, with its masses staying on.
    """
    points, planes = fitted.influence.shape
    on = fitted.on if from_last else np.zeros(planes, dtype=np.complex128)
    turn = np.zeros((1 + columns.shape[1], 1 + planes), dtype=np.complex128)
    turn[0, 0], turn[0, 1:], turn[1:, 1:] = 1.0, on, columns.T
    mover = np.kron(np.eye(points), real_form(turn))
    shared = mover @ fitted.shared
    base = fitted.initial
    if from_last:
        base = fitted.state
        first = np.arange(points)[:, None] * 2 * turn.shape[0] + np.arange(2)
        shared[first.ravel()] += fitted.state_shared
    return replace(
        fitted,
        initial=base,
        influence=fitted.influence @ columns,
        own=mover @ fitted.own @ mover.T,
        shared=shared,
        state=base,
        state_shared=np.zeros_like(fitted.state_shared),
        on=np.zeros(columns.shape[1], dtype=np.complex128),
    )


def bases(
    names: Sequence[str], radii_mm: Real, z_mm: Sequence[float | None] | None = None, centre_mm: float | None = None
) -> tuple[Basis, ...]:
    """What may be tried with these planes: each alone, the static part alone, the couple alone, all planes.

    Static part and couple are in mass·mm; they are left out where the planes have none. Without radii give ones.
    """
    planes = len(names)
    alone = [
        Basis(f'plane "{name}" alone', np.eye(planes, dtype=np.complex128)[:, p : p + 1])
        for p, name in enumerate(names)
    ]
    if planes == 1:
        return tuple(alone)
    split: list[Basis] = []
    try:
        columns = shares(planes, z_mm, centre_mm).astype(np.complex128) / np.asarray(radii_mm)[:, None]
    except CoupleError:
        columns = None
    if columns is not None:
        note = None
        if z_mm is None or any(z is None for z in z_mm):
            note = "split evenly over the planes: their places along the shaft (z) are not given"
        elif centre_mm is None:
            note = "taken at the middle of the planes: the centre of mass is not given"
        split = [Basis(STATIC, columns[:, :1], note), Basis(COUPLE, columns[:, 1:])]
    return (*alone, *split, Basis(ALL, np.eye(planes, dtype=np.complex128)))


def ranked(
    fits: Sequence[Fit],
    choices: Sequence[Basis],
    placement: tuple[float, float],
    radii_mm: Real,
    *,
    caps: Caps | None = None,
    from_last: bool = False,
    shrunk: float = _SHRUNK,
    unit: str = "g mm",
) -> tuple[Alternative, ...]:
    """What each choice would leave, the least rms first; `placement` as standard deviations, relative and in rad.

    Masses are those of the least expected residual with the scatter counted by `shrunk` (0: least squares), within caps;
    what is to be expected counts it whole, and is on the high side where the planes can remove nearly all (rms up to 1.5
    times what came out over simulated jobs). Where static part and couple are among the choices, the couple that is added
    to the static part alone is ranked too. Raises CoupleError for caps on a basis whose unknowns share a plane.
    """
    case = _case(fits, placement, checked_caps(caps, fits[0].influence.shape[1]), from_last, shrunk)
    still = np.zeros(case.caps.size, dtype=np.complex128)
    found: dict[str, Alternative] = {}
    for basis in choices:
        masses = _least(case, basis, still)
        if masses is not None:
            determined = _determined(fits, basis)
            found[basis.name] = _alternative(case, basis, masses, basis.columns.shape[1], determined, radii_mm, unit)
    pair = next((b for b in choices if b.name == COUPLE), None)
    if pair is not None and STATIC in found:
        masses = _least(case, pair, found[STATIC].masses)
        if masses is not None:
            determined = found[STATIC].determined and found[COUPLE].determined
            in_turn = replace(pair, name=IN_TURN)
            found[IN_TURN] = _alternative(case, in_turn, masses, 2, determined, radii_mm, unit)
    return tuple(sorted(found.values(), key=lambda a: a.rms))


def directions(
    fits: Sequence[Fit],
    trials: Real,
    radii_mm: Real,
    z_mm: Sequence[float | None] | None = None,
    centre_mm: float | None = None,
) -> tuple[Direction, ...]:
    """Mixes of the planes from the one the runs know best to the one they know least, `trials` (P,) their trial masses.

    Singular directions of the whitened effects of the trials; each is judged against its own scatter, free to be the
    weakest mix beside the stronger ones (chi-square, 5 %).
    """
    from scipy.special import chdtri

    planes = fits[0].influence.shape[1]
    points = sum(f.initial.size for f in fits)
    rows = []
    for f in fits:
        effects = [_lifted(_complex_scatter(f, alone)) for alone in np.diag(trials.astype(np.complex128))]
        mean = np.mean(effects, axis=0)
        rows.append(np.linalg.solve(np.linalg.cholesky(mean), f.influence * trials))
    _, _, turned = np.linalg.svd(np.vstack([*rows, np.zeros((planes, planes))]), full_matrices=False)
    listed = []
    for k, mix in enumerate(turned.conj()):
        mix = mix / (mix[np.argmax(np.abs(mix))] / np.abs(mix).max())  # the largest share at 0°
        strength = math.sqrt(sum(_squared_effect(f, mix * trials) for f in fits))
        freedom = 2 * (points - k)
        needed = math.sqrt(float(chdtri(freedom, 0.05))) if freedom > 0 else math.inf
        like = _likeness(mix * trials * radii_mm, z_mm, centre_mm) if planes == 2 else None
        known = strength > needed
        what = f"a {like} part" if like in ("static", "couple") else f"mix {k + 1} of the planes"
        verb = "tell" if known else "do not tell"
        said = f"the runs {verb} {what}: its effect is {strength:.1f} standard deviations, {needed:.1f} are needed"
        if freedom <= 0:
            said = f"the runs cannot tell {what}: there are fewer points than planes"
        listed.append(Direction(mix, strength, needed, known, like, said))
    return tuple(listed)


def proposal(
    ranking: Sequence[Alternative],
    *,
    kind: str = "between bearings",
    goal: float | None = None,
    far: Sequence[int] = (),
    parts: Parts | None = None,
) -> Proposal | None:
    """Which alternative to prefer, by the rules of practice; None where the runs determine none of them.

    `kind` is that of the rotor, `goal` the amplitude that each row shall stay below, `far` the rows of axial and far-bearing
    points, `parts` the static part and couple of the masses for all planes.
    """
    able = [a for a in ranking if a.determined]
    if not able:
        return None
    if kind == "overhung" and len(able[0].masses) > 1:
        return _overhung(able, goal, far, parts)
    best = able[0]
    enough = [
        a for a in able if a.rms <= _NEARLY_AS_GOOD * best.rms or (goal is not None and float(a.expected.max()) <= goal)
    ]
    chosen = min(enough, key=lambda a: (a.unknowns, a.rms))
    reasons = [chosen.sentence]
    if chosen is not best:
        reasons.append(f"{best.name} would leave little less, with {_times(best, chosen)} the mass")
    return Proposal(chosen, tuple(reasons))


def _overhung(able: list[Alternative], goal: float | None, far: Sequence[int], parts: Parts | None) -> Proposal:
    """One plane first for a disc; a couple only where axial or far-bearing vibration stays above the goal."""
    simple = [a for a in able if a.unknowns == 1 and a.name != COUPLE]
    more = [a for a in able if a.unknowns > 1]
    if not simple:
        return Proposal(able[0], (able[0].sentence, "neither one plane nor the static part alone is determined"))
    first = simple[0]
    static = next((a for a in simple if a.name == STATIC), first)
    left = float(first.expected[list(far)].max()) if far else None
    if left is None or goal is None or left <= goal or not more:
        why = "overhung: one plane, or the static part, first"
        if left is not None and goal is not None and left > goal:
            why += "; the couple that the axial or far-bearing vibration asks for is not determined"
        elif left is not None and goal is not None:
            why += f"; axial and far-bearing vibration is expected to stay at {left:.3g}, within the goal of {goal:g}"
        else:
            why += "; a couple only if axial or far-bearing vibration stays above the goal"
        return Proposal(first, (first.sentence, why))
    whole = next((a for a in more if a.name == ALL), more[0])
    if (
        parts is not None
        and abs(parts.couple) > _OPPOSED * abs(parts.static)
        and whole.unbalance > _OPPOSED * static.unbalance
    ):
        return Proposal(
            static,
            (
                static.sentence,
                f"overhung: all planes would take large opposed masses, {_times(whole, static)} as much; the static part "
                "alone first, then measure",
            ),
        )
    pair = next((a for a in more if a.name == IN_TURN), whole)
    return Proposal(
        pair,
        (
            pair.sentence,
            f"overhung: {first.name} would leave {left:.3g} at an axial or far-bearing point, above the goal of {goal:g}; "
            "the couple is added as an opposed pair that leaves the static part unchanged",
        ),
    )


def _times(more: Alternative, less: Alternative) -> str:
    return f"{more.unbalance / less.unbalance:.1f} times" if less.unbalance > 0.0 else "many times"


@dataclass(frozen=True)
class _Case:
    """All points and speeds: `rows` (M, 1 + P) v and H, `scatter` (M, 1 + P, 1 + P) of each, placing included.

    `quadratic` is what is made least: xᴴQx, x = (1, w).
    """

    rows: Complex
    scatter: Complex
    quadratic: Complex
    caps: Real


def _case(fits: Sequence[Fit], placement: tuple[float, float], caps: Real, from_last: bool, shrunk: float) -> _Case:
    based = [restricted(f, np.eye(caps.size, dtype=np.complex128), from_last=from_last) for f in fits]
    rows = np.vstack([np.column_stack([f.initial, f.influence]) for f in based])
    scatter = np.concatenate([hermitian_scatter(f) for f in based])
    for p in range(caps.size):
        scatter[:, 1 + p, 1 + p] += (placement[0] ** 2 + placement[1] ** 2) * np.abs(rows[:, 1 + p]) ** 2
    return _Case(rows, scatter, rows.conj().T @ rows + shrunk * scatter.sum(axis=0), caps)


def _least(case: _Case, basis: Basis, start: Complex) -> Complex | None:
    """Masses (P,) start + B·c of the least quadratic; None where a cap leaves no room for what is added to a start."""
    planes, unknowns = basis.columns.shape
    turn = np.zeros((1 + planes, 1 + unknowns), dtype=np.complex128)
    turn[0, 0], turn[1:, 0], turn[1:, 1:] = 1.0, start, basis.columns
    inner = turn.conj().T @ case.quadratic @ turn
    amounts = [None] * unknowns if np.any(start) else amount_caps(basis, case.caps)
    gram = 0.5 * (inner[1:, 1:] + inner[1:, 1:].conj().T)
    masses: Complex = start + basis.columns @ least_quadratic(gram, inner[1:, 0], amounts).masses
    return None if np.any(np.abs(masses) > case.caps * (1.0 + AT_CAP)) else masses


def _alternative(
    case: _Case, basis: Basis, masses: Complex, unknowns: int, determined: bool, radii_mm: Real, unit: str
) -> Alternative:
    x = np.concatenate([[1.0], masses])
    scattered = np.real(np.einsum("i,mij,j->m", x.conj(), case.scatter, x))
    squares = np.abs(case.rows @ x) ** 2 + np.maximum(scattered, 0.0)
    rms, before = (math.sqrt(float(np.mean(s))) for s in (squares, np.abs(case.rows[:, 0]) ** 2))
    needed = float(np.abs(masses) @ radii_mm)
    at_cap = stopped(masses, case.caps)
    said = f"{basis.name}: {100.0 * rms / (before or 1.0):.0f} % of the vibration is to be expected"
    said += f", with {needed:.4g} {unit} in all"
    if at_cap:
        said += ", as much as the caps allow"
    if basis.note is not None:
        said += f"; {basis.note}"
    if not determined:
        said += "; not determined: the runs do not tell its effect from the scatter"
    return Alternative(basis.name, unknowns, masses, needed, np.sqrt(squares), rms, determined, at_cap, said)


def _determined(fits: Sequence[Fit], basis: Basis) -> bool:
    parts = tuple(restricted(f, basis.columns) for f in fits)
    return all(significance(parts, k).determined for k in range(basis.columns.shape[1]))


def amount_caps(basis: Basis, caps: Real) -> list[float | None]:
    """Caps of the unknowns that keep the planes within theirs."""
    loads = np.abs(basis.columns)
    if np.isfinite(caps).any() and np.any(np.count_nonzero(loads[np.isfinite(caps)], axis=1) > 1):
        raise CoupleError(f"{basis.name}: its unknowns share a plane that has a cap; solve it without caps")
    listed: list[float | None] = []
    for load in loads.T:
        most = float(np.min(caps[load > 0.0] / load[load > 0.0], initial=math.inf))
        listed.append(most if math.isfinite(most) else None)
    return listed


def _complex_scatter(fitted: Fit, masses: Complex) -> Complex:
    """E of δ·δᴴ (M, M), δ the error of H·masses."""
    state = state_of(fitted, 0.0, np.asarray(masses, dtype=np.complex128))
    real = state @ fitted.covariance @ state.T
    re, im = real[0::2], real[1::2]
    return np.asarray(re[:, 0::2] + im[:, 1::2] + 1j * (im[:, 0::2] - re[:, 1::2]))


def _squared_effect(fitted: Fit, masses: Complex) -> float:
    """Squared length of H·masses in standard deviations of its own scatter."""
    state = state_of(fitted, 0.0, masses)
    scatter = _lifted((state @ fitted.covariance @ state.T).astype(np.complex128)).real
    effect = as_reals(fitted.influence @ masses)
    return max(0.0, float(effect @ np.linalg.solve(scatter, effect)))  # rounding of what is huge may turn it negative


def _lifted(covariance: Complex) -> Complex:
    """The covariance with a trace of scatter everywhere, so that it can be inverted."""
    diagonal = np.real(np.diag(covariance))
    return covariance + np.diag(1e-12 * diagonal + 1e-15 * float(diagonal.max()) + 1e-300)


def _likeness(unbalances: Complex, z_mm: Sequence[float | None] | None, centre_mm: float | None) -> str:
    """Static, couple or mixed, by which part holds most of the planes' unbalance."""
    split = shares(2, z_mm, centre_mm)
    amounts = np.linalg.solve(split.astype(np.complex128), unbalances)
    sizes = [float(np.linalg.norm(split[:, k] * amounts[k])) for k in (0, 1)]
    share = sizes[0] ** 2 / (sizes[0] ** 2 + sizes[1] ** 2)
    return "static" if share >= _ALIKE else "couple" if share <= 1.0 - _ALIKE else "mixed"
