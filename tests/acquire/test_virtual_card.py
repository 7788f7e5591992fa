"""The real sound path: PortAudio and PulseAudio, a known signal played and captured, vectors right."""

import ctypes
import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import numpy as np
import pytest
import soundfile
from conftest import children
from rotor_signal import HOOKUP, RATE, rotor
from stillshaft.acquire import catalogue, process, soundcard
from stillshaft.acquire.hookup import hookup_from
from stillshaft.acquire.source import SourceError


def wait_for_sound(card):
    """Playing has begun when the server lists the player's stream."""
    deadline = time.monotonic() + 5.0
    while not subprocess.run(
        ["pactl", "list", "short", "sink-inputs"], env=card.environment, capture_output=True, check=True
    ).stdout:
        assert time.monotonic() < deadline
        time.sleep(0.02)


def test_samples_arrive_bit_exact(virtual_card, tmp_path):
    inputs = soundcard.list_inputs()
    found = next(i for i in inputs if i.name == "pulse")
    assert found.converted  # it may convert; here it does not, and that is shown below
    frames = np.arange(4 * RATE)[:, None]
    # every value names its frame and its channel, so loss, swap and resampling all show
    known = ((frames % (1 << 19)) + 1 + (np.arange(4)[None, :] << 19)) / 2**23
    known = known.astype(np.float32)
    player = None

    def start_playing(share, text):
        nonlocal player
        if player is None and share > 0.0:
            player = virtual_card.play(known)

    summary = process.capture(
        soundcard.SoundCard(found.host_api, found.name, 4, float(RATE)),
        tmp_path / "known.au",
        7.0,
        None,
        list("abcd"),
        start_playing,
    )
    player.wait(10)
    assert (summary.complete, summary.frames, summary.gaps) == (True, 7 * RATE, ())
    captured, rate = soundfile.read(tmp_path / "known.au", dtype="float32")
    first = int(np.flatnonzero(captured.any(axis=1))[0])
    assert rate == RATE
    np.testing.assert_array_equal(captured[first : first + len(known)], known)


