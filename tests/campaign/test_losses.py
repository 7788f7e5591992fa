"""The device lost or frozen while a counted signal is recorded: said in words, back by itself, every loss marked."""

import os
import signal
import subprocess
import time

import pytest
import soundfile
from campaign.counted import REQUEST, Player, looked_through
from campaign.machinery import crew_of
from campaign.remains import marked_gaps
from stillshaft.acquire import process

pytestmark = [pytest.mark.campaign, pytest.mark.timeout(1500)]
LONGEST_S = 90.0  # for a machine that has much else to do
NULL_SINK = (
    "module-null-sink", "sink_name=bench", "rate=48000", "channels=4", "format=float32le",
    "channel_map=front-left,front-right,rear-left,rear-right", "norewinds=1",
)  # fmt: skip


def driver_of(acquisition):
    """The process that drives the device."""
    while True:
        if driver := crew_of(acquisition._process.pid).get("driver"):
            return driver
        time.sleep(0.01)


def pactl(card, *arguments):
    subprocess.run(["pactl", *arguments], env=card.environment, capture_output=True, check=False, timeout=20)


def server_killed(card, acquisition):
    card.server.kill()
    card.server.wait()
    return card.start


def server_frozen(card, acquisition):
    os.kill(card.server.pid, signal.SIGSTOP)
    return lambda: os.kill(card.server.pid, signal.SIGCONT)


def module_unloaded(card, acquisition):
    pactl(card, "unload-module", "module-null-sink")

    def back():
        pactl(card, "load-module", *NULL_SINK)
        pactl(card, "set-default-source", "bench.monitor")

    return back


def driver_killed(card, acquisition):
    os.kill(driver_of(acquisition), signal.SIGKILL)
    return lambda: None


def driver_stopped(card, acquisition):
    os.kill(driver_of(acquisition), signal.SIGSTOP)
    return lambda: None


FAULTS = {
    "server killed": server_killed, "server stopped": server_frozen, "module unloaded": module_unloaded,
    "driver killed": driver_killed, "driver stopped": driver_stopped,
}  # fmt: skip


class Watched:
    """A recording of the counted signal that faults come to."""

    def __init__(self, card, folder, row):
        self.card, self.row, self.path = card, row, folder / f"{len(list(folder.glob('*.au')))}.au"
        self.player = Player(card)
        self.acquisition = process.Acquisition(REQUEST)
        self.alarms = 0

    def __enter__(self):
        self.acquisition.record(self.path, None, list("abcd"))
        self.player.start()
        self.player.await_sound()
        self.until(lambda: self.acquisition.frames > 24_000, "the recording does not begin")
        return self

    def __exit__(self, kind, error, at):
        self.player.stop()
        self.acquisition.close()

    def until(self, condition, otherwise):
        deadline = time.monotonic() + LONGEST_S
        while not condition():
            self.acquisition._listen()
            if time.monotonic() > deadline or self.acquisition.failure is not None:
                self.row.blame("hangs", f"{otherwise}: {self.acquisition.failure or 'it did not happen'}")
                return False
            time.sleep(0.002)
        return True

    def spoil(self, name, chance):
        """One fault: alarm, then the device is there again, then samples flow and the alarm is over."""
        time.sleep(chance.uniform(0.3, 1.0))
        begun = time.monotonic()
        mend = FAULTS[name](self.card, self.acquisition)
        self.row.tried += 1
        if not self.until(lambda: self.acquisition.trouble is not None, f"{name}: no alarm"):
            return
        alarm = time.monotonic()
        said = self.acquisition.trouble
        if len(said.split()) < 5 or "\n" in said or "Traceback" in said:
            self.row.blame("others", f"{name}: the alarm says {said!r}")
        mend()
        mended = time.monotonic()
        if not self.until(lambda: self.acquisition.trouble is None, f"{name}: not back"):
            return
        frames = self.acquisition.frames
        self.until(lambda: self.acquisition.frames > frames, f"{name}: no samples after it came back")
        self.alarms += 1
        self.row.most("alarm after, s, worst", alarm - begun)
        self.row.most("back after the device, s, worst", time.monotonic() - mended)
        if name in ("server killed", "module unloaded"):
            self.player.start()
            self.player.await_sound()

    def judge(self):
        """End the recording and count it."""
        time.sleep(0.5)
        summary = self.acquisition.stop_recording()
        samples = soundfile.read(self.path, dtype="float32", always_2d=True)[0]
        gaps = marked_gaps(self.path)
        found = looked_through(samples, gaps)
        for text in found.silent:
            self.row.blame("samples lost in silence", text)
        if len(gaps) < self.alarms or len(summary.gaps) != len(gaps):
            self.row.blame("samples lost in silence", f"{self.alarms} losses, {len(gaps)} gaps marked")
        for frame, lost in found.missing.items():
            if gaps[frame] >= 0:
                self.row.most("gap told wrong by, s, worst", abs(gaps[frame] - lost) / 48_000)
        self.row.add("frames counted", found.counted)


@pytest.mark.parametrize("fault", FAULTS)
def test_losses(virtual_card, tally, chance, often, tmp_path, fault):
    row = tally.row(f"device lost: {fault}")
    for _ in range(often(2, 1)):
        with Watched(virtual_card, tmp_path, row) as watched:
            for _ in range(often(6, 1)):
                watched.spoil(fault, chance)
            watched.judge()
    row.judge()
