"""The record's file: cut at any byte, altered, locked, on disks that fill up or go; nothing that was recorded is lost."""

import errno
import json
import os
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import unicodedata
import zlib
from pathlib import Path

import msgspec
import pytest
from stillshaft.solver import lock, record
from stillshaft.solver.folder import RecordError
from stillshaft.solver.job import Job
from stillshaft.solver.record import Record, line_bytes, read_line

FIRST = {"format": 1, "id": 1, "kind": "started", "name": "Gebläse ② 🙂"}


def made(folder, lines=2):
    """A record with a first event and some more, closed."""
    with_it = Record.create(folder, FIRST)
    for number in range(2, lines + 1):
        with_it.append({"format": 1, "id": number, "kind": "decision", "text": f"Schaufel {number} · žluť 🙂"})
    with_it.close()
    return folder / "job.jsonl"


def opened(folder, **how):
    """Lines and problems of a record, which is closed again."""
    found = Record(folder, **how)
    found.close()
    return found.lines, found.problems


def test_what_was_appended_is_read_again(tmp_path):
    path = made(tmp_path / "job", 5)
    lines, problems = opened(tmp_path / "job")
    assert [line.event["id"] for line in lines] == [1, 2, 3, 4, 5]
    assert lines[0].event == FIRST
    assert problems == ()
    assert path.read_bytes().count(b"\n") == 5
    assert sorted(p.name for p in path.parent.iterdir()) == ["job.jsonl", "photos", "recordings", "reports"]


def test_the_checksum_is_that_of_the_line_without_it(tmp_path):
    """CRC-32 as zlib has it; worked out here from the line's own text."""
    raw = made(tmp_path / "job").read_bytes().split(b"\n")[1]
    told = json.loads(raw)
    without = json.dumps({k: v for k, v in told.items() if k != "crc"}, ensure_ascii=False, separators=(",", ":"))
    assert int(told["crc"], 16) == zlib.crc32(without.encode())


def test_it_opens_and_goes_on_after_a_cut_at_any_byte(tmp_path):
    """A cut within a multi-byte letter and an append glued to a torn line are the two traps."""
    whole = made(tmp_path / "job", 4).read_bytes()
    ends = [i + 1 for i, byte in enumerate(whole) if byte == ord("\n")]
    path = tmp_path / "job" / "job.jsonl"
    for cut in range(len(whole) + 1):
        path.write_bytes(whole[:cut])
        kept = sum(end <= cut + 1 for end in ends)  # a line that only lacks its end is whole
        found = Record(tmp_path / "job")
        assert [line.event["id"] for line in found.lines] == list(range(1, kept + 1)), cut
        torn = cut not in (0, *ends, *(end - 1 for end in ends))
        assert [("is cut off" in p) for p in found.problems] == [True] * torn, (cut, found.problems)
        found.append({"format": 1, "id": 9, "kind": "decision", "text": "after the cut · ü"})
        found.close()
        lines, problems = opened(tmp_path / "job", read_only=True)
        assert [line.event["id"] for line in lines] == [*range(1, kept + 1), 9], cut
        assert problems == (), cut


def test_looking_at_a_torn_record_changes_nothing(tmp_path):
    path = made(tmp_path / "job", 3)
    path.write_bytes(path.read_bytes()[:-7])
    before = path.read_bytes()
    for read_only in (True, False):
        _, problems = opened(tmp_path / "job", read_only=read_only)
        assert "line 3 is cut off after" in problems[0]
        assert path.read_bytes() == before


