"""Where the true correction lies: the region of masses that the runs do not contradict, by inverting a test.

The true correction solves Hᴴ·(v + H·w) = 0. A mass w is in the 95 % region when v and H need not be moved further than
their scatter allows for that to hold: T is the smallest squared distance, in standard deviations, of what was found from
any v and H for which w is right. The scatter of v + H·w holds that of H times w, so that a trial that said nothing gives a
region without an end, which no plain ± can say. For as many points as planes T is Hotelling's statistic of what would be
left; for one plane and one point the region is that of E. C. Fieller's theorem (1954).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.solver.influence import Fit, real_form

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

_CHI_1_95, _CHI_2_95 = 3.841458820694124, 5.991464547107979  # chi-square of one and two degrees of freedom
_RAYS, _RADII = 16, 1.3 * 1.7 ** np.arange(18)  # in standard deviations from the centre
_PASSES, _STILL = 6, 5e-3  # of Gauss-Newton, and the change of T, relative, at which it ends
_LARGEST = 120  # reals of all points and speeds, above which the region is not worth its time
_REFINED = 2


@dataclass(frozen=True)
class Extent:
    """How far the region of one plane's mass reaches: 95 % intervals of mass and of angle, None where it has no end.

    `angle_deg` counts from the centre's own direction, (lowest, highest); None too where it holds the mass 0.
    `outline` are masses around the 95 % region, none where it has no end.
    """

    mass: tuple[float, float] | None
    angle_deg: tuple[float, float] | None
    outline: Complex
    bounded: bool


class Region:
    """The test for what there is now: `initial` and `influence` of the fits, with their scatter."""

    def __init__(self, fits: Sequence[Fit]) -> None:
        self._base = np.concatenate([f.initial for f in fits])
        self._influence = np.vstack([f.influence for f in fits])
        self.planes, self.points = self._influence.shape[1], self._base.size
        size = 2 * (self.planes + 1)
        self._own = [f.own.reshape(f.initial.size, size, f.initial.size, size) for f in fits]
        self._shared = [f.shared.reshape(f.initial.size, size, f.shared.shape[1]) for f in fits]
        self._column_loads, self._columns_together = self._of_columns()
        scale = max(float(np.abs(self._base).max()), float(np.abs(self._influence).max()))
        self._floor = 1e-24 * scale**2 + 1e-300

    @property
    def too_large(self) -> bool:
        """True where so many points and speeds are tested that it would take too long."""
        return 2 * self.points > _LARGEST

    def statistic(self, masses: Complex) -> Real:
        """T (B,) of candidate masses (B, P): chi-square of 2P degrees of freedom at the true ones."""
        return self._tested(np.atleast_2d(np.asarray(masses, dtype=np.complex128)), [])

    def _of_columns(self) -> tuple[Real, Real]:
        """Shared scatter (P, R, S) and covariance (P, R, P, R) of the columns of H."""
        reals = 2 * self.points
        loads = np.zeros((self.planes, reals, self._shared[0].shape[2]))
        together = np.zeros((self.planes, reals, self.planes, reals))
        row = 0
        for own, shared in zip(self._own, self._shared, strict=True):
            here = slice(row, row + 2 * own.shape[0])
            for p in range(self.planes):
                of_p = slice(2 * p + 2, 2 * p + 4)
                loads[p, here] = shared[:, of_p].reshape(2 * own.shape[0], shared.shape[2])
                for q in range(self.planes):
                    block = own[:, of_p, :, 2 * q + 2 : 2 * q + 4]
                    together[p, here, q, here] = block.reshape(2 * own.shape[0], -1)
            row += 2 * own.shape[0]
        together += np.einsum("pis,qjs->piqj", loads, loads)
        return loads, together

    def _scatter(self, masses: Complex) -> tuple[Real, Real]:
        """Covariance of what candidates leave (B, R, R), and of H's columns with it (B, P, R, R)."""
        count, reals = masses.shape[0], 2 * self.points
        scatter = np.zeros((count, reals, reals))
        loads = np.zeros((count, reals, self._shared[0].shape[2]))
        together = np.zeros((count, self.planes, reals, reals))
        row = 0
        for own, shared in zip(self._own, self._shared, strict=True):
            points = own.shape[0]
            here = slice(row, row + 2 * points)
            state = np.concatenate([np.ones((count, 1)), masses], axis=1)
            turn = np.empty((count, 2, 2 * state.shape[1]))
            turn[:, 0, 0::2], turn[:, 0, 1::2] = state.real, -state.imag
            turn[:, 1, 0::2], turn[:, 1, 1::2] = state.imag, state.real
            unknowns = turn.shape[2]
            # plain matrix products: an einsum of these is ten times as slow
            half = own.reshape(-1, unknowns) @ turn.reshape(-1, unknowns).T
            half = np.moveaxis(half.reshape(points, unknowns, points, count, 2), 3, 0)
            both = turn[:, None] @ half.reshape(count, points, unknowns, 2 * points)
            scatter[:, here, here] = both.reshape(count, 2 * points, 2 * points)
            loads[:, here] = (turn[:, None] @ shared[None]).reshape(count, 2 * points, shared.shape[2])
            for p in range(self.planes):
                of_plane = half[:, :, 2 * p + 2 : 2 * p + 4]
                together[:, p, here, here] = of_plane.reshape(count, 2 * points, 2 * points)
            row += 2 * points
        scatter += loads @ np.swapaxes(loads, 1, 2)
        together += self._column_loads[None] @ np.swapaxes(loads, 1, 2)[:, None]
        diagonal = np.einsum("bii->bi", scatter)
        diagonal += self._floor + 1e-12 * diagonal
        return scatter, together

    def _tested(self, masses: Complex, free: list[int]) -> Real:
        """T (B,) of candidates whose masses on the planes `free` are what speaks least against the others.

        Constrained least squares by Gauss-Newton: v and H move by their covariance times the gradient of the constraint.
        """
        masses = masses.copy()
        count, planes, reals = masses.shape[0], self.planes, 2 * self.points
        found = np.broadcast_to(_interleaved(self._influence.T), (count, planes, reals))  # columns of H
        columns, left, squared = found, np.zeros((count, reals)), np.zeros(count)
        settled = not free and self.points <= planes  # then the constraint is linear, and one pass is exact
        for step in range(1 if settled else _PASSES):
            measured = _interleaved(self._base[None, :] + masses @ self._influence.T)
            scatter, together = self._scatter(masses)
            if step == 0:
                left = measured - self._noise(measured, scatter)
            across = _turned_pair(columns)  # (B, P, 2, R): the columns of the constraint's real form
            weights = np.stack([left, _turned_back(left)], axis=1)  # (B, 2, R): what each column is weighed by
            flat = across.reshape(count, 2 * planes, reals)
            # covariance of the constraint with what is left, and with H's columns
            with_left = flat @ scatter + np.einsum("bci,bpij->bpcj", weights, together).reshape(
                count, 2 * planes, reals
            )
            with_columns = np.einsum("bqdj,bpij->bqdpi", across, together) + np.einsum(
                "bdj,piqj->bqdpi", weights, self._columns_together
            )
            variance = with_left @ np.swapaxes(flat, 1, 2) + np.einsum(
                "bqdpi,bci->bqdpc", with_columns, weights
            ).reshape(count, 2 * planes, 2 * planes)
            moved = _turned_pair(found - columns)
            amiss = np.einsum("bki,bi->bk", flat, measured) + np.einsum("bpci,bi->bpc", moved, left).reshape(count, -1)
            pressed, step_free = _pressed(variance, amiss, flat @ real_form(self._influence[:, free]))
            before, squared = squared, np.einsum("bi,bij,bj->b", pressed, variance, pressed)
            masses[:, free] += step_free[:, 0::2] + 1j * step_free[:, 1::2]
            measured = _interleaved(self._base[None, :] + masses @ self._influence.T)
            left = measured - np.einsum("bk,bkj->bj", pressed, with_left)
            if step and np.all(np.abs(squared - before) <= _STILL * (1.0 + squared)):
                break
            columns = found - np.einsum("bk,bkpi->bpi", pressed, with_columns.reshape(count, 2 * planes, planes, reals))
        return np.asarray(squared)

    def _noise(self, measured: Real, scatter: Real) -> Real:
        """The part of what is left that its scatter explains, for a start."""
        freedom = 2 * (self.points - self.planes)
        if freedom <= 0:
            return measured
        plain = real_form(self._influence)
        back = np.swapaxes(_solved(scatter, np.broadcast_to(plain, (len(measured), *plain.shape))), 1, 2)
        taken = _solved(back @ plain, np.einsum("bij,bj->bi", back, measured))
        beyond = measured - taken @ plain.T
        size = np.einsum("bi,bi->b", beyond, _solved(scatter, beyond))
        return np.asarray(
            measured - beyond * np.sqrt(np.maximum(0.0, 1.0 - freedom / np.maximum(size, 1e-300)))[:, None]
        )

    def extent(self, plane: int, centre: Complex, covariance: Real) -> Extent:
        """Region of one plane's mass around the centre (P,), searched along rays scaled by its covariance (2P, 2P)."""
        at = slice(2 * plane, 2 * plane + 2)
        sizes, axes = np.linalg.eigh(covariance[at, at])
        if not np.all(np.isfinite(sizes)) or sizes[1] <= 0.0:
            return Extent(None, None, np.empty(0, np.complex128), False)
        root = axes * np.sqrt(np.maximum(sizes, 1e-6 * sizes[1]))
        follow = covariance[:, at] @ np.linalg.pinv(covariance[at, at], hermitian=True)
        turns = np.linspace(0.0, 2.0 * np.pi, _RAYS, endpoint=False)
        rays = root @ np.array([np.cos(turns), np.sin(turns)])  # (2, rays)
        along = follow @ rays
        steps = along[0::2] + 1j * along[1::2]  # (P, rays)
        steps[plane] = rays[0] + 1j * rays[1]
        others = [p for p in range(self.planes) if p != plane]

        def tested(radii: Real, rays: NDArray[np.int64]) -> Real:
            """T at a radius on each of some rays."""
            return self._tested(centre[None, :] + radii[:, None] * steps.T[rays], others)

        scanned = np.zeros((_RADII.size, _RAYS))
        within = np.arange(_RAYS)
        for k, radius in enumerate(_RADII):  # outwards, while a ray is in the region
            scanned[k, within] = tested(np.full(within.size, radius), within)
            within = within[scanned[k, within] <= _CHI_2_95]
            if not within.size:
                break
        else:
            return Extent(None, None, np.empty(0, np.complex128), False)
        narrow = centre[plane] + _crossed(tested, scanned, _CHI_1_95) * steps[plane]
        outline = centre[plane] + _crossed(tested, scanned, _CHI_2_95) * steps[plane]
        reach = np.abs(narrow)
        turned = np.angle(narrow / centre[plane]) if centre[plane] else np.full(_RAYS, np.nan)
        # the origin is inside where the outline goes round it
        about = np.angle(np.roll(narrow, -1) / narrow).sum()
        holds_origin = abs(about) > math.pi
        return Extent(
            (0.0 if holds_origin else float(reach.min()), float(reach.max())),
            None if holds_origin or not np.all(np.isfinite(turned)) else _degrees(turned),
            outline,
            True,
        )


