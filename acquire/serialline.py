"""A microcontroller board on a serial line: framed, numbered, checked packets; the protocol is in DEVELOPERS.md.

A line may drop bytes and flip bits, and the system's buffer is small: what counts is not what arrives when, but the
frame numbers that the board puts into its packets. A packet that is damaged is lost, never guessed at.
"""

from __future__ import annotations

import re
import struct
import time
import zlib
from dataclasses import dataclass

import numpy as np
from stillshaft.acquire.source import Block, Source, SourceError, SourceLost
from stillshaft.dsp.units import InputError

PREFIX = "serial:"
VERSION = 1
HELLO, DATA = 0x48, 0x44
DEFAULT_BAUD = 921_600
_HELLO = struct.Struct("<BBBBI")  # kind, version, channels, bytes of a sample, rate in mHz; then the name
_DATA = struct.Struct("<BBI")  # kind, 0, number of the first frame; then the samples
_CRC = struct.Struct("<I")
_HELLO_LIMIT_S = 3.0
_SILENCE_LIMIT_S = 0.5
_LONGEST_PACKET = 4096
_LARGEST_JUMP_S = 60.0  # beyond, the board has been started anew
_FULL_SCALE = {2: 2.0**15, 4: 2.0**31}


class PacketError(InputError):
    """A packet that is damaged."""


def unframed(coded: bytes) -> bytes:
    """The payload of what stood between two zero bytes. Raises PacketError where it does not check.

    Consistent-overhead byte stuffing (Cheshire & Baker, IEEE/ACM Trans. Networking 1999, from memory).
    """
    data = bytearray()
    at = 0
    while at < len(coded):
        length = coded[at]
        if length == 0 or at + length > len(coded):
            raise PacketError("cut short")
        data += coded[at + 1 : at + length]
        at += length
        if length < 255 and at < len(coded):
            data.append(0)
    if len(data) < _CRC.size + 1:
        raise PacketError("cut short")
    payload, check = bytes(data[: -_CRC.size]), _CRC.unpack(data[-_CRC.size :])[0]
    if zlib.crc32(payload) != check:
        raise PacketError("does not check")
    return payload


@dataclass(frozen=True)
class Board:
    """What a board says of itself."""

    channels: int
    sample_bytes: int
    rate_hz: float
    name: str


def read_hello(payload: bytes) -> Board:
    """Raises PacketError for one that cannot be."""
    _, version, channels, sample_bytes, rate_mhz = _HELLO.unpack_from(payload)
    if version != VERSION or not 1 <= channels <= 64 or sample_bytes not in _FULL_SCALE or rate_mhz == 0:
        raise PacketError(f"version {version}, {channels} inputs of {sample_bytes} bytes: not understood")
    return Board(channels, sample_bytes, rate_mhz / 1000.0, payload[_HELLO.size :].decode("utf-8", "replace"))


class PacketReader:
    """Takes bytes in any pieces and gives blocks; `damaged` packets were thrown away.

    The first blocks come after the board's hello.
    """

    def __init__(self) -> None:
        self.board: Board | None = None
        self.damaged = 0
        self._rest = b""
        self._begun = False  # behind a zero byte: what came before was the end of a packet
        self._expected: int | None = None
        self._frames = 0

    def feed(self, data: bytes) -> list[Block]:
        """Blocks that these bytes complete."""
        *parts, self._rest = (self._rest + data).split(b"\0")
        if len(self._rest) > _LONGEST_PACKET:
            self._rest, self._begun = b"", False
            self.damaged += 1
        blocks = []
        for part in parts:
            if not self._begun:
                self._begun = True
                continue
            if not part:
                continue
            try:
                block = self._packet(unframed(part))
            except (PacketError, struct.error):
                self.damaged += 1
                continue
            if block is not None:
                blocks.append(block)
        return blocks

    def _packet(self, payload: bytes) -> Block | None:
        if payload[0] == HELLO:
            board = read_hello(payload)
            if self.board is not None and board != self.board:
                raise SourceLost(f'the board "{board.name}" has changed its inputs or rate: start again')
            self.board = board
            return None
        if payload[0] != DATA or self.board is None:
            return None
        _, _, first = _DATA.unpack_from(payload)
        size = self.board.channels * self.board.sample_bytes
        body = payload[_DATA.size :]
        if len(body) % size or not body:
            raise PacketError("has part of a frame")
        whole = np.frombuffer(body, dtype=f"<i{self.board.sample_bytes}").reshape(-1, self.board.channels)
        lost: int | None = None
        if self._expected is not None and first != self._expected:
            jump = (first - self._expected) % 2**32
            lost = jump if jump <= _LARGEST_JUMP_S * self.board.rate_hz else -1
        self._expected = (first + len(whole)) % 2**32
        at = self._frames
        self._frames += len(whole)
        samples = (whole / _FULL_SCALE[self.board.sample_bytes]).astype(np.float32)
        return Block(at, self.board.rate_hz, samples, lost)


