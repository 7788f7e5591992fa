"""Balance jobs on simulated rotors for statistics: three modes, noise by run, errors of weighing and placing.

The physics stand here by themselves: nothing of the solver makes the truth that it is judged by.
"""

from dataclasses import dataclass
from pathlib import Path

import numpy as np
from stillshaft.dsp import vectors
from stillshaft.solver.runs import Piece, Plane, Run, Runs

WEIGHING, ANGLE = 0.01, np.deg2rad(2.0)


@dataclass
class Job:
    """The truth of one rotor, and the runs made on it so far; pieces really sit where `really` says."""

    rng: np.random.Generator
    initial: np.ndarray
    influence: np.ndarray
    noise: float
    floor: float

    def __post_init__(self):
        self.runs, self.on = [], []

    def put_on(self, plane, mass):
        """A piece with its errors of weighing and placing; stays on until taken off."""
        error = (1 + WEIGHING * self.rng.standard_normal()) * np.exp(1j * ANGLE * self.rng.standard_normal())
        self.on.append((plane, complex(mass), complex(mass * error)))

    def take_off(self):
        self.on.clear()

    def really(self):
        total = np.zeros(self.influence.shape[1], complex)
        for plane, _, mass in self.on:
            total[plane] += mass
        return total

    def left(self):
        """True vibration now."""
        return self.initial + self.influence @ self.really()

    def run(self):
        """Measure: amplitude and phase scatter by themselves at each point, and a floor."""
        true = self.left()
        m = true.size
        z = (
            true
            * (1 + self.noise * self.rng.standard_normal(m))
            * np.exp(1j * self.noise * self.rng.standard_normal(m))
        )
        z = z + self.floor * (self.rng.standard_normal(m) + 1j * self.rng.standard_normal(m))
        covariance = np.zeros((2 * m, 2 * m))
        for i, v in enumerate(z):
            here = slice(2 * i, 2 * i + 2)
            covariance[here, here] = vectors.along_and_across(complex(v), self.noise * abs(v), self.noise * abs(v))
            covariance[here, here] += self.floor**2 * np.eye(2)
        meant, pieces = np.zeros(self.influence.shape[1], complex), []
        for plane, mass, _ in self.on:
            meant[plane] += mass
            scatter = vectors.along_and_across(mass, WEIGHING * abs(mass), ANGLE * abs(mass))
            pieces.append(Piece(plane, mass, scatter, (plane, mass.real, mass.imag)))
        self.runs.append(Run(f"run {len(self.runs)}", 1500.0, z, meant, covariance, pieces=tuple(pieces)))

    def file(self):
        points, planes = self.influence.shape
        return Runs(
            Path("job"), tuple(f"point {m}" for m in range(points)),
            tuple(Plane(f"plane {p}", 200.0, None) for p in range(planes)), tuple(self.runs), "mm/s rms", "g", 1e-3, None, (),
            0.02, (WEIGHING, float(ANGLE)), (),
        )  # fmt: skip


def modal(rng, points, planes):
    """Influence (M, P) of a rotor with three modes near running speed, and its initial vibration.

    Most of the unbalance is where the planes are, a tenth of what it makes comes from all along the rotor.
    """
    at, where = np.sort(rng.uniform(0, 1, points)), np.linspace(0.15, 0.85, planes) + 0.05 * rng.standard_normal(planes)
    spread = rng.uniform(0, 1, 6)

    def shapes(x):
        return np.array([np.ones_like(x), 2.0 * x - 1.0, np.sin(np.pi * x) - 0.6])

    ratio = rng.uniform(0.5, 1.6, 3)
    damping = rng.uniform(0.03, 0.15, 3)
    gain = ratio**2 / (1 - ratio**2 + 2j * damping * ratio) * np.array([1.0, 0.8, 0.5])
    tilt = np.exp(1j * rng.uniform(-0.3, 0.3, (points, 3)))  # points in other directions
    seen = shapes(at).T * gain * tilt
    unbalance = rng.standard_normal(6) + 1j * rng.standard_normal(6)
    influence = seen @ shapes(where)
    mostly = influence @ (rng.standard_normal(planes) + 1j * rng.standard_normal(planes))
    rest = seen @ shapes(spread) @ unbalance
    return influence, mostly + 0.1 * rest * rms(mostly) / rms(rest)


def job(seed, planes=None, points=None, noise=None, effect=None):
    """One job: 1 to 4 planes, as many points or more, 1 to 3 % and as many degrees of noise, trials of 0.15 to 1."""
    rng = np.random.default_rng(seed)
    planes = planes or int(rng.integers(1, 5))
    points = points or int(rng.integers(max(2, planes), 9))
    noise = noise or rng.uniform(0.01, 0.03)
    influence, initial = modal(rng, points, planes)
    made = Job(rng, initial, influence, noise, 0.003 * float(np.abs(initial).max()))
    made.effects = [effect or rng.uniform(0.15, 1.0) for _ in range(planes)]
    return made


def trials(made):
    """The initial run and one trial on each plane, taken off again."""
    made.run()
    for plane, effect in enumerate(made.effects):
        size = effect * np.abs(made.initial).max() / np.abs(made.influence[:, plane]).max()
        made.put_on(plane, size * np.exp(2j * np.pi * made.rng.uniform()))
        made.run()
        made.take_off()


def rms(z):
    return float(np.sqrt(np.mean(np.abs(z) ** 2)))
