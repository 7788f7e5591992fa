"""Recordings from anywhere: what would wait, grow or never end is refused in one line that names the file."""

import json
import os

import numpy as np
import pytest
from stillshaft.acquire import conversion, exchange, recording, scenario, simulated
from stillshaft.acquire.hookup import HookupError, hookup_from
from stillshaft.acquire.recording import RecordingError
from stillshaft.acquire.source import SourceError

HOOKUP = simulated.demo_hookup()


def refused(path, words, hookup=None):
    with pytest.raises(RecordingError, match=words) as caught, exchange.open_any(path, hookup) as reader:
        for _ in reader.blocks():
            pass
    assert str(caught.value).startswith(str(path))
    assert "\n" not in str(caught.value)


def recorded(folder):
    recorder = recording.Recorder(folder / "a.au", 4800.0, ["pulse", "A"], "card", None)
    recorder.write(np.zeros((100, 2), dtype="f4"))
    recorder.close(complete=True)
    return folder / "a.au"


@pytest.mark.parametrize(
    "event",
    [
        {"kind": "gap", "frame": "x"}, {"kind": "gap", "frame": [1]}, {"kind": "gap", "frame": -5},
        {"kind": "gap", "frame": 10**30},
        {"kind": "gap", "frame": 5, "lost_frames": {}}, {"kind": "start", "skew_s": ["x"]}, {"kind": "start", "skew_s": 3},
        {"kind": "start", "skew_s": [1e300]}, {"kind": "start", "hookup": 3}, {"kind": []}, [1], "start",
    ],
)  # fmt: skip
def test_an_event_log_with_anything_in_it(tmp_path, event):
    path = recorded(tmp_path)
    recording.events_path(path).write_text(json.dumps(event) + "\n")
    with pytest.raises(RecordingError, match="line 1 is damaged; remove the file"):
        recording.open_recording(path)
    assert recording.device_of(path) == ""


def test_an_event_log_that_is_deep_or_large(tmp_path, monkeypatch):
    path = recorded(tmp_path)
    recording.events_path(path).write_bytes(b'{"kind":' + b"[" * 50_000 + b"\n")
    with pytest.raises(RecordingError, match="line 1 is damaged"):
        recording.open_recording(path)
    recording.events_path(path).write_text("".join(f'{{"kind":"gap","frame":{n}}}\n' for n in range(30)))
    monkeypatch.setattr(recording, "MOST_GAPS", 20)
    with pytest.raises(RecordingError, match="more than 20 gaps"):
        recording.open_recording(path)
    monkeypatch.setattr(recording, "MOST_LOG_BYTES", 100)
    with pytest.raises(RecordingError, match="is larger than"):
        recording.open_recording(path)


def test_what_is_no_file(tmp_path):
    for name in ("a.au", "a.csv", "a.h5"):
        os.mkfifo(tmp_path / name)  # nobody writes into it: reading it would wait for ever
        refused(tmp_path / name, "no ordinary file")
    refused(tmp_path / ("x" * 300 + ".au"), "cannot be read|there is no such file")
    (tmp_path / "a.raw").write_bytes(b"\0" * 100)
    refused(tmp_path / "a.raw", "is no recording")


@pytest.mark.parametrize("begin", [b"ID3\4", b"\xff\xfb\x90\x64", b"\xff" * 8])
def test_mp3_is_refused_without_a_word_of_its_library(tmp_path, capfd, begin):
    """The eleven bits of ones that a frame begins with: ISO/IEC 11172-3, from memory."""
    (tmp_path / "a.wav").write_bytes(begin + bytes(5000))
    refused(tmp_path / "a.wav", "is MP3, which keeps neither amplitude nor phase; record as WAV, FLAC or AU")
    assert capfd.readouterr() == ("", "")


def test_a_table_s_comments_are_looked_through_at_once(tmp_path):
    (tmp_path / "a.csv").write_text(("# rate " + 19_000 * " " + "\n") * 190 + "1,2\n" * 20)
    refused(tmp_path / "a.csv", "nothing says the sample rate")


def test_inputs_and_rates_have_bounds(tmp_path):
    (tmp_path / "a.csv").write_text("# rate = 4800 Hz\n" + ",".join(["1"] * 300) + "\n")
    refused(tmp_path / "a.csv", "has 300 inputs; 1 to 256")
    (tmp_path / "b.csv").write_text("# rate = 99000000 Hz\n1,2\n1,2\n")
    refused(tmp_path / "b.csv", "a sample rate of 9.9e.07 Hz is none")
    (tmp_path / "c.csv").write_text("rate" + " " * 30_000 + "\n1,2\n")
    refused(tmp_path / "c.csv", "lines of more than 20000 letters")
    (tmp_path / "d.csv").write_bytes(b"# rate = 4800 Hz\n" + b"1,2\n" * 3000 + b"\xff,2\n")
    refused(tmp_path / "d.csv", "cannot be read from frame|is damaged")


