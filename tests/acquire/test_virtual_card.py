"""The real sound path: PortAudio and PulseAudio, a known signal played and captured, vectors right."""

import json
import subprocess
import sys
import time

import numpy as np
import pytest
import soundfile
from rotor_signal import HOOKUP, RATE, rotor
from stillshaft.acquire import process, soundcard


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
