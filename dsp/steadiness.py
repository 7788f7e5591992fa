"""Whether the phase can be trusted: the short-time vectors of a record stay put, drift, or swing with a second source.

Each way to move is a model in first-order autoregressive noise: a line or bend in time, settling, a line or bend in
speed, and V + B·e^{jδk} for a second source. A model counts where its log-likelihood leads that of a vector that stays
put by more than noise makes it lead (Kay, Detection Theory 1998, from memory); among those that count, the one that
spends fewer parameters on it wins (Schwarz, Annals of Statistics 1978, from memory).
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import vectors

Real = NDArray[np.float64]
Complex = NDArray[np.complex128]

_FEWEST_BLOCKS = 16
_LEADS = {4: 7.5, 5: 8.0, 6: 9.0}  # by real parameters; from simulated false alarms of 1 % and less
_CIRCLE_LEAD, _SPEED_LEAD = 14.0, 2.0  # the latter on top: the speed is one more course to be like by chance
_CLEARLY_AHEAD = 3.0  # of a beat that was not seen whole over a smooth change; of a bend over settling, which is usual
_AHEAD_EARLY = 1.0  # of a source seen for less than half a beat: then a line is not called one by chance, 1 in 100
_WHOLE_BEATS, _NAMED_BEATS = 0.9, 0.45
_QUICK_BEAT = (
    math.pi / 8.0
)  # rad from vector to vector: a strong tone far off folds to any rate, seldom to a slower one
# turns from vector to vector beyond which a tone one turn farther off on the other side may be the source: a vector hears
# it weaker by (1 − x)/x only, after the sines of both are averaged over x and 1 − x turns
_FOLDED = 1.0 / 6.0
_LINE_OVER_NOISE, _SLOW_OVER_NOISE = 20.0, 90.0  # power over what lies beside; fewer than 1.5 beats may be a walk
_PLAIN_OVER_NOISE = 500.0  # of a line so strong that what is left beside it does not matter
_SMALL_PERCENT, _SMALL_DEG = 2.0, 2.0  # smaller swings do no harm
_SMALL_SOURCE = 0.01  # of the vector
_LARGE_SCATTER = 0.3  # half width of the mean over the vector
_SOME_MEMORY, _LONG_MEMORY = 0.6, 0.7  # lag-1 correlation of a vector that drifts by chance, that wanders
_WANDER_LEAD = 2.7  # of noise without a mean over noise with one: 1 % of false alarms up to AR(0.6)
_FRACTIONS = np.linspace(0.05, 1.0, 20)  # d of noise with a power of 1/f^2d
_MEMORIES = np.array([*np.linspace(0.0, 0.95, 20), 0.98, 0.995])
_SETTLING = (0.08, 0.15, 0.3, 0.6, 1.0, 2.0)  # time constants over the record's length
_WANTED_REVOLUTIONS, _WANTED_S = 100, 15.0  # common practice, no source
_BEATS_AVERAGED, _LEFT_OF_A_BEAT = 4.0, 0.02  # a record that averages a beat out: beats, most that is left in the mean


@dataclass(frozen=True)
class Beat:
    """A second source beside the order: its offset (positive: faster than the shaft) and what is left without it.

    `source_rpm` has the speed that goes with the offset first, then all others that look the same from vector to vector:
    the mirrored one where it fits nearly as well, and of a quick beat those a turn a vector farther off.
    `cleaned` is the vector with the source taken out, `cleaned_covariance` (2, 2) of its re and im with
    `degrees_of_freedom`.
    """

    offset_hz: float
    offset_ci95_hz: float
    ratio: float
    side: str
    source_rpm: tuple[float, ...]
    source_rpm_ci95: float
    cleaned: complex
    cleaned_covariance: Real
    degrees_of_freedom: int
    record_in_beats: float

    def cleaned_half_widths(self) -> tuple[float, float | None]:
        """Half widths of the 95 % intervals of the cleaned amplitude and phase, as `vectors.half_widths` gives them."""
        return vectors.half_widths(self.cleaned, self.cleaned_covariance, self.degrees_of_freedom)


@dataclass(frozen=True)
class Steadiness:
    """Verdict on one point: steady, drifting, beating, walking, unsettled or too-short, and why.

    `record_s` is how long a record would tell or average it out; swings are peak to peak of the smoothed vector.
    A beat that was averaged out over many turns is trusted: `notes` then says what is left of it in the mean.
    """

    verdict: str
    cause: str | None
    phase_swing_deg: float | None
    amplitude_swing_percent: float | None
    beat: Beat | None
    trend_deg_per_min: float | None
    record_s: float | None
    trusted: bool
    reasons: tuple[str, ...]
    notes: tuple[str, ...] = ()


def judge(blocks: Complex, times_s: Real, speeds_rad_s: Real, revolutions: int, order: float = 1.0) -> Steadiness:
    """Judge the short-time vectors of one point: `blocks` (K,) complex, at `times_s`, at `speeds_rad_s`."""
    count = blocks.size
    mean = complex(blocks.mean())
    span_s = float(times_s[-1] - times_s[0]) * count / max(1, count - 1)
    if count < _FEWEST_BLOCKS or mean == 0:
        per_revolution = span_s / max(1, revolutions)
        wanted = max(_WANTED_S, _WANTED_REVOLUTIONS * per_revolution)
        reason = f"{revolutions} revolutions tell nothing about steadiness yet: record {wanted:.0f} s"
        return Steadiness("too-short", None, None, None, None, None, wanted, False, (reason,))
    swings = _swings(blocks, mean)
    clock = (times_s - times_s.mean()) / max(span_s, 1e-9)
    turn_per_min = _turn(blocks, clock, mean) / max(span_s, 1e-9) * 60.0

    def verdict(
        name: str, cause: str | None = None, reason: str = "", record_s: float | None = None, beat: Beat | None = None
    ) -> Steadiness:
        reasons = (reason,) if reason else ()
        trend = turn_per_min if name in ("steady", "drifting") else None
        return Steadiness(name, cause, *swings, beat, trend, record_s, not reasons, reasons)

    still = _fit(blocks, np.ones((count, 1), dtype=np.complex128))
    smooth = {cause: f for cause, f in _smooth_models(blocks, clock, speeds_rad_s).items() if f.leads(still)}
    best = _best(smooth)
    worth = max((f.worth for f in smooth.values()), default=-math.inf)
    circle = _circle(blocks, _uneven_turn(times_s, speeds_rad_s, order))
    harmful = swings[0] > _SMALL_DEG or swings[1] > _SMALL_PERCENT
    plain = circle.fit.memory < _LONG_MEMORY or circle.over_noise > _PLAIN_OVER_NOISE
    if circle.fit.leads(still) and circle.ratio > _SMALL_SOURCE and plain:
        beats = abs(circle.delta) * count / (2.0 * np.pi)
        ahead = circle.fit.worth - worth
        if circle.over_noise > (_LINE_OVER_NOISE if beats >= 1.5 else _SLOW_OVER_NOISE):
            beat = _beat(blocks, circle, span_s, float(speeds_rad_s.mean()), order)
            if beats >= _NAMED_BEATS and ahead > (0.0 if beats >= _WHOLE_BEATS else _CLEARLY_AHEAD):
                quick = abs(circle.delta) > _QUICK_BEAT
                # of |B| no more than 1/πn is left in the mean over n beats
                beats_wanted = max(_BEATS_AVERAGED, beat.ratio / (math.pi * _LEFT_OF_A_BEAT))
                record_s = math.ceil(beats_wanted / abs(beat.offset_hz))
                if beat.ratio >= 1.0:
                    return verdict("walking", None, f"{_second(beat, quick=quick)}: find and stop it", None, beat)
                if beats < beats_wanted:
                    reason = f"{_second(beat, quick=quick)}: find and stop it, or record {record_s} s"
                    return verdict("beating", None, reason, float(record_s), beat)
                left = 100.0 * beat.ratio / (math.pi * beats)
                note = f"{_second(beat, quick=quick)}: averaged over {beats:.0f} beats, it moves the mean by {left:.1f} % at most"
                return replace(verdict("beating", None, "", float(record_s), beat), notes=(note,))
            least = -_CLEARLY_AHEAD if beats >= _NAMED_BEATS else _AHEAD_EARLY
            if beats < _WHOLE_BEATS and ahead > least and harmful:
                record_s = math.ceil(1.5 / abs(beat.offset_hz))
                reason = f"a slow change, too short to tell drift from a second source: record {record_s} s"
                return verdict("too-short", None, reason, float(record_s), beat if beats >= _NAMED_BEATS else None)
        elif ahead > 0.0 and harmful and beats >= 1.5:
            beside = 60.0 * abs(circle.delta) / (2.0 * np.pi) * count / span_s
            reason = (
                f"a disturbance in a narrow band about {beside:.0f} r/min beside the speed moves the vector by "
                f"{swings[0]:.1f}° and {swings[1]:.1f} %: find it, or record longer"
            )
            return verdict("unsettled", "narrow-band", reason, float(math.ceil(4.0 * span_s)))
    if best is not None and smooth[best].change > 0.01 * _SMALL_PERCENT * abs(mean):
        if smooth[best].memory > _SOME_MEMORY and harmful:
            return verdict("unsettled", "wander", _wandering(swings), 2.0 * span_s)
        return verdict("drifting", best, _drifting(best, turn_per_min), 2.0 * span_s)
    if harmful and (still.memory > _LONG_MEMORY or _wander_lead(blocks) > _WANDER_LEAD):
        return verdict("unsettled", "wander", _wandering(swings), 2.0 * span_s)
    half_width = 2.0 * float(np.std(blocks)) / math.sqrt(count) * math.sqrt((1 + still.memory) / (1 - still.memory))
    if half_width > _LARGE_SCATTER * abs(mean):
        record_s = math.ceil(span_s * min(100.0, (half_width / (0.1 * abs(mean))) ** 2))
        reason = (
            f"the vector is as small as its scatter: its mean is known to {100 * half_width / abs(mean):.0f} % only; "
        )
        return verdict("unsettled", "scatter", f"{reason}record {record_s} s for 10 %", float(record_s))
    return verdict("steady")


def _drifting(cause: str, turn_per_min: float) -> str:
    if cause == "speed":
        return "the phase follows the speed: hold the speed, or measure away from a resonance"
    if cause == "settling":
        return "the vector still settles: let the machine run on, then record again"
    return f"the phase drifts by {turn_per_min:+.1f}°/min: let the machine settle, then record again"


def _wandering(swings: tuple[float, float]) -> str:
    return (
        f"the vector wanders slowly, {swings[0]:.1f}° and {swings[1]:.1f} % peak to peak, so that it has no mean to speak "
        "of: look for a loose part, process changes or a bad pulse"
    )


def _second(beat: Beat, *, quick: bool) -> str:
    """In words; of a quick beat the vectors cannot tell whether it is near the speed at all."""
    period_s = 1.0 / abs(beat.offset_hz)
    where = " or ".join(f"{rpm:.1f}" for rpm in beat.source_rpm)
    turns = (
        f"turns the phase through 360° every {period_s:.1f} s"
        if beat.ratio >= 1.0
        else f"swings the phase by {2 * math.degrees(math.asin(beat.ratio)):.1f}° every {period_s:.1f} s"
    )
    far = ", or a strong tone far from the speed that looks like it (see the spectrum)" if quick else ""
    return f"a second source at {where} r/min, {beat.ratio:.2f} times as strong{far}, {turns}"


def _swings(blocks: Complex, mean: complex) -> tuple[float, float]:
    """Peak-to-peak swing of phase (deg) and amplitude (percent) of the series smoothed over a sixteenth of it."""
    width = max(2, blocks.size // 16)
    smooth = np.convolve(blocks, np.full(width, 1.0 / width), mode="valid") / mean
    phase = np.rad2deg(np.unwrap(np.angle(smooth)))
    return float(np.ptp(phase)), 100.0 * float(np.ptp(np.abs(smooth)))


def _turn(blocks: Complex, clock: Real, mean: complex) -> float:
    """Phase change in degrees over the record by a straight line."""
    slope = np.sum(clock * blocks) / np.sum(clock**2)
    return math.degrees((slope / mean).imag)


# models


@dataclass(frozen=True)
class _Fit:
    """`score` is the log-likelihood, `worth` less the price of its parameters; `change` is the moving part's size."""

    score: float
    worth: float
    memory: float
    coefficients: Complex
    change: float
    lead: float

    def leads(self, still: _Fit) -> bool:
        """True where it explains the record better than a vector that stays put, beyond what noise does."""
        return self.score - still.score > self.lead


