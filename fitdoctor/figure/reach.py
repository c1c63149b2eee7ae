"""How far a drawing reaches on its figure: where to point at it, and which part of the picture to show."""

from __future__ import annotations

import math
from dataclasses import dataclass

from fitdoctor.figure.shapes import Point, Polygon, bounds
from fitdoctor.figure.strokes import centre, each_side
from fitdoctor.knowledge.entries import Drawing, Stroke

Box = tuple[float, float, float, float]
MARGIN = 0.30
LEAST_WIDTH = 260.0
"Mm: a closer look would leave a learner without a landmark."


@dataclass(frozen=True)
class Reach:
    """A line of a drawing and how far it spreads to both sides, mm."""

    line: Polygon
    spread: float


def reaches(drawing: Drawing) -> tuple[Reach, ...]:
    """Every stroke as a line with its breadth, mirrored ones too."""
    return tuple(_reach(side) for stroke in drawing.strokes for side in each_side(stroke))


def _reach(stroke: Stroke) -> Reach:
    if stroke.stroke == "gape":
        return Reach(stroke.near, 12.0)
    if stroke.stroke == "fan" and stroke.at:
        x, y = stroke.at
        angle, far = math.radians(stroke.toward), stroke.start + stroke.length
        return Reach((stroke.at, (x + math.cos(angle) * far, y + math.sin(angle) * far)), stroke.length * math.radians(stroke.spread) / 4)
    if stroke.at:
        x, y = stroke.at
        rx, ry = stroke.r or (26.0, 26.0)
        return Reach(((x - rx * 0.6, y), (x + rx * 0.6, y)), ry * 0.6)
    return Reach(centre(stroke), stroke.depth or 10.0)


def _signs(drawing: Drawing) -> tuple[Reach, ...]:
    """The lines that make the sign: not its soft shading, unless there is nothing else."""
    plain = [stroke for stroke in drawing.strokes if stroke.stroke not in ("spot", "soft", "hollow", "swell", "dots")]
    return tuple(_reach(side) for stroke in plain or drawing.strokes for side in each_side(stroke))


def anchor(drawing: Drawing) -> Point:
    """Where a leader line ends: on the longest line of the sign, towards the right of the picture."""
    lines = [reach.line for reach in _signs(drawing)]
    if not lines:
        left, top, right, bottom = _corners(drawing.crop)
        return drawing.outline[0].at if drawing.outline else ((left + right) / 2, (top + bottom) / 2)
    line = max(lines, key=lambda points: math.dist(points[0], points[-1]) + (20 if points[0][0] + points[-1][0] > 0 else 0))
    ordered = sorted(line)
    return ordered[(len(ordered) - 1) * 3 // 4]


def extent(drawing: Drawing) -> Box:
    """Left, top, right and bottom of all that the drawing draws or moves."""
    points: list[Point] = [point for reach in _signs(drawing) for point in reach.line]
    for bump in drawing.outline:
        points.append((bump.at[0] + bump.move[0], bump.at[1] + bump.move[1]))
        if bump.both:
            points.append((-bump.at[0] - bump.move[0], bump.at[1] + bump.move[1]))
    return bounds(tuple(points)) if points else _corners(drawing.crop)


def _corners(crop: Box) -> Box:
    x, y, wide, high = crop
    return x, y, x + wide, y + high


def fitted(box: Box, aspect: float) -> Box:
    """A box (x, y, width, height) grown to a ratio of width to height, its middle kept."""
    x, y, wide, high = box
    if wide / high < aspect:
        return x - (high * aspect - wide) / 2, y, high * aspect, high
    return x, y - (wide / aspect - high) / 2, wide, wide / aspect


def framed(drawing: Drawing, aspect: float) -> Box:
    """The part of the figure to show at a ratio: its crop, or a closer look where a flat picture would make the crop tiny."""
    x, _, wide, high = drawing.crop
    if aspect < 1.6 * wide / high:
        return fitted(drawing.crop, aspect)
    left, top, right, bottom = extent(drawing)
    left, right = max(left, x), min(right, x + wide)
    need = max(LEAST_WIDTH, (right - left) * (1 + MARGIN), (bottom - top) * (1 + MARGIN) * aspect)
    return (left + right) / 2 - need / 2, (top + bottom) / 2 - need / aspect / 2, need, need / aspect
