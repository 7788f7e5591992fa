"""Plots as SVG or PDF files, drawn without Qt: panels one above the other, lines with their bands, and marks."""

from __future__ import annotations

import math
import os
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import sweep as sweeps
from stillshaft.dsp import vectors
from stillshaft.dsp.units import InputError
from stillshaft.ui import theme, typeface

if TYPE_CHECKING:
    from stillshaft.dsp.candidates import Candidate
    from stillshaft.dsp.content import Content
    from stillshaft.dsp.sweep import Sweep
    from stillshaft.solver.correction import Solution
    from stillshaft.solver.runs import Runs

Real = NDArray[np.float64]

_WIDTH, _PANEL_HEIGHT = 760.0, 210.0
_POLAR_HEIGHT = 360.0
_LEFT, _RIGHT, _TOP, _BOTTOM, _BETWEEN = 70.0, 24.0, 46.0, 44.0, 40.0
_THEME = theme.THEMES["light"]
_INK, _QUIET, _GRID = _THEME.text, _THEME.quiet, _THEME.line
# a dash pattern for each colour: lines stay apart without it
_DASHES: tuple[tuple[float, ...] | None, ...] = (None, (6.0, 2.0), (2.0, 2.0), (8.0, 2.0, 2.0, 2.0))
_LINES = tuple(zip(_THEME.points, _DASHES, strict=True))
_FONT, _BOLD = "Helvetica", "Helvetica-Bold"
_SIZE = 9.0
SUFFIXES = (".svg", ".pdf")


class DrawingError(InputError):
    """A plot that cannot be written: the message names the file and says what to do."""


@dataclass(frozen=True)
class Line:
    """Values y over x, both (moments,); `half` (moments,) is the half width of a band around them."""

    label: str
    x: Real
    y: Real
    half: Real | None = None


@dataclass(frozen=True)
class Mark:
    """A place on the x axis with a word."""

    x: float
    label: str


@dataclass(frozen=True)
class Panel:
    """One pair of axes; `y_step` fixes the distance of the ticks, such as 90 for degrees.

    `decades` draws y on a logarithmic scale, so many powers of ten down from the highest value.
    """

    title: str
    x_label: str
    y_label: str
    lines: Sequence[Line]
    marks: Sequence[Mark] = ()
    from_zero: bool = False
    y_step: float | None = None
    decades: int | None = None


@dataclass(frozen=True)
class Arrow:
    """A vector from the middle; `within` is the radius of its 95 % circle."""

    label: str
    z: complex
    within: float | None = None


@dataclass(frozen=True)
class Polar:
    """Vectors in a plane, such as those of one point, or masses."""

    title: str
    note: str
    arrows: Sequence[Arrow]


def check_path(path: Path) -> None:
    """Raise DrawingError for a name that says neither SVG nor PDF, before any work is done."""
    if path.suffix.lower() not in SUFFIXES:
        raise DrawingError(f"{path}: plots are written as {' or '.join(SUFFIXES)}; end the name so")


def write(path: Path, title: str, panels: Sequence[Panel]) -> None:
    """Write the panels, one above the other, whole or not at all. Raises DrawingError."""
    height = _TOP + len(panels) * (_PANEL_HEIGHT + _BETWEEN) + _BOTTOM - _BETWEEN + 10.0
    drawing = _sheet(title, height)
    for number, panel in enumerate(panels):
        _draw_panel(drawing, panel, height - _TOP - (number + 1) * _PANEL_HEIGHT - number * _BETWEEN)
    _save(drawing, path)


