"""Job files from anywhere: whatever they hold, opening gives a state or one clear line, and nothing outside is touched."""

import json
import shutil
import tempfile
from contextlib import contextmanager
from pathlib import Path

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st
from stillshaft.solver.events import KINDS
from stillshaft.solver.folder import RecordError, check_inside, file_inside, fit_name
from stillshaft.solver.job import Job
from stillshaft.solver.record import line_bytes
from stillshaft.solver.replay import replay, runs_of, verify_files
from stillshaft.solver.runs import RunsError
from stillshaft.solver.state import fold

REAL = (Path(__file__).parents[2] / "fixtures/jobs/format_1/job.jsonl").read_bytes()
ROWS = [json.loads(raw) for raw in REAL.splitlines()]
AT = "2026-11-25T08:30:00.000+00:00"
fuzzed = settings(max_examples=100, deadline=None, suppress_health_check=list(HealthCheck))

numbers = st.one_of(
    st.integers(-(10**20), 10**20),
    st.floats(allow_nan=False, allow_infinity=False),
    st.sampled_from([0, -1, 1e30, -0.0]),
)
texts = st.one_of(st.text(max_size=20), st.sampled_from(["../x", "/etc/passwd", "\x1b[31m", "A", "left", "initial"]))
values = st.recursive(
    st.one_of(st.none(), st.booleans(), numbers, texts),
    lambda inner: st.one_of(st.lists(inner, max_size=4), st.dictionaries(texts, inner, max_size=4)),
    max_leaves=15,
)


@contextmanager
def folder_with(content):
    """A job folder with this record, beside a file that nothing may touch."""
    place = Path(tempfile.mkdtemp(prefix="hostile"))
    try:
        (place / "job").mkdir()
        (place / "job/job.jsonl").write_bytes(content)
        (place / "outside").write_bytes(b"untouched")
        yield place / "job"
        assert sorted(p.name for p in place.iterdir()) == ["job", "outside"]
        assert (place / "outside").read_bytes() == b"untouched"
        assert not (place / "job/job.lock").exists()
    finally:
        shutil.rmtree(place)


def opens_or_says_why(content):
    """Open, look at everything, append; returns the number of events or None where it was refused in words."""
    with folder_with(content) as folder:
        try:
            job = Job.open(folder, by="ann")
        except RecordError as error:
            assert_one_line(str(error))
            return None
        with job:
            before = len(job.events)
            assert job.state == fold(job.events)
            assert len(job.history) == len(job._record.lines)
            for problem in job.problems:
                assert_one_line(problem)
            for text in verify_files(job):
                assert_one_line(text)
            job.next_recording()
            look_at_runs(job)
            try:
                job.append("reopened", why="goes on")
                job.append("decision", text="goes on")
            except RecordError as error:
                assert_one_line(str(error))
            else:
                assert [d.what.text for d in job.state.decisions][-1] == "goes on"
                job.undo()
        with Job.open(folder, read_only=True) as again:
            assert again.state == job.state
            assert again.events == job.events
        assert (folder / "job.jsonl").read_bytes().startswith(content[: content.rfind(b"\n") + 1])
        assert {p.name for p in folder.iterdir()} == {"job.jsonl", "recordings"}
        return before


def look_at_runs(job):
    try:
        runs_of(job.state)
    except (RecordError, RunsError, ValueError) as error:
        assert_one_line(str(error))
    for told in replay(job):
        for text in told.differences:
            assert_one_line(text)


def assert_one_line(text):
    assert text
    assert "\n" not in text
    assert "\x1b" not in text


@fuzzed
@given(st.binary(max_size=300))
@example(b"")
@example(b"\n")
@example(b'{"format":1}\n')
@example(b'{"format":1}')
def test_any_bytes(content):
    opens_or_says_why(content)


@fuzzed
@given(st.integers(0, len(REAL)), st.integers(0, 40), st.binary(max_size=10))
def test_a_real_record_with_any_bytes_in_place_of_some(at, gone, put):
    """Lines before and after the damage are read."""
    content = REAL[:at] + put + REAL[at + gone :]
    before = REAL[:at].count(b"\n")
    after = max(0, REAL[at + gone :].count(b"\n") - 1)
    count = opens_or_says_why(content)
    assert count is not None
    assert count >= before + after


@fuzzed
@given(
    st.lists(
        st.dictionaries(st.one_of(texts, st.sampled_from(["format", "id", "kind", "at", "by"])), values), max_size=4
    )
)
def test_any_tables(tables):
    lines = []
    for table in tables:
        try:
            lines.append(line_bytes(table))
        except RecordError as error:
            assert_one_line(str(error))
    opens_or_says_why(line_bytes(ROWS[0]) + b"".join(lines))


