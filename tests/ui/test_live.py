"""Measuring on a thread: whatever ends it is said, so that no screen waits for ever."""

import time

import pytest
import soundfile
from stillshaft.acquire import hookup as hookups
from stillshaft.acquire.replay import Replay
from stillshaft.acquire.simulated import demo_hookup, demo_run
from stillshaft.dsp.measure import Measuring
from stillshaft.ui.live import Live
from stillshaft.ui.taking import Stop

HOOKUP = hookups.hookup_from(demo_hookup())


def last_of(live):
    """What was posted last, when the thread has ended."""
    deadline = time.monotonic() + 60.0
    while live._thread.is_alive():
        assert time.monotonic() < deadline, "the thread did not end"
        time.sleep(0.01)
    return live.latest


def test_a_fault_of_the_program_ends_in_words(monkeypatch):
    def broken(self, samples, lost_before=None):
        raise ZeroDivisionError("of two\nlines")

    monkeypatch.setattr(Measuring, "feed", broken)
    ended = last_of(Live(demo_run(2, [], seed=1, real_time=False), HOOKUP)).ended
    assert ended.startswith("measuring ended by a fault of the program (ZeroDivisionError: of two lines)")
    assert "start the source again" in ended


def test_a_fault_while_a_run_is_recorded_keeps_the_recording(monkeypatch, tmp_path):
    fed = Measuring.feed

    def broken(self, samples, lost_before=None):
        if live.latest is not None and live.latest.recording_share is not None:
            raise KeyError("a point")
        fed(self, samples, lost_before)

    monkeypatch.setattr(Measuring, "feed", broken)
    live = Live(demo_run(2, [], seed=1, real_time=True), HOOKUP)
    live.record(tmp_path / "a.au", Stop(60.0))
    assert "fault of the program (KeyError: 'a point')" in last_of(live).ended
    assert soundfile.info(tmp_path / "a.au").frames > 0


@pytest.mark.parametrize("kind", ["recording", "simulated"])
def test_a_source_with_fewer_inputs_than_the_hook_up_is_refused(kind, tmp_path):
    table = demo_hookup()
    table["point"][1]["input"] = 7
    source = demo_run(2, [], seed=1, real_time=False, seconds=1.0)
    if kind == "recording":
        samples = source.open().read(1.0).samples
        soundfile.write(tmp_path / "a.wav", samples, 48_000)
        source = Replay(tmp_path / "a.wav")
    ended = last_of(Live(source, hookups.hookup_from(table))).ended
    assert ended.endswith("has 3 inputs, but the hook-up uses input 7")
