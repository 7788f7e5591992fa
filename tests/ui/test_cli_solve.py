"""`solve` on the command line with its options, and stored coefficients."""

import json
import re
import shutil
from pathlib import Path

import pytest
from test_cli import assert_one_line, stillshaft

RAO = Path(__file__).parents[2] / "fixtures" / "rao_two_plane.toml"


@pytest.fixture
def folder(tmp_path):
    shutil.copy(RAO, tmp_path / "runs.toml")
    return tmp_path


def solved(folder, *more):
    done = stillshaft("solve", "runs.toml", "--json", *more, cwd=folder)
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


def test_trials_alternatives_and_consistency_are_told(folder):
    whole = solved(folder)
    assert [t["verdict"] for t in whole["trials"]] == ["good", "good"]
    assert {a["name"] for a in whole["alternatives"]} >= {"all planes", 'plane "left" alone'}
    assert whole["consistency"] == {"drifts": [], "suspicions": []}
    assert whole["proposed"] == "all planes"
    assert whole["stored"] is None
    shown = stillshaft("solve", "runs.toml", cwd=folder)
    assert "rule of thumb for the trial's effect" in shown.stdout


def test_only_one_plane_and_a_point_left_out(folder):
    whole = solved(folder, "--plane", "right", "--without-point", "B")
    assert [c["plane"] for c in whole["corrections"]] == ["right"]
    assert whole["predicted"][0]["amplitude"] == pytest.approx(0.0, abs=1e-9)
    assert solved(folder, "--parts", "static")["corrections"][0]["mass"] > 0.0
    assert solved(folder, "--method", "minimax")["method"] == "minimax"


def test_coefficients_are_stored_and_used_the_next_time(folder):
    solved(folder, "--keep", "known.toml", "--machine", "turbine")
    text = (folder / "runs.toml").read_text()
    (folder / "runs.toml").write_text(text[: text.index('name = "trial left"') - len("[[run]]\n")])
    whole = solved(folder, "--coefficients", "known.toml", "--machine", "turbine")
    assert whole["stored"]["status"] == "not tested yet"
    assert whole["stored"]["share"] == 0.5
    assert whole["corrections"][0]["mass"] == pytest.approx(10.0561, abs=0.01)
    planned = stillshaft(
        "trial", "--rotor-mass", "80 kg", "--radius", "300 mm", "--speed", "1480", "--planes", "2", "--plane", "left", "--runs",
        "runs.toml", "--coefficients", "known.toml", "--machine", "turbine", "--abort", "9.5", "--json", cwd=folder,
    )  # fmt: skip
    levels = json.loads(planned.stdout)["levels"]
    assert levels[0]["worst"] == pytest.approx(9.5)
    assert levels[0]["expected"] < 8.5


@pytest.mark.parametrize(
    ("more", "says"),
    [
        (("--method", "luck"), "choose auto, least-squares, expected or minimax"),
        (("--plane", "middle"), 'has no plane "middle"; it has left, right'),
        (("--without-point", "A", "--without-point", "B"), "every point is left out"),
        (("--coefficients", "none.toml", "--machine", "mill"), 'machine "mill": nothing is stored for it'),
    ],
)
def test_what_cannot_be_solved_is_said(folder, more, says):
    done = stillshaft("solve", "runs.toml", *more, cwd=folder)
    assert says in assert_one_line(done)


def test_stored_coefficients_want_a_machine(folder):
    done = stillshaft("solve", "runs.toml", "--keep", "known.toml", cwd=folder)
    assert done.returncode == 2
    assert not (folder / "known.toml").exists()


def test_a_trial_wants_what_belongs_together(folder):
    base = ("trial", "--rotor-mass", "80 kg", "--radius", "300 mm", "--speed", "1480")
    assert "heavy spot: takes a runs file" in assert_one_line(stillshaft(*base, "--point", "A", cwd=folder))
    assert "name the machine and a runs file" in assert_one_line(
        stillshaft(*base, "--coefficients", "k.toml", cwd=folder)
    )
    more = ("--runs", "runs.toml", "--hookup", "h.toml", "--point", "A", "--lag", "200")
    assert "lag 200: 0 to 180 degrees" in assert_one_line(stillshaft(*base, *more, cwd=folder))


def test_an_argument_that_would_not_show_is_wrong_usage():
    for text in ("a\x1b[2J", "left\u202eright"):
        done = stillshaft("solve", "runs.toml", "--machine", text)
        assert done.returncode == 2
        assert re.fullmatch(
            r"stillshaft: argument 4 has a character that does not show \(U\+[0-9A-F]{4}\)\n", done.stderr
        )
