"""DAQ adapters on faithful fakes of the makers' packages; the fakes are held against the packages' own signatures.

The drivers themselves cannot run without a device: `nidaqmx` is installed and imports, `uldaq` is read as source.
"""

import ast
import ctypes
import importlib.util
import inspect
import sys
import types
from enum import Enum
from pathlib import Path

import nidaqmx
import numpy as np
import pytest
from nidaqmx import constants, errors, stream_readers
from nidaqmx.system import Device, System
from nidaqmx.task import Task
from nidaqmx.task.channels import AIChannel
from nidaqmx.task.collections import AIChannelCollection
from stillshaft.acquire import catalogue, daq, hookup
from stillshaft.acquire.source import SourceError, SourceLost

CHANNELS, RATE_HZ = 3, 10_000.0


def ordered(text, **settings):
    return daq.order_from(text, CHANNELS, RATE_HZ, daq.Settings(**settings))


# nidaqmx


class FakeChannel:
    ai_coupling = ai_excit_src = ai_excit_val = None


class FakeAIChannels:
    def __init__(self, task):
        self._task = task

    def add_ai_voltage_chan(self, physical_channel, terminal_config=None, min_val=-5.0, max_val=5.0):
        self._task.asked = (physical_channel, terminal_config, min_val, max_val)
        self._task.channel = FakeChannel()
        return self._task.channel


class FakeTiming:
    samp_clk_rate, ai_conv_rate = None, 250_000.0

    def cfg_samp_clk_timing(self, rate, sample_mode=None, samps_per_chan=1000):
        self.samp_clk_rate = rate * FakeTask.rate_factor
        self.asked = (sample_mode, samps_per_chan)


class FakeTask:
    """Counts on in volts: frame + channel / 10; `script` holds an error code for each read, None for none."""

    script, made, rate_factor = [], [], 1.0

    def __init__(self):
        FakeTask.made.append(self)
        self.ai_channels, self.timing = FakeAIChannels(self), FakeTiming()
        self.in_stream = types.SimpleNamespace(input_buf_size=None, task=self)
        self.started = self.closed = False

    def start(self):
        self.started = True

    def close(self):
        self.closed = True


class FakeReader:
    frame = 0

    def __init__(self, task_in_stream):
        self._task = task_in_stream.task

    def read_many_sample(self, data, number_of_samples_per_channel=-1, timeout=10.0):
        assert self._task.started
        assert not self._task.closed
        code = FakeTask.script.pop(0) if FakeTask.script else None
        if code is not None:
            raise errors.DaqReadError("as scripted", code, 0)
        frames = FakeReader.frame + np.arange(number_of_samples_per_channel)
        data[:] = frames + np.arange(len(data))[:, None] / 10
        FakeReader.frame += number_of_samples_per_channel
        return number_of_samples_per_channel


@pytest.fixture
def national(monkeypatch):
    FakeTask.script, FakeTask.made, FakeTask.rate_factor, FakeReader.frame = [], [], 1.0, 0
    device = types.SimpleNamespace(ai_simultaneous_sampling_supported=False)
    monkeypatch.setattr(nidaqmx, "Task", FakeTask)
    monkeypatch.setattr(stream_readers, "AnalogMultiChannelReader", FakeReader)
    local = types.SimpleNamespace(local=lambda: types.SimpleNamespace(devices={"Dev1": device}))
    monkeypatch.setattr(nidaqmx.system, "System", local)
    return device


def parameters(function):
    return set(inspect.signature(function).parameters) - {"self"}


def test_the_fake_asks_no_more_than_the_package_offers():
    assert parameters(FakeAIChannels.add_ai_voltage_chan) <= parameters(AIChannelCollection.add_ai_voltage_chan)
    timing = nidaqmx.task._timing.Timing
    assert parameters(FakeTiming.cfg_samp_clk_timing) <= parameters(timing.cfg_samp_clk_timing)
    reader = stream_readers.AnalogMultiChannelReader
    assert parameters(FakeReader.read_many_sample) <= parameters(reader.read_many_sample)
    assert parameters(FakeReader.__init__) <= parameters(reader.__init__)
    for owner, names in (
        (AIChannel, ("ai_coupling", "ai_excit_src", "ai_excit_val")),
        (timing, ("samp_clk_rate", "ai_conv_rate")),
        (nidaqmx.task._in_stream.InStream, ("input_buf_size",)),
        (Device, ("ai_simultaneous_sampling_supported",)),
        (System, ("local", "devices")),
        (Task, ("start", "close", "ai_channels", "timing", "in_stream")),
        (reader, ("verify_array_shape",)),
    ):
        for name in names:
            assert hasattr(owner, name), (owner, name)


