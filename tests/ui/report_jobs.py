"""Jobs that reports are made of: one on the simulated rotor with its recordings, and ones of any size from vectors."""

import numpy as np
from stillshaft.acquire import hookup as wiring
from stillshaft.acquire import process, simulated
from stillshaft.solver.job import Job
from stillshaft.solver.replay import run_fields, solved
from stillshaft.ui import analysis

CAUTIONS = ["isolated, locked and tried", "guards closed", "nobody in the plane of rotation"]
LONG = "fan-end-bearing-horizontal-" * 7 + "end-of-a-name"  # 202 letters without a space


def brief(planes, points, **more):
    """Keys of a brief that says everything."""
    return {
        "machine": {"name": "dust fan 2", "type": "fan", "maker": "own work", "place": "roof", "owner": "Works Ltd"},
        "rotor": {
            "kind": "between bearings", "mass": "74 kg", "speed_rpm": 2950.0, "bearing_span": "900 mm",
            "centre_of_mass": "430 mm", "highest_speed_rpm": 3000.0,
        },
        "drive": {"kind": "belt", "motor_speed_rpm": 1480.0, "belt_length": "2.4 m", "variable_speed": False},
        "supports": {"horizontal": "flexible", "vertical": "rigid"},
        "planes": planes,
        "stock": [{"mass": "2 g", "count": 10}],
        "abort": [{"point": points[0], "amplitude": 30.0, "unit": "mm/s rms", "source": "owner"}],
        "limits": [{"point": p, "amplitude": 2.8, "unit": "mm/s rms", "source": "contract"} for p in points],
        "goal": {"basis": "contract", "grade": "G6.3"},
        "starts": {"allowed": 8, "minutes_between": 20.0},
        "conditions": [{"name": "motor current", "unit": "A", "tolerance": 2.0}],
        "interview": {
            "what is wrong": "shakes since the blades were cleaned, worse by the week",
            "last_work": "bearings renewed", "process": "dust builds up and breaks off",
        },
        **more,
    }  # fmt: skip


def simulated_job(folder, seconds=4.0):
    """A finished two-plane job on the simulated rotor, its runs measured from recordings."""
    rotor = simulated.demo_rotor(2)
    hookup = wiring.hookup_from(simulated.demo_hookup())
    names = [p.name for p in hookup.points]
    hands = simulated.Placing(1)
    planes = [
        {"name": p.name, "radius": f"{1000.0 * p.radius_m:g} mm", "z": f"{1000.0 * p.z_m:g} mm", "positions": 24}
        for p in rotor.planes
    ]
    with Job.create(folder, "Dust fan 2 · Gebläse ②", "first person") as job:
        job.append("brief", **brief(planes, names))
        job.append("hookup", table=hookup.table)
        (folder / "photos/mark.txt").write_text("stands for a photo\n", encoding="utf-8")
        job.append("check", item="rotor", outcome="fine", photos=[job.file_fields("photos/mark.txt")])
        job.append("check", item="foundation", outcome="not done", note="covered with plates")
        sweep = job.append("measured", what="sweep", figures={"resonances": [{"rpm": 2110.0, "amplification": 9.5}]})
        job.append("check", item="resonance", outcome="fine", evidence=sweep.id)

        def run(purpose, name, masses):
            job.append("caution", texts=CAUTIONS, who="first person")
            job.append("start", temperature="hot")
            really = [hands.really(m["plane"], m["mass_g"], m["angle_deg"]) for m in masses]
            order = simulated.demo_run(2, really, seed=len(job.state.runs), real_time=False)
            path = job.next_recording()
            process.capture(order, path, seconds, hookup.table, hookup.channel_names(hookup.channels))
            measured = analysis.measure_recording(path, hookup)
            recording = job.file_fields(f"recordings/{path.name}")
            anyway = {} if measured.trusted else {"used_anyway": "a short record is enough for a test"}
            return job.append(
                "run", purpose=purpose, name=name, masses=masses, recording=recording, minutes_since_start=12.0,
                conditions={"damper": "open", "motor current": 41.5}, **run_fields(measured), **anyway,
            )  # fmt: skip

        runs = [run("initial", "initial", [])]
        for plane in planes:
            piece = {"plane": plane["name"], "mass_g": 6.0, "angle_deg": 90.0}
            put = job.append("mass", act="put on", pieces=[piece], purpose="trial")
            runs.append(run("trial", f"trial {plane['name']}", [piece]))
            job.append("mass", act="taken off", of=put.id)
        plan = job.append("plan", **solved(job.state, [r.id for r in runs])[0])
        job.append("decision", text="place the correction", why="all planes are determined", about=plan.id)
        on = [
            {
                "plane": c["plane"], "mass_g": round(c["mass"], 1), "angle_deg": float(round(c["angle_deg"]) % 360),
                "fixing": "welded",
            }
            for c in plan.what.result["corrections"]
        ]  # fmt: skip
        job.append("mass", act="put on", pieces=on, purpose="correction", by="second person")
        run("check", "check", on)
        wrong = job.append("measured", what="background", note="neighbour running")
        job.withdraw(wrong.id, "measured twice")
        job.append("verdict", verdict="met", basis="contract: vibration limits", accepted_by="third person")
        job.append("closed", note="window over")
    return folder


