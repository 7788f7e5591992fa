"""The window of the desktop program: stage rail, page, and the next line; panels of job and view, and the call to stop.

Pages are registered by stage and built after the window is on the screen, one at a time, so that it opens at once.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui.desktop import look, parts, settings, why, words
from stillshaft.ui.desktop.job_panel import AdvicePanel, JobPanel
from stillshaft.ui.desktop.page import NotYet, Page
from stillshaft.ui.desktop.rail import StageRail
from stillshaft.ui.desktop.stages import Guide, Sentence, Stage, State, Weight, most_important
from stillshaft.ui.desktop.stop_call import StopCall
from stillshaft.ui.desktop.tasks import Tasks
from stillshaft.ui.desktop.tour_coach import Coach
from stillshaft.ui.desktop.view_panel import ViewPanel
from stillshaft.ui.desktop.why_panel import WhyPanel
from stillshaft.ui.desktop.worded import Worded, reword_all
from stillshaft.ui.theme import THEMES, Theme

if TYPE_CHECKING:
    from stillshaft.ui.desktop.guide_reader import GuideReader

SMALLEST = (1024, 700)
_BETWEEN_PAGES_MS = 10  # the event loop gets its turn between two pages that are built
_UNDO_KEYS = ("Ctrl+Z", "Ctrl+Shift+Z")
_WHY_KEYS = ("F1", "Shift+F1")
_GUIDES_KEY = "Ctrl+F1"


class NextLine(Worded, QtWidgets.QFrame):
    """One sentence on what matters most, and a button that goes there."""

    opened = QtCore.Signal(Stage)
    asked = QtCore.Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("nextLine")
        row = QtWidgets.QHBoxLayout(self)
        row.setContentsMargins(look.WIDE, look.TIGHT, look.WIDE, look.TIGHT)
        row.setSpacing(look.GAP)
        row.addStrut(look.TARGET_PX)  # as high without a button as with one: the page above must stand still
        self.sign = parts.Sign(26)
        self.text = parts.label("", "sentence", wrap=True)
        self.why = parts.button("Wh&y?", self.asked.emit, tip="Why this is advised, and how to do otherwise")
        self.go = parts.button("&Go", self._go, "main")
        row.addWidget(self.sign)
        row.addWidget(self.text, 1)
        row.addWidget(self.why)
        row.addWidget(self.go)
        self.shown: Sentence | None = None

    def say(self, sentence: Sentence, open_stage: Stage, *, advised: bool = False) -> None:
        """Show a sentence; the button is there when it leads to another stage, and one that says why it is `advised`."""
        self.shown = sentence
        self.why.setVisible(advised)
        if self.text.text() != sentence.text:
            self.text.setText(sentence.text)
        self.setAccessibleName(f"{sentence.weight.value}: {sentence.text}")
        self.text.setAccessibleName(f"{sentence.weight.value}: {sentence.text}")
        self.sign.show_weight(sentence.weight)
        leads = sentence.action is not None and sentence.stage is not open_stage
        if leads:
            text = f"&Go to {sentence.action}"
            self.go.setText(text)
            self.go.setAccessibleName(text.replace("&", ""))
        self.go.setVisible(leads)

    def _go(self) -> None:
        if self.shown is not None:
            self.opened.emit(self.shown.stage)


class Frame(QtWidgets.QMainWindow):
    """The main window.

    `settings_file` remembers how things are shown, None: nothing is remembered. `prepare` is called on a thread once the
    window is shown and before pages are built; `start` is the stage that is open first, `usual` what is shown as long as
    nothing is remembered.
    """

    ready = QtCore.Signal()  # all pages are built
    closed = QtCore.Signal()  # every page was told

    def __init__(
        self,
        settings_file: Path | None,
        prepare: Callable[[], None] | None = None,
        start: Stage = Stage.BRIEF,
        usual: settings.View = settings.View(),
    ) -> None:
        super().__init__()
        self.setWindowTitle("Stillshaft")
        self.setMinimumSize(*SMALLEST)
        self.resize(1400, 900)
        self._settings_file = settings_file
        self.view, self._said = (usual, None) if settings_file is None else settings.load(settings_file, usual)
        words.speak(self.view.language)
        self._spoken = words.spoken()
        self.pages: dict[Stage, Page] = {}
        self._waiting: list[tuple[Stage, Callable[[], Page]]] = []
        self._areas: dict[Stage, parts.Scrolled] = {}
        self._undressed: list[Stage] = []  # pages behind, which get other colours one at a time
        self._open = start
        self._prepare = prepare
        self._shown = False
        self._tasks = Tasks(self)
        self.rail = StageRail()
        self.view_button = parts.button(
            "&View", self.show_view, tip="Units, angles, viewing end, colours, text size, language"
        )
        self.job_button = parts.button("Job", self.show_job, tip="Begin a job, open one, or one of late (Ctrl+J)")
        self.job_button.setShortcut("Ctrl+J")
        self.explain_button = parts.button(
            "Explain (F1)", self.explain, tip="Why what is shown is so, with the rule behind it; or press on a figure"
        )
        self.guides_button = parts.button(
            "Guides",
            self.show_guides,
            tip="How to begin, wire up, trust a phase, go step by step; and the theory (Ctrl+F1)",
        )
        self.reader: GuideReader | None = None
        self.stack = QtWidgets.QStackedWidget()
        self.next_line = NextLine()
        self._lay_out()
        self.panel = ViewPanel(self, self.view)
        self.panel.changed.connect(self.set_view)
        self.job_panel, self.advice_panel = JobPanel(self), AdvicePanel(self)
        self.stop_call = StopCall(self, self.stack)
        self.why_panel = WhyPanel(self)
        self.why_panel.wanted.connect(self._explain_other)
        self.coach = Coach(self, self._reveal)
        self.guide: Guide | None = None
        self._awaited = False  # a guide is worked out for the job that was opened
        self.next_line.asked.connect(self.show_why)
        self.undo, self.redo = (QtGui.QShortcut(QtGui.QKeySequence(keys), self) for keys in _UNDO_KEYS)
        for each in _WHY_KEYS:
            QtGui.QShortcut(QtGui.QKeySequence(each), self).activated.connect(self.explain)
        QtGui.QShortcut(QtGui.QKeySequence(_GUIDES_KEY), self).activated.connect(self.show_guides)
        self.rail.opened.connect(self.open)
        self.next_line.opened.connect(self.open)
        for stage in Stage:
            keys = QtGui.QShortcut(QtGui.QKeySequence(f"Ctrl+{stage.key}"), self)
            keys.activated.connect(lambda s=stage: self.open(s))
        self._dress()
        self.rail.choose(self._open)
        self.rail.buttons[self._open].setFocus()
        self._renew()

    def _lay_out(self) -> None:
        middle = QtWidgets.QWidget()
        middle.setObjectName("frame")
        grid = QtWidgets.QGridLayout(middle)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(0)
        foot = QtWidgets.QGridLayout()
        foot.setContentsMargins(look.GAP, 0, look.GAP, 0)
        foot.setSpacing(look.HAIR)
        foot.addWidget(self.explain_button, 0, 0, 1, 2)
        foot.addWidget(self.guides_button, 1, 0, 1, 2)
        foot.addWidget(self.job_button, 2, 0)
        foot.addWidget(self.view_button, 2, 1)
        self.rail.body.addLayout(foot)
        grid.addWidget(self.rail, 0, 0, 2, 1)
        grid.addWidget(self.stack, 0, 1)
        grid.addWidget(self.next_line, 1, 1)
        grid.setColumnStretch(1, 1)
        grid.setRowStretch(0, 1)
        self.setCentralWidget(middle)

    # pages

    def register(self, stage: Stage, build: Callable[[], Page]) -> None:
        """Have the page of a stage built once the window is shown."""
        self._waiting.append((stage, build))

    def open(self, stage: Stage) -> None:
        """Show a stage's page; where it is not built yet, as soon as it is."""
        left = self.pages.get(self._open)
        if left is not None and stage is not self._open:
            left.leave()
            self.why_panel.put_away()
        self._open = stage
        self.rail.choose(stage)
        page = self.pages.get(stage)
        if stage in self._undressed:
            self._dress_page(stage)
        for keys in (self.undo, self.redo):  # a page may have buttons of its own with these keys
            keys.setEnabled(not hasattr(page, "undo"))
        if page is not None:
            self.stack.setCurrentWidget(self._areas[stage])
            page.enter()
        self._renew()

    @property
    def open_stage(self) -> Stage:
        """The stage whose page is shown."""
        return self._open

    def showEvent(self, event: QtGui.QShowEvent) -> None:  # noqa: N802 - Qt's name
        """Begin to build the pages once the first picture of the window is there."""
        super().showEvent(event)
        if not self._shown:
            self._shown = True
            waiting = {stage for stage, _ in self._waiting}
            self._waiting += [(stage, partial(NotYet, stage)) for stage in Stage if stage not in waiting]
            self._waiting.sort(key=lambda w: w[0] is not self._open)
            QtCore.QTimer.singleShot(_BETWEEN_PAGES_MS, self._begin)

    def _begin(self) -> None:
        if self._prepare is None:
            self._build_next()
        else:
            self._tasks.run("loading pages", self._prepare, lambda _: self._build_next(), self._not_prepared)

    def _not_prepared(self, why: str) -> None:
        self._said = why
        self._build_next()

    def _build_next(self) -> None:
        if not self._waiting:
            self.ready.emit()
            return
        from stillshaft.ui.desktop.why_places import mark  # it knows all pages, which are loaded by now

        stage, build = self._waiting.pop(0)
        page = build()
        self.pages[stage] = page
        page.set_view(self.view)
        mark(page)
        page.changed.connect(self._renew)
        area = self._areas[stage] = parts.Scrolled(page, stage.value)
        area.room.connect(lambda width, p=page: p.set_room(width, self.view.body_px))
        self._dress_page(stage)
        self.stack.addWidget(self._areas[stage])
        if stage is self._open:
            self.open(stage)
        else:
            self._renew()
        QtCore.QTimer.singleShot(_BETWEEN_PAGES_MS, self._build_next)

    # what matters most

    def say(self, text: str) -> None:
        """Say something of the program itself in the next line; an empty text: no more."""
        self._said = text or None
        self._awaited = self._awaited and not text  # it may be why there will be no guide
        self._renew()

    def await_guide(self) -> None:
        """Another job is open, of which the guidance has said nothing yet: nor do the pages meanwhile."""
        self.guide, self._awaited = None, True
        self._renew()

    def set_guide(self, guide: Guide) -> None:
        """Take what the guidance says of the job that is open."""
        self.guide, self._awaited = guide, False
        self._renew()

    def _renew(self) -> None:
        """States on the rail, and the sentence that matters most."""
        for stage, page in self.pages.items():
            button, state = self.rail.buttons[stage], self._state_of(page)
            if button.state is not state and not self._awaited:
                button.show_state(state)
        said = [s for page in self.pages.values() if (s := page.sentence()) is not None]
        if self.guide is not None or self._awaited:  # it knows the record better than any page; pages know what runs
            said = [s for s in said if self._comes_first(s)]
        if self._said is not None and all(s.weight is not Weight.STOP for s in said):
            said = [Sentence(self._said, self._open, Weight.CAUTION)]  # it answers what was done just now
        advised = self.guide is not None and not said
        advice = Sentence(self._meanwhile, self._open) if self.guide is None else self.guide.sentence
        self.next_line.say(most_important(said) or advice, self._open, advised=advised)

    @property
    def _meanwhile(self) -> str:
        """What there is to say while neither the pages nor the guidance say anything."""
        if len(self.pages) < len(Stage):
            return "The pages are being loaded."
        return "What comes next is being worked out." if self._awaited else "Choose a stage on the left."

    def _state_of(self, page: Page) -> State:
        """As the guidance has it, unless what runs needs attention."""
        own = page.state()
        if self.guide is None or (own is State.ATTENTION and page.watches):
            return own
        return self.guide.states[page.stage]

    def _comes_first(self, sentence: Sentence) -> bool:
        """Whether a page's sentence comes before the guidance's."""
        if sentence.weight is not Weight.CAUTION:
            return sentence.weight is Weight.STOP
        page = self.pages.get(sentence.stage)
        return sentence.first or sentence.stage is self._open or (page is not None and page.watches)

    # how things are shown

    @property
    def theme(self) -> Theme:
        """The colours chosen."""
        return THEMES[self.view.theme]

    def show_view(self) -> None:
        """Open the panel of choices."""
        if self.panel.isVisible():
            self.panel.put_away()
        else:
            self.panel.open_above(self.view_button)

    def show_job(self) -> None:
        """Open the panel of jobs."""
        if self.job_panel.isVisible():
            self.job_panel.put_away()
        else:
            self.job_panel.open_above(self.job_button)

    def show_why(self) -> None:
        """Open the panel that says why something is advised."""
        if self.next_line.why.isVisible():
            self.advice_panel.open_above(self.next_line.why)

    def show_guides(self) -> None:
        """Read the guides in the place of the page; again: put them away."""
        if self.reader is None:
            from stillshaft.ui.desktop.guide_reader import GuideReader

            self.reader = GuideReader()
            self.reader.left.connect(self._leave_guides)
            self.stack.addWidget(self.reader)
            self._dress_reader()
        if self.stack.currentWidget() is self.reader:
            self._leave_guides()
        elif self._open in self.pages:
            self.pages[self._open].leave()
            self.why_panel.put_away()
            self.stack.setCurrentWidget(self.reader)
            self.reader.open()

    def _leave_guides(self) -> None:
        self.open(self._open)
        self.guides_button.setFocus()

    def _dress_reader(self) -> None:
        if self.reader is not None:
            self.reader.set_look(self.theme, look.style_sheet(self.theme, self.view.body_px), self.view.body_px)

    def explain(self) -> None:
        """Say why what has the focus, or what is nearest to it, is so; again: put that away."""
        focus, page = QtWidgets.QApplication.focusWidget(), self.pages.get(self._open)
        if page is None or (focus is not None and self.why_panel.isAncestorOf(focus)) or focus is self.why_panel:
            self.why_panel.put_away()
            return
        inside = focus is not None and page.isAncestorOf(focus)
        found = why.nearest(focus, page) if inside and focus is not None else next(why.explained_in(page), None)
        self._explain(*(found or ("next-line", self.next_line.text)))

    def _explain(self, key: str, figure: QtWidgets.QWidget) -> None:
        page = self.pages[self._open]
        self.why_panel.open_beside(figure, key, [*(k for k, _ in why.explained_in(page)), "next-line"])

    def _explain_other(self, key: str) -> None:
        """What is explained may be scrolled out of sight."""
        figure = dict(why.explained_in(self.pages[self._open])).get(key, self.next_line.text)
        self._reveal(figure)
        self._explain(key, figure)

    def _reveal(self, widget: QtWidgets.QWidget) -> None:
        """Scroll to a part of the page that is open."""
        area = self._areas.get(self._open)
        if area is not None and area.isAncestorOf(widget):
            area.ensureWidgetVisible(widget)

    def mousePressEvent(self, event: QtGui.QMouseEvent) -> None:  # noqa: N802 - Qt's name
        """A press that nothing else took: on a figure, a text or a picture it asks why."""
        figure, page = self.childAt(event.position().toPoint()), self.pages.get(self._open)
        if figure is None or page is None:
            return
        if figure is self.next_line.text:
            self._explain("next-line", figure)
        elif (key := why.key_of(figure)) is not None and page.isAncestorOf(figure) and why.shows_something(figure):
            self._explain(key, figure)

    def set_view(self, view: settings.View) -> None:
        """Show everything so, and remember it."""
        before, self.view = self.view, view
        self.panel.show_view(view)
        words.speak(view.language)
        if (before.theme, before.text_size) != (view.theme, view.text_size):
            self._dress()
            self.panel.adjustSize()
        for page in self.pages.values():
            page.set_view(view)
        self._said = None if self._settings_file is None else settings.save(self._settings_file, view)
        self._renew()

    def changeEvent(self, event: QtCore.QEvent) -> None:  # noqa: N802 - Qt's name
        """Say everything anew in another language, once."""
        if event.type() == QtCore.QEvent.Type.LanguageChange and words.spoken() != self._spoken:
            self._spoken = words.spoken()
            reword_all(self)
            self._dress()
            self.panel.adjustSize()
        super().changeEvent(event)

    def _dress(self) -> None:
        """Colours and text size: of all but the pages behind at once, and of those one after the other."""
        sheet = look.style_sheet(self.theme, self.view.body_px)
        self.setPalette(look.palette(self.theme))
        self.setFont(look.font(self.view.body_px))
        for part in (self.rail, self.next_line, self.panel, self.job_panel, self.advice_panel):
            part.setStyleSheet(sheet)
        self.rail.set_look(self.theme, self.view.body_px)
        self.next_line.sign.set_theme(self.theme)
        for panel in (self.job_panel, self.advice_panel):
            panel.set_width(self.view.body_px)
            panel.adjustSize()
        self.stop_call.set_look(self.view.body_px)
        self.why_panel.set_look(self.theme, sheet, self.view.body_px)
        self.coach.set_look(self.theme, sheet, self.view.body_px)
        self._dress_reader()
        waiting = bool(self._undressed)
        self._undressed = list(self.pages)
        if self._open in self.pages:
            self._dress_page(self._open)
        if self._undressed and not waiting:
            QtCore.QTimer.singleShot(_BETWEEN_PAGES_MS, self._dress_next)

    def _dress_page(self, stage: Stage) -> None:
        if stage in self._undressed:
            self._undressed.remove(stage)
        page, area = self.pages[stage], self._areas[stage]
        area.setStyleSheet(look.style_sheet(self.theme, self.view.body_px))
        page.set_theme(self.theme)
        page.set_room(area.viewport().width(), self.view.body_px)

    def _dress_next(self) -> None:
        if self._undressed:
            self._dress_page(self._undressed[0])
            QtCore.QTimer.singleShot(_BETWEEN_PAGES_MS, self._dress_next)

    def closeEvent(self, event: QtGui.QCloseEvent) -> None:  # noqa: N802 - Qt's name
        """Stop what runs; the choices are saved already."""
        self._waiting.clear()
        self._undressed.clear()
        self._tasks.close()
        self.stop_call.be_still()
        self.coach.leave()
        for panel in (self.panel, self.job_panel, self.advice_panel):
            panel.put_away()
        for page in self.pages.values():
            page.close_down()
        self.closed.emit()
        event.accept()
