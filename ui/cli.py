"""The command line. Results go to standard output, progress and warnings to standard error.

Nothing heavy is imported before the verb is known: help and mistakes answer at once.
"""

from __future__ import annotations

import contextlib
import json
import os
import sys
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any, NoReturn

import typer

# all matrices here are small: several threads on one only wait for each other
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

if TYPE_CHECKING:
    from stillshaft.dsp.measure import Measurement

INPUT_UNUSABLE, DO_NOT_TRUST = 1, 3

app = typer.Typer(
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    help="Balance a rotor where it stands: measure, prove the phase, find the mass, show the result.",
)

JsonOption = Annotated[bool, typer.Option("--json", help="Print one JSON object instead of tables.")]
OrderOption = Annotated[float, typer.Option(help="Order of the shaft speed.")]
CandidatesOption = Annotated[
    Path | None,
    typer.Option(
        "--candidates", metavar="FILE", help="What may run beside the shaft (TOML): motors, belts, the mains."
    ),
]
PlotOption = Annotated[Path | None, typer.Option("--plot", metavar="FILE", help="Draw it, .svg or .pdf.")]
RecordingArgument = Annotated[
    Path, typer.Argument(help="Recording: AU, WAV, FLAC, CAF, CSV, HDF5, MAT, universal file, TDMS.")
]
HookupOption = Annotated[Path | None, typer.Option("--hookup", metavar="FILE", help="Hook-up file (TOML).")]


def main() -> NoReturn:
    """Run the command line; bad input ends in one line on standard error and exit status 1."""
    try:
        app()
    except (ValueError, OSError) as error:
        if not _is_ours(error):
            raise
        print(f"stillshaft: {_one_line(error)}", file=sys.stderr)  # noqa: T201
        sys.exit(INPUT_UNUSABLE)
    sys.exit(0)


def _is_ours(error: Exception) -> bool:
    """True for what the person's input can cause; a plain ValueError from inside is a fault of the program."""
    return isinstance(error, OSError) or type(error).__module__.startswith("stillshaft.")


def _one_line(error: Exception) -> str:
    if isinstance(error, OSError) and error.filename:
        return f"{error.filename}: {error.strerror}"
    return " ".join(str(error).split())


def _version() -> str:
    from importlib.metadata import version

    return version("stillshaft")


def _print_json(verb: str, trusted: bool, reasons: list[str], content: dict[str, Any]) -> None:
    whole = {
        "format": 1,
        "verb": verb,
        "version": _version(),
        "trusted": trusted,
        "reasons": reasons,
        **content,
    }
    typer.echo(json.dumps(whole, indent=2, allow_nan=False))


def _warn(text: str) -> None:
    typer.echo(text, err=True)


@app.callback(invoke_without_command=True)
def _start(context: typer.Context) -> None:
    if context.invoked_subcommand is None:
        _open_window()


@app.command("app")
def open_app() -> None:
    """Open the desktop program."""
    _open_window()


