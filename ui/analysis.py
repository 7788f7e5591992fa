"""What a recording holds: vectors, sweep, spectrum. One function each, for the command line, the window and the job."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from stillshaft.acquire import hookup as wiring
from stillshaft.dsp import units
from stillshaft.dsp.measure import Measurement, Measuring
from stillshaft.dsp.units import InputError

if TYPE_CHECKING:
    from stillshaft.acquire.exchange import Reader
    from stillshaft.dsp.candidates import Candidate
    from stillshaft.dsp.content import Content
    from stillshaft.dsp.sweep import Sweep, Wanted

Report = Callable[[float, str], None]


class AnalysisError(InputError):
    """A recording that cannot be measured as asked: the message says why and what to do."""


def hookup_of(recording: Path, hookup: Path | None) -> wiring.Hookup:
    """The hook-up given, else the one that the recording carries."""
    from stillshaft.acquire import exchange

    if hookup is not None:
        return wiring.load_hookup(hookup)
    with exchange.open_any(recording) as reader:
        if reader.hookup is None:
            raise AnalysisError(f"{recording}: carries no hook-up; name one with --hookup FILE")
        return wiring.hookup_from(reader.hookup)


def measure_recording(
    path: Path, hookup: wiring.Hookup, order: float = 1.0, report: Report | None = None, weights: str = "flat"
) -> Measurement:
    """Vectors of a recording at one order. Raises the errors of its parts with the file named."""
    from stillshaft.acquire import exchange

    with exchange.open_any(path, hookup) as reader:
        hookup = _checked_hookup(reader, hookup)
        measuring = Measuring(reader.rate_hz, hookup.pulse, hookup.points, hookup.display, order, weights)
        try:
            for block in reader.blocks():
                measuring.feed(block.samples, block.lost_before)
                if report is not None:
                    report(measuring.frames / reader.frames, "measuring")
            return measuring.result()
        except ValueError as error:
            raise _named(path, error) from error


def _checked_hookup(reader: Reader, hookup: wiring.Hookup) -> wiring.Hookup:
    """The hook-up, with the skew that the recording says its device had."""
    hookup.refuse_fewer_inputs(reader.channels, str(reader.path))
    return wiring.with_skew(hookup, reader.skew_s)


def _named(path: Path, error: ValueError) -> ValueError:
    """The error with the file named; one that is a fault of the program stays as it is."""
    return AnalysisError(f"{path}: {error}") if type(error).__module__.startswith("stillshaft.") else error


def sweep_recording(path: Path, hookup: wiring.Hookup, wanted: Wanted, report: Report | None = None) -> Sweep:
    """Run-up or coast-down in a recording. Raises the errors of its parts with the file named."""
    from stillshaft.acquire import exchange
    from stillshaft.dsp import channels, edges, sweep, tach, tracking

    with exchange.open_any(path, hookup) as reader:
        hookup = _checked_hookup(reader, hookup)
        if reader.gaps:
            raise AnalysisError(
                f"{path}: samples were lost at {reader.gaps[0] / reader.rate_hz:.2f} s: a sweep needs an unbroken record; "
                "record it again"
            )
        try:
            # twice through the file: the speed says which rate is enough
            inputs = channels.Inputs(reader.rate_hz, hookup.pulse, hookup.points)
            follower = edges.EdgeFollower(reader.rate_hz, hookup.pulse.edge)
            shaft = tach.RevolutionFollower(hookup.pulse.pulses_per_rev, hookup.pulse.reference)
            for block in reader.blocks():
                follower.feed(inputs.take(block.samples)[1])
                if report is not None:
                    report(0.5 * inputs.frames / reader.frames, "finding the speed")
            inputs.check()
            follower.finish()
            shaft.feed(*follower.take())
            if not shaft.edges and follower.problem is not None:
                raise follower.problem
            turned = shaft.newest()
            tach.refuse_alike_marks(turned, hookup.pulse.pulses_per_rev, hookup.pulse.reference, reader.rate_hz)
            orders = tracking.with_companions(wanted.orders)
            highest = tracking.highest_hz(turned, reader.rate_hz, orders, wanted.tone_hz)
            reducer = tracking.reducer(reader.rate_hz, highest, len(hookup.points))
            reduced, done = [], 0
            for block in reader.blocks():
                reduced.append(reducer.feed(block.samples[:, [p.index for p in hookup.points]]))
                done += len(block.samples)
                if report is not None:
                    report(0.5 + 0.5 * done / reader.frames, "tracking the orders")
            samples = np.concatenate(reduced).astype(np.float64)
            found = sweep.analyse(
                samples, reducer.first, reducer.step, reader.rate_hz, turned, hookup.points, hookup.display, wanted
            )
        except ValueError as error:
            raise _named(path, error) from error
        return found


def spectrum_recording(
    path: Path,
    hookup: wiring.Hookup,
    candidates: Sequence[Candidate] = (),
    highest_hz: float | None = None,
    resolution_hz: float | None = None,
    report: Report | None = None,
) -> Content:
    """Averaged spectrum of a recording, what it consists of, and the waveform over a revolution.

    Raises the errors of its parts with the file named.
    """
    from stillshaft.acquire import exchange
    from stillshaft.dsp import average, content, quantity, spectrum

    with exchange.open_any(path, hookup) as reader:
        hookup = _checked_hookup(reader, hookup)
        try:
            # twice through the file: the speed says how fine the lines must be
            measuring = Measuring(reader.rate_hz, hookup.pulse, hookup.points, hookup.display)
            for block in reader.blocks():
                measuring.feed(block.samples, block.lost_before)
                if report is not None:
                    report(0.5 * measuring.frames / reader.frames, "measuring the orders")
            orders = measuring.all_orders()
            running_hz = orders[0].speed.mean_rpm / 60.0
            highest, resolution = _lines_of(reader, running_hz, highest_hz, resolution_hz)
            wanted = [p.index for p in hookup.points]
            averaged = spectrum.AveragedSpectrum(reader.rate_hz, len(wanted), highest, resolution)
            low = min(spectrum.overall_band(60.0 * running_hz)[0], 0.5 * running_hz)
            converter = quantity.BandConverter(
                reader.rate_hz, hookup.points, units.vibration_unit(hookup.display).quantity, (low, highest)
            )
            points = 2 ** int(np.clip(np.log2(reader.rate_hz / running_hz), 2, 9))
            averager = average.SynchronousAverager(measuring.shaft, len(wanted), points, first_frame=converter.settled)
            done = 0
            for block in reader.blocks():
                if block.lost_before is not None:
                    averaged.interrupt()
                averaged.feed(block.samples[:, wanted])
                averager.feed(converter.feed(block.samples[:, wanted]))
                done += len(block.samples)
                if report is not None:
                    report(0.5 + 0.5 * done / reader.frames, "averaging spectra")
            averager.feed(converter.feed(np.empty((0, len(wanted))), last=True))
            if not averaged.averages:
                raise AnalysisError(
                    f"{reader.frames / reader.rate_hz:.1f} s are too short for lines of {resolution:g} Hz: record "
                    f"{2.0 / resolution:.0f} s or more, or ask for wider lines"
                )
            whole = averager.spans >= average.FEWEST_SPANS and not reader.gaps
            waveform = averager.result() if whole else None
            return content.describe(orders, averaged, hookup.points, hookup.display, candidates, waveform)
        except ValueError as error:
            raise _named(path, error) from error


def _lines_of(
    reader: Reader, running_hz: float, highest_hz: float | None, resolution_hz: float | None
) -> tuple[float, float]:
    """Highest frequency and distance of the lines: what is asked for, else ten orders, eight lines to an order."""
    from stillshaft.dsp import spectrum

    limit = 0.4 * reader.rate_hz
    if highest_hz is not None and not running_hz <= highest_hz <= limit:
        raise AnalysisError(
            f"highest {highest_hz:g} Hz: give the running speed, {running_hz:.2f} Hz, or more, and no more than {limit:g}, 0.4 "
            "of the rate"
        )
    seconds = reader.frames / reader.rate_hz
    if resolution_hz is not None and not 1.0 / seconds <= resolution_hz <= running_hz:
        raise AnalysisError(
            f"lines of {resolution_hz:g} Hz: a record of {seconds:.1f} s gives {1.0 / seconds:.2g} Hz or wider ones, and "
            f"wider than the running speed, {running_hz:.2f} Hz, they tell nothing"
        )
    highest = highest_hz or min(limit, max(spectrum.LEVEL_HIGHEST_HZ, 10.5 * running_hz))
    fine = min(spectrum.RESOLUTION_HZ, running_hz / 8.0)
    return highest, resolution_hz or max(fine, 2.0 / seconds)
