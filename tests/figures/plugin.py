"""The pytest plugin of the benchmarks: the `figure` fixture, the page of figures, and the guard against the baseline.

Figures travel as properties of their tests' reports, which xdist brings from its workers to the one process that writes.
"""

from __future__ import annotations

import faulthandler
import os
import platform
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from figures import baseline, page
from figures.record import Figures, figure_from, kernel_ms, said

_COLLECTED = pytest.StashKey[page.Collected]()
_RECORDED = pytest.StashKey[Figures]()
_GUARD = pytest.StashKey[list[str]]()
_FIGURES, _PLOTS = "stillshaft figures", "stillshaft plots"
_TITLES = {
    ("dsp",): "Signal processing", ("solver",): "Solver", ("acquire",): "Acquisition", ("ui",): "Jobs",
    ("ui", "desktop"): "Window", ("ui", "packaging"): "Packages",
}  # fmt: skip


def pytest_addoption(parser: pytest.Parser) -> None:
    """The options of a run of the benchmarks."""
    group = parser.getgroup("figures", "figures of the benchmarks")
    group.addoption("--figures", metavar="PAGE.html", help="write all figures as a page, and as JSON beside it")
    group.addoption("--figures-quick", action="store_true", help="a twentieth of the seeds; statistics are not judged")
    group.addoption("--against-baseline", action="store_true", help="fail where a figure is worse than the baseline")
    group.addoption("--new-baseline", action="store_true", help="put the figures measured now into the baseline")
    group.addoption("--baseline", metavar="FILE", default=str(baseline.PATH), help="another file as the baseline")


def pytest_configure(config: pytest.Config) -> None:
    """Refuse what cannot be done before hours are spent."""
    option = config.option
    if option.new_baseline and option.figures_quick:
        raise pytest.UsageError("--new-baseline needs all seeds; leave --figures-quick out")
    if option.new_baseline and option.against_baseline:
        raise pytest.UsageError("--new-baseline and --against-baseline exclude each other; give one of them")
    if option.figures and Path(option.figures).suffix != ".html":
        raise pytest.UsageError(f"--figures {option.figures}: the page is HTML; end its name in .html")
    if option.figures and not Path(option.figures).absolute().parent.is_dir():
        raise pytest.UsageError(f"--figures {option.figures}: the folder is not there; make it first")
    try:
        baseline.read(Path(option.baseline))
    except baseline.BaselineError as error:
        raise pytest.UsageError(str(error)) from None
    if not hasattr(config, "workerinput"):
        machine = _machine() if option.figures else {}
        config.stash[_COLLECTED] = page.Collected(machine, option.figures_quick)


@pytest.fixture
def figure(request: pytest.FixtureRequest) -> Figures:
    """Records a figure: `figure("what it is", value, "%", at_most=7.0, textbook=("the handbook", 12.0), cases=2400)`."""
    faulthandler.cancel_dump_traceback_later()  # a benchmark takes minutes by intent: its own limit says what hangs
    node = request.node
    recorded = Figures(
        section_of(node.path), _first_sentence(request.module.__doc__), node.nodeid.rpartition("/")[2],
        request.config.option.figures_quick,
    )  # fmt: skip
    node.stash[_RECORDED] = recorded
    return recorded


@pytest.hookimpl(wrapper=True)
def pytest_pyfunc_call(pyfuncitem: pytest.Function) -> Iterator[None]:
    """Judge the figures when the test has recorded all of them."""
    result = yield
    recorded = pyfuncitem.stash.get(_RECORDED, None)
    if recorded is not None and (missed := recorded.failures()):
        pytest.fail("\n".join(missed), pytrace=False)
    return result


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item: pytest.Item) -> Iterator[None]:
    """Hang the figures to the last report of their test."""
    report = yield
    recorded = item.stash.get(_RECORDED, None)
    if recorded is not None and report.when == "teardown":
        report.user_properties.append((_FIGURES, [f.as_table() for f in recorded.figures]))
        report.user_properties.append((_PLOTS, recorded.plots))
    return report


