"""Wheel, source archive and stand-alone folder: made from a copy of the tree, installed where nothing else is, started.

Slow and in need of the network.
"""

import json
import os
import shutil
import subprocess
import sys
import tarfile
import time
import zipfile
from pathlib import Path

import pytest
from stillshaft.ui.packaging import bundle

ROOT = Path(__file__).parents[3]
PACKAGES = ("acquire", "dsp", "solver", "ui")
NOT_INSTALLED = "ui/packaging/"
OF_TESTS = ("pytest", "hypothesis", "control", "cvxpy", "mypy", "ruff")
MOST_MB = 450.0
WINDOW = """
from PySide6 import QtCore, QtWidgets
application = QtWidgets.QApplication(["stillshaft"])
def look():
    print([w.windowTitle() for w in application.topLevelWidgets() if w.isVisible()])
    application.quit()
QtCore.QTimer.singleShot(5000, look)
from stillshaft.ui import window
raise SystemExit(window.run())
"""
needs_linux = pytest.mark.skipif(sys.platform != "linux", reason="tried on Linux alone")
pytestmark = [pytest.mark.benchmark, pytest.mark.timeout(1800)]
CLEAN = {k: v for k, v in os.environ.items() if not k.startswith(("PYTHON", "QT_", "STILLSHAFT_"))}


