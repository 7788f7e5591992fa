"""What is wired up, checked and calibrated: acts of the person around the hook-up file."""

from __future__ import annotations

import os
import tempfile
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from stillshaft.acquire import catalogue
from stillshaft.acquire import hookup as hookups
from stillshaft.dsp import calibration, check, coupling, units
from stillshaft.dsp.units import InputError

if TYPE_CHECKING:
    from stillshaft.acquire.process import Acquisition
    from stillshaft.acquire.source import SourceRequest
    from stillshaft.ui.analysis import Report

Real = NDArray[np.float64]

METHODS = ("voltage", "shaker", "split", "step")
_LONGEST_S = 60.0
_QUIET_S, _FLOOR = 1.0, 1e-6
_TAP = 12.0  # a tap is so many times the deviation before
_LEFT_DEG = 1.0  # of phase that a delay does not explain: more is said
_SHAKEN = 0.1  # of the strongest point's tone: others have nothing of the shaker


class WiringError(InputError):
    """Something that cannot be checked or calibrated: the message says why and what to do."""


def choose(
    source: str, hookup: Path | None, rate_hz: float | None, real_time: bool
) -> tuple[catalogue.Chosen, hookups.Hookup]:
    """The source, and the hook-up named or brought along."""
    wired = None if hookup is None else hookups.load_hookup(hookup)
    chosen = catalogue.choose(source, wired, rate_hz, catalogue.Simulation(real_time=real_time))
    if wired is None:
        if chosen.hookup is None:
            raise WiringError(f"{source}: carries no hook-up; name one with --hookup FILE")
        wired = hookups.hookup_from(chosen.hookup)
    return chosen, wired


def check_source(
    source: str,
    hookup: Path | None,
    seconds: float,
    rate_hz: float | None,
    nameplate_rpm: float | None,
    *,
    real_time: bool,
    report: Report,
    stopped: bool = False,
) -> tuple[check.Finding, ...]:
    """Listen to a source for a while and say what is wrong with its signals. Raises the errors of its parts."""
    from stillshaft.acquire import process
    from stillshaft.acquire.recording import open_recording

    chosen, wired = choose(source, hookup, rate_hz, real_time)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "check.au"
        names = wired.channel_names(wired.channels)
        summary = process.capture(chosen.request, path, min(seconds, _LONGEST_S), wired.table, names, report)
        with open_recording(path) as reader:
            samples = np.concatenate([b.samples for b in reader.blocks()])
            heard_hz = reader.rate_hz
    wired.refuse_fewer_inputs(samples.shape[1], source)
    found = [check.Finding(source, check.CAUTION, warning, "") for warning in chosen.warnings]
    if summary.gaps:
        what = f"lost samples at {len(summary.gaps)} places"
        found.append(check.Finding(source, check.BLOCKS, what, "close other programs; try another port or cable"))
    found += check.examine(samples, heard_hz, wired.pulse, wired.points, wired.display, nameplate_rpm, stopped=stopped)
    return tuple(found)


def tap_each(
    request: SourceRequest,
    hookup: hookups.Hookup,
    prompt: Callable[[str], None],
    patience_s: float = 20.0,
    *,
    told: Callable[[check.Finding], None] | None = None,
    waiting: Callable[[], None] | None = None,
) -> tuple[check.Finding, ...]:
    """Ask for a tap at each sensor, machine standing still, and tell whether it shows at the input of the hook-up.

    The tap goes towards the sensor: its first motion must read positive. `told` hears each finding at once, `waiting` is
    called again and again, and ends the check by what it raises. Raises the errors of the source.
    """
    from stillshaft.acquire.process import Acquisition

    found = []
    go_on = waiting or (lambda: None)
    with Acquisition(request) as acquisition:
        hookup.refuse_fewer_inputs(acquisition.channels, acquisition.description)
        quiet = _heard(acquisition, _QUIET_S, go_on)
        for point in hookup.points:
            prompt(f"tap at {point.name}, towards its sensor")
            found.append(_tapped(acquisition, point, hookup, quiet, patience_s, go_on))
            if told is not None:
                told(found[-1])
            _heard(acquisition, _QUIET_S, go_on)  # let it ring out
    return tuple(found)


def _heard(acquisition: Acquisition, seconds: float, go_on: Callable[[], None]) -> Real:
    """Deviation of each input over so many seconds of its samples, which may come late."""
    parts: list[Real] = []
    frames = 0
    while frames < seconds * acquisition.rate_hz:
        go_on()
        block = acquisition.read()
        if block is None:
            if acquisition.failure is not None:
                raise WiringError(f"{acquisition.description}: {acquisition.failure}")
            time.sleep(0.01)
        else:
            parts.append(block.samples.astype(np.float64))
            frames += len(block.samples)
    return np.asarray(np.concatenate(parts).std(axis=0) + _FLOOR)


