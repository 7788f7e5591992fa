"""How each lesson is led through: what to use next, what to notice, what is asked, and what came of it at its end."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from stillshaft.solver.state import JobRun
from stillshaft.ui.desktop import lessons, tour
from stillshaft.ui.desktop.lessons import LEFT, NOT_LEFT, Lesson, Outcome
from stillshaft.ui.desktop.masses_view import CORRECTION, PUT_ON
from stillshaft.ui.desktop.runs_page import LIVE, NEXT, TAKEN
from stillshaft.ui.desktop.stages import Stage
from stillshaft.ui.desktop.tour_coach import Plan, Pointer
from stillshaft.ui.desktop.tour_steps import RunWords, Steps

if TYPE_CHECKING:
    from stillshaft.ui.desktop.app import Program

LONGER, AS_IT_IS = "Record longer", "Use it as it is"
KNOWN, UNKNOWN = "It is well known", "Nothing is known of it"
_LIGHT_G = 1.0  # of a trial mass that is far too light


class LessonPlan:
    """A lesson that is led through; its end is worked out from the record."""

    def __init__(self, program: Program, lesson: Lesson) -> None:
        self.program, self.lesson = program, lesson
        self.name = lesson.title
        self.steps = Steps(program)
        self._chosen: str | None = None
        self._outcomes: tuple[Outcome, ...] | None = None
        self._asked = False

    def pointer(self) -> Pointer:
        """What comes next; at the end, what came of it."""
        return self._next() or self._end()

    def answer(self, choice: str) -> None:
        """The learner chose."""
        self._chosen = choice

    def _next(self) -> Pointer | None:
        raise NotImplementedError

    def _end(self) -> Pointer:
        frame = self.program.frame
        if not self._asked:
            self._asked = True
            self.program.job.act(self.lesson.check, self._checked)
        if self._outcomes is None:
            return self.steps.wait(frame.rail, "Your record is looked at.")
        good = all(outcome.reached for outcome in self._outcomes)
        told = " ".join(outcome.sentence for outcome in self._outcomes)
        verdict = (
            "The goal is reached." if good else "The goal is not reached: begin the lesson again from the Job panel."
        )
        return Pointer(frame.rail, f"{verdict} {told}", presses=False, over=True)

    def _checked(self, outcomes: tuple[Outcome, ...]) -> None:
        self._outcomes = outcomes


class WalkingPhase(LessonPlan):
    """The beat is seen, then averaged out."""

    def _next(self) -> Pointer | None:
        steps, page = self.steps, self.steps.runs
        taken = steps.state.runs
        watch = "Look at dots and ribbon: they swing round and round. That is a second source close in speed."
        before = f"{self.lesson.goal} Measure first: press here."
        if not taken or page.taker.doing:
            return steps.run(RunWords(before, watch))
        last = taken[-1]
        if last.counts:
            return steps.rest("This run counts. Stop the machine.")
        if (there := steps.go(Stage.RUNS, "Your run waits for you on Runs.")) is not None:
            return there
        if self._chosen != LONGER:
            if page.turn.value != TAKEN:
                return Pointer(page.turn.buttons[TAKEN], "Look at the run that was taken.")
            return Pointer(page.taken.detail, self._question(last), presses=False, choices=(LONGER, AS_IT_IS))
        if not steps.runs_now or not page.started:
            return steps.run(RunWords(before, watch))
        wanted = lessons.wanted_s(last) or 60.0
        enough = [end for end in ("after 30 s", "after 60 s", "after 120 s") if float(end.split()[1]) >= wanted]
        long = enough or ["after 120 s"]
        if page.next.ends.currentText() not in long:
            if page.turn.value != NEXT:
                return Pointer(page.turn.buttons[NEXT], "Say how long the next run is to be: see what is next.")
            return Pointer(page.next.ends, f"At least {wanted:.0f} s are wanted. Choose “{long[0]}”.")
        if page.turn.value != LIVE:
            return Pointer(page.turn.buttons[LIVE], "Go to Live, and record it.")
        return steps.run(RunWords(before, watch))

    def _question(self, last: JobRun) -> str:
        beat, left = lessons.second_source(last), lessons.left_in_mean_percent(last)
        if self._chosen == AS_IT_IS:
            return f"Its mean may be off by {left or 0.0:.0f} %, and nobody knows which way. What else can be done?"
        if beat is None:
            return "This run was doubted: read why. What do you do?"
        return f"The program doubts this run: a beat of {1.0 / beat[0]:.1f} s swings its phase. What do you do?"


class WeakTrial(LessonPlan):
    """A trial that tells nothing, then one that does."""

    def _next(self) -> Pointer | None:
        steps, page = self.steps, self.steps.masses
        words = replace(
            tour.WORDS,
            first=RunWords(f"{self.lesson.goal} First measure the fan as it is: press here.", tour.WORDS.first.watch),
        )
        if "initial" not in steps.purposes():
            return steps.run(words.first)
        if not steps.measured and steps.trial_on:
            watch = "Watch the vectors: did they move at all?"
            return steps.run(RunWords("Measure what this trial mass does. Start as before.", watch))
        if (resting := steps.rest(words.first.after)) is not None:
            return resting
        trials = len(lessons.trial_runs(steps.state))
        if trials == 0:
            return self._light()
        if trials == 1 and self._chosen != UNKNOWN:
            return self._question()
        if steps.trial_on:
            return steps.take_trial_off("Take this trial mass off again.")
        if trials == 1:
            return steps.put_on_trial(
                "Now take the mass that is proposed: it is as heavy as is usual. Put it on the face.",
                words.record_trial,
            )
        if (there := steps.go(Stage.MASSES, "See what the larger trial tells: go to Masses.")) is not None:
            return there
        if page.turn.value != CORRECTION:
            return Pointer(page.turn.buttons[CORRECTION], "See how sure the correction is now.")
        return None

    def _light(self) -> Pointer:
        page = self.steps.masses
        thought = page.drafts.to_put_on
        if (
            thought
            and thought[0].mass_g > _LIGHT_G
            and self.program.frame.open_stage is Stage.MASSES
            and page.turn.value == PUT_ON
        ):
            said = f"Make it far too light on purpose: write {_LIGHT_G:g} g, then press Enter."
            return Pointer(page.entry.mass.line, said)
        return self.steps.put_on_trial(
            "Take the trial mass that is proposed. Put it on the face.", "Record this light mass as put on."
        )

    def _question(self) -> Pointer:
        steps, page = self.steps, self.steps.masses
        if (there := steps.go(Stage.MASSES, "See what the trial tells: go to Masses.")) is not None:
            return there
        if page.turn.value != CORRECTION:
            return Pointer(page.turn.buttons[CORRECTION], "Look at the correction that would follow from it.")
        said = "Look at mass, angle and what stands beside ±. How sure is this correction?"
        if self._chosen == KNOWN:
            said = "Look again: where an interval has no end, any mass would fit the runs. How sure is it?"
        told = page.correction.lines[0][0] if page.correction.lines else page.correction
        return Pointer(told, said, presses=False, choices=(KNOWN, UNKNOWN), around=page.correction)


class Couple(LessonPlan):
    """The static part first; then the learner says whether a couple is left."""

    def _next(self) -> Pointer | None:
        steps = self.steps
        first = RunWords(f"{self.lesson.goal} Measure it as it is: press here.", tour.WORDS.first.watch)
        check = RunWords(
            "See what is left after one plane. Start as before.", "Watch each bearing: which one is left with more?"
        )
        if lessons.judgement(steps.state) is not None:
            return None
        if (leading := steps.one_plane(replace(tour.WORDS, first=first, check=check), met=True)) is not None:
            return leading
        said = "Now judge: hold each bearing against its limit."
        if (there := steps.go(Stage.CLOSE_OUT, said)) is not None:
            return there
        asked = "One plane took the static part. A bearing whose interval lies above its limit shows a couple. What do you see?"
        return Pointer(steps.closeout.points, asked, presses=False, choices=(LEFT, NOT_LEFT))

    def answer(self, choice: str) -> None:
        """The judgement goes into the record."""
        self.program.job.act(lambda session: lessons.judge_couple(session, choice))


def plan_of(program: Program, key: str) -> Plan:
    """The plan of a lesson."""
    kinds = {lessons.WALKING: WalkingPhase, lessons.WEAK_TRIAL: WeakTrial, lessons.COUPLE: Couple}
    return kinds[key](program, lessons.lesson(key))
