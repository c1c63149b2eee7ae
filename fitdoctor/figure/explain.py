"""What explains a picture: arrows of the mechanism, a tape from where to where, marks on the cloth, words on plates."""

from __future__ import annotations

import math
from collections.abc import Sequence

import msgspec

from fitdoctor.figure.curves import bowed, through
from fitdoctor.figure.lines import disc
from fitdoctor.figure.shapes import Fill, Flat, Line, Point, Polygon, Shape, Words
from fitdoctor.knowledge.entries import MechanismArrow

HALF_ANGLE = 0.42
WIDTHS = {"pull": (6.0, 24.0), "stack": (5.5, 24.0), "hang": (5.0, 20.0), "ledge": (5.0, 0.0)}
"Kind of arrow -> width of its shaft and length of its head, mm."
ROLES = {"pull": "pull", "stack": "stack", "hang": "hang", "ledge": "hang"}
WORD_GAP = 34.0


def mechanism(arrows: Sequence[MechanismArrow], size: float = 16.0) -> tuple[Shape, ...]:
    """Where cloth is short (pull), where it stacks (stack), what it hangs from or lies on (hang, ledge), each in words."""
    shafts: list[Shape] = []
    words: list[Shape] = []
    for arrow in arrows:
        for side in _sides(arrow):
            shafts += _arrow(side)
        if arrow.says:
            words.append(_words(arrow, size))
    return (*shafts, *words)


def _sides(arrow: MechanismArrow) -> tuple[MechanismArrow, ...]:
    if not arrow.both:
        return (arrow,)
    over = msgspec.structs.replace(arrow, from_=(-arrow.from_[0], arrow.from_[1]), to=(-arrow.to[0], arrow.to[1]), bow=-arrow.bow)
    return (arrow, over)


def _arrow(arrow: MechanismArrow) -> list[Shape]:
    line = bowed(arrow.from_, arrow.to, arrow.bow)
    role, (width, head) = ROLES[arrow.kind], WIDTHS[arrow.kind]
    if arrow.kind == "ledge":
        return [Line(line, width + 6, Flat("bg", 0.85)), Line(line, width, Flat(role))]
    return shaft(line, role, width, head, arrow.both_ends)


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


def _words(arrow: MechanismArrow, size: float) -> Words:
    """Beside the arrow's tail, where it comes from; a ledge and a double arrow carry them beside their middle."""
    line = bowed(arrow.from_, arrow.to, arrow.bow)
    lines = broken(arrow.says)
    if arrow.kind == "ledge" or arrow.both_ends:
        x, y = line[len(line) // 2]
        at = (x, y + WORD_GAP) if arrow.kind == "ledge" else (x, y)
        return Words((0.0, at[1]) if arrow.both and arrow.kind == "ledge" else at, lines, ROLES[arrow.kind], size)
    (x, y), (u, v) = line[0], line[4]
    length = math.hypot(u - x, v - y) or 1.0
    away = WORD_GAP * 0.8 + (len(lines) - 1) * size * 0.6
    return Words((x - (u - x) / length * away, y - (v - y) / length * away), lines, ROLES[arrow.kind], size)


def broken(text: str, words: int = 3) -> tuple[str, ...]:
    """A sentence in lines of at most three words."""
    parts = text.split()
    return tuple(" ".join(parts[i : i + words]) for i in range(0, len(parts), words))


def tape(points: Sequence[Point], role: str = "guide") -> tuple[Shape, ...]:
    """A measuring line from its first point to its last: cased, with a tick at both ends and a dot at each point between."""
    line = through(points) if len(points) > 2 else tuple(points)
    shapes: list[Shape] = [Line(line, 9, Flat("bg", 0.85)), Line(line, 4, Flat(role))]
    for at, towards in ((line[0], line[1]), (line[-1], line[-2])):
        shapes.append(Line(_tick(at, towards), 4, Flat(role)))
    shapes += [Fill(disc(point, 4.5), Flat(role)) for point in points[1:-1]]
    return tuple(shapes)


def _tick(at: Point, towards: Point) -> Polygon:
    length = math.hypot(towards[0] - at[0], towards[1] - at[1]) or 1.0
    nx, ny = -(towards[1] - at[1]) / length * 11, (towards[0] - at[0]) / length * 11
    return ((at[0] - nx, at[1] - ny), (at[0] + nx, at[1] + ny))


def taken_away(old: Sequence[Point], new: Sequence[Point]) -> tuple[Shape, ...]:
    """After a remedy: the cloth between the old seam and the new, and the new seam as a basted line."""
    upper, lower = through(old), through(new)
    return (Fill((*upper, *reversed(lower)), Flat("pull", 0.32)), *basted(lower, "pull"))


def basted(line: Polygon, role: str = "pull") -> tuple[Shape, ...]:
    """A new line of sewing, dashed and cased."""
    return (Line(line, 6, Flat("bg", 0.7)), Line(line, 3, Flat(role), dash=(9, 6)))
