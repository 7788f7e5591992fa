"""The command line on real files: results, JSON, exit status, one line for bad input, nothing half written."""

import json
import os
import re
import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
import soundfile
import tomli_w
from rotor_signal import HOOKUP, rotor
from stillshaft.acquire import simulated
from stillshaft.dsp import vectors

RAO = Path(__file__).parents[2] / "fixtures" / "rao_two_plane.toml"
WIDE = os.environ | {"COLUMNS": "140"}
RUN = [sys.executable, "-m", "stillshaft.ui.cli"]


def stillshaft(*arguments, cwd=None):
    return subprocess.run(
        [*RUN, *map(str, arguments)], cwd=cwd, capture_output=True, text=True, check=False, timeout=120, env=WIDE
    )


def assert_one_line(done, status=1):
    assert done.returncode == status, done.stderr
    assert len(done.stderr.strip().splitlines()) == 1, done.stderr
    assert "Traceback" not in done.stderr
    assert done.stdout == ""
    return done.stderr


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """Recordings of the demonstration rotor in four formats, and its hook-up."""
    folder = tmp_path_factory.mktemp("recordings")
    (folder / "h.toml").write_text(tomli_w.dumps(simulated.demo_hookup()))
    for name, masses in (("initial", []), ("trial", [("disc", 8.0, 90.0)])):
        source = simulated.demo_run(1, masses, seed=4, real_time=False, seconds=8.0).open()
        blocks = []
        while (block := source.read(1.0)) is not None:
            blocks.append(block.samples)
        for kind in ("wav", "flac", "au", "caf"):
            soundfile.write(folder / f"{name}.{kind}", np.concatenate(blocks), 48_000, subtype="PCM_24")
    return folder


@pytest.mark.parametrize("kind", ["wav", "flac", "au", "caf"])
def test_vector_measures_each_format(folder, kind):
    done = stillshaft("vector", f"initial.{kind}", "--hookup", "h.toml", "--json", cwd=folder)
    assert done.returncode == 0, done.stderr
    whole = json.loads(done.stdout)
    assert list(whole) == [
        "format", "verb", "version", "trusted", "reasons", "recording", "duration_s", "sample_rate_hz", "speed", "order",
        "points", "covariance",
    ]  # fmt: skip
    assert list(whole["points"][0]) == [
        "name", "unit", "amplitude", "phase_deg", "amplitude_ci95", "phase_ci95_deg", "revolutions", "overall", "steadiness"
    ]  # fmt: skip
    assert list(whole["points"][0]["steadiness"]) == [
        "verdict", "cause", "phase_swing_deg", "amplitude_swing_percent", "beat", "trend_deg_per_min", "record_s",
        "trusted", "reasons", "notes",
    ]  # fmt: skip
    response = simulated.frequency_response(simulated.demo_rotor(1), simulated.demo_sensors(), 1480.0)
    velocity = -1j * 1480.0 * np.pi / 30.0 * (response @ simulated.demo_unbalance(1)) * 1000.0 / np.sqrt(2.0)
    for point, truth in zip(whole["points"], velocity, strict=True):
        z = vectors.vector(point["amplitude"], point["phase_deg"])
        assert abs(z - truth) < 0.08 * abs(truth)  # 1 % and 1° scatter from run to run is part of the demonstration
    assert whole["speed"]["mean_rpm"] == pytest.approx(1480.0, rel=2e-3)


def test_vector_prints_a_table_for_people(folder):
    done = stillshaft("vector", "initial.wav", "--hookup", "h.toml", cwd=folder)
    assert done.returncode == 0
    assert "drive end horizontal" in done.stdout
    assert "mm/s rms" in done.stdout
    assert "±" in done.stdout


def test_runs_are_appended_and_solved(folder, tmp_path):
    runs = tmp_path / "runs.toml"
    for name, more in (("initial", []), ("trial", ["--mass", "disc = 8 g at 90"])):
        done = stillshaft(
            "vector", f"{name}.wav", "--hookup", "h.toml", "--append", runs, "--run", name, *more, cwd=folder
        )
        assert done.returncode == 0, done.stderr
    assert 'plane "disc" is new' in done.stderr
    done = stillshaft("solve", runs, "--json")
    assert done.returncode == 0, done.stderr
    only = json.loads(done.stdout)["corrections"][0]
    assert only["mass"] == pytest.approx(24.0, rel=0.2)  # the demonstration's unbalance is 24 g at 140°
    assert only["angle_deg"] == pytest.approx(320.0, abs=12.0)
    before = runs.read_bytes()
    again = stillshaft("vector", "initial.wav", "--hookup", "h.toml", "--append", runs, "--run", "initial", cwd=folder)
    assert "used twice" in assert_one_line(again)
    assert runs.read_bytes() == before


