"""Long recordings: nothing lost, memory flat, what it costs; half an hour."""

import contextlib
import subprocess
import threading
import time
from pathlib import Path

import counting
import numpy as np
import pytest
import soundfile
from conftest import VirtualCard, children
from figures.record import kernel_ms
from stillshaft.acquire import process, soundcard

pytestmark = [pytest.mark.benchmark, pytest.mark.timeout(3600)]
CHANNELS = 8


def processes(acquisition):
    keeper = acquisition._process.pid
    return [keeper, *children(keeper)]


def used(process_id):
    """CPU seconds and resident kilobytes of a process."""
    fields = Path(f"/proc/{process_id}/stat").read_text().rpartition(")")[2].split()
    status = Path(f"/proc/{process_id}/status").read_text()
    ticks = 100.0  # per second, on Linux
    resident = next(int(line.split()[1]) for line in status.splitlines() if line.startswith("VmRSS"))
    return (int(fields[11]) + int(fields[12])) / ticks, resident


def watched(acquisition, every_s):
    """Read all blocks to the end; memory of each process from the first minute on and at the end."""
    ids = processes(acquisition)
    begun = due = time.monotonic()
    early, late, cpu = {}, {}, {}
    while (summary := acquisition.finished_recording()) is None:
        if acquisition.read() is None:
            time.sleep(0.02)
        now = time.monotonic()
        if now >= due:
            due = now + every_s
            for p in ids:
                cpu[p], late[p] = used(p)
                if now - begun > 3 * every_s:
                    early.setdefault(p, late[p])
    growth = max(100.0 * (late[p] / early[p] - 1.0) for p in early)
    return summary, growth, 100.0 * sum(cpu.values()) / (time.monotonic() - begun)


def assert_counts_on(path, frames):
    """Every frame follows the one before it, in all channels, from the first that is not silent."""
    at = None
    with soundfile.SoundFile(path) as file:
        assert file.frames == frames
        for block in file.blocks(blocksize=480_000, dtype="float32"):
            if at is None:
                heard = np.flatnonzero(block.any(axis=1))
                if not heard.size:
                    continue
                block = block[heard[0] :]
                at = round(float(block[0, 0]) * 2**23) - 1
            np.testing.assert_array_equal(block, counting.values(at, len(block), block.shape[1]))
            at += len(block)
    assert at is not None


def test_twenty_minutes_in_real_time(tmp_path, monkeypatch, figure):
    monkeypatch.setattr(VirtualCard, "channels", CHANNELS)
    map_ = "front-left,front-right,rear-left,rear-right,front-center,lfe,side-left,side-right"
    monkeypatch.setattr("conftest._MAP", map_)
    card = VirtualCard(tmp_path)
    for key in ("XDG_RUNTIME_DIR", "HOME"):
        monkeypatch.setenv(key, card.environment[key])
    minutes, every_s = (1, 2.0) if figure.quick else (20, 20.0)
    player = subprocess.Popen(
        ["pacat", "--playback", "--raw", "--device=bench", "--format=float32le", "--rate=48000",
         f"--channels={CHANNELS}", f"--channel-map={map_}", "--no-remix", "--no-remap", "--latency-msec=500"],
        env=card.environment, stdin=subprocess.PIPE,
    )  # fmt: skip

    def play():
        cycle = counting.values(0, counting.CYCLE, CHANNELS).astype("<f4").tobytes()
        try:
            while True:
                player.stdin.write(cycle)
        except (BrokenPipeError, ValueError):
            pass

    playing = threading.Thread(target=play, name="playing", daemon=True)
    with process.Acquisition(soundcard.SoundCard("ALSA", "pulse", CHANNELS, 48_000.0)) as acquisition:
        acquisition.record(tmp_path / "x.au", None, [f"c{i}" for i in range(CHANNELS)], seconds=60.0 * minutes)
        playing.start()
        summary, growth, cpu = watched(acquisition, every_s)
    player.kill()
    player.wait()
    playing.join(5.0)
    with contextlib.suppress(BrokenPipeError):
        player.stdin.close()
    card.close()
    said = f"{CHANNELS} × 48 kHz on the virtual card in real time"
    figure(f"gaps in {minutes} min, {said}", len(summary.gaps), "gaps", at_most=0.0)
    figure(f"growth of memory in {minutes} min, {said}", growth, "%", at_most=2.0)
    figure.cost(f"a second of {said}", 0.01 * cpu, ("an FFT of 2^18 points", 1e-3 * kernel_ms()))
    assert summary.complete
    assert_counts_on(tmp_path / "x.au", 60 * minutes * 48_000)
    (tmp_path / "x.au").unlink()  # gigabytes


def test_two_hours_of_samples_faster_than_real_time(tmp_path, figure):
    seconds = 400.0 if figure.quick else 7200.0
    begun = time.monotonic()
    with process.Acquisition(counting.Counting(CHANNELS, seconds)) as acquisition:
        acquisition.record(tmp_path / "x.au", None, [f"c{i}" for i in range(CHANNELS)], seconds=seconds - 60.0)
        summary, growth, _ = watched(acquisition, 1.0)
    took = time.monotonic() - begun
    said = f"{seconds / 3600:.2g} h of {CHANNELS} × 48 kHz as fast as they come"
    figure(f"gaps in {said}", len(summary.gaps), "gaps", at_most=0.0)
    figure(f"growth of memory in {said}", growth, "%", at_most=2.0)
    figure(f"time for {said}", took, "s")
    assert summary.complete
    assert_counts_on(tmp_path / "x.au", summary.frames)
    (tmp_path / "x.au").unlink()  # gigabytes