def _tapped(
    acquisition: Acquisition,
    point: hookups.Point,
    hookup: hookups.Hookup,
    quiet: Real,
    patience_s: float,
    go_on: Callable[[], None],
) -> check.Finding:
    """What the next tap says of a point; patience is counted in samples, or by the clock while none come."""
    names = hookup.channel_names(acquisition.channels)
    where = f"{point.name}, input {point.index + 1}"
    frames, deadline = 0, time.monotonic() + patience_s
    while frames < patience_s * acquisition.rate_hz and time.monotonic() < deadline:
        go_on()
        block = acquisition.read()
        if block is None:
            if acquisition.failure is not None:
                raise WiringError(f"{acquisition.description}: {acquisition.failure}")
            time.sleep(0.01)
            continue
        frames += len(block.samples)
        deadline = time.monotonic() + patience_s
        over = np.abs(block.samples / quiet)
        over[:, hookup.pulse.index] = 0.0
        loudest = int(over.max(axis=0).argmax())
        if over[:, loudest].max() < _TAP:
            continue
        if loudest != point.index:
            what = f'the tap shows at input {loudest + 1} ("{names[loudest]}")'
            return check.Finding(where, check.BLOCKS, what, "change the cables or the input numbers in the hook-up")
        first = float(block.samples[int(np.argmax(over[:, loudest] > 0.3 * _TAP)), loudest]) * point.si_per_reading
        if first < 0.0:
            cure = "turn the sensor, or set inverted the other way in the hook-up"
            return check.Finding(where, check.CAUTION, "the tap towards the sensor reads negative", cure)
        return check.Finding(where, check.FINE, "the tap shows here and reads positive", "")
    return check.Finding(where, check.BLOCKS, f"no tap was seen in {patience_s:.0f} s", "check cable and mounting")


@dataclass(frozen=True)
class Calibrated:
    """A key of a point in the hook-up as it was and as it was found, in the file's own words, with half widths."""

    point: str
    key: str
    before: str
    values: tuple[str, ...]
    ci95: tuple[str, ...]
    remark: str


def calibrate(
    method: str,
    recording: Path,
    hookup: Path,
    points: Sequence[str],
    volts: str | None,
    level: str,
    frequency_hz: float,
) -> tuple[Calibrated, ...]:
    """Values of the hook-up that a recording of a known signal gives. Raises WiringError that names the file."""
    if method not in METHODS:
        raise WiringError(f'method "{method}": {", ".join(METHODS[:-1])} or {METHODS[-1]}')
    return calibrate_wired(
        method, recording, hookups.load_hookup(hookup), points, volts, level, frequency_hz, str(hookup)
    )


def calibrate_wired(
    method: str,
    recording: Path,
    wired: hookups.Hookup,
    points: Sequence[str],
    volts: str | None,
    level: str,
    frequency_hz: float,
    where: str = "hook-up",
) -> tuple[Calibrated, ...]:
    """The same for a hook-up that was read already; `where` names it in messages."""
    chosen = _chosen(wired, points, where)
    samples, rate_hz = _samples(recording, wired)
    try:
        if method == "voltage":
            if volts is None:
                raise WiringError('voltage: say how many, as rms of the sine, with --volts "1 V"')
            known_v = units.parse(volts, "V", "--volts")
            return tuple(_full_scale(p, samples[:, p.index], rate_hz, known_v) for p in chosen)
        if method == "shaker":
            shaken = chosen if points else _shaken(chosen, samples, rate_hz)
            known = units.parse(level, "m/s^2", "--level", gravity=True)
            return tuple(_sensitivity(p, samples[:, p.index], rate_hz, known, frequency_hz) for p in shaken)
        if method == "split":
            return _split(wired, chosen, samples, rate_hz)
        return tuple(_corners(p, samples[:, p.index], rate_hz) for p in chosen)
    except (calibration.CalibrationError, coupling.CouplingError, units.UnitError) as error:
        raise WiringError(f"{recording}: {error}") from None


def _chosen(wired: hookups.Hookup, names: Sequence[str], where: str) -> tuple[hookups.Point, ...]:
    known = {p.name: p for p in wired.points}
    for name in names:
        if name not in known:
            raise WiringError(f'{where}: has no point "{name}"; it has {", ".join(known)}')
    return tuple(known[n] for n in names) or wired.points


