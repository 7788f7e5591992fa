"""Do the runs fit: one error for a piece that stays on, wrong entries named, drift, repeatability learnt from repeats."""

import math
from dataclasses import replace

import numpy as np
import pytest
import simulated_jobs as jobs
import tomli_w
from stillshaft.solver import consistency, correction
from stillshaft.solver.influence import Freed, fit_all, placements
from stillshaft.solver.runs import RunsError
from stillshaft.solver.runs_file import load_runs


def whole_job(seed, planes, points):
    """Initial, trials, correction run."""
    job = jobs.job(seed, planes=planes, points=points, noise=0.01)
    jobs.trials(job)
    w = correction.masses_for(job.file(), fit_all(job.file()), correction.Wanted())
    for p in range(planes):
        job.put_on(p, w[p])
    job.run()
    return job


def test_sound_runs_fit_and_say_nothing():
    judged = consistency.judge(*both(whole_job(1, 2, 3).file()))
    assert judged.p_value > 0.01
    assert not judged.doubted
    assert judged.suspicions == ()
    assert judged.sentences == ()


def both(runs):
    return runs, fit_all(runs)


def test_as_many_runs_as_unknowns_are_not_checkable():
    job = jobs.job(2, planes=2, points=3)
    jobs.trials(job)
    judged = consistency.judge(*both(job.file()))
    assert judged.p_value is None
    assert judged.sentences == ()
    assert consistency.NOT_CHECKABLE in correction.solve(job.file()).warnings


@pytest.mark.parametrize(("factor", "times", "turned"), [(2.0, "0.5", "0"), (np.exp(0.5j * np.pi), "1.0", "-90")])
def test_the_run_with_a_wrong_entry_is_named_with_its_factor(factor, times, turned):
    job = whole_job(3, 2, 4)
    run = job.runs[2]
    job.runs[2] = replace(
        run, masses=run.masses * factor, pieces=tuple(replace(p, mass=p.mass * factor) for p in run.pieces)
    )
    judged = consistency.judge(*both(job.file()))
    assert judged.doubted
    first = judged.suspicions[0]
    assert (first.kind, first.run) == ("mass", "run 2")
    assert abs(first.factor) == pytest.approx(float(times), rel=0.2)
    assert math.degrees(np.angle(first.factor)) == pytest.approx(float(turned), abs=12.0)
    assert 'the mass put on in run "run 2" was' in judged.sentences[1]


def test_angles_counted_the_other_way_round_are_named():
    job = whole_job(4, 2, 4)
    job.runs = [
        replace(r, masses=r.masses.conj(), pieces=tuple(replace(p, mass=p.mass.conjugate()) for p in r.pieces))
        for r in job.runs
    ]
    judged = consistency.judge(*both(job.file()))
    assert judged.doubted
    assert "direction" in [s.kind for s in judged.suspicions]


def test_a_changed_initial_state_is_named():
    job = whole_job(5, 1, 4)
    job.initial = job.initial * 1.3 * np.exp(0.6j)
    for _ in range(2):
        job.run()
    judged = consistency.judge(*both(job.file()))
    assert judged.doubted
    assert ("change", "run 3") in [(s.kind, s.run) for s in judged.suspicions]


def test_drift_between_initial_runs():
    job = jobs.job(6, planes=1, points=3, noise=0.01)
    job.run()
    job.initial = job.initial * 1.2
    job.run()
    drift = consistency.drifts(job.file())[0]
    assert drift.moved
    assert drift.percent == pytest.approx(20.0, abs=4.0)
    still = jobs.job(6, planes=1, points=3, noise=0.01)
    still.run()
    still.run()
    assert not consistency.drifts(still.file())[0].moved


def test_a_piece_that_stays_on_is_one_piece():
    job = jobs.job(7, planes=1, points=2)
    job.run()
    job.put_on(0, 2.0)
    job.run()
    job.run()
    job.take_off()
    job.run()
    job.put_on(0, 2.0)
    job.run()
    found = placements(job.file())
    assert [p.runs for p in found] == [(1, 2), (4,)]


