"""Job folders that several tests need, made through the record itself or line by line."""

from stillshaft.solver.job import Job
from stillshaft.solver.record import NAME, line_bytes

AT = "2026-03-{day:02d}T08:{minute:02d}:00.000+00:00"


def vector(point, amplitude, **more):
    return {
        "point": point,
        "amplitude": amplitude,
        "phase_deg": 40.0,
        "amplitude_ci95": 0.05,
        "verdict": "steady",
    } | more


def run(name, *vectors, purpose="check", **more):
    """Keys of a run."""
    return {"purpose": purpose, "name": name, "speed_rpm": 1480.0, "unit": "mm/s rms", "vectors": list(vectors)} | more


def make_job(folder, machine=None, *amplitudes, name="job", brief=None, **more):
    """A job with a run for each amplitude at the point "A"."""
    with Job.create(folder, name, "first person") as job:
        if machine is not None or brief:
            job.append("brief", **({"machine": {"name": machine}} if machine else {}) | (brief or {}))
        for number, amplitude in enumerate(amplitudes, start=1):
            job.append("run", **run(f"run {number}", vector("A", amplitude), **more))
    return folder


def write_lines(folder, events, *, day=1):
    """A record from events as tables: id, time and format are filled in, checksums are right."""
    folder.mkdir(parents=True, exist_ok=True)
    lines = []
    for number, event in enumerate(events, start=1):
        head = {"format": 1, "id": number, "at": AT.format(day=day, minute=number % 60), "by": "first person"}
        lines.append(line_bytes(head | event))
    (folder / NAME).write_bytes(b"".join(lines))
    return folder
