"""TOML from anywhere: bounded in size, depth and texts, each refusal one line that names the file."""

import os

import pytest
from stillshaft.dsp import tables


def refused(tmp_path, content, words):
    path = tmp_path / "n.toml"
    path.write_bytes(content)
    with pytest.raises(tables.TableError, match=words) as caught:
        tables.read(path)
    assert str(caught.value).startswith(str(path))
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"a = " + b"[" * 2000 + b"]" * 2000, "more than 24 deep"),
        (b"a = " + b"[" * 40 + b"]" * 40, "more than 24 deep"),
        (b"a = " + b"9" * 5000, "whole number of too many digits"),
        (b"a = 0x" + b"f" * 5000, "whole number of more than 64 bits"),
        (b'a = "\\u001b[2J"', r"does not show \(U\+001B\)"),
        (b'a = "left\\u202eright"', r"does not show \(U\+202E\)"),
        (b'["a\\nb"]\n', 'the key "a b" has a line end or a tab'),
        (b'name = "a\\tb"', 'the name "a b" has a line end or a tab'),
        (b'"' + b"k" * 400 + b'" = 1', "the key .* is too long, at most 300"),
        (b'a = "' + b"x" * 20_001 + b'"', "too long, at most 20000 letters"),
        (b"a = \xff", "is not a text file"),
        (b"a = 1\na = 2", "not valid TOML"),
    ],
)
def test_what_is_refused(tmp_path, content, words):
    refused(tmp_path, content, words)


def test_sizes_and_counts(tmp_path, monkeypatch):
    monkeypatch.setattr(tables, "MOST_BYTES", 2**20)
    refused(tmp_path, b"# " + b"x" * 2**20, "larger than 1 MiB")
    monkeypatch.setattr(tables, "MOST_ENTRIES", 100)
    refused(tmp_path, b"a = [" + b"1," * 101 + b"]", "more than 100 entries")


def test_what_is_no_file(tmp_path):
    os.mkfifo(tmp_path / "pipe")  # nobody writes into it: reading it would wait for ever
    for path in (tmp_path, tmp_path / "pipe", tmp_path / "n.toml" / "x", tmp_path / "zero\0byte"):
        with pytest.raises(tables.TableError, match="no ordinary file|no such file|no file name"):
            tables.read(path)


def test_texts_of_several_lines_and_other_scripts_are_kept(tmp_path):
    (tmp_path / "n.toml").write_text('a = """one\n\ttwo"""\nb = "Gebläse ② مروحة 风机"\n', encoding="utf-8")
    assert tables.read(tmp_path / "n.toml") == {"a": "one\n\ttwo", "b": "Gebläse ② مروحة 风机"}


class Described(tables.Strict):
    name: str


def test_halves_of_letters_are_refused():
    """JSON from elsewhere can hold them, TOML cannot."""
    with pytest.raises(tables.TableError, match="halves of letters"):
        tables.checked({"na\ud800me": "a"}, Described)


def test_what_may_stand_in_braces():
    """A width would be filled up with so many letters; a dot looks into what is filled in."""
    for text in ("", "plain", "{a} and {b:.2f}", "{a:.0g}", "{{a}} stays"):
        assert tables.only_in_braces(text, ["a", "b"])
    for text in (
        "{c}",
        "{}",
        "{0}",
        "{a:>999999999}",
        "{a:.999999999f}",
        "{a.real}",
        "{a[0]}",
        "{a!r}",
        "{a:{b}}",
        "{a",
        "}",
    ):
        assert not tables.only_in_braces(text, ["a", "b"])
