"""Samples counted against the clock: losses found, lateness and a clock that is set not taken for one."""

import numpy as np
import pytest
from stillshaft.acquire.clock import SampleClock

RATE_HZ, BLOCK_S = 48_000.0, 0.05
FRAMES = int(RATE_HZ * BLOCK_S)


def played(blocks, *, lost_at=(), lost_blocks=3, late=lambda k, rng: abs(0.004 * rng.standard_normal()), ppm=0.0,
           conversion=True, set_at=None):  # fmt: skip
    """What the clock says of each block; `lost_at` blocks have so many others missing before them."""
    rng = np.random.default_rng(2)
    clock, frames, true_s, found = SampleClock(RATE_HZ, BLOCK_S, 0.25), 0, 100.0, {}
    for k in range(blocks):
        true_s += BLOCK_S * (1.0 + ppm * 1e-6) * (1 + lost_blocks * (k in lost_at))
        wall_s = true_s + (3600.0 if set_at is not None and k >= set_at else 0.0)
        arrived_s = true_s + BLOCK_S + late(k, rng)
        converted_s = wall_s + 0.001 * rng.standard_normal() if conversion else 0.0
        lost = clock.lost(frames, arrived_s, converted_s, wall_s + BLOCK_S, more_waiting=False)
        if lost is not None:
            found[k] = lost
        frames += FRAMES
    return found


@pytest.mark.parametrize("ppm", [-200.0, 0.0, 200.0])
@pytest.mark.parametrize("conversion", [True, False])
def test_nothing_is_lost_in_an_hour_of_jitter_and_drift(ppm, conversion):
    assert played(72_000, ppm=ppm, conversion=conversion) == {}


def test_a_loss_is_counted_to_a_few_milliseconds():
    found = played(2000, lost_at=(500, 1200))
    assert list(found) == [500, 1200]
    for lost in found.values():
        assert lost == pytest.approx(3 * FRAMES, abs=0.006 * RATE_HZ)


def test_a_loss_is_found_by_arrival_alone():
    found = played(2000, lost_at=(500,), lost_blocks=10, conversion=False)
    assert list(found) == [500]
    assert found[500] == pytest.approx(10 * FRAMES, abs=0.02 * RATE_HZ)


def test_a_stalled_reader_is_late_and_loses_nothing():
    """Blocks that wait for 0.9 s: the times of conversion show that nothing is missing."""
    assert played(400, late=lambda k, rng: max(0.0, 0.9 - 0.05 * (k - 200)) if k >= 200 else 0.0) == {}


def test_a_clock_that_is_set_is_no_loss():
    assert played(400, set_at=200) == {}


def test_two_blocks_and_less_are_not_told_from_jitter():
    assert played(400, lost_at=(200,), lost_blocks=1) == {}
