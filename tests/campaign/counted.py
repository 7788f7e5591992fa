"""A signal played into the virtual card in which every frame names itself, and what is missing of it in a recording."""

from __future__ import annotations

import subprocess
import time
from dataclasses import dataclass

import counting
import numpy as np
from stillshaft.acquire import soundcard

CHANNELS = 4
REQUEST = soundcard.SoundCard("ALSA", "pulse", CHANNELS, counting.RATE_HZ)
HOOKUP = """format = 1
[[point]]
name = "counted"
input = 4
quantity = "velocity"
sensitivity = "20 mV/(mm/s)"
"""


@dataclass(frozen=True)
class Found:
    """What a recording of the counted signal shows.

    `silent` is said of frames that are missing where no gap is marked; `missing` are the frames missing at each marked gap where
    the signal ran on, by the frame behind it.
    """

    counted: int
    silent: tuple[str, ...]
    missing: dict[int, int]


def looked_through(samples, gaps, first=0):
    """Hold every frame against the one before it. `first` is the number that a player begins with."""
    numbers = np.rint(samples.astype(np.float64) * 2**23).astype(np.int64)
    sounding = numbers.any(axis=1)
    frames = numbers - 1 - np.arange(samples.shape[1]) * counting.CYCLE
    silent = [
        f"frame {i}: inputs disagree: {numbers[i].tolist()}"
        for i in np.flatnonzero(sounding & (frames != frames[:, :1]).any(axis=1))[:3]
    ]
    at = np.flatnonzero(sounding)
    number = frames[at, 0]
    steps = np.diff(number) % counting.CYCLE
    missing = {}
    for k in np.flatnonzero(steps != 1):
        before, behind = at[k], at[k + 1]
        between = [g for g in gaps if before < g <= behind]
        lost = int(steps[k]) - 1
        if number[k + 1] == first and behind > before + 1:
            continue  # the player began anew, after silence
        if between and number[k + 1] != first:
            missing[int(between[-1])] = lost - (int(behind - before) - 1)
        elif not between:
            silent.append(f"frame {behind}: {lost} frames are missing before it and no gap is marked")
    return Found(int(at.size), tuple(silent), missing)


class Player:
    """Plays the counted signal into the card, again whenever the card was away."""

    def __init__(self, card, seconds=120.0):
        self._card = card
        self._samples = counting.values(0, round(seconds * counting.RATE_HZ), CHANNELS)
        self._process = None

    def start(self):
        self.stop()
        self._process = self._card.play(self._samples)

    def sounds(self):
        """Has the server a stream of it?"""
        listed = subprocess.run(
            ["pactl", "list", "short", "sink-inputs"], env=self._card.environment, capture_output=True, check=False
        )
        return bool(listed.stdout)

    def await_sound(self):
        deadline = time.monotonic() + 60.0
        while not self.sounds():
            assert time.monotonic() < deadline, "the player does not play"
            time.sleep(0.05)

    def stop(self):
        if self._process is not None:
            self._process.kill()
            self._process.wait()
            self._process = None
