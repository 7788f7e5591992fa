"""The language of the window: the one place where the program's English becomes the language that is chosen.

Pages, core, records and files speak English; what is shown passes through `words`. The catalogue is one of Qt's: `languages`
holds its sources (.ts, for Qt's tools) and what is made of them (.qm); `fixtures/translate.py` makes and checks both.
English loads none of it.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from PySide6 import QtCore
from stillshaft.ui.desktop.phrases import Phrases, unbroken
from stillshaft.ui.desktop.settings import LANGUAGES

CONTEXT = "stillshaft"  # of every message in the catalogue
INDEX, BETWEEN = "{index}", "\u2028"  # the message that lists all templates, for Qt's catalogues cannot be listed
FOLDER = Path(__file__).parent / "languages"

# a process has one window and one language
_phrases: Phrases | None = None
_spoken = next(iter(LANGUAGES))
_translators: list[QtCore.QTranslator] = []
_names = frozenset(LANGUAGES)


class Shown(str):
    """A text as it is shown: it is in the language already, or somebody's own."""

    __slots__ = ()


def own(text: str) -> Shown:
    """A text of the person's own, such as a name: shown as it stands."""
    return Shown(text)


def words(text: str) -> str:
    """A text in the language of the window."""
    if _phrases is None or not text or isinstance(text, Shown):
        return text
    return Shown(_phrases.turn(text))


def in_lines(text: str) -> str:
    """A text in the language of the window, where it is broken into lines: no figure is parted from its unit."""
    return unbroken(words(text))


def keep(names: Iterable[str]) -> None:
    """Leave names that the person gave as they are within sentences: of planes, points, runs and jobs.

    A language is called by its own name too.
    """
    global _names
    _names = frozenset(names) | frozenset(LANGUAGES)
    if _phrases is not None:
        _phrases.keep(_names)


def spoken() -> str:
    """The language of the window, by its own name."""
    return _spoken


def misses() -> frozenset[str]:
    """What was shown and could not be translated since the language was chosen."""
    return frozenset() if _phrases is None else frozenset(_phrases.misses)


def misses_of(texts: Iterable[str]) -> frozenset[str]:
    """What of these could not be translated."""
    if _phrases is None:
        return frozenset()
    tried = _phrases_of(_translators[-1])
    for text in texts:
        if not isinstance(text, Shown):
            tried.turn(text)
    return frozenset(tried.misses)


def of_the_system() -> str:
    """The system's language if there is a catalogue for it, else English."""
    code = QtCore.QLocale.system().name()[:2]
    return next((name for name, each in LANGUAGES.items() if each == code), next(iter(LANGUAGES)))


def speak(language: str) -> None:
    """Show everything in this language from now on; every window is told by Qt's event for it. ValueError: no catalogue."""
    global _phrases, _spoken
    application = QtCore.QCoreApplication.instance()
    if language == _spoken or application is None:
        return
    code = LANGUAGES[language]
    loaded = [] if code == "en" else [_catalogue(path) for path in (_of_qt(code), FOLDER / f"stillshaft_{code}.qm")]
    for translator in _translators:
        application.removeTranslator(translator)
    _spoken, _translators[:] = language, loaded
    _phrases = _phrases_of(loaded[-1]) if loaded else None
    for translator in loaded:
        application.installTranslator(translator)


def _of_qt(code: str) -> Path:
    """Where Qt's own words are: of its dialogs and menus."""
    return Path(QtCore.QLibraryInfo.path(QtCore.QLibraryInfo.LibraryPath.TranslationsPath)) / f"qtbase_{code}.qm"


def _catalogue(path: Path) -> QtCore.QTranslator:
    made = QtCore.QTranslator()
    made.load(str(path))
    return made


def _phrases_of(translator: QtCore.QTranslator) -> Phrases:
    def exact(text: str) -> str | None:
        return translator.translate(CONTEXT, text) or None

    made = Phrases(exact, (exact(INDEX) or "").split(BETWEEN))
    made.keep(_names)
    return made
