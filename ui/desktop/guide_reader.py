"""Reads the guides in the window: a page of Markdown at a time, in the window's colours and text size. Nothing is fetched."""

from __future__ import annotations

import re
from importlib import resources

from PySide6 import QtCore, QtGui, QtWidgets
from stillshaft.ui import guides
from stillshaft.ui.desktop import look, parts
from stillshaft.ui.desktop.phrases import unbroken
from stillshaft.ui.desktop.worded import Worded
from stillshaft.ui.theme import THEMES, Theme

_COLUMN_EMS = 58  # longer lines are hard to read
_HEADINGS = {1: (1.6, 0.0), 2: (1.25, 1.4), 3: (1.0, 1.0)}  # height over body text, room above in heights of body text
_CODE, _LINE_PERCENT = 0.9, 125.0
_AS_IT_IS = re.compile(r"(```.*?```|`[^`\n]*`|\]\([^)\n]*\))", re.DOTALL)
_NAMES = {"start": "First job", "wiring": "Wiring", "trust": "Trust", "steps": "Steps", "theory": "Theory"}


class GuideText(QtWidgets.QTextBrowser):
    """One guide. Its pictures come from beside it and nowhere else; a link to another guide is emitted as `wanted`."""

    wanted = QtCore.Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.setOpenLinks(False)
        self.setFrameShape(QtWidgets.QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(QtCore.Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setWordWrapMode(QtGui.QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
        self.anchorClicked.connect(self._follow)
        self._theme, self._body_px = THEMES["light"], 14
        self._guide: guides.Guide | None = None
        self._made: QtGui.QTextDocument | None = None
        self._read: dict[str, QtGui.QImage] = {}  # pictures by file, as large as they are there

    def show_guide(self, guide: guides.Guide) -> None:
        """Show a page from its beginning."""
        self._guide = guide
        self.setAccessibleName(guide.title)
        self._fill()
        self.verticalScrollBar().setValue(0)

    def set_look(self, theme: Theme, body_px: int) -> None:
        """Colours and text size."""
        if (theme, body_px) == (self._theme, self._body_px):
            return
        self._theme, self._body_px = theme, body_px
        self._fill_anew()

    def loadResource(self, kind: int, url: QtCore.QUrl | str) -> object:  # noqa: N802 - Qt's name
        """A picture that lies beside the guides, as wide as the column; anything else is not there."""
        name = url if isinstance(url, str) else url.toString()
        if kind != QtGui.QTextDocument.ResourceType.ImageResource.value or not name.endswith(".png") or "/" in name:
            return None
        image = self._picture(name)
        if image.isNull():
            return None
        fine = self.devicePixelRatioF()
        wide = min(image.width(), round(fine * self._column_px()))
        shown = image.scaledToWidth(wide, QtCore.Qt.TransformationMode.SmoothTransformation)
        shown.setDevicePixelRatio(fine)
        return shown

    def _picture(self, name: str) -> QtGui.QImage:
        """A picture beside the guides, read once; an empty one where there is none."""
        if name not in self._read:
            file = resources.files("stillshaft.ui") / "guide_pages" / name
            self._read[name] = QtGui.QImage.fromData(file.read_bytes()) if file.is_file() else QtGui.QImage()
        return self._read[name]

    def _column_px(self) -> int:
        """Width of the text: as much as there is, and no more than can be read well."""
        return max(200, min(self.viewport().width() - 2 * look.ROOM, _COLUMN_EMS * self._body_px))

    def resizeEvent(self, event: QtGui.QResizeEvent) -> None:  # noqa: N802 - Qt's name
        """Text and pictures as wide as there is room."""
        super().resizeEvent(event)
        if event.oldSize().width() != event.size().width():
            self._fill_anew()

    def _follow(self, url: QtCore.QUrl) -> None:
        self.wanted.emit(url.path().removesuffix(".md"))

    def _fill_anew(self) -> None:
        """The same page in another look; what is being read stays where it is."""
        if self._guide is not None:
            at = self.verticalScrollBar().value()
            self._fill()
            self.verticalScrollBar().setValue(at)

    def _fill(self) -> None:
        assert self._guide is not None
        made = QtGui.QTextDocument(self)
        made.setDocumentMargin(0)
        made.setDefaultFont(look.font(self._body_px))
        made.setMarkdown(_in_lines(self._guide.text))
        page = made.rootFrame().frameFormat()
        page.setLeftMargin(look.TIGHT)
        page.setRightMargin(max(0, self.viewport().width() - self._column_px() - look.TIGHT))
        page.setBottomMargin(look.WIDE)
        made.rootFrame().setFrameFormat(page)
        _dress(made, self._theme, self._body_px)
        before, self._made = self._made, made
        self.setDocument(made)
        if before is not None:
            before.deleteLater()


def _in_lines(markdown: str) -> str:
    """Markdown whose figures keep their units in one line; code and the targets of links are as they are, to be copied."""
    parts_of = _AS_IT_IS.split(markdown)
    return "".join(part if number % 2 else unbroken(part) for number, part in enumerate(parts_of))


def _dress(document: QtGui.QTextDocument, theme: Theme, body_px: int) -> None:
    """Give what was read from Markdown the window's headings, code and colours: it has Qt's own."""
    cursor = QtGui.QTextCursor(document)
    before = ""
    block = document.begin()
    while block.isValid():
        form = block.blockFormat()
        code = form.hasProperty(QtGui.QTextFormat.Property.BlockCodeLanguage) or form.nonBreakableLines()
        kind = "code" if code else "list" if block.textList() is not None else "text"
        level = form.headingLevel()
        cursor.setPosition(block.position())
        cursor.movePosition(QtGui.QTextCursor.MoveOperation.EndOfBlock, QtGui.QTextCursor.MoveMode.KeepAnchor)
        letters = QtGui.QTextCharFormat()
        letters.setForeground(QtGui.QColor(theme.text))
        # lines of code and of a list stand closer to each other than to what is around them
        form.setTopMargin(look.HAIR if kind == before != "text" else look.TIGHT)
        form.setBottomMargin(0)
        form.setLineHeight(_LINE_PERCENT, QtGui.QTextBlockFormat.LineHeightTypes.ProportionalHeight.value)
        if level:
            share, above = _HEADINGS.get(level, _HEADINGS[3])
            letters.setFont(look.font(share * body_px, strong=True))
            form.setTopMargin(above * body_px)
        elif code:
            letters.setFont(_code_font(body_px))
            form.setNonBreakableLines(False)
            form.setTopMargin(0 if before == "code" else look.GAP)
            form.setLineHeight(0, QtGui.QTextBlockFormat.LineHeightTypes.SingleHeight.value)
            form.setLeftMargin(look.GAP)
            form.setBackground(QtGui.QColor(theme.ground))
        cursor.mergeCharFormat(letters)
        cursor.setBlockFormat(form)
        if not code:
            _dress_words(block, cursor, theme, body_px)
        before = "heading" if level else kind
        block = block.next()
    for frame in document.rootFrame().childFrames():
        if isinstance(frame, QtGui.QTextTable):
            grid = frame.format().toTableFormat()
            grid.setCellPadding(look.HAIR)
            grid.setBorderCollapse(True)
            grid.setBorderBrush(QtGui.QColor(theme.quiet))
            grid.setTopMargin(look.TIGHT)
            frame.setFormat(grid)


def _dress_words(block: QtGui.QTextBlock, cursor: QtGui.QTextCursor, theme: Theme, body_px: int) -> None:
    """Code, links and bold words within a sentence."""
    found = []
    at = block.begin()
    while not at.atEnd():
        fragment = at.fragment()
        found.append((fragment.position(), fragment.length(), fragment.charFormat()))
        at += 1
    for begin, length, had in found:
        letters = QtGui.QTextCharFormat()
        if had.isAnchor():
            letters.setForeground(QtGui.QColor(theme.accent))
            letters.setFontUnderline(True)
        elif had.fontFixedPitch():
            letters.setFont(_code_font(body_px))
            letters.setBackground(QtGui.QColor(theme.ground))
        elif had.fontWeight() > QtGui.QFont.Weight.Normal and not block.blockFormat().headingLevel():
            letters.setFont(look.font(body_px, strong=True))
        else:
            continue
        cursor.setPosition(begin)
        cursor.setPosition(begin + length, QtGui.QTextCursor.MoveMode.KeepAnchor)
        cursor.mergeCharFormat(letters)


def _code_font(body_px: int) -> QtGui.QFont:
    made = QtGui.QFontDatabase.systemFont(QtGui.QFontDatabase.SystemFont.FixedFont)
    made.setPixelSize(round(_CODE * body_px))
    return made


class GuideReader(Worded, QtWidgets.QFrame):
    """All guides, one shown at a time. Emits `left` when it is to be put away."""

    left = QtCore.Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("page")
        self.setAccessibleName("Guides")
        self.back = parts.button("Back to the &page", self.left.emit, tip="Put the guides away (Esc)")
        head = QtWidgets.QHBoxLayout()
        head.setSpacing(look.GAP)
        head.addWidget(parts.label("Guides", "title"))
        head.addStretch(1)
        head.addWidget(self.back)
        self.choice = parts.Segments("Guide", tuple(_NAMES.values()))
        self.choice.chosen.connect(lambda word: self.show_guide(next(n for n, w in _NAMES.items() if w == word)))
        self.in_english = parts.InEnglish("The guides are in English.")
        self.text = GuideText()
        self.text.wanted.connect(self._show_other)
        card = parts.Card()
        card.body.addWidget(self.text, 1)
        body = QtWidgets.QVBoxLayout(self)
        body.setContentsMargins(look.WIDE, look.ROOM, look.WIDE, look.ROOM)
        body.setSpacing(look.GAP)
        body.addLayout(head)
        body.addWidget(self.choice)
        body.addWidget(self.in_english)
        body.addWidget(card, 1)

    def show_guide(self, name: str) -> None:
        """Show the guide of that name."""
        self.choice.set(_NAMES[name])
        self.text.show_guide(guides.guide(name))

    def _show_other(self, name: str) -> None:
        """A link was followed; one to no guide leads nowhere."""
        if name in _NAMES:
            self.show_guide(name)

    def open(self) -> None:
        """Show the guide that was open, or the first one; the keys scroll it."""
        if not self.choice.value:
            self.show_guide(next(iter(_NAMES)))
        self.text.setFocus(QtCore.Qt.FocusReason.OtherFocusReason)

    def set_look(self, theme: Theme, sheet: str, body_px: int) -> None:
        """Colours and text size."""
        self.setStyleSheet(f"{sheet} QTextBrowser {{ background: {theme.panel}; border: none; }}")
        self.text.set_look(theme, body_px)

    def keyPressEvent(self, event: QtGui.QKeyEvent) -> None:  # noqa: N802 - Qt's name
        """Escape puts it away."""
        if event.key() == QtCore.Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)
