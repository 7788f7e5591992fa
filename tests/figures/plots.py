"""Plots of the page of figures as plain SVG; colours come from the page's style, so that light and dark both hold."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from html import escape

from figures.record import said

WIDTH, HEIGHT = 680.0, 320.0
_LEFT, _RIGHT, _TOP, _BOTTOM = 62.0, 18.0, 16.0, 46.0
_DASHES = ("", "6 3", "2 3", "9 3 2 3", "1 4", "12 4")
MARKERS = 40  # points of a line that are marked one by one; a longer line is drawn alone
_BAR, _NAMES = 24.0, 300.0


@dataclass(frozen=True)
class Plot:
    """Lines over one pair of axes: series of (name, x (count,), y (count,)); `band` is a wanted range of y.

    None stands where there is no number, and is not drawn.
    """

    title: str
    x_label: str
    y_label: str
    series: Sequence[tuple[str, Sequence[float | None], Sequence[float | None]]]
    band: tuple[float, float] | None = None
    x_log: bool = False
    y_log: bool = False
    y_from: float | None = None


@dataclass(frozen=True)
class Bar:
    """A value over its target, and the textbook's over the same target; each with its words."""

    name: str
    value: float
    words: str
    textbook: float | None = None


def lines(plot: Plot) -> str:
    """The plot as an SVG element with its legend below."""
    drawn = [(name, _finite(x, y, plot)) for name, x, y in plot.series]
    xs = [p[0] for _, points in drawn for p in points]
    ys = [p[1] for _, points in drawn for p in points] + list(plot.band or ())
    ys += [] if plot.y_from is None else [plot.y_from]
    if not xs:
        return f"<p>{escape(plot.title)}: nothing to draw</p>"
    across, up = _axis(xs, plot.x_log), _axis(ys, plot.y_log)

    def at(x: float, y: float) -> tuple[float, float]:
        return (
            _LEFT + across.part(x) * (WIDTH - _LEFT - _RIGHT),
            HEIGHT - _BOTTOM - up.part(y) * (HEIGHT - _TOP - _BOTTOM),
        )

    out = [f'<svg viewBox="0 0 {WIDTH:.0f} {HEIGHT:.0f}" role="img" aria-label="{escape(plot.title, quote=True)}">']
    if plot.band is not None:
        (left, top), (right, bottom) = at(across.low, max(plot.band)), at(across.high, min(plot.band))
        out.append(
            f'<rect class="band" x="{left:.1f}" y="{top:.1f}" width="{right - left:.1f}" height="{bottom - top:.1f}"/>'
        )
    for tick in up.ticks:
        x, y = at(across.low, tick)
        out.append(f'<path class="grid" d="M{x:.1f} {y:.1f}H{WIDTH - _RIGHT:.1f}"/>')
        out.append(f'<text x="{x - 8:.1f}" y="{y + 4:.1f}" text-anchor="end">{said(tick)}</text>')
    for tick in across.ticks:
        x, y = at(tick, up.low)
        out.append(f'<path class="grid" d="M{x:.1f} {y:.1f}v5"/>')
        out.append(f'<text x="{x:.1f}" y="{y + 18:.1f}" text-anchor="middle">{said(tick)}</text>')
    for number, (name, points) in enumerate(drawn):
        if not points:
            continue
        placed = [at(x, y) for x, y in points]
        path = "M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in placed)
        look = f'class="line c{number % 6}" stroke-dasharray="{_DASHES[number % 6]}"'
        out.append(f'<path {look} d="{path}"><title>{escape(name)}</title></path>')
        if len(placed) <= MARKERS:
            out += [
                f'<circle class="dot c{number % 6}" cx="{x:.1f}" cy="{y:.1f}" r="3">'
                f"<title>{escape(name)}: {said(px)}, {said(py)}</title></circle>"
                for (x, y), (px, py) in zip(placed, points, strict=True)
            ]
    middle = 0.5 * (_TOP + HEIGHT - _BOTTOM)
    out.append(
        f'<text x="{0.5 * (_LEFT + WIDTH - _RIGHT):.0f}" y="{HEIGHT - 8:.0f}" text-anchor="middle">'
        f"{escape(plot.x_label)}</text>"
    )
    out.append(
        f'<text transform="translate(14 {middle:.0f}) rotate(-90)" text-anchor="middle">{escape(plot.y_label)}</text>'
    )
    out.append("</svg>")
    keys = "".join(
        f'<span><svg class="key" viewBox="0 0 30 8"><path class="line c{n % 6}" stroke-dasharray="{_DASHES[n % 6]}" '
        f'd="M0 4H30"/></svg>{escape(name)}</span>'
        for n, (name, _) in enumerate(drawn)
    )
    wanted = "" if plot.band is None else f"<span>shaded: wanted, {said(plot.band[0])} to {said(plot.band[1])}</span>"
    return f'<figure><figcaption>{escape(plot.title)}</figcaption>{"".join(out)}<p class="keys">{keys}{wanted}</p></figure>'


