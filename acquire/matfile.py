"""MAT files of levels 4 and 5, as far as recordings need them: tables of numbers, and texts.

The format is that of MathWorks' document "MAT-File Format" (from memory). scipy writes these files here but does not read
them: a damaged type number makes its compiled reader look where nothing is, which ends the whole program.
"""

from __future__ import annotations

import math
import os
import struct
import zlib
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import BinaryIO

import numpy as np
from numpy.typing import NDArray
from stillshaft.acquire.recording import RecordingError
from stillshaft.dsp.units import shown

_MATRIX, _COMPRESSED = 14, 15
_STORED = {1: "i1", 2: "u1", 3: "i2", 4: "u2", 5: "i4", 6: "u4", 7: "f4", 9: "f8", 12: "i8", 13: "u8"}
_TEXTS = {1: "latin-1", 2: "latin-1", 4: "utf-16", 16: "utf-8", 17: "utf-16", 18: "utf-32"}
_KINDS = (
    "unknown", "cell", "struct", "object", "char", "sparse", "double", "single",
    "int8", "uint8", "int16", "uint16", "int32", "uint32", "int64", "uint64",
)  # fmt: skip
NUMBERS = _KINDS[6:]
_STORED_4 = ("f8", "f4", "i4", "i2", "u2", "u1")
_KINDS_4 = ("double", "single", "int32", "int16", "uint16", "uint8")
_COMPLEX = 0x0800
_MOST_OF_HEAD = 4096  # bytes of flags, dimensions or a name
_MOST_VARIABLES = 10_000
_PIECE = 65_536


@dataclass(frozen=True)
class Variable:
    """A variable of a file: its class such as "double" or "char", its shape, and how what it holds is read."""

    name: str
    kind: str
    shape: tuple[int, ...]
    _values: Callable[[], NDArray[np.generic]]
    _text: Callable[[], str]

    def numbers(self) -> NDArray[np.float64]:
        """The numbers in their shape. Raises RecordingError where they are not all there."""
        return np.asarray(self._values(), dtype=np.float64).reshape(self.shape, order="F")

    def text(self) -> str:
        """The text of a row of letters. Raises RecordingError where it is none."""
        return self._text()


Read = Callable[[int], bytes]  # exactly so many bytes


def variables(path: Path, most_bytes: int) -> dict[str, Variable]:
    """The variables by name; one that holds more than `most_bytes` is listed, but cannot be read. Raises RecordingError."""
    with open(path, "rb") as file:
        head = file.read(128)
        if head[:4].count(0):  # level 5 begins with a text
            found = list(_level_4(path, file, most_bytes))
        elif head[124:126] in (b"\0\2", b"\2\0") or head[:8] == b"\x89HDF\r\n\x1a\n":
            raise RecordingError(
                f"{path}: is MAT of level 7.3; save it as level 7, or as HDF5 with samples and rate_hz"
            )
        elif head[126:128] not in (b"IM", b"MI"):
            raise _damaged(path, "it has no header of level 5")
        else:
            found = list(_level_5(path, file, "<" if head[126:128] == b"IM" else ">", most_bytes))
    return {v.name: v for v in found}


def _damaged(path: Path, why: str) -> RecordingError:
    return RecordingError(f"{path}: is damaged or no .mat file of samples ({why})")


def _reader(path: Path, file: BinaryIO) -> Read:
    size = os.fstat(file.fileno()).st_size

    def read(count: int) -> bytes:
        if count > size - file.tell():
            raise _damaged(path, "it ends too early")
        return file.read(count)

    return read


def _unpacking(path: Path, packed: bytes) -> Read:
    """Reads what is packed no further than asked for."""
    inflate, left, at = zlib.decompressobj(), b"", 0

    def read(count: int) -> bytes:
        nonlocal left, at
        pieces, wanted = [], count
        while wanted:
            if not left:
                left, at = packed[at : at + _PIECE], at + _PIECE
            if not left or inflate.eof:
                raise _damaged(path, "it ends too early")
            try:
                piece = inflate.decompress(left, wanted)
            except zlib.error:
                raise _damaged(path, "what is packed in it cannot be unpacked") from None
            left = inflate.unconsumed_tail
            pieces.append(piece)
            wanted -= len(piece)
        return b"".join(pieces)

    return read


# level 5


def _level_5(path: Path, file: BinaryIO, order: str, most_bytes: int) -> Iterator[Variable]:
    size, at = os.fstat(file.fileno()).st_size, 128
    read = _reader(path, file)
    for _ in range(_MOST_VARIABLES):
        if at + 8 > size:
            return
        file.seek(at)
        kind, count = struct.unpack(order + "II", read(8))
        if at + 8 + count > size:
            raise _damaged(path, "it ends too early")
        if kind in (_MATRIX, _COMPRESSED):
            yield _variable(path, _begun(path, read, order, kind, count), order, at, most_bytes)
        at += 8 + count + (0 if kind == _COMPRESSED else -count % 8)
    raise _damaged(path, f"it has more than {_MOST_VARIABLES} variables")


def _begun(path: Path, read: Read, order: str, kind: int, count: int) -> Read:
    """Reads what a matrix holds, packed or not, from behind its tag on."""
    if kind == _MATRIX:
        return read
    inside = _unpacking(path, read(count))
    if struct.unpack(order + "II", inside(8))[0] != _MATRIX:
        raise _damaged(path, "something other than a variable is packed in it")
    return inside


