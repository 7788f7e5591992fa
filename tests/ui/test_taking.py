"""A run taken from a source: what ends it, what is shown on the way, and sources by name."""

import io
import json
import re
from dataclasses import replace

import numpy as np
import pytest
import soundfile
from rich.console import Console
from stillshaft.acquire import catalogue
from stillshaft.acquire import hookup as wiring
from stillshaft.acquire.simulated import demo_hookup, demo_run
from stillshaft.acquire.source import SourceError
from stillshaft.dsp.measure import Measuring
from stillshaft.dsp.steadiness import Beat
from stillshaft.ui import account, analysis, taking
from test_cli import assert_one_line, stillshaft

HOOKUP = wiring.hookup_from(demo_hookup())


def taken(path, stop, **simulation):
    shown = []
    chosen = catalogue.choose("simulated", None, simulation=catalogue.Simulation(real_time=False, **simulation))
    return taking.take(chosen.request, path, HOOKUP, stop, shown.append), shown


def test_time_ends_a_run(tmp_path):
    run, shown = taken(tmp_path / "a.au", taking.Stop(3.0))
    assert (run.ended_by, run.summary.complete, run.summary.frames) == ("time", True, 144_000)
    assert shown


def test_revolutions_end_a_run(tmp_path):
    run, shown = taken(tmp_path / "a.au", taking.Stop(60.0, revolutions=150))
    assert (run.ended_by, run.summary.complete) == ("revolutions", True)
    assert analysis.measure_recording(tmp_path / "a.au", HOOKUP).points[0].revolutions >= 146  # whole blocks of four
    last = json.loads((tmp_path / "a.events.jsonl").read_text().splitlines()[-1])
    assert (last["kind"], last["complete"]) == ("stop", True)
    assert run.summary.seconds >= 10.0
    assert shown[-1].missing == ()


def test_what_a_run_waits_for_is_shown(measured):
    waits = taking.missing(replace(AUTOMATIC, revolutions=900), measured)
    shown = io.StringIO()
    progress = taking.Progress(16.0, measured, "the server is gone", None, missing=(*waits, "a whole beat of 10 s"))
    Console(file=shown, width=100).print(account._running(progress))
    assert re.search(r"waits for \d+ more revolutions; a whole beat of 10 s\s+the server is gone", shown.getvalue())


def test_the_interval_ends_a_run(tmp_path):
    run, shown = taken(tmp_path / "a.au", taking.Stop(60.0, interval=(2.0, 1.0)))
    assert run.ended_by == "interval"
    assert run.summary.seconds < 40.0
    for point in analysis.measure_recording(tmp_path / "a.au", HOOKUP).points:
        assert point.amplitude_ci95 <= 0.03 * abs(point.z)  # it goes on a little between decision and end
        assert point.phase_ci95_deg <= 1.5
    assert any(p.measured is not None for p in shown)


def test_an_interval_that_is_not_reached_is_said(tmp_path):
    done = stillshaft(
        "capture",
        "simulated",
        "a.au",
        "--seconds",
        "3",
        "--until-interval",
        "0.001 % 0.001 deg",
        "--fast",
        cwd=tmp_path,
    )
    assert done.returncode == 3
    assert "the wanted interval was not reached in 3 s" in done.stderr
    assert soundfile.info(tmp_path / "a.au").frames == 144_000


def test_a_recording_is_a_source(tmp_path):
    taken(tmp_path / "a.au", taking.Stop(3.0))
    done = stillshaft("capture", "recording:a.au", "b.au", "--seconds", "2", "--fast", "--json", cwd=tmp_path)
    assert done.returncode == 0, done.stderr
    assert json.loads(done.stdout)["frames"] == 96_000
    whole = soundfile.read(tmp_path / "a.au")[0]
    assert (soundfile.read(tmp_path / "b.au")[0] == whole[:96_000]).all()


def test_masses_go_on_the_simulated_rotor(tmp_path):
    taken(tmp_path / "a.au", taking.Stop(3.0))
    taken(tmp_path / "b.au", taking.Stop(3.0), masses=(("drive side", 20.0, 90.0),))
    a, b = (analysis.measure_recording(tmp_path / f"{n}.au", HOOKUP).points[0].z for n in "ab")
    assert abs(a - b) > 0.3 * abs(a)


@pytest.mark.parametrize(
    ("arguments", "match"),
    [
        (
            ("simulated", "x.au", "--mass", "rim = 5 g at 0"),
            'the simulated rotor has no plane "rim"; it has drive side',
        ),
        (("simulated", "x.au", "--until-interval", "soon"), 'interval "soon": write percent of the amplitude'),
        (("recording:none.au", "x.au"), "none.au: there is no such file"),
        (("simulated", "nowhere/x.au"), "nowhere/x.au: cannot be written"),
    ],
)
def test_bad_input_gets_one_line(tmp_path, arguments, match):
    assert match in assert_one_line(stillshaft("capture", *arguments, cwd=tmp_path))
    assert not list(tmp_path.iterdir())


