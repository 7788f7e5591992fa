"""From samples to vectors: edges, shaft angle, least squares, intervals, verdicts."""

import numpy as np
import pytest
import signals
from signals import RATE_HZ, Channel, Pulse
from stillshaft.dsp import channels, edges, measure, order, vectors

A, B = vectors.vector(0.3, 47.0), vectors.vector(0.15, 200.0)


def measured(samples, points=None, pulse=None, display="mm/s rms", wanted=1.0, piece=4096):
    points = points or [Channel(f"point {i}", i) for i in range(1, samples.shape[1])]
    measuring = measure.Measuring(RATE_HZ, pulse or Pulse(), points, display, wanted)
    for start in range(0, samples.shape[0], piece):
        measuring.feed(samples[start : start + piece])
    return measuring.result()


def assert_vector(point, truth, percent, degrees):
    amplitude, phase_deg = vectors.amplitude_phase(point.z)
    true_amplitude, true_phase = vectors.amplitude_phase(truth)
    assert amplitude == pytest.approx(true_amplitude, rel=percent / 100.0)
    assert abs((phase_deg - true_phase + 180.0) % 360.0 - 180.0) <= degrees


@pytest.mark.parametrize("speed_rpm", [300.0, 600.0, 1480.0, 3000.0, 6000.0])
def test_vectors_within_a_fifth_of_a_percent_and_degree(speed_rpm):
    result = measured(signals.record(12.0, speed_rpm, [A, B], noise=0.01))
    for point, truth in zip(result.points, (A, B), strict=True):
        assert_vector(point, truth, 0.2, 0.2)
    assert result.speed.mean_rpm == pytest.approx(speed_rpm, rel=0.006)
    assert result.edge == "rising"
    assert result.mark_share == pytest.approx(0.02, abs=0.004)


def test_sine_fit_agrees_with_ieee_1057():
    """IEEE Std 1057 (from memory): three-parameter least-squares sine fit at a known frequency."""
    frames = int(10 * RATE_HZ)
    rng = np.random.default_rng(4)
    angle = 2 * np.pi * 25.0 * np.arange(frames) / RATE_HZ
    x = np.cos(angle - 0.7) + 0.2 * rng.standard_normal(frames) + 0.3
    first, beyond = 0, 1920 * 200  # whole revolutions
    design = np.column_stack([np.cos(angle), np.sin(angle), np.ones(frames)])[first:beyond]
    fit = np.linalg.lstsq(design, x[first:beyond], rcond=None)[0]
    blocks = [
        order.block_equations(x[i : i + 7680, None], angle[i : i + 7680], (1.0,), 4, i / RATE_HZ, 157.0)
        for i in range(0, beyond, 7680)
    ]
    assert order.pooled(blocks).mean[0] == pytest.approx(fit[0] + 1j * fit[1], abs=1e-10)


def test_clean_constant_speed_sine_is_exact():
    """IEEE Std 1057 (from memory): on a noise-free sine the fit returns its parameters."""
    angle = 2 * np.pi * 25.0 * np.arange(76_800) / RATE_HZ
    x = 2.0 * np.cos(angle - 0.4)
    blocks = [
        order.block_equations(x[i : i + 7680, None], angle[i : i + 7680], (1.0,), 4, 0.0, 157.0) for i in (0, 7680)
    ]
    assert order.pooled(blocks).mean[0] == pytest.approx(2.0 * np.exp(0.4j), abs=1e-10)


def test_pieces_of_any_size_give_the_same_vectors():
    samples = signals.record(6.0, 1480.0, [A, B], noise=0.02)
    whole, crumbs = measured(samples, piece=samples.shape[0]), measured(samples, piece=1777)
    for one, other in zip(whole.points, crumbs.points, strict=True):
        assert abs(one.z - other.z) < 1e-5 * abs(one.z)


def test_moving_the_pulse_sensor_turns_every_phase_alike():
    frames = int(6 * RATE_HZ)
    results = []
    for start in (0.0, -37.0):
        angle = signals.shaft_angle(frames, 1480.0, 0.003)
        pulse = signals.pulse_train(angle + np.deg2rad(start), 1480.0)
        results.append(
            measured(np.column_stack([pulse, np.cos(angle - 1.0), 0.5 * np.cos(angle - 2.0)]).astype(np.float32) * 0.5)
        )
    for before, after in zip(results[0].points, results[1].points, strict=True):
        turn = np.rad2deg(np.angle(after.z / before.z))
        assert turn == pytest.approx(-37.0, abs=0.01)


