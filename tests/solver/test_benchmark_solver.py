"""The solver on thousands of simulated jobs, each figure beside its target and the handbook way."""

from dataclasses import replace

import numpy as np
import pytest
import simulated_jobs as jobs
from figures.record import cpu_beside, quantile_error
from scipy.stats import chi2
from stillshaft.solver import consistency, correction, stored
from stillshaft.solver.correction import Wanted
from stillshaft.solver.influence import fit_all
from stillshaft.solver.region import Region

pytestmark = [pytest.mark.benchmark, pytest.mark.timeout(3000)]


def handbook(job):
    """Influence coefficients from the initial run and one trial each, exactly."""
    v = np.array([run.vectors for run in job.runs])
    planes = job.influence.shape[1]
    return v, np.column_stack([(v[p + 1] - v[0]) / job.runs[p + 1].masses[p] for p in range(planes)])


def corrected(seed, way):
    """Excess over what the true coefficients allow, in percent of the initial, after correction and trim; left worse."""
    job = jobs.job(seed)
    jobs.trials(job)
    planes, before = job.influence.shape[1], jobs.rms(job.initial)
    best = jobs.rms(job.initial - job.influence @ np.linalg.lstsq(job.influence, job.initial, rcond=None)[0])
    excess = []
    for from_last in (False, True):
        if way == "handbook":
            v, h = handbook(job)
            w = -np.linalg.pinv(h) @ v[-1 if from_last else 0]
        else:
            w = correction.masses_for(job.file(), fit_all(job.file()), Wanted(way), from_last=from_last)
        for p in range(planes):
            job.put_on(p, w[p])
        job.run()
        excess.append(100.0 * (jobs.rms(job.left()) - best) / before)
    return (*excess, jobs.rms(job.left()) > before, planes)


def test_corrections_and_trims_beside_the_handbook(figure):
    """2400 jobs of 1 to 4 planes, 2 to 8 points, 1 to 3 %, trials of 0.15 to 1 of the initial vibration."""
    count = figure.count(2400)
    found = {way: np.array([corrected(seed, way) for seed in range(count)]) for way in ("handbook", "auto")}
    for planes in (1, 2, 3, 4, None):
        theirs, ours = (r if planes is None else r[r[:, 3] == planes] for r in (found["handbook"], found["auto"]))
        name = "all jobs" if planes is None else f"{planes} planes"
        for step, word in enumerate(("correction", "trim")):
            for part, where in ((0.5, "median"), (0.9, "90 %")):
                final = planes is None and (word, part) == ("trim", 0.9)
                figure(f"excess over the best possible after the {word}, {name}, {where}", np.quantile(ours[:, step], part),
                       "% of the initial", at_most=7.0 if final else None, better="lower", cases=len(ours),
                       textbook=("handbook recipe", np.quantile(theirs[:, step], part)),
                       error=quantile_error(ours[:, step], part))  # fmt: skip
        figure(f"left worse than at first, {name}", 100 * ours[:, 2].mean(), "%", at_most=0.2 if planes is None else None,
               better="lower", cases=len(ours), share=True,
               textbook=("handbook recipe", 100 * theirs[:, 2].mean()))  # fmt: skip
    figure("excess after the trim over the handbook's, 90 %",
           np.quantile(found["auto"][:, 1], 0.9) / np.quantile(found["handbook"][:, 1], 0.9), at_most=0.8,
           cases=count)  # fmt: skip
    parts = np.linspace(0.0, 100.0, 101)
    figure.plot("Excess over the best possible after correction and trim", "share of the jobs, %", "% of the initial",
                [(name, parts, np.maximum(np.percentile(found[way][:, 1], parts), 0.01))
                 for name, way in (("this project", "auto"), ("handbook recipe", "handbook"))],
                y_log=True)  # fmt: skip


@pytest.mark.parametrize(("points", "planes"), [(1, 1), (2, 2), (4, 2), (8, 3)])
def test_regions_cover(points, planes, figure):
    """1000 jobs a cell; the delta method beside it covers down to a few percent with weak trials."""
    count, curves, effects = figure.count(1000), {}, (0.05, 0.1, 0.3, 1.0, 2.0)
    for noise in (0.01, 0.03):
        for effect in effects:
            inside, delta = 0, 0
            for seed in range(count):
                job = jobs.job(
                    seed + int(1e6 * effect + 1e8 * noise), planes=planes, points=points, noise=noise, effect=effect
                )
                jobs.trials(job)
                model = fit_all(job.file())
                truth = -np.linalg.pinv(job.influence) @ job.initial
                inside += Region(model.fits).statistic(truth[None])[0] <= chi2.ppf(0.95, 2 * planes)
                fitted = model.fits[0]
                w = -np.linalg.pinv(fitted.influence) @ fitted.initial
                off = np.column_stack([(w - truth).real, (w - truth).imag]).ravel()
                covariance = correction.delta_covariance(model.fits, w)
                delta += off @ np.linalg.pinv(covariance) @ off <= chi2.ppf(0.95, 2 * planes)
            region, plain = 100 * inside / count, 100 * delta / count
            figure(f"95 % region of the masses covers, {planes} planes, {points} points, noise {100 * noise:.0f} %, effect "
                   f"{effect:g}", region, "%", at_least=92.5, at_most=97.0, slack=0.6, nominal=95.0, cases=count, share=True,
                   textbook=("delta method", plain))  # fmt: skip
            curves.setdefault(f"region, noise {100 * noise:.0f} %", []).append(region)
            curves.setdefault(f"delta method, noise {100 * noise:.0f} %", []).append(plain)
    figure.plot(f"Coverage of the 95 % region against the effect of the trials, {planes} planes, {points} points",
                "effect of the trials over the initial vibration", "covered, %",
                [(name, effects, values) for name, values in curves.items()], x_log=True, band=(93.0, 97.0))  # fmt: skip