def _degrees(turned: Real) -> tuple[float, float]:
    return math.degrees(float(turned.min())), math.degrees(float(turned.max()))


def _interleaved(z: Complex) -> Real:
    """Re, im, re, im, … along the last axis."""
    return np.stack([z.real, z.imag], axis=-1).reshape(*z.shape[:-1], -1)


def _turned_back(reals: Real) -> Real:
    """What a vector is to a column that is turned by 90°."""
    turned = np.empty_like(reals)
    turned[..., 0::2], turned[..., 1::2] = reals[..., 1::2], -reals[..., 0::2]
    return turned


def _turned_pair(columns: Real) -> Real:
    """Columns (…, R) and the same turned by 90° (…, 2, R)."""
    return np.stack([columns, -_turned_back(columns)], axis=-2)


def _pressed(variance: Real, amiss: Real, beside: Real) -> tuple[Real, Real]:
    """Multipliers (B, K) and steps (B, F) of what is free: variance·λ = amiss + beside·step, besideᵀ·λ = 0."""
    count, size, free = beside.shape
    if not free:
        return _solved(variance, amiss), np.zeros((count, 0))
    scale = np.sqrt(np.einsum("bii->bi", variance))
    whole = np.zeros((count, size + free, size + free))
    whole[:, :size, :size] = variance / (scale[:, :, None] * scale[:, None, :])
    # the free steps in units of what they move
    apart = beside / scale[:, :, None]
    unit = np.maximum(np.linalg.norm(apart, axis=1), 1e-300)
    whole[:, :size, size:] = -apart / unit[:, None, :]
    whole[:, size:, :size] = -np.swapaxes(apart / unit[:, None, :], 1, 2)
    right = np.concatenate([amiss / scale, np.zeros((count, free))], axis=1)
    found = _solved(whole, right)
    return found[:, :size] / scale, found[:, size:] / unit


