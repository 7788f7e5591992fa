"""A person who follows the coach and does nothing else: presses what it points at, and gives the answers that are told here."""

import re

from PySide6 import QtCore, QtTest, QtWidgets


class Follower:
    """Follows until the end; `words` and `presses` are what was to be read and done, for how long that takes a person."""

    def __init__(self, program, wait, answers=()):
        self.program, self.wait, self.answers = program, wait, list(answers)
        self.read, self.presses, self.pointed = [], 0, []
        self.starts = 0

    @property
    def pointer(self):
        return self.program.practice.coach.pointer

    def follow(self, until=lambda: False, steps=4000):
        """Up to the end; a step with nothing to press lets the machine run on."""
        for _ in range(steps):
            self.program.practice.coach.look()
            pointer = self.pointer
            if until() or (pointer is not None and pointer.over):
                return
            if pointer is not None:
                self.do(pointer)
            self.wait(20)
        raise AssertionError(f"no end after {self.pointed[-3:]}")

    def do(self, pointer):
        if pointer.sentence not in self.read:
            self.read.append(pointer.sentence)
        if not self.pointed or self.pointed[-1] != pointer.sentence:
            self.pointed.append(pointer.sentence)
        callout = self.program.practice.coach.callout
        assert callout.isVisible()
        if pointer.choices:
            self.click(callout.answers[pointer.choices.index(self.answers.pop(0))])
        elif pointer.presses:
            self.use(pointer.widget, pointer)

    def use(self, widget, pointer):
        assert widget.isVisible(), pointer.sentence
        assert widget.isEnabled(), pointer.sentence
        if pointer.line is not None:
            said = " ".join(label.text() for label in pointer.line.findChildren(QtWidgets.QLabel))
            if said not in self.read:
                self.read.append(said)
        if isinstance(widget, QtWidgets.QComboBox):
            widget.setCurrentText(re.search("“(.*?)”", pointer.sentence)[1])
            widget.activated.emit(widget.currentIndex())
            self.presses += 2
        elif isinstance(widget, QtWidgets.QLineEdit):
            widget.selectAll()
            QtTest.QTest.keyClicks(widget, re.search("write ([^,]*),", pointer.sentence)[1])
            QtTest.QTest.keyClick(widget, QtCore.Qt.Key.Key_Return)
            self.presses += 3
        else:
            self.click(widget)

    def click(self, widget):
        self.presses += 1
        QtTest.QTest.mouseClick(widget, QtCore.Qt.MouseButton.LeftButton)

    @property
    def words(self):
        return sum(len(text.split()) for text in self.read)
