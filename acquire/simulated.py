"""A simulated rotor that speaks the source protocol: rigid rotor, two planes, two supports stiff differently each way.

Linear modal superposition, two modes in each direction; gyroscopic moments are left out. It writes its cosines out by
itself, so that a wrong sign in the signal processing cannot cancel.
"""

from __future__ import annotations

import math
import time
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from stillshaft.acquire.conditions import Conditions, Faults
from stillshaft.acquire.source import Block, Source

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

_PIECE_S = 0.25  # samples are made in pieces of this length, whatever is asked for
_SLICE_S = 0.025  # and handed out in slices of this length in real time, as a device does
_WARM_UP = 14.0  # time constants of the slowest mode before the first frame
_LONGEST_WARM_UP_S = 10.0
_STEP_S = 0.5  # in which a loose piece moves on
_RISE_SHARE = 0.003  # of a revolution that a pulse edge takes
_MOST_GROWTH = 600.0  # natural logarithm of what a double holds
_FLAT = 6.0  # beyond so many widths an edge is over, to 1e-16


@dataclass(frozen=True)
class Support:
    """Stiffness of one bearing and its pedestal, N/m."""

    horizontal_n_per_m: float
    vertical_n_per_m: float


@dataclass(frozen=True)
class Plane:
    """A correction plane: distance from the first bearing and radius, m."""

    name: str
    z_m: float
    radius_m: float


@dataclass(frozen=True)
class FlexibleMode:
    """A bending mode: natural frequency, modal mass, and its shape at both bearings and at each plane."""

    frequency_hz: float
    mass_kg: float
    at_bearings: tuple[float, float]
    at_planes: tuple[float, ...]


@dataclass(frozen=True)
class Rotor:
    """A rotor on two supports, overhung where a plane lies beyond a bearing.

    Rigid, its `transverse_inertia_kg_m2` about the centre of mass; `flexible` adds its first bending mode.
    """

    mass_kg: float
    transverse_inertia_kg_m2: float
    bearing_span_m: float
    centre_of_mass_m: float
    supports: tuple[Support, Support]
    damping_ratio: float
    planes: tuple[Plane, ...]
    flexible: FlexibleMode | None = None


@dataclass(frozen=True)
class Sensor:
    """An accelerometer on a bearing (0 or 1) at a stator angle, degrees in the direction of rotation.

    One with a height stands so far above the shaft and points along it, from the first bearing to the second: it sees
    how the rotor tilts in the vertical plane.
    """

    name: str
    bearing: int
    angle_deg: float
    volts_per_m_s2: float = 0.1 / 9.80665
    full_scale_v: float = 2.0
    height_m: float | None = None


def modes(rotor: Rotor, stiffness: tuple[float, float]) -> tuple[Real, Real]:
    """Natural frequencies (2,) in rad/s and mass-normalised shapes (2 bearings, 2 modes) in one direction."""
    share = rotor.centre_of_mass_m / rotor.bearing_span_m
    centre, tilt = np.array([1.0 - share, share]), np.array([-1.0, 1.0]) / rotor.bearing_span_m
    mass = rotor.mass_kg * np.outer(centre, centre) + rotor.transverse_inertia_kg_m2 * np.outer(tilt, tilt)
    # scaled so that the stiffness is the unit matrix: what is left is symmetric
    scale = 1.0 / np.sqrt(np.array(stiffness))
    slownesses, shapes = np.linalg.eigh(scale[:, None] * mass * scale)
    natural = 1.0 / np.sqrt(slownesses[::-1])
    return natural, scale[:, None] * shapes[:, ::-1] * natural


def _paths(rotor: Rotor, sensor: Sensor, pulse_angle_deg: float) -> list[tuple[float, Complex]]:
    """Ways from the planes to a sensor: natural frequency, and the force of each plane seen by it as a complex factor.

    A mass at rotor angle α stands at stator angle p + θ − α, so along a direction at stator angle d it pushes with
    cos(θ − (α + d − p)).
    """
    paths = []
    arms = np.array([[1.0 - p.z_m / rotor.bearing_span_m, p.z_m / rotor.bearing_span_m] for p in rotor.planes])
    angle = math.radians(sensor.angle_deg)
    parts = (math.cos(angle), math.sin(angle))
    if sensor.height_m is not None:  # where the second bearing goes up, what stands above the shaft goes back
        parts = (-sensor.height_m / rotor.bearing_span_m, 0.0)
    for direction_deg, part, key in ((0.0, parts[0], "vertical"), (90.0, parts[1], "horizontal")):
        if abs(part) < 1e-12:
            continue
        stiffness = tuple(getattr(s, f"{key}_n_per_m") for s in rotor.supports)
        frequencies, shapes = modes(rotor, (stiffness[0], stiffness[1]))
        lag = np.exp(-1j * math.radians(direction_deg - pulse_angle_deg))
        for mode in range(2):
            force = part * _seen(sensor, shapes[:, mode]) * (arms @ shapes[:, mode]) * lag
            paths.append((float(frequencies[mode]), np.asarray(force, dtype=np.complex128)))
        bent = rotor.flexible
        if bent is not None:
            force = part * _seen(sensor, np.array(bent.at_bearings)) * np.array(bent.at_planes) / bent.mass_kg * lag
            paths.append((2.0 * math.pi * bent.frequency_hz, np.asarray(force, dtype=np.complex128)))
    return paths


