"""What all tests share: a private sound server, and the check that nothing is left running."""

import multiprocessing
import os
import shutil
import subprocess
import tempfile
import threading
import time
from pathlib import Path

import numpy as np
import pytest
from hypothesis import settings
from threadpoolctl import threadpool_limits

# the same examples every time, so that a change answers for what it breaks; STILLSHAFT_FUZZ=1 looks for new ones
settings.register_profile("same", derandomize=True)
settings.load_profile("default" if os.environ.get("STILLSHAFT_FUZZ") == "1" else "same")
threadpool_limits(1, user_api="blas")  # as the command line has it
os.environ["OPENBLAS_NUM_THREADS"] = "1"  # for processes started by tests
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
for name in ("QT_SCALE_FACTOR", "QT_FONT_DPI", "QT_STYLE_OVERRIDE"):
    os.environ.pop(name, None)

pytest_plugins = ["figures.plugin"]  # the figures of the benchmarks

_MAP = "front-left,front-right,rear-left,rear-right"


@pytest.fixture(autouse=True)
def nothing_left_running():
    """Fail a test that leaves threads or child processes behind."""
    before = set(threading.enumerate())
    yield
    deadline = time.monotonic() + 3.0
    while time.monotonic() < deadline:
        threads = [t.name for t in set(threading.enumerate()) - before if not t.name.startswith("pytest_timeout")]
        children = [c.name for c in multiprocessing.active_children()]
        if not threads and not children:
            return
        time.sleep(0.02)
    assert not threads, f"test left threads running: {sorted(threads)}"
    assert not children, f"test left processes running: {sorted(children)}"


def children(process_id):
    """Processes that a process has started, as the kernel lists them thread by thread (proc(5)), the oldest first."""
    lists = Path(f"/proc/{process_id}/task").glob("*/children")
    return sorted(int(number) for path in lists for number in path.read_text().split())


class VirtualCard:
    """A private PulseAudio server with a four-channel sink whose monitor is captured from."""

    rate_hz, channels = 48_000, 4

    def __init__(self, folder):
        home, run = folder / "h", folder / "r"
        run.mkdir(mode=0o700)
        (home / ".config/pulse").mkdir(parents=True)
        (home / ".config/pulse/client.conf").write_text("autospawn = no\n")
        self.environment = {k: v for k, v in os.environ.items() if not k.startswith("PULSE_")}
        self.environment |= {"XDG_RUNTIME_DIR": str(run), "HOME": str(home)}
        self._folder = folder
        self.start()

    def start(self):
        """Start the server, also again after it was killed."""
        # without norewinds the first callback comes late and the head of the play is lost; a channel map that is not
        # this one mixes the channels
        self.server = subprocess.Popen(
            ["pulseaudio", "-n", "--daemonize=no", "--exit-idle-time=-1", "-L", "module-native-protocol-unix", "-L",
             f"module-null-sink sink_name=bench rate={self.rate_hz} channels={self.channels} format=float32le "
             f"channel_map={_MAP} norewinds=1"],
            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, env=self.environment,
        )  # fmt: skip
        deadline = time.monotonic() + 10.0
        while subprocess.run(["pactl", "info"], env=self.environment, capture_output=True, check=False).returncode:
            if time.monotonic() > deadline:
                self.close()
                raise AssertionError("the sound server did not start")
            time.sleep(0.05)

    def play(self, samples):
        """Start to play float32 samples (frames, 4); returns the player's process."""
        path = self._folder / "play.f32"
        path.write_bytes(np.ascontiguousarray(samples, dtype="<f4").tobytes())
        return subprocess.Popen(
            ["pacat", "--playback", "--raw", "--device=bench", "--format=float32le", f"--rate={self.rate_hz}",
             f"--channels={self.channels}", f"--channel-map={_MAP}", "--no-remix", "--no-remap", "--latency-msec=500",
             str(path)],
            env=self.environment,
        )  # fmt: skip

    def close(self):
        self.server.kill()
        self.server.wait()


@pytest.fixture
def virtual_card(monkeypatch):
    """The virtual sound card; skipped only where its programs are not installed."""
    absent = [p for p in ("pulseaudio", "pactl", "pacat") if shutil.which(p) is None]
    if absent:
        if os.environ.get("STILLSHAFT_REQUIRE_CARD") == "1":
            pytest.fail(f"not installed: {', '.join(absent)}")
        pytest.skip(f"the virtual sound card needs {', '.join(absent)}: apt-get install pulseaudio pulseaudio-utils")
    with tempfile.TemporaryDirectory(prefix="card") as folder:
        card = VirtualCard(Path(folder))
        for key in ("XDG_RUNTIME_DIR", "HOME"):
            monkeypatch.setenv(key, card.environment[key])
        for key in [k for k in os.environ if k.startswith("PULSE_")]:
            monkeypatch.delenv(key)
        yield card
        card.close()
