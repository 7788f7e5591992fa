"""Nothing that comes in is run: no unpickling, no evaluation, no network in the program; and what it may depend on."""

import ast
import re
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PACKAGES = ("acquire", "dsp", "solver", "ui")
BARRED_MODULES = {
    "pickle",
    "cPickle",
    "_pickle",
    "dill",
    "cloudpickle",
    "joblib",
    "marshal",
    "shelve",
    "dbm",
    "yaml",
    "code",
    "codeop",
    "imp",
    "urllib",
    "http",
    "ftplib",
    "smtplib",
    "poplib",
    "imaplib",
    "telnetlib",
    "xmlrpc",
    "socketserver",
    "requests",
    "httpx",
    "aiohttp",
    "urllib3",
    "socket",
    "ssl",
    "asyncio",
    "ctypes",
    "runpy",
    "pty",
    "webbrowser",
    "xml.sax",
    "xml.dom.minidom",
}
BARRED_CALLS = {"eval", "exec", "compile", "__import__", "execfile", "breakpoint", "input"}
BARRED_ATTRIBUTES = {
    ("os", "system"),
    ("os", "popen"),
    ("tempfile", "mktemp"),
    ("os", "startfile"),
    ("yaml", "load"),
    ("numpy", "load"),
    ("np", "load"),
    ("joblib", "load"),
    ("pickle", "loads"),
    ("types", "FunctionType"),
    ("importlib", "reload"),
}
# file, what it needs, and why
ALLOWED = {
    ("solver/lock.py", "socket"): "the lock of a job names the computer that holds it: gethostname, no connection",
    (
        "acquire/driver.py",
        "ctypes",
    ): "a call of the system's library that Python has no name for, not with what comes in",
    ("ui/heap.py", "ctypes"): "a setting of the system's memory, a number of our own",
    ("ui/window.py", "ctypes"): "a call of the system's library that Python has no name for, not with what comes in",
    ("ui/desktop/why_texts.py", "importlib of a made-up name"): "names from the program's own table, below stillshaft",
}


def sources():
    return [
        path for package in PACKAGES for path in sorted((ROOT / package).rglob("*.py")) if "packaging" not in path.parts
    ]


def found_in(tree):
    """What a file does that needs a reason: modules, calls and keywords by name."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import | ast.ImportFrom):
            names = [a.name for a in node.names] if isinstance(node, ast.Import) else [node.module or ""]
            yield from (n.split(".")[0] for n in names if n in BARRED_MODULES or n.split(".")[0] in BARRED_MODULES)
        elif isinstance(node, ast.Call):
            called = node.func
            if isinstance(called, ast.Name) and called.id in BARRED_CALLS:
                yield f"{called.id}()"
            if isinstance(called, ast.Attribute) and isinstance(called.value, ast.Name):
                if (called.value.id, called.attr) in BARRED_ATTRIBUTES:
                    yield f"{called.value.id}.{called.attr}()"
                constant = bool(node.args) and isinstance(node.args[0], ast.Constant)
                if (called.value.id, called.attr) == ("importlib", "import_module") and not constant:
                    yield "importlib of a made-up name"
            for keyword in node.keywords:
                if keyword.arg in ("shell", "allow_pickle") and not (
                    isinstance(keyword.value, ast.Constant) and keyword.value.value is False
                ):
                    yield f"{keyword.arg}="


@pytest.mark.parametrize("path", sources(), ids=lambda p: str(p.relative_to(ROOT)))
def test_nothing_that_comes_in_is_run(path):
    name = path.relative_to(ROOT).as_posix()
    wrong = [what for what in found_in(ast.parse(path.read_text(encoding="utf-8"))) if (name, what) not in ALLOWED]
    assert not wrong, f"{name}: {wrong}; give a reason in ALLOWED, or do without"


@pytest.mark.parametrize(
    "text",
    [
        "import pickle",
        "from urllib.request import urlopen",
        "import http.client as c",
        "eval('1')",
        "import os\nos.system('x')",
        "import subprocess\nsubprocess.run('x', shell=True)",
        "import numpy as np\nnp.load('x')",
        "f(allow_pickle=True)",
        "import tempfile\ntempfile.mktemp()",
        "import yaml",
        "import socket",
        "import importlib\nimportlib.import_module(name)",
    ],
)
def test_the_check_sees_it(text):
    assert list(found_in(ast.parse(text)))


def test_exceptions_are_still_needed():
    for (name, what), reason in ALLOWED.items():
        assert len(reason) > 20
        assert what in found_in(ast.parse((ROOT / name).read_text(encoding="utf-8"))), f"{name} does without {what} now"


# each is there for one thing; another one is a decision of its own, made here and told in DEVELOPERS.md
RUN_TIME = {
    "numpy": "arrays",
    "scipy": "filters, splines, distributions",
    "sounddevice": "sound inputs",
    "soundfile": "sound files",
    "PySide6-Essentials": "the window",
    "pint": "units",
    "msgspec": "tables and records checked",
    "tomli-w": "TOML written",
    "tomlkit": "TOML changed in place",
    "typer": "the command line",
    "rich": "tables on a terminal",
    "platformdirs": "folders of the person",
    "reportlab": "PDF",
    "pillow": "photos of a report",
    "threadpoolctl": "threads of the matrix library",
    "clarabel": "cone programmes",
}
OPTIONAL = {
    "daq": {"nidaqmx", "uldaq", "pyserial"},
    "cluster": {"dask", "distributed"},
    "files": {"h5py", "pyuff", "npTDMS"},
    "fuzz": {"atheris"},
}


def names(requirements):
    return {re.match(r"[A-Za-z0-9_.-]+", text)[0] for text in requirements}


def test_the_program_depends_on_what_is_listed_and_no_more():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    assert names(project["dependencies"]) == set(RUN_TIME)
    assert {key: names(value) for key, value in project["optional-dependencies"].items() if key != "test"} == OPTIONAL
    for text in [*project["dependencies"], *(t for v in project["optional-dependencies"].values() for t in v)]:
        assert ">=" in text, f"{text}: say from which release on"
        assert "@" not in text, f"{text}: comes from a registry, not from an address"


def test_what_is_imported_is_listed():
    """Whatever a file of the program imports is its own, of the language, or in the lists."""
    spelled = {
        "PySide6": "PySide6-Essentials",
        "tomli_w": "tomli-w",
        "nptdms": "npTDMS",
        "serial": "pyserial",
        "shiboken6": "PySide6-Essentials",
        "PIL": "pillow",
    }
    listed = {*RUN_TIME, *(name for extra in OPTIONAL.values() for name in extra)}
    for path in sources():
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Import | ast.ImportFrom):
                for name in [a.name for a in node.names] if isinstance(node, ast.Import) else [node.module or ""]:
                    top = name.split(".")[0]
                    known = top in sys.stdlib_module_names or top in ("stillshaft", "typing_extensions")
                    assert known or spelled.get(top, top) in listed, f"{path}:{node.lineno}: {name}"
