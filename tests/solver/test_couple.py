"""Static and couple parts: rigid-body physics by hand, laws, scatter carried through, what is proposed and why."""

import dataclasses

import numpy as np
import pytest
from stillshaft.solver import correction, couple
from stillshaft.solver.influence import fit, spread, state_of
from test_expected import runs_of
from test_solver import complex_masses

LOOSE = {"rtol": 1e-9, "atol": 1e-12}


def rigid_rotor(bearings, planes, centre, *, mass=40.0, inertia=3.0, stiffness=2e6, damping=400.0, speed_rpm=900.0):
    """Displacement of each bearing per kg·mm of unbalance in each plane: a rigid body on two springs, Newton's laws.

    m·ÿ = ΣF, I·θ̈ = ΣF·(z − centre), F = Ω²·U in the planes and −(k + jΩc)·(y + θ·(z − centre)) at the bearings.
    """
    omega = speed_rpm * np.pi / 30.0
    b, p = np.array(bearings) - centre, np.array(planes) - centre
    spring = stiffness + 1j * omega * damping
    dynamic = np.array(
        [
            [2 * spring - omega**2 * mass, spring * b.sum()],
            [spring * b.sum(), spring * (b**2).sum() - omega**2 * inertia * 1e6],  # mm²
        ]
    )
    load = np.vstack([np.ones(p.size), p])
    return np.column_stack([np.ones(2), b]) @ np.linalg.solve(dynamic, omega**2 * load)


def complex_normal(rng, *shape):
    return rng.standard_normal(shape) + 1j * rng.standard_normal(shape)


# statics by hand


@pytest.mark.parametrize(
    ("z", "centre", "static"),
    [
        ((-250.0, 250.0), 0.0, (0.5, 0.5)),
        ((0.0, 400.0), 100.0, (0.75, 0.25)),  # levers: three times nearer, three times as much
        ((500.0, 600.0), 450.0, (1.5, -0.5)),  # outside the planes: opposed
        ((400.0, 0.0), 100.0, (0.25, 0.75)),
        ((0.0, 400.0), None, (0.5, 0.5)),
        ((None, 400.0), 100.0, (0.5, 0.5)),
        (None, None, (0.5, 0.5)),
    ],
)
def test_levers_spread_the_static_part(z, centre, static):
    found = couple.shares(2, z, centre)
    np.testing.assert_allclose(found[:, 0], static, atol=1e-12)
    np.testing.assert_allclose(found[:, 1], (1.0, -1.0), atol=1e-12)


def test_three_planes_have_a_resultant_without_couple_and_a_couple_without_resultant():
    z, centre = np.array([0.0, 150.0, 500.0]), 180.0
    static, pair = couple.shares(3, z, centre).T
    assert (static.sum(), pair.sum()) == (pytest.approx(1.0), pytest.approx(0.0))
    assert static @ (z - centre) == pytest.approx(0.0, abs=1e-9)
    assert pair @ (z - centre) == pytest.approx(z[0] - z[-1])


def test_parallelogram_of_a_textbook():
    """Equal planes 10∠0° and 10∠90°: resultant 10√2∠45°, couple 5√2∠−45° and its opposite (common derivation, from memory)."""
    parts = couple.parts_of(np.array([10.0, 10.0j]), None, np.ones(2))
    assert (abs(parts.static), np.angle(parts.static, deg=True)) == (pytest.approx(200**0.5), pytest.approx(45.0))
    assert (abs(parts.couple), np.angle(parts.couple, deg=True)) == (pytest.approx(50**0.5), pytest.approx(-45.0))
    assert parts.covariance is None


