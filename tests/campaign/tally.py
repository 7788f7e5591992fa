"""What the campaign counts: rows of the table, and what must stay at nought."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass, field

MUST_BE_NOUGHT = (
    "samples lost in silence",
    "records lost",
    "hangs",
    "tracebacks",
    "half written",
    "left behind",
    "others",
)


@dataclass
class Row:
    """One kind of fault: how often it was tried, what was found out, what went wrong."""

    fault: str
    tried: int = 0
    figures: dict[str, float | int | str] = field(default_factory=dict)
    wrong: dict[str, list[str]] = field(default_factory=dict)

    def most(self, name, value):
        """Keep the largest of a figure."""
        self.figures[name] = max(value, self.figures.get(name, value))

    def add(self, name, value=1):
        self.figures[name] = self.figures.get(name, 0) + value

    def blame(self, kind, text):
        """Something that may not happen has happened."""
        assert kind in MUST_BE_NOUGHT, kind
        self.wrong.setdefault(kind, []).append(" ".join(str(text).split())[:600])

    def judge(self):
        """Fail with all that went wrong."""
        assert not self.wrong, "\n".join(f"{kind}: {text}" for kind, texts in self.wrong.items() for text in texts[:8])


@dataclass
class Tally:
    """All rows of a campaign."""

    seed: int
    short: bool
    rows: list[Row] = field(default_factory=list)

    def row(self, fault):
        self.rows.append(Row(fault))
        return self.rows[-1]

    def totals(self):
        return {kind: sum(len(r.wrong.get(kind, ())) for r in self.rows) for kind in MUST_BE_NOUGHT}

    def table(self):
        """The summary as lines of text."""
        lines = [f"fault campaign, seed {self.seed}{', short' if self.short else ''}", ""]
        for row in self.rows:
            said = ", ".join(f"{name} {value:.3g}" if isinstance(value, float) else f"{name} {value}"
                             for name, value in row.figures.items())  # fmt: skip
            bad = "; ".join(f"{len(texts)} {kind}" for kind, texts in row.wrong.items())
            lines.append(f"{row.fault:<58} {row.tried:>5}  {bad or 'nothing lost'}{f' ({said})' if said else ''}")
        lines += ["", "; ".join(f"{kind}: {count}" for kind, count in self.totals().items())]
        return lines

    def as_json(self):
        return json.dumps(
            {"format": 1, "seed": self.seed, "short": self.short, "totals": self.totals(),
             "rows": [asdict(r) for r in self.rows]}, indent=2,
        )  # fmt: skip
