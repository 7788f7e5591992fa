"""What a door may do with hostile input: refuse it in one line, touch its own folder alone, and be done soon.

A door is a place where a file or a text from outside comes in. `Door` calls it with bytes and watches.
"""

import contextlib
import os
import resource
import shutil
import sys
import tempfile
import threading
import time
import unicodedata
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

LARGEST_INPUT = 65_536  # bytes
MOST_CPU_S = 2.0
MOST_MEMORY = 512 * 2**20  # bytes
MOST_LETTERS = 1000  # of a message
_WRITING = os.O_WRONLY | os.O_RDWR | os.O_CREAT | os.O_TRUNC | os.O_APPEND
_PATHS = {  # events of the interpreter that change a file, and how many of their arguments are paths
    "os.remove": 1,
    "os.rename": 2,
    "os.rmdir": 1,
    "os.mkdir": 1,
    "os.chmod": 1,
    "os.chown": 1,
    "os.link": 2,
    "os.symlink": 2,
    "os.truncate": 1,
    "os.utime": 1,
    "shutil.rmtree": 1,
    "shutil.move": 2,
    "shutil.make_archive": 1,
}
_BARRED = {
    "os.system",
    "os.exec",
    "os.fork",
    "os.forkpty",
    "os.posix_spawn",
    "os.spawn",
    "os.startfile",
    "subprocess.Popen",
    "pty.spawn",
    "pickle.find_class",
    "exec",
    "compile",
    "marshal.loads",
    "marshal.load",
    "code.__new__",
    "ctypes.dlopen",
    "webbrowser.open",
    "urllib.Request",
    "ftplib.connect",
    "smtplib.connect",
}
_HARMLESS = {"socket.gethostname"}  # the lock of a job says which computer holds it
# code of modules as they are loaded, and annotations of the project's own tables
_OWN_CODE = ("importlib._bootstrap", "typing.py", "inspect.py", "dataclasses.py", "collections/__init__.py")


class Breach(BaseException):
    """Something that no input may bring about; not an Exception, so that nothing catches it on the way."""


class _Watch:
    room: str | None = None
    thread: int = 0
    seen: tuple[str, ...] = ()


_watch = _Watch()


def _refuse(what: str) -> None:
    _watch.seen = (*_watch.seen, what)
    raise Breach(what)


def _within(path: object) -> bool:
    if isinstance(path, int):  # a file that is open already
        return True
    try:
        return f"{os.path.abspath(os.fsdecode(path))}{os.sep}".startswith(_watch.room + os.sep)
    except (TypeError, ValueError):
        return True  # no path: the call fails by itself


def _from_own_code() -> bool:
    frame = sys._getframe(2)
    while frame is not None:
        if any(name in frame.f_code.co_filename for name in _OWN_CODE):
            return True
        frame = frame.f_back
    return False


def _audit(event: str, arguments: tuple[object, ...]) -> None:
    if _watch.room is None or threading.get_ident() != _watch.thread:
        return
    if event == "open":
        path, mode, flags = arguments
        writes = bool(flags & _WRITING) if isinstance(flags, int) else bool(mode and set("wax+") & set(mode))
        if writes and path != os.devnull and not _within(path) and not _from_own_code():
            _refuse(f"opens {path!r} to write")
    elif event in _PATHS:
        for path in arguments[: _PATHS[event]]:
            if not _within(path) and not _from_own_code():
                _refuse(f"{event} {path!r}")
    elif (event in _BARRED or (event.startswith("socket.") and event not in _HARMLESS)) and not _from_own_code():
        _refuse(f"{event} {str(arguments)[:200]}")


_hooked = False


def _hook() -> None:
    global _hooked
    if not _hooked:
        sys.addaudithook(_audit)
        _hooked = True


def _memory() -> int:
    """Bytes that this process has in use."""
    return int(Path("/proc/self/statm").read_bytes().split()[1]) * resource.getpagesize()


