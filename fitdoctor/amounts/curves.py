"""Plane curves of seams: cubic Béziers, ellipses, run-outs; lengths by adaptive quadrature; offsets. All in mm, y downward."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from fitdoctor.amounts.marks import Point

Polyline = NDArray[np.float64]
"""n points as rows (x, y)."""

_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(8)
_MOST_HALVINGS = 30


def run_out(t: float) -> float:
    """How much of an amount is left at a share t of the way: 1 - 3t² + 2t³. Zero slope at both ends, so it meets the old seam smoothly."""
    t = min(1.0, max(0.0, t))
    return 1 - 3 * t * t + 2 * t**3


def straight_out(t: float) -> float:
    """A straight taper from all to nothing."""
    return min(1.0, max(0.0, 1 - t))


def even(_: float) -> float:
    """The same amount all the way."""
    return 1.0


def held_then_out(hold: float) -> Callable[[float], float]:
    """All of it up to a share `hold` of the way, then running out smoothly."""
    return lambda t: run_out((t - hold) / (1 - hold)) if t > hold else 1.0


def in_and_out(peak: float) -> Callable[[float], float]:
    """Nothing at both ends, all of it at a share `peak` of the way, smooth throughout."""
    return lambda t: run_out((peak - t) / peak) if t < peak else run_out((t - peak) / (1 - peak))


def through(values: tuple[float, float, float], share: float) -> float:
    """A smooth line through values at both ends and half way: level at the ends, nowhere beyond the values beside it.

    Cubic Hermite pieces; the slope in the middle is the harmonic mean of those beside it, 0 where the middle is the most or the least.
    """
    first, middle, last = values
    before, after = middle - first, last - middle
    slope = 2 * before * after / (before + after) if before * after > 0 else 0.0
    if share <= 0.5:
        return _hermite(first, middle, 0.0, slope, 2 * share)
    return _hermite(middle, last, slope, 0.0, 2 * share - 1)


def _hermite(start: float, end: float, slope_at_start: float, slope_at_end: float, t: float) -> float:
    rise = (3 * t * t - 2 * t**3) * (end - start)
    return start + rise + slope_at_start * (t**3 - 2 * t * t + t) + slope_at_end * (t**3 - t * t)


@dataclass(frozen=True)
class Curve:
    """A curve t -> (x, y), t from 0 to 1, with its derivative; both take arrays of t."""

    point: Callable[[NDArray[np.float64]], Polyline]
    derivative: Callable[[NDArray[np.float64]], Polyline]

    def length(self, start: float = 0.0, end: float = 1.0) -> float:
        """Arc length between two values of t, to about 1e-10 of itself."""
        return integrate(self._speed, start, end)

    def polyline(self, pieces: int = 64) -> Polyline:
        """Points evenly spaced in t, both ends kept."""
        return self.point(np.linspace(0.0, 1.0, pieces + 1))

    def _speed(self, t: NDArray[np.float64]) -> NDArray[np.float64]:
        dx, dy = self.derivative(t).T
        return np.asarray(np.hypot(dx, dy), dtype=np.float64)


def bezier(p0: Point, p1: Point, p2: Point, p3: Point) -> Curve:
    """A cubic Bézier curve."""
    p: Polyline = np.array([p0, p1, p2, p3], dtype=float)
    d: Polyline = 3 * np.diff(p, axis=0)

    def point(t: NDArray[np.float64]) -> Polyline:
        s = np.asarray(t)
        weights = np.column_stack(((1 - s) ** 3, 3 * (1 - s) ** 2 * s, 3 * (1 - s) * s**2, s**3))
        return np.asarray(weights @ p, dtype=np.float64)

    def derivative(t: NDArray[np.float64]) -> Polyline:
        s = np.asarray(t)
        weights = np.column_stack(((1 - s) ** 2, 2 * (1 - s) * s, s**2))
        return np.asarray(weights @ d, dtype=np.float64)

    return Curve(point, derivative)


def quarter_ellipse(half_width: float, depth: float) -> Curve:
    """From (0, depth) on the upright axis to (half_width, 0) on the level one."""

    def point(t: NDArray[np.float64]) -> Polyline:
        a = np.asarray(t) * math.pi / 2
        return np.column_stack((half_width * np.sin(a), depth * np.cos(a)))

    def derivative(t: NDArray[np.float64]) -> Polyline:
        a = np.asarray(t) * math.pi / 2
        return np.column_stack((half_width * np.cos(a), -depth * np.sin(a))) * (math.pi / 2)

    return Curve(point, derivative)


def quarter_ellipse_length(half_width: float, depth: float) -> float:
    """Arc length of a quarter ellipse."""
    return quarter_ellipse(half_width, depth).length()


def integrate(f: Callable[[NDArray[np.float64]], NDArray[np.float64]], start: float, end: float, within: float = 1e-10) -> float:
    """Integral by Gauss-Legendre with 8 nodes, halved until both halves agree with the whole."""

    def panel(a: float, b: float) -> float:
        return float(np.dot(_WEIGHTS, f((b - a) / 2 * _NODES + (a + b) / 2)) * (b - a) / 2)

    def refined(a: float, b: float, whole: float, left: int) -> float:
        middle = (a + b) / 2
        halves = panel(a, middle), panel(middle, b)
        if left == 0 or abs(sum(halves) - whole) <= within * max(1.0, abs(whole)):
            return sum(halves)
        return refined(a, middle, halves[0], left - 1) + refined(middle, b, halves[1], left - 1)

    return refined(start, end, panel(start, end), _MOST_HALVINGS)


def ways(line: Polyline) -> NDArray[np.float64]:
    """The way along the polyline at each of its points."""
    steps = np.hypot(*np.diff(line, axis=0).T)
    return np.concatenate(([0.0], np.cumsum(steps)))


def polyline_length(line: Polyline) -> float:
    """Length of a polyline."""
    return float(ways(line)[-1])


def along(line: Polyline, shares: NDArray[np.float64]) -> Polyline:
    """Points at shares of the way along a polyline."""
    way = ways(line)
    at = shares * way[-1]
    return np.column_stack((np.interp(at, way, line[:, 0]), np.interp(at, way, line[:, 1])))


def normals(line: Polyline) -> Polyline:
    """Unit normals at each point, turned from the way of travel towards +y where it runs along +x (downward on paper)."""
    tangent = np.gradient(line, ways(line), axis=0, edge_order=2 if len(line) > 2 else 1)
    unit = tangent / np.hypot(*tangent.T)[:, None]
    return np.column_stack((-unit[:, 1], unit[:, 0]))


def offset(line: Polyline, by: NDArray[np.float64]) -> Polyline:
    """Each point moved along its normal by its own amount."""
    return line + normals(line) * by[:, None]


def straight(start: Point, end: Point, pieces: int = 64) -> Polyline:
    """A straight line as a polyline."""
    return np.linspace(start, end, pieces + 1)


def fitted(curve: Callable[[float], Curve], length: float) -> Curve:
    """The curve of a family scale -> curve whose arc length is `length`; the family grows in proportion."""
    return curve(length / curve(1.0).length())


def as_points(line: Polyline) -> tuple[Point, ...]:
    """A polyline as plain points."""
    return tuple((float(x), float(y)) for x, y in line)
