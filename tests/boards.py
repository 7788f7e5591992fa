"""Packets as boards send them, coded by the reference sender: the program itself sends none."""

import runpy
import struct
from pathlib import Path

SENDER = Path(__file__).parents[1] / "fixtures" / "serial_sender.py"
packet = runpy.run_path(str(SENDER))["packet"]


def hello(channels, rate_hz, name, sample_bytes=2):
    return packet(struct.pack("<BBBBI", 0x48, 1, channels, sample_bytes, round(1000 * rate_hz)) + name.encode())


def data(first_frame, samples):
    """Samples (frames, channels), whole numbers, as two bytes each."""
    return packet(struct.pack("<BBI", 0x44, 0, first_frame % 2**32) + samples.astype("<i2").tobytes())
