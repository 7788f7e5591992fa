"""Curves over straight axes: phase ribbon, waveform, spectrum, run-up, and before and after."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from PySide6 import QtCore, QtGui
from stillshaft.ui.desktop import words as language
from stillshaft.ui.desktop.canvas import Graph, Picture, Polyline, Real, columns, draw_marker, round_up, settled
from stillshaft.ui.desktop.figures import Bar, RibbonPoint, Spectrum, SweepCurve, Waveform
from stillshaft.ui.report_words import figure, with_half

_LONGEST_SHOWN_S = 60.0  # of the ribbon: then it moves along
_LEAST_SPAN_DEG = 2.0
_DECADES = 4.0
_BAR_EMS = 6.5  # heights of text that a point's two bars need
_ORDERS = 10


class _AboutZero(Graph):
    """Curves of the points about a zero line, with a key of their names."""

    _names: tuple[str, ...] = ()

    def draw_backdrop(self, painter: QtGui.QPainter) -> None:
        """Axes, the zero line, and the key."""
        super().draw_backdrop(painter)
        if self.bare:
            return
        frame = self.frame_now()
        zero = float(frame.y(np.array(0.0)))
        painter.setPen(QtGui.QPen(QtGui.QColor(self.theme.quiet), 1.0))
        painter.drawLine(QtCore.QPointF(frame.area.left(), zero), QtCore.QPointF(frame.area.right(), zero))
        self.key(painter, self._names)


class PhaseRibbon(_AboutZero):
    """Phase of each point against time as its departure from the mean, with the fitted beat or drift."""

    x_title, y_title = "time, s", "phase − mean, °"

    def __init__(self) -> None:
        super().__init__("Phase ribbon", (14.0, 8.0))
        self.bare = True
        self._points: tuple[RibbonPoint, ...] = ()
        self._lines: list[tuple[Polyline, Polyline]] = []
        self._span = _LEAST_SPAN_DEG
        self._end_s = 10.0
        self.set_ranges(0.0, 10.0, -_LEAST_SPAN_DEG, _LEAST_SPAN_DEG)

    def show_ribbon(self, points: Sequence[RibbonPoint]) -> None:
        """Draw these; none: nothing."""
        self._points = tuple(points)
        self.set_bare(not self._points)
        while len(self._lines) < len(self._points):
            self._lines.append((Polyline(), Polyline()))
        last = max((float(p.times_s[-1]) for p in points if p.times_s.size), default=0.0)
        self._end_s = 10.0 if not last else max(10.0, 10.0 * math.ceil(last / 10.0))
        begin = max(0.0, self._end_s - _LONGEST_SHOWN_S)
        swing = max(
            (float(np.abs(p.phase_deg[p.times_s >= begin]).max(initial=0.0)) for p in points), default=self._span
        )
        self._span = max(_LEAST_SPAN_DEG, min(180.0, settled(swing, self._span)))
        names = tuple(p.name for p in points)
        if names != self._names:
            self._names = names
            self.renew()
        self.set_ranges(begin, self._end_s, -self._span, self._span)
        said = [
            f"{p.name}: {p.words}, within {p.phase_deg.min():+.1f} to {p.phase_deg.max():+.1f} degrees of its mean"
            for p in points
            if p.phase_deg.size
        ]
        self.summarise("; ".join(said) or "no phase yet")
        self.update()

    def draw(self, painter: QtGui.QPainter) -> None:
        """Fitted curves as broad bands behind, phases in front."""
        frame = self.frame_now()
        painter.setClipRect(frame.area)
        painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
        for number, point in enumerate(self._points):
            if point.fit_times_s.size:
                broad = QtGui.QColor(self.point_colour(number))
                broad.setAlpha(90)
                painter.setPen(QtGui.QPen(broad, 5.0))
                fit = self._lines[number][1]
                painter.drawPolyline(fit.set(frame.x(point.fit_times_s), frame.y(point.fit_deg)))
        for number, point in enumerate(self._points):
            shown = slice(int(np.searchsorted(point.times_s, frame.x_low)), None)
            curve = self._lines[number][0].set(frame.x(point.times_s[shown]), frame.y(point.phase_deg[shown]))
            self.draw_noisy(painter, curve, self.point_colour(number))
        painter.setClipping(False)


class WaveformPlot(_AboutZero):
    """Each point over one revolution, with the band in which single revolutions lie (one standard deviation)."""

    x_title = "shaft angle, °"

    def __init__(self) -> None:
        super().__init__("Waveform over one revolution", (14.0, 8.0))
        self.bare = True
        self._waveform: Waveform | None = None
        self._lines: list[tuple[Polyline, Polyline]] = []
        self._reach = 1.0
        self.x_step = 90.0
        self.set_ranges(0.0, 360.0, -1.0, 1.0)

    @property
    def shown(self) -> Waveform | None:
        """What is drawn."""
        return self._waveform

    def show_waveform(self, waveform: Waveform | None) -> None:
        """Draw this; None: nothing."""
        self._waveform = waveform
        self.set_bare(waveform is None)
        if waveform is None:
            self.summarise("no waveform yet")
            self.update()
            return
        while len(self._lines) < len(waveform.points):
            self._lines.append((Polyline(), Polyline()))
        reach = max(float((np.abs(p.mean) + p.deviation).max(initial=0.0)) for p in waveform.points)
        self._reach = settled(reach, self._reach)
        names = tuple(p.name for p in waveform.points)
        title = f"{waveform.unit}, ± one deviation"
        if (names, title) != (self._names, self.y_title):
            self._names, self.y_title = names, title
            self.renew()
        self.set_ranges(0.0, 360.0, -self._reach, self._reach)
        said = [f"{p.name} from {p.mean.min():.2g} to {p.mean.max():.2g} {waveform.unit}" for p in waveform.points]
        self.summarise(f"mean of {waveform.revolutions} revolutions: " + "; ".join(said))
        self.update()

    def draw(self, painter: QtGui.QPainter) -> None:
        """Bands, then means."""
        if self._waveform is None:
            return
        frame, angle = self.frame_now(), self._waveform.angle_deg
        painter.setClipRect(frame.area)
        x = frame.x(angle)
        both_ways = np.concatenate([x, x[::-1]])
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing, False)
        painter.setPen(QtCore.Qt.PenStyle.NoPen)
        for number, point in enumerate(self._waveform.points):
            tint = QtGui.QColor(self.point_colour(number))
            tint.setAlpha(55)
            painter.setBrush(tint)
            above, below = frame.y(point.mean + point.deviation), frame.y(point.mean - point.deviation)
            painter.drawPolygon(self._lines[number][1].set(both_ways, np.concatenate([above, below[::-1]])))
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)
        painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
        for number, point in enumerate(self._waveform.points):
            painter.setPen(self.pen(self.point_colour(number), self.line_px))
            painter.drawPolyline(self._lines[number][0].set(x, frame.y(point.mean)))
        painter.setClipping(False)


class SpectrumPlot(Graph):
    """Amplitude over frequency on a logarithmic scale, orders marked."""

    x_title = "frequency, Hz"

    def __init__(self) -> None:
        super().__init__("Spectrum", (14.0, 8.0))
        self.bare = True
        self._spectrum: Spectrum | None = None
        self._lines: list[Polyline] = []
        self._top = 0.0
        self._marks: tuple[float | None, tuple[str, ...]] = (None, ())
        self.y_step = 1.0
        self.set_ranges(0.0, 500.0, -_DECADES, 0.0)

    @property
    def shown(self) -> Spectrum | None:
        """What is drawn."""
        return self._spectrum

    def show_spectrum(self, spectrum: Spectrum | None) -> None:
        """Draw this; None: nothing."""
        self._spectrum = spectrum
        self.set_bare(spectrum is None or not spectrum.averages)
        if spectrum is None or not spectrum.averages:
            self._spectrum = None
            self.summarise("no spectrum yet")
            self.update()
            return
        while len(self._lines) < len(spectrum.names):
            self._lines.append(Polyline())
        highest = max(float(a.max(initial=0.0)) for a in spectrum.amplitudes)
        top = math.log10(max(highest, 1e-12))
        if not self._top - 0.9 < top <= self._top:
            self._top = math.ceil(top + 0.05)
        running = None if spectrum.running_hz is None else round(spectrum.running_hz, 1)
        if ((running, spectrum.names), spectrum.unit) != (self._marks, self.y_title):
            self._marks, self.y_title = (running, spectrum.names), spectrum.unit
            self.renew()
        self.set_ranges(0.0, self._widest(spectrum), self._top - _DECADES, self._top)
        self.summarise(self._words(spectrum))
        self.update()

    def _widest(self, spectrum: Spectrum) -> float:
        """Ten orders and a bit, as a round number."""
        last = float(spectrum.frequency_hz[-1])
        return last if spectrum.running_hz is None else min(last, round_up(10.0 * spectrum.running_hz))

    def _words(self, spectrum: Spectrum) -> str:
        said = []
        for name, amplitude in zip(spectrum.names, spectrum.amplitudes, strict=True):
            top = int(amplitude.argmax())
            said.append(f"{name}: highest at {spectrum.frequency_hz[top]:.1f} Hz, {amplitude[top]:.3g} {spectrum.unit}")
        return "; ".join(said)

    def y_text(self, value: float) -> str:
        """The value whose logarithm the axis shows."""
        return f"{10.0**value:g}"

    def draw_backdrop(self, painter: QtGui.QPainter) -> None:
        """Axes, orders, and the key."""
        super().draw_backdrop(painter)
        if self.bare:
            return
        frame, (running, names) = self.frame_now(), self._marks
        self.key(painter, names)
        if running is None:
            return
        painter.setFont(self.small())
        text = QtGui.QFontMetricsF(painter.font())
        apart = float(frame.x(np.array(running)) - frame.x(np.array(0.0)))
        every = max(1, math.ceil((text.horizontalAdvance("10x") + 6.0) / max(1.0, apart)))
        for order in range(1, _ORDERS + 1, every):
            x = float(frame.x(np.array(order * running)))
            if x > frame.area.right() - 20.0:
                break
            painter.setPen(self.pen(self.theme.quiet, 1.0, (2.0, 4.0)))
            painter.drawLine(QtCore.QPointF(x, frame.area.top()), QtCore.QPointF(x, frame.area.bottom()))
            self.draw_text(painter, x + 3.0, frame.area.top() + text.height(), f"{order}x", self.theme.quiet)

    def draw(self, painter: QtGui.QPainter) -> None:
        """One curve for each point, the highest and lowest line of each column."""
        if self._spectrum is None:
            return
        frame = self.frame_now()
        painter.setClipRect(frame.area)
        frequency = self._spectrum.frequency_hz
        shown = frequency <= frame.x_high
        begin, end = frame.x(frequency[shown][[0, -1]]).tolist()
        wide = max(16, int(end - begin))
        for number, amplitude in enumerate(self._spectrum.amplitudes):
            level = columns(np.log10(np.maximum(amplitude[shown], 1e-12)), wide)
            x = np.linspace(begin, end, level.size)
            y = np.minimum(frame.y(level), frame.area.bottom() + 4.0)
            self.draw_noisy(painter, self._lines[number].set(x, y), self.point_colour(number))
        painter.setClipping(False)


class SweepPlot(Graph):
    """Amplitude (or, with `phase`, lag) of each point against speed, running speed and resonances marked."""

    x_title = "speed, r/min"

    def __init__(self, *, phase: bool = False) -> None:
        super().__init__("Phase against speed" if phase else "Amplitude against speed", (14.0, 8.6))
        self.bare = True
        self._phase = phase
        self._curves: tuple[SweepCurve, ...] = ()
        self._running_rpm: float | None = None
        self._lines: list[Polyline] = []
        self.y_step = 90.0 if phase else None

    def show_sweep(self, curves: Sequence[SweepCurve], unit: str, running_rpm: float | None = None) -> None:
        """Draw these curves."""
        self._curves, self._running_rpm = tuple(curves), running_rpm
        self._lines = [Polyline() for _ in curves]
        self.set_bare(not curves)
        self.y_title = "lag, °" if self._phase else unit
        if not curves:
            self.summarise("no sweep yet")
            self.renew()
            return
        low = min(float(c.speeds_rpm.min()) for c in curves)
        high = max(float(c.speeds_rpm.max()) for c in curves)
        values = [self._values(c) for c in curves]
        if self._phase:
            bottom = 90.0 * math.floor(min(float(v.min()) for v in values) / 90.0)
            top = 90.0 * math.ceil(max(float(v.max()) for v in values) / 90.0)
            self.set_ranges(low, high, bottom, max(top, bottom + 180.0))
        else:
            self.set_ranges(low, high, 0.0, round_up(1.05 * max(float(v.max()) for v in values)))
        said = []
        for curve in curves:
            at = [f"{rpm:.0f}" + ("" if half is None else f" ± {half:.0f}") for rpm, half in curve.resonances]
            said.append(f"{curve.name}: " + (f"resonance at {', '.join(at)} r/min" if at else "no resonance seen"))
        self.summarise("; ".join(said))
        self.renew()

    def _values(self, curve: SweepCurve) -> Real:
        if not self._phase:
            return np.abs(curve.z)
        phase = np.rad2deg(np.unwrap(np.angle(curve.z)))
        return np.asarray(phase - 360.0 * math.floor(float(np.median(phase)) / 360.0))

    def draw_backdrop(self, painter: QtGui.QPainter) -> None:
        """Axes, marks and curves: a sweep does not move."""
        super().draw_backdrop(painter)
        if self.bare:
            return
        frame = self.frame_now()
        painter.setFont(self.small())
        text = QtGui.QFontMetricsF(painter.font())
        marks = [] if self._running_rpm is None else [(self._running_rpm, "running", self.theme.accent)]
        seen = sorted({round(rpm) for c in self._curves for rpm, _ in c.resonances})
        marks += [(float(rpm), "resonance", self.theme.caution) for rpm in seen]
        rows: list[float] = [-math.inf] * 3
        written: list[tuple[float, float, str, str]] = []
        for rpm, word, colour in sorted(marks):
            x = float(frame.x(np.array(rpm)))
            if not frame.area.left() <= x <= frame.area.right():
                continue
            painter.setPen(self.pen(colour, 1.5, (5.0, 4.0)))
            painter.drawLine(QtCore.QPointF(x, frame.area.top()), QtCore.QPointF(x, frame.area.bottom()))
            words = language.words(f"{word} {rpm:.0f}")
            across = 1.0 if x + text.horizontalAdvance(words) > frame.area.right() - 6.0 else 0.0
            begin = x + (-4.0 - text.horizontalAdvance(words) if across else 4.0)
            row = next((r for r, end in enumerate(rows) if begin > max(end + 6.0, frame.area.left())), None)
            if row is not None:
                written.append((begin, frame.area.top() + (row + 1) * text.height(), words, colour))
                rows[row] = begin + text.horizontalAdvance(words)
        painter.setClipRect(frame.area)
        for number, curve in enumerate(self._curves):
            order = np.argsort(curve.speeds_rpm)
            painter.setPen(self.pen(self.point_colour(number), self.line_px))
            painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
            values = self._values(curve)[order]
            painter.drawPolyline(self._lines[number].set(frame.x(curve.speeds_rpm[order]), frame.y(values)))
        painter.setClipping(False)
        for begin, bottom, words, colour in written:
            self.draw_text(painter, begin, bottom, words, colour, backed=True)
        self.key(painter, [c.name for c in self._curves])


class BeforeAfter(Picture):
    """Bars of each point before and after with their 95 % intervals, against limits, and the plain verdict."""

    def __init__(self) -> None:
        super().__init__("Before and after", (20.0, 2.0 * _BAR_EMS))
        self._bars: tuple[Bar, ...] = ()
        self._unit = ""

    def show_bars(self, bars: Sequence[Bar], unit: str) -> None:
        """Draw these; none: empty."""
        self._bars, self._unit = tuple(bars), unit
        self.set_smallest((20.0, _BAR_EMS * max(2, len(bars))))
        said = []
        for bar in bars:
            limit = "" if bar.limit is None else f", limit {figure(bar.limit)}"
            said.append(f"{bar.name} from {figure(bar.before)} to {figure(bar.after)} {unit}{limit}: {bar.verdict}")
        self.summarise("; ".join(said) or "no check run yet")
        self.renew()

    def draw_backdrop(self, painter: QtGui.QPainter) -> None:
        """A row for each point: name and verdict, then the two bars."""
        if not self._bars:
            return
        theme = self.theme
        top = round_up(
            max(
                max(b.before + (b.before_ci95 or 0.0), b.after + (b.after_ci95 or 0.0), b.limit or 0.0)
                for b in self._bars
            )
        )
        painter.setFont(self.small())
        text = QtGui.QFontMetricsF(painter.font())
        left = max(text.horizontalAdvance(language.words(word)) for word in ("before", "after")) + 12.0
        figures = [f for b in self._bars for f in ((b.before, b.before_ci95), (b.after, b.after_ci95))]
        right = max(text.horizontalAdvance(with_half(*each, self._unit)) for each in figures) + 12.0
        width = max(20.0, self.width() - left - right)
        row = self.height() / len(self._bars)
        thick = max(4.0, min(22.0, 0.5 * (row - 2.6 * text.height())))
        for number, bar in enumerate(self._bars):
            y = number * row + text.height() + 2.0
            draw_marker(painter, number, QtCore.QPointF(8.0, y - 0.5 * text.height()), 4.5, self.point_colour(number))
            painter.setFont(self.small(strong=True))
            self.draw_text(painter, 20.0, y, language.own(bar.name), theme.text)
            colour = {"met": theme.good, "not met": theme.bad}.get(bar.verdict, theme.caution)
            self.draw_text(painter, self.width() - 4.0, y, bar.verdict, colour, across=1.0)
            painter.setFont(self.small())
            y += 4.0
            for word, value, half, solid in (
                ("before", bar.before, bar.before_ci95, False),
                ("after", bar.after, bar.after_ci95, True),
            ):
                self._draw_bar(painter, number, (left, y, width / top, thick), word, value, half, solid=solid)
                y += thick + 4.0
            if bar.limit is not None:
                x = left + bar.limit * width / top
                painter.setPen(self.pen(theme.panel, 4.0))
                painter.drawLine(QtCore.QPointF(x, y - 2.0 * thick - 10.0), QtCore.QPointF(x, y - 2.0))
                painter.setPen(self.pen(theme.text, 2.0))
                painter.drawLine(QtCore.QPointF(x, y - 2.0 * thick - 12.0), QtCore.QPointF(x, y))
                self.draw_text(painter, x, y, f"limit {figure(bar.limit)}", theme.quiet, across=0.5, down=0.0)

    def _draw_bar(
        self,
        painter: QtGui.QPainter,
        number: int,
        place: tuple[float, float, float, float],
        word: str,
        value: float,
        half: float | None,
        *,
        solid: bool,
    ) -> None:
        """One bar; the one before is only an outline. `place` is left, top, px per unit, thickness."""
        left, y, scale, thick = place
        colour = self.point_colour(number)
        painter.setPen(self.pen(colour, 1.5))
        painter.setBrush(QtGui.QColor(colour if solid else self.theme.panel))
        painter.drawRect(QtCore.QRectF(left, y, max(1.0, value * scale), thick))
        middle = y + 0.5 * thick
        self.draw_text(painter, left - 6.0, middle, word, self.theme.quiet, across=1.0, down=0.5)
        if half is not None:
            painter.setPen(self.pen(self.theme.text, 1.5))
            low, high = left + max(0.0, value - half) * scale, left + (value + half) * scale
            painter.drawLine(QtCore.QPointF(low, middle), QtCore.QPointF(high, middle))
            for x in (low, high):
                painter.drawLine(QtCore.QPointF(x, middle - 4.0), QtCore.QPointF(x, middle + 4.0))
        words = with_half(value, half, self._unit)
        self.draw_text(painter, self.width() - 4.0, middle, words, self.theme.text, across=1.0, down=0.5)
