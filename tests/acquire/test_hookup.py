"""Hook-up files: what they mean, and what is refused in which words."""

import numpy as np
import pytest
from stillshaft.acquire import hookup


def point(**more):
    return {"name": "a", "input": 2, "quantity": "acceleration", "sensitivity": "100 mV/g"} | more


def file(*points, **more):
    return {"format": 1, "point": list(points) or [point()]} | more


def test_readings_become_si():
    wired = hookup.hookup_from(file(point(full_scale="5 V", inverted=True, delay="12 us", highpass=["2.0 Hz", "0 Hz"])))
    only = wired.points[0]
    assert only.si_per_reading == pytest.approx(-5.0 / 0.1 * 9.80665)
    assert (only.delay_s, only.highpass_hz, only.index) == (pytest.approx(12e-6), (2.0,), 1)
    assert (wired.pulse.index, wired.pulse.edge, wired.display, wired.channels) == (0, "auto", "mm/s rms", 2)


def test_the_resolved_edge_is_written_in():
    assert hookup.with_edge(hookup.hookup_from(file()), "falling").table["pulse"] == {"edge": "falling"}


@pytest.mark.parametrize(
    ("table", "match"),
    [
        ({}, "format: is missing"),
        (file(format=2), "format: must be 1, not 2"),
        ({"format": 1, "point": []}, "at least one"),
        (file(point(angle="x")), "point 1.angle: must be a number, not a text"),
        (file(point(angle=float("nan"))), "point 1.angle: nan is not a finite number"),
        (file(point(colour=1)), "point 1.colour: unknown key"),
        (file(colour=1), "^colour: unknown key"),
        (file(point(sensitivity="100 mV/kg")), 'point 1.sensitivity: "100 mV/kg"'),
        (file(point(sensitivity="lots")), "point 1.sensitivity: .* is not a number with a unit"),
        (file(point(sensitivity="-1 mV/g")), "point 1.sensitivity: must be above 0"),
        (file(point(full_scale="2 m")), "point 1.full_scale: .* is not a unit of V"),
        (file(point(input=1)), "point 1.input: input 1 is taken by the pulse"),
        (file(point(), point()), "point 2.input: input 2 is taken by point"),
        (file(point(), point(input=3)), "point 2.name: 'a' is empty or used twice"),
        (file(point(input=0)), "point 1.input: 0 is not an input"),
        (file(point(quantity="speed")), "point 1.quantity: must be acceleration or velocity or displacement"),
        (file(point(highpass=["1 Hz", "2 Hz", "3 Hz"])), "point 1.highpass: .* none, one or two"),
        (file(display="mm/s"), "display: .* needs a measure"),
        (file(pulse={"edge": "up"}), "pulse.edge: must be rising or falling or auto"),
        (file(pulse={"pulses_per_rev": 0}), "pulses_per_rev: 0 is not possible; give 1 to 400"),
        (file(pulse={"pulses_per_rev": 2, "reference": "missing"}), "2 with one missing; .* 3 or more"),
        (file(pulse={"reference": "wide"}), 'one mark has no "wide" one'),
        (file(pulse=3), "pulse: must be a table"),
    ],
)
def test_bad_hookups_name_the_field(table, match):
    with pytest.raises(hookup.HookupError, match=match):
        hookup.hookup_from(table)


@pytest.mark.parametrize(
    ("content", "match"),
    [
        (None, "there is no such file"),
        (b"point = [", "is not valid TOML"),
        (b"\xff\xfe", "is not a text file"),
        (b"format = 3", "h.toml: "),
    ],
)
def test_bad_files_are_named(tmp_path, content, match):
    path = tmp_path / "h.toml"
    if content is not None:
        path.write_bytes(content)
    with pytest.raises(hookup.HookupError, match=match):
        hookup.load_hookup(path)


def test_names_of_inputs_not_wired_are_filled_in():
    assert hookup.hookup_from(file(point(input=3))).channel_names(4) == ["pulse", "input 2", "a", "input 4"]
    assert np.isfinite(hookup.hookup_from(file()).points[0].si_per_reading)


def test_a_source_with_too_few_inputs_is_refused():
    wired = hookup.hookup_from(file())
    wired.refuse_fewer_inputs(wired.channels, "the card")
    with pytest.raises(hookup.HookupError, match=f"the card: has 1 input, but the hook-up uses input {wired.channels}"):
        wired.refuse_fewer_inputs(1, "the card")
