"""Units from anywhere: what people write is read, and nothing that would never end is worked out."""

import math

import pytest
from stillshaft.dsp import units


@pytest.mark.parametrize(
    ("text", "target", "value"),
    [
        ("7.87 V/mm", "V/m", 7870.0), ("10 mV/(mm/s)", "V/(m/s)", 10.0), ("2 m/s**2", "m/s^2", 2.0), ("2 m/s²", "m/s^2", 2.0),
        ("3 g*mm", "kg*m", 3e-6), ("3 g mm", "kg*m", 3e-6), ("3 g·mm", "kg*m", 3e-6), ("7850 kg/m^3", "kg/m^3", 7850.0),
        ("50 1/s", "Hz", 50.0), ("2 m^-1", "1/m", 2.0), ("5 mm^2/s", "m^2/s", 5e-6), ("-3 us", "s", -3e-6),
    ],
)  # fmt: skip
def test_units_are_read(text, target, value):
    assert math.isclose(units.parse(text, target, "field"), value, rel_tol=1e-12)


@pytest.mark.parametrize(
    "text",
    ["1 kg**9**9**9", "1 kg^9^9", "1 (kg^9)^9", "1 kg*9**9**9", "1 " + "(" * 50 + "kg" + ")" * 50, "1 kg" + "*kg/kg" * 60,
     "1 kg^99", "1 " + "g" * 300, "9" * 500 + " kg", "1e999 kg", "1 __class__", "1 kg;x", "1 kg\0", "1 9 kg"],
)  # fmt: skip
def test_what_would_never_end_is_no_unit(text):
    with pytest.raises(units.UnitError, match="^mass: ") as caught:
        units.parse(text, "kg", "mass")
    assert len(str(caught.value)) < 400


@pytest.mark.parametrize("text", ["1e999 rpm", "1e305 kHz", "9" * 300 + " Hz", "nan rpm"])
def test_a_speed_is_finite(text):
    with pytest.raises(units.UnitError, match="is not a speed"):
        units.speed_rpm(text, "speed")


@pytest.mark.parametrize("number", ["1e-31", "-3e-278", "1e30", "-1e300"])
def test_what_nothing_is_like_is_refused(number):
    """Squares and products of what is let in fit a float."""
    with pytest.raises(units.UnitError, match='^radius: ".*" is too (small|large) for anything'):
        units.parse(f"{number} m", "m", "radius")
    with pytest.raises(units.UnitError, match='^speed: ".*" is too (small|large) for anything'):
        units.speed_rpm(f"{number} rpm", "speed")
    assert units.parse("0e-300 m", "m", "radius") == 0.0


def test_a_pattern_is_held_against_texts_of_the_usual_length():
    assert units.whole_match(r"(a+)\s*b", "aa b")[1] == "aa"
    assert units.whole_match(r"a+", "a" * 200)
    assert units.whole_match(r"a+", "a" * 201) is None


@pytest.mark.parametrize("text", ["Ym*Ym/ym rms", "ym*ym/Ym peak", "x" * 300 + " rms"])
def test_a_vibration_unit_is_of_a_size(text):
    with pytest.raises(units.UnitError, match="^display: "):
        units.vibration_unit(text)


def test_a_message_is_one_line_whatever_it_quotes():
    said = str(units.InputError("a\nb\x1b[2J\u202e" + "x" * 5000 + " give another"))
    assert said.startswith("a b [2J x")
    assert said.endswith("x give another")
    assert "…" in said
    assert len(said) <= 900


def test_a_vibration_unit_is_asked_of_the_library_once(monkeypatch):
    """It is no displacement and no velocity: what was not found is kept as well."""
    first = units.vibration_unit("m/s^2 rms")
    with pytest.raises(units.UnitError, match='"kg rms" is not a unit of displacement'):
        units.vibration_unit("kg rms")
    monkeypatch.setattr(units, "_registry", None)
    assert units.vibration_unit("m/s^2 rms") == first
    with pytest.raises(units.UnitError, match='"kg rms" is not a unit of displacement'):
        units.vibration_unit("kg rms")
