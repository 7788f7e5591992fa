"""Inputs that are led by what they reach: `python -m tests.fuzz.atheris_run DOOR --runs N`, with the program instrumented.

Needs the extra `fuzz`. The bytes are edits of valid input, or, where the first is odd, the input itself.
"""

import argparse
import contextlib
import io
import struct
import sys
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parents[1])]

import atheris  # noqa: E402

with atheris.instrument_imports(include=["stillshaft", "tomllib", "pyuff", "nptdms"]):
    from fuzz import catalogue, guard, mutate

_EDIT = struct.Struct("<HIH")


def input_from(door: guard.Door, data: bytes) -> bytes:
    """The input that the bytes stand for."""
    if len(data) < 2 or data[0] % 2:
        return data[1:]
    edits = [_EDIT.unpack_from(data, at) for at in range(2, min(len(data) - _EDIT.size + 1, 50), _EDIT.size)]
    return mutate.edited(door.kind, door.seeds[data[1] % len(door.seeds)], edits, guard.LARGEST_INPUT)


def main() -> None:
    """Run one door; a finding ends the run and is written beside as crash-…."""
    parser = argparse.ArgumentParser(description="Lets inputs in that are led by what they reach in the program.")
    parser.add_argument("door", help="a part of the door's name")
    parser.add_argument("--runs", type=int, default=100_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--corpus", default="", help="a folder that keeps inputs from run to run")
    asked = parser.parse_args()
    doors = catalogue.named(asked.door)
    if not doors:
        parser.error(f"no door has {asked.door!r} in its name; there is {', '.join(guard.DOORS)}")
    door = doors[0]
    assert door.seeds

    def one(data: bytes) -> None:
        with contextlib.redirect_stdout(io.StringIO()):
            door(input_from(door, data))

    options = [f"-runs={asked.runs}", f"-seed={asked.seed}", "-max_len=4096", "-rss_limit_mb=2048", "-timeout=20"]
    atheris.Setup([sys.argv[0], *options, *([asked.corpus] if asked.corpus else [])], one)
    atheris.Fuzz()


if __name__ == "__main__":
    main()