def _seen(sensor: Sensor, shape: Real) -> float:
    """What a sensor sees of a mode's shape at both bearings: the motion of its own one, or the tilt."""
    return float(shape[sensor.bearing] if sensor.height_m is None else shape[1] - shape[0])


def frequency_response(
    rotor: Rotor, sensors: Sequence[Sensor], speed_rpm: float, pulse_angle_deg: float = 0.0
) -> Complex:
    """Displacement vector z = A·e^{jφ} (peak, m) of each sensor per unbalance m·r·e^{jα} (kg·m) of each plane.

    Shape (sensors, planes). Modal superposition: any text on vibration, such as Rao's.
    """
    omega = speed_rpm * math.pi / 30.0
    response = np.zeros((len(sensors), len(rotor.planes)), dtype=np.complex128)
    for row, sensor in enumerate(sensors):
        for natural, force in _paths(rotor, sensor, pulse_angle_deg):
            receptance = 1.0 / (natural**2 - omega**2 + 2j * rotor.damping_ratio * natural * omega)
            response[row] += np.conj(receptance * omega**2 * force)
    return response


def place(
    mass: float, angle_deg: float, rng: np.random.Generator, mass_sd: float = 0.01, angle_sd_deg: float = 2.0
) -> tuple[float, float]:
    """What was really put on when this mass at this angle was meant."""
    return mass * (1.0 + mass_sd * rng.standard_normal()), angle_deg + angle_sd_deg * rng.standard_normal()


class Placing:
    """Hands that place masses: a piece gets its errors once and keeps them while it stays on."""

    def __init__(self, seed: int) -> None:
        self._rng = np.random.default_rng([seed, 77])
        self._placed: dict[tuple[str, float, float], tuple[float, float]] = {}

    def really(self, plane: str, mass: float, angle_deg: float) -> tuple[str, float, float]:
        """Plane, mass and angle that came of what was meant."""
        key = (plane, mass, angle_deg)
        if key not in self._placed:
            self._placed[key] = place(mass, angle_deg, self._rng)
        return (plane, *self._placed[key])


@dataclass(frozen=True)
class SimulatedRun:
    """An order for one run: `unbalance` is m·r·e^{jα} in kg·m for each plane, initial state and masses together."""

    rotor: Rotor
    sensors: tuple[Sensor, ...]
    unbalance: tuple[complex, ...]
    conditions: Conditions
    seed: int
    seconds: float | None = None
    real_time: bool = True
    rate_hz: float = 48_000.0

    def open(self) -> Source:
        """Start the run."""
        return SimulatedSource(self)


@dataclass(frozen=True)
class _Path:
    """One mode on the way to one sensor: how it answers, and the complex factor of the force."""

    sensor: int
    mode: _Mode
    force: complex
    bow: complex
    loose: complex


class _Mode:
    """Acceleration of an oscillator of unit mass from sample to sample, its s brought to z by the bilinear transform.

    s²/(s² + 2ζω·s + ω²) has two poles z = p and p*, so that it is straight·x + 2·Re(residue·Σ p^k·x[n − k]): a running sum
    of x·p^−n, times p^n. Pieces are short enough for p^−n.
    """

    def __init__(self, natural: float, damping_ratio: float, rate_hz: float, most: int) -> None:
        twice = 2.0 * rate_hz
        s = natural * complex(-damping_ratio, math.sqrt(1.0 - damping_ratio**2))
        pole = (twice + s) / (twice - s)
        gain = twice**2 / abs(twice - s) ** 2
        self._straight = gain / abs(pole) ** 2
        residue = gain * (1.0 - 1.0 / pole) ** 2 / (1.0 - pole.conjugate() / pole)
        length = max(1, min(most, int(_MOST_GROWTH / -math.log(abs(pole)))))
        powers = np.exp(np.log(pole) * np.arange(1, length + 1))
        self._grown, self._powers, self._seen = 1.0 / powers, powers, 2.0 * residue * powers
        self._state = 0j

    def answer(self, force: Real) -> Real:
        """Acceleration for the next samples of force per mass."""
        moved = self._straight * force
        for begin in range(0, force.size, self._grown.size):
            piece = force[begin : begin + self._grown.size]
            sums = np.cumsum(piece * self._grown[: piece.size])
            sums += self._state
            seen = self._seen[: piece.size]
            moved[begin : begin + piece.size] += sums.real * seen.real - sums.imag * seen.imag
            self._state = complex(sums[-1] * self._powers[piece.size - 1])
        return moved