@pytest.mark.parametrize(
    ("spoil", "said"),
    [
        (lambda raw: raw[:40] + b"\xff" + raw[41:], "line 2 is damaged and is left out: it begins"),
        (lambda raw: raw.replace(b"{", b"[", 1), "line 2 is damaged"),
        (lambda raw: b"\0" * len(raw), "line 2 is damaged"),
        (lambda raw: b"[1, 2]", "line 2 cannot be used and is left out: it is no table"),
        (lambda raw: b'{"a":' + b"[" * 30 + b"]" * 30 + b"}", "more than 24 deep"),
        (lambda raw: b'{"a":' + b"[" * 200_000, "line 2 is damaged"),
        (lambda raw: b'{"a":1e40}', r"the number 1e\+40 is too large, at most 1e\+30"),
        (lambda raw: b'{"a":-' + b"9" * 400 + b"}", "the number -999.* is too large"),
        (lambda raw: b'{"a":NaN}', "line 2 is damaged"),
        (lambda raw: b'{"a":1e999}', "line 2 is damaged"),
        (lambda raw: b'{"a":"\\ud800"}', "line 2 is damaged"),
        (lambda raw: b'{"a":"' + b"x" * record.MOST_LINE_BYTES + b'"}', "line 2 is longer than 4194304 bytes"),
    ],
)
def test_a_damaged_line_is_kept_and_named_and_the_others_are_read(tmp_path, spoil, said):
    path = made(tmp_path / "job", 3)
    rows = path.read_bytes().split(b"\n")
    path.write_bytes(b"\n".join([rows[0], spoil(rows[1]), *rows[2:]]))
    before = path.read_bytes()
    found = Record(tmp_path / "job")
    assert [line.event and line.event["id"] for line in found.lines] == [1, None, 3]
    (problem,) = found.problems
    assert re.search(said, problem), problem
    assert len(problem.split("\n")) == 1
    found.append({"format": 1, "id": 4, "kind": "decision"})
    found.close()
    assert path.read_bytes().startswith(before)
    assert [line.event and line.event["id"] for line in opened(tmp_path / "job")[0]] == [1, None, 3, 4]


def test_an_altered_line_is_read_as_it_stands_and_named(tmp_path):
    path = made(tmp_path / "job", 3)
    rows = path.read_bytes().split(b"\n")
    by_hand = json.dumps({"format": 1, "id": 4, "kind": "decision"}).encode()
    path.write_bytes(b"\n".join([rows[0], rows[1].replace(b"Schaufel 2", b"Schaufel 7"), rows[2], by_hand, b""]))
    lines, problems = opened(tmp_path / "job")
    assert [line.altered for line in lines] == [False, True, False, True]
    assert "Schaufel 7" in lines[1].event["text"]
    assert "line 2 is not as it was written (its checksum differs)" in problems[0]
    assert "line 4 has no checksum: written by hand?" in problems[1]


def test_any_flipped_bit_is_seen(tmp_path):
    path = made(tmp_path / "job", 1)
    whole = path.read_bytes()[:-1]
    for at in range(len(whole)):
        for bit in range(8):
            line = read_line(1, whole[:at] + bytes([whole[at] ^ (1 << bit)]) + whole[at + 1 :])
            assert line.problem is not None, (at, bit)


def test_what_an_editor_does_to_line_ends_does_no_harm(tmp_path):
    path = made(tmp_path / "job", 3)
    whole = path.read_bytes()
    for edited in (whole.replace(b"\n", b"\r\n"), whole[:-1], whole + b"\n\n", b"\xef\xbb\xbf" + whole):
        path.write_bytes(edited)
        found = Record(tmp_path / "job")
        assert [line.event["id"] for line in found.lines] == [1, 2, 3]
        assert found.problems == ()
        found.append({"format": 1, "id": 4})
        found.close()
        assert [line.event["id"] for line in opened(tmp_path / "job")[0]] == [1, 2, 3, 4]


