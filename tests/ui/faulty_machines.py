"""Simulated machines, each with one fault, and what is measured on them: for the tests of the diagnosis.

Sizes are the project's own choice of a clear case, drawn about it by the seed. Accelerations in m/s², 1x of 1 mm/s rms at
1480 r/min being 0.22 m/s².
"""

from dataclasses import dataclass, replace

import numpy as np
from stillshaft.acquire import hookup as hookups
from stillshaft.acquire import simulated
from stillshaft.acquire.conditions import Conditions, PulseFaults
from stillshaft.dsp import candidates, content, measure, ringdown, spectrum, standing
from stillshaft.solver import diagnosis, evidence

RATE_HZ = 8000.0
SPEED_RPM = 1480.0
RUNNING_HZ = SPEED_RPM / 60.0
FACTS = {"rotor": "between bearings", "drive": "direct", "motor": "electric"}
LINE = candidates.Candidate("line frequency", 3000.0, 3.0)
BELT = candidates.Candidate("belt", 613.0, 2.0)
MOTOR = candidates.Candidate("motor pulley", 1105.0, 3.0)
SENSORS = (
    simulated.Sensor("drive end horizontal", 0, 90.0),
    simulated.Sensor("drive end vertical", 0, 0.0),
    simulated.Sensor("far end horizontal", 1, 270.0),  # on the other side
    simulated.Sensor("far end vertical", 1, 0.0),
    simulated.Sensor("drive end axial", 0, 0.0, height_m=0.1),
    simulated.Sensor("far end axial", 1, 0.0, height_m=0.1),
)
PLACES = tuple(
    evidence.Place(s.name, " ".join(s.name.split()[:2]), None if s.height_m is not None else s.angle_deg)
    for s in SENSORS
)
HORIZONTAL, VERTICAL, AXIAL = (0, 2), (1, 3), (4, 5)


@dataclass(frozen=True)
class Machine:
    """A run with a fault; `facts` are what the brief and other checks say of it."""

    rotor: simulated.Rotor
    unbalance: tuple[complex, ...]
    conditions: Conditions
    facts: dict[str, str]
    seconds: float = 24.0
    belts: bool = False
    stopped_too: bool = False
    twice: bool = False
    bumped: bool = False


def at(size, angle_deg):
    return size * np.exp(1j * np.deg2rad(angle_deg))


def stiff(horizontal, vertical):
    return (simulated.Support(horizontal, vertical), simulated.Support(1.1 * horizontal, 1.1 * vertical))


def locked(sensors, order, level, lags):
    """The same order at several sensors; far end horizontal stands on the other side, so that its sign turns."""
    return tuple((n, order, -level if n == 2 else level, lag) for n, lag in zip(sensors, lags, strict=True) if level)


