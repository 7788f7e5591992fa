"""The window opens at once and never hangs: measured in a fresh interpreter, as a person starts it."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

FIRST_MS, START_MS, AFTER_MS = 1000.0, 200.0, 100.0
AWAY_TIMES = 4.0  # the machine that tests may be busy: the wall clock is given more than the thread's own time


@pytest.fixture(scope="module")
def told():
    done = subprocess.run(
        [sys.executable, str(Path(__file__).with_name("first_window.py"))],
        capture_output=True, text=True, check=False, timeout=120, env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


def test_the_first_picture_is_there_within_a_second(told):
    assert told["first_ms"] <= FIRST_MS


def test_the_event_loop_is_never_held_up(told):
    for phase, (busy_ms, away_ms) in told["longest_ms"].items():
        limit = START_MS if phase == "start" else AFTER_MS
        assert busy_ms <= limit, phase
        assert away_ms <= AWAY_TIMES * limit, phase
    assert len(told["longest_ms"]) == 10