@pytest.mark.parametrize("seed", range(5))
def test_parts_put_together_again_are_the_masses(seed):
    rng = np.random.default_rng(seed)
    masses, radii = complex_normal(rng, 2), rng.uniform(50.0, 400.0, 2)
    z, centre = rng.uniform(-500.0, 500.0, 2), float(rng.uniform(-500.0, 500.0))
    root = rng.standard_normal((4, 4))
    parts = couple.parts_of(masses, root @ root.T, radii, z, centre)
    back, covariance = couple.masses_of(parts, radii, z, centre)
    np.testing.assert_allclose(back, masses, **LOOSE)
    np.testing.assert_allclose(covariance, root @ root.T, rtol=1e-9, atol=1e-9)
    assert parts.static == pytest.approx(complex(np.sum(radii * masses)))
    moment = np.sum(radii * masses * (z - centre))
    assert parts.couple * (z[0] - z[1]) == pytest.approx(complex(moment))
    turn = np.exp(1j * 0.7)
    turned = couple.parts_of(turn * masses, None, radii, z, centre)
    assert (turned.static, turned.couple) == (pytest.approx(turn * parts.static), pytest.approx(turn * parts.couple))
    only_couple, _ = couple.masses_of(dataclasses.replace(parts, static=0j), radii, z, centre)
    assert np.sum(radii * only_couple) == pytest.approx(0.0, abs=1e-9)


def test_scatter_of_the_masses_becomes_that_of_the_parts():
    """5000 draws: every entry of the covariance within its own sampling error."""
    rng = np.random.default_rng(7)
    root, radii, z = rng.standard_normal((4, 4)), np.array([200.0, 310.0]), (-100.0, 300.0)
    mean = np.array([3.0 + 1.0j, -2.0 + 4.0j])
    stated = couple.parts_of(mean, root @ root.T, radii, z, 60.0).covariance
    off = rng.standard_normal((5000, 4)) @ root.T
    drawn = mean + off[:, 0::2] + 1j * off[:, 1::2]
    parts = [couple.parts_of(w, None, radii, z, 60.0) for w in drawn]
    measured = np.cov([[p.static.real, p.static.imag, p.couple.real, p.couple.imag] for p in parts], rowvar=False)
    error = np.sqrt((np.outer(np.diag(stated), np.diag(stated)) + stated**2) / 5000)
    assert np.all(np.abs(measured - stated) <= 4.5 * error)


# rigid rotors


def test_symmetric_rotor_answers_static_in_phase_and_couple_opposed():
    h = rigid_rotor((-300.0, 300.0), (-200.0, 200.0), 0.0)
    columns = couple.shares(2, (-200.0, 200.0), 0.0)
    static, pair = (h @ columns).T
    assert static[0] == pytest.approx(static[1])
    assert pair[0] == pytest.approx(-pair[1])


@pytest.mark.parametrize(("truth", "name"), [((120.0j, 120.0j), couple.STATIC), ((90.0, -90.0), couple.COUPLE)])
def test_the_part_that_is_there_is_found_with_one_unknown(tmp_path, truth, name):
    z, radii = (-200.0, 200.0), np.array([150.0, 150.0])
    h = rigid_rotor((-300.0, 300.0), z, 0.0)
    runs = runs_of(tmp_path / "r.toml", 150.0 * h, h @ np.array(truth), trial=1.0, stated="0.1 % 0.1 deg")
    listed = couple.ranked(fit(runs), couple.bases(("left", "right"), radii, z, 0.0), (0.001, 0.001), radii, shrunk=0.0)
    found = {a.name: a for a in listed}
    np.testing.assert_allclose(found[name].masses * radii, -np.array(truth), rtol=1e-6)
    assert found[name].unbalance == pytest.approx(np.abs(truth).sum())
    left = [found['plane "left" alone'].rms, found['plane "right" alone'].rms]
    assert found[name].rms < 0.1 * min(left)  # what the trials' placing leaves open
    other = found[couple.COUPLE if name == couple.STATIC else couple.STATIC]
    np.testing.assert_allclose(other.masses, 0.0, atol=1e-6)


