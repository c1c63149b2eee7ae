"""Guides on sheets of paper: tiled with overlap, cross marks, page map; a first page with the test squares."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from fitdoctor.amounts.marks import Point
from fitdoctor.guides.guides import Guide
from fitdoctor.guides.pdf import Page
from fitdoctor.guides.shapes import Box, Fill, Line, Shape, Text, box_of, outline
from fitdoctor.units import MM_PER_INCH

Paper = Literal["A4", "Letter"]
SIZES_MM: dict[Paper, tuple[float, float]] = {"A4": (210.0, 297.0), "Letter": (8.5 * MM_PER_INCH, 11 * MM_PER_INCH)}
"A4 by ISO 216; US Letter 8 1/2 by 11 in."
MARGIN_MM = 10.0
FOOT_MM = 12.0
OVERLAP_MM = 15.0
_PAD_MM = 4.0
_CROSS_IN_MM = 14.0


@dataclass(frozen=True)
class Tiling:
    """How a guide falls on sheets: page size, rows and columns, upper left corner of the drawing."""

    width: float
    height: float
    columns: int
    rows: int
    corner: Point

    @property
    def window(self) -> tuple[float, float]:
        """What one page shows of the drawing."""
        return self.width - 2 * MARGIN_MM, self.height - 2 * MARGIN_MM - FOOT_MM

    def start(self, column: int, row: int) -> Point:
        """Upper left corner of a tile in the drawing."""
        across, down = self.window
        return self.corner[0] + column * (across - OVERLAP_MM), self.corner[1] + row * (down - OVERLAP_MM)

    def pages(self) -> Iterator[tuple[int, int]]:
        """(column, row) of every page, row by row."""
        return ((column, row) for row in range(self.rows) for column in range(self.columns))


def tiling(guide: Guide, paper: Paper) -> Tiling:
    """The tiling with fewest pages, upright or lying."""
    box = box_of(guide.shapes)
    short, long = SIZES_MM[paper]
    return min((_tiles(box, *size) for size in ((short, long), (long, short))), key=lambda tiles: tiles.columns * tiles.rows)


def _tiles(box: Box, width: float, height: float) -> Tiling:
    x0, y0, x1, y1 = box
    across, down = Tiling(width, height, 1, 1, (0, 0)).window
    columns = max(1, math.ceil((x1 - x0 + 2 * _PAD_MM - OVERLAP_MM) / (across - OVERLAP_MM)))
    rows = max(1, math.ceil((y1 - y0 + 2 * _PAD_MM - OVERLAP_MM) / (down - OVERLAP_MM)))
    return Tiling(width, height, columns, rows, (x0 - _PAD_MM, y0 - _PAD_MM))


def guide_pages(guide: Guide, paper: Paper, first: int, of: int) -> Iterator[Page]:
    """The pages of one guide; `first` is the number of its first page among all `of` pages."""
    tiles = tiling(guide, paper)
    across, down = tiles.window
    for number, (column, row) in enumerate(tiles.pages(), first):
        x, y = tiles.start(column, row)
        moved = tuple(shape.moved(MARGIN_MM - x, MARGIN_MM - y) for shape in (*guide.shapes, *_crosses(guide, tiles)))
        window = (MARGIN_MM, MARGIN_MM, MARGIN_MM + across, MARGIN_MM + down)
        yield Page(tiles.width, tiles.height, tuple(_foot(guide, tiles, (column, row), number, of)), moved, window)


def _crosses(guide: Guide, tiles: Tiling) -> Iterator[Shape]:
    """Cross marks in the middle of every overlap, clear of the drawing: lay them over each other to join the pages."""
    taken = [box_of((shape,)) for shape in guide.shapes if not isinstance(shape, Line)]
    taken += [box_of((Line(piece, "hair"),)) for shape in guide.shapes if isinstance(shape, Line) for piece in pairwise(shape.points)]
    across, down = tiles.window
    for column, row in tiles.pages():
        x, y = tiles.start(column, row)
        if column + 1 < tiles.columns:
            middle = x + across - OVERLAP_MM / 2
            places = [(middle, y + way) for way in _ways(down)]
            yield from _pair(places, taken, f"{column + 1}{row + 1}", "ab")
        if row + 1 < tiles.rows:
            middle = y + down - OVERLAP_MM / 2
            places = [(x + way, middle) for way in _ways(across)]
            yield from _pair(places, taken, f"{column + 1}{row + 1}", "cd")


def _ways(length: float) -> list[float]:
    return [_CROSS_IN_MM + n * 6.0 for n in range(int((length - 2 * _CROSS_IN_MM) / 6.0) + 1)]


def _pair(places: Sequence[Point], taken: Sequence[Box], name: str, letters: str) -> Iterator[Shape]:
    """Two crosses as far apart as the drawing leaves room for."""
    free = [at for at in places if not any(_touches(at, box) for box in taken)] or [places[0], places[-1]]
    for at, letter in ((free[0], letters[0]), (free[-1], letters[1])):
        yield from _cross(at, f"{letter}{name}")


def _touches(at: Point, box: Box, clear: float = 6.0) -> bool:
    return box[0] - clear < at[0] < box[2] + clear and box[1] - clear < at[1] < box[3] + clear


def _cross(at: Point, name: str) -> Iterator[Shape]:
    x, y = at
    yield Line(((x - 5, y), (x + 5, y)), "tick")
    yield Line(((x, y - 5), (x, y + 5)), "tick")
    ring = tuple((x + 2.5 * math.cos(n * math.pi / 12), y + 2.5 * math.sin(n * math.pi / 12)) for n in range(25))
    yield Line(ring, "tick")
    yield Text((x + 3.4, y - 1.6), name, 2.4)


def _foot(guide: Guide, tiles: Tiling, here: tuple[int, int], number: int, of: int) -> Iterator[Shape]:
    column, row = here
    y = tiles.height - MARGIN_MM
    where = f"sheet {row * tiles.columns + column + 1} of {tiles.rows * tiles.columns}"
    joined = ": lay the crosses over each other" if tiles.rows * tiles.columns > 1 else ""
    yield Text((MARGIN_MM, y - 3.6), f"{guide.letters}   {guide.title}, {where}{joined}", 3.2, bold=True)
    yield Text((MARGIN_MM, y), f"Page {number} of {of}. Print at 100 %; measure the square on page 1 before you mark from it.", 2.8)
    yield from page_map(tiles, (tiles.width - MARGIN_MM - 4.4 * tiles.columns, y - 5.2 * min(tiles.rows, 2)), 4.0, 4.8, here)


def page_map(tiles: Tiling, at: Point, cell_width: float, cell_height: float, here: tuple[int, int] | None = None) -> Iterator[Shape]:
    """The pages of a guide as small cells, the present one dark."""
    for column, row in tiles.pages():
        x, y = at[0] + column * cell_width, at[1] + row * cell_height
        if here == (column, row):
            yield Fill(outline(x, y, cell_width, cell_height), 0.55)
        yield Line(outline(x, y, cell_width, cell_height), "tick")


def counted(guides: Sequence[Guide], paper: Paper) -> list[tuple[Guide, Tiling, int]]:
    """Each guide with its tiling and the number of its first page; page 1 is the cover."""
    found, number = [], 2
    for guide in guides:
        tiles = tiling(guide, paper)
        found.append((guide, tiles, number))
        number += tiles.columns * tiles.rows
    return found
