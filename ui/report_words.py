"""How a report writes numbers, in metric or imperial units, and times."""

from __future__ import annotations

import functools
import math
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from stillshaft.dsp import units
from stillshaft.ui.account import number

FAMILIES = ("metric", "imperial")
_OWN = {  # how each family shows a quantity that was recorded in the other one's unit
    "metric": {"displacement": "µm p-p", "velocity": "mm/s rms", "acceleration": "m/s² rms"},
    "imperial": {"displacement": "mil p-p", "velocity": "in/s peak", "acceleration": "g peak"},
}
_SHOWN = {  # units in which lengths, masses and unbalance are shown: text, and how many of it one mm, g, g·mm is
    "metric": {"mm": "mm", "g": "g", "kg": "kg", "g*mm": "g·mm"},
    "imperial": {"mm": "in", "g": "oz", "kg": "lb", "g*mm": "oz·in"},
}
_NEWTON_PER_KGF, _NEWTON_PER_LBF = units.STANDARD_GRAVITY_M_S2, 4.4482216152605
_LARGE = 1e7


def figure(value: float, digits: int = 3) -> str:
    """A number with three digits worth reading, never an exponent where people do not expect one."""
    if not math.isfinite(value):
        return "?"
    size = abs(float(f"{value:.{digits - 1}e}"))  # rounded: 9.999 has as many decimals as 10
    if size >= _LARGE or 0.0 < size < 1e-6:
        return f"{value:.{digits}g}".replace("-", "−")
    decimals = 0 if size == 0.0 else max(0, digits - 1 - math.floor(math.log10(size)))
    return f"{value:.{min(decimals, 8)}f}".replace("-", "−")


def with_half(value: float, half: float | None, unit: str = "") -> str:
    """Value and half width of its 95 % interval, both to the decimals that it makes worth reading."""
    after = f" {unit}" if unit else ""
    if half is None or not half > 0.0 or not math.isfinite(half) or max(abs(value), half) >= _LARGE:
        return f"{figure(value)}{' ± ?' if half is None else ''}{after}"
    return f"{number(value, half)} ± {number(half, half)}{after}".replace("-", "−")


def signed(value: float, half: float | None, unit: str) -> str:
    """A change with its sign, and the half width of its 95 % interval."""
    sign = "+" if value > 0.0 else ""
    return f"{sign}{with_half(value, half)}{unit}"


def speed(rpm: float) -> str:
    """A speed to four digits, to 1 r/min from 1000 on."""
    return f"{rpm:.0f} r/min" if rpm >= 1000.0 else f"{figure(rpm, 4)} r/min"


def angle(value_deg: float, half_deg: float | None = None) -> str:
    """An angle to a degree, 0 to 359, with its half width where there is one."""
    text = f"{round(value_deg) % 360}°"
    return text if half_deg is None else f"{text} ± {max(1, round(half_deg))}°"


def moment(at: str) -> str:
    """A time of the record as people write it, in UTC."""
    return f"{datetime.fromisoformat(at):%Y-%m-%d %H:%M} UTC"


def listed(texts: Iterable[str], most: int = 40) -> str:
    """Texts with semicolons between; what is beyond the most is counted."""
    every = list(texts)
    more = [] if len(every) <= most else [f"and {len(every) - most} more"]
    return "; ".join(every[:most] + more)


@functools.cache
def quantity_of(recorded: str) -> str:
    """What a vibration unit measures; the text itself where it is no unit."""
    try:
        return units.vibration_unit(recorded, "unit").quantity
    except units.UnitError:
        return recorded


@dataclass(frozen=True)
class Units:
    """The family of units that a report is in."""

    family: Literal["metric", "imperial"] = "metric"

    def _in(self, value: float, unit: str) -> tuple[float, str]:
        text = _SHOWN[self.family][unit]
        if self.family == "metric":
            return value, text
        factor = 1.0
        for part, own in (("kg", "lb"), ("g", "oz"), ("mm", "in")):
            if part in unit.split("*"):
                factor *= units.parse(f"1 {part}", own, "unit")
        return factor * value, text

    def amount(self, value: float, unit: str, half: float | None = None, *, told: bool = False) -> str:
        """A value in mm, g, kg or "g*mm" as this family shows it; `told` shows that a half width is not known."""
        shown, text = self._in(value, unit)
        if half is None and not told:
            return f"{figure(shown)} {text}"
        return with_half(shown, None if half is None else self._in(half, unit)[0], text)

    def unit(self, unit: str) -> str:
        """What this family calls mm, g, kg or "g*mm"."""
        return _SHOWN[self.family][unit]

    def given(self, text: str | None, unit: str) -> str:
        """A length or mass as the person wrote it, in this family's unit beside it where that is another."""
        if text is None:
            return ""
        try:
            value = units.parse(text, unit, "value")
        except units.UnitError:
            return text
        shown, own = self._in(value, unit)
        said = f"{figure(shown, 4)} {own}"
        return text if text.strip().endswith((own, {"mm": " m", "kg": " g"}.get(unit, own))) else f"{said} ({text})"

    def force(self, newtons: float) -> str:
        """A force, and the weight that it is like."""
        if self.family == "metric":
            return f"{figure(newtons)} N\n({figure(newtons / _NEWTON_PER_KGF)} kgf)"
        return f"{figure(newtons / _NEWTON_PER_LBF)} lbf\n({figure(newtons)} N)"

    def vibration(self, recorded: str) -> tuple[str, float]:
        """The unit to show vibration in, and what a value in the recorded unit is multiplied by.

        A unit of this family stays, and so does a text that is no unit.
        """
        return _vibration(recorded, self.family)


@functools.cache
def _vibration(recorded: str, family: str) -> tuple[str, float]:
    try:
        own = units.vibration_unit(recorded, "unit")
    except units.UnitError:
        return recorded, 1.0
    imperial = own.text.split()[0].split("/")[0] in ("in", "inch", "mil", "mils", "thou")
    if own.quantity == "acceleration" or imperial == (family == "imperial"):
        return own.text.replace("^2", "²").replace("um ", "µm "), 1.0
    shown = units.vibration_unit(_OWN[family][own.quantity], "unit")
    return shown.text, shown.per_si_peak / own.per_si_peak
