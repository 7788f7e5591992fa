"""Recordings of other programs read: tables, HDF5, MAT, universal files and TDMS, beside all that libsndfile knows.

A table holds values: volts at the inputs, or what the hook-up says with `scaled = true`, the SI unit of each point.
They become readings in units of full scale here, so that everything behind is the same for every file. What
`conversion` writes to HDF5 and MAT holds readings, and says so.
"""

from __future__ import annotations

import json
import logging
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from types import TracebackType
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.acquire.hookup import Hookup
from stillshaft.acquire.recording import (
    RecordingError,
    RecordingReader,
    check_size,
    check_there,
    open_recording,
)
from stillshaft.acquire.source import Block
from stillshaft.dsp import units

Real = NDArray[np.float64]

TABLES = (".csv", ".tsv", ".txt")
OTHERS = (".h5", ".hdf5", ".mat", ".uff", ".unv", ".tdms")
_BLOCK = 65_536
MOST_IN_MEMORY = 1 << 31  # bytes of a format that is only read as a whole
_LONGEST_LINE = 20_000  # letters of a table's line
_MOST_PER_BYTE = 1000  # samples that a byte of a compressed file stands for
_MOST_ABOUT = 2**20  # bytes of what stands beside the samples
_LARGEST_CHUNK = 2**28  # bytes that a compressed file is unpacked by
_UNEVEN = 0.01
_RATE = re.compile(r"rate\s{0,9}(?:=\s{0,9})?([\d.]{1,30})\s{0,9}Hz")
EXTRA = "reading it needs {module}: pip install 'stillshaft[files]'"


@dataclass
class TableReader:
    """A file of values, opened; the same to use as `RecordingReader`."""

    path: Path
    rate_hz: float
    channels: int
    frames: int
    hookup: dict[str, Any] | None
    _slices: Callable[[int], Iterator[Real]] = field(repr=False)  # by frames at a time
    _per_value: Real = field(repr=False)  # readings of one unit of each input
    _close: Callable[[], None] = field(repr=False, default=lambda: None)
    gaps: tuple[int, ...] = ()
    lost: tuple[int, ...] = ()
    skew_s: tuple[float, ...] = ()

    def blocks(self, frames: int = _BLOCK) -> Iterator[Block]:
        """Blocks of so many frames and fewer, to the end."""
        at = 0
        slices = self._slices(frames)
        while True:
            try:
                values = next(slices, None)
            except RecordingError:
                raise
            except Exception as error:  # noqa: BLE001 - as at the door: a file may be damaged anywhere
                raise RecordingError(f"{self.path}: cannot be read from frame {at} on ({_said(error)})") from None
            if values is None:
                return
            with np.errstate(over="ignore"):
                yield Block(at, self.rate_hz, np.asarray(values * self._per_value, dtype=np.float32))
            at += len(values)

    def __enter__(self) -> TableReader:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self._close()


Reader = RecordingReader | TableReader


def open_any(path: Path, hookup: Hookup | None = None) -> Reader:
    """Open a recording of any kind that is known. Raises RecordingError in one line that names the file."""
    suffix = path.suffix.lower()
    if suffix not in (*TABLES, *OTHERS):
        return open_recording(path)
    check_there(path)
    opener = {".mat": _mat, ".uff": _universal, ".unv": _universal, ".tdms": _tdms}.get(suffix, _hdf5)
    opener = _table if suffix in TABLES else opener
    try:
        reader = opener(path, hookup)
    except RecordingError:
        raise
    except ModuleNotFoundError as error:
        raise RecordingError(f"{path}: {EXTRA.format(module=error.name)}") from None
    except Exception as error:  # noqa: BLE001 - readers of other formats raise anything for a damaged file
        raise RecordingError(f"{path}: is damaged or no {suffix} file of samples ({_said(error)})") from None
    try:
        check_size(path, reader.channels, reader.rate_hz)
    except RecordingError:
        reader.__exit__(None, None, None)
        raise
    return reader


def _said(error: Exception) -> str:
    """What a library says of a file, in short."""
    return units.shown(f"{type(error).__name__}: {' '.join(str(error).split())}", 160)


def per_value(hookup: Hookup | None, channels: int) -> Real:
    """Readings that one unit of each input's values makes."""
    factors = np.ones(channels)
    if hookup is None:
        return factors
    scaled = bool(hookup.table.get("scaled", False))
    for point in hookup.points:
        if point.index < channels:
            factors[point.index] = 1.0 / (point.si_per_reading if scaled else point.volts_per_reading)
    return factors


def _checked_size(path: Path) -> None:
    if path.stat().st_size > MOST_IN_MEMORY:
        raise RecordingError(f"{path}: is larger than 2 GiB, and this format is read as a whole: export it in parts")


# tables


