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
WORD_SHARE = 0.036
"Size of the words as a share of the longer side of the picture."
EDGE = 6.0
LETTER = 0.54
"Mean breadth of a letter as a share of its size."


def mechanism(arrows: Sequence[MechanismArrow], box: Box) -> tuple[Shape, ...]:
    """Where cloth is short (pull), where it stacks (stack), what it hangs from or lies on (hang, ledge), each in words.

    The words stand within the box (mm), clear of one another.
    """
    size = max(box[2], box[3]) * WORD_SHARE
    shafts: list[Shape] = []
    words: list[Words] = []
    for arrow in arrows:
        for side in _sides(arrow):
            shafts += _arrow(side)
        if arrow.says:
            words.append(_words(arrow, size))
    return (*shafts, *apart(words, box))


def plate_size(words: Words) -> tuple[float, float]:
    """Width and height of the plate behind the words, mm."""
    longest = max(len(line) for line in words.lines)
    return longest * words.size * LETTER + words.size * 1.1, len(words.lines) * words.size * 1.28 + words.size * 0.62


def apart(words: Sequence[Words], box: Box) -> list[Words]:
    """The plates moved into the box and away from those before them, the nearest free place first."""
    placed: list[Words] = []
    for plate in words:
        tries = (replace(plate, at=_inside(plate, box, dx, dy)) for dx, dy in _ways(plate_size(plate)))
        found = next((spot for spot in tries if not any(_overlap(spot, other) for other in placed)), None)
        placed.append(found or replace(plate, at=_inside(plate, box, 0, 0)))
    return placed


def _ways(size: tuple[float, float]) -> list[Point]:
    wide, high = size
    steps = [(dx * wide * 0.55, dy * high * 0.6) for dy in range(-4, 5) for dx in range(-2, 3)]
    return sorted(steps, key=lambda step: abs(step[0]) + abs(step[1]))


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
