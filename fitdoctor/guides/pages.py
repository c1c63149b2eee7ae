"""Guides on sheets of paper: tiled with overlap, cross marks, page map; a first page with the test squares."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from fitdoctor.amounts.marks import Point
from fitdoctor.guides.guides import Guide
from fitdoctor.guides.paper import MARGIN_MM, OVERLAP_MM, Paper, Tiling, tiling_of
from fitdoctor.guides.pdf import Page
from fitdoctor.guides.shapes import Box, Fill, Line, Shape, Text, box_of, outline

_CROSS_IN_MM = 14.0


def tiling(guide: Guide, paper: Paper) -> Tiling:
    """How a guide falls on sheets."""
    return tiling_of(box_of(guide.shapes), paper)


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
