"""The simulated rotor's further physics and faults, and the file that describes them."""

import equations
import numpy as np
import pytest
import tomli_w
from scipy.integrate import solve_ivp
from scipy.signal import welch
from stillshaft.acquire import catalogue, conditions, scenario, simulated
from stillshaft.acquire import hookup as hookups
from stillshaft.acquire.source import SourceError
from stillshaft.dsp import check, measure
from test_simulated import run_of, samples_of

UNBALANCE = (0.006 * np.exp(1j), 0.004 * np.exp(-2j))


def test_a_run_up_is_the_solution_of_the_equations_of_motion():
    """Mass, damping and stiffness matrices of the horizontal direction, integrated by scipy's solve_ivp."""
    run = run_of(UNBALANCE, 2900.0, ramp=(300.0, 1.2))
    samples, source = samples_of(run)
    rotor = run.rotor
    mass, damping, stiffness, arms = equations.matrices(rotor)
    inverse = np.linalg.inv(mass)

    # a mass at α pushes along 90° as cos(θ − α − 90°); its own change of speed pushes across
    grid = np.arange(int(1.25 * source.rate_hz))
    angle, speed, change = source.angle(grid)
    each = []
    for u in run.unbalance:
        at = angle - np.angle(u) - np.pi / 2
        each.append(abs(u) * (speed**2 * np.cos(at) + change * np.sin(at)))
    pushed = arms @ np.array(each)

    def force(t):
        return np.array([np.interp(t * source.rate_hz, grid, row) for row in pushed])

    def moved(t, y):
        return np.concatenate([y[2:], inverse @ (force(t) - damping @ y[2:] - stiffness @ y[:2])])

    # begin in its stride at 300 r/min
    omega = 300.0 * np.pi / 30.0
    start = source.angle(np.array([0]))[0][0]
    pushes = np.array([abs(u) * omega**2 * np.exp(-1j * (np.angle(u) + np.pi / 2)) for u in run.unbalance])
    z = np.linalg.solve(stiffness - omega**2 * mass + 1j * omega * damping, arms @ pushes) * np.exp(1j * start)
    begin = np.concatenate([z.real, (1j * omega * z).real])
    times = np.arange(0, 1.2, 1 / 2000.0)
    found = solve_ivp(moved, (0.0, 1.2), begin, t_eval=times, rtol=1e-7, atol=1e-12, max_step=2e-3)
    wanted = np.array([moved(t, y)[2:] for t, y in zip(times, found.y.T, strict=True)])
    sensor = run.sensors[0]
    frames = np.round(times * source.rate_hz).astype(int)
    measured = samples[frames, 1:] * sensor.full_scale_v / sensor.volts_per_m_s2
    assert np.abs(measured - wanted).max() < 0.01 * np.abs(wanted).max()


def test_a_bending_mode_adds_its_own_response():
    """z = Ω²·φ_b·φ_p·u / (m·(ω² − Ω² + 2jζωΩ)): modal superposition (any text, such as Rao's)."""
    bent = simulated.FlexibleMode(40.0, 55.0, (0.4, 0.3), (1.0, 0.9))
    stiff, soft = (
        simulated.Rotor(*[getattr(simulated.demo_rotor(2), f) for f in simulated.Rotor.__dataclass_fields__][:-1], mode)
        for mode in (None, bent)
    )
    sensors = simulated.demo_sensors()
    omega, natural, damping = 1480.0 * np.pi / 30.0, 80.0 * np.pi, soft.damping_ratio
    added = simulated.frequency_response(soft, sensors, 1480.0) - simulated.frequency_response(stiff, sensors, 1480.0)
    single = omega**2 / 55.0 / (natural**2 - omega**2 + 2j * damping * natural * omega)
    # the sensors stand at 90°: vectors turn by it
    wanted = np.conj(single) * np.outer(bent.at_bearings, bent.at_planes) * np.exp(1j * np.pi / 2)
    np.testing.assert_allclose(added, wanted, rtol=1e-9)


def test_a_plane_beyond_a_bearing_lifts_the_other_one():
    """Slowly, by the lever: a force at z beyond the span L pushes one bearing by z/L and pulls the other by z/L − 1."""
    demo = simulated.demo_rotor(2)
    overhung = simulated.Rotor(
        *[getattr(demo, f) for f in demo.__dataclass_fields__][:6], (simulated.Plane("disc", 1.2, 0.3),)
    )
    response = simulated.frequency_response(overhung, simulated.demo_sensors(), 30.0)[:, 0]
    stiffness = np.array([s.horizontal_n_per_m for s in demo.supports])
    ratio = (response * stiffness)[1] / (response * stiffness)[0]
    assert ratio.real == pytest.approx((1.2 / 0.9) / (1 - 1.2 / 0.9), rel=0.01)


