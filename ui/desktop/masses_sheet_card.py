"""The placement sheet on the screen, to be printed or saved for a phone."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime
from pathlib import Path

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.acquire.hookup import Hookup
from stillshaft.solver import handwork
from stillshaft.solver.state import JobState
from stillshaft.ui.desktop import look, masses_model, masses_paint, masses_sheet, parts
from stillshaft.ui.desktop import words as language
from stillshaft.ui.desktop.masses_model import Draft, Known
from stillshaft.ui.desktop.masses_sheet import A4, PHONE, Sheet
from stillshaft.ui.desktop.places import face_of_plane
from stillshaft.ui.desktop.said import Said
from stillshaft.ui.desktop.settings import View
from stillshaft.ui.desktop.stages import Weight
from stillshaft.ui.desktop.worded import Label
from stillshaft.ui.report_layout import Picture
from stillshaft.ui.report_material import mark_turn_deg, unknown_turn
from stillshaft.ui.theme import Theme

Pages = tuple[tuple[Picture, ...], tuple[Picture, ...]]
_PREVIEW, _USUAL_PX = 0.95, 14  # pixels for a point, where body text is so high
_SUFFIX = {"pdf": "PDF (*.pdf)", "png": "Picture (*.png)"}


def sheets_of(
    state: JobState, hookup: Hookup, drafts: Sequence[Draft], known: Known | None, view: View, *, left_on: bool
) -> Pages:
    """Pages for A4 and for a phone, in the window's language: of what is thought of, else of what is on the rotor.

    Raises EntryError for neither.
    """
    title = "To be added to what is on" if left_on else "To be put on, with all earlier masses taken off"
    if not drafts:
        title = "On the rotor, as recorded"
        now = mark_turn_deg(state)
        pieces = [(o.piece, o.piece.angle_deg + mark_turn_deg(state, o.of) - now) for o in state.on_rotor]
        drafts = [
            Draft(p.plane, p.mass_g, angle_deg % 360.0, p.position, p.radius_mm, p.fixing or masses_model.FIXINGS[0])
            for p, angle_deg in pieces
        ]
        known = None
    if not drafts:
        raise masses_model.EntryError("nothing is on the rotor or thought of: try a suggestion on the face first")
    doubts = list(known.solution.reasons) if known is not None and known.solution is not None else []
    if unknown_turn(state):
        doubts.append(
            "mark or sensors were changed by an unknown turn: make sure of the mark before using these angles"
        )
    made = f"{state.name}, made {datetime.now(UTC):%Y-%m-%d %H:%M} UTC"
    paper: list[Picture] = []
    phone: list[Picture] = []
    for name in dict.fromkeys(d.plane for d in drafts):
        plane = masses_model.plane_of(state, name)
        face = masses_sheet.as_seen(face_of_plane(hookup, plane), view.seen_from)
        own = [d for d in drafts if d.plane == name]
        half = _half_deg(known, own, left_on=left_on)
        lines = []
        for number, draft in enumerate(own, start=1):
            radius = draft.radius_mm or masses_model.radius_mm(plane)
            shown = draft.angle_deg if view.angles == "against rotation" else -draft.angle_deg % 360.0
            newton = masses_model.force_n(state, draft.total_g, radius)
            words = {
                "place": masses_model.place_words(draft.angle_deg, draft.position, view.angles),
                "rim": "" if radius is None else f"{handwork.rim_distance(shown, radius):.0f} mm",
                "radius": "" if radius is None else f"{radius:g} mm",
                "fixing": "" if draft.fixing == masses_model.FIXINGS[0] else draft.fixing,
                "force": "" if newton is None else masses_model.force_words(newton),
                "share": f"{_share(draft, masses_model.radius_mm(plane)):g}",
            }
            lines.append(masses_sheet.line_of(number, draft.total_g, draft.angle_deg, face, words, half))
        sheet = Sheet(state.name, name, title, made, face, view.seen_from, view.angles, tuple(lines), tuple(doubts))
        paper += masses_sheet.pages(sheet, A4, language.words)
        phone += masses_sheet.pages(sheet, PHONE, language.words)
    return tuple(paper), tuple(phone)


def _share(draft: Draft, own: float | None) -> float:
    return 1.0 if draft.radius_mm is None or own is None else draft.radius_mm / own


def _half_deg(known: Known | None, own: Sequence[Draft], *, left_on: bool) -> float | None:
    """How sure the angle of the one piece is that was worked out for a plane."""
    if known is None or known.solution is None or len(own) != 1:
        return None
    for found in known.solution.additional if left_on else known.solution.corrections:
        away = abs((known.at_mark(found.angle_deg) - own[0].angle_deg + 180.0) % 360.0 - 180.0)
        if found.plane == own[0].plane and away <= 1.0:
            return found.angle_ci95_deg
    return None


class SheetCard(parts.Card):
    """Shows the pages and saves or prints them; emits `left` when the person goes back.

    Emits `outdated` when the pages are in another language than the window.
    """

    left = QtCore.Signal()
    outdated = QtCore.Signal()

    def __init__(self) -> None:
        super().__init__("Placement sheet")
        self.paper: tuple[Picture, ...] = ()
        self.phone: tuple[Picture, ...] = ()
        self._name, self._room = "", 600
        size, acts = QtWidgets.QHBoxLayout(), QtWidgets.QHBoxLayout()
        self.turn = parts.Segments("Size", ("A4", "Phone"))
        self.turn.chosen.connect(self.show_size)
        self.print_ = parts.button("P&rint", self._print, "main", "Print the sheet on A4")
        self.pdf = parts.button("Save P&DF", lambda: self._ask("pdf"), tip="Save the sheet for A4 as a PDF file")
        self.png = parts.button("Save pictures", lambda: self._ask("png"), tip="Save pictures of a phone's size")
        self.back = parts.button("&Back", self.left.emit, tip="Back to the rotor face")
        size.addWidget(self.turn)
        size.addStretch(1)
        for each in (self.print_, self.pdf, self.png, self.back):
            acts.addWidget(each)
        self._row = QtWidgets.QBoxLayout(QtWidgets.QBoxLayout.Direction.LeftToRight)
        for layout in (size, acts, self._row):
            layout.setSpacing(look.TIGHT)
        self._row.addLayout(size, 1)
        self._row.addLayout(acts)
        self.body.addLayout(self._row)
        self.said = Said(Weight.NOTE)
        self.body.addWidget(self.said)
        self.picture = Label()
        self.picture.setAlignment(QtCore.Qt.AlignmentFlag.AlignHCenter | QtCore.Qt.AlignmentFlag.AlignTop)
        self.body.addWidget(self.picture, 1)

    def show_pages(self, pages: Pages, name: str) -> None:
        """Show a sheet."""
        (self.paper, self.phone), self._name = pages, name
        self.said.say("")
        self.show_size("A4")

    def show_size(self, size: str) -> None:
        """Show the pages of one size below each other."""
        self.turn.set(size)
        pages = self.paper if size == "A4" else self.phone
        wide = max(p.width for p in pages)
        scale = min(_PREVIEW * self.fontInfo().pixelSize() / _USUAL_PX, self._room / wide)
        images = [masses_paint.image_of(p, scale) for p in pages]
        high = sum(i.height() for i in images) + look.GAP * (len(images) - 1)
        whole = QtGui.QPixmap(max(i.width() for i in images), high)
        whole.fill(self.palette().window().color())
        painter = QtGui.QPainter(whole)
        y = 0
        for image in images:
            painter.drawImage(0, y, image)
            painter.setPen(self.palette().mid().color())  # paper has an edge on a white card too
            painter.drawRect(QtCore.QRect(QtCore.QPoint(0, y), image.size()).adjusted(0, 0, -1, -1))
            y += image.height() + look.GAP
        painter.end()
        self.picture.setPixmap(whole)
        self.picture.setAccessibleName(language.own("; ".join(p.alt for p in pages)))

    def set_room(self, width_px: int) -> None:
        """So much room for a page from left to right; the choice of size stands above the buttons where it is little."""
        shown = (self.turn, self.print_, self.pdf, self.png, self.back)
        needs = sum(each.sizeHint().width() for each in shown) + len(shown) * look.TIGHT
        direction = QtWidgets.QBoxLayout.Direction
        self._row.setDirection(direction.LeftToRight if needs <= width_px else direction.TopToBottom)
        if width_px != self._room:
            self._room = width_px
            if self.paper:
                self.show_size(self.turn.value)

    def save(self, path: Path, kind: str) -> None:
        """Write the sheet as "pdf" for A4, or as "png" pictures for a phone; says where, or why not."""
        try:
            if kind == "pdf":
                masses_paint.save_pdf(self.paper, path)
                written: tuple[Path, ...] = (path,)
            else:
                written = masses_paint.save_images(self.phone, path)
        except OSError as error:
            self.said.say(f"{path}: cannot be written ({error.strerror}); choose another place.", Weight.CAUTION)
        else:
            self.said.say(f"Saved as {', '.join(str(p) for p in written)}.", Weight.NOTE)

    def reword(self) -> None:
        """The pages are made anew by who knows what is on them."""
        super().reword()
        if not self.isHidden():
            self.outdated.emit()

    def set_theme(self, theme: Theme) -> None:
        """Recolour; the sheet itself is paper."""
        self.said.set_theme(theme)

    def _ask(self, kind: str) -> None:
        path, _ = QtWidgets.QFileDialog.getSaveFileName(
            self, language.words("Save the sheet"), f"{self._name} placement.{kind}", _SUFFIX[kind]
        )
        if path:
            self.save(Path(path).with_suffix(f".{kind}"), kind)

    def _print(self) -> None:
        from PySide6 import QtPrintSupport

        printer = QtPrintSupport.QPrinter()
        if QtPrintSupport.QPrintDialog(printer, self).exec():
            masses_paint.print_on(printer, self.paper)
            self.said.say("Sent to the printer.", Weight.NOTE)
