"""The angle convention and the units, against hand-worked values and laws."""

import math

import numpy as np
import pytest
from stillshaft.dsp import units, vectors


def test_phase_is_the_lag_from_pulse_to_positive_peak():
    angle = np.linspace(0.0, 2 * np.pi, 3601)
    x = 2.5 * np.cos(angle - np.deg2rad(70.0))
    c, s = (2.0 / 3600 * (x[:-1] * f(angle[:-1])).sum() for f in (np.cos, np.sin))
    amplitude, phase_deg = vectors.amplitude_phase(complex(vectors.from_coefficients(np.array(c), np.array(s))))
    assert amplitude == pytest.approx(2.5)
    assert phase_deg == pytest.approx(70.0)
    assert angle[x.argmax()] == pytest.approx(np.deg2rad(phase_deg), abs=1e-3)


@pytest.mark.parametrize("phase_deg", [0.0, 359.999, 180.0, 1e-9])
def test_phase_stays_within_0_and_360(phase_deg):
    back = vectors.amplitude_phase(vectors.vector(1.0, -phase_deg))[1]
    assert 0.0 <= back < 360.0
    assert math.isclose((back + phase_deg) % 360.0 % 360.0, 0.0, abs_tol=1e-6) or back + phase_deg == pytest.approx(
        360.0
    )


def test_velocity_leads_displacement_by_90_and_acceleration_by_180():
    z = vectors.vector(1.0, 120.0)
    assert vectors.amplitude_phase(z * vectors.quantity_factor("displacement", "velocity", 25.0))[1] == pytest.approx(
        30.0
    )
    assert vectors.amplitude_phase(z * vectors.quantity_factor("displacement", "acceleration", 25.0))[
        1
    ] == pytest.approx(300.0)


def test_quantities_go_round():
    there = vectors.quantity_factor("acceleration", "displacement", 31.0)
    back = vectors.quantity_factor("displacement", "acceleration", 31.0)
    assert there * back == pytest.approx(1.0)


def test_ac_coupling_of_2_hz_at_1500_rpm_is_4_6_degrees():
    """First-order high-pass, phase lead atan(fc/f): closed form, 4.57° and 0.32 % at fc = 2 Hz, f = 25 Hz."""
    undone = vectors.response_undone(25.0, (2.0,), 0.0)
    assert math.degrees(np.angle(undone)) == pytest.approx(math.degrees(math.atan(2.0 / 25.0)))
    assert math.degrees(np.angle(undone)) == pytest.approx(4.57, abs=0.01)
    assert abs(undone) == pytest.approx(math.hypot(25.0, 2.0) / 25.0)


def test_a_delay_is_taken_off_the_phase():
    assert math.degrees(np.angle(vectors.response_undone(50.0, (), 1e-3))) == pytest.approx(-18.0)


def test_one_inch_per_second_peak_at_3600_rpm():
    """5.305 mil p-p and 0.976 g peak: handbook conversion, from memory; exact from the definitions of inch and g."""
    omega = 2 * np.pi * 60.0
    speed = 1.0 / units.vibration_unit("in/s peak").per_si_peak
    assert speed == pytest.approx(0.0254)
    assert speed / omega * units.vibration_unit("mil p-p").per_si_peak == pytest.approx(5.305, abs=5e-4)
    assert speed * omega * units.vibration_unit("g peak").per_si_peak == pytest.approx(0.976, abs=5e-4)


def test_rms_and_peak_to_peak_are_split_off():
    assert units.vibration_unit("mm/s rms").per_si_peak == pytest.approx(1000.0 / math.sqrt(2.0))
    assert units.vibration_unit("µm p-p").per_si_peak == pytest.approx(2e6)
    assert units.vibration_unit("mm/s rms").per_si_rms == pytest.approx(1000.0)


def test_g_is_gravity_in_sensitivities_and_gram_in_masses():
    assert units.sensitivity("100 mV/g", "acceleration", "s") == pytest.approx(0.1 / 9.80665)
    assert units.parse("12.5 g", "kg", "mass") == pytest.approx(0.0125)


@pytest.mark.parametrize(
    ("text", "target", "match"),
    [
        ("12 zorgs", "kg", "mass: .*zorgs.* is not a unit of kg"),
        ("12", "kg", "not a number with a unit"),
        ("twelve g", "kg", "not a number with a unit"),
        ("12 m", "kg", "is not a unit of kg"),
        ("1e999 g", "kg", "not a finite number"),
        ("12 (", "kg", "is not a unit of kg"),
    ],
)
def test_bad_unit_names_the_field(text, target, match):
    with pytest.raises(units.UnitError, match=match):
        units.parse(text, target, "mass")


@pytest.mark.parametrize("text", ["mm/s", "rms", "kg rms", "mm/s RMS?", ""])
def test_bad_vibration_unit_is_refused(text):
    with pytest.raises(units.UnitError, match="display: "):
        units.vibration_unit(text)


def test_interval_is_students_t_times_the_deviation():
    """t(0.975; 8) = 2.306: printed tables."""
    covariance = np.diag([0.04, 0.01])
    amplitude_ci, phase_ci = vectors.half_widths(2.0 + 0.0j, covariance, 8)
    assert amplitude_ci == pytest.approx(2.306 * 0.2, rel=1e-4)
    assert phase_ci == pytest.approx(math.degrees(math.asin(2.306 * 0.1 / 2.0)), rel=1e-4)


def test_phase_of_a_vector_within_its_scatter_has_no_interval():
    assert vectors.half_widths(0.1 + 0.0j, np.eye(2) * 0.01, 8)[1] is None


def test_covariance_turns_with_its_vector():
    covariance = np.diag([4.0, 1.0])
    turned = vectors.rotated_covariance(covariance, np.array([2.0j]))
    np.testing.assert_allclose(turned, np.diag([4.0, 16.0]), atol=1e-12)
