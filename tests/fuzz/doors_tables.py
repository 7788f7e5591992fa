"""Doors for tables in TOML and for texts: hook-up, runs, scenario, limits, coefficients, neighbours, the program's own tables."""

import functools
import tomllib
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import tomli_w
from fuzz.guard import door, one_line
from stillshaft.acquire import hookup, scenario, simulated
from stillshaft.acquire.source import SourceError
from stillshaft.dsp import candidates, tables, units
from stillshaft.solver import (
    cautions,
    correction,
    diagnosis,
    diagnosis_rules,
    inspection,
    limit_tables,
    runs,
    runs_append,
    runs_file,
    stored,
)
from stillshaft.solver.job import Job
from stillshaft.solver.state import JobState
from stillshaft.ui import cli_pieces, runs_files, wiring
from stillshaft.ui.desktop import recent, settings
from stillshaft.ui.desktop.phrases import PLACE, Phrases
from stillshaft.ui.desktop.settings import View

ROOT = Path(__file__).parents[2]
RAO = ROOT / "fixtures/rao_two_plane.toml"


def file_of(data: bytes, room: Path, name: str = "n.toml") -> Path:
    path = room / name
    path.write_bytes(data)
    return path


# hook-up


def wired() -> bytes:
    """A hook-up that says everything a hook-up can say."""
    point = {
        "name": "fan end horizontal",
        "input": 2,
        "quantity": "acceleration",
        "direction": "radial",
        "sensitivity": "100 mV/g",
        "full_scale": "2.0 V",
        "angle": 0.0,
        "inverted": False,
        "delay": "3 us",
        "highpass": ["2.0 Hz", "0.8 Hz"],
        "mount": "stud",
        "calibrated": {"method": "step", "sensitivity_ci95": "1 mV/g", "highpass_ci95": ["0.02 Hz"]},
    }
    probe = {"name": "shaft", "input": 3, "quantity": "displacement", "sensitivity": "7.87 V/mm", "highpass": "0 Hz"}
    return tomli_w.dumps(
        {
            "format": 1,
            "display": "mm/s rms",
            "reference_end": "drive",
            "rotation": "clockwise",
            "datum": "12 o'clock",
            "scaled": False,
            "rate": "48000 Hz",
            "pulse": {"input": 1, "edge": "auto", "pulses_per_rev": 6, "reference": "missing", "angle": 5.0},
            "device": {"range": "5 V", "coupling": "ac", "iepe": "4 mA", "terminal": "default"},
            "point": [point, probe],
        }
    ).encode()


@door(
    "hook-up", "toml", lambda: [wired(), tomli_w.dumps(simulated.demo_hookup()).encode()], hookup.HookupError, weight=2
)
def hook_up(data: bytes, room: Path) -> None:
    wired = hookup.load_hookup(file_of(data, room))
    assert 1 <= wired.channels <= 64
    assert all(0.0 < abs(p.si_per_reading) < float("inf") for p in wired.points)
    for name in wired.channel_names(wired.channels):
        one_line(name)
    one_line(wired.display)
    assert len(wired.fingerprint) == 16


@door("hook-up, calibrated", "toml", lambda: [wired()], hookup.HookupError, wiring.WiringError, weight=0.5)
def calibrated(data: bytes, room: Path) -> None:
    path = file_of(data, room)
    point = hookup.load_hookup(path).points[0]
    wiring.write_calibration(path, "step", [wiring.Calibrated(point.name, "delay", "3 us", ("4 us",), ("1 us",), "")])
    assert hookup.load_hookup(path).points[0].delay_s == 4e-6


# runs


