"""Imports run one way: ui → acquire, solver, dsp; solver → dsp. Checked in the source and in a fresh interpreter."""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
MAY_IMPORT = {
    "dsp": set(),
    "acquire": {"dsp.units", "dsp.tables"},  # texts and files at the edges are read in one place
    "solver": {"dsp"},
    "ui": {"acquire", "dsp", "solver"},
}
WINDOW_FILES = {"page.py", "plots.py", "desktop"}  # a folder stands for everything in it
HEADLESS = [
    "dsp",
    "acquire",
    "solver",
    *(
        f"ui/{path.relative_to(ROOT / 'ui')}"
        for path in sorted((ROOT / "ui").rglob("*.py"))
        if path.relative_to(ROOT / "ui").parts[0] not in WINDOW_FILES
    ),
]
BARRED = {"PySide6", "pyqtgraph", "sounddevice"}  # importing sounddevice starts PortAudio


def imported(path):
    """Dotted names that the file imports, wherever in the file they stand."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert not node.level, f"{path}:{node.lineno}: relative import; write stillshaft.… in full"
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


def files(part):
    return [ROOT / part] if part.endswith(".py") else sorted((ROOT / part).rglob("*.py"))


def allowed(name, package):
    below = name.removeprefix("stillshaft.")
    return any(below == top or below.startswith(top + ".") for top in {*MAY_IMPORT[package], package})


@pytest.mark.parametrize("package", MAY_IMPORT)
def test_source_imports_only_lower_layers(package):
    assert files(package)
    for path in files(package):
        too_high = {n for n in imported(path) if n.startswith("stillshaft.") and not allowed(n, package)}
        assert not too_high, f"{path} imports {too_high}"


@pytest.mark.parametrize("part", HEADLESS)
def test_importing_it_loads_neither_qt_nor_portaudio(part):
    dotted = [f.relative_to(ROOT).with_suffix("").parts for f in files(part)]
    names = [".".join(("stillshaft", *parts)).removesuffix(".__init__") for parts in dotted]
    code = f"import importlib, sys\nfor n in {names}: importlib.import_module(n)\nprint(*({BARRED} & set(sys.modules)))"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert done.stdout.split() == []


def test_package_files_stay_empty():
    for package in MAY_IMPORT:
        for path in (ROOT / package).rglob("__init__.py"):
            assert not path.read_text(), path
