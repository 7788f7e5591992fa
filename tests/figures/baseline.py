"""The stored baseline, and what got worse against it by more than chance or the machine explains."""

from __future__ import annotations

import json
import math
import os
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from figures.record import MISSED, Figure, said

PATH = Path(__file__).parents[1] / "figures_baseline.json"
RATIO = 1.5  # a cost may grow by this before it is called worse
CHANCE = 0.001  # a statistic is called worse where chance explains it less often than this, one side
DEVIATIONS = 3.0902  # the same in standard deviations of the normal distribution
_KEPT = ("value", "unit", "cases", "guard", "error", "kernel_ms", "test")


class BaselineError(ValueError):
    """A baseline that cannot be read."""


def read(path: Path) -> dict[str, dict[str, Any]]:
    """Figures of the baseline by key; empty where there is no file. Raises BaselineError."""
    try:
        found = json.loads(path.read_text())
    except FileNotFoundError:
        return {}
    except ValueError as error:
        raise BaselineError(f"{path}: is no JSON file ({error}); write it anew with --new-baseline") from None
    if not isinstance(found, dict) or found.get("format") != 1 or not isinstance(found.get("figures"), dict):
        raise BaselineError(f"{path}: is no baseline of figures, format 1; write it anew with --new-baseline")
    return dict(found["figures"])


def write(path: Path, figures: Iterable[Figure], whole: set[str]) -> int:
    """Put what was measured into the baseline and leave the rest as it is; how many were put.

    A missed figure and one that cannot be compared are no measure for later ones and are left out. What a test of `whole`
    (names of tests that ran to their end) no longer measures goes.
    """
    figures = list(figures)
    kept = {k: f for k, f in read(path).items() if f.get("test") not in whole}
    fit = {f.key: f for f in figures if f.guard and f.value is not None and f.verdict != MISSED}
    for f in figures:
        kept.pop(f.key, None)
    kept |= {key: {name: getattr(f, name) for name in _KEPT} for key, f in fit.items()}
    part = path.with_name(f".{path.name}.part")
    part.write_text(
        json.dumps({"format": 1, "figures": dict(sorted(kept.items()))}, indent=1, ensure_ascii=False) + "\n"
    )
    os.replace(part, path)
    return len(fit)


def compared(baseline: dict[str, dict[str, Any]], figures: Iterable[Figure]) -> tuple[int, list[str]]:
    """How many figures could be compared, and a line for each that got worse."""
    held = [
        (f, baseline[f.key]) for f in figures if f.guard and f.key in baseline and baseline[f.key]["guard"] == f.guard
    ]
    return len(held), [line for f, old in held if (line := worse(old, f)) is not None]


def worse(old: dict[str, Any], new: Figure) -> str | None:
    """One line where a figure is worse than its baseline by more than its margin, else None.

    Shares by Fisher's exact test of the two counts, other statistics by their standard errors, costs by a factor of 1.5.
    What has a target on both sides is worse the farther it is from its nominal value, the middle if none is given.
    """
    before = float(old["value"])
    if new.value is None:
        return f"{new.key} got worse: not a number, {said(before)} {new.unit} in the baseline"
    nominal = new.nominal
    if nominal is None and new.at_least is not None and new.at_most is not None:
        nominal = 0.5 * (new.at_least + new.at_most)
    if nominal is not None:  # the baseline as far from the nominal value, on the side of the new figure
        up = new.value > nominal
        before = nominal + (1.0 if up else -1.0) * abs(before - nominal)
    elif new.better is not None:
        up = new.better == "lower"
    elif new.at_most is not None or new.at_least is not None:
        up = new.at_most is not None
    else:
        return None
    if (new.value <= before) if up else (new.value >= before):
        return None
    if new.guard == "ratio":
        if new.value <= RATIO * before:
            return None
        margin = f"more than {said(RATIO)} times"
    elif new.guard == "share":
        if _by_chance(before, int(old["cases"]), new.value, int(new.cases or 1), up) >= CHANCE:
            return None
        margin = f"{old['cases']} and {new.cases} cases explain that less than once in {1 / CHANCE:.0f}"
    else:
        allowed = DEVIATIONS * math.hypot(float(old["error"]), float(new.error or 0.0))
        if abs(new.value - before) <= allowed:
            return None
        margin = f"chance explains ± {said(allowed)}"
    return f"{new.key} got worse: {new.measured()}, {said(float(old['value']))} in the baseline; {margin}"


def _by_chance(before: float, cases: int, now: float, cases_now: int, up: bool) -> float:
    """Probability of a share that far up (or down) if both were of one kind; shares in percent."""
    from scipy.stats import fisher_exact

    was = min(cases, max(0, round(0.01 * before * cases)))
    has = min(cases_now, max(0, round(0.01 * now * cases_now)))
    table = [[has, cases_now - has], [was, cases - was]]
    return float(fisher_exact(table, alternative="greater" if up else "less").pvalue)
