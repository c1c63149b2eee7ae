"""The stroke vocabulary: what a fold, a strain line, a gape or a dent is made of.

Surplus cloth is round and soft; tension is thin, straight and hard where it is held. That contrast is the lesson.
"""

from __future__ import annotations

import math
from collections.abc import Callable

import msgspec

from fitdoctor.errors import FitdoctorError
from fitdoctor.figure.bumps import other_side
from fitdoctor.figure.curves import Along, beside, bowed, by_hand, fading, shade_side, through, wobble
from fitdoctor.figure.fields import band, lens, soft
from fitdoctor.figure.hands import HANDS
from fitdoctor.figure.lines import edge_lit, seam
from fitdoctor.figure.shapes import Fill, Flat, Line, Linear, Point, Polygon, Shape, Spot, bounds
from fitdoctor.knowledge.entries import Stroke

POINTED = 14.0
"Ends of a gape nearer to each other than this, mm, are drawn as one point."


def mirror(stroke: Stroke) -> Stroke:
    """The stroke on the other side of the centre line."""

    def over(point: Point | None) -> Point | None:
        return None if point is None else (-point[0], point[1])

    def line(points: tuple[Point, ...]) -> tuple[Point, ...]:
        return tuple((-x, y) for x, y in points)

    return msgspec.structs.replace(
        stroke,
        on=other_side(stroke.on),
        from_=over(stroke.from_),
        to=over(stroke.to),
        at=over(stroke.at),
        through=line(stroke.through),
        near=line(stroke.near),
        far=line(stroke.far),
        bow=-stroke.bow,
        toward=180 - stroke.toward,
        angle=-stroke.angle,
        side=-stroke.side,
    )


def _need(value: Point | None, stroke: Stroke, field: str) -> Point:
    if value is None:
        raise FitdoctorError(f"A {stroke.stroke} stroke lacks its {field}.", "Write where it is in mm of the figure.")
    return value


def centre(stroke: Stroke) -> Polygon:
    """The line a stroke runs along: through its points, or from point to point with its bow."""
    if stroke.through:
        return through(stroke.through)
    return bowed(_need(stroke.from_, stroke, "from"), _need(stroke.to, stroke, "to"), stroke.bow)


def _shaded(stroke: Stroke, line: Polygon) -> int:
    return stroke.side or shade_side(line)


def fold(stroke: Stroke) -> list[Shape]:
    """A soft roll of surplus cloth: a crease, the roll on its lit side, its shadow on the other; depth 9 to 26 mm."""
    depth, k, fade = stroke.depth or 18.0, stroke.k, stroke.fade or (0.34, 0.34)
    line = by_hand(centre(stroke), stroke.seed, depth * 0.07)
    fades, side = fading(*fade), _shaded(stroke, line)

    def deep(t: float) -> float:
        return depth * (0.45 + 0.55 * fades(t)) * side

    def times(share: float) -> Along:
        return lambda t: share * deep(t)

    return [
        soft(line, times(-0.95), times(-1.75), "shade", 0.16 * k, 5, fades),
        band(line, times(-0.58), lambda t: abs(deep(t)) * 0.62, "glow", 0.66 * k, 8, fades),
        soft(line, times(0.02), times(-0.42), "shade", 0.34 * k, 5, fades),
        soft(line, times(0.0), times(1.15), "shade", 0.60 * k, 9, fades),
        lens(line, 2.0, "ink", 0.78 * min(1.0, k * 1.1), (fade[0] * 1.15, fade[1] * 1.15)),
    ]


def _strain(line: Polygon, depth: float, k: float, fade: tuple[float, float], side: int = 0) -> list[Shape]:
    """One strain line: a narrow ridge, hard at its start where it is held, dying out at the far end; never wavy."""
    fades, side = fading(*fade), side or shade_side(line)

    def deep(t: float) -> float:
        return depth * (0.35 + 0.65 * fades(t)) * side

    return [
        band(line, lambda t: -0.80 * deep(t), lambda t: abs(deep(t)) * 0.72, "glow", 0.70 * k, 6, fades),
        soft(line, lambda _: 0.0, lambda t: 1.5 * deep(t), "shade", 0.46 * k, 6, fades),
        lens(line, 1.55, "ink", 0.80 * min(1.0, k), fade),
    ]


