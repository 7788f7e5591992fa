"""Influence coefficients from all runs: v = v0 + H·w by weighted least squares, with the covariance of every unknown.

Each run weighs by its full covariance over points, repeatability included. Masses sit where they sit and not quite where
they were meant: the error of each piece is an unknown with the stated scatter as its prior, the same in every run in
which the piece is on (errors in variables; Gauss-Newton on v0, H and the errors together). The runout of a slow roll has
one error in all runs likewise. Runs before the rotor was cleaned have a v0 of their own and tell H all the same. With as
many runs as unknowns this is the handbook answer to all digits.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.solver.amplitude import fit_amplitudes
from stillshaft.solver.runs import Run, Runs, RunsError

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

_PASSES, _STILL = 20, 1e-10  # of Gauss-Newton, and the step, relative, at which it ends
_MIXES = 4  # the scatter depends on the mix of planes
_FLOOR = 1e-9  # of the largest vector: keeps the weights finite where no scatter is stated


@dataclass(frozen=True)
class Fit:
    """One speed group: `initial` (M,), `influence` (M, P), and how well they are known.

    The unknowns stand point by point, v0 then H of each plane, re then im. Their errors are a part of their own with
    covariance `own`, and `shared` (unknowns, S) times S standard normal errors that all speed groups share: those of
    placed pieces and of the runout. `state` (M,) is what the last run left, smoothed by all runs, with what is on really
    being `on` (P,); its error is that of v0 + H·on and `state_shared` (2M, S) times the shared ones. `last` is the
    group's last run.
    """

    speed_rpm: float
    initial: Complex
    influence: Complex
    own: Real
    shared: Real
    state: Complex
    state_shared: Real
    on: Complex
    last: Run

    @property
    def covariance(self) -> Real:
        """Covariance of all unknowns of this group."""
        return np.asarray(self.own + self.shared @ self.shared.T)


@dataclass(frozen=True)
class Prior:
    """Coefficients known beforehand at one speed: `influence` (M, P) with the covariance of their re and im (2MP, 2MP).

    They stand point by point, plane by plane within it.
    """

    speed_rpm: float
    influence: Complex
    covariance: Real


@dataclass(frozen=True)
class Freed:
    """What a fit may move beside the unknowns, to see whether that explains what does not fit.

    `pieces` are numbers of pieces whose masses are multiplied by one unknown factor; from run `changed_from` on the
    initial state is another one, as it is between runs of unlike `initial_state`.
    """

    pieces: tuple[int, ...] = ()
    changed_from: int | None = None


@dataclass(frozen=True)
class Model:
    """All speed groups fitted together, and how well the runs agree.

    `chi_square` sums the squares of all whitened residuals, errors of the pieces included; `degrees_of_freedom` 0: not
    checkable yet. `scatter_freedom` are the degrees of freedom of the scatter that it is measured by. `factor` is that of
    the freed pieces.
    """

    fits: tuple[Fit, ...]
    chi_square: float
    degrees_of_freedom: int
    scatter_freedom: float
    factor: complex

    @property
    def p_value(self) -> float | None:
        """Probability of runs that agree no better where all is as stated; None while not checkable."""
        if self.degrees_of_freedom <= 0:
            return None
        return probability_of_more(
            self.chi_square, self.degrees_of_freedom, self.scatter_freedom, 2 * self.fits[0].initial.size
        )


@dataclass(frozen=True)
class Significance:
    """Whether a plane's trial says anything: `reason` is None where it does."""

    determined: bool
    reason: str | None


@dataclass(frozen=True)
class Placement:
    """A piece that was put on once: its plane, its mass, the root of its covariance (2, 2), and the runs it was on in."""

    plane: int
    mass: complex
    root: Real
    runs: tuple[int, ...]


