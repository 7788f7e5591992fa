"""Many inputs through all doors, in processes, seeded: `python -m tests.fuzz.campaign --inputs 1000000`.

Every finding is kept as a file with what happened beside it, and named once for each place in the code where it happened.
An input is told by its door, seed and number alone: `--only DOOR --seed S --number N` lets one in again.
"""

import argparse
import contextlib
import faulthandler
import hashlib
import multiprocessing
import multiprocessing.connection
import os
import random
import resource
import signal
import sys
import tempfile
import time
import traceback
import warnings
from dataclasses import dataclass, field
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any

sys.path[:0] = [str(Path(__file__).parents[1]), *(str(p) for p in Path(__file__).parents[1].iterdir() if p.is_dir())]

from fuzz import catalogue, guard, mutate  # noqa: E402

_BATCH = 200
_HARD_CPU_S = 5.0  # an input that needs more is given up
_HARD_WAIT_S = 120  # that waits for what never comes, however busy the machine is
_ROOMS = Path("/dev/shm")  # a disk would take most of the time
_ADDRESSES = 6 * 2**30  # bytes of a process: the machine stays usable


def input_of(door: guard.Door, seed: int, number: int) -> bytes:
    """Input number so and so of a campaign."""
    rng = random.Random(f"{door.name} {seed} {number}")
    return mutate.edited(door.kind, rng.choice(door.seeds), mutate.drawn(rng), guard.LARGEST_INPUT)


def let_in(door: guard.Door, data: bytes) -> tuple[str, str] | None:
    """None where all is well, else what happened: the place by which it is known, and the whole story."""
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            door(data)
    except Exception as error:  # noqa: BLE001 - whatever comes is the finding
        return _told(error)
    except (guard.Breach, _TooLong) as error:
        return _told(error)
    return None


class _TooLong(BaseException):
    pass


def _told(error: BaseException) -> tuple[str, str]:
    frames = traceback.extract_tb(error.__traceback__)
    own = [f for f in frames if "/fuzz/" not in f.filename] or frames
    place = f"{type(error).__name__} {Path(own[-1].filename).name}:{own[-1].lineno}"
    if isinstance(error, AssertionError):
        place += f" {str(error)[:60]}"
    return place, "".join(traceback.format_exception(error))


def _too_long(signum: int, frame: Any) -> None:
    raise _TooLong(f"needs more than {_HARD_CPU_S:.0f} s of CPU")


def _batch(name: str, seed: int, first: int, last: int, said: Path, told: Connection) -> None:
    """Let a batch in, in a process of its own: what a library does to the process is a finding as well."""
    with open(said, "ab") as by_libraries:  # and how a process ended
        os.dup2(by_libraries.fileno(), 2)
    faulthandler.enable()
    signal.signal(signal.SIGPROF, _too_long)
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    signal.signal(signal.SIGTERM, signal.SIG_DFL)
    signal.signal(signal.SIGVTALRM, signal.SIG_DFL)
    signal.signal(signal.SIGALRM, signal.SIG_DFL)
    resource.setrlimit(resource.RLIMIT_AS, (_ADDRESSES, _ADDRESSES))
    door = guard.DOORS[name]
    began = time.process_time()
    with open(os.devnull, "w") as nowhere, contextlib.redirect_stdout(nowhere), contextlib.redirect_stderr(nowhere):
        for number in range(first, last):
            told.send(number)
            data = input_of(door, seed, number)
            signal.setitimer(signal.ITIMER_PROF, _HARD_CPU_S)
            # what does not come back to the interpreter ends with its process
            signal.setitimer(signal.ITIMER_VIRTUAL, 2.0 * _HARD_CPU_S)
            signal.alarm(_HARD_WAIT_S)
            try:
                wrong = let_in(door, data)
            except _TooLong as error:
                wrong = _told(error)
            finally:
                signal.setitimer(signal.ITIMER_PROF, 0.0)
            if wrong is not None:
                told.send((number, *wrong))
    told.send(time.process_time() - began)


@dataclass
class _Tally:
    """What became of a door's inputs."""

    wanted: int
    next: int = 0
    done: int = 0
    cpu_s: float = 0.0
    found: dict[str, int] = field(default_factory=dict)