def _samples(recording: Path, wired: hookups.Hookup) -> tuple[Real, float]:
    from stillshaft.acquire.exchange import open_any

    with open_any(recording, wired) as reader:
        wired.refuse_fewer_inputs(reader.channels, str(recording))
        if reader.frames > 120.0 * reader.rate_hz:
            raise WiringError(f"{recording}: {reader.frames / reader.rate_hz:.0f} s are too long; 5 to 120 s will do")
        if reader.gaps:
            raise WiringError(f"{recording}: samples were lost in it: record again")
        return np.concatenate([b.samples for b in reader.blocks()]).astype(np.float64), reader.rate_hz


def _entry(point: hookups.Point, wanted: str) -> str:
    return str(point.table.get(wanted, {"full_scale": "2.0 V", "delay": "0 us", "highpass": "none"}.get(wanted, "")))


def _full_scale(point: hookups.Point, readings: Real, rate_hz: float, known_v: float) -> Calibrated:
    found = calibration.full_scale_volts(readings, rate_hz, known_v)
    return Calibrated(
        point.name, "full_scale", _entry(point, "full_scale"), (f"{found.value:.5g} V",), (f"{found.ci95:.2g} V",), ""
    )


def _sensitivity(point: hookups.Point, readings: Real, rate_hz: float, known: float, frequency_hz: float) -> Calibrated:
    if point.quantity != "acceleration":
        raise WiringError(f"{point.name}: measures {point.quantity}; a shaker calibrates accelerometers")
    found = calibration.shaker_sensitivity(readings, rate_hz, point.volts_per_reading, known, frequency_hz)
    per_g = 1000.0 * units.STANDARD_GRAVITY_M_S2
    return Calibrated(
        point.name, "sensitivity", _entry(point, "sensitivity"), (f"{found.value * per_g:.5g} mV/g",),
        (f"{found.ci95 * per_g:.2g} mV/g",), "",
    )  # fmt: skip


def _shaken(points: Sequence[hookups.Point], samples: Real, rate_hz: float) -> tuple[hookups.Point, ...]:
    """The points that the shaker was held to: those with its tone."""
    tone = calibration.tones_of(samples[:, [p.index for p in points]], rate_hz)
    size = np.abs(tone.vectors[0])
    return tuple(p for p, s in zip(points, size, strict=True) if s > _SHAKEN * size.max())


def _split(
    wired: hookups.Hookup, points: Sequence[hookups.Point], samples: Real, rate_hz: float
) -> tuple[Calibrated, ...]:
    inputs = [wired.pulse.index, *(p.index for p in points)]
    found = calibration.split_signal(samples[:, inputs], rate_hz)[1:]
    rows = []
    for point, channel in zip(points, found, strict=True):
        remark = f"reads {channel.gain.value:.5f} ± {channel.gain.ci95:.5f} of the pulse input"
        if channel.worst_deg > _LEFT_DEG:
            remark += (
                f"; {channel.worst_deg:.1f}° of phase are left that no delay explains: calibrate its AC-coupling corner "
                "with a step"
            )
        rows.append(
            Calibrated(
                point.name, "delay", _entry(point, "delay"), (f"{1e6 * channel.delay_s.value:.4f} us",),
                (f"{1e6 * channel.delay_s.ci95:.2g} us",), remark,
            )
        )  # fmt: skip
    return tuple(rows)


def _corners(point: hookups.Point, readings: Real, rate_hz: float) -> Calibrated:
    found = coupling.fit_corners(readings, rate_hz)
    return Calibrated(
        point.name, "highpass", _entry(point, "highpass"), tuple(f"{c:.5g} Hz" for c in found.corners_hz),
        tuple(f"{c:.2g} Hz" for c in found.ci95_hz), "",
    )  # fmt: skip


def write_calibration(hookup: Path, method: str, results: Sequence[Calibrated]) -> None:
    """Write the values into the hook-up file, whole or not at all; comments and order stay as they are."""
    import tomlkit

    document = tomlkit.parse(hookup.read_text(encoding="utf-8"))
    today = datetime.now(UTC).date()
    for result in results:
        entry = next(p for p in document["point"] if p["name"] == result.point)
        several = result.key == "highpass"
        entry[result.key] = list(result.values) if several else result.values[0]
        done = entry.get("calibrated", tomlkit.inline_table())
        done["date"], done["method"] = today, method
        done[f"{result.key}_ci95"] = list(result.ci95) if several else result.ci95[0]
        entry["calibrated"] = done
    text = tomlkit.dumps(document)
    part = hookup.with_name(f".{hookup.name}.part")
    try:
        part.write_text(text, encoding="utf-8")
        hookups.load_hookup(part)  # what is written must be readable
        os.replace(part, hookup)
    except OSError as error:
        raise WiringError(f"{hookup}: cannot be written: {error.strerror}") from None
    finally:
        part.unlink(missing_ok=True)
