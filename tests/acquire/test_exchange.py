"""Recordings from and for other programs: round trips read by the third-party readers, bad files in one line."""

import subprocess
import sys

import h5py
import nptdms
import numpy as np
import pytest
import pyuff
import soundfile
from scipy.io import loadmat, savemat
from stillshaft.acquire import conversion, exchange, hookup, recording

RATE_HZ = 48_000.0
SAMPLES = (0.5 * np.sin(np.outer(np.arange(30_000), [0.01, 0.02, 0.03]))).astype(np.float32)
TABLE = {
    "format": 1,
    "pulse": {"input": 1},
    "point": [
        {"name": "a", "input": 2, "quantity": "velocity", "sensitivity": "20 mV/(mm/s)", "full_scale": "5 V"},
        {"name": "b", "input": 3, "quantity": "acceleration", "sensitivity": "100 mV/g", "inverted": True},
    ],
}
HOOKUP = hookup.hookup_from(TABLE)


@pytest.fixture
def source(tmp_path):
    recorder = recording.Recorder(tmp_path / "x.au", RATE_HZ, ["pulse", "a", "b"], "bench", TABLE)
    recorder.write(SAMPLES)
    recorder.close(complete=True)
    return tmp_path / "x.au"


def read_back(path, wired=HOOKUP):
    with exchange.open_any(path, wired) as reader:
        assert (reader.rate_hz, reader.channels, reader.frames) == (RATE_HZ, 3, len(SAMPLES))
        return np.concatenate([b.samples for b in reader.blocks(7001)]), reader.hookup


@pytest.mark.parametrize("suffix", conversion.WRITTEN)
def test_every_format_comes_back_as_it_was(source, tmp_path, suffix):
    assert conversion.convert(source, tmp_path / f"y{suffix}", HOOKUP) == len(SAMPLES)
    samples, wiring = read_back(tmp_path / f"y{suffix}")
    np.testing.assert_allclose(samples, SAMPLES, atol=2**-23 if suffix == ".flac" else 1e-7)
    if suffix in (".au", ".h5", ".mat"):
        assert wiring == TABLE
    assert sorted(p.suffix for p in tmp_path.iterdir() if p.name.startswith(".")) == []


def test_other_readers_agree(source, tmp_path):
    """soundfile, h5py, scipy.io, pyuff and numpy on what is written; tables and universal files hold volts."""
    volts = SAMPLES * [1.0, 5.0, 2.0]
    for suffix in conversion.WRITTEN:
        if suffix != ".au":
            conversion.convert(source, tmp_path / f"y{suffix}", HOOKUP)
    assert np.array_equal(soundfile.read(tmp_path / "y.wav", dtype="float32")[0], SAMPLES)
    assert soundfile.info(tmp_path / "y.flac").subtype == "PCM_24"
    with h5py.File(tmp_path / "y.h5") as file:
        assert np.array_equal(file["samples"][:], SAMPLES)
        assert file["samples"].attrs["rate_hz"] == RATE_HZ
    content = loadmat(tmp_path / "y.mat")
    assert np.array_equal(content["samples"], SAMPLES)
    assert content["rate_hz"].item() == RATE_HZ
    sets = pyuff.UFF(str(tmp_path / "y.uff")).read_sets()
    assert [s["id1"].strip() for s in sets] == ["pulse", "a", "b"]
    np.testing.assert_allclose(np.column_stack([s["data"] for s in sets]), volts, atol=1e-9)
    assert sets[0]["abscissa_inc"] == pytest.approx(1 / RATE_HZ, rel=1e-5)  # six digits in the format
    np.testing.assert_allclose(np.loadtxt(tmp_path / "y.csv", delimiter=",", skiprows=2), volts, atol=1e-8)


def test_tdms_is_read(tmp_path):
    volts = SAMPLES * [1.0, 5.0, 2.0]
    with nptdms.TdmsWriter(tmp_path / "x.tdms") as writer:
        for part in np.array_split(volts, 3):
            writer.write_segment(
                [nptdms.ChannelObject("g", n, part[:, i], {"wf_increment": 1 / RATE_HZ}) for i, n in enumerate("abc")]
            )
    np.testing.assert_allclose(read_back(tmp_path / "x.tdms")[0], SAMPLES, atol=1e-7)


def wired(**more):
    return hookup.hookup_from({**TABLE, **more})


@pytest.mark.parametrize("delimiter", [",", ";", "\t", " "])
def test_tables_with_a_time_column(tmp_path, delimiter):
    rows = np.column_stack([np.arange(2000) / 1000.0, SAMPLES[:2000, :2]])
    np.savetxt(tmp_path / "t.csv", rows, delimiter=delimiter, header="time pulse a", comments="", fmt="%.9g")
    table = {**TABLE, "pulse": {"input": 2}, "point": [{**TABLE["point"][0], "input": 3}], "time_column": 1}
    with exchange.open_any(tmp_path / "t.csv", hookup.hookup_from(table)) as reader:
        assert reader.rate_hz == pytest.approx(1000.0)
        samples = np.concatenate([b.samples for b in reader.blocks()])
    np.testing.assert_allclose(samples[:, 2], rows[:, 2] / 5.0, atol=1e-7)


def test_a_decimal_comma_is_read(tmp_path):
    (tmp_path / "t.csv").write_text("a;b;c\n" + "0,5;1,5;2,5\n" * 100)
    with exchange.open_any(tmp_path / "t.csv", wired(rate="1 kHz")) as reader:
        np.testing.assert_allclose(next(reader.blocks()).samples[0], [0.5, 0.3, 1.25])