def test_overhung_disc_is_balanced_by_its_static_part(tmp_path):
    """Disc beyond the second bearing, unbalance in its middle, planes on its faces: half each, and no couple."""
    z, radii = (385.0, 415.0), np.array([200.0, 200.0])
    h = rigid_rotor((0.0, 300.0), z, 330.0)
    v0 = h @ np.array([60.0, 60.0])
    runs = runs_of(tmp_path / "r.toml", 200.0 * h, v0, trial=1.0, stated="0.5 % 0.5 deg")
    (fitted,) = fit(runs)
    listed = couple.ranked((fitted,), couple.bases(("in", "out"), radii, z, 400.0), (0.001, 0.001), radii)
    found = {a.name: a for a in listed}
    np.testing.assert_allclose(found[couple.STATIC].masses, [-0.3, -0.3], rtol=1e-3)
    assert found[couple.STATIC].determined
    chosen = couple.proposal(listed, kind="overhung", goal=0.2 * float(np.abs(v0).max()), far=(0,))
    assert chosen.alternative.unknowns == 1
    assert chosen.alternative.name != couple.COUPLE
    assert "within the goal" in chosen.reasons[1]


# scatter carried through


def left_on(tmp_path):
    """Three planes, the trial masses of the last two runs left on."""
    rng = np.random.default_rng(2)
    h, v0 = complex_normal(rng, 4, 3), complex_normal(rng, 4)
    runs = runs_of(tmp_path / "r.toml", h, v0, trial=0.5, noise=0.02, rng=rng, placed=0.02)
    return fit(runs)[0]


@pytest.mark.parametrize("from_last", [False, True])
def test_what_is_known_of_the_planes_is_known_of_their_mixes(tmp_path, from_last):
    fitted, rng = left_on(tmp_path), np.random.default_rng(3)
    columns, amounts = complex_normal(rng, 3, 2), complex_normal(rng, 2)
    small = couple.restricted(fitted, columns, from_last=from_last)
    on = fitted.on if from_last else np.zeros(3)
    base = fitted.state if from_last else fitted.initial
    np.testing.assert_allclose(small.initial + small.influence @ amounts, base + fitted.influence @ columns @ amounts)
    whole = spread([(fitted, state_of(fitted, 1.0, on + columns @ amounts))], fitted.state_shared if from_last else 0.0)
    np.testing.assert_allclose(spread([(small, state_of(small, 1.0, amounts))]), whole, rtol=1e-9, atol=1e-15)
    assert small.covariance.shape == (4 * 3 * 2, 4 * 3 * 2)


def test_all_planes_is_the_least_expected_residual(tmp_path):
    rng = np.random.default_rng(4)
    runs = runs_of(tmp_path / "r.toml", complex_normal(rng, 5, 3), complex_normal(rng, 5))
    names, radii = [p.name for p in runs.planes], np.full(3, 200.0)
    listed = couple.ranked(fit(runs), couple.bases(names, radii), runs.placement, radii)
    assert [a.rms for a in listed] == sorted(a.rms for a in listed)
    whole = next(a for a in listed if a.name == couple.ALL)
    np.testing.assert_allclose(whole.masses, complex_masses(correction.solve(runs, "expected")), rtol=1e-6)
    assert not any(a.name in (couple.STATIC, couple.COUPLE) for a in listed)  # three planes without places


def test_what_is_expected_is_what_comes_out(tmp_path):
    """150 jobs, 3 % scatter: mean square of the true rests over that predicted, each way to correct."""
    rng, ratio = np.random.default_rng(5), {}
    radii = np.array([200.0, 200.0])
    for _ in range(150):
        h, v0 = complex_normal(rng, 4, 2), complex_normal(rng, 4)
        runs = runs_of(tmp_path / "r.toml", h, v0, 0.5, 0.03, rng, 0.0, "3 % 1.7189 deg")
        listed = couple.ranked(fit(runs), couple.bases(("a", "b"), radii, (0.0, 300.0), 100.0), (0.0, 0.0), radii)
        for a in listed:
            true = np.mean(np.abs(v0 + h @ a.masses) ** 2)
            ratio.setdefault(a.name, []).append((true, a.rms**2))
    for name, pairs in ratio.items():
        true, predicted = np.mean(pairs, axis=0)
        assert 0.75 <= true / predicted <= 1.33, name