def test_samples_are_volts_over_the_range_and_the_device_is_set(national):
    source = ordered(
        "nidaqmx:Dev1/ai2", range_v=5.0, coupling="ac", iepe_a=0.004, terminal="pseudo-differential"
    ).open()
    task = FakeTask.made[0]
    assert task.asked == ("Dev1/ai2:4", constants.TerminalConfiguration.PSEUDO_DIFF, -5.0, 5.0)
    assert (task.channel.ai_coupling, task.channel.ai_excit_val) == (constants.Coupling.AC, 0.004)
    assert task.channel.ai_excit_src == constants.ExcitationSource.INTERNAL
    assert task.timing.asked == (constants.AcquisitionType.CONTINUOUS, 200_000)
    assert task.in_stream.input_buf_size == 200_000
    block = source.read(0.1)
    np.testing.assert_allclose(block.samples[:2], [[0.0, 0.02, 0.04], [0.2, 0.22, 0.24]], atol=1e-7)
    assert source.read(0.1).first_frame == 1000
    assert source.skew_s == (0.0, 4e-6, 8e-6)
    source.close()
    assert task.closed


def test_a_device_that_samples_at_once_has_no_skew(national):
    national.ai_simultaneous_sampling_supported = True
    assert ordered("nidaqmx:Dev1").open().skew_s == (0.0, 0.0, 0.0)


@pytest.mark.parametrize("code", [-200279, -200010, -200361])
def test_an_overrun_starts_the_task_anew_behind_a_gap(national, code):
    source = ordered("nidaqmx:Dev1").open()
    assert source.read(0.1).lost_before is None
    FakeTask.script = [code]
    assert not len(source.read(0.1).samples)
    assert [t.closed for t in FakeTask.made] == [True, False]
    assert source.read(0.1).lost_before == -1
    assert source.read(0.1).lost_before is None


def test_not_yet_is_no_loss_and_a_device_that_is_gone_is(national):
    source = ordered("nidaqmx:Dev1").open()
    FakeTask.script = [-200284, -200045]
    assert not len(source.read(0.1).samples)
    with pytest.raises(SourceLost, match="nidaqmx:Dev1: as scripted"):
        source.read(0.1)


def test_a_rate_that_the_device_bends_is_refused(national):
    FakeTask.rate_factor = 1.02
    with pytest.raises(SourceError, match="runs at 10200 Hz instead of 10000 Hz"):
        ordered("nidaqmx:Dev1").open()


def test_without_the_driver_the_package_says_so_in_one_line():
    with pytest.raises(SourceError, match="nidaqmx:Dev1: .*install the maker's driver") as caught:
        ordered("nidaqmx:Dev1").open()
    assert "\n" not in str(caught.value)


# uldaq


class FakeULError(Exception):
    pass


class FakeInputs:
    """A scan that the test moves on by hand."""

    def __init__(self):
        self.total, self.running, self.coupled, self.powered = 0, True, {}, {}

    def get_config(self):
        return types.SimpleNamespace(
            set_chan_coupling_mode=self.coupled.__setitem__, set_chan_iepe_mode=self.powered.__setitem__
        )

    def get_info(self):
        return types.SimpleNamespace(get_ranges=lambda mode: [ULDAQ.Range.BIP10VOLTS, ULDAQ.Range.BIP5VOLTS])

    def a_in_scan(
        self, low_channel, high_channel, input_mode, analog_range, samples_per_channel, rate, options, flags, data
    ):
        self.asked = (low_channel, high_channel, input_mode, analog_range, samples_per_channel)
        self.data, self.channels = data, high_channel - low_channel + 1
        return rate

    def get_scan_status(self):
        status = ULDAQ.ScanStatus.RUNNING if self.running else ULDAQ.ScanStatus.IDLE
        return status, types.SimpleNamespace(current_total_count=self.total)

    def scan_stop(self):
        self.running = False

    def move_on(self, scans):
        values = np.frombuffer(self.data)
        numbers = np.arange(self.total, self.total + scans * self.channels)
        values.flags.writeable = True
        values[numbers % values.size] = numbers
        self.total += scans * self.channels


