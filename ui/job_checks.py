"""Measured checks of a job: each turns a recording into figures for the record, and into evidence for the diagnosis.

The figures are those that the verb of the same name prints with `--json`; `evidence` beside them holds {value, low, high,
where} or {word, where} by quantity of the diagnosis. `from_record` reads the evidence of a whole job again.
"""

from __future__ import annotations

import contextlib
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass, field, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

import numpy as np
from numpy.typing import NDArray
from stillshaft.acquire.hookup import Hookup
from stillshaft.dsp import vectors
from stillshaft.dsp.units import InputError
from stillshaft.solver import diagnosis, diagnosis_rules, evidence, evidence_warming, inspection
from stillshaft.solver.diagnosis import Evidence, Figure, Word
from stillshaft.solver.events import Run
from stillshaft.solver.evidence import Place
from stillshaft.solver.inspection import Repeat
from stillshaft.solver.state import JobRun, JobState
from stillshaft.ui import analysis
from stillshaft.ui.settling import Watched
from stillshaft.ui.settling import of_measurement as settling_of

if TYPE_CHECKING:
    from stillshaft.acquire.exchange import Reader
    from stillshaft.dsp import check
    from stillshaft.dsp.content import Content
    from stillshaft.solver.brief import Brief
    from stillshaft.ui.analysis import Report

SIGNALS = "signal check"
_DIRECTIONS = re.compile(r"\b(horizontal|vertical|axial|radial)\b", re.IGNORECASE)
_LONGEST_S = 120.0
_MOST_MOMENTS = 400  # of a machine watched, kept in the record


class CheckError(InputError):
    """A check that cannot be made with what there is: the message says what is missing."""


@dataclass(frozen=True)
class Checked:
    """What a check found: figures for the record, whether they can be trusted and why not, and one line a finding."""

    what: str
    figures: dict[str, Any]
    trusted: bool
    reasons: tuple[str, ...]
    lines: tuple[str, ...] = field(default=())


def places(hookup: Hookup) -> tuple[Place, ...]:
    """Where the points sit, the bearing by the point's name without its direction: "fan end horizontal" is at "fan end"."""
    return tuple(
        Place(
            p.name,
            " ".join(_DIRECTIONS.sub(" ", p.name).split()) or p.name,
            None if p.direction == "axial" else p.angle_deg,
        )
        for p in hookup.points
    )


def spectrum(path: Path, hookup: Hookup, report: Report | None = None, brief: Brief | None = None) -> Checked:
    """What the vibration consists of, and the evidence of vectors and spectrum together.

    Belts, the other shaft, neighbours and the mains of the brief are looked for by their frequencies.
    """
    from stillshaft.dsp import content
    from stillshaft.solver.beside import Beside, beside

    measured = analysis.measure_recording(path, hookup, report=_part(report, 0.0, 0.33))
    near = Beside() if brief is None else beside(brief, measured.speed.mean_rpm)
    found = analysis.spectrum_recording(path, hookup, near.all, report=_part(report, 0.33, 1.0))
    told = diagnosis.merged(
        evidence.from_content(
            found,
            belts=near.belts,
            other_shafts=near.other_shafts,
            neighbours=near.neighbours,
            line=near.line,
            poles=near.poles,
        ),
        evidence.from_measurement(measured, places(hookup), found, near.all),
    )
    shares = [
        f"{p.name}: {', '.join(f'{group} {share:.0f} %' for group, share in p.shares.items() if share >= 1.0)}"
        for p in found.points
    ]
    beside_lines = [
        f"{c.name}: by the brief at {c.rpm / 60.0:.2f} ± {c.within_rpm / 60.0:.2f} Hz; {_seen(found, c.name)}"
        for c in near.all
    ]
    figures = content.to_json(found) | {"evidence": packed(told), "candidates": [asdict(c) for c in near.all]}
    return Checked("spectrum", figures, measured.trusted, measured.reasons, (*shares, *beside_lines, *found.warnings))


def _seen(found: Content, name: str) -> str:
    """Where the strongest peak that may be a candidate's is, in words."""
    peaks = [
        (k, p.name)
        for p in found.points
        for k in p.peaks
        if k.fits and (k.fits[0] == name or k.fits[0].endswith(f" × {name}"))
    ]
    if not peaks:
        return "no peak fits it alone"
    peak, point = max(peaks, key=lambda p: p[0].amplitude)
    return f"{peak.fits[0]} at {peak.frequency_hz:.2f} Hz, {peak.amplitude:.3g} {found.unit} at {point}"


