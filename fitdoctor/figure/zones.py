"""The zones of a figure as areas: the part of the cloth that lies within a zone's shape."""

from __future__ import annotations

from collections.abc import Mapping

from fitdoctor.figure.compose import members, outlines
from fitdoctor.figure.curves import flatten, flip, parse
from fitdoctor.figure.shapes import Point, Polygon, bounds
from fitdoctor.knowledge.entries import Figure, ZoneShape

LEAST = 4.0
"Mm below which a cut-out piece is no area that anybody could point at."


def zone_areas(figure: Figure, facts: Mapping[str, str] | None = None) -> dict[str, tuple[Polygon, ...]]:
    """The areas of every zone of a figure at rest; a zone on both sides has one on each."""
    parts = outlines(figure, facts)
    return {name: _areas(figure, shape, parts) for name, shape in figure.zones.items()}


def _areas(figure: Figure, shape: ZoneShape, parts: Mapping[str, Polygon]) -> tuple[Polygon, ...]:
    cutter = flatten(parse(shape.within), closed=True, steps=1)
    cutters = (cutter, flip(cutter)) if shape.both else (cutter,)
    named = [name for wanted in shape.on for name in members(figure, wanted, parts)]
    if not named:
        return cutters
    cut = (clip(parts[name], cutter) for name in named for cutter in cutters)
    areas = tuple(area for area in cut if _is_area(area))
    return areas or cutters


def _is_area(area: Polygon) -> bool:
    if len(area) < 3:
        return False
    left, top, right, bottom = bounds(area)
    return right - left > LEAST and bottom - top > LEAST


def clip(subject: Polygon, cutter: Polygon) -> Polygon:
    """What of an outline lies within a convex shape (Sutherland and Hodgman's way, one edge after another)."""
    turn = 1.0 if _turns_right(cutter) else -1.0
    out = list(subject)
    for a, b in zip(cutter, (*cutter[1:], cutter[0]), strict=True):
        out = _cut(out, a, b, turn)
        if not out:
            break
    return tuple(out)


def _turns_right(points: Polygon) -> bool:
    area = sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(points, (*points[1:], points[0]), strict=True))
    return area > 0


def _cut(points: list[Point], a: Point, b: Point, turn: float) -> list[Point]:
    """The points on the inner side of one edge, with those where the outline crosses it."""

    def inside(point: Point) -> float:
        return turn * ((b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0]))

    out: list[Point] = []
    for before, point in zip([points[-1], *points[:-1]], points, strict=True):
        u, v = inside(before), inside(point)
        if (u >= 0) != (v >= 0):
            share = u / (u - v)
            out.append((before[0] + share * (point[0] - before[0]), before[1] + share * (point[1] - before[1])))
        if v >= 0:
            out.append(point)
    return out
