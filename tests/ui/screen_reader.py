"""The window as a person has it who hears it: names, roles and texts of the accessibility interface, its actions, and keys.

Nothing is asked of widgets, their attributes or their places.
"""

from PySide6 import QtCore, QtGui, QtTest, QtWidgets

_ACCESSIBLE = QtGui.QAccessible
ROLE, _TEXT = _ACCESSIBLE.Role, _ACCESSIBLE.Text
DESCRIPTION = _TEXT.Description
_PATIENCE_S = 15.0  # on an idle machine


class Reader:
    """Hears a window. Names are those read out; one that ends in "…" is the beginning of the name."""

    def __init__(self, window, wait, wait_until):
        _ACCESSIBLE.setActive(True)  # as where a screen reader runs: lists then tell of their changes
        self._window, self._wait, self._wait_until = window, wait, wait_until

    def heard(self):
        """(role, name, interface) of all that is shown, in the order of reading."""
        return list(_below(_ACCESSIBLE.queryAccessibleInterface(self._window)))

    def texts(self):
        """All that is said of what is shown: names, values and descriptions."""
        said = []
        for _, name, at in self.heard():
            said += [name, at.text(_TEXT.Value), at.text(_TEXT.Description)]
        return [text for text in said if text]

    def says(self, part):
        """Whether some text holds these words."""
        return any(part in text for text in self.texts())

    def text_with(self, part):
        """The first text that holds these words."""
        return next((text for text in self.texts() if part in text), "")

    def all(self, role, name):
        """Everything with a role and a name."""
        return [at for r, n, at in self.heard() if r == role and _is(n, name)]

    def find(self, role, name):
        """The only one with a role and a name."""
        found = self.all(role, name)
        assert len(found) == 1, (
            f"{len(found)} × {role.name} “{name}”; heard: {sorted({n for r, n, _ in self.heard() if r == role})}"
        )
        return found[0]

    def can(self, role, name):
        """Whether there is one that can be used now."""
        found = self.all(role, name)
        return len(found) == 1 and not found[0].state().disabled

    def press(self, name, role=ROLE.Button):
        """Press a button."""
        self._act("Press", role, name)
        self._wait(150)  # it is shown pressed before it acts

    def choose(self, name):
        """Turn over one of several that are chosen from, or a stage: what a screen reader does to them first of all."""
        self._act("Toggle", ROLE.CheckBox, name)
        assert self.find(ROLE.CheckBox, name).state().checked

    def _until(self, condition, seconds=20.0):
        """Wait, listening now and then: to hear a whole page takes a while, in which nothing else gets on."""

        def now():
            self._wait(200)
            return condition()

        self._wait_until(now, seconds)

    def _act(self, action, role, name):
        self._until(lambda: self.can(role, name))
        self.find(role, name).actionInterface().doAction(action)
        self._wait(20)

    def type(self, name, text):
        """Put the focus on a field and write into it with the keys."""
        self._until(lambda: self.can(ROLE.EditableText, name))
        field = self.find(ROLE.EditableText, name)
        field.actionInterface().doAction(QtGui.QAccessibleActionInterface.setFocusAction())
        at = QtWidgets.QApplication.focusWidget()
        assert self.find(ROLE.EditableText, name).state().focused
        QtTest.QTest.keyClick(at, QtCore.Qt.Key.Key_A, QtCore.Qt.KeyboardModifier.ControlModifier)
        QtTest.QTest.keyClicks(at, text)
        QtTest.QTest.keyClick(at, QtCore.Qt.Key.Key_Return)
        self._wait(20)

    def value(self, name):
        """What stands in a field."""
        return self.find(ROLE.EditableText, name).text(_TEXT.Value)

    def wait_for(self, part):
        """Until some text holds these words."""
        try:
            self._until(lambda: self.says(part), _PATIENCE_S)
        except AssertionError:
            raise AssertionError(f"“{part}” is not said; heard: {self.texts()}") from None

    def wait_for_control(self, role, name):
        """Until it is there and can be used."""
        self._until(lambda: self.can(role, name), _PATIENCE_S)


def name_of(at):
    """The name that is read out: a list to choose from is called by its label, its text is what is chosen."""
    name = at.text(_TEXT.Name)
    if at.role() == ROLE.ComboBox:
        labels = [other.text(_TEXT.Name) for other, _ in at.relations(_ACCESSIBLE.RelationFlag.Label)]
        return labels[0] if labels else name
    return name


def _below(at):
    for number in range(at.childCount()):
        child = at.child(number)
        if child is None or child.state().invisible:
            continue
        yield child.role(), name_of(child), child
        yield from _below(child)


def _is(heard, name):
    return heard.startswith(name[:-1]) if name.endswith("…") else heard == name
