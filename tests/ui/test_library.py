"""Machines of a folder of jobs: the quick reading against the record itself, what is passed over, trends, the index."""

import contextlib
import json
import math
import os
import random
import re
import shutil
import unicodedata
import zlib
from dataclasses import replace
from pathlib import Path

import msgspec
import numpy as np
import pytest
from job_folders import make_job, run, vector, write_lines
from stillshaft.acquire import hookup as wiring
from stillshaft.solver import stored
from stillshaft.solver.job import Job
from stillshaft.solver.record import NAME, line_bytes
from stillshaft.solver.runs import Chain
from stillshaft.ui import library, library_index
from stillshaft.ui.cli import app
from stillshaft.ui.library import LibraryError, find_machine, list_machines, search, trend
from typer.testing import CliRunner

FORMAT_1 = Path(__file__).parents[2] / "fixtures/jobs/format_1"
STARTED = {"kind": "started", "name": "job", "program": "0.1.0"}


def by_the_record(folder):
    """What is shown of a job when the whole record is read."""
    with Job.open(folder, read_only=True) as job:
        data = (folder / NAME).read_bytes()
        return library_index._shown(folder, job.state, job.problems, data)


def is_quick(folder):
    return library_index.quick_state((folder / NAME).read_bytes()) is not None


# the quick reading and the record


def test_old_job_is_read_quickly_and_as_the_record_says_it():
    assert is_quick(FORMAT_1)
    shown, _ = library_index.look(FORMAT_1)
    assert shown == by_the_record(FORMAT_1)
    assert (shown.runs, shown.closed, shown.verdict, shown.machine) == (3, True, "cannot be told", "dust fan 2")
    assert shown.coefficients_rpm == (1480.0,)


def act(job, rng, number):
    """One random act on a job, of those that change what a list shows and of those that do not."""
    runs = [r.id for r in job.state.runs]
    ids = [e.id for e in job.events]
    acts = [
        lambda: job.append("run", **run(f"r{number}", vector("A", rng.uniform(0, 9)), trusted=rng.random() < 0.7)),
        lambda: job.append("run", **run(f"s{number}", vector("B", 1.0), vector("A", 2.0), purpose="slow roll")),
        lambda: job.append("brief", machine={"name": f"fan {number}", "place": None}, note="n"),
        lambda: job.append("verdict", verdict=rng.choice(["met", "not met"]), basis="limits"),
        lambda: job.append(
            "plan", method="auto", inputs=runs[:1], result={"influence": [{"speed_rpm": 100.0 * number}]}
        ),
        lambda: job.append("use", of=rng.choice(runs), use=rng.random() < 0.5, why="looked at"),
        lambda: job.withdraw(rng.choice(ids), "mistaken"),
        lambda: job.append("decision", text="go on"),
        lambda: job.append("closed"),
        lambda: job.append("reopened", why="again"),
        lambda: job.append("reference", what="sensor moved", turn_deg=None),
        job.undo,
        job.redo,
    ]
    with contextlib.suppress(ValueError, IndexError):  # what the record refuses is not in it
        rng.choice(acts)()


@pytest.mark.parametrize("seed", range(25))
def test_any_record_that_the_program_writes_is_read_quickly_and_rightly(tmp_path, seed):
    rng = random.Random(seed)
    with Job.create(tmp_path / "job", "job", "first person") as job:
        for number in range(40):
            act(job, rng, number)
    assert is_quick(tmp_path / "job")
    wanted = by_the_record(tmp_path / "job")
    assert library_index.look(tmp_path / "job")[0] == replace(wanted, problems=())
    # an undo can make an earlier decision unfit, which shows nowhere in the list
    assert all(re.search(r": entry \d+: (decision|reference): ", problem) for problem in wanted.problems)


A_RUN = {"kind": "run", **run("a", vector("A", 1.0))}


def figures(value):
    return {"kind": "verdict", "verdict": "met", "basis": "x", "figures": {"x": value}}


