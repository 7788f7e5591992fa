"""What is packed: data files are all named to the build, the icon and the desktop entry are what they should be."""

import configparser
import fnmatch
import os
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest
from PySide6 import QtGui
from stillshaft.ui.packaging import bundle, icon, start, wheels_exist

ROOT = Path(__file__).parents[3]
SETTINGS = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
SETUPTOOLS = SETTINGS["tool"]["setuptools"]
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
