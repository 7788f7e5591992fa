"""Where the stand-alone program starts. It has no Python beside it: what Python would do for our modules it does itself."""

from __future__ import annotations

import multiprocessing
import os
import sys


def _leave_other_programs_alone() -> None:
    """Programs of the system that are called, `pactl` for one, are to load the system's libraries, not the bundled ones."""
    before = os.environ.pop("LD_LIBRARY_PATH_ORIG", None)
    if before:
        os.environ["LD_LIBRARY_PATH"] = before
    else:
        os.environ.pop("LD_LIBRARY_PATH", None)
    # our own processes start as this one did, and so find the bundled libraries again
    os.environ["PYINSTALLER_RESET_ENVIRONMENT"] = "1"


def main() -> None:
    """Run the command line, a process of acquisition, or one of our modules as `python -m` runs it."""
    multiprocessing.freeze_support()  # goes no further in a process that multiprocessing has started
    if sys.platform == "linux":
        _leave_other_programs_alone()
    if sys.argv[1:2] == ["-m"] and sys.argv[2:3] and sys.argv[2].startswith("stillshaft."):
        import runpy

        module = sys.argv[2]
        del sys.argv[1:3]
        runpy.run_module(module, run_name="__main__", alter_sys=True)
        return
    from stillshaft.ui import cli

    cli.main()


if __name__ == "__main__":
    main()