def full_runs() -> bytes:
    """A runs file that says everything a runs file can say."""
    vectors = {
        "A": {"amplitude": 8.5, "phase": 60.0, "spread": 0.05, "overall": 9.0},
        "B": {"amplitude": 6.5, "phase": 205.0},
    }
    matrix = (0.01 * np.eye(4)).tolist()
    return tomli_w.dumps(
        {
            "format": 1,
            "vibration_unit": "um p-p",
            "mass_unit": "g",
            "repeatability": "2 % 2 deg",
            "placement": "1 % 2 deg",
            "speed_tolerance": "2 %",
            "chain": {"hookup": "0123456789abcdef", "device": "card", "rate_hz": 48000.0},
            "plane": [
                {
                    "name": "left",
                    "radius": "300 mm",
                    "z": "-250 mm",
                    "positions": 24,
                    "blocked": [3],
                    "cap": "60 g",
                    "radii": ["280 mm"],
                    "per_position": 2,
                    "position_cap": "30 g",
                },
                {"name": "right", "radius": "300 mm", "positions": [0.0, 120.0, 240.0]},
            ],
            "point": [
                {"name": "A", "angle": 0.0, "quantity": "displacement", "direction": "radial"},
                {"name": "B", "angle": 90.0, "quantity": "displacement"},
            ],
            "rotor": {
                "kind": "between bearings",
                "mass": "80 kg",
                "speed_rpm": 2950.0,
                "bearing_span": "900 mm",
                "centre_of_mass": "430 mm",
                "flexible": False,
                "machine": "fan",
            },
            "stock": [{"mass": "5 g", "count": 10}, {"mass": "10 g", "count": 4}],
            "limit": [{"point": "A", "amplitude": 2.8}],
            "run": [
                {"name": "slow", "kind": "slow roll", "speed_rpm": 200.0, "vectors": vectors},
                {
                    "name": "initial",
                    "speed_rpm": 1480.0,
                    "vectors": vectors,
                    "setup": 1,
                    "initial_state": 1,
                    "covariance": {"points": ["A", "B"], "matrix": matrix, "degrees_of_freedom": 12.0},
                },
                {
                    "name": "trial left",
                    "kind": "trial",
                    "speed_rpm": 1480.0,
                    "vectors": {"A": {"amplitude": 6.0, "phase": 125.0}, "B": {"amplitude": 4.5, "phase": 230.0}},
                    "masses": {
                        "left": {"mass": 10.0, "angle": 270.0, "radius": "290 mm", "mass_sd": 0.1, "angle_sd": 1.0}
                    },
                },
                {
                    "name": "trial right",
                    "speed_rpm": 1481.0,
                    "vectors": {"A": {"amplitude": 6.0, "phase": 35.0}, "B": {"amplitude": 10.5, "phase": 160.0}},
                    "masses": {"right": [{"mass": 12.0, "angle": 180.0, "position": 2}, {"mass": -1.0, "angle": 10.0}]},
                },
            ],
        }
    ).encode()


def _rao() -> bytes:
    return tomli_w.dumps(tomllib.loads(RAO.read_text())).encode()


@door("runs", "toml", lambda: [full_runs(), _rao()], runs.RunsError, weight=2)
def runs_of_a_file(data: bytes, room: Path) -> None:
    found = runs_file.load_runs(file_of(data, room))
    for run in found.runs:
        assert np.isfinite(run.vectors).all()
        assert np.isfinite(run.masses).all()
        assert np.isfinite(run.covariance).all()
    for name in (*found.points, *(p.name for p in found.planes), *(r.name for r in found.runs)):
        one_line(name)


@door("runs, solved", "toml", lambda: [_rao(), full_runs()], runs.RunsError, correction.SolveError, weight=0.3)
def solved(data: bytes, room: Path) -> None:
    solution = correction.solve(runs_file.load_runs(file_of(data, room)))
    for warning in solution.warnings:
        one_line(warning, 3000)
    for mass in solution.corrections:
        assert not mass.determined or np.isfinite([mass.mass, mass.angle_deg]).all()


@door("runs, added to", "toml", lambda: [_rao(), b"format = 1\n"], runs.RunsError, weight=0.5)
def added_to(data: bytes, room: Path) -> None:
    path = file_of(data, room)
    try:
        runs_append.append_run(
            path,
            name="added",
            speed_rpm=1480.0,
            vectors_by_point={"A": 1 + 1j, "B": 2j},
            covariance=np.eye(4),
            degrees_of_freedom=9.0,
            masses=[("left", 3.0, 20.0)],
            vibration_unit="mm/s rms",
            mass_unit="g",
            points=[],
        )
    except runs.RunsError:
        assert path.read_bytes() == data
        raise
    assert path.read_bytes().startswith(data)
    assert sorted(p.name for p in room.iterdir()) == ["n.toml"]


# what else is TOML


SCENARIO = b"""format = 1
[rotor]
mass = "40 kg"
transverse_inertia = 1.8
bearing_span = "700 mm"
centre_of_mass = "600 mm"
damping_ratio = 0.04
[[support]]
horizontal = "3 MN/m"
vertical = "5 MN/m"
[[support]]
horizontal = "2 MN/m"
vertical = "4 MN/m"
[[plane]]
name = "disc"
z = "900 mm"
radius = "250 mm"
unbalance = "12 g at 40"
[[sensor]]
name = "A"
bearing = 1
angle = 90.0
[[sensor]]
name = "shaft"
bearing = 2
height = "120 mm"
[flexible]
frequency = "70 Hz"
mass = "20 kg"
at_bearings = [0.1, -0.2]
at_planes = [0.7]
[bow]
unbalance = "20 g*mm at 30"
time = "60 s"
[moving]
unbalance = "10 g*mm at 30"
time = "60 s"
[[locked]]
sensor = "A"
order = 2.0
level = "0.3 m/s^2"
lag = 10.0
[pulse]
missing = 0.01
double = 0.01
stray = 0.01
sunlight = 0.1
lamp_hz = 100.0
lamp = 0.1
jitter_deg = 0.1
snr_db = 30.0
[[fault]]
input = 2
kind = "hum"
[conditions]
speed = "1200 rpm"
ramp_from = "300 rpm"
ramp_time = "3 s"
wander_percent = 0.05
noise = "0.05 m/s^2"
noise_colour = "pink"
harmonics = ["0.3 m/s^2", "0.15 m/s^2"]
tones = [["1150 rpm", "0.1 m/s^2"]]
looseness = 0.5
coupling = "2 Hz"
"""


