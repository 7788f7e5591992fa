"""Makes the stand-alone program: one folder that needs no Python. `python ui/packaging/bundle.py FOLDER`.

What goes in is what pip installs into a fresh environment from a clean copy of the tree, so nothing of a developer's own
machine and no test package is in it. A bundle runs on the system that it was made on, or a newer one.
"""

from __future__ import annotations

import ast
import fnmatch
import re
import shutil
import subprocess
import sys
import sysconfig
import tarfile
import tempfile
import tomllib
import venv
from email.parser import HeaderParser
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

ROOT = Path(__file__).parents[2]
HERE = Path(__file__).parent
# every system has them, as new as ours or newer, and its own sound plug-ins and graphics drivers need just those
LEFT_TO_THE_SYSTEM = ("libasound.so*", "libstdc++.so*", "libgcc_s.so*")
# parts of Qt for screens without a window system, for networks and for the GTK look, with some fifty libraries behind them
UNUSED_QT = (
    "platformthemes/*gtk3*", "platforms/*eglfs*", "platforms/*linuxfb*", "platforms/*minimal*", "platforms/*vkkhr*",
    "platforms/*vnc*", "egldeviceintegrations/*", "generic/*", "tls/*", "networkinformation/*",
)  # fmt: skip
COMMON = Path("/usr/share/common-licenses")
DEBIAN_TEXTS = Path("/usr/share/doc")
NAMES = ("LICEN*", "COPYING*", "NOTICE*", "AUTHORS*")
# the LGPL adds to the GPL and is not whole without it
QT_PACKAGES, QT_TEXTS = ("pyside6", "shiboken6"), ("LGPL-3", "GPL-3")
_HEAD = """\
What this folder holds besides Stillshaft, and under which terms; Stillshaft's own stand in LICENSE beside this folder.

Qt and other libraries under the LGPL are here as files of their own, unchanged: put another build of the same version in the
place of a file to use that one. Python code under it, that of Qt for Python and npTDMS, is packed into the program;
ui/packaging/bundle.py in Stillshaft's source makes the program anew with another version of them. Their sources are those of the
versions named here: of Qt and Qt for Python at https://download.qt.io/official_releases, of the others at PyPI and in Debian.

"""


def copy_tree(into: Path) -> Path:
    """Copy what a build reads, as it is now, into a new folder: nothing that was built goes in; no build leaves anything here."""
    into.mkdir(parents=True, exist_ok=True)
    for name in ("pyproject.toml", "README.md", "LICENSE"):
        shutil.copy2(ROOT / name, into / name)
    folders = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"]["setuptools"]["package-dir"]
    for name in sorted({folder.split("/")[0] for folder in folders.values()}):
        shutil.copytree(ROOT / name, into / name, ignore=shutil.ignore_patterns("__pycache__"))
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


def texts_in(folder: Path) -> Iterator[Path]:
    """Files that say terms, wherever in a folder they are."""
    yield from sorted({p for pattern in NAMES for p in folder.rglob(pattern) if p.is_file()})


def _text_of_source(python: Path, name: str, version: str, into: Path) -> None:
    with tempfile.TemporaryDirectory() as folder:
        subprocess.run(
            [python, "-m", "pip", "download", "--quiet", "--no-deps", "--no-binary", ":all:",
             "--dest", folder, f"{name}=={version}"],
            check=False,  # an archive that is not there has no text
        )  # fmt: skip
        for path in Path(folder).glob("*.tar.gz"):
            with tarfile.open(path) as archive:
                for member in archive.getmembers():
                    plain = Path(member.name).name
                    if member.isfile() and any(fnmatch.fnmatch(plain, pattern) for pattern in NAMES):
                        (into / plain).write_bytes(archive.extractfile(member).read())  # type: ignore[union-attr]


def terms_of_packages(python: Path, packages: Path, into: Path) -> list[str]:
    """Copy the terms of every installed package; a line for each. Raises OSError for a package whose terms are not found."""
    lines = []
    for information in sorted(packages.glob("*.dist-info")):
        about = HeaderParser().parsestr((information / "METADATA").read_text(encoding="utf-8"))
        name, version = str(about["Name"]), str(about["Version"])
        folder = into / f"{name}-{version}"
        folder.mkdir(parents=True)
        shutil.copy2(information / "METADATA", folder)
        for path in texts_in(information):
            target = folder / path.relative_to(information)
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copy2(path, target)
        if name.lower().startswith(QT_PACKAGES):
            for text in QT_TEXTS:
                shutil.copy2(COMMON / text, folder)
        elif not any(texts_in(folder)):
            _text_of_source(python, name, version, folder)
        if len(list(folder.iterdir())) < 2:
            raise OSError(f"{name} {version}: no text of its licence, neither in the wheel nor in the source archive")
        declared = str(about["License-Expression"] or about["License"] or "").splitlines()[:1]
        if not declared or len(declared[0]) > 60:
            declared = [c.rpartition(" :: ")[2] for c in about.get_all("Classifier", []) if c.startswith("License")]
        lines.append(f"{name} {version}: {', '.join(declared) or 'see its text'}")
    return lines


