"""How often the whole job ends below 10 % of the initial vibration, and what it costs."""

import resource
import subprocess
import sys
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from tempfile import TemporaryDirectory

import numpy as np
import pytest
from figures.record import quantile_error
from stillshaft.ui import rehearsal

SEEDS = 500


def job_of(seed):
    """Worst point in percent of the initial vibration, trims, doubts and how it went, and the CPU time it took."""
    begun = cpu_s()
    with TemporaryDirectory() as folder:
        outcome = rehearsal.rehearse(
            rehearsal.Path(folder) / "job",
            planes=2,
            seed=seed,
            real_time=False,
            on_progress=lambda *_: None,
            seconds=8.0,
        )
    worst = max(value for value, _ in outcome.residual_percent.values())
    went = f"{outcome.stopped or outcome.tolerance.verdict}; {', '.join(act for act, _ in outcome.advised)}"
    return worst, outcome.trims, outcome.trusted, cpu_s() - begun, went


def cpu_s():
    """CPU time of this process and of those that it started and that have ended."""
    both = [resource.getrusage(who) for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)]
    return sum(used.ru_utime + used.ru_stime for used in both)


def kernel_s():
    """A fresh interpreter that loads numpy: what this machine takes now to begin."""
    begun = cpu_s()
    subprocess.run([sys.executable, "-c", "import numpy"], check=True)
    return cpu_s() - begun


@pytest.mark.benchmark
@pytest.mark.timeout(14400)
def test_the_job_ends_below_a_tenth(figure):
    count = figure.count(SEEDS)
    # not a multiprocessing pool: its workers may not start the acquisition process
    with ProcessPoolExecutor(2, mp_context=get_context("fork")) as pool:
        found = list(pool.map(job_of, range(count)))
    rows = np.array([row[:3] for row in found])
    worst = rows[:, 0]
    figure("rehearsals whose worst point ends below 10 % of the initial", 100.0 * (worst < 10.0).mean(), "%", at_least=99.0,
           cases=count, share=True)  # fmt: skip
    figure("their worst point, median", np.median(worst), "% of the initial", cases=count, better="lower",
           error=quantile_error(worst, 0.5))  # fmt: skip
    figure("their worst point, worst of all", worst.max(), "% of the initial", cases=count)
    figure("rehearsals with a trim", 100 * (rows[:, 1] > 0).mean(), "%", cases=count)
    figure("trims of a rehearsal, mean", rows[:, 1].mean(), "trims", cases=count)
    figure("rehearsals that are doubted", 100 * (1 - rows[:, 2].mean()), "%", cases=count, share=True, better="lower")
    for seed, row in enumerate(found):
        if row[0] >= 10.0:
            print(f"seed {seed}: {row[0]:.2f} %: {row[4]}")
    parts = np.linspace(0.0, 100.0, 101)
    figure.plot("Worst point of a rehearsal at its end", "share of the rehearsals, %", "% of the initial",
                [("rehearsals", parts, np.percentile(worst, parts))], y_from=0.0, band=(0.0, 10.0))  # fmt: skip


@pytest.mark.benchmark
@pytest.mark.timeout(900)
def test_what_a_whole_job_costs(figure):
    """CPU time of all processes, seven jobs one after the other; the first one also loads what the others find loaded."""
    taken, kernels = [], []
    for seed in range(7):
        taken.append(job_of(seed)[3])
        kernels.append(kernel_s())
    kernel = ("an interpreter with numpy", float(np.median(kernels)))
    figure.cost("a whole job of 8 s runs, median of 7", float(np.median(taken)), kernel, wanted_s=5.0, at_most=49.0)
    figure.cost("the first of them", taken[0], kernel, steady=False)