def _open_window() -> None:
    from stillshaft.ui import window

    raise typer.Exit(window.run())


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
    from stillshaft.ui import account, session

    if (append is None) != (run is None):
        raise typer.BadParameter("--append and --run belong together")
    if mass and append is None:
        raise typer.BadParameter("--mass goes into a runs file: add --append and --run")
    if append is not None and order != 1.0:
        raise typer.BadParameter("a runs file holds once-per-rev vectors: leave --order out")
    wiring = session.hookup_of(recording, hookup)
    masses = session.masses_from(mass or [])
    with account.progress("measuring") as report:
        measured = session.measure_recording(recording, wiring, order, report, weights)
    if append is not None and run is not None:
        for plane in session.append_measurement(append, run, measured, wiring, masses):
            _warn(f'plane "{plane}" is new in {append}; give it a radius there')
        _warn(f'run "{run}" written to {append}')
    if as_json:
        content = {
            "recording": str(recording),
            "duration_s": measured.duration_s,
            "sample_rate_hz": measured.rate_hz,
            **measure.to_json(measured),
        }
        _print_json("vector", measured.trusted, list(measured.reasons), content)
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
    from stillshaft.ui import account, session

    known = None if candidates is None else neighbours.load(candidates)
    wiring = session.hookup_of(recording, hookup)
    with account.progress("measuring") as report:
        measured = session.measure_recording(recording, wiring, order, report)
    matches = {} if known is None else neighbours.matches(measured, known)
    if as_json:
        content = measure.steadiness_json(measured)
        for point in content["points"] if known is not None else []:
            point["candidates"] = [asdict(m) for m in matches.get(point["name"], ())]
        _print_json("steadiness", measured.trusted, list(measured.reasons), {"recording": str(recording), **content})
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
    from stillshaft.ui import account, drawing, session

    if plot is not None:
        drawing.check_path(plot)
    wanted = sweeps.Wanted(tuple(order or (1.0,)), tone, tracker, bandwidth, slow_roll, running)
    wiring = session.hookup_of(recording, hookup)
    with account.progress("sweep") as report:
        found = session.sweep_recording(recording, wiring, wanted, report)
    if plot is not None:
        drawing.write(plot, f"{recording.name}: {found.direction}", drawing.sweep_panels(found))
        _warn(f"plot written to {plot}")
    if as_json:
        content = {"recording": str(recording), **sweeps.to_json(found)}
        _print_json("sweep", found.trusted, list(found.reasons), content)
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
    from stillshaft.ui import account, drawing, session

    if plot is not None:
        drawing.check_path(plot)
    known = () if candidates is None else neighbours.load(candidates)
    wiring = session.hookup_of(recording, hookup)
    with account.progress("spectrum") as report:
        found = session.spectrum_recording(recording, wiring, known, highest, resolution, report)
    suggested = diagnosis.suggestions(found)
    if plot is not None:
        drawing.write(plot, f"{recording.name}: spectrum", drawing.spectrum_panels(found, known))
        _warn(f"plot written to {plot}")
    if as_json:
        whole = {"recording": str(recording), **content.to_json(found), "suggestions": [asdict(s) for s in suggested]}
        _print_json("spectrum", True, [], whole)
    else:
        account.print_spectrum(recording.name, found, suggested)


@app.command()
def solve(
    runs: Annotated[Path, typer.Argument(help="Runs file (TOML).")],
    method: Annotated[
        str, typer.Option(metavar="auto|least-squares|expected", help="What the correction makes least.")
    ] = "auto",
    plot: PlotOption = None,
    as_json: JsonOption = False,
) -> None:
    """Work out the corrections from a runs file."""
    from stillshaft.solver import correction
    from stillshaft.solver.runs import load_runs
    from stillshaft.ui import account, drawing

    if plot is not None:
        drawing.check_path(plot)
    read = load_runs(runs)
    solution = correction.solve(read, method)
    if plot is not None:
        drawing.write_polars(plot, f"{runs.name}: vectors and corrections", drawing.solution_polars(read, solution))
        _warn(f"plot written to {plot}")
    if as_json:
        typer.echo(json.dumps(correction.to_json(solution, _version()), indent=2, allow_nan=False))
    else:
        account.print_solution(solution)
    if not solution.trusted:
        raise typer.Exit(DO_NOT_TRUST)