def test_solve_draws_vectors_and_corrections(tmp_path):
    for plot in (tmp_path / "p.svg", tmp_path / "p.pdf"):
        done = stillshaft("solve", RAO, "--plot", plot)
        assert done.returncode == 0, done.stderr
    texts = "".join(ElementTree.parse(tmp_path / "p.svg").getroot().itertext())
    for word in (
        "vectors and corrections",
        "initial",
        "trial left",
        "expected",
        "left 10.1 g",
        "270°",
        "against rotation",
    ):
        assert word in texts
    assert (tmp_path / "p.pdf").read_bytes().startswith(b"%PDF")
    assert "plots are written as .svg or .pdf" in assert_one_line(
        stillshaft("solve", RAO, "--plot", tmp_path / "p.png")
    )


def test_solve_prints_the_textbook_answer():
    done = stillshaft("solve", RAO)
    assert done.returncode == 0
    assert "10.1" in done.stdout
    assert "326" in done.stdout


def test_tolerance_prints_the_standards_example():
    """ISO 21940-11 annex example (from memory)."""
    done = stillshaft(
        "tolerance", "--grade", "G2.5", "--rotor-mass", "3600 kg", "--speed", "3000",
        "--bearing-span", "2400 mm", "--centre-of-mass", "1500 mm", "--json",
    )  # fmt: skip
    whole = json.loads(done.stdout)
    assert whole["u_per_gmm"] == pytest.approx(28.6e3, abs=100.0)
    assert [p["plane"] for p in whole["planes"]] == ["bearing A", "bearing B"]
    assert list(whole["planes"][0]) == [
        "plane", "permissible_gmm", "residual_gmm", "residual_ci95", "probability_within", "verdict"
    ]  # fmt: skip


def damaged(name):
    """Content of a damaged copy of the initial recording."""

    def make(folder, target):
        samples, rate = soundfile.read(folder / "initial.wav", dtype="float32")
        if name == "no pulses":
            samples[:, 0] = 0.0
        elif name == "one pulse":
            samples[:, 0] = 0.0
            samples[9000:9100, 0] = 0.5
        elif name == "silent":
            samples[:, 1] = 0.0
        elif name == "clipped":
            samples[:, 1] = np.clip(400.0 * samples[:, 1], -1.0, 1.0)
        elif name == "nan":
            samples[5000, 2] = np.nan
        soundfile.write(target, samples, rate, subtype="FLOAT")

    return make


@pytest.mark.parametrize(
    ("name", "match"),
    [
        ("no pulses", "the pulse channel is constant: no pulses"),
        ("one pulse", "pulses? .*need 3 or more"),
        ("silent", 'input 2 ("drive end horizontal") is silent'),
        ("clipped", 'input 2 ("drive end horizontal") is clipped'),
        ("nan", "input 3 has a value that is not finite"),
    ],
)
def test_bad_recordings_end_in_one_line_and_write_nothing(folder, tmp_path, name, match):
    damaged(name)(folder, tmp_path / "bad.wav")
    done = stillshaft(
        "vector", tmp_path / "bad.wav", "--hookup", folder / "h.toml", "--append", tmp_path / "runs.toml", "--run", "r"
    )
    message = assert_one_line(done)
    assert "bad.wav" in message
    assert match in message or re.search(match, message)
    assert not (tmp_path / "runs.toml").exists()


@pytest.mark.parametrize(
    ("arguments", "match"),
    [
        (["vector", "nothing.wav", "--hookup", "h.toml"], "nothing.wav: there is no such file"),
        (["vector", "initial.wav"], "initial.wav: carries no hook-up; name one with --hookup FILE"),
        (["vector", "initial.wav", "--hookup", "nothing.toml"], "nothing.toml: there is no such file"),
        (["vector", "h.toml", "--hookup", "h.toml"], "h.toml: is no recording that can be read"),
        (["vector", "initial.wav", "--hookup", "h.toml", "--order", "5000"], "order 5000 .* more than 0.45"),
        (["vector", "initial.wav", "--hookup", "h.toml", "--order", "-1"], "order -1.0: must be above 0"),
        (["vector", "initial.wav", "--hookup", "h.toml", "--order", "1e308"], "order 1e.308: must be above 0, from"),
        (
            ["vector", "initial.wav", "--hookup", "h.toml", "--append", "r.toml", "--run", "x", "--mass", "disc 8"],
            "write plane, mass and angle",
        ),
        (
            [
                "vector",
                "initial.wav",
                "--hookup",
                "h.toml",
                "--append",
                "r.toml",
                "--run",
                "x",
                "--mass",
                "disc = 8 m at 3",
            ],
            "is not a unit of kg",
        ),
        (["solve", "nothing.toml"], "nothing.toml: there is no such file"),
        (["solve", "h.toml"], "h.toml: .*: unknown key|h.toml: .* is missing"),
        (["solve", RAO, "--method", "magic"], "method magic: cannot be used"),
        (["tolerance"], "rotor mass: is missing"),
        (["tolerance", "--grade", "G7", "--rotor-mass", "1 kg", "--speed", "10"], 'grade "G7"'),
        (["tolerance", "--rotor-mass", "heavy"], "--rotor-mass: "),
    ],
)
def test_bad_input_ends_in_one_line(folder, arguments, match):
    assert re.search(match, assert_one_line(stillshaft(*arguments, cwd=folder)))
    assert not (folder / "r.toml").exists()