class FakeDevice:
    inputs = None

    def __init__(self, daq_device_descriptor):
        FakeDevice.inputs = FakeInputs()

    def connect(self):
        pass

    def get_ai_device(self):
        return FakeDevice.inputs

    def disconnect(self):
        pass

    def release(self):
        pass


ULDAQ = types.ModuleType("uldaq")
ULDAQ.InterfaceType = Enum("InterfaceType", ["ANY"])
ULDAQ.AiInputMode = Enum("AiInputMode", ["DIFFERENTIAL", "SINGLE_ENDED", "PSEUDO_DIFFERENTIAL"])
ULDAQ.CouplingMode = Enum("CouplingMode", ["DC", "AC"])
ULDAQ.IepeMode = Enum("IepeMode", ["DISABLED", "ENABLED"])
ULDAQ.Range = Enum("Range", ["BIP10VOLTS", "BIP5VOLTS"])
ULDAQ.ScanOption = Enum("ScanOption", ["CONTINUOUS"])
ULDAQ.AInScanFlag = Enum("AInScanFlag", ["DEFAULT"])
ULDAQ.ScanStatus = Enum("ScanStatus", ["IDLE", "RUNNING"])
ULDAQ.ULException = FakeULError
ULDAQ.DaqDevice = FakeDevice
ULDAQ.create_float_buffer = lambda number_of_channels, samples_per_channel: (
    ctypes.c_double * (number_of_channels * samples_per_channel)
)()
ULDAQ.get_daq_device_inventory = lambda interface_type: [types.SimpleNamespace(product_name="USB-1", unique_id="0A1B")]


@pytest.fixture
def measurement_computing(monkeypatch):
    monkeypatch.setitem(sys.modules, "uldaq", ULDAQ)


def test_the_other_fake_asks_no_more_than_its_package_offers():
    """The package cannot be imported without its library: its source is read instead."""
    folder = Path(importlib.util.find_spec("uldaq").origin).parent
    functions, members = {}, set()
    for file in folder.glob("*.py"):
        for node in ast.walk(ast.parse(file.read_text())):
            if isinstance(node, ast.FunctionDef):
                functions.setdefault(node.name, set()).update(a.arg for a in node.args.args)
            if isinstance(node, ast.ClassDef):
                members |= {
                    (node.name, t.id)
                    for b in node.body
                    if isinstance(b, ast.Assign)
                    for t in b.targets
                    if hasattr(t, "id")
                }
    for function in (FakeInputs.a_in_scan, FakeDevice.connect, ULDAQ.create_float_buffer):
        name = "create_float_buffer" if function is ULDAQ.create_float_buffer else function.__name__
        assert parameters(function) <= functions[name], name
    for name in ("get_scan_status", "scan_stop", "get_ai_device", "release", "get_config", "get_info", "get_ranges",
                 "set_chan_iepe_mode", "set_chan_coupling_mode", "get_daq_device_inventory"):  # fmt: skip
        assert name in functions
    enums = (
        "InterfaceType",
        "AiInputMode",
        "CouplingMode",
        "IepeMode",
        "Range",
        "ScanOption",
        "AInScanFlag",
        "ScanStatus",
    )
    for enum in enums:
        for member in getattr(ULDAQ, enum):
            assert (enum, member.name) in members, (enum, member.name)


def test_a_scan_is_followed_by_its_count(measurement_computing):
    source = ordered("uldaq:0A1B", coupling="ac", iepe_a=0.004).open()
    inputs = FakeDevice.inputs
    assert inputs.asked == (0, 2, ULDAQ.AiInputMode.DIFFERENTIAL, ULDAQ.Range.BIP10VOLTS, 200_000)
    assert set(inputs.powered.values()) == {ULDAQ.IepeMode.ENABLED}
    assert set(inputs.coupled.values()) == {ULDAQ.CouplingMode.AC}
    assert not len(source.read(0.02).samples)
    inputs.move_on(1500)
    blocks = [source.read(0.1), source.read(0.1)]
    assert [(b.first_frame, len(b.samples), b.lost_before) for b in blocks] == [(0, 1000, None), (1000, 500, None)]
    np.testing.assert_allclose(blocks[1].samples[0], np.array([3000, 3001, 3002]) / 10.0, rtol=1e-6)
    assert source.skew_s == (0.0, 1 / 30_000.0, 2 / 30_000.0)


