"""The plugin of the benchmarks: what it records, judges, merges, draws and compares."""

import json
import math
import os
import re
import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
from figures import baseline, page, plots
from figures.plugin import section_of
from figures.record import BY_CHANCE, MET, MISSED, Figure, Figures, figure_from, quantile_error, rms_error

pytest_plugins = ["pytester"]
TESTS = Path(__file__).parents[1]


def figures(quick=False):
    return Figures("Solver, trials", "What it is about.", "test_a.py::test_b", quick)


def figure(value, **more):
    return Figure("Solver", "a figure", value, **more)


def share(value, cases, **more):
    return figure(value, unit="%", guard="share", cases=cases, **more)


def stored(*held):
    return {f.key: {name: getattr(f, name) for name in baseline._KEPT} for f in held}


@pytest.mark.parametrize(
    ("value", "limits", "verdict"),
    [
        (1.0, {}, None),
        (1.0, {"at_most": 1.0}, MET),
        (1.1, {"at_most": 1.0}, MISSED),
        (1.1, {"at_most": 1.0, "slack": 0.2}, BY_CHANCE),
        (92.0, {"at_least": 93.0, "at_most": 97.0}, MISSED),
        (95.0, {"at_least": 93.0, "at_most": 97.0}, MET),
        (97.4, {"at_least": 93.0, "at_most": 97.0, "slack": 0.5}, BY_CHANCE),
        (None, {"at_most": 1.0}, MISSED),
    ],
)
def test_a_figure_is_judged_by_its_target(value, limits, verdict):
    assert figure(value, **limits).verdict == verdict


def test_what_is_recorded_is_plain_and_comes_back():
    recorded = figures()
    recorded("a", np.float32(0.5), "%", at_most=np.float64(1.0), textbook=("b", np.float64(3.0)), error=np.float64(0.1))
    recorded.cost("c", 2e-3, ("one sum", 1e-4), wanted_s=0.01, at_most=30.0, textbook=("direct", 1e-2))
    recorded("d", math.nan, at_most=1.0)
    recorded.plot("p", "x", "y", [("line", np.arange(3), np.arange(3.0))], band=(0.0, 1.0))
    told = json.loads(json.dumps([f.as_table() for f in recorded.figures], allow_nan=False))
    assert [figure_from(t) for t in told] == recorded.figures
    recorded.cost("e", 2e-3, ("one sum", 1e-4), steady=False)
    first, cost, no_number, longest = recorded.figures
    assert (first.guard, first.value, first.textbook) == ("statistic", 0.5, ("b", 3.0))
    assert (cost.guard, cost.value, cost.textbook) == ("ratio", pytest.approx(20.0), ("direct", pytest.approx(100.0)))
    assert cost.spent == "2 ms of CPU, wanted 10 ms; × is one sum, 0.1 ms"
    assert (longest.guard, longest.value) == (None, pytest.approx(20.0))
    assert (no_number.value, no_number.verdict) == (None, MISSED)
    assert all(f.kernel_ms > 0.0 for f in recorded.figures)
    assert len(recorded.failures()) == 1
    assert json.loads(json.dumps(recorded.plots)) == [
        {"section": "Solver, trials", "title": "p", "x_label": "x", "y_label": "y",
         "series": [["line", [0.0, 1.0, 2.0], [0.0, 1.0, 2.0]]], "how": {"band": [0.0, 1.0]}}
    ]  # fmt: skip


def test_figures_of_a_run_of_its_own_are_taken_over(tmp_path):
    elsewhere = figures()
    elsewhere("a", 2.0, at_most=1.0, textbook=("b", 3.0))
    collected = page.Collected()
    collected.add(elsewhere.figures, [])
    here = Figures("Window, frames", "Another.", "test_c.py::test_d", False)
    here.take_over(page.write(tmp_path / "f.html", collected), "on X")
    (taken,) = here.figures
    assert (taken.key, taken.test, taken.value) == ("Window, frames: a, on X", "test_c.py::test_d", 2.0)
    assert len(here.failures()) == 1


def test_a_figure_has_a_name_of_its_own_and_a_share_has_cases():
    recorded = figures()
    recorded("a", 1.0)
    with pytest.raises(ValueError, match="a: recorded twice .* give each figure a name"):
        recorded("a", 2.0)
    with pytest.raises(ValueError, match="b: a share needs the number of its cases; give cases="):
        recorded("b", 2.0, share=True)


