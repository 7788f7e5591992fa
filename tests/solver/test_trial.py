"""Trial mass and lag: forces of handbooks, the rotor's own equations, and what cannot be."""

import numpy as np
import pytest
from stillshaft.acquire import simulated
from stillshaft.solver import trial
from stillshaft.solver.influence import fit
from test_solver import write


def test_the_centrifugal_force_of_a_known_mass():
    """10 g at 300 mm and 1500 r/min: 74.0 N (m·r·Ω²)."""
    assert trial.centrifugal_force(0.010, 0.3, 1500.0) == pytest.approx(74.0, abs=0.05)


def test_a_trial_mass_pushes_with_a_tenth_of_the_weight_on_its_bearing():
    """100 kg on two bearings, 1500 r/min, 200 mm: 9.9 g (common practice; from memory)."""
    found = trial.trial_mass("left", 100.0, 0.2, 1500.0, planes=2)
    assert 1000.0 * found.mass_kg == pytest.approx(9.9, abs=0.05)
    assert found.force_n == pytest.approx(0.1 * 50.0 * 9.80665)
    assert found.force_kgf == pytest.approx(5.0)
    assert found.angle_deg is None
    assert trial.centrifugal_force(found.mass_kg, 0.2, 1500.0) == pytest.approx(found.force_n)


def test_it_goes_opposite_the_heavy_spot_unless_a_resonance_is_near():
    found = trial.trial_mass("disc", 50.0, 0.25, 1000.0, heavy_spot_deg=250.0)
    assert found.angle_deg == pytest.approx(70.0)
    near = trial.trial_mass("disc", 50.0, 0.25, 1000.0, heavy_spot_deg=250.0, resonance_rpm=1150.0)
    assert near.angle_deg is None
    assert near.mass_kg == pytest.approx(0.5 * found.mass_kg)
    assert "within 20 % of the resonance at 1150 r/min" in near.reason


@pytest.mark.parametrize(
    ("given", "match"),
    [
        ({"rotor_mass_kg": 0.0}, "rotor mass 0: must be above 0"),
        ({"radius_m": -1.0}, "radius -1"),
        ({"speed_rpm": float("nan")}, "speed nan"),
        ({"speed_rpm": 1e-286}, "speed 1e-286 r/min, radius 0.25 m: the trial mass would be heavier than the rotor"),
        ({"share": 0.9}, "force share 0.9: give more than 0 and no more than 0.5"),
    ],
)
def test_what_cannot_be_is_refused(given, match):
    with pytest.raises(trial.TrialError, match=match):
        trial.trial_mass("disc", **({"rotor_mass_kg": 50.0, "radius_m": 0.25, "speed_rpm": 1000.0} | given))


@pytest.mark.parametrize(("quantity", "more"), [("displacement", 0.0), ("velocity", 90.0), ("acceleration", 180.0)])
def test_displacement_lags_by_as_much_more(quantity, more):
    """Velocity leads displacement by 90°, acceleration by 180°."""
    assert trial.displacement_phase(200.0, quantity) == pytest.approx((200.0 + more) % 360.0)


@pytest.mark.parametrize("ratio", [0.5, 0.95, 1.0, 1.05, 2.0])
@pytest.mark.parametrize(("sensor_deg", "pulse_deg"), [(0.0, 0.0), (90.0, 30.0), (300.0, 200.0)])
def test_the_lag_of_a_jeffcott_rotor(tmp_path, ratio, sensor_deg, pulse_deg):
    """ψ = atan2(2ζr, 1 − r²); heavy spot and high spot of an unbalance at 40° (closed form)."""
    zeta, natural = 0.05, 100.0
    support = simulated.Support(0.5 * 10.0 * natural**2, 0.5 * 10.0 * natural**2)
    rotor = simulated.Rotor(10.0, 0.2, 1.0, 0.5, (support, support), zeta, (simulated.Plane("disc", 0.5, 0.1),))
    speed_rpm = ratio * natural * 30.0 / np.pi
    sensor = simulated.Sensor("a", 0, sensor_deg)
    h = 1e6 * simulated.frequency_response(rotor, (sensor,), speed_rpm, pulse_deg)[0, 0] * 1e-3 * 0.1  # µm per g
    unbalance = 6.0 * np.exp(1j * np.deg2rad(40.0))
    rows = [("initial", [h * unbalance], [0.0]), ("trial", [h * (unbalance + 5.0)], [5.0])]
    runs = write(tmp_path / "r.toml", rows, planes=("disc",), points=("a",), vibration_unit="um peak")
    found = trial.lag_of(fit(runs)[0], 0, 0, ("a", "disc"), "displacement", sensor_deg, pulse_deg)
    lag_deg = np.rad2deg(np.arctan2(2 * zeta * ratio, 1 - ratio**2))
    assert found.lag_deg == pytest.approx(lag_deg, abs=1e-6)
    assert found.heavy_spot_deg == pytest.approx(40.0, abs=1e-6)
    assert found.high_spot_deg == pytest.approx((40.0 + lag_deg) % 360.0, abs=1e-6)
    assert 0.0 < found.lag_ci95_deg < 10.0
