"""Hems and cuffs as lines across an upright line, darts with fold and stitching lines, buttons of a vent; all at full size."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from fitdoctor.amounts.marks import Mark
from fitdoctor.guides.draft import arrow, cross, grain
from fitdoctor.guides.lettering import both_lengths, both_units
from fitdoctor.guides.lines import inches_along, place, point_of, ways
from fitdoctor.guides.shapes import Line, Shape, Text, Weight, text_width
from fitdoctor.units import MM_PER_INCH

_UP_MM = 62.0
_CLOSE_MM = 8.0
"Lines nearer to each other than this have their names on either side."


def hem_shapes(marks: Sequence[Mark], finest: int) -> Iterator[Shape]:
    """The lines of a hem or cuff below each other, crossed by the upright line of the leg or sleeve."""
    first = marks[0]
    upright = first.old[0][0]
    top, lowest = min(y for mark in marks for _, y in mark.new), max(y for mark in marks for _, y in (*mark.old, *mark.new))
    yield from arrow((upright, lowest + 8), (upright, top - _UP_MM))
    yield Text((upright + 3, top - _UP_MM + 4), "up the front crease" if first.at == "hem" else "up the front fold", 3.2)
    if first.old != first.new:
        yield Line(first.old, "old")
        yield Text((first.old[-1][0] - 4, first.old[-1][1] + 4.4), "old edge", 3.4, "end")
    above = -math.inf
    for mark in sorted(marks, key=lambda mark: mark.new[0][1]):
        weight: Weight = "cut" if mark.take == "cut" else ("new" if mark is first else "fold")
        yield Line(mark.new, weight)
        below = "" if mark is first else f", {both_units(mark.each_mm, finest)} below the {_name(first)}"
        words, x, start = f"{_name(mark)}{below}", upright + 24, mark.new[0][1]
        beside = [y for at, y in mark.new if x - 3 <= at <= x + text_width(words, 3.4) + 3]
        yield Text((x, max(beside) + 4.4 if start - above < _CLOSE_MM else min(beside) - 1.8), words, 3.4, bold=mark is first)
        above = start
    yield from (Line(tick, "tick") for tick in inches_along(first.new, MM_PER_INCH))
    yield Text((upright + 3, first.new[0][1] - 8), first.ends[0], 3.7, bold=True)
    yield Text((first.new[-1][0] - 3, first.new[-1][1] - 8), first.ends[1], 3.7, "end", bold=True)
    yield from grain(replace(first, old=first.new), -1, 34.0)


def dart_shapes(marks: Sequence[Mark], finest: int) -> Iterator[Shape]:
    """Darts to be sewn on one edge: fold line, both stitching lines, point, how far each stands open; centre back where the edge begins."""
    edge = marks[0].edge
    yield Line(edge, "old")
    (x, y), (far, top) = edge[0], edge[-1]
    yield Line(((x, y - 6), (x, y + 60)), "tick")
    yield Text((x + 2, y + 57), "centre back", 3.7, bold=True)
    yield Text((far + 3, top + 1), "shoulder seam", 3.7, bold=True)
    yield from (Line(tick, "tick") for tick in inches_along(edge, MM_PER_INCH))
    for mark in marks:
        yield from _dart(mark, finest, named=mark is marks[-1])
    yield from arrow((x - 16, y + 26), (x - 16, y + 8))
    yield from arrow((x - 16, y + 26), (x - 16, y + 44))
    yield Text((x - 18, y + 27), "straight grain", 3.2, "end")


def _dart(mark: Mark, finest: int, named: bool) -> Iterator[Shape]:
    base, point = mark.old
    yield Line((base, point), "fold")
    yield Line(mark.new, "new")
    yield from cross(point)
    yield Text((point[0] + 5, point[1] + 1), mark.ends[1], 3.7, bold=True)
    yield from both_lengths((point[0] + 5, point[1] + 6), ways(mark.old)[-1], "start", finest, 3.7)
    yield from both_lengths((base[0], base[1] - 12), mark.each_mm, "middle", finest, 3.7)
    for share, words in ((0.45, "stitching lines"), (0.7, "fold line")) if named else ():
        on, y = base[0] + (point[0] - base[0]) * share, base[1] + (point[1] - base[1]) * share
        yield Line(((on + (3.0 if share < 0.5 else 0.5), y), (on + 9, y)), "hair")
        yield Text((on + 10, y + 1), words, 3.2)


def point_shapes(mark: Mark, finest: int) -> Iterator[Shape]:
    """A dart whose point moves: the old fold line to the old point, the new one to the new point."""
    base, old, new = mark.old[0], mark.old[-1], mark.new[-1]
    yield Line(mark.old, "old")
    yield Line(mark.new, "new")
    yield from (Line(tick, "tick") for tick in inches_along(mark.old, MM_PER_INCH))
    for at, name, to in ((old, "old point", -5), (new, "new point", 5)):
        yield from cross(at)
        yield Text((at[0] + to, at[1] + 1), name, 3.7, "start" if to > 0 else "end", bold=at is new)
    yield Text((base[0] + 4, base[1]), mark.ends[0], 3.7, bold=True)
    yield Line((old, new), "hair")
    yield from both_lengths(((old[0] + new[0]) / 2 + 5, (old[1] + new[1]) / 2 + 7), mark.each_mm, "start", finest, 3.7)


def button_shapes(mark: Mark, finest: int) -> Iterator[Shape]:
    """A row of buttons: the edge of the vent, a ring at each button."""
    yield Line(mark.old, "old")
    for way, _ in mark.stations:
        x, y = point_of(mark.old, place(mark.old, way))
        x -= 10
        yield from cross((x, y))
        yield Line(tuple((x + 5 * math.cos(n * math.pi / 12), y + 5 * math.sin(n * math.pi / 12)) for n in range(25)), "tick")
        yield from both_lengths((x - 7, y), way, "end", finest, 2.9)
    yield Text((mark.old[-1][0] + 2, mark.old[-1][1] + 3), "edge of the vent", 3.2)


def _name(mark: Mark) -> str:
    """What a line of a hem is called: the first words of its place."""
    return mark.where.split(": ")[-1].split(",")[0].removeprefix("the ")

