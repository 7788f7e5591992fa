"""The window in German: switched at run time, nothing shown in English but names, and all of it can be read and reached."""

import re
import subprocess
import sys
from pathlib import Path

import pytest
from balancing_jobs import balancing_job
from PySide6 import QtCore, QtGui, QtWidgets
from screen_faults import faults, items_of, keep_picture, small_targets, text_of
from stillshaft.ui.desktop import canvas, parts, phrases, settings, words
from stillshaft.ui.desktop.feed import Status
from stillshaft.ui.desktop.phrases import Phrases
from stillshaft.ui.desktop.settings import View
from stillshaft.ui.desktop.stages import Stage
from stillshaft.ui.desktop.worded import Worded

ROOT = Path(__file__).parents[3]
GERMAN = View(language="Deutsch")


def shown(window):
    """Every text of a window as it is read or heard: by the widget that shows it."""
    found = {}
    for widget in (window, *window.findChildren(QtWidgets.QWidget)):
        texts = [
            text_of(widget),
            QtWidgets.QWidget.toolTip(widget),
            QtWidgets.QWidget.accessibleName(widget),
            QtWidgets.QWidget.accessibleDescription(widget),
        ]
        if isinstance(widget, QtWidgets.QComboBox):
            texts += items_of(widget)
        if isinstance(widget, QtWidgets.QLineEdit):
            texts.append(QtWidgets.QLineEdit.placeholderText(widget))
        found[widget] = [text for text in texts if text]
    return found


def told(window):
    """What the program itself said in its own English, in the same order."""
    return {
        widget: (widget.text() if isinstance(widget, QtWidgets.QLabel | QtWidgets.QPushButton) else "", widget.toolTip(),
                 widget.accessibleName(), widget.accessibleDescription())
        for widget in window.findChildren(QtWidgets.QWidget) if isinstance(widget, Worded)
    }  # fmt: skip


def laid_out(window, wait):
    """What cannot be read, once everything has found its place; forms without a field have none in any language."""
    for _ in range(50):
        found = [fault for fault in faults(window) + small_targets(window) if not fault.startswith("Form ")]
        if not found:
            break
        wait(100)
    return found


@pytest.fixture
def with_job(program, wait_until, tmp_path):
    """The window on a job that is nearly done."""
    with balancing_job(tmp_path / "jobs" / "job", 2, until="check", limit=2.0):
        pass
    program.open_job(tmp_path / "jobs" / "job")
    wait_until(lambda: program.job.shown is not None and program.job.guided is not None)
    yield program
    program.frame.set_view(View())


def test_every_page_changes_its_language_and_back(with_job, wait, wait_until):
    frame = with_job.frame
    for stage in Stage:
        frame.open(stage)
        wait(100)
    english, said = shown(frame), told(frame)
    frame.set_view(GERMAN)
    assert words.spoken() == "Deutsch"
    rail = frame.rail.buttons[Stage.RUNS]
    wait_until(lambda: "Läufe" in QtWidgets.QWidget.accessibleName(rail))  # Qt tells the window in its own time
    german = shown(frame)
    assert told(frame) == said  # what pages read back is their own English, whatever is shown
    for stage in Stage:
        button = frame.rail.buttons[stage]
        assert german[button] != english[button]
        assert words.words(stage.value) in QtWidgets.QWidget.accessibleName(button)
    changed = sum(german[w] != english[w] for w in english if w in german and english[w])
    assert changed > 0.5 * sum(bool(texts) for texts in english.values())
    frame.set_view(View())
    wait_until(lambda: "Runs" in QtWidgets.QWidget.accessibleName(rail))
    assert shown(frame) == english


def test_nothing_of_the_window_s_own_is_left_in_english(with_job, wait):
    """Of what the pages show of a job; `python fixtures/translate.py missing window` lists what they might."""
    frame = with_job.frame
    frame.set_view(GERMAN)
    known = set(english_words())
    left = set()
    for stage in Stage:
        frame.open(stage)
        wait(100)
        for texts in shown(frame.pages[stage]).values():
            left |= {t for t in texts if t in known and words.words(t) != t}
    assert left == set()


