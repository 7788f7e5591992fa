"""A taste of the campaign among the ordinary tests: each fault is made once, and what looks for damage can find it."""

import contextlib
import json
import random
import signal
from datetime import UTC, datetime

import counting
import numpy as np
import pytest
from campaign.counted import looked_through
from campaign.machinery import Faults, Hang, Nursery, need_compiler
from campaign.remains import check_job, check_nothing_runs, check_whole, check_words, record_bytes
from campaign.spoiling import swapped
from campaign.tally import Row, Tally
from recorded_jobs import TABLE, record
from stillshaft.acquire.hookup import hookup_from
from stillshaft.ui.analysis import AnalysisError, measure_recording

LONGEST_S = 60.0


@pytest.fixture(scope="module")
def both(tmp_path_factory):
    """The program with faults below it, started once."""
    need_compiler()
    folder = tmp_path_factory.mktemp("smoke")
    faults = Faults(folder)
    nursery = Nursery(folder, faults=faults)
    yield nursery, faults
    nursery.close()
    faults.close()


def test_a_job_is_killed_fills_the_disk_and_sees_the_clock_set(both):
    nursery, faults = both
    row, disk = Row("smoke"), nursery.folder / "disk"
    disk.mkdir()
    check_words(row, nursery.run("job", "new", "fan", folder=disk, own_s=LONGEST_S), statuses=(0,))
    before = record_bytes(disk / "fan")
    verb = nursery.start("job", "decide", "fan", "go on", "--json", folder=disk)
    assert verb.kill() in (-signal.SIGKILL, 0)
    check_job(row, disk / "fan", before)
    before = record_bytes(disk / "fan")
    faults.full_from(1, disk)
    done = nursery.run("job", "decide", "fan", "go on", folder=disk, own_s=LONGEST_S)
    assert (done.status, faults.failed > 0) == (1, True)
    assert "the disk is full" in done.err
    check_words(row, done)
    faults.full_from(0, disk)
    assert record_bytes(disk / "fan") == before
    faults.set_clock(400 * 86_400.0)
    done = nursery.run("job", "decide", "fan", "go on", "--json", folder=disk, own_s=LONGEST_S)
    faults.set_clock(0.0)
    (entry,) = done.said["entries"]
    last = json.loads(record_bytes(disk / "fan").splitlines()[-1])
    assert last["id"] == entry
    assert (datetime.fromisoformat(last["at"]) - datetime.now(UTC)).days in (399, 400)
    check_job(row, disk / "fan", before, [entry])
    check_nothing_runs(row, nursery)
    row.judge()


def test_what_does_not_end_is_found_and_ended(both):
    nursery, _ = both
    verb = nursery.start("capture", "simulated", "long.au", "--seconds", "600")
    with pytest.raises(Hang, match="still running"):
        verb.wait(1.0)
    assert nursery.orphans() == []
    assert nursery.segments() == []


def test_a_loss_in_the_counted_signal_is_found():
    whole = counting.values(0, 4000, 4)
    assert looked_through(whole, {}).silent == ()
    torn = whole[[*range(1000), *range(1010, 4000)]]
    assert looked_through(torn, {}).silent == ("frame 1000: 10 frames are missing before it and no gap is marked",)
    assert looked_through(torn, {1000: 10}).missing == {1000: 10}
    exchanged = whole[:, [0, 2, 1, 3]]
    assert "inputs disagree" in looked_through(exchanged, {}).silent[0]


def test_damage_is_found_and_told(tmp_path):
    tally = Tally(7, True)
    row = tally.row("damage")
    row.tried = 1
    (tmp_path / "out.pdf").write_bytes(b"%PDF-1.4 and no end")
    check_whole(row, tmp_path / "out.pdf")
    check_job(row, tmp_path, b"{}\n")
    with pytest.raises(AssertionError, match="half written: out.pdf"):
        row.judge()
    assert tally.totals()["half written"] == 1
    assert tally.totals()["records lost"] == 2
    assert "1 half written; 2 records lost" in "\n".join(tally.table())
    assert json.loads(tally.as_json())["totals"] == tally.totals()


def test_damaged_pulses_are_measured_or_refused_in_words(tmp_path):
    """Blocks exchanged in a recording: the last of these once ended in a singular matrix."""
    path = record(tmp_path / "a.au")
    good = path.read_bytes()
    for seed in (0, 5):
        chance = random.Random(seed)
        path.write_bytes(swapped(good, chance.randrange(4096, len(good) - 600), chance))
        with contextlib.suppress(AnalysisError), np.errstate(all="ignore"):
            assert measure_recording(path, hookup_from(TABLE)).points
