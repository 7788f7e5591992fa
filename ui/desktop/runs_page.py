"""The Runs page: the next run with its cautions, the source as it runs, the runs that were taken, and sweeps."""

from __future__ import annotations

import time
from pathlib import Path

from PySide6 import QtWidgets
from stillshaft.acquire.hookup import Hookup
from stillshaft.acquire.source import SourceRequest
from stillshaft.solver import progress, run_vectors
from stillshaft.solver.state import JobRun, JobState
from stillshaft.ui import job_checks
from stillshaft.ui.desktop import face as faces
from stillshaft.ui.desktop import inspect_source, look, parts
from stillshaft.ui.desktop import words as language
from stillshaft.ui.desktop.feed import SIMULATED, Feed, Status, recording_choice
from stillshaft.ui.desktop.inspect_measure import KINDS, Measuring
from stillshaft.ui.desktop.inspect_page import RECORDINGS
from stillshaft.ui.desktop.inspect_start import record_start, show_before_start
from stillshaft.ui.desktop.open_job import OpenJob
from stillshaft.ui.desktop.page import Page
from stillshaft.ui.desktop.places import face_of
from stillshaft.ui.desktop.run_taker import AbortWatch, RunTaker, fitted_of
from stillshaft.ui.desktop.run_watch import RunWatch
from stillshaft.ui.desktop.runs_next import NextCard, RunFormError, RunStrip, StartCard, stop_for
from stillshaft.ui.desktop.runs_settling import SameMinutes, SettlingStrip, ended_by, same_minutes, wait_words
from stillshaft.ui.desktop.runs_sweep import SweepView, curves_so_far
from stillshaft.ui.desktop.runs_taken import TakenView, judged, mean_vectors
from stillshaft.ui.desktop.settings import ENDS, View
from stillshaft.ui.desktop.stages import Sentence, Stage, State, Weight
from stillshaft.ui.desktop.watch import Glance
from stillshaft.ui.live import Snapshot
from stillshaft.ui.session import RunTaken, Wanted
from stillshaft.ui.taking import Stop, missing, needed_s
from stillshaft.ui.theme import Theme

NEXT, LIVE, TAKEN, SWEEP = "Next run", "Live", "Runs taken", "Sweep"
_BESIDE_EMS = 66.0
_USUAL_RPM = 1500.0
_MOST_WAITS = 2  # of what a run waits for, in one line


