"""The same measuring on a Dask cluster: a scheduler and a worker on this machine."""

import importlib.util
import json
import subprocess
import sys
from pathlib import Path

import pytest
from recorded_jobs import recorded_job

pytestmark = pytest.mark.skipif(
    importlib.util.find_spec("distributed") is None,
    reason="the cluster needs dask and distributed: pip install 'stillshaft[cluster]'",
)


@pytest.fixture(scope="module")
def scheduler():
    words = [sys.executable, str(Path(__file__).with_name("local_cluster.py"))]
    started = subprocess.Popen(words, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
    yield started.stdout.readline().strip()
    started.communicate("", timeout=60)


def stillshaft(*words):
    whole = [sys.executable, "-m", "stillshaft.ui.cli", "reprocess", *map(str, words)]
    return subprocess.run(whole, capture_output=True, text=True, check=False, timeout=120)


def test_a_cluster_measures_what_the_processes_here_measure(tmp_path, scheduler):
    job = recorded_job(tmp_path / "job", 1.0, 1.5)
    (job / "recordings/0002.events.jsonl").unlink()
    here = stillshaft(job, "--results", tmp_path / "here.jsonl", "--json")
    there = stillshaft(job, "--results", tmp_path / "there.jsonl", "--json", "--scheduler", scheduler)
    assert (here.returncode, there.returncode) == (3, 3), there.stderr
    told = [json.loads(done.stdout) for done in (here, there)]
    assert told[0]["measured"] == told[1]["measured"] == 1
    assert told[0]["recordings"] == told[1]["recordings"]
    assert "event log is missing" in told[1]["recordings"][0]["problem"]
    again = json.loads(stillshaft(job, "--results", tmp_path / "there.jsonl", "--json").stdout)
    assert (again["measured"], again["from_results"]) == (0, 1)


def test_a_scheduler_that_does_not_answer_is_said_in_one_line(tmp_path):
    job = recorded_job(tmp_path / "job", 1.0)
    done = stillshaft(job, "--results", tmp_path / "r.jsonl", "--scheduler", "tcp://127.0.0.1:9")
    assert done.returncode == 1
    assert "tcp://127.0.0.1:9: no Dask scheduler answers" in done.stderr.splitlines()[-1]
    assert "Traceback" not in done.stderr
