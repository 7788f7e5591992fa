"""`pieces` on the command line: results, JSON, bench figures beside each piece, exit status, one line for bad input."""

import json
import math
from pathlib import Path

import numpy as np
import pytest
import tomli_w
from stillshaft.acquire import simulated
from stillshaft.dsp import vectors
from test_cli import assert_one_line, stillshaft

RAO = (Path(__file__).parents[2] / "fixtures" / "rao_two_plane.toml").read_text()
POSITIONS = RAO.replace('radius = "300 mm"', 'radius = "300 mm"\npositions = 12\nblocked = [3]\nper_position = 2')
STOCK = ("--stock", "1 g x 4, 2 g x 4, 5 g x 4")


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """The textbook's two-plane example, with twelve positions a plane, and what goes wrong with it."""
    folder = tmp_path_factory.mktemp("pieces")
    (folder / "r.toml").write_text(
        POSITIONS + '[[stock]]\nmass = "2 g"\ncount = 6\n[[stock]]\nmass = "5 g"\ncount = 6\n'
    )
    (folder / "anywhere.toml").write_text(RAO)
    (folder / "blocked.toml").write_text(POSITIONS.replace("[3]", str(list(range(1, 13)))))
    (folder / "weak.toml").write_text(POSITIONS.replace("mass = 10.0", "mass = 10.0, mass_sd = 9.0"))
    (folder / "h.toml").write_text(tomli_w.dumps(simulated.demo_hookup()))
    return folder


def whole(folder, *arguments, status=0):
    done = stillshaft("pieces", *arguments, "--json", cwd=folder)
    assert done.returncode == status, done.stderr
    assert "NaN" not in done.stdout
    return json.loads(done.stdout)


def test_json_holds_the_contracts_keys_and_adds_up(folder):
    """S. S. Rao's two-plane example (from memory): 10.06 g at 325.6° and 5.88 g at 68.3° are wanted."""
    found = whole(folder, "r.toml", *STOCK, "--aim", "best")
    assert list(found) == [
        "format", "verb", "version", "trusted", "reasons", "pieces", "result", "predicted", "optimal", "bound",
        "largest", "residual_unit", "continuous", "relative_to", "curve", "handbook", "warnings",
    ]  # fmt: skip
    assert list(found["pieces"][0]) == [
        "plane", "position", "angle_deg", "mass", "unit", "radius_mm", "rim_mm", "force_n", "clock", "filler",
        "drill_full_mm", "drill_total_mm", "grind_mm", "rod_mm",
    ]  # fmt: skip
    assert list(found["predicted"][0]) == ["point", "speed_rpm", "unit", "amplitude", "phase_deg", "amplitude_upper95"]
    for result, (mass, angle_deg) in zip(found["result"], [(10.0561, 325.555), (5.8774, 68.256)], strict=True):
        own = [x for x in found["pieces"] if x["plane"] == result["plane"]]
        made = sum(x["mass"] * vectors.vector(1.0, x["angle_deg"]) for x in own)
        assert abs(made - vectors.vector(result["mass"], result["angle_deg"])) < 1e-9
        assert abs(made - vectors.vector(mass, angle_deg)) < 0.4
        for x in own:
            assert x["angle_deg"] == 30.0 * (x["position"] - 1)
            assert x["rim_mm"] == pytest.approx(math.radians(x["angle_deg"]) * 300.0)
            assert x["force_n"] == pytest.approx(x["mass"] / 1000.0 * 0.3 * (1480.0 * math.pi / 30.0) ** 2)
            assert x["position"] != 3
    assert found["optimal"]
    assert found["bound"] <= found["largest"]
    assert found["largest"] == pytest.approx(max(p["amplitude"] for p in found["predicted"]))
    assert [c["pieces"] for c in found["curve"]] == list(range(len(found["curve"])))
    as_good = next(c["pieces"] for c in found["curve"] if c["largest"] <= found["handbook"]["largest"])
    assert as_good <= found["handbook"]["pieces"]


def test_people_get_tables_and_cautions(folder):
    done = stillshaft("pieces", "r.toml", "--hookup", "h.toml", cwd=folder)
    assert done.returncode == 0, done.stderr
    for words in ("position", "along rim", "clock face", "force N", "together", "none is below", "chosen",
                  "split between neighbours", "not friction", "nobody in the plane of rotation"):  # fmt: skip
        assert words in done.stdout
    none = stillshaft("pieces", "r.toml", "--at-most", "0", cwd=folder)
    assert "no piece" in none.stdout
    assert "not friction" not in none.stdout


def test_planes_without_positions_take_pieces_at_any_angle(folder):
    found = whole(folder, "anywhere.toml", *STOCK, "--aim", "best")
    assert {x["position"] for x in found["pieces"]} == {None}
    assert found["handbook"] is None
    assert found["result"][0]["mass"] == pytest.approx(10.0561, rel=0.01)
    assert any("at any angle" in w for w in found["warnings"])


def test_drilled_masses_are_taken_off_with_their_depth(folder):
    found = whole(folder, "r.toml", "--drill", "8 mm", "--material", "cast iron", "--drill-point", "118")
    for x in found["pieces"]:
        assert x["mass"] < 0.0
        tip_mm = 4.0 / math.tan(math.radians(59.0))
        volume = math.pi * 16.0 * (x["drill_full_mm"] + tip_mm / 3.0)
        assert 7.2e-3 * volume == pytest.approx(-x["mass"])
        assert x["drill_total_mm"] == pytest.approx(x["drill_full_mm"] + tip_mm)
    made = sum(x["mass"] * vectors.vector(1.0, x["angle_deg"]) for x in found["pieces"] if x["plane"] == "left")
    assert abs(made - vectors.vector(10.0561, 325.555)) < 1.0
    ground = whole(folder, "r.toml", "--grind", "4 cm^2")["pieces"][0]
    assert ground["grind_mm"] == pytest.approx(-ground["mass"] / 7.85e-3 / 400.0)
    printed = stillshaft("pieces", "r.toml", "--drill", "8 mm", cwd=folder).stdout
    assert "full depth" in printed
    assert "never from blade roots" in printed


