"""Recordings written for other programs: WAV, FLAC, CSV, HDF5, MAT and universal files, or AU from any of what is read.

A file is whole or not there. `exchange` reads all of them again.
"""

from __future__ import annotations

import contextlib
import io
import json
import os
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.acquire.exchange import EXTRA, MOST_IN_MEMORY, Reader, open_any, per_value
from stillshaft.acquire.hookup import Hookup
from stillshaft.acquire.recording import Recorder, RecordingError, events_path
from stillshaft.dsp.tables import DISK_FULL

WRITTEN = (".wav", ".flac", ".au", ".csv", ".h5", ".mat", ".uff")
_WAV_LIMIT = 4_000_000_000


def convert(source: Path, target: Path, hookup: Hookup | None) -> int:
    """Write a recording in the format of the target's suffix, whole or not at all; frames written.

    Tables and universal files get volts where a hook-up says how many, HDF5 and MAT readings with the hook-up beside
    them. Raises RecordingError.
    """
    suffix = target.suffix.lower()
    if suffix not in WRITTEN:
        raise RecordingError(f"{target}: is written as {', '.join(WRITTEN)}; end the name so")
    if target.exists():
        raise RecordingError(f"{target}: is there already; choose a new name")
    with open_any(source, hookup) as reader:
        part = target.with_name(f".{target.stem}.part{suffix}")
        if hookup is not None:
            hookup.refuse_fewer_inputs(reader.channels, str(source))
        table = hookup.table if hookup is not None else reader.hookup
        names = (
            [f"input {i + 1}" for i in range(reader.channels)]
            if hookup is None
            else hookup.channel_names(reader.channels)
        )
        try:
            if suffix == ".au":
                _to_recording(reader, part, target, names, table)
                return reader.frames
            writer = {".csv": _to_table, ".h5": _to_hdf5, ".mat": _to_mat, ".uff": _to_universal}.get(suffix, _to_sound)
            writer(reader, part, names, table, hookup)
            os.replace(part, target)
        except RecordingError as error:
            raise RecordingError(str(error).replace(str(part), str(target))) from None
        except ModuleNotFoundError as error:
            raise RecordingError(f"{target}: {EXTRA.format(module=error.name)}") from None
        except (OSError, RuntimeError) as error:  # libsndfile's errors are the latter
            raise RecordingError(f"{target}: cannot be written: {_why(error)}") from None
        finally:
            for left in (part, events_path(part)):
                with contextlib.suppress(OSError):
                    left.unlink(missing_ok=True)
        return reader.frames


def _why(error: OSError | RuntimeError) -> str:
    if isinstance(error, OSError) and error.errno in DISK_FULL:
        return "the disk is full; choose another place"
    why = getattr(error, "strerror", None) or " ".join(str(error).split()).rsplit(": ", 1)[-1]
    return why if why != "System error." else "the disk is full or refuses it; choose another place"


def _to_recording(reader: Reader, part: Path, target: Path, names: list[str], table: dict[str, Any] | None) -> None:
    log = events_path(target)
    if log.exists():
        raise RecordingError(f"{log}: is there already; choose a new name")
    for left in (part, events_path(part)):  # of a conversion that was killed
        left.unlink(missing_ok=True)
    recorder = Recorder(part, reader.rate_hz, names, f"converted from {reader.path.name}", table)
    try:
        for block in reader.blocks():
            recorder.write(block.samples, lost_before=block.lost_before)
    except BaseException:
        with contextlib.suppress(RecordingError):
            recorder.close(complete=False, reason="not converted to the end")
        raise
    recorder.close(complete=True)
    os.replace(events_path(part), log)
    try:
        os.replace(part, target)
    except BaseException:
        log.unlink(missing_ok=True)
        raise


def _to_sound(
    reader: Reader, part: Path, names: list[str], table: dict[str, Any] | None, hookup: Hookup | None
) -> None:
    import soundfile

    flac = part.suffix == ".flac"
    large = 4 * reader.frames * reader.channels > _WAV_LIMIT
    kind, coding = ("FLAC", "PCM_24") if flac else ("RF64" if large else "WAV", "FLOAT")
    with soundfile.SoundFile(part, "w", round(reader.rate_hz), reader.channels, coding, format=kind) as file:
        for block in reader.blocks():
            if flac and np.abs(block.samples).max() > 1.0:
                raise RecordingError(f"{reader.path}: has samples beyond full scale, which FLAC cannot hold; take .wav")
            file.write(block.samples)


