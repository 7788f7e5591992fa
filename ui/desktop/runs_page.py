"""The Runs page: for now its live part, on whatever source the feed has."""

from __future__ import annotations

from stillshaft.ui.desktop import face as faces
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.feed import Feed, Status
from stillshaft.ui.desktop.page import Page
from stillshaft.ui.desktop.places import face_of
from stillshaft.ui.desktop.run_watch import RunWatch
from stillshaft.ui.desktop.settings import ENDS, View
from stillshaft.ui.desktop.stages import Sentence, Stage, State, Weight
from stillshaft.ui.desktop.watch import Glance
from stillshaft.ui.live import Snapshot
from stillshaft.ui.theme import Theme


class RunsPage(Page):
    """Large figures and pictures of the source as it runs."""

    def __init__(self, feed: Feed) -> None:
        super().__init__(Stage.RUNS)
        self.feed = feed
        self._shown = False
        self._said: Sentence | None = None
        self._seen_from = ENDS[0]
        self.start_stop = parts.button("S&tart", self._start_or_stop, "main", "Let the source run, or stop it")
        self.head.addWidget(self.start_stop)
        self.watch = RunWatch()
        self.body.addWidget(self.watch, 1)
        feed.changed.connect(self._renew)
        feed.measured.connect(self._take)
        feed.glanced.connect(self._look)
        self._renew()

    def _start_or_stop(self) -> None:
        if self.feed.status in (Status.STOPPED, Status.STOPPING):
            self.feed.start()
        else:
            self.feed.stop()

    def _renew(self) -> None:
        feed = self.feed
        self.subtitle.setText(f"{feed.choice.name}, {feed.status.value}. ± is the 95 % interval of this run only.")
        running = feed.status in (Status.STARTING, Status.RUNNING)
        self.start_stop.setText("S&top" if running else "S&tart")
        self.start_stop.setAccessibleName("Stop" if running else "Start")
        if feed.hookup is not None:
            self.watch.set_points(tuple(p.name for p in feed.hookup.points))
            self._turn()
        if feed.status is Status.STARTING:
            self.watch.show_snapshot(None)
            self.watch.show_glance(None)
        self._judge()

    def _turn(self) -> None:
        if self.feed.hookup is not None:
            turns_clockwise = faces.turns_clockwise(face_of(self.feed.hookup), self._seen_from)
            self.watch.set_clockwise(not turns_clockwise)

    def _take(self, snapshot: Snapshot) -> None:
        if self._shown:
            self.watch.show_snapshot(snapshot)
        self._judge()

    def _look(self, glance: Glance) -> None:
        if self._shown:
            self.watch.show_glance(glance)

    def _judge(self) -> None:
        """What the newest figures say, in one sentence."""
        said = self._sentence()
        if said != self._said:
            self._said = said
            self.changed.emit()

    def _sentence(self) -> Sentence | None:
        feed, snapshot = self.feed, self.feed.snapshot
        if feed.trouble is not None:
            return Sentence(f"{parts.begun(feed.trouble)}.", Stage.HOOK_UP, Weight.CAUTION, "Hook-up")
        if feed.status is Status.STOPPED or snapshot is None:
            return None
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
        self.watch.set_theme(theme)

    def set_view(self, view: View) -> None:
        """Unit and viewing end."""
        self._seen_from = view.seen_from
        self._turn()
        self.feed.set_unit(view.unit)

    def set_room(self, width_px: int, body_px: int) -> None:
        """Pictures beside or below each other."""
        self.watch.set_room(width_px - 2 * look.WIDE, body_px)

    def enter(self) -> None:
        """Draw what came meanwhile."""
        self._shown = True
        if self.feed.snapshot is not None:
            self.watch.show_snapshot(self.feed.snapshot)
        if self.feed.glance is not None:
            self.watch.show_glance(self.feed.glance)

    def leave(self) -> None:
        """Nothing is drawn while another page is in front."""
        self._shown = False

    def close_down(self) -> None:
        """Stop the source."""
        self.feed.close()
