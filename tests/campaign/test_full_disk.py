"""A disk that is full from the k-th write on, for every k of an act: one line, nothing half written, what was there stays."""

import shutil

import pytest
from campaign.machinery import Hang
from campaign.remains import check_job, check_nothing_runs, check_recording, check_whole, check_words
from campaign.workshop import FILE_ACTS, JOB_ACTS, REPORT_ACTS, SUFFIXES, furnish

pytestmark = [pytest.mark.campaign, pytest.mark.timeout(1500)]
LONGEST_S = 20.0
OWN = ("hookup.toml", "runs.toml", "coefficients.toml", "out.pdf", "out.html", "out.csv", "out.json")


def contents(folder):
    return {p.relative_to(folder): p.read_bytes() for p in folder.rglob("*") if p.is_file()}


class FullDisk:
    """An act done anew on a disk that is full from each of its writes on."""

    def __init__(self, nursery, faults, row, template):
        self.nursery, self.faults, self.row, self.template = nursery, faults, row, template
        self.disk = nursery.folder / "disk"
        self.before = contents(template)

    def _do(self, act, full_from):
        shutil.rmtree(self.disk, ignore_errors=True)
        shutil.copytree(self.template, self.disk)
        self.faults.full_from(full_from, self.disk)
        try:
            # the lists that the program keeps for itself are on that disk too
            cache = {"XDG_CACHE_HOME": str(self.disk / "cache")}
            return self.nursery.run(*act, folder=self.disk, own_s=LONGEST_S, environment=cache)
        except Hang as hang:
            self.row.blame("hangs", f"{act} full from {full_from}: {hang}")
            return None
        finally:
            self.acts, self.failed = self.faults.acts, self.faults.failed
            self.faults.full_from(0, self.disk)

    def every(self, act, of=lambda numbers: numbers):
        """Do it on a disk with room, then on one that is full from each write on."""
        done = self._do(act, 0)
        check_words(self.row, done)
        for number in of(range(1, self.acts + 1)):
            verb = self._do(act, number)
            self.row.tried += 1
            if verb is not None and self.failed:
                self._look(act, number, verb)

    def _look(self, act, number, verb):
        check_words(self.row, verb)
        self.row.add("went on all the same", int(verb.status != 1))
        told = f"{' '.join(act[:3])}, full from write {number}, exit {verb.status}, {verb.err[-200:]!r}"
        for name, was in self.before.items():
            now = self.disk / name
            if not now.exists():
                self.row.blame("records lost", f"{name} is gone: {told}")
            elif name.name == "job.jsonl":
                check_job(self.row, now.parent, was)
            elif now.read_bytes() != was and name.name not in OWN:
                self.row.blame("half written", f"{name} was changed: {told}")
        for name in OWN:
            check_whole(self.row, self.disk / name)
        for path in self.disk.rglob("*"):
            name = path.relative_to(self.disk)
            if name in self.before or not path.is_file() or name.name in ("job.jsonl", *OWN):
                continue
            if path.suffix == ".au":
                check_recording(self.row, path)
            elif path.suffix == ".pdf":
                check_whole(self.row, path)
            elif verb.status == 1 and path.suffix != ".jsonl" and "cache" not in name.parts:
                self.row.blame("half written", f"{name} is left: {told}")


@pytest.fixture
def full_disk(faulty, faults, tally):
    def made(fault, furnished=furnish):
        return FullDisk(
            faulty, faults, tally.row(f"disk full at every write of {fault}"), furnished(faulty.folder / "all")
        )

    yield made
    for row in tally.rows:
        check_nothing_runs(row, faulty)
        break


@pytest.fixture
def some(tally, chance):
    """All numbers, or three of them in a short campaign."""
    return lambda numbers: sorted(chance.sample(list(numbers), min(3, len(numbers)))) if tally.short else numbers


def test_job_verbs(full_disk, some, tally):
    disk = full_disk("job verbs")
    disk.every(("job", "new", "fresh", "--hookup", "hookup.toml"), some)
    for verb, *rest in JOB_ACTS[:: 3 if tally.short else 1]:
        disk.every(("job", verb, *rest), some)
    disk.row.judge()


def test_job_run_from_a_source(full_disk, some):
    disk = full_disk("a run taken into a job")
    disk.every(
        ("job", "run", "balance", "simulated", "--fast", "--seconds", "2", "--kind", "check", "--acknowledge", "one"),
        some,
    )
    disk.row.judge()


def test_capture(full_disk, some):
    disk = full_disk("a capture")
    disk.every(("capture", "simulated", "new.au", "--fast", "--seconds", "4"), some)
    disk.row.judge()


def test_reports(full_disk, some):
    disk = full_disk("reports")
    for act in REPORT_ACTS[1:]:
        disk.every(act, some)
    disk.row.judge()


def test_files(full_disk, some):
    disk = full_disk("hook-up, runs and coefficients")
    for act in FILE_ACTS:
        disk.every(act, some)
    disk.row.judge()


def test_conversion(full_disk, some):
    disk = full_disk("a conversion")
    for suffix in SUFFIXES:
        disk.every(("convert", "more.au", f"made.{suffix}"), lambda numbers: some(numbers)[:20])
    disk.row.judge()


def test_many_jobs(full_disk, some):
    disk = full_disk("machines and reprocess")
    disk.every(("machines", "."), some)
    disk.every(("reprocess", ".", "--jobs", "1"), some)
    disk.row.judge()