def test_a_quick_run_judges_no_statistics():
    recorded = figures(quick=True)
    assert recorded.count(2000) == 100
    assert recorded.count(5) == 2
    assert figures().count(2000) == 2000
    recorded("a share", 50.0, "%", at_least=99.0, cases=10, share=True)
    recorded("without cases", 2.0, at_most=1.0)
    recorded("lost", 1, "events", at_most=0.0, cases=5)
    assert [line.split(":")[1] for line in recorded.failures()] == [" without cases", " lost"]
    assert "too few cases to judge" in recorded.figures[0].line()


def test_standard_errors_are_those_of_many_samples():
    rng = np.random.default_rng(0)
    values = rng.standard_normal((400, 600))
    rms = np.sqrt(np.mean(values**2, axis=1))
    assert np.mean([rms_error(v) for v in values]) == pytest.approx(rms.std(), rel=0.15)
    nineties = np.quantile(values, 0.9, axis=1)
    assert np.mean([quantile_error(v, 0.9) for v in values]) == pytest.approx(nineties.std(), rel=0.15)


@pytest.mark.parametrize(
    ("path", "section"),
    [
        ("tests/dsp/test_benchmark_tach.py", "Signal processing, tach"),
        ("/tests/x/tests/ui/desktop/test_benchmark_frames.py", "Window, frames"),
        ("elsewhere/test_thing.py", "thing"),
    ],
)
def test_sections_are_named_by_their_files(path, section):
    assert section_of(Path(path)) == section


COUNT = 2000


@pytest.mark.parametrize(
    ("before", "now", "is_worse"),
    [
        (share(4.0, COUNT, better="lower"), share(4.9, COUNT, better="lower"), False),  # chance: 8 %
        (share(4.0, COUNT, better="lower"), share(7.0, COUNT, better="lower"), True),
        (share(4.0, COUNT, better="lower"), share(1.0, COUNT, better="lower"), False),
        (share(99.0, COUNT, at_least=98.0), share(97.0, COUNT, at_least=98.0), True),
        (share(99.0, COUNT, at_least=98.0), share(100.0, COUNT, at_least=98.0), False),
        (share(99.0, COUNT, at_least=98.0), share(90.0, 20, at_least=98.0), False),  # too few now
        (share(95.5, COUNT, nominal=95.0), share(97.9, COUNT, nominal=95.0), True),
        (share(95.5, COUNT, nominal=95.0), share(92.0, COUNT, nominal=95.0), True),
        (share(97.0, COUNT, nominal=95.0), share(93.0, COUNT, nominal=95.0), False),  # as far, on the other side
        (share(0.0, 100, at_most=0.0), share(12.0, 100, at_most=0.0), True),
        (share(5.0, COUNT), share(50.0, COUNT), False),  # nobody said which way is worse
        (figure(8.0, guard="ratio", better="lower"), figure(11.9, guard="ratio", better="lower"), False),
        (figure(8.0, guard="ratio", better="lower"), figure(12.1, guard="ratio", better="lower"), True),
        (figure(8.0, guard="ratio", better="lower"), figure(1.0, guard="ratio", better="lower"), False),
        (figure(8.0, guard="ratio", better="lower"), figure(None, guard="ratio", better="lower"), True),
        (figure(4.0, guard="statistic", error=0.1, at_most=7.0), figure(4.4, guard="statistic", error=0.1, at_most=7.0), False),
        (figure(4.0, guard="statistic", error=0.1, at_most=7.0), figure(4.5, guard="statistic", error=0.1, at_most=7.0), True),
    ],
)  # fmt: skip
def test_worse_than_the_baseline_is_beyond_chance_or_the_machine(before, now, is_worse):
    count, lines = baseline.compared(stored(before), [now])
    assert count == 1
    assert bool(lines) == is_worse
    if lines:
        assert re.fullmatch(r"Solver: a figure got worse: .* in the baseline.*", lines[0])


def test_only_what_both_hold_is_compared():
    assert baseline.compared({}, [share(4.0, 10)]) == (0, [])
    assert baseline.compared(stored(share(4.0, 10)), [figure(9.0, at_most=1.0)]) == (0, [])


