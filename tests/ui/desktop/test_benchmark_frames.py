"""What a frame of the live pages costs, how old its samples are, and whether memory stays flat. CPU times, medians.

The limits are the project's own. Each figure is printed with the time of a reference kernel in the same run, so that a
busy or slow machine can be told from a slow program.
"""

import gc
import os
import shutil
import statistics
import subprocess
import sys
import time
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from PySide6 import QtCore, QtWidgets
from stillshaft.acquire import hookup as hookups
from stillshaft.acquire import simulated
from stillshaft.ui.desktop import simulator
from stillshaft.ui.desktop.run_watch import RunWatch
from stillshaft.ui.desktop.stages import Stage
from stillshaft.ui.desktop.watch import Watch
from stillshaft.ui.theme import THEMES

pytestmark = pytest.mark.benchmark
ON_X = "STILLSHAFT_ON_X" in os.environ
FRAME_MS = 10.0 if ON_X else 8.0
SHARE, OLDEST_S, FRAMES_PER_HOUR = 0.25, 0.150, 72_000


def reference_ms():
    """A fixed piece of work: one FFT of 2^18 points, CPU time, median of 7."""
    x = np.random.default_rng(0).standard_normal(1 << 18)
    times = []
    for _ in range(7):
        begun = time.thread_time()
        np.fft.rfft(x)
        times.append(1e3 * (time.thread_time() - begun))
    return statistics.median(times)


@pytest.fixture
def four_channels(wait_until):
    """The simulated rotor with a pulse and three sensors at 48 kHz, in real time, watched for some seconds."""
    sensors = (*simulated.demo_sensors(), simulated.Sensor("drive end vertical", 0, 0.0))
    order = replace(simulator.order(simulator.Teaching(), 1), sensors=sensors)
    watch = Watch(order, hookups.hookup_from(simulated.hookup_for(sensors)))
    wait_until(lambda: watch.latest is not None and watch.latest.seconds > 15.0, 40.0)
    yield watch
    watch.close()


@pytest.fixture
def shown(dressed, qtbot, four_channels, wait):
    """The live part of the Runs page, fed with what was measured."""
    live = RunWatch()
    qtbot.addWidget(live)
    live.set_theme(THEMES["light"])
    live.set_points(tuple(p.name for p in four_channels.latest.measured.points))
    live.resize(1400, 900)
    live.set_room(1400, 14)
    live.show()
    wait(300)
    return live


def frame(live, watch):
    """Everything drawn anew, as if all of it had changed."""
    live.show_snapshot(watch.latest)
    live.show_glance(None)
    live.show_glance(watch.glance)
    QtWidgets.QApplication.sendPostedEvents()
    QtWidgets.QApplication.processEvents()


def test_a_frame_with_everything_new(shown, four_channels, capsys):
    medians = []
    for _ in range(9):
        begun = time.thread_time()
        for _ in range(10):
            frame(shown, four_channels)
        medians.append(1e2 * (time.thread_time() - begun))
    measured, reference = statistics.median(medians), reference_ms()
    with capsys.disabled():
        where = QtWidgets.QApplication.platformName()
        print(f"\nframe, {where}: {measured:.2f} ms (wanted {FRAME_MS:.0f}; reference kernel {reference:.2f} ms)")  # noqa: T201
    assert measured <= FRAME_MS


def test_share_of_a_core_and_age_of_samples(program, wait, wait_until, capsys):
    feed, page = program.feed, program.frame
    feed._real_time = True
    page.open(Stage.RUNS)
    feed.start()
    wait_until(lambda: feed.snapshot is not None and feed.snapshot.seconds > 10.0, 40.0)
    ages = {}  # of each glance, when it was painted first

    class Painted(QtCore.QObject):
        def eventFilter(self, watched, event):
            if event.type() == QtCore.QEvent.Type.Paint and feed.watch is not None:
                seen = feed.watch.glance
                if feed._seen == seen.number:  # the screen has taken it
                    ages.setdefault(seen.number, time.monotonic() - seen.arrived_s)
            return False

    listener = Painted()
    waveform = page.pages[Stage.RUNS].watch.waveform
    waveform.installEventFilter(listener)
    shares = []
    for _ in range(7):
        begun, wall = time.process_time(), time.monotonic()
        deadline = wall + 2.0
        # 20 frames a second of what may change with every block; cloud and ribbon follow the vectors, five a second
        while time.monotonic() < deadline:
            waveform.update()
            page.pages[Stage.RUNS].watch.spectrum.update()
            wait(50)
        shares.append((time.process_time() - begun) / (time.monotonic() - wall))
    waveform.removeEventFilter(listener)
    share = statistics.median(shares)
    assert len(ages) > 30
    median_s, oldest_s = np.quantile(list(ages.values()), [0.5, 0.95])
    said = [
        f"at 20 frames a second: {100 * share:.1f} % of a core (wanted {100 * SHARE:.0f})",
        f"samples on the screen after {1e3 * median_s:.0f} ms, 95 % within {1e3 * oldest_s:.0f} ms",
        f"(wanted {1e3 * OLDEST_S:.0f}); reference kernel {reference_ms():.2f} ms",
    ]
    with capsys.disabled():
        print("\n" + ", ".join(said))  # noqa: T201
    assert share <= SHARE
    assert oldest_s <= OLDEST_S


@pytest.mark.timeout(1200)
def test_memory_stays_flat_for_an_hour_of_frames(shown, four_channels, capsys):
    def resident_mb():
        pages = int(Path("/proc/self/statm").read_text().split()[1])
        return pages * os.sysconf("SC_PAGE_SIZE") / 2**20

    for _ in range(FRAMES_PER_HOUR // 20):
        frame(shown, four_channels)
    gc.collect()
    begun = resident_mb()
    for _ in range(FRAMES_PER_HOUR - FRAMES_PER_HOUR // 20):
        frame(shown, four_channels)
    gc.collect()
    ended = resident_mb()
    with capsys.disabled():
        print(f"\n{FRAMES_PER_HOUR} frames: {begun:.1f} MB, then {ended:.1f} MB (wanted within 2 %)")  # noqa: T201
    assert ended <= 1.02 * begun


@pytest.mark.skipif(ON_X or shutil.which("Xvfb") is None, reason="needs Xvfb, and is not run on itself")
def test_the_same_on_an_x_server(x_server, capsys):
    done = subprocess.run(
        [sys.executable, "-m", "pytest", "-q", "-s", "-m", "benchmark", "-p", "no:cacheprovider", __file__, "-k",
         "frame_with or share_of"],
        env=x_server, capture_output=True, text=True, check=False, timeout=170,
    )  # fmt: skip
    with capsys.disabled():
        print("".join(f"\n  {line}" for line in done.stdout.splitlines() if "wanted" in line))  # noqa: T201
    assert done.returncode == 0, done.stdout + done.stderr
