"""Every door with valid input spoilt a little, a few times and always in the same way; the campaign does it many times."""

import contextlib
import io
import os

import pytest
from fuzz import catalogue, guard, mutate
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

# 40 inputs a door and weight; STILLSHAFT_FUZZ=1 asks for more, and new ones
EXAMPLES = 1000 if os.environ.get("STILLSHAFT_FUZZ") == "1" else 20
EDITS = st.lists(st.tuples(st.integers(0, 2**16), st.integers(0, 2**20), st.integers(0, 2**16)), min_size=1, max_size=4)


@pytest.mark.parametrize("name", guard.DOORS)
def test_any_input_is_let_in_or_refused_in_one_line(name):
    door = guard.DOORS[name]
    seeds = door.seeds

    @settings(
        max_examples=max(3, round(EXAMPLES * min(1.0, door.weight))),
        deadline=None,
        phases=[Phase.generate, Phase.shrink],
        suppress_health_check=list(HealthCheck),
    )
    @given(st.integers(0, len(seeds) - 1), EDITS)
    def spoilt(which, edits):
        with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
            door(mutate.edited(door.kind, seeds[which], edits, guard.LARGEST_INPUT))

    spoilt()


@pytest.mark.parametrize("name", ["hook-up", "recording AU", "serial packets", "job record"])
@settings(max_examples=EXAMPLES, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.binary(max_size=400))
def test_any_bytes_are_let_in_or_refused_in_one_line(name, data):
    guard.DOORS[name](data)


def test_all_doors_are_in_the_list():
    assert len(catalogue.named()) == len(guard.DOORS) >= 47