class RunsPage(Page):
    """Takes the runs of the job, and shows them. Without a job it shows the source as it runs."""

    watches = True

    def __init__(self, feed: Feed, job: OpenJob, *, real_time: bool = True) -> None:
        super().__init__(Stage.RUNS)
        self.feed, self.job = feed, job
        self._real_time, self._seed = real_time, 0
        self._shown = False
        self._started = False  # the machine, with the cautions seen to
        self._start_s: float | None = None  # by `time.monotonic`, where the start was seen
        self._waiting = False  # for 1x to settle
        self._settling_said = ""
        self._folder: Path | None = None
        self._on: tuple[object, ...] = ()
        self._unused: tuple[Path, ...] = ()
        self._before_replay, self._replaying = SIMULATED, False
        self._last: tuple[JobRun | None, str] = (None, "")
        self._said: Sentence | None = None
        self._seen_from = ENDS[0]
        self._came = ""  # of the last run, in words
        self.start_stop = parts.button("S&tart", self._start_or_stop, "main", "Let the source run, or stop it")
        self.head.addWidget(self.start_stop)
        self.taker, self.abort = RunTaker(feed, job, self), AbortWatch(feed, job, self)
        self.sweeps = Measuring(job, self)
        self.watch, self.next, self.start = RunWatch(), NextCard(), StartCard()
        self.strip, self.taken, self.sweep = RunStrip(), TakenView(), SweepView()
        self._lay_out()
        self._connect()
        self._follow()
        self._renew()

    def _lay_out(self) -> None:
        self.turn = parts.Segments("What is shown", (NEXT, LIVE, TAKEN, SWEEP))
        self.body.addWidget(self.turn)
        self.settling = SettlingStrip()
        self.body.addWidget(self.settling)
        self.body.addWidget(self.strip)
        left, right = QtWidgets.QVBoxLayout(), QtWidgets.QVBoxLayout()
        left.addWidget(self.next)
        left.addStretch(1)
        right.addWidget(self.start)
        right.addStretch(1)
        self.columns = parts.Columns(left, right, (1, 3))
        self.views = {NEXT: self.columns, LIVE: self.watch, TAKEN: self.taken, SWEEP: self.sweep}
        for view in self.views.values():
            self.body.addWidget(view, 1)
        self.turn_to(LIVE)

    def _connect(self) -> None:
        self.turn.chosen.connect(self.turn_to)
        self.feed.changed.connect(self._renew)
        self.feed.measured.connect(self._take)
        self.feed.glanced.connect(self._look)
        self.job.changed.connect(self._follow)
        self.start.acknowledged.connect(self._acknowledge)
        self.start.runs.connect(lambda: self._go())
        self.strip.record.clicked.connect(lambda _checked=False: self._record())
        self.strip.end.clicked.connect(lambda _checked=False: self.taker.end())
        self.strip.off.clicked.connect(lambda _checked=False: self.taker.break_off())
        self.strip.wait.clicked.connect(lambda _checked=False: self._wait())
        self.settling.ended.connect(self._end_wait)
        self.taker.changed.connect(self._progress)
        self.taker.taken.connect(self._came_of_it)
        self.taker.failed.connect(self._no_run)
        self.taken.replayed.connect(self._replay)
        self.taken.asked.connect(self._judge_run)
        self.taken.used.connect(lambda run, why: self._act(lambda s: s.use(run, why)))
        self.taken.left_out.connect(lambda run, why: self._act(lambda s: s.use(run, why, counts=False)))
        self.taken.made.connect(self._make_run)
        self.sweep.record.clicked.connect(lambda _checked=False: self._record_sweep())
        self.sweep.file.clicked.connect(lambda _checked=False: self._ask_sweep())
        self.sweep.off.clicked.connect(lambda _checked=False: self.sweeps.cancel())
        self.sweeps.changed.connect(self._show_sweep)
        self.sweeps.failed.connect(lambda _what, why: self.sweep.trouble.say(f"{why}."))

    def turn_to(self, what: str) -> None:
        """Show one of the views."""
        self.turn.set(what)
        for name, view in self.views.items():
            view.setVisible(name == what)
        self._show_wait()

    # what the person does

    @property
    def started(self) -> bool:
        """Whether the machine was started with the cautions seen to, and nobody's hands were in since."""
        return self._started

    @property
    def _may(self) -> bool:
        shown = self.job.shown
        return shown is not None and not shown.read_only and not shown.state.closed

    def _start_or_stop(self) -> None:
        feed = self.feed
        if feed.status not in (Status.STOPPED, Status.STOPPING):
            feed.stop()
        elif self._may and not feed.replays:
            self._ask_cautions()
        else:
            feed.start()

    def _ask_cautions(self) -> None:
        """Nothing is started before a person has said that what must hold before a start holds."""
        self._show_cautions()
        self.turn_to(NEXT)
        first = next(iter(self.start.ticks), self.start.who)
        first.setFocus()
        parts.reveal(self.start)

    def _acknowledge(self, texts: list[str], who: str) -> None:
        temperature = self.start.temperature
        self.job.act(
            lambda session: record_start(session, texts, who, temperature),
            lambda _none: self._go(time.monotonic()),
            lambda why: self.start.trouble.say(f"{why}."),
        )

    def _go(self, start_s: float | None = None) -> None:
        self._started, self._start_s = True, start_s
        self.start.begin_anew()
        self.strip.trouble.say("")
        if self.feed.status in (Status.STOPPED, Status.STOPPING):
            self.feed.start()
        self.turn_to(LIVE)
        self._progress()
        self.strip.record.setFocus()

    def _record(self) -> None:
        if not self._started:
            self._ask_cautions()
            return
        snapshot = self.feed.snapshot
        measured = None if snapshot is None else snapshot.measured
        self.next.propose_minutes(self._minutes)
        try:
            wanted = self.next.wanted()
        except RunFormError as error:
            self.next.trouble.say(f"{error}.")
            self.turn_to(NEXT)
            return
        self.next.trouble.say("")
        self.strip.trouble.say("")
        rpm = _USUAL_RPM if measured is None else measured.speed.mean_rpm
        self._came = self._settling_said = ""
        self.turn_to(LIVE)
        self.taker.record(wanted, stop_for(self.next.ends.currentText(), rpm))
        self.strip.end.setFocus()

    # the settling wait

    @property
    def _minutes(self) -> float | None:
        """Since the start, where the page saw it."""
        return None if self._start_s is None else (time.monotonic() - self._start_s) / 60.0

    @property
    def _same(self) -> SameMinutes | None:
        return None if self.job.shown is None else same_minutes(self.job.shown.state)

    def _wait(self) -> None:
        if self.feed.watch is not None:
            self._waiting, self._settling_said = True, ""
            self.feed.watch.watch_settling()
            self._progress()
            self.settling.reason.setFocus()

    def _end_wait(self, reason: str) -> None:
        """Nobody waits any longer; what was seen until then is recorded with the reason."""
        self._stop_waiting(f"The wait was ended: {reason}.", reason)
        self.strip.record.setFocus()

    def _stop_waiting(self, said: str, note: str = "") -> None:
        watch = self.feed.watch
        watched = None if watch is None else watch.settled
        self._waiting, self._settling_said = False, said
        if watch is not None:
            watch.watch_settling(on=False)
        if watched is not None and watched.points:
            self._act(lambda session: session.record_check(job_checks.settled(watched), None, note))
        self._progress()

    def _show_wait(self) -> None:
        """How the wait stands; it is over when 1x has settled, or as long after the start as the first run."""
        watch = self.feed.watch
        running = self._may and self._started and self.feed.status is Status.RUNNING and not self.feed.replays
        self._waiting = self._waiting and watch is not None and running
        here = self.job.shown is not None and self.turn.value in (NEXT, LIVE)
        self.settling.setVisible(here and self._waiting)
        self.strip.setVisible(here and not self._waiting)
        self.strip.wait.setVisible(running and not self._waiting and not self.taker.doing)
        if watch is None or not self._waiting:
            return
        over = ended_by(watch.settled, self._same, self._minutes)
        if over is not None:
            self._stop_waiting(over)
        else:
            self.settling.say(wait_words(watch.settled, self._same, self._minutes))

    def _act(self, work: object) -> None:
        self.job.act(work, None, lambda why: self.taken.trouble.say(f"{why}."))  # type: ignore[arg-type]

    def _make_run(self, path: Path) -> None:
        self.taker.measure(path, Wanted())

    def _replay(self, path: Path, name: str) -> None:
        if not self.feed.replays:
            self._before_replay = self.feed.choice
        self._replaying = False
        self.feed.choose(recording_choice(path, name))
        self.feed.start()
        self._replaying = True
        self.turn_to(LIVE)

    def _judge_run(self, number: int) -> None:
        self.job.act(
            lambda s: judged(s, number), lambda found: self.taken.show_judged(number, found), self.taken.trouble.say
        )

    # sweeps

    @property
    def _sweeping(self) -> str:
        return self.sweeps.text if self.sweeps.what is not None else ""

    def _record_sweep(self) -> None:
        if self._may and not self._started:
            self._ask_cautions()
            return
        feed, self._seed = self.feed, self._seed + 1
        choice, teaching, seed, real_time, fitted = feed.choice, feed.teaching, self._seed, self._real_time, feed.fitted
        self.sweep.trouble.say("")

        def order(hookup: Hookup) -> SourceRequest:
            seconds = KINDS["sweep"].seconds
            return inspect_source.request_for(
                "sweep", choice, hookup, teaching, seed, seconds, real_time=real_time, fitted=fitted
            )

        table = feed.table
        if feed.status is not Status.STOPPED:
            feed.stop()  # an input is opened once
        if table is not None:
            self.job.act(lambda s: s.wire(table) if s.hookup is None else None, None, lambda _why: None)
        self.sweeps.from_source("sweep", order)

    def _show_sweep(self) -> None:
        """How far a sweep that is recorded is, and its curve so far."""
        measured, shown = self.sweeps.seen, self.job.shown
        if measured is not None and shown is not None and shown.hookup is not None:
            self.sweep.show_live(curves_so_far(measured, shown.hookup), measured.unit)
        self.sweep.show_progress(self.sweeps.share, self._sweeping)

    def _ask_sweep(self) -> None:
        title, kinds = language.words(KINDS["sweep"].title), language.words(RECORDINGS)
        path, _ = QtWidgets.QFileDialog.getOpenFileName(self, title, "", kinds)
        if path:
            self.sweep.trouble.say("")
            self.sweeps.from_recording("sweep", Path(path))

    # what comes of it

    def _follow(self) -> None:
        """The job stands elsewhere."""
        shown = self.job.shown
        self.turn.setVisible(shown is not None)
        state = JobState() if shown is None else shown.state
        if shown is None:
            self.turn_to(LIVE)
        elif shown.folder != self._folder:
            self._folder, self._started, self._unused, self._came = shown.folder, False, (), ""
            self.turn_to(NEXT if self._may else TAKEN)
        on = state.on_rotor
        if on != self._on:
            self._on, self._started = on, False  # hands were in
        self.feed.fit(fitted_of(state))
        self.taken.show_job(shown, self._unused)
        self.sweep.show_state(state)
        self.sweep.set_may(self._may)
        for card in (self.next, self.start):
            card.setVisible(self._may)
        self._show_cautions()
        self._ask()
        self._progress()
        self.changed.emit()

    def _ask(self) -> None:
        """What the next run would be, and which recordings belong to no run."""
        shown = self.job.shown
        if shown is None:
            return
        folder = shown.folder

        def done(found: tuple[str, tuple[Path, ...]]) -> None:
            now = self.job.shown
            if now is None or now.folder != folder:
                return
            usual, unused = found
            on = run_vectors.mass_text(progress.on_now(now.state))
            self.next.show_job(on, usual, now.state.brief.conditions)
            unused = tuple(p for p in unused if p != self.taker.path)
            if unused != self._unused:
                self._unused = unused
                self.taken.show_job(now, unused)

        self.job.act(lambda s: (s.purpose_now(), s.unused_recordings()), done, lambda _why: None)

    def _show_cautions(self) -> None:
        shown = self.job.shown
        if shown is None:
            return
        show_before_start(self.start, shown)

    def _renew(self) -> None:
        feed = self.feed
        self.subtitle.setText(f"{feed.choice.name}, {feed.status.value}. ± is the 95 % interval of this run only.")
        idle = feed.status in (Status.STOPPED, Status.STOPPING)
        self.start_stop.setText("S&tart" if idle else "S&top")
        self.start_stop.setAccessibleName("Start" if idle else "Stop")
        if feed.status is Status.STOPPED:
            self._started, self._start_s, self._settling_said = False, None, ""
            if self._replaying:  # it is over: the source of before again
                self._replaying = False
                self._end_replay()
        if feed.hookup is not None:
            self.watch.set_points(tuple(p.name for p in feed.hookup.points))
            self._turn()
        if feed.status is Status.STARTING:
            self.watch.show_snapshot(None)
            self.watch.show_glance(None)
        self._progress()
        self._judge()

    def _end_replay(self) -> None:
        snapshot, glance = self.feed.snapshot, self.feed.glance
        if snapshot is None or snapshot.measured is None:
            self.strip.trouble.say(f"{self.feed.trouble or 'the recording could not be played'}.")
        self.feed.choose(self._before_replay)
        self.watch.show_snapshot(snapshot)
        self.watch.show_glance(glance)

    def _turn(self) -> None:
        if self.feed.hookup is not None:
            turns_clockwise = faces.turns_clockwise(face_of(self.feed.hookup), self._seen_from)
            self.watch.set_clockwise(not turns_clockwise)
            self.sweep.set_clockwise(not turns_clockwise)

    def _take(self, snapshot: Snapshot) -> None:
        if self._shown:
            self._tell_last(snapshot)
            self.watch.show_snapshot(snapshot)
            self.next.propose_minutes(self._minutes)
        self._show_wait()
        self._judge()

    def _tell_last(self, snapshot: Snapshot) -> None:
        """The last run's vectors, to be compared with."""
        shown = self.job.shown
        counting = [] if shown is None else [r for r in shown.state.runs if r.counts]
        last = counting[-1] if counting else None
        unit = "" if snapshot.measured is None else snapshot.measured.unit
        if (last, unit) != self._last:
            self._last = last, unit
            self.watch.show_last({} if last is None or not unit else mean_vectors(last, unit))

    def _look(self, glance: Glance) -> None:
        if self._shown:
            self.watch.show_glance(glance)

    def _progress(self) -> None:
        """The strip: what can be done, and how far it is."""
        taker, feed = self.taker, self.feed
        running = feed.status is Status.RUNNING and not feed.replays
        self._show_wait()
        ready = self._may and running and not taker.doing and not self._waiting
        self.strip.show_progress(
            taker.doing, taker.share, recording=taker.recording, ready=ready, text=self._strip_words(running)
        )
        self.strip.record.setVisible(self._may and not taker.doing)

    def _strip_words(self, running: bool) -> str:
        taker, snapshot = self.taker, self.feed.snapshot
        if taker.recording and snapshot is not None and taker.stop is not None:
            words = parts.begun(taker.doing)
            return f"{words}{_remaining_words(snapshot, taker.stop)}."
        if taker.doing:
            return f"{parts.begun(taker.doing)}."
        if self.feed.status is Status.STOPPED and self.feed.trouble is not None:
            return f"The source does not run: {self.feed.trouble}."
        if self.feed.replays:
            return "A recording is played again: nothing is recorded."
        if self.job.shown is not None and not self._may:
            why = "is closed: reopen it on Close-out" if self.job.shown.state.closed else "can only be read"
            return f"The job {why}; no run is taken."
        if self.feed.status is Status.AWAY:
            return "The source went away: it is waited for. The machine may be running."
        if not running:
            return f"{self._came}Start the machine when what must hold before a start holds."
        if not self._started:
            return f"{self._came}The source runs. See to what must hold before a start, then record."
        settled = f"{self._settling_said} " if self._settling_said else ""
        return f"{settled}{self._came}The machine runs until you stop it."

    def _came_of_it(self, taken: RunTaken) -> None:
        run = taken.run
        word = "counts" if run.counts else "does not count"
        self._came = f'Run "{run.what.name}" {word}. '
        self.next.clear()
        self.turn_to(TAKEN)
        self.taken.choose(run.id)
        self._ask()
        self._progress()

    def _no_run(self, why: str) -> None:
        self.strip.trouble.say(f"No run: {why}.")
        self._ask()
        self._judge()

    def _judge(self) -> None:
        """What the newest figures say, in one sentence."""
        said = self._sentence()
        if said != self._said:
            self._said = said
            self.changed.emit()

    def _sentence(self) -> Sentence | None:
        feed, snapshot = self.feed, self.feed.snapshot
        if feed.failure is not None:
            if feed.status is Status.AWAY:
                text = f"{parts.begun(feed.failure)}. The source is waited for: it goes on by itself once it is back."
                return Sentence(text, Stage.RUNS, Weight.CAUTION, "Runs", first=True)
            return Sentence(
                f"The source does not run: {feed.failure}.", Stage.HOOK_UP, Weight.CAUTION, "Hook-up", first=True
            )
        if feed.trouble is not None:
            return Sentence(f"{parts.begun(feed.trouble)}.", Stage.HOOK_UP, Weight.CAUTION, "Hook-up")
        if feed.status is Status.STOPPED or snapshot is None:
            return None
        if snapshot.lost is not None:
            text = f"{parts.begun(snapshot.lost)}. The source is waited for: it goes on by itself once it is back."
            return Sentence(text, Stage.RUNS, Weight.CAUTION, "Runs", first=True)
        if snapshot.measured is None:
            if snapshot.trouble is None:
                return None
            return Sentence(f"{parts.begun(snapshot.trouble)}.", Stage.HOOK_UP, Weight.CAUTION, "Hook-up")
        for point in snapshot.measured.points:
            if point.steadiness.reasons and point.steadiness.verdict != "too-short":
                return Sentence(
                    f"{parts.begun(point.name)}: {point.steadiness.reasons[0]}.", Stage.RUNS, Weight.CAUTION, "Runs"
                )
        if all(p.steadiness.verdict == "steady" for p in snapshot.measured.points):
            return Sentence("Speed and phase are steady: these figures settle.", Stage.RUNS, action="Runs")
        return Sentence("The figures settle: let it run a little longer.", Stage.RUNS, action="Runs")

    # the page

    def state(self) -> State:
        """Under way while something runs; attention when it says something is wrong."""
        if self._said is not None and self._said.weight is not Weight.NOTE:
            return State.ATTENTION
        return State.UNDER_WAY if self.feed.snapshot is not None else State.EMPTY

    def sentence(self) -> Sentence | None:
        """What the newest figures say."""
        return self._said

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        for part in (self.watch, self.next, self.start, self.settling, self.strip, self.taken, self.sweep):
            part.set_theme(theme)

    def set_view(self, view: View) -> None:
        """Unit and viewing end."""
        self._seen_from = view.seen_from
        self._turn()
        self.feed.set_unit(view.unit)

    def set_room(self, width_px: int, body_px: int) -> None:
        """Pictures and cards beside or below each other."""
        room = width_px - 2 * look.WIDE
        self.watch.set_room(room, body_px)
        self.taken.set_room(room, body_px)
        self.sweep.set_room(room, body_px)
        beside = width_px >= _BESIDE_EMS * body_px
        self.columns.set_beside(beside)
        self.next.set_narrow(beside)

    def enter(self) -> None:
        """Draw what came meanwhile."""
        self._shown = True
        if self.feed.snapshot is not None:
            self._tell_last(self.feed.snapshot)
            self.watch.show_snapshot(self.feed.snapshot)
        if self.feed.glance is not None:
            self.watch.show_glance(self.feed.glance)

    def leave(self) -> None:
        """Nothing is drawn while another page is in front."""
        self._shown = False

    def close_down(self) -> None:
        """Stop the source."""
        self.sweeps.close()
        self.feed.close()


def _remaining_words(snapshot: Snapshot, stop: Stop) -> str:
    """How long a run takes yet, or that what is wanted will not be reached."""
    measured, remaining = snapshot.measured, snapshot.remaining_s
    if measured is not None and (stop.interval or stop.revolutions) and snapshot.seconds > 5.0:
        needed = needed_s(stop, measured, snapshot.seconds)
        if needed > stop.seconds:
            takes = f"it would take {needed:.0f} s" if needed < 1e5 else "its scatter has no bound yet"
            return f"; what is wanted is not reached within {stop.seconds:.0f} s: {takes}"
    left = "" if remaining is None else f", {remaining:.0f} s to go"
    waits = () if measured is None else missing(stop, measured)[:_MOST_WAITS]
    return left + (f"; it waits for {' and '.join(waits)}" if waits else "")
