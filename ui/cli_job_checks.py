"""The verbs of a job that measure: checks, runs, and whether a run counts; `ui.cli_job` documents their keys."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer
from stillshaft.dsp.units import shown
from stillshaft.ui.command import DO_NOT_TRUST, JsonOption, warn
from stillshaft.ui.job_command import (
    AcknowledgeOption,
    FastOption,
    FolderArgument,
    JobVerbError,
    NoteOption,
    RateOption,
    SecondsOption,
    SeedOption,
    SourceArgument,
    WasOption,
    WhyOption,
    acknowledge_start,
    act_done,
    jobs,
    opened,
    print_next,
    run_row,
    said,
    stop_called,
)

if TYPE_CHECKING:
    from stillshaft.acquire.catalogue import Chosen
    from stillshaft.dsp.measure import Measurement
    from stillshaft.ui.session import Session


@jobs.command()
def check(
    context: typer.Context,
    folder: FolderArgument,
    what: Annotated[str, typer.Argument(metavar="signals|spectrum|sweep|bump|background|settling|repeatability|swap")],
    source: SourceArgument = None,
    recording: Annotated[Path | None, typer.Option(metavar="FILE", help="Instead of a source.")] = None,
    run: Annotated[str | None, typer.Option(metavar="NAME", help="The recording of this run.")] = None,
    stopped: Annotated[bool, typer.Option("--stopped", help="signals: the machine stands still.")] = False,
    point: Annotated[
        list[str] | None, typer.Option(help="swap: one of the two points whose sensors were exchanged; give both.")
    ] = None,
    seconds: SecondsOption = None,
    rate: RateOption = None,
    seed: SeedOption = None,
    fast: FastOption = False,
    acknowledge: AcknowledgeOption = None,
    as_json: JsonOption = False,
) -> None:
    """A check by measurement, kept with its recording as evidence."""
    from stillshaft.ui import account, account_job, taking

    if sum(x is not None for x in (source, recording, run)) > 1:
        raise typer.BadParameter("give a source, --recording or --run: one of them")
    with opened(context, folder) as session:
        since, wired = len(session.job.events), session.state.hookup
        path = recording
        if run is not None:
            path = _recording_of(session, run)
        elif source is not None:
            chosen = _source(session, source, rate, seed, fast)
            if what not in ("bump", "background") and not stopped:
                acknowledge_start(session, acknowledge)
            _wire(session, chosen)
            wired = session.state.hookup
            with account.live() as live, stop_called(session):
                path = session.record_source(chosen.request, taking.Stop(seconds or 20.0), live)
        with account.progress(what) as report:
            event, checked = session.check(what, path, stopped=stopped, points=point or (), report=report)
        if as_json:
            kept = None if event.what.recording is None else event.what.recording.path
            content = {"what": checked.what, "figures": checked.figures, "recording": kept}
            said(session, "check", content, since=since, trusted=checked.trusted, reasons=checked.reasons)
        else:
            account_job.print_checked(checked)
            typer.echo(f"recorded as entry {event.id}")
            if session.state.hookup != wired and session.hookup is not None:
                typer.echo(f"the {session.hookup.pulse.edge} edge of the pulse is kept for all runs")
    if not checked.trusted:
        warn(f"do not trust this check: {shown('; '.join(checked.reasons), 400)}")
        raise typer.Exit(DO_NOT_TRUST)


def _recording_of(session: Session, run: str) -> Path:
    found = session.run_named(run).what.recording
    if found is None:
        raise JobVerbError(f'run "{run}": has no recording')
    return session.job.file(found.path)


# runs


@jobs.command()
def run(
    context: typer.Context,
    folder: FolderArgument,
    source: SourceArgument = None,
    recording: Annotated[
        Path | None, typer.Option(metavar="FILE", help="A recording that was made before, instead of a source.")
    ] = None,
    kind: Annotated[
        str | None,
        typer.Option(
            "--kind",
            "--purpose",
            metavar="initial|repeat|trial|correction|trim|check|slow roll|re-reference",
            help="What the run is for; by what is on the rotor unless given.",
        ),
    ] = None,
    name: Annotated[str | None, typer.Option(help="Name of the run; by its kind unless given.")] = None,
    mass: Annotated[
        list[str] | None,
        typer.Option(metavar='"PLANE = MASS at ANGLE"', help="Put on before this run, beside what is on already."),
    ] = None,
    condition: Annotated[
        list[str] | None, typer.Option(metavar='"NAME = VALUE"', help='Such as "load = 80 %"; again for several.')
    ] = None,
    minutes: Annotated[
        float | None, typer.Option(min=0.0, help="Minutes since the start, where settling counts.")
    ] = None,
    settle: Annotated[
        float | None,
        typer.Option(
            metavar="MINUTES",
            min=0.1,
            help="First watch 1x until it stands still (2 % and 2° in five minutes), for so long at the most.",
        ),
    ] = None,
    note: NoteOption = "",
    use_anyway: Annotated[
        str | None, typer.Option(metavar="WHY", help="Count it nevertheless, with the reason.")
    ] = None,
    acknowledge: AcknowledgeOption = None,
    running: Annotated[
        bool, typer.Option("--running", help="The machine ran on since the last run: no new start.")
    ] = False,
    temperature: WasOption = None,
    seconds: SecondsOption = None,
    revolutions: Annotated[int | None, typer.Option(help="Stop after so many revolutions.", min=2)] = None,
    until_interval: Annotated[
        str | None, typer.Option(metavar='"2 % 1 deg"', help="Stop when every 95 % interval is as narrow as this.")
    ] = None,
    rate: RateOption = None,
    seed: SeedOption = None,
    fast: FastOption = False,
    as_json: JsonOption = False,
) -> None:
    """Take a run from a source or a recording, measure it, and say whether it counts and what changed."""
    from stillshaft.ui import account, account_job, job_masses
    from stillshaft.ui.session import Wanted

    if (source is None) == (recording is None):
        raise typer.BadParameter("give a source or --recording: one of them")
    if settle is not None and source is None:
        raise typer.BadParameter("--settle: a recording was made before; only a source can be watched")
    if temperature is not None and (source is None or running):
        raise typer.BadParameter("--was: is said of a start, and this run has none")
    with opened(context, folder) as session:
        session.refuse_closed()
        since = len(session.job.events)
        wanted = Wanted(kind, name, _conditions(session, condition or []), minutes, note, use_anyway)
        session.refuse_wanted(wanted)  # before the machine is started for it
        pieces = job_masses.pieces_from(mass or [], session.brief.planes)
        _refuse_twice(session, pieces)
        put = session.put_on(pieces, _purpose_of(kind, session)) if pieces else None
        try:
            path = recording
            if source is not None:
                stop = _stop(session, seconds, revolutions, until_interval)
                chosen = _source(session, source, rate, seed, fast)
                acknowledge_start(session, acknowledge)
                _wire(session, chosen)
                if not running:
                    session.count_start(temperature)
                with account.live() as live, stop_called(session):
                    settle_s = None if settle is None else 60.0 * settle
                    path = session.record_source(chosen.request, stop, live, settle_s=settle_s)
            assert path is not None
            with account.progress("measuring") as report, stop_called(session):
                taken = session.add_run(path, wanted, report)
        except BaseException:
            if put is not None:
                session.withdraw(put.id, "the run it was put on for was not taken")
            raise
        counts, reasons = taken.run.counts, list(taken.run.reasons)
        if as_json:
            content = {
                "run": run_row(taken.run),
                "counts": counts,
                "refusals": [asdict(f) for f in taken.judgement.refusals],
                "cautions": [asdict(f) for f in taken.judgement.cautions],
                "against": taken.against,
                "changes": [asdict(c) for c in taken.changes],
                "turn": None if taken.turn is None else asdict(taken.turn),
                "settling": _settling_seen(session, since),
                "next": session.advice().sentence,
            }
            said(session, "run", content, since=since, trusted=counts, reasons=reasons)
        else:
            account_job.print_run(taken)
            if source is not None:
                _say_settling(session, since, taken.measured)
            print_next(session)
    if not counts:
        warn(f'run "{shown(taken.run.what.name)}" does not count: {shown("; ".join(reasons), 400)}')
        raise typer.Exit(DO_NOT_TRUST)


def _settling_seen(session: Session, since: int) -> dict[str, Any] | None:
    """What was recorded of settling by this act."""
    seen = [e.what for e in session.job.events[since:] if e.kind == "measured" and e.what.what == "settling"]
    return None if not seen else {key: seen[-1].figures[key] for key in ("verdict", "reason", "watched_s", "points")}


def _say_settling(session: Session, since: int, measured: Measurement) -> None:
    """How 1x moved: as it was watched before the run, else in the run itself."""
    from stillshaft.ui import settling

    seen = _settling_seen(session, since)
    if seen is None:
        typer.echo(f"{settling.of_measurement(measured).sentence} (--settle MINUTES watches it before a run)")
        return
    how = "settled" if seen["verdict"] == settling.SETTLED else "not settled"
    typer.echo(f"{how} after {seen['watched_s'] / 60.0:.1f} min: {seen['reason']}")


def _purpose_of(kind: str | None, session: Session) -> str:
    """What masses of a run are for: a trial unless the run, or a plan, says otherwise."""
    if kind in ("trial", "trim", "correction"):
        return kind
    return "correction" if kind == "check" or (kind is None and session.state.plans) else "trial"


def _refuse_twice(session: Session, pieces: Sequence[dict[str, Any]]) -> None:
    """Raise where a mass of `--mass` is on the rotor already: it would count double."""
    for piece in pieces:
        for on in session.state.on_rotor:
            same = on.piece.plane == piece["plane"] and abs(on.piece.mass_g - piece["mass_g"]) < 1e-6
            if same and abs(on.piece.angle_deg - piece["angle_deg"]) < 1e-6:
                raise JobVerbError(
                    f'mass on "{piece["plane"]}": is on the rotor already (entry {on.of}); leave --mass out, or record a '
                    "second one with `job mass`"
                )


def _conditions(session: Session, texts: Sequence[str]) -> dict[str, float | str]:
    """Conditions such as "load = 80 %": a number in the brief's unit, else the words as they are."""
    import re

    units = {c.name: c.unit for c in session.brief.conditions}
    found: dict[str, float | str] = {}
    for text in texts:
        name, equals, value = (part.strip() for part in text.partition("="))
        if not equals or not name or not value:
            raise JobVerbError(f'condition "{text}": write name = value, such as "load = 80 %"')
        number = re.fullmatch(r"([-+]?\d{1,12}(?:\.\d{1,12})?)\s*(.*)", value)
        unit = units.get(name)
        if number and unit and number[2] not in ("", unit):
            raise JobVerbError(f'condition "{text}": the brief has {name} in {unit}; give it in that')
        found[name] = float(number[1]) if number else value
    return found