def played(**changed):
    return samples_of(run_of(UNBALANCE, **changed))


def test_a_bow_grows_with_its_time_constant():
    run = run_of(UNBALANCE, bow=(0.02, 30.0, 1.5))
    samples, source = samples_of(run)
    angle = source.angle(np.arange(len(samples)))[0]
    half = int(0.25 * source.rate_hz)

    def once(middle_s):
        span = slice(int(middle_s * source.rate_hz) - half, int(middle_s * source.rate_hz) + half)
        turned = samples[span, 1] * np.exp(-1j * angle[span])
        return 2 * turned.mean()

    first, later, last = once(0.3), once(1.8), once(3.7)
    # 1 − e^{−t/τ}: from 0.3 to 1.8 s as much as e^{−0.2} − e^{−1.2}
    assert abs(later - first) / abs(last - first) == pytest.approx(
        (np.exp(-0.2) - np.exp(-1.2)) / (np.exp(-0.2) - np.exp(-3.7 / 1.5)), rel=0.05
    )


def test_what_is_locked_to_the_shaft_has_its_order_size_and_lag():
    """Half an order: over whole pairs of revolutions nothing else is left of the cosine."""
    quiet, _ = played()
    samples, source = played(locked=((1, 0.5, 0.4, 70.0), (0, 2.0, 0.3, -20.0)))
    angle = source.angle(np.arange(len(samples)))[0]
    whole = angle - angle[0] < 4 * np.pi * np.floor((angle[-1] - angle[0]) / (4 * np.pi))
    sensor = simulated.demo_sensors()[0]
    added = (samples - quiet)[:, 1:] * sensor.full_scale_v / sensor.volts_per_m_s2
    for number, order, level, lag_deg in ((1, 0.5, 0.4, 70.0), (0, 2.0, 0.3, -20.0)):
        c = 2 * np.mean(added[whole, number] * np.exp(1j * order * angle[whole]))
        assert abs(c) == pytest.approx(level, rel=0.01)
        assert np.rad2deg(np.angle(c)) == pytest.approx(lag_deg, abs=0.5)


def test_a_sensor_along_the_shaft_sees_the_tilt():
    """h·(y₁ − y₂)/L of the vertical motions of both bearings: geometry of a rigid rotor."""
    rotor = simulated.demo_rotor(2)
    vertical = tuple(simulated.Sensor(f"v{n}", n, 0.0) for n in (0, 1))
    along = (simulated.Sensor("top", 1, 90.0, height_m=0.12),)
    first, second = simulated.frequency_response(rotor, vertical, 1480.0)
    found = simulated.frequency_response(rotor, along, 1480.0)[0]
    np.testing.assert_allclose(found, 0.12 * (first - second) / rotor.bearing_span_m, rtol=1e-9)
    assert simulated.hookup_for(along)["point"][0]["direction"] == "axial"


def test_a_loose_piece_keeps_its_size_and_loses_its_place():
    samples, source = samples_of(run_of((0j, 0j), moving=(0.006, 40.0, 1.0)))
    angle = source.angle(np.arange(len(samples)))[0]
    parts = np.array([2 * np.mean(p) for p in np.array_split(samples[:, 1] * np.exp(1j * angle), 8)])
    assert np.abs(parts).std() < 0.2 * np.abs(parts).mean()
    assert np.ptp(np.unwrap(np.angle(parts))) > np.deg2rad(40.0)


@pytest.mark.parametrize(("colour", "slope"), [("white", 0.0), ("pink", -1.0), ("brown", -2.0)])
def test_noise_has_its_colour(colour, slope):
    samples, source = played(noise=colour, noise_m_s2=0.05, scatter_amplitude=0.0)
    quiet, _ = played(scatter_amplitude=0.0)
    frequency, power = welch((samples - quiet)[:, 1], source.rate_hz, nperseg=1 << 15)
    inside = (frequency > 5.0) & (frequency < 3000.0)
    found = np.polyfit(np.log(frequency[inside]), np.log(power[inside]), 1)[0]
    assert found == pytest.approx(slope, abs=0.15)


