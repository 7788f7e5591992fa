"""Verbs around the inputs: what there is, recording, other formats, signal check, calibration."""

from __future__ import annotations

import contextlib
from dataclasses import asdict
from pathlib import Path
from typing import Annotated

import typer
from stillshaft.ui.command import (
    DO_NOT_TRUST,
    INPUT_UNUSABLE,
    HookupOption,
    JsonOption,
    RecordingArgument,
    app,
    print_json,
    warn,
)


@app.command()
def sources(as_json: JsonOption = False) -> None:
    """List the inputs that can be captured from."""
    from stillshaft.acquire import soundcard
    from stillshaft.ui import account

    inputs = soundcard.list_inputs()
    if as_json:
        rows = [
            {
                "source": f"{i.host_api}/{i.name}",
                "channels": i.channels,
                "rate_hz": i.default_rate_hz,
                "converted": i.converted,
            }
            for i in inputs
        ]
        print_json("sources", True, [], {"sources": rows})
    else:
        account.print_sources(inputs)


@app.command()
def capture(
    source: Annotated[
        str, typer.Argument(help='An input as `stillshaft sources` lists it, "simulated", or "recording:FILE".')
    ],
    out: Annotated[Path, typer.Argument(help="Recording to write, .au")],
    hookup: HookupOption = None,
    seconds: Annotated[
        float | None, typer.Option(help="How long to record, at the most; 15, or 120 with another end.", min=0.1)
    ] = None,
    revolutions: Annotated[
        int | None, typer.Option(help="Stop after so many revolutions, at an even speed.", min=2)
    ] = None,
    until_interval: Annotated[
        str | None, typer.Option(metavar='"2 % 1 deg"', help="Stop when every 95 % interval is as narrow as this.")
    ] = None,
    rate: Annotated[float | None, typer.Option(metavar="HZ", help="Sample rate; the input's own unless given.")] = None,
    mass: Annotated[
        list[str] | None,
        typer.Option(metavar='"PLANE = MASS at ANGLE"', help="What is put on the simulated rotor."),
    ] = None,
    seed: Annotated[int, typer.Option(min=0, help="Draws the scatter of the simulated rotor.")] = 1,
    fast: Annotated[bool, typer.Option("--fast", help="Simulated rotor or recording: not in real time.")] = False,
    as_json: JsonOption = False,
) -> None:
    """Record one run from a source into a recording with its event log, and show the vectors on the way."""
    from stillshaft.acquire import catalogue
    from stillshaft.acquire import hookup as wiring
    from stillshaft.ui import account, analysis, runs_files, taking

    if out.suffix != ".au":
        raise typer.BadParameter(f"{out}: recordings are written as .au; convert them afterwards")
    if mass and not source.startswith(catalogue.SIMULATED):
        raise typer.BadParameter("--mass is for the simulated rotor")
    interval = None if until_interval is None else taking.interval_from(until_interval)
    longest_s = seconds or (15.0 if revolutions is None and interval is None else 120.0)
    placed = tuple((m.plane, m.mass_g, m.angle_deg) for m in runs_files.masses_from(mass or []))
    wired = None if hookup is None else wiring.load_hookup(hookup)
    chosen = catalogue.choose(source, wired, rate, catalogue.Simulation(2, placed, seed, not fast))
    if wired is None:
        if chosen.hookup is None:
            raise typer.BadParameter("--hookup FILE says which inputs to record")
        wired = wiring.hookup_from(chosen.hookup)
    for warning in chosen.warnings:
        warn(f"warning: {warning}")
    with account.live() as show:
        taken = taking.take(chosen.request, out, wired, taking.Stop(longest_s, revolutions, interval), show)
    summary = taken.summary
    whole = summary.complete
    reasons = [] if whole else [summary.reason or "recording is incomplete"]
    reasons += [f"{len(summary.gaps)} gaps in the recording"] if summary.gaps else []
    reasons += summary.remarks
    if interval is not None and taken.ended_by == "time":
        reasons.append(f"the wanted interval was not reached in {summary.seconds:.0f} s")
    if as_json:
        content = {
            "recording": str(out),
            "seconds": summary.seconds,
            "frames": summary.frames,
            "complete": whole,
            "ended_by": taken.ended_by,
        }
        print_json("capture", not reasons, reasons, content)
    else:
        with contextlib.suppress(analysis.AnalysisError):  # what cannot be measured is recorded all the same
            account.print_vectors(out.name, analysis.measure_recording(out, wired))
        ending = f"complete, ended by {taken.ended_by}" if whole else "incomplete"
        typer.echo(f"{out}: {summary.seconds:.2f} s, {summary.frames} frames, {ending}")
    if not whole:
        warn(f"stillshaft: {out}: {summary.reason}; what was recorded is kept")
        raise typer.Exit(INPUT_UNUSABLE)
    if reasons:
        warn(f"stillshaft: {out}: {'; '.join(reasons)}")
        raise typer.Exit(DO_NOT_TRUST)