def _lagged(rows: Complex) -> tuple[Complex, Complex, Complex]:
    """Parts of the Gram matrix of (…, K, p) after whitening by a memory ρ: constant, linear and square in ρ."""
    now, before = rows[..., 1:, :], rows[..., :-1, :]
    first = rows[..., :1, :]
    turned = np.swapaxes(now.conj(), -1, -2)
    across = turned @ before
    constant = turned @ now + np.swapaxes(first.conj(), -1, -2) @ first
    square = np.swapaxes(before.conj(), -1, -2) @ before - np.swapaxes(first.conj(), -1, -2) @ first
    return constant, -(across + np.swapaxes(across.conj(), -1, -2)), square


def _fit(series: Complex, columns: Complex, shape_parameters: int = 0, lead: float | None = None) -> _Fit:
    """Least squares in AR(1) noise, the memory that gives the highest likelihood."""
    count, size = columns.shape
    constant, linear, square = _lagged(np.column_stack([columns, series]))
    rho = _MEMORIES[:, None, None]
    gram = constant + rho * linear + rho**2 * square
    solution = np.linalg.solve(gram[:, :size, :size], gram[:, :size, size:])
    residual = (gram[:, size:, size:] - np.swapaxes(gram[:, :size, size:].conj(), 1, 2) @ solution)[:, 0, 0].real
    scores = -count * np.log(np.maximum(residual, 1e-300)) + np.log(1.0 - _MEMORIES**2)
    at = int(scores.argmax())
    coefficients = solution[at, :, 0]
    moving = columns[:, 1:] @ coefficients[1:]
    parameters = 2 * size + shape_parameters
    return _Fit(
        float(scores[at]),
        float(scores[at]) - 0.5 * parameters * math.log(2 * count),
        float(_MEMORIES[at]),
        np.asarray(coefficients, dtype=np.complex128),
        float(np.abs(moving - moving[0]).max()),
        _LEADS.get(parameters, 0.0) if lead is None else lead,
    )