def run(*command, cwd, **more):
    """Run a program away from the tree, so that nothing of it is imported; its standard output."""
    done = subprocess.run(
        [str(part) for part in command], cwd=cwd, env=CLEAN | more, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout[-2000:] + done.stderr[-4000:]
    return done.stdout


@pytest.fixture(scope="module", autouse=True)
def not_in_a_quick_run(request):
    if request.config.option.figures_quick:
        pytest.skip("packages cannot be made of fewer seeds: a quarter of an hour")


def assert_says_no_screen(program, folder):
    """Where there is no screen, the window says so in one line and nothing else happens."""
    if sys.platform != "linux":
        return
    bare = {k: v for k, v in CLEAN.items() if k not in ("DISPLAY", "WAYLAND_DISPLAY")}
    done = subprocess.run([program, "app"], cwd=folder, env=bare, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stdout) == (1, "")
    (line,) = done.stderr.splitlines()
    assert line.startswith(("stillshaft: there is no screen", "stillshaft: the window needs system libraries"))


@pytest.fixture(scope="module")
def tools(tmp_path_factory):
    """Python of an environment with what builds and installs."""
    return bundle.environment_in(tmp_path_factory.mktemp("tools") / "venv", "build", "pipx")


@pytest.fixture(scope="module")
def built(tools, tmp_path_factory):
    """Folder with the source archive and the wheel that was made from it, and a wheel made from the tree."""
    folder = tmp_path_factory.mktemp("built")
    tree = bundle.copy_tree(folder / "tree")
    run(tools, "-m", "build", "--outdir", folder / "dist", tree, cwd=folder)
    run(tools, "-m", "build", "--wheel", "--outdir", folder / "direct", tree, cwd=folder)
    return folder


def wheel_in(folder):
    (wheel,) = folder.glob("*.whl")
    return wheel


def test_wheel_holds_code_and_data(built, figure):
    wheel = wheel_in(built / "dist")
    with zipfile.ZipFile(wheel) as archive:
        held = {n.removeprefix("stillshaft/") for n in archive.namelist() if n.startswith("stillshaft/")}
        terms = [n for n in archive.namelist() if n.endswith("licenses/LICENSE")]
    wanted = {
        path.relative_to(built / "tree").as_posix()
        for package in PACKAGES
        for path in (built / "tree" / package).rglob("*")
        if path.is_file()
    }
    assert held == {name for name in wanted if not name.startswith(NOT_INSTALLED)}
    assert {"ui/desktop/why.toml", "ui/desktop/languages/stillshaft_de.qm", "ui/guide_pages/start.md"} <= held
    assert any(name.startswith("ui/desktop/fonts/LICENSE") for name in held)
    assert len(terms) == 1
    figure("wheel", wheel.stat().st_size / 1e6, "MB")


def test_source_archive_makes_the_same_wheel(built, figure):
    (archive,) = (built / "dist").glob("*.tar.gz")
    with tarfile.open(archive) as held:
        names = held.getnames()
    assert not [name for name in names if name.endswith((".pyc", ".au"))]
    contents = []
    for folder in ("dist", "direct"):
        with zipfile.ZipFile(wheel_in(built / folder)) as wheel:
            contents.append({name: wheel.read(name) for name in wheel.namelist()})
    assert contents[0] == contents[1]
    figure("source archive", archive.stat().st_size / 1e6, "MB")


def test_wheel_works_in_a_fresh_environment(built, tmp_path, figure):
    begin = time.monotonic()
    python = bundle.environment_in(tmp_path / "venv", str(wheel_in(built / "dist")))
    program = python.parent / "stillshaft"
    figure("installing the wheel with the network", time.monotonic() - begin, "s")
    figure("environment with the wheel", bundle.size_mb(tmp_path / "venv"), "MB")
    assert "rehearse" in run(program, "--help", cwd=tmp_path)
    run(program, "rehearse", "--fast", "kept", cwd=tmp_path)
    assert (tmp_path / "kept" / "reports" / "report.html").stat().st_size > 0
    shown = run(python, "-c", WINDOW, cwd=tmp_path, QT_QPA_PLATFORM="offscreen", HOME=str(tmp_path))
    assert "Stillshaft" in shown


def test_wheel_works_with_pipx(tools, built, tmp_path):
    places = {"PIPX_HOME": str(tmp_path / "home"), "PIPX_BIN_DIR": str(tmp_path / "bin")}
    run(tools, "-m", "pipx", "install", wheel_in(built / "dist"), cwd=tmp_path, **places)
    assert "rehearse" in run(tmp_path / "bin" / "stillshaft", "--help", cwd=tmp_path)
    assert_says_no_screen(tmp_path / "bin" / "stillshaft", tmp_path)


@pytest.fixture(scope="module")
def stand_alone(tmp_path_factory):
    """The stand-alone folder."""
    return bundle.bundle(tmp_path_factory.mktemp("made"))


@needs_linux
def test_stand_alone_program_works(stand_alone, tmp_path):
    program = stand_alone / "stillshaft"
    assert "rehearse" in run(program, "--help", cwd=tmp_path)
    assert "simulated rotor" in run(program, "guide", "start", cwd=tmp_path)
    assert_says_no_screen(program, tmp_path)
    run(program, "rehearse", "--fast", "kept", cwd=tmp_path)
    run(program, "solve", "kept/runs.toml", "--plot", "vectors.pdf", cwd=tmp_path)
    assert (tmp_path / "vectors.pdf").read_bytes().startswith(b"%PDF")
    minimax = run(program, "solve", "kept/runs.toml", "--method", "minimax", "--json", cwd=tmp_path)
    assert json.loads(minimax)["method"] == "minimax"
    run(program, "capture", "simulated", "taken.au", "--seconds", "3", cwd=tmp_path)  # processes of acquisition
    for kind in ("flac", "h5", "uff"):
        run(program, "convert", "taken.au", f"taken.{kind}", cwd=tmp_path)
        run(program, "vector", f"taken.{kind}", "--hookup", "kept/hookup.toml", cwd=tmp_path)
    listed = run(program, "-m", "stillshaft.acquire.soundcard", cwd=tmp_path)  # with PortAudio
    assert isinstance(json.loads(listed), list)


@needs_linux
def test_stand_alone_folder_holds_what_is_needed_and_its_terms(stand_alone, figure):
    figure("stand-alone folder", bundle.size_mb(stand_alone), "MB", at_most=MOST_MB)
    parts = [p.name for f in ("_internal", "LICENSES/packages") for p in (stand_alone / f).iterdir()]
    held = {name.split("-")[0].lower() for name in parts}
    assert not held & set(OF_TESTS)
    assert held >= {"numpy", "scipy", "pyside6", "clarabel", "reportlab", "sounddevice", "soundfile"}
    assert not list((stand_alone / "_internal").rglob("test_*.py"))
    assert not list((stand_alone / "_internal").rglob("libreadline*"))
    assert (stand_alone / "icon" / "stillshaft.svg").is_file()
    assert (stand_alone / "stillshaft.desktop").is_file()


@needs_linux
def test_every_part_of_the_stand_alone_folder_has_its_terms(stand_alone):
    terms = stand_alone / "LICENSES"
    for folder in (terms / "packages").iterdir():
        assert any(p.is_file() for p in folder.rglob("*") if p.name != "METADATA"), folder.name
    assert list((terms / "packages").glob("[Pp]y[Ss]ide6_[Ee]ssentials-*/LGPL-3"))
    assert list((terms / "python").iterdir())
    contents = (terms / "README.txt").read_text(encoding="utf-8")
    libraries = [p.name for p in (stand_alone / "_internal").glob("lib*.so*") if not p.is_symlink()]
    assert libraries
    assert not [name for name in libraries if name not in contents and not name.startswith("libpython")]


@needs_linux
@pytest.mark.skipif(shutil.which("xvfb-run") is None, reason="apt-get install xvfb xauth")
def test_stand_alone_window_is_drawn(stand_alone, tmp_path):
    picture = tmp_path / "window.png"
    run(
        "xvfb-run", "-a", "-s", "-screen 0 1600x1000x24", sys.executable, Path(__file__).with_name("picture_of.py"),
        picture, stand_alone / "stillshaft", "app", cwd=tmp_path, HOME=str(tmp_path),
    )  # fmt: skip
    assert picture.is_file()
    print(f"\nlook at {picture}")  # noqa: T201
