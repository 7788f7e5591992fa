"""Ways to spoil a file, and the places in it."""

from __future__ import annotations

HEADER = 4096


def flipped(data, at, chance):
    """One bit."""
    return data[:at] + bytes([data[at] ^ (1 << chance.randrange(8))]) + data[at + 1 :]


def cut(data, at, chance):
    return data[:at]


def zeroed(data, at, chance):
    count = chance.choice((1, 16, 512, 4096))
    return data[:at] + bytes(len(data[at : at + count])) + data[at + count :]


def swapped(data, at, chance):
    """Two blocks in each other's place."""
    size = chance.choice((4, 64, 512))
    other = chance.randrange(max(1, len(data) - size))
    low, high = sorted((at, other))
    if high < low + size:
        return data[:at] + data[at : at + size][::-1] + data[at + size :]
    return (
        data[:low] + data[high : high + size] + data[low + size : high] + data[low : low + size] + data[high + size :]
    )


SPOIL = (flipped, cut, zeroed, swapped)


def in_lines(data, chance):
    """A place in each line of a text."""
    begun = 0
    for line in data.split(b"\n"):
        if line:
            yield begun + chance.randrange(len(line))
        begun += len(line) + 1


def in_recording(data, chance):
    """Places in magic, sizes, free text, data, and the last frame."""
    for low, high in ((0, 4), (4, 12), (12, 24), (24, HEADER), (HEADER, len(data) - 64), (len(data) - 16, len(data))):
        for _ in range(3):
            yield chance.randrange(low, high)