def _tag(read: Read, order: str) -> tuple[int, int, bytes | None]:
    """Type and bytes of an element; a small one comes with its tag."""
    first = read(4)
    word = struct.unpack(order + "I", first)[0]
    if word >> 16:
        return word & 0xFFFF, word >> 16, read(4)
    return word, struct.unpack(order + "I", read(4))[0], None


def _element(path: Path, read: Read, order: str, most: int) -> tuple[int, bytes]:
    kind, count, small = _tag(read, order)
    if count > (most if small is None else 4):
        raise _damaged(path, f"a part of a variable has {count} bytes, at most {most} can be")
    if small is not None:
        return kind, small[:count]
    data = read(count)
    read(-count % 8)
    return kind, data


def _headed(path: Path, read: Read, order: str) -> tuple[str, int, tuple[int, ...]]:
    """Name, flags with the class in their lowest byte, and shape of a variable."""
    _, flags = _element(path, read, order, _MOST_OF_HEAD)
    _, dimensions = _element(path, read, order, _MOST_OF_HEAD)
    _, name = _element(path, read, order, _MOST_OF_HEAD)
    if len(flags) != 8 or len(dimensions) % 4 or len(dimensions) < 8:
        raise _damaged(path, "a variable has no class or no shape")
    shape = tuple(int(n) for n in np.frombuffer(dimensions, order + "i4"))
    if min(shape) < 0:
        raise _damaged(path, "a variable has a shape below 0")
    return shown(name.decode("latin-1")), struct.unpack(order + "I", flags[:4])[0], shape


def _variable(path: Path, read: Read, order: str, at: int, most_bytes: int) -> Variable:
    name, flags, shape = _headed(path, read, order)
    kind = _KINDS[flags & 0xFF] if flags & 0xFF < len(_KINDS) else "unknown"

    def content() -> tuple[int, bytes]:
        with open(path, "rb") as file:
            file.seek(at)
            again = _reader(path, file)
            tag, count = struct.unpack(order + "II", again(8))
            inside = _begun(path, again, order, tag, count)
            _headed(path, inside, order)
            stored, data = _element(path, inside, order, most_bytes)
        return stored, data

    def values() -> NDArray[np.generic]:
        stored, data = content()
        if kind not in NUMBERS or flags & _COMPLEX or stored not in _STORED:
            raise _damaged(path, f"{name} has no real numbers")
        return _counted(path, data, order + _STORED[stored], shape, name)

    def text() -> str:
        stored, data = content()
        if kind != "char" or stored not in _TEXTS:
            raise _damaged(path, f"{name} is no text")
        wide = {"utf-16": 2, "utf-32": 4}.get(_TEXTS[stored], 0)
        ending = ("-le" if order == "<" else "-be") if wide else ""
        return data.decode(_TEXTS[stored] + ending, "replace")

    return Variable(name, kind, shape, values, text)


def _counted(path: Path, data: bytes, kind: str, shape: tuple[int, ...], name: str) -> NDArray[np.generic]:
    """The numbers in bytes, which must be as many as the shape says."""
    if len(data) != math.prod(shape) * np.dtype(kind).itemsize:
        raise _damaged(path, f"{name} has {len(data)} bytes for a shape of {' × '.join(map(str, shape))}")
    return np.frombuffer(data, kind)


# level 4


def _level_4(path: Path, file: BinaryIO, most_bytes: int) -> Iterator[Variable]:
    size, at = os.fstat(file.fileno()).st_size, 0
    read = _reader(path, file)
    for _ in range(_MOST_VARIABLES):
        if at + 20 > size:
            return
        file.seek(at)
        head = read(20)
        order = "<" if struct.unpack("<I", head[:4])[0] < 5000 else ">"
        coded, rows, columns, imaginary, length = struct.unpack(order + "5I", head)
        numbers, what = coded // 10 % 10, coded % 10
        if coded not in range(0, 5000) or numbers >= len(_STORED_4) or not 0 < length <= _MOST_OF_HEAD:
            raise _damaged(path, "a variable's head is none of level 4")
        name = shown(read(length).rstrip(b"\0").decode("latin-1"))
        stored = order + _STORED_4[numbers]
        count = rows * columns * np.dtype(stored).itemsize * (2 if imaginary else 1)
        kind = "sparse" if what > 1 else "char" if what else _KINDS_4[numbers]
        yield _variable_4(
            path, name, "complex" if imaginary else kind, (rows, columns), stored, at + 20 + length, most_bytes
        )
        at += 20 + length + count
    raise _damaged(path, f"it has more than {_MOST_VARIABLES} variables")


def _variable_4(
    path: Path, name: str, kind: str, shape: tuple[int, int], stored: str, at: int, most_bytes: int
) -> Variable:
    def content() -> NDArray[np.generic]:
        count = math.prod(shape) * np.dtype(stored).itemsize
        if count > most_bytes:
            raise _damaged(path, f"{name} has {count} bytes, at most {most_bytes} can be")
        with open(path, "rb") as file:
            file.seek(at)
            return _counted(path, _reader(path, file)(count), stored, shape, name)

    def values() -> NDArray[np.generic]:
        if kind not in NUMBERS:
            raise _damaged(path, f"{name} has no real numbers")
        return content()

    def text() -> str:
        if kind != "char":
            raise _damaged(path, f"{name} is no text")
        codes = np.asarray(content(), dtype=np.float64)
        if not ((codes >= 0.0) & (codes < 256.0)).all():
            raise _damaged(path, f"{name} has letters that are none")
        return codes.astype(np.uint8).tobytes().decode("latin-1")

    return Variable(name, kind, shape, values, text)