def test_a_record_of_a_later_format_is_refused_in_words(tmp_path):
    path = made(tmp_path / "job", 2)
    before = path.read_bytes()
    path.write_bytes(before + line_bytes({"format": 2, "id": 3}))
    for read_only in (True, False):
        with pytest.raises(
            RecordError, match="line 3 is of format 2, but this program reads up to 1; open it with a newer"
        ):
            Record(tmp_path / "job", read_only=read_only)
    path.write_bytes(b'{"format":2,"sum":"another kind"}\n')
    with pytest.raises(RecordError, match="line 1 is of format 2"):
        Record(tmp_path / "job")
    # bits that rotted are no later format
    path.write_bytes(before + line_bytes({"format": 1, "id": 3}).replace(b'"format":1', b'"format":3'))
    assert len(opened(tmp_path / "job")[0]) == 3


@pytest.mark.parametrize(
    ("content", "which"),
    [
        (b"name,mass\nfan,3\n", "none of its 2 lines can"),
        (b"[]\n[]\n", "none of its 2 lines can"),
        (b"\n\n", "none of its 2 lines can"),
        (b'{"format":true}\n', "its only line cannot"),
    ],
)
def test_another_file_of_that_name_is_refused(tmp_path, content, which):
    (tmp_path / "job.jsonl").write_bytes(content)
    with pytest.raises(RecordError, match=f"is no job's record: {which} be read"):
        Record(tmp_path)
    assert [p.name for p in tmp_path.iterdir()] == ["job.jsonl"]


def test_a_folder_without_a_job_is_refused(tmp_path):
    with pytest.raises(RecordError, match=r"holds no job \(job.jsonl is not there\)"):
        Record(tmp_path)
    with pytest.raises(RecordError, match="holds no job"):
        Record(tmp_path / "nowhere", read_only=True)
    (tmp_path / "job.jsonl").mkdir()
    with pytest.raises(RecordError, match="is no ordinary file"):
        Record(tmp_path)
    with pytest.raises(RecordError, match="cannot be read: .*embedded null"):
        Record(Path("a\0b"))
    assert [p.name for p in tmp_path.iterdir()] == ["job.jsonl"]


def test_too_large_files_are_refused_before_they_are_read(tmp_path):
    path = made(tmp_path / "job")
    with open(path, "r+b") as file:
        file.truncate(record.MOST_BYTES + 1)  # a hole: takes no room
    with pytest.raises(RecordError, match="has 268435457 bytes, at most 268435456"):
        Record(tmp_path / "job")
    path.write_bytes(b"\n" * (record.MOST_LINES + 1))
    with pytest.raises(RecordError, match="has 100001 lines, at most 100000"):
        Record(tmp_path / "job")
    path.write_bytes(line_bytes(FIRST) + b"\n" * (record.MOST_LINES - 1))
    found = Record(tmp_path / "job")
    with pytest.raises(RecordError, match="has 100000 lines, which is the most"):
        found.append({"format": 1, "id": 2})
    found.close()


@pytest.mark.parametrize(
    ("value", "said"),
    [
        (float("nan"), "cannot be recorded: Out of range float"),
        (float("inf"), "cannot be recorded"),
        (1e31, "the number 1e\\+31 is too large"),
        ("\ud800", "half a letter"),
        (object(), "object is no text, number, list or table"),
        ("x" * record.MOST_LINE_BYTES, "at most 4194304 in one entry"),
    ],
)
def test_what_could_not_be_read_again_is_not_written(tmp_path, value, said):
    path = made(tmp_path / "job")
    before = path.read_bytes()
    found = Record(tmp_path / "job")
    with pytest.raises(RecordError, match=said):
        found.append({"format": 1, "id": 3, "value": value})
    nested = []
    for _ in range(40):
        nested = [nested]
    with pytest.raises(RecordError, match="more than 24 deep"):
        found.append({"format": 1, "id": 3, "value": nested})
    assert len(found.lines) == 2
    found.close()
    assert path.read_bytes() == before


