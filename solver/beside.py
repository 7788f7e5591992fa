"""What runs beside the rotor by the brief: its belts, the other shaft, neighbours, each as a speed known to so much.

How well a speed is known where nobody said so is common practice, no source: a nameplate holds at full load, a belt creeps.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from stillshaft.dsp import units
from stillshaft.dsp.candidates import Candidate
from stillshaft.solver.brief import Brief, line_hz
from stillshaft.solver.diagnosis import LINE

BELTS, MOTOR = "belt", "motor"
_NAMEPLATE = 0.005  # of a speed that is only named
_CREEP = 0.02  # of a speed that is only known through the belt
_LINE = 0.001  # of the line frequency


@dataclass(frozen=True)
class Beside:
    """Candidates by what the diagnosis makes of them; empty where the brief does not say enough."""

    belts: tuple[Candidate, ...] = ()
    other_shafts: tuple[Candidate, ...] = ()
    neighbours: tuple[Candidate, ...] = ()
    line: Candidate | None = None
    poles: int | None = None  # of a motor on the mains whose slip is that of the rotor

    @property
    def all(self) -> tuple[Candidate, ...]:
        """All of them."""
        return (*self.belts, *self.other_shafts, *self.neighbours, *(() if self.line is None else (self.line,)))


def beside(brief: Brief, speed_rpm: float) -> Beside:
    """What the brief names, with the rotor at a measured speed. Raises UnitError for a length that is none."""
    drive = brief.drive
    rotor_mm, motor_mm, belt_mm = (
        None if text is None else units.parse(text, "mm", f"drive.{name}")
        for name, text in (
            ("rotor_pulley", drive.rotor_pulley),
            ("motor_pulley", drive.motor_pulley),
            ("belt_length", drive.belt_length),
        )
    )
    driven = drive.kind in ("belt", "gear")
    motor = None
    if driven and drive.motor_speed_rpm is not None:
        motor = Candidate(MOTOR, drive.motor_speed_rpm, _NAMEPLATE * drive.motor_speed_rpm)
    elif drive.kind == "belt" and rotor_mm is not None and motor_mm is not None:
        through = speed_rpm * rotor_mm / motor_mm
        motor = Candidate(MOTOR, through, _CREEP * through)
    belt = None
    if drive.kind == "belt" and belt_mm is not None:
        # belt frequency π·D·n/L, by the pulley whose speed is measured where its diameter is known
        if rotor_mm is not None:
            belt = math.pi * rotor_mm * speed_rpm / belt_mm
        elif motor_mm is not None and drive.motor_speed_rpm is not None:
            belt = math.pi * motor_mm * drive.motor_speed_rpm / belt_mm
    line_rpm = None if drive.line is None else 60.0 * line_hz(drive.line)
    return Beside(
        () if belt is None else (Candidate(BELTS, belt, _CREEP * belt),),
        () if motor is None else (motor,),
        tuple(
            Candidate(n.name, n.speed_rpm, n.within_rpm if n.within_rpm is not None else _NAMEPLATE * n.speed_rpm)
            for n in brief.neighbours
        ),
        None if line_rpm is None else Candidate(LINE, line_rpm, _LINE * line_rpm),
        drive.poles if drive.kind == "direct" and not drive.variable_speed else None,
    )
