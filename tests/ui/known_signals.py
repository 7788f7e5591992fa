"""Recordings of known signals on three inputs, the pulse's first: a voltage, a shaker, a split signal, a step."""

import numpy as np
import soundfile

RATE_HZ = 48_000


def write_known_signals(folder):
    """1 V rms as it reads at 2.5 V and 1.9 V full scale, 1 g rms at 98.7 mV/g, 10 µs of delay, corners of 2 and 0.8 Hz."""
    t = np.arange(6 * RATE_HZ) / RATE_HZ
    rng = np.random.default_rng(0)

    def written(name, *columns):
        x = np.column_stack(columns) + 1e-5 * rng.standard_normal((t.size, 3))
        soundfile.write(folder / f"{name}.wav", x, RATE_HZ, subtype="FLOAT")

    sine = np.sqrt(2.0) * np.cos(2 * np.pi * 1000.0 * t)
    written("voltage", 0 * t, sine / 2.5, sine / 1.9)
    written("shaker", 0 * t, 0 * t, np.sqrt(2.0) * 0.0987 / 2.0 * np.cos(2 * np.pi * 159.2 * t))
    written("split", *(sum(0.1 * np.cos(2 * np.pi * f * (t - d)) for f in (80.0, 400.0)) for d in (0.0, 10e-6, 0.0)))
    written("step", 0 * t, *(np.where(t > 1.0, 0.5 * np.exp(-2 * np.pi * f * (t - 1.0)), 0.0) for f in (2.0, 0.8)))
