"""Sound inputs through PortAudio: an honest list, and a source that says when samples were lost.

PortAudio lists its devices when it is loaded and never again, so the list is made in a short-lived child process.
Nothing here loads PortAudio at import time.
"""

from __future__ import annotations

import json
import os
import queue
import subprocess
import sys
import time
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from typing import Any

import numpy as np
from stillshaft.acquire import soundserver
from stillshaft.acquire.clock import SampleClock
from stillshaft.acquire.source import Block, Source, SourceError, SourceLost

_NO_PORTAUDIO = (
    "live measuring needs the PortAudio library; on Debian or Ubuntu: sudo apt-get install libportaudio2; "
    "recordings can still be opened"
)
_CONVERTING_NAMES = ("pulse", "default", "sysdefault", "plughw", "dmix", "dsnoop", "pipewire", "jack")
_CONVERTING_APIS = ("MME", "Windows DirectSound")
_BLOCK_S = 0.05
_LATENCY_S = 0.5
_START_LIMIT_S = 5.0
_SILENCE_LIMIT_S = max(0.5, 5 * _BLOCK_S)


@dataclass(frozen=True)
class SoundInput:
    """An input as the system lists it; `converted` says that software may change rate or channels on the way."""

    host_api: str
    name: str
    channels: int
    default_rate_hz: float
    converted: bool


def list_inputs() -> list[SoundInput]:
    """Inputs that are there now. Raises SourceError where PortAudio is missing."""
    done = subprocess.run(
        [sys.executable, "-m", "stillshaft.acquire.soundcard"], capture_output=True, text=True, check=False, timeout=60
    )
    if done.returncode != 0:
        raise SourceError(done.stderr.strip().splitlines()[-1] if done.stderr.strip() else _NO_PORTAUDIO)
    return [SoundInput(**row) for row in json.loads(done.stdout)]


def find_input(text: str, inputs: Sequence[SoundInput]) -> SoundInput:
    """The input listed as `text`, "HOST API/NAME" or a name that is there once. Raises SourceError with the list."""
    exact = [i for i in inputs if text in (f"{i.host_api}/{i.name}", i.name)]
    if len(exact) == 1:
        return exact[0]
    listed = ", ".join(f'"{i.host_api}/{i.name}"' for i in inputs) or "no sound input at all"
    raise SourceError(f'source "{text}": {"not unique" if exact else "not found"}; there is {listed}')


def _portaudio() -> Any:
    try:
        import sounddevice
    except OSError:
        raise SourceError(_NO_PORTAUDIO) from None
    return sounddevice


def _inputs() -> list[SoundInput]:
    portaudio = _portaudio()
    found = []
    for device in portaudio.query_devices():
        if device["max_input_channels"] < 1:
            continue
        api = portaudio.query_hostapis(device["hostapi"])["name"]
        name = device["name"]
        converted = api in _CONVERTING_APIS or any(name.lower().startswith(n) for n in _CONVERTING_NAMES)
        found.append(SoundInput(api, name, device["max_input_channels"], device["default_samplerate"], converted))
    return found


def _unconverted(portaudio: Any, host_api: str) -> Any:
    """What asks the system to hand the samples through as the card made them, or to refuse; None where nothing does."""
    if host_api == "Windows WASAPI":
        return portaudio.WasapiSettings(exclusive=True, explicit_sample_format=True)
    if host_api == "Core Audio":
        return portaudio.CoreAudioSettings(change_device_parameters=True, fail_if_conversion_required=True)
    return None


@dataclass(frozen=True)
class SoundCard:
    """An order for a sound input, remembered by host API and name, never by its place in the list."""

    host_api: str
    name: str
    channels: int
    rate_hz: float

    def open(self) -> Source:
        """Open it; raises SourceError in one line."""
        return SoundCardSource(self)

    def volume(self) -> str | None:
        """The mixer's volume, where it can be read."""
        return soundserver.volume() if self.name.lower().startswith(soundserver.NAMES) else None


