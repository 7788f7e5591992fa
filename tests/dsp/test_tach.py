"""Pulse edges and revolutions: against the Cramér–Rao bound, in bad light, with marks missing, doubled and unequal."""

import numpy as np
import pulses
import pytest
import signals
from hypothesis import given, settings
from hypothesis import strategies as st
from pulses import RATE_HZ
from stillshaft.dsp import edges, measure, tach


def followed(x, edge="auto", piece=4800):
    """Edges of a signal that comes in pieces, with widths."""
    follower = edges.EdgeFollower(RATE_HZ, edge)
    for i in range(0, x.size, piece):
        follower.feed(x[i : i + piece])
    follower.finish()
    frames, widths = follower.take()
    return frames, widths, follower


def off_by(found, places):
    """Errors of the found edges against the nearest true place, samples; the first two edges left out."""
    nearest = np.clip(np.searchsorted(places, found), 1, places.size - 1)
    nearest -= np.abs(places[nearest - 1] - found) < np.abs(places[nearest] - found)
    return (found - places[nearest])[2:]


@pytest.mark.parametrize("rise_us", [0.0, 50.0, 200.0])
@pytest.mark.parametrize("ratio_db", [20.0, 40.0])
def test_edges_scatter_no_more_than_the_bound_asks(rise_us, ratio_db):
    """400 edges: the deviation itself is known to 3.5 %, so 1.1 × bound is held with 1.2."""
    rng = np.random.default_rng(3)
    table = pulses.edge_table(rise_us * 1e-6 * RATE_HZ)
    places = np.arange(60.3, 8 * RATE_HZ - 200, 960.0)
    places = places + 0.37 * np.sin(np.arange(places.size))
    deviation = 10 ** (-ratio_db / 20.0)
    x = pulses.pulses(places, 19.2, int(8 * RATE_HZ), table) + deviation * rng.standard_normal(int(8 * RATE_HZ))
    found, widths, _ = followed(x, "rising")
    error = off_by(tach.number_revolutions(found, widths).frames, places)
    assert error.size == places.size - 2
    assert error.std() <= 1.2 * pulses.edge_bound(table, deviation, 19)


@pytest.mark.parametrize(("speed_rpm", "seconds"), [(60.0, 20.0), (300.0, 10.0), (60_000.0, 1.0)])
def test_any_speed_from_60_to_60_000(speed_rpm, seconds):
    rng = np.random.default_rng(1)
    period = RATE_HZ * 60.0 / speed_rpm
    frames = int(seconds * RATE_HZ)
    places = np.arange(60.3, frames - 60.0, period)
    x = pulses.pulses(places, max(0.02 * period, 5.0), frames, pulses.edge_table(0.0))
    found, widths, _ = followed(x + 0.03 * rng.standard_normal(frames))
    turned = tach.number_revolutions(found, widths)
    assert (turned.missing, turned.extra) == (0, 0)
    assert abs(turned.frames.size - places.size) <= 2
    degrees = 360.0 * off_by(found, places) / period
    assert degrees.std() < 0.6  # 5 samples are a whole mark at the highest speed
    assert abs(degrees.mean()) < 0.2


@pytest.mark.parametrize("corner_hz", [2.0, 10.0])
@pytest.mark.parametrize(("speed_rpm", "mark"), [(1000.0, 0.02), (1000.0, 0.2), (3000.0, 0.02)])
def test_ac_coupling_of_the_pulse_does_not_move_its_edges(corner_hz, speed_rpm, mark):
    period = RATE_HZ * 60.0 / speed_rpm
    places = np.arange(60.3, 6 * RATE_HZ - 200, period)
    x = pulses.pulses(places, mark * period, int(6 * RATE_HZ), pulses.edge_table(0.0))
    found, _, _ = followed(pulses.coupled(x, corner_hz), "rising")
    assert abs(np.mean(off_by(found, places)[20:])) * 360.0 / period <= 0.01