def test_scaled_values_are_si(tmp_path):
    """1 m/s² at b: −0.1 V/g · 1/9.80665 over 2 V of full scale; inverted."""
    np.savetxt(tmp_path / "t.csv", np.ones((100, 3)), delimiter=",")
    with exchange.open_any(tmp_path / "t.csv", wired(scaled=True, rate="1000 Hz")) as reader:
        assert next(reader.blocks()).samples[0, 2] == pytest.approx(-0.1 / 9.80665 / 2.0)


def bad_files(folder):
    folder.joinpath("words.csv").write_text("all\nof\nit\n")
    folder.joinpath("ragged.csv").write_text("1,2,3\n1,2\n")
    folder.joinpath("norate.csv").write_text("1,2,3\n" * 100)
    folder.joinpath("uneven.csv").write_text("".join(f"{0.001 * i**1.2},2,3\n" for i in range(200)))
    for kind in ("h5", "mat", "uff", "tdms"):
        folder.joinpath(f"bad.{kind}").write_bytes(b"nothing of the kind" * 50)
    with h5py.File(folder / "other.h5", "w") as file:
        file["speed"] = np.arange(5)
    savemat(folder / "other.mat", {"speed": np.arange(5)})
    return folder


@pytest.mark.parametrize(
    ("name", "settings", "match"),
    [
        ("none.csv", {}, "there is no such file"),
        ("words.csv", {"rate": "1 kHz"}, "has no line of numbers"),
        ("ragged.csv", {"rate": "1 kHz"}, "ragged.csv: lines"),
        ("norate.csv", {}, "nothing says the sample rate"),
        ("norate.csv", {"time_column": 7}, "time_column 7, but it has 3 columns"),
        ("norate.csv", {"time_column": 1}, "its times do not rise"),
        ("norate.csv", {"rate": "1 kg"}, "rate"),
        ("uneven.csv", {"time_column": 1}, "not evenly spaced"),
        ("bad.h5", {}, "is damaged or no .h5 file"),
        ("bad.mat", {}, "is damaged or no .mat file"),
        ("bad.uff", {}, "bad.uff: "),
        ("bad.tdms", {}, "bad.tdms: "),
        ("other.h5", {}, 'has no dataset "samples".*it has speed'),
        ("other.mat", {}, "has no variables samples"),
    ],
)
def test_bad_files_are_refused_in_one_line(tmp_path, name, settings, match):
    path, table = bad_files(tmp_path) / name, wired(**settings)
    with pytest.raises(ValueError, match=match) as caught, exchange.open_any(path, table) as reader:
        list(reader.blocks())
    assert type(caught.value).__module__.startswith("stillshaft.")
    assert "\n" not in str(caught.value)


def test_what_cannot_be_written_is_refused_and_nothing_is_left(source, tmp_path):
    before = {p: p.read_bytes() for p in tmp_path.iterdir()}
    for target, match in (("y.mp3", "is written as"), ("x.au", "is there already"), ("no/y.wav", "cannot be written")):
        with pytest.raises(recording.RecordingError, match=match):
            conversion.convert(source, tmp_path / target, HOOKUP)
    assert {p: p.read_bytes() for p in tmp_path.iterdir()} == before


def test_a_full_disk_is_said_for_every_format_and_nothing_is_left(source, tmp_path):
    before = {p: p.read_bytes() for p in tmp_path.iterdir()}
    code = (
        "import resource, sys; from pathlib import Path; from stillshaft.acquire import conversion, recording\n"
        "resource.setrlimit(resource.RLIMIT_FSIZE, (3000, 3000)); folder = Path(sys.argv[1])\n"
        "for suffix in conversion.WRITTEN:\n"
        "    try: conversion.convert(folder / 'x.au', folder / f'y{suffix}', None)\n"
        "    except recording.RecordingError as error: print(error)"
    )
    done = subprocess.run([sys.executable, "-c", code, tmp_path], capture_output=True, text=True, check=True)
    lines = done.stdout.splitlines()
    assert len(lines) == len(conversion.WRITTEN)
    for line in lines:
        assert "the disk is full" in line, line
        assert ".part" not in line, line
    assert {p: p.read_bytes() for p in tmp_path.iterdir()} == before


def test_rate_and_time_column_together_are_refused():
    with pytest.raises(hookup.HookupError, match="time_column: rate is given too"):
        wired(rate="1 kHz", time_column=1)


def test_a_log_of_the_targets_name_is_not_written_over(source, tmp_path):
    (tmp_path / "y.events.jsonl").write_text("of another recording\n")
    with pytest.raises(recording.RecordingError, match=r"y\.events\.jsonl: is there already; choose a new name"):
        conversion.convert(source, tmp_path / "y.au", HOOKUP)
    assert (tmp_path / "y.events.jsonl").read_text() == "of another recording\n"
    assert not (tmp_path / "y.au").exists()


def test_what_a_killed_conversion_left_is_no_hindrance(source, tmp_path):
    for name in (".y.part.au", ".y.part.events.jsonl"):
        (tmp_path / name).write_bytes(b"half")
    assert conversion.convert(source, tmp_path / "y.au", HOOKUP) == len(SAMPLES)
    assert sorted(p.name for p in tmp_path.iterdir()) == ["x.au", "x.events.jsonl", "y.au", "y.events.jsonl"]