def _to_table(
    reader: Reader, part: Path, names: list[str], table: dict[str, Any] | None, hookup: Hookup | None
) -> None:
    volts = 1.0 / per_value(_unscaled(hookup), reader.channels)
    with open(part, "w", encoding="utf-8") as file:
        file.write(f"# rate = {reader.rate_hz:.12g} Hz, {'volts' if hookup is not None else 'full scale = 1'}\n")
        file.write(",".join('"' + n.replace('"', "'") + '"' for n in names) + "\n")
        for block in reader.blocks():
            np.savetxt(file, block.samples * volts, fmt="%.9g", delimiter=",")


def _unscaled(hookup: Hookup | None) -> Hookup | None:
    if hookup is None or not hookup.table.get("scaled", False):
        return hookup
    return Hookup(hookup.pulse, hookup.points, hookup.display, {**hookup.table, "scaled": False})


def _whole(reader: Reader) -> NDArray[np.float32]:
    if 4 * reader.frames * reader.channels > MOST_IN_MEMORY:
        raise RecordingError(
            f"{reader.path}: more than 2 GiB of samples: take .h5, .wav or .csv, which are written in blocks"
        )
    return np.concatenate([b.samples for b in reader.blocks()])


def _about(names: list[str], table: dict[str, Any] | None) -> str:
    return json.dumps({"values": "full scale = 1", "names": names, "hookup": table}, default=str)


class _KeepsItsError(io.FileIO):
    """A file that keeps its first error and takes what comes after it: the HDF5 library crashes where a write fails."""

    error: OSError | None = None

    def write(self, data: Any) -> int:
        whole = rest = memoryview(data).cast("B")
        try:
            while rest and self.error is None:
                rest = rest[super().write(rest) :]
        except OSError as error:
            self.error = error
        return len(whole)

    def truncate(self, size: int | None = None) -> int:
        try:
            return super().truncate(size)
        except OSError as error:
            self.error = self.error or error
            return size or 0


def _to_hdf5(reader: Reader, part: Path, names: list[str], table: dict[str, Any] | None, hookup: Hookup | None) -> None:
    import h5py

    with _KeepsItsError(part, "w+") as place:
        with h5py.File(place, "w") as file:
            data = file.create_dataset(
                "samples",
                (0, reader.channels),
                "f4",
                maxshape=(None, reader.channels),
                chunks=(16_384, reader.channels),
            )
            data.attrs["rate_hz"] = reader.rate_hz
            file["about"] = np.frombuffer(_about(names, table).encode(), dtype=np.uint8)
            for block in reader.blocks():
                if place.error is not None:
                    break
                at = data.shape[0]
                data.resize(at + len(block.samples), axis=0)
                data[at:] = block.samples
        if place.error is not None:
            raise place.error


def _to_mat(reader: Reader, part: Path, names: list[str], table: dict[str, Any] | None, hookup: Hookup | None) -> None:
    from scipy.io import savemat

    savemat(part, {"samples": _whole(reader), "rate_hz": reader.rate_hz, "about": _about(names, table)})


def _to_universal(
    reader: Reader, part: Path, names: list[str], table: dict[str, Any] | None, hookup: Hookup | None
) -> None:
    import pyuff

    values = _whole(reader).astype(np.float64) / per_value(_unscaled(hookup), reader.channels)
    file = pyuff.UFF(str(part))
    step_s = 1.0 / reader.rate_hz
    for number, name in enumerate(names):
        entry = pyuff.prepare_58(
            func_type=1, rsp_node=number + 1, rsp_dir=0, ref_node=0, ref_dir=0, data=values[:, number],
            x=np.arange(len(values)) * step_s, id1=name[:80], rsp_ent_name="input", ref_ent_name="NONE",
            abscissa_spacing=1, abscissa_min=0.0, abscissa_inc=step_s, ordinate_spec_data_type=0,
            orddenom_spec_data_type=0, z_axis_spec_data_type=0,
        )  # fmt: skip
        try:
            file.write_sets(entry, "overwrite" if number == 0 else "add")
        except Exception as error:  # noqa: BLE001 - the library says so whatever it was, a full disk as well
            why = error.__context__
            raise (why if isinstance(why, OSError) else OSError(str(error))) from None
