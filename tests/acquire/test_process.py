"""The acquisition process and the recordings it leaves."""

import inspect
import json
import os
import signal
import struct
import subprocess
import sys
import time
from datetime import date
from pathlib import Path

import counting
import numpy as np
import pytest
import soundfile
from stillshaft.acquire import hookup, process, recording, replay, ring, simulated, soundcard
from stillshaft.acquire.source import SourceError, SourceLost


def ramp(frames, channels=3):
    """Values that name their frame."""
    return (np.arange(frames)[:, None] / 2**23 + np.arange(channels)).astype(np.float32) / 4


def record_file(path, frames=48_000, rate=48_000.0, **more):
    recorder = recording.Recorder(path, rate, ["pulse", "a", "b"], "bench", more.get("hookup"))
    for start in range(0, frames, 2400):
        recorder.write(ramp(frames)[start : start + 2400], lost_before=2400 if start in more.get("gaps", ()) else None)
    recorder.close(complete=True)
    return path


def test_recording_is_read_by_soundfile_without_repair(tmp_path):
    path = record_file(tmp_path / "a.au")
    samples, rate = soundfile.read(path, dtype="float32")
    assert rate == 48_000
    np.testing.assert_array_equal(samples, ramp(48_000))


def test_a_calibrated_hookup_goes_into_the_recording(tmp_path):
    """A TOML file holds the date of a calibration as a date."""
    table = simulated.demo_hookup()
    table["point"][0]["calibrated"] = {"date": date(2026, 1, 2), "method": "voltage"}
    path = record_file(tmp_path / "a.au", hookup=table)
    with recording.open_recording(path) as reader:
        assert reader.hookup["point"][0]["calibrated"]["date"] == "2026-01-02"
        hookup.hookup_from(reader.hookup)


def test_recording_explains_itself(tmp_path):
    hookup = simulated.demo_hookup()
    path = record_file(tmp_path / "a.au", hookup=hookup, gaps=(4800,))
    with recording.open_recording(path) as reader:
        assert (reader.frames, reader.channels, reader.rate_hz) == (48_000, 3, 48_000.0)
        assert reader.hookup == hookup
        assert reader.gaps == (4800,)
        np.testing.assert_array_equal(np.concatenate([b.samples for b in reader.blocks(1000)]), ramp(48_000))
    first = json.loads((tmp_path / "a.events.jsonl").read_text().splitlines()[0])
    assert (first["format"], first["kind"], first["rate_hz"]) == (1, "start", 48_000.0)


@pytest.mark.parametrize("kind", ["wav", "flac", "caf", "au"])
def test_other_formats_open_too(tmp_path, kind):
    soundfile.write(tmp_path / f"x.{kind}", ramp(4800), 44_100)
    with recording.open_recording(tmp_path / f"x.{kind}") as reader:
        assert (reader.frames, reader.rate_hz, reader.hookup) == (4800, 44_100.0, None)


def test_nothing_written_is_lost_when_the_program_is_killed(tmp_path):
    """A writer killed with SIGKILL: every frame that write() took is read back."""
    code = (
        "import sys, numpy as np\nfrom pathlib import Path\nfrom stillshaft.acquire.recording import Recorder\n"
        "r = Recorder(Path(sys.argv[1]), 48000.0, ['a', 'b'], 'bench', None)\n"
        "while True:\n r.write(np.full((2400, 2), 0.25, np.float32)); print(r.frames, flush=True)\n"
    )
    for attempt in range(5):
        path = tmp_path / f"{attempt}.au"
        writer = subprocess.Popen([sys.executable, "-c", code, str(path)], stdout=subprocess.PIPE, text=True)
        for _ in range(20 + 7 * attempt):
            taken = int(writer.stdout.readline())
        writer.send_signal(signal.SIGKILL)
        rest = writer.communicate()[0].split()
        taken = int(rest[-1]) if rest else taken
        samples, _ = soundfile.read(path, dtype="float32")
        assert len(samples) >= taken
        assert (samples == 0.25).all()


BAD_FILES = [
    ("missing.wav", None, "there is no such file"),
    ("empty.wav", b"", r"is empty \(0 bytes\)"),
    ("cut.wav", b"RIFF\x00\x00", "has only 6 bytes, less than the header of any recording"),
    ("text.flac", b"not sound at all, only words", "is no recording that can be read"),
    ("zero.au", b".snd" + struct.pack(">5I", 24, 0xFFFFFFFF, 6, 48_000, 2), "no samples|no recording"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "content", "match"), BAD_FILES)
def test_bad_recordings_are_refused_in_one_line(tmp_path, name, content, match):
    if content is not None:
        (tmp_path / name).write_bytes(content)
    with pytest.raises(recording.RecordingError, match=match) as caught:
        recording.open_recording(tmp_path / name)
    assert name in str(caught.value)
    assert "\n" not in str(caught.value)