def test_looseness_makes_multiples_of_the_speed():
    samples, source = played(looseness=0.5)
    angle = source.angle(np.arange(len(samples)))[0]
    sizes = [abs(np.mean(samples[:, 1] * np.exp(-1j * h * angle))) for h in range(1, 5)]
    assert sizes[1] > 0.05 * sizes[0]
    assert sizes[2] > 0.02 * sizes[0]


def test_ac_coupling_leads_by_its_arctangent():
    """Every input, vibration and pulse: 2 Hz at 1480 r/min is atan(2/24.67) = 4.6°."""

    def once(corner):
        samples, source = played(coupling_hz=corner)
        settled = slice(int(2 * source.rate_hz), None)
        angle = source.angle(np.arange(len(samples)))[0][settled]
        columns = np.column_stack([np.cos(angle), np.sin(angle), np.ones(angle.size)])
        cosine, sine, _ = np.linalg.lstsq(columns, samples[settled, 1:].astype(float), rcond=None)[0]
        return cosine + 1j * sine

    lead = np.rad2deg(np.angle(once(None) / once(2.0)))
    np.testing.assert_allclose(lead, np.rad2deg(np.arctan(2.0 / (1480.0 / 60.0))), atol=0.02)


def measured(samples, rate_hz):
    wired = hookups.hookup_from(simulated.demo_hookup())
    m = measure.Measuring(rate_hz, wired.pulse, wired.points, wired.display)
    m.feed(samples)
    return m.result()


def test_faulty_pulses_are_missing_doubled_and_stray():
    faults = conditions.PulseFaults(missing=0.05, double=0.03, stray=0.03)
    samples, source = played(pulse_faults=faults, pulse_snr_db=40.0)
    speed = measured(samples, source.rate_hz).speed
    assert 1 <= speed.missing_pulses <= 15
    assert 1 <= speed.extra_pulses <= 15


@pytest.mark.parametrize(
    ("changed", "what"),
    [
        ({"channel_faults": ((2, "dead"),)}, "exactly zero"),
        ({"channel_faults": ((3, "stuck"),)}, "stands at"),
        ({"channel_faults": ((2, "clipped"),)}, "is clipped"),
        ({"channel_faults": ((2, "hum"),)}, "hums at 100 Hz"),
        ({"pulse_faults": conditions.PulseFaults(sunlight=0.4)}, "level swings"),
        ({"pulse_faults": conditions.PulseFaults(lamp=(120.0, 0.12))}, "flickers at 120 Hz"),
        ({"pulse_faults": conditions.PulseFaults(jitter_deg=1.5)}, "scatter by"),
    ],
)
def test_the_signal_check_finds_the_faults(changed, what):
    run = simulated.SimulatedRun(
        simulated.demo_rotor(2),
        simulated.demo_sensors(),
        UNBALANCE,
        simulated.Conditions(1480.0, **changed),
        3,
        8.0,
        False,
    )
    samples, source = samples_of(run)
    wired = hookups.hookup_from(simulated.demo_hookup())
    found = check.examine(samples.astype(float), source.rate_hz, wired.pulse, wired.points, wired.display)
    assert any(what in f.what for f in found), found


FILE = {
    "format": 1,
    "rotor": {"mass": "40 kg", "bearing_span": "700 mm", "centre_of_mass": "600 mm", "transverse_inertia": 1.8},
    "support": [{"horizontal": "3 MN/m", "vertical": "5 MN/m"}, {"horizontal": "2 MN/m", "vertical": "4 MN/m"}],
    "plane": [{"name": "disc", "z": "900 mm", "radius": "250 mm", "unbalance": "12 g at 40"}],
    "sensor": [{"name": "front", "bearing": 2, "angle": 90.0}, {"name": "along", "bearing": 1, "height": "80 mm"}],
    "flexible": {"frequency": "70 Hz", "mass": "30 kg", "at_bearings": [0.2, 0.5], "at_planes": [1.0]},
    "bow": {"unbalance": "500 g*mm at 90", "time": "5 min"},
    "moving": {"unbalance": "200 g*mm at 10", "time": "20 s"},
    "locked": [{"sensor": "along", "order": 2.0, "level": "0.5 m/s^2", "lag": 30.0}],
    "conditions": {"speed": "1200 rpm", "ramp_from": "60 rpm", "ramp_time": "20 s", "noise_colour": "pink",
                   "tones": [["22.5 Hz", "0.1 m/s^2"], ["1150 rpm", "0.02 g"]], "looseness": 0.8, "coupling": "2 Hz"},
    "pulse": {"missing": 0.01, "lamp_hz": 100.0, "lamp": 0.1},
    "fault": [{"input": 2, "kind": "hum"}],
}  # fmt: skip


