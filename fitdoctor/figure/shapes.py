"""The display list: plain shapes in mm, whose colours are the names of roles that a painter resolves."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

Point: TypeAlias = tuple[float, float]
Polygon: TypeAlias = tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Flat:
    """One tone all over."""

    role: str
    alpha: float = 1.0


@dataclass(frozen=True, slots=True)
class Linear:
    """A tone that changes along a straight line: stops are (place 0 to 1, role, alpha)."""

    start: Point
    end: Point
    stops: tuple[tuple[float, str, float], ...]


Ink: TypeAlias = Flat | Linear


@dataclass(frozen=True, slots=True)
class Fill:
    """A filled area."""

    outline: Polygon
    ink: Ink


@dataclass(frozen=True, slots=True)
class Line:
    """A stroked line; the width in mm scales with the picture."""

    points: Polygon
    width: float
    ink: Ink
    closed: bool = False
    dash: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Field:
    """A soft edge: areas nested in one another, the outermost first, that together reach the strength in the middle."""

    rings: tuple[tuple[Polygon, ...], ...]
    role: str
    strength: float


@dataclass(frozen=True, slots=True)
class Spot:
    """Soft round modelling: strongest in the middle, nothing at the rim."""

    at: Point
    r: Point
    angle: float
    role: str
    strength: float


@dataclass(frozen=True, slots=True)
class Words:
    """Words on a plate of their own, middle at a point; the size in mm."""

    at: Point
    lines: tuple[str, ...]
    role: str
    size: float = 16.0


@dataclass(frozen=True, slots=True)
class Clip:
    """Shapes of which only what lies within the areas is seen."""

    to: tuple[Polygon, ...]
    shapes: tuple[Shape, ...]


Shape: TypeAlias = Fill | Line | Field | Spot | Words | Clip


def bounds(points: Polygon) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of some points."""
    xs = [x for x, _ in points]
    ys = [y for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)
