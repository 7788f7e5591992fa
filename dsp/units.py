"""Units at the edges: text with a unit becomes a float in SI, and vibration units become a quantity and a factor.

With `tables` the only file of dsp that every layer may import. In sensitivities and vibration units "g" is 9.80665 m/s², in
masses it is the gram: the caller says which by the unit it asks for.
"""

from __future__ import annotations

import functools
import math
import re
from dataclasses import dataclass
from typing import Any

STANDARD_GRAVITY_M_S2 = 9.80665
_QUANTITIES = ("displacement", "velocity", "acceleration")  # position = number of differentiations
_SI_UNIT = {"displacement": "m", "velocity": "m/s", "acceleration": "m/s^2"}
MOST_OF_TEXT = 200  # letters of a number with its unit
_MOST_OF_UNIT = 60
_SMALLEST, _LARGEST = 1e-30, 1e30  # in the unit asked for
_MOST_OF_MESSAGE = 900
# what one unit of the named measure is as a peak value: vectors are peak values inside
_PEAK_PER_MEASURE = {"rms": math.sqrt(2.0), "peak": 1.0, "p-p": 0.5}


class InputError(ValueError):
    """What came in cannot be used; every layer has its own kind. Whatever a message quotes, it is one line of plain letters."""

    def __init__(self, message: object = "") -> None:
        super().__init__(shown(message, _MOST_OF_MESSAGE))


class UnitError(InputError):
    """A text that is no number with a suitable unit."""


# control characters beside line ends and tabs; what turns the order of letters round; halves of letters; line separators
_UNFIT = re.compile("[\0-\x08\x0b-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ud800-\udfff]")


def unfit(text: str) -> str | None:
    """The first character of a text that no line can show or that turns what stands beside it round, as U+ and a number."""
    found = _UNFIT.search(text)
    return None if found is None else f"U+{ord(found[0]):04X}"


def printable(text: str) -> str:
    """The text with a space for every letter that no line can show."""
    return text if text.isascii() and text.isprintable() else "".join(c if c.isprintable() else " " for c in text)


def shown(text: object, most: int = 80) -> str:
    """A text from outside for a message: in one line, nothing unprintable, its middle left out where it is too long."""
    said = " ".join(printable(str(text)).split())
    return said if len(said) <= most else f"{said[: most // 2 - 1]}…{said[len(said) - most // 2 :]}"


def whole_match(pattern: str, text: str) -> re.Match[str] | None:
    """`re.fullmatch` of a text of the usual length; with a longer one a pattern may need minutes."""
    return re.fullmatch(pattern, text) if len(text) <= MOST_OF_TEXT else None


@functools.cache
def _registry() -> Any:
    import pint  # takes a third of a second: only when a unit is met

    return pint.UnitRegistry(cache_folder=None)


# letters, products and quotients, powers of one digit; the only number is 1: a power of a power of one would never end
_UNIT = re.compile(
    r"(?:[^\W\d]|[°%²³·/()]|\*(?!\*)|(?<![)²³])(?:\^|\*\*)[-+]?[1-9](?![\d.^]|\*\*)|(?<![\w.^*])1(?![\w.^]|\*\*))+"
)


def _factor(unit: str, target: str, gravity: bool) -> float:
    """Size of one `unit` in `target`; with `gravity`, a bare g is standard gravity. Raises UnitError."""
    factor = _known_factor(unit, target, gravity)
    if factor is None:
        raise UnitError(f'"{shown(unit)}" is not a unit of {target}')
    return factor


@functools.lru_cache(1024)
def _known_factor(unit: str, target: str, gravity: bool) -> float | None:
    """The same, None where it is none: kept as well, as a vibration unit is tried for three quantities."""
    if len(unit) > _MOST_OF_UNIT or not _UNIT.fullmatch(unit.replace(" ", "")):
        return None
    text = unit.replace("µ", "u").replace("μ", "u").replace("²", "^2").strip()
    if gravity:
        text = re.sub(r"(?<![A-Za-z])g(?![A-Za-z])", "standard_gravity", text)
    text = re.sub(r"(?<![A-Za-z])in(?![A-Za-z])", "inch", text)
    text = re.sub(r"(?<![A-Za-z])mil(?![A-Za-z])", "thou", text)  # the registry's own mil is an angle
    registry = _registry()
    try:
        return float(registry.parse_expression(text).to(target).magnitude)
    except MemoryError:  # says nothing about the unit
        raise
    except Exception:  # noqa: BLE001 - pint raises many kinds, a tokenizer error among them
        return None