def test_a_folder_is_no_recording(tmp_path):
    with pytest.raises(recording.RecordingError, match="is a folder"):
        recording.open_recording(tmp_path)


def test_a_damaged_event_log_is_named(tmp_path):
    path = record_file(tmp_path / "a.au")
    (tmp_path / "a.events.jsonl").write_text("{nonsense\n")
    with pytest.raises(recording.RecordingError, match="line 1 is damaged"):
        recording.open_recording(path)


def test_a_torn_last_line_of_the_event_log_is_left_out(tmp_path):
    path = record_file(tmp_path / "a.au", gaps=(2400,))
    log = tmp_path / "a.events.jsonl"
    log.write_bytes(log.read_bytes()[:-15])
    with recording.open_recording(path) as reader:
        assert reader.gaps == (2400,)


def test_a_recording_is_never_written_over(tmp_path):
    path = record_file(tmp_path / "a.au")
    before = path.read_bytes()
    with pytest.raises(recording.RecordingError, match="is there already"):
        process.capture(replay.Replay(path), path, 1.0, None, ["a"])
    assert path.read_bytes() == before


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs /dev/full")
def test_a_full_disk_is_said_and_not_swallowed(tmp_path):
    recorder = recording.Recorder(tmp_path / "a.au", 48_000.0, ["a"], "bench", None)
    recorder._file.close()
    recorder._file = open("/dev/full", "wb", buffering=0)  # noqa: SIM115 - closed by the recorder
    with pytest.raises(recording.RecordingError, match="a.au: .*what was recorded is kept"):
        recorder.write(ramp(2400, 1))
    recorder.close(complete=False, reason="full")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs /dev/full")
def test_a_gap_that_the_full_disk_does_not_take_is_said(tmp_path):
    recorder = recording.Recorder(tmp_path / "a.au", 48_000.0, ["a"], "bench", None)
    recorder.write(ramp(2400, 1))
    recorder._events.close()
    recorder._events = open("/dev/full", "wb", buffering=0)  # noqa: SIM115 - closed by the recorder
    with pytest.raises(recording.RecordingError, match="a.au: .*what was recorded is kept"):
        recorder.write(ramp(2400, 1), lost_before=2400)
    with pytest.raises(recording.RecordingError, match="a.au: "):
        recorder.close(complete=False, reason="full")
    assert soundfile.info(tmp_path / "a.au").frames == 2400


@pytest.mark.parametrize("failing", ["fdatasync", "fsync"])
def test_a_disk_that_cannot_sync_ends_the_recording_in_words(tmp_path, monkeypatch, failing):
    def fail(file):
        raise OSError(5, "Input/output error")

    recorder = recording.Recorder(tmp_path / "a.au", 48_000.0, ["a"], "bench", None)
    if failing == "fsync":
        monkeypatch.delattr(os, "fdatasync", raising=False)
    monkeypatch.setattr(os, failing, fail, raising=False)
    recorder._synced = -1e9
    with pytest.raises(recording.RecordingError, match="Input/output error; what was recorded is kept"):
        recorder.write(ramp(2400, 1))
    recorder.close(complete=False, reason="disk")


@pytest.fixture
def small_disk():
    """Files that may not grow beyond twelve megabytes, for this process and its children."""
    resource = pytest.importorskip("resource")
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (12_000_000, before[1]))
    yield
    resource.setrlimit(resource.RLIMIT_FSIZE, before)


def test_a_disk_that_takes_no_more_ends_the_recording_in_words_and_not_the_source(small_disk, tmp_path):
    """The samples that fit are kept; the source runs on and can be recorded again."""
    with process.Acquisition(counting.Counting(4, 240.0)) as acquisition:
        for name in ("a", "b"):
            acquisition.record(tmp_path / f"{name}.au", None, list("abcd"), seconds=60.0)
            deadline = time.monotonic() + 10.0
            while (summary := acquisition.finished_recording()) is None:
                acquisition.read()
                assert time.monotonic() < deadline
            assert not summary.complete
            assert "what was recorded is kept" in summary.reason
            kept = soundfile.read(tmp_path / f"{name}.au", dtype="float32")[0]
            assert len(kept) > 600_000
            first = round(float(kept[0, 0]) * 2**23) - 1
            np.testing.assert_array_equal(kept, counting.values(first, len(kept), 4))