def nested(depth):
    return json.loads("[" * depth + "]" * depth)


UNUSUAL = {
    "ids that go back": [STARTED, {"kind": "decision", "text": "x", "id": 50}, A_RUN | {"id": 2}],
    "an id again": [STARTED, A_RUN | {"id": 1}],
    "unknown kind": [STARTED, {"kind": "hologram"}, A_RUN],
    "run of a name again": [STARTED, *({"kind": "run", **run("a", vector("A", x))} for x in (1.0, 2.0))],
    "use of no run": [STARTED, A_RUN, {"kind": "use", "of": 1, "use": False, "why": "x"}],
    "verdict after closing": [STARTED, {"kind": "closed"}, {"kind": "verdict", "verdict": "met", "basis": "x"}],
    "plan of no run": [STARTED, {"kind": "plan", "method": "auto", "inputs": [9], "result": {"influence": [{"speed_rpm": 1.0}]}}],
    "number too large": [STARTED, {"kind": "run", **run("a", vector("A", 1e31))}],
    "number too large inside": [STARTED, {"kind": "run", **run("a", vector("A", 1.0, steadiness={"x": [{"y": 1e300}]}))}],
    "whole number too large": [STARTED, figures(10**40)],
    "whole number of 70 bits": [STARTED, figures(2**70)],
    "tables too deep": [STARTED, figures(nested(40))],
    "tables rather deep": [STARTED, figures(nested(12))],
    "amplitude below 0": [STARTED, {"kind": "run", **run("a", vector("A", -1.0))}],
    "point twice": [STARTED, {"kind": "run", **run("a", vector("A", 1.0), vector("A", 2.0))}],
    "key of another kind": [STARTED, A_RUN | {"colour": "red"}],
    "recording outside": [STARTED, A_RUN | {"recording": {"path": "../x.au", "sha256": "0" * 64}}],
    "no reason": [STARTED, A_RUN, {"kind": "use", "of": 2, "use": False, "why": " "}],
    "brief of another shape": [STARTED, {"kind": "brief", "machine": "fan"}],
    "brief with a number too large": [STARTED, {"kind": "brief", "rotor": {"speed_rpm": 1e40}}],
    "by is no text": [STARTED, {"kind": "brief", "note": "x", "by": 3}],
    "time of another zone": [STARTED, {"kind": "run", **run("a", vector("A", 1.0)), "at": "2026-03-01T08:00:00+01:00"}],
    "no time": [STARTED, {"kind": "closed", "at": "yesterday"}],
    "begun twice": [STARTED, STARTED | {"name": "other"}],
}  # fmt: skip


@pytest.mark.parametrize("what", UNUSUAL)
def test_an_unusual_record_is_shown_as_the_record_says_it(tmp_path, what):
    folder = write_lines(tmp_path / "job", UNUSUAL[what])
    assert not is_quick(folder)
    assert library_index.look(folder)[0] == by_the_record(folder)


@pytest.mark.parametrize("what", ["newer format", "too long a line"])
def test_what_the_record_refuses_is_refused(tmp_path, what):
    event = STARTED | {"format": 2} if what == "newer format" else STARTED
    folder = write_lines(tmp_path / "job", [event])
    if what == "too long a line":
        (folder / NAME).write_bytes(line_bytes({"format": 1, "id": 1, "kind": "x"})[:-3] + b" " * 5_000_000 + b'"}\n')
    assert not is_quick(folder)
    with pytest.raises(ValueError, match="format 2|its only line cannot be read"):
        library_index.look(folder)


MANGLED = {
    "a letter changed": lambda data: data.replace(b"dust fan 2", b"dust fan 3"),
    "a torn end": lambda data: data[:-40],
    "no line end": lambda data: data[:-1],
    "a byte order mark": lambda data: b"\xef\xbb\xbf" + data,
    "line ends of another system": lambda data: data.replace(b"\n", b"\r\n"),
    "an empty line": lambda data: data.replace(b"\n", b"\n\n", 1),
    "a line that is not JSON": lambda data: data.replace(b'{"format":1,"id":5,', b'{"format":1,"id";5,'),
    "bytes that are no text": lambda data: data.replace("Gebläse".encode(), b"Gebl\xe4se"),
    "a checksum in capitals": lambda data: data[:-12] + data[-12:].upper(),
}