def test_a_hookup_for_more_inputs_than_the_recording_has_is_refused(folder, tmp_path):
    table = simulated.demo_hookup()
    table["point"][0]["input"] = 9
    (tmp_path / "h.toml").write_text(tomli_w.dumps(table))
    message = assert_one_line(stillshaft("vector", folder / "initial.wav", "--hookup", tmp_path / "h.toml"))
    assert "has 3 inputs, but the hook-up uses input 9" in message


@pytest.mark.parametrize(
    "arguments", [["vector"], ["nonsense"], ["solve", RAO, "--nonsense"], ["vector", "a.wav", "--append", "r.toml"]]
)
def test_wrong_usage_is_status_2(arguments):
    done = stillshaft(*arguments)
    assert done.returncode == 2
    assert "Traceback" not in done.stderr


def test_a_vector_not_to_be_trusted_is_status_3(folder, tmp_path):
    samples, rate = soundfile.read(folder / "initial.wav", dtype="float32")
    samples[:, 1] += 0.05 * np.cos(2 * np.pi * (1480.0 / 60.0 + 0.4) * np.arange(len(samples)) / rate).astype(
        np.float32
    )
    soundfile.write(tmp_path / "beat.wav", samples, rate, subtype="FLOAT")
    done = stillshaft("vector", tmp_path / "beat.wav", "--hookup", folder / "h.toml", "--json")
    assert done.returncode == 3
    whole = json.loads(done.stdout)
    assert whole["trusted"] is False
    assert whole["points"][0]["steadiness"]["verdict"] in ("beating", "walking")
    assert "second source" in whole["reasons"][0]


def test_help_answers_at_once_and_loads_nothing_heavy():
    code = (
        "import sys, stillshaft.ui.cli\nprint([m for m in ('numpy', 'scipy', 'pint', 'PySide6') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


# steadiness


@pytest.fixture(scope="module")
def beside(tmp_path_factory):
    """A recording with a second source 18 r/min above the shaft, a fifth as strong, and its hook-up."""
    folder = tmp_path_factory.mktemp("beside")
    samples = rotor(10)  # three beats: not averaged out yet
    time_s = np.arange(samples.shape[0]) / 48_000.0
    samples[:, 1] += 0.04 * np.cos(2 * np.pi * (1518.0 / 60.0) * time_s + 0.4)
    soundfile.write(folder / "r.wav", samples, 48_000, subtype="FLOAT")
    (folder / "h.toml").write_text(HOOKUP)
    (folder / "c.toml").write_text(
        'format = 1\n[[machine]]\nname = "pump"\nspeed = "759 rpm"\nwithin = "1 rpm"\n'
        '[[machine]]\nname = "motor"\nspeed = "1490 rpm"\nwithin = "2 rpm"\n'
    )
    return folder


def test_steadiness_names_the_second_source_and_what_fits_it(beside):
    done = stillshaft("steadiness", "r.wav", "--hookup", "h.toml", "--candidates", "c.toml", "--json", cwd=beside)
    assert done.returncode == 3, done.stderr
    point = json.loads(done.stdout)["points"][0]
    assert point["verdict"] == "beating"
    assert point["beat"]["source_rpm"] == [pytest.approx(1518.0, abs=0.5)]
    assert point["beat"]["ratio"] == pytest.approx(0.2, rel=0.02)
    fitting = {c["name"]: (c["multiple"], c["fits"]) for c in point["candidates"]}
    assert fitting == {"pump": (2, True), "motor": (1, False)}
    told = stillshaft("steadiness", "r.wav", "--hookup", "h.toml", "--candidates", "c.toml", cwd=beside)
    assert told.returncode == 3
    assert "2 × pump, 1518.0 r/min, fits" in told.stdout
    assert "do not trust" in told.stdout


def test_steadiness_refuses_a_bad_list_in_one_line(beside):
    (beside / "bad.toml").write_text('format = 1\nline = "many"')
    done = stillshaft("steadiness", "r.wav", "--hookup", "h.toml", "--candidates", "bad.toml", cwd=beside)
    assert 'bad.toml: line: "many" is not a speed' in assert_one_line(done)
