"""What a benchmark measured: figures with their targets, and the `figure` fixture that records and judges them.

A figure is recorded first and judged when its test has ended, so that a missed one is in the report too, and so are those
after it. What is printed, what stands in the report and what is asserted come from the same call.
"""

from __future__ import annotations

import json
import math
import statistics
import time
from collections.abc import Callable, Sequence
from dataclasses import asdict, dataclass, fields, replace
from pathlib import Path
from typing import Any

import numpy as np

QUICK = 20  # a quick run takes so many times fewer seeds
MET, BY_CHANCE, MISSED = "met", "met within chance", "missed"


@dataclass(frozen=True)
class Figure:
    """One figure; `value` is None where it was not a finite number.

    `slack` is what the target is widened by before a test fails, for the scatter of its cases. `guard` says how it is
    compared with the baseline: a "share" is percent of `cases`, a "statistic" has a standard `error`, a "ratio" is over a
    reference kernel timed in the same run; None is held to its target alone. `spent` says an absolute time in words.
    """

    section: str
    name: str
    value: float | None
    unit: str = ""
    at_least: float | None = None
    at_most: float | None = None
    slack: float = 0.0
    asserted: bool = True
    textbook: tuple[str, float] | None = None
    cases: int | None = None
    guard: str | None = None
    error: float | None = None
    nominal: float | None = None
    better: str | None = None
    spent: str = ""
    kernel_ms: float | None = None
    test: str = ""
    about: str = ""

    @property
    def key(self) -> str:
        """What the baseline knows it by."""
        return f"{self.section}: {self.name}"

    @property
    def verdict(self) -> str | None:
        """Met, met within the slack, or missed; None without a target."""
        if self.at_least is None and self.at_most is None:
            return None
        if self._within(0.0):
            return MET
        return BY_CHANCE if self._within(self.slack) else MISSED

    @property
    def fails(self) -> bool:
        """Whether the test that measured it fails."""
        return self.asserted and self.verdict == MISSED

    def _within(self, slack: float) -> bool:
        if self.value is None:
            return False
        low = -math.inf if self.at_least is None else self.at_least - slack
        return low <= self.value <= (math.inf if self.at_most is None else self.at_most + slack)

    def target(self) -> str:
        """The target in words, empty without one."""
        low, high = (None if x is None else said(x) for x in (self.at_least, self.at_most))
        if low is None and high is None:
            return ""
        words = f"{low} to {high}" if low and high else f"at least {low}" if low else f"at most {high}"
        return f"{words}{f' (± {said(self.slack)} by chance)' if self.slack else ''}"

    def measured(self) -> str:
        """Value and unit."""
        return "not a number" if self.value is None else f"{said(self.value)} {self.unit}".strip()

    def line(self) -> str:
        """All of it as a line of text."""
        parts = [f"{self.name}: {self.measured()}"]
        if target := self.target():
            parts.append(f"wanted {target}{f', {self.verdict}' if self.asserted else ', too few cases to judge'}")
        if self.textbook is not None:
            parts.append(f"{self.textbook[0]} {said(self.textbook[1])}")
        parts += [self.spent] if self.spent else []
        parts += [f"{self.cases} cases"] if self.cases else []
        return "; ".join(parts)

    def as_table(self) -> dict[str, Any]:
        """Plain values, as JSON and the workers of xdist have them."""
        return asdict(self)


def figure_from(table: dict[str, Any]) -> Figure:
    """The figure of a plain table, as `as_table` or the JSON of a report has it."""
    own = {f.name: table[f.name] for f in fields(Figure) if f.name in table}
    beside = own.get("textbook")
    return Figure(**(own | {"textbook": None if beside is None else (str(beside[0]), float(beside[1]))}))


def said(value: float) -> str:
    """A number in at most four digits."""
    size = abs(value)
    return f"{value:.1e}" if size and (size < 1e-3 or size >= 1e5) else f"{value:.4g}"


def cpu_beside(
    work: Callable[[], Any], kernel: Callable[[], Any], times: int = 7, clock: Callable[[], float] = time.process_time
) -> tuple[float, float]:
    """CPU seconds of two pieces of work, medians, in turns: a machine that is busy for a while slows both."""
    spent: tuple[list[float], list[float]] = ([], [])
    for _ in range(times):
        for act, into in zip((work, kernel), spent, strict=True):
            begun = clock()
            act()
            into.append(clock() - begun)
    return statistics.median(spent[0]), statistics.median(spent[1])


def transform() -> None:
    """The reference kernel of a machine: an FFT of 2^18 points."""
    np.fft.rfft(_WAVE)


_WAVE = np.random.default_rng(0).standard_normal(1 << 18)
KERNEL, KERNEL_MS = "an FFT of 2^18 points", 3.0  # its name, and its CPU time where the limits in milliseconds were set


def kernel_ms() -> float:
    """CPU time of the reference kernel, median of 7."""
    times = []
    for _ in range(7):
        begun = time.thread_time()
        transform()
        times.append(1e3 * (time.thread_time() - begun))
    return statistics.median(times)


def rms_error(values: Any) -> float:
    """Standard error of the root mean square of independent values (count,): the delta method on their squares."""
    squares = np.abs(np.asarray(values)).ravel() ** 2
    if squares.size < 2 or not squares.any():
        return 0.0
    return float(squares.std(ddof=1) / np.sqrt(squares.size) / (2.0 * np.sqrt(squares.mean())))