class SoundCardSource:
    """The input running. The callback copies and counts; everything else is done by the reader."""

    can_wait = False
    silence_limit_s: float | None = _SILENCE_LIMIT_S
    skew_s: tuple[float, ...] = ()

    def __init__(self, order: SoundCard) -> None:
        portaudio = _portaudio()
        self.rate_hz, self.channels = order.rate_hz, order.channels
        self.description = f"{order.host_api}/{order.name}"
        self._blocks: queue.SimpleQueue[tuple[Any, bool, float, float, float]] = queue.SimpleQueue()
        self._finished = False
        self._frames = 0
        self._last = time.monotonic()
        self._clock = SampleClock(order.rate_hz, _BLOCK_S, 0.5 * _LATENCY_S)
        number = next(
            (
                n
                for n, device in enumerate(portaudio.query_devices())
                if device["name"] == order.name
                and portaudio.query_hostapis(device["hostapi"])["name"] == order.host_api
                and device["max_input_channels"] >= order.channels
            ),
            None,
        )
        if number is None:
            raise SourceError(
                f'source "{self.description}": is not there with {order.channels} inputs; list the sources again'
            )
        try:
            self._stream = portaudio.InputStream(
                device=number,
                samplerate=order.rate_hz,
                channels=order.channels,
                dtype="float32",
                latency=_LATENCY_S,
                blocksize=round(_BLOCK_S * order.rate_hz),
                extra_settings=_unconverted(portaudio, order.host_api),
                callback=self._arrived,
                finished_callback=self._ended,
            )
            self._stream.start()
        except portaudio.PortAudioError as error:
            text = " ".join(str(error).split())
            raise SourceError(
                f'source "{self.description}": does not open with {order.channels} inputs at {order.rate_hz:.0f} Hz ({text})'
            ) from None
        self._refuse_conversion(order)

    def _refuse_conversion(self, order: SoundCard) -> None:
        """Raise SourceError where the sound server resamples, or sorts the channels anew."""
        if not order.name.lower().startswith(soundserver.NAMES):
            return
        method = soundserver.converting(os.getpid())
        if method is None:
            return
        self.close()
        own = soundserver.default_source()
        what = "sorts the channels anew" if method == "copy" else f"resamples ({method})"
        instead = (
            ""
            if own is None
            else f"; its source has {own.channels} input{'s' * (own.channels != 1)} at {own.rate_hz:.0f} Hz: record all of it so"
        )
        raise SourceError(f'source "{self.description}": the sound server {what}{instead}')

    def _arrived(self, samples: Any, frames: int, times: Any, status: Any) -> None:
        # an exception here would end the stream with nothing but a print
        self._blocks.put(
            (
                samples.copy(),
                bool(status.input_overflow),
                time.monotonic(),
                times.inputBufferAdcTime,
                times.currentTime,
            )
        )

    def _ended(self) -> None:
        self._finished = True

    def read(self, timeout_s: float) -> Block | None:
        """Next block; raises SourceLost after half a second of silence, or five before the first block."""
        try:
            samples, overflow, arrived_s, converted_s, now_s = self._blocks.get(timeout=min(timeout_s, 0.1))
        except queue.Empty:
            limit = _START_LIMIT_S if not self._frames else _SILENCE_LIMIT_S
            if self._finished or time.monotonic() - self._last > limit:
                raise SourceLost(
                    f'source "{self.description}": stopped delivering; check the cable and the device'
                ) from None
            return Block(self._frames, self.rate_hz, np.empty((0, self.channels), dtype=np.float32))
        self._last = time.monotonic()
        waiting = self._blocks.qsize() > 0
        lost = self._clock.lost(self._frames, arrived_s, converted_s, now_s, more_waiting=waiting)
        block = Block(self._frames, self.rate_hz, samples, -1 if overflow and lost is None else lost)
        self._frames += len(samples)
        return block

    def close(self) -> None:
        """Stop the stream; may hang with a dead driver, so the caller must not wait for it."""
        self._stream.abort()
        self._stream.close()


if __name__ == "__main__":
    try:
        print(json.dumps([asdict(i) for i in _inputs()]))  # noqa: T201
    except SourceError as problem:
        print(problem, file=sys.stderr)  # noqa: T201
        sys.exit(1)
