"""The heading of a guide: letter and title, what it shows, what its lines mean; set where the sheets have room for it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from fitdoctor.guides.paper import SIZES_MM, tiling_of
from fitdoctor.guides.shapes import Box, Line, Shape, Text, Weight, box_of, text_width, wrapped

_WIDTHS_MM = (170.0, 125.0, 92.0)
_TITLE_MM, _SAYS_MM, _LEGEND_MM = 5.4, 3.4, 3.0
_CLEAR_MM = 7.0


def headed(title: str, says: Sequence[str], names: dict[Weight, str], body: Sequence[Shape]) -> tuple[Shape, ...]:
    """The drawing with its heading, laid so that both take the fewest sheets; where two ways are alike, the heading stands above.

    Args:
        names: what each line in the drawing means.
    """
    taken = list(_boxes(body))
    best = min(_ways(title, says, names, box_of(body), taken), key=lambda way: _cost(body, way))
    return (*body, *best)


def _cost(body: Sequence[Shape], heading: Sequence[Shape]) -> int:
    box = box_of((*body, *heading))
    return sum(tiles.columns * tiles.rows for tiles in (tiling_of(box, paper) for paper in SIZES_MM))


def _ways(title: str, says: Sequence[str], names: dict[Weight, str], body: Box, taken: Sequence[Box]) -> Iterator[tuple[Shape, ...]]:
    """The heading above the drawing, then beside it and in its free corners."""
    left, top, right, bottom = body
    for width in _WIDTHS_MM:
        shapes = tuple(_set(title, says, names, width))
        x0, y0, x1, y1 = box_of(shapes)
        high = y1 - y0
        yield tuple(shape.moved(left - x0, top - _CLEAR_MM - y1) for shape in shapes)
        corners = ((right + _CLEAR_MM, top), (right - width, top), (left, top), (left, bottom - high), (right - width, bottom - high))
        for x, y in corners:
            if not any(_meets((x, y, x + x1 - x0, y + high), box) for box in taken):
                yield tuple(shape.moved(x - x0, y - y0) for shape in shapes)


def _set(title: str, says: Sequence[str], names: dict[Weight, str], width: float) -> Iterator[Shape]:
    yield Line(((0.0, 0.0), (width, 0.0)), "frame")
    y = 7.0
    for row in wrapped(title, _TITLE_MM, width):
        yield Text((0.0, y), row, _TITLE_MM, bold=True)
        y += 6.0
    for row in (row for text in says for row in wrapped(text, _SAYS_MM, width)):
        yield Text((0.0, y), row, _SAYS_MM)
        y += 4.6
    x, y = 0.0, y + 1.4
    for weight, words in names.items():
        wide = 16 + text_width(words, _LEGEND_MM)
        if x and x + wide > width:
            x, y = 0.0, y + 4.6
        yield Line(((x, y - 1), (x + 14, y - 1)), weight)
        yield Text((x + 16, y), words, _LEGEND_MM)
        x += wide + 8


def _boxes(body: Sequence[Shape]) -> Iterator[Box]:
    for shape in body:
        if isinstance(shape, Line):
            yield from (box_of((Line(piece, shape.weight),)) for piece in pairwise(shape.points))
        else:
            yield box_of((shape,))


def _meets(a: Box, b: Box) -> bool:
    return a[0] - _CLEAR_MM < b[2] and b[0] < a[2] + _CLEAR_MM and a[1] - _CLEAR_MM < b[3] and b[1] < a[3] + _CLEAR_MM