@pytest.mark.parametrize("what", MANGLED)
def test_a_mangled_record_is_shown_as_the_record_says_it_with_its_problem(tmp_path, what):
    data = (FORMAT_1 / NAME).read_bytes()
    mangled = MANGLED[what](data)
    assert mangled != data
    folder = tmp_path / "job"
    folder.mkdir()
    (folder / NAME).write_bytes(mangled)
    assert not is_quick(folder)
    assert library_index.look(folder)[0] == by_the_record(folder)


@pytest.mark.parametrize("seed", range(10))
def test_any_byte_changed_gives_the_record_s_own_answer(tmp_path, seed):
    data = bytearray((FORMAT_1 / NAME).read_bytes())
    rng = random.Random(seed)
    folder = tmp_path / "job"
    folder.mkdir()
    for _ in range(15):
        changed = bytearray(data)
        changed[rng.randrange(len(data))] = rng.randrange(256)
        (folder / NAME).write_bytes(changed)
        try:
            wanted = by_the_record(folder)
        except ValueError as error:
            with pytest.raises(type(error)):
                library_index.look(folder)
        else:
            assert library_index.look(folder)[0] == wanted


# the folder


def test_machines_are_listed_with_what_is_known_of_them(tmp_path):
    make_job(tmp_path / "plant/a", "Fan 1", 8.0, 2.5, brief={"machine": {"name": "Fan 1", "place": "roof"}})
    make_job(tmp_path / "plant/deep/er/b", "  fan 1", 4.0, 1.5)
    with Job.open(tmp_path / "plant/deep/er/b") as job:
        job.append("verdict", verdict="met", basis="agreed")
        job.append("closed")
    make_job(tmp_path / "c", "pump", 1.0)
    make_job(tmp_path / "d", None, 3.0, name="no machine said")
    found = list_machines(tmp_path)
    assert [m.name for m in found.machines] == ["  fan 1", "no machine said", "pump"]
    fan, unnamed, pump = found.machines
    assert [Path(j.folder).name for j in fan.jobs] == ["a", "b"]
    assert dict(fan.last)["A"].amplitude == 1.5
    assert (fan.verdict, fan.closed, fan.open_jobs, fan.place) == ("met", True, 1, "roof")
    assert (pump.verdict, pump.closed, unnamed.named) == (None, False, False)
    assert found.skipped == ()


def test_names_with_accents_coded_differently_are_one(tmp_path):
    make_job(tmp_path / "a", "Gebläse", 1.0)
    make_job(tmp_path / "b", unicodedata.normalize("NFD", "Gebläse"), 2.0)
    assert len(list_machines(tmp_path).machines) == 1


def test_jobs_without_a_machine_stand_alone_and_serials_that_differ_are_remarked(tmp_path):
    make_job(tmp_path / "a", None, 1.0, name="same")
    make_job(tmp_path / "b", None, 1.0, name="same")
    for folder, serial in (("c", "17"), ("d", "18")):
        make_job(tmp_path / folder, "fan", 1.0, brief={"machine": {"name": "fan", "serial": serial}})
    found = list_machines(tmp_path)
    assert [m.name for m in found.machines] == ["fan", "same", "same"]
    assert "more than one serial (17, 18)" in found.machines[0].remarks[0]
    with pytest.raises(LibraryError, match='"same": 2 go by it'):
        find_machine(found, "same")
    with pytest.raises(LibraryError, match='"mill": is not in .*; there is fan, same, same'):
        find_machine(found, "mill")


