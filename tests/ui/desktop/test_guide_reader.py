"""The guides in the window: opened by key, every page, links and pictures, left with Escape, seen in every theme."""

import re
from dataclasses import replace

import pytest
from PySide6 import QtCore, QtGui, QtTest
from screen_faults import faults, small_targets
from stillshaft.ui import guides
from stillshaft.ui.desktop import guide_reader
from stillshaft.ui.desktop.frame import Frame
from stillshaft.ui.desktop.page import Page
from stillshaft.ui.desktop.stages import Stage

KEY, CTRL = QtCore.Qt.Key, QtCore.Qt.KeyboardModifier.ControlModifier


class Watched(Page):
    """A page that notes when it is entered and left."""

    def __init__(self):
        super().__init__(Stage.BRIEF)
        self.heard = []

    def enter(self):
        self.heard.append("entered")

    def leave(self):
        self.heard.append("left")


@pytest.fixture
def frame(dressed, qtbot, wait_until):
    made = Frame(None, None, Stage.BRIEF)
    qtbot.addWidget(made)
    made.register(Stage.BRIEF, Watched)
    ready = []
    made.ready.connect(lambda: ready.append(True))
    made.show()
    wait_until(lambda: ready)
    yield made
    made.close()


def test_the_guides_take_the_page_and_give_it_back(frame):
    page = frame.pages[Stage.BRIEF]
    QtTest.QTest.keyClick(frame, KEY.Key_F1, CTRL)
    assert frame.stack.currentWidget() is frame.reader
    assert page.heard[-1] == "left"
    assert frame.reader.text.accessibleName() == guides.guide("start").title
    QtTest.QTest.keyClick(frame.reader.text, KEY.Key_Escape)
    assert frame.stack.currentWidget() is not frame.reader
    assert page.heard[-1] == "entered"
    frame.guides_button.click()
    assert frame.stack.currentWidget() is frame.reader
    frame.rail.buttons[Stage.BRIEF].click()
    assert frame.stack.currentWidget() is not frame.reader


def test_every_guide_is_shown_with_its_pictures_and_links(frame):
    frame.show_guides()
    reader, followed = frame.reader, set()
    assert len(reader.choice.buttons) == len(guides.guides())
    for button, guide in zip(reader.choice.buttons.values(), guides.guides(), strict=True):
        button.click()
        shown = reader.text.toPlainText()
        assert shown.startswith(guide.title)
        for picture in re.findall(r"!\[[^]]*\]\((\S+)\)", guide.text):
            image = reader.text.loadResource(QtGui.QTextDocument.ResourceType.ImageResource.value, QtCore.QUrl(picture))
            assert 0 < image.width() <= reader.text.viewport().width(), (guide.name, picture)
        for target in re.findall(r"(?<!!)\[[^]]+\]\((\w+\.md)\)", guide.text):
            reader.text.anchorClicked.emit(QtCore.QUrl(target))
            assert reader.text.toPlainText().startswith(guides.guide(target.removesuffix(".md")).title)
            followed.add(target)
    assert len(followed) >= 4


def test_units_stay_in_one_line_and_code_is_as_it_is():
    told = guide_reader._in_lines("At 1480 r/min, see `speed = 1480 r/min` and [2 mm/s](a.md).\n```\n2 mm/s\n```\n")
    joined = "At 1480_r/~min, see `speed = 1480 r/min` and [2_mm/~s](a.md).\n```\n2 mm/s\n```\n"
    assert told == joined.replace("_", "\u00a0").replace("~", "\u2060")
    texts = [(guide.text, guide_reader._in_lines(guide.text)) for guide in guides.guides()]
    assert any("r/\u2060min" in shown for _, shown in texts)
    assert [shown.replace("\u00a0", " ").replace("\u2060", "") for _, shown in texts] == [text for text, _ in texts]


def test_one_reader_is_kept_and_reads_each_picture_once(frame, wait, monkeypatch):
    read, shown, real = [], set(), QtGui.QImage.fromData
    monkeypatch.setattr(QtGui.QImage, "fromData", lambda content: read.append(content) or real(content))
    image = QtGui.QTextDocument.ResourceType.ImageResource.value
    frame.show_guides()
    reader = frame.reader
    assert frame.stack.count() == 1 + len(frame.pages)
    for width in (1400, 1040, 1300):
        frame.resize(width, 760)
        wait(20)
        for button, guide in zip(reader.choice.buttons.values(), guides.guides(), strict=True):
            button.click()
            for picture in re.findall(r"!\[[^]]*\]\((\S+)\)", guide.text):
                shown.add(picture)
                wide = reader.text.loadResource(image, QtCore.QUrl(picture)).width()
                assert 0 < wide <= reader.text.viewport().width()
    assert len(read) == len(set(read)) == len(shown) > 0
    frame.show_guides()
    frame.show_guides()
    assert frame.reader is reader
    assert frame.stack.count() == 1 + len(frame.pages)


def test_nothing_is_read_from_elsewhere(frame):
    frame.show_guides()
    kind = QtGui.QTextDocument.ResourceType.ImageResource.value
    for name in ("https://example.org/a.png", "../desktop/icon/stillshaft-64.png", "none.png", "start.md"):
        assert frame.reader.text.loadResource(kind, QtCore.QUrl(name)) is None
    before = frame.reader.text.toPlainText()
    frame.reader.text.anchorClicked.emit(QtCore.QUrl("https://example.org/"))
    assert frame.reader.text.toPlainText() == before


@pytest.mark.parametrize(
    ("size", "choice"),
    [
        ((1400, 900), {"theme": "dark"}),
        ((1024, 700), {"theme": "sunlight", "text_size": "largest", "language": "Deutsch"}),
        ((1024, 700), {"theme": "light", "text_size": "large"}),
    ],
)
def test_the_guides_can_be_read_in_every_theme(frame, wait, size, choice):
    frame.resize(*size)
    frame.show_guides()
    frame.set_view(replace(frame.view, **choice))
    for button in frame.reader.choice.buttons.values():
        button.click()
        for _ in range(10):  # texts and sizes are laid out a little later
            if not faults(frame):
                break
            wait(200)
        assert faults(frame) == []
        assert small_targets(frame) == []
        assert frame.reader.text.horizontalScrollBar().maximum() == 0
    assert frame.reader.in_english.isHidden() == ("language" not in choice)
