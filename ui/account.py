"""What the command line prints for people: short tables on standard output, progress on standard error."""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Iterator, Sequence
from typing import TYPE_CHECKING

import numpy as np
from rich.console import Console
from rich.table import Table
from stillshaft.dsp import sweep as sweeps
from stillshaft.dsp import vectors

if TYPE_CHECKING:
    from pathlib import Path

    from stillshaft.acquire.soundcard import SoundInput
    from stillshaft.dsp.candidates import Match
    from stillshaft.dsp.check import Finding
    from stillshaft.dsp.content import Content
    from stillshaft.dsp.measure import Measurement, PointVector
    from stillshaft.dsp.sweep import Sweep
    from stillshaft.solver.diagnosis import Suggestion
    from stillshaft.ui.guides import Guide
    from stillshaft.ui.rehearsal import Rehearsal
    from stillshaft.ui.taking import Progress as RunProgress
    from stillshaft.ui.wiring import Calibrated

_ROWS_OF_CURVE = 12

Report = Callable[[float, str], None]


def new_console() -> Console:
    """Where results are printed."""
    return Console(highlight=False, soft_wrap=False, width=None)


@contextlib.contextmanager
def progress(what: str) -> Iterator[Report]:
    """A progress bar on standard error while a screen is there; called with a share 0…1 and a text."""
    from rich.progress import BarColumn, Progress, TextColumn, TimeElapsedColumn

    console = Console(stderr=True)
    columns = (TextColumn("{task.description}"), BarColumn(), TimeElapsedColumn())
    with Progress(*columns, console=console, transient=True, disable=not console.is_terminal) as bar:
        task = bar.add_task(what, total=1.0)

        def report(share: float, text: str) -> None:
            bar.update(task, completed=share, description=text or what)

        yield report


@contextlib.contextmanager
def live() -> Iterator[Callable[[RunProgress], None]]:
    """A few lines on standard error that follow a run, while a screen is there."""
    from rich.live import Live

    console = Console(stderr=True, highlight=False)
    if not console.is_terminal:
        yield lambda progress: None
        return
    with Live(console=console, transient=True, auto_refresh=False) as shown:
        yield lambda progress: shown.update(_running(progress), refresh=True)


def _running(progress: RunProgress) -> Table:
    """Speed, 1x of each point, interval, steadiness and level of a run under way."""
    left = "" if progress.remaining_s is None else f", about {progress.remaining_s:.0f} s to go"
    left = ", waiting for it to settle" if progress.waiting else left
    measured = progress.measured
    speed = "" if measured is None else f", {measured.speed.mean_rpm:.1f} r/min"
    waits = f"waits for {'; '.join(progress.missing)}" if progress.missing else None
    said = "\n".join(text for text in (progress.settling, waits, progress.trouble) if text)
    table = Table(title=f"{progress.seconds:.1f} s{speed}{left}", caption=said or None)
    unit = "" if measured is None else f", {measured.unit}"
    for heading in ("point", f"1x amplitude{unit}", "phase °", "overall", "steadiness"):
        table.add_column(heading, justify="left" if heading in ("point", "steadiness") else "right")
    for point in () if measured is None else measured.points:
        table.add_row(*_vector_row(point))
    return table


def _vector_row(point: PointVector) -> tuple[str, ...]:
    amplitude, phase_deg = vectors.amplitude_phase(point.z)
    return (
        point.name,
        with_interval(amplitude, point.amplitude_ci95),
        with_interval(phase_deg, point.phase_ci95_deg),
        "-" if point.overall is None else f"{point.overall:.2f}",
        point.steadiness.verdict,
    )


def number(value: float, half_width: float | None) -> str:
    """A value with as many decimals as its interval makes worth reading."""
    decimals = 2
    if half_width is not None and half_width > 0.0:
        while decimals < 6 and half_width < 1.5 * 10.0**-decimals:
            decimals += 1
        while decimals > 0 and half_width >= 15.0 * 10.0**-decimals:
            decimals -= 1
    return f"{value:.{decimals}f}"