def test_what_cannot_be_listed_is_named_and_passed_over(tmp_path):
    make_job(tmp_path / "good", "fan", 1.0)
    (tmp_path / "not a record" / NAME).mkdir(parents=True)
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "linked record").mkdir()
    (tmp_path / "linked record" / NAME).symlink_to(tmp_path / "good" / NAME)
    (tmp_path / "rubbish").mkdir()
    (tmp_path / "rubbish" / NAME).write_bytes(b"\x00\xff" * 100 + b"\n")
    (tmp_path / "good/loop").symlink_to(tmp_path)
    os.mkfifo(tmp_path / "elsewhere" / NAME)
    deep = tmp_path.joinpath("deep", *"abcdefgh")
    make_job(deep / "too deep", "fan", 1.0)
    make_job(tmp_path / ".hidden", "fan", 1.0)
    found = list_machines(tmp_path)
    assert [(m.name, len(m.jobs)) for m in found.machines] == [("fan", 1)]
    said = {Path(s.path).name: (s.why, s.doubtful) for s in found.skipped}
    assert said.keys() == {"not a record", "linked record", "rubbish", "loop", "elsewhere", "g"}
    assert "no ordinary file" in said["linked record"][0]
    assert "is a link and is not followed" in said["loop"][0]
    assert not said["loop"][1]
    assert said["rubbish"][1]
    assert "more than 8 deep" in said["g"][0]


def test_a_folder_that_may_not_be_read_is_named(tmp_path, monkeypatch):
    make_job(tmp_path / "good", "fan", 1.0)
    list_machines(tmp_path)  # loads what is loaded late, from where others than root may not read
    (tmp_path / "locked").mkdir(mode=0o000)
    (tmp_path / "good/recordings").chmod(0o755)
    tmp_path.chmod(0o755)
    monkeypatch.chdir(tmp_path)
    was = os.geteuid()
    try:
        if was == 0:
            os.seteuid(65534)  # root may read everything
        found = list_machines(Path())
    finally:
        os.seteuid(was)
    assert [m.name for m in found.machines] == ["fan"]
    assert found.reasons == ("locked: cannot be read: permission denied",)


def test_too_many_folders_are_said(tmp_path, monkeypatch):
    monkeypatch.setattr(library, "MOST_FOLDERS", 3)
    for name in "abcd":
        (tmp_path / name).mkdir()
    assert "more than 3 folders" in list_machines(tmp_path).reasons[0]


def test_a_copy_of_a_job_counts_once_and_the_longer_one(tmp_path):
    make_job(tmp_path / "a", "fan", 8.0)
    shutil.copytree(tmp_path / "a", tmp_path / "backup of a")
    with Job.open(tmp_path / "a", by="first person") as job:
        job.append("run", **run("later", vector("A", 2.0)))
    found = list_machines(tmp_path)
    assert [Path(j.folder).name for j in found.machines[0].jobs] == ["a"]
    assert Path(found.skipped[0].path).name == "backup of a"
    assert "began as the same job" in found.skipped[0].why


def test_a_folder_that_is_not_there_is_refused(tmp_path):
    with pytest.raises(LibraryError, match="nowhere: cannot be read: no such file or directory"):
        list_machines(tmp_path / "nowhere")


def test_coefficients_of_jobs_and_of_the_library_are_told(tmp_path):
    shutil.copytree(FORMAT_1, tmp_path / "job")
    table = {"format": 1, "display": "mm/s rms", "pulse": {"input": 1},
             "point": [{"name": "A", "input": 2, "quantity": "velocity", "sensitivity": "1 V/(mm/s)"}]}  # fmt: skip
    chain = Chain(wiring.hookup_from(table).fingerprint, "card", 48_000.0)
    entry = stored.Stored(
        "Dust Fan 2", "2026-02-01", 990.0, "mm/s rms", "g", ("A",), (("left", None),), np.ones((1, 1)) + 0j, np.eye(2), chain
    )  # fmt: skip
    stored.save(tmp_path / "coefficients.toml", [entry])
    other = stored.Stored(**{f: getattr(entry, f) for f in entry.__dataclass_fields__} | {"machine": "mill"})
    stored.save(tmp_path / "coefficients.toml", [other])
    fan, mill = list_machines(tmp_path).machines
    assert [(c.speed_rpm, Path(c.source).name) for c in fan.coefficients] == [
        (1480.0, "job"),
        (990.0, "coefficients.toml"),
    ]
    assert (mill.name, mill.jobs, mill.closed) == ("mill", (), None)
    with pytest.raises(LibraryError, match=r"other.toml: there is no such file"):
        list_machines(tmp_path, coefficients=tmp_path / "other.toml")


