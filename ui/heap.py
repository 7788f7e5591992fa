"""How the process keeps large arrays, so that hours of watching need no more memory than minutes."""

from __future__ import annotations

import contextlib
import ctypes
import functools
import sys

_MMAP_THRESHOLD = -3  # of mallopt, malloc.h of the GNU C library
LARGE_BYTES = 256 * 1024


@functools.cache
def map_large_arrays() -> bool:
    """Keep each large array in pages of its own, given back to the system when it goes; False where that is not done.

    The GNU C library begins like that, but takes its limit up to the size of whatever large array went last. From then on
    arrays of a moment lie among small objects that stay, and the holes between them grow for hours. A limit that is set
    stays (mallopt(3), M_MMAP_THRESHOLD). Other C libraries are left as they are.
    """
    if sys.platform != "linux":
        return False
    with contextlib.suppress(AttributeError, OSError):
        return bool(ctypes.CDLL(None).mallopt(_MMAP_THRESHOLD, LARGE_BYTES))
    return False
