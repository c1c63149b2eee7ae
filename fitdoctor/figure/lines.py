"""Lines that lie on cloth: seams, free edges, lit edges, buttons."""

from __future__ import annotations

import math

from fitdoctor.figure.curves import shade_side
from fitdoctor.figure.fields import soft
from fitdoctor.figure.shapes import Fill, Flat, Line, Point, Polygon, Shape


def seam(points: Polygon, width: float, alpha: float, dash: tuple[float, ...] = ()) -> list[Shape]:
    """A seam: a fine light beside a dark line."""
    light = tuple((x + 1.7, y + 1.0) for x, y in points)
    return [Line(light, 1.5, Flat("glow", 0.40), dash=dash), Line(points, width, Flat("ink", alpha), dash=dash)]


def edge(points: Polygon, width: float, drop: float, strength: float) -> list[Shape]:
    """A free edge lying on cloth: a line and the small shade it casts; below 0 the drop falls against the light's rule."""
    reach = drop * shade_side(points)
    return [soft(points, lambda _: 0.0, lambda _: reach, "shade", strength, 5), Line(points, width, Flat("ink", 0.85))]


def edge_lit(points: Polygon, width: float, alpha: float) -> Line:
    """The light on an edge that stands off."""
    return Line(points, width, Flat("glow", alpha))


def disc(at: Point, radius: float, squash: float = 1.0) -> Polygon:
    """A round area as a polygon."""
    steps = 24
    turns = (math.tau * step / steps for step in range(steps))
    return tuple((at[0] + math.cos(turn) * radius, at[1] + math.sin(turn) * radius * squash) for turn in turns)


def button(at: Point, radius: float) -> list[Shape]:
    """A button; large ones show rim, holes and shadow."""
    if radius < 7:
        return [Fill(disc((at[0] + 0.8, at[1] + 1.2), radius), Flat("shade", 0.35)), Fill(disc(at, radius), Flat("button"))]
    x, y = at
    shapes: list[Shape] = [
        Fill(disc((x + 1.5, y + 2.5), radius * 1.15), Flat("shade", 0.30)),
        Fill(disc(at, radius), Flat("button")),
        Fill(disc(at, radius * 0.65), Flat("dark", 0.55)),
    ]
    hole = radius * 0.24
    for dx, dy in ((-hole, -hole), (hole, -hole), (-hole, hole), (hole, hole)):
        shapes.append(Fill(disc((x + dx, y + dy), radius * 0.13), Flat("ink")))
    return shapes