def _solved(matrix: Real, right: Real) -> Real:
    """Solution for stacks of matrices (B, R, R), right sides (B, R) or (B, R, K); least squares where there is none."""
    columns = right[..., None] if right.ndim == matrix.ndim - 1 else right
    try:
        found = np.linalg.solve(matrix, columns)
    except np.linalg.LinAlgError:
        found = np.linalg.pinv(matrix) @ columns
    return np.asarray(found[..., 0] if right.ndim == matrix.ndim - 1 else found)


def _crossed(tested: Callable[[Real, NDArray[np.int64]], Real], scanned: Real, level: float) -> Real:
    """Radius (rays,) at which T first passes a level: from the scanned radii, then by secants of √T."""
    first = np.argmax(scanned > level, axis=0)
    rays = np.arange(scanned.shape[1])
    outer, high = _RADII[first], np.sqrt(scanned[first, rays])
    before = np.maximum(first - 1, 0)
    inner = np.where(first > 0, _RADII[before], 0.0)
    low = np.where(first > 0, np.sqrt(np.maximum(scanned[before, rays], 0.0)), 0.0)
    wanted = math.sqrt(level)

    def between() -> Real:
        return np.asarray(np.clip((wanted - low) / np.maximum(high - low, 1e-300), 0.02, 0.98))

    for _ in range(_REFINED):
        middle = inner + (outer - inner) * between()
        found = np.sqrt(np.maximum(tested(middle, rays), 0.0))
        above = found > wanted
        outer, high = np.where(above, middle, outer), np.where(above, found, high)
        inner, low = np.where(above, inner, middle), np.where(above, low, found)
    return np.asarray(inner + (outer - inner) * between())
