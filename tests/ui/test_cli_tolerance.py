"""`tolerance` on the command line: tables, JSON, what it cites, and nonsense refused in one line."""

import json
import re

import pytest
from stillshaft.solver import limit_tables
from stillshaft.ui.tolerance import ToleranceError, tolerance_of
from test_cli import RAO, assert_one_line, stillshaft

ROTOR = ["--rotor-mass", "80 kg", "--speed", "1480"]
ZONES = ["--limits", "ISO 20816-3", "--class", "15 to 300 kW"]


def test_json_holds_the_contracts_keys_and_verdicts():
    done = stillshaft("tolerance", RAO, "--machine", "fan", *ROTOR, *ZONES, "--support", "rigid", "--json")
    whole = json.loads(done.stdout)
    assert done.returncode == 0
    assert list(whole) == [
        "format", "verb", "version", "trusted", "reasons", "grade", "e_per_um", "u_per_gmm", "planes", "vibration", "verdict",
        "sources",
    ]  # fmt: skip
    assert list(whole["planes"][0]) == [
        "plane", "permissible_gmm", "residual_gmm", "residual_ci95", "probability_within", "verdict"
    ]  # fmt: skip
    assert list(whole["vibration"][0]) == ["point", "value", "ci95", "limit", "zone", "verdict", "source"]
    assert (whole["grade"], whole["verdict"]) == ("G6.3", "not met")
    assert [v["verdict"] for v in whole["vibration"]] == ["not met", "not met"]
    assert any("the broadband level is not known" in r for r in whole["reasons"])


def test_the_table_says_what_each_limit_comes_from():
    done = stillshaft("tolerance", RAO, "--grade", "G6.3", *ROTOR, *ZONES, "--support", "30 Hz", "--support", "B=rigid")
    assert done.returncode == 0
    for text in (
        'equivalent residual unbalance from 1x in "trial right", g·mm', "bow, misalignment and coupling included",
        "|U| ± 1.645 s", "ISO 21940-11, balancing procedures", "2016, from memory", "ISO 20816-3, industrial machines",
        "rigid, B/C, broadband, mm/s rms; 1x alone", "flexible, B/C, broadband",
        "the edition in force, the machine's maker and local rules decide",
    ):  # fmt: skip
        assert text in done.stdout


def test_limits_in_the_runs_file_and_a_flexible_rotor(tmp_path):
    path = tmp_path / "r.toml"
    limit = '\n[[limit]]\npoint = "A"\namplitude = 7.0\n[rotor]\nmass = "80 kg"\nspeed_rpm = 1480.0\nflexible = true\n'
    path.write_text(RAO.read_text() + limit + 'machine = "fan"\n')
    whole = json.loads(stillshaft("tolerance", path, "--json").stdout)
    assert (whole["u_per_gmm"], whole["verdict"]) == (None, "met")
    assert {p["verdict"] for p in whole["planes"]} == {"not applicable"}
    assert whole["vibration"][0]["source"] == "runs file, 1x, mm/s rms"
    shown = stillshaft("tolerance", path).stdout
    assert "not applicable, because the rotor runs above a resonance of its own" in shown


def test_tables_lists_every_table_with_its_file():
    done = stillshaft("tolerance", "--tables")
    assert done.returncode == 0
    for table in limit_tables.built_in():
        assert str(table.path) in done.stdout
        assert limit_tables.cited(table) in done.stdout
    assert "fan, blower, pump" in done.stdout
    assert "above 300 kW, flexible: A/B 3.5, B/C 7.1, C/D 11 mm/s rms" in done.stdout


def test_a_copied_and_edited_table_serves(tmp_path):
    text = (limit_tables.FOLDER / "vibration_machines.toml").read_text()
    path = tmp_path / "ours.toml"
    path.write_text(
        text.replace('name = "ISO 20816-3"', 'name = "ours"').replace("[1.4, 2.8, 4.5]", "[14.0, 28.0, 45.0]")
    )
    arguments = ["tolerance", RAO, "--limits", "ours.toml", "--class", "15 to 300 kW", "--support", "rigid", "--json"]
    whole = json.loads(stillshaft(*arguments, cwd=tmp_path).stdout)
    assert [v["limit"] for v in whole["vibration"]] == [28.0, 28.0]
    assert (whole["grade"], whole["planes"], whole["verdict"]) == ("none", [], "cannot be told")


def test_journal_load_and_overhung_on_the_command_line():
    done = stillshaft(
        "tolerance",
        "--grade",
        "4W/N",
        *ROTOR,
        "--overhung",
        "--bearing-span",
        "1 m",
        "--centre-of-mass",
        "1.2 m",
        "--json",
    )
    whole = json.loads(done.stdout)
    assert whole["u_per_gmm"] == pytest.approx(6350.0 * 80.0 / 1480.0)
    shares = [p["permissible_gmm"] / whole["u_per_gmm"] for p in whole["planes"]]
    assert shares == pytest.approx([0.2, 1.2])


@pytest.mark.parametrize(("arguments", "match"), [
    (["--rotor-mass", "-3 kg", "--speed", "1480"], "rotor mass: -3 kg must be above 0"),
    (["--rotor-mass", "80 kg", "--speed", "nan"], "speed: nan r/min must be above 0"),
    (["--rotor-mass", "80 kg"], "speed: is missing"),
    ([*ROTOR, "--bearing-span", "0 mm"], "bearing span: 0 mm must be above 0"),
    ([*ROTOR, "--centre-of-mass", "far"], "--centre-of-mass: "),
    ([*ROTOR, "--machine", "toaster"], 'machine "toaster": has no usual grade'),
    ([*ROTOR, "--split", "thirds"], "--split thirds: is none; choose bearings or static-couple"),
    ([*ROTOR, "--split", "static-couple"], "split: static and couple are for overhung rotors"),
    ([*ROTOR, "--limits", "ISO 1"], 'limits "ISO 1": is neither a file nor a built-in table'),
    ([*ROTOR, "--limits", "4W/N", "--limits", "4W/N"], '--limits "4W/N": is a second table of its kind'),
    ([*ROTOR, "--support", "rigid"], "--class, --support and --accept pick from a vibration table"),
    ([RAO, *ROTOR, *ZONES], 'support: that of "A" is not said'),
    ([RAO, *ROTOR, *ZONES, "--support", "soft"], '--support "soft": write rigid, flexible, or the lowest natural'),
    ([RAO, *ROTOR, *ZONES, "--support", "A=rigid", "--support", "A = 3 Hz"], '--support "A = 3 Hz": is said twice'),
    ([RAO, *ROTOR, *ZONES, "--support", "Z=rigid"], 'support: "Z" is no point of the runs file'),
    (["nothing.toml", *ROTOR], "nothing.toml: there is no such file"),
])  # fmt: skip
def test_nonsense_ends_in_one_line(arguments, match, tmp_path):
    assert re.search(re.escape(match), assert_one_line(stillshaft("tolerance", *arguments, cwd=tmp_path)))


def test_what_is_given_replaces_what_the_file_says(tmp_path):
    path = tmp_path / "r.toml"
    path.write_text(RAO.read_text() + '\n[rotor]\nmass = "80 kg"\nspeed_rpm = 1480.0\nmachine = "turbine"\n')
    assert tolerance_of(path).grade == "G2.5"
    assert tolerance_of(path, "G16").grade == "G16"
    with pytest.raises(ToleranceError, match="--split none: is none"):
        tolerance_of(path, split="none")