def _wander_lead(series: Complex) -> float:
    """How much better noise with a power of 1/f^2d explains the series than noise with a short memory.

    Log-likelihoods of the cosine lines, each noise with its best level and parameter (Whittle 1953; fractional noise of
    Granger & Joyeux 1980; from memory).
    """
    count = series.size
    line = np.arange(1, count)
    half_angle = 0.5 * np.pi * line / count
    cosines = np.cos(np.pi * np.outer(line, np.arange(count) + 0.5) / count)
    power = np.abs(cosines @ (series - series.mean())) ** 2
    short = 1.0 / np.abs(1.0 - _MEMORIES[:20, None] * np.exp(2j * half_angle)) ** 2
    long = (2.0 * np.sin(half_angle)) ** (-2.0 * _FRACTIONS[:, None])

    def best(shapes: Real) -> float:
        level = np.maximum((power / shapes).mean(axis=1), 1e-300)
        return float((-line.size * np.log(level) - np.log(shapes).sum(axis=1)).max())

    return best(long) - best(short)


def _smooth_models(blocks: Complex, clock: Real, speeds_rad_s: Real) -> dict[str, _Fit]:
    """The best course of each cause: trend, settling, speed."""
    ones = np.ones(blocks.size)

    def better(course: Real, *more: Real, lead: float = 0.0) -> _Fit:
        """The best of the course alone, with its square, and with each of `more`; `lead` on top of the usual one."""
        sets = [(), (course**2,), *((column,) for column in more)]
        fits = [_fit(blocks, np.column_stack([ones, course, *added]).astype(np.complex128)) for added in sets]
        best = max(fits, key=lambda f: f.worth)
        return replace(best, lead=best.lead + lead)

    models = {"trend": better(clock)}
    elapsed = clock - clock[0]
    settling = [
        _fit(blocks, np.column_stack([ones, np.exp(-elapsed / tau)]).astype(np.complex128), 1) for tau in _SETTLING
    ]
    models["settling"] = max(settling, key=lambda f: f.score)
    if np.ptp(speeds_rad_s) > 1e-5 * float(speeds_rad_s.mean()):
        course = (speeds_rad_s - speeds_rad_s.mean()) / np.ptp(speeds_rad_s)
        # a resonance follows the speed a little late
        models["speed"] = better(course, np.gradient(course), lead=_SPEED_LEAD)
    return models