def _table(path: Path, hookup: Hookup | None) -> TableReader:
    with open(path, encoding="utf-8-sig", errors="strict") as file:
        head = [file.readline(_LONGEST_LINE) for _ in range(200)]
    if any(len(line) == _LONGEST_LINE for line in head):
        raise RecordingError(f"{path}: has lines of more than {_LONGEST_LINE} letters; is it a table of samples?")
    numbers = [i for i, line in enumerate(head) if re.match(r"\s*[-+]?[\d.]", line)]
    if not numbers:
        raise RecordingError(f"{path}: has no line of numbers among the first {len(head)}")
    first = head[numbers[0]]
    delimiter = next((d for d in (";", "\t") if d in first), "," if "," in first else None)
    comma = delimiter in (";", "\t") and "." not in first and "," in first
    columns = len(first.split(delimiter))
    check_size(path, columns, 1.0)
    said = next((m[1] for line in head[: numbers[0]] if (m := _RATE.search(line))), None)
    settings = {} if hookup is None else hookup.table
    time_column = settings.get("time_column")
    if time_column is not None and not 1 <= time_column <= columns:
        raise RecordingError(f"{path}: time_column {time_column}, but it has {columns} columns")

    def lines(count: int) -> Iterator[Real]:
        with open(path, encoding="utf-8-sig") as file:
            for _ in range(numbers[0]):
                next(file)
            number = numbers[0]
            while rows := [line for _, line in zip(range(count), file, strict=False)]:
                kept = [line.replace(",", ".") if comma else line for line in rows if line.strip()]
                if kept:
                    yield _parsed(path, kept, delimiter, columns, number)
                number += len(rows)

    if time_column is not None:
        rate_hz = _rate_of(path, next(lines(2000))[:, time_column - 1])
    elif (text := settings.get("rate") or (f"{said} Hz" if said else None)) is not None:
        rate_hz = units.parse(text, "Hz", f"{path}: rate")
    else:
        raise RecordingError(
            f'{path}: nothing says the sample rate: put rate = "48000 Hz" or time_column into the hook-up'
        )
    with open(path, "rb") as raw:
        frames = sum(chunk.count(b"\n") for chunk in iter(lambda: raw.read(1 << 20), b"")) - numbers[0]
    return TableReader(path, rate_hz, columns, max(1, frames), None, lines, per_value(hookup, columns))


def _parsed(path: Path, rows: list[str], delimiter: str | None, columns: int, before: int) -> Real:
    try:
        values = np.loadtxt(rows, delimiter=delimiter, ndmin=2)
    except ValueError as error:
        raise RecordingError(f"{path}: lines {before + 1} to {before + len(rows)}: {error}") from None
    if values.shape[1] != columns:
        raise RecordingError(f"{path}: lines from {before + 1} on have {values.shape[1]} columns instead of {columns}")
    return np.asarray(values)


def _rate_of(path: Path, times: Real) -> float:
    steps = np.diff(times)
    if steps.size < 2 or not np.all(steps > 0.0):
        raise RecordingError(f"{path}: its times do not rise: name the right time_column, in seconds")
    step = float(np.median(steps))
    if np.abs(steps / step - 1.0).max() > max(_UNEVEN, 2e-6 / step if step > 0 else 1.0):
        raise RecordingError(f"{path}: its samples are not evenly spaced in time: resample them first")
    return round((times.size - 1) / float(times[-1] - times[0]), 6)


# other formats


def _columns(path: Path, columns: list[Real], rate_hz: float, hookup: Hookup | None, about: Any = None) -> TableReader:
    if len({len(c) for c in columns}) != 1 or not len(columns[0]):
        raise RecordingError(f"{path}: its channels differ in length or are empty: {[len(c) for c in columns]}")
    values = np.column_stack(columns)
    own = isinstance(about, dict)
    factors = np.ones(len(columns)) if own else per_value(hookup, len(columns))

    def slices(count: int) -> Iterator[Real]:
        yield from (values[i : i + count] for i in range(0, len(values), count))

    wiring = about.get("hookup") if own else None
    return TableReader(path, rate_hz, len(columns), len(values), wiring, slices, factors)


def _hdf5(path: Path, hookup: Hookup | None) -> TableReader:
    import h5py

    file = h5py.File(path, "r")
    try:
        if "samples" not in file or "rate_hz" not in file["samples"].attrs or file["samples"].ndim != 2:
            raise RecordingError(
                f'{path}: has no dataset "samples" (frames, inputs) with an attribute rate_hz; it has {", ".join(file)}'
            )
        data = file["samples"]
        _check_own_samples(path, file)
        about = _own_about(path, file)

        def slices(count: int) -> Iterator[Real]:
            yield from (np.asarray(data[i : i + count], dtype=np.float64) for i in range(0, data.shape[0], count))

        factors = np.ones(data.shape[1]) if about is not None else per_value(hookup, data.shape[1])
        wiring = about.get("hookup") if about is not None else None
        rate_hz = float(data.attrs["rate_hz"])
        return TableReader(path, rate_hz, data.shape[1], data.shape[0], wiring, slices, factors, file.close)
    except BaseException:
        file.close()
        raise


