"""Whether a window can be opened here, and the way into the desktop program, which is `ui.desktop`."""

from __future__ import annotations

import ctypes
import os
import sys
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

_LIBRARIES = {
    "libglib-2.0.so.0": "libglib2.0-0",
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libxkbcommon.so.0": "libxkbcommon0",
}
_X11_LIBRARIES = {
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-shape.so.0": "libxcb-shape0",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
}


def problem(environment: Mapping[str, str]) -> str | None:
    """Why no window can be opened here, in words; None when it can. Qt would abort the process instead of saying."""
    if sys.platform.startswith("linux"):
        platform = environment.get("QT_QPA_PLATFORM", "").split(":")[0].split(";")[0]
        x11 = platform == "xcb" or (not platform and not environment.get("WAYLAND_DISPLAY"))
        absent = _absent(_LIBRARIES | (_X11_LIBRARIES if x11 else {}))
        if absent:
            return (
                f"the window needs system libraries that are not here: {', '.join(absent)}; on Debian or Ubuntu: "
                f"sudo apt-get install {' '.join(sorted(set(absent.values())))}; the command line works without them"
            )
        if x11 and not environment.get("DISPLAY"):
            return "there is no screen: neither DISPLAY nor WAYLAND_DISPLAY is set; the command line needs none"
    try:
        import PySide6
        import PySide6.QtWidgets  # noqa: F401
    except ImportError as error:
        return f"Qt cannot be loaded: {error}; install it with: pip install PySide6-Essentials"
    if PySide6.__version__.startswith("6.12.") and sys.version_info < (3, 12):
        return "PySide6 6.12 aborts on this Python; install another with: pip install 'PySide6-Essentials<6.12'"
    return None


def _absent(libraries: Mapping[str, str]) -> dict[str, str]:
    absent = {}
    for name, package in libraries.items():
        try:
            ctypes.CDLL(name)
        except OSError:
            absent[name] = package
    return absent


def run() -> int:
    """Open the window and stay until it is closed; exit status."""
    trouble = problem(os.environ)
    if trouble is not None:
        print(f"stillshaft: {trouble}", file=sys.stderr)  # noqa: T201
        return 1
    from stillshaft.ui.desktop import app

    return app.run()
