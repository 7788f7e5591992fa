"""The guard sees what it is there for."""

import marshal
import math
import os
import pickle
import socket
import subprocess
from pathlib import Path

import pytest
from fuzz import guard, mutate
from fuzz.guard import Breach, Door
from stillshaft.dsp.units import UnitError


class _Evil:
    def __reduce__(self):
        return (os.getcwd, ())


CODE = compile("1", "x", "exec")
PICKLED, MARSHALLED = pickle.dumps(_Evil()), marshal.dumps(compile("1", "x", "eval"))
ACTS = {
    "opens .* to write": lambda room: (room.parent / "beside").write_bytes(b"x"),
    "os.remove": lambda room: (room.parent / "beside").unlink(),
    "os.mkdir": lambda room: (room.parent / "new").mkdir(),
    "os.rename": lambda room: (room.parent / "beside").rename(room / "x"),
    "os.symlink": lambda room: (room / "x").symlink_to("../../x"),
    "subprocess.Popen": lambda room: subprocess.run(["true"], check=False),
    "os.system": lambda room: os.system("true"),
    "socket": lambda room: socket.socket(),
    "pickle.find_class": lambda room: pickle.loads(PICKLED),
    "marshal.loads": lambda room: marshal.loads(MARSHALLED),
    "exec": lambda room: exec(CODE),
    "compile": lambda room: compile("1", "x", "eval"),
}


def entered(enter, *errors):
    """A door of its own, valid input let in already."""
    calm = {"at": True}

    def maybe(data, room):
        if not calm["at"]:
            enter(room)

    door = Door("of a test", "bytes", errors, maybe, lambda: [b"valid"])
    assert door.seeds
    calm["at"] = False
    return door


@pytest.mark.parametrize("words", ACTS)
def test_what_no_input_may_bring_about(words):
    with pytest.raises(Breach, match=words):
        entered(ACTS[words])(b"x")
    Path("/dev/null").write_bytes(b"")  # not watched any more


def test_what_is_caught_on_the_way_is_seen_all_the_same():
    def hidden(room):
        try:
            (room.parent / "beside").write_bytes(b"x")
        except BaseException:  # noqa: BLE001 - as a careless reader would
            return

    with pytest.raises(AssertionError, match="to write"):
        entered(hidden)(b"x")


def test_messages_and_errors():
    def said(text, kind=UnitError):
        def enter(room):
            error = kind(text)
            error.args = (text,)
            raise error

        return enter

    entered(said("one line"), UnitError)(b"x")
    for text in ("", "two\nlines", "\x1b[2J", "a\u202eb", "x" * 2000):
        with pytest.raises(AssertionError):
            entered(said(text), UnitError)(b"x")
    with pytest.raises(ValueError, match="another"):
        entered(said("another", ValueError), UnitError)(b"x")


def test_time_and_memory(monkeypatch):
    monkeypatch.setattr(guard, "MOST_MEMORY", 100 * 2**20)
    large = entered(lambda room: b"x" * (guard._most_memory() + 200 * 2**20))
    object.__setattr__(
        large, "cpu_s", math.inf
    )  # after other tests in this process it is gigabytes, and takes its time
    with pytest.raises(AssertionError, match="MiB for 1 bytes"):
        large(b"x")
    slow = entered(lambda room: sum(range(3_000_000)))
    object.__setattr__(slow, "cpu_s", 0.001)
    with pytest.raises(AssertionError, match="s of CPU"):
        slow(b"x")


def test_edits_are_the_same_for_the_same_numbers():
    data = b'format = 1\nname = "x"\nvalues = [1, 2, 3]\n'
    several = {mutate.edited("toml", data, [(n, 7 * n, 3 * n)], 1000) for n in range(300)}
    assert len(several) > 100
    assert mutate.edited("toml", data, [(3, 4, 5), (8, 9, 10)], 1000) == mutate.edited(
        "toml", data, [(3, 4, 5), (8, 9, 10)], 1000
    )
