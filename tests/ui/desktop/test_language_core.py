"""The core's sentences in German: each that can reach the window has one, and what it really says is found in the catalogue."""

import ast
import contextlib
import re
import sys
from pathlib import Path

import numpy as np
import pytest
from balancing_jobs import balancing_job
from PySide6 import QtCore
from stillshaft.acquire import simulated
from stillshaft.acquire.hookup import load_hookup
from stillshaft.dsp import edges, units
from stillshaft.solver import correction, handwork, limits, trial
from stillshaft.solver.job import Job
from stillshaft.solver.runs_file import runs_from_table
from stillshaft.ui.desktop import words
from stillshaft.ui.desktop.phrases import Phrases, has_words
from stillshaft.ui.session_base import SessionError

ROOT = Path(__file__).parents[3]
sys.path.insert(0, str(ROOT / "fixtures"))
try:
    import translate
finally:
    sys.path.pop(0)


@pytest.mark.parametrize("area", [area for area in translate.AREAS if area != "window"])
def test_every_sentence_that_can_reach_the_window_has_its_german(area):
    """`python fixtures/translate.py missing` lists them with their files."""
    assert len(translate.candidates(area)) > 100
    assert translate.missing(area) == {}


def imported(path):
    """Modules of the program that a file imports, wherever in it."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module:
            yield from (node.module, *(f"{node.module}.{alias.name}" for alias in node.names))
        elif isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)


def test_what_is_left_out_for_the_command_line_is_loaded_by_nothing_of_the_window():
    files = {
        f"stillshaft.{'.'.join(path.relative_to(ROOT).with_suffix('').parts)}": path
        for part in ("dsp", "acquire", "solver", "ui")
        for path in (ROOT / part).rglob("*.py")
    }
    loaded, waiting = set(), [name for name in files if name.startswith("stillshaft.ui.desktop.")]
    while waiting:
        name = waiting.pop()
        if name in files and name not in loaded:
            loaded.add(name)
            waiting += imported(files[name])
    paths = {str(files[name].relative_to(ROOT)) for name in loaded}
    assert {"solver/limits.py", "acquire/keeper.py"} <= paths
    assert paths & translate.NOT_OF_THE_WINDOW.keys() == set()
    assert all((ROOT / file).exists() for file in (*translate.NOT_OF_THE_WINDOW, *translate.COMMANDS))


def test_no_page_shows_a_command():
    for path in (ROOT / "ui" / "desktop").glob("*.py"):
        assert not re.search(r"\badvice\.command\b|next_commands", path.read_text(encoding="utf-8")), path


@pytest.mark.parametrize("text", ["ijk,ijk->jk", "<BBI", r"\b{0}s?\b", "[[run]]", "Core Audio", "0 g at 0"])
def test_what_nobody_reads_is_not_asked_for(text):
    assert not translate._worth(text)


@pytest.mark.parametrize("text", ["a -> b is no way", "run: there is none", "the core has no audio"])
def test_what_looks_alike_is_asked_for(text):
    assert translate._worth(text)


# what the core says


@pytest.fixture
def german(qapp):
    """What the window makes of a text, and what of it stays English."""
    loaded = QtCore.QTranslator()
    assert loaded.load(str(words.FOLDER / "stillshaft_de.qm"))
    phrases = Phrases(
        lambda text: loaded.translate(words.CONTEXT, text) or None,
        loaded.translate(words.CONTEXT, words.INDEX).split(words.BETWEEN),
    )

    def turned(text, *names):
        phrases.misses.clear()
        phrases.keep(frozenset(names))
        return phrases.turn(text), phrases.misses

    return turned


def an_initial_run_alone():
    initial = {"name": "initial", "speed_rpm": 1480.0, "vectors": {"A": {"amplitude": 5.0, "phase": 30.0}}}
    table = {"format": 1, "vibration_unit": "mm/s rms", "plane": [{"name": "disc"}], "run": [initial]}
    correction.solve(runs_from_table(table, "runs.toml"))


@pytest.mark.parametrize(
    ("refused", "said"),
    [
        (lambda: units.parse("80 miles", "kg", "rotor mass"), "Rotormasse: „80 miles“: „miles“ ist keine Einheit für kg"),
        (lambda: units.speed_rpm("fast", "speed"), "Drehzahl: „fast“ ist keine Drehzahl"),
        (lambda: load_hookup(Path("/nowhere/a hook-up.toml")), "/nowhere/a hook-up.toml: die Datei gibt es nicht"),
        (lambda: edges.find_edges(np.full(1000, 0.1), "auto"), "der Impulskanal ist konstant: keine Impulse"),
        (an_initial_run_alone, "bei 1480 r/min gibt es keinen Testlauf mit einer Masse in Ebene „disc“; einen machen"),
        (lambda: trial.trial_mass("disc", -5.0, 0.31, 1480.0), "Rotormasse -5: muss größer als 0 und kleiner als"),
        (lambda: handwork.density("cheese"), "Werkstoff „cheese“: nicht bekannt"),
        (lambda: limits.check_grade("G7"), "Gütestufe „G7“: gibt es nicht"),
        (lambda: Job.open(Path("/nowhere/at all"), read_only=True), "/nowhere/at all: enthält keinen Auftrag"),
    ],
)  # fmt: skip
def test_a_refusal_is_german_from_end_to_end(german, refused, said):
    with pytest.raises(ValueError) as refusal:  # noqa: PT011 - its German is what is asked for
        refused()
    turned, missed = german(str(refusal.value))
    assert said in turned
    assert missed == set()


@pytest.mark.parametrize(
    ("assumed", "said"),
    [
        (
            "2 % 2 deg: neither belt nor heat nor a resonance nearby is known",
            "weder Riemen noch Wärme noch eine nahe Resonanz",
        ),
        ("5 % 5 deg: belt drive", "Wiederholbarkeit 5 % und 5° angenommen: Riemenantrieb; den Urlauf wiederholen"),
        (
            "5 % 5 deg: belt drive, heat from the process",
            "angenommen: Riemenantrieb, Wärme aus dem Prozess; den Urlauf",
        ),
        ("5 % 5 deg: vibration that follows the load", "die Schwingung folgt der Last"),
        (
            "10 % 10 deg: a resonance near running speed",
            "10 % und 10° angenommen: eine Resonanz nahe der Betriebsdrehzahl",
        ),
        ("2.5 % 3 deg", "Wiederholbarkeit 2.5 % und 3° angenommen; den Urlauf wiederholen"),
    ],
)
def test_what_is_assumed_is_german_with_its_reason(german, assumed, said):
    initial = {"name": "initial", "speed_rpm": 1480.0, "vectors": {"A": {"amplitude": 5.0, "phase": 30.0}}}
    runs = runs_from_table({"format": 1, "assumed_repeatability": assumed, "run": [initial]}, "runs.toml")
    turned, missed = german(runs.assumed[0])
    assert said in turned
    assert missed == set()


@pytest.mark.parametrize("until", ["brief", "initial", "trials", "last trial on", "check"])
def test_the_advice_and_the_correction_are_german(german, tmp_path, until):
    with balancing_job(tmp_path / "job", until=until, limit=2.0) as session:
        names = [p.name for p in session.state.brief.planes] + [s.name for s in simulated.demo_sensors()]
        for skipped in range(4):  # the next ones too
            advice = session.advice()
            for text in (advice.sentence, advice.why):
                assert german(text, *names)[1] == set(), text
            with contextlib.suppress(SessionError):  # what cannot be passed over stays
                session.skip_advice(f"reason {skipped}")
        if until not in ("brief", "initial"):
            _, solution = session.solve()
            said = [
                *solution.warnings,
                *solution.reasons,
                *(a.sentence for a in solution.alternatives),
                *(t.sentence for t in solution.trials),
            ]
            assert said
            for text in said:
                assert german(text, *names)[1] == set(), text


def test_a_long_text_is_turned_as_far_as_can_be_at_once():
    """Ways to read "m m m …" double with every m, and those to cut a line grow with its length."""
    known = {"the {0} is off": "{0} ist aus", "and": "und"}
    found = Phrases(known.get, ["the {0} is off"])
    assert not has_words("m " * 5000)
    assert has_words("m " * 5000 + "word")
    line = "x" * 5000
    assert found.turn(f"the fan is off\n{line}\nand") == f"fan ist aus\n{line}\nund"
    assert found.turn("and; and, and: " * 3000).startswith("und; und, und: und")
