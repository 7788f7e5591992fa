"""What is packed: data files are all named to the build, the icon and the desktop entry are what they should be."""

import configparser
import fnmatch
import os
import shutil
import subprocess
import sys
import tarfile
import tomllib
import zipfile
from pathlib import Path

import pytest
from PySide6 import QtGui
from stillshaft.ui.packaging import bundle, icon, start, wheels_exist

ROOT = Path(__file__).parents[3]
SETTINGS = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
SETUPTOOLS = SETTINGS["tool"]["setuptools"]
needs_debian = pytest.mark.skipif(
    not bundle.COMMON.is_dir() or shutil.which("dpkg-query") is None, reason="texts and packages of Debian"
)
NOT_INSTALLED = {ROOT / "ui" / "packaging"}  # what makes packages is in none


def packed_folders():
    """Folder of each package that is installed, and its patterns of data files."""
    return {ROOT / SETUPTOOLS["package-dir"][p]: SETUPTOOLS["package-data"].get(p, []) for p in SETUPTOOLS["packages"]}


def files(folder):
    """Files of a package, without those of packages in it, of folders that are not installed, and of the interpreter."""
    elsewhere = {f for f in {*packed_folders(), *NOT_INSTALLED} if f != folder and f.is_relative_to(folder)}
    for path in sorted(folder.rglob("*")):
        if path.is_file() and "__pycache__" not in path.parts and not any(path.is_relative_to(e) for e in elsewhere):
            yield path.relative_to(folder)


def matches(path, pattern):
    """A pattern of package data stays within its folder, unlike fnmatch."""
    parts, wanted = path.parts, Path(pattern).parts
    return len(parts) == len(wanted) and all(fnmatch.fnmatch(p, w) for p, w in zip(parts, wanted, strict=True))


@pytest.mark.parametrize("folder", packed_folders(), ids=lambda f: f.relative_to(ROOT).as_posix())
def test_every_data_file_is_packed(folder):
    patterns = packed_folders()[folder]
    data = [path for path in files(folder) if path.suffix != ".py"]
    forgotten = [str(path) for path in data if not any(matches(path, pattern) for pattern in patterns)]
    assert not forgotten, f"not matched by package-data of {folder.name} in pyproject.toml: {forgotten}"
    idle = [pattern for pattern in patterns if not any(matches(path, pattern) for path in data)]
    assert not idle, f"package-data of {folder.name} that matches nothing: {idle}"


