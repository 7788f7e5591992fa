"""How often the cause of a simulated machine is ranked first, clear and faint: `pytest -m benchmark -s`.

Machines and rules are the project's own, so the shares say that the rules hold together, not how often they are right in
the field. Beside each stands what the plain rule does that calls every machine with most of its vibration at 1x unbalance.
"""

from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context

import faulty_machines
import pytest
from faulty_machines import CAUSES, UNBALANCE
from stillshaft.solver import diagnosis

SEEDS = 16
SIZES = (1.0, 0.5)
# least share ranked first on clear machines, percent, set below what was measured by what 16 machines scatter
WANTED = dict.fromkeys(("rub", "belt", "flow", "soft foot", "bearing wear"), 70.0)
ELSE_WANTED = 90.0


def judged(job):
    cause, seed, size = job
    evidence = faulty_machines.evidence_of(faulty_machines.machine(cause, seed, size), seed)
    found = diagnosis.diagnose(evidence)
    wanted = "unbalance" if cause in UNBALANCE else cause
    ranks = [c.key for c in found.causes]
    kind = found.causes[0].kinds[0].key if found.causes[0].kinds else None
    return (
        ranks[0] == wanted, wanted in ranks[:3], ranks[0] == "unbalance", kind == cause,
        evidence["share_1x"].value >= 50.0,
    )  # fmt: skip


@pytest.mark.benchmark
@pytest.mark.timeout(7200)
def test_causes_ranked_first(capsys):
    jobs = [(cause, seed, size) for cause in CAUSES for size in SIZES for seed in range(SEEDS)]
    with ProcessPoolExecutor(2, mp_context=get_context("fork")) as pool:
        outcomes = dict(zip(jobs, pool.map(judged, jobs, chunksize=2), strict=True))
    rows = [f"{'cause':18} size   first %   of three %   called unbalance %   by the share of 1x alone %   wanted %"]
    shares = {}
    for cause in CAUSES:
        for size in SIZES:
            parts = zip(*(outcomes[cause, seed, size] for seed in range(SEEDS)), strict=True)
            first, three, unbalance, kind, plain = (100.0 * sum(p) / SEEDS for p in parts)
            shares[cause, size] = first, unbalance, kind
            wanted = f"{WANTED.get(cause, ELSE_WANTED):g}" if size == 1.0 else "-"
            right = f"   its kind first {kind:.0f} %" if cause in UNBALANCE else ""
            rows.append(
                f"{cause:18} {size:4}  {first:8.0f} {three:12.0f} {unbalance:20.0f} {plain:28.0f} {wanted:>10}{right}"
            )
    with capsys.disabled():
        print(f"\n{SEEDS} machines each\n" + "\n".join(rows))  # noqa: T201
    for cause in CAUSES:
        assert shares[cause, 1.0][0] >= WANTED.get(cause, ELSE_WANTED), cause
    for cause in UNBALANCE:
        assert shares[cause, 0.5][0] >= ELSE_WANTED, cause
        assert shares[cause, 1.0][2] >= ELSE_WANTED, cause
    for cause in ("resonance", "misalignment"):
        assert shares[cause, 1.0][1] <= 5.0, cause