def test_a_source_with_too_few_inputs_is_refused():
    with pytest.raises(SourceError, match="not found; there is"):
        catalogue.choose("ALSA/nonsense", HOOKUP)


@pytest.fixture(scope="module")
def measured():
    """A run of 16 s at an even speed."""
    source = demo_run(1, [], seed=2, real_time=False, seconds=16.0).open()
    measuring = Measuring(source.rate_hz, HOOKUP.pulse, HOOKUP.points, HOOKUP.display)
    while (block := source.read(1.0)) is not None:
        measuring.feed(block.samples)
    return measuring.result()


AUTOMATIC = taking.Stop(300.0, revolutions=200, interval=(2.0, 1.0))


def test_an_automatic_run_ends_when_nothing_is_missing(measured):
    assert taking.missing(AUTOMATIC, measured) == ()
    assert taking.reached(AUTOMATIC, measured) == "interval"
    assert measured.speeds_rpm == pytest.approx(1480.0, rel=0.005)
    assert measured.speeds_rpm.shape == measured.times_s.shape
    assert taking.missing(replace(AUTOMATIC, revolutions=900), measured)[0].endswith("more revolutions")


def test_an_automatic_run_waits_for_an_even_speed_of_ten_seconds(measured):
    """practice: the speed within 0.5 % for 10 s; what was before does not matter."""
    at, speeds = measured.times_s, measured.speeds_rpm
    early = replace(measured, speeds_rpm=np.where(at < at[-1] - 10.5, 1.03, 1.0) * speeds)
    assert taking.reached(AUTOMATIC, early) == "interval"
    late = replace(measured, speeds_rpm=np.where(at < at[-1] - 8.0, 1.012, 1.0) * speeds)
    assert taking.reached(AUTOMATIC, late) is None
    (said,) = taking.missing(AUTOMATIC, late)
    assert said.startswith("the speed: 1.")
    assert said.endswith("% off in 10 s, 0.5 % wanted")
    short = replace(measured, times_s=at[:50], speeds_rpm=speeds[:50])
    assert taking.missing(AUTOMATIC, short) == ("10 s of even speed",)
    counted = taking.Stop(300.0, revolutions=200)
    assert taking.missing(counted, late) == (said,)
    assert taking.reached(counted, early) == "revolutions"
    assert taking.needed_s(counted, late, 5.0) == 10.0  # 200 revolutions take 8.1 s


@pytest.mark.parametrize(
    ("changed", "said"),
    [
        ({"verdict": "drifting"}, "drive end horizontal, which drifts"),
        ({"verdict": "too-short"}, "a verdict on steadiness"),
        ({"verdict": "beating", "beat": Beat(0.1, 0.01, 0.2, "above", (1486.0,), 0.6, 1.0, np.eye(2), 9, 0.7)},
         "a whole beat of 10 s"),
    ],
)  # fmt: skip
def test_what_an_automatic_run_waits_for_is_said(measured, changed, said):
    first = measured.points[0]
    doubted = replace(first, steadiness=replace(first.steadiness, **changed))
    assert taking.missing(AUTOMATIC, replace(measured, points=(doubted, *measured.points[1:]))) == (said,)


def test_the_widest_interval_is_named(measured):
    wide = replace(measured.points[1], amplitude_ci95=0.07 * abs(measured.points[1].z), phase_ci95_deg=0.5)
    two = replace(measured, points=(measured.points[0], wide))
    assert taking.missing(AUTOMATIC, two) == ("far end horizontal: ± 7 % and ± 0.5° now",)
    unbound = replace(measured, points=(replace(wide, amplitude_ci95=None), measured.points[0]))
    assert taking.missing(AUTOMATIC, unbound) == ("the interval of far end horizontal, which has no bound yet",)


def test_a_beat_is_averaged_out_before_its_interval_is_held_against_time(measured):
    first = measured.points[0]
    beat = Beat(0.16, 0.01, 0.26, "above", (1489.6,), 0.6, 1.0, np.eye(2), 9, 2.0)
    wide = replace(
        first,
        amplitude_ci95=0.5 * abs(first.z),
        steadiness=replace(first.steadiness, verdict="beating", beat=beat, record_s=25.0),
    )
    beating = replace(measured, points=(wide, *measured.points[1:]))
    assert taking.needed_s(AUTOMATIC, beating, 12.0) == 25.0
    assert taking.needed_s(AUTOMATIC, beating, 30.0) == pytest.approx(30.0 * 25.0**2)  # then by the root of time