@pytest.mark.parametrize(
    "light", ["steady", "half the turn", "soft half", "sinusoidal", "lamp at 100 Hz", "spikes", "mirrored"]
)
@pytest.mark.parametrize("speed_rpm", [600.0, 3000.0])
def test_marks_are_found_in_bad_light(light, speed_rpm):
    rng = np.random.default_rng(0)
    frames = int(6 * RATE_HZ)
    angle = signals.shaft_angle(frames, speed_rpm, 0.005)
    mark = signals.pulse_train(angle, speed_rpm)
    turn = np.sin(angle + 1.0)
    added = {
        "steady": 0.0,
        "half the turn": 2.0 * (turn > 0.0),
        "soft half": 2.0 * np.clip(0.5 + 1.5 * turn, 0.0, 1.0),
        "sinusoidal": 2.0 * turn,
        "lamp at 100 Hz": 0.3 * np.sin(2 * np.pi * 100.0 * np.arange(frames) / RATE_HZ),
        "spikes": np.convolve(3.0 * (rng.random(frames) < 1e-4) * rng.choice([-1, 1], frames), np.ones(3), "same"),
        "mirrored": -2.0 * mark,
    }[light]
    found, widths, follower = followed(mark + added + 0.03 * rng.standard_normal(frames))
    turned = tach.number_revolutions(found, widths)
    assert follower.edge == ("falling" if light == "mirrored" else "rising")
    turns = np.interp(turned.frames, np.arange(frames), angle) / (2 * np.pi)
    assert np.all(np.round(turns - turns[0]) == turned.numbers)
    degrees = 360.0 * (turns - np.round(turns))
    assert np.abs(degrees).max() < 0.5
    assert abs(np.median(degrees)) < 0.02
    assert turned.frames.size >= 0.98 * np.floor(np.ptp(angle) / (2 * np.pi))


def test_a_short_last_piece_in_bad_light_is_no_fault_of_the_program():
    """What earlier pieces took off may be longer than a sixth of the last one."""
    noise = 0.01 * np.random.default_rng(0).standard_normal(300)
    with pytest.raises(edges.TachError, match="no two levels"):
        edges.find_edges(noise, flattened=257)


def test_pieces_of_any_size_give_the_same_edges():
    rng = np.random.default_rng(2)
    angle = signals.shaft_angle(int(6 * RATE_HZ), 1480.0, 0.005)
    x = signals.pulse_train(angle, 1480.0, rise_samples=4.0) + 0.03 * rng.standard_normal(angle.size)
    small, large = followed(x, piece=997)[0], followed(x, piece=48_000)[0]
    assert small.size == large.size
    # what a slow edge's shape was learned from differs, and little else
    assert np.abs(small - large).max() < 0.15 * np.std(np.diff(small, 3)) / np.sqrt(20.0) * 6.0


# numbering


@pytest.mark.parametrize("kind", ["steady", "uneven", "run-up"])
@pytest.mark.parametrize("faults", [(0.0, 0.0, 0.0), (0.03, 0.02, 0.02), (0.08, 0.04, 0.04)])
def test_revolutions_are_numbered_right_with_faulty_pulses(kind, faults):
    true_used = true_all = spurious_left = spurious_all = 0
    for seed in range(12):
        frames, labels = pulses.turning_marks(kind, np.random.default_rng(seed), *faults)
        turned = tach.number_revolutions(frames)
        label = labels[np.searchsorted(frames, turned.frames)]
        assert np.ptp((turned.numbers - label)[label >= 0]) == 0, seed
        used = np.isin(frames, turned.frames)
        true_used, true_all = true_used + np.count_nonzero(used[labels >= 0]), true_all + np.count_nonzero(labels >= 0)
        spurious_left += np.count_nonzero(~used[labels < 0])
        spurious_all += np.count_nonzero(labels < 0)
    assert true_used >= 0.99 * true_all
    assert spurious_left >= 0.97 * spurious_all