@pytest.fixture
def painted(monkeypatch):
    """What is written into pictures, as the program said it: fills while they are painted."""
    texts, draw = set(), canvas.Picture.draw_text

    def noted(picture, painter, x, y, text, *rest, **named):
        texts.add(text)
        return draw(picture, painter, x, y, text, *rest, **named)

    monkeypatch.setattr(canvas.Picture, "draw_text", noted)
    return texts


def test_what_is_painted_is_german_too(with_job, painted, wait, wait_until):
    frame, feed = with_job.frame, with_job.feed
    frame.set_view(GERMAN)
    feed.start()
    wait_until(lambda: feed.snapshot is not None and feed.snapshot.seconds > 12.0, 60.0)
    for stage in Stage:
        frame.open(stage)
        page = frame.pages[stage]
        views = [b for b in page.findChildren(QtWidgets.QPushButton) if b.objectName() == "segment" and b.isVisible()]
        for each in (None, *(b for b in views if b.isEnabled() and "Yes" not in b.text())):
            if each is not None and each.isVisible():
                each.click()
            wait(50)
            frame.grab()
    feed.stop()
    wait_until(lambda: feed.status is Status.STOPPED)
    assert {"1x", "0 dB", "time, s"} <= painted
    assert len([text for text in painted if words.words(text) != text]) > 10
    assert words.misses_of(painted) == frozenset()


def english_words():
    """Every text of the catalogues that is whole, without places."""
    sys.path.insert(0, str(ROOT / "fixtures"))
    try:
        import translate
    finally:
        sys.path.pop(0)
    return [source for source in translate.read_all() if not phrases.places(source)]


@pytest.mark.parametrize(("size", "text_size"), [((1400, 900), "normal"), ((1024, 700), "largest")])
def test_every_page_can_be_read_reached_and_heard_in_german(with_job, wait, size, text_size):
    frame = with_job.frame
    frame.resize(*size)
    frame.set_view(View(language="Deutsch", theme="sunlight", text_size=text_size))
    for stage in Stage:
        frame.open(stage)
        found = laid_out(frame, wait)
        keep_picture(frame, "a job")
        assert found == [], stage
    frame.show_view()
    assert laid_out(frame.panel, wait) == []
    frame.panel.put_away()


def test_the_language_is_remembered_and_its_names_are_its_own(program, tmp_path):
    choice = program.frame.panel.choices["language"]
    choice.buttons["Deutsch"].click()
    assert settings.load(tmp_path / "view.toml")[0].language == "Deutsch"
    assert [text_of(b) for b in choice.buttons.values()] == ["English", "Deutsch"]
    choice.buttons["English"].click()
    assert words.spoken() == "English"