# trends


def test_trend_brings_readings_to_the_newest_unit_at_their_own_speed(tmp_path):
    make_job(tmp_path / "a", "fan", 10.0, 2.0)
    make_job(tmp_path / "b", "fan", 50.0, unit="µm p-p")
    (point,) = trend(list_machines(tmp_path).machines[0])
    # displacement = velocity / (2 π f); rms to peak √2, peak to peak-to-peak 2: written out here
    per_mm_s = 2.0 * math.sqrt(2.0) * 1000.0 / (2.0 * math.pi * 1480.0 / 60.0)
    first, second = point.rows
    assert point.unit == first.first.unit == "µm p-p"
    assert first.first.amplitude == pytest.approx(10.0 * per_mm_s, rel=1e-12)
    assert first.change.percent == pytest.approx(-80.0)
    assert second.since.percent == pytest.approx(100.0 * (50.0 / (2.0 * per_mm_s) - 1.0))
    assert (second.change.percent, second.change.why) == (None, "one run only")


def test_change_holds_both_intervals_and_the_scatter(tmp_path):
    make_job(tmp_path / "a", "fan", 8.0, 2.0, brief={"repeatability": "3 % 2 deg"})
    (point,) = trend(list_machines(tmp_path).machines[0])
    # ratio r = b/a of independent a, b: relative variances add (propagation of uncertainty, GUM 5.1.2, from memory)
    relative = [math.hypot(0.05, 1.959963984540054 * 0.03 * a) / a for a in (8.0, 2.0)]
    assert point.rows[0].change.percent_ci95 == pytest.approx(100.0 * 0.25 * math.hypot(*relative))


@pytest.mark.parametrize(
    ("brief", "percent"),
    [
        ({"drive": {"kind": "direct"}}, 2.0),
        ({"drive": {"kind": "belt"}}, 5.0),
        ({"interview": {"process": "heat"}}, 5.0),
        ({"drive": {"kind": "belt"}, "repeatability": "1 % 1 deg"}, 1.0),
    ],
)
def test_change_holds_the_scatter_that_is_usual_for_the_machine(tmp_path, brief, percent):
    make_job(tmp_path / "a", "fan", 8.0, 2.0, brief=brief)
    (point,) = trend(list_machines(tmp_path).machines[0])
    relative = [math.hypot(0.05, 1.959963984540054 * 0.01 * percent * a) / a for a in (8.0, 2.0)]
    assert point.rows[0].change.percent_ci95 == pytest.approx(100.0 * 0.25 * math.hypot(*relative))


@pytest.mark.parametrize(
    ("first", "last", "why"),
    [
        ({}, {"speed_rpm": 1600.0}, "at 1480 and 1600 r/min"),
        ({"unit": "furlong"}, {}, "in furlong and mm/s rms"),
    ],
)
def test_change_that_cannot_be_told_says_why(tmp_path, first, last, why):
    write_lines(
        tmp_path / "a",
        [
            STARTED,
            {"kind": "run", **run("x", vector("A", 4.0), **first)},
            {"kind": "run", **run("y", vector("A", 1.0), **last)},
        ],
    )
    (point,) = trend(list_machines(tmp_path).machines[0])
    assert (point.rows[0].change.percent, point.rows[0].change.why) == (None, why)


