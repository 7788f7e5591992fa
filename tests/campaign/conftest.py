"""What the campaign shares: its seed and size, its table, and the program to start.

`STILLSHAFT_SEED` draws other moments and places, `STILLSHAFT_SHORT=1` takes some of each fault, and `STILLSHAFT_TABLE` names the
JSON file of the table.
"""

import faulthandler
import os
import random
import tempfile
from pathlib import Path

import pytest
from campaign.machinery import Faults, Nursery, need_compiler
from campaign.tally import Tally

_TALLY = pytest.StashKey()


def pytest_configure(config):
    config.stash[_TALLY] = Tally(int(os.environ.get("STILLSHAFT_SEED", "1")), os.environ.get("STILLSHAFT_SHORT") == "1")


def pytest_terminal_summary(terminalreporter, config):
    tally = config.stash.get(_TALLY, None)
    if tally is None or not tally.rows or "campaign" not in (config.option.markexpr or "").replace("not campaign", ""):
        return
    path = Path(os.environ.get("STILLSHAFT_TABLE", Path(tempfile.gettempdir()) / "stillshaft-campaign.json"))
    path.write_text(tally.as_json() + "\n")
    terminalreporter.section("fault campaign")
    for line in (*tally.table(), f"written to {path}"):
        terminalreporter.write_line(line)


@pytest.fixture(autouse=True)
def no_dump_of_what_takes_long():
    """A campaign takes minutes by intent: its own limits say what hangs."""
    faulthandler.cancel_dump_traceback_later()


@pytest.fixture
def tally(request):
    config = request.config
    if _TALLY not in config.stash:
        pytest_configure(config)
    return config.stash[_TALLY]


@pytest.fixture
def chance(request, tally):
    """Random numbers that the seed and the name of the test draw."""
    return random.Random(f"{tally.seed} {request.node.name}")


@pytest.fixture
def often(tally):
    """How often a fault is tried: so many times, or some in a short campaign."""
    return lambda count, short: short if tally.short else count


@pytest.fixture
def nursery(tmp_path):
    made = Nursery(tmp_path)
    yield made
    made.close()


@pytest.fixture
def faults(tmp_path):
    need_compiler()
    made = Faults(tmp_path)
    yield made
    made.close()


@pytest.fixture
def faulty(tmp_path, faults):
    """The program with `faults` below it."""
    made = Nursery(tmp_path, faults=faults)
    yield made
    made.close()
