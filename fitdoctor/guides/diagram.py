"""A reduced diagram of one mark: here, this much, this way. Plain data, and the same as a small picture."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from fitdoctor.amounts.marks import Mark, Point, Take
from fitdoctor.guides.lines import place, point_of, right_hand
from fitdoctor.guides.shapes import Anchor, Fill, Line, Shape, Text, box_of
from fitdoctor.guides.svg import as_svg

WIDE, HIGH = 100.0, 60.0
_LEAST_SEEN = 5.0
_LEVEL = 0.2
_INWARD = 9.0
"How far the name of a level end reaches in over the seam; the rest of it stands outside."


@dataclass(frozen=True)
class DiagramLabel:
    """An amount beside the new line; the one who draws writes it in the shop's unit, its foot at `at`."""

    at: Point
    mm: float
    anchor: Anchor = "middle"


@dataclass(frozen=True)
class Diagram:
    """A mark reduced to a picture 100 wide and 60 high at most (y down).

    Attributes:
        old, new: both lines.
        ticks: from the old seam to the new one at the stations.
        labels: amounts where they stand.
        arrow: from the old seam to the new one where they are farthest apart; none where nothing moves.
        ends: where to write what lies at either end of the seam.
        larger: how much larger the amount is drawn than the seam, so that it can be seen.
    """

    old: tuple[Point, ...]
    new: tuple[Point, ...]
    ticks: tuple[tuple[Point, Point], ...]
    labels: tuple[DiagramLabel, ...]
    arrow: tuple[Point, Point] | None
    ends: tuple[tuple[Point, str, Anchor], ...]
    take: Take
    larger: float = 1.0


