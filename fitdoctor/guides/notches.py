"""Notches that move along a seam: a sleeve turned in the armhole, drawn on its cap and on the armhole."""

from __future__ import annotations

import math
from collections.abc import Iterator

from fitdoctor.amounts.marks import Mark, Point
from fitdoctor.guides.draft import grain
from fitdoctor.guides.lettering import Ruler, both_lengths
from fitdoctor.guides.lines import inches_along, place, point_of, right_hand
from fitdoctor.guides.shapes import Anchor, Fill, Line, Shape, Text

_NAMES = ("back notch", "shoulder", "front notch")
_OUT_MM = 5.0


def notch_shapes(mark: Mark, ruler: Ruler) -> Iterator[Shape]:
    """The seam, its notches where they were, hollow, and where they go, filled; the way between them along the seam."""
    yield Line(mark.old, "old")
    yield from (Line(tick, "tick") for tick in inches_along(mark.old, ruler.every_mm))
    for (way, amount), name in zip(mark.stations, _NAMES, strict=True):
        yield from _moved(mark, way, amount, name, ruler.finest)
    for point, name, sign in ((mark.old[0], mark.ends[0], -1), (mark.old[-1], mark.ends[1], 1)):
        yield Line(((point[0], point[1] - 3), (point[0], point[1] + 3)), "tick")
        yield Text((point[0] - sign * 2, point[1] + 8), name, 3.7, "end" if sign > 0 else "start", bold=True)
    yield from grain(mark, 1, share=0.25) if mark.grain[1] else grain(mark, -1, out=30.0, share=0.25)


def _moved(mark: Mark, way: float, amount: float, name: str, finest: int) -> Iterator[Shape]:
    old, new = way, way + mark.along_mm
    hollow = _notch(mark, old)
    yield Line((*hollow, hollow[0]), "tick")
    yield Fill(_notch(mark, new))
    path = tuple(_beside(mark, old + (new - old) * n / 12, _OUT_MM * 1.7) for n in range(13))
    yield Line(path, "new")
    yield Fill(_head(path))
    (x, y), (dx, _) = _beside(mark, (old + new) / 2, -9.0), right_hand(mark.old, place(mark.old, (old + new) / 2))
    anchor: Anchor = "start" if dx > 0.5 else ("end" if dx < -0.5 else "middle")
    yield Text((x, y), name, 3.4, anchor, bold=True)
    yield from both_lengths((x, y + 4.6), amount, anchor, finest, 3.4)


def _notch(mark: Mark, way: float) -> tuple[Point, ...]:
    """A triangle that stands outside the seam, its point on it."""
    tip = _beside(mark, way, 0.0)
    (x, y), (dx, dy) = _beside(mark, way, _OUT_MM), right_hand(mark.old, place(mark.old, way))
    return tip, (x + dy * 2, y - dx * 2), (x - dy * 2, y + dx * 2)


def _beside(mark: Mark, way: float, outward: float) -> Point:
    at = place(mark.old, way)
    (x, y), (dx, dy) = point_of(mark.old, at), right_hand(mark.old, at)
    return x - dx * outward, y - dy * outward


def _head(path: tuple[Point, ...]) -> tuple[Point, ...]:
    (x0, y0), (x1, y1) = path[-2], path[-1]
    long = math.dist(path[-2], path[-1]) or 1.0
    ux, uy = (x1 - x0) / long, (y1 - y0) / long
    tip = (x1 + ux * 2.4, y1 + uy * 2.4)
    return tip, (x1 - ux - uy * 1.6, y1 - uy + ux * 1.6), (x1 - ux + uy * 1.6, y1 - uy - ux * 1.6)