def test_vectors_scale_with_the_signal_and_go_with_their_channel():
    samples = signals.record(6.0, 1480.0, [A, B], noise=0.01)
    plain = measured(samples)
    louder = samples.copy()
    louder[:, 1:] *= 0.25
    for point, less in zip(plain.points, measured(louder).points, strict=True):
        assert less.z == pytest.approx(0.25 * point.z, rel=1e-6)
        assert less.amplitude_ci95 == pytest.approx(0.25 * point.amplitude_ci95, rel=1e-5)
    crossed = measured(samples[:, [0, 2, 1]])
    assert crossed.points[0].z == pytest.approx(plain.points[1].z, rel=1e-9)
    assert crossed.points[1].z == pytest.approx(plain.points[0].z, rel=1e-9)


def test_time_run_backwards_mirrors_the_phase():
    """Backwards, x(−t) = A·cos(θ(−t) − φ) = A·cos(θ′ + φ), and what was the trailing edge leads."""
    samples = signals.record(6.0, 1480.0, [A], wander=0.0)
    forward = measured(samples)
    edge = Pulse(edge="falling")  # the edge at θ = 0 falls when time runs backwards
    backward = measured(samples[::-1], pulse=edge)
    assert abs(backward.points[0].z) == pytest.approx(abs(forward.points[0].z), rel=1e-4)
    assert np.rad2deg(np.angle(backward.points[0].z * forward.points[0].z)) == pytest.approx(0.0, abs=0.05)


def test_order_two_is_measured_too():
    samples = signals.record(8.0, 1480.0, [A], noise=0.005)
    result = measured(samples, wanted=2.0)
    assert_vector(result.points[0], 0.4 * abs(A) * np.exp(1.0j), 0.2, 0.2)


def test_channel_response_is_undone():
    samples = signals.record(6.0, 1500.0, [A], wander=0.0)
    plain = measured(samples).points[0].z
    corrected = measured(samples, [Channel("a", 1, highpass_hz=(2.0,), delay_s=1e-4)]).points[0].z
    assert np.rad2deg(np.angle(corrected / plain)) == pytest.approx(np.rad2deg(np.arctan(2.0 / 25.0)) - 0.9, abs=1e-3)


def test_acceleration_is_shown_as_velocity():
    samples = signals.record(6.0, 1500.0, [A], wander=0.0)
    as_acceleration = [Channel("a", 1, quantity="acceleration", si_per_reading=10.0)]
    z = measured(samples, as_acceleration).points[0].z
    amplitude, phase_deg = vectors.amplitude_phase(z)
    assert amplitude == pytest.approx(0.3 * 10.0 / (2 * np.pi * 25.0) * 1000.0 / np.sqrt(2.0), rel=1e-3)
    assert phase_deg == pytest.approx(47.0 + 90.0, abs=0.05)  # velocity lags acceleration by 90°


def test_overall_is_the_true_rms_in_the_band():
    result = measured(signals.record(10.0, 1500.0, [A]))
    tones = 0.3 * np.sqrt(1.0 + 0.16 + 0.04)  # all three are within 10–1000 Hz
    assert result.points[0].overall == pytest.approx(tones, rel=0.01)


def test_missing_and_stray_pulses_are_repaired_and_counted():
    samples = signals.record(12.0, 1480.0, [A], noise=0.005, pulse_db=40.0)
    angle = signals.shaft_angle(samples.shape[0], 1480.0, 0.005)
    turn = np.floor(angle / (2 * np.pi) + 0.5).astype(int)
    samples[np.isin(turn, [40, 41, 170]), 0] = 0.0
    stray = int(np.flatnonzero(turn == 100)[0]) + 600
    samples[stray : stray + 40, 0] = 0.5
    result = measured(samples)
    assert (result.speed.missing_pulses, result.speed.extra_pulses) == (3, 1)
    assert_vector(result.points[0], A, 0.2, 0.2)


def test_falling_mark_is_resolved_and_kept():
    samples = signals.record(6.0, 1480.0, [A], noise=0.005)
    samples[:, 0] = 0.5 - samples[:, 0]
    assert measured(samples).edge == "falling"
    assert_vector(measured(samples).points[0], A, 0.2, 0.2)
    trailing = measured(samples, pulse=Pulse(edge="rising"))
    assert np.rad2deg(np.angle(trailing.points[0].z / A)) == pytest.approx(-0.02 * 360.0, abs=0.1)


@pytest.mark.long
def test_intervals_cover_the_truth_about_as_often_as_they_say():
    hits = np.zeros(2)
    trials = 60
    for seed in range(trials):
        point = measured(signals.record(6.0, 1500.0, [A], noise=0.05, seed=seed)).points[0]
        amplitude, phase_deg = vectors.amplitude_phase(point.z)
        hits += [abs(amplitude - 0.3) <= point.amplitude_ci95, abs(phase_deg - 47.0) <= point.phase_ci95_deg]
    assert (hits >= 0.85 * trials).all()  # binomial: under 1 in 500 at a true 95 %