def made_up_job(
    folder, *, planes=2, points=4, runs=6, unit="mm/s rms", name="Fan", names=None, plan=True, positions=12
):
    """A job of any size from vectors: an initial run, trials in turn, then checks with what was placed."""
    rng = np.random.default_rng(7)
    names = names or [f"bearing {i + 1} horizontal" for i in range(points)]
    plane_names = [f"plane {p + 1}" for p in range(planes)]
    initial = 9.0 * np.exp(2j * np.pi * rng.random(points)) * (0.6 + rng.random(points))
    influence = 0.35 * np.exp(2j * np.pi * rng.random((points, planes))) * (0.5 + rng.random((points, planes)))
    influence += 0.5 * np.eye(points, planes)
    table = {
        "format": 1, "display": unit, "rotation": "clockwise", "reference_end": "non-drive",
        "pulse": {"input": 1, "edge": "rising", "angle": 45.0},
        "point": [
            {
                "name": n, "input": i + 2, "quantity": "acceleration", "sensitivity": "100 mV/g",
                "angle": 90.0 * (i % 2) + 30.0 * (i // 6), "direction": "axial" if i == 8 else "radial",
            }
            for i, n in enumerate(names)
        ],
    }  # fmt: skip
    with Job.create(folder, name, "first person") as job:
        described = [
            {"name": p, "radius": "300 mm", "z": f"{100 + 200 * i} mm", "positions": positions}
            for i, p in enumerate(plane_names)
        ]
        job.append("brief", **brief(described, names, goal={"grade": "G6.3"}))
        job.append("hookup", table=table)
        on = []
        for number in range(runs):
            trial = plane_names[number - 1] if 1 <= number <= planes else None
            pieces = [{"plane": trial, "mass_g": 10.0, "angle_deg": 270.0}] if trial else list(on)
            weights = [0j] * planes
            for piece in pieces:
                weights[plane_names.index(piece["plane"])] += piece["mass_g"] * np.exp(
                    1j * np.deg2rad(piece["angle_deg"])
                )
            z = (
                initial
                + influence @ np.array(weights)
                + 0.02 * (rng.standard_normal(points) + 1j * rng.standard_normal(points))
            )
            purpose = "initial" if number == 0 else "trial" if trial else "check"
            job.append(
                "run", purpose=purpose, name=f"{purpose} {number + 1}", speed_rpm=1480.0, unit=unit, masses=pieces,
                vectors=[
                    {
                        "point": n, "amplitude": abs(v), "phase_deg": float(np.rad2deg(np.angle(v)) % 360.0),
                        "amplitude_ci95": 0.06, "phase_ci95_deg": 1.5, "overall": 1.3 * abs(v), "verdict": "steady",
                    }
                    for n, v in zip(names, z, strict=True)
                ],
                conditions={"motor current": 41.5},
            )  # fmt: skip
            if number == planes and plan:
                told = job.append("plan", **solved(job.state)[0]).what.result["corrections"]
                on = [
                    {"plane": c["plane"], "mass_g": round(c["mass"], 1), "angle_deg": round(c["angle_deg"])}
                    for c in told
                ]
                if runs > planes + 1:
                    job.append("mass", act="put on", pieces=on)
    return folder
