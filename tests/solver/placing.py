"""Placement jobs for tests, and every combination tried out."""

import itertools

import numpy as np
from stillshaft.dsp import vectors
from stillshaft.solver.placement import Places
from stillshaft.solver.runs import StockMass

SIZES = (2.0, 5.0, 10.0, 15.0, 20.0, 30.0)


def job(seed, planes, positions, points, sizes=SIZES, most=60.0):
    """A random job: base, influence, places with 15 % of the positions blocked, stock."""
    rng = np.random.default_rng(seed)
    influence = rng.standard_normal((points, planes)) + 1j * rng.standard_normal((points, planes))
    wanted = rng.uniform(10.0, most, planes) * np.exp(2j * np.pi * rng.random(planes))
    base = -influence @ wanted
    if points > planes:
        scatter = rng.standard_normal(points) + 1j * rng.standard_normal(points)
        base = base + 0.1 * np.abs(base).max() * scatter
    stock = [StockMass(m, int(rng.integers(2, 7))) for m in sizes]
    grid = 360.0 * np.arange(positions) / positions
    places = [
        Places(tuple(grid[rng.random(positions) > 0.15]), per_position=2, position_cap=40.0) for _ in range(planes)
    ]
    return base, influence, places, stock


def residual(base, influence, pieces):
    """Largest residual of pieces, from their angles."""
    total = base.astype(complex)
    for x in pieces:
        total = total + influence[:, x.plane] * x.mass * x.leverage * vectors.vector(1.0, x.angle_deg)
    return float(np.abs(total).max())


def kept_to(pieces, places, stock):
    """Whether pieces keep to stock, positions and caps."""
    for s in stock:
        if sum(x.mass == s.mass for x in pieces) > s.count:
            return False
    for p, place in enumerate(places):
        own = [x for x in pieces if x.plane == p]
        if sum(abs(x.mass) for x in own) > (place.cap or np.inf) + 1e-9:
            return False
        for k in {x.position for x in own}:
            at = [x for x in own if x.position == k]
            if len(at) > (place.per_position or np.inf) or sum(abs(x.mass) for x in at) > (
                place.position_cap or np.inf
            ):
                return False
    return True


def tried_out(base, influence, places, stock, most):
    """Best largest residual with at most 0, 1, … pieces, by trying every combination."""
    from stillshaft.solver.placement import Placed

    every = [
        Placed(p, k, a, leverage, s.mass)
        for p, place in enumerate(places)
        for k, a in enumerate(place.angles_deg)
        for leverage in place.leverages
        for s in stock
    ]
    effects = np.array([influence[:, x.plane] * x.mass * x.leverage * vectors.vector(1.0, x.angle_deg) for x in every])
    best = [float(np.abs(base).max())]
    for pieces in range(1, most + 1):
        sets = np.array(list(itertools.combinations_with_replacement(range(len(every)), pieces)))
        largest = np.abs(base + effects[sets].sum(axis=1)).max(axis=1)
        order = np.argsort(largest)
        first = next((i for i in order if kept_to([every[j] for j in sets[i]], places, stock)), None)
        best.append(best[-1] if first is None else min(best[-1], float(largest[first])))
    return best
