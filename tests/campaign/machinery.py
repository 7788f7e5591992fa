"""Starting the program under faults, watching it, and looking at what it left: processes, shared memory, open locks."""

from __future__ import annotations

import contextlib
import json
import mmap
import os
import shutil
import signal
import struct
import subprocess
import sys
import tempfile
import time
import uuid
from pathlib import Path

import pytest

HERE = Path(__file__).parent
OWN_S = 5.0  # a verb that has had its turn for so long and is not done hangs
ORPHANS_S = 5.0
_MARK = "STILLSHAFT_CAMPAIGN"
_CONTROL = 512
_NS = 1e-9


class Hang(AssertionError):
    """A process that did not end, in the time that it had for itself."""


def marked(mark):
    """Ids of the processes that carry a mark in their environment: all that the program started, whoever adopted them."""
    found = []
    for entry in os.scandir("/proc"):
        if entry.name.isdigit():
            with contextlib.suppress(OSError):
                if mark in Path(entry.path, "environ").read_bytes() and state_of(int(entry.name)) != "Z":
                    found.append(int(entry.name))
    return found


def state_of(pid):
    """Letter of a process's state; Z where it is gone."""
    try:
        return Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[0]
    except OSError:
        return "Z"


def parent_of(pid):
    try:
        return int(Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[1])
    except OSError:
        return 0


def command_of(pid):
    try:
        return Path(f"/proc/{pid}/cmdline").read_bytes().replace(b"\0", b" ").decode(errors="replace")
    except OSError:
        return ""


def children_of(pid):
    return [int(p.name) for p in Path("/proc").glob("[0-9]*") if parent_of(int(p.name)) == pid]


def crew_of(keeper):
    """The processes of an acquisition by what they do; the driver is the keeper's own image, forked."""
    found = {"keeper": keeper}
    for pid in children_of(keeper):
        if command_of(pid) == command_of(keeper) and state_of(pid) != "Z":
            found["driver"] = pid
    return found


def crew_of_program(pid):
    """The same from the program on; without those that are not there yet."""
    for child in children_of(pid):
        if "spawn_main" in command_of(child):
            return {"program": pid} | crew_of(child)
    return {"program": pid}


class OwnTime:
    """Time that processes had for themselves: what passed, less what they waited for a processor that others had."""

    def __init__(self):
        self._begun, self._waited = time.monotonic(), {}

    def seconds(self, pids):
        for pid in pids:
            with contextlib.suppress(OSError):
                for task in os.scandir(f"/proc/{pid}/task"):
                    with contextlib.suppress(OSError, IndexError):
                        waited = int(Path(task.path, "schedstat").read_text().split()[1])
                        first, _ = self._waited.get(task.name, (waited, 0))
                        self._waited[task.name] = (first, waited)
        lost = _NS * sum(last - first for first, last in self._waited.values())
        passed = time.monotonic() - self._begun
        return max(passed - lost, 0.05 * passed)


class Faults:
    """The control block of `faults.c`: a disk that is full from a write on, and a clock that was set."""

    def __init__(self, folder):
        self.library, self.control = folder / "faults.so", folder / "faults.control"
        done = subprocess.run(
            ["cc", "-O1", "-shared", "-fPIC", "-o", self.library, HERE / "faults.c", "-ldl"],
            capture_output=True, text=True, check=False,
        )  # fmt: skip
        assert done.returncode == 0, done.stderr
        self.control.write_bytes(bytes(_CONTROL))
        with open(self.control, "r+b") as file:
            self._memory = mmap.mmap(file.fileno(), _CONTROL)
        self.environment = {"LD_PRELOAD": str(self.library), "STILLSHAFT_FAULTS": str(self.control)}

    def full_from(self, act, under):
        """Let the disk that holds `under` be full from this act on; 0: never."""
        self._memory[32:] = os.fsencode(os.path.realpath(under)).ljust(_CONTROL - 32, b"\0")
        self._memory[:16] = struct.pack("qq", 0, act)
        self._memory[24:32] = bytes(8)

    def set_clock(self, seconds):
        self._memory[16:24] = struct.pack("q", round(1e9 * seconds))

    @property
    def acts(self):
        return struct.unpack("q", self._memory[:8])[0]

    @property
    def failed(self):
        return struct.unpack("q", self._memory[24:32])[0]

    def close(self):
        self._memory.close()


class Verb:
    """A verb under way, or ended: `status` is its exit status, negative for a signal."""

    def __init__(self, nursery, argv, pid, out, err):
        self.argv, self.pid, self.status = [str(a) for a in argv], pid, None
        self._nursery, self._out, self._err = nursery, out, err

    @property
    def out(self):
        return self._out.read_text(errors="replace")

    @property
    def err(self):
        return self._err.read_text(errors="replace")

    @property
    def said(self):
        return json.loads(self.out)

    def wait(self, own_s=OWN_S):
        """Its exit status. Raises Hang, and ends it, when it had `own_s` for itself and is not done."""
        own, begun = OwnTime(), time.monotonic()
        while self.status is None:
            if (said := self._nursery.answer(0.5)) is not None:
                self.status = said["status"]
                break
            if own.seconds(self._nursery.living()) > own_s or time.monotonic() - begun > 40.0 * own_s:
                self.kill()
                raise Hang(f"still running after {own_s:g} s of its own: {self.err[-300:]}")
        return self.status

    def kill(self):
        """SIGKILL, wherever it is, and wait for its end."""
        with contextlib.suppress(ProcessLookupError):
            os.kill(self.pid, signal.SIGKILL)
        while self.status is None:
            if (said := self._nursery.answer(10.0)) is not None:
                self.status = said["status"]
        return self.status