def taut(stroke: Stroke) -> list[Shape]:
    """A strain line from where it is held; depth 6 to 10 mm."""
    return _strain(centre(stroke), stroke.depth or 7.0, stroke.k, stroke.fade or (0.06, 0.7), stroke.side)


def fan(stroke: Stroke) -> list[Shape]:
    """Strain lines that leave one point within an angle; direction in degrees, 0 right and 90 down."""
    x, y = _need(stroke.at, stroke, "at")
    shapes: list[Shape] = []
    for i in range(stroke.n):
        u = i / (stroke.n - 1) - 0.5 if stroke.n > 1 else 0.0
        angle = math.radians(stroke.toward + stroke.spread * u + 0.10 * stroke.spread * wobble(i))
        reach = stroke.start + stroke.length * (1 - 0.7 * abs(u) + 0.12 * wobble(i, 3))
        start = (x + math.cos(angle) * stroke.start, y + math.sin(angle) * stroke.start)
        end = (x + math.cos(angle) * reach, y + math.sin(angle) * reach)
        depth = (stroke.depth or 7.0) * (1 - 0.25 * abs(u))
        shapes += _strain(bowed(start, end, (stroke.bow or 6) * 2 * u), depth, stroke.k, stroke.fade or (0.08, 0.75))
    return shapes


def spot(stroke: Stroke) -> list[Shape]:
    """A soft patch of shade, or of light where lit."""
    role = "glow" if stroke.lit else "shade"
    return [Spot(_need(stroke.at, stroke, "at"), stroke.r or (40, 40), stroke.angle, role, _strength(stroke, 0.3))]


def _strength(stroke: Stroke, usual: float) -> float:
    return (usual if stroke.strength is None else stroke.strength) * stroke.k


def one_side(stroke: Stroke) -> list[Shape]:
    """Shade (or light) on one side of a line, densest at the line; the width says how far it reaches."""
    line = centre(stroke)
    reach = (stroke.width or 14.0) * _shaded(stroke, line)
    fades = fading(*(stroke.fade or (0.2, 0.2)))
    return [soft(line, lambda _: 0.0, lambda _: reach, "glow" if stroke.lit else "shade", _strength(stroke, 0.3), 10, fades)]


def hollow(stroke: Stroke) -> list[Shape]:
    """A soft furrow along a line."""
    return _furrow(stroke, "shade")


def swell(stroke: Stroke) -> list[Shape]:
    """A soft ridge along a line."""
    return _furrow(stroke, "glow")


def _furrow(stroke: Stroke, role: str) -> list[Shape]:
    width = stroke.width or 14.0
    return [band(centre(stroke), lambda _: 0.0, lambda _: width, role, _strength(stroke, 0.3), 10, fading(*(stroke.fade or (0.4, 0.4))))]


def gape(stroke: Stroke) -> list[Shape]:
    """The depth between where an edge should lie (far) and where it stands (near), running to a point at both ends."""
    near, far = stroke.near, list(stroke.far)
    for end in (0, -1):
        if math.dist(near[end], far[end]) < POINTED:
            far[end] = near[end]
    return depth_between(through(near), through(far), _strength(stroke, 0.93))


def depth_between(near: Polygon, far: Polygon, dark: float = 0.93) -> list[Shape]:
    """An opening between two lines with common ends, catching light low down; less dark where cloth lies close below it."""
    area = (*near, *reversed(far))
    _, top, _, bottom = bounds(area)
    light = Linear((0, top), (0, bottom), ((0, "under", 0.0), (0.55, "under", 0.25 * dark), (1, "under", dark)))
    return [Fill(area, Flat("deep", dark)), Fill(area, light)]


