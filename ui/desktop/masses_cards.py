"""Cards of the Masses page: trial suggestion, correction, expected vibration, cautions before hands go in."""

from __future__ import annotations

import itertools
from collections.abc import Hashable, Sequence

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.solver.cautions import Caution
from stillshaft.solver.correction import Correction, Wanted
from stillshaft.solver.state import JobState
from stillshaft.solver.trial import Trial
from stillshaft.ui.desktop import look, masses_model, parts
from stillshaft.ui.desktop import words as language
from stillshaft.ui.desktop.canvas import Picture, draw_marker, round_up
from stillshaft.ui.desktop.masses_model import OFF, STAYS, Expected, Known
from stillshaft.ui.desktop.said import Said
from stillshaft.ui.desktop.stages import Weight
from stillshaft.ui.desktop.worded import Button, LineEdit
from stillshaft.ui.report_words import figure, with_half
from stillshaft.ui.theme import Theme

WHOLE, STATIC, COUPLE = "each plane", "static part", "couple"
_PARTS = {WHOLE: "all", STATIC: "static", COUPLE: "couple"}
_METHODS = {
    "least-squares": "least squares",
    "expected": "least residual to be expected",
    "minimax": "least largest residual",
}
_ROW_EMS = 5.4  # of a point's room in the picture of what is expected


class Rows(QtWidgets.QWidget):
    """Lines of text, as many as there are; kept and filled anew, because building labels is slow."""

    def __init__(self, kind: str = "") -> None:
        super().__init__()
        self._column = QtWidgets.QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(look.HAIR)
        self._kind = kind
        self._labels: list[QtWidgets.QLabel] = []
        self.hide()

    def show_texts(self, texts: Sequence[str]) -> None:
        """Show these."""
        while len(self._labels) < len(texts):
            made = parts.label("", self._kind, wrap=True)
            self._labels.append(made)
            self._column.addWidget(made)
        for number, each in enumerate(self._labels):
            each.setText(parts.begun(texts[number]) if number < len(texts) else "")
            each.setVisible(number < len(texts))
        self.setVisible(bool(texts))

    @property
    def said(self) -> tuple[str, ...]:
        """What is shown."""
        return tuple(e.text() for e in self._labels if not e.isHidden())


class TrialCard(parts.Card):
    """Says a trial mass for the plane that is shown; emits `wanted` when it is to be tried."""

    wanted = QtCore.Signal()

    def __init__(self) -> None:
        super().__init__("Trial mass")
        self.figure = parts.label("", "figure", wrap=True)
        self.force = parts.label("", "heading", wrap=True)
        self.why = parts.label("", "quiet", wrap=True)
        self.levels = Rows()
        self.trouble = Said()
        self.take = parts.button(
            "Try it on the &face", self.wanted.emit, "main", "Put the trial mass on the face to look at"
        )
        for part in (self.figure, self.force, self.why, self.levels, self.trouble):
            self.body.addWidget(part)
        row = QtWidgets.QHBoxLayout()
        row.addWidget(self.take)
        row.addStretch(1)
        self.body.addLayout(row)
        self.trial: Trial | None = None

    def show_trial(self, plane: str, trial: Trial | None, why: str, angles: str) -> None:
        """Show a suggestion, or why there is none."""
        self.trial = trial
        for part in (self.figure, self.force, self.why, self.take):
            part.setVisible(trial is not None)
        self.trouble.say("" if trial is not None else f"{why}.")
        self.levels.show_texts(())
        if trial is None:
            return
        where = (
            "at any angle"
            if trial.angle_deg is None
            else f"at {masses_model.place_words(trial.angle_deg, None, angles)}"
        )
        self.figure.setText(f"{figure(1000.0 * trial.mass_kg)} g {where}")
        self.force.setText(f"on {plane}: {masses_model.force_words(trial.force_n)} at speed")
        self.why.setText(f"{parts.begun(trial.reason)}.")
        self.levels.show_texts(
            [
                f"{level.point}: {figure(level.expected)} expected, {figure(level.worst)} at the worst angle"
                + ("" if level.abort is None else f", stop at {figure(level.abort)}")
                for level in trial.levels
            ]
        )

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.trouble.set_theme(theme)