def test_a_folder_that_holds_a_job_takes_no_second_one(tmp_path):
    path = made(tmp_path / "job")
    before = path.read_bytes()
    with pytest.raises(RecordError, match="holds a job already"):
        Record.create(tmp_path / "job", FIRST)
    assert path.read_bytes() == before
    (tmp_path / "file").write_text("")
    with pytest.raises(RecordError, match="or is no folder; choose a new folder|cannot be written"):
        Record.create(tmp_path / "file", FIRST)
    with pytest.raises(RecordError, match="cannot be written"):
        Record.create(tmp_path / ("n" * 256), FIRST)
    assert sorted(p.name for p in tmp_path.iterdir()) == ["file", "job"]


# one writer


HOLDER = (
    "import sys, time\nfrom pathlib import Path\nfrom stillshaft.solver.record import Record\n"
    "r = Record(Path(sys.argv[1])); print('open', flush=True); time.sleep(60)\n"
)


@pytest.fixture
def holder(tmp_path):
    """Another program that has the job open."""
    made(tmp_path / "job")
    process = subprocess.Popen([sys.executable, "-c", HOLDER, tmp_path / "job"], stdout=subprocess.PIPE, text=True)
    assert process.stdout.readline() == "open\n"
    yield process
    process.kill()
    process.communicate()


def test_a_job_that_another_program_has_open_is_refused_and_can_be_looked_at(tmp_path, holder):
    with pytest.raises(RecordError, match=rf"is open in another program \(process {holder.pid} on .*, since 20"):
        Record(tmp_path / "job")
    with pytest.raises(RecordError, match="is open in another program"):
        Record(tmp_path / "job", take_over=True)
    assert len(opened(tmp_path / "job", read_only=True)[0]) == 2


def test_the_lock_of_a_program_that_was_killed_keeps_nobody_out(tmp_path, holder):
    holder.send_signal(signal.SIGKILL)
    holder.wait()
    assert (tmp_path / "job/job.lock").read_text()
    found = Record(tmp_path / "job")
    found.append({"format": 1, "id": 3})
    found.close()
    assert not (tmp_path / "job/job.lock").exists()


def without_system_locks(monkeypatch):
    """As on a network disk without them: what the lock file says decides alone."""

    def refuse(file, how):
        raise OSError(errno.ENOLCK, "no locks available")

    monkeypatch.setattr(lock.fcntl, "flock", refuse)


def write_lock(folder, **changes):
    owner = lock._this_process() | changes
    (folder / "job.lock").write_text(json.dumps(owner))


@pytest.mark.parametrize("changes", [{"boot": "another"}, {"pid": 2**22 + 1}, {"started": "1"}])
def test_without_system_locks_a_lock_of_a_program_that_is_gone_is_taken(tmp_path, monkeypatch, changes):
    made(tmp_path / "job")
    without_system_locks(monkeypatch)
    write_lock(tmp_path / "job", **changes)
    assert len(opened(tmp_path / "job")[0]) == 2


@pytest.mark.parametrize("changes", [{}, {"host": "elsewhere", "boot": "another"}, {"pid": "unknown"}])
def test_without_system_locks_a_lock_that_may_be_held_is_refused(tmp_path, monkeypatch, changes):
    made(tmp_path / "job")
    without_system_locks(monkeypatch)
    write_lock(tmp_path / "job", **changes)
    with pytest.raises(RecordError, match="is or was open on another computer or in another program"):
        Record(tmp_path / "job")
    assert len(opened(tmp_path / "job", take_over=True)[0]) == 2


def test_a_lock_that_cannot_be_read_is_no_traceback(tmp_path, monkeypatch):
    made(tmp_path / "job")

    def fail(file):
        raise OSError(errno.EIO, "input/output error")

    monkeypatch.setattr(lock, "_owner", fail)
    with pytest.raises(RecordError, match="job.lock: is gone: was the disk or stick removed"):
        Record(tmp_path / "job")


