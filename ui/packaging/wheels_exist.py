"""Says which dependencies have wheels where the program is to run: `python ui/packaging/wheels_exist.py`. Needs the network.

Asks pip alone, system by system and Python by Python, for what pyproject.toml names; extras count, those for tests do not.
The newest pip is installed for it in a folder that is thrown away: old ones download each wheel for the same answer.
pip runs here, so what it may take by its own markers is worked out for the system in question first.
"""

from __future__ import annotations

import json
import subprocess
import sys
import tempfile
import tomllib
from pathlib import Path

from packaging.markers import default_environment
from packaging.requirements import Requirement
from stillshaft.ui.packaging.bundle import environment_in

ROOT = Path(__file__).parents[2]
PYTHONS = ("3.11", "3.12", "3.13", "3.14")
# platform tags from the newest that each system of today takes to the oldest that is still asked for, and markers
SYSTEMS: dict[str, tuple[tuple[str, ...], dict[str, str]]] = {
    "Windows x86-64": (
        ("win_amd64",),
        {"sys_platform": "win32", "os_name": "nt", "platform_system": "Windows", "platform_machine": "AMD64"},
    ),
    "macOS arm64": (
        tuple(f"macosx_{n}_0_{kind}" for n in range(14, 10, -1) for kind in ("arm64", "universal2")),
        {"sys_platform": "darwin", "os_name": "posix", "platform_system": "Darwin", "platform_machine": "arm64"},
    ),
    "macOS x86-64": (
        tuple(f"macosx_{n}_0_{kind}" for n in range(14, 10, -1) for kind in ("x86_64", "universal2"))
        + tuple(f"macosx_10_{n}_{kind}" for n in range(16, 8, -1) for kind in ("x86_64", "universal2")),
        {"sys_platform": "darwin", "os_name": "posix", "platform_system": "Darwin", "platform_machine": "x86_64"},
    ),
}


def requirements(project: Path) -> list[tuple[str, Requirement]]:
    """What the program asks for, and the extra that asks ("" for the program itself); extras for tests are left out."""
    table = tomllib.loads(project.read_text(encoding="utf-8"))["project"]
    asked = [("", text) for text in table["dependencies"]]
    for extra, texts in table.get("optional-dependencies", {}).items():
        if extra != "test":
            asked += [(extra, text) for text in texts]
    return [(extra, Requirement(text)) for extra, text in asked]


def wanted_there(requirement: Requirement, system: str, python: str) -> bool:
    """True where the requirement's own marker lets it in."""
    there = {name: str(value) for name, value in default_environment().items()}
    there |= {"python_version": python, "python_full_version": f"{python}.0"} | SYSTEMS[system][1]
    return requirement.marker is None or requirement.marker.evaluate(there)


def wheel_of(requirement: Requirement, system: str, python: str, asking: Path) -> str | None:
    """File name of the wheel that pip, that of the Python `asking`, takes there; None when there is none.

    Raises OSError where pip cannot ask.
    """
    text = f"{requirement.name}{requirement.specifier}"
    with tempfile.TemporaryDirectory() as folder:
        tags = [part for tag in SYSTEMS[system][0] for part in ("--platform", tag)]
        done = subprocess.run(
            [asking, "-m", "pip", "install", "--dry-run", "--quiet", "--no-deps", "--ignore-installed",
             "--only-binary", ":all:", *tags, "--implementation", "cp", "--python-version", python,
             "--target", folder, "--report", f"{folder}/report.json", text],
            capture_output=True, text=True, check=False,
        )  # fmt: skip
        if done.returncode == 0:
            chosen = json.loads(Path(folder, "report.json").read_text(encoding="utf-8"))["install"]
            return str(chosen[0]["download_info"]["url"]).rsplit("/", 1)[-1]
    if "No matching distribution found" in done.stderr:
        return None
    raise OSError(f"pip could not ask for {text}: {(done.stderr.strip().splitlines() or ['it says nothing'])[-1]}")


def versions(requirement: Requirement, asking: Path) -> dict[tuple[str, str], str]:
    """Version of the wheel for each system and Python, "none" where there is none, "-" where it is not asked for."""
    found = {}
    for python in PYTHONS:
        name: str | None = None
        for system in SYSTEMS:
            if not wanted_there(requirement, system, python):
                found[system, python] = "-"
                continue
            if name is None or not name.endswith("-none-any.whl"):  # that one serves every system
                name = wheel_of(requirement, system, python, asking)
            found[system, python] = "none" if name is None else name.split("-")[1]
    return found


def table(asking: Path) -> int:
    """Print the table, with a Python whose pip asks; 0 when every wheel is there."""
    absent = []
    print(f"{'':44}" + "".join(f"{system:{10 * len(PYTHONS)}}" for system in SYSTEMS))  # noqa: T201
    print(f"{'':44}" + "".join(f"{python:10}" for _ in SYSTEMS for python in PYTHONS))  # noqa: T201
    for extra, requirement in requirements(ROOT / "pyproject.toml"):
        found = versions(requirement, asking)
        absent += [f"{requirement.name}: {system}, Python {p}" for (system, p), v in found.items() if v == "none"]
        name = f"{requirement.name}{requirement.specifier}{f' [{extra}]' if extra else ''}"
        print(f"{name:44}" + "".join(f"{found[s, p]:10}" for s in SYSTEMS for p in PYTHONS), flush=True)  # noqa: T201
    for line in absent:
        print(f"no wheel: {line}")  # noqa: T201
    return 1 if absent else 0


def main() -> int:
    """Install a pip that can ask, and print the table with it."""
    with tempfile.TemporaryDirectory() as folder:
        return table(environment_in(Path(folder), "--upgrade", "pip>=24"))


if __name__ == "__main__":
    sys.exit(main())