@dataclass(frozen=True)
class SerialBoard:
    """An order for a board on a serial port."""

    port: str
    baud: int = DEFAULT_BAUD

    def open(self) -> Source:
        """Open it; raises SourceError in one line."""
        return SerialSource(self)


def board_from(text: str) -> SerialBoard:
    """Read "serial:PORT" or "serial:PORT@BAUD". Raises SourceError."""
    match = re.fullmatch(r"serial:(.+?)(?:@(\d{3,8}))?", text)
    if not match:
        raise SourceError(f'source "{text}": write for example "serial:/dev/ttyACM0" or "serial:COM5@921600"')
    return SerialBoard(match[1], int(match[2] or DEFAULT_BAUD))


class SerialSource:
    """The board talking."""

    can_wait = False
    silence_limit_s: float | None = _SILENCE_LIMIT_S
    skew_s: tuple[float, ...] = ()

    def __init__(self, order: SerialBoard) -> None:
        try:
            import serial
        except ModuleNotFoundError:
            raise SourceError("boards on a serial line need pyserial: pip install 'stillshaft[daq]'") from None
        self._broken = serial.SerialException
        try:
            self._port = serial.Serial(order.port, order.baud, timeout=0.05)
        except (serial.SerialException, OSError, ValueError) as error:
            text = " ".join(str(error).split())
            raise SourceError(f'source "serial:{order.port}": does not open ({text})') from None
        self._reader, self._waiting = PacketReader(), list[Block]()
        deadline = time.monotonic() + _HELLO_LIMIT_S
        while self._reader.board is None:
            if time.monotonic() > deadline:
                self._port.close()
                raise SourceError(
                    f'source "serial:{order.port}": no board has said what it is within {_HELLO_LIMIT_S:.0f} s; check '
                    "speed and program of the board"
                )
            self._waiting += self._reader.feed(self._bytes())
        board = self._reader.board
        self.channels, self.rate_hz = board.channels, board.rate_hz
        self.description = f"serial:{order.port} ({board.name})"
        self._last = time.monotonic()

    def _bytes(self) -> bytes:
        try:
            return bytes(self._port.read(max(1, self._port.in_waiting)))
        except (self._broken, OSError) as error:
            raise SourceLost(f"the serial line broke: {' '.join(str(error).split())}") from None

    def read(self, timeout_s: float) -> Block | None:
        """Next block, empty when nothing came in time; raises SourceLost after half a second of silence."""
        deadline = time.monotonic() + timeout_s
        while not self._waiting:
            self._waiting += self._reader.feed(self._bytes())
            now = time.monotonic()
            if self._waiting:
                break
            if now - self._last > _SILENCE_LIMIT_S:
                raise SourceLost(f'source "{self.description}": stopped sending; check cable and board')
            if now > deadline:
                return Block(0, self.rate_hz, np.empty((0, self.channels), dtype=np.float32))
        self._last = time.monotonic()
        return self._waiting.pop(0)

    def close(self) -> None:
        """Close the port."""
        self._port.close()