def test_change_from_nothing_and_without_intervals(tmp_path):
    bare = {"amplitude_ci95": None}
    runs = [run("x", vector("A", 0.0), vector("B", 4.0, **bare)), run("y", vector("A", 1.0), vector("B", 1.0, **bare))]
    write_lines(tmp_path / "a", [STARTED, *({"kind": "run", **r} for r in runs)])
    a, b = trend(list_machines(tmp_path).machines[0])
    assert (a.rows[0].change.percent, a.rows[0].change.why) == (None, "the first is 0")
    assert (b.rows[0].change.percent, b.rows[0].change.percent_ci95) == (-75.0, None)


def test_runs_left_out_and_slow_rolls_are_no_last_vibration(tmp_path):
    with Job.create(tmp_path / "a", "job", "first person") as job:
        job.append("run", **run("first", vector("A", 5.0)))
        job.append("run", **run("doubted", vector("A", 6.0), trusted=False))
        gone = job.append("run", **run("mistaken", vector("A", 7.0)))
        left = job.append("run", **run("left out", vector("A", 8.0)))
        job.append("run", **run("turned by hand", vector("A", 9.0), purpose="slow roll"))
        job.withdraw(gone.id, "wrong machine")
        job.append("use", of=left.id, use=False, why="door open")
    assert is_quick(tmp_path / "a")
    assert dict(list_machines(tmp_path).machines[0].last)["A"].run == "first"


def test_search_looks_in_names_places_and_notes(tmp_path):
    brief = {"machine": {"name": "fan", "place": "Boiler House"}, "note": "cracked hub"}
    make_job(tmp_path / "a", "fan", 1.0, brief=brief)
    make_job(tmp_path / "b", "pump", 1.0, note="smelled of oil")
    found = list_machines(tmp_path)
    wanted = {"boiler  CRACKED": ["fan"], "smelled": ["pump"], "pump cracked": [], "": ["fan", "pump"]}
    assert {text: [m.name for m in search(found, text).machines] for text in wanted} == wanted


# the index


@pytest.fixture
def settled(monkeypatch):
    """Files written just now count as written long ago."""
    monkeypatch.setattr(library_index, "_SETTLED_NS", 0)


def without_count(found):
    return replace(found, from_index=0)


@pytest.fixture
def jobs(tmp_path):
    for number in range(4):
        make_job(tmp_path / f"jobs/{number}", f"fan {number % 2}", 5.0, 2.0)
    return tmp_path / "jobs"


@pytest.mark.usefixtures("settled")
def test_index_knows_what_did_not_change(tmp_path, jobs):
    index = tmp_path / "cache/index.json"
    plain = list_machines(jobs)
    cold = list_machines(jobs, index=index)
    warm = list_machines(jobs, index=index)
    assert (cold.from_index, warm.from_index) == (0, 4)
    assert without_count(warm) == cold == plain
    with Job.open(jobs / "1", by="first person") as job:
        job.append("run", **run("later", vector("A", 1.0)))
    shutil.rmtree(jobs / "2")
    changed = list_machines(jobs, index=index)
    assert changed.from_index == 2
    assert without_count(changed) == list_machines(jobs)
    assert list_machines(jobs, index=index).from_index == 3


@pytest.mark.usefixtures("settled")
def test_index_serves_the_folder_under_another_name(tmp_path, jobs, monkeypatch):
    index = tmp_path / "index.json"
    list_machines(jobs, index=index)
    monkeypatch.chdir(jobs)
    there = list_machines(Path(), index=index)
    assert there.from_index == 4
    assert without_count(there) == list_machines(Path())


@pytest.mark.usefixtures("settled")
def test_a_record_of_the_same_size_and_date_is_read_again(tmp_path, jobs):
    index, record = tmp_path / "index.json", jobs / "0" / NAME
    list_machines(jobs, index=index)
    about = record.stat()
    record.write_bytes(record.read_bytes().replace(b'"fan 0"', b'"fan 7"'))
    os.utime(record, ns=(about.st_atime_ns, about.st_mtime_ns))
    found = list_machines(jobs, index=index)
    assert "fan 7" in [m.name for m in found.machines]