def test_caps_hold_in_every_alternative(tmp_path):
    rng = np.random.default_rng(6)
    h, v0, radii = complex_normal(rng, 4, 2), complex_normal(rng, 4), np.array([200.0, 100.0])
    fits = fit(runs_of(tmp_path / "r.toml", h, v0))
    choices = couple.bases(("a", "b"), radii, (0.0, 300.0), 100.0)
    free = couple.ranked(fits, choices, (0.01, 0.03), radii)
    caps = [0.1, 0.2]
    held = couple.ranked(fits, choices, (0.01, 0.03), radii, caps=caps)
    assert len(held) >= len(free) - 1
    for a in held:
        assert np.all(np.abs(a.masses) <= np.array(caps) * (1 + 1e-6))
        assert a.rms >= next(b.rms for b in free if b.name == a.name) * (1 - 1e-3)
    assert any(a.at_cap and "as much as the caps allow" in a.sentence for a in held)
    both = couple.Basis("both parts", couple.shares(2).astype(complex))
    with pytest.raises(couple.CoupleError, match="both parts: its unknowns share a plane that has a cap"):
        couple.ranked(fits, [both], (0.01, 0.03), radii, caps=caps)
    assert couple.ranked(fits, [both], (0.01, 0.03), radii)[0].unknowns == 2


def test_the_couple_in_turn_leaves_the_static_part(tmp_path):
    rng = np.random.default_rng(8)
    h, v0, radii = complex_normal(rng, 4, 2), complex_normal(rng, 4), np.array([200.0, 100.0])
    choices = couple.bases(("a", "b"), radii, (0.0, 300.0), 100.0)
    found = {a.name: a for a in couple.ranked(fit(runs_of(tmp_path / "r.toml", h, v0)), choices, (0.0, 0.0), radii)}
    alone = couple.parts_of(found[couple.STATIC].masses, None, radii, (0.0, 300.0), 100.0)
    turn = couple.parts_of(found[couple.IN_TURN].masses, None, radii, (0.0, 300.0), 100.0)
    assert turn.static == pytest.approx(alone.static)
    assert abs(turn.couple) > 1.0
    assert found[couple.ALL].rms <= found[couple.IN_TURN].rms <= found[couple.STATIC].rms


def test_from_the_last_run_the_rest_of_it_is_corrected(tmp_path):
    fitted = left_on(tmp_path)
    radii = np.ones(3)
    choices = couple.bases(("a", "b", "c"), radii, (0.0, 100.0, 300.0))
    added = couple.ranked((fitted,), choices, (0.0, 0.0), radii, from_last=True, shrunk=0.0)
    whole = next(a for a in added if a.name == couple.ALL)
    reference = np.linalg.lstsq(fitted.influence, -fitted.state, rcond=None)[0]
    np.testing.assert_allclose(whole.masses, reference, rtol=1e-6)


# what the runs know


def test_planes_that_do_nearly_the_same_tell_the_static_part_only(tmp_path):
    base = np.array([1.0, 0.6j, 0.4 + 0.2j])
    h = np.column_stack([base * 1.002, base])
    fits = fit(runs_of(tmp_path / "r.toml", h, np.array([1.0, 1.0j, -0.5]), trial=0.5, stated="2 % 2 deg"))
    known, unknown = couple.directions(fits, np.array([0.5, 0.5]), np.array([200.0, 200.0]))
    assert (known.like, known.determined) == ("static", True)
    assert (unknown.like, unknown.determined) == ("couple", False)
    np.testing.assert_allclose(np.abs(known.mix), 0.5**0.5, rtol=0.05)
    assert "the runs tell a static part" in known.sentence
    assert "the runs do not tell a couple part" in unknown.sentence
    radii = np.array([200.0, 200.0])
    listed = {a.name: a for a in couple.ranked(fits, couple.bases(("a", "b"), radii), (0.01, 0.03), radii)}
    assert listed[couple.STATIC].determined
    assert not listed[couple.COUPLE].determined
    assert not listed[couple.ALL].determined
    assert "not determined" in listed[couple.ALL].sentence
    assert "split evenly" in listed[couple.STATIC].sentence


