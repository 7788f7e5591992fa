"""Coefficients kept for the next time: file, units, test by a run, refusals."""

import errno
import math
import os
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
import simulated_jobs as jobs
from stillshaft.solver import correction, stored
from stillshaft.solver.influence import fit_all
from stillshaft.solver.runs import Chain
from stillshaft.solver.runs_file import load_runs

RAO = Path(__file__).parents[2] / "fixtures" / "rao_two_plane.toml"


def kept(tmp_path, runs=None, machine="mill"):
    runs = runs or load_runs(RAO)
    path = tmp_path / "coefficients.toml"
    stored.save(path, stored.of_model(runs, fit_all(runs), machine, "2026-01-02"))
    return path


def test_what_is_written_is_read(tmp_path):
    runs = load_runs(RAO)
    path = kept(tmp_path)
    (found,) = stored.load(path)
    fitted = fit_all(runs).fits[0]
    np.testing.assert_allclose(found.influence, fitted.influence, rtol=1e-12)
    at = [i for i in range(12) if i % 6 > 1]
    np.testing.assert_allclose(found.covariance, fitted.covariance[np.ix_(at, at)], rtol=1e-9, atol=1e-15)
    kept(tmp_path)
    assert len(stored.load(path)) == 1  # the same machine, speed and chain: replaced
    kept(tmp_path, replace(runs, chain=Chain("abc", "card", 48000.0)))
    kept(tmp_path, machine="other")
    assert len(stored.load(path)) == 3


def test_one_run_is_enough_with_stored_coefficients(tmp_path):
    """The textbook's initial run alone gives its correction, with half of it to be put on first."""
    runs = load_runs(RAO)
    priors, remarks = stored.priors_for(stored.load(kept(tmp_path)), "mill", runs)
    alone = replace(runs, runs=runs.runs[:1])
    used, verdict = stored.judged(alone, priors)
    assert (verdict.status, verdict.share, remarks) == ("not tested yet", 0.5, ())
    solution = correction.solve(alone, priors=used)
    assert not any("not checkable" in text for text in solution.warnings)  # more runs are not what is lacking
    left, right = solution.corrections
    assert (left.mass, right.mass) == (pytest.approx(10.0561, abs=5e-3), pytest.approx(5.8774, abs=5e-3))
    assert left.determined


def test_units_and_radii_are_converted(tmp_path):
    runs = load_runs(RAO)
    (prior,), _ = stored.priors_for(stored.load(kept(tmp_path)), "mill", runs)
    moved = replace(
        runs, vibration_unit="in/s peak", mass_unit="oz", kg_per_mass_unit=0.028349523125,
        planes=tuple(replace(p, radius_mm=150.0) for p in runs.planes),
    )  # fmt: skip
    (other,), _ = stored.priors_for(stored.load(kept(tmp_path)), "mill", moved)
    factor = math.sqrt(2.0) / 25.4 * 28.349523125 * 0.5
    np.testing.assert_allclose(other.influence, prior.influence * factor, rtol=1e-9)
    np.testing.assert_allclose(other.covariance, prior.covariance * factor**2, rtol=1e-9)


def run_again(change, seed=1):
    """A job on a machine whose coefficients are known to 2 %, after its coefficients changed."""
    job = jobs.job(seed, planes=2, points=4, noise=0.01)
    h = job.influence.copy()
    sizes = np.repeat((0.02 * np.abs(h)).ravel() ** 2, 2)
    prior = stored.Prior(1500.0, h, np.diag(sizes))
    job.influence = h * change
    job.run()
    for p, w in enumerate(-np.linalg.pinv(h) @ job.initial):
        job.put_on(p, 0.5 * w)
    job.run()
    return job.file(), prior


def test_coefficients_that_hold_are_used():
    runs, prior = run_again(1.0)
    used, verdict = stored.judged(runs, [prior])
    assert (verdict.status, verdict.share) == ("holds", 1.0)
    assert used[0] is prior
    _, doubtful = stored.judged(runs, [prior], doubtful=True)
    assert doubtful.share == 0.5


