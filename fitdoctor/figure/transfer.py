"""Carries a drawing from the figure it was made on to another with the same levels: waist to waist, hip to hip."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise

import msgspec

from fitdoctor.figure.shapes import Point
from fitdoctor.knowledge.entries import Bump, Drawing, Figure, Stroke

Level = tuple[float, float, float]


@dataclass(frozen=True)
class Map:
    """Pairs of levels (height, left, right) of the one figure and the other, from the top down."""

    pairs: tuple[tuple[Level, Level], ...]

    def point(self, point: Point) -> Point:
        """Where a point of the first figure lies on the second; beyond the edges it keeps its distance from them."""
        x, y = point
        (home, there), (home_next, there_next) = self._around(y)
        share = (y - home[0]) / ((home_next[0] - home[0]) or 1.0)
        new_y = there[0] + share * (there_next[0] - there[0])
        held = min(1.0, max(0.0, share))
        left, right = _between(home, home_next, held)
        new_left, new_right = _between(there, there_next, held)
        if x < left:
            return new_left + (x - left), new_y
        if x > right:
            return new_right + (x - right), new_y
        return new_left + (x - left) / (right - left) * (new_right - new_left), new_y

    def _around(self, y: float) -> tuple[tuple[Level, Level], tuple[Level, Level]]:
        for above, below in pairwise(self.pairs):
            if y <= below[0][0]:
                return above, below
        return self.pairs[-2], self.pairs[-1]


def _between(a: Level, b: Level, share: float) -> tuple[float, float]:
    return a[1] + share * (b[1] - a[1]), a[2] + share * (b[2] - a[2])


def mapping(home: Figure, other: Figure) -> Map | None:
    """The map from one figure to another; None where they share fewer than two levels."""
    shared = [name for name in home.levels if name in other.levels]
    pairs = sorted((home.levels[name], other.levels[name]) for name in shared)
    return Map(tuple(pairs)) if len(pairs) > 1 else None


def carry(drawing: Drawing, home: Figure, other: Figure) -> Drawing | None:
    """The drawing as it looks on the other figure; None where the two cannot be compared."""
    if home.id == other.id:
        return drawing
    known = mapping(home, other)
    if known is None or home.view != other.view:
        return None
    x, y, wide, high = drawing.crop
    left, top = known.point((x, y))
    right, bottom = known.point((x + wide, y + high))
    return msgspec.structs.replace(
        drawing,
        crop=(left, top, right - left, bottom - top),
        outline=tuple(_bump(bump, known.point) for bump in drawing.outline),
        strokes=tuple(_stroke(stroke, known.point) for stroke in drawing.strokes),
    )


def _bump(bump: Bump, to: Callable[[Point], Point]) -> Bump:
    return msgspec.structs.replace(bump, at=to(bump.at))


def _stroke(stroke: Stroke, to: Callable[[Point], Point]) -> Stroke:
    def maybe(point: Point | None) -> Point | None:
        return None if point is None else to(point)

    return msgspec.structs.replace(
        stroke,
        from_=maybe(stroke.from_),
        to=maybe(stroke.to),
        at=maybe(stroke.at),
        through=tuple(to(point) for point in stroke.through),
        near=tuple(to(point) for point in stroke.near),
        far=tuple(to(point) for point in stroke.far),
    )
