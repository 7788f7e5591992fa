"""The page of figures: one HTML file without anything from outside, and the same as JSON beside it."""

from __future__ import annotations

import json
import os
from collections.abc import Sequence
from dataclasses import dataclass, field
from html import escape
from pathlib import Path
from typing import Any

from figures.plots import Bar, Plot, bars, lines
from figures.record import MISSED, Figure, said
from stillshaft.ui.theme import THEMES


@dataclass
class Collected:
    """What a run of the benchmarks brought together, from all its workers."""

    machine: dict[str, str] = field(default_factory=dict)
    quick: bool = False
    figures: list[Figure] = field(default_factory=list)
    plots: list[dict[str, Any]] = field(default_factory=list)
    stopped: dict[str, str] = field(default_factory=dict)  # test: why it failed or was skipped
    ended: set[str] = field(default_factory=set)  # tests that ran to their end
    worse: list[str] | None = None  # None: not compared

    def add(self, figures: Sequence[Figure], plots: Sequence[dict[str, Any]]) -> None:
        """Take the figures of a test over; one that was recorded under the same name before is named in `stopped`."""
        known = {f.key for f in self.figures}
        for f in figures:
            if f.key in known:
                self.stopped[f"{f.test}: {f.name}"] = "another test has a figure of the same name; rename one of them"
            else:
                self.figures.append(f)
        self.plots += plots

    def sections(self) -> list[str]:
        """Names of the sections in alphabetical order, whatever worker came first."""
        return sorted({f.section for f in self.figures} | {p["section"] for p in self.plots})

    def counts(self) -> str:
        """How many there are of each kind, in words."""
        told = [f for f in self.figures if f.verdict is not None]
        missed = sum(f.verdict == MISSED and f.asserted for f in told)
        open_ = sum(not f.asserted for f in told)
        parts = [f"{len(self.figures)} figures", f"{len(told) - missed - open_} meet their target", f"{missed} missed"]
        parts += [f"{open_} with too few cases to judge"] if open_ else []
        return ", ".join(parts)


def write(path: Path, collected: Collected) -> Path:
    """Write page and JSON, each whole or not at all; where the JSON is."""
    beside = path.with_suffix(".json")
    for file, text in ((path, html(collected)), (beside, json_text(collected))):
        part = file.with_name(f".{file.name}.part")
        part.write_text(text, encoding="utf-8")
        os.replace(part, file)
    return beside


def json_text(collected: Collected) -> str:
    """All figures with their verdicts, in the order of their names."""
    figures = [
        f.as_table() | {"target": f.target(), "verdict": f.verdict}
        for f in sorted(collected.figures, key=lambda f: f.key)
    ]
    whole = {
        "format": 1, "quick": collected.quick, "machine": collected.machine, "figures": figures,
        "not_measured": collected.stopped, "worse": collected.worse, "plots": collected.plots,
    }  # fmt: skip
    return json.dumps(whole, indent=1, ensure_ascii=False, allow_nan=False) + "\n"


def html(collected: Collected) -> str:
    """The page."""
    out = [
        "<!doctype html>", '<html lang="en"><head><meta charset="utf-8"><title>Stillshaft: figures</title>',
        '<meta name="viewport" content="width=device-width, initial-scale=1">', f"<style>{_style()}</style></head><body>",
        "<h1>Stillshaft: figures</h1>", f"<p>{escape(collected.counts())}.</p>",
    ]  # fmt: skip
    if collected.quick:
        out.append(
            "<p><strong>A quick run:</strong> a twentieth of the seeds; targets of statistics are not judged.</p>"
        )
    out.append("<dl>" + "".join(f"<dt>{escape(k)}</dt><dd>{escape(v)}</dd>" for k, v in collected.machine.items()))
    out.append("</dl>")
    if missed := [f for f in collected.figures if f.fails]:
        out.append(_list("Missed", [f"{f.section}: {f.line()}" for f in missed]))
    if collected.worse is not None:
        out.append(_list("Worse than the baseline", collected.worse or ["nothing"]))
    if collected.stopped:
        out.append(
            _list("Failed or not measured", [f"{test}: {why}" for test, why in sorted(collected.stopped.items())])
        )
    sections = collected.sections()
    out.append("<nav>" + "".join(f'<a href="#s{n}">{escape(s)}</a>' for n, s in enumerate(sections)) + "</nav>")
    if costs := _costs(collected.figures):
        out.append(bars("Costs over their targets, each in units of a kernel timed in the same run", costs))
    for number, section in enumerate(sections):
        here = sorted((f for f in collected.figures if f.section == section), key=lambda f: f.test)
        out.append(f'<section id="s{number}"><h2>{escape(section)}</h2>')
        out += [f"<p>{escape(here[0].about)}</p>"] if here else []
        out += [lines(plot_from(p)) for p in collected.plots if p["section"] == section]
        out += [_table(here)] if here else []
        out.append("</section>")
    return "\n".join([*out, "</body></html>", ""])


