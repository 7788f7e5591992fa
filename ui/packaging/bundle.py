"""Makes the stand-alone program: one folder that needs no Python. `python ui/packaging/bundle.py FOLDER`.

What goes in is what pip installs into a fresh environment from a clean copy of the tree, so nothing of a developer's own
machine and no test package is in it. A bundle runs on the system that it was made on, or a newer one.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
import venv
from pathlib import Path

ROOT = Path(__file__).parents[2]
HERE = Path(__file__).parent
# every system has them, as new as ours or newer, and its own sound plug-ins and graphics drivers need just those
LEFT_TO_THE_SYSTEM = ("libasound.so*", "libstdc++.so*", "libgcc_s.so*")
# parts of Qt for screens without a window system, for networks and for the GTK look, with some fifty libraries behind them
UNUSED_QT = (
    "platformthemes/*gtk3*", "platforms/*eglfs*", "platforms/*linuxfb*", "platforms/*minimal*", "platforms/*vkkhr*",
    "platforms/*vnc*", "egldeviceintegrations/*", "generic/*", "tls/*", "networkinformation/*",
)  # fmt: skip
_LICENCE_NAMES = ("LICEN*", "COPYING*", "NOTICE*", "AUTHORS*")


def copy_tree(into: Path) -> Path:
    """Copy the files that git knows or would add, as they are now, into a new folder; no build leaves anything in ours."""
    listed = subprocess.run(
        ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
        cwd=ROOT, capture_output=True, text=True, check=True,
    )  # fmt: skip
    for name in filter(None, listed.stdout.split("\0")):
        if (ROOT / name).is_file():  # not one that was just deleted
            (into / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copy2(ROOT / name, into / name)
    return into


def environment_in(folder: Path, *wanted: str) -> Path:
    """Make a fresh environment with what pip is told to install; its Python."""
    venv.create(folder, with_pip=True)
    python = folder / ("Scripts/python.exe" if sys.platform == "win32" else "bin/python")
    subprocess.run([python, "-m", "pip", "install", "--quiet", *wanted], check=True)
    return python


def _packages_of(python: Path) -> Path:
    code = "import sysconfig; print(sysconfig.get_path('platlib'))"
    return Path(subprocess.run([python, "-c", code], capture_output=True, text=True, check=True).stdout.strip())


def _drop_unused_qt(packages: Path) -> None:
    """Take them out before anything is analysed: what only they need is not found then."""
    for plugins in packages.glob("PySide6/**/plugins"):
        for pattern in UNUSED_QT:
            for path in plugins.glob(pattern):
                path.unlink()


def _copy_licences(packages: Path, into: Path) -> None:
    """The terms of everything that is handed on, package by package; where a package brings no text, what it declares."""
    for information in sorted(packages.glob("*.dist-info")):
        folder = into / information.name.removesuffix(".dist-info")
        folder.mkdir(parents=True)
        shutil.copy2(information / "METADATA", folder)
        for path in (p for pattern in _LICENCE_NAMES for p in information.rglob(pattern) if p.is_file()):
            target = folder / path.relative_to(information)
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copy2(path, target)


def bundle(folder: Path) -> Path:
    """Make the program in `folder`/stillshaft. Raises OSError where that is there already."""
    made = folder / "stillshaft"
    if made.exists():
        raise OSError(f"{made} is there already: give another folder")
    with tempfile.TemporaryDirectory(prefix="bundle") as name:
        work = Path(name)
        tree = copy_tree(work / "tree")
        python = environment_in(work / "venv", f"{tree}[daq,files]", "pyinstaller>=6.10")
        packages = _packages_of(python)
        _drop_unused_qt(packages)
        # copied by its name, for it is found by no import: what a verb loads when it is called, and data beside the code
        subprocess.run(
            [python, "-m", "PyInstaller", "--noconfirm", "--log-level", "WARN", "--onedir", "--name", "stillshaft",
             "--collect-submodules", "stillshaft", "--collect-data", "stillshaft", "--copy-metadata", "stillshaft",
             "--hidden-import", "clarabel",
             "--distpath", str(work / "made"), "--workpath", str(work / "work"), "--specpath", str(work),
             str(HERE / "start.py")],
            check=True, cwd=work,
        )  # fmt: skip
        finished = work / "made" / "stillshaft"
        for pattern in LEFT_TO_THE_SYSTEM:
            for path in (finished / "_internal").glob(pattern):
                path.unlink()
        _copy_licences(packages, finished / "licences")
        shutil.copy2(ROOT / "LICENSE", finished)
        shutil.copy2(HERE / "stillshaft.desktop", finished)
        shutil.copytree(HERE.parent / "desktop" / "icon", finished / "icon")
        folder.mkdir(parents=True, exist_ok=True)
        shutil.move(finished, made)
    return made


def size_mb(folder: Path) -> float:
    """What the files of a folder hold, in MB of 10⁶ bytes; links count once."""
    return sum(p.stat().st_size for p in folder.rglob("*") if p.is_file() and not p.is_symlink()) / 1e6


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit("usage: python ui/packaging/bundle.py FOLDER")
    try:
        program = bundle(Path(sys.argv[1]))
    except (OSError, subprocess.CalledProcessError) as error:
        sys.exit(f"no bundle was made: {error}")
    print(f"{program}: {size_mb(program):.0f} MB")  # noqa: T201