_NUMBER_AND_UNIT = re.compile(r"\s*([-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)(?![\d.])\s*(\S.*?)\s*")


def parse(text: str, target: str, field: str, *, gravity: bool = False) -> float:
    """Number with a unit as a float in `target`, a pint unit such as "V" or "kg".

    `gravity` reads a bare "g" as standard gravity. Raises UnitError that names `field`.
    """
    match = _NUMBER_AND_UNIT.fullmatch(text) if len(text) <= MOST_OF_TEXT else None
    if not match:
        raise UnitError(f'{field}: "{shown(text)}" is not a number with a unit; write for example "2.5 {target}"')
    number, unit = match.groups()
    try:
        value = float(number) * _factor(unit, target, gravity)
    except UnitError as error:
        raise UnitError(f'{field}: "{shown(text)}": {error}') from error
    return _bounded(value, text, field)


def _bounded(value: float, text: str, field: str) -> float:
    """The value of a text. Raises UnitError for one that nothing has: products of such would leave what a float holds."""
    if not math.isfinite(value):
        raise UnitError(f'{field}: "{shown(text)}" is not a finite number')
    if value != 0.0 and not _SMALLEST < abs(value) < _LARGEST:
        raise UnitError(f'{field}: "{shown(text)}" is too {"small" if abs(value) < 1.0 else "large"} for anything')
    return value


_PER_MINUTE = {"rpm": 1.0, "r/min": 1.0, "cpm": 1.0, "1/min": 1.0, "Hz": 60.0, "kHz": 60e3, "r/s": 60.0}


def speed_rpm(text: str, field: str) -> float:
    """Speed or frequency in r/min from "1480 rpm", "50 Hz" and the like. Raises UnitError that names `field`.

    Not through the units library: for it a revolution is 2π and a hertz is 1.
    """
    match = _NUMBER_AND_UNIT.fullmatch(text) if len(text) <= MOST_OF_TEXT else None
    if not match or match[2] not in _PER_MINUTE or not math.isfinite(60e3 * float(match[1])):
        raise UnitError(f'{field}: "{shown(text)}" is not a speed; write for example "1480 rpm" or "50 Hz"')
    return _bounded(float(match[1]) * _PER_MINUTE[match[2]], text, field)


@dataclass(frozen=True)
class VibrationUnit:
    """A unit to show vibration in: the quantity, and how many of it one SI peak unit is.

    `per_si_peak` turns an order vector's peak amplitude in m, m/s or m/s² into this unit; `per_si_rms` turns a true
    rms level, marked equivalent where the unit is a peak one.
    """

    text: str
    quantity: str
    per_si_peak: float
    per_si_rms: float


def vibration_unit(text: str, field: str = "display") -> VibrationUnit:
    """Read a vibration unit: "mm/s rms", "in/s peak", "um p-p", "g peak", "m/s^2 rms" and the like.

    Raises UnitError that names `field`.
    """
    match = whole_match(r"\s*(\S.*?)\s+(rms|peak|p-p)\s*", text)
    if not match:
        raise UnitError(
            f'{field}: "{shown(text)}" needs a measure: write for example "mm/s rms", "mm/s peak" or "um p-p"'
        )
    unit, measure = match.groups()
    for quantity in _QUANTITIES:
        try:
            si_per_unit = _factor(unit, _SI_UNIT[quantity], True)
        except UnitError:
            continue
        if not _SMALLEST < si_per_unit < _LARGEST:
            break
        per_si_peak = 1.0 / (si_per_unit * _PEAK_PER_MEASURE[measure])
        return VibrationUnit(f"{unit} {measure}", quantity, per_si_peak, per_si_peak * math.sqrt(2.0))
    raise UnitError(f'{field}: "{shown(text)}" is not a unit of displacement, velocity or acceleration')


def instantaneous(unit: VibrationUnit) -> tuple[str, float]:
    """The unit without its measure, for values of a waveform, and how many of it one SI unit is."""
    text = unit.text.rpartition(" ")[0]
    return text, vibration_unit(f"{text} peak").per_si_peak


def sensitivity(text: str, quantity: str, field: str) -> float:
    """Volts per SI unit of the quantity, from text such as "100 mV/g" or "7.87 V/mm". Raises UnitError."""
    return parse(text, f"V/({_SI_UNIT[quantity]})", field, gravity=quantity == "acceleration")


def differentiations(from_quantity: str, to_quantity: str) -> int:
    """How many times `from_quantity` must be differentiated to give `to_quantity`; negative: integrated."""
    return _QUANTITIES.index(to_quantity) - _QUANTITIES.index(from_quantity)