def test_a_setup_is_one_placement_at_several_speeds():
    job = jobs.job(8, planes=1, points=2)
    job.run()
    job.put_on(0, 2.0)
    job.run()
    runs = job.file()
    twice = tuple(
        replace(run, speed_rpm=speed, setup=number, name=f"{run.name} at {speed}")
        for speed in (1500.0, 900.0)
        for number, run in enumerate(runs.runs)
    )
    assert [p.runs for p in placements(replace(runs, runs=twice))] == [(1, 3)]
    model = fit_all(replace(runs, runs=twice))
    together = model.fits[0].shared @ model.fits[1].shared.T
    assert np.abs(together).max() > 0.0


def test_a_freed_factor_is_found():
    job = whole_job(9, 1, 4)
    model = fit_all(job.file(), Freed(pieces=(0,)))
    assert model.degrees_of_freedom == fit_all(job.file()).degrees_of_freedom - 2
    assert abs(model.factor - 1.0) < 0.2


def toml(tmp_path, spread, repeats, **more):
    rng = np.random.default_rng(10)
    v = np.array([5.0 + 2.0j, 1.0 - 4.0j, 3.0j])
    rows = []
    for n in range(repeats):
        z = v * (1 + spread * (rng.standard_normal(3) + 1j * rng.standard_normal(3)))
        rows.append((f"initial {n}", z, 0))
    rows.append(("trial", v * 1.5, 4.0))
    table = {
        "format": 1,
        "plane": [{"name": "disc", "radius": "200 mm"}],
        "run": [
            {
                "name": name, "speed_rpm": 1500.0,
                "vectors": {
                    p: {"amplitude": abs(x), "phase": math.degrees(np.angle(x)) % 360} for p, x in zip("ABC", z, strict=True)
                },
                "masses": {"disc": {"mass": m, "angle": 0.0}} if m else {},
            }
            for name, z, m in rows
        ],
    } | more  # fmt: skip
    path = tmp_path / "r.toml"
    path.write_text(tomli_w.dumps(table))
    return load_runs(path)


def test_repeats_replace_the_assumed_repeatability(tmp_path):
    learnt, said = consistency.with_measured_repeatability(toml(tmp_path, 0.001, 6))
    assert learnt.repeatability[0] < 0.012
    assert learnt.repeatability[0] >= 0.005
    assert "taken from 6 runs without masses" in said
    assert not any(a.startswith("repeatability") for a in learnt.assumed)
    same, nothing = consistency.with_measured_repeatability(toml(tmp_path, 0.001, 1))
    assert nothing is None
    assert same.repeatability[0] == pytest.approx(0.02)
    assert learnt.runs[0].covariance[0, 0] < same.runs[0].covariance[0, 0]


def test_what_a_file_assumes_scatters_as_if_it_were_stated(tmp_path):
    stated = toml(tmp_path, 0.001, 1, repeatability="5 % 4 deg")
    assumed = toml(tmp_path, 0.001, 1, assumed_repeatability="5 % 4 deg: belt drive")
    assert (stated.repeatability_assumed, assumed.repeatability_assumed) == (False, True)
    assert assumed.repeatability == stated.repeatability == (0.05, math.radians(4.0))
    for run, other in zip(assumed.runs, stated.runs, strict=True):
        np.testing.assert_array_equal(run.covariance, other.covariance)
    along = assumed.runs[0].covariance[4:, 4:]  # of a vector that points along the imaginary axis
    size = abs(assumed.runs[0].vectors[2])
    np.testing.assert_allclose(np.sqrt(np.linalg.eigvalsh(along)), [0.05 * size, math.radians(4.0) * size], rtol=1e-9)