def debian_package(library: Path) -> str | None:
    """Name of the Debian package that a file belongs to, without its architecture; None where no package has it."""
    # the folders /lib and /usr/lib are one, and packages name either
    real = library.resolve()
    for path in dict.fromkeys((str(real), str(real).removeprefix("/usr"), str(library))):
        done = subprocess.run(["dpkg-query", "--search", path], capture_output=True, text=True, check=False)
        if done.returncode == 0:
            return done.stdout.split(":", 1)[0]
    return None


def system_libraries(work: Path) -> list[Path]:
    """Libraries from outside the work folder, as PyInstaller's list of what it collected says; without those left out."""
    listed = ast.literal_eval((work / "work" / "stillshaft" / "COLLECT-00.toc").read_text(encoding="utf-8"))
    entries = next(part for part in listed if isinstance(part, list))
    return [
        Path(source)
        for name, source, kind in entries
        if kind in ("BINARY", "EXTENSION")
        and not Path(source).is_relative_to(work)
        and not any(fnmatch.fnmatch(name, pattern) for pattern in LEFT_TO_THE_SYSTEM)
    ]


def terms_of_system(libraries: Iterable[Path], into: Path) -> list[str]:
    """Copy what Debian says of the packages that libraries come from, with the licences that it names; a line for each package.

    Raises OSError for a library that belongs neither to a package nor to this Python: its terms are not known.
    """
    held: dict[str, list[str]] = {}
    for library in sorted(libraries):
        package = debian_package(library)
        if package is None and library.is_relative_to(sys.base_prefix):
            continue  # a part of Python that was not installed by Debian
        if package is None:
            raise OSError(f"{library}: of no Debian package, so its terms are not known")
        held.setdefault(package, []).append(library.name)
    named: set[str] = set()
    for package in held:
        text = DEBIAN_TEXTS / package / "copyright"
        (into / package).mkdir(parents=True)
        shutil.copy2(text, into / package / "copyright")
        named |= set(
            re.findall(rf"{COMMON}/([A-Za-z0-9.+-]*[A-Za-z0-9])", text.read_text(encoding="utf-8", errors="replace"))
        )
    for name in sorted(n for n in named if (COMMON / n).is_file()):
        (into / "common-licenses").mkdir(exist_ok=True)
        shutil.copy2(COMMON / name, into / "common-licenses" / name)
    return [f"{package}: {', '.join(libraries)}" for package, libraries in sorted(held.items())]


def terms_of_python(into: Path) -> None:
    """Copy the terms of the Python that is handed on. Raises OSError where they are not beside its library."""
    library = Path(sysconfig.get_path("stdlib"))  # of this Python, from which the environment was made
    debian = DEBIAN_TEXTS / library.name / "copyright"
    for path in (library / "LICENSE.txt", debian):
        if path.is_file():
            into.mkdir(parents=True)
            shutil.copy2(path, into)
            return
    raise OSError(f"no text of Python's licence, neither in {library} nor at {debian}")


def write_terms(python: Path, packages: Path, libraries: Iterable[Path], into: Path) -> None:
    """Make the folder of all terms, with a README.txt that says what is there. Raises OSError where a text is missing."""
    terms_of_python(into / "python")
    ours = terms_of_packages(python, packages, into / "packages")
    theirs = terms_of_system(libraries, into / "system")
    lines = ["Packages (folder packages)", *ours, "", "Libraries of Debian (folder system)", *theirs, ""]
    (into / "README.txt").write_text(_HEAD + "\n".join(lines), encoding="utf-8")


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
             "--hidden-import", "clarabel", "--exclude-module", "readline",  # under the GPL, and nothing here edits a line
             "--distpath", str(work / "made"), "--workpath", str(work / "work"), "--specpath", str(work),
             str(HERE / "start.py")],
            check=True, cwd=work,
        )  # fmt: skip
        finished = work / "made" / "stillshaft"
        for pattern in LEFT_TO_THE_SYSTEM:
            for path in (finished / "_internal").glob(pattern):
                path.unlink()
        write_terms(python, packages, system_libraries(work), finished / "LICENSES")
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