def diagram(mark: Mark) -> Diagram:
    """The reduced diagram of a mark; empty lines where the mark has none."""
    if len(mark.old) < 2:
        return Diagram((), (), (), (), None, (), mark.take)
    dart = len(mark.new) != len(mark.old)
    larger = 1.0 if dart else _larger(mark)
    drawn_new = mark.new if dart else tuple(_moved(o, n, larger) for o, n in zip(mark.old, mark.new, strict=True))
    fit = _fit((*mark.old, *drawn_new))
    old, new = tuple(map(fit, mark.old)), tuple(map(fit, drawn_new))
    ticks = () if dart else tuple(_tick(mark, way, old, new) for way, _ in mark.stations)
    side = _side(mark, ticks)
    widest = ticks[len(ticks) // 2 :][:1] if mark.along_mm else ticks
    labels, ends = tuple(_labels(mark, ticks, old, side)), tuple(_ends(mark, old, side))
    return Diagram(old, new, ticks, labels, _arrow(widest), ends, mark.take, larger)


def as_picture(drawn: Diagram, length: Callable[[float], str]) -> str:
    """The diagram as SVG.

    Args:
        length: writes a length in mm as the shop does.
    """
    shapes = tuple(_shapes(drawn, length))
    x0, y0, x1, y1 = box_of(shapes) if shapes else (0.0, 0.0, WIDE, HIGH)
    return as_svg(shapes, (min(x0, -20.0), min(y0, -9.0), max(x1, WIDE + 20.0), max(y1, HIGH + 9.0)))


def _larger(mark: Mark) -> float:
    """Amounts too small to be seen at this size are drawn larger."""
    reduced = _scale((*mark.old, *mark.new))
    most = max(map(math.dist, mark.old, mark.new), default=0.0) * reduced
    return max(1.0, _LEAST_SEEN / most) if most > 1e-6 else 1.0


def _moved(old: Point, new: Point, larger: float) -> Point:
    return old[0] + (new[0] - old[0]) * larger, old[1] + (new[1] - old[1]) * larger


def _scale(points: tuple[Point, ...]) -> float:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(WIDE / max(max(xs) - min(xs), 1e-6), HIGH / max(max(ys) - min(ys), 1e-6))


def _fit(points: tuple[Point, ...]) -> Callable[[Point], Point]:
    scale = _scale(points)
    left, right = min(x for x, _ in points), max(x for x, _ in points)
    top, bottom = min(y for _, y in points), max(y for _, y in points)
    dx, dy = (WIDE - (right - left) * scale) / 2, (HIGH - (bottom - top) * scale) / 2
    return lambda point: ((point[0] - left) * scale + dx, (point[1] - top) * scale + dy)


def _tick(mark: Mark, way: float, old: tuple[Point, ...], new: tuple[Point, ...]) -> tuple[Point, Point]:
    if not mark.along_mm:
        return point_of(old, place(mark.old, way)), point_of(new, place(mark.old, way))
    start, end = (_off(old, place(mark.old, at)) for at in (way, way + mark.along_mm))
    return start, end


def _off(line: tuple[Point, ...], at: tuple[int, float]) -> Point:
    """Clear of the line, at its left hand: where a mark moves along the seam itself."""
    (x, y), (dx, dy) = point_of(line, at), right_hand(line, at)
    return x - dx * _LEAST_SEEN / 2, y - dy * _LEAST_SEEN / 2


def _side(mark: Mark, ticks: tuple[tuple[Point, Point], ...]) -> int:
    """1 where the new line lies at the right hand of the old one, -1 at the left: the amounts stand beyond it."""
    if mark.along_mm:
        return -1
    for (x0, y0), (x1, y1) in ticks:
        dx, dy = right_hand(mark.old, place(mark.old, 0.0))
        along = (x1 - x0) * dx + (y1 - y0) * dy
        if abs(along) > 1e-6:
            return 1 if along > 0 else -1
    return 1


def _labels(mark: Mark, ticks: tuple[tuple[Point, Point], ...], old: tuple[Point, ...], side: int) -> Iterator[DiagramLabel]:
    """The amounts at both ends and in the middle; one alone where it is the same all the way."""
    if not ticks:
        yield DiagramLabel((old[0][0], old[0][1] - 7.5), mark.each_mm)
        return
    offsets = [offset for _, offset in mark.stations]
    same = max(offsets) - min(offsets) < 1e-6
    for n in (len(ticks) // 2,) if same else sorted({0, len(ticks) // 2, len(ticks) - 1}):
        at, anchor = _beside(ticks[n][1], right_hand(mark.old, place(mark.old, mark.stations[n][0])), side)
        yield DiagramLabel(at, mark.each_mm if same else offsets[n], anchor)


def _ends(mark: Mark, old: tuple[Point, ...], side: int) -> Iterator[tuple[Point, str, Anchor]]:
    """The names of both ends, on the other side of the lines than the amounts."""
    places = ((old[0], mark.ends[0], 0.0), (old[-1], mark.ends[1], math.inf))
    for point, name, way in places if len(mark.new) == len(mark.old) else places[1:]:
        at, anchor = _beside(point, right_hand(mark.old, place(mark.old, way)), -side)
        if anchor == "middle":
            inward = _INWARD if abs(right_hand(mark.old, place(mark.old, way))[0]) < _LEVEL else -1.0
            at, anchor = (at[0] + (inward if not way else -inward), at[1]), ("end" if not way else "start")
        yield (at, name, anchor)


def _beside(at: Point, direction: Point, side: int) -> tuple[Point, Anchor]:
    """Where words stand beside a line, clear of it."""
    dx, dy = direction[0] * side, direction[1] * side
    anchor: Anchor = "middle" if abs(dx) < 0.5 else ("start" if dx > 0 else "end")
    return (at[0] + dx * 2.5, at[1] + dy * 2.5 + (3.2 if dy > 0.5 else (-0.4 if dy < -0.5 else 1.4))), anchor


def _arrow(ticks: tuple[tuple[Point, Point], ...]) -> tuple[Point, Point] | None:
    longest = max(ticks, key=lambda tick: math.dist(*tick), default=None)
    return longest if longest and math.dist(*longest) > 1e-6 else None


def _shapes(drawn: Diagram, length: Callable[[float], str]) -> Iterator[Shape]:
    if not drawn.old:
        return
    if len(drawn.old) == len(drawn.new):
        yield Fill((*drawn.old, *reversed(drawn.new)), 0.88)
    yield Line(drawn.old, "old")
    yield from (Line(tick, "hair") for tick in drawn.ticks)
    yield Line(drawn.new, "new")
    yield from _arrowed(drawn.arrow) if drawn.arrow else ()
    for label in drawn.labels:
        yield Text(label.at, length(label.mm), 4.6, label.anchor, bold=True)
    for at, name, anchor in drawn.ends:
        yield Text(at, name, 3.8, anchor)


def _arrowed(arrow: tuple[Point, Point]) -> Iterator[Shape]:
    (x0, y0), (x1, y1) = arrow
    length = math.dist(*arrow)
    ux, uy = (x1 - x0) / length, (y1 - y0) / length
    head = min(3.0, length * 0.6)
    foot = (x1 - ux * head, y1 - uy * head)
    yield Line(((x0, y0), foot), "frame")
    yield Fill(((x1, y1), (foot[0] - uy * 1.2, foot[1] + ux * 1.2), (foot[0] + uy * 1.2, foot[1] - ux * 1.2)))
