"""What the hands do, drawn over the cloth in the thread's colour: pin, pinch, lift, feel, unpick, measure."""

from __future__ import annotations

import math
from collections.abc import Callable
from itertools import pairwise

from fitdoctor.figure.arrows import basted, shaft, tape
from fitdoctor.figure.curves import bowed, through
from fitdoctor.figure.lines import disc
from fitdoctor.figure.shapes import Clip, Fill, Flat, Line, Point, Polygon, Shape
from fitdoctor.knowledge.entries import Stroke

ROLE = "guide"
CASE = Flat("bg", 0.85)
PIN_EVERY, PIN_HALF = 30.0, 13.0
"Mm between two pins, and from the fold to either end of one."


def along(stroke: Stroke) -> Polygon:
    """The line of a stroke of the hands."""
    if stroke.through:
        return through(stroke.through) if len(stroke.through) > 2 else stroke.through
    return bowed(stroke.from_ or (0, 0), stroke.to or (0, 0), stroke.bow)


def pins(stroke: Stroke) -> list[Shape]:
    """A fold that is pinned up: its line, and pins across it with their heads on one side."""
    line = along(stroke)
    shapes: list[Shape] = [Line(line, 7, CASE), Line(line, 3, Flat(ROLE))]
    for at, (dx, dy) in _every(line, PIN_EVERY):
        head, point = (at[0] - dy * PIN_HALF, at[1] + dx * PIN_HALF), (at[0] + dy * PIN_HALF, at[1] - dx * PIN_HALF)
        shapes += [Line((head, point), 6, CASE), Line((head, point), 2.4, Flat(ROLE)), Fill(disc(head, 4.6), Flat(ROLE))]
    return shapes


def pinch(stroke: Stroke) -> list[Shape]:
    """Finger and thumb that take cloth up between them: two short arrows tip to tip, across the angle."""
    (x, y), turn = stroke.at or (0, 0), math.radians(stroke.angle)
    far = stroke.width or 46.0
    shapes: list[Shape] = []
    for sign in (1, -1):
        dx, dy = math.cos(turn) * sign, math.sin(turn) * sign
        shapes += shaft(_straight((x + dx * far, y + dy * far), (x + dx * 7, y + dy * 7)), ROLE, 5.5, 19)
    return shapes


def move(stroke: Stroke) -> list[Shape]:
    """An arrow: lift, draw, press or turn the cloth this way."""
    return shaft(along(stroke), ROLE, 6, 23)


def ring(stroke: Stroke) -> list[Shape]:
    """Round the place to look at or feel."""
    (x, y), (rx, ry) = stroke.at or (0, 0), stroke.r or (34, 34)
    turn = math.radians(stroke.angle)
    steps = [math.tau * step / 40 for step in range(40)]
    round_ = tuple(
        (
            x + rx * math.cos(a) * math.cos(turn) - ry * math.sin(a) * math.sin(turn),
            y + rx * math.cos(a) * math.sin(turn) + ry * math.sin(a) * math.cos(turn),
        )
        for a in steps
    )
    return [Line(round_, 8, CASE, closed=True), Line(round_, 3.4, Flat(ROLE), closed=True)]


def unpick(stroke: Stroke) -> list[Shape]:
    """A seam let go: basted line with the ends of the cut thread standing off it."""
    line = along(stroke)
    shapes = list(basted(line))
    for at, (dx, dy) in _every(line, 26.0):
        for sign in (1, -1):
            end = (at[0] + dx * 5 - dy * sign * 11, at[1] + dy * 5 + dx * sign * 11)
            shapes.append(Line((at, end), 2.2, Flat(ROLE)))
    return shapes


def measured(stroke: Stroke) -> list[Shape]:
    """A tape from where to where."""
    return list(tape(stroke.through or ((stroke.from_ or (0, 0)), (stroke.to or (0, 0)))))


def pad(stroke: Stroke) -> list[Shape]:
    """A pad, a folded cloth or a flat hand laid under the cloth: its outline basted, hatched."""
    (x, y), (rx, ry), turn = stroke.at or (0, 0), stroke.r or (46, 16), math.radians(stroke.angle)

    def place(u: float, v: float) -> Point:
        return x + u * math.cos(turn) - v * math.sin(turn), y + u * math.sin(turn) + v * math.cos(turn)

    outline = tuple(place(rx * math.cos(a), ry * math.sin(a)) for a in (math.tau * step / 36 for step in range(37)))
    far, every = max(rx, ry), min(rx, ry) * 0.55
    steps = range(-int(2 * far / every), int(2 * far / every) + 1)
    hatch = tuple(Line((place(n * every - far, far), place(n * every + far, -far)), 1.8, Flat(ROLE, 0.7)) for n in steps)
    return [Fill(outline, Flat(ROLE, 0.16)), Clip((outline,), hatch), *basted(outline)]


def fingers(stroke: Stroke) -> list[Shape]:
    """Two fingers slipped in: rounded ends side by side, pointing along the angle."""
    (x, y), turn = stroke.at or (0, 0), math.radians(stroke.angle)
    ux, uy, length = math.cos(turn), math.sin(turn), stroke.width or 62.0
    shapes: list[Shape] = []
    for off in (-8.5, 8.5):
        tip = (x - uy * off, y + ux * off)
        root = (tip[0] - ux * length, tip[1] - uy * length)
        shapes += [Line((root, tip), 17, CASE), Line((root, tip), 14, Flat(ROLE)), Line((root, tip), 9.5, Flat("bg"))]
    return shapes


def _straight(start: Point, end: Point, steps: int = 12) -> Polygon:
    return tuple(
        (start[0] + (end[0] - start[0]) * step / steps, start[1] + (end[1] - start[1]) * step / steps) for step in range(steps + 1)
    )


def _every(line: Polygon, step: float) -> list[tuple[Point, Point]]:
    """Places along a line about a step apart, half a step from its ends, each with the direction there."""
    whole = sum(math.dist(a, b) for a, b in pairwise(line))
    count = max(1, round(whole / step))
    wanted = [whole * (n + 0.5) / count for n in range(count)]
    found: list[tuple[Point, Point]] = []
    way = 0.0
    for (x0, y0), (x1, y1) in pairwise(line):
        piece = math.dist((x0, y0), (x1, y1))
        while wanted and piece and wanted[0] <= way + piece:
            share = (wanted.pop(0) - way) / piece
            found.append(((x0 + (x1 - x0) * share, y0 + (y1 - y0) * share), ((x1 - x0) / piece, (y1 - y0) / piece)))
        way += piece
    return found


HANDS: dict[str, Callable[[Stroke], list[Shape]]] = {
    "pins": pins,
    "pinch": pinch,
    "move": move,
    "ring": ring,
    "unpick": unpick,
    "tape": measured,
    "pad": pad,
    "fingers": fingers,
}
"""Strokes of checks and measurements; all are painted above the garment."""