def test_command_line_captures_and_measures(virtual_card, tmp_path):
    (tmp_path / "hookup.toml").write_text(HOOKUP)
    player = virtual_card.play(rotor(16))
    wait_for_sound(virtual_card)
    time.sleep(0.7)
    run = [sys.executable, "-m", "stillshaft.ui.cli"]
    listed = subprocess.run([*run, "sources", "--json"], capture_output=True, text=True, check=True)
    assert "ALSA/pulse" in [row["source"] for row in json.loads(listed.stdout)["sources"]]
    done = subprocess.run(
        [*run, "capture", "ALSA/pulse", "run.au", "--hookup", "hookup.toml", "--seconds", "6"],
        cwd=tmp_path, capture_output=True, text=True, check=False,
    )  # fmt: skip
    player.kill()
    player.wait()
    assert done.returncode == 0, done.stderr
    assert "may convert the samples" in done.stderr
    # the recording explains itself: no hook-up is named here
    done = subprocess.run(
        [*run, "vector", "run.au", "--json"], cwd=tmp_path, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    near, far = json.loads(done.stdout)["points"]
    for point, amplitude, phase_deg in ((near, 0.2, 70.0), (far, 0.1, 250.0)):
        assert point["amplitude"] == pytest.approx(amplitude * 50.0 / np.sqrt(2.0), rel=1e-3)
        assert point["phase_deg"] == pytest.approx(phase_deg, abs=0.1)


def test_a_server_that_dies_is_a_lost_source_and_the_recording_is_kept(virtual_card, tmp_path):
    request = soundcard.SoundCard("ALSA", "pulse", 4, float(RATE))

    def kill_server(share, text):
        if share > 0.2:
            virtual_card.server.kill()

    began = time.monotonic()
    summary = process.capture(request, tmp_path / "lost.au", 5.0, None, list("abcd"), kill_server)
    assert time.monotonic() - began < 15.0
    assert not summary.complete
    assert "stopped delivering" in summary.reason
    assert 0 < soundfile.info(tmp_path / "lost.au").frames == summary.frames
    assert '"complete": false' in (tmp_path / "lost.events.jsonl").read_text()


@pytest.mark.parametrize(
    ("channels", "rate_hz", "match"),
    [(4, 44_100.0, "the sound server resamples"), (4, 96_000.0, "resamples"), (2, 48_000.0, "sorts the channels anew")],
)
def test_a_server_that_would_convert_is_refused(virtual_card, channels, rate_hz, match):
    with pytest.raises(SourceError, match=f"{match}.*; its source has 4 inputs at 48000 Hz: record all of it so"):
        process.Acquisition(soundcard.SoundCard("ALSA", "pulse", channels, rate_hz))


def test_all_inputs_of_the_servers_source_are_taken_at_its_rate(virtual_card):
    two = hookup_from(
        {"format": 1, "point": [{"name": "a", "input": 2, "quantity": "velocity", "sensitivity": "1 V/(m/s)"}]}
    )
    request = catalogue.choose("ALSA/pulse", two).request
    assert (request.channels, request.rate_hz) == (4, 48_000.0)


def test_a_volume_that_is_changed_during_a_run_is_said(virtual_card, tmp_path):
    def turn_down(share, text):
        if share > 0.5:
            subprocess.run(["pactl", "set-source-volume", "@DEFAULT_SOURCE@", "50%"], check=True)

    request = soundcard.SoundCard("ALSA", "pulse", 4, float(RATE))
    summary = process.capture(request, tmp_path / "x.au", 1.5, None, list("abcd"), turn_down)
    assert summary.complete
    assert "the source volume was changed during the run, from front-left 100 %" in summary.remarks[0]
    events = [json.loads(line) for line in (tmp_path / "x.events.jsonl").read_text().splitlines()]
    volumes = [e["text"] for e in events if e["kind"] == "volume"]
    assert len(volumes) == 2
    assert "front-left 50 %" in volumes[1]


def freeze_server(card, acquisition):
    os.kill(card.server.pid, signal.SIGSTOP)


def restart_server(card, acquisition):
    card.server.kill()
    card.server.wait()
    card.start()


def kill_driver(card, acquisition):
    os.kill(children(acquisition._process.pid)[0], signal.SIGKILL)


def hang_driver(card, acquisition):
    os.kill(children(acquisition._process.pid)[0], signal.SIGSTOP)


@pytest.mark.parametrize("trouble", [freeze_server, restart_server, kill_driver, hang_driver])
def test_a_lost_source_is_back_within_a_second_and_the_recording_goes_on(virtual_card, tmp_path, trouble):
    """First new sample 1 s after the alarm and 2 s after the last good block at the latest; the gap is marked."""
    request = soundcard.SoundCard("ALSA", "pulse", 4, float(RATE))
    with process.Acquisition(request) as acquisition:
        acquisition.record(tmp_path / "x.au", None, list("abcd"), seconds=4.0)
        begun = good = time.monotonic()
        frames, alarm, back, done = acquisition.frames, None, None, False
        while (summary := acquisition.finished_recording()) is None:
            now = time.monotonic()
            assert now < begun + 20.0
            if acquisition.frames != frames:
                back = now if alarm is not None and back is None else back
                good = now if alarm is None else good
                frames = acquisition.frames
            if not done and now > begun + 1.5:
                done = True
                trouble(virtual_card, acquisition)
            if done and acquisition.trouble and alarm is None:
                alarm = now
                os.kill(virtual_card.server.pid, signal.SIGCONT)
            time.sleep(0.002)
    assert summary.complete
    assert summary.frames == 4 * RATE
    assert len(summary.gaps) == 1
    assert back - alarm < 1.0
    assert back - good < 2.0
    events = [json.loads(line) for line in (tmp_path / "x.events.jsonl").read_text().splitlines()]
    (gap,) = (e for e in events if e["kind"] == "gap")
    assert gap["lost_frames"] / RATE == pytest.approx(back - good, abs=0.3)
    assert "missing" in gap["text"]


def test_a_source_unloaded_for_good_is_given_up_in_words(virtual_card, tmp_path):
    def unload(share, text):
        if share > 0.2:
            subprocess.run(
                ["pactl", "unload-module", "module-null-sink"], env=virtual_card.environment, capture_output=True
            )

    request = soundcard.SoundCard("ALSA", "pulse", 4, float(RATE))
    summary = process.capture(request, tmp_path / "x.au", 4.0, None, list("abcd"), unload)
    assert not summary.complete
    assert "did not come back within 8 s" in summary.reason
    assert soundfile.info(tmp_path / "x.au").frames == summary.frames > 0


def test_a_program_that_stalls_with_its_interpreter_locked_loses_nothing(virtual_card, tmp_path):
    """Five seconds in one C call that keeps the interpreter's lock."""
    frames = np.arange(9 * RATE)[:, None]
    known = (((frames % (1 << 19)) + 1 + (np.arange(4)[None, :] << 19)) / 2**23).astype(np.float32)
    request = soundcard.SoundCard("ALSA", "pulse", 4, float(RATE))
    with process.Acquisition(request) as acquisition:
        acquisition.record(tmp_path / "x.au", None, list("abcd"), seconds=7.0)
        player = virtual_card.play(known)
        time.sleep(1.0)
        ctypes.PyDLL(None).usleep(5_000_000)
        while (summary := acquisition.finished_recording()) is None:
            time.sleep(0.02)
    player.kill()
    player.wait()
    assert (summary.complete, summary.gaps) == (True, ())
    captured = soundfile.read(tmp_path / "x.au", dtype="float32")[0]
    first = int(np.flatnonzero(captured.any(axis=1))[0])
    assert first < 1.5 * RATE
    np.testing.assert_array_equal(captured[first:], known[: len(captured) - first])


def test_a_program_that_is_killed_leaves_a_closed_recording_and_no_process(virtual_card, tmp_path):
    code = (
        "import sys, time\nfrom pathlib import Path\nfrom stillshaft.acquire import process, soundcard\n"
        "if __name__ == '__main__':\n"
        " a = process.Acquisition(soundcard.SoundCard('ALSA', 'pulse', 4, 48000.0))\n"
        " a.record(Path(sys.argv[1]), None, list('abcd'), seconds=60.0)\n"
        " print(a._process.pid, flush=True)\n time.sleep(60)\n"
    )
    (tmp_path / "program.py").write_text(code)
    program = subprocess.Popen(
        [sys.executable, tmp_path / "program.py", tmp_path / "x.au"], stdout=subprocess.PIPE, text=True
    )
    keeper = int(program.stdout.readline())
    driver = children(keeper)[0]
    time.sleep(1.5)
    program.kill()
    program.communicate()
    deadline = time.monotonic() + 5.0
    while any(Path(f"/proc/{p}").exists() for p in (keeper, driver)):
        assert time.monotonic() < deadline
        time.sleep(0.02)
    assert soundfile.info(tmp_path / "x.au").frames > 0.5 * RATE
    last = json.loads((tmp_path / "x.events.jsonl").read_text().splitlines()[-1])
    assert (last["kind"], last["complete"], last["reason"]) == ("stop", False, "the program ended")


@pytest.mark.parametrize("text", ["nonsense", "", "ALSA/nonsense"])
def test_an_unknown_source_is_refused_with_the_list(text):
    inputs = [soundcard.SoundInput("ALSA", "hw:0", 2, 48_000.0, False)]
    with pytest.raises(soundcard.SourceError, match='not found; there is "ALSA/hw:0"'):
        soundcard.find_input(text, inputs)


def test_a_name_that_is_there_twice_is_refused():
    inputs = [soundcard.SoundInput(api, "line", 2, 48_000.0, False) for api in ("one", "two")]
    with pytest.raises(soundcard.SourceError, match='not unique; there is "one/line", "two/line"'):
        soundcard.find_input("line", inputs)
    assert soundcard.find_input("two/line", inputs).host_api == "two"
