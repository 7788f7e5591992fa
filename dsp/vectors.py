"""The angle convention, in the one file with a sign in it.

A vibration is z = A·e^{jφ}, φ being the lag from the leading edge of the pulse to the next positive peak of the
displayed quantity: x(t) = A·cos(θ(t) − φ). Rotor angles of masses are counted against rotation and grow the same way.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from stillshaft.dsp import units

if TYPE_CHECKING:
    from stillshaft.dsp.channels import PointChannel

Complex = NDArray[np.complex128]
Real = NDArray[np.float64]


def vector(amplitude: float, phase_deg: float) -> complex:
    """Complex vector of an amplitude and its lag in degrees."""
    return complex(amplitude * np.exp(1j * np.deg2rad(phase_deg)))


def amplitude_phase(z: complex) -> tuple[float, float]:
    """Amplitude and lag in degrees, 0 ≤ lag < 360."""
    phase_deg = math.degrees(math.atan2(z.imag, z.real)) % 360.0
    return abs(z), 0.0 if phase_deg == 360.0 else phase_deg  # -1e-17 % 360 is 360


def from_coefficients(cosine: Real, sine: Real) -> Complex:
    """Z of the least-squares columns cos θ and sin θ: x = c·cos θ + s·sin θ = A·cos(θ − φ)."""
    return np.asarray(cosine + 1j * sine, dtype=np.complex128)


def response_undone(frequency_hz: float, highpass_hz: tuple[float, ...], delay_s: float) -> complex:
    """Factor that z is multiplied by to undo AC-coupling corners and a delay of the channel.

    A response G in the e^{+jωt} sense is undone by 1/conj(G); AC coupling G = jf/(f_c + jf) leads by atan(f_c/f).
    """
    response = complex(np.exp(-2j * np.pi * frequency_hz * delay_s))
    for corner_hz in highpass_hz:
        response *= 1j * frequency_hz / (corner_hz + 1j * frequency_hz)
    return 1.0 / response.conjugate()


def quantity_factor(from_quantity: str, to_quantity: str, frequency_hz: float) -> complex:
    """Factor that turns z of one quantity into z of another at a frequency: a derivative is −jω in z.

    Velocity leads displacement by 90°: its lag is 90° less.
    """
    return complex((-2j * math.pi * frequency_hz) ** units.differentiations(from_quantity, to_quantity))


def display_factor(point: PointChannel, unit: units.VibrationUnit, frequency_hz: float) -> complex:
    """Factor from the peak reading of a channel to the displayed unit, channel response undone."""
    return (
        point.si_per_reading
        * response_undone(frequency_hz, point.highpass_hz, point.delay_s)
        * quantity_factor(point.quantity, unit.quantity, frequency_hz)
        * unit.per_si_peak
    )


def rotated_covariance(covariance: Real, factors: Complex) -> Real:
    """Covariance (2M, 2M), order re, im of each point, after each of the M vectors was multiplied by its factor."""
    turn = np.zeros_like(covariance)
    for index, factor in enumerate(factors):
        i = 2 * index
        turn[i : i + 2, i : i + 2] = [[factor.real, -factor.imag], [factor.imag, factor.real]]
    return np.asarray(turn @ covariance @ turn.T)


def deviations(z: complex, covariance: Real) -> tuple[float, float]:
    """Standard deviations along and across a vector, from its (2, 2) covariance of re and im."""
    unit = z / abs(z) if z else 1.0 + 0.0j
    along = np.array([unit.real, unit.imag])
    across = np.array([-unit.imag, unit.real])
    return (
        math.sqrt(max(0.0, float(along @ covariance @ along))),
        math.sqrt(max(0.0, float(across @ covariance @ across))),
    )


def along_and_across(z: complex, along: float, across: float) -> Real:
    """Covariance (2, 2) of re and im from the standard deviations along and across a vector: undoes `deviations`."""
    unit = z / abs(z) if z else 1.0 + 0.0j
    axes = np.array([[unit.real, -unit.imag], [unit.imag, unit.real]])
    return np.asarray(axes @ np.diag([along**2, across**2]) @ axes.T)


def half_widths(z: complex, covariance: Real, degrees_of_freedom: float) -> tuple[float, float | None]:
    """Half widths of the marginal 95 % intervals of amplitude and of phase in degrees.

    Student's t times the standard deviation along and across the vector; the phase has none (None) where the interval
    across reaches the origin. `degrees_of_freedom` may be infinite.
    """
    from scipy.special import stdtrit

    along, across = deviations(z, covariance)
    t = float(stdtrit(degrees_of_freedom, 0.975)) if math.isfinite(degrees_of_freedom) else 1.959963984540054
    if t * across >= abs(z):
        return t * along, None
    return t * along, math.degrees(math.asin(t * across / abs(z)))
