"""The lessons, followed by their own pointers; what they say at the end is worked out from the learner's record."""

import pytest
from followed import Follower
from stillshaft.ui.desktop import lessons
from stillshaft.ui.desktop.lessons import COUPLE, LEFT, LESSONS, NOT_LEFT, WALKING, WEAK_TRIAL
from stillshaft.ui.desktop.lessons_plans import AS_IT_IS, KNOWN, LONGER, UNKNOWN
from stillshaft.ui.desktop.stages import Stage
from stillshaft.ui.session import Session


def led(program, wait, key, *answers):
    """The lesson done to its end; what it says there, and its folder."""
    follower = Follower(program, wait, answers)
    program.practice.begin(key)
    follower.follow()
    assert follower.answers == []
    return follower, follower.pointer.sentence, program.job.shown.folder


def test_every_lesson_is_reached_from_the_job_panel(program):
    panel = program.frame.job_panel
    wanted = []
    panel.practised.disconnect(program.practice.begin)
    panel.practised.connect(wanted.append)
    for each in panel.practice:
        program.frame.show_job()
        assert each.isVisible()
        each.click()
    assert wanted == ["tour", *(lesson.key for lesson in LESSONS)]


@pytest.mark.long
def test_a_walking_phase_is_seen_and_averaged_out(program, wait):
    # less than the four beats of 12.5 s that average it out, however fast the samples come
    program.frame.pages[Stage.RUNS].next.ends.setCurrentText("after 30 s")
    follower, said, folder = led(program, wait, WALKING, AS_IT_IS, LONGER)
    assert said.startswith("The goal is reached.")
    assert "Your run “initial” saw a beat of 1" in said
    assert any(text.startswith("Its mean may be off by") for text in follower.read)
    with Session.open(folder, read_only=True) as session:
        state = session.state
        assert [r.counts for r in state.runs] == [False, True]
        assert state.runs[1].what.duration_s > 4 * 12.5
        assert lessons.second_source(state.runs[0])[0] == pytest.approx(0.08, abs=0.01)
        first, second = (lessons.left_in_mean_percent(r) for r in state.runs)
        assert second is None or second < first


def test_a_doubted_run_that_is_used_does_not_reach_the_goal(program, wait, wait_until):
    program.frame.pages[Stage.RUNS].next.ends.setCurrentText("after 30 s")
    follower = Follower(program, wait)
    program.practice.begin(WALKING)
    follower.follow(until=lambda: bool(program.job.shown and program.job.shown.state.runs))
    run = program.job.shown.state.runs[0]
    program.job.act(lambda session: session.use(run.id, "looks good to me"))
    wait_until(lambda: program.job.shown.state.runs[0].counts)
    follower.follow()
    assert follower.pointer.sentence.startswith("The goal is not reached")
    assert "is too short for its beat" in follower.pointer.sentence


@pytest.mark.long
def test_a_weak_trial_tells_nothing_and_a_larger_one_does(program, wait):
    follower, said, folder = led(program, wait, WEAK_TRIAL, KNOWN, UNKNOWN)
    assert said.startswith("The goal is reached.")
    assert "Your first trial" in said
    assert any(text.startswith("Look again: where an interval has no end") for text in follower.read)
    with Session.open(folder, read_only=True) as session:
        trials = lessons.trial_runs(session.state)
        assert [t.what.masses[0].mass_g for t in trials][0] == 1.0
        first = lessons.solved_up_to(session, trials[0].id)
        assert not all(c.determined for c in first.corrections)
        assert all(c.determined for c in session.worked().solution.corrections)


def test_a_couple_is_judged_after_the_static_part(program, wait, wait_until):
    _, said, folder = led(program, wait, COUPLE, LEFT)
    assert said.startswith("The goal is reached.")
    assert "You corrected front first." in said
    with Session.open(folder, read_only=True) as session:
        assert lessons.couple_is_left(session.state) is True
        assert lessons.judgement(session.state) == LEFT
    told = []  # the wrong judgement is told as such, from the same record
    program.job.act(lambda session: lessons.judge_couple(session, NOT_LEFT))
    program.job.act(lessons.lesson(COUPLE).check, told.extend)
    wait_until(lambda: told)
    assert [outcome.reached for outcome in told] == [True, False]
    assert "your judgement does not fit" in told[1].sentence


@pytest.mark.parametrize("lesson", LESSONS, ids=lambda lesson: lesson.key)
def test_a_lesson_that_was_not_done_is_not_passed(lesson, tmp_path):
    with Session.create(tmp_path / "job", "lesson", "first person") as session:
        session.describe(lesson.brief())
        assert not any(outcome.reached for outcome in lesson.check(session))