def machine(cause, seed, size=1.0):
    """A machine with this fault, `size` times a clear one; unbalance kinds by their own names.

    Supports, damping, what else it shakes with, noise and the unbalance that every rotor has are drawn too.
    """
    rng = np.random.default_rng([seed, 11])
    some, turn = rng.uniform(0.85, 1.15), rng.uniform(0.0, 360.0)
    much = some * size
    demo, soft_by = simulated.demo_rotor(2), rng.uniform(0.85, 1.4)
    rotor = replace(demo, supports=stiff(2.3e6 * soft_by, 3.9e6 * soft_by), damping_ratio=rng.uniform(0.02, 0.06))
    left = rng.uniform(0.8, 1.2)
    little = (at(0.0012 * left, turn), at(0.0008 * left, turn + rng.uniform(-80.0, 80.0)))
    harmonics = tuple(rng.uniform(0.0, 0.4, 3) * np.array([1.0, 0.7, 0.5]))
    usual = Conditions(SPEED_RPM, noise_m_s2=rng.uniform(0.02, 0.15), harmonics_m_s2=harmonics)
    plain = Machine(rotor, little, usual, FACTS)
    first = 0.3 * size  # m/s², 1x of `little` at the drive end, horizontally

    def with_conditions(**changed):
        return replace(plain, conditions=replace(usual, **changed))

    if cause == "static":
        return replace(plain, unbalance=(at(0.005 * much, turn), at(0.0045 * some, turn + rng.uniform(-10.0, 10.0))))
    if cause == "couple":
        return replace(plain, unbalance=(at(0.007 * much, turn), at(0.007 * much, turn + 180.0 + rng.uniform(-5, 5))))
    if cause == "dynamic":
        return replace(plain, unbalance=(at(0.007 * much, turn), at(0.006 * much, turn + rng.uniform(85.0, 125.0))))
    if cause == "overhung":
        overhung = simulated.Rotor(60.0, 5.0, 0.7, 0.62, stiff(3e6, 5e6), 0.04, (simulated.Plane("disc", 0.95, 0.3),))
        return replace(plain, rotor=overhung, unbalance=(at(0.003 * much, turn),), facts={**FACTS, "rotor": "overhung"})
    if cause == "resonance":  # horizontally, a few percent from running speed
        near = (2.0 * np.pi * RUNNING_HZ * (1.0 + rng.choice([-1.0, 1.0]) * 0.05 / much)) ** 2 * 74.0 / 2.1
        return replace(plain, rotor=replace(rotor, supports=stiff(near, 3.9e6)), bumped=bool(seed % 2))
    if cause == "misalignment":
        parts = locked(HORIZONTAL, 2.0, 4.0 * first * some, (20.0, 20.0)) + locked(VERTICAL, 2.0, first, (200.0, 20.0))
        parts += locked((*HORIZONTAL, *VERTICAL), 1.0, 2.0 * first, (turn, turn + 180.0, turn + 8.0, turn + 188.0))
        parts += locked(AXIAL, 1.0, 1.8 * first, (turn, turn + rng.uniform(0.0, 60.0)))
        return with_conditions(locked=parts)
    if cause == "looseness":
        parts = ()
        for order, part in ((2.0, 0.8), (3.0, 0.6), (4.0, 0.6), (5.0, 0.5), (0.5, 0.35)):
            lags = rng.uniform(0.0, 360.0, 4)
            parts += locked((*HORIZONTAL, *VERTICAL), order, part * order * first * some, lags)
        return with_conditions(locked=parts)
    if cause == "bent shaft":
        parts = locked((*HORIZONTAL, *VERTICAL), 1.0, first, (turn, turn + 10.0, turn - 90.0, turn - 80.0))
        parts += locked(AXIAL, 1.0, 1.2 * first * some, (turn, turn + 180.0 + rng.uniform(-15.0, 15.0)))
        return with_conditions(locked=parts)
    if cause == "belt":
        tones = tuple((m * BELT.rpm / 60.0, level * first) for m, level in ((1, 0.3), (2, 1.0 * some), (4, 0.8)))
        return replace(with_conditions(tones=tones), belts=True, facts={**FACTS, "drive": "belt"})
    if cause == "eccentric pulley":
        parts = locked((*HORIZONTAL, *VERTICAL), 1.0, 3.0 * first * some, (turn, turn + 8.0, turn + 5.0, turn + 12.0))
        tones = ((MOTOR.rpm / 60.0, 1.5 * first),)
        return replace(with_conditions(locked=parts, tones=tones), belts=True, facts={**FACTS, "drive": "belt"})
    if cause == "soft foot":
        soft = replace(rotor, supports=stiff(2.3e6 * soft_by, 1.9e6))
        parts = locked(VERTICAL, 1.0, 6.0 * first * some, (turn, turn + 10.0))
        parts += locked(HORIZONTAL, 1.0, 2.5 * first * some, (turn, turn + 10.0))
        facts = {**FACTS, "foot_test": "fell clearly"}
        return replace(with_conditions(locked=parts), rotor=soft, facts=facts, bumped=True)
    if cause == "rub":
        parts = ()
        for order, part in ((0.5, 0.4), (1.5, 0.2), (1 / 3, 0.2), (2.0, 0.1)):
            parts += locked((*HORIZONTAL, *VERTICAL), order, part * order * first * some, rng.uniform(0.0, 360.0, 4))
        facts = {**FACTS, "rubbing": "found", "hub": "is tight", "rotor_state": "clean and whole"}
        return replace(with_conditions(locked=parts, bow=(0.002 * size, turn + 80.0, 8.0)), facts=facts)
    if cause == "bearing wear":
        tones = tuple((f * RUNNING_HZ, level * first * some) for f, level in ((3.58, 5.0), (7.16, 8.0), (5.41, 6.0)))
        facts = {**FACTS, "bearings": "noisy, hot or worn"}
        return replace(with_conditions(tones=tones, noise_m_s2=0.6 * size), facts=facts)
    if cause == "flow":
        facts = {**FACTS, "load_test": "follows"}
        return replace(with_conditions(noise="brown", noise_m_s2=8.0 * much), facts=facts)
    if cause == "thermal bow":
        return replace(with_conditions(bow=(0.006 * much, turn + 70.0, 40.0)), seconds=40.0, twice=True)
    if cause == "electrical":
        return replace(
            with_conditions(tones=((100.0, 9.0 * first * some),)), facts={**FACTS, "power_off": "drops at once"}
        )
    if cause == "neighbour":
        neighbour = (RUNNING_HZ * (1.0 + rng.choice([-1.0, 1.0]) * 0.011), 0.6 * first * some)
        return replace(with_conditions(neighbour=neighbour), stopped_too=True)
    if cause == "loose part":
        return replace(with_conditions(moving=(0.004 * much, turn, 60.0)), seconds=40.0, twice=True)
    if cause == "bad pulse":
        return with_conditions(pulse_faults=PulseFaults(jitter_deg=4.0 * much, missing=0.06 * size))
    raise ValueError(cause)


