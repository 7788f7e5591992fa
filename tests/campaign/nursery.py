"""The program, loaded and waiting: each order forks it, and the child runs a verb as from a terminal of its own.

Started as a script; one order a line on standard input, `{"argv", "folder", "out", "err", "environment"}`. Answers are lines
`{"pid"}` and, when the verb has ended, `{"status"}`, negative for a signal.
"""

from __future__ import annotations

import gc
import json
import os
import sys
from pathlib import Path

_LOADED = (
    "soundfile", "scipy.interpolate", "scipy.optimize", "scipy.signal", "scipy.stats", "clarabel", "reportlab.pdfgen.canvas",
    "tomli_w", "tomlkit", "rich.live", "rich.table", "rich.progress", "h5py", "pyuff", "scipy.io",
    "stillshaft.acquire.process", "stillshaft.acquire.exchange", "stillshaft.acquire.simulated", "stillshaft.acquire.catalogue",
    "stillshaft.solver.guidance", "stillshaft.solver.correction", "stillshaft.solver.replay", "stillshaft.solver.stored",
    "stillshaft.ui.account_job", "stillshaft.ui.library", "stillshaft.ui.report", "stillshaft.ui.report_pdf",
    "stillshaft.ui.report_html", "stillshaft.ui.reprocess", "stillshaft.ui.session", "stillshaft.ui.taking",
    "stillshaft.ui.wiring",
)  # fmt: skip


def serve() -> dict[str, object] | None:
    """Take orders until there are no more; in the child of an order it returns the order."""
    for line in sys.stdin:
        order: dict[str, object] = json.loads(line)
        pid = os.fork()
        if pid == 0:
            return order
        print(json.dumps({"pid": pid}), flush=True)  # noqa: T201
        print(json.dumps({"status": os.waitstatus_to_exitcode(os.waitpid(pid, 0)[1])}), flush=True)  # noqa: T201
    return None


def become(order: dict[str, object]) -> None:
    """A session, output, folder and environment of its own, as a shell would give."""
    os.setsid()
    sys.stdin.close()
    os.dup2(os.open(os.devnull, os.O_RDONLY), 0)
    for number, name in ((1, "out"), (2, "err")):
        os.dup2(os.open(str(order[name]), os.O_WRONLY | os.O_CREAT | os.O_APPEND, 0o644), number)
    os.chdir(str(order["folder"]))
    os.environ.update(order["environment"])  # type: ignore[arg-type]
    sys.argv = ["stillshaft", *order["argv"]]  # type: ignore[misc]


if __name__ == "__main__":
    sys.path[:] = [p for p in sys.path if p != str(Path(__file__).parent)]
    import importlib

    for name in _LOADED:
        importlib.import_module(name)
    from stillshaft.ui import cli

    gc.freeze()  # what is loaded is not looked through again in every child
    print(json.dumps({"ready": os.getpid()}), flush=True)  # noqa: T201
    if (wanted := serve()) is not None:
        become(wanted)
        cli.main()
