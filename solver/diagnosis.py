"""What a spectrum suggests about the trouble: each suggestion with the figures for and against it. It never decides.

The limits are common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from stillshaft.dsp.content import Content, PointContent

_MUCH_1X, _LITTLE_1X = 60.0, 30.0  # percent of the mean square
_STRONG_2X, _WEAK_2X = 0.5, 0.3  # of 1x
_ROW, _LEAST_OF_ROW = 4, 0.2  # so many multiples, each so large a part of 1x
_MUCH_ELSE = 15.0  # percent of the mean square in one other group


@dataclass(frozen=True)
class Suggestion:
    """Something that the vibration at a point looks like, with the figures that speak for and against it."""

    point: str
    what: str
    speaking_for: tuple[str, ...]
    against: tuple[str, ...]


def suggestions(content: Content) -> tuple[Suggestion, ...]:
    """What the spectrum of each point suggests, unbalance first."""
    found: list[Suggestion] = []
    for point in content.points:
        found.append(_unbalance(point))
        found += _others(point)
    return tuple(found)


def _sizes(point: PointContent) -> dict[float, float]:
    return {order: abs(p.z) for order, p in point.orders}


def _unbalance(point: PointContent) -> Suggestion:
    """1x from unbalance; bow, eccentricity, a resonance and misalignment show at 1x too."""
    share, sizes = point.shares.get("1x", 0.0), _sizes(point)
    ratio = sizes.get(2.0, 0.0) / sizes[1.0] if sizes.get(1.0) else 0.0
    figures = (
        (share >= _MUCH_1X, share < _LITTLE_1X, f"1x holds {share:.0f} % of the mean square"),
        (ratio <= _WEAK_2X, ratio >= _STRONG_2X, f"2x is {ratio:.2f} of 1x"),
    )
    steady = dict(point.orders)[1.0].steadiness
    said = [(steady.verdict == "steady", not steady.trusted, f"the 1x vector is {steady.verdict}")]
    rows = [*figures, *said]
    return Suggestion(
        point.name,
        "unbalance, or what else shows at 1x: bow, eccentricity, a resonance near running speed",
        tuple(text for speaks, _, text in rows if speaks),
        tuple(text for _, against, text in rows if against),
    )


def _others(point: PointContent) -> list[Suggestion]:
    sizes, found = _sizes(point), []
    first = sizes.get(1.0, 0.0)
    ratio = sizes.get(2.0, 0.0) / first if first else 0.0
    row = [order for order, size in sizes.items() if order > 1.0 and size >= _LEAST_OF_ROW * first > 0.0]
    if ratio >= _STRONG_2X:
        found.append(
            Suggestion(
                point.name,
                "misalignment or a coupling fault",
                (f"2x is {ratio:.2f} of 1x",),
                (f"{len(row)} multiples of 1x, as in looseness",) if len(row) >= _ROW else (),
            )
        )
    if len(row) >= _ROW:
        listed = ", ".join(f"{order:g}x" for order in row)
        found.append(Suggestion(point.name, "looseness", (f"{listed}: each above {_LEAST_OF_ROW:g} of 1x",), ()))
    for name, share in point.shares.items():
        if share < _MUCH_ELSE or name in ("1x", "2x", "higher orders"):
            continue
        what = {
            "between the orders": "looseness or a rub: fractions of the speed",
            "below 1x": "a belt, flow, or a bearing film: vibration below running speed",
            "rest": "bearings, flow or a neighbour: vibration that follows no order",
        }.get(name, name)
        found.append(Suggestion(point.name, what, (f"{share:.0f} % of the mean square",), ()))
    return found
