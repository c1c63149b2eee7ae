"""Places along the lines of a mark: where a station stands, which way the cloth lies, a line beside another."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import accumulate, pairwise

from fitdoctor.amounts.marks import Point


def ways(line: Sequence[Point]) -> list[float]:
    """The way along the line at each of its points."""
    return list(accumulate((math.dist(a, b) for a, b in pairwise(line)), initial=0.0))


def place(line: Sequence[Point], way: float) -> tuple[int, float]:
    """The piece of the line a way along it falls in, and the share of that piece."""
    reached = ways(line)
    for n, (start, end) in enumerate(pairwise(reached)):
        if way <= end or n == len(reached) - 2:
            share = (way - start) / (end - start) if end > start else 0.0
            return n, min(1.0, max(0.0, share))
    return 0, 0.0


def point_of(line: Sequence[Point], at: tuple[int, float]) -> Point:
    """The point at a place."""
    n, share = at
    (x0, y0), (x1, y1) = line[n], line[n + 1]
    return x0 + (x1 - x0) * share, y0 + (y1 - y0) * share


def right_hand(line: Sequence[Point], at: tuple[int, float]) -> Point:
    """Unit direction to the right hand of the way of travel at a place: downward for a line that runs to the right."""
    n = at[0]
    (x0, y0), (x1, y1) = line[n], line[n + 1]
    length = math.hypot(x1 - x0, y1 - y0) or 1.0
    return -(y1 - y0) / length, (x1 - x0) / length


def beside(line: Sequence[Point], by: float) -> tuple[Point, ...]:
    """A parallel line, `by` mm to the right hand."""
    last = len(line) - 2
    moved = []
    for n, (x, y) in enumerate(line):
        before, after = right_hand(line, (max(0, n - 1), 1.0)), right_hand(line, (min(last, n), 0.0))
        dx, dy = before[0] + after[0], before[1] + after[1]
        length = math.hypot(dx, dy) or 1.0
        moved.append((x + dx / length * by, y + dy / length * by))
    return tuple(moved)


def hatching(line: Sequence[Point], edge: Sequence[Point], every: float) -> Iterator[tuple[Point, Point]]:
    """Slanting strokes between two lines of like points, `every` mm apart."""
    whole = ways(line)[-1]
    steps = int(whole / every)
    for n in range(steps):
        start, end = n * whole / steps, min(whole, (n + 1.6) * whole / steps)
        yield point_of(line, place(line, start)), point_of(edge, place(line, end))


def inches_along(line: Sequence[Point], step: float) -> Iterator[tuple[Point, Point]]:
    """Short ticks across the line at every whole step."""
    whole = ways(line)[-1]
    for n in range(1, int(whole / step) + 1):
        at = place(line, n * step)
        (x, y), (dx, dy) = point_of(line, at), right_hand(line, at)
        yield (x - dx, y - dy), (x + dx, y + dy)


def is_straight(line: Sequence[Point]) -> bool:
    """Whether the line is straight to a twentieth of a mm."""
    (x0, y0), (x1, y1) = line[0], line[-1]
    length = math.dist(line[0], line[-1])
    return length == 0 or all(abs((x1 - x0) * (y0 - y) - (x0 - x) * (y1 - y0)) / length < 0.05 for x, y in line)
