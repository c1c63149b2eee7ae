"""Sheets of paper: their sizes, margins and overlap, and how a drawing falls on them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from fitdoctor.amounts.marks import Point
from fitdoctor.guides.shapes import Box
from fitdoctor.units import MM_PER_INCH

Paper = Literal["A4", "Letter"]
SIZES_MM: dict[Paper, tuple[float, float]] = {"A4": (210.0, 297.0), "Letter": (8.5 * MM_PER_INCH, 11 * MM_PER_INCH)}
"A4 by ISO 216; US Letter 8 1/2 by 11 in."
MARGIN_MM = 10.0
FOOT_MM = 12.0
OVERLAP_MM = 15.0
_PAD_MM = 4.0


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


def tiling_of(box: Box, paper: Paper) -> Tiling:
    """The tiling of a drawing with fewest pages, upright or lying."""
    short, long = SIZES_MM[paper]
    return min((_tiles(box, *size) for size in ((short, long), (long, short))), key=lambda tiles: tiles.columns * tiles.rows)


def _tiles(box: Box, width: float, height: float) -> Tiling:
    x0, y0, x1, y1 = box
    across, down = Tiling(width, height, 1, 1, (0, 0)).window
    columns = max(1, math.ceil((x1 - x0 + 2 * _PAD_MM - OVERLAP_MM) / (across - OVERLAP_MM)))
    rows = max(1, math.ceil((y1 - y0 + 2 * _PAD_MM - OVERLAP_MM) / (down - OVERLAP_MM)))
    return Tiling(width, height, columns, rows, (x0 - _PAD_MM, y0 - _PAD_MM))
