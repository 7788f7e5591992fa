"""Every example of README and guides runs as it stands there, in the order in which it stands."""

import re
import shlex
import tomllib
from pathlib import Path

import pytest
from stillshaft.acquire import hookup
from stillshaft.ui import cli, guides
from typer.testing import CliRunner

ROOT = Path(__file__).parent.parent
GUIDES = ROOT / "ui" / "guide_pages"
PAGES = sorted(GUIDES.glob("*.md"))
_TOML = re.compile(r"^```toml\n(.*?)^```$", re.MULTILINE | re.DOTALL)
_LINES = re.compile(r"^    (stillshaft .*)$", re.MULTILINE)
_WINDOW = "stillshaft app"  # opens until it is closed: the window's own tests do
_NEEDS = {"wiring.md": "start.md", "trust.md": "start.md"}  # hook-ups that another page describes


def blocks(page):
    """(name of the file or None, its text) of each TOML example."""
    for text in _TOML.findall(page.read_text("utf-8")):
        name = re.match(r"# (\S+\.toml)\n", text)
        yield (name.group(1) if name else None), text


def written(page, folder):
    """The files that a page describes, as its reader writes them."""
    for name, text in blocks(page):
        if name is not None:
            (folder / name).write_text(text, "utf-8")


@pytest.mark.parametrize("page", [p for p in PAGES if _LINES.search(p.read_text("utf-8"))], ids=lambda p: p.stem)
def test_the_examples_run(page, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    for each in (GUIDES / _NEEDS[page.name], page) if page.name in _NEEDS else (page,):
        written(each, tmp_path)
    ran = 0
    for line in _LINES.findall(page.read_text("utf-8")):
        if line == _WINDOW:
            continue
        words = shlex.split(line)[1:]
        done = CliRunner().invoke(cli.app, words)
        # 3, a result that says of itself that it is not to be trusted, would be a poor example
        assert done.exit_code == 0, f"{page.name}: {line}\n{done.output}\n{done.exception}"
        ran += 1
    assert ran


@pytest.mark.parametrize("page", [ROOT / "README.md", *PAGES], ids=lambda p: p.stem)
def test_the_files_that_are_shown_are_right(page):
    for name, text in blocks(page):
        table = tomllib.loads(text)
        if "device" in table:  # a part of a hook-up
            point = {"name": "p", "input": 2, "quantity": "velocity", "sensitivity": "1 V/(m/s)"}
            hookup.hookup_from({"format": 1, "pulse": {"input": 1}, "point": [point], **table})
        else:
            assert name, f"{page.name}: a file without a name is not run"


@pytest.mark.parametrize("page", [ROOT / "README.md", ROOT / "DEVELOPERS.md", *PAGES], ids=lambda p: p.stem)
def test_what_is_referred_to_is_there(page):
    text = page.read_text("utf-8")
    for target in re.findall(r"\]\(([^)#]+)\)", text):
        assert (page.parent / target).exists(), f"{page.name}: {target}"


def test_the_walk_in_the_guide_for_developers_runs():
    blocks_of_code = re.findall(
        r"^```python\n(.*?)^```$", (ROOT / "DEVELOPERS.md").read_text("utf-8"), re.MULTILINE | re.DOTALL
    )
    assert len(blocks_of_code) >= 5
    exec(compile("\n".join(blocks_of_code), "DEVELOPERS.md", "exec"), {})


def test_every_verb_that_the_documents_name_is_one():
    verbs = set(re.findall(r"^  ([a-z]+)  ", CliRunner().invoke(cli.app, ["--help"]).output, re.MULTILINE))
    for page in (ROOT / "README.md", *PAGES):
        named = set(re.findall(r"`stillshaft ([a-z]+)", page.read_text("utf-8")))
        assert named <= verbs, page.name


def test_the_program_shows_each_page():
    """The list names every page that there is, and each is shown; another name is refused."""
    told = CliRunner().invoke(cli.app, ["guide"])
    assert re.findall(r"^stillshaft guide (\w+)", told.output, re.MULTILINE) == [g.name for g in guides.guides()]
    assert sorted(g.name for g in guides.guides()) == [p.stem for p in PAGES]
    for each in guides.guides():
        shown = CliRunner().invoke(cli.app, ["guide", each.name])
        assert shown.exit_code == 0
        assert each.title in " ".join(shown.output.split())
    with pytest.raises(guides.GuideError, match="there are start, wiring"):
        guides.guide("cooking")