def with_interval(value: float, half_width: float | None) -> str:
    """Value and 95 % half width, or "any" where it cannot be told."""
    if half_width is None:
        return f"{value:.2f} ± ?"
    return f"{number(value, half_width)} ± {number(half_width, half_width)}"


def _print_speed(console: Console, name: str, measured: Measurement) -> None:
    speed = measured.speed
    scatter = speed.pulse_scatter_us
    timed = "" if scatter is None else f", each timed to {6e-6 * scatter * speed.mean_rpm:.2g}°"
    console.print(
        f"{name}: {measured.duration_s:.1f} s, {speed.mean_rpm:.1f} r/min "
        f"({speed.min_rpm:.1f} to {speed.max_rpm:.1f}), {speed.pulses} pulses on the {measured.edge} edge, "
        f"{speed.missing_pulses} missing, {speed.extra_pulses} too many{timed}"
    )


def print_vectors(name: str, measured: Measurement) -> None:
    """Speed and one line per point."""
    console = new_console()
    _print_speed(console, name, measured)
    table = Table(title=f"order {measured.order:g}, {measured.unit}, ± is the 95 % interval of this run only")
    for heading in ("point", "amplitude", "phase °", "overall", "steadiness"):
        table.add_column(heading, justify="left" if heading in ("point", "steadiness") else "right")
    for point in measured.points:
        table.add_row(*_vector_row(point))
    console.print(table)
    _print_doubts(console, measured)


def print_steadiness(name: str, measured: Measurement, matches: dict[str, tuple[Match, ...]]) -> None:
    """Verdict, swings and second source of each point, and which candidates fit it."""
    console = new_console()
    _print_speed(console, name, measured)
    table = Table(title=f"order {measured.order:g}, peak-to-peak swings over the record")
    for heading in ("point", "verdict", "phase °", "amplitude %", "trend °/min", "second source r/min", "ratio"):
        table.add_column(heading, justify="left" if heading in ("point", "verdict") else "right")
    for point in measured.points:
        s = point.steadiness
        source, ratio = "-", "-"
        if s.beat is not None:
            source = " or ".join(with_interval(rpm, s.beat.source_rpm_ci95) for rpm in s.beat.source_rpm)
            ratio = f"{s.beat.ratio:.3f}"
        table.add_row(
            point.name, s.verdict if s.cause is None else f"{s.verdict}: {s.cause}",
            _or_dash(s.phase_swing_deg), _or_dash(s.amplitude_swing_percent), _or_dash(s.trend_deg_per_min), source, ratio,
        )  # fmt: skip
    console.print(table)
    for point in measured.points:
        beat = point.steadiness.beat
        if beat is not None:
            amplitude, phase_deg = vectors.amplitude_phase(beat.cleaned)
            halves = beat.cleaned_half_widths()
            console.print(
                f"{point.name}: without the second source {with_interval(amplitude, halves[0])} {measured.unit} at "
                f"{with_interval(phase_deg, halves[1])}°",
                soft_wrap=True,
            )
        for match in matches.get(point.name, ()):
            what = f"{match.multiple} × {match.name}" if match.multiple > 1 else match.name
            fits = "fits" if match.fits else "does not fit"
            console.print(f"{point.name}: {what}, {match.rpm:.1f} r/min, {fits}: {match.off_rpm:+.1f} r/min off")
    _print_doubts(console, measured)


def print_guides(pages: Sequence[Guide]) -> None:
    """Name and heading of each page."""
    console = new_console()
    for page in pages:
        console.print(f"stillshaft guide {page.name:8} {page.title}", soft_wrap=True)


def print_guide(page: Guide) -> None:
    """One page, as the terminal can show it."""
    from rich.markdown import Markdown

    new_console().print(Markdown(page.without_pictures))


def _print_doubts(console: Console, measured: Measurement) -> None:
    """What speaks against using the vectors, and what is worth knowing of them all the same."""
    for reason in measured.reasons:
        console.print(f"do not trust: {reason}", soft_wrap=True)
    for point in measured.points:
        for note in point.steadiness.notes:
            console.print(f"{point.name}: {note}", soft_wrap=True)