def real_form(matrix: Complex) -> Real:
    """Complex (a, b) as real (2a, 2b) that acts on re and im one after the other."""
    real = np.empty((2 * matrix.shape[0], 2 * matrix.shape[1]))
    real[0::2, 0::2], real[0::2, 1::2] = matrix.real, -matrix.imag
    real[1::2, 0::2], real[1::2, 1::2] = matrix.imag, matrix.real
    return real


def as_reals(z: Complex) -> Real:
    """Complex (n,) as re, im, re, im, … (2n,)."""
    return np.column_stack([z.real, z.imag]).ravel()


def as_complex(reals: Real) -> Complex:
    """Re, im, re, im, … along the first axis as complex: undoes `as_reals`."""
    return np.asarray(reals[0::2] + 1j * reals[1::2])


def state_of(fitted: Fit, initial: float, masses: Complex) -> Real:
    """Matrix (2M, unknowns) that turns errors of the unknowns into errors of initial·v0 + H·masses."""
    row = np.concatenate([[complex(initial)], masses])[None, :]
    return np.asarray(np.kron(np.eye(fitted.initial.size), real_form(row)), dtype=np.float64)


def spread(parts: Sequence[tuple[Fit, Real]], others: Real | float = 0.0) -> Real:
    """Covariance of the sum over speed groups of (matrix · errors of the unknowns).

    `others` is a matrix that acts on the shared errors beside them.
    """
    shared = sum((matrix @ f.shared for f, matrix in parts), start=others)
    own = sum(matrix @ f.own @ matrix.T for f, matrix in parts)
    return np.asarray(own + shared @ np.transpose(shared))


def hermitian_scatter(fitted: Fit) -> Complex:
    """E of conj(δx)·δxᵀ for x = (v0, H) of each point, (M, 1 + P, 1 + P): xᴴ·S·x is the scatter of v0 + H·w."""
    points, size = fitted.initial.size, 2 * (1 + fitted.influence.shape[1])
    covariance = fitted.covariance.reshape(points, size, points, size)[np.arange(points), :, np.arange(points), :]
    re, im = covariance[:, 0::2], covariance[:, 1::2]
    return np.asarray(re[:, :, 0::2] + im[:, :, 1::2] - 1j * (im[:, :, 0::2] - re[:, :, 1::2]))


def probability_of_more(chi_square: float, freedom: int, scatter_freedom: float = np.inf, size: int = 1) -> float:
    """Probability of a chi-square at least as large where all is as stated.

    With a covariance of vectors of `size` reals that itself was read from a scatter of so many degrees of freedom it is
    Hotelling's: F = T/d·(ν − size + 1)/ν with d and ν − size + 1 degrees of freedom (any text on multivariate statistics).
    """
    from scipy.special import chdtrc, fdtrc

    left = scatter_freedom - size + 1.0
    if not np.isfinite(scatter_freedom) or left > 1e6:
        return float(chdtrc(freedom, chi_square))
    return float(fdtrc(freedom, max(left, 1.0), chi_square / freedom * max(left, 1.0) / scatter_freedom))


def significance(fits: Sequence[Fit], plane: int) -> Significance:
    """Whether a plane's effect stands out of its scatter (5 % level), alone and apart from the other planes'.

    Where it does not, the 95 % region of its mass has no end.
    """
    others = [p for p in range(fits[0].influence.shape[1]) if p != plane]
    if not _stands_out(fits, plane, []):
        return Significance(False, "its trial moved no point beyond the scatter; use a larger mass")
    if sum(f.initial.size for f in fits) <= len(others):
        return Significance(
            False, "there are fewer points than planes; measure at another point or speed, or correct fewer planes"
        )
    if not _stands_out(fits, plane, others):
        return Significance(
            False,
            "its effect cannot be told from the other planes' beyond the scatter; "
            "use larger trial masses, another point, or fewer planes",
        )
    return Significance(True, None)