def correction_words(found: Correction, known: Known, grams: float, state: JobState, angles: str) -> tuple[str, str]:
    """A correction in a large line and a small one below it."""
    mass = with_half(grams * found.mass, None if found.mass_ci95 is None else grams * found.mass_ci95, "g")
    place = masses_model.place_words(float(round(known.at_mark(found.angle_deg))) % 360.0, None, angles)
    half = " ± ?" if found.angle_ci95_deg is None else f" ± {max(1, round(found.angle_ci95_deg))}°"
    large = f"{found.plane}: {mass} at {place}{half}"
    plane = masses_model.plane_of(state, found.plane)
    radius = found.radius_mm or masses_model.radius_mm(plane)
    newton = masses_model.force_n(state, grams * found.mass, radius)
    small = "" if radius is None else f"radius {figure(radius)} mm, "
    small += f"{masses_model.force_words(newton)} at speed"
    return large, small if found.determined else f"not determined; {small}"


class CorrectionCard(parts.Card):
    """How to correct, and what comes of it. Emits `asked` when the choice changed, else `kept`, `taken`, `halved`."""

    asked = QtCore.Signal()
    kept = QtCore.Signal()
    taken = QtCore.Signal()
    halved = QtCore.Signal()

    def __init__(self) -> None:
        super().__init__("Correction")
        self.base = parts.Segments("Correction counts from", (OFF, STAYS))
        self.base.set(OFF)
        self.base.chosen.connect(lambda _word: self.asked.emit())
        self.body.addWidget(self.base)
        self.parts = parts.Segments("What is corrected", tuple(_PARTS))
        self.parts.set(WHOLE)
        self.parts.chosen.connect(lambda _word: self.asked.emit())
        self.body.addWidget(self.parts)
        self._chosen = QtWidgets.QGridLayout()
        self._chosen.setSpacing(look.HAIR)
        self.body.addLayout(self._chosen)
        self._on: Hashable = None
        self.planes: dict[str, QtWidgets.QPushButton] = {}
        self.points: dict[str, QtWidgets.QPushButton] = {}
        self.lines: list[tuple[QtWidgets.QLabel, QtWidgets.QLabel]] = []
        self._results = QtWidgets.QVBoxLayout()
        self._results.setSpacing(look.HAIR)
        self.body.addLayout(self._results)
        self.trouble = Said()
        self.condition = parts.label("", "quiet", wrap=True)
        self.warnings = Rows("quiet")
        for part in (self.trouble, self.condition, self.warnings):
            self.body.addWidget(part)
        row = QtWidgets.QHBoxLayout()
        row.setSpacing(look.TIGHT)
        self.take = parts.button(
            "Try it on the &face", self.taken.emit, "main", "Put the correction on the face to look at"
        )
        self.keep = parts.button(
            "&Keep as plan", self.kept.emit, tip="Write this correction into the record of the job"
        )
        self.half = parts.button(
            "Try &half of it",
            self.halved.emit,
            tip="Put half the correction on the face: it tests the stored coefficients",
        )
        row.addWidget(self.take)
        row.addWidget(self.half)
        row.addWidget(self.keep)
        row.addStretch(1)
        self.body.addLayout(row)

    @staticmethod
    def half_first(known: Known) -> bool:
        """Whether the stored coefficients ask for half the correction first."""
        return known.stored is not None and known.solution is not None and known.stored.share < 1.0

    def set_machine(
        self, planes: Sequence[str], points: Sequence[str], *, on: Hashable, may_stay: bool, stays: bool
    ) -> None:
        """Planes that may take mass and points that count; `may_stay`: what is on was on in the last run.

        `on` is what is on the rotor: where that is another than before, `stays` says what is asked for first.
        """
        if on != self._on:
            self._on = on
            self.base.set(STAYS if stays and may_stay else OFF)
        self.base.buttons[STAYS].setEnabled(may_stay)
        why = "" if may_stay else "What is on now was not on in the last run: take a run with it first"
        self.base.buttons[STAYS].setToolTip(why)
        self.base.buttons[STAYS].setAccessibleDescription(why)
        if not may_stay:
            self.base.set(OFF)
        self.parts.setVisible(len(planes) == 2)
        if list(self.planes) == list(planes) and list(self.points) == list(points):
            return
        while (item := self._chosen.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self.planes, self.points = {}, {}
        row = 0
        for words, names, found in (
            ("May take mass", planes if len(planes) > 1 else (), self.planes),
            ("Points that count", points if len(points) > 1 else (), self.points),
        ):
            if not names:
                continue
            self._chosen.addWidget(parts.label(words, "small"), row, 0, 1, 2)
            for number, name in enumerate(names):
                each = parts.Named(name, masses_model.short(name))
                each.setChecked(True)
                each.setAccessibleName(f"{words}: {name}")
                each.turned.connect(lambda _on: self.asked.emit())
                found[name] = each
                self._chosen.addWidget(each, row + 1 + number // 2, number % 2)
            row += 2 + len(names) // 2

    @property
    def left_on(self) -> bool:
        """Whether the masses of the last run stay on."""
        return self.base.value == STAYS

    @property
    def wanted(self) -> Wanted:
        """What is asked for. All planes and every part unless said otherwise."""
        some = tuple(n for n, b in self.planes.items() if b.isChecked())
        whole = self.parts.isHidden() or self.parts.value == WHOLE
        return Wanted(
            planes=() if not whole or len(some) == len(self.planes) else some,
            left_out=tuple(n for n, b in self.points.items() if not b.isChecked()),
            parts="all" if whole else _PARTS[self.parts.value],
        )

    @property
    def usual(self) -> bool:
        """Whether nothing special is asked for: such a correction is kept as a plan that can be solved again."""
        return self.wanted == Wanted()

    def show_solution(self, known: Known, grams: float, state: JobState, angles: str) -> None:
        """Show what came of it, or why nothing did."""
        solution = known.solution
        found = () if solution is None else solution.additional if self.left_on else solution.corrections
        while len(self.lines) < len(found):
            pair = parts.label("", "sentence", wrap=True), parts.label("", "small", wrap=True)
            self.lines.append(pair)
            for each in pair:
                self._results.addWidget(each)
        for number, (large, small) in enumerate(self.lines):
            shown = number < len(found)
            large.setVisible(shown)
            small.setVisible(shown)
            if shown:
                texts = correction_words(found[number], known, grams, state, angles)
                large.setText(texts[0])
                small.setText(parts.begun(texts[1]))
        if solution is None:
            self.show_nothing(known.why or "")
            return
        self.trouble.say("; ".join(solution.reasons))
        for part in (self.take, self.keep, self.condition):
            part.show()
        self.condition.setText(
            f"Method {_METHODS.get(solution.method, solution.method)}; {condition_words(solution.condition_number)}."
        )
        said = masses_model.of_brief(solution.warnings)
        self.warnings.show_texts([*stored_words(known), *said])
        self.half.setVisible(self.half_first(known))

    def show_nothing(self, why: str) -> None:
        """There is no correction, for this reason."""
        for part in (*(each for pair in self.lines for each in pair), self.take, self.keep, self.condition, self.half):
            part.hide()
        self.warnings.show_texts(())
        self.trouble.say(f"{why}.")

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.trouble.set_theme(theme)


def stored_words(known: Known) -> list[str]:
    """Which coefficients of an earlier visit the correction rests on, and how they stood their test."""
    used = ["by influence coefficients stored on an earlier visit"] if known.priors else []
    return used if known.stored is None else [*used, known.stored.sentence]


def condition_words(condition: float) -> str:
    """What the condition number says: how much an error of the runs may grow in the masses."""
    if not condition < 1e6:
        return "the planes cannot be told apart"
    meaning = "the planes are told apart well" if condition < 5.0 else "the planes do much the same: errors grow"
    return f"condition number {figure(condition)}, {meaning if condition > 1.001 else 'one plane'}"


class ExpectedPicture(Picture):
    """Each point: where it is now, what is expected and how high it may be with 95 %, against its limit."""

    def __init__(self) -> None:
        super().__init__("Expected vibration", (20.0, 2.0 * _ROW_EMS))
        self.setSizePolicy(QtWidgets.QSizePolicy.Policy.Expanding, QtWidgets.QSizePolicy.Policy.Fixed)
        self._rows: tuple[Expected, ...] = ()
        self._scale: tuple[float, str] = (1.0, "")
        self._top = 1.0
        self._thought = True

    def show_rows(self, rows: Sequence[Expected], factor: float, unit: str, *, thought: bool = True) -> None:
        """Draw these, values times `factor` in `unit`; with nothing `thought` of only the last run."""
        if len(rows) != len(self._rows):
            self.set_smallest((20.0, _ROW_EMS * max(1, len(rows))))
        before = (self._top, self._scale, [r.point for r in self._rows])
        self._rows, self._scale, self._thought = tuple(rows), (factor, unit), thought
        reach = factor * max((max(r.now, r.upper95, r.limit or 0.0) for r in rows), default=1.0)
        if not 0.4 * self._top < 1.02 * reach <= self._top:  # a limit is not at the very edge
            self._top = round_up(1.05 * reach)
        if before != (self._top, self._scale, [r.point for r in self._rows]):
            self.renew()
        expected = [
            f"{r.point}: {figure(factor * r.amplitude)} {unit} expected, below {figure(factor * r.upper95)} with 95 percent, "
            f"{figure(factor * r.now)} in the last run, {r.words}"
            for r in rows
        ]
        there = [f"{r.point}: {figure(factor * r.now)} {unit} in the last run, {r.words_now}" for r in rows]
        said = expected if thought else there
        self.summarise("; ".join(said) or "no runs to tell it from")
        self.update()

    def _place(self, number: int) -> tuple[float, float, float, float]:
        """Left, top, width and height of a point's bar."""
        row = self.height() / max(1, len(self._rows))
        return 4.0, number * row + 2.4 * self.text_px, self.width() - 8.0, max(8.0, min(20.0, row - 3.8 * self.text_px))

    def draw_backdrop(self, painter: QtGui.QPainter) -> None:
        """Names, and room for the bars."""
        for number, row in enumerate(self._rows):
            left, top, width, high = self._place(number)
            name = top - 2.4 * self.text_px
            draw_marker(
                painter, number, QtCore.QPointF(10.0, name + 0.5 * self.text_px), 4.5, self.point_colour(number)
            )
            painter.setFont(self.small(strong=True))
            fitting = QtGui.QFontMetricsF(painter.font()).elidedText(
                row.point, QtCore.Qt.TextElideMode.ElideMiddle, self.width() - 24.0
            )
            self.draw_text(painter, 20.0, name, language.own(fitting), self.theme.text, down=0.0)
            painter.setPen(self.pen(self.theme.line, 1.0))
            painter.setBrush(QtGui.QColor(self.theme.ground))
            painter.drawRect(QtCore.QRectF(left, top, width, high))

    def _draw_mark(
        self, painter: QtGui.QPainter, number: int, value: float, said: str, beside: QtCore.QRectF | None
    ) -> QtCore.QRectF:
        """A line across a point's bar, seen on the bar too, and its word below; `beside` another one: a limit, dashed."""
        left, top, width, high = self._place(number)
        x = left + width * min(1.0, value / self._top)
        ends = QtCore.QPointF(x, top - 2.0), QtCore.QPointF(x, top + high + 3.0)
        colour = self.theme.quiet if beside is None else self.theme.text
        painter.setPen(self.pen(self.theme.panel, 5.0))
        painter.drawLine(*ends)
        painter.setPen(self.pen(colour, 2.0, () if beside is None else (3.0, 2.0)))
        painter.drawLine(*ends)
        said = language.words(said)
        wide = QtGui.QFontMetricsF(painter.font()).horizontalAdvance(said)
        begin = max(2.0, min(x - 0.5 * wide, self.width() - wide - 2.0))
        if beside is not None and begin < beside.right() + 6.0 and begin + wide > beside.left() - 6.0:
            before = x < beside.center().x() and beside.left() > wide + 8.0
            begin = beside.left() - 6.0 - wide if before else beside.right() + 6.0
            if begin + wide > self.width() - 2.0:
                begin = beside.left() - 6.0 - wide
        return self.draw_text(painter, begin, top + high + 2.0, said, colour, down=0.0)

    def draw(self, painter: QtGui.QPainter) -> None:
        """What is expected: it follows the finger; or the last run alone."""
        factor, unit = self._scale
        painter.setFont(self.small())
        if not self._rows:
            self.draw_text(
                painter, 4.0, 4.0, "Needs an initial run and a trial run for each plane", self.theme.quiet, down=0.0
            )
            return
        for number, row in enumerate(self._rows):
            left, top, width, high = self._place(number)
            colour = self.point_colour(number)
            value = row.amplitude if self._thought else row.now
            x, upper = (left + width * min(1.0, factor * v / self._top) for v in (value, row.upper95))
            if self._thought:
                tint = QtGui.QColor(colour)
                tint.setAlpha(70)
                painter.fillRect(QtCore.QRectF(left, top, upper - left, high), tint)
            painter.fillRect(QtCore.QRectF(left, top, max(2.0, x - left), high), QtGui.QColor(colour))
            own = QtCore.QRectF(left, top, 0.0, 0.0)
            if self._thought:
                own = self._draw_mark(painter, number, factor * row.now, f"last run {figure(factor * row.now)}", None)
            if row.limit is not None:
                self._draw_mark(painter, number, factor * row.limit, f"limit {figure(factor * row.limit)}", own)
            shown = figure(factor * value) if factor * value > 0.0005 * self._top else "0"
            said, meant = f"{shown} {unit} in the last run", row.words_now
            if self._thought:
                said, meant = f"{shown} {unit} expected, 95 %: below {figure(factor * row.upper95)}", row.words
            end = self.draw_text(painter, left, top - 4.0, said, self.theme.text).right()
            kind = {"below the limit with 95 %": self.theme.good, "above the limit": self.theme.bad}
            room = self.width() - 4.0 - end
            if QtGui.QFontMetricsF(painter.font()).horizontalAdvance(language.words(meant)) + 12.0 < room:
                shade = kind.get(meant, self.theme.quiet)
                self.draw_text(painter, self.width() - 4.0, top - 4.0, meant, shade, across=1.0)


_MOST_COLUMNS, _LETTERS_BESIDE = 2, 40  # of cautions; room that one needs, with its button


class CautionsCard(parts.Card):
    """What must hold before hands go in; emits `acknowledged` with the texts and who says so."""

    acknowledged = QtCore.Signal(list, str)

    def __init__(self) -> None:
        super().__init__("Before hands go in")
        self.done = Said(Weight.NOTE)
        self.body.addWidget(self.done)
        self._list = QtWidgets.QGridLayout()
        self._list.setHorizontalSpacing(look.ROOM)
        self._list.setVerticalSpacing(look.TIGHT)
        self._columns = 1
        self.body.addLayout(self._list)
        self.ticks: list[QtWidgets.QPushButton] = []
        self._said: list[tuple[QtWidgets.QPushButton | None, QtWidgets.QWidget]] = []
        self._shown: tuple[Caution, ...] = ()
        foot = QtWidgets.QHBoxLayout()
        foot.setSpacing(look.TIGHT)
        self.who = LineEdit()
        self.who_name = parts.labelled("&Who says so", self.who)
        foot.addWidget(self.who_name)
        foot.addWidget(self.who, 1)
        self.say = parts.button("All of it &holds", self._say, "main", "Write into the record that this was seen to")
        foot.addWidget(self.say)
        # what comes before and after the cautions, as Tab goes
        self.above: list[QtWidgets.QWidget] = []
        self.below: list[QtWidgets.QWidget] = [self.who, self.say]
        self.body.addLayout(foot)
        self.trouble = Said()
        self.body.addWidget(self.trouble)

    def show_cautions(self, cautions: Sequence[Caution], by: str, done: str) -> None:
        """Show these; `done` says who acknowledged them since the last start, empty: nobody."""
        self.done.say(done)
        for part in (self.who, self.who_name, self.say):
            part.setVisible(not done)
        if self._shown != tuple(cautions):
            self._shown = tuple(cautions)
            self._fill()
        for _, row in self._said:
            row.setVisible(not done)
        if not self.who.text():
            self.who.setText(by)

    def _fill(self) -> None:
        for _, row in self._said:
            self._list.removeWidget(row)
            row.deleteLater()
        self._said, self.ticks = [], []
        for caution in self._shown:
            row = QtWidgets.QWidget()
            line = QtWidgets.QHBoxLayout(row)
            line.setContentsMargins(0, 0, 0, 0)
            line.setSpacing(look.TIGHT)
            tick = None
            if caution.acknowledge:
                tick = Button("Yes")
                tick.setObjectName("segment")
                tick.setCheckable(True)
                tick.setAutoDefault(False)
                tick.setAccessibleName(f"Yes: {caution.text}")
                tick.turned.connect(self._go_on)
                self.ticks.append(tick)
                line.addWidget(tick, 0, QtCore.Qt.AlignmentFlag.AlignTop)
            line.addWidget(parts.label(caution.text, "" if caution.acknowledge else "quiet", wrap=True), 1)
            self._said.append((tick, row))
        self._arrange()
        self._set_tab_order()

    def _set_tab_order(self) -> None:
        """What is shown anew would come last on its page: it stands between what is above and below it."""
        first = (self.above or self.below)[0]
        before = first.previousInFocusChain()
        while before not in (None, first) and (
            before.focusPolicy() == QtCore.Qt.FocusPolicy.NoFocus or self.isAncestorOf(before)
        ):
            before = before.previousInFocusChain()
        begin = [] if before is None or before is first else [before]
        for earlier, later in itertools.pairwise([*begin, *self.above, *self.ticks, *self.below]):
            QtWidgets.QWidget.setTabOrder(earlier, later)

    def _arrange(self) -> None:
        """Row by row, as Tab goes; what is only to be known stands across both columns."""
        place = 0
        for tick, row in self._said:
            self._list.removeWidget(row)
            across = self._columns if tick is None else 1
            place += -place % across
            line, column = divmod(place, self._columns)
            self._list.addWidget(row, line, column, 1, across, QtCore.Qt.AlignmentFlag.AlignTop)
            place += across
        for column in range(_MOST_COLUMNS):
            self._list.setColumnStretch(column, int(column < self._columns))

    def resizeEvent(self, event: QtGui.QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Two columns where both can be read well."""
        super().resizeEvent(event)
        needed = self.fontMetrics().averageCharWidth() * _LETTERS_BESIDE
        columns = _MOST_COLUMNS if event.size().width() >= _MOST_COLUMNS * needed else 1
        if columns != self._columns:
            self._columns = columns
            self._arrange()

    def _go_on(self, on: bool) -> None:
        """All are answered: on with who says so and the button, in sight and with the focus."""
        if on and all(tick.isChecked() for tick in self.ticks):
            (self.say if self.who.text().strip() else self.who).setFocus(QtCore.Qt.FocusReason.TabFocusReason)
            parts.reveal(self.say)

    def _say(self) -> None:
        open_ones = [t for t in self.ticks if not t.isChecked()]
        who = self.who.text().strip()
        if open_ones:
            self.trouble.say(
                f"{len(open_ones)} of {len(self.ticks)} are not answered yet: see to each, then press its Yes."
            )
            open_ones[0].setFocus()
            parts.reveal(open_ones[0])
        elif not who:
            self.trouble.say("Write who says so.")
            self.who.setFocus()
        else:
            self.trouble.say("")
            self.acknowledged.emit([c.text for c in self._shown], who)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        for part in (self.done, self.trouble):
            part.set_theme(theme)