def test_revolutions_that_come_in_pieces_are_numbered_as_a_whole():
    frames, _ = pulses.turning_marks("run-up", np.random.default_rng(4), 0.03, 0.02, 0.02)
    whole = tach.number_revolutions(frames)
    follower = tach.RevolutionFollower()
    for i in range(0, frames.size, 7):
        follower.feed(frames[i : i + 7], np.full(frames[i : i + 7].size, np.nan))
        if follower.edges > 20:
            follower.drop_before(follower.newest().frames[-1])
    pieces = follower.whole()
    both, a, b = np.intersect1d(whole.frames, pieces.frames, return_indices=True)
    assert both.size >= 0.99 * whole.frames.size
    assert np.ptp(whole.numbers[a] - pieces.numbers[b]) == 0
    assert (pieces.missing, pieces.extra) == (pytest.approx(whole.missing, abs=2), pytest.approx(whole.extra, abs=2))


def marks(places, accelerates=False, missing=0.0, stray=0.0, seed=0):
    """Edges of several marks a revolution (samples), with what tells each one's true place in revolutions."""
    rng = np.random.default_rng(seed)
    t = np.arange(0.0, 10.0, 1e-4)
    turns = np.cumsum((300.0 + 270.0 * t if accelerates else np.full(t.size, 1500.0)) / 60.0) * 1e-4 + 0.3
    at = (np.arange(int(turns[-1]) + 1)[:, None] + np.array(places)).ravel()
    at = at[(at > turns[0]) & (at < turns[-1]) & (rng.random(at.size) > missing)]
    strays = rng.uniform(turns[0], turns[-1], rng.binomial(at.size, stray))
    frames = np.interp(np.sort(np.concatenate([at, strays])), turns, t) * RATE_HZ
    return frames, lambda found: np.interp(found / RATE_HZ, t, turns)


@pytest.mark.parametrize("accelerates", [False, True])
@pytest.mark.parametrize("faults", [(0.0, 0.0), (0.03, 0.02)])
@pytest.mark.parametrize(
    ("places", "count", "reference"),
    [
        ([0.0, 0.2, 0.55], 3, "unequal"),
        ([0.0, 0.3], 2, "unequal"),
        ([i / 12 for i in range(11)], 12, "missing"),
    ],
)
def test_several_marks_turn_the_phase_about_the_first(places, count, reference, faults, accelerates):
    frames, turns = marks(places, accelerates, *faults)
    turned = tach.number_revolutions(frames, marks=count, reference=reference)
    off = turns(turned.frames) - turned.numbers
    assert np.abs(off - np.rint(off[0])).max() < 0.04  # a stray beside a missing mark may stand for it
    assert abs(np.median(off) - np.rint(off[0])) < 1e-3
    between = turns(turned.knot_frames) - turned.knot_turns
    assert np.abs(np.median(between) - np.rint(off[0])) < 1e-3


def test_the_wide_mark_is_the_first():
    frames, turns = marks([i / 6 for i in range(6)])
    widths = np.where(np.abs((turns(frames) + 0.01) % 1.0 - 2 / 6) < 0.02, 60.0, 20.0)
    turned = tach.number_revolutions(frames, widths, marks=6, reference="wide")
    np.testing.assert_allclose(turns(turned.frames) % 1.0, 2 / 6, atol=1e-3)
    with pytest.raises(edges.TachError, match="no mark is wider than the others"):
        tach.number_revolutions(frames, np.full(frames.size, 20.0), marks=6, reference="wide")


@pytest.mark.parametrize(
    ("places", "count", "reference", "match"),
    [
        ([0.0, 0.26, 0.5, 0.74], 4, "unequal", "too alike to tell which mark is 0"),
        ([0.0, 0.2, 0.55], 4, "unequal", "do not repeat after 4 pulses"),
        ([i / 12 for i in range(12)], 12, "missing", "none is missing"),
    ],
)
def test_marks_that_cannot_be_told_apart_are_refused(places, count, reference, match):
    with pytest.raises(edges.TachError, match=match):
        tach.number_revolutions(marks(places)[0], marks=count, reference=reference)