def _stands_out(fits: Sequence[Fit], plane: int, others: list[int]) -> bool:
    """True when no mix of the other planes' effects makes this one's within the scatter of all of them."""
    from scipy.special import chdtri

    squared, freedom = effect_against(fits, plane, others)
    return squared > float(chdtri(freedom, 0.05))


def effect_against(fits: Sequence[Fit], plane: int, others: list[int]) -> tuple[float, int]:
    """Smallest squared whitened length of h_p − H_others·c over c, all points and speeds together; degrees of freedom."""
    mix = np.zeros(fits[0].influence.shape[1], dtype=np.complex128)
    mix[plane] = 1.0
    squared = 0.0
    for _ in range(_MIXES):
        rows = []
        for f in fits:
            state = state_of(f, 0.0, mix)
            scatter = state @ f.covariance @ state.T
            rows.append(_whitener(scatter, _floor(f.influence)) @ real_form(f.influence))
        whitened = np.vstack(rows)
        column = whitened[:, 2 * plane]  # re and im of one complex column: its first real column says it all
        apart = column
        if others:
            design = whitened[:, [2 * p + part for p in others for part in (0, 1)]]
            found = np.linalg.lstsq(design, column, rcond=None)[0]
            mix[others] = -(found[0::2] + 1j * found[1::2])
            apart = column - design @ found
        squared = float(apart @ apart)
    return squared, 2 * (sum(f.initial.size for f in fits) - len(others))


def fit(runs: Runs) -> tuple[Fit, ...]:
    """Fit every speed group. Raises RunsError that names the run that is missing."""
    return fit_all(runs).fits


def fit_all(runs: Runs, freed: Freed | None = None, priors: Sequence[Prior] = ()) -> Model:
    """Fit all speed groups together, with what was known of their coefficients beforehand.

    Raises RunsError that names the run that is missing.
    """
    if not runs.planes:
        raise RunsError(f"{runs.path}: plane: there is none; add a [[plane]] for each correction plane")
    members = _groups(runs)
    known = [_prior_for(runs, group, priors) for group in members]
    for group, prior in zip(members, known, strict=True):
        _check_rank([runs.runs[i] for i in group], runs, prior)
    if runs.amplitudes_only:
        return _amplitude_model(runs, members)
    return _Joint(runs, members, known, freed or Freed()).solved()


def placements(runs: Runs) -> tuple[Placement, ...]:
    """Every piece that was put on: one that stays on from run to run, or through a setup, is one placement."""
    found: list[tuple[int, complex, Real, list[int]]] = []
    before: dict[tuple[float, ...], list[int]] = {}
    of_setup: dict[int, dict[tuple[float, ...], list[int]]] = {}
    for number, run in enumerate(runs.runs):
        there: dict[tuple[float, ...], list[int]] = {}
        kept = {k: list(v) for k, v in (of_setup.get(run.setup, before) if run.setup is not None else before).items()}
        for piece in run.pieces:
            if kept.get(piece.identity):
                at = kept[piece.identity].pop(0)
            else:
                at = len(found)
                found.append((piece.plane, piece.mass, _root(piece.covariance), []))
            found[at][3].append(number)
            there.setdefault(piece.identity, []).append(at)
        before = there
        if run.setup is not None:
            of_setup[run.setup] = there
    return tuple(Placement(plane, mass, root, tuple(on)) for plane, mass, root, on in found)


def _root(covariance: NDArray[np.floating[Any]]) -> Real:
    sizes, axes = np.linalg.eigh(covariance)
    return np.asarray(axes * np.sqrt(np.maximum(sizes, 0.0)))


def _groups(runs: Runs) -> list[list[int]]:
    groups: list[list[int]] = []
    for number, run in enumerate(runs.runs):
        for group in groups:
            if abs(run.speed_rpm / runs.runs[group[0]].speed_rpm - 1.0) <= runs.speed_tolerance:
                group.append(number)
                break
        else:
            groups.append([number])
    return groups


