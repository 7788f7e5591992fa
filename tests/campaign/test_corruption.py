"""Files spoilt in every region: every verb that reads them ends in time with one line, or tells what it left out."""

import shutil

import pytest
from campaign.machinery import Hang, Nursery
from campaign.remains import check_nothing_runs, check_words
from campaign.spoiling import SPOIL, in_lines, in_recording
from campaign.workshop import furnish

pytestmark = [pytest.mark.campaign, pytest.mark.timeout(1500)]


TARGETS = {
    "a recording": ("more.au", in_recording, (
        ("vector", "more.au", "--json"), ("convert", "more.au", "new.wav"), ("spectrum", "more.au"),
        ("steadiness", "more.au"), ("sweep", "more.au"), ("check", "recording:more.au", "--fast", "--seconds", "3"),
    )),
    "an event log": ("more.events.jsonl", in_lines, (("vector", "more.au", "--json"), ("convert", "more.au", "new.au"))),
    "a job's record": ("balance/job.jsonl", in_lines, (
        ("job", "show", "balance", "--verify"), ("job", "next", "balance"), ("job", "solve", "balance"),
        ("report", "balance", "--html", "new.html"), ("machines", "."),
    )),
    "a job's recording": ("measured/recordings/0001.au", in_recording, (
        ("job", "show", "measured", "--verify"), ("report", "measured", "--pdf", "new.pdf"), ("reprocess", ".", "--jobs", "1"),
    )),
    "a hook-up": ("hookup.toml", in_lines, (
        ("vector", "more.au", "--hookup", "hookup.toml"), ("job", "new", "fresh", "--hookup", "hookup.toml"),
        ("calibrate", "voltage", "volt.wav", "--hookup", "hookup.toml", "--volts", "1 V"),
    )),
    "a runs file": ("runs.toml", in_lines, (("solve", "runs.toml"), ("pieces", "runs.toml", "--stock", "5 g x 10"))),
    "stored coefficients": ("coefficients.toml", in_lines, (
        ("solve", "runs.toml", "--coefficients", "coefficients.toml", "--machine", "fan"),
        ("solve", "runs.toml", "--keep", "coefficients.toml", "--machine", "fan"), ("machines", "."),
    )),
    "a lock": ("balance/job.lock", in_lines, (("job", "decide", "balance", "go on"),)),
    "the index of machines": ("cache/index", in_lines, (("machines", "."),)),
    "results of reprocess": ("results.jsonl", in_lines, (("reprocess", ".", "--jobs", "1", "--results", "results.jsonl"),)),
}  # fmt: skip


@pytest.fixture(scope="module")
def spoilt_room(tmp_path_factory):
    """The program, a furnished folder, and an environment where it keeps its own files beside."""
    nursery = Nursery(tmp_path_factory.mktemp("spoilt"))
    room = furnish(nursery.folder / "room")
    own = {"XDG_CACHE_HOME": str(nursery.folder / "cache")}
    for act in (
        ("solve", "runs.toml", "--keep", "coefficients.toml", "--machine", "fan"), ("machines", "."),
        ("reprocess", ".", "--jobs", "1", "--results", "results.jsonl"),
    ):  # fmt: skip
        nursery.run(*act, folder=room, own_s=30.0, environment=own)
    (room / "balance/job.lock").write_text('{"pid": 1, "host": "elsewhere", "since": "2026-01-01T00:00:00+00:00"}')
    yield nursery, room, own
    nursery.close()


@pytest.mark.parametrize("target", TARGETS)
def test_spoilt(spoilt_room, tally, chance, often, target):
    row = tally.row(f"spoilt: {target}")
    name, places, verbs = TARGETS[target]
    nursery, room, own = spoilt_room
    path = next(nursery.folder.glob("cache/stillshaft/machines/*.json")) if name == "cache/index" else room / name
    good = path.read_bytes()
    count, cases = often(45, 2), []
    while len(cases) < count:
        cases += [(spoil, at) for at in places(good, chance) for spoil in SPOIL]
    chance.shuffle(cases)
    for number, (spoil, at) in enumerate(cases[:count]):
        path.write_bytes(spoil(good, at, chance))
        verb = verbs[number % len(verbs)]
        try:
            done = nursery.run(*verb, folder=room, environment=own, own_s=8.0)
            check_words(row, done, told=f"{spoil.__name__} at {at}: ")
            row.add("refused in one line", int(done.status == 1))
        except Hang as hang:
            row.blame("hangs", f"{verb}, {spoil.__name__} at {at}: {hang}")
        row.tried += 1
        for left in room.glob("new.*"):
            left.unlink()
        shutil.rmtree(room / "fresh", ignore_errors=True)
    path.write_bytes(good)
    check_nothing_runs(row, nursery)
    row.judge()


def test_spoilt_settings(tmp_path, tally, chance, often):
    """The window's settings and the list of jobs of late: read as far as they can be, else as they were at first."""
    from stillshaft.ui.desktop import recent, settings

    row = tally.row("spoilt: settings and jobs of late")
    view = tmp_path / "view.toml"
    settings.save(view, settings.View())
    late = recent.path_beside(view)
    recent.remember(late, tmp_path)
    for path, read in ((view, settings.load), (late, recent.load)):
        good = path.read_bytes()
        for at in range(0, len(good), often(1, 8)):
            for spoil in SPOIL:
                path.write_bytes(spoil(good, at, chance))
                row.tried += 1
                try:
                    read(path)
                except Exception as error:  # noqa: BLE001 - whatever it raises is what is looked for
                    row.blame("tracebacks", f"{path.name}: {type(error).__name__}: {error}")
        path.write_bytes(good)
    row.judge()
