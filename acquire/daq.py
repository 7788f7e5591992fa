"""Data acquisition devices through their makers' packages: `nidaqmx` and `uldaq`, one adapter each.

Readings are volts over the input range, so that 1.0 is full scale: the hook-up's full_scale is the range. Neither
adapter has been run on a real device; the tests hold them against the packages' own signatures.
"""

from __future__ import annotations

import re
import time
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from stillshaft.acquire.source import Block, Source, SourceError, SourceLost

NATIONAL, MEASUREMENT_COMPUTING = "nidaqmx:", "uldaq:"
TERMINALS = ("default", "differential", "single-ended", "pseudo-differential")
COUPLINGS = ("default", "ac", "dc")
_BLOCK_S = 0.1
_BUFFER_S = 20.0
_SILENCE_LIMIT_S = 1.0
_RATE_OFF = 1e-3  # by which a device may bend the rate asked for
_NOT_YET = -200284
_OVERRUN = (-200279, -200010, -200361)


@dataclass(frozen=True)
class Settings:
    """How the inputs are to be set: range in V, coupling, IEPE current in A (0: off), terminal configuration."""

    range_v: float = 10.0
    coupling: str = "default"
    iepe_a: float = 0.0
    terminal: str = "default"


@dataclass(frozen=True)
class Daq:
    """An order for a device: `text` as the person wrote it, so many inputs from `first` on."""

    text: str
    device: str
    first: int
    channels: int
    rate_hz: float
    settings: Settings = Settings()

    def open(self) -> Source:
        """Open it; raises SourceError in one line."""
        kind = NationalSource if self.text.startswith(NATIONAL) else MeasurementComputingSource
        return kind(self)


def order_from(text: str, channels: int, rate_hz: float, settings: Settings) -> Daq:
    """Read "nidaqmx:DEVICE/ai0" or "uldaq:DEVICE", DEVICE by name or serial number. Raises SourceError."""
    match = re.fullmatch(r"(?:nidaqmx|uldaq):([^/]+)(?:/ai(\d{1,3}))?", text)
    if not match:
        raise SourceError(f'source "{text}": write for example "nidaqmx:Dev1/ai0" or "uldaq:0123ABCD"')
    return Daq(text, match[1], int(match[2] or 0), channels, rate_hz, settings)


