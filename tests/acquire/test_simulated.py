"""The simulated rotor against independent solutions, and laws of rotors."""

import equations
import numpy as np
import pytest
from stillshaft.acquire import simulated
from stillshaft.acquire.simulated import Conditions, Plane, Rotor, Sensor, SimulatedRun, Support

QUIET = {"wander_percent": 0.0, "noise_m_s2": 0.0, "harmonics_m_s2": (),
         "scatter_amplitude": 0.0, "scatter_deg": 0.0, "pulse_snr_db": 90.0}  # fmt: skip


def samples_of(run, block=None):
    source = run.open()
    blocks = []
    while (got := source.read(1.0)) is not None:
        blocks.append(got.samples)
    return np.concatenate(blocks), source


def displacement(run):
    """z of each sensor by own least squares on the true angle, peak m."""
    samples, source = samples_of(run)
    angle = source.angle(np.arange(len(samples)))[0]
    columns = np.column_stack([np.cos(angle), np.sin(angle), np.ones(len(angle))])
    cosine, sine, _ = np.linalg.lstsq(columns, samples[:, 1:].astype(np.float64), rcond=None)[0]
    sensor = run.sensors[0]
    omega = run.conditions.speed_rpm * np.pi / 30.0
    return -(cosine + 1j * sine) * sensor.full_scale_v / sensor.volts_per_m_s2 / omega**2  # acceleration is −Ω² of it


def run_of(unbalance, speed_rpm=1480.0, **conditions):
    return SimulatedRun(
        simulated.demo_rotor(2),
        simulated.demo_sensors(),
        unbalance,
        Conditions(speed_rpm, **(QUIET | conditions)),
        3,
        4.0,
        False,
    )


def independent_response(rotor, sensor, speed_rpm):
    """Displacement per force of each plane from M, C, K in python-control's own state space."""
    import control  # brings all of matplotlib: only where it is needed

    mass, damping, stiffness, arms = equations.matrices(rotor)
    inverse = np.linalg.inv(mass)
    system = np.block([[np.zeros((2, 2)), np.eye(2)], [-inverse @ stiffness, -inverse @ damping]])
    inputs = np.vstack([np.zeros((2, len(rotor.planes))), inverse @ arms])
    outputs = np.zeros((1, 4))
    outputs[0, sensor.bearing] = 1.0
    return control.ss(system, inputs, outputs, 0)(1j * speed_rpm * np.pi / 30.0)


@pytest.mark.parametrize("speed_rpm", [300.0, 1480.0, 2500.0, 4200.0])
def test_frequency_response_agrees_with_python_control(speed_rpm):
    """python-control, state space from mass, damping and stiffness matrices made here."""
    rotor, sensors = simulated.demo_rotor(2), simulated.demo_sensors()
    ours = simulated.frequency_response(rotor, sensors, speed_rpm)
    omega = speed_rpm * np.pi / 30.0
    for row, sensor in enumerate(sensors):
        theirs = np.squeeze(independent_response(rotor, sensor, speed_rpm)) * omega**2
        np.testing.assert_allclose(ours[row], np.conj(theirs) * np.exp(1j * np.pi / 2), rtol=1e-9)  # sensor at 90°


@pytest.mark.parametrize("speed_rpm", [600.0, 1480.0, 3000.0])
def test_samples_follow_the_frequency_response(speed_rpm):
    unbalance = (0.004 + 0.001j, -0.002 + 0.003j)
    truth = simulated.frequency_response(simulated.demo_rotor(2), simulated.demo_sensors(), speed_rpm) @ unbalance
    np.testing.assert_allclose(displacement(run_of(unbalance, speed_rpm)), truth, rtol=1e-4)


@pytest.mark.parametrize("ratio", [0.3, 0.9, 1.0, 1.4, 3.0])
def test_symmetric_rotor_is_a_jeffcott_rotor(ratio):
    """Closed form: amplitude r²/√((1−r²)²+(2ζr)²) of the eccentricity, lag atan2(2ζr, 1−r²)."""
    zeta, mass = 0.05, 10.0
    support = Support(0.5 * mass * 100.0**2, 0.5 * mass * 100.0**2)
    rotor = Rotor(mass, 0.2, 1.0, 0.5, (support, support), zeta, (Plane("disc", 0.5, 0.1),))
    z = simulated.frequency_response(rotor, (Sensor("a", 0, 0.0),), ratio * 100.0 * 30.0 / np.pi)[0, 0] * mass
    assert abs(z) == pytest.approx(ratio**2 / np.hypot(1 - ratio**2, 2 * zeta * ratio))
    assert np.angle(z) == pytest.approx(np.arctan2(2 * zeta * ratio, 1 - ratio**2))