@app.command()
def trial(
    rotor_mass: Annotated[str, typer.Option(help='Rotor mass, such as "80 kg".')],
    radius: Annotated[str, typer.Option(help='Radius at which the mass will sit, such as "300 mm".')],
    speed: Annotated[float, typer.Option(metavar="RPM", help="Speed of the run, r/min.")],
    plane: Annotated[str, typer.Option(help="Name of the plane.")] = "plane",
    planes: Annotated[int, typer.Option(min=1, help="Correction planes that share the rotor's weight.")] = 1,
    share: Annotated[float, typer.Option(help="Force of the mass, as a part of the weight on its plane.")] = 0.1,
    heavy_spot: Annotated[
        float | None, typer.Option(metavar="DEG", help="Heavy spot, as `lag` tells it; any direction unless given.")
    ] = None,
    resonance: Annotated[
        float | None, typer.Option(metavar="RPM", help="Nearest resonance, as `sweep` tells it.")
    ] = None,
    as_json: JsonOption = False,
) -> None:
    """Trial mass, its centrifugal force, and where to put it."""
    from stillshaft.dsp import units
    from stillshaft.solver import trial as trials
    from stillshaft.ui import account

    found = trials.trial_mass(
        plane,
        units.parse(rotor_mass, "kg", "--rotor-mass"),
        units.parse(radius, "m", "--radius"),
        speed,
        planes=planes,
        share=share,
        heavy_spot_deg=heavy_spot,
        resonance_rpm=resonance,
    )
    if as_json:
        content = {
            "plane": found.plane,
            "mass": 1000.0 * found.mass_kg,
            "unit": "g",
            "angle_deg": found.angle_deg,
            "force_n": found.force_n,
            "force_kgf": found.force_kgf,
        }
        _print_json("trial", True, [found.reason], content)
    else:
        account.print_trial(found)


@app.command()
def lag(
    runs: Annotated[Path, typer.Argument(help="Runs file with an initial and a trial run.")],
    hookup: Annotated[Path, typer.Option("--hookup", metavar="FILE", help="Hook-up file: the angles of the sensors.")],
    point: Annotated[str | None, typer.Option(help="Only this point.")] = None,
    as_json: JsonOption = False,
) -> None:
    """Mechanical lag, high spot and heavy spot of each point, from what the trial moved."""
    from stillshaft.ui import account, session

    found = session.lags_of(runs, hookup, point)
    doubts = [f"{x.point}: {account.doubt_of(x)}" for x in found if account.doubt_of(x)]
    if as_json:
        rows = [asdict(x) for x in found]
        first = {key: rows[0][key] for key in ("point", "high_spot_deg", "heavy_spot_deg", "lag_deg", "lag_ci95_deg")}
        _print_json("lag", not doubts, doubts, {**first, "points": rows})
    else:
        account.print_lags(found)
    if doubts:
        raise typer.Exit(DO_NOT_TRUST)


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
        _print_json("sources", True, [], {"sources": rows})
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
    revolutions: Annotated[int | None, typer.Option(help="Stop after so many revolutions.", min=2)] = None,
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
    from stillshaft.ui import account, session, taking

    if out.suffix != ".au":
        raise typer.BadParameter(f"{out}: recordings are written as .au; convert them afterwards")
    if mass and not source.startswith(catalogue.SIMULATED):
        raise typer.BadParameter("--mass is for the simulated rotor")
    interval = None if until_interval is None else taking.interval_from(until_interval)
    longest_s = seconds or (15.0 if revolutions is None and interval is None else 120.0)
    placed = tuple((m.plane, m.mass_g, m.angle_deg) for m in session.masses_from(mass or []))
    wired = None if hookup is None else wiring.load_hookup(hookup)
    chosen = catalogue.choose(source, wired, rate, catalogue.Simulation(2, placed, seed, not fast))
    if wired is None:
        if chosen.hookup is None:
            raise typer.BadParameter("--hookup FILE says which inputs to record")
        wired = wiring.hookup_from(chosen.hookup)
    for warning in chosen.warnings:
        _warn(f"warning: {warning}")
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
        _print_json("capture", not reasons, reasons, content)
    else:
        with contextlib.suppress(session.SessionError):  # what cannot be measured is recorded all the same
            account.print_vectors(out.name, session.measure_recording(out, wired))
        ending = f"complete, ended by {taken.ended_by}" if whole else "incomplete"
        typer.echo(f"{out}: {summary.seconds:.2f} s, {summary.frames} frames, {ending}")
    if not whole:
        _warn(f"stillshaft: {out}: {summary.reason}; what was recorded is kept")
        raise typer.Exit(INPUT_UNUSABLE)
    if reasons:
        _warn(f"stillshaft: {out}: {'; '.join(reasons)}")
        raise typer.Exit(DO_NOT_TRUST)