def _part(report: Report | None, begin: float, end: float) -> Report | None:
    """The same report for a part of the whole."""
    if report is None:
        return None

    def part(share: float, text: str) -> None:
        report(begin + (end - begin) * share, text)

    return part


def sweep(path: Path, hookup: Hookup, running_rpm: float | None, report: Report | None = None) -> Checked:
    """Run-up or coast-down: resonances and the margin of running speed to them."""
    from stillshaft.dsp import sweep as sweeps

    found = analysis.sweep_recording(path, hookup, sweeps.Wanted(running_rpm=running_rpm), report)
    figures = sweeps.to_json(found) | {"evidence": packed(evidence.from_sweep(found))}
    margin = "no resonance was found" if found.margin_percent is None else f"margin {found.margin_percent:.1f} %"
    lines = [f"{found.direction}, {found.slowest_rpm:.0f} to {found.fastest_rpm:.0f} r/min: {margin}"]
    lines += [
        f"{p.name}: resonance at {r.rpm.value:.0f} r/min, amplification {r.amplification.value:.1f}"
        for p in found.points
        for r in p.resonances
    ]
    return Checked("sweep", figures, found.trusted, found.reasons, (*lines, *found.warnings))


def bump(path: Path, hookup: Hookup, running_rpm: float | None, report: Report | None = None) -> Checked:
    """Natural frequencies of the standing machine from blows with a soft hammer. Raises CheckError, RingDownError."""
    from stillshaft.dsp import ringdown

    if running_rpm is None:
        raise CheckError('bump test: the brief does not say the running speed; set "rotor.speed_rpm"')
    with _unbroken(path, hookup) as reader:
        struck = ringdown.Struck(reader.rate_hz, hookup.points, hookup.pulse)
        _feed(reader, struck.feed, report, "looking for hits")
    rung = struck.result()
    lines = [
        f"{m.frequency_hz:.1f} Hz ({m.rpm:.0f} r/min), damping ratio {m.damping_ratio:.3f}, seen best at {m.point}"
        for m in rung.modes
    ]
    told = packed(evidence.from_ring_down(rung, running_rpm))
    figures = asdict(rung) | {"running_rpm": running_rpm, "evidence": told}
    return Checked("bump", figures, True, (), (*lines, *rung.warnings))


def background(
    path: Path, hookup: Hookup, speed_rpm: float | None, levels: Mapping[str, float], report: Report | None = None
) -> Checked:
    """What the neighbours make of 1x while this machine stands, over each point's 1x. Raises CheckError, StandingError."""
    from stillshaft.dsp import standing

    if speed_rpm is None or not levels:
        raise CheckError("background: is held against 1x; take an initial run first")
    with _unbroken(path, hookup) as reader:
        heard = standing.Background(reader.rate_hz, hookup.points, hookup.display, speed_rpm, hookup.pulse)
        _feed(reader, heard.feed, report, "listening to the neighbours")
    found = heard.result()
    told = packed(evidence.from_background(found, levels))
    lines = [f"{b.name}: {b.level:.3g} ± {b.ci95:.1g} {b.unit} with the machine stopped" for b in found]
    return Checked("background", {"levels": [asdict(b) for b in found], "evidence": told}, True, (), tuple(lines))


def signals(
    path: Path, hookup: Hookup, nameplate_rpm: float | None, report: Report | None = None, *, stopped: bool = False
) -> Checked:
    """The signal check: pulse, levels, noise, hum, crosstalk."""
    from stillshaft.dsp import check

    samples, rate_hz = _samples(path, hookup, report)
    found = check.examine(samples, rate_hz, hookup.pulse, hookup.points, hookup.display, nameplate_rpm, stopped=stopped)
    return findings(SIGNALS, found) if stopped else signals_found(samples, rate_hz, hookup, found)


def signals_found(
    samples: NDArray[np.floating[Any]], rate_hz: float, hookup: Hookup, found: Sequence[check.Finding]
) -> Checked:
    """The signal check of a turning machine, with how the mark is seen where nothing blocks: later runs must see it so."""
    from stillshaft.dsp import check

    made = findings(SIGNALS, found)
    if not made.trusted or (mark := check.mark_of(samples[:, hookup.pulse.index], rate_hz, hookup.pulse)) is None:
        return made
    wired = {k: v for k, v in hookup.table.get("pulse", {}).items() if k != "edge"}
    return replace(made, figures={**made.figures, "mark": {**asdict(mark), "pulse": wired}})


