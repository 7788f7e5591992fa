"""Verbs killed with SIGKILL at any moment: nothing acknowledged is lost, and the next one goes on."""

import shutil
import time

import pytest
from campaign.remains import check_job, check_nothing_runs, check_recording, check_whole, check_words, record_bytes
from campaign.workshop import FILE_ACTS, JOB_ACTS, REPORT_ACTS, SUFFIXES, furnish
from stillshaft.acquire.exchange import open_any
from stillshaft.acquire.hookup import load_hookup
from stillshaft.acquire.recording import open_recording

pytestmark = [pytest.mark.campaign, pytest.mark.timeout(1500)]
LONGEST_S = 20.0  # own time of the longest of these verbs on a slow machine


def killed(nursery, row, chance, lasts_s, *argv, folder):
    """Start a verb, kill it at some moment of the time that it lasts, and look at its words; the verb."""
    verb = nursery.start(*argv, folder=folder)
    time.sleep(chance.uniform(0.0, 1.1 * lasts_s))
    verb.kill()
    row.tried += 1
    check_words(row, verb)
    return verb


def duration(nursery, *argv, folder):
    begun = time.monotonic()
    verb = nursery.run(*argv, folder=folder, own_s=LONGEST_S)
    return time.monotonic() - begun, verb


def kill_job_verbs(nursery, row, chance, kills):
    folder, lasts_s = furnish(nursery.folder / "room"), {}
    while row.tried < kills:
        verb, *rest = chance.choice(JOB_ACTS)
        argv = ("job", verb, *rest, "--json")
        job = folder / rest[0]
        if argv not in lasts_s:
            lasts_s[argv], done = duration(nursery, *argv, folder=folder)
            check_words(row, done)
        before = record_bytes(job)
        ended = killed(nursery, row, chance, lasts_s[argv], *argv, folder=folder)
        row.add("ended before it was killed", int(ended.status >= 0))
        entries = ended.said["entries"] if ended.status in (0, 3) else ()
        check_job(row, job, before, entries)
        for path in (job / "recordings").glob("*.au"):
            check_recording(row, path)
        check_whole(row, job / "coefficients.toml")
    for job in ("balance", "measured"):
        shown = nursery.run("job", "show", job, "--verify", "--json", folder=folder, own_s=LONGEST_S)
        check_words(row, shown)
        for text in shown.said["reasons"]:
            row.blame("records lost", text)
    check_nothing_runs(row, nursery)


def test_job_verbs(nursery, tally, chance, often):
    row = tally.row("SIGKILL of job verbs")
    kill_job_verbs(nursery, row, chance, often(70, 8))
    row.judge()


def test_reports(nursery, tally, chance, often):
    row = tally.row("SIGKILL while reports are written")
    folder = furnish(nursery.folder / "room")
    lasts_s = {argv: duration(nursery, *argv, folder=folder)[0] for argv in REPORT_ACTS}
    for number in range(often(24, 3)):
        argv = REPORT_ACTS[number % len(REPORT_ACTS)]
        before = record_bytes(folder / argv[1])
        killed(nursery, row, chance, lasts_s[argv], *argv, folder=folder)
        for path in (*folder.glob("out.*"), *folder.glob("*/reports/*.pdf")):
            check_whole(row, path)
        check_job(row, folder / argv[1], before)
    check_nothing_runs(row, nursery)
    row.judge()


def test_files(nursery, tally, chance, often):
    row = tally.row("SIGKILL while hook-up, runs and coefficients are written")
    folder = furnish(nursery.folder / "room")
    shutil.copytree(folder, nursery.folder / "tried")
    lasts_s = {argv: duration(nursery, *argv, folder=nursery.folder / "tried")[0] for argv in FILE_ACTS}
    for number in range(often(21, 3)):
        argv = FILE_ACTS[number % len(FILE_ACTS)]
        killed(nursery, row, chance, lasts_s[argv], *argv, folder=folder)
        for name in ("hookup.toml", "runs.toml", "coefficients.toml"):
            check_whole(row, folder / name)
    points = {p.name for p in load_hookup(folder / "hookup.toml").points}
    assert points == {"near", "far"}
    check_nothing_runs(row, nursery)
    row.judge()


def test_conversion(nursery, tally, chance, often):
    row = tally.row("SIGKILL while a recording is converted")
    folder = furnish(nursery.folder / "room")
    with open_recording(folder / "more.au") as reader:
        frames = reader.frames
    lasts_s = {s: duration(nursery, "convert", "more.au", f"first.{s}", folder=folder)[0] for s in SUFFIXES}
    for number in range(often(21, 3)):
        suffix = SUFFIXES[number % len(SUFFIXES)]
        target = folder / f"made{number}.{suffix}"
        killed(nursery, row, chance, lasts_s[suffix], "convert", "more.au", target.name, folder=folder)
        if not target.exists():
            again = nursery.run("convert", "more.au", target.name, folder=folder, own_s=LONGEST_S)
            check_words(row, again, statuses=(0,))
        with open_any(target) as reader:
            found = sum(len(block.samples) for block in reader.blocks())
        if found != frames:
            row.blame("half written", f"{target.name}: {found} of {frames} frames")
    check_nothing_runs(row, nursery)
    row.judge()
