"""Amounts on the drawn garment: the old line of a seam, the new one, and the cloth between them."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from fitdoctor.figure.arrows import basted
from fitdoctor.figure.curves import flatten, flip, parse
from fitdoctor.figure.shapes import Fill, Flat, Point, Polygon, Shape
from fitdoctor.knowledge.entries import Figure, SeamLine

LARGER = 1.6
"Amounts are drawn this much larger than they are, so that an eighth of an inch can be seen."
LEAST_SEEN = 7.0
INWARD = {"in": 1.0, "cut": 1.0, "out": -1.0, "add": -1.0}
DOWN = {"lower": 1.0, "raise": -1.0}


def mark_shapes(figure: Figure, at: str, stations: Sequence[Point], take: str) -> tuple[Shape, ...]:
    """The mark on a seam of the figure; stations are (way along the seam, offset from it) in mm. Nothing where it is not drawn."""
    seam = figure.seams.get(at)
    if seam is None:
        return ()
    shapes: list[Shape] = []
    for right in (True, False) if seam.both else (True,):
        old, new = _both_lines(seam, stations, take, right)
        shapes += [Fill((*old, *reversed(new)), Flat("guide", 0.22)), *basted(new)]
    return tuple(shapes)


def mark_place(figure: Figure, at: str, stations: Sequence[Point], take: str) -> Point | None:
    """Where a call-out of the mark points: the new line where it is farthest from the old, on the right half."""
    seam = figure.seams.get(at)
    if seam is None:
        return None
    old, new = _both_lines(seam, stations, take, right=True)
    return max(zip(old, new, strict=True), key=lambda pair: abs(pair[0][0] - pair[1][0]) + abs(pair[0][1] - pair[1][1]))[1]


def _both_lines(seam: SeamLine, stations: Sequence[Point], take: str, right: bool) -> tuple[Polygon, Polygon]:
    old = flatten(parse(seam.points))
    dx, dy = _direction(seam, take)
    last = len(old) - 1
    most = max((abs(offset) for _, offset in stations), default=0.0)
    scale = max(LARGER, LEAST_SEEN / most) if most else 0.0
    new = []
    for i, (x, y) in enumerate(old):
        away = abs(_offset(stations, i / last)) * scale if stations else LEAST_SEEN
        new.append((x + dx * away, y + dy * away))
    return (old, tuple(new)) if right else (flip(old), flip(tuple(new)))


def _direction(seam: SeamLine, take: str) -> Point:
    if take in DOWN:
        return 0.0, DOWN[take]
    sign = INWARD.get(take, 0.0)
    return seam.into[0] * sign, seam.into[1] * sign


def _offset(stations: Sequence[Point], share: float) -> float:
    """The offset at a share of the way between the first station and the last."""
    start, end = stations[0][0], stations[-1][0]
    place = start + share * (end - start)
    for (s0, o0), (s1, o1) in pairwise(stations):
        if place <= s1:
            return o0 + (o1 - o0) * ((place - s0) / (s1 - s0) if s1 > s0 else 0.0)
    return stations[-1][1]