def _best(smooth: dict[str, _Fit]) -> str | None:
    """The cause that explains the record best; a bend is called settling where it is not clearly better."""
    best = max(smooth, key=lambda cause: smooth[cause].worth, default=None)
    settling = smooth.get("settling")
    if best == "trend" and settling is not None and smooth[best].coefficients.size > 2:
        return best if smooth[best].worth - settling.worth > _CLEARLY_AHEAD else "settling"
    return best


# the second source


@dataclass(frozen=True)
class _Circle:
    """V + B·e^{j(δk + ψ_k)}: `delta` rad per block, `turning` (K,) the exponential, `over_noise` of its line."""

    fit: _Fit
    delta: float
    turning: Complex
    over_noise: float

    @property
    def ratio(self) -> float:
        mean, strength = (abs(complex(c)) for c in self.fit.coefficients)
        return strength / mean if mean else math.inf


def _uneven_turn(times_s: Real, speeds_rad_s: Real, order: float) -> Real:
    """How far the order has turned beyond a constant speed: a steady neighbour swings back by as much."""
    off = speeds_rad_s - speeds_rad_s.mean()
    turned = np.concatenate([[0.0], np.cumsum(0.5 * (off[1:] + off[:-1]) * np.diff(times_s))])
    return np.asarray(order * (turned - turned.mean()))


