"""Simulated machines with a fault each, measured as on the command line, through evidence to the ranked causes."""

import json
import subprocess
import sys

import faulty_machines
import numpy as np
import pytest
import soundfile
import tomli_w
from faulty_machines import CAUSES, RATE_HZ, UNBALANCE, machine
from stillshaft.acquire import simulated
from stillshaft.dsp import sweep
from stillshaft.solver import diagnosis, evidence
from stillshaft.ui import analysis

SEED = 1


def found(cause, seed=SEED, **changed):
    return diagnosis.diagnose(faulty_machines.evidence_of(machine(cause, seed, **changed), seed))


@pytest.mark.parametrize("cause", [c for c in CAUSES if c not in (*UNBALANCE, "rub")])
def test_the_fault_is_ranked_first(cause):
    first = found(cause).causes[0]
    assert first.key == cause
    assert first.speaking_for


@pytest.mark.parametrize("kind", UNBALANCE)
@pytest.mark.parametrize("size", [1.0, 0.5])
def test_plain_unbalance_is_ranked_first_with_its_kind(kind, size):
    first = found(kind, size=size).causes[0]
    assert first.key == "unbalance"
    assert first.verdict == "likely"
    if size == 1.0:
        assert first.kinds[0].key == kind


def test_a_rub_is_among_the_first_and_not_taken_for_plain_unbalance():
    """A light rub bends the shaft by heat: what tells it from a thermal bow is what was found by looking."""
    whole = found("rub", 6)
    assert "rub" in [c.key for c in whole.causes[:3]]
    assert whole.causes[0].key != "unbalance"


@pytest.mark.parametrize("cause", ["resonance", "misalignment"])
@pytest.mark.parametrize("seed", [2, 3, 4])
def test_resonant_and_misaligned_machines_are_not_called_unbalance(cause, seed):
    assert found(cause, seed).causes[0].key != "unbalance"


def test_what_a_check_finds_turns_the_order_round():
    """Nothing but a spectrum and directions: a bent shaft looks like unbalance until the shaft is measured."""
    known = dict(faulty_machines.evidence_of(machine("bent shaft", SEED), SEED))
    blind = {k: v for k, v in known.items() if not k.startswith("axial")}
    assert diagnosis.diagnose(blind).causes[0].key == "unbalance"
    asked = {c.quantity for c in diagnosis.diagnose(blind).next_checks[:6]}
    assert asked & {"runout", "axial_ratio", "axial_phase"}
    seen = diagnosis.merged(known, {"runout": diagnosis.Figure(120.0, 110.0, 130.0)})
    assert diagnosis.diagnose(seen).causes[0].key == "bent shaft"


def test_a_coast_down_gives_the_margin(tmp_path):
    """Through a recording and `analysis.sweep_recording`: the resonance is where the rotor's equations have it."""
    sick = machine("resonance", 4)
    run = simulated.SimulatedRun(
        sick.rotor, faulty_machines.SENSORS, sick.unbalance,
        simulated.Conditions(1950.0, ramp=(300.0, 60.0), harmonics_m_s2=()), 1, 62.0, False, RATE_HZ,
    )  # fmt: skip
    source, blocks = run.open(), []
    while (block := source.read(1.0)) is not None:
        blocks.append(block.samples)
    soundfile.write(tmp_path / "up.wav", np.concatenate(blocks), int(RATE_HZ), subtype="FLOAT")
    wired = faulty_machines.hookup()
    swept = analysis.sweep_recording(tmp_path / "up.wav", wired, sweep.Wanted(running_rpm=faulty_machines.SPEED_RPM))
    natural, _ = simulated.modes(sick.rotor, tuple(s.horizontal_n_per_m for s in sick.rotor.supports))
    found = evidence.from_sweep(swept)
    truth = 100 * abs(natural[0] * 30 / np.pi - faulty_machines.SPEED_RPM) / faulty_machines.SPEED_RPM
    assert found["resonance_margin"].value == pytest.approx(truth, abs=0.5)
    assert found["running"].word == "near or above a resonance"
    whole = diagnosis.merged(faulty_machines.evidence_of(sick, 4), found)
    assert diagnosis.diagnose(whole).causes[0].key == "resonance"
    assert diagnosis.diagnose(whole).causes[0].verdict == "likely"


def test_the_command_line_suggests_by_the_same_rules(tmp_path):
    sick = machine("belt", SEED)
    soundfile.write(tmp_path / "belt.wav", faulty_machines.run(sick, SEED), int(RATE_HZ), subtype="FLOAT")
    (tmp_path / "h.toml").write_text(tomli_w.dumps(simulated.hookup_for(faulty_machines.SENSORS)))
    command = [sys.executable, "-m", "stillshaft.ui.cli", "spectrum", "belt.wav", "--hookup", "h.toml", "--json"]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    suggested = json.loads(done.stdout)["suggestions"]
    assert {"point", "what", "speaking_for", "against", "next_check"} == set(suggested[0])
    (below,) = [s for s in suggested if s["what"].startswith("belts")]
    assert any("lie below 1x" in text for text in below["speaking_for"])
    assert below["next_check"]
    said = [s["what"] for s in suggested]
    assert len(said) == len(set(said))
    assert any(s.startswith("unbalance") or "; unbalance" in s for s in said)