def _own_about(path: Path, file: Any) -> dict[str, Any] | None:
    """What this program wrote beside the samples, as bytes: the library never ends with a damaged text of any length."""
    if "about" in file["samples"].attrs:
        raise RecordingError(f"{path}: was written by an early version; convert the recording itself anew")
    if "about" not in file:
        return None
    about = file["about"]
    if about.dtype != np.uint8 or about.ndim != 1 or about.size > _MOST_ABOUT or about.external or about.is_virtual:
        raise RecordingError(f'{path}: its "about" is not what this program writes; it is damaged')
    told = json.loads(about[()].tobytes())
    return told if isinstance(told, dict) else {}


def _check_own_samples(path: Path, file: Any) -> None:
    """Raise RecordingError for samples that lie in another file, are no numbers, or are too many for what holds them."""
    import h5py

    data = file["samples"]
    if type(file.get("samples", getlink=True)) is not h5py.HardLink or data.external or data.is_virtual:
        raise RecordingError(f"{path}: its samples lie in another file; put them into this one")
    if data.dtype.kind not in "iuf" or data.dtype.itemsize > 8:
        raise RecordingError(f"{path}: its samples are no numbers, but {units.shown(data.dtype)}")
    if data.size > _MOST_PER_BYTE * (data.id.get_storage_size() + 1):
        raise RecordingError(f"{path}: says it has {data.shape[0]} frames, more than it can hold; it is damaged")
    if data.chunks is not None and np.prod(data.chunks, dtype=float) * data.dtype.itemsize > _LARGEST_CHUNK:
        raise RecordingError(f"{path}: is packed in chunks of more than 256 MiB; write it in smaller ones")


def _mat(path: Path, hookup: Hookup | None) -> TableReader:
    from stillshaft.acquire import matfile

    _checked_size(path)
    held = matfile.variables(path, MOST_IN_MEMORY)
    if "samples" not in held or "rate_hz" not in held:
        raise RecordingError(
            f"{path}: has no variables samples (frames, inputs) and rate_hz; it has {', '.join(held) or 'none'}"
        )
    shape, kind = held["samples"].shape, held["samples"].kind
    if len(shape) != 2 or kind not in matfile.NUMBERS:
        raise RecordingError(f"{path}: samples must be a table of numbers (frames, inputs), not {kind} {shape}")
    if 8.0 * shape[0] * shape[1] > min(MOST_IN_MEMORY, 8 * _MOST_PER_BYTE * path.stat().st_size):
        raise RecordingError(
            f"{path}: says it has {shape[0]} frames of {shape[1]} inputs, more than can be read as a whole"
        )
    check_size(path, shape[1], 1.0)
    samples, rate_hz = held["samples"].numbers(), held["rate_hz"].numbers()
    if rate_hz.size != 1:
        raise RecordingError(f"{path}: rate_hz must be one number, not {rate_hz.size}")
    about = json.loads(held["about"].text()) if "about" in held else None
    return _columns(path, list(samples.T), float(rate_hz.ravel()[0]), hookup, about)


def _universal(path: Path, hookup: Hookup | None) -> TableReader:
    import pyuff

    _checked_size(path)
    sets = [s for s in _listed(pyuff.UFF(str(path)).read_sets()) if s["type"] == 58 and s["func_type"] == 1]
    if not sets:
        raise RecordingError(f"{path}: has no dataset 58 with a time response")
    steps = {round(float(s["abscissa_inc"]), 15) for s in sets}
    if len(steps) != 1 or not min(steps) > 0.0:
        raise RecordingError(f"{path}: its channels have different sample rates, or uneven ones")
    rate_hz = 1.0 / min(steps)
    if abs(round(rate_hz) - rate_hz) < 1e-5 * rate_hz:  # the format gives six digits of the increment
        rate_hz = float(round(rate_hz))
    return _columns(path, [np.asarray(s["data"]).real for s in sets], rate_hz, hookup)


def _listed(sets: Any) -> list[dict[str, Any]]:
    return sets if isinstance(sets, list) else [sets]


def _tdms(path: Path, hookup: Hookup | None) -> TableReader:
    from nptdms import TdmsFile
    from nptdms.log import log_manager

    log_manager.set_level(logging.CRITICAL)  # it would print what a damaged file holds
    raw = open(path, "rb")  # noqa: SIM115 - closed by the reader
    try:
        file = TdmsFile.open(raw)
    except BaseException:
        raw.close()
        raise
    channels = [c for group in file.groups() for c in group.channels() if len(c)]
    steps = {c.properties.get("wf_increment") for c in channels}
    if not channels or len(steps) != 1 or None in steps:
        raw.close()
        raise RecordingError(f"{path}: its channels are none, or have no common wf_increment")
    frames = min(len(c) for c in channels)
    if frames * len(channels) > path.stat().st_size:
        raw.close()
        raise RecordingError(f"{path}: says it has {frames} frames, more than it can hold; it is damaged")

    def slices(count: int) -> Iterator[Real]:
        for i in range(0, frames, count):
            yield np.column_stack([np.asarray(c[i : min(i + count, frames)], dtype=np.float64) for c in channels])

    rate_hz = round(1.0 / float(next(iter(steps))), 6)
    return TableReader(path, rate_hz, len(channels), frames, None, slices, per_value(hookup, len(channels)), raw.close)