def _circle(series: Complex, uneven: Real) -> _Circle:
    """The second source that the likelihood prefers, at least a quarter of a turn away."""
    count = series.size
    k = np.arange(count) - 0.5 * (count - 1)
    grid = np.pi * np.arange(-count, count) / count
    grid = grid[np.abs(grid) >= 0.2 * 2.0 * np.pi / count]
    steps = np.exp(1j * uneven)
    turning = np.exp(1j * np.outer(grid, k)) * steps
    rows = np.empty((grid.size, count, 3), dtype=np.complex128)
    rows[..., 0], rows[..., 1], rows[..., 2] = 1.0, turning, series
    constant, linear, square = (part[:, None] for part in _lagged(rows))
    rho = _MEMORIES[None, ::3, None, None]
    g = constant + rho * linear + rho**2 * square
    fixed = g[..., 0, 0].real * g[..., 1, 1].real - np.abs(g[..., 0, 1]) ** 2
    a, b = g[..., 0, 2], g[..., 1, 2]
    explained = (
        g[..., 1, 1].real * np.abs(a) ** 2
        + g[..., 0, 0].real * np.abs(b) ** 2
        - 2.0 * (a.conj() * g[..., 0, 1] * b).real
    ) / np.maximum(fixed, 1e-300)
    residual = np.maximum(g[..., 2, 2].real - explained, 1e-300)
    scores = (-count * np.log(residual) + np.log(1.0 - _MEMORIES[None, ::3] ** 2)).max(axis=1)
    delta = float(grid[int(scores.argmax())])

    def fitted(at: float) -> _Fit:
        columns = np.column_stack([np.ones(count), np.exp(1j * at * k) * steps])
        return _fit(series, columns, 1, _CIRCLE_LEAD)

    best, width = fitted(delta), np.pi / count
    while width > 1e-5 * np.pi / count:
        width *= 0.5
        for trial in (delta - width, delta + width):
            if abs(trial) >= 0.2 * 2.0 * np.pi / count and (found := fitted(trial)).score > best.score:
                delta, best = trial, found
    turned = np.exp(1j * delta * k) * steps
    mean, strength = best.coefficients
    left = series - mean - strength * turned
    beside = delta + 2.0 * np.pi / count * np.array([*range(-5, 0), *range(1, 6)])
    around = np.abs((np.exp(-1j * np.outer(beside, k)) * steps.conj()) @ left) ** 2 / count
    over = count * abs(complex(strength)) ** 2 / max(float(around.mean()), 1e-300)
    return _Circle(best, delta, turned, over)


