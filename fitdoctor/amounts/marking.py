"""From a seam's line and an amount to a mark with stations and both lines."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from fitdoctor.amounts.curves import Polyline, as_points, even, offset, polyline_length, ways
from fitdoctor.amounts.marks import Length, Mark, Point, Take

Shape = Callable[[float], float]
_SHORT_MM = 150.0
_DART_ENDS = ("wide end", "point")
ENDS: dict[str, tuple[str, str]] = {
    "back-waist-seam": ("centre back", "side seam"),
    "front-waist-seam": ("centre front", "side seam"),
    "inseam": ("crotch", "knee"),
    "crotch-seam": ("below the seat", "fork"),
    "collar-seam": ("centre back", "shoulder seam"),
    "neckline-seam": ("centre back", "shoulder seam"),
    "shoulder-seam": ("neck", "armhole"),
    "armhole-seam": ("shoulder", "underarm"),
    "hem": ("front", "back"),
    "back-dart": _DART_ENDS,
    "front-dart": _DART_ENDS,
    "bust-dart": _DART_ENDS,
    "back-neck-dart": _DART_ENDS,
}
"What lies at the ends of a seam where a calculator does not say otherwise."
_INTO_THE_CLOTH: dict[Take, int] = {"in": 1, "lower": 1, "cut": 1, "mark": 1, "out": -1, "raise": -1, "add": -1}


@dataclass(frozen=True)
class Amount:
    """How much, how it counts, and how it runs along the seam.

    Attributes:
        each: the most at any station.
        total: taken up or let out in all over the mark.
        layer_share: part of `each` on one layer.
        shape: share of `each` left at a share of the way.
    """

    each: Length
    total: Length
    convention: str
    layer_share: float = 1.0
    shape: Shape = even


def shares_of_way(length_mm: float) -> np.ndarray:
    """Where stations stand: both ends and the quarters; the eighths too on a long seam."""
    return np.linspace(0.0, 1.0, 5 if length_mm < _SHORT_MM else 9)


def mark_seam(at: str, where: str, take: Take, line: Polyline, amount: Amount, ends: tuple[str, str] | None = None) -> Mark:
    """A mark along a seam. The line runs so that the cloth lies to its right hand on paper (below a line that runs to the right)."""
    length = polyline_length(line)
    stations = tuple((float(t) * length, amount.each.mm * amount.shape(float(t))) for t in shares_of_way(length))
    return Mark(
        at=at,
        where=where,
        take=take,
        each_mm=amount.each.mm,
        total_mm=amount.total.mm,
        convention=amount.convention,
        stations=stations,
        old=as_points(line),
        new=as_points(new_line(line, take, amount)),
        give_mm=amount.total.give_mm,
        layer_share=amount.layer_share,
        ends=ends or ENDS.get(at, ("top", "lower end")),
    )


def mark_lines(
    at: str,
    where: str,
    take: Take,
    amount: Amount,
    stations: tuple[Point, ...],
    lines: tuple[tuple[Point, ...], tuple[Point, ...]],
    ends: tuple[str, str],
    along_mm: float = 0.0,
) -> Mark:
    """A mark whose stations and lines, old and new, are drawn otherwise than along a seam's normals."""
    return Mark(
        at=at,
        where=where,
        take=take,
        each_mm=amount.each.mm,
        total_mm=amount.total.mm,
        convention=amount.convention,
        stations=stations,
        old=lines[0],
        new=lines[1],
        give_mm=amount.total.give_mm,
        layer_share=amount.layer_share,
        ends=ends,
        along_mm=along_mm,
    )


def new_line(line: Polyline, take: Take, amount: Amount) -> Polyline:
    """The seam after the work, on one layer."""
    way = ways(line)
    by = np.array([amount.shape(s / way[-1]) for s in way]) * amount.each.mm * amount.layer_share
    return offset(line, by * _INTO_THE_CLOTH[take])


def dart_lines(base: Point, direction: Point, length_mm: float, intake_mm: float) -> tuple[tuple[Point, ...], tuple[Point, ...]]:
    """(fold line, both stitching lines through the point) of a dart that starts at `base` and points along `direction`."""
    dx, dy = direction
    point = (base[0] + dx * length_mm, base[1] + dy * length_mm)
    half = intake_mm / 2
    left, right = (base[0] - dy * half, base[1] + dx * half), (base[0] + dy * half, base[1] - dx * half)
    return (base, point), (left, point, right)
