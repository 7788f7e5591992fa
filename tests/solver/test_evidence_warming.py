"""How far 1x went from cold to warm, as records tell it; what a record does not tell is not said."""

import hashlib

import numpy as np
import pytest
from stillshaft.dsp import tables
from stillshaft.solver import diagnosis, evidence_warming
from stillshaft.solver.events import KINDS, Event
from stillshaft.solver.state import fold

TURNED = 8.0 * np.exp(1j * np.radians(60.0)) + 2.0 * np.exp(1j * np.radians(150.0))  # a quarter of 1x, across it


def told(*entries):
    """Evidence of a record: entries are minutes since midnight, kind and what it says."""
    written = []
    for number, (minute, kind, fields) in enumerate(entries, start=1):
        at = f"2026-03-05T{int(minute) // 60:02d}:{int(minute) % 60:02d}:{60 * (minute % 1):06.3f}+00:00"
        what = tables.checked(fields, KINDS[kind])
        written.append(Event(number, number, kind, at, "ann", what, fields))
    return evidence_warming.from_record(fold(written))


def started(minute, temperature="cold"):
    return minute, "start", {"temperature": temperature}


def settled(minute, verdict="settled"):
    return minute, "measured", {"what": "settling", "figures": {"verdict": verdict}}


def run(minute, name, since_start, z=8.0 * np.exp(1j * np.radians(60.0)), **more):
    vector = {
        "point": "A",
        "amplitude": float(abs(z)),
        "phase_deg": float(np.degrees(np.angle(z)) % 360.0),
        "verdict": "steady",
    }
    within = {"points": ["A"], "matrix": [[1e-4, 0.0], [0.0, 1e-4]], "degrees_of_freedom": 40.0}
    said = {"purpose": "repeat", "name": name, "speed_rpm": 1480.0, "unit": "mm/s rms", "vectors": [vector]}
    return minute, "run", said | {"covariance": within, "minutes_since_start": since_start} | more


WARMED = (started(0), run(1, "early", 1.0), settled(39), run(40, "late", 40.0, TURNED))
STEADY = (*WARMED[:3], run(40, "late", 40.0, 8.02 * np.exp(1j * np.radians(60.2))))


def test_an_early_and_a_late_run_of_one_start_tell_the_change_with_its_interval():
    figure = told(*WARMED)["warm_change"]
    assert figure.value == pytest.approx(25.0)
    # 1.96 standard deviations of the difference of two vectors, each with 0.01 in re and in im, over 8
    assert figure.high - figure.value == pytest.approx(100.0 * 1.96 * np.sqrt(2e-4) / 8.0, rel=1e-3)
    assert figure.where == "A, 1 to 40 min after the start"
    thermal = next(c for c in diagnosis.diagnose({"warm_change": figure}).causes if c.key == "thermal bow")
    assert [r.quantity for r in thermal.speaking_for] == ["warm_change"]


def test_that_heat_changes_little_is_said_only_from_cold_to_settled():
    assert told(*STEADY)["warm_change"].high < 5.0
    untold = {
        "not settled": (STEADY[0], STEADY[1], settled(39, "moving"), STEADY[3]),
        "settling not watched": (STEADY[0], STEADY[1], STEADY[3]),
        "temperature not noted": (started(0, None), *STEADY[1:]),
        "looked at late": (STEADY[0], run(5, "early", 5.0), *STEADY[2:]),
    }
    assert {why: dict(told(*entries)) for why, entries in untold.items()} == dict.fromkeys(untold, {})


def test_a_part_of_a_large_change_is_told_too():
    whole = told(*WARMED)["warm_change"]
    assert told(WARMED[0], WARMED[1], WARMED[3])["warm_change"] == whole
    assert told(started(0, None), *WARMED[1:])["warm_change"] == whole
    # what was seen whole counts before a part that was seen later
    again = (started(60), run(65, "third", 5.0), run(75, "fourth", 15.0, 2.0 * TURNED))
    assert told(*again)["warm_change"].value > 100.0
    assert told(*WARMED, *again)["warm_change"] == whole


OTHER_PIECE = {"masses": [{"plane": "left", "mass_g": 9.0, "angle_deg": 0.0}]}
BEATING = {"vectors": [WARMED[3][2]["vectors"][0] | {"verdict": "beating"}]}


@pytest.mark.parametrize(
    "entries",
    [
        (started(0, "warm"), *WARMED[1:]),
        (*WARMED[:2], started(20), *WARMED[2:]),
        (*WARMED[:3], run(40, "late", None, TURNED)),
        (WARMED[0], run(1, "early", None), *WARMED[2:]),
        (*WARMED[:3], run(5, "late", 5.0, TURNED)),
        (WARMED[0], run(15, "early", 15.0), *WARMED[2:]),
        (*WARMED[:3], run(40, "late", 40.0, TURNED, speed_rpm=1495.0)),
        (*WARMED[:3], run(40, "late", 40.0, TURNED, **OTHER_PIECE)),
        (*WARMED[:3], run(40, "late", 40.0, TURNED, **BEATING)),
        (*WARMED[:3], run(40, "late", 40.0, TURNED, trusted=False)),
        (*WARMED[:3], (39.5, "reference", {"what": "sensor moved"}), WARMED[3]),
        (started(0), run(1, "early", 1.0, 0.0), *WARMED[2:]),
        (started(0), run(1, "early", 1.0, 1e200), run(40, "late", 40.0, 1e300)),
    ],
    ids=[
        "started warm", "started between", "late minutes unknown", "early minutes unknown", "too soon", "too late",
        "other speed", "other masses", "beating", "not trusted", "sensor moved", "nothing at first", "no such size",
    ],
)  # fmt: skip
def test_what_does_not_tell_cold_from_warm_tells_nothing(entries):
    assert dict(told(*entries)) == {}


