"""What may be wrong: causes with the figures for and against each, what to check next, and what the person decides."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from functools import partial

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.solver.diagnosis import Cause, Diagnosis, NextCheck, Reading
from stillshaft.solver.inspection import Check
from stillshaft.ui.desktop import inspect_answers as answers
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop import words as language
from stillshaft.ui.desktop.brief_fields import Form, LineField
from stillshaft.ui.desktop.inspect_result import moment
from stillshaft.ui.desktop.open_job import OpenJob, Shown
from stillshaft.ui.desktop.said import Remark
from stillshaft.ui.desktop.stages import State, Weight
from stillshaft.ui.desktop.worded import Worded
from stillshaft.ui.theme import THEMES, Theme

_STRONG = math.log(6.0)  # of a reading's points: between the rules' weak and strong factors
_MOST_NEXT = 3
_SHOWN = ("likely", "possible")
DECISIONS = ("Balance", "Put right first", "Look further")


class Link(Worded, QtWidgets.QAbstractButton):
    """A line of text that leads somewhere: pressed by click, Return or space; broken into lines as it needs."""

    def __init__(self, text: str, act: Callable[[], None], where: str) -> None:
        super().__init__()
        self.setText(text)
        self._theme: Theme = THEMES["light"]
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self.setCursor(QtCore.Qt.CursorShape.PointingHandCursor)
        self.setAccessibleName(text)
        self.setAccessibleDescription(where)
        self.setToolTip(where)
        policy = QtWidgets.QSizePolicy(QtWidgets.QSizePolicy.Policy.Expanding, QtWidgets.QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.clicked.connect(lambda _checked=False: act())

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        self.update()

    def reword(self) -> None:
        """Its text is drawn, and may need other room."""
        super().reword()
        self.updateGeometry()
        self.update()

    def _needed(self, width: int) -> int:
        room = QtCore.QRect(0, 0, max(40, width - 2 * look.TIGHT - 22), 10_000)
        wrap = QtCore.Qt.TextFlag.TextWordWrap.value
        return max(
            look.TARGET_PX,
            self.fontMetrics().boundingRect(room, wrap, language.in_lines(self.text())).height() + look.GAP,
        )

    def sizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """As high as the text is at this width."""
        return QtCore.QSize(120, self._needed(self.width()))

    def heightForWidth(self, width: int) -> int:  # noqa: N802 - Qt's name
        """As high as the text is at that width."""
        return self._needed(width)

    def minimumSizeHint(self) -> QtCore.QSize:  # noqa: N802 - Qt's name
        """One line."""
        return QtCore.QSize(120, look.TARGET_PX)

    def keyPressEvent(self, event: QtGui.QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Return, as well as space."""
        if event.key() in (QtCore.Qt.Key.Key_Return, QtCore.Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)

    def changeEvent(self, event: QtCore.QEvent) -> None:  # noqa: N802 - Qt's name
        """Another text size."""
        super().changeEvent(event)
        if event.type() in (QtCore.QEvent.Type.FontChange, QtCore.QEvent.Type.StyleChange):
            self.updateGeometry()

    def paintEvent(self, event: QtGui.QPaintEvent) -> None:  # noqa: N802 - Qt's name
        """Text, an arrow, the focus."""
        painter, theme = QtGui.QPainter(self), self._theme
        painter.setRenderHint(QtGui.QPainter.RenderHint.Antialiasing)
        box = QtCore.QRectF(self.rect()).adjusted(1, 1, -1, -1)
        painter.setPen(
            QtGui.QPen(QtGui.QColor(theme.accent if self.hasFocus() else theme.line), 2.0 if self.hasFocus() else 1.0)
        )
        painter.setBrush(QtGui.QColor(theme.soft if self.underMouse() else theme.panel))
        painter.drawRoundedRect(box, look.RADIUS_PX, look.RADIUS_PX)
        painter.setPen(QtGui.QColor(theme.text))
        inner = self.rect().adjusted(look.TIGHT, 2, -look.TIGHT - 22, -2)
        flags = QtCore.Qt.TextFlag.TextWordWrap.value | QtCore.Qt.AlignmentFlag.AlignVCenter.value
        painter.drawText(inner, flags, language.in_lines(self.text()))
        painter.setPen(QtGui.QPen(QtGui.QColor(theme.accent), 2.0))
        x, y = box.right() - 14.0, box.center().y()
        painter.drawPolyline(
            QtGui.QPolygonF([QtCore.QPointF(x, y - 5), QtCore.QPointF(x + 5, y), QtCore.QPointF(x, y + 5)])
        )
        painter.end()