def with_blocks(job, share, blocks, rng):
    """The job's runs with a common phase error over points and a covariance read from so many blocks."""
    fresh = []
    for run in job.runs:
        m = run.vectors.size
        true = run.vectors
        tangent = np.column_stack([(1j * true).real, (1j * true).imag]).ravel()
        sigma = job.noise
        whole = (1 - share) * run.covariance + share * sigma**2 * np.outer(tangent, tangent) + 1e-12 * np.eye(2 * m)
        root = np.linalg.cholesky(whole)
        samples = root @ rng.standard_normal((2 * m, blocks)) * np.sqrt(blocks)
        mean = samples.mean(axis=1)
        scatter = np.cov(samples) / blocks
        z = true + mean[0::2] + 1j * mean[1::2]
        fresh.append(replace(run, vectors=z, covariance=scatter, degrees_of_freedom=blocks - 1.0))
    return replace(job.file(), runs=tuple(fresh))


def test_false_alarms_of_the_fit(figure):
    """A repeated initial run with a phase error common to all points (nine tenths); covariance from 20, 40 blocks."""
    count = figure.count(3000)
    for points, blocks in ((2, 20), (4, 20), (4, 40)):
        alarms = 0
        for seed in range(count):
            rng = np.random.default_rng(seed)
            job = jobs.job(seed, planes=1, points=points)
            job.noise = 0.02
            job.runs = []
            quiet = jobs.Job(rng, job.initial, job.influence, 0.0, 1e-9)
            quiet.run()
            quiet.run()
            quiet.noise = 0.02
            runs = with_blocks(quiet, 0.9, blocks, rng)
            alarms += consistency.drifts(runs)[0].p_value < 0.01
        figure(f"false alarms of a repeat at the 1 % level, {points} points, {blocks} blocks", 100.0 * alarms / count, "%",
               at_least=0.5, at_most=1.5, slack=0.2, nominal=1.0, cases=count, share=True)  # fmt: skip


def test_false_alarms_with_a_correction_run(figure):
    alarms, count = [], figure.count(1500)
    for seed in range(count):
        job = jobs.job(seed)
        jobs.trials(job)
        w = correction.masses_for(job.file(), fit_all(job.file()), Wanted())
        for p in range(w.size):
            job.put_on(p, w[p])
        job.run()
        alarms.append(fit_all(job.file()).p_value < 0.01)
    figure("false alarms of a correction run at the 1 % level", 100 * np.mean(alarms), "%", at_least=0.5, at_most=1.5,
           slack=0.3, nominal=1.0, cases=count, share=True)  # fmt: skip


def test_drift_is_seen_in_one_repeat(figure):
    count = figure.count(500)
    for drift in (0.05, 0.1, 0.2):
        hits = 0
        for seed in range(count):
            job = jobs.job(seed)
            job.run()
            rng = np.random.default_rng(seed + 10**6)
            turn = rng.standard_normal(job.initial.size) + 1j * rng.standard_normal(job.initial.size)
            job.initial = job.initial * (1 + drift * turn / np.abs(turn))
            job.run()
            hits += consistency.drifts(job.file())[0].p_value < 0.01
        figure(f"drift of {100 * drift:.0f} % seen in one repeat", 100 * hits / count, "%", cases=count, share=True,
               at_least=80.0 if drift == 0.1 else None, better="higher")  # fmt: skip