@door("scenario", "toml", lambda: [SCENARIO, b"format = 1\n"], SourceError, weight=1)
def scenario_file(data: bytes, room: Path) -> None:
    found = scenario.load(file_of(data, room))
    hookup.hookup_from(found.hookup())


@door("scenario, run", "toml", lambda: [SCENARIO, b"format = 1\n"], SourceError, weight=0.4)
def scenario_run(data: bytes, room: Path) -> None:
    found = scenario.load(file_of(data, room))
    source = simulated.SimulatedRun(
        found.rotor, found.sensors, found.unbalance, found.conditions, seed=1, real_time=False, seconds=0.2
    ).open()
    try:
        while (block := source.read(1.0)) is not None:
            assert np.isfinite(block.samples).all()
    finally:
        source.close()


LIMIT_TABLES = sorted((ROOT / "solver/tables").glob("*.toml"))


@door("limit table", "toml", lambda: [p.read_bytes() for p in LIMIT_TABLES], limit_tables.LimitsError)
def limit_table(data: bytes, room: Path) -> None:
    found = limit_tables.load(file_of(data, room))
    for text in (found.name, found.source, found.edition):
        assert text.strip()


def coefficients() -> bytes:
    return tomli_w.dumps(
        {
            "format": 1,
            "coefficients": [
                {
                    "machine": "fan",
                    "date": "2026-01-01",
                    "speed_rpm": 1480.0,
                    "vibration_unit": "mm/s rms",
                    "mass_unit": "g",
                    "points": ["A", "B"],
                    "planes": [{"name": "left", "radius_mm": 300.0}],
                    "real": [[0.1], [0.2]],
                    "imaginary": [[0.0], [0.1]],
                    "covariance": (1e-6 * np.eye(4)).tolist(),
                    "hookup": "0123456789abcdef",
                    "device": "card",
                    "rate_hz": 48000.0,
                }
            ],
        }
    ).encode()


@door("coefficients", "toml", lambda: [coefficients(), b"format = 1\n"], stored.StoredError, runs.RunsError)
def coefficients_file(data: bytes, room: Path) -> None:
    path = file_of(data, room)
    kept = stored.load(path)
    for entry in kept:
        assert np.isfinite(entry.influence).all()
        one_line(entry.machine)
    stored.save(path, [])
    if kept:
        stored.priors_for(kept, "fan", _known())


NEIGHBOURS = b"""format = 1
line = "50 Hz"
[[machine]]
name = "compressor"
speed = "1450 rpm"
within = "10 rpm"
[[belt]]
name = "belt"
pulley = "200 mm"
speed = "1480 rpm"
length = "1800 mm"
within = "1 rpm"
"""


@door("neighbours", "toml", lambda: [NEIGHBOURS], candidates.CandidatesError)
def neighbours(data: bytes, room: Path) -> None:
    for candidate in candidates.load(file_of(data, room)):
        assert 0.0 < candidate.rpm < float("inf")
        one_line(candidate.name)


def _own(name: str) -> list[bytes]:
    return [(ROOT / "solver" / name).read_bytes()]


@door("diagnosis table", "toml", lambda: _own("diagnosis_rules.toml"), diagnosis_rules.DiagnosisError, weight=0.1)
def diagnosis_table(data: bytes, room: Path) -> None:
    rules = diagnosis_rules.load_rules.__wrapped__(file_of(data, room))
    evidence = {
        key: diagnosis.Word(quantity.words[0]) if quantity.words else diagnosis.Figure(1.2, 0.2, 3.0)
        for key, quantity in rules.quantities.items()
    }
    for cause in diagnosis.diagnose(evidence, rules).causes:
        for reading in (*cause.speaking_for, *cause.against):
            assert len(reading.text) < 30_000


@door("inspection table", "toml", lambda: _own("inspection_checks.toml"), inspection.InspectionError, weight=0.3)
def inspection_table(data: bytes, room: Path) -> None:
    inspection._load.__wrapped__(file_of(data, room))