class _Gathering:
    """Takes reports in, in the process that writes the page."""

    def __init__(self, config: pytest.Config):
        self._config, self._outcomes = config, dict[str, str]()

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        collected = self._config.stash[_COLLECTED]
        test = report.nodeid.rpartition("/")[2]
        is_benchmark = "benchmark" in report.keywords
        if report.outcome != "passed" and is_benchmark and not (why := _reason(report)).startswith("missed: "):
            collected.stopped[test] = f"{report.outcome}, {why}"
        if report.when != "teardown":
            return
        carried = dict(report.user_properties)
        if _FIGURES not in carried:
            return
        collected.add([figure_from(t) for t in carried[_FIGURES]], carried[_PLOTS])
        if test not in collected.stopped:
            collected.ended.add(test)
        if self._config.option.figures:
            page.write(Path(self._config.option.figures), collected)  # what is measured stays if the run is cut short


def pytest_sessionstart(session: pytest.Session) -> None:
    """Begin to gather, but in no worker."""
    if _COLLECTED in session.config.stash:
        session.config.pluginmanager.register(_Gathering(session.config), "gathered figures")


@pytest.hookimpl(trylast=True)
def pytest_sessionfinish(session: pytest.Session) -> None:
    """Compare with the baseline, or write it, and write the page."""
    config = session.config
    if _COLLECTED not in config.stash:
        return
    collected, option, told = config.stash[_COLLECTED], config.option, []
    path = Path(option.baseline)
    if option.against_baseline:
        count, collected.worse = baseline.compared(baseline.read(path), collected.figures)
        told = [*collected.worse, f"{count} figures compared with {path.name}, {len(collected.worse)} worse"]
        if not count:
            told.append("nothing could be compared: run benchmarks that the baseline holds, with -m benchmark")
        if (collected.worse or not count) and session.exitstatus in (0, 5):
            session.exitstatus = pytest.ExitCode.TESTS_FAILED
    if option.new_baseline:
        told = [f"{baseline.write(path, collected.figures, collected.ended)} figures written to {path}"]
    if option.figures:
        beside = page.write(Path(option.figures), collected)
        told.append(f"{collected.counts()}: {option.figures}, {beside.name}")
    config.stash[_GUARD] = told


def pytest_terminal_summary(terminalreporter: Any, config: pytest.Config) -> None:
    """Every figure as a line of text, as the page has it."""
    collected = config.stash.get(_COLLECTED, None)
    if collected is None or not (collected.figures or config.stash.get(_GUARD, [])):
        return
    terminalreporter.section("figures")
    for section in collected.sections():
        terminalreporter.write_line(f"{section}")
        for f in collected.figures:
            if f.section == section:
                terminalreporter.write_line(f"  {f.line()}", red=f.fails)
    for line in config.stash.get(_GUARD, []):
        terminalreporter.write_line(line, bold=True)


def section_of(path: Path) -> str:
    """Title of the layer and words of the file's name: tests/dsp/test_benchmark_tach.py is "Signal processing, tach"."""
    parts = path.parts
    folders = parts[len(parts) - 1 - parts[::-1].index("tests") + 1 : -1] if "tests" in parts else ()
    title = _TITLES.get(folders)
    words = path.stem.removeprefix("test_").removeprefix("benchmark_").replace("_", " ")
    return f"{title}, {words}" if title else words


def _first_sentence(text: str | None) -> str:
    return (text or "").strip().split("\n")[0]


def _reason(report: pytest.TestReport) -> str:
    if isinstance(report.longrepr, tuple):  # a skip: file, line, reason
        return str(report.longrepr[2]).removeprefix("Skipped: ")
    lines = [line for line in str(report.longrepr).splitlines() if line.startswith(("E  ", "missed"))]
    return lines[0].removeprefix("E").strip() if lines else str(report.longrepr).strip().rpartition("\n")[2]


def _machine() -> dict[str, str]:
    """What the figures were measured on."""
    model = next(
        (line.partition(":")[2].strip() for line in _cpu_lines() if line.startswith("model name")), platform.machine()
    )
    loads = os.getloadavg() if hasattr(os, "getloadavg") else (float("nan"),)
    return {
        "processor": f"{model}, {os.cpu_count()} cores, load {loads[0]:.1f} at the start",
        "system": f"{platform.system()} {platform.release()}, Python {platform.python_version()}, numpy {np.__version__}",
        "reference kernel": f"an FFT of 2^18 points, {said(kernel_ms())} ms of CPU at the start; "
        "the last column has it at the time of each figure",
    }


def _cpu_lines() -> list[str]:
    path = Path("/proc/cpuinfo")
    return path.read_text().splitlines() if path.is_file() else []