@app.command()
def convert(
    source: Annotated[Path, typer.Argument(help="Recording of any kind that is read.")],
    target: Annotated[Path, typer.Argument(help="What to write: .au, .wav, .flac, .csv, .h5, .mat or .uff.")],
    hookup: HookupOption = None,
) -> None:
    """Write a recording in another format, or read one from elsewhere into a recording of our own."""
    from stillshaft.acquire import conversion
    from stillshaft.acquire import hookup as wiring

    wired = None if hookup is None else wiring.load_hookup(hookup)
    frames = conversion.convert(source, target, wired)
    typer.echo(f"{target}: {frames} frames")


@app.command()
def check(
    source: Annotated[
        str, typer.Argument(help='An input as `stillshaft sources` lists it, "simulated", or "recording:FILE".')
    ],
    hookup: HookupOption = None,
    seconds: Annotated[float, typer.Option(help="How long to listen.", min=2.0)] = 10.0,
    rate: Annotated[float | None, typer.Option(metavar="HZ", help="Sample rate; the input's own unless given.")] = None,
    nameplate: Annotated[
        float | None,
        typer.Option(metavar="RPM", help="Speed on the nameplate, to see a pulse that counts twice.", min=1.0),
    ] = None,
    fast: Annotated[bool, typer.Option("--fast", help="Simulated rotor or recording: not in real time.")] = False,
    tap: Annotated[
        bool, typer.Option("--tap", help="Machine standing still: ask for a tap at each sensor, to see where it shows.")
    ] = False,
    stopped: Annotated[
        bool, typer.Option("--stopped", help="Machine standing still: see that there are no pulses.")
    ] = False,
    as_json: JsonOption = False,
) -> None:
    """Check the signals of what is wired up: pulse, levels, noise, hum, crosstalk, stuck channels, with what to do."""
    from stillshaft.dsp import check as checks
    from stillshaft.ui import account, wiring

    if tap:
        chosen, wired = wiring.choose(source, hookup, rate, not fast)
        findings = wiring.tap_each(chosen.request, wired, warn)
    else:
        with account.progress("listening") as report:
            findings = wiring.check_source(
                source, hookup, seconds, rate, nameplate, real_time=not fast, report=report, stopped=stopped
            )
    blocks = [f"{f.where}: {f.what}" for f in findings if f.weight == checks.BLOCKS]
    if as_json:
        print_json("check", not blocks, blocks, {"source": source, "findings": [asdict(f) for f in findings]})
    else:
        account.print_findings(findings)
    if blocks:
        raise typer.Exit(DO_NOT_TRUST)


@app.command()
def calibrate(
    method: Annotated[str, typer.Argument(metavar="voltage|shaker|split|step", help="What was played to the inputs.")],
    recording: RecordingArgument,
    hookup: Annotated[Path, typer.Option("--hookup", metavar="FILE", help="Hook-up file to write the result into.")],
    point: Annotated[
        list[str] | None, typer.Option(help="Point that had the signal; give it again for several. All unless given.")
    ] = None,
    volts: Annotated[str | None, typer.Option(metavar='"1 V"', help="voltage: rms of the sine.")] = None,
    level: Annotated[str, typer.Option(metavar='"1 g"', help="shaker: rms acceleration.")] = "1 g",
    frequency: Annotated[float, typer.Option(metavar="HZ", help="shaker: its frequency.")] = 159.2,
    dry_run: Annotated[bool, typer.Option("--dry-run", help="Show the result, write nothing.")] = False,
    as_json: JsonOption = False,
) -> None:
    """Calibrate inputs from a recording of a known signal, and write the result into the hook-up with its uncertainty."""
    from stillshaft.ui import account, wiring

    results = wiring.calibrate(method, recording, hookup, point or [], volts, level, frequency)
    if not dry_run:
        wiring.write_calibration(hookup, method, results)
        warn(f"written into {hookup}")
    if as_json:
        rows = [asdict(r) for r in results]
        print_json("calibrate", True, [], {"recording": str(recording), "method": method, "points": rows})
    else:
        account.print_calibration(results)
