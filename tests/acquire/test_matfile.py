"""MAT files as scipy writes and reads them; damaged ones."""

import io
import struct
import zlib

import numpy as np
import pytest
from scipy.io import loadmat, savemat
from stillshaft.acquire import matfile
from stillshaft.acquire.recording import RecordingError

MOST = 2**20


def written(path, content, **options):
    savemat(path, content, **options)
    return path


@pytest.mark.parametrize("options", [{}, {"do_compression": True}, {"format": "4"}])
@pytest.mark.parametrize("kind", ["f8", "f4", "i4", "i2", "u2", "u1"])
def test_numbers_and_texts_of_scipy_are_read(tmp_path, options, kind):
    rng = np.random.default_rng(1)
    content = {"samples": (100.0 * rng.random((7, 3))).astype(kind), "rate_hz": 4800.0, "about": "Gebläse 1"}
    if options.get("format") == "4":
        content["about"] = "blower 1"
    path = written(tmp_path / "a.mat", content, **options)
    found = matfile.variables(path, MOST)
    known = loadmat(path)
    assert set(found) == {"samples", "rate_hz", "about"}
    assert found["samples"].shape == (7, 3)
    np.testing.assert_array_equal(found["samples"].numbers(), known["samples"])
    assert found["rate_hz"].numbers() == [[4800.0]]
    assert found["about"].text() == str(known["about"][0])


@pytest.mark.parametrize("kind", ["i8", "u8", "u4", "i1", "?"])
def test_the_other_numbers_of_level_5(tmp_path, kind):
    values = np.array([[0, 1, 1], [1, 0, 1]]).astype(kind)
    path = written(tmp_path / "a.mat", {"x": values, "much": np.zeros((2, 3, 4))})
    found = matfile.variables(path, MOST)
    np.testing.assert_array_equal(found["x"].numbers(), values)
    assert found["much"].numbers().shape == (2, 3, 4)


def element(order, kind, data):
    return struct.pack(order + "II", kind, len(data)) + data + bytes(-len(data) % 8)


def level_5(order, *, flags=6, stored=9, data=None, shape=(2, 1), name=b"x", small=False):
    """A file by the document: doubles may be stored as any smaller number, a small element in its tag."""
    said = struct.pack(order + "2d", 1.5, -2.0) if data is None else data
    # of a small element the bytes stand in the upper half of the first word, its type in the lower
    kept = struct.pack(order + "I", (len(said) << 16 | stored) & 0xFFFFFFFF)
    body = element(order, 6, struct.pack(order + "II", flags, 0))
    body += element(order, 5, struct.pack(order + f"{len(shape)}i", *shape)) + element(order, 1, name)
    body += kept + said.ljust(4, b"\0") if small else element(order, stored, said)
    mark = b"\0\1IM" if order == "<" else b"\1\0MI"
    return b"MATLAB 5.0 MAT-file".ljust(124) + mark + element(order, 14, body)


@pytest.mark.parametrize("order", ["<", ">"])
def test_both_orders_of_bytes_and_small_elements(tmp_path, order):
    for content in (level_5(order), level_5(order, stored=1, data=b"\3\xfe", small=True)):
        (tmp_path / "a.mat").write_bytes(content)
        (found,) = matfile.variables(tmp_path / "a.mat", MOST).values()
        assert (found.name, found.kind, found.shape) == ("x", "double", (2, 1))
        np.testing.assert_array_equal(found.numbers(), loadmat(io.BytesIO(content))["x"])


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"MATLAB 7.3 MAT-file".ljust(124) + b"\0\2IM", "is MAT of level 7.3; save it as level 7"),
        (b"x" * 200, "it has no header of level 5"),
        (level_5("<", stored=99), "x has no real numbers"),
        (level_5("<", stored=40_000, data=b"\3\4", small=True), "x has no real numbers"),
        (level_5("<", flags=0x0806), "x has no real numbers"),
        (level_5("<", flags=1), "x has no real numbers"),
        (level_5("<", shape=(3, 1)), "x has 16 bytes for a shape of 3 × 1"),
        (level_5("<", shape=(-2, 1)), "a shape below 0"),
        (level_5("<", shape=(2,)), "no class or no shape"),
        (level_5("<", name=b"x" * 5000), "has 5000 bytes, at most 4096 can be"),
        (level_5("<", data=bytes(2 * MOST)), "at most 1048576 can be"),
        (level_5("<")[:-8], "it ends too early"),
        (level_5("<")[:128] + element("<", 15, b"no zlib stream"), "cannot be unpacked"),
        (level_5("<")[:128] + element("<", 15, zlib.compress(bytes(100))), "something other than a variable"),
        (level_5("<")[:128] + element("<", 1, b"") * 10_001, "more than 10000 variables"),
        (struct.pack("<5I", 0, 2, 1, 0, 2) + b"x\0" + bytes(8), "it ends too early"),
        (struct.pack("<5I", 0, 2**20, 1, 0, 2) + b"x\0" + bytes(2**23), "x has 8388608 bytes, at most"),
        (struct.pack("<5I", 2, 1, 1, 0, 2) + b"x\0" + bytes(8), "x has no real numbers"),
        (struct.pack("<5I", 90, 2, 1, 0, 2) + b"x\0" + bytes(16), "head is none of level 4"),
        ((struct.pack("<5I", 50, 0, 0, 0, 2) + b"x\0") * 10_001, "more than 10000 variables"),
    ],
)  # fmt: skip
def test_what_is_damaged_is_refused(tmp_path, content, said):
    """The type 40 000 of a small element ended the program in scipy's reader."""
    (tmp_path / "a.mat").write_bytes(content)
    with pytest.raises(RecordingError, match=said):
        matfile.variables(tmp_path / "a.mat", MOST)["x"].numbers()


@pytest.mark.parametrize("content", [level_5("<"), struct.pack("<5I", 0, 1, 1, 0, 2) + b"x\0" + bytes(8)])
def test_numbers_are_no_text(tmp_path, content):
    (tmp_path / "a.mat").write_bytes(content)
    with pytest.raises(RecordingError, match="x is no text"):
        matfile.variables(tmp_path / "a.mat", MOST)["x"].text()


def test_letters_of_level_4_are_letters(tmp_path):
    (tmp_path / "a.mat").write_bytes(struct.pack("<5I", 1, 1, 1, 0, 2) + b"x\0" + struct.pack("<d", 1e9))
    with pytest.raises(RecordingError, match="x has letters that are none"):
        matfile.variables(tmp_path / "a.mat", MOST)["x"].text()
