"""What explains a picture: the arrows of the mechanism with their words on plates."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import msgspec

from fitdoctor.figure.arrows import shaft
from fitdoctor.figure.curves import bowed
from fitdoctor.figure.reach import Box
from fitdoctor.figure.shapes import Flat, Line, Point, Shape, Words
from fitdoctor.knowledge.entries import MechanismArrow

WIDTHS = {"pull": (6.0, 24.0), "stack": (5.5, 24.0), "hang": (5.0, 20.0), "ledge": (5.0, 0.0)}
"Kind of arrow -> width of its shaft and length of its head, mm."
ROLES = {"pull": "pull", "stack": "stack", "hang": "hang", "ledge": "hang"}
WORD_SHARE = 0.046
"Size of the words as a share of the longer side of the picture."
EDGE = 6.0
COVERED = 1.4
"How far a plate goes out of the way, in sizes of its words, for each point of an arrow that it would hide."
LETTER = 0.54
"Mean breadth of a letter as a share of its size."


def mechanism(arrows: Sequence[MechanismArrow], box: Box) -> tuple[Shape, ...]:
    """Where cloth is short (pull), where it stacks (stack), what it hangs from or lies on (hang, ledge), each in words.

    The words stand within the box (mm), clear of one another and of the arrows.
    """
    size = max(box[2], box[3]) * WORD_SHARE
    shafts: list[Shape] = []
    words: list[Words] = []
    lines: list[Point] = []
    for arrow in arrows:
        for side in _sides(arrow):
            shafts += _arrow(side)
            lines += bowed(side.from_, side.to, side.bow)
        if arrow.says:
            words.append(_words(arrow, size))
    return (*shafts, *apart(words, box, lines))


def plate_size(words: Words) -> tuple[float, float]:
    """Width and height of the plate behind the words, mm."""
    longest = max(len(line) for line in words.lines)
    return longest * words.size * LETTER + words.size * 1.1, len(words.lines) * words.size * 1.28 + words.size * 0.62


def apart(words: Sequence[Words], box: Box, lines: Sequence[Point] = ()) -> list[Words]:
    """The plates moved into the box, away from those before them and off the lines: the nearest place that covers least."""
    placed: list[Words] = []
    for plate in words:
        tries = [replace(plate, at=_inside(plate, box, dx, dy)) for dx, dy in _ways(plate_size(plate))]
        free = [spot for spot in tries if not any(_overlap(spot, other) for other in placed)] or tries
        placed.append(min(free, key=lambda spot: math.dist(spot.at, plate.at) + plate.size * COVERED * _covers(spot, lines)))
    return placed


def _ways(size: tuple[float, float]) -> list[Point]:
    wide, high = size
    return [(dx * wide * 0.3, dy * high * 0.6) for dy in range(-5, 6) for dx in range(-4, 5)]


def _covers(plate: Words, lines: Sequence[Point]) -> int:
    """How many points of the lines the plate would hide."""
    wide, high = plate_size(plate)
    clear = plate.size * 0.5
    x, y = plate.at
    return sum(abs(px - x) < wide / 2 + clear and abs(py - y) < high / 2 + clear for px, py in lines)


def _inside(plate: Words, box: Box, dx: float, dy: float) -> Point:
    wide, high = plate_size(plate)
    x, y, width, height = box
    left, right = x + wide / 2 + EDGE, x + width - wide / 2 - EDGE
    top, bottom = y + high / 2 + EDGE, y + height - high / 2 - EDGE
    return max(left, min(right, plate.at[0] + dx)), max(top, min(bottom, plate.at[1] + dy))


def _overlap(one: Words, other: Words) -> bool:
    (w1, h1), (w2, h2) = plate_size(one), plate_size(other)
    return abs(one.at[0] - other.at[0]) < (w1 + w2) / 2 + 3 and abs(one.at[1] - other.at[1]) < (h1 + h2) / 2 + 3


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


def _words(arrow: MechanismArrow, size: float) -> Words:
    """Beside the arrow's tail, where it comes from; a ledge and a double arrow carry them beside their middle."""
    line = bowed(arrow.from_, arrow.to, arrow.bow)
    lines = broken(arrow.says)
    if arrow.kind == "ledge" or arrow.both_ends:
        x, y = line[len(line) // 2]
        at = (x, y + size * 2) if arrow.kind == "ledge" else (x, y)
        return Words((0.0, at[1]) if arrow.both and arrow.kind == "ledge" else at, lines, ROLES[arrow.kind], size)
    (x, y), (u, v) = line[0], line[4]
    length = math.hypot(u - x, v - y) or 1.0
    away = size * 1.7 + (len(lines) - 1) * size * 0.6
    return Words((x - (u - x) / length * away, y - (v - y) / length * away), lines, ROLES[arrow.kind], size)


def broken(text: str, words: int = 3) -> tuple[str, ...]:
    """A sentence in lines of at most three words."""
    parts = text.split()
    return tuple(" ".join(parts[i : i + words]) for i in range(0, len(parts), words))
