"""`sweep` and `spectrum` on the command line: results, JSON, plots, exit status, one line for bad input."""

import json
import xml.etree.ElementTree as ET

import numpy as np
import pytest
import soundfile
import tomli_w
from stillshaft.acquire import simulated
from test_cli import assert_one_line, stillshaft

NEIGHBOURS = """
format = 1
line = "50 Hz"
[[machine]]
name = "pump next door"
speed = "1320 rpm"
within = "3 rpm"
"""


def played(seconds, conditions, seed=3):
    """Samples of the demonstration's wide rotor, from its own simulation."""
    run = simulated.SimulatedRun(
        simulated.demo_rotor(2), simulated.demo_sensors(), simulated.demo_unbalance(2), conditions, seed, seconds, False
    )
    source, blocks = run.open(), []
    while (block := source.read(1.0)) is not None:
        blocks.append(block.samples)
    return np.concatenate(blocks)


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    folder = tmp_path_factory.mktemp("analysis")
    (folder / "h.toml").write_text(tomli_w.dumps(simulated.demo_hookup()))
    (folder / "n.toml").write_text(NEIGHBOURS)
    runs = {
        "up": (32.0, simulated.Conditions(3000.0, ramp=(60.0, 30.0))),
        "hurry": (6.0, simulated.Conditions(3000.0, ramp=(60.0, 5.0))),
        "down": (32.0, simulated.Conditions(120.0, ramp=(3000.0, 30.0))),
        "steady": (12.0, simulated.Conditions(1480.0, neighbour=(22.0, 0.4))),
    }
    for name, (seconds, conditions) in runs.items():
        soundfile.write(folder / f"{name}.wav", played(seconds, conditions), 48_000, subtype="FLOAT")
    return folder


def natural_rpm():
    """Lower natural frequency of the horizontal direction, r/min, from the rotor's own mass and stiffness."""
    rotor = simulated.demo_rotor(2)
    first, second = (s.horizontal_n_per_m for s in rotor.supports)
    return simulated.modes(rotor, (first, second))[0][0] * 30.0 / np.pi


@pytest.mark.parametrize(("name", "direction"), [("up", "run-up"), ("down", "coast-down")])
def test_sweep_finds_the_rotors_resonance(folder, name, direction):
    done = stillshaft("sweep", f"{name}.wav", "--hookup", "h.toml", "--running", "1480", "--json", cwd=folder)
    assert done.returncode == 0, done.stderr
    whole = json.loads(done.stdout)
    assert list(whole)[:6] == ["format", "verb", "version", "trusted", "reasons", "recording"]
    assert whole["direction"] == direction
    assert whole["margin_percent"] == pytest.approx(100.0 * (natural_rpm() / 1480.0 - 1.0), abs=0.5)
    for point in whole["points"]:
        (resonance,) = point["resonances"]
        assert abs(resonance["rpm"] - natural_rpm()) <= 2.0 * resonance["rpm_ci95"]
        assert abs(resonance["amplification"] - 12.5) <= 2.0 * resonance["amplification_ci95"]  # ζ = 0.04
        curve = point["curve"]
        assert len(curve["rpm"]) == len(curve["amplitude"]) == len(curve["phase_deg"]) > 100


def test_sweep_prints_and_draws(folder, tmp_path):
    for plot in (tmp_path / "s.svg", tmp_path / "s.pdf"):
        done = stillshaft("sweep", "up.wav", "--hookup", "h.toml", "--plot", plot, cwd=folder)
        assert done.returncode == 0, done.stderr
        assert "amplification" in done.stdout
        assert f"plot written to {plot}" in done.stderr
    texts = "".join(ET.parse(tmp_path / "s.svg").getroot().itertext())
    for word in ("up.wav: run-up", "Amplitude", "Phase", "mm/s rms", "drive end horizontal", "resonance 24"):
        assert word in texts
    assert (tmp_path / "s.pdf").read_bytes().startswith(b"%PDF")
    assert sorted(p.name for p in tmp_path.iterdir()) == ["s.pdf", "s.svg"]


def test_a_hurried_sweep_is_not_trusted(folder):
    done = stillshaft("sweep", "hurry.wav", "--hookup", "h.toml", cwd=folder)
    assert done.returncode == 3
    assert "the speed changes too fast" in done.stdout