def test_fewer_points_than_planes_cannot_tell_the_second_mix(tmp_path):
    fits = fit(runs_of(tmp_path / "r.toml", np.array([[1.0, 0.4j]]), np.array([1.0])))
    first, second = couple.directions(fits, np.ones(2), np.ones(2))
    assert first.determined
    assert not second.determined
    assert "fewer points than planes" in second.sentence


def test_strength_is_that_of_one_trial_over_its_scatter(tmp_path):
    """One plane, one point: |effect| over the standard deviation of the difference of two runs, by hand."""
    v0, h, trial = np.array([1.0 + 0j]), np.array([[0.8j]]), 0.5
    (only,) = couple.directions(fit(runs_of(tmp_path / "r.toml", h, v0, trial=trial)), np.array([trial]), np.ones(1))
    scatter = np.diag([0.02, np.deg2rad(2.0)]) ** 2
    after = v0[0] + h[0, 0] * trial
    along = np.array([after.real, after.imag]) / abs(after)
    axes = np.column_stack([along, [-along[1], along[0]]])
    covariance = scatter + abs(after) ** 2 * axes @ scatter @ axes.T
    # placing: 1 % along and 2° across of the trial's effect
    turned = np.array([[0.0, -1.0], [1.0, 0.0]])
    covariance += (0.8 * trial) ** 2 * turned @ np.diag([0.01, np.deg2rad(2.0)]) ** 2 @ turned.T
    effect = np.array([0.0, 0.8 * trial])
    assert only.strength == pytest.approx(np.sqrt(effect @ np.linalg.solve(covariance, effect)), rel=1e-3)
    assert only.needed == pytest.approx(5.991465**0.5, rel=1e-6)  # chi-square of two, 5 %: any table
    assert only.like is None


def test_a_quiet_rotor_and_runs_without_scatter_are_ranked_too(tmp_path):
    """Nothing to remove, and nothing that scatters: no division by either."""
    rng, radii = np.random.default_rng(1), np.ones(2)
    h, choices = complex_normal(rng, 3, 2), couple.bases(("a", "b"), radii, (0.0, 300.0), 100.0)
    still = fit(runs_of(tmp_path / "r.toml", h, np.zeros(3, dtype=complex)))
    listed = couple.ranked(still, choices, (0.01, 0.03), radii)
    assert all(np.allclose(a.masses, 0.0, atol=1e-9) for a in listed)
    assert couple.proposal(listed) is not None
    sharp = fit(runs_of(tmp_path / "s.toml", h, complex_normal(rng, 3), stated="0 % 0 deg"))
    assert all(d.determined for d in couple.directions(sharp, radii, radii))
    assert all(a.determined for a in couple.ranked(sharp, choices, (0.0, 0.0), radii))


# what is proposed


def alternative(name, unknowns, masses, expected, determined=True):
    expected = np.array(expected, dtype=float)
    masses = np.array(masses, dtype=complex)
    rms = float(np.sqrt(np.mean(expected**2)))
    return couple.Alternative(name, unknowns, masses, float(np.abs(masses).sum()), expected, rms, determined, (), name)


ONE = alternative('plane "in" alone', 1, [5.0, 0.0], [1.0, 3.0])
STATIC = alternative(couple.STATIC, 1, [3.0, 3.0], [1.2, 3.1])
PAIR = alternative(couple.COUPLE, 1, [4.0, -4.0], [4.0, 4.0])
WHOLE = alternative(couple.ALL, 2, [20.0, -15.0], [0.5, 0.5])
IN_TURN = alternative(couple.IN_TURN, 2, [7.0, -1.0], [0.6, 0.6])