class Nursery:
    """The program in a process of its own that forks for each verb; with shared memory of its own where that may be."""

    def __init__(self, folder, *, environment=None, faults=None):
        self.folder, self.mark = folder, uuid.uuid4().hex
        self.home = folder / "home"
        self.home.mkdir(parents=True, exist_ok=True)
        own = {k: v for k, v in os.environ.items() if not k.startswith(("PULSE_", "STILLSHAFT_", "XDG_"))}
        own |= {"HOME": str(self.home), _MARK: self.mark, "OPENBLAS_NUM_THREADS": "1", "COLUMNS": "200"}
        own |= {"QT_QPA_PLATFORM": "offscreen"} | (environment or {})
        own |= {} if faults is None else faults.environment
        self.environment = own
        command = [sys.executable, str(HERE / "nursery.py")]
        self.private = may_unshare()
        if self.private:
            mount = 'mount -t tmpfs -o size=256m tmpfs /dev/shm && exec "$@"'
            command = [*_unshare(), "sh", "-c", mount, "sh", *command]
        self._process = subprocess.Popen(
            command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, env=own, cwd=folder, start_new_session=True
        )
        self._text, self._number = b"", 0
        self.pid = 0
        try:
            ready = self.answer(60.0)
            assert ready is not None, "the program did not load"
        except AssertionError:
            self.close()
            raise
        self.pid = ready["ready"]

    def answer(self, timeout_s):
        """The next answer, None where none came in time."""
        import select

        deadline = time.monotonic() + timeout_s
        while b"\n" not in self._text:
            left = deadline - time.monotonic()
            if not select.select([self._process.stdout], [], [], max(0.0, left))[0]:
                return None
            piece = os.read(self._process.stdout.fileno(), 4096)
            assert piece, "the nursery is gone"
            self._text += piece
        line, _, self._text = self._text.partition(b"\n")
        return json.loads(line)

    def start(self, *argv, folder=None, environment=None):
        """Start a verb."""
        self._number += 1
        out, err = (self.folder / f"{kind}{self._number % 8}" for kind in ("out", "err"))
        for path in (out, err):
            path.unlink(missing_ok=True)
        order = {
            "argv": [str(a) for a in argv], "folder": str(folder or self.folder), "out": str(out), "err": str(err),
            "environment": environment or {},
        }  # fmt: skip
        self._process.stdin.write(json.dumps(order).encode() + b"\n")
        self._process.stdin.flush()
        verb = Verb(self, argv, self.answer(30.0)["pid"], out, err)
        while not err.exists() and verb.status is None:  # it is a process of its own from here on
            if (said := self.answer(0.001)) is not None:
                verb.status = said["status"]
        return verb

    def run(self, *argv, folder=None, own_s=OWN_S, environment=None):
        """A verb from start to end."""
        verb = self.start(*argv, folder=folder, environment=environment)
        verb.wait(own_s)
        return verb

    def living(self):
        """What the program has running now."""
        return [p for p in marked(self.mark.encode()) if p not in (self.pid, self._process.pid)]

    def orphans(self):
        """Commands of the processes that are still there five seconds after their program ended."""
        own = OwnTime()
        while left := self.living():
            if own.seconds(left) > ORPHANS_S:
                return [command_of(p) for p in left]
            time.sleep(0.1)
        return []

    def segments(self):
        """Shared memory that is left; empty where that cannot be told."""
        if not self.private:
            return []
        return sorted(p.name for p in Path(f"/proc/{self.pid}/root/dev/shm").glob("psm_*"))

    def close(self):
        for pid in self.living():
            with contextlib.suppress(ProcessLookupError):
                os.kill(pid, signal.SIGKILL)
        self._process.kill()
        self._process.wait()
        self._process.stdin.close()
        self._process.stdout.close()


def _unshare():
    return ["unshare", "-m"] if os.geteuid() == 0 else ["unshare", "-Urm"]


def may_unshare():
    """May this user mount in a name space of its own?"""
    if shutil.which("unshare") is None:
        return False
    with tempfile.TemporaryDirectory() as folder:
        command = [*_unshare(), "mount", "-t", "tmpfs", "tmpfs", folder]
        return subprocess.run(command, capture_output=True, check=False).returncode == 0


def need_compiler():
    if sys.platform != "linux" or shutil.which("cc") is None:
        pytest.skip("faults of disk and clock need Linux and a C compiler: apt-get install gcc libc6-dev")