def _prior_for(runs: Runs, group: list[int], priors: Sequence[Prior]) -> Prior | None:
    speed_rpm = runs.runs[group[0]].speed_rpm
    near = [p for p in priors if abs(p.speed_rpm / speed_rpm - 1.0) <= runs.speed_tolerance]
    return near[0] if near else None


class _Joint:
    """Gauss-Newton over all groups: each group's unknowns are eliminated, what they share is solved for."""

    def __init__(self, runs: Runs, members: list[list[int]], priors: list[Prior | None], freed: Freed) -> None:
        self.runs, self.members, self.priors, self.freed = runs, members, priors, freed
        self.points, self.planes = len(runs.points), len(runs.planes)
        self.pieces = placements(runs)
        self.measured = np.array([run.vectors for run in runs.runs])
        self.meant = np.array([run.masses for run in runs.runs])
        coupled = any(p is not None for p in priors) or any(_between_points(r.covariance) for r in runs.runs)
        self.blocks = 1 if coupled else self.points
        self.size = 2 * self.points // self.blocks  # reals of a block of points that scatter apart from all others
        self.whiteners = {}
        for group in members:
            floor = _floor(self.measured[group])
            for i in group:
                scatter = runs.runs[i].scatter.reshape(self.blocks, self.size, self.blocks, self.size)
                self.whiteners[i] = np.stack([_whitener(scatter[b, :, b], floor) for b in range(self.blocks)])
        self.moved = np.zeros((len(runs.runs), self.planes), dtype=np.complex128)
        for number in freed.pieces:
            for i in self.pieces[number].runs:
                self.moved[i, self.pieces[number].plane] += self.pieces[number].mass
        # what is shared: two reals a piece, then the runout's, then what is freed and has no prior
        self.of_pieces = 2 * len(self.pieces)
        self.with_prior = self.of_pieces + max((run.runout.shape[1] for run in runs.runs), default=0)
        self.factor_at = self.with_prior
        self.change_at = self.with_prior + (2 if freed.pieces else 0)
        self.changes = self._changes()
        self.shared = self.change_at + 2 * self.points * (1 + max(self.changes.values(), default=-1))

    def _changes(self) -> dict[int, int]:
        """Number of the change of v0, speed by speed, that runs of an earlier initial state than the last have."""
        changes: dict[int, int] = {}
        found: dict[tuple[int, tuple[int, bool]], int] = {}
        for g, group in enumerate(self.members):
            since = self.freed.changed_from
            of = {i: (self.runs.runs[i].initial_state, since is not None and i >= since) for i in group}
            newest = max(of.values())
            for i in group:
                if of[i] != newest:
                    changes[i] = found.setdefault((g, of[i]), len(found))
        return changes

    def solved(self) -> Model:
        """The model at the least sum of squares."""
        unknowns = [self._start(group, prior) for group, prior in zip(self.members, self.priors, strict=True)]
        common = np.zeros(self.shared)
        for _ in range(_PASSES):
            parts = [self._eliminated(g, unknowns[g], common) for g in range(len(self.members))]
            step = self._step(parts, common)
            found = [as_complex(p.solution(step)).reshape(self.points, self.planes + 1) for p in parts]
            moved = max(
                float(np.abs(new - old).max() / max(np.abs(new).max(), 1e-300))
                for new, old in zip(found, unknowns, strict=True)
            )
            unknowns, common = found, common + step
            if not self.shared or max(moved, float(np.abs(step).max(initial=0.0))) < _STILL:
                break
        parts = [self._eliminated(g, unknowns[g], common) for g in range(len(self.members))]
        return self._model(unknowns, common, parts)

    def _start(self, group: list[int], prior: Prior | None) -> Complex:
        """Plain least squares; over what is known beforehand where there is some."""
        if prior is None:
            earlier = sorted({self.changes[i] for i in group if i in self.changes})
            states = np.array([[float(self.changes.get(i, -1) == s) for s in earlier] for i in group])
            masses = np.column_stack([np.ones(len(group)), self.meant[group], states.reshape(len(group), -1)])
            found = np.linalg.lstsq(masses, self.measured[group], rcond=None)[0].T
            return np.asarray(found[:, : self.planes + 1])
        initial = np.mean(self.measured[group] - self.meant[group] @ prior.influence.T, axis=0)
        return np.column_stack([initial, prior.influence])

    def _masses(self, number: int, common: Real) -> Complex:
        """Masses of a run as they really were."""
        masses = self.meant[number].copy()
        for k, piece in enumerate(self.pieces):
            if number in piece.runs:
                error = piece.root @ common[2 * k : 2 * k + 2]
                masses[piece.plane] += complex(error[0], error[1])
        if self.freed.pieces:
            masses += complex(*common[self.factor_at : self.factor_at + 2]) * self.moved[number]
        return np.asarray(masses)

    def _by_pieces(self, number: int, influence: Complex) -> Real:
        """How a run's vectors move with the errors of the pieces (2M, pieces·2)."""
        matrix = np.zeros((2 * self.points, self.of_pieces))
        for k, piece in enumerate(self.pieces):
            if number in piece.runs:
                matrix[:, 2 * k : 2 * k + 2] = real_form(influence[:, [piece.plane]]) @ piece.root
        return matrix

    def _eliminated(self, g: int, unknowns: Complex, common: Real) -> _Part:
        """Rows of a group, linear about what is known now: v − what is shared = row·unknowns + mover·step."""
        influence, prior = unknowns[:, 1:], self.priors[g]
        designs, movers, rights = [], [], []
        for i in self.members[g]:
            row = real_form(np.concatenate([[1.0 + 0.0j], self._masses(i, common)])[None, :])
            design = np.kron(np.eye(self.size // 2), row)
            mover = np.zeros((2 * self.points, self.shared))
            mover[:, : self.of_pieces] = self._by_pieces(i, influence)
            added = np.zeros_like(mover)  # what adds to the vectors by itself, not through a mass
            runout = self.runs.runs[i].runout
            if runout.size:
                added[:, self.of_pieces : self.with_prior] = runout
            if i in self.changes:
                at = self.change_at + 2 * self.points * self.changes[i]
                added[:, at : at + 2 * self.points] = np.eye(2 * self.points)
            mover += added
            if self.freed.pieces:
                mover[:, self.factor_at : self.factor_at + 2] = real_form((influence @ self.moved[i])[:, None])
            right = as_reals(self.measured[i]) - added @ common
            w = self.whiteners[i]
            designs.append(w @ design)
            movers.append(w @ mover.reshape(self.blocks, self.size, self.shared))
            rights.append((w @ right.reshape(self.blocks, self.size, 1))[:, :, 0])
        if prior is not None:
            rows, right = _prior_rows(prior, self.planes)
            designs.append(rows[None])
            movers.append(np.zeros((1, rows.shape[0], self.shared)))
            rights.append(right[None])
        return _Part.of(np.concatenate(designs, 1), np.concatenate(movers, 1), np.concatenate(rights, 1))

    def _step(self, parts: list[_Part], common: Real) -> Real:
        """Step of what is shared: what the groups leave unexplained, and the errors' own scatter."""
        if not self.shared:
            return common
        prior = np.eye(self.with_prior, self.shared)
        rows = np.vstack([*(p.left_mover for p in parts), prior])
        right = np.concatenate([*(p.left_right for p in parts), -common[: self.with_prior]])
        return np.asarray(np.linalg.lstsq(rows, right, rcond=None)[0])

    def _model(self, unknowns: list[Complex], common: Real, parts: list[_Part]) -> Model:
        chi_square = float(np.sum(common[: self.with_prior] ** 2))
        information = np.eye(self.shared)
        information[self.with_prior :] = 0.0
        for x, part in zip(unknowns, parts, strict=True):
            chi_square += float(np.sum(part.rest(as_reals(x.ravel())) ** 2))
            information += part.left_mover.T @ part.left_mover
        root = _root(np.linalg.pinv(information, hermitian=True))
        final = len(self.runs.runs) - 1
        on = self._masses(final, common)
        fits = []
        for group, x, part in zip(self.members, unknowns, parts, strict=True):
            influence = x[:, 1:]
            by_pieces = np.zeros((2 * self.points, self.shared))
            by_pieces[:, : self.of_pieces] = self._by_pieces(final, influence)
            fits.append(
                Fit(
                    float(np.mean([self.runs.runs[i].speed_rpm for i in group])),
                    x[:, 0],
                    influence,
                    part.own(),
                    -part.through @ root,
                    x[:, 0] + influence @ on,
                    by_pieces @ root,
                    on,
                    self.runs.runs[group[-1]],
                )
            )
        known = sum(2 * self.points * self.planes for p in self.priors if p is not None)
        rows = 2 * self.points * len(self.runs.runs) + known
        freedom = rows - 2 * self.points * (self.planes + 1) * len(parts) - (self.shared - self.with_prior)
        factor = 1.0 + complex(*common[self.factor_at : self.factor_at + 2]) if self.freed.pieces else 1.0 + 0.0j
        return Model(tuple(fits), chi_square, freedom, _scatter_freedom(self.runs), factor)


@dataclass(frozen=True)
class _Part:
    """A group's whitened rows (blocks, rows, unknowns), solved: unknowns = top − through·step.

    `left_mover` and `left_right` are what the unknowns cannot take up.
    """

    design: Real
    right: Real
    inverse: Real
    top: Real
    through: Real
    left_mover: Real
    left_right: Real

    @classmethod
    def of(cls, design: Real, mover: Real, right: Real) -> _Part:
        # columns of unlike size (v0 against H per gram) are scaled, or small numbers drown
        scale = np.maximum(np.linalg.norm(design, axis=1, keepdims=True), 1e-300)
        left, sizes, turned = np.linalg.svd(design / scale, full_matrices=False)
        sizes = np.maximum(sizes, 1e-15 * sizes[:, :1])  # what weighs nothing beside the rest becomes wide, not certain
        inverse = (np.swapaxes(turned, 1, 2) / sizes[:, None, :]) @ np.swapaxes(left, 1, 2) / np.swapaxes(scale, 1, 2)
        through = inverse @ mover
        top = inverse @ right[:, :, None]
        return cls(
            design,
            right,
            inverse,
            top.ravel(),
            through.reshape(top.size, mover.shape[2]),
            (mover - design @ through).reshape(right.size, mover.shape[2]),
            (right[:, :, None] - design @ top).ravel(),
        )

    def solution(self, step: Real) -> Real:
        """Unknowns as reals for a step of what is shared."""
        return np.asarray(self.top - self.through @ step)

    def rest(self, unknowns: Real) -> Real:
        """Whitened residuals."""
        blocks, _, columns = self.design.shape
        return np.asarray(self.right - (self.design @ unknowns.reshape(blocks, columns, 1))[:, :, 0])

    def own(self) -> Real:
        """Covariance of the unknowns for given shared errors."""
        from scipy.linalg import block_diag

        return np.asarray(block_diag(*(self.inverse @ np.swapaxes(self.inverse, 1, 2))))


def _prior_rows(prior: Prior, planes: int) -> tuple[Real, Real]:
    """Whitened rows H = what it was before, over the unknowns of all points."""
    points = prior.influence.shape[0]
    columns = [2 * (m * (planes + 1) + 1 + p) + part for m in range(points) for p in range(planes) for part in (0, 1)]
    whitener = _whitener(prior.covariance, _floor(prior.influence))
    rows = np.zeros((2 * points * planes, 2 * points * (planes + 1)))
    rows[:, columns] = whitener
    return rows, whitener @ as_reals(prior.influence.ravel())


def _scatter_freedom(runs: Runs) -> float:
    """Degrees of freedom of the runs' scatter taken together (Satterthwaite 1946)."""
    sizes = np.array([float(np.trace(run.covariance)) for run in runs.runs])
    freedoms = np.array([run.degrees_of_freedom for run in runs.runs])
    weighed = float(np.sum(sizes**2 / freedoms))
    return float(np.sum(sizes)) ** 2 / weighed if weighed > 0.0 else np.inf


def _between_points(covariance: Real) -> bool:
    """True where points scatter together."""
    size = covariance.shape[0]
    return bool(np.any(covariance[~np.kron(np.eye(size // 2), np.ones((2, 2))).astype(bool)]))


def _amplitude_model(runs: Runs, members: list[list[int]]) -> Model:
    fits, total, freedom = [], 0.0, 0
    for group in members:
        chosen = [runs.runs[i] for i in group]
        masses = np.array([np.concatenate([[1.0], run.masses]) for run in chosen])
        floor = _floor(np.array([run.vectors for run in chosen]))
        speed_rpm = float(np.mean([run.speed_rpm for run in chosen]))
        where = f"{runs.path}: at {speed_rpm:.0f} r/min"
        x, covariance, chi_square, free = fit_amplitudes(chosen, masses, runs.placement, floor, where)
        none = np.zeros((covariance.shape[0], 0))
        on = runs.runs[-1].masses
        fits.append(
            Fit(
                speed_rpm, x[:, 0], x[:, 1:], covariance, none,
                x[:, 0] + x[:, 1:] @ on, np.zeros((2 * len(runs.points), 0)), on, chosen[-1],
            )
        )  # fmt: skip
        total, freedom = total + chi_square, freedom + free
    return Model(tuple(fits), total, freedom, np.inf, 1.0 + 0.0j)


def _whitener(covariance: Real, floor: float) -> Real:
    """Matrix that makes this scatter white; `floor` is added to each variance."""
    variances = np.diag(covariance) + floor
    # rounding of fully correlated or very unlike scatters must not make it indefinite
    lifted = covariance + np.diag(floor + 1e-12 * variances)
    return np.asarray(np.linalg.inv(np.linalg.cholesky(lifted)))


def _floor(values: Complex) -> float:
    """Variance that no scatter is taken to be below; above 0 even where all values are tiny or 0."""
    return (_FLOOR * max(1e-100, float(np.abs(values).max()))) ** 2


def misplaced(influence: Complex, placed: Real) -> Real:
    """Covariance over points of what misplaced masses do: one error per plane moves all points."""
    moved = real_form(influence)
    pairs = moved.reshape(moved.shape[0], -1, 2)  # the two columns of each plane
    return np.asarray(np.einsum("apx,pxy,bpy->ab", pairs, placed, pairs))


def _check_rank(group: list[Run], runs: Runs, prior: Prior | None) -> None:
    where = f"{runs.path}: at {np.mean([run.speed_rpm for run in group]):.0f} r/min"
    if prior is not None:
        return
    masses = np.array([np.concatenate([[1.0], run.masses]) for run in group])
    for number, plane in enumerate(runs.planes, start=1):
        if not np.any(masses[:, number]):
            raise RunsError(f'{where} there is no trial run with a mass on plane "{plane.name}"; take one')
    if not any(not np.any(run.masses) for run in group):
        raise RunsError(f"{where} there is no initial run without masses; take one")
    earlier = sorted({run.initial_state for run in group})[:-1]
    states = np.array([[float(run.initial_state == s) for s in earlier] for run in group]).reshape(len(group), -1)
    if np.linalg.matrix_rank(np.column_stack([masses, states])) < masses.shape[1] + len(earlier):
        raise RunsError(f"{where} the runs do not tell the planes apart; take a trial run for each plane alone")