def test_a_new_baseline_keeps_what_was_not_measured(tmp_path):
    path = tmp_path / "baseline.json"
    kept = Figure("Solver", "other", 1.0, guard="ratio", test="other")
    gone = Figure("Solver", "renamed since", 1.0, guard="ratio", test="mine")
    assert baseline.write(path, [kept, gone], set()) == 2
    mine = Figure("Solver", "mine", 2.0, guard="ratio", test="mine")
    missed = Figure("Solver", "missed", 2.0, guard="ratio", test="mine", at_most=1.0)
    alone = Figure("Solver", "held to its target alone", 2.0, test="mine")
    assert baseline.write(path, [mine, missed, alone], {"mine"}) == 1
    assert list(baseline.read(path)) == ["Solver: mine", "Solver: other"]


@pytest.mark.parametrize(("text", "said"), [("{", "is no JSON file"), ('{"format": 2}', "is no baseline of figures")])
def test_a_baseline_that_cannot_be_read(tmp_path, text, said):
    path = tmp_path / "baseline.json"
    path.write_text(text)
    with pytest.raises(baseline.BaselineError, match=f"baseline.json: {said}.*; write it anew with --new-baseline"):
        baseline.read(path)


def test_the_stored_baseline_can_be_read():
    for key, held in baseline.read(baseline.PATH).items():
        assert held["guard"] in ("share", "ratio", "statistic"), key
        assert held["guard"] != "share" or held["cases"] > 0, key
        assert held["guard"] != "statistic" or held["error"] is not None, key
        assert math.isfinite(held["value"]), key


def test_the_page_escapes_and_holds_nothing_from_outside(tmp_path):
    recorded = figures()
    recorded("<b>&\"'", 1.0, "<%>", at_most=0.5, textbook=("<script>alert(1)</script>", 2.0))
    recorded.cost("a cost", 1.0, ("<kernel>", 0.5), at_most=4.0)
    recorded.plot("<title>", "<x>", "<y>", [("<one>", [1.0, 2.0], [3.0, math.nan])], band=(1.0, 4.0), x_log=True)
    recorded.plot("empty", "x", "y", [("nothing", [], [])])
    collected = page.Collected({"processor": "<chip>"}, stopped={"<test>": "<why>"}, worse=["<worse>"])
    collected.add(recorded.figures, recorded.plots)
    beside = page.write(tmp_path / "figures.html", collected)
    text = (tmp_path / "figures.html").read_text()
    for raw in ("<b>&", "<script", "<chip>", "<test>", "<why>", "<worse>", "<kernel>", "<one>", "<x>", "<title>&lt;"):
        assert raw not in text.replace("<title>&lt;one", "").replace("<title>Stillshaft", ""), raw
    assert not re.search(r"https?:|src=|@import|url\(|<link", text)
    assert "prefers-color-scheme:dark" in text
    for svg in re.findall(r"<svg .*?</svg>", text, re.DOTALL):
        ElementTree.fromstring(svg)
    told = json.loads(beside.read_text())
    assert [f["verdict"] for f in told["figures"]] == [MISSED, MET]
    assert told["worse"] == ["<worse>"]


@pytest.mark.parametrize(
    "plot",
    [
        plots.Plot("one point", "x", "y", [("a", [3.0], [0.0])]),
        plots.Plot("wide", "x", "y", [("a", [1.0, 1e6], [1e-9, 1e5])], x_log=True, y_log=True),
        plots.Plot("flat", "x", "y", [("a", [1.0, 2.0], [7.0, 7.0])], y_from=0.0),
    ],
)
def test_plots_stay_inside_their_frame(plot):
    root = ElementTree.fromstring(re.search(r"<svg .*?</svg>", plots.lines(plot), re.DOTALL)[0])
    dots = [(float(c.get("cx")), float(c.get("cy"))) for c in root.iter("circle")]
    assert len(dots) == len(plot.series[0][1])
    assert all(0.0 <= x <= plots.WIDTH and 0.0 <= y <= plots.HEIGHT for x, y in dots)


MODULE = '''
"""What is measured here.

More words.
"""
import pytest
pytestmark = pytest.mark.benchmark

def test_good(figure):
    figure("good", 5.0, "%", at_most=10.0, cases=figure.count(40), share=True)

def test_missed(figure):
    figure("missed", 3.0, at_most=2.0)
    figure("after it", 1.0)

def test_broken(figure):
    figure("before the end", 1.0)
    raise OSError("no such luck")

def test_skipped(figure):
    pytest.skip("no card")
'''


