"""`check` and `calibrate` on the command line: findings, values written into the hook-up, one line for bad input."""

import json
import time
from dataclasses import dataclass

import numpy as np
import pytest
from known_signals import write_known_signals
from stillshaft.acquire.hookup import load_hookup
from stillshaft.acquire.source import Block
from stillshaft.ui import wiring
from test_cli import assert_one_line, stillshaft

HOOKUP = """
# what hangs on the fan
format = 1
[pulse]
input = 1          # optical
[[point]]
name = "near"      # by the coupling
input = 2
quantity = "acceleration"
sensitivity = "100 mV/g"
full_scale = "2.0 V"
[[point]]
name = "far"
input = 3
quantity = "acceleration"
sensitivity = "100 mV/g"
"""


@pytest.fixture
def folder(tmp_path):
    """A hook-up and recordings of known signals."""
    (tmp_path / "h.toml").write_text(HOOKUP)
    write_known_signals(tmp_path)
    return tmp_path


def calibrated(folder, *arguments):
    done = stillshaft("calibrate", *arguments, "--hookup", "h.toml", cwd=folder)
    assert done.returncode == 0, done.stderr
    return {p.name: p for p in load_hookup(folder / "h.toml").points}


def test_a_known_voltage_is_written_as_full_scale(folder):
    points = calibrated(folder, "voltage", "voltage.wav", "--volts", "1 V")
    assert float(points["near"].table["full_scale"].split()[0]) == pytest.approx(2.5, rel=1e-4)
    assert float(points["far"].table["full_scale"].split()[0]) == pytest.approx(1.9, rel=1e-4)
    text = (folder / "h.toml").read_text()
    assert "# by the coupling" in text  # comments stay
    assert points["near"].table["calibrated"]["method"] == "voltage"
    assert points["near"].table["calibrated"]["full_scale_ci95"].endswith(" V")


def test_a_shaker_calibrates_the_sensor_that_it_was_held_to(folder):
    points = calibrated(folder, "shaker", "shaker.wav")
    assert float(points["far"].table["sensitivity"].split()[0]) == pytest.approx(98.7, rel=1e-3)
    assert points["near"].table["sensitivity"] == "100 mV/g"


def test_a_split_signal_gives_delays_and_a_step_the_corners(folder):
    points = calibrated(folder, "split", "split.wav")
    assert points["near"].delay_s == pytest.approx(10e-6, abs=1e-8)
    assert points["far"].delay_s == pytest.approx(0.0, abs=1e-8)
    points = calibrated(folder, "step", "step.wav")
    assert points["near"].highpass_hz[0] == pytest.approx(2.0, rel=1e-2)
    assert points["far"].highpass_hz[0] == pytest.approx(0.8, rel=1e-2)
    assert points["near"].delay_s == pytest.approx(10e-6, abs=1e-8)  # what was calibrated before stays


def test_a_dry_run_writes_nothing(folder):
    before = (folder / "h.toml").read_bytes()
    done = stillshaft("calibrate", "step", "step.wav", "--hookup", "h.toml", "--dry-run", "--json", cwd=folder)
    assert done.returncode == 0, done.stderr
    assert [p["key"] for p in json.loads(done.stdout)["points"]] == ["highpass", "highpass"]
    assert (folder / "h.toml").read_bytes() == before


@pytest.mark.parametrize(
    ("arguments", "match"),
    [
        (("magic", "voltage.wav"), 'method "magic": voltage, shaker, split or step'),
        (("voltage", "voltage.wav"), 'voltage: say how many, as rms of the sine, with --volts "1 V"'),
        (("voltage", "voltage.wav", "--volts", "1 kg"), "--volts"),
        (("voltage", "voltage.wav", "--volts", "1 V", "--point", "top"), 'has no point "top"; it has near, far'),
        (("shaker", "voltage.wav"), "the strongest tone is 1000.0 Hz, not the shaker's 159.2 Hz"),
        (("split", "shaker.wav"), "the reference input has no clear tone"),
        (("step", "none.wav"), "none.wav: there is no such file"),
    ],
)
def test_bad_input_gets_one_line_and_the_hookup_stays(folder, arguments, match):
    before = (folder / "h.toml").read_bytes()
    assert match in assert_one_line(stillshaft("calibrate", *arguments, "--hookup", "h.toml", cwd=folder))
    assert (folder / "h.toml").read_bytes() == before


@dataclass(frozen=True)
class Taps:
    """Quiet noise in real time, and a tap of half a sine every three seconds: at which input, with which sign."""

    taps: tuple[tuple[int, float], ...]

    def open(self):
        return TapSource(self)


class TapSource:
    rate_hz, channels, description, can_wait, silence_limit_s, skew_s = 8000.0, 3, "taps", False, None, ()

    def __init__(self, order):
        self._taps, self._at, self._rng = order.taps, 0, np.random.default_rng(0)

    def read(self, timeout_s):
        time.sleep(0.05)
        x = 1e-3 * self._rng.standard_normal((400, 3))
        number, within = divmod(self._at, 24_000)
        if within == 16_000 and number < len(self._taps):
            channel, sign = self._taps[number]
            x[100:180, channel] += sign * np.sin(np.pi * np.arange(80) / 80) * 0.2
            x[180:260, channel] -= sign * np.sin(np.pi * np.arange(80) / 80) * 0.3
        self._at += 400
        return Block(self._at - 400, self.rate_hz, x.astype(np.float32))

    def close(self):
        pass


@pytest.mark.parametrize(
    ("taps", "weights", "what"),
    [
        (((1, 1.0), (2, 1.0)), ["fine", "fine"], "shows here and reads positive"),
        (((2, 1.0), (1, 1.0)), ["blocks", "blocks"], 'the tap shows at input 3 ("far")'),
        (((1, -1.0), (2, 1.0)), ["caution", "fine"], "reads negative"),
    ],
)
def test_a_tap_shows_which_input_a_sensor_is_on(folder, taps, weights, what):
    asked = []
    found = wiring.tap_each(Taps(taps), load_hookup(folder / "h.toml"), asked.append, patience_s=6.0)
    assert [f.weight for f in found] == weights
    assert what in found[0].what
    assert asked == ["tap at near, towards its sensor", "tap at far, towards its sensor"]


def test_check_says_fine_of_the_simulated_rotor():
    done = stillshaft("check", "simulated", "--fast", "--seconds", "6")
    assert done.returncode == 0, done.stderr
    assert done.stdout.count("fine") == 3


def test_check_blocks_and_names_what_is_wrong(folder):
    done = stillshaft("check", "recording:voltage.wav", "--hookup", "h.toml", "--fast", "--json", cwd=folder)
    assert done.returncode == 3
    whole = json.loads(done.stdout)
    assert not whole["trusted"]
    assert any(f["weight"] == "blocks" for f in whole["findings"])
    line = assert_one_line(stillshaft("check", "recording:voltage.wav", cwd=folder))
    assert "carries no hook-up; name one with --hookup FILE" in line


def test_a_nameplate_without_a_speed_is_wrong_usage():
    done = stillshaft("check", "simulated", "--nameplate", "0")
    assert done.returncode == 2
    assert "--nameplate" in done.stderr
    assert "Traceback" not in done.stderr
