"""Verbs that measure what a recording holds: vectors, steadiness, sweep, spectrum."""

from __future__ import annotations

from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer
from stillshaft.ui.command import (
    DO_NOT_TRUST,
    CandidatesOption,
    HookupOption,
    JsonOption,
    OrderOption,
    PlotOption,
    RecordingArgument,
    app,
    print_json,
    warn,
)

if TYPE_CHECKING:
    from stillshaft.dsp.measure import Measurement


@app.command()
def vector(
    recording: RecordingArgument,
    hookup: HookupOption = None,
    order: OrderOption = 1.0,
    append: Annotated[Path | None, typer.Option(metavar="RUNS", help="Runs file to write the vectors to.")] = None,
    run: Annotated[str | None, typer.Option(metavar="NAME", help="Name of the run in that file.")] = None,
    mass: Annotated[
        list[str] | None,
        typer.Option(metavar='"PLANE = MASS at ANGLE"', help='What was on the rotor, such as "left = 10 g at 270".'),
    ] = None,
    weights: Annotated[
        str,
        typer.Option(metavar="flat|hann", help="hann keeps strong tones at other speeds out, for a wider interval."),
    ] = "flat",
    as_json: JsonOption = False,
) -> None:
    """Measure the once-per-rev amplitude and phase of each point, with 95 % intervals and a steadiness verdict."""
    from stillshaft.dsp import measure
    from stillshaft.ui import account, analysis, runs_files

    if (append is None) != (run is None):
        raise typer.BadParameter("--append and --run belong together")
    if mass and append is None:
        raise typer.BadParameter("--mass goes into a runs file: add --append and --run")
    if append is not None and order != 1.0:
        raise typer.BadParameter("a runs file holds once-per-rev vectors: leave --order out")
    wiring = analysis.hookup_of(recording, hookup)
    masses = runs_files.masses_from(mass or [])
    with account.progress("measuring") as report:
        measured = analysis.measure_recording(recording, wiring, order, report, weights)
    if append is not None and run is not None:
        for plane in runs_files.append_measurement(append, run, measured, wiring, masses, recording):
            warn(f'plane "{plane}" is new in {append}; give it a radius there')
        warn(f'run "{run}" written to {append}')
    if as_json:
        content = {
            "recording": str(recording),
            "duration_s": measured.duration_s,
            "sample_rate_hz": measured.rate_hz,
            **measure.to_json(measured),
        }
        print_json("vector", measured.trusted, list(measured.reasons), content)
    else:
        account.print_vectors(recording.name, measured)
    _leave(measured)


def _leave(measured: Measurement) -> None:
    if not measured.trusted:
        raise typer.Exit(DO_NOT_TRUST)


@app.command()
def steadiness(
    recording: RecordingArgument,
    hookup: HookupOption = None,
    order: OrderOption = 1.0,
    candidates: CandidatesOption = None,
    as_json: JsonOption = False,
) -> None:
    """Tell whether the phase can be trusted, and what moves it if not."""
    from stillshaft.dsp import candidates as neighbours
    from stillshaft.dsp import measure
    from stillshaft.ui import account, analysis

    known = None if candidates is None else neighbours.load(candidates)
    wiring = analysis.hookup_of(recording, hookup)
    with account.progress("measuring") as report:
        measured = analysis.measure_recording(recording, wiring, order, report)
    matches = {} if known is None else neighbours.matches(measured, known)
    if as_json:
        content = measure.steadiness_json(measured)
        for point in content["points"] if known is not None else []:
            point["candidates"] = [asdict(m) for m in matches.get(point["name"], ())]
        print_json("steadiness", measured.trusted, list(measured.reasons), {"recording": str(recording), **content})
    else:
        account.print_steadiness(recording.name, measured, matches)
    _leave(measured)


@app.command()
def sweep(
    recording: RecordingArgument,
    hookup: HookupOption = None,
    order: Annotated[
        list[float] | None, typer.Option(help="Order to track; give it again for several. 1 unless given.")
    ] = None,
    tone: Annotated[
        float | None, typer.Option(metavar="HZ", help="A fixed tone to track beside them, so that they do not take it.")
    ] = None,
    running: Annotated[
        float | None, typer.Option(metavar="RPM", help="Running speed; the highest of the sweep unless given.")
    ] = None,
    slow_roll: Annotated[
        float | None,
        typer.Option(metavar="RPM", help="Take what displacement points show below this speed off their curves."),
    ] = None,
    tracker: Annotated[str, typer.Option(metavar="vold-kalman|windows", help="How the orders are tracked.")] = (
        "vold-kalman"
    ),
    bandwidth: Annotated[
        float | None, typer.Option(metavar="HZ", help="Of the tracker; what suits the resonances unless given.")
    ] = None,
    plot: PlotOption = None,
    as_json: JsonOption = False,
) -> None:
    """Run-up or coast-down: amplitude and phase against speed, resonances, and the margin of running speed to them."""
    from stillshaft.dsp import sweep as sweeps
    from stillshaft.ui import account, analysis, drawing

    wanted = sweeps.Wanted(tuple(order or (1.0,)), tone, tracker, bandwidth, slow_roll, running)
    wiring = analysis.hookup_of(recording, hookup)
    with account.progress("sweep") as report:
        found = analysis.sweep_recording(recording, wiring, wanted, report)
    if plot is not None:
        drawing.write(plot, f"{recording.name}: {found.direction}", drawing.sweep_panels(found))
        warn(f"plot written to {plot}")
    if as_json:
        content = {"recording": str(recording), **sweeps.to_json(found)}
        print_json("sweep", found.trusted, list(found.reasons), content)
    else:
        account.print_sweep(recording.name, found)
    if not found.trusted:
        raise typer.Exit(DO_NOT_TRUST)


@app.command()
def spectrum(
    recording: RecordingArgument,
    hookup: HookupOption = None,
    candidates: CandidatesOption = None,
    highest: Annotated[
        float | None, typer.Option(metavar="HZ", help="End of the spectrum; 1000 Hz or ten orders unless given.")
    ] = None,
    resolution: Annotated[
        float | None,
        typer.Option(metavar="HZ", help="Distance of the lines; 0.5 Hz or what parts the orders unless given."),
    ] = None,
    plot: PlotOption = None,
    as_json: JsonOption = False,
) -> None:
    """Averaged spectrum with orders, belts and mains marked, what the vibration consists of, and what it suggests."""
    from stillshaft.dsp import candidates as neighbours
    from stillshaft.dsp import content
    from stillshaft.solver import diagnosis
    from stillshaft.ui import account, analysis, drawing

    known = () if candidates is None else neighbours.load(candidates)
    wiring = analysis.hookup_of(recording, hookup)
    with account.progress("spectrum") as report:
        found = analysis.spectrum_recording(recording, wiring, known, highest, resolution, report)
    suggested = diagnosis.suggestions(found, known)
    if plot is not None:
        drawing.write(plot, f"{recording.name}: spectrum", drawing.spectrum_panels(found, known))
        warn(f"plot written to {plot}")
    if as_json:
        whole = {"recording": str(recording), **content.to_json(found), "suggestions": [asdict(s) for s in suggested]}
        print_json("spectrum", True, [], whole)
    else:
        account.print_spectrum(recording.name, found, suggested)
