"""Whatever comes in is measured or refused in one line by an error of the project, never by another."""

from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from signals import Channel, Pulse
from stillshaft.dsp import candidates, channels, measure, quantity, sweep, tach, tracking

VALUES = st.sampled_from([0.0, 1.0, -1.0, 0.25, 1e-30, 1e30, float("nan"), float("inf"), -0.0])
NUMBERS = st.one_of(st.floats(), st.integers(-10, 10).map(float))


@contextmanager
def one_line_at_most():
    """An error of the project in one line is an answer; any other error passes through and fails the test."""
    try:
        yield
    except ValueError as error:
        if not type(error).__module__.startswith("stillshaft.") or "\n" in str(error):
            raise


@settings(max_examples=60, deadline=None)
@given(
    st.integers(0, 9000),
    st.lists(VALUES, min_size=2, max_size=2),
    st.sampled_from(["noise", "pulses", "constant", "ramp"]),
    st.integers(1, 4000),
    st.integers(0, 1000),
)
def test_any_samples_are_measured_or_refused(frames, levels, kind, piece, seed):
    rng = np.random.default_rng(seed)
    at = np.arange(frames)
    pulse = {
        "noise": rng.standard_normal(frames),
        "pulses": (at % 300 < 6).astype(float) + 0.01 * rng.standard_normal(frames),
        "constant": np.zeros(frames),
        "ramp": at.astype(float),
    }[kind]
    samples = np.column_stack([pulse, 0.1 * rng.standard_normal(frames)])
    if frames:
        samples[rng.integers(frames), 0] = levels[0]
        samples[rng.integers(frames), 1] = levels[1]
    measuring = measure.Measuring(8000.0, Pulse(), [Channel("a", 1)], "mm/s rms")
    with one_line_at_most():
        for start in range(0, frames, piece):
            measuring.feed(samples[start : start + piece])
        assert np.isfinite(measuring.result().points[0].z)


@settings(max_examples=60, deadline=None)
@given(
    st.lists(NUMBERS, max_size=3).map(tuple), st.one_of(st.none(), NUMBERS), st.sampled_from(["vold-kalman", "windows"]),
    st.one_of(st.none(), NUMBERS), st.one_of(st.none(), NUMBERS), st.one_of(st.none(), NUMBERS), st.integers(0, 150),
    st.floats(0.5, 3.0),
)  # fmt: skip
def test_any_sweep_is_analysed_or_refused(
    orders, tone_hz, tracker, bandwidth_hz, slow_roll, running, revolutions, bend
):
    rng = np.random.default_rng(revolutions)
    edges = 4000.0 * (np.arange(revolutions) / 20.0) ** (1.0 / bend)
    x = rng.standard_normal((int(edges[-1]) + 500 if revolutions else 500, 1))
    with one_line_at_most():
        wanted = sweep.Wanted(orders, tone_hz, tracker, bandwidth_hz, slow_roll, running)
        turned = tach.number_revolutions(np.unique(edges))
        highest = tracking.highest_hz(turned, 4000.0, tracking.with_companions(wanted.orders), wanted.tone_hz)
        reducer = tracking.reducer(4000.0, highest, 1)
        reduced = reducer.feed(x).astype(np.float64)
        channels = [Channel("a", 1, "displacement")]
        found = sweep.analyse(reduced, reducer.first, reducer.step, 4000.0, turned, channels, "um p-p", wanted)
        assert all(np.isfinite(p.z).all() for p in found.points)
        assert all(np.isfinite(r.rpm.value) for p in found.points for r in p.resonances)


@settings(max_examples=200, deadline=None)
@given(st.binary(max_size=300))
def test_any_bytes_as_a_candidates_list_are_refused_in_one_line(content):
    with TemporaryDirectory() as folder:
        path = Path(folder) / "n.toml"
        path.write_bytes(content)
        with pytest.raises(candidates.CandidatesError) as caught:
            candidates.load(path)
        assert str(caught.value).startswith(str(path))
        assert "\n" not in str(caught.value)


@settings(max_examples=200, deadline=None)
@given(*[st.one_of(st.text(max_size=12), st.sampled_from(["1480 rpm", "200 mm", "1800 mm", "0 mm", "-1 Hz"]))] * 4)
def test_any_belt_is_taken_or_refused_in_one_line(pulley, speed, length, within):
    import tomli_w

    belt = {"name": "b", "pulley": pulley, "speed": speed, "length": length, "within": within}
    with TemporaryDirectory() as folder:
        path = Path(folder) / "n.toml"
        path.write_bytes(tomli_w.dumps({"format": 1, "belt": [belt]}).encode("utf-8", "surrogatepass"))
        with one_line_at_most():
            (found,) = candidates.load(path)
            assert np.isfinite(found.rpm)
            assert found.rpm > 0


@settings(max_examples=60, deadline=None)
@given(NUMBERS, NUMBERS)
def test_any_band_is_converted_or_refused(low, high):
    with one_line_at_most():
        quantity.BandConverter(2000.0, [Channel("a", 0)], "displacement", (low, high))


def test_signalling_numbers_and_the_largest_are_refused_without_a_warning():
    samples = np.zeros((4000, 2), dtype="f4")
    samples[70, 1] = np.array([0x7F800001], dtype="u4").view("f4")[0]
    samples[300:302, 0] = np.inf, -np.inf
    with pytest.raises(channels.ChannelError, match="not finite"):
        channels.Inputs(8000.0, Pulse(), [Channel("a", 1)]).take(samples)


def test_a_neighbour_has_a_name(tmp_path):
    (tmp_path / "n.toml").write_text('format = 1\n[[machine]]\nname = " "\nspeed = "1450 rpm"\n')
    with pytest.raises(candidates.CandidatesError, match="name: is empty"):
        candidates.load(tmp_path / "n.toml")
