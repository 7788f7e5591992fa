"""Doors for what measures: the signal check of a recording, the arguments of check and capture, recordings measured again."""

import contextlib
import dataclasses
import functools
import json
import tempfile
from collections.abc import Callable, Iterator
from concurrent.futures import Future
from pathlib import Path
from typing import Any

import numpy as np
from fuzz.doors_recordings import PLAIN, whole, written
from fuzz.doors_tables import NEIGHBOURS, wired
from fuzz.guard import door, making, one_line
from fuzz.verbs import run_verb, texts_of
from stillshaft.acquire import hookup, keeper, process, recording, replay, simulated, soundcard
from stillshaft.acquire.recording import RecordingError
from stillshaft.acquire.source import Block, SourceError
from stillshaft.dsp import check as checks
from stillshaft.solver.folder import sha256_of
from stillshaft.solver.job import Job
from stillshaft.solver.replay import run_fields
from stillshaft.ui import analysis, job_checks, library, reprocess, taking
from stillshaft.ui.crew import Plain, Work

_LONGEST_S = 0.4  # of what a source gives here: an end that comes by itself


@functools.cache
def _wired() -> hookup.Hookup:
    return hookup.hookup_from(PLAIN)


# the signal check


def _to_check() -> list[bytes]:
    """A good recording, and one whose samples are no signals."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "a.au")
        recorder = recording.Recorder(path, 4800.0, ["pulse", "A", "B"], "card", _wired().table)
        samples = np.tile(np.array([np.nan, np.inf, -np.inf, 3e38, -3e38, 1e-45, 0.0], dtype="f4"), 1200)
        recorder.write(samples[: 2799 * 3].reshape(-1, 3))
        recorder.close(complete=True)
        return [whole()[0], path.read_bytes(), written(".csv")]


@door("recording, its signals checked", "bytes", _to_check, RecordingError, hookup.HookupError, job_checks.CheckError)
def checked(data: bytes, room: Path) -> None:
    path = room / ("a.au" if data[:4] == b".snd" else "a.csv")
    path.write_bytes(data)
    nameplate_rpm = (None, 2880.0, 1.0, 1e300)[len(data) % 4]
    found = job_checks.signals(path, _wired(), nameplate_rpm, stopped=len(data) % 5 == 0)
    assert found.trusted == (not found.reasons)
    for text in (*found.lines, *found.reasons):
        one_line(text)
    assert {f["weight"] for f in found.figures["findings"]} <= {checks.BLOCKS, checks.CAUTION, checks.FINE}
    json.dumps(found.figures, allow_nan=False)


# the arguments of check and capture


class _Here:
    """An acquisition in the process of the door: what its source gives at first is read and recorded, nothing waits."""

    def __init__(
        self, request: Any, *, ring_seconds: float = 10.0, recording: keeper.RecordingOrder | None = None
    ) -> None:
        if not isinstance(request, replay.Replay | simulated.SimulatedRun):
            raise SourceError("no device is connected here")
        self._source = dataclasses.replace(request, real_time=False).open()
        self.channels, self.rate_hz = self._source.channels, self._source.rate_hz
        self.description, self.skew_s = self._source.description, self._source.skew_s
        self.trouble: str | None = None
        self.failure: str | None = None
        self.frames = 0
        self._order = recording
        self._names = [] if recording is None else [*recording.channel_names, *[""] * self.channels][: self.channels]
        self._recorder: Any = None

    def __enter__(self) -> "_Here":
        if self._order is not None:
            order = self._order
            self._recorder = recording.Recorder(
                order.path, self.rate_hz, self._names, self.description, order.hookup, self.skew_s
            )
        return self

    def __exit__(self, *_: object) -> None:
        self._source.close()
        if self._recorder is not None:
            self.stop_recording()

    def read(self) -> Block | None:
        """The next samples, which are recorded."""
        block = None if self.frames >= _LONGEST_S * self.rate_hz else self._source.read(0.1)
        if block is None:
            self.failure = "the source has ended"
            return None
        self.frames += len(block.samples)
        self._recorder.write(block.samples, lost_before=block.lost_before)
        return block

    def finished_recording(self) -> keeper.RecordingSummary | None:
        """The summary, once there is nothing more."""
        if self.failure is None and (self._order is None or self.frames < (self._order.seconds or 0.0) * self.rate_hz):
            return None
        return self.stop_recording(enough=self.failure is None)

    def stop_recording(self, *, enough: bool = False) -> keeper.RecordingSummary:
        """End it."""
        recorder, self._recorder = self._recorder, None
        recorder.close(complete=enough, reason=None if enough else self.failure)
        seconds = recorder.frames / self.rate_hz
        return keeper.RecordingSummary(
            recorder.path, recorder.frames, seconds, enough, tuple(recorder.gaps), None if enough else self.failure
        )


class _CaptureHere(_Here):
    """The same where nobody reads while it records."""

    def finished_recording(self) -> keeper.RecordingSummary | None:
        """The summary, once there is nothing more."""
        while self.failure is None and self.frames < (self._order.seconds or 0.0) * self.rate_hz:  # type: ignore[union-attr]
            self.read()
        return super().finished_recording()


_ARGUMENTS = [
    ["check", "recording:r.au"],
    ["check", "recording:r.au", "--hookup", "h.toml", "--fast", "--nameplate", "2880", "--seconds", "3", "--json"],
    ["check", "simulated", "--fast", "--stopped"],
    ["check", "serial:/dev/x", "--hookup", "h.toml", "--rate", "4800"],
    ["capture", "recording:r.au", "x.au", "--fast", "--seconds", "0.3"],
    ["capture", "recording:r.au", "x.au", "--revolutions", "12", "--until-interval", "2 % 1 deg", "--json"],
    ["capture", "recording:r.au", "x.au", "--hookup", "h.toml", "--rate", "4800", "--seconds", "0.2"],
    ["capture", "simulated", "x.au", "--fast", "--mass", "drive side = 3 g at 20", "--seed", "2", "--seconds", "0.1"],
    ["capture", "nidaqmx:Dev1/ai4", "x.au", "--hookup", "h.toml", "--rate", "4800"],
    ["capture", "a sound input", "x.au", "--hookup", "h.toml"],
]
_VERBS = ("check", "capture")


@contextlib.contextmanager
def _in_this_process(room: Path) -> Iterator[None]:
    """Sources run in the door's own process, which no input may part, and put by in its room; there are no sound inputs."""
    before = taking.Acquisition, process.Acquisition, soundcard.list_inputs, tempfile.tempdir
    taking.Acquisition, process.Acquisition = _Here, _CaptureHere  # type: ignore[assignment,misc]
    soundcard.list_inputs, tempfile.tempdir = list, str(room)  # type: ignore[assignment]
    try:
        yield
    finally:
        taking.Acquisition, process.Acquisition, soundcard.list_inputs, tempfile.tempdir = before  # type: ignore[misc]


