"""Doors for jobs: the record, the folder around it, lists of many jobs and what they remember, texts in every output."""

import contextlib
import csv
import functools
import io
import json
import os
import re
import shutil
from html.parser import HTMLParser
from pathlib import Path
from xml.etree import ElementTree

from fuzz.doors_recordings import whole
from fuzz.doors_tables import NEIGHBOURS, RAO, ROOT, coefficients, full_runs, wired
from fuzz.guard import door, making, one_line
from fuzz.verbs import run_verb, texts_of
from stillshaft.solver import diagnosis
from stillshaft.solver.folder import RecordError
from stillshaft.solver.job import Job
from stillshaft.solver.replay import replay, verify_files
from stillshaft.solver.state import fold
from stillshaft.solver.stored import StoredError
from stillshaft.ui import job_checks, library, library_index, report, report_exports, report_photos, reprocess
from stillshaft.ui.report_material import gather
from stillshaft.ui.session import Session

REAL = ROOT / "fixtures/jobs/format_1"


@functools.cache
def _record() -> bytes:
    return (REAL / "job.jsonl").read_bytes()


def _job_in(room: Path, data: bytes) -> Path:
    (room / "job").mkdir()
    (room / "job/job.jsonl").write_bytes(data)
    return room / "job"


@door("job record", "record", lambda: [_record()], RecordError, weight=0.7)
def job_record(data: bytes, room: Path) -> None:
    with Job.open(_job_in(room, data), by="ann") as job:
        assert job.state == fold(job.events)
        for text in (*job.problems, *verify_files(job)):
            one_line(text)
        with contextlib.suppress(RecordError):
            job.append("decision", text="goes on")


@door("job record, worked on", "record", lambda: [_record()], RecordError, weight=0.06)
def job_worked_on(data: bytes, room: Path) -> None:
    with Job.open(_job_in(room, data), read_only=True) as job:
        for told in replay(job):
            for text in told.differences:
                one_line(text)
        diagnosis.diagnose(job_checks.from_record(job.state))
        session = Session(job)
        try:
            one_line(session.advice().text if hasattr(session.advice(), "text") else "advised")
        except ValueError as error:
            assert type(error).__module__.startswith("stillshaft."), type(error)  # noqa: PT017 - a door may raise or not
            one_line(error)


NAMES = b"\0".join(
    [
        *(b"recordings", b"recordings/0001.au", b">photos", b"photos/x.jpg", b"job.lock"),
        *(b">recordings/0001.events.jsonl", b"coefficients.toml", b"job (1).jsonl"),
    ]
)


@door("job folder", "bytes", lambda: [NAMES], RecordError, StoredError, library.LibraryError, weight=0.5)
def job_folder(data: bytes, room: Path) -> None:
    """Files of any name, and links (>) that lead out."""
    folder = _job_in(room, _record())
    for number, name in enumerate(data.split(b"\0")[:12]):
        path = os.path.join(os.fsencode(folder), name.lstrip(b">/"))
        if not os.path.realpath(os.path.dirname(path)).startswith(os.fsencode(room)) or b".." in name:
            continue
        with making(), contextlib.suppress(OSError, ValueError):
            if name.startswith(b">"):
                os.symlink((b"../../beside", b"/dev/zero", b".", b"../../room", b"/etc")[number % 5], path)
            elif name.endswith((b".lock", b".au", b".jsonl", b".toml")) or number % 2:
                Path(os.fsdecode(path)).write_bytes(data[:200])
            else:
                os.mkdir(path)
    with Job.open(folder, by="ann") as job:
        for text in (*job.problems, *verify_files(job)):
            one_line(text)
        job.next_recording()
    for skipped in library.list_machines(room).skipped:
        one_line(skipped.why)


@functools.cache
def _index() -> bytes:
    import tempfile

    with tempfile.TemporaryDirectory() as place:
        shutil.copytree(REAL, Path(place, "all/job"))
        os.utime(Path(place, "all/job/job.jsonl"), (1e9, 1e9))
        library.list_machines(Path(place, "all"), index=Path(place, "index"))
        made = Path(place, "index")
        return made.read_bytes() if made.exists() else b"00000000\n{}"