def reading_text(reading: Reading) -> str:
    """A figure that speaks for or against, and how strongly."""
    weight = "strongly " if abs(reading.points) >= _STRONG else ""
    side = "for" if reading.points > 0.0 else "against"
    return f"{parts.begun(weight + side)}: {reading.text}; {reading.why}"


class CauseCard(parts.Card):
    """A cause with its verdict, what speaks for and against it, and what to do about it; the figures fold away."""

    def __init__(self, cause: Cause, go: Callable[[str], None], theme: Theme, *, unfolded: bool) -> None:
        super().__init__()
        self.cause = cause
        self.setAccessibleName(f"{cause.name}: {cause.verdict}")
        head = QtWidgets.QHBoxLayout()
        sign = parts.Sign(20)
        likely = cause.verdict == "likely"
        sign.show_weight((State.DONE if cause.key == "unbalance" else Weight.CAUTION) if likely else State.UNDER_WAY)
        sign.set_theme(theme)
        head.addWidget(sign, 0, QtCore.Qt.AlignmentFlag.AlignTop)
        head.addWidget(parts.label(f"{parts.begun(cause.name)}: {cause.verdict}", "heading", wrap=True), 1)
        self.body.addLayout(head)
        kinds = [k.name for k in cause.kinds if k.verdict in _SHOWN]
        if kinds:
            self.body.addWidget(parts.label(f"Most like: {kinds[0]}", wrap=True))
        self.body.addWidget(parts.label(f"{parts.begun(cause.advice)}.", "quiet", wrap=True))
        self.links: list[Link] = []
        count = len(cause.speaking_for), len(cause.against)
        self._count = f"{count[0]} for, {count[1]} against"
        self._unfolded = unfolded
        self.fold = parts.button("", self._turn)
        self.fold.setVisible(any(count))
        row = QtWidgets.QHBoxLayout()
        row.addWidget(self.fold)
        row.addStretch(1)
        self.body.addLayout(row)
        for reading in (*cause.speaking_for, *cause.against):
            where = answers.check_of(reading.quantity)
            goes = "Goes to the check that it comes from" if where is not None else "Goes to the Brief"
            link = Link(reading_text(reading), partial(go, reading.quantity), goes)
            link.set_theme(theme)
            self.links.append(link)
            self.body.addWidget(link)
        if not self.links:
            self.body.addWidget(parts.label("Nothing measured speaks for or against it yet.", "small", wrap=True))
        self._show_links()

    def _turn(self) -> None:
        self._unfolded = not self._unfolded
        self._show_links()

    def _show_links(self) -> None:
        verb = "Hide" if self._unfolded else "Show"
        self.fold.setText(f"{verb} figures: {self._count}")
        self.fold.setAccessibleName(f"{verb} figures of {self.cause.name}: {self._count}")
        for link in self.links:
            link.setVisible(self._unfolded)


class NextCard(parts.Card):
    """What was not measured and would tell most."""

    def __init__(
        self, checks: Sequence[NextCheck], titles: dict[str, str], go: Callable[[str], None], theme: Theme
    ) -> None:
        super().__init__("What would tell more")
        self.links: list[Link] = []
        for check in checks:
            tells = f", which tells {' from '.join(check.parts)}" if check.parts else ""
            text = f"{parts.begun(titles[check.check])}: {check.how}{tells}"
            link = Link(text, partial(go, check.quantity), "Goes to this check")
            link.set_theme(theme)
            self.links.append(link)
            self.body.addWidget(link)


class DecisionCard(parts.Card):
    """What the person decides, with the reason; earlier decisions stay listed."""

    def __init__(self, job: OpenJob) -> None:
        super().__init__("Your decision")
        self._job = job
        self.body.addWidget(
            parts.label("The figures suggest; you decide. Decision and reason are recorded.", "quiet", wrap=True)
        )
        self.choice = parts.Segments("Decision", DECISIONS)
        self.form = Form()
        self.what = LineField("What is decided", "such as: balance", wide=True)
        self.why = LineField("Because", "the figures, or what else is known", wide=True)
        self.choice.chosen.connect(self.what.put)
        self.form.add(self.what)
        self.form.add(self.why)
        self.remark = Remark()
        self.button = parts.button("Record &decision", self._decide, "main")
        self.earlier = parts.label("", wrap=True)
        self.body.addWidget(self.choice)
        self.body.addWidget(self.form)
        self.body.addWidget(self.remark)
        row = QtWidgets.QHBoxLayout()
        row.addWidget(self.button)
        row.addStretch(1)
        self.body.addLayout(row)
        self.body.addWidget(self.earlier)

    def _decide(self) -> None:
        what, why = " ".join(self.what.text.split()), " ".join(self.why.text.split())
        for field, text in ((self.what, what), (self.why, why)):
            if not text:
                self.remark.say(f"Say {'what is decided' if field is self.what else 'why'} first.", refused=True)
                field.control.setFocus()
                return
        self.remark.say("")
        self._job.act(
            lambda s: s.decide(what, why),
            lambda _event: self._taken(),
            lambda w: self.remark.say(f"{w}.", refused=True),
        )

    def _taken(self) -> None:
        self.choice.set("")
        self.what.put("")
        self.why.put("")

    def show_job(self, shown: Shown) -> None:
        """List what was decided."""
        listed = [
            f"{moment(e.at)}{', ' + e.by if e.by else ''}: {e.what.text}"
            + (f", because {e.what.why}" if e.what.why else "")
            for e in reversed(shown.state.decisions)
        ]
        self.earlier.setText("\n".join(listed))
        self.earlier.setVisible(bool(listed))

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self.form.set_theme(theme)
        self.remark.set_theme(theme)