def test_samples_are_asked_for_as_the_card_made_them():
    """The settings exist in the package with these parameters; they cannot be tried here."""
    sounddevice = pytest.importorskip("sounddevice")
    assert soundcard._unconverted(sounddevice, "ALSA") is None
    for settings, names in (
        (sounddevice.WasapiSettings, {"exclusive", "explicit_sample_format"}),
        (sounddevice.CoreAudioSettings, {"change_device_parameters", "fail_if_conversion_required"}),
    ):
        assert names <= set(inspect.signature(settings.__init__).parameters)


def test_capture_takes_exactly_the_frames_asked_for(tmp_path):
    summary = process.capture(
        replay.Replay(record_file(tmp_path / "a.au"), False), tmp_path / "b.au", 0.7001, None, list("abc")
    )
    assert (summary.frames, summary.complete) == (33_605, True)
    np.testing.assert_array_equal(soundfile.read(tmp_path / "b.au", dtype="float32")[0][:100], ramp(33_605)[:100])


def test_a_source_that_ends_early_leaves_an_incomplete_recording(tmp_path):
    summary = process.capture(
        replay.Replay(record_file(tmp_path / "a.au"), False), tmp_path / "b.au", 3.0, None, list("abc")
    )
    assert (summary.complete, summary.reason) == (False, "the source came to its end")
    assert soundfile.info(tmp_path / "b.au").frames == summary.frames


def test_a_source_that_cannot_open_says_why_in_the_parent(tmp_path):
    with pytest.raises(SourceError, match="no.au: there is no such file"):
        process.Acquisition(replay.Replay(tmp_path / "no.au"))


def test_a_stalled_parent_loses_nothing(tmp_path):
    path = record_file(tmp_path / "a.au", frames=6 * 48_000)
    with process.Acquisition(replay.Replay(path, real_time=True)) as acquisition:
        acquisition.record(tmp_path / "b.au", None, list("abc"), seconds=4.0)
        time.sleep(4.5)  # the parent does nothing at all
        summary = acquisition.finished_recording()
        assert (summary.frames, summary.complete, summary.gaps) == (4 * 48_000, True, ())
        block = acquisition.read()
        assert block.lost_before is None
    values = soundfile.read(tmp_path / "b.au", dtype="float32")[0][:, 0]
    np.testing.assert_array_equal(np.diff(np.round(values.astype(np.float64) * 4 * 2**23)), 1.0)


def test_a_reader_that_is_overrun_is_told(tmp_path):
    path = record_file(tmp_path / "a.au", frames=3 * 48_000)
    with process.Acquisition(replay.Replay(path, real_time=True), ring_seconds=0.5) as acquisition:
        deadline = time.monotonic() + 5.0
        while acquisition.read() is None:
            assert time.monotonic() < deadline
            time.sleep(0.01)
        time.sleep(1.2)
        assert acquisition.read().lost_before > 0


def test_a_killed_child_is_a_failure_in_words(tmp_path):
    path = record_file(tmp_path / "a.au", frames=5 * 48_000)
    with process.Acquisition(replay.Replay(path)) as acquisition:
        acquisition.record(tmp_path / "b.au", None, list("abc"))
        time.sleep(0.3)
        os.kill(acquisition._process.pid, signal.SIGKILL)
        acquisition._process.join()
        with pytest.raises(SourceLost, match=r"b\.au: .*ended unexpectedly.*; what was recorded is kept"):
            acquisition.stop_recording()
    assert soundfile.info(tmp_path / "b.au").frames > 0


def test_no_shared_memory_is_left(tmp_path, monkeypatch):
    attached = []
    attach = ring.Ring.attach

    def watched(shape):
        attached.append(shape)
        return attach(shape)

    monkeypatch.setattr(ring.Ring, "attach", watched)
    with process.Acquisition(replay.Replay(record_file(tmp_path / "a.au"))) as acquisition:
        assert acquisition.channels == 3
    assert attached
    for shape in attached:
        with pytest.raises(FileNotFoundError):
            attach(shape)


def test_simulated_rotor_runs_in_real_time():
    """However busy the machine: never ahead of the clock, and all that is due comes; test_simulated.py has the pace."""
    before = time.monotonic()
    with process.Acquisition(simulated.demo_run(1, [], seed=1, real_time=True)) as acquisition:
        while (frames := acquisition.frames) < 2.0 * acquisition.rate_hz:
            assert frames <= (time.monotonic() - before) * acquisition.rate_hz
            assert acquisition.read() is not None or acquisition.failure is None
            time.sleep(0.01)
        assert frames <= (time.monotonic() - before) * acquisition.rate_hz


def test_a_file_shorter_than_any_header_says_so(tmp_path):
    path = tmp_path / "ten.au"
    path.write_bytes(b".snd" + bytes(6))
    with pytest.raises(recording.RecordingError, match="has only 10 bytes, less than the header of any recording"):
        recording.open_recording(path)
