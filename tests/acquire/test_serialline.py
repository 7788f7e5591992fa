"""Boards on a serial line: packets, losses and noise over a real pseudo-terminal, and what is no board."""

import os
import subprocess
import sys
import time
import tty

import boards
import numpy as np
import pytest
import soundfile
from hypothesis import given
from hypothesis import strategies as st
from stillshaft.acquire import process, serialline
from stillshaft.acquire.source import SourceError, SourceLost


@given(st.binary(max_size=1200))
def test_any_payload_comes_back(payload):
    coded = boards.packet(payload)
    assert coded.count(0) == 1
    assert coded[-1] == 0
    if payload:
        assert serialline.unframed(coded[:-1]) == payload


@given(st.binary(min_size=1, max_size=400), st.integers(0, 10_000), st.integers(1, 255))
def test_a_damaged_packet_is_never_taken(payload, at, flip):
    coded = bytearray(boards.packet(payload)[:-1])
    coded[at % len(coded)] ^= flip
    for part in bytes(coded).split(b"\0"):
        try:
            got = serialline.unframed(part)
        except serialline.PacketError:
            continue
        assert got == payload  # the check sum would have to agree by chance


@given(st.binary(max_size=3000), st.integers(1, 50))
def test_any_bytes_make_no_block(data, piece):
    reader = serialline.PacketReader()
    for i in range(0, len(data), piece):
        assert reader.feed(data[i : i + piece]) == []


def test_frame_numbers_go_round_and_a_board_that_starts_anew_is_a_gap_of_unknown_length():
    reader = serialline.PacketReader()
    samples = np.arange(20).reshape(10, 2)
    stream = b"\0" + boards.hello(2, 1000.0, "b")
    for first in (2**32 - 10, 0, 10, 25, 0):
        stream += boards.data(first, samples)
    blocks = reader.feed(stream)
    assert [b.lost_before for b in blocks] == [None, None, None, 5, -1]
    assert [b.first_frame for b in blocks] == [0, 10, 20, 30, 40]
    np.testing.assert_array_equal(blocks[0].samples, (samples / 2**15).astype(np.float32))


class Line:
    """A pseudo-terminal: the sender writes to one end, the program opens the other."""

    def __init__(self, *arguments):
        self.ours, theirs = os.openpty()
        for end in (self.ours, theirs):
            tty.setraw(end)
        self.port, self._theirs = os.ttyname(theirs), theirs
        self.sender = subprocess.Popen(
            [sys.executable, boards.SENDER, str(self.ours), *map(str, arguments)], pass_fds=[self.ours]
        )

    def close(self):
        self.sender.kill()
        self.sender.wait()
        for end in (self.ours, self._theirs):
            os.close(end)


@pytest.fixture
def line():
    made = []

    def make(*arguments):
        made.append(Line(*arguments))
        return made[-1]

    yield make
    for one in made:
        one.close()


def captured(port, path, seconds):
    return process.capture(serialline.SerialBoard(port), path, seconds, None, ["a", "b", "c"])


def test_a_clean_line_loses_nothing(line, tmp_path):
    summary = captured(line(8000, 3, 80_000).port, tmp_path / "x.au", 3.0)
    assert (summary.complete, summary.gaps, summary.frames) == (True, (), 24_000)
    counted = np.round(soundfile.read(tmp_path / "x.au", dtype="float64")[0] * 2**15).astype(int)
    frames = counted[0, 0] + np.arange(24_000)[:, None]
    np.testing.assert_array_equal(counted, (frames + 1000 * np.arange(3)) % 2**15)


def test_losses_and_noise_are_gaps_of_the_right_length_and_no_sample_is_wrong(line, tmp_path):
    summary = captured(line(8000, 3, 80_000, 37, 23).port, tmp_path / "x.au", 3.0)
    assert summary.complete
    counted = np.round(soundfile.read(tmp_path / "x.au", dtype="float64")[0] * 2**15).astype(int)
    np.testing.assert_array_equal((counted[:, 1] - counted[:, 0]) % 2**15, 1000)
    steps = np.diff(counted[:, 0]) % 2**15
    jumps = np.flatnonzero(steps != 1)
    assert list(jumps + 1) == list(summary.gaps)
    assert set(steps[jumps]) <= {65, 129}  # a packet of 64 frames, or two that follow each other
    assert 20 <= len(jumps) <= 32


def test_a_board_that_stops_is_lost_and_comes_back(line, tmp_path):
    first = line(8000, 3, 12_000)
    with process.Acquisition(serialline.SerialBoard(first.port)) as acquisition:
        acquisition.record(tmp_path / "x.au", None, ["a", "b", "c"], seconds=2.5)
        deadline = time.monotonic() + 10.0
        while acquisition.trouble is None:
            acquisition.finished_recording()
            assert time.monotonic() < deadline
            time.sleep(0.01)
        again = subprocess.Popen(
            [sys.executable, boards.SENDER, str(first.ours), "8000", "3", "80000"], pass_fds=[first.ours]
        )
        while (summary := acquisition.finished_recording()) is None:
            assert time.monotonic() < deadline
            time.sleep(0.01)
        again.kill()
        again.wait()
    assert summary.complete
    assert len(summary.gaps) == 1


def test_what_is_no_board_is_refused_in_one_line(line):
    with pytest.raises(SourceError, match='source "serial:/dev/nothing": does not open'):
        serialline.SerialBoard("/dev/nothing").open()
    silent = line(8000, 3, 0)
    silent.sender.kill()
    with pytest.raises(SourceError, match="no board has said what it is within 3 s"):
        serialline.SerialBoard(silent.port).open()


@pytest.mark.parametrize("text", ["serial:", "serial", "tty", "serial:/dev/x@9"])
def test_a_text_that_names_no_port_is_refused(text):
    if text == "serial:/dev/x@9":
        assert serialline.board_from(text).port == "/dev/x@9"  # no speed: part of the name
        return
    with pytest.raises(SourceError, match="write for example"):
        serialline.board_from(text)


def test_a_board_that_changes_its_inputs_is_lost():
    reader = serialline.PacketReader()
    reader.feed(b"\0" + boards.hello(2, 1000.0, "b"))
    with pytest.raises(SourceLost, match="has changed its inputs or rate"):
        reader.feed(boards.hello(3, 1000.0, "b"))