@pytest.fixture(scope="module")
def built(tmp_path_factory):
    """Names in the wheel and in the source archive that setuptools makes of the tree, without network."""
    pytest.importorskip(
        "setuptools", minversion="77", reason="older ones do not read the licence line of pyproject.toml"
    )
    tree = bundle.copy_tree(tmp_path_factory.mktemp("built"))
    code = "from setuptools import build_meta as b; b.build_wheel('dist'); b.build_sdist('dist')"
    done = subprocess.run([sys.executable, "-c", code], cwd=tree, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    (wheel,), (archive,) = (tree / "dist").glob("*.whl"), (tree / "dist").glob("*.tar.gz")
    with zipfile.ZipFile(wheel) as held, tarfile.open(archive) as packed:
        top = archive.name.removesuffix(".tar.gz")
        return (
            {n.removeprefix("stillshaft/") for n in held.namelist()},
            {n.removeprefix(f"{top}/") for n in packed.getnames()},
        )


@pytest.mark.parametrize("which", [0, 1], ids=["wheel", "source archive"])
def test_what_is_built_holds_every_file_of_the_tree(built, which):
    wanted = {(folder / path).relative_to(ROOT).as_posix() for folder in packed_folders() for path in files(folder)}
    assert {"ui/desktop/why.toml", "ui/desktop/languages/stillshaft_de.qm", "ui/guide_pages/start.md"} <= wanted
    assert wanted <= built[which]
    assert not [name for name in built[which] if name.startswith("ui/packaging/")]


@pytest.mark.parametrize("folder", packed_folders(), ids=lambda f: f.relative_to(ROOT).as_posix())
def test_every_folder_with_code_is_a_package(folder):
    within = {path.parent for path in files(folder) if path.suffix == ".py"}
    assert within == {Path()}, "name it in packages and package-dir of pyproject.toml"


@pytest.mark.parametrize(
    ("path", "pattern", "fits"),
    [("a.toml", "*.toml", True), ("tables/a.toml", "*.toml", False), ("tables/a.toml", "tables/*.toml", True)],
)
def test_a_pattern_stays_in_its_folder(path, pattern, fits):
    assert matches(Path(path), pattern) is fits


def test_icon_files_are_those_of_the_drawing(qapp, tmp_path):
    for path in icon.make(tmp_path):
        fresh, kept = QtGui.QImage(str(path)), QtGui.QImage(str(icon.FOLDER / path.name))
        assert not kept.isNull(), f"{path.name} is not there: python ui/packaging/icon.py"
        assert (kept.width(), kept.height()) == (fresh.width(), fresh.height())
        far = [
            (x, y)
            for x in range(fresh.width())
            for y in range(fresh.height())
            for a, b in [(fresh.pixelColor(x, y).getRgb(), kept.pixelColor(x, y).getRgb())]
            if max(abs(p - q) for p, q in zip(a, b, strict=True)) > 8  # another Qt may round otherwise
        ]
        assert not far, f"{path.name} differs from the drawing: python ui/packaging/icon.py"


@pytest.mark.qt_log_ignore("Cannot read file")
def test_an_icon_that_is_no_drawing_is_refused(qapp, tmp_path, monkeypatch):
    (tmp_path / "broken.svg").write_text("no drawing")
    monkeypatch.setattr(icon, "DRAWING", tmp_path / "broken.svg")
    with pytest.raises(ValueError, match="broken.svg: not a drawing"):
        icon.make(tmp_path)


def test_an_icon_that_cannot_be_written_is_said(qapp, tmp_path):
    with pytest.raises(OSError, match="cannot be written"):
        icon.make(tmp_path / "nowhere")


def test_desktop_entry_starts_the_program_with_its_icon():
    entry = configparser.ConfigParser(interpolation=None)
    entry.optionxform = str
    entry.read(bundle.HERE / "stillshaft.desktop", encoding="utf-8")
    section = entry["Desktop Entry"]
    assert section["Type"] == "Application"
    assert section["Exec"].split()[0] in SETTINGS["project"]["scripts"]
    assert (icon.FOLDER / f"{section['Icon']}.svg").is_file()


@pytest.mark.skipif(shutil.which("desktop-file-validate") is None, reason="apt-get install desktop-file-utils")
def test_desktop_entry_is_valid():
    """Against the freedesktop.org Desktop Entry Specification, as desktop-file-utils reads it."""
    done = subprocess.run(
        ["desktop-file-validate", bundle.HERE / "stillshaft.desktop"], capture_output=True, text=True, check=False
    )
    assert (done.returncode, done.stdout) == (0, "")


def test_the_stand_alone_start_runs_the_command_line():
    done = subprocess.run([sys.executable, start.__file__, "--help"], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert "rehearse" in done.stdout


def test_the_stand_alone_start_runs_our_modules_as_python_would():
    """Inputs are listed by a process of their own, `python -m stillshaft.acquire.soundcard`: both say the same."""
    module = ["-m", "stillshaft.acquire.soundcard"]
    ours, pythons = (
        subprocess.run([sys.executable, *before, *module], capture_output=True, text=True, check=False)
        for before in ([start.__file__], [])
    )
    assert (ours.returncode, ours.stdout, ours.stderr) == (pythons.returncode, pythons.stdout, pythons.stderr)


@pytest.mark.skipif(sys.platform != "linux", reason="the loader of Linux")
@pytest.mark.parametrize("before", [None, "/opt/lib"])
def test_called_programs_do_not_see_the_bundled_libraries(before):
    code = (
        "import os\nfrom stillshaft.ui.packaging import start\nstart._leave_other_programs_alone()\n"
        "print(os.environ.get('LD_LIBRARY_PATH'), os.environ['PYINSTALLER_RESET_ENVIRONMENT'])"
    )
    environment = os.environ | {"LD_LIBRARY_PATH": "/bundle"} | ({"LD_LIBRARY_PATH_ORIG": before} if before else {})
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, env=environment)
    assert done.stdout.split() == [str(before), "1"]


def test_a_bundle_is_not_made_over_another(tmp_path):
    (tmp_path / "stillshaft").mkdir()
    with pytest.raises(OSError, match="is there already: give another folder"):
        bundle.bundle(tmp_path)


def test_the_copy_holds_the_tree_and_nothing_that_was_built(tmp_path):
    bundle.copy_tree(tmp_path)
    for path in ("pyproject.toml", "LICENSE", "ui/cli.py", "solver/tables/balance_grades.toml", "ui/desktop/look.py"):
        assert (tmp_path / path).read_bytes() == (ROOT / path).read_bytes()
    assert not list(tmp_path.rglob("__pycache__"))
    assert not list(tmp_path.rglob("*.egg-info"))


def installed(packages, name, version, **texts):
    """Metadata of a package, as pip leaves it, with files of terms."""
    folder = packages / f"{name.lower()}-{version}.dist-info"
    folder.mkdir(parents=True)
    (folder / "METADATA").write_text(f"Metadata-Version: 2.4\nName: {name}\nVersion: {version}\nLicense: MIT\n")
    for name, text in texts.items():
        (folder / name).write_text(text)


def python_whose_pip(tmp_path, does):
    """A program in the place of Python that does something with the folder which pip is to fill, its eighth argument."""
    program = tmp_path / "python"
    program.write_text(f"#!/bin/sh\n{does}\n")
    program.chmod(0o755)
    return program


def test_terms_of_a_package_are_those_of_its_metadata(tmp_path):
    installed(tmp_path / "packages", "Some-Thing", "1.5", LICENSE="as you like", AUTHORS="two", RECORD="")
    (line,) = bundle.terms_of_packages(Path("unused"), tmp_path / "packages", tmp_path / "terms")
    assert line == "Some-Thing 1.5: MIT"
    folder = tmp_path / "terms" / "Some-Thing-1.5"
    assert (folder / "LICENSE").read_text() == "as you like"
    assert {p.name for p in folder.iterdir()} == {"METADATA", "LICENSE", "AUTHORS"}


@pytest.mark.skipif(sys.platform == "win32", reason="a shell script")
def test_terms_that_the_wheel_lacks_are_taken_from_the_source_archive(tmp_path):
    installed(tmp_path / "packages", "bare", "2.0")
    (tmp_path / "bare-2.0").mkdir()
    (tmp_path / "bare-2.0" / "LICENSE.txt").write_text("all of it")
    (tmp_path / "bare-2.0" / "setup.py").write_text("")
    with tarfile.open(tmp_path / "bare-2.0.tar.gz", "w:gz") as archive:
        archive.add(tmp_path / "bare-2.0", "bare-2.0")
    copies = f'while [ "$1" != --dest ]; do shift; done; cp {tmp_path}/bare-2.0.tar.gz "$2"'
    bundle.terms_of_packages(python_whose_pip(tmp_path, copies), tmp_path / "packages", tmp_path / "terms")
    assert (tmp_path / "terms" / "bare-2.0" / "LICENSE.txt").read_text() == "all of it"
    assert {p.name for p in (tmp_path / "terms" / "bare-2.0").iterdir()} == {"METADATA", "LICENSE.txt"}


@pytest.mark.skipif(sys.platform == "win32", reason="a shell script")
def test_a_package_without_terms_is_not_handed_on(tmp_path):
    installed(tmp_path / "packages", "bare", "2.0")
    with pytest.raises(OSError, match=r"bare 2\.0: no text of its licence, neither in the wheel nor in the source"):
        bundle.terms_of_packages(python_whose_pip(tmp_path, "exit 1"), tmp_path / "packages", tmp_path / "terms")


@needs_debian
def test_qt_comes_with_the_whole_lgpl(tmp_path):
    """The LGPL 3 is a supplement of the GPL 3 (its first sentence), so both are there."""
    installed(tmp_path / "packages", "PySide6_Essentials", "6.9.0")
    bundle.terms_of_packages(Path("unused"), tmp_path / "packages", tmp_path / "terms")
    folder = tmp_path / "terms" / "PySide6_Essentials-6.9.0"
    assert "GNU LESSER GENERAL PUBLIC LICENSE" in (folder / "LGPL-3").read_text()
    assert "GNU GENERAL PUBLIC LICENSE" in (folder / "GPL-3").read_text()


@needs_debian
def test_terms_of_a_system_library_are_those_of_its_package(tmp_path):
    (library,) = {
        Path(line.split()[-1]) for line in Path("/proc/self/maps").read_text().splitlines() if "/libc.so.6" in line
    }
    assert bundle.terms_of_system([library], tmp_path) == ["libc6: libc.so.6"]
    assert (tmp_path / "libc6" / "copyright").read_bytes() == Path("/usr/share/doc/libc6/copyright").read_bytes()
    assert (tmp_path / "common-licenses" / "LGPL-2.1").is_file()  # its copyright file refers to it


@needs_debian
def test_a_library_of_no_package_is_not_handed_on(tmp_path):
    (tmp_path / "libmine.so").write_bytes(b"")
    with pytest.raises(OSError, match=r"libmine\.so: of no Debian package, so its terms are not known"):
        bundle.terms_of_system([tmp_path / "libmine.so"], tmp_path / "terms")


def test_terms_of_python_are_found(tmp_path):
    bundle.terms_of_python(tmp_path / "python")
    (text,) = (tmp_path / "python").iterdir()
    assert "PYTHON SOFTWARE FOUNDATION LICENSE" in text.read_text(encoding="utf-8")


def test_a_python_without_terms_is_not_handed_on(tmp_path, monkeypatch):
    monkeypatch.setattr(bundle.sysconfig, "get_path", lambda _: str(tmp_path / "lib"))
    with pytest.raises(OSError, match="no text of Python's licence"):
        bundle.terms_of_python(tmp_path / "python")


def test_system_libraries_are_those_from_elsewhere(tmp_path):
    (tmp_path / "work" / "stillshaft").mkdir(parents=True)
    collected = (
        [
            ("libxcb.so.1", "/usr/lib/libxcb.so.1", "BINARY"),
            ("libasound.so.2", "/usr/lib/libasound.so.2", "BINARY"),  # left to the system
            ("numpy/core.so", str(tmp_path / "venv" / "core.so"), "EXTENSION"),
            ("base_library.zip", "/usr/share/base_library.zip", "DATA"),
        ],
    )
    (tmp_path / "work" / "stillshaft" / "COLLECT-00.toc").write_text(repr(collected))
    assert bundle.system_libraries(tmp_path) == [Path("/usr/lib/libxcb.so.1")]


def test_size_counts_each_file_once(tmp_path):
    (tmp_path / "a").write_bytes(bytes(2_000_000))
    (tmp_path / "b").symlink_to("a")
    assert bundle.size_mb(tmp_path) == pytest.approx(2.0)


def test_wheels_are_asked_for_what_a_user_installs():
    asked = wheels_exist.requirements(ROOT / "pyproject.toml")
    assert {r.name for _, r in asked} >= {"numpy", "PySide6-Essentials", "clarabel", "h5py", "uldaq"}
    assert "pytest" not in {r.name for _, r in asked}
    qt = {str(r.specifier): r for _, r in asked if r.name == "PySide6-Essentials"}
    assert wheels_exist.wanted_there(qt["<6.12,>=6.8"], "macOS arm64", "3.11")
    assert not wheels_exist.wanted_there(qt["<6.12,>=6.8"], "macOS arm64", "3.12")


def test_readme_has_the_two_commands_that_a_fresh_machine_runs():
    """fresh_machine.sh takes them from there; it refuses to run with any other number."""
    script = (bundle.HERE / "fresh_machine.sh").read_text(encoding="utf-8")
    take = next(line for line in script.splitlines() if line.startswith("mapfile -t commands"))
    code = f'root={ROOT}; {take}; printf "%s\\n" "${{commands[@]}}"'
    done = subprocess.run(["bash", "-c", code], capture_output=True, text=True, check=True)
    first, second = done.stdout.splitlines()
    assert first.endswith("stillshaft rehearse")
    assert "-m pytest" in second