def tone(frequency_hz, amplitude):
    return lambda samples: (
        samples
        + np.column_stack(
            [
                np.zeros(len(samples)),
                amplitude * np.cos(2 * np.pi * frequency_hz * np.arange(len(samples)) / RATE_HZ),
            ]
        ).astype(np.float32)
    )


@pytest.mark.parametrize(("strength", "verdict"), [(0.06, "beating"), (0.45, "walking")])
@pytest.mark.parametrize(("offset_hz", "side"), [(0.3, "above"), (-0.3, "below")])
def test_a_neighbour_close_in_speed_is_found_with_its_side(strength, verdict, offset_hz, side):
    """Two sources, ratio ρ: phase swings ±asin ρ for ρ < 1, goes round for ρ > 1 (phasor addition)."""
    samples = signals.record(15.0, 1500.0, [A], wander=0.0, noise=0.01)
    point = measured(tone(25.0 + offset_hz, strength)(samples)).points[0]
    found = point.steadiness
    # 4.5 beats leave 0.2/(4.5·π) = 1.4 % of the weaker source in the mean: averaged out
    assert (found.verdict, found.trusted) == (verdict, verdict == "beating")
    assert found.beat.side == side
    assert found.beat.offset_hz == pytest.approx(offset_hz, abs=0.01)
    assert found.beat.ratio == pytest.approx(strength / 0.3, rel=0.05)
    assert abs(found.beat.cleaned - A) < 0.03 * abs(A)
    if verdict == "beating":
        assert found.phase_swing_deg == pytest.approx(2 * np.rad2deg(np.arcsin(0.2)), rel=0.15)


def test_a_drifting_phase_is_not_trusted():
    samples = signals.record(15.0, 1500.0, [A], wander=0.0, noise=0.01, harmonics=False)
    angle = signals.shaft_angle(samples.shape[0], 1500.0)
    samples[:, 1] = 0.3 * np.cos(angle - np.deg2rad(47.0 + 8.0 * np.arange(angle.size) / angle.size))
    found = measured(samples).points[0].steadiness
    assert (found.verdict, found.cause, found.trusted) == ("drifting", "trend", False)
    assert found.trend_deg_per_min == pytest.approx(32.0, rel=0.1)


def test_steady_vibration_is_called_steady():
    verdicts = [
        measured(signals.record(12.0, 1480.0, [A, B], noise=0.05, seed=seed)).points[i].steadiness.verdict
        for seed in range(8)
        for i in (0, 1)
    ]
    assert verdicts == ["steady"] * 16


def test_a_few_revolutions_are_too_short_to_tell():
    result = measured(signals.record(4.0, 300.0, [A]))
    found = result.points[0].steadiness
    assert (found.verdict, result.trusted) == ("too-short", False)
    assert found.record_s == pytest.approx(20.0, rel=0.15)


GOOD = signals.record(3.0, 1480.0, [A])


def with_column(column, values):
    samples = GOOD.copy()
    samples[:, column] = values
    return samples


@pytest.mark.parametrize(
    ("samples", "error", "match"),
    [
        (GOOD[:0], channels.ChannelError, "no samples"),
        (with_column(0, 0.0), edges.TachError, "constant: no pulses"),
        (
            with_column(0, np.random.default_rng(0).standard_normal(len(GOOD))),
            edges.TachError,
            "no two levels",
        ),
        (GOOD[:1600], edges.TachError, "pulse.* need 3 or more"),
        (with_column(1, 0.25), channels.ChannelError, r"input 2 \(\"point 1\"\) is silent"),
        (
            with_column(1, np.clip(5 * GOOD[:, 1], -1, 1)),
            channels.ChannelError,
            "input 2 .* is clipped: .* full scale",
        ),
        (
            with_column(1, np.where(np.arange(len(GOOD)) == 4800, np.nan, GOOD[:, 1])),
            channels.ChannelError,
            "input 2 .* not finite at 0.100 s",
        ),
        (
            with_column(0, np.where(np.arange(len(GOOD)) == 48, np.inf, GOOD[:, 0])),
            channels.ChannelError,
            "input 1 .* not finite",
        ),
        (GOOD[:, ::-1], channels.ChannelError, r"input 2 \(\"point 1\"\) looks like a pulse .* seem to be swapped"),
    ],
)
def test_bad_samples_are_refused_in_one_line(samples, error, match):
    with pytest.raises(error, match=match):
        measured(samples)


@pytest.mark.parametrize("wanted", [0.0, -1.0, float("nan")])
def test_impossible_orders_are_refused(wanted):
    with pytest.raises(measure.MeasureError, match="must be above 0"):
        measured(GOOD, wanted=wanted)


def test_an_order_above_the_sample_rate_is_refused():
    with pytest.raises(measure.MeasureError, match="more than 0.45 of the sample rate"):
        measured(GOOD, wanted=2000.0)


