"""Curves: from the points an entry writes to smooth lines, and what is done along them."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TypeAlias

from fitdoctor.figure.shapes import Point, Polygon

Along: TypeAlias = Callable[[float], float]
"A quantity that changes along a curve, from 0 at its start to 1 at its end."
STEPS = 12
LIGHT = (0.45, 0.89)
"The direction in which shade falls: the light comes from the upper left."


@dataclass(frozen=True, slots=True)
class Knot:
    """A point of an outline, smooth or a corner."""

    x: float
    y: float
    corner: bool = False


@lru_cache(maxsize=4096)
def parse(text: str) -> tuple[Knot, ...]:
    """The points written as `x,y x,yc`, where c makes a corner."""
    knots = []
    for word in text.split():
        x, y = word.rstrip("c").split(",")
        knots.append(Knot(float(x), float(y), word.endswith("c")))
    return tuple(knots)


def mirrored(knots: Sequence[Knot]) -> tuple[Knot, ...]:
    """The same points on the other side of the centre line."""
    return tuple(Knot(-knot.x, knot.y, knot.corner) for knot in knots)


def whole(half: Sequence[Knot]) -> tuple[Knot, ...]:
    """A symmetrical outline from its right half, given from the top at the centre to the bottom."""
    other = [knot for knot in mirrored(tuple(reversed(half))) if abs(knot.x) > 0.01]
    return (*half, *other)


def flip(points: Polygon) -> Polygon:
    """Plain points on the other side of the centre line."""
    return tuple((-x, y) for x, y in points)


def _tangent(knots: Sequence[Knot], index: int, closed: bool) -> Point | None:
    if knots[index].corner or (not closed and index in (0, len(knots) - 1)):
        return None
    before, after = knots[index - 1], knots[(index + 1) % len(knots)]
    dx, dy = after.x - before.x, after.y - before.y
    length = math.hypot(dx, dy) or 1.0
    return dx / length, dy / length


def _handles(p: Knot, q: Knot, leave: Point | None, arrive: Point | None) -> tuple[Point, Point]:
    """The two inner points of a cubic: a third of the way along the tangents; at a corner half way to the other's handle."""
    third = math.hypot(q.x - p.x, q.y - p.y) / 3
    first = (p.x + leave[0] * third, p.y + leave[1] * third) if leave else None
    second = (q.x - arrive[0] * third, q.y - arrive[1] * third) if arrive else None
    if first is None:
        share = 2 if second else 3
        aim = second or (q.x, q.y)
        first = (p.x + (aim[0] - p.x) / share, p.y + (aim[1] - p.y) / share)
    if second is None:
        second = (q.x - (q.x - first[0]) / 2, q.y - (q.y - first[1]) / 2)
    return first, second


def flatten(knots: Sequence[Knot], closed: bool = False, steps: int = STEPS) -> Polygon:
    """The smooth curve through the points as short straight pieces, `steps` between two points."""
    out: list[Point] = [(knots[0].x, knots[0].y)]
    for i in range(len(knots) if closed else len(knots) - 1):
        p, q = knots[i], knots[(i + 1) % len(knots)]
        a, b = _handles(p, q, _tangent(knots, i, closed), _tangent(knots, (i + 1) % len(knots), closed))
        for step in range(1, steps + 1):
            t = step / steps
            u = 1 - t
            w0, w1, w2, w3 = u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t
            out.append((w0 * p.x + w1 * a[0] + w2 * b[0] + w3 * q.x, w0 * p.y + w1 * a[1] + w2 * b[1] + w3 * q.y))
    return tuple(out)


def through(points: Sequence[Point], steps: int = STEPS) -> Polygon:
    """A smooth open curve through plain points."""
    return flatten([Knot(x, y) for x, y in points], steps=steps)


def bowed(start: Point, end: Point, bow: float, steps: int = 32) -> Polygon:
    """From point to point with an even bow in mm; a positive bow hangs down when the line runs from left to right."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    length = math.hypot(dx, dy) or 1.0
    nx, ny = -dy / length, dx / length
    line = []
    for step in range(steps + 1):
        t = step / steps
        away = bow * 4 * t * (1 - t)
        line.append((start[0] + dx * t + nx * away, start[1] + dy * t + ny * away))
    return tuple(line)


def normals(points: Polygon) -> tuple[Point, ...]:
    """At every point the unit vector across the curve, turned by +90 degrees on the screen."""
    last = len(points) - 1
    out = []
    for i in range(len(points)):
        a, b = points[max(i - 1, 0)], points[min(i + 1, last)]
        length = math.hypot(b[0] - a[0], b[1] - a[1]) or 1.0
        out.append((-(b[1] - a[1]) / length, (b[0] - a[0]) / length))
    return tuple(out)


def shade_side(points: Polygon) -> int:
    """On which side of a curve the shade lies: 1 along its normal, -1 against it."""
    nx, ny = normals(points)[len(points) // 2]
    return 1 if nx * LIGHT[0] + ny * LIGHT[1] > 0 else -1


def ease(t: float) -> float:
    """Smoothly from 0 to 1."""
    t = max(0.0, min(1.0, t))
    return t * t * (3 - 2 * t)


def fading(start: float, end: float) -> Along:
    """1 along the middle, dying away over the given shares at both ends; 0 means no fading at that end."""
    return lambda t: ease(t / start if start > 0 else 1.0) * ease((1 - t) / end if end > 0 else 1.0)


def wobble(i: int, k: int = 0) -> float:
    """A repeatable irregularity between -0.5 and 0.5: the same drawing looks the same tomorrow."""
    return (math.sin(12.9898 * (i + 1) + 78.233 * (k + 1)) * 43758.5453) % 1.0 - 0.5


def by_hand(points: Polygon, seed: int, reach: float) -> Polygon:
    """A hand's tremor: two slow waves across the line, nothing at its ends."""
    last = len(points) - 1
    a, b = wobble(seed, 5) * 2, wobble(seed, 9) * 2
    out = []
    for i, ((x, y), (nx, ny)) in enumerate(zip(points, normals(points), strict=True)):
        t = math.pi * i / last
        away = reach * math.sin(t) * (a * math.sin(2.2 * t + 3 * a) + b * math.sin(3.7 * t + 5 * b))
        out.append((x + nx * away, y + ny * away))
    return tuple(out)


def beside(points: Polygon, away: float) -> Polygon:
    """The line at a distance from a curve, along its normal."""
    return tuple((x + nx * away, y + ny * away) for (x, y), (nx, ny) in zip(points, normals(points), strict=True))