def plot_from(table: dict[str, Any]) -> Plot:
    """The plot of a plain table, as Figures.plot made it."""
    how = dict(table["how"])
    if how.get("band") is not None:
        how["band"] = tuple(how["band"])
    return Plot(table["title"], table["x_label"], table["y_label"], table["series"], **how)


def _costs(figures: Sequence[Figure]) -> list[Bar]:
    return [
        Bar(
            f.name, f.value / f.at_most, f.line(), None if f.textbook is None else f.textbook[1] / f.at_most,
        )
        for f in sorted(figures, key=lambda f: f.key)
        if f.spent and f.at_most and f.value
    ]  # fmt: skip


def _table(figures: Sequence[Figure]) -> str:
    heads = ("What", "Value", "Target", "", "Textbook or handbook beside it", "Cases", "Kernel")
    out = [
        '<div class="wide"><table><thead><tr>',
        *(f'<th scope="col">{h}</th>' for h in heads),
        "</tr></thead><tbody>",
    ]
    for f in figures:
        verdict = f.verdict or ""
        look, words = {"met": ("good", "met"), MISSED: ("bad", "missed")}.get(verdict, ("caution", verdict))
        if f.verdict is not None and not f.asserted:
            look, words = "quiet", "too few cases"
        beside = "" if f.textbook is None else f"{f.textbook[0]}: {said(f.textbook[1])} {f.unit}"
        what = escape(f.name) + (f"<small>{escape(f.spent)}</small>" if f.spent else "")
        cells = (what, f"<b>{escape(f.measured())}</b>", escape(f.target()), f'<span class="{look}">{escape(words)}</span>',
                 escape(beside), str(f.cases or ""),
                 f"{said(f.kernel_ms)} ms" if f.kernel_ms is not None else "")  # fmt: skip
        out.append("<tr>" + "".join(f"<td>{c}</td>" for c in cells) + "</tr>")
    return "".join([*out, "</tbody></table></div>"])


def _list(title: str, rows: Sequence[str]) -> str:
    return f"<h2>{escape(title)}</h2><ul>{''.join(f'<li>{escape(r)}</li>' for r in rows)}</ul>"


def _style() -> str:
    """The window's own colours, light and dark; six for lines."""

    def colours(name: str) -> str:
        theme = THEMES[name]
        plain = {"ground": theme.ground, "panel": theme.panel, "text": theme.text, "quiet": theme.quiet, "line": theme.line,
                 "grid": theme.grid, "soft": theme.soft, "good": theme.good, "caution": theme.caution, "bad": theme.bad,
                 "accent": theme.accent}  # fmt: skip
        plain |= {f"c{n}": c for n, c in enumerate((*theme.points, theme.accent, theme.caution))}
        return "".join(f"--{key}:{value};" for key, value in plain.items())

    lines_ = "".join(f".line.c{n}{{stroke:var(--c{n})}}.dot.c{n}{{fill:var(--c{n})}}" for n in range(6))
    return (
        f":root{{color-scheme:light dark;{colours('light')}}}"
        f"@media (prefers-color-scheme:dark){{:root{{{colours('dark')}}}}}"
        "body{font:15px/1.5 system-ui,sans-serif;background:var(--ground);color:var(--text);max-width:1080px;margin:2rem auto;"
        "padding:0 1rem}h1{font-size:1.6rem}h2{font-size:1.2rem;margin-top:2.2rem}a{color:var(--accent)}"
        "nav a{display:inline-block;margin:0 1rem .3rem 0}dl{display:grid;grid-template-columns:max-content 1fr;gap:.1rem 1rem}"
        "dt,small,th,.quiet,.keys{color:var(--quiet)}dd{margin:0}small{display:block}"
        ".wide{overflow-x:auto}table{border-collapse:collapse;width:100%;background:var(--panel)}"
        "th,td{text-align:left;vertical-align:top;padding:.35rem .6rem;border-bottom:1px solid var(--line)}"
        "td:last-child{white-space:nowrap}td:nth-child(2){min-width:7rem}.good{color:var(--good)}.bad{color:var(--bad);font-weight:bold}"
        ".caution{color:var(--caution)}figure{margin:1rem 0;background:var(--panel);padding:.8rem;max-width:720px;"
        "border:1px solid var(--line)}figcaption{font-weight:600}svg{width:100%;height:auto}svg text{fill:var(--quiet);"
        "font-size:12px}svg text.small{font-size:11px}.grid{stroke:var(--grid);fill:none}.line{fill:none;stroke-width:2}"
        ".band{fill:var(--soft)}.bar{fill:var(--accent)}.bar.over{fill:var(--bad)}"
        ".target{stroke:var(--text);stroke-dasharray:4 3;fill:none}.keys{font-size:13px;margin:.3rem 0 0}"
        f".keys span{{display:inline-block;margin-right:1.2rem}}svg.key{{width:30px;height:8px;margin-right:.4rem}}{lines_}"
    )
