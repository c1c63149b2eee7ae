"""Lines laid over the cloth, cased in the paper's tone: an arrow, a tape from where to where, a line of basting."""

from __future__ import annotations

import math
from collections.abc import Sequence

from fitdoctor.figure.curves import through
from fitdoctor.figure.lines import disc
from fitdoctor.figure.shapes import Fill, Flat, Line, Point, Polygon, Shape

HALF_ANGLE = 0.42


def shaft(line: Polygon, role: str, width: float, head: float, both_ends: bool = False) -> list[Shape]:
    """An arrow along a line, cased in the paper's tone so that it stands off the cloth."""
    tips = [(line[-1], line[-4])] + ([(line[0], line[3])] if both_ends else [])
    body = line[3 if both_ends else 0 : -3]
    shapes: list[Shape] = [Line(line, width + 6, Flat("bg", 0.85)), Line(body, width, Flat(role))]
    for tip, back in tips:
        point = _head(tip, back, head)
        shapes += [Line(point, 5, Flat("bg", 0.85), closed=True), Fill(point, Flat(role))]
    return shapes


def _head(tip: Point, back: Point, length: float) -> Polygon:
    angle = math.atan2(tip[1] - back[1], tip[0] - back[0])
    wings = (angle + HALF_ANGLE, angle - HALF_ANGLE)
    return (tip, *((tip[0] - math.cos(wing) * length, tip[1] - math.sin(wing) * length) for wing in wings))


def tape(points: Sequence[Point], role: str = "guide") -> tuple[Shape, ...]:
    """A measuring line from its first point to its last: cased, with a tick at both ends and a dot at each point between."""
    line = through(points) if len(points) > 2 else tuple(points)
    shapes: list[Shape] = [Line(line, 9, Flat("bg", 0.85)), Line(line, 4, Flat(role))]
    half = min(11.0, max(6.0, math.dist(line[0], line[-1]) * 0.4))
    for at, towards in ((line[0], line[1]), (line[-1], line[-2])):
        shapes.append(Line(_tick(at, towards, half), 4, Flat(role)))
    shapes += [Fill(disc(point, 4.5), Flat(role)) for point in points[1:-1]]
    return tuple(shapes)


def _tick(at: Point, towards: Point, half: float) -> Polygon:
    length = math.hypot(towards[0] - at[0], towards[1] - at[1]) or 1.0
    nx, ny = -(towards[1] - at[1]) / length * half, (towards[0] - at[0]) / length * half
    return ((at[0] - nx, at[1] - ny), (at[0] + nx, at[1] + ny))


def basted(line: Polygon, role: str = "guide") -> tuple[Shape, ...]:
    """A new line of sewing, dashed and cased."""
    return (Line(line, 6, Flat("bg", 0.7)), Line(line, 3, Flat(role), dash=(9, 6)))