def bump(machine, seed):
    """Three blows on the standing machine: each mode of both directions rings at its natural frequency."""
    rng = np.random.default_rng([seed, 12])
    t = np.arange(int(11.0 * RATE_HZ)) / RATE_HZ
    x = 1e-4 * rng.standard_normal((t.size, 1 + len(SENSORS)))
    for hit in (1.0, 4.5, 8.0):
        after, blow = (
            np.maximum(t - hit, 0.0),
            np.outer(np.exp(-(((t - hit - 0.001) / 0.0005) ** 2)), [0.0] + [0.1] * 6),
        )
        x += blow
        for key, angle_deg in (("vertical", 0.0), ("horizontal", 90.0)):
            stiffness = tuple(getattr(s, f"{key}_n_per_m") for s in machine.rotor.supports)
            natural, shapes = simulated.modes(machine.rotor, stiffness)
            for omega, shape in zip(natural, shapes.T, strict=True):
                ratio = machine.rotor.damping_ratio
                decay = np.exp(-ratio * omega * after) * np.sin(omega * np.sqrt(1.0 - ratio**2) * after)
                for n, sensor in enumerate(SENSORS[:4], start=1):
                    seen = np.cos(np.deg2rad(sensor.angle_deg - angle_deg)) * shape[sensor.bearing] * shape[0]
                    x[:, n] += 4.0 * rng.uniform(0.9, 1.1) * seen * decay
    x[:, 0] = 1e-3 * rng.standard_normal(t.size)
    wired = hookup()
    struck = ringdown.Struck(RATE_HZ, wired.points, wired.pulse)
    struck.feed(x)
    return struck.result()


def run(machine, seed):
    conditions = machine.conditions
    ordered = simulated.SimulatedRun(
        machine.rotor, SENSORS, machine.unbalance, conditions, seed, machine.seconds, False, RATE_HZ
    )
    source, blocks = ordered.open(), []
    while (block := source.read(1.0)) is not None:
        blocks.append(block.samples)
    return np.concatenate(blocks)


def hookup():
    return hookups.hookup_from(simulated.hookup_for(SENSORS))


def measured(samples):
    """Vectors and content of a run, as `ui.analysis` has them from a file."""
    wired = hookup()
    measuring = measure.Measuring(RATE_HZ, wired.pulse, wired.points, wired.display)
    measuring.feed(samples)
    orders = measuring.all_orders()
    averaged = spectrum.AveragedSpectrum(RATE_HZ, len(wired.points), 1000.0, 0.25)
    averaged.feed(samples[:, 1:])
    return orders[0], content.describe(orders, averaged, wired.points, wired.display, (LINE,))


def changed(key, first, later):
    names = [p.name for p in first.points]
    before, after = (np.array([p.z for p in m.points]) for m in (first, later))
    return evidence.from_change(key, names, before, first.covariance, after, later.covariance)


def evidence_of(machine, seed):
    """All that is measured and answered of a machine."""
    first, spread = measured(run(machine, seed))
    belts = {"belts": (BELT,), "other_shafts": (MOTOR,)} if machine.belts else {}
    parts = [
        diagnosis.answers(machine.facts),
        evidence.from_content(spread, line=LINE, **belts),
        evidence.from_measurement(first, PLACES, spread),
    ]
    if machine.bumped:
        parts.append(evidence.from_ring_down(bump(machine, seed), SPEED_RPM))
    if machine.stopped_too:
        stopped = replace(machine, unbalance=(0j, 0j), conditions=replace(machine.conditions, harmonics_m_s2=()))
        samples = run(stopped, seed + 1)
        samples[:, 0] = 0.0
        wired = hookup()
        heard = standing.Background(RATE_HZ, wired.points, wired.display, SPEED_RPM, wired.pulse)
        heard.feed(samples)
        parts.append(evidence.from_background(heard.result(), {p.name: abs(p.z) for p in first.points}))
    if machine.twice:
        later, _ = measured(run(machine, seed + 1000))
        if machine.conditions.bow is not None:  # warm by then
            warm = replace(
                machine, unbalance=(machine.unbalance[0] + at(*machine.conditions.bow[:2]), machine.unbalance[1])
            )
            later, _ = measured(run(replace(warm, conditions=replace(machine.conditions, bow=None)), seed + 1000))
            parts.append(changed("warm_change", first, later))
        else:
            parts.append(changed("repeat_change", first, later))
    return diagnosis.merged(*parts)


CAUSES = (
    "static", "couple", "dynamic", "overhung", "resonance", "misalignment", "looseness", "bent shaft", "belt",
    "eccentric pulley", "soft foot", "rub", "bearing wear", "flow", "thermal bow", "electrical", "neighbour", "loose part",
    "bad pulse",
)  # fmt: skip
UNBALANCE = ("static", "couple", "dynamic", "overhung")