def test_a_lock_of_another_computer_is_only_taken_when_asked_for(tmp_path):
    made(tmp_path / "job")
    for content in (json.dumps({"pid": 7, "host": "elsewhere", "boot": "b"}), "no table", "[" * 4000, '{"pid":', "ÿ"):
        (tmp_path / "job/job.lock").write_text(content)
        with pytest.raises(RecordError, match="close it there, or where that is gone for good take the lock over"):
            Record(tmp_path / "job")
        assert (tmp_path / "job/job.lock").read_text() == content
    assert len(opened(tmp_path / "job", take_over=True)[0]) == 2
    (tmp_path / "job/job.lock").write_text("")
    assert len(opened(tmp_path / "job")[0]) == 2


def test_neither_lock_nor_record_is_opened_through_a_link(tmp_path):
    outside = tmp_path / "outside"
    outside.write_bytes(line_bytes(FIRST))
    made(tmp_path / "job")
    (tmp_path / "job/job.lock").symlink_to(outside)
    with pytest.raises(RecordError, match=r"job.lock: is no ordinary file \(a link"):
        Record(tmp_path / "job")
    (tmp_path / "job/job.lock").unlink()
    os.mkfifo(tmp_path / "job/job.lock")
    with pytest.raises(RecordError, match="is no ordinary file"):
        Record(tmp_path / "job")
    (tmp_path / "job/job.lock").unlink()
    (tmp_path / "job/job.jsonl").unlink()
    (tmp_path / "job/job.jsonl").symlink_to(outside)
    for read_only in (True, False):
        with pytest.raises(RecordError, match=r"job.jsonl: is no ordinary file \(a link"):
            Record(tmp_path / "job", read_only=read_only)
    (tmp_path / "job/job.jsonl").unlink()
    os.link(outside, tmp_path / "job/job.jsonl")
    found = Record(tmp_path / "job")
    assert found.read_only
    assert "is the same file as one elsewhere (a hard link)" in found.problems[0]
    found.close()
    assert outside.read_bytes() == line_bytes(FIRST)


# disks


def limited_to(size, folder, code):
    """Run code in a program whose files cannot grow beyond a size: the system refuses as a full disk does."""
    begin = f"import resource, signal\nresource.setrlimit(resource.RLIMIT_FSIZE, ({size}, {size}))\n"
    return subprocess.run(
        [sys.executable, "-c", begin + code, folder], capture_output=True, text=True, check=True
    ).stdout.splitlines()


def test_a_disk_that_fills_up_leaves_the_record_as_it_was(tmp_path):
    path = made(tmp_path / "job", 3)
    size = path.stat().st_size
    said = limited_to(
        size + 100,
        tmp_path / "job",
        "import sys\nfrom pathlib import Path\nfrom stillshaft.solver.record import *\nr = Record(Path(sys.argv[1]))\n"
        "for _ in range(2):\n"
        " try: r.append({'format': 1, 'id': 4, 'text': 'x' * 300})\n"
        " except RecordError as e: print(e, len(r.lines), r.path.stat().st_size)\n"
        "r.append({'format': 1, 'id': 4, 'text': 'x'}); print(len(r.lines))\n",
    )
    assert len(said) == 3
    for line in said[:2]:
        assert "the disk is full; nothing was added, what is recorded is kept" in line
        assert line.endswith(f" 3 {size}")
    assert said[2] == "4"
    assert [line.event["id"] for line in opened(tmp_path / "job")[0]] == [1, 2, 3, 4]


def test_a_job_that_does_not_fit_the_disk_leaves_nothing_behind(tmp_path):
    (said,) = limited_to(
        50,
        tmp_path / "a" / "job",
        "import sys\nfrom pathlib import Path\nfrom stillshaft.solver.record import *\n"
        "try: Record.create(Path(sys.argv[1]), {'text': 'x' * 300})\nexcept RecordError as e: print(e)\n",
    )
    assert said.endswith("cannot be written: the disk is full")
    assert list(tmp_path.iterdir()) == []