def _erf(values: Real) -> Real:
    """The error function, worked out only where it is not flat."""
    result = np.sign(values)
    steep = np.flatnonzero(np.abs(values) < _FLAT)
    result[steep] = [math.erf(value) for value in values[steep].tolist()]
    return result


class SimulatedSource:
    """The rotor running: input 1 is the pulse, the sensors follow; values in digital full scale."""

    skew_s: tuple[float, ...] = ()

    def __init__(self, run: SimulatedRun) -> None:
        self.rate_hz = run.rate_hz
        self.channels = 1 + len(run.sensors)
        self.description = f"simulated rotor at {run.conditions.speed_rpm:g} r/min"
        self.can_wait = not run.real_time
        self.silence_limit_s: float | None = None
        self._run = run
        self._rng = np.random.default_rng(run.seed)
        self._wander = self._draw_wander()
        self._scatter = self._draw_scatter()
        self._start_deg = float(self._rng.uniform(0.0, 360.0))
        self._piece = round(_PIECE_S * run.rate_hz)
        self._paths: list[_Path] = []
        for number, sensor in enumerate(run.sensors):
            for natural, force in _paths(run.rotor, sensor, run.conditions.pulse_angle_deg):
                mode = _Mode(natural, run.rotor.damping_ratio, run.rate_hz, self._piece)
                seen = complex(np.dot(force, np.conj(run.unbalance)) * np.conj(self._scatter[number]))
                first_plane = complex(force[0] * np.conj(self._scatter[number]))
                grown = first_plane * np.conj(self._unbalance_of(run.conditions.bow))
                loose = first_plane * np.conj(self._unbalance_of(run.conditions.moving))
                self._paths.append(_Path(number, mode, seen, grown, loose))
        self._faults = Faults(run.conditions, run.rate_hz, run.seed, self._rng)
        self._astray_rad = self._draw_astray()
        self._frame = 0
        self._slice = round(_SLICE_S * run.rate_hz) if run.real_time else self._piece
        self._made: NDArray[np.float32] = np.empty((0, self.channels), dtype=np.float32)  # not handed out yet
        self._frames = None if run.seconds is None else round(run.seconds * run.rate_hz)
        self._settle()
        self._began = time.monotonic()

    def _draw_wander(self) -> list[tuple[float, float, float]]:
        """Slow sines: rad/s, relative speed amplitude, phase."""
        rates = 2.0 * np.pi / self._rng.uniform(2.5, 9.0, 3)
        amplitude = self._run.conditions.wander_percent / 100.0 * math.sqrt(2.0 / 3.0)
        return [(float(r), amplitude, float(self._rng.uniform(0.0, 2.0 * np.pi))) for r in rates]

    def _draw_scatter(self) -> Complex:
        count, conditions = len(self._run.sensors), self._run.conditions
        amplitude = 1.0 + conditions.scatter_amplitude * self._rng.standard_normal(count)
        return np.asarray(
            amplitude * np.exp(1j * np.deg2rad(conditions.scatter_deg) * self._rng.standard_normal(count))
        )

    def _draw_astray(self) -> Real:
        """Random walk of a loose piece's angle, a step every half second, for a quarter of an hour."""
        if self._run.conditions.moving is None:
            return np.zeros(2)
        steps = np.random.default_rng([self._run.seed, 6]).standard_normal(round(900.0 / _STEP_S))
        return np.cumsum(math.sqrt(_STEP_S / self._run.conditions.moving[2]) * steps)

    def angle(self, frames: NDArray[np.int64]) -> tuple[Real, Real, Real]:
        """True shaft angle in rad, speed in rad/s, acceleration in rad/s² at these frames."""
        t = frames / self.rate_hz
        mean = self._run.conditions.speed_rpm * math.pi / 30.0
        begin, seconds = mean, 1.0
        if self._run.conditions.ramp is not None:
            begin, seconds = self._run.conditions.ramp[0] * math.pi / 30.0, self._run.conditions.ramp[1]
        on_ramp = np.clip(t, 0.0, seconds)
        angle = math.radians(self._start_deg) + begin * np.minimum(t, seconds) + mean * np.maximum(0.0, t - seconds)
        angle += 0.5 * (mean - begin) / seconds * on_ramp**2
        speed = begin + (mean - begin) * on_ramp / seconds
        acceleration = np.where((t > 0.0) & (t < seconds), (mean - begin) / seconds, 0.0)
        for rate, share, phase in self._wander:
            at = rate * t + phase
            sine = np.sin(at)
            angle += mean * share / rate * sine
            speed += mean * share * np.cos(at)
            acceleration -= mean * share * rate * sine
        return angle, speed, acceleration

    def _settle(self) -> None:
        """Run the filters in before the first frame, so that the rotor is in its stride; one that hardly swings nearly so."""
        slowest = min(n for s in self._run.sensors for n, _ in _paths(self._run.rotor, s, 0.0))
        seconds = min(_LONGEST_WARM_UP_S, _WARM_UP / (self._run.rotor.damping_ratio * slowest))
        self._vibration(np.arange(-round(seconds * self.rate_hz), 0))

    def _vibration(self, frames: NDArray[np.int64]) -> tuple[Real, Real, Real]:
        """Accelerations (frames, sensors) of the rotor alone, with the angle and speed they belong to."""
        angle, speed, acceleration = self.angle(frames)
        turning = np.exp(1j * angle) * (speed**2 - 1j * acceleration)
        grown: Real | float = 0.0
        if self._run.conditions.bow is not None:
            grown = 1.0 - np.exp(-np.maximum(0.0, frames / self.rate_hz) / self._run.conditions.bow[2])
        astray: Complex | float = 1.0
        if self._run.conditions.moving is not None:
            steps = np.arange(self._astray_rad.size) * _STEP_S
            astray = np.exp(-1j * np.interp(frames / self.rate_hz, steps, self._astray_rad))
        moved = np.zeros((frames.size, len(self._run.sensors)))
        for path in self._paths:
            force = ((path.force + path.bow * grown + path.loose * astray) * turning).real
            moved[:, path.sensor] += path.mode.answer(force)
        return moved, angle, speed

    def _samples(self, frames: NDArray[np.int64]) -> NDArray[np.float32]:
        conditions, sensors = self._run.conditions, self._run.sensors
        moved, angle, speed = self._vibration(frames)
        if conditions.looseness is not None:
            moved = self._faults.loosened(moved, conditions.looseness)
        for number in range(len(sensors)):
            for order, level in enumerate(conditions.harmonics_m_s2, start=2):
                moved[:, number] += level * np.cos(order * angle - 0.9 * order - 0.4 * number)
            if conditions.neighbour is not None:
                frequency, level = conditions.neighbour
                moved[:, number] += level * np.cos(2.0 * np.pi * frequency * frames / self.rate_hz - 0.3 * number)
            for frequency, level in conditions.tones:
                moved[:, number] += level * np.cos(2.0 * np.pi * frequency * frames / self.rate_hz - 0.7 * number)
        for number, times, level, lag_deg in conditions.locked:
            moved[:, number] += level * np.cos(times * angle - math.radians(lag_deg))
        moved += conditions.noise_m_s2 * self._faults.noise(moved.shape)
        scale = np.array([s.volts_per_m_s2 / s.full_scale_v for s in sensors])
        pulse = self._pulse(angle, speed) + 10.0 ** (-conditions.pulse_snr_db / 20.0) * self._rng.standard_normal(
            frames.size
        )
        inputs = np.column_stack([0.5 * pulse, moved * scale])
        return self._faults.of_inputs(inputs, frames).astype(np.float32)

    @staticmethod
    def _unbalance_of(described: tuple[float, float, float] | None) -> complex:
        """The kg·m and degrees that a description begins with, as m·r·e^{jα}."""
        return 0.0j if described is None else described[0] * complex(np.exp(1j * math.radians(described[1])))

    def _pulse(self, angle: Real, speed: Real) -> Real:
        """Pulses of height 1 whose leading edge is half-way up at angle 0."""
        turn = angle / (2.0 * np.pi)
        period = 2.0 * np.pi * self.rate_hz / speed
        duty = self._run.conditions.pulse_duty
        width = np.maximum(1.0, 0.4 * _RISE_SHARE * period) * math.sqrt(2.0)
        number = np.floor(turn + 0.5)
        there, moved, echo, stray = self._faults.of_revolutions(number)
        past = (turn - number - moved) * period

        def mark(at: Real) -> Real:
            return 0.5 * (_erf(at / width) - _erf((at - duty * period) / width))

        shape = there * mark(past)
        if echo.any():
            shape += echo * mark(past - 2.0 * duty * period)
        if stray.any():
            shape += (stray != 0) * mark(past - stray * period)
        return self._faults.lit(shape, turn)

    def read(self, timeout_s: float) -> Block | None:
        """Next samples: a whole piece, or in real time a slice of it when its last frame is due; None at the end."""
        first = self._frame
        if first == self._frames:
            return None
        if not len(self._made):
            count = self._piece if self._frames is None else min(self._piece, self._frames - first)
            self._made = self._samples(np.arange(first, first + self._piece))[:count]
        samples, self._made = self._made[: self._slice], self._made[self._slice :]
        self._frame += len(samples)
        if self._run.real_time:
            time.sleep(max(0.0, self._began + self._frame / self.rate_hz - time.monotonic()))
        return Block(first, self.rate_hz, samples)

    def close(self) -> None:
        """Nothing to release."""


