"""Large arrays in pages of their own: counted by the C library's own mallinfo2(3)."""

import ctypes
import subprocess
import sys

import pytest

SCRIPT = """
import ctypes
import numpy as np
from stillshaft.ui import heap

NAMES = "arena ordblks smblks hblks hblkhd usmblks fsmblks uordblks fordblks keepcost".split()

class Counts(ctypes.Structure):
    _fields_ = [(name, ctypes.c_size_t) for name in NAMES]

count = ctypes.CDLL(None).mallinfo2
count.restype = Counts

def mapped():
    before = count().hblks
    kept = np.ones(heap.LARGE_BYTES // 4)
    return count().hblks - before

{asked}
for size in (1, 4, 16):  # after each of these that goes, the library would take up its limit
    np.ones(size * 2**17).sum()
print(mapped())
"""


@pytest.mark.skipif(not hasattr(ctypes.CDLL(None), "mallinfo2"), reason="of the GNU C library")
@pytest.mark.parametrize(("asked", "mapped"), [("", "0"), ("assert heap.map_large_arrays()", "1")])
def test_a_large_array_has_pages_of_its_own_whatever_went_before(asked, mapped):
    script = SCRIPT.format(asked=asked)
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True, timeout=120)
    assert done.stdout.strip() == mapped
