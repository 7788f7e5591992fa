"""What a fault may leave: recordings up to their last whole frame, records that go on, files that are whole or the old ones."""

from __future__ import annotations

import json
import signal
import struct

import numpy as np
import soundfile
from stillshaft.acquire import recording
from stillshaft.acquire.hookup import load_hookup
from stillshaft.solver import stored
from stillshaft.solver.folder import RecordError
from stillshaft.solver.job import Job
from stillshaft.solver.runs_file import load_runs

HEADER = 4096


def recorded_frames(path):
    """Whole frames that lie in a recording's file, counted from its bytes; 0 where its header is not whole."""
    data = path.read_bytes()[:HEADER]
    if len(data) < HEADER:
        return 0
    return (path.stat().st_size - HEADER) // (4 * struct.unpack(">5I", data[4:24])[4])


def check_recording(row, path):
    """Soundfile reads every whole frame, and the program opens it with its event log, or says that nothing is in it."""
    frames = recorded_frames(path)
    if not frames:
        return np.empty((0, 1), dtype=np.float32)
    samples = soundfile.read(path, dtype="float32", always_2d=True)[0]
    if len(samples) != frames:
        row.blame("records lost", f"{path.name}: soundfile reads {len(samples)} of {frames} frames")
    try:
        with recording.open_recording(path) as opened:
            if opened.frames != frames:
                row.blame("records lost", f"{path.name}: opens with {opened.frames} of {frames} frames")
    except recording.RecordingError as error:
        row.blame("records lost", error)
    row.most("frames kept, most", frames)
    return samples


def marked_gaps(path):
    """Frames before which the event log says that some were lost: {frame: how many, −1 where nobody knows}."""
    events = [json.loads(line) for line in recording.events_path(path).read_bytes().split(b"\n")[:-1]]
    return {e["frame"]: -1 if e["lost_frames"] is None else e["lost_frames"] for e in events if e["kind"] == "gap"}


def record_bytes(folder):
    """What a job's record holds, its whole lines."""
    path = folder / "job.jsonl"
    return path.read_bytes().rpartition(b"\n")[0] + b"\n" if path.exists() else b""


def check_job(row, folder, before=b"", entries=()):
    """The record still begins with what it held, holds the acknowledged entries, opens to write, and goes on."""
    held = record_bytes(folder)
    if not held.startswith(before.removesuffix(b"\n")):
        row.blame("records lost", f"{folder.name}: what was in its record is no longer there")
    try:
        with Job.open(folder, by="after") as job:
            ids = [event.id for event in job.events]
            if not set(entries) <= set(ids):
                row.blame("records lost", f"{folder.name}: acknowledged {sorted(entries)}, there is up to {ids[-1]}")
            if ids != list(range(1, len(ids) + 1)):
                row.blame("records lost", f"{folder.name}: entries {ids}")
            for problem in job.problems:
                if "is cut off after" not in problem:
                    row.blame("others", problem)
            if job.state.closed:
                job.append("reopened", why="goes on")
            job.append("decision", text="goes on")
            added = job.events[-1].id
        with Job.open(folder, read_only=True) as job:
            if job.problems or job.events[-1].id != added or added <= len(ids):
                row.blame("records lost", f"{folder.name}: does not go on: {job.problems}")
    except RecordError as error:
        row.blame("records lost", error)


def check_words(row, verb, *, statuses=(0, 1, 3), told=""):
    """A verb ended in words or was killed: no crash, no traceback, one line of its own where it could not be done."""
    if verb.status == -signal.SIGKILL:
        return
    if "Traceback" in verb.err:
        row.blame("tracebacks", f"{told}{' '.join(verb.argv)}: {verb.err[-500:]}")
    if verb.status not in statuses:
        row.blame("others", f"{told}{' '.join(verb.argv)}: exit {verb.status}: {verb.err[-300:]}")
    ours = [line for line in verb.err.splitlines() if line.startswith("stillshaft: ")]
    if verb.status == 1 and len(ours) != 1:
        row.blame(
            "others", f"{told}{' '.join(verb.argv)}: exit 1 and {len(ours)} lines that say why: {verb.err[-300:]!r}"
        )


def whole(path):
    """Is a file whole, by its own end or by reading it?"""
    data = path.read_bytes()
    if path.suffix == ".pdf":
        return data.startswith(b"%PDF") and data.rstrip().endswith(b"%%EOF")
    if path.suffix == ".html":
        return data.rstrip().endswith(b"</html>")
    if path.suffix == ".json":
        return isinstance(json.loads(data), dict)
    if path.suffix in (".csv", ".uff"):
        return data.endswith(b"\n")
    readers = {"hookup.toml": load_hookup, "runs.toml": load_runs, "coefficients.toml": stored.load}
    readers[path.name](path)
    return True


def check_whole(row, path):
    """A file that is there is whole."""
    try:
        fine = not path.exists() or whole(path)
    except ValueError as error:
        row.blame("half written", error)
        return
    if not fine:
        row.blame("half written", f"{path.name}: {path.stat().st_size} bytes")


def check_nothing_runs(row, nursery):
    """No process and no shared memory is left."""
    for command in nursery.orphans():
        row.blame("left behind", f"process {command}")
    for name in nursery.segments():
        row.blame("left behind", f"shared memory {name}")
