"""From a runs file to pieces: what is proposed, what is left on, what is combined, refusals."""

import math

import numpy as np
import pytest
from stillshaft.dsp import vectors
from stillshaft.solver import correction
from stillshaft.solver.pieces import combined, number_of, places_of, plan
from stillshaft.solver.placement import PlacementError
from stillshaft.solver.runs import StockMass
from test_solver import TRIALS, V0, H, simulated

STOCK = [StockMass(m, 6) for m in (0.5, 1.0, 2.0, 5.0)]
PLANES = [
    {"name": "left", "radius": "200 mm", "positions": 12, "blocked": [1, 3], "radii": ["150 mm"]},
    {"name": "right", "radius": "200 mm", "positions": [10.0, 100.0, 190.0, 280.0], "cap": "16 g", "per_position": 2},
]


def made(runs, pieces):
    """Mass vectors of pieces, from their angles and radii."""
    masses = np.zeros(len(runs.planes), dtype=complex)
    for x in pieces:
        masses[x.plane] += x.mass * x.leverage * vectors.vector(1.0, x.angle_deg)
    return masses


def test_pieces_of_a_runs_file(tmp_path):
    runs = simulated(tmp_path / "r.toml", plane=PLANES)
    found = plan(runs, STOCK)
    masses = made(runs, found.chosen.pieces)
    assert found.chosen.largest == pytest.approx(np.abs(V0 + H @ masses).max(), rel=1e-6)
    assert [p.amplitude for p in found.predicted] == pytest.approx(np.abs(V0 + H @ masses), rel=1e-6)
    assert all(p.amplitude_upper95 > p.amplitude for p in found.predicted)
    assert found.chosen.optimal
    assert found.trusted
    for x in found.chosen.pieces:
        number = number_of(runs.planes[x.plane], x)
        assert runs.planes[x.plane].positions_deg[number - 1] == x.angle_deg
        assert number not in runs.planes[x.plane].blocked
    assert any("left" in w and "one piece a position" in w for w in found.warnings)


def test_the_aims_trade_pieces_for_vibration(tmp_path):
    runs = simulated(tmp_path / "r.toml", plane=PLANES, limit=[{"point": p, "amplitude": 2.0} for p in "AB"])
    best, proposal = plan(runs, STOCK, aim="best"), plan(runs, STOCK)
    assert best.chosen.largest <= proposal.chosen.largest <= proposal.enough
    assert len(proposal.chosen.pieces) < len(best.chosen.pieces)
    fewest, goal = plan(runs, STOCK, aim="fewest"), plan(runs, STOCK, aim="fewest", goal=2.0)
    assert fewest.unit == "of the limit"
    assert goal.unit == "mm/s rms"
    assert fewest.chosen.largest == pytest.approx(goal.chosen.largest / 2.0)
    assert goal.chosen.largest <= 2.0 < goal.curve.choices[len(goal.chosen.pieces) - 1].largest
    out_of_reach = plan(runs, STOCK, aim="fewest", goal=0.01, most=2)
    assert any("no choice of the stock stays below 0.01" in w for w in out_of_reach.warnings)


def test_a_proposal_is_no_finer_than_the_data(tmp_path):
    sure = plan(simulated(tmp_path / "a.toml", plane=PLANES, repeatability="0.1 % 0.1 deg"), STOCK)
    unsure = plan(simulated(tmp_path / "b.toml", plane=PLANES, repeatability="10 % 10 deg"), STOCK)
    assert len(unsure.chosen.pieces) < len(sure.chosen.pieces)


def test_masses_of_the_last_run_left_on(tmp_path):
    runs = simulated(tmp_path / "r.toml", plane=PLANES)
    on = runs.runs[-1].masses
    found = plan(runs, STOCK, left_on=True, aim="best")
    added = made(runs, found.chosen.pieces)
    np.testing.assert_allclose(found.total, on + added)
    assert found.chosen.largest == pytest.approx(np.abs(V0 + H @ (on + added)).max(), rel=1e-6)


def test_a_piece_that_stays_on_keeps_its_position(tmp_path):
    planes = [{"name": "left", "radius": "200 mm", "positions": 4, "cap": "20 g"}, PLANES[1]]
    masses = [("initial", (0, 0)), ("trial right", (0, 5.0j)), ("trial left", (6.0, 0))]
    runs = simulated(tmp_path / "r.toml", masses, plane=planes)
    assert places_of(runs, 0, left_on=True).taken == ((0, pytest.approx(6.0)),)
    assert places_of(runs, 0, left_on=False).taken == ()
    found = plan(runs, STOCK, left_on=True, aim="best")
    assert all(x.angle_deg != 0.0 for x in found.chosen.pieces if x.plane == 0)
    assert sum(x.mass for x in found.chosen.pieces if x.plane == 0) <= 14.0


def test_several_masses_become_fewer(tmp_path):
    """Two pieces of 3 g at 0° and 4 g at 90° are one of 5 g at 53.13°."""
    positions = [0.0, math.degrees(math.atan2(4.0, 3.0)), 90.0]
    planes = [{"name": "left", "radius": "200 mm", "positions": positions}, PLANES[1]]
    masses = [("initial", (0, 0)), ("trial right", (0, 5.0j)), ("trial left", (3.0 + 4.0j, 0))]
    runs = simulated(tmp_path / "r.toml", masses, plane=planes)
    found = combined(runs, [StockMass(m, 2) for m in (3.0, 4.0, 5.0)])
    (only,) = found.chosen.pieces
    assert (only.mass, only.position) == (5.0, 1)
    np.testing.assert_allclose(found.chosen.masses, [3.0 + 4.0j, 0.0], atol=1e-9)
    with pytest.raises(PlacementError, match="does not make the same masses to 2 %"):
        combined(runs, [StockMass(8.0, 2)])


def test_pieces_of_planes_without_positions_make_the_solved_masses(tmp_path):
    runs = simulated(tmp_path / "r.toml")
    found = plan(runs, STOCK, aim="best")
    wanted = [vectors.vector(c.mass, c.angle_deg) for c in correction.solve(runs).corrections]
    np.testing.assert_allclose(found.chosen.masses, wanted, rtol=0.01)
    assert found.handbook is None


def test_a_correction_that_is_not_determined_is_not_trusted(tmp_path):
    weak = [("initial", (0, 0)), ("trial left", (0.001, 0)), ("trial right", (0, 5.0j))]
    runs = simulated(tmp_path / "r.toml", weak, plane=PLANES, repeatability="2 % 2 deg")
    found = plan(runs, STOCK)
    assert not found.trusted
    assert "left" in found.reasons[0]


@pytest.mark.parametrize(
    ("more", "match"),
    [
        ({"aim": "cheapest"}, "aim cheapest: cannot be used; choose proposal, best, fewest"),
        ({"aim": "fewest"}, 'a goal, or a .*limit.* above 0 for "A"'),
        ({"goal": -1.0}, "goal -1: must be above 0"),
        ({"stock": []}, "no stock"),
    ],
)
def test_what_cannot_be_planned_is_refused(tmp_path, more, match):
    with pytest.raises(PlacementError, match=match):
        plan(simulated(tmp_path / "r.toml", plane=PLANES), **({"stock": STOCK} | more))


def test_nothing_on_cannot_be_combined(tmp_path):
    runs = simulated(tmp_path / "r.toml", [*TRIALS, ("check", (0, 0))])
    with pytest.raises(PlacementError, match='run "check": nothing is on the rotor'):
        combined(runs, STOCK)
