"""Doors for recordings: our own with its event log, those of other programs, and a board's packets."""

import functools
import io
import json
import tempfile
import warnings
from pathlib import Path

import boards
import numpy as np
from fuzz.doors_tables import wired
from fuzz.guard import LARGEST_INPUT, door, one_line
from stillshaft.acquire import conversion, exchange, hookup, recording, serialline
from stillshaft.acquire.recording import RecordingError
from stillshaft.acquire.source import SourceLost
from stillshaft.dsp import tables
from stillshaft.ui import analysis

_MOST_FRAMES = 100 * LARGEST_INPUT  # read of a recording: what a file of that size can hold, compressed too


@functools.cache
def _wired() -> hookup.Hookup:
    return hookup.hookup_from(tables.parsed(wired().decode()))


@functools.cache
def _samples() -> np.ndarray:
    rng = np.random.default_rng(1)
    at = np.arange(600)
    return np.column_stack([(at % 100 < 5) * 0.5, 0.1 * np.cos(at / 16.0), 0.05 * rng.standard_normal(600)]).astype(
        "f4"
    )


@functools.cache
def whole() -> tuple[bytes, bytes]:
    """A recording of a second with its event log, long enough to be analysed."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "a.au")
        recorder = recording.Recorder(path, 4800.0, ["pulse", "A", "B"], "card", hookup.hookup_from(PLAIN).table)
        for _ in range(8):
            recorder.write(_samples())
        recorder.close(complete=True)
        return path.read_bytes(), recording.events_path(path).read_bytes()


PLAIN = {
    "format": 1,
    "pulse": {"input": 1},
    "point": [
        {"name": name, "input": n, "quantity": "velocity", "sensitivity": "4 mV/(mm/s)"}
        for n, name in ((2, "A"), (3, "B"))
    ],
}


@functools.cache
def written(suffix: str) -> bytes:
    """A valid recording in a format, as this program writes it."""
    with tempfile.TemporaryDirectory() as folder:
        source, target = Path(folder, "a.au"), Path(folder, "b" + suffix)
        recorder = recording.Recorder(source, 4800.0, ["pulse", "A", "B"], "card", _wired().table)
        recorder.write(_samples()[:400])
        recorder.write(_samples()[400:], lost_before=None if suffix in (".flac", ".wav") else 30)
        recorder.close(complete=True)
        if suffix == ".au":
            return source.read_bytes()
        if suffix == ".events.jsonl":
            return recording.events_path(source).read_bytes()
        conversion.convert(source, target, _wired())
        return target.read_bytes()


@functools.cache
def _hdf5() -> list[bytes]:
    """Compressed and plain, and what says far more than it holds."""
    import h5py

    made = []
    for shape, options in (
        ((600, 3), {"compression": "gzip", "chunks": (100, 3)}),
        ((600, 3), {}),
        ((3000, 2), {"chunks": (3000, 2)}),
    ):
        file = io.BytesIO()
        with h5py.File(file, "w") as written_to:
            data = written_to.create_dataset("samples", shape, "f4", **options)
            data.attrs["rate_hz"] = 4800.0
            about = json.dumps({"names": ["a", "b"], "hookup": _wired().table}).encode()
            written_to["about"] = np.frombuffer(about, dtype=np.uint8)
            data[:] = _samples()[0, 0]
        made.append(file.getvalue())
    return made


def read_through(path: Path) -> None:
    """Open it and read it to its end, as every verb does."""
    with exchange.open_any(path, _wired()) as reader:
        assert np.isfinite(reader.rate_hz)
        assert reader.rate_hz > 0.0
        assert 1 <= reader.channels <= recording.MOST_CHANNELS
        frames = 0
        for block in reader.blocks():
            assert block.samples.shape[1] == reader.channels
            frames += len(block.samples)
            assert frames * reader.channels <= _MOST_FRAMES, "holds more samples than its bytes can"
        if reader.hookup is not None:
            hookup.hookup_from(reader.hookup)


def _sound(container: str, encoding: str) -> bytes:
    """A recording as another program writes it."""
    import soundfile

    file = io.BytesIO()
    soundfile.write(file, _samples(), 4800, format=container, subtype=encoding)
    return file.getvalue()


def _mats() -> list[bytes]:
    """Packed, and as another program writes it."""
    from scipy.io import savemat

    made = [written(".mat")]
    for samples, options in (
        (_samples().astype("f8"), {"do_compression": True}),
        ((1000.0 * _samples()).astype("i2"), {}),
        (_samples(), {"format": "4"}),
    ):
        file = io.BytesIO()
        savemat(file, {"samples": samples, "rate_hz": 4800.0}, **options)
        made.append(file.getvalue())
    return made


def _uffs() -> list[bytes]:
    """As this program writes it, packed, and as text."""
    import pyuff

    made = [written(".uff")]
    for binary in (1, 0):
        with tempfile.TemporaryDirectory() as folder, warnings.catch_warnings():
            warnings.simplefilter("ignore", ResourceWarning)  # it opens the file twice
            path = Path(folder, "a.uff")
            written_to = pyuff.UFF(str(path))
            for number in range(2):
                data = _samples()[:200, number].astype("f8")
                about = pyuff.prepare_58(
                    binary=binary, func_type=1, abscissa_spacing=1, abscissa_inc=1 / 4800, abscissa_min=0.0,
                    rsp_node=number, rsp_dir=1, ref_node=1, ref_dir=1, num_pts=len(data), data=data,
                    x=np.arange(len(data)) / 4800, ordinate_spec_data_type=8, abscissa_spec_data_type=17,
                    ord_data_type=4, orddenom_spec_data_type=0, z_axis_spec_data_type=0,
                    id1="a", id2="b", id3="c", id4="d", id5="e",
                )  # fmt: skip
                written_to.write_sets(about, "overwrite" if number == 0 else "add")
            made.append(path.read_bytes())
    return made


_SOUNDS = {
    ".wav": (("WAV", "PCM_16"), ("WAVEX", "PCM_24"), ("WAV", "FLOAT"), ("RF64", "DOUBLE")),
    ".flac": (("FLAC", "PCM_24"), ("FLAC", "PCM_S8")),
    ".au": (("AU", "PCM_16"), ("AU", "ULAW"), ("AU", "DOUBLE")),
    ".caf": (("CAF", "PCM_24"), ("CAF", "ALAC_16"), ("AIFF", "PCM_16"), ("W64", "FLOAT"), ("NIST", "PCM_16"),
             ("OGG", "VORBIS"), ("MAT5", "PCM_32"), ("IRCAM", "FLOAT"), ("PVF", "PCM_16"), ("PAF", "PCM_24")),
}  # fmt: skip
_MORE_SEEDS = {".h5": _hdf5, ".mat": _mats, ".uff": _uffs}


def _seeds(suffix: str) -> list[bytes]:
    """Valid recordings of a suffix, of this program and of others."""
    own = [written(suffix)] if suffix in conversion.WRITTEN else []
    sounds = [_sound(*kind) for kind in _SOUNDS.get(suffix, ())]
    return _MORE_SEEDS[suffix]() if suffix in _MORE_SEEDS else [*own, *sounds]


def _door(name: str, suffix: str, weight: float) -> None:
    @door(
        name,
        "bytes",
        lambda: _seeds(suffix),
        RecordingError,
        hookup.HookupError,
        weight=weight,
    )
    def enter(data: bytes, room: Path) -> None:
        (room / f"a{suffix}").write_bytes(data)
        read_through(room / f"a{suffix}")


for _name, _suffix, _weight in (
    ("recording AU", ".au", 2),
    ("recording WAV", ".wav", 2),
    ("recording FLAC", ".flac", 2),
    ("recording CSV", ".csv", 2),
    ("recording HDF5", ".h5", 2),
    ("recording MAT", ".mat", 2),
    ("recording UFF", ".uff", 2),
    ("recording of another kind", ".caf", 2),
):
    _door(_name, _suffix, _weight)


def _csv() -> list[bytes]:
    rows = "\n".join(f"{n / 4800:.9f};{0.1 * n % 1:.3f};0,5;1" for n in range(50)).replace(".", ",")
    return [b"# rate = 4800 Hz\n" + b"1,2,3\n" * 60, rows.encode(), b"a\tb\tc\n" + b"1e-3\t2\t3\n" * 40]


@door("recording as a table", "bytes", _csv, RecordingError, hookup.HookupError, weight=1.5)
def table_with_times(data: bytes, room: Path) -> None:
    (room / "a.txt").write_bytes(data)
    read_through(room / "a.txt")


@functools.cache
def _tdms() -> list[bytes]:
    """Channel after channel, and all of them in several segments."""
    from nptdms import ChannelObject, TdmsWriter

    about, kinds = {"wf_increment": 1 / 4800, "unit_string": "V"}, ("f8", "f4", "i2")
    apart, together = io.BytesIO(), io.BytesIO()
    with TdmsWriter(apart) as writer:
        for number in range(3):
            writer.write_segment([ChannelObject("g", f"c{number}", _samples()[:200, number].astype("f8"), about)])
    with TdmsWriter(together) as writer:
        for at in range(0, 200, 50):
            columns = [_samples()[at : at + 50, number].astype(kinds[number]) for number in range(3)]
            writer.write_segment([ChannelObject("g", f"c{n}", column, about) for n, column in enumerate(columns)])
    return [apart.getvalue(), together.getvalue()]


@door("recording TDMS", "bytes", _tdms, RecordingError, hookup.HookupError, weight=2)
def tdms(data: bytes, room: Path) -> None:
    (room / "a.tdms").write_bytes(data)
    read_through(room / "a.tdms")


def _logs() -> list[bytes]:
    # a checksum is no part of these lines: what the record's edits add to them is one more key
    return [written(".events.jsonl")]


@door("event log", "record", _logs, RecordingError, hookup.HookupError, weight=2)
def event_log(data: bytes, room: Path) -> None:
    path = room / "a.au"
    path.write_bytes(written(".au"))
    recording.events_path(path).write_bytes(data)
    device = recording.device_of(path)
    assert isinstance(device, str)
    with recording.open_recording(path) as reader:
        frames = sum(len(block.samples) for block in reader.blocks())
        assert frames == 600
        assert len(reader.gaps) == len(reader.lost)
        assert all(np.isfinite(reader.skew_s))
        if reader.hookup is not None:
            json.dumps(reader.hookup, default=str)


@door(
    "recording, measured",
    "bytes",
    lambda: [written(".au"), written(".csv")],
    RecordingError,
    hookup.HookupError,
    ValueError,
    weight=0.7,
)
def measured(data: bytes, room: Path) -> None:
    path = room / ("a.au" if data[:4] == b".snd" else "a.csv")
    path.write_bytes(data)
    try:
        found = analysis.measure_recording(path, _wired())
    except ValueError as error:
        assert type(error).__module__.startswith("stillshaft."), type(error)  # noqa: PT017 - a door may raise or not
        raise
    assert all(np.isfinite(point.z) for point in found.points)
    for reason in found.reasons:
        one_line(reason)


@door(
    "recording, converted",
    "bytes",
    lambda: [*(written(s) for s in (".au", ".csv", ".mat")), _hdf5()[0]],
    RecordingError,
    hookup.HookupError,
    weight=0.7,
)
def converted(data: bytes, room: Path) -> None:
    suffix = (
        ".au" if data[:4] == b".snd" else ".mat" if data[:6] == b"MATLAB" else ".h5" if data[1:4] == b"HDF" else ".csv"
    )
    path, target = room / f"a{suffix}", room / "b.wav"
    path.write_bytes(data)
    try:
        conversion.convert(path, target, None if suffix == ".h5" else _wired())
    except RecordingError:
        assert [p.name for p in room.iterdir()] == [path.name]
        raise
    assert sorted(p.name for p in room.iterdir()) == sorted([path.name, "b.wav"])


def _packets() -> list[bytes]:
    hello = boards.hello(3, 4800.0, "bench board ②")
    data = [boards.data(n, np.arange(n, n + 30).reshape(10, 3)) for n in range(0, 60, 10)]
    return [b"\0" + hello + b"".join(data[:3]) + hello + b"".join(data[3:])]


@door("serial packets", "bytes", _packets, SourceLost, weight=3)
def serial_packets(data: bytes, room: Path) -> None:
    reader = serialline.PacketReader()
    samples = 0
    for start in range(0, len(data), 700):
        for block in reader.feed(data[start : start + 700]):
            assert np.isfinite(block.samples).all()
            assert np.isfinite(block.rate_hz)
            samples += block.samples.size
    assert samples <= len(data)
    if reader.board is not None:
        one_line(f"serial:{reader.board.name}")


@door("a serial packet", "bytes", lambda: [_packets()[0], b"H\x01\x03\x02\x00\x00\x00\x01name"], SourceLost, weight=2)
def serial_packet(data: bytes, room: Path) -> None:
    reader = serialline.PacketReader()
    # what checks, whatever it says
    for payload in (b"H\x01\x02\x02\x00\xc0\xd2\x00x", data[:3000], data[3:3003], b"D\0\0\0\0\0" + data[:400]):
        reader.feed(b"\0" + boards.packet(payload or b"\1"))
    if reader.board is not None:
        one_line(f"serial:{reader.board.name}")
