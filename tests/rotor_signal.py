"""A known rotor signal to play into the virtual sound card, and the hook-up that belongs to it."""

import numpy as np

RATE = 48_000
HOOKUP = """
format = 1
display = "mm/s rms"
[pulse]
input = 1
[[point]]
name = "near"
input = 2
quantity = "velocity"
sensitivity = "20 mV/(mm/s)"
full_scale = "1.0 V"
[[point]]
name = "far"
input = 4
quantity = "velocity"
sensitivity = "20 mV/(mm/s)"
full_scale = "1.0 V"
"""


def rotor(seconds):
    """Pulse on input 1, 0.2∠70° on input 2, 0.1∠250° on input 4, 1x at 1500 r/min, written out here."""
    angle = 2 * np.pi * 25.0 * np.arange(seconds * RATE) / RATE - 1.0
    turn = angle / (2 * np.pi)
    past = (turn - np.floor(turn + 0.5)) * RATE / 25.0
    pulse = 0.5 / (1.0 + np.exp(-np.clip(past, -60, 60))) - 0.5 / (1.0 + np.exp(-np.clip(past - 40.0, -60, 60)))
    rng = np.random.default_rng(0)
    columns = [
        pulse,
        0.2 * np.cos(angle - np.deg2rad(70.0)),
        0.3 * np.cos(3 * angle),
        0.1 * np.cos(angle - np.deg2rad(250.0)),
    ]
    return (np.column_stack(columns) + 1e-3 * rng.standard_normal((angle.size, 4))).astype(np.float32)
