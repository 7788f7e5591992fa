"""The simulated rotor's equations of motion in the horizontal direction, written out beside the program."""

import numpy as np


def matrices(rotor):
    """Mass, damping and stiffness (2, 2) of the supports' displacements, and the arms of the planes (2, planes)."""
    a = rotor.centre_of_mass_m / rotor.bearing_span_m
    centre, tilt = np.array([1 - a, a]), np.array([-1.0, 1.0]) / rotor.bearing_span_m
    mass = rotor.mass_kg * np.outer(centre, centre) + rotor.transverse_inertia_kg_m2 * np.outer(tilt, tilt)
    stiffness = np.diag([s.horizontal_n_per_m for s in rotor.supports])
    squares, shapes = (part.real for part in np.linalg.eig(np.linalg.solve(mass, stiffness)))
    damping = mass @ shapes @ np.diag(2 * rotor.damping_ratio * np.sqrt(squares)) @ np.linalg.inv(shapes)
    arms = np.array([[1 - p.z_m / rotor.bearing_span_m, p.z_m / rotor.bearing_span_m] for p in rotor.planes]).T
    return mass, damping, stiffness, arms
