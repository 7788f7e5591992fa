"""A machine that is watched until it has settled: a thermal bow that grows, a source that ends, one that says nothing."""

import dataclasses
import json

import numpy as np
import pytest
from stillshaft.acquire import hookup, simulated
from stillshaft.solver import diagnosis
from stillshaft.ui import job_checks, settling
from test_evidence_warming import started, told
from test_evidence_warming import watched as entry

RATE_HZ = 2000.0
WIRED = hookup.hookup_from(simulated.demo_hookup())


def blocks(seconds, seed=1, **conditions):
    """Samples of the demonstration rotor, second by second, as a reader gives them."""
    told = simulated.Conditions(simulated.DEMO_SPEED_RPM, **conditions)
    run = simulated.demo_run(1, [], seed=seed, real_time=False, seconds=seconds)
    run = dataclasses.replace(run, conditions=told, seconds=seconds, rate_hz=RATE_HZ)
    source = run.open()
    while (block := source.read(1.0)) is not None:
        yield block.samples, None


def watched(source, longest_s):
    shown = []
    found = settling.until_settled(
        lambda: next(source), settling.Watch(RATE_HZ, WIRED), longest_s, lambda *seen: shown.append(seen)
    )
    return found, shown


def test_a_steady_machine_has_settled_after_five_minutes():
    rng = np.random.default_rng(3)
    times, speeds = 2.5 + 5.0 * np.arange(61), np.full(61, 1480.0)
    z = {n: 6.4 * np.exp(2.0j) * (1.0 + 0.002 * rng.standard_normal((61, 2)) @ [1.0, 1.0j]) for n in ("near", "far")}
    early = settling.told(55.0, times[:11], speeds[:11], {n: values[:11] for n, values in z.items()})
    assert early.verdict == settling.UNTOLD
    assert "1x moved by" in early.sentence
    assert early.sentence.endswith("in 55 s; whether it has settled takes five minutes to tell")
    found = settling.told(305.0, times, speeds, z)
    assert found.verdict == settling.SETTLED
    assert found.sentence.startswith("settled after 5.1 min: near: 1x moved by ")


def test_a_bow_that_grows_is_waited_for_and_named():
    """A bow of several percent of 1x with a time constant of 4 min: after 5 min it still grows by more than 2 %."""
    found, shown = watched(blocks(330.0, bow=(0.004, 40.0, 240.0)), 320.0)
    assert shown[10][1].speed.mean_rpm == pytest.approx(1480.0, abs=2.0)
    assert found.verdict == settling.MOVING
    name, worst = found.worst
    assert abs(worst.percent) + abs(worst.turned_deg) > 2.0
    assert found.sentence.startswith(f"not settled after {found.seconds / 60.0:.1f} min: {name}: 1x moved by ")
    assert found.sentence.endswith("let it run on")


def test_what_cannot_be_measured_makes_no_vector():
    noise = np.random.default_rng(0)

    def read():
        return 0.01 * noise.standard_normal((2000, 3)), None

    shown = []
    found = settling.until_settled(read, settling.Watch(RATE_HZ, WIRED), 20.0, lambda *seen: shown.append(seen))
    assert found.sentence == "nothing could be measured in 20 s"
    assert found.verdict == settling.UNTOLD
    assert all(measured is None and trouble for _, measured, trouble in shown)


def test_samples_that_were_lost_leave_a_hole_in_time_only():
    watch, heard = settling.Watch(RATE_HZ, WIRED), 0
    for samples, _ in blocks(30.0):
        lost = 20_000 if heard < 24_000 <= heard + len(samples) else None
        watch.feed(samples, lost)
        heard += len(samples)
    assert watch.watched().seconds == pytest.approx(40.0)
    # steps of 5 s to 12 s, 10 s lost, and steps of 5 s from then on
    assert watch.watched().times_s == pytest.approx([2.5, 7.5, 24.5, 29.5, 34.5], abs=0.6)


def of_heat(seconds, **conditions):
    """What the diagnosis hears of heat where the rotor was started cold and watched at once."""
    watch = settling.Watch(RATE_HZ, WIRED)
    for samples, lost in blocks(seconds, **conditions):
        watch.feed(samples, lost)
    figures = json.loads(json.dumps(job_checks.settled(watch.watched()).figures))
    assert figures["verdict"] == settling.SETTLED
    return told(started(0), entry(seconds / 60.0 + 0.5, figures))


def test_a_bow_that_grows_is_a_change_from_cold_to_warm():
    """Truth: 1x of the same rotor without the bow and with all of it."""

    def vector(**conditions):
        watch = settling.Watch(RATE_HZ, WIRED)
        for samples, lost in blocks(10.5, **conditions):
            watch.feed(samples, lost)
        return np.array([values[-1] for values in watch.watched().z.values()])

    straight, bent = vector(), vector(bow=(0.006, 40.0, 0.01))
    begun = 25.0 / 35.0 * (1.0 - np.exp(-35.0 / 25.0))  # of the bow to come, over the first seven vectors
    truth = np.abs(bent - straight) * begun / np.abs(straight + (bent - straight) * (1.0 - begun))
    found = of_heat(420.0, bow=(0.006, 40.0, 25.0))
    assert found["warm_change"].value == pytest.approx(100.0 * truth.max(), rel=0.05)
    assert found["warm_change"].low > 10.0
    thermal = next(c for c in diagnosis.diagnose(found).causes if c.key == "thermal bow")
    assert [r.quantity for r in thermal.speaking_for] == ["warm_change"]


def test_a_steady_machine_is_not_changed_by_heat():
    found = of_heat(330.0)
    assert found["warm_change"].high < 5.0
    thermal = next(c for c in diagnosis.diagnose(found).causes if c.key == "thermal bow")
    assert [r.quantity for r in thermal.against] == ["warm_change"]
