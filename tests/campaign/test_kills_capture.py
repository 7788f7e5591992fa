"""Captures whose processes are killed or stopped at any moment, on the simulated rotor and on the virtual card."""

import contextlib
import os
import signal
import time

import numpy as np
import pytest
import soundfile
from campaign.counted import HOOKUP, Player, looked_through
from campaign.machinery import Hang, crew_of_program
from campaign.remains import check_nothing_runs, check_recording, check_words, marked_gaps
from stillshaft.acquire import recording

pytestmark = [pytest.mark.campaign, pytest.mark.timeout(1500)]
LONGEST_S = 60.0
SECONDS = 20
VICTIMS = (("program",), ("keeper",), ("program", "keeper"), ("program", "driver"), ("keeper", "driver"))


def await_recording(verb, path, frames=1):
    """Wait until the recording has some frames, or the verb is at its end."""
    deadline = time.monotonic() + LONGEST_S
    while verb.status is None and (not path.exists() or path.stat().st_size < 4096 + 12 * frames):
        if (said := verb._nursery.answer(0.01)) is not None:
            verb.status = said["status"]
        assert time.monotonic() < deadline, verb.err


def send(crew, names, number):
    for name in names:
        with contextlib.suppress(ProcessLookupError):
            if name in crew:
                os.kill(crew[name], number)


def end(row, verb):
    try:
        verb.wait(LONGEST_S)
    except Hang as hang:
        row.blame("hangs", hang)
        return
    check_words(row, verb, statuses=(0, 1, 3))


def kill(row, nursery, verb, names):
    """Kill some of a capture's processes and see the others to their end."""
    send(crew_of_program(verb.pid), names, signal.SIGKILL)
    row.tried += 1
    if "program" in names:
        verb.kill()
    else:
        end(row, verb)
    check_nothing_runs(row, nursery)


def kill_captures(nursery, row, chance, kills):
    """Kill one or two of a capture's processes; what is there is the beginning of what the rotor gave."""
    folder = nursery.folder / "captures"
    folder.mkdir()
    whole = nursery.run(
        "capture", "simulated", "whole.au", "--seconds", SECONDS, "--fast", folder=folder, own_s=LONGEST_S
    )
    check_words(row, whole, statuses=(0, 3))
    reference = soundfile.read(folder / "whole.au", dtype="float32")[0]
    for number in range(kills):
        path, names = folder / f"{number}.au", VICTIMS[number % len(VICTIMS)]
        verb = nursery.start("capture", "simulated", path.name, "--seconds", SECONDS, folder=folder)
        if chance.random() < 0.7:
            await_recording(verb, path)
        time.sleep(chance.uniform(0.0, 1.0))
        kill(row, nursery, verb, names)
        if path.exists():
            kept = check_recording(row, path)
            if len(kept) and not np.array_equal(kept, reference[: len(kept)]):
                row.blame("samples lost in silence", f"{path.name}: not the beginning of what the rotor gave")
            path.unlink()
            recording.events_path(path).unlink(missing_ok=True)


def test_simulated(nursery, tally, chance, often):
    row = tally.row("SIGKILL in captures of the simulated rotor")
    kill_captures(nursery, row, chance, often(30, 3))
    row.judge()


@pytest.fixture
def card_capture(virtual_card, nursery):
    """Starts a capture of the counted signal on the card, and hands over the verb and its recording."""
    (nursery.folder / "hookup.toml").write_text(HOOKUP)
    own = {k: virtual_card.environment[k] for k in ("XDG_RUNTIME_DIR", "HOME")}
    players = []

    def started(name, seconds):
        for player in players:
            player.stop()
        path = nursery.folder / name
        verb = nursery.start(
            "capture", "ALSA/pulse", name, "--hookup", "hookup.toml", "--seconds", seconds, environment=own
        )
        await_recording(verb, path)
        players.append(Player(virtual_card, seconds + 30.0))
        players[-1].start()
        players[-1].await_sound()
        return verb, path

    yield started
    for player in players:
        player.stop()


def count(row, path):
    """Hold a recording of the card against the counted signal."""
    samples = check_recording(row, path)
    if not len(samples):
        return None
    found = looked_through(samples, marked_gaps(path))
    for text in found.silent:
        row.blame("samples lost in silence", text)
    row.add("frames counted", found.counted)
    return found


def test_virtual_card(card_capture, nursery, tally, chance, often):
    row = tally.row("SIGKILL in captures on the virtual card")
    for number in range(often(25, 2)):
        names = VICTIMS[number % len(VICTIMS)]
        verb, path = card_capture(f"{number}.au", 60)
        time.sleep(chance.uniform(0.2, 1.2))
        kill(row, nursery, verb, names)
        count(row, path)
    row.judge()


SUSPENDED = (("program",), ("keeper",), ("driver",), ("program", "keeper", "driver"), ("keeper", "driver"))


def test_suspended(card_capture, nursery, tally, chance, often):
    """Each process stopped for three seconds: the samples are all there, or a gap says that they are not."""
    row = tally.row("SIGSTOP of a capture's processes for 3 s")
    for number in range(often(10, 2)):
        names = SUSPENDED[number % len(SUSPENDED)]
        verb, path = card_capture(f"{number}.au", 6)
        time.sleep(chance.uniform(0.2, 1.0))
        crew = crew_of_program(verb.pid)
        send(crew, names, signal.SIGSTOP)
        time.sleep(3.0)
        send(crew, names, signal.SIGCONT)
        row.tried += 1
        end(row, verb)
        if (found := count(row, path)) is None or found.counted < 24_000:
            row.blame("records lost", f"{path.name}: {names} stopped, and nothing is recorded")
        gaps = marked_gaps(path)
        row.add("said as a gap", len(gaps))
        if gaps and verb.status == 0:
            row.blame("samples lost in silence", f"{path.name}: gaps, and exit 0")
        check_nothing_runs(row, nursery)
    row.judge()