class DiagnosisPane(Worded, QtWidgets.QWidget):
    """All causes; emits `go` with the quantity whose check is to be opened."""

    go = QtCore.Signal(str)

    def __init__(self, job: OpenJob) -> None:
        super().__init__()
        self.setAccessibleName("What may be wrong")
        self._theme: Theme = THEMES["light"]
        self._shown: Diagnosis | None = None
        self._stale = False
        self._checks: tuple[Check, ...] = ()
        column = QtWidgets.QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(look.GAP)
        self.said = parts.Card("What may be wrong")
        self.note = parts.label("", wrap=True)
        self.rest = parts.label("", "small", wrap=True)
        self.said.body.addWidget(self.note)
        self.said.body.addWidget(self.rest)
        self._list = QtWidgets.QVBoxLayout()
        self._list.setSpacing(look.GAP)
        self.decision = DecisionCard(job)
        column.addWidget(self.said)
        column.addLayout(self._list)
        column.addWidget(self.decision)
        column.addStretch(1)
        self.causes: list[CauseCard] = []
        self.next: NextCard | None = None

    def show_job(self, shown: Shown) -> None:
        """Show what follows from the record."""
        self.decision.show_job(shown)
        if shown.diagnosis == self._shown and shown.checks == self._checks:
            return
        self._shown, self._checks = shown.diagnosis, shown.checks
        self._stale = True
        if self.isVisible():
            self._build()

    def showEvent(self, event: QtGui.QShowEvent) -> None:  # noqa: N802 - Qt's name
        """What came meanwhile is drawn when it is looked at."""
        super().showEvent(event)
        if self._stale:
            self._build()

    def _build(self) -> None:
        found = self._shown
        if found is None:
            return
        self._stale = False
        for old in (*self.causes, *([self.next] if self.next else [])):
            self._list.removeWidget(old)
            old.hide()
            old.deleteLater()
        told = [c for c in found.causes if c.speaking_for or c.against]
        shown = [c for c in told if c.verdict in _SHOWN]
        self.causes = [
            CauseCard(c, self.go.emit, self._theme, unfolded=c.verdict == "likely" or c is shown[0]) for c in shown
        ]
        titles = {c.key: c.title for c in self._checks}
        first: dict[str, NextCheck] = {}  # of each check the quantity that tells most
        for each in found.next_checks:
            if each.check in titles:
                first.setdefault(each.check, each)
        checks = list(first.values())[:_MOST_NEXT]
        self.next = NextCard(checks, titles, self.go.emit, self._theme) if checks else None
        said = [f"{parts.begun(w)}." for w in found.warnings]
        if told:
            said.insert(0, "Causes in the order of their odds, by what was measured and answered so far.")
        self.note.setText("\n".join(said))
        unlikely = [c.name for c in found.causes if c not in shown and c in told]
        untold = [c.name for c in found.causes if c not in told]
        lines = [f"Unlikely: {'; '.join(unlikely)}."] if unlikely else []
        lines += [f"Nothing told of: {'; '.join(untold)}. That does not mean absent."] if untold else []
        self.rest.setText("\n".join(lines))
        self.rest.setVisible(bool(lines))
        for card in self.causes:
            self._list.addWidget(card)
        if self.next is not None:
            self._list.addWidget(self.next)

    def set_theme(self, theme: Theme) -> None:
        """Recolour."""
        self._theme = theme
        self.decision.set_theme(theme)
        self._stale = True
        if self.isVisible():
            self._build()

    def set_width(self, width_px: int, body_px: int) -> None:
        """So much room, for text of this size."""
        self.decision.form.set_width(width_px - 2 * look.ROOM - 2, body_px)
