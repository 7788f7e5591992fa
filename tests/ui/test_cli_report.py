"""`report` on the command line: files and exports, JSON, exit status, one line for what cannot be done."""

import csv
import hashlib
import io
import json
import shutil

import pytest
from report_jobs import made_up_job
from stillshaft.solver.job import Job
from stillshaft.ui import report_exports
from test_cli import assert_one_line, stillshaft


@pytest.fixture(scope="module")
def job(tmp_path_factory):
    return made_up_job(tmp_path_factory.mktemp("report") / "job", planes=2, points=3, runs=5, name="Gebläse ②")


@pytest.fixture
def own(job, tmp_path):
    """A copy that may be changed."""
    return shutil.copytree(job, tmp_path / "job")


def rows_of(data):
    return list(csv.DictReader(io.StringIO(data.decode("utf-8"), newline="")))


def test_without_a_file_it_goes_among_the_jobs_reports_and_is_recorded(own):
    done = stillshaft("report", own, "--by", "writer")
    assert done.returncode == 0, done.stderr
    assert "not done: Verdict: none recorded" in done.stdout
    (path,) = (own / "reports").iterdir()
    assert f"{path}: " in done.stdout
    assert path.read_bytes().startswith(b"%PDF-")
    with Job.open(own, read_only=True) as job:
        recorded = job.state.reports[-1]
    assert (recorded.by, recorded.what.file.path) == ("writer", f"reports/{path.name}")
    assert recorded.what.file.sha256 == hashlib.sha256(path.read_bytes()).hexdigest()
    assert stillshaft("report", own).returncode == 0
    assert len(list((own / "reports").iterdir())) == 2