def test_a_lap_is_a_gap_of_known_length(measurement_computing):
    source = ordered("uldaq:0A1B").open()
    inputs = FakeDevice.inputs
    inputs.move_on(1000)
    source.read(0.1)
    inputs.move_on(199_000)
    inputs.move_on(150_000)
    block = source.read(0.1)
    assert block.lost_before == block.first_frame - 1000 == 249_000
    np.testing.assert_allclose(block.samples[0, 0], 3 * 250_000 / 10.0, rtol=1e-6)


def test_a_scan_that_ends_is_a_lost_source(measurement_computing):
    source = ordered("uldaq:USB-1").open()
    FakeDevice.inputs.running = False
    with pytest.raises(SourceLost, match="the scan has ended"):
        source.read(0.1)
    source.close()


@pytest.mark.parametrize(
    ("text", "settings", "match"),
    [
        ("uldaq:none", {}, 'uldaq:none: not found; there is "USB-1 0A1B"'),
        ("uldaq:0A1B", {"range_v": 3.0}, "has no range of ± 3 V; it has BIP10VOLTS, BIP5VOLTS"),
    ],
)
def test_what_the_device_has_not_is_refused(measurement_computing, text, settings, match):
    with pytest.raises(SourceError, match=match):
        ordered(text, **settings).open()


def test_without_its_library_it_says_so():
    with pytest.raises(SourceError, match="needs the maker's library libuldaq"):
        ordered("uldaq:0A1B").open()


# hook-up and catalogue


def wired(full_scale, **device):
    point = {"name": "a", "input": 2, "quantity": "velocity", "sensitivity": "20 mV/(mm/s)", "full_scale": full_scale}
    return hookup.hookup_from({"format": 1, "point": [point], "device": device})


def test_the_hookup_sets_the_device():
    chosen = catalogue.choose("nidaqmx:Dev1/ai4", wired("5 V", range="5 V", iepe="4 mA", coupling="ac"), 10_000.0)
    assert chosen.request == daq.Daq(
        "nidaqmx:Dev1/ai4", "Dev1", 4, 2, 10_000.0, daq.Settings(5.0, "ac", 0.004, "default")
    )


def test_skew_becomes_a_delay_against_the_pulse():
    """Scanned k/(N·f_s) after the pulse: delay −k/(N·f_s), as the project's conventions say."""
    skewed = hookup.with_skew(wired("5 V"), (0.0, 1 / 30_000.0))
    assert skewed.points[0].delay_s == pytest.approx(-1 / 30_000.0)
    assert hookup.with_skew(wired("5 V"), ()).points[0].delay_s == 0.0


@pytest.mark.parametrize(
    ("text", "full_scale", "rate_hz", "match"),
    [
        ("nidaqmx:Dev1", "2 V", 1e4, "point a: full_scale is 2 V, the device's range 10 V"),
        ("nidaqmx:Dev1", None, 1e4, "needs a hook-up and a sample rate"),
        ("uldaq:1", "10 V", None, "needs a hook-up and a sample rate"),
        ("nidaqmx:", "10 V", 1e4, "write for example"),
    ],
)
def test_what_does_not_fit_is_refused(text, full_scale, rate_hz, match):
    with pytest.raises(SourceError, match=match):
        catalogue.choose(text, full_scale and wired(full_scale), rate_hz)


@pytest.mark.parametrize(
    ("device", "match"),
    [
        ({"range": "0 V"}, "must be above 0"),
        ({"iepe": "1 A"}, "from 0 to 20 mA"),
        ({"range": "5 kg"}, "device.range"),
        ({"terminal": "loose"}, "device.terminal"),
    ],
)
def test_device_settings_that_cannot_be_are_named(device, match):
    with pytest.raises(hookup.HookupError, match=match):
        wired("10 V", **device)