DEMO_SPEED_RPM = 1480.0


def demo_rotor(planes: int) -> Rotor:
    """The fan of the demonstration: a dust-extraction fan between bearings, wide (two planes) or narrow (one)."""
    supports = (Support(2.3e6, 3.9e6), Support(2.6e6, 4.3e6))
    wide = (Plane("drive side", 0.18, 0.31), Plane("far side", 0.70, 0.31))
    if planes == 1:
        return Rotor(62.0, 2.1, 0.9, 0.43, supports, 0.04, (Plane("disc", 0.43, 0.31),))
    return Rotor(74.0, 6.5, 0.9, 0.43, supports, 0.04, wide)


def demo_unbalance(planes: int) -> tuple[complex, ...]:
    """Its initial unbalance, kg·m."""
    pieces = ((0.024, 140.0),) if planes == 1 else ((0.019, 65.0), (0.014, 210.0))
    return tuple(m * 0.31 * complex(np.exp(1j * np.deg2rad(a))) for m, a in pieces)


def demo_sensors() -> tuple[Sensor, ...]:
    """A horizontal accelerometer on each bearing."""
    return (Sensor("drive end horizontal", 0, 90.0), Sensor("far end horizontal", 1, 90.0))


def demo_hookup() -> dict[str, object]:
    """Content of the hook-up file that belongs to the demonstration."""
    return hookup_for(demo_sensors())


