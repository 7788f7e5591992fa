"""What runs beside the rotor by the brief: frequencies of belt, motor and neighbours, and how well they are known."""

import math

import pytest
from stillshaft.solver.beside import beside
from stillshaft.solver.brief import brief_from

BELT = {"kind": "belt", "rotor_pulley": "315 mm", "belt_length": "2240 mm"}


def of(**drive):
    return beside(brief_from({"drive": drive}), 1480.0)


def test_a_belt_turns_with_its_pulleys_rim():
    """π·D·n/L: 0.315 m·π at 1480 r/min run 1464.6 m a minute round a belt of 2.24 m."""
    (belt,) = of(**BELT).belts
    assert belt.rpm == pytest.approx(653.8, abs=0.1)
    assert belt.within_rpm == pytest.approx(0.02 * belt.rpm)
    (by_motor,) = of(kind="belt", motor_pulley="200 mm", motor_speed_rpm=2331.0, belt_length="2240 mm").belts
    assert by_motor.rpm == pytest.approx(math.pi * 200.0 * 2331.0 / 2240.0)


def test_the_motors_speed_is_as_given_or_by_the_pulleys():
    (given,) = of(**BELT, motor_pulley="200 mm", motor_speed_rpm=2310.0).other_shafts
    assert (given.name, given.rpm, given.within_rpm) == ("motor", 2310.0, pytest.approx(11.55))
    (by_pulleys,) = of(**BELT, motor_pulley="200 mm").other_shafts
    assert (by_pulleys.rpm, by_pulleys.within_rpm) == (pytest.approx(2331.0), pytest.approx(46.62))
    (geared,) = of(kind="gear", motor_speed_rpm=2960.0).other_shafts
    assert geared.rpm == 2960.0


@pytest.mark.parametrize(
    "drive", [{}, {"kind": "belt"}, {"kind": "direct", "motor_speed_rpm": 1480.0}, {**BELT, "kind": "direct"}]
)
def test_what_the_brief_does_not_say_is_not_looked_for(drive):
    assert of(**drive).all == ()


def test_neighbours_are_known_as_said_or_as_a_nameplate():
    said = [{"name": "pump", "speed_rpm": 1465.0, "within_rpm": 3.0}, {"name": "fan", "speed_rpm": 990.0}]
    pump, fan = beside(brief_from({"neighbours": said}), 1480.0).neighbours
    assert (pump.name, pump.rpm, pump.within_rpm) == ("pump", 1465.0, 3.0)
    assert fan.within_rpm == pytest.approx(4.95)


def test_the_mains_and_the_poles_of_a_motor_whose_slip_is_the_rotors():
    found = beside(brief_from({"drive": {"kind": "direct", "line": "60 Hz", "poles": 4}}), 1780.0)
    assert (found.line.name, found.line.rpm, found.poles) == ("line frequency", 3600.0, 4)
    assert found.line in found.all
    for drive in ({"kind": "belt"}, {"kind": "direct", "variable_speed": True}):
        assert beside(brief_from({"drive": drive | {"line": "50 Hz", "poles": 4}}), 1480.0).poles is None
    assert beside(brief_from({}), 1480.0).line is None