def test_turning_the_unbalance_turns_every_phase_alike():
    unbalance, turn = np.array([0.004 + 0.001j, -0.002 + 0.003j]), np.exp(1j * np.deg2rad(37.0))
    np.testing.assert_allclose(
        displacement(run_of(tuple(turn * unbalance))), turn * displacement(run_of(tuple(unbalance))), rtol=1e-4
    )


def test_moving_the_pulse_sensor_turns_every_phase_back():
    unbalance = (0.004 + 0.001j, 0.0j)
    moved = displacement(run_of(unbalance, pulse_angle_deg=30.0)) / displacement(run_of(unbalance))
    np.testing.assert_allclose(np.rad2deg(np.angle(moved)), -30.0, atol=0.01)


def test_pulse_edges_are_half_way_up_at_angle_zero():
    samples, source = samples_of(run_of((0.0j, 0.0j)))
    pulse = samples[:, 0].astype(np.float64)
    rising = np.flatnonzero((pulse[:-1] < 0.25) & (pulse[1:] >= 0.25))
    assert len(rising) > 90
    turn = source.angle(rising)[0] / (2 * np.pi)
    into_turn = (turn - np.round(turn)) * 48_000.0 * 60.0 / 1480.0
    assert np.all((into_turn <= 0.02) & (into_turn > -1.02))


def test_seeds_repeat_and_differ():
    one, again, other = (
        samples_of(simulated.demo_run(2, [], seed=s, real_time=False, seconds=0.5))[0] for s in (1, 1, 2)
    )
    np.testing.assert_array_equal(one, again)
    assert np.abs(one - other).max() > 0.01


def test_a_mass_opposite_the_unbalance_stills_the_rotor():
    quiet = simulated.SimulatedRun(
        simulated.demo_rotor(1), simulated.demo_sensors(), (0.0j,), Conditions(1480.0, **QUIET), 1, 1.0, False
    )
    assert np.abs(samples_of(quiet)[0][:, 1:]).max() < 1e-6


class OwnClock:
    """Time that passes only where somebody sleeps or works; `asked` is how long sleep was each time."""

    def __init__(self):
        self.now, self.asked = 1000.0, []

    def monotonic(self):
        return self.now

    def sleep(self, seconds):
        self.asked.append(seconds)
        self.now += seconds


def read_by(clock, monkeypatch, slices, work_s=lambda _number: 0.0):
    """So many blocks in real time by this clock, each with the time it came; making the n-th takes `work_s(n)`."""
    monkeypatch.setattr(simulated, "time", clock)
    source = simulated.demo_run(1, [], seed=1, real_time=True).open()
    begun, came = clock.now, []
    for number in range(slices):
        clock.now += work_s(number)
        block = source.read(1.0)
        came.append((block, clock.now - begun))
    return came


def test_in_real_time_frames_come_when_they_are_due_in_small_slices(monkeypatch):
    clock = OwnClock()
    came = read_by(clock, monkeypatch, 200)
    for block, at in came:
        assert len(block.samples) == 1200
        assert at == pytest.approx((block.first_frame + len(block.samples)) / 48_000.0)
    assert [b.first_frame for b, _ in came] == list(range(0, 200 * 1200, 1200))


def test_what_a_busy_machine_held_up_is_caught_up_with(monkeypatch):
    clock = OwnClock()
    came = read_by(clock, monkeypatch, 100, lambda number: 0.5 if number == 20 else 0.001)
    late = [at - (b.first_frame + len(b.samples)) / 48_000.0 for b, at in came]
    assert min(late) >= -1e-9  # never ahead of its clock
    assert late[:20] == pytest.approx([0.0] * 20)
    assert late[20] == pytest.approx(0.475)
    assert late[60:] == pytest.approx([0.0] * 40)


def test_real_time_changes_no_sample(monkeypatch):
    slices = np.concatenate([b.samples for b, _ in read_by(OwnClock(), monkeypatch, 40)])
    whole = samples_of(simulated.demo_run(1, [], seed=1, real_time=False, seconds=1.0))[0]
    np.testing.assert_array_equal(slices, whole)