def hookup_for(sensors: Sequence[Sensor]) -> dict[str, object]:
    """Content of the hook-up file for these sensors on inputs 2, 3, …, the pulse on input 1."""
    return {
        "format": 1,
        "display": "mm/s rms",
        "reference_end": "drive",
        "rotation": "counter-clockwise",
        "datum": "12 o'clock",
        "pulse": {"input": 1, "edge": "auto", "angle": 0.0},
        "point": [
            {
                "name": sensor.name,
                "input": number,
                "quantity": "acceleration",
                "sensitivity": "100 mV/g",
                "full_scale": "2.0 V",
                "angle": sensor.angle_deg,
                **({} if sensor.height_m is None else {"direction": "axial"}),
            }
            for number, sensor in enumerate(sensors, start=2)
        ],
    }


def demo_run(
    planes: int,
    masses: Sequence[tuple[str, float, float]],
    *,
    seed: int,
    real_time: bool,
    seconds: float | None = None,
) -> SimulatedRun:
    """A run of the demonstration with these masses (plane, grams, degrees) really on."""
    rotor = demo_rotor(planes)
    unbalance = with_masses(rotor, demo_unbalance(planes), masses)
    return SimulatedRun(rotor, demo_sensors(), unbalance, Conditions(DEMO_SPEED_RPM), seed, seconds, real_time)


def with_masses(
    rotor: Rotor, unbalance: Sequence[complex], masses: Sequence[tuple[str, float, float]]
) -> tuple[complex, ...]:
    """Unbalance (kg·m, each plane) after masses (plane, grams, degrees) were put on; an unknown plane is the first."""
    changed, names = list(unbalance), [p.name for p in rotor.planes]
    for plane, mass_g, angle_deg in masses:
        number = names.index(plane) if plane in names else 0
        radius_m = rotor.planes[number].radius_m
        changed[number] += 0.001 * mass_g * radius_m * complex(np.exp(1j * np.deg2rad(angle_deg)))
    return tuple(changed)