@functools.cache
def _worked_on() -> JobState:
    """A job with pieces on its rotor."""
    with Job.open(ROOT / "fixtures/jobs/format_1", read_only=True) as job:
        return job.state


@door("cautions table", "toml", lambda: _own("cautions.toml"), cautions.CautionError, weight=0.3)
def cautions_table(data: bytes, room: Path) -> None:
    state, path = _worked_on(), file_of(data, room)
    for caution in (*cautions.before_hands(state, path), *cautions.before_start(state, path)):
        assert len(caution.text) < 200_000


@door(
    "settings",
    "toml",
    lambda: [tomli_w.dumps(v).encode() for v in ({"unit": "g rms", "angles": "with rotation", "theme": "dark"},)],
)
def settings_file(data: bytes, room: Path) -> None:
    path = file_of(data, room)
    view, wrong = settings.load(path)
    assert isinstance(view, View)
    if wrong is not None:
        one_line(wrong.replace(str(room), "ROOM"))
    assert all(getattr(view, name) in choices for name, choices in settings.CHOICES.items())
    assert settings.save(path, view) is None
    assert settings.load(path) == (view, None)


@door("jobs of late", "toml", lambda: [tomli_w.dumps({"recent": ["/nowhere/a", "b", "../job"]}).encode()], weight=0.5)
def jobs_of_late(data: bytes, room: Path) -> None:
    path = file_of(data, room)
    recent.load(path)
    recent.remember(path, room)
    assert sorted(p.name for p in room.iterdir()) == ["n.toml"]


# texts


QUANTITIES = b"100 mV/g\n2.5 V\n12.5 g\n300 mm\n1480 rpm\nmm/s rms\num p-p\n1e-3 kg*m^2\n2 m/s**2\n7850 kg/m^3\n"


@door("units", "bytes", lambda: [QUANTITIES], units.UnitError, weight=2)
def quantities(data: bytes, room: Path) -> None:
    for line in data.decode("utf-8", "replace").split("\n")[:4]:
        for read in (
            lambda t: units.parse(t, "kg", "mass"),
            lambda t: units.parse(t, "V", "range"),
            lambda t: units.speed_rpm(t, "speed"),
            lambda t: units.vibration_unit(t, "unit"),
            lambda t: units.sensitivity(t, "acceleration", "sensitivity"),
        ):
            try:
                value = read(line)
            except units.UnitError as error:
                one_line(error)
            else:
                assert value is not None


@functools.cache
def _known() -> runs.Runs:
    return runs_file.load_runs(RAO)


PIECES = b"5 g x 10, 10 g x 4\nleft = 10 g at 270\n0.5 kg x 1000\ndisc = 8 g at 90, right = 3 g at 1\n"


@door("pieces as text", "bytes", lambda: [PIECES], weight=0.5)
def pieces_text(data: bytes, room: Path) -> None:
    known = _known()
    for line in data.decode("utf-8", "replace").split("\n")[:3]:
        for read in (lambda t: cli_pieces._stock(t, known), lambda t: runs_files.masses_from([t])):
            try:
                read(line)
            except (cli_pieces.PiecesError, units.UnitError, runs_files.RunsFileError, runs.RunsError) as error:
                one_line(error)


@functools.cache
def _german() -> tuple[Phrases, tuple[str, ...]]:
    """The window's German, and its sentences with something in their places."""
    known: dict[str, str] = {}
    for path in sorted((ROOT / "ui/desktop/languages").glob("*_de.ts")):
        for message in ElementTree.parse(path).iter("message"):
            known[message.findtext("source", "")] = message.findtext("translation", "")
    templates = tuple(text for text in known if PLACE.search(text))
    held = ("12.3", "left", "fan end horizontal", "a.au: line 3 is damaged", "10 g at 270")
    said = tuple(PLACE.sub(lambda m: held[int(m[1]) % len(held)], text) for text in known)
    return Phrases(known.get, templates), said


def _sentences() -> list[bytes]:
    said = _german()[1]
    return ["\n".join(said[at::97]).encode()[:4000] for at in range(12)] + [b"m 3 g mm s x: " * 20]


@door("texts in German", "bytes", _sentences)
def texts_in_german(data: bytes, room: Path) -> None:
    text = data.decode("utf-8", "replace")[: tables.MOST_LETTERS]
    assert isinstance(_german()[0].turn(text), str)


@door("a table's text", "toml", lambda: [wired(), full_runs(), SCENARIO], tables.TableError, weight=1)
def any_table(data: bytes, room: Path) -> None:
    tables.read(file_of(data, room))
