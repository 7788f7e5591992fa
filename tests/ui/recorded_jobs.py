"""Jobs with real recordings, measured and recorded as the program does it."""

import tomllib

import numpy as np
from rotor_signal import HOOKUP, RATE, rotor
from stillshaft.acquire import hookup as wiring
from stillshaft.acquire.recording import Recorder
from stillshaft.solver.job import Job
from stillshaft.solver.replay import run_fields
from stillshaft.ui import analysis

TABLE = tomllib.loads(HOOKUP)
SECONDS = 6


def record(path, gain=1.0, table=TABLE, seconds=SECONDS):
    """A recording of the known rotor, its point "near" so many times as large."""
    samples = rotor(seconds)
    samples[:, 1] *= np.float32(gain)
    recorder = Recorder(path, RATE, ["pulse", "near", "unused", "far"], "test", table)
    recorder.write(samples)
    recorder.close(complete=True)
    return path


def recorded_job(folder, *gains, altered=lambda fields: fields, hookup=TABLE):
    """A job with a run for each gain; `altered` changes what is recorded of a run."""
    with Job.create(folder, "job", "first person") as job:
        job.append("brief", machine={"name": "fan"})
        if hookup is not None:
            job.append("hookup", table=hookup)
        for number, gain in enumerate(gains, start=1):
            path = record(job.next_recording(), gain)
            told = run_fields(analysis.measure_recording(path, wiring.hookup_from(TABLE)))
            file = job.file_fields(f"recordings/{path.name}")
            job.append("run", **altered(told), purpose="check", name=f"run {number}", recording=file)
    return folder