def run(pytester, *more):
    """A run of pytest of its own, with the plugin alone."""
    pytester.makepyfile(test_benchmark_own=MODULE)
    arguments = ["-m", "benchmark", "--figures", "f.html", "--baseline", "b.json", "-p", "no:cacheprovider", *more]
    pytester.makeini(f"[pytest]\nmarkers = benchmark: x\npythonpath = {TESTS}\naddopts = -p figures.plugin")
    done = subprocess.run(
        [sys.executable, "-m", "pytest", *arguments], cwd=pytester.path, capture_output=True, text=True, check=False,
        env=os.environ | {"PYTHONPATH": str(TESTS)},
    )  # fmt: skip
    told = pytester.path / "f.json"
    return done, json.loads(told.read_text()) if told.exists() else None


@pytest.mark.parametrize("workers", [(), ("-n", "2")])
def test_figures_of_failed_tests_and_of_all_workers_are_in_the_report(pytester, workers):
    done, told = run(pytester, *workers)
    assert done.returncode == 1
    assert {f["name"]: f["verdict"] for f in told["figures"]} == {
        "good": MET, "missed": MISSED, "after it": None, "before the end": None,
    }  # fmt: skip
    assert {f["about"] for f in told["figures"]} == {"What is measured here."}
    assert told["not_measured"] == {
        "test_benchmark_own.py::test_broken": "failed, OSError: no such luck",
        "test_benchmark_own.py::test_skipped": "skipped, no card",
    }
    assert "missed: 3; wanted at most 2, missed" in done.stdout
    assert "4 figures, 1 meet their target, 1 missed" in done.stdout
    assert ">missed<" in (pytester.path / "f.html").read_text()


def test_the_baseline_both_ways(pytester):
    first, _ = run(pytester, "--new-baseline", "-k", "good")
    assert first.returncode == 0, first.stdout
    assert "1 figures written to b.json" in first.stdout
    same, told = run(pytester, "--against-baseline", "-k", "good")
    assert (same.returncode, told["worse"]) == (0, [])
    path = pytester.path / "b.json"
    path.write_text(path.read_text().replace('"value": 5.0', '"value": 0.0').replace('"cases": 40', '"cases": 100000'))
    worse, told = run(pytester, "--against-baseline", "-k", "good")
    assert worse.returncode == 1
    (line,) = told["worse"]
    assert line.startswith(
        "own: good got worse: 5 %, 0 in the baseline; 100000 and 40 cases explain that less than once"
    )
    assert line in worse.stdout
    nothing, _ = run(pytester, "--against-baseline", "-k", "missed")
    assert nothing.returncode == 1
    assert "nothing could be compared" in nothing.stdout


@pytest.mark.parametrize(
    ("options", "said"),
    [
        (("--new-baseline", "--figures-quick"), "--new-baseline needs all seeds; leave --figures-quick out"),
        (("--new-baseline", "--against-baseline"), "exclude each other; give one of them"),
        (("--figures", "f.txt"), "the page is HTML; end its name in .html"),
        (("--figures", "not/there/f.html"), "the folder is not there; make it first"),
        (("--baseline", "tox.ini"), "tox.ini: is no JSON file"),
    ],
)
def test_what_cannot_be_done_is_refused_at_once(pytester, options, said):
    pytester.makeini("[pytest]\nfaulthandler_timeout = 0")
    done = pytester.runpytest_inprocess("-p", "figures.plugin", *options)
    assert done.ret == pytest.ExitCode.USAGE_ERROR
    done.stderr.fnmatch_lines([f"*{said}*"])


@pytest.mark.long
@pytest.mark.timeout(900)
def test_two_real_benchmarks_run_through_the_plugin(tmp_path):
    """Two of the cheapest in a quick run, so that neither the plugin nor the quick run can rot."""
    done = subprocess.run(
        [sys.executable, "-m", "pytest", "-m", "benchmark", "-p", "no:cacheprovider", "--figures-quick", "--figures",
         tmp_path / "f.html", TESTS / "dsp/test_benchmark_speed.py", TESTS / "dsp/test_benchmark_steadiness.py", "-k",
         "agree or cleaned"],
        cwd=TESTS.parent, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stdout + done.stderr
    told = json.loads((tmp_path / "f.json").read_text())
    assert told["quick"]
    assert {f["section"] for f in told["figures"]} == {"Signal processing, speed", "Signal processing, steadiness"}
    judged = {f["name"]: f["verdict"] for f in told["figures"] if f["asserted"] and f["verdict"]}
    assert judged == {"vectors from pieces of 777, 4096 and all at once, largest difference": MET}
    assert "<svg" in (tmp_path / "f.html").read_text()