@app.command()
def convert(
    source: Annotated[Path, typer.Argument(help="Recording of any kind that is read.")],
    target: Annotated[Path, typer.Argument(help="What to write: .au, .wav, .flac, .csv, .h5, .mat or .uff.")],
    hookup: HookupOption = None,
) -> None:
    """Write a recording in another format, or read one from elsewhere into a recording of our own."""
    from stillshaft.acquire import exchange
    from stillshaft.acquire import hookup as wiring

    wired = None if hookup is None else wiring.load_hookup(hookup)
    frames = exchange.convert(source, target, wired)
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
        float | None, typer.Option(metavar="RPM", help="Speed on the nameplate, to see a pulse that counts twice.")
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
        findings = wiring.tap_each(chosen.request, wired, _warn)
    else:
        with account.progress("listening") as report:
            findings = wiring.check_source(
                source, hookup, seconds, rate, nameplate, real_time=not fast, report=report, stopped=stopped
            )
    blocks = [f"{f.where}: {f.what}" for f in findings if f.weight == checks.BLOCKS]
    if as_json:
        _print_json("check", not blocks, blocks, {"source": source, "findings": [asdict(f) for f in findings]})
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
        _warn(f"written into {hookup}")
    if as_json:
        rows = [asdict(r) for r in results]
        _print_json("calibrate", True, [], {"recording": str(recording), "method": method, "points": rows})
    else:
        account.print_calibration(results)


@app.command()
def tolerance(
    runs: Annotated[Path | None, typer.Argument(help="Runs file, to show where the rotor stands.")] = None,
    grade: Annotated[str, typer.Option(help="Balance quality grade, such as G6.3.")] = "G6.3",
    rotor_mass: Annotated[str | None, typer.Option(help='Rotor mass, such as "80 kg".')] = None,
    speed: Annotated[float | None, typer.Option(metavar="RPM", help="Highest service speed, r/min.")] = None,
    bearing_span: Annotated[str | None, typer.Option(help='Distance between bearings, such as "900 mm".')] = None,
    centre_of_mass: Annotated[
        str | None, typer.Option(help='Centre of mass from the first bearing, such as "400 mm".')
    ] = None,
    overhung: Annotated[bool, typer.Option(help="The rotor hangs outside its bearings.")] = False,
    as_json: JsonOption = False,
) -> None:
    """Permissible residual unbalance by ISO 21940-11, and where the rotor stands."""
    from stillshaft.solver import limits
    from stillshaft.ui import account, session

    result = session.tolerance_of(
        runs, grade, rotor_mass, speed, bearing_span, centre_of_mass, "overhung" if overhung else None
    )
    if as_json:
        typer.echo(json.dumps(limits.to_json(result, _version()), indent=2, allow_nan=False))
    else:
        account.print_tolerance(result)


@app.command()
def rehearse(
    folder: Annotated[Path | None, typer.Argument(help="New folder for recordings, runs file and account.")] = None,
    planes: Annotated[int, typer.Option(min=1, max=2, help="Correction planes.")] = 2,
    seed: Annotated[int, typer.Option(min=0, help="Draws the scatter and the placement errors.")] = 1,
    fast: Annotated[bool, typer.Option("--fast", help="Not in real time.")] = False,
    as_json: JsonOption = False,
) -> None:
    """A whole balance job on the built-in simulated rotor, end to end, and its account."""
    from stillshaft.ui import account, rehearsal

    with account.progress("") as report:
        outcome = rehearsal.rehearse(folder, planes=planes, seed=seed, real_time=not fast, on_progress=report)
    if as_json:
        _print_json("rehearse", outcome.trusted, list(outcome.reasons), rehearsal.to_json(outcome))
    else:
        account.print_rehearsal(outcome)
    if not outcome.trusted:
        raise typer.Exit(DO_NOT_TRUST)


if __name__ == "__main__":
    main()
