"""The stages of a job, how far each is, and the one sentence that says what matters most."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Stage(Enum):
    """A stage of the job; its value is its name on the rail, `purpose` what is done there."""

    BRIEF = "Brief"
    INSPECT = "Inspect"
    HOOK_UP = "Hook-up"
    RUNS = "Runs"
    MASSES = "Masses"
    CLOSE_OUT = "Close-out"

    @property
    def purpose(self) -> str:
        """What is done on this stage, in a few words."""
        return _PURPOSES[self]

    @property
    def key(self) -> str:
        """The key that opens it together with Ctrl."""
        return str(list(Stage).index(self) + 1)


_PURPOSES = {
    Stage.BRIEF: "The machine, its rotor and what is wrong with it",
    Stage.INSPECT: "What to look at before balancing",
    Stage.HOOK_UP: "Sensors, pulse and inputs, and whether they can be trusted",
    Stage.RUNS: "Speed and once-per-rev vibration, run by run",
    Stage.MASSES: "What to put where, and what was really put on",
    Stage.CLOSE_OUT: "Before and after, limits, report",
}


class State(Enum):
    """How far a stage is; the value is the word beside its shape."""

    EMPTY = "empty"
    UNDER_WAY = "under way"
    DONE = "done"
    ATTENTION = "needs attention"


class Weight(Enum):
    """How much a sentence matters; the value is the word that a screen reader says before it."""

    NOTE = "Next"
    CAUTION = "Attention"
    STOP = "Stop"


@dataclass(frozen=True)
class Sentence:
    """One sentence for the next line; `action` is what the button says that opens `stage`, None: no button.

    `first`: a caution that comes before what the guidance says, whatever page is open.
    """

    text: str
    stage: Stage
    weight: Weight = Weight.NOTE
    action: str | None = None
    first: bool = False


@dataclass(frozen=True)
class Guide:
    """What is advised in the job that is open, and how far each stage is."""

    sentence: Sentence
    states: dict[Stage, State]


def most_important(sentences: list[Sentence]) -> Sentence | None:
    """The weightiest one, the latest stage first among equals: it knows the most about the job."""
    order, stages = list(Weight), list(Stage)
    return max(sentences, key=lambda s: (order.index(s.weight), stages.index(s.stage)), default=None)