def quantile_error(values: Any, part: float) -> float:
    """Standard error of a quantile of independent values (count,), from its binomial order statistics."""
    ordered = np.asarray(values, dtype=float).ravel()
    deviation = math.sqrt(part * (1.0 - part) / ordered.size)
    low, high = np.quantile(ordered, [max(0.0, part - deviation), min(1.0, part + deviation)])
    return float(0.5 * (high - low))


class Figures:
    """What a test calls as `figure`: it records figures and plots, and says how many seeds to take."""

    def __init__(self, section: str, about: str, test: str, quick: bool):
        self.quick = quick
        self.figures: list[Figure] = []
        self.plots: list[dict[str, Any]] = []
        self._section, self._about, self._test = section, about, test
        self._kernel_ms: float | None = None

    def count(self, full: int) -> int:
        """So many seeds, or a twentieth of them in a quick run."""
        return max(2, full // QUICK) if self.quick else full

    def __call__(
        self,
        name: str,
        value: float,
        unit: str = "",
        *,
        at_least: float | None = None,
        at_most: float | None = None,
        slack: float = 0.0,
        textbook: tuple[str, float] | None = None,
        cases: int | None = None,
        share: bool = False,
        error: float | None = None,
        nominal: float | None = None,
        better: str | None = None,
    ) -> None:
        """Record a figure and hold it to its target when the test ends.

        A `share` is percent of `cases` that are independent; `error` is the standard error of anything else that scatters.
        In a quick run figures with `cases` are shown and not judged, but for those that must be nought however often tried.
        """
        if share and not cases:
            raise ValueError(f"{name}: a share needs the number of its cases; give cases=")
        judged = not (self.quick and cases) or (at_most == 0.0 and at_least is None)
        self._record(
            name, value, unit, at_least=at_least, at_most=at_most, slack=slack, textbook=_plain(textbook), cases=cases,
            guard="share" if share else None if error is None else "statistic", asserted=judged,
            error=None if error is None else float(error), nominal=nominal, better=better,
        )  # fmt: skip

    def cost(
        self,
        name: str,
        seconds: float,
        kernel: tuple[str, float],
        *,
        at_most: float | None = None,
        wanted_s: float | None = None,
        textbook: tuple[str, float] | None = None,
        steady: bool = True,
    ) -> None:
        """Record a CPU time as a ratio to a kernel (name, seconds) timed in the same run; `textbook` is in seconds too.

        A wanted time is shown beside it and never asserted: how long a second of a busy machine is, nobody can tell. One that
        is not `steady`, such as the longest of many, is held to its target and not to the baseline.
        """
        beside, one = kernel
        wanted = "" if wanted_s is None else f", wanted {_time(wanted_s)}"
        self._record(
            name, seconds / one if one > 0.0 else math.nan, "×", at_most=at_most,
            guard="ratio" if steady else None, better="lower",
            textbook=None if textbook is None or one <= 0.0 else (textbook[0], float(textbook[1] / one)),
            spent=f"{_time(seconds)} of CPU{wanted}; × is {beside}, {_time(one)}",
        )  # fmt: skip

    def plot(self, title: str, x: str, y: str, series: Sequence[tuple[str, Any, Any]], **how: Any) -> None:
        """Record a plot: `series` of (name, x (count,), y (count,)); see plots.Plot for how it may be drawn."""
        plain = [(n, _numbers(a), _numbers(b)) for n, a, b in series]
        self.plots.append(
            {"section": self._section, "title": title, "x_label": x, "y_label": y, "series": plain, "how": how}
        )

    def take_over(self, path: Path, where: str) -> None:
        """Record the figures that a run of its own wrote to a JSON file, with a word on where."""
        for table in json.loads(path.read_text())["figures"]:
            told = figure_from(table)
            name = f"{told.name}, {where}"
            self.figures.append(replace(told, name=name, section=self._section, test=self._test, about=self._about))

    def failures(self) -> list[str]:
        """A line for each missed figure that is asserted."""
        return [f"missed: {f.line()}" for f in self.figures if f.fails]

    def _record(self, name: str, value: float, unit: str, **more: Any) -> None:
        if any(f.name == name for f in self.figures):
            raise ValueError(f"{name}: recorded twice in a test; give each figure a name of its own")
        if self._kernel_ms is None:
            self._kernel_ms = kernel_ms()
        for key in ("at_least", "at_most", "slack", "nominal"):
            if more.get(key) is not None:
                more[key] = float(more[key])
        finite = float(value) if math.isfinite(value) else None
        self.figures.append(
            Figure(
                self._section, name, finite, unit, kernel_ms=self._kernel_ms, test=self._test, about=self._about, **more
            )
        )


def _plain(textbook: tuple[str, float] | None) -> tuple[str, float] | None:
    return None if textbook is None else (textbook[0], float(textbook[1]))


def _numbers(values: Any) -> list[float | None]:
    """As JSON has them: what is not finite is None and is not drawn."""
    return [float(v) if math.isfinite(v) else None for v in values]


def _time(seconds: float) -> str:
    return f"{said(seconds)} s" if seconds >= 1.0 else f"{said(1e3 * seconds)} ms"