def test_a_moved_mark_is_recognised():
    runs, prior = run_again(np.exp(1j * np.deg2rad(40.0)))
    used, verdict = stored.judged(runs, [prior])
    assert verdict.status == "turned"
    assert math.degrees(np.angle(verdict.factor)) == pytest.approx(40.0, abs=3.0)
    np.testing.assert_allclose(used[0].influence, prior.influence * verdict.factor)
    assert "pulse mark, sensor place, gain or lag changed" in verdict.sentence


def test_coefficients_that_no_longer_hold_are_left_out():
    rng = np.random.default_rng(2)
    runs, prior = run_again(1.0 + 0.6 * (rng.standard_normal((4, 2)) + 1j * rng.standard_normal((4, 2))))
    used, verdict = stored.judged(runs, [prior])
    assert (verdict.status, used) == ("does not hold", ())


def broken(path, old, new):
    path.write_text(path.read_text().replace(old, new, 1))


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("real = [", "real = [[1.0], ", r"coefficients 1\.real: must be 2 by 2"),
        ('machine = "mill"', "machine = 3", r"coefficients 1\.machine: must be a text"),
        ('machine = "mill"', 'machine = " "', r"coefficients 1\.machine: says nothing; name the machine"),
        ("speed_rpm = 1480.0", "speed_rpm = -1.0", r"speed_rpm: -1.0: must be above 0"),
        ("real = [\n    [\n        ", "real = [\n    [\n        nan, #", "must be|needs points"),
        ("imaginary = [\n    [\n        ", "imaginary = [\n    [\n        inf, #", "must be|needs points"),
        ("format = 1", "format = 2", "format"),
    ],
)
def test_broken_files_are_refused(tmp_path, old, new, message):
    path = kept(tmp_path)
    broken(path, old, new)
    with pytest.raises(stored.StoredError, match=message):
        stored.load(path)


def test_what_is_not_stored_is_said(tmp_path):
    runs, known = load_runs(RAO), stored.load(kept(tmp_path))
    with pytest.raises(stored.StoredError, match='machine "pump": nothing is stored for it; stored are mill'):
        stored.priors_for(known, "pump", runs)
    with pytest.raises(stored.StoredError, match="stored at 1480 r/min, none of them within the speeds"):
        stored.priors_for(known, "mill", replace(runs, runs=tuple(replace(r, speed_rpm=900.0) for r in runs.runs)))
    with pytest.raises(stored.StoredError, match="stored are points A, B and planes left, right"):
        stored.priors_for(known, "mill", replace(runs, points=("A", "C")))
    with pytest.raises(stored.StoredError, match="use one quantity"):
        stored.priors_for(known, "mill", replace(runs, vibration_unit="um p-p"))
    with pytest.raises(stored.StoredError, match="without a phase"):
        stored.of_model(replace(runs, amplitudes_only=True), fit_all(runs), "mill", "2026-01-02")
    _, remarks = stored.priors_for(known, "mill", replace(runs, chain=Chain("abc", "", 0.0)))
    assert "another hook-up" in remarks[0]


def test_nothing_is_half_written(tmp_path, monkeypatch):
    path = kept(tmp_path)
    before = path.read_bytes()

    def full(*names):
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(os, "replace", full)
    with pytest.raises(stored.StoredError, match="cannot be written: No space left on device"):
        kept(tmp_path, machine="third")
    assert path.read_bytes() == before
    assert [p.name for p in tmp_path.iterdir()] == ["coefficients.toml"]


def test_a_folder_in_the_way_is_said(tmp_path):
    (tmp_path / "coefficients.toml").mkdir()
    with pytest.raises(stored.StoredError, match="no ordinary file"):
        kept(tmp_path)
    assert [p.name for p in tmp_path.iterdir()] == ["coefficients.toml"]