class NationalSource:
    """A task of analogue inputs, read by polling: callbacks of the package swallow what goes wrong in them."""

    can_wait = False
    silence_limit_s: float | None = _SILENCE_LIMIT_S

    def __init__(self, order: Daq) -> None:
        try:
            import nidaqmx
            from nidaqmx import constants, errors, stream_readers
        except ImportError:
            raise SourceError(f"{order.text}: needs the nidaqmx package: pip install 'stillshaft[daq]'") from None
        self._order, self._errors, self._constants = order, errors, constants
        self._package, self._readers = nidaqmx, stream_readers
        self._task: Any = None
        self._frames, self._lost = 0, False
        self.channels, self.rate_hz, self.description = order.channels, order.rate_hz, order.text
        try:
            self._start()
        except errors.DaqError as error:
            self._stop()
            raise SourceError(f"{order.text}: {_words(error)}") from None
        except errors.Error as error:  # the driver itself is missing
            raise SourceError(f"{order.text}: {_words(error)}; install the maker's driver") from None

    def _start(self) -> None:
        order, settings, constants = self._order, self._order.settings, self._constants
        terminal = {
            "default": constants.TerminalConfiguration.DEFAULT,
            "differential": constants.TerminalConfiguration.DIFF,
            "single-ended": constants.TerminalConfiguration.RSE,
            "pseudo-differential": constants.TerminalConfiguration.PSEUDO_DIFF,
        }[settings.terminal]
        task = self._task = self._package.Task()
        last = order.first + order.channels - 1
        inputs = task.ai_channels.add_ai_voltage_chan(
            f"{order.device}/ai{order.first}:{last}",
            terminal_config=terminal,
            min_val=-settings.range_v,
            max_val=settings.range_v,
        )
        if settings.coupling != "default":
            inputs.ai_coupling = constants.Coupling.AC if settings.coupling == "ac" else constants.Coupling.DC
        if settings.iepe_a > 0.0:
            inputs.ai_excit_src = constants.ExcitationSource.INTERNAL
            inputs.ai_excit_val = settings.iepe_a
        buffer = round(_BUFFER_S * order.rate_hz)
        task.timing.cfg_samp_clk_timing(
            order.rate_hz, sample_mode=constants.AcquisitionType.CONTINUOUS, samps_per_chan=buffer
        )
        self.rate_hz = _checked_rate(order, float(task.timing.samp_clk_rate))
        task.in_stream.input_buf_size = buffer
        self.skew_s = self._skew(task)
        self._reader = self._readers.AnalogMultiChannelReader(task.in_stream)
        self._reader.verify_array_shape = False
        self._piece = round(_BLOCK_S * self.rate_hz)
        self._data: NDArray[np.float64] = np.zeros((order.channels, self._piece))
        task.start()

    def _skew(self, task: Any) -> tuple[float, ...]:
        """How much later than the first each input is converted, s: 0 for devices that sample all at once."""
        device = self._package.system.System.local().devices[self._order.device]
        if device.ai_simultaneous_sampling_supported:
            return (0.0,) * self._order.channels
        return tuple(k / float(task.timing.ai_conv_rate) for k in range(self._order.channels))

    def read(self, timeout_s: float) -> Block | None:
        """Next tenth of a second; an overrun closes the task and starts it anew behind a gap."""
        try:
            self._reader.read_many_sample(
                self._data, number_of_samples_per_channel=self._piece, timeout=max(timeout_s, 2.0 * _BLOCK_S)
            )
        except self._errors.DaqError as error:
            code = int(error.error_code)
            if code == _NOT_YET:
                return Block(self._frames, self.rate_hz, np.empty((0, self.channels), dtype=np.float32))
            if code in _OVERRUN:
                self._stop()
                try:
                    self._start()
                except self._errors.DaqError as again:
                    raise SourceLost(f"{self.description}: {_words(again)}") from None
                self._lost = True
                return Block(self._frames, self.rate_hz, np.empty((0, self.channels), dtype=np.float32))
            raise SourceLost(f"{self.description}: {_words(error)}") from None
        samples = (self._data.T / self._order.settings.range_v).astype(np.float32)
        block = Block(self._frames, self.rate_hz, samples, -1 if self._lost else None)
        self._lost = False
        self._frames += len(samples)
        return block

    def _stop(self) -> None:
        if self._task is not None:
            task, self._task = self._task, None
            task.close()

    def close(self) -> None:
        """End the task."""
        self._stop()


