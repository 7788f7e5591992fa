"""A clock that is set, forwards and backwards, by little and by much, during captures and jobs: lengths and order stay right."""

import json
import time

import pytest
from campaign.counted import HOOKUP, Player, looked_through
from campaign.machinery import Hang
from campaign.remains import check_job, check_nothing_runs, check_recording, check_words, marked_gaps, record_bytes
from campaign.workshop import JOB_ACTS, furnish

pytestmark = [pytest.mark.campaign, pytest.mark.timeout(1500)]
LONGEST_S = 60.0
STEPS_S = (0.3, -0.3, 2.0, -2.0, 3600.0, -3600.0, 86_400.0 * 400, -86_400.0 * 400)


def capture(nursery, faults, row, step_s, path, *argv, environment=None):
    """A capture during which the clock is set, and is put right again."""
    verb = nursery.start("capture", *argv, path.name, "--seconds", "4", environment=environment)
    deadline = time.monotonic() + LONGEST_S
    while not path.exists() or path.stat().st_size < 200_000:
        assert time.monotonic() < deadline, verb.err
        time.sleep(0.01)
    faults.set_clock(step_s)
    time.sleep(1.0)
    faults.set_clock(0.0)
    row.tried += 1
    try:
        verb.wait(LONGEST_S)
    except Hang as hang:
        row.blame("hangs", hang)
        return None
    check_words(row, verb, statuses=(0, 3))
    samples, gaps = check_recording(row, path), marked_gaps(path)
    wanted = round(4 * 48_000)
    if len(samples) != wanted:
        row.blame(
            "records lost", f"clock set by {step_s} s: {len(samples)} frames instead of {wanted}: {verb.err[-300:]}"
        )
    row.add("gaps marked", len(gaps))
    return samples, gaps


def test_captures(faulty, faults, tally, often):
    row = tally.row("clock set during a capture of the simulated rotor")
    for number, step_s in enumerate(STEPS_S[:: often(1, 4)]):
        path = faulty.folder / f"{number}.au"
        found = capture(faulty, faults, row, step_s, path, "simulated")
        if found is not None and found[1]:
            row.blame("others", f"clock set by {step_s} s: gaps at {sorted(found[1])} in simulated samples")
    check_nothing_runs(row, faulty)
    row.judge()


def test_captures_on_the_card(virtual_card, faulty, faults, tally, often):
    row = tally.row("clock set during a capture on the virtual card")
    (faulty.folder / "hookup.toml").write_text(HOOKUP)
    own = {k: virtual_card.environment[k] for k in ("XDG_RUNTIME_DIR", "HOME")}
    player = Player(virtual_card, 60.0)
    try:
        for number, step_s in enumerate(STEPS_S[:: often(1, 4)]):
            player.start()
            player.await_sound()
            path = faulty.folder / f"{number}.au"
            found = capture(faulty, faults, row, step_s, path, "ALSA/pulse", "--hookup", "hookup.toml", environment=own)
            for text in () if found is None else looked_through(*found).silent:
                row.blame("samples lost in silence", text)
            if found is not None and found[1]:
                row.blame("others", f"clock set by {step_s} s: gaps {found[1]} where nothing is missing")
    finally:
        player.stop()
    check_nothing_runs(row, faulty)
    row.judge()


def test_jobs(faulty, faults, tally, chance, often):
    """The order of a record is that of its lines, whatever the clock said."""
    row = tally.row("clock set between and during the acts of a job")
    folder = furnish(faulty.folder / "room")
    for number in range(often(24, 5)):
        verb, *rest = JOB_ACTS[number % len(JOB_ACTS)]
        before = record_bytes(folder / rest[0])
        faults.set_clock(chance.choice(STEPS_S))
        started = faulty.start("job", verb, *rest, "--json", folder=folder)
        time.sleep(chance.uniform(0.0, 0.3))
        faults.set_clock(chance.choice(STEPS_S))
        row.tried += 1
        try:
            started.wait(LONGEST_S)
        except Hang as hang:
            row.blame("hangs", hang)
            continue
        check_words(row, started)
        entries = started.said["entries"] if started.status in (0, 3) else ()
        check_job(row, folder / rest[0], before, entries)
    for job in ("balance", "measured"):
        for act in (
            ("job", "show", job, "--verify", "--history"),
            ("job", "next", job),
            ("report", job, "--html", f"{job}.html"),
        ):
            check_words(row, faulty.run(*act, folder=folder, own_s=LONGEST_S), statuses=(0, 3))
        shown = json.loads(faulty.run("job", "show", job, "--json", folder=folder, own_s=LONGEST_S).out)
        ids = [line["id"] for line in shown["history"]]
        if ids != sorted(ids):
            row.blame("others", f"the history of {job} is out of order: {ids}")
    check_words(row, faulty.run("machines", ".", folder=folder, own_s=LONGEST_S), statuses=(0,))
    row.judge()
