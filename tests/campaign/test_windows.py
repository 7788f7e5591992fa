"""A window that does a job and is killed at any moment, and two programs on one job."""

import contextlib
import subprocess
import sys
import time

import pytest
from campaign.machinery import HERE
from campaign.remains import check_job, check_nothing_runs, check_recording, check_words, record_bytes
from campaign.workshop import furnish
from stillshaft.ui.desktop import recent, settings

pytestmark = [pytest.mark.campaign, pytest.mark.timeout(3600)]
LONGEST_S = 120.0


class Window:
    """The window's script under way; its mark is the nursery's, so that what it leaves is found."""

    def __init__(self, nursery, folder, how):
        self.said = nursery.folder / "window.out"
        self._out = open(self.said, "wb")  # noqa: SIM115 - closed by kill
        self._process = subprocess.Popen(
            [sys.executable, HERE / "window_job.py", nursery.folder / "view" / "view.toml", folder, how],
            env=nursery.environment, stdin=subprocess.PIPE, stdout=self._out, stderr=self._out, cwd=nursery.folder,
        )  # fmt: skip

    def lines(self):
        return self.said.read_text(errors="replace").splitlines()

    def until(self, beginning):
        """Wait for a line; all lines so far."""
        deadline = time.monotonic() + LONGEST_S
        while not any(line.startswith(beginning) for line in self.lines()):
            assert time.monotonic() < deadline, self.lines()
            assert self._process.poll() is None or any(x.startswith(beginning) for x in self.lines()), self.lines()
            time.sleep(0.02)
        return self.lines()

    def end(self):
        with contextlib.suppress(OSError):
            self._process.stdin.close()
        with contextlib.suppress(subprocess.TimeoutExpired):
            self._process.wait(20)
        self.kill()

    def kill(self):
        self._process.kill()
        self._process.wait()
        with contextlib.suppress(OSError):
            self._process.stdin.close()
        self._out.close()


def test_a_window_is_killed(nursery, tally, chance, often):
    row = tally.row("SIGKILL of the window while it does a job")
    folder = nursery.folder / "jobs" / "a job"
    folder.parent.mkdir()
    for number in range(often(100, 2)):
        if number % 7 == 6:
            folder = nursery.folder / "jobs" / f"a job {number}"
        before = record_bytes(folder)
        window = Window(nursery, folder, "work")
        if chance.random() < 0.8:
            window.until("open")
        time.sleep(chance.uniform(0.0, 6.0))
        window.kill()
        row.tried += 1
        shown = [int(line.split()[1]) for line in window.lines() if line.startswith("entries ")]
        if any("Traceback" in line for line in window.lines()):
            row.blame("tracebacks", " / ".join(window.lines()[-12:]))
        check_nothing_runs(row, nursery)
        if not (folder / "job.jsonl").exists():
            continue
        check_job(row, folder, before, range(1, max(shown, default=0) + 1))
        row.most("entries in a job, most", max(shown, default=0))
        for path in (folder / "recordings").glob("*.au"):
            check_recording(row, path)
        done = nursery.run("job", "show", folder, "--verify", own_s=30.0)
        check_words(row, done, statuses=(0,))
        view = nursery.folder / "view" / "view.toml"
        if view.exists() and settings.load(view)[1] is not None:
            row.blame("half written", settings.load(view)[1])
        recent.load(recent.path_beside(view))
    row.judge()


def test_two_programs_on_one_job(nursery, tally, often):
    row = tally.row("two programs on one job")
    folder = furnish(nursery.folder / "room")
    held = nursery.folder / "held"
    code = (
        "import sys\nfrom pathlib import Path\nfrom stillshaft.solver.job import Job\n"
        "job = Job.open(Path(sys.argv[1]), by='first')\nopen(sys.argv[2], 'w').close()\nsys.stdin.readline()\njob.close()\n"
    )
    first = subprocess.Popen(
        [sys.executable, "-c", code, folder / "balance", held], stdin=subprocess.PIPE, env=nursery.environment
    )
    deadline = time.monotonic() + LONGEST_S
    while not held.exists():
        assert time.monotonic() < deadline
        time.sleep(0.02)
    before = (folder / "balance/job.jsonl").read_bytes()
    acts = (
        ("job", "decide", "balance", "mine"), ("job", "brief", "balance", "--set", "rotor.mass = 1 kg"),
        ("job", "mass", "balance", "take", "all"), ("job", "solve", "balance"), ("report", "balance"),
        ("job", "run", "balance", "simulated", "--fast", "--seconds", "2", "--acknowledge", "one"), ("job", "undo", "balance"),
        ("job", "close", "balance"), ("job", "new", "balance"),
    )  # fmt: skip
    for act in acts[: often(len(acts), 3)]:
        done = nursery.run(*act, folder=folder, own_s=20.0)
        row.tried += 1
        check_words(row, done, statuses=(1,))
        if "is open in another program" not in done.err and "holds a job already" not in done.err:
            row.blame("others", f"{act}: {done.err!r}")
    check_words(row, nursery.run("job", "show", "balance", folder=folder, own_s=20.0), statuses=(0,))
    window = Window(nursery, folder / "balance", "open")
    if not any("is open in another program" in line for line in window.until("refused")):
        row.blame("others", f"the window says {window.lines()}")
    window.end()
    row.tried += 1
    if (folder / "balance/job.jsonl").read_bytes() != before:
        row.blame("records lost", "a program that was refused has written")
    first.stdin.close()
    assert first.wait(60) == 0
    # and the other way round: the window has it, the command line is refused
    window = Window(nursery, folder / "balance", "open")
    window.until("open")
    done = nursery.run("job", "decide", "balance", "mine", folder=folder, own_s=20.0)
    row.tried += 1
    check_words(row, done, statuses=(1,))
    if "is open in another program" not in done.err:
        row.blame("others", f"beside the window: {done.err!r}")
    window.end()
    check_words(row, nursery.run("job", "decide", "balance", "mine", folder=folder, own_s=20.0), statuses=(0,))
    check_nothing_runs(row, nursery)
    row.judge()