def test_files_named_are_written_and_told_as_json(job, tmp_path):
    paths = {kind: tmp_path / f"out.{kind}" for kind in ("pdf", "html", "csv", "json")}
    before = (job / "job.jsonl").read_bytes()
    done = stillshaft(
        "report", job, "--pdf", paths["pdf"], "--html", paths["html"], "--csv", paths["csv"], "--data", paths["json"],
        "--paper", "Letter", "--units", "imperial", "--json",
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    told = json.loads(done.stdout)
    assert list(told) == [
        "format",
        "verb",
        "version",
        "trusted",
        "reasons",
        "job",
        "folder",
        "outcome",
        "not_done",
        "files",
    ]
    assert (told["verb"], told["trusted"], told["job"]) == ("report", True, "Gebläse ②")
    assert [f["kind"] for f in told["files"]] == ["pdf", "html", "csv", "json"]
    for file in told["files"]:
        content = paths[file["kind"]].read_bytes()
        assert file["sha256"] == hashlib.sha256(content).hexdigest()
        assert file["bytes"] == len(content)
        assert file["recorded"] is False
    assert told["files"][0]["pages"] >= 5
    assert b"in/s peak" in paths["html"].read_bytes()
    assert paths["html"].read_bytes().startswith(b"<!DOCTYPE html>")
    assert (job / "job.jsonl").read_bytes() == before
    assert list((job / "reports").iterdir()) == []
    assert sorted(p.name for p in tmp_path.iterdir()) == ["out.csv", "out.html", "out.json", "out.pdf"]


def test_csv_holds_vectors_and_masses_as_recorded(job, tmp_path):
    assert stillshaft("report", job, "--csv", tmp_path / "r.csv").returncode == 0
    data = (tmp_path / "r.csv").read_bytes()
    # RFC 4180, from memory: CRLF, as many fields in every line
    assert data.count(b"\r\n") == data.count(b"\n")
    assert {len(row) for row in csv.reader(io.StringIO(data.decode("utf-8"), newline=""))} == {
        len(report_exports.COLUMNS)
    }
    rows = rows_of(data)
    with Job.open(job, read_only=True) as opened:
        runs = opened.state.runs
    vectors = [r for r in rows if r["row"] == "vector"]
    assert [(r["run"], r["point"], float(r["amplitude"]), float(r["phase_deg"])) for r in vectors] == [
        (r.what.name, v.point, v.amplitude, v.phase_deg) for r in runs for v in r.what.vectors
    ]
    masses = [r for r in rows if r["row"] == "mass"]
    assert [(r["run"], r["plane"], float(r["mass_g"]), float(r["angle_deg"])) for r in masses] == [
        (r.what.name, p.plane, p.mass_g, p.angle_deg) for r in runs for p in r.what.masses
    ]
    assert {r["counts"] for r in rows} == {"yes"}
    assert {r["unit"] for r in vectors} == {"mm/s rms"}


@pytest.mark.parametrize("begin", ["=", "+", "-", "@", "\t", "\r", "\n", "  =", "＝", "－"])
def test_csv_begins_no_formula(tmp_path, begin):
    name = f"{begin}cmd|' /C calc'!A0,\"x\"\ny"
    vectors = [{"point": name, "amplitude": 1.0, "phase_deg": 10.0}]
    pieces = [{"plane": name, "mass_g": -5.0, "angle_deg": -10.0, "note": name}]
    with Job.create(tmp_path / "job", name, name) as job:
        job.append(
            "run",
            purpose="initial",
            name=name,
            speed_rpm=1.0,
            unit="mm/s rms",
            vectors=vectors,
            masses=pieces,
            note=name,
        )
        rows = rows_of(report_exports.to_csv(job))
    for row in rows:
        for key in ("run", "by", "point", "plane", "note"):
            assert row[key] in ("", f"'{name}")
    assert float(rows[1]["mass_g"]) == -5.0  # a number is no formula


def test_data_holds_state_and_every_line(own, tmp_path):
    with Job.open(own) as job:
        gone = job.append("decision", text="stop")
        job.withdraw(gone.id, "go on")
    text = (own / "job.jsonl").read_text(encoding="utf-8").replace('"purpose":"check"', '"purpose":"other"', 1)
    (own / "job.jsonl").write_text(text + "{broken\n", encoding="utf-8")
    done = stillshaft("report", own, "--data", tmp_path / "d.json")
    assert done.returncode == 3  # two lines are not as they were written
    whole = json.loads((tmp_path / "d.json").read_text(encoding="utf-8"))
    assert (whole["format"], whole["verb"], whole["trusted"]) == (1, "report", False)
    assert any("is not as it was written" in reason for reason in whole["reasons"])
    lines = text.splitlines()
    assert len(whole["history"]) == len(lines) + 1
    for told, line in zip(whole["history"], lines, strict=False):
        recorded = json.loads(line)
        recorded.pop("crc")
        recorded.pop("format")
        assert told["event"] == recorded
    assert whole["history"][-1]["event"] is None
    assert whole["history"][-1]["text"] == "{broken"
    assert [h["withdrawn_by"] for h in whole["history"] if h["event"] and h["event"]["id"] == gone.id] == [gone.id + 1]
    assert whole["state"]["name"] == "Gebläse ②"
    assert len(whole["state"]["runs"]) == 5
    assert whole["state"]["brief"]["goal"]["grade"] == "G6.3"


def test_a_changed_recording_is_told_with_status_3(own):
    (own / "photos/a.jpg").write_bytes(b"photo")
    with Job.open(own) as job:
        job.append("photo", file=job.file_fields("photos/a.jpg"))
    assert stillshaft("report", own).returncode == 0
    (own / "photos/a.jpg").write_bytes(b"other")
    done = stillshaft("report", own, "--json")
    assert done.returncode == 3
    told = json.loads(done.stdout)
    assert told["trusted"] is False
    assert "photos/a.jpg is not as it was when it was recorded" in told["reasons"][0]
    assert told["files"][0]["recorded"] is True


def test_what_cannot_be_done_is_one_line_and_leaves_nothing(own, tmp_path):
    def refused(*arguments):
        return assert_one_line(stillshaft("report", *arguments))

    before = (own / "job.jsonl").read_bytes()
    assert "holds no job (there is no such folder)" in refused(tmp_path / "none")
    assert "lies within a job's folder" in refused(own, "--csv", own / "job.jsonl")
    assert "lies within a job's folder" in refused(own, "--html", own / "job.lock")
    assert "there is no folder" in refused(own, "--pdf", tmp_path / "none/x.pdf")
    assert "cannot be written" in refused(own, "--pdf", "/proc/x.pdf")
    assert "is a folder" in refused(own, "--data", tmp_path)
    assert 'paper "A3": is none; choose A4 or Letter' in refused(own, "--paper", "A3")
    assert 'units "nautical": are none' in refused(own, "--units", "nautical")
    assert "two of the files named are one" in refused(own, "--pdf", tmp_path / "x", "--html", tmp_path / "job/../x")
    assert (own / "job.jsonl").read_bytes() == before
    assert [p.name for p in tmp_path.iterdir()] == ["job"]


def test_a_job_open_elsewhere_is_reported_into_a_file_of_its_own(own, tmp_path):
    with Job.open(own):
        assert "is open in another program" in assert_one_line(stillshaft("report", own))
        assert stillshaft("report", own, "--html", tmp_path / "r.html").returncode == 0