def write_polars(path: Path, title: str, polars: Sequence[Polar]) -> None:
    """Write the polar pictures, two side by side, whole or not at all. Raises DrawingError."""
    rows = -(-len(polars) // 2)
    height = _TOP + rows * _POLAR_HEIGHT + 10.0
    drawing = _sheet(title, height)
    for number, polar in enumerate(polars):
        row, column = divmod(number, 2)
        middle_x = _WIDTH * (0.25 + 0.5 * column)
        _draw_polar(drawing, polar, middle_x, height - _TOP - row * _POLAR_HEIGHT)
    _save(drawing, path)


def _sheet(title: str, height: float) -> Any:
    from reportlab.graphics.shapes import Drawing, Rect, String

    drawing = Drawing(_WIDTH, height)
    drawing.add(Rect(0, 0, _WIDTH, height, fillColor=_colour(_THEME.panel), strokeColor=None))
    drawing.add(String(_LEFT, height - 24, title, fontName=_BOLD, fontSize=_SIZE + 3, fillColor=_colour(_INK)))
    return drawing


def _save(drawing: Any, path: Path) -> None:
    from reportlab.graphics import renderPDF, renderSVG

    check_path(path)
    renderer = renderSVG
    if path.suffix.lower() == ".pdf":
        renderer = renderPDF
        _embed_typeface(drawing)
    part = path.with_name(f".{path.name}.part")
    try:
        renderer.drawToFile(drawing, str(part))
        os.replace(part, path)
    except OSError as error:
        raise DrawingError(f"{path}: cannot be written: {error.strerror}; choose another place") from None
    finally:
        part.unlink(missing_ok=True)


def _embed_typeface(drawing: Any) -> None:
    """Set the words in the bundled typeface: the one that every reader of PDF has ends with Latin letters."""
    from reportlab.graphics.shapes import String

    for shape in drawing.contents:
        if isinstance(shape, String):
            strong = shape.fontName == _BOLD
            shape.text = typeface.bundled(shape.text, strong=strong)
            shape.fontName = typeface.STRONG if strong else typeface.REGULAR


def _colour(text: str) -> Any:
    from reportlab.lib.colors import HexColor

    return HexColor(text)


def _tint(text: str) -> Any:
    """The colour thinned to a band's; mixed here, because not every renderer knows opacity."""
    from reportlab.lib.colors import linearlyInterpolatedColor

    return linearlyInterpolatedColor(_colour(_THEME.panel), _colour(text), 0.0, 1.0, 0.22)


def ticks(low: float, high: float, wanted: int = 6) -> list[float]:
    """Round numbers, 1, 2 or 5 times a power of ten apart, from low to high."""
    rough = (high - low) / wanted
    power = 10.0 ** math.floor(math.log10(rough))
    step = next(s * power for s in (1.0, 2.0, 5.0, 10.0) if s * power >= rough * 0.999)
    return _steps(low, high, step)


def _steps(low: float, high: float, step: float) -> list[float]:
    first, last = math.ceil(low / step - 1e-9), math.floor(high / step + 1e-9)
    return [step * i for i in range(first, last + 1)]


def _range(values: Sequence[Real], from_zero: bool) -> tuple[float, float]:
    low = min((float(np.min(v)) for v in values), default=0.0)
    high = max((float(np.max(v)) for v in values), default=1.0)
    if from_zero:
        low = 0.0
    if not high > low:
        low, high = low - 0.5, high + 0.5
    room = 0.05 * (high - low)
    return (low if from_zero else low - room), high + room


def _draw_panel(drawing: Any, panel: Panel, bottom: float) -> None:
    from reportlab.graphics.shapes import Line as Stroke
    from reportlab.graphics.shapes import Polygon, PolyLine, Rect, String

    width, height = _WIDTH - _LEFT - _RIGHT, _PANEL_HEIGHT - 34.0
    x_low = min(float(line.x.min()) for line in panel.lines)
    x_high = max(float(line.x.max()) for line in panel.lines)
    edges = [line.y for line in panel.lines]
    y_low, y_high = _range(edges, panel.from_zero)
    if panel.y_step is not None:
        y_low, y_high = (f(v / panel.y_step) * panel.y_step for f, v in ((math.floor, y_low), (math.ceil, y_high)))

    if panel.decades is not None:
        top = max(float(e.max()) for e in edges) or 1.0
        y_high = math.log10(top) + 0.05 * panel.decades
        y_low = y_high - panel.decades

    def place(x: Any, y: Any) -> Any:
        return _LEFT + (x - x_low) / (x_high - x_low) * width, bottom + (y - y_low) / (y_high - y_low) * height

    def scaled(y: Real) -> Real:
        y = y if panel.decades is None else np.log10(np.maximum(y, 1e-300))
        return np.clip(y, y_low, y_high)

    def text(x: float, y: float, words: str, anchor: str = "start", colour: str = _INK, bold: bool = False) -> None:
        drawing.add(
            String(
                x, y, words, fontName=_BOLD if bold else _FONT, fontSize=_SIZE, textAnchor=anchor,
                fillColor=_colour(colour),
            )
        )  # fmt: skip

    step = panel.y_step if panel.decades is None else 1.0
    for value in ticks(y_low, y_high, 5) if step is None else _steps(y_low, y_high, step):
        _, y = place(x_low, value)
        drawing.add(Stroke(_LEFT, y, _LEFT + width, y, strokeColor=_colour(_GRID), strokeWidth=0.6))
        shown = value if panel.decades is None else 10.0**value
        text(_LEFT - 6, y - 3, f"{shown:g}" if abs(shown) > 1e-12 else "0", "end", _QUIET)
    for value in ticks(x_low, x_high, 8):
        x, _ = place(value, y_low)
        drawing.add(Stroke(x, bottom, x, bottom - 4, strokeColor=_colour(_QUIET), strokeWidth=0.8))
        text(x, bottom - 14, f"{value:g}", "middle", _QUIET)
    drawing.add(Rect(_LEFT, bottom, width, height, fillColor=None, strokeColor=_colour(_QUIET), strokeWidth=0.8))
    text(_LEFT + width, bottom - 26, panel.x_label, "end", _QUIET)
    text(_LEFT, bottom + height + 18, panel.title, bold=True)
    text(_LEFT, bottom + height + 6, panel.y_label, colour=_QUIET)
    _draw_marks(drawing, panel, place, bottom, height, text)
    for number, line in enumerate(panel.lines):
        colour, _ = _LINES[number % len(_LINES)]
        if line.half is not None:
            x, above = place(line.x, scaled(line.y + line.half))
            _, below = place(line.x, scaled(line.y - line.half))
            around = np.column_stack([np.concatenate([x, x[::-1]]), np.concatenate([above, below[::-1]])])
            drawing.add(Polygon(around.ravel().round(2).tolist(), fillColor=_tint(colour), strokeColor=None))
    for number, line in enumerate(panel.lines):
        colour, dash = _LINES[number % len(_LINES)]
        x, y = place(line.x, scaled(line.y))
        points = np.column_stack([x, y]).ravel().round(2).tolist()
        drawing.add(PolyLine(points, strokeColor=_colour(colour), strokeWidth=1.2, strokeDashArray=dash))
    if len(panel.lines) > 1:
        _draw_key(drawing, panel, bottom + height + 9, text)


def _draw_polar(drawing: Any, polar: Polar, x: float, top: float) -> None:
    """Circles, spokes, and the vectors from the middle; 0° is up, angles go counter-clockwise on paper."""
    from reportlab.graphics.shapes import Circle, String
    from reportlab.graphics.shapes import Line as Stroke

    radius, y = 0.5 * _POLAR_HEIGHT - 62.0, top - 0.5 * _POLAR_HEIGHT
    largest = max((abs(a.z) + (a.within or 0.0) for a in polar.arrows), default=0.0) or 1.0
    rings = [t for t in ticks(0.0, largest, 4) if t > 0.0] or [largest]
    outer = max(rings[-1], largest)

    def text(
        at_x: float, at_y: float, words: str, anchor: str = "middle", colour: str = _QUIET, bold: bool = False
    ) -> None:
        font = _BOLD if bold else _FONT
        drawing.add(
            String(at_x, at_y, words, fontName=font, fontSize=_SIZE, textAnchor=anchor, fillColor=_colour(colour))
        )

    def place(z: complex) -> tuple[float, float]:
        return x - radius * z.imag / outer, y + radius * z.real / outer

    text(x, top - 14, polar.title, colour=_INK, bold=True)
    text(x, top - 26, polar.note)
    for ring in rings:
        drawing.add(Circle(x, y, radius * ring / outer, fillColor=None, strokeColor=_colour(_GRID), strokeWidth=0.7))
        text(x + 3, y - radius * ring / outer + 2, f"{ring:g}", "start")
    for degrees in range(0, 360, 30):
        turn = complex(math.cos(math.radians(degrees)), math.sin(math.radians(degrees)))
        drawing.add(Stroke(x, y, *place(outer * turn), strokeColor=_colour(_GRID), strokeWidth=0.5))
        if degrees % 90 == 0:
            end_x, end_y = place(1.09 * outer * turn)
            text(end_x, end_y - 3, f"{degrees}°")
    for number, arrow in enumerate(polar.arrows):
        colour, dash = _LINES[number % len(_LINES)]
        end_x, end_y = place(arrow.z)
        if arrow.within is not None:
            drawing.add(Circle(end_x, end_y, radius * arrow.within / outer, fillColor=_tint(colour), strokeColor=None))
        drawing.add(Stroke(x, y, end_x, end_y, strokeColor=_colour(colour), strokeWidth=1.6, strokeDashArray=dash))
        drawing.add(Circle(end_x, end_y, 3.0, fillColor=_colour(colour), strokeColor=None))
        key_y = top - _POLAR_HEIGHT + 22 - 11 * (number // 2)
        key_x = x - 150 + 160 * (number % 2)
        drawing.add(Stroke(key_x, key_y + 3, key_x + 20, key_y + 3, strokeColor=_colour(colour), strokeDashArray=dash))
        text(key_x + 25, key_y, arrow.label, "start", _INK)


def _draw_key(drawing: Any, panel: Panel, y: float, text: Any) -> None:
    from reportlab.graphics.shapes import Line as Stroke

    at = _WIDTH - _RIGHT
    for number in reversed(range(len(panel.lines))):
        colour, dash = _LINES[number % len(_LINES)]
        label = panel.lines[number].label
        at -= typeface.width(label, _SIZE)
        text(at, y - 3, label)
        drawing.add(Stroke(at - 26, y, at - 4, y, strokeColor=_colour(colour), strokeWidth=1.6, strokeDashArray=dash))
        at -= 44


def _draw_marks(drawing: Any, panel: Panel, place: Any, bottom: float, height: float, text: Any) -> None:
    """Dashed lines with their words at the top; words that would meet go lower."""
    from reportlab.graphics.shapes import Line as Stroke

    ends = [-math.inf] * 4  # where the words of each row end
    for mark in sorted(panel.marks, key=lambda m: m.x):
        x, _ = place(mark.x, 0.0)
        if not _LEFT <= x <= _WIDTH - _RIGHT:
            continue
        drawing.add(
            Stroke(x, bottom, x, bottom + height, strokeColor=_colour(_QUIET), strokeWidth=0.7, strokeDashArray=(3, 3))
        )
        size = typeface.width(mark.label, _SIZE)
        begin = min(x + 3, _WIDTH - _RIGHT - size - 2)
        row = next((r for r, end in enumerate(ends) if begin > end + 4), None)
        if row is not None:
            ends[row] = begin + size
            text(begin, bottom + height - 11 - 11 * row, mark.label, colour=_QUIET)


def sweep_panels(sweep: Sweep) -> list[Panel]:
    """Amplitude and phase against speed, all points and orders, with resonances and running speed marked."""
    marks = [Mark(sweep.running_rpm, f"running {sweep.running_rpm:.0f}")]
    for point in sweep.points:
        for r in point.resonances:
            if not any(abs(m.x / r.rpm.value - 1.0) < 0.01 for m in marks[1:]):
                marks.append(Mark(r.rpm.value, f"resonance {r.rpm.value:.0f}"))
    amplitudes, phases = [], []
    for point in sweep.points:
        rising = np.argsort(point.speeds_rpm)
        label = point.name if point.order == 1.0 else f"{point.name} {point.order:g}x"
        half, phase_half = sweeps.curve_half_widths(point)
        x = point.speeds_rpm[rising]
        amplitudes.append(Line(label, x, np.abs(point.z)[rising], half[rising]))
        known = [i for i in rising.tolist() if phase_half[i] is not None]
        if len(known) > 1:
            phase = np.rad2deg(np.unwrap(np.angle(point.z[known])))
            phase -= 360.0 * math.floor(float(np.median(phase)) / 360.0)
            halves = np.array([phase_half[i] for i in known], dtype=np.float64)
            phases.append(Line(label, point.speeds_rpm[known], phase, halves))
    panels = [Panel("Amplitude", "r/min", sweep.points[0].unit, amplitudes, marks, from_zero=True)]
    if phases:
        panels.append(Panel("Phase", "r/min", "lag, degrees", phases, marks, y_step=90.0))
    return panels


def spectrum_panels(content: Content, candidates: Sequence[Candidate] = ()) -> list[Panel]:
    """A spectrum for each point with orders and candidates marked, then the waveform over a revolution."""
    running_hz = content.speed_rpm / 60.0
    marks = [Mark(h * running_hz, f"{h}x") for h in range(1, 6)]
    marks += [Mark(c.rpm / 60.0, c.name) for c in candidates]
    panels = [
        Panel(p.name, "Hz", content.unit, [Line(p.name, content.frequency_hz, p.amplitude)], marks, decades=4)
        for p in content.points
    ]
    if content.waveform is not None:
        degrees = np.rad2deg(content.waveform.angle_rad)
        lines = [
            Line(p.name, degrees, content.waveform.waveform[:, i], content.waveform.deviation[:, i])
            for i, p in enumerate(content.points)
        ]
        title = f"Waveform over a revolution, mean and standard deviation of {content.waveform.spans}"
        panels.append(Panel(title, "degrees from the pulse", content.waveform_unit, lines))
    return panels


def solution_polars(runs: Runs, solution: Solution) -> list[Polar]:
    """The vectors of each point, run by run, with what is expected, and the corrections."""
    polars = []
    for expected in solution.predicted:
        m = runs.points.index(expected.point)
        here = [r for r in runs.runs if abs(r.speed_rpm / expected.speed_rpm - 1.0) <= runs.speed_tolerance]
        arrows = [Arrow(r.name, complex(r.vectors[m])) for r in here[-5:]]
        z = vectors.vector(expected.amplitude, expected.phase_deg)
        arrows.append(Arrow("expected", z, expected.amplitude_upper95 - expected.amplitude))
        note = f"{expected.unit} at {expected.speed_rpm:.0f} r/min, lag from the pulse"
        polars.append(Polar(expected.point, note, arrows))
    masses = [
        Arrow(f"{c.plane} {c.mass:.3g} {c.unit}", vectors.vector(c.mass, c.angle_deg), c.mass_ci95)
        for c in solution.corrections
    ]
    note = f"{solution.corrections[0].unit}, against rotation from the mark"
    return [*polars, Polar("corrections, trial masses off", note, masses)]