@door("index of jobs", "bytes", lambda: [_index()], library.LibraryError)
def index_of_jobs(data: bytes, room: Path) -> None:
    import zlib

    (room / "all").mkdir()
    content = data.partition(b"\n")[2]
    # as somebody who means harm: the checksum fits
    (room / "index").write_bytes(b"%08x\n" % zlib.crc32(content) + content if len(data) % 2 else data)
    assert library.list_machines(room / "all", index=room / "index").machines == ()


@door("list of jobs", "record", lambda: [_record()], library.LibraryError, weight=0.5)
def list_of_jobs(data: bytes, room: Path) -> None:
    """The quick way says what the whole record says."""
    folder = _job_in(room, data)
    try:
        quick = library_index.look(folder)[0]
    except RecordError as error:
        one_line(error)
        return
    with Job.open(folder, read_only=True) as job:
        assert quick.name == job.state.name
        assert quick.runs == len(job.state.runs)


def _results() -> list[bytes]:
    steadiness = {"verdict": "steady"}
    point = {
        "name": "A",
        "amplitude": 1.0,
        "phase_deg": 2.0,
        "amplitude_ci95": 0.1,
        "phase_ci95_deg": None,
        "steadiness": steadiness,
    }
    result = {"trusted": True, "reasons": [], "unit": "mm/s rms", "points": [point]}
    return [json.dumps({"key": "a b c", "at": "2026", "recording": "x", "result": result}).encode() + b"\n"]


@door("reprocess results", "bytes", _results, reprocess.ReprocessError)
def reprocess_results(data: bytes, room: Path) -> None:
    path = room / "results.jsonl"
    path.write_bytes(data)
    kept = reprocess._Results(path)
    kept.add("key", "recording", {"trusted": True})
    assert path.read_bytes().startswith(data)


# outputs


class _Strict(HTMLParser):
    """Refuses what a page of texts and drawings does not need."""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        assert tag not in {
            "script",
            "iframe",
            "object",
            "embed",
            "a",
            "link",
            "form",
            "base",
            "image",
            "use",
            "foreignobject",
        }, tag
        for name, value in attrs:
            assert not name.startswith("on"), (tag, name)
            if (tag, name) == ("img", "src"):  # a photo, within the page
                assert re.fullmatch(r"data:image/jpeg;base64,[A-Za-z0-9+/=]*", value or ""), value
                continue
            assert name not in {"href", "src", "srcset", "action", "xlink:href"}, (tag, name)
            assert "url(" not in (value or ""), (tag, name, value)
            assert "javascript:" not in (value or "").lower(), (tag, name, value)


@door("report", "record", lambda: [_record()], RecordError, report.ReportError, weight=0.1, cpu_s=8.0)
def report_texts(data: bytes, room: Path) -> None:
    with Job.open(_job_in(room, data), read_only=True) as job:
        _check_table(report_exports.to_csv(job))
        told = json.loads(report_exports.json_bytes(report_exports.to_json(job)), parse_constant=_refuse_constant)
        assert told["state"]
        material = gather(job, report.units_of("metric"), None)
        page = report.to_html(material)
        assert not [c for c in page if ord(c) < 32 and c not in "\n\t"]
        _Strict().feed(page)
        for picture in re.findall(r"<svg.*?</svg>", page, re.DOTALL):
            ElementTree.fromstring(picture)
        for text in (*report.outcome_of(material).missing, *report.outcome_of(material).doubts):
            one_line(text, 3000)


def _refuse_constant(name: str) -> None:
    raise AssertionError(f"{name} is no JSON")


def _check_table(table: bytes) -> None:
    """Each line has all fields; nothing that a spreadsheet would work out."""
    for row in csv.reader(io.StringIO(table.decode("utf-8"), newline="")):
        assert len(row) == len(report_exports.COLUMNS)
        for cell in row:
            assert not cell.lstrip(" ").startswith(("=", "+", "@", "\t", "\r", "＝", "＋", "＠")), cell
            assert not cell.startswith("-") or re.fullmatch(r"-[\d.e+-]+", cell), cell


@door("report as PDF", "record", lambda: [_record()], RecordError, report.ReportError, weight=0.01, cpu_s=15.0)
def report_pdf(data: bytes, room: Path) -> None:
    with Job.open(_job_in(room, data), read_only=True) as job:
        made, pages = report.to_pdf(gather(job, report.units_of("imperial"), None))
        assert made.startswith(b"%PDF")
        assert 1 <= pages < 2000
        for active in (b"/JavaScript", b"/JS ", b"/Launch", b"/URI", b"/EmbeddedFile", b"/OpenAction"):
            assert active not in made, active