def test_a_full_disk_that_takes_no_lock_lets_the_job_be_read(tmp_path):
    made(tmp_path / "job", 3)
    (said,) = limited_to(
        10,
        tmp_path / "job",
        "import sys\nfrom pathlib import Path\nfrom stillshaft.solver.record import *\nr = Record(Path(sys.argv[1]))\n"
        "print(r.read_only, len(r.lines), r.problems)\n",
    )
    assert said.startswith("True 3 ")
    assert "the disk is full: opened to read only" in said
    assert not (tmp_path / "job/job.lock").exists()


def test_a_sync_that_fails_is_a_failure(tmp_path, monkeypatch):
    path = made(tmp_path / "job", 2)
    before = path.read_bytes()
    found = Record(tmp_path / "job")

    def fail(file):
        raise OSError(errno.EIO, "input/output error")

    with monkeypatch.context() as patched:
        patched.setattr(os, "fdatasync", fail)
        with pytest.raises(RecordError, match="is gone: was the disk or stick removed.; nothing was added"):
            found.append({"format": 1, "id": 3})
        patched.setattr(os, "ftruncate", lambda *_: fail(None))  # nothing can be put right any more
        with pytest.raises(RecordError, match="nothing was added"):
            found.append({"format": 1, "id": 3})
    assert len(found.lines) == 2
    found.append({"format": 1, "id": 33})
    found.close()
    assert path.read_bytes() == before + line_bytes({"format": 1, "id": 33})


@pytest.fixture
def nobody():
    """A folder on a disk that this user may not write to; root would be let do everything."""
    folder = Path(tempfile.mkdtemp(dir="/tmp"))
    folder.chmod(0o755)
    user = os.geteuid()
    yield folder
    os.seteuid(user)
    for path in (folder, *folder.rglob("*")):
        path.chmod(0o755)
    shutil.rmtree(folder)


def test_a_disk_that_cannot_be_written_opens_to_read_and_says_so(nobody):
    path = made(nobody / "job", 3)
    for inner in (path, *path.parent.iterdir(), path.parent):
        inner.chmod(0o555 if inner.is_dir() else 0o444)
    if os.geteuid() == 0:
        os.seteuid(65534)
    found = Record(nobody / "job")
    assert found.read_only
    assert len(found.lines) == 3
    assert "cannot be written: read-only disk, or no right to: opened to read only" in found.problems[0]
    with pytest.raises(RecordError, match="read-only disk, or no right to; open it to write"):
        found.append({"format": 1, "id": 4})
    found.close()
    with pytest.raises(RecordError, match="is closed; open it to write"):
        found.append({"format": 1, "id": 4})
    with pytest.raises(RecordError, match="cannot be written: read-only disk, or no right to"):
        Record.create(nobody / "other", FIRST)


def test_a_record_that_may_not_be_read_is_refused(nobody):
    path = made(nobody / "job")
    path.chmod(0o000)
    if os.geteuid() == 0:
        os.seteuid(65534)
    with pytest.raises(RecordError, match="cannot be opened: permission denied"):
        Record(nobody / "job", read_only=True)


@pytest.mark.parametrize(
    ("meddle", "said"),
    [
        (lambda p: p.write_bytes(p.read_bytes() + b"more\n"), "was changed by another program .it has"),
        (lambda p: p.write_bytes(p.read_bytes()[:-30]), "was changed by another program .it has"),
        (
            lambda p: p.write_bytes(p.read_bytes().replace(b"Schaufel 2", b"Schaufel 7")),
            "was changed by another program; ",
        ),
        (
            lambda p: os.replace(shutil.copy(p, p.with_name("x")), p),
            "was replaced by another program; nothing was added",
        ),
        (lambda p: p.unlink(), "is gone: was the disk or stick removed."),
        (lambda p: p.parent.rename(p.parent.with_name("elsewhere")), "is gone"),
    ],
)
def test_a_file_that_was_changed_under_us_is_noticed_before_anything_is_added(tmp_path, meddle, said):
    path = made(tmp_path / "job", 4)
    found = Record(tmp_path / "job")
    found.append({"format": 1, "id": 5})
    meddle(path)
    after = path.read_bytes() if path.exists() else None
    with pytest.raises(RecordError, match=said + ".*close the job and open it again"):
        found.append({"format": 1, "id": 6})
    assert len(found.lines) == 5
    found.close()
    assert (path.read_bytes() if path.exists() else None) == after


