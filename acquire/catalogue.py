"""Sources by the words a person uses for them: a sound input, a recording played again, the simulated rotor."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

from stillshaft.acquire import daq, replay, scenario, serialline, simulated, soundcard, soundserver
from stillshaft.acquire.hookup import Hookup
from stillshaft.acquire.source import SourceError, SourceRequest

SIMULATED, RECORDING = "simulated", "recording:"


@dataclass(frozen=True)
class Chosen:
    """An order for a source; `hookup` is the content of the hook-up that it brings along, `warnings` what to know."""

    request: SourceRequest
    hookup: dict[str, Any] | None
    warnings: tuple[str, ...] = ()


@dataclass(frozen=True)
class Simulation:
    """How the simulated rotor is to run: planes of the demonstration, masses (plane, g, degrees) on it, pace."""

    planes: int = 2
    masses: tuple[tuple[str, float, float], ...] = ()
    seed: int = 1
    real_time: bool = True


def choose(
    text: str, hookup: Hookup | None, rate_hz: float | None = None, simulation: Simulation | None = None
) -> Chosen:
    """The source called `text`: "simulated", "simulated:FILE", "recording:FILE", "serial:PORT", a DAQ, or a sound input.

    A sound input is named as `list_inputs` does. The hook-up says how many inputs are wanted, None: as many as there
    are. Raises SourceError with what is there.
    """
    simulation = simulation or Simulation()
    if text == SIMULATED or text.startswith(f"{SIMULATED}:"):
        return _simulated(text.removeprefix(SIMULATED).removeprefix(":"), simulation)
    if text.startswith(RECORDING):
        return _recording(Path(text.removeprefix(RECORDING)), simulation.real_time)
    if text.startswith(serialline.PREFIX):
        return Chosen(serialline.board_from(text), None)
    if text.startswith((daq.NATIONAL, daq.MEASUREMENT_COMPUTING)):
        return Chosen(_device(text, hookup, rate_hz), None)
    return sound_input(soundcard.find_input(text, soundcard.list_inputs()), hookup, rate_hz)


def sound_input(found: soundcard.SoundInput, hookup: Hookup | None, rate_hz: float | None = None) -> Chosen:
    """A sound input with as many channels as are wired, or as the server's source has, at a rate that needs no change.

    Raises HookupError where it has too few.
    """
    text = f"{found.host_api}/{found.name}"
    wanted = found.channels if hookup is None else hookup.channels
    own = soundserver.default_source() if found.name.lower().startswith(soundserver.NAMES) else None
    if own is not None:  # any other number of inputs or rate, and the server would convert
        wanted, rate_hz = max(wanted, own.channels), rate_hz or own.rate_hz
    if hookup is not None:
        hookup.refuse_fewer_inputs(found.channels, f'source "{text}"')
    warnings: tuple[str, ...] = ()
    if found.converted:
        warnings = (f"{text} passes through software that may convert the samples; prefer an input not marked so",)
    return Chosen(
        soundcard.SoundCard(found.host_api, found.name, wanted, rate_hz or found.default_rate_hz), None, warnings
    )


def _simulated(file: str, simulation: Simulation) -> Chosen:
    """The demonstration, or what a scenario file describes."""
    described = scenario.load(Path(file)) if file else None
    rotor = simulated.demo_rotor(simulation.planes) if described is None else described.rotor
    known = [p.name for p in rotor.planes]
    for plane, _, _ in simulation.masses:
        if plane not in known:
            raise SourceError(f'the simulated rotor has no plane "{plane}"; it has {", ".join(known)}')
    if described is None:
        run = simulated.demo_run(
            simulation.planes, simulation.masses, seed=simulation.seed, real_time=simulation.real_time
        )
        return Chosen(run, simulated.demo_hookup())
    unbalance = simulated.with_masses(rotor, described.unbalance, simulation.masses)
    run = simulated.SimulatedRun(
        rotor, described.sensors, unbalance, described.conditions, simulation.seed, None, simulation.real_time
    )
    return Chosen(run, described.hookup())


def _device(text: str, hookup: Hookup | None, rate_hz: float | None) -> daq.Daq:
    if hookup is None or rate_hz is None:
        raise SourceError(f'source "{text}": needs a hook-up and a sample rate: --hookup FILE --rate HZ')
    for point in hookup.points:
        if abs(point.volts_per_reading / hookup.device.range_v - 1.0) > 1e-9:
            raise SourceError(
                f"point {point.name}: full_scale is {point.volts_per_reading:g} V, the device's range "
                f"{hookup.device.range_v:g} V: make them equal in the hook-up"
            )
    return daq.order_from(text, hookup.channels, rate_hz, hookup.device)


def _recording(path: Path, real_time: bool) -> Chosen:
    from stillshaft.acquire.recording import RecordingError, open_recording

    try:
        with open_recording(path) as reader:
            return Chosen(replay.Replay(path, real_time), reader.hookup)
    except RecordingError as error:
        raise SourceError(str(error)) from None