def test_all_orders_fitted_can_be_read():
    """Harmonics as `signals.record` writes them out: 0.4·cos(2θ − 1) and 0.2·cos(3θ + 0.5)."""
    measuring = measure.Measuring(RATE_HZ, Pulse(), [Channel("point", 1)], "mm/s rms")
    measuring.feed(signals.record(8.0, 1480.0, [A], noise=0.01))
    found = measuring.all_orders()
    assert [m.order for m in found] == [1.0, 2.0, 3.0, 4.0, 5.0]
    assert_vector(found[0].points[0], A, 0.2, 0.2)
    assert_vector(found[1].points[0], 0.4 * abs(A) * np.exp(1j), 1.0, 0.5)
    assert_vector(found[2].points[0], 0.2 * abs(A) * np.exp(-0.5j), 1.0, 0.5)
    assert abs(found[3].points[0].z) <= 2.0 * found[3].points[0].amplitude_ci95


def test_hann_weights_keep_a_strong_far_tone_out():
    """A tone at 1.37 times the speed, as strong as 1x; weights of Harris, Proc. IEEE 1978 (from memory)."""
    samples = signals.record(4.0, 1480.0, [A], wander=0.0)
    t = np.arange(len(samples)) / RATE_HZ
    samples[:, 1] += 0.3 * np.cos(2 * np.pi * 1.37 * 1480.0 / 60.0 * t)

    def error(weights):
        measuring = measure.Measuring(RATE_HZ, Pulse(), [Channel("point", 1)], "mm/s rms", weights=weights)
        measuring.feed(samples)
        return abs(measuring.result().points[0].z / A - 1.0)

    assert error("hann") < 1e-3
    assert error("flat") > 3.0 * error("hann")


@pytest.mark.long
def test_hann_weights_cost_half_as_much_variance_again():
    """1.5 for white noise (Harris 1978, from memory), and the interval says so."""
    halves, errors = {}, {}
    for weights in ("flat", "hann"):
        rows = []
        for seed in range(60):
            measuring = measure.Measuring(RATE_HZ, Pulse(), [Channel("point", 1)], "mm/s rms", weights=weights)
            measuring.feed(signals.record(2.5, 3000.0, [A], seed=seed, noise=0.1))
            point = measuring.result().points[0]
            rows.append((abs(point.z - A) ** 2, point.amplitude_ci95**2))
        errors[weights], halves[weights] = np.mean(rows, axis=0)
    assert errors["hann"] / errors["flat"] == pytest.approx(1.5, rel=0.3)
    assert halves["hann"] / halves["flat"] == pytest.approx(1.5, rel=0.1)


def test_unknown_weights_are_refused():
    with pytest.raises(measure.MeasureError, match='weights "square": flat or hann'):
        measure.Measuring(RATE_HZ, Pulse(), [Channel("point", 1)], "mm/s rms", weights="square")


def test_json_holds_the_contracts_keys():
    whole = measure.to_json(measured(signals.record(4.0, 1480.0, [A, B], noise=0.01)))
    assert list(whole) == ["speed", "order", "points", "covariance"]
    assert whole["covariance"]["order"] == ["point 1 re", "point 1 im", "point 2 re", "point 2 im"]
    assert np.shape(whole["covariance"]["matrix"]) == (4, 4)


def test_nothing_is_measured_across_a_gap():
    """A third of a revolution lost: naive counting would turn the rest of the record's phase by 120°."""
    samples = signals.record(16.0, 1480.0, [A], noise=0.01)
    lost = round(RATE_HZ * 60.0 / 1480.0 / 3.0)
    measuring = measure.Measuring(RATE_HZ, Pulse(), [Channel("a", 1)], "mm/s rms")
    at = round(7.3 * RATE_HZ)
    measuring.feed(samples[:at])
    measuring.feed(samples[at + lost :], lost_before=lost)
    found = measuring.result()
    assert_vector(found.points[0], A, 0.2, 0.2)
    assert found.points[0].steadiness.verdict == "steady"
    assert (found.speed.missing_pulses, found.speed.extra_pulses) == (0, 0)
    assert found.duration_s == pytest.approx(16.0, abs=1e-3)
    assert not found.trusted
    assert "samples were lost at one place" in found.reasons[-1]
    assert measuring.shaft.frames[0] > at  # the longer stretch, in frames of the whole


def test_a_stretch_without_pulses_is_left_out():
    samples = signals.record(10.0, 1480.0, [A], noise=0.01)
    measuring = measure.Measuring(RATE_HZ, Pulse(), [Channel("a", 1)], "mm/s rms")
    measuring.feed(samples[:900])
    measuring.feed(samples[2000:], lost_before=-1)
    assert_vector(measuring.result().points[0], A, 0.2, 0.2)