def test_a_wrong_entry_is_named(figure):
    """One trial's angle entered 45° or 180° off, or twice the mass: the run named, among jobs that are flagged."""
    count = figure.count(150)
    for planes in (1, 2, 3):
        right = flagged = sure = sure_right = 0
        for seed in range(count):
            job = jobs.job(seed, planes=planes, points=max(3, planes + 1))
            jobs.trials(job)
            w = correction.masses_for(job.file(), fit_all(job.file()), Wanted())
            for p in range(planes):
                job.put_on(p, w[p])
            job.run()
            wrong = 1 + seed % planes
            factor = (np.exp(0.25j * np.pi), -1.0, 2.0)[seed % 3]
            run = job.runs[wrong]
            pieces = tuple(replace(p, mass=p.mass * factor) for p in run.pieces)
            job.runs[wrong] = replace(run, masses=run.masses * factor, pieces=pieces)
            judged = consistency.judge(job.file(), fit_all(job.file()))
            if not judged.doubted or not judged.suspicions:
                continue
            flagged += 1
            hit = judged.suspicions[0].run == f"run {wrong}" and judged.suspicions[0].kind == "mass"
            right += hit
            if len(judged.suspicions) == 1 or judged.suspicions[1].chi_square - judged.suspicions[0].chi_square > 9.2:
                sure, sure_right = sure + 1, sure_right + hit
        figure(f"wrong entry flagged with an explanation, {planes} planes", 100 * flagged / count, "%", cases=count,
               share=True, better="higher")  # fmt: skip
        figure(f"of them the right run named first, {planes} planes", 100 * right / max(1, flagged), "%", share=True,
               cases=max(1, flagged), at_least=80.0 if planes > 1 else None, better="higher")  # fmt: skip
        if sure:
            figure(f"of those named alone right, {planes} planes", 100 * sure_right / sure, "%", cases=sure, share=True,
                   better="higher")  # fmt: skip


def test_predicted_vibration_covers(figure):
    inside, bound, count, seeds = 0, 0, 0, figure.count(1500)
    for seed in range(seeds):
        job = jobs.job(seed)
        jobs.trials(job)
        runs = job.file()
        model = fit_all(runs)
        w = correction.masses_for(runs, model, Wanted())
        for p in range(w.size):
            job.put_on(p, w[p])
        foretold = correction.predict(runs, model.fits, w)
        for p, z in zip(foretold, job.left(), strict=True):
            centre = p.amplitude * np.exp(1j * np.deg2rad(p.phase_deg))
            inside += abs(z - centre) <= p.amplitude_upper95 - p.amplitude
            bound += abs(z) <= p.amplitude_upper95
            count += 1
    # the points of a job share its runs: jobs are the cases
    figure("predicted vibration within its circle", 100 * inside / count, "%", at_least=94.0, at_most=97.0, slack=0.5,
           nominal=95.0, cases=seeds, share=True)  # fmt: skip
    figure("true vibration below its upper limit", 100 * bound / count, "%", cases=seeds, share=True, better="higher")


def test_stored_coefficients(figure):
    """Stored with 3 %, noise 2 %, 2 planes, 4 points: rejected at 1 % after one run with masses."""
    count = figure.count(600)
    for name, change in (("none", 1.0), ("5°", np.exp(1j * np.deg2rad(5))), ("10°", np.exp(1j * np.deg2rad(10))),
                         ("20°", np.exp(1j * np.deg2rad(20))), ("gain 30 %", 1.3)):  # fmt: skip
        rejected = lost = 0
        for seed in range(count):
            job = jobs.job(seed, planes=2, points=4, noise=0.02)
            rng = np.random.default_rng(seed + 10**7)
            h = job.influence
            off = 0.03 / np.sqrt(2) * np.abs(h) * (rng.standard_normal(h.shape) + 1j * rng.standard_normal(h.shape))
            sizes = np.repeat((0.03 / np.sqrt(2) * np.abs(h)).ravel() ** 2, 2)
            prior = stored.Prior(1500.0, h + off, np.diag(sizes))
            job.influence, job.initial = h * change, job.initial * change
            job.run()
            w = -np.linalg.pinv(prior.influence) @ job.runs[0].vectors
            for p in range(2):
                job.put_on(p, 0.5 * w[p])
            job.run()
            _, verdict = stored.judged(job.file(), [prior])
            rejected += verdict.status in ("turned", "does not hold")
            lost += verdict.status == "does not hold"
        unchanged = name == "none"
        figure(f"stored coefficients given up, change {name}", 100 * rejected / count, "%", cases=count, share=True,
               at_most=2.0 if unchanged else None, at_least=95.0 if name == "20°" else None,
               better="lower" if unchanged else "higher")  # fmt: skip
        figure(f"given up with a common factor too, change {name}", 100 * lost / count, "%", cases=count, share=True,
               better="lower")  # fmt: skip


def test_time_of_the_solver(figure):
    """CPU time of a fit and of the whole answer beside numpy.linalg.lstsq of the same rows, median of 9."""
    for points, planes in ((2, 2), (4, 2), (8, 3), (12, 4)):
        job = jobs.job(3, planes=planes, points=points)
        jobs.trials(job)
        runs = job.file()
        rows, right = np.kron(np.eye(2 * points), np.ones((planes + 1, planes + 1))), np.ones(2 * points * (planes + 1))

        def plain(rows=rows, right=right):
            for _ in range(20):
                np.linalg.lstsq(rows, right, rcond=None)

        for name, act in (("fit", lambda r=runs: fit_all(r)), ("whole answer", lambda r=runs: correction.solve(r))):
            act()  # the first call is not counted
            taken, twenty = cpu_beside(act, plain, 9)
            figure.cost(
                f"{name}, {points} points × {planes} planes", taken, ("numpy.linalg.lstsq of the rows", twenty / 20)
            )
