"""A seam that moves, at full size: old seam thin, new seam strong, allowance hatched, stations, grain, notches, labels."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from fitdoctor.amounts.marks import Mark, Point
from fitdoctor.guides.lettering import Ruler, both_lengths
from fitdoctor.guides.lines import beside, hatching, place, point_of, right_hand, ways
from fitdoctor.guides.shapes import Anchor, Fill, Line, Shape, Text, box_of, text_width
from fitdoctor.units import MM_PER_INCH

ALLOWANCE_MM = 3 / 8 * MM_PER_INCH
"The general seam allowance of factory goods."
_HATCH_MM = 3.5
_CLEAR_MM = 7.0
_SEEN_MM = 0.3
_NAME_MM = 3.7


def seam_shapes(marks: Sequence[Mark], ruler: Ruler) -> Iterator[Shape]:
    """Both lines of a seam, the allowance outside the new one, stations with their amounts; earlier steps toward the new line dotted."""
    *steps, mark = marks
    side = cloth_side(mark)
    seam = tuple(_seam(steps, mark, side, ruler))
    yield from seam
    yield from min((tuple(grain(mark, side, share=share)) for share in (0.3, 0.44)), key=lambda drawn: _area((*seam, *drawn)))


def _seam(steps: Sequence[Mark], mark: Mark, side: int, ruler: Ruler) -> Iterator[Shape]:
    yield from (Line(step.new, "step") for step in steps if step.new != mark.new)
    if "dart" not in mark.at:
        edge = beside(mark.new, -side * ALLOWANCE_MM)
        yield from (Line(stroke, "hair") for stroke in hatching(mark.new, edge, _HATCH_MM))
        yield Line(edge, "cut")
        yield from _balance_notch(edge, -side)
    yield Line(mark.old, "old")
    yield Line(mark.new, "new")
    yield from _stations(mark, side, ruler)
    drawn = (*mark.old, *mark.new, *beside(mark.new, -side * ALLOWANCE_MM))
    yield from _end(mark.old, mark.ends[0], side, drawn)
    yield from _end(tuple(reversed(mark.old)), mark.ends[1], -side, drawn)


def _area(shapes: Sequence[Shape]) -> float:
    x0, y0, x1, y1 = box_of(shapes)
    return (x1 - x0) * (y1 - y0)


def cloth_side(mark: Mark) -> int:
    """1 where the cloth lies at the right hand of the seam; hems have theirs at the left hand."""
    return -1 if mark.at.endswith("hem") else 1


def arrow(start: Point, end: Point) -> Iterator[Shape]:
    """A line with an arrowhead at its end."""
    length = math.dist(start, end) or 1.0
    ux, uy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    foot = (end[0] - ux * 3.4, end[1] - uy * 3.4)
    yield Line((start, end), "tick")
    yield Fill((end, (foot[0] - uy * 1.1, foot[1] + ux * 1.1), (foot[0] + uy * 1.1, foot[1] - ux * 1.1)))


def cross(at: Point, arm: float = 2.5) -> Iterator[Shape]:
    """A cross at a point."""
    x, y = at
    yield Line(((x - arm, y), (x + arm, y)), "tick")
    yield Line(((x, y - arm), (x, y + arm)), "tick")


def grain(mark: Mark, side: int, out: float = 48.0, share: float = 0.3) -> Iterator[Shape]:
    """The straight grain, drawn in the cloth beside the seam, clear of the labels."""
    at = place(mark.old, ways(mark.old)[-1] * share)
    (x, y), (dx, dy) = point_of(mark.old, at), right_hand(mark.old, at)
    x, y = x + dx * side * out, y + dy * side * out
    gx, gy = mark.grain[0] * 18, mark.grain[1] * 18
    yield from arrow((x, y), (x + gx, y + gy))
    yield from arrow((x, y), (x - gx, y - gy))
    if abs(gx) > abs(gy):
        yield Text((x, y - 3), "straight grain", 3.2, "middle")
        return
    leftward = dx * side < -0.5
    yield Text((x - 2.5 if leftward else x + 2.5, y + 1), "straight grain", 3.2, "end" if leftward else "start")


def stations_every(mark: Mark, step_mm: float) -> tuple[Point, ...]:
    """(way along the old seam, how far the new one lies from it on one layer) at every step and at both ends."""
    whole = ways(mark.old)[-1]
    steps = [n * step_mm for n in range(int(whole / step_mm) + 1)]
    if len(steps) > 1 and whole - steps[-1] < step_mm / 2:
        steps.pop()
    places = ((way, place(mark.old, way)) for way in (*steps, whole))
    return tuple((way, math.dist(point_of(mark.old, at), point_of(mark.new, at))) for way, at in places)


def _stations(mark: Mark, side: int, ruler: Ruler) -> Iterator[Shape]:
    """A tick across both lines at every station; nothing is said twice where nothing moves any more."""
    stations = stations_every(mark, ruler.every_mm)
    last, amounts = len(stations) - 1, [amount for _, amount in stations]
    even = max(amounts) - min(amounts) < _SEEN_MM
    for n, (way, _) in enumerate(stations):
        gone = amounts[n] < _SEEN_MM
        says = n in (0, last // 2, last) if even else not gone or n in (0, last) or amounts[n - 1] >= _SEEN_MM
        at_centre = mark.ends[0 if n == 0 else 1].startswith("centre") and n in (0, last)
        yield from _station(mark, way, amounts[n], side, ruler.finest, at_centre) if says else ()


def _station(mark: Mark, way: float, on_layer: float, side: int, finest: int, at_centre: bool) -> Iterator[Shape]:
    at = place(mark.old, way)
    old, new = point_of(mark.old, at), point_of(mark.new, at)
    dx, dy = right_hand(mark.old, at)
    dx, dy = dx * side, dy * side
    ahead = max((old, new), key=lambda p: p[0] * dx + p[1] * dy)
    foot = (ahead[0] + dx * _CLEAR_MM, ahead[1] + dy * _CLEAR_MM)
    yield Line((old, new), "tick")
    yield Line((ahead, foot), "hair")
    anchor: Anchor = "start" if dx > 0.5 else ("end" if dx < -0.5 else "middle")
    drop = 4.0 if dy > 0.5 else (-5.0 if dy < -0.5 else 0.6)
    foot, anchor = ((foot[0] + 2, foot[1]), "start") if at_centre else (foot, anchor)
    yield from both_lengths((foot[0] + dx * 1.2, foot[1] + drop), on_layer, anchor, finest, 3.7)


def _end(line: tuple[Point, ...], name: str, side: int, drawn: Sequence[Point]) -> Iterator[Shape]:
    """A notch across the seam at its end, the name of what lies there beyond it; a centre line drawn where the seam begins at one."""
    (x, y), (dx, dy) = line[0], right_hand(line, (0, 0.0))
    ux, uy = -dy, dx  # back along the seam, out of its end
    dx, dy = dx * side, dy * side
    reach = 46.0 if name.startswith("centre") else 3.0
    back = ALLOWANCE_MM + 4 if name.startswith("centre") else 3.0
    yield Line(((x - dx * back, y - dy * back), (x + dx * reach, y + dy * reach)), "tick")
    if abs(dy) > 0.97:
        anchor: Anchor = "end" if ux > 0 else "start"
        reach = ux * text_width(name, _NAME_MM)
        beyond = [py for px, py in drawn if min(x, x - reach) - 3 <= px <= max(x, x - reach) + 3]
        foot = min(beyond) - 2.5 if dy > 0 else max(beyond) + 5.0
        yield Text((x - ux * 1.5, foot), name, _NAME_MM, anchor, bold=True)
    elif abs(ux) > 0.4:
        yield Text((x + ux * 6, y + uy * 6 + 1.2), name, _NAME_MM, "start" if ux > 0 else "end", bold=True)
    else:
        yield Text((x, y + uy * 6 + (3 if uy > 0 else 0)), name, _NAME_MM, "middle", bold=True)


def _balance_notch(edge: tuple[Point, ...], outward: int) -> Iterator[Shape]:
    """A notch in the cut edge half way, to match the two layers by."""
    at = place(edge, ways(edge)[-1] / 2)
    (x, y), (dx, dy) = point_of(edge, at), right_hand(edge, at)
    dx, dy = dx * outward, dy * outward
    yield Fill(((x - dx * 4, y - dy * 4), (x + dy * 2, y - dx * 2), (x - dy * 2, y + dx * 2)))
