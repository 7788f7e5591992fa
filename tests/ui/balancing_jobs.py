"""Jobs made through the session with vectors of the simulated rotor and a little scatter: quick, without recordings."""

import msgspec
import numpy as np
from stillshaft.acquire import simulated
from stillshaft.ui.session import Session

SPEED_RPM = simulated.DEMO_SPEED_RPM
SCATTER = 0.01  # mm/s, standard deviation of each of re and im


def described(planes, *, positions=None, limit=None, stock=True):
    """A brief that says what the pages ask of it."""
    rotor = simulated.demo_rotor(planes)
    points = [s.name for s in simulated.demo_sensors()]
    brief = {
        "machine": {"name": "extraction fan", "type": "fan"},
        "rotor": {
            "kind": "between bearings", "mass": f"{rotor.mass_kg:g} kg", "speed_rpm": SPEED_RPM, "highest_speed_rpm": 1500.0,
            "bearing_span": "900 mm", "centre_of_mass": "430 mm",
        },
        "planes": [
            {"name": p.name, "radius": "310 mm", "z": f"{1000.0 * p.z_m:g} mm"}
            | ({} if positions is None else {"positions": positions, "per_position": 2})
            for p in rotor.planes
        ],
        "goal": {"basis": "contract", "grade": "G6.3"},
    }  # fmt: skip
    if stock:
        brief["stock"] = [{"mass": "1 g", "count": 6}, {"mass": "2 g", "count": 6}, {"mass": "5 g", "count": 8}]
    if limit is not None:
        brief["limits"] = [{"point": p, "amplitude": limit, "unit": "mm/s rms", "source": "contract"} for p in points]
    return brief


def vibration(planes, masses, rng):
    """Vectors (points,) in mm/s rms with these masses (plane, grams, degrees) on."""
    rotor, sensors = simulated.demo_rotor(planes), simulated.demo_sensors()
    unbalance = np.array(simulated.with_masses(rotor, simulated.demo_unbalance(planes), masses))
    displacement = simulated.frequency_response(rotor, sensors, SPEED_RPM) @ unbalance
    omega = SPEED_RPM * np.pi / 30.0
    velocity = -1j * displacement * omega * 1e3 / np.sqrt(2.0)  # it leads displacement by 90°: its lag is so much less
    return velocity + SCATTER * (rng.standard_normal(len(sensors)) + 1j * rng.standard_normal(len(sensors)))


def take_run(session, purpose, name, *, planes=2, seed=0):
    """A run with what the record says is on the rotor."""
    on = [msgspec.to_builtins(o.piece) for o in session.state.on_rotor]
    really = [(p["plane"], p["mass_g"], p["angle_deg"]) for p in on]
    z = vibration(planes, really, np.random.default_rng([seed, len(session.state.runs)]))
    vectors = [
        {
            "point": s.name, "amplitude": float(abs(v)), "phase_deg": float(np.degrees(np.angle(v)) % 360.0),
            "amplitude_ci95": 2.0 * SCATTER, "phase_ci95_deg": float(np.degrees(2.0 * SCATTER / abs(v))), "verdict": "steady",
        }
        for s, v in zip(simulated.demo_sensors(), z, strict=True)
    ]  # fmt: skip
    session.job.append(
        "run", purpose=purpose, name=name, speed_rpm=SPEED_RPM, unit="mm/s rms", vectors=vectors, masses=on,
        covariance={
            "points": [s.name for s in simulated.demo_sensors()],
            "matrix": (SCATTER**2 * np.eye(2 * len(z))).tolist(), "degrees_of_freedom": 60.0,
        },
    )  # fmt: skip


def balancing_job(folder, planes=2, *, until="trials", **brief):
    """An opened job: `until` is "brief", "initial", "trials" (taken off again), "last trial on", or "check"."""
    hookup = simulated.demo_hookup()
    hookup["pulse"] = {"input": 1, "edge": "rising", "angle": 0.0}
    session = Session.create(folder, "fan 3", "first person", hookup)
    session.describe(described(planes, **brief))
    if until == "brief":
        return session
    take_run(session, "initial", "initial", planes=planes)
    if until == "initial":
        return session
    names = [p.name for p in simulated.demo_rotor(planes).planes]
    for name in names:
        session.put_on([{"plane": name, "mass_g": 12.0, "angle_deg": 90.0}], "trial")
        take_run(session, "trial", f"trial {name}", planes=planes)
        if until != "last trial on" or name != names[-1]:
            session.take_off(session.on_rotor("trial"))
    if until == "check":
        _, solution = session.solve()
        pieces = [
            {"plane": c.plane, "mass_g": round(c.mass, 1), "angle_deg": float(round(c.angle_deg)), "fixing": "bolted"}
            for c in solution.corrections
        ]
        session.put_on(pieces, "correction")
        take_run(session, "check", "check", planes=planes)
    return session
