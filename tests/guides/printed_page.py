"""A printed file read back: lines and fills of a page in mm from its upper left corner."""

from __future__ import annotations

import io
from collections.abc import Iterator
from dataclasses import dataclass

from pypdf import PdfReader
from pypdf.generic import ContentStream
from shapely import LineString
from shapely import Point as Place

from fitdoctor.amounts.marks import Point
from fitdoctor.guides.shapes import WIDTH_MM
from fitdoctor.units import MM_PER_INCH

# A point of PDF is 1/72 in (ISO 32000-1, 8.3.2.3); an inch is exactly 25.4 mm.
MM_PER_POINT = MM_PER_INCH / 72
WITHIN_MM = 0.1
Line = tuple[Point, ...]


@dataclass(frozen=True)
class ReadLine:
    """A line as found on a page, mm from its upper left corner."""

    width: float
    points: Line


def read(file: bytes) -> PdfReader:
    return PdfReader(io.BytesIO(file), strict=True)


def lines_of(reader: PdfReader, page: int) -> Iterator[ReadLine]:
    """Every stroked line of a page."""
    sheet = reader.pages[page]
    height = float(sheet.mediabox.height)
    stream = ContentStream(sheet["/Contents"].get_object(), reader)
    width = 0.0
    points: list[Point] = []
    for operands, operator in stream.operations:
        if operator == b"w":
            width = float(operands[0]) * MM_PER_POINT
        elif operator in (b"m", b"l"):
            points = [] if operator == b"m" else points
            points.append((float(operands[0]) * MM_PER_POINT, (height - float(operands[1])) * MM_PER_POINT))
        elif operator == b"S":
            yield ReadLine(round(width, 3), tuple(points))


def strokes(reader: PdfReader, page: int, weight: str) -> list[Line]:
    """Lines of one weight; that of the heading's legend, two points long, is left out."""
    wanted = dict(WIDTH_MM.items())[weight]  # type: ignore[index]
    return [line.points for line in lines_of(reader, page) if abs(line.width - wanted) < 0.02 and len(line.points) > 2]


def fills(reader: PdfReader, page: int) -> Iterator[Line]:
    """Every filled shape of a page."""
    sheet = reader.pages[page]
    height = float(sheet.mediabox.height)
    points: list[Point] = []
    for operands, operator in ContentStream(sheet["/Contents"].get_object(), reader).operations:
        if operator in (b"m", b"l"):
            points = [] if operator == b"m" else points
            points.append((float(operands[0]) * MM_PER_POINT, (height - float(operands[1])) * MM_PER_POINT))
        elif operator == b"f":
            yield tuple(points)


def nearest(line: Line, point: Point) -> tuple[float, float]:
    """(way along the line to the place nearest to a point, how far that is)."""
    drawn, at = LineString(line), Place(point)
    return drawn.project(at), drawn.distance(at)