def _beat(series: Complex, circle: _Circle, span_s: float, speed_rad_s: float, order: float) -> Beat:
    """The source in words of the machine, with intervals from the information in the record."""
    count = series.size
    step_s = span_s / count
    mean, strength = (complex(c) for c in circle.fit.coefficients)
    k = np.arange(count) - 0.5 * (count - 1)
    moving = strength * circle.turning
    columns = np.column_stack(
        [np.ones(count), 1j * np.ones(count), circle.turning, 1j * circle.turning, 1j * k * moving]
    )
    left = series - mean - moving
    rho = circle.fit.memory
    whitened = np.vstack([math.sqrt(1.0 - rho**2) * columns[:1], columns[1:] - rho * columns[:-1]])
    noise = np.concatenate([[math.sqrt(1.0 - rho**2) * left[0]], left[1:] - rho * left[:-1]])
    freedom = 2 * count - 6
    variance = float(np.sum(np.abs(noise) ** 2)) / freedom
    covariance = variance * np.linalg.inv((whitened.conj().T @ whitened).real)
    offset_hz = circle.delta / (2.0 * np.pi * step_s)
    offset_ci = 1.96 * math.sqrt(covariance[4, 4]) / (2.0 * np.pi * step_s)
    mirrored = _fit(series, np.column_stack([np.ones(count), circle.turning.conj()]), 1)
    both = circle.fit.score - mirrored.score < 9.0
    running = speed_rad_s / (2.0 * np.pi) * order
    # z is the conjugate form: a faster source makes it turn backwards
    offsets: tuple[float, ...] = (offset_hz, -offset_hz) if both else (offset_hz,)
    folded = abs(circle.delta) > 2.0 * math.pi * _FOLDED
    if folded:
        offsets += tuple(o - math.copysign(1.0 / step_s, o) for o in offsets)
    sources = tuple(60.0 * (running - o) for o in offsets if o < running)
    return Beat(
        -offset_hz,
        offset_ci,
        circle.ratio,
        "unknown" if both or folded else ("above" if offset_hz < 0 else "below"),
        sources,
        60.0 * offset_ci,
        mean,
        np.asarray(covariance[:2, :2], dtype=np.float64),
        freedom,
        abs(offset_hz) * span_s,
    )


def to_json(steadiness: Steadiness) -> dict[str, object]:
    """The keys of the contract's steadiness object."""
    beat = steadiness.beat
    described = None
    if beat is not None:
        amplitude, phase_deg = vectors.amplitude_phase(beat.cleaned)
        halves = beat.cleaned_half_widths()
        described = {
            "offset_hz": beat.offset_hz,
            "offset_ci95_hz": beat.offset_ci95_hz,
            "ratio": beat.ratio if math.isfinite(beat.ratio) else None,
            "side": beat.side,
            "source_rpm": list(beat.source_rpm),
            "source_rpm_ci95": beat.source_rpm_ci95,
            "cleaned_amplitude": amplitude,
            "cleaned_phase_deg": phase_deg,
            "cleaned_amplitude_ci95": halves[0],
            "cleaned_phase_ci95_deg": halves[1],
            "record_in_beats": beat.record_in_beats,
        }
    return {
        "verdict": steadiness.verdict,
        "cause": steadiness.cause,
        "phase_swing_deg": steadiness.phase_swing_deg,
        "amplitude_swing_percent": steadiness.amplitude_swing_percent,
        "beat": described,
        "trend_deg_per_min": steadiness.trend_deg_per_min,
        "record_s": steadiness.record_s,
        "trusted": steadiness.trusted,
        "reasons": list(steadiness.reasons),
        "notes": list(steadiness.notes),
    }