@pytest.mark.parametrize(
    ("system", "language"), [("de_AT.UTF-8", "Deutsch"), ("fr_FR.UTF-8", "English"), ("C", "English")]
)
def test_the_first_start_speaks_the_system_s_language(system, language):
    code = "from stillshaft.ui.desktop import words; print(words.of_the_system())"
    done = subprocess.run(
        [sys.executable, "-c", code],
        env={"LC_ALL": system, "LANG": system, "PATH": ""},
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stdout.strip() == language


def test_english_loads_no_catalogue():
    code = (
        "import sys; from PySide6 import QtCore; a = QtCore.QCoreApplication([]);"
        "from stillshaft.ui.desktop import words; words.speak('English');"
        "assert words.words('Runs') == 'Runs' and words._phrases is None and not words._translators"
    )
    subprocess.run([sys.executable, "-c", code], check=True)


def test_qt_s_own_words_are_german_too(program):
    program.frame.set_view(GERMAN)
    assert QtCore.QCoreApplication.translate("QPlatformTheme", "Cancel") == "Abbrechen"
    program.frame.set_view(View())
    assert QtCore.QCoreApplication.translate("QPlatformTheme", "Cancel") == "Cancel"


def test_the_report_has_a_language_of_its_own_and_says_so(program, wait_until):
    said = program.frame.pages[Stage.CLOSE_OUT].report.in_english
    assert said.isHidden()
    program.frame.set_view(GERMAN)
    wait_until(lambda: not said.isHidden())
    assert text_of(said) == "Der Bericht ist auf Englisch, wie das Protokoll."
    program.frame.set_view(View())
    wait_until(said.isHidden)


def test_the_placement_sheet_speaks_the_language_of_the_window(with_job, wait_until):
    page = with_job.frame.pages[Stage.MASSES]
    with_job.frame.open(Stage.MASSES)
    page.sheet.click()
    wait_until(lambda: page.sheet_card.isVisible())
    english = written(page.sheet_card)
    assert "Seen from the drive end" in english[0]
    with_job.frame.set_view(GERMAN)
    wait_until(lambda: written(page.sheet_card) != english)
    for texts in written(page.sheet_card):
        assert "Gesehen von: Antriebsseite" in texts
        assert "Marke" in texts
        assert "drive side" in texts  # its plane's name
        assert any(text.startswith("Zifferblatt ") for text in texts)
        assert [text for text in texts if "mark" in text.split() or "the" in text.split()] == []
    assert page.sheet_card.picture.accessibleName().startswith("Auf dem Rotor, wie protokolliert, drive side")


def written(card):
    """What stands on each first page of a sheet, for paper and for a phone."""
    return [[s.text for s in pages[0].shapes if hasattr(s, "text")] for pages in (card.paper, card.phone)]


def test_names_are_not_translated(program):
    program.frame.set_view(GERMAN)
    words.keep(["Masses"])
    assert words.words("Stop Masses") == "Masses anhalten"
    assert words.words(words.own("Masses")) == "Masses"
    words.keep([])
    assert words.words("Stop Masses") == "Massen anhalten"
    assert words.words("Runs: counts") == "Läufe: zählt"
    words.keep(["runs"])
    assert words.words("Runs: counts") == "Runs: zählt"
    words.keep([])
    assert words.misses() == frozenset()


# broken into lines


@pytest.mark.parametrize(
    ("told", "seen"),
    [
        ("Never faster than 1500 r/min; at 1480 r/min.", "Never faster than 1500_r/~min; at 1480_r/~min."),
        ("12.3 ± 0.4 mm/s rms, 3.2 mil p-p", "12.3 ±_0.4_mm/~s_rms, 3.2_mil_p-~p"),
        ("89.4 N (9.11 kgf) in r/min", "89.4_N (9.11_kgf) in r/~min"),
        ("100 mV/g, 1.5 g·mm/kg, 9.81 m/s²", "100_mV/~g, 1.5_g·mm/~kg, 9.81_m/~s²"),
        ("run 2 of 3 and/or /home/s, 3 mills", "run 2 of 3 and/or /home/s, 3 mills"),
    ],
)
def test_a_figure_and_its_unit_stay_together(told, seen):
    assert phrases.unbroken(told) == seen.replace("_", "\u00a0").replace("~", "\u2060")


def test_no_line_parts_a_figure_from_its_unit(dressed, qtbot):
    """As Qt breaks it at any width; what is read aloud and read back has no sign for the eye in it."""
    told = "The rotor must never turn faster than 1500 r/min; it is to run at 1480 r/min."
    label = parts.label(told, wrap=True)
    qtbot.addWidget(label)
    layout, most = QtGui.QTextLayout(QtWidgets.QLabel.text(label), label.font()), 0
    for width in range(90, 600, 3):
        layout.beginLayout()
        while (line := layout.createLine()).isValid():
            line.setLineWidth(width)
        layout.endLayout()
        lines = [layout.lineAt(n) for n in range(layout.lineCount())]
        shown = [layout.text()[line.textStart() :][: line.textLength()].strip(" ") for line in lines]
        assert not [each for each in shown if each.startswith(("min", "r/")) or each.endswith("r/")]
        most = max(most, len(shown))
    assert most > 5
    heard = QtGui.QAccessible.queryAccessibleInterface(label).text(QtGui.QAccessible.Text.Name)
    assert heard == label.text() == told
    label.setText("Nothing to measure.")
    assert QtWidgets.QLabel.text(label) == "Nothing to measure."
    assert QtGui.QAccessible.queryAccessibleInterface(label).text(QtGui.QAccessible.Text.Name) == "Nothing to measure."
    label.setAccessibleName("Speed")
    label.setText("1480 r/min")
    assert QtWidgets.QLabel.accessibleName(label) == "Speed"


def test_names_of_other_jobs_stay_in_a_sentence(program):
    """Wherever the other language has them; the name that is one of the window's own words, too."""
    program.frame.set_view(GERMAN)
    name = phrases.Names()
    told = name.told(f"place: {name('Masses')}; Trend of {name('Runs, stop it.')}")
    assert told == "place: Masses; Trend of Runs, stop it."
    assert phrases.begun(told) == "Place: Masses; Trend of Runs, stop it."
    assert words.words(phrases.begun(told)) == "Ort: Masses; Trend von Runs, stop it."
    assert words.misses() == frozenset()
    panel = program.frame.job_panel
    panel.show_recent((Path("/jobs/Masses"),))
    assert QtWidgets.QWidget.accessibleName(panel.rows[0]) == "Masses öffnen"
    assert text_of(panel.rows[0]) == "Masses"
    panel.show_job("Runs")
    assert text_of(panel.called) == "Offen: Runs"


# the catalogues themselves


@pytest.fixture(scope="module")
def translate():
    sys.path.insert(0, str(ROOT / "fixtures"))
    try:
        import translate as tool
    finally:
        sys.path.pop(0)
    return tool


def test_every_translation_has_the_places_of_its_source(translate):
    catalogue = translate.read_all()
    assert len(catalogue) > 1000
    assert [fault for source, turned in catalogue.items() if (fault := translate.faults(source, turned))] == []
    assert translate.faults("{0} of {1}", "{0} von {0}") is not None
    assert translate.faults(" at {0}", "bei {0}") is not None


def test_what_is_loaded_is_what_the_catalogues_say(translate, qapp):
    loaded = QtCore.QTranslator()
    assert loaded.load(str(words.FOLDER / "stillshaft_de.qm"))
    catalogue = translate.read_all()
    assert {s: loaded.translate(words.CONTEXT, s) for s in catalogue} == catalogue
    templates = {s for s in catalogue if phrases.places(s)}
    assert templates <= set(loaded.translate(words.CONTEXT, words.INDEX).split(words.BETWEEN))


def test_every_text_of_the_window_has_its_german(translate):
    """`python fixtures/translate.py missing window` lists them with their files."""
    assert translate.missing("window") == {}


def test_what_is_no_text_for_people_is_not_asked_for(translate):
    for text in (
        "Ctrl+Shift+Z",
        "*.jpg *.PNG",
        "0 us",
        "setToolTip",
        "#ffffff",
        "serial:/dev/ttyACM0, recording:FILE",
    ):
        assert not translate._worth(text), text
    for text in ("Stop", "Ctrl key", "a peak", "such as 2 g x 6", "sources: serial or sound"):
        assert translate._worth(text), text


def test_digital_full_scale_is_called_by_its_german_term(translate):
    """Vollaussteuerung: common practice, no source. Vollausschlag is that of a pointer."""
    told = {s: t for s, t in translate.read_all().items() if re.search(r"\bfull[ _]scale\b", s, re.IGNORECASE)}
    assert len(told) > 20
    assert [s for s, t in told.items() if "ollaussteuerung" not in t] == []


def test_every_mnemonic_is_one_letter_of_the_word(translate):
    for source, turned in translate.read_all().items():
        if re.search(r"&\w", source) and "&&" not in source:
            assert len(re.findall(r"&\w", turned)) == 1, source


def test_what_is_over_is_dropped_by_hand_and_nothing_else(translate, tmp_path, monkeypatch):
    for path in translate.FOLDER.glob("*.ts"):
        (tmp_path / path.name).write_bytes(path.read_bytes())
    monkeypatch.setattr(translate, "FOLDER", tmp_path)
    assert translate.add(["A text that nobody says any more => Ein Text, den niemand mehr sagt"]) == []
    before = translate.read_all()
    assert "A text that nobody says any more" in translate.unused()
    assert "Guides" in before
    assert "Guides" not in translate.unused()
    wrong = translate.drop(["A text that nobody says any more", "Guides", ""])
    assert wrong == ["'Guides': is not listed as unused"]
    assert before.keys() - translate.read_all().keys() == {"A text that nobody says any more"}
    assert translate.drop(["never there"]) == ["'never there': is not listed as unused"]


def test_a_list_that_nobody_reads_on_ends_in_silence():
    with subprocess.Popen(
        [sys.executable, ROOT / "fixtures" / "translate.py", "unused"], stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as made:
        made.stdout.close()  # as `head` does, before the list is made
        assert (made.stderr.read(), made.wait()) == (b"", 0)


def test_candidates_are_taken_from_the_source(translate, tmp_path):
    path = tmp_path / "module.py"
    path.write_text(
        'def say(n, names):\n    """No one reads this."""\n'
        '    label.setObjectName("not this one")\n'
        "    return f\"{n} piece{'s' * (n != 1)} of {names['not this']}\", 'Whole text'\n"
    )
    assert translate._of_python(path) == ["{0} pieces of {1}", "{0} piece of {1}", "s", "Whole text"]
    assert translate._numbered("The {speed:.0f} of {speed} and {other}") == "The {0} of {0} and {1}"


# how a sentence is found

CATALOGUE = {
    "Runs": "Läufe",
    "mark": "Marke",
    "stop it": "abstellen",
    "record {0} s": "{0} s aufnehmen",
    "{0} of {1} runs count": "von {1} Läufen zählen {0}",
    "not trusted: {0}": "nicht verlässlich: {0}",
    "wait, then go": "warten, dann los",
    "{0} and {1}": "{0} und {1}",
    "hold {0} still": "{0} ruhig halten",
    "hold it (a little)": "halten (etwas)",
    "nothing in {0}": "in {0} nichts",
}


@pytest.fixture
def catalogue():
    return Phrases(CATALOGUE.get, [source for source in CATALOGUE if phrases.places(source)])


@pytest.mark.parametrize(
    ("english", "german"),
    [
        ("Runs", "Läufe"),
        ("runs", "Läufe"),
        ("Mark", "Marke"),
        ("Record 12.5 s", "12.5 s aufnehmen"),
        ("Record 3 s.", "3 s aufnehmen."),
        ("2 of 5 runs count", "Von 5 Läufen zählen 2"[0].lower() + "on 5 Läufen zählen 2"),
        ("Not trusted: stop it", "Nicht verlässlich: abstellen"),
        ("Not trusted: record 4 s. Runs.", "Nicht verlässlich: 4 s aufnehmen. Läufe."),
        ("stop it; record 4 s", "abstellen; 4 s aufnehmen"),
        ("wait, then go, mark", "warten, dann los, Marke"),
        ("(mark)", "(Marke)"),
        ("hold mark still", "Marke ruhig halten"),
        ("hold fan end and far end still", "fan end und far end ruhig halten"),
        ("record\u00a07\u00a0s", "7 s aufnehmen"),
        ("12.5 mm/s rms", "12.5 mm/s rms"),
        ("/home/me/stop it: mark", "/home/me/stop it: Marke"),
        ("Not trusted: hold it (a little).", "Nicht verlässlich: halten (etwas)."),
        ("Nothing in 5 s.", "In 5 s nichts."),
        ("record serial:/dev/ttyACM0 s", "serial:/dev/ttyACM0 s aufnehmen"),
    ],
)
def test_a_sentence_is_found(catalogue, english, german):
    assert catalogue.turn(english) == german
    assert catalogue.misses == set()


def test_what_is_not_known_stays_and_is_noted(catalogue):
    assert catalogue.turn("blow the horn; record 4 s") == "blow the horn; 4 s aufnehmen"
    assert catalogue.misses == {"blow the horn"}


def test_a_text_of_many_parts_takes_no_time_beyond_its_length(catalogue):
    """No way of cutting is tried twice: this many would never end."""
    text = ", ".join(f"record {n} s and hold what nobody knows {n} still" for n in range(60))
    assert catalogue.turn(text).startswith("0 s aufnehmen und")