def test_weld_metal_counts_and_has_its_length_of_rod(folder):
    found = whole(folder, "r.toml", "--filler", "0.5 g", "--rod", "3.2 mm", "--recovery", "60")
    weighs = math.pi * 1.6**2 * 7.85e-3  # g a millimetre
    assert {x["mass"] for x in found["pieces"]} <= {2.0, 5.0}
    for x in found["pieces"]:
        assert (x["filler"], x["rod_mm"]) == (0.5, pytest.approx(0.5 / (0.6 * weighs)))
    own = [x for x in found["pieces"] if x["plane"] == "left"]
    made = sum((x["mass"] + 0.5) * vectors.vector(1.0, x["angle_deg"]) for x in own)
    assert abs(made) == pytest.approx(found["result"][0]["mass"])
    printed = stillshaft("pieces", "r.toml", "--rod", "3.2 mm", "--recovery", "60", cwd=folder).stdout
    assert "rod mm" in printed
    assert "earth clamp" in printed


def test_what_is_on_stays_on_or_is_combined(folder):
    left_on = whole(folder, "r.toml", "--leave-on", "--aim", "best")
    assert left_on["relative_to"] == "last run"
    right = next(r for r in left_on["result"] if r["plane"] == "right")
    total = vectors.vector(right["mass"], right["angle_deg"]) + vectors.vector(12.0, 180.0)
    assert abs(total - vectors.vector(5.8774, 68.256)) < 1.0
    found = whole(folder, "r.toml", "--combine", "--stock", "12 g x 1, 6 g x 2")
    (only,) = found["pieces"]
    assert (only["plane"], only["position"], only["mass"]) == ("right", 7, 12.0)
    assert found["residual_unit"] == "g"
    assert found["predicted"] == []


def test_stored_coefficients_spare_a_trial(folder):
    kept = stillshaft("solve", "r.toml", "--machine", "fan", "--keep", "stored.toml", cwd=folder)
    assert kept.returncode == 0, kept.stderr
    text = (folder / "r.toml").read_text()
    first, last = text.index('[[run]]\nname = "trial right"'), text.index("[[stock]]")
    (folder / "later.toml").write_text(text[:first] + text[last:])
    found = whole(folder, "later.toml", "--coefficients", "stored.toml", "--machine", "fan", "--aim", "best")
    made = [vectors.vector(r["mass"], r["angle_deg"]) for r in found["result"]]
    np.testing.assert_allclose(made, [vectors.vector(10.0561, 325.555), vectors.vector(5.8774, 68.256)], atol=0.5)


def test_fewest_pieces_for_a_goal(folder):
    found = whole(folder, "r.toml", *STOCK, "--aim", "fewest", "--goal", "2.0")
    assert found["largest"] <= 2.0 < found["curve"][len(found["pieces"]) - 1]["largest"]
    assert np.all(np.diff([c["largest"] for c in found["curve"]]) <= 0.0)


def test_pieces_of_a_correction_that_is_not_determined_are_not_to_be_trusted(folder):
    found = whole(folder, "weak.toml", *STOCK, status=3)
    assert not found["trusted"]
    assert "left" in found["reasons"][0]


@pytest.mark.parametrize(
    ("arguments", "match"),
    [(("--coefficients", "stored.toml"), "name it with"), (("--combine", "--leave-on"), "leaves them: give one")],
)
def test_options_that_do_not_go_together_are_wrong_usage(folder, arguments, match):
    done = stillshaft("pieces", "r.toml", *arguments, cwd=folder)
    assert done.returncode == 2
    assert match in done.stderr


@pytest.mark.parametrize(
    ("arguments", "match"),
    [
        (("anywhere.toml",), "no stock: say which pieces are at hand"),
        (("blocked.toml", *STOCK), "all positions are blocked"),
        (("none.toml", *STOCK), "none.toml: there is no such file"),
        (("r.toml", "--stock", "5 g"), '--stock: "5 g": write mass x count'),
        (("r.toml", "--stock", "0 g x 4"), "the mass must not be 0"),
        (("r.toml", "--stock", "5 mm x 4"), '--stock: "5 mm"'),
        (("r.toml", "--aim", "cheapest"), "aim cheapest: cannot be used"),
        (("r.toml", "--aim", "fewest"), "fewest pieces need to know what is enough"),
        (("r.toml", "--drill", "8 mm", "--grind", "4 cm^2"), "--drill, --grind: give one"),
        (("r.toml", "--drill", "8 mm", "--filler", "1 g"), "add metal, but --drill and --grind take it off"),
        (("r.toml", "--drill", "0 mm"), '--drill: "0 mm" must be above 0'),
        (("r.toml", "--drill", "8 mm", "--material", "cheese"), 'material "cheese": is not known'),
        (("r.toml", "--rod", "3.2 mm"), "say with --recovery"),
        (("r.toml", "--rod", "3.2 mm", "--recovery", "160"), "recovery 160 %"),
    ],
)
def test_what_cannot_be_used_is_one_line(folder, arguments, match):
    assert match in assert_one_line(stillshaft("pieces", *arguments, cwd=folder))