def _most_memory() -> int:
    """The most bytes that this process ever had in use."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * 1024


@contextlib.contextmanager
def making() -> Iterator[None]:
    """While a door itself lays out what is to be found."""
    room, _watch.room = _watch.room, None
    try:
        yield
    finally:
        _watch.room = room


def one_line(text: object, most: int = MOST_LETTERS) -> None:
    """Assert that a message is one line of plain letters, not too long."""
    said = str(text)
    assert said.strip(), "says nothing"
    bad = [
        c
        for c in said
        if unicodedata.category(c) in ("Cc", "Cs", "Zl", "Zp") or unicodedata.bidirectional(c) in _TURNING
    ]
    assert not bad, f"a message has {bad[:3]!r}: {said[:300]!r}"
    assert len(said) <= most, f"a message has {len(said)} letters: {said[:200]!r}"


_TURNING = {
    "LRE",
    "RLE",
    "LRO",
    "RLO",
    "PDF",
    "LRI",
    "RLI",
    "FSI",
    "PDI",
}  # what makes a line read otherwise than it is


def several_lines(text: str) -> None:
    """Assert that what a terminal gets has lines of plain letters alone."""
    bad = [
        c
        for c in text
        if (unicodedata.category(c) in ("Cc", "Cs") and c not in "\n\t") or unicodedata.bidirectional(c) in _TURNING
    ]
    assert not bad, f"a terminal gets {bad[:3]!r}"


@dataclass(frozen=True)
class Door:
    """A door by its name: `enter(data, room)` lets the bytes in, `errors` are those of its layer.

    `kind` says how valid input is built, for `mutate`: bytes, lines, toml, record; `seeds` makes valid input.
    """

    name: str
    kind: str
    errors: tuple[type[Exception], ...]
    enter: Callable[[bytes, Path], None]
    make_seeds: Callable[[], list[bytes]]
    weight: float = 1.0  # of inputs in a campaign
    cpu_s: float = MOST_CPU_S

    @cached_property
    def seeds(self) -> tuple[bytes, ...]:
        """Valid input; let in once, so that what is loaded late is there before anything is measured."""
        made = tuple(self.make_seeds())
        for data in made:
            assert len(data) <= LARGEST_INPUT, (self.name, len(data))
            self._let_in(data)
        return made

    def __call__(self, data: bytes) -> None:
        """Let the bytes in. Raises AssertionError or Breach for what must not be; any other error passes through."""
        assert self.seeds
        _hook()
        before, used = _most_memory(), _memory()
        began = time.process_time()
        try:
            self._let_in(data)
        finally:
            took_s = time.process_time() - began
        assert took_s <= self.cpu_s, f"{self.name}: took {took_s:.1f} s of CPU for {len(data)} bytes"
        after = _most_memory()
        grown = after - used if after > before else 0
        assert grown <= MOST_MEMORY, f"{self.name}: took {grown / 2**20:.0f} MiB for {len(data)} bytes"

    def _let_in(self, data: bytes) -> None:
        whole = Path(tempfile.mkdtemp(prefix="door"))
        room = whole / "room"
        room.mkdir()
        (whole / "beside").write_bytes(b"untouched")
        _watch.seen, _watch.thread, _watch.room = (), threading.get_ident(), str(room)
        try:
            self.enter(data, room)
        except self.errors as error:  # what it may say
            one_line(str(error).replace(str(room), "ROOM"))
            assert not _out_of_memory(error), f"{self.name}: runs out of memory and says {error}"  # noqa: PT017 - a door may raise or not
        finally:
            _watch.room = None
            left = sorted(p.name for p in whole.iterdir()), (whole / "beside").read_bytes()
            shutil.rmtree(whole)
        assert not _watch.seen, _watch.seen
        assert left == (["beside", "room"], b"untouched"), left


def _out_of_memory(error: BaseException | None) -> bool:
    return error is not None and (isinstance(error, MemoryError) or _out_of_memory(error.__context__))


DOORS: dict[str, Door] = {}


def door(
    name: str,
    kind: str,
    seeds: Callable[[], list[bytes]],
    *errors: type[Exception],
    weight: float = 1.0,
    cpu_s: float = MOST_CPU_S,
) -> Callable[[Callable[[bytes, Path], None]], Door]:
    """Make a function a door of the list."""

    def named(enter: Callable[[bytes, Path], None]) -> Door:
        assert name not in DOORS, name
        DOORS[name] = Door(name, kind, errors, enter, seeds, weight, cpu_s)
        return DOORS[name]

    return named