def test_what_was_changed_just_now_is_not_remembered(tmp_path, jobs):
    index = tmp_path / "index.json"
    list_machines(jobs, index=index)
    assert list_machines(jobs, index=index).from_index == 0


def signed(data):
    return b"%08x\n" % zlib.crc32(data) + data


def spoilt(content):
    digest, _, data = content.partition(b"\n")
    table = msgspec.json.decode(data)
    other = msgspec.json.encode(table | {"program": "0.0.1"})
    shape = msgspec.json.encode(table | {"jobs": {"0": {"stamp": [], "shown": {"name": "liar"}}}})
    return {
        "cut off": content[: len(content) // 2],
        "a digit changed": content.replace(b"5.0", b"6.0", 1),
        "empty": b"",
        "rubbish": os.urandom(300),
        "of another version": signed(other),
        "of another shape": signed(shape),
    }


@pytest.mark.usefixtures("settled")
@pytest.mark.parametrize(
    "how", ["cut off", "a digit changed", "empty", "rubbish", "of another version", "of another shape"]
)
def test_a_broken_index_is_made_anew(tmp_path, jobs, how):
    index = tmp_path / "index.json"
    plain = list_machines(jobs, index=index)
    index.write_bytes(spoilt(index.read_bytes())[how])
    again = list_machines(jobs, index=index)
    assert again == plain
    assert again.from_index == 0
    assert list_machines(jobs, index=index).from_index == 4


def test_an_index_that_cannot_be_written_costs_only_time(tmp_path, jobs):
    (tmp_path / "file").write_text("")
    assert list_machines(jobs, index=tmp_path / "file/index.json") == list_machines(jobs)


def test_reading_is_reported(jobs):
    told = []
    list_machines(jobs, lambda share, text: told.append((share, text)))
    assert told[-1] == (1.0, "4 of 4 jobs")


# the command line


@pytest.fixture
def stillshaft(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    return lambda *words: CliRunner().invoke(app, ["machines", *map(str, words)])


def test_machines_as_json(stillshaft, jobs):
    done = stillshaft(jobs, "--json")
    told = json.loads(done.stdout)
    assert done.exit_code == 0
    assert {"format", "verb", "version", "trusted", "reasons"} <= told.keys()
    assert [(m["name"], len(m["jobs"]), m["state"]) for m in told["machines"]] == [
        ("fan 0", 2, "open"),
        ("fan 1", 2, "open"),
    ]
    assert (
        json.loads(stillshaft(jobs, "--machine", "FAN 1", "--json").stdout)["trend"][0]["rows"][0]["change"]["percent"]
        == -60.0
    )


def test_machines_for_people_show_names_as_they_stand(stillshaft, tmp_path):
    make_job(tmp_path / "a", "[red]fan[/red] \x1b[31m", 5.0, 2.0)
    done = stillshaft(tmp_path)
    assert done.exit_code == 0
    assert "[red]fan[/red]" in done.stdout
    assert "\x1b[31m" not in done.stdout
    assert "-60 ± 2" in stillshaft(tmp_path, "--machine", "[red]fan[/red] \x1b[31m").stdout
    assert "no machine to show" in stillshaft(tmp_path, "--search", "pump").stdout


def test_a_record_that_cannot_be_read_ends_in_status_3(stillshaft, jobs):
    (jobs / "bad").mkdir()
    (jobs / "bad" / NAME).write_text("no record\n")
    done = stillshaft(jobs)
    assert done.exit_code == 3
    assert "bad: is no job's record" in done.stderr
    assert "fan 1" in done.stdout


def test_machine_and_search_together_are_wrong_usage(stillshaft, jobs):
    assert stillshaft(jobs, "--machine", "a", "--search", "b").exit_code == 2