@fuzzed
@given(st.sampled_from(sorted(KINDS)), st.data())
def test_any_values_in_the_keys_of_any_kind(kind, data):
    fields = (
        list(KINDS[kind].__struct_fields__)
        if kind != "brief"
        else ["machine", "planes", "rotor", "limits", "stock", "goal"]
    )
    content = {key: data.draw(values, key) for key in data.draw(st.lists(st.sampled_from(fields), unique=True))}
    line = {"format": 1, "id": 40, "kind": kind, "at": AT, "by": "x"} | content
    opens_or_says_why(REAL + line_bytes(line))
    with folder_with(REAL) as folder, Job.open(folder, by="ann") as job:
        before = (folder / "job.jsonl").read_bytes()
        count = len(job.events)
        try:
            job.append(kind, **content)
        except RecordError as error:
            assert_one_line(str(error))
            assert (folder / "job.jsonl").read_bytes() == before
            assert len(job.events) == count
        assert job.state == fold(job.events)


@fuzzed
@given(st.integers(0, len(ROWS) - 1), st.data())
def test_a_real_line_with_any_value_in_one_place(number, data):
    """Written with a good checksum, as somebody who means harm would."""
    row = json.loads(json.dumps({k: v for k, v in ROWS[number].items() if k != "crc"}))
    place = row
    while True:
        keys = list(place) if isinstance(place, dict) else range(len(place))
        key = data.draw(st.sampled_from(list(keys)))
        inner = place[key]
        if not (isinstance(inner, dict | list) and inner) or data.draw(st.booleans()):
            break
        place = inner
    place[key] = data.draw(values)
    lines = REAL.splitlines(keepends=True)
    opens_or_says_why(b"".join([*lines[:number], line_bytes(row), *lines[number + 1 :]]))


@fuzzed
@given(st.permutations(range(len(ROWS))), st.integers(1, len(ROWS)))
def test_real_lines_in_any_order(order, count):
    lines = REAL.splitlines(keepends=True)
    opens_or_says_why(b"".join(lines[n] for n in order[:count]))


@fuzzed
@given(st.lists(st.tuples(st.integers(1, 30), st.booleans()), max_size=25))
def test_any_withdrawals_of_withdrawals(targets):
    lines = [
        {
            "format": 1,
            "id": len(ROWS) + 1 + n,
            "kind": "withdrawn",
            "at": AT,
            "by": "first person",
            "of": of + n,
            "why": "a",
            "undo": undo,
        }
        for n, (of, undo) in enumerate(targets)
    ]
    opens_or_says_why(REAL + b"".join(map(line_bytes, lines)))


@fuzzed
@given(st.lists(st.sampled_from(["put", "off", "place", "undo", "redo", "run", "withdraw"]), max_size=25), st.data())
def test_any_acts_leave_the_state_that_their_events_fold_to(acts, data):
    piece = {"plane": "left", "mass_g": 1.0, "angle_deg": 0.0}
    with tempfile.TemporaryDirectory() as place, Job.create(Path(place) / "job", "fan", "ann") as job:
        for number, act in enumerate(acts):
            of = data.draw(st.integers(1, number + 1))
            try:
                if act == "put":
                    job.append("mass", act="put on", pieces=[piece, piece])
                elif act == "off":
                    job.append("mass", act="taken off", of=of)
                elif act == "place":
                    job.append("mass", act="really placed", of=of, pieces=[piece])
                elif act == "run":
                    vectors = [{"point": "A", "amplitude": 1.0, "phase_deg": 0.0}]
                    job.append(
                        "run", purpose="other", name=str(number), speed_rpm=1.0, unit="mm/s rms", vectors=vectors
                    )
                elif act == "withdraw":
                    job.withdraw(of, "why not")
                elif act == "undo":
                    state = job.state
                    if job.undo() is not None:
                        assert job.redo() is not None
                        assert job.state == state  # redo is the inverse of undo
                        job.undo()
                else:
                    job.redo()
            except RecordError as error:
                assert_one_line(str(error))
            assert job.state == fold(job.events)
        with Job.open(Path(place) / "job", read_only=True) as again:
            assert again.state == job.state


@fuzzed
@given(st.one_of(st.text(max_size=300), st.text("./\\\\ :ücon1.", max_size=12)))
@example("..0.")
def test_any_name_is_made_to_fit(name):
    check_inside(f"photos/{fit_name(name)}", "photo", "photos")
    assert fit_name(fit_name(name)) == fit_name(name)


@fuzzed
@given(st.lists(st.one_of(texts, st.sampled_from(["recordings", "photos", "..", ".", "", "a", "con"])), max_size=5))
def test_any_path_stays_inside_or_is_refused(parts):
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place) / "job"
        (folder / "recordings").mkdir(parents=True)
        path = "/".join(parts)
        try:
            check_inside(path, "recording")
        except RecordError as error:
            assert_one_line(str(error))
            with pytest.raises(RecordError):
                file_inside(folder, path, "recording")
        else:
            resolved = (folder / path).resolve()
            assert resolved.is_relative_to(folder.resolve())
            assert resolved != folder.resolve()