def test_hdf5_that_says_more_than_it_holds_or_reads_elsewhere(tmp_path):
    h5py = pytest.importorskip("h5py")

    def made(name, make):
        with h5py.File(tmp_path / name, "w") as file:
            make(file)
            if "samples" in file and name != "link.h5":
                file["samples"].attrs["rate_hz"] = 4800.0
        return tmp_path / name

    huge = made("huge.h5", lambda f: f.create_dataset("samples", (10**12, 2), "f4", chunks=(1000, 2)))
    refused(huge, "1000000000000 frames, more than it can hold")
    texts = made("texts.h5", lambda f: f.create_dataset("samples", (2, 2), h5py.string_dtype()))
    refused(texts, "its samples are no numbers")
    early = made(
        "early.h5", lambda f: f.create_dataset("samples", data=np.ones((9, 2))).attrs.__setitem__("about", "{}")
    )
    refused(early, "early version; convert the recording itself anew")
    about = made("about.h5", lambda f: f.update({"samples": np.ones((9, 2)), "about": np.ones((3, 3))}))
    refused(about, "not what this program writes")
    (tmp_path / "secret").write_bytes(b"not for reading " * 10)
    outside = [(str(tmp_path / "secret"), 0, 160)]
    refused(
        made("raw.h5", lambda f: f.create_dataset("samples", (20, 2), "f4", external=outside)), "lie in another file"
    )
    other = made("other.h5", lambda f: f.create_dataset("samples", data=np.ones((9, 2))))
    refused(
        made("link.h5", lambda f: f.__setitem__("samples", h5py.ExternalLink(str(other), "samples"))),
        "lie in another file",
    )


def test_mat_that_holds_no_numbers_or_too_many(tmp_path, monkeypatch):
    from scipy.io import savemat

    savemat(tmp_path / "a.mat", {"samples": np.array([["a", 1], ["b", 2]], dtype=object), "rate_hz": 4800.0})
    refused(tmp_path / "a.mat", "samples must be a table of numbers")
    savemat(tmp_path / "b.mat", {"samples": np.zeros((2000, 2)), "rate_hz": 4800.0}, do_compression=True)
    monkeypatch.setattr(exchange, "_MOST_PER_BYTE", 5)
    refused(tmp_path / "b.mat", "2000 frames of 2 inputs, more than can be read")


def test_a_hook_up_of_more_inputs_than_the_recording(tmp_path):
    path = recorded(tmp_path)
    with pytest.raises(HookupError, match="input"):
        conversion.convert(path, tmp_path / "b.csv", hookup_from(HOOKUP))
    assert sorted(p.name for p in tmp_path.iterdir()) == ["a.au", "a.events.jsonl"]


@pytest.mark.parametrize("sensor", ['name = "pulse\\n"', 'name = "A"\nangle = inf', 'name = ""'])
def test_a_scenario_s_sensors_must_do_for_a_hook_up(tmp_path, sensor):
    path = tmp_path / "s.toml"
    path.write_text(f"format = 1\n[[sensor]]\nbearing = 1\n{sensor}\n")
    with pytest.raises(SourceError, match="name|angle"):
        scenario.load(path)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        (
            "[flexible]\nfrequency = '70 Hz'\nmass = '2 kg'\nat_bearings = [nan, 1.0]\nat_planes = [1.0, 1.0]",
            "at_bearings 1: nan",
        ),
        ("[conditions]\nwander_percent = 1e300", "wander_percent: 1e.300 must be finite, at most 1e.12"),
        ("[conditions]\nnoise = '1e20 m/s^2'", "noise: .* is too large for a machine"),
        ("[conditions]\nharmonics = [" + '"1 m/s^2",' * 101 + "]", "harmonics: has 101 entries, at most 100"),
    ],
)
def test_a_scenario_has_numbers_of_a_machine(tmp_path, text, words):
    path = tmp_path / "s.toml"
    path.write_text(f"format = 1\n{text}\n")
    with pytest.raises(SourceError, match=words):
        scenario.load(path)


def test_a_damaged_tdms_file_prints_nothing_of_what_it_holds(tmp_path, capfd):
    nptdms = pytest.importorskip("nptdms")
    with nptdms.TdmsWriter(tmp_path / "a.tdms") as writer:
        about = {"wf_increment": 1 / 4800, "unit_string": "V"}
        writer.write_segment([nptdms.ChannelObject("g", "c", np.arange(200.0), about)])
    whole = (tmp_path / "a.tdms").read_bytes()
    for number, data in enumerate(
        (whole[:-100], whole.replace(b"unit_string", b"unit\x1b\xff[2J\xff"), whole + whole[:60])
    ):
        path = tmp_path / f"{number}.tdms"
        path.write_bytes(data)
        try:
            with exchange.open_any(path) as reader:
                assert sum(len(b.samples) for b in reader.blocks()) <= 400
        except RecordingError as error:
            assert str(error).isprintable()  # noqa: PT017 - cut files may be read as far as they go
    said = capfd.readouterr()
    assert said.out == said.err == ""