def test_between_bearings_fewer_unknowns_win_when_nearly_as_good():
    close = alternative(couple.STATIC, 1, [3.0, 3.0], [0.52, 0.52])
    chosen = couple.proposal([WHOLE, close, ONE])
    assert chosen.alternative is close
    assert "all planes would leave little less, with 5.8 times the mass" in chosen.reasons[1]
    assert couple.proposal([WHOLE, STATIC, ONE]).alternative is WHOLE
    assert couple.proposal([WHOLE, STATIC, ONE], goal=3.2).alternative is ONE


def test_nothing_is_proposed_of_what_is_not_determined():
    unsure = dataclasses.replace(WHOLE, determined=False)
    assert couple.proposal([unsure, STATIC]).alternative is STATIC
    assert couple.proposal([unsure]) is None


@pytest.mark.parametrize(
    ("goal", "far", "name", "reason"),
    [
        (None, (), ONE.name, "a couple only if axial or far-bearing vibration stays above the goal"),
        (4.0, (1,), ONE.name, "expected to stay at 3, within the goal of 4"),
        (2.0, (0,), ONE.name, "within the goal"),
        (2.0, (1,), couple.IN_TURN, "opposed pair that leaves the static part unchanged"),
    ],
)
def test_overhung_takes_one_plane_first_and_a_couple_only_for_the_far_end(goal, far, name, reason):
    chosen = couple.proposal([WHOLE, IN_TURN, ONE, STATIC, PAIR], kind="overhung", goal=goal, far=far)
    assert chosen.alternative.name == name
    assert reason in chosen.reasons[1]


def test_overhung_with_large_opposed_masses_takes_the_static_part_alone():
    parts = couple.parts_of(WHOLE.masses, None, np.ones(2))
    chosen = couple.proposal([WHOLE, IN_TURN, ONE, STATIC], kind="overhung", goal=2.0, far=(1,), parts=parts)
    assert chosen.alternative is STATIC
    assert "large opposed masses, 5.8 times as much" in chosen.reasons[1]


def test_overhung_without_what_it_needs_says_so():
    unsure = [dataclasses.replace(a, determined=False) for a in (WHOLE, IN_TURN)]
    chosen = couple.proposal([*unsure, ONE], kind="overhung", goal=2.0, far=(1,))
    assert chosen.alternative is ONE
    assert "asks for is not determined" in chosen.reasons[1]
    only = couple.proposal([WHOLE], kind="overhung", goal=2.0, far=(1,))
    assert "neither one plane nor the static part alone is determined" in only.reasons[1]


# refusals


@pytest.mark.parametrize(
    ("arguments", "match"),
    [
        ((1,), "1 planes; two or more are needed"),
        ((2, (0.0,)), "give a finite z, or none, for each of 2 planes"),
        ((2, (0.0, np.inf)), "give a finite z"),
        ((3,), "more than two planes need their places"),
        ((2, (100.0, 100.0)), "at one place and carry no couple"),
        ((2, (0.0, 100.0), np.nan), "centre of mass nan mm must be finite"),
    ],
)
def test_planes_without_parts_are_refused(arguments, match):
    with pytest.raises(couple.CoupleError, match=match):
        couple.shares(*arguments)


def test_planes_at_one_place_are_offered_each_alone_and_all(tmp_path):
    names = [b.name for b in couple.bases(("a", "b"), np.ones(2), (100.0, 100.0))]
    assert names == ['plane "a" alone', 'plane "b" alone', couple.ALL]
    assert [b.name for b in couple.bases(("only",), np.ones(1))] == ['plane "only" alone']
    noted = couple.bases(("a", "b"), np.ones(2), (0.0, 100.0))
    assert "the centre of mass is not given" in next(b.note for b in noted if b.name == couple.STATIC)