def findings(what: str, found: Sequence[check.Finding]) -> Checked:
    """Findings as evidence, in the form that the measured checks of a job have."""
    from stillshaft.dsp import check

    blocks = tuple(f"{f.where}: {f.what}" for f in found if f.weight == check.BLOCKS)
    lines = tuple(f"{f.weight}: {f.where}: {f.what}" + (f"; {f.cure}" if f.cure else "") for f in found)
    return Checked(what, {"findings": [asdict(f) for f in found]}, not blocks, blocks, lines)


def settling(path: Path, hookup: Hookup, report: Report | None = None) -> Checked:
    """Whether 1x stood still over the last five minutes of a recording, at the point that moved most."""
    return settled(settling_of(analysis.measure_recording(path, hookup, 1.0, report)))


def settled(watched: Watched) -> Checked:
    """What was seen of 1x while it settled, as evidence: its vectors against time too."""
    if not watched.points:
        raise CheckError(f"settling: {watched.sentence}; look at pulse and sensors")
    name, worst = watched.worst
    every = max(1, -(-watched.times_s.size // _MOST_MOMENTS))
    figures = {
        "verdict": worst.verdict,
        "reason": f"{name}: {worst.reason}",
        "watched_s": watched.seconds,
        "points": {n: asdict(s) for n, s in watched.points.items()},
        "times_s": watched.times_s[::every].tolist(),
        "speeds_rpm": watched.speeds_rpm[::every].tolist(),
        "vectors": {
            n: [list(vectors.amplitude_phase(complex(v))) for v in values[::every]] for n, values in watched.z.items()
        },
    }
    lines = tuple(f"{n}: {s.verdict}: {s.reason}" for n, s in watched.points.items())
    return Checked("settling", figures, True, (), lines)


def swap(path: Path, hookup: Hookup, state: JobState, points: Sequence[str], report: Report | None = None) -> Checked:
    """What two sensors read in each other's place, against an earlier run with the same masses on.

    Raises CheckError for other than two points of the hook-up, RecordError where there is no such run.
    """
    import msgspec
    from stillshaft.solver import replay, run_rules

    names = [p.name for p in hookup.points]
    if len(points) != 2 or points[0] == points[1] or any(p not in names for p in points):
        raise CheckError(
            f"swap: name two of the points {', '.join(names)}, whose sensors sit in each other's place now"
        )
    measured = analysis.measure_recording(path, hookup, 1.0, report)
    masses = [msgspec.to_builtins(on.piece) for on in state.on_rotor]
    fields = {**replay.run_fields(measured), "name": "swap", "masses": masses}
    found = run_rules.swap_test(state, fields, points[0], points[1])
    differ = found.verdict == "differ"
    return Checked("swap of sensors", asdict(found), not differ, (found.sentence,) if differ else (), (found.sentence,))


def repeatability(first: JobRun, second: JobRun, assumed: tuple[float, float] = (2.0, 2.0)) -> Checked:
    """How far two runs that should be alike are apart, in percent and degrees."""
    pair = _pair(first.what, second.what)
    found = inspection.repeated(*pair, assumed)
    far = tuple(f"{r.point}: {r.verdict}" for r in found if r.verdict == "does not repeat")
    figures = {
        "runs": [first.what.name, second.what.name],
        "points": [asdict(r) for r in found],
        "evidence": packed(evidence.from_change("repeat_change", *pair)),
    }
    return Checked("repeatability", figures, not far, far, tuple(change_told(r) for r in found))


def compared(first: Run, second: Run, repeatability_assumed: tuple[float, float] = (2.0, 2.0)) -> tuple[Repeat, ...]:
    """Change of each common point from one run to another. Raises CheckError for runs that have nothing in common."""
    return inspection.repeated(*_pair(first, second), repeatability_assumed)


class _Pair(NamedTuple):
    """Common points (M,) of two runs, their vectors (M,), and the covariances (2M, 2M) of re and im of each."""

    names: list[str]
    before: NDArray[np.complex128]
    before_covariance: NDArray[np.float64]
    after: NDArray[np.complex128]
    after_covariance: NDArray[np.float64]


def _pair(first: Run, second: Run) -> _Pair:
    """Raises CheckError for runs that have nothing in common."""
    later = {v.point: v for v in second.vectors if v.phase_deg is not None}
    names = [v.point for v in first.vectors if v.phase_deg is not None and v.point in later and v.amplitude > 0.0]
    if not names or first.unit != second.unit:
        raise CheckError(f'runs "{first.name}" and "{second.name}": have no point with a phase in one unit in common')
    sooner = {v.point: v for v in first.vectors}
    before, after = (
        np.array([vectors.vector(run[name].amplitude, run[name].phase_deg or 0.0) for name in names])
        for run in (sooner, later)
    )
    return _Pair(names, before, _covariance(first, names), after, _covariance(second, names))


def _covariance(run: Run, names: Sequence[str]) -> NDArray[np.float64]:
    if run.covariance is None:
        return np.zeros((2 * len(names), 2 * len(names)))
    rows = [2 * run.covariance.points.index(n) + part for n in names for part in (0, 1)]
    return np.array(run.covariance.matrix, dtype=np.float64)[np.ix_(rows, rows)]


def change_told(change: Repeat) -> str:
    """A change between runs in words: how far, and whether it stands out of the scatter."""
    stands = {
        "repeats": "within the scatter",
        "doubtful": "at the edge of the scatter",
        "does not repeat": "stands out of the scatter",
    }[change.verdict]
    return (
        f"{change.point}: {inspection.with_sign(change.percent, change.percent_ci95)} %, "
        f"{inspection.with_sign(change.turned_deg, change.turned_ci95_deg)}°: {stands}"
    )


@contextlib.contextmanager
def _unbroken(path: Path, hookup: Hookup) -> Iterator[Reader]:
    """A recording opened that must have no gap and the inputs of the hook-up. Raises CheckError, HookupError."""
    from stillshaft.acquire.exchange import open_any

    with open_any(path, hookup) as reader:
        hookup.refuse_fewer_inputs(reader.channels, str(path))
        if reader.gaps:
            raise CheckError(f"{path}: samples were lost in it; record again")
        yield reader


def _feed(reader: Reader, take: Callable[[NDArray[np.floating[Any]]], None], report: Report | None, what: str) -> None:
    """Hand a recording on piece by piece."""
    done = 0
    for block in reader.blocks():
        take(block.samples)
        done += len(block.samples)
        if report is not None:
            report(done / reader.frames, what)


def _samples(path: Path, hookup: Hookup, report: Report | None = None) -> tuple[NDArray[np.floating[Any]], float]:
    """All of a short recording."""
    pieces: list[NDArray[np.floating[Any]]] = []
    with _unbroken(path, hookup) as reader:
        if reader.frames > _LONGEST_S * reader.rate_hz:
            raise CheckError(f"{path}: {reader.frames / reader.rate_hz:.0f} s are too long; 5 to {_LONGEST_S:.0f} s do")
        _feed(reader, pieces.append, report, "reading the signals")
        return np.concatenate(pieces), reader.rate_hz


# evidence in the record


def packed(told: Evidence) -> dict[str, Any]:
    """Evidence as the record holds it."""
    return {key: asdict(item) for key, item in told.items()}


def unpacked(table: object) -> Evidence:
    """Evidence of the record's figures; what the rules do not know is left out."""
    known = diagnosis_rules.load_rules().words
    found: dict[str, Figure | Word] = {}
    readers: tuple[Callable[..., Figure | Word], ...] = (Figure, Word)
    for key, item in table.items() if isinstance(table, dict) else ():
        if not isinstance(item, dict) or key not in known:
            continue
        reader = readers[1] if "word" in item else readers[0]
        try:
            found[key] = reader(**item)
        except TypeError:
            continue
    return found


def from_record(state: JobState) -> Evidence:
    """All that a job's record says for the diagnosis: its brief, its interview, and its measured checks, the newest last.

    What its runs and waits tell of heat is read off them anew.
    """
    facts = inspection.for_diagnosis(inspection.facts_from(state.brief))
    measured = [unpacked(event.what.figures.get("evidence")) for event in state.measured if event.what.trusted]
    moving = [unpacked(event.what.figures.get("evidence")) for event in state.measured if not event.what.trusted]
    return diagnosis.merged(facts, *moving, *measured, evidence_warming.from_record(state))
