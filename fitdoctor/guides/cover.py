"""The first page: how to print, the test squares, what the lines mean, and a map of every guide's pages."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from fitdoctor.guides.draft import ALLOWANCE_MM
from fitdoctor.guides.guides import Guide
from fitdoctor.guides.lettering import both_units
from fitdoctor.guides.pages import page_map
from fitdoctor.guides.paper import MARGIN_MM, SIZES_MM, Paper, Tiling
from fitdoctor.guides.pdf import Page
from fitdoctor.guides.shapes import Line, Shape, Text, Weight, outline
from fitdoctor.units import MM_PER_INCH

_LEGEND: tuple[tuple[Weight, str], ...] = (
    ("old", "old seam"),
    ("new", "new seam: the line to sew on"),
    ("step", "steps on the way, each tried on"),
    ("fold", "fold"),
    ("cut", f"cut edge; hatched allowance {both_units(ALLOWANCE_MM)}"),
)
_MAP_MM = (26.0, 32.0)
_MAPS_HIGH_MM = 124.0


def cover_page(guides: Sequence[tuple[Guide, Tiling, int]], paper: Paper, title: str) -> Page:
    """The cover of a set of guides."""
    width, height = SIZES_MM[paper]
    return Page(width, height, (*_head(title), *_squares(), *_legend(), *_maps(guides)))


def _head(title: str) -> Iterator[Shape]:
    yield Text((MARGIN_MM, 20), "Marking guides", 8, bold=True)
    yield Text((MARGIN_MM, 27), title, 4.4)
    rows = (
        "Print at 100 %, without fitting to the page.",
        "Measure both squares before you mark from a guide.",
        "Lay the guide's old seam on that of the cloth,",
        "mark the new one, turn the guide over for the other half.",
        "Look at both halves before anything is cut.",
    )
    for n, row in enumerate(rows):
        yield Text((MARGIN_MM + 110, 44 + 5.2 * n), row, 3.4)


def _squares() -> Iterator[Shape]:
    """100 mm and 4 in from one corner."""
    four = 4 * MM_PER_INCH
    yield Line(outline(MARGIN_MM, 38, four, four), "frame")
    yield Line(outline(MARGIN_MM, 38, 100, 100), "frame")
    yield Text((MARGIN_MM + 50, 84), "The inner square measures 100 mm,", 3.4, "middle")
    yield Text((MARGIN_MM + 50, 89), "the outer one 4 in, on every side.", 3.4, "middle")


def _legend() -> Iterator[Shape]:
    for n, (weight, words) in enumerate(_LEGEND):
        y = 82 + 6.5 * n
        yield Line(((MARGIN_MM + 110, y - 1), (MARGIN_MM + 126, y - 1)), weight)
        yield Text((MARGIN_MM + 129, y), words, 3.0)


def _maps(guides: Sequence[tuple[Guide, Tiling, int]]) -> Iterator[Shape]:
    """The maps in rows, smaller where there are many."""
    a_row = next((n for n in (6, 9, 12) if math.ceil(len(guides) / n) * 310 / n <= _MAPS_HIGH_MM), 16)
    for n, (guide, tiles, number) in enumerate(guides):
        x, y = MARGIN_MM + n % a_row * 190.0 / a_row, 158 + n // a_row * 310 / a_row
        yield from _map(guide, tiles, number, x, y, 6 / a_row)


def _map(guide: Guide, tiles: Tiling, number: int, x: float, y: float, size: float) -> Iterator[Shape]:
    """The drawing in small over its pages."""
    across, down = tiles.window
    scale = size * min(_MAP_MM[0] / (across * tiles.columns), _MAP_MM[1] / (down * tiles.rows))
    yield Text((x, y - 3.6), guide.letters, 3.4, bold=True)
    last = number + tiles.columns * tiles.rows - 1
    yield Text((x, y), f"page {number}" if last == number else f"{number} to {last}", 2.4)
    yield from page_map(tiles, (x, y + 2), across * scale, down * scale)
    for shape in guide.shapes:
        if isinstance(shape, Line) and shape.weight in ("old", "new", "step", "fold", "cut"):
            points = tuple((x + (px - tiles.corner[0]) * scale, y + 2 + (py - tiles.corner[1]) * scale) for px, py in shape.points)
            yield Line(points, "tick")