def test_spectrum_names_what_it_sees(folder, tmp_path):
    plot = tmp_path / "s.svg"
    done = stillshaft(
        "spectrum", "steady.wav", "--hookup", "h.toml", "--candidates", "n.toml", "--plot", plot, "--json", cwd=folder
    )
    assert done.returncode == 0, done.stderr
    whole = json.loads(done.stdout)
    near = whole["points"][0]
    assert near["peaks"][0]["fits"] == ["1x"]
    pump = next(p for p in near["peaks"] if "pump next door" in p["fits"])
    assert pump["frequency_hz"] == pytest.approx(22.0, abs=0.05)
    assert pump["amplitude"] == pytest.approx(400.0 / (2 * np.pi * 22.0) / np.sqrt(2.0), rel=0.02)
    assert near["orders"][1]["amplitude"] == pytest.approx(300.0 / (4 * np.pi * 1480 / 60) / np.sqrt(2.0), rel=0.01)
    assert sum(near["shares_percent"].values()) == pytest.approx(100.0)
    assert len(near["waveform"]["value"]) == len(whole["waveform"]["angle_deg"])
    assert whole["suggestions"][0]["what"].startswith("unbalance")
    texts = "".join(ET.parse(plot).getroot().itertext())
    for word in ("1x", "5x", "pump next door", "line frequency", "Waveform over a revolution"):
        assert word in texts


def test_spectrum_prints_tables(folder):
    done = stillshaft("spectrum", "steady.wav", "--hookup", "h.toml", "--candidates", "n.toml", cwd=folder)
    assert done.returncode == 0, done.stderr
    for word in ("overall 10 to 1000 Hz", "pump next door", "lags it by", "for: 1x holds"):
        assert word in done.stdout


def test_the_waveform_repeats_the_vector(folder):
    """Its first harmonic, by the discrete Fourier transform, is the once-per-rev vector."""
    done = stillshaft("spectrum", "steady.wav", "--hookup", "h.toml", "--json", cwd=folder)
    whole = json.loads(done.stdout)
    for point in whole["points"]:
        waveform = np.array(point["waveform"]["value"])
        c = 2.0 * np.mean(waveform * np.exp(-1j * np.deg2rad(whole["waveform"]["angle_deg"])))
        first = point["orders"][0]
        assert abs(c) / np.sqrt(2.0) == pytest.approx(first["amplitude"], rel=0.02)
        assert abs((-np.rad2deg(np.angle(c)) - first["phase_deg"] + 180) % 360 - 180) < 1.0


@pytest.mark.parametrize(
    ("arguments", "match"),
    [
        (("sweep", "steady.wav"), "steady.wav: a sweep without a change of speed"),
        (("sweep", "up.wav", "--order", "900"), "more than 0.4 of the sample rate"),
        (("sweep", "up.wav", "--order", "0"), "orders 0: give each once, above 0"),
        (("sweep", "up.wav", "--slow-roll", "300"), "displacement points only, and there is none"),
        (("sweep", "up.wav", "--tracker", "comb"), 'tracker "comb": vold-kalman or windows'),
        (("sweep", "up.wav", "--plot", "x.png"), "x.png: plots are written as .svg or .pdf"),
        (("sweep", "none.wav"), "none.wav: there is no such file"),
        (("spectrum", "steady.wav", "--plot", "nowhere/x.svg"), "nowhere/x.svg: cannot be written"),
        (("spectrum", "steady.wav", "--highest", "40000"), "highest 40000 Hz: give the running speed"),
        (("spectrum", "steady.wav", "--highest", "1e-3"), "highest 0.001 Hz: give the running speed"),
        (("spectrum", "steady.wav", "--resolution", "0.001"), "lines of 0.001 Hz: a record of 12.0 s gives 0.083 Hz"),
        (("spectrum", "steady.wav", "--resolution", "50"), "wider than the running speed"),
        (("spectrum", "steady.wav", "--candidates", "h.toml"), "h.toml: "),
        (("vector", "steady.wav", "--weights", "square"), 'weights "square": flat or hann'),
    ],
)
def test_bad_input_gets_one_line(folder, arguments, match):
    done = stillshaft(*arguments, "--hookup", "h.toml", cwd=folder)
    assert match in assert_one_line(done)
    assert not list(folder.glob("*.svg"))


def test_swapped_inputs_are_seen(folder):
    content = simulated.demo_hookup()
    content["pulse"]["input"], content["point"][0]["input"] = 2, 1
    (folder / "swapped.toml").write_text(tomli_w.dumps(content))
    for verb, recording in (("vector", "steady.wav"), ("sweep", "up.wav"), ("spectrum", "steady.wav")):
        line = assert_one_line(stillshaft(verb, recording, "--hookup", "swapped.toml", cwd=folder))
        assert 'input 1 ("drive end horizontal") looks like a pulse and the pulse input 2 does not' in line


def test_hann_weights_are_taken(folder):
    widths = []
    for weights in ("flat", "hann"):
        done = stillshaft("vector", "steady.wav", "--hookup", "h.toml", "--weights", weights, "--json", cwd=folder)
        widths.append(json.loads(done.stdout)["points"][0]["amplitude"])
    assert widths[0] != widths[1]
    assert widths[0] == pytest.approx(widths[1], rel=0.05)