def test_without_a_start_in_the_record_the_times_must_say_that_it_ran_on():
    assert told(run(101, "early", 1.0), run(140, "late", 40.0, TURNED))["warm_change"].value == pytest.approx(25.0)
    assert dict(told(run(101, "early", 1.0), run(240, "late", 40.0, TURNED))) == {}


# 1x that was watched


def course(minutes, bow, verdict="settled", seed=1, noise=0.003, speeds=None, tau_s=120.0):
    """What is recorded of 1x watched: a bow that grows to so much of it, and scatter."""
    rng = np.random.default_rng(seed)
    times = 2.5 + 5.0 * np.arange(round(12 * minutes))
    scatter = noise * (rng.standard_normal(times.size) + 1j * rng.standard_normal(times.size))
    z = 6.4 * np.exp(1j) * (1.0 + bow * (1.0 - np.exp(-times / tau_s)) + scatter)
    return {
        "verdict": verdict,
        "watched_s": 60.0 * minutes,
        "times_s": times.tolist(),
        "speeds_rpm": np.full(times.size, 1480.0).tolist() if speeds is None else speeds(times).tolist(),
        "vectors": {"A": [[float(abs(v)), float(np.degrees(np.angle(v)) % 360.0)] for v in z]},
    }


def watched(minute, figures, **more):
    return minute, "measured", {"what": "settling", "figures": figures, **more}


def test_a_machine_watched_from_its_start_until_it_settled_tells_it():
    figure = told(started(0), watched(20.5, course(20, 0.3j)))["warm_change"]
    # the first vectors stand for half a minute, by whose middle an eighth of it had grown
    assert figure.value == pytest.approx(100 * 0.3 * np.exp(-15.0 / 120.0), abs=1.5)
    assert 0.0 < figure.high - figure.value < 1.5
    assert figure.where == "A, 1 to 20 min after the start"


@pytest.mark.parametrize("temperature", ["cold", None])
@pytest.mark.parametrize("minutes", [6, 20])
def test_a_steady_machine_yields_no_change(minutes, temperature):
    """Over 40 draws of its scatter, with 1 % of 1x in each part: none speaks for heat; unknown cold says nothing at all."""
    for seed in range(40):
        figures = course(minutes, 0.0, seed=seed, noise=0.01)
        found = told(started(0, temperature), watched(minutes + 0.5, figures))
        if temperature is None:
            assert dict(found) == {}
            continue
        thermal = next(c for c in diagnosis.diagnose(found).causes if c.key == "thermal bow")
        assert not thermal.speaking_for
        assert found["warm_change"].low < 1.5


@pytest.mark.parametrize(
    ("minute", "figures"),
    [
        (45.0, course(20, 0.3)),  # begun long after the start
        (10.0, course(20, 0.3)),  # longer than there was time for
        (20.5, course(20, 0.3, speeds=lambda t: np.where(t < 600.0, 1480.0, 1500.0))),
        (20.5, course(20, 0.3, speeds=lambda t: np.where(t < 750.0, 1200.0, 1480.0))),
        (20.5, course(20, 0.3) | {"speeds_rpm": [1480.0]}),
        (20.5, course(20, 0.3) | {"times_s": [1.0] * 240}),
        (20.5, course(20, 0.3) | {"vectors": {}}),
        (20.5, course(20, 0.3) | {"vectors": {"A": [[1e300, 0.0]] * 240}}),
        (20.5, {k: v for k, v in course(20, 0.3).items() if k != "speeds_rpm"}),  # as older records have it
        (4.5, course(4, 0.3)),
    ],
    ids=[
        "late", "faster than time", "other speed", "run-up for long", "a speed", "no times", "no points", "no such size",
        "no speeds", "short",
    ],
)  # fmt: skip
def test_what_was_watched_at_another_time_or_speed_tells_nothing(minute, figures):
    assert dict(told(started(0), watched(minute, figures))) == {}


def test_the_run_up_at_the_beginning_is_left_out():
    slow = course(20, 0.3, speeds=lambda t: np.where(t < 20.0, 900.0, 1480.0))
    slow["vectors"]["A"][:4] = [[0.1, 0.0]] * 4
    figure = told(started(0), watched(20.5, slow))["warm_change"]
    grown = 0.3 * (1.0 - np.exp(-37.5 / 120.0))  # by the middle of the first vectors at speed
    assert figure.value == pytest.approx(100.0 * (0.3 - grown) / (1.0 + grown), abs=1.0)


def test_a_long_recording_is_as_old_as_its_run_says():
    digest = hashlib.sha256(b"1").hexdigest()
    file = {"path": "recordings/0001.au", "sha256": digest}
    seen = watched(300, course(20, 0.3), recording=file)
    assert told(started(0), seen, run(300, "early", 1.0, recording=file))["warm_change"].value > 20.0
    assert dict(told(started(0), seen, run(300, "early", 30.0, recording=file))) == {}
    assert dict(told(started(0), seen, run(300, "early", None, recording=file))) == {}
    assert dict(told(started(0), seen)) == {}


def test_a_record_that_somebody_else_wrote_tells_nothing():
    huge = {"points": ["A"], "matrix": [[1e300, 0.0], [0.0, 1e300]], "degrees_of_freedom": 4.0}
    for more in ({"unit": "kg"}, {"covariance": huge}):
        assert dict(told(*WARMED[:3], run(40, "late", 40.0, TURNED, **more))) == {}