class Campaign:
    """Inputs through doors; `tallies` by door are what came of it."""

    def __init__(self, doors: list[guard.Door], inputs: int, seed: int, keep: Path, log: Any) -> None:
        whole = sum(door.weight for door in doors)
        self.tallies = {door.name: _Tally(max(1, round(inputs * door.weight / whole))) for door in doors}
        self._seed, self._keep, self._log = seed, keep, log

    def run(self, processes: int) -> None:
        """Let all in; doors take turns, so that none waits for the others to be through."""
        began = said = time.monotonic()
        at_work: dict[Any, tuple[str, int, int, Any]] = {}
        parting = multiprocessing.get_context("fork")
        while True:
            while len(at_work) < processes and (turn := self._next_turn([w[0] for w in at_work.values()])) is not None:
                ours, theirs = parting.Pipe(duplex=False)
                process = parting.Process(
                    target=_batch,
                    args=(*turn[:1], self._seed, *turn[1:], self._keep / "stderr.txt", theirs),
                    daemon=True,
                )
                process.start()
                theirs.close()
                at_work[ours] = (*turn, process)
            if not at_work:
                return
            for ours in multiprocessing.connection.wait(list(at_work)):
                self._follow(ours, *at_work.pop(ours))
            if time.monotonic() - said > 30.0:
                said = time.monotonic()
                done, wanted = (sum(getattr(t, key) for t in self.tallies.values()) for key in ("done", "wanted"))
                self.say(f"{said - began:6.0f} s: {done} of {wanted} inputs")

    def _next_turn(self, busy: list[str]) -> tuple[str, int, int] | None:
        waiting = [n for n, t in self.tallies.items() if t.next < t.wanted]
        if not waiting:
            return None
        name = min(waiting, key=lambda n: (n in busy, self.tallies[n].next / self.tallies[n].wanted))
        tally = self.tallies[name]
        first, tally.next = tally.next, min(tally.wanted, tally.next + _BATCH)
        return name, first, tally.next

    def _follow(self, ours: Connection, name: str, first: int, last: int, process: Any) -> None:
        """Hear a batch to its end; where its process dies, the input it died of is left behind and the rest goes on."""
        tally, number, cpu_s = self.tallies[name], first, None
        with contextlib.suppress(EOFError):
            while cpu_s is None:
                match ours.recv():
                    case int(number):
                        tally.done += 1
                    case (int(number), str(place), str(story)):
                        self._keep_it(name, number, place, story)
                    case float(cpu_s):
                        tally.cpu_s += cpu_s
        process.join()
        ours.close()
        if cpu_s is None:
            self._keep_it(name, number, f"the process ends with {process.exitcode}", "")
            tally.wanted -= last - number - 1  # the rest of the batch is given up

    def _keep_it(self, name: str, number: int, place: str, story: str) -> None:
        found = self.tallies[name].found
        found[place] = found.get(place, 0) + 1
        if found[place] > 1:
            return
        digest = hashlib.sha256(f"{name} {place}".encode()).hexdigest()[:8]
        stem = "".join(c if c.isalnum() else "_" for c in name)
        door = guard.DOORS[name]
        (self._keep / f"{stem}-{digest}.input").write_bytes(input_of(door, self._seed, number))
        told = f"--only {name!r} --seed {self._seed} --number {number}\n{place}\n{story}"
        (self._keep / f"{stem}-{digest}.txt").write_text(told, encoding="utf-8", errors="replace")
        self.say(f"FOUND {name}: {place} (number {number})")

    def say(self, text: str) -> None:
        """Write a line into the log."""
        self._log.write(text.encode("utf-8", "replace").decode() + "\n")
        self._log.flush()

    def table(self) -> str:
        """What came of it, door by door."""
        lines = [f"{'door':28} {'inputs':>9} {'ms each':>8} {'findings':>9} {'places':>7}"]
        for name, t in self.tallies.items():
            each = 1000.0 * t.cpu_s / max(1, t.done)
            lines.append(f"{name:28} {t.done:9} {each:8.2f} {sum(t.found.values()):9} {len(t.found):7}")
        done, found = (
            sum(values)
            for values in zip(*((t.done, sum(t.found.values())) for t in self.tallies.values()), strict=True)
        )
        return "\n".join([*lines, f"{'all':28} {done:9} {'':8} {found:9}"])


def main() -> None:
    """Run the campaign that the command line asks for."""
    parser = argparse.ArgumentParser(description="Lets many hostile inputs in, and says what should not have happened.")
    parser.add_argument("--inputs", type=int, default=1_000_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", default="", help="doors with this in their name")
    parser.add_argument("--number", type=int, help="this one input of the door, with all that it says")
    parser.add_argument("--processes", type=int, default=1)
    parser.add_argument("--rooms", type=Path, default=_ROOMS if _ROOMS.is_dir() else None, help="folder to work in")
    parser.add_argument("--keep", type=Path, default=Path("/tmp/fuzz-findings"), help="folder for what is found")
    asked = parser.parse_args()
    doors = catalogue.named(asked.only)
    if asked.number is not None:
        data = input_of(doors[0], asked.seed, asked.number)
        sys.stderr.write(f"{data[:2000]!r}\n")
        doors[0](data)
        return
    asked.keep.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(prefix="campaign", dir=asked.rooms) as rooms:
        tempfile.tempdir = rooms
        sys.exit(_all_in(doors, asked))


def _all_in(doors: list[guard.Door], asked: argparse.Namespace) -> bool:
    """Let all in that is asked for, or as many as there is time for; whether anything was found."""
    for door in doors:
        assert door.seeds  # before the processes part: what is loaded late is loaded once
    campaign = Campaign(doors, asked.inputs, asked.seed, asked.keep, sys.stdout)
    signal.signal(signal.SIGINT, signal.default_int_handler)  # in the background too
    signal.signal(signal.SIGTERM, signal.default_int_handler)
    try:
        campaign.run(asked.processes)
    except KeyboardInterrupt:
        campaign.say("broken off")
    campaign.say(campaign.table())
    return any(tally.found for tally in campaign.tallies.values())


if __name__ == "__main__":
    main()