def _stop(session: Session, seconds: float | None, revolutions: int | None, until_interval: str | None) -> Any:
    """When a run from a source ends: what a run needs at least, unless something is asked for."""
    from stillshaft.solver.run_checks import limits
    from stillshaft.ui import taking

    interval = None if until_interval is None else taking.interval_from(until_interval)
    rpm = session.brief.rotor.speed_rpm or (session.state.runs[0].what.speed_rpm if session.state.runs else 600.0)
    least = max(limits().seconds, 60.0 * (limits().revolutions + 2) / rpm) + 1.0
    longest = seconds or (least if revolutions is None and interval is None else max(120.0, least))
    return taking.Stop(longest, revolutions, interval)


def _source(session: Session, source: str, rate: float | None, seed: int | None, fast: bool) -> Chosen:
    """The source; the simulated rotor with what the record has on it."""
    from stillshaft.acquire import catalogue

    planes = {p.name: p for p in session.brief.planes}
    placed = []
    for on in session.state.on_rotor:
        plane = planes.get(on.piece.plane)
        placed.append((on.piece.plane, on.piece.mass_g * _leverage(on.piece, plane), on.piece.angle_deg))
    number = len(session.job.events) if seed is None else seed
    simulation = catalogue.Simulation(1 if set(planes) == {"disc"} else 2, tuple(placed), number, not fast)
    wired = session.hookup
    chosen = catalogue.choose(source, wired, rate, simulation)
    for warning in chosen.warnings:
        warn(f"warning: {warning}")
    if wired is None and chosen.hookup is None:
        raise JobVerbError("the job has no hook-up yet: set one with `stillshaft job hookup DIR FILE`")
    return chosen


def _wire(session: Session, chosen: Chosen) -> None:
    """The hook-up that a source brings along becomes the job's where there is none."""
    if session.state.hookup is None and chosen.hookup is not None:
        session.wire(chosen.hookup)


def _leverage(piece: Any, plane: Any) -> float:
    """Radius of a piece over that of its plane."""
    from stillshaft.dsp import units

    if piece.radius_mm is None or plane is None or plane.radius is None:
        return 1.0
    return float(piece.radius_mm / units.parse(plane.radius, "mm", f'plane "{plane.name}".radius'))


@jobs.command()
def use(
    context: typer.Context,
    folder: FolderArgument,
    run: Annotated[str, typer.Argument(help="The run, by name or entry.")],
    why: WhyOption,
    leave_out: Annotated[bool, typer.Option("--leave-out", help="It counts no longer.")] = False,
    as_json: JsonOption = False,
) -> None:
    """Let a run count that was doubted, or leave one out."""
    with opened(context, folder) as session:
        since = len(session.job.events)
        session.use(session.run_named(run).id, why, counts=not leave_out)
        act_done(session, "use", since, as_json)