class MeasurementComputingSource:
    """A hardware-paced scan into a circular buffer, followed by its count: a lap is a loss."""

    can_wait = False
    silence_limit_s: float | None = _SILENCE_LIMIT_S

    def __init__(self, order: Daq) -> None:
        try:
            import uldaq
        except ImportError:
            raise SourceError(f"{order.text}: needs the uldaq package: pip install 'stillshaft[daq]'") from None
        except OSError:
            raise SourceError(f"{order.text}: needs the maker's library libuldaq; build and install it first") from None
        self._uldaq, self._order = uldaq, order
        self.channels, self.description = order.channels, order.text
        self._device: Any = None
        try:
            self._start()
        except uldaq.ULException as error:
            self.close()
            raise SourceError(f"{order.text}: {_words(error)}") from None

    def _start(self) -> None:
        uldaq, order, settings = self._uldaq, self._order, self._order.settings
        found = uldaq.get_daq_device_inventory(uldaq.InterfaceType.ANY)
        wanted = [d for d in found if order.device in (d.unique_id, d.product_name)]
        if len(wanted) != 1:
            listed = ", ".join(f'"{d.product_name} {d.unique_id}"' for d in found) or "no device at all"
            raise SourceError(f"{order.text}: {'not unique' if wanted else 'not found'}; there is {listed}")
        self._device = uldaq.DaqDevice(wanted[0])
        self._device.connect()
        self._inputs = self._device.get_ai_device()
        config = self._inputs.get_config()
        for channel in range(order.first, order.first + order.channels):
            if settings.coupling != "default":
                mode = uldaq.CouplingMode.AC if settings.coupling == "ac" else uldaq.CouplingMode.DC
                config.set_chan_coupling_mode(channel, mode)
            if settings.iepe_a > 0.0:  # the device's own current; it cannot be chosen
                config.set_chan_iepe_mode(channel, uldaq.IepeMode.ENABLED)
        mode = uldaq.AiInputMode.SINGLE_ENDED
        if settings.terminal in ("differential", "default"):
            mode = uldaq.AiInputMode.DIFFERENTIAL
        elif settings.terminal == "pseudo-differential":
            mode = uldaq.AiInputMode.PSEUDO_DIFFERENTIAL
        ranges = {r.name: r for r in self._inputs.get_info().get_ranges(mode)}
        name = f"BIP{settings.range_v:g}VOLTS".replace(".", "PT")
        if name not in ranges:
            listed = ", ".join(sorted(ranges))
            raise SourceError(f"{order.text}: has no range of ± {settings.range_v:g} V; it has {listed}")
        self._length = round(_BUFFER_S * order.rate_hz)
        self._buffer = uldaq.create_float_buffer(order.channels, self._length)
        rate = self._inputs.a_in_scan(
            order.first,
            order.first + order.channels - 1,
            mode,
            ranges[name],
            self._length,
            order.rate_hz,
            uldaq.ScanOption.CONTINUOUS,
            uldaq.AInScanFlag.DEFAULT,
            self._buffer,
        )
        self.rate_hz = _checked_rate(order, float(rate))
        self._taken = 0
        # the channels of a multiplexed device follow each other evenly
        self.skew_s = tuple(k / (order.channels * self.rate_hz) for k in range(order.channels))

    def read(self, timeout_s: float) -> Block | None:
        """What the count says is new, up to a tenth of a second."""
        deadline = time.monotonic() + timeout_s
        while True:
            try:
                status, transfer = self._inputs.get_scan_status()
            except self._uldaq.ULException as error:
                raise SourceLost(f"{self.description}: {_words(error)}") from None
            scans = int(transfer.current_total_count) // self.channels
            if scans > self._taken:
                break
            if status != self._uldaq.ScanStatus.RUNNING:
                raise SourceLost(f"{self.description}: the scan has ended; check the cable and the device")
            if time.monotonic() >= deadline:
                return Block(self._taken, self.rate_hz, np.empty((0, self.channels), dtype=np.float32))
            time.sleep(0.005)
        lost: int | None = None
        # the device may be writing its next packet: half a buffer of distance keeps what is copied whole
        if scans - self._taken > self._length - self._length // 8:
            behind = scans - self._length // 2
            lost, self._taken = behind - self._taken, behind
        end = min(scans, self._taken + round(_BLOCK_S * self.rate_hz))
        index = np.arange(self._taken * self.channels, end * self.channels) % (self._length * self.channels)
        values = np.frombuffer(self._buffer, dtype=np.float64)[index].reshape(-1, self.channels)
        first, self._taken = self._taken, end
        return Block(first, self.rate_hz, (values / self._order.settings.range_v).astype(np.float32), lost)

    def close(self) -> None:
        """End the scan and let the device go."""
        if self._device is None:
            return
        device, self._device = self._device, None
        quietly: list[Callable[[], Any]] = [device.get_ai_device().scan_stop, device.disconnect, device.release]
        for act in quietly:
            try:
                act()
            except self._uldaq.ULException:
                continue


def _checked_rate(order: Daq, got_hz: float) -> float:
    if abs(got_hz / order.rate_hz - 1.0) > _RATE_OFF:
        raise SourceError(
            f"{order.text}: runs at {got_hz:g} Hz instead of {order.rate_hz:g} Hz; ask for a rate that it has"
        )
    return got_hz


def _words(error: Exception) -> str:
    return " ".join(str(error).split())[:200]
