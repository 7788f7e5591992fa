"""Regions of masses: Fieller's theorem, no end where the trial said nothing, laws."""

import math
from dataclasses import replace

import numpy as np
import pytest
import simulated_jobs as jobs
from stillshaft.solver import correction
from stillshaft.solver.influence import fit_all
from stillshaft.solver.region import Region


def solved(job):
    jobs.trials(job)
    runs = job.file()
    fits = fit_all(runs).fits
    centre = -np.linalg.pinv(fits[0].influence) @ fits[0].initial
    return fits, centre, correction.delta_covariance(fits, centre)


def test_one_plane_and_point_is_fieller():
    """E. C. Fieller, J. R. Stat. Soc. B 16 (1954): r = v + h·w against its own variance, from memory; with plain numpy."""
    fits, centre, covariance = solved(jobs.job(1, planes=1, points=2, noise=0.02, effect=0.2))
    one = replace(fits[0], initial=fits[0].initial[:1], influence=fits[0].influence[:1], own=fits[0].own[:4, :4],
                  shared=fits[0].shared[:4], state=fits[0].state[:1])  # fmt: skip
    region = Region([one])
    for w in (0.0, 1.3 * centre[0], centre[0] * np.exp(0.4j)):
        r = one.initial[0] + one.influence[0, 0] * w
        z = np.array([[1, 0, np.real(w), -np.imag(w)], [0, 1, np.imag(w), np.real(w)]])
        s = z @ one.covariance @ z.T
        x = np.array([r.real, r.imag])
        assert region.statistic(np.array([[w]]))[0] == pytest.approx(x @ np.linalg.solve(s, x), rel=1e-6)
    assert covariance.shape == (2, 2)


def test_as_many_points_as_planes_is_hotelling():
    fits, centre, _ = solved(jobs.job(2, planes=2, points=2))
    fitted = fits[0]
    w = centre * np.array([1.1, np.exp(0.2j)])
    r = fitted.initial + fitted.influence @ w
    row = np.concatenate([[1.0], w])
    real = np.empty((2, 6))
    real[0, 0::2], real[0, 1::2], real[1, 0::2], real[1, 1::2] = row.real, -row.imag, row.imag, row.real
    state = np.kron(np.eye(2), real)
    s = state @ fitted.covariance @ state.T
    x = np.column_stack([r.real, r.imag]).ravel()
    assert Region(fits).statistic(w[None])[0] == pytest.approx(x @ np.linalg.solve(s, x), rel=1e-6)


@pytest.mark.parametrize(("planes", "points"), [(1, 1), (2, 2), (2, 4)])
def test_a_strong_trial_gives_the_interval_of_the_delta_method(planes, points):
    job = jobs.job(4, planes=planes, points=points, noise=0.002, effect=1.0)
    job.floor = 1e-6
    fits, centre, covariance = solved(job)
    for p in range(planes):
        extent = Region(fits).extent(p, centre, covariance)
        along = centre[p] / abs(centre[p])
        axis = np.array([along.real, along.imag])
        sd = math.sqrt(axis @ covariance[2 * p : 2 * p + 2, 2 * p : 2 * p + 2] @ axis)
        assert extent.bounded
        assert extent.mass[1] - abs(centre[p]) == pytest.approx(1.96 * sd, rel=0.12)
        assert extent.angle_deg[0] < 0.0 < extent.angle_deg[1]
        assert np.all(np.abs(extent.outline - centre[p]) > 0.0)


def test_a_trial_that_said_nothing_has_no_end():
    fits, centre, covariance = solved(jobs.job(5, planes=1, points=2, noise=0.03, effect=0.003))
    extent = Region(fits).extent(0, centre, covariance)
    assert (extent.bounded, extent.mass, extent.angle_deg, extent.outline.size) == (False, None, None, 0)


def test_a_region_that_holds_no_mass_at_all_has_no_angle():
    """A rotor that is nearly balanced: the mass may be 0, and the angle anything."""
    job = jobs.job(6, planes=1, points=1, noise=0.02, effect=None)
    job.initial = 1e-4 * job.initial / np.abs(job.initial).max()
    job.floor, job.effects = 0.01, [1e4]
    fits, centre, covariance = solved(job)
    extent = Region(fits).extent(0, centre, covariance)
    assert extent.bounded
    assert extent.mass[0] == 0.0
    assert extent.angle_deg is None


def test_turning_all_vectors_leaves_the_region():
    job = jobs.job(7, planes=2, points=4)
    fits, centre, _ = solved(job)
    turn = np.exp(0.7j)
    runs = job.file()
    big = np.kron(np.eye(4), [[turn.real, -turn.imag], [turn.imag, turn.real]])
    turned = replace(runs, runs=tuple(
        replace(run, vectors=turn * run.vectors, covariance=big @ run.covariance @ big.T) for run in runs.runs
    ))  # fmt: skip
    w = 1.2 * centre[None]
    assert Region(fit_all(turned).fits).statistic(w)[0] == pytest.approx(Region(fits).statistic(w)[0], rel=1e-3)


def test_many_points_are_too_large():
    fits, _, _ = solved(jobs.job(8, planes=1, points=61))
    assert Region(fits).too_large
    answer = correction.solve(jobs_file(61))
    assert answer.corrections[0].determined
    assert answer.corrections[0].mass_ci95 > 0.0


def jobs_file(points):
    job = jobs.job(8, planes=1, points=points)
    jobs.trials(job)
    return job.file()


def test_regions_cover():
    """200 jobs with weak trials, 2 planes and 3 points: 95 % within binomial bounds of 1 in 1000."""
    inside = 0
    for seed in range(200):
        job = jobs.job(seed, planes=2, points=3, noise=0.03, effect=0.1)
        fits, _, _ = solved(job)
        truth = -np.linalg.pinv(job.influence) @ job.initial
        inside += Region(fits).statistic(truth[None])[0] <= 9.487729  # chi-square of 4 at 95 %
    assert 178 <= inside <= 199