def _arguments() -> list[bytes]:
    return [json.dumps(arguments).encode() for arguments in _ARGUMENTS]


@door("arguments of check and capture", "bytes", _arguments, weight=0.6, cpu_s=6.0)
def arguments(data: bytes, room: Path) -> None:
    texts = texts_of(data)
    if not texts or texts[0] not in _VERBS or any(t.startswith("/") or ".." in t for t in texts):
        texts = [_VERBS[len(data) % 2], *texts]
    if "--tap" in texts:  # asks for a tap, and waits for it
        texts.remove("--tap")
    (room / "h.toml").write_bytes(wired())
    (room / "n.toml").write_bytes(NEIGHBOURS)
    for name, content in zip(("r.au", "r.events.jsonl"), whole(), strict=True):
        (room / name).write_bytes(content)
    with _in_this_process(room):
        run_verb(texts, room)


# recordings measured again


class _OneHand:
    """Does what a crew of processes does, one piece of work after the other, and here."""

    most = 1

    def __init__(self, processes: int = 1) -> None:
        assert processes == 1

    def readers(self) -> "_OneHand":
        """Itself."""
        return self

    def submit(self, work: Work, given: tuple[Plain, ...]) -> "Future[str]":
        """Do it; what a process hands back is JSON."""
        future: Future[str] = Future()
        future.set_result(json.dumps(work(*given), allow_nan=False))
        return future

    def __enter__(self) -> "_OneHand":
        return self

    def __exit__(self, *_: object) -> None:
        """Nothing is left running."""


@functools.cache
def _recorded() -> tuple[bytes, bytes, bytes]:
    """The record of a job with a measured run and what it was measured from: record, recording, event log."""
    with tempfile.TemporaryDirectory() as folder:
        with Job.create(Path(folder, "job"), "fan", "ann") as job:
            job.append("hookup", table=_wired().table)
            path = job.next_recording()
            for name, content in zip((path, recording.events_path(path)), whole(), strict=True):
                name.write_bytes(content)
            told = run_fields(analysis.measure_recording(path, _wired()))
            file = job.file_fields(f"recordings/{path.name}")
            job.append("run", **told, purpose="check", name="run 1", recording=file)
        return Path(folder, "job/job.jsonl").read_bytes(), *whole()


@door(
    "recordings measured again",
    "record",
    lambda: [_recorded()[0]],
    reprocess.ReprocessError,
    library.LibraryError,
    weight=0.5,
)
def measured_again(data: bytes, room: Path) -> None:
    """A job whose record somebody wrote, with recordings that are good."""
    with making():
        (room / "job/recordings").mkdir(parents=True)
    (room / "job/job.jsonl").write_bytes(data)
    recorded = room / "job/recordings/0001.au"
    for path, content in zip((recorded, recording.events_path(recorded)), _recorded()[1:], strict=True):
        path.write_bytes(content)
    sums = {path: sha256_of(path) for path in room.rglob("*") if path.is_file()}
    paths = [room / "job"] if len(data) % 3 else [room, recorded]
    crew, reprocess.LocalCrew = reprocess.LocalCrew, _OneHand  # type: ignore[assignment,misc]
    try:
        again: Callable[[], reprocess.Reprocessed] = lambda: reprocess.reprocess(  # noqa: E731
            paths, order=(1.0, 1.0, 2.0, 0.5)[len(data) % 4], jobs=1, results=room / "results.jsonl"
        )
        first, second = again(), again()
    finally:
        reprocess.LocalCrew = crew  # type: ignore[misc]
    for text in first.reasons:
        one_line(text)
    told = [json.loads(json.dumps(reprocess.to_json(done), allow_nan=False)) for done in (first, second)]
    assert told[0]["measured"] + told[0]["from_results"] == told[1]["from_results"]
    assert sums == {path: sha256_of(path) for path in sums}, "a recording or a record was changed"