def test_what_is_assumed_is_said_with_its_reason(tmp_path):
    default = toml(tmp_path, 0.001, 1)
    assert default.assumed[0] == "repeatability 2 % 2 deg is assumed: the file does not say"
    bare = toml(tmp_path, 0.001, 1, assumed_repeatability="2.5 % 3 deg")
    assert bare.assumed[0] == "repeatability 2.5 % and 3° is assumed; repeat the initial run to learn it"
    belt = toml(tmp_path, 0.001, 1, assumed_repeatability="5 % 5 deg: belt drive")
    said = "repeatability 5 % and 5° is assumed: belt drive; repeat the initial run to learn it"
    assert said in correction.solve(belt).warnings
    assert toml(tmp_path, 0.001, 1, repeatability="5 % 5 deg").assumed == default.assumed[1:]


def test_repeats_replace_what_a_file_assumes(tmp_path):
    assumed = toml(tmp_path, 0.001, 6, assumed_repeatability="10 % 10 deg: a resonance near running speed")
    learnt, said = consistency.with_measured_repeatability(assumed)
    # what was assumed counts as 4 of the 4 + 5 × 3 that there are then
    assert learnt.repeatability == (pytest.approx(0.1 * math.sqrt(4 / 19), rel=0.01), pytest.approx(0.08, rel=0.01))
    assert "taken from 6 runs without masses" in said
    assert not any(a.startswith("repeatability") for a in learnt.assumed)
    warnings = correction.solve(assumed).warnings
    assert said in warnings
    assert not any("is assumed: a resonance" in text for text in warnings)


def test_a_runout_has_one_error_in_all_runs():
    """It cancels from the influence coefficient and stays in the initial vector."""
    job = jobs.job(11, planes=1, points=2)
    jobs.trials(job)
    runs = job.file()
    load = 0.5 * np.eye(4)
    same = replace(
        runs, runs=tuple(replace(r, runout=load, covariance=r.covariance + load @ load.T) for r in runs.runs)
    )
    plain, with_runout = fit_all(runs).fits[0], fit_all(same).fits[0]
    at_h, at_v = [2, 3, 6, 7], [0, 1, 4, 5]
    np.testing.assert_allclose(
        with_runout.covariance[np.ix_(at_h, at_h)], plain.covariance[np.ix_(at_h, at_h)], rtol=1e-6, atol=1e-12
    )
    wider = np.diag(with_runout.covariance - plain.covariance)[at_v]
    np.testing.assert_allclose(wider, 0.25, rtol=1e-6)


def test_a_cleaned_rotor_has_a_new_initial_state_and_keeps_its_coefficients():
    job = whole_job(12, 2, 4)
    before = job.influence.copy()
    job.take_off()
    job.initial = 0.4 * job.initial * np.exp(1.0j)
    job.run()
    plain = consistency.judge(*both(job.file()))
    assert plain.doubted
    job.runs[-1] = replace(job.runs[-1], initial_state=2)
    runs = job.file()
    judged = consistency.judge(*both(runs))
    assert not judged.doubted
    assert judged.drifts == ()
    fitted = fit_all(runs).fits[0]
    np.testing.assert_allclose(fitted.initial, job.initial, atol=0.05 * np.abs(job.initial).max())
    w = correction.masses_for(runs, fit_all(runs), correction.Wanted())
    left = job.initial + before @ w
    best = job.initial - before @ np.linalg.lstsq(before, job.initial, rcond=None)[0]
    assert jobs.rms(left) < jobs.rms(best) + 0.1 * jobs.rms(job.initial)


def test_a_new_state_without_a_run_in_it_cannot_be_told(tmp_path):
    job = jobs.job(13, planes=1, points=2)
    jobs.trials(job)
    job.put_on(0, 3.0)
    job.run()
    job.runs[-2] = replace(job.runs[-2], initial_state=2)
    job.runs[-1] = replace(job.runs[-1], initial_state=3)
    with pytest.raises(RunsError, match="do not tell the planes apart"):
        fit_all(job.file())