def print_sweep(name: str, sweep: Sweep) -> None:
    """Resonances of each point, margin, and a short curve."""
    console = new_console()
    console.print(
        f"{name}: {sweep.direction} from {sweep.slowest_rpm:.0f} to {sweep.fastest_rpm:.0f} r/min in {sweep.seconds:.1f} s, "
        f"{sweep.pulses} pulses, {sweep.missing_pulses} missing, {sweep.extra_pulses} too many",
        soft_wrap=True,
    )
    table = Table(title=f"resonances, as at constant speed, {sweep.points[0].unit}")
    for heading in (
        "point",
        "r/min",
        "amplification",
        "amplitude",
        "phase °",
        f"lag ° at {sweep.running_rpm:.0f} r/min",
    ):
        table.add_column(heading, justify="left" if heading == "point" else "right")
    for point in sweep.points:
        for r in point.resonances:
            table.add_row(
                point.name,
                *(with_interval(e.value, e.ci95) for e in (r.rpm, r.amplification, r.amplitude, r.phase_deg)),
                f"{r.running_lag_deg:.0f}",
            )
    if table.row_count:
        console.print(table)
    table = Table(title="curve, ± is the 95 % interval")
    for heading in ("point", "order", "r/min", "amplitude", "phase °"):
        table.add_column(heading, justify="left" if heading == "point" else "right")
    for point in sweep.points:
        half, phase_half = sweeps.curve_half_widths(point)
        targets = np.linspace(point.speeds_rpm.min(), point.speeds_rpm.max(), _ROWS_OF_CURVE)
        for i in sorted({int(np.argmin(np.abs(point.speeds_rpm - t))) for t in targets}):
            amplitude, phase_deg = vectors.amplitude_phase(complex(point.z[i]))
            table.add_row(
                point.name, f"{point.order:g}", f"{point.speeds_rpm[i]:.0f}",
                with_interval(amplitude, float(half[i])), with_interval(phase_deg, phase_half[i]),
            )  # fmt: skip
    console.print(table)
    if sweep.margin_percent is not None:
        console.print(f"margin of {sweep.running_rpm:.0f} r/min to the nearest resonance: {sweep.margin_percent:.1f} %")
    for warning in sweep.warnings:
        console.print(warning, soft_wrap=True)
    for reason in sweep.reasons:
        console.print(f"do not trust: {reason}", soft_wrap=True)


def print_spectrum(name: str, content: Content, suggestions: Sequence[Suggestion]) -> None:
    """Orders, strongest peaks and shares of each point; how the points move together; what it suggests."""
    console = new_console()
    console.print(
        f"{name}: {content.speed_rpm:.1f} r/min, {content.averages} spectra averaged, lines of {content.resolution_hz:g} Hz"
    )
    table = Table(title=f"orders, {content.unit}, ± is the 95 % interval of this run only")
    for heading in ("point", "order", "amplitude", "phase °", "of 1x"):
        table.add_column(heading, justify="left" if heading == "point" else "right")
    for point in content.points:
        first = abs(point.orders[0][1].z)
        for order, p in point.orders:
            amplitude, phase_deg = vectors.amplitude_phase(p.z)
            table.add_row(
                point.name, f"{order:g}x", with_interval(amplitude, p.amplitude_ci95),
                with_interval(phase_deg, p.phase_ci95_deg), f"{amplitude / first:.2f}" if first else "-",
            )  # fmt: skip
    console.print(table)
    table = Table(title=f"strongest peaks, {content.unit}")
    for heading in ("point", "Hz", "r/min", "amplitude", "times 1x speed", "fits"):
        table.add_column(heading, justify="left" if heading in ("point", "fits") else "right")
    for point in content.points:
        for peak in point.peaks:
            table.add_row(
                point.name, f"{peak.frequency_hz:.2f}", f"{60 * peak.frequency_hz:.0f}",
                with_interval(peak.amplitude, peak.amplitude_ci95), f"{peak.order:.3f}", ", ".join(peak.fits) or "-",
            )  # fmt: skip
    console.print(table)
    for point in content.points:
        level = "-" if point.overall is None else f"{point.overall:.2f} {content.unit}"
        parts = ", ".join(f"{group} {share:.1f} %" for group, share in point.shares.items() if share >= 0.05)
        console.print(
            f"{point.name}: overall {content.band_hz[0]:g} to {content.band_hz[1]:g} Hz {level}; "
            f"of the mean square from {content.share_band_hz[0]:.3g} Hz on: {parts}",
            soft_wrap=True,
        )
    for pair in content.pairs:
        console.print(
            f"1x at {pair.names[1]} is {with_interval(pair.ratio, pair.ratio_ci95)} of that at {pair.names[0]} and lags it "
            f"by {with_interval(pair.lag_deg, pair.lag_ci95_deg)}°",
            soft_wrap=True,
        )
    for warning in content.warnings:
        console.print(warning, soft_wrap=True)
    for s in suggestions:
        reasons = [f"for: {'; '.join(s.speaking_for)}"] if s.speaking_for else []
        reasons += [f"against: {'; '.join(s.against)}"] if s.against else []
        reasons += [f"next: {s.next_check}"] if s.next_check else []
        console.print(f"{s.point}: {s.what}? {'. '.join(reasons)}", soft_wrap=True)
    if suggestions:
        console.print("Suggestions by common practice; the person decides.")


