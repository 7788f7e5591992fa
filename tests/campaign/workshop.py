"""Jobs, recordings and files that the campaign spoils, and the acts on them."""

from __future__ import annotations

import numpy as np
import soundfile
from balancing_jobs import balancing_job
from recorded_jobs import record, recorded_job
from rotor_signal import HOOKUP, RATE
from stillshaft.acquire import simulated

RUNS = """format = 1
vibration_unit = "mm/s rms"
mass_unit = "g"
[[plane]]
name = "left"
radius = "300 mm"
[[run]]
name = "initial"
speed_rpm = 1480.0
[run.vectors]
"near" = { amplitude = 8.5, phase = 60.0 }
"far" = { amplitude = 6.5, phase = 205.0 }
[[run]]
name = "trial"
speed_rpm = 1480.0
[run.vectors]
"near" = { amplitude = 6.0, phase = 125.0 }
"far" = { amplitude = 4.5, phase = 230.0 }
[run.masses]
"left" = { mass = 10.0, angle = 270.0 }
"""


def furnish(folder):
    """A folder with what the acts below take: two jobs, a hook-up, a runs file, recordings."""
    folder.mkdir(exist_ok=True)
    balancing_job(folder / "balance", positions=24).close()
    recorded_job(folder / "measured", 1.0, 0.5)
    record(folder / "more.au", 0.7)
    (folder / "hookup.toml").write_text(HOOKUP)
    (folder / "runs.toml").write_text(RUNS)
    (folder / "photo.png").write_bytes(b"\x89PNG\r\n\x1a\n" + bytes(5000))
    t = np.arange(2 * RATE) / RATE
    sine = np.sqrt(2.0) * 0.3 * np.cos(2 * np.pi * 1000.0 * t)
    noise = 1e-5 * np.random.default_rng(0).standard_normal((t.size, 4))
    soundfile.write(folder / "volt.wav", np.column_stack([0 * t, sine, 0 * t, sine]) + noise, RATE, subtype="FLOAT")
    return folder


PLANE = simulated.demo_rotor(2).planes[0].name

JOB_ACTS = (
    ("brief", "balance", "--set", "rotor.mass = 81 kg"),
    ("decide", "balance", "go on", "--why", "it is loud"),
    ("start", "balance", "--was", "cold"),
    ("mass", "balance", "put", f"{PLANE} = 5 g at 30", "--photo", "photo.png"),
    ("mass", "balance", "take", "all"),
    ("solve", "balance"),
    ("solve", "balance", "--pieces"),
    ("verdict", "balance"),
    ("undo", "balance"),
    ("redo", "balance"),
    ("next", "balance", "--skip", "seen to already"),
    ("brief", "measured", "--set", "rotor.mass = 80 kg"),
    ("run", "measured", "--recording", "more.au", "--kind", "check", "--acknowledge", "first person"),
    ("check", "measured", "signals", "--recording", "more.au"),
    ("close", "balance", "--accepted-by", "the owner"),
    ("reopen", "balance", "--why", "once more"),
)

REPORT_ACTS = (
    ("report", "balance"),
    ("report", "measured"),
    ("report", "balance", "--pdf", "out.pdf", "--html", "out.html", "--csv", "out.csv", "--data", "out.json"),
)

FILE_ACTS = (
    ("calibrate", "voltage", "volt.wav", "--hookup", "hookup.toml", "--volts", "1 V"),
    ("vector", "more.au", "--append", "runs.toml", "--run", "again"),
    ("solve", "runs.toml", "--keep", "coefficients.toml", "--machine", "fan"),
)
SUFFIXES = ("wav", "flac", "csv", "h5", "mat", "uff", "au")