def test_several_marks_without_a_first_give_the_speed_only():
    frames = int(6 * RATE_HZ)
    angle = signals.shaft_angle(frames, 1480.0, 0.0)
    pulse = signals.Pulse(pulses_per_rev=3)
    taken = np.column_stack([signals.pulse_train(3.0 * angle, 3 * 1480.0), np.cos(angle) * 0.1]).astype(np.float32)
    measuring = measure.Measuring(RATE_HZ, pulse, [signals.Channel("a", 1)], "mm/s rms")
    measuring.feed(taken)
    with pytest.raises(edges.TachError, match=r"the speed is 1480\.0 r/min, but there is no phase; say how the first"):
        measuring.result()


def test_many_faulty_pulses_in_one_piece_are_still_pulses():
    """A tenth of the marks missing, doubled or beside: a look at the whole record must not prefer four stray edges."""
    rng = np.random.default_rng(3)
    angle = signals.shaft_angle(int(4 * RATE_HZ), 1480.0, 0.0)
    number = np.floor(angle / (2 * np.pi)).astype(int)
    x = 0.5 * signals.pulse_train(angle, 1480.0) * (rng.random(number.max() + 1) > 0.05)[number]
    for shift in (-2.2, 0.25, 1.9):
        x = x + 0.5 * signals.pulse_train(angle - shift, 1480.0) * (rng.random(number.max() + 1) < 0.03)[number]
    found, _ = edges.find_edges(x + 0.01 * rng.standard_normal(x.size))
    assert found.edge == "rising"
    assert found.frames.size > 85


def test_two_edges_in_one_place_are_one():
    frames = 1000.0 * np.arange(40)
    found = tach.number_revolutions(np.sort(np.append(frames, frames[[7, 20]])))
    assert found.extra == 2
    np.testing.assert_array_equal(found.frames, frames)


def test_a_speed_that_jumps_is_refused():
    frames = np.concatenate([np.arange(50) * 1000.0, 50_000.0 + np.arange(50) * 1500.0])
    with pytest.raises(edges.TachError, match="the speed jumps from one revolution to the next by 50 %"):
        tach.number_revolutions(frames)


def test_a_shaft_that_sets_off_or_stops_gives_up_its_first_or_last_revolutions():
    """From 60 r/min at 98 r/min each second the second revolution takes 40 % less time than the first."""
    turns = np.arange(0.0, 700.0)
    start, rate = 1.0, 98.0 / 60.0
    frames = 48_000.0 * (np.sqrt(start**2 + 2.0 * rate * turns) - start) / rate
    for edge_frames, end in ((frames, slice(None, None)), (frames[-1] - frames[::-1], slice(None, None, -1))):
        turned = tach.number_revolutions(edge_frames)
        assert turned.frames.size >= frames.size - 4
        kept = np.isin(edge_frames, turned.frames)[end]
        assert kept[4:].all()
        true = np.flatnonzero(np.isin(edge_frames, turned.frames))
        assert np.unique(turned.numbers - true).size == 1


@settings(max_examples=80, deadline=None)
@given(
    st.lists(st.floats(0.0, 1e6, allow_nan=False), max_size=60),
    st.integers(1, 5),
    st.sampled_from(["single", "missing", "wide", "unequal"]),
)
def test_any_edges_give_revolutions_or_are_refused(times, count, reference):
    frames = np.unique(np.array(times))
    frames = frames[np.concatenate([[True], np.diff(frames) > 1e-3])] if frames.size else frames
    try:
        turned = tach.number_revolutions(frames, marks=count, reference=reference)
    except edges.TachError:
        return
    assert np.all(np.diff(turned.frames) > 0.0)
    assert np.all(np.diff(turned.numbers) > 0)