def _or_dash(value: float | None) -> str:
    return "-" if value is None else f"{value:.2f}"


def print_findings(findings: Sequence[Finding]) -> None:
    """What the signal check found, the gravest first."""
    console = new_console()
    table = Table(title="signal check", show_lines=True)
    for heading in ("", "where", "what", "what to do"):
        table.add_column(heading)
    for f in findings:
        table.add_row(f.weight, f.where, f.what, f.cure)
    console.print(table)


def print_calibration(results: Sequence[Calibrated]) -> None:
    """What was calibrated, with its interval."""
    console = new_console()
    table = Table(title="calibrated, ± is the 95 % interval")
    for heading in ("point", "what", "before", "now", "±"):
        table.add_column(heading, justify="left" if heading in ("point", "what") else "right")
    for r in results:
        table.add_row(r.point, r.key.replace("_", " "), r.before, ", ".join(r.values), ", ".join(r.ci95))
    console.print(table)
    for r in results:
        if r.remark:
            console.print(f"{r.point}: {r.remark}", soft_wrap=True)


def print_sources(inputs: Sequence[SoundInput]) -> None:
    """One line per input."""
    console = new_console()
    others = (
        'other sources: "simulated", "simulated:FILE", "recording:FILE", "serial:PORT", "nidaqmx:DEVICE/ai0", '
        '"uldaq:SERIAL"'
    )
    if not inputs:
        console.print(f"no sound inputs found: plug in the card, then list again; {others}", soft_wrap=True)
        return
    table = Table(title="inputs")
    for heading in ("source", "inputs", "rate Hz", "samples"):
        table.add_column(heading, justify="right" if heading in ("inputs", "rate Hz") else "left")
    for i in inputs:
        path = "converted on the way" if i.converted else "as the card made them"
        table.add_row(f"{i.host_api}/{i.name}", str(i.channels), f"{i.default_rate_hz:.0f}", path)
    console.print(table)
    console.print(others, soft_wrap=True)


def print_rehearsal(outcome: Rehearsal, report: Path) -> None:
    """The whole job, step by step, and where its report is."""
    from stillshaft.ui import account_solve

    console = new_console()
    for name, masses, measured in outcome.runs:
        placed = "; ".join(f"{m.plane} {m.mass_g:g} g at {m.angle_deg:g}°" for m in masses) or "nothing"
        console.rule(f"{name}: {placed} on the rotor", align="left")
        print_vectors(name, measured)
    for title, solution in outcome.solutions:
        console.rule(title, align="left")
        account_solve.print_solution(solution)
    console.rule("where the rotor stands", align="left")
    account_solve.print_tolerance(outcome.tolerance)
    console.print(outcome.verdict, soft_wrap=True)
    console.print(f"kept in {outcome.folder}: recordings, runs.toml, hookup.toml", soft_wrap=True)
    console.print(f"report: {report}", soft_wrap=True)
