"""Evidence for the diagnosis out of what was measured: spectrum, vectors, sweep, bump test, background.

Each function gives the quantities of `diagnosis_rules.toml` that its measurement tells, each with an interval; what it does
not tell is left out and never stands for absent. `diagnosis.merged` puts the parts together.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import candidates, units, vectors
from stillshaft.dsp.candidates import Candidate
from stillshaft.dsp.content import Content, PointContent
from stillshaft.dsp.measure import Measurement
from stillshaft.dsp.ringdown import RingDown
from stillshaft.dsp.standing import BandLevel
from stillshaft.dsp.steadiness import Beat
from stillshaft.dsp.sweep import Sweep
from stillshaft.solver.diagnosis import Evidence, Figure, Word
from stillshaft.solver.diagnosis_rules import DiagnosisError

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

_FRACTIONS = (1 / 3, 1 / 2, 2 / 3, 3 / 2)
_MULTIPLES = range(2, 6)
_GROUPS = {"1x", "2x", "higher orders", "between the orders", "below 1x", "rest"}  # of shares that are no neighbour's
_LEAST_OF_ROW = 0.2  # of 1x, of a multiple that counts
_SMALL = 0.1  # of the largest 1x: more than this in the noise may hide something
_HARD_TO_PART = 3.0  # lines between a frequency and an order, below which they are not told apart
_WORTH_LOOKING_AT = 0.3  # of the largest 1x: smaller vectors say little of the machine
_ALONG = math.cos(math.radians(30.0))  # of the direction that a sensor stands for
_LIKE = 3.0  # ratio of amplitudes up to which the phase between two bearings says something
_BELT_MULTIPLES = range(1, 5)
_REPEATABILITY = 0.02  # of an amplitude from speed to speed, assumed: site rule of the project
_REACH = 1.3  # of running speed, up and down, that must have been looked at to miss a resonance
_LEAST_MODE = 0.05  # of the energy of a decay at some point
_ABOVE = 1.25  # a resonance below so many times running speed is near: site rule of the project
_SEVERITY = (
    "steady",
    "disturbed in a narrow band",
    "following the speed",
    "drifting",
    "wandering",
    "beating",
    "walking",
)
_BAD_SCATTER_DEG = 3.0  # of the pulses, as in the signal check
_PART_SHOWN = 0.3  # of a second source, in the spectrum's line nearest to it
_SMALL_BEAT = 0.1  # of 1x: a tone far off shows as small a beat as this
_T = 1.96


@dataclass(frozen=True)
class Place:
    """Where a point sits: name of its bearing, along or across the shaft, and the direction that reads positive.

    `angle_deg` is the stator angle from 12 o'clock in the direction of rotation; axial points have none, `inverted` says
    of them that they point the other way.
    """

    point: str
    bearing: str
    angle_deg: float | None = None
    inverted: bool = False


# spectrum


def from_content(
    content: Content,
    *,
    belts: Sequence[Candidate] = (),
    other_shafts: Sequence[Candidate] = (),
    neighbours: Sequence[Candidate] = (),
    line: Candidate | None = None,
    poles: int | None = None,
) -> Evidence:
    """Shares, multiples, fractions, belts and the line in the spectrum; of all points the one where each is largest.

    `where` names the candidate with its frequency too.
    """
    largest = max((_first(p) for p in content.points), default=0.0)
    if largest <= 0.0:
        raise DiagnosisError("no point shows any 1x: the spectrum tells nothing; check the sensors and record again")
    found: dict[str, Figure | Word] = {}
    worst = worst_point(content)
    # what scatters from window to window
    scatter = 1.0 / math.sqrt(max(1, content.averages))
    for key, share in (
        ("share_1x", worst.shares.get("1x")),
        ("share_rest", worst.shares.get("rest")),
        ("share_below", worst.shares.get("below 1x")),
    ):
        if share is not None:
            half = _T * scatter * share * (1.0 - share / 100.0)
            found[key] = Figure(share, max(0.0, share - half), min(100.0, share + half), worst.name)
    apart = {c.name for c in (*belts, *other_shafts)} | ({line.name} if line is not None else set())
    named = [(share, name) for name, share in worst.shares.items() if name not in _GROUPS | apart]
    if named:
        share, name = max(named)
        half = _T * scatter * share * (1.0 - share / 100.0)
        hertz = next((f" at {c.rpm / 60.0:.2f} Hz" for c in neighbours if c.name == name), "")
        found["share_named"] = Figure(share, max(0.0, share - half), min(100.0, share + half), f"{name}{hertz}")
    seen = [p for p in content.points if _first(p) >= _WORTH_LOOKING_AT * largest]
    ratios = [_of_order(p, 2.0, largest) for p in content.points]
    if known := [r for r in ratios if r is not None]:
        found["ratio_2x"] = max(known, key=lambda r: r.value)
    found["multiples"] = max((_multiples(p) for p in seen), key=lambda f: f.value)
    running_hz = content.speed_rpm / 60.0
    beside = [_multiple(c, m)[1:] for c in (*belts, *other_shafts, *neighbours) for m in _BELT_MULTIPLES]
    _add(found, "fraction_ratio", content, [("", f * running_hz, 0.0) for f in _FRACTIONS], largest, beside)
    of_belts = [_multiple(b, m) for b in belts for m in _BELT_MULTIPLES]
    _add(found, "belt_ratio", content, of_belts, largest)
    _add(found, "other_shaft_ratio", content, [_multiple(c, 1) for c in other_shafts], largest)
    if line is not None:
        _add(found, "line_ratio", content, [("", *_multiple(line, 2)[1:])], largest)
        if poles is not None:
            _add(found, "pole_pass_ratio", content, _pole_pass(line.rpm / 60.0, poles, running_hz), largest)
    return MappingProxyType(found)


def worst_point(content: Content) -> PointContent:
    """The point with the highest overall level, or the largest orders where there is none."""
    return max(content.points, key=_level)


def _first(point: PointContent) -> float:
    return abs(point.orders[0][1].z)


def _level(point: PointContent) -> float:
    return math.sqrt(sum(abs(v.z) ** 2 for _, v in point.orders)) if point.overall is None else point.overall


def _of_order(point: PointContent, order: float, largest: float) -> Figure | None:
    vector = dict(point.orders).get(order)
    if vector is None:
        return None
    size, half = abs(vector.z) / largest, (vector.amplitude_ci95 or abs(vector.z)) / largest
    return Figure(size, max(0.0, size - half), size + half, point.name)


def _multiples(point: PointContent) -> Figure:
    """How many of the multiples are large, at the least and at the most by their intervals."""
    limit, counts = _LEAST_OF_ROW * _first(point), [0, 0, 0]
    for order, vector in point.orders:
        if order in _MULTIPLES:
            half = vector.amplitude_ci95 or 0.0
            for i, size in enumerate((abs(vector.z) - half, abs(vector.z), abs(vector.z) + half)):
                counts[i] += size >= limit
    return Figure(counts[1], counts[0], counts[2], point.name)


def _multiple(candidate: Candidate, times: int) -> tuple[str, float, float]:
    """Name, frequency and how well it is known, of a multiple of a candidate."""
    name = candidate.name if times == 1 else f"{times} × {candidate.name}"
    return name, times * candidate.rpm / 60.0, times * candidate.within_rpm / 60.0


def _add(
    found: dict[str, Figure | Word],
    key: str,
    content: Content,
    frequencies: Sequence[tuple[str, float, float]],
    largest: float,
    beside: Sequence[tuple[float, float]] = (),
) -> None:
    """The strongest vibration at any of the frequencies (name, Hz, ± Hz) over the largest 1x.

    Nothing is said where one of them lies too close to an order, or to what else runs `beside` (Hz, ± Hz), and no other
    stands out.
    """
    running_hz, resolution = content.speed_rpm / 60.0, content.resolution_hz
    sizes: list[Figure] = []
    hidden = False  # some of it, by an order or by noise
    for name, frequency, within in frequencies:
        off = abs(frequency - running_hz * round(frequency / running_hz)) if frequency > 0.5 * running_hz else math.inf
        if (
            not content.frequency_hz[0] <= frequency <= content.frequency_hz[-1]
            or off - within < _HARD_TO_PART * resolution
            or any(abs(frequency - other) - within - half < _HARD_TO_PART * resolution for other, half in beside)
        ):
            hidden = True
            continue
        at_points = [_size_at(content, p, name, frequency, within, largest) for p in content.points]
        hidden = hidden or None in at_points
        sizes += [s for s in at_points if s is not None]
    strongest = max(sizes, key=lambda s: s.value, default=None)
    if strongest is not None and (not hidden or strongest.low > _SMALL):
        found[key] = strongest


def _size_at(
    content: Content, point: PointContent, name: str, frequency: float, within: float, largest: float
) -> Figure | None:
    """The peak there, or else what the spectrum reaches there as the most that may be; None where that is much."""
    reach = within + content.resolution_hz
    peaks = [p for p in point.peaks if abs(p.frequency_hz - frequency) <= reach]
    if peaks:
        peak = max(peaks, key=lambda p: p.amplitude)
        half = peak.amplitude if peak.amplitude_ci95 is None else peak.amplitude_ci95
        return Figure(
            peak.amplitude / largest,
            max(0.0, peak.amplitude - half) / largest,
            (peak.amplitude + half) / largest,
            f"{point.name}, {name} at {peak.frequency_hz:.2f} Hz" if name else point.name,
        )
    near = np.abs(content.frequency_hz - frequency) <= max(reach, 1.01 * content.resolution_hz)
    most = float(point.amplitude[near].max(initial=0.0)) / largest
    return Figure(most, 0.0, most, point.name) if most <= _SMALL else None


def _pole_pass(line_hz: float, poles: int, running_hz: float) -> list[tuple[str, float, float]]:
    """Sidebands about 1x at the slip times the number of poles; none for a motor that does not slip."""
    if poles < 2 or poles % 2:
        raise DiagnosisError(f"{poles} poles: a motor has an even number, 2 or more")
    slip_hz = 2.0 * line_hz / poles - running_hz
    if not 0.0 < slip_hz < 0.2 * running_hz:
        return []
    return [("", running_hz + side * poles * slip_hz, 0.0) for side in (-1.0, 1.0)]


# vectors


def from_measurement(
    measured: Measurement,
    places: Sequence[Place] = (),
    content: Content | None = None,
    known: Sequence[Candidate] = (),
) -> Evidence:
    """Pulse, steadiness, and with places the directions, of a run's once-per-rev vectors.

    With the spectrum of the same record, a second source counts only where the spectrum shows it too: a strong tone far
    from 1x can look like one. `known` is what may run beside the shaft: the one that fits the source is named.
    """
    speed = measured.speed
    found: dict[str, Figure | Word] = {}
    wrong, pulses = speed.missing_pulses + speed.extra_pulses, max(1, speed.pulses)
    half = _T * math.sqrt(wrong)  # of a count
    low, value, high = (100.0 * max(0.0, wrong + s * half) / pulses for s in (-1.0, 0.0, 1.0))
    found["pulse_faults"] = Figure(value, low, high)
    if speed.pulse_scatter_us is not None:
        scatter_deg = 6.0 * speed.mean_rpm * 1e-6 * speed.pulse_scatter_us
        half = _T * scatter_deg / math.sqrt(2.0 * pulses)
        found["pulse_scatter"] = Figure(scatter_deg, scatter_deg - half, scatter_deg + half)
    scatter = found.get("pulse_scatter")
    pulse_is_bad = isinstance(scatter, Figure) and scatter.value >= _BAD_SCATTER_DEG
    # a phase that moves with the pulse says nothing of the machine
    if not pulse_is_bad and (steadiness := _steadiness(measured, content, known)) is not None:
        found["steadiness"] = steadiness
    z = np.array([p.z for p in measured.points])
    names = [p.name for p in measured.points]
    of_places = from_vectors(names, z, measured.covariance, measured.degrees_of_freedom, places)
    return MappingProxyType(found | dict(of_places))


def _steadiness(measured: Measurement, content: Content | None, known: Sequence[Candidate]) -> Word | None:
    """The gravest verdict among the points that matter; None where none could be given."""
    largest = max((abs(p.z) for p in measured.points), default=0.0)
    words = []
    for point in measured.points:
        verdict, cause, beat = point.steadiness.verdict, point.steadiness.cause, point.steadiness.beat
        if abs(point.z) < _WORTH_LOOKING_AT * largest or (beat is not None and not _shown(point.name, beat, content)):
            continue
        word = {
            "drifting": "following the speed" if cause == "speed" else "drifting",
            "unsettled": {"wander": "wandering", "narrow-band": "disturbed in a narrow band"}.get(cause or "", ""),
            "too-short": "",
        }.get(verdict, verdict)
        if word:
            words.append(Word(word, point.name if beat is None else f"{point.name}, {_source(beat, known)}"))
    return max(words, key=lambda w: _SEVERITY.index(w.word), default=None)


def _source(beat: Beat, known: Sequence[Candidate]) -> str:
    """Where a second source is, and what is known to run there."""
    at = " or ".join(f"{rpm / 60.0:.2f} Hz" for rpm in beat.source_rpm)
    fits = [m for m in candidates.compare(beat, tuple(known)) if m.fits]
    name = "" if not fits else f" ({fits[0].name if fits[0].multiple == 1 else f'{fits[0].multiple} × {fits[0].name}'})"
    return f"second source at {at}{name}"


def _shown(name: str, beat: Beat, content: Content | None) -> bool:
    """Whether a second source is large, and in the spectrum where it is far enough from 1x to be seen there."""
    if beat.ratio < _SMALL_BEAT:
        return False
    point = None if content is None else next((p for p in content.points if p.name == name), None)
    if content is None or point is None or abs(beat.offset_hz) < _HARD_TO_PART * content.resolution_hz:
        return True
    wanted = _PART_SHOWN * beat.ratio * abs(beat.cleaned)
    near = [np.abs(content.frequency_hz - rpm / 60.0) <= 1.01 * content.resolution_hz for rpm in beat.source_rpm]
    return any(float(point.amplitude[n].max(initial=0.0)) >= wanted for n in near)


def from_vectors(
    names: Sequence[str], z: Complex, covariance: Real, degrees_of_freedom: float, places: Sequence[Place]
) -> Evidence:
    """Ratios and phases between directions and bearings from 1x vectors z (M,), their covariance (2M, 2M).

    Sensors on opposite sides count after turning to a common direction. A phase between two bearings is given only where
    their amplitudes are alike; between directions only from sensors within 30° of horizontal and vertical.
    """
    unknown = [p.point for p in places if p.point not in names]
    if unknown:
        raise DiagnosisError(f'place "{unknown[0]}": is no point; points are {", ".join(names)}')
    radial = [(names.index(p.point), p) for p in places if p.angle_deg is not None]
    axial = [(names.index(p.point), p) for p in places if p.angle_deg is None]
    found: dict[str, Figure | Word] = {}

    def ratio(a: int, b: int, sign: float) -> _Ratio:
        return _ratio(z, covariance, degrees_of_freedom, a, b, sign)

    vertical = {p.bearing: (i, c) for i, p in radial if abs(c := _along(p, 0.0)) >= _ALONG}
    horizontal = {p.bearing: (i, c) for i, p in radial if abs(c := _along(p, 90.0)) >= _ALONG}
    both = [b for b in horizontal if b in vertical and z[vertical[b][0]] and z[horizontal[b][0]]]
    if both:
        bearing = max(both, key=lambda b: abs(z[horizontal[b][0]]) + abs(z[vertical[b][0]]))
        (v, v_sign), (h, h_sign) = vertical[bearing], horizontal[bearing]
        found |= ratio(v, h, v_sign * h_sign).figures("hv_ratio", "hv_off_quadrature", bearing, _off_quadrature)
    for key, group in (("cross_phase", radial), ("axial_phase", axial)):
        pairs = [
            ((i, p), (j, q), c)
            for (i, p), (j, q) in itertools.combinations(group, 2)
            if p.bearing != q.bearing and abs(c := _common(p, q)) >= _ALONG and z[i] and z[j]
            and 1.0 / _LIKE <= abs(z[i] / z[j]) <= _LIKE
        ]  # fmt: skip
        # sideways motion first: supports are softer there
        pairs.sort(key=lambda f: -abs(_along(f[0][1], 90.0)) if f[0][1].angle_deg is not None else 0.0)
        if pairs:
            (i, p), (j, q), c = pairs[0]
            found |= ratio(i, j, c).figures(None, key, f"{p.point} and {q.point}", _folded)
    if axial and radial and abs(z[[i for i, _ in radial]]).max() > 0.0:
        strongest = max((i for i, _ in radial), key=lambda i: abs(z[i]))
        along = max((i for i, _ in axial), key=lambda i: abs(z[i]))
        if z[along]:
            found |= ratio(strongest, along, 1.0).figures("axial_ratio", None, names[along], _folded)
    return MappingProxyType(found)


def _along(place: Place, direction_deg: float) -> float:
    assert place.angle_deg is not None
    return math.cos(math.radians(place.angle_deg - direction_deg))


def _common(a: Place, b: Place) -> float:
    """Cosine between the directions of two points: negative where one must be turned round."""
    if a.angle_deg is None or b.angle_deg is None:
        return 1.0 if a.inverted == b.inverted else -1.0
    return math.cos(math.radians(a.angle_deg - b.angle_deg))


@dataclass(frozen=True)
class _Ratio:
    """Ratio of two vectors, with the 95 % half widths of its size, relative, and of its angle in degrees."""

    size: float
    relative_half: float
    angle_deg: float
    half_deg: float

    def figures(
        self, of_size: str | None, of_angle: str | None, where: str, folded: Callable[[float], float]
    ) -> dict[str, Figure | Word]:
        found: dict[str, Figure | Word] = {}
        if of_size is not None:
            half = self.size * self.relative_half
            found[of_size] = Figure(self.size, max(0.0, self.size - half), self.size + half, where)
        if of_angle is not None and self.half_deg < 90.0:
            value = folded(self.angle_deg)
            found[of_angle] = Figure(value, value - self.half_deg, value + self.half_deg, where)
        return found


def _folded(angle_deg: float) -> float:
    """An angle either way, 0 to 180°."""
    return abs((angle_deg + 180.0) % 360.0 - 180.0)


def _off_quadrature(angle_deg: float) -> float:
    """How far from a quarter turn either way: 90 is motion along a line."""
    return abs(angle_deg % 180.0 - 90.0)


def _ratio(z: Complex, covariance: Real, degrees_of_freedom: float, a: int, b: int, sign: float) -> _Ratio:
    """z_b/z_a, turned to a common direction, by first-order propagation of the common covariance."""
    from scipy.special import stdtrit

    # d ln(b/a) = db/b − da/a
    turn = np.zeros((2, covariance.shape[0]))
    for k, factor in ((a, -1.0 / z[a]), (b, 1.0 / z[b])):
        turn[:, 2 * k : 2 * k + 2] = [[factor.real, -factor.imag], [factor.imag, factor.real]]
    spread = turn @ covariance @ turn.T
    t = float(stdtrit(degrees_of_freedom, 0.975)) if math.isfinite(degrees_of_freedom) else _T
    ratio = complex(math.copysign(1.0, sign) * z[b] / z[a])
    size, lag_deg = vectors.amplitude_phase(ratio)
    return _Ratio(size, t * math.sqrt(spread[0, 0]), lag_deg, math.degrees(t * math.sqrt(spread[1, 1])))


def from_change(
    key: str,
    names: Sequence[str],
    before: Complex,
    before_covariance: Real,
    after: Complex,
    after_covariance: Real,
) -> Evidence:
    """By how much 1x vectors z (M,) moved from one run to another, covariances (2M, 2M) of re and im of each point.

    `key` is warm_change or repeat_change. Of the points that show most of the 1x the one that moved most counts. Raises
    DiagnosisError for another key and where there is no 1x.
    """
    if key not in ("warm_change", "repeat_change"):
        raise DiagnosisError(f'"{key}": must be warm_change or repeat_change')
    size = np.abs(before)
    largest = float(size.max(initial=0.0))
    if not largest > 0.0:
        raise DiagnosisError(f"{', '.join(names)}: the first run shows no 1x at all; check the sensor and repeat it")
    figures = []
    for i in map(int, np.flatnonzero(size >= _WORTH_LOOKING_AT * largest)):
        part = slice(2 * i, 2 * i + 2)
        moved = complex(after[i] - before[i])
        half = _T * vectors.deviations(moved, before_covariance[part, part] + after_covariance[part, part])[0] / size[i]
        change = abs(moved) / size[i]
        figures.append(Figure(100.0 * change, 100.0 * max(0.0, change - half), 100.0 * (change + half), names[i]))
    return MappingProxyType({key: max(figures, key=lambda f: f.value)})


def _exponent(rpm: Real, size: Real, deviation: Real, quantity: str, name: str) -> Figure:
    turned = np.log(rpm) - np.log(rpm).mean()
    level = np.log(size) - units.differentiations("displacement", quantity) * np.log(rpm)
    spread = np.hypot(deviation / size, _REPEATABILITY)
    slope = float(turned @ level / (turned @ turned))
    half = _T * math.sqrt(float(np.sum((turned * spread) ** 2))) / float(turned @ turned)
    return Figure(slope, slope - half, slope + half, name)


# resonances and background


def from_sweep(sweep: Sweep) -> Evidence:
    """Margin of running speed to the nearest resonance, and how 1x grows below it.

    A sweep that did not reach well beyond running speed misses no resonance above: then nothing is said of the margin.
    """
    found: dict[str, Figure | Word] = {}
    running = sweep.running_rpm
    seen = [(abs(r.rpm.value - running), r, p.name) for p in sweep.points for r in p.resonances if p.order == 1.0]
    if seen:
        away, nearest, name = min(seen, key=lambda s: s[0])
        found |= _margin(away, nearest.rpm.ci95 or 0.0, running, name)
    elif sweep.slowest_rpm * _REACH <= running and sweep.fastest_rpm >= _REACH * running:
        room = min(sweep.fastest_rpm - running, running - sweep.slowest_rpm)
        found |= _margin(room, 0.0, running, "")
    if any(r.rpm.value < _ABOVE * running for _, r, _ in seen):
        found["running"] = Word("near or above a resonance")
    elif sweep.trusted and seen:
        found["running"] = Word("below its resonances")
    if sweep.trusted and not any(r.rpm.value < running for _, r, _ in seen):
        for point in sorted(sweep.points, key=lambda p: -float(np.abs(p.z).max(initial=0.0))):
            near = (point.speeds_rpm <= running) & (point.speeds_rpm >= running / _REACH) & (np.abs(point.z) > 0.0)
            if point.order == 1.0 and np.count_nonzero(near) >= 3 and np.ptp(point.speeds_rpm[near]) > 0.1 * running:
                quantity = units.vibration_unit(point.unit).quantity
                found["speed_exponent"] = _exponent(
                    point.speeds_rpm[near], np.abs(point.z[near]), point.deviation[near], quantity, point.name
                )
                break
    return MappingProxyType(found)


def from_ring_down(rung: RingDown, running_rpm: float) -> Evidence:
    """Margin of running speed to the nearest natural frequency of the standing machine that rings clearly."""
    if not 0.0 < running_rpm < math.inf:
        raise DiagnosisError(f"running speed {running_rpm:g} r/min: must be above 0")
    clear = [m for m in rung.modes if m.strength >= _LEAST_MODE]
    if not clear:
        return MappingProxyType({})
    nearest = min(clear, key=lambda m: abs(m.rpm - running_rpm))
    found = _margin(abs(nearest.rpm - running_rpm), 60.0 * nearest.frequency_ci95_hz, running_rpm, nearest.point)
    below = all(m.rpm >= _ABOVE * running_rpm for m in clear) and 60.0 * rung.lowest_hz < running_rpm
    found["running"] = Word("below its resonances" if below else "near or above a resonance")
    return MappingProxyType(found)


def _margin(away_rpm: float, half_rpm: float, running_rpm: float, where: str) -> dict[str, Figure | Word]:
    value, half = 100.0 * away_rpm / running_rpm, 100.0 * half_rpm / running_rpm
    return {"resonance_margin": Figure(value, max(0.0, value - half), value + half, where)}


def from_background(levels: Sequence[BandLevel], of: Mapping[str, float]) -> Evidence:
    """Level of the stopped machine at running speed over each point's 1x (or its goal), in the same unit."""
    shares = [(level, of[level.name]) for level in levels if of.get(level.name, 0.0) > 0.0]
    if not shares:
        raise DiagnosisError("background: no point has a 1x or a goal to hold its level against; measure 1x first")
    level, whole = max(shares, key=lambda s: s[0].level / s[1])
    value, half = 100.0 * level.level / whole, 100.0 * level.ci95 / whole
    return MappingProxyType({"background": Figure(value, max(0.0, value - half), value + half, level.name)})
