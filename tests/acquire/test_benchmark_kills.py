"""Two hundred recordings whose program is killed at random; needs sox and ffmpeg beside."""

import random
import shutil
import signal
import subprocess
import sys
import time

import numpy as np
import pytest
import soundfile

pytestmark = [pytest.mark.benchmark, pytest.mark.timeout(3600)]

KILLS = 200
WRITER = (
    "import sys, numpy as np\nfrom pathlib import Path\nfrom stillshaft.acquire.recording import Recorder\n"
    "r = Recorder(Path(sys.argv[1]), 48000.0, ['a', 'b'], 'bench', None)\n"
    "while True:\n"
    " r.write(np.full((int(sys.argv[2]), 2), 0.25, np.float32)); print(r.frames, flush=True)\n"
)


def frames_by_others(path):
    """Frames that SoX and ffmpeg read."""
    sox = subprocess.run(["sox", path, "-t", "f32", "-"], capture_output=True, check=True).stdout
    ffmpeg = subprocess.run(
        ["ffmpeg", "-v", "error", "-i", path, "-f", "f32le", "-"], capture_output=True, check=True
    ).stdout
    return len(sox) // 8, len(ffmpeg) // 8


def test_nothing_that_was_written_is_lost(tmp_path, figure):
    assert shutil.which("sox"), "apt-get install sox ffmpeg"
    chance, kills = random.Random(7), figure.count(KILLS)
    worst = {"soundfile": 0, "sox": 0, "ffmpeg": 0}
    for number in range(kills):
        path = tmp_path / f"{number}.au"
        writer = subprocess.Popen(
            [sys.executable, "-c", WRITER, path, str(chance.choice((240, 2400, 48_000)))],
            stdout=subprocess.PIPE,
            text=True,
        )
        taken = int(writer.stdout.readline())
        time.sleep(chance.uniform(0.0, 0.2))
        writer.send_signal(signal.SIGKILL)
        rest = writer.communicate()[0].split("\n")[:-1]  # a torn last line says nothing
        taken = int(rest[-1]) if rest else taken
        samples, _ = soundfile.read(path, dtype="float32")
        assert (samples == np.float32(0.25)).all()
        sox, ffmpeg = frames_by_others(path)
        for name, frames in (("soundfile", len(samples)), ("sox", sox), ("ffmpeg", ffmpeg)):
            worst[name] = max(worst[name], taken - frames)
        path.unlink()
    for name, frames in worst.items():
        figure(f"frames that write() took and {name} does not read after a kill, worst", frames, "frames", at_most=0.0,
               cases=kills)  # fmt: skip
