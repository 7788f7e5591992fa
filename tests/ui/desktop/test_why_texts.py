"""The table of texts: checked strictly, its figures taken from the code, and words for every warning that the program can say."""

import ast
import re
from pathlib import Path

import pytest
from stillshaft.dsp import check
from stillshaft.solver import inspection, run_checks, run_rules
from stillshaft.ui.desktop import why_texts
from stillshaft.ui.desktop.stages import Stage
from stillshaft.ui.desktop.why_texts import WhyError, load

GOOD = """
format = 1
[figure]
least_s = { of = "solver.run_checks:limits().seconds" }
[[page]]
stage = "Runs"
sentence = "Take runs here."
[[text]]
key = "length"
title = "Length"
plain = "How long."
rule = "At least {least_s} s of 1x, 95 % sure."
source = "common practice, no source"
"""


def read(tmp_path, text):
    path = tmp_path / "why.toml"
    path.write_text(text, encoding="utf-8")
    return load(path)


def test_figures_are_those_of_the_code(tmp_path, monkeypatch):
    texts = read(tmp_path, GOOD)
    assert texts.why("length").rule == "At least 15 s of 1x, 95 % sure."
    assert load().why("speed").rule.startswith("Runs are fitted together where their speeds differ by up to 0.5 %;")
    monkeypatch.setattr(inspection, "SPEED_ACCEPTED", 0.7)
    assert "up to 0.7 %" in load().why("speed").rule


@pytest.mark.parametrize(
    ("old", "new", "match"),
    [
        ("{least_s} s", "15 s", 'text "length": 15 is written out; take it from the code under'),
        ("{least_s} s", "{other} s", 'text "length": there is no figure "other"; name it under'),
        ("{least_s} s", "{least_s s", 'text "length": its braces do not fit; write'),
        ("At least {least_s} s", "Long", 'figure "least_s": is in no text; remove it'),
        ('title = "Length"', 'title = " "', 'text "length".title: is empty; say it, or'),
        ('key = "length"', 'key = "length"\nunder = "nothing"\nsays = ["a"]', 'under: there is no text "nothing"'),
        ('key = "length"', 'key = "length"\nsays = ["a"]', "`under` and `says` belong together; give both or none"),
        ('key = "length"', 'key = "length"\nwhy = "so"', "why: unknown key; remove it or mend its spelling"),
        ('stage = "Runs"', 'stage = "Walks"', "must be Brief or Inspect or .*, not 'Walks'"),
    ],
)
def test_a_table_that_cannot_be_used_is_refused(tmp_path, old, new, match):
    assert GOOD.count(old) == 1
    with pytest.raises(WhyError, match=match):
        read(tmp_path, GOOD.replace(old, new))


def test_a_text_that_is_there_twice_is_refused(tmp_path):
    with pytest.raises(WhyError, match='text "length": is there twice; remove one'):
        read(tmp_path, GOOD + GOOD[GOOD.index("[[text]]") :])


def test_a_key_or_constant_that_is_not_there_is_named(tmp_path):
    with pytest.raises(WhyError, match='"nothing": there is no such text'):
        load().why("nothing")
    texts = read(tmp_path, GOOD.replace("limits().seconds", "limits().hours"))
    with pytest.raises(WhyError, match=r'figure "least_s": the code has no solver.run_checks:limits\(\).hours'):
        texts.why("length")


def test_every_text_can_be_read_and_every_page_has_its_sentence():
    texts = load()
    assert set(texts.pages) == {stage.value for stage in Stage}
    for key in texts.texts:
        why = texts.why(key)
        assert "{" not in why.plain + why.rule
        assert why.rule.endswith(".")
        assert not why.source.endswith(".")


def said_by(module, call, place):
    """The texts that a module hands to calls of a name, figures left out: what stands at an argument's place."""
    tree = ast.parse(Path(module.__file__).read_text(encoding="utf-8"))
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and getattr(node.func, "id", "") == call and len(node.args) > place:
            text = node.args[place]
            if isinstance(text, ast.JoinedStr):
                yield "".join(v.value if isinstance(v, ast.Constant) else "…" for v in text.values)
            elif isinstance(text, ast.Constant):
                yield text.value


def test_every_finding_of_the_signal_check_has_a_text_of_its_own():
    said = list(said_by(check, "Finding", 2))
    assert len(said) > 20
    plain = [text for text in said if load().topic("signal-check", text) == "signal-check"]
    assert plain == []


def test_every_reason_against_a_run_has_a_text_of_its_own():
    said = [*said_by(run_checks, "found", 1), *said_by(run_rules, "found", 1)]
    assert len(said) > 20
    words = re.compile(r"[a-z]{3}")
    plain = [text for text in said if words.search(text) and load().topic("run-reason", text) == "run-reason"]
    assert plain == []


def test_a_text_under_another_takes_its_place_where_its_words_are_shown():
    texts = load()
    assert texts.topic("steadiness", "steady, within 0.3°") == "steadiness"
    assert texts.topic("steadiness", "Strong second source") == "second-source"
    assert texts.topic("amplitude", "second source") == "amplitude"
    assert why_texts.TABLE.name == "why.toml"