# the command line


ARGUMENTS = [
    ["solve", "runs.toml"],
    ["solve", "runs.toml", "--method", "minimax", "--json"],
    ["solve", "runs.toml", "--plane", "left", "--plot", "x.svg"],
    ["solve", "runs.toml", "--coefficients", "c.toml", "--machine", "fan"],
    ["pieces", "runs.toml", "--stock", "5 g x 10, 10 g x 4"],
    [
        "tolerance",
        "--grade",
        "G6.3",
        "--rotor-mass",
        "80 kg",
        "--speed",
        "1480",
        "--bearing-span",
        "900 mm",
        "--centre-of-mass",
        "400 mm",
    ],
    ["tolerance", "runs.toml", "--limits", "ISO 20816-3", "--class", "1", "--support", "A = 30 Hz"],
    ["trial", "--rotor-mass", "80 kg", "--radius", "300 mm", "--speed", "1480", "--plane", "disc", "--share", "0.1"],
    ["lag", "runs.toml", "--hookup", "h.toml", "--point", "A"],
    ["machines", ".", "--machine", "fan", "--search", "roof"],
    ["machines", "--json"],
    ["job", "show", "job"],
    ["job", "next", "job"],
    ["job", "--by", "ann", "decide", "job", "a text", "--why", "because"],
    ["job", "new", "other", "--name", "fan 3"],
    ["job", "brief", "job", "machine.name=fan"],
    ["job", "mass", "on", "job", "left = 3 g at 20"],
    ["report", "job", "--csv", "a.csv"],
    ["report", "job", "--data", "a.json"],
    ["vector", "job/recordings/0001.au", "--order", "1", "--json"],
    [
        "vector",
        "r.au",
        "--order",
        "1",
        "--weights",
        "hann",
        "--append",
        "new.toml",
        "--run",
        "initial",
        "--mass",
        "left = 3 g at 20",
    ],
    ["steadiness", "r.au", "--order", "2", "--candidates", "n.toml", "--json"],
    ["spectrum", "r.au", "--highest", "500", "--resolution", "10", "--plot", "x.svg", "--json"],
    [
        "sweep",
        "r.au",
        "--running",
        "2880",
        "--tone",
        "100",
        "--slow-roll",
        "300",
        "--bandwidth",
        "2",
        "--tracker",
        "windows",
    ],
    ["convert", "r.au", "x.csv"],
    ["guide", "start"],
]


def _arguments() -> list[bytes]:
    return [json.dumps(arguments).encode() for arguments in ARGUMENTS]


@door("arguments", "bytes", _arguments, weight=0.6, cpu_s=6.0)
def arguments(data: bytes, room: Path) -> None:
    texts = texts_of(data)
    if not texts or texts[0] not in {a[0] for a in ARGUMENTS} or any(t.startswith("/") or ".." in t for t in texts):
        texts = ["solve", *texts]
    if texts[:1] == ["job"] and not {"show", "next", "decide", "new", "brief", "mass"} & set(texts[1:4]):
        return
    with making():
        shutil.copytree(REAL, room / "job")
        recorded = whole()
        os.environ["XDG_CACHE_HOME"] = str(room / "cache")
    (room / "runs.toml").write_bytes(full_runs() if len(data) % 2 else RAO.read_bytes())
    (room / "h.toml").write_bytes(wired())
    (room / "c.toml").write_bytes(coefficients())
    (room / "n.toml").write_bytes(NEIGHBOURS)
    for name, content in zip(("r.au", "r.events.jsonl"), recorded, strict=True):
        (room / name).write_bytes(content)
    run_verb(texts, room)


def _photos() -> list[bytes]:
    from PIL import Image

    made = []
    for kind, more in (("JPEG", {}), ("PNG", {}), ("JPEG", {"progressive": True})):
        file = io.BytesIO()
        Image.effect_mandelbrot((90, 60), (-2, -1, 1, 1), 20).convert("RGB").save(file, kind, **more)
        made.append(file.getvalue())
    return made


@door("photo", "bytes", _photos, RecordError)
def photo(data: bytes, room: Path) -> None:
    (room / "x.jpg").write_bytes(data)
    jpeg, (width, height) = report_photos.scaled(room / "x.jpg")
    assert jpeg.startswith(b"\xff\xd8")
    assert max(width, height) <= 4000
