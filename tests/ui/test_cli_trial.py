"""`trial` and `lag` on the command line."""

import json

import pytest
import tomli_w
from stillshaft.acquire import simulated
from test_cli import assert_one_line, stillshaft


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """A one-mass job on the demonstration rotor, and its hook-up."""
    folder = tmp_path_factory.mktemp("trial")
    (folder / "h.toml").write_text(tomli_w.dumps(simulated.demo_hookup()))
    for name, mass in (("initial", []), ("trial", ["--mass", "drive side = 12 g at 30"])):
        done = stillshaft("capture", "simulated", f"{name}.au", "--seconds", "8", "--fast", *mass, cwd=folder)
        assert done.returncode == 0, done.stderr
        done = stillshaft("vector", f"{name}.au", "--append", "runs.toml", "--run", name, *mass, cwd=folder)
        assert done.returncode == 0, done.stderr
    return folder


@pytest.mark.long
def test_lag_well_below_resonance_is_small_and_the_same_as_the_sweep_tells(folder):
    """2434 r/min and ζ = 0.04 at 1480 r/min: atan2(2ζr, 1 − r²) = 4.4° for the lower mode; scatter 1° in each run."""
    done = stillshaft("lag", "runs.toml", "--hookup", "h.toml", "--point", "drive end horizontal", "--json", cwd=folder)
    assert done.returncode == 0, done.stderr
    whole = json.loads(done.stdout)
    assert list(whole)[5:10] == ["point", "high_spot_deg", "heavy_spot_deg", "lag_deg", "lag_ci95_deg"]
    off = (whole["lag_deg"] - 4.4 + 180.0) % 360.0 - 180.0
    assert abs(off) <= 1.5 * whole["lag_ci95_deg"]


def test_lag_prints_a_line_for_each_point(folder):
    done = stillshaft("lag", "runs.toml", "--hookup", "h.toml", cwd=folder)
    assert "heavy spot" in done.stdout
    assert done.stdout.count("drive side") == 2


def test_trial_tells_mass_force_place_and_cautions():
    arguments = ("trial", "--rotor-mass", "100 kg", "--radius", "200 mm", "--speed", "1500", "--planes", "2")
    done = stillshaft(*arguments, "--heavy-spot", "250")
    assert done.returncode == 0, done.stderr
    for words in ("9.94 g at 70°", "49 N, the weight of 5.0 kg", "nobody in the plane of rotation"):
        assert words in done.stdout
    whole = json.loads(stillshaft(*arguments, "--json").stdout)
    assert whole["mass"] == pytest.approx(9.94, abs=0.01)
    assert (whole["unit"], whole["angle_deg"]) == ("g", None)
    assert whole["force_kgf"] == pytest.approx(5.0, rel=1e-3)


@pytest.mark.parametrize(
    ("arguments", "match"),
    [
        (("trial", "--rotor-mass", "lots", "--radius", "1 m", "--speed", "100"), "--rotor-mass"),
        (("trial", "--rotor-mass", "1 kg", "--radius", "1 m", "--speed", "0"), "speed 0: must be above 0"),
        (("lag", "runs.toml", "--hookup", "h.toml", "--point", "top"), 'runs.toml: has no point "top"'),
        (("lag", "none.toml", "--hookup", "h.toml"), "none.toml: there is no such file"),
    ],
)
def test_bad_input_gets_one_line(folder, arguments, match):
    assert match in assert_one_line(stillshaft(*arguments, cwd=folder))
