"""The first tour: a simulated fan with one plane is balanced, from the first start to the verdict, in a few minutes."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from stillshaft.acquire import simulated
from stillshaft.ui import rehearsal_machines
from stillshaft.ui.desktop.simulator import Mass, Teaching
from stillshaft.ui.desktop.stages import Stage
from stillshaft.ui.desktop.tour_coach import Pointer
from stillshaft.ui.desktop.tour_steps import JobWords, RunWords, Steps

if TYPE_CHECKING:
    from stillshaft.ui.desktop.app import Program

NAME = "Tour: balance a simulated fan"
TEACHING = Teaching(unbalance=(Mass(26.0, 65.0), Mass(0.0, 0.0)))
WORDS = JobWords(
    first=RunWords(
        "A fan shakes. Its brief is filled in, its sensors are wired. First measure it as it is: press here.",
        "The dots are vectors of a few turns each; they gather, so the vibration stands still. The fan runs in real time. "
        "The line at the bottom advises a whole job: here the short way is taken.",
    ),
    trial=RunWords(
        "Now measure what the trial mass does. Start as before.",
        "Look at the vectors: they moved. That move shows how the fan answers to a mass.",
    ),
    check=RunWords(
        "Now see what the correction did. Start as before.",
        "The vectors are short now: little vibration is left.",
    ),
    put_trial="A known mass shows how the fan answers. Look at the one that is proposed, and put it on the face.",
    record_trial="On a real machine: isolate, lock and block it before hands go in. Here, record the mass as put on.",
    trial_off="The trial did its work. Take it off again.",
    put_correction="This is the mass that the fan lacks, with how sure it is. Put it on the face.",
    record_correction="Record the correction as put on.",
)


def brief() -> dict[str, Any]:
    """What stands in the brief of the tour."""
    made = rehearsal_machines.machine(1, None).brief()
    return {**made, "planes": [{"name": simulated.demo_rotor(1).planes[0].name, "radius": "310 mm"}]}


class Tour:
    """What comes next, by the record of the tour's job and by what the window shows."""

    name = NAME

    def __init__(self, program: Program) -> None:
        self._steps, self._program = Steps(program), program

    def answer(self, choice: str) -> None:
        """The tour asks nothing."""

    def pointer(self) -> Pointer:
        """The next control."""
        steps = self._steps
        if steps.state.verdicts:
            return self._over()
        return steps.one_plane(WORDS, met=self._met()) or steps.record_verdict(
            "What is left is held against what is permitted. See it on Close-out.",
            "The bar is below its limit, with its interval. Record the verdict.",
        )

    def _met(self) -> bool:
        found = self._steps.closeout.found
        tolerance = None if found is None else found.worked.tolerance
        return tolerance is not None and tolerance.verdict == "met"

    def _over(self) -> Pointer:
        steps = self._steps
        verdict = steps.state.verdicts[-1].what.verdict
        where = steps.go(Stage.CLOSE_OUT, "The verdict is recorded. See it on Close-out.")
        if where is not None:
            return where
        said = f"Tolerance {verdict}. You balanced a machine: run, trial, correction, check. The same steps serve a real one."
        return Pointer(steps.closeout.planes, said, presses=False, over=True)