def bars(title: str, rows: Sequence[Bar]) -> str:
    """Bars over their targets on a logarithmic scale; the line at 1 is the target."""
    values = [r.value for r in rows] + [r.textbook for r in rows if r.textbook] + [1.0]
    values = [v for v in values if v > 0.0]
    low = 10.0 ** math.floor(math.log10(min(values)) - 0.1)
    high = 10.0 ** math.ceil(math.log10(max(values)) + 0.1)

    def at(value: float) -> float:
        part = math.log10(max(value, low) / low) / math.log10(high / low)
        return _NAMES + part * (WIDTH - _NAMES - 10.0)

    height = 30.0 + _BAR * len(rows)
    out = [f'<svg viewBox="0 0 {WIDTH:.0f} {height:.0f}" role="img" aria-label="{escape(title, quote=True)}">']
    for number, row in enumerate(rows):
        y = 6.0 + _BAR * number
        name = row.name if len(row.name) <= 50 else f"{row.name[:48]}…"
        out.append(
            f'<text class="small" x="{_NAMES - 8:.0f}" y="{y + 14:.0f}" text-anchor="end">{escape(name)}'
            f"<title>{escape(row.name)}</title></text>"
        )
        out.append(
            f'<rect class="{"bar" if row.value <= 1.0 else "bar over"}" x="{_NAMES:.0f}" y="{y + 3:.0f}" '
            f'width="{at(row.value) - _NAMES:.1f}" height="14"><title>{escape(row.name)}: {escape(row.words)}</title></rect>'
        )
        if row.textbook:
            out.append(
                f'<path class="line c1" d="M{at(row.textbook):.1f} {y + 1:.0f}v18"><title>the textbook: '
                f"{said(row.textbook)} of the target</title></path>"
            )
    out.append(f'<path class="target" d="M{at(1.0):.1f} 2V{height - 24:.0f}"/>')
    decades = range(round(math.log10(low)), round(math.log10(high)) + 1)
    out += [
        f'<text class="small" x="{at(10.0**d):.1f}" y="{height - 6:.0f}" text-anchor="middle">{said(10.0**d)}</text>'
        for d in decades
    ]
    out.append("</svg>")
    note = "Dashed line: the target. Mark: the textbook's way. A bar beyond the target is drawn in the warning colour."
    return f'<figure><figcaption>{escape(title)}</figcaption>{"".join(out)}<p class="keys">{note}</p></figure>'


@dataclass(frozen=True)
class _Axis:
    low: float
    high: float
    ticks: tuple[float, ...]
    log: bool

    def part(self, value: float) -> float:
        """Where a value lies between the ends, 0 to 1."""
        if self.log:
            return math.log(value / self.low) / math.log(self.high / self.low)
        return (value - self.low) / (self.high - self.low)


def _axis(values: Sequence[float], log: bool) -> _Axis:
    low, high = min(values), max(values)
    if log:
        steps = [
            m * 10.0**d
            for d in range(math.floor(math.log10(low)) - 1, math.ceil(math.log10(high)) + 2)
            for m in (1, 2, 5)
        ]
        low = max(t for t in steps if t <= low * (1.0 + 1e-9))
        high = min(t for t in steps if t > low and t >= high * (1.0 - 1e-9))
        inside = [t for t in steps if low <= t <= high]
        tens = [t for t in inside if abs(math.log10(t) - round(math.log10(t))) < 1e-9]
        return _Axis(low, high, tuple(inside if len(inside) <= 8 or len(tens) < 3 else tens), True)
    if low == high:
        low, high = low - 0.5 * (abs(low) or 1.0), high + 0.5 * (abs(high) or 1.0)
    size = 10.0 ** math.floor(math.log10((high - low) / 4.0))
    step = next(m * size for m in (1.0, 2.0, 2.5, 5.0, 10.0) if (high - low) / (m * size) <= 6.0)
    first, last = math.floor(low / step + 1e-9), math.ceil(high / step - 1e-9)
    return _Axis(first * step, last * step, tuple(round(k * step, 12) for k in range(first, last + 1)), False)


def _finite(xs: Sequence[float | None], ys: Sequence[float | None], plot: Plot) -> list[tuple[float, float]]:
    return [
        (x, y)
        for x, y in zip(xs, ys, strict=True)
        if x is not None and y is not None and (x > 0.0 or not plot.x_log) and (y > 0.0 or not plot.y_log)
    ]