def written(folder, table):
    path = folder / "s.toml"
    path.write_text(tomli_w.dumps(table))
    return path


def test_a_scenario_is_read_as_a_whole(tmp_path):
    found = scenario.load(written(tmp_path, FILE))
    assert found.rotor.planes == (simulated.Plane("disc", 0.9, 0.25),)
    assert found.rotor.supports[1].vertical_n_per_m == 4e6
    assert found.rotor.flexible.frequency_hz == 70.0
    assert found.unbalance[0] == pytest.approx(0.003 * np.exp(1j * np.deg2rad(40.0)))
    c = found.conditions
    assert c.ramp == (60.0, 20.0)
    assert c.tones == ((22.5, 0.1), pytest.approx((1150 / 60, 0.02 * 9.80665)))
    assert c.bow == pytest.approx((500e-6, 90.0, 300.0))
    assert c.moving == pytest.approx((200e-6, 10.0, 20.0))
    assert c.locked == ((1, 2.0, 0.5, 30.0),)
    assert found.sensors[1].height_m == pytest.approx(0.08)
    assert (c.noise, c.looseness, c.coupling_hz, c.channel_faults) == ("pink", 0.8, 2.0, ((2, "hum"),))
    chosen = catalogue.choose(
        f"simulated:{tmp_path / 's.toml'}", None, simulation=catalogue.Simulation(real_time=False)
    )
    assert hookups.hookup_from(chosen.hookup).points[0].name == "front"
    assert chosen.request.open().read(1.0).samples.shape == (12_000, 3)


def test_a_rotor_that_swings_for_weeks_is_run_in_for_seconds(tmp_path):
    soft = {"horizontal": "1 N/m", "vertical": "1 N/m"}
    path = written(tmp_path, {**FILE, "support": [soft, soft], "rotor": {**FILE["rotor"], "damping_ratio": 2e-6}})
    chosen = catalogue.choose(f"simulated:{path}", None, simulation=catalogue.Simulation(real_time=False))
    assert np.isfinite(chosen.request.open().read(1.0).samples).all()


@pytest.mark.parametrize(
    ("change", "match"),
    [
        ({"support": FILE["support"][:1]}, "support: there are 1; a rotor has two"),
        ({"plane": []}, "plane: there is none"),
        ({"plane": [{**FILE["plane"][0], "unbalance": "much"}]}, 'plane 1.unbalance: "much": write for example'),
        ({"plane": [{**FILE["plane"][0], "radius": "0 mm"}]}, "plane 1.radius: .* must be above 0"),
        (
            {"flexible": {**FILE["flexible"], "frequency": "1e19 Hz"}},
            'flexible.frequency: "1e19 Hz": 0.001 to 1e.06 Hz',
        ),
        ({"flexible": {**FILE["flexible"], "at_planes": []}}, "has 0 values for 1 planes"),
        (
            {"rotor": {**FILE["rotor"], "damping_ratio": 2.0}},
            "rotor.damping_ratio: 2 must be above 1e-06 and below 0.5",
        ),
        (
            {"support": [{"horizontal": "1e-20 N/m", "vertical": "3 MN/m"}] * 2},
            "support.horizontal: the rotor would swing",
        ),
        ({"conditions": {"speed": "90000 rpm"}}, "conditions.speed: .*30 to 60 000"),
        ({"conditions": {"looseness": 0.0}}, "conditions.looseness: 0 must be above 0"),
        ({"pulse": {"missing": 2.0}}, "pulse.missing: 2 must be a part from 0 to 1"),
        ({"fault": [{"input": 9, "kind": "dead"}]}, "fault.input: 9; there are inputs 1 to 3"),
        ({"fault": [{"input": 2, "kind": "sad"}]}, "fault.*kind"),
        ({"locked": [{"sensor": "x", "order": 2, "level": "1 g"}]}, 'locked 1.sensor: "x" is none; there are front'),
        ({"locked": [{"sensor": "front", "order": 0, "level": "1 g"}]}, "locked 1.order: 0 must be above 0"),
        ({"moving": {"unbalance": "1 g*mm at 0", "time": "0 s"}}, "moving.time: .* must be above 0"),
        ({"wheels": 4}, "wheels: unknown key"),
    ],
)
def test_a_scenario_that_cannot_be_is_refused_with_its_field(tmp_path, change, match):
    path = written(tmp_path, {**FILE, **change})
    with pytest.raises(SourceError, match=match) as caught:
        scenario.load(path)
    assert str(path) in str(caught.value)
