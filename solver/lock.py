"""The lock of a job folder: one program writes, and one that died does not keep the next one out."""

from __future__ import annotations

import contextlib
import json
import os
import socket
import sys
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import msgspec
from stillshaft.dsp.units import shown
from stillshaft.solver.folder import ReadOnlyError, RecordError, open_own, put, why

if sys.platform != "win32":
    import fcntl

LOCK_NAME = "job.lock"


class Lock:
    """The mark of the one writer: `job.lock` says who it is; where the system has file locks one is held on it too."""

    def __init__(self, path: Path, *, take_over: bool = False) -> None:
        """Take the lock; one whose program is gone is taken by itself. Raises RecordError where it is held."""
        self._path = path
        while True:
            self._file = open_own(path, os.O_RDWR | os.O_CREAT)
            try:
                held = _hold(self._file)
                if held is False or _is_at(self._file, path):
                    self._refuse(_owner(self._file), held, take_over)
                    break
            except OSError as error:
                os.close(self._file)
                raise RecordError(f"{path}: {why(error)}") from None
            except RecordError:
                os.close(self._file)
                raise
            os.close(self._file)  # given back and removed by another program just now
        try:
            os.ftruncate(self._file, 0)
            os.lseek(self._file, 0, os.SEEK_SET)
            put(self._file, json.dumps(_this_process()).encode())
        except OSError as error:
            self.release()
            raise ReadOnlyError(f"{path}: {why(error)}") from None

    def _refuse(self, owner: dict[str, Any], held: bool | None, take_over: bool) -> None:
        """Raise RecordError where the owner may still write. `held` is None where the system has no file locks."""
        who = f"process {shown(owner.get('pid'))} on {shown(owner.get('host'))}, since {shown(owner.get('since'))}"
        if held is False:
            raise RecordError(
                f"{self._path.parent}: is open in another program ({who}); close it there, or open it to read only"
            )
        me = _this_process()
        same_machine = owner.get("host") == me["host"] or (me["boot"] and owner.get("boot") == me["boot"])
        if not owner or take_over or (same_machine and (held or not _alive(owner))):
            return
        raise RecordError(
            f"{self._path.parent}: is or was open on another computer or in another program ({who}); close it there, "
            "or where that is gone for good take the lock over; open it to read only until then"
        )

    def release(self) -> None:
        """Give the lock back."""
        with contextlib.suppress(OSError):
            if _is_at(self._file, self._path):
                os.ftruncate(self._file, 0)
                self._path.unlink()
        _let_go(self._file)
        os.close(self._file)


def _hold(file: int) -> bool | None:
    """Hold the system's lock on a file: False where another holds it, None where there are no such locks."""
    if sys.platform == "win32":
        return None
    try:
        fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    except OSError:
        return None
    return True


def _let_go(file: int) -> None:
    """Give the system's lock back, also where a child process still has the file open."""
    if sys.platform != "win32":
        with contextlib.suppress(OSError):
            fcntl.flock(file, fcntl.LOCK_UN)


def _is_at(file: int, path: Path) -> bool:
    try:
        return os.path.samestat(os.fstat(file), os.stat(path, follow_symlinks=False))
    except FileNotFoundError:
        return False


def _owner(file: int) -> dict[str, Any]:
    """What the lock file says, empty where nobody holds it; what cannot be read is somebody unknown."""
    data = os.read(file, 4096)
    if not data.strip(b"\0"):
        return {}
    try:
        owner = msgspec.json.decode(data)
    except (msgspec.MsgspecError, UnicodeDecodeError, RecursionError):
        owner = None
    return owner if isinstance(owner, dict) and owner else {"pid": "unknown", "host": "an unknown computer"}


def _this_process() -> dict[str, Any]:
    return {
        "pid": os.getpid(),
        "host": socket.gethostname(),
        "boot": _text_of("/proc/sys/kernel/random/boot_id"),
        "started": _started(os.getpid()),
        "since": datetime.now(UTC).isoformat(timespec="seconds"),
    }


def _text_of(path: str) -> str:
    try:
        return Path(path).read_text(encoding="utf-8").strip()
    except OSError:
        return ""


def _started(pid: int) -> str:
    """When a process started, in ticks since the machine did; empty where there is none or nobody says."""
    return (_text_of(f"/proc/{pid}/stat").rpartition(")")[2].split() + [""] * 20)[19]


def _alive(owner: dict[str, Any]) -> bool:
    """False where the owner is known to be gone: another boot of this machine, or no such process any more."""
    boot, pid = _text_of("/proc/sys/kernel/random/boot_id"), owner.get("pid")
    if not boot or not isinstance(pid, int):
        return True
    return owner.get("boot") == boot and bool(owner.get("started")) and owner.get("started") == _started(pid)