def line(stroke: Stroke) -> list[Shape]:
    """A plain line: a lit edge where lit, else a drawn one."""
    points, width = centre(stroke), stroke.width or 2.4
    if stroke.lit:
        return [edge_lit(points, width, _strength(stroke, 0.8))]
    return [Line(points, width, Flat("ink", _strength(stroke, 0.9)))]


def crease(stroke: Stroke) -> list[Shape]:
    """A pressed or worn line that swells and dies."""
    return [lens(centre(stroke), stroke.width or 2.0, "ink", _strength(stroke, 0.62), stroke.fade or (0.3, 0.3))]


def sewn(stroke: Stroke) -> list[Shape]:
    """A seam heavier than those of the figure, with the shade of its ridge: one that has gone astray."""
    points, width = centre(stroke), stroke.width or 2.6
    reach = 12.0 * _shaded(stroke, points)
    shade = soft(points, lambda _: 0.0, lambda _: reach, "shade", 0.4, 7)
    stitch = Line(beside(points, -9.0 if points[0][1] < points[-1][1] else 9.0), 1.4, Flat("ink", 0.7), dash=(8, 5))
    return [shade, *seam(points, width, _strength(stroke, 0.95)), stitch]


def dart(stroke: Stroke) -> list[Shape]:
    """A dart from its base to its point; the width is what it takes up at the base."""
    base, point = _need(stroke.from_, stroke, "from"), _need(stroke.to, stroke, "to")
    half = (stroke.width or 2.0) / 2
    shapes: list[Shape] = []
    for side in (-half, half):
        shapes += seam(bowed((base[0] + side, base[1]), point, stroke.bow), 1.5, _strength(stroke, 0.7))
    return shapes


def dots(stroke: Stroke) -> list[Shape]:
    """Where an edge should lie: a dotted line that explains and may be left out."""
    points, width = centre(stroke), stroke.width or 4.0
    dash = (0.1, 3 * width)
    return [Line(points, width * 1.9, Flat("bg", 0.8), dash=dash), Line(points, width, Flat("guide"), dash=dash)]


def dent(stroke: Stroke) -> list[Shape]:
    """Dished in: dark towards the light, lit away from it, a short crease over the dark side."""
    (x, y), (rx, ry), angle = _need(stroke.at, stroke, "at"), stroke.r or (26, 50), stroke.angle
    dark = _strength(stroke, 0.66)
    turn = math.radians(angle)
    rim: list[Point] = []
    for step in range(31):
        a = math.radians(165 + step * 4.5)
        u, v = math.cos(a) * rx * 0.9, math.sin(a) * ry * 0.86
        rim.append((x + u * math.cos(turn) - v * math.sin(turn), y + u * math.sin(turn) + v * math.cos(turn)))
    return [
        Spot((x + rx * 0.32, y + ry * 0.30), (rx * 1.15, ry * 1.05), angle, "glow", 0.62 * stroke.k),
        Spot((x - rx * 0.10, y - ry * 0.12), (rx * 0.98, ry * 0.98), angle, "shade", dark),
        Spot((x - rx * 0.22, y - ry * 0.28), (rx * 0.6, ry * 0.55), angle, "shade", dark * 0.6),
        lens(tuple(rim), 2.0, "ink", 0.62 * stroke.k, (0.45, 0.45)),
    ]


KINDS: dict[str, Callable[[Stroke], list[Shape]]] = {
    "fold": fold,
    "taut": taut,
    "fan": fan,
    "spot": spot,
    "soft": one_side,
    "swell": swell,
    "hollow": hollow,
    "gape": gape,
    "line": line,
    "crease": crease,
    "dent": dent,
    "dart": dart,
    "seam": sewn,
    "dots": dots,
    **HANDS,
}
ABOVE = ("dots", *HANDS)
"Strokes that lie above the garment, whatever part they name."


def draw(stroke: Stroke) -> list[Shape]:
    """The shapes of one stroke, on one side."""
    return KINDS[stroke.stroke](stroke)


def each_side(stroke: Stroke) -> tuple[Stroke, ...]:
    """The stroke, and its mirror image where it is meant for both sides."""
    return (stroke, mirror(stroke)) if stroke.both else (stroke,)