def test_a_change_that_kept_the_time_is_seen_at_the_end_of_the_file(tmp_path):
    path = made(tmp_path / "job", 2)
    found = Record(tmp_path / "job")
    about = path.stat()
    path.write_bytes(path.read_bytes().replace(b"Schaufel 2", b"Schaufel 7"))
    os.utime(path, ns=(about.st_atime_ns, about.st_mtime_ns))
    with pytest.raises(RecordError, match="was changed by another program"):
        found.append({"format": 1, "id": 3})
    found.close()


def test_a_file_that_was_only_touched_goes_on(tmp_path):
    path = made(tmp_path / "job", 2)
    found = Record(tmp_path / "job")
    path.touch()
    found.append({"format": 1, "id": 3})
    found.close()
    assert len(opened(tmp_path / "job")[0]) == 3


def test_copies_of_the_record_beside_it_are_named(tmp_path):
    path = made(tmp_path / "job")
    beside = ["job (conflicted copy of the laptop).jsonl", "job.jsonl~", "JOB-2.JSONL"]
    for name in beside:
        shutil.copy(path, path.with_name(name))
    (tmp_path / "job/jobs.txt").write_text("")
    problems = opened(tmp_path / "job")[1]
    assert len(problems) == 3
    for name in beside:
        assert any(f"'{name}' lies beside the record" in p for p in problems)


NAMES = [
    unicodedata.normalize("NFC", "Gebläse"),
    unicodedata.normalize("NFD", "Gebläse"),
    "🌀 fan 🙂",
    "مروحة ١",
    "n" * 255,
    "ü" * 127,
    " spaces  and 'quotes\" ",
    "-rf",
    "new\nline",
]


@pytest.mark.parametrize("name", NAMES)
def test_folders_of_any_name(tmp_path, name):
    made(tmp_path / name, 3)
    lines, problems = opened(tmp_path / name)
    assert len(lines) == 3
    assert problems == ()
    with Job.create(tmp_path / "job", name, name) as job:
        assert job.state.name == name
    with Job.open(tmp_path / "job") as job:
        assert (job.state.name, job.events[0].by) == (name, name)


# killed


WRITER = (
    "import sys\nfrom pathlib import Path\nfrom stillshaft.solver.job import Job\n"
    "job = Job.open(Path(sys.argv[1]), by='writer')\n"
    "while True: print(job.append('decision', text='ü🙂' * 200).id, flush=True)\n"
)


def killed_after(folder, seconds):
    """Id of the last event that a program acknowledged before it was killed."""
    writer = subprocess.Popen([sys.executable, "-c", WRITER, folder], stdout=subprocess.PIPE, text=True)
    last = int(writer.stdout.readline())
    time.sleep(seconds)
    writer.send_signal(signal.SIGKILL)
    rest = writer.communicate()[0].split("\n")[:-1]  # a torn last line says nothing
    return int(rest[-1]) if rest else last


def test_every_acknowledged_event_is_there_after_a_kill(tmp_path):
    Job.create(tmp_path / "job", "killed", "first").close()
    for number in range(4):
        last = killed_after(tmp_path / "job", 0.01 * number)
        with Job.open(tmp_path / "job") as job:
            ids = [event.id for event in job.events]
            assert ids == list(range(1, len(ids) + 1))
            assert len(ids) >= last
            assert all("is cut off" in problem for problem in job.problems)


def test_lines_are_plain_json(tmp_path):
    """Any JSON reader does: here two that are not of this project."""
    for raw in made(tmp_path / "job", 3).read_bytes().splitlines():
        assert json.loads(raw) == msgspec.json.decode(raw)
